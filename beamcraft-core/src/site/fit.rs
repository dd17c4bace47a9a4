//! The body against the wall as it is.

use crate::cite::{Clause, Source};
use crate::error::{Error, ErrorCode, Fault, Result};
use crate::finding::{Caution, CautionText, Finding, FindingCode, Grade, Quantity};
use crate::limits::{faults_at, limited};
use crate::numeric::real::{cos_deg, sin_deg};
use crate::setting::{Backing, BodyPlace, FireOpening, Obstruction, SideWall, ThingKind, Wall, WallFace, WallSurvey};
use crate::verdict::Outcome;

/// A body, where it hangs, and what is there.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<SiteFitInput>))]
pub struct SiteFitInput {
    /// Where the body hangs.
    pub place: BodyPlace,
    /// Length of its front, mm.
    pub body_length_mm: f64,
    /// Height of the body, mm.
    pub body_height_mm: f64,
    /// Depth of the body, mm.
    pub body_depth_mm: f64,
    /// Plan angle of the left end to the front, inside the body, degrees; 90 is square.
    #[cfg_attr(feature = "json", serde(default = "square_end"))]
    pub left_end_deg: f64,
    /// Plan angle of the right end to the front, inside the body, degrees; 90 is square.
    #[cfg_attr(feature = "json", serde(default = "square_end"))]
    pub right_end_deg: f64,
    /// The wall as measured; without it the wall is taken as even and plumb, and nothing is said about it.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub survey: Option<WallSurvey>,
    /// The wall half and its screws; without it no packing is worked out.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub wall_half: Option<WallHalfPlace>,
    /// Things on the wall around the body.
    #[cfg_attr(feature = "json", serde(default))]
    pub things: Vec<Obstruction>,
    /// The opening below or beside the body.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub opening: Option<FireOpening>,
}

limited!(SiteFitInput {
    body_length_mm: BODY_LENGTH,
    body_height_mm: BODY_SIZE,
    body_depth_mm: BODY_SIZE,
    left_end_deg: END_ANGLE,
    right_end_deg: END_ANGLE,
});

#[cfg(feature = "json")]
fn square_end() -> f64 {
    90.0
}

/// The wall half of a cleat on the wall, with its screws.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<WallHalfPlace>))]
pub struct WallHalfPlace {
    /// The wall with its studs and its lining.
    pub wall: Wall,
    /// Left end from the plumb line, mm.
    pub left_mm: f64,
    /// Right end from the plumb line, mm.
    pub right_mm: f64,
    /// Line of its screws above the floor, mm.
    pub screw_line_mm: f64,
    /// Its thickness under the heads, mm.
    pub thickness_mm: f64,
    /// Length of a screw that enters the wood, mm.
    pub screw_length_mm: f64,
    /// How deep a screw shall reach into a stud, mm; six diameters is the least that NDS 12.1.5 counts.
    pub wanted_reach_mm: f64,
}

limited!(WallHalfPlace {
    left_mm: SIGNED_LENGTH,
    right_mm: SIGNED_LENGTH,
    screw_line_mm: SIGNED_LENGTH,
    thickness_mm: BOARD_THICKNESS,
    screw_length_mm: FASTENER_LENGTH,
    wanted_reach_mm: LENGTH,
});

/// Packing behind the wall half at a stud, and what it does to the screw.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct StudPacking {
    /// Centre of the stud from the plumb line, mm.
    pub stud_mm: f64,
    /// Packing between wall and wall half, mm.
    pub packing_mm: f64,
    /// Reach of the screw into the stud, mm; 0 where it does not reach it.
    pub reach_mm: f64,
    /// How much longer the screw must be for the reach that is wanted, mm; 0 where it reaches.
    pub longer_by_mm: f64,
}

/// The gap between a straight body and the wall at one place, and what is cut from the back edge to close it.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct ScribeStation {
    /// Place from the left end of the front, mm.
    pub along_mm: f64,
    /// Gap at the lower back edge, mm.
    pub lower_gap_mm: f64,
    /// Gap at the upper back edge, mm.
    pub upper_gap_mm: f64,
    /// Cut from a lower back edge that was left proud by the allowance, mm.
    pub lower_cut_mm: f64,
    /// Cut from an upper back edge that was left proud by the allowance, mm.
    pub upper_cut_mm: f64,
}

