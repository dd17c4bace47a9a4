//! The saw as its owner describes it, and how its owner cuts.

use crate::error::{Allowed, Detail, ErrorCode, Fault};
use crate::limits::{faults_at, limited};
use crate::numeric::real::sin_cos_deg;

/// The saw that cuts the bevels.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields, default))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<SawSpec>))]
pub struct SawSpec {
    /// Width of the cut, mm; 3.2 (1/8 in) is common practice for a full-kerf blade.
    pub kerf_mm: f64,
    /// Largest blade tilt from square, degrees; 45 is common practice.
    pub max_tilt_deg: f64,
    /// Width left for the rip of a long edge, mm; 6 is a choice, enough to plane a sprung edge straight.
    pub rip_allowance_mm: f64,
    /// Length left at each end of a blank, mm; 25 is a choice, enough to be clear of checks at the end.
    pub end_trim_mm: f64,
    /// Which face lies up when a long edge is bevelled.
    pub show_face: ShowFace,
    /// What the saw reaches beyond its tilt.
    pub machine: SawMachine,
}

limited!(SawSpec { kerf_mm: KERF, max_tilt_deg: SAW_TILT, rip_allowance_mm: SMALL_LENGTH, end_trim_mm: SMALL_LENGTH });

impl Default for SawSpec {
    fn default() -> Self {
        Self {
            kerf_mm: 3.2,
            max_tilt_deg: 45.0,
            rip_allowance_mm: 6.0,
            end_trim_mm: 25.0,
            show_face: ShowFace::Up,
            machine: SawMachine::default(),
        }
    }
}

impl SawSpec {
    /// Every fault: ranges, the machine, and what no single range shows.
    pub fn faults(&self) -> Vec<Detail> {
        let mut faults = faults_at("", self);
        faults.extend(self.machine.faults().into_iter().map(|fault| fault.within("machine")));
        faults
    }

    /// Largest tilt with the top of the blade to a side, degrees.
    pub(super) fn tilt_towards(&self, side: BladeSide) -> f64 {
        match self.machine.leans {
            Some(usual) if usual != side => self.machine.back_tilt_deg,
            _ => self.max_tilt_deg,
        }
    }
}

/// Which way the show face lies on the saw table.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum ShowFace {
    /// Show face up, blade leaning away from the fence.
    #[default]
    Up,
    /// Show face down, blade leaning towards the fence: width free of thickness error, but the piece is trapped.
    Down,
}

/// A side of the blade, seen by who feeds the saw.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum BladeSide {
    /// Left of the blade.
    Left,
    /// Right of the blade.
    Right,
}

impl BladeSide {
    pub(super) const BOTH: [Self; 2] = [Self::Right, Self::Left];

    /// The other side.
    pub const fn other(self) -> Self {
        match self {
            Self::Left => Self::Right,
            Self::Right => Self::Left,
        }
    }
}

/// A track saw: a saw that is guided along a rail on the board.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<TrackSaw>))]
pub struct TrackSaw {
    /// Largest tilt from square, degrees.
    pub max_tilt_deg: f64,
    /// Depth of cut at no tilt, through the rail, mm.
    pub cut_depth_mm: f64,
    /// Depth of cut at 45°, mm; by the cosine when left out.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub cut_depth_45_mm: Option<f64>,
}

limited!(TrackSaw { max_tilt_deg: SAW_TILT, cut_depth_mm: SMALL_LENGTH, cut_depth_45_mm: SMALL_LENGTH });

