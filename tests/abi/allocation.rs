//! Counts the allocations of the thread that asks, and how much it holds at most.

use core::cell::Cell;
use std::alloc::{GlobalAlloc, Layout, System};

use beamcraft_core::columns::{Column, ColumnMut, Columns};
use beamcraft_core::fasten;
use beamcraft_core::registry;

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

/// Allocations of a call over columns whose every third row is refused.
fn allocations_of_columns(name: &str, fields: &[&str], value: f64, output: &str, rows: usize) -> u64 {
    let values: Vec<f64> = (0..rows).map(|row| if row % 3 == 0 { -1e9 } else { value }).collect();
    let inputs: Vec<_> = fields.iter().map(|field| (*field, Column::Numbers(&values))).collect();
    let (mut found, mut status) = (vec![0.0; rows], vec![0; rows]);
    let before = allocations();
    let call = Columns {
        rows,
        inputs: &inputs,
        outputs: vec![(output, ColumnMut::Numbers(&mut found))],
        status: Some(&mut status),
        fault_fields: None,
        threads: 1,
    };
    let report = registry::columns(name, call).expect("columns that fit");
    assert_eq!(report.refused, rows.div_ceil(3));
    allocations() - before
}

#[test]
fn a_row_of_columns_allocates_nothing() {
    let in_lanes = ["temperature_c", "relative_humidity_pct"];
    let row_by_row = ["thickness_a_mm", "thickness_b_mm"];
    for (name, fields, output) in
        [("equilibrium_moisture", in_lanes, "moisture_pct"), ("mitre_pair", row_by_row, "tilt_a_deg")]
    {
        let few = allocations_of_columns(name, &fields, 20.0, output, 10);
        assert_eq!(allocations_of_columns(name, &fields, 20.0, output, 4_000), few, "{name}");
    }
}

/// Allocations of one typed call that answers.
fn allocations_of<I, T, E>(input: &I, call: fn(&I) -> Result<T, E>) -> u64 {
    let before = allocations();
    let found = std::hint::black_box(call(std::hint::black_box(input)));
    let after = allocations();
    assert!(found.is_ok());
    after - before
}

#[test]
fn typed_calls_of_connections_allocate_nothing() {
    let dowel = r#"{"yield_diameter_mm": 6, "bending_yield_mpa": 480, "main_bearing_mpa": 25, "side_bearing_mpa": 35,
        "main_length_mm": 40, "side_length_mm": 20, "max_angle_to_grain_deg": 0}"#;
    let nail = r#"{"fastener": "smooth_nail", "nominal_diameter_mm": 4, "length_mm": 90, "side_specific_gravity": 0.5,
        "side_thickness_mm": 38, "side_angle_to_grain_deg": 0, "main_specific_gravity": 0.42, "main_thickness_mm": 89,
        "main_angle_to_grain_deg": 0, "lateral_n": 100, "withdrawal_n": 20}"#;
    let screw = r#"{"size": "no_10", "screw_length_mm": 63.5, "side_specific_gravity": 0.55, "side_thickness_mm": 19,
        "side_angle_to_grain_deg": 0, "gap_mm": 12.7, "main_specific_gravity": 0.42, "main_thickness_mm": 89,
        "main_angle_to_grain_deg": 0, "lateral_n": 100, "withdrawal_n": 20}"#;
    let johansen = r#"{"fastener": "screw", "diameter_mm": 5, "yield_moment_nmm": 9000, "head_side_mpa": 20, "point_side_mpa": 20,
        "head_side_mm": 20, "point_side_mm": 40, "axial_capacity_n": 1000}"#;
    let lag =
        r#"{"fastener": "lag_screw", "specific_gravity": 0.42, "nominal_diameter_mm": 9.5, "holding_length_mm": 50}"#;
    for (name, count) in [
        ("dowel_shear", allocations_of(&serde_json::from_str(dowel).expect("an input"), fasten::dowel_shear)),
        (
            "dowel_double_shear",
            allocations_of(&serde_json::from_str(dowel).expect("an input"), fasten::dowel_double_shear),
        ),
        (
            "dowel_shear_hollow",
            allocations_of(&serde_json::from_str(dowel).expect("an input"), fasten::dowel_shear_hollow),
        ),
        ("dowel_joint_nds", allocations_of(&serde_json::from_str(nail).expect("an input"), fasten::dowel_joint_nds)),
        ("screw_joint", allocations_of(&serde_json::from_str(screw).expect("an input"), fasten::screw_joint)),
        (
            "ec5_single_shear",
            allocations_of(&serde_json::from_str(johansen).expect("an input"), fasten::ec5_single_shear),
        ),
        (
            "fastener_withdrawal",
            allocations_of(&serde_json::from_str(lag).expect("an input"), fasten::fastener_withdrawal),
        ),
    ] {
        assert_eq!(count, 0, "{name}");
    }
}

/// Lists of scratch beside the output of a body of one leg: the input as sections, edges and places.
const SCRATCH_OF_A_BODY: u64 = 20;

#[test]
fn a_body_allocates_its_panels_and_little_besides() {
    use beamcraft_core::shell::{HollowBodyInput, hollow_body};
    for sides in [4, 12, 24] {
        let boards: Vec<String> =
            (1..=sides).map(|side| format!(r#"{{"face": "side{side}", "thickness_mm": 18}}"#)).collect();
        let text = format!(
            r#"{{"section": {{"regular": {{"sides": {sides}, "across_flats_mm": 400}}}}, "legs": [{{"length_mm": 2400}}],
                "boards": [{}], "left_end": {{"kind": "return_panel", "thickness_mm": 18}},
                "right_end": {{"kind": "open"}}}}"#,
            boards.join(",")
        );
        let input: HollowBodyInput = beamcraft_core::json::read(&text).expect("valid");
        let before = allocations();
        let body = hollow_body(&input).expect("allowed");
        let made = allocations() - before;
        let before = allocations();
        let copy = body.clone();
        let of_output = allocations() - before;
        assert_eq!(copy, body);
        assert!(
            made <= of_output + SCRATCH_OF_A_BODY,
            "{made} allocations for {of_output} of the output of {sides} sides"
        );
    }
}
