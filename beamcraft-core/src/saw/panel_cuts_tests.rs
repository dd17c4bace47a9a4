//! The settings against what a carpenter works out, and the laws: random panels and saws, each proved by cutting.

use proptest::prelude::*;

use super::super::proof::{Proof, half_space, prove, within_limits};
use super::*;
use crate::geometry::{ConvexSolid, Plane, Vec3};
use crate::numeric::real::{sin_cos_deg, tan_deg};
use crate::saw::{BladeSide, CutKind, CutSetUp, CutWay, FaceDown, KeptPiece, SawLimit, SawMachine, ShowFace, TrackSaw};
use crate::shell::{
    ButtJoint, EndKind, FaceId, FaceKind, Leg, LegBoard, LegEnd, LongFace, OuterFace, Presence, build_shell,
    shell_panels,
};

/// The panel of an input by its planes.
fn target(input: &PanelCutsInput) -> (ConvexSolid, Vec<Vec3>) {
    let count = input.corners.len();
    let edge = |k: usize| {
        let (from, to) = (&input.corners[k], &input.corners[(k + 1) % count]);
        let start = Vec3::new(from.u_mm, from.v_mm, 0.0);
        let out = Vec3::new(to.v_mm - from.v_mm, from.u_mm - to.u_mm, 0.0).normalised().unwrap();
        // The inner face is shorter by the run of the bevel where the long point lies on the show face.
        (half_space(move |point| out.dot(point - start) - tan_deg(from.bevel_deg) * point.z), out)
    };
    let (mut planes, outs): (Vec<Plane>, Vec<Vec3>) = (0..count).map(edge).unzip();
    planes.push(half_space(|point| point.z));
    planes.push(half_space(|point| -point.z - input.thickness_mm));
    (ConvexSolid::from_half_spaces(&planes).unwrap(), outs)
}

fn prove_input(input: &PanelCutsInput) -> Proof<Vec<CutWay>> {
    let Ok(cuts) = panel_cuts(input) else { return Ok(Vec::new()) };
    let (solid, outs) = target(input);
    within_limits(&cuts, &input.saw)?;
    prove(&cuts, &solid, &outs, input.thickness_mm, input.saw.kerf_mm)
}

fn corners(points: &[(f64, f64)], bevels: &[f64]) -> Vec<ShowCorner> {
    let corner = |((u_mm, v_mm), bevel_deg): (&(f64, f64), &f64)| ShowCorner {
        u_mm: *u_mm,
        v_mm: *v_mm,
        bevel_deg: *bevel_deg,
        edge: String::new(),
    };
    points.iter().zip(bevels).map(corner).collect()
}

/// A panel of a length and a width with a bevel at the bottom, the right end, the top and the left end.
fn rectangle(length: f64, width: f64, bevels: [f64; 4], saw: SawSpec) -> PanelCutsInput {
    let points = [(0.0, 0.0), (length, 0.0), (length, width), (0.0, width)];
    PanelCutsInput { thickness_mm: 20.0, corners: corners(&points, &bevels), saw }
}

fn set_ups(input: &PanelCutsInput) -> Vec<(PanelCut, Option<CutSetUp>)> {
    panel_cuts(input).unwrap().cuts.into_iter().map(|cut| (cut.clone(), cut.set_up)).collect()
}

#[test]
fn a_front_mitred_all_round_is_set_as_a_carpenter_works_it_out() {
    let input = rectangle(1800.0, 185.0, [45.0; 4], SawSpec::default());
    assert!(prove_input(&input).unwrap().iter().all(|way| *way == CutWay::FlatOnTable));
    let cuts = set_ups(&input);
    let near = |value: Option<f64>, by_hand: f64| assert!((value.unwrap() - by_hand).abs() < 1e-9, "{value:?}");
    // Show face up, blade leaning away: the width and the allowance of the second rip, less the board.
    near(cuts[0].1.unwrap().fence_mm, 185.0 + 6.0 - 20.0);
    near(cuts[1].1.unwrap().fence_mm, 185.0 - 20.0);
    assert_eq!(cuts[1].1.unwrap().riding, crate::saw::RidingEdge::LongPointUp);
    // The first end leaves the trim at the other; the second is set from the long point, 20 less at the table.
    near(cuts[2].1.unwrap().stop_mm, 1800.0 + 25.0 - 20.0);
    near(cuts[3].1.unwrap().stop_mm, 1800.0 - 20.0);
    let meets: Vec<_> = cuts[2..].iter().map(|(cut, _)| cut.stop_meets.unwrap()).collect();
    assert_eq!(meets, [crate::saw::StopMeets::BlankEnd, crate::saw::StopMeets::ShowCorner]);
    assert!(cuts.iter().all(|(cut, _)| cut.cautions.contains(&CutCaution::GuardAndRivingKnife)));
    assert!(cuts[1].0.cautions.contains(&CutCaution::OutfeedForLongRip));
}

