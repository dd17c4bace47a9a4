//! The solver behind the beam: moments over the supports, then everything else by equilibrium and simple-beam formulas.

#![allow(clippy::indexing_slicing, reason = "banded elimination; every index is bounded by the number of supports")]

use super::beam::{BeamOnSupportsInput, BeamSupport, SupportHold, SupportReaction};
use crate::numeric::compensated_sum;

/// A load cut to one span or overhang, in the span's own coordinate.
#[derive(Clone, Copy)]
enum Part {
    /// At a, of P.
    Point(f64, f64),
    /// From a to b, of w.
    Line(f64, f64, f64),
}

impl Part {
    fn total(self) -> f64 {
        match self {
            Part::Point(_, p) => p,
            Part::Line(a, b, w) => w * (b - a),
        }
    }

    fn middle(self) -> f64 {
        match self {
            Part::Point(a, _) => a,
            Part::Line(a, b, _) => 0.5 * (a + b),
        }
    }

    /// Part of the load's moment about its own right, seen from x: Σ P ⟨x − a⟩.
    fn moment_left_of(self, x: f64) -> f64 {
        match self {
            Part::Point(a, p) => p * (x - a).max(0.0),
            Part::Line(a, b, w) => {
                let (from_a, from_b) = ((x - a).max(0.0), (x - b).max(0.0));
                0.5 * w * (from_a * from_a - from_b * from_b)
            }
        }
    }

    fn left_of(self, x: f64) -> f64 {
        match self {
            Part::Point(a, p) if a <= x => p,
            Part::Point(..) => 0.0,
            Part::Line(a, b, w) => w * (x.clamp(a, b) - a),
        }
    }

    /// E I times the slope of a simple beam of span l at its left and right end.
    fn slopes(self, l: f64) -> [f64; 2] {
        let point = |a: f64| [a * (l - a) * (2.0 * l - a), a * (l - a) * (l + a)].map(|f| f / (6.0 * l));
        let line = |a: f64| {
            let square = a * a;
            [square * (l * l - l * a + 0.25 * square), square * (0.5 * l * l - 0.25 * square)].map(|f| f / (6.0 * l))
        };
        match self {
            Part::Point(a, p) => point(a).map(|f| p * f),
            Part::Line(a, b, w) => {
                let (from, to) = (line(a), line(b));
                [w * (to[0] - from[0]), w * (to[1] - from[1])]
            }
        }
    }

    /// E I times the deflection of a simple beam of span l at x.
    fn simple_deflection(self, l: f64, x: f64) -> f64 {
        // The load right of x, by its distance b from the right end; left of x it is the mirror image.
        let right = |b: f64| x * b * (l * l - b * b - x * x) / (6.0 * l);
        let rest = l - x;
        let left = |a: f64| rest * a * (l * l - a * a - rest * rest) / (6.0 * l);
        let right_sum = |b: f64| x * b * b * (0.5 * (l * l - x * x) - 0.25 * b * b) / (6.0 * l);
        let left_sum = |a: f64| rest * a * a * (0.5 * (l * l - rest * rest) - 0.25 * a * a) / (6.0 * l);
        match self {
            Part::Point(a, p) => p * if a >= x { right(l - a) } else { left(a) },
            Part::Line(a, b, w) => {
                let (left_to, right_from) = (b.min(x).max(a), a.max(x).min(b));
                w * (left_sum(left_to) - left_sum(a) + right_sum(l - right_from) - right_sum(l - b))
            }
        }
    }

    /// E I times the deflection at s of a cantilever built in at 0.
    fn cantilever_deflection(self, s: f64) -> f64 {
        let near = |p: f64| p * p * p * (s - 0.25 * p) / 6.0;
        let far = |p: f64| s * s * p * (1.5 * p - s) / 6.0;
        match self {
            Part::Point(p, load) if p <= s => load * p * p * (3.0 * s - p) / 6.0,
            Part::Point(p, load) => load * s * s * (3.0 * p - s) / 6.0,
            Part::Line(a, b, w) => {
                let (near_to, far_from) = (b.min(s).max(a), a.max(s).min(b));
                w * (near(near_to) - near(a) + far(b) - far(far_from))
            }
        }
    }
}

