//! The seams as the saw makes them: the stack-up of the planned body, the saw it asks for, and the over-tilt to offer.

use super::body::{Body, MitredSeam};
use super::result_seams::TolerancePlan;
use super::spec_seams::AccuracySpec;
use super::within;
use crate::error::{Allowed, Detail, ErrorCode, Fault, Result};
use crate::finding::{Finding, FindingCode, Grade, Quantity};
use crate::limits::faults_at;
use crate::numeric::real::degrees;
use crate::saw::ShowFace;
use crate::shell::{EdgeCut, Panel, PanelEdge};
use crate::tolerance::{
    AngleSource, CutSide, ErrorDistribution, LengthSource, OverTilt, OverTiltInput, SawAccuracy, SawAccuracyInput,
    SeamTolerance, StackEdge, StackSeam, TiltSetting, ToleranceStackInput, over_tilt, saw_accuracy, tolerance_stack,
};

/// A panel sits in the middle of what it spans: half of its error of size comes to each edge.
const SIZE_SHARE: f64 = 0.5;
/// Sizes that differ by less are cut at one setting, mm: far below anything that can be set.
const SAME_SIZE_MM: f64 = 0.005;
/// Thickest film in which stiff glues hold, mm (FPL-GTR-190, chapter 10).
const GLUE_FILM_MM: f64 = 0.15;

/// Every fault of the accuracy.
pub(super) fn faults(accuracy: &AccuracySpec) -> Vec<Detail> {
    let mut faults = faults_at("accuracy", accuracy);
    if accuracy.filler_gap_mm < accuracy.burnish_gap_mm {
        let allowed = "at least the gap that can be burnished shut";
        let fault =
            Fault::number(ErrorCode::Inconsistent, "filler_gap_mm", accuracy.filler_gap_mm, Allowed::Text(allowed), "");
        faults.push(Detail::from(fault).within("accuracy"));
    }
    faults
}

/// The seams as the saw makes them; nothing without an accuracy or without a mitre.
pub(super) fn at_the_saw(body: &Body<'_>, findings: &mut Vec<Finding>) -> Result<Option<TolerancePlan>> {
    let Some(accuracy) = &body.checked.spec.accuracy else { return Ok(None) };
    let seams = body.mitred_seams();
    if seams.is_empty() {
        return Ok(None);
    }
    let mut sources = Sources { accuracy, panels: &body.shell.panels, angles: Vec::new(), lengths: Vec::new() };
    let cut_side = match body.checked.spec.saw.show_face {
        ShowFace::Up => CutSide::ShowFaceUp,
        ShowFace::Down => CutSide::ShowFaceDown,
    };
    let stacked = seams.iter().map(|seam| sources.seam(seam, cut_side)).collect();
    let stack = tolerance_stack(&ToleranceStackInput {
        seams: stacked,
        angle_sources: sources.angles,
        length_sources: sources.lengths,
        burnish_gap_mm: accuracy.burnish_gap_mm,
        filler_gap_mm: accuracy.filler_gap_mm,
        samples: accuracy.samples,
        seed: accuracy.seed,
        threads: 1,
    })
    .map_err(|error| within(error, "accuracy"))?;
    // The same errors of angle open the longest seam most.
    let by_length = seams.iter().zip(&stack.seams).max_by(|one, other| one.1.seam_mm.total_cmp(&other.1.seam_mm));
    let Some((longest, _)) = by_length else { return Ok(None) };
    let asked = Asked { accuracy, seam: longest };
    let plan = TolerancePlan { seam: longest.a.1.id, saw: asked.saw()?, over_tilt: asked.over_tilt()?, stack };
    findings.extend(open_seams(accuracy, &plan));
    Ok(Some(plan))
}

/// The errors of the making, each named once.
struct Sources<'a> {
    accuracy: &'a AccuracySpec,
    panels: &'a [Panel],
    angles: Vec<AngleSource>,
    lengths: Vec<LengthSource>,
}

