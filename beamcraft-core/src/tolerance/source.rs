//! What a stack-up is asked: seams with their edges, and the errors that reach them.

use crate::error::{Detail, Error, ErrorCode, Fault, Result, closest};
use crate::limits::{faults_at, limited};

use super::seam::{CutSide, SeamHold};
#[cfg(feature = "json")]
use super::seam::{none, square_corner};

/// How an error scatters.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum ErrorDistribution {
    /// Normal; the spread is its standard deviation.
    Normal,
    /// Even between two ends; the spread is half of the range between them.
    Uniform,
}

impl ErrorDistribution {
    /// Variance for a spread of 1.
    pub(super) const fn unit_variance(self) -> f64 {
        match self {
            ErrorDistribution::Normal => 1.0,
            ErrorDistribution::Uniform => 1.0 / 3.0,
        }
    }
}

/// A source of angular error: a tilt setting, its scatter from cut to cut, the square that a frame was built to.
///
/// Edges that name the same source share its error: one setting of the saw for many cuts.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<AngleSource>))]
pub struct AngleSource {
    /// Name, by which edges and seams refer to it.
    pub name: String,
    /// How it scatters.
    pub distribution: ErrorDistribution,
    /// Standard deviation, or half-range of an even scatter, degrees.
    pub spread_deg: f64,
    /// Error that is always there, degrees; none if left out.
    #[cfg_attr(feature = "json", serde(default = "none"))]
    pub bias_deg: f64,
}

limited!(AngleSource { spread_deg: ANGLE_SPREAD, bias_deg: ANGLE_ERROR });

/// A source of an error of length: a fence setting, a stop, a planer's thickness, the cup of a batch of boards.
///
/// Edges that name the same source share its error: one setting of the fence for two boards.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<LengthSource>))]
pub struct LengthSource {
    /// Name, by which edges refer to it.
    pub name: String,
    /// How it scatters.
    pub distribution: ErrorDistribution,
    /// Standard deviation, or half-range of an even scatter, mm.
    pub spread_mm: f64,
    /// Error that is always there, mm; none if left out.
    #[cfg_attr(feature = "json", serde(default = "none"))]
    pub bias_mm: f64,
}

limited!(LengthSource { spread_mm: SIZE_SPREAD, bias_mm: SIZE_ERROR });

/// One edge of a seam, with the errors that reach it.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<StackEdge>))]
pub struct StackEdge {
    /// Name of the panel, for the reader.
    pub panel: String,
    /// Thickness of the board, mm.
    pub thickness_mm: f64,
    /// Width of the panel across the direction in which it cups, mm.
    pub width_mm: f64,
    /// Which face lies up at the saw.
    pub cut_side: CutSide,
    /// Names of the angle sources that add to the tilt of this edge; over-tilt is positive.
    #[cfg_attr(feature = "json", serde(default))]
    pub tilt_sources: Vec<String>,
    /// Names of the length sources that make the panel too wide or too long.
    #[cfg_attr(feature = "json", serde(default))]
    pub size_sources: Vec<String>,
    /// Share of the panel's error of size that reaches this edge: 1, all of it, if left out; 0.5 for a panel set in the middle.
    #[cfg_attr(feature = "json", serde(default = "whole"))]
    pub size_share: f64,
    /// Names of the length sources that make the board too thick.
    #[cfg_attr(feature = "json", serde(default))]
    pub thickness_sources: Vec<String>,
    /// Names of the length sources that cup the panel; a show face that bulges out is positive.
    #[cfg_attr(feature = "json", serde(default))]
    pub cup_sources: Vec<String>,
    /// Names of the length sources that bow the edge out of its plane; outwards is positive.
    #[cfg_attr(feature = "json", serde(default))]
    pub bow_sources: Vec<String>,
}

limited!(StackEdge { thickness_mm: BOARD_THICKNESS, width_mm: PANEL_WIDTH, size_share: FRACTION });

#[cfg(feature = "json")]
fn whole() -> f64 {
    1.0
}

