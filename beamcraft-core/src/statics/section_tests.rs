use super::*;
use crate::statics::test_inputs::hostile;
use proptest::prelude::*;

fn rectangle(left_mm: f64, bottom_mm: f64, width_mm: f64, height_mm: f64) -> SectionPart {
    SectionPart {
        outline: PartOutline::Rectangle(SectionRectangle { left_mm, bottom_mm, width_mm, height_mm }),
        modulus_mpa: None,
        sense: PartSense::Solid,
    }
}

fn section(parts: Vec<SectionPart>) -> SectionPropertiesInput {
    SectionPropertiesInput { parts, reference_modulus_mpa: None }
}

fn polygon(points: &[(f64, f64)]) -> SectionPart {
    let points = points.iter().map(|(x_mm, y_mm)| SectionPoint { x_mm: *x_mm, y_mm: *y_mm }).collect();
    let outline = PartOutline::Polygon(SectionPolygon { points });
    SectionPart { outline, modulus_mpa: None, sense: PartSense::Solid }
}

#[test]
fn a_triangle_has_the_figures_of_every_table() {
    // b h³/36 and h b³/36 for a right triangle, product −b² h²/72 with the right angle at the lower left.
    let triangle = section_properties(&section(vec![polygon(&[(0.0, 0.0), (30.0, 0.0), (0.0, 60.0)])])).unwrap();
    assert!((triangle.area_mm2 - 900.0).abs() < 1e-9);
    assert!((triangle.centroid_x_mm - 10.0).abs() < 1e-9 && (triangle.centroid_y_mm - 20.0).abs() < 1e-9);
    assert!((triangle.ix_mm4 - 30.0 * 216_000.0 / 36.0).abs() < 1e-6);
    assert!((triangle.ixy_mm4 + 900.0 * 3600.0 / 72.0).abs() < 1e-6);
}

#[test]
fn parts_that_leave_nothing_are_refused() {
    assert_eq!(section_properties(&section(vec![])).unwrap_err().code(), ErrorCode::NoSection);
    let mut hole = rectangle(0.0, 0.0, 10.0, 10.0);
    hole.sense = PartSense::Hole;
    let both = section(vec![rectangle(0.0, 0.0, 10.0, 10.0), hole]);
    assert_eq!(section_properties(&both).unwrap_err().code(), ErrorCode::NoSection);
    let flat = section(vec![polygon(&[(0.0, 0.0), (10.0, 0.0)])]);
    assert_eq!(section_properties(&flat).unwrap_err().field(), "parts[0].outline.polygon.points");
}

#[test]
fn a_part_number_beyond_the_list_or_given_twice_is_refused() {
    let mut input = SectionStressInput {
        section: section(vec![rectangle(0.0, 0.0, 10.0, 10.0)]),
        moment_x_nmm: 0.0,
        moment_y_nmm: 0.0,
        shear_n: 1.0,
        attached: vec![1],
        seam_count: 1,
        seam_width_mm: None,
        fastener_n: None,
    };
    assert_eq!(section_stress(&input).unwrap_err().field(), "attached[0]");
    // A part attached twice would count twice in the first moment.
    input.attached = vec![0, 0];
    let twice = section_stress(&input).unwrap_err();
    assert_eq!((twice.code(), twice.field()), (ErrorCode::DuplicateField, "attached[1]"));
}

