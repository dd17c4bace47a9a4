//! A whole call: names and lengths checked once, rows in chunks, chunks on threads.

use std::sync::{Mutex, PoisonError};
use std::thread;

use super::chunk::{Chunk, Column, ColumnMut, Held, Marks};
use super::{ColumnField, ColumnFields, FieldNeed};
use crate::error::{Detail, Error, ErrorCode, Fault, Result, closest};
use crate::limits::THREADS;

/// Rows of a chunk. The same whatever the number of threads; small enough that its columns stay in the fast cache.
const CHUNK: usize = 4096;

/// A call over columns.
#[derive(Debug)]
pub struct Columns<'a> {
    /// How many rows there are.
    pub rows: usize,
    /// Columns of the input by field name: as many values as rows, or one for all.
    pub inputs: &'a [(&'a str, Column<'a>)],
    /// Places for the outputs that are wanted, by field name: as many values as rows.
    pub outputs: Vec<(&'a str, ColumnMut<'a>)>,
    /// Place for the status of each row: 0, or the number of an [`ErrorCode`].
    pub status: Option<&'a mut [u32]>,
    /// Place for the field at fault in each row: its place in the input, [`super::ABSENT`] for none.
    pub fault_fields: Option<&'a mut [u32]>,
    /// On how many threads, from 1; worth it above some ten thousand rows.
    pub threads: u32,
}

/// What came of a call over columns.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ColumnsReport {
    /// How many rows were refused.
    pub refused: usize,
    /// The first of them, counted from 0, and why.
    pub first: Option<(usize, Fault)>,
}

impl ColumnsReport {
    /// An error that says how many rows were refused and why the first one was; nothing when none was.
    ///
    /// # Errors
    /// The fault of the first row that was refused, its path `row[k].field`.
    pub fn refuse_any(&self) -> Result<()> {
        let Some((row, fault)) = self.first else { return Ok(()) };
        let mut detail = Detail::from(fault).within(&format!("row[{row}]"));
        if self.refused > 1 {
            let others = format!("{} rows are refused, this is the first", self.refused);
            detail.cure = if detail.cure.is_empty() { others } else { format!("{}; {others}", detail.cure) };
        }
        Err(Error::one(detail))
    }
}

/// Works a call off with the function that works a chunk off.
///
/// # Errors
/// All that is wrong with names, kinds and lengths; rows that are refused are no error here.
pub(crate) fn run(fields: &ColumnFields, work: fn(&mut Chunk<'_>), call: Columns<'_>) -> Result<ColumnsReport> {
    let Columns { rows, inputs, outputs, status, fault_fields, threads } = call;
    let mut faults = Vec::new();
    faults.extend(THREADS.check("threads", f64::from(threads)).err().map(Detail::from));
    let inputs = by_place(Side::Inputs, &fields.inputs, inputs.iter().copied(), rows, &mut faults);
    missing(&fields.inputs, &inputs, &mut faults);
    let outputs = by_place(Side::Outputs, &fields.outputs, outputs, rows, &mut faults);
    for (name, marks) in [("status", &status), ("fault_fields", &fault_fields)] {
        if let Some(marks) = marks.as_ref().filter(|marks| marks.len() != rows) {
            faults.push(wrong_length(name.to_owned(), marks.len(), rows.to_string()));
        }
    }
    Error::unless_empty(faults)?;
    let names: Vec<&str> = fields.inputs.iter().map(|field| field.name.as_str()).collect();
    let chunks = chunks(rows, &inputs, outputs, Marks { status, fields: fault_fields }, &names);
    work_off(chunks, work, threads)
}

/// Which columns are looked at.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Side {
    Inputs,
    Outputs,
}

impl Side {
    /// The lengths that a column may have, in words; nothing when it has one of them.
    fn wrong_length(self, length: usize, rows: usize) -> Option<String> {
        match self {
            _ if length == rows => None,
            Side::Inputs if length == 1 => None,
            Side::Inputs => Some(format!("1 or {rows}")),
            Side::Outputs => Some(rows.to_string()),
        }
    }

    fn path(self, name: &str) -> String {
        match self {
            Side::Inputs => name.to_owned(),
            Side::Outputs => format!("outputs.{name}"),
        }
    }
}

