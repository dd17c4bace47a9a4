//! Parts from boards and sheets, by cuts from edge to edge.

use super::engine::tree::{Axis, Body, Lying, Member, Role, Strip};
use super::engine::watch::{Watch, Watcher};
use super::faults::check;
use super::fit::{LayoutMeasure, LayoutQuality, MissingPart, PER_MONEY, StockUse, money, steps, whole};
use super::solve::{Flaw, MostWorth, Rect, Sheet, Task, limit, solve};
use super::written::written;
use crate::error::Result;
use crate::finding::CautionText;
use crate::limits::limited;
use crate::shell::EdgeCut;

/// A rectangle of a board that must not be used: a knot, wane, sapwood, a check.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<BoardDefect>))]
pub struct BoardDefect {
    /// Where it begins along the grain, from the left end, mm.
    pub from_mm: f64,
    /// Where it ends along the grain, from the left end, mm.
    pub to_mm: f64,
    /// Where it begins across the grain, from the near edge, mm.
    pub near_mm: f64,
    /// Where it ends across the grain, from the near edge, mm.
    pub far_mm: f64,
}

limited!(BoardDefect { from_mm: LENGTH, to_mm: LENGTH, near_mm: LENGTH, far_mm: LENGTH });

/// A kind of board or sheet that can be cut.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<BoardStock>))]
pub struct BoardStock {
    /// Name of the stock.
    pub name: String,
    /// Length along the grain, mm.
    pub length_mm: f64,
    /// Width across the grain, mm.
    pub width_mm: f64,
    /// How many there are; left out for as many as are needed.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub count: Option<u32>,
    /// Price of one, in any currency, compared to a hundredth; left out for all kinds to save area instead of money.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub price: Option<f64>,
    /// Rectangles that must not be used; none by default.
    #[cfg_attr(feature = "json", serde(default))]
    pub defects: Vec<BoardDefect>,
}

limited!(BoardStock { length_mm: STOCK_SIZE, width_mm: STOCK_SIZE, count: COUNT, price: STOCK_PRICE });

/// Whether the grain binds a part.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum BoardPartTurn {
    /// Its length lies along the grain.
    #[default]
    AlongGrain,
    /// It may lie either way: sheet goods without a figure.
    EitherWay,
}

/// Equal parts.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<BoardPart>))]
pub struct BoardPart {
    /// Name of the part.
    pub name: String,
    /// Length along the grain, mm.
    pub length_mm: f64,
    /// Width across the grain, mm.
    pub width_mm: f64,
    /// How many.
    #[cfg_attr(feature = "json", serde(default = "super::bars::one"))]
    pub count: u32,
    /// Whether the grain binds it.
    #[cfg_attr(feature = "json", serde(default))]
    pub turn: BoardPartTurn,
    /// Worth of one, used when the greatest worth is sought; its area in mm² where left out.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub worth: Option<f64>,
}

limited!(BoardPart { length_mm: STOCK_SIZE, width_mm: STOCK_SIZE, count: COUNT, worth: WORTH });

/// Which way the members of a group follow one another.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum GroupDirection {
    /// End to end: the grain runs on from one into the next.
    AlongGrain,
    /// Side by side: ripped from one wide piece.
    AcrossGrain,
}

/// A member of a group.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<GroupPart>))]
pub struct GroupPart {
    /// Name of the part.
    pub name: String,
    /// Length along the grain, mm.
    pub length_mm: f64,
    /// Width across the grain, mm.
    pub width_mm: f64,
}

limited!(GroupPart { length_mm: STOCK_SIZE, width_mm: STOCK_SIZE });

/// Parts that lie in line, in their order, in one piece of board, so that the grain runs on from one into the next.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<PartGroup>))]
pub struct PartGroup {
    /// Name of the group.
    pub name: String,
    /// How many such groups.
    #[cfg_attr(feature = "json", serde(default = "super::bars::one"))]
    pub count: u32,
    /// Which way the members follow one another.
    pub direction: GroupDirection,
    /// Lost between neighbours, mm, see `grain_run`; a kerf where left out, and never less.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub loss_mm: Option<f64>,
    /// The members in their order, from the left or from the near edge.
    pub parts: Vec<GroupPart>,
}

