//! The outline of a body, seen along it.

use crate::error::{Detail, ErrorCode, Fault};
use crate::limits::{faults_at, limited};

/// A corner of an outline.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<OutlinePoint>))]
pub struct OutlinePoint {
    /// Out from the finished face of the wall, mm.
    pub out_mm: f64,
    /// Above the floor, mm.
    pub above_floor_mm: f64,
}

limited!(OutlinePoint { out_mm: SIGNED_LENGTH, above_floor_mm: SIGNED_LENGTH });

/// A part of a body that has one outline from its left to its right end: the beam itself, a moulding, a leg.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<OutlinePart>))]
pub struct OutlinePart {
    /// Name for messages.
    pub name: String,
    /// Left end from the plumb line, mm.
    pub left_mm: f64,
    /// Right end from the plumb line, mm.
    pub right_mm: f64,
    /// Corners of the outline in order, either way round.
    pub outline: Vec<OutlinePoint>,
}

limited!(OutlinePart { left_mm: SIGNED_LENGTH, right_mm: SIGNED_LENGTH });

impl OutlinePart {
    /// Every fault, with its path.
    pub fn faults(&self) -> Vec<Detail> {
        let mut faults = faults_at("", self);
        if self.right_mm < self.left_mm {
            let fault = Fault::plain(ErrorCode::Inconsistent, "right_mm", "not left of left_mm", "swap the ends");
            faults.push(fault.into());
        }
        if self.outline.len() < 3 {
            let fault = Fault::plain(ErrorCode::MissingField, "outline", "at least three corners", "");
            faults.push(Detail { given: format!("{} corners", self.outline.len()), ..fault.into() });
        }
        for (k, point) in self.outline.iter().enumerate() {
            faults.extend(faults_at(&format!("outline[{k}]"), point));
        }
        faults
    }

    /// Its sides, each from corner to corner.
    pub fn sides(&self) -> impl Iterator<Item = (OutlinePoint, OutlinePoint)> {
        let next = self.outline.iter().cycle().skip(1);
        self.outline.iter().copied().zip(next.copied())
    }
}
