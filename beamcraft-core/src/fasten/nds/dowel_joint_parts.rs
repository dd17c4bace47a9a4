//! The fastener, how it lies, and what its members bear.

use super::*;

/// The fastener with all its dimensions.
pub(super) struct Dowel {
    pub(super) yield_mm: f64,
    pub(super) thread_mm: f64,
    pub(super) tip_mm: f64,
}

impl Dowel {
    pub(super) fn of(input: &DowelJointNdsInput) -> Result<Self, Fault> {
        let (nominal_mm, length_mm) = (input.nominal_diameter_mm, input.length_mm);
        let yield_mm = match (input.fastener.is_nail(), input.root_diameter_mm) {
            (true, _) => nominal_mm,
            (false, Some(root_mm)) => root_mm,
            (false, None) => return Err(missing("root_diameter_mm", "the diameter at the thread root of a screw")),
        };
        let thread_mm = match (input.thread_length_mm, input.fastener) {
            (Some(given_mm), _) => given_mm,
            (None, DowelFastener::WoodScrew) => wood_screw_thread_mm(nominal_mm, length_mm),
            (None, DowelFastener::LagScrew) => lag_thread_mm(length_mm),
            (None, DowelFastener::SmoothNail | DowelFastener::SmoothStainlessNail) => length_mm,
            (None, DowelFastener::RingShankNail) => {
                return Err(missing("thread_length_mm", "the length of the rings of a ring shank nail"));
            }
        };
        let tip_mm = input.tip_length_mm.unwrap_or(match input.fastener {
            DowelFastener::LagScrew => lag_tip_mm(nominal_mm),
            _ => 2.0 * nominal_mm,
        });
        let refuse = |field, value, words, cure| {
            Err(Fault::number(ErrorCode::Inconsistent, field, value, Allowed::Text(words), cure))
        };
        if yield_mm > nominal_mm + EDGE_MM {
            let cure = "the root is the core of the thread";
            return refuse("root_diameter_mm", yield_mm, "at most the nominal diameter", cure);
        }
        if let Some(head_mm) = input.head_diameter_mm
            && head_mm < nominal_mm - EDGE_MM
        {
            return refuse("head_diameter_mm", head_mm, "at least the nominal diameter", "");
        }
        if thread_mm > length_mm + EDGE_MM {
            return refuse("thread_length_mm", thread_mm, "at most the fastener's length", "");
        }
        if tip_mm > length_mm + EDGE_MM {
            return refuse("tip_length_mm", tip_mm, "at most the fastener's length", "take a longer fastener");
        }
        Ok(Self { yield_mm, thread_mm, tip_mm })
    }
}

/// How the fastener lies in the members.
pub(super) struct JointLay {
    pub(super) side_bearing_mm: f64,
    pub(super) penetration_mm: f64,
    pub(super) counted_mm: f64,
    pub(super) main_bearing_mm: f64,
    pub(super) holding_mm: f64,
}

impl JointLay {
    pub(super) fn of(input: &DowelJointNdsInput, dowel: &Dowel) -> Result<Self, Fault> {
        let length_mm = input.length_mm;
        let refuse = |field, value, words, cure| {
            Err(Fault::number(ErrorCode::Inconsistent, field, value, Allowed::Text(words), cure))
        };
        // Length of the fastener per depth in the main member.
        let (side_bearing_mm, penetration_mm, slope) = match input.nail_driving {
            NailDriving::Straight => {
                let side_mm = input.side_thickness_mm - input.head_recess_mm;
                (side_mm, length_mm - side_mm - input.gap_mm, 1.0)
            }
            NailDriving::ToeNailed => {
                for (field, value) in [("gap_mm", input.gap_mm), ("head_recess_mm", input.head_recess_mm)] {
                    if value > 0.0 {
                        return refuse(field, value, "0 for a toe-nail", "drive straight");
                    }
                }
                let cosine = cos_deg(30.0);
                (length_mm / 3.0, length_mm * cosine - length_mm / 3.0, 1.0 / cosine)
            }
        };
        if side_bearing_mm < BEARING_LENGTH.low {
            let words = "less than the side member's thickness";
            return refuse("head_recess_mm", input.head_recess_mm, words, "sink the head less deep");
        }
        let held_mm = penetration_mm.min(input.main_thickness_mm);
        let main_bearing_mm = tapered_bearing_mm(held_mm, penetration_mm, dowel.tip_mm);
        if main_bearing_mm < BEARING_LENGTH.low {
            return Err(too_short("length_mm", length_mm, "long enough to bear in the main member"));
        }
        // Along the fastener, from its point backwards: out of the far side, then the tip of a lag screw, then thread.
        let out_mm = (penetration_mm - held_mm) * slope;
        let uncounted_mm = if input.fastener == DowelFastener::LagScrew { dowel.tip_mm } else { 0.0 };
        let held_thread_mm = dowel.thread_mm.min(penetration_mm * slope) - out_mm.max(uncounted_mm);
        let counted_mm = if input.fastener == DowelFastener::LagScrew {
            held_mm.min(penetration_mm - dowel.tip_mm)
        } else {
            held_mm
        };
        Ok(Self { side_bearing_mm, penetration_mm, counted_mm, main_bearing_mm, holding_mm: held_thread_mm.max(0.0) })
    }
}

