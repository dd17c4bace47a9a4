use proptest::prelude::*;

use super::*;
use crate::numeric::real::{atan2_deg, sin_cos_deg};

fn pieces(lengths: &[f64]) -> Vec<RunPiece> {
    lengths.iter().map(|&show_length_mm| RunPiece { name: "a piece".to_owned(), show_length_mm }).collect()
}

fn open_run(lengths: &[f64], corner_deg: f64, method: CornerMethod) -> GrainRunInput {
    GrainRunInput {
        pieces: pieces(lengths),
        corners: vec![RunCorner { corner_deg, method }; lengths.len() - 1],
        shape: RunShape::Open,
        direction: RunDirection::AlongGrain,
        thickness_mm: 20.0,
        width_mm: 185.0,
        kerf_mm: 3.0,
        trim_mm: 15.0,
        spare_mm: 250.0,
        skin_mm: 0.5,
    }
}

/// The end of a piece in the section of the board: x along the run, y down from the show face, and the unit normal
/// towards the waste.
#[derive(Clone, Copy)]
struct EndLine {
    through: [f64; 2],
    normal: [f64; 2],
}

impl EndLine {
    fn of_left_piece(through: [f64; 2], bevel_deg: f64) -> Self {
        let (sine, cosine) = sin_cos_deg(bevel_deg);
        Self { through, normal: [cosine, sine] }
    }

    fn of_right_piece(through: [f64; 2], bevel_deg: f64) -> Self {
        let (sine, cosine) = sin_cos_deg(bevel_deg);
        Self { through, normal: [-cosine, sine] }
    }

    /// The far side of the kerf.
    fn moved(self, by: f64) -> Self {
        let Self { through: [x, y], normal: [u, v] } = self;
        Self { through: [x + by * u, y + by * v], ..self }
    }

    fn offset(self) -> f64 {
        self.through[0] * self.normal[0] + self.through[1] * self.normal[1]
    }

    fn x_at(self, y: f64) -> f64 {
        (self.offset() - self.normal[1] * y) / self.normal[0]
    }

    fn meets(self, other: Self) -> [f64; 2] {
        let ([a, b], [c, d]) = (self.normal, other.normal);
        let det = a * d - b * c;
        [(self.offset() * d - b * other.offset()) / det, (a * other.offset() - self.offset() * c) / det]
    }
}

/// What the saw leaves between the far sides of two cuts: width on the inner face, height, angle at the apex.
fn left_between(left: EndLine, right: EndLine, thickness_mm: f64) -> [f64; 3] {
    let apex = left.meets(right);
    let cosine = -(left.normal[0] * right.normal[0] + left.normal[1] * right.normal[1]);
    let sine = left.normal[0] * right.normal[1] - left.normal[1] * right.normal[0];
    [right.x_at(thickness_mm) - left.x_at(thickness_mm), thickness_mm - apex[1], atan2_deg(sine.abs(), cosine)]
}

/// Show-face loss and wedge by sawing the section line by line.
fn sawn(input: &GrainRunInput, corner: &RunCorner) -> (f64, [f64; 3]) {
    let GrainRunInput { thickness_mm: t, kerf_mm: k, skin_mm, .. } = *input;
    let bevel = (180.0 - corner.corner_deg) / 2.0;
    let first = EndLine::of_left_piece([0.0, 0.0], bevel);
    match corner.method {
        CornerMethod::PartOnBevel => {
            let arris = first.moved(k).x_at(0.0);
            let next = EndLine::of_right_piece([arris, 0.0], bevel);
            (arris, left_between(first.moved(k), next.moved(k), t))
        }
        CornerMethod::PartSquare => {
            let parting = EndLine::of_right_piece([0.0, 0.0], 0.0);
            let far_side = EndLine::of_left_piece([0.0, 0.0], 0.0).moved(k).x_at(0.0);
            (far_side, left_between(first.moved(k), parting, t))
        }
        CornerMethod::Fold => {
            let left = EndLine::of_left_piece([0.0, skin_mm], bevel);
            let right = EndLine::of_right_piece([0.0, skin_mm], bevel);
            (0.0, left_between(left.moved(k), right.moved(k), t))
        }
    }
}

const METHODS: [CornerMethod; 3] = [CornerMethod::PartOnBevel, CornerMethod::PartSquare, CornerMethod::Fold];

fn any_method() -> impl Strategy<Value = CornerMethod> {
    prop::sample::select(METHODS.to_vec())
}

