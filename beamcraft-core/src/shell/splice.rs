//! A body too long to make, carry or drive in one piece: its sections, the sleeve between them, staggered seams.
//!
//! ```text
//!   front   ├──────────────┬───────┤├──────────────┬───────┤     seams of boards, staggered
//!   top     ├───────┬──────────────┤├───────┬──────────────┤     from panel to panel
//!                                  ↑ site joint
//!   sleeve                    ├────┼────┤  inside the hollow, lap on either side
//! ```

use super::body::BodyLeg;
use super::id::FaceKind;
use crate::error::{Detail, Error, ErrorCode};
use crate::finding::{Finding, FindingCode, Grade, Quantity};
use crate::limits::{Limited, limited};
use crate::numeric::real::sin_cos_deg;

/// A square turn on the way in: a corridor, a door into one, a stair with a landing.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<CarryTurn>))]
pub struct CarryTurn {
    /// What it is, such as `stair landing`.
    pub name: String,
    /// Clear width before the turn, mm.
    pub first_width_mm: f64,
    /// Clear width after the turn, mm.
    pub second_width_mm: f64,
}

limited!(CarryTurn { first_width_mm: PASSAGE, second_width_mm: PASSAGE });

/// A panel of a body that is spliced.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<SplicedPanel>))]
pub struct SplicedPanel {
    /// Which side of the body.
    pub face: FaceKind,
    /// Thickness of its board, mm.
    pub thickness_mm: f64,
}

limited!(SplicedPanel { thickness_mm: BOARD_THICKNESS });

/// A long straight body of rectangular section and what limits the length of its parts.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<SplicedBodyInput>))]
pub struct SplicedBodyInput {
    /// Length of the body, mm.
    pub length_mm: f64,
    /// Height of the body, mm.
    pub height_mm: f64,
    /// Depth of the body, mm.
    pub depth_mm: f64,
    /// The panels along the length, neighbours one after the other: their seams are staggered in this order.
    pub panels: Vec<SplicedPanel>,
    /// Longest board to be had, after trimming its ends, mm.
    pub board_mm: f64,
    /// Longest piece that can be cut and handled in the shop, mm; no limit if left out.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub saw_mm: Option<f64>,
    /// Longest section that fits into the van, mm; no limit if left out.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub van_mm: Option<f64>,
    /// Square turns on the way in.
    #[cfg_attr(feature = "json", serde(default))]
    pub turns: Vec<CarryTurn>,
    /// Least distance between the seams of panels that are neighbours, mm.
    pub stagger_mm: f64,
    /// Length of the sleeve on either side of a site joint, mm.
    pub sleeve_lap_mm: f64,
    /// Play of the sleeve in the hollow on every side, mm; 0.5 if left out, a close sliding fit by common practice.
    #[cfg_attr(feature = "json", serde(default = "sliding_fit"))]
    pub sleeve_play_mm: f64,
}

limited!(SplicedBodyInput {
    length_mm: BODY_LENGTH,
    height_mm: BODY_SIZE,
    depth_mm: BODY_SIZE,
    board_mm: PIECE_LENGTH,
    saw_mm: PIECE_LENGTH,
    van_mm: PIECE_LENGTH,
    stagger_mm: SMALL_LENGTH,
    sleeve_lap_mm: SMALL_LENGTH,
    sleeve_play_mm: SMALL_LENGTH,
});

#[cfg(feature = "json")]
fn sliding_fit() -> f64 {
    0.5
}

/// What limits a length.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct LengthLimit {
    /// What it is: `board`, `saw`, `van` or the name of a turn.
    pub name: String,
    /// Longest piece or section that it takes, mm.
    pub longest_mm: f64,
}

/// A seam between two boards of a panel.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct BoardSeam {
    /// Which panel.
    pub face: FaceKind,
    /// Which section, from 1.
    pub section: u32,
    /// Place of the seam from the left end of its section, mm.
    pub at_mm: f64,
}

