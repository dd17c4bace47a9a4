//! The bevelled seat of a body hung on a two-part cleat: will it stay, and on what does that rest?

use crate::error::Fault;
use crate::finding::Caution;
use crate::limits::{Limited, limited};
use crate::numeric::real::{atan_deg, tan_deg};
use crate::verdict::Outcome;

/// A body that hangs on a bevelled cleat and bears on the wall with its foot.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<CleatSeatInput>))]
pub struct CleatSeatInput {
    /// Weight of the body with everything that stands on it, N.
    pub weight_n: f64,
    /// Horizontal distance of the line of action of the weight in front of the contact, mm; negative when it lies
    /// between the contact and the wall.
    pub centre_out_mm: f64,
    /// Vertical distance from the contact down to the foot that bears on the wall, mm.
    pub foot_below_mm: f64,
    /// Bevel of the seat from a square cut, which is its slope from horizontal, down towards the wall, degrees.
    pub bevel_deg: f64,
    /// Coefficient of friction of the seat; 0, the default, leaves friction out, since no published figure covers two
    /// sawn bevels under small, shaking loads.
    #[cfg_attr(feature = "json", serde(default))]
    pub friction: f64,
    /// Vertical distance from the contact up to where the back of the body touches the wall near its top, mm; needed
    /// only when the weight acts behind the contact.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub top_above_mm: Option<f64>,
}

limited!(CleatSeatInput {
    weight_n: FORCE,
    centre_out_mm: SIGNED_LEVER,
    foot_below_mm: LEVER,
    bevel_deg: CLEAT_BEVEL,
    friction: FRICTION,
    top_above_mm: LEVER,
});

/// How the body rests on its seat.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum SeatRegime {
    /// The bevel draws the body in harder than the foot alone needs: it also presses on the wall near its top.
    SitsAndPressesTop,
    /// The bevel alone, without friction, gives the pull that the foot needs.
    Sits,
    /// Only friction keeps the body from climbing up and off: not to be relied upon.
    HeldByFrictionOnly,
    /// The pull exceeds all that the seat can give: the body climbs up and off.
    ClimbsOff,
    /// The weight acts behind the contact: it draws the foot off, and the body leans on the wall near its top.
    TipsInward,
}

/// Whether friction sets an upper limit to the pull of the seat.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum SeatLock {
    /// Bevel and friction angle together stay below 90°: the pull has an upper limit.
    Limited,
    /// Bevel and friction angle together reach 90°: the seat jams before it slides, whatever the pull.
    Locked,
}

/// Forces and margins of the seat.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct CleatSeat {
    /// Vertical force on the wall half, N.
    pub vertical_n: f64,
    /// Horizontal pull on the wall half when only the foot bears, W·e/h, equal to the push of the wall on the foot, N;
    /// negative when the weight acts behind the contact and no foot can give it.
    pub horizontal_n: f64,
    /// Least pull that the seat must give for equilibrium, N; absent when the weight acts behind the contact and the
    /// height of the top contact is not given.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub needed_n: Option<f64>,
    /// Pull of the seat without friction, W·tan b, N.
    pub pull_without_friction_n: f64,
    /// Least pull of the seat with friction, W·tan(b − phi), N; negative when the seat alone does not slide in.
    pub least_pull_n: f64,
    /// Greatest pull of the seat with friction, W·tan(b + phi), N; absent when the seat is locked.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub greatest_pull_n: Option<f64>,
    /// Friction angle phi, degrees.
    pub friction_angle_deg: f64,
    /// Needed pull over the pull without friction; above 1 the bevel alone does not hold.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub ratio_without_friction: Option<f64>,
    /// Needed pull over the greatest pull with friction; above 1 the body climbs off; absent when locked.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub ratio_with_friction: Option<f64>,
    /// Pull left without friction, W·tan b less the needed pull, N; negative when only friction holds.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub margin_without_friction_n: Option<f64>,
    /// Pull to design the wall half and its screws for, N: the larger of the needed pull and W·tan b.
    pub design_pull_n: f64,
    /// Push of the wall on the foot, N, for a seat without friction; absent when no equilibrium is found without it.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub foot_bearing_n: Option<f64>,
    /// Push of the wall near the top of the body, N, for a seat without friction; absent as the foot's.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub top_bearing_n: Option<f64>,
    /// How the body rests.
    pub regime: SeatRegime,
    /// Whether friction sets an upper limit.
    pub lock: SeatLock,
    /// Met only when the bevel holds without any friction; not determined when the top contact is needed and not given.
    pub outcome: Outcome,
    /// The caution that belongs to these numbers.
    pub caution: Caution,
}

