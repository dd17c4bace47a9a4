//! Screws driven from inside: room for the driver, and wood left before the show face.

use super::hollow::{HollowCorner, Section, Wall};
use crate::error::{Detail, Error, ErrorCode, Fault, Result};
use crate::finding::{Finding, FindingCode, Grade, Quantity};
use crate::limits::{faults_at, limited};
use crate::numeric::real::{cos_deg, sin_cos_deg};

/// A screw driven from inside, through a frame piece, a block or a strip, into a board with a show face.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<InsideScrew>))]
pub struct InsideScrew {
    /// Its name.
    pub name: String,
    /// Where its tip is set on, from the front face of the body, mm: a point of the free space.
    pub out_mm: f64,
    /// Where its tip is set on, above the underside of the body, mm.
    pub up_mm: f64,
    /// Direction in which it is driven, degrees: 0 towards the wall, 90 up, 180 towards the front, 270 down.
    pub driven_deg: f64,
    /// Length of the screw, mm.
    pub length_mm: f64,
    /// What it passes before the board, along its axis, from where it is set on, less any counterbore, mm.
    pub through_mm: f64,
    /// Thickness of the board that it holds, mm.
    pub panel_thickness_mm: f64,
    /// Lean of the screw from square to the board, degrees; 0 if left out, 75 for a pocket screw at 15° to the face.
    #[cfg_attr(feature = "json", serde(default))]
    pub lean_deg: f64,
}

limited!(InsideScrew {
    out_mm: SIGNED_LENGTH,
    up_mm: SIGNED_LENGTH,
    driven_deg: COMPASS,
    length_mm: FASTENER_LENGTH,
    through_mm: SMALL_LENGTH,
    panel_thickness_mm: BOARD_THICKNESS,
    lean_deg: SCREW_LEAN,
});

/// The hollow, the driver and the screws.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<InsideScrewsInput>))]
pub struct InsideScrewsInput {
    /// Corners of the space that is free while the screws are driven, counter-clockwise seen with the front to the left; an
    /// open back reaches as far as the workshop allows.
    pub free_space: Vec<HollowCorner>,
    /// Length of the driver without its bit, along the screw, mm; of an angle driver the height of its head.
    pub driver_length_mm: f64,
    /// Length of the bit that stands out of the driver, mm; 50 is a common size.
    #[cfg_attr(feature = "json", serde(default = "usual_bit"))]
    pub bit_length_mm: f64,
    /// Half the width of the driver in this section, mm.
    pub driver_radius_mm: f64,
    /// Least wood to leave between tip and show face, mm; 3 is a choice, no published rule.
    #[cfg_attr(feature = "json", serde(default = "usual_cover"))]
    pub least_cover_mm: f64,
    /// The screws.
    pub screws: Vec<InsideScrew>,
}

limited!(InsideScrewsInput {
    driver_length_mm: SMALL_LENGTH,
    bit_length_mm: SMALL_LENGTH,
    driver_radius_mm: SMALL_LENGTH,
    least_cover_mm: SMALL_LENGTH,
});

#[cfg(feature = "json")]
fn usual_bit() -> f64 {
    50.0
}
#[cfg(feature = "json")]
fn usual_cover() -> f64 {
    3.0
}

/// Where the tip of a screw ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum ScrewTip {
    /// In the board, with the cover that was asked for.
    Covered,
    /// In the board, with less cover than was asked for.
    TooNearShowFace,
    /// Out of the show face.
    ComesThrough,
    /// Before the board: it holds nothing.
    DoesNotReach,
}

/// Whether the driver fits.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum DriverRoom {
    /// With its bit and the whole screw before it.
    Fits,
    /// Not in line with the screw.
    NoRoom,
}

/// One screw with its room and its tip.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct InsideScrewCheck {
    /// Its name.
    pub name: String,
    /// Free length behind the point where it is set on, along its axis, mm.
    pub room_mm: f64,
    /// Length that screw, bit and driver need there, mm.
    pub needs_mm: f64,
    /// Least distance left between driver and anything round it, mm; negative where it does not fit.
    pub spare_mm: f64,
    /// Whether the driver fits.
    pub driver: DriverRoom,
    /// Length of the screw in the board, along its axis, mm; 0 when it does not reach it.
    pub bite_mm: f64,
    /// Wood between tip and show face, mm; negative where it comes through.
    pub cover_mm: f64,
    /// Longest screw that leaves the cover, mm.
    pub longest_mm: f64,
    /// Where the tip ends.
    pub tip: ScrewTip,
}

/// Every screw driven from inside, with what does not work.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct InsideScrews {
    /// The screws, in the order given.
    pub screws: Vec<InsideScrewCheck>,
    /// What does not work.
    pub findings: Vec<Finding>,
}

