//! Cut lists as sheets for the saw: a page a board with its cuts in their order, and the same boards as DXF.

use super::dxf::{Drawing, Layer, NOTES};
use super::svg::{
    Anchor, Fill, Hatch, LARGE, Line, NORMAL, Paper, Run, SMALL, Sheet, Spot, fitted, text_width, wrapped,
};
use super::text::fixed;
use crate::layout::{BoardRectangle, CutBoard, CutListBoards, LayoutCut, LayoutEnd, LayoutProof};
use crate::plan::ReportLengths;
use crate::shell::EdgeCut;

/// Margin of a page, mm.
const MARGIN: f64 = 10.0;
/// Left edge of texts, mm.
const LEFT: f64 = 16.0;
/// Upper edge of the board on its page, mm.
const BOARD_TOP: f64 = 58.0;
/// Most height that a drawn board takes, mm.
const BOARD_HEIGHT: f64 = 95.0;
/// Height of a line of the list of cuts, mm.
const ROW: f64 = 4.6;
/// Boards that are drawn; the rest are counted.
const MOST_PAGES: usize = 60;
/// Cuts whose number is written at the cut; more would hide the board.
const MOST_NUMBERS: usize = 40;

/// A cut list as an SVG sheet, black on white, one page below the other and a page a board: the parts with names and sizes,
/// the cuts in their order with the setting of fence or stop, the parts in a list, the way of the grain, defects (crossed)
/// and what is left over (hatched). A4 where lengths are metric, US Letter where in inches.
///
/// Cuts beyond the room of a page, and boards beyond sixty pages, are counted in their last line.
pub fn cut_list_svg(list: &CutListBoards, lengths: ReportLengths) -> String {
    let paper = match lengths {
        ReportLengths::Metric => Paper::A4,
        ReportLengths::Inches => Paper::Letter,
    };
    let description = format!("Boards with the cuts in their order. {}", lengths.described());
    let mut sheet = Sheet::new(paper, "Cut list", &description);
    let mut corner = Spot::new(0.0, 0.0);
    let pages = list.boards.len().min(MOST_PAGES);
    for (k, board) in list.boards.iter().take(MOST_PAGES).enumerate() {
        if k > 0 {
            corner = sheet.next_page();
        }
        let mut page = Page { sheet: &mut sheet, corner, size: paper.size_mm(), lengths };
        page.frame();
        page.head(list, board, (k + 1, list.boards.len()));
        page.board(board);
        page.cuts(board);
        if k + 1 == pages {
            page.foot(list, list.boards.len() - pages);
        }
    }
    if list.boards.is_empty() {
        let mut page = Page { sheet: &mut sheet, corner, size: paper.size_mm(), lengths };
        page.frame();
        page.words(21.0, NORMAL, "No board is cut.");
        page.foot(list, 0);
    }
    sheet.finish()
}

/// What is known about a layout, in words.
fn known(list: &CutListBoards) -> String {
    let stopped = match list.quality.end {
        LayoutEnd::Finished => "",
        LayoutEnd::StepsSpent => " The search used up its steps.",
        LayoutEnd::Stopped => " The search was stopped.",
    };
    let known = match list.quality.proof {
        LayoutProof::Optimal => "Proven: no layout is better.".to_owned(),
        LayoutProof::WithinGap => {
            format!("Within {} % of the best there can be.", fixed(list.quality.gap_pct.unwrap_or(0.0), 1))
        }
        LayoutProof::Incomplete => "Some parts found no board.".to_owned(),
    };
    known + stopped
}

/// One page of the sheet.
struct Page<'s> {
    sheet: &'s mut Sheet,
    corner: Spot,
    size: (f64, f64),
    lengths: ReportLengths,
}

/// From the board to the page.
#[derive(Clone, Copy)]
struct View {
    /// Lower left corner of the board.
    corner: Spot,
    scale: f64,
}

impl View {
    fn at(self, x_mm: f64, y_mm: f64) -> Spot {
        self.corner.by(self.scale * x_mm, -self.scale * y_mm)
    }

    fn corners(self, place: &BoardRectangle) -> [Spot; 2] {
        [self.at(place.x_mm, place.y_mm), self.at(place.x_mm + place.along_mm, place.y_mm + place.across_mm)]
    }

