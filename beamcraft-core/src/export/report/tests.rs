//! The page, read back.

use super::super::samples::{self, assert_balanced};
use super::super::text::escaped;
use super::super::words;
use super::report_html;
use crate::finding::Grade;
use crate::plan::Plan;
use crate::verdict::Outcome;

fn every_plan() -> Vec<(&'static str, Plan)> {
    samples::all().into_iter().chain([("hostile", samples::hostile())]).collect()
}

#[test]
fn a_page_stands_by_itself() {
    for (name, plan) in every_plan() {
        let html = report_html(&plan);
        assert_balanced(&html);
        for foreign in ["<script", "<link", "<img", "<iframe", "url(", "@import", "NaN"] {
            assert!(!html.contains(foreign), "{name}: {foreign}");
        }
        let tags = html.split('<').filter_map(|rest| rest.split('>').next());
        for tag in tags {
            assert!(!tag.contains(" src=") && !tag.contains("href=") && !tag.contains(" on"), "{name}: {tag}");
        }
        assert!(html.contains("<meta name=\"viewport\""), "{name}");
        let year = plan.movement.as_ref().and_then(|movement| movement.year.as_ref());
        let drawings = 1
            + usize::from(plan.lift_on.is_some())
            + usize::from(year.is_some())
            + usize::from(plan.tolerance.is_some());
        assert_eq!(html.matches("<svg").count(), drawings, "{name}");
        assert_eq!(html, report_html(&plan), "{name}");
    }
}

#[test]
fn everything_the_plan_says_is_on_the_page() {
    for (name, plan) in every_plan() {
        let html = report_html(&plan);
        let has = |text: &str| assert!(html.contains(&escaped(text)), "{name}: {text}");
        plan.cautions.iter().for_each(|caution| has(caution.text));
        plan.not_checked.iter().for_each(|text| has(text));
        for finding in &plan.findings {
            has(&finding.message);
            has(&finding.cure);
        }
        for check in &plan.checks {
            has(&check.name);
            has(&check.remark);
            has(&check.clause.to_string());
            check.factors.iter().for_each(|factor| has(factor.name));
        }
        for outcome in [Outcome::Met, Outcome::NotMet, Outcome::NotCovered, Outcome::NotDetermined] {
            let count = plan.checks.iter().filter(|check| check.outcome == outcome).count();
            let shown = html.matches(&format!("\">{}</span>", words::outcome(outcome))).count();
            assert_eq!(shown, count, "{name}: {outcome:?}");
        }
        plan.panels.iter().for_each(|panel| has(&words::face(panel.id)));
    }
}

#[test]
fn the_worst_comes_first() {
    let (_, mut plan) = every_plan().into_iter().find(|(name, _)| *name == "shelf over a low duct").unwrap();
    plan.findings.reverse();
    let html = report_html(&plan);
    let places = [Grade::Stop, Grade::Caution, Grade::Note].map(|grade| {
        let card = format!("<div class=\"card {}\">", words::grade(grade));
        let end = html.find("<h2>Cautions").unwrap();
        (html[..end].find(&card), html[..end].rfind(&card))
    });
    let found: Vec<_> = places.into_iter().filter_map(|(first, last)| first.zip(last)).collect();
    assert!(found.len() >= 2);
    assert!(found.windows(2).all(|pair| pair[0].1 < pair[1].0));
}

#[test]
fn sizes_and_settings_are_those_of_the_plan() {
    let html = report_html(&samples::shelf());
    let cell = |name: &str, value: &str| {
        let short = format!("<td class=\"number\" data-name=\"{name}\"><div>{value}</div></td>");
        let long = format!("<td data-name=\"{name}\"><div>{value}</div></td>");
        assert!(html.contains(&short) || html.contains(&long), "{name}: {value}");
    };
    cell("length × width", "1830 × 185 mm");
    cell("thickness", "20 mm");
    // Both edges at 45°, show face up, blade leaning away: the width less the board.
    assert!(html.contains("fence at 165 mm, right of the blade"));
    cell("blade", "45°, leaning left, away from the fence");
    cell("leaves", "185 mm");
    cell("above the floor", "1350 mm");
    cell("from the plumb line", "900 mm");
}

#[test]
fn seasons_and_gaps_are_told_where_they_were_asked_for() {
    let (shelf, walnut) = (report_html(&samples::shelf()), report_html(&samples::walnut()));
    for html in [&shelf, &walnut] {
        assert!(html.contains("<h2>Through the year") && html.contains("<h2>Gaps at the seams"));
        assert!(html.contains("Ways of fastening a return") && html.contains("Which error matters most"));
    }
    assert!(shelf.contains("Slot for a screw at the rear") && !walnut.contains("Slot for a screw at the rear"));
    assert!(walnut.contains("6 % and 11 % moisture") && walnut.contains("glued over the whole depth"));
    let (_, plain) = every_plan().into_iter().find(|(name, _)| *name == "shallow").unwrap();
    let html = report_html(&plain);
    assert!(!html.contains("<h2>Through the year") && html.contains("give the seasons"));
}

#[test]
fn names_stay_text_and_long_ones_stay_whole() {
    let html = report_html(&samples::hostile());
    for raw in ["<script", "<img", "</title><", "\u{202e}"] {
        assert!(!html.contains(raw), "{raw}");
    }
    assert!(html.contains(&escaped("</title><script>alert(\"1\")</script>")));
    let mut plan = samples::shelf();
    plan.spec.name = "mantel ".repeat(500);
    let html = report_html(&plan);
    assert!(html.contains(&plan.spec.name));
    let title = html.split("<title>").nth(1).unwrap().split("</title>").next().unwrap();
    assert!(title.chars().count() <= 120 && title.ends_with('…'));
}

#[test]
fn a_number_that_is_none_is_a_dash() {
    let mut plan = samples::shelf();
    plan.mass.lifted_kg = f64::NAN;
    plan.checks[0].utilisation = Some(f64::INFINITY);
    let html = report_html(&plan);
    assert!(!html.contains("NaN") && !html.contains("inf %"));
    assert!(html.contains("– kg") && html.contains("– %"));
}
