//! The joint by the American standard.

use super::input::{JointDrive, JointFastenerKind, JointInput, JointStandard};
use super::lay::Lay;
use super::result::{Findings, JointMode};
use crate::cite::{Clause, Source};
use crate::error::{Detail, Error, Fault, Result};
use crate::fasten::ec5::Ec5Material;
use crate::fasten::nds::{
    BearingRounding, BendingYieldFastener, BendingYieldInput, CombinedLateralWithdrawalInput, CombinedLoadRule,
    ConnectionFactors, ConnectionFactorsInput, DowelBearingInput, DowelFastener, DowelShear, DowelShearInput,
    FORMAT_CONVERSION, FastenerArrangement, FastenerDirection, FastenerWithdrawal, FastenerWithdrawalInput,
    HeadPullThroughInput, LeadHoleInput, NailDriving, RESISTANCE, bending_yield, combined_lateral_withdrawal,
    connection_factors, dowel_bearing, dowel_shear, fastener_withdrawal, head_pull_through, lead_hole,
};
use crate::limits::{BEARING_LENGTH, CONNECTION_CAPACITY};
use crate::verdict::{Basis, Factor, Outcome, Verdict};

const fn nds(part: &'static str) -> Clause {
    Clause::new(Source::Nds2018, part)
}

/// A quarter inch, from which on the group and the geometry factor apply, mm.
const QUARTER_INCH_MM: f64 = 6.35;

/// A fault of a part of the input, with its path.
fn at<T>(path: &'static str, result: core::result::Result<T, Fault>) -> Result<T> {
    result.map_err(|fault| Error::one(Detail::from(Fault { field: path, ..fault })))
}

/// What every line needs.
struct Case<'a> {
    input: &'a JointInput,
    lay: &'a Lay,
    kind: DowelFastener,
    direction: FastenerDirection,
    side_gravity: f64,
    main_gravity: f64,
    root_mm: f64,
    factors: ConnectionFactors,
    /// What load and resistance factor design has in place of the load duration factor, over that factor; 1 for
    /// allowable stress design.
    strength: f64,
    number: f64,
}

pub(super) fn findings(input: &JointInput, lay: &Lay) -> Result<Findings> {
    let case = Case::of(input, lay)?;
    let uncovered = case.uncovered();
    let lateral = if uncovered.is_none() { Some(case.lateral()?) } else { None };
    let withdrawal = if uncovered.is_none() { Some(case.withdrawal()?) } else { None };
    let f = &case.factors;
    let whole = case.strength * case.number;
    let lateral_capacity_n = lateral.map(|found| found.reference_n * f.lateral * whole);
    let withdrawal_n = withdrawal.map(|found| found.reference_n * f.withdrawal * whole);
    let head_n = if uncovered.is_none() && !input.side.material.is_panel() {
        let reference_n = case.head()?;
        Some(reference_n * f.pull_through * whole)
    } else {
        None
    };
    let tension_n = input.fastener.tension_capacity_n.map(|one_n| one_n * case.number);
    let axial_capacity_n =
        withdrawal_n.map(|withdrawal_n| [head_n, tension_n].into_iter().flatten().fold(withdrawal_n, f64::min));
    let mut loads = Vec::new();
    case.lateral_line(&mut loads, lateral.as_ref(), lateral_capacity_n, uncovered);
    case.axial_lines(&mut loads, withdrawal.as_ref(), [withdrawal_n, head_n, tension_n], uncovered);
    let combined_capacity_n = case.combined_line(&mut loads, lateral_capacity_n, axial_capacity_n)?;
    Ok(Findings {
        modes: lateral.as_ref().map(modes).unwrap_or_default(),
        governing_mode: lateral.map(|found| found.governing_mode.words().to_owned()).unwrap_or_default(),
        lateral_value_n: lateral.map(|found| found.reference_n),
        factors: lateral.map(|_| case.lateral_factors()).unwrap_or_default(),
        lateral_capacity_n,
        axial_capacity_n,
        combined_capacity_n,
        loads,
        requirements: case.requirements(withdrawal.as_ref())?,
    })
}

fn modes(found: &DowelShear) -> Vec<JointMode> {
    use crate::fasten::nds::YieldMode as Mode;
    let values = [
        (Mode::Im, found.im_n),
        (Mode::Is, found.is_n),
        (Mode::Ii, found.ii_n),
        (Mode::Iiim, found.iiim_n),
        (Mode::Iiis, found.iiis_n),
        (Mode::Iv, found.iv_n),
    ];
    values.into_iter().map(|(mode, value_n)| JointMode { name: mode.words(), value_n }).collect()
}

