//! The joint by Eurocode 5: the loads and what carries them.

use super::input::{JointDrive, JointFastenerKind, JointInput};
use super::lay::Lay;
use super::nds::SUBJECT;
use super::result::{Findings, JointMode};
use crate::cite::{Clause, Source};
use crate::error::{Detail, Error, ErrorCode, Fault, Result};
use crate::fasten::ec5::{
    Ec5CombinedLoadInput, Ec5EffectiveNumberInput, Ec5EmbedmentInput, Ec5Fastener, Ec5HeadPullThroughInput, Ec5Hole,
    Ec5Material, Ec5NailTimber, Ec5NailWithdrawalInput, Ec5RowStagger, Ec5ScrewDiameterInput, Ec5ScrewWithdrawalInput,
    Ec5SingleShear, Ec5SingleShearInput, Ec5YieldMomentInput, ec5_combined_load, ec5_effective_number, ec5_embedment,
    ec5_head_pull_through, ec5_nail_withdrawal, ec5_screw_diameter, ec5_screw_withdrawal, ec5_single_shear,
    ec5_yield_moment, joint_kmod, kmod,
};
use crate::fasten::nds::{MemberMoisture, TemperatureBand};
use crate::limits::{BEARING_LENGTH, CONNECTION_CAPACITY, WOOD_DENSITY, YIELD_MOMENT};
use crate::numeric::real::pow;
use crate::verdict::{Basis, Factor, Outcome, Verdict};

pub(super) const fn en(part: &'static str) -> Clause {
    Clause::new(Source::En1995, part)
}

/// A fault of a part of the input, with its path.
pub(super) fn at<T>(path: &'static str, result: core::result::Result<T, Fault>) -> Result<T> {
    result.map_err(|fault| Error::one(Detail::from(Fault { field: path, ..fault })))
}

/// What every line needs.
pub(super) struct Case<'a> {
    pub(super) input: &'a JointInput,
    pub(super) lay: &'a Lay,
    pub(super) kind: Ec5Fastener,
    /// Effective diameter of a screw, diameter of a nail.
    pub(super) diameter_mm: f64,
    pub(super) side_density: f64,
    pub(super) main_density: f64,
    /// The hole that the strengths are computed for.
    pub(super) hole: Ec5Hole,
    pub(super) hole_needed: bool,
    pub(super) number: f64,
}

/// An answer, or why there is none.
pub(super) type Answer<T> = core::result::Result<T, String>;

/// Characteristic values along the axis of one fastener.
pub(super) struct Axial {
    pub(super) withdrawal_n: Answer<f64>,
    pub(super) withdrawal_clause: Clause,
    pub(super) head_n: Answer<f64>,
    pub(super) required_mm: f64,
}

impl Axial {
    /// The capacity that the rope effect may rest on; 0 where a part of it is not known.
    fn rope_n(&self, tension_n: Option<f64>) -> f64 {
        match (&self.withdrawal_n, &self.head_n) {
            (Ok(withdrawal_n), Ok(head_n)) => withdrawal_n.min(*head_n).min(tension_n.unwrap_or(f64::INFINITY)),
            _ => 0.0,
        }
    }
}

pub(super) fn findings(input: &JointInput, lay: &Lay) -> Result<Findings> {
    let case = Case::of(input, lay)?;
    let factors = case.k_mod();
    let axial = case.axial()?;
    let shear = match case.uncovered_lateral() {
        Some(why) => Err(why),
        None => Ok(case.shear(&axial)?),
    };
    let row = case.row_factor();
    let lateral = match (&shear, &row, &factors) {
        (Ok(shear), Ok(row), Ok([side, main])) => {
            Ok(shear.capacity_n * case.number * row * joint_kmod(*side, *main) / input.gamma_m)
        }
        (Err(why), ..) | (_, Err(why), _) | (_, _, Err(why)) => Err(why.clone()),
    };
    // Screws pulled together count n^0.9 (8.41), nails all.
    let axial_number = if input.fastener.kind.is_screw() { pow(case.number, 0.9) } else { case.number };
    let design = |value: &Answer<f64>, side_of: usize| match (value, &factors) {
        (Ok(value_n), Ok([side, main])) => {
            let k_mod = if side_of == 0 { *side } else { *main };
            Ok(value_n * axial_number * k_mod / input.gamma_m)
        }
        (Err(why), _) | (_, Err(why)) => Err(why.clone()),
    };
    let (withdrawal, head) = (design(&axial.withdrawal_n, 1), design(&axial.head_n, 0));
    let tension_n = input.fastener.tension_capacity_n.map(|one_n| one_n * axial_number / input.gamma_m);
    let axial_capacity_n = withdrawal.as_ref().ok().map(|withdrawal_n| {
        [head.as_ref().ok().copied(), tension_n].into_iter().flatten().fold(*withdrawal_n, f64::min)
    });
    let factor_list = match (&row, &factors) {
        (Ok(row), Ok([side, main])) if shear.is_ok() => case.factor_list(*row, *side, *main),
        _ => Vec::new(),
    };
    let mut loads = Vec::new();
    case.lateral_line(&mut loads, shear.as_ref().ok(), &lateral, &factor_list);
    case.axial_lines(&mut loads, &axial, [&withdrawal, &head], tension_n);
    let lateral_capacity_n = lateral.as_ref().ok().copied();
    let combined_capacity_n = case.combined_line(&mut loads, lateral_capacity_n, axial_capacity_n)?;
    let shear = shear.ok();
    Ok(Findings {
        modes: shear.as_ref().map(modes).unwrap_or_default(),
        governing_mode: shear.map(|found| found.governing_mode.words().to_owned()).unwrap_or_default(),
        lateral_value_n: shear.map(|found| found.capacity_n),
        factors: factor_list,
        lateral_capacity_n,
        axial_capacity_n,
        combined_capacity_n,
        loads,
        requirements: case.requirements(&axial)?,
    })
}

