//! What a plan has to say about itself: findings with a grade, numbers and a cure, and standing cautions.
//!
//! A finding is not an error. A plan that does not work is returned whole, with the findings that say why.

use crate::cite::Clause;

/// How much a finding matters.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum Grade {
    /// Good to know.
    Note,
    /// Works only with care, or cannot be decided from what was given.
    Caution,
    /// Does not work as planned.
    Stop,
}

macro_rules! finding_codes {
    ($($variant:ident, $name:literal, $describe:literal;)+) => {
        /// What a finding is about. The text form is the same through every door.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
        #[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
        #[non_exhaustive]
        pub enum FindingCode {
            $(#[doc = $describe] #[cfg_attr(feature = "json", serde(rename = $name))] $variant,)+
        }

        impl FindingCode {
            /// Every code.
            pub const ALL: &'static [FindingCode] = &[$(FindingCode::$variant,)+];

            /// Text form.
            pub const fn name(self) -> &'static str {
                match self { $(FindingCode::$variant => $name,)+ }
            }

            /// One sentence on what it says.
            pub const fn describe(self) -> &'static str {
                match self { $(FindingCode::$variant => $describe,)+ }
            }
        }
    };
}

finding_codes! {
    BeyondTilt, "beyond_tilt", "a bevel lies beyond the saw's tilt range";
    TrappedPiece, "trapped_piece", "a piece lies between the fence and a blade that leans towards it";
    LongPointRidesFence, "long_point_rides_fence", "an edge already bevelled rides the fence on its long point";
    StudsMissed, "studs_missed", "the wall half crosses fewer than two studs";
    ScrewTooShort, "screw_too_short", "a screw does not reach deep enough into what should hold it";
    ScrewTooLong, "screw_too_long", "a screw comes out of, or too near, the far side of what it is driven into";
    CheckFails, "check_fails", "a demand exceeds the capacity";
    HeldByFrictionOnly, "held_by_friction_only", "the seat holds only with the help of friction";
    ClimbsOff, "climbs_off", "the body would climb off the cleat under its load";
    NoHeadroom, "no_headroom", "something above leaves less room than the body needs to be lifted over the wall half";
    CleatDoesNotFit, "cleat_does_not_fit", "the cleat does not fit into the hollow";
    FrameDoesNotFit, "frame_does_not_fit", "no room is left for frame pieces";
    MeetsObstruction, "meets_obstruction", "the body runs into something on the wall";
    TooCloseToHeat, "too_close_to_heat", "the body is closer to the opening than a cited rule allows";
    ListingGoverns, "listing_governs", "the appliance's own listing decides the clearance and was not given";
    NotCovered, "not_covered", "something asked for lies outside the published methods used";
    HeavyLift, "heavy_lift", "the mass is more than one person should be asked to lift";
    CrossGrainFight, "cross_grain_fight", "two parts are glued together that move differently with moisture";
    OpenEndShowsInside, "open_end_shows_inside", "an end without a panel shows the inside of the body";
    GlueLine, "glue_line", "a glue line bears held-back movement, or stands in warmth that its glue may not bear";
    SeamMoves, "seam_moves", "a seam is pulled open by the seasons, or its glue has to hold it";
    SeamGaps, "seam_gaps", "the saw as given leaves visible gaps in more seams than wanted";
    DoesNotPass, "does_not_pass", "a part is wider than the way that it is to be carried through";
    BreaksThrough, "breaks_through", "a groove, recess or hole comes out on a face that it was not cut from";
    BeyondSaw, "beyond_saw", "a cut lies outside what the described saw reaches";
    DriverHasNoRoom, "driver_has_no_room", "a driver with its bit does not fit where a screw is to be driven";
    GlueSetsTooSoon, "glue_sets_too_soon", "the seams of one glue-up take longer than the open time of the glue";
    NeedsSpecialist, "needs_specialist", "a licensed trade, or the maker of a thing near the body, must decide this";
    UnevenWall, "uneven_wall", "the wall is not what screws or a straight back edge want";
}

