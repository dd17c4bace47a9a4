//! What the generated JSON faces of the typed functions are made of.

use core::mem::MaybeUninit;
use core::ptr;

use beamcraft::{
    BEAMCRAFT_OK, beamcraft_error, beamcraft_error_code, beamcraft_error_count, beamcraft_error_free,
    beamcraft_error_text, beamcraft_status,
};
use beamcraft_core::json::format_number;
use serde_json::Value;

use crate::allocation::allocations;

/// Why a call was refused, as the C caller sees it.
#[derive(Debug, PartialEq)]
pub(crate) struct Refused {
    pub(crate) status: u32,
    pub(crate) codes: Vec<u32>,
    pub(crate) text: String,
}

/// A JSON input as it fills a struct.
pub(crate) struct Given<'a>(pub(crate) &'a Value);

impl Given<'_> {
    pub(crate) fn number(&self, field: &str) -> Option<f64> {
        self.0.get(field)?.as_f64()
    }

    #[allow(dead_code, reason = "used by calculations with arrays")]
    pub(crate) fn numbers<const N: usize>(&self, field: &str) -> Option<[f64; N]> {
        let numbers: Vec<f64> = self.0.get(field)?.as_array()?.iter().filter_map(Value::as_f64).collect();
        numbers.try_into().ok()
    }

    #[allow(dead_code, reason = "used by calculations with counts")]
    pub(crate) fn count(&self, field: &str) -> Option<u32> {
        self.0.get(field)?.as_u64()?.try_into().ok()
    }

    #[allow(dead_code, reason = "used by calculations with choices")]
    pub(crate) fn choice(&self, field: &str, texts: &[&str]) -> Option<u32> {
        let text = self.0.get(field)?.as_str()?;
        texts.iter().position(|known| *known == text)?.try_into().ok()
    }
}

/// Makes the call and takes the error object apart.
pub(crate) fn call<O>(make: impl FnOnce(*mut O, *mut *mut beamcraft_error) -> beamcraft_status) -> Result<O, Refused> {
    let mut output = MaybeUninit::<O>::uninit();
    let mut error = ptr::null_mut();
    let before = allocations();
    let status = make(output.as_mut_ptr(), &raw mut error);
    let allocated = allocations() - before;
    if status == BEAMCRAFT_OK {
        assert!(error.is_null(), "no error object on success");
        assert_eq!(allocated, 0, "a typed call allocates nothing on success");
        // SAFETY: written on success.
        return Ok(unsafe { output.assume_init() });
    }
    Err(take_error(status, error))
}

/// The content of an error object, which is freed.
pub(crate) fn take_error(status: beamcraft_status, error: *mut beamcraft_error) -> Refused {
    assert!(!error.is_null(), "an error object on failure");
    // SAFETY: a live error object.
    let count = unsafe { beamcraft_error_count(error) };
    let codes = (0..count).map(|index| {
        let mut code = 0;
        // SAFETY: a live error object and a writable number.
        assert_eq!(unsafe { beamcraft_error_code(error, index, &raw mut code) }, BEAMCRAFT_OK);
        code
    });
    let codes = codes.collect();
    // SAFETY: a live error object; `text` gives a buffer.
    let text = text(|buffer, capacity, needed| unsafe { beamcraft_error_text(error, buffer, capacity, needed) });
    // SAFETY: freed once.
    unsafe { beamcraft_error_free(error) };
    Refused { status, codes, text: text.expect("the text of an error") }
}

/// Asks for the size of a text, then for the text.
pub(crate) fn text(
    mut give: impl FnMut(*mut core::ffi::c_char, usize, *mut usize) -> beamcraft_status,
) -> Result<String, beamcraft_status> {
    let mut needed = 0;
    let status = give(ptr::null_mut(), 0, &raw mut needed);
    if status != BEAMCRAFT_OK {
        return Err(status);
    }
    let mut bytes = vec![0xAA_u8; needed];
    let status = give(bytes.as_mut_ptr().cast(), bytes.len(), &raw mut needed);
    assert_eq!((status, needed), (BEAMCRAFT_OK, bytes.len()), "the same size twice");
    assert_eq!(bytes.pop(), Some(0), "a closing NUL");
    Ok(String::from_utf8(bytes).expect("UTF-8"))
}

/// Canonical JSON, put together from the outside.
#[derive(Default)]
pub(crate) struct Written(Vec<String>);

impl Written {
    pub(crate) fn put(&mut self, field: &str, value: impl AsRef<str>) {
        self.0.push(format!("\"{field}\":{}", value.as_ref()));
    }

    pub(crate) fn number(value: f64) -> String {
        format_number(value)
    }

    #[allow(dead_code, reason = "used by calculations with choices")]
    pub(crate) fn choice(value: u32, texts: &[&str]) -> String {
        format!("\"{}\"", texts[value as usize])
    }

    #[allow(dead_code, reason = "used by calculations with arrays")]
    pub(crate) fn list(items: impl Iterator<Item = String>) -> String {
        format!("[{}]", items.collect::<Vec<_>>().join(","))
    }

    pub(crate) fn end(self) -> String {
        format!("{{{}}}", self.0.join(","))
    }
}
