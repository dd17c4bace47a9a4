//! Checks a finished cut list from what it says alone: no code is shared with the search.

use super::{
    BoardPartTurn, CutBoard, CutListBars, CutListBarsInput, CutListBoards, CutListBoardsInput, CutOrder,
    GroupDirection, LayoutAim, LayoutMeasure, LayoutProof, PlacedTurn,
};
use crate::shell::EdgeCut;

/// Sizes are compared to a micrometre a part, and no row here holds more than a hundred.
const SLACK: f64 = 0.1;

#[derive(Clone, Copy, Debug)]
struct Area {
    x: (f64, f64),
    y: (f64, f64),
}

/// Every broken rule of a list of bars, in words.
pub(super) fn bars(input: &CutListBarsInput, list: &CutListBars) -> Vec<String> {
    let mut wrong = Vec::new();
    let mut cost = 0.0;
    for bar in &list.bars {
        let Some(stock) = input.stock.iter().find(|stock| stock.name == bar.stock) else {
            wrong.push(format!("unknown stock {}", bar.stock));
            continue;
        };
        cost += f64::from(bar.alike) * stock.price.map_or(stock.length_mm, hundredths);
        let mut at = input.trim_mm;
        for part in &bar.parts {
            if part.from_mm < at - SLACK {
                wrong.push(format!("{} at {} overlaps what ends with its kerf at {at}", part.name, part.from_mm));
            }
            let end = part.from_mm + part.length_mm;
            if end > stock.length_mm - input.trim_mm + SLACK {
                wrong.push(format!("{} ends at {end}", part.name));
            }
            for defect in &stock.defects {
                if part.from_mm < defect.to_mm - SLACK && end > defect.from_mm + SLACK {
                    wrong.push(format!("{} lies on a defect", part.name));
                }
            }
            at = end + input.kerf_mm;
        }
    }
    for stock in &input.stock {
        let used: u32 = list.bars.iter().filter(|bar| bar.stock == stock.name).map(|bar| bar.alike).sum();
        if stock.count.is_some_and(|count| used > count) {
            wrong.push(format!("{used} of {} are used", stock.name));
        }
    }
    let mut wanted: Vec<(&str, i64)> = Vec::new();
    for part in &input.parts {
        count(&mut wanted, &part.name, i64::from(part.count));
    }
    for bar in &list.bars {
        for part in &bar.parts {
            count(&mut wanted, &part.name, -i64::from(bar.alike));
        }
    }
    for missing in &list.missing {
        count(&mut wanted, &missing.name, -i64::from(missing.count));
    }
    wrong.extend(wanted.iter().filter(|(_, n)| *n != 0).map(|(name, n)| format!("{n} of {name} too few")));
    number(&mut wrong, &list.quality, cost);
    wrong
}

fn count<'n>(list: &mut Vec<(&'n str, i64)>, name: &'n str, n: i64) {
    match list.iter_mut().find(|entry| entry.0 == name) {
        Some(entry) => entry.1 += n,
        None => list.push((name, n)),
    }
}

fn number(wrong: &mut Vec<String>, quality: &super::LayoutQuality, cost: f64) {
    let rough = if quality.measure == LayoutMeasure::Area { 1e-6 * cost + 1_000.0 } else { 1e-6 * cost + 0.01 };
    if (quality.value - cost).abs() > rough {
        wrong.push(format!("value {} is not {cost}", quality.value));
    }
    if let Some(bound) = quality.bound {
        let better = if quality.measure == LayoutMeasure::Worth { -1.0 } else { 1.0 };
        if (quality.value - bound) * better < 0.0 {
            wrong.push(format!("value {} is beyond the bound {bound}", quality.value));
        }
        if (quality.proof == LayoutProof::Optimal) != (quality.value == bound) {
            wrong.push("optimal, but value and bound differ, or the other way round".to_owned());
        }
    }
}

/// Every broken rule of a list of boards, in words.
pub(super) fn boards(input: &CutListBoardsInput, list: &CutListBoards) -> Vec<String> {
    let mut wrong = Vec::new();
    let mut cost = 0.0;
    for (k, board) in list.boards.iter().enumerate() {
        let Some(stock) = input.stock.iter().find(|stock| stock.name == board.stock) else {
            wrong.push(format!("unknown stock {}", board.stock));
            continue;
        };
        let n = f64::from(board.alike);
        cost += match input.aim {
            LayoutAim::AllParts => n * stock.price.map_or((stock.length_mm * stock.width_mm).round(), hundredths),
            LayoutAim::MostWorth => n * worth(input, board),
        };
        if (board.length_mm, board.width_mm, &board.defects) != (stock.length_mm, stock.width_mm, &stock.defects) {
            wrong.push(format!("board {k} is not its stock"));
        }
        let before = wrong.len();
        one(input, board, &mut wrong);
        for text in wrong.iter_mut().skip(before) {
            text.insert_str(0, &format!("board {k}: "));
        }
    }
    for stock in &input.stock {
        let used: u32 = list.boards.iter().filter(|board| board.stock == stock.name).map(|board| board.alike).sum();
        if stock.count.is_some_and(|count| used > count) {
            wrong.push(format!("{used} of {} are used", stock.name));
        }
    }
    counts(input, list, &mut wrong);
    number(&mut wrong, &list.quality, cost);
    wrong
}

