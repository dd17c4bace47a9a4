//! The joint by the American standard: what carries the lateral load.

use super::input::JointInput;
use super::kinds::{JointDrive, JointFastenerKind, JointMaterial, JointStandard};
use super::lay::Lay;
use super::parts::{JointLayout, JointMember};
use super::result::{Answer, DECLARED, Findings, JointMode, Silence, at, least_mode, line};
use crate::cite::{Clause, Source};
use crate::error::{Error, ErrorCode, Fault, Result};
use crate::fasten::nds::{
    BearingRounding, BendingYieldFastener, BendingYieldInput, ConnectionFactors, ConnectionFactorsInput,
    DowelBearingInput, DowelBearingMaterialInput, DowelDoubleShearInput, DowelFastener, DowelMaterial, DowelShearInput,
    FORMAT_CONVERSION, FastenerArrangement, FastenerDirection, GroupActionFactorInput, MemberMoisture, NailDriving,
    RESISTANCE, SlipJoint, YieldMode, bending_yield, connection_factors, dowel_bearing, dowel_bearing_material,
    dowel_double_shear, dowel_shear, group_action_factor,
};
use crate::fasten::stagger::RowStagger;
use crate::finding::Quantity;
use crate::limits::{CROSS_SECTION, SMALL_LENGTH, SPACING};
use crate::units::factor::INCH_MM;
use crate::verdict::{Factor, Verdict};

pub(super) const fn nds(part: &'static str) -> Clause {
    Clause::new(Source::Nds2018, part)
}

/// A quarter inch, from which on the group and the geometry factor apply, mm.
const QUARTER_INCH_MM: f64 = 0.25 * INCH_MM;
/// How far a length may miss an edge of the standard: a figure typed in inches rounds.
const EDGE_MM: f64 = 1e-9;
/// Modulus of elasticity of a steel plate whose own was not given, MPa.
const STEEL_MPA: f64 = 200_000.0;

/// What every line needs.
pub(super) struct Case<'a> {
    pub(super) input: &'a JointInput,
    pub(super) lay: &'a Lay,
    pub(super) kind: DowelFastener,
    /// Grain that the fastener stands in, of the side and of the main member.
    pub(super) side_direction: FastenerDirection,
    pub(super) main_direction: FastenerDirection,
    pub(super) factors: ConnectionFactors,
    /// What load and resistance factor design has in place of the load duration factor, over that factor; 1 for
    /// allowable stress design.
    pub(super) strength: f64,
    pub(super) number: f64,
    /// Loads of all fasteners across and along their axis.
    pub(super) across_n: f64,
    pub(super) along_n: f64,
}

/// Lateral value of one fastener.
struct Lateral {
    modes: Vec<JointMode>,
    governing: String,
    value_n: f64,
}

/// Group action factor and load/slip modulus.
struct Group {
    c_g: Answer<f64>,
    slip_n_per_mm: Option<f64>,
}

pub(super) fn findings(input: &JointInput, lay: &Lay) -> Result<Findings> {
    let case = Case::of(input, lay)?;
    let mut working = Vec::new();
    let lateral = match case.uncovered() {
        Some(why) if input.fastener.declared_lateral_n.is_none() => Err(Silence::not_covered(why)),
        _ => case.lateral(&mut working)?,
    };
    let group = case.group()?;
    let (c_delta, distances) = case.distances()?;
    let capacity = match (&lateral, &group.c_g) {
        (Ok(lateral), Ok(c_g)) => {
            Ok(lateral.value_n * case.factors.lateral * c_g * c_delta * case.strength * case.number)
        }
        (Err(why), _) | (_, Err(why)) => Err(why.clone()),
    };
    let factors = match &group.c_g {
        Ok(c_g) if lateral.is_ok() => case.lateral_factors(*c_g, c_delta),
        _ => Vec::new(),
    };
    let axial = case.axial(&mut working)?;
    let mut loads = Vec::new();
    case.lateral_line(&mut loads, lateral.as_ref().ok(), &capacity, &factors);
    case.axial_lines(&mut loads, &axial);
    let combined_capacity_n = case.combined_line(&mut loads, capacity.as_ref().ok().copied(), axial.capacity_n)?;
    let lateral = lateral.ok();
    Ok(Findings {
        working,
        lateral_value_n: lateral.as_ref().map(|found| found.value_n),
        governing_mode: lateral.as_ref().map(|found| found.governing.clone()).unwrap_or_default(),
        modes: lateral.map(|found| found.modes).unwrap_or_default(),
        factors,
        lateral_capacity_n: capacity.ok(),
        axial_capacity_n: axial.capacity_n,
        combined_capacity_n,
        slip_modulus_n_per_mm: group.slip_n_per_mm,
        loads,
        requirements: case.requirements(&axial, distances)?,
    })
}

