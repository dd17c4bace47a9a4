//! The body through the year: panels, outer size, seams, cleat, returns and glue.

use super::body::Body;
use super::checked::{LEG, PlannedWood};
use super::result::CleatPlan;
use super::result_seams::{CleatSeasons, MovementPlan, SeamSeasons};
use super::spec::{BeamSpec, LegShape};
use super::spec_seams::{ReturnFixing, SeasonClimate, SeasonsSpec};
use super::within;
use crate::error::{Detail, ErrorCode, Fault, Result};
use crate::finding::{Caution, Finding, FindingCode, Grade, Quantity};
use crate::limits::faults_at;
use crate::movement::{
    BoardMovement, BoardMovementInput, BodyChange, BodyMovement, BodyMovementInput, CleatMovementInput,
    CrossGrainFight, CrossGrainFightInput, GlueLineDemand, GlueLineDemandInput, MitreMovement, MitreMovementInput,
    MovingWood, SeamOpening, SlotLength, SlotLengthInput, YearPanel, YearlyMovement, YearlyMovementInput,
    board_movement, body_movement, cleat_movement, cross_grain_fight, glue_line_demand, mitre_movement,
    modulus_across_mpa, ring_angle, slot_length, yearly_movement,
};
use crate::shell::{EdgeCut, EdgeJoint, FaceKind, Panel, PanelEdge};
use crate::wood::{
    MonthMoisture, SeasonalMoisture, SeasonalMoistureInput, WarmFaceMoistureInput, YearClimate, seasonal_moisture,
    warm_face_moisture,
};

/// Shrinkage along the grain from green to ovendry, %: both ends of normal wood (American Wood Council). The high one is the safe
/// side for the length of the body, the low one for the difference between a return and the top.
const ALONG_HIGH_PCT: f64 = 0.2;
const ALONG_LOW_PCT: f64 = 0.1;
/// Clearance added at each end of a slot, mm; a choice, so that the screw never comes to the end.
const SLOT_CLEARANCE_MM: f64 = 0.5;

/// Every fault of the seasons.
pub(super) fn faults(seasons: &SeasonsSpec, spec: &BeamSpec) -> Vec<Detail> {
    let mut faults = faults_at("seasons", seasons);
    let angle = ring_angle(seasons.cut, seasons.ring_angle_deg);
    faults.extend(angle.err().map(|fault| Detail::from(fault).within("seasons")));
    if let SeasonClimate::MoistureRange(range) = &seasons.climate {
        faults.extend(faults_at("seasons.climate.moisture_range", range));
        if range.wettest_pct < range.driest_pct {
            let path = "climate.moisture_range.wettest_pct";
            faults.push(inconsistent(path, range.wettest_pct, "at least the driest one"));
        }
    }
    let year = year_climate(seasons).map(|climate| seasonal_moisture(&SeasonalMoistureInput { climate }));
    if let Some(Err(error)) = year {
        faults.extend(error.within("seasons").details().iter().cloned());
    }
    let depths = spec.body.legs.iter().map(|LegShape::Rectangular(leg)| leg.depth_mm);
    let too_deep = depths.fold(f64::MAX, f64::min) < seasons.glued_front_mm;
    if seasons.returns == ReturnFixing::GluedFront && too_deep {
        faults.push(inconsistent("glued_front_mm", seasons.glued_front_mm, "at most the depth of the body"));
    }
    faults
}

fn inconsistent(field: &str, given: f64, allowed: &'static str) -> Detail {
    let fault = Fault::plain(ErrorCode::Inconsistent, "", allowed, "");
    Detail { given: given.to_string(), ..Detail::from(fault).within(&format!("seasons.{field}")) }
}

fn year_climate(seasons: &SeasonsSpec) -> Option<YearClimate> {
    match &seasons.climate {
        SeasonClimate::MoistureRange(_) => None,
        SeasonClimate::Indoor(year) => Some(YearClimate::Indoor(year.clone())),
        SeasonClimate::Outdoor(year) => Some(YearClimate::Outdoor(year.clone())),
    }
}