limited!(PartGroup { count: COUNT, loss_mm: SMALL_LENGTH });

/// What is sought.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum LayoutAim {
    /// All parts, from the stock of the least price or area.
    #[default]
    AllParts,
    /// The parts of the greatest worth, from the stock there is.
    MostWorth,
}

/// Which cuts come first.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum CutOrder {
    /// Whichever gives more, board by board.
    #[default]
    Free,
    /// Rips along the whole board, then cross-cuts, in turn.
    RipFirst,
    /// Cross-cuts over the whole board, then rips, in turn.
    CrossCutFirst,
}

/// A list of parts to be cut from boards.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<CutListBoardsInput>))]
pub struct CutListBoardsInput {
    /// The boards there are, all of one thickness.
    pub stock: Vec<BoardStock>,
    /// The parts wanted.
    #[cfg_attr(feature = "json", serde(default))]
    pub parts: Vec<BoardPart>,
    /// Groups of parts that stay in line; none by default.
    #[cfg_attr(feature = "json", serde(default))]
    pub groups: Vec<PartGroup>,
    /// What is sought.
    #[cfg_attr(feature = "json", serde(default))]
    pub aim: LayoutAim,
    /// Which cuts come first.
    #[cfg_attr(feature = "json", serde(default))]
    pub order: CutOrder,
    /// Rips and cross-cuts may follow one another so many times; left out for as many as it takes.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub stages: Option<u32>,
    /// Kerf of the blade, mm.
    pub kerf_mm: f64,
    /// Cut off each end of a board before anything else, its kerf included, mm.
    #[cfg_attr(feature = "json", serde(default))]
    pub trim_end_mm: f64,
    /// Cut off each long edge of a board before anything else, its kerf included, mm.
    #[cfg_attr(feature = "json", serde(default))]
    pub trim_edge_mm: f64,
    /// Steps that the search may take, in millions; 60 million take about a second.
    #[cfg_attr(feature = "json", serde(default = "usual_steps"))]
    pub steps_million: f64,
}

/// About a second on a desk computer; a choice.
#[cfg(feature = "json")]
fn usual_steps() -> f64 {
    60.0
}

limited!(CutListBoardsInput {
    stages: CUT_STAGES,
    kerf_mm: KERF,
    trim_end_mm: SMALL_LENGTH,
    trim_edge_mm: SMALL_LENGTH,
    steps_million: SEARCH_STEPS,
});

/// A rectangle on a board.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct BoardRectangle {
    /// From the left end of the board, mm.
    pub x_mm: f64,
    /// From the near edge of the board, mm.
    pub y_mm: f64,
    /// Extent along the grain of the board, mm.
    pub along_mm: f64,
    /// Extent across the grain of the board, mm.
    pub across_mm: f64,
}

/// A part on its board.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct BoardPartPlace {
    /// Name of the part.
    pub name: String,
    /// Name of its group; absent for a part by itself.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub group: Option<String>,
    /// Where it lies.
    pub place: BoardRectangle,
    /// Whether its length lies along the grain, or it was turned.
    pub turn: PlacedTurn,
}

/// Which way a part lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum PlacedTurn {
    /// Its length lies along the grain.
    AsGiven,
    /// Its length lies across the grain.
    Turned,
}

