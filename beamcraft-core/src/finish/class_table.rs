//! The rows of the table of finish classes: figures with their sources, no logic.
//!
//! A figure reckoned from others counts as no better checked than the weakest of them.

use super::class::{FinishClass, FinishKind, FinishName, FinishRange, SelfHeatingRags, VocCounting, VocLimit};
use crate::cite::{Clause, Evidence, Source};

const GUIDES: Clause = Clause::new(Source::FinishingGuides, "");
const TEXTBOOK: Clause = Clause::new(Source::FinishingTextbook, "");
const COVERAGE: Clause = Clause::new(Source::CoveragePages, "");
const SOLIDS: Clause = Clause::new(Source::SolidsColumn, "");
const DRY_FILM: Clause = Clause::new(Source::DryFilmPage, "");
const HANDBOOK: Clause = Clause::new(Source::WoodHandbook2010, "ch. 16");
const TRADE: Clause = Clause::new(Source::CommonPractice, "");
const AT_5_MIL: Clause = Clause::new(Source::FilmArithmetic, "127 µm wet at these volume solids");

const fn seen(low: f64, high: f64, clause: Clause) -> Option<FinishRange> {
    Some(FinishRange { low, high, evidence: Evidence::Seen, clause })
}

const fn recalled(low: f64, high: f64, clause: Clause) -> Option<FinishRange> {
    Some(FinishRange { low, high, evidence: Evidence::Recalled, clause })
}

const fn derived(low: f64, high: f64, clause: Clause) -> Option<FinishRange> {
    Some(FinishRange { low, high, evidence: Evidence::Derived, clause })
}

const fn practice(low: f64, high: f64) -> Option<FinishRange> {
    Some(FinishRange { low, high, evidence: Evidence::CommonPractice, clause: TRADE })
}

const fn european(applies_to: &'static str, limit_g_per_l: f64, part: &'static str) -> VocLimit {
    let clause = Clause::new(Source::VocDirective, part);
    VocLimit { applies_to, limit_g_per_l, counting: VocCounting::ReadyToUse, clause }
}

const fn south_coast(applies_to: &'static str, limit_g_per_l: f64) -> VocLimit {
    let clause = Clause::new(Source::SouthCoast1113, "");
    VocLimit { applies_to, limit_g_per_l, counting: VocCounting::LessWater, clause }
}

/// A class of which nothing is known but its name, to be filled in.
const fn blank(name: FinishName, kind: FinishKind, self_heating_rags: SelfHeatingRags) -> FinishClass {
    FinishClass {
        name,
        kind,
        dries_by: "",
        self_heating_rags,
        volume_solids_pct: None,
        spread_m2_per_l: None,
        dry_um_per_coat: None,
        total_dry_um: None,
        coats: None,
        touch_dry_h: None,
        recoat_h: None,
        full_cure_days: None,
        final_grit: None,
        voc_limits: &[],
        remark: "",
    }
}

static OIL_STAIN: FinishClass = FinishClass {
    dries_by: "evaporation of solvent, then oxidation",
    spread_m2_per_l: seen(4.9, 9.8, HANDBOOK),
    coats: recalled(1.0, 2.0, TRADE),
    recoat_h: seen(8.0, 48.0, GUIDES),
    final_grit: seen(180.0, 220.0, GUIDES),
    voc_limits: &[
        european("minimal-build woodstain, water-borne", 130.0, "Annex II A (f)"),
        european("minimal-build woodstain, solvent-borne", 700.0, "Annex II A (f)"),
        south_coast("stain", 100.0),
        south_coast("interior stain", 250.0),
    ],
    remark: "On saw-textured or weathered wood 2.4 to 4.9 m²/L. Outdoors the second coat goes on wet, 20 to 60 minutes \
             after the first. It keeps hardly any moisture out.",
    ..blank(FinishName::OilStain, FinishKind::Penetrating, SelfHeatingRags::SelfHeating)
};

static SPIRIT_DYE: FinishClass = FinishClass {
    dries_by: "evaporation of solvent",
    spread_m2_per_l: recalled(6.1, 8.0, TEXTBOOK),
    coats: recalled(1.0, 2.0, TRADE),
    recoat_h: recalled(0.25, 3.0, TEXTBOOK),
    final_grit: seen(180.0, 220.0, GUIDES),
    voc_limits: &[south_coast("stain", 100.0), south_coast("interior stain", 250.0)],
    remark: "The spread is recalled from a textbook table with little confidence: try it on scrap.",
    ..blank(FinishName::SpiritDye, FinishKind::Penetrating, SelfHeatingRags::NotSelfHeating)
};

static WATER_DYE: FinishClass = FinishClass {
    dries_by: "evaporation of water",
    spread_m2_per_l: recalled(8.6, 9.8, TEXTBOOK),
    coats: recalled(1.0, 2.0, TRADE),
    recoat_h: recalled(12.0, 24.0, TEXTBOOK),
    final_grit: seen(180.0, 220.0, GUIDES),
    remark: "Raise the grain with water and sand it off before. The spread is recalled from a textbook table with little \
             confidence: try it on scrap.",
    ..blank(FinishName::WaterDye, FinishKind::Penetrating, SelfHeatingRags::NotSelfHeating)
};

