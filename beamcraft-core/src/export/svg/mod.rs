//! A small drafting kit: a sheet of paper in millimetres, lines by kind, hatching, dimensions and notes.
//!
//! Line kinds follow ISO 128-2 (line group 0.5: visible outlines 0.5 mm, thin lines 0.25 mm), dimensions ISO 129-1
//! (extension lines, closed arrowheads, text above the line, vertical text read from the right). Everything is placed in
//! paper millimetres with y downwards, so that texts keep their size whatever the scale of the view. A shape with a
//! number that is none is left out.

mod dimension;
mod hatch;
mod line;
mod scale;

pub(super) use dimension::Dimension;
pub(super) use hatch::Hatch;
pub(super) use line::{Fill, Line};
pub(super) use scale::Scale;

use super::text::{escaped, fixed, push, shortened};

/// A point of the sheet, mm from its upper left corner.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Spot {
    pub(super) x: f64,
    pub(super) y: f64,
}

impl Spot {
    pub(super) const fn new(x: f64, y: f64) -> Self {
        Self { x, y }
    }

    /// The point beside this one.
    pub(super) const fn by(self, x: f64, y: f64) -> Self {
        Self { x: self.x + x, y: self.y + y }
    }

    fn is_finite(self) -> bool {
        self.x.is_finite() && self.y.is_finite()
    }

    /// Distance to another point, mm.
    pub(super) fn distance(self, other: Self) -> f64 {
        let (x, y) = (other.x - self.x, other.y - self.y);
        (x * x + y * y).sqrt()
    }
}

/// Size of a sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Paper {
    /// ISO 216 A4, upright.
    A4,
    /// ANSI/ASME Y14.1 A, upright.
    Letter,
}

impl Paper {
    /// Width and height, mm.
    pub(super) const fn size_mm(self) -> (f64, f64) {
        match self {
            Self::A4 => (210.0, 297.0),
            Self::Letter => (215.9, 279.4),
        }
    }
}

/// Where a text stands against its point.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Anchor {
    /// Starts there.
    Start,
    /// Has its middle there.
    Middle,
    /// Ends there.
    End,
}

/// Which way a text runs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Run {
    /// Level.
    Level,
    /// Upwards, read from the right.
    Upright,
}

/// Height of small texts, mm.
pub(super) const SMALL: f64 = 2.5;
/// Height of texts, mm.
pub(super) const NORMAL: f64 = 3.0;
/// Height of sizes on a sheet of one part, where there is room for them, mm.
pub(super) const SIZES: f64 = 3.5;
/// Height of headings, mm.
pub(super) const LARGE: f64 = 4.5;

/// Width that a text takes, on the safe side of common sans-serif fonts, mm.
pub(super) fn text_width(text: &str, size: f64) -> f64 {
    text.chars().map(letter_width).sum::<f64>() * size
}

/// Width of a letter against the size of the type.
const fn letter_width(letter: char) -> f64 {
    match letter {
        ' ' | '.' | ',' | ':' | ';' | '\'' | '"' | '|' | '!' | 'i' | 'j' | 'l' | 'f' | 't' | 'r' | '°' => 0.4,
        '0'..='9' | '/' => 0.64,
        'm' | 'w' | 'M' | 'W' | '%' | '@' | '…' => 1.0,
        'A'..='Z' => 0.75,
        // Scripts whose letters fill a square.
        '\u{1100}'.. => 1.0,
        _ => 0.62,
    }
}

/// The text, cut with an ellipsis where it is wider than `width`.
pub(super) fn fitted(text: &str, width: f64, size: f64) -> String {
    let mut used = 0.0;
    let fits = text.chars().take_while(|letter| {
        used += letter_width(*letter) * size;
        used <= width
    });
    let count = fits.count();
    if count == text.chars().count() { text.to_owned() } else { shortened(text, count) }
}