/// Whether a driver fits behind each screw driven from inside, and how much wood its tip leaves before the show face.
///
/// # Equation
/// ```text
/// needs = screw + bit + driver        bite = max(0, L − s)
/// cover = t − (L − s) cos λ           longest = s + (t − c) / cos λ
/// spare = least over the walls of  distance of the driver's ends − r |m × a|
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | L, s | length of the screw; what it passes before the board | mm | `length_mm`, `through_mm` |
/// | t, c | thickness of the board; cover asked for | mm | `panel_thickness_mm`, `least_cover_mm` |
/// | λ | lean from square to the board | degree | `lean_deg` |
/// | r | half the width of the driver | mm | `driver_radius_mm` |
/// | m, a | normal of a wall of the free space, axis of the screw | | from `free_space`, `driven_deg` |
///
/// The driver begins with the whole screw standing out of the wood, so that is the length it needs. Its body is a straight
/// cylinder behind the bit; against a wall with normal m such a cylinder reaches r |m × a| farther than its axis.
///
/// # Limits
/// One section, a convex free space, a straight driver; for an angle driver give the height of its head. Whether a hand
/// fits is not asked. What is still open when the screw is driven is free space: give it so.
///
/// # Errors
/// `out_of_range`, `not_finite`, each with its path; `inconsistent` for corners out of order or a screw that is not set on
/// within the free space.
///
/// # Source
/// Plane geometry; checked by `verification/frame`.
///
/// # Examples
/// ```
/// use beamcraft_core::frame::{DriverRoom, HollowCorner, InsideScrew, InsideScrewsInput, ScrewTip, inside_screws};
/// let corner = |out_mm, up_mm| HollowCorner { out_mm, up_mm };
/// // Up through a block into the top of a hollow 145 high: no room for a straight driver.
/// let found = inside_screws(&InsideScrewsInput {
///     free_space: vec![corner(20.0, 20.0), corner(215.0, 20.0), corner(215.0, 165.0), corner(20.0, 165.0)],
///     driver_length_mm: 150.0, bit_length_mm: 50.0, driver_radius_mm: 30.0, least_cover_mm: 3.0,
///     screws: vec![InsideScrew {
///         name: "block to top".to_owned(), out_mm: 60.0, up_mm: 145.0, driven_deg: 90.0, length_mm: 35.0,
///         through_mm: 20.0, panel_thickness_mm: 20.0, lean_deg: 0.0,
///     }],
/// })?;
/// assert_eq!((found.screws[0].driver, found.screws[0].tip), (DriverRoom::NoRoom, ScrewTip::Covered));
/// assert_eq!((found.screws[0].room_mm, found.screws[0].cover_mm), (125.0, 5.0));
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn inside_screws(input: &InsideScrewsInput) -> Result<InsideScrews> {
    let walls = read(input)?;
    let screws: Vec<InsideScrewCheck> = input.screws.iter().map(|screw| check(input, &walls, screw)).collect();
    let findings = screws.iter().flat_map(|screw| [room_finding(screw), tip_finding(input, screw)]).flatten().collect();
    Ok(InsideScrews { screws, findings })
}

fn read(input: &InsideScrewsInput) -> Result<Vec<Wall>> {
    let mut faults = faults_at("", input);
    let section = Section::read(&input.free_space, "free_space").map_err(|more| faults.extend(more));
    let walls = section.map(|section| section.walls()).unwrap_or_default();
    for (k, screw) in input.screws.iter().enumerate() {
        let path = format!("screws[{k}]");
        let own = faults_at(&path, screw);
        let at = HollowCorner::new(screw.out_mm, screw.up_mm);
        if own.is_empty() && walls.iter().any(|wall| wall.inside(at) < -1e-6) {
            let allowed = "a point of the free space, where the tip is set on";
            let fault = Fault::plain(ErrorCode::Inconsistent, "out_mm", allowed, "give the place on the inner side");
            faults.push(Detail::from(fault).within(&path));
        }
        faults.extend(own);
    }
    Error::unless_empty(faults)?;
    Ok(walls)
}

