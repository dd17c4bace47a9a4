//! How long a row of columns takes: calculations in lanes, one that is worked off row by row, and what the machine itself
//! needs for a division and a square root.
//!
//! `cargo bench -p beamcraft-core --bench columns`. Every timed call asserts that no row is refused.
//! `tests/peers/run-columns` times the same columns beside vectorised NumPy in one run.

#![allow(clippy::expect_used, missing_docs, reason = "a bench stops at the first wrong result")]

use std::hint::black_box;

use beamcraft_core::columns::{Column, ColumnMut, Columns};
use beamcraft_core::movement::BoardCut;
use beamcraft_core::registry;
use criterion::{Criterion, Throughput, criterion_group, criterion_main};

/// Length of a column.
const ROWS: usize = 1_000_000;

/// Numbers spread over a range, in no order.
fn spread(low: f64, high: f64, step: f64) -> Vec<f64> {
    (0..ROWS).map(|k| low + (high - low) * (k as f64 * step).fract()).collect()
}

/// A bench: the calculation, its columns by field, the outputs that are wanted.
type Case<'a> = (&'a str, &'a [(&'a str, Vec<f64>)], &'a [&'a str], &'a [&'a str]);

fn cases(bench: &mut Criterion) {
    let air = [("temperature_c", spread(0.0, 40.0, 0.618)), ("relative_humidity_pct", spread(5.0, 95.0, 0.414))];
    let wood = [
        ("specific_gravity", spread(0.35, 0.7, 0.618)),
        ("diameter_mm", spread(3.0, 12.0, 0.414)),
        ("angle_to_grain_deg", spread(0.0, 90.0, 0.732)),
    ];
    let dowel = [
        ("yield_diameter_mm", spread(3.0, 12.0, 0.618)),
        ("bending_yield_mpa", spread(300.0, 700.0, 0.414)),
        ("main_bearing_mpa", spread(20.0, 60.0, 0.732)),
        ("side_bearing_mpa", spread(20.0, 60.0, 0.236)),
        ("main_length_mm", spread(20.0, 100.0, 0.317)),
        ("side_length_mm", spread(12.0, 50.0, 0.606)),
        ("gap_mm", spread(0.0, 25.0, 0.873)),
        ("max_angle_to_grain_deg", spread(0.0, 90.0, 0.541)),
    ];
    let kept = [("temperature_c", spread(0.0, 40.0, 0.618)), ("moisture_pct", spread(4.0, 16.0, 0.414))];
    let moving = [
        ("width_mm", spread(50.0, 300.0, 0.618)),
        ("thickness_mm", spread(12.0, 40.0, 0.414)),
        ("ring_angle_deg", spread(0.0, 90.0, 0.732)),
        ("movement_radial_per_pct", spread(0.001, 0.003, 0.236)),
        ("movement_tangential_per_pct", spread(0.002, 0.004, 0.317)),
        ("shrinkage_radial_pct", spread(3.0, 6.0, 0.606)),
        ("shrinkage_tangential_pct", spread(5.0, 10.0, 0.873)),
        ("fibre_saturation_pct", spread(26.0, 32.0, 0.541)),
        ("from_moisture_pct", spread(4.0, 16.0, 0.153)),
        ("to_moisture_pct", spread(4.0, 16.0, 0.271)),
    ];
    let boards = [
        ("thickness_a_mm", spread(15.0, 25.0, 0.618)),
        ("thickness_b_mm", spread(15.0, 25.0, 0.414)),
        ("corner_deg", spread(80.0, 100.0, 0.732)),
    ];
    let cases: [Case<'_>; 6] = [
        ("equilibrium_moisture", &air, &["moisture_pct"], &[]),
        ("humidity_for_moisture", &kept, &["relative_humidity_pct"], &[]),
        ("board_movement", &moving, &["width_change_mm", "thickness_change_mm"], &[]),
        ("dowel_bearing", &wood, &["at_angle_mpa"], &[]),
        ("dowel_shear", &dowel, &["reference_n"], &["governing_mode"]),
        // Not in lanes: every row goes through the derived readers and writers.
        ("mitre_pair", &boards, &["tilt_a_deg"], &[]),
    ];
    let by_ring_angle = vec![BoardCut::RingAngle as u32; ROWS];
    let mut group = bench.benchmark_group("columns");
    group.throughput(Throughput::Elements(ROWS as u64)).sample_size(20);
    for (name, inputs, numbers, codes) in cases {
        let mut inputs: Vec<_> = inputs.iter().map(|(field, values)| (*field, Column::Numbers(values))).collect();
        if name == "board_movement" {
            inputs.push(("cut", Column::Codes(&by_ring_angle)));
        }
        let mut number_places = vec![vec![0.0; ROWS]; numbers.len()];
        let mut code_places = vec![vec![0; ROWS]; codes.len()];
        for threads in [1, 2] {
            group.bench_function(format!("{name}, threads {threads}"), |b| {
                b.iter(|| {
                    let outputs = numbers
                        .iter()
                        .zip(&mut number_places)
                        .map(|(field, place)| (*field, ColumnMut::Numbers(place)));
                    let codes =
                        codes.iter().zip(&mut code_places).map(|(field, place)| (*field, ColumnMut::Codes(place)));
                    let call = Columns {
                        rows: ROWS,
                        inputs: black_box(&inputs),
                        outputs: outputs.chain(codes).collect(),
                        status: None,
                        fault_fields: None,
                        threads,
                    };
                    let report = registry::columns(name, call).expect("columns that fit");
                    assert_eq!(report.refused, 0);
                });
            });
        }
    }
    group.finish();
}

/// The least that a division and a square root cost, side by side and in the fastest cache.
fn machine(bench: &mut Criterion) {
    const SHORT: usize = 2048;
    let (a, b) = (spread(0.1, 10.0, 0.618), spread(0.1, 10.0, 0.414));
    let (Some(a), Some(b)) = (a.get(..SHORT), b.get(..SHORT)) else { return };
    let mut out = [0.0; SHORT];
    let mut group = bench.benchmark_group("machine");
    group.throughput(Throughput::Elements(SHORT as u64));
    group.bench_function("division", |bench| {
        bench.iter(|| {
            let pairs = black_box(a).iter().zip(black_box(b));
            out.iter_mut().zip(pairs).for_each(|(out, (a, b))| *out = a / b);
            black_box(&out);
        });
    });
    group.bench_function("square root", |bench| {
        bench.iter(|| {
            out.iter_mut().zip(black_box(a)).for_each(|(out, a)| *out = a.sqrt());
            black_box(&out);
        });
    });
    group.finish();
}

criterion_group!(benches, cases, machine);
criterion_main!(benches);
