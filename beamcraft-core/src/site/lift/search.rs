//! The way off the cleat that needs the least headroom: from place to place within a tilt, and from tilt to tilt.
//!
//! A tilt is looked at exactly. Between two neighbouring tilts lies the body swept over all the tilts between them; a shift
//! that is free there may be turned through at rest. So a way that is found is free at every moment, and one that is not
//! found may still exist where the room is narrower than the body swings in a step of tilt.

#![allow(clippy::indexing_slicing, reason = "layers and cells are indexed by keys that were made with them")]

use core::cmp::{Ordering, Reverse};
use std::collections::{BTreeMap, BTreeSet, BinaryHeap};

use super::convex::Shift;
use super::scene::{Scene, Tilts};
use super::slice::{Cell, Slice};

/// The body at one moment: its shift from where it hangs, and its tilt.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Pose {
    pub(super) shift: Shift,
    pub(super) tilt_deg: f64,
}

/// A way from the place where the body hangs to one off the cleat.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Way {
    pub(super) poses: Vec<Pose>,
    /// How far its top rises at most above where it hangs, mm.
    pub(super) rise: f64,
}

/// What a search found.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Found {
    /// A way.
    Way(Way),
    /// None.
    NoWay,
    /// The body meets something where it hangs.
    NotInPlace,
}

impl Found {
    pub(super) fn way(self) -> Option<Way> {
        match self {
            Self::Way(way) => Some(way),
            Self::NoWay | Self::NotInPlace => None,
        }
    }
}

/// Tilts that are looked at: so many steps either way.
#[derive(Clone, Copy, Debug)]
pub(super) struct Tilting {
    pub(super) step_deg: f64,
    pub(super) steps: i32,
}

impl Tilting {
    /// None at all: the body only shifts.
    pub(super) const LEVEL: Self = Self { step_deg: 1.0, steps: 0 };
}

/// A tilt (even) or the sweep between it and the next (odd), counted in half steps; and a cell of it.
type Key = (i32, usize);

/// The free places of a tilt or a sweep.
struct Layer {
    slice: Slice,
    /// How much higher than it hangs the top is at no shift, mm.
    top: f64,
    /// Shift outwards from which on the body is off the cleat, mm.
    off: f64,
}

/// How a cell was reached.
struct Visit {
    from: Option<Key>,
    /// Where the body is on entering the cell: the last pose, before which it may pass through another.
    poses: Vec<Pose>,
    rise: f64,
}

/// A cell that waits, the one with the least rise first; of equals the one that was found first.
struct Waiting {
    rise: f64,
    order: usize,
    key: Key,
}

impl PartialEq for Waiting {
    fn eq(&self, other: &Self) -> bool {
        self.cmp(other) == Ordering::Equal
    }
}
impl Eq for Waiting {}
impl PartialOrd for Waiting {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}
impl Ord for Waiting {
    fn cmp(&self, other: &Self) -> Ordering {
        self.rise.total_cmp(&other.rise).then(self.order.cmp(&other.order))
    }
}

struct Search<'a> {
    scene: &'a Scene,
    tilting: Tilting,
    layers: BTreeMap<i32, Layer>,
    visits: BTreeMap<Key, Visit>,
    waiting: BinaryHeap<Reverse<Waiting>>,
}

/// The way off the cleat with the least rise of the body's top.
pub(super) fn way_off(scene: &Scene, tilting: Tilting) -> Found {
    let mut search =
        Search { scene, tilting, layers: BTreeMap::new(), visits: BTreeMap::new(), waiting: BinaryHeap::new() };
    let hung = Pose { shift: Shift::new(0.0, 0.0), tilt_deg: 0.0 };
    let Some(start) = search.layer(0).slice.cell_at(hung.shift) else { return Found::NotInPlace };
    search.reach(None, (0, start), vec![hung], 0.0);
    let mut done = BTreeSet::new();
    while let Some(Reverse(Waiting { key, rise, .. })) = search.waiting.pop() {
        if !done.insert(key) {
            continue;
        }
        if let Some(last) = search.off_cleat(key) {
            return Found::Way(search.way(key, last, rise));
        }
        search.go_on(key);
    }
    Found::NoWay
}

