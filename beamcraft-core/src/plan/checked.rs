//! A spec whose every value is allowed: its existence is the proof, and nothing behind it checks again.

use super::FORMAT;
use super::spec::{BeamSpec, LegShape};
use super::spec_fixing::FixingPlace;
use super::{movement, tolerance};
use crate::error::{Detail, Error, ErrorCode, Fault, Result};
use crate::fasten::ScrewSize;
use crate::limits::{self, faults_at, list_faults};
use crate::movement::{MovementFigures, MovingSpecies, MovingWood};
use crate::setting::{ListingChart, Wall, WallSurvey};
use crate::shell::Leg;
use crate::wood::{NdsCombination, Species, WoodFigures, WoodGroup, nds_combinations};

/// A checked spec with its names looked up.
pub(super) struct Checked<'a> {
    pub(super) spec: &'a BeamSpec,
    pub(super) leg: &'a Leg,
    /// Wood of the panels at its moisture in service.
    pub(super) panels: PlannedWood,
    /// Wood of the cleat's strip.
    pub(super) strip: PlannedWood,
    /// Specific gravity of the studs for connections; of unknown studs the least of the table's softwoods.
    pub(super) stud_gravity: f64,
}

/// A wood with what the plan needs of it.
#[derive(Clone)]
pub(super) struct PlannedWood {
    pub(super) density_kg_m3: f64,
    /// Specific gravity for connections: the smaller of the assigned and the derived one, since the boards carry no grade
    /// stamp.
    pub(super) connection_gravity: f64,
    /// Average bending strength of clear wood at 12 %, MPa, where known.
    pub(super) rupture_mpa: Option<f64>,
    /// Average shear strength of clear wood along the grain at 12 %, MPa, where known.
    pub(super) shear_mpa: Option<f64>,
    /// Average strength of clear wood in compression across the grain at 12 %, MPa, where known.
    pub(super) across_mpa: Option<f64>,
    /// Average modulus of elasticity of clear wood at 12 %, MPa, where known.
    pub(super) modulus_mpa: Option<f64>,
    /// Hardwood or softwood, where known.
    pub(super) group: Option<WoodGroup>,
    /// How it moves, where known.
    pub(super) moving: Option<MovingWood>,
}

impl PlannedWood {
    /// A wood of the tables.
    fn listed(name: &str, moisture_pct: f64) -> Result<Self> {
        let species = Species::find(name)?;
        let gravity = species.connection_gravity()?;
        Ok(Self {
            density_kg_m3: species.density(moisture_pct)?.density_kg_m3,
            connection_gravity: gravity.specific_gravity.min(gravity.derived_specific_gravity),
            rupture_mpa: Some(species.modulus_of_rupture_mpa),
            shear_mpa: species.shear_parallel_mpa,
            across_mpa: species.compression_perpendicular_mpa,
            modulus_mpa: Some(species.modulus_of_elasticity_mpa),
            group: Some(species.group),
            moving: Some(MovingWood::Species(MovingSpecies { name: name.to_owned() })),
        })
    }

    /// A wood by the user's numbers.
    fn by_figures(figures: &WoodFigures, moisture_pct: f64) -> Result<Self> {
        let density = figures.density(moisture_pct)?;
        Ok(Self {
            density_kg_m3: density.density_kg_m3,
            connection_gravity: density.specific_gravity_ovendry,
            rupture_mpa: figures.modulus_of_rupture_mpa,
            shear_mpa: figures.shear_parallel_mpa,
            across_mpa: figures.compression_perpendicular_mpa,
            modulus_mpa: figures.modulus_of_elasticity_mpa,
            group: figures.group,
            moving: MovementFigures::of_wood(figures).map(MovingWood::Figures),
        })
    }
}

/// Path of the one leg.
pub(super) const LEG: &str = "body.legs[0].rectangular";

impl<'a> Checked<'a> {
    /// Checks the whole spec but the geometry of the body, which the shell checks.
    ///
    /// # Errors
    /// Every fault, each with its path.
    pub(super) fn of(spec: &'a BeamSpec) -> Result<Self> {
        let mut faults = plain_faults(spec);
        let leg = only_leg(spec).map_err(|fault| faults.push(fault)).ok();
        // A moisture outside its range is among the faults already; here it only keeps the look-up from adding another.
        let moisture_pct = spec.wood.moisture_pct.clamp(limits::MOISTURE.low, limits::MOISTURE.high);
        let mut wood = |name: &str, figures: Option<&WoodFigures>, part: &str| match figures {
            // Numbers out of range are among the faults already.
            Some(figures) => PlannedWood::by_figures(figures, moisture_pct).ok(),
            None => PlannedWood::listed(name, moisture_pct)
                .map_err(|error| faults.extend(at(&error, &format!("{part}.species"))))
                .ok(),
        };
        let panels = wood(&spec.wood.species, spec.wood.figures.as_ref(), "wood");
        let strip = match (&spec.cleat.species, &spec.cleat.figures) {
            (None, None) => panels.clone(),
            (name, figures) => wood(name.as_deref().unwrap_or_default(), figures.as_ref(), "cleat"),
        };
        let stud_gravity =
            stud_gravity(spec).map_err(|error| faults.extend(at(&error, "site.wall.stud_wood.combination")));
        Error::unless_empty(faults)?;
        match (leg, panels, strip, stud_gravity) {
            (Some(leg), Some(panels), Some(strip), Ok(stud_gravity)) => {
                Ok(Self { spec, leg, panels, strip, stud_gravity })
            }
            // Each of the four leaves a fault when it is missing.
            _ => Err(Error::from(Fault::plain(ErrorCode::MissingField, "body", "a body and a species", ""))),
        }
    }
}

