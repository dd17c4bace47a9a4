//! Plans a whole beam and writes it out: `hearth_beam [SPEC.json] [OUTPUT_FOLDER]`.
//!
//! Without a spec it plans the ash shelf beam of the guide; without a folder it writes into `hearth-beam/`: the plan as
//! JSON, the report, the drawings as SVG, and the panels as STL, STEP, glTF and DXF.

use std::io::{self, Write};
use std::path::Path;
use std::process::ExitCode;
use std::{env, fs};

use beamcraft_core::export::{
    drawing_names, gap_histograms_svg, lift_svg, movement_svg, panels_dxf, panels_gltf, panels_step, panels_stl,
    plan_drawing_svg, report_html,
};
use beamcraft_core::finding::Quantity;
use beamcraft_core::json;
use beamcraft_core::plan::{BeamSpec, LegShape, Plan, ReportLengths, plan};
use beamcraft_core::saw::{BladeLean, CutKind, CutSetUp, CutWay, FaceDown, PanelCut};
use beamcraft_core::units::{LengthRounding, LengthStyle, WriteLengthInput, write_length};
use beamcraft_core::verdict::Outcome;

/// The beam of the guide.
const ASH: &str = include_str!("specs/ash_shelf_beam.json");

fn main() -> ExitCode {
    let mut arguments = env::args().skip(1);
    let (spec, folder) = (arguments.next(), arguments.next().unwrap_or_else(|| "hearth-beam".to_owned()));
    if arguments.next().is_some() || spec.as_deref().is_some_and(|spec| spec.starts_with('-')) {
        eprintln!("usage: hearth_beam [SPEC.json] [OUTPUT_FOLDER]");
        return ExitCode::FAILURE;
    }
    match run(spec.as_deref(), Path::new(&folder)) {
        Ok(()) => ExitCode::SUCCESS,
        Err(what) => {
            eprintln!("{what}");
            ExitCode::FAILURE
        }
    }
}

fn run(spec: Option<&str>, folder: &Path) -> Result<(), String> {
    let text = match spec {
        Some(path) => fs::read_to_string(path).map_err(|fault| format!("{path}: {fault}"))?,
        None => ASH.to_owned(),
    };
    let source = spec.unwrap_or("the spec");
    let refuse = |error: beamcraft_core::Error| {
        let faults: Vec<String> = error.details().iter().map(|detail| format!("  {detail}")).collect();
        format!("{source} cannot be planned:\n{}", faults.join("\n"))
    };
    let spec: BeamSpec = json::read(&text).map_err(refuse)?;
    let plan = plan(&spec).map_err(refuse)?;
    let json = json::write_pretty(&plan).map_err(refuse)?;
    let mut files = vec![
        ("plan.json".to_owned(), json.into_bytes()),
        ("report.html".to_owned(), report_html(&plan).into_bytes()),
        ("panels.stl".to_owned(), panels_stl(&plan.panels)),
        ("panels.step".to_owned(), panels_step(&plan.spec.name, &plan.panels).into_bytes()),
        ("panels.glb".to_owned(), panels_gltf(&plan.spec.name, &plan.panels)),
        ("panels.dxf".to_owned(), panels_dxf(&plan.spec.name, &plan.panels).into_bytes()),
    ];
    // The section, the panels pulled apart, and for each panel a sheet and the set-ups of the saw.
    for name in drawing_names(&plan) {
        let svg = plan_drawing_svg(&plan, &name).map_err(refuse)?;
        files.push((format!("{name}.svg"), svg.into_bytes()));
    }
    if let Some(lift) = &plan.lift_on {
        files.push(("lift.svg".to_owned(), lift_svg(lift, plan.spec.lengths).into_bytes()));
    }
    if let Some(year) = plan.movement.as_ref().and_then(|movement| movement.year.as_ref()) {
        files.push(("movement.svg".to_owned(), movement_svg(year, plan.spec.lengths).into_bytes()));
    }
    if let Some(tolerance) = &plan.tolerance {
        files.push(("gaps.svg".to_owned(), gap_histograms_svg(&tolerance.stack).into_bytes()));
    }
    fs::create_dir_all(folder).map_err(|fault| format!("{}: {fault}", folder.display()))?;
    let mut said = summary(&plan) + "\nWritten\n";
    for (name, bytes) in files {
        let path = folder.join(name);
        fs::write(&path, bytes).map_err(|fault| format!("{}: {fault}", path.display()))?;
        said += &format!("  {}\n", path.display());
    }
    io::stdout().write_all(said.as_bytes()).map_err(|fault| format!("standard output: {fault}"))
}

