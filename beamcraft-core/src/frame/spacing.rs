//! Where the frame pieces go along the body.

use crate::error::{Detail, Error, ErrorCode, Fault, Result};
use crate::finding::{Finding, FindingCode, Grade, Quantity};
use crate::limits::{faults_at, limited};

/// A stretch along the body where no piece may stand: over a screw, a stud, a seam.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<KeepOut>))]
pub struct KeepOut {
    /// Where it begins, from the left inner end, mm.
    pub from_mm: f64,
    /// Where it ends, from the left inner end, mm.
    pub to_mm: f64,
}

limited!(KeepOut { from_mm: SIGNED_LENGTH, to_mm: SIGNED_LENGTH });

/// The run along which frame pieces are to be spread.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<FrameSpacingInput>))]
pub struct FrameSpacingInput {
    /// Length of the hollow between its inner ends, mm.
    pub inner_length_mm: f64,
    /// Thickness of a piece along the body, mm.
    pub piece_thickness_mm: f64,
    /// From each inner end to the nearer face of the first and last piece, mm.
    pub end_margin_mm: f64,
    /// Greatest distance between the centres of neighbours, mm.
    pub greatest_spacing_mm: f64,
    /// Where no piece may stand.
    #[cfg_attr(feature = "json", serde(default))]
    pub keep_outs: Vec<KeepOut>,
}

limited!(FrameSpacingInput {
    inner_length_mm: BODY_LENGTH,
    piece_thickness_mm: BOARD_THICKNESS,
    end_margin_mm: LENGTH,
    greatest_spacing_mm: SPACING,
});

/// Places of the frame pieces.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct FrameSpacing {
    /// Centres of the pieces from the left inner end, mm, from left to right.
    pub centres_mm: Vec<f64>,
    /// Number of pieces.
    pub piece_count: u32,
    /// Greatest distance between the centres of neighbours, mm; 0 with one piece.
    pub widest_mm: f64,
    /// What stands in the way.
    pub findings: Vec<Finding>,
}

/// Spreads frame pieces along the body: evenly where nothing is in the way, else with as few as the spacing allows.
///
/// # Equation
/// ```text
/// n = ⌈run / greatest⌉ + 1      spacing = run / (n − 1)      run = length − 2 margin − thickness
/// ```
/// When an evenly spread piece would stand in a keep-out, the pieces go from left to right, each as far from the one
/// before as the greatest spacing and the free places allow, which needs the fewest.
///
/// # Limits
/// A keep-out wider than the greatest spacing cannot be bridged: the piece goes to its far side and a finding says so.
///
/// # Errors
/// `out_of_range`, `not_finite`, each with its path; `inconsistent` when pieces are thicker than their spacing or a
/// keep-out ends before it begins; `no_room_inside` when no place is left for any piece.
///
/// # Source
/// Geometry, derived; that a frame piece stands near each end is common practice. Checked by `verification/frame`.
///
/// # Examples
/// ```
/// use beamcraft_core::frame::{frame_spacing, FrameSpacingInput};
/// let places = frame_spacing(&FrameSpacingInput {
///     inner_length_mm: 1018.0, piece_thickness_mm: 18.0, end_margin_mm: 0.0, greatest_spacing_mm: 400.0, keep_outs: vec![],
/// })?;
/// assert_eq!(places.piece_count, 4);
/// assert_eq!((places.centres_mm[0], places.centres_mm[3]), (9.0, 1009.0));
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn frame_spacing(input: &FrameSpacingInput) -> Result<FrameSpacing> {
    check(input)?;
    let half = 0.5 * input.piece_thickness_mm;
    let free = free_places(input, half);
    let (Some(first), Some(last)) = (free.first(), free.last()) else {
        let fault = Fault::plain(ErrorCode::NoRoomInside, "inner_length_mm", "room for one piece", "fewer keep-outs");
        return Err(Error::one(fault.into()));
    };
    let (start, end) = (first.0, last.1);
    let greatest = input.greatest_spacing_mm;
    let is_free = |x: f64| free.iter().any(|(low, high)| x >= *low && x <= *high);
    let steps = ((end - start) / greatest).ceil();
    let spacing = if steps > 0.0 { (end - start) / steps } else { 0.0 };
    let even: Vec<f64> = match steps as u32 {
        0 => vec![start],
        // The last one is set, not summed, so that it stands where it was found to be free.
        last => (0..=last).map(|k| if k == last { end } else { start + f64::from(k) * spacing }).collect(),
    };
    let clear = spacing == 0.0 || spacing >= input.piece_thickness_mm;
    let centres_mm = if clear && even.iter().all(|x| is_free(*x)) {
        even
    } else {
        spread(&free, start, end, greatest, input.piece_thickness_mm)
    };
    let gaps = centres_mm.iter().zip(centres_mm.iter().skip(1)).map(|(one, next)| next - one);
    let widest_mm = gaps.fold(0.0, f64::max);
    let findings = if widest_mm > greatest * (1.0 + 1e-12) { vec![too_wide(widest_mm, greatest)] } else { Vec::new() };
    Ok(FrameSpacing { piece_count: centres_mm.len() as u32, centres_mm, widest_mm, findings })
}