/// The text in lines of words that fit a width; a word that is wider has a line of its own.
pub(super) fn wrapped(text: &str, width: f64, size: f64) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in text.split_whitespace() {
        match lines.last_mut() {
            Some(line) if text_width(line, size) + text_width(word, size) + size <= width => {
                line.push(' ');
                line.push_str(word);
            }
            _ => lines.push(word.to_owned()),
        }
    }
    lines
}

/// A sheet that is drawn on.
pub(super) struct Sheet {
    paper: Paper,
    title: String,
    description: String,
    body: String,
    pages: usize,
}

impl Sheet {
    /// A white sheet; title and description are for those who cannot see it.
    pub(super) fn new(paper: Paper, title: &str, description: &str) -> Self {
        Self { paper, title: escaped(title), description: escaped(description), body: String::new(), pages: 1 }
    }

    /// Starts a further page below the last one and gives its upper left corner.
    pub(super) fn next_page(&mut self) -> Spot {
        let top = self.paper.size_mm().1 * self.pages as f64;
        self.pages += 1;
        Spot::new(0.0, top)
    }

    /// The drawing as an SVG document.
    pub(super) fn finish(self) -> String {
        let (width, height) = self.paper.size_mm();
        let (w, h) = (fixed(width, 1), fixed(height * self.pages as f64, 1));
        let Self { title, description, body, .. } = self;
        format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{w}mm\" height=\"{h}mm\" viewBox=\"0 0 {w} {h}\" \
             role=\"img\" font-family=\"Helvetica, Arial, 'Liberation Sans', 'DejaVu Sans', sans-serif\" \
             stroke-linecap=\"round\" stroke-linejoin=\"round\">\n<title>{title}</title>\n<desc>{description}</desc>\n\
             <rect width=\"{w}\" height=\"{h}\" fill=\"#fff\"/>\n{body}</svg>\n"
        )
    }

    /// A straight line.
    pub(super) fn line(&mut self, from: Spot, to: Spot, line: Line) {
        self.path(&[from, to], Ends::Loose, line, Fill::Nothing);
    }

    /// A run of straight lines.
    pub(super) fn run(&mut self, spots: &[Spot], line: Line) {
        self.path(spots, Ends::Loose, line, Fill::Nothing);
    }

    /// The end of something that goes on: a thin line with a zigzag in its middle.
    pub(super) fn broken(&mut self, from: Spot, to: Spot) {
        let length = from.distance(to).max(f64::MIN_POSITIVE);
        let (x, y) = ((to.x - from.x) / length, (to.y - from.y) / length);
        let bend = |along: f64, off: f64| {
            let at = 0.5 * length + along;
            from.by(x * at + y * off, y * at - x * off)
        };
        self.run(&[from, bend(-1.2, 0.0), bend(-0.5, 2.0), bend(0.5, -2.0), bend(1.2, 0.0), to], Line::Thin);
    }

    /// A closed ring.
    pub(super) fn ring(&mut self, spots: &[Spot], line: Line, fill: Fill) {
        self.path(spots, Ends::Joined, line, fill);
    }

    /// An area within a ring, less the rings inside it.
    pub(super) fn area<'a>(&mut self, rings: impl Iterator<Item = &'a [Spot]> + Clone, line: Line, fill: Fill) {
        if !rings.clone().flatten().all(|spot| spot.is_finite()) {
            return;
        }
        self.body.push_str("<path fill-rule=\"evenodd\" d=\"");
        for ring in rings {
            push_track(&mut self.body, ring);
            self.body.push('Z');
        }
        push(&mut self.body, format_args!("\" {}{}/>\n", fill.attribute(), line.attributes()));
    }

    /// An upright rectangle between two corners.
    pub(super) fn rectangle(&mut self, one: Spot, other: Spot, line: Line, fill: Fill) {
        self.ring(&[one, Spot::new(other.x, one.y), other, Spot::new(one.x, other.y)], line, fill);
    }

    fn path(&mut self, spots: &[Spot], ends: Ends, line: Line, fill: Fill) {
        if spots.len() < 2 || !spots.iter().all(|spot| spot.is_finite()) {
            return;
        }
        self.body.push_str("<path d=\"");
        push_track(&mut self.body, spots);
        if ends == Ends::Joined {
            self.body.push('Z');
        }
        push(&mut self.body, format_args!("\" {}{}/>\n", fill.attribute(), line.attributes()));
    }

    /// A circle.
    pub(super) fn circle(&mut self, centre: Spot, radius: f64, line: Line, fill: Fill) {
        if !(centre.is_finite() && radius.is_finite()) {
            return;
        }
        let (x, y, r) = (fixed(centre.x, 3), fixed(centre.y, 3), fixed(radius, 3));
        let (fill, line) = (fill.attribute(), line.attributes());
        push(&mut self.body, format_args!("<circle cx=\"{x}\" cy=\"{y}\" r=\"{r}\" {fill}{line}/>\n"));
    }

    /// The sign of a centre of gravity: a circle with two opposite quarters filled.
    pub(super) fn centre_of_gravity(&mut self, centre: Spot, radius: f64) {
        self.circle(centre, radius, Line::Thin, Fill::White);
        if !(centre.is_finite() && radius.is_finite()) {
            return;
        }
        let (x, y, r) = (fixed(centre.x, 3), fixed(centre.y, 3), fixed(radius, 3));
        for side in [radius, -radius] {
            let (over, end) = (fixed(centre.x + side, 3), fixed(centre.y - side, 3));
            push(
                &mut self.body,
                format_args!("<path d=\"M{x} {y}H{over}A{r} {r} 0 0 0 {x} {end}Z\" fill=\"#000\"/>\n"),
            );
        }
        let reach = 1.8 * radius;
        self.line(centre.by(-reach, 0.0), centre.by(reach, 0.0), Line::Thin);
        self.line(centre.by(0.0, -reach), centre.by(0.0, reach), Line::Thin);
    }

    /// Text with a white rim, so that lines behind it do not touch the letters.
    pub(super) fn text(&mut self, at: Spot, size: f64, anchor: Anchor, text: &str) {
        self.text_run(at, size, anchor, Run::Level, text);
    }

    /// Text in heavy type.
    pub(super) fn heading(&mut self, at: Spot, size: f64, text: &str) {
        self.push_text(at, size, Anchor::Start, Run::Level, " font-weight=\"700\"", text);
    }

    /// Text that runs level or upwards.
    pub(super) fn text_run(&mut self, at: Spot, size: f64, anchor: Anchor, run: Run, text: &str) {
        self.push_text(at, size, anchor, run, "", text);
    }

    fn push_text(&mut self, at: Spot, size: f64, anchor: Anchor, run: Run, weight: &str, text: &str) {
        if !at.is_finite() || text.is_empty() {
            return;
        }
        let (x, y, size) = (fixed(at.x, 3), fixed(at.y, 3), fixed(size, 2));
        let anchor = match anchor {
            Anchor::Start => "",
            Anchor::Middle => " text-anchor=\"middle\"",
            Anchor::End => " text-anchor=\"end\"",
        };
        let turn = match run {
            Run::Level => String::new(),
            Run::Upright => format!(" transform=\"rotate(-90 {x} {y})\""),
        };
        let text = escaped(text);
        let place = format!("x=\"{x}\" y=\"{y}\" font-size=\"{size}\"{anchor}{turn}{weight}");
        // The light rim is a text of its own below the letters: not every viewer knows an order of painting within one.
        push(
            &mut self.body,
            format_args!(
                "<text aria-hidden=\"true\" {place} stroke=\"#fff\" stroke-width=\"0.7\">{text}</text>\n\
                 <text {place}>{text}</text>\n"
            ),
        );
    }

    /// A closed, slender arrowhead with its tip at a point, coming from another.
    pub(super) fn arrowhead(&mut self, tip: Spot, from: Spot, length: f64) {
        let distance = tip.distance(from);
        if !(distance > 0.0 && distance.is_finite()) {
            return;
        }
        let (x, y) = ((from.x - tip.x) / distance, (from.y - tip.y) / distance);
        // 30° between the barbs: half the width is tan 15° of the length.
        let half = 0.268 * length;
        let base = tip.by(x * length, y * length);
        self.ring(&[tip, base.by(-y * half, x * half), base.by(y * half, -x * half)], Line::None, Fill::Black);
    }

    /// A number in a circle at a point, with a leader that ends in a dot on the part when it stands beside it.
    pub(super) fn balloon(&mut self, at: Spot, part: Spot, number: usize) {
        if at.distance(part) > BALLOON_RADIUS {
            self.line(at, part, Line::Thin);
            self.circle(part, 0.5, Line::None, Fill::Black);
        }
        self.circle(at, BALLOON_RADIUS, Line::Thin, Fill::White);
        self.text(at.by(0.0, 0.9), SMALL, Anchor::Middle, &number.to_string());
    }
}

