use super::*;
use crate::finish::hostile;
use proptest::prelude::*;

fn buy(needed_l: f64, can_sizes_l: &[f64], same_volume_l: f64) -> Result<CansToBuy, Error> {
    cans_to_buy(&CansToBuyInput { needed_l, can_sizes_l: can_sizes_l.to_vec(), same_volume_l })
}

fn counts(found: &CansToBuy) -> Vec<(f64, u32)> {
    found.cans.iter().map(|can| (can.size_l, can.count)).collect()
}

#[test]
fn nothing_needed_is_nothing_bought() {
    let found = buy(0.0, &[2.5, 0.75], 0.01).unwrap();
    assert_eq!((found.can_count, found.bought_l, found.leftover_l), (0, 0.0, 0.0));
    assert_eq!(counts(&found), [(2.5, 0), (0.75, 0)]);
}

#[test]
fn the_greedy_choice_is_not_always_the_best() {
    // Largest first would take 2.5 + 0.75; two of 1.5 give less.
    let found = buy(3.0, &[0.75, 1.5, 2.5], 0.0).unwrap();
    assert_eq!(counts(&found), [(2.5, 0), (1.5, 2), (0.75, 0)]);
    assert_eq!(found.leftover_l, 0.0);
}

#[test]
fn four_quarts_do_not_beat_a_gallon_by_a_millilitre() {
    let labels = [0.946, 3.785];
    let strict = buy(3.7, &labels, 0.0).unwrap();
    assert_eq!((strict.bought_l, strict.can_count), (3.784, 4));
    let shop = buy(3.7, &labels, 0.01).unwrap();
    assert_eq!((shop.bought_l, shop.can_count, shop.least_possible_l), (3.785, 1, 3.784));
}

#[test]
fn sizes_given_twice_count_once() {
    let found = buy(5.0, &[2.5, 2.5, 2.500_000_000_1, 2.5], 0.01).unwrap();
    assert_eq!(counts(&found), [(2.5, 2)]);
}

#[test]
fn a_whole_number_of_cans_is_not_missed_by_rounding() {
    // 3 × 0.1 is a hair more than 0.3, and 0.29 a hair less than 290 millilitres.
    assert_eq!(buy(0.1 + 0.2, &[0.1], 0.0).unwrap().can_count, 3);
    assert_eq!(buy(0.29, &[0.29], 0.0).unwrap().can_count, 1);
    assert_eq!(buy(2.500_5, &[2.5], 0.0).unwrap().can_count, 2);
}

#[test]
fn a_huge_need_is_met_with_largest_cans() {
    let found = buy(1e6, &[0.375, 0.75, 2.5, 20.0], 0.01).unwrap();
    assert_eq!((found.bought_l, found.can_count), (1e6, 50_000));
    let found = buy(999_999.9, &[0.01], 0.0).unwrap();
    assert_eq!((found.can_count, found.bought_l), (99_999_990, 999_999.9));
}

#[test]
fn what_cannot_be_searched_is_refused() {
    let fault = buy(1e6, &[999.999, 999.998], 0.0).expect_err("refused");
    assert_eq!((fault.code(), fault.field()), (ErrorCode::NotSupported, "can_sizes_l"));
    let primes: Vec<f64> = (0..64).map(|k| 0.011 + f64::from(k) * 0.002).collect();
    assert_eq!(buy(4_000.0, &primes, 0.0).map(|found| found.leftover_l).unwrap(), 0.0);
}

#[test]
fn every_wrong_size_is_named() {
    let fault = buy(f64::NAN, &[1.0, 0.0, f64::INFINITY], 0.01).expect_err("refused");
    let paths: Vec<_> = fault.details().iter().map(|detail| (detail.code, detail.path.as_str())).collect();
    let expected = [
        (ErrorCode::NotFinite, "needed_l"),
        (ErrorCode::OutOfRange, "can_sizes_l[1]"),
        (ErrorCode::NotFinite, "can_sizes_l[2]"),
    ];
    assert_eq!(paths, expected);
    assert_eq!(buy(1.0, &[], 0.01).expect_err("refused").field(), "can_sizes_l");
    assert_eq!(buy(1.0, &[1.0; 65], 0.01).expect_err("refused").code(), ErrorCode::OutOfRange);
}

