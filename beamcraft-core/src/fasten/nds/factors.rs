//! Adjustment factors of connections.

use super::bearing::FastenerDirection;
use super::is_quarter_inch;
use crate::error::{ErrorCode, Fault};
use crate::limits::{Limited, limited};

/// A kind of dowel fastener driven into wood.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum DowelFastener {
    /// Wood screw with cut or rolled thread.
    WoodScrew,
    /// Lag screw.
    LagScrew,
    /// Smooth nail or spike, bright or galvanised.
    SmoothNail,
    /// Smooth nail of stainless steel.
    SmoothStainlessNail,
    /// Nail with a ringed shank.
    RingShankNail,
}

impl DowelFastener {
    /// Whether it is a nail of any kind.
    pub(super) const fn is_nail(self) -> bool {
        matches!(self, Self::SmoothNail | Self::SmoothStainlessNail | Self::RingShankNail)
    }
}

/// How long the governing load acts in sum over the life of the joint.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum LoadDuration {
    /// For good: own weight, goods stored on a shelf; 0.9.
    Permanent,
    /// Ten years in sum: ordinary live load; 1.0.
    TenYears,
    /// Two months in sum: snow; 1.15.
    TwoMonths,
    /// Seven days in sum: construction; 1.25.
    SevenDays,
    /// Ten minutes in sum: wind, earthquake; 1.6.
    TenMinutes,
    /// A blow; 2.0 for members, but connections never take more than 1.6.
    Impact,
}

impl LoadDuration {
    /// Load duration factor C_D for connections.
    pub const fn factor(self) -> f64 {
        match self {
            Self::Permanent => 0.9,
            Self::TenYears => 1.0,
            Self::TwoMonths => 1.15,
            Self::SevenDays => 1.25,
            Self::TenMinutes | Self::Impact => 1.6,
        }
    }
}

/// Whether the wood counts as dry.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum MemberMoisture {
    /// At most 19 % moisture.
    Dry,
    /// More than 19 % moisture.
    Wet,
}

/// Highest temperature that the joint meets for long.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum TemperatureBand {
    /// Up to 100 °F (38 °C).
    #[cfg_attr(feature = "json", serde(rename = "up_to_100_f"))]
    UpTo100F,
    /// Above 100 °F up to 125 °F (52 °C).
    #[cfg_attr(feature = "json", serde(rename = "up_to_125_f"))]
    UpTo125F,
    /// Above 125 °F up to 150 °F (66 °C).
    #[cfg_attr(feature = "json", serde(rename = "up_to_150_f"))]
    UpTo150F,
}

/// How the fasteners of one joint stand, which matters when wet wood dries in the joint.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum FastenerArrangement {
    /// Several rows, or a row across the grain: shrinkage can split the wood between the fasteners.
    SeveralRows,
    /// One fastener, one row along the grain, or a splice plate of its own for every row.
    OneFastenerOrRow,
}

/// How a nail is driven.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum NailDriving {
    /// Straight; also every fastener that is not a nail.
    Straight,
    /// Toe-nailed, at about 30° through the edge of a member.
    ToeNailed,
}

/// A joint whose adjustment factors are looked up.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<ConnectionFactorsInput>))]
pub struct ConnectionFactorsInput {
    /// Kind of fastener.
    pub fastener: DowelFastener,
    /// Nominal diameter, mm.
    pub nominal_diameter_mm: f64,
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
    /// How the fasteners stand; several rows by default, the lower factor when wet wood dries.
    #[cfg_attr(feature = "json", serde(default = "several_rows"))]
    pub arrangement: FastenerArrangement,
    /// Grain of the main member that the fastener stands in; side grain by default, as in the face of a stud.
    #[cfg_attr(feature = "json", serde(default = "super::bearing::side_grain"))]
    pub direction: FastenerDirection,
    /// How a nail is driven; straight by default.
    #[cfg_attr(feature = "json", serde(default = "straight"))]
    pub nail_driving: NailDriving,
}

limited!(ConnectionFactorsInput { nominal_diameter_mm: FASTENER_DIAMETER });

