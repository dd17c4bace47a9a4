//! The drawings of a plan, or of a body with its cuts, by name.

use core::fmt;

use super::cross::cross_svg;
use super::drawn::Drawn;
use super::{exploded_svg, panel_svg, section_svg, set_up_svgs};
use crate::error::{Result, unknown_name};
use crate::plan::{Plan, SawnBody};
use crate::shell::FaceId;

/// A drawing.
#[derive(Clone, Copy)]
enum Drawing {
    Section,
    Exploded,
    Panel(FaceId),
    /// One sheet of the set-ups of a panel, counted from 0; how many there are.
    SetUps(FaceId, usize, usize),
}

impl fmt::Display for Drawing {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Section => f.write_str("section"),
            Self::Exploded => f.write_str("exploded"),
            Self::Panel(id) => write!(f, "panel_{id}"),
            Self::SetUps(id, _, 1) => write!(f, "set_ups_{id}"),
            Self::SetUps(id, at, _) => write!(f, "set_ups_{id}_{}", at + 1),
        }
    }
}

/// Every drawing there is.
fn all(job: Drawn<'_>) -> impl Iterator<Item = Drawing> {
    let panels = job.panels.iter().map(|panel| Drawing::Panel(panel.id));
    let set_ups = job.panels.iter().flat_map(move |panel| {
        let sheets = super::set_ups::sheet_count(job, panel.id);
        (0..sheets).map(move |at| Drawing::SetUps(panel.id, at, sheets))
    });
    [Drawing::Section, Drawing::Exploded].into_iter().chain(panels).chain(set_ups)
}

/// Names of the drawings of a plan or a [`SawnBody`]: `section`, `exploded`, `panel_front` and `set_ups_front` for every panel; where the
/// set-ups of a panel take more than one sheet `set_ups_front_1`, `set_ups_front_2`.
pub fn drawing_names<'a>(of: impl Into<Drawn<'a>>) -> Vec<String> {
    all(of.into()).map(|drawing| drawing.to_string()).collect()
}

/// A drawing of a plan by its name, one of [`drawing_names`], as an SVG sheet.
///
/// # Errors
/// `unknown_name` for any other name, with those there are.
pub fn plan_drawing_svg(plan: &Plan, name: &str) -> Result<String> {
    draw(plan.into(), name, || section_svg(plan))
}

/// A drawing of a body with its cuts by its name, one of [`drawing_names`], as an SVG sheet.
///
/// # Errors
/// `unknown_name` for any other name, with those there are.
pub fn body_drawing_svg(body: &SawnBody, name: &str) -> Result<String> {
    draw(body.into(), name, || cross_svg(body))
}

