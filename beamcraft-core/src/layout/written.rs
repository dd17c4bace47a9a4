//! A layout of boards in the user's words and millimetres.

use super::boards::{
    BoardPartPlace, BoardRectangle, BoardStock, CutBoard, CutListBoards, CutListBoardsInput, LayoutAim, LayoutCut,
    PlacedTurn, group_tree, usable,
};
use super::cuts::{Laid, lay};
use super::engine::tree::{Axis, Lying, Strip};
use super::engine::watch::Watch;
use super::fit::{LayoutMeasure, MissingPart, StockUse, mm, quality, whole};
use super::solve::Solved;
use crate::finding::Caution;
use crate::shell::EdgeCut;

pub(super) fn written(
    input: &CutListBoardsInput,
    measure: (LayoutMeasure, f64),
    solved: &Solved,
    watch: &Watch<'_>,
) -> CutListBoards {
    // The first number of each group's members.
    let mut next = input.parts.len() as u32;
    let firsts: Vec<u32> = input
        .groups
        .iter()
        .map(|group| {
            let first = next;
            next += group.parts.len() as u32;
            first
        })
        .collect();
    let expand = |lying: &Lying| -> Option<Strip> {
        let k = (lying.kind as usize).checked_sub(input.parts.len())?;
        // A member of a group is not a group.
        (lying.kind < input.parts.len() as u32 + input.groups.len() as u32)
            .then(|| Some(group_tree(input, input.groups.get(k)?, *firsts.get(k)? + input.groups.len() as u32)))?
    };
    let kerf = whole(input.kerf_mm);
    let mut sheets: Vec<&(usize, Strip, u32)> = solved.sheets.iter().collect();
    sheets.sort_by_key(|sheet| sheet.0);
    let mut boards: Vec<CutBoard> = Vec::new();
    for (k, root, alike) in sheets {
        let Some(stock) = input.stock.get(*k) else { continue };
        let laid = lay(root, usable(input, stock), (kerf, kerf), &expand);
        boards.push(board(input, stock, &laid, *alike));
    }
    let count_of = |name: &str| boards.iter().filter(|board| board.stock == name).map(|board| board.alike).sum::<u32>();
    let stock = input
        .stock
        .iter()
        .map(|board| StockUse { stock: board.name.clone(), count: count_of(&board.name) })
        .filter(|used| used.count > 0)
        .collect();
    let names = input.parts.iter().map(|part| &part.name).chain(input.groups.iter().map(|group| &group.name));
    let missing: Vec<MissingPart> = names
        .zip(&solved.left)
        .filter(|(_, left)| **left > 0)
        .map(|(name, left)| MissingPart { name: name.clone(), count: *left })
        .collect();
    let incomplete = input.aim == LayoutAim::AllParts && !missing.is_empty();
    CutListBoards {
        quality: quality(measure, (solved.value, solved.bound), incomplete, watch),
        stock,
        boards,
        missing,
        kerf_mm: input.kerf_mm,
        cautions: vec![Caution::Saw.into(), Caution::Dust.into()],
    }
}

/// Name, group and size of a part by its number.
fn named(input: &CutListBoardsInput, kind: u32) -> Option<(&str, Option<&str>, (f64, f64))> {
    let kind = kind as usize;
    if let Some(part) = input.parts.get(kind) {
        return Some((&part.name, None, (part.length_mm, part.width_mm)));
    }
    let mut k = kind.checked_sub(input.parts.len() + input.groups.len())?;
    for group in &input.groups {
        if let Some(part) = group.parts.get(k) {
            return Some((&part.name, Some(&group.name), (part.length_mm, part.width_mm)));
        }
        k -= group.parts.len();
    }
    None
}

fn board(input: &CutListBoardsInput, stock: &BoardStock, laid: &Laid, alike: u32) -> CutBoard {
    let (left, near) = (whole(input.trim_end_mm), whole(input.trim_edge_mm));
    let parts = laid.places.iter().filter_map(|place| {
        let (name, group, (length_mm, width_mm)) = named(input, place.kind)?;
        let turned = place.turned == 1;
        let (along_mm, across_mm) = if turned { (width_mm, length_mm) } else { (length_mm, width_mm) };
        let rectangle = BoardRectangle { x_mm: mm(left + place.x), y_mm: mm(near + place.y), along_mm, across_mm };
        let turn = if turned { PlacedTurn::Turned } else { PlacedTurn::AsGiven };
        Some(BoardPartPlace { name: name.to_owned(), group: group.map(str::to_owned), place: rectangle, turn })
    });
    let cuts = laid.cuts.iter().enumerate().map(|(k, cut)| {
        let (here, there, kind) =
            if cut.axis == Axis::X { (left, near, EdgeCut::CrossCut) } else { (near, left, EdgeCut::Rip) };
        LayoutCut {
            step: k as u32 + 1,
            stage: cut.stage,
            cut: kind,
            set_mm: mm(cut.set),
            at_mm: mm(here + cut.at),
            loss_mm: mm(cut.loss),
            from_mm: mm(there + cut.across.0),
            to_mm: mm(there + cut.across.1),
        }
    });
    let mut offcuts: Vec<BoardRectangle> = laid
        .free
        .iter()
        .map(|(x, y, w, h)| BoardRectangle {
            x_mm: mm(left + x),
            y_mm: mm(near + y),
            along_mm: mm(*w),
            across_mm: mm(*h),
        })
        .collect();
    offcuts.sort_by(|a, b| (b.along_mm * b.across_mm).total_cmp(&(a.along_mm * a.across_mm)));
    CutBoard {
        stock: stock.name.clone(),
        alike,
        length_mm: stock.length_mm,
        width_mm: stock.width_mm,
        parts: parts.collect(),
        cuts: cuts.collect(),
        offcuts,
        defects: stock.defects.clone(),
        stages: laid.stages,
    }
}
