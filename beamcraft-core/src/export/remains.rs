//! The wood of a panel when pieces have been taken out of it: as convex parts, and as closed bodies with plane faces.
//!
//! A panel is the sum of signed convex pieces. Taking one convex piece out of another leaves convex parts, found by cutting
//! along its faces one after the other. The body is found without any part: on each plane the rings of all pieces are
//! added up as directed edges, edges that run both ways cancel, and what is left closes into the rings of the wood's own
//! faces. A body that does not come out closed, or whose volume is not that of the parts, is given up for its parts: they
//! are never wrong, only more than one.

#![allow(clippy::indexing_slicing, reason = "indices are made with the vertices they point to; every body is checked")]

use crate::geometry::{Clip, ConvexSolid, FaceView, Point3, Vec3};
use crate::numeric::real::atan2_deg;
use crate::shell::{Panel, PieceSign};

/// Tag of a face that was made by taking a piece out.
pub(super) const WITHIN: u32 = u32::MAX - 8;

/// A plane face of a body.
#[derive(Clone, Debug)]
pub(super) struct WoodFace {
    /// The tag of the panel's face, or [`WITHIN`].
    pub(super) tag: u32,
    /// Unit normal out of the wood.
    pub(super) normal: Vec3,
    /// Rings of vertex indices: the outer one counter-clockwise seen from outside, then holes the other way round.
    pub(super) rings: Vec<Vec<u32>>,
}

/// A closed body of wood.
#[derive(Clone, Debug)]
pub(super) struct Wood {
    pub(super) vertices: Vec<Point3>,
    pub(super) faces: Vec<WoodFace>,
}

impl Wood {
    fn of_solid(solid: &ConvexSolid) -> Self {
        let face = |face: FaceView<'_>| WoodFace {
            tag: face.tag,
            normal: face.plane.normal(),
            rings: vec![face.corners.to_vec()],
        };
        Self { vertices: solid.vertices().to_vec(), faces: solid.faces().map(face).collect() }
    }

    /// The points of a ring.
    pub(super) fn points<'a>(&'a self, ring: &'a [u32]) -> impl Iterator<Item = Point3> + Clone + 'a {
        ring.iter().map(|index| self.vertices[*index as usize])
    }

    /// The volume that the faces enclose.
    fn volume(&self) -> f64 {
        let near = self.vertices.first().copied().unwrap_or_default();
        let mut six = 0.0;
        for ring in self.faces.iter().flat_map(|face| &face.rings) {
            let points: Vec<Vec3> = self.points(ring).map(|point| point - near).collect();
            for pair in points.windows(2).skip(1) {
                six += points[0].dot(pair[0].cross(pair[1]));
            }
        }
        six / 6.0
    }
}

/// Directed edges of a ring.
pub(super) fn edges_of(ring: &[u32]) -> impl Iterator<Item = (u32, u32)> + '_ {
    ring.iter().copied().zip(ring.iter().copied().cycle().skip(1))
}

/// The wood of a panel as convex parts that do not overlap.
pub(super) fn parts(panel: &Panel) -> Vec<ConvexSolid> {
    let of = |sign: PieceSign| panel.pieces.iter().filter(move |piece| piece.sign == sign).map(|piece| &piece.solid);
    let mut parts: Vec<ConvexSolid> = of(PieceSign::Added).cloned().collect();
    for removed in of(PieceSign::Removed) {
        parts = parts.iter().flat_map(|part| without(part, removed)).collect();
    }
    parts
}

/// What is left of a solid, as convex parts.
fn without(solid: &ConvexSolid, removed: &ConvexSolid) -> Vec<ConvexSolid> {
    if solid.common(removed, WITHIN).is_none() {
        return vec![solid.clone()];
    }
    let mut left = Vec::new();
    let mut rest = solid.clone();
    for face in removed.faces() {
        match rest.clip(&face.plane.flipped(), WITHIN) {
            Clip::Part(outside) => left.push(outside),
            // The rest lies outside this face: nothing of it is taken.
            Clip::Whole => {
                left.push(rest);
                return left;
            }
            Clip::Empty => {}
        }
        match rest.clip(&face.plane, WITHIN) {
            Clip::Part(inside) => rest = inside,
            Clip::Whole => {}
            Clip::Empty => return left,
        }
    }
    left
}

