//! How long moisture and movement take, one call after the other over columns of a hundred thousand.
//!
//! `cargo bench -p beamcraft-core --bench wood`. Every timed loop asserts its result. `tests/peers/run-columns` times such
//! columns in vectorised NumPy.

#![allow(clippy::expect_used, missing_docs, reason = "a bench stops at the first wrong result")]

use std::hint::black_box;

use beamcraft_core::movement::{BoardCut, BoardMovementInput, board_movement};
use beamcraft_core::wood::{
    EquilibriumMoistureInput, HumidityForMoistureInput, equilibrium_moisture, humidity_for_moisture,
};
use criterion::{Criterion, Throughput, criterion_group, criterion_main};

/// Length of a column.
const COUNT: usize = 100_000;

/// Numbers spread evenly from low to high.
fn spread(low: f64, high: f64) -> Vec<f64> {
    (0..COUNT).map(|k| low + (high - low) * k as f64 / (COUNT - 1) as f64).collect()
}

fn moisture(bench: &mut Criterion) {
    let (temperatures, humidities) = (spread(0.0, 40.0), spread(10.0, 90.0));
    let mut group = bench.benchmark_group("wood");
    group.throughput(Throughput::Elements(COUNT as u64));
    group.bench_function("equilibrium_moisture", |b| {
        let mut out = vec![0.0; COUNT];
        b.iter(|| {
            let columns = black_box(&temperatures).iter().zip(black_box(&humidities));
            for (out, (temperature_c, relative_humidity_pct)) in out.iter_mut().zip(columns) {
                let (temperature_c, relative_humidity_pct) = (*temperature_c, *relative_humidity_pct);
                let input = EquilibriumMoistureInput { temperature_c, relative_humidity_pct };
                *out = equilibrium_moisture(&input).expect("allowed").moisture_pct;
            }
            assert!(out.first().is_some_and(|dry| (*dry - 2.6).abs() < 0.1));
        });
    });
    group.bench_function("humidity_for_moisture", |b| {
        let moistures = spread(4.0, 16.0);
        let mut out = vec![0.0; COUNT];
        b.iter(|| {
            let columns = black_box(&temperatures).iter().zip(black_box(&moistures));
            for (out, (temperature_c, moisture_pct)) in out.iter_mut().zip(columns) {
                let input = HumidityForMoistureInput { temperature_c: *temperature_c, moisture_pct: *moisture_pct };
                *out = humidity_for_moisture(&input).expect("allowed").relative_humidity_pct;
            }
            assert!(out.iter().all(|humidity| *humidity > 10.0));
        });
    });
    group.finish();
}

fn movement(bench: &mut Criterion) {
    let (from, to, angles) = (spread(5.0, 13.0), spread(14.0, 4.0), spread(0.0, 90.0));
    let board = BoardMovementInput {
        width_mm: 215.0,
        thickness_mm: 20.0,
        cut: BoardCut::RingAngle,
        ring_angle_deg: None,
        movement_radial_per_pct: 0.00169,
        movement_tangential_per_pct: 0.00274,
        shrinkage_radial_pct: Some(4.9),
        shrinkage_tangential_pct: Some(7.8),
        fibre_saturation_pct: 30.0,
        from_moisture_pct: 8.0,
        to_moisture_pct: 8.0,
    };
    let mut group = bench.benchmark_group("movement");
    group.throughput(Throughput::Elements(COUNT as u64));
    group.bench_function("board_movement", |b| {
        let mut out = vec![0.0; COUNT];
        b.iter(|| {
            let columns = black_box(&from).iter().zip(black_box(&to)).zip(black_box(&angles));
            for (out, ((from, to), angle)) in out.iter_mut().zip(columns) {
                let input = BoardMovementInput {
                    ring_angle_deg: Some(*angle),
                    from_moisture_pct: *from,
                    to_moisture_pct: *to,
                    ..board
                };
                *out = board_movement(&input).expect("allowed").width_change_mm;
            }
            assert!(out.first().is_some_and(|change| *change > 1.0));
        });
    });
    group.finish();
}

criterion_group!(benches, moisture, movement);
criterion_main!(benches);