fn modes(found: &Ec5SingleShear) -> Vec<JointMode> {
    use crate::fasten::ec5::Ec5SingleShearMode as Mode;
    let values = [
        (Mode::A, found.a_n),
        (Mode::B, found.b_n),
        (Mode::C, found.c_n),
        (Mode::D, found.d_n),
        (Mode::E, found.e_n),
        (Mode::F, found.f_n),
    ];
    values.into_iter().map(|(mode, value_n)| JointMode { name: mode.words(), value_n }).collect()
}

impl<'a> Case<'a> {
    fn of(input: &'a JointInput, lay: &'a Lay) -> Result<Self> {
        let fastener = &input.fastener;
        let nominal_mm = fastener.nominal_diameter_mm;
        let kind = match fastener.kind {
            JointFastenerKind::WoodScrew | JointFastenerKind::LagScrew => Ec5Fastener::Screw,
            JointFastenerKind::SmoothNail => Ec5Fastener::RoundNail,
            JointFastenerKind::RingShankNail => Ec5Fastener::ThreadedNail,
        };
        let diameter_mm = if kind == Ec5Fastener::Screw {
            ec5_screw_diameter(&Ec5ScrewDiameterInput {
                thread_diameter_mm: nominal_mm,
                root_diameter_mm: fastener.root_diameter_mm.unwrap_or(nominal_mm),
                shank_diameter_mm: fastener.shank_diameter_mm,
                shank_in_point_member_mm: lay.shank_mm,
            })?
            // 1.1 of the root can pass both the nominal diameter and the range of diameters.
            .effective_diameter_mm
            .min(nominal_mm)
            .max(crate::limits::FASTENER_DIAMETER.low)
        } else {
            nominal_mm
        };
        // That they are given was checked with the input.
        let density = |given: Option<f64>| given.unwrap_or(WOOD_DENSITY.low);
        let (side_density, main_density) =
            (density(input.side.characteristic_density_kg_m3), density(input.main.characteristic_density_kg_m3));
        let dense = |material: Ec5Material, density: f64| {
            !material.is_panel() && (material == Ec5Material::Hardwood || density > DENSEST_UNDRILLED_KG_M3)
        };
        let hole_needed = dense(input.side.material, side_density)
            || dense(input.main.material, main_density)
            || (kind == Ec5Fastener::Screw && nominal_mm > 6.0);
        // Without the hole that it needs the fastener fails its line; the strengths are shown for the hole.
        let hole = if hole_needed || input.lead_hole_mm.is_some() { Ec5Hole::Predrilled } else { Ec5Hole::Undrilled };
        let number = f64::from(input.count);
        Ok(Self { input, lay, kind, diameter_mm, side_density, main_density, hole, hole_needed, number })
    }

    /// k_mod of the side and of the main member.
    fn k_mod(&self) -> Answer<[f64; 2]> {
        let (class, duration) = (self.input.climate.ec5(), self.input.duration.ec5());
        let of = |material| {
            kmod(material, class, duration)
                .map_err(|_| "A panel stands in a service class that it is not made for.".to_owned())
        };
        if self.input.temperature == TemperatureBand::UpTo150F {
            return Err("The standard does not cover lasting temperatures above 60 °C (1.1.1).".to_owned());
        }
        Ok([of(self.input.side.material)?, of(self.input.main.material)?])
    }

