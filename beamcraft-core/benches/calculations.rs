//! How long the calculations take: a typed call, the same through JSON, the panels of a body, a whole plan.
//!
//! `cargo bench -p beamcraft-core --bench calculations`. Every timed loop asserts its result, so that a bench cannot time
//! an error.

#![allow(clippy::expect_used, missing_docs, reason = "a bench stops at the first wrong result")]

use std::hint::black_box;

use beamcraft_core::fasten::{
    DowelFastener, DowelJointNdsInput, DowelMaterial, DowelShearInput, Ec5Fastener, Ec5SingleShearInput,
    FastenerDirection, FastenerWithdrawalInput, dowel_joint_nds, dowel_shear, ec5_single_shear, fastener_withdrawal,
};
use beamcraft_core::json::{read, write};
use beamcraft_core::plan::{BeamSpec, LegShape, ReportLengths, SawnBodyInput, plan, sawn_body};
use beamcraft_core::registry::call;
use beamcraft_core::shell::{HollowBodyInput, MitrePairInput, hollow_body, mitre_pair, shell_panels};
use criterion::{BenchmarkId, Criterion, criterion_group, criterion_main};

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

/// A body of a regular section, with a board on every side and a return at both ends.
fn regular(sides: u32) -> HollowBodyInput {
    let boards: Vec<String> = (1..=sides).map(|side| format!(r#"{{"face":"side{side}","thickness_mm":18}}"#)).collect();
    let end = r#"{"kind":"return_panel","thickness_mm":18}"#;
    let section = format!(r#"{{"regular":{{"sides":{sides},"across_flats_mm":400}}}}"#);
    let boards = boards.join(",");
    let text = format!(
        r#"{{"section":{section},"legs":[{{"length_mm":2400}}],"boards":[{boards}],"left_end":{end},"right_end":{end}}}"#
    );
    read(&text).expect("valid")
}

/// The ash shelf beam's section in legs round outside and inside corners in turn.
fn in_legs(count: usize) -> HollowBodyInput {
    let corner = |leg: usize| if leg.is_multiple_of(2) { r#","corner_deg":90"# } else { r#","corner_deg":270"# };
    let legs: Vec<String> = (0..count)
        .map(|leg| format!(r#"{{"length_mm":900{}}}"#, if leg + 1 < count { corner(leg) } else { "" }))
        .collect();
    let boards = ["front", "top", "bottom"].map(|face| format!(r#"{{"face":"{face}","thickness_mm":20}}"#)).join(",");
    let (end, legs) = (r#"{"kind":"return_panel","thickness_mm":20}"#, legs.join(","));
    let section = r#"{"rectangular":{"height_mm":185,"depth_mm":215}}"#;
    let text =
        format!(r#"{{"section":{section},"legs":[{legs}],"boards":[{boards}],"left_end":{end},"right_end":{end}}}"#);
    read(&text).expect("valid")
}

/// Any body: growth with the number of faces and of legs, and every cut of a body.
fn bodies(bench: &mut Criterion) {
    let mut group = bench.benchmark_group("hollow_body, sides of the section");
    for sides in [4, 8, 16, 24] {
        let input = regular(sides);
        group.bench_with_input(BenchmarkId::from_parameter(sides), &input, |b, input| {
            b.iter(|| {
                let body = hollow_body(black_box(input)).expect("allowed");
                assert_eq!(body.panels().count(), sides as usize + 2);
                body
            });
        });
    }
    group.finish();
    let mut group = bench.benchmark_group("hollow_body, legs");
    for legs in [1, 2, 4, 8, 16, 32] {
        let input = in_legs(legs);
        group.bench_with_input(BenchmarkId::from_parameter(legs), &input, |b, input| {
            b.iter(|| {
                let body = hollow_body(black_box(input)).expect("allowed");
                assert_eq!(body.panels().count(), 3 * legs + 2);
                body
            });
        });
    }
    group.finish();
    let body = in_legs(1);
    let input = SawnBodyInput { name: String::new(), lengths: ReportLengths::Metric, body, saw: spec().saw };
    bench.bench_function("sawn_body, five panels with every cut", |b| {
        b.iter(|| {
            let body = sawn_body(black_box(&input)).expect("allowed");
            assert_eq!(body.cuts.len(), 5);
            body
        });
    });
}

/// Connections, one by one: a yield equation of each standard, a withdrawal, a whole joint with its factors.
fn connections(bench: &mut Criterion) {
    let shear: DowelShearInput = read(
        r#"{"yield_diameter_mm":3.86,"nominal_diameter_mm":4.83,"bending_yield_mpa":552,"main_bearing_mpa":23.2,
        "side_bearing_mpa":38.1,"main_length_mm":27,"side_length_mm":19,"gap_mm":12.7,"max_angle_to_grain_deg":90}"#,
    )
    .expect("valid");
    bench.bench_function("dowel_shear, six modes over a gap", |b| {
        b.iter(|| {
            let found = dowel_shear(black_box(&shear)).expect("allowed");
            assert!(found.reference_n > 200.0);
            found
        });
    });
    let johansen = Ec5SingleShearInput {
        fastener: Ec5Fastener::Screw,
        diameter_mm: 4.4,
        yield_moment_nmm: 11_303.0,
        head_side_mpa: 27.4,
        point_side_mpa: 27.4,
        head_side_mm: 18.0,
        point_side_mm: 62.0,
        axial_capacity_n: 1_235.0,
    };
    bench.bench_function("ec5_single_shear, six modes with rope effect", |b| {
        b.iter(|| {
            let found = ec5_single_shear(black_box(&johansen)).expect("allowed");
            assert!(found.capacity_n > 1_600.0);
            found
        });
    });
    let withdrawal = FastenerWithdrawalInput {
        fastener: DowelFastener::LagScrew,
        specific_gravity: 0.5,
        nominal_diameter_mm: 9.525,
        holding_length_mm: 60.0,
        penetration_mm: None,
        direction: FastenerDirection::SideGrain,
    };
    bench.bench_function("fastener_withdrawal, a lag screw", |b| {
        b.iter(|| {
            let found = fastener_withdrawal(black_box(&withdrawal)).expect("allowed");
            assert!(found.reference_n > 1_000.0);
            found
        });
    });
    let nail: DowelJointNdsInput = read(
        r#"{"fastener":"smooth_nail","nominal_diameter_mm":4.1148,"length_mm":88.9,"side_specific_gravity":0.5,
        "head_diameter_mm":8.7,"side_thickness_mm":38.1,"side_angle_to_grain_deg":0,"main_specific_gravity":0.5,
        "main_thickness_mm":89,"main_angle_to_grain_deg":90,"lateral_n":400,"withdrawal_n":50}"#,
    )
    .expect("valid");
    bench.bench_function("dowel_joint_nds, a nail with all factors", |b| {
        b.iter(|| {
            let found = dowel_joint_nds(black_box(&nail)).expect("allowed");
            assert!(found.main_bearing_mpa > 20.0 && nail.side_material == DowelMaterial::Wood);
            found
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

criterion_group!(benches, typed, panels, bodies, connections, whole);
criterion_main!(benches);