/// A body between a side wall and its end.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct EndGap {
    /// Gap at the front of the body, mm; negative where it does not fit.
    pub front_mm: f64,
    /// Gap at the wall, mm; negative where it does not fit.
    pub back_mm: f64,
    /// Plan angle of an end that lies along this side wall, degrees.
    pub fitting_end_deg: f64,
}

/// The body on its way in.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct WayIn {
    /// Longest side of the body along the wall, mm.
    pub longest_mm: f64,
    /// Narrowest width, less that side, mm; negative where it does not go in straight.
    pub room_mm: f64,
    /// Width that swinging it in flat asks for, front to wall, mm.
    pub swing_flat_mm: f64,
    /// Width that letting one end down asks for, mm.
    pub swing_upright_mm: f64,
    /// Whether it goes in straight.
    pub outcome: Outcome,
}

/// How near a thing on the wall is to the body in its place.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct ThingGap {
    /// Its name.
    pub name: String,
    /// What it is.
    pub kind: ThingKind,
    /// Gap along the wall, mm; negative by the overlap.
    pub along_mm: f64,
    /// Gap in height, mm; negative by the overlap.
    pub upright_mm: f64,
    /// Shortest distance, mm; 0 where the two meet.
    pub distance_mm: f64,
    /// Whether the body stays clear of it.
    pub outcome: Outcome,
}

/// Wood in the wall against the line of the screws.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct BackingSpan {
    /// Name of the backing.
    pub name: String,
    /// From where the wall half can be screwed to it, from the plumb line, mm.
    pub from_mm: f64,
    /// To where, mm.
    pub to_mm: f64,
    /// From the screw line to its nearer edge, mm; negative where the line misses it.
    pub edge_mm: f64,
    /// Whether a screw of the line bites in it.
    pub outcome: Outcome,
}

/// The body against the wall as it is.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct SiteFit {
    /// Packing at each stud behind the wall half, from left to right.
    pub packing: Vec<StudPacking>,
    /// Spacer at the foot of the body that keeps it plumb, mm; 0 where none is wanted.
    pub foot_spacer_mm: f64,
    /// What to leave on the back edges for scribing, mm; the largest gap.
    pub scribe_allowance_mm: f64,
    /// The line to scribe, station by station, from left to right; empty for an even, plumb wall.
    pub scribe: Vec<ScribeStation>,
    /// The left end against its side wall.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub left_gap: Option<EndGap>,
    /// The right end against its side wall.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub right_gap: Option<EndGap>,
    /// The way in; absent when its width was not given.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub way_in: Option<WayIn>,
    /// Wood in the wall besides the studs.
    pub backing: Vec<BackingSpan>,
    /// Every thing around the body, in the order given.
    pub things: Vec<ThingGap>,
    /// What stands in the way and what to see to.
    pub findings: Vec<Finding>,
    /// Cautions that belong to these numbers.
    pub cautions: Vec<CautionText>,
}

