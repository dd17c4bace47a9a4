//! Classes of finish: what is published about each, with its source and how far it was checked.

use super::class_table::{CLASSES, row};
use crate::cite::{Clause, Evidence};
use crate::error::{Detail, Error, ErrorCode, Fault, closest};
use crate::finding::{Caution, CautionText};

/// A class of finish, without any maker's product.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum FinishName {
    /// Semitransparent oil stain with pigment.
    OilStain,
    /// Dye in spirit or in solvents that do not raise the grain.
    SpiritDye,
    /// Dye in water.
    WaterDye,
    /// Oil varnish cut about one to one for wiping on.
    WipingVarnish,
    /// Oil varnish with polyurethane.
    OilPolyurethane,
    /// Water-borne polyurethane.
    WaterbornePolyurethane,
    /// Shellac of two-pound cut.
    Shellac,
    /// Nitrocellulose lacquer.
    NitrocelluloseLacquer,
    /// Catalysed conversion varnish.
    ConversionVarnish,
    /// Drying oil without thinner, such as linseed or tung.
    DryingOil,
    /// Oil with hard wax.
    HardwaxOil,
    /// Outdoor paint, a primer and two top coats.
    ExteriorPaint,
}

/// Whether a finish lies on the wood or goes into it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum FinishKind {
    /// Goes into the wood: film arithmetic does not apply.
    Penetrating,
    /// Goes into the wood and leaves a thin film.
    PenetratingWithFilm,
    /// Leaves a thin film with each coat.
    ThinFilm,
    /// Builds a film.
    Film,
}

/// Whether rags with the finish heat up by themselves.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum SelfHeatingRags {
    /// They do: it holds a drying oil.
    SelfHeating,
    /// They do where the product holds a drying oil; take it that they do until the maker says otherwise.
    IfOilBased,
    /// The sources do not count it among the finishes whose rags heat up.
    NotSelfHeating,
}

impl SelfHeatingRags {
    /// The cautions that travel with a finish: rags where they may heat up, solvents and curing always.
    pub const fn cautions(self) -> &'static [Caution] {
        match self {
            Self::SelfHeating | Self::IfOilBased => &[Caution::Rags, Caution::Solvents],
            Self::NotSelfHeating => &[Caution::Solvents],
        }
    }

    pub(super) fn caution_texts(self) -> Vec<CautionText> {
        self.cautions().iter().map(|caution| CautionText::from(*caution)).collect()
    }
}

/// Two ends of a published or reckoned figure, in the unit of the field's name; where one figure is given, both are it.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct FinishRange {
    /// Lower end.
    pub low: f64,
    /// Upper end.
    pub high: f64,
    /// How far the figure was checked.
    pub evidence: Evidence,
    /// Where it comes from.
    pub clause: Clause,
}

/// How the solvent of a limit is counted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum VocCounting {
    /// Per litre ready to use, its water included.
    ReadyToUse,
    /// Per litre less water and exempt solvents.
    LessWater,
}

/// A legal limit of the solvents in a finish.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct VocLimit {
    /// Which products of the class it is for.
    pub applies_to: &'static str,
    /// Most volatile organic compounds, g per litre.
    pub limit_g_per_l: f64,
    /// How they are counted; limits counted differently cannot be compared.
    pub counting: VocCounting,
    /// The rule.
    pub clause: Clause,
}

/// What is published about a class of finish. Absent means that nothing was found that is free of a maker's product.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct FinishClass {
    /// Class.
    pub name: FinishName,
    /// On the wood or in it.
    pub kind: FinishKind,
    /// How it dries.
    pub dries_by: &'static str,
    /// Whether rags with it heat up by themselves.
    pub self_heating_rags: SelfHeatingRags,
    /// Volume solids, %.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub volume_solids_pct: Option<FinishRange>,
    /// Spread rate of one coat on smooth wood, m² per litre.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub spread_m2_per_l: Option<FinishRange>,
    /// Dry film of one coat, µm.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub dry_um_per_coat: Option<FinishRange>,
    /// Dry film of the whole build, µm.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub total_dry_um: Option<FinishRange>,
    /// Usual number of coats.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub coats: Option<FinishRange>,
    /// Time until it is dry to the touch, hours.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub touch_dry_h: Option<FinishRange>,
    /// Time until the next coat, hours; the maker's time comes first.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub recoat_h: Option<FinishRange>,
    /// Time until it is fully cured, days; the maker's time comes first.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub full_cure_days: Option<FinishRange>,
    /// P grade of the last sanding of the bare wood.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub final_grit: Option<FinishRange>,
    /// Legal limits of its solvents that were read; local law decides, and there may be others.
    pub voc_limits: &'static [VocLimit],
    /// What else to know.
    pub remark: &'static str,
}

