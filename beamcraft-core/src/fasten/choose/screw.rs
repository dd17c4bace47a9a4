//! Which screws of the catalogue satisfy everything.

use super::length::SAME_MM;
use crate::cite::Clause;
use crate::cite::Source;
use crate::error::{Detail, Error, ErrorCode, Fault, Result};
use crate::fasten::catalogue::{SoldLengthSeries, longest_sold_mm, shortest_sold_mm, sold_lengths_mm};
use crate::fasten::nds::{
    BearingRounding, FastenerArrangement, FastenerDirection, LeadHoleInput, LeadHoleNeed, LoadDuration, MemberMoisture,
    ScrewJoint, ScrewJointCheck, ScrewJointInput, TemperatureBand, lead_hole, screw_joint,
};
use crate::fasten::screws::{ScrewSize, WoodScrew, wood_screw};
use crate::limits::{FASTENER_LENGTH, faults_at, limited, list_faults};
use crate::verdict::Outcome;

/// Whether holes will be bored for the screws.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum ScrewHoles {
    /// The holes that the density asks for are bored.
    Bored,
    /// Driven without holes: only screws that the standard lets be driven so are suitable.
    NotBored,
}

/// Members and load of one screw that is to be chosen.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<ChooseScrewInput>))]
pub struct ChooseScrewInput {
    /// Sizes to look at; an empty list is the whole catalogue.
    #[cfg_attr(feature = "json", serde(default))]
    pub sizes: Vec<ScrewSize>,
    /// Lengths at hand, mm; an empty list is the series of lengths sold.
    #[cfg_attr(feature = "json", serde(default))]
    pub lengths_mm: Vec<f64>,
    /// Series of lengths sold; inch by default, as the gauges are sold.
    #[cfg_attr(feature = "json", serde(default = "super::length::inch"))]
    pub series: SoldLengthSeries,
    /// Specific gravity of the side member.
    pub side_specific_gravity: f64,
    /// Thickness of the side member, mm.
    pub side_thickness_mm: f64,
    /// Angle between the lateral load and the grain of the side member, degrees.
    pub side_angle_to_grain_deg: f64,
    /// Depth by which the head is sunk below the face of the side member, mm; by default it is flush.
    #[cfg_attr(feature = "json", serde(default))]
    pub head_recess_mm: f64,
    /// Gap between the members, such as a wall lining, mm; by default they touch.
    #[cfg_attr(feature = "json", serde(default))]
    pub gap_mm: f64,
    /// Specific gravity of the main member.
    pub main_specific_gravity: f64,
    /// Thickness of the main member along the screw, mm; its far face may be the show face.
    pub main_thickness_mm: f64,
    /// Angle between the lateral load and the grain of the main member, degrees.
    pub main_angle_to_grain_deg: f64,
    /// Grain of the main member that the screw stands in; side grain by default, as in the face of a stud.
    #[cfg_attr(feature = "json", serde(default = "side_grain"))]
    pub main_direction: FastenerDirection,
    /// Wood to leave between the point and the far face, mm; 3 by default, so that nothing shows (common practice).
    #[cfg_attr(feature = "json", serde(default = "super::length::three_mm"))]
    pub least_cover_mm: f64,
    /// Whether holes are bored; bored by default.
    #[cfg_attr(feature = "json", serde(default = "bored"))]
    pub holes: ScrewHoles,
    /// Load duration; permanent by default, the least factor, as for goods that stay on a shelf.
    #[cfg_attr(feature = "json", serde(default = "permanent"))]
    pub load_duration: LoadDuration,
    /// Moisture of the wood when the joint is made; dry by default, as indoor joinery is.
    #[cfg_attr(feature = "json", serde(default = "dry"))]
    pub fabrication_moisture: MemberMoisture,
    /// Moisture of the wood in service; dry by default, as in a heated room.
    #[cfg_attr(feature = "json", serde(default = "dry"))]
    pub service_moisture: MemberMoisture,
    /// Temperature of the joint; by default up to 100 °F, as in a room. Beside a hearth it may be more.
    #[cfg_attr(feature = "json", serde(default = "room_temperature"))]
    pub temperature: TemperatureBand,
    /// Lateral load on the screw, N.
    pub lateral_n: f64,
    /// Withdrawal load on the screw, N.
    pub withdrawal_n: f64,
}

