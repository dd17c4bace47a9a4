//! Marks on the wall for the wall half, the studs it meets, and the room to lift the body on.

use crate::error::{Detail, Error, ErrorCode, Fault, Result};
use crate::finding::{Caution, CautionText, Finding, FindingCode, Grade, Quantity};
use crate::hang::halves::{CleatHalves, CleatHalvesInput, cleat_halves};
use crate::limits::{faults_at, limited};
use crate::numeric::real::tan_deg;
use crate::setting::{BodyPlace, Obstruction, Wall};
use crate::verdict::Outcome;

/// The body, its cleat and the wall they go on.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<CleatMarksInput>))]
pub struct CleatMarksInput {
    /// Where the body hangs.
    pub place: BodyPlace,
    /// Length of the body, mm.
    pub body_length_mm: f64,
    /// Height of the body, mm.
    pub body_height_mm: f64,
    /// The strip that the cleat is ripped from.
    pub halves: CleatHalvesInput,
    /// From the bottom of the body up to the lower edge of the beam half, as it is, blunted or sharp, mm.
    pub beam_half_up_mm: f64,
    /// From the left end of the body to the left end of the beam half, mm.
    pub beam_half_left_mm: f64,
    /// Length of the beam half, mm.
    pub beam_half_length_mm: f64,
    /// How much shorter the wall half is made, so that the body can be shifted sideways to its line, mm.
    pub side_play_mm: f64,
    /// Thickness of a bottom board that reaches back under the wall half, mm; left out when the body is open there.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub bottom_board_mm: Option<f64>,
    /// Row of screws above the lower edge of the wall half, mm.
    pub screw_row_up_mm: f64,
    /// Least distance of a screw from an end of the wall half, mm.
    pub screw_end_mm: f64,
    /// The wall.
    pub wall: Wall,
    /// What stands out from the wall around the body.
    #[cfg_attr(feature = "json", serde(default))]
    pub obstructions: Vec<Obstruction>,
}

limited!(CleatMarksInput {
    body_length_mm: BODY_LENGTH,
    body_height_mm: BODY_SIZE,
    beam_half_up_mm: LENGTH,
    beam_half_left_mm: LENGTH,
    beam_half_length_mm: BODY_LENGTH,
    side_play_mm: SMALL_LENGTH,
    bottom_board_mm: BOARD_THICKNESS,
    screw_row_up_mm: LEVER,
    screw_end_mm: SMALL_LENGTH,
});

/// A screw of the wall half in the middle of a stud.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct StudScrew {
    /// From the plumb line, mm.
    pub x_mm: f64,
    /// From the left end of the wall half, mm.
    pub along_half_mm: f64,
    /// To the nearer end of the wall half, mm.
    pub end_distance_mm: f64,
    /// To each edge of the stud, mm.
    pub stud_edge_mm: f64,
}

/// Room under something above the body, against what lifting the body on needs.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct LiftRoom {
    /// Name of the obstruction.
    pub name: String,
    /// Room between the body in its place and the obstruction, mm.
    pub room_mm: f64,
    /// Room needed when the body goes straight up until the points are clear, mm.
    pub straight_up_mm: f64,
    /// Room needed when the body slides out along the seat as it rises, mm; never more.
    pub along_seat_mm: f64,
    /// Room missing even along the seat, mm.
    pub missing_mm: f64,
    /// Whether the room is enough along the seat.
    pub outcome: Outcome,
}

/// Marks for the wall half.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct CleatMarks {
    /// The two halves.
    pub halves: CleatHalves,
    /// Line of the bottom of the body above the floor, mm.
    pub bottom_line_mm: f64,
    /// Upper edge of the wall half where it touches the wall, above the floor, mm.
    pub wall_edge_mm: f64,
    /// Lower edge of the wall half above the floor, mm.
    pub lower_edge_mm: f64,
    /// Point of the wall half, in front, above the floor, mm.
    pub point_mm: f64,
    /// Left end of the wall half from the plumb line, mm.
    pub left_mm: f64,
    /// Right end of the wall half from the plumb line, mm.
    pub right_mm: f64,
    /// Length of the wall half, mm.
    pub length_mm: f64,
    /// Line of the screws above the floor, mm.
    pub screw_line_mm: f64,
    /// From the screws up to the edge of the wall half at the wall, mm.
    pub screw_to_wall_edge_mm: f64,
    /// One place for a screw in each stud that the wall half crosses, from left to right.
    pub screws: Vec<StudScrew>,
    /// Room between the wall half and the bottom board, mm; absent without a bottom board.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub room_below_mm: Option<f64>,
    /// Room under each obstruction above the body.
    pub lift_rooms: Vec<LiftRoom>,
    /// What stands in the way.
    pub findings: Vec<Finding>,
    /// Cautions that belong to these marks.
    pub cautions: Vec<CautionText>,
}

