//! The proof of the settings: a blank is cut as the printed settings say, and what is left is the panel.
//!
//! Nothing here reads the geometry of the library's own calculation: each cut is a half space in the coordinates of the
//! saw (distance from the fence or along the gauge, height above the table), made from the printed numbers and from the
//! faces that the solid has at that moment.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "tests stop at what they do not expect"
)]

use super::{
    BladeLean, BladeSide, BlankEdge, CutKind, CutSetUp, CutWay, FaceDown, KeptPiece, PanelCut, PanelCuts, SawSpec,
};
use crate::geometry::{ConvexSolid, Plane, Vec3};
use crate::numeric::real::{cos_deg, sin_cos_deg, tan_deg};

/// What was proved, or why not.
pub(super) type Proof<T> = Result<T, String>;

const SHOW: u32 = 2000;
const INNER: u32 = 2001;

fn blank_tag(edge: BlankEdge) -> u32 {
    match edge {
        BlankEdge::LowEnd => 1001,
        BlankEdge::HighEnd => 1002,
        BlankEdge::LowLongEdge => 1003,
        BlankEdge::HighLongEdge => 1004,
    }
}

/// The square-edged blank, its show face at height 0 and its first corner at the origin.
fn blank(cuts: &PanelCuts, thickness_mm: f64) -> ConvexSolid {
    let high = Vec3::new(cuts.blank_length_mm, cuts.blank_width_mm, 0.0);
    ConvexSolid::cuboid(Vec3::new(0.0, 0.0, -thickness_mm), high, [1001, 1002, 1003, 1004, INNER, SHOW]).unwrap()
}

/// All points where a linear function of the place, given by its values, is at most zero.
pub(super) fn half_space(value: impl Fn(Vec3) -> f64) -> Plane {
    let at_zero = value(Vec3::ZERO);
    let normal = Vec3::new(value(Vec3::X) - at_zero, value(Vec3::Y) - at_zero, value(Vec3::Z) - at_zero);
    Plane::at_offset(normal, -at_zero / normal.length()).unwrap()
}

/// The edge that rides: its outward direction in the face, and its solid's corners.
struct Rider {
    out: Vec3,
    corners: Vec<Vec3>,
    /// Where the fence or gauge touches it.
    touch: f64,
}

impl Rider {
    fn of(solid: &ConvexSolid, cut: &PanelCut) -> Self {
        let tag = cut.rides_blank.map_or(cut.rides_step, blank_tag);
        assert!(cut.rides_blank.is_some() || (cut.rides_step > 0 && cut.rides_step < cut.step), "{cut:?}");
        let face = solid.face(tag).unwrap_or_else(|| panic!("step {} rides what is not there: {cut:?}", cut.step));
        let normal = face.plane.normal();
        let out = Vec3::new(normal.x, normal.y, 0.0).normalised().unwrap();
        let corners: Vec<Vec3> = face.points().collect();
        let touch = corners.iter().map(|corner| out.dot(*corner)).fold(f64::MIN, f64::max);
        Self { out, corners, touch }
    }

    fn least(&self, along: Vec3) -> f64 {
        self.corners.iter().map(|corner| along.dot(*corner)).fold(f64::MAX, f64::min)
    }
}

/// A cut as a distance in the plane of the table: at most 0 is kept, at the table.
struct AtTable {
    away: Vec3,
    offset: f64,
}

/// Where the cut passes at the table, from the printed distances alone.
///
/// `towards` is the side of the edge that is to be made, which its name says.
fn at_table(rider: &Rider, cut: &PanelCut, set_up: &CutSetUp, towards: Vec3, kerf_mm: f64) -> AtTable {
    match cut.kept {
        // Away from the fence, from the fence's face on.
        KeptPiece::BetweenFenceAndBlade => AtTable { away: -rider.out, offset: set_up.fence_mm.unwrap() - rider.touch },
        KeptPiece::BeyondTheBlade => {
            let kerf = kerf_mm / cos_deg(set_up.blade_tilt_deg);
            assert!((kerf - set_up.kerf_at_table_mm).abs() < 1e-9);
            AtTable { away: rider.out, offset: rider.touch - set_up.fence_mm.unwrap() - kerf }
        }
        KeptPiece::OnTheGauge => {
            let along = Vec3::new(-rider.out.y, rider.out.x, 0.0);
            let to_waste = if along.dot(towards) > 0.0 { along } else { -along };
            if let Some(kept) = set_up.kept_side {
                // From above, the riding edge towards whoever feeds the saw: `along` is to the right hand, or to the left
                // with the show face down.
                let shown = set_up.face_down == FaceDown::InnerFace;
                let waste_is_right = (to_waste == along) == shown;
                assert_eq!(kept, if waste_is_right { BladeSide::Left } else { BladeSide::Right });
            }
            let point = to_waste * (rider.least(to_waste) + set_up.stop_mm.unwrap()) + rider.out * rider.touch;
            let (sine, cosine) = sin_cos_deg(cut.gauge_deg);
            let away = to_waste * cosine + rider.out * sine;
            AtTable { away, offset: away.dot(point) }
        }
        KeptPiece::OnTheJig => {
            let marks = set_up.marks.unwrap();
            let along = Vec3::new(-rider.out.y, rider.out.x, 0.0);
            let along = if along.x < 0.0 { -along } else { along };
            let (low, high) = (rider.least(along), -rider.least(-along));
            let point = |place: f64, mark: f64| along * place + rider.out * (rider.touch - mark);
            let (from, to) = (point(low, marks.low_end_mm), point(high, marks.high_end_mm));
            let line = (to - from).normalised().unwrap();
            let away = Vec3::new(line.y, -line.x, 0.0);
            let away = if away.dot(rider.out) > 0.0 { -away } else { away };
            AtTable { away, offset: away.dot(from) }
        }
    }
}