/// The wood of a panel as closed bodies: one, unless what was taken out parts it, or the parts of [`parts`].
pub(super) fn bodies(panel: &Panel) -> Vec<Wood> {
    let mut added = panel.pieces.iter().filter(|piece| piece.sign == PieceSign::Added);
    if let (Some(only), None, 1) = (added.next(), added.next(), panel.pieces.len()) {
        return vec![Wood::of_solid(&only.solid)];
    }
    let parts = parts(panel);
    joined(panel, &parts).unwrap_or_else(|| parts.iter().map(Wood::of_solid).collect())
}

/// The closed bodies that signed pieces bound; nothing when their faces do not close.
fn joined(panel: &Panel, parts: &[ConvexSolid]) -> Option<Vec<Wood>> {
    let mut signed: Vec<(ConvexSolid, PieceSign)> = Vec::new();
    for piece in panel.pieces.iter().filter(|piece| piece.sign == PieceSign::Added) {
        signed.push((piece.solid.clone(), PieceSign::Added));
    }
    let added = signed.clone();
    let mut taken: Vec<ConvexSolid> = Vec::new();
    for piece in panel.pieces.iter().filter(|piece| piece.sign == PieceSign::Removed) {
        for (solid, _) in &added {
            let Some(common) = piece.solid.common(solid, WITHIN) else { continue };
            // Each place is taken out once, also where two cutters cross.
            let mut fresh = vec![common.retagged(|_| WITHIN)];
            for earlier in &taken {
                fresh = fresh.iter().flat_map(|one| without(one, earlier)).collect();
            }
            taken.extend(fresh);
        }
    }
    signed.extend(taken.into_iter().map(|solid| (solid.retagged(|_| WITHIN), PieceSign::Removed)));
    let size = panel.blank()?.tolerance();
    let mut net = Net { same: 64.0 * size, ..Net::default() };
    for (solid, sign) in &signed {
        net.add(solid, *sign);
    }
    let wood = Wood { faces: net.faces()?, vertices: net.vertices };
    let wanted: f64 = parts.iter().map(ConvexSolid::volume).sum();
    // The volume of a body that closes is good to many digits; a lost face costs far more.
    if !is_closed(&wood) || (wood.volume() - wanted).abs() > 1e-7 * wanted {
        return None;
    }
    let separate = separated(&wood);
    // A part with a negative volume is a cavity: a shell within a shell.
    separate.iter().all(|body| body.volume() > 0.0).then_some(separate)
}

/// Every directed edge once, beside its reverse.
fn is_closed(wood: &Wood) -> bool {
    let mut edges: Vec<(u32, u32)> =
        wood.faces.iter().flat_map(|face| &face.rings).flat_map(|ring| edges_of(ring)).collect();
    edges.sort_unstable();
    let doubled = edges.windows(2).any(|pair| pair[0] == pair[1]);
    !doubled && edges.iter().all(|(from, to)| edges.binary_search(&(*to, *from)).is_ok())
}

/// Bodies that share no edge, each with its own vertices.
fn separated(wood: &Wood) -> Vec<Wood> {
    let mut group: Vec<usize> = (0..wood.faces.len()).collect();
    let edges: Vec<Vec<(u32, u32)>> = wood
        .faces
        .iter()
        .map(|face| face.rings.iter().flat_map(|ring| edges_of(ring).collect::<Vec<_>>()).collect())
        .collect();
    // Few faces: repeated until nothing changes.
    let mut changed = true;
    while changed {
        changed = false;
        for one in 0..edges.len() {
            for other in 0..one {
                let touch = edges[one].iter().any(|(from, to)| edges[other].contains(&(*to, *from)));
                let least = group[one].min(group[other]);
                if touch && group[one] != group[other] {
                    (group[one], group[other]) = (least, least);
                    changed = true;
                }
            }
        }
    }
    let mut names = group.clone();
    names.sort_unstable();
    names.dedup();
    names
        .into_iter()
        .map(|name| {
            let mut body = Wood { vertices: Vec::new(), faces: Vec::new() };
            let mut placed: Vec<Option<u32>> = vec![None; wood.vertices.len()];
            for (face, _) in wood.faces.iter().zip(&group).filter(|(_, group)| **group == name) {
                let mut face = face.clone();
                for index in face.rings.iter_mut().flatten() {
                    let old = *index as usize;
                    *index = *placed[old].get_or_insert_with(|| {
                        body.vertices.push(wood.vertices[old]);
                        body.vertices.len() as u32 - 1
                    });
                }
                body.faces.push(face);
            }
            body
        })
        .collect()
}