#[test]
fn a_saw_that_tilts_one_way_takes_the_other_long_edge_for_the_other_end() {
    let machine = SawMachine { leans: Some(BladeSide::Left), ..SawMachine::default() };
    let saw = SawSpec { machine, ..SawSpec::default() };
    let input = rectangle(1800.0, 185.0, [45.0; 4], saw);
    prove_input(&input).unwrap();
    let cuts = set_ups(&input);
    assert!(cuts.iter().all(|(cut, set_up)| cut.passed.is_empty() && set_up.unwrap().leans == Some(BladeSide::Left)));
    assert_ne!(cuts[2].0.rides_step, cuts[3].0.rides_step);
}

#[test]
fn a_blade_that_leans_right_traps_the_piece_unless_the_fence_goes_left() {
    let machine = SawMachine { leans: Some(BladeSide::Right), ..SawMachine::default() };
    let saw = SawSpec { machine, ..SawSpec::default() };
    let input = rectangle(1800.0, 185.0, [45.0; 4], saw);
    prove_input(&input).unwrap();
    let rips = |input: &PanelCutsInput| set_ups(input).into_iter().take(2).collect::<Vec<_>>();
    for (cut, set_up) in rips(&input) {
        assert!(cut.cautions.contains(&CutCaution::TrappedKeptPiece));
        assert_eq!(set_up.unwrap().face_down, FaceDown::ShowFace);
    }
    let machine = SawMachine { rip_left_mm: Some(300.0), ..machine };
    let input = PanelCutsInput { saw: SawSpec { machine, ..saw }, ..input };
    prove_input(&input).unwrap();
    for (cut, set_up) in rips(&input) {
        assert!(!cut.cautions.contains(&CutCaution::TrappedKeptPiece));
        assert_eq!(
            (set_up.unwrap().fence_side, set_up.unwrap().face_down),
            (Some(BladeSide::Left), FaceDown::InnerFace)
        );
    }
}

#[test]
fn a_bevel_just_beyond_the_saw_is_leaned_and_one_far_beyond_stands_on_edge() {
    let ways = |length: f64, bevel: f64| {
        let input = rectangle(length, 185.0, [0.0, 0.0, bevel, 0.0], SawSpec::default());
        prove_input(&input).unwrap();
        let cuts = panel_cuts(&input).unwrap();
        let cut = cuts.cuts.iter().find(|cut| cut.edge == "edge 3").unwrap();
        let kinds: Vec<_> = cut.set_up.iter().chain(&cut.alternatives).map(|way| way.way).collect();
        (cuts.findings, cut.set_up.unwrap(), kinds)
    };
    let (findings, first, kinds) = ways(600.0, 46.5);
    assert_eq!(kinds, [CutWay::OnWedge, CutWay::OversizeThenPlane, CutWay::OnEdge, CutWay::TrackSaw]);
    assert!((first.wedge_deg - 1.5).abs() < 1e-9 && first.blade_tilt_deg == 45.0);
    assert_eq!(
        (findings[0].code, findings[0].grade),
        (crate::finding::FindingCode::BeyondTilt, crate::finding::Grade::Caution)
    );
    let (_, first, kinds) = ways(600.0, 61.3);
    assert_eq!(kinds, [CutWay::OnEdge, CutWay::OnWedge]);
    assert!((first.blade_tilt_deg - 28.7).abs() < 1e-9 && first.fence_mm == Some(0.0));
    assert!((first.square_first_mm.unwrap() - 185.0).abs() < 1e-9);
}