    fn ring(self, place: &BoardRectangle) -> [Spot; 4] {
        let [one, other] = self.corners(place);
        [one, Spot::new(other.x, one.y), other, Spot::new(one.x, other.y)]
    }
}

impl Page<'_> {
    fn frame(&mut self) {
        let (width, height) = self.size;
        let far = self.corner.by(width - MARGIN, height - MARGIN);
        self.sheet.rectangle(self.corner.by(MARGIN, MARGIN), far, Line::Outline, Fill::Nothing);
    }

    fn words(&mut self, y: f64, size: f64, text: &str) {
        let room = self.size.0 - 2.0 * LEFT;
        self.sheet.text(self.corner.by(LEFT, y), size, Anchor::Start, &fitted(text, room, size));
    }

    fn head(&mut self, list: &CutListBoards, board: &CutBoard, (number, count): (usize, usize)) {
        let alike = if board.alike > 1 { format!(", cut {} alike", board.alike) } else { String::new() };
        let title = format!("Board {number} of {count}: {}{alike}", board.stock);
        let room = self.size.0 - 2.0 * LEFT;
        self.sheet.heading(self.corner.by(LEFT, 21.0), LARGE, &fitted(&title, room, 1.1 * LARGE));
        let size = format!(
            "{} × {}, kerf {}. Grain runs from left to right. {}",
            self.lengths.full(board.length_mm),
            self.lengths.full(board.width_mm),
            self.lengths.full(list.kerf_mm),
            known(list)
        );
        self.words(28.0, SMALL, &size);
        self.words(
            33.0,
            SMALL,
            "Trim the ends and edges first. Numbers at the cuts are their order; the list gives fence or stop.",
        );
        // A caution that is cut short is none.
        let lines = list.cautions.iter().take(2).flat_map(|caution| wrapped(caution.text, room, SMALL));
        for (k, line) in lines.take(5).enumerate() {
            self.words(38.0 + 4.0 * k as f64, SMALL, &line);
        }
    }

    fn board(&mut self, board: &CutBoard) {
        let room = self.size.0 - 2.0 * LEFT;
        let scale = (room / board.length_mm.max(1.0)).min(BOARD_HEIGHT / board.width_mm.max(1.0));
        let corner = self.corner.by(LEFT, BOARD_TOP + scale * board.width_mm);
        let view = View { corner, scale };
        self.sheet.rectangle(view.at(0.0, 0.0), view.at(board.length_mm, board.width_mm), Line::Outline, Fill::Nothing);
        for place in &board.offcuts {
            self.sheet.hatch(&view.ring(place), Hatch::Rising, 3.0);
        }
        for part in &board.parts {
            let [one, other] = view.corners(&part.place);
            self.sheet.rectangle(one, other, Line::Outline, Fill::White);
            self.part(part.name.as_str(), &part.place, view);
        }
        for defect in &board.defects {
            let place = BoardRectangle {
                x_mm: defect.from_mm,
                y_mm: defect.near_mm,
                along_mm: (defect.to_mm.min(board.length_mm) - defect.from_mm).max(0.0),
                across_mm: (defect.far_mm.min(board.width_mm) - defect.near_mm).max(0.0),
            };
            let [one, other] = view.corners(&place);
            self.sheet.rectangle(one, other, Line::Hidden, Fill::Nothing);
            self.sheet.line(one, other, Line::Thin);
            self.sheet.line(Spot::new(one.x, other.y), Spot::new(other.x, one.y), Line::Thin);
        }
        self.grain(view, board);
        if board.cuts.len() <= MOST_NUMBERS {
            for cut in &board.cuts {
                self.number(cut, view);
            }
        }
    }

    /// Name and size of a part where there is room, else its name, else nothing: the list of parts has it.
    fn part(&mut self, name: &str, place: &BoardRectangle, view: View) {
        let (w, h) = (view.scale * place.along_mm, view.scale * place.across_mm);
        let size = format!("{} × {}", self.lengths.bare(place.along_mm), self.lengths.bare(place.across_mm));
        let middle = view.at(place.x_mm + 0.5 * place.along_mm, place.y_mm + 0.5 * place.across_mm);
        let upright = h > w;
        let (long, short) = if upright { (h, w) } else { (w, h) };
        let run = if upright { Run::Upright } else { Run::Level };
        let beside = |off: f64| if upright { middle.by(off, 0.0) } else { middle.by(0.0, off) };
        let name = fitted(name, long - 1.5, SMALL);
        if short > 7.5 && text_width(&size, SMALL) < long - 1.5 {
            self.sheet.text_run(beside(-0.4), SMALL, Anchor::Middle, run, &name);
            self.sheet.text_run(beside(2.9), SMALL, Anchor::Middle, run, &size);
        } else if short > 3.2 && long > 5.0 {
            let both = format!("{name}  {size}");
            let text = if text_width(&both, SMALL) < long - 1.5 { both } else { name };
            self.sheet.text_run(beside(0.9), SMALL, Anchor::Middle, run, &text);
        }
    }

    /// Which way the grain runs: a double arrow below the board.
    fn grain(&mut self, view: View, board: &CutBoard) {
        let y = 6.0;
        let (from, to) = (view.at(0.0, 0.0).by(0.0, y), view.at(board.length_mm, 0.0).by(0.0, y));
        self.sheet.line(from, to, Line::Thin);
        self.sheet.arrowhead(from, to, 2.5);
        self.sheet.arrowhead(to, from, 2.5);
        let middle = Spot::new(0.5 * (from.x + to.x), from.y + 0.9);
        self.sheet.text(middle, SMALL, Anchor::Middle, "grain");
    }

    fn number(&mut self, cut: &LayoutCut, view: View) {
        // A third along the cut, so that numbers of cuts that meet stand apart.
        let along = cut.from_mm + 0.3 * (cut.to_mm - cut.from_mm);
        let at = match cut.cut {
            EdgeCut::Rip => view.at(along, cut.at_mm),
            EdgeCut::CrossCut => view.at(cut.at_mm, along),
        };
        self.sheet.circle(at, 1.9, Line::Thin, Fill::White);
        self.sheet.text(at.by(0.0, 0.75), 2.0, Anchor::Middle, &cut.step.to_string());
    }

    fn cuts(&mut self, board: &CutBoard) {
        let room = self.size.0 - 2.0 * LEFT;
        let scale = (room / board.length_mm.max(1.0)).min(BOARD_HEIGHT / board.width_mm.max(1.0));
        let top = BOARD_TOP + scale * board.width_mm + 17.0;
        // Two columns of cuts, one of parts.
        let (columns, column) = (2.0_f64, room / 3.0);
        let rows = ((self.size.1 - MARGIN - 22.0 - top) / ROW).floor().max(1.0);
        self.words(top - 1.5, NORMAL, "Cuts in their order");
        let cuts: Vec<String> = board.cuts.iter().map(|cut| self.cut_words(cut)).collect();
        let spot = |k: usize| {
            let (row, side) = ((k as f64) % rows, (k as f64 / rows).floor());
            self.corner.by(LEFT + side * column, top + ROW * (row + 1.0))
        };
        for (k, text) in within(cuts, (columns * rows) as usize).iter().enumerate() {
            self.sheet.text(spot(k), SMALL, Anchor::Start, &fitted(text, column - 2.0, SMALL));
        }
        let left = self.corner.by(LEFT + columns * column, top);
        self.sheet.text(left.by(0.0, -1.5), NORMAL, Anchor::Start, "Parts");
        for (k, text) in within(self.parts(board), rows as usize).iter().enumerate() {
            let at = left.by(0.0, ROW * (k as f64 + 1.0));
            self.sheet.text(at, SMALL, Anchor::Start, &fitted(text, column - 2.0, SMALL));
        }
    }

    fn cut_words(&self, cut: &LayoutCut) -> String {
        let (kind, what) = match cut.cut {
            EdgeCut::Rip => ("rip", "fence"),
            EdgeCut::CrossCut => ("cross-cut", "stop"),
        };
        format!("{}  {kind}, {what} {}", cut.step, self.lengths.full(cut.set_mm))
    }

    /// Equal parts with their number and size, in the order in which they lie.
    fn parts(&self, board: &CutBoard) -> Vec<String> {
        let mut kinds: Vec<(String, u32)> = Vec::new();
        for part in &board.parts {
            let (along, across) = (self.lengths.bare(part.place.along_mm), self.lengths.bare(part.place.across_mm));
            let words = format!("{}  {along} × {across}", part.name);
            match kinds.iter_mut().find(|(known, _)| *known == words) {
                Some((_, count)) => *count += 1,
                None => kinds.push((words, 1)),
            }
        }
        kinds.into_iter().map(|(words, count)| format!("{count} × {words}")).collect()
    }

    fn foot(&mut self, list: &CutListBoards, not_drawn: usize) {
        let mut words = Vec::new();
        if not_drawn > 0 {
            words.push(format!("{not_drawn} more boards are not drawn."));
        }
        if !list.missing.is_empty() {
            let names = list.missing.iter().map(|part| format!("{} × {}", part.count, part.name));
            words.push(format!("No place: {}.", names.collect::<Vec<_>>().join(", ")));
        }
        let y = self.size.1 - MARGIN - 3.0;
        self.words(y, SMALL, &words.join(" "));
    }
}