proptest! {
    #[test]
    fn moving_and_turning_round_changes_no_second_moment(
        w in 1.0..300.0_f64, h in 1.0..300.0_f64, w2 in 1.0..300.0_f64, h2 in 1.0..300.0_f64,
        dx in -500.0..500.0_f64, dy in -500.0..500.0_f64,
    ) {
        let ell = |dx: f64, dy: f64| section(vec![rectangle(dx, dy, w, h), rectangle(dx + w, dy, w2, h2)]);
        let (here, there) = (section_properties(&ell(0.0, 0.0)).unwrap(), section_properties(&ell(dx, dy)).unwrap());
        prop_assert!((here.ix_mm4 - there.ix_mm4).abs() <= 1e-8 * here.ix_mm4);
        prop_assert!((here.i_major_mm4 + here.i_minor_mm4 - here.ix_mm4 - here.iy_mm4).abs() <= 1e-9 * here.i_major_mm4);
        // The same outline as one polygon, clockwise.
        let one = polygon(&[(0.0, 0.0), (0.0, h), (w, h), (w, h2), (w + w2, h2), (w + w2, 0.0)]);
        let one = section_properties(&section(vec![one])).unwrap();
        prop_assert!((here.ixy_mm4 - one.ixy_mm4).abs() <= 1e-9 * here.i_major_mm4);
        prop_assert!((here.iy_mm4 - one.iy_mm4).abs() <= 1e-9 * here.i_major_mm4);
    }

    #[test]
    fn the_stresses_carry_the_moment(
        w in 5.0..100.0_f64, h in 5.0..100.0_f64, t in 1.0..30.0_f64, ratio in 0.1..20.0_f64, moment in -1e6..1e6_f64,
    ) {
        // Two layers of unlike modulus: linear stress in each, integrated by Simpson's rule, which is exact for it.
        let mut upper = rectangle(0.0, h, w, t);
        upper.modulus_mpa = Some(10_000.0 * ratio);
        let mut lower = rectangle(0.0, 0.0, w, h);
        lower.modulus_mpa = Some(10_000.0);
        let input = SectionStressInput {
            section: section(vec![lower, upper]), moment_x_nmm: moment, moment_y_nmm: 0.0, shear_n: 0.0,
            attached: vec![], seam_count: 1, seam_width_mm: None, fastener_n: None,
        };
        let stress = section_stress(&input).unwrap();
        let y0 = stress.properties.centroid_y_mm;
        let at = |y: f64, n: f64| -n * moment * (y - y0) / stress.properties.ix_mm4;
        let simpson = |a: f64, b: f64, n: f64| {
            let f = |y: f64| at(y, n) * (y - y0) * w;
            (b - a) / 6.0 * (f(a) + 4.0 * f(0.5 * (a + b)) + f(b))
        };
        let carried = -(simpson(0.0, h, 1.0) + simpson(h, h + t, ratio));
        prop_assert!((carried - moment).abs() <= 1e-9 * (1.0 + moment.abs()));
        let sizes = [at(0.0, 1.0), at(h, 1.0)];
        prop_assert!((stress.parts[0].greatest_mpa - sizes[0].max(sizes[1])).abs() <= 1e-9 * (1.0 + moment.abs()));
    }

    #[test]
    fn hostile_numbers_are_refused_or_give_finite_results(
        a in proptest::collection::vec((hostile(), hostile(), hostile(), hostile()), 0..3),
        points in proptest::collection::vec((hostile(), hostile()), 0..6), modulus in proptest::option::of(hostile()),
        moment in hostile(), shear in hostile(), width in proptest::option::of(hostile()), hole in any::<bool>(),
    ) {
        let mut parts: Vec<_> = a.iter().map(|one| rectangle(one.0, one.1, one.2, one.3)).collect();
        parts.push(polygon(&points));
        parts[0].modulus_mpa = modulus;
        if hole {
            parts[0].sense = PartSense::Hole;
        }
        let input = SectionStressInput {
            section: section(parts), moment_x_nmm: moment, moment_y_nmm: shear, shear_n: shear, attached: vec![0],
            seam_count: 2, seam_width_mm: width, fastener_n: width,
        };
        if let Ok(stress) = section_stress(&input) {
            prop_assert!(stress.parts.iter().all(|one| one.greatest_mpa.is_finite() && one.least_mpa.is_finite()));
            prop_assert!(stress.shear_flow_n_per_mm.is_finite());
            prop_assert!(stress.properties.modulus_top_mm3.is_finite() && stress.properties.i_minor_mm4 > 0.0);
        }
    }
}
