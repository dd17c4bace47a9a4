//! What the seasons and the saw do to the body.

use super::super::gaps::gap_histograms_svg;
use super::super::movement::movement_svg;
use super::super::text::{fixed, percent};
use super::super::words;
use super::page::{Html, Page};
use crate::movement::{CrossGrainCure, MovementMethod};
use crate::plan::{MovementPlan, Plan, ReportLengths, ReturnFixing, SeamSeasons};
use crate::tolerance::{SeamTolerance, SourceShare};

/// Sources that are named in the table: beyond these none matters.
const SOURCES: usize = 6;

/// The body through the year.
pub(super) fn movement(page: &mut Page, plan: &Plan) {
    let (Some(movement), Some(seasons)) = (&plan.movement, &plan.spec.seasons) else { return };
    let lengths = plan.spec.lengths;
    page.heading("Through the year");
    page.paragraph(format!(
        "Boards {}, glued at {} %; the room brings them to between {} % and {} % moisture.",
        words::board_cut(seasons.cut),
        moisture(movement.made_moisture_pct),
        moisture(movement.outer.driest.moisture_pct),
        moisture(movement.outer.wettest.moisture_pct)
    ));
    page.remark("Changes are those of boards that reach balance with the air: the greatest that can come. Swelling is positive.");
    outer(page, movement, lengths);
    seam_seasons(page, movement, lengths);
    if let Some(year) = &movement.year {
        page.drawing(&movement_svg(year, lengths));
    }
    if let Some(cleat) = &movement.cleat {
        page.paragraph(format!(
            "Cleat: the bevel turns by {} when driest and {} when wettest; both halves turn alike and the seat stays closed. The body rises by {} and by {} (sinks where negative), and the strip is {} thicker when wettest.",
            degrees_fine(cleat.driest.bevel_change_deg),
            degrees_fine(cleat.wettest.bevel_change_deg),
            lengths.signed(cleat.driest.body_rise_mm),
            lengths.signed(cleat.wettest.body_rise_mm),
            lengths.signed(cleat.wettest.wall_thicker_mm)
        ));
    }
    returns(page, movement, seasons.returns, lengths);
    let stress = movement.glue_line.share_of_wood_shear.map(|share| {
        format!(
            " Held back in full, the movement at the returns asks at most {} of the shear strength of the wood.",
            percent(share)
        )
    });
    let warm = movement
        .warm_face_moisture_pct
        .map(|dry_pct| format!(" A face that keeps the temperature given dries to {} %.", moisture(dry_pct)));
    page.paragraph(format!("Glue: {}.{}{}", seasons.glue.name(), stress.unwrap_or_default(), warm.unwrap_or_default()));
}

/// A moisture content to a tenth.
fn moisture(moisture_pct: f64) -> String {
    fixed(moisture_pct, 1)
}

/// An angle to a hundredth of a degree.
fn degrees_fine(angle_deg: f64) -> String {
    format!("{}°", fixed(angle_deg, 2))
}

fn outer(page: &mut Page, movement: &MovementPlan, lengths: ReportLengths) {
    let outer = &movement.outer;
    let row = |what: &str, driest: f64, wettest: f64, range: f64| {
        [Html::from(what), lengths.signed(driest).into(), lengths.signed(wettest).into(), lengths.signed(range).into()]
    };
    let (dry, wet) = (&outer.driest, &outer.wettest);
    let rows = [
        row("length", dry.length_change_mm, wet.length_change_mm, outer.length_range_mm),
        row("height", dry.height_change_mm, wet.height_change_mm, outer.height_range_mm),
        row("depth, where top and bottom are free", dry.depth_change_mm, wet.depth_change_mm, outer.depth_range_mm),
    ];
    page.table("Outer size of the body", ["size", "driest", "wettest", "through the year"], rows);
}

fn seam_seasons(page: &mut Page, movement: &MovementPlan, lengths: ReportLengths) {
    let row = |seam: &SeamSeasons| {
        [
            Html::from(words::seam(seam.seam)),
            degrees_fine(seam.driest.corner_change_deg).into(),
            degrees_fine(seam.wettest.corner_change_deg).into(),
            lengths.fine(seam.show_opening_mm).into(),
            lengths.fine(seam.heel_opening_mm).into(),
        ]
    };
    let heads = ["seam", "corner when driest", "corner when wettest", "opens at the show edge", "opens inside"];
    let caption =
        "Change of the corners if the seams stay closed, or opening if the corners are held and the glue holds nothing";
    page.table(caption, heads, movement.seams.iter().map(row));
}