/// How a body sits on the wall as it is: packing at the studs, the line to scribe, side walls, the way in, and the gap to
/// everything around it.
///
/// # Equation
/// ```text
/// straight line   through the face that stands out most behind the wall half, or behind the body for the scribe
/// packing         w(x) − least w + max(0, lean) · (screw line − bottom)
/// reach           screw − wall half − packing − lining
/// foot spacer     max(0, −lean) · (screw line − bottom)
/// gap             w(x) − least w + lean · height, the least gap nought        cut = largest gap − gap
/// side wall       x(y) = corner ± y / tan c        fitting end = 180 − c
/// way in          straight: width ≥ longest side;  swung: √(longest² + depth²)
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | w | how far the face lies behind the line it was measured from | mm | `survey.stations[].behind_mm` |
/// | lean | lean of the wall, positive away from the room | mm/m | `survey.lean_mm_per_m` |
/// | c | corner of the side wall in plan | degree | `survey.left_wall.corner_deg` |
/// | y | out from the wall | mm | |
///
/// Packing lies behind the wall half as a gap does: screws get longer by it and carry less across. The scribe keeps the
/// body parallel to the line that was measured from; brick and stone want a template between the stations too.
///
/// # Limits
/// Between two stations the face is straight, beyond the last one it goes on as there. Things are boxes on the wall.
///
/// # Errors
/// `out_of_range`, `not_finite`, `inconsistent`, each with its path.
///
/// # Source
/// Geometry, derived in the theory pages; `NDS 2018` 12.1.5 for the reach; scribing and packing are common practice.
/// Checked by `verification/site_fit`.
///
/// # Examples
/// ```
/// use beamcraft_core::setting::{BodyPlace, WallFace, WallStation, WallSurvey};
/// use beamcraft_core::site::{site_fit, SiteFitInput};
/// let station = |along_mm, behind_mm| WallStation { along_mm, behind_mm };
/// let fit = site_fit(&SiteFitInput {
///     place: BodyPlace { left_end_mm: 0.0, bottom_above_floor_mm: 1300.0 },
///     body_length_mm: 1800.0, body_height_mm: 185.0, body_depth_mm: 215.0, left_end_deg: 90.0, right_end_deg: 90.0,
///     survey: Some(WallSurvey {
///         face: WallFace::Plaster, lean_mm_per_m: 0.0,
///         stations: vec![station(0.0, 0.0), station(900.0, 6.0), station(1800.0, 2.0)],
///         left_wall: None, right_wall: None, narrowest_way_in_mm: None, backing: vec![],
///     }),
///     wall_half: None, things: vec![], opening: None,
/// })?;
/// // Left proud by 6 mm, the back edge loses 6 mm at the left end, nothing in the middle and 4 mm at the right.
/// let cuts: Vec<f64> = fit.scribe.iter().map(|station| station.lower_cut_mm).collect();
/// assert_eq!((fit.scribe_allowance_mm, cuts), (6.0, vec![6.0, 0.0, 4.0]));
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn site_fit(input: &SiteFitInput) -> Result<SiteFit> {
    check(input)?;
    let mut fit = SiteFit {
        packing: Vec::new(),
        foot_spacer_mm: 0.0,
        scribe_allowance_mm: 0.0,
        scribe: Vec::new(),
        left_gap: None,
        right_gap: None,
        way_in: None,
        backing: Vec::new(),
        things: input.things.iter().map(|thing| thing_gap(input, thing)).collect(),
        findings: Vec::new(),
        cautions: [Caution::Structure, Caution::Services].map(CautionText::from).to_vec(),
    };
    if let Some(half) = &input.wall_half {
        fit.packing = packing(input, half);
        fit.foot_spacer_mm = (-lean_between(input, half.screw_line_mm)).max(0.0);
    }
    if let Some(survey) = &input.survey {
        scribe(input, survey, &mut fit);
        fit.left_gap = survey.left_wall.as_ref().map(|wall| left_gap(input, wall));
        fit.right_gap = survey.right_wall.as_ref().map(|wall| right_gap(input, wall));
        fit.way_in = survey.narrowest_way_in_mm.map(|width_mm| way_in(input, width_mm));
        fit.backing = input.wall_half.as_ref().map_or_else(Vec::new, |half| spans(survey, half));
    }
    fit.findings = findings(input, &fit);
    fit.findings.sort_by_key(|finding| core::cmp::Reverse(finding.grade));
    Ok(fit)
}

fn check(input: &SiteFitInput) -> Result<()> {
    let mut faults = faults_at("place", &input.place);
    faults.extend(faults_at("", input));
    faults.extend(input.survey.iter().flat_map(WallSurvey::faults).map(|fault| fault.within("survey")));
    if let Some(half) = &input.wall_half {
        faults.extend(faults_at("wall_half", half));
        faults.extend(half.wall.faults().into_iter().map(|fault| fault.within("wall_half.wall")));
        if half.right_mm < half.left_mm {
            let fault =
                Fault::plain(ErrorCode::Inconsistent, "wall_half.right_mm", "not left of left_mm", "swap the ends");
            faults.push(fault.into());
        }
    }
    for (k, thing) in input.things.iter().enumerate() {
        faults.extend(thing.faults().into_iter().map(|fault| fault.within(&format!("things[{k}]"))));
    }
    faults.extend(input.opening.iter().flat_map(|opening| faults_at("opening", opening)));
    Error::unless_empty(faults)
}

/// How much farther back the wall lies at a height than at the bottom of the body, by its lean alone, mm.
fn lean_between(input: &SiteFitInput, height_mm: f64) -> f64 {
    let lean = input.survey.as_ref().map_or(0.0, |survey| survey.lean_mm_per_m);
    lean * (height_mm - input.place.bottom_above_floor_mm) / 1000.0
}