/// A seam of the body.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<StackSeam>))]
pub struct StackSeam {
    /// Name of the seam, such as `front|top`; each seam has its own.
    pub name: String,
    /// One edge.
    pub a: StackEdge,
    /// The other edge.
    pub b: StackEdge,
    /// Corner angle between the two show faces, measured inside the body, degrees; a square corner if left out.
    #[cfg_attr(feature = "json", serde(default = "square_corner"))]
    pub corner_deg: f64,
    /// Names of the angle sources that make the corner too wide.
    #[cfg_attr(feature = "json", serde(default))]
    pub corner_sources: Vec<String>,
    /// What holds the boards in place.
    pub hold: SeamHold,
    /// Deliberate over-tilt of each of the two edges, degrees; none if left out.
    #[cfg_attr(feature = "json", serde(default = "none"))]
    pub over_tilt_deg: f64,
}

limited!(StackSeam { corner_deg: CORNER_ANGLE, over_tilt_deg: ANGLE_ERROR });

/// A body of seams and the errors of its making.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<ToleranceStackInput>))]
pub struct ToleranceStackInput {
    /// The seams; 1 to 64.
    pub seams: Vec<StackSeam>,
    /// Sources of angular error; angle and length sources together at most 256.
    #[cfg_attr(feature = "json", serde(default))]
    pub angle_sources: Vec<AngleSource>,
    /// Sources of errors of length.
    #[cfg_attr(feature = "json", serde(default))]
    pub length_sources: Vec<LengthSource>,
    /// Visible gap up to which a seam can be burnished shut, mm; the maker's own threshold.
    pub burnish_gap_mm: f64,
    /// Visible gap up to which filler will do, mm; the maker's own threshold, at least the one for burnishing.
    pub filler_gap_mm: f64,
    /// Number of samples; 100 000 if left out: shares are then good to about 0.3 in a hundred.
    #[cfg_attr(feature = "json", serde(default = "usual_samples"))]
    pub samples: u32,
    /// Seed of the random numbers; 1 if left out. The same seed gives the same result.
    #[cfg_attr(feature = "json", serde(default = "one"))]
    pub seed: u32,
    /// Number of threads; 1 if left out. The result does not depend on it.
    #[cfg_attr(feature = "json", serde(default = "one"))]
    pub threads: u32,
}

limited!(ToleranceStackInput {
    burnish_gap_mm: SMALL_LENGTH,
    filler_gap_mm: SMALL_LENGTH,
    samples: SAMPLES,
    seed: SEED,
    threads: THREADS,
});

#[cfg(feature = "json")]
fn usual_samples() -> u32 {
    100_000
}

#[cfg(feature = "json")]
fn one() -> u32 {
    1
}

/// Most seams of a body.
const MOST_SEAMS: usize = 64;
/// Most sources, angle and length together.
const MOST_SOURCES: usize = 256;
/// Most sources that one list of an edge names.
const MOST_NAMES: usize = 32;
/// Most samples times (seams and sources): some minutes on one core.
const MOST_WORK: f64 = 2e10;

