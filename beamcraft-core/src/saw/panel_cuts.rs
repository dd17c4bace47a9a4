//! Every cut of one panel, given as numbers or as a panel of a shell.

use super::board::{Board, Flat, Line, Origin};
use super::caution::CutCaution;
use super::cut::PanelCut;
use super::findings::beyond_saw;
use super::machine::SawSpec;
use super::order::{Sawing, Sawn};
use crate::error::{Allowed, Error, ErrorCode, Fault, Result};
use crate::finding::{Caution, CautionText, Finding};
use crate::limits::{faults_at, limited};
use crate::shell::Panel;

/// A corner of a show face, and the edge from it to the next corner.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<ShowCorner>))]
pub struct ShowCorner {
    /// Place along the grain, mm.
    pub u_mm: f64,
    /// Place across the grain, mm.
    pub v_mm: f64,
    /// Bevel of the edge from here to the next corner, degrees from square; positive with the long point on the show face.
    #[cfg_attr(feature = "json", serde(default))]
    pub bevel_deg: f64,
    /// Name of that edge; its number when left out.
    #[cfg_attr(feature = "json", serde(default))]
    pub edge: String,
}

limited!(ShowCorner { u_mm: SIGNED_LENGTH, v_mm: SIGNED_LENGTH, bevel_deg: BEVEL });

/// A panel as numbers, and the saw that is to cut it.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<PanelCutsInput>))]
pub struct PanelCutsInput {
    /// Thickness of the board, mm.
    pub thickness_mm: f64,
    /// Corners of the show face, counter-clockwise seen from outside with the grain to the right.
    pub corners: Vec<ShowCorner>,
    /// The saw and how its owner cuts.
    #[cfg_attr(feature = "json", serde(default))]
    pub saw: SawSpec,
}

limited!(PanelCutsInput { thickness_mm: BOARD_THICKNESS });

/// The cuts of a panel, in an order in which a referencing edge always exists.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct PanelCuts {
    /// Length of the square-edged blank along the grain, mm: both ends square, with the trim at each.
    pub blank_length_mm: f64,
    /// Width of the square-edged blank across the grain, mm: edges jointed and parallel, with the allowance at each that is
    /// still to be ripped.
    pub blank_width_mm: f64,
    /// Every cut: rips before tapers before cuts on the gauge, square edges before bevelled ones.
    pub cuts: Vec<PanelCut>,
    /// Cuts outside the saw's reach, with what makes them after all.
    pub findings: Vec<Finding>,
    /// The cautions of the cuts in words, and standing ones.
    pub cautions: Vec<CautionText>,
}

/// Most corners of a panel; the search for set-ups grows with their square.
const CORNERS_MAX: usize = 40;

/// Every cut of one panel: order, face down, lean, what rides the fence or gauge, fence and stop distances.
///
/// # Equation
/// ```text
/// fence, kept between blade and fence   F = M + D
/// fence, kept beyond the blade          F = M − D − k / cos b
/// stop on the gauge                     S = (D − M m·r) / (m·x) − E
/// marks of a taper                      K = M + (D − X m·x) / (−m·r)
/// touching arris  M = max(c_r, c_r − t tan b_r)      cut at the table  D = c − δ tan b
/// height: flat t      on edge t tan |b|      on a wedge t cos β / cos |b|      planed off: t (tan |b| − tan β)
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | m, r | normals in the face of the cut and of the edge that rides | | from `corners` |
/// | c, c_r | offsets of their arrises on the show face along m and r | mm | from `corners` |
/// | b, b_r | their bevels | degree | `bevel_deg` |
/// | t | thickness | mm | `thickness_mm` |
/// | δ | depth below the show face of the face on the table, 0 or t | mm | |
/// | x, E, X | direction along the riding edge; place of its corner at the stop; of its farthest corners | mm | |
/// | k, β | kerf; largest tilt | mm, degree | `kerf_mm`, `max_tilt_deg` |
///
/// A blade that leans over the kept piece leaves its long point on the table. So on a saw that tilts one way, the end of a
/// board and the sign of its bevel decide which long edge rides the gauge; the face that lies down is free.
///
/// Among the set-ups that make an edge the one is taken that passes the fewest limits of the saw, then, on the fence, the one
/// that suits the maker's habit and traps nothing; on the gauge, a riding edge that is long, square, and with the long point
/// up rather than down. Where the side to which the saw tilts is not told, a set-up may need either: most saws tilt one way,
/// so tell it.
///
/// # Limits
/// Convex panels with straight edges, and a square-edged blank. The stop meets the corner of the end at the riding edge. A
/// limit that the saw leaves out is not checked. Other ways than flat on the table are offered where only the tilt is in the
/// way; a track saw, where anything is.
///
/// # Errors
/// `out_of_range`, `not_finite`, each with its path; `inconsistent` for corners that do not go round counter-clockwise,
/// bevels that leave no inner face, or a saw that contradicts itself.
///
/// # Source
/// Solid geometry, derived in the theory pages; the set-ups are common practice. Checked by `verification/panel_cuts`.
///
/// # Examples
/// ```
/// use beamcraft_core::saw::{PanelCutsInput, SawSpec, ShowCorner, panel_cuts};
/// let corner = |u_mm, v_mm| ShowCorner { u_mm, v_mm, bevel_deg: 45.0, edge: String::new() };
/// let front = panel_cuts(&PanelCutsInput {
///     thickness_mm: 20.0,
///     corners: vec![corner(0.0, 0.0), corner(1800.0, 0.0), corner(1800.0, 185.0), corner(0.0, 185.0)],
///     saw: SawSpec::default(),
/// })?;
/// // The second rip: both edges at 45°, show face up, so the fence stands closer by the thickness.
/// let second = front.cuts[1].set_up.expect("a saw that tilts to 45° makes it");
/// assert!((second.fence_mm.expect("a rip") - 165.0).abs() < 1e-9);
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn panel_cuts(input: &PanelCutsInput) -> Result<PanelCuts> {
    let mut faults = faults_at("", input);
    for (k, corner) in input.corners.iter().enumerate() {
        faults.extend(faults_at(&format!("corners[{k}]"), corner));
    }
    faults.extend(input.saw.faults().into_iter().map(|fault| fault.within("saw")));
    Error::unless_empty(faults)?;
    let (panel, names) = read(input)?;
    cuts_of(&panel, &names, &input.saw).ok_or_else(|| no_panel().into())
}