/// Money is compared to a hundredth.
fn hundredths(price: f64) -> f64 {
    (100.0 * price).round() / 100.0
}

fn worth(input: &CutListBoardsInput, board: &CutBoard) -> f64 {
    let of = |part: &super::BoardPartPlace| {
        let given = input.parts.iter().find(|given| part.group.is_none() && given.name == part.name);
        let area = part.place.along_mm * part.place.across_mm;
        hundredths(given.and_then(|given| given.worth).unwrap_or(area))
    };
    board.parts.iter().map(of).sum()
}

fn counts(input: &CutListBoardsInput, list: &CutListBoards, wrong: &mut Vec<String>) {
    let mut wanted: Vec<(&str, i64)> = Vec::new();
    for part in &input.parts {
        count(&mut wanted, &part.name, i64::from(part.count));
    }
    for group in &input.groups {
        count(&mut wanted, &group.name, i64::from(group.count));
    }
    for board in &list.boards {
        for part in board.parts.iter().filter(|part| part.group.is_none()) {
            count(&mut wanted, &part.name, -i64::from(board.alike));
        }
        for group in &input.groups {
            let members = board.parts.iter().filter(|part| part.group.as_deref() == Some(&group.name)).count();
            if members % group.parts.len() != 0 {
                wrong.push(format!("{} is torn apart", group.name));
            }
            count(&mut wanted, &group.name, -i64::from(board.alike) * (members / group.parts.len()) as i64);
        }
    }
    for missing in &list.missing {
        count(&mut wanted, &missing.name, -i64::from(missing.count));
    }
    wrong.extend(wanted.iter().filter(|(_, n)| *n != 0).map(|(name, n)| format!("{n} of {name} too few")));
}

fn one(input: &CutListBoardsInput, board: &CutBoard, wrong: &mut Vec<String>) {
    let usable = Area {
        x: (input.trim_end_mm, board.length_mm - input.trim_end_mm),
        y: (input.trim_edge_mm, board.width_mm - input.trim_edge_mm),
    };
    let areas: Vec<Area> = board
        .parts
        .iter()
        .map(|part| Area {
            x: (part.place.x_mm, part.place.x_mm + part.place.along_mm),
            y: (part.place.y_mm, part.place.y_mm + part.place.across_mm),
        })
        .collect();
    for (part, area) in board.parts.iter().zip(&areas) {
        sizes(input, part, wrong);
        if area.x.0 < usable.x.0 - SLACK
            || area.x.1 > usable.x.1 + SLACK
            || area.y.0 < usable.y.0 - SLACK
            || area.y.1 > usable.y.1 + SLACK
        {
            wrong.push(format!("{} at {area:?} lies outside {usable:?}", part.name));
        }
        for defect in &board.defects {
            let over = |a: (f64, f64), from: f64, to: f64| a.0 < to - SLACK && a.1 > from + SLACK;
            if over(area.x, defect.from_mm, defect.to_mm) && over(area.y, defect.near_mm, defect.far_mm) {
                wrong.push(format!("{} at {area:?} lies on {defect:?}", part.name));
            }
        }
    }
    for (k, a) in areas.iter().enumerate() {
        for b in &areas[k + 1..] {
            let apart =
                |a: (f64, f64), b: (f64, f64)| a.1 + input.kerf_mm <= b.0 + SLACK || b.1 + input.kerf_mm <= a.0 + SLACK;
            if !apart(a.x, b.x) && !apart(a.y, b.y) {
                wrong.push(format!("{a:?} and {b:?} are less than a kerf apart"));
            }
        }
    }
    in_line(input, board, &areas, wrong);
    sawn(input, board, usable, &areas, wrong);
}

fn sizes(input: &CutListBoardsInput, part: &super::BoardPartPlace, wrong: &mut Vec<String>) {
    let size = (part.place.along_mm, part.place.across_mm);
    let known = match &part.group {
        None => input.parts.iter().any(|given| {
            given.name == part.name
                && match part.turn {
                    PlacedTurn::AsGiven => size == (given.length_mm, given.width_mm),
                    PlacedTurn::Turned => {
                        given.turn == BoardPartTurn::EitherWay && size == (given.width_mm, given.length_mm)
                    }
                }
        }),
        Some(name) => input.groups.iter().filter(|group| &group.name == name).any(|group| {
            group.parts.iter().any(|given| given.name == part.name && size == (given.length_mm, given.width_mm))
        }),
    };
    if !known {
        wrong.push(format!("{} of {size:?} is no part of the list", part.name));
    }
}

