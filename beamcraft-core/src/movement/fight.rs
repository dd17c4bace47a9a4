//! The cross-grain fight: a return whose grain runs front to back, glued to a top and a bottom that move in that direction.

use super::board::{BoardCut, directions, ring_angle};
use super::figures::{Direction, MovingWood};
use crate::cite::{Clause, Source};
use crate::error::{Detail, Error, ErrorCode, Result};
use crate::finding::{Caution, CautionText, Finding, FindingCode, Grade, Quantity};
use crate::limits::{faults_at, limited};
use crate::wood::WoodGroup;

/// How a return is fastened to the top and the bottom.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum ReturnArrangement {
    /// Glued over the whole depth.
    GluedAll,
    /// Glued at the front only; slotted screws or a dry spline behind.
    GluedFront,
    /// Top and bottom of veneered sheet goods, which hardly move.
    SheetCore,
    /// No glued return: end-grain shown, or a return held by clips or by slotted screws alone.
    NotGlued,
}

/// A return against a top or bottom.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<CrossGrainFightInput>))]
pub struct CrossGrainFightInput {
    /// Wood of the top and the bottom, whose grain runs along the body.
    pub wood: MovingWood,
    /// How the top and the bottom were sawn.
    pub cut: BoardCut,
    /// Angle between growth rings and wide face, degrees; for `ring_angle` only.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub ring_angle_deg: Option<f64>,
    /// Depth over which return and top meet, front to back, mm.
    pub depth_mm: f64,
    /// Moisture content when they are glued, %.
    pub glued_moisture_pct: f64,
    /// Least moisture content in service, %.
    pub driest_moisture_pct: f64,
    /// Greatest moisture content in service, %.
    pub wettest_moisture_pct: f64,
    /// Shrinkage of the return along its grain from green to ovendry, %; 0.1 is the low end of normal wood (0.1 to 0.2).
    #[cfg_attr(feature = "json", serde(default = "along_the_grain"))]
    pub along_shrinkage_pct: f64,
    /// Glued part at the front when only that is glued, mm; 50 when left out (common practice, no source).
    #[cfg_attr(feature = "json", serde(default = "front_part"))]
    pub glued_front_mm: f64,
    /// Movement that is tolerated without a finding of more than a note, mm; 0.3 when left out (chosen, no source).
    #[cfg_attr(feature = "json", serde(default = "tolerated"))]
    pub tolerated_mm: f64,
    /// Modulus of elasticity of the top across its grain, MPa; by the ratio of EN 384 for a species when left out.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub modulus_across_mpa: Option<f64>,
}

limited!(CrossGrainFightInput {
    ring_angle_deg: RING_ANGLE,
    depth_mm: BODY_SIZE,
    glued_moisture_pct: MOISTURE,
    driest_moisture_pct: MOISTURE,
    wettest_moisture_pct: MOISTURE,
    along_shrinkage_pct: LINEAR_SHRINKAGE,
    glued_front_mm: BODY_SIZE,
    tolerated_mm: SMALL_LENGTH,
    modulus_across_mpa: MODULUS,
});

#[cfg(feature = "json")]
fn along_the_grain() -> f64 {
    0.1
}

#[cfg(feature = "json")]
fn front_part() -> f64 {
    50.0
}

#[cfg(feature = "json")]
fn tolerated() -> f64 {
    0.3
}

/// What one way of fastening the return makes of the movement.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct CrossGrainCure {
    /// The way of fastening.
    pub arrangement: ReturnArrangement,
    /// Depth over which glue holds the movement back, mm.
    pub glued_mm: f64,
    /// Movement that the glue holds back, mm; absent where no published movement says.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub held_back_mm: Option<f64>,
    /// Movement that must be left free at the rear, mm; absent where no published movement says.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub left_free_mm: Option<f64>,
    /// What to do.
    pub instruction: &'static str,
}

