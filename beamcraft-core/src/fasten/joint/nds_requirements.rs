//! The joint by the American standard: penetration, holes, distances.

use super::kinds::{JointFastenerKind, JointMaterial};
use super::nds::{Case, gravity, nds};
use super::nds_axial::Axial;
use super::parts::{JointLayout, JointMember};
use super::result::{SUBJECT, Silence, far_side, least_length, line, words};
use crate::cite::Clause;
use crate::error::Result;
use crate::fasten::nds::{
    BoredHole, BoredHoleInput, BoredHoles, EndDistanceWood, FastenerDirection, GeometryFactorInput, LeadHoleInput,
    SidePlate, SpacingLoad, SpacingRule, bored_hole, geometry_factor, geometry_factor_verdicts, lead_hole,
};
use crate::limits::{BEARING_LENGTH, LENGTH};
use crate::units::factor::INCH_MM;
use crate::verdict::{Outcome, Verdict};

/// How far a length may miss an edge of the standard: a figure typed in inches rounds.
const EDGE_MM: f64 = 1e-9;

/// A hole between its least and its largest diameter.
fn between(name: &str, given_mm: f64, (least_mm, most_mm): (f64, f64), play_mm: f64, clause: Clause) -> Verdict {
    let within = given_mm >= least_mm - play_mm && given_mm <= most_mm + play_mm;
    let outcome = if within { Outcome::Met } else { Outcome::NotMet };
    Verdict { outcome, ..line(name, given_mm, most_mm, "mm", clause) }
}

