//! A seam as a linear form of its errors, and what normal errors make of it.

use crate::error::{Detail, Error, ErrorCode, Fault, Result};
use crate::numeric::normal::{normal_density, normal_quantile, normal_share};
use crate::numeric::real::radians;

use super::seam::{EdgeShape, LARGEST_DIVERGENCE_RAD, SeamHold, cuttable_pair};
use super::source::{StackEdge, StackSeam, ToleranceStackInput};
use super::stack::{GapFirstOrder, GapStatistics};

/// What one source does to a seam, for a deviate of 1: one standard deviation, or the end of an even range.
#[derive(Clone, Copy, Debug)]
pub(super) struct Term {
    /// Place of the source, angle sources first.
    pub(super) source: usize,
    pub(super) divergence_rad: f64,
    pub(super) offset_mm: f64,
    /// Variance of the deviate.
    pub(super) unit_variance: f64,
}

impl Term {
    /// Variances of the taper and of the offset.
    pub(super) fn variances(&self, seam_mm: f64) -> (f64, f64) {
        let taper_mm = seam_mm * self.divergence_rad;
        (self.unit_variance * taper_mm * taper_mm, self.unit_variance * self.offset_mm * self.offset_mm)
    }
}

/// A seam: its divergence and its offset as sums over sources.
#[derive(Clone, Debug)]
pub(super) struct SeamForm {
    pub(super) tilts_deg: [f64; 2],
    pub(super) seam_mm: f64,
    pub(super) hold: SeamHold,
    pub(super) divergence_rad: f64,
    pub(super) offset_mm: f64,
    pub(super) terms: Vec<Term>,
}

/// Divergence and offset that one source adds, for an error of 1 in its own unit.
#[derive(Clone, Copy, Default)]
struct Weight {
    divergence_rad: f64,
    offset_mm: f64,
}

/// The forms of all seams of an input that has passed its checks.
pub(super) fn forms(input: &ToleranceStackInput) -> Result<Vec<SeamForm>> {
    let mut faults = Vec::new();
    let mut forms = Vec::new();
    for (k, seam) in input.seams.iter().enumerate() {
        match form(input, seam) {
            Ok(form) => forms.push(form),
            Err(fault) => faults.push(Detail::from(fault).within(&format!("seams[{k}]"))),
        }
    }
    Error::unless_empty(faults)?;
    Ok(forms)
}

fn form(input: &ToleranceStackInput, seam: &StackSeam) -> core::result::Result<SeamForm, Fault> {
    let pair = cuttable_pair(seam.a.thickness_mm, seam.b.thickness_mm, seam.corner_deg)?;
    let shape =
        |edge: &StackEdge, tilt_deg| EdgeShape::new(tilt_deg, pair.seam_mm, edge.width_mm, edge.cut_side, seam.hold);
    let edges = [(&seam.a, shape(&seam.a, pair.tilt_a_deg)), (&seam.b, shape(&seam.b, pair.tilt_b_deg))];
    let per_degree = radians(1.0);
    // Aimed at: both edges over-tilted alike.
    let mut mean = Weight { divergence_rad: 2.0 * radians(seam.over_tilt_deg), offset_mm: 0.0 };
    mean.offset_mm +=
        edges.iter().map(|(_, shape)| shape.offset_per_tilt_mm * radians(seam.over_tilt_deg)).sum::<f64>();
    let mut terms = Vec::new();
    let mut take = |source: usize, weight: Weight, spread: f64, bias: f64, unit_variance: f64| {
        mean.divergence_rad += weight.divergence_rad * bias;
        mean.offset_mm += weight.offset_mm * bias;
        let term = Term {
            source,
            divergence_rad: weight.divergence_rad * spread,
            offset_mm: weight.offset_mm * spread,
            unit_variance,
        };
        if term.divergence_rad != 0.0 || term.offset_mm != 0.0 {
            terms.push(term);
        }
    };
    for (k, source) in input.angle_sources.iter().enumerate() {
        let mut weight = Weight::default();
        if seam.corner_sources.contains(&source.name) {
            weight.divergence_rad += per_degree;
        }
        for (_, shape) in edges.iter().filter(|(edge, _)| edge.tilt_sources.contains(&source.name)) {
            weight.divergence_rad += per_degree;
            weight.offset_mm += per_degree * shape.offset_per_tilt_mm;
        }
        take(k, weight, source.spread_deg, source.bias_deg, source.distribution.unit_variance());
    }
    for (k, source) in input.length_sources.iter().enumerate() {
        let mut weight = Weight::default();
        for (edge, shape) in &edges {
            let [size, thickness, cup, bow] =
                edge.length_lists().map(|(_, names)| if names.contains(&source.name) { 1.0 } else { 0.0 });
            weight.divergence_rad += cup * shape.divergence_per_cup;
            weight.offset_mm += size * edge.size_share * shape.offset_per_size
                + thickness * shape.offset_per_thickness
                + bow * shape.offset_per_bow;
        }
        let place = input.angle_sources.len() + k;
        take(place, weight, source.spread_mm, source.bias_mm, source.distribution.unit_variance());
    }
    let form = SeamForm {
        tilts_deg: [pair.tilt_a_deg, pair.tilt_b_deg],
        seam_mm: pair.seam_mm,
        hold: seam.hold,
        divergence_rad: mean.divergence_rad,
        offset_mm: mean.offset_mm,
        terms,
    };
    let spread = form.terms.iter().map(|term| term.unit_variance * term.divergence_rad * term.divergence_rad);
    if form.divergence_rad.abs() + 8.0 * spread.sum::<f64>().sqrt() > LARGEST_DIVERGENCE_RAD {
        let allowed = "errors of tilt, corner and cup that stay within 30 degrees over eight standard deviations";
        return Err(Fault::plain(ErrorCode::Inconsistent, "", allowed, ""));
    }
    Ok(form)
}