/// Directed edges of all pieces, plane by plane.
#[derive(Default)]
struct Net {
    /// Points closer than this are one.
    same: f64,
    vertices: Vec<Point3>,
    planes: Vec<NetPlane>,
}

struct NetPlane {
    normal: Vec3,
    point: Point3,
    /// Tags of faces that look along the normal and against it.
    tags: [Option<u32>; 2],
    edges: Vec<(u32, u32)>,
}

impl Net {
    fn vertex(&mut self, point: Point3) -> u32 {
        if let Some(at) = self.vertices.iter().position(|other| (*other - point).magnitude() <= self.same) {
            return at as u32;
        }
        self.vertices.push(point.tidy());
        self.vertices.len() as u32 - 1
    }

    fn add(&mut self, solid: &ConvexSolid, sign: PieceSign) {
        for face in solid.faces() {
            let normal = match sign {
                PieceSign::Added => face.plane.normal(),
                PieceSign::Removed => -face.plane.normal(),
            };
            let mut ring: Vec<u32> = face.points().map(|point| self.vertex(point)).collect();
            if sign == PieceSign::Removed {
                ring.reverse();
            }
            let (at, side) = self.plane(normal, face.plane.point());
            // The name of the board's own face goes before that of a piece.
            let tag = &mut self.planes[at].tags[side];
            *tag = Some(tag.map_or(face.tag, |old| old.min(face.tag)));
            self.planes[at].edges.extend(edges_of(&ring));
        }
    }

    /// The plane of a face, and whether the face looks along its normal.
    fn plane(&mut self, normal: Vec3, point: Point3) -> (usize, usize) {
        let found = self.planes.iter().position(|plane| {
            let parallel = plane.normal.cross(normal).magnitude() < 1e-9;
            parallel && plane.normal.dot(point - plane.point).abs() <= self.same
        });
        let at = found.unwrap_or_else(|| {
            self.planes.push(NetPlane { normal, point, tags: [None; 2], edges: Vec::new() });
            self.planes.len() - 1
        });
        (at, usize::from(self.planes[at].normal.dot(normal) < 0.0))
    }

    /// The faces of the wood; nothing where the edges of a plane close into no rings.
    fn faces(&self) -> Option<Vec<WoodFace>> {
        let mut faces = Vec::new();
        for plane in &self.planes {
            let edges = self.cancelled(plane);
            let rings = self.rings(plane, edges)?;
            faces.extend(self.nested(plane, rings)?);
        }
        Some(faces)
    }

    /// Edges split where other vertices lie on them, less those that run both ways.
    fn cancelled(&self, plane: &NetPlane) -> Vec<(u32, u32)> {
        let mut left: Vec<(u32, u32)> = Vec::new();
        for (from, to) in &plane.edges {
            for edge in self.split(*from, *to) {
                match left.iter().position(|other| *other == (edge.1, edge.0)) {
                    Some(at) => {
                        left.swap_remove(at);
                    }
                    None => left.push(edge),
                }
            }
        }
        left
    }

    fn split(&self, from: u32, to: u32) -> Vec<(u32, u32)> {
        let (start, end) = (self.vertices[from as usize], self.vertices[to as usize]);
        let along = end - start;
        let length = along.length();
        let mut stops: Vec<(f64, u32)> = Vec::new();
        for (at, point) in self.vertices.iter().enumerate() {
            let share = (*point - start).dot(along) / (length * length);
            let off = (*point - start - along * share).length();
            if off <= self.same && share * length > self.same && (1.0 - share) * length > self.same {
                stops.push((share, at as u32));
            }
        }
        stops.sort_by(|one, other| one.0.total_cmp(&other.0));
        let mut edges = Vec::new();
        let mut at = from;
        for stop in stops.into_iter().map(|(_, stop)| stop).chain([to]) {
            if stop != at {
                edges.push((at, stop));
            }
            at = stop;
        }
        edges
    }