impl Sources<'_> {
    /// The angle source of a name, made when it is new.
    fn angle(&mut self, name: String, spread_deg: f64) -> Vec<String> {
        if spread_deg == 0.0 {
            return Vec::new();
        }
        if self.angles.iter().all(|source| source.name != name) {
            let distribution = ErrorDistribution::Normal;
            self.angles.push(AngleSource { name: name.clone(), distribution, spread_deg, bias_deg: 0.0 });
        }
        vec![name]
    }

    /// The length source of a name, made when it is new.
    fn length(&mut self, name: String, spread_mm: f64) -> Vec<String> {
        if spread_mm == 0.0 {
            return Vec::new();
        }
        if self.lengths.iter().all(|source| source.name != name) {
            let distribution = ErrorDistribution::Normal;
            self.lengths.push(LengthSource { name: name.clone(), distribution, spread_mm, bias_mm: 0.0 });
        }
        vec![name]
    }

    fn seam(&mut self, seam: &MitredSeam<'_>, cut_side: CutSide) -> StackSeam {
        let name = seam.a.1.id.to_string();
        StackSeam {
            a: self.edge(seam.a, cut_side),
            b: self.edge(seam.b, cut_side),
            corner_deg: seam.a.1.corner_deg,
            corner_sources: self.angle(format!("corner at {name}"), self.accuracy.corner_sd_deg),
            hold: self.accuracy.hold,
            over_tilt_deg: self.accuracy.over_tilt_deg,
            name,
        }
    }

    fn edge(&mut self, (panel, edge): (&Panel, &PanelEdge), cut_side: CutSide) -> StackEdge {
        let accuracy = self.accuracy;
        let cup = self.length(format!("cup of {}", panel.id), accuracy.cup_sd_mm);
        // Across the grain a cup slopes at the long edges; at an end it bows the edge out of its plane.
        let (cup_sources, bow_sources) = match edge.cut {
            EdgeCut::Rip => (cup, self.length(format!("bow of {}", panel.id), accuracy.bow_sd_mm)),
            EdgeCut::CrossCut => (Vec::new(), cup),
        };
        StackEdge {
            panel: panel.id.to_string(),
            thickness_mm: panel.thickness_mm,
            width_mm: panel.show_width_mm,
            cut_side,
            tilt_sources: self.angle(self.tilt_name(panel, edge), accuracy.tilt_sd_deg),
            size_sources: self.size(panel, edge),
            size_share: SIZE_SHARE,
            thickness_sources: self.length(format!("thickness of {}", panel.id), accuracy.thickness_sd_mm),
            cup_sources,
            bow_sources,
        }
    }

    /// Edges of one tilt and one kind of cut share a setting of the saw, or each has its own.
    fn tilt_name(&self, panel: &Panel, edge: &PanelEdge) -> String {
        let kind = match edge.cut {
            EdgeCut::Rip => "rips",
            EdgeCut::CrossCut => "cross-cuts",
        };
        match self.accuracy.setting {
            TiltSetting::OneForBoth => format!("tilt of the {kind} at {:.2}°", edge.tilt_deg.abs()),
            TiltSetting::EachAnew => format!("tilt of {} at {}", panel.id, edge.id),
        }
    }

    /// Panels of one width share a setting of the fence, those of one length a stop.
    fn size(&mut self, panel: &Panel, edge: &PanelEdge) -> Vec<String> {
        match edge.cut {
            EdgeCut::Rip => {
                let name = self.alike("width", panel.show_width_mm, |other| other.show_width_mm);
                self.length(name, self.accuracy.width_sd_mm)
            }
            EdgeCut::CrossCut => {
                let name = self.alike("length", panel.show_length_mm, |other| other.show_length_mm);
                self.length(name, self.accuracy.length_sd_mm)
            }
        }
    }

    /// What is set once for all panels of a size: `width of top, bottom`.
    fn alike(&self, what: &str, size_mm: f64, size_of: impl Fn(&Panel) -> f64) -> String {
        let same = self.panels.iter().filter(|panel| (size_of(panel) - size_mm).abs() < SAME_SIZE_MM);
        let names: Vec<_> = same.map(|panel| panel.id.to_string()).collect();
        format!("{what} of {}", names.join(", "))
    }
}