/// Sorts columns by the place of their field; what does not fit is a fault and no column.
fn by_place<'n, C: Held>(
    side: Side,
    fields: &[ColumnField],
    columns: impl IntoIterator<Item = (&'n str, C)>,
    rows: usize,
    faults: &mut Vec<Detail>,
) -> Vec<Option<C>> {
    let mut places: Vec<Option<C>> = fields.iter().map(|_| None).collect();
    for (name, column) in columns {
        let found = fields.iter().zip(&mut places).find(|(field, _)| field.name == name);
        let Some((field, place)) = found else {
            faults.push(unknown(side, name, fields));
            continue;
        };
        if let Some(allowed) = side.wrong_length(column.len(), rows) {
            faults.push(wrong_length(side.path(name), column.len(), allowed));
        } else if column.kind().wanted() != field.kind.wanted() {
            let (given, allowed) = (column.kind().wanted().to_owned(), field.kind.wanted().to_owned());
            faults.push(detail(ErrorCode::WrongType, side.path(name), given, allowed));
        } else if place.replace(column).is_some() {
            faults.push(detail(ErrorCode::DuplicateField, side.path(name), String::new(), "once".to_owned()));
        }
    }
    places
}

/// Notes the required fields that nobody gave; one that was given and did not fit is noted already.
fn missing(fields: &[ColumnField], columns: &[Option<Column<'_>>], faults: &mut Vec<Detail>) {
    for (field, column) in fields.iter().zip(columns) {
        let is_noted = faults.iter().any(|fault| fault.path == field.name);
        if column.is_none() && field.need == FieldNeed::Required && !is_noted {
            let allowed = format!("a column of {}, or one value", field.kind.wanted());
            faults.push(detail(ErrorCode::MissingField, field.name.clone(), String::new(), allowed));
        }
    }
}

#[cold]
fn detail(code: ErrorCode, path: String, given: String, allowed: String) -> Detail {
    Detail { code, path, given, allowed, cure: String::new() }
}

#[cold]
fn wrong_length(path: String, length: usize, allowed: String) -> Detail {
    let values = if length == 1 { "value" } else { "values" };
    detail(ErrorCode::ColumnLength, path, format!("{length} {values}"), allowed)
}

#[cold]
fn unknown(side: Side, name: &str, fields: &[ColumnField]) -> Detail {
    let names = || fields.iter().map(|field| field.name.as_str());
    let cure = closest(name, names()).map(|found| format!("did you mean {found}?")).unwrap_or_default();
    let allowed = names().collect::<Vec<_>>().join(", ");
    let refused = match side {
        Side::Inputs => detail(ErrorCode::UnknownField, name.to_owned(), String::new(), allowed),
        Side::Outputs => detail(ErrorCode::UnknownName, "outputs".to_owned(), format!("\"{name}\""), allowed),
    };
    Detail { cure, ..refused }
}

/// Cuts the rows into chunks.
fn chunks<'a>(
    rows: usize,
    inputs: &'a [Option<Column<'a>>],
    mut outputs: Vec<Option<ColumnMut<'a>>>,
    mut marks: Marks<'a>,
    names: &'a [&'a str],
) -> Vec<Chunk<'a>> {
    let starts = (0..rows).step_by(CHUNK);
    let mut made = Vec::with_capacity(starts.len());
    for start in starts {
        let count = CHUNK.min(rows - start);
        let part = outputs.iter_mut().map(|column| column.as_mut().map(|column| column.take(count)));
        let (outputs, marks) = (part.collect(), marks.take(count));
        made.push(Chunk { inputs, outputs, marks, names, start, rows: count, refused: 0, first: None });
    }
    made
}

/// Works chunks off on a number of threads; each takes the next one that is left, whichever it is.
fn work_off(chunks: Vec<Chunk<'_>>, work: fn(&mut Chunk<'_>), threads: u32) -> Result<ColumnsReport> {
    let others = (threads as usize).min(chunks.len()).saturating_sub(1);
    let left = Mutex::new(chunks.into_iter());
    let next = || left.lock().unwrap_or_else(PoisonError::into_inner).next();
    let run = || {
        let mut report = ColumnsReport { refused: 0, first: None };
        while let Some(mut chunk) = next() {
            work(&mut chunk);
            report = merged(report, ColumnsReport { refused: chunk.refused, first: chunk.first });
        }
        report
    };
    if others == 0 {
        return Ok(run());
    }
    let reports = thread::scope(|scope| {
        // A thread that cannot be had is no reason to fail: the others work off what is left.
        let spawned = (0..others).filter_map(|_| thread::Builder::new().spawn_scoped(scope, run).ok());
        let handles: Vec<_> = spawned.collect();
        let own = run();
        handles.into_iter().map(thread::ScopedJoinHandle::join).try_fold(own, |total, part| Ok(merged(total, part?)))
    });
    reports.map_err(|_: Box<dyn core::any::Any + Send>| {
        Error::from(Fault::plain(ErrorCode::Panic, "", "a thread that ends", "please report it"))
    })
}

fn merged(one: ColumnsReport, other: ColumnsReport) -> ColumnsReport {
    let firsts = [one.first, other.first].into_iter().flatten();
    ColumnsReport { refused: one.refused + other.refused, first: firsts.min_by_key(|(row, _)| *row) }
}