    /// Closed rings, at each vertex turning as far left as there is an edge.
    fn rings(&self, plane: &NetPlane, mut edges: Vec<(u32, u32)>) -> Option<Vec<Vec<u32>>> {
        let mut rings = Vec::new();
        while let Some((first, mut at)) = edges.pop() {
            let mut ring = vec![first];
            let mut from = first;
            while at != first {
                let back = self.vertices[from as usize] - self.vertices[at as usize];
                let turn = |edge: &(u32, u32)| {
                    let out = self.vertices[edge.1 as usize] - self.vertices[edge.0 as usize];
                    // Clockwise from where the ring came: the first edge met bounds the wood on the left.
                    let (x, y) = (back.dot(out), -plane.normal.dot(back.cross(out)));
                    let angle = atan2_deg(y, x);
                    if angle <= 0.0 { angle + 360.0 } else { angle }
                };
                let next = edges
                    .iter()
                    .enumerate()
                    .filter(|(_, edge)| edge.0 == at)
                    .min_by(|one, other| turn(one.1).total_cmp(&turn(other.1)))
                    .map(|(k, _)| k)?;
                ring.push(at);
                from = at;
                at = edges.swap_remove(next).1;
            }
            if ring.len() < 3 {
                return None;
            }
            rings.push(ring);
        }
        Some(rings)
    }

    /// Twice the area of a ring about the plane's normal.
    fn area(&self, plane: &NetPlane, ring: &[u32]) -> f64 {
        let point = |index: u32| self.vertices[index as usize] - plane.point;
        edges_of(ring).map(|(from, to)| plane.normal.dot(point(from).cross(point(to)))).sum()
    }

    /// Faces from rings: counter-clockwise ones are faces along the normal, clockwise ones holes in the least face around
    /// them, or faces that look the other way where none is around them.
    fn nested(&self, plane: &NetPlane, rings: Vec<Vec<u32>>) -> Option<Vec<WoodFace>> {
        let (outer, others): (Vec<_>, Vec<_>) = rings.into_iter().partition(|ring| self.area(plane, ring) > 0.0);
        let mut faces: Vec<WoodFace> = Vec::new();
        for ring in outer {
            faces.push(WoodFace { tag: plane.tags[0]?, normal: plane.normal, rings: vec![ring] });
        }
        let along = faces.len();
        for ring in others {
            let holds = |face: &&mut WoodFace| self.is_inside(plane, &ring, &face.rings[0]);
            let around = faces[..along]
                .iter_mut()
                .filter(holds)
                .min_by(|one, other| self.area(plane, &one.rings[0]).total_cmp(&self.area(plane, &other.rings[0])));
            match around {
                Some(face) => face.rings.push(ring),
                None => faces.push(WoodFace { tag: plane.tags[1]?, normal: -plane.normal, rings: vec![ring] }),
            }
        }
        Some(faces)
    }

    /// Whether a ring lies within another, by its vertices and the middles of its edges that are not on the other's rim.
    fn is_inside(&self, plane: &NetPlane, ring: &[u32], around: &[u32]) -> bool {
        let middles = edges_of(ring)
            .map(|(from, to)| (self.vertices[from as usize] + self.vertices[to as usize]) * 0.5)
            .chain(ring.iter().map(|index| self.vertices[*index as usize]));
        for point in middles {
            let mut wound = 0.0;
            let mut on_rim = false;
            for (from, to) in edges_of(around) {
                let (a, b) = (self.vertices[from as usize] - point, self.vertices[to as usize] - point);
                let (sine, cosine) = (plane.normal.dot(a.cross(b)), a.dot(b));
                let on = sine.abs() <= self.same * (b - a).length() && cosine <= 0.0;
                on_rim |= on;
                wound += atan2_deg(sine, cosine);
            }
            if !on_rim {
                return wound > 180.0;
            }
        }
        false
    }
}

#[cfg(test)]
mod tests {
    use super::super::samples;
    use super::*;
    use crate::shell::Piece;

    /// The front of the shelf, 1830 × 185 × 20, with pieces taken out.
    fn front(cutters: &[(Vec3, Vec3)]) -> Panel {
        let mut panel = samples::shelf().panels[0].clone();
        for (low, high) in cutters {
            let solid = ConvexSolid::cuboid(*low, *high, [2, 3, 4, 5, 6, 7]).unwrap();
            panel.pieces.push(Piece { sign: PieceSign::Removed, solid });
        }
        panel
    }

    fn volume(bodies: &[Wood]) -> f64 {
        bodies.iter().map(Wood::volume).sum()
    }

    #[track_caller]
    fn assert_sound(panel: &Panel, taken_mm3: f64, count: usize) -> Vec<Wood> {
        let whole = panel.blank().unwrap().volume();
        let bodies = bodies(panel);
        assert_eq!(bodies.len(), count);
        for body in &bodies {
            assert!(is_closed(body));
        }
        assert!((volume(&bodies) - (whole - taken_mm3)).abs() < 1e-6 * whole, "{} {}", volume(&bodies), whole);
        let parts: f64 = parts(panel).iter().map(ConvexSolid::volume).sum();
        assert!((parts - (whole - taken_mm3)).abs() < 1e-9 * whole);
        bodies
    }

