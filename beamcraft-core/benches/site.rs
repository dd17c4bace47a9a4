//! How long the site takes: the way onto the cleat level and tilted, the clearance of an outline.
//!
//! `cargo bench -p beamcraft-core --bench site`. Every timed loop asserts its result.

#![allow(clippy::expect_used, missing_docs, reason = "a bench stops at the first wrong result")]

use std::hint::black_box;

use beamcraft_core::hang::CleatHalvesInput;
use beamcraft_core::setting::{
    Appliance, ApplianceKind, FireOpening, Obstruction, OutlinePart, OutlinePoint, ThingKind,
};
use beamcraft_core::site::{BodyClearanceInput, LiftManner, LiftOnInput, MantelRule, body_clearance, lift_on};
use criterion::{Criterion, criterion_group, criterion_main};

fn board(name: &str, (out0, up0): (f64, f64), (out1, up1): (f64, f64)) -> OutlinePart {
    let corner = |out_mm, up_mm| OutlinePoint { out_mm, above_floor_mm: 1350.0 + up_mm };
    OutlinePart {
        name: name.to_owned(),
        left_mm: 35.0,
        right_mm: 1865.0,
        outline: vec![corner(out0, up0), corner(out1, up0), corner(out1, up1), corner(out0, up1)],
    }
}

fn boards() -> Vec<OutlinePart> {
    vec![
        board("front", (195.0, 0.0), (215.0, 185.0)),
        board("top", (0.0, 165.0), (195.0, 185.0)),
        board("bottom", (0.0, 0.0), (195.0, 20.0)),
    ]
}

fn body(room_mm: f64, projection_mm: f64) -> LiftOnInput {
    LiftOnInput {
        parts: boards(),
        strip: CleatHalvesInput {
            strip_width_mm: 100.0,
            thickness_mm: 18.0,
            bevel_deg: 45.0,
            kerf_mm: 3.2,
            blunt_mm: 2.0,
        },
        beam_half_top_above_floor_mm: 1515.0,
        beam_half_left_mm: 56.0,
        beam_half_right_mm: 1844.0,
        wall_half_left_mm: 66.0,
        wall_half_right_mm: 1834.0,
        behind_mm: 0.0,
        things: vec![Obstruction {
            name: "boxed cable duct".to_owned(),
            kind: ThingKind::BoxedDuct,
            left_mm: 1200.0,
            right_mm: 1380.0,
            bottom_mm: 1535.0 + room_mm,
            top_mm: 2400.0,
            projection_mm,
        }],
        greatest_tilt_deg: 12.0,
        tilt_step_deg: 1.0,
        slide_from_left_mm: None,
        slide_from_right_mm: None,
    }
}

fn lift(bench: &mut Criterion) {
    for (name, room_mm, projection_mm, manner) in [
        ("lift_on, level", 45.0, 90.0, LiftManner::Level),
        ("lift_on, no way, with every cure", 5.0, 90.0, LiftManner::NotAtAll),
    ] {
        let input = body(room_mm, projection_mm);
        bench.bench_function(name, |b| {
            b.iter(|| {
                let on = lift_on(black_box(&input)).expect("allowed");
                assert_eq!(on.manner, manner);
                on
            });
        });
    }
}

fn clearance(bench: &mut Criterion) {
    let input = BodyClearanceInput {
        parts: boards(),
        opening: FireOpening { left_mm: 550.0, width_mm: 800.0, top_above_floor_mm: 900.0, face_out_mm: 0.0 },
        appliance: Appliance { kind: ApplianceKind::MasonryFireplace, listing: None },
        chart_datum_above_floor_mm: None,
        rules: vec![MantelRule::IrcSlope, MantelRule::Nfpa211Step, MantelRule::NbcStep],
        own_rules: vec![],
    };
    bench.bench_function("body_clearance, three rules with their curves", |b| {
        b.iter(|| {
            let found = body_clearance(black_box(&input)).expect("allowed");
            assert_eq!(found.answers.len(), 3);
            found
        });
    });
}

criterion_group!(benches, lift, clearance);
criterion_main!(benches);
