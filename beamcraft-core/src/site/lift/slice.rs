//! The free places of a body that is not turned: a plane of shifts, cut into upright slabs.
//!
//! Slabs end wherever a corner of what is kept free lies and wherever two of its sides cross. Within a slab nothing changes
//! order, so the free places there are trapezia between two straight sides. A straight way within a trapezium is free, and
//! one trapezium leads to another where they share a stretch of the upright line between them: nothing is left to chance
//! or to a raster.

#![allow(clippy::indexing_slicing, reason = "cells are indexed by ranges that were made with them; the laws test them")]

use super::convex::{Convex, Shift};

/// Shifts that are looked at.
#[derive(Clone, Copy, Debug)]
pub(super) struct Window {
    pub(super) left: f64,
    pub(super) right: f64,
    pub(super) low: f64,
    pub(super) high: f64,
}

/// A free trapezium: from `left` to `right`, between two straight sides given by their heights there.
#[derive(Clone, Copy, Debug)]
pub(super) struct Cell {
    pub(super) left: f64,
    pub(super) right: f64,
    floor: [f64; 2],
    ceiling: [f64; 2],
    slab: usize,
}

/// Two heights closer than this are one, mm.
const SAME: f64 = 1e-9;

impl Cell {
    /// Lowest and highest free height at a shift outwards; nothing where none is free.
    pub(super) fn heights(&self, out: f64) -> Option<(f64, f64)> {
        if out < self.left - SAME || out > self.right + SAME {
            return None;
        }
        let share = ((out - self.left) / (self.right - self.left)).clamp(0.0, 1.0);
        let at = |ends: [f64; 2]| ends[0] + share * (ends[1] - ends[0]);
        let (low, high) = (at(self.floor), at(self.ceiling));
        (low <= high + SAME).then_some((low, high.max(low)))
    }
}

/// The free places of one tilt.
#[derive(Clone, Debug, Default)]
pub(super) struct Slice {
    cells: Vec<Cell>,
    /// Index of the first cell of each slab, and one past the last.
    starts: Vec<usize>,
}

/// A straight side over a slab: its heights at both ends.
#[derive(Clone, Copy)]
struct Edge {
    ends: [f64; 2],
}

impl Edge {
    fn middle(self) -> f64 {
        0.5 * (self.ends[0] + self.ends[1])
    }
}

impl Slice {
    /// The places of a window that lie in none of the polygons.
    pub(super) fn of(kept_free: &[Convex], window: Window) -> Self {
        let matter: Vec<&Convex> = kept_free.iter().filter(|one| overlaps(one, window)).collect();
        let cuts = cuts(&matter, window);
        let mut slice = Self { cells: Vec::new(), starts: vec![0] };
        for (slab, ends) in cuts.windows(2).enumerate() {
            slice.add_slab(&matter, window, slab, ends[0], ends[1]);
            slice.starts.push(slice.cells.len());
        }
        slice
    }

    fn add_slab(&mut self, kept_free: &[&Convex], window: Window, slab: usize, left: f64, right: f64) {
        let mut blocked: Vec<(Edge, Edge)> = kept_free.iter().filter_map(|one| span(one, left, right)).collect();
        blocked.sort_by(|one, other| one.0.middle().total_cmp(&other.0.middle()));
        let mut floor = Edge { ends: [window.low; 2] };
        let top = Edge { ends: [window.high; 2] };
        let mut cell = |floor: Edge, ceiling: Edge| {
            if ceiling.middle() > floor.middle() {
                self.cells.push(Cell { left, right, floor: floor.ends, ceiling: ceiling.ends, slab });
            }
        };
        for (lower, upper) in blocked {
            cell(floor, if lower.middle() < top.middle() { lower } else { top });
            if upper.middle() > floor.middle() {
                floor = upper;
            }
        }
        cell(floor, top);
    }

    pub(super) fn cells(&self) -> &[Cell] {
        &self.cells
    }

    /// The cell that holds a place.
    pub(super) fn cell_at(&self, place: Shift) -> Option<usize> {
        let holds = |cell: &Cell| {
            let heights = cell.heights(place.out);
            heights.is_some_and(|(low, high)| place.up >= low - SAME && place.up <= high + SAME)
        };
        self.cells.iter().position(holds)
    }

