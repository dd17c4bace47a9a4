//! Columns: a calculation of numbers and choices over many rows in one call.
//!
//! Each input field is a column or one value for all rows, each wanted output field a column of the caller's; a row that
//! is refused has its own status and leaves the others alone. Rows are worked off in chunks of a fixed size on any number
//! of threads: the results are the same bits with each, and the same bits as one call after the other would give.
//!
//! | in a column | stands for |
//! |---|---|
//! | a code | a choice: its place in the list, as in the C header; or a whole number |
//! | NaN, or the code [`ABSENT`] | nothing, where the field may be left out |
//! | NaN, or the code [`ABSENT`], in an output | a row that is refused, or an output that this row does not have |
//!
//! Nothing is allocated for a row. How a struct crosses follows from its derived readers and writers, field by field in
//! their order, so that no calculation needs code of its own.

mod batch;
mod chunk;
mod lanes;
mod row;

pub(crate) use batch::run;
pub use batch::{Columns, ColumnsReport};
pub(crate) use chunk::Chunk;
pub use chunk::{Column, ColumnMut};
pub(crate) use lanes::{LANES, LaneValue, NullaryFnOnce, Raw, lane_choice, lanes, widest};
pub(crate) use row::rows;

/// The code of nothing: an optional choice or count that a row does not have.
pub const ABSENT: u32 = u32::MAX;

/// What a field holds.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum FieldKind {
    /// A number.
    Number,
    /// A whole number.
    Whole,
    /// One of these names; its code is its place.
    Choice(Vec<String>),
}

impl FieldKind {
    /// What a column of it holds, for a message.
    const fn wanted(&self) -> &'static str {
        match self {
            FieldKind::Number => "numbers",
            FieldKind::Whole | FieldKind::Choice(_) => "codes (whole numbers)",
        }
    }
}

/// Whether a column of an input must be given.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FieldNeed {
    /// It must.
    Required,
    /// It may be left out: the field has a default, or may have no value.
    LeftOut,
}

/// A field of an input or output, as a column.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ColumnField {
    /// Name, with its unit.
    pub name: String,
    /// What it holds.
    pub kind: FieldKind,
    /// Whether it must be given.
    pub need: FieldNeed,
}

/// The fields of a calculation, in the order of its structs.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ColumnFields {
    /// Fields of the input.
    pub inputs: Vec<ColumnField>,
    /// Fields of the output.
    pub outputs: Vec<ColumnField>,
}