/// The seasons with the wood they work on.
struct Seasons<'a> {
    spec: &'a SeasonsSpec,
    wood: &'a MovingWood,
    made_pct: f64,
    driest_pct: f64,
    wettest_pct: f64,
}

/// The body through the year; nothing without seasons, and with a finding when the movement of the wood is not known.
pub(super) fn through_the_year(
    body: &Body<'_>,
    cleat: Option<&CleatPlan>,
    findings: &mut Vec<Finding>,
) -> Result<Option<MovementPlan>> {
    let spec = body.checked.spec;
    let Some(seasons) = &spec.seasons else { return Ok(None) };
    let Some(wood) = &body.checked.panels.moving else {
        findings.push(no_movement());
        return Ok(None);
    };
    let made_pct = seasons.made_moisture_pct.unwrap_or(spec.wood.moisture_pct);
    let year = year_of(body, seasons, wood, made_pct)?;
    let (driest_pct, wettest_pct) = match (&seasons.climate, &year) {
        (SeasonClimate::MoistureRange(range), _) => (range.driest_pct, range.wettest_pct),
        (_, Some(year)) => ends_of(&year.climate),
        // A climate of months always gives a year.
        (_, None) => (made_pct, made_pct),
    };
    let seasons = Seasons { spec: seasons, wood, made_pct, driest_pct, wettest_pct };
    let outer = seasons.outer(body)?;
    let seams = seams(body, &outer)?;
    findings.extend(open_seam(&seams, limit_mm(spec, seasons.spec)));
    let (returns, rear_slot) = seasons.returns(body, findings)?;
    let glue_line = seasons.glue_line(body, returns.as_ref())?;
    findings.extend(glue_line.findings.iter().filter(|_| is_warm(spec)).cloned());
    Ok(Some(MovementPlan {
        made_moisture_pct: made_pct,
        outer,
        seams,
        cleat: cleat.map(|cleat| seasons.cleat(body, cleat)).transpose()?.flatten(),
        returns,
        rear_slot,
        glue_line,
        warm_face_moisture_pct: year.as_ref().and_then(|year| warm_face(seasons.spec, &year.climate)),
        year,
        cautions: vec![Caution::HeldMovement.into()],
    }))
}

/// Whether anything around the body gives heat, or a temperature was measured.
fn is_warm(spec: &BeamSpec) -> bool {
    let heated = spec.site.as_ref().is_some_and(|site| site.opening.is_some() || site.appliance.is_some());
    heated || spec.seasons.as_ref().is_some_and(|seasons| seasons.seam_temperature_c.is_some())
}

/// Opening of a seam that is not worth a finding, mm: what can be burnished shut, else what is tolerated.
fn limit_mm(spec: &BeamSpec, seasons: &SeasonsSpec) -> f64 {
    spec.accuracy.as_ref().map_or(seasons.tolerated_mm, |accuracy| accuracy.burnish_gap_mm)
}

/// Every panel through twelve months; nothing when only the ends of the year are known.
fn year_of(body: &Body<'_>, seasons: &SeasonsSpec, wood: &MovingWood, made_pct: f64) -> Result<Option<YearlyMovement>> {
    let Some(climate) = year_climate(seasons) else { return Ok(None) };
    let panel = |panel: &Panel| YearPanel {
        id: panel.id.to_string(),
        wood: wood.clone(),
        cut: seasons.cut,
        ring_angle_deg: seasons.ring_angle_deg,
        width_mm: panel.show_width_mm,
        thickness_mm: panel.thickness_mm,
        made_moisture_pct: made_pct,
    };
    let panels = body.shell.panels.iter().map(panel).collect();
    let year = yearly_movement(&YearlyMovementInput { climate, panels });
    year.map(Some).map_err(|error| within(error, "seasons"))
}

/// Least and greatest moisture content of a year, %.
fn ends_of(year: &SeasonalMoisture) -> (f64, f64) {
    let moistures = || year.months.iter().map(|month| month.moisture_pct);
    (moistures().fold(f64::MAX, f64::min), moistures().fold(0.0, f64::max))
}

