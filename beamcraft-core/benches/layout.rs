//! How long cut lists take as they grow from 10 to 10 000 parts, at two million steps each, and two of them on two cores.
//!
//! `cargo bench -p beamcraft-core --bench layout`. Every timed loop asserts its result.

#![allow(clippy::expect_used, missing_docs, reason = "a bench stops at the first wrong result")]

use std::hint::black_box;
use std::time::Duration;

use beamcraft_core::layout::{
    BarPart, BarStock, BoardPart, BoardPartTurn, BoardStock, CutListBarsInput, CutListBoardsInput, CutOrder, LayoutAim,
    cut_list_bars, cut_list_boards,
};
use criterion::{BenchmarkId, Criterion, Throughput, criterion_group, criterion_main};

const SIZES: [u32; 4] = [10, 100, 1_000, 10_000];
const STEPS_MILLION: f64 = 2.0;

/// As many parts, each of another length.
fn bars(parts: u32) -> CutListBarsInput {
    let length = |k: u32| 50.0 + f64::from(k * 7_919 % 9_973) * 0.1;
    let stock = BarStock { name: "2400".to_owned(), length_mm: 2_400.0, count: None, price: None, defects: Vec::new() };
    CutListBarsInput {
        stock: vec![stock],
        parts: (0..parts).map(|k| BarPart { name: format!("p{k}"), length_mm: length(k), count: 1 }).collect(),
        kerf_mm: 3.2,
        trim_mm: 5.0,
        steps_million: STEPS_MILLION,
    }
}

/// As many parts, ten of each size.
fn boards(parts: u32) -> CutListBoardsInput {
    let size = |k: u32, least: f64, most: u32| least + f64::from(k * 7_919 % most);
    let sheet = BoardStock {
        name: "sheet".to_owned(),
        length_mm: 2_440.0,
        width_mm: 1_220.0,
        count: None,
        price: None,
        defects: Vec::new(),
    };
    let parts = (0..parts / 10).map(|k| BoardPart {
        name: format!("p{k}"),
        length_mm: size(k, 150.0, 701),
        width_mm: size(k + 3, 60.0, 307),
        count: 10,
        turn: BoardPartTurn::AlongGrain,
        worth: None,
    });
    CutListBoardsInput {
        stock: vec![sheet],
        parts: parts.collect(),
        groups: Vec::new(),
        aim: LayoutAim::AllParts,
        order: CutOrder::Free,
        stages: None,
        kerf_mm: 3.2,
        trim_end_mm: 0.0,
        trim_edge_mm: 0.0,
        steps_million: STEPS_MILLION,
    }
}

fn cut_bars(input: &CutListBarsInput) -> f64 {
    let list = cut_list_bars(black_box(input)).expect("allowed");
    assert!(list.missing.is_empty());
    list.quality.value
}

fn cut_boards(input: &CutListBoardsInput) -> f64 {
    let list = cut_list_boards(black_box(input)).expect("allowed");
    assert!(list.missing.is_empty());
    list.quality.value
}

fn growth(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("cut_list_bars");
    for parts in SIZES {
        let input = bars(parts);
        group.throughput(Throughput::Elements(u64::from(parts)));
        group.bench_with_input(BenchmarkId::from_parameter(parts), &input, |b, input| b.iter(|| cut_bars(input)));
    }
    group.finish();
    let mut group = criterion.benchmark_group("cut_list_boards");
    for parts in SIZES {
        let input = boards(parts);
        group.throughput(Throughput::Elements(u64::from(parts)));
        group.bench_with_input(BenchmarkId::from_parameter(parts), &input, |b, input| b.iter(|| cut_boards(input)));
    }
    group.finish();
}

/// The lots of a batch are lists of their own: each runs on its own core.
fn both_cores(criterion: &mut Criterion) {
    let input = boards(1_000);
    let expected = cut_boards(&input);
    criterion.bench_function("two lists of 1000 parts, one after the other", |b| {
        b.iter(|| assert_eq!((cut_boards(&input), cut_boards(&input)), (expected, expected)));
    });
    criterion.bench_function("two lists of 1000 parts, on two threads", |b| {
        b.iter(|| {
            std::thread::scope(|scope| {
                let other = scope.spawn(|| cut_boards(&input));
                assert_eq!(cut_boards(&input), expected);
                assert_eq!(other.join().expect("no panic"), expected);
            });
        });
    });
}

criterion_group! {
    name = benches;
    config = Criterion::default().sample_size(10).warm_up_time(Duration::from_millis(300)).measurement_time(Duration::from_secs(2));
    targets = growth, both_cores
}
criterion_main!(benches);
