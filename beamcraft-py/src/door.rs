//! The JSON door and the lists: what needs no class.

use core::ops::ControlFlow;

use beamcraft_core::error::ErrorCode;
use beamcraft_core::json::{Door, format_number};
use beamcraft_core::plan::ReportLengths;
use beamcraft_core::wood::MaterialTable;
use beamcraft_core::{registry, units};
use pyo3::exceptions::{PyTypeError, PyValueError};
use pyo3::prelude::*;
use pyo3::types::{PyBool, PyDict, PyFloat, PyInt, PyList, PyString, PyTuple};

use crate::cross::compute_text;
use crate::errors;
use crate::generated::{BeamSpec, Plan};

/// The whole job: panels, saw settings, cleat, checks, finish and findings from one spec.
///
/// A spec that describes something that does not work still gives a whole plan, with findings that say why and what would
/// help. The interpreter is released meanwhile.
///
/// Parameters
/// ----------
/// spec : BeamSpec or dict or str
///     The job. In a dict or JSON text, a field that ends in ``_mm`` also takes a length as text, such as ``"7' 3 in"``.
///
/// Returns
/// -------
/// Plan
///     Everything that follows from it.
///
/// Raises
/// ------
/// TypeError
///     The spec is neither of these.
/// BeamcraftError
///     The spec contradicts itself; every fault is named at once, each with its path.
///
/// Examples
/// --------
/// >>> import beamcraft
/// >>> shelf = beamcraft.plan({
/// ...     "beamcraft_spec": 1,
/// ...     "body": {"legs": [{"rectangular": {
/// ...         "length_mm": 1830, "height_mm": 185, "depth_mm": 215,
/// ...         "boards": [{"face": face, "thickness_mm": 20} for face in ("front", "top", "bottom")],
/// ...         "left_end": {"kind": "return_panel", "thickness_mm": 20},
/// ...         "right_end": {"kind": "return_panel", "thickness_mm": 20},
/// ...     }}]},
/// ...     "wood": {"species": "white ash"},
/// ... })
/// >>> [panel.id for panel in shelf.panels]
/// ['front', 'top', 'bottom', 'left_end', 'right_end']
/// >>> beamcraft.plan(shelf.spec) == shelf
/// True
#[pyfunction]
#[pyo3(signature = (spec))]
pub(crate) fn plan(py: Python<'_>, spec: &Bound<'_, PyAny>) -> PyResult<Plan> {
    if !(spec.is_instance_of::<BeamSpec>() || spec.is_instance_of::<PyDict>() || spec.is_instance_of::<PyString>()) {
        let kind = spec.get_type().name()?;
        return Err(PyTypeError::new_err(format!("spec: a BeamSpec, a dict or JSON text is needed, got {kind}")));
    }
    compute_text(py, &input_text(spec)?, "plan")
}

/// Calculate by name: inputs as a dict or JSON text, result as a dict.
///
/// The inputs are read strictly: every unknown, missing, doubled or mistyped field is named at once. A field that ends
/// in ``_mm`` also takes a length as text, such as ``"5 1/4 in"``.
///
/// Parameters
/// ----------
/// name : str
///     Name of the calculation, as in :func:`calculations`.
/// inputs : dict or str
///     Its inputs: a dict (which may hold objects of this module), an object of this module, or JSON text.
///
/// Returns
/// -------
/// dict
///     The result, with the names and units of the class that the function of the same name returns.
///
/// Raises
/// ------
/// BeamcraftError
///     The name is not known, the inputs are refused, or they do not go together.
///
/// Examples
/// --------
/// >>> import beamcraft
/// >>> seam = beamcraft.call("mitre_pair", {"thickness_a_mm": 20, "thickness_b_mm": 20})
/// >>> seam["tilt_a_deg"]
/// 45.0
#[pyfunction]
#[pyo3(signature = (name, inputs))]
pub(crate) fn call<'py>(py: Python<'py>, name: &str, inputs: &Bound<'py, PyAny>) -> PyResult<Bound<'py, PyAny>> {
    let text = input_text(inputs)?;
    let result = call_json(py, name, &text)?;
    py.import("json")?.call_method1("loads", (result,))
}