/// One seam about which the saw is asked.
struct Asked<'a> {
    accuracy: &'a AccuracySpec,
    seam: &'a MitredSeam<'a>,
}

impl Asked<'_> {
    /// Standard deviation of what turns the seam besides the tilts, degrees.
    fn other_sd_deg(&self) -> f64 {
        let cups = [self.seam.a, self.seam.b].into_iter().filter(|(_, edge)| edge.cut == EdgeCut::Rip);
        // The ends of a parabola of rise h over a width w slope by 4 h / w.
        let slopes = cups.map(|(panel, _)| degrees(4.0 * self.accuracy.cup_sd_mm / panel.show_width_mm));
        let squares = slopes.map(|slope| slope * slope).sum::<f64>();
        (self.accuracy.corner_sd_deg * self.accuracy.corner_sd_deg + squares).sqrt()
    }

    fn saw(&self) -> Result<SawAccuracy> {
        saw_accuracy(&SawAccuracyInput {
            thickness_a_mm: self.seam.a.0.thickness_mm,
            thickness_b_mm: self.seam.b.0.thickness_mm,
            corner_deg: self.seam.a.1.corner_deg,
            gap_mm: self.accuracy.burnish_gap_mm,
            share: self.accuracy.wanted_share,
            setting: self.accuracy.setting,
            over_tilt_deg: self.accuracy.over_tilt_deg,
            other_sd_deg: self.other_sd_deg(),
        })
        .map_err(|fault| within(fault, "accuracy"))
    }

    fn over_tilt(&self) -> Result<OverTilt> {
        over_tilt(&OverTiltInput {
            thickness_a_mm: self.seam.a.0.thickness_mm,
            thickness_b_mm: self.seam.b.0.thickness_mm,
            corner_deg: self.seam.a.1.corner_deg,
            tilt_sd_deg: self.accuracy.tilt_sd_deg,
            setting: self.accuracy.setting,
            other_sd_deg: self.other_sd_deg(),
            gap_mm: 0.0,
            share: self.accuracy.wanted_share,
            glue_film_mm: GLUE_FILM_MM,
        })
        .map_err(|fault| within(fault, "accuracy"))
    }
}

/// A finding when fewer seams than wanted can be burnished shut.
fn open_seams(accuracy: &AccuracySpec, plan: &TolerancePlan) -> Option<Finding> {
    let closes = |seam: &&SeamTolerance| seam.sampled.burnishable_share < accuracy.wanted_share;
    let open: Vec<_> = plan.stack.seams.iter().filter(closes).collect();
    let least = open.iter().map(|seam| seam.sampled.burnishable_share).reduce(f64::min)?;
    let p95_mm = open.iter().map(|seam| seam.sampled.p95_mm).fold(0.0, f64::max);
    let names: Vec<_> = open.iter().map(|seam| seam.name.as_str()).collect();
    let matters = plan.stack.ranking.first().map_or("", |source| source.source.as_str());
    Some(Finding {
        grade: Grade::Caution,
        code: FindingCode::SeamGaps,
        subject: names.join(", "),
        message: format!(
            "With the saw as given, fewer of these seams than wanted can be burnished shut. What matters most: {matters}."
        ),
        numbers: vec![
            Quantity::new("share of seams that can be burnished shut, in the worst one", 100.0 * least, "%"),
            Quantity::new("gap that 95 % of them keep to", p95_mm, "mm"),
            Quantity::new("standard deviation of the tilt that would do", plan.saw.tilt_sd_deg, "deg"),
            Quantity::new("over-tilt of each edge that would close them where they are seen", plan.over_tilt.over_tilt_deg, "deg"),
            Quantity::new("gap inside that it costs", plan.over_tilt.inside_gap_mm, "mm"),
        ],
        cure: "Set the tilt from test cuts that are held together against a square, or tilt a little more than the mitre: the seam closes \
               at the show edge and opens inside."
            .to_owned(),
        clause: None,
    })
}