#[cfg(feature = "json")]
pub(super) fn permanent() -> LoadDuration {
    LoadDuration::Permanent
}
#[cfg(feature = "json")]
pub(super) fn dry() -> MemberMoisture {
    MemberMoisture::Dry
}
#[cfg(feature = "json")]
pub(super) fn room_temperature() -> TemperatureBand {
    TemperatureBand::UpTo100F
}
#[cfg(feature = "json")]
pub(super) fn several_rows() -> FastenerArrangement {
    FastenerArrangement::SeveralRows
}
#[cfg(feature = "json")]
pub(super) fn straight() -> NailDriving {
    NailDriving::Straight
}

/// Adjustment factors of a joint, and their products.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct ConnectionFactors {
    /// Load duration factor C_D (NDS 11.3.2, Table 2.3.2).
    pub c_d: f64,
    /// Wet service factor C_M of lateral values (NDS Table 11.3.3).
    pub c_m_lateral: f64,
    /// Wet service factor C_M of withdrawal values (NDS Table 11.3.3).
    pub c_m_withdrawal: f64,
    /// Wet service factor C_M of head pull-through values (NDS Table 11.3.3).
    pub c_m_pull_through: f64,
    /// Temperature factor C_t (NDS Table 11.3.4).
    pub c_t: f64,
    /// End grain factor C_eg of lateral values (NDS 12.5.2.2).
    pub c_eg_lateral: f64,
    /// End grain factor C_eg of withdrawal values (NDS 12.5.2.1); 0 where the standard permits no withdrawal.
    pub c_eg_withdrawal: f64,
    /// Toe-nail factor C_tn of lateral values (NDS 12.5.4.2).
    pub c_tn_lateral: f64,
    /// Toe-nail factor C_tn of withdrawal values (NDS 12.5.4.1).
    pub c_tn_withdrawal: f64,
    /// Product of the factors of lateral values.
    pub lateral: f64,
    /// Product of the factors of withdrawal values but C_eg, which `fastener_withdrawal` has already applied.
    pub withdrawal: f64,
    /// Product of the factors of head pull-through values.
    pub pull_through: f64,
}

/// Adjustment factors of a connection for load duration, moisture, temperature, end grain and toe-nailing.
///
/// # Equation
/// ```text
/// Z' = Z C_D C_M C_t C_eg C_tn      W' = W C_D C_M C_t C_eg C_tn      W_H' = W_H C_D C_M C_t
/// ```
/// | factor | values |
/// |---|---|
/// | C_D | 0.9 permanent, 1.0 ten years, 1.15 two months, 1.25 seven days, 1.6 ten minutes and impact |
/// | C_M lateral | dry to dry 1; wet to dry 0.4 (0.7 below 1/4 in, 1 for one fastener or row along the grain); wet in service 0.7 |
/// | C_M withdrawal, pull-through | screws 1 dry, 0.7 wet in service; nails 1 when the condition stays, 0.25 when it changes |
/// | C_t | up to 100 °F 1; up to 125 °F 0.8 dry, 0.7 wet; up to 150 °F 0.7 dry, 0.5 wet |
/// | C_eg | lateral 0.67; withdrawal 0.75 for lag screws, not permitted for the others |
/// | C_tn | lateral 0.83, withdrawal 0.67 (without C_M) |
///
/// # Limits
/// Allowable-stress design. The group factor and the geometry factor are 1 below 1/4 in and not computed above; the
/// diaphragm factor does not concern a beam on a wall. Ring shank nails are given the moisture row of smooth nails, the
/// lower one. Above 150 °F the standard gives nothing.
///
/// # Errors
/// `out_of_range`, `not_finite`; `inconsistent` for a toe-nailed fastener that is not a nail.
///
/// # Source
/// NDS 2018 Table 11.3.1, 11.3.2 (seen), Tables 11.3.3 and 11.3.4 (recalled), 12.5.2 and 12.5.4 (seen; that C_M is left
/// out for toe-nails in withdrawal is recalled).
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::*;
/// let shelf = connection_factors(&ConnectionFactorsInput {
///     fastener: DowelFastener::WoodScrew,
///     nominal_diameter_mm: 4.8,
///     load_duration: LoadDuration::Permanent,
///     fabrication_moisture: MemberMoisture::Dry,
///     service_moisture: MemberMoisture::Dry,
///     temperature: TemperatureBand::UpTo125F,
///     arrangement: FastenerArrangement::SeveralRows,
///     direction: FastenerDirection::SideGrain,
///     nail_driving: NailDriving::Straight,
/// })?;
/// assert_eq!(shelf.lateral, 0.9 * 0.8);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn connection_factors(input: &ConnectionFactorsInput) -> Result<ConnectionFactors, Fault> {
    input.check_ranges()?;
    if input.nail_driving == NailDriving::ToeNailed && !input.fastener.is_nail() {
        return Err(Fault::plain(
            ErrorCode::Inconsistent,
            "nail_driving",
            "toe-nailing of nails only",
            "drive straight",
        ));
    }
    Ok(factors(input))
}