fn check(input: &InsideScrewsInput, walls: &[Wall], screw: &InsideScrew) -> InsideScrewCheck {
    let (sine, cosine) = sin_cos_deg(screw.driven_deg);
    // Away from where it is driven to.
    let back = HollowCorner::new(-cosine, -sine);
    let at = HollowCorner::new(screw.out_mm, screw.up_mm);
    let ahead = walls.iter().filter_map(|wall| {
        let towards = wall.normal.dot(back);
        (towards > 1e-9).then(|| (wall.inside(at) / towards).max(0.0))
    });
    let room_mm = ahead.fold(f64::MAX, f64::min);
    let bit_end_mm = screw.length_mm + input.bit_length_mm;
    let needs_mm = bit_end_mm + input.driver_length_mm;
    let ends = [bit_end_mm, needs_mm].map(|along| at.plus(back, along));
    let spare = |wall: &Wall| {
        let reach = input.driver_radius_mm * wall.normal.cross(back).abs();
        ends.iter().map(|end| wall.inside(*end) - reach).fold(f64::MAX, f64::min)
    };
    let spare_mm = walls.iter().map(spare).fold(f64::MAX, f64::min);
    let (past_mm, lean) = (screw.length_mm - screw.through_mm, cos_deg(screw.lean_deg));
    let cover_mm = screw.panel_thickness_mm - past_mm.max(0.0) * lean;
    InsideScrewCheck {
        name: screw.name.clone(),
        room_mm,
        needs_mm,
        spare_mm,
        driver: if spare_mm >= 0.0 { DriverRoom::Fits } else { DriverRoom::NoRoom },
        bite_mm: past_mm.max(0.0),
        cover_mm,
        longest_mm: screw.through_mm + (screw.panel_thickness_mm - input.least_cover_mm).max(0.0) / lean,
        tip: if past_mm <= 0.0 {
            ScrewTip::DoesNotReach
        } else if cover_mm <= 0.0 {
            ScrewTip::ComesThrough
        } else if cover_mm < input.least_cover_mm {
            ScrewTip::TooNearShowFace
        } else {
            ScrewTip::Covered
        },
    }
}

fn room_finding(screw: &InsideScrewCheck) -> Option<Finding> {
    (screw.driver == DriverRoom::NoRoom).then(|| Finding {
        grade: Grade::Caution,
        code: FindingCode::DriverHasNoRoom,
        subject: screw.name.clone(),
        message: "The driver with its bit does not fit in line with this screw.".to_owned(),
        numbers: vec![
            Quantity::new("room along the screw", screw.room_mm, "mm"),
            Quantity::new("needed along the screw", screw.needs_mm, "mm"),
            Quantity::new("least distance left", screw.spare_mm, "mm"),
        ],
        cure: "Drive it before the body is closed, with an angle driver or a longer bit past the walls, or glue a block instead."
            .to_owned(),
        clause: None,
    })
}

