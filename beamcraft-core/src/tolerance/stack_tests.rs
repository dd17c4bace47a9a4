use super::*;
use crate::error::ErrorCode;
use crate::numeric::normal::{normal_density, normal_share};
use crate::numeric::real::radians;
use crate::tolerance::{
    AngleSource, CutSide, ErrorDistribution, LengthSource, SeamGapInput, SeamHold, StackEdge, StackSeam, seam_gap,
};
use proptest::prelude::*;

fn edge(panel: &str, tilt: &str, size: &str) -> StackEdge {
    StackEdge {
        panel: panel.to_owned(),
        thickness_mm: 20.0,
        width_mm: 180.0,
        cut_side: CutSide::ShowFaceUp,
        tilt_sources: vec![tilt.to_owned()],
        size_sources: vec![size.to_owned()],
        size_share: 1.0,
        thickness_sources: vec!["planer".to_owned()],
        cup_sources: vec!["cup".to_owned()],
        bow_sources: vec![],
    }
}

/// Two seams that share a tilt setting, a fence and the planer.
fn two_seams(hold: SeamHold) -> ToleranceStackInput {
    let seam = |name: &str, a: &str, b: &str| StackSeam {
        name: name.to_owned(),
        a: edge(a, "tilt", "fence"),
        b: edge(b, "tilt", "stop"),
        corner_deg: 90.0,
        corner_sources: vec!["square".to_owned()],
        hold,
        over_tilt_deg: 0.0,
    };
    let angle = |name: &str, distribution, spread_deg| AngleSource {
        name: name.to_owned(),
        distribution,
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
        seams: vec![seam("front|top", "front", "top"), seam("front|bottom", "front", "bottom")],
        angle_sources: vec![
            angle("tilt", ErrorDistribution::Normal, 0.1),
            angle("square", ErrorDistribution::Normal, 0.05),
        ],
        length_sources: vec![
            length("fence", ErrorDistribution::Normal, 0.1),
            length("stop", ErrorDistribution::Uniform, 0.15),
            length("planer", ErrorDistribution::Normal, 0.1),
            length("cup", ErrorDistribution::Normal, 0.1),
        ],
        burnish_gap_mm: 0.1,
        filler_gap_mm: 0.3,
        samples: 200_000,
        seed: 7,
        threads: 1,
    }
}

#[test]
fn the_number_of_threads_changes_no_digit() {
    // Four chunks, so that three threads have unequal shares.
    let one = tolerance_stack(&two_seams(SeamHold::HeldByShowFaces)).unwrap();
    for threads in [2, 3, 8] {
        let more = tolerance_stack(&ToleranceStackInput { threads, ..two_seams(SeamHold::HeldByShowFaces) }).unwrap();
        assert_eq!(one, more);
    }
}

#[test]
fn a_seed_gives_the_same_again_and_another_seed_something_else() {
    let short = ToleranceStackInput { samples: 1_000, ..two_seams(SeamHold::DrawnTight) };
    let again = tolerance_stack(&short).unwrap();
    assert_eq!(tolerance_stack(&short).unwrap(), again);
    let other = tolerance_stack(&ToleranceStackInput { seed: 8, ..short }).unwrap();
    assert_ne!(other.seams[0].sampled, again.seams[0].sampled);
    assert_eq!(other.seams[0].first_order, again.seams[0].first_order);
}

#[test]
fn without_errors_there_is_no_gap() {
    let mut input = ToleranceStackInput { samples: 1_000, ..two_seams(SeamHold::HeldByInnerFrame) };
    input.angle_sources.iter_mut().for_each(|source| source.spread_deg = 0.0);
    input.length_sources.iter_mut().for_each(|source| source.spread_mm = 0.0);
    let stack = tolerance_stack(&input).unwrap();
    for seam in &stack.seams {
        for gap in [seam.sampled, seam.first_order.gap] {
            assert_eq!((gap.mean_mm, gap.sd_mm, gap.p99_mm, gap.burnishable_share), (0.0, 0.0, 0.0, 1.0));
        }
        assert!(seam.ranking.is_empty());
    }
    assert!(stack.ranking.iter().all(|share| share.variance_share == 0.0));
}