#[test]
fn a_taper_beyond_the_saw_is_cut_square_to_its_marks_and_then_stood_on_edge() {
    let mut input = rectangle(600.0, 185.0, [0.0, 0.0, 61.3, 0.0], SawSpec::default());
    input.corners[3].v_mm = 150.0;
    prove_input(&input).unwrap();
    let cuts = panel_cuts(&input).unwrap();
    let cut = cuts.cuts.iter().find(|cut| cut.edge == "edge 3").unwrap();
    assert_eq!(cut.kind, CutKind::TaperRip);
    let first = cut.set_up.unwrap();
    assert_eq!((first.way, first.fence_mm, first.square_first_mm), (CutWay::OnEdge, Some(0.0), None));
    assert!((first.blade_tilt_deg - 28.7).abs() < 1e-9);
    let marks = first.marks.unwrap();
    // At the ends of the blank, which has 25 of trim at each: the taper of 35 over 600 goes on that far.
    let further = 25.0 * 35.0 / 600.0;
    assert!((marks.low_end_mm - 150.0 + further).abs() < 1e-9, "{marks:?}");
    assert!((marks.high_end_mm - 185.0 - further).abs() < 1e-9, "{marks:?}");
    assert!(cuts.findings[0].cure.contains("On edge, cut square to the long point first"));
}

#[test]
fn what_the_saw_does_not_reach_is_found_with_what_would() {
    let machine = SawMachine {
        cut_height_mm: Some(60.0),
        rip_right_mm: Some(400.0),
        crosscut_mm: Some(300.0),
        max_gauge_deg: Some(50.0),
        ..SawMachine::default()
    };
    let limits = |input: &PanelCutsInput| {
        let cuts = panel_cuts(input).unwrap().cuts;
        cuts.iter().flat_map(|cut| cut.passed.iter().map(|passed| passed.limit).collect::<Vec<_>>()).collect::<Vec<_>>()
    };
    let saw = SawSpec { machine, ..SawSpec::default() };
    let wide = rectangle(1800.0, 500.0, [0.0; 4], saw);
    assert_eq!(limits(&wide), [SawLimit::RipCapacity, SawLimit::CrosscutCapacity, SawLimit::CrosscutCapacity]);
    let thick = PanelCutsInput { thickness_mm: 50.0, ..rectangle(1800.0, 200.0, [0.0, 0.0, 45.0, 0.0], saw) };
    // 60 mm upright is 42.4 mm at 45°.
    assert_eq!(limits(&thick), [SawLimit::CutHeight]);
    let found = panel_cuts(&thick).unwrap();
    assert!(found.findings[0].cure.contains("track saw that reaches 50 mm deep at 45.0 deg"), "{:?}", found.findings);
    let track_saw = Some(TrackSaw { max_tilt_deg: 47.0, cut_depth_mm: 55.0, cut_depth_45_mm: Some(40.0) });
    let short = PanelCutsInput { saw: SawSpec { machine: SawMachine { track_saw, ..machine }, ..saw }, ..thick };
    let found = panel_cuts(&short).unwrap();
    assert_eq!(found.findings[0].grade, crate::finding::Grade::Stop);
    assert!(found.cuts.iter().any(|cut| cut.set_up.is_none() && cut.kind != CutKind::Joint));
}

#[test]
fn a_panel_wider_than_the_fence_goes_is_kept_beyond_the_blade() {
    let machine = SawMachine { rip_right_mm: Some(400.0), ..SawMachine::default() };
    let saw = SawSpec { machine, rip_allowance_mm: 100.0, kerf_mm: 3.0, ..SawSpec::default() };
    let input = rectangle(1000.0, 500.0, [0.0, 0.0, 45.0, 0.0], saw);
    prove_input(&input).unwrap();
    let (cut, set_up) = set_ups(&input).swap_remove(1);
    assert_eq!((cut.kept, cut.passed.len()), (KeptPiece::BeyondTheBlade, 0));
    // Show face down the blade leans away from the fence, over the kept piece, and traps nothing; the strip of 100 loses the
    // kerf along the table.
    let kerf = 3.0 * core::f64::consts::SQRT_2;
    assert!((set_up.unwrap().fence_mm.unwrap() - (100.0 - kerf)).abs() < 1e-9);
    assert_eq!(set_up.unwrap().face_down, FaceDown::ShowFace);
    assert!(cut.cautions.contains(&CutCaution::TurnedOver) && !cut.cautions.contains(&CutCaution::TrappedWaste));
    assert_ne!(set_up.unwrap().fence_side, set_up.unwrap().kept_side);
    // A strip too narrow to lead is not offered: a track saw is.
    let narrow = PanelCutsInput { saw: SawSpec { rip_allowance_mm: 6.0, ..saw }, ..input };
    assert_eq!(set_ups(&narrow)[1].1.unwrap().way, CutWay::TrackSaw);
}