/// A number that belongs to a finding.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct Quantity {
    /// What it is, in words.
    pub name: &'static str,
    /// Its value.
    pub value: f64,
    /// Unit symbol; empty for a plain number.
    pub unit: &'static str,
}

impl Quantity {
    /// The quantity `name` = `value` `unit`.
    pub const fn new(name: &'static str, value: f64, unit: &'static str) -> Self {
        Self { name, value, unit }
    }
}

/// Something the maker should know before the first cut.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct Finding {
    /// How much it matters.
    pub grade: Grade,
    /// What it is about.
    pub code: FindingCode,
    /// The part concerned, such as `front|top` or `cleat`.
    pub subject: String,
    /// One or two sentences.
    pub message: String,
    /// The numbers behind it.
    pub numbers: Vec<Quantity>,
    /// What would help; empty where nothing needs to be done.
    pub cure: String,
    /// The rule behind it, where there is one.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub clause: Option<Clause>,
}

macro_rules! cautions {
    ($($variant:ident, $name:literal, $text:literal;)+) => {
        /// A standing caution that travels with the results it belongs to.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
        #[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
        #[non_exhaustive]
        pub enum Caution { $(#[doc = $text] #[cfg_attr(feature = "json", serde(rename = $name))] $variant,)+ }

        impl Caution {
            /// Every caution.
            pub const ALL: &'static [Caution] = &[$(Caution::$variant,)+];

            /// Short name.
            pub const fn name(self) -> &'static str {
                match self { $(Caution::$variant => $name,)+ }
            }

            /// The caution itself.
            pub const fn text(self) -> &'static str {
                match self { $(Caution::$variant => $text,)+ }
            }
        }
    };
}

cautions! {
    Fire, "fire", "Local law, the appliance's listing and its instructions decide how close wood may come to heat; figures here are a screen, not an approval.";
    Structure, "structure", "Holds only for the stated materials, fasteners, studs and loads; where people could hang on it, the wall is bearing or masonry, or the site is seismic, a licensed engineer or the local authority decides.";
    Lifting, "lifting", "Lift and hang with a second person; standing on a ladder with a load is outside every published lifting method.";
    Saw, "saw", "Guard and riving knife in place, insert that fits the tilt, fence and gauge never together without a stop block; make test cuts in scrap.";
    Dust, "dust", "Wood dust harms lungs and can burn; extract at the tool and wear a mask suited to the species.";
    Rags, "rags", "Rags with drying oil heat up by themselves and can ignite: spread them out singly outdoors or keep them under water in a closed metal container.";
    Solvents, "solvents", "Ventilate and keep away from every flame, pilot light and fireplace; let the finish cure fully, by its maker's time, before the first fire.";
    HeldMovement, "held_movement", "Movement and stresses are averages and bounds, not a proof that a joint holds: boards differ, wood and glue creep, and common wood glue softens in sustained warmth, as over a hearth.";
    Services, "services", "Detect cables and pipes before drilling into a wall.";
}

/// A caution as it appears in a result.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct CautionText {
    /// Short name.
    pub about: &'static str,
    /// The caution itself.
    pub text: &'static str,
}

impl From<Caution> for CautionText {
    fn from(caution: Caution) -> Self {
        Self { about: caution.name(), text: caution.text() }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::HashSet;

    #[test]
    fn names_are_unique_and_nothing_prints_empty() {
        let names: HashSet<_> = FindingCode::ALL.iter().map(|code| code.name()).collect();
        assert_eq!(names.len(), FindingCode::ALL.len());
        assert!(FindingCode::ALL.iter().all(|code| !code.describe().is_empty()));
        assert!(Caution::ALL.iter().all(|caution| !caution.text().is_empty()));
        assert!(Grade::Stop > Grade::Caution && Grade::Caution > Grade::Note);
    }
}
