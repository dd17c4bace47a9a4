//! The joint by Eurocode 5: what carries the lateral load.

use super::ec5_axial::Axial;
use super::input::JointInput;
use super::kinds::{JointDrive, JointFastenerKind, JointMaterial};
use super::lay::Lay;
use super::parts::{JointFastener, JointMember};
use super::result::{Answer, DECLARED, Findings, JointMode, Silence, at, least_mode, line};
use crate::cite::{Clause, Source};
use crate::error::{Error, ErrorCode, Fault, Result};
use crate::fasten::ec5::{
    Ec5DoubleShearInput, Ec5EffectiveNumberInput, Ec5EmbedmentInput, Ec5Fastener, Ec5Hole, Ec5ScrewDiameterInput,
    Ec5SingleShearInput, Ec5SingleShearMode, Ec5SlipModulusInput, Ec5SlipPartner, Ec5SteelCentralPlateInput,
    Ec5SteelOuterPlatesInput, Ec5SteelSingleShearInput, Ec5YieldMomentInput, ec5_double_shear, ec5_effective_number,
    ec5_embedment, ec5_screw_diameter, ec5_single_shear, ec5_slip_modulus, ec5_steel_central_plate,
    ec5_steel_outer_plates, ec5_steel_single_shear, ec5_yield_moment, joint_kmod, kmod,
};
use crate::fasten::nds::{FastenerDirection, TemperatureBand};
use crate::finding::Quantity;
use crate::limits::{FASTENER_DIAMETER, FASTENER_SPACING, FORCE, PLATE_THICKNESS, WOOD_DENSITY, YIELD_MOMENT};
use crate::verdict::{Factor, Verdict};

pub(super) const fn en(part: &'static str) -> Clause {
    Clause::new(Source::En1995, part)
}

/// Above this characteristic density a nail needs a predrilled hole (8.3.1.1(2)), kg/m3.
const DENSEST_UNDRILLED_KG_M3: f64 = 500.0;

/// What every line needs.
pub(super) struct Case<'a> {
    pub(super) input: &'a JointInput,
    pub(super) lay: &'a Lay,
    pub(super) kind: Ec5Fastener,
    /// Effective diameter of a screw, diameter of all others.
    pub(super) diameter_mm: f64,
    /// The hole that the strengths are computed for.
    pub(super) hole: Ec5Hole,
    pub(super) hole_needed: bool,
    pub(super) number: f64,
    /// Loads of all fasteners across and along their axis.
    pub(super) across_n: f64,
    pub(super) along_n: f64,
}

/// k_mod of the member under the heads, of the last member, and of the joint.
#[derive(Clone, Copy)]
pub(super) struct KMod {
    pub(super) side: f64,
    pub(super) last: f64,
    pub(super) joint: f64,
}

/// Lateral value of one fastener in all its planes.
struct Lateral {
    modes: Vec<JointMode>,
    governing: String,
    value_n: f64,
    clause: Clause,
}

pub(super) fn findings(input: &JointInput, lay: &Lay) -> Result<Findings> {
    let case = Case::of(input, lay)?;
    let k_mod = case.k_mod();
    let mut working = vec![Quantity::new("d diameter in the equations", case.diameter_mm, "mm")];
    let axial = case.axial(&k_mod, &mut working)?;
    let lateral = match case.uncovered() {
        Some(silence) if input.fastener.declared_lateral_n.is_none() => Err(silence),
        _ => case.lateral(&axial, &mut working)?,
    };
    let row = case.row_factor()?;
    let capacity = match (&lateral, &row, &k_mod) {
        (Ok(lateral), Ok(row), Ok(k_mod)) => {
            Ok(lateral.value_n * case.number * row * case.end_grain_share() * k_mod.joint / input.gamma_m)
        }
        (Err(why), ..) | (_, Err(why), _) | (_, _, Err(why)) => Err(why.clone()),
    };
    let factors = match (&row, &k_mod) {
        (Ok(row), Ok(k_mod)) if lateral.is_ok() => case.factor_list(*row, k_mod.joint),
        _ => Vec::new(),
    };
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
        slip_modulus_n_per_mm: case.slip()?,
        loads,
        requirements: case.requirements(&axial, &k_mod)?,
    })
}

