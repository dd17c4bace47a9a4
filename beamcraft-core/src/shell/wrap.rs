//! A wrap put round a member that already stands or hangs: its sizes, nailers, order of work, joints within reach.
//!
//! ```text
//!   three sides, from the front             four sides: the same, and a closing panel last
//!   ═══════════ wall ═══════════            ┌───────────────┐ closing panel
//!     │ ┌─────────┐ │                       │ ┌─────────┐   │
//!     │n│ member  │n│  n: nailers,          │n│ member  │n  │
//!     │ └─────────┘ │  packed out           │ └─────────┘   │
//!     └──────n──────┘                       └──────n────────┘
//! ```

use crate::error::Fault;
use crate::finding::{Caution, CautionText};
use crate::limits::{Limited, limited};
use crate::numeric::real::sin_cos_deg;

/// How many sides of a member are wrapped.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum WrappedSides {
    /// Three; the fourth lies against a wall or a ceiling.
    Three,
    /// All four.
    Four,
}

/// How the member stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum MemberStand {
    /// Upright: the wrap comes from the front.
    Standing,
    /// Overhead: the wrap comes from below.
    Overhead,
}

/// A member and the wrap to go round it.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<WrapInPlaceInput>))]
pub struct WrapInPlaceInput {
    /// Largest width of the member, across the side that the wrap comes from, mm.
    pub member_width_mm: f64,
    /// Largest depth of the member, along the way that the wrap comes, mm.
    pub member_depth_mm: f64,
    /// Length of the wrap, mm.
    pub length_mm: f64,
    /// Turn of the member from one end of the wrap to the other, degrees; 0 if left out.
    #[cfg_attr(feature = "json", serde(default))]
    pub twist_deg: f64,
    /// How far the member runs out of straight across its width, mm; 0 if left out.
    #[cfg_attr(feature = "json", serde(default))]
    pub crown_width_mm: f64,
    /// How far the member runs out of straight along its depth, mm; 0 if left out.
    #[cfg_attr(feature = "json", serde(default))]
    pub crown_depth_mm: f64,
    /// Thickness of the nailers on the member, mm; 0 for boards straight on the member.
    pub nailer_mm: f64,
    /// Least distance between nailers and member, for packing, mm.
    pub play_mm: f64,
    /// Largest distance from nailer to nailer along the member, mm.
    pub nailer_spacing_mm: f64,
    /// Thickness of the boards, mm.
    pub thickness_mm: f64,
    /// How many sides are wrapped.
    pub sides: WrappedSides,
    /// How the member stands.
    pub stand: MemberStand,
}

limited!(WrapInPlaceInput {
    member_width_mm: BODY_SIZE,
    member_depth_mm: BODY_SIZE,
    length_mm: BODY_LENGTH,
    twist_deg: MEMBER_TWIST,
    crown_width_mm: SMALL_LENGTH,
    crown_depth_mm: SMALL_LENGTH,
    nailer_mm: SMALL_LENGTH,
    play_mm: SMALL_LENGTH,
    nailer_spacing_mm: SPACING,
    thickness_mm: BOARD_THICKNESS,
});

/// A step of putting a wrap in place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum WrapAction {
    /// Fix the nailers to the member, packed out to one line and one plane.
    FixNailers,
    /// Glue up front and both sides on the bench.
    GlueUpThreeSides,
    /// Put the three sides round the member without glue and check the closing panel.
    DryFit,
    /// Put the three sides round the member and fix them to the nailers through the sides.
    PutRound,
    /// Glue the closing panel on, with clamps round the whole wrap.
    Close,
}

/// A step with its reason.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct WrapStep {
    /// What to do.
    pub action: WrapAction,
    /// Why it comes here.
    pub reason: &'static str,
}

/// From where a joint can be reached when it is glued.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum JointReach {
    /// From both sides, on the bench: glue blocks and squeeze-out can be seen to.
    BothSides,
    /// From outside only, in place: no glue blocks behind it, and squeeze-out stays inside.
    OutsideOnly,
}

/// A long joint of a wrap.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct WrapJoint {
    /// Which two panels.
    pub between: &'static str,
    /// From where it can be reached.
    pub reach: JointReach,
}

/// A wrap put in place.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct WrapInPlace {
    /// Width of the straight box that the member stays within, mm.
    pub envelope_width_mm: f64,
    /// Depth of the straight box that the member stays within, mm.
    pub envelope_depth_mm: f64,
    /// Clear width between the boards, mm.
    pub clear_width_mm: f64,
    /// Clear depth between the boards, or from the wall or ceiling to the front board, mm.
    pub clear_depth_mm: f64,
    /// Outer width, the height or width of the section for `hollow_body`, mm.
    pub outer_width_mm: f64,
    /// Outer depth, mm.
    pub outer_depth_mm: f64,
    /// Least packing behind a nailer, mm.
    pub packing_least_mm: f64,
    /// Most packing behind a nailer on a side of the member, mm.
    pub packing_sides_mm: f64,
    /// Most packing behind a nailer on the front of the member, or on its back, mm.
    pub packing_front_mm: f64,
    /// Nailers along each wrapped side of the member.
    pub nailers_per_side: u32,
    /// Distance from nailer to nailer, mm.
    pub nailer_distance_mm: f64,
    /// The work in its order.
    pub steps: Vec<WrapStep>,
    /// The long joints.
    pub joints: Vec<WrapJoint>,
    /// Cautions.
    pub cautions: Vec<CautionText>,
}