/// Members of a group follow one another in their order, with the loss between them.
fn in_line(input: &CutListBoardsInput, board: &CutBoard, areas: &[Area], wrong: &mut Vec<String>) {
    for group in &input.groups {
        let loss = group.loss_mm.unwrap_or(input.kerf_mm);
        let members: Vec<(&str, Area)> = board
            .parts
            .iter()
            .zip(areas)
            .filter(|(part, _)| part.group.as_deref() == Some(&group.name))
            .map(|(part, area)| (part.name.as_str(), *area))
            .collect();
        for run in members.chunks(group.parts.len()) {
            let names: Vec<&str> = run.iter().map(|member| member.0).collect();
            let wanted: Vec<&str> = group.parts.iter().map(|part| part.name.as_str()).collect();
            let next = |a: Area, b: Area| match group.direction {
                GroupDirection::AlongGrain => (b.x.0 - a.x.1, b.y.0 - a.y.0),
                GroupDirection::AcrossGrain => (b.y.0 - a.y.1, b.x.0 - a.x.0),
            };
            let lines_up = run.windows(2).all(|pair| {
                let (gap, off) = next(pair[0].1, pair[1].1);
                (gap - loss).abs() < SLACK && off.abs() < SLACK
            });
            if names != wanted || !lines_up {
                wrong.push(format!("{} is not in line: {run:?}", group.name));
            }
        }
    }
}

/// Makes the cuts one after the other and compares what lies on the bench at the end with the parts.
fn sawn(input: &CutListBoardsInput, board: &CutBoard, usable: Area, areas: &[Area], wrong: &mut Vec<String>) {
    let mut pieces = vec![usable];
    let mut stage = 0;
    for (k, cut) in board.cuts.iter().enumerate() {
        if cut.step as usize != k + 1 || cut.stage < stage {
            wrong.push(format!("step {} is out of order", cut.step));
        }
        stage = cut.stage;
        if cut.loss_mm < input.kerf_mm - SLACK {
            wrong.push(format!("step {} is narrower than the blade", cut.step));
        }
        let rip = cut.cut == EdgeCut::Rip;
        let along = |piece: &Area| if rip { piece.y } else { piece.x };
        let across = |piece: &Area| if rip { piece.x } else { piece.y };
        let divided = pieces.iter().position(|piece| {
            let (e, f) = (along(piece), across(piece));
            cut.at_mm > e.0 - SLACK
                && cut.at_mm < e.1 + SLACK
                && (f.0 - cut.from_mm).abs() < SLACK
                && (f.1 - cut.to_mm).abs() < SLACK
                && (cut.at_mm - e.0 - cut.set_mm).abs() < SLACK
        });
        let Some(place) = divided else {
            wrong.push(format!("step {} divides nothing: {cut:?}", cut.step));
            continue;
        };
        let piece = pieces.swap_remove(place);
        let ends = along(&piece);
        for (from, to) in [(ends.0, cut.at_mm), (cut.at_mm + cut.loss_mm, ends.1)] {
            // A sliver thinner than a kerf is dust; what is cut next begins behind it.
            if to > from - SLACK {
                pieces.push(if rip { Area { y: (from, to), ..piece } } else { Area { x: (from, to), ..piece } });
            }
        }
    }
    for area in areas {
        let same = |a: (f64, f64), b: (f64, f64)| (a.0 - b.0).abs() < SLACK && (a.1 - b.1).abs() < SLACK;
        let place = pieces.iter().position(|piece| same(piece.x, area.x) && same(piece.y, area.y));
        match place {
            Some(k) => {
                pieces.swap_remove(k);
            }
            None => wrong.push(format!("no cut leaves {area:?}")),
        }
    }
    if stage != board.stages || input.stages.is_some_and(|most| stage > most) {
        wrong.push(format!("{stage} stages, {} said, {:?} allowed", board.stages, input.stages));
    }
    first_cut(input, board, usable, areas, wrong);
    for free in &board.offcuts {
        let found = pieces.iter().any(|piece| {
            (piece.x.0 - free.x_mm).abs() < SLACK
                && (piece.y.0 - free.y_mm).abs() < SLACK
                && (piece.x.1 - piece.x.0 - free.along_mm).abs() < SLACK
                && (piece.y.1 - piece.y.0 - free.across_mm).abs() < SLACK
        });
        if !found {
            wrong.push(format!("{free:?} is left over by no cut"));
        }
    }
}

/// The first cut is of the kind asked for, unless some part is as long or wide as the board.
fn first_cut(input: &CutListBoardsInput, board: &CutBoard, usable: Area, areas: &[Area], wrong: &mut Vec<String>) {
    let span = |range: (f64, f64)| range.1 - range.0;
    let spans_width = |area: &Area| span(area.y) > span(usable.y) - SLACK;
    let spans_length = |area: &Area| span(area.x) > span(usable.x) - SLACK;
    let (wanted, excused) = match input.order {
        CutOrder::Free => return,
        CutOrder::RipFirst => (EdgeCut::Rip, areas.iter().any(spans_width)),
        CutOrder::CrossCutFirst => (EdgeCut::CrossCut, areas.iter().any(spans_length)),
    };
    // A group in line may span the board as well.
    let excused = excused || !input.groups.is_empty();
    if let Some(first) = board.cuts.first()
        && first.cut != wanted
        && !excused
    {
        wrong.push(format!("the first cut is {:?}", first.cut));
    }
}
