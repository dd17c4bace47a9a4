//! The joint by Eurocode 5: what it requires beside the loads.

use super::ec5::{Case, KMod, density, en};
use super::ec5_axial::Axial;
use super::kinds::{JointDrive, JointMaterial};
use super::parts::{JointLayout, JointMember};
use super::result::{Answer, Silence, at, far_side, least_length, line, words};
use crate::cite::Clause;
use crate::error::Result;
use crate::fasten::ec5::{
    Ec5Fastener, Ec5Hole, Ec5JointPartner, Ec5LoadDuration, Ec5ServiceClass, Ec5SpacingInput, Ec5SplittingInput,
    ec5_spacing, ec5_splitting,
};
use crate::limits::BEARING_LENGTH;
use crate::numeric::real::sin_cos_deg;
use crate::verdict::{Outcome, Verdict};

/// A least distance against the one there is, where it was given.
fn distance(name: &str, least_mm: f64, there_mm: Option<f64>, clause: Clause) -> Verdict {
    match there_mm {
        Some(there_mm) => least_length(name, least_mm, there_mm, clause),
        None => Silence::not_determined(format!("Not given; at least {least_mm:.1} mm.")).line(name, clause),
    }
}

impl Case<'_> {
    pub(super) fn requirements(&self, axial: &Axial, k_mod: &Answer<KMod>) -> Result<Vec<Verdict>> {
        let (input, lay) = (self.input, self.lay);
        let screw = self.kind == Ec5Fastener::Screw;
        let mut lines = Vec::new();
        if !input.fastener.kind.goes_through() {
            let clause = if screw { en("8.7.2(3)") } else { en("8.3.1.2") };
            let name = "least penetration, against the penetration there is";
            lines.push(least_length(name, axial.required_mm, lay.thread_mm, clause));
            lines.push(far_side(lay));
        }
        lines.push(self.hole_line());
        if self.kind.is_smooth_nail() && self.along_n > 0.0 {
            let lasting = matches!(input.duration.ec5(), Ec5LoadDuration::Permanent | Ec5LoadDuration::LongTerm);
            let outcome = if lasting { Outcome::NotMet } else { Outcome::Met };
            let why = "Smooth nails may not carry permanent or long-term load along their axis.";
            lines.push(words("kind of nail for the pull", outcome, en("8.3.2(1)"), why));
        }
        if screw && self.along_n > 0.0 && self.last().material.is_timber() {
            let least_mm = 12.0 * input.fastener.nominal_diameter_mm;
            let there_mm = self.last().thickness_mm;
            lines.push(least_length(
                "thickness of the last member for the pull",
                least_mm,
                there_mm,
                en("8.7.2, Table 8.6"),
            ));
        }
        if self.along_n > 0.0 && input.side.material == JointMaterial::Steel {
            let why = "The plate under the heads is checked to EN 1993.";
            lines.push(words("plate under the heads", Outcome::NotCovered, en("8.2.3(2)"), why));
        }
        if input.drive == JointDrive::EndGrain && self.kind == Ec5Fastener::ThreadedNail {
            self.end_grain_lines(&mut lines);
        }
        for (path, member, layout) in input.laid_members() {
            if member.material.is_timber() {
                self.member_lines(path, member, layout, &mut lines)?;
                lines.extend(self.splitting(path, member, layout, k_mod)?);
            } else if member.material == JointMaterial::Plywood && self.kind.is_nail() {
                self.plywood_lines(path, member, layout, &mut lines)?;
            }
        }
        Ok(lines)
    }

    /// What nails in end grain must keep to carry a third of their value (8.3.1.2(4)).
    fn end_grain_lines(&self, lines: &mut Vec<Verdict>) {
        let (input, clause) = (self.input, en("8.3.1.2(4)"));
        let mut met = |name: &str, met: bool, why: &str| {
            lines.push(words(name, if met { Outcome::Met } else { Outcome::NotMet }, clause, why));
        };
        met("nails in end grain: lateral load only", self.along_n <= 0.0, "Nails in end grain carry no pull.");
        met("nails in end grain: number", input.count >= 3, "At least three nails in a connection.");
        let wet = input.climate.ec5() == Ec5ServiceClass::ServiceClass3;
        met("nails in end grain: climate", !wet, "Not in service class 3.");
        let least_mm = 10.0 * self.diameter_mm;
        lines.push(least_length("nails in end grain: penetration", least_mm, self.lay.held_mm, clause));
    }

    /// Nails near the edges of a plywood panel (8.3.1.3).
    fn plywood_lines(
        &self,
        path: &'static str,
        member: &JointMember,
        layout: Option<&JointLayout>,
        lines: &mut Vec<Verdict>,
    ) -> Result<()> {
        let asked = ec5_spacing(&Ec5SpacingInput {
            fastener: self.kind,
            hole: Ec5Hole::Predrilled,
            diameter_mm: self.diameter_mm,
            density_kg_m3: density(member),
            angle_to_grain_deg: 90.0,
            partner: Ec5JointPartner::Panel,
        });
        let (asked, clause) = (at(path, asked)?, en("8.3.1.3"));
        for (name, least_mm, there_mm) in [
            ("distance to a loaded edge", asked.plywood_loaded_edge_mm, layout.and_then(|l| l.loaded_edge_mm)),
            ("distance to an unloaded edge", asked.plywood_unloaded_edge_mm, layout.and_then(|l| l.unloaded_edge_mm)),
        ] {
            if least_mm > 0.0 {
                lines.push(distance(&format!("{name}, {path}"), least_mm, there_mm, clause));
            }
        }
        Ok(())
    }

    fn member_lines(
        &self,
        path: &'static str,
        member: &JointMember,
        layout: Option<&JointLayout>,
        lines: &mut Vec<Verdict>,
    ) -> Result<()> {
        let input = self.input;
        let any = |wanted: fn(JointMaterial) -> bool| input.members().any(|(_, other)| wanted(other.material));
        let partner = if any(|material| material == JointMaterial::Steel) {
            Ec5JointPartner::Steel
        } else if any(JointMaterial::is_panel) {
            Ec5JointPartner::Panel
        } else {
            Ec5JointPartner::Timber
        };
        let asked = ec5_spacing(&Ec5SpacingInput {
            fastener: self.kind,
            hole: self.hole,
            diameter_mm: self.diameter_mm,
            density_kg_m3: density(member),
            angle_to_grain_deg: member.angle_to_grain_deg,
            partner,
        });
        let asked = at(path, asked)?;
        let clause = match self.kind {
            Ec5Fastener::Dowel => en("Table 8.5"),
            _ if self.kind.follows_nail_rules(self.diameter_mm) => en("Table 8.2"),
            _ => en("Table 8.4"),
        };
        if asked.least_timber_mm > 0.0 {
            let name = format!("thickness against splitting, {path}");
            let least = least_length(&name, asked.least_timber_mm, member.thickness_mm, en("8.3.1.2, Eq. 8.18"));
            let splitting_mm = asked.least_splitting_timber_mm;
            lines.push(least.with_remark(format!("In species that split easily {splitting_mm:.1} mm (8.19).")));
        }
        let Some(layout) = layout else {
            let name = format!("spacing, edge and end distances, {path}");
            lines.push(Silence::not_determined("How the fasteners stand was not given.").line(&name, clause));
            return Ok(());
        };
        // A screw under a pull keeps the distances of Table 8.6 as well.
        let pulled = self.kind == Ec5Fastener::Screw && self.along_n > 0.0;
        let axial = |diameters: f64| if pulled { diameters * input.fastener.nominal_diameter_mm } else { 0.0 };
        let (in_row, rows) = (layout.in_row > 1, input.rows(layout) > 1);
        for (name, there_mm, needed_mm, counts) in [
            ("spacing along the grain", layout.along_grain_mm, asked.a1_mm.max(axial(7.0)), in_row),
            ("spacing across the grain", layout.across_grain_mm, asked.a2_mm.max(axial(5.0)), rows),
            ("distance to a loaded end", layout.loaded_end_mm, asked.a3_loaded_mm.max(axial(10.0)), true),
            ("distance to an unloaded end", layout.unloaded_end_mm, asked.a3_unloaded_mm.max(axial(10.0)), true),
            ("distance to a loaded edge", layout.loaded_edge_mm, asked.a4_loaded_mm.max(axial(4.0)), true),
            ("distance to an unloaded edge", layout.unloaded_edge_mm, asked.a4_unloaded_mm.max(axial(4.0)), true),
        ] {
            if !counts {
                continue;
            }
            lines.push(distance(&format!("{name}, {path}"), needed_mm, there_mm, clause));
        }
        Ok(())
    }

    /// Splitting by the part of the load across the grain, taken whole on one side of the connection.
    fn splitting(
        &self,
        path: &str,
        member: &JointMember,
        layout: Option<&JointLayout>,
        k_mod: &Answer<KMod>,
    ) -> Result<Option<Verdict>> {
        let across_n = self.across_n * sin_cos_deg(member.angle_to_grain_deg).0;
        if across_n <= 0.0 {
            return Ok(None);
        }
        let (name, clause) = (format!("splitting across the grain, {path}"), en("8.1.4, Eq. 8.4"));
        if member.material != JointMaterial::Softwood {
            return Ok(Some(Silence::not_covered("The equation is for softwood.").line(&name, clause)));
        }
        let placed = layout.and_then(|layout| {
            let spread_mm = match self.input.rows(layout) {
                0 | 1 => 0.0,
                rows => f64::from(rows - 1) * layout.across_grain_mm?,
            };
            Some((member.depth_mm?, layout.loaded_edge_mm? + spread_mm))
        });
        let (Some((depth_mm, loaded_edge_mm)), Ok(k_mod)) = (placed, k_mod) else {
            let why =
                "Needs the depth of the member, the distance to its loaded edge and the spacing across the grain.";
            return Ok(Some(Silence::not_determined(why).line(&name, clause)));
        };
        if loaded_edge_mm >= depth_mm || loaded_edge_mm > BEARING_LENGTH.high {
            let why = "The fasteners reach beyond the member.";
            return Ok(Some(words(&name, Outcome::NotMet, clause, why)));
        }
        let found = ec5_splitting(&Ec5SplittingInput {
            width_mm: member.thickness_mm.max(crate::limits::BODY_SIZE.low),
            depth_mm,
            loaded_edge_mm,
        });
        // The range of widths begins above the thinnest boards, and the capacity grows with the width alone.
        let thin = (member.thickness_mm / crate::limits::BODY_SIZE.low).min(1.0);
        let capacity_n = at("splitting", found)?.capacity_n * thin * k_mod.joint / self.input.gamma_m;
        Ok(Some(
            line(&name, across_n, capacity_n, "N", clause)
                .with_remark("The whole part across the grain, as at the end of a member; within a span less."),
        ))
    }

    fn hole_line(&self) -> Verdict {
        let fastener = &self.input.fastener;
        let through = fastener.kind.goes_through();
        let clause = match self.kind {
            Ec5Fastener::Screw => en("10.4.5"),
            Ec5Fastener::Bolt | Ec5Fastener::Dowel => en("10.4.3, 10.4.4"),
            _ => en("8.3.1.1(2), 10.4.2"),
        };
        // Of a screw's thread about 0.7 of the shank; the core of the thread is where its hold would begin to suffer.
        let most_mm = match self.kind {
            Ec5Fastener::Screw => {
                let shank_mm = fastener.shank_diameter_mm.unwrap_or(fastener.nominal_diameter_mm);
                (0.7 * shank_mm).max(fastener.root_diameter_mm.unwrap_or(0.0))
            }
            Ec5Fastener::Bolt => fastener.nominal_diameter_mm + 1.0,
            Ec5Fastener::Dowel => fastener.nominal_diameter_mm,
            _ => 0.8 * fastener.nominal_diameter_mm,
        };
        match (self.input.lead_hole_mm, self.hole_needed) {
            (Some(given_mm), _) => {
                let name = if through { "hole, against the largest" } else { "lead hole, against the largest" };
                least_length(name, given_mm, most_mm, clause)
            }
            (None, true) if through => {
                let why = format!("Not given; at most {most_mm:.1} mm.");
                words("hole", Outcome::NotDetermined, clause, why)
            }
            (None, true) => {
                let why = format!(
                    "Hardwood, wood above 500 kg/m³ and screws above 6 mm need a hole, here at most {most_mm:.1} mm."
                );
                words("lead hole", Outcome::NotMet, clause, why)
            }
            (None, false) => words("lead hole", Outcome::Met, clause, "None is required."),
        }
    }
}
