//! The opening in the wall and the appliance in it.

use crate::error::{Detail, ErrorCode, Fault};
use crate::limits::{faults_at, limited};

/// An opening below or beside the body.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<FireOpening>))]
pub struct FireOpening {
    /// Left edge of the opening itself from the plumb line, mm; not the edge of a surround.
    pub left_mm: f64,
    /// Width of the opening, mm.
    pub width_mm: f64,
    /// Top edge of the opening itself above the floor, mm; not the edge of a surround.
    pub top_above_floor_mm: f64,
    /// How far the face around the opening stands out from the wall, mm.
    #[cfg_attr(feature = "json", serde(default))]
    pub face_out_mm: f64,
}

limited!(FireOpening { left_mm: SIGNED_LENGTH, width_mm: LENGTH, top_above_floor_mm: LENGTH, face_out_mm: LENGTH });

/// What burns or heats in the opening.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum ApplianceKind {
    /// An open fireplace of masonry built on site.
    MasonryFireplace,
    /// A listed, factory-built fireplace, insert or stove.
    ListedUnit,
    /// An electric unit.
    ElectricUnit,
    /// A gas unit.
    GasUnit,
    /// Nothing that heats.
    None,
}

/// From where an appliance's instructions measure the height of a shelf.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum ListingDatum {
    /// From the top of the opening.
    TopOfOpening,
    /// From the top or hood of the appliance.
    TopOfAppliance,
    /// From the base of the appliance.
    BaseOfAppliance,
}

/// One step of the chart in an appliance's instructions.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<ListingStep>))]
pub struct ListingStep {
    /// Depth of a shelf, mm.
    pub depth_mm: f64,
    /// Least height for that depth above the datum of the chart, mm.
    pub least_height_mm: f64,
}

limited!(ListingStep { depth_mm: LENGTH, least_height_mm: LENGTH });

/// The chart of shelf depth against least height in an appliance's instructions, copied from them by the user.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
pub struct ListingChart {
    /// From where the chart measures heights.
    pub datum: ListingDatum,
    /// Its steps, by rising depth.
    pub steps: Vec<ListingStep>,
}

impl ListingChart {
    /// Every fault of the chart, with its path.
    pub fn faults(&self) -> Vec<Detail> {
        let mut faults = Vec::new();
        for (k, step) in self.steps.iter().enumerate() {
            faults.extend(faults_at(&format!("steps[{k}]"), step));
        }
        if self.steps.is_empty() {
            let cure = "leave the chart out when there is none";
            faults.push(Fault::plain(ErrorCode::MissingField, "steps", "at least one step", cure).into());
        }
        let pairs = self.steps.iter().zip(self.steps.iter().skip(1)).enumerate();
        for (k, _) in pairs.filter(|(_, (one, next))| next.depth_mm <= one.depth_mm) {
            let fault = Fault::plain(ErrorCode::Inconsistent, "depth_mm", "a greater depth than the step before", "");
            faults.push(Detail::from(fault).within(&format!("steps[{}]", k + 1)));
        }
        faults
    }
}

/// The appliance in the opening.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
pub struct Appliance {
    /// What it is.
    pub kind: ApplianceKind,
    /// The chart of its instructions, where there is one.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub listing: Option<ListingChart>,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_chart_has_rising_steps() {
        let step = |depth_mm, least_height_mm| ListingStep { depth_mm, least_height_mm };
        let chart = |steps| ListingChart { datum: ListingDatum::TopOfOpening, steps };
        assert!(chart(vec![step(50.0, 200.0), step(100.0, 300.0)]).faults().is_empty());
        assert_eq!(chart(vec![]).faults().len(), 1);
        let faults = chart(vec![step(100.0, 300.0), step(100.0, 200.0), step(f64::NAN, 1.0)]).faults();
        let paths: Vec<_> = faults.iter().map(|fault| fault.path.as_str()).collect();
        assert_eq!(paths, ["steps[2].depth_mm", "steps[1].depth_mm"]);
    }
}