    fn uncovered_lateral(&self) -> Option<String> {
        let text = match self.input.drive {
            JointDrive::SideGrain if self.lay.gap_mm > 0.0 => {
                "The standard has no rule for members that do not touch: the layers between them."
            }
            JointDrive::SideGrain if self.embedment().is_err() => {
                "The standard has no embedment strength for this fastener in this material."
            }
            JointDrive::SideGrain => return None,
            JointDrive::EndGrain => {
                "In end grain smooth nails may carry no lateral load, others a third of the value under limits that \
                 are not looked at; for screws the standard has no value."
            }
            JointDrive::ToeNailed => "The standard has no lateral value for slant-driven nails.",
            JointDrive::Pocket => "The standard has no lateral value for a screw at a slant.",
        };
        Some(text.to_owned())
    }

    /// Embedment strengths of the side and of the main member.
    fn embedment(&self) -> core::result::Result<[f64; 2], Fault> {
        let of = |member: &super::input::JointMember, density_kg_m3| {
            ec5_embedment(&Ec5EmbedmentInput {
                fastener: self.kind,
                hole: self.hole,
                material: member.material,
                density_kg_m3,
                diameter_mm: self.diameter_mm,
                angle_to_grain_deg: member.angle_to_grain_deg,
                panel_thickness_mm: Some(member.thickness_mm),
            })
            .map(|found| found.at_angle_mpa)
        };
        Ok([of(&self.input.side, self.side_density)?, of(&self.input.main, self.main_density)?])
    }

    fn shear(&self, axial: &Axial) -> Result<Ec5SingleShear> {
        let fastener = &self.input.fastener;
        let [head_side_mpa, point_side_mpa] = self.embedment()?;
        let yield_moment_nmm = match (fastener.yield_moment_nmm, fastener.tensile_strength_mpa) {
            (Some(declared_nmm), _) => declared_nmm,
            (None, Some(tensile_strength_mpa)) => {
                let moment =
                    Ec5YieldMomentInput { fastener: self.kind, diameter_mm: self.diameter_mm, tensile_strength_mpa };
                at("fastener.tensile_strength_mpa", ec5_yield_moment(&moment))?.yield_moment_nmm
            }
            (None, None) => {
                let words = "a tensile strength or a declared yield moment for Eurocode 5";
                let fault = Fault::plain(ErrorCode::MissingField, "fastener.tensile_strength_mpa", words, "give one");
                return Err(fault.into());
            }
        };
        at("fastener.yield_moment_nmm", YIELD_MOMENT.check("yield_moment_nmm", yield_moment_nmm))?;
        Ok(ec5_single_shear(&Ec5SingleShearInput {
            fastener: self.kind,
            diameter_mm: self.diameter_mm,
            yield_moment_nmm,
            head_side_mpa,
            point_side_mpa,
            head_side_mm: self.lay.side_mm,
            point_side_mm: self.lay.held_mm,
            axial_capacity_n: axial.rope_n(fastener.tension_capacity_n).min(crate::limits::FORCE.high),
        })?)
    }

    fn axial(&self) -> Result<Axial> {
        if self.kind == Ec5Fastener::Screw { self.screw_axial() } else { self.nail_axial() }
    }

    fn uncovered_axial(&self) -> Option<String> {
        let text = match self.input.drive {
            JointDrive::SideGrain if self.input.main.material.is_panel() => {
                "The withdrawal strengths of the standard are those of timber."
            }
            JointDrive::SideGrain => return None,
            JointDrive::EndGrain => "In end grain the standard has no withdrawal value.",
            JointDrive::ToeNailed | JointDrive::Pocket => "A slanted fastener is not computed.",
        };
        Some(text.to_owned())
    }

    fn head(&self) -> Result<Answer<f64>> {
        let declared_mpa = self.input.fastener.declared_head_mpa;
        if declared_mpa.is_none() && self.input.side.material.is_panel() {
            return Ok(Err("The pull-through strength in a panel must be declared.".to_owned()));
        }
        let found = ec5_head_pull_through(&Ec5HeadPullThroughInput {
            head_diameter_mm: self.input.fastener.head_diameter_mm,
            density_kg_m3: self.side_density,
            count: 1,
            declared_mpa,
            declared_density_kg_m3: None,
        })?;
        Ok(Ok(found.per_head_n))
    }

