//! The wall as it really is: uneven, out of plumb, between side walls, with something to screw into between its studs.

use crate::error::{Detail, ErrorCode, Fault};
use crate::limits::{faults_at, limited};

/// A wall as measured on site.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<WallSurvey>))]
pub struct WallSurvey {
    /// What the face of the wall is made of.
    pub face: WallFace,
    /// Offsets of the face from a straight level line, such as a string, from left to right; an even wall has none.
    #[cfg_attr(feature = "json", serde(default))]
    pub stations: Vec<WallStation>,
    /// Lean of the wall, mm for each metre of height; positive when its top leans away from the room; 0, the default, is
    /// plumb.
    #[cfg_attr(feature = "json", serde(default))]
    pub lean_mm_per_m: f64,
    /// The side wall on the left, where there is one.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub left_wall: Option<SideWall>,
    /// The side wall on the right, where there is one.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub right_wall: Option<SideWall>,
    /// Narrowest width on the way in, between casings or side walls, mm.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub narrowest_way_in_mm: Option<f64>,
    /// Blocking or ledgers that a screw bites in between the studs.
    #[cfg_attr(feature = "json", serde(default))]
    pub backing: Vec<Backing>,
}

limited!(WallSurvey { lean_mm_per_m: LEAN, narrowest_way_in_mm: LENGTH });

/// What the face of a wall is made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum WallFace {
    /// Gypsum board.
    Gypsum,
    /// Plaster on lath.
    Plaster,
    /// Wooden boards or panels.
    Boards,
    /// Tile or thin stone, which carries nothing.
    Veneer,
    /// Brick.
    Brick,
    /// Natural stone.
    Stone,
}

/// The face of the wall at one place.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<WallStation>))]
pub struct WallStation {
    /// Place from the plumb line, mm.
    pub along_mm: f64,
    /// How far the face lies behind the straight line, mm; negative where it stands out.
    pub behind_mm: f64,
}

limited!(WallStation { along_mm: SIGNED_LENGTH, behind_mm: UNEVENNESS_OFFSET });

/// A side wall.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<SideWall>))]
pub struct SideWall {
    /// Where it meets the wall, from the plumb line, mm.
    pub corner_at_mm: f64,
    /// Angle of the corner in plan, inside the room, degrees; 90 is square, more widens the alcove towards the room.
    #[cfg_attr(feature = "json", serde(default = "square"))]
    pub corner_deg: f64,
}

limited!(SideWall { corner_at_mm: SIGNED_LENGTH, corner_deg: END_ANGLE });

#[cfg(feature = "json")]
fn square() -> f64 {
    90.0
}

/// Wood in the wall besides the studs.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<Backing>))]
pub struct Backing {
    /// Name for messages.
    pub name: String,
    /// What it is.
    pub kind: BackingKind,
    /// Left end from the plumb line, mm.
    pub left_mm: f64,
    /// Right end from the plumb line, mm.
    pub right_mm: f64,
    /// Lower edge above the floor, mm.
    pub bottom_mm: f64,
    /// Upper edge above the floor, mm.
    pub top_mm: f64,
    /// How far it reaches back from its face, mm.
    pub thickness_mm: f64,
}

limited!(Backing {
    left_mm: SIGNED_LENGTH,
    right_mm: SIGNED_LENGTH,
    bottom_mm: SIGNED_LENGTH,
    top_mm: SIGNED_LENGTH,
    thickness_mm: STUD,
});

/// How wood is built into a wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum BackingKind {
    /// Pieces between the studs, flush with their faces behind the lining.
    Blocking,
    /// A ledger or plank across the studs, behind the lining.
    Ledger,
}

/// A fault where the higher of two bounds lies below the lower.
pub(super) fn crossed(field: &'static str, low: f64, high: f64) -> Option<Detail> {
    let fault = || Fault::plain(ErrorCode::Inconsistent, field, "not below the other side", "swap the sides");
    (high < low).then(|| fault().into())
}

