//! Sheet goods and glued products: published figures, each with the kind of value it is.

use super::names::{search, several, unknown};
use super::sheet_goods;
use super::species::Provenance;
use crate::cite::{Clause, Evidence};
use crate::error::Result;
use crate::limits::{Limited, limited};

/// What a panel is made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum SheetKind {
    /// Cross-laid veneers.
    Plywood,
    /// Long strands in crossed layers.
    OrientedStrandBoard,
    /// Fibres, dry process.
    MediumDensityFibreboard,
    /// Chips.
    Particleboard,
    /// Fibres, pressed hard.
    Hardboard,
    /// Boards glued along the grain.
    GluedLaminatedTimber,
    /// Veneers glued along the grain.
    LaminatedVeneerLumber,
}

/// What kind of value a row holds; kinds are not to be mixed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum SheetValues {
    /// Range of averages of products.
    RangeOfAverages,
    /// Typical range.
    TypicalRange,
    /// Characteristic strength, mean stiffness.
    Characteristic,
    /// Least average that a product standard asks for.
    MinimumAverage,
    /// Fifth percentile that a product standard asks for.
    FifthPercentile,
    /// Range of the averages of mills.
    RangeOfMills,
}

/// A range of published values; both ends are equal where one value is published.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct SheetRange {
    /// Lower end, in the unit of the field.
    pub low: f64,
    /// Upper end, in the unit of the field.
    pub high: f64,
}

pub(super) const fn range(low: f64, high: f64) -> SheetRange {
    SheetRange { low, high }
}

/// Published figures of a panel; what was not found is absent.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct SheetPanel {
    /// Name, with the thickness where the figures depend on it.
    pub name: &'static str,
    /// What it is made of.
    pub kind: SheetKind,
    /// Thickness that the row begins above, or holds for when it equals `thickness_to_mm`, mm.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub thickness_above_mm: Option<f64>,
    /// Largest thickness of the row, mm.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub thickness_to_mm: Option<f64>,
    /// Density, lower end, kg/m³.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub density_low_kg_m3: Option<f64>,
    /// Density, upper end, kg/m³.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub density_high_kg_m3: Option<f64>,
    /// Modulus of elasticity in bending along the face grain or the long side, MPa.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub modulus_along_mpa: Option<SheetRange>,
    /// Modulus of elasticity in bending across, MPa.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub modulus_across_mpa: Option<SheetRange>,
    /// Bending strength along the face grain or the long side, MPa.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub bending_along_mpa: Option<SheetRange>,
    /// Bending strength across, MPa.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub bending_across_mpa: Option<SheetRange>,
    /// Shear modulus through the thickness (edgewise), MPa.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub shear_modulus_edgewise_mpa: Option<SheetRange>,
    /// Shear modulus in the plane (rolling), MPa.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub shear_modulus_planar_mpa: Option<SheetRange>,
    /// Shear strength through the thickness (edgewise), MPa.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub shear_edgewise_mpa: Option<SheetRange>,
    /// Shear strength in the plane (rolling), MPa.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub shear_planar_mpa: Option<SheetRange>,
    /// Internal bond, MPa.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub internal_bond_mpa: Option<SheetRange>,
    /// Test value of a screw pulled from the face, N; not a design value.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub screw_face_n: Option<f64>,
    /// Test value of a screw pulled from the edge, N; not a design value.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub screw_edge_n: Option<f64>,
    /// What kind of value the row holds.
    pub values: SheetValues,
    /// Where the figures come from.
    pub provenance: Provenance,
    /// What to know about the figures; empty where there is nothing.
    pub remark: &'static str,
}

/// A row of the data file before its figures.
pub(super) const fn panel(
    name: &'static str,
    kind: SheetKind,
    values: SheetValues,
    clause: Clause,
    evidence: Evidence,
    remark: &'static str,
) -> SheetPanel {
    SheetPanel {
        name,
        kind,
        thickness_above_mm: None,
        thickness_to_mm: None,
        density_low_kg_m3: None,
        density_high_kg_m3: None,
        modulus_along_mpa: None,
        modulus_across_mpa: None,
        bending_along_mpa: None,
        bending_across_mpa: None,
        shear_modulus_edgewise_mpa: None,
        shear_modulus_planar_mpa: None,
        shear_edgewise_mpa: None,
        shear_planar_mpa: None,
        internal_bond_mpa: None,
        screw_face_n: None,
        screw_edge_n: None,
        values,
        provenance: Provenance { clause, evidence },
        remark,
    }
}

impl SheetPanel {
    /// Every panel.
    pub const fn all() -> &'static [SheetPanel] {
        sheet_goods::ROWS
    }

    /// Whether the row holds for a thickness: to the millimetre where it names one, else above and up to its ends.
    fn holds_for(&self, thickness_mm: f64) -> bool {
        match (self.thickness_above_mm, self.thickness_to_mm) {
            (Some(above), Some(to)) if above == to => (thickness_mm - to).abs() < 0.5,
            (above, to) => above.is_none_or(|above| thickness_mm > above) && to.is_none_or(|to| thickness_mm <= to),
        }
    }
}

/// A panel to find.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<FindPanelInput>))]
pub struct FindPanelInput {
    /// Name of the panel, such as `birch plywood` or `MDF by EN 622-5, dry use`.
    pub name: String,
    /// Thickness, mm; narrows the rows where figures depend on it.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub thickness_mm: Option<f64>,
}

limited!(FindPanelInput { thickness_mm: BOARD_THICKNESS });