impl<'a> Case<'a> {
    fn of(input: &'a JointInput, lay: &'a Lay) -> Result<Self> {
        let fastener = &input.fastener;
        let nominal_mm = fastener.nominal_diameter_mm;
        let kind = fastener.kind.ec5();
        let diameter_mm = if kind == Ec5Fastener::Screw {
            ec5_screw_diameter(&Ec5ScrewDiameterInput {
                thread_diameter_mm: nominal_mm,
                root_diameter_mm: fastener.root_mm(),
                shank_diameter_mm: fastener.shank_diameter_mm,
                shank_in_point_member_mm: lay.shank_mm,
            })?
            // 1.1 of the root can pass both the nominal diameter and the range of diameters.
            .effective_diameter_mm
            .min(nominal_mm)
            .max(FASTENER_DIAMETER.low)
        } else {
            nominal_mm
        };
        let dense = |member: &JointMember| {
            member.material.is_timber()
                && (member.material == JointMaterial::Hardwood || density(member) > DENSEST_UNDRILLED_KG_M3)
        };
        let through = fastener.kind.goes_through();
        let hole_needed = through
            || input.members().any(|(_, member)| dense(member))
            || (kind == Ec5Fastener::Screw && nominal_mm > 6.0);
        // Without the hole that it needs the fastener fails its line; the strengths are shown for the hole.
        let hole = if hole_needed || input.lead_hole_mm.is_some() { Ec5Hole::Predrilled } else { Ec5Hole::Undrilled };
        let (across_n, along_n) = input.loads_n();
        let number = f64::from(input.count);
        Ok(Self { input, lay, kind, diameter_mm, hole, hole_needed, number, across_n, along_n })
    }

    /// The member that holds the points.
    pub(super) fn last(&self) -> &JointMember {
        self.input.second_side.as_ref().unwrap_or(&self.input.main)
    }

    fn k_mod(&self) -> Answer<KMod> {
        let input = self.input;
        if input.temperature == TemperatureBand::UpTo150F {
            return Err(Silence::not_covered("The standard does not cover lasting temperatures above 60 °C (1.1.1)."));
        }
        let of = |member: &JointMember| match member.material.ec5() {
            Some(material) => kmod(material, input.climate.ec5(), input.duration.ec5())
                .map(Some)
                .map_err(|_| Silence::not_covered("A panel stands in a service class that it is not made for.")),
            None => Ok(None),
        };
        let (side, main) = (of(&input.side)?, of(&input.main)?);
        let second = input.second_side.as_ref().map(of).transpose()?.flatten();
        let outer = match (side, second) {
            (Some(side), Some(second)) => Some(side.min(second)),
            (side, second) => side.or(second),
        };
        // Beside steel the timber alone counts.
        let joint = match (outer, main) {
            (Some(outer), Some(main)) => joint_kmod(outer, main),
            (Some(only), None) | (None, Some(only)) => only,
            (None, None) => return Err(Silence::not_covered("No member of the joint is wood.")),
        };
        let last = if input.second_side.is_some() { second } else { main };
        Ok(KMod { side: side.unwrap_or(joint), last: last.unwrap_or(joint), joint })
    }

    /// Why the standard has no answer to the lateral load, where it has none.
    fn uncovered(&self) -> Option<Silence> {
        let input = self.input;
        let foreign =
            |member: &JointMember| matches!(member.material, JointMaterial::Concrete | JointMaterial::Masonry);
        let steel = |member: &JointMember| member.material == JointMaterial::Steel;
        let plates = input.members().filter(|(_, member)| steel(member)).count();
        let outer_unlike = input.second_side.as_ref().is_some_and(|second| steel(second) != steel(&input.side));
        let along_grain = |pocket: &super::parts::JointPocket| {
            [pocket.side_direction, pocket.main_direction].contains(&FastenerDirection::EndGrain)
        };
        let text = match input.drive {
            JointDrive::EndGrain if self.kind != Ec5Fastener::ThreadedNail => {
                "In end grain smooth nails may carry no lateral load but in secondary structures (8.3.1.2(3), (4)); for \
                 screws the standard has no value."
            }
            JointDrive::ToeNailed => "The standard has no lateral value for slant-driven nails.",
            _ if input.pocket.as_ref().is_some_and(along_grain) => {
                "The standard has no lateral value for a screw along the grain of a member."
            }
            _ if self.lay.gap_mm > 0.0 => {
                "The standard has no rule for members that do not touch: the layers between them."
            }
            _ if input.members().any(|(_, member)| foreign(member)) => {
                "The standard has no rule for concrete and masonry beside timber under dowels."
            }
            _ if outer_unlike || plates + 1 > input.members().count() => {
                "The standard has timber with one plate, a plate in the middle, or like plates on both sides."
            }
            _ => return None,
        };
        Some(Silence::not_covered(text))
    }