#[test]
fn a_constant_error_gives_the_gap_of_one_seam() {
    let mut input = ToleranceStackInput { samples: 1_000, ..two_seams(SeamHold::HeldByShowFaces) };
    input.angle_sources.iter_mut().for_each(|source| source.spread_deg = 0.0);
    input.length_sources.iter_mut().for_each(|source| source.spread_mm = 0.0);
    input.angle_sources[0].bias_deg = -0.4;
    input.length_sources[0].bias_mm = -0.2;
    input.length_sources[2].bias_mm = 0.1;
    let stack = tolerance_stack(&input).unwrap();
    let one = seam_gap(&SeamGapInput {
        thickness_a_mm: 20.0,
        thickness_b_mm: 20.0,
        corner_deg: 90.0,
        width_a_mm: 180.0,
        width_b_mm: 180.0,
        cut_side_a: CutSide::ShowFaceUp,
        cut_side_b: CutSide::ShowFaceUp,
        hold: SeamHold::HeldByShowFaces,
        tilt_error_a_deg: -0.4,
        tilt_error_b_deg: -0.4,
        corner_error_deg: 0.0,
        size_error_a_mm: -0.2,
        size_error_b_mm: 0.0,
        thickness_error_a_mm: 0.1,
        thickness_error_b_mm: 0.1,
        cup_a_mm: 0.0,
        cup_b_mm: 0.0,
        bow_a_mm: 0.0,
        bow_b_mm: 0.0,
    })
    .unwrap();
    let seam = &stack.seams[0];
    assert!((seam.sampled.mean_mm - one.show_gap_mm).abs() < 1e-9, "{} {}", seam.sampled.mean_mm, one.show_gap_mm);
    assert!((seam.sampled.p50_mm - one.show_gap_mm).abs() <= seam.resolution_mm);
    assert!((seam.first_order.gap.p50_mm - one.show_gap_mm).abs() < 1e-4, "the chord is shorter than the arc");
    assert_eq!((seam.sampled.reject_share, seam.first_order.gap.reject_share), (1.0, 1.0));
}

#[test]
fn drawn_tight_the_closed_form_is_that_of_a_rectified_normal() {
    let mut input = ToleranceStackInput { samples: 100, ..two_seams(SeamHold::DrawnTight) };
    for over_tilt_deg in [0.0, 0.1, -0.1] {
        input.seams[0].over_tilt_deg = over_tilt_deg;
        let seam = &tolerance_stack(&input).unwrap().seams[0];
        let f = 20.0 * 2.0_f64.sqrt();
        // Two cuts at one setting, the corner, and two cupped boards of one batch.
        let cup = 2.0 * 4.0 * 0.1 / 180.0;
        let turn = [2.0 * radians(0.1), radians(0.05), cup].map(|part| part * part).iter().sum::<f64>().sqrt();
        let (mean, sd) = (-2.0 * f * radians(over_tilt_deg), f * turn);
        let first = seam.first_order;
        assert!((first.taper_mean_mm - mean).abs() < 1e-12 && (first.taper_sd_mm - sd).abs() < 1e-12);
        let ratio = mean / sd;
        let expected = mean * normal_share(ratio) + sd * normal_density(ratio);
        assert!((first.gap.mean_mm - expected).abs() < 1e-9, "{} {expected}", first.gap.mean_mm);
        let square = (mean * mean + sd * sd) * normal_share(ratio) + mean * sd * normal_density(ratio);
        assert!((first.gap.sd_mm - (square - expected * expected).sqrt()).abs() < 1e-8);
        assert!((first.gap.burnishable_share - normal_share((0.1 - mean) / sd)).abs() < 1e-12);
        assert!((first.gap.p95_mm - (mean + 1.644_853_626_951 * sd).max(0.0)).abs() < 1e-9);
    }
}

#[test]
fn samples_agree_with_the_closed_form_within_their_own_scatter() {
    for hold in [SeamHold::DrawnTight, SeamHold::HeldByShowFaces, SeamHold::HeldByInnerFrame] {
        let mut input = two_seams(hold);
        // Normal throughout: the closed form is then exact but for angles beyond first order (a few parts in 10⁶).
        input.length_sources[1].distribution = ErrorDistribution::Normal;
        let stack = tolerance_stack(&input).unwrap();
        for seam in &stack.seams {
            let (first, sampled) = (seam.first_order.gap, seam.sampled);
            let n = f64::from(input.samples).sqrt();
            // Five standard errors.
            assert!((first.mean_mm - sampled.mean_mm).abs() < 5.0 * sampled.sd_mm / n, "{hold:?}");
            assert!((first.sd_mm / sampled.sd_mm - 1.0).abs() < 5.0 * 1.5 / n, "{hold:?}");
            let p = first.burnishable_share;
            assert!((p - sampled.burnishable_share).abs() < 5.0 * (p * (1.0 - p)).sqrt() / n, "{hold:?}");
            let spread = 5.0 * 2.2 * sampled.sd_mm * 2.0 / n;
            assert!((first.p95_mm - sampled.p95_mm).abs() < spread + seam.resolution_mm, "{hold:?}");
            let sum = sampled.burnishable_share + sampled.fillable_share + sampled.reject_share;
            assert!((sum - 1.0).abs() < 1e-12);
        }
        assert!(stack.worst.p95_mm >= stack.seams[0].sampled.p95_mm);
        let counted: u32 = stack.worst_histogram.counts.iter().sum();
        assert_eq!(counted, input.samples);
    }
}