/// Calculate by name: JSON text in, canonical JSON text out.
///
/// The same inputs give the same bytes on every machine and through every door of the library.
///
/// Parameters
/// ----------
/// name : str
///     Name of the calculation, as in :func:`calculations`.
/// text : str
///     Its inputs as JSON.
///
/// Returns
/// -------
/// str
///     The result as JSON.
///
/// Raises
/// ------
/// BeamcraftError
///     The name is not known, the inputs are refused, or they do not go together.
///
/// Examples
/// --------
/// >>> import beamcraft
/// >>> beamcraft.call_json("mitre_pair", '{"thickness_a_mm": 20, "thickness_b_mm": 20}')[:39]
/// '{"angle_a_deg":45.0,"angle_b_deg":45.0,'
#[pyfunction]
#[pyo3(signature = (name, text))]
pub(crate) fn call_json(py: Python<'_>, name: &str, text: &str) -> PyResult<String> {
    let result = py.detach(|| errors::guarded(|| registry::call(name, text)));
    result.map_err(|fault| errors::raise(py, &fault))
}

/// Calculate by name and follow the search: `cut_list_bars` or `cut_list_boards`.
///
/// Parameters
/// ----------
/// name : str
///     Name of the calculation.
/// inputs : dict or str
///     Its inputs, as for :func:`call`.
/// progress : callable
///     Called some times a second with steps spent, steps that may be spent, the best value and the bound proven so far
///     (``None`` before there is one). When it returns ``False`` the search stops and the best found so far is returned; what
///     it raises stops the search and is raised. Ctrl-C stops it too.
///
/// Returns
/// -------
/// dict
///     The result, as of :func:`call`; ``result["quality"]["end"]`` says whether it was stopped.
///
/// Raises
/// ------
/// BeamcraftError
///     The calculation does not search, the inputs are refused, or they do not go together.
///
/// Examples
/// --------
/// >>> import beamcraft
/// >>> rails = {"stock": [{"name": "8 ft", "length_mm": "8 ft"}], "kerf_mm": 3.2,
/// ...          "parts": [{"name": "rail", "length_mm": 797, "count": 6}]}
/// >>> found = beamcraft.call_with_progress("cut_list_bars", rails, lambda steps, budget, value, bound: True)
/// >>> found["quality"]["proof"], found["stock"][0]["count"]
/// ('optimal', 2)
#[pyfunction]
#[pyo3(signature = (name, inputs, progress))]
pub(crate) fn call_with_progress<'py>(
    py: Python<'py>,
    name: &str,
    inputs: &Bound<'py, PyAny>,
    progress: &Bound<'py, PyAny>,
) -> PyResult<Bound<'py, PyAny>> {
    let text = input_text(inputs)?;
    let mut raised: Option<PyErr> = None;
    let progress = progress.clone().unbind();
    let search = || {
        registry::call_with_progress(name, &text, &mut |state| {
            Python::attach(|py| {
                let answer = py
                    .check_signals()
                    .and_then(|()| progress.call1(py, (state.steps, state.budget, state.value, state.bound)));
                match answer {
                    Ok(answer) if !answer.bind(py).is(PyBool::new(py, false)) => ControlFlow::Continue(()),
                    Ok(_) => ControlFlow::Break(()),
                    Err(error) => {
                        raised = Some(error);
                        ControlFlow::Break(())
                    }
                }
            })
        })
    };
    let result = py.detach(|| errors::guarded(search));
    if let Some(error) = raised {
        return Err(error);
    }
    let result = result.map_err(|fault| errors::raise(py, &fault))?;
    py.import("json")?.call_method1("loads", (result,))
}

