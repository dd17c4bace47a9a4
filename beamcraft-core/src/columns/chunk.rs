//! Columns, and the run of rows that one thread works off at a time.

use super::{ABSENT, FieldKind};
use crate::error::Fault;

/// Values of an input field: one for each row, or one for all of them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Column<'a> {
    /// Numbers.
    Numbers(&'a [f64]),
    /// Choices by code, or whole numbers.
    Codes(&'a [u32]),
}

/// What is asked of a column before its first row.
pub(super) trait Held {
    /// How many values it has.
    fn len(&self) -> usize;
    /// Numbers or whole numbers.
    fn kind(&self) -> FieldKind;
}

impl Held for Column<'_> {
    fn len(&self) -> usize {
        match self {
            Column::Numbers(values) => values.len(),
            Column::Codes(values) => values.len(),
        }
    }

    fn kind(&self) -> FieldKind {
        if matches!(self, Column::Numbers(_)) { FieldKind::Number } else { FieldKind::Whole }
    }
}

impl Held for ColumnMut<'_> {
    fn len(&self) -> usize {
        match self {
            ColumnMut::Numbers(values) => values.len(),
            ColumnMut::Codes(values) => values.len(),
        }
    }

    fn kind(&self) -> FieldKind {
        if matches!(self, ColumnMut::Numbers(_)) { FieldKind::Number } else { FieldKind::Whole }
    }
}

/// The value of a row: the only one, or its own.
#[inline(always)]
pub(super) fn at<T: Copy>(values: &[T], row: usize) -> Option<T> {
    if let [only] = values { Some(*only) } else { values.get(row).copied() }
}

/// Place of the caller for the values of an output field.
#[derive(Debug, PartialEq)]
pub enum ColumnMut<'a> {
    /// Numbers.
    Numbers(&'a mut [f64]),
    /// Choices by code, or whole numbers.
    Codes(&'a mut [u32]),
}

impl<'a> ColumnMut<'a> {
    /// Takes the first `count` rows off.
    pub(super) fn take(&mut self, count: usize) -> ColumnMut<'a> {
        match self {
            ColumnMut::Numbers(values) => ColumnMut::Numbers(take(values, count)),
            ColumnMut::Codes(values) => ColumnMut::Codes(take(values, count)),
        }
    }

    /// Writes that a row has no value.
    fn clear(&mut self, row: usize) {
        match self {
            ColumnMut::Numbers(values) => set(values, row, f64::NAN),
            ColumnMut::Codes(values) => set(values, row, ABSENT),
        }
    }
}

/// Takes the first `count` values off; fewer when there are no more.
pub(super) fn take<'a, T>(values: &mut &'a mut [T], count: usize) -> &'a mut [T] {
    let whole = core::mem::take(values);
    let (first, rest) = whole.split_at_mut(count.min(whole.len()));
    *values = rest;
    first
}

#[inline(always)]
pub(super) fn set<T>(values: &mut [T], row: usize, value: T) {
    if let Some(place) = values.get_mut(row) {
        *place = value;
    }
}

/// Status of a row that is refused, and which field is at fault.
pub(super) struct Marks<'a> {
    /// 0, or the number of an error code.
    pub(super) status: Option<&'a mut [u32]>,
    /// Place of the field in the input; [`ABSENT`] for none.
    pub(super) fields: Option<&'a mut [u32]>,
}

impl<'a> Marks<'a> {
    /// Takes the first `count` rows off, marked as answered.
    pub(super) fn take(&mut self, count: usize) -> Marks<'a> {
        let status = self.status.as_mut().map(|values| take(values, count));
        let fields = self.fields.as_mut().map(|values| take(values, count));
        Marks { status, fields }
    }

    fn answered(&mut self) {
        if let Some(status) = &mut self.status {
            status.fill(0);
        }
        if let Some(fields) = &mut self.fields {
            fields.fill(ABSENT);
        }
    }
}

/// A run of rows. The inputs are whole columns, outputs and marks those of this run.
pub(crate) struct Chunk<'a> {
    /// Whole columns by the place of the field; nothing where the default is taken.
    pub(super) inputs: &'a [Option<Column<'a>>],
    /// Columns of this run by the place of the field; nothing where the output is not wanted.
    pub(super) outputs: Vec<Option<ColumnMut<'a>>>,
    pub(super) marks: Marks<'a>,
    /// Names of the input's fields by place.
    pub(super) names: &'a [&'a str],
    /// Row of the whole at which the run starts.
    pub(super) start: usize,
    /// Rows of the run.
    pub(super) rows: usize,
    /// How many rows of the run were refused.
    pub(super) refused: usize,
    /// The first of them, counted in the whole.
    pub(super) first: Option<(usize, Fault)>,
}

impl Chunk<'_> {
    /// Marks all rows as answered: what is refused is marked later.
    pub(crate) fn begin(&mut self) {
        self.marks.answered();
    }

    /// Refuses a row of the run.
    #[cold]
    pub(super) fn refuse(&mut self, row: usize, fault: Fault) {
        for column in self.outputs.iter_mut().flatten() {
            column.clear(row);
        }
        if let Some(status) = &mut self.marks.status {
            set(status, row, fault.code as u32);
        }
        if let Some(fields) = &mut self.marks.fields {
            let place = self.names.iter().position(|name| *name == fault.field);
            set(fields, row, place.and_then(|place| u32::try_from(place).ok()).unwrap_or(ABSENT));
        }
        self.refused += 1;
        if self.first.is_none() {
            self.first = Some((self.start + row, fault));
        }
    }
}