    /// Embedment strength of a member; nothing for steel.
    fn embedment_mpa(&self, member: &JointMember) -> Answer<Option<f64>> {
        let Some(material) = member.material.ec5() else { return Ok(None) };
        if let Some(tested_mpa) = member.tested_bearing_mpa {
            return Ok(Some(tested_mpa));
        }
        let found = ec5_embedment(&Ec5EmbedmentInput {
            fastener: self.kind,
            hole: self.hole,
            material,
            density_kg_m3: density(member),
            diameter_mm: self.diameter_mm,
            angle_to_grain_deg: member.angle_to_grain_deg,
            panel_thickness_mm: Some(member.thickness_mm),
        });
        let silence = "The standard has no embedment strength for this fastener in this material.";
        found.map(|found| Some(found.at_angle_mpa)).map_err(|_| Silence::not_covered(silence))
    }

    fn yield_moment_nmm(&self) -> Result<f64> {
        let fastener = &self.input.fastener;
        let moment_nmm = match (fastener.yield_moment_nmm, fastener.tensile_strength_mpa) {
            (Some(declared_nmm), _) => declared_nmm,
            (None, Some(tensile_strength_mpa)) if fastener.kind != JointFastenerKind::StructuralScrew => {
                let moment =
                    Ec5YieldMomentInput { fastener: self.kind, diameter_mm: self.diameter_mm, tensile_strength_mpa };
                at("fastener.tensile_strength_mpa", ec5_yield_moment(&moment))?.yield_moment_nmm
            }
            _ => return Err(Error::from(no_moment(fastener))),
        };
        at("fastener.yield_moment_nmm", YIELD_MOMENT.check("yield_moment_nmm", moment_nmm))?;
        Ok(moment_nmm)
    }

    fn lateral(&self, axial: &Axial, working: &mut Vec<Quantity>) -> Result<Answer<Lateral>> {
        let input = self.input;
        if let Some(value_n) = input.fastener.declared_lateral_n {
            let (modes, governing) = (Vec::new(), "declared value".to_owned());
            return Ok(Ok(Lateral { modes, governing, value_n, clause: en("8.2") }));
        }
        let second = input.second_side.as_ref().map(|second| self.embedment_mpa(second)).transpose();
        let (side, main, second) = match (self.embedment_mpa(&input.side), self.embedment_mpa(&input.main), second) {
            (Ok(side), Ok(main), Ok(second)) => (side, main, second.flatten()),
            (Err(why), ..) | (_, Err(why), _) | (_, _, Err(why)) => return Ok(Err(why)),
        };
        let side = match (side, second) {
            (Some(side), Some(second)) => Some(side.min(second)),
            (side, second) => side.or(second),
        };
        let yield_moment_nmm = self.yield_moment_nmm()?;
        working.push(Quantity::new("M_y,Rk yield moment", yield_moment_nmm, "N*mm"));
        for (name, strength) in
            [("f_h,1,k embedment of the side member", side), ("f_h,2,k embedment of the main member", main)]
        {
            working.extend(strength.map(|mpa| Quantity::new(name, mpa, "MPa")));
        }
        let axial_capacity_n = axial.rope_n(input.fastener.tension_capacity_n).min(FORCE.high);
        working.push(Quantity::new("F_ax,Rk that the rope effect rests on", axial_capacity_n, "N"));
        let dowel = Dowel { case: self, yield_moment_nmm, axial_capacity_n };
        let (modes, clause) = match (side, main, input.second_side.is_some()) {
            (Some(side), Some(main), false) => dowel.timber_single(side, main)?,
            (Some(side), Some(main), true) => dowel.timber_double(side, main)?,
            (None, Some(main), false) => {
                dowel.plate_single(main, self.lay.main_mm, ("side.thickness_mm", &input.side))?
            }
            (Some(side), None, false) => {
                dowel.plate_single(side, self.lay.side_mm, ("main.thickness_mm", &input.main))?
            }
            (Some(side), None, true) => dowel.plate_middle(side)?,
            (None, Some(main), true) => dowel.plates_outside(main)?,
            (None, None, _) => return Ok(Err(Silence::not_covered("No member of the joint is wood."))),
        };
        let (governing, value_n) = least_mode(&modes);
        Ok(Ok(Lateral { governing: governing.to_owned(), value_n, modes, clause }))
    }

