//! The joint by Eurocode 5: what it requires beside the loads.

use super::ec5::{Axial, Case, at, en};
use super::nds::SUBJECT;
use crate::error::Result;
use crate::fasten::ec5::{Ec5Fastener, Ec5JointPartner, Ec5LoadDuration, Ec5SpacingInput, ec5_spacing};
use crate::verdict::{Outcome, Verdict};

impl Case<'_> {
    pub(super) fn requirements(&self, axial: &Axial) -> Result<Vec<Verdict>> {
        let (input, lay) = (self.input, self.lay);
        let none =
            |name: &str, outcome, clause, remark: &str| Verdict::without_answer(name, SUBJECT, outcome, clause, remark);
        let screw = self.kind == Ec5Fastener::Screw;
        let mut lines = Vec::new();
        let penetration = if screw { en("8.7.2(3)") } else { en("8.3.1.2") };
        lines.push(self.line(
            "least penetration, against the penetration there is",
            axial.required_mm,
            lay.thread_mm,
            "mm",
            penetration,
        ));
        lines.push(super::result::far_side(lay.penetration_mm, input.main.thickness_mm));
        lines.push(self.lead_hole_line());
        if self.kind.is_smooth_nail() && input.withdrawal_n > 0.0 {
            let lasting = matches!(input.duration.ec5(), Ec5LoadDuration::Permanent | Ec5LoadDuration::LongTerm);
            let outcome = if lasting { Outcome::NotMet } else { Outcome::Met };
            let why = "Smooth nails may not carry permanent or long-term load along their axis.";
            lines.push(none("kind of nail for the pull", outcome, en("8.3.2(1)"), why));
        }
        self.distances(&mut lines)?;
        Ok(lines)
    }

    fn distances(&self, lines: &mut Vec<Verdict>) -> Result<()> {
        let input = self.input;
        let panel = input.side.material.is_panel();
        // The member with the wider distances decides.
        let member = |density_kg_m3, angle_to_grain_deg| {
            ec5_spacing(&Ec5SpacingInput {
                fastener: self.kind,
                hole: self.hole,
                diameter_mm: self.diameter_mm,
                density_kg_m3,
                angle_to_grain_deg,
                partner: if panel { Ec5JointPartner::Panel } else { Ec5JointPartner::Timber },
            })
        };
        let main = at("main", member(self.main_density, input.main.angle_to_grain_deg))?;
        let side = if panel { main } else { at("side", member(self.side_density, input.side.angle_to_grain_deg))? };
        let clause = if self.kind.follows_nail_rules(self.diameter_mm) { en("Table 8.2") } else { en("Table 8.4") };
        if main.least_timber_mm > 0.0 {
            for (name, needed_mm, there_mm) in [
                ("thickness of the main member against splitting", main.least_timber_mm, input.main.thickness_mm),
                ("thickness of the side member against splitting", side.least_timber_mm, input.side.thickness_mm),
            ] {
                if name.contains("main") || !panel {
                    lines.push(self.line(name, needed_mm, there_mm, "mm", en("8.3.1.2, Eq. 8.18")));
                }
            }
        }
        let Some(layout) = input.layout else {
            let why = "How the fasteners stand was not given.";
            let name = "spacing, edge and end distances";
            lines.push(Verdict::without_answer(name, SUBJECT, Outcome::NotDetermined, clause, why));
            return Ok(());
        };
        let screw_pull = self.kind == Ec5Fastener::Screw && input.withdrawal_n > 0.0;
        let thread_mm = input.fastener.nominal_diameter_mm;
        let axial = |multiple: f64| if screw_pull { multiple * thread_mm } else { 0.0 };
        for (name, there_mm, needed_mm, counts) in [
            (
                "spacing along the grain",
                layout.along_grain_mm,
                main.a1_mm.max(side.a1_mm).max(axial(7.0)),
                layout.in_row > 1,
            ),
            (
                "spacing across the grain",
                layout.across_grain_mm,
                main.a2_mm.max(side.a2_mm).max(axial(5.0)),
                layout.in_row < input.count,
            ),
            (
                "distance to a loaded end",
                layout.loaded_end_mm,
                main.a3_loaded_mm.max(side.a3_loaded_mm).max(axial(10.0)),
                true,
            ),
            (
                "distance to an unloaded end",
                layout.unloaded_end_mm,
                main.a3_unloaded_mm.max(side.a3_unloaded_mm).max(axial(10.0)),
                true,
            ),
            (
                "distance to a loaded edge",
                layout.loaded_edge_mm,
                main.a4_loaded_mm.max(side.a4_loaded_mm).max(axial(4.0)),
                true,
            ),
            (
                "distance to an unloaded edge",
                layout.unloaded_edge_mm,
                main.a4_unloaded_mm.max(side.a4_unloaded_mm).max(axial(4.0)),
                true,
            ),
        ] {
            if !counts {
                continue;
            }
            lines.push(match there_mm {
                Some(there_mm) => self.line(name, needed_mm, there_mm, "mm", clause),
                None => {
                    let why = format!("Not given; at least {needed_mm:.1} mm.");
                    Verdict::without_answer(name, SUBJECT, Outcome::NotDetermined, clause, why)
                }
            });
        }
        Ok(())
    }

    fn lead_hole_line(&self) -> Verdict {
        let fastener = &self.input.fastener;
        let clause = if self.kind == Ec5Fastener::Screw { en("10.4.5") } else { en("8.3.1.1(2), 10.4.2") };
        // Of a screw's thread about 0.7 of the shank; the core of the thread is where its hold would begin to suffer.
        let most_mm = if self.kind == Ec5Fastener::Screw {
            let shank_mm = fastener.shank_diameter_mm.unwrap_or(fastener.nominal_diameter_mm);
            (0.7 * shank_mm).max(fastener.root_diameter_mm.unwrap_or(0.0))
        } else {
            0.8 * fastener.nominal_diameter_mm
        };
        match (self.input.lead_hole_mm, self.hole_needed) {
            (Some(given_mm), _) => self.line("lead hole, against the largest", given_mm, most_mm, "mm", clause),
            (None, true) => {
                let why = format!(
                    "Hardwood, wood above 500 kg/m³ and screws above 6 mm need a hole, here at most {most_mm:.1} mm."
                );
                Verdict::without_answer("lead hole", SUBJECT, Outcome::NotMet, clause, why)
            }
            (None, false) => Verdict::without_answer("lead hole", SUBJECT, Outcome::Met, clause, "None is required."),
        }
    }
}