fn draw(job: Drawn<'_>, name: &str, section: impl Fn() -> String) -> Result<String> {
    let drawn = all(job).find(|drawing| drawing.to_string() == name).and_then(|drawing| match drawing {
        Drawing::Section => Some(section()),
        Drawing::Exploded => Some(exploded_svg(job)),
        Drawing::Panel(id) => panel_svg(job, id),
        Drawing::SetUps(id, at, _) => set_up_svgs(job, id).into_iter().nth(at),
    });
    drawn.ok_or_else(|| unknown_name("name", name, drawing_names(job).iter().map(String::as_str)))
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::super::read_back::{assert_legible, assert_on_the_sheet, shown};
    use super::super::samples;
    use super::*;
    use crate::error::ErrorCode;
    use crate::plan::{BeamSpec, LegShape, plan};
    use crate::shell::FaceKind;

    /// Every sheet of a plan but the section, which has its own tests.
    fn sheets(plan: &Plan) -> impl Iterator<Item = (String, String)> + '_ {
        drawing_names(plan).into_iter().skip(1).map(|name| {
            let svg = plan_drawing_svg(plan, &name).unwrap();
            (name, svg)
        })
    }

    #[test]
    fn every_name_is_a_drawing_and_no_other() {
        let plan = samples::shelf();
        let names = drawing_names(&plan);
        assert_eq!(names.len(), 2 + 2 * 5);
        assert_eq!(names[..3], ["section", "exploded", "panel_front"]);
        assert!(names.iter().any(|name| name == "set_ups_left_end"));
        for other in ["", "panel_back", "set_ups_front_1", "panel_", "SECTION"] {
            let refused = plan_drawing_svg(&plan, other).unwrap_err();
            assert_eq!(refused.details()[0].code, ErrorCode::UnknownName, "{other}");
        }
        let refused = plan_drawing_svg(&plan, "panel_frnt").unwrap_err().to_string();
        assert!(refused.contains("did you mean panel_front?"), "{refused}");
        assert_eq!(plan_drawing_svg(&plan, "section").unwrap(), section_svg(&plan));
    }

    #[test]
    fn nothing_leaves_the_sheet_and_no_text_stands_on_another() {
        for (body, plan) in samples::all().into_iter().chain([("hostile", samples::hostile())]) {
            for (name, svg) in sheets(&plan) {
                let name = format!("{body}: {name}");
                assert_on_the_sheet(&name, &svg);
                assert_legible(&name, &svg);
            }
        }
    }

    #[test]
    fn a_panel_shows_the_sizes_that_a_carpenter_works_out() {
        let plan = samples::shelf();
        let texts = shown(&plan_drawing_svg(&plan, "panel_left_end").unwrap());
        // Depth 215 and height 185 on the outside; inside two boards less across, one along.
        for text in ["215", "185", "195", "145", "20", "45°", "0°", "square", "grain", "A–A", "B–B"] {
            assert!(texts.iter().any(|one| one == text), "{text} is not in {texts:?}");
        }
        let texts = shown(&plan_drawing_svg(&samples::walnut(), "panel_top").unwrap());
        // A corner of 93°: half of it from square is 43.5°, and the end is 3° off square.
        assert!(texts.iter().any(|one| one == "cross-cut, 3° to back"), "{texts:?}");
        let texts = shown(&plan_drawing_svg(&samples::walnut(), "panel_left_end").unwrap());
        for text in ["43.5°, show face", "3°, show face"] {
            assert!(texts.iter().any(|one| one == text), "{text} is not in {texts:?}");
        }
    }

    #[test]
    fn every_cut_of_a_panel_has_its_sketch() {
        for (name, plan) in samples::all() {
            for panel in &plan.panels {
                let texts: Vec<String> = set_up_svgs(&plan, panel.id).iter().flat_map(|svg| shown(svg)).collect();
                for cut in plan.cuts.iter().filter(|sawing| sawing.panel == panel.id).flat_map(|sawing| &sawing.cuts) {
                    let heading = format!("{}. {}", cut.step, super::super::words::cut_kind(cut.kind));
                    assert!(texts.iter().any(|text| text.starts_with(&heading)), "{name}: {heading}");
                    if let Some(fence_mm) = cut.set_up.and_then(|set_up| set_up.fence_mm) {
                        let fence = plan.spec.lengths.full(fence_mm);
                        assert!(texts.iter().any(|text| text.ends_with(&fence)), "{name}: fence {fence}");
                    }
                }
            }
        }
    }

    #[test]
    fn what_comes_apart_is_numbered_once_each() {
        let plan = samples::shelf();
        let texts = shown(&exploded_svg(&plan));
        for number in 1..=5 {
            // Once on the panel and once in the list.
            assert_eq!(texts.iter().filter(|text| **text == number.to_string()).count(), 2, "{number}");
        }
    }

    #[test]
    fn a_steep_bevel_is_drawn_on_edge_or_on_a_wedge() {
        let steep = |front_mm: f64, max_tilt_deg: f64| {
            let mut spec = samples::spec("steep", samples::leg(1200.0, 200.0, 240.0, [front_mm, 20.0, 20.0]));
            spec.saw.max_tilt_deg = max_tilt_deg;
            let plan = plan(&spec).unwrap();
            let texts: Vec<String> =
                plan.panels.iter().flat_map(|panel| set_up_svgs(&plan, panel.id)).flat_map(|svg| shown(&svg)).collect();
            texts
        };
        let texts = steep(40.0, 45.0);
        // 40 against 20: 63.4° on the thinner board, its complement on the saw.
        assert!(texts.iter().any(|text| text == "tilt 26.6°"), "{texts:?}");
        assert!(texts.iter().any(|text| text.starts_with("on edge, show face against a tall fence")));
        let texts = steep(20.0, 40.0);
        assert!(texts.iter().any(|text| text == "wedge") && texts.iter().any(|text| text == "on a wedge of 5°"));
    }

    #[test]
    fn a_plan_without_panels_has_no_sheets_of_them() {
        let mut plan = samples::shelf();
        plan.panels.clear();
        assert_eq!(drawing_names(&plan), ["section", "exploded"]);
        assert_on_the_sheet("bare", &exploded_svg(&plan));
        let front = FaceId::first_leg(FaceKind::Front);
        assert!(panel_svg(&plan, front).is_none() && set_up_svgs(&plan, front).is_empty());
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(48))]

        #[test]
        fn any_body_fits_its_sheets(
            length in 50.0..5000.0_f64, height in 15.0..2000.0_f64, depth in 15.0..2000.0_f64,
            boards in prop::array::uniform3(1.0..60.0_f64), corners in prop::array::uniform2(70.0..110.0_f64),
            max_tilt_deg in 30.0..60.0_f64,
        ) {
            let limit = 0.3 * height.min(depth).min(length);
            let mut spec: BeamSpec =
                samples::spec("any", samples::leg(length, height, depth, boards.map(|mm| mm.min(limit))));
            let LegShape::Rectangular(leg) = &mut spec.body.legs[0];
            (leg.left_end.corner_deg, leg.right_end.corner_deg) = (corners[0], corners[1]);
            spec.saw.max_tilt_deg = max_tilt_deg;
            spec.cleat.screws.row_up_mm = 5.0;
            if let Ok(plan) = plan(&spec) {
                for (name, svg) in sheets(&plan) {
                    assert_on_the_sheet(&name, &svg);
                }
            }
        }
    }
}