fn packing(input: &SiteFitInput, half: &WallHalfPlace) -> Vec<StudPacking> {
    let behind = |x: f64| input.survey.as_ref().map_or(0.0, |survey| survey.behind_at(x));
    let proud = input.survey.as_ref().map_or(0.0, |survey| survey.least_behind(half.left_mm, half.right_mm));
    let plumb_mm = lean_between(input, half.screw_line_mm).max(0.0);
    let at = |stud_mm: f64| {
        let packing_mm = behind(stud_mm) - proud + plumb_mm;
        let before_mm = half.thickness_mm + packing_mm + half.wall.lining_thickness_mm;
        StudPacking {
            stud_mm,
            packing_mm,
            reach_mm: (half.screw_length_mm - before_mm).max(0.0),
            longer_by_mm: (before_mm + half.wanted_reach_mm - half.screw_length_mm).max(0.0),
        }
    };
    half.wall.studs_between(half.left_mm, half.right_mm).into_iter().map(at).collect()
}

fn scribe(input: &SiteFitInput, survey: &WallSurvey, fit: &mut SiteFit) {
    let (left_mm, lean_mm) = (input.place.left_end_mm, survey.lean_mm_per_m * input.body_height_mm / 1000.0);
    let right_mm = left_mm + input.body_length_mm;
    // A wall that leans into the room is touched by the upper edge first.
    let touch_mm = survey.least_behind(left_mm, right_mm) + lean_mm.min(0.0);
    let gaps = |x: f64| (x, survey.behind_at(x) - touch_mm, survey.behind_at(x) + lean_mm - touch_mm);
    let places: Vec<_> = survey.places_between(left_mm, right_mm).into_iter().map(gaps).collect();
    let largest = places.iter().map(|(_, lower, upper)| lower.max(*upper)).fold(0.0, f64::max);
    if largest <= 0.0 {
        return;
    }
    fit.scribe_allowance_mm = largest;
    let station = |(x, lower, upper): (f64, f64, f64)| ScribeStation {
        along_mm: x - left_mm,
        lower_gap_mm: lower,
        upper_gap_mm: upper,
        lower_cut_mm: largest - lower,
        upper_cut_mm: largest - upper,
    };
    fit.scribe = places.into_iter().map(station).collect();
}

/// How far a line in plan has moved to the left of where it meets the wall, at a depth in front of it, mm.
fn splay(depth_mm: f64, corner_deg: f64) -> f64 {
    -depth_mm * cos_deg(corner_deg) / sin_deg(corner_deg)
}

/// How much longer the back of the body is than its front at an end, mm.
fn spread_at_back(input: &SiteFitInput, end_deg: f64) -> f64 {
    splay(input.body_depth_mm, end_deg)
}

fn left_gap(input: &SiteFitInput, wall: &SideWall) -> EndGap {
    let front = input.place.left_end_mm;
    let back = front - spread_at_back(input, input.left_end_deg);
    let wall_at_front = wall.corner_at_mm - splay(input.body_depth_mm, wall.corner_deg);
    EndGap {
        front_mm: front - wall_at_front,
        back_mm: back - wall.corner_at_mm,
        fitting_end_deg: 180.0 - wall.corner_deg,
    }
}

fn right_gap(input: &SiteFitInput, wall: &SideWall) -> EndGap {
    let front = input.place.left_end_mm + input.body_length_mm;
    let back = front + spread_at_back(input, input.right_end_deg);
    let wall_at_front = wall.corner_at_mm + splay(input.body_depth_mm, wall.corner_deg);
    EndGap {
        front_mm: wall_at_front - front,
        back_mm: wall.corner_at_mm - back,
        fitting_end_deg: 180.0 - wall.corner_deg,
    }
}

fn way_in(input: &SiteFitInput, width_mm: f64) -> WayIn {
    let spread = |end_deg: f64| spread_at_back(input, end_deg);
    let (left, right) = (spread(input.left_end_deg), spread(input.right_end_deg));
    // From the leftmost to the rightmost corner of the plan.
    let longest_mm = input.body_length_mm + left.max(0.0) + right.max(0.0);
    let swing = |other_mm: f64| (longest_mm * longest_mm + other_mm * other_mm).sqrt();
    let room_mm = width_mm - longest_mm;
    WayIn {
        longest_mm,
        room_mm,
        swing_flat_mm: swing(input.body_depth_mm),
        swing_upright_mm: swing(input.body_height_mm),
        outcome: if room_mm >= 0.0 { Outcome::Met } else { Outcome::NotMet },
    }
}

