//! A group of fasteners that yield: the method of the instantaneous centre.

use super::group::{FastenerPosition, SMALLEST_SPREAD_MM2};
use crate::cite::{Clause, Source};
use crate::error::{Allowed, Error, ErrorCode, Fault, Result};
use crate::limits::{faults_at, limited};
use crate::numeric::real::exp;

/// A group of equal fasteners that may yield, and its load in the plane.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<FastenerGroupLimitInput>))]
pub struct FastenerGroupLimitInput {
    /// Where the fasteners stand.
    pub positions: Vec<FastenerPosition>,
    /// Lateral capacity of one fastener, the least of all directions to the grain, N.
    pub capacity_n: f64,
    /// Slip modulus of one fastener, N/mm: from `ec5_slip_modulus` or `group_action_factor`.
    pub slip_modulus_n_per_mm: f64,
    /// Slip at which the most loaded fastener is taken to fail, mm.
    pub ultimate_slip_mm: f64,
    /// Force to the right, N.
    #[cfg_attr(feature = "json", serde(default))]
    pub force_x_n: f64,
    /// Force upwards, N; a weight is negative.
    #[cfg_attr(feature = "json", serde(default))]
    pub force_y_n: f64,
    /// Where the force acts, to the right, mm.
    #[cfg_attr(feature = "json", serde(default))]
    pub load_x_mm: f64,
    /// Where the force acts, upwards, mm.
    #[cfg_attr(feature = "json", serde(default))]
    pub load_y_mm: f64,
    /// Further moment, anticlockwise, N·mm.
    #[cfg_attr(feature = "json", serde(default))]
    pub moment_nmm: f64,
}

limited!(FastenerGroupLimitInput {
    capacity_n: CONNECTION_CAPACITY,
    slip_modulus_n_per_mm: SLIP_MODULUS,
    ultimate_slip_mm: ULTIMATE_SLIP,
    force_x_n: SIGNED_FORCE,
    force_y_n: SIGNED_FORCE,
    load_x_mm: SIGNED_LENGTH,
    load_y_mm: SIGNED_LENGTH,
    moment_nmm: SIGNED_MOMENT
});

/// What one fastener of a group carries when the group can carry no more.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct FastenerLimitShare {
    /// Position to the right, mm.
    pub x_mm: f64,
    /// Position upwards, mm.
    pub y_mm: f64,
    /// Force on the fastener to the right, N.
    pub force_x_n: f64,
    /// Force on the fastener upwards, N.
    pub force_y_n: f64,
    /// Resultant, N.
    pub lateral_n: f64,
    /// Slip, mm.
    pub slip_mm: f64,
}

/// The limit load of a group of fasteners.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct FastenerGroupLimit {
    /// Limit load over the given load.
    pub load_factor: f64,
    /// Given load over the limit load; 1 is the limit.
    pub utilisation: f64,
    /// Load at which the most loaded fastener reaches its capacity by the elastic method, over the given load.
    pub elastic_load_factor: f64,
    /// Limit load over the one of the elastic method: what the yielding of the most loaded fasteners gains.
    pub gain: f64,
    /// Number of fasteners that together carry as much as the group along the load, limit force over one capacity; 0 for a
    /// load that is a moment alone.
    pub effective_count: f64,
    /// Instantaneous centre that the group turns about, to the right, mm; absent where it only shifts.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub centre_x_mm: Option<f64>,
    /// The same, upwards, mm.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub centre_y_mm: Option<f64>,
    /// Share of each fastener at the limit load, in the order given.
    pub shares: Vec<FastenerLimitShare>,
    /// Index of the fastener that slips most.
    pub most_slipped: u32,
    /// What the limit load rests on.
    pub clause: Clause,
}

