//! The stack-up of a body: what its seams will look like, and which error matters most.

use core::ops::ControlFlow;

use crate::error::Result;
use crate::finding::{Caution, CautionText};

use super::first_order::{SeamForm, first_order, forms};
use super::sample::{Experiment, SampleProgress, Sampled};
use super::source::ToleranceStackInput;

/// Distribution of a visible gap.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct GapStatistics {
    /// Mean, seams that are closed counting as 0, mm.
    pub mean_mm: f64,
    /// Standard deviation, mm.
    pub sd_mm: f64,
    /// Gap that 5 % of seams keep to, mm.
    pub p5_mm: f64,
    /// Gap that half of the seams keep to, mm.
    pub p50_mm: f64,
    /// Gap that 95 % of seams keep to, mm.
    pub p95_mm: f64,
    /// Gap that 99 % of seams keep to, mm.
    pub p99_mm: f64,
    /// Share of seams closed, or open by no more than can be burnished shut.
    pub burnishable_share: f64,
    /// Share of seams open by more than that, but by no more than filler will do.
    pub fillable_share: f64,
    /// Share of seams open by more than that.
    pub reject_share: f64,
}

/// The closed form of first order: normal errors of the same variances.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct GapFirstOrder {
    /// Mean of the taper, mm; positive opens the show edge, negative the inside.
    pub taper_mean_mm: f64,
    /// Standard deviation of the taper, mm.
    pub taper_sd_mm: f64,
    /// Mean of the offset at the show edge, mm; 0 when drawn tight.
    pub offset_mean_mm: f64,
    /// Standard deviation of the offset, mm.
    pub offset_sd_mm: f64,
    /// Correlation of taper and offset; 0 where one of them does not scatter.
    pub correlation: f64,
    /// Distribution of the visible gap, the largest of 0, taper and offset.
    pub gap: GapStatistics,
}

/// Counts of visible gaps; the first bin holds the closed seams too, the last one all that lies beyond.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct GapHistogram {
    /// Width of a bin, mm; 0 where no seam can stand open.
    pub bin_mm: f64,
    /// Number of samples in each bin, from a gap of 0 upwards.
    pub counts: Vec<u32>,
}

/// What one source of error has in the scatter of a gap.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct SourceShare {
    /// Name of the source.
    pub source: String,
    /// Standard deviation that it alone gives the taper, mm.
    pub taper_sd_mm: f64,
    /// Standard deviation that it alone gives the offset, mm.
    pub offset_sd_mm: f64,
    /// Its share of the variances of taper and offset together.
    pub variance_share: f64,
}

/// What becomes of one seam.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct SeamTolerance {
    /// Name of the seam.
    pub name: String,
    /// Tilt from square that the mitre needs at edge a, without the deliberate over-tilt, degrees.
    pub tilt_a_deg: f64,
    /// Tilt from square that the mitre needs at edge b, without the deliberate over-tilt, degrees.
    pub tilt_b_deg: f64,
    /// Length of the seam across the section, mm.
    pub seam_mm: f64,
    /// The closed form of first order.
    pub first_order: GapFirstOrder,
    /// What the samples say.
    pub sampled: GapStatistics,
    /// Largest gap of all samples, mm.
    pub largest_mm: f64,
    /// Width of the bins from which the percentiles are read, mm.
    pub resolution_mm: f64,
    /// Histogram of the samples.
    pub histogram: GapHistogram,
    /// The sources that reach this seam, the one that matters most first.
    pub ranking: Vec<SourceShare>,
}

/// What becomes of a body's seams.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct ToleranceStack {
    /// Number of samples.
    pub samples: u32,
    /// The seams, in the order of the input.
    pub seams: Vec<SeamTolerance>,
    /// The worst seam of each body: how many whole bodies keep to a gap at every seam.
    pub worst: GapStatistics,
    /// Largest gap of all, mm.
    pub worst_largest_mm: f64,
    /// Histogram of the worst seam of each body.
    pub worst_histogram: GapHistogram,
    /// All sources over all seams, the one that matters most first.
    pub ranking: Vec<SourceShare>,
    /// What to keep in mind at the saw.
    pub cautions: Vec<CautionText>,
}