#[test]
fn a_square_corner_gives_a_wedge_that_fits_it_and_others_do_not() {
    let good_for = |corner_deg, method, direction| {
        let input = GrainRunInput { direction, ..open_run(&[200.0, 900.0], corner_deg, method) };
        grain_run(&input).unwrap().corners[0].wedge.unwrap().good_for
    };
    for method in METHODS {
        assert!(good_for(90.0, method, RunDirection::AlongGrain).contains("end seams only"));
        assert!(good_for(90.0, method, RunDirection::AcrossGrain).contains("long seams"));
        assert!(good_for(120.0, method, RunDirection::AlongGrain).contains("test pieces"));
        assert!(good_for(120.0, method, RunDirection::AcrossGrain).contains("cauls"));
    }
    // Parted square at 60°, the wedge has 60° at its apex.
    assert!(good_for(60.0, CornerMethod::PartSquare, RunDirection::AcrossGrain).contains("long seams"));
    assert!(good_for(60.0, CornerMethod::PartOnBevel, RunDirection::AcrossGrain).contains("cauls"));
}

#[test]
fn a_wide_kerf_in_a_thin_board_leaves_no_wedge() {
    let input = GrainRunInput { thickness_mm: 4.0, ..open_run(&[200.0, 900.0], 90.0, CornerMethod::PartSquare) };
    assert_eq!(grain_run(&input).unwrap().corners[0].wedge, None);
}

#[test]
fn a_ring_is_bevelled_at_both_free_ends_and_loses_nothing_there() {
    let mut input = open_run(&[300.0, 400.0, 300.0, 400.0], 90.0, CornerMethod::PartSquare);
    input.shape = RunShape::Closed;
    input.corners.push(RunCorner { corner_deg: 100.0, method: CornerMethod::PartOnBevel });
    let run = grain_run(&input).unwrap();
    assert_eq!(run.corners.len(), 4);
    assert_eq!((run.corners[3].loss_mm, run.corners[3].wedge), (0.0, None));
    assert_eq!((run.pieces[0].left_bevel_deg, run.pieces[3].right_bevel_deg), (40.0, 40.0));
    assert_eq!(run.pieces[0].right_bevel_deg, 45.0);
    assert_eq!((run.loss_mm, run.net_length_mm), (9.0, 1409.0));
}

#[test]
fn a_single_piece_is_a_run_without_corners() {
    let run = grain_run(&open_run(&[500.0], 90.0, CornerMethod::Fold)).unwrap();
    assert_eq!((run.net_length_mm, run.run_length_mm, run.corners.len()), (500.0, 780.0, 0));
    assert_eq!((run.pieces[0].left_bevel_deg, run.pieces[0].right_bevel_deg), (0.0, 0.0));
}

#[test]
fn what_contradicts_itself_is_refused_with_its_path() {
    let good = open_run(&[200.0, 900.0, 200.0], 90.0, CornerMethod::PartSquare);
    let refused = |input: &GrainRunInput, field: &str| {
        let error = grain_run(input).unwrap_err();
        assert_eq!((error.code(), error.field()), (ErrorCode::Inconsistent, field));
    };
    let mut input = good.clone();
    input.corners.pop();
    refused(&input, "corners");
    refused(&GrainRunInput { shape: RunShape::Closed, ..good.clone() }, "corners");
    refused(&GrainRunInput { pieces: Vec::new(), corners: Vec::new(), ..good.clone() }, "corners");
    refused(&GrainRunInput { skin_mm: 20.0, ..good.clone() }, "skin_mm");
    let two = GrainRunInput { pieces: pieces(&[200.0, 200.0]), shape: RunShape::Closed, ..good.clone() };
    refused(&two, "pieces");
    // Two bevels of 45° in 20 mm take 40 mm off the inner face.
    refused(&open_run(&[200.0, 40.0, 200.0], 90.0, CornerMethod::PartSquare), "pieces[1].show_length_mm");
    assert!(grain_run(&open_run(&[200.0, 40.1, 200.0], 90.0, CornerMethod::PartSquare)).is_ok());
}

#[test]
fn every_fault_of_the_lists_has_its_path() {
    let mut input = open_run(&[200.0, 900.0, 200.0], 90.0, CornerMethod::PartSquare);
    input.pieces[2].show_length_mm = f64::NAN;
    input.corners[1].corner_deg = 250.0;
    input.kerf_mm = -1.0;
    let error = grain_run(&input).unwrap_err();
    let found: Vec<_> = error.details().iter().map(|detail| (detail.code, detail.path.to_string())).collect();
    let wanted = [
        (ErrorCode::OutOfRange, "kerf_mm"),
        (ErrorCode::NotFinite, "pieces[2].show_length_mm"),
        (ErrorCode::OutOfRange, "corners[1].corner_deg"),
    ];
    assert_eq!(found, wanted.map(|(code, field)| (code, field.to_owned())));
}