fn spans(survey: &WallSurvey, half: &WallHalfPlace) -> Vec<BackingSpan> {
    let span = |one: &Backing| {
        let (from_mm, to_mm) = (one.left_mm.max(half.left_mm), one.right_mm.min(half.right_mm));
        let edge_mm = (half.screw_line_mm - one.bottom_mm).min(one.top_mm - half.screw_line_mm);
        let bites = edge_mm > 0.0 && to_mm > from_mm;
        let outcome = if bites { Outcome::Met } else { Outcome::NotMet };
        BackingSpan { name: one.name.clone(), from_mm, to_mm: to_mm.max(from_mm), edge_mm, outcome }
    };
    survey.backing.iter().map(span).collect()
}

/// Gap between two spans; negative by their overlap.
fn between((low, high): (f64, f64), (other_low, other_high): (f64, f64)) -> f64 {
    (other_low - high).max(low - other_high)
}

fn thing_gap(input: &SiteFitInput, thing: &Obstruction) -> ThingGap {
    let (left, bottom) = (input.place.left_end_mm, input.place.bottom_above_floor_mm);
    let along_mm = between((left, left + input.body_length_mm), (thing.left_mm, thing.right_mm));
    let upright_mm = between((bottom, bottom + input.body_height_mm), (thing.bottom_mm, thing.top_mm));
    let (aside, away) = (along_mm.max(0.0), upright_mm.max(0.0));
    let distance_mm = (aside * aside + away * away).sqrt();
    let meets = along_mm < 0.0 && upright_mm < 0.0;
    let outcome = if meets { Outcome::NotMet } else { Outcome::Met };
    ThingGap { name: thing.name.clone(), kind: thing.kind, along_mm, upright_mm, distance_mm, outcome }
}

fn findings(input: &SiteFitInput, fit: &SiteFit) -> Vec<Finding> {
    let mut findings = Vec::new();
    for (thing, gap) in input.things.iter().zip(&fit.things) {
        findings.extend(met(thing, gap));
        findings.extend(to_see_to(thing, gap));
    }
    findings.extend(input.opening.as_ref().and_then(|opening| over_the_opening(input, opening)));
    let ends = [("left_end", &fit.left_gap), ("right_end", &fit.right_gap)];
    findings.extend(ends.into_iter().filter_map(|(subject, gap)| tight(subject, gap.as_ref()?)));
    findings.extend(fit.way_in.as_ref().and_then(no_way_in));
    findings.extend(too_short(fit));
    findings.extend(input.survey.as_ref().and_then(|survey| about_the_face(survey, fit)));
    findings
}

/// The body runs into a thing; what lies flush with the wall is covered, not met.
fn met(thing: &Obstruction, gap: &ThingGap) -> Option<Finding> {
    (gap.outcome == Outcome::NotMet && thing.projection_mm > 0.0).then(|| Finding {
        grade: Grade::Stop,
        code: FindingCode::MeetsObstruction,
        subject: thing.name.clone(),
        message: format!("The body hangs where \"{}\" stands out from the wall.", thing.name),
        numbers: vec![
            Quantity::new("stands out", thing.projection_mm, "mm"),
            Quantity::new("overlap along the wall", -gap.along_mm, "mm"),
            Quantity::new("overlap in height", -gap.upright_mm, "mm"),
        ],
        cure: "Move the body, or cut its back to go over it.".to_owned(),
        clause: None,
    })
}

/// Things that want more than room.
fn to_see_to(thing: &Obstruction, gap: &ThingGap) -> Option<Finding> {
    let note = |code, grade, message: &str, cure: &str| Finding {
        grade,
        code,
        subject: thing.name.clone(),
        message: message.to_owned(),
        numbers: vec![Quantity::new("distance", gap.distance_mm, "mm")],
        cure: cure.to_owned(),
        clause: None,
    };
    match thing.kind {
        ThingKind::Outlet if gap.outcome == Outcome::NotMet => Some(note(
            FindingCode::NeedsSpecialist,
            Grade::Caution,
            "The body would cover an electric outlet, which must stay within reach.",
            "Have it moved by a licensed electrician; a driver or plug in the closed, warm hollow is for its maker to allow.",
        )),
        ThingKind::Television => Some(note(
            FindingCode::NeedsSpecialist,
            Grade::Note,
            "Above heat, the greatest temperature at a television is for its maker to say; it was not given and is not checked.",
            "Ask its maker for the limit and measure there.",
        )),
        _ => None,
    }
}

