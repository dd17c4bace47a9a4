//! The joint by the American standard: what carries the load along the fasteners, and both loads at once.

use super::kinds::{JointDrive, JointFastenerKind, JointMaterial};
use super::nds::{Case, gravity, nds};
use super::parts::JointMember;
use super::result::{Answer, Silence, line};
use crate::error::Result;
use crate::fasten::nds::{
    CombinedLateralWithdrawalInput, CombinedLoadRule, DowelFastener, FastenerDirection, FastenerWithdrawalInput,
    HeadPullThroughInput, combined_lateral_withdrawal, fastener_withdrawal, head_pull_through,
};
use crate::finding::Quantity;
use crate::limits::{BEARING_LENGTH, CONNECTION_CAPACITY};
use crate::verdict::{Factor, Verdict};

/// Capacities of the whole joint along the fasteners, N.
pub(super) struct Axial {
    /// Thread or shank.
    withdrawal: Answer<f64>,
    /// Head; nothing where there is wood for it neither to cross nor to hold it.
    head: Answer<Option<f64>>,
    tension_n: Option<f64>,
    /// The least of them as far as they are known.
    pub(super) capacity_n: Option<f64>,
    /// Penetration that the standard or the declaration asks for, mm.
    pub(super) required_mm: f64,
}

impl Case<'_> {
    /// The member that holds the points.
    pub(super) fn last(&self) -> &JointMember {
        self.input.second_side.as_ref().unwrap_or(&self.input.main)
    }

    pub(super) fn axial(&self, working: &mut Vec<Quantity>) -> Result<Axial> {
        let fastener = &self.input.fastener;
        let one_withdrawal = self.withdrawal()?;
        let one_head = self.head()?;
        if let Ok(one_n) = one_withdrawal {
            working.push(Quantity::new("withdrawal of one fastener, reference value", one_n, "N"));
        }
        if let Ok(Some(one_n)) = one_head {
            working.push(Quantity::new("head pull-through of one fastener, reference value", one_n, "N"));
        }
        let whole = self.strength * self.number;
        let withdrawal = one_withdrawal.map(|one_n| one_n * self.factors.withdrawal * whole);
        let head = one_head.map(|one_n| one_n.map(|one_n| one_n * self.factors.pull_through * whole));
        let tension_n = fastener.tension_capacity_n.map(|one_n| one_n * self.number);
        let capacity_n = withdrawal.as_ref().ok().map(|withdrawal_n| {
            let others = [head.as_ref().ok().copied().flatten(), tension_n];
            others.into_iter().flatten().fold(*withdrawal_n, f64::min)
        });
        let diameters = if fastener.kind == JointFastenerKind::LagScrew { 4.0 } else { 6.0 };
        let required_mm = fastener.declared_penetration_mm.unwrap_or(diameters * fastener.nominal_diameter_mm);
        Ok(Axial { withdrawal, head, tension_n, capacity_n, required_mm })
    }

    /// Reference withdrawal value of one fastener.
    fn withdrawal(&self) -> Result<Answer<f64>> {
        let (input, fastener, lay) = (self.input, &self.input.fastener, self.lay);
        if fastener.kind == JointFastenerKind::Bolt {
            let why = "A bolt carries a pull through its washers: bearing across the grain (3.10.2) is a check of the member.";
            return Ok(Err(Silence::not_covered(why)));
        }
        if fastener.kind == JointFastenerKind::Dowel {
            return Ok(Err(Silence::not_covered("A smooth dowel without a head holds nothing along its axis.")));
        }
        // A lag screw holds without its tip; a toe-nail lengthwise by what lies behind the joint.
        let slant_mm = 2.0 / 3.0 * fastener.length_mm;
        let (holding_mm, penetration_mm) = match (self.kind, input.drive) {
            (DowelFastener::LagScrew, _) => (lay.thread_mm - lay.tip_mm, lay.held_mm - lay.tip_mm),
            (DowelFastener::SmoothNail | DowelFastener::SmoothStainlessNail, JointDrive::ToeNailed) => {
                (slant_mm, lay.held_mm)
            }
            (DowelFastener::SmoothNail | DowelFastener::SmoothStainlessNail, _) => (lay.held_mm, lay.held_mm),
            _ => (lay.thread_mm, lay.held_mm),
        };
        if let Some(per_mm) = fastener.declared_withdrawal_n_mm {
            return Ok(Ok(per_mm * holding_mm.max(0.0)));
        }
        if fastener.kind == JointFastenerKind::StructuralScrew {
            return Ok(Err(Silence::not_determined("The withdrawal value of a structural screw must be declared.")));
        }
        if !self.last().material.is_timber() {
            return Ok(Err(Silence::not_covered("Withdrawal values are published for wood.")));
        }
        let found = fastener_withdrawal(&FastenerWithdrawalInput {
            fastener: self.kind,
            specific_gravity: gravity(self.last()),
            nominal_diameter_mm: fastener.nominal_diameter_mm,
            holding_length_mm: holding_mm.clamp(BEARING_LENGTH.low, BEARING_LENGTH.high),
            penetration_mm: Some(penetration_mm.clamp(BEARING_LENGTH.low, BEARING_LENGTH.high)),
            direction: self.main_direction,
        })?;
        // A thread that does not reach the last member holds nothing.
        Ok(Ok(if holding_mm < BEARING_LENGTH.low { 0.0 } else { found.reference_n }))
    }

    /// Reference pull-through value of one head.
    fn head(&self) -> Result<Answer<Option<f64>>> {
        let fastener = &self.input.fastener;
        if let Some(declared_n) = fastener.declared_pull_through_n {
            return Ok(Ok(Some(declared_n)));
        }
        let silence = match self.input.side.material {
            _ if fastener.kind.goes_through() => return Ok(Ok(None)),
            // The plate holds the head; its own strength is a line of the requirements.
            JointMaterial::Steel => return Ok(Ok(None)),
            _ if fastener.kind == JointFastenerKind::StructuralScrew => {
                Silence::not_determined("The head pull-through value of a structural screw must be declared.")
            }
            _ if self.input.pocket.is_some() => Silence::not_covered(
                "No value is published for a head on the shoulder of a pocket: have its pull-through declared or tested.",
            ),
            material if material.is_timber() => {
                let found = head_pull_through(&HeadPullThroughInput {
                    specific_gravity: gravity(&self.input.side),
                    head_diameter_mm: fastener.head_diameter_mm,
                    net_side_thickness_mm: self.input.side.thickness_mm,
                })?;
                return Ok(Ok(Some(found.reference_n)));
            }
            _ => Silence::not_covered("The equation is for heads in wood side members."),
        };
        Ok(Err(silence))
    }

    fn axial_factors(&self, moisture: f64, toe_nail: f64) -> Vec<Factor> {
        let mut list = self.duration_factors();
        list.extend([
            Factor { name: "C_M wet service", value: moisture, clause: nds("Table 11.3.3") },
            Factor { name: "C_t temperature", value: self.factors.c_t, clause: nds("Table 11.3.4") },
            Factor { name: "C_tn toe-nail", value: toe_nail, clause: nds("12.5.4") },
        ]);
        list
    }

    pub(super) fn axial_lines(&self, loads: &mut Vec<Verdict>, axial: &Axial) {
        let demand_n = self.along_n;
        match &axial.withdrawal {
            Ok(capacity_n) if *capacity_n > 0.0 || demand_n > 0.0 => {
                let end_grain = self.main_direction == FastenerDirection::EndGrain && *capacity_n <= 0.0;
                let remark =
                    if end_grain { "In end grain the standard permits this fastener no withdrawal." } else { "" };
                loads.push(
                    line("withdrawal", demand_n, *capacity_n, "N", nds("12.2"))
                        .with_factors(self.axial_factors(self.factors.c_m_withdrawal, self.factors.c_tn_withdrawal))
                        .with_remark(remark),
                );
            }
            Err(silence) if demand_n > 0.0 => loads.push(silence.line("withdrawal", nds("12.2"))),
            _ => {}
        }
        match &axial.head {
            Ok(Some(capacity_n)) => loads.push(
                line("head pull-through", demand_n, *capacity_n, "N", nds("12.2.5, Eq. 12.2-6"))
                    .with_factors(self.axial_factors(self.factors.c_m_pull_through, 1.0)),
            ),
            Err(silence) if demand_n > 0.0 => loads.push(silence.line("head pull-through", nds("12.2.5"))),
            _ => {}
        }
        let clause = nds("12.2.1.4, 12.2.2.5");
        match axial.tension_n {
            Some(capacity_n) => loads.push(line("tension of the steel", demand_n, capacity_n, "N", clause)),
            None if demand_n > 0.0 && self.input.fastener.kind.is_screw() => {
                let why = "The tensile capacity of the screw was not given.";
                loads.push(Silence::not_determined(why).line("tension of the steel", clause));
            }
            None => {}
        }
    }

    pub(super) fn combined_line(
        &self,
        loads: &mut Vec<Verdict>,
        lateral_n: Option<f64>,
        axial_n: Option<f64>,
    ) -> Result<Option<f64>> {
        let range = CONNECTION_CAPACITY.low..=CONNECTION_CAPACITY.high;
        let (Some(lateral_n), Some(axial_n)) = (lateral_n, axial_n) else { return Ok(None) };
        let both = self.across_n > 0.0 && self.along_n > 0.0;
        if !both || !range.contains(&lateral_n) || !range.contains(&axial_n) {
            return Ok(None);
        }
        let (rule, clause) = if self.input.fastener.kind.is_nail() {
            (CombinedLoadRule::Nails, nds("Eq. 12.4-2"))
        } else {
            (CombinedLoadRule::Screws, nds("Eq. 12.4-1"))
        };
        let found = combined_lateral_withdrawal(&CombinedLateralWithdrawalInput {
            rule,
            lateral_capacity_n: lateral_n,
            withdrawal_capacity_n: axial_n,
            lateral_n: self.across_n,
            withdrawal_n: self.along_n,
        })?;
        loads.push(
            line("lateral and withdrawal at once", found.resultant_n, found.capacity_n, "N", clause).with_remark(format!(
                "Resultant at {:.1}° to the wood surface; along the axis {axial_n:.0} N, the least of thread or shank, head \
                 and steel, counts in place of the withdrawal that the equation prints.",
                found.angle_deg
            )),
        );
        Ok(Some(found.capacity_n))
    }
}