    fn face_count(body: &Wood) -> usize {
        body.faces.len()
    }

    #[test]
    fn a_plain_panel_is_its_solid() {
        let panel = front(&[]);
        let bodies = assert_sound(&panel, 0.0, 1);
        assert_eq!(face_count(&bodies[0]), 6);
    }

    #[test]
    fn a_pocket_leaves_a_hole_in_one_face() {
        // From the inner face, at y = 20, 8 deep.
        let panel = front(&[(Vec3::new(500.0, 12.0, 80.0), Vec3::new(560.0, 30.0, 100.0))]);
        let bodies = assert_sound(&panel, 60.0 * 8.0 * 20.0, 1);
        // Six of the board, floor and four walls of the pocket.
        assert_eq!(face_count(&bodies[0]), 11);
        let inner = bodies[0].faces.iter().find(|face| face.tag == Panel::INNER).unwrap();
        assert_eq!(inner.rings.len(), 2);
    }

    #[test]
    fn a_hole_right_through_leaves_holes_in_two_faces() {
        let panel = front(&[(Vec3::new(500.0, -5.0, 80.0), Vec3::new(560.0, 30.0, 100.0))]);
        let bodies = assert_sound(&panel, 60.0 * 20.0 * 20.0, 1);
        assert_eq!(face_count(&bodies[0]), 10);
        assert_eq!(bodies[0].faces.iter().filter(|face| face.rings.len() == 2).count(), 2);
    }

    #[test]
    fn a_groove_along_the_whole_board_parts_the_inner_face() {
        let panel = front(&[(Vec3::new(-100.0, 14.0, 80.0), Vec3::new(2000.0, 30.0, 100.0))]);
        // The ends are mitred at 45°: 6 deep, its mean length is 1790 + 2·3 and the floor is longer by twice 6.
        let bodies = assert_sound(&panel, 20.0 * 6.0 * (1790.0 + 6.0), 1);
        // Show, two inner strips, two long edges, two ends, groove floor and walls.
        assert_eq!(face_count(&bodies[0]), 10);
        assert_eq!(bodies[0].faces.iter().filter(|face| face.tag == Panel::INNER).count(), 2);
    }

    #[test]
    fn crossing_grooves_are_taken_out_once() {
        let panel = front(&[
            (Vec3::new(200.0, 14.0, 80.0), Vec3::new(900.0, 30.0, 100.0)),
            (Vec3::new(500.0, 14.0, 40.0), Vec3::new(520.0, 30.0, 140.0)),
        ]);
        let bodies = assert_sound(&panel, 6.0 * (700.0 * 20.0 + 20.0 * 100.0 - 20.0 * 20.0), 1);
        // Six of the board, one floor, twelve walls of a cross.
        assert_eq!(face_count(&bodies[0]), 19);
    }

    #[test]
    fn a_slot_right_across_leaves_two_bodies() {
        let panel = front(&[(Vec3::new(900.0, -5.0, -5.0), Vec3::new(910.0, 30.0, 400.0))]);
        let whole = panel.blank().unwrap().volume();
        let share: f64 = whole - parts(&panel).iter().map(ConvexSolid::volume).sum::<f64>();
        let bodies = assert_sound(&panel, share, 2);
        assert!(bodies.iter().all(|body| face_count(body) == 6));
    }

    #[test]
    fn a_cavity_that_no_one_sees_is_given_as_parts() {
        let panel = front(&[(Vec3::new(500.0, 8.0, 80.0), Vec3::new(560.0, 12.0, 100.0))]);
        let bodies = bodies(&panel);
        assert_eq!(bodies.len(), 6);
        let whole = panel.blank().unwrap().volume();
        assert!((volume(&bodies) - (whole - 60.0 * 4.0 * 20.0)).abs() < 1e-9 * whole);
    }

    #[test]
    fn a_piece_that_takes_all_leaves_nothing() {
        let panel = front(&[(Vec3::new(-10.0, -10.0, -10.0), Vec3::new(3000.0, 300.0, 300.0))]);
        assert!(parts(&panel).is_empty() && bodies(&panel).is_empty());
    }

    #[test]
    fn a_piece_beside_the_panel_changes_nothing() {
        let panel = front(&[(Vec3::new(500.0, 20.0, 80.0), Vec3::new(560.0, 30.0, 100.0))]);
        assert_sound(&panel, 0.0, 1);
    }
}