/// Limit load of a group of fasteners in its plane, the most loaded ones yielding, about the instantaneous centre.
///
/// # Equation
/// ```text
/// slip of fastener i:   s_i = (u − φ y_i, v + φ x_i)            about the centre (−v/φ, u/φ)
/// force, along its slip: R (1 − e^(−K s / R))
/// equilibrium:          Σ F_xi = λ F_x     Σ F_yi = λ F_y     Σ (x_i F_yi − y_i F_xi) = λ M
/// limit:                the greatest s_i is the ultimate slip
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | R, K | capacity and slip modulus of one fastener | N, N/mm | `capacity_n`, `slip_modulus_n_per_mm` |
/// | u, v, φ | shift and turn of the strip | mm, – | |
/// | λ | limit load over the given load | – | `load_factor` |
///
/// # Limits
/// Equal fasteners with the same capacity in every direction, a stiff strip, loads in its plane that grow together. Only
/// fasteners that bend before the wood splits (yield modes III and IV, d to f) may be counted on to yield, with full spacings and distances; else
/// the elastic method of `fastener_group` holds. Neither standard prescribes the load-slip law: it starts with the slip
/// modulus and flattens out at the capacity. An engineer in charge decides whether the group may redistribute.
///
/// # Errors
/// `out_of_range`, `not_finite`; `missing_field` without positions; `inconsistent` without a load, or for a moment on
/// fasteners that all stand in one place.
///
/// # Source
/// Statics of a stiff plate on yielding fasteners; the load-slip law is the exponential one usual for nails in wood, without its
/// second slope (recalled). Checked by `verification/group` (limits in closed form) and in the tests: the elastic method
/// for small slips, and no mechanism that gives less for large ones.
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::{FastenerGroupLimitInput, FastenerPosition, fastener_group_limit};
/// // Four screws in a line, 100 mm apart, under a moment: with room to yield all give their 1000 N,
/// // 2 × 1000 × (50 + 150) N·mm; the elastic method stops at 1000/150 × Σr².
/// let at = |x_mm| FastenerPosition { x_mm, y_mm: 0.0 };
/// let group = fastener_group_limit(&FastenerGroupLimitInput {
///     positions: vec![at(-150.0), at(-50.0), at(50.0), at(150.0)],
///     capacity_n: 1_000.0,
///     slip_modulus_n_per_mm: 2_000.0,
///     ultimate_slip_mm: 50.0,
///     force_x_n: 0.0,
///     force_y_n: 0.0,
///     load_x_mm: 0.0,
///     load_y_mm: 0.0,
///     moment_nmm: 100_000.0,
/// })?;
/// // The inner two slip a third as far as the outer ones and lack a thousandth of their capacity.
/// assert!((group.load_factor - 4.0).abs() < 2e-3);
/// assert!((group.elastic_load_factor - 10.0 / 3.0).abs() < 1e-9);
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn fastener_group_limit(input: &FastenerGroupLimitInput) -> Result<FastenerGroupLimit> {
    let mut faults = faults_at("", input);
    for (k, position) in input.positions.iter().enumerate() {
        faults.extend(faults_at(&format!("positions[{k}]"), position));
    }
    Error::unless_empty(faults)?;
    if input.positions.is_empty() || input.positions.len() > MOST_FASTENERS {
        return Err(Fault::plain(ErrorCode::MissingField, "positions", "1 to 1000 fasteners", "add a fastener").into());
    }
    let group = Group::of(input)?;
    let slip_unit_mm = input.capacity_n / input.slip_modulus_n_per_mm;
    let limit = (input.ultimate_slip_mm / slip_unit_mm).min(FLAT);
    let elastic_load_factor = group.elastic_load_factor();
    let (load_factor, motion) = group.limit(limit);
    let shares: Vec<FastenerLimitShare> = input
        .positions
        .iter()
        .zip(&group.places)
        .map(|(at, place)| {
            let slip = place.slip(motion);
            let size = norm(slip);
            let per_slip = input.capacity_n * force(size).per_slip;
            let (force_x_n, force_y_n) = (per_slip * slip.0, per_slip * slip.1);
            FastenerLimitShare {
                x_mm: at.x_mm,
                y_mm: at.y_mm,
                force_x_n,
                force_y_n,
                lateral_n: per_slip * size,
                slip_mm: size * slip_unit_mm,
            }
        })
        .collect();
    let (most_slipped, _) =
        shares.iter().zip(0_u32..).fold(
            (0, -1.0),
            |most: (u32, f64), (share, index)| {
                if share.slip_mm > most.1 { (index, share.slip_mm) } else { most }
            },
        );
    let resultant_n = (input.force_x_n * input.force_x_n + input.force_y_n * input.force_y_n).sqrt();
    let [shift_x, shift_y, turn] = motion;
    // A turn that moves the farthest fastener by less than a billionth of the slip is none.
    let turns = turn.abs() > 1e-9 * limit;
    Ok(FastenerGroupLimit {
        load_factor,
        utilisation: 1.0 / load_factor,
        elastic_load_factor,
        gain: load_factor / elastic_load_factor,
        effective_count: load_factor * resultant_n / input.capacity_n,
        centre_x_mm: turns.then(|| group.centre_mm.0 - group.reach_mm * shift_y / turn),
        centre_y_mm: turns.then(|| group.centre_mm.1 + group.reach_mm * shift_x / turn),
        shares,
        most_slipped,
        clause: Clause::new(Source::Statics, "instantaneous centre of a group of fasteners that yield"),
    })
}