/// The sleeve inside a site joint.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct JointSleeve {
    /// Length, half of it on either side of the joint, mm.
    pub length_mm: f64,
    /// Outer height, mm.
    pub height_mm: f64,
    /// Outer depth, mm.
    pub depth_mm: f64,
}

/// A long body in sections.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct SplicedBody {
    /// What limits the length of a section on its way: the van, then the turns.
    pub section_limits: Vec<LengthLimit>,
    /// What limits the length of a piece in the shop: boards, then the saw.
    pub piece_limits: Vec<LengthLimit>,
    /// Number of sections.
    pub section_count: u32,
    /// Length of each section, mm.
    pub section_mm: f64,
    /// The sections as legs straight on, for `hollow_body`.
    pub legs: Vec<BodyLeg>,
    /// The sleeve inside every site joint; absent for a body in one section.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub sleeve: Option<JointSleeve>,
    /// Pieces that each panel of a section is made of.
    pub pieces_per_panel: u32,
    /// Longest of them, mm.
    pub longest_piece_mm: f64,
    /// Seams within the sections, panel by panel.
    pub seams: Vec<BoardSeam>,
    /// Turns that no section passes.
    pub findings: Vec<Finding>,
}

/// Longest box of a width that goes round a square turn, level; nothing when it does not go in.
///
/// Touching the inner corner and both outer walls at the angle θ, it may be `(a cos θ + b sin θ − w) / (sin θ cos θ)` long; the
/// tightest angle decides. A box no longer than a passage is wide goes round sideways, without being turned.
fn longest_round(first_mm: f64, second_mm: f64, width_mm: f64) -> Option<f64> {
    if width_mm >= first_mm.min(second_mm) {
        return None;
    }
    let length = |angle_deg: f64| {
        let (sine, cosine) = sin_cos_deg(angle_deg);
        (first_mm * cosine + second_mm * sine - width_mm) / (sine * cosine)
    };
    // The length grows without end towards both sides of its one minimum.
    let (mut low, mut high) = (0.01, 89.99);
    for _ in 0..120 {
        let third = (high - low) / 3.0;
        if length(low + third) < length(high - third) { high -= third } else { low += third }
    }
    Some(length(0.5 * (low + high)).max(first_mm).max(second_mm))
}

impl SplicedBodyInput {
    fn faults(&self) -> Vec<Detail> {
        let mut faults: Vec<_> = self.range_faults().into_iter().map(Detail::from).collect();
        for (panel, at) in self.panels.iter().zip(0..) {
            let path = format!("panels[{at}]");
            faults.extend(panel.range_faults().into_iter().map(|fault| Detail::from(fault).within(&path)));
            let given = panel.face.to_string();
            if !matches!(panel.face, FaceKind::Front | FaceKind::Top | FaceKind::Back | FaceKind::Bottom) {
                faults.push(Detail::inconsistent("face", given, "front, top, back or bottom", "").within(&path));
            } else if self.panels.iter().take(at).any(|other| other.face == panel.face) {
                let fault = Detail::inconsistent("face", given, "each panel once", "");
                faults.push(fault.with_code(ErrorCode::DuplicateField).within(&path));
            }
        }
        if self.panels.is_empty() {
            faults.push(Detail::inconsistent("panels", "no panel".to_owned(), "at least one panel", ""));
        }
        for (turn, at) in self.turns.iter().zip(0..) {
            let path = format!("turns[{at}]");
            faults.extend(turn.range_faults().into_iter().map(|fault| Detail::from(fault).within(&path)));
        }
        faults
    }

    /// What the boards leave of a size of the section.
    fn inside_mm(&self, size_mm: f64, faces: [FaceKind; 2]) -> f64 {
        let boards = self.panels.iter().filter(|panel| faces.contains(&panel.face));
        size_mm - boards.map(|panel| panel.thickness_mm).sum::<f64>()
    }