/// A length as the spec asks for it.
fn length(plan: &Plan, length_mm: f64) -> String {
    let (style, decimals) = match plan.spec.lengths {
        ReportLengths::Metric => (LengthStyle::Millimetre, 1),
        ReportLengths::Inches => (LengthStyle::FeetInch, 0),
    };
    let rounding = LengthRounding::Nearest;
    let input = WriteLengthInput { length_mm, style, rounding, decimals, denominator: 32 };
    write_length(&input).map_or_else(|_| format!("{length_mm} mm"), |written| written.text)
}

fn summary(plan: &Plan) -> String {
    let mut lines = vec![plan.spec.name.clone()];
    for LegShape::Rectangular(leg) in &plan.spec.body.legs {
        let [long, high, deep] = [leg.length_mm, leg.height_mm, leg.depth_mm].map(|size| length(plan, size));
        lines.push(format!("{long} long, {high} high, {deep} deep, {}", plan.spec.wood.species));
    }
    panels(plan, &mut lines);
    cuts(plan, &mut lines);
    assembly(plan, &mut lines);
    cleat(plan, &mut lines);
    hanging(plan, &mut lines);
    seams(plan, &mut lines);
    checks(plan, &mut lines);
    supplies(plan, &mut lines);
    findings(plan, &mut lines);
    lines.push("\nCautions".to_owned());
    lines.extend(plan.cautions.iter().map(|caution| format!("  {}: {}", caution.about, caution.text)));
    lines.join("\n") + "\n"
}

fn panels(plan: &Plan, lines: &mut Vec<String>) {
    lines.push("\nPanels, long point to long point, with the bevel of each edge".to_owned());
    for panel in &plan.panels {
        let [long, wide, thick] =
            [panel.blank_length_mm, panel.blank_width_mm, panel.thickness_mm].map(|size| length(plan, size));
        let bevels: Vec<_> =
            panel.edges.iter().map(|edge| format!("{} {:.1}°", edge.neighbour, edge.tilt_deg)).collect();
        lines.push(format!("  {:<9} {long} × {wide} × {thick}; {}", panel.id.to_string(), bevels.join(", ")));
    }
}

fn cuts(plan: &Plan, lines: &mut Vec<String>) {
    lines.push("\nSaw settings, panel by panel in the order of the cuts; the report has them in full".to_owned());
    for sawing in &plan.cuts {
        let [long, wide] = [sawing.blank_length_mm, sawing.blank_width_mm].map(|size| length(plan, size));
        lines.push(format!("  {}, blank {long} × {wide}", sawing.panel));
        for cut in &sawing.cuts {
            let setting = match &cut.set_up {
                Some(set_up) => setting(plan, cut, set_up),
                None if cut.kind == CutKind::Joint => "jointed edge, reference for the next".to_owned(),
                None => "this saw does not make it; see the findings".to_owned(),
            };
            lines.push(format!("    {}. {:<16} {setting}", cut.step, cut.edge));
        }
    }
}

