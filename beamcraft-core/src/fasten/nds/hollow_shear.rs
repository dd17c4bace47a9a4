//! Lateral capacity of one dowel between members that may be hollow: two walls with a void that the dowel crosses.

use super::EDGE_MM;
use super::lateral::{DowelShearInput, YieldMode, reduction};
use crate::error::{Allowed, ErrorCode, Fault};
use crate::limits::{Limited, limited};

/// A dowel through a side member into a main member, each solid or of two equal walls with a void between them.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<DowelShearHollowInput>))]
pub struct DowelShearHollowInput {
    /// Diameter in the yield equations (NDS 12.3.7): the thread root where threads bear, else the full shank, mm.
    pub yield_diameter_mm: f64,
    /// Nominal diameter, mm; left out it is the yield diameter, as for nails and bolts.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub nominal_diameter_mm: Option<f64>,
    /// Bending yield strength of the dowel, MPa.
    pub bending_yield_mpa: f64,
    /// Dowel bearing strength of the main member at the angle of the load, MPa.
    pub main_bearing_mpa: f64,
    /// Dowel bearing strength of the side member at the angle of the load, MPa.
    pub side_bearing_mpa: f64,
    /// Bearing length in the main member, in both walls together, mm.
    pub main_length_mm: f64,
    /// Void between the walls of the main member, mm; by default none.
    #[cfg_attr(feature = "json", serde(default))]
    pub main_void_mm: f64,
    /// Bearing length in the side member, in both walls together, mm.
    pub side_length_mm: f64,
    /// Void between the walls of the side member, mm; by default none.
    #[cfg_attr(feature = "json", serde(default))]
    pub side_void_mm: f64,
    /// Gap between the members, such as a wall lining that is not counted on, mm; by default they touch.
    #[cfg_attr(feature = "json", serde(default))]
    pub gap_mm: f64,
    /// Largest angle between the load and the grain of either member, degrees.
    pub max_angle_to_grain_deg: f64,
}

limited!(DowelShearHollowInput {
    yield_diameter_mm: FASTENER_DIAMETER,
    nominal_diameter_mm: FASTENER_DIAMETER,
    bending_yield_mpa: STRESS,
    main_bearing_mpa: STRESS,
    side_bearing_mpa: STRESS,
    main_length_mm: BEARING_LENGTH,
    main_void_mm: SMALL_LENGTH,
    side_length_mm: BEARING_LENGTH,
    side_void_mm: SMALL_LENGTH,
    gap_mm: SMALL_LENGTH,
    max_angle_to_grain_deg: ANGLE_TO_GRAIN
});

/// Lateral capacity of one dowel between members that may be hollow, every mode shown.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct DowelShearHollow {
    /// Reduction term R_d of the modes I (NDS Table 12.3.1B).
    pub reduction_i: f64,
    /// Reduction term R_d of the mode II.
    pub reduction_ii: f64,
    /// Reduction term R_d of the modes III and IV.
    pub reduction_iii_iv: f64,
    /// Yield load of mode I_m, before reduction, N.
    pub im_yield_n: f64,
    /// Yield load of mode I_s, before reduction, N.
    pub is_yield_n: f64,
    /// Yield load of mode II, before reduction, N.
    pub ii_yield_n: f64,
    /// Yield load of mode III_m, before reduction, N.
    pub iiim_yield_n: f64,
    /// Yield load of mode III_s, before reduction, N.
    pub iiis_yield_n: f64,
    /// Yield load of mode IV, before reduction, N.
    pub iv_yield_n: f64,
    /// Reference design value of mode I_m, N.
    pub im_n: f64,
    /// Reference design value of mode I_s, N.
    pub is_n: f64,
    /// Reference design value of mode II, N.
    pub ii_n: f64,
    /// Reference design value of mode III_m, N.
    pub iiim_n: f64,
    /// Reference design value of mode III_s, N.
    pub iiis_n: f64,
    /// Reference design value of mode IV, N.
    pub iv_n: f64,
    /// Mode with the least reference design value.
    pub governing_mode: YieldMode,
    /// Reference lateral design value Z: the least of the modes, before any adjustment factor, N.
    pub reference_n: f64,
}

