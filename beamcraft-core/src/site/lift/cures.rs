//! What would make a level way onto the cleat, and by how much.

use super::LiftOnInput;
use super::scene::Scene;
use super::search::{Tilting, Way, way_off};
use crate::hang::{CleatHalvesInput, cleat_halves};
use crate::numeric::real::{atan_deg, tan_deg};
use crate::setting::Obstruction;

/// What is changed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum LiftCureKind {
    /// Mount cleat and body lower by so much, mm; check the heat again.
    MountLower,
    /// Blunt each point to so much in all, mm.
    BluntPoints,
    /// Rip the strip at this lower bevel, degrees.
    LowerBevel,
    /// Take a strip of this thickness, mm.
    ThinnerStrip,
    /// Take the thing away.
    RemoveThing,
    /// Hang the body so far to the left of its place and slide it on to the right, mm.
    SlideFromLeft,
    /// Hang the body so far to the right of its place and slide it on to the left, mm.
    SlideFromRight,
}

/// One change that makes a level way, by itself.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct LiftCure {
    /// What is changed.
    pub kind: LiftCureKind,
    /// The thing that is taken away; empty for the other changes.
    pub thing: String,
    /// Amount, in the unit that the change names; 0 for a thing that is taken away.
    pub amount: f64,
    /// Width of the seat that is left, seen from above, mm; only where the strip changes.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub seat_width_mm: Option<f64>,
}

impl LiftCure {
    /// The change in words.
    pub(super) fn words(&self) -> String {
        let amount = self.amount;
        match self.kind {
            LiftCureKind::MountLower => format!("mount it {amount:.1} mm lower and check the heat again"),
            LiftCureKind::BluntPoints => format!("blunt each point by {amount:.1} mm in all"),
            LiftCureKind::LowerBevel => format!("lower the bevel to {amount:.1} degrees at the price of the seat"),
            LiftCureKind::ThinnerStrip => format!("take a strip {amount:.1} mm thick"),
            LiftCureKind::RemoveThing => format!("take \"{}\" away", self.thing),
            LiftCureKind::SlideFromLeft => format!("hang it {amount:.0} mm to the left and slide it into place"),
            LiftCureKind::SlideFromRight => format!("hang it {amount:.0} mm to the right and slide it into place"),
        }
    }
}

/// To what an amount is found: a hundredth of a millimetre or of a degree.
const CLOSE: f64 = 0.01;
/// Least part of the bevel's rise that is left as an overlap when points are blunted or the bevel is lowered.
const LEAST_OVERLAP: f64 = 0.1;
/// The lowest bevel that is proposed, degrees: the least that the range of cleats allows.
const LOWEST_BEVEL_DEG: f64 = 5.0;
/// The thinnest strip that is proposed, mm; a choice, thinner wood splits at the screws.
const THINNEST_MM: f64 = 10.0;

