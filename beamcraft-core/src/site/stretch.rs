//! Straight sides of an outline against a rule: where is it nearest, how much deeper or how much higher could it be?
//!
//! Along a side both the projection p and the height z above the top of the opening are linear, and the distance is
//! d = √(b² + z²) with the sideways gap b to the opening. Each question asks for the least of A·d − B·p over a part of
//! the side on which the rule is one straight line. That is convex: it lies at an end, or where A·z·dz = B·d·dp, that is
//! at z = b·q/√(1 − q²) with q = B·dp/(A·dz).

use super::rules::{Allowance, ClearanceForm, Demand, OpeningSide, SAME_MM};

/// A place of a side: projection from the face around the opening, height above its top.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Spot {
    pub(super) p_mm: f64,
    pub(super) z_mm: f64,
}

impl Spot {
    /// The place at a share of the way to another one.
    fn towards(self, other: Self, share: f64) -> Self {
        // From the nearer end, so that both ends are met to the last digit.
        let between = |a: f64, b: f64| if share < 0.5 { a + share * (b - a) } else { b - (1.0 - share) * (b - a) };
        Self { p_mm: between(self.p_mm, other.p_mm), z_mm: between(self.z_mm, other.z_mm) }
    }
}

/// A straight side of an outline, or a part of one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Stretch {
    pub(super) from: Spot,
    pub(super) to: Spot,
    /// Sideways gap to the opening, mm.
    pub(super) beside_mm: f64,
}

/// Where a side is nearest to what a rule asks for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Nearest {
    pub(super) spot: Spot,
    pub(super) side: OpeningSide,
    pub(super) required_mm: f64,
    pub(super) distance_mm: f64,
}

impl Nearest {
    pub(super) fn margin_mm(&self) -> f64 {
        self.distance_mm - self.required_mm
    }
}

impl Stretch {
    /// The part on which a coordinate lies from `low` to `high`; nothing when it only touches `low` from below.
    fn within(self, coordinate: impl Fn(Spot) -> f64, low: f64, high: f64) -> Option<Self> {
        let (start, end) = (coordinate(self.from), coordinate(self.to));
        if start.max(end) <= low || start.min(end) > high {
            return None;
        }
        let cut = |here: Spot, at: f64, other: Spot, other_at: f64| {
            let bound = at.clamp(low, high);
            if bound == at { here } else { here.towards(other, (bound - at) / (other_at - at)) }
        };
        Some(Self { from: cut(self.from, start, self.to, end), to: cut(self.to, end, self.from, start), ..self })
    }

    /// The parts above and below the top of the opening, each with its side; what lies at the very top counts as above.
    fn by_side(self) -> impl Iterator<Item = (OpeningSide, Self)> {
        let low = self.from.z_mm.min(self.to.z_mm);
        let highest = if self.from.z_mm >= self.to.z_mm { self.from } else { self.to };
        let height = |spot: Spot| spot.z_mm;
        let above = if low >= 0.0 {
            Some(self)
        } else if highest.z_mm == 0.0 {
            Some(Self { from: highest, to: highest, ..self })
        } else {
            self.within(height, 0.0, f64::INFINITY)
        };
        let below = if low < 0.0 { self.within(height, f64::NEG_INFINITY, 0.0) } else { None };
        let parts = [(OpeningSide::Above, above), (OpeningSide::Beside, below)];
        parts.into_iter().filter_map(|(side, part)| Some((side, part?)))
    }

    /// Distance of a place from the opening, in the plane of its face.
    fn distance(&self, spot: Spot) -> f64 {
        let above = spot.z_mm.max(0.0);
        (self.beside_mm * self.beside_mm + above * above).sqrt()
    }

    /// The place where `a·d − b·p` is least.
    fn least(&self, a: f64, b: f64) -> Spot {
        let value = |spot: Spot| a * self.distance(spot) - b * spot.p_mm;
        let better = |one: Spot, other: Spot| if value(other) < value(one) { other } else { one };
        let ends = better(self.from, self.to);
        let rise = self.to.z_mm - self.from.z_mm;
        let q = b * (self.to.p_mm - self.from.p_mm) / (a * rise);
        if !(q > 0.0 && q < 1.0) {
            return ends;
        }
        let still_mm = self.beside_mm * q / (1.0 - q * q).sqrt();
        let share = (still_mm - self.from.z_mm) / rise;
        if share > 0.0 && share < 1.0 { better(ends, self.from.towards(self.to, share)) } else { ends }
    }

