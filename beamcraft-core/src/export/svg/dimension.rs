//! Dimension lines.

use super::{Anchor, Line, Run, Sheet, Spot, text_width};

/// A level or upright dimension between two points.
pub(in super::super) struct Dimension<'a> {
    /// One end of what is measured.
    pub(in super::super) from: Spot,
    /// The other end: on the right of a level dimension, above on an upright one.
    pub(in super::super) to: Spot,
    /// Which way the dimension line runs.
    pub(in super::super) run: Run,
    /// Where the dimension line lies: its y when level, its x when upright.
    pub(in super::super) line_at: f64,
    /// The size, written out.
    pub(in super::super) text: &'a str,
    /// Height of the text, mm.
    pub(in super::super) size: f64,
}

/// Length of an arrowhead, mm.
const ARROW: f64 = 2.5;
/// Gap between a point and its extension line, mm.
const GAP: f64 = 0.8;
/// How far an extension line runs past the dimension line, mm.
const PAST: f64 = 1.5;
/// Text above the line, mm.
const ABOVE: f64 = 0.9;

impl Sheet {
    /// Draws a dimension; what does not fit between the ends goes outside: first the arrows, then the text.
    pub(in super::super) fn dimension(&mut self, dimension: &Dimension<'_>) {
        let Dimension { from, to, run, line_at, text, size } = *dimension;
        // Along the dimension line, and across it.
        let spot = |along: f64| match run {
            Run::Level => Spot::new(along, line_at),
            Run::Upright => Spot::new(line_at, -along),
        };
        let split = |point: Spot| match run {
            Run::Level => (point.x, point.y),
            Run::Upright => (-point.y, point.x),
        };
        let ((start, start_across), (end, end_across)) = (split(from), split(to));
        for (point, across) in [(from, start_across), (to, end_across)] {
            self.extension(point, line_at - across, run);
        }
        let (span, width) = (end - start, text_width(text, size));
        let text_fits = span >= width + 1.0;
        let outside = 2.0 * ARROW;
        let middle = if text_fits { 0.5 * (start + end) } else { end + ARROW + 1.0 + 0.5 * width };
        if span >= 2.0 * ARROW + 1.0 {
            let tail = if text_fits { end } else { middle + 0.5 * width };
            self.line(spot(start), spot(tail), Line::Thin);
            self.arrowhead(spot(start), spot(end), ARROW);
            self.arrowhead(spot(end), spot(start), ARROW);
        } else {
            let tail = if text_fits { end + outside } else { middle + 0.5 * width };
            self.line(spot(start - outside), spot(tail), Line::Thin);
            self.arrowhead(spot(start), spot(start - outside), ARROW);
            self.arrowhead(spot(end), spot(end + outside), ARROW);
        }
        let at = match run {
            Run::Level => spot(middle).by(0.0, -ABOVE),
            Run::Upright => spot(middle).by(-ABOVE, 0.0),
        };
        self.text_run(at, size, Anchor::Middle, run, text);
    }

    /// The line from a point to past the dimension line, `across` away; none where they touch.
    fn extension(&mut self, point: Spot, across: f64, run: Run) {
        if across.abs() < GAP {
            return;
        }
        let (near, far) = (across.signum() * GAP, across + across.signum() * PAST);
        let (from, to) = match run {
            Run::Level => (point.by(0.0, near), point.by(0.0, far)),
            Run::Upright => (point.by(near, 0.0), point.by(far, 0.0)),
        };
        self.line(from, to, Line::Thin);
    }
}

#[cfg(test)]
mod tests {
    use super::super::{Paper, SMALL};
    use super::*;

    fn drawn(span: f64, text: &str) -> String {
        let mut sheet = Sheet::new(Paper::A4, "", "");
        let (from, to) = (Spot::new(20.0, 50.0), Spot::new(20.0 + span, 50.0));
        sheet.dimension(&Dimension { from, to, run: Run::Level, line_at: 60.0, text, size: SMALL });
        sheet.body
    }

    #[test]
    fn text_stands_in_the_middle_above_the_line_where_it_fits() {
        let body = drawn(40.0, "185");
        assert!(body.contains("<text x=\"40\" y=\"59.1\""), "{body}");
        assert!(body.contains("M20 50.8L20 61.5") && body.contains("M60 50.8L60 61.5"), "{body}");
        assert!(body.contains("M20 60L60 60"), "{body}");
    }

    #[test]
    fn a_short_dimension_has_arrows_and_text_outside() {
        let body = drawn(2.0, "13/16\"");
        // 13/16" takes 9 mm, four digits, a stroke and two marks: from 25.5 to 34.5.
        assert!(body.contains("M15 60L34.5 60"), "{body}");
        assert!(body.contains("<text x=\"30\" y=\"59.1\""), "{body}");
    }
}