/// Lateral capacity of one dowel in single shear through or into a hollow member.
///
/// # Equation
/// ```text
/// q = F_e D_y per member      M = F_yb D_y³ / 6      I_m: P = q_m l_m      I_s: P = q_s l_s
/// II to IV: A P² + B P + C = 0, each member with a share of A, of B (the gap g besides) and of C
///
///                              A           B          C
///   dowel turns in it          1/(4 q)     l/2 + v    −q l²/4 − q l v/2
///   hinge in the near wall     1/(2 q)     0          −M
///   hinge in the far wall      1/(2 q)     v          −M − q l v/2
///
/// II: both turn      III_m: the main one turns      III_s: the side one turns      IV: neither
/// each mode is the least over the walls that its hinges may lie in      Z = min over the modes of P / R_d
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | D_y, D | yield diameter, nominal diameter | mm | `yield_diameter_mm`, `nominal_diameter_mm` |
/// | F_yb | bending yield strength | MPa | `bending_yield_mpa` |
/// | F_e, l, v | bearing strength, bearing length and void of a member | MPa, mm, mm | `main_…`, `side_…` |
/// | g | gap | mm | `gap_mm` |
///
/// With walls of t = l/2 this is TR12's t + v in place of l/2 and q t (t + v) in place of q l²/4. Without a void it is
/// [`dowel_shear`](crate::fasten::dowel_shear), which has the reduction terms R_d.
///
/// # Limits
/// Two equal walls, and a dowel that bears on both over their whole thickness: a screw that ends in the near wall has a
/// solid member of that wall. Otherwise as `dowel_shear`. See the caution of the module.
///
/// # Errors
/// `out_of_range`, `not_finite`; `inconsistent` when the yield diameter exceeds the nominal one.
///
/// # Source
/// AWC TR12 for hollow members (recalled, derived again by statics); the hinge in the far wall derived. Checked by
/// `verification/dowel_nds` and by an independent limit analysis in the tests.
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::{DowelShearHollowInput, dowel_shear_hollow};
/// // A 6 mm pin through a hollow shelf, walls of 18 mm and 40 mm between them, into a stud.
/// let pin = DowelShearHollowInput {
///     yield_diameter_mm: 6.0,
///     nominal_diameter_mm: None,
///     bending_yield_mpa: 310.0,
///     main_bearing_mpa: 30.0,
///     side_bearing_mpa: 30.0,
///     main_length_mm: 60.0,
///     main_void_mm: 0.0,
///     side_length_mm: 36.0,
///     side_void_mm: 40.0,
///     gap_mm: 0.0,
///     max_angle_to_grain_deg: 90.0,
/// };
/// let hollow = dowel_shear_hollow(&pin)?;
/// let solid = dowel_shear_hollow(&DowelShearHollowInput { side_void_mm: 0.0, ..pin })?;
/// // The void is an arm for the far wall: it resists the turning better than wood side by side.
/// assert!(hollow.iiis_n > solid.iiis_n);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn dowel_shear_hollow(input: &DowelShearHollowInput) -> Result<DowelShearHollow, Fault> {
    input.check_ranges()?;
    if input.yield_diameter_mm > input.nominal_diameter_mm.unwrap_or(input.yield_diameter_mm) + EDGE_MM {
        return Err(Fault::number(
            ErrorCode::Inconsistent,
            "yield_diameter_mm",
            input.yield_diameter_mm,
            Allowed::Text("at most the nominal diameter"),
            "give the root or the shank diameter",
        ));
    }
    let d = input.yield_diameter_mm;
    let moment_nmm = input.bending_yield_mpa * d * d * d / 6.0;
    let main = Walls { q: input.main_bearing_mpa * d, length_mm: input.main_length_mm, void_mm: input.main_void_mm };
    let side = Walls { q: input.side_bearing_mpa * d, length_mm: input.side_length_mm, void_mm: input.side_void_mm };
    let least = |sides: &[Share], mains: &[Share]| {
        let pairs = sides.iter().flat_map(|side| mains.iter().map(move |main| (side, main)));
        pairs.map(|(side, main)| side.load_n(main, input.gap_mm)).fold(f64::INFINITY, f64::min)
    };
    let (side_hinged, main_hinged) = (side.hinged(moment_nmm), main.hinged(moment_nmm));
    let im_yield_n = main.q * main.length_mm;
    let is_yield_n = side.q * side.length_mm;
    let ii_yield_n = least(&[side.turning()], &[main.turning()]);
    let iiim_yield_n = least(&side_hinged, &[main.turning()]);
    let iiis_yield_n = least(&[side.turning()], &main_hinged);
    let iv_yield_n = least(&side_hinged, &main_hinged);
    let [reduction_i, reduction_ii, reduction_iii_iv] = reduction(&solid(input)).terms;
    let modes = [
        (YieldMode::Im, im_yield_n / reduction_i),
        (YieldMode::Is, is_yield_n / reduction_i),
        (YieldMode::Ii, ii_yield_n / reduction_ii),
        (YieldMode::Iiim, iiim_yield_n / reduction_iii_iv),
        (YieldMode::Iiis, iiis_yield_n / reduction_iii_iv),
        (YieldMode::Iv, iv_yield_n / reduction_iii_iv),
    ];
    let [(_, im_n), (_, is_n), (_, ii_n), (_, iiim_n), (_, iiis_n), (_, iv_n)] = modes;
    let less = |least: (YieldMode, f64), mode: (YieldMode, f64)| if mode.1 < least.1 { mode } else { least };
    let (governing_mode, reference_n) = modes.into_iter().fold((YieldMode::Im, im_n), less);
    Ok(DowelShearHollow {
        reduction_i,
        reduction_ii,
        reduction_iii_iv,
        im_yield_n,
        is_yield_n,
        ii_yield_n,
        iiim_yield_n,
        iiis_yield_n,
        iv_yield_n,
        im_n,
        is_n,
        ii_n,
        iiim_n,
        iiis_n,
        iv_n,
        governing_mode,
        reference_n,
    })
}