/// A cut from edge to edge of the piece it divides.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct LayoutCut {
    /// Place in the order of the cuts of this board, from 1; the cuts that trim the board come before.
    pub step: u32,
    /// How many times rips and cross-cuts have followed one another.
    pub stage: u32,
    /// Rip along the grain of the board or cross-cut.
    pub cut: EdgeCut,
    /// Setting of the fence or the stop: from the near edge of the piece that is divided, mm.
    pub set_mm: f64,
    /// Where the kept edge lies, the kerf beyond it: from the near edge of the board for a rip, from its left end for a
    /// cross-cut, mm.
    pub at_mm: f64,
    /// Lost beyond the kept edge, mm: the kerf, or what the corner between two members of a group takes.
    pub loss_mm: f64,
    /// Where the cut begins on the board, mm.
    pub from_mm: f64,
    /// Where the cut ends on the board, mm.
    pub to_mm: f64,
}

/// A board with the parts that are cut from it.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct CutBoard {
    /// Name of the stock.
    pub stock: String,
    /// How many boards are cut alike.
    pub alike: u32,
    /// Length along the grain, mm.
    pub length_mm: f64,
    /// Width across the grain, mm.
    pub width_mm: f64,
    /// The parts.
    pub parts: Vec<BoardPartPlace>,
    /// The cuts in their order.
    pub cuts: Vec<LayoutCut>,
    /// Clear pieces that are left over, the largest first.
    pub offcuts: Vec<BoardRectangle>,
    /// Rectangles that must not be used.
    pub defects: Vec<BoardDefect>,
    /// How many times rips and cross-cuts follow one another.
    pub stages: u32,
}

/// A layout of parts on boards.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct CutListBoards {
    /// Value, bound and what was proven.
    pub quality: LayoutQuality,
    /// How many of each kind of stock are cut.
    pub stock: Vec<StockUse>,
    /// The boards.
    pub boards: Vec<CutBoard>,
    /// Parts and groups that found no place: because the stock ran out, or because others are worth more.
    pub missing: Vec<MissingPart>,
    /// Kerf of the blade, mm.
    pub kerf_mm: f64,
    /// Standing cautions.
    pub cautions: Vec<CautionText>,
}

/// Which parts come from which board, cut by cut from edge to edge, and a bound on what any layout needs.
///
/// # Equation
/// ```text
/// least Σ price of the boards cut   or   greatest Σ worth of the parts cut
/// a cut divides a piece of extent E into a and E − a − k
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | E | extent of the piece, first that of the board without its trim | mm | `stock`, `trim_end_mm`, `trim_edge_mm` |
/// | a | extent that is cut off | mm | `set_mm` |
/// | k | kerf | mm | `kerf_mm` |
///
/// The last cut may run off the edge. A stage is a run of cuts in one direction; trimming a part to its width is a cut too.
/// The search takes branches out of trees of cuts and puts them back; single sheets are built up exactly; bounds
/// come from the area, from dual feasible functions and from a linear programme over patterns.
///
/// # Limits
/// Boards of one thickness with straight, square edges. With defects, an order or a number of stages the bound is that of
/// the same boards cut freely. Rip first and cross-cut first hold for every board, save that a part as long or as wide as
/// the usable board needs no such cut. A defect is set apart by cuts along its sides. Sizes are compared to a
/// micrometre, prices and worths to a hundredth.
///
/// # Errors
/// `out_of_range`, `not_finite`, each with its path; `duplicate_field` for stock that shares a name; `inconsistent` for an
/// empty list, prices for some of the stock only, a defect that ends before it begins, a group without members or with a
/// loss below the kerf, stock without a count when the greatest worth is sought, and a part larger than any board.
///
/// # Source
/// J. Gardeyn, T. Wauters, EJOR 301 (2022); K. V. Viswanathan, A. Bagchi, Operations Research 41 (1993); S. P. Fekete,
/// J. Schepers, Math. Methods of Oper. Res. 60 (2004), all recalled; judged on published instances, see the page on
/// layouts.
///
/// # Examples
/// ```
/// use beamcraft_core::layout::*;
/// let part = |name: &str, length_mm, width_mm| BoardPart {
///     name: name.into(), length_mm, width_mm, count: 1, turn: BoardPartTurn::AlongGrain, worth: None,
/// };
/// let board = BoardStock {
///     name: "8 ft".into(), length_mm: 2440.0, width_mm: 203.0, count: None, price: None, defects: vec![],
/// };
/// let list = cut_list_boards(&CutListBoardsInput {
///     stock: vec![board], parts: vec![part("front", 1830.0, 185.0), part("end", 215.0, 185.0), part("block", 300.0, 90.0)],
///     groups: vec![], aim: LayoutAim::AllParts, order: CutOrder::CrossCutFirst, stages: Some(2), kerf_mm: 3.2,
///     trim_end_mm: 10.0, trim_edge_mm: 0.0, steps_million: 1.0,
/// })?;
/// assert_eq!((list.boards.len(), list.quality.proof), (1, LayoutProof::Optimal));
/// assert_eq!(list.boards[0].cuts[0].set_mm, 1830.0);
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn cut_list_boards(input: &CutListBoardsInput) -> Result<CutListBoards> {
    cut_list_boards_with(input, None)
}