    fn sleeve(&self) -> Result<JointSleeve, Error> {
        let play = 2.0 * self.sleeve_play_mm;
        let sleeve = JointSleeve {
            length_mm: 2.0 * self.sleeve_lap_mm,
            height_mm: self.inside_mm(self.height_mm, [FaceKind::Top, FaceKind::Bottom]) - play,
            depth_mm: self.inside_mm(self.depth_mm, [FaceKind::Front, FaceKind::Back]) - play,
        };
        if sleeve.height_mm > 0.0 && sleeve.depth_mm > 0.0 {
            return Ok(sleeve);
        }
        let given = format!("a sleeve of {} by {} mm", sleeve.height_mm, sleeve.depth_mm);
        let fault = Detail::inconsistent("panels", given, "boards that leave room for a sleeve", "thinner boards");
        Err(Error::one(fault.with_code(ErrorCode::NoRoomInside)))
    }

    /// The limits of a section on its way, and the turns that it does not even go into.
    fn section_limits(&self, findings: &mut Vec<Finding>) -> Vec<LengthLimit> {
        let limit = |name: &str, longest_mm| LengthLimit { name: name.to_owned(), longest_mm };
        let mut limits: Vec<_> = self.van_mm.into_iter().map(|longest| limit("van", longest)).collect();
        // Carried on edge or flat, whichever is narrower.
        let width_mm = self.height_mm.min(self.depth_mm);
        for turn in &self.turns {
            match longest_round(turn.first_width_mm, turn.second_width_mm, width_mm) {
                Some(longest_mm) => limits.push(limit(&turn.name, longest_mm)),
                None => findings.push(does_not_pass(turn, width_mm)),
            }
        }
        limits
    }
}

fn does_not_pass(turn: &CarryTurn, width_mm: f64) -> Finding {
    let clear = turn.first_width_mm.min(turn.second_width_mm);
    Finding {
        grade: Grade::Stop,
        code: FindingCode::DoesNotPass,
        subject: turn.name.clone(),
        message: "The section is wider than the way in, however short it is made.".to_owned(),
        numbers: vec![Quantity::new("clear width", clear, "mm"), Quantity::new("width of the body", width_mm, "mm")],
        cure: "Another way in, or panels that are glued up on site.".to_owned(),
        clause: None,
    }
}

fn tightest(limits: &[LengthLimit]) -> f64 {
    limits.iter().map(|limit| limit.longest_mm).fold(f64::INFINITY, f64::min)
}

/// The least number of equal parts that a length makes, none longer than a limit.
fn parts(length_mm: f64, longest_mm: f64) -> u32 {
    (length_mm / longest_mm).ceil().max(1.0) as u32
}

