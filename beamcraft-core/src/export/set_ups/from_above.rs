//! A cross-cut from above: the blade, the board at the angle of the gauge, and which edge of the board is where.

use super::super::layout::Zone;
use super::super::svg::{Anchor, Fill, Line, SIZES, SMALL, Sheet, Spot};
use super::super::text::degrees;
use super::super::words::beside;
use crate::saw::{BladeSide, CutSetUp, FaceDown, PanelCut};
use crate::shell::{EdgeCut, Panel};

/// Paper that it takes, mm.
pub(super) const WIDTH: f64 = 46.0;
/// Width and length of the board on the paper, mm.
const ACROSS: f64 = 13.0;
const ALONG: f64 = 32.0;

/// A direction seen from above: to the right, away from the maker.
type Heading = (f64, f64);

pub(super) fn draw(sheet: &mut Sheet, panel: &Panel, cut: &PanelCut, set_up: &CutSetUp, zone: Zone) {
    let Some(end) = panel.edges.iter().find(|edge| edge.id.to_string() == cut.edge) else { return };
    // A board that lies on its show face is seen mirrored, and so is the saw where the kept piece lies left of the blade.
    let sign = |mirrored: bool| if mirrored { -1.0 } else { 1.0 };
    let mirror = sign(set_up.face_down == FaceDown::ShowFace) * sign(set_up.kept_side == Some(BladeSide::Left));
    let (x, y) = (end.outward.x, mirror * end.outward.y);
    let size = (x * x + y * y).sqrt();
    if size < 1e-9 {
        return;
    }
    // Turned so that the end looks to the left, towards the blade.
    let turned = |(a, b): Heading| ((-a * x - b * y) / size, (a * y - b * x) / size);
    let grain = turned((1.0, 0.0));
    let grain = if grain.0 < 0.0 { (-grain.0, -grain.1) } else { grain };
    let at = Spot::new(zone.left + 8.0, 0.5 * (zone.top + zone.bottom) + 0.5 * ALONG * grain.1);
    let spot = |(right, away): Heading| at.by(right, -away);
    blade(sheet, at);
    // Both long edges start at the blade; the board goes on to the right.
    let corner = |side: f64| (0.0, 0.5 * side * ACROSS / grain.0.max(0.1));
    let far = |side: f64| (ALONG * grain.0, corner(side).1 + ALONG * grain.1);
    let board = [corner(-1.0), far(-1.0), far(1.0), corner(1.0)].map(spot);
    sheet.ring(&board, Line::None, Fill::White);
    sheet.run(&[board[1], board[0], board[3], board[2]], Line::Outline);
    sheet.line(board[1], board[2], Line::Thin);
    gauge(sheet, board[0], board[1]);
    for edge in panel.edges.iter().filter(|edge| edge.cut == EdgeCut::Rip) {
        let (_, away) = turned((edge.outward.x, mirror * edge.outward.y));
        let side = away.signum();
        let middle = spot((0.5 * ALONG * grain.0, corner(side).1 + 0.5 * ALONG * grain.1));
        let off = if side > 0.0 { -1.6 } else { 6.8 };
        sheet.text(middle.by(0.0, off), SMALL, Anchor::Middle, &beside(panel.id, edge.neighbour));
    }
    let angle = if cut.gauge_deg.abs() < 0.05 { "square".to_owned() } else { degrees(cut.gauge_deg.abs()) };
    let middle = spot((0.55 * ALONG * grain.0, 0.55 * ALONG * grain.1));
    sheet.text(middle.by(0.0, 1.2), SIZES, Anchor::Middle, &angle);
    sheet.text(Spot::new(zone.left + 2.0, zone.top + 5.0), SMALL, Anchor::Start, "from above");
}

