//! Columns: a calculation over arrays of NumPy in one call.

use beamcraft_core::columns::{ABSENT, Column, ColumnField, ColumnMut, Columns, FieldKind};
use beamcraft_core::error::{ErrorCode, closest};
use beamcraft_core::registry;
use pyo3::exceptions::{PyImportError, PyTypeError, PyValueError};
use pyo3::prelude::*;
use pyo3::types::{PyBool, PyDict, PyFloat, PyInt, PyString};

use crate::array::{Array, Item};
use crate::errors;

/// Calculate many rows at once: arrays in, arrays out.
///
/// Takes every calculation of numbers and choices (those that list ``"flat"`` inputs in :func:`calculations`). A row gives
/// the same bits as a single call, with any number of threads. Contiguous float64 and uint32 arrays are read where they
/// lie, anything else is converted once; the interpreter is released meanwhile, and nobody may write to the arrays until
/// the call is done. NumPy is imported on the first call.
///
/// Parameters
/// ----------
/// name : str
///     Name of the calculation.
/// inputs : dict
///     For each input field an array of one dimension, or one value for all rows. A choice is its text, or a code: its
///     place in ``typing.get_args`` of its type in :mod:`beamcraft.choices`. NaN in an optional field stands for no value
///     (``4294967295`` among codes). Fields with a default may be left out; ``None`` does the same.
/// outputs : iterable of str, optional
///     Output fields that are wanted; all of them by default. Fewer take less time.
/// errors : {'raise', 'nan'}, default 'raise'
///     What a row that is refused does: raise an exception that names the first of them, or leave NaN (``4294967295`` among
///     codes) in the outputs of that row alone.
/// threads : int, default 1
///     On how many threads, 1 to 64; worth it above some ten thousand rows.
///
/// Returns
/// -------
/// dict of str to numpy.ndarray
///     A float64 array for each output of numbers, a uint32 array for each of choices or counts. With ``errors="nan"`` also
///     ``row_status`` (0, or the number of an error code) and ``row_fault_field`` (place of the input field at fault,
///     4294967295 for none).
///
/// Raises
/// ------
/// BeamcraftError
///     Names, kinds or lengths do not fit (all of them at once), or a row is refused and errors are raised.
/// TypeError
///     A value is neither a number nor an array of one dimension of the kind needed.
/// ImportError
///     NumPy is not installed.
///
/// Examples
/// --------
/// >>> import beamcraft, numpy
/// >>> room = {"temperature_c": 21.1, "relative_humidity_pct": numpy.array([40.0, 65.0, 120.0])}
/// >>> wood = beamcraft.columns("equilibrium_moisture", room, ["moisture_pct"], errors="nan")
/// >>> [f"{percent:.1f}" for percent in wood["moisture_pct"]]
/// ['7.7', '12.0', 'nan']
/// >>> [int(code) for code in wood["row_status"]]
/// [0, 0, 257]
#[pyfunction]
#[pyo3(signature = (name, inputs, outputs = None, *, errors = "raise", threads = 1))]
pub(crate) fn columns<'py>(
    py: Python<'py>,
    name: &str,
    inputs: &Bound<'py, PyAny>,
    outputs: Option<&Bound<'py, PyAny>>,
    errors: &str,
    threads: u32,
) -> PyResult<Bound<'py, PyDict>> {
    if !matches!(errors, "raise" | "nan") {
        return Err(PyValueError::new_err(format!("errors: raise or nan is needed, got {errors}")));
    }
    let calculation = registry::find(name).map_err(|fault| errors::raise(py, &fault))?;
    // Whether it takes columns at all is said by the call itself.
    let (known_inputs, known_outputs) =
        calculation.column_fields().map_or_else(Default::default, |fields| (fields.inputs, fields.outputs));
    let numpy = py.import("numpy").map_err(|_| {
        PyImportError::new_err("columns needs NumPy, which the rest of beamcraft does without: pip install numpy")
    })?;
    let given = given(&numpy, inputs, &known_inputs)?;
    let lengths = || given.iter().map(|(_, values)| values.column().0);
    let rows = lengths().find(|length| *length != 1).unwrap_or(1);

    let mut places = Vec::new();
    for field in wanted(outputs, &known_outputs)? {
        let kind = known_outputs.iter().find(|known| known.name == field).map(|known| &known.kind);
        let array = match kind {
            Some(FieldKind::Whole | FieldKind::Choice(_)) => Place::Codes(Array::empty(&numpy, rows)?),
            // A name that is not known is refused by the call.
            Some(FieldKind::Number) | None => Place::Numbers(Array::empty(&numpy, rows)?),
        };
        places.push((field, array));
    }
    let keeps_rows = errors == "nan";
    let count = if keeps_rows { rows } else { 0 };
    let (mut status, mut fault_fields) = (Array::<u32>::empty(&numpy, count)?, Array::<u32>::empty(&numpy, count)?);

    let columns: Vec<_> = given.iter().map(|(name, values)| (name.as_str(), values.column().1)).collect();
    let call = Columns {
        rows,
        inputs: &columns,
        outputs: places.iter_mut().map(|(name, place)| (name.as_str(), place.column_mut())).collect(),
        status: keeps_rows.then(|| status.values_mut()),
        fault_fields: keeps_rows.then(|| fault_fields.values_mut()),
        threads,
    };
    let report = py.detach(|| errors::guarded(|| registry::columns(name, call)));
    let report = report.map_err(|fault| errors::raise(py, &fault))?;
    if !keeps_rows {
        report.refuse_any().map_err(|fault| errors::raise(py, &fault))?;
    }
    let result = PyDict::new(py);
    for (name, place) in &places {
        result.set_item(name, place.object())?;
    }
    if keeps_rows {
        result.set_item("row_status", status.object())?;
        result.set_item("row_fault_field", fault_fields.object())?;
    }
    Ok(result)
}