/// Visible gaps at all seams of a body from scattering errors: closed form, samples, and which error matters most.
///
/// # Equation
/// ```text
/// D_i = 2 over_i + Σ_j d_ij ξ_j        o_i = Σ_j o_ij ξ_j         gap_i = max(0, −2 f_i sin(D_i / 2), o_i)
/// first order: −f D and o are normal with variances Σ_j d² v_j and Σ_j o² v_j, correlated where they share a source
/// share of source j = (f² d_j² + o_j²) v_j / Σ_k (f² d_k² + o_k²) v_k
/// ```
/// | symbol | meaning | here |
/// |---|---|---|
/// | D, o, f | divergence, offset and length of a seam, as in `seam_gap` | `seams` |
/// | ξ_j, v_j | error of source j and its variance | `angle_sources`, `length_sources` |
/// | d, o | what an error of 1 does to divergence and offset | `seam_gap` |
///
/// # Limits
/// As `seam_gap`. A source named by several edges has one error in a sample; errors that are not shared need a source
/// each. Percentiles of the samples are read from 2 048 bins between 0 and eight standard deviations (`resolution_mm`);
/// the samples' own scatter of a share p is `sqrt(p (1 − p) / samples)`. The closed form is exact for normal errors at
/// small angles and takes an even scatter as a normal one of the same variance.
///
/// # Errors
/// `out_of_range`, `not_finite`, each with its path; `duplicate_field` for a name given twice; `unknown_name` for a source
/// that is not in its list; `inconsistent` for a filler threshold below the one for burnishing, errors of angle beyond
/// 30°, a mitre that no saw cuts, or more work than some minutes.
///
/// # Accuracy
/// The same digits for the same seed on every machine, with any number of threads. Random numbers: Philox-4x32-10 with an
/// inverse normal to one part in 10⁹.
///
/// # Source
/// Propagation of variances, derived in the theory pages; checked by `verification/tolerance`.
///
/// # Examples
/// ```
/// use beamcraft_core::tolerance::*;
/// let edge = |panel: &str, tilt: &str| StackEdge {
///     panel: panel.to_owned(), thickness_mm: 20.0, width_mm: 180.0, cut_side: CutSide::ShowFaceDown,
///     tilt_sources: vec![tilt.to_owned()], size_sources: vec![], size_share: 1.0, thickness_sources: vec![],
///     cup_sources: vec![], bow_sources: vec![],
/// };
/// let stack = tolerance_stack(&ToleranceStackInput {
///     seams: vec![StackSeam {
///         name: "front|top".to_owned(), a: edge("front", "tilt"), b: edge("top", "tilt"), corner_deg: 90.0,
///         corner_sources: vec![], hold: SeamHold::DrawnTight, over_tilt_deg: 0.0,
///     }],
///     angle_sources: vec![AngleSource {
///         name: "tilt".to_owned(), distribution: ErrorDistribution::Normal, spread_deg: 0.1, bias_deg: 0.0,
///     }],
///     length_sources: vec![], burnish_gap_mm: 0.1, filler_gap_mm: 0.3, samples: 20_000, seed: 1, threads: 1,
/// })?;
/// let seam = &stack.seams[0];
/// // 1.645 · 2 · 28.28 mm · 0.1° = 0.162 mm
/// assert!((seam.first_order.gap.p95_mm - 0.1624).abs() < 1e-4);
/// assert!((seam.sampled.p95_mm - 0.1624).abs() < 0.005);
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn tolerance_stack(input: &ToleranceStackInput) -> Result<ToleranceStack> {
    match tolerance_stack_with_progress(input, &mut |_| ControlFlow::Continue(()))? {
        Some(stack) => Ok(stack),
        // The progress above never breaks off; an empty list of faults cannot be an error.
        None => Err(crate::error::Fault::plain(crate::error::ErrorCode::Panic, "", "a call that ends", "").into()),
    }
}