    /// Where it is nearest to what a rule asks for.
    pub(super) fn nearest(self, form: ClearanceForm) -> Option<Nearest> {
        let parts = self.by_side().flat_map(|(side, part)| {
            let demands = form.demands(side).into_iter();
            demands.filter_map(move |demand| part.nearest_within(side, &demand))
        });
        parts.min_by(|one, other| one.margin_mm().total_cmp(&other.margin_mm()))
    }

    fn nearest_within(self, side: OpeningSide, demand: &Demand) -> Option<Nearest> {
        let part = self.within(|spot| spot.p_mm, demand.from_mm, demand.to_mm)?;
        let spot = part.least(1.0, demand.slope);
        let required_mm = demand.at_mm + demand.slope * spot.p_mm;
        Some(Nearest { spot, side, required_mm, distance_mm: part.distance(spot) })
    }

    /// How much farther it may stand out as a whole by a rule.
    pub(super) fn deeper(self, form: ClearanceForm) -> Deeper {
        let parts = self.by_side().map(|(side, part)| part.deeper_within(&form.allowance(side)));
        parts.fold(Deeper::AnyDepth, Deeper::less)
    }

    fn deeper_within(self, allowance: &Allowance) -> Deeper {
        let nearest_mm = self.distance(self.from).min(self.distance(self.to));
        if nearest_mm < allowance.least_mm - SAME_MM {
            return Deeper::NotAtAll;
        }
        let until_mm = allowance.until_mm - SAME_MM;
        if nearest_mm >= until_mm {
            return Deeper::AnyDepth;
        }
        // Below the top every height is at the same distance.
        let top_mm = (until_mm * until_mm - self.beside_mm * self.beside_mm).max(0.0).sqrt();
        let Some(part) = self.within(|spot| spot.z_mm, f64::NEG_INFINITY, top_mm) else { return Deeper::AnyDepth };
        let spot = part.least(allowance.slope, 1.0);
        Deeper::By(allowance.at_mm + allowance.slope * part.distance(spot) - spot.p_mm)
    }

    /// How much it must at least be raised to satisfy a rule, everything above the opening, mm; negative where it may
    /// come down.
    pub(super) fn raise(self, form: ClearanceForm, out_mm: f64) -> f64 {
        let moved = |spot: Spot| Spot { p_mm: spot.p_mm + out_mm, ..spot };
        let part = Self { from: moved(self.from), to: moved(self.to), ..self };
        let demands = form.demands(OpeningSide::Above).into_iter();
        demands.map(|demand| part.raise_within(&demand)).fold(f64::NEG_INFINITY, f64::max)
    }

    /// The most of √(R² − b²) − z, with R the distance asked for.
    fn raise_within(self, demand: &Demand) -> f64 {
        let Some(part) = self.within(|spot| spot.p_mm, demand.from_mm, demand.to_mm) else { return f64::NEG_INFINITY };
        let b = self.beside_mm;
        let wanted = |spot: Spot| {
            let distance = demand.at_mm + demand.slope * spot.p_mm;
            (distance * distance - b * b).max(0.0).sqrt() - spot.z_mm
        };
        let ends = wanted(part.from).max(wanted(part.to));
        let (out, rise) = (part.to.p_mm - part.from.p_mm, part.to.z_mm - part.from.z_mm);
        let q = demand.slope * out / rise;
        if !(q > 0.0 && q < 1.0) {
            return ends;
        }
        // Concave in between: it is still where R = b/√(1 − q²).
        let still_mm = (b / (1.0 - q * q).sqrt() - demand.at_mm) / demand.slope;
        let share = (still_mm - part.from.p_mm) / out;
        if share > 0.0 && share < 1.0 { ends.max(wanted(part.from.towards(part.to, share))) } else { ends }
    }
}

/// How much farther something may stand out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Deeper {
    /// It may not be so near at any depth.
    NotAtAll,
    /// By so much, mm; negative where it stands out too far.
    By(f64),
    /// As far as one likes.
    AnyDepth,
}

impl Deeper {
    pub(super) fn less(self, other: Self) -> Self {
        match (self, other) {
            (Self::NotAtAll, _) | (_, Self::NotAtAll) => Self::NotAtAll,
            (Self::By(one), Self::By(two)) => Self::By(one.min(two)),
            (Self::By(one), Self::AnyDepth) | (Self::AnyDepth, Self::By(one)) => Self::By(one),
            (Self::AnyDepth, Self::AnyDepth) => Self::AnyDepth,
        }
    }
}