/// Draw the result of a calculation as an SVG sheet.
///
/// Parameters
/// ----------
/// name : str
///     ``"plan"`` (the cross section), ``"sawn_body"`` (the panels pulled apart), ``"yearly_movement"`` (moisture and width
///     over twelve months), ``"tolerance_stack"`` (histograms of the visible gaps, mm), ``"fastener_group"`` (the force on each fastener) or
///     ``"cut_list_boards"`` (the boards with their cuts in order).
/// inputs : dict or str
///     Its inputs, as for :func:`call`.
/// lengths : {'metric', 'inches'}, default 'metric'
///     How the movement is written; a plan says so itself.
///
/// Returns
/// -------
/// Drawing
///     The drawing as SVG: a text that a notebook shows as a picture.
///
/// Raises
/// ------
/// BeamcraftError
///     The calculation has no drawing, the inputs are refused, or they do not go together.
/// ValueError
///     The lengths are neither of these.
#[pyfunction]
#[pyo3(signature = (name, inputs, lengths = "metric"))]
pub(crate) fn drawing_svg<'py>(
    py: Python<'py>,
    name: &str,
    inputs: &Bound<'_, PyAny>,
    lengths: &str,
) -> PyResult<Bound<'py, PyAny>> {
    let lengths = match lengths {
        "metric" => ReportLengths::Metric,
        "inches" => ReportLengths::Inches,
        _ => return Err(PyValueError::new_err(format!("lengths: metric or inches is needed, got {lengths}"))),
    };
    let text = input_text(inputs)?;
    let result = py.detach(|| errors::guarded(|| registry::drawing_svg(name, &text, lengths)));
    crate::plan::drawing(py, &result.map_err(|fault| errors::raise(py, &fault))?)
}

/// List every calculation.
///
/// Returns
/// -------
/// list of dict
///     For each its ``name``, ``family`` (the step of the trade it belongs to), ``purpose``, and ``input_schema`` and
///     ``output_schema`` (JSON Schema).
///
/// Examples
/// --------
/// >>> import beamcraft
/// >>> [row["family"] for row in beamcraft.calculations() if row["name"] == "mitre_pair"]
/// ['shell']
#[pyfunction]
pub(crate) fn calculations(py: Python<'_>) -> PyResult<Bound<'_, PyList>> {
    let loads = py.import("json")?.getattr("loads")?;
    let rows: PyResult<Vec<_>> = registry::calculations()
        .map(|row| {
            let entry = PyDict::new(py);
            entry.set_item("name", row.name)?;
            entry.set_item("family", row.family)?;
            entry.set_item("purpose", row.purpose)?;
            let inputs = match row.door {
                Door::Typed => "flat",
                Door::Document => "nested",
            };
            entry.set_item("inputs", inputs)?;
            entry.set_item("input_schema", loads.call1(((row.input_schema)().as_value().to_string(),))?)?;
            entry.set_item("output_schema", loads.call1(((row.output_schema)().as_value().to_string(),))?)?;
            Ok(entry)
        })
        .collect();
    PyList::new(py, rows?)
}

/// A table of materials: every figure with its source and whether it was seen there or recalled.
///
/// Parameters
/// ----------
/// table : {'species', 'strength_classes', 'panels', 'nds_combinations'}
///     Which table: species of wood (averages of clear wood), strength classes of structural timber (characteristic
///     values), sheet goods, or species combinations of the NDS.
///
/// Returns
/// -------
/// MaterialTable
///     A list of dicts that a data frame takes as it is.
///
/// Raises
/// ------
/// BeamcraftError
///     There is no such table.
///
/// Examples
/// --------
/// >>> import beamcraft
/// >>> species = beamcraft.materials("species")
/// >>> [row["movement_tangential_per_pct"] for row in species if row["name"] == "Ash, white"]
/// [0.00274]
#[pyfunction]
#[pyo3(signature = (table))]
pub(crate) fn materials<'py>(py: Python<'py>, table: &str) -> PyResult<Bound<'py, PyAny>> {
    let read = || -> beamcraft_core::error::Result<_> {
        let table = MaterialTable::find(table)?;
        let rows =
            (0..table.count()).map(|index| table.row_json(index)).collect::<beamcraft_core::error::Result<Vec<_>>>()?;
        Ok((table.columns()?, format!("[{}]", rows.join(","))))
    };
    let (columns, rows) = py.detach(|| errors::guarded(read)).map_err(|fault| errors::raise(py, &fault))?;
    let rows = py.import("json")?.call_method1("loads", (rows,))?;
    py.import("beamcraft._table")?.getattr("MaterialTable")?.call1((table, columns, rows))
}