#[test]
fn one_setting_for_two_cuts_is_worse_than_two_settings() {
    let mut input = ToleranceStackInput { samples: 100, ..two_seams(SeamHold::DrawnTight) };
    let shared = tolerance_stack(&input).unwrap().seams[0].first_order.taper_sd_mm;
    input.angle_sources.push(AngleSource { name: "second tilt".to_owned(), ..input.angle_sources[0].clone() });
    input.seams[0].b.tilt_sources = vec!["second tilt".to_owned()];
    let apart = tolerance_stack(&input).unwrap().seams[0].first_order.taper_sd_mm;
    assert!(shared > apart);
}

#[test]
fn the_ranking_names_what_matters_most_and_adds_up() {
    let stack = tolerance_stack(&ToleranceStackInput { samples: 100, ..two_seams(SeamHold::DrawnTight) }).unwrap();
    let names: Vec<&str> = stack.ranking.iter().map(|share| share.source.as_str()).collect();
    assert_eq!(names, ["cup", "tilt", "square", "fence", "stop", "planer"]);
    assert!((stack.ranking.iter().map(|share| share.variance_share).sum::<f64>() - 1.0).abs() < 1e-12);
    assert_eq!(stack.seams[0].ranking.len(), 3, "drawn tight, sizes do not reach the seam");
}

#[test]
fn progress_is_told_and_can_break_off() {
    let input = ToleranceStackInput { samples: 1_200_000, ..two_seams(SeamHold::DrawnTight) };
    let mut told = Vec::new();
    let stopped = tolerance_stack_with_progress(&input, &mut |progress| {
        told.push(progress);
        ControlFlow::Break(())
    });
    assert_eq!(stopped, Ok(None));
    assert_eq!(told, [SampleProgress { done: 8 * 65_536, total: 1_200_000 }]);
    let short = ToleranceStackInput { samples: 1_000, ..input };
    let mut last = None;
    let whole = tolerance_stack_with_progress(&short, &mut |progress| {
        last = Some(progress);
        ControlFlow::Continue(())
    });
    assert_eq!(whole.unwrap(), Some(tolerance_stack(&short).unwrap()));
    assert_eq!(last, Some(SampleProgress { done: 1_000, total: 1_000 }));
}

fn refused(change: impl FnOnce(&mut ToleranceStackInput)) -> (ErrorCode, String) {
    let mut input = ToleranceStackInput { samples: 100, ..two_seams(SeamHold::DrawnTight) };
    change(&mut input);
    let error = tolerance_stack(&input).unwrap_err();
    (error.code(), error.field().to_owned())
}

#[test]
fn what_does_not_fit_is_refused_with_its_path() {
    let at = |code, path: &str| (code, path.to_owned());
    assert_eq!(refused(|input| input.seams.clear()), at(ErrorCode::OutOfRange, "seams"));
    assert_eq!(refused(|input| input.seams = vec![input.seams[0].clone(); 65]), at(ErrorCode::OutOfRange, "seams"));
    let many = |input: &mut ToleranceStackInput| input.length_sources = vec![input.length_sources[0].clone(); 255];
    assert_eq!(refused(many), at(ErrorCode::OutOfRange, "length_sources"));
    assert_eq!(refused(|input| input.filler_gap_mm = 0.05), at(ErrorCode::Inconsistent, "filler_gap_mm"));
    let work = |input: &mut ToleranceStackInput| {
        input.samples = 100_000_000;
        let named = |k: u32| LengthSource { name: format!("more {k}"), ..input.length_sources[0].clone() };
        let more: Vec<LengthSource> = (0..240).map(named).collect();
        input.length_sources.extend(more);
    };
    assert_eq!(refused(work), at(ErrorCode::Inconsistent, "samples"));
    assert_eq!(
        refused(|input| input.seams[1].name = "front|top".to_owned()),
        at(ErrorCode::DuplicateField, "seams[1].name")
    );
    assert_eq!(
        refused(|input| input.length_sources[0].name = "tilt".to_owned()),
        at(ErrorCode::DuplicateField, "length_sources[0].name")
    );
    assert_eq!(
        refused(|input| input.seams[0].b.tilt_sources = vec!["tlit".to_owned()]),
        at(ErrorCode::UnknownName, "seams[0].b.tilt_sources[0]")
    );
    let length_as_angle = |input: &mut ToleranceStackInput| input.seams[0].corner_sources = vec!["fence".to_owned()];
    assert_eq!(refused(length_as_angle), at(ErrorCode::UnknownName, "seams[0].corner_sources[0]"));
    let twice = |input: &mut ToleranceStackInput| input.seams[0].a.cup_sources = vec!["cup".to_owned(); 2];
    assert_eq!(refused(twice), at(ErrorCode::DuplicateField, "seams[0].a.cup_sources[1]"));
    let long = |input: &mut ToleranceStackInput| input.seams[0].a.cup_sources = vec!["cup".to_owned(); 33];
    assert_eq!(refused(long), at(ErrorCode::OutOfRange, "seams[0].a.cup_sources"));
    assert_eq!(
        refused(|input| input.seams[1].a.thickness_mm = f64::NAN),
        at(ErrorCode::NotFinite, "seams[1].a.thickness_mm")
    );
    assert_eq!(refused(|input| input.seams[0].corner_deg = 10.0), at(ErrorCode::Inconsistent, "seams[0].corner_deg"));
    let wild = |input: &mut ToleranceStackInput| input.angle_sources[0].spread_deg = 5.0;
    assert_eq!(refused(wild), at(ErrorCode::Inconsistent, "seams[0]"));
}