/// A length of the beam without a support or a change of load inside.
pub(super) struct Piece {
    pub(super) from_mm: f64,
    pub(super) to_mm: f64,
    pub(super) shear_n: f64,
    pub(super) moment_nmm: f64,
    load_n_per_mm: f64,
}

impl Piece {
    /// Shear and moment at a distance from its beginning.
    pub(super) fn at(&self, x: f64) -> (f64, f64) {
        let shear = self.shear_n - self.load_n_per_mm * x;
        (shear, self.moment_nmm + x * (self.shear_n - 0.5 * self.load_n_per_mm * x))
    }

    /// Where inside it the moment is flat.
    pub(super) fn flat(&self) -> Option<f64> {
        let x = self.shear_n / self.load_n_per_mm;
        (x > 0.0 && x < self.to_mm - self.from_mm).then_some(x)
    }
}

/// The solved beam.
pub(super) struct Solved {
    supports: Vec<BeamSupport>,
    /// Loads of the left overhang (measured to the left), the spans, the right overhang.
    left: Vec<Part>,
    spans: Vec<Vec<Part>>,
    right: Vec<Part>,
    /// Moment just inside each support.
    moments: Vec<f64>,
    reactions: Vec<f64>,
    /// E I.
    stiffness: f64,
}

impl Solved {
    pub(super) fn of(input: &BeamOnSupportsInput) -> Self {
        let mut supports = input.supports.clone();
        supports.sort_by(|a, b| a.at_mm.total_cmp(&b.at_mm));
        let count = supports.len();
        let stiffness = input.modulus_mpa * input.second_moment_mm4;
        let mut solved = Self {
            left: Vec::new(),
            spans: vec![Vec::new(); count - 1],
            right: Vec::new(),
            moments: vec![0.0; count],
            reactions: Vec::new(),
            stiffness,
            supports,
        };
        solved.part_loads(input);
        solved.solve();
        solved
    }

    fn at(&self, k: usize) -> f64 {
        self.supports[k].at_mm
    }

    fn span(&self, k: usize) -> f64 {
        self.at(k + 1) - self.at(k)
    }

    fn yields(&self, k: usize) -> f64 {
        self.supports[k].stiffness_n_per_mm.map_or(0.0, |stiffness| 1.0 / stiffness)
    }

    /// Cuts the loads at the supports.
    fn part_loads(&mut self, input: &BeamOnSupportsInput) {
        let last = self.supports.len() - 1;
        let (first_at, last_at) = (self.at(0), self.at(last));
        for load in &input.point_loads {
            if load.at_mm <= first_at {
                self.left.push(Part::Point(first_at - load.at_mm, load.load_n));
            } else if load.at_mm >= last_at {
                self.right.push(Part::Point(load.at_mm - last_at, load.load_n));
            } else {
                let k = (0..last).find(|k| load.at_mm < self.at(k + 1)).unwrap_or(last - 1);
                let from = self.at(k);
                self.spans[k].push(Part::Point(load.at_mm - from, load.load_n));
            }
        }
        for load in &input.line_loads {
            let (a, b, w) = (load.from_mm, load.to_mm, load.load_n_per_mm);
            if a < first_at {
                self.left.push(Part::Line(first_at - b.min(first_at), first_at - a, w));
            }
            if b > last_at {
                self.right.push(Part::Line(a.max(last_at) - last_at, b - last_at, w));
            }
            for k in 0..last {
                let (from, to) = (self.at(k), self.at(k + 1));
                let (a, b) = (a.max(from), b.min(to));
                if b > a {
                    self.spans[k].push(Part::Line(a - from, b - from, w));
                }
            }
        }
    }

    /// Sum of an overhang's loads and their moment about its support.
    fn overhang(parts: &[Part]) -> (f64, f64) {
        (
            compensated_sum(parts.iter().map(|part| part.total())),
            compensated_sum(parts.iter().map(|part| part.total() * part.middle())),
        )
    }

    /// Reactions of span k as a simple beam.
    fn simple_reactions(&self, k: usize) -> [f64; 2] {
        let l = self.span(k);
        let total = compensated_sum(self.spans[k].iter().map(|part| part.total()));
        let right = compensated_sum(self.spans[k].iter().map(|part| part.total() * (part.middle() / l)));
        [total - right, right]
    }

