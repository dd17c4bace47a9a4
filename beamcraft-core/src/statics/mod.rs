//! Equilibrium of a hung body: the bevelled seat, the screwed wall half, brackets, shares of the studs, beams, sections.
//!
//! It answers which forces arise where; how much a screw or a lip can take is told elsewhere.
//!
//! ```text
//!   wall │   ╱ beam half          x out from the wall, z up
//!        │  ╱│
//!        │ ╱b│  contact  ──►  pull on the wall half (out), W (down)
//!        │╱──┘    │ h
//!        │        │   ● centre of weight, e in front of the contact
//!        ├────────┘ foot
//! ```
//!
//! All of it is statics of rigid bodies without friction at the wall, derived in the theory pages.
//! The results hold for the stated loads only; see [`Caution::Structure`](crate::finding::Caution::Structure).

mod beam;
mod beam_solve;
mod bracket;
mod lip;
mod seat;
mod section;
mod share;
mod strip;
mod torsion;
mod warping;

pub use beam::{
    BeamLineLoad, BeamOnSupports, BeamOnSupportsInput, BeamPointLoad, BeamStation, BeamSupport, SupportHold,
    SupportReaction, beam_on_supports,
};
pub use bracket::{BoltRowBracket, BoltRowBracketInput, BracketLoad, bolt_row_bracket};
pub use lip::{CleatLip, CleatLipInput, cleat_lip};
pub use seat::{CleatSeat, CleatSeatInput, SeatLock, SeatRegime, cleat_seat};
pub use section::{
    PartOutline, PartSense, SectionPart, SectionPartProperties, SectionPartStress, SectionPoint, SectionPolygon,
    SectionProperties, SectionPropertiesInput, SectionRectangle, SectionStress, SectionStressInput, section_properties,
    section_stress,
};
pub use share::{ShareBetweenSupports, ShareBetweenSupportsInput, SupportShare, share_between_supports};
pub use strip::{StripPivot, WallStripScrews, WallStripScrewsInput, wall_strip_screws};
pub use torsion::{TorsionWall, WallTorsion, WallTorsionInput, wall_torsion};
pub use warping::{CornerWarping, OpenWallWarping, OpenWallWarpingInput, open_wall_warping};

/// Registry rows of this module.
#[cfg(feature = "json")]
pub(crate) const CALCULATIONS: &[crate::json::Calculation] = &[
    seat::CLEAT_SEAT,
    strip::WALL_STRIP_SCREWS,
    bracket::BOLT_ROW_BRACKET,
    share::SHARE_BETWEEN_SUPPORTS,
    beam::BEAM_ON_SUPPORTS,
    section::SECTION_PROPERTIES,
    section::SECTION_STRESS,
    torsion::WALL_TORSION,
    warping::OPEN_WALL_WARPING,
    lip::CLEAT_LIP,
];

#[cfg(test)]
pub(crate) mod test_inputs {
    use proptest::prelude::*;

    /// Any bit pattern, mixed with numbers a workshop means, so that both the refusals and the equations are reached.
    pub(crate) fn hostile() -> impl Strategy<Value = f64> {
        let edges = vec![0.0, -0.0, 5e-324, 1.0, -1.0, 90.0, f64::MAX, f64::INFINITY, f64::NAN];
        prop_oneof![
            1 => any::<u64>().prop_map(f64::from_bits),
            1 => proptest::sample::select(edges),
            6 => 0.0..100.0_f64,
            2 => -2_000.0..2_000.0_f64,
        ]
    }

    /// Solution of a 3×3 system by Cramer's rule.
    pub(crate) fn solve(a: [[f64; 3]; 3], b: [f64; 3]) -> [f64; 3] {
        let det = |m: [[f64; 3]; 3]| {
            m[0][0] * (m[1][1] * m[2][2] - m[1][2] * m[2][1]) - m[0][1] * (m[1][0] * m[2][2] - m[1][2] * m[2][0])
                + m[0][2] * (m[1][0] * m[2][1] - m[1][1] * m[2][0])
        };
        let whole = det(a);
        core::array::from_fn(|k| {
            let mut replaced = a;
            for (row, value) in replaced.iter_mut().zip(b) {
                row[k] = value;
            }
            det(replaced) / whole
        })
    }
}