static WIPING_VARNISH: FinishClass = FinishClass {
    dries_by: "evaporation of solvent, then oxidation",
    volume_solids_pct: recalled(20.0, 28.0, Clause::new(Source::FilmArithmetic, "oil varnish cut one to one")),
    coats: recalled(3.0, 6.0, TRADE),
    recoat_h: seen(8.0, 24.0, GUIDES),
    full_cure_days: seen(30.0, 30.0, GUIDES),
    final_grit: practice(180.0, 220.0),
    voc_limits: &[european("trim varnish, solvent-borne", 400.0, "Annex II A (e)"), south_coast("varnish", 275.0)],
    remark: "The times are those of oil varnish; thinner coats are taken to be no slower. Count the coats by the film \
             wanted. No spread rate is published.",
    ..blank(FinishName::WipingVarnish, FinishKind::ThinFilm, SelfHeatingRags::SelfHeating)
};

static OIL_POLYURETHANE: FinishClass = FinishClass {
    dries_by: "evaporation of solvent, then oxidation",
    volume_solids_pct: recalled(40.0, 55.0, Clause::new(Source::FilmArithmetic, "solvent of 450 to 350 g/L")),
    spread_m2_per_l: seen(7.4, 14.7, COVERAGE),
    dry_um_per_coat: recalled(29.0, 58.0, Clause::new(Source::FilmArithmetic, "volume solids of 43 %")),
    coats: seen(2.0, 3.0, GUIDES),
    touch_dry_h: seen(3.0, 24.0, GUIDES),
    recoat_h: seen(6.0, 24.0, GUIDES),
    full_cure_days: seen(30.0, 30.0, GUIDES),
    final_grit: practice(180.0, 220.0),
    voc_limits: &[european("trim varnish, solvent-borne", 400.0, "Annex II A (e)"), south_coast("varnish", 275.0)],
    remark: "One coat a day is the usual plan.",
    ..blank(FinishName::OilPolyurethane, FinishKind::Film, SelfHeatingRags::SelfHeating)
};

static WATERBORNE_POLYURETHANE: FinishClass = FinishClass {
    dries_by: "evaporation of water, then coalescence",
    volume_solids_pct: recalled(25.0, 35.0, TRADE),
    spread_m2_per_l: seen(7.4, 14.7, COVERAGE),
    dry_um_per_coat: recalled(17.0, 47.0, Clause::new(Source::FilmArithmetic, "volume solids of 25 % and 35 %")),
    coats: seen(3.0, 4.0, GUIDES),
    touch_dry_h: seen(2.0, 8.0, GUIDES),
    recoat_h: seen(2.0, 6.0, GUIDES),
    full_cure_days: seen(20.0, 20.0, GUIDES),
    final_grit: practice(180.0, 220.0),
    voc_limits: &[european("trim varnish, water-borne", 130.0, "Annex II A (e)"), south_coast("varnish", 275.0)],
    remark: "Raise the grain with water and sand it off before. Above 90 % relative humidity it is extremely slow.",
    ..blank(FinishName::WaterbornePolyurethane, FinishKind::Film, SelfHeatingRags::NotSelfHeating)
};

static SHELLAC: FinishClass = FinishClass {
    dries_by: "evaporation of solvent; dissolves again",
    volume_solids_pct: recalled(17.0, 19.0, Clause::new(Source::FilmArithmetic, "two-pound cut")),
    spread_m2_per_l: recalled(7.4, 8.6, TEXTBOOK),
    dry_um_per_coat: recalled(21.0, 24.0, Clause::new(Source::FilmArithmetic, "volume solids of 18 %")),
    coats: seen(3.0, 10.0, GUIDES),
    touch_dry_h: seen(0.1, 0.1, GUIDES),
    recoat_h: seen(0.5, 2.0, GUIDES),
    final_grit: practice(180.0, 220.0),
    remark: "The cut decides the volume solids. Later coats wait 2 hours, with a rest of 12 hours after each three or \
             four. Avoid it above 70 % relative humidity.",
    ..blank(FinishName::Shellac, FinishKind::Film, SelfHeatingRags::NotSelfHeating)
};

static NITROCELLULOSE_LACQUER: FinishClass = FinishClass {
    dries_by: "evaporation of solvent; dissolves again",
    volume_solids_pct: seen(13.0, 21.0, SOLIDS),
    spread_m2_per_l: recalled(4.9, 7.4, TEXTBOOK),
    dry_um_per_coat: derived(17.0, 27.0, AT_5_MIL),
    total_dry_um: seen(75.0, 100.0, DRY_FILM),
    coats: derived(3.0, 6.0, Clause::new(Source::FilmArithmetic, "total over one coat")),
    touch_dry_h: seen(0.08, 0.25, GUIDES),
    recoat_h: seen(0.5, 1.0, GUIDES),
    full_cure_days: seen(7.0, 7.0, GUIDES),
    final_grit: practice(180.0, 220.0),
    remark: "Not above 127 µm in all: a thicker film risks going brittle. Shops recorded 2.5 to 5.8 m²/L with all losses.",
    ..blank(FinishName::NitrocelluloseLacquer, FinishKind::Film, SelfHeatingRags::NotSelfHeating)
};

