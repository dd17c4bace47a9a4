//! How the fastener lies in the members.

use super::input::{JointDrive, JointFastenerKind, JointInput};
use crate::error::{Allowed, Detail, Error, ErrorCode, Fault, Result};
use crate::limits::BEARING_LENGTH;
use crate::numeric::real::cos_deg;

/// Lengths of one fastener in the joint, mm.
pub(super) struct Lay {
    pub gap_mm: f64,
    pub side_mm: f64,
    /// Depth of the point behind the face of the main member, tip included.
    pub penetration_mm: f64,
    /// The part of it inside the main member.
    pub held_mm: f64,
    /// Bearing length in the main member with half the tip taken off.
    pub bearing_mm: f64,
    /// Thread or rings inside the main member; the whole held length of a fastener without a stated thread.
    pub thread_mm: f64,
    /// Smooth shank inside the main member.
    pub shank_mm: f64,
    pub tip_mm: f64,
}

impl Lay {
    pub(super) fn of(input: &JointInput) -> Result<Self> {
        let fastener = &input.fastener;
        let length_mm = fastener.length_mm;
        let gap_mm: f64 = input.gaps.iter().map(|layer| layer.thickness_mm).sum();
        // A toe-nail starts a third of its length up the side member and slants by 30 degrees.
        let (side_mm, penetration_mm) = if input.drive == JointDrive::ToeNailed {
            (length_mm / 3.0, length_mm * cos_deg(30.0) - length_mm / 3.0)
        } else {
            (input.side.thickness_mm, length_mm - input.side.thickness_mm - gap_mm)
        };
        let tip_mm = fastener.tip_length_mm.unwrap_or(2.0 * fastener.nominal_diameter_mm);
        let held_mm = penetration_mm.min(input.main.thickness_mm);
        // Where the point comes out, only the part of the taper still inside is lost; it grows with its square.
        let taper_mm = (held_mm - (penetration_mm - tip_mm)).clamp(0.0, tip_mm);
        let lost_mm = if taper_mm > 0.0 { 0.5 * taper_mm * (taper_mm / tip_mm) } else { 0.0 };
        let bearing_mm = held_mm - lost_mm;
        if bearing_mm < BEARING_LENGTH.low {
            return Err(Error::one(Detail::from(Fault::number(
                ErrorCode::PenetrationTooShort,
                "fastener.length_mm",
                length_mm,
                Allowed::Text("long enough to bear in the main member"),
                "take a longer fastener",
            ))));
        }
        // A smooth nail holds with its whole shank.
        let smooth = fastener.kind == JointFastenerKind::SmoothNail;
        let unthreaded_mm = if smooth { 0.0 } else { length_mm - fastener.thread_length_mm.unwrap_or(length_mm) };
        let shank_mm = (unthreaded_mm - side_mm - gap_mm).clamp(0.0, held_mm);
        Ok(Self {
            gap_mm,
            side_mm,
            penetration_mm,
            held_mm,
            bearing_mm,
            thread_mm: held_mm - shank_mm,
            shank_mm,
            tip_mm,
        })
    }
}