    /// n_ef / n of the rows along the grain, of all members the least.
    fn row_factor(&self) -> Result<Answer<f64>> {
        if self.input.count == 1 {
            return Ok(Ok(1.0));
        }
        let mut least = 1.0_f64;
        for (_, member, layout) in self.input.laid_members() {
            if !member.material.is_timber() {
                continue;
            }
            let Some(layout) = layout else {
                let why = "How the fasteners stand was not given, and with it their effective number.";
                return Ok(Err(Silence::not_determined(why)));
            };
            let across = member.angle_to_grain_deg >= 90.0;
            if self.kind.follows_nail_rules(self.diameter_mm) && across {
                continue;
            }
            let found = ec5_effective_number(&Ec5EffectiveNumberInput {
                fastener: self.kind,
                hole: self.hole,
                diameter_mm: self.diameter_mm,
                count: layout.in_row,
                // One in a row has no spacing, and none is looked at.
                spacing_mm: layout.along_grain_mm.unwrap_or(FASTENER_SPACING.high),
                stagger: layout.stagger,
                angle_to_grain_deg: member.angle_to_grain_deg,
            });
            match found {
                Ok(found) => least = least.min(found.effective_number / f64::from(layout.in_row)),
                Err(_) => {
                    let why = "The fasteners of a row stand closer than Table 8.1 goes.";
                    return Ok(Err(Silence::not_covered(why)));
                }
            }
        }
        Ok(Ok(least))
    }

    /// Nails in end grain carry a third of their value in side grain (8.3.1.2(4)).
    fn end_grain_share(&self) -> f64 {
        if self.input.drive == JointDrive::EndGrain { 1.0 / 3.0 } else { 1.0 }
    }

    fn factor_list(&self, row: f64, k_mod: f64) -> Vec<Factor> {
        let end_grain = (self.input.drive == JointDrive::EndGrain).then(|| Factor {
            name: "1/3 nails in end grain",
            value: self.end_grain_share(),
            clause: en("8.3.1.2(4)"),
        });
        let mut list = vec![
            Factor { name: "n number of fasteners", value: self.number, clause: en("8.1.2") },
            Factor {
                name: "n_ef/n effective number of a row",
                value: row,
                clause: en("8.1.2(4), 8.3.1.1(8), 8.5.1.1(4)"),
            },
            Factor { name: "k_mod duration and moisture", value: k_mod, clause: en("Table 3.1, Eq. 2.6") },
            Factor { name: "1/gamma_M partial factor", value: 1.0 / self.input.gamma_m, clause: en("Table 2.3") },
        ];
        list.extend(end_grain);
        list
    }

    fn lateral_line(
        &self,
        loads: &mut Vec<Verdict>,
        found: Option<&Lateral>,
        capacity: &Answer<f64>,
        factors: &[Factor],
    ) {
        match (found, capacity) {
            (Some(found), Ok(capacity_n)) => loads.push(
                line("lateral load", self.across_n, *capacity_n, "N", found.clause)
                    .with_mode(found.governing.clone())
                    .with_factors(factors.to_vec())
                    .with_remark(if found.modes.is_empty() { DECLARED } else { "" }),
            ),
            (_, Err(silence)) if self.across_n > 0.0 => loads.push(silence.line("lateral load", en("8.2"))),
            _ => {}
        }
    }

    /// K_ser of one fastener in one plane, where the mean densities are known.
    fn slip(&self) -> Result<Option<f64>> {
        let densities: Option<Vec<f64>> = self
            .input
            .members()
            .filter(|(_, member)| member.material.is_wooden())
            .map(|(_, member)| member.mean_density_kg_m3)
            .collect();
        let (Some(first), Some(densities)) = (densities.as_ref().and_then(|all| all.first().copied()), densities)
        else {
            return Ok(None);
        };
        let alone = self.input.members().any(|(_, member)| !member.material.is_wooden());
        let least = densities.iter().copied().fold(first, f64::min);
        let found = ec5_slip_modulus(&Ec5SlipModulusInput {
            fastener: self.kind,
            hole: self.hole,
            diameter_mm: self.diameter_mm,
            mean_density_kg_m3: least,
            second_mean_density_kg_m3: (!alone).then(|| densities.iter().copied().fold(first, f64::max)),
            partner: if alone { Ec5SlipPartner::SteelOrConcrete } else { Ec5SlipPartner::Wood },
            load_n: 0.0,
        })?;
        Ok(Some(found.service_n_per_mm))
    }
}