impl StackEdge {
    /// The lists of this edge that name length sources.
    pub(super) fn length_lists(&self) -> [(&'static str, &[String]); 4] {
        [
            ("size_sources", &self.size_sources),
            ("thickness_sources", &self.thickness_sources),
            ("cup_sources", &self.cup_sources),
            ("bow_sources", &self.bow_sources),
        ]
    }
}

impl ToleranceStackInput {
    /// Every fault of the input but those of the geometry.
    pub(super) fn check(&self) -> Result<()> {
        let mut faults = faults_at("", self);
        let mut refuse = |code, path: &str, allowed: &'static str, cure| {
            faults.push(Detail::from(Fault::plain(code, "", allowed, cure)).within(path));
        };
        let sources = self.angle_sources.len() + self.length_sources.len();
        if self.seams.is_empty() || self.seams.len() > MOST_SEAMS {
            refuse(ErrorCode::OutOfRange, "seams", "1 to 64 seams", "");
        }
        if sources > MOST_SOURCES {
            refuse(ErrorCode::OutOfRange, "length_sources", "at most 256 sources of both kinds", "");
        }
        // Nothing below is walked before the lists are known to be short.
        Error::unless_empty(faults.clone())?;
        let work = f64::from(self.samples) * (self.seams.len() + sources) as f64;
        let mut refuse = |code, path: &str, allowed: &'static str, cure| {
            faults.push(Detail::from(Fault::plain(code, "", allowed, cure)).within(path));
        };
        if work > MOST_WORK {
            let allowed = "samples times the number of seams and sources of at most 2e10";
            refuse(ErrorCode::Inconsistent, "samples", allowed, "take fewer samples");
        }
        if self.filler_gap_mm < self.burnish_gap_mm {
            let allowed = "at least the gap that can be burnished shut";
            refuse(ErrorCode::Inconsistent, "filler_gap_mm", allowed, "");
        }
        let angle_names: Vec<&str> = self.angle_sources.iter().map(|source| source.name.as_str()).collect();
        let length_names: Vec<&str> = self.length_sources.iter().map(|source| source.name.as_str()).collect();
        let seam_names: Vec<&str> = self.seams.iter().map(|seam| seam.name.as_str()).collect();
        let all_names = [angle_names.as_slice(), length_names.as_slice()].concat();
        for (k, name) in repeated(&all_names) {
            let (list, place) =
                if k < angle_names.len() { ("angle_sources", k) } else { ("length_sources", k - angle_names.len()) };
            faults.push(given_twice(&format!("{list}[{place}].name"), name));
        }
        faults.extend(repeated(&seam_names).map(|(k, name)| given_twice(&format!("seams[{k}].name"), name)));
        for (k, source) in self.angle_sources.iter().enumerate() {
            faults.extend(faults_at(&format!("angle_sources[{k}]"), source));
        }
        for (k, source) in self.length_sources.iter().enumerate() {
            faults.extend(faults_at(&format!("length_sources[{k}]"), source));
        }
        for (k, seam) in self.seams.iter().enumerate() {
            let path = format!("seams[{k}]");
            faults.extend(faults_at(&path, seam));
            faults.extend(name_faults(&format!("{path}.corner_sources"), &seam.corner_sources, &angle_names));
            for (edge, part) in [(&seam.a, "a"), (&seam.b, "b")] {
                let path = format!("{path}.{part}");
                faults.extend(faults_at(&path, edge));
                faults.extend(name_faults(&format!("{path}.tilt_sources"), &edge.tilt_sources, &angle_names));
                for (list, names) in edge.length_lists() {
                    faults.extend(name_faults(&format!("{path}.{list}"), names, &length_names));
                }
            }
        }
        Error::unless_empty(faults)
    }
}

/// Names that stand before in the list, with their places.
fn repeated<'a>(names: &'a [&'a str]) -> impl Iterator<Item = (usize, &'a str)> {
    let first = |k: usize, name: &str| names.iter().position(|other| *other == name) == Some(k);
    names.iter().enumerate().filter(move |(k, name)| !first(*k, name)).map(|(k, name)| (k, *name))
}

fn given_twice(path: &str, name: &str) -> Detail {
    Detail {
        code: ErrorCode::DuplicateField,
        path: path.to_owned(),
        given: format!("\"{name}\""),
        allowed: "each name once".to_owned(),
        cure: "name a shared error once, in the source".to_owned(),
    }
}

/// Faults of a list of source names.
fn name_faults(path: &str, names: &[String], known: &[&str]) -> Vec<Detail> {
    if names.len() > MOST_NAMES {
        let fault = Fault::plain(ErrorCode::OutOfRange, "", "at most 32 sources in a list", "");
        return vec![Detail::from(fault).within(path)];
    }
    let mut faults = Vec::new();
    let all: Vec<&str> = names.iter().map(String::as_str).collect();
    faults.extend(repeated(&all).map(|(k, name)| given_twice(&format!("{path}[{k}]"), name)));
    let unknown = all.iter().enumerate().filter(|(_, name)| !known.contains(name));
    for (count, (k, name)) in unknown.enumerate() {
        // Looking for the closest name is slow; a list that is wrong throughout gets a few suggestions only.
        let close = if count < 3 { closest(name, known.iter().copied()) } else { None };
        faults.push(Detail {
            code: ErrorCode::UnknownName,
            path: format!("{path}[{k}]"),
            given: format!("\"{name}\""),
            allowed: "the name of a source of that kind".to_owned(),
            cure: close.map(|name| format!("did you mean {name}?")).unwrap_or_default(),
        });
    }
    faults
}