/// Radius of the circle around a part's number, mm.
pub(super) const BALLOON_RADIUS: f64 = 2.3;

/// Whether a run of lines is closed.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Ends {
    Loose,
    Joined,
}

/// The path data of a run of lines.
fn push_track(out: &mut String, spots: &[Spot]) {
    for (at, spot) in spots.iter().enumerate() {
        push(out, format_args!("{}{} {}", if at == 0 { 'M' } else { 'L' }, fixed(spot.x, 3), fixed(spot.y, 3)));
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_sheet_has_a_size_on_paper_and_a_white_ground() {
        let svg = Sheet::new(Paper::A4, "a <b>", "c").finish();
        assert!(svg.contains("width=\"210mm\" height=\"297mm\" viewBox=\"0 0 210 297\""));
        assert!(svg.contains("<title>a &lt;b&gt;</title>"));
        assert!(svg.contains("<rect width=\"210\" height=\"297\" fill=\"#fff\"/>"));
    }

    #[test]
    fn a_shape_that_has_no_place_is_left_out() {
        let mut sheet = Sheet::new(Paper::Letter, "", "");
        let nowhere = Spot::new(f64::NAN, 1.0);
        sheet.line(Spot::new(0.0, 0.0), nowhere, Line::Thin);
        sheet.circle(nowhere, 1.0, Line::Thin, Fill::White);
        sheet.circle(Spot::new(0.0, 0.0), f64::INFINITY, Line::Thin, Fill::White);
        sheet.text(nowhere, 2.5, Anchor::Start, "lost");
        sheet.arrowhead(nowhere, Spot::new(0.0, 0.0), 2.5);
        sheet.hatch(&[nowhere, nowhere, nowhere], Hatch::Rising, 2.0);
        assert!(sheet.body.is_empty(), "{}", sheet.body);
    }

    #[test]
    fn a_text_is_cut_where_its_room_ends() {
        assert_eq!(fitted("lining", 20.0, 2.5), "lining");
        let cut = fitted(&"wide board ".repeat(50), 40.0, 2.5);
        assert!(cut.ends_with('…') && text_width(&cut, 2.5) <= 42.5, "{cut}");
        assert_eq!(fitted("anything", 0.0, 2.5), "…");
    }

    #[test]
    fn a_text_is_wrapped_between_words_and_loses_none() {
        let text = "local law, the listing and the instructions decide";
        let lines = wrapped(text, 40.0, 2.5);
        assert!(lines.len() > 1 && lines.iter().all(|line| text_width(line, 2.5) <= 40.0));
        assert_eq!(lines.join(" "), text);
        assert_eq!(wrapped("wide", 1.0, 2.5), ["wide"]);
        assert!(wrapped(" ", 1.0, 2.5).is_empty());
    }

    #[test]
    fn texts_are_escaped() {
        let mut sheet = Sheet::new(Paper::A4, "", "");
        sheet.text(Spot::new(1.0, 2.0), 2.5, Anchor::End, "</text><script>");
        assert!(sheet.body.contains(">&lt;/text&gt;&lt;script&gt;</text>"));
    }
}
