//! What moves, what stands, and which of them are in line with one another along the wall.

use super::convex::{Convex, Shift, Turn};
use super::slice::{Slice, Window};
use super::{LiftOnInput, LiftRole, LiftShape, NoPart, point};
use crate::hang::{CleatHalvesInput, cleat_halves};
use crate::numeric::real::{cos_deg, radians, sin_cos_deg};
use crate::setting::Obstruction;

/// A convex piece over a stretch of the wall.
#[derive(Clone, Debug)]
struct Piece {
    name: String,
    left_mm: f64,
    right_mm: f64,
    shape: Convex,
}

impl Piece {
    /// Whether the two lie in line anywhere along the wall.
    fn in_line_with(&self, other: &Self) -> bool {
        self.left_mm < other.right_mm && other.left_mm < self.right_mm
    }
}

/// The body with its half of the cleat, and all that it must not meet.
#[derive(Clone, Debug)]
pub(super) struct Scene {
    moving: Vec<Piece>,
    standing: Vec<Piece>,
    /// Face of the wall behind the back of the body, mm.
    wall: f64,
    /// Front of the wall half, mm: with its back beyond it the body is off the cleat.
    off_cleat: f64,
    /// Turns go about the seat at the wall, where the room is least.
    pivot: Shift,
    /// Farthest corner of what moves from there, mm.
    reach: f64,
    /// How far up and down is looked, mm.
    height: f64,
    /// Highest point of the body as it hangs.
    top: f64,
}

/// One tilt, or all tilts between two.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Tilts {
    At(f64),
    Between(f64, f64),
}

/// Places beyond the window that still count, mm.
const RIM: f64 = 1e-6;

impl Scene {
    /// The scene of an input with some strip and some things; nothing where the strip gives no cleat.
    pub(super) fn of(
        input: &LiftOnInput,
        strip: &CleatHalvesInput,
        things: &[Obstruction],
        raised_mm: f64,
    ) -> Result<Self, NoPart> {
        let halves = cleat_halves(strip).map_err(NoPart::Strip)?;
        let (t, flat) = (strip.thickness_mm, halves.point_flat_mm);
        let top = input.beam_half_top_above_floor_mm;
        let bottom = top - halves.blunted_face_mm;
        let edge = bottom - strip.blunt_mm;
        let lower = edge - halves.short_face_mm;
        let point = lower + halves.blunted_face_mm;
        let at = Shift::new;
        let beam_half =
            [at(t, top), at(0.0, top), at(0.0, bottom), at(flat, bottom), at(t, top - halves.short_face_mm)];
        let wall_half = [at(t, lower), at(0.0, lower), at(0.0, edge), at(t - flat, point), at(t, point)];
        let piece = |name: &str, ends: (f64, f64), shape: Convex| Piece {
            name: name.to_owned(),
            left_mm: ends.0,
            right_mm: ends.1,
            shape,
        };
        let half = |name, ends: (f64, f64), corners: [Shift; 5]| {
            Convex::around(corners).map(|shape| piece(name, ends, shape)).ok_or(NoPart::Cleat)
        };
        let mut moving = vec![half("beam half", (input.beam_half_left_mm, input.beam_half_right_mm), beam_half)?];
        for (k, part) in input.parts.iter().enumerate() {
            let corners = part.outline.iter().map(|corner| at(corner.out_mm, corner.above_floor_mm));
            let shape = Convex::around(corners).ok_or(NoPart::Outline(k))?;
            moving.push(piece(&part.name, (part.left_mm, part.right_mm), shape));
        }
        let mut standing = vec![half("wall half", (input.wall_half_left_mm, input.wall_half_right_mm), wall_half)?];
        let wall = -input.behind_mm;
        for thing in things.iter().filter(|thing| thing.projection_mm > 0.0) {
            let (low, high) =
                (at(wall, thing.bottom_mm + raised_mm), at(thing.projection_mm + wall, thing.top_mm + raised_mm));
            // What has no height is in nobody's way.
            let ends = (thing.left_mm, thing.right_mm);
            standing.extend(Convex::upright(low, high).map(|shape| piece(&thing.name, ends, shape)));
        }
        let pivot = at(0.0, edge);
        let bounds = || moving.iter().map(|one| one.shape.bounds());
        let (lowest, highest) = (
            bounds().map(|(low, _)| low.up).fold(f64::INFINITY, f64::min),
            bounds().map(|(_, high)| high.up).fold(f64::NEG_INFINITY, f64::max),
        );
        let reach = moving.iter().map(|one| one.shape.reach(pivot)).fold(0.0, f64::max);
        Ok(Self { moving, standing, wall, off_cleat: t, pivot, reach, height: highest - lowest + t, top: highest })
    }

