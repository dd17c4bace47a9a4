//! How the fastener lies in the members.

use super::input::JointInput;
use super::kinds::{JointDrive, JointFastenerKind};
use super::parts::JointFastener;
use crate::error::{Allowed, Detail, Error, ErrorCode, Fault, Result};
use crate::fasten::catalogue::{lag_thread_mm, lag_tip_mm, wood_screw_thread_mm};
use crate::limits::BEARING_LENGTH;
use crate::numeric::real::cos_deg;

/// Lengths of one fastener in the joint, along the fastener unless said, mm.
pub(super) struct Lay {
    pub gap_mm: f64,
    /// Bearing length in the side member.
    pub side_mm: f64,
    /// Bearing length in the main member; half the tip taken off where the point stands in it.
    pub main_mm: f64,
    /// The same in the second side member.
    pub second_mm: Option<f64>,
    /// Depth of the point behind the near face of the last member; of a toe-nail across that face.
    pub penetration_mm: f64,
    /// Room for it in the last member.
    pub room_mm: f64,
    /// The part of the penetration inside the last member.
    pub held_mm: f64,
    /// Thread or rings inside the last member; the whole held length of a fastener without a stated thread.
    pub thread_mm: f64,
    /// Smooth shank inside the last member.
    pub shank_mm: f64,
    pub tip_mm: f64,
}

/// Length of the tapered tip.
pub(super) fn tip_mm(fastener: &JointFastener) -> f64 {
    fastener.tip_length_mm.unwrap_or(match fastener.kind {
        JointFastenerKind::LagScrew => lag_tip_mm(fastener.nominal_diameter_mm),
        JointFastenerKind::Bolt | JointFastenerKind::Dowel => 0.0,
        _ => 2.0 * fastener.nominal_diameter_mm,
    })
}

/// Length of thread or rings: as given, else that of the American standard's tables for screws, else the whole length.
fn thread_mm(fastener: &JointFastener) -> f64 {
    let length_mm = fastener.length_mm;
    fastener.thread_length_mm.unwrap_or(match fastener.kind {
        JointFastenerKind::WoodScrew => wood_screw_thread_mm(fastener.nominal_diameter_mm, length_mm),
        JointFastenerKind::LagScrew => lag_thread_mm(length_mm),
        _ => length_mm,
    })
}

impl Lay {
    pub(super) fn of(input: &JointInput) -> Result<Self> {
        let gap_mm: f64 = input.gaps.iter().map(|layer| layer.thickness_mm).sum();
        if input.fastener.kind.goes_through() { Ok(Self::through(input, gap_mm)) } else { Self::driven(input, gap_mm) }
    }

    /// A bolt or dowel, as long as the joint is thick.
    fn through(input: &JointInput, gap_mm: f64) -> Self {
        let second_mm = input.second_side.as_ref().map(|member| member.thickness_mm);
        let room_mm = second_mm.unwrap_or(input.main.thickness_mm);
        Self {
            gap_mm,
            side_mm: input.side.thickness_mm,
            main_mm: input.main.thickness_mm,
            second_mm,
            penetration_mm: room_mm,
            room_mm,
            held_mm: room_mm,
            thread_mm: 0.0,
            shank_mm: room_mm,
            tip_mm: 0.0,
        }
    }

    fn driven(input: &JointInput, gap_mm: f64) -> Result<Self> {
        let fastener = &input.fastener;
        let length_mm = fastener.length_mm;
        // What the fastener passes before the last member, the part of it that bears, and the room in the last member.
        let (before_mm, side_mm, gap_mm, room_mm) = match (input.drive, &input.pocket, &input.second_side) {
            (JointDrive::Pocket, Some(pocket), _) => {
                let cosine = cos_deg(pocket.angle_deg);
                let gap_mm = gap_mm / cosine;
                (pocket.shoulder_mm + gap_mm, pocket.shoulder_mm, gap_mm, input.main.thickness_mm / cosine)
            }
            // A toe-nail starts a third of its length up the side member and slants by 30 degrees (NDS 12.1.6.3).
            (JointDrive::ToeNailed, ..) => {
                let before_mm = length_mm * (1.0 - cos_deg(30.0)) + length_mm / 3.0;
                (before_mm, length_mm / 3.0, gap_mm, input.main.thickness_mm)
            }
            (_, _, None) => {
                let side_mm = input.side.thickness_mm;
                (side_mm + gap_mm, side_mm, gap_mm, input.main.thickness_mm)
            }
            (_, _, Some(second)) => {
                let side_mm = input.side.thickness_mm;
                (side_mm + input.main.thickness_mm + 2.0 * gap_mm, side_mm, gap_mm, second.thickness_mm)
            }
        };
        let penetration_mm = length_mm - before_mm;
        let tip_mm = tip_mm(fastener);
        let held_mm = penetration_mm.min(room_mm);
        // Where the point comes out, only the part of the taper still inside is lost; it grows with its square.
        let taper_mm = (held_mm - (penetration_mm - tip_mm)).clamp(0.0, tip_mm);
        let lost_mm = if taper_mm > 0.0 { 0.5 * taper_mm * (taper_mm / tip_mm) } else { 0.0 };
        let bearing_mm = held_mm - lost_mm;
        if bearing_mm < BEARING_LENGTH.low {
            return Err(too_short(length_mm));
        }
        // A smooth nail holds with its whole shank.
        let smooth = matches!(fastener.kind, JointFastenerKind::SmoothNail | JointFastenerKind::StainlessNail);
        let unthreaded_mm = if smooth { 0.0 } else { length_mm - thread_mm(fastener) };
        let shank_mm = (unthreaded_mm - before_mm).clamp(0.0, held_mm);
        let double = input.second_side.is_some();
        Ok(Self {
            gap_mm,
            side_mm,
            main_mm: if double { input.main.thickness_mm } else { bearing_mm },
            second_mm: double.then_some(bearing_mm),
            penetration_mm,
            room_mm,
            held_mm,
            thread_mm: held_mm - shank_mm,
            shank_mm,
            tip_mm,
        })
    }

    /// Bearing length of the side members: the lesser in double shear.
    pub(super) fn least_side_mm(&self) -> f64 {
        self.second_mm.map_or(self.side_mm, |second_mm| second_mm.min(self.side_mm))
    }
}

#[cold]
fn too_short(length_mm: f64) -> Error {
    Error::one(Detail::from(Fault::number(
        ErrorCode::PenetrationTooShort,
        "fastener.length_mm",
        length_mm,
        Allowed::Text("long enough to bear in the last member"),
        "take a longer fastener",
    )))
}
