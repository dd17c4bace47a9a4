//! What is refused before boards are cut.

use super::boards::{
    BoardPartTurn, BoardStock, CutListBoardsInput, LayoutAim, PartGroup, group_size, usable, with_kerf,
};
use super::fit::{fits_nothing, list_faults, mm, whole};
use crate::error::{Detail, Error, ErrorCode, Fault, Result};
use crate::limits::faults_at;

/// Refuses a name that is given more than once.
pub(super) fn same_names<'n>(faults: &mut Vec<Detail>, list: &str, names: impl Iterator<Item = &'n str>) {
    let mut seen: std::collections::HashSet<&str> = std::collections::HashSet::new();
    for (k, name) in names.enumerate() {
        if !seen.insert(name) {
            faults.push(Detail {
                code: ErrorCode::DuplicateField,
                path: format!("{list}[{k}].name"),
                given: format!("\"{name}\""),
                allowed: "a name for each kind of stock".to_owned(),
                cure: String::new(),
            });
        }
    }
}

/// All faults of an input at once.
pub(super) fn check(input: &CutListBoardsInput) -> Result<()> {
    let mut faults = faults_at("", input);
    for (k, board) in input.stock.iter().enumerate() {
        stock_faults(&mut faults, &format!("stock[{k}]"), board, input.aim);
    }
    same_names(&mut faults, "stock", input.stock.iter().map(|board| board.name.as_str()));
    for (k, part) in input.parts.iter().enumerate() {
        faults.extend(faults_at(&format!("parts[{k}]"), part));
    }
    for (k, group) in input.groups.iter().enumerate() {
        group_faults(&mut faults, &format!("groups[{k}]"), group, input.kerf_mm);
    }
    let single: u64 = input.parts.iter().map(|part| u64::from(part.count)).sum();
    let grouped: u64 = input.groups.iter().map(|group| u64::from(group.count) * group.parts.len() as u64).sum();
    let priced = input.stock.iter().filter(|board| board.price.is_some()).count();
    let count = if input.aim == LayoutAim::AllParts { single + grouped } else { (single + grouped).min(1) };
    faults.extend(list_faults(input.stock.len(), count, priced));
    Error::unless_empty(faults)?;
    if input.aim == LayoutAim::MostWorth { Ok(()) } else { Error::unless_empty(too_large(input)) }
}

fn stock_faults(faults: &mut Vec<Detail>, path: &str, board: &BoardStock, aim: LayoutAim) {
    faults.extend(faults_at(path, board));
    if aim == LayoutAim::MostWorth && board.count.is_none() {
        let fault = Fault::plain(ErrorCode::Inconsistent, "count", "a count, when the greatest worth is sought", "");
        faults.push(Detail::from(fault).within(path));
    }
    for (j, defect) in board.defects.iter().enumerate() {
        let path = format!("{path}.defects[{j}]");
        faults.extend(faults_at(&path, defect));
        for (field, from, to) in [("to_mm", defect.from_mm, defect.to_mm), ("far_mm", defect.near_mm, defect.far_mm)] {
            if to < from {
                let fault = Fault::plain(ErrorCode::Inconsistent, field, "an end behind its beginning", "");
                faults.push(Detail::from(fault).within(&path));
            }
        }
    }
}

fn group_faults(faults: &mut Vec<Detail>, path: &str, group: &PartGroup, kerf_mm: f64) {
    faults.extend(faults_at(path, group));
    for (j, part) in group.parts.iter().enumerate() {
        faults.extend(faults_at(&format!("{path}.parts[{j}]"), part));
    }
    if group.parts.is_empty() {
        let fault = Fault::plain(ErrorCode::Inconsistent, "parts", "one member or more", "");
        faults.push(Detail::from(fault).within(path));
    }
    if group.loss_mm.is_some_and(|loss| loss < kerf_mm) {
        let fault = Fault::plain(ErrorCode::Inconsistent, "loss_mm", "no less than the kerf", "");
        faults.push(Detail::from(fault).within(path));
    }
}

/// Parts and groups that no board holds, however they lie.
fn too_large(input: &CutListBoardsInput) -> Vec<Detail> {
    let boards: Vec<(i64, i64)> = input.stock.iter().map(|board| usable(input, board)).collect();
    let held = |w: i64, h: i64| boards.iter().any(|(length, width)| w <= *length && h <= *width);
    let largest = || {
        let list: Vec<String> = input
            .stock
            .iter()
            .take(5)
            .map(|board| {
                let clear = |size: f64, trim: f64| (size - 2.0 * trim).max(0.0);
                let (l, w) = (clear(board.length_mm, input.trim_end_mm), clear(board.width_mm, input.trim_edge_mm));
                format!("{l} mm x {w} mm ({})", board.name)
            })
            .collect();
        format!("what fits a board: {}", list.join(", "))
    };
    let mut faults = Vec::new();
    for (k, part) in input.parts.iter().enumerate() {
        let (w, h) = with_kerf(input, part.length_mm, part.width_mm);
        let either_way = part.turn == BoardPartTurn::EitherWay;
        if !(held(w, h) || either_way && held(h, w)) {
            let given = format!("{} mm x {} mm", part.length_mm, part.width_mm);
            faults.push(fits_nothing(format!("parts[{k}]"), given, largest()));
        }
    }
    for (k, group) in input.groups.iter().enumerate() {
        let (w, h) = group_size(input, group);
        if !held(w, h) {
            let kerf = whole(input.kerf_mm);
            let given = format!("{} mm x {} mm in line", mm(w - kerf), mm(h - kerf));
            faults.push(fits_nothing(format!("groups[{k}]"), given, largest()));
        }
    }
    faults
}