/// What a table saw reaches, beyond its largest tilt; a limit that is left out is not checked.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields, default))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<SawMachine>))]
pub struct SawMachine {
    /// Side to which the top of the blade tilts; when left out, either side counts as possible.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub leans: Option<BladeSide>,
    /// Tilt past square to the other side, degrees; 0 for a saw that tilts one way.
    pub back_tilt_deg: f64,
    /// Greatest cut height with an upright blade, mm.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub cut_height_mm: Option<f64>,
    /// Greatest cut height at 45°, mm; by the cosine when left out.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub cut_height_45_mm: Option<f64>,
    /// Diameter of the blade, mm; with `arbor_below_mm` it gives the cut height where that is left out.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub blade_diameter_mm: Option<f64>,
    /// Least distance of the blade's axis below the table, blade fully up, mm.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub arbor_below_mm: Option<f64>,
    /// Greatest distance of the fence right of the blade, mm.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub rip_right_mm: Option<f64>,
    /// Greatest distance of the fence left of the blade, mm; the fence stays at the right when left out.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub rip_left_mm: Option<f64>,
    /// Longest cut of the mitre gauge or sled: from its fence to the blade, mm.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub crosscut_mm: Option<f64>,
    /// Largest angle of the mitre gauge or sled from a square cut, degrees.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub max_gauge_deg: Option<f64>,
    /// Height of the fence, mm.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub fence_height_mm: Option<f64>,
    /// Height of the tall auxiliary fence, mm.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub tall_fence_mm: Option<f64>,
    /// Support behind the blade: table and outfeed, mm.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub outfeed_mm: Option<f64>,
    /// Width between fence and blade below which a piece counts as narrow, mm; 75 is a choice, no published rule.
    pub narrow_mm: f64,
    /// Length below which a board counts as short for the fence, mm; 300 is a choice, no published rule.
    pub short_mm: f64,
    /// Least length on the table of a board that stands on edge, mm; 100 is a choice, no published rule.
    pub on_edge_base_mm: f64,
    /// Most that is planed off by hand after a rip short of its bevel, mm; 3 is a choice, no published rule.
    pub planing_mm: f64,
    /// A track saw in the shop.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub track_saw: Option<TrackSaw>,
}

limited!(SawMachine {
    back_tilt_deg: BACK_TILT,
    cut_height_mm: SMALL_LENGTH,
    cut_height_45_mm: SMALL_LENGTH,
    blade_diameter_mm: BLADE_DIAMETER,
    arbor_below_mm: SMALL_LENGTH,
    rip_right_mm: LENGTH,
    rip_left_mm: LENGTH,
    crosscut_mm: LENGTH,
    max_gauge_deg: GAUGE_RANGE,
    fence_height_mm: SMALL_LENGTH,
    tall_fence_mm: LENGTH,
    outfeed_mm: LENGTH,
    narrow_mm: SMALL_LENGTH,
    short_mm: LENGTH,
    on_edge_base_mm: SMALL_LENGTH,
    planing_mm: SMALL_LENGTH,
});

impl Default for SawMachine {
    fn default() -> Self {
        Self {
            leans: None,
            back_tilt_deg: 0.0,
            cut_height_mm: None,
            cut_height_45_mm: None,
            blade_diameter_mm: None,
            arbor_below_mm: None,
            rip_right_mm: None,
            rip_left_mm: None,
            crosscut_mm: None,
            max_gauge_deg: None,
            fence_height_mm: None,
            tall_fence_mm: None,
            outfeed_mm: None,
            narrow_mm: 75.0,
            short_mm: 300.0,
            on_edge_base_mm: 100.0,
            planing_mm: 3.0,
            track_saw: None,
        }
    }
}

/// Height that a blade reaches above the table at a tilt: its rim turns about an axis in the table's surface.
fn height_at(upright_mm: f64, at_45_mm: Option<f64>, tilt_deg: f64) -> f64 {
    let (sine, cosine) = sin_cos_deg(tilt_deg.abs());
    // What lies beside the axis of turning sinks as the blade tilts; the height at 45° tells how much.
    let beside = at_45_mm.map_or(0.0, |at_45| upright_mm - core::f64::consts::SQRT_2 * at_45);
    (upright_mm * cosine - beside * sine).min(upright_mm).max(0.0)
}

impl SawMachine {
    /// Cut height at a tilt, mm; nothing when the saw was not described that far.
    pub fn cut_height_at_mm(&self, tilt_deg: f64) -> Option<f64> {
        Some(height_at(self.upright_height_mm()?, self.cut_height_45_mm, tilt_deg))
    }

    fn upright_height_mm(&self) -> Option<f64> {
        let by_blade = || Some(0.5 * self.blade_diameter_mm? - self.arbor_below_mm?);
        self.cut_height_mm.or_else(by_blade)
    }