/// Least moisture content of the year at a face that keeps the temperature given, %.
fn warm_face(seasons: &SeasonsSpec, year: &SeasonalMoisture) -> Option<f64> {
    let face_temperature_c = seasons.seam_temperature_c?;
    let at_face = |month: &MonthMoisture| {
        let input = WarmFaceMoistureInput {
            room_temperature_c: month.temperature_c,
            room_relative_humidity_pct: month.relative_humidity_pct,
            face_temperature_c,
        };
        Some(warm_face_moisture(&input).ok()?.face_moisture_pct)
    };
    year.months.iter().filter_map(at_face).reduce(f64::min)
}

impl Seasons<'_> {
    fn outer(&self, body: &Body<'_>) -> Result<BodyMovement> {
        let leg = body.checked.leg;
        body_movement(&BodyMovementInput {
            wood: self.wood.clone(),
            cut: self.spec.cut,
            ring_angle_deg: self.spec.ring_angle_deg,
            length_mm: leg.length_mm,
            height_mm: leg.height_mm,
            depth_mm: leg.depth_mm,
            made_moisture_pct: self.made_pct,
            driest_moisture_pct: self.driest_pct,
            wettest_moisture_pct: self.wettest_pct,
            along_shrinkage_pct: ALONG_HIGH_PCT,
        })
        .map_err(|error| within(error, "seasons"))
    }

    /// Movement of a board of some wood from its making to a moisture content.
    fn board(&self, wood: &MovingWood, width_mm: f64, thickness_mm: f64, to_pct: f64) -> Result<BoardMovement> {
        let (figures, _) = wood.resolve().map_err(|error| within(error, "wood"))?;
        board_movement(&BoardMovementInput {
            width_mm,
            thickness_mm,
            cut: self.spec.cut,
            ring_angle_deg: self.spec.ring_angle_deg,
            movement_radial_per_pct: figures.movement_radial_per_pct,
            movement_tangential_per_pct: figures.movement_tangential_per_pct,
            shrinkage_radial_pct: figures.shrinkage_radial_pct,
            shrinkage_tangential_pct: figures.shrinkage_tangential_pct,
            fibre_saturation_pct: figures.fibre_saturation_pct,
            from_moisture_pct: self.made_pct,
            to_moisture_pct: to_pct,
        })
        .map_err(|fault| within(fault, "seasons"))
    }

    fn cleat(&self, body: &Body<'_>, plan: &CleatPlan) -> Result<Option<CleatSeasons>> {
        let spec = &body.checked.spec.cleat;
        let Some(wood) = &body.checked.strip.moving else { return Ok(None) };
        // The middle of the seat, as the load cases take it.
        let seat_mm = 0.5 * (plan.wall_half_edge_mm + plan.wall_half_point_mm + spec.blunt_mm);
        let at = |moisture_pct: f64| {
            let strip = self.board(wood, spec.strip_width_mm, spec.thickness_mm, moisture_pct)?;
            cleat_movement(&CleatMovementInput {
                thickness_mm: spec.thickness_mm,
                bevel_deg: spec.bevel_deg,
                wall_fixed_below_mm: (seat_mm - plan.screw_row_mm).max(0.0),
                beam_fixed_above_mm: (plan.beam_half_top_mm - seat_mm).max(0.0),
                wall_width_strain: strip.width_strain,
                wall_thickness_strain: strip.thickness_strain,
                beam_width_strain: strip.width_strain,
                beam_thickness_strain: strip.thickness_strain,
            })
            .map_err(|fault| within(fault, "cleat"))
        };
        Ok(Some(CleatSeasons { driest: at(self.driest_pct)?, wettest: at(self.wettest_pct)? }))
    }

    /// Top and bottom against the returns, and the slot at the rear where the glue ends.
    fn returns(
        &self,
        body: &Body<'_>,
        findings: &mut Vec<Finding>,
    ) -> Result<(Option<CrossGrainFight>, Option<SlotLength>)> {
        let Some((depth_mm, subject)) = glued_returns(body) else { return Ok((None, None)) };
        let fight_over = |depth_mm: f64| {
            cross_grain_fight(&self.fight(&body.checked.panels, depth_mm)).map_err(|error| within(error, "seasons"))
        };
        let fight = fight_over(depth_mm)?;
        let told = match self.spec.returns {
            ReturnFixing::GluedAll => fight.findings.clone(),
            ReturnFixing::GluedFront => fight_over(self.spec.glued_front_mm.min(depth_mm))?.findings,
            ReturnFixing::NotGlued => Vec::new(),
        };
        let slot = match self.spec.returns {
            ReturnFixing::GluedAll => None,
            ReturnFixing::GluedFront => Some(self.slot(body, depth_mm - 0.5 * self.spec.glued_front_mm.min(depth_mm))?),
            // Held at the front arris by its mitre.
            ReturnFixing::NotGlued => Some(self.slot(body, depth_mm)?),
        };
        findings.extend(told.into_iter().map(|finding| Finding { subject: subject.clone(), ..finding }));
        Ok((Some(fight), slot))
    }

    fn fight(&self, panels: &PlannedWood, depth_mm: f64) -> CrossGrainFightInput {
        CrossGrainFightInput {
            wood: self.wood.clone(),
            cut: self.spec.cut,
            ring_angle_deg: self.spec.ring_angle_deg,
            depth_mm,
            glued_moisture_pct: self.made_pct,
            driest_moisture_pct: self.driest_pct,
            wettest_moisture_pct: self.wettest_pct,
            along_shrinkage_pct: ALONG_LOW_PCT,
            glued_front_mm: self.spec.glued_front_mm.min(depth_mm),
            tolerated_mm: self.spec.tolerated_mm,
            modulus_across_mpa: panels
                .group
                .zip(panels.modulus_mpa)
                .map(|(group, along)| modulus_across_mpa(group, along)),
        }
    }

    /// Room for a screw at the rear of a return, `distance_mm` from the line that is held.
    fn slot(&self, body: &Body<'_>, distance_mm: f64) -> Result<SlotLength> {
        let top = body.panel(FaceKind::Top).or_else(|| body.panel(FaceKind::Bottom));
        let thickness_mm = top.map_or(1.0, |panel| panel.thickness_mm);
        let board = self.board(self.wood, distance_mm, thickness_mm, self.wettest_pct)?;
        slot_length(&SlotLengthInput {
            distance_mm,
            movement_per_pct: board.width_coefficient_per_pct,
            shrinkage_pct: Some(board.width_shrinkage_pct),
            fibre_saturation_pct: self.wood.resolve()?.0.fibre_saturation_pct,
            fixed_moisture_pct: self.made_pct,
            driest_moisture_pct: self.driest_pct,
            wettest_moisture_pct: self.wettest_pct,
            shank_diameter_mm: self.spec.slot_shank_mm,
            clearance_mm: SLOT_CLEARANCE_MM,
        })
        .map_err(|fault| within(fault, "seasons"))
    }

    fn glue_line(&self, body: &Body<'_>, fight: Option<&CrossGrainFight>) -> Result<GlueLineDemand> {
        let glued = fight.filter(|_| self.spec.returns != ReturnFixing::NotGlued);
        glue_line_demand(&GlueLineDemandInput {
            glue: self.spec.glue,
            temperature_c: self.spec.seam_temperature_c,
            shear_mpa: glued.and_then(|fight| fight.glue_line_shear_mpa),
            wood_shear_mpa: body.checked.panels.shear_mpa,
        })
        .map_err(|error| within(error, "seasons"))
    }
}

