//! Wood screw sizes.

use crate::cite::{Evidence, Source};
use crate::error::Fault;

/// Millimetres of a whole number of thousandths of an inch, without the dust of a decimal factor.
const fn from_mil(mil: u32) -> f64 {
    (mil * 254) as f64 / 10_000.0
}

macro_rules! wood_screws {
    ($($variant:ident, $name:literal, $doc:literal, $nominal:literal, $root:literal, $head:literal, $threads:literal, $evidence:ident;)+) => {
        /// A wood screw size by its gauge number, or the user's own.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        #[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
        pub enum ScrewSize {
            $(#[doc = $doc] #[cfg_attr(feature = "json", serde(rename = $name))] $variant,)+
            /// Not in the table: nominal, root and head diameter are given.
            #[cfg_attr(feature = "json", serde(rename = "own"))]
            Own,
        }

        impl ScrewSize {
            /// Size as the trade calls it: `No. 10, 0.190 in.`
            pub const fn words(self) -> &'static str {
                match self {
                    $(ScrewSize::$variant => $doc,)+
                    ScrewSize::Own => "own size",
                }
            }

            /// Every size of the table, smallest first.
            pub const TABULATED: &'static [ScrewSize] = &[$(ScrewSize::$variant,)+];
        }

        /// Every tabulated size, smallest first.
        pub(super) const WOOD_SCREWS: &[WoodScrew] = &[$(
            WoodScrew {
                size: ScrewSize::$variant,
                nominal_diameter_mm: from_mil($nominal),
                root_diameter_mm: from_mil($root),
                head_diameter_mm: from_mil($head),
                threads_per_inch: $threads,
                source: Source::AsmeB1861,
                evidence: Evidence::$evidence,
            },
        )+];
    };
}

// Nominal, root and head diameter in thousandths of an inch (NDS 2018 Appendix L, Table L3), threads per inch (ASME
// B18.6.1). The nominal diameters follow the seen rule 0.060 + 0.013 × number; all three diameters of No. 10 were seen;
// the rest is recalled.
wood_screws! {
    No6, "no_6", "No. 6, 0.138 in.", 138, 113, 262, 18, Recalled;
    No7, "no_7", "No. 7, 0.151 in.", 151, 122, 287, 16, Recalled;
    No8, "no_8", "No. 8, 0.164 in.", 164, 131, 312, 15, Recalled;
    No9, "no_9", "No. 9, 0.177 in.", 177, 142, 337, 14, Recalled;
    No10, "no_10", "No. 10, 0.190 in.", 190, 152, 363, 13, Seen;
    No12, "no_12", "No. 12, 0.216 in.", 216, 171, 414, 11, Recalled;
    No14, "no_14", "No. 14, 0.242 in.", 242, 196, 480, 10, Recalled;
    No16, "no_16", "No. 16, 0.268 in.", 268, 209, 515, 9, Recalled;
    No18, "no_18", "No. 18, 0.294 in.", 294, 232, 602, 8, Recalled;
    No20, "no_20", "No. 20, 0.320 in.", 320, 255, 616, 8, Recalled;
    No24, "no_24", "No. 24, 0.372 in.", 372, 298, 724, 7, Recalled;
}

impl ScrewSize {
    /// Gauge alone: `No. 10`.
    pub fn designation(self) -> &'static str {
        self.words().split(',').next().unwrap_or_default()
    }
}

/// One size of full-body wood screw.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct WoodScrew {
    /// Size.
    pub size: ScrewSize,
    /// Nominal diameter, also that of the full-body shank, mm.
    pub nominal_diameter_mm: f64,
    /// Diameter at the thread root, mm.
    pub root_diameter_mm: f64,
    /// Diameter of the head, mm.
    pub head_diameter_mm: f64,
    /// Threads per inch.
    pub threads_per_inch: u32,
    /// Standard of the dimensions.
    pub source: Source,
    /// How far the diameters were checked; the thread counts are recalled in every row.
    pub evidence: Evidence,
}

/// The dimensions of a tabulated size; nothing for the user's own.
pub fn wood_screw(size: ScrewSize) -> Option<WoodScrew> {
    WOOD_SCREWS.iter().find(|row| row.size == size).copied()
}

/// Asks for the whole table.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
pub struct ListWoodScrewsInput {}

/// The table of wood screw sizes.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct WoodScrewList {
    /// Every tabulated size, smallest first.
    pub rows: Vec<WoodScrew>,
}

/// The table of full-body wood screw sizes.
///
/// # Equation
/// A table; the nominal diameter of gauge n is 0.060 + 0.013 n inches.
///
/// # Limits
/// Full-body screws with cut or rolled thread. Screws of the trade with a shank thinner than the thread are other
/// screws: give their own numbers.
///
/// # Errors
/// None.
///
/// # Source
/// ASME B18.6.1; NDS 2018 Appendix L, Table L3. Each row says how far it was checked.
///
/// # Examples
/// ```
/// use beamcraft_core::fasten::{ListWoodScrewsInput, list_wood_screws};
/// assert!(list_wood_screws(&ListWoodScrewsInput {})?.rows.len() > 10);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn list_wood_screws(input: &ListWoodScrewsInput) -> Result<WoodScrewList, Fault> {
    let ListWoodScrewsInput {} = input;
    Ok(WoodScrewList { rows: WOOD_SCREWS.to_vec() })
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const LIST_WOOD_SCREWS: crate::json::Calculation = crate::json::calculation!(
    list_wood_screws: ListWoodScrewsInput => WoodScrewList, Document,
    "Wood screw sizes: nominal, root and head diameter"
);

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn gauge_and_diameter_follow_the_rule_of_the_standard() {
        let numbers = [6, 7, 8, 9, 10, 12, 14, 16, 18, 20, 24];
        assert_eq!(WOOD_SCREWS.len(), numbers.len());
        for (row, number) in WOOD_SCREWS.iter().zip(numbers) {
            let rule_mm = (0.060 + 0.013 * f64::from(number)) * 25.4;
            assert!((row.nominal_diameter_mm - rule_mm).abs() < 1e-9, "No. {number}");
            assert!(row.root_diameter_mm < row.nominal_diameter_mm, "No. {number}");
            assert!(row.head_diameter_mm > 1.5 * row.nominal_diameter_mm, "No. {number}");
        }
        for pair in WOOD_SCREWS.windows(2) {
            assert!(pair[0].root_diameter_mm < pair[1].root_diameter_mm);
            assert!(pair[0].head_diameter_mm < pair[1].head_diameter_mm);
        }
    }

    #[test]
    fn a_size_is_found_by_its_gauge_and_own_is_not_in_the_table() {
        assert_eq!(wood_screw(ScrewSize::No10).unwrap().root_diameter_mm, 3.8608);
        assert_eq!(wood_screw(ScrewSize::Own), None);
    }
}
