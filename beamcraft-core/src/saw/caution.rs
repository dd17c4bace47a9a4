//! What to take care of in a cut.

use crate::finding::CautionText;

macro_rules! cut_cautions {
    ($($variant:ident, $name:literal, $text:literal;)+) => {
        /// What to take care of in a cut.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        #[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
        #[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
        pub enum CutCaution { $(#[doc = $text] $variant,)+ }

        impl CutCaution {
            /// Every caution.
            pub const ALL: &'static [Self] = &[$(Self::$variant,)+];

            /// Short name.
            pub const fn name(self) -> &'static str {
                match self { $(Self::$variant => $name,)+ }
            }

            /// The caution itself.
            pub const fn text(self) -> &'static str {
                match self { $(Self::$variant => $text,)+ }
            }
        }
    };
}

cut_cautions! {
    GuardAndRivingKnife, "guard_and_riving_knife", "Guard and riving knife in place, hands clear of the line of the blade; a cut that needs them off is made another way.";
    InsertForTilt, "insert_for_tilt", "Use an insert that was cut at this tilt, so that nothing drops beside the blade; check that the tilted blade clears fence, gauge and guard before the motor runs.";
    TrappedKeptPiece, "trapped_kept_piece", "The kept piece lies between the fence and a blade that leans over it: it can bind and be thrown back. Stand aside, hold it down with a push block, feed it right past the blade.";
    TrappedWaste, "trapped_waste", "The waste lies between the fence and a blade that leans over it: it can bind and be thrown back.";
    NarrowPiece, "narrow_piece", "The piece at the fence is narrow: use a push block, no hand between fence and blade.";
    ShortPiece, "short_piece", "The board is short for the fence, or shorter than it is wide there: it can turn and be thrown back. Make this cut while it is still part of a longer board, or on a sled.";
    LongPointAboveFence, "long_point_above_fence", "The long point rides high: where the fence is lower than the board, the short point meets it and the width is wrong.";
    LongPointUnderFence, "long_point_under_fence", "The long point rides on the table and can creep under the fence or gauge: close the gap with a face that touches the table.";
    OutfeedForLongRip, "outfeed_for_long_rip", "The board tips off the table before the cut ends: support it behind the saw.";
    WedgeSliver, "wedge_sliver", "The waste is a loose wedge or sliver: it can be caught and thrown. Stand aside and let the blade stop before reaching for it.";
    StopBlockNotFence, "stop_block_not_fence", "Fence and gauge never together: the length comes from a stop on the gauge, or from a block on the fence that the board has left before it meets the blade.";
    StopAtCorner, "stop_at_corner", "The stop meets one corner of a bevelled or slanting end: use a narrow stop as high as the board, and do not crush the point.";
    BoardOnEdge, "board_on_edge", "On edge only against a tall fence with a face that may be cut, clamped to a carrier that rides the fence, with enough of the board on the table: the cut takes its footing away.";
    ClampedToJig, "clamped_to_jig", "Clamp the board to the jig, and let the jig be longer than the cut.";
    WedgeUnderBoard, "wedge_under_board", "The wedge is fixed to a carrier with its own fence or stop, the board clamped to it and supported at its far end; distances are measured on the wedge.";
    TurnedOver, "turned_over", "The board lies with the other face down than usual for this maker: check which arris is to be the long one.";
}

impl From<CutCaution> for CautionText {
    fn from(caution: CutCaution) -> Self {
        Self { about: caution.name(), text: caution.text() }
    }
}