impl Search<'_> {
    fn tilt(&self, layer: i32) -> f64 {
        f64::from(layer) * 0.5 * self.tilting.step_deg
    }

    fn layer(&mut self, layer: i32) -> &Layer {
        let tilts = match layer % 2 {
            0 => Tilts::At(self.tilt(layer)),
            _ => Tilts::Between(self.tilt(layer - 1), self.tilt(layer + 1)),
        };
        let scene = self.scene;
        self.layers.entry(layer).or_insert_with(|| {
            let (slice, top, off) = scene.slice(tilts);
            Layer { slice, top, off }
        })
    }

    /// Notes that a cell can be reached so.
    fn reach(&mut self, from: Option<Key>, key: Key, poses: Vec<Pose>, rise: f64) {
        if self.visits.get(&key).is_some_and(|known| known.rise <= rise) {
            return;
        }
        self.visits.insert(key, Visit { from, poses, rise });
        let order = self.visits.len() + self.waiting.len();
        self.waiting.push(Reverse(Waiting { rise, order, key }));
    }

    /// Where in a cell the body is off the cleat; in tilts only, not in sweeps.
    fn off_cleat(&self, key: Key) -> Option<Pose> {
        let (layer, cell) = (&self.layers[&key.0], key.1);
        if key.0 % 2 != 0 {
            return None;
        }
        let last = self.visits[&key].poses.last()?;
        let (low, high) = layer.slice.cells()[cell].heights(layer.off)?;
        Some(Pose { shift: Shift::new(layer.off, level(last.shift.up, low, high)), ..*last })
    }

    fn go_on(&mut self, key: Key) {
        let Some(last) = self.visits.get(&key).and_then(|visit| visit.poses.last().copied()) else { return };
        self.go_beside(key, last);
        let reach = 2 * self.tilting.steps;
        for next in [key.0 - 1, key.0 + 1] {
            if next.abs() <= reach {
                self.go_over(key, last, next);
            }
        }
    }

    /// To the cells beside it in the same layer.
    fn go_beside(&mut self, key: Key, last: Pose) {
        let (rise, here) = (self.visits[&key].rise, &self.layers[&key.0]);
        let top = here.top;
        let found: Vec<_> = here.slice.beside(key.1).collect();
        for (cell, out, (low, high)) in found {
            let shift = Shift::new(out, level(last.shift.up, low, high));
            self.reach(Some(key), (key.0, cell), vec![Pose { shift, ..last }], rise.max(top + shift.up));
        }
    }

    /// To the cells of a neighbouring layer that share a place with it.
    fn go_over(&mut self, key: Key, last: Pose, next: i32) {
        let rise = self.visits[&key].rise;
        let next_top = self.layer(next).top;
        let (here, there) = (&self.layers[&key.0], &self.layers[&next]);
        let (cell, top) = (here.slice.cells()[key.1], here.top.max(next_top));
        let shared: Vec<_> = there
            .slice
            .cells()
            .iter()
            .enumerate()
            .filter_map(|(k, other)| Some((k, common(&cell, other, last.shift)?)))
            .collect();
        // In a sweep the body keeps the tilt it came with until it leaves at the other side.
        let tilt_deg = if next % 2 == 0 { self.tilt(next) } else { last.tilt_deg };
        for (other, shift) in shared {
            let poses = vec![Pose { shift, ..last }, Pose { shift, tilt_deg }];
            self.reach(Some(key), (next, other), poses, rise.max(top + shift.up));
        }
    }

    fn way(&self, goal: Key, last: Pose, rise: f64) -> Way {
        let mut poses = vec![last];
        let mut key = Some(goal);
        while let Some(visit) = key.and_then(|key| self.visits.get(&key)) {
            poses.extend(visit.poses.iter().rev());
            key = visit.from;
        }
        poses.reverse();
        // Of places that nobody can tell apart the one nearer to where the body hangs is enough.
        poses.dedup_by(|next, known| next.tilt_deg == known.tilt_deg && next.shift.is_near(known.shift));
        let rise = rise.max(self.layers[&goal.0].top + last.shift.up);
        Way { poses, rise }
    }
}

/// The height nearest to where the body is, no higher than it must be and no lower than where it hangs.
fn level(up: f64, low: f64, high: f64) -> f64 {
    up.min(0.0).max(low).min(high)
}

/// A place in both cells: as near to where the body is as the cells' outward reach lets it.
fn common(one: &Cell, other: &Cell, near: Shift) -> Option<Shift> {
    let (left, right) = (one.left.max(other.left), one.right.min(other.right));
    if left > right {
        return None;
    }
    let at = |out: f64| {
        let ((low, high), (other_low, other_high)) = (one.heights(out)?, other.heights(out)?);
        let (low, high) = (low.max(other_low), high.min(other_high));
        (low <= high).then(|| Shift::new(out, level(near.up, low, high)))
    };
    [near.out.clamp(left, right), left, right, 0.5 * (left + right)].into_iter().find_map(at)
}