/// The headroom that is missing, and every single change that makes a level way.
pub(super) fn look_for(input: &LiftOnInput, bare: Option<&Way>) -> (Option<f64>, Vec<LiftCure>) {
    let free = |strip: &CleatHalvesInput, things: &[Obstruction], raised_mm: f64| {
        Scene::of(input, strip, things, raised_mm).is_ok_and(|scene| way_off(&scene, Tilting::LEVEL).way().is_some())
    };
    let strip = &input.strip;
    // Lower by the whole headroom nothing above is in the way any more.
    let most_mm = bare.map_or(0.0, |way| way.rise) + 1.0;
    let missing_mm = nearest(0.0, most_mm, |lower_mm| free(strip, &input.things, lower_mm));
    let mut cures = Vec::new();
    cures.extend(missing_mm.map(|amount| plain(LiftCureKind::MountLower, amount)));
    let mut other_strip = |kind, from, to, change: &dyn Fn(f64) -> CleatHalvesInput| {
        let found = nearest(from, to, |amount| free(&change(amount), &input.things, 0.0));
        let halves = found.and_then(|amount| Some((amount, cleat_halves(&change(amount)).ok()?)));
        cures.extend(
            halves
                .map(|(amount, halves)| LiftCure { seat_width_mm: Some(halves.seat_width_mm), ..plain(kind, amount) }),
        );
    };
    let (t, slope) = (strip.thickness_mm, tan_deg(strip.bevel_deg));
    // What overlaps beyond twice the blunting is the lift.
    let bluntest_mm = 0.5 * (1.0 - LEAST_OVERLAP) * t * slope;
    let blunted = |blunt_mm| CleatHalvesInput { blunt_mm, ..*strip };
    if bluntest_mm > strip.blunt_mm {
        other_strip(LiftCureKind::BluntPoints, strip.blunt_mm, bluntest_mm, &blunted);
    }
    let sharpest = 2.0 * strip.blunt_mm / (1.0 - LEAST_OVERLAP);
    let lowest_deg = LOWEST_BEVEL_DEG.max(atan_deg(sharpest / t));
    let bevelled = |bevel_deg| CleatHalvesInput { bevel_deg, ..*strip };
    if lowest_deg < strip.bevel_deg {
        other_strip(LiftCureKind::LowerBevel, strip.bevel_deg, lowest_deg, &bevelled);
    }
    let thinned = |thickness_mm| CleatHalvesInput { thickness_mm, ..*strip };
    let thinnest_mm = THINNEST_MM.max(sharpest / slope);
    if thinnest_mm < t {
        other_strip(LiftCureKind::ThinnerStrip, t, thinnest_mm, &thinned);
    }
    for (k, thing) in input.things.iter().enumerate() {
        let others: Vec<_> =
            input.things.iter().enumerate().filter(|(other, _)| *other != k).map(|(_, one)| one.clone()).collect();
        if free(strip, &others, 0.0) {
            cures.push(LiftCure { thing: thing.name.clone(), ..plain(LiftCureKind::RemoveThing, 0.0) });
        }
    }
    cures.extend(slides(input, &|things| free(strip, things, 0.0)));
    (missing_mm, cures)
}

const fn plain(kind: LiftCureKind, amount: f64) -> LiftCure {
    LiftCure { kind, thing: String::new(), amount, seat_width_mm: None }
}

/// The amount nearest to `from`, on the way to `to`, from which on it works; nothing when even `to` does not.
///
/// More of each change helps as long as it is a change of this kind; the answer itself is always one that works.
fn nearest(from: f64, to: f64, works: impl Fn(f64) -> bool) -> Option<f64> {
    let (mut fails, mut good) = (from, to);
    if !works(good) {
        return None;
    }
    while (good - fails).abs() > CLOSE {
        let middle = 0.5 * (fails + good);
        if works(middle) {
            good = middle;
        } else {
            fails = middle;
        }
    }
    Some(good)
}

/// From the side, beyond the things that are in the way, where the ends and the free wall allow it.
fn slides(input: &LiftOnInput, free: &dyn Fn(&[Obstruction]) -> bool) -> Vec<LiftCure> {
    let left = input.parts.iter().map(|part| part.left_mm).fold(input.beam_half_left_mm, f64::min);
    let right = input.parts.iter().map(|part| part.right_mm).fold(input.beam_half_right_mm, f64::max);
    // How far the body goes to get out from before a thing, and the things that are left there.
    let shifted = |by_mm: f64| -> Vec<Obstruction> {
        let moved = |thing: &Obstruction| Obstruction {
            left_mm: thing.left_mm - by_mm,
            right_mm: thing.right_mm - by_mm,
            ..thing.clone()
        };
        input.things.iter().map(moved).collect()
    };
    let mut found = Vec::new();
    let mut look = |kind, room_mm: Option<f64>, ways: Vec<f64>, sign: f64| {
        let Some(room_mm) = room_mm else { return };
        let mut ways: Vec<f64> = ways.into_iter().filter(|way| *way > 0.0 && *way <= room_mm).collect();
        ways.sort_by(f64::total_cmp);
        found.extend(ways.into_iter().find(|way| free(&shifted(sign * way))).map(|way| plain(kind, way)));
    };
    let things = || input.things.iter();
    let to_left = things().map(|thing| right - thing.left_mm).collect();
    look(LiftCureKind::SlideFromLeft, input.slide_from_left_mm, to_left, -1.0);
    let to_right = things().map(|thing| thing.right_mm - left).collect();
    look(LiftCureKind::SlideFromRight, input.slide_from_right_mm, to_right, 1.0);
    found
}