/// As [`cut_list_boards`], telling how far it has come; when `watcher` breaks off, the best layout so far is given.
///
/// # Errors
/// As [`cut_list_boards`].
pub fn cut_list_boards_with_progress(input: &CutListBoardsInput, watcher: Watcher<'_>) -> Result<CutListBoards> {
    cut_list_boards_with(input, Some(watcher))
}

fn cut_list_boards_with(input: &CutListBoardsInput, watcher: Option<Watcher<'_>>) -> Result<CutListBoards> {
    check(input)?;
    let measure = match input.aim {
        LayoutAim::MostWorth => (LayoutMeasure::Worth, 1.0 / PER_MONEY),
        LayoutAim::AllParts if input.stock.iter().all(|board| board.price.is_some()) => {
            (LayoutMeasure::Price, 1.0 / PER_MONEY)
        }
        LayoutAim::AllParts => (LayoutMeasure::Area, 1.0),
    };
    let mut watch = Watch::new(steps(input.steps_million), measure.1, watcher);
    let solved = solve(&task(input), &mut watch);
    let list = written(input, measure, &solved, &watch);
    watch.finish();
    Ok(list)
}

/// Length and width with the kerf, in whole numbers.
pub(super) fn with_kerf(input: &CutListBoardsInput, length_mm: f64, width_mm: f64) -> (i64, i64) {
    (whole(length_mm + input.kerf_mm), whole(width_mm + input.kerf_mm))
}

pub(super) fn usable(input: &CutListBoardsInput, board: &BoardStock) -> (i64, i64) {
    let clear = |size: f64, trim: f64| {
        let clear = size - 2.0 * trim;
        if clear > 0.0 { whole(clear + input.kerf_mm) } else { 0 }
    };
    (clear(board.length_mm, input.trim_end_mm), clear(board.width_mm, input.trim_edge_mm))
}

/// What is lost between the members of a group beyond the kerf.
fn beyond_kerf(input: &CutListBoardsInput, group: &PartGroup) -> i64 {
    (whole(group.loss_mm.unwrap_or(input.kerf_mm)) - whole(input.kerf_mm)).max(0)
}

/// Extent of a group with its kerf: along and across the grain.
pub(super) fn group_size(input: &CutListBoardsInput, group: &PartGroup) -> (i64, i64) {
    let sizes: Vec<(i64, i64)> =
        group.parts.iter().map(|part| with_kerf(input, part.length_mm, part.width_mm)).collect();
    let between = beyond_kerf(input, group) * sizes.len().saturating_sub(1) as i64;
    let in_row = |side: fn(&(i64, i64)) -> i64| sizes.iter().map(side).sum::<i64>() + between;
    let widest = |side: fn(&(i64, i64)) -> i64| sizes.iter().map(side).max().unwrap_or(0);
    match group.direction {
        GroupDirection::AlongGrain => (in_row(|s| s.0), widest(|s| s.1)),
        GroupDirection::AcrossGrain => (widest(|s| s.0), in_row(|s| s.1)),
    }
}

