//! Columns of NumPy, read and written where they lie. The only unsafe code of this crate.
//!
//! The stable ABI of Python 3.10 has no buffers, so an array's address comes from NumPy's array interface. Every array
//! here went through `numpy.asarray` or `numpy.empty` just before: a plain `ndarray` in one row, aligned, of the machine's
//! own byte order. Nobody may write to it during the call; the docs of `columns` say so.
#![allow(unsafe_code, reason = "arrays are read where they lie: no copy of a million rows")]

use core::marker::PhantomData;
use core::slice;

use pyo3::exceptions::PyTypeError;
use pyo3::prelude::*;

/// A value that an array can hold.
pub(crate) trait Item: Copy {
    /// Its name in NumPy.
    const DTYPE: &'static str;
}

impl Item for f64 {
    const DTYPE: &'static str = "float64";
}

impl Item for u32 {
    const DTYPE: &'static str = "uint32";
}

/// An array of NumPy, kept alive, and where its values lie.
pub(crate) struct Array<'py, T> {
    object: Bound<'py, PyAny>,
    address: usize,
    count: usize,
    items: PhantomData<T>,
}

impl<'py, T: Item> Array<'py, T> {
    /// The array itself where it already has the form that is needed, or a copy that has.
    pub(crate) fn of(numpy: &Bound<'py, PyModule>, array: &Bound<'py, PyAny>) -> PyResult<Self> {
        let plain = numpy.call_method1("asarray", (array, T::DTYPE, "C"))?;
        let aligned = plain.getattr("flags")?.getattr("aligned")?.is_truthy()?;
        let object = if aligned { plain } else { plain.call_method0("copy")? };
        Self::at_home(object)
    }

    /// A new array without values.
    pub(crate) fn empty(numpy: &Bound<'py, PyModule>, count: usize) -> PyResult<Self> {
        Self::at_home(numpy.call_method1("empty", (count, T::DTYPE))?)
    }

    fn at_home(object: Bound<'py, PyAny>) -> PyResult<Self> {
        let interface = object.getattr("__array_interface__")?;
        let address: usize = interface.get_item("data")?.get_item(0)?.extract()?;
        let count: usize = object.getattr("size")?.extract()?;
        let fits = address.is_multiple_of(align_of::<T>())
            && object.getattr("dtype")?.eq(T::DTYPE)?
            && object.getattr("flags")?.getattr("c_contiguous")?.is_truthy()?;
        if !fits || (address == 0 && count > 0) {
            return Err(PyTypeError::new_err("an array that NumPy itself does not lay out as asked"));
        }
        Ok(Self { object, address, count, items: PhantomData })
    }

    /// The object of Python.
    pub(crate) fn object(&self) -> &Bound<'py, PyAny> {
        &self.object
    }

    /// The values.
    pub(crate) fn values(&self) -> &[T] {
        if self.count == 0 {
            return &[];
        }
        // SAFETY: `count` values in one row, aligned, alive as long as the object, which `self` holds; that nobody writes
        // to them meanwhile is what the docs of `columns` ask of the caller.
        unsafe { slice::from_raw_parts(core::ptr::with_exposed_provenance(self.address), self.count) }
    }

    /// The values of an array made by [`Array::empty`], to be written.
    pub(crate) fn values_mut(&mut self) -> &mut [T] {
        if self.count == 0 {
            return &mut [];
        }
        // SAFETY: as above; the array was made here and no one else has seen it yet.
        unsafe { slice::from_raw_parts_mut(core::ptr::with_exposed_provenance_mut(self.address), self.count) }
    }
}