/// Sizes, nailers, order of work and reachable joints of a wrap put round a member in place.
///
/// # Equation
/// ```text
/// envelope = a cos(φ/2) + b sin(φ/2) + crown, at most √(a² + b²) + crown
/// clear    = envelope + (nailer + play) on each wrapped side
/// outer    = clear + boards                         packing = play to play + (envelope − a)
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | a, b | size of the member in this direction and across it | mm | `member_width_mm`, `member_depth_mm` |
/// | φ | twist from end to end | degree | `twist_deg` |
///
/// A straight box halfway between both ends of a twisted member is turned by φ/2 against each.
///
/// # Limits
/// A rectangular member whose twist is even along its length. Depth in a three-sided wrap is measured from the wall or ceiling. How
/// nailers are fixed to a steel or a protected member is not covered.
///
/// # Errors
/// `out_of_range`, `not_finite`.
///
/// # Source
/// Plane geometry, derived in the theory pages; order of work by common practice.
///
/// # Examples
/// ```
/// use beamcraft_core::shell::{MemberStand, WrapInPlaceInput, WrappedSides, wrap_in_place};
/// let wrap = wrap_in_place(&WrapInPlaceInput {
///     member_width_mm: 140.0, member_depth_mm: 140.0, length_mm: 2400.0, twist_deg: 2.0, crown_width_mm: 6.0, crown_depth_mm: 4.0,
///     nailer_mm: 19.0, play_mm: 3.0, nailer_spacing_mm: 600.0, thickness_mm: 19.0,
///     sides: WrappedSides::Four, stand: MemberStand::Standing,
/// })?;
/// assert_eq!((wrap.nailers_per_side, wrap.steps.len()), (5, 5));
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn wrap_in_place(input: &WrapInPlaceInput) -> Result<WrapInPlace, Fault> {
    input.check_ranges()?;
    let (sine, cosine) = sin_cos_deg(0.5 * input.twist_deg);
    let envelope = |size: f64, across: f64, crown: f64| {
        // A flat member is widest where its diagonal lies across, before the end of the turn.
        let turned = size * sine <= across * cosine;
        crown + if turned { size * cosine + across * sine } else { (size * size + across * across).sqrt() }
    };
    let (width, depth) = (input.member_width_mm, input.member_depth_mm);
    let envelope_width_mm = envelope(width, depth, input.crown_width_mm);
    let envelope_depth_mm = envelope(depth, width, input.crown_depth_mm);
    let board = input.nailer_mm + input.play_mm;
    let wrapped = match input.sides {
        WrappedSides::Three => 1.0,
        WrappedSides::Four => 2.0,
    };
    let clear_width_mm = envelope_width_mm + 2.0 * board;
    let clear_depth_mm = envelope_depth_mm + wrapped * board;
    let gaps = (input.length_mm / input.nailer_spacing_mm).ceil().max(1.0);
    Ok(WrapInPlace {
        envelope_width_mm,
        envelope_depth_mm,
        clear_width_mm,
        clear_depth_mm,
        outer_width_mm: clear_width_mm + 2.0 * input.thickness_mm,
        outer_depth_mm: clear_depth_mm + wrapped * input.thickness_mm,
        packing_least_mm: input.play_mm,
        packing_sides_mm: input.play_mm + envelope_width_mm - width,
        packing_front_mm: input.play_mm + envelope_depth_mm - depth,
        nailers_per_side: gaps as u32 + 1,
        nailer_distance_mm: input.length_mm / gaps,
        steps: steps(input.sides),
        joints: joints(input.sides),
        cautions: cautions(input.stand),
    })
}

fn steps(sides: WrappedSides) -> Vec<WrapStep> {
    let step = |action, reason| WrapStep { action, reason };
    let three = [
        step(WrapAction::FixNailers, "Crown and twist of the member end here; the boards must lie straight."),
        step(WrapAction::GlueUpThreeSides, "Both joints can be reached from inside and out only on the bench."),
        step(WrapAction::DryFit, "A nailer that stands proud would open the joints; nothing is glued yet."),
        step(WrapAction::PutRound, "The open side lets it pass; fixings through the sides are the least seen."),
    ];
    let close = step(WrapAction::Close, "The closing panel comes last: behind it nothing can be reached any more.");
    let closing = (sides == WrappedSides::Four).then_some(close);
    three.into_iter().chain(closing).collect()
}

