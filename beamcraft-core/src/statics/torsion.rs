//! Torsion of thin-walled sections, closed and open.

use crate::error::{Detail, Error, ErrorCode, Fault, Result};
use crate::finding::{Caution, CautionText};
use crate::limits::{faults_at, limited};
use crate::numeric::compensated_sum;

/// A thin-walled section under a torque.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<WallTorsionInput>))]
pub struct WallTorsionInput {
    /// Walls, each by its midline.
    pub walls: Vec<TorsionWall>,
    /// Area that the midlines enclose, mm²; left out the section is open.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub enclosed_mm2: Option<f64>,
    /// Torque, N·mm.
    pub torque_nmm: f64,
    /// Length over which the torque acts, mm; 0, the default, asks for no twist.
    #[cfg_attr(feature = "json", serde(default))]
    pub length_mm: f64,
    /// Shear modulus, MPa; left out no twist is given.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub shear_modulus_mpa: Option<f64>,
}

limited!(WallTorsionInput {
    enclosed_mm2: CROSS_SECTION,
    torque_nmm: MOMENT,
    length_mm: LENGTH,
    shear_modulus_mpa: ELASTIC_MODULUS,
});

/// One wall of a thin-walled section.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<TorsionWall>))]
pub struct TorsionWall {
    /// Length of its midline across the section, mm.
    pub length_mm: f64,
    /// Thickness, mm.
    pub thickness_mm: f64,
}

limited!(TorsionWall { length_mm: LEVER, thickness_mm: BOARD_THICKNESS });

/// Torsion of a thin-walled section.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct WallTorsion {
    /// Torsion constant J as the section is, closed or open, mm⁴.
    pub torsion_constant_mm4: f64,
    /// Torsion constant of the same walls slit open, Σ b t³/3, mm⁴.
    pub open_constant_mm4: f64,
    /// How many times stiffer the closed section is than the same walls slit open; absent for an open section.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub stiffer_closed: Option<f64>,
    /// Shear stress of each wall, in the order given, MPa.
    pub stresses_mpa: Vec<f64>,
    /// Largest of them, MPa.
    pub greatest_stress_mpa: f64,
    /// Shear flow round a closed section, N/mm: what every glue line across its walls feels.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub shear_flow_n_per_mm: Option<f64>,
    /// Twist over the length, radians; absent without a shear modulus.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub twist_rad: Option<f64>,
    /// Cautions that belong to these numbers.
    pub cautions: Vec<CautionText>,
}

