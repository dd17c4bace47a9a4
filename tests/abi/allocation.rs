//! Counts the allocations of the thread that asks, and how much it holds at most.

use core::cell::Cell;
use std::alloc::{GlobalAlloc, Layout, System};

struct Counting;

thread_local! {
    static COUNT: Cell<u64> = const { Cell::new(0) };
    static HELD: Cell<i64> = const { Cell::new(0) };
    static MOST: Cell<i64> = const { Cell::new(0) };
}

#[global_allocator]
static COUNTING: Counting = Counting;

fn count() {
    // The counter may be gone while a thread ends; nobody asks then.
    let _ = COUNT.try_with(|count| count.set(count.get() + 1));
}

/// Bytes taken, or given back when negative.
fn hold(bytes: i64) {
    let held = HELD.try_with(|held| {
        held.set(held.get() + bytes);
        held.get()
    });
    let _ = MOST.try_with(|most| most.set(most.get().max(held.unwrap_or(0))));
}

// SAFETY: hands everything on to the system's allocator.
unsafe impl GlobalAlloc for Counting {
    unsafe fn alloc(&self, layout: Layout) -> *mut u8 {
        count();
        hold(layout.size() as i64);
        // SAFETY: the same contract.
        unsafe { System.alloc(layout) }
    }

    unsafe fn dealloc(&self, pointer: *mut u8, layout: Layout) {
        hold(-(layout.size() as i64));
        // SAFETY: the same contract.
        unsafe { System.dealloc(pointer, layout) }
    }

    unsafe fn realloc(&self, pointer: *mut u8, layout: Layout, size: usize) -> *mut u8 {
        count();
        hold(size as i64 - layout.size() as i64);
        // SAFETY: the same contract.
        unsafe { System.realloc(pointer, layout, size) }
    }
}

/// How often this thread has allocated so far.
pub(crate) fn allocations() -> u64 {
    COUNT.with(Cell::get)
}

/// Most bytes that this thread holds during a call, beyond what it held before.
fn most_held<T>(call: impl FnOnce() -> T) -> i64 {
    let before = HELD.get();
    MOST.set(before);
    drop(call());
    MOST.get() - before
}

#[test]
fn memory_is_flat_in_the_number_of_samples() {
    let stack = |samples: u32| {
        let edge = r#"{"panel": "a", "thickness_mm": 20, "width_mm": 200, "cut_side": "show_face_down", "tilt_sources": ["tilt"]}"#;
        let text = format!(
            r#"{{"seams": [{{"name": "front|top", "a": {edge}, "b": {edge}, "hold": "drawn_tight"}}],
                "angle_sources": [{{"name": "tilt", "distribution": "normal", "spread_deg": 0.1}}],
                "burnish_gap_mm": 0.1, "filler_gap_mm": 0.3, "samples": {samples}}}"#
        );
        let input: beamcraft_core::tolerance::ToleranceStackInput = beamcraft_core::json::read(&text).expect("valid");
        most_held(|| beamcraft_core::tolerance::tolerance_stack(&input).expect("allowed"))
    };
    // From the second round of chunks on, everything is used again.
    let (some, more) = (stack(8 * 65_536), stack(24 * 65_536));
    assert!(
        some > 10_000 && more <= some + 1_024,
        "{some} bytes for half a million samples, {more} for three times as many"
    );
}

#[test]
fn the_counter_counts() {
    let before = allocations();
    let text = std::hint::black_box("counted".to_owned());
    assert_eq!((text.len(), allocations() - before), (7, 1));
}