fn setting(plan: &Plan, cut: &PanelCut, set_up: &CutSetUp) -> String {
    let down = match set_up.face_down {
        FaceDown::ShowFace => "show face",
        FaceDown::InnerFace => "inner face",
    };
    let lies = match set_up.way {
        CutWay::FlatOnTable | CutWay::OversizeThenPlane => format!("{down} down"),
        CutWay::OnEdge => format!("on edge, {down} against a tall fence"),
        CutWay::OnWedge => format!("on a wedge of {:.1}°, {down} down", set_up.wedge_deg),
        CutWay::TrackSaw => format!("track saw, {down} down"),
    };
    let mut words = vec![lies, format!("tilt {:.1}°", set_up.blade_tilt_deg)];
    match set_up.lean {
        BladeLean::Upright => {}
        BladeLean::AwayFromKept => words.push("leaning away from the kept piece".to_owned()),
        BladeLean::OverKept => words.push("leaning over the kept piece".to_owned()),
    }
    words.extend(set_up.square_first_mm.map(|first| format!("first square at {}", length(plan, first))));
    words.extend(set_up.fence_mm.map(|fence| format!("fence {}", length(plan, fence))));
    words.extend(set_up.stop_mm.map(|stop| format!("gauge {:.1}°, stop {}", cut.gauge_deg, length(plan, stop))));
    if let Some(marks) = set_up.marks {
        words.push(format!("marks {} and {}", length(plan, marks.low_end_mm), length(plan, marks.high_end_mm)));
    }
    if set_up.planing_mm > 0.0 {
        words.push(format!("then plane {}", length(plan, set_up.planing_mm)));
    }
    let rides = if cut.rides_blank.is_some() { "the blank's edge beside " } else { "" };
    format!("{}; {rides}{} rides", words.join(", "), cut.rides)
}

fn assembly(plan: &Plan, lines: &mut Vec<String>) {
    let Some(order) = &plan.assembly else { return };
    lines.push("\nOrder of assembly".to_owned());
    for step in &order.steps {
        lines.push(format!("  {}. {}: {}. {}", step.step, step.work.words(), step.panels.join(", "), step.reason));
    }
}

fn cleat(plan: &Plan, lines: &mut Vec<String>) {
    lines.push("\nCleat".to_owned());
    let Some(cleat) = &plan.cleat else {
        lines.push("  does not fit; see the findings".to_owned());
        return;
    };
    let fence = length(plan, cleat.halves.fence_leaning_away_mm);
    lines.push(format!("  rip the strip with the fence at {fence}, long face up, blade leaning away"));
    let lift = length(plan, cleat.halves.lift_mm);
    let edge = length(plan, cleat.wall_half_edge_mm);
    let lower = length(plan, cleat.wall_half_bottom_mm);
    lines.push(format!("  wall half: lower edge {lower}, edge at the wall {edge} above the underside; lift {lift}"));
    let (beam, wall) = (length(plan, cleat.beam_half_length_mm), length(plan, cleat.wall_half_length_mm));
    lines.push(format!("  cut to length: beam half {beam}, wall half {wall}"));
    if let Some(marks) = &cleat.marks {
        let screws: Vec<_> = marks.screws.iter().map(|screw| length(plan, screw.x_mm)).collect();
        let (lower, line) = (length(plan, marks.lower_edge_mm), length(plan, marks.screw_line_mm));
        lines.push(format!("  above the floor: lower edge {lower}, screws {line}"));
        lines.push(format!("  screws from the plumb line: {}", screws.join(", ")));
    }
}

/// A small change with its sign.
fn change(plan: &Plan, change_mm: f64) -> String {
    match plan.spec.lengths {
        ReportLengths::Metric => format!("{change_mm:+.2} mm"),
        ReportLengths::Inches => format!("{:+.3} in", change_mm / 25.4),
    }
}

fn seams(plan: &Plan, lines: &mut Vec<String>) {
    if let Some(movement) = &plan.movement {
        let (dry, wet) = (&movement.outer.driest, &movement.outer.wettest);
        lines.push(format!("\nThrough the year, from {:.1} % to {:.1} % moisture", dry.moisture_pct, wet.moisture_pct));
        let sizes = [
            ("length", dry.length_change_mm, wet.length_change_mm),
            ("height", dry.height_change_mm, wet.height_change_mm),
            ("depth", dry.depth_change_mm, wet.depth_change_mm),
        ];
        for (name, dry_mm, wet_mm) in sizes {
            lines.push(format!(
                "  {name}: {} when driest, {} when wettest",
                change(plan, dry_mm),
                change(plan, wet_mm)
            ));
        }
        let worst = movement.seams.iter().max_by(|one, other| one.show_opening_mm.total_cmp(&other.show_opening_mm));
        if let Some(seam) = worst {
            let opening = change(plan, seam.show_opening_mm);
            lines.push(format!("  seam {} opens at the show edge by {opening} if nothing holds it", seam.seam));
        }
        if let Some(slot) = &movement.rear_slot {
            lines.push(format!("  slot for the rear screw of a return: {}", length(plan, slot.slot_mm)));
        }
    }
    if let Some(tolerance) = &plan.tolerance {
        let worst = &tolerance.stack.worst;
        lines.push("\nGaps at the seams, from the errors of the making".to_owned());
        lines.push(format!("  bodies that need no more than burnishing: {:.0} %", 100.0 * worst.burnishable_share));
        lines.push(format!("  tilt may scatter by {:.3}° for the share wanted", tolerance.saw.tilt_sd_deg));
        let choice = &tolerance.over_tilt;
        lines.push(format!(
            "  a choice: {:.2}° more tilt closes {:.0} % at the show edge and opens the inside by {}",
            choice.over_tilt_deg,
            100.0 * choice.closed_with,
            change(plan, choice.inside_gap_mm)
        ));
    }
}