/// Forces at the seat of a bevelled hanging cleat, and whether the body stays on it.
///
/// The seat slopes down towards the wall, so that the weight draws the body in. The farther out the weight acts, the
/// more pull the foot needs; when the bevel cannot give it, the beam half slides up the slope and off.
///
/// # Equation
/// ```text
/// V = W      H = W e / h                          moments about the contact, foot alone bearing
/// W tan(b − phi) ≤ pull of the seat ≤ W tan(b + phi)          tan phi = mu
/// needed = W max(e/h, −e/a)
/// both bearing, no friction:  top = (W tan b · h − W e)/(h + a)   foot = (W tan b · a + W e)/(h + a)
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | W | weight and load | N | `weight_n` |
/// | e | weight in front of the contact | mm | `centre_out_mm` |
/// | h | foot below the contact | mm | `foot_below_mm` |
/// | a | top contact above the contact | mm | `top_above_mm` |
/// | b | bevel from horizontal | degree | `bevel_deg` |
/// | mu | coefficient of friction | – | `friction` |
///
/// # Limits
/// Rigid body, vertical load, no friction at the wall. As the body tips, the contact runs to the tip of the lip:
/// give e and h for that point. A pull outwards at the top edge is another case and unhooks sooner. The outcome is
/// never *met* on friction alone, locked or not.
///
/// # Errors
/// `out_of_range`, `not_finite`.
///
/// # Source
/// Statics, derived in the theory pages and solved there a second time as a linear system; checked by
/// `verification/cleat`.
///
/// # Examples
/// ```
/// use beamcraft_core::statics::{cleat_seat, CleatSeatInput, SeatRegime};
/// let seat = cleat_seat(&CleatSeatInput {
///     weight_n: 150.0, centre_out_mm: 90.0, foot_below_mm: 140.0, bevel_deg: 30.0, friction: 0.3, top_above_mm: None,
/// })?;
/// assert!((seat.horizontal_n - 96.43).abs() < 0.01);
/// assert_eq!(seat.regime, SeatRegime::HeldByFrictionOnly);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn cleat_seat(input: &CleatSeatInput) -> Result<CleatSeat, Fault> {
    input.check_ranges()?;
    let CleatSeatInput { weight_n: w, centre_out_mm: e, foot_below_mm: h, bevel_deg, friction, top_above_mm } = *input;
    let friction_angle_deg = atan_deg(friction);
    let steepest_deg = bevel_deg + friction_angle_deg;
    let lock = if steepest_deg >= 90.0 { SeatLock::Locked } else { SeatLock::Limited };
    let slope = tan_deg(bevel_deg);
    let slope_low = tan_deg(bevel_deg - friction_angle_deg);
    let slope_high = if lock == SeatLock::Locked { None } else { Some(tan_deg(steepest_deg)) };
    // Pull per unit weight: the foot gives it in front of the contact, the top contact behind it.
    let needed = if e >= 0.0 { Some(e / h) } else { top_above_mm.map(|a| -e / a) };
    let beyond_friction = |pull: f64| slope_high.is_some_and(|limit| pull > limit);
    let regime = match needed {
        None => SeatRegime::TipsInward,
        Some(pull) if beyond_friction(pull) => SeatRegime::ClimbsOff,
        Some(pull) if pull > slope => SeatRegime::HeldByFrictionOnly,
        Some(_) if e < 0.0 => SeatRegime::TipsInward,
        Some(pull) if pull < slope_low => SeatRegime::SitsAndPressesTop,
        Some(_) => SeatRegime::Sits,
    };
    let outcome = match needed {
        None => Outcome::NotDetermined,
        Some(pull) if pull <= slope => Outcome::Met,
        Some(_) => Outcome::NotMet,
    };
    let bearings = match (outcome, top_above_mm) {
        (Outcome::Met, Some(a)) => Some(((w * slope * a + w * e) / (h + a), (w * slope * h - w * e) / (h + a))),
        // Without a top contact the foot alone must be in balance with the bevel.
        (Outcome::Met, None) if e / h == slope => Some((w * slope, 0.0)),
        _ => None,
    };
    // At the limit a rounding may leave a wall that pulls by a last digit; a wall only pushes.
    let push = |force: f64| force.max(0.0);
    let pull_without_friction_n = w * slope;
    let needed_n = needed.map(|pull| w * pull);
    Ok(CleatSeat {
        vertical_n: w,
        horizontal_n: w * e / h,
        needed_n,
        pull_without_friction_n,
        least_pull_n: w * slope_low,
        greatest_pull_n: slope_high.map(|limit| w * limit),
        friction_angle_deg,
        ratio_without_friction: needed.map(|pull| pull / slope),
        ratio_with_friction: needed.and_then(|pull| Some(pull / slope_high?)),
        margin_without_friction_n: needed_n.map(|pull| pull_without_friction_n - pull),
        design_pull_n: needed_n.map_or(pull_without_friction_n, |pull| pull.max(pull_without_friction_n)),
        foot_bearing_n: bearings.map(|(foot, _)| push(foot)),
        top_bearing_n: bearings.map(|(_, top)| push(top)),
        regime,
        lock,
        outcome,
        caution: Caution::Structure,
    })
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const CLEAT_SEAT: crate::json::Calculation = crate::json::calculation!(
    cleat_seat: CleatSeatInput => CleatSeat, Typed,
    "Forces at the seat of a bevelled hanging cleat, and whether the body stays on it without friction"
);

#[cfg(test)]
#[path = "seat_tests.rs"]
mod tests;
