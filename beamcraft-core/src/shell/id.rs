//! Names of faces and edges: they come from the input, never from what survives the cutting.

use core::fmt;
use core::str::FromStr;

use crate::error::{ErrorCode, Fault};

/// Which face of a leg; in text such as `front` or `side3`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum FaceKind {
    /// Towards the room.
    Front,
    /// Towards the wall.
    Back,
    /// Upwards.
    Top,
    /// Downwards.
    Bottom,
    /// The end on the left, seen from the room.
    LeftEnd,
    /// The end on the right, seen from the room.
    RightEnd,
    /// A side of a section with other than four sides, counted from 1.
    Side(u32),
}

/// A face of a leg; in text `front` for the first leg, `leg2.front` for the second.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct FaceId {
    /// Number of the leg, from 1.
    pub leg: u32,
    /// Which face of it.
    pub kind: FaceKind,
}

/// The edge that two faces share, in text such as `front|top`; the order of the faces is fixed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct EdgeId {
    first: FaceId,
    second: FaceId,
}

/// Names of the faces that have a fixed name.
const NAMED: [(FaceKind, &str); 6] = [
    (FaceKind::Front, "front"),
    (FaceKind::Back, "back"),
    (FaceKind::Top, "top"),
    (FaceKind::Bottom, "bottom"),
    (FaceKind::LeftEnd, "left_end"),
    (FaceKind::RightEnd, "right_end"),
];

const FACE_TEXT: &str =
    "front, back, top, bottom, left_end, right_end or side1, side2, …; for a further leg leg2.front";

const KIND_TEXT: &str = "front, back, top, bottom, left_end, right_end or side1, side2, …";

impl FaceId {
    /// The face `kind` of the first leg.
    pub const fn first_leg(kind: FaceKind) -> Self {
        Self { leg: 1, kind }
    }
}

impl EdgeId {
    /// The edge of two faces, whichever is named first.
    pub fn new(one: FaceId, other: FaceId) -> Self {
        Self { first: one.min(other), second: one.max(other) }
    }

    /// Both faces.
    pub const fn faces(&self) -> (FaceId, FaceId) {
        (self.first, self.second)
    }
}

impl fmt::Display for FaceKind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if let Self::Side(number) = self {
            return write!(f, "side{number}");
        }
        f.write_str(NAMED.iter().find(|(kind, _)| kind == self).map_or("", |(_, name)| name))
    }
}

impl fmt::Display for FaceId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.leg != 1 {
            write!(f, "leg{}.", self.leg)?;
        }
        self.kind.fmt(f)
    }
}

impl fmt::Display for EdgeId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}|{}", self.first, self.second)
    }
}

/// A number from 1 without sign or leading zeros.
fn number(text: &str) -> Option<u32> {
    if text.starts_with(['0', '+']) { None } else { text.parse().ok() }
}

impl FromStr for FaceId {
    type Err = Fault;

    fn from_str(text: &str) -> Result<Self, Fault> {
        let unknown = || Fault::plain(ErrorCode::UnknownName, "face", FACE_TEXT, "");
        let (leg, face) = match text.strip_prefix("leg").and_then(|rest| rest.split_once('.')) {
            // The first leg goes without its number, so that every face has one name only.
            Some((leg, face)) => (number(leg).filter(|leg| *leg > 1).ok_or_else(unknown)?, face),
            None => (1, text),
        };
        Ok(Self { leg, kind: face.parse().map_err(|_| unknown())? })
    }
}

impl FromStr for FaceKind {
    type Err = Fault;

    fn from_str(text: &str) -> Result<Self, Fault> {
        let named = NAMED.iter().find(|(_, name)| *name == text).map(|(kind, _)| *kind);
        let side = || text.strip_prefix("side").and_then(number).map(FaceKind::Side);
        named.or_else(side).ok_or(Fault::plain(ErrorCode::UnknownName, "face", KIND_TEXT, ""))
    }
}

impl FromStr for EdgeId {
    type Err = Fault;

    fn from_str(text: &str) -> Result<Self, Fault> {
        let (one, other) = text.split_once('|').ok_or(Fault::plain(
            ErrorCode::Malformed,
            "edge",
            "two faces with a bar between them, such as front|top",
            "",
        ))?;
        Ok(Self::new(one.parse()?, other.parse()?))
    }
}

/// Serialises as text and reads back from it.
#[cfg(feature = "json")]
macro_rules! as_text {
    ($type:ty, $name:literal) => {
        impl serde::Serialize for $type {
            fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                serializer.collect_str(self)
            }
        }

        impl<'de> serde::Deserialize<'de> for $type {
            fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
                let text = <std::borrow::Cow<'de, str>>::deserialize(deserializer)?;
                text.parse().map_err(serde::de::Error::custom)
            }
        }

        impl schemars::JsonSchema for $type {
            fn inline_schema() -> bool {
                true
            }
            fn schema_name() -> std::borrow::Cow<'static, str> {
                $name.into()
            }
            fn json_schema(generator: &mut schemars::SchemaGenerator) -> schemars::Schema {
                String::json_schema(generator)
            }
        }
    };
}
#[cfg(feature = "json")]
as_text!(FaceKind, "FaceKind");
#[cfg(feature = "json")]
as_text!(FaceId, "FaceId");
#[cfg(feature = "json")]
as_text!(EdgeId, "EdgeId");

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_face_reads_back_from_its_text() {
        let kinds = NAMED.iter().map(|(kind, _)| *kind).chain([FaceKind::Side(1), FaceKind::Side(12)]);
        for kind in kinds {
            for leg in [1, 2, 40] {
                let face = FaceId { leg, kind };
                assert_eq!(face.to_string().parse(), Ok(face));
            }
        }
        assert_eq!("leg2.top".parse(), Ok(FaceId { leg: 2, kind: FaceKind::Top }));
    }

    #[test]
    fn a_face_has_one_name_only() {
        for text in ["", "Front", "leg1.front", "leg02.front", "leg0.front", "side", "side0", "side+1", "leg2", "leg2."]
        {
            assert_eq!(text.parse::<FaceId>().unwrap_err().code, ErrorCode::UnknownName, "{text}");
        }
    }

    #[test]
    fn an_edge_is_the_same_from_both_sides() {
        let (front, top) = (FaceId::first_leg(FaceKind::Front), FaceId::first_leg(FaceKind::Top));
        assert_eq!(EdgeId::new(top, front), EdgeId::new(front, top));
        assert_eq!(EdgeId::new(top, front).to_string(), "front|top");
        assert_eq!("top|front".parse(), Ok(EdgeId::new(front, top)));
        assert_eq!("front".parse::<EdgeId>().unwrap_err().code, ErrorCode::Malformed);
    }
}