fn joints(sides: WrappedSides) -> Vec<WrapJoint> {
    let joint = |between, reach| WrapJoint { between, reach };
    let three = ["front and left side", "front and right side"].map(|between| joint(between, JointReach::BothSides));
    let closing = ["closing panel and left side", "closing panel and right side"];
    let closing = closing.map(|between| joint(between, JointReach::OutsideOnly));
    let closing = closing.into_iter().filter(|_| sides == WrappedSides::Four);
    three.into_iter().chain(closing).collect()
}

fn cautions(stand: MemberStand) -> Vec<CautionText> {
    let lifting = (stand == MemberStand::Overhead).then_some(Caution::Lifting);
    [Caution::Structure, Caution::Services].into_iter().chain(lifting).map(CautionText::from).collect()
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const WRAP_IN_PLACE: crate::json::Calculation = crate::json::calculation!(
    wrap_in_place: WrapInPlaceInput => WrapInPlace, Document,
    "Sizes, nailers, order of work and reachable joints of a wrap put round a member that already stands or hangs"
);

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn post() -> WrapInPlaceInput {
        WrapInPlaceInput {
            member_width_mm: 140.0,
            member_depth_mm: 90.0,
            length_mm: 2400.0,
            twist_deg: 0.0,
            crown_width_mm: 0.0,
            crown_depth_mm: 0.0,
            nailer_mm: 19.0,
            play_mm: 3.0,
            nailer_spacing_mm: 600.0,
            thickness_mm: 20.0,
            sides: WrappedSides::Four,
            stand: MemberStand::Standing,
        }
    }

    #[test]
    fn a_straight_member_needs_nailers_and_play_only() {
        let wrap = wrap_in_place(&post()).unwrap();
        assert_eq!((wrap.clear_width_mm, wrap.clear_depth_mm), (184.0, 134.0));
        assert_eq!((wrap.outer_width_mm, wrap.outer_depth_mm), (224.0, 174.0));
        assert_eq!((wrap.packing_least_mm, wrap.packing_sides_mm), (3.0, 3.0));
        assert_eq!((wrap.nailers_per_side, wrap.nailer_distance_mm), (5, 600.0));
        assert_eq!(wrap.steps.last().unwrap().action, WrapAction::Close);
        assert_eq!(wrap.joints.iter().filter(|joint| joint.reach == JointReach::OutsideOnly).count(), 2);
        // Against a wall there is one nailer and one board in the depth, and nothing to close.
        let three = wrap_in_place(&WrapInPlaceInput { sides: WrappedSides::Three, ..post() }).unwrap();
        assert_eq!((three.clear_depth_mm, three.outer_depth_mm), (112.0, 132.0));
        assert!(three.steps.iter().all(|step| step.action != WrapAction::Close) && three.joints.len() == 2);
    }

    #[test]
    fn overhead_work_carries_the_caution_of_lifting() {
        let about = |stand| wrap_in_place(&WrapInPlaceInput { stand, ..post() }).unwrap().cautions.len();
        assert_eq!((about(MemberStand::Standing), about(MemberStand::Overhead)), (2, 3));
    }

    proptest! {
        #[test]
        fn the_envelope_holds_every_corner(
            width in 10.0..400.0, depth in 10.0..400.0, twist in 0.0..10.0, crown in 0.0..30.0, share in -0.5..0.5,
        ) {
            let input = WrapInPlaceInput {
                member_width_mm: width,
                member_depth_mm: depth,
                twist_deg: twist,
                crown_width_mm: crown,
                ..post()
            };
            let wrap = wrap_in_place(&input).unwrap();
            let (sine, cosine) = sin_cos_deg(share * twist);
            for (y, z) in [(1.0, 1.0), (1.0, -1.0), (-1.0, 1.0), (-1.0, -1.0)] {
                let (y, z) = (0.5 * width * y, 0.5 * depth * z);
                let (turned_y, turned_z) = (y * cosine - z * sine, y * sine + z * cosine);
                prop_assert!(turned_y.abs() <= 0.5 * (wrap.envelope_width_mm - crown) + 1e-9);
                prop_assert!(turned_z.abs() <= 0.5 * wrap.envelope_depth_mm + 1e-9);
            }
        }

        #[test]
        fn any_bits_give_a_wrap_or_a_fault(bits in prop::collection::vec(prop_oneof![prop::num::f64::ANY, 0.0..900.0], 10)) {
            let input = WrapInPlaceInput {
                member_width_mm: bits[0],
                member_depth_mm: bits[1],
                length_mm: bits[2],
                twist_deg: bits[3],
                crown_width_mm: bits[4],
                crown_depth_mm: bits[5],
                nailer_mm: bits[6],
                play_mm: bits[7],
                nailer_spacing_mm: bits[8],
                thickness_mm: bits[9],
                ..post()
            };
            if let Ok(wrap) = wrap_in_place(&input) {
                prop_assert!(wrap.outer_width_mm.is_finite() && wrap.outer_depth_mm.is_finite());
                prop_assert!(wrap.nailer_distance_mm > 0.0 && wrap.nailer_distance_mm <= bits[8] * (1.0 + 1e-12));
                prop_assert!(wrap.packing_sides_mm >= wrap.packing_least_mm);
            }
        }
    }
}
