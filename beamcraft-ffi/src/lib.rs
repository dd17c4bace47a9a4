//! The C ABI of beamcraft. The manual of it is `include/beamcraft.h`, made from the comments in this crate.
//!
//! Only the C functions are stable here; the Rust items exist for the tests and may change with any release. All
//! `unsafe` of the project stands in this crate: every pointer is checked for NULL, every number from outside is
//! checked before it becomes a choice, and every entry passes the guard that turns a panic into a status.
#![allow(non_camel_case_types, reason = "the names are the C names, so that header, symbols and source agree")]
#![deny(clippy::undocumented_unsafe_blocks, clippy::multiple_unsafe_ops_per_block)]

#[cfg(panic = "abort")]
compile_error!("the C door turns a panic into a status, which needs unwinding: build with panic = \"unwind\"");

mod body;
mod columns;
mod error;
pub mod generated;
mod guard;
mod handle;
mod json;
mod materials;
mod panel;
mod plan;
mod pointer;
mod record;
mod review;
mod status;
mod version;

pub use body::*;
pub use columns::*;
pub use error::*;
pub use generated::panels_of_body::*;
pub use generated::panels_of_plan::*;
pub use json::*;
pub use materials::*;
pub use panel::*;
pub use plan::*;
pub use review::*;
pub use status::*;
pub use version::*;
