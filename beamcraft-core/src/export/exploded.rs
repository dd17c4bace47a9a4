//! The panels of a body pulled apart, in isometric projection, as a sheet.
//!
//! ```text
//! right = (x − y) cos 30°      up = (x + y) sin 30° + z        (ISO 5456-3: the three axes at one scale)
//! ```
//!
//! Seen from the left, the front and above. Panels are drawn from the farthest to the nearest: of two convex solids apart
//! from each other one face plane has the other wholly beyond it, and says which of the two is nearer.

use super::drawn::Drawn;
use super::layout::{Scale, TITLE, Title, Zone, framed};
use super::remains;
use super::svg::{Anchor, BALLOON_RADIUS, Fill, Line, NORMAL, Sheet, Spot, fitted};
use super::words;
use crate::geometry::convex_outline;
use crate::geometry::{ConvexSolid, Point3, Vec3};
use crate::shell::Panel;

/// cos 30°.
const COS_30: f64 = 0.866_025_403_784_438_6;
/// Towards the viewer.
const NEAR: Vec3 = Vec3 { x: -1.0, y: -1.0, z: 1.0 };
/// How far panels move apart, against the least extent of the body.
const APART: f64 = 0.6;
/// Height of a row of the list, mm.
const ROW: f64 = 6.0;
/// From this many panels the list has two columns.
const TWO_COLUMNS: usize = 7;
/// Paper kept free around the view, mm.
const AROUND: f64 = 12.0;

/// The body of a plan or a [`SawnBody`](crate::plan::SawnBody) with its panels pulled apart along their normals, in isometric projection, as an SVG sheet.
///
/// Every panel has its number and stands in the list with its size. Inner faces are grey, the thin lines show which way a
/// panel goes home. A4 where lengths are metric, US Letter where they are in inches.
///
/// ```
/// # #[cfg(feature = "json")] {
/// use beamcraft_core::{export, plan::{BeamSpec, plan}};
/// let spec: BeamSpec = beamcraft_core::json::read(include_str!("../../examples/specs/ash_shelf_beam.json"))?;
/// let sheet = export::exploded_svg(&plan(&spec)?);
/// assert!(sheet.contains("left end: 215 × 185, 20 thick"));
/// # }
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn exploded_svg<'a>(of: impl Into<Drawn<'a>>) -> String {
    let job = of.into();
    let description = "The panels of the body pulled apart, isometric, seen from the left, the front and above.";
    let (mut sheet, frame) = framed(job, "Panels apart", description);
    let list = list_height(job.panels.len());
    let foot = frame.bottom - TITLE;
    let parts = parts(job.panels);
    let zone = Zone { bottom: foot - list, ..frame };
    let scale = draw(&mut sheet, &parts, zone);
    draw_list(&mut sheet, job, Zone { top: foot - list, bottom: foot, ..frame });
    let title = Title {
        what: "Panels pulled apart, seen from the left, the front and above",
        scale: Some(scale),
        remark: "The scale holds along the length, to the wall and upwards, not across the paper.",
    };
    title.draw(&mut sheet, job, frame);
    sheet.finish()
}

/// A panel in its place on the sheet, with what hides what is behind it.
struct Apart<'a> {
    panel: &'a Panel,
    /// Its number in the list.
    number: usize,
    /// The board as it is moved.
    solid: ConvexSolid,
    /// How far it is moved.
    by: Vec3,
}

/// Every panel, moved, from the farthest to the nearest.
fn parts(panels: &[Panel]) -> Vec<Apart<'_>> {
    let points = || panels.iter().filter_map(Panel::blank).flat_map(|solid| solid.vertices().iter().copied());
    let Some(first) = points().next() else { return Vec::new() };
    let (low, high) = points().fold((first, first), |(low, high), at| (low.least(at), high.most(at)));
    let size = high - low;
    let gap = APART * size.x.min(size.y).min(size.z);
    let apart = panels.iter().enumerate().filter_map(|(at, panel)| {
        let by = panel.frame.n * gap;
        Some(Apart { panel, number: at + 1, solid: panel.blank()?.moved(by)?, by })
    });
    in_order(apart.collect())
}

/// Each panel before those that may hide it.
fn in_order(mut left: Vec<Apart<'_>>) -> Vec<Apart<'_>> {
    let mut ordered = Vec::with_capacity(left.len());
    while !left.is_empty() {
        let hides_none = |at: usize, one: &Apart<'_>| {
            left.iter().enumerate().all(|(other, behind)| other == at || !is_nearer(&one.solid, &behind.solid))
        };
        let depth = |part: &Apart<'_>| NEAR.dot(part.panel.mass.centroid_mm + part.by);
        // Panels that hide one another in a ring: the farthest goes first.
        let farthest = || left.iter().enumerate().min_by(|one, other| depth(one.1).total_cmp(&depth(other.1)));
        let free = left.iter().enumerate().find(|(at, one)| hides_none(*at, one)).or_else(farthest);
        let Some(at) = free.map(|(at, _)| at) else { break };
        ordered.push(left.remove(at));
    }
    ordered
}

