//! Johansen modes of timber-to-timber and panel-to-timber joints.

use super::choice::Ec5Fastener;
use super::least;
use super::rope::with_rope;
use crate::error::Fault;
use crate::limits::{Limited, limited};

/// Factor of the modes with one hinge in a plane (8.6 d, e, 8.7 j): makes up for the different safety of wood and steel.
const ONE_HINGE: f64 = 1.05;
/// Factor of the modes with two hinges in a plane (8.6 f, 8.7 k).
const TWO_HINGES: f64 = 1.15;

/// The way in which a joint in single shear gives in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum Ec5SingleShearMode {
    /// Mode a: the head-side member is crushed along its whole length.
    A,
    /// Mode b: the point-side member is crushed along its whole length.
    B,
    /// Mode c: the fastener stays straight and turns in both members.
    C,
    /// Mode d: the fastener turns in the head-side member and bends in the point-side member.
    D,
    /// Mode e: the fastener turns in the point-side member and bends in the head-side member.
    E,
    /// Mode f: the fastener bends in both members.
    F,
}

impl Ec5SingleShearMode {
    /// The mode in words, for a verdict.
    pub const fn words(self) -> &'static str {
        match self {
            Self::A => "a, bearing of the head-side member",
            Self::B => "b, bearing of the point-side member",
            Self::C => "c, fastener turns in both members",
            Self::D => "d, fastener turns in the head-side member, one hinge in the point-side member",
            Self::E => "e, fastener turns in the point-side member, one hinge in the head-side member",
            Self::F => "f, one hinge in each member",
        }
    }
}

/// A fastener through a head-side into a point-side member.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<Ec5SingleShearInput>))]
pub struct Ec5SingleShearInput {
    /// Kind of fastener; limits the rope effect.
    pub fastener: Ec5Fastener,
    /// Diameter, for screws the effective one, mm.
    pub diameter_mm: f64,
    /// Characteristic yield moment M_y,Rk, N·mm.
    pub yield_moment_nmm: f64,
    /// Embedment strength of the head-side member f_h,1,k at the angle of the force, MPa.
    pub head_side_mpa: f64,
    /// Embedment strength of the point-side member f_h,2,k at the angle of the force, MPa.
    pub point_side_mpa: f64,
    /// Thickness of the head-side member t_1, mm.
    pub head_side_mm: f64,
    /// Penetration into the point-side member t_2, mm.
    pub point_side_mm: f64,
    /// Characteristic capacity along the axis F_ax,Rk, the lower of both members, N; by default 0, no rope effect, as
    /// the standard asks where it is not known.
    #[cfg_attr(feature = "json", serde(default))]
    pub axial_capacity_n: f64,
}

limited!(Ec5SingleShearInput {
    diameter_mm: FASTENER_DIAMETER,
    yield_moment_nmm: YIELD_MOMENT,
    head_side_mpa: STRESS,
    point_side_mpa: STRESS,
    head_side_mm: BEARING_LENGTH,
    point_side_mm: BEARING_LENGTH,
    axial_capacity_n: FORCE
});

/// Characteristic lateral capacity of one fastener in single shear, every mode shown.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct Ec5SingleShear {
    /// Ratio of the embedment strengths, beta = f_h,2,k / f_h,1,k (8.8).
    pub beta: f64,
    /// Johansen part of mode c, N.
    pub c_johansen_n: f64,
    /// Johansen part of mode d, N.
    pub d_johansen_n: f64,
    /// Johansen part of mode e, N.
    pub e_johansen_n: f64,
    /// Johansen part of mode f, N.
    pub f_johansen_n: f64,
    /// Most that the rope effect may add, as a share of the Johansen part (8.2.2(2)).
    pub rope_cap_share: f64,
    /// Mode a (8.6), N.
    pub a_n: f64,
    /// Mode b (8.6), N.
    pub b_n: f64,
    /// Mode c with rope effect (8.6), N.
    pub c_n: f64,
    /// Mode d with rope effect (8.6), N.
    pub d_n: f64,
    /// Mode e with rope effect (8.6), N.
    pub e_n: f64,
    /// Mode f with rope effect (8.6), N.
    pub f_n: f64,
    /// Mode with the least capacity.
    pub governing_mode: Ec5SingleShearMode,
    /// Characteristic lateral capacity F_v,Rk, the least of the modes, N.
    pub capacity_n: f64,
}