/// Sections, site joints, sleeve and staggered seams of a long straight body.
///
/// # Equation
/// ```text
/// section = length / ⌈length / tightest of van and turns⌉
/// turn    = min over θ of (a cos θ + b sin θ − w) / (sin θ cos θ), at least a and b
/// seam j of panel k at j · s / n ± stagger / 2, where n pieces of at most the board's length make the section s
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | a, b | clear widths before and after the turn | mm | `first_width_mm`, `second_width_mm` |
/// | w | the lesser of height and depth | mm | |
///
/// Panels that follow one another in the list have their seams on either side of the even division, so that no seam runs
/// round the body; of an odd number of panels the first and the last share theirs and must not be neighbours.
///
/// # Limits
/// Straight bodies of rectangular section. Sections are carried level, not tipped up into a stairwell, round square turns. The
/// strength of a splice is not covered.
///
/// # Errors
/// `out_of_range`, `not_finite`, `duplicate_field`; `inconsistent` for no panel, a side that is none of the four, a sleeve longer
/// than the sections, or a stagger that leaves no piece; `no_room_inside` when the boards leave no room for a sleeve.
///
/// # Source
/// Plane geometry of the box in the corner, derived in the theory pages; checked by `verification/spliced_body`.
///
/// # Examples
/// ```
/// use beamcraft_core::shell::{CarryTurn, FaceKind, SplicedBodyInput, SplicedPanel, spliced_body};
/// let panel = |face| SplicedPanel { face, thickness_mm: 20.0 };
/// let body = spliced_body(&SplicedBodyInput {
///     length_mm: 6200.0, height_mm: 185.0, depth_mm: 215.0,
///     panels: vec![panel(FaceKind::Top), panel(FaceKind::Front), panel(FaceKind::Bottom)],
///     board_mm: 2900.0, saw_mm: None, van_mm: Some(3800.0),
///     turns: vec![CarryTurn { name: "stair landing".to_owned(), first_width_mm: 900.0, second_width_mm: 1000.0 }],
///     stagger_mm: 300.0, sleeve_lap_mm: 250.0, sleeve_play_mm: 0.5,
/// })?;
/// assert_eq!(body.section_count, 3);
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn spliced_body(input: &SplicedBodyInput) -> Result<SplicedBody, Error> {
    Error::unless_empty(input.faults())?;
    let mut findings = Vec::new();
    let section_limits = input.section_limits(&mut findings);
    let section_count = parts(input.length_mm, tightest(&section_limits));
    let section_mm = input.length_mm / f64::from(section_count);
    let sleeve = if section_count > 1 { Some(input.sleeve()?) } else { None };
    if sleeve.is_some_and(|sleeve| sleeve.length_mm > section_mm) {
        let given = format!("{} mm either side in sections of {section_mm} mm", input.sleeve_lap_mm);
        return Err(Error::one(Detail::inconsistent("sleeve_lap_mm", given, "laps that do not meet", "a shorter lap")));
    }
    let limit = |name: &str, longest_mm| LengthLimit { name: name.to_owned(), longest_mm };
    let board = limit("board", input.board_mm);
    let piece_limits: Vec<_> = [board].into_iter().chain(input.saw_mm.map(|longest| limit("saw", longest))).collect();
    let (pieces_per_panel, off_mm) = pieces(section_mm, tightest(&piece_limits), input.stagger_mm)?;
    let even = section_mm / f64::from(pieces_per_panel);
    let leg = |section| BodyLeg { length_mm: section_mm, corner_deg: (section < section_count).then_some(180.0) };
    let mut seams = Vec::new();
    for (panel, at) in input.panels.iter().zip(0_u32..) {
        let off_mm = if at % 2 == 0 { -off_mm } else { off_mm };
        for section in 1..=section_count {
            let seam = |k: u32| BoardSeam { face: panel.face, section, at_mm: f64::from(k) * even + off_mm };
            seams.extend((1..pieces_per_panel).map(seam));
        }
    }
    Ok(SplicedBody {
        section_limits,
        piece_limits,
        section_count,
        section_mm,
        legs: (1..=section_count).map(leg).collect(),
        sleeve,
        pieces_per_panel,
        longest_piece_mm: even + off_mm,
        seams,
        findings,
    })
}

