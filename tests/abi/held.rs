//! A handle of the library, held by a test.

use core::ffi::c_char;
use core::ptr;

use beamcraft::{BEAMCRAFT_OK, beamcraft_body, beamcraft_body_free, beamcraft_body_new, beamcraft_error};
use beamcraft::{beamcraft_plan, beamcraft_plan_free, beamcraft_plan_new, beamcraft_status};
use beamcraft_core::error::ErrorCode;

use crate::face::text;

type New<H> = unsafe extern "C" fn(*const c_char, usize, *mut *mut H, *mut *mut beamcraft_error) -> beamcraft_status;

/// What is made from a text, read by pointer and freed in the end.
pub(crate) struct Held<H> {
    pub(crate) object: *mut H,
    free: unsafe extern "C" fn(*mut H),
}

/// Makes a plan.
pub(crate) fn held_plan(spec: &str) -> Held<beamcraft_plan> {
    Held::of(spec, beamcraft_plan_new, beamcraft_plan_free)
}

/// Makes a body with its cuts.
pub(crate) fn held_body(spec: &str) -> Held<beamcraft_body> {
    Held::of(spec, beamcraft_body_new, beamcraft_body_free)
}

impl<H> Held<H> {
    fn of(spec: &str, new: New<H>, free: unsafe extern "C" fn(*mut H)) -> Self {
        let (mut object, mut error) = (ptr::null_mut(), ptr::null_mut());
        // SAFETY: a live text and writable pointers.
        let status = unsafe { new(spec.as_ptr().cast(), spec.len(), &raw mut object, &raw mut error) };
        assert_eq!(status, BEAMCRAFT_OK);
        assert!(error.is_null() && !object.is_null());
        Self { object, free }
    }

    pub(crate) fn text(
        &self,
        give: impl Fn(*const H, *mut c_char, usize, *mut usize, *mut *mut beamcraft_error) -> u32,
    ) -> String {
        text(|buffer, capacity, needed| give(self.object, buffer, capacity, needed, ptr::null_mut())).expect("a text")
    }

    pub(crate) fn value<T: Default>(&self, give: impl FnOnce(*const H, *mut T, *mut *mut beamcraft_error) -> u32) -> T {
        let mut value = T::default();
        assert_eq!(give(self.object, &raw mut value, ptr::null_mut()), BEAMCRAFT_OK);
        value
    }

    /// A list; a buffer that is one short is refused first.
    pub(crate) fn list<T: Default + Clone>(
        &self,
        give: impl Fn(*const H, *mut T, usize, *mut usize, *mut *mut beamcraft_error) -> u32,
    ) -> Vec<T> {
        let mut needed = 0;
        assert_eq!(give(self.object, ptr::null_mut(), 0, &raw mut needed, ptr::null_mut()), BEAMCRAFT_OK);
        let mut items = vec![T::default(); needed];
        let small = give(self.object, items.as_mut_ptr(), needed - 1, &raw mut needed, ptr::null_mut());
        assert_eq!((small, needed), (ErrorCode::BufferTooSmall as u32, items.len()));
        assert_eq!(give(self.object, items.as_mut_ptr(), needed, &raw mut needed, ptr::null_mut()), BEAMCRAFT_OK);
        items
    }
}

impl<H> Drop for Held<H> {
    fn drop(&mut self) {
        // SAFETY: made by the function that belongs to it, and freed once.
        unsafe { (self.free)(self.object) };
    }
}
