//! Counts the allocations of the thread that asks.

use core::cell::Cell;
use std::alloc::{GlobalAlloc, Layout, System};

struct Counting;

thread_local! {
    static COUNT: Cell<u64> = const { Cell::new(0) };
}

#[global_allocator]
static COUNTING: Counting = Counting;

fn count() {
    // The counter may be gone while a thread ends; nobody asks then.
    let _ = COUNT.try_with(|count| count.set(count.get() + 1));
}

// SAFETY: hands everything on to the system's allocator.
unsafe impl GlobalAlloc for Counting {
    unsafe fn alloc(&self, layout: Layout) -> *mut u8 {
        count();
        // SAFETY: the same contract.
        unsafe { System.alloc(layout) }
    }

    unsafe fn dealloc(&self, pointer: *mut u8, layout: Layout) {
        // SAFETY: the same contract.
        unsafe { System.dealloc(pointer, layout) }
    }

    unsafe fn realloc(&self, pointer: *mut u8, layout: Layout, size: usize) -> *mut u8 {
        count();
        // SAFETY: the same contract.
        unsafe { System.realloc(pointer, layout, size) }
    }
}

/// How often this thread has allocated so far.
pub(crate) fn allocations() -> u64 {
    COUNT.with(Cell::get)
}

#[test]
fn the_counter_counts() {
    let before = allocations();
    let text = std::hint::black_box("counted".to_owned());
    assert_eq!((text.len(), allocations() - before), (7, 1));
}