/// Heights and ends of the wall half, its screws at the studs, and whether the body can be lifted over it.
///
/// The body is hung to a line: the height of its bottom. The lower edge of the beam half is measured up from the bottom
/// of the body, and the same distance is carried up the wall from the line; there the wall half meets the wall.
///
/// # Equation
/// ```text
/// wall edge  = line + u − d          point = wall edge + t tan b − d       lower edge = wall edge − short face
/// length     = beam half − play, half of the play at each end
/// straight up needs  lift = t tan b − 2 d
/// along the seat     min(p, lift/tan b) tan b
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | u | bottom of the body to the beam half | mm | `beam_half_up_mm` |
/// | d | taken off each point | mm | `halves.blunt_mm` |
/// | t, b | thickness and bevel of the strip | mm, degree | `halves.thickness_mm`, `halves.bevel_deg` |
/// | p | projection of the obstruction | mm | `obstructions[].projection_mm` |
///
/// A body that slides out along the seat by o has risen by o·tan b. Something that stands out less than the seat is wide
/// is passed before the points are clear; it asks for less room than a straight lift.
///
/// # Limits
/// The body moves without turning; its back reaches the wall at its top edge. Both are exact for that motion; tilting
/// helps only a little and is not counted. One screw a stud; the load on each is told by `share_between_supports`.
///
/// # Errors
/// `out_of_range`, `not_finite`, each with its path; `inconsistent` where the beam half is longer than the body, the
/// play leaves no wall half, or the screws miss it; what `cleat_halves` refuses.
///
/// # Source
/// Geometry, derived in the theory pages; carrying the distance up from the line and the shorter wall half are common
/// practice. Checked by `verification/cleat`.
///
/// # Examples
/// ```
/// use beamcraft_core::hang::{cleat_marks, CleatHalvesInput, CleatMarksInput};
/// use beamcraft_core::setting::{BodyPlace, SpacedStuds, StudLayout, StudWood, Wall};
/// let marks = cleat_marks(&CleatMarksInput {
///     place: BodyPlace { left_end_mm: 0.0, bottom_above_floor_mm: 1300.0 },
///     body_length_mm: 1830.0, body_height_mm: 185.0,
///     halves: CleatHalvesInput {
///         strip_width_mm: 120.0, thickness_mm: 18.0, bevel_deg: 45.0, kerf_mm: 3.0, blunt_mm: 0.0,
///     },
///     beam_half_up_mm: 85.0, beam_half_left_mm: 40.0, beam_half_length_mm: 1750.0, side_play_mm: 20.0,
///     bottom_board_mm: None, screw_row_up_mm: 25.0, screw_end_mm: 30.0,
///     wall: Wall {
///         studs: StudLayout::Spaced(SpacedStuds { first_mm: 200.0, spacing_mm: 600.0 }),
///         stud_width_mm: 38.0, stud_depth_mm: 89.0, stud_wood: StudWood::default(), lining_thickness_mm: 12.5,
///     },
///     obstructions: vec![],
/// })?;
/// assert_eq!((marks.wall_edge_mm, marks.length_mm), (1385.0, 1730.0));
/// assert_eq!(marks.screws.len(), 3);
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn cleat_marks(input: &CleatMarksInput) -> Result<CleatMarks> {
    check(input)?;
    let halves = cleat_halves(&input.halves)?;
    let blunt_mm = input.halves.blunt_mm;
    let bottom_line_mm = input.place.bottom_above_floor_mm;
    let wall_edge_mm = bottom_line_mm + input.beam_half_up_mm - blunt_mm;
    let lower_edge_mm = wall_edge_mm - halves.short_face_mm;
    let left_mm = input.place.left_end_mm + input.beam_half_left_mm + 0.5 * input.side_play_mm;
    let length_mm = input.beam_half_length_mm - input.side_play_mm;
    let right_mm = left_mm + length_mm;
    let mut marks = CleatMarks {
        bottom_line_mm,
        wall_edge_mm,
        lower_edge_mm,
        point_mm: lower_edge_mm + halves.blunted_face_mm,
        left_mm,
        right_mm,
        length_mm,
        screw_line_mm: lower_edge_mm + input.screw_row_up_mm,
        screw_to_wall_edge_mm: halves.short_face_mm - input.screw_row_up_mm,
        screws: Vec::new(),
        room_below_mm: input.bottom_board_mm.map(|board| lower_edge_mm - bottom_line_mm - board),
        lift_rooms: Vec::new(),
        findings: Vec::new(),
        cautions: [Caution::Structure, Caution::Lifting, Caution::Services].map(CautionText::from).to_vec(),
        halves,
    };
    set_screws(input, &mut marks);
    look_inside(input, &mut marks);
    look_around(input, &mut marks);
    marks.findings.sort_by_key(|finding| core::cmp::Reverse(finding.grade));
    Ok(marks)
}