fn hostile(good: core::ops::Range<f64>) -> impl Strategy<Value = f64> {
    prop_oneof![1 => prop::num::f64::ANY, 9 => good]
}

proptest! {
    #[test]
    fn losses_and_wedges_are_those_of_the_section_sawn_line_by_line(
        corner_deg in 30.0..170.0, method in any_method(), thickness_mm in 3.0..60.0, kerf_mm in 0.0..6.0,
    ) {
        let mut input = open_run(&[900.0, 900.0], corner_deg, method);
        (input.thickness_mm, input.kerf_mm) = (thickness_mm, kerf_mm);
        let run = grain_run(&input).unwrap();
        let (loss_mm, [back_mm, height_mm, apex_deg]) = sawn(&input, &input.corners[0]);
        prop_assert!((run.corners[0].loss_mm - loss_mm).abs() < 1e-9);
        match run.corners[0].wedge {
            Some(wedge) => {
                prop_assert!((wedge.back_width_mm - back_mm).abs() < 1e-9);
                prop_assert!((wedge.height_mm - height_mm).abs() < 1e-9);
                prop_assert!((wedge.apex_deg - apex_deg).abs() < 1e-6);
                prop_assert_eq!(wedge.count, if method == CornerMethod::PartSquare { 2 } else { 1 });
            }
            None => prop_assert!(back_mm < 1e-9 || height_mm < 1e-9),
        }
    }

    #[test]
    fn the_run_is_its_parts_end_to_end(
        lengths in prop::collection::vec(200.0..3000.0, 2..6), corner_deg in 60.0..170.0, method in any_method(),
    ) {
        let input = open_run(&lengths, corner_deg, method);
        let run = grain_run(&input).unwrap();
        prop_assert_eq!(run.pieces[0].from_mm, input.trim_mm);
        for (k, corner) in run.corners.iter().enumerate() {
            prop_assert_eq!(corner.at_mm, run.pieces[k].to_mm);
            prop_assert!((run.pieces[k + 1].from_mm - run.pieces[k].to_mm - corner.loss_mm).abs() < 1e-9);
            prop_assert_eq!(run.pieces[k].right_bevel_deg, run.pieces[k + 1].left_bevel_deg);
        }
        let shown: f64 = lengths.iter().sum();
        prop_assert!((run.net_length_mm - shown - run.loss_mm).abs() < 1e-8);
        prop_assert!((run.run_length_mm - run.net_length_mm - 2.0 * input.trim_mm - input.spare_mm).abs() < 1e-8);
    }

    #[test]
    fn folding_loses_least_and_parting_on_the_bevel_most(corner_deg in 30.0..170.0, kerf_mm in 0.1..6.0) {
        let loss = |method| {
            let input = GrainRunInput { kerf_mm, ..open_run(&[900.0, 900.0], corner_deg, method) };
            grain_run(&input).unwrap().loss_mm
        };
        prop_assert!(loss(CornerMethod::Fold) < loss(CornerMethod::PartSquare));
        prop_assert!(loss(CornerMethod::PartSquare) < loss(CornerMethod::PartOnBevel));
    }

    #[test]
    fn any_bits_give_numbers_or_faults(
        lengths in prop::collection::vec(hostile(10.0..3000.0), 0..4), corner_deg in hostile(30.0..170.0),
        corner_count in 0_usize..4, method in any_method(), ring in any::<bool>(),
        [thickness_mm, kerf_mm, trim_mm, spare_mm, skin_mm, width_mm] in [
            hostile(1.0..60.0), hostile(0.0..12.0), hostile(0.0..50.0), hostile(0.0..500.0), hostile(0.0..2.0), hostile(0.0..400.0),
        ],
    ) {
        let input = GrainRunInput {
            pieces: pieces(&lengths),
            corners: vec![RunCorner { corner_deg, method }; corner_count],
            shape: if ring { RunShape::Closed } else { RunShape::Open },
            direction: RunDirection::AcrossGrain,
            thickness_mm, width_mm, kerf_mm, trim_mm, spare_mm, skin_mm,
        };
        if let Ok(run) = grain_run(&input) {
            prop_assert!(run.run_length_mm.is_finite() && run.net_length_mm > 0.0 && run.loss_mm >= 0.0);
            for corner in &run.corners {
                prop_assert!(corner.at_mm.is_finite() && corner.loss_mm.is_finite());
                let numbers = corner.wedge.map_or([0.0; 4], |wedge| {
 [wedge.back_width_mm, wedge.height_mm, wedge.length_mm, wedge.apex_deg]
 });
 prop_assert!(numbers.iter().all(|x| x.is_finite()));
            }
        }
    }
}