limited!(ChooseScrewInput {
    side_specific_gravity: SPECIFIC_GRAVITY,
    side_thickness_mm: BEARING_LENGTH,
    side_angle_to_grain_deg: ANGLE_TO_GRAIN,
    head_recess_mm: SMALL_LENGTH,
    gap_mm: SMALL_LENGTH,
    main_specific_gravity: SPECIFIC_GRAVITY,
    main_thickness_mm: BEARING_LENGTH,
    main_angle_to_grain_deg: ANGLE_TO_GRAIN,
    least_cover_mm: SMALL_LENGTH,
    lateral_n: FORCE,
    withdrawal_n: FORCE
});

#[cfg(feature = "json")]
fn side_grain() -> FastenerDirection {
    FastenerDirection::SideGrain
}
#[cfg(feature = "json")]
fn bored() -> ScrewHoles {
    ScrewHoles::Bored
}
#[cfg(feature = "json")]
fn permanent() -> LoadDuration {
    LoadDuration::Permanent
}
#[cfg(feature = "json")]
fn dry() -> MemberMoisture {
    MemberMoisture::Dry
}
#[cfg(feature = "json")]
fn room_temperature() -> TemperatureBand {
    TemperatureBand::UpTo100F
}

/// A screw that satisfies everything.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct ScrewChoice {
    /// Size.
    pub size: ScrewSize,
    /// Size as the trade calls it, such as `No. 10`.
    pub designation: &'static str,
    /// Nominal diameter, mm.
    pub nominal_diameter_mm: f64,
    /// Length, mm.
    pub length_mm: f64,
    /// Depth of the point behind the near face of the main member, mm.
    pub penetration_mm: f64,
    /// Wood between the point and the far face, mm.
    pub cover_mm: f64,
    /// Adjusted lateral capacity, N.
    pub lateral_capacity_n: f64,
    /// Adjusted withdrawal capacity of the thread, N.
    pub withdrawal_capacity_n: f64,
    /// Adjusted pull-through capacity of the head, N.
    pub pull_through_capacity_n: f64,
    /// Largest utilisation.
    pub utilisation: f64,
    /// Check with the largest utilisation.
    pub governing_check: ScrewJointCheck,
    /// Hole for the shank in the side member (NDS 12.1.5.3), mm.
    pub side_shank_hole_mm: f64,
    /// Hole for the thread in the main member of a screw loaded laterally (NDS 12.1.5.3), mm.
    pub main_lateral_hole_mm: f64,
    /// Hole for the thread in the main member of a screw loaded in withdrawal (NDS 12.1.5.2), mm; 0 where none is required.
    pub main_withdrawal_hole_mm: f64,
}

/// What a screw falls short of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum ShortcomingKind {
    /// Does not reach into the main member, or its thread does not.
    DoesNotReach,
    /// Cannot be computed: no published value, or dimensions that contradict each other.
    NotComputed,
    /// Less penetration than 6 D.
    Penetration,
    /// Less wood over the point than wanted.
    Cover,
    /// Lateral load.
    Lateral,
    /// Withdrawal of the thread.
    Withdrawal,
    /// Head pulling through the side member.
    PullThrough,
    /// Lateral and withdrawal load at once.
    Combined,
    /// The standard asks for a hole, and none is to be bored.
    LeadHole,
}

/// One reason why a screw is not suitable.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct ScrewShortcoming {
    /// What it falls short of.
    pub kind: ShortcomingKind,
    /// What is asked for, in `unit`; absent where there is no number.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub asked: Option<f64>,
    /// What there is, in `unit`; absent where there is no number.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub given: Option<f64>,
    /// Unit symbol of both.
    pub unit: &'static str,
    /// The rule behind it.
    pub clause: Clause,
    /// In words.
    pub message: String,
}