/// Depth over which returns and top or bottom are mitred together, and who they are; nothing without such a pair.
fn glued_returns(body: &Body<'_>) -> Option<(f64, String)> {
    let ends = [FaceKind::LeftEnd, FaceKind::RightEnd].into_iter().filter_map(|kind| body.panel(kind));
    let across = |end: &Panel| {
        let kinds = [FaceKind::Top, FaceKind::Bottom];
        let meets = |edge: &&PanelEdge| edge.joint == EdgeJoint::Mitred && kinds.contains(&edge.neighbour.kind);
        let seams: Vec<_> = end.edges.iter().filter(meets).map(|edge| edge.id.to_string()).collect();
        (!seams.is_empty()).then(|| (end.show_length_mm, seams.join(", ")))
    };
    let pairs: Vec<_> = ends.filter_map(across).collect();
    let depth_mm = pairs.iter().map(|(depth_mm, _)| *depth_mm).reduce(f64::max)?;
    let names: Vec<_> = pairs.into_iter().map(|(_, names)| names).collect();
    Some((depth_mm, names.join(", ")))
}

/// Every mitred seam at both ends of the year.
fn seams(body: &Body<'_>, outer: &BodyMovement) -> Result<Vec<SeamSeasons>> {
    let seams = body.mitred_seams();
    let each = seams.iter().map(|seam| {
        let at = |change: &BodyChange| -> Result<MitreMovement> {
            // Square to a rip the board moves across its grain, square to an end along it.
            let across = |edge: &PanelEdge| match edge.cut {
                EdgeCut::Rip => change.width_strain,
                EdgeCut::CrossCut => change.along_strain,
            };
            mitre_movement(&MitreMovementInput {
                thickness_a_mm: seam.a.0.thickness_mm,
                thickness_b_mm: seam.b.0.thickness_mm,
                corner_deg: seam.a.1.corner_deg,
                width_strain_a: across(seam.a.1),
                thickness_strain_a: change.thickness_strain,
                width_strain_b: across(seam.b.1),
                thickness_strain_b: change.thickness_strain,
            })
            .map_err(|fault| within(fault, LEG))
        };
        let (driest, wettest) = (at(&outer.driest)?, at(&outer.wettest)?);
        let widest = |side: SeamOpening| {
            let opened = [driest, wettest].into_iter().filter(|one| one.opens == side).map(|one| one.opening_mm);
            opened.fold(0.0, f64::max)
        };
        Ok(SeamSeasons {
            seam: seam.a.1.id,
            driest,
            wettest,
            show_opening_mm: widest(SeamOpening::Toe),
            heel_opening_mm: widest(SeamOpening::Heel),
        })
    });
    each.collect()
}