/// Every choice of up to `most` cans, as (total, cans).
fn all_choices(sizes: &[u64], most: u32) -> Vec<(u64, u32)> {
    let mut found = vec![(0, 0)];
    for size in sizes {
        let grown = found.iter().flat_map(|(total, count)| {
            (0..=most - count).map(move |more| (total + u64::from(more) * size, count + more))
        });
        found = grown.collect();
    }
    found
}

proptest! {
    #[test]
    fn no_choice_of_cans_is_better(
        needed in 0..60_u64, sizes in prop::collection::vec(10..40_u64, 1..5), same in 0..8_u64,
    ) {
        let litres: Vec<f64> = sizes.iter().map(|size| *size as f64 / 1000.0).collect();
        let found = buy(needed as f64 / 1000.0, &litres, same as f64 / 1000.0).unwrap();
        let enough: Vec<_> = all_choices(&sizes, 7).into_iter().filter(|(total, _)| *total >= needed).collect();
        let least = enough.iter().map(|(total, _)| *total).min().unwrap();
        let close = enough.iter().filter(|(total, _)| *total <= least + same);
        let (count, total) = close.map(|(total, count)| (*count, *total)).min().unwrap();
        prop_assert_eq!((found.can_count, found.bought_l), (count, total as f64 / 1000.0));
        prop_assert_eq!(found.least_possible_l, least as f64 / 1000.0);
    }

    #[test]
    fn taking_largest_cans_for_sure_loses_nothing(
        needed in 0..3_000_u64, sizes in prop::collection::btree_set(1..12_u64, 1..4), same in 0..4_u64,
    ) {
        let mut sizes: Vec<u64> = sizes.into_iter().collect();
        sizes.reverse();
        let measure = sizes.iter().copied().fold(0, common_measure);
        let sizes: Vec<u64> = sizes.iter().map(|size| size / measure).collect();
        let found = search(&sizes, needed, same).unwrap();
        // The plain table over the whole need, without the short cut.
        let top = (needed + sizes[0] + same) as usize;
        let mut fewest = vec![UNREACHABLE; top + 1];
        fewest[0] = 0;
        for total in 1..=top {
            for size in sizes.iter().map(|size| *size as usize).filter(|size| *size <= total) {
                fewest[total] = fewest[total].min(fewest[total - size].saturating_add(1));
            }
        }
        let least = (needed as usize..=top).find(|total| fewest[*total] < UNREACHABLE).unwrap();
        let best = (least..=least + same as usize).map(|total| (fewest[total], total)).min().unwrap();
        prop_assert_eq!((found.counts.iter().sum::<u32>(), found.total as usize), best);
        prop_assert_eq!(found.least as usize, least);
        let sum: u64 = found.counts.iter().zip(&sizes).map(|(count, size)| u64::from(*count) * size).sum();
        prop_assert_eq!(sum, found.total);
    }

    #[test]
    fn any_list_gives_cans_that_cover_the_need_or_an_error(
        needed_l in hostile::number(),
        can_sizes_l in prop::collection::vec(prop_oneof![hostile::number(), 0.3..25.0_f64], 0..5),
        same_volume_l in hostile::number(),
    ) {
        // Searches near the limit take a second each in a debug build; a few hundred litres show the same.
        let needed_l = if needed_l > 500.0 { needed_l * 1e-3 } else { needed_l };
        if let Ok(found) = buy(needed_l, &can_sizes_l, same_volume_l) {
            let sum: f64 = found.cans.iter().map(|can| can.size_l * f64::from(can.count)).sum();
            prop_assert!(found.bought_l.is_finite() && (sum - found.bought_l).abs() <= 1e-9 * (1.0 + sum));
            prop_assert!(found.bought_l >= needed_l - 1e-8 && found.leftover_l >= 0.0);
            prop_assert!(found.bought_l >= found.least_possible_l);
            prop_assert!(found.cans.is_sorted_by(|a, b| a.size_l > b.size_l));
        }
    }
}
