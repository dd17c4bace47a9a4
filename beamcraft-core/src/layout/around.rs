//! Boards with flaws: trees of cuts that set the flaws apart and leave clear regions for parts.
//!
//! Around one flaw there are four sides; cut one after the other in some order, each cut from edge to edge of what is
//! left. Every order gives other clear regions, so that the search starts from several.

use super::engine::Dice;
use super::engine::tree::{Axis, Body, Member, Role, Strip};
use super::solve::Flaw;

/// Most trees that a kind of board starts from.
const MOST_STARTS: usize = 12;
/// Orders of cuts that are tried for them.
const TRIALS: usize = 60;

/// A region with the kerf beyond its far edges.
#[derive(Clone, Copy)]
struct Region {
    x: (i64, i64),
    y: (i64, i64),
}

impl Region {
    fn size(self) -> (i64, i64) {
        (self.x.1 - self.x.0, self.y.1 - self.y.0)
    }

    /// The flaw within this region, with the kerf that separates it on its near side; nothing where it lies outside.
    fn clip(self, flaw: Flaw, kerf: (i64, i64)) -> Option<Region> {
        let y = flaw.y.unwrap_or((i64::MIN / 4, i64::MAX / 4));
        Some(Region { x: set_apart(self.x, flaw.x, kerf.0)?, y: set_apart(self.y, y, kerf.1)? })
    }
}

/// What must be cut away of a stretch for a flaw: a kerf beyond its near end, up to its far end.
fn set_apart(region: (i64, i64), flaw: (i64, i64), kerf: i64) -> Option<(i64, i64)> {
    if flaw.1 <= region.0 || flaw.0 >= region.1 - kerf {
        return None;
    }
    // Nothing is left before the flaw, or behind it, when a kerf would eat it.
    let near = if flaw.0 <= region.0 { region.0 } else { flaw.0 + kerf };
    let far = flaw.1.max(near + kerf);
    Some((near, if far >= region.1 - kerf { region.1 } else { far }))
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Side {
    Left,
    Right,
    Below,
    Above,
}

const ACROSS_FIRST: [Side; 4] = [Side::Left, Side::Right, Side::Below, Side::Above];
const ALONG_FIRST: [Side; 4] = [Side::Below, Side::Above, Side::Left, Side::Right];

/// The trees that a board with flaws may start from; those whose first cut is along another axis than `first` are left
/// out.
pub(super) fn starts_around((w, h): (i64, i64), flaws: &[Flaw], kerf: (i64, i64), first: Option<Axis>) -> Vec<Strip> {
    let board = Region { x: (0, w), y: (0, h) };
    let inside: Vec<Flaw> = flaws.iter().copied().filter(|flaw| board.clip(*flaw, kerf).is_some()).collect();
    if inside.is_empty() {
        return super::engine::ruin::plain_starts(w, h, first);
    }
    let mut dice = Dice::new(17);
    let mut starts: Vec<Strip> = Vec::new();
    for trial in 0..TRIALS {
        let mut order = |flaws: usize| match trial {
            0 => (0, ACROSS_FIRST),
            1 => (0, ALONG_FIRST),
            _ => {
                let mut sides = ACROSS_FIRST;
                for k in (1..4).rev() {
                    sides.swap(k, dice.below(k + 1));
                }
                (dice.below(flaws), sides)
            }
        };
        let Body::Strip(root) = clear(board, &inside, kerf, Axis::X, &mut order) else { continue };
        let right_way = first.is_none_or(|axis| root.axis == axis);
        if right_way && !starts.contains(&root) {
            starts.push(*root);
        }
        if starts.len() == MOST_STARTS {
            break;
        }
    }
    starts
}

/// The tree of a region within a strip along `parent`.
fn clear(
    region: Region,
    flaws: &[Flaw],
    kerf: (i64, i64),
    parent: Axis,
    order: &mut impl FnMut(usize) -> (usize, [Side; 4]),
) -> Body {
    let inside: Vec<Flaw> = flaws.iter().copied().filter(|flaw| region.clip(*flaw, kerf).is_some()).collect();
    let (w, h) = region.size();
    if inside.is_empty() {
        return Body::Strip(Box::new(Strip::new(parent.other(), w, h)));
    }
    let (chosen, sides) = order(inside.len());
    let Some(flaw) = inside.get(chosen).and_then(|flaw| region.clip(*flaw, kerf)) else { return Body::Waste };
    peel(region, flaw, &sides, &inside, kerf, order)
}

/// Cuts the sides of a flaw away, one after the other; what is left is the flaw.
fn peel(
    region: Region,
    flaw: Region,
    sides: &[Side],
    flaws: &[Flaw],
    kerf: (i64, i64),
    order: &mut impl FnMut(usize) -> (usize, [Side; 4]),
) -> Body {
    let [side, later @ ..] = sides else { return Body::Waste };
    let (axis, off, rest) = match side {
        Side::Left => {
            let at = flaw.x.0;
            (Axis::X, Region { x: (region.x.0, at), ..region }, Region { x: (at, region.x.1), ..region })
        }
        Side::Right => {
            let at = flaw.x.1;
            (Axis::X, Region { x: (at, region.x.1), ..region }, Region { x: (region.x.0, at), ..region })
        }
        Side::Below => {
            let at = flaw.y.0;
            (Axis::Y, Region { y: (region.y.0, at), ..region }, Region { y: (at, region.y.1), ..region })
        }
        Side::Above => {
            let at = flaw.y.1;
            (Axis::Y, Region { y: (at, region.y.1), ..region }, Region { y: (region.y.0, at), ..region })
        }
    };
    let extent = |part: Region| if axis == Axis::X { part.size().0 } else { part.size().1 };
    if extent(off) <= 0 {
        return peel(region, flaw, later, flaws, kerf, order);
    }
    let (w, h) = region.size();
    let mut strip = Strip { role: Role::Fixed, ..Strip::new(axis, w, h) };
    strip.free = 0;
    let first = Member { extent: extent(off), body: clear(off, flaws, kerf, axis, order) };
    let second = Member { extent: extent(rest), body: peel(rest, flaw, later, flaws, kerf, order) };
    let near_first = matches!(side, Side::Left | Side::Below);
    for member in if near_first { [first, second] } else { [second, first] } {
        // A row within a row along the same axis is one row.
        match member.body {
            Body::Strip(inner) if inner.axis == axis && inner.role == Role::Fixed => {
                strip.members.extend(inner.members);
            }
            body => strip.members.push(Member { extent: member.extent, body }),
        }
    }
    Body::Strip(Box::new(strip))
}
