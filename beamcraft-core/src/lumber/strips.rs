//! How many strips a board gives.

use crate::error::Fault;
use crate::limits::{Limited, limited};

/// A board to be ripped into equal strips.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<StripsFromWidthInput>))]
pub struct StripsFromWidthInput {
    /// Width of the board with straight edges, mm.
    pub board_width_mm: f64,
    /// Width of a strip, mm.
    pub strip_width_mm: f64,
    /// Width of a saw cut, mm.
    pub kerf_mm: f64,
}

limited!(StripsFromWidthInput { board_width_mm: PANEL_WIDTH, strip_width_mm: PANEL_WIDTH, kerf_mm: KERF });

/// The strips and the rest.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct StripsFromWidth {
    /// Number of strips.
    pub strips: u32,
    /// Width that is left after the last cut, mm.
    pub rest_mm: f64,
}

/// How many strips of one width a board gives.
///
/// # Equation
/// ```text
/// n = floor((W + k) / (s + k))        the last strip needs no cut behind it
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | W | width of the board | mm | `board_width_mm` |
/// | s | width of a strip | mm | `strip_width_mm` |
/// | k | kerf | mm | `kerf_mm` |
///
/// # Limits
/// Straight, parallel edges; a strip may spring when it is cut free. Narrow rips want a push block, a riving knife and the
/// guard on.
///
/// # Errors
/// `out_of_range`, `not_finite`.
///
/// # Source
/// Plane geometry (derived). Checked by `verification/lumber`.
///
/// # Examples
/// ```
/// use beamcraft_core::lumber::{strips_from_width, StripsFromWidthInput};
/// let found = strips_from_width(&StripsFromWidthInput { board_width_mm: 150.0, strip_width_mm: 40.0, kerf_mm: 3.0 })?;
/// assert_eq!((found.strips, found.rest_mm), (3, 21.0));
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn strips_from_width(input: &StripsFromWidthInput) -> Result<StripsFromWidth, Fault> {
    input.check_ranges()?;
    let StripsFromWidthInput { board_width_mm, strip_width_mm, kerf_mm } = *input;
    // A strip a hair wider than what is left still comes off: inches do not divide the binary millimetre.
    let strips = ((board_width_mm + kerf_mm) / (strip_width_mm + kerf_mm) + 1e-9).floor();
    let rest_mm = (board_width_mm - strips * (strip_width_mm + kerf_mm)).max(0.0);
    // At most 5000 strips of a millimetre.
    Ok(StripsFromWidth { strips: strips as u32, rest_mm })
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const STRIPS_FROM_WIDTH: crate::json::Calculation = crate::json::calculation!(
    strips_from_width: StripsFromWidthInput => StripsFromWidth, Typed,
    "How many strips of one width a board gives"
);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lumber::hostile;
    use proptest::prelude::*;

    fn strips(board_width_mm: f64, strip_width_mm: f64, kerf_mm: f64) -> u32 {
        strips_from_width(&StripsFromWidthInput { board_width_mm, strip_width_mm, kerf_mm }).expect("a board").strips
    }

    #[test]
    fn a_board_of_the_strips_width_is_one_strip() {
        assert_eq!(strips(40.0, 40.0, 3.0), 1);
        assert_eq!(strips(39.9, 40.0, 3.0), 0);
        assert_eq!(strips(83.0, 40.0, 3.0), 2);
    }

    proptest! {
        #[test]
        fn the_strips_fit_and_one_more_would_not(w in 1.0..2e3_f64, s in 1.0..400.0_f64, k in 0.0..8.0_f64) {
            let n = f64::from(strips(w, s, k));
            prop_assert!(n * s + (n - 1.0).max(0.0) * k <= w + 1e-6);
            prop_assert!((n + 1.0) * s + n * k > w);
        }

        #[test]
        fn a_wider_kerf_never_gives_more(w in 1.0..2e3_f64, s in 1.0..400.0_f64, k in 0.0..8.0_f64, more in 0.0..4.0_f64) {
            prop_assert!(strips(w, s, k + more) <= strips(w, s, k));
        }

        #[test]
        fn any_numbers_give_strips_or_a_fault(a in hostile::number(), b in hostile::number(), c in hostile::number()) {
            let input = StripsFromWidthInput { board_width_mm: a, strip_width_mm: b, kerf_mm: c };
            if let Ok(found) = strips_from_width(&input) {
                prop_assert!(found.rest_mm.is_finite() && found.strips <= 5_001);
            }
        }
    }
}