/// Most fasteners of a group: each step of the search passes all of them.
const MOST_FASTENERS: usize = 1_000;
/// Slip over R/K beyond which the force is the capacity to eight digits, and the law too flat to be followed.
const FLAT: f64 = 20.0;
/// Least share of one capacity that a load must be: of nothing there is no limit load.
const LEAST_LOAD: f64 = 1e-9;

/// Shift to the right, shift upwards, turn times reach; slips are in units of R/K.
type Motion = [f64; 3];

/// Place of a fastener from the centroid, in units of the reach.
struct Place {
    x: f64,
    y: f64,
}

impl Place {
    fn slip(&self, motion: Motion) -> (f64, f64) {
        let [shift_x, shift_y, turn] = motion;
        (shift_x - turn * self.y, shift_y + turn * self.x)
    }
}

fn norm((x, y): (f64, f64)) -> f64 {
    (x * x + y * y).sqrt()
}

/// The load-slip law, forces in units of R.
struct Law {
    /// Work up to the slip.
    work: f64,
    /// Force over slip.
    per_slip: f64,
    /// Slope.
    slope: f64,
}

fn force(slip: f64) -> Law {
    let slope = exp(-slip);
    // 1 − e^−s and s − 1 + e^−s lose their digits where the slip is small.
    if slip < 1e-3 {
        let per_slip = 1.0 - slip * (0.5 - slip * (1.0 / 6.0 - slip / 24.0));
        return Law { work: slip * slip * (0.5 - slip * (1.0 / 6.0 - slip / 24.0)), per_slip, slope };
    }
    Law { work: slip - 1.0 + slope, per_slip: (1.0 - slope) / slip, slope }
}

struct Group {
    places: Vec<Place>,
    centre_mm: (f64, f64),
    /// Distance of the farthest fastener from the centroid; 1 where all stand in one place.
    reach_mm: f64,
    /// Load of factor 1: force over R, moment about the centroid over R and reach.
    load: Motion,
}

impl Group {
    fn of(input: &FastenerGroupLimitInput) -> Result<Self> {
        let count = input.positions.len() as f64;
        let centre_mm = (
            input.positions.iter().map(|at| at.x_mm).sum::<f64>() / count,
            input.positions.iter().map(|at| at.y_mm).sum::<f64>() / count,
        );
        let arms = || input.positions.iter().map(|at| (at.x_mm - centre_mm.0, at.y_mm - centre_mm.1));
        let farthest_mm = arms().map(norm).fold(0.0, f64::max);
        let together = farthest_mm * farthest_mm < SMALLEST_SPREAD_MM2;
        let reach_mm = if together { 1.0 } else { farthest_mm };
        let moment_nmm = input.moment_nmm + input.force_y_n * (input.load_x_mm - centre_mm.0)
            - input.force_x_n * (input.load_y_mm - centre_mm.1);
        let load = [
            input.force_x_n / input.capacity_n,
            input.force_y_n / input.capacity_n,
            moment_nmm / (input.capacity_n * reach_mm),
        ];
        let refuse = |field, value, words, cure| {
            Err(Error::from(Fault::number(ErrorCode::Inconsistent, field, value, Allowed::Text(words), cure)))
        };
        if together && moment_nmm != 0.0 {
            let words = "fasteners that stand apart, for a load with a moment about them";
            return refuse("positions", reach_mm, words, "add a fastener beside, or move the load onto the fastener");
        }
        let [x, y, turn] = load;
        if norm((x, y)).max(turn.abs()) < LEAST_LOAD {
            return refuse("force_y_n", input.force_y_n, "a force or a moment that loads the group", "give the load");
        }
        let places = if together {
            input.positions.iter().map(|_| Place { x: 0.0, y: 0.0 }).collect()
        } else {
            arms().map(|(x, y)| Place { x: x / reach_mm, y: y / reach_mm }).collect()
        };
        Ok(Self { places, centre_mm, reach_mm, load })
    }