fn check(input: &FrameSpacingInput) -> Result<()> {
    let mut faults = faults_at("", input);
    if input.greatest_spacing_mm < input.piece_thickness_mm {
        let fault = Fault::plain(ErrorCode::Inconsistent, "greatest_spacing_mm", "not less than the thickness", "");
        faults.push(fault.into());
    }
    for (k, keep_out) in input.keep_outs.iter().enumerate() {
        let path = format!("keep_outs[{k}]");
        faults.extend(faults_at(&path, keep_out));
        if keep_out.to_mm < keep_out.from_mm {
            let fault = Fault::plain(ErrorCode::Inconsistent, "to_mm", "not before from_mm", "swap the two");
            faults.push(Detail::from(fault).within(&path));
        }
    }
    Error::unless_empty(faults)
}

/// Stretches where the centre of a piece may lie, from left to right.
fn free_places(input: &FrameSpacingInput, half: f64) -> Vec<(f64, f64)> {
    let mut low = input.end_margin_mm + half;
    let high = input.inner_length_mm - input.end_margin_mm - half;
    let mut blocked: Vec<_> = input.keep_outs.iter().map(|k| (k.from_mm - half, k.to_mm + half)).collect();
    blocked.sort_by(|one, other| one.0.total_cmp(&other.0));
    let mut free = Vec::new();
    for (from, to) in blocked {
        if from >= low && low <= high {
            free.push((low, from.min(high)));
        }
        low = low.max(to);
    }
    if low <= high {
        free.push((low, high));
    }
    free
}

/// From `start` to `end`, each piece as far on as `greatest` and the free places allow.
fn spread(free: &[(f64, f64)], start: f64, end: f64, greatest: f64, thickness: f64) -> Vec<f64> {
    let mut centres = vec![start];
    let mut at = start;
    while end - at > greatest {
        // Room is kept for the last piece, which is set already.
        let (nearest, farthest) = (at + thickness, (at + greatest).min(end - thickness));
        let within = free.iter().filter(|(low, high)| *low <= farthest && *high >= nearest);
        let reach = within.map(|(_, high)| high.min(farthest)).fold(f64::MIN, f64::max);
        let beyond = || free.iter().map(|(low, _)| *low).find(|low| *low > farthest && *low <= end - thickness);
        let next = if reach >= nearest { Some(reach) } else { beyond() };
        let Some(next) = next else { break };
        centres.push(next);
        at = next;
    }
    if end - at >= thickness {
        centres.push(end);
    }
    centres
}