/// The same dowel between solid members, for the reduction terms.
fn solid(input: &DowelShearHollowInput) -> DowelShearInput {
    DowelShearInput {
        yield_diameter_mm: input.yield_diameter_mm,
        nominal_diameter_mm: input.nominal_diameter_mm,
        bending_yield_mpa: input.bending_yield_mpa,
        main_bearing_mpa: input.main_bearing_mpa,
        side_bearing_mpa: input.side_bearing_mpa,
        main_length_mm: input.main_length_mm,
        side_length_mm: input.side_length_mm,
        gap_mm: input.gap_mm,
        max_angle_to_grain_deg: input.max_angle_to_grain_deg,
    }
}

/// A member of two equal walls, or a solid one with no void.
struct Walls {
    /// Load per length at which its wood is crushed, N/mm.
    q: f64,
    length_mm: f64,
    void_mm: f64,
}

/// What a member adds to A, to B and to −C.
struct Share {
    a: f64,
    b: f64,
    minus_c: f64,
}

impl Walls {
    fn turning(&self) -> Share {
        let Self { q, length_mm, void_mm } = *self;
        Share {
            a: 0.25 / q,
            b: 0.5 * length_mm + void_mm,
            minus_c: 0.25 * q * length_mm * length_mm + 0.5 * q * length_mm * void_mm,
        }
    }

    /// The hinge in the near wall, and in the far one.
    fn hinged(&self, moment_nmm: f64) -> [Share; 2] {
        let a = 0.5 / self.q;
        let far_nmm = moment_nmm + 0.5 * self.q * self.length_mm * self.void_mm;
        [Share { a, b: 0.0, minus_c: moment_nmm }, Share { a, b: self.void_mm, minus_c: far_nmm }]
    }
}

impl Share {
    /// The positive root of A P² + B P + C = 0, without a loss of digits at a wide gap.
    fn load_n(&self, other: &Self, gap_mm: f64) -> f64 {
        let (a, b, minus_c) = (self.a + other.a, self.b + gap_mm + other.b, self.minus_c + other.minus_c);
        2.0 * minus_c / (b + (b * b + 4.0 * a * minus_c).sqrt())
    }
}

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::fasten) const DOWEL_SHEAR_HOLLOW: crate::json::Calculation = crate::json::calculation!(
    dowel_shear_hollow: DowelShearHollowInput => DowelShearHollow, Typed,
    "Lateral capacity of one dowel in single shear through or into a hollow member by every yield mode"
);

#[cfg(test)]
#[path = "hollow_shear_tests.rs"]
mod tests;
