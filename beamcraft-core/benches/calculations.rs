//! How long the calculations take: a typed call, the same through JSON, the panels of a body, a whole plan.
//!
//! `cargo bench -p beamcraft-core --bench calculations`. Every timed loop asserts its result, so that a bench cannot time
//! an error.

#![allow(clippy::expect_used, missing_docs, reason = "a bench stops at the first wrong result")]

use std::hint::black_box;

use beamcraft_core::json::{read, write};
use beamcraft_core::plan::{BeamSpec, LegShape, plan};
use beamcraft_core::registry::call;
use beamcraft_core::shell::{MitrePairInput, mitre_pair, shell_panels};
use criterion::{Criterion, criterion_group, criterion_main};

const ASH: &str = include_str!("../examples/specs/ash_shelf_beam.json");

fn spec() -> BeamSpec {
    read(ASH).expect("the demo spec is valid")
}

fn typed(bench: &mut Criterion) {
    let input = MitrePairInput { thickness_a_mm: 20.0, thickness_b_mm: 18.0, corner_deg: 93.0 };
    bench.bench_function("mitre_pair, typed", |b| {
        b.iter(|| {
            let seam = mitre_pair(black_box(&input)).expect("allowed");
            assert!(seam.seam_mm > 20.0);
            seam
        });
    });
    bench.bench_function("mitre_pair, JSON door", |b| {
        let text = r#"{"thickness_a_mm":20,"thickness_b_mm":18,"corner_deg":93}"#;
        b.iter(|| {
            let output = call("mitre_pair", black_box(text)).expect("allowed");
            assert!(output.starts_with('{'));
            output
        });
    });
}

fn panels(bench: &mut Criterion) {
    let LegShape::Rectangular(leg) = spec().body.legs.remove(0);
    bench.bench_function("shell_panels, five panels", |b| {
        b.iter(|| {
            let shell = shell_panels(black_box(&leg)).expect("allowed");
            assert_eq!(shell.panels.len(), 5);
            shell
        });
    });
}

fn whole(bench: &mut Criterion) {
    let whole = spec();
    let spec = BeamSpec { seasons: None, accuracy: None, ..whole.clone() };
    bench.bench_function("plan", |b| {
        b.iter(|| {
            let plan = plan(black_box(&spec)).expect("allowed");
            assert_eq!(plan.panels.len(), 5);
            plan
        });
    });
    let seasons = BeamSpec { accuracy: None, ..whole.clone() };
    bench.bench_function("plan with seasons", |b| {
        b.iter(|| {
            let plan = plan(black_box(&seasons)).expect("allowed");
            assert!(plan.movement.is_some());
            plan
        });
    });
    bench.bench_function("plan with seasons and 20 000 samples of the saw's errors", |b| {
        b.iter(|| {
            let plan = plan(black_box(&whole)).expect("allowed");
            assert!(plan.tolerance.is_some());
            plan
        });
    });
    let text = write(&spec).expect("finite");
    bench.bench_function("plan, read and written as JSON", |b| {
        b.iter(|| {
            let spec: BeamSpec = read(black_box(&text)).expect("valid");
            let text = write(&plan(&spec).expect("allowed")).expect("finite");
            assert!(text.len() > 1000);
            text
        });
    });
}

criterion_group!(benches, typed, panels, whole);
criterion_main!(benches);