#[test]
fn bad_input_is_refused_by_path() {
    let good = rectangle(1800.0, 185.0, [45.0; 4], SawSpec::default());
    let paths = |change: &dyn Fn(&mut PanelCutsInput)| {
        let mut input = good.clone();
        change(&mut input);
        let error = panel_cuts(&input).expect_err("must be refused");
        error.details().iter().map(|detail| detail.path.clone()).collect::<Vec<_>>()
    };
    assert_eq!(paths(&|input| input.corners[2].bevel_deg = 85.0), ["corners[2].bevel_deg"]);
    assert_eq!(paths(&|input| input.corners.reverse()), ["corners"]);
    assert_eq!(paths(&|input| input.corners.truncate(2)), ["corners"]);
    assert_eq!(paths(&|input| input.thickness_mm = 150.0), ["corners"]);
    assert_eq!(paths(&|input| input.corners[1].u_mm = f64::NAN), ["corners[1].u_mm"]);
    assert_eq!(paths(&|input| input.corners[1] = input.corners[0].clone()), ["corners"]);
    let at = |input: &mut PanelCutsInput| {
        input.saw.kerf_mm = -1.0;
        input.saw.machine.narrow_mm = f64::INFINITY;
    };
    assert_eq!(paths(&at), ["saw.kerf_mm", "saw.machine.narrow_mm"]);
}

fn any_saw() -> impl Strategy<Value = SawSpec> {
    let side = prop_oneof![Just(None), Just(Some(BladeSide::Left)), Just(Some(BladeSide::Right))];
    let habit = prop_oneof![Just(ShowFace::Up), Just(ShowFace::Down)];
    let some = |range: core::ops::Range<f64>| prop::option::of(range);
    let track = some(30.0..60.0)
        .prop_map(|tilt| tilt.map(|max_tilt_deg| TrackSaw { max_tilt_deg, cut_depth_mm: 60.0, cut_depth_45_mm: None }));
    let sizes =
        (0.0..5.0, 30.0..60.0, prop_oneof![Just(0.0), 0.0..20.0, 100.0..200.0], prop_oneof![Just(0.0), 0.0..60.0]);
    let reach = (some(40.0..90.0), some(300.0..900.0), some(200.0..600.0), some(250.0..900.0), some(30.0..70.0));
    (sizes, reach, side, habit, track, 0.0..15.0, 0.0..20.0).prop_map(
        |(sizes, reach, leans, show_face, track_saw, back, planing_mm)| {
            let (kerf_mm, max_tilt_deg, rip_allowance_mm, end_trim_mm) = sizes;
            let (cut_height_mm, rip_right_mm, rip_left_mm, crosscut_mm, max_gauge_deg) = reach;
            let machine = SawMachine {
                leans,
                back_tilt_deg: back,
                cut_height_mm,
                rip_right_mm,
                rip_left_mm,
                crosscut_mm,
                max_gauge_deg,
                planing_mm,
                track_saw,
                ..SawMachine::default()
            };
            SawSpec { kerf_mm, max_tilt_deg, rip_allowance_mm, end_trim_mm, show_face, machine }
        },
    )
}