/// One member as the joint sees it.
pub(super) struct Member {
    material: DowelMaterial,
    specific_gravity: Option<f64>,
    bearing_mpa: Option<f64>,
    thickness_mm: f64,
    angle_deg: f64,
    direction: FastenerDirection,
    fields: [&'static str; 3],
}

impl Member {
    pub(super) fn side(input: &DowelJointNdsInput) -> Self {
        Self {
            material: input.side_material,
            specific_gravity: input.side_specific_gravity,
            bearing_mpa: input.side_bearing_mpa,
            thickness_mm: input.side_thickness_mm,
            angle_deg: input.side_angle_to_grain_deg,
            direction: FastenerDirection::SideGrain,
            fields: ["side_material", "side_specific_gravity", "side_thickness_mm"],
        }
    }

    pub(super) fn main(input: &DowelJointNdsInput) -> Self {
        Self {
            material: input.main_material,
            specific_gravity: input.main_specific_gravity,
            bearing_mpa: input.main_bearing_mpa,
            thickness_mm: input.main_thickness_mm,
            angle_deg: input.main_angle_to_grain_deg,
            direction: input.main_direction,
            fields: ["main_material", "main_specific_gravity", "main_thickness_mm"],
        }
    }
}

/// Bearing strength of a member, and its angle of load to grain: a member that the fastener enters along its fibres is
/// loaded across them, one without grain at no angle.
pub(super) fn member_bearing(input: &DowelJointNdsInput, member: &Member) -> Result<(f64, f64), Fault> {
    let [material_field, gravity_field, thickness_field] = member.fields;
    let angle_deg = match (member.material, member.direction) {
        (DowelMaterial::Wood, FastenerDirection::SideGrain) => member.angle_deg,
        (DowelMaterial::Wood, FastenerDirection::EndGrain) => 90.0,
        _ => 0.0,
    };
    if let Some(tested_mpa) = member.bearing_mpa {
        return Ok((tested_mpa, angle_deg));
    }
    if member.material != DowelMaterial::Wood {
        if let Some(fault) = thickness_fault(member.material, thickness_field, member.thickness_mm) {
            return Err(fault);
        }
        let found = material_bearing(member.material, input.nominal_diameter_mm);
        return found.map(|found| (found.bearing_mpa, angle_deg)).ok_or_else(|| without_value(material_field));
    }
    let specific_gravity =
        member.specific_gravity.ok_or_else(|| missing(gravity_field, "the specific gravity of a wooden member"))?;
    let found = bearing(&DowelBearingInput {
        specific_gravity,
        diameter_mm: input.nominal_diameter_mm,
        angle_to_grain_deg: member.angle_deg,
        direction: member.direction,
        rounding: input.rounding,
    });
    Ok((found.at_angle_mpa, angle_deg))
}

/// Reference withdrawal value of the holding length; a load that nothing published carries is refused.
pub(super) fn reference_withdrawal_n(input: &DowelJointNdsInput, lay: &JointLay) -> Result<f64, Fault> {
    let loaded = input.withdrawal_n > 0.0;
    let refuse = |words, cure| {
        Err(Fault::number(ErrorCode::NoPublishedValue, "withdrawal_n", input.withdrawal_n, Allowed::Text(words), cure))
    };
    let (DowelMaterial::Wood, Some(specific_gravity)) = (input.main_material, input.main_specific_gravity) else {
        return if loaded {
            refuse("0 in a main member that is not wood of known specific gravity", "test it, or fix it otherwise")
        } else {
            Ok(0.0)
        };
    };
    let barred = input.main_direction == FastenerDirection::EndGrain && input.fastener != DowelFastener::LagScrew;
    if loaded && barred {
        let words = "0 in end grain, where the standard permits no withdrawal";
        return refuse(words, "drive the fastener into side grain");
    }
    if lay.holding_mm < BEARING_LENGTH.low {
        return if loaded {
            Err(too_short("length_mm", input.length_mm, "long enough for thread to hold in the main member"))
        } else {
            Ok(0.0)
        };
    }
    let found = withdrawal(&FastenerWithdrawalInput {
        fastener: input.fastener,
        specific_gravity,
        nominal_diameter_mm: input.nominal_diameter_mm,
        holding_length_mm: lay.holding_mm,
        penetration_mm: None,
        direction: input.main_direction,
    });
    Ok(found.reference_n)
}

pub(super) fn tabulated_bending_yield_mpa(input: &DowelJointNdsInput) -> Result<f64, Fault> {
    let diameter_mm = input.nominal_diameter_mm;
    let thick_lag = input.fastener == DowelFastener::LagScrew && diameter_mm >= 0.375 * INCH_MM - EDGE_MM;
    let fastener = if thick_lag { BendingYieldFastener::Bolt } else { BendingYieldFastener::LowCarbon };
    match bending_yield(&BendingYieldInput { fastener, diameter_mm }) {
        Ok(found) => Ok(found.bending_yield_mpa),
        Err(fault) => Err(Fault { field: "nominal_diameter_mm", ..fault }),
    }
}

#[cold]
fn missing(field: &'static str, words: &'static str) -> Fault {
    Fault::plain(ErrorCode::MissingField, field, words, "give it")
}

#[cold]
fn too_short(field: &'static str, value_mm: f64, words: &'static str) -> Fault {
    Fault::number(ErrorCode::PenetrationTooShort, field, value_mm, Allowed::Text(words), "take a longer fastener")
}