/// The planes that one way of a cut makes, in the order in which they are made.
fn planes(rider: &Rider, thickness: f64, cut: &PanelCut, set_up: &CutSetUp, towards: Vec3, kerf_mm: f64) -> Vec<Plane> {
    let down = set_up.face_down;
    let height = move |point: Vec3| if down == FaceDown::InnerFace { point.z + thickness } else { -point.z };
    let rise = |tilt: f64| match set_up.lean {
        BladeLean::Upright => 0.0,
        BladeLean::AwayFromKept => tan_deg(tilt),
        BladeLean::OverKept => -tan_deg(tilt),
    };
    let sawn = |place: &AtTable, rise: f64| {
        let AtTable { away, offset } = *place;
        half_space(move |point| away.dot(point) - offset - rise * height(point))
    };
    match set_up.way {
        CutWay::FlatOnTable | CutWay::OnWedge => {
            let place = at_table(rider, cut, set_up, towards, kerf_mm);
            vec![sawn(&place, rise(set_up.blade_tilt_deg + set_up.wedge_deg))]
        }
        CutWay::OversizeThenPlane => {
            let place = at_table(rider, cut, set_up, towards, kerf_mm);
            let first = rise(set_up.blade_tilt_deg);
            // Planed down from nothing at the long point to the printed depth at the short one.
            let long_point_up = (cut.bevel_deg > 0.0) == (down == FaceDown::InnerFace);
            let more = set_up.planing_mm / thickness;
            let planed = if long_point_up {
                sawn(&AtTable { offset: place.offset - set_up.planing_mm, ..place }, first + more)
            } else {
                sawn(&place, first - more)
            };
            vec![sawn(&place, first), planed]
        }
        CutWay::OnEdge => {
            assert_eq!((set_up.fence_mm, set_up.lean), (Some(0.0), BladeLean::AwayFromKept));
            assert_ne!(set_up.leans, set_up.fence_side);
            let first = set_up.square_first_mm;
            let flat =
                CutSetUp { fence_mm: first, stop_mm: first, blade_tilt_deg: 0.0, lean: BladeLean::Upright, ..*set_up };
            let AtTable { away, offset } = at_table(rider, cut, &flat, towards, kerf_mm);
            // Stood on the new edge, the printed face against the fence: out from the fence is into the thickness, and the
            // blade, leaning away, has risen by out / tan(tilt).
            let slope = 1.0 / tan_deg(set_up.blade_tilt_deg);
            let square = half_space(move |point| away.dot(point) - offset);
            vec![square, half_space(move |point| away.dot(point) - offset + slope * height(point))]
        }
        CutWay::TrackSaw => {
            // The line is on the face that lies up, the long point at it.
            let AtTable { away, offset } = at_table(rider, cut, set_up, towards, kerf_mm);
            let rise = rise(set_up.blade_tilt_deg);
            vec![half_space(move |point| away.dot(point) - offset - rise * (height(point) - thickness))]
        }
    }
}

/// Whether two solids are the same up to a shift in the plane of the show face: in volume, and every corner of either in
/// the other.
fn same(one: &ConvexSolid, other: &ConvexSolid) -> Proof<()> {
    let (volume, expected) = (one.volume(), other.volume());
    if (volume - expected).abs() > 1e-8 * expected.max(1.0) {
        return Err(format!("volume {volume} for {expected}"));
    }
    // Not corner by corner: where a taper is nearly none, the place of a corner along it is rounding.
    let shift = other.bounds().0 - one.bounds().0;
    let out = |from: &ConvexSolid, of: &ConvexSolid, shift: Vec3| {
        let beyond =
            |point: &Vec3| of.faces().map(|face| face.plane.signed_distance(*point + shift)).fold(f64::MIN, f64::max);
        from.vertices().iter().map(beyond).fold(f64::MIN, f64::max)
    };
    // Coordinates of metres carry some 1e-10 mm of rounding through a dozen cuts.
    let worst = out(one, other, shift).max(out(other, one, -shift));
    if worst > 1e-6 { Err(format!("a corner is off by {worst} mm")) } else { Ok(()) }
}