/// The fight, with the ways out of it.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct CrossGrainFight {
    /// How much the top shortens against the return over the whole depth when driest, mm; negative when it grows.
    pub shrink_mm: f64,
    /// How much the top grows against the return over the whole depth when wettest, mm; negative when it shortens.
    pub swell_mm: f64,
    /// Greatest movement either way from the state as glued, mm.
    pub greatest_mm: f64,
    /// Movement between the wettest and the driest state, mm.
    pub range_mm: f64,
    /// Strain of the top against the return when driest; negative when the top wants to be shorter.
    pub strain_dry: f64,
    /// Strain of the top against the return when wettest; positive when the top wants to be longer.
    pub strain_wet: f64,
    /// Modulus of elasticity across the grain, given or by the ratio of EN 384, MPa.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub modulus_across_mpa: Option<f64>,
    /// Greatest tension across the grain if all of the movement were held back elastically, MPa; an upper bound.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub tension_held_mpa: Option<f64>,
    /// Greatest compression across the grain if all of the movement were held back elastically, MPa; an upper bound.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub compression_held_mpa: Option<f64>,
    /// Mean shear along half of a square mitre's glue line that goes with the greater of the two, MPa; an upper bound.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub glue_line_shear_mpa: Option<f64>,
    /// Characteristic tension strength across the grain in the strength classes of the species' group, MPa.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub tension_strength_mpa: Option<f64>,
    /// Ways of fastening the return, with what each holds back and leaves free.
    pub cures: Vec<CrossGrainCure>,
    /// What to know before the glue is spread.
    pub findings: Vec<Finding>,
    /// Cautions that belong to these numbers.
    pub cautions: Vec<CautionText>,
}