    /// Motion per load of a group that follows the slip modulus throughout.
    fn elastic_motion(&self) -> Motion {
        let count = self.places.len() as f64;
        let squares: f64 = self.places.iter().map(|place| place.x * place.x + place.y * place.y).sum();
        let [x, y, turn] = self.load;
        [x / count, y / count, if squares > 0.0 { turn / squares } else { 0.0 }]
    }

    fn elastic_load_factor(&self) -> f64 {
        1.0 / self.greatest_slip(self.elastic_motion())
    }

    fn greatest_slip(&self, motion: Motion) -> f64 {
        self.places.iter().map(|place| norm(place.slip(motion))).fold(0.0, f64::max)
    }

    /// The load factor at which the greatest slip is `limit`, and the motion there: of all motions with one way of the load,
    /// the fasteners follow the one that costs the least work.
    fn limit(&self, limit: f64) -> (f64, Motion) {
        let plane = Plane::of(self.load);
        let elastic = self.elastic_motion();
        // The elastic forces balance the load, so its way is at most their sum times the greatest slip.
        let balanced: f64 = self.places.iter().map(|place| norm(place.slip(elastic))).sum();
        let (mut low, mut high) = (0.0, limit * balanced / plane.size);
        let mut found = (0.0, [0.0; 3]);
        for _ in 0..100 {
            let way = 0.5 * (low + high);
            if way <= low || way >= high {
                break;
            }
            found = self.settled(&plane, way, found.1);
            if self.greatest_slip(found.1) < limit {
                low = way;
            } else {
                high = way;
            }
        }
        (found.0 / plane.size, found.1)
    }

    /// Force of the load and motion when the load has gone a way, found by Newton's method from a motion near by.
    fn settled(&self, plane: &Plane, way: f64, start: Motion) -> (f64, Motion) {
        let mut at = plane.placed(way, plane.beside(start));
        let mut here = self.potential(at);
        for _ in 0..100 {
            let [first, second] = plane.beside(here.gradient);
            let steady = here.gradient.iter().map(|part| part.abs()).fold(0.0, f64::max);
            if first.abs().max(second.abs()) <= 1e-14 * steady {
                break;
            }
            let Some(step) = plane.step(&here.hessian, [first, second]) else { break };
            let Some((next, there)) = self.downhill(plane, way, at, step, &here) else { break };
            (at, here) = (next, there);
        }
        (plane.along(here.gradient), at)
    }

    /// The longest part of the step that lowers the work; nothing where no part of it does.
    fn downhill(
        &self,
        plane: &Plane,
        way: f64,
        at: Motion,
        step: [f64; 2],
        here: &Potential,
    ) -> Option<(Motion, Potential)> {
        let [u, v] = plane.beside(at);
        let [step_u, step_v] = step;
        let mut share = 1.0;
        while share > 1e-9 {
            let tried = plane.placed(way, [u - share * step_u, v - share * step_v]);
            let there = self.potential(tried);
            if there.value < here.value {
                return Some((tried, there));
            }
            share *= 0.5;
        }
        None
    }