impl<'a> Case<'a> {
    fn of(input: &'a JointInput, lay: &'a Lay) -> Result<Self> {
        let fastener = &input.fastener;
        let kind = match fastener.kind {
            JointFastenerKind::WoodScrew => DowelFastener::WoodScrew,
            JointFastenerKind::LagScrew => DowelFastener::LagScrew,
            JointFastenerKind::SmoothNail => DowelFastener::SmoothNail,
            JointFastenerKind::RingShankNail => DowelFastener::RingShankNail,
        };
        let direction = if input.drive == JointDrive::EndGrain {
            FastenerDirection::EndGrain
        } else {
            FastenerDirection::SideGrain
        };
        let one_row = input.count == 1 || input.layout.is_some_and(|layout| layout.in_row == input.count);
        // A toe-nailed screw is not covered at all, so its factors do not matter.
        let toe = input.drive == JointDrive::ToeNailed && !fastener.kind.is_screw();
        let factors = connection_factors(&ConnectionFactorsInput {
            fastener: kind,
            nominal_diameter_mm: fastener.nominal_diameter_mm,
            load_duration: input.duration.nds(),
            fabrication_moisture: input.made,
            service_moisture: input.climate.nds(),
            temperature: input.temperature,
            arrangement: if one_row { FastenerArrangement::OneFastenerOrRow } else { FastenerArrangement::SeveralRows },
            direction,
            nail_driving: if toe { NailDriving::ToeNailed } else { NailDriving::Straight },
        })?;
        // That they are given was checked with the input.
        let gravity = |given: Option<f64>| given.unwrap_or(crate::limits::SPECIFIC_GRAVITY.low);
        Ok(Self {
            input,
            lay,
            kind,
            direction,
            side_gravity: gravity(input.side.specific_gravity),
            main_gravity: gravity(input.main.specific_gravity),
            root_mm: fastener.root_diameter_mm.unwrap_or(fastener.nominal_diameter_mm),
            strength: match input.standard {
                JointStandard::NdsLrfd => FORMAT_CONVERSION * RESISTANCE * input.time_effect.factor() / factors.c_d,
                JointStandard::NdsAsd | JointStandard::Ec5 => 1.0,
            },
            factors,
            number: f64::from(input.count),
        })
    }

