//! The joint by Eurocode 5: what carries the load along the fasteners, and both loads at once.

use super::ec5::{Case, KMod, density, en};
use super::kinds::{JointDrive, JointFastenerKind, JointMaterial};
use super::result::{Answer, Silence, line};
use crate::cite::Clause;
use crate::error::{ErrorCode, Result};
use crate::fasten::ec5::{
    Ec5CombinedLoadInput, Ec5Fastener, Ec5HeadPullThroughInput, Ec5NailTimber, Ec5NailWithdrawalInput,
    Ec5ScrewWithdrawalInput, Ec5WasherPullInput, ec5_combined_load, ec5_head_pull_through, ec5_nail_withdrawal,
    ec5_screw_withdrawal, ec5_washer_pull,
};
use crate::fasten::nds::{FastenerDirection, MemberMoisture};
use crate::finding::Quantity;
use crate::limits::{BEARING_LENGTH, CONNECTION_CAPACITY, WASHER_AREA};
use crate::numeric::real::pow;
use crate::verdict::{Factor, Verdict};

/// What holds the fasteners along their axis.
pub(super) struct Axial {
    /// Characteristic values of one fastener.
    one: Holds,
    /// Design capacities of all.
    withdrawal: Answer<f64>,
    head: Answer<Option<f64>>,
    tension_n: Option<f64>,
    /// The least of them as far as they are known.
    pub(super) capacity_n: Option<f64>,
    /// Number that acts together: n^0.9 of screws (8.41).
    effective_number: f64,
    k_mod: Option<KMod>,
    pub(super) required_mm: f64,
}

/// Characteristic values of one fastener along its axis, N.
struct Holds {
    withdrawal: Answer<f64>,
    withdrawal_clause: Clause,
    /// Nothing where a plate holds the head.
    head: Answer<Option<f64>>,
    head_clause: Clause,
    required_mm: f64,
}

impl Axial {
    /// The capacity that the rope effect may rest on; 0 where a part of it is not known.
    pub(super) fn rope_n(&self, tension_n: Option<f64>) -> f64 {
        match (&self.one.withdrawal, &self.one.head) {
            (Ok(withdrawal_n), Ok(head_n)) => [*head_n, tension_n].into_iter().flatten().fold(*withdrawal_n, f64::min),
            _ => 0.0,
        }
    }
}

