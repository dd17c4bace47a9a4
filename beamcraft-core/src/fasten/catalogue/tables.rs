//! Tables of the catalogue.

use super::{CatalogueFastener, FastenerFamily};
use crate::cite::{Evidence, Source};

/// Millimetres of a fraction of an inch, without the dust of a decimal factor.
const fn inch(numerator: u32, denominator: u32) -> f64 {
    (numerator * 254) as f64 / (denominator * 10) as f64
}

/// Millimetres of thousandths of an inch.
const fn mil(thousandths: u32) -> f64 {
    inch(thousandths, 1000)
}

const fn lag(
    designation: &'static str,
    nominal_mm: f64,
    root_mm: f64,
    flats_mm: f64,
    tip_mm: Option<f64>,
    threads: f64,
) -> CatalogueFastener {
    CatalogueFastener {
        root_diameter_mm: Some(root_mm),
        head_size_mm: Some(flats_mm),
        tip_length_mm: tip_mm,
        threads_per_inch: Some(threads),
        ..CatalogueFastener::plain(FastenerFamily::LagScrew, designation, nominal_mm, Source::AsmeB1821, Evidence::Seen)
    }
}

/// Lag screws: ASME B18.2.1 (seen on public pages); tips of NDS Table L2 (recalled, 1/2 in seen in use). Head: largest
/// width across the flats.
pub(super) const LAG_SCREWS: &[CatalogueFastener] = &[
    lag("No. 10", mil(190), mil(120), mil(281), None, 11.0),
    lag("1/4 in", mil(250), mil(173), mil(438), Some(inch(5, 32)), 10.0),
    lag("5/16 in", inch(5, 16), mil(227), mil(500), Some(inch(3, 16)), 9.0),
    lag("3/8 in", mil(375), mil(265), mil(562), Some(inch(7, 32)), 7.0),
    lag("7/16 in", inch(7, 16), mil(328), mil(625), Some(inch(9, 32)), 7.0),
    lag("1/2 in", mil(500), mil(371), mil(750), Some(inch(5, 16)), 6.0),
    lag("5/8 in", mil(625), mil(471), mil(938), Some(inch(13, 32)), 5.0),
    lag("3/4 in", mil(750), mil(579), mil(1125), Some(mil(500)), 4.5),
    lag("7/8 in", mil(875), mil(683), mil(1312), Some(inch(19, 32)), 4.0),
    lag("1 in", mil(1000), mil(780), mil(1500), Some(inch(11, 16)), 3.5),
];

const fn nail(
    family: FastenerFamily,
    designation: &'static str,
    nominal_mm: f64,
    head_mm: f64,
    length_mm: f64,
    evidence: Evidence,
) -> CatalogueFastener {
    CatalogueFastener {
        head_size_mm: Some(head_mm),
        length_mm: Some(length_mm),
        tip_length_mm: Some(2.0 * nominal_mm),
        ..CatalogueFastener::plain(family, designation, nominal_mm, Source::AstmF1667, evidence)
    }
}

/// Common, box and sinker nails: NDS Table L4 after ASTM F1667; head diameters recalled in every row.
pub(super) const NAILS: &[CatalogueFastener] = &[
    nail(FastenerFamily::CommonNail, "6d", mil(113), mil(266), mil(2000), Evidence::Seen),
    nail(FastenerFamily::CommonNail, "7d", mil(113), mil(266), mil(2250), Evidence::Recalled),
    nail(FastenerFamily::CommonNail, "8d", mil(131), mil(281), mil(2500), Evidence::Seen),
    nail(FastenerFamily::CommonNail, "10d", mil(148), mil(312), mil(3000), Evidence::Seen),
    nail(FastenerFamily::CommonNail, "12d", mil(148), mil(312), mil(3250), Evidence::Seen),
    nail(FastenerFamily::CommonNail, "16d", mil(162), mil(344), mil(3500), Evidence::Seen),
    nail(FastenerFamily::CommonNail, "20d", mil(192), mil(406), mil(4000), Evidence::Seen),
    nail(FastenerFamily::CommonNail, "30d", mil(207), mil(438), mil(4500), Evidence::Recalled),
    nail(FastenerFamily::CommonNail, "40d", mil(225), mil(469), mil(5000), Evidence::Recalled),
    nail(FastenerFamily::CommonNail, "50d", mil(244), mil(500), mil(5500), Evidence::Recalled),
    nail(FastenerFamily::CommonNail, "60d", mil(263), mil(531), mil(6000), Evidence::Recalled),
    nail(FastenerFamily::BoxNail, "6d", mil(99), mil(266), mil(2000), Evidence::Recalled),
    nail(FastenerFamily::BoxNail, "7d", mil(99), mil(266), mil(2250), Evidence::Recalled),
    nail(FastenerFamily::BoxNail, "8d", mil(113), mil(297), mil(2500), Evidence::Seen),
    nail(FastenerFamily::BoxNail, "10d", mil(128), mil(312), mil(3000), Evidence::Seen),
    nail(FastenerFamily::BoxNail, "12d", mil(128), mil(312), mil(3250), Evidence::Recalled),
    nail(FastenerFamily::BoxNail, "16d", mil(135), mil(344), mil(3500), Evidence::Seen),
    nail(FastenerFamily::BoxNail, "20d", mil(148), mil(375), mil(4000), Evidence::Recalled),
    nail(FastenerFamily::SinkerNail, "6d", mil(92), mil(234), mil(1875), Evidence::Recalled),
    nail(FastenerFamily::SinkerNail, "8d", mil(113), mil(266), mil(2375), Evidence::Recalled),
    nail(FastenerFamily::SinkerNail, "10d", mil(120), mil(281), mil(2875), Evidence::Recalled),
    nail(FastenerFamily::SinkerNail, "12d", mil(135), mil(312), mil(3125), Evidence::Recalled),
    nail(FastenerFamily::SinkerNail, "16d", mil(148), mil(344), mil(3250), Evidence::Recalled),
    nail(FastenerFamily::SinkerNail, "20d", mil(177), mil(375), mil(3750), Evidence::Recalled),
];