/// Torsion constant, shear stresses and twist of a closed (Bredt) or open thin-walled section.
///
/// # Equation
/// ```text
/// closed:  q = T/(2 A_m)    tau_i = q/t_i      J = 4 A_m² / Σ (b_i/t_i)
/// open:    J = Σ b_i t_i³/3                    tau_i = T t_i/J
/// twist = T L/(G J)
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | T | torque | N·mm | `torque_nmm` |
/// | A_m | area within the midlines | mm² | `enclosed_mm2` |
/// | b_i, t_i | length and thickness of a wall | mm | `walls[]` |
/// | G, L | shear modulus, length | MPa, mm | `shear_modulus_mpa`, `length_mm` |
///
/// # Limits
/// Free warping; walls that are thin. With board walls of 9 to 25 mm Bredt's constant lies 3 to 9 % below finite
/// elements, the open sum within 2 %; re-entrant corners of an open section feel more than tau. A body open at the back is an
/// open section: 35 to 100 times softer than the closed box of the same outline.
///
/// # Errors
/// `out_of_range`, `not_finite`, each with its path; `no_section` without a wall; `inconsistent` where a closed section has
/// fewer than three walls or encloses more than a circle of its midline would.
///
/// # Source
/// Bredt's formulas and the membrane analogy, as in every textbook; checked by `verification/torsion`.
///
/// # Examples
/// ```
/// use beamcraft_core::statics::{wall_torsion, TorsionWall, WallTorsionInput};
/// let wall = |length_mm, thickness_mm| TorsionWall { length_mm, thickness_mm };
/// let tube = wall_torsion(&WallTorsionInput {
///     walls: vec![wall(57.0, 5.0), wall(35.0, 3.0), wall(57.0, 5.0), wall(35.0, 3.0)],
///     enclosed_mm2: Some(57.0 * 35.0), torque_nmm: 35_000.0, length_mm: 0.0, shear_modulus_mpa: None,
/// })?;
/// assert!((tube.stresses_mpa[0] - 1.754).abs() < 1e-3 && (tube.stresses_mpa[1] - 2.924).abs() < 1e-3);
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn wall_torsion(input: &WallTorsionInput) -> Result<WallTorsion> {
    let mut faults: Vec<Detail> = faults_at("", input);
    for (k, wall) in input.walls.iter().enumerate() {
        faults.extend(faults_at(&format!("walls[{k}]"), wall));
    }
    if input.walls.is_empty() {
        faults.push(Fault::plain(ErrorCode::NoSection, "walls", "at least one wall", "").into());
    }
    Error::unless_empty(faults)?;
    let WallTorsionInput { torque_nmm: torque, length_mm, shear_modulus_mpa, .. } = *input;
    if let Some(area) = input.enclosed_mm2 {
        let around = compensated_sum(input.walls.iter().map(|wall| wall.length_mm));
        // The circle encloses most; a hair for the rounding of a circle given as many short walls.
        if input.walls.len() < 3 || area > around * around / (4.0 * core::f64::consts::PI) * (1.0 + 1e-9) {
            let allowed = "what three or more walls can enclose";
            return Err(Fault::plain(ErrorCode::Inconsistent, "enclosed_mm2", allowed, "leave it out when open").into());
        }
    }
    let cube = |wall: &TorsionWall| wall.length_mm * wall.thickness_mm * wall.thickness_mm * wall.thickness_mm / 3.0;
    let open_constant_mm4 = compensated_sum(input.walls.iter().map(cube));
    let slender = compensated_sum(input.walls.iter().map(|wall| wall.length_mm / wall.thickness_mm));
    let closed = input.enclosed_mm2.map(|area| (4.0 * area * area / slender, torque / (2.0 * area)));
    let constant = closed.map_or(open_constant_mm4, |(constant, _)| constant);
    let stress = |wall: &TorsionWall| match closed {
        Some((_, flow)) => flow / wall.thickness_mm,
        None => torque * wall.thickness_mm / open_constant_mm4,
    };
    let stresses_mpa: Vec<f64> = input.walls.iter().map(stress).collect();
    Ok(WallTorsion {
        torsion_constant_mm4: constant,
        open_constant_mm4,
        stiffer_closed: closed.map(|(constant, _)| constant / open_constant_mm4),
        greatest_stress_mpa: stresses_mpa.iter().copied().fold(0.0, f64::max),
        stresses_mpa,
        shear_flow_n_per_mm: closed.map(|(_, flow)| flow),
        twist_rad: shear_modulus_mpa.map(|modulus| torque * length_mm / (modulus * constant)),
        cautions: vec![Caution::Structure.into()],
    })
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const WALL_TORSION: crate::json::Calculation = crate::json::calculation!(
    wall_torsion: WallTorsionInput => WallTorsion, Document,
    "Torsion constant, shear stresses and twist of a closed or open thin-walled section"
);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::statics::test_inputs::hostile;
    use proptest::prelude::*;

    fn input(walls: &[(f64, f64)], enclosed_mm2: Option<f64>) -> WallTorsionInput {
        let walls = walls
            .iter()
            .map(|(length_mm, thickness_mm)| TorsionWall { length_mm: *length_mm, thickness_mm: *thickness_mm });
        WallTorsionInput {
            walls: walls.collect(),
            enclosed_mm2,
            torque_nmm: 1000.0,
            length_mm: 100.0,
            shear_modulus_mpa: Some(700.0),
        }
    }

    #[test]
    fn a_body_open_at_the_back_is_tens_of_times_softer() {
        // The reference figure for board walls is 35 to 100 times.
        let box_walls = [(180.0, 18.0), (130.0, 18.0), (180.0, 18.0), (130.0, 18.0)];
        let closed = wall_torsion(&input(&box_walls, Some(180.0 * 130.0))).unwrap();
        assert!((35.0..101.0).contains(&closed.stiffer_closed.unwrap()), "{closed:?}");
    }

    #[test]
    fn what_encloses_nothing_or_too_much_is_refused() {
        assert_eq!(wall_torsion(&input(&[], None)).unwrap_err().code(), ErrorCode::NoSection);
        let three = [(10.0, 1.0); 3];
        assert_eq!(wall_torsion(&input(&three, Some(100.0))).unwrap_err().field(), "enclosed_mm2");
        assert_eq!(wall_torsion(&input(&three[..2], Some(1.0))).unwrap_err().field(), "enclosed_mm2");
    }

    proptest! {
        #[test]
        fn the_work_of_the_torque_is_the_strain_energy_of_the_flow(
            b in 10.0..500.0_f64, h in 10.0..500.0_f64, t in proptest::array::uniform4(1.0..30.0_f64),
        ) {
            let walls = [(b, t[0]), (h, t[1]), (b, t[2]), (h, t[3])];
            let tube = wall_torsion(&input(&walls, Some(b * h))).unwrap();
            let energy: f64 = tube.stresses_mpa.iter().zip(walls).map(|(tau, (l, t))| tau * tau / 1400.0 * l * t * 100.0).sum();
            prop_assert!((0.5 * 1000.0 * tube.twist_rad.unwrap() - energy).abs() <= 1e-9 * energy);
        }

        #[test]
        fn hostile_numbers_are_refused_or_give_finite_results(
            walls in proptest::collection::vec((hostile(), hostile()), 0..5), area in proptest::option::of(hostile()),
            torque in hostile(), length in hostile(), modulus in proptest::option::of(hostile()),
        ) {
            let mut input = input(&walls, area);
            (input.torque_nmm, input.length_mm, input.shear_modulus_mpa) = (torque, length, modulus);
            if let Ok(torsion) = wall_torsion(&input) {
                prop_assert!(torsion.greatest_stress_mpa.is_finite() && torsion.torsion_constant_mm4 > 0.0);
                prop_assert!(torsion.twist_rad.is_none_or(f64::is_finite));
            }
        }
    }
}