/// Two normal variables whose larger one, where it is above zero, is the visible gap.
#[derive(Clone, Copy, Debug)]
struct Pair {
    taper_mean: f64,
    taper_sd: f64,
    offset_mean: f64,
    offset_sd: f64,
    correlation: f64,
    hold: SeamHold,
}

/// What normal errors of first order make of a seam.
pub(super) fn first_order(form: &SeamForm, burnish_mm: f64, filler_mm: f64) -> GapFirstOrder {
    let f = form.seam_mm;
    let (mut taper, mut offset, mut both) = (0.0, 0.0, 0.0);
    for term in &form.terms {
        let (taper_part, offset_part) = term.variances(f);
        taper += taper_part;
        offset += offset_part;
        both -= term.unit_variance * f * term.divergence_rad * term.offset_mm;
    }
    let (taper_sd, offset_sd) = (taper.sqrt(), offset.sqrt());
    let product = taper_sd * offset_sd;
    let correlation = if product > 0.0 { (both / product).clamp(-1.0, 1.0) } else { 0.0 };
    let pair = Pair {
        taper_mean: 0.0 - f * form.divergence_rad,
        taper_sd,
        offset_mean: form.offset_mm,
        offset_sd,
        correlation,
        hold: form.hold,
    };
    GapFirstOrder {
        taper_mean_mm: pair.taper_mean,
        taper_sd_mm: taper_sd,
        offset_mean_mm: pair.offset_mean,
        offset_sd_mm: offset_sd,
        correlation,
        gap: pair.statistics(burnish_mm, filler_mm),
    }
}

impl Pair {
    /// Share of seams whose visible gap is at most `gap`, zero or more.
    fn share_within(&self, gap: f64) -> f64 {
        let taper = standard(gap, self.taper_mean, self.taper_sd);
        if self.hold == SeamHold::DrawnTight {
            return normal_share(taper);
        }
        let offset = standard(gap, self.offset_mean, self.offset_sd);
        share_of_both(offset, taper, self.correlation)
    }

    fn statistics(&self, burnish_mm: f64, filler_mm: f64) -> GapStatistics {
        let burnishable_share = self.share_within(burnish_mm);
        let within_filler = self.share_within(filler_mm).max(burnishable_share);
        let (mean_mm, square, [p5_mm, p50_mm, p95_mm, p99_mm]) =
            if self.hold == SeamHold::DrawnTight { self.drawn_tight() } else { self.held() };
        GapStatistics {
            mean_mm,
            sd_mm: (square - mean_mm * mean_mm).max(0.0).sqrt(),
            p5_mm,
            p50_mm,
            p95_mm,
            p99_mm,
            burnishable_share,
            fillable_share: within_filler - burnishable_share,
            reject_share: 1.0 - within_filler,
        }
    }

    /// Mean, mean square and percentiles of the larger of 0 and the taper, in closed form.
    fn drawn_tight(&self) -> (f64, f64, [f64; 4]) {
        let (mean, sd) = (self.taper_mean, self.taper_sd);
        let quantiles = SHARES.map(|share| (mean + sd * normal_quantile(share)).max(0.0));
        let ratio = if sd > 0.0 { mean / sd } else { 0.0 };
        // Nothing scatters, or by so little beside the mean that it cannot reach the other side.
        if sd == 0.0 || ratio.abs() > 38.0 {
            let open = if mean > 0.0 { 1.0 } else { 0.0 };
            return (open * mean, open * (mean * mean + sd * sd), quantiles);
        }
        let (share, density) = (normal_share(ratio), normal_density(ratio));
        (mean * share + sd * density, (mean * mean + sd * sd) * share + mean * sd * density, quantiles)
    }