/// Faults of a name that is looked up: the spec holds it in one field, whatever the look-up calls it.
fn at(error: &Error, path: &str) -> Vec<Detail> {
    error.details().iter().cloned().map(|detail| Detail { path: path.to_owned(), ..detail }).collect()
}

/// Ranges and plain rules.
fn plain_faults(spec: &BeamSpec) -> Vec<Detail> {
    let mut faults = Vec::new();
    if spec.beamcraft_spec != FORMAT {
        faults.push(Detail {
            given: spec.beamcraft_spec.to_string(),
            ..Fault::plain(ErrorCode::NotSupported, "beamcraft_spec", "1", "").into()
        });
    }
    faults.extend(faults_at("wood", &spec.wood));
    faults.extend(spec.wood.figures.iter().flat_map(|figures| faults_at("wood.figures", figures)));
    faults.extend(spec.seasons.iter().flat_map(|seasons| movement::faults(seasons, spec)));
    faults.extend(spec.accuracy.iter().flat_map(tolerance::faults));
    faults.extend(spec.saw.faults().into_iter().map(|fault| fault.within("saw")));
    faults.extend(faults_at("frame", &spec.frame));
    faults.extend(spec.frame.blocks.iter().flat_map(|blocks| faults_at("frame.blocks", blocks)));
    let screws = spec.frame.blocks.as_ref().and_then(|blocks| blocks.screws.as_ref());
    faults.extend(screws.into_iter().flat_map(|screws| faults_at("frame.blocks.screws", screws)));
    faults.extend(faults_at("glue_up", &spec.glue_up));
    faults.extend(faults_at("cleat", &spec.cleat));
    faults.extend(spec.cleat.figures.iter().flat_map(|figures| faults_at("cleat.figures", figures)));
    faults.extend(faults_at("cleat.screws", &spec.cleat.screws));
    if spec.cleat.screws.size == ScrewSize::Own {
        let fault = Fault::plain(ErrorCode::NotSupported, "cleat.screws.size", "a size of the table", "");
        faults.push(fault.into());
    }
    if let Some(fixing) = &spec.fixing {
        faults.extend(faults_at("fixing", fixing));
        faults.extend(list_faults("fixing.supports_mm", &fixing.supports_mm, &limits::SIGNED_LENGTH));
        faults.extend(match &fixing.place {
            FixingPlace::Ledger(ledger) => faults_at("fixing.place.ledger", ledger),
            FixingPlace::Ceiling(ceiling) => faults_at("fixing.place.ceiling", ceiling),
        });
    }
    if let Some(site) = &spec.site {
        faults.extend(faults_at("site", site));
        faults.extend(site.services.iter().flat_map(|services| faults_at("site.services", services)));
        faults.extend(faults_at("site.place", &site.place));
        faults.extend(site.wall.iter().flat_map(Wall::faults).map(|fault| fault.within("site.wall")));
        faults.extend(site.survey.iter().flat_map(WallSurvey::faults).map(|fault| fault.within("site.survey")));
        for (k, one) in site.obstructions.iter().enumerate() {
            faults.extend(one.faults().into_iter().map(|fault| fault.within(&format!("site.obstructions[{k}]"))));
        }
        faults.extend(site.opening.iter().flat_map(|opening| faults_at("site.opening", opening)));
        let listing = site.appliance.as_ref().and_then(|appliance| appliance.listing.as_ref());
        let chart = listing.into_iter().flat_map(ListingChart::faults);
        faults.extend(chart.map(|fault| fault.within("site.appliance.listing")));
        for (k, rule) in site.own_clearance_rules.iter().enumerate() {
            faults
                .extend(rule.faults().into_iter().map(|fault| fault.within(&format!("site.own_clearance_rules[{k}]"))));
        }
    }
    faults.extend(faults_at("load", &spec.load));
    if let Some(finish) = &spec.finish {
        faults.extend(faults_at("finish", finish));
        faults.extend(list_faults("finish.can_sizes_l", &finish.can_sizes_l, &limits::CAN_SIZE));
    }
    faults
}

fn only_leg(spec: &BeamSpec) -> core::result::Result<&Leg, Detail> {
    match spec.body.legs.as_slice() {
        [LegShape::Rectangular(leg)] => Ok(leg),
        legs => Err(Detail {
            given: format!("{} legs", legs.len()),
            ..Fault::plain(ErrorCode::NotSupported, "body.legs", "one leg", "plan each leg by itself").into()
        }),
    }
}

fn stud_gravity(spec: &BeamSpec) -> Result<f64> {
    let wood = spec.site.as_ref().and_then(|site| site.wall.as_ref()).map(|wall| &wall.stud_wood);
    if let Some(name) = wood.and_then(|wood| wood.combination.as_ref()) {
        return NdsCombination::find(name).map(|found| found.specific_gravity);
    }
    let softwoods = nds_combinations().iter().filter(|row| row.group == WoodGroup::Softwood);
    let least = softwoods.map(|row| row.specific_gravity).fold(f64::MAX, f64::min);
    Ok(wood.and_then(|wood| wood.specific_gravity).unwrap_or(least))
}