    fn solve(&mut self) {
        let count = self.supports.len();
        let last = count - 1;
        let (left, right) = (Self::overhang(&self.left), Self::overhang(&self.right));
        // What is known: pinned ends carry the moments of their overhangs.
        let clamped = |k: usize| self.supports[k].hold == SupportHold::Clamped;
        let unknown: Vec<usize> = if count == 1 {
            Vec::new()
        } else {
            (0..count).filter(|k| (*k != 0 && *k != last) || clamped(*k)).collect()
        };
        let mut moments = vec![0.0; count];
        if count > 1 {
            moments[0] = if clamped(0) { 0.0 } else { -left.1 };
            moments[last] = if clamped(last) { 0.0 } else { -right.1 };
        }
        // Share of the moment over support j in the reaction of support i.
        let share = |i: usize, j: usize| -> f64 {
            if j + 1 == i {
                1.0 / self.span(j)
            } else if i + 1 == j {
                1.0 / self.span(i)
            } else if i == j {
                let before = if i > 0 { 1.0 / self.span(i - 1) } else { 0.0 };
                let after = if i < last { 1.0 / self.span(i) } else { 0.0 };
                -before - after
            } else {
                0.0
            }
        };
        let mut plain = vec![0.0; count];
        plain[0] += left.0;
        plain[last] += right.0;
        let simple: Vec<[f64; 2]> = (0..last).map(|k| self.simple_reactions(k)).collect();
        for (k, [at_left, at_right]) in simple.iter().enumerate() {
            plain[k] += at_left;
            plain[k + 1] += at_right;
        }
        let reaction = |moments: &[f64], i: usize| -> f64 {
            let near = i.saturating_sub(1)..(i + 2).min(count);
            plain[i] + compensated_sum(near.map(|j| share(i, j) * moments[j]))
        };
        // The normal equations, banded: three to either side at most two places away.
        let size = unknown.len();
        let mut band = vec![[0.0_f64; 3]; size];
        let mut load = vec![0.0_f64; size];
        for (row, &j) in unknown.iter().enumerate() {
            let mut known = 0.0;
            if j > 0 {
                let l = self.span(j - 1);
                band[row][0] += l / 3.0;
                known += l / 6.0 * moments[j - 1];
                known += self.spans[j - 1].iter().map(|part| part.slopes(l)[1]).sum::<f64>();
            }
            if j < last {
                let l = self.span(j);
                band[row][0] += l / 3.0;
                known += l / 6.0 * moments[j + 1];
                known += self.spans[j].iter().map(|part| part.slopes(l)[0]).sum::<f64>();
            }
            for i in j.saturating_sub(1)..(j + 2).min(count) {
                let weight = self.stiffness * self.yields(i) * share(i, j);
                known += weight * reaction(&moments, i);
                for (ahead, &other) in unknown.iter().enumerate().skip(row).take(3) {
                    band[row][ahead - row] += weight * share(i, other);
                }
            }
            // Neighbours that share a span.
            if let Some(&next) = unknown.get(row + 1)
                && next == j + 1
            {
                band[row][1] += self.span(j) / 6.0;
            }
            load[row] = -known;
        }
        for (row, value) in eliminate(band, load).into_iter().enumerate() {
            moments[unknown[row]] = value;
        }
        self.reactions = if count == 1 {
            vec![left.0 + right.0]
        } else {
            // From neighbours' moments, so that a reaction is a difference of two shears and nothing else.
            (0..count).map(|i| reaction(&moments, i)).collect()
        };
        self.moments = moments;
    }

    pub(super) fn load_n(&self) -> f64 {
        let spans = self.spans.iter().flatten();
        compensated_sum(self.left.iter().chain(spans).chain(&self.right).map(|part| part.total()))
    }

    pub(super) fn reactions(&self) -> Vec<SupportReaction> {
        let last = self.supports.len() - 1;
        let (left, right) = (Self::overhang(&self.left).1, Self::overhang(&self.right).1);
        self.reactions
            .iter()
            .enumerate()
            .map(|(k, reaction)| {
                let jump = if self.supports[k].hold == SupportHold::Pinned {
                    0.0
                } else if last == 0 {
                    left - right
                } else if k == 0 {
                    self.moments[0] + left
                } else {
                    -right - self.moments[last]
                };
                SupportReaction {
                    at_mm: self.at(k),
                    reaction_n: *reaction,
                    settlement_mm: self.yields(k) * reaction,
                    moment_nmm: jump,
                }
            })
            .collect()
    }