    /// The cells beside one, each with the line between them and its free heights there.
    pub(super) fn beside(&self, cell: usize) -> impl Iterator<Item = (usize, f64, (f64, f64))> + '_ {
        let here = self.cells[cell];
        let right = self.slab(here.slab + 1).map(move |other| (other, here.right));
        let left = here.slab.checked_sub(1).into_iter().flat_map(|slab| self.slab(slab));
        let left = left.map(move |other| (other, here.left));
        left.chain(right).filter_map(move |(other, out)| {
            let (low, high) = here.heights(out)?;
            let (other_low, other_high) = self.cells[other].heights(out)?;
            let (low, high) = (low.max(other_low), high.min(other_high));
            (low <= high).then_some((other, out, (low, high)))
        })
    }

    fn slab(&self, slab: usize) -> core::ops::Range<usize> {
        match (self.starts.get(slab), self.starts.get(slab + 1)) {
            (Some(start), Some(end)) => *start..*end,
            _ => 0..0,
        }
    }
}

fn overlaps(one: &Convex, window: Window) -> bool {
    let (low, high) = one.bounds();
    high.out > window.left && low.out < window.right && high.up > window.low && low.up < window.high
}

/// Where slabs begin and end: ends of the window, corners, crossings of sides.
fn cuts(kept_free: &[&Convex], window: Window) -> Vec<f64> {
    let mut cuts = vec![window.left, window.right];
    let inside = |out: f64| out > window.left && out < window.right;
    let mut sides: Vec<(usize, Shift, Shift)> = Vec::new();
    for (k, one) in kept_free.iter().enumerate() {
        cuts.extend(one.corners().iter().map(|corner| corner.out).filter(|out| inside(*out)));
        let crosses =
            |(from, to): &(Shift, Shift)| from.out.max(to.out) > window.left && from.out.min(to.out) < window.right;
        sides.extend(one.sides().filter(crosses).map(|(from, to)| (k, from, to)));
    }
    for (at, (k, from, to)) in sides.iter().enumerate() {
        for (other, other_from, other_to) in &sides[at + 1..] {
            if k != other {
                cuts.extend(crossing((*from, *to), (*other_from, *other_to)).filter(|out| inside(*out)));
            }
        }
    }
    cuts.sort_by(f64::total_cmp);
    cuts.dedup_by(|later, earlier| *later - *earlier < SAME);
    cuts
}

/// Where two sides cross.
fn crossing((a, b): (Shift, Shift), (c, d): (Shift, Shift)) -> Option<f64> {
    let (along, other) = (Shift::new(b.out - a.out, b.up - a.up), Shift::new(d.out - c.out, d.up - c.up));
    let turn = along.out * other.up - along.up * other.out;
    let from = Shift::new(c.out - a.out, c.up - a.up);
    let share = (from.out * other.up - from.up * other.out) / turn;
    let other_share = (from.out * along.up - from.up * along.out) / turn;
    let within = |share: f64| (0.0..=1.0).contains(&share);
    (within(share) && within(other_share)).then_some(a.out + share * along.out)
}

/// The lower and the upper side of a polygon over a slab; nothing where it does not reach over it.
fn span(one: &Convex, left: f64, right: f64) -> Option<(Edge, Edge)> {
    let middle = 0.5 * (left + right);
    let mut found: Option<(Edge, Edge)> = None;
    for (from, to) in one.sides() {
        let (low, high) = (from.out.min(to.out), from.out.max(to.out));
        if !(low < middle && high > middle) {
            continue;
        }
        let at = |out: f64| from.up + (out - from.out) / (to.out - from.out) * (to.up - from.up);
        let edge = Edge { ends: [at(left), at(right)] };
        found = Some(match found {
            None => (edge, edge),
            Some((lower, upper)) => (
                if edge.middle() < lower.middle() { edge } else { lower },
                if edge.middle() > upper.middle() { edge } else { upper },
            ),
        });
    }
    found
}