fn too_wide(widest_mm: f64, greatest_mm: f64) -> Finding {
    Finding {
        grade: Grade::Caution,
        code: FindingCode::FrameDoesNotFit,
        subject: "frame".to_owned(),
        message: "A keep-out is wider than the greatest spacing of the frame pieces.".to_owned(),
        numbers: vec![
            Quantity::new("widest spacing", widest_mm, "mm"),
            Quantity::new("greatest spacing asked for", greatest_mm, "mm"),
        ],
        cure: "Add glue blocks along the seams there, or move what needs the room.".to_owned(),
        clause: None,
    }
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const FRAME_SPACING: crate::json::Calculation = crate::json::calculation!(
    frame_spacing: FrameSpacingInput => FrameSpacing, Document,
    "Where frame pieces go along the body, clear of keep-outs"
);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::statics::test_inputs::hostile;
    use proptest::prelude::*;

    fn run(length: f64, thickness: f64, margin: f64, greatest: f64, keep_outs: &[(f64, f64)]) -> Result<FrameSpacing> {
        frame_spacing(&FrameSpacingInput {
            inner_length_mm: length,
            piece_thickness_mm: thickness,
            end_margin_mm: margin,
            greatest_spacing_mm: greatest,
            keep_outs: keep_outs.iter().map(|(from_mm, to_mm)| KeepOut { from_mm: *from_mm, to_mm: *to_mm }).collect(),
        })
    }

    #[test]
    fn one_piece_where_there_is_room_for_one() {
        let single = run(20.0, 20.0, 0.0, 400.0, &[]).expect("allowed");
        assert_eq!((single.centres_mm.as_slice(), single.widest_mm), ([10.0].as_slice(), 0.0));
        assert_eq!(run(20.0, 20.0, 1.0, 400.0, &[]).expect_err("refused").code(), ErrorCode::NoRoomInside);
        assert_eq!(
            run(500.0, 20.0, 0.0, 400.0, &[(-1.0, 600.0)]).expect_err("refused").code(),
            ErrorCode::NoRoomInside
        );
    }

    #[test]
    fn a_keep_out_wider_than_the_spacing_is_bridged_and_told() {
        let wide = run(2000.0, 20.0, 0.0, 300.0, &[(500.0, 1200.0)]).expect("allowed");
        assert_eq!(wide.findings.len(), 1);
        assert!(wide.widest_mm >= 700.0);
    }

    #[test]
    fn a_keep_out_that_ends_before_it_begins_is_named() {
        let faults = run(2000.0, 20.0, 0.0, 300.0, &[(0.0, 1.0), (10.0, 5.0)]).expect_err("refused");
        assert_eq!(faults.field(), "keep_outs[1].to_mm");
    }

    proptest! {
        #[test]
        fn pieces_stand_free_of_each_other_of_the_ends_and_of_keep_outs(
            length in 200.0..4000.0_f64, thickness in 5.0..40.0_f64, margin in 0.0..50.0_f64, greatest in 100.0..600.0_f64,
            keep_outs in proptest::collection::vec((0.0..4000.0_f64, 0.0..150.0_f64), 0..8),
        ) {
            let keep_outs: Vec<_> = keep_outs.into_iter().map(|(from, wide)| (from, from + wide)).collect();
            let Ok(places) = run(length, thickness, margin, greatest, &keep_outs) else { return Ok(()) };
            let half = 0.5 * thickness;
            let slack = 1e-9;
            for x in &places.centres_mm {
                prop_assert!(x - half >= margin - slack && x + half <= length - margin + slack);
                for (from, to) in &keep_outs {
                    prop_assert!(x + half <= from + slack || x - half >= to - slack, "{} in {} to {}", x, from, to);
                }
            }
            for pair in places.centres_mm.windows(2) {
                prop_assert!(pair[1] - pair[0] >= thickness - slack);
            }
            prop_assert_eq!(places.findings.is_empty(), places.widest_mm <= greatest * (1.0 + 1e-12));
            if keep_outs.is_empty() {
                let run_mm = length - 2.0 * margin - thickness;
                prop_assert_eq!(f64::from(places.piece_count), (run_mm / greatest).ceil() + 1.0);
            }
        }

        #[test]
        fn hostile_numbers_are_refused_or_give_finite_places(
            a in hostile(), b in hostile(), c in hostile(), d in hostile(),
            keep_outs in proptest::collection::vec((hostile(), hostile()), 0..4),
        ) {
            if let Ok(places) = run(a, b, c, d, &keep_outs) {
                prop_assert!(places.centres_mm.iter().all(|x| x.is_finite()) && places.piece_count >= 1);
            }
        }
    }
}