/// A screw that is not suitable, with every reason.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct ScrewRefusal {
    /// Size.
    pub size: ScrewSize,
    /// Size as the trade calls it, such as `No. 10`.
    pub designation: &'static str,
    /// Length, mm.
    pub length_mm: f64,
    /// Why it is not suitable.
    pub shortcomings: Vec<ScrewShortcoming>,
}

/// Suitable screws, and why the others are not.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct ScrewChoiceList {
    /// Screws that satisfy everything, thin ones first, then short ones.
    pub suitable: Vec<ScrewChoice>,
    /// The others with their reasons, in the same order.
    pub unsuitable: Vec<ScrewRefusal>,
}

/// Wood screws of the catalogue that satisfy strength, penetration, cover and lead hole for given members and load.
///
/// # Equation
/// ```text
/// every size × every length sold:  screw_joint (NDS, TR12)      penetration ≥ 6 D      t_m − p ≥ cover
/// driven without a hole:           no withdrawal load, or G ≤ 0.5 (12.1.5.2)
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | t_m, p | main member, penetration | mm | `main_thickness_mm`, `penetration_mm` |
/// | G | specific gravity of the main member | – | `main_specific_gravity` |
///
/// # Limits
/// Full-body wood screws by gauge; the loads are those of one screw, shared out by the caller. Spacing, edge and end
/// distances and the tension of the steel are the user's to keep. See the caution of the module.
///
/// # Errors
/// All faults of ranges; `inconsistent` for the size `own`, which is in no catalogue (give it to `screw_joint`), or more
/// than 1000 lengths.
///
/// # Source
/// NDS 2018 chapters 11 and 12 and AWC TR12 through `screw_joint`; lengths sold and the cover are common practice without
/// a source. Checked by `verification/choose`.
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::*;
/// // Through an 18 mm cleat and 12.5 mm plasterboard into a spruce stud.
/// let list = choose_screw(&ChooseScrewInput {
///     sizes: vec![],
///     lengths_mm: vec![],
///     series: SoldLengthSeries::Inch,
///     side_specific_gravity: 0.60,
///     side_thickness_mm: 18.0,
///     side_angle_to_grain_deg: 90.0,
///     head_recess_mm: 0.0,
///     gap_mm: 12.5,
///     main_specific_gravity: 0.42,
///     main_thickness_mm: 89.0,
///     main_angle_to_grain_deg: 0.0,
///     main_direction: FastenerDirection::SideGrain,
///     least_cover_mm: 3.0,
///     holes: ScrewHoles::Bored,
///     load_duration: LoadDuration::Permanent,
///     fabrication_moisture: MemberMoisture::Dry,
///     service_moisture: MemberMoisture::Dry,
///     temperature: TemperatureBand::UpTo100F,
///     lateral_n: 200.0,
///     withdrawal_n: 150.0,
/// })?;
/// assert!(list.suitable.iter().all(|screw| screw.utilisation <= 1.0 && screw.cover_mm >= 3.0));
/// assert!(!list.suitable.is_empty() && !list.unsuitable.is_empty());
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn choose_screw(input: &ChooseScrewInput) -> Result<ScrewChoiceList> {
    let mut faults = faults_at("", input);
    faults.extend(list_faults("lengths_mm", &input.lengths_mm, &FASTENER_LENGTH));
    for (k, size) in input.sizes.iter().enumerate() {
        if *size == ScrewSize::Own {
            let fault = Fault::plain(ErrorCode::Inconsistent, "", "a size of the catalogue", "give it to screw_joint");
            faults.push(Detail::from(fault).within(&format!("sizes[{k}]")));
        }
    }
    if input.lengths_mm.len() > 1_000 {
        faults.push(Fault::plain(ErrorCode::Inconsistent, "lengths_mm", "at most 1000 lengths", "").into());
    }
    Error::unless_empty(faults)?;
    let mut lengths_mm = input.lengths_mm.clone();
    lengths_mm.sort_by(f64::total_cmp);
    lengths_mm.dedup();
    let (mut suitable, mut unsuitable) = (Vec::new(), Vec::new());
    let wanted = |size: &ScrewSize| input.sizes.is_empty() || input.sizes.contains(size);
    for row in ScrewSize::TABULATED.iter().copied().filter(wanted).filter_map(wood_screw) {
        let (from_mm, to_mm) = (shortest_sold_mm(row.size) - SAME_MM, longest_sold_mm(row.size) + SAME_MM);
        let sold: Vec<f64> = if lengths_mm.is_empty() {
            sold_lengths_mm(input.series).filter(|length_mm| (from_mm..=to_mm).contains(length_mm)).collect()
        } else {
            lengths_mm.clone()
        };
        for length_mm in sold {
            match judge(input, &row, length_mm) {
                Ok(choice) => suitable.push(choice),
                Err(shortcomings) => unsuitable.push(ScrewRefusal {
                    size: row.size,
                    designation: row.size.designation(),
                    length_mm,
                    shortcomings,
                }),
            }
        }
    }
    Ok(ScrewChoiceList { suitable, unsuitable })
}