/// The cuts that part a group; the members are numbered behind the parts and the members of earlier groups.
pub(super) fn group_tree(input: &CutListBoardsInput, group: &PartGroup, first: u32) -> Strip {
    let (w, h) = group_size(input, group);
    let axis = if group.direction == GroupDirection::AlongGrain { Axis::X } else { Axis::Y };
    let mut row = Strip { role: Role::Fixed, ..Strip::new(axis, w, h) };
    row.free = 0;
    let between = beyond_kerf(input, group);
    for (k, part) in group.parts.iter().enumerate() {
        let (w, h) = with_kerf(input, part.length_mm, part.width_mm);
        let (along, across) = if axis == Axis::X { (w, h) } else { (h, w) };
        if k > 0 && between > 0 {
            row.members.push(Member { extent: between, body: Body::Waste });
        }
        let lying = Lying { kind: first + k as u32, turned: 0, w, h };
        let body = if across == row.cross {
            Body::Part(lying)
        } else {
            let mut cell = Strip { cross: along, free: row.cross, ..Strip::new(axis.other(), 0, 0) };
            cell.insert(&[], false, lying);
            Body::Strip(Box::new(cell))
        };
        row.members.push(Member { extent: along, body });
    }
    row
}

fn group_stages(input: &CutListBoardsInput, group: &PartGroup) -> u32 {
    let (w, h) = group_size(input, group);
    let even = group.parts.iter().all(|part| {
        let size = with_kerf(input, part.length_mm, part.width_mm);
        if group.direction == GroupDirection::AlongGrain { size.1 == h } else { size.0 == w }
    });
    u32::from(group.parts.len() > 1) + u32::from(!even)
}

fn task(input: &CutListBoardsInput) -> Task {
    let sheets = input
        .stock
        .iter()
        .map(|board| {
            let (w, h) = usable(input, board);
            let area = (board.length_mm * board.width_mm).round() as i64;
            let flaws = board.defects.iter().map(|defect| {
                Flaw::of(
                    (defect.from_mm - input.trim_end_mm, defect.to_mm - input.trim_end_mm),
                    Some((defect.near_mm - input.trim_edge_mm, defect.far_mm - input.trim_edge_mm)),
                )
            });
            Sheet { w, h, cost: board.price.map_or(area, money), limit: limit(board.count), flaws: flaws.collect() }
        })
        .collect();
    let parts = input.parts.iter().map(|part| {
        let (w, h) = with_kerf(input, part.length_mm, part.width_mm);
        let turned = (part.turn == BoardPartTurn::EitherWay).then_some((h, w));
        let worth = money(part.worth.unwrap_or(part.length_mm * part.width_mm));
        Rect { turned, worth, ..Rect::fixed(w, h, part.count) }
    });
    let groups = input.groups.iter().map(|group| {
        let (w, h) = group_size(input, group);
        let worth = money(group.parts.iter().map(|part| part.length_mm * part.width_mm).sum());
        Rect { worth, inner_stages: group_stages(input, group), ..Rect::fixed(w, h, group.count) }
    });
    Task {
        sheets,
        parts: parts.chain(groups).collect(),
        kerf: (whole(input.kerf_mm), whole(input.kerf_mm)),
        most_worth: (input.aim == LayoutAim::MostWorth).then_some(MostWorth),
        first: match input.order {
            CutOrder::Free => None,
            CutOrder::RipFirst => Some(Axis::Y),
            CutOrder::CrossCutFirst => Some(Axis::X),
        },
        stages: input.stages,
    }
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const CUT_LIST_BOARDS: crate::json::Calculation = crate::json::calculation!(
    cut_list_boards: CutListBoardsInput => CutListBoards, Document,
    "Which parts come from which board, cut by cut with kerf, grain, defects and groups, with a proven bound"
);

#[cfg(test)]
#[path = "boards_tests.rs"]
mod tests;