impl FinishName {
    /// Every class, in the order of the table.
    pub const ALL: [Self; 12] = [
        Self::OilStain,
        Self::SpiritDye,
        Self::WaterDye,
        Self::WipingVarnish,
        Self::OilPolyurethane,
        Self::WaterbornePolyurethane,
        Self::Shellac,
        Self::NitrocelluloseLacquer,
        Self::ConversionVarnish,
        Self::DryingOil,
        Self::HardwaxOil,
        Self::ExteriorPaint,
    ];

    /// Text form, the same through every door.
    pub const fn name(self) -> &'static str {
        match self {
            Self::OilStain => "oil_stain",
            Self::SpiritDye => "spirit_dye",
            Self::WaterDye => "water_dye",
            Self::WipingVarnish => "wiping_varnish",
            Self::OilPolyurethane => "oil_polyurethane",
            Self::WaterbornePolyurethane => "waterborne_polyurethane",
            Self::Shellac => "shellac",
            Self::NitrocelluloseLacquer => "nitrocellulose_lacquer",
            Self::ConversionVarnish => "conversion_varnish",
            Self::DryingOil => "drying_oil",
            Self::HardwaxOil => "hardwax_oil",
            Self::ExteriorPaint => "exterior_paint",
        }
    }

    /// The class of a text form.
    ///
    /// # Errors
    /// `unknown_name`, with the closest known one.
    pub fn from_name(name: &str) -> Result<Self, Error> {
        Self::ALL.into_iter().find(|class| class.name() == name).ok_or_else(|| unknown(name))
    }

    /// What is published about the class.
    pub fn class(self) -> &'static FinishClass {
        row(self)
    }
}

#[cold]
fn unknown(name: &str) -> Error {
    let names = FinishName::ALL.map(FinishName::name);
    Error::one(Detail {
        code: ErrorCode::UnknownName,
        path: "name".to_owned(),
        given: format!("\"{name}\""),
        allowed: names.join(", "),
        cure: closest(name, names.into_iter()).map(|found| format!("did you mean {found}?")).unwrap_or_default(),
    })
}

/// The class that is asked about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
pub struct FindFinishClassInput {
    /// Class of finish.
    pub name: FinishName,
}

/// A class of finish with its cautions.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct FinishClassFound {
    /// What is published about it.
    pub class: FinishClass,
    /// Cautions that travel with it.
    pub cautions: Vec<CautionText>,
}

/// What is published about a class of finish.
///
/// # Equation
/// A table, not a formula.
///
/// # Limits
/// Ranges for planning. Guides differ by factors of two to five on times; none of it is a product's data, which come
/// first wherever there are any. Let a finish cure fully, by its maker's time, before the first fire. Rags with drying
/// oil heat up by themselves: the cautions say so for every class concerned.
///
/// # Errors
/// None beyond those of the doors.
///
/// # Source
/// Named with each figure, and whether it was read there or recalled; checked by `verification/finish`.
///
/// # Examples
/// ```
/// use beamcraft_core::finish::{find_finish_class, FindFinishClassInput, FinishName, SelfHeatingRags};
/// let found = find_finish_class(&FindFinishClassInput { name: FinishName::HardwaxOil })?;
/// assert_eq!(found.class.self_heating_rags, SelfHeatingRags::SelfHeating);
/// assert!(found.class.spread_m2_per_l.is_none(), "none is published");
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn find_finish_class(input: &FindFinishClassInput) -> Result<FinishClassFound, Fault> {
    let class = *input.name.class();
    Ok(FinishClassFound { class, cautions: class.self_heating_rags.caution_texts() })
}

/// The classes that are asked for.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
pub struct ListFinishClassesInput {
    /// Only classes of this kind; all of them when it is left out.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub kind: Option<FinishKind>,
}

/// Classes of finish, in a fixed order.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct FinishClassList {
    /// Number of classes.
    pub class_count: u32,
    /// What is published about each.
    pub classes: Vec<FinishClass>,
    /// Cautions that travel with one or more of them.
    pub cautions: Vec<CautionText>,
}

/// What is published about every class of finish.
///
/// # Equation
/// A table, not a formula.
///
/// # Limits
/// As for [`find_finish_class`].
///
/// # Errors
/// None beyond those of the doors.
///
/// # Source
/// Named with each figure; checked by `verification/finish`.
///
/// # Examples
/// ```
/// use beamcraft_core::finish::{list_finish_classes, ListFinishClassesInput};
/// assert_eq!(list_finish_classes(&ListFinishClassesInput::default())?.class_count, 12);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn list_finish_classes(input: &ListFinishClassesInput) -> Result<FinishClassList, Fault> {
    let wanted = |class: &&FinishClass| input.kind.is_none_or(|kind| class.kind == kind);
    let classes: Vec<FinishClass> = CLASSES.iter().copied().filter(wanted).copied().collect();
    let travels =
        |caution: &&Caution| classes.iter().any(|class| class.self_heating_rags.cautions().contains(*caution));
    let cautions = Caution::ALL.iter().filter(travels).map(|caution| CautionText::from(*caution)).collect();
    Ok(FinishClassList { class_count: classes.len() as u32, classes, cautions })
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const FIND_FINISH_CLASS: crate::json::Calculation = crate::json::calculation!(
    find_finish_class: FindFinishClassInput => FinishClassFound, Document,
    "What is published about a class of finish: spread, coats, times, film, and whether its rags heat up"
);

