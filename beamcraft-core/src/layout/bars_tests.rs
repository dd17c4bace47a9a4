use core::ops::ControlFlow;

use proptest::prelude::*;

use super::*;
use crate::layout::{LayoutEnd, LayoutProof, checker};

fn stock(name: &str, length_mm: f64) -> BarStock {
    BarStock { name: name.to_owned(), length_mm, count: None, price: None, defects: Vec::new() }
}

fn part(name: &str, length_mm: f64, count: u32) -> BarPart {
    BarPart { name: name.to_owned(), length_mm, count }
}

fn input(stock: Vec<BarStock>, parts: Vec<BarPart>) -> CutListBarsInput {
    CutListBarsInput { stock, parts, kerf_mm: 3.2, trim_mm: 0.0, steps_million: 1.0 }
}

fn checked(input: &CutListBarsInput) -> CutListBars {
    let list = cut_list_bars(input).expect("allowed");
    let wrong = checker::bars(input, &list);
    assert!(wrong.is_empty(), "{wrong:#?}\n{input:?}\n{list:?}");
    list
}

#[test]
fn parts_that_fill_a_bar_to_the_last_kerf_share_it() {
    // Four of 597.6 mm and three kerfs of 3.2 mm are 2400 mm.
    let list = checked(&input(vec![stock("2400", 2400.0)], vec![part("rail", 597.6, 8)]));
    assert_eq!(list.bars.len(), 1, "both bars are cut alike");
    assert_eq!((list.bars[0].alike, list.bars[0].parts.len(), list.bars[0].offcut_mm), (2, 4, 0.0));
    assert_eq!(list.quality.proof, LayoutProof::Optimal);
    let list = checked(&input(vec![stock("2400", 2400.0)], vec![part("rail", 597.7, 8)]));
    assert_eq!(list.stock[0].count, 3);
}

#[test]
fn inches_that_fill_a_board_fill_it() {
    // Sixty-fourths have more digits than a micrometre.
    let each = 25.4 * (12.0 + 1.0 / 64.0);
    let mut list = input(vec![stock("board", 8.0 * each)], vec![part("piece", each, 8)]);
    list.kerf_mm = 0.0;
    assert_eq!(checked(&list).stock[0].count, 1);
}

#[test]
fn the_cheaper_bar_is_taken_and_its_number_kept() {
    let priced = |name: &str, length_mm, price, count| BarStock { price: Some(price), count, ..stock(name, length_mm) };
    let list = checked(&input(
        vec![priced("short", 1200.0, 5.0, Some(3)), priced("long", 2400.0, 12.0, None)],
        vec![part("a", 1000.0, 5)],
    ));
    // Three short ones for three parts, two parts from one long one.
    assert_eq!(list.quality.value, 27.0);
    assert_eq!(list.quality.proof, LayoutProof::Optimal);
}

#[test]
fn a_defect_divides_a_bar() {
    let flawed = BarStock {
        count: Some(1),
        defects: vec![BarDefect { from_mm: 900.0, to_mm: 950.0 }, BarDefect { from_mm: 1500.0, to_mm: 1500.0 }],
        ..stock("flawed", 2400.0)
    };
    let list = checked(&input(vec![flawed.clone()], vec![part("a", 890.0, 2), part("b", 540.0, 1)]));
    assert!(list.missing.is_empty(), "{list:?}");
    let refused = cut_list_bars(&input(vec![flawed], vec![part("a", 1000.0, 1)])).expect_err("no stretch is as long");
    assert!(refused.to_string().contains("parts[0].length_mm"), "{refused}");
    assert!(refused.to_string().contains("900 mm"), "{refused}");
}

#[test]
fn what_finds_no_bar_is_named() {
    let one = BarStock { count: Some(1), ..stock("only", 1000.0) };
    let list = checked(&input(vec![one], vec![part("a", 600.0, 3)]));
    assert_eq!(list.missing, vec![MissingPart { name: "a".to_owned(), count: 2 }]);
    assert_eq!((list.quality.proof, list.quality.bound), (LayoutProof::Incomplete, None));
}

#[test]
fn empty_lists_and_contradictions_are_refused_together() {
    let twice = BarStock { price: Some(1.0), ..stock("a", 100.0) };
    let refused = cut_list_bars(&input(vec![twice, stock("a", 200.0)], vec![])).expect_err("refused").to_string();
    for words in ["stock[1].name", "one part or more", "a price for every kind of stock"] {
        assert!(refused.contains(words), "{refused}");
    }
    let refused = cut_list_bars(&input(vec![], vec![part("a", f64::NAN, 1)])).expect_err("refused").to_string();
    assert!(refused.contains("parts[0].length_mm") && refused.contains("one kind of stock"), "{refused}");
    let refused =
        cut_list_bars(&input(vec![stock("a", 100.0)], vec![part("b", 10.0, 10_000); 6])).expect_err("refused");
    assert!(refused.to_string().contains("50 000"), "{refused}");
}

#[test]
fn a_search_tells_how_far_it_has_come_and_can_be_stopped() {
    // Lengths that do not divide the bar keep the search going for a while.
    let parts = (0..60).map(|k| part(&format!("p{k}"), 300.0 + f64::from(k * 37 % 211), 3)).collect();
    let long = CutListBarsInput { steps_million: 200.0, ..input(vec![stock("2400", 2400.0)], parts) };
    let mut calls = 0;
    let list = cut_list_bars_with_progress(&long, &mut |progress| {
        calls += 1;
        assert!(progress.steps <= 2 * progress.budget);
        ControlFlow::Break(())
    })
    .expect("allowed");
    assert_eq!((calls, list.quality.end), (1, LayoutEnd::Stopped));
    assert!(checker::bars(&long, &list).is_empty(), "a stopped search still gives a layout");
}

