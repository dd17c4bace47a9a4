use super::super::outside::Outside;
use super::*;
use crate::layout::engine::Dice;

fn kinds(dice: &mut Dice, n: usize, most: (usize, usize)) -> (Vec<Kind>, Vec<i64>, Vec<u32>) {
    let (mut kinds, mut worth, mut copies) = (Vec::new(), Vec::new(), Vec::new());
    for k in 0..n {
        let lying =
            Lying { kind: k as u32, turned: 0, w: 3 + dice.below(most.0) as i64, h: 3 + dice.below(most.1) as i64 };
        worth.push(lying.w * lying.h + dice.below(40) as i64);
        copies.push(1 + dice.below(3) as u32);
        kinds.push(Kind { lying: vec![lying], weight: 1, inner_stages: 0 });
    }
    (kinds, worth, copies)
}

/// Every cut at every whole number: slow, and independent of points, rises and grids.
fn plain(kinds: &[Kind], worth: &[i64], (w, h): (usize, usize)) -> Vec<Vec<i64>> {
    let mut value = vec![vec![0; h + 1]; w + 1];
    for x in 1..=w {
        for y in 1..=h {
            let fits = |lying: &Lying| lying.w as usize <= x && lying.h as usize <= y;
            let one = kinds.iter().zip(worth).filter(|(kind, _)| kind.lying.iter().any(fits)).map(|(_, worth)| *worth);
            let mut most = one.max().unwrap_or(0);
            for cut in 1..x {
                most = most.max(value[cut][y] + value[x - cut][y]);
            }
            for cut in 1..y {
                most = most.max(value[x][cut] + value[x][y - cut]);
            }
            value[x][y] = most;
        }
    }
    value
}

#[test]
fn both_grids_lose_nothing_against_cuts_at_every_whole_number() {
    let mut dice = Dice::new(4);
    for _ in 0..60 {
        let (kinds, worth, _) = kinds(&mut dice, 4, (12, 9));
        let (w, h) = (20 + dice.below(25) as i64, 15 + dice.below(25) as i64);
        let expected = plain(&kinds, &worth, (w as usize, h as usize))[w as usize][h as usize];
        let few = Grid::at_will(&kinds, (w, h), 1_000).unwrap();
        let many = Grid::of(&kinds, &[99; 4], &[(w, h)], 1_000).unwrap();
        assert!(few.work() <= many.work());
        for grid in [few, many] {
            let table = Table::new(&grid, &kinds, &worth, |_, _| i64::MAX);
            assert_eq!(table.of_sheet(w, h), expected, "{kinds:?} on {w} x {h}");
            let mut sum = 0;
            table.tree(Axis::X, w, h).parts(&mut |lying| sum += worth[lying.kind as usize]);
            assert_eq!(sum, expected, "the tree holds what the table says");
        }
    }
}

#[test]
fn a_limited_table_keeps_to_the_copies() {
    let mut dice = Dice::new(8);
    for _ in 0..60 {
        let (kinds, worth, copies) = kinds(&mut dice, 5, (12, 9));
        let (w, h) = (40, 30);
        let grid = Grid::of(&kinds, &copies, &[(w, h)], 1_000).unwrap();
        let table = Table::limited(&grid, &kinds, &worth, &copies);
        let (mut sum, mut counts) = (0, vec![0; kinds.len()]);
        table.tree(Axis::X, w, h).parts(&mut |lying| {
            sum += worth[lying.kind as usize];
            counts[lying.kind as usize] += 1;
        });
        assert_eq!(sum, table.of_sheet(w, h));
        assert!(counts.iter().zip(&copies).all(|(n, most)| n <= most), "{counts:?} of {copies:?}");
        assert!(sum <= plain(&kinds, &worth, (w as usize, h as usize))[w as usize][h as usize]);
    }
}

#[test]
fn outside_a_corner_is_the_best_chain_of_strips() {
    let mut dice = Dice::new(6);
    for _ in 0..30 {
        let (kinds, worth, copies) = kinds(&mut dice, 4, (14, 11));
        let (w, h) = (30 + dice.below(20) as i64, 25 + dice.below(20) as i64);
        let grid = Grid::of(&kinds, &copies, &[(w, h)], 1_000).unwrap();
        let table = Table::new(&grid, &kinds, &worth, |_, _| i64::MAX);
        let (top_x, top_y) = (grid.at_x(w), grid.at_y(h));
        let found = Outside::of(&grid, &table, (top_x, top_y));
        let ny = grid.ys.len();
        let mut plain = vec![0_i64; grid.xs.len() * ny];
        for i in (0..=top_x).rev() {
            for j in (0..=top_y).rev() {
                let beside =
                    (i + 1..=top_x).map(|k| plain[k * ny + j] + table.at(grid.at_x(grid.xs[k] - grid.xs[i]), j)).max();
                let above =
                    (j + 1..=top_y).map(|k| plain[i * ny + k] + table.at(i, grid.at_y(grid.ys[k] - grid.ys[j]))).max();
                plain[i * ny + j] = beside.max(above).unwrap_or(0);
            }
        }
        assert_eq!(found.value, plain);
    }
}