impl Case<'_> {
    pub(super) fn requirements(&self, axial: &Axial, distances: Vec<Verdict>) -> Result<Vec<Verdict>> {
        let mut lines = Vec::new();
        if !self.input.fastener.kind.goes_through() {
            let (tip_mm, clause) = match self.input.fastener.kind {
                JointFastenerKind::LagScrew => (self.lay.tip_mm, nds("12.1.4.6")),
                JointFastenerKind::WoodScrew | JointFastenerKind::StructuralScrew => (0.0, nds("12.1.5.6")),
                _ => (0.0, nds("12.1.6.4")),
            };
            let name = "least penetration, against the penetration there is";
            let there_mm = (self.lay.held_mm - tip_mm).max(0.0);
            let mut penetration = least_length(name, axial.required_mm, there_mm, clause);
            if self.input.fastener.declared_penetration_mm.is_some() {
                penetration = penetration.with_remark("The declared least penetration.");
            }
            lines.push(penetration);
            lines.push(far_side(self.lay));
        }
        lines.push(self.hole_line()?);
        if self.along_n > 0.0 && self.input.side.material == JointMaterial::Steel {
            let why = "The plate under the heads is checked to the rules for steel.";
            lines.push(words("plate under the heads", Outcome::NotCovered, nds("11.2.3"), why));
        }
        lines.extend(distances);
        Ok(lines)
    }

    fn hole_line(&self) -> Result<Verdict> {
        match self.input.fastener.kind {
            JointFastenerKind::StructuralScrew => {
                let text = "As the declaration of the screw says.";
                Ok(words("lead hole", Outcome::NotDetermined, nds("12.1.5"), text))
            }
            _ if !self.last().material.is_wooden() => {
                let text = "The holes of the standard are those in wood.";
                Ok(words("lead hole", Outcome::NotCovered, nds("12.1"), text))
            }
            JointFastenerKind::WoodScrew => self.wood_screw_hole(),
            JointFastenerKind::LagScrew => self.lag_hole(),
            JointFastenerKind::Bolt | JointFastenerKind::Dowel => Ok(self.through_hole()),
            JointFastenerKind::SmoothNail | JointFastenerKind::StainlessNail | JointFastenerKind::RingShankNail => {
                self.nail_hole()
            }
        }
    }

    /// Holes that the standard has for the fastener in the last member.
    fn bored(&self) -> Result<BoredHole> {
        Ok(bored_hole(&BoredHoleInput {
            fastener: self.kind,
            specific_gravity: gravity(self.last()),
            nominal_diameter_mm: self.input.fastener.nominal_diameter_mm,
        })?)
    }

    fn lag_hole(&self) -> Result<Verdict> {
        let (hole, clause) = (self.bored()?, nds("12.1.4.2"));
        let text = format!(
            "Shank {:.1} mm, thread {:.1} to {:.1} mm, the larger share for the larger diameters.",
            hole.shank_hole_mm, hole.least_hole_mm, hole.most_hole_mm
        );
        let Some(given_mm) = self.input.lead_hole_mm else {
            let small = self.input.fastener.nominal_diameter_mm <= 0.375 * INCH_MM + EDGE_MM;
            let spared = small && gravity(self.last()) <= 0.5 && self.along_n > self.across_n;
            return Ok(if spared {
                let text = format!("May be spared where edge, end and spacing prevent splitting (12.1.4.3). {text}");
                words("lead hole", Outcome::Met, clause, text)
            } else {
                words("lead hole", Outcome::NotMet, clause, text)
            });
        };
        let name = "lead hole, against the largest";
        Ok(between(name, given_mm, (hole.least_hole_mm, hole.most_hole_mm), EDGE_MM, clause).with_remark(text))
    }

    /// Bolts: 1/32 to 1/16 in wider; a dowel may be tight.
    fn through_hole(&self) -> Verdict {
        let fastener = &self.input.fastener;
        let wider = |thirty_seconds: f64| fastener.nominal_diameter_mm + thirty_seconds / 32.0 * INCH_MM;
        let tight = fastener.kind == JointFastenerKind::Dowel;
        let (least_mm, most_mm) = (if tight { fastener.nominal_diameter_mm } else { wider(1.0) }, wider(2.0));
        let (clause, text) = (nds("12.1.3.2"), format!("{least_mm:.1} to {most_mm:.1} mm."));
        match self.input.lead_hole_mm {
            // A hole is named to the tenth of a millimetre.
            Some(given_mm) => {
                between("hole, against the largest", given_mm, (least_mm, most_mm), 0.05, clause).with_remark(text)
            }
            None => words("hole", Outcome::NotDetermined, clause, format!("Not given; {text}")),
        }
    }

    fn nail_hole(&self) -> Result<Verdict> {
        let clause = nds("12.1.6.2");
        let Some(given_mm) = self.input.lead_hole_mm else {
            return Ok(words("lead hole", Outcome::Met, clause, "None is required."));
        };
        let most_mm = self.bored()?.most_hole_mm;
        Ok(between("bored hole, against the largest allowed", given_mm, (0.0, most_mm), EDGE_MM, clause))
    }

    fn wood_screw_hole(&self) -> Result<Verdict> {
        let hole = lead_hole(&LeadHoleInput {
            specific_gravity: gravity(self.last()),
            nominal_diameter_mm: self.input.fastener.nominal_diameter_mm,
            root_diameter_mm: self.input.fastener.root_mm(),
        })?;
        let (wanted_mm, clause) = if self.across_n > 0.0 {
            (hole.lateral_thread_hole_mm, nds("12.1.5.3"))
        } else {
            (hole.withdrawal_thread_hole_mm, nds("12.1.5.2"))
        };
        Ok(match self.input.lead_hole_mm {
            Some(given_mm) if wanted_mm > 0.0 => {
                line("lead hole, against the one of the standard", given_mm, wanted_mm, "mm", clause)
                    .with_remark("The standard says \"about\": the nearest drill.")
            }
            None if wanted_mm > 0.0 => {
                let why = format!("The standard asks for a thread hole of about {wanted_mm:.1} mm.");
                words("lead hole", Outcome::NotMet, clause, why)
            }
            _ => words("lead hole", Outcome::Met, clause, "None is required."),
        })
    }

    /// The geometry factor of all members, the least, and their distances line by line.
    pub(super) fn distances(&self) -> Result<(f64, Vec<Verdict>)> {
        let (mut c_delta, mut lines) = (1.0_f64, Vec::new());
        let name = "spacing, edge and end distances";
        let clause = if self.is_large() { nds("12.5.1") } else { nds("12.1.5, 12.1.6") };
        for (path, member, layout) in self.input.laid_members() {
            let end_grain = path == "main" && self.main_direction == FastenerDirection::EndGrain
                || path == "side" && self.side_direction == FastenerDirection::EndGrain;
            if !member.material.is_timber() {
                continue;
            }
            let Some(layout) = layout else {
                let silence = if self.is_large() {
                    Silence::not_determined(
                        "How the fasteners stand was not given; C_delta is taken as 1: keep the full distances.",
                    )
                } else {
                    Silence::not_covered(
                        "Below 1/4 in the standard gives no distances, only that the wood must not split.",
                    )
                };
                return Ok((c_delta, vec![silence.line(name, clause)]));
            };
            if end_grain {
                let why = "The distances of the standard are those in side grain.";
                lines.push(words(&format!("{name}, {path}"), Outcome::NotCovered, clause, why));
                continue;
            }
            let (member_factor, member_lines) = self.distances_in(path, member, layout)?;
            c_delta = c_delta.min(member_factor);
            lines.extend(member_lines);
        }
        Ok((c_delta, lines))
    }

    fn distances_in(&self, path: &str, member: &JointMember, layout: &JointLayout) -> Result<(f64, Vec<Verdict>)> {
        let rows = Rows::of(self, member, layout);
        let asked = self.asked(member, layout, &rows);
        let found = geometry_factor(&asked)?;
        let mut lines = geometry_factor_verdicts(&asked, &found, SUBJECT);
        let mut c_delta = found.c_delta;
        if self.across_n > 0.0 {
            let free_end = GeometryFactorInput {
                load: SpacingLoad::AwayFromEnd,
                end_distance_mm: or_far(layout.unloaded_end_mm),
                ..asked
            };
            let found = geometry_factor(&free_end)?;
            c_delta = c_delta.min(found.c_delta);
            let mut of_end = geometry_factor_verdicts(&free_end, &found, SUBJECT);
            of_end.truncate(1);
            lines.extend(of_end.into_iter().map(|line| Verdict { name: "unloaded end distance".to_owned(), ..line }));
        }
        // How far the rows spread is known with their spacing only.
        lines.retain(|line| line.name != "spread of the rows" || rows.spread_mm.flatten().is_some());
        let given = |line: &Verdict| match line.name.as_str() {
            "end distance" => layout.loaded_end_mm.is_some(),
            "unloaded end distance" => layout.unloaded_end_mm.is_some(),
            "edge distance" => layout.unloaded_edge_mm.is_some(),
            "loaded edge distance" => layout.loaded_edge_mm.is_some(),
            "spacing in a row" => rows.pitch_mm.flatten().is_some(),
            "distance between rows" => rows.between_mm.flatten().is_some(),
            _ => true,
        };
        let recommended = found.rule == SpacingRule::Recommended;
        let lines = lines.into_iter().map(|line| {
            let name = format!("{}, {path}", line.name);
            if !given(&line) {
                let text = format!("Not given; at least {:.1} mm.", line.demand.unwrap_or_default());
                let silence = if recommended { Silence::not_covered(text) } else { Silence::not_determined(text) };
                silence.line(&name, line.clause)
            } else if recommended {
                // The numbers stay, but a recommendation neither passes nor fails a joint.
                Verdict { name, outcome: Outcome::NotCovered, ..line }
            } else {
                Verdict { name, ..line }
            }
        });
        Ok((c_delta, lines.collect()))
    }

    /// The distances of a member, its loaded end first; one that was not given asks for nothing, and its line says so.
    fn asked(&self, member: &JointMember, layout: &JointLayout, rows: &Rows) -> GeometryFactorInput {
        let hardwood = member.material == JointMaterial::Hardwood;
        let steel = self.input.members().any(|(_, other)| other.material == JointMaterial::Steel);
        let sides_mm = self.lay.side_mm + self.lay.second_mm.unwrap_or(0.0);
        GeometryFactorInput {
            nominal_diameter_mm: self.input.fastener.nominal_diameter_mm,
            load: if self.across_n > 0.0 { SpacingLoad::TowardsEnd } else { SpacingLoad::WithdrawalOnly },
            angle_to_grain_deg: member.grain_deg(),
            wood: if hardwood { EndDistanceWood::Hardwood } else { EndDistanceWood::Softwood },
            end_distance_mm: or_far(layout.loaded_end_mm),
            edge_distance_mm: or_far(layout.unloaded_edge_mm),
            loaded_edge_mm: Some(or_far(layout.loaded_edge_mm)),
            row_pitch_mm: rows.pitch_mm.map(or_far),
            stagger: layout.stagger,
            between_rows_mm: rows.between_mm.map(or_far),
            row_spread_mm: rows.spread_mm.map(or_far),
            bearing_length_mm: self.lay.main_mm.min(sides_mm).clamp(BEARING_LENGTH.low, BEARING_LENGTH.high),
            holes: if self.input.lead_hole_mm.is_some() { BoredHoles::Bored } else { BoredHoles::NotBored },
            side: if steel { SidePlate::Steel } else { SidePlate::Wood },
        }
    }
}

/// A distance, or one so far that it asks for nothing.
fn or_far(given_mm: Option<f64>) -> f64 {
    given_mm.unwrap_or(LENGTH.high).min(LENGTH.high)
}

/// The spacings of a layout as the load sees them: nothing where there is one fastener in a row or one row, nothing
/// inside where the spacing was not given.
struct Rows {
    pitch_mm: Option<Option<f64>>,
    between_mm: Option<Option<f64>>,
    /// Distance of the outer rows across the grain.
    spread_mm: Option<Option<f64>>,
}

impl Rows {
    fn of(case: &Case<'_>, member: &JointMember, layout: &JointLayout) -> Self {
        let rows = case.input.rows(layout);
        let along = (layout.in_row > 1).then_some(layout.along_grain_mm);
        let across = (rows > 1).then_some(layout.across_grain_mm);
        // A row is a line along the load: beyond 45 degrees the lines across the grain are the rows.
        let (pitch_mm, between_mm) = if member.grain_deg() > 45.0 { (across, along) } else { (along, across) };
        let spread_mm = across.map(|spacing| spacing.map(|spacing| f64::from(rows - 1) * spacing));
        Self { pitch_mm, between_mm, spread_mm }
    }
}
