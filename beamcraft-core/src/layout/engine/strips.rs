//! Patterns of three stages by knapsacks alone: stacks of parts, stacks side by side in a strip, strips one above the
//! other. Fast where the table over all cuts would be large; a pattern of it is as good as any, its value is no bound.
#![allow(clippy::indexing_slicing, reason = "tables of a dynamic programme; every index is made from their own sizes")]

use super::ruin::Kind;
use super::tree::{Axis, Body, Lying, Member, Role, Strip};

/// Repeat-at-will knapsack: value of each capacity, and the last thing put in.
struct Filled {
    value: Vec<i64>,
    last: Vec<u32>,
}

const NONE: u32 = u32::MAX;

fn fill(things: &[(i64, i64)], capacity: usize) -> Filled {
    let (mut value, mut last) = (vec![0_i64; capacity + 1], vec![NONE; capacity + 1]);
    for room in 1..=capacity {
        value[room] = value[room - 1];
        for (k, (size, worth)) in things.iter().enumerate() {
            let size = *size as usize;
            if size <= room && value[room - size] + worth > value[room] {
                value[room] = value[room - size] + worth;
                last[room] = k as u32;
            }
        }
    }
    Filled { value, last }
}

impl Filled {
    fn things(&self, mut room: usize, sizes: &[(i64, i64)]) -> Vec<usize> {
        let mut list = Vec::new();
        while room > 0 {
            match self.last[room] {
                NONE => room -= 1,
                k => {
                    list.push(k as usize);
                    room -= sizes[k as usize].0 as usize;
                }
            }
        }
        list
    }
}

/// Parts by their place in the list, their extents and worths, and the knapsack over them.
type Stack = (Vec<usize>, Vec<(i64, i64)>, Filled);

/// Steps of one call.
pub(crate) fn strip_work(kinds: &[Kind], w: i64, h: i64, unit: (i64, i64)) -> u64 {
    let n = kinds.iter().map(|k| k.lying.len() as u64).sum::<u64>();
    n * n * ((w / unit.0.max(1)) as u64 + (h / unit.1.max(1)) as u64) + n * 4
}

/// The best pattern found for a sheet, its strips along `axis`; `unit` divides every size.
pub(crate) fn best_strips(
    kinds: &[Kind],
    worth: &[i64],
    (w, h): (i64, i64),
    axis: Axis,
    (unit_w, unit_h): (i64, i64),
) -> Option<(i64, Strip)> {
    // Seen with the strips along X.
    let flip = axis == Axis::Y;
    let (unit_a, unit_b) = if flip { (unit_h, unit_w) } else { (unit_w, unit_h) };
    let (length, height) = if flip { (h, w) } else { (w, h) };
    let (length_n, height_n) = ((length / unit_a) as usize, (height / unit_b) as usize);
    let mut parts: Vec<(Lying, i64, i64, i64)> = Vec::new();
    for (kind, worth) in kinds.iter().zip(worth) {
        for lying in &kind.lying {
            let (a, b) = if flip { (lying.h, lying.w) } else { (lying.w, lying.h) };
            if *worth > 0 && a <= length && b <= height {
                parts.push((*lying, a / unit_a, b / unit_b, *worth));
            }
        }
    }
    if parts.is_empty() {
        return None;
    }
    let mut widths: Vec<i64> = parts.iter().map(|p| p.1).collect();
    widths.sort_unstable();
    widths.dedup();
    let mut heights: Vec<i64> = parts.iter().map(|p| p.2).collect();
    heights.sort_unstable();
    heights.dedup();
    // A stack for each width, for every height at once.
    let stacks: Vec<Stack> = widths
        .iter()
        .map(|width| {
            let members: Vec<usize> = (0..parts.len()).filter(|k| parts[*k].1 <= *width).collect();
            let things: Vec<(i64, i64)> = members.iter().map(|k| (parts[*k].2, parts[*k].3)).collect();
            let filled = fill(&things, height_n);
            (members, things, filled)
        })
        .collect();
    // A strip for each height.
    let strips: Vec<(Vec<(i64, i64)>, Filled)> = heights
        .iter()
        .map(|height| {
            let things: Vec<(i64, i64)> =
                widths.iter().zip(&stacks).map(|(width, s)| (*width, s.2.value[*height as usize])).collect();
            let filled = fill(&things, length_n);
            (things, filled)
        })
        .collect();
    let things: Vec<(i64, i64)> =
        heights.iter().zip(&strips).map(|(height, s)| (*height, s.1.value[length_n])).collect();
    let sheet = fill(&things, height_n);
    let other = axis.other();
    let mut root = Strip { axis: other, cross: length, members: Vec::new(), free: height, role: Role::Plain };
    for k in sheet.things(height_n, &things) {
        let strip_height = heights[k] * unit_b;
        let mut strip = Strip { axis, cross: strip_height, members: Vec::new(), free: length, role: Role::Plain };
        for s in strips[k].1.things(length_n, &strips[k].0) {
            let width = widths[s] * unit_a;
            let mut stack =
                Strip { axis: other, cross: width, members: Vec::new(), free: strip_height, role: Role::Plain };
            let (members, sizes, filled) = &stacks[s];
            for p in filled.things(heights[k] as usize, sizes) {
                let (lying, ..) = parts[members[p]];
                stack.insert(&[], false, lying);
            }
            let only = stack.members.len() == 1 && stack.free == 0;
            let body = match stack.members.pop() {
                Some(Member { body: Body::Part(lying), .. }) if only => Body::Part(lying),
                Some(member) => {
                    stack.members.push(member);
                    Body::Strip(Box::new(stack))
                }
                None => continue,
            };
            strip.free -= width;
            strip.members.push(Member { extent: width, body });
        }
        if strip.members.is_empty() {
            continue;
        }
        root.free -= strip_height;
        root.members.push(Member { extent: strip_height, body: Body::Strip(Box::new(strip)) });
    }
    Some((sheet.value[height_n], root))
}
