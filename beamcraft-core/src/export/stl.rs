//! The panels as triangles.

use crate::geometry::ConvexSolid;
use crate::shell::{Panel, PieceSign};

/// First 80 bytes of the file; a reader takes a file for a text one when it begins with `solid`.
const HEADER: &[u8; 80] = b"beamcraft panels, millimetres: x along the body, y to the wall, z up            ";

/// Panels as a binary STL file, in millimetres and in the axes of the body.
///
/// Each piece of each panel is a closed surface of its own, its triangles counter-clockwise seen from outside. A piece
/// that is taken out of a panel is turned inside out, so that signed volumes add up to that of the wood.
///
/// STL holds single-precision numbers: a coordinate of some metres is off by up to a tenth of a thousandth of a
/// millimetre.
pub fn panels_stl(panels: &[Panel]) -> Vec<u8> {
    let mut triangles = Vec::new();
    for piece in panels.iter().flat_map(|panel| &panel.pieces) {
        push_solid(&mut triangles, &piece.solid, piece.sign);
    }
    let mut out = Vec::with_capacity(84 + 50 * triangles.len());
    out.extend_from_slice(HEADER);
    out.extend_from_slice(&u32::try_from(triangles.len()).unwrap_or(u32::MAX).to_le_bytes());
    for triangle in triangles {
        for number in triangle {
            out.extend_from_slice(&number.to_le_bytes());
        }
        // Attribute byte count: none.
        out.extend_from_slice(&[0, 0]);
    }
    out
}

/// A normal and three corners.
type Triangle = [f32; 12];

fn push_solid(triangles: &mut Vec<Triangle>, solid: &ConvexSolid, sign: PieceSign) {
    for face in solid.faces() {
        let mut points = face.points();
        let Some(first) = points.next() else { continue };
        let outward = match sign {
            PieceSign::Added => face.plane.normal(),
            PieceSign::Removed => -face.plane.normal(),
        };
        for (second, third) in points.clone().zip(points.skip(1)) {
            let (second, third) = match sign {
                PieceSign::Added => (second, third),
                PieceSign::Removed => (third, second),
            };
            let [n, a, b, c] = [outward, first, second, third].map(|v| [v.x as f32, v.y as f32, v.z as f32]);
            let numbers = [n, a, b, c].into_iter().flatten();
            let mut triangle = [0.0; 12];
            for (place, number) in triangle.iter_mut().zip(numbers) {
                // A negative zero would be the one difference between equal files.
                *place = number + 0.0;
            }
            triangles.push(triangle);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::export::samples;
    use std::collections::HashMap;

    type Corner = [u32; 3];

    /// Triangles of a file as normal and corners.
    fn read(bytes: &[u8]) -> Vec<[[f32; 3]; 4]> {
        assert_eq!(&bytes[..80], HEADER);
        let count = u32::from_le_bytes(bytes[80..84].try_into().unwrap()) as usize;
        assert_eq!(bytes.len(), 84 + 50 * count);
        let triangle = |record: &[u8]| {
            assert_eq!(record[48..], [0, 0]);
            let number = |at: usize| f32::from_le_bytes(record[4 * at..4 * at + 4].try_into().unwrap());
            core::array::from_fn(|row| core::array::from_fn(|axis| number(3 * row + axis)))
        };
        bytes[84..].chunks(50).map(triangle).collect()
    }

    fn volume(triangles: &[[[f32; 3]; 4]]) -> f64 {
        let mut six = 0.0;
        for [_, a, b, c] in triangles {
            let [a, b, c] = [a, b, c].map(|p| p.map(f64::from));
            six += a[0] * (b[1] * c[2] - b[2] * c[1]) - a[1] * (b[0] * c[2] - b[2] * c[0])
                + a[2] * (b[0] * c[1] - b[1] * c[0]);
        }
        six / 6.0
    }

    #[test]
    fn every_piece_is_closed_and_the_volumes_are_those_of_the_panels() {
        for (name, plan) in samples::all() {
            let triangles = read(&panels_stl(&plan.panels));
            let wood: f64 = plan.panels.iter().map(|panel| panel.mass.volume_mm3).sum();
            // Single precision has 24 binary digits; the terms of the sum are some hundred times the sum.
            let allowed = 1e-5 * wood;
            assert!((volume(&triangles) - wood).abs() < allowed, "{name}: {} {wood}", volume(&triangles));
            let mut rest = triangles.as_slice();
            for piece in plan.panels.iter().flat_map(|panel| &panel.pieces) {
                let count: usize = piece.solid.faces().map(|face| face.corners.len() - 2).sum();
                let (own, others) = rest.split_at(count);
                rest = others;
                assert_closed(name, own);
            }
            assert!(rest.is_empty());
        }
    }

    /// Each directed edge has its one counterpart the other way round.
    fn assert_closed(name: &str, triangles: &[[[f32; 3]; 4]]) {
        let mut edges: HashMap<(Corner, Corner), i32> = HashMap::new();
        for [_, a, b, c] in triangles {
            for (from, to) in [(a, b), (b, c), (c, a)] {
                *edges.entry((from.map(f32::to_bits), to.map(f32::to_bits))).or_default() += 1;
            }
        }
        for ((from, to), count) in &edges {
            assert_eq!((*count, edges.get(&(*to, *from))), (1, Some(&1)), "{name}");
        }
    }

    #[test]
    fn normals_point_out_of_the_wood() {
        for (name, plan) in samples::all() {
            for [n, a, b, c] in read(&panels_stl(&plan.panels)) {
                let [n, a, b, c] = [n, a, b, c].map(|p| p.map(f64::from));
                let (u, v): ([f64; 3], [f64; 3]) =
                    (core::array::from_fn(|i| b[i] - a[i]), core::array::from_fn(|i| c[i] - a[i]));
                let cross = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
                let (length, along) = (
                    cross.iter().map(|x| x * x).sum::<f64>().sqrt(),
                    cross.iter().zip(n).map(|(x, y)| x * y).sum::<f64>(),
                );
                assert!(along > 0.999 * length, "{name}");
            }
        }
    }

    #[test]
    fn a_piece_taken_out_counts_against_the_volume() {
        let mut plan = samples::shelf();
        let panel = plan.panels[0].clone();
        let before = volume(&read(&panels_stl(&plan.panels)));
        plan.panels[0].pieces[0].sign = PieceSign::Removed;
        let after = volume(&read(&panels_stl(&plan.panels)));
        let own = panel.mass.volume_mm3;
        assert!((before - after - 2.0 * own).abs() < 1e-4 * own);
    }
}