fn any_bevel() -> impl Strategy<Value = f64> {
    prop_oneof![3 => Just(0.0), 4 => Just(45.0), 1 => Just(-45.0), 4 => -65.0..65.0]
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 250, ..ProptestConfig::default() })]

    #[test]
    fn rectangular_panels_come_out_of_their_blanks(
        length in 250.0..2500.0, width in 60.0..450.0, thickness in 8.0..40.0,
        bevels in prop::array::uniform4(any_bevel()), saw in any_saw(),
    ) {
        let input = PanelCutsInput { thickness_mm: thickness, ..rectangle(length, width, bevels, saw) };
        prop_assert!(prove_input(&input).is_ok(), "{}", prove_input(&input).unwrap_err());
    }

    #[test]
    fn tapered_and_slanted_panels_come_out_of_their_blanks(
        length in 250.0..2500.0, width in 60.0..450.0, thickness in 8.0..40.0,
        tapers in prop::array::uniform4(prop_oneof![1 => Just(0.0), 2 => -0.3..0.3]),
        slants in prop::array::uniform4(prop_oneof![1 => Just(0.0), 2 => -0.4..0.4]),
        bevels in prop::array::uniform4(any_bevel()), saw in any_saw(),
    ) {
        let (u, v) = (slants.map(|share| share * width), tapers.map(|share| share * width));
        let points = [(u[0], v[0]), (length + u[1], v[1]), (length + u[2], width + v[2]), (u[3], width + v[3])];
        let input = PanelCutsInput { thickness_mm: thickness, corners: corners(&points, &bevels), saw };
        prop_assert!(prove_input(&input).is_ok(), "{}", prove_input(&input).unwrap_err());
    }

    #[test]
    fn polygons_come_out_of_their_blanks(
        sizes in (80.0..900.0, 80.0..400.0), turns in prop::collection::vec(10.0..120.0_f64, 3..8), first in 0.0..360.0,
        bevels in prop::collection::vec(any_bevel(), 8), saw in any_saw(),
    ) {
        let total: f64 = turns.iter().sum();
        let mut at = first;
        let points: Vec<_> = turns.iter().map(|turn| {
            at += turn * 360.0 / total;
            let (sine, cosine) = sin_cos_deg(at);
            (sizes.0 * cosine, sizes.1 * sine)
        }).collect();
        let input = PanelCutsInput { thickness_mm: 20.0, corners: corners(&points, &bevels), saw };
        prop_assert!(prove_input(&input).is_ok(), "{}", prove_input(&input).unwrap_err());
    }

    #[test]
    fn panels_of_splayed_beams_come_out_of_their_blanks(
        length in 400.0..2500.0, height in 100.0..300.0, depth in 100.0..300.0,
        boards in prop::array::uniform3(10.0..30.0), ends in prop::array::uniform2((70.0..110.0, 10.0..30.0)), saw in any_saw(),
    ) {
        let board = |(face, thickness_mm)| LegBoard { face, thickness_mm };
        let end = |(corner_deg, thickness_mm)| LegEnd { kind: EndKind::ReturnPanel, thickness_mm: Some(thickness_mm), corner_deg };
        let shell = shell_panels(&Leg {
            leg: 1, length_mm: length, height_mm: height, depth_mm: depth,
            boards: [LongFace::Front, LongFace::Top, LongFace::Bottom].into_iter().zip(boards).map(board).collect(),
            left_end: end(ends[0]), right_end: end(ends[1]), butts: vec![],
        });
        let Ok(shell) = shell else { return Ok(()) };
        for panel in &shell.panels {
            prop_assert!(prove_panel(panel, &saw).is_ok(), "{}", prove_panel(panel, &saw).unwrap_err());
        }
    }

    #[test]
    fn panels_of_tapered_bodies_come_out_of_their_blanks(
        length in 600.0..2500.0, height in 120.0..300.0, depth in 120.0..300.0, tapers in prop::array::uniform3(-0.08..0.08),
        boards in prop::array::uniform3(10.0..25.0), butt in 0_usize..3, saw in any_saw(),
    ) {
        let Ok(shell) = build_shell(&tapered(length, height, depth, tapers, boards), &butts(butt)) else { return Ok(()) };
        for panel in &shell.panels {
            prop_assert!(prove_panel(panel, &saw).is_ok(), "{}", prove_panel(panel, &saw).unwrap_err());
        }
    }

    #[test]
    fn any_bits_give_numbers_or_faults(
        bits in prop::collection::vec(prop_oneof![prop::num::f64::ANY, -500.0..500.0, Just(0.0)], 28), count in 0_usize..7,
    ) {
        let some = |k: usize| Some(bits[k]).filter(|_| bits[k] != 0.0);
        let machine = SawMachine {
            leans: None, back_tilt_deg: bits[18], cut_height_mm: some(19), cut_height_45_mm: some(20), blade_diameter_mm: some(21),
            arbor_below_mm: some(22), rip_right_mm: some(23), rip_left_mm: some(24), crosscut_mm: some(25), max_gauge_deg: some(26),
            fence_height_mm: some(27), tall_fence_mm: some(0), outfeed_mm: some(1), ..SawMachine::default()
        };
        let saw = SawSpec { kerf_mm: bits[13].abs() / 100.0, max_tilt_deg: 45.0, rip_allowance_mm: bits[14], end_trim_mm: bits[15], show_face: ShowFace::Up, machine };
        let corner = |k: usize| ShowCorner { u_mm: bits[2 * k], v_mm: bits[2 * k + 1], bevel_deg: bits[k] / 5.0, edge: String::new() };
        let input = PanelCutsInput { thickness_mm: bits[16], corners: (0..count).map(corner).collect(), saw };
        if let Ok(cuts) = panel_cuts(&input) {
            prop_assert!(crate::json::write(&cuts).is_ok());
        }
    }
}

