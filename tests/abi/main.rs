//! The C door from the outside: layout, symbols, header, errors, buffers, NULL, growth, and agreement with the JSON
//! door byte for byte.
#![allow(
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test stops, with the reason, at what it does not expect"
)]

mod agreement;
mod allocation;
mod body;
mod errors;
mod face;
mod generated;
mod growth;
mod header;
mod held;
mod json;
mod materials;
mod plan;
mod record;
mod status;
mod symbols;
