use super::*;
use crate::finish::{ClampPressure, ClampedWood};
use proptest::prelude::*;

const ASH: &str = include_str!("../../examples/specs/ash_shelf_beam.json");
const WALNUT: &str = include_str!("../../examples/specs/walnut_beam.json");

fn input(spec: &str) -> ShoppingListInput {
    crate::json::read(&format!(r#"{{"spec": {spec}}}"#)).expect("a job")
}

fn line<'a>(list: &'a ShoppingList, id: &str) -> &'a ShoppingLine {
    list.lines.iter().find(|line| line.id == id).expect("on the list")
}

#[test]
fn the_ash_beam_needs_what_its_plan_says() {
    let mut job = input(ASH);
    job.buying.glue_spread_g_per_m2 = Some(180.0);
    job.buying.area_a_disc_m2 = Some(0.4);
    let list = shopping_list(&job).expect("a list");
    let ids: Vec<_> = list.lines.iter().map(|line| line.id.as_str()).collect();
    let wood = ["boards_1", "frame_wood", "cleat_strip", "wall_screws", "lock", "glue", "discs", "filler", "finish"];
    assert_eq!(ids, wood);
    assert_eq!(line(&list, "wall_screws").greatest_quantity, 3.0);
    assert_eq!((list.lumber.len(), list.lumber[0].panels.len()), (1, 5));
    // 20 mm does not come out of 4/4 surfaced (20.6 mm) only when flattening takes more than 0.6 mm.
    assert_eq!(list.lumber[0].rough_mm, 25.4);
    assert!(list.cost.is_none() && list.not_determined.is_empty());
    assert_eq!(list.without_price.len(), 9);
    assert!(list.cautions.iter().any(|caution| caution.about == "rags"), "oil polyurethane");
}

#[test]
fn the_walnut_beam_is_bought_by_the_board_foot() {
    let list = shopping_list(&input(WALNUT)).expect("a list");
    assert_eq!(line(&list, "boards_1").unit, "board foot");
    assert!(!list.not_determined.is_empty());
}

#[test]
fn seams_that_the_saw_leaves_open_ask_for_filler() {
    let mut job = input(ASH);
    let accuracy = r#"{"tilt_sd_deg": 0.2, "burnish_gap_mm": 0.1, "filler_gap_mm": 0.4, "samples": 4000}"#;
    job.spec.accuracy = Some(crate::json::read(accuracy).expect("an accuracy"));
    let list = shopping_list(&job).expect("a list");
    let filler = line(&list, "filler");
    // A wedge as wide as the burnished gap, and one as wide as filler will do.
    assert!((filler.greatest_quantity / filler.least_quantity - 4.0).abs() < 1e-9);
    // No more than all seams (two of 1830 mm, four to six of the returns) filled to the depth of the mitre, 28.3 mm.
    assert!(filler.greatest_quantity < 0.5 * 0.4 * 28.3 * (2.0 * 1830.0 + 6.0 * 215.0) / 1000.0);
    assert!(filler.least_quantity > 0.0);
    job.spec.accuracy = Some(crate::json::read(&accuracy.replace("0.2,", "0.001,")).expect("an accuracy"));
    let list = shopping_list(&job).expect("a list");
    assert!(list.lines.iter().all(|line| line.id != "filler"), "every seam is burnished shut");
    job.spec.accuracy = None;
    let list = shopping_list(&job).expect("a list");
    assert!(list.not_determined.iter().any(|text| text.starts_with("filler")));
}

#[test]
fn tape_reaches_little_of_the_pressure_that_ash_wants() {
    let mut job = input(ASH);
    let tape =
        ClampsAtHand { clamp_force_n: 50.0, head_width_mm: 48.0, head_to_seam_mm: 20.0, wood: ClampedWood::Hard };
    job.buying.clamps = Some(tape);
    job.buying.finish_voc_g_per_l = Some(450.0);
    let list = shopping_list(&job).expect("a list");
    let clamps = list.clamps.expect("clamps");
    assert_eq!(clamps.reached, ClampPressure::Low);
    // The seam of 1830 mm by 20 mm / cos 45°.
    let force_n = clamps.advised_low_mpa * 1830.0 * 20.0 * 2.0_f64.sqrt();
    assert!((clamps.force_low_n / force_n - 1.0).abs() < 1e-12);
    let litres = line(&list, "finish").greatest_quantity;
    assert!((list.solvent.expect("a label").emitted_g / (450.0 * litres) - 1.0).abs() < 1e-12);
    job.buying.clamps = Some(ClampsAtHand { clamp_force_n: 0.0, ..tape });
    assert_eq!(shopping_list(&job).expect_err("no force").field(), "buying.clamps.clamp_force_n");
}

#[test]
fn a_price_of_nothing_on_the_list_is_refused_with_the_nearest_name() {
    let mut job = input(ASH);
    let price = |line: &str| LinePrice { line: line.to_owned(), least_price: 1.0, greatest_price: None, package: None };
    job.prices = vec![price("wall_screw"), price("lock"), price("lock")];
    let fault = shopping_list(&job).expect_err("refused");
    let paths: Vec<_> = fault.details().iter().map(|detail| detail.path.as_str()).collect();
    assert_eq!(paths, ["prices[0].line", "prices[2].line"]);
    assert!(fault.to_string().contains("did you mean wall_screws?"), "{fault}");
}

#[test]
fn faults_of_the_spec_and_of_the_rest_come_together() {
    let mut job = input(ASH);
    job.buying.least_yield = 0.0;
    job.spec.wood.species = "unobtainium".to_owned();
    let fault = shopping_list(&job).expect_err("refused");
    let paths: Vec<_> = fault.details().iter().map(|detail| detail.path.as_str()).collect();
    assert_eq!(paths, ["buying.least_yield", "spec.wood.species"]);
    let mut job = input(ASH);
    (job.buying.least_yield, job.buying.greatest_yield) = (0.8, 0.5);
    assert_eq!(shopping_list(&job).expect_err("swapped").field(), "buying.greatest_yield");
}

#[test]
fn hours_and_priced_lines_are_one_sum() {
    let mut job = input(ASH);
    job.prices =
        vec![LinePrice { line: "lock".to_owned(), least_price: 3.0, greatest_price: Some(5.0), package: None }];
    job.other_lines = vec![CostLine {
        name: "making".to_owned(),
        asked_by: "order of work".to_owned(),
        kind: CostKind::Labour,
        unit: "hour".to_owned(),
        least_quantity: 10.0,
        greatest_quantity: Some(12.0),
        package: None,
        least_price: 50.0,
        greatest_price: None,
    }];
    let cost = shopping_list(&job).expect("a list").cost.expect("priced");
    assert_eq!((cost.least_total, cost.greatest_total), (503.0, 605.0));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]
    #[test]
    fn a_better_yield_never_needs_more(yields in (0.05..1.0_f64, 0.05..1.0_f64), trim in 0.0..200.0_f64) {
        let mut job = input(ASH);
        job.spec.saw.end_trim_mm = trim;
        (job.buying.least_yield, job.buying.greatest_yield) = (yields.0.min(yields.1), yields.0.max(yields.1));
        let need = &shopping_list(&job).unwrap().lumber[0];
        prop_assert!(need.net_m3 <= need.least_m3 && need.least_m3 <= need.greatest_m3);
        prop_assert!(need.longest_mm >= 1830.0 + 2.0 * trim - 1e-9);
    }
}
