//! Samples a second of the tolerance stack-up for a body of five panels and eight seams.

use std::hint::black_box;

use beamcraft_core::tolerance::{
    AngleSource, CutSide, ErrorDistribution, LengthSource, SeamHold, StackEdge, StackSeam, ToleranceStackInput,
    tolerance_stack,
};
use criterion::{BenchmarkId, Criterion, Throughput, criterion_group, criterion_main};

const SAMPLES: u32 = 1 << 20;

/// Front, top, bottom and two returns: two long seams, two of the front with the returns, four of top and bottom with them.
fn five_panels(hold: SeamHold, threads: u32) -> ToleranceStackInput {
    let names = |list: &[&str]| list.iter().map(|name| (*name).to_owned()).collect::<Vec<_>>();
    let edge = |panel: &str, tilt: &str, size: &str| StackEdge {
        panel: panel.to_owned(),
        thickness_mm: 20.0,
        width_mm: 200.0,
        cut_side: CutSide::ShowFaceDown,
        tilt_sources: names(&[tilt]),
        size_sources: names(&[size]),
        size_share: 0.5,
        thickness_sources: names(&["planer"]),
        cup_sources: names(&["cup"]),
        bow_sources: Vec::new(),
    };
    let seam = |a: &str, b: &str, tilt: &str, size_a: &str, size_b: &str, corner: &str| StackSeam {
        name: format!("{a}|{b}"),
        a: edge(a, tilt, size_a),
        b: edge(b, tilt, size_b),
        corner_deg: 90.0,
        corner_sources: names(&[corner]),
        hold,
        over_tilt_deg: 0.05,
    };
    let angle = |name: &str, spread_deg| AngleSource {
        name: name.to_owned(),
        distribution: ErrorDistribution::Normal,
        spread_deg,
        bias_deg: 0.0,
    };
    let length = |name: &str, distribution, spread_mm| LengthSource {
        name: name.to_owned(),
        distribution,
        spread_mm,
        bias_mm: 0.0,
    };
    ToleranceStackInput {
        seams: vec![
            seam("front", "top", "rip tilt", "front fence", "depth fence", "frame"),
            seam("front", "bottom", "rip tilt", "front fence", "depth fence", "frame"),
            seam("front", "left", "end tilt", "stop", "return fence", "left square"),
            seam("front", "right", "end tilt", "stop", "return fence", "right square"),
            seam("top", "left", "end tilt", "stop", "return fence", "left square"),
            seam("top", "right", "end tilt", "stop", "return fence", "right square"),
            seam("bottom", "left", "end tilt", "stop", "return fence", "left square"),
            seam("bottom", "right", "end tilt", "stop", "return fence", "right square"),
        ],
        angle_sources: vec![
            angle("rip tilt", 0.1),
            angle("end tilt", 0.1),
            angle("frame", 0.05),
            angle("left square", 0.1),
            angle("right square", 0.1),
        ],
        length_sources: vec![
            length("front fence", ErrorDistribution::Uniform, 0.2),
            length("depth fence", ErrorDistribution::Uniform, 0.2),
            length("return fence", ErrorDistribution::Uniform, 0.2),
            length("stop", ErrorDistribution::Uniform, 0.2),
            length("planer", ErrorDistribution::Normal, 0.1),
            length("cup", ErrorDistribution::Normal, 0.1),
        ],
        burnish_gap_mm: 0.1,
        filler_gap_mm: 0.3,
        samples: SAMPLES,
        seed: 1,
        threads,
    }
}

fn samples(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("tolerance_stack_five_panels");
    group.sample_size(10);
    let holds = [("drawn_tight", SeamHold::DrawnTight), ("held", SeamHold::HeldByInnerFrame)];
    for (name, hold) in holds {
        for threads in [1, 2] {
            let input = five_panels(hold, threads);
            // A sample is a body: eight gaps of it are drawn, compared and counted.
            group.throughput(Throughput::Elements(u64::from(SAMPLES)));
            group.bench_with_input(BenchmarkId::new(name, threads), &input, |bencher, input| {
                bencher.iter(|| {
                    let stack = tolerance_stack(black_box(input)).ok();
                    assert_eq!(stack.as_ref().map(|stack| stack.seams.len()), Some(8));
                    stack
                });
            });
        }
    }
    group.finish();
}

criterion_group!(benches, samples);
criterion_main!(benches);
