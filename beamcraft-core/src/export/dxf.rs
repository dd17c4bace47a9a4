//! The panels and the section as DXF.

use super::cut::cross_section;
use super::remains;
use super::text::{fixed, push};
use super::view::{Face, middle_plane};
use super::words;
use crate::geometry::Vec3;
use crate::shell::{Panel, PieceSign};

/// A layer with its colour and kind of line.
pub(super) type Layer = (&'static str, u32, &'static str);

/// Layers of the panels.
const LAYERS: [Layer; 7] = [
    (SHOW_FACE, 7, "CONTINUOUS"),
    (INNER_FACE, 8, "HIDDEN"),
    (BLANK, 9, "PHANTOM"),
    (TAKEN_OUT, 1, "CONTINUOUS"),
    (SECTION, 5, "CONTINUOUS"),
    (SECTION_SHOW, 3, "CONTINUOUS"),
    (NOTES, 2, "CONTINUOUS"),
];
const SHOW_FACE: &str = "SHOW_FACE";
const INNER_FACE: &str = "INNER_FACE_HIDDEN";
const BLANK: &str = "BLANK";
const TAKEN_OUT: &str = "TAKEN_OUT";
const SECTION: &str = "SECTION";
const SECTION_SHOW: &str = "SECTION_SHOW_FACES";
pub(super) const NOTES: &str = "NOTES";

/// Distance between drawings, mm.
const APART: f64 = 60.0;
/// Height of texts, mm.
const LETTERS: f64 = 8.0;

/// Panels as a DXF drawing (release 12), one unit a millimetre: the show face of each panel, seen from outside with the
/// grain level, and the section across the middle of the longest panel.
///
/// | layer | holds |
/// |---|---|
/// | `SHOW_FACE` | outline of the show face with the openings in it |
/// | `INNER_FACE_HIDDEN` | outline of the inner face behind it, dashed |
/// | `BLANK` | the square-edged blank |
/// | `TAKEN_OUT` | where pieces are taken out, through to the show face or not |
/// | `SECTION` | the cut panels |
/// | `SECTION_SHOW_FACES` | their show faces |
/// | `NOTES` | names, sizes, bevels |
pub fn panels_dxf(name: &str, panels: &[Panel]) -> String {
    let mut drawing = Drawing::new("beamcraft panels", &LAYERS);
    let mut y = 0.0;
    let name = if name.is_empty() { "Hollow beam" } else { name };
    drawing.note((0.0, y), 1.5 * LETTERS, &format!("{name}. Millimetres, full size; show faces seen from outside."));
    for panel in panels {
        y -= APART + panel.blank_width_mm;
        panel_face(&mut drawing, panel, y);
    }
    section(&mut drawing, panels, y - APART);
    drawing.finish()
}

/// A panel with the near corner of its blank at x = 0.
fn panel_face(drawing: &mut Drawing, panel: &Panel, y: f64) {
    let view = Face::of(panel);
    let at = |(u, v): (f64, f64)| (u, y + v);
    let rectangle = [(0.0, 0.0), (panel.blank_length_mm, 0.0), (panel.blank_length_mm, panel.blank_width_mm)];
    let blank = rectangle.into_iter().chain([(0.0, panel.blank_width_mm)]).map(at);
    drawing.ring(BLANK, blank);
    for body in remains::bodies(panel) {
        for face in &body.faces {
            let layer = match face.tag {
                Panel::SHOW => SHOW_FACE,
                Panel::INNER => INNER_FACE,
                _ => continue,
            };
            for ring in &face.rings {
                drawing.ring(layer, body.points(ring).map(|point| at(view.flat(point))));
            }
        }
    }
    for piece in panel.pieces.iter().filter(|piece| piece.sign == PieceSign::Removed) {
        let Some(common) = panel.blank().and_then(|blank| piece.solid.common(blank, remains::WITHIN)) else { continue };
        let outline = view.outline(&common);
        drawing.ring(TAKEN_OUT, outline.into_iter().map(at));
    }
    let size = format!(
        "{}: {} x {} x {}",
        words::face(panel.id),
        fixed(panel.blank_length_mm, 2),
        fixed(panel.blank_width_mm, 2),
        fixed(panel.thickness_mm, 2)
    );
    drawing.note((0.0, y + panel.blank_width_mm + 0.8 * LETTERS), LETTERS, &size);
    let Some(blank) = panel.blank() else { return };
    for edge in &panel.edges {
        let (Some(show), Some(cut)) = (blank.face(Panel::SHOW), blank.face(edge.tag)) else { continue };
        let shared = show.edges().find(|(from, to)| cut.edges().any(|other| other == (*to, *from)));
        let point = |index: u32| blank.vertices().get(index as usize).copied().unwrap_or_default();
        let Some((from, to)) = shared else { continue };
        let (start, end) = (view.flat(point(from)), view.flat(point(to)));
        let middle = (0.5 * (start.0 + end.0), 0.5 * (start.1 + end.1));
        // A little inside of the edge, and of that of the inner face.
        let Vec3 { x, y: across, z: out } = edge.outward;
        let reach = (x * x + across * across).sqrt().max(1e-9);
        let inset = 1.6 * LETTERS + (-out / reach).clamp(0.0, 3.0) * panel.thickness_mm;
        let inside = (middle.0 - inset * x / reach, middle.1 - inset * across / reach);
        let text = format!("{} {}%%d", words::face(edge.neighbour), fixed(edge.tilt_deg, 2));
        let half = 0.3 * LETTERS * text.len() as f64;
        drawing.note(at((inside.0 - half * (1.0 + x / reach), inside.1 - 0.5 * LETTERS)), 0.7 * LETTERS, &text);
    }
}

