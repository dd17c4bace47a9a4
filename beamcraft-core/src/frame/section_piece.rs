//! A frame piece in a hollow of any convex section.

use super::hollow::{HollowCorner, Section, Wall};
use crate::error::{Error, ErrorCode, Fault, Result};
use crate::limits::{faults_at, limited};

/// Something in the hollow that a frame piece must stay clear of, seen in section: the cleat, a row of screws, a duct.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<SectionKeepOut>))]
pub struct SectionKeepOut {
    /// What it is.
    pub name: String,
    /// Its side towards the front, from the front face of the body, mm.
    pub out_from_mm: f64,
    /// Its side towards the wall, from the front face of the body, mm.
    pub out_to_mm: f64,
    /// Its lower side, above the underside of the body, mm.
    pub up_from_mm: f64,
    /// Its upper side, above the underside of the body, mm.
    pub up_to_mm: f64,
}

limited!(SectionKeepOut {
    out_from_mm: SIGNED_LENGTH,
    out_to_mm: SIGNED_LENGTH,
    up_from_mm: SIGNED_LENGTH,
    up_to_mm: SIGNED_LENGTH,
});

/// The hollow at both faces of a frame piece, and what it must stay clear of.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<SectionPieceInput>))]
pub struct SectionPieceInput {
    /// Corners of the hollow at the left face of the piece, counter-clockwise seen with the front to the left.
    pub hollow: Vec<HollowCorner>,
    /// The same at its right face, for a hollow that tapers; like the left face when left out.
    #[cfg_attr(feature = "json", serde(default))]
    pub right_hollow: Vec<HollowCorner>,
    /// Gap to leave at each side, mm; 0.5 is a choice: a piece that binds pushes the mitres open.
    #[cfg_attr(feature = "json", serde(default = "usual_gap"))]
    pub gap_mm: f64,
    /// What the piece must stay clear of.
    #[cfg_attr(feature = "json", serde(default))]
    pub keep_outs: Vec<SectionKeepOut>,
}

limited!(SectionPieceInput { gap_mm: SMALL_LENGTH });

#[cfg(feature = "json")]
fn usual_gap() -> f64 {
    0.5
}

/// A side of something in the hollow.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum SectionSide {
    /// Towards the front.
    InFront,
    /// Towards the wall.
    Behind,
    /// Below.
    Below,
    /// Above.
    Above,
}

/// On which side of a keep-out the piece stays.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct ClearedKeepOut {
    /// What it is.
    pub name: String,
    /// The side of it that the piece keeps.
    pub side: SectionSide,
}

/// A frame piece by its outline.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct SectionPiece {
    /// Its corners, counter-clockwise seen with the front to the left, where they stand in the body.
    pub corners: Vec<HollowCorner>,
    /// Extent from front to back, mm.
    pub depth_mm: f64,
    /// Extent in height, mm.
    pub height_mm: f64,
    /// Area of a face, mm².
    pub area_mm2: f64,
    /// Keep-outs that lie in its way, with the side it keeps; those that do not are left out.
    pub cleared: Vec<ClearedKeepOut>,
}

/// A frame piece in a hollow of any convex section, also a tapered one, clear of the cleat and of screws.
///
/// # Equation
/// ```text
/// piece = left section ∩ right section, each line moved in by the gap
/// keep-out in its way: cut off in front of it, behind, below or above, whichever leaves most
/// ```
/// The sections are those of the hollow at both faces of the piece; a square-edged piece must pass the narrower one
/// everywhere.
///
/// # Limits
/// Convex sections. Each keep-out is cleared by one straight cut, one after the other in the order given; a notch keeps
/// more wood but is weaker.
///
/// # Errors
/// `out_of_range`, `not_finite`, `inconsistent` for corners out of order or a keep-out that ends before it begins;
/// `no_room_inside` when no piece is left.
///
/// # Source
/// Plane geometry; checked by `verification/frame`.
///
/// # Examples
/// ```
/// use beamcraft_core::frame::{HollowCorner, SectionKeepOut, SectionPieceInput, section_piece};
/// let corner = |out_mm, up_mm| HollowCorner { out_mm, up_mm };
/// let strip = SectionKeepOut {
///     name: "cleat".to_owned(), out_from_mm: 197.0, out_to_mm: 215.0, up_from_mm: 65.0, up_to_mm: 165.0,
/// };
/// let piece = section_piece(&SectionPieceInput {
///     hollow: vec![corner(20.0, 20.0), corner(215.0, 20.0), corner(215.0, 165.0), corner(20.0, 165.0)],
///     right_hollow: vec![], gap_mm: 0.5, keep_outs: vec![strip],
/// })?;
/// assert_eq!((piece.depth_mm, piece.height_mm), (176.5, 144.0));
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn section_piece(input: &SectionPieceInput) -> Result<SectionPiece> {
    let (left, right) = read(input)?;
    let none = || {
        Error::from(Fault::plain(ErrorCode::NoRoomInside, "hollow", "room for a piece", "less gap, fewer keep-outs"))
    };
    let walls = left.walls().into_iter().chain(right.walls());
    let mut walls = walls.map(|wall| Wall { at: wall.at - input.gap_mm, ..wall });
    let mut piece = walls.try_fold(left, |piece, wall| piece.cut(&wall)).ok_or_else(none)?;
    let mut cleared = Vec::new();
    for keep_out in &input.keep_outs {
        if !overlaps(&piece, keep_out) {
            continue;
        }
        let ways = sides(keep_out).into_iter().filter_map(|(side, wall)| Some((side, piece.cut(&wall)?)));
        let best = ways.max_by(|(_, a), (_, b)| a.area().total_cmp(&b.area()));
        let (side, left) = best.ok_or_else(none)?;
        piece = left;
        cleared.push(ClearedKeepOut { name: keep_out.name.clone(), side });
    }
    let (low, high) = piece.bounds();
    Ok(SectionPiece {
        depth_mm: high.out_mm - low.out_mm,
        height_mm: high.up_mm - low.up_mm,
        area_mm2: piece.area(),
        corners: piece.corners,
        cleared,
    })
}

