//! Taking wood out of a panel: signed convex pieces that never overlap, and what is left of every face.

use super::panel::{Panel, Piece, PieceSign};
use crate::geometry::{ConvexSolid, FaceView, MassProperties, Plane, Vec3};

/// Tag of a surface that a tool has cut, and of a face where one removed piece goes on in another.
const CUT: u32 = u32::MAX - 8;

/// Takes what lies inside all of some planes out of a panel; says what it took, as disjoint convex pieces.
///
/// What was taken before is not taken twice: the cut is split along the earlier pieces, so that the pieces are disjoint and
/// volumes add up with their signs.
pub(super) fn carve(panel: &mut Panel, within: impl IntoIterator<Item = Plane>) -> Vec<ConvexSolid> {
    let within = within.into_iter().map(|plane| (plane, CUT));
    let Some(whole) = panel.blank().and_then(|blank| blank.clone().cut(within)) else { return Vec::new() };
    let mut parts = vec![whole];
    for earlier in removed(panel) {
        let mut rest = Vec::with_capacity(parts.len());
        for part in parts {
            without(part, earlier, &mut rest);
        }
        parts = rest;
    }
    // What is thinner than rounding is nothing.
    parts.retain(|part| {
        let mass = part.mass_properties();
        mass.volume_mm3 > part.tolerance() * mass.surface_mm2
    });
    for part in &parts {
        for face in part.faces() {
            open(panel, &face);
        }
        panel.pieces.push(Piece { sign: PieceSign::Removed, solid: part.clone() });
    }
    if !parts.is_empty() {
        remeasure(panel);
    }
    parts
}

/// The solids that have been taken out of a panel.
fn removed(panel: &Panel) -> impl Iterator<Item = &ConvexSolid> + Clone {
    panel.pieces.iter().filter(|piece| piece.sign == PieceSign::Removed).map(|piece| &piece.solid)
}

/// Takes the face of a removed piece out of the face of the board that it lies in.
fn open(panel: &mut Panel, face: &FaceView<'_>) {
    match face.tag {
        CUT => {}
        Panel::SHOW => panel.show_area_mm2 -= face.area(),
        Panel::INNER => panel.inner_area_mm2 -= face.area(),
        tag => {
            if let Some(edge) = panel.edges.iter_mut().find(|edge| edge.tag == tag) {
                edge.area_mm2 -= face.area();
                panel.edge_area_mm2 -= face.area();
            }
        }
    }
}

/// Puts what is left of a convex part outside another into `rest`, as convex parts.
fn without(part: ConvexSolid, other: &ConvexSolid, rest: &mut Vec<ConvexSolid>) {
    if part.common(other, CUT).is_none() {
        rest.push(part);
        return;
    }
    let mut left = part;
    for face in other.faces() {
        rest.extend(left.clone().cut([(face.plane.flipped(), CUT)]));
        match left.cut([(face.plane, CUT)]) {
            Some(inside) => left = inside,
            None => return,
        }
    }
}

/// Areas of the cut surfaces and mass properties of the wood, from the pieces.
fn remeasure(panel: &mut Panel) {
    let Some(blank) = panel.blank().map(ConvexSolid::mass_properties) else { return };
    let mut cut_area_mm2 = 0.0;
    for (at, one) in removed(panel).enumerate() {
        for face in one.faces().filter(|face| face.tag == CUT) {
            cut_area_mm2 += face.area();
            // Where two removed pieces touch, neither face is a surface of the wood.
            cut_area_mm2 -= 2.0 * removed(panel).take(at).map(|other| contact(&face, other)).sum::<f64>();
        }
    }
    panel.cut_area_mm2 = cut_area_mm2.max(0.0);
    let parts: Vec<_> = removed(panel).map(ConvexSolid::mass_properties).collect();
    let surface_mm2 = panel.show_area_mm2 + panel.inner_area_mm2 + panel.edge_area_mm2 + panel.cut_area_mm2;
    panel.mass = MassProperties { surface_mm2, ..blank.less(&parts) };
}

/// Area of a face of one solid that lies on a face of another which looks the other way, mm².
fn contact(face: &FaceView<'_>, other: &ConvexSolid) -> f64 {
    let near = 4.0 * other.tolerance();
    let opposite = other.faces().find(|back| {
        back.plane.normal().dot(face.plane.normal()) < 0.0
            && face.points().all(|point| back.plane.signed_distance(point).abs() <= near)
    });
    let Some(opposite) = opposite else { return 0.0 };
    let mut points: Vec<_> = face.points().collect();
    for side in other.faces().filter(|side| side.tag != opposite.tag || side.plane != opposite.plane) {
        let mut kept = Vec::with_capacity(points.len() + 1);
        for (from, to) in points.iter().zip(points.iter().cycle().skip(1)) {
            let (here, there) = (side.plane.signed_distance(*from), side.plane.signed_distance(*to));
            if here <= 0.0 {
                kept.push(*from);
            }
            if (here < 0.0 && there > 0.0) || (here > 0.0 && there < 0.0) {
                kept.push(*from + (*to - *from) * (here / (here - there)));
            }
        }
        points = kept;
    }
    let Some(first) = points.first().copied() else { return 0.0 };
    let arms = || points.iter().map(|point| *point - first);
    let sum = arms().zip(arms().skip(1)).fold(Vec3::ZERO, |sum, (one, other)| sum + one.cross(other));
    0.5 * sum.length()
}