#[test]
fn an_unknown_source_is_answered_with_the_closest_name() {
    let mut input = two_seams(SeamHold::DrawnTight);
    input.seams[0].a.tilt_sources = vec!["tlit".to_owned()];
    let error = tolerance_stack(&input).unwrap_err();
    assert_eq!(error.details()[0].cure, "did you mean tilt?");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn twice_the_scatter_has_twice_the_gap(hold in 0_usize..3, seed in any::<u32>()) {
        let hold = [SeamHold::DrawnTight, SeamHold::HeldByShowFaces, SeamHold::HeldByInnerFrame][hold];
        let one = ToleranceStackInput { samples: 500, seed, ..two_seams(hold) };
        let mut two = one.clone();
        two.angle_sources.iter_mut().for_each(|source| source.spread_deg *= 2.0);
        two.length_sources.iter_mut().for_each(|source| source.spread_mm *= 2.0);
        let (one, two) = (tolerance_stack(&one).unwrap(), tolerance_stack(&two).unwrap());
        for (one, two) in one.seams.iter().zip(&two.seams) {
            prop_assert!((two.first_order.gap.p95_mm - 2.0 * one.first_order.gap.p95_mm).abs() < 1e-6);
            // The chord falls short of the arc by D²/24, a few parts in 10⁵ at the largest.
            prop_assert!((two.sampled.mean_mm - 2.0 * one.sampled.mean_mm).abs() < 1e-4 * two.sampled.mean_mm + 1e-9);
        }
    }

    #[test]
    fn over_tilt_closes_the_show_edge(seed in any::<u32>(), over in 0.01..0.5) {
        let plain = ToleranceStackInput { samples: 500, seed, ..two_seams(SeamHold::DrawnTight) };
        let mut tilted = plain.clone();
        tilted.seams.iter_mut().for_each(|seam| seam.over_tilt_deg = over);
        let (plain, tilted) = (tolerance_stack(&plain).unwrap(), tolerance_stack(&tilted).unwrap());
        prop_assert!(tilted.worst.mean_mm <= plain.worst.mean_mm);
        prop_assert!(tilted.seams[0].first_order.gap.p95_mm <= plain.seams[0].first_order.gap.p95_mm);
    }

    #[test]
    fn any_bits_give_numbers_or_an_error(
        bits in prop::array::uniform10(prop::num::f64::ANY), which in 0_usize..11, hold in 0_usize..3,
    ) {
        let hold = [SeamHold::DrawnTight, SeamHold::HeldByShowFaces, SeamHold::HeldByInnerFrame][hold];
        let mut input = ToleranceStackInput { samples: 100, ..two_seams(hold) };
        let ToleranceStackInput { seams, angle_sources, length_sources, .. } = &mut input;
        let ([seam, other], [tilt, square, ..], [fence, stop, ..]) =
            (seams.as_mut_slice(), angle_sources.as_mut_slice(), length_sources.as_mut_slice())
        else {
            panic!("two seams and their sources");
        };
        let fields = [
            &mut seam.a.thickness_mm, &mut seam.a.width_mm, &mut seam.a.size_share, &mut seam.corner_deg,
            &mut seam.over_tilt_deg, &mut other.b.width_mm, &mut tilt.spread_deg, &mut square.bias_deg,
            &mut fence.spread_mm, &mut stop.bias_mm,
        ];
        for (k, field) in fields.into_iter().enumerate() {
            if which == k || which == 10 {
                *field = bits[k];
            }
        }
        if let Ok(stack) = tolerance_stack(&input) {
            for seam in &stack.seams {
                for gap in [seam.sampled, seam.first_order.gap] {
                    let all = [gap.mean_mm, gap.sd_mm, gap.p5_mm, gap.p50_mm, gap.p95_mm, gap.p99_mm, gap.reject_share];
                    prop_assert!(all.iter().all(|value| value.is_finite() && *value >= 0.0), "{:?}", gap);
                }
            }
        }
    }
}