/// Characteristic density of a member; that wood and panels have one was checked with the input.
pub(super) fn density(member: &JointMember) -> f64 {
    member.characteristic_density_kg_m3.unwrap_or(WOOD_DENSITY.low)
}

#[cold]
fn no_moment(fastener: &JointFastener) -> Fault {
    let (path, words) = if fastener.kind == JointFastenerKind::StructuralScrew {
        ("fastener.yield_moment_nmm", "the declared yield moment of a structural screw, or its declared lateral value")
    } else {
        ("fastener.tensile_strength_mpa", "a tensile strength or a declared yield moment for Eurocode 5")
    };
    Fault::plain(ErrorCode::MissingField, path, words, "give one")
}

/// A mode of all shear planes together; the rope effect where its Johansen part is known.
fn mode(name: &'static str, planes: f64, value_n: f64, johansen_n: Option<f64>) -> JointMode {
    let rope_n = johansen_n.map(|johansen_n| planes * (value_n - johansen_n));
    JointMode { name, value_n: planes * value_n, reduction: None, rope_n }
}

/// The fastener in the equations of 8.2.
struct Dowel<'a> {
    case: &'a Case<'a>,
    yield_moment_nmm: f64,
    axial_capacity_n: f64,
}

/// Modes and the clause that has them.
type Modes = Result<(Vec<JointMode>, Clause)>;