/// The solid with the tag of a step on the face that its cut made, or, with nothing to take off, on the one that was there.
fn named(solid: ConvexSolid, step: u32, made: &Plane) -> ConvexSolid {
    let there = |plane: &Plane| {
        (plane.normal() - made.normal()).length() < 1e-9 && made.signed_distance(plane.point()).abs() < 1e-6
    };
    let old = solid.faces().find(|face| face.tag != step && there(&face.plane)).map(|face| face.tag);
    solid.retagged(|tag| if Some(tag) == old { step } else { tag })
}

/// Cuts the blank by the printed settings and compares what is left with the panel, all ways of every cut included; the
/// ways that were tried.
///
/// `outs` are the directions of the panel's edges in the show face.
pub(super) fn prove(
    cuts: &PanelCuts,
    target: &ConvexSolid,
    outs: &[Vec3],
    thickness: f64,
    kerf: f64,
) -> Proof<Vec<CutWay>> {
    let mut solid = blank(cuts, thickness);
    let mut tried = Vec::new();
    for cut in &cuts.cuts {
        if cut.kind == CutKind::Joint {
            let edge = cut.rides_blank.map(blank_tag);
            solid = solid.retagged(|tag| if Some(tag) == edge { cut.step } else { tag });
            continue;
        }
        let towards = outs[cut.edge_index as usize];
        let rider = Rider::of(&solid, cut);
        let mut results = Vec::new();
        for way in cut.set_up.iter().chain(&cut.alternatives) {
            let planes = planes(&rider, thickness, cut, way, towards, kerf);
            let last = planes.len() - 1;
            let made = planes[last];
            let tagged =
                planes.into_iter().enumerate().map(|(k, plane)| (plane, if k == last { cut.step } else { 3000 }));
            let left = solid.clone().cut(tagged).ok_or_else(|| format!("{way:?} leaves nothing"))?;
            results.push(named(left, cut.step, &made));
            tried.push(way.way);
        }
        // Where the saw makes the cut in no way the rest cannot be followed.
        let Some((first, others)) = results.split_first() else {
            return if cut.passed.is_empty() { Err(format!("no set-up for {cut:?}")) } else { Ok(tried) };
        };
        for (other, way) in others.iter().zip(&cut.alternatives) {
            same(other, first).map_err(|why| format!("{why}: {way:?} beside {cut:?}"))?;
        }
        solid = first.clone();
    }
    same(&solid, target).map_err(|why| format!("{why}: {cuts:?}"))?;
    Ok(tried)
}

/// Every printed way lies within what the saw was said to have.
pub(super) fn within_limits(cuts: &PanelCuts, saw: &SawSpec) -> Proof<()> {
    for (cut, way) in
        cuts.cuts.iter().flat_map(|cut| cut.set_up.iter().chain(&cut.alternatives).map(move |way| (cut, way)))
    {
        if way.way == CutWay::TrackSaw {
            let too_much = saw.machine.track_saw.is_some_and(|track| {
                way.blade_tilt_deg > track.max_tilt_deg + 1e-6
                    || way.needs_height_mm > track.cut_depth_at_mm(way.blade_tilt_deg) + 1e-6
            });
            if too_much {
                return Err(format!("{way:?}"));
            }
            continue;
        }
        let machine = &saw.machine;
        let tilt = match (way.leans, machine.leans) {
            (Some(side), Some(usual)) if side != usual => machine.back_tilt_deg,
            _ => saw.max_tilt_deg,
        };
        let capacity = if way.fence_side == Some(BladeSide::Left) { machine.rip_left_mm } else { machine.rip_right_mm };
        let height = machine.cut_height_at_mm(way.blade_tilt_deg);
        let beyond = way.blade_tilt_deg > tilt + 1e-6
            || capacity.is_some_and(|has| way.fence_mm.is_some_and(|fence| fence > has + 1e-6))
            || height.is_some_and(|has| way.needs_height_mm > has + 1e-6)
            || (way.stop_mm.is_some() && machine.max_gauge_deg.is_some_and(|has| cut.gauge_deg.abs() > has + 1e-6))
            || (way.stop_mm.is_some() && machine.crosscut_mm.is_some_and(|has| cut.cut_length_mm > has + 1e-6));
        if beyond {
            return Err(format!("beyond the saw: {way:?} of {cut:?}"));
        }
    }
    Ok(())
}