/// How many pieces make the panel of a section, and by how much their seams lie off the even division.
fn pieces(section_mm: f64, longest_mm: f64, stagger_mm: f64) -> Result<(u32, f64), Error> {
    let count = parts(section_mm, longest_mm);
    if count == 1 {
        return Ok((1, 0.0));
    }
    let off_mm = 0.5 * stagger_mm;
    // The first or the last piece is longer than the others by that much.
    let room = longest_mm - off_mm;
    let count = if room > 0.0 { parts(section_mm, room) } else { 0 };
    let even = section_mm / f64::from(count.max(1));
    // A seam lies between two seams of the neighbour, and must keep clear of both.
    if count == 0 || even <= off_mm || (count > 2 && even < 2.0 * stagger_mm) {
        let given = format!("{stagger_mm} mm with pieces of at most {longest_mm} mm");
        let allowed = "a stagger below half of a piece";
        return Err(Error::one(Detail::inconsistent("stagger_mm", given, allowed, "less stagger or longer boards")));
    }
    Ok((count, off_mm))
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const SPLICED_BODY: crate::json::Calculation = crate::json::calculation!(
    spliced_body: SplicedBodyInput => SplicedBody, Document,
    "Sections, site joints, sleeve and staggered seams of a body too long for its boards, the van or a turn on the way in"
);

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn long() -> SplicedBodyInput {
        let panel = |face| SplicedPanel { face, thickness_mm: 20.0 };
        SplicedBodyInput {
            length_mm: 6200.0,
            height_mm: 185.0,
            depth_mm: 215.0,
            panels: vec![panel(FaceKind::Top), panel(FaceKind::Front), panel(FaceKind::Bottom)],
            board_mm: 2900.0,
            saw_mm: None,
            van_mm: Some(3800.0),
            turns: vec![],
            stagger_mm: 300.0,
            sleeve_lap_mm: 250.0,
            sleeve_play_mm: 0.5,
        }
    }

    #[test]
    fn the_ladder_round_the_corner_has_its_textbook_length() {
        // (a^(2/3) + b^(2/3))^(3/2): with 8 and 27 it is 13 √13.
        let ladder = longest_round(800.0, 2700.0, 0.0).unwrap();
        assert!((ladder / (1300.0 * 13.0_f64.sqrt()) - 1.0).abs() < 1e-12, "{ladder}");
        // Between equal walls the box stands at 45° when it is tightest: 2 √2 a − 2 w.
        let square = longest_round(1000.0, 1000.0, 200.0).unwrap();
        assert!((square - (2000.0 * 2.0_f64.sqrt() - 400.0)).abs() < 1e-9);
        assert_eq!(longest_round(1000.0, 200.0, 200.0), None);
        // A thick box in a tight corner goes round sideways.
        assert_eq!(longest_round(1000.0, 1000.0, 990.0), Some(1000.0));
    }

    #[test]
    fn sections_and_seams_keep_within_their_limits() {
        let body = spliced_body(&long()).unwrap();
        assert_eq!((body.section_count, body.section_mm), (2, 3100.0));
        assert_eq!(body.legs.iter().map(|leg| leg.corner_deg).collect::<Vec<_>>(), [Some(180.0), None]);
        let sleeve = body.sleeve.unwrap();
        assert_eq!((sleeve.length_mm, sleeve.height_mm, sleeve.depth_mm), (500.0, 144.0, 194.0));
        assert_eq!((body.pieces_per_panel, body.longest_piece_mm), (2, 1700.0));
        let seams: Vec<_> = body.seams.iter().map(|seam| (seam.face, seam.section, seam.at_mm)).collect();
        assert_eq!(seams[..3], [(FaceKind::Top, 1, 1400.0), (FaceKind::Top, 2, 1400.0), (FaceKind::Front, 1, 1700.0)]);
        // A saw that takes less needs more pieces.
        let short = spliced_body(&SplicedBodyInput { saw_mm: Some(1650.0), ..long() }).unwrap();
        assert_eq!(short.pieces_per_panel, 3);
        // In one piece there is neither a joint nor a seam.
        let whole = spliced_body(&SplicedBodyInput { length_mm: 2500.0, ..long() }).unwrap();
        assert_eq!((whole.section_count, whole.sleeve, whole.seams.len()), (1, None, 0));
    }

    #[test]
    fn what_cannot_be_spliced_is_refused_or_found() {
        let refused = |input: &SplicedBodyInput| {
            let error = spliced_body(input).expect_err("refused");
            (error.code(), error.field().to_owned())
        };
        let lap = SplicedBodyInput { van_mm: Some(400.0), ..long() };
        assert_eq!(refused(&lap), (ErrorCode::Inconsistent, "sleeve_lap_mm".to_owned()));
        let stagger = SplicedBodyInput { board_mm: 240.0, stagger_mm: 500.0, ..long() };
        assert_eq!(refused(&stagger), (ErrorCode::Inconsistent, "stagger_mm".to_owned()));
        let full = SplicedBodyInput { height_mm: 40.0, ..long() };
        assert_eq!(refused(&full), (ErrorCode::NoRoomInside, "panels".to_owned()));
        let mut twice = long();
        twice.panels[1] = twice.panels[0];
        twice.panels[2].face = FaceKind::LeftEnd;
        let error = spliced_body(&twice).expect_err("refused");
        let paths: Vec<_> = error.details().iter().map(|fault| fault.path.as_str()).collect();
        assert_eq!(paths, ["panels[1].face", "panels[2].face"]);
        let tight = CarryTurn { name: "hatch".to_owned(), first_width_mm: 180.0, second_width_mm: 900.0 };
        let body = spliced_body(&SplicedBodyInput { turns: vec![tight], ..long() }).unwrap();
        assert_eq!((body.findings[0].code, body.findings[0].grade), (FindingCode::DoesNotPass, Grade::Stop));
    }

    proptest! {
        #[test]
        fn no_part_is_longer_than_its_limits(
            length in 200.0..20_000.0, board in 500.0..6000.0, van in 800.0..8000.0, a in 600.0..2000.0, b in 600.0..2000.0,
            stagger in 0.0..500.0, lap in 10.0..150.0,
        ) {
            let turn = CarryTurn { name: "landing".to_owned(), first_width_mm: a, second_width_mm: b };
            let input = SplicedBodyInput {
                length_mm: length,
                board_mm: board,
                van_mm: Some(van),
                turns: vec![turn],
                stagger_mm: stagger,
                sleeve_lap_mm: lap,
                ..long()
            };
            let Ok(body) = spliced_body(&input) else { return Ok(()) };
            prop_assert!(body.section_limits.iter().all(|limit| body.section_mm <= limit.longest_mm * (1.0 + 1e-12)));
            prop_assert!(body.longest_piece_mm <= board * (1.0 + 1e-12));
            prop_assert!((body.legs.iter().map(|leg| leg.length_mm).sum::<f64>() - length).abs() < 1e-9 * length);
            prop_assert!(body.seams.iter().all(|seam| seam.at_mm > 0.0 && seam.at_mm < body.section_mm));
            // Neighbours in the list keep their distance.
            let of = |face| body.seams.iter().filter(move |seam| seam.face == face && seam.section == 1).map(|seam| seam.at_mm);
            for one in of(FaceKind::Top) {
                prop_assert!(of(FaceKind::Front).all(|other| (one - other).abs() >= stagger * (1.0 - 1e-9)));
            }
        }

        #[test]
        fn a_wider_way_takes_a_longer_box(a in 300.0..3000.0, b in 300.0..3000.0, w in 10.0..290.0, more in 1.0..500.0) {
            let longest = longest_round(a, b, w).unwrap();
            prop_assert!(longest_round(a + more, b, w).unwrap() >= longest * (1.0 - 1e-12));
            prop_assert!(longest_round(a, b, w * 0.9).unwrap() >= longest * (1.0 - 1e-12));
            prop_assert!((longest_round(b, a, w).unwrap() / longest - 1.0).abs() < 1e-9);
        }

        #[test]
        fn any_bits_give_a_body_or_faults(bits in prop::collection::vec(prop_oneof![prop::num::f64::ANY, 1.0..3000.0], 12)) {
            let turn = CarryTurn { name: String::new(), first_width_mm: bits[0], second_width_mm: bits[1] };
            let input = SplicedBodyInput {
                length_mm: bits[2],
                height_mm: bits[3],
                depth_mm: bits[4],
                panels: vec![SplicedPanel { face: FaceKind::Front, thickness_mm: bits[5] }],
                board_mm: bits[6],
                saw_mm: Some(bits[7]),
                van_mm: Some(bits[8]),
                turns: vec![turn],
                stagger_mm: bits[9],
                sleeve_lap_mm: bits[10],
                sleeve_play_mm: bits[11],
            };
            if let Ok(body) = spliced_body(&input) {
                prop_assert!(body.section_mm.is_finite() && body.longest_piece_mm.is_finite());
                prop_assert!(body.seams.iter().all(|seam| seam.at_mm.is_finite()));
            }
        }
    }
}