/// The section below `top`.
fn section(drawing: &mut Drawing, panels: &[Panel], top: f64) {
    let Some((plane, right, up)) = middle_plane(panels) else { return };
    let flat = |point: Vec3| (point.dot(right), point.dot(up));
    let mut rings: Vec<(&'static str, Vec<(f64, f64)>)> = Vec::new();
    let mut lines: Vec<[(f64, f64); 2]> = Vec::new();
    for panel in panels {
        for part in remains::parts(panel) {
            let edges = cross_section(&part, &plane);
            if edges.is_empty() {
                continue;
            }
            rings.push((SECTION, edges.iter().map(|edge| flat(edge.from)).collect()));
            let shown = edges.iter().filter(|edge| edge.tag == Panel::SHOW);
            lines.extend(shown.map(|edge| [flat(edge.from), flat(edge.to)]));
        }
    }
    let points = || rings.iter().flat_map(|(_, ring)| ring.iter());
    let left = points().map(|point| point.0).fold(f64::INFINITY, f64::min);
    let high = points().map(|point| point.1).fold(f64::NEG_INFINITY, f64::max);
    if !(left.is_finite() && high.is_finite()) {
        return;
    }
    drawing.note((0.0, top - LETTERS), LETTERS, "Section");
    let at = |(x, y): (f64, f64)| (x - left, y - high + top - 2.0 * LETTERS);
    for (layer, ring) in rings {
        drawing.ring(layer, ring.into_iter().map(at));
    }
    for line in lines {
        let [from, to] = line.map(at);
        drawing.line(SECTION_SHOW, from, to);
    }
}

/// Entities of a drawing.
pub(super) struct Drawing {
    title: &'static str,
    layers: &'static [Layer],
    entities: String,
}

impl Drawing {
    /// An empty drawing; one of its layers is [`NOTES`].
    pub(super) const fn new(title: &'static str, layers: &'static [Layer]) -> Self {
        Self { title, layers, entities: String::new() }
    }

    fn group(&mut self, code: u32, value: &str) {
        push(&mut self.entities, format_args!("{code}\n{value}\n"));
    }

    fn place(&mut self, first: u32, (x, y): (f64, f64)) {
        for (k, number) in [x, y, 0.0].into_iter().enumerate() {
            self.group(first + 10 * k as u32, &real(number));
        }
    }

    /// A closed outline; nothing where a number is none.
    pub(super) fn ring(&mut self, layer: &str, points: impl Iterator<Item = (f64, f64)>) {
        let points: Vec<(f64, f64)> = points.collect();
        if points.len() < 3 || !points.iter().all(|(x, y)| x.is_finite() && y.is_finite()) {
            return;
        }
        self.group(0, "POLYLINE");
        self.group(8, layer);
        self.group(66, "1");
        self.place(10, (0.0, 0.0));
        self.group(70, "1");
        for point in points {
            self.group(0, "VERTEX");
            self.group(8, layer);
            self.place(10, point);
        }
        self.group(0, "SEQEND");
        self.group(8, layer);
    }

    pub(super) fn line(&mut self, layer: &str, from: (f64, f64), to: (f64, f64)) {
        if ![from.0, from.1, to.0, to.1].iter().all(|number| number.is_finite()) {
            return;
        }
        self.group(0, "LINE");
        self.group(8, layer);
        self.place(10, from);
        self.place(11, to);
    }

    pub(super) fn note(&mut self, at: (f64, f64), height: f64, words: &str) {
        if !(at.0.is_finite() && at.1.is_finite()) {
            return;
        }
        self.group(0, "TEXT");
        self.group(8, NOTES);
        self.place(10, at);
        self.group(40, &real(height));
        let words = text(words);
        self.group(1, &words);
    }

    pub(super) fn finish(self) -> String {
        let mut out = format!("999\n{}, one drawing unit is one millimetre\n", self.title);
        out.push_str(
            "0\nSECTION\n2\nHEADER\n9\n$ACADVER\n1\nAC1009\n\
             9\n$LTSCALE\n40\n10.0\n0\nENDSEC\n0\nSECTION\n2\nTABLES\n0\nTABLE\n2\nLTYPE\n70\n3\n",
        );
        let kinds: [(&str, &str, &[f64]); 3] = [
            ("CONTINUOUS", "Solid line", &[]),
            ("HIDDEN", "__ __ __ __", &[0.6, -0.3]),
            ("PHANTOM", "____ _ _ ____", &[1.2, -0.3, 0.3, -0.3, 0.3, -0.3]),
        ];
        for (name, looks, dashes) in kinds {
            let length: f64 = dashes.iter().map(|dash| dash.abs()).sum();
            push(
                &mut out,
                format_args!(
                    "0\nLTYPE\n2\n{name}\n70\n0\n3\n{looks}\n72\n65\n73\n{}\n40\n{}\n",
                    dashes.len(),
                    real(length)
                ),
            );
            for dash in dashes {
                push(&mut out, format_args!("49\n{}\n", real(*dash)));
            }
        }
        push(&mut out, format_args!("0\nENDTAB\n0\nTABLE\n2\nLAYER\n70\n{}\n", self.layers.len() + 1));
        for (name, colour, kind) in [("0", 7, "CONTINUOUS")].iter().chain(self.layers) {
            push(&mut out, format_args!("0\nLAYER\n2\n{name}\n70\n0\n62\n{colour}\n6\n{kind}\n"));
        }
        out.push_str(
            "0\nENDTAB\n0\nTABLE\n2\nSTYLE\n70\n1\n0\nSTYLE\n2\nSTANDARD\n70\n0\n40\n0.0\n41\n1.0\n50\n0.0\n71\n0\n42\n8.0\n\
             3\ntxt\n4\n\n0\nENDTAB\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n",
        );
        out.push_str(&self.entities);
        out.push_str("0\nENDSEC\n0\nEOF\n");
        out
    }
}

fn real(value: f64) -> String {
    let mut text = format!("{:.6}", value);
    text.truncate(text.trim_end_matches('0').len());
    if text.ends_with('.') {
        text.push('0');
    }
    if text == "-0.0" { "0.0".to_owned() } else { text }
}

/// A text in one line of ASCII; letters beyond it by their number.
fn text(words: &str) -> String {
    let mut out = String::new();
    for letter in words.chars().take(200) {
        match letter {
            ' '..='~' => out.push(letter),
            letter if letter.is_control() => out.push(' '),
            letter if u32::from(letter) <= 0xffff => push(&mut out, format_args!("\\U+{:04X}", u32::from(letter))),
            _ => out.push('?'),
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::export::samples;

    /// The groups of a file as code and value.
    fn groups(dxf: &str) -> Vec<(i32, &str)> {
        let lines: Vec<&str> = dxf.lines().collect();
        assert!(lines.len().is_multiple_of(2));
        lines.chunks(2).map(|pair| (pair[0].parse().unwrap(), pair[1])).collect()
    }

    #[test]
    fn each_panel_has_its_faces_its_blank_and_its_name() {
        for (name, plan) in samples::all() {
            let dxf = panels_dxf(&plan.spec.name, &plan.panels);
            let groups = groups(&dxf);
            let rings = |layer: &str| {
                groups.windows(2).filter(|pair| pair[0] == (0, "POLYLINE") && pair[1] == (8, layer)).count()
            };
            let count = plan.panels.len();
            assert_eq!((rings(SHOW_FACE), rings(INNER_FACE), rings(BLANK)), (count, count, count), "{name}");
            assert!(rings(SECTION) > 0, "{name}");
            assert_eq!(groups.iter().filter(|group| **group == (0, "POLYLINE")).count(), {
                groups.iter().filter(|group| **group == (0, "SEQEND")).count()
            });
            assert_eq!(groups.last(), Some(&(0, "EOF")));
            assert!(dxf.is_ascii());
        }
    }

    #[test]
    fn the_front_is_drawn_in_its_size() {
        let dxf = panels_dxf("", &samples::shelf().panels[..1]);
        let points: Vec<(f64, f64)> = groups(&dxf)
            .windows(4)
            .filter(|g| g[0] == (0, "VERTEX") && g[1] == (8, SHOW_FACE))
            .map(|g| (g[2].1.parse().unwrap(), g[3].1.parse().unwrap()))
            .collect();
        let (low, high) = points.iter().fold((f64::MAX, f64::MIN), |(low, high), p| (low.min(p.0), high.max(p.0)));
        assert_eq!((points.len(), low, high), (4, 0.0, 1830.0));
        let (low, high) = points.iter().fold((f64::MAX, f64::MIN), |(low, high), p| (low.min(p.1), high.max(p.1)));
        assert_eq!(high - low, 185.0);
    }

    #[test]
    fn names_stay_on_their_line() {
        assert_eq!(text("a\n0\nEOF ½"), "a 0 EOF \\U+00BD");
        let plan = samples::hostile();
        groups(&panels_dxf(&plan.spec.name, &plan.panels));
        groups(&panels_dxf("", &[]));
    }
}