fn prove_panel(panel: &Panel, saw: &SawSpec) -> Proof<Vec<CutWay>> {
    let Some(cuts) = cuts_of_panel(panel, saw) else { return Ok(Vec::new()) };
    let target = panel.blank().unwrap().in_frame(&panel.frame).unwrap();
    let outs: Vec<Vec3> = panel.edges.iter().map(|edge| Vec3::new(edge.outward.x, edge.outward.y, 0.0)).collect();
    within_limits(&cuts, saw)?;
    prove(&cuts, &target, &outs, panel.thickness_mm, saw.kerf_mm)
}

/// A body whose front, top and bottom lean, with upright ends and an open back: its panels taper, its cuts are compound.
fn tapered(length: f64, height: f64, depth: f64, tapers: [f64; 3], boards: [f64; 3]) -> Vec<OuterFace> {
    let face = |kind, point: Vec3, normal: Vec3, thickness: Option<f64>| OuterFace {
        id: FaceId::first_leg(kind),
        plane: Plane::through(point, normal).unwrap(),
        presence: thickness.map_or(Presence::Open, |thickness_mm| Presence::Board { thickness_mm }),
        grain: Vec3::X,
    };
    let [front, top, bottom] = tapers;
    let far = Vec3::new(length, depth, height);
    vec![
        face(FaceKind::Front, Vec3::ZERO, Vec3::new(front, -1.0, 0.5 * top), Some(boards[0])),
        face(FaceKind::Back, far, Vec3::Y, None),
        face(FaceKind::Top, far, Vec3::new(top, 0.3 * front, 1.0), Some(boards[1])),
        face(FaceKind::Bottom, Vec3::ZERO, Vec3::new(bottom, 0.0, -1.0), Some(boards[2])),
        face(FaceKind::LeftEnd, Vec3::ZERO, -Vec3::X, None),
        OuterFace {
            grain: Vec3::Y,
            ..face(FaceKind::RightEnd, far, Vec3::new(1.0, 0.2 * bottom, 0.0), Some(boards[0]))
        },
    ]
}

fn butts(which: usize) -> Vec<ButtJoint> {
    let joint = |runs_past, stops| ButtJoint {
        runs_past: FaceId::first_leg(runs_past),
        stops: FaceId::first_leg(stops),
        rabbet_mm: 0.0,
    };
    match which {
        0 => vec![],
        1 => vec![
            joint(FaceKind::Front, FaceKind::Top),
            joint(FaceKind::Front, FaceKind::Bottom),
            joint(FaceKind::RightEnd, FaceKind::Top),
            joint(FaceKind::RightEnd, FaceKind::Bottom),
        ],
        _ => vec![
            joint(FaceKind::Top, FaceKind::Front),
            joint(FaceKind::Bottom, FaceKind::Front),
            joint(FaceKind::Top, FaceKind::RightEnd),
            joint(FaceKind::Bottom, FaceKind::RightEnd),
        ],
    }
}

#[test]
fn the_proof_meets_every_way_of_a_cut() {
    // So that the laws above do not hold for want of cases: one panel that needs each way.
    let mut met: Vec<CutWay> = Vec::new();
    for bevel in [0.0, 45.0, 46.5, -46.5, 52.0, -61.3] {
        for leans in [None, Some(BladeSide::Left), Some(BladeSide::Right)] {
            for (taper, end) in [(0.0, bevel), (15.0, bevel), (0.0, 0.0)] {
                let machine = SawMachine { leans, planing_mm: 8.0, rip_left_mm: Some(600.0), ..SawMachine::default() };
                let saw = SawSpec { rip_allowance_mm: 100.0, machine, ..SawSpec::default() };
                let points = [(0.0, 0.0), (500.0, taper), (500.0 + taper, 190.0), (0.0, 200.0 - taper)];
                let input =
                    PanelCutsInput { thickness_mm: 20.0, corners: corners(&points, &[bevel, end, bevel, end]), saw };
                met.extend(prove_input(&input).unwrap());
            }
        }
    }
    for way in [CutWay::FlatOnTable, CutWay::OnEdge, CutWay::OnWedge, CutWay::OversizeThenPlane, CutWay::TrackSaw] {
        assert!(met.contains(&way), "{way:?}");
    }
}