/// The blade, longer than the board is wide, and which way the board is pushed.
fn blade(sheet: &mut Sheet, at: Spot) {
    sheet.rectangle(at.by(-1.2, -13.0), at.by(0.0, 13.0), Line::Outline, Fill::White);
    let (from, to) = (at.by(-4.0, 9.0), at.by(-4.0, 1.0));
    sheet.line(from, to, Line::Thin);
    sheet.arrowhead(to, from, 2.5);
}

/// The head of the gauge behind the board.
fn gauge(sheet: &mut Sheet, from: Spot, to: Spot) {
    let length = from.distance(to).max(f64::MIN_POSITIVE);
    let (x, y) = ((to.x - from.x) / length, (to.y - from.y) / length);
    let along = |share: f64, off: f64| from.by(x * length * share - y * off, y * length * share + x * off);
    let ring = [along(0.2, 0.3), along(0.85, 0.3), along(0.85, 2.3), along(0.2, 2.3)];
    sheet.ring(&ring, Line::Thin, Fill::Grey);
}

#[cfg(test)]
mod tests {
    use super::super::super::samples;
    use super::super::super::words::face;
    use crate::saw::{CutKind, CutWay};

    #[test]
    fn the_longer_edge_is_where_the_board_reaches_farther_past_the_blade() {
        // Walnut beam, top: 3° longer at one side.
        let plan = samples::walnut();
        let cuts = plan
            .panels
            .iter()
            .zip(&plan.cuts)
            .flat_map(|(panel, sawing)| sawing.cuts.iter().map(move |cut| (panel, cut)));
        let (panel, cut) = cuts.into_iter().find(|(_, cut)| cut.gauge_deg.abs() > 1.0).unwrap();
        let end = panel.edges.iter().find(|edge| edge.id.to_string() == cut.edge).unwrap();
        let longer = panel.longer_towards(end).unwrap();
        let mut sheet = super::Sheet::new(super::super::super::svg::Paper::A4, "", "");
        let zone = super::Zone { left: 0.0, top: 0.0, right: 46.0, bottom: 60.0 };
        super::draw(&mut sheet, panel, cut, &cut.set_up.unwrap(), zone);
        let svg = sheet.finish();
        assert!(svg.contains(&format!(">{}<", face(longer))) && svg.contains(">3°<"), "{svg}");
    }

    /// Height of a text on the sheet.
    fn height_of(svg: &str, text: &str) -> f64 {
        let line = svg
            .lines()
            .find(|line| line.ends_with(&format!(">{text}</text>")))
            .unwrap_or_else(|| panic!("{text} in {svg}"));
        let after = line.split(" y=\"").nth(1).unwrap();
        after.split('"').next().unwrap().parse().unwrap()
    }

    #[test]
    fn the_edge_that_rides_lies_at_the_gauge() {
        let mut seen = 0;
        for (_, plan) in samples::all() {
            for (panel, sawing) in plan.panels.iter().zip(&plan.cuts) {
                for cut in sawing.cuts.iter().filter(|cut| cut.kind == CutKind::GaugeCut) {
                    let Some(set_up) = cut.set_up.filter(|set_up| set_up.way == CutWay::FlatOnTable) else { continue };
                    let mut sheet = super::Sheet::new(super::super::super::svg::Paper::A4, "", "");
                    let zone = super::Zone { left: 0.0, top: 0.0, right: 46.0, bottom: 60.0 };
                    super::draw(&mut sheet, panel, cut, &set_up, zone);
                    let svg = sheet.finish();
                    let rides = panel.edges.iter().find(|edge| edge.id.to_string() == cut.rides).unwrap();
                    let others =
                        panel.edges.iter().filter(|edge| edge.cut == super::EdgeCut::Rip && edge.id != rides.id);
                    for other in others {
                        let (near, far) = (face(rides.neighbour), face(other.neighbour));
                        assert!(
                            height_of(&svg, &near) > height_of(&svg, &far),
                            "{} {}: {near} rides",
                            panel.id,
                            cut.edge
                        );
                        seen += 1;
                    }
                }
            }
        }
        assert!(seen > 10, "{seen}");
    }
}