fn returns(page: &mut Page, movement: &MovementPlan, fixing: ReturnFixing, lengths: ReportLengths) {
    let Some(fight) = &movement.returns else { return };
    page.paragraph(format!(
        "Returns, grain front to back, against top and bottom: these want to be {} shorter when driest and {} longer when wettest. {}",
        lengths.fine(fight.shrink_mm),
        lengths.fine(fight.swell_mm),
        match fixing {
            ReturnFixing::GluedAll => "They are planned glued over the whole depth.",
            ReturnFixing::GluedFront => "They are planned glued at the front only.",
            ReturnFixing::NotGlued => "They are planned without glue.",
        }
    ));
    let row = |cure: &CrossGrainCure| {
        let told = |value: Option<f64>| Html::from(value.map_or_else(String::new, |value| lengths.fine(value)));
        [cure.instruction.into(), told(cure.held_back_mm), told(cure.left_free_mm)]
    };
    page.table("Ways of fastening a return", ["way", "held back", "left free"], fight.cures.iter().map(row));
    if let Some(slot) = &movement.rear_slot {
        let law = match slot.shrink_method {
            MovementMethod::Coefficient => "",
            MovementMethod::Shrinkage => " (by the law of shrinkage)",
        };
        page.paragraph(format!(
            "Slot for a screw at the rear of a return: {} long, {} of it towards the front and {} towards the wall from the screw as driven{law}; a \
             washer under the head, not driven hard.",
            lengths.full(slot.slot_mm),
            lengths.fine(slot.towards_mm),
            lengths.fine(slot.away_mm)
        ));
    }
}

/// The seams as the saw makes them.
pub(super) fn tolerance(page: &mut Page, plan: &Plan) {
    let (Some(tolerance), Some(accuracy)) = (&plan.tolerance, &plan.spec.accuracy) else { return };
    let lengths = plan.spec.lengths;
    let stack = &tolerance.stack;
    page.heading("Gaps at the seams, from the errors of the making");
    page.remark(format!(
        "{} bodies drawn at random with the errors given. Burnish up to {}, fill up to {}: thresholds of the maker.",
        stack.samples,
        lengths.fine(accuracy.burnish_gap_mm),
        lengths.fine(accuracy.filler_gap_mm)
    ));
    let row = |seam: &SeamTolerance| {
        let gap = &seam.sampled;
        [
            seam_name(&seam.name),
            lengths.fine(gap.p50_mm).into(),
            lengths.fine(gap.p95_mm).into(),
            percent(gap.burnishable_share).into(),
            percent(gap.fillable_share).into(),
            percent(gap.reject_share).into(),
        ]
    };
    let heads = ["seam", "half keep to", "95 % keep to", "closed or burnished", "to fill", "beyond"];
    page.table("", heads, stack.seams.iter().map(row));
    page.paragraph(format!(
        "All seams of a body: {} of bodies need no more than burnishing, {} have a seam beyond filling.",
        percent(stack.worst.burnishable_share),
        percent(stack.worst.reject_share)
    ));
    let source = |source: &SourceShare| [Html::name(&source.source), percent(source.variance_share).into()];
    page.table(
        "Which error matters most",
        ["error", "share of the scatter"],
        stack.ranking.iter().take(SOURCES).map(source),
    );
    let (choice, saw) = (&tolerance.over_tilt, &tolerance.saw);
    page.paragraph(format!(
        "To keep {} of seams within burnishing, drawn tight, the tilt may scatter by {} (standard deviation).",
        percent(accuracy.wanted_share),
        degrees_thousandth(saw.tilt_sd_deg)
    ));
    page.paragraph(format!(
        "A choice: tilt {} more than the mitre, {} at the seam {}. Then {} of its seams close where they are seen instead of {}, and stand open inside by {} as \
         aimed at; glue can hold over {} of such a seam.",
        degrees_thousandth(choice.over_tilt_deg),
        degrees_thousandth(choice.aim_a_deg),
        words::seam(tolerance.seam),
        percent(choice.closed_with),
        percent(choice.closed_without),
        lengths.fine(choice.inside_gap_mm),
        percent(choice.glued_share)
    ));
    page.drawing(&gap_histograms_svg(stack));
}

/// Both faces of a seam in words.
fn seam_name(name: &str) -> Html {
    name.parse().map_or_else(|_| Html::name(name), |seam| words::seam(seam).into())
}

/// An angle to a hundredth of a degree, thousandths below a tenth.
fn degrees_thousandth(angle_deg: f64) -> String {
    format!("{}°", fixed(angle_deg, if angle_deg.abs() < 0.1 { 3 } else { 2 }))
}
