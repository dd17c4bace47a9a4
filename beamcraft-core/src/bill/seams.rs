//! What the seams and the finish of a plan ask of the workshop: filler, clamps, air.

use crate::error::{Error, Fault};
use crate::finish::{
    ClampedWood, ClampsForSeam, ClampsForSeamInput, SeamFillerInput, SolventEmitted, SolventEmittedInput,
    SolventProduct, clamps_for_seam, seam_filler, solvent_emitted,
};
use crate::limits::limited;
use crate::numeric::real::cos_deg;
use crate::plan::Plan;
use crate::shell::PanelEdge;
use crate::tolerance::SeamTolerance;

/// The clamps at hand, or tape.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<ClampsAtHand>))]
pub struct ClampsAtHand {
    /// Force of one clamp square to the glue line, N; of stretched tape, what a spring balance shows.
    pub clamp_force_n: f64,
    /// Width of the clamp's head along the seam, mm.
    #[cfg_attr(feature = "json", serde(default))]
    pub head_width_mm: f64,
    /// Distance from the clamp's head to the glue line, mm, with the caul between them.
    pub head_to_seam_mm: f64,
    /// What is glued.
    pub wood: ClampedWood,
}

limited!(ClampsAtHand { clamp_force_n: CLAMP_FORCE, head_width_mm: SMALL_LENGTH, head_to_seam_mm: LENGTH });

/// Edge that a seam is named after.
fn edge_of<'p>(plan: &'p Plan, seam: &SeamTolerance) -> Option<&'p PanelEdge> {
    plan.panels.iter().flat_map(|panel| &panel.edges).find(|edge| edge.id.to_string() == seam.name)
}

/// Least and greatest filler in all seams, mL; nothing without a stack-up.
///
/// The share to be filled is the stack-up's; a gap there is between what is burnished and the widest that filler will do.
pub(super) fn filler_ml(plan: &Plan, waste_share: f64) -> Result<Option<(f64, f64)>, Fault> {
    let (Some(tolerance), Some(accuracy)) = (&plan.tolerance, &plan.spec.accuracy) else { return Ok(None) };
    let (mut least_ml, mut greatest_ml) = (0.0, 0.0);
    for seam in &tolerance.stack.seams {
        let Some(edge) = edge_of(plan, seam) else { continue };
        let volume_ml = |gap_mm: f64| {
            seam_filler(&SeamFillerInput {
                seam_length_mm: edge.show_length_mm,
                share_to_fill: seam.sampled.fillable_share,
                gap_mm,
                depth_mm: seam.seam_mm,
                waste_share,
            })
            .map(|filler| filler.volume_ml)
        };
        least_ml += volume_ml(accuracy.burnish_gap_mm)?;
        greatest_ml += volume_ml(accuracy.filler_gap_mm)?;
    }
    Ok(Some((least_ml, greatest_ml)))
}

/// Clamps of the longest mitred seam; nothing without a mitre.
pub(super) fn clamps(plan: &Plan, hand: &ClampsAtHand) -> Result<Option<ClampsForSeam>, Error> {
    let mitred = |panel: &crate::shell::Panel| -> Vec<(f64, f64)> {
        let thickness_mm = panel.thickness_mm;
        let mitres = panel.edges.iter().filter(|edge| edge.tilt_deg != 0.0);
        mitres.map(|edge| (edge.show_length_mm, thickness_mm / cos_deg(edge.tilt_deg))).collect()
    };
    let longest = plan.panels.iter().flat_map(mitred).max_by(|one, other| one.0.total_cmp(&other.0));
    let Some((seam_length_mm, seam_width_mm)) = longest else { return Ok(None) };
    let found = clamps_for_seam(&ClampsForSeamInput {
        seam_length_mm,
        seam_width_mm,
        head_to_seam_mm: hand.head_to_seam_mm,
        head_width_mm: hand.head_width_mm,
        clamp_force_n: hand.clamp_force_n,
        wood: hand.wood,
    });
    found.map(Some).map_err(|fault| Error::from(fault).within("clamps"))
}

/// What the greatest quantity of the finish gives off; nothing without a finish or its label.
pub(super) fn solvent(plan: &Plan, voc_g_per_l: Option<f64>) -> Result<Option<SolventEmitted>, Error> {
    let (Some(finish), Some(voc_g_per_l)) = (&plan.finish, voc_g_per_l) else { return Ok(None) };
    let name = finish.class.name().replace('_', " ");
    let product = SolventProduct { name, volume_l: finish.quantity.most.needed_l, voc_g_per_l, limit_g_per_l: None };
    solvent_emitted(&SolventEmittedInput { products: vec![product] }).map(Some)
}
