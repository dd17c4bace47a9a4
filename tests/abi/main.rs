//! The C door from the outside: layout, symbols, header, errors, buffers, NULL, growth, and agreement with the JSON
//! door byte for byte.

mod agreement;
mod errors;
mod face;
mod generated;
mod growth;
mod header;
mod json;
mod status;
mod symbols;