/// Movement between a return whose grain runs front to back and the top or bottom it is glued to, with the ways out.
///
/// # Equation
/// ```text
/// ε = ε_top(M_glued → M) − ε_return(M_glued → M)          across the grain of the top, along the grain of the return
/// movement = D ε                                           over the depth D; over the glued part only where that is glued
/// stress held back ≤ E_across |ε|                          E_across = E/15 hardwood, E/30 softwood where not given
/// glue line ≤ √2 · stress                                  force of a strip as wide as D, over half a square mitre's glue line
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | D | depth | mm | `depth_mm` |
/// | ε | differential strain | – | `strain_dry`, `strain_wet` |
/// | E_across | modulus across the grain | MPa | `modulus_across_mpa` |
///
/// The glue line: a disturbance at an edge dies out within about one depth of it, so that a strip of that width and of the
/// thickness t pulls with stress · t · D; half of the glue line of a square mitre, √2 t · D / 2, brings it in.
///
/// # Limits
/// Movement is that of boards that reach balance. The stress is an upper bound: the return yields a little, and wood and glue
/// creep under it, which takes the stress down and leaves the joint open in the opposite season. No published allowable glue-line
/// stress for a shop joint exists, so nothing here passes. Common wood glue softens and creeps in sustained warmth, as over a hearth.
///
/// # Errors
/// `out_of_range`, `not_finite`, `unknown_name`, each with its path; `missing_field` or `inconsistent` for the ring angle;
/// `inconsistent` when wettest lies below driest or the glued part is deeper than the depth.
///
/// # Source
/// Strains: FPL-GTR-190, Eq. 13-2 (seen), 13-3 (recalled form); along the grain: American Wood Council (seen); ratio of moduli:
/// EN 384 (recalled); strength across the grain: EN 338 (seen); the rest is derived in the theory pages — checked by
/// `verification/movement`.
///
/// # Examples
/// ```
/// use beamcraft_core::finding::Grade;
/// use beamcraft_core::movement::{cross_grain_fight, BoardCut, CrossGrainFightInput, MovingSpecies, MovingWood};
/// let fight = cross_grain_fight(&CrossGrainFightInput {
///     wood: MovingWood::Species(MovingSpecies { name: "white ash".to_owned() }),
///     cut: BoardCut::FlatSawn,
///     ring_angle_deg: None,
///     depth_mm: 215.0,
///     glued_moisture_pct: 8.0,
///     driest_moisture_pct: 6.0,
///     wettest_moisture_pct: 11.0,
///     along_shrinkage_pct: 0.1,
///     glued_front_mm: 50.0,
///     tolerated_mm: 0.3,
///     modulus_across_mpa: None,
/// })?;
/// assert!(fight.range_mm > 2.0 && fight.findings[0].grade == Grade::Stop);
/// assert!(fight.cures.iter().any(|cure| cure.held_back_mm.is_some_and(|held| held < 0.5)));
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn cross_grain_fight(input: &CrossGrainFightInput) -> Result<CrossGrainFight> {
    let mut faults = faults_at("", input);
    let figures = input.wood.resolve();
    let figures = figures.map_err(|error| faults.extend(error.within("wood").details().iter().cloned())).ok();
    let angle = ring_angle(input.cut, input.ring_angle_deg).map_err(|fault| faults.push(fault.into())).ok();
    let (dry, wet) = (input.driest_moisture_pct, input.wettest_moisture_pct);
    let mut inconsistent = |path: &str, value: f64, unit: &str, allowed: &str| {
        let (code, path) = (ErrorCode::Inconsistent, path.to_owned());
        let (given, allowed, cure) = (format!("{value} {unit}"), allowed.to_owned(), String::new());
        faults.push(Detail { code, path, given, allowed, cure });
    };
    if wet < dry {
        inconsistent("wettest_moisture_pct", wet, "%", "at least the driest moisture content");
    }
    if input.glued_front_mm > input.depth_mm {
        inconsistent("glued_front_mm", input.glued_front_mm, "mm", "at most the depth");
    }
    Error::unless_empty(faults)?;
    // Both are there when nothing was at fault.
    let ((figures, species), angle_deg) = match (figures, angle) {
        (Some(figures), Some(angle_deg)) => (figures, angle_deg),
        _ => (input.wood.resolve()?, ring_angle(input.cut, input.ring_angle_deg)?),
    };
    let (across, _) = directions(&figures, angle_deg);
    let along = Direction::of_shrinkage(input.along_shrinkage_pct, figures.fibre_saturation_pct);
    let strain = |moisture_pct: f64| {
        let glued = input.glued_moisture_pct;
        across.strain(glued, moisture_pct) - along.strain(glued, moisture_pct)
    };
    let (strain_dry, strain_wet) = (strain(dry), strain(wet));
    let depth = input.depth_mm;
    let greatest = strain_dry.abs().max(strain_wet.abs());
    let greatest_mm = depth * greatest;
    let modulus_across_mpa = input
        .modulus_across_mpa
        .or_else(|| species.map(|species| modulus_across_mpa(species.group, species.modulus_of_elasticity_mpa)));
    // Wood that is held longer than it wants to be is in tension.
    let tension_strain = 0.0_f64.max(-strain_dry).max(-strain_wet);
    let compression_strain = 0.0_f64.max(strain_dry).max(strain_wet);
    let tension_strength_mpa = species.map(|species| match species.group {
        WoodGroup::Hardwood => HARDWOOD_TENSION_MPA,
        WoodGroup::Softwood => SOFTWOOD_TENSION_MPA,
    });
    let mut fight = CrossGrainFight {
        shrink_mm: -depth * strain_dry,
        swell_mm: depth * strain_wet,
        greatest_mm,
        range_mm: depth * (strain_wet - strain_dry).abs().max(greatest),
        strain_dry,
        strain_wet,
        modulus_across_mpa,
        tension_held_mpa: modulus_across_mpa.map(|modulus| modulus * tension_strain),
        compression_held_mpa: modulus_across_mpa.map(|modulus| modulus * compression_strain),
        glue_line_shear_mpa: modulus_across_mpa.map(|modulus| core::f64::consts::SQRT_2 * modulus * greatest),
        tension_strength_mpa,
        cures: cures(depth, input.glued_front_mm, greatest),
        findings: Vec::new(),
        cautions: vec![Caution::HeldMovement.into()],
    };
    fight.findings.push(finding(&fight, input));
    Ok(fight)
}