const fn ring(
    designation: &'static str,
    nominal_mm: f64,
    root_mm: f64,
    head_mm: f64,
    length_mm: f64,
    ring_mm: f64,
) -> CatalogueFastener {
    CatalogueFastener {
        root_diameter_mm: Some(root_mm),
        head_size_mm: Some(head_mm),
        length_mm: Some(length_mm),
        ring_length_mm: Some(ring_mm),
        ..CatalogueFastener::plain(
            FastenerFamily::PostFrameRingShankNail,
            designation,
            nominal_mm,
            Source::AwcDesignAid4,
            Evidence::Seen,
        )
    }
}

/// Post-frame ring shank nails: rings at least 2 1/4 in long up to 4 in of length, at least 3 in beyond.
pub(super) const RING_SHANK_NAILS: &[CatalogueFastener] = &[
    ring("0.135 in", mil(135), mil(128), inch(5, 16), mil(3000), mil(2250)),
    ring("0.135 in", mil(135), mil(128), inch(5, 16), mil(3500), mil(2250)),
    ring("0.148 in", mil(148), mil(140), inch(5, 16), mil(3000), mil(2250)),
    ring("0.148 in", mil(148), mil(140), inch(5, 16), mil(3500), mil(2250)),
    ring("0.148 in", mil(148), mil(140), inch(5, 16), mil(4000), mil(2250)),
    ring("0.148 in", mil(148), mil(140), inch(5, 16), mil(4500), mil(3000)),
    ring("0.177 in", mil(177), mil(169), mil(375), mil(3000), mil(2250)),
    ring("0.177 in", mil(177), mil(169), mil(375), mil(3500), mil(2250)),
    ring("0.177 in", mil(177), mil(169), mil(375), mil(4000), mil(2250)),
    ring("0.177 in", mil(177), mil(169), mil(375), mil(4500), mil(3000)),
    ring("0.177 in", mil(177), mil(169), mil(375), mil(5000), mil(3000)),
    ring("0.177 in", mil(177), mil(169), mil(375), mil(6000), mil(3000)),
    ring("0.177 in", mil(177), mil(169), mil(375), mil(8000), mil(3000)),
    ring("0.200 in", mil(200), mil(193), inch(15, 32), mil(3500), mil(2250)),
    ring("0.200 in", mil(200), mil(193), inch(15, 32), mil(4000), mil(2250)),
    ring("0.200 in", mil(200), mil(193), inch(15, 32), mil(4500), mil(3000)),
    ring("0.200 in", mil(200), mil(193), inch(15, 32), mil(5000), mil(3000)),
    ring("0.200 in", mil(200), mil(193), inch(15, 32), mil(6000), mil(3000)),
    ring("0.200 in", mil(200), mil(193), inch(15, 32), mil(8000), mil(3000)),
    ring("0.207 in", mil(207), mil(199), inch(15, 32), mil(4000), mil(2250)),
    ring("0.207 in", mil(207), mil(199), inch(15, 32), mil(4500), mil(3000)),
    ring("0.207 in", mil(207), mil(199), inch(15, 32), mil(5000), mil(3000)),
    ring("0.207 in", mil(207), mil(199), inch(15, 32), mil(6000), mil(3000)),
    ring("0.207 in", mil(207), mil(199), inch(15, 32), mil(8000), mil(3000)),
];

const fn thin(
    designation: &'static str,
    thread_mm: f64,
    body_mm: f64,
    head_mm: f64,
    countersunk_head_mm: Option<f64>,
) -> CatalogueFastener {
    CatalogueFastener {
        countersunk_head_mm,
        body_diameter_mm: Some(body_mm),
        head_size_mm: Some(head_mm),
        ..CatalogueFastener::plain(
            FastenerFamily::ThinBodyWoodScrew,
            designation,
            thread_mm,
            Source::ScrewPages,
            Evidence::Seen,
        )
    }
}

