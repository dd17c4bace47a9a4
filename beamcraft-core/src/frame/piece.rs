//! One frame piece across the hollow.

use crate::error::{Allowed, ErrorCode, Fault};
use crate::limits::{Limited, limited};

/// The hollow that a frame piece fits into, by its inside flats.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<FramePieceInput>))]
pub struct FramePieceInput {
    /// Flat of the inside of the front board, between its mitres, mm.
    pub front_flat_mm: f64,
    /// Flat of the inside of the top and bottom boards, from the front's mitre to their back edge, mm.
    pub wide_flat_mm: f64,
    /// Thickness of the cleat strip that lies between the piece and the wall, mm; 0 where there is none.
    pub strip_thickness_mm: f64,
    /// Clearance left behind the piece, mm; no default, the maker's choice.
    pub clearance_mm: f64,
}

limited!(FramePieceInput {
    front_flat_mm: LENGTH,
    wide_flat_mm: LENGTH,
    strip_thickness_mm: SMALL_LENGTH,
    clearance_mm: SMALL_LENGTH,
});

/// Size of a frame piece.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct FramePiece {
    /// Width of the piece, along the height of the front, mm.
    pub width_mm: f64,
    /// Length of the piece, from the front board towards the wall, mm.
    pub length_mm: f64,
}

const NO_FLAT: Allowed = Allowed::Text("more than 0 mm");
const NO_ROOM: Allowed = Allowed::Text("more than the strip and the clearance together");

/// Size of a frame piece that fills the hollow between the wide boards and stops short of the cleat.
///
/// # Equation
/// ```text
/// width = flat of the inside of the front      length = flat of the inside of the wide boards − strip − clearance
/// ```
/// Each symbol is an input field of nearly the same name, in mm.
///
/// # Limits
/// A rectangular hollow. The flats are those of the boards as they are: an inside flat is shorter than the show face by
/// the setback of each mitre, which `mitre_pair` gives.
///
/// # Errors
/// `out_of_range`, `not_finite`; `no_room_inside` when no piece is left.
///
/// # Source
/// Common practice of the trade, no published source; checked by `verification/frame`.
///
/// # Examples
/// ```
/// use beamcraft_core::frame::{frame_piece, FramePieceInput};
/// let piece = frame_piece(&FramePieceInput {
///     front_flat_mm: 145.0, wide_flat_mm: 195.0, strip_thickness_mm: 18.0, clearance_mm: 3.0,
/// })?;
/// assert_eq!((piece.width_mm, piece.length_mm), (145.0, 174.0));
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn frame_piece(input: &FramePieceInput) -> Result<FramePiece, Fault> {
    input.check_ranges()?;
    let FramePieceInput { front_flat_mm, wide_flat_mm, strip_thickness_mm, clearance_mm } = *input;
    let length_mm = wide_flat_mm - strip_thickness_mm - clearance_mm;
    if front_flat_mm <= 0.0 {
        return Err(Fault::number(ErrorCode::NoRoomInside, "front_flat_mm", front_flat_mm, NO_FLAT, "thinner boards"));
    }
    if length_mm <= 0.0 {
        let cure = "thinner boards or a thinner strip";
        return Err(Fault::number(ErrorCode::NoRoomInside, "wide_flat_mm", wide_flat_mm, NO_ROOM, cure));
    }
    Ok(FramePiece { width_mm: front_flat_mm, length_mm })
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const FRAME_PIECE: crate::json::Calculation = crate::json::calculation!(
    frame_piece: FramePieceInput => FramePiece, Typed,
    "Size of a frame piece between the wide boards, short of the cleat"
);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::statics::test_inputs::hostile;
    use proptest::prelude::*;

    fn piece(front: f64, wide: f64, strip: f64, clearance: f64) -> Result<FramePiece, Fault> {
        frame_piece(&FramePieceInput {
            front_flat_mm: front,
            wide_flat_mm: wide,
            strip_thickness_mm: strip,
            clearance_mm: clearance,
        })
    }

    #[test]
    fn a_filled_hollow_is_refused() {
        assert_eq!(piece(145.0, 21.0, 18.0, 3.0).expect_err("refused").code, ErrorCode::NoRoomInside);
        assert_eq!(piece(0.0, 100.0, 18.0, 3.0).expect_err("refused").field, "front_flat_mm");
    }

    proptest! {
        #[test]
        fn hostile_numbers_are_refused_or_give_a_piece(a in hostile(), b in hostile(), c in hostile(), d in hostile()) {
            if let Ok(found) = piece(a, b, c, d) {
                prop_assert!(found.length_mm > 0.0 && found.length_mm <= b && found.width_mm > 0.0);
            }
        }
    }
}