impl WallSurvey {
    /// Every fault of the survey, with its path.
    pub fn faults(&self) -> Vec<Detail> {
        let mut faults = Vec::new();
        for (k, station) in self.stations.iter().enumerate() {
            faults.extend(faults_at(&format!("stations[{k}]"), station));
        }
        let pairs = self.stations.iter().zip(self.stations.iter().skip(1)).enumerate();
        for (k, _) in pairs.filter(|(_, (one, next))| next.along_mm <= one.along_mm) {
            let fault = Fault::plain(ErrorCode::Inconsistent, "along_mm", "a place right of the station before", "");
            faults.push(Detail::from(fault).within(&format!("stations[{}]", k + 1)));
        }
        faults.extend(faults_at("", self));
        faults.extend(self.left_wall.iter().flat_map(|wall| faults_at("left_wall", wall)));
        faults.extend(self.right_wall.iter().flat_map(|wall| faults_at("right_wall", wall)));
        if let (Some(left), Some(right)) = (&self.left_wall, &self.right_wall) {
            let crossed = crossed("corner_at_mm", left.corner_at_mm, right.corner_at_mm);
            faults.extend(crossed.map(|fault| fault.within("right_wall")));
        }
        for (k, one) in self.backing.iter().enumerate() {
            let mut found = faults_at("", one);
            found.extend(crossed("right_mm", one.left_mm, one.right_mm));
            found.extend(crossed("top_mm", one.bottom_mm, one.top_mm));
            faults.extend(found.into_iter().map(|fault| fault.within(&format!("backing[{k}]"))));
        }
        faults
    }

    /// How far the face lies behind the straight line at a place, mm: between two stations on the line through both,
    /// beyond the last one as far as there.
    pub fn behind_at(&self, along_mm: f64) -> f64 {
        let before = self.stations.iter().rev().find(|station| station.along_mm <= along_mm);
        let after = self.stations.iter().find(|station| station.along_mm >= along_mm);
        match (before, after) {
            (Some(one), Some(next)) if next.along_mm > one.along_mm => {
                let share = (along_mm - one.along_mm) / (next.along_mm - one.along_mm);
                one.behind_mm + share * (next.behind_mm - one.behind_mm)
            }
            (Some(one), _) | (None, Some(one)) => one.behind_mm,
            (None, None) => 0.0,
        }
    }

    /// The places between two ends where the face may bend, the ends among them, from left to right, mm.
    pub fn places_between(&self, left_mm: f64, right_mm: f64) -> Vec<f64> {
        let within = self.stations.iter().map(|station| station.along_mm).filter(|x| *x > left_mm && *x < right_mm);
        core::iter::once(left_mm).chain(within).chain(core::iter::once(right_mm)).collect()
    }

    /// The face that stands out most between two ends: how far it lies behind the straight line, mm.
    pub fn least_behind(&self, left_mm: f64, right_mm: f64) -> f64 {
        self.places_between(left_mm, right_mm).into_iter().map(|x| self.behind_at(x)).fold(f64::INFINITY, f64::min)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn survey(stations: &[(f64, f64)]) -> WallSurvey {
        let stations =
            stations.iter().map(|(along_mm, behind_mm)| WallStation { along_mm: *along_mm, behind_mm: *behind_mm });
        WallSurvey {
            face: WallFace::Plaster,
            stations: stations.collect(),
            lean_mm_per_m: 0.0,
            left_wall: None,
            right_wall: None,
            narrowest_way_in_mm: None,
            backing: vec![],
        }
    }

    #[test]
    fn the_face_is_straight_between_stations_and_goes_on_beyond_them() {
        let wavy = survey(&[(0.0, 2.0), (100.0, 6.0), (300.0, -2.0)]);
        let found = [-50.0, 0.0, 50.0, 100.0, 200.0, 300.0, 900.0].map(|x| wavy.behind_at(x));
        assert_eq!(found, [2.0, 2.0, 4.0, 6.0, 2.0, -2.0, -2.0]);
        assert_eq!(wavy.least_behind(-10.0, 150.0), 2.0);
        assert_eq!(wavy.places_between(50.0, 300.0), [50.0, 100.0, 300.0]);
        assert_eq!(survey(&[]).behind_at(1.0), 0.0);
    }

    #[test]
    fn every_fault_of_a_survey_is_named() {
        let mut bad = survey(&[(0.0, 2.0), (0.0, f64::NAN)]);
        bad.left_wall = Some(SideWall { corner_at_mm: 100.0, corner_deg: 10.0 });
        bad.right_wall = Some(SideWall { corner_at_mm: 0.0, corner_deg: 90.0 });
        bad.backing = vec![Backing {
            name: "blocking".to_owned(),
            kind: BackingKind::Blocking,
            left_mm: 0.0,
            right_mm: -1.0,
            bottom_mm: 0.0,
            top_mm: 1.0,
            thickness_mm: 38.0,
        }];
        let paths: Vec<_> = bad.faults().into_iter().map(|fault| fault.path).collect();
        let wanted = [
            "stations[1].behind_mm",
            "stations[1].along_mm",
            "left_wall.corner_deg",
            "right_wall.corner_at_mm",
            "backing[0].right_mm",
        ];
        assert_eq!(paths, wanted);
    }
}