/// Production wood screws: largest thread, body, pan head and countersunk head diameter.
pub(super) const THIN_BODY: &[CatalogueFastener] = &[
    thin("No. 4", mil(116), mil(95), mil(219), None),
    thin("No. 6", mil(142), mil(118), mil(270), Some(mil(279))),
    thin("No. 8", mil(168), mil(136), mil(322), Some(mil(332))),
    thin("No. 10", mil(194), mil(157), mil(373), Some(mil(385))),
    thin("No. 12", mil(220), mil(176), mil(425), Some(mil(438))),
    thin("No. 14", mil(246), mil(201), mil(492), Some(mil(507))),
];

const fn washer(
    designation: &'static str,
    thread_mm: f64,
    root_mm: f64,
    washer_mm: f64,
    threads: f64,
) -> CatalogueFastener {
    CatalogueFastener {
        root_diameter_mm: Some(root_mm),
        head_size_mm: Some(washer_mm),
        threads_per_inch: Some(threads),
        ..CatalogueFastener::plain(
            FastenerFamily::WasherHeadScrew,
            designation,
            thread_mm,
            Source::AsmeB1864,
            Evidence::Recalled,
        )
    }
}

/// Tapping screws with hexagon washer head, thread AB: largest thread, root and washer diameter.
pub(super) const WASHER_HEAD: &[CatalogueFastener] = &[
    washer("No. 6", mil(139), mil(104), mil(328), 20.0),
    washer("No. 8", mil(166), mil(122), mil(348), 18.0),
    washer("No. 10", mil(189), mil(141), mil(414), 16.0),
    washer("No. 12", mil(215), mil(164), mil(432), 14.0),
    washer("1/4 in", mil(246), mil(192), mil(520), 14.0),
];

const fn trim(designation: &'static str, nominal_mm: f64) -> CatalogueFastener {
    CatalogueFastener::plain(
        FastenerFamily::TrimHeadScrew,
        designation,
        nominal_mm,
        Source::CommonPractice,
        Evidence::CommonPractice,
    )
}

/// Trim-head screws in the gauges of the trade; thread root and head are in no standard.
pub(super) const TRIM_HEAD: &[CatalogueFastener] =
    &[trim("No. 7", mil(151)), trim("No. 8", mil(164)), trim("No. 9", mil(177)), trim("No. 10", mil(190))];

const fn metric_screw(
    family: FastenerFamily,
    designation: &'static str,
    nominal_mm: f64,
    root_mm: f64,
) -> CatalogueFastener {
    CatalogueFastener {
        root_diameter_mm: Some(root_mm),
        ..CatalogueFastener::plain(family, designation, nominal_mm, Source::Din7998, Evidence::Recalled)
    }
}

/// Metric wood screws; that the range is 4 mm to 8 mm and the shank as thick as the thread was seen.
pub(super) const METRIC_WOOD_SCREWS: &[CatalogueFastener] = &[
    metric_screw(FastenerFamily::MetricWoodScrew, "4 mm", 4.0, 2.8),
    metric_screw(FastenerFamily::MetricWoodScrew, "4.5 mm", 4.5, 3.1),
    metric_screw(FastenerFamily::MetricWoodScrew, "5 mm", 5.0, 3.5),
    metric_screw(FastenerFamily::MetricWoodScrew, "6 mm", 6.0, 4.2),
    metric_screw(FastenerFamily::MetricWoodScrew, "8 mm", 8.0, 5.6),
];

/// Metric coach screws with hexagon head; that they start at 8 mm was seen.
pub(super) const METRIC_COACH_SCREWS: &[CatalogueFastener] = &[
    metric_screw(FastenerFamily::MetricCoachScrew, "8 mm", 8.0, 5.6),
    metric_screw(FastenerFamily::MetricCoachScrew, "10 mm", 10.0, 7.0),
    metric_screw(FastenerFamily::MetricCoachScrew, "12 mm", 12.0, 9.0),
    metric_screw(FastenerFamily::MetricCoachScrew, "16 mm", 16.0, 12.0),
    metric_screw(FastenerFamily::MetricCoachScrew, "20 mm", 20.0, 15.0),
];

const fn metric_nail(designation: &'static str, nominal_mm: f64, length_mm: f64) -> CatalogueFastener {
    CatalogueFastener {
        length_mm: Some(length_mm),
        ..CatalogueFastener::plain(
            FastenerFamily::MetricNail,
            designation,
            nominal_mm,
            Source::CommonPractice,
            Evidence::CommonPractice,
        )
    }
}

/// Round wire nails in the sizes of the trade; the heads are in no source at hand.
pub(super) const METRIC_NAILS: &[CatalogueFastener] = &[
    metric_nail("2.0 x 40", 2.0, 40.0),
    metric_nail("2.2 x 45", 2.2, 45.0),
    metric_nail("2.5 x 55", 2.5, 55.0),
    metric_nail("2.8 x 65", 2.8, 65.0),
    metric_nail("3.1 x 80", 3.1, 80.0),
    metric_nail("3.4 x 90", 3.4, 90.0),
    metric_nail("3.8 x 100", 3.8, 100.0),
    metric_nail("4.2 x 110", 4.2, 110.0),
    metric_nail("4.6 x 130", 4.6, 130.0),
    metric_nail("5.5 x 160", 5.5, 160.0),
    metric_nail("6.0 x 180", 6.0, 180.0),
];