fn open_seam(seams: &[SeamSeasons], limit_mm: f64) -> Option<Finding> {
    let open: Vec<_> = seams.iter().filter(|seam| seam.show_opening_mm > limit_mm).collect();
    let widest_mm = open.iter().map(|seam| seam.show_opening_mm).reduce(f64::max)?;
    let names: Vec<_> = open.iter().map(|seam| seam.seam.to_string()).collect();
    Some(Finding {
        grade: Grade::Caution,
        code: FindingCode::SeamMoves,
        subject: names.join(", "),
        message: "Boards move more across their width than through their thickness, and not along the grain: with the corners held, \
                  the seasons open these seams where they are seen, or the glue has to hold them."
            .to_owned(),
        numbers: vec![
            Quantity::new("widest opening at the show edge if nothing is held back", widest_mm, "mm"),
            Quantity::new("opening that is not worth a word", limit_mm, "mm"),
        ],
        cure: "Glue at the mean moisture content of the room, take quarter-sawn or thinner boards, keep the air of the room steadier, \
               and put splines or blocks behind the seams."
            .to_owned(),
        clause: None,
    })
}

fn no_movement() -> Finding {
    Finding {
        grade: Grade::Caution,
        code: FindingCode::NotCovered,
        subject: "movement".to_owned(),
        message: "Neither movement nor shrinkage of this wood was given: the seasons cannot be followed.".to_owned(),
        numbers: Vec::new(),
        cure: "Give radial and tangential movement, or shrinkage, in wood.figures.".to_owned(),
        clause: None,
    }
}