    fn screw_axial(&self) -> Result<Axial> {
        let fastener = &self.input.fastener;
        let required_mm = 6.0 * fastener.nominal_diameter_mm;
        let withdrawal_n = if let Some(why) = self.uncovered_axial() {
            Err(why)
        } else if self.lay.thread_mm < BEARING_LENGTH.low {
            Ok(0.0)
        } else {
            let found = ec5_screw_withdrawal(&Ec5ScrewWithdrawalInput {
                thread_diameter_mm: fastener.nominal_diameter_mm,
                root_diameter_mm: fastener.root_diameter_mm.unwrap_or(fastener.nominal_diameter_mm),
                thread_length_mm: self.lay.thread_mm,
                density_kg_m3: self.main_density,
                axis_to_grain_deg: 90.0,
                count: 1,
                declared_mpa: fastener.declared_withdrawal_mpa,
                declared_density_kg_m3: None,
            });
            match found {
                Ok(found) => Ok(found.per_screw_n),
                Err(fault) if fault.code == ErrorCode::NoPublishedValue => Err(
                    "The equation is for screws of 6 to 12 mm with a root of 0.6 to 0.75 of that: declare a strength."
                        .to_owned(),
                ),
                Err(fault) => return Err(fault.into()),
            }
        };
        Ok(Axial { withdrawal_n, withdrawal_clause: en("8.7.2, Eq. 8.38"), head_n: self.head()?, required_mm })
    }

    fn nail_axial(&self) -> Result<Axial> {
        let fastener = &self.input.fastener;
        let slender = if self.kind.is_smooth_nail() { 8.0 } else { 6.0 };
        let required_mm = slender * fastener.nominal_diameter_mm;
        let clause = en("8.3.2, Eq. 8.23, 8.24");
        if let Some(why) = self.uncovered_axial() {
            return Ok(Axial { withdrawal_n: Err(why), withdrawal_clause: clause, head_n: self.head()?, required_mm });
        }
        let found = ec5_nail_withdrawal(&Ec5NailWithdrawalInput {
            fastener: self.kind,
            diameter_mm: fastener.nominal_diameter_mm,
            head_diameter_mm: fastener.head_diameter_mm,
            penetration_mm: self.lay.thread_mm.clamp(BEARING_LENGTH.low, BEARING_LENGTH.high),
            head_side_mm: self.input.side.thickness_mm,
            density_kg_m3: self.main_density,
            head_side_density_kg_m3: self.side_density,
            timber: match self.input.made {
                MemberMoisture::Dry => Ec5NailTimber::Dry,
                MemberMoisture::Wet => Ec5NailTimber::DriesUnderLoad,
            },
            declared_mpa: fastener.declared_withdrawal_mpa,
            declared_head_mpa: fastener.declared_head_mpa,
        });
        let (withdrawal_n, head_n) = match found {
            Ok(found) => {
                let panel = self.input.side.material.is_panel() && fastener.declared_head_mpa.is_none();
                let head_n = if panel { self.head()? } else { Ok(found.head_n) };
                (Ok(found.point_n), head_n)
            }
            Err(fault) if fault.code == ErrorCode::NoPublishedValue => {
                let why = "Threaded nails need declared strengths for withdrawal and head.".to_owned();
                (Err(why.clone()), Err(why))
            }
            Err(fault) => return Err(fault.into()),
        };
        Ok(Axial { withdrawal_n, withdrawal_clause: clause, head_n, required_mm })
    }

    /// n_ef / n of a row along the grain.
    fn row_factor(&self) -> Answer<f64> {
        if self.input.count == 1 {
            return Ok(1.0);
        }
        let Some(layout) = self.input.layout else {
            return Err("How the fasteners stand was not given, and with it their effective number.".to_owned());
        };
        let found = ec5_effective_number(&Ec5EffectiveNumberInput {
            fastener: self.kind,
            hole: self.hole,
            diameter_mm: self.diameter_mm,
            count: layout.in_row,
            // One in a row has no spacing, and none is looked at.
            spacing_mm: layout.along_grain_mm.unwrap_or(crate::limits::FASTENER_SPACING.high),
            stagger: Ec5RowStagger::InLine,
            angle_to_grain_deg: self.input.side.angle_to_grain_deg.min(self.input.main.angle_to_grain_deg),
        });
        match found {
            Ok(found) => Ok(found.effective_number / f64::from(layout.in_row)),
            Err(_) => Err("The fasteners of a row stand closer than Table 8.1 goes.".to_owned()),
        }
    }