const fn nds(part: &'static str) -> Clause {
    Clause::new(Source::Nds2018, part)
}

/// The screw, or every reason against it.
fn judge(
    input: &ChooseScrewInput,
    row: &WoodScrew,
    length_mm: f64,
) -> core::result::Result<ScrewChoice, Vec<ScrewShortcoming>> {
    let joint = match screw_joint(&joint_input(input, row.size, length_mm)) {
        Ok(joint) => joint,
        Err(fault) => return Err(vec![of_fault(&fault)]),
    };
    let holes = |specific_gravity: f64| {
        lead_hole(&LeadHoleInput {
            specific_gravity,
            nominal_diameter_mm: row.nominal_diameter_mm,
            root_diameter_mm: row.root_diameter_mm,
        })
    };
    let (side_hole, main_hole) = match (holes(input.side_specific_gravity), holes(input.main_specific_gravity)) {
        (Ok(side), Ok(main)) => (side, main),
        (Err(fault), _) | (_, Err(fault)) => return Err(vec![of_fault(&fault)]),
    };
    let cover_mm = input.main_thickness_mm - joint.penetration_mm;
    let mut shortcomings = strength_shortcomings(input, &joint);
    if joint.penetration != Outcome::Met {
        shortcomings.push(of_numbers(
            ShortcomingKind::Penetration,
            joint.required_penetration_mm,
            joint.penetration_mm.min(input.main_thickness_mm),
            "mm",
            nds("12.1.5.6"),
            "the main member holds less than six diameters",
        ));
    }
    if cover_mm < input.least_cover_mm - SAME_MM {
        shortcomings.push(of_numbers(
            ShortcomingKind::Cover,
            input.least_cover_mm,
            cover_mm,
            "mm",
            Clause::new(Source::Geometry, ""),
            "the point comes too near to the far face, or out of it",
        ));
    }
    if input.holes == ScrewHoles::NotBored
        && input.withdrawal_n > 0.0
        && main_hole.withdrawal_thread_hole == LeadHoleNeed::Required
    {
        shortcomings.push(of_numbers(
            ShortcomingKind::LeadHole,
            main_hole.withdrawal_thread_hole_mm,
            0.0,
            "mm",
            nds("12.1.5.2"),
            "wood this dense asks for a hole",
        ));
    }
    if !shortcomings.is_empty() {
        return Err(shortcomings);
    }
    Ok(ScrewChoice {
        size: row.size,
        designation: row.size.designation(),
        nominal_diameter_mm: row.nominal_diameter_mm,
        length_mm,
        penetration_mm: joint.penetration_mm,
        cover_mm,
        lateral_capacity_n: joint.lateral_capacity_n,
        withdrawal_capacity_n: joint.withdrawal_capacity_n,
        pull_through_capacity_n: joint.pull_through_capacity_n,
        utilisation: joint.utilisation,
        governing_check: joint.governing_check,
        side_shank_hole_mm: side_hole.lateral_shank_hole_mm,
        main_lateral_hole_mm: main_hole.lateral_thread_hole_mm,
        main_withdrawal_hole_mm: main_hole.withdrawal_thread_hole_mm,
    })
}