/// Every fault of the input, those of the strip included.
fn check(input: &CleatMarksInput) -> Result<()> {
    let mut faults = faults_at("place", &input.place);
    faults.extend(faults_at("", input));
    faults.extend(faults_at("halves", &input.halves));
    faults.extend(input.wall.faults().into_iter().map(|fault| fault.within("wall")));
    for (k, obstruction) in input.obstructions.iter().enumerate() {
        faults.extend(obstruction.faults().into_iter().map(|fault| fault.within(&format!("obstructions[{k}]"))));
    }
    let mut refuse = |field, allowed, cure| {
        faults.push(Detail::from(Fault::plain(ErrorCode::Inconsistent, field, allowed, cure)));
    };
    if input.beam_half_left_mm + input.beam_half_length_mm > input.body_length_mm {
        refuse("beam_half_length_mm", "a beam half within the body", "shorten the beam half");
    }
    if input.side_play_mm >= input.beam_half_length_mm {
        refuse("side_play_mm", "less than the length of the beam half", "");
    }
    match cleat_halves(&input.halves) {
        Ok(halves) if input.screw_row_up_mm >= halves.short_face_mm => {
            refuse("screw_row_up_mm", "less than the short face of the wall half", "lower the row");
        }
        // What is out of range is in the list already, with every other such field.
        Err(fault) if fault.code == ErrorCode::Inconsistent => faults.push(Detail::from(fault).within("halves")),
        Ok(_) | Err(_) => {}
    }
    Error::unless_empty(faults)
}

/// One screw in the middle of each stud, far enough from the ends.
fn set_screws(input: &CleatMarksInput, marks: &mut CleatMarks) {
    let (from, to) = (marks.left_mm + input.screw_end_mm, marks.right_mm - input.screw_end_mm);
    let (left_mm, right_mm) = (marks.left_mm, marks.right_mm);
    let screw = |x_mm: f64| StudScrew {
        x_mm,
        along_half_mm: x_mm - left_mm,
        end_distance_mm: (x_mm - left_mm).min(right_mm - x_mm),
        stud_edge_mm: 0.5 * input.wall.stud_width_mm,
    };
    marks.screws = input.wall.studs_between(from, to).into_iter().map(screw).collect();
    if marks.screws.len() < 2 {
        marks.findings.push(Finding {
            grade: Grade::Stop,
            code: FindingCode::StudsMissed,
            subject: "wall half".to_owned(),
            message: "The wall half does not reach two studs.".to_owned(),
            numbers: vec![
                Quantity::new("studs reached", marks.screws.len() as f64, ""),
                Quantity::new("length of the wall half", marks.length_mm, "mm"),
            ],
            cure: "Lengthen the cleat, shift the body, or fix a backing to the studs first; a lining carries nothing."
                .to_owned(),
            clause: None,
        });
    }
}

/// Whether the cleat has room in the body, hung and while it is lifted.
fn look_inside(input: &CleatMarksInput, marks: &mut CleatMarks) {
    let lift_mm = marks.halves.lift_mm;
    let mut note = |message: &str, numbers: Vec<Quantity>, cure: &str| {
        marks.findings.push(Finding {
            grade: Grade::Stop,
            code: FindingCode::CleatDoesNotFit,
            subject: "cleat".to_owned(),
            message: message.to_owned(),
            numbers,
            cure: cure.to_owned(),
            clause: None,
        });
    };
    let above_mm = input.body_height_mm - input.beam_half_up_mm - marks.halves.blunted_face_mm;
    if above_mm < 0.0 {
        let numbers = vec![Quantity::new("beam half above the top of the body", -above_mm, "mm")];
        note(
            "The beam half stands out above the body.",
            numbers,
            "Mount the beam half lower or take a narrower strip.",
        );
    }
    match marks.room_below_mm {
        Some(room_mm) => marks.findings.extend(bottom_board_meets(room_mm, lift_mm)),
        None if marks.lower_edge_mm < marks.bottom_line_mm => {
            let numbers = vec![Quantity::new("below the body", marks.bottom_line_mm - marks.lower_edge_mm, "mm")];
            note(
                "The wall half shows below the body.",
                numbers,
                "Mount the beam half higher or take a narrower strip.",
            );
        }
        _ => {}
    }
}