/// Registry row.
#[cfg(feature = "json")]
pub(super) const LIST_FINISH_CLASSES: crate::json::Calculation = crate::json::calculation!(
    list_finish_classes: ListFinishClassesInput => FinishClassList, Document,
    "What is published about every class of finish"
);

#[cfg(test)]
mod tests {
    use super::*;
    use FinishName::{
        DryingOil, ExteriorPaint, HardwaxOil, NitrocelluloseLacquer, OilPolyurethane, OilStain, Shellac, WaterDye,
        WaterbornePolyurethane, WipingVarnish,
    };

    #[test]
    fn every_name_has_its_row_in_order() {
        assert_eq!(CLASSES.iter().map(|class| class.name).collect::<Vec<_>>(), FinishName::ALL);
        assert!(FinishName::ALL.iter().all(|name| name.class().name == *name));
    }

    #[test]
    fn the_text_forms_read_back_and_a_slip_is_told() {
        for name in FinishName::ALL {
            assert_eq!(FinishName::from_name(name.name()).unwrap(), name);
            #[cfg(feature = "json")]
            assert_eq!(crate::json::write(&name).unwrap(), format!("\"{}\"", name.name()));
        }
        let fault = FinishName::from_name("hard_wax_oil").expect_err("refused");
        assert_eq!(
            (fault.code(), fault.details()[0].cure.as_str()),
            (ErrorCode::UnknownName, "did you mean hardwax_oil?")
        );
    }

    #[test]
    fn every_range_is_a_range() {
        for class in CLASSES {
            let ranges = [
                class.volume_solids_pct,
                class.spread_m2_per_l,
                class.dry_um_per_coat,
                class.total_dry_um,
                class.coats,
                class.touch_dry_h,
                class.recoat_h,
                class.full_cure_days,
                class.final_grit,
            ];
            for range in ranges.into_iter().flatten() {
                assert!(range.low > 0.0 && range.low <= range.high, "{:?}: {range:?}", class.name);
            }
            assert!(class.voc_limits.iter().all(|limit| limit.limit_g_per_l > 0.0));
        }
    }

    #[test]
    fn oils_oil_stains_and_oil_varnishes_carry_the_rag_caution() {
        for name in [OilStain, WipingVarnish, OilPolyurethane, DryingOil, HardwaxOil, ExteriorPaint] {
            let found = find_finish_class(&FindFinishClassInput { name }).unwrap();
            assert!(found.cautions.iter().any(|caution| caution.about == "rags"), "{name:?}");
        }
        for name in [WaterDye, WaterbornePolyurethane, Shellac, NitrocelluloseLacquer] {
            let found = find_finish_class(&FindFinishClassInput { name }).unwrap();
            assert!(found.cautions.iter().all(|caution| caution.about != "rags"), "{name:?}");
        }
    }

    #[test]
    fn the_dry_film_per_coat_follows_from_spread_and_solids() {
        // Where both are given, the reckoned film of the table must be theirs, to its rounding to whole micrometres.
        for name in [OilPolyurethane, WaterbornePolyurethane, Shellac] {
            let class = name.class();
            let (spread, film) = (class.spread_m2_per_l.unwrap(), class.dry_um_per_coat.unwrap());
            let solids = class.volume_solids_pct.unwrap();
            // The film of oil varnish is reckoned at 43 %, of shellac at 18 %.
            let (low_pct, high_pct) = match name {
                OilPolyurethane => (43.0, 43.0),
                Shellac => (18.0, 18.0),
                _ => (solids.low, solids.high),
            };
            assert!((film.low - 10.0 * low_pct / spread.high).abs() < 0.51, "{name:?}");
            assert!((film.high - 10.0 * high_pct / spread.low).abs() < 0.51, "{name:?}");
        }
    }

    #[test]
    fn a_list_can_be_narrowed_to_a_kind() {
        let list = |kind| list_finish_classes(&ListFinishClassesInput { kind }).unwrap();
        let kinds = [FinishKind::Penetrating, FinishKind::PenetratingWithFilm, FinishKind::ThinFilm, FinishKind::Film];
        let sum: u32 = kinds.into_iter().map(|kind| list(Some(kind)).class_count).sum();
        assert_eq!(sum, list(None).class_count);
        assert_eq!(list(Some(FinishKind::ThinFilm)).classes[0].name, WipingVarnish);
    }
}