/// As [`tolerance_stack`], telling how far it has come; gives nothing when `progress` breaks off.
///
/// `progress` is called on the caller's own thread, some times a second.
///
/// # Errors
/// As [`tolerance_stack`].
pub fn tolerance_stack_with_progress(
    input: &ToleranceStackInput,
    progress: &mut dyn FnMut(SampleProgress) -> ControlFlow<()>,
) -> Result<Option<ToleranceStack>> {
    input.check()?;
    let forms = forms(input)?;
    let closed: Vec<GapFirstOrder> =
        forms.iter().map(|form| first_order(form, input.burnish_gap_mm, input.filler_gap_mm)).collect();
    let names = source_names(input);
    let experiment = experiment(input, &forms, &closed);
    let Some(mut sampled) = experiment.run(input.threads, progress)? else { return Ok(None) };
    let Some(worst) = sampled.pop() else { return Ok(None) };
    let parts = input.seams.iter().zip(&forms).zip(closed).zip(sampled);
    let seams = parts.map(|(((seam, form), first_order), sampled)| {
        let Sampled { gap, largest_mm, resolution_mm, bin_mm, counts } = sampled;
        let [tilt_a_deg, tilt_b_deg] = form.tilts_deg;
        SeamTolerance {
            name: seam.name.clone(),
            tilt_a_deg,
            tilt_b_deg,
            seam_mm: form.seam_mm,
            first_order,
            sampled: gap,
            largest_mm,
            resolution_mm,
            histogram: GapHistogram { bin_mm, counts },
            ranking: ranking(core::slice::from_ref(form), &names, Unfelt::LeftOut),
        }
    });
    Ok(Some(ToleranceStack {
        samples: input.samples,
        seams: seams.collect(),
        worst: worst.gap,
        worst_largest_mm: worst.largest_mm,
        worst_histogram: GapHistogram { bin_mm: worst.bin_mm, counts: worst.counts },
        ranking: ranking(&forms, &names, Unfelt::Listed),
        cautions: vec![CautionText::from(Caution::Saw)],
    }))
}

fn source_names(input: &ToleranceStackInput) -> Vec<&str> {
    let angles = input.angle_sources.iter().map(|source| source.name.as_str());
    angles.chain(input.length_sources.iter().map(|source| source.name.as_str())).collect()
}

fn experiment<'a>(input: &ToleranceStackInput, forms: &'a [SeamForm], closed: &[GapFirstOrder]) -> Experiment<'a> {
    let angles = input.angle_sources.iter().map(|source| source.distribution);
    let distributions = angles.chain(input.length_sources.iter().map(|source| source.distribution));
    let felt = |place: usize| forms.iter().any(|form| form.terms.iter().any(|term| term.source == place));
    let sources = distributions.enumerate().map(|(k, distribution)| felt(k).then_some(distribution)).collect();
    // Eight deviations are beyond anything that 10⁸ samples show.
    let top = |one: &GapFirstOrder| {
        let taper = one.taper_mean_mm + 8.0 * one.taper_sd_mm;
        taper.max(one.offset_mean_mm + 8.0 * one.offset_sd_mm).max(0.0)
    };
    let mut tops_mm: Vec<f64> = closed.iter().map(top).collect();
    tops_mm.push(tops_mm.iter().fold(0.0, |most: f64, top| most.max(*top)));
    let mut pivots_mm: Vec<f64> = closed.iter().map(|one| one.gap.mean_mm).collect();
    pivots_mm.push(pivots_mm.iter().fold(0.0, |most: f64, pivot| most.max(*pivot)));
    Experiment {
        forms,
        sources,
        tops_mm,
        pivots_mm,
        burnish_mm: input.burnish_gap_mm,
        filler_mm: input.filler_gap_mm,
        seed: input.seed,
        samples: input.samples,
    }
}

/// What becomes of sources that reach no seam.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Unfelt {
    LeftOut,
    Listed,
}

/// Sources by their part in the variance over the given seams, largest first, then in the order of the input.
fn ranking(forms: &[SeamForm], names: &[&str], unfelt: Unfelt) -> Vec<SourceShare> {
    let mut parts = vec![(0.0_f64, 0.0_f64); names.len()];
    for form in forms {
        for term in &form.terms {
            if let Some((taper, offset)) = parts.get_mut(term.source) {
                let (more_taper, more_offset) = term.variances(form.seam_mm);
                *taper += more_taper;
                *offset += more_offset;
            }
        }
    }
    let whole: f64 = parts.iter().map(|(taper, offset)| taper + offset).sum();
    let mut shares: Vec<SourceShare> = names
        .iter()
        .zip(&parts)
        .filter(|(_, (taper, offset))| unfelt == Unfelt::Listed || taper + offset > 0.0)
        .map(|(name, (taper, offset))| SourceShare {
            source: (*name).to_owned(),
            taper_sd_mm: taper.sqrt(),
            offset_sd_mm: offset.sqrt(),
            variance_share: if whole > 0.0 { (taper + offset) / whole } else { 0.0 },
        })
        .collect();
    shares.sort_by(|a, b| b.variance_share.total_cmp(&a.variance_share));
    shares
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const TOLERANCE_STACK: crate::json::Calculation = crate::json::calculation!(
    tolerance_stack: ToleranceStackInput => ToleranceStack, Document,
    "Visible gaps at all seams of a body from scattering errors, in closed form and by samples, and which error matters most"
);

#[cfg(test)]
#[path = "stack_tests.rs"]
mod tests;
