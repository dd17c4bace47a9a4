//! What sheets of panels are drawn of: a plan, or a body with its cuts.

use super::text::fixed;
use crate::plan::{PanelSawing, Plan, ReportLengths, SawnBody};
use crate::shell::Panel;

/// Panels with their cuts, and how they are written: taken from a plan or from a [`SawnBody`].
#[derive(Clone, Copy, Debug)]
pub struct Drawn<'a> {
    pub(super) name: &'a str,
    pub(super) lengths: ReportLengths,
    pub(super) panels: &'a [Panel],
    pub(super) cuts: &'a [PanelSawing],
    pub(super) kerf_mm: f64,
    pub(super) wood: Wood<'a>,
}

/// What is known of the wood.
#[derive(Clone, Copy, Debug)]
pub(super) enum Wood<'a> {
    /// Its species, moisture and density.
    Species { name: &'a str, moisture_pct: f64, density_kg_m3: f64 },
    /// Its density.
    Density(f64),
    /// Nothing.
    Unknown,
}

impl<'a> From<&'a Plan> for Drawn<'a> {
    fn from(plan: &'a Plan) -> Self {
        Self {
            name: &plan.spec.name,
            lengths: plan.spec.lengths,
            panels: &plan.panels,
            cuts: &plan.cuts,
            kerf_mm: plan.spec.saw.kerf_mm,
            wood: Wood::Species {
                name: &plan.spec.wood.species,
                moisture_pct: plan.spec.wood.moisture_pct,
                density_kg_m3: plan.mass.density_kg_m3,
            },
        }
    }
}

impl<'a> From<&'a SawnBody> for Drawn<'a> {
    fn from(body: &'a SawnBody) -> Self {
        Self {
            name: &body.spec.name,
            lengths: body.spec.lengths,
            panels: &body.panels,
            cuts: &body.cuts,
            kerf_mm: body.spec.saw.kerf_mm,
            wood: body.spec.body.density_kg_m3.map_or(Wood::Unknown, Wood::Density),
        }
    }
}

impl Wood<'_> {
    /// A line about so many cubic metres of it.
    pub(super) fn of(self, volume_m3: f64) -> String {
        match self {
            Self::Species { name, moisture_pct, density_kg_m3 } => format!(
                "Wood: {name}, about {} kg at {} % moisture.",
                fixed(volume_m3 * density_kg_m3, 1),
                fixed(moisture_pct, 1)
            ),
            Self::Density(density_kg_m3) => {
                format!("Wood: about {} kg at {} kg/m³.", fixed(volume_m3 * density_kg_m3, 1), fixed(density_kg_m3, 0))
            }
            Self::Unknown => format!("Wood: {} dm³.", fixed(1e3 * volume_m3, 2)),
        }
    }
}
