//! The wall, its studs, and what stands out from it.

use crate::error::{Detail, ErrorCode, Fault};
use crate::limits::{self, faults_at, limited, list_faults};
use crate::setting::survey::crossed;

/// A stud wall behind the body.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<Wall>))]
pub struct Wall {
    /// Where the studs stand.
    pub studs: StudLayout,
    /// Width of a stud along the wall, mm; a dressed 2x4 or 2x6 has 38.1 mm.
    pub stud_width_mm: f64,
    /// Depth of a stud into the wall, mm.
    pub stud_depth_mm: f64,
    /// What the studs are made of; checks take the least that may be there when it is not known.
    #[cfg_attr(feature = "json", serde(default))]
    pub stud_wood: StudWood,
    /// Thickness of the lining between the wall half and the studs, mm; 0 for bare studs.
    pub lining_thickness_mm: f64,
}

limited!(Wall { stud_width_mm: STUD, stud_depth_mm: STUD, lining_thickness_mm: SMALL_LENGTH });

/// Where the studs stand, by their centre lines.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum StudLayout {
    /// Each stud as found on the wall.
    Measured(MeasuredStuds),
    /// A regular spacing, both ways from one stud: a first guess only.
    Spaced(SpacedStuds),
}

/// Studs as found on the wall.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
pub struct MeasuredStuds {
    /// Centre lines from the plumb line, mm, in any order.
    pub centres_mm: Vec<f64>,
}

/// Studs at a regular spacing, both ways from one stud.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<SpacedStuds>))]
pub struct SpacedStuds {
    /// Centre line of one stud from the plumb line, mm.
    pub first_mm: f64,
    /// Distance between centre lines, mm.
    pub spacing_mm: f64,
}

limited!(SpacedStuds { first_mm: SIGNED_LENGTH, spacing_mm: SPACING });

/// What the studs are made of: a named combination or a specific gravity; neither when it is not known.
#[derive(Clone, Debug, Default, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields, default))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<StudWood>))]
pub struct StudWood {
    /// A species combination of NDS Table 12.3.3A, such as `Spruce-Pine-Fir`.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub combination: Option<String>,
    /// Specific gravity, oven-dry weight and volume.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub specific_gravity: Option<f64>,
}

limited!(StudWood { specific_gravity: SPECIFIC_GRAVITY });

impl Wall {
    /// Every fault of the wall, with its path.
    pub fn faults(&self) -> Vec<Detail> {
        let mut faults = Vec::new();
        match &self.studs {
            StudLayout::Measured(studs) => {
                faults.extend(list_faults("studs.measured.centres_mm", &studs.centres_mm, &limits::SIGNED_LENGTH));
            }
            StudLayout::Spaced(studs) => faults.extend(faults_at("studs.spaced", studs)),
        }
        faults.extend(faults_at("", self));
        faults.extend(faults_at("stud_wood", &self.stud_wood));
        if self.stud_wood.combination.is_some() && self.stud_wood.specific_gravity.is_some() {
            let fault = Fault::plain(ErrorCode::Inconsistent, "stud_wood", "a combination or a specific gravity", "");
            faults.push(fault.into());
        }
        faults
    }

    /// Centre lines of the studs from `from_mm` to `to_mm`, from left to right, each once, mm.
    pub fn studs_between(&self, from_mm: f64, to_mm: f64) -> Vec<f64> {
        let mut found: Vec<f64> = match &self.studs {
            StudLayout::Measured(studs) => {
                studs.centres_mm.iter().copied().filter(|x| *x >= from_mm && *x <= to_mm).collect()
            }
            StudLayout::Spaced(SpacedStuds { first_mm, spacing_mm }) => {
                let start = ((from_mm - first_mm) / spacing_mm).ceil();
                let end = ((to_mm - first_mm) / spacing_mm).floor();
                // Both ends and the spacing are checked: a few thousand studs at the most.
                let count = if end >= start { (end - start) as u32 + 1 } else { 0 };
                (0..count).map(|k| first_mm + (start + f64::from(k)) * spacing_mm).collect()
            }
        };
        found.sort_by(f64::total_cmp);
        found.dedup();
        found
    }
}

/// What a thing on the wall is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum ThingKind {
    /// A soffit or a ceiling.
    Soffit,
    /// A boxed duct or pipe.
    BoxedDuct,
    /// A moulding.
    Moulding,
    /// The casing of a door or window.
    Casing,
    /// The surround of an opening.
    Surround,
    /// An electric outlet.
    Outlet,
    /// A television.
    Television,
    /// Anything else.
    #[default]
    Other,
}