/// [`connection_factors`] of an input already found consistent.
pub(super) fn factors(input: &ConnectionFactorsInput) -> ConnectionFactors {
    use MemberMoisture::{Dry, Wet};
    let (made, service) = (input.fabrication_moisture, input.service_moisture);
    let toe_nailed = input.nail_driving == NailDriving::ToeNailed;
    let c_d = input.load_duration.factor();
    let c_m_lateral = match (made, service) {
        (_, Wet) => 0.7,
        (Dry, Dry) => 1.0,
        (Wet, Dry) if input.arrangement == FastenerArrangement::OneFastenerOrRow => 1.0,
        (Wet, Dry) if is_quarter_inch(input.nominal_diameter_mm) => 0.4,
        (Wet, Dry) => 0.7,
    };
    let wet_service = if service == Wet { 0.7 } else { 1.0 };
    let c_m_withdrawal = match (input.fastener.is_nail(), toe_nailed) {
        (false, _) => wet_service,
        (true, true) => 1.0,
        (true, false) if made == service => 1.0,
        (true, false) => 0.25,
    };
    let c_t = match (input.temperature, service) {
        (TemperatureBand::UpTo100F, _) => 1.0,
        (TemperatureBand::UpTo125F, Dry) => 0.8,
        (TemperatureBand::UpTo125F, Wet) | (TemperatureBand::UpTo150F, Dry) => 0.7,
        (TemperatureBand::UpTo150F, Wet) => 0.5,
    };
    let (c_eg_lateral, c_eg_withdrawal) = match (input.direction, input.fastener) {
        (FastenerDirection::SideGrain, _) => (1.0, 1.0),
        (FastenerDirection::EndGrain, DowelFastener::LagScrew) => (0.67, 0.75),
        (FastenerDirection::EndGrain, _) => (0.67, 0.0),
    };
    let (c_tn_lateral, c_tn_withdrawal) = if toe_nailed { (0.83, 0.67) } else { (1.0, 1.0) };
    ConnectionFactors {
        c_d,
        c_m_lateral,
        c_m_withdrawal,
        c_m_pull_through: wet_service,
        c_t,
        c_eg_lateral,
        c_eg_withdrawal,
        c_tn_lateral,
        c_tn_withdrawal,
        lateral: c_d * c_m_lateral * c_t * c_eg_lateral * c_tn_lateral,
        withdrawal: c_d * c_m_withdrawal * c_t * c_tn_withdrawal,
        pull_through: c_d * wet_service * c_t,
    }
}

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::fasten) const CONNECTION_FACTORS: crate::json::Calculation = crate::json::calculation!(
    connection_factors: ConnectionFactorsInput => ConnectionFactors, Typed,
    "Adjustment factors of a connection for load duration, moisture, temperature, end grain and toe-nailing"
);

#[cfg(test)]
mod tests {
    use super::*;

    fn screw() -> ConnectionFactorsInput {
        ConnectionFactorsInput {
            fastener: DowelFastener::WoodScrew,
            nominal_diameter_mm: 4.826,
            load_duration: LoadDuration::TenYears,
            fabrication_moisture: MemberMoisture::Dry,
            service_moisture: MemberMoisture::Dry,
            temperature: TemperatureBand::UpTo100F,
            arrangement: FastenerArrangement::SeveralRows,
            direction: FastenerDirection::SideGrain,
            nail_driving: NailDriving::Straight,
        }
    }