/// Every cut of a panel of a shell; nothing when an edge lies so flat in the face that no saw cuts it.
///
/// The saw is one without faults.
pub fn cuts_of_panel(panel: &Panel, saw: &SawSpec) -> Option<PanelCuts> {
    let names: Vec<String> = panel.edges.iter().map(|edge| edge.id.to_string()).collect();
    cuts_of(&Board::of_panel(panel)?, &names, saw)
}

fn cuts_of(panel: &Board, names: &[String], saw: &SawSpec) -> Option<PanelCuts> {
    let Sawn { blank_length_mm, blank_width_mm, cuts } = Sawing { panel, names, saw }.cuts()?;
    let findings = cuts.iter().filter_map(|cut| beyond_saw(cut, &cut.edge)).collect();
    let about = |caution: &&CutCaution| cuts.iter().any(|cut| cut.cautions.contains(caution));
    let mut cautions: Vec<CautionText> =
        CutCaution::ALL.iter().filter(about).map(|caution| (*caution).into()).collect();
    cautions.extend([Caution::Saw.into(), Caution::Dust.into()]);
    Some(PanelCuts { blank_length_mm, blank_width_mm, cuts, findings, cautions })
}

fn no_panel() -> Fault {
    Fault::plain(
        ErrorCode::Inconsistent,
        "corners",
        "corners counter-clockwise round a convex show face, and bevels that leave an inner face",
        "turn the order round, or use less bevel",
    )
}

/// The panel and the names of its edges.
fn read(input: &PanelCutsInput) -> Result<(Board, Vec<String>)> {
    let count = input.corners.len();
    if !(3..=CORNERS_MAX).contains(&count) {
        let allowed = Allowed::Text("3 to 40 corners");
        return Err(Fault::number(ErrorCode::Inconsistent, "corners", count as f64, allowed, "").into());
    }
    let mut lines = Vec::with_capacity(count);
    let mut names = Vec::with_capacity(count);
    let next = input.corners.iter().cycle().skip(1);
    for (k, (from, to)) in input.corners.iter().zip(next).enumerate() {
        let (du, dv) = (to.u_mm - from.u_mm, to.v_mm - from.v_mm);
        let length = (du * du + dv * dv).sqrt();
        if length < 1e-6 {
            return Err(no_panel().into());
        }
        let out = Flat::new(dv / length, -du / length);
        let at = out.dot(Flat::new(from.u_mm, from.v_mm));
        lines.push(Line::new(out, at, from.bevel_deg, Origin::Panel(k)));
        names.push(if from.edge.is_empty() { format!("edge {}", k + 1) } else { from.edge.clone() });
    }
    let turns = lines.iter().zip(lines.iter().cycle().skip(1)).all(|(a, b)| a.out.cross(b.out) > 1e-9);
    let board = Board { thickness_mm: input.thickness_mm, lines };
    // A ring that goes round twice has edges that the outline misses.
    if turns && board.outline(0.0).len() == count && board.solid().is_some() {
        Ok((board, names))
    } else {
        Err(no_panel().into())
    }
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const PANEL_CUTS: crate::json::Calculation = crate::json::calculation!(
    panel_cuts: PanelCutsInput => PanelCuts, Document,
    "Every cut of one panel: order, face down, lean, fence and stop distances, and what the saw does not reach"
);

#[cfg(test)]
#[path = "panel_cuts_tests.rs"]
mod tests;
