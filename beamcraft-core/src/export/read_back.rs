//! Drawings read back by the tests: where every text and every line of a sheet is.

use super::samples::assert_balanced;
use super::svg::text_width;

/// A box of the sheet: left, top, right, bottom.
pub(super) type Frame = [f64; 4];

fn attribute<'a>(element: &'a str, name: &str) -> Option<&'a str> {
    let start = element.find(&format!(" {name}=\""))? + name.len() + 3;
    element[start..].split('"').next()
}

fn number(element: &str, name: &str) -> f64 {
    attribute(element, name).unwrap().parse().unwrap()
}

fn unescaped(text: &str) -> String {
    let marks = [("&quot;", "\""), ("&#39;", "'"), ("&lt;", "<"), ("&gt;", ">"), ("&amp;", "&")];
    marks.iter().fold(text.to_owned(), |text, (name, mark)| text.replace(name, mark))
}

/// Each text with the box it takes; letters are a little narrower than the kit plans for.
pub(super) fn texts(svg: &str) -> Vec<(String, Frame)> {
    let elements = svg.split("<text").skip(1).map(|rest| rest.split_once("</text>").unwrap().0);
    let rim = |element: &&str| element.starts_with(" aria-hidden");
    elements
        .filter(|element| !rim(element))
        .map(|element| {
            let (head, text) = element.split_once('>').unwrap();
            let (x, y, size) = (number(head, "x"), number(head, "y"), number(head, "font-size"));
            let text = unescaped(text);
            let width = 0.9 * text_width(&text, size);
            let start = match attribute(head, "text-anchor") {
                Some("middle") => -0.5 * width,
                Some(_) => -width,
                None => 0.0,
            };
            let frame = if head.contains("rotate(-90") {
                [x - 0.7 * size, y - start - width, x, y - start]
            } else {
                [x + start, y - 0.7 * size, x + start + width, y]
            };
            (text, frame)
        })
        .collect()
}

/// Every point of every path.
fn points(svg: &str) -> Vec<[f64; 2]> {
    let tracks = svg.split(" d=\"").skip(1).map(|rest| rest.split('"').next().unwrap());
    let tracks = tracks.filter(|track| !track.contains(['A', 'H']));
    tracks
        .flat_map(|track| track.trim_end_matches('Z').split(['M', 'L']).filter(|spot| !spot.is_empty()))
        .map(|spot| {
            let (x, y) = spot.split_once(' ').unwrap();
            [x.parse().unwrap(), y.parse().unwrap()]
        })
        .collect()
}

/// Well-formed, every number a number, everything inside the frame around the drawing.
pub(super) fn assert_on_the_sheet(name: &str, svg: &str) {
    assert_balanced(svg);
    assert!(!svg.contains("NaN") && !svg.contains("inf"), "{name}");
    let (width, height) = if svg.contains("viewBox=\"0 0 210 297\"") { (210.0, 297.0) } else { (215.9, 279.4) };
    for [x, y] in points(svg) {
        assert!((9.9..=width - 9.9).contains(&x) && (9.9..=height - 9.9).contains(&y), "{name}: {x} {y}");
    }
    for (text, [left, top, right, bottom]) in texts(svg) {
        assert!(left >= 10.0 && right <= width - 10.0 && top >= 10.0 && bottom <= height - 10.0, "{name}: {text}");
    }
}

/// No two texts on one another.
pub(super) fn assert_legible(name: &str, svg: &str) {
    let texts = texts(svg);
    for (at, (one, a)) in texts.iter().enumerate() {
        for (other, b) in &texts[at + 1..] {
            let apart = a[0] >= b[2] || b[0] >= a[2] || a[1] >= b[3] || b[1] >= a[3];
            assert!(apart, "{name}: {one:?} {a:?} and {other:?} {b:?}");
        }
    }
}

/// The texts without their places.
pub(super) fn shown(svg: &str) -> Vec<String> {
    texts(svg).into_iter().map(|(text, _)| text).collect()
}