/// Modulus of elasticity across the grain by the ratio of EN 384, MPa.
pub(crate) fn modulus_across_mpa(group: WoodGroup, along_mpa: f64) -> f64 {
    match group {
        WoodGroup::Hardwood => along_mpa / HARDWOOD_RATIO,
        WoodGroup::Softwood => along_mpa / SOFTWOOD_RATIO,
    }
}

/// Ratios of the moduli along and across the grain (EN 384:2016, recalled).
const HARDWOOD_RATIO: f64 = 15.0;
const SOFTWOOD_RATIO: f64 = 30.0;
/// Characteristic tension strength across the grain of every strength class (EN 338:2016, Tables 1 and 3, seen), MPa.
const HARDWOOD_TENSION_MPA: f64 = 0.6;
const SOFTWOOD_TENSION_MPA: f64 = 0.4;

/// The four ways of fastening, from the one that fights to the one that does not.
fn cures(depth_mm: f64, glued_front_mm: f64, strain: f64) -> Vec<CrossGrainCure> {
    let way = |arrangement, glued_mm: f64, instruction| CrossGrainCure {
        arrangement,
        glued_mm,
        held_back_mm: Some(strain * glued_mm),
        left_free_mm: Some(strain * (depth_mm - glued_mm)),
        instruction,
    };
    vec![
        way(ReturnArrangement::GluedAll, depth_mm, "glue over the whole depth: all of the movement is held back"),
        way(
            ReturnArrangement::GluedFront,
            glued_front_mm,
            "glue the front part only; hold the rear with screws in slots or a dry spline, and let it slide by this much",
        ),
        CrossGrainCure {
            arrangement: ReturnArrangement::SheetCore,
            glued_mm: depth_mm,
            held_back_mm: None,
            left_free_mm: None,
            instruction: "make top and bottom (not only the return) of veneered sheet goods, which hardly move; the maker's data say how much",
        },
        way(
            ReturnArrangement::NotGlued,
            0.0,
            "no glued return: show the end grain of the top, or hold the return by slotted screws alone",
        ),
    ]
}