    fn factor_list(&self, row: f64, side: f64, main: f64) -> Vec<Factor> {
        vec![
            Factor { name: "n number of fasteners", value: self.number, clause: en("8.1.2") },
            Factor {
                name: "n_ef/n effective number of a row",
                value: row,
                clause: en("8.1.2(4), 8.3.1.1(8), 8.5.1.1(4)"),
            },
            Factor {
                name: "k_mod duration and moisture",
                value: joint_kmod(side, main),
                clause: en("Table 3.1, Eq. 2.6"),
            },
            Factor { name: "1/gamma_M partial factor", value: 1.0 / self.input.gamma_m, clause: en("Table 2.3") },
        ]
    }

    pub(super) fn line(&self, name: &str, demand: f64, capacity: f64, unit: &'static str, clause: Clause) -> Verdict {
        Verdict::compare(name, SUBJECT, demand, capacity, unit, Basis::Clause, clause)
    }

    /// Without a layout the rule exists but cannot be applied; all other gaps are the standard's.
    fn missing(&self, name: &str, clause: Clause, why: &str) -> Verdict {
        let undetermined = self.input.count > 1 && self.input.layout.is_none() && self.uncovered_lateral().is_none();
        let outcome = if undetermined && name == "lateral load" { Outcome::NotDetermined } else { Outcome::NotCovered };
        Verdict::without_answer(name, SUBJECT, outcome, clause, why)
    }

    fn lateral_line(
        &self,
        loads: &mut Vec<Verdict>,
        found: Option<&Ec5SingleShear>,
        capacity: &Answer<f64>,
        factors: &[Factor],
    ) {
        let clause = en("8.2.2, Eq. 8.6");
        match (found, capacity) {
            (Some(found), Ok(capacity_n)) => loads.push(
                self.line("lateral load", self.input.lateral_n, *capacity_n, "N", clause)
                    .with_mode(found.governing_mode.words())
                    .with_factors(factors.to_vec()),
            ),
            (_, Err(why)) if self.input.lateral_n > 0.0 => loads.push(self.missing("lateral load", clause, why)),
            _ => {}
        }
    }

    fn axial_lines(
        &self,
        loads: &mut Vec<Verdict>,
        axial: &Axial,
        [withdrawal, head]: [&Answer<f64>; 2],
        tension_n: Option<f64>,
    ) {
        let demand_n = self.input.withdrawal_n;
        let screw = self.kind == Ec5Fastener::Screw;
        let head_clause = if screw { en("8.7.2, Eq. 8.40b") } else { axial.withdrawal_clause };
        for (name, capacity, clause) in
            [("withdrawal", withdrawal, axial.withdrawal_clause), ("head pull-through", head, head_clause)]
        {
            match capacity {
                Ok(capacity_n) => loads.push(self.line(name, demand_n, *capacity_n, "N", clause)),
                Err(why) if demand_n > 0.0 => loads.push(self.missing(name, clause, why)),
                Err(_) => {}
            }
        }
        match tension_n {
            Some(capacity_n) => loads.push(
                self.line("tension of the steel", demand_n, capacity_n, "N", en("8.7.2, Eq. 8.40c"))
                    .with_remark("With the partial factor given for the connection."),
            ),
            None if demand_n > 0.0 && screw => {
                let why = "The tensile capacity of the screw was not given.";
                let clause = en("8.7.2, Eq. 8.40c");
                loads.push(Verdict::without_answer(
                    "tension of the steel",
                    SUBJECT,
                    Outcome::NotDetermined,
                    clause,
                    why,
                ));
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
        let found = ec5_combined_load(&Ec5CombinedLoadInput {
            fastener: self.kind,
            axial_n: input.withdrawal_n,
            lateral_n: input.lateral_n,
            axial_capacity_n: axial_n,
            lateral_capacity_n: lateral_n,
        })?;
        let clause = if self.kind.is_smooth_nail() { en("8.3.3, Eq. 8.27") } else { en("8.3.3, 8.7.3, Eq. 8.28") };
        let resultant_n = (input.lateral_n * input.lateral_n + input.withdrawal_n * input.withdrawal_n).sqrt();
        // Both loads grow together to where the utilisation is 1. Tiny loads may round to no utilisation at all.
        let capacity_n = if found.utilisation > 0.0 { resultant_n / found.utilisation } else { lateral_n };
        loads.push(self.line("lateral and withdrawal at once", resultant_n, capacity_n, "N", clause));
        Ok(Some(capacity_n))
    }
}

/// Above this characteristic density a nail needs a predrilled hole (8.3.1.1(2)), kg/m3.
const DENSEST_UNDRILLED_KG_M3: f64 = 500.0;