    /// Work of the fasteners, with its slope and curvature.
    fn potential(&self, motion: Motion) -> Potential {
        let mut found = Potential { value: 0.0, gradient: [0.0; 3], hessian: [[0.0; 3]; 3] };
        for place in &self.places {
            let slip = place.slip(motion);
            let size = norm(slip);
            let law = force(size);
            found.value += law.work;
            let (along, across) = (law.slope, law.per_slip);
            let (x, y) = if size > 0.0 { (slip.0 / size, slip.1 / size) } else { (1.0, 0.0) };
            let (stiff_xx, stiff_xy, stiff_yy) =
                (along * x * x + across * y * y, (along - across) * x * y, along * y * y + across * x * x);
            let (force_x, force_y) = (law.per_slip * slip.0, law.per_slip * slip.1);
            // How the slip follows the turn.
            let (arm_x, arm_y) = (-place.y, place.x);
            let turn_x = stiff_xx * arm_x + stiff_xy * arm_y;
            let turn_y = stiff_xy * arm_x + stiff_yy * arm_y;
            let parts = [force_x, force_y, arm_x * force_x + arm_y * force_y];
            let rows = [
                [stiff_xx, stiff_xy, turn_x],
                [stiff_xy, stiff_yy, turn_y],
                [turn_x, turn_y, arm_x * turn_x + arm_y * turn_y],
            ];
            for ((sum, row_sum), (part, row)) in
                found.gradient.iter_mut().zip(&mut found.hessian).zip(parts.into_iter().zip(rows))
            {
                *sum += part;
                for (sum, part) in row_sum.iter_mut().zip(row) {
                    *sum += part;
                }
            }
        }
        found
    }
}

/// Work of the fasteners at a motion.
struct Potential {
    value: f64,
    gradient: Motion,
    hessian: [[f64; 3]; 3],
}

fn dot(a: Motion, b: Motion) -> f64 {
    a.into_iter().zip(b).map(|(a, b)| a * b).sum()
}

fn cross([a1, a2, a3]: Motion, [b1, b2, b3]: Motion) -> Motion {
    [a2 * b3 - a3 * b2, a3 * b1 - a1 * b3, a1 * b2 - a2 * b1]
}

fn scaled(a: Motion, factor: f64) -> Motion {
    a.map(|part| factor * part)
}

/// The motions in which the load goes one way: a plane square to the load.
struct Plane {
    /// Size and direction of the load.
    size: f64,
    direction: Motion,
    first: Motion,
    second: Motion,
}

impl Plane {
    fn of(load: Motion) -> Self {
        let size = dot(load, load).sqrt();
        let direction = scaled(load, 1.0 / size);
        // The axis that the load runs along least.
        let [x, y, turn] = direction.map(f64::abs);
        let axis = if x <= y && x <= turn {
            [1.0, 0.0, 0.0]
        } else if y <= turn {
            [0.0, 1.0, 0.0]
        } else {
            [0.0, 0.0, 1.0]
        };
        let square = cross(direction, axis);
        let first = scaled(square, 1.0 / dot(square, square).sqrt());
        Self { size, direction, first, second: cross(direction, first) }
    }

    fn along(&self, motion: Motion) -> f64 {
        dot(motion, self.direction)
    }

    fn beside(&self, motion: Motion) -> [f64; 2] {
        [dot(motion, self.first), dot(motion, self.second)]
    }

    fn placed(&self, way: f64, [u, v]: [f64; 2]) -> Motion {
        let [d1, d2, d3] = self.direction;
        let [f1, f2, f3] = self.first;
        let [s1, s2, s3] = self.second;
        [way * d1 + u * f1 + v * s1, way * d2 + u * f2 + v * s2, way * d3 + u * f3 + v * s3]
    }

    /// Newton's step beside the load.
    fn step(&self, hessian: &[[f64; 3]; 3], [first, second]: [f64; 2]) -> Option<[f64; 2]> {
        let times = |motion: Motion| hessian.map(|row| dot(row, motion));
        let (of_first, of_second) = (times(self.first), times(self.second));
        // Where all stand in one place, the turn meets no stiffness and no load.
        let [[xx, ..], [_, yy, _], [.., turn]] = hessian;
        let trace = 1e-14 * (xx + yy + turn);
        let (a, b, d) =
            (dot(of_first, self.first) + trace, dot(of_first, self.second), dot(of_second, self.second) + trace);
        let determinant = a * d - b * b;
        (determinant > 0.0 && determinant.is_finite())
            .then(|| [(d * first - b * second) / determinant, (a * second - b * first) / determinant])
    }
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const FASTENER_GROUP_LIMIT: crate::json::Calculation = crate::json::calculation!(
    fastener_group_limit: FastenerGroupLimitInput => FastenerGroupLimit, Document,
    "Limit load of a group of fasteners that yield, about the instantaneous centre"
);

#[cfg(test)]
#[path = "centre_tests.rs"]
mod tests;