/// The lines for which there is room; the last one counts those left out.
fn within(mut lines: Vec<String>, places: usize) -> Vec<String> {
    if lines.len() > places {
        let shown = places.saturating_sub(1);
        let more = format!("and {} more", lines.len() - shown);
        lines.truncate(shown);
        lines.push(more);
    }
    lines
}

/// Layers of a cut list.
const LAYERS: [Layer; 6] = [
    (BOARD, 9, "PHANTOM"),
    (PARTS, 7, "CONTINUOUS"),
    (CUTS, 1, "HIDDEN"),
    (LEFT_OVER, 8, "CONTINUOUS"),
    (DEFECTS, 6, "HIDDEN"),
    (NOTES, 2, "CONTINUOUS"),
];
const BOARD: &str = "BOARD";
const PARTS: &str = "PARTS";
const CUTS: &str = "CUTS";
const LEFT_OVER: &str = "LEFT_OVER";
const DEFECTS: &str = "DEFECTS";

/// A cut list as a DXF drawing (release 12), one unit a millimetre, one board above the other with the grain level.
///
/// | layer | holds |
/// |---|---|
/// | `BOARD` | outline of the board |
/// | `PARTS` | outline of every part |
/// | `CUTS` | the kept edge of every cut |
/// | `LEFT_OVER` | clear pieces that are left over |
/// | `DEFECTS` | rectangles that must not be used |
/// | `NOTES` | names, sizes, order of the cuts, grain |
pub fn cut_list_dxf(list: &CutListBoards) -> String {
    let mut drawing = Drawing::new("beamcraft cut list", &LAYERS);
    let mut y = 0.0;
    for (k, board) in list.boards.iter().enumerate() {
        let letters = (0.04 * board.width_mm).clamp(4.0, 40.0);
        let title = format!(
            "Board {}: {}, {} x {}, cut {} alike, grain from left to right",
            k + 1,
            board.stock,
            fixed(board.length_mm, 1),
            fixed(board.width_mm, 1),
            board.alike
        );
        drawing.note((0.0, y + 0.5 * letters), letters, &title);
        y -= board.width_mm;
        let ring = |x: f64, at: f64, w: f64, h: f64| {
            [(x, y + at), (x + w, y + at), (x + w, y + at + h), (x, y + at + h)].into_iter()
        };
        drawing.ring(BOARD, ring(0.0, 0.0, board.length_mm, board.width_mm));
        for place in &board.offcuts {
            drawing.ring(LEFT_OVER, ring(place.x_mm, place.y_mm, place.along_mm, place.across_mm));
        }
        for defect in &board.defects {
            let (w, h) = (defect.to_mm - defect.from_mm, defect.far_mm - defect.near_mm);
            drawing.ring(DEFECTS, ring(defect.from_mm, defect.near_mm, w, h));
        }
        for part in &board.parts {
            let place = &part.place;
            drawing.ring(PARTS, ring(place.x_mm, place.y_mm, place.along_mm, place.across_mm));
            let text = format!("{} {} x {}", part.name, fixed(place.along_mm, 1), fixed(place.across_mm, 1));
            let height = (0.5 * place.across_mm).min(place.along_mm / (0.8 * text.len().max(1) as f64)).min(letters);
            drawing.note((place.x_mm + height, y + place.y_mm + 0.5 * (place.across_mm - height)), height, &text);
        }
        for cut in &board.cuts {
            let (from, to) = match cut.cut {
                EdgeCut::Rip => ((cut.from_mm, y + cut.at_mm), (cut.to_mm, y + cut.at_mm)),
                EdgeCut::CrossCut => ((cut.at_mm, y + cut.from_mm), (cut.at_mm, y + cut.to_mm)),
            };
            drawing.line(CUTS, from, to);
            drawing.note((to.0 + 0.2 * letters, to.1), 0.6 * letters, &cut.step.to_string());
        }
        y -= 4.0 * letters;
    }
    drawing.finish()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::*;

    fn list(stock_count: Option<u32>) -> CutListBoards {
        let part = |name: &str, length_mm, width_mm, count| BoardPart {
            name: name.to_owned(),
            length_mm,
            width_mm,
            count,
            turn: BoardPartTurn::AlongGrain,
            worth: None,
        };
        let knot = BoardDefect { from_mm: 1900.0, to_mm: 1960.0, near_mm: 20.0, far_mm: 60.0 };
        cut_list_boards(&CutListBoardsInput {
            stock: vec![BoardStock {
                name: "ash <8 ft>".to_owned(),
                length_mm: 2440.0,
                width_mm: 203.0,
                count: stock_count,
                price: None,
                defects: vec![knot],
            }],
            parts: vec![
                part("front", 1830.0, 185.0, 1),
                part("end", 215.0, 185.0, 2),
                part("block & key", 90.0, 60.0, 3),
            ],
            groups: Vec::new(),
            aim: LayoutAim::AllParts,
            order: CutOrder::CrossCutFirst,
            stages: Some(3),
            kerf_mm: 3.2,
            trim_end_mm: 10.0,
            trim_edge_mm: 2.0,
            steps_million: 0.2,
        })
        .expect("allowed")
    }

    #[test]
    fn every_board_has_its_page_its_parts_and_its_cuts() {
        let list = list(None);
        let svg = cut_list_svg(&list, ReportLengths::Metric);
        assert!(svg.contains(&format!("height=\"{}mm\"", 297 * list.boards.len())), "a page each");
        assert!(svg.contains("ash &lt;8 ft&gt;") && svg.contains("front") && svg.contains("1830 × 185"));
        let cuts: usize = list.boards.iter().map(|board| board.cuts.len()).sum();
        let texts = super::super::read_back::texts(&svg);
        let told = |(text, _): &&(String, _)| text.contains("cross-cut, stop") || text.contains("rip, fence");
        assert_eq!(texts.iter().filter(told).count(), cuts);
        assert!(
            svg.contains("3 × block &amp; key  90 × 60") || svg.contains("2 × end  215 × 185"),
            "parts with their number"
        );
        assert!(!svg.contains("NaN") && !svg.contains("inf"));
        let last_words = list.cautions.iter().filter_map(|caution| caution.text.rsplit(' ').next());
        assert!(last_words.into_iter().all(|word| svg.contains(&format!("{word}</text>"))), "cautions in full");
        assert!(!svg.contains("#f00") && !svg.contains("rgb("), "black on white");
        let inches = cut_list_svg(&list, ReportLengths::Inches);
        assert!(inches.contains("215.9") && inches.contains("1/8"), "kerf in shop inches");
    }

    #[test]
    fn what_found_no_board_is_said() {
        let short = list(Some(1));
        assert!(!short.missing.is_empty());
        let svg = cut_list_svg(&short, ReportLengths::Metric);
        assert!(svg.contains("No place: ") && svg.contains("Some parts found no board."));
        let none = CutListBoards { boards: Vec::new(), ..short };
        assert!(cut_list_svg(&none, ReportLengths::Metric).contains("No board is cut."));
    }

    #[test]
    fn the_drawing_file_holds_every_outline() {
        let list = list(None);
        let dxf = cut_list_dxf(&list);
        let groups: Vec<&str> = dxf.lines().collect();
        let rings = |layer: &str| {
            groups.windows(4).filter(|g| g[1] == "POLYLINE" && g[2].trim() == "8" && g[3] == layer).count()
        };
        let parts: usize = list.boards.iter().map(|board| board.parts.len()).sum();
        assert_eq!((rings(BOARD), rings(PARTS), rings(DEFECTS)), (list.boards.len(), parts, list.boards.len()));
        let cuts: usize = list.boards.iter().map(|board| board.cuts.len()).sum();
        assert_eq!(groups.windows(2).filter(|g| *g == ["LINE", "8"]).count(), cuts);
        assert!(dxf.is_ascii() && dxf.ends_with("0\nEOF\n"));
    }
}