#[test]
fn ten_thousand_different_parts_are_laid_out_within_the_budget() {
    let parts = (0..10_000).map(|k| part(&format!("p{k}"), 50.0 + f64::from(k * 7919 % 9973) * 0.1, 1)).collect();
    let list = checked(&input(vec![stock("2400", 2400.0)], parts));
    assert!(list.missing.is_empty());
    assert!(list.quality.gap_pct.expect("whole") < 2.0, "{:?}", list.quality);
}

fn any_list() -> impl Strategy<Value = CutListBarsInput> {
    let stock = (
        1000.0..4000.0_f64,
        prop::option::of(1_u32..6),
        prop::collection::vec((0.0..4000.0_f64, 0.0..400.0_f64), 0..3),
    );
    let part = (20.0..990.0_f64, 1_u32..9);
    (
        prop::collection::vec(stock, 1..4),
        prop::collection::vec(part, 1..8),
        0.0..6.0_f64,
        0.0..4.0_f64,
        prop::bool::ANY,
        prop::bool::ANY,
    )
        .prop_map(|(stock, parts, kerf_mm, trim_mm, priced, flawed)| CutListBarsInput {
            stock: stock
                .into_iter()
                .enumerate()
                .map(|(k, (length_mm, count, defects))| BarStock {
                    name: format!("s{k}"),
                    length_mm,
                    count,
                    price: priced.then_some(length_mm * 0.01 + k as f64),
                    defects: defects
                        .into_iter()
                        .filter(|_| flawed)
                        .map(|(from_mm, size)| BarDefect { from_mm, to_mm: from_mm + size })
                        .collect(),
                })
                .collect(),
            parts: parts.into_iter().enumerate().map(|(k, (length_mm, count))| part_of(k, length_mm, count)).collect(),
            kerf_mm,
            trim_mm,
            steps_million: 0.1,
        })
}

/// Sizes that once were rounded up on the way to a bound.
#[test]
fn a_bar_with_a_defect_is_bounded_by_no_more_than_a_layout_with_a_wider_kerf() {
    let lengths = [(82.372, 7), (556.025, 5), (469.578, 3), (404.491, 1), (357.55, 2), (69.994, 4)];
    let flawed = BarStock { defects: vec![BarDefect { from_mm: 505.676, to_mm: 895.443 }], ..stock("s1", 1000.0) };
    let list = |kerf_mm| CutListBarsInput {
        stock: vec![stock("s0", 1873.423), flawed.clone(), stock("s2", 2386.684)],
        parts: lengths.iter().enumerate().map(|(k, (length_mm, count))| part_of(k, *length_mm, *count)).collect(),
        kerf_mm,
        trim_mm: 0.0,
        steps_million: 0.1,
    };
    let (narrow, wide) = (cut_list_bars(&list(3.785)).unwrap(), cut_list_bars(&list(4.109)).unwrap());
    assert!(narrow.quality.bound.unwrap() <= wide.quality.value, "{:?} {:?}", narrow.quality, wide.quality);
}

fn part_of(k: usize, length_mm: f64, count: u32) -> BarPart {
    part(&format!("p{k}"), length_mm, count)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(20))]

    #[test]
    fn every_layout_keeps_the_rules(list in any_list()) {
        if let Ok(answer) = cut_list_bars(&list) {
            let wrong = checker::bars(&list, &answer);
            prop_assert!(wrong.is_empty(), "{:#?}\n{:?}", wrong, answer);
        }
    }

    #[test]
    fn a_wider_kerf_never_beats_the_bound_of_a_narrower(list in any_list(), more in 0.0..3.0_f64) {
        let wider = CutListBarsInput { kerf_mm: list.kerf_mm + more, ..list.clone() };
        if let (Ok(narrow), Ok(wide)) = (cut_list_bars(&list), cut_list_bars(&wider))
            && let (Some(bound), true) = (narrow.quality.bound, wide.missing.is_empty())
        {
            prop_assert!(wide.quality.value >= bound - 1e-6, "{:?} {:?}", narrow.quality, wide.quality);
        }
    }

    #[test]
    fn the_order_of_the_parts_changes_no_proof(list in any_list()) {
        let turned = CutListBarsInput { parts: list.parts.iter().rev().cloned().collect(), ..list.clone() };
        if let (Ok(one), Ok(other)) = (cut_list_bars(&list), cut_list_bars(&turned)) {
            if one.quality.proof == LayoutProof::Optimal && other.quality.proof == LayoutProof::Optimal {
                prop_assert_eq!(one.quality.value, other.quality.value);
            }
            prop_assert_eq!(cut_list_bars(&list).expect("as before"), one, "the same on each run");
        }
    }

    #[test]
    fn any_number_is_taken_or_refused(
        bits in prop::array::uniform6(any::<u64>()),
        sane in prop::collection::vec(prop::bool::ANY, 6),
    ) {
        let usual = [2400.0, 10.0, 300.0, 3.2, 0.0, 0.01];
        let value = |k: usize| if sane[k] { usual[k] } else { f64::from_bits(bits[k]) };
        let list = CutListBarsInput {
            stock: vec![BarStock { price: Some(value(1)), defects: vec![BarDefect { from_mm: value(4), to_mm: value(4) }], ..stock("s", value(0)) }],
            parts: vec![part("p", value(2), 3)],
            kerf_mm: value(3),
            trim_mm: value(4),
            steps_million: value(5).min(0.05),
        };
        if let Ok(answer) = cut_list_bars(&list) {
            prop_assert!(answer.quality.value.is_finite());
            prop_assert!(checker::bars(&list, &answer).is_empty());
        }
    }
}