fn tip_finding(input: &InsideScrewsInput, screw: &InsideScrewCheck) -> Option<Finding> {
    let (grade, code, message) = match screw.tip {
        ScrewTip::Covered => return None,
        ScrewTip::TooNearShowFace => {
            (Grade::Caution, FindingCode::ScrewTooLong, "Its tip comes too near the show face.")
        }
        ScrewTip::ComesThrough => (Grade::Stop, FindingCode::ScrewTooLong, "It comes out of the show face."),
        ScrewTip::DoesNotReach => {
            (Grade::Stop, FindingCode::ScrewTooShort, "It does not reach the board that it should hold.")
        }
    };
    Some(Finding {
        grade,
        code,
        subject: screw.name.clone(),
        message: message.to_owned(),
        numbers: vec![
            Quantity::new("wood before the show face", screw.cover_mm, "mm"),
            Quantity::new("asked for", input.least_cover_mm, "mm"),
            Quantity::new("longest screw", screw.longest_mm, "mm"),
        ],
        cure: "A screw no longer than the longest that leaves the cover, and long enough to bite; set a stop on the drill."
            .to_owned(),
        clause: None,
    })
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const INSIDE_SCREWS: crate::json::Calculation = crate::json::calculation!(
    inside_screws: InsideScrewsInput => InsideScrews, Document,
    "Room for the driver behind each screw driven from inside, and the wood its tip leaves before the show face"
);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::statics::test_inputs::hostile;
    use proptest::prelude::*;

    fn space(deep: f64, high: f64) -> InsideScrewsInput {
        let corners = [(0.0, 0.0), (deep, 0.0), (deep, high), (0.0, high)];
        InsideScrewsInput {
            free_space: corners.map(|(out, up)| HollowCorner::new(out, up)).to_vec(),
            driver_length_mm: 100.0,
            bit_length_mm: 40.0,
            driver_radius_mm: 25.0,
            least_cover_mm: 3.0,
            screws: vec![],
        }
    }

    fn screw(out_mm: f64, up_mm: f64, driven_deg: f64, length_mm: f64) -> InsideScrew {
        InsideScrew {
            name: "screw".to_owned(),
            out_mm,
            up_mm,
            driven_deg,
            length_mm,
            through_mm: 18.0,
            panel_thickness_mm: 20.0,
            lean_deg: 0.0,
        }
    }

    fn one(space: InsideScrewsInput, screw: InsideScrew) -> (InsideScrewCheck, Vec<Finding>) {
        let mut found = inside_screws(&InsideScrewsInput { screws: vec![screw], ..space }).unwrap();
        (found.screws.remove(0), found.findings)
    }

    #[test]
    fn a_driver_needs_the_screw_its_bit_and_its_own_length() {
        // Driven towards the front from 0: 30 + 40 + 100 are needed behind it.
        let (check, findings) = one(space(171.0, 200.0), screw(0.0, 100.0, 180.0, 30.0));
        assert_eq!((check.needs_mm, check.room_mm, check.driver), (170.0, 171.0, DriverRoom::Fits));
        assert!((check.spare_mm - 1.0).abs() < 1e-9 && findings.is_empty());
        let (check, findings) = one(space(169.0, 200.0), screw(0.0, 100.0, 180.0, 30.0));
        assert_eq!((check.driver, findings[0].code), (DriverRoom::NoRoom, FindingCode::DriverHasNoRoom));
    }

    #[test]
    fn beside_a_wall_the_body_of_the_driver_is_in_the_way() {
        let (check, _) = one(space(500.0, 200.0), screw(0.0, 20.0, 180.0, 30.0));
        assert!((check.spare_mm + 5.0).abs() < 1e-9, "20 above the bottom, 25 wide: {check:?}");
        let (check, _) =
            one(InsideScrewsInput { driver_radius_mm: 20.0, ..space(500.0, 200.0) }, screw(0.0, 20.0, 180.0, 30.0));
        assert_eq!(check.driver, DriverRoom::Fits);
    }

    #[test]
    fn the_tip_is_told_by_what_is_left_before_the_show_face() {
        let tip = |length: f64| one(space(500.0, 500.0), screw(0.0, 250.0, 180.0, length)).0;
        let lengths = [18.0, 35.0, 36.0, 38.0];
        let tips = [ScrewTip::DoesNotReach, ScrewTip::Covered, ScrewTip::TooNearShowFace, ScrewTip::ComesThrough];
        assert_eq!(lengths.map(|length| tip(length).tip), tips);
        assert_eq!((tip(35.0).cover_mm, tip(35.0).longest_mm, tip(35.0).bite_mm), (3.0, 35.0, 17.0));
        // At 60° from square half of the length in the board counts.
        let leaning = InsideScrew { lean_deg: 60.0, ..screw(0.0, 250.0, 180.0, 38.0) };
        assert!((one(space(500.0, 500.0), leaning).0.cover_mm - 10.0).abs() < 1e-9);
    }

    #[test]
    fn a_screw_outside_the_free_space_is_refused_by_its_path() {
        let input = InsideScrewsInput { screws: vec![screw(-5.0, 10.0, 0.0, 30.0)], ..space(100.0, 100.0) };
        assert_eq!(inside_screws(&input).unwrap_err().field(), "screws[0].out_mm");
        let input = InsideScrewsInput { screws: vec![screw(5.0, 10.0, f64::NAN, 30.0)], ..space(100.0, 100.0) };
        assert_eq!(inside_screws(&input).unwrap_err().field(), "screws[0].driven_deg");
    }

    proptest! {
        #[test]
        fn a_shorter_driver_never_fits_worse(
            out in 0.0..200.0, up in 0.0..200.0, driven in 0.0..360.0, length in 20.0..60.0, driver in 1.0..150.0, less in 0.0..1.0,
        ) {
            let at = |driver_length_mm| {
                one(InsideScrewsInput { driver_length_mm, ..space(200.0, 200.0) }, screw(out, up, driven, length)).0.spare_mm
            };
            prop_assert!(at(driver * less) >= at(driver) - 1e-9);
        }

        #[test]
        fn hostile_numbers_are_refused_or_give_finite_checks(n in proptest::collection::vec(hostile(), 18)) {
            let input = InsideScrewsInput {
                free_space: n.chunks(2).take(3).map(|pair| HollowCorner::new(pair[0], pair[1])).collect(),
                driver_length_mm: n[6], bit_length_mm: n[7], driver_radius_mm: n[8], least_cover_mm: n[9],
                screws: vec![InsideScrew {
                    name: String::new(), out_mm: n[10], up_mm: n[11], driven_deg: n[12], length_mm: n[13], through_mm: n[14],
                    panel_thickness_mm: n[15], lean_deg: n[16],
                }],
            };
            if let Ok(found) = inside_screws(&input) {
                let one = &found.screws[0];
                prop_assert!([one.room_mm, one.spare_mm, one.cover_mm, one.longest_mm].iter().all(|x| x.is_finite() && x.abs() < 1e12));
            }
        }
    }
}