    /// The beam cut at every support and every change of load.
    pub(super) fn pieces(&self, input: &BeamOnSupportsInput) -> Vec<Piece> {
        let mut cuts = vec![0.0, input.length_mm];
        cuts.extend(self.supports.iter().map(|one| one.at_mm));
        cuts.extend(input.point_loads.iter().map(|one| one.at_mm));
        cuts.extend(input.line_loads.iter().flat_map(|one| [one.from_mm, one.to_mm]));
        cuts.sort_by(f64::total_cmp);
        cuts.dedup();
        let ends = cuts.iter().copied().zip(cuts.iter().copied().skip(1));
        ends.map(|(from_mm, to_mm)| {
            let middle = 0.5 * (from_mm + to_mm);
            let over = |one: &&crate::statics::BeamLineLoad| one.from_mm < middle && one.to_mm > middle;
            let load_n_per_mm = input.line_loads.iter().filter(over).map(|one| one.load_n_per_mm).sum();
            let (shear_n, moment_nmm) = self.inside(from_mm, middle);
            Piece { from_mm, to_mm, shear_n, moment_nmm, load_n_per_mm }
        })
        .collect()
    }

    /// Shear and moment just right of x; `towards` lies in the same piece.
    fn inside(&self, x: f64, towards: f64) -> (f64, f64) {
        let last = self.supports.len() - 1;
        if towards < self.at(0) {
            // Left of the first support: what lies further left pulls down.
            let s = self.at(0) - x;
            let outside = |part: &Part| match *part {
                Part::Point(a, p) if a >= s => (p, p * (a - s)),
                Part::Point(..) => (0.0, 0.0),
                Part::Line(a, b, w) => {
                    let from = a.max(s).min(b);
                    (w * (b - from), w * (b - from) * (0.5 * (b + from) - s))
                }
            };
            let sums = self.left.iter().map(outside).fold((0.0, 0.0), |sum, one| (sum.0 + one.0, sum.1 + one.1));
            return (-sums.0, -sums.1);
        }
        if towards > self.at(last) {
            let s = x - self.at(last);
            // Point loads at x itself lie left of "just right of x".
            let outside = |part: &Part| match *part {
                Part::Point(a, p) if a > s => (p, p * (a - s)),
                Part::Point(..) => (0.0, 0.0),
                Part::Line(a, b, w) => {
                    let from = a.max(s).min(b);
                    (w * (b - from), w * (b - from) * (0.5 * (b + from) - s))
                }
            };
            let sums = self.right.iter().map(outside).fold((0.0, 0.0), |sum, one| (sum.0 + one.0, sum.1 + one.1));
            return (sums.0, -sums.1);
        }
        let k = (0..last).find(|k| towards < self.at(k + 1)).unwrap_or(last.saturating_sub(1));
        let (l, s) = (self.span(k), x - self.at(k));
        let shear = self.simple_reactions(k)[0] + (self.moments[k + 1] - self.moments[k]) / l;
        let left_of: f64 = self.spans[k].iter().map(|part| part.left_of(s)).sum();
        let turned: f64 = self.spans[k].iter().map(|part| part.moment_left_of(s)).sum();
        (shear - left_of, self.moments[k] + shear * s - turned)
    }

    /// Slope downwards to the right at a support, seen from the span on the given side.
    fn slope(&self, k: usize) -> f64 {
        let last = self.supports.len() - 1;
        if last == 0 || self.supports[k].hold == SupportHold::Clamped {
            return 0.0;
        }
        let span = if k == 0 { 0 } else { last - 1 };
        let l = self.span(span);
        let chord = (self.yields(span + 1) * self.reactions[span + 1] - self.yields(span) * self.reactions[span]) / l;
        let loads = self.spans[span].iter().map(|part| part.slopes(l));
        let (near, far) = if k == 0 { (span, span + 1) } else { (span + 1, span) };
        let bent = l * (self.moments[near] / 3.0 + self.moments[far] / 6.0);
        if k == 0 {
            chord + (loads.map(|s| s[0]).sum::<f64>() + bent) / self.stiffness
        } else {
            chord - (loads.map(|s| s[1]).sum::<f64>() + bent) / self.stiffness
        }
    }

