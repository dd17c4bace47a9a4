//! Load and resistance factor design beside allowable stress design.

/// How loads and capacities are compared.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum NdsDesign {
    /// Allowable stress design: loads as they are, capacities with the load duration factor.
    Asd,
    /// Load and resistance factor design: factored loads, capacities with format, resistance and time effect factor.
    Lrfd,
}

/// Time effect of a factored load combination (NDS 2018 Appendix N, Table N3, recalled; connections are never given more
/// than 1).
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum TimeEffect {
    /// Dead load alone, 1.4 D; 0.6.
    DeadOnly,
    /// Live load from storage governs; 0.7.
    Storage,
    /// Live load from occupancy, roof live load or snow governs; 0.8.
    OccupancyOrSnow,
    /// Wind, earthquake or impact governs; 1.0.
    ShortOrImpact,
}

impl TimeEffect {
    /// Time effect factor lambda for connections.
    pub const fn factor(self) -> f64 {
        match self {
            Self::DeadOnly => 0.6,
            Self::Storage => 0.7,
            Self::OccupancyOrSnow => 0.8,
            Self::ShortOrImpact => 1.0,
        }
    }
}

/// Format conversion factor K_F of connections (NDS Table N1).
pub(in crate::fasten) const FORMAT_CONVERSION: f64 = 3.32;
/// Resistance factor phi_z of connections (NDS Table N2).
pub(in crate::fasten) const RESISTANCE: f64 = 0.65;