static CONVERSION_VARNISH: FinishClass = FinishClass {
    dries_by: "reaction with a catalyst",
    volume_solids_pct: seen(30.0, 49.0, SOLIDS),
    dry_um_per_coat: derived(38.0, 62.0, AT_5_MIL),
    total_dry_um: seen(75.0, 100.0, DRY_FILM),
    coats: derived(2.0, 3.0, Clause::new(Source::FilmArithmetic, "total over one coat")),
    remark: "Pot life, recoat window and cure are the maker's. Not above 127 µm in all.",
    ..blank(FinishName::ConversionVarnish, FinishKind::Film, SelfHeatingRags::IfOilBased)
};

static DRYING_OIL: FinishClass = FinishClass {
    dries_by: "oxidation",
    volume_solids_pct: recalled(95.0, 100.0, TRADE),
    coats: seen(3.0, 4.0, GUIDES),
    touch_dry_h: seen(6.0, 8.0, GUIDES),
    recoat_h: seen(24.0, 72.0, GUIDES),
    full_cure_days: seen(21.0, 21.0, GUIDES),
    final_grit: seen(180.0, 220.0, GUIDES),
    remark: "It keeps hardly any moisture out after a week. No spread rate is published.",
    ..blank(FinishName::DryingOil, FinishKind::Penetrating, SelfHeatingRags::SelfHeating)
};

static HARDWAX_OIL: FinishClass = FinishClass {
    dries_by: "oxidation",
    coats: seen(2.0, 2.0, GUIDES),
    touch_dry_h: seen(6.0, 12.0, GUIDES),
    recoat_h: seen(8.0, 24.0, GUIDES),
    full_cure_days: seen(7.0, 21.0, GUIDES),
    final_grit: seen(120.0, 150.0, GUIDES),
    remark: "Wipe off the excess after 15 to 30 minutes. No spread rate is published that is free of a product.",
    ..blank(FinishName::HardwaxOil, FinishKind::PenetratingWithFilm, SelfHeatingRags::SelfHeating)
};

static EXTERIOR_PAINT: FinishClass = FinishClass {
    dries_by: "evaporation of water or solvent",
    dry_um_per_coat: derived(33.0, 43.0, Clause::new(Source::FilmArithmetic, "total over three coats")),
    total_dry_um: seen(100.0, 130.0, HANDBOOK),
    coats: seen(3.0, 3.0, HANDBOOK),
    recoat_h: seen(24.0, 48.0, HANDBOOK),
    final_grit: seen(50.0, 80.0, HANDBOOK),
    voc_limits: &[
        european("trim paint, water-borne", 130.0, "Annex II A (d)"),
        european("trim paint, solvent-borne", 300.0, "Annex II A (d)"),
    ],
    remark: "Primer and two top coats. The recoat time is that of a latex primer that holds back extractives; the grit is \
             for roughing flat-sawn faces after wetting them.",
    ..blank(FinishName::ExteriorPaint, FinishKind::Film, SelfHeatingRags::IfOilBased)
};

/// The row of a class.
pub(super) fn row(name: FinishName) -> &'static FinishClass {
    match name {
        FinishName::OilStain => &OIL_STAIN,
        FinishName::SpiritDye => &SPIRIT_DYE,
        FinishName::WaterDye => &WATER_DYE,
        FinishName::WipingVarnish => &WIPING_VARNISH,
        FinishName::OilPolyurethane => &OIL_POLYURETHANE,
        FinishName::WaterbornePolyurethane => &WATERBORNE_POLYURETHANE,
        FinishName::Shellac => &SHELLAC,
        FinishName::NitrocelluloseLacquer => &NITROCELLULOSE_LACQUER,
        FinishName::ConversionVarnish => &CONVERSION_VARNISH,
        FinishName::DryingOil => &DRYING_OIL,
        FinishName::HardwaxOil => &HARDWAX_OIL,
        FinishName::ExteriorPaint => &EXTERIOR_PAINT,
    }
}

/// Every class, in the order of the names.
pub(super) static CLASSES: [&FinishClass; 12] = [
    &OIL_STAIN,
    &SPIRIT_DYE,
    &WATER_DYE,
    &WIPING_VARNISH,
    &OIL_POLYURETHANE,
    &WATERBORNE_POLYURETHANE,
    &SHELLAC,
    &NITROCELLULOSE_LACQUER,
    &CONVERSION_VARNISH,
    &DRYING_OIL,
    &HARDWAX_OIL,
    &EXTERIOR_PAINT,
];