/// Johansen parts of modes c to f of (8.6) with given factors for one and two hinges.
pub(super) fn johansen_single(input: &Ec5SingleShearInput, one_hinge: f64, two_hinges: f64) -> [f64; 4] {
    let (t1, t2) = (input.head_side_mm, input.point_side_mm);
    let q1 = input.head_side_mpa * input.diameter_mm;
    let beta = input.point_side_mpa / input.head_side_mpa;
    let ratio = t2 / t1;
    let moment_nmm = input.yield_moment_nmm;
    // The standard's braces subtract nearly equal numbers where beta is large; (A − B²) / (√A + B) loses nothing.
    let turning = beta * (1.0 + ratio);
    let root = (beta + 2.0 * beta * beta * (1.0 + ratio + ratio * ratio) + beta * beta * beta * ratio * ratio).sqrt();
    let c = q1 * t1 * beta * (1.0 + beta * ratio * ratio) / (root + turning);
    let d = one_hinge * turn_in_head_side(q1, t1, beta, moment_nmm);
    // Mode e is mode d seen from the other side.
    let e = one_hinge * turn_in_head_side(q1 * beta, t2, 1.0 / beta, moment_nmm);
    let f = two_hinges * (2.0 * beta / (1.0 + beta)).sqrt() * (2.0 * moment_nmm * q1).sqrt();
    [c, d, e, f]
}

/// Turning in a member of resistance `q` per length and thickness `t`, with a hinge in its neighbour.
fn turn_in_head_side(q: f64, t_mm: f64, beta: f64, moment_nmm: f64) -> f64 {
    let slenderness = moment_nmm / (q * t_mm * t_mm);
    let root = (2.0 * beta * (1.0 + beta) + 4.0 * beta * (2.0 + beta) * slenderness).sqrt();
    q * t_mm * beta * (1.0 + 4.0 * slenderness) / (root + beta)
}

/// Characteristic lateral capacity of a fastener in single shear between timber or panel members, by every mode.
///
/// # Equation
/// ```text
/// a   f_h1 t_1 d                    b   f_h2 t_2 d                r = t_2 / t_1    β = f_h2 / f_h1
/// c   f_h1 t_1 d / (1 + β) [√(β + 2 β² (1 + r + r²) + β³ r²) − β (1 + r)] + rope
/// d   1.05 f_h1 t_1 d / (2 + β) [√(2 β (1 + β) + 4 β (2 + β) M_y / (f_h1 d t_1²)) − β] + rope
/// e   1.05 f_h1 t_2 d / (1 + 2 β) [√(2 β² (1 + β) + 4 β (1 + 2 β) M_y / (f_h1 d t_2²)) − β] + rope
/// f   1.15 √(2 β / (1 + β)) √(2 M_y f_h1 d) + rope                rope = min(F_ax / 4, cap × Johansen part)
/// F_v,Rk = the least
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | f_h1, f_h2 | embedment strengths | MPa | `head_side_mpa`, `point_side_mpa` |
/// | t_1, t_2 | thickness, penetration | mm | `head_side_mm`, `point_side_mm` |
/// | d, M_y | diameter, yield moment | mm, N·mm | `diameter_mm`, `yield_moment_nmm` |
/// | F_ax, cap | axial capacity, cap of the rope effect | N, – | `axial_capacity_n`, by `fastener` |
///
/// # Limits
/// Members that touch: the standard has no rule for a gap. Characteristic value: k_mod and γ_M are still to come.
///
/// # Errors
/// `out_of_range`, `not_finite`.
///
/// # Source
/// EN 1995-1-1 8.2.2, Eq. 8.6 (seen). Checked by `verification/ec5_shear` and, without the factors 1.05 and 1.15, by an
/// independent limit analysis in the tests.
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::*;
/// // A 3.1 mm nail through LVL into a stud.
/// let nail = ec5_single_shear(&Ec5SingleShearInput {
///     fastener: Ec5Fastener::RoundNail,
///     diameter_mm: 3.1,
///     yield_moment_nmm: 3_410.0,
///     head_side_mpa: 28.03,
///     point_side_mpa: 23.94,
///     head_side_mm: 51.0,
///     point_side_mm: 39.0,
///     axial_capacity_n: 0.0,
/// })?;
/// assert_eq!(nail.governing_mode, Ec5SingleShearMode::F);
/// assert!((nail.capacity_n - 850.0).abs() < 1.0);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn ec5_single_shear(input: &Ec5SingleShearInput) -> Result<Ec5SingleShear, Fault> {
    input.check_ranges()?;
    use Ec5SingleShearMode as Mode;
    let d_mm = input.diameter_mm;
    let [c_johansen_n, d_johansen_n, e_johansen_n, f_johansen_n] = johansen_single(input, ONE_HINGE, TWO_HINGES);
    let rope_cap_share = input.fastener.rope_cap();
    let roped = |johansen_n| with_rope(johansen_n, input.axial_capacity_n, rope_cap_share);
    let a_n = input.head_side_mpa * input.head_side_mm * d_mm;
    let b_n = input.point_side_mpa * input.point_side_mm * d_mm;
    let (c_n, d_n) = (roped(c_johansen_n), roped(d_johansen_n));
    let (e_n, f_n) = (roped(e_johansen_n), roped(f_johansen_n));
    let others = [(Mode::B, b_n), (Mode::C, c_n), (Mode::D, d_n), (Mode::E, e_n), (Mode::F, f_n)];
    let (governing_mode, capacity_n) = least((Mode::A, a_n), &others);
    Ok(Ec5SingleShear {
        beta: input.point_side_mpa / input.head_side_mpa,
        c_johansen_n,
        d_johansen_n,
        e_johansen_n,
        f_johansen_n,
        rope_cap_share,
        a_n,
        b_n,
        c_n,
        d_n,
        e_n,
        f_n,
        governing_mode,
        capacity_n,
    })
}

