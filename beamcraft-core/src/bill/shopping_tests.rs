use super::*;
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
    assert_eq!(ids, ["boards_1", "frame_wood", "cleat_strip", "wall_screws", "lock", "glue", "discs", "finish"]);
    assert_eq!(line(&list, "wall_screws").greatest_quantity, 3.0);
    assert_eq!((list.lumber.len(), list.lumber[0].panels.len()), (1, 5));
    // 20 mm does not come out of 4/4 surfaced (20.6 mm) only when flattening takes more than 0.6 mm.
    assert_eq!(list.lumber[0].rough_mm, 25.4);
    assert!(list.cost.is_none() && list.not_determined.is_empty());
    assert_eq!(list.without_price.len(), 8);
    assert!(list.cautions.iter().any(|caution| caution.about == "rags"), "oil polyurethane");
}

#[test]
fn the_walnut_beam_is_bought_by_the_board_foot() {
    let list = shopping_list(&input(WALNUT)).expect("a list");
    assert_eq!(line(&list, "boards_1").unit, "board foot");
    assert!(!list.not_determined.is_empty());
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
    fn a_better_yield_never_needs_more(yields in (0.05..1.0_f64, 0.05..1.0_f64), allowance in 0.0..200.0_f64) {
        let mut job = input(ASH);
        job.buying.length_allowance_mm = allowance;
        (job.buying.least_yield, job.buying.greatest_yield) = (yields.0.min(yields.1), yields.0.max(yields.1));
        let need = &shopping_list(&job).unwrap().lumber[0];
        prop_assert!(need.net_m3 <= need.least_m3 && need.least_m3 <= need.greatest_m3);
        prop_assert!(need.longest_mm >= 1830.0 + allowance - 1e-9);
    }
}