fn read(input: &SectionPieceInput) -> Result<(Section, Section)> {
    let mut faults = faults_at("", input);
    let left = Section::read(&input.hollow, "hollow").map_err(|more| faults.extend(more));
    let right = if input.right_hollow.is_empty() { &input.hollow } else { &input.right_hollow };
    let right = Section::read(right, "right_hollow");
    let right = right.map_err(|more| faults.extend(more.into_iter().filter(|_| !input.right_hollow.is_empty())));
    for (k, keep_out) in input.keep_outs.iter().enumerate() {
        let path = format!("keep_outs[{k}]");
        faults.extend(faults_at(&path, keep_out));
        for (field, from, to) in [
            ("out_to_mm", keep_out.out_from_mm, keep_out.out_to_mm),
            ("up_to_mm", keep_out.up_from_mm, keep_out.up_to_mm),
        ] {
            if to < from {
                let fault =
                    Fault::plain(ErrorCode::Inconsistent, field, "not before the side it starts from", "swap the two");
                faults.push(crate::error::Detail::from(fault).within(&path));
            }
        }
    }
    Error::unless_empty(faults)?;
    match (left, right) {
        (Ok(left), Ok(right)) => Ok((left, right)),
        // Each leaves a fault when it cannot be read.
        _ => Err(Fault::plain(ErrorCode::Inconsistent, "hollow", "a convex section", "").into()),
    }
}

/// The four cuts that clear a keep-out.
fn sides(keep_out: &SectionKeepOut) -> [(SectionSide, Wall); 4] {
    let wall = |out, up, at| Wall { normal: HollowCorner::new(out, up), at };
    [
        (SectionSide::InFront, wall(1.0, 0.0, keep_out.out_from_mm)),
        (SectionSide::Behind, wall(-1.0, 0.0, -keep_out.out_to_mm)),
        (SectionSide::Below, wall(0.0, 1.0, keep_out.up_from_mm)),
        (SectionSide::Above, wall(0.0, -1.0, -keep_out.up_to_mm)),
    ]
}