fn strength_shortcomings(input: &ChooseScrewInput, joint: &ScrewJoint) -> Vec<ScrewShortcoming> {
    let checks = [
        (
            ShortcomingKind::Lateral,
            joint.lateral_utilisation,
            input.lateral_n,
            joint.lateral_capacity_n,
            nds("12.3.1"),
            "the lateral load exceeds the capacity",
        ),
        (
            ShortcomingKind::Withdrawal,
            joint.withdrawal_utilisation,
            input.withdrawal_n,
            joint.withdrawal_capacity_n,
            nds("12.2.2, Eq. 12.2-2"),
            "the thread pulls out",
        ),
        (
            ShortcomingKind::PullThrough,
            joint.pull_through_utilisation,
            input.withdrawal_n,
            joint.pull_through_capacity_n,
            nds("12.2.5, Eq. 12.2-6"),
            "the head pulls through the side member",
        ),
        (
            ShortcomingKind::Combined,
            joint.combined_utilisation,
            joint.resultant_n,
            joint.combined_capacity_n,
            nds("Eq. 12.4-1"),
            "both loads at once exceed the capacity at their angle",
        ),
    ];
    let over = checks.into_iter().filter(|(_, utilisation, ..)| *utilisation > 1.0);
    over.map(|(kind, _, load_n, capacity_n, clause, words)| of_numbers(kind, load_n, capacity_n, "N", clause, words))
        .collect()
}

fn of_numbers(
    kind: ShortcomingKind,
    asked: f64,
    given: f64,
    unit: &'static str,
    clause: Clause,
    words: &str,
) -> ScrewShortcoming {
    let message = format!("{words}: {asked:.1} {unit} asked for, {given:.1} {unit} there");
    ScrewShortcoming { kind, asked: Some(asked), given: Some(given), unit, clause, message }
}

fn of_fault(fault: &Fault) -> ScrewShortcoming {
    let (kind, clause) = if fault.code == ErrorCode::PenetrationTooShort {
        (ShortcomingKind::DoesNotReach, Clause::new(Source::Geometry, ""))
    } else {
        (ShortcomingKind::NotComputed, nds("chapter 12"))
    };
    ScrewShortcoming { kind, asked: None, given: None, unit: "", clause, message: fault.to_string() }
}

fn joint_input(input: &ChooseScrewInput, size: ScrewSize, screw_length_mm: f64) -> ScrewJointInput {
    ScrewJointInput {
        size,
        nominal_diameter_mm: None,
        root_diameter_mm: None,
        head_diameter_mm: None,
        screw_length_mm,
        thread_length_mm: None,
        tip_length_mm: None,
        bending_yield_mpa: None,
        side_specific_gravity: input.side_specific_gravity,
        side_thickness_mm: input.side_thickness_mm,
        side_angle_to_grain_deg: input.side_angle_to_grain_deg,
        head_recess_mm: input.head_recess_mm,
        gap_mm: input.gap_mm,
        main_specific_gravity: input.main_specific_gravity,
        main_thickness_mm: input.main_thickness_mm,
        main_angle_to_grain_deg: input.main_angle_to_grain_deg,
        main_direction: input.main_direction,
        rounding: BearingRounding::Unrounded,
        load_duration: input.load_duration,
        fabrication_moisture: input.fabrication_moisture,
        service_moisture: input.service_moisture,
        temperature: input.temperature,
        arrangement: FastenerArrangement::SeveralRows,
        lateral_n: input.lateral_n,
        withdrawal_n: input.withdrawal_n,
    }
}

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::fasten) const CHOOSE_SCREW: crate::json::Calculation = crate::json::calculation!(
    choose_screw: ChooseScrewInput => ScrewChoiceList, Document,
    "Wood screws of the catalogue that satisfy strength, penetration, cover and lead hole, and why the others do not"
);

#[cfg(test)]
#[path = "screw_tests.rs"]
mod tests;