impl<'a> Case<'a> {
    fn of(input: &'a JointInput, lay: &'a Lay) -> Result<Self> {
        let fastener = &input.fastener;
        let side_grain = FastenerDirection::SideGrain;
        let (side_direction, main_direction) = match (&input.pocket, input.drive) {
            (Some(pocket), _) => (pocket.side_direction, pocket.main_direction),
            (None, JointDrive::EndGrain) => (side_grain, FastenerDirection::EndGrain),
            (None, _) => (side_grain, side_grain),
        };
        // A screw along the grain of either member takes the end grain factor once: a careful reading for the side member.
        let either_end = [side_direction, main_direction].contains(&FastenerDirection::EndGrain);
        let one_row = input.count == 1 || input.layout.is_some_and(|layout| layout.in_row == input.count);
        let toe = input.drive == JointDrive::ToeNailed && fastener.kind.is_nail();
        let wet = input.members().any(|(_, member)| member.made.unwrap_or(input.made) == MemberMoisture::Wet);
        let kind = fastener.kind.nds();
        let factors = connection_factors(&ConnectionFactorsInput {
            fastener: kind,
            nominal_diameter_mm: fastener.nominal_diameter_mm,
            load_duration: input.duration.nds(),
            fabrication_moisture: if wet { MemberMoisture::Wet } else { MemberMoisture::Dry },
            service_moisture: input.climate.nds(),
            temperature: input.temperature,
            arrangement: if one_row { FastenerArrangement::OneFastenerOrRow } else { FastenerArrangement::SeveralRows },
            direction: if either_end { FastenerDirection::EndGrain } else { side_grain },
            nail_driving: if toe { NailDriving::ToeNailed } else { NailDriving::Straight },
        })?;
        let (across_n, along_n) = input.loads_n();
        Ok(Self {
            input,
            lay,
            kind,
            side_direction,
            main_direction,
            strength: match input.standard {
                JointStandard::NdsLrfd => FORMAT_CONVERSION * RESISTANCE * input.time_effect.factor() / factors.c_d,
                JointStandard::NdsAsd | JointStandard::Ec5 => 1.0,
            },
            factors,
            number: f64::from(input.count),
            across_n,
            along_n,
        })
    }

    /// Whether the group and the geometry factor apply.
    pub(super) fn is_large(&self) -> bool {
        self.input.fastener.nominal_diameter_mm >= QUARTER_INCH_MM - EDGE_MM
    }