/// Values of an input field.
enum Values<'py> {
    Number(f64),
    Code(u32),
    Numbers(Array<'py, f64>),
    Codes(Array<'py, u32>),
    /// Codes of texts.
    Named(Vec<u32>),
}

impl Values<'_> {
    /// How many there are, and the column.
    fn column(&self) -> (usize, Column<'_>) {
        fn numbers(values: &[f64]) -> (usize, Column<'_>) {
            (values.len(), Column::Numbers(values))
        }
        fn codes(values: &[u32]) -> (usize, Column<'_>) {
            (values.len(), Column::Codes(values))
        }
        match self {
            Values::Number(value) => numbers(core::slice::from_ref(value)),
            Values::Code(code) => codes(core::slice::from_ref(code)),
            Values::Numbers(array) => numbers(array.values()),
            Values::Codes(array) => codes(array.values()),
            Values::Named(named) => codes(named),
        }
    }
}

/// Place for the values of an output field.
enum Place<'py> {
    Numbers(Array<'py, f64>),
    Codes(Array<'py, u32>),
}

impl<'py> Place<'py> {
    fn column_mut(&mut self) -> ColumnMut<'_> {
        match self {
            Place::Numbers(array) => ColumnMut::Numbers(array.values_mut()),
            Place::Codes(array) => ColumnMut::Codes(array.values_mut()),
        }
    }

    fn object(&self) -> &Bound<'py, PyAny> {
        match self {
            Place::Numbers(array) => array.object(),
            Place::Codes(array) => array.object(),
        }
    }
}

/// Names of the outputs that are wanted.
fn wanted(outputs: Option<&Bound<'_, PyAny>>, known: &[ColumnField]) -> PyResult<Vec<String>> {
    let Some(outputs) = outputs else { return Ok(known.iter().map(|field| field.name.clone()).collect()) };
    if outputs.is_instance_of::<PyString>() {
        return Err(PyTypeError::new_err("outputs: a list of names is needed, got one text"));
    }
    outputs.try_iter()?.map(|name| name?.extract()).collect()
}

/// The inputs that are given, as columns.
fn given<'py>(
    numpy: &Bound<'py, PyModule>,
    inputs: &Bound<'py, PyAny>,
    known: &[ColumnField],
) -> PyResult<Vec<(String, Values<'py>)>> {
    if !inputs.hasattr("items")? {
        let kind = inputs.get_type().name()?;
        return Err(PyTypeError::new_err(format!("inputs: a dict of columns is needed, got {kind}")));
    }
    let mut found = Vec::new();
    for item in inputs.call_method0("items")?.try_iter()? {
        let (name, value): (String, Bound<'py, PyAny>) = item?.extract()?;
        if value.is_none() {
            continue;
        }
        let kind = known.iter().find(|field| field.name == name).map(|field| &field.kind);
        let values = match kind {
            Some(FieldKind::Choice(names)) => codes(numpy, &name, &value, Some(names))?,
            Some(FieldKind::Whole) => codes(numpy, &name, &value, None)?,
            Some(FieldKind::Number) => numbers(numpy, &name, &value)?,
            // A name that is not known is refused by the call, whatever it holds.
            None => Values::Number(0.0),
        };
        found.push((name, values));
    }
    Ok(found)
}

#[cold]
fn wrong_kind(name: &str, value: &Bound<'_, PyAny>, wanted: &str) -> PyErr {
    let shown = value.repr().map(|text| text.to_string_lossy().chars().take(60).collect::<String>());
    let kind = value.get_type().name().map(|kind| kind.to_string_lossy().into_owned()).unwrap_or_default();
    PyTypeError::new_err(format!("{name}: {wanted} is needed, got {kind} {}", shown.unwrap_or_default()))
}

/// The value as an array of at most one dimension, and the letter of its kind.
fn array<'py>(
    numpy: &Bound<'py, PyModule>,
    name: &str,
    value: &Bound<'py, PyAny>,
    wanted: &str,
) -> PyResult<(Bound<'py, PyAny>, String)> {
    if numpy.getattr("ma")?.call_method1("isMaskedArray", (value,))?.is_truthy()? {
        return Err(wrong_kind(name, value, "an array without a mask (fill it with NaN)"));
    }
    let array = numpy.call_method1("asarray", (value,))?;
    if array.getattr("ndim")?.extract::<usize>()? > 1 {
        return Err(wrong_kind(name, value, "an array of one dimension"));
    }
    let kind: String = array.getattr("dtype")?.getattr("kind")?.extract()?;
    if matches!(kind.as_str(), "b" | "c" | "m" | "M" | "V" | "S") {
        return Err(wrong_kind(name, value, wanted));
    }
    Ok((array, kind))
}

