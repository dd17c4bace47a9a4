//! The sheet, read back.

use proptest::prelude::*;

use super::super::read_back::{assert_legible, assert_on_the_sheet, shown};
use super::super::samples::{self, assert_balanced};
use super::scene::Scene;
use super::section_svg;
use crate::plan::plan;

#[test]
fn nothing_leaves_the_sheet_whatever_the_body() {
    for (name, plan) in samples::all() {
        assert_on_the_sheet(name, &section_svg(&plan));
    }
    assert_on_the_sheet("hostile", &section_svg(&samples::hostile()));
}

#[test]
fn no_text_stands_on_another() {
    for (name, plan) in samples::all() {
        // At 1:20 the cleat is smaller than the letters.
        if name == "huge" {
            continue;
        }
        assert_legible(name, &section_svg(&plan));
    }
}

#[test]
fn the_shelf_shows_the_sizes_that_a_carpenter_works_out() {
    let svg = section_svg(&samples::shelf());
    let shown = shown(&svg);
    for text in [
        "185",
        "215",
        // Inside: 185 less two boards of 20.
        "145",
        "45°",
        // 18 at 45° less twice 2 of blunting.
        "lift 14",
        // Screw of 90 less the strip of 18 less the lining of 12.5.
        "59.5",
        // Duct at 1580 above the body's top at 1350 + 185.
        "45",
        "1350",
        "1535",
        "front board, 20 thick",
        "boxed cable duct: 45 above the body, 90 out, not at mid length",
    ] {
        assert!(shown.iter().any(|one| one == text), "{text} is not in {shown:?}");
    }
    // Pair of halves: 90 less the kerf of 3.2 along a cut at 45°, hung from the inside of the top at 165.
    let lower_edge = 165.0 - (90.0 - 3.2 * 2.0_f64.sqrt());
    assert!(shown.contains(&format!("{lower_edge:.1}")), "{lower_edge}");
}

#[test]
fn lengths_are_written_in_inches_where_the_spec_asks() {
    let svg = section_svg(&samples::walnut());
    let shown = shown(&svg);
    for text in ["7 1/4\"", "9 1/2\"", "5 5/8\"", "front board, 13/16\" thick"] {
        assert!(shown.iter().any(|one| one == text), "{text} is not in {shown:?}");
    }
    assert!(svg.contains("width=\"215.9mm\""));
}

#[test]
fn the_cut_is_the_outer_section_less_the_hollow() {
    let plan = samples::shelf();
    let scene = Scene::of(&plan);
    let area = |ring: &[super::scene::Yz]| {
        let pairs = ring.iter().zip(ring.iter().cycle().skip(1));
        0.5 * pairs.map(|(a, b)| a.y * b.z - b.y * a.z).sum::<f64>().abs()
    };
    let sum: f64 = scene.pieces.iter().map(|piece| area(&piece.ring)).sum();
    assert!((sum - (185.0 * 215.0 - 145.0 * 195.0)).abs() < 1e-6);
    // Front, top and bottom each show one face of the body's outside: its height, and twice its depth.
    let shows = scene.pieces.iter().flat_map(|piece| &piece.shows);
    let shown: f64 = shows.map(|[a, b]| (a.y - b.y).abs() + (a.z - b.z).abs()).sum();
    assert!((shown - (185.0 + 2.0 * 215.0)).abs() < 1e-9);
}

#[test]
fn boards_of_unequal_thickness_have_a_bevel_each() {
    let (_, plan) = samples::all().into_iter().find(|(name, _)| *name == "unequal boards").unwrap();
    let scene = Scene::of(&plan);
    let notes: Vec<_> = scene.mitres.iter().map(|mitre| mitre.notes.clone()).collect();
    // Square corner, 40 against 20: the seam is the diagonal of the two thicknesses; tan⁻¹(20/40) = 26.6°, and 12: 16.7°.
    assert_eq!(notes, [["front 26.6°", "top 63.4°"], ["front 16.7°", "bottom 73.3°"]]);
}

#[test]
fn a_body_without_a_cleat_or_a_wall_is_drawn_all_the_same() {
    let (_, plan) = samples::all().into_iter().find(|(name, _)| *name == "boxed in").unwrap();
    assert!(plan.cleat.is_none());
    let shown = shown(&section_svg(&plan));
    assert!(!shown.iter().any(|text| text.starts_with("lift") || text.contains("screw")));
}

#[test]
fn names_stay_text() {
    let svg = section_svg(&samples::hostile());
    for raw in ["<script", "<img", "</title><", "\u{202e}"] {
        assert!(!svg.contains(raw), "{raw}");
    }
    assert!(svg.contains("&lt;script&gt;"));
}

#[test]
fn a_plan_with_numbers_that_are_none_gives_a_drawing_without_them() {
    let mut plan = samples::shelf();
    plan.mass.centre_mm = [f64::NAN; 3];
    plan.cleat.as_mut().unwrap().screw_row_mm = f64::INFINITY;
    let svg = section_svg(&plan);
    assert_balanced(&svg);
    assert!(!svg.contains("NaN") && !svg.contains("inf"));
    plan.spec.body.legs.clear();
    plan.panels.clear();
    assert_balanced(&section_svg(&plan));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn any_body_fits_its_sheet(
        length in 50.0..5000.0_f64, height in 15.0..2000.0_f64, depth in 15.0..2000.0_f64,
        front in 1.0..60.0_f64, top in 1.0..60.0_f64, bottom in 1.0..60.0_f64,
    ) {
        let limit = 0.3 * height.min(depth).min(length);
        let boards = [front, top, bottom].map(|thickness: f64| thickness.min(limit));
        let mut spec = samples::spec("any", samples::leg(length, height, depth, boards));
        spec.cleat.screws.row_up_mm = 5.0;
        spec.site = Some(samples::site(vec![samples::obstruction("near", 0.0, 900.0, 1360.0 + height, 80.0)]));
        if let Ok(plan) = plan(&spec) {
            assert_on_the_sheet("any", &section_svg(&plan));
        }
    }
}