/// The way in which a symmetric joint in double shear gives in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum Ec5DoubleShearMode {
    /// Mode g: the outer members are crushed along their whole thickness.
    G,
    /// Mode h: the middle member is crushed along its whole thickness.
    H,
    /// Mode j: the fastener turns in the outer members and bends in the middle one.
    J,
    /// Mode k: the fastener bends in the outer and in the middle members.
    K,
}

/// A fastener through three members, the outer two alike.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<Ec5DoubleShearInput>))]
pub struct Ec5DoubleShearInput {
    /// Kind of fastener; limits the rope effect.
    pub fastener: Ec5Fastener,
    /// Diameter, for screws the effective one, mm.
    pub diameter_mm: f64,
    /// Characteristic yield moment M_y,Rk, N·mm.
    pub yield_moment_nmm: f64,
    /// Embedment strength of the outer members f_h,1,k at the angle of the force, MPa.
    pub outer_mpa: f64,
    /// Embedment strength of the middle member f_h,2,k at the angle of the force, MPa.
    pub middle_mpa: f64,
    /// Thickness of an outer member, the smaller of both and of the penetration at the point, t_1, mm.
    pub outer_mm: f64,
    /// Thickness of the middle member t_2, mm.
    pub middle_mm: f64,
    /// Characteristic capacity along the axis F_ax,Rk, N; by default 0, no rope effect.
    #[cfg_attr(feature = "json", serde(default))]
    pub axial_capacity_n: f64,
}

limited!(Ec5DoubleShearInput {
    diameter_mm: FASTENER_DIAMETER,
    yield_moment_nmm: YIELD_MOMENT,
    outer_mpa: STRESS,
    middle_mpa: STRESS,
    outer_mm: BEARING_LENGTH,
    middle_mm: BEARING_LENGTH,
    axial_capacity_n: FORCE
});

/// Characteristic lateral capacity per shear plane of one fastener in double shear, every mode shown.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct Ec5DoubleShear {
    /// Ratio of the embedment strengths, beta = f_h,2,k / f_h,1,k (8.8).
    pub beta: f64,
    /// Johansen part of mode j per shear plane, N.
    pub j_johansen_n: f64,
    /// Johansen part of mode k per shear plane, N.
    pub k_johansen_n: f64,
    /// Most that the rope effect may add, as a share of the Johansen part (8.2.2(2)).
    pub rope_cap_share: f64,
    /// Mode g per shear plane (8.7), N.
    pub g_n: f64,
    /// Mode h per shear plane (8.7), N.
    pub h_n: f64,
    /// Mode j per shear plane with rope effect (8.7), N.
    pub j_n: f64,
    /// Mode k per shear plane with rope effect (8.7), N.
    pub k_n: f64,
    /// Mode with the least capacity.
    pub governing_mode: Ec5DoubleShearMode,
    /// Characteristic lateral capacity F_v,Rk per shear plane, the least of the modes, N.
    pub per_plane_n: f64,
    /// Both shear planes together, N.
    pub capacity_n: f64,
}