/// The order of hanging with its numbers.
fn hanging(plan: &Plan, lines: &mut Vec<String>) {
    lines.push("\nOrder of hanging".to_owned());
    for step in &plan.hanging {
        lines.push(format!("  {}. {}", step.order, step.what));
        let numbers: Vec<_> = step.numbers.iter().map(|number| quantity(plan, number)).collect();
        if !numbers.is_empty() {
            lines.push(format!("     {}", numbers.join(", ")));
        }
    }
}

fn quantity(plan: &Plan, number: &Quantity) -> String {
    match number.unit {
        "mm" if number.value.abs() < 2.0 => format!("{} {}", number.name, change(plan, number.value)),
        "mm" => format!("{} {}", number.name, length(plan, number.value)),
        "deg" => format!("{} {:.2}°", number.name, number.value),
        unit => format!("{} {:.1} {unit}", number.name, number.value).trim_end().to_owned(),
    }
}

fn checks(plan: &Plan, lines: &mut Vec<String>) {
    lines.push("\nChecks".to_owned());
    for check in &plan.checks {
        let outcome = match check.outcome {
            Outcome::Met => "met",
            Outcome::NotMet => "not met",
            Outcome::NotCovered => "not covered",
            Outcome::NotDetermined => "not determined",
        };
        let used = check.utilisation.map_or_else(|| "–".to_owned(), |used| format!("{:.0} %", 100.0 * used));
        lines.push(format!("  {outcome:<14} {used:>6}  {} ({}) [{}]", check.name, check.subject, check.clause));
    }
}

fn supplies(plan: &Plan, lines: &mut Vec<String>) {
    lines.push("\nTo buy and to lift".to_owned());
    if let Some(finish) = &plan.finish {
        let litres = finish.quantity.most.needed_l;
        let cans = finish.cans.iter().flat_map(|cans| &cans.cans).filter(|can| can.count > 0);
        let cans: Vec<_> = cans.map(|can| format!("{} × {} L", can.count, can.size_l)).collect();
        let cans = if cans.is_empty() { String::new() } else { format!(": {}", cans.join(", ")) };
        lines.push(format!(
            "  finish: up to {litres:.2} L for {:.2} m² and {} coats{cans}",
            finish.area_m2, finish.coats
        ));
    }
    lines.push(format!("  glue: {:.3} m² of mitres, one side", plan.glue.seam_area_m2));
    lines.push(format!("  mass lifted onto the cleat: {:.1} kg", plan.mass.lifted_kg));
}

fn findings(plan: &Plan, lines: &mut Vec<String>) {
    lines.push("\nFindings, the worst first".to_owned());
    if plan.findings.is_empty() {
        lines.push("  none".to_owned());
    }
    for finding in &plan.findings {
        let grade = format!("{:?}", finding.grade).to_lowercase();
        lines.push(format!("  {grade}, {}: {}", finding.subject, finding.message));
        let numbers: Vec<_> = finding.numbers.iter().map(|number| quantity(plan, number)).collect();
        if !numbers.is_empty() {
            lines.push(format!("    {}", numbers.join(", ")));
        }
        if !finding.cure.is_empty() {
            lines.push(format!("    {}", finding.cure));
        }
    }
    lines.push("\nNot checked".to_owned());
    lines.extend(plan.not_checked.iter().map(|text| format!("  {text}")));
}