    // NDS 11.3.2: what would be 2.0 for a member stays at 1.6.
    #[test]
    fn no_connection_takes_more_than_one_and_six_tenths() {
        let factor =
            |load_duration| connection_factors(&ConnectionFactorsInput { load_duration, ..screw() }).unwrap().c_d;
        let wanted = [
            (LoadDuration::Permanent, 0.9),
            (LoadDuration::TenYears, 1.0),
            (LoadDuration::TwoMonths, 1.15),
            (LoadDuration::SevenDays, 1.25),
            (LoadDuration::TenMinutes, 1.6),
            (LoadDuration::Impact, 1.6),
        ];
        for (duration, value) in wanted {
            assert_eq!(factor(duration), value, "{duration:?}");
        }
    }

    // NDS Table 11.3.3 (recalled).
    #[test]
    fn moisture_follows_the_table() {
        use MemberMoisture::{Dry, Wet};
        let wetness = |input: ConnectionFactorsInput, made, service| {
            let found = connection_factors(&ConnectionFactorsInput {
                fabrication_moisture: made,
                service_moisture: service,
                ..input
            });
            let found = found.unwrap();
            (found.c_m_lateral, found.c_m_withdrawal)
        };
        assert_eq!(wetness(screw(), Dry, Dry), (1.0, 1.0));
        assert_eq!(wetness(screw(), Wet, Dry), (0.7, 1.0));
        assert_eq!(wetness(screw(), Dry, Wet), (0.7, 0.7));
        let lag = ConnectionFactorsInput { fastener: DowelFastener::LagScrew, nominal_diameter_mm: 9.525, ..screw() };
        assert_eq!(wetness(lag, Wet, Dry), (0.4, 1.0));
        let alone = ConnectionFactorsInput { arrangement: FastenerArrangement::OneFastenerOrRow, ..lag };
        assert_eq!(wetness(alone, Wet, Dry), (1.0, 1.0));
        let nail = ConnectionFactorsInput { fastener: DowelFastener::SmoothNail, ..screw() };
        assert_eq!(wetness(nail, Wet, Dry), (0.7, 0.25));
        assert_eq!(wetness(nail, Wet, Wet), (0.7, 1.0));
    }

    #[test]
    fn end_grain_toe_nails_and_heat_lower_the_value() {
        let end = ConnectionFactorsInput { direction: FastenerDirection::EndGrain, ..screw() };
        let found = connection_factors(&end).unwrap();
        assert_eq!((found.c_eg_lateral, found.c_eg_withdrawal, found.lateral), (0.67, 0.0, 0.67));
        let toe = ConnectionFactorsInput { nail_driving: NailDriving::ToeNailed, ..screw() };
        assert_eq!(connection_factors(&toe).expect_err("a screw").code, ErrorCode::Inconsistent);
        let toe = ConnectionFactorsInput { fastener: DowelFastener::SmoothNail, ..toe };
        let found = connection_factors(&toe).unwrap();
        assert_eq!((found.c_tn_lateral, found.c_tn_withdrawal), (0.83, 0.67));
        for (temperature, service_moisture, c_t) in [
            (TemperatureBand::UpTo100F, MemberMoisture::Wet, 1.0),
            (TemperatureBand::UpTo125F, MemberMoisture::Dry, 0.8),
            (TemperatureBand::UpTo125F, MemberMoisture::Wet, 0.7),
            (TemperatureBand::UpTo150F, MemberMoisture::Dry, 0.7),
            (TemperatureBand::UpTo150F, MemberMoisture::Wet, 0.5),
        ] {
            let warm = ConnectionFactorsInput { temperature, service_moisture, ..screw() };
            assert_eq!(connection_factors(&warm).unwrap().c_t, c_t);
        }
    }

    #[test]
    fn a_diameter_that_is_no_number_is_refused() {
        let input = ConnectionFactorsInput { nominal_diameter_mm: f64::NAN, ..screw() };
        assert_eq!(connection_factors(&input).expect_err("refused").code, ErrorCode::NotFinite);
    }
}