/// Published figures of sheet goods by name and thickness.
///
/// # Equation
/// None: figures of publications.
///
/// # Limits
/// Ranges, averages, characteristic values and least values stand side by side; `values` says which, and they are not to be
/// mixed. Products differ: the maker's declaration decides. No movement with moisture is tabulated for panels.
///
/// # Errors
/// `unknown_name`: with all that fit where several do, else with the closest known name; `out_of_range`, `not_finite`.
///
/// # Source
/// Named with every row — checked by `verification/materials`.
///
/// # Examples
/// ```
/// use beamcraft_core::wood::{find_panel, FindPanelInput};
/// let sheet = find_panel(&FindPanelInput { name: "birch plywood".to_owned(), thickness_mm: Some(12.0) })?;
/// assert_eq!(sheet.density_low_kg_m3, Some(630.0));
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn find_panel(input: &FindPanelInput) -> Result<SheetPanel> {
    input.check_ranges()?;
    let holds = |row: &&'static SheetPanel| input.thickness_mm.is_none_or(|thickness_mm| row.holds_for(thickness_mm));
    let matches = search(&input.name, SheetPanel::all().iter(), |row| vec![row.name]);
    let narrowed = |rows: &[&'static SheetPanel]| rows.iter().copied().filter(holds).collect::<Vec<_>>();
    let (equal, part) = (narrowed(&matches.equal), narrowed(&matches.part));
    match (equal.as_slice(), part.as_slice()) {
        ([one], _) | ([], [one]) => Ok(**one),
        ([], []) if matches.equal.is_empty() && matches.part.is_empty() => {
            Err(unknown(&input.name, "a panel of the list", SheetPanel::all().iter().map(|row| row.name)))
        }
        // The name fits, the thickness does not: say which thicknesses there are.
        ([], []) => Err(several(&input.name, &names_of(&[matches.equal.as_slice(), &matches.part].concat()))),
        ([], rows) | (rows, _) => Err(several(&input.name, &names_of(rows))),
    }
}

fn names_of(rows: &[&'static SheetPanel]) -> Vec<&'static str> {
    rows.iter().map(|row| row.name).collect()
}

/// Which panels to list.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
pub struct ListPanelsInput {
    /// One kind only; all when left out.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub kind: Option<SheetKind>,
}

/// The list of panels.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct SheetList {
    /// Panels in the order of the publications.
    pub panels: Vec<SheetPanel>,
}

/// Every panel in the tables with its published figures.
///
/// # Equation
/// None: figures of publications.
///
/// # Limits
/// Those of [`find_panel`].
///
/// # Errors
/// None for an input that reads.
///
/// # Source
/// Named with every row — checked by `verification/materials`.
///
/// # Examples
/// ```
/// use beamcraft_core::wood::{list_panels, ListPanelsInput, SheetKind};
/// let boards = list_panels(&ListPanelsInput { kind: Some(SheetKind::MediumDensityFibreboard) })?;
/// assert!(boards.panels.iter().all(|panel| panel.name.contains("MDF") || panel.name.contains("fibreboard")));
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn list_panels(input: &ListPanelsInput) -> Result<SheetList> {
    let wanted = |row: &&SheetPanel| input.kind.is_none_or(|kind| kind == row.kind);
    Ok(SheetList { panels: SheetPanel::all().iter().filter(wanted).copied().collect() })
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const FIND_PANEL: crate::json::Calculation = crate::json::calculation!(
    find_panel: FindPanelInput => SheetPanel, Document,
    "Published figures of sheet goods by name and thickness"
);

/// Registry row.
#[cfg(feature = "json")]
pub(super) const LIST_PANELS: crate::json::Calculation = crate::json::calculation!(
    list_panels: ListPanelsInput => SheetList, Document,
    "Every panel in the tables of sheet goods"
);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::error::ErrorCode;
    use std::collections::HashSet;

    fn find(name: &str, thickness_mm: Option<f64>) -> Result<SheetPanel> {
        find_panel(&FindPanelInput { name: name.to_owned(), thickness_mm })
    }

    #[test]
    fn every_row_is_found_by_its_own_name_and_its_ranges_are_ranges() {
        let mut names = HashSet::new();
        for row in SheetPanel::all() {
            assert!(names.insert(row.name), "{}", row.name);
            assert_eq!(find(row.name, None).as_ref(), Ok(row));
            let ranges = [row.modulus_along_mpa, row.modulus_across_mpa, row.bending_along_mpa, row.bending_across_mpa];
            for one in ranges.into_iter().flatten() {
                assert!(one.low > 0.0 && one.low <= one.high, "{}", row.name);
            }
        }
    }

    #[test]
    fn a_thickness_narrows_the_rows() {
        assert_eq!(find("birch plywood", Some(18.0)).expect("known").name, "Birch plywood, 18 mm");
        let faults = find("birch plywood", None).expect_err("several").to_string();
        assert!(faults.contains("9 mm") && faults.contains("18 mm"), "{faults}");
        assert!(find("birch plywood", Some(15.0)).expect_err("none of 15 mm").to_string().contains("12 mm"));
        assert_eq!(
            find("MDF by EN 622-5, dry use", Some(12.0)).expect("known").bending_along_mpa,
            Some(range(22.0, 22.0))
        );
        assert_eq!(find("cardboard", None).expect_err("unknown").code(), ErrorCode::UnknownName);
        assert_eq!(find("hardboard", Some(f64::NAN)).expect_err("no number").code(), ErrorCode::NotFinite);
    }
}