    /// The same of the largest of 0, taper and offset, by quadrature of their common distribution.
    fn held(&self) -> (f64, f64, [f64; 4]) {
        let variables = [(self.taper_mean, self.taper_sd), (self.offset_mean, self.offset_sd)];
        // No gap is smaller than what never scatters, none larger than nine deviations.
        let least = variables.iter().filter(|(_, sd)| *sd == 0.0).fold(0.0, |most: f64, (mean, _)| most.max(*mean));
        let most = variables.iter().fold(least, |most, (mean, sd)| most.max(mean + 9.0 * sd));
        let mut cuts = vec![least, most];
        for (mean, sd) in variables {
            cuts.extend([mean - 9.0 * sd, mean + 9.0 * sd].into_iter().filter(|cut| *cut > least && *cut < most));
        }
        cuts.sort_by(f64::total_cmp);
        let (mut mean_mm, mut square) = (least, least * least);
        for (from, to) in cuts.iter().zip(cuts.iter().skip(1)) {
            let beyond = |gap: f64| 1.0 - self.share_within(gap);
            mean_mm += simpson(*from, *to, beyond);
            square += simpson(*from, *to, |gap| 2.0 * gap * beyond(gap));
        }
        let quantile = |share: f64| {
            let (mut low, mut high) = (least, most);
            if self.share_within(low) >= share {
                return low;
            }
            // Halved until far below a thousandth of a millimetre.
            for _ in 0..48 {
                let middle = 0.5 * (low + high);
                *(if self.share_within(middle) >= share { &mut high } else { &mut low }) = middle;
            }
            high
        };
        (mean_mm, square, SHARES.map(quantile))
    }
}

/// Shares of the percentiles that are told.
const SHARES: [f64; 4] = [0.05, 0.5, 0.95, 0.99];

/// Standardised value; far beyond either end where nothing scatters.
fn standard(value: f64, mean: f64, sd: f64) -> f64 {
    // Beyond 40 deviations the share is 0 or 1 in every digit.
    let far = if value >= mean { 40.0 } else { -40.0 };
    if sd > 0.0 { ((value - mean) / sd).clamp(-40.0, 40.0) } else { far }
}

/// Share of a standard normal pair of the given correlation with the first below `h` and the second below `k`.
///
/// One integral over the first, cut where the second's share turns from one end to the other.
fn share_of_both(h: f64, k: f64, correlation: f64) -> f64 {
    let left = (1.0 - correlation * correlation).max(0.0).sqrt();
    if left < 1e-6 {
        return if correlation > 0.0 { normal_share(h.min(k)) } else { (normal_share(h) - normal_share(-k)).max(0.0) };
    }
    // Less than this changes no digit that is told, and its inverse may be infinite.
    if correlation.abs() < 1e-12 {
        return normal_share(h) * normal_share(k);
    }
    let (from, to) = (-9.0, h.min(9.0));
    if to <= from {
        return 0.0;
    }
    let (turn, width) = (k / correlation, 8.0 * left / correlation.abs());
    let cuts = [from, (turn - width).clamp(from, to), (turn + width).clamp(from, to), to];
    let density = |z: f64| normal_density(z) * normal_share((k - correlation * z) / left);
    cuts.iter().zip(cuts.iter().skip(1)).map(|(from, to)| simpson(*from, *to, density)).sum::<f64>().clamp(0.0, 1.0)
}

/// Steps of a rule: over 18 deviations the error is below one part in 10⁵ of the share, over fewer far below.
const STEPS: u32 = 96;

/// Simpson's rule.
fn simpson(from: f64, to: f64, function: impl Fn(f64) -> f64) -> f64 {
    if to <= from {
        return 0.0;
    }
    let step = (to - from) / f64::from(STEPS);
    let inner = (1..STEPS).map(|k| {
        let weight = if k % 2 == 1 { 4.0 } else { 2.0 };
        weight * function(from + step * f64::from(k))
    });
    (function(from) + inner.sum::<f64>() + function(to)) * step / 3.0
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::numeric::real::asin_deg;

    #[test]
    fn a_correlation_of_next_to_nothing_is_none() {
        for tiny in [5e-324, -1e-310, 1e-200, -1e-13] {
            assert_eq!(share_of_both(0.3, -0.2, tiny), normal_share(0.3) * normal_share(-0.2));
        }
    }

    #[test]
    fn the_quadrant_share_follows_its_closed_form() {
        // P(X < 0, Y < 0) = 1/4 + asin(ρ)/2π, W. F. Sheppard (1899).
        for hundredth in -99..=99 {
            let rho = f64::from(hundredth) / 100.0;
            let exact = 0.25 + asin_deg(rho) / 360.0;
            assert!((share_of_both(0.0, 0.0, rho) - exact).abs() < 2e-6, "{rho}");
        }
        assert_eq!(share_of_both(1.0, 2.0, 1.0), normal_share(1.0));
        assert_eq!(share_of_both(-1.0, 0.5, -1.0), 0.0);
    }

    #[test]
    fn either_order_gives_the_same_share() {
        for (h, k, rho) in [(0.3, 1.7, 0.999), (-1.2, 0.4, -0.7), (2.0, -0.5, 0.3), (5.0, 5.0, 0.9999)] {
            assert!((share_of_both(h, k, rho) - share_of_both(k, h, rho)).abs() < 1e-5, "{h} {k} {rho}");
        }
    }
}