fn numbers<'py>(numpy: &Bound<'py, PyModule>, name: &str, value: &Bound<'py, PyAny>) -> PyResult<Values<'py>> {
    const WANTED: &str = "a number or an array of numbers";
    if value.is_instance_of::<PyBool>() || value.is_instance_of::<PyString>() {
        return Err(wrong_kind(name, value, WANTED));
    }
    if value.is_instance_of::<PyFloat>() || value.is_instance_of::<PyInt>() {
        return Ok(Values::Number(value.extract()?));
    }
    let (array, kind) = array(numpy, name, value, WANTED)?;
    if !matches!(kind.as_str(), "f" | "i" | "u") {
        return Err(wrong_kind(name, value, WANTED));
    }
    Array::of(numpy, &array).map(Values::Numbers)
}

fn codes<'py>(
    numpy: &Bound<'py, PyModule>,
    name: &str,
    value: &Bound<'py, PyAny>,
    choices: Option<&[String]>,
) -> PyResult<Values<'py>> {
    let wanted = if choices.is_some() {
        "a choice, its code, or an array of either"
    } else {
        "a whole number or an array of them"
    };
    if value.is_instance_of::<PyBool>() {
        return Err(wrong_kind(name, value, wanted));
    }
    if let Some(choices) = choices
        && let Ok(text) = value.cast::<PyString>()
    {
        return code_of(text, name, choices).map(Values::Code);
    }
    let (array, kind) = array(numpy, name, value, wanted)?;
    match (kind.as_str(), choices) {
        ("u" | "i", _) => {
            // Converting would wrap what does not fit.
            if array.getattr("size")?.extract::<usize>()? > 0 && !array.getattr("dtype")?.eq(<u32 as Item>::DTYPE)? {
                let end = |method: &str| array.call_method0(method)?.extract::<i128>();
                if end("min")? < 0 || end("max")? > i128::from(u32::MAX) {
                    return Err(wrong_kind(name, value, "an array of codes from 0 to 4294967295"));
                }
            }
            Array::of(numpy, &array).map(Values::Codes)
        }
        ("U" | "O" | "T", Some(choices)) => {
            let named: PyResult<Vec<u32>> = array
                .call_method0("ravel")?
                .call_method0("tolist")?
                .try_iter()?
                .map(|item| match item? {
                    none if none.is_none() => Ok(ABSENT),
                    item => match item.cast::<PyString>() {
                        Ok(text) => code_of(text, name, choices),
                        Err(_) => Err(wrong_kind(name, &item, "a choice")),
                    },
                })
                .collect();
            named.map(Values::Named)
        }
        _ => Err(wrong_kind(name, value, wanted)),
    }
}

/// The code of a choice.
fn code_of(text: &Bound<'_, PyString>, name: &str, choices: &[String]) -> PyResult<u32> {
    let given = text.to_string_lossy();
    if let Some(code) = choices.iter().position(|choice| *choice == given) {
        return Ok(code as u32);
    }
    let cure = closest(&given, choices.iter().map(String::as_str));
    let cure = cure.map(|choice| format!("did you mean {choice}?")).unwrap_or_default();
    let (given, allowed) = (format!("\"{given}\""), choices.join(", "));
    Err(errors::refuse(text.py(), ErrorCode::UnknownName, name.to_owned(), given, allowed, cure))
}