    /// Why the standard has no answer at all, where it has none.
    fn uncovered(&self) -> Option<&'static str> {
        let input = self.input;
        let strange =
            |material| matches!(material, Ec5Material::Osb2Particleboard | Ec5Material::Hardboard | Ec5Material::MdfLa);
        match input.drive {
            JointDrive::Pocket => Some("The standard has no rule for a screw at a slant."),
            JointDrive::ToeNailed if input.fastener.kind.is_screw() => {
                Some("The standard knows toe-nailing of nails only.")
            }
            JointDrive::ToeNailed if self.lay.gap_mm > 0.0 => Some("The rule for toe-nails is for members that touch."),
            _ if strange(input.side.material) || strange(input.main.material) => {
                Some("Bearing strengths are published for wood, plywood and OSB.")
            }
            _ => None,
        }
    }

    fn lateral(&self) -> Result<DowelShear> {
        let (input, fastener) = (self.input, &self.input.fastener);
        let nominal_mm = fastener.nominal_diameter_mm;
        let bearing = |specific_gravity, angle_to_grain_deg, direction| {
            dowel_bearing(&DowelBearingInput {
                specific_gravity,
                diameter_mm: nominal_mm,
                angle_to_grain_deg,
                direction,
                rounding: BearingRounding::Unrounded,
            })
        };
        let side = bearing(self.side_gravity, input.side.angle_to_grain_deg, FastenerDirection::SideGrain)?;
        let main = bearing(self.main_gravity, input.main.angle_to_grain_deg, self.direction)?;
        let bending_yield_mpa = match fastener.bending_yield_mpa {
            Some(given_mpa) => given_mpa,
            None => {
                let table = BendingYieldInput { fastener: BendingYieldFastener::LowCarbon, diameter_mm: nominal_mm };
                at("fastener.bending_yield_mpa", bending_yield(&table))?.bending_yield_mpa
            }
        };
        let main_deg = match self.direction {
            FastenerDirection::SideGrain => input.main.angle_to_grain_deg,
            FastenerDirection::EndGrain => 90.0,
        };
        Ok(dowel_shear(&DowelShearInput {
            yield_diameter_mm: self.yield_diameter_mm(),
            nominal_diameter_mm: Some(nominal_mm),
            bending_yield_mpa,
            main_bearing_mpa: main.at_angle_mpa,
            side_bearing_mpa: side.at_angle_mpa,
            main_length_mm: self.lay.bearing_mm,
            side_length_mm: self.lay.side_mm,
            gap_mm: at("gaps", within_gap_range(self.lay.gap_mm))?,
            max_angle_to_grain_deg: input.side.angle_to_grain_deg.max(main_deg),
        })?)
    }

    fn yield_diameter_mm(&self) -> f64 {
        if self.input.fastener.kind.is_screw() { self.root_mm } else { self.input.fastener.nominal_diameter_mm }
    }

    fn withdrawal(&self) -> Result<FastenerWithdrawal> {
        let (lay, input) = (self.lay, self.input);
        // A lag screw holds without its tip; a toe-nail lengthwise by what lies behind the joint.
        let slant_mm = 2.0 / 3.0 * input.fastener.length_mm;
        let (holding_mm, penetration_mm) = match (self.kind, input.drive) {
            (DowelFastener::LagScrew, _) => (lay.thread_mm - lay.tip_mm, lay.held_mm - lay.tip_mm),
            (DowelFastener::SmoothNail, JointDrive::ToeNailed) => (slant_mm, lay.held_mm),
            (DowelFastener::SmoothNail, _) => (lay.held_mm, lay.held_mm),
            _ => (lay.thread_mm, lay.held_mm),
        };
        let found = fastener_withdrawal(&FastenerWithdrawalInput {
            fastener: self.kind,
            specific_gravity: self.main_gravity,
            nominal_diameter_mm: input.fastener.nominal_diameter_mm,
            holding_length_mm: holding_mm.clamp(BEARING_LENGTH.low, BEARING_LENGTH.high),
            penetration_mm: Some(penetration_mm.clamp(BEARING_LENGTH.low, BEARING_LENGTH.high)),
            direction: self.direction,
        })?;
        // A thread that does not reach the main member holds nothing.
        let reference_n = if holding_mm < BEARING_LENGTH.low { 0.0 } else { found.reference_n };
        Ok(FastenerWithdrawal { reference_n, ..found })
    }

    fn head(&self) -> Result<f64> {
        let found = head_pull_through(&HeadPullThroughInput {
            specific_gravity: self.side_gravity,
            head_diameter_mm: self.input.fastener.head_diameter_mm,
            net_side_thickness_mm: self.input.side.thickness_mm,
        })?;
        Ok(found.reference_n)
    }

    fn lateral_factors(&self) -> Vec<Factor> {
        let f = &self.factors;
        let mut list = self.duration_factors();
        list.extend([
            Factor { name: "C_M wet service", value: f.c_m_lateral, clause: nds("Table 11.3.3") },
            Factor { name: "C_t temperature", value: f.c_t, clause: nds("Table 11.3.4") },
            Factor { name: "C_eg end grain", value: f.c_eg_lateral, clause: nds("12.5.2") },
            Factor { name: "C_tn toe-nail", value: f.c_tn_lateral, clause: nds("12.5.4") },
        ]);
        list
    }

    /// The number, and the load duration or what the other design has in its place.
    fn duration_factors(&self) -> Vec<Factor> {
        let number = Factor { name: "n number of fasteners", value: self.number, clause: nds("11.1.2") };
        if self.input.standard == JointStandard::NdsLrfd {
            let time_effect = self.input.time_effect.factor();
            return vec![
                number,
                Factor { name: "K_F format conversion", value: FORMAT_CONVERSION, clause: nds("Table N1") },
                Factor { name: "phi_z resistance", value: RESISTANCE, clause: nds("Table N2") },
                Factor { name: "lambda time effect", value: time_effect, clause: nds("Table N3") },
            ];
        }
        vec![number, Factor { name: "C_D load duration", value: self.factors.c_d, clause: nds("11.3.2") }]
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

    fn line(&self, name: &str, demand: f64, capacity: f64, unit: &'static str, clause: Clause) -> Verdict {
        Verdict::compare(name, SUBJECT, demand, capacity, unit, Basis::Clause, clause)
    }

    fn lateral_line(
        &self,
        loads: &mut Vec<Verdict>,
        found: Option<&DowelShear>,
        capacity_n: Option<f64>,
        uncovered: Option<&'static str>,
    ) {
        let gap = self.lay.gap_mm > 0.0;
        let clause = if gap { Clause::new(Source::Tr12, "Table 1-1") } else { nds("12.3.1, Table 12.3.1A") };
        if let (Some(found), Some(capacity_n)) = (found, capacity_n) {
            let remark = if gap {
                format!("The {} mm between the members are taken as an open gap.", self.lay.gap_mm)
            } else {
                String::new()
            };
            loads.push(
                self.line("lateral load", self.input.lateral_n, capacity_n, "N", clause)
                    .with_mode(found.governing_mode.words())
                    .with_factors(self.lateral_factors())
                    .with_remark(remark),
            );
        } else if self.input.lateral_n > 0.0 {
            let remark = uncovered.unwrap_or_default();
            loads.push(Verdict::without_answer("lateral load", SUBJECT, Outcome::NotCovered, clause, remark));
        }
    }

    fn axial_lines(
        &self,
        loads: &mut Vec<Verdict>,
        found: Option<&FastenerWithdrawal>,
        [withdrawal_n, head_n, tension_n]: [Option<f64>; 3],
        uncovered: Option<&'static str>,
    ) {
        let demand_n = self.input.withdrawal_n;
        let none =
            |name: &str, outcome, clause, remark: &str| Verdict::without_answer(name, SUBJECT, outcome, clause, remark);
        match (found, withdrawal_n) {
            (Some(_), Some(capacity_n)) if capacity_n > 0.0 || demand_n > 0.0 => {
                let remark = if self.direction == FastenerDirection::EndGrain && capacity_n <= 0.0 {
                    "In end grain the standard permits this fastener no withdrawal."
                } else {
                    ""
                };
                loads.push(
                    self.line("withdrawal", demand_n, capacity_n, "N", nds("12.2"))
                        .with_factors(self.axial_factors(self.factors.c_m_withdrawal, self.factors.c_tn_withdrawal))
                        .with_remark(remark),
                );
            }
            _ if demand_n > 0.0 => {
                let why = uncovered.unwrap_or_default();
                loads.push(none("withdrawal", Outcome::NotCovered, nds("12.2"), why));
            }
            _ => {}
        }
        match head_n {
            Some(capacity_n) => loads.push(
                self.line("head pull-through", demand_n, capacity_n, "N", nds("12.2.5, Eq. 12.2-6"))
                    .with_factors(self.axial_factors(self.factors.c_m_pull_through, 1.0)),
            ),
            None if demand_n > 0.0 => {
                let why = "The equation is for heads in wood side members.";
                loads.push(none("head pull-through", Outcome::NotCovered, nds("12.2.5"), why));
            }
            None => {}
        }
        match tension_n {
            Some(capacity_n) => {
                loads.push(self.line("tension of the steel", demand_n, capacity_n, "N", nds("12.2.2.5")));
            }
            None if demand_n > 0.0 && self.input.fastener.kind.is_screw() => {
                let why = "The tensile capacity of the screw was not given.";
                loads.push(none("tension of the steel", Outcome::NotDetermined, nds("12.2.2.5"), why));
            }
            None => {}
        }
    }

    fn combined_line(
        &self,
        loads: &mut Vec<Verdict>,
        lateral_n: Option<f64>,
        axial_n: Option<f64>,
    ) -> Result<Option<f64>> {
        let input = self.input;
        let range = CONNECTION_CAPACITY.low..=CONNECTION_CAPACITY.high;
        let (Some(lateral_n), Some(axial_n)) = (lateral_n, axial_n) else { return Ok(None) };
        let both = input.lateral_n > 0.0 && input.withdrawal_n > 0.0;
        if !both || !range.contains(&lateral_n) || !range.contains(&axial_n) {
            return Ok(None);
        }
        let (rule, clause) = if input.fastener.kind.is_screw() {
            (CombinedLoadRule::Screws, nds("Eq. 12.4-1"))
        } else {
            (CombinedLoadRule::Nails, nds("Eq. 12.4-2"))
        };
        let found = combined_lateral_withdrawal(&CombinedLateralWithdrawalInput {
            rule,
            lateral_capacity_n: lateral_n,
            withdrawal_capacity_n: axial_n,
            lateral_n: input.lateral_n,
            withdrawal_n: input.withdrawal_n,
        })?;
        loads.push(
            self.line("lateral and withdrawal at once", found.resultant_n, found.capacity_n, "N", clause)
                .with_remark(format!("Resultant at {:.1}° to the wood surface.", found.angle_deg)),
        );
        Ok(Some(found.capacity_n))
    }

    fn requirements(&self, withdrawal: Option<&FastenerWithdrawal>) -> Result<Vec<Verdict>> {
        let (input, lay) = (self.input, self.lay);
        let nominal_mm = input.fastener.nominal_diameter_mm;
        let large = nominal_mm >= QUARTER_INCH_MM - 1e-9;
        let none =
            |name: &str, outcome, clause, remark: &str| Verdict::without_answer(name, SUBJECT, outcome, clause, remark);
        let mut lines = Vec::new();
        let clause = match self.kind {
            DowelFastener::LagScrew => nds("12.1.4.6"),
            DowelFastener::WoodScrew => nds("12.1.5.6"),
            _ => nds("12.1.6.4"),
        };
        match withdrawal {
            Some(found) => {
                let tip_mm = if self.kind == DowelFastener::LagScrew { lay.tip_mm } else { 0.0 };
                let line = self.line(
                    "least penetration, against the penetration there is",
                    found.required_penetration_mm,
                    (lay.held_mm - tip_mm).max(0.0),
                    "mm",
                    clause,
                );
                lines.push(Verdict { outcome: found.penetration, ..line });
            }
            None => lines.push(none("least penetration", Outcome::NotCovered, clause, "See the loads.")),
        }
        lines.push(super::result::far_side(lay.penetration_mm, input.main.thickness_mm));
        lines.push(self.lead_hole_line()?);
        if large {
            let why = "The geometry factor C_delta (12.5.1) is taken as 1: keep the full distances.";
            lines.push(none("spacing, edge and end distances", Outcome::NotDetermined, nds("12.5.1"), why));
            if input.count > 1 {
                let why = "The group action factor C_g (11.3.6) is taken as 1.";
                lines.push(none("group action", Outcome::NotDetermined, nds("11.3.6"), why));
            }
        } else {
            let why = "Below 1/4 in the standard gives no distances, only that the wood must not split.";
            lines.push(none("spacing, edge and end distances", Outcome::NotCovered, nds("12.1.5, 12.1.6"), why));
        }
        Ok(lines)
    }

    fn lead_hole_line(&self) -> Result<Verdict> {
        let input = self.input;
        let none =
            |outcome, clause, remark: String| Verdict::without_answer("lead hole", SUBJECT, outcome, clause, remark);
        match (self.kind, input.lead_hole_mm) {
            (DowelFastener::WoodScrew, given) => {
                let hole = lead_hole(&LeadHoleInput {
                    specific_gravity: self.main_gravity,
                    nominal_diameter_mm: input.fastener.nominal_diameter_mm,
                    root_diameter_mm: self.root_mm,
                })?;
                let lateral = input.lateral_n > 0.0;
                let (wanted_mm, clause) = if lateral {
                    (hole.lateral_thread_hole_mm, nds("12.1.5.3"))
                } else {
                    (hole.withdrawal_thread_hole_mm, nds("12.1.5.2"))
                };
                Ok(match given {
                    Some(given_mm) if wanted_mm > 0.0 => self
                        .line("lead hole, against the one of the standard", given_mm, wanted_mm, "mm", clause)
                        .with_remark("The standard says \"about\": the nearest drill."),
                    Some(_) => none(Outcome::Met, clause, "None is required.".to_owned()),
                    None if wanted_mm > 0.0 => {
                        let why = format!("The standard asks for a thread hole of about {wanted_mm:.1} mm.");
                        none(Outcome::NotMet, clause, why)
                    }
                    None => none(Outcome::Met, clause, "None is required.".to_owned()),
                })
            }
            (DowelFastener::LagScrew, _) => {
                let why = "By diameter and density, for shank and thread (12.1.4.2).".to_owned();
                Ok(none(Outcome::NotDetermined, nds("12.1.4.2"), why))
            }
            (_, Some(given_mm)) => {
                let share = if self.main_gravity > 0.6 { 0.9 } else { 0.75 };
                let most_mm = share * input.fastener.nominal_diameter_mm;
                Ok(self.line("bored hole, against the largest allowed", given_mm, most_mm, "mm", nds("12.1.6.2")))
            }
            (_, None) => Ok(none(Outcome::Met, nds("12.1.6.2"), "None is required.".to_owned())),
        }
    }
}

/// What the lines are about.
pub(super) const SUBJECT: &str = "fasteners";

/// The sum of the layers within the range of one gap.
fn within_gap_range(gap_mm: f64) -> core::result::Result<f64, Fault> {
    crate::limits::SMALL_LENGTH.check("gaps", gap_mm).map(|()| gap_mm)
}