/// Place of a material in its table, by its name.
///
/// Parameters
/// ----------
/// table : {'species', 'strength_classes', 'panels', 'nds_combinations'}
///     Which table, as for :func:`materials`.
/// name : str
///     Common or botanical name of a species, a class, a panel, a combination or its short form.
///
/// Returns
/// -------
/// int
///     Place of its row, counted from 0.
///
/// Raises
/// ------
/// BeamcraftError
///     The name fits none, told with the closest one, or several, told with all of them.
///
/// Examples
/// --------
/// >>> import beamcraft
/// >>> species = beamcraft.materials("species")
/// >>> species[beamcraft.find_material("species", "Juglans nigra")]["name"]
/// 'Walnut, black'
#[pyfunction]
#[pyo3(signature = (table, name))]
pub(crate) fn find_material(py: Python<'_>, table: &str, name: &str) -> PyResult<usize> {
    let find = || MaterialTable::find(table)?.position(name);
    py.detach(|| errors::guarded(find)).map_err(|fault| errors::raise(py, &fault))
}

/// List every error code: number, name, meaning.
///
/// Returns
/// -------
/// list of tuple
///     Number, name and one sentence for each, in the order of the numbers.
///
/// Examples
/// --------
/// >>> import beamcraft
/// >>> beamcraft.error_codes()[0][1]
/// 'out_of_range'
#[pyfunction]
pub(crate) fn error_codes() -> Vec<(u32, &'static str, &'static str)> {
    ErrorCode::ALL.iter().map(|code| (*code as u32, code.name(), code.describe())).collect()
}

/// Read a shop length, in millimetres.
///
/// Parameters
/// ----------
/// text : str
///     Length with its unit, such as ``5 1/4"``, ``2' 3-1/2"``, ``133.4 mm``. A unit is never guessed.
///
/// Returns
/// -------
/// float
///     Length, mm.
///
/// Raises
/// ------
/// InputError
///     The text is not a length, or has no unit.
///
/// Examples
/// --------
/// >>> import beamcraft
/// >>> beamcraft.parse_length('5 1/4"')
/// 133.35
#[pyfunction]
#[pyo3(signature = (text, /))]
pub(crate) fn parse_length(py: Python<'_>, text: &str) -> PyResult<f64> {
    units::parse_length(text).map_err(|fault| errors::raise(py, &fault.into()))
}

/// JSON text of inputs: text as it is, anything else written out.
pub(crate) fn input_text(inputs: &Bound<'_, PyAny>) -> PyResult<String> {
    if let Ok(text) = inputs.cast::<PyString>() {
        return Ok(text.to_str()?.to_owned());
    }
    let mut out = String::new();
    Writer { out: &mut out }.value(inputs, "", 0)?;
    Ok(out)
}

/// Deepest nesting of inputs: below what the JSON reader takes, and an end for a dict that holds itself.
const DEEPEST: usize = 100;

struct Writer<'o> {
    out: &'o mut String,
}