/// Johansen parts of modes j and k of (8.7) with given factors.
pub(super) fn johansen_double(input: &Ec5DoubleShearInput, one_hinge: f64, two_hinges: f64) -> [f64; 2] {
    let q1 = input.outer_mpa * input.diameter_mm;
    let beta = input.middle_mpa / input.outer_mpa;
    let j = one_hinge * turn_in_head_side(q1, input.outer_mm, beta, input.yield_moment_nmm);
    let k = two_hinges * (2.0 * beta / (1.0 + beta)).sqrt() * (2.0 * input.yield_moment_nmm * q1).sqrt();
    [j, k]
}

/// Characteristic lateral capacity of a fastener in double shear between timber or panel members, by every mode.
///
/// # Equation
/// ```text
/// g   f_h1 t_1 d        h   0.5 f_h2 t_2 d        β = f_h2 / f_h1        per shear plane
/// j   1.05 f_h1 t_1 d / (2 + β) [√(2 β (1 + β) + 4 β (2 + β) M_y / (f_h1 d t_1²)) − β] + rope
/// k   1.15 √(2 β / (1 + β)) √(2 M_y f_h1 d) + rope        rope = min(F_ax / 4, cap × Johansen part)
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | f_h1, f_h2 | embedment strengths, outer and middle | MPa | `outer_mpa`, `middle_mpa` |
/// | t_1, t_2 | thicknesses, outer and middle | mm | `outer_mm`, `middle_mm` |
/// | d, M_y | diameter, yield moment | mm, N·mm | `diameter_mm`, `yield_moment_nmm` |
///
/// # Limits
/// Symmetric joints whose members touch. Characteristic value: k_mod and γ_M are still to come.
///
/// # Errors
/// `out_of_range`, `not_finite`.
///
/// # Source
/// EN 1995-1-1 8.2.2, Eq. 8.7 (seen). Checked by `verification/ec5_shear` and, without the factors 1.05 and 1.15, by an
/// independent limit analysis in the tests.
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::*;
/// let dowel = ec5_double_shear(&Ec5DoubleShearInput {
///     fastener: Ec5Fastener::Dowel, diameter_mm: 12.0, yield_moment_nmm: 115_118.0, outer_mpa: 25.3,
///     middle_mpa: 25.3, outer_mm: 36.0, middle_mm: 48.0, axial_capacity_n: 0.0,
/// })?;
/// assert_eq!(dowel.governing_mode, Ec5DoubleShearMode::J);
/// assert!((dowel.per_plane_n - 6_658.0).abs() < 1.0);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn ec5_double_shear(input: &Ec5DoubleShearInput) -> Result<Ec5DoubleShear, Fault> {
    input.check_ranges()?;
    use Ec5DoubleShearMode as Mode;
    let [j_johansen_n, k_johansen_n] = johansen_double(input, ONE_HINGE, TWO_HINGES);
    let rope_cap_share = input.fastener.rope_cap();
    let roped = |johansen_n| with_rope(johansen_n, input.axial_capacity_n, rope_cap_share);
    let g_n = input.outer_mpa * input.outer_mm * input.diameter_mm;
    let h_n = 0.5 * input.middle_mpa * input.middle_mm * input.diameter_mm;
    let (j_n, k_n) = (roped(j_johansen_n), roped(k_johansen_n));
    let (governing_mode, per_plane_n) = least((Mode::G, g_n), &[(Mode::H, h_n), (Mode::J, j_n), (Mode::K, k_n)]);
    Ok(Ec5DoubleShear {
        beta: input.middle_mpa / input.outer_mpa,
        j_johansen_n,
        k_johansen_n,
        rope_cap_share,
        g_n,
        h_n,
        j_n,
        k_n,
        governing_mode,
        per_plane_n,
        capacity_n: 2.0 * per_plane_n,
    })
}

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::fasten) const EC5_SINGLE_SHEAR: crate::json::Calculation = crate::json::calculation!(
    ec5_single_shear: Ec5SingleShearInput => Ec5SingleShear, Typed,
    "Eurocode 5: lateral capacity of a fastener in single shear between timber members, by every mode"
);

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::fasten) const EC5_DOUBLE_SHEAR: crate::json::Calculation = crate::json::calculation!(
    ec5_double_shear: Ec5DoubleShearInput => Ec5DoubleShear, Typed,
    "Eurocode 5: lateral capacity of a fastener in double shear between timber members, by every mode"
);
