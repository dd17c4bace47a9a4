//! The wood of a panel as triangles with shared corners.

use super::remains;
use crate::geometry::Point3;
use crate::shell::Panel;

/// Triangles of a panel.
#[derive(Clone, Debug, PartialEq)]
pub struct PanelMesh {
    /// Corners in the axes of the body, mm.
    pub vertices_mm: Vec<Point3>,
    /// Places of the corners of each triangle among the vertices, counter-clockwise seen from outside.
    pub triangles: Vec<[u32; 3]>,
    /// Which face of the panel each triangle belongs to: [`Panel::SHOW`], [`Panel::INNER`], the tag of an edge, or another
    /// number on what is left where a piece was taken out.
    pub tags: Vec<u32>,
}

/// The wood of a panel as triangles, made when it is asked for.
///
/// A panel without features is one closed surface. One that pieces have been taken out of is given as the convex parts
/// that are left, each closed: the volumes add up, and the faces between two parts lie on each other.
///
/// ```
/// # #[cfg(feature = "json")] {
/// use beamcraft_core::{export, plan::{BeamSpec, plan}};
/// let spec: BeamSpec = beamcraft_core::json::read(include_str!("../../examples/specs/ash_shelf_beam.json"))?;
/// let front = export::panel_mesh(&plan(&spec)?.panels[0]);
/// // Six faces of four corners each.
/// assert_eq!((front.vertices_mm.len(), front.triangles.len()), (8, 12));
/// # }
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn panel_mesh(panel: &Panel) -> PanelMesh {
    let mut mesh = PanelMesh { vertices_mm: Vec::new(), triangles: Vec::new(), tags: Vec::new() };
    for part in remains::parts(panel) {
        let start = mesh.vertices_mm.len() as u32;
        mesh.vertices_mm.extend_from_slice(part.vertices());
        for face in part.faces() {
            let Some((first, rest)) = face.corners.split_first() else { continue };
            for (second, third) in rest.iter().zip(rest.iter().skip(1)) {
                mesh.triangles.push([start + first, start + second, start + third]);
                mesh.tags.push(face.tag);
            }
        }
    }
    mesh
}

#[cfg(test)]
mod tests {
    use std::collections::HashSet;

    use super::super::samples;
    use super::*;
    use crate::geometry::{ConvexSolid, Vec3};
    use crate::shell::{Piece, PieceSign};

    /// By the divergence theorem; every directed edge once, beside its reverse.
    fn closed_volume(mesh: &PanelMesh) -> f64 {
        let mut directed = HashSet::new();
        let mut six = 0.0;
        for [a, b, c] in &mesh.triangles {
            for edge in [(a, b), (b, c), (c, a)] {
                assert!(directed.insert((*edge.0, *edge.1)));
            }
            let [a, b, c] = [a, b, c].map(|index| mesh.vertices_mm[*index as usize]);
            six += a.dot(b.cross(c));
        }
        assert!(directed.iter().all(|(from, to)| directed.contains(&(*to, *from))));
        six / 6.0
    }

    #[test]
    fn every_mesh_is_closed_and_has_the_volume_of_its_panel() {
        for (name, plan) in samples::all() {
            for panel in &plan.panels {
                let (volume, wanted) = (closed_volume(&panel_mesh(panel)), panel.mass.volume_mm3);
                // Two ways of summing the same terms.
                assert!((volume / wanted - 1.0).abs() < 1e-9, "{name}: {volume} {wanted}");
            }
        }
    }

    #[test]
    fn a_groove_is_left_out_of_the_mesh() {
        let mut panel = samples::shelf().panels[0].clone();
        let (low, high) = (Vec3::new(500.0, 12.0, 80.0), Vec3::new(560.0, 30.0, 100.0));
        let solid = ConvexSolid::cuboid(low, high, [2, 3, 4, 5, 6, 7]).unwrap();
        panel.pieces.push(Piece { sign: PieceSign::Removed, solid });
        let mesh = panel_mesh(&panel);
        let wanted = panel.mass.volume_mm3 - 60.0 * 8.0 * 20.0;
        assert!((closed_volume(&mesh) / wanted - 1.0).abs() < 1e-9);
        assert_eq!(mesh.tags.len(), mesh.triangles.len());
    }
}
