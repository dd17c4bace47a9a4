//! The generator and the tools shared by the tests that cross the doors.

#![allow(clippy::panic, reason = "a tool of the makers stops, with the reason, at what it does not understand")]

pub mod generate;
pub mod rows;

/// The Rust block of the README, compiled and run.
#[cfg(doctest)]
#[doc = include_str!("../../README.md")]
pub struct ReadmeExamples;