    /// The same scene without the things on the wall.
    pub(super) fn without_things(&self) -> Self {
        let mut bare = self.clone();
        bare.standing.truncate(1);
        bare
    }

    /// Every shape with its name: what moves, the beam half first, then what stands, the wall half first.
    pub(super) fn shapes(&self) -> Vec<LiftShape> {
        let shape = |role, piece: &Piece| LiftShape {
            name: piece.name.clone(),
            role,
            outline: piece.shape.corners().iter().map(point).collect(),
        };
        let moving = self.moving.iter().map(|piece| shape(LiftRole::Moves, piece));
        moving.chain(self.standing.iter().map(|piece| shape(LiftRole::Stands, piece))).collect()
    }

    /// Where turns go about.
    pub(super) const fn pivot(&self) -> Shift {
        self.pivot
    }

    fn turn(&self, tilt_deg: f64) -> Turn {
        let (sine, cosine) = sin_cos_deg(tilt_deg);
        Turn { about: self.pivot, sine, cosine }
    }

    /// What moves, at a tilt or over all tilts between two.
    fn moved(&self, tilts: Tilts) -> Vec<Convex> {
        let turned = |tilt_deg: f64| {
            let turn = self.turn(tilt_deg);
            move |one: &Piece| one.shape.turned(turn)
        };
        match tilts {
            Tilts::At(tilt_deg) => self.moving.iter().map(turned(tilt_deg)).collect(),
            Tilts::Between(from_deg, to_deg) => {
                let (from, to) = (turned(from_deg), turned(to_deg));
                self.moving.iter().map(|one| from(one).with(&to(one))).collect()
            }
        }
    }

    /// How far a corner's arc bulges out of the straight line between two tilts, mm.
    fn bulge(&self, tilts: Tilts) -> f64 {
        match tilts {
            Tilts::At(_) => 0.0,
            Tilts::Between(from_deg, to_deg) => self.reach * (1.0 - cos_deg(0.5 * (to_deg - from_deg))),
        }
    }

    /// The free shifts, how much higher than it hangs the body's top is there without any shift, and where it is off the
    /// cleat.
    pub(super) fn slice(&self, tilts: Tilts) -> (Slice, f64, f64) {
        let (moved, bulge) = (self.moved(tilts), self.bulge(tilts));
        let pairs = self.moving.iter().zip(&moved).flat_map(|(piece, shape)| {
            let near = self.standing.iter().filter(move |thing| thing.in_line_with(piece));
            near.map(move |thing| thing.shape.kept_from(shape, bulge))
        });
        let pairs: Vec<Convex> = pairs.collect();
        let back = moved.iter().map(|shape| shape.bounds().0.out).fold(f64::INFINITY, f64::min) - bulge;
        let top = moved.iter().map(|shape| shape.bounds().1.up).fold(f64::NEG_INFINITY, f64::max) + bulge;
        let off = self.off_cleat - back;
        let window = Window { left: self.wall - back - RIM, right: off + RIM, low: -self.height, high: self.height };
        (Slice::of(&pairs, window), top - self.top, off)
    }

    /// How far the outermost corner moves over a step of tilt, mm: room narrower than this may be missed.
    pub(super) fn swing(&self, step_deg: f64) -> f64 {
        self.reach * radians(step_deg)
    }
}