    /// Greatest distance of the fence at a side, mm; nothing where it was not described.
    pub(super) const fn rip_capacity_mm(&self, side: BladeSide) -> Option<f64> {
        match side {
            BladeSide::Right => self.rip_right_mm,
            BladeSide::Left => self.rip_left_mm,
        }
    }

    /// Height of the fence with its tall face, mm; nothing when neither was described.
    pub(super) fn highest_fence_mm(&self) -> Option<f64> {
        [self.fence_height_mm, self.tall_fence_mm].into_iter().flatten().reduce(f64::max)
    }

    /// Every fault: ranges, the parts, and what no single range shows.
    pub fn faults(&self) -> Vec<Detail> {
        let mut faults = faults_at("", self);
        faults.extend(self.track_saw.iter().flat_map(|track| faults_at("track_saw", track)));
        if faults.is_empty() {
            faults.extend(self.contradictions());
        }
        faults
    }

    fn contradictions(&self) -> Vec<Detail> {
        let wrong = |field, value, allowed| {
            Detail::from(Fault::number(ErrorCode::Inconsistent, field, value, Allowed::Text(allowed), ""))
        };
        let mut faults = Vec::new();
        if let (Some(diameter), Some(below)) = (self.blade_diameter_mm, self.arbor_below_mm)
            && 0.5 * diameter < below
        {
            faults.push(wrong("arbor_below_mm", below, "less than half the diameter of the blade"));
        }
        let lower = "no more than with the blade upright";
        if let (Some(upright), Some(at_45)) = (self.upright_height_mm(), self.cut_height_45_mm)
            && at_45 > upright
        {
            faults.push(wrong("cut_height_45_mm", at_45, lower));
        }
        if let Some((upright, at_45)) = self.track_saw.and_then(|saw| Some((saw.cut_depth_mm, saw.cut_depth_45_mm?)))
            && at_45 > upright
        {
            faults.push(wrong("track_saw.cut_depth_45_mm", at_45, lower));
        }
        faults
    }
}

impl TrackSaw {
    /// Depth of cut at a tilt, mm.
    pub fn cut_depth_at_mm(&self, tilt_deg: f64) -> f64 {
        height_at(self.cut_depth_mm, self.cut_depth_45_mm, tilt_deg)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_cut_height_follows_the_tilt() {
        // Common practice, no source: a 10 in. saw cuts 3 1/8 in. upright and 2 1/8 in. to 2 1/4 in. at 45°.
        let saw = SawMachine { blade_diameter_mm: Some(254.0), arbor_below_mm: Some(47.6), ..SawMachine::default() };
        assert_eq!(saw.cut_height_at_mm(0.0), Some(79.4));
        let at_45 = saw.cut_height_at_mm(45.0).unwrap();
        assert!((54.0..=57.2).contains(&at_45), "{at_45}");
        let told = SawMachine { cut_height_45_mm: Some(54.0), ..saw };
        assert!((told.cut_height_at_mm(45.0).unwrap() - 54.0).abs() < 1e-12);
        assert_eq!(told.cut_height_at_mm(0.0), Some(79.4));
        assert_eq!(SawMachine::default().cut_height_at_mm(0.0), None);
    }

    #[test]
    fn a_saw_that_contradicts_itself_is_refused_field_by_field() {
        let track = TrackSaw { max_tilt_deg: 45.0, cut_depth_mm: 50.0, cut_depth_45_mm: Some(51.0) };
        let saw = SawMachine {
            cut_height_45_mm: Some(80.0),
            blade_diameter_mm: Some(200.0),
            arbor_below_mm: Some(120.0),
            cut_height_mm: Some(70.0),
            track_saw: Some(track),
            ..SawMachine::default()
        };
        let paths: Vec<_> = saw.faults().into_iter().map(|fault| fault.path).collect();
        assert_eq!(paths, ["arbor_below_mm", "cut_height_45_mm", "track_saw.cut_depth_45_mm"]);
        let out = SawMachine {
            rip_right_mm: Some(f64::NAN),
            track_saw: Some(TrackSaw { max_tilt_deg: 90.0, ..track }),
            ..saw
        };
        let paths: Vec<_> = out.faults().into_iter().map(|fault| fault.path).collect();
        assert_eq!(paths, ["rip_right_mm", "track_saw.max_tilt_deg"]);
    }
}