/// Whether the first of two solids may hide the second.
fn is_nearer(one: &ConvexSolid, other: &ConvexSolid) -> bool {
    let slack = one.tolerance().max(other.tolerance());
    let beyond = |of: &ConvexSolid, solid: &ConvexSolid, side: f64| {
        of.faces().any(|face| {
            let faces_so = side * face.plane.normal().dot(NEAR) > 1e-9;
            faces_so && solid.vertices().iter().all(|point| face.plane.signed_distance(*point) >= -slack)
        })
    };
    // It is not when it lies behind a plane of the other, or the other in front of a plane of its own.
    !(beyond(other, one, -1.0) || beyond(one, other, 1.0)) && (beyond(other, one, 1.0) || beyond(one, other, -1.0))
}

/// Right and up of a point, mm of the body.
fn projected(point: Point3) -> (f64, f64) {
    ((point.x - point.y) * COS_30, 0.5 * (point.x + point.y) + point.z)
}

fn draw(sheet: &mut Sheet, parts: &[Apart<'_>], zone: Zone) -> Scale {
    let flat: Vec<_> = parts.iter().flat_map(|part| part.solid.vertices()).map(|point| projected(*point)).collect();
    let fold = |pick: fn((f64, f64)) -> f64, start: f64, better: fn(f64, f64) -> f64| {
        flat.iter().map(|at| pick(*at)).fold(start, better)
    };
    let (left_mm, right_mm) = (fold(|at| at.0, f64::MAX, f64::min), fold(|at| at.0, f64::MIN, f64::max));
    let (low_mm, high_mm) = (fold(|at| at.1, f64::MAX, f64::min), fold(|at| at.1, f64::MIN, f64::max));
    let room = (zone.width() - 2.0 * AROUND, zone.height() - 2.0 * AROUND);
    let scale = Scale::fitting((right_mm - left_mm, high_mm - low_mm), room);
    let size = scale.of_paper();
    let centre = Spot::new(0.5 * (zone.left + zone.right), 0.5 * (zone.top + zone.bottom));
    let spot = |point: Point3| {
        let (right, up) = projected(point);
        centre.by((right - 0.5 * (left_mm + right_mm)) * size, (0.5 * (low_mm + high_mm) - up) * size)
    };
    for part in parts {
        draw_way_home(sheet, part, &spot);
    }
    for part in parts {
        draw_panel(sheet, part, &spot);
    }
    for (at, part) in parts.iter().enumerate() {
        let hiding: Vec<Vec<Spot>> = parts.iter().skip(at + 1).map(|other| outline(&other.solid, &spot)).collect();
        draw_number(sheet, part, &hiding, &spot);
    }
    scale
}

/// The lines along which the corners of a show face go to their places.
fn draw_way_home(sheet: &mut Sheet, part: &Apart<'_>, spot: &impl Fn(Point3) -> Spot) {
    let Some(show) = part.solid.face(Panel::SHOW) else { return };
    for corner in show.points() {
        sheet.line(spot(corner), spot(corner - part.by), Line::Behind);
    }
}

/// The faces of a panel that are seen, the farthest first.
fn draw_panel(sheet: &mut Sheet, part: &Apart<'_>, spot: &impl Fn(Point3) -> Spot) {
    let mut seen: Vec<(f64, u32, Vec<Vec<Spot>>)> = Vec::new();
    for body in remains::bodies(part.panel) {
        for face in body.faces.iter().filter(|face| face.normal.dot(NEAR) > 1e-9) {
            let Some(outer) = face.rings.first() else { continue };
            let depth = NEAR.dot(mean(body.points(outer)));
            let rings = face.rings.iter().map(|ring| body.points(ring).map(|point| spot(point + part.by)).collect());
            seen.push((depth, face.tag, rings.collect()));
        }
    }
    seen.sort_by(|one, other| one.0.total_cmp(&other.0));
    for (_, tag, rings) in &seen {
        let fill = if *tag == Panel::INNER { Fill::Grey } else { Fill::White };
        sheet.area(rings.iter().map(Vec::as_slice), Line::Outline, fill);
    }
}

/// The number of a panel: on a face where there is room and nothing hides it, else beside it with a leader.
fn draw_number(sheet: &mut Sheet, part: &Apart<'_>, hiding: &[Vec<Spot>], spot: &impl Fn(Point3) -> Spot) {
    const ROOM: f64 = BALLOON_RADIUS + 0.5;
    let free = |at: Spot, room: f64| hiding.iter().all(|ring| depth_inside(ring, at) < -room);
    let faces = part.solid.faces().filter(|face| face.plane.normal().dot(NEAR) > 1e-9);
    let mut places: Vec<(f64, Spot)> = Vec::new();
    for face in faces {
        let middle = mean(face.points());
        let ring: Vec<Spot> = face.points().map(spot).collect();
        let corners = face.points().zip(face.points().cycle().skip(1));
        let around = corners.flat_map(|(corner, next)| [corner, (corner + next) * 0.5]);
        for (share, towards) in
            core::iter::once((0.0, middle)).chain(around.flat_map(|point| [0.3, 0.6, 0.85].map(|share| (share, point))))
        {
            let at = spot(middle + (towards - middle) * share);
            if free(at, 0.3) {
                // The middle is worth more than a place off it.
                places.push((depth_inside(&ring, at).min(ROOM) - 0.1 * share, at));
            }
        }
    }
    let on_face = places.iter().copied().filter(|(room, at)| *room >= ROOM - 0.1 && free(*at, ROOM));
    let best = |one: &(f64, Spot), other: &(f64, Spot)| one.0.total_cmp(&other.0);
    if let Some((_, at)) = on_face.max_by(best) {
        sheet.balloon(at, at, part.number);
        return;
    }
    let middle = spot(part.panel.mass.centroid_mm + part.by);
    let on = places.into_iter().max_by(best).map_or(middle, |(_, at)| at);
    let (from, to) = (spot(Vec3::ZERO), spot(part.by));
    let length = from.distance(to).max(f64::MIN_POSITIVE);
    let ring = outline(&part.solid, spot);
    // Out along the way it was moved, until it is clear of the panel itself.
    let steps = (0..30).map(|step| 4.0 + f64::from(step));
    let out = |away: f64| on.by((to.x - from.x) / length * away, (to.y - from.y) / length * away);
    let clear = |at: &Spot| depth_inside(&ring, *at) < -ROOM;
    let at = steps.map(out).find(clear).unwrap_or(on);
    sheet.balloon(at, on, part.number);
}

/// The outline of a solid on the paper.
fn outline(solid: &ConvexSolid, spot: &impl Fn(Point3) -> Spot) -> Vec<Spot> {
    let flat = solid.vertices().iter().map(|point| spot(*point)).map(|at| (at.x, at.y)).collect();
    convex_outline(flat).into_iter().map(|(x, y)| Spot::new(x, y)).collect()
}

/// How far a spot lies within a convex ring; negative outside it, and then no more than its distance.
fn depth_inside(ring: &[Spot], at: Spot) -> f64 {
    let sides = ring.iter().zip(ring.iter().cycle().skip(1));
    let doubled: f64 = sides.clone().map(|(one, other)| one.x * other.y - one.y * other.x).sum();
    let depth = |(one, other): (&Spot, &Spot)| {
        let across = (other.x - one.x) * (at.y - one.y) - (other.y - one.y) * (at.x - one.x);
        across * doubled.signum() / one.distance(*other).max(f64::MIN_POSITIVE)
    };
    sides.map(depth).fold(f64::MAX, f64::min)
}

fn mean(points: impl Iterator<Item = Point3>) -> Point3 {
    let (count, sum) = points.fold((0.0, Vec3::ZERO), |(count, sum), point| (count + 1.0, sum + point));
    sum * (1.0 / f64::max(count, 1.0))
}

const fn rows(count: usize) -> usize {
    if count < TWO_COLUMNS { count } else { count.div_ceil(2) }
}

fn list_height(count: usize) -> f64 {
    ROW * rows(count) as f64 + 5.0
}

/// Number, name and size of each panel.
fn draw_list(sheet: &mut Sheet, job: Drawn<'_>, zone: Zone) {
    sheet.line(Spot::new(zone.left, zone.top), Spot::new(zone.right, zone.top), Line::Thin);
    let rows = rows(job.panels.len());
    let columns = if rows < job.panels.len() { 2.0 } else { 1.0 };
    let width = zone.width() / columns;
    for (at, panel) in job.panels.iter().enumerate() {
        let (column, row) = ((at / rows.max(1)) as f64, (at % rows.max(1)) as f64);
        let centre = Spot::new(zone.left + 6.0 + column * width, zone.top + 5.0 + ROW * row);
        sheet.balloon(centre, centre, at + 1);
        let lengths = job.lengths;
        let [long, wide, thick] =
            [panel.blank_length_mm, panel.blank_width_mm, panel.thickness_mm].map(|size_mm| lengths.bare(size_mm));
        let text = format!("{}: {long} × {wide}, {thick} thick", words::face(panel.id));
        sheet.text(centre.by(6.0, 1.1), NORMAL, Anchor::Start, &fitted(&text, width - 16.0, NORMAL));
    }
}