/// What is wrong when the wall half leaves less room above the bottom board than the lift: the board rises with the body.
pub(crate) fn bottom_board_meets(room_mm: f64, lift_mm: f64) -> Option<Finding> {
    (room_mm < lift_mm).then(|| Finding {
        grade: Grade::Stop,
        code: FindingCode::CleatDoesNotFit,
        subject: "cleat".to_owned(),
        message: "The bottom board meets the wall half before the points are clear.".to_owned(),
        numbers: vec![
            Quantity::new("room above the bottom board", room_mm, "mm"),
            Quantity::new("lift", lift_mm, "mm"),
        ],
        cure: "Mount the beam half higher, take a narrower strip, blunt the points or stop the board short.".to_owned(),
        clause: None,
    })
}

/// Whether anything on the wall is in the way of the body, hung and while it is lifted.
fn look_around(input: &CleatMarksInput, marks: &mut CleatMarks) {
    let (body_left, body_right) = (input.place.left_end_mm, input.place.left_end_mm + input.body_length_mm);
    let (body_bottom, body_top) = (marks.bottom_line_mm, marks.bottom_line_mm + input.body_height_mm);
    let beside = |one: &Obstruction| one.right_mm <= body_left || one.left_mm >= body_right;
    for one in input.obstructions.iter().filter(|one| one.projection_mm > 0.0 && !beside(one)) {
        if one.bottom_mm >= body_top {
            let room = lift_room(one, one.bottom_mm - body_top, &marks.halves, input.halves.bevel_deg);
            marks.findings.extend(no_headroom(&room));
            marks.lift_rooms.push(room);
        } else if one.top_mm > body_bottom {
            marks.findings.push(Finding {
                grade: Grade::Stop,
                code: FindingCode::MeetsObstruction,
                subject: one.name.clone(),
                message: format!("The body hangs where \"{}\" stands out from the wall.", one.name),
                numbers: vec![Quantity::new("stands out", one.projection_mm, "mm")],
                cure: "Move the body, or cut its back to go over it.".to_owned(),
                clause: None,
            });
        }
    }
}

fn lift_room(one: &Obstruction, room_mm: f64, halves: &CleatHalves, bevel_deg: f64) -> LiftRoom {
    let straight_up_mm = halves.lift_mm;
    let along_seat_mm = if one.projection_mm < halves.seat_width_mm {
        (one.projection_mm * tan_deg(bevel_deg)).min(straight_up_mm)
    } else {
        straight_up_mm
    };
    let missing_mm = (along_seat_mm - room_mm).max(0.0);
    let outcome = if missing_mm > 0.0 { Outcome::NotMet } else { Outcome::Met };
    LiftRoom { name: one.name.clone(), room_mm, straight_up_mm, along_seat_mm, missing_mm, outcome }
}

fn no_headroom(room: &LiftRoom) -> Option<Finding> {
    let (grade, message, cure) = if room.outcome == Outcome::NotMet {
        let message = format!("Under \"{}\" the body cannot be lifted over the wall half.", room.name);
        let cure = "Blunt each point by half of what is missing, lower the bevel at the price of the seat, mount the \
                    body lower and check the heat again, or fix it another way."
            .to_owned();
        (Grade::Stop, message, cure)
    } else if room.room_mm < room.straight_up_mm {
        let message = format!("Under \"{}\" the body cannot go straight up, only out along the seat.", room.name);
        (Grade::Caution, message, "Draw the body towards the room as it rises.".to_owned())
    } else {
        return None;
    };
    Some(Finding {
        grade,
        code: FindingCode::NoHeadroom,
        subject: room.name.clone(),
        message,
        numbers: vec![
            Quantity::new("room", room.room_mm, "mm"),
            Quantity::new("needed straight up", room.straight_up_mm, "mm"),
            Quantity::new("needed along the seat", room.along_seat_mm, "mm"),
            Quantity::new("missing", room.missing_mm, "mm"),
        ],
        cure,
        clause: None,
    })
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const CLEAT_MARKS: crate::json::Calculation = crate::json::calculation!(
    cleat_marks: CleatMarksInput => CleatMarks, Document,
    "Heights and ends of the wall half, its screws at the studs, and the room to lift the body on"
);

#[cfg(test)]
#[path = "marks_tests.rs"]
mod tests;