impl Writer<'_> {
    fn value(&mut self, value: &Bound<'_, PyAny>, path: &str, depth: usize) -> PyResult<()> {
        let py = value.py();
        if depth > DEEPEST {
            let allowed = format!("{DEEPEST} levels of dicts and lists");
            return Err(refused(py, ErrorCode::Malformed, path, "more levels", &allowed));
        }
        if value.is_none() {
            self.out.push_str("null");
        } else if let Ok(truth) = value.cast::<PyBool>() {
            self.out.push_str(if truth.is_true() { "true" } else { "false" });
        } else if let Ok(text) = value.cast::<PyString>() {
            let text = text.to_str().map_err(|_| {
                refused(py, ErrorCode::Malformed, path, "a text with a lone surrogate", "text that UTF-8 can hold")
            })?;
            self.text(text);
        } else if value.is_instance_of::<PyInt>() {
            self.whole(value, path)?;
        } else if let Ok(number) = value.cast::<PyFloat>() {
            self.number(py, number.value(), path)?;
        } else if let Ok(dict) = value.cast::<PyDict>() {
            self.dict(dict, path, depth)?;
        } else if value.is_instance_of::<PyList>() || value.is_instance_of::<PyTuple>() {
            self.out.push('[');
            for (k, item) in value.try_iter()?.enumerate() {
                if k > 0 {
                    self.out.push(',');
                }
                self.value(&item?, &format!("{path}[{k}]"), depth + 1)?;
            }
            self.out.push(']');
        } else if let Some(to_json) = value.getattr_opt("to_json")? {
            self.out.push_str(to_json.call0()?.cast::<PyString>()?.to_str()?);
        } else if let Some(index) = value.getattr_opt("__index__")? {
            // Whole numbers of array libraries.
            self.whole(&index.call0()?, path)?;
        } else if let Ok(number) = value.extract::<f64>() {
            // Their floats, decimals and fractions.
            self.number(py, number, path)?;
        } else {
            let kind = value.get_type().name()?;
            let allowed = "numbers, texts, lists, dicts and objects of this module";
            return Err(refused(py, ErrorCode::WrongType, path, &kind.to_string_lossy(), allowed));
        }
        Ok(())
    }

    fn dict(&mut self, dict: &Bound<'_, PyDict>, path: &str, depth: usize) -> PyResult<()> {
        self.out.push('{');
        for (k, (key, item)) in dict.iter().enumerate() {
            let Ok(name) = key.extract::<String>() else {
                let given = key.repr()?;
                return Err(refused(
                    dict.py(),
                    ErrorCode::UnknownField,
                    path,
                    &given.to_string_lossy(),
                    "names as keys",
                ));
            };
            if k > 0 {
                self.out.push(',');
            }
            self.text(&name);
            self.out.push(':');
            let inner = if path.is_empty() { name } else { format!("{path}.{name}") };
            self.value(&item, &inner, depth + 1)?;
        }
        self.out.push('}');
        Ok(())
    }

    fn number(&mut self, py: Python<'_>, number: f64, path: &str) -> PyResult<()> {
        if !number.is_finite() {
            return Err(refused(py, ErrorCode::NotFinite, path, &number.to_string(), "a finite number"));
        }
        self.out.push_str(&format_number(number));
        Ok(())
    }

    fn whole(&mut self, value: &Bound<'_, PyAny>, path: &str) -> PyResult<()> {
        // Through `int`, so that a subclass with a text of its own cannot write into the JSON.
        if let Ok(number) = value.extract::<i64>() {
            self.out.push_str(&number.to_string());
            return Ok(());
        }
        match value.extract::<f64>() {
            Ok(number) => self.number(value.py(), number, path),
            Err(_) => Err(refused(value.py(), ErrorCode::OutOfRange, path, "a whole number beyond 1e308", "a number")),
        }
    }

    fn text(&mut self, text: &str) {
        self.out.push_str(&serde_json::Value::from(text).to_string());
    }
}

#[cold]
fn refused(py: Python<'_>, code: ErrorCode, path: &str, given: &str, allowed: &str) -> PyErr {
    errors::refuse(py, code, path.to_owned(), given.to_owned(), allowed.to_owned(), String::new())
}