    /// Why the standard has no answer to the lateral load, where it has none.
    fn uncovered(&self) -> Option<&'static str> {
        let input = self.input;
        match input.drive {
            JointDrive::ToeNailed if !input.fastener.kind.is_nail() => {
                Some("The standard knows toe-nailing of nails only.")
            }
            JointDrive::ToeNailed if self.lay.gap_mm > 0.0 => Some("The rule for toe-nails is for members that touch."),
            _ if input.side.material == JointMaterial::Concrete => {
                Some("The standard has concrete as main member only.")
            }
            _ => None,
        }
    }

    fn lateral(&self, working: &mut Vec<Quantity>) -> Result<Answer<Lateral>> {
        let (input, fastener, lay) = (self.input, &self.input.fastener, self.lay);
        if let Some(value_n) = fastener.declared_lateral_n {
            return Ok(Ok(Lateral { modes: Vec::new(), governing: "declared value".to_owned(), value_n }));
        }
        let side = match self.side_bearing_mpa()? {
            Ok(side_mpa) => side_mpa,
            Err(why) => return Ok(Err(why)),
        };
        let main = match self.bearing_mpa(&input.main, self.main_direction)? {
            Ok(main_mpa) => main_mpa,
            Err(why) => return Ok(Err(why)),
        };
        let bending_yield_mpa = self.bending_yield_mpa()?;
        let yield_diameter_mm = self.yield_diameter_mm();
        let side_mm = lay.least_side_mm();
        working.extend([
            Quantity::new("D_y diameter in the yield equations", yield_diameter_mm, "mm"),
            Quantity::new("F_yb bending yield strength", bending_yield_mpa, "MPa"),
            Quantity::new("F_em bearing strength of the main member", main, "MPa"),
            Quantity::new("F_es bearing strength of the side member", side, "MPa"),
            Quantity::new("l_m bearing length in the main member", lay.main_mm, "mm"),
            Quantity::new("l_s bearing length in the side member", side_mm, "mm"),
        ]);
        at("gaps", SMALL_LENGTH.check("gaps", lay.gap_mm))?;
        let nominal_diameter_mm = Some(fastener.nominal_diameter_mm);
        let max_angle_to_grain_deg = self.largest_angle_deg();
        let (modes, k_d, k_theta) = if input.second_side.is_some() {
            let found = dowel_double_shear(&DowelDoubleShearInput {
                yield_diameter_mm,
                nominal_diameter_mm,
                bending_yield_mpa,
                main_bearing_mpa: main,
                side_bearing_mpa: side,
                main_length_mm: lay.main_mm,
                side_length_mm: side_mm,
                gap_mm: lay.gap_mm,
                max_angle_to_grain_deg,
            })?;
            let modes = vec![
                mode(YieldMode::Im, found.im_n, found.reduction_i),
                mode(YieldMode::Is, found.is_n, found.reduction_i),
                mode(YieldMode::Iiis, found.iiis_n, found.reduction_iii_iv),
                mode(YieldMode::Iv, found.iv_n, found.reduction_iii_iv),
            ];
            (modes, found.k_d, found.k_theta)
        } else {
            let found = dowel_shear(&DowelShearInput {
                yield_diameter_mm,
                nominal_diameter_mm,
                bending_yield_mpa,
                main_bearing_mpa: main,
                side_bearing_mpa: side,
                main_length_mm: lay.main_mm,
                side_length_mm: side_mm,
                gap_mm: lay.gap_mm,
                max_angle_to_grain_deg,
            })?;
            let modes = vec![
                mode(YieldMode::Im, found.im_n, found.reduction_i),
                mode(YieldMode::Is, found.is_n, found.reduction_i),
                mode(YieldMode::Ii, found.ii_n, found.reduction_ii),
                mode(YieldMode::Iiim, found.iiim_n, found.reduction_iii_iv),
                mode(YieldMode::Iiis, found.iiis_n, found.reduction_iii_iv),
                mode(YieldMode::Iv, found.iv_n, found.reduction_iii_iv),
            ];
            (modes, found.k_d, found.k_theta)
        };
        working.extend([
            Quantity::new("K_D factor of small diameters", k_d, ""),
            Quantity::new("K_theta factor of the angle to the grain", k_theta, ""),
        ]);
        let (governing, value_n) = least_mode(&modes);
        let governing = governing.to_owned();
        Ok(Ok(Lateral { modes, governing, value_n }))
    }

    /// Bearing strength of the side member, of two the lesser.
    fn side_bearing_mpa(&self) -> Result<Answer<f64>> {
        let first = self.bearing_mpa(&self.input.side, self.side_direction)?;
        let Some(second) = &self.input.second_side else { return Ok(first) };
        Ok(match (first, self.bearing_mpa(second, self.side_direction)?) {
            (Ok(first), Ok(second)) => Ok(first.min(second)),
            (Err(why), _) | (_, Err(why)) => Err(why),
        })
    }

    fn bearing_mpa(&self, member: &JointMember, direction: FastenerDirection) -> Result<Answer<f64>> {
        if let Some(tested_mpa) = member.tested_bearing_mpa {
            return Ok(Ok(tested_mpa));
        }
        let (specific_gravity, diameter_mm) = (gravity(member), self.input.fastener.nominal_diameter_mm);
        match member.material.nds(specific_gravity, member.thickness_mm) {
            Some(DowelMaterial::Wood) => {
                let found = dowel_bearing(&DowelBearingInput {
                    specific_gravity,
                    diameter_mm,
                    angle_to_grain_deg: member.angle_to_grain_deg,
                    direction,
                    rounding: BearingRounding::Unrounded,
                })?;
                Ok(Ok(found.at_angle_mpa))
            }
            Some(material) => {
                Ok(Ok(dowel_bearing_material(&DowelBearingMaterialInput { material, diameter_mm })?.bearing_mpa))
            }
            None => Ok(Err(Silence::not_covered(
                "Bearing strengths are published for wood, plywood, OSB, steel up to 6.07 and from 6.35 mm, and concrete \
                 as main member: else give a tested one.",
            ))),
        }
    }

    /// As given, else that of the table; a structural screw has none there.
    fn bending_yield_mpa(&self) -> Result<f64> {
        let (fastener, path) = (&self.input.fastener, "fastener.bending_yield_mpa");
        if let Some(given_mpa) = fastener.bending_yield_mpa {
            return Ok(given_mpa);
        }
        let diameter_mm = fastener.nominal_diameter_mm;
        let thick = diameter_mm >= 0.375 * INCH_MM - EDGE_MM;
        let table = match fastener.kind {
            JointFastenerKind::StructuralScrew => {
                let words = "the declared bending yield strength of a structural screw, or its declared lateral value";
                return Err(Error::from(Fault::plain(ErrorCode::MissingField, path, words, "give one")));
            }
            JointFastenerKind::Bolt | JointFastenerKind::Dowel => BendingYieldFastener::Bolt,
            JointFastenerKind::LagScrew if thick => BendingYieldFastener::Bolt,
            _ => BendingYieldFastener::LowCarbon,
        };
        let found = bending_yield(&BendingYieldInput { fastener: table, diameter_mm });
        Ok(at(path, found)?.bending_yield_mpa)
    }

    /// The thread root of screws; the full body where it is as thick as the thread and at most a quarter of the bearing
    /// length is threaded (12.3.7.2).
    fn yield_diameter_mm(&self) -> f64 {
        let (fastener, lay) = (&self.input.fastener, self.lay);
        let nominal_mm = fastener.nominal_diameter_mm;
        if !fastener.kind.is_screw() {
            return nominal_mm;
        }
        let full_body = fastener.shank_diameter_mm.is_some_and(|shank_mm| shank_mm >= nominal_mm - EDGE_MM);
        let little_thread = lay.shank_mm > 0.0 && lay.thread_mm <= 0.25 * lay.held_mm;
        if full_body && little_thread { nominal_mm } else { fastener.root_mm() }
    }

    /// The largest angle of load to grain; a member that the fastener stands in along its fibres is loaded across them.
    fn largest_angle_deg(&self) -> f64 {
        let ends = [self.side_direction, self.main_direction].contains(&FastenerDirection::EndGrain);
        let of_members = self.input.members().map(|(_, member)| member.grain_deg()).fold(0.0, f64::max);
        if ends { 90.0 } else { of_members }
    }

    /// How unevenly rows share the load.
    fn group(&self) -> Result<Group> {
        let input = self.input;
        if !self.is_large() {
            return Ok(Group { c_g: Ok(1.0), slip_n_per_mm: None });
        }
        let steel = input.members().any(|(_, member)| member.material == JointMaterial::Steel);
        let joint = if steel { SlipJoint::WoodToMetal } else { SlipJoint::WoodToWood };
        let stiffness = self.stiffness();
        let row = |count: u32, spacing_mm: f64, [main, side]: [(f64, f64); 2]| {
            group_action_factor(&GroupActionFactorInput {
                nominal_diameter_mm: input.fastener.nominal_diameter_mm,
                fastener_count: count,
                spacing_mm,
                joint,
                slip_modulus_n_per_mm: None,
                main_modulus_mpa: main.0,
                main_area_mm2: main.1,
                side_modulus_mpa: side.0,
                side_area_mm2: side.1,
            })
        };
        // The modulus does not depend on the members.
        let slip = row(1, SPACING.low, [(STEEL_MPA, 1.0); 2])?.slip_modulus_n_per_mm;
        let mut c_g = Ok(1.0_f64);
        if input.count > 1 {
            let Some(layout) = input.layout.as_ref().or(input.side_layout.as_ref()) else {
                let why = "How the fasteners stand was not given, and with it their group action factor (11.3.6).";
                return Ok(Group { c_g: Err(Silence::not_determined(why)), slip_n_per_mm: Some(slip) });
            };
            for (count, spacing_mm) in self.lines_along_load(layout) {
                if count <= 1 {
                    continue;
                }
                let (Some(members), Some(spacing_mm)) = (stiffness, spacing_mm) else {
                    let why =
                        "The group action factor (11.3.6) needs the spacing, and modulus and area of every member.";
                    return Ok(Group { c_g: Err(Silence::not_determined(why)), slip_n_per_mm: Some(slip) });
                };
                let found = at("layout.in_row", row(count, spacing_mm.max(SPACING.low), members))?;
                c_g = c_g.map(|least| least.min(found.c_g));
            }
        }
        Ok(Group { c_g, slip_n_per_mm: Some(slip) })
    }

    /// The lines of fasteners that the load can run along: number in a line and spacing. At an angle to the grain both
    /// directions of the layout count.
    fn lines_along_load(&self, layout: &JointLayout) -> Vec<(u32, Option<f64>)> {
        let input = self.input;
        let (along, across) = (self.lengthwise_row(layout), (input.rows(layout), layout.across_grain_mm));
        let member = if input.layout.is_some() && input.main.material.is_timber() { &input.main } else { &input.side };
        match member.grain_deg() {
            angle_deg if angle_deg <= 0.0 => vec![along],
            angle_deg if angle_deg >= 90.0 => vec![across],
            _ => vec![along, across],
        }
    }

    /// A row along the grain. Staggered rows closer than a quarter of the spacing count two by two as one (11.3.6.2), and so
    /// they do where their distance was not given.
    fn lengthwise_row(&self, layout: &JointLayout) -> (u32, Option<f64>) {
        let close = match (layout.along_grain_mm, layout.across_grain_mm) {
            (Some(along_mm), Some(across_mm)) => across_mm < 0.25 * along_mm,
            _ => true,
        };
        if layout.stagger == RowStagger::Staggered && self.input.rows(layout) > 1 && close {
            (2 * layout.in_row, layout.along_grain_mm.map(|along_mm| 0.5 * along_mm))
        } else {
            (layout.in_row, layout.along_grain_mm)
        }
    }

    /// Modulus and area of the main member and of the side members together.
    fn stiffness(&self) -> Option<[(f64, f64); 2]> {
        let of = |member: &JointMember| {
            let steel = (member.material == JointMaterial::Steel).then_some(STEEL_MPA);
            Some((member.modulus_mpa.or(steel)?, member.area_mm2?))
        };
        let (main, side) = (of(&self.input.main)?, of(&self.input.side)?);
        let Some(second) = &self.input.second_side else { return Some([main, side]) };
        let second = of(second)?;
        // Two unlike side members pull as one of the first one's modulus.
        let area_mm2 = side.1 + second.0 * second.1 / side.0;
        Some([main, (side.0, area_mm2.min(CROSS_SECTION.high))])
    }

    fn lateral_factors(&self, c_g: f64, c_delta: f64) -> Vec<Factor> {
        let f = &self.factors;
        let mut list = self.duration_factors();
        list.extend([
            Factor { name: "C_M wet service", value: f.c_m_lateral, clause: nds("Table 11.3.3") },
            Factor { name: "C_t temperature", value: f.c_t, clause: nds("Table 11.3.4") },
            Factor { name: "C_g group action", value: c_g, clause: nds("11.3.6, Eq. 11.3-1") },
            Factor { name: "C_delta geometry", value: c_delta, clause: nds("12.5.1") },
            Factor { name: "C_eg end grain", value: f.c_eg_lateral, clause: nds("12.5.2") },
            Factor { name: "C_tn toe-nail", value: f.c_tn_lateral, clause: nds("12.5.4") },
        ]);
        list
    }

    /// The number, and the load duration or what the other design has in its place.
    pub(super) fn duration_factors(&self) -> Vec<Factor> {
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

    fn lateral_line(
        &self,
        loads: &mut Vec<Verdict>,
        found: Option<&Lateral>,
        capacity: &Answer<f64>,
        factors: &[Factor],
    ) {
        let gap_mm = self.lay.gap_mm;
        let clause = if gap_mm > 0.0 { Clause::new(Source::Tr12, "Table 1-1") } else { nds("12.3.1, Table 12.3.1A") };
        match (found, capacity) {
            (Some(found), Ok(capacity_n)) => {
                let remark = if found.modes.is_empty() {
                    DECLARED.to_owned()
                } else if gap_mm > 0.0 {
                    format!("The {gap_mm} mm between the members are taken as an open gap.")
                } else {
                    String::new()
                };
                loads.push(
                    line("lateral load", self.across_n, *capacity_n, "N", clause)
                        .with_mode(found.governing.clone())
                        .with_factors(factors.to_vec())
                        .with_remark(remark),
                );
            }
            (_, Err(silence)) if self.across_n > 0.0 => loads.push(silence.line("lateral load", clause)),
            _ => {}
        }
    }
}

fn mode(mode: YieldMode, value_n: f64, reduction: f64) -> JointMode {
    JointMode { name: mode.words(), value_n, reduction: Some(reduction), rope_n: None }
}

/// Specific gravity of a member; that wood and panels have one was checked with the input.
pub(super) fn gravity(member: &JointMember) -> f64 {
    member.specific_gravity.unwrap_or(crate::limits::SPECIFIC_GRAVITY.low)
}
