//! A body of any form by itself: its panels with every cut, for files and drawings, without a wall or a cleat.

use super::cuts;
use super::result::PanelSawing;
use super::spec::ReportLengths;
use super::within;
use crate::error::{Error, Result, unknown_name};
use crate::finding::{CautionText, Finding};
use crate::geometry::MassProperties;
use crate::saw::SawSpec;
use crate::shell::{FeatureCut, HollowBodyInput, Panel, PanelMass, VeneerEdge, hollow_body};

/// A hollow body of any form and the saw that is to cut it.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
pub struct SawnBodyInput {
    /// Name of the body, for its files and drawings.
    #[cfg_attr(feature = "json", serde(default))]
    pub name: String,
    /// How lengths are written in the drawings.
    #[cfg_attr(feature = "json", serde(default))]
    pub lengths: ReportLengths,
    /// The body: section, legs, boards, ends, joints, features.
    pub body: HollowBodyInput,
    /// The saw and how its owner cuts.
    #[cfg_attr(feature = "json", serde(default))]
    pub saw: SawSpec,
}

/// The panels of a body of any form, each with its cuts.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct SawnBody {
    /// What it was computed from, with every default filled in.
    pub spec: SawnBodyInput,
    /// The panels as solids, leg by leg, in the order of the faces.
    pub panels: Vec<Panel>,
    /// Saw settings, panel by panel, in the order of the panels; grooves and other features are not among the cuts.
    pub cuts: Vec<PanelSawing>,
    /// Volume, centroid and inertia of the wood of all panels; its surface counts seams from both sides.
    pub wood: MassProperties,
    /// Mass, kg; absent without a density.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub mass_kg: Option<f64>,
    /// Mass of every panel; none without a density.
    pub panel_masses: Vec<PanelMass>,
    /// What each feature took out of each panel, and the wood left over it.
    pub features: Vec<FeatureCut>,
    /// Every edge of every panel with a face veneer; none for solid wood.
    pub veneer: Vec<VeneerEdge>,
    /// What the maker should know, worst first.
    pub findings: Vec<Finding>,
    /// The cautions of the cuts in words, and standing ones.
    pub cautions: Vec<CautionText>,
}

impl SawnBody {
    /// The panel with a name, that of its show face, such as `front` or `leg2.side3`.
    ///
    /// # Errors
    /// `unknown_name` where there is none, with the names there are.
    pub fn panel(&self, name: &str) -> Result<&Panel> {
        panel_named(&self.panels, name)
    }
}

/// The panel with a name.
pub(super) fn panel_named<'a>(panels: &'a [Panel], name: &str) -> Result<&'a Panel> {
    let found = panels.iter().find(|panel| panel.id.to_string() == name);
    found.ok_or_else(|| {
        let names: Vec<String> = panels.iter().map(|panel| panel.id.to_string()).collect();
        unknown_name("panel", name, names.iter().map(String::as_str))
    })
}

/// Every panel of a hollow body of any form with every cut: what a plan says about panels and saw, without wall and cleat.
///
/// Files and drawings are made of it as they are of a plan: STEP, STL, glTF, DXF, a sheet and the saw's set-ups for each
/// panel, the section, the panels pulled apart.
///
/// # Equation
/// Those of [`hollow_body`] and [`panel_cuts`](crate::saw::panel_cuts).
///
/// # Limits
/// Those of both. The cuts make the edges of a panel; how a groove, a hole or a scribed edge is made is not among them.
///
/// # Caution
/// Guard and riving knife in place, test cuts in scrap: the cautions of the cuts are part of the result.
///
/// # Errors
/// All faults of the body and of the saw at once, each with its path; `inconsistent` for a bevel that no saw cuts.
///
/// # Source
/// That of its two calculations; checked by `verification/sawn_body`.
///
/// # Examples
/// ```
/// use beamcraft_core::export;
/// use beamcraft_core::plan::{SawnBodyInput, sawn_body};
/// # #[cfg(feature = "json")] {
/// // A wrap of six sides round a post.
/// let spec: SawnBodyInput = beamcraft_core::json::read(r#"{
///   "name": "Post wrap",
///   "body": {"section": {"regular": {"sides": 6, "across_flats_mm": 160}}, "legs": [{"length_mm": 2400}],
///     "boards": [{"face": "side1", "thickness_mm": 18}, {"face": "side2", "thickness_mm": 18},
///                {"face": "side3", "thickness_mm": 18}, {"face": "side4", "thickness_mm": 18},
///                {"face": "side5", "thickness_mm": 18}, {"face": "side6", "thickness_mm": 18}],
///     "left_end": {"kind": "open"}, "right_end": {"kind": "open"}}
/// }"#)?;
/// let body = sawn_body(&spec)?;
/// assert!(body.cuts[0].cuts.iter().any(|cut| (cut.bevel_deg - 30.0).abs() < 1e-9));
/// let step = export::panels_step(&body.spec.name, &body.panels);
/// assert_eq!(step.matches("MANIFOLD_SOLID_BREP").count(), 6);
/// let names = export::drawing_names(&body);
/// assert!(names.contains(&"set_ups_side1".to_owned()));
/// # }
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn sawn_body(input: &SawnBodyInput) -> Result<SawnBody> {
    let body = hollow_body(&input.body).map_err(|error| within(error, "body"));
    let mut faults = body.as_ref().err().map_or_else(Vec::new, |error| error.details().to_vec());
    faults.extend(input.saw.faults().into_iter().map(|fault| fault.within("saw")));
    Error::unless_empty(faults)?;
    let body = body?;
    let panels: Vec<Panel> = body.legs.into_iter().flat_map(|leg| leg.panels).collect();
    let mut findings = body.findings;
    let (cuts, cautions) = cuts::settings(&panels, &input.saw, "body.boards", &mut findings)?;
    findings.sort_by_key(|finding| core::cmp::Reverse(finding.grade));
    Ok(SawnBody {
        spec: input.clone(),
        panels,
        cuts,
        wood: body.wood,
        mass_kg: body.mass_kg,
        panel_masses: body.panel_masses,
        features: body.features,
        veneer: body.veneer,
        findings,
        cautions,
    })
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const SAWN_BODY: crate::json::Calculation = crate::json::calculation!(
    sawn_body: SawnBodyInput => SawnBody, Document,
    "Any hollow body with every cut of every panel: what files and drawings are made of, without wall and cleat"
);

#[cfg(test)]
#[cfg(feature = "json")]
#[path = "sawn_body_tests.rs"]
mod tests;