fn over_the_opening(input: &SiteFitInput, opening: &FireOpening) -> Option<Finding> {
    let (left, bottom) = (input.place.left_end_mm, input.place.bottom_above_floor_mm);
    let span = (left, left + input.body_length_mm);
    let along_mm = between(span, (opening.left_mm, opening.left_mm + opening.width_mm));
    let below_mm = opening.top_above_floor_mm - bottom;
    (along_mm < 0.0 && below_mm > 0.0).then(|| Finding {
        grade: Grade::Stop,
        code: FindingCode::MeetsObstruction,
        subject: "opening".to_owned(),
        message: "The body hangs in front of the opening.".to_owned(),
        numbers: vec![Quantity::new("below the top of the opening", below_mm, "mm")],
        cure: "Mount it higher.".to_owned(),
        clause: None,
    })
}

fn tight(subject: &str, gap: &EndGap) -> Option<Finding> {
    let least_mm = gap.front_mm.min(gap.back_mm);
    (least_mm < 0.0).then(|| Finding {
        grade: Grade::Stop,
        code: FindingCode::MeetsObstruction,
        subject: subject.to_owned(),
        message: "This end runs into its side wall.".to_owned(),
        numbers: vec![
            Quantity::new("gap at the front", gap.front_mm, "mm"),
            Quantity::new("gap at the wall", gap.back_mm, "mm"),
            Quantity::new("angle of an end along the side wall", gap.fitting_end_deg, "deg"),
        ],
        cure: "Shorten the body, or cut the end to the angle of the side wall.".to_owned(),
        clause: None,
    })
}

fn no_way_in(way: &WayIn) -> Option<Finding> {
    (way.outcome == Outcome::NotMet).then(|| Finding {
        grade: Grade::Stop,
        code: FindingCode::MeetsObstruction,
        subject: "way in".to_owned(),
        message: "The body does not go in straight through the narrowest width.".to_owned(),
        numbers: vec![
            Quantity::new("longer than the way in by", -way.room_mm, "mm"),
            Quantity::new("width to swing it in flat", way.swing_flat_mm, "mm"),
            Quantity::new("width to let one end down", way.swing_upright_mm, "mm"),
        ],
        cure: "Make it shorter and fill the ends with scribed strips, or put one end panel on in place.".to_owned(),
        clause: None,
    })
}

fn too_short(fit: &SiteFit) -> Option<Finding> {
    let worst = fit.packing.iter().max_by(|one, other| one.longer_by_mm.total_cmp(&other.longer_by_mm))?;
    (worst.longer_by_mm > 0.0 && worst.packing_mm > 0.0).then(|| Finding {
        grade: Grade::Stop,
        code: FindingCode::ScrewTooShort,
        subject: "screws of the wall half".to_owned(),
        message: "Behind the packing a screw does not reach as deep into the stud as it should.".to_owned(),
        numbers: vec![
            Quantity::new("packing", worst.packing_mm, "mm"),
            Quantity::new("reach", worst.reach_mm, "mm"),
            Quantity::new("longer by", worst.longer_by_mm, "mm"),
        ],
        cure: "Longer screws at this stud, or plane the wall half to the wall instead of packing it.".to_owned(),
        clause: Some(Clause::new(Source::Nds2018, "12.1.5")),
    })
}

fn about_the_face(survey: &WallSurvey, fit: &SiteFit) -> Option<Finding> {
    let (message, cure) = match survey.face {
        WallFace::Gypsum | WallFace::Plaster | WallFace::Boards => return None,
        WallFace::Veneer => (
            "Tile and thin stone carry nothing: the load must reach the structure behind.",
            "Drill through with the bit for it, and let the screws bear in stud or masonry only.",
        ),
        WallFace::Brick | WallFace::Stone => (
            "Between the stations the face is not straight; the back edges want a template taken on the wall. Anchors in \
             masonry, and how near a flue they come, are outside this calculation.",
            "Scribe a template of thin board along the wall at the height of each edge, and cut to it.",
        ),
    };
    Some(Finding {
        grade: Grade::Caution,
        code: FindingCode::UnevenWall,
        subject: "wall".to_owned(),
        message: message.to_owned(),
        numbers: vec![Quantity::new("largest gap at the stations", fit.scribe_allowance_mm, "mm")],
        cure: cure.to_owned(),
        clause: None,
    })
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const SITE_FIT: crate::json::Calculation = crate::json::calculation!(
    site_fit: SiteFitInput => SiteFit, Document,
    "Packing at the studs, the line to scribe, side walls, the way in, and the gap to everything around a body"
);

#[cfg(test)]
#[path = "fit_tests.rs"]
mod tests;