fn finding(fight: &CrossGrainFight, input: &CrossGrainFightInput) -> Finding {
    let over_strength = match (fight.tension_held_mpa, fight.tension_strength_mpa) {
        (Some(tension), Some(strength)) => tension > strength,
        _ => false,
    };
    let grade = match (fight.greatest_mm > input.tolerated_mm, over_strength) {
        (false, _) => Grade::Note,
        (true, false) => Grade::Caution,
        (true, true) => Grade::Stop,
    };
    let message = match grade {
        Grade::Note => "The top moves against the return by less than is tolerated.",
        Grade::Caution => {
            "The top moves across its grain, the return glued to it does not: seam or board will give way somewhere."
        }
        Grade::Stop => {
            "The top moves across its grain, the return glued to it does not; held back elastically it would pull harder than wood \
             holds across the grain: expect a split board or an open seam."
        }
    };
    let cure = match grade {
        Grade::Note => "",
        _ => "glue the front part only and slot the rear; or top and bottom with a sheet core; or no glued return",
    };
    let mut numbers = vec![
        Quantity::new("top shorter than the return when driest", fight.shrink_mm, "mm"),
        Quantity::new("top longer than the return when wettest", fight.swell_mm, "mm"),
    ];
    if let Some(tension_mpa) = fight.tension_held_mpa {
        numbers.push(Quantity::new("tension across the grain if held back elastically, at most", tension_mpa, "MPa"));
    }
    Finding {
        grade,
        code: FindingCode::CrossGrainFight,
        subject: "return|top".to_owned(),
        message: message.to_owned(),
        numbers,
        cure: cure.to_owned(),
        clause: Some(Clause::new(Source::WoodHandbook2010, "chapter 13")),
    }
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const CROSS_GRAIN_FIGHT: crate::json::Calculation = crate::json::calculation!(
    cross_grain_fight: CrossGrainFightInput => CrossGrainFight, Document,
    "Movement between a return and the top it is glued to across the grain, with the ways out"
);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::movement::{MovementFigures, MovingSpecies};
    use proptest::prelude::*;

    fn ash() -> CrossGrainFightInput {
        CrossGrainFightInput {
            wood: MovingWood::Species(MovingSpecies { name: "white ash".to_owned() }),
            cut: BoardCut::FlatSawn,
            ring_angle_deg: None,
            depth_mm: 215.0,
            glued_moisture_pct: 8.0,
            driest_moisture_pct: 6.0,
            wettest_moisture_pct: 11.0,
            along_shrinkage_pct: 0.1,
            glued_front_mm: 50.0,
            tolerated_mm: 0.3,
            modulus_across_mpa: None,
        }
    }

    #[test]
    fn every_way_of_fastening_shares_the_movement_out() {
        let fight = cross_grain_fight(&ash()).expect("allowed");
        for cure in &fight.cures {
            if let (Some(held), Some(free)) = (cure.held_back_mm, cure.left_free_mm) {
                assert!((held + free - fight.greatest_mm).abs() < 1e-12);
            }
        }
        assert_eq!(fight.cures.len(), 4);
        assert_eq!(fight.cautions.len(), 1);
        let finding = &fight.findings[0];
        assert!(
            finding.cure.contains("slot") && finding.cure.contains("sheet core") && finding.cure.contains("no glued")
        );
    }

    #[test]
    fn a_still_climate_makes_no_fight() {
        let input = CrossGrainFightInput { driest_moisture_pct: 8.0, wettest_moisture_pct: 8.0, ..ash() };
        let still = cross_grain_fight(&input).expect("allowed");
        assert_eq!((still.greatest_mm, still.range_mm, still.tension_held_mpa), (0.0, 0.0, Some(0.0)));
        assert_eq!(still.findings[0].grade, Grade::Note);
    }

    #[test]
    fn without_a_modulus_no_stress_is_told() {
        let figures = MovementFigures {
            movement_radial_per_pct: 0.002,
            movement_tangential_per_pct: 0.003,
            shrinkage_radial_pct: None,
            shrinkage_tangential_pct: None,
            fibre_saturation_pct: 30.0,
        };
        let given =
            cross_grain_fight(&CrossGrainFightInput { wood: MovingWood::Figures(figures), ..ash() }).expect("allowed");
        assert_eq!((given.tension_held_mpa, given.glue_line_shear_mpa, given.tension_strength_mpa), (None, None, None));
        assert_eq!(given.findings[0].grade, Grade::Caution);
    }

    #[test]
    fn every_fault_is_told_with_its_path() {
        let input = CrossGrainFightInput {
            wood: MovingWood::Species(MovingSpecies { name: "plastic".to_owned() }),
            ring_angle_deg: Some(20.0),
            driest_moisture_pct: 12.0,
            glued_front_mm: 300.0,
            tolerated_mm: f64::NAN,
            ..ash()
        };
        let error = cross_grain_fight(&input).expect_err("five faults");
        let paths: Vec<_> = error.details().iter().map(|detail| detail.path.as_str()).collect();
        assert_eq!(
            paths,
            ["tolerated_mm", "wood.species.name", "ring_angle_deg", "wettest_moisture_pct", "glued_front_mm"]
        );
    }

    proptest! {
        #[test]
        fn a_deeper_body_fights_harder(depth in 60.0_f64..900.0, dry in 3.0_f64..8.0, wet in 8.0_f64..15.0) {
            let at = |depth_mm: f64| {
                cross_grain_fight(&CrossGrainFightInput { depth_mm, driest_moisture_pct: dry, wettest_moisture_pct: wet, ..ash() })
                    .expect("allowed")
            };
            let (one, double) = (at(depth), at(2.0 * depth));
            prop_assert!((double.greatest_mm - 2.0 * one.greatest_mm).abs() < 1e-12 * double.greatest_mm.max(1.0));
            prop_assert_eq!(one.tension_held_mpa, double.tension_held_mpa);
        }
    }
}