impl Case<'_> {
    pub(super) fn axial(&self, k_mod: &Answer<KMod>, working: &mut Vec<Quantity>) -> Result<Axial> {
        let (input, fastener) = (self.input, &self.input.fastener);
        let one = match self.kind {
            Ec5Fastener::Screw => self.screw_holds()?,
            Ec5Fastener::Bolt => self.bolt_holds()?,
            Ec5Fastener::Dowel => dowel_holds(),
            Ec5Fastener::RoundNail | Ec5Fastener::SquareNail | Ec5Fastener::ThreadedNail => self.nail_holds()?,
        };
        if let Ok(one_n) = one.withdrawal {
            working.push(Quantity::new("withdrawal of one fastener, characteristic value", one_n, "N"));
        }
        if let Ok(Some(one_n)) = one.head {
            working.push(Quantity::new("head pull-through of one fastener, characteristic value", one_n, "N"));
        }
        let effective_number = if fastener.kind.is_screw() { pow(self.number, 0.9) } else { self.number };
        let whole = effective_number / input.gamma_m;
        let (withdrawal, head) = match k_mod {
            Ok(k_mod) => (
                one.withdrawal.clone().map(|one_n| one_n * whole * k_mod.last),
                one.head.clone().map(|one_n| one_n.map(|one_n| one_n * whole * k_mod.side)),
            ),
            Err(why) => (Err(why.clone()), Err(why.clone())),
        };
        let tension_n = fastener.tension_capacity_n.map(|one_n| one_n * whole);
        let capacity_n = withdrawal.as_ref().ok().map(|withdrawal_n| {
            let others = [head.as_ref().ok().copied().flatten(), tension_n];
            others.into_iter().flatten().fold(*withdrawal_n, f64::min)
        });
        let required_mm = fastener.declared_penetration_mm.unwrap_or(one.required_mm);
        Ok(Axial {
            one,
            withdrawal,
            head,
            tension_n,
            capacity_n,
            effective_number,
            k_mod: k_mod.as_ref().ok().copied(),
            required_mm,
        })
    }

    /// Why the standard has no withdrawal value, where it has none.
    fn uncovered_withdrawal(&self) -> Option<Silence> {
        let into_end =
            self.input.pocket.as_ref().is_some_and(|pocket| pocket.main_direction == FastenerDirection::EndGrain);
        let text = match self.input.drive {
            JointDrive::EndGrain => "In end grain the standard has no withdrawal value.",
            JointDrive::ToeNailed => "A slanted nail is not computed.",
            _ if into_end => "In end grain the standard has no withdrawal value.",
            _ if !self.last().material.is_timber() => "The withdrawal strengths of the standard are those of timber.",
            _ => return None,
        };
        Some(Silence::not_covered(text))
    }

    fn screw_holds(&self) -> Result<Holds> {
        let fastener = &self.input.fastener;
        let structural = fastener.kind == JointFastenerKind::StructuralScrew;
        let withdrawal = if let Some(silence) = self.uncovered_withdrawal() {
            Err(silence)
        } else if structural && fastener.declared_withdrawal_mpa.is_none() {
            Err(Silence::not_determined("The withdrawal strength of a structural screw must be declared."))
        } else if self.lay.thread_mm < BEARING_LENGTH.low {
            Ok(0.0)
        } else {
            // The slant of a pocket may run along the grain: the careful angle.
            let slant_deg = self.input.pocket.as_ref().map_or(0.0, |pocket| pocket.angle_deg);
            let found = ec5_screw_withdrawal(&Ec5ScrewWithdrawalInput {
                thread_diameter_mm: fastener.nominal_diameter_mm,
                root_diameter_mm: fastener.root_mm(),
                thread_length_mm: self.lay.thread_mm,
                density_kg_m3: density(self.last()),
                axis_to_grain_deg: 90.0 - slant_deg,
                count: 1,
                declared_mpa: fastener.declared_withdrawal_mpa,
                declared_density_kg_m3: fastener.declared_withdrawal_mpa.and(fastener.declared_density_kg_m3),
            });
            match found {
                Ok(found) => Ok(found.per_screw_n),
                Err(fault) if fault.code == ErrorCode::NoPublishedValue => Err(Silence::not_covered(
                    "The equation is for screws of 6 to 12 mm with a root of 0.6 to 0.75 of that: declare a strength.",
                )),
                Err(fault) => return Err(fault.into()),
            }
        };
        let head = if structural && fastener.declared_head_mpa.is_none() && self.input.side.material.is_wooden() {
            Err(Silence::not_determined("The pull-through strength of a structural screw must be declared."))
        } else {
            self.head()?
        };
        Ok(Holds {
            withdrawal,
            withdrawal_clause: en("8.7.2, Eq. 8.38"),
            head,
            head_clause: en("8.7.2, Eq. 8.40b"),
            required_mm: 6.0 * fastener.nominal_diameter_mm,
        })
    }

    fn head(&self) -> Result<Answer<Option<f64>>> {
        let (side, fastener) = (&self.input.side, &self.input.fastener);
        let declared_mpa = fastener.declared_head_mpa;
        if side.material == JointMaterial::Steel {
            return Ok(Ok(None));
        }
        if !side.material.is_wooden() {
            return Ok(Err(Silence::not_covered("The pull-through of the standard is that of timber and panels.")));
        }
        if declared_mpa.is_none() && side.material.is_panel() {
            return Ok(Err(Silence::not_covered("The pull-through strength in a panel must be declared.")));
        }
        if declared_mpa.is_none() && self.input.pocket.is_some() {
            let why =
                "A head on the shoulder of a pocket has no value in the standard: its pull-through must be declared.";
            return Ok(Err(Silence::not_covered(why)));
        }
        let found = ec5_head_pull_through(&Ec5HeadPullThroughInput {
            head_diameter_mm: fastener.head_diameter_mm,
            density_kg_m3: density(side),
            count: 1,
            declared_mpa,
            declared_density_kg_m3: declared_mpa.and(fastener.declared_density_kg_m3),
        })?;
        Ok(Ok(Some(found.per_head_n)))
    }

    /// A bolt pulls on the wood under its washers.
    fn bolt_holds(&self) -> Result<Holds> {
        let fastener = &self.input.fastener;
        let ends = [&self.input.side, self.last()];
        let strengths: Option<Vec<f64>> = ends
            .into_iter()
            .filter(|member| member.material != JointMaterial::Steel)
            .map(|member| member.compression_across_mpa)
            .collect();
        let hole_mm = self.input.lead_hole_mm.unwrap_or(fastener.nominal_diameter_mm + 1.0);
        let area_mm2 =
            core::f64::consts::FRAC_PI_4 * (fastener.head_diameter_mm * fastener.head_diameter_mm - hole_mm * hole_mm);
        let withdrawal = match (strengths, fastener.tension_capacity_n) {
            (Some(strengths), Some(bolt_tension_n)) if area_mm2 >= WASHER_AREA.low => {
                let least = strengths.into_iter().reduce(f64::min);
                match least {
                    Some(compression_across_mpa) => {
                        let washer =
                            Ec5WasherPullInput { bolt_tension_n, washer_area_mm2: area_mm2, compression_across_mpa };
                        Ok(ec5_washer_pull(&washer)?.capacity_n)
                    }
                    None => Ok(bolt_tension_n),
                }
            }
            _ => Err(Silence::not_determined(
                "A bolt's pull needs its tensile capacity, a washer wider than the hole, and the compressive strength \
                 across the grain of the members under its washers.",
            )),
        };
        let clause = en("8.5.2");
        Ok(Holds { withdrawal, withdrawal_clause: clause, head: Ok(None), head_clause: clause, required_mm: 0.0 })
    }

    fn nail_holds(&self) -> Result<Holds> {
        let fastener = &self.input.fastener;
        let slender = if self.kind.is_smooth_nail() { 8.0 } else { 6.0 };
        let clause = en("8.3.2, Eq. 8.23, 8.24");
        let holds = |withdrawal, head| Holds {
            withdrawal,
            withdrawal_clause: clause,
            head,
            head_clause: clause,
            required_mm: slender * fastener.nominal_diameter_mm,
        };
        if let Some(silence) = self.uncovered_withdrawal() {
            return Ok(holds(Err(silence), self.head()?));
        }
        let made = |moisture: Option<MemberMoisture>| moisture.unwrap_or(self.input.made);
        let wet = [self.input.side.made, self.last().made].map(made).contains(&MemberMoisture::Wet);
        let found = ec5_nail_withdrawal(&Ec5NailWithdrawalInput {
            fastener: self.kind,
            diameter_mm: fastener.nominal_diameter_mm,
            head_diameter_mm: fastener.head_diameter_mm,
            penetration_mm: self.lay.thread_mm.clamp(BEARING_LENGTH.low, BEARING_LENGTH.high),
            head_side_mm: self.input.side.thickness_mm,
            density_kg_m3: density(self.last()),
            head_side_density_kg_m3: density(&self.input.side),
            timber: if wet { Ec5NailTimber::DriesUnderLoad } else { Ec5NailTimber::Dry },
            declared_mpa: fastener.declared_withdrawal_mpa,
            declared_head_mpa: fastener.declared_head_mpa,
        });
        match found {
            Ok(found) => {
                let of_timber = self.input.side.material.is_timber() || fastener.declared_head_mpa.is_some();
                let head = if of_timber { Ok(Some(found.head_n)) } else { self.head()? };
                Ok(holds(Ok(found.point_n), head))
            }
            Err(fault) if fault.code == ErrorCode::NoPublishedValue => {
                let silence = Silence::not_covered("Threaded nails need declared strengths for withdrawal and head.");
                Ok(holds(Err(silence.clone()), Err(silence)))
            }
            Err(fault) => Err(fault.into()),
        }
    }

    pub(super) fn axial_lines(&self, loads: &mut Vec<Verdict>, axial: &Axial) {
        let demand_n = self.along_n;
        let factors = |k_mod: fn(KMod) -> f64| {
            let clause = if self.kind == Ec5Fastener::Screw { en("8.7.2(8), Eq. 8.41") } else { en("8.3.2") };
            vec![
                Factor { name: "n_ef number that acts together", value: axial.effective_number, clause },
                Factor {
                    name: "k_mod duration and moisture",
                    value: axial.k_mod.map_or(1.0, k_mod),
                    clause: en("Table 3.1"),
                },
                Factor { name: "1/gamma_M partial factor", value: 1.0 / self.input.gamma_m, clause: en("Table 2.3") },
            ]
        };
        match &axial.withdrawal {
            Ok(capacity_n) => loads.push(
                line("withdrawal", demand_n, *capacity_n, "N", axial.one.withdrawal_clause)
                    .with_factors(factors(|k_mod| k_mod.last)),
            ),
            Err(silence) if demand_n > 0.0 => loads.push(silence.line("withdrawal", axial.one.withdrawal_clause)),
            Err(_) => {}
        }
        match &axial.head {
            Ok(Some(capacity_n)) => loads.push(
                line("head pull-through", demand_n, *capacity_n, "N", axial.one.head_clause)
                    .with_factors(factors(|k_mod| k_mod.side)),
            ),
            Err(silence) if demand_n > 0.0 => loads.push(silence.line("head pull-through", axial.one.head_clause)),
            _ => {}
        }
        let clause = en("8.7.2, Eq. 8.40c");
        match axial.tension_n {
            Some(capacity_n) => loads.push(
                line("tension of the steel", demand_n, capacity_n, "N", clause)
                    .with_remark("With the partial factor given for the connection."),
            ),
            None if demand_n > 0.0 && self.kind == Ec5Fastener::Screw => {
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
        let found = ec5_combined_load(&Ec5CombinedLoadInput {
            fastener: self.kind,
            axial_n: self.along_n,
            lateral_n: self.across_n,
            axial_capacity_n: axial_n,
            lateral_capacity_n: lateral_n,
        })?;
        let clause = if self.kind.is_smooth_nail() { en("8.3.3, Eq. 8.27") } else { en("8.3.3, 8.7.3, Eq. 8.28") };
        let resultant_n = (self.across_n * self.across_n + self.along_n * self.along_n).sqrt();
        // Both loads grow together to where the utilisation is 1. Tiny loads may round to no utilisation at all.
        let capacity_n = if found.utilisation > 0.0 { resultant_n / found.utilisation } else { lateral_n };
        loads.push(line("lateral and withdrawal at once", resultant_n, capacity_n, "N", clause));
        Ok(Some(capacity_n))
    }
}

fn dowel_holds() -> Holds {
    let silence = Silence::not_covered("A smooth dowel without a head holds nothing along its axis.");
    let clause = en("8.6");
    Holds { withdrawal: Err(silence), withdrawal_clause: clause, head: Ok(None), head_clause: clause, required_mm: 0.0 }
}