/// Whether a keep-out lies within the piece anywhere.
fn overlaps(piece: &Section, keep_out: &SectionKeepOut) -> bool {
    let inner = sides(keep_out).map(|(_, wall)| {
        let normal = HollowCorner::new(-wall.normal.out_mm, -wall.normal.up_mm);
        Wall { normal, at: -wall.at }
    });
    inner.iter().try_fold(piece.clone(), |piece, wall| piece.cut(wall)).is_some()
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const SECTION_PIECE: crate::json::Calculation = crate::json::calculation!(
    section_piece: SectionPieceInput => SectionPiece, Document,
    "Outline of a frame piece in a hollow of any section, clear of the cleat and of screws"
);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::statics::test_inputs::hostile;
    use proptest::prelude::*;

    fn corners(points: &[(f64, f64)]) -> Vec<HollowCorner> {
        points.iter().map(|(out, up)| HollowCorner::new(*out, *up)).collect()
    }

    fn keep_out(out: (f64, f64), up: (f64, f64)) -> SectionKeepOut {
        let name = "duct".to_owned();
        SectionKeepOut { name, out_from_mm: out.0, out_to_mm: out.1, up_from_mm: up.0, up_to_mm: up.1 }
    }

    fn square() -> SectionPieceInput {
        let hollow = corners(&[(0.0, 0.0), (100.0, 0.0), (100.0, 80.0), (0.0, 80.0)]);
        SectionPieceInput { hollow, right_hollow: vec![], gap_mm: 0.0, keep_outs: vec![] }
    }

    #[test]
    fn a_tapered_hollow_gives_the_narrower_of_both_faces() {
        let right_hollow = corners(&[(0.0, 10.0), (100.0, 10.0), (100.0, 85.0), (0.0, 85.0)]);
        let piece = section_piece(&SectionPieceInput { right_hollow, gap_mm: 1.0, ..square() }).unwrap();
        assert_eq!((piece.depth_mm, piece.height_mm, piece.area_mm2), (98.0, 68.0, 98.0 * 68.0));
    }

    #[test]
    fn a_keep_out_is_cleared_where_most_is_left() {
        let strip = keep_out((85.0, 100.0), (30.0, 80.0));
        let aside = keep_out((200.0, 300.0), (0.0, 80.0));
        let piece = section_piece(&SectionPieceInput { keep_outs: vec![strip, aside], ..square() }).unwrap();
        assert_eq!(piece.cleared, [ClearedKeepOut { name: "duct".to_owned(), side: SectionSide::InFront }]);
        assert_eq!(piece.depth_mm, 85.0);
        let flat = keep_out((10.0, 90.0), (0.0, 5.0));
        let piece = section_piece(&SectionPieceInput { keep_outs: vec![flat], ..square() }).unwrap();
        assert_eq!((piece.cleared[0].side, piece.height_mm), (SectionSide::Above, 75.0));
    }

    #[test]
    fn what_cannot_be_read_is_told_with_its_path() {
        let fields = |input: &SectionPieceInput| {
            let error = section_piece(input).expect_err("must be refused");
            error.details().iter().map(|detail| (detail.code, detail.path.clone())).collect::<Vec<_>>()
        };
        let mut turned = square();
        turned.hollow.reverse();
        assert_eq!(fields(&turned), [(ErrorCode::Inconsistent, "hollow".to_owned())]);
        let input = SectionPieceInput { keep_outs: vec![keep_out((5.0, 1.0), (0.0, f64::NAN))], ..square() };
        let found = fields(&input);
        assert_eq!(found[0], (ErrorCode::NotFinite, "keep_outs[0].up_to_mm".to_owned()));
        assert_eq!(found[1], (ErrorCode::Inconsistent, "keep_outs[0].out_to_mm".to_owned()));
        let full = SectionPieceInput { keep_outs: vec![keep_out((0.0, 100.0), (0.0, 80.0))], ..square() };
        assert_eq!(fields(&full), [(ErrorCode::NoRoomInside, "hollow".to_owned())]);
        assert_eq!(
            fields(&SectionPieceInput { gap_mm: 40.0, ..square() }),
            [(ErrorCode::NoRoomInside, "hollow".to_owned())]
        );
    }

    proptest! {
        #[test]
        fn a_piece_lies_in_the_hollow_and_in_no_keep_out(
            deep in 50.0..300.0, high in 50.0..300.0, lean in -40.0..40.0, gap in 0.0..3.0,
            keep_outs in proptest::collection::vec(((0.0..250.0, 1.0..60.0), (0.0..250.0, 1.0..60.0)), 0..4),
        ) {
            let hollow = corners(&[(0.0, 0.0), (deep, 0.0), (deep + lean, high), (lean, high)]);
            let keep_outs: Vec<_> =
                keep_outs.into_iter().map(|((o, w), (u, h))| keep_out((o, o + w), (u, u + h))).collect();
            let input = SectionPieceInput { hollow: hollow.clone(), right_hollow: vec![], gap_mm: gap, keep_outs };
            let Ok(piece) = section_piece(&input) else { return Ok(()) };
            let walls = Section { corners: hollow }.walls();
            for corner in &piece.corners {
                prop_assert!(walls.iter().all(|wall| wall.inside(*corner) >= gap - 1e-9));
            }
            let section = Section { corners: piece.corners };
            prop_assert!(input.keep_outs.iter().all(|keep_out| !overlaps(&section, keep_out)));
        }

        #[test]
        fn hostile_numbers_are_refused_or_give_a_piece(numbers in proptest::collection::vec(hostile(), 13)) {
            let hollow = numbers.chunks(2).take(4).map(|pair| HollowCorner::new(pair[0], pair[1])).collect();
            let keep_outs = vec![keep_out((numbers[8], numbers[9]), (numbers[10], numbers[11]))];
            let input = SectionPieceInput { hollow, right_hollow: vec![], gap_mm: numbers[12], keep_outs };
            if let Ok(piece) = section_piece(&input) {
                prop_assert!(piece.area_mm2 > 0.0 && piece.area_mm2.is_finite());
            }
        }
    }
}