    /// Deflection downwards at x.
    pub(super) fn deflection(&self, x: f64) -> f64 {
        let last = self.supports.len() - 1;
        let settled = |k: usize| self.yields(k) * self.reactions[k];
        let free = |parts: &[Part], s: f64| parts.iter().map(|part| part.cantilever_deflection(s)).sum::<f64>();
        if x < self.at(0) {
            let s = self.at(0) - x;
            return settled(0) - self.slope(0) * s + free(&self.left, s) / self.stiffness;
        }
        if x >= self.at(last) {
            let s = x - self.at(last);
            return settled(last) + self.slope(last) * s + free(&self.right, s) / self.stiffness;
        }
        let k = (0..last).find(|k| x < self.at(k + 1)).unwrap_or(last - 1);
        let (l, s) = (self.span(k), x - self.at(k));
        let part = s / l;
        let loads: f64 = self.spans[k].iter().map(|one| one.simple_deflection(l, s)).sum();
        let bent = self.moments[k] * s * (l - s) * (2.0 * l - s) + self.moments[k + 1] * s * (l * l - s * s);
        settled(k) * (1.0 - part) + settled(k + 1) * part + (loads + bent / (6.0 * l)) / self.stiffness
    }

    /// Deflection largest in size and where it is.
    pub(super) fn greatest_deflection(&self, input: &BeamOnSupportsInput, pieces: &[Piece]) -> (f64, f64) {
        /// Looks in each piece; a piece bends like one polynomial of the fourth degree.
        const LOOKS: u32 = 6;
        let mut best = (0.0_f64, 0.0_f64);
        let mut around = (0.0, 0.0);
        for piece in pieces {
            let step = (piece.to_mm - piece.from_mm) / f64::from(LOOKS);
            for k in 0..=LOOKS {
                let x = piece.from_mm + step * f64::from(k);
                let y = self.deflection(x);
                if y.abs() > best.0.abs() {
                    best = (y, x);
                    around = ((x - step).max(0.0), (x + step).min(input.length_mm));
                }
            }
        }
        let (mut low, mut high) = around;
        // Golden section; the largest look brackets it.
        const GOLDEN: f64 = 0.618_033_988_749_894_9;
        let size = |x: f64| self.deflection(x).abs();
        let (mut a, mut b) = (high - GOLDEN * (high - low), low + GOLDEN * (high - low));
        let (mut at_a, mut at_b) = (size(a), size(b));
        for _ in 0..40 {
            if at_a >= at_b {
                (high, b, at_b) = (b, a, at_a);
                a = high - GOLDEN * (high - low);
                at_a = size(a);
            } else {
                (low, a, at_a) = (a, b, at_b);
                b = low + GOLDEN * (high - low);
                at_b = size(b);
            }
        }
        let x = 0.5 * (low + high);
        let y = self.deflection(x);
        if y.abs() > best.0.abs() { (y, x) } else { best }
    }
}

/// Solution of a symmetric positive system of half band width two, rows `[diagonal, next, next but one]`.
fn eliminate(mut band: Vec<[f64; 3]>, mut load: Vec<f64>) -> Vec<f64> {
    let size = band.len();
    for k in 0..size {
        let [diagonal, next, after] = band[k];
        if k + 1 < size {
            let factor = next / diagonal;
            band[k + 1][0] -= factor * next;
            band[k + 1][1] -= factor * after;
            load[k + 1] -= factor * load[k];
        }
        if k + 2 < size {
            let factor = after / diagonal;
            band[k + 2][0] -= factor * after;
            load[k + 2] -= factor * load[k];
        }
    }
    for k in (0..size).rev() {
        let [diagonal, next, after] = band[k];
        let one = if k + 1 < size { next * load[k + 1] } else { 0.0 };
        let two = if k + 2 < size { after * load[k + 2] } else { 0.0 };
        load[k] = (load[k] - one - two) / diagonal;
    }
    load
}