/// Something that stands out from the wall, as a box on it: a moulding, a duct, a bracket, a picture rail.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<Obstruction>))]
pub struct Obstruction {
    /// Name for messages.
    pub name: String,
    /// What it is; some things want more than room.
    #[cfg_attr(feature = "json", serde(default))]
    pub kind: ThingKind,
    /// Left side from the plumb line, mm.
    pub left_mm: f64,
    /// Right side from the plumb line, mm.
    pub right_mm: f64,
    /// Underside above the floor, mm.
    pub bottom_mm: f64,
    /// Upper side above the floor, mm.
    pub top_mm: f64,
    /// How far it stands out from the face of the wall, mm.
    pub projection_mm: f64,
}

limited!(Obstruction {
    left_mm: SIGNED_LENGTH,
    right_mm: SIGNED_LENGTH,
    bottom_mm: SIGNED_LENGTH,
    top_mm: SIGNED_LENGTH,
    projection_mm: LENGTH,
});

impl Obstruction {
    /// Every fault, with its path.
    pub fn faults(&self) -> Vec<Detail> {
        let mut faults = faults_at("", self);
        faults.extend(crossed("right_mm", self.left_mm, self.right_mm));
        faults.extend(crossed("top_mm", self.bottom_mm, self.top_mm));
        faults
    }
}

/// Where the body hangs.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<BodyPlace>))]
pub struct BodyPlace {
    /// Left end of the body from the plumb line, mm.
    pub left_end_mm: f64,
    /// Bottom of the body above the floor, mm.
    pub bottom_above_floor_mm: f64,
}

limited!(BodyPlace { left_end_mm: SIGNED_LENGTH, bottom_above_floor_mm: LENGTH });

#[cfg(test)]
mod tests {
    use super::*;

    fn wall(studs: StudLayout) -> Wall {
        let stud_wood = StudWood { combination: Some("Spruce-Pine-Fir".to_owned()), specific_gravity: None };
        Wall { studs, stud_width_mm: 38.1, stud_depth_mm: 88.9, stud_wood, lining_thickness_mm: 12.7 }
    }

    #[test]
    fn a_spacing_runs_both_ways_from_its_stud() {
        let spaced = wall(StudLayout::Spaced(SpacedStuds { first_mm: 100.0, spacing_mm: 400.0 }));
        assert_eq!(spaced.studs_between(-700.0, 500.0), [-700.0, -300.0, 100.0, 500.0]);
        assert!(spaced.studs_between(101.0, 499.0).is_empty());
        assert!(spaced.studs_between(500.0, 100.0).is_empty());
    }

    #[test]
    fn sixteen_inch_centres_behind_a_sixty_inch_beam_meet_three_or_four_studs() {
        // floor((L − offset)/spacing) + 1
        for offset in 0..=15 {
            let first_mm = f64::from(offset) * 25.4;
            let studs =
                wall(StudLayout::Spaced(SpacedStuds { first_mm, spacing_mm: 406.4 })).studs_between(0.0, 1524.0);
            assert_eq!(studs.len(), ((60 - offset) / 16 + 1) as usize, "{offset}");
        }
    }

    #[test]
    fn measured_studs_come_in_order_and_once() {
        let measured = wall(StudLayout::Measured(MeasuredStuds { centres_mm: vec![900.0, 10.0, 480.0, 10.0] }));
        assert_eq!(measured.studs_between(0.0, 1000.0), [10.0, 480.0, 900.0]);
    }

    #[test]
    fn every_fault_of_a_wall_is_named() {
        let mut bad = wall(StudLayout::Measured(MeasuredStuds { centres_mm: vec![0.0, f64::NAN] }));
        bad.stud_width_mm = 0.0;
        bad.stud_wood = StudWood { combination: None, specific_gravity: Some(7.0) };
        let paths: Vec<_> = bad.faults().into_iter().map(|fault| fault.path).collect();
        let wanted = ["studs.measured.centres_mm[1]", "stud_width_mm", "stud_wood.specific_gravity"];
        assert_eq!(paths, wanted);
        let upside_down = Obstruction {
            name: "duct".to_owned(),
            kind: ThingKind::BoxedDuct,
            left_mm: 10.0,
            right_mm: 0.0,
            bottom_mm: 5.0,
            top_mm: 4.0,
            projection_mm: 50.0,
        };
        assert_eq!(upside_down.faults().len(), 2);
    }
}