impl Dowel<'_> {
    fn timber_single(&self, side_mpa: f64, main_mpa: f64) -> Modes {
        use Ec5SingleShearMode::{A, B, C, D, E, F};
        let (case, lay) = (self.case, self.case.lay);
        let found = ec5_single_shear(&Ec5SingleShearInput {
            fastener: case.kind,
            diameter_mm: case.diameter_mm,
            yield_moment_nmm: self.yield_moment_nmm,
            head_side_mpa: side_mpa,
            point_side_mpa: main_mpa,
            head_side_mm: lay.side_mm,
            point_side_mm: lay.held_mm,
            axial_capacity_n: self.axial_capacity_n,
        })?;
        let modes = vec![
            mode(A.words(), 1.0, found.a_n, None),
            mode(B.words(), 1.0, found.b_n, None),
            mode(C.words(), 1.0, found.c_n, Some(found.c_johansen_n)),
            mode(D.words(), 1.0, found.d_n, Some(found.d_johansen_n)),
            mode(E.words(), 1.0, found.e_n, Some(found.e_johansen_n)),
            mode(F.words(), 1.0, found.f_n, Some(found.f_johansen_n)),
        ];
        Ok((modes, en("8.2.2, Eq. 8.6")))
    }

    fn timber_double(&self, side_mpa: f64, main_mpa: f64) -> Modes {
        let (case, lay) = (self.case, self.case.lay);
        let found = ec5_double_shear(&Ec5DoubleShearInput {
            fastener: case.kind,
            diameter_mm: case.diameter_mm,
            yield_moment_nmm: self.yield_moment_nmm,
            outer_mpa: side_mpa,
            middle_mpa: main_mpa,
            outer_mm: lay.side_mm.min(lay.held_mm),
            middle_mm: lay.main_mm,
            axial_capacity_n: self.axial_capacity_n,
        })?;
        let modes = vec![
            mode("g, bearing of the outer members", 2.0, found.g_n, None),
            mode("h, bearing of the middle member", 2.0, found.h_n, None),
            mode(
                "j, fastener turns in the outer members, hinges in the middle one",
                2.0,
                found.j_n,
                Some(found.j_johansen_n),
            ),
            mode("k, hinges in the outer members and in the middle one", 2.0, found.k_n, Some(found.k_johansen_n)),
        ];
        Ok((modes, en("8.2.2, Eq. 8.7")))
    }

    /// A plate outside in single shear; between thin and thick the capacity is interpolated, and stands beside the modes.
    fn plate_single(&self, embedment_mpa: f64, timber_mm: f64, plate: (&'static str, &JointMember)) -> Modes {
        let case = self.case;
        let found = ec5_steel_single_shear(&Ec5SteelSingleShearInput {
            fastener: case.kind,
            diameter_mm: case.diameter_mm,
            yield_moment_nmm: self.yield_moment_nmm,
            embedment_mpa,
            timber_mm,
            plate_mm: plate_mm(plate)?,
            hole_clearance_mm: case.input.plate_clearance_mm,
            axial_capacity_n: self.axial_capacity_n,
        })?;
        let modes = plate_modes(
            found.thick_share,
            1.0,
            &[
                ("a, thin plate: fastener turns in the timber", found.a_n),
                ("b, thin plate: one hinge in the timber", found.b_n),
            ],
            &[
                ("c, thick plate: bearing of the timber", found.c_n),
                ("d, thick plate: fastener turns in the timber, hinge at the plate", found.d_n),
                ("e, thick plate: hinges in the timber and at the plate", found.e_n),
            ],
            found.capacity_n,
        );
        Ok((modes, en("8.2.3, Eq. 8.9, 8.10")))
    }

    fn plate_middle(&self, embedment_mpa: f64) -> Modes {
        let (case, lay) = (self.case, self.case.lay);
        let found = ec5_steel_central_plate(&Ec5SteelCentralPlateInput {
            fastener: case.kind,
            diameter_mm: case.diameter_mm,
            yield_moment_nmm: self.yield_moment_nmm,
            embedment_mpa,
            timber_mm: lay.side_mm.min(lay.held_mm),
            axial_capacity_n: self.axial_capacity_n,
        })?;
        let modes = vec![
            mode("f, bearing of the timber", 2.0, found.f_n, None),
            mode("g, fastener turns in the timber, hinge at the plate", 2.0, found.g_n, None),
            mode("h, hinges in the timber and at the plate", 2.0, found.h_n, None),
        ];
        Ok((modes, en("8.2.3, Eq. 8.11")))
    }

    fn plates_outside(&self, embedment_mpa: f64) -> Modes {
        let case = self.case;
        // Of unlike plates the thinner one decides whether the fastener is clamped.
        let second = case.input.second_side.as_ref().unwrap_or(&case.input.side);
        let first_mm = plate_mm(("side.thickness_mm", &case.input.side))?;
        let plate_mm = first_mm.min(plate_mm(("second_side.thickness_mm", second))?);
        let found = ec5_steel_outer_plates(&Ec5SteelOuterPlatesInput {
            fastener: case.kind,
            diameter_mm: case.diameter_mm,
            yield_moment_nmm: self.yield_moment_nmm,
            embedment_mpa,
            timber_mm: case.lay.main_mm,
            plate_mm,
            hole_clearance_mm: case.input.plate_clearance_mm,
            axial_capacity_n: self.axial_capacity_n,
        })?;
        let modes = plate_modes(
            found.thick_share,
            2.0,
            &[("j, thin plates: bearing of the timber", found.j_l_n), ("k, thin plates: one hinge a plane", found.k_n)],
            &[
                ("l, thick plates: bearing of the timber", found.j_l_n),
                ("m, thick plates: two hinges a plane", found.m_n),
            ],
            found.per_plane_n,
        );
        Ok((modes, en("8.2.3, Eq. 8.12, 8.13")))
    }
}

/// Thickness of a plate, within the range of plates.
fn plate_mm((path, plate): (&'static str, &JointMember)) -> Result<f64> {
    at(path, PLATE_THICKNESS.check("thickness_mm", plate.thickness_mm))?;
    Ok(plate.thickness_mm)
}

/// The modes that a plate of this thickness has: those of thin plates, those of thick ones, or between both the value
/// interpolated from the least of each.
fn plate_modes(
    thick_share: f64,
    planes: f64,
    thin: &[(&'static str, f64)],
    thick: &[(&'static str, f64)],
    per_plane_n: f64,
) -> Vec<JointMode> {
    let all = |modes: &[(&'static str, f64)]| {
        modes.iter().map(|(name, value_n)| mode(name, planes, *value_n, None)).collect()
    };
    if thick_share <= 0.0 {
        return all(thin);
    }
    if thick_share >= 1.0 {
        return all(thick);
    }
    vec![mode("between thin and thick plates, interpolated", planes, per_plane_n, None)]
}
