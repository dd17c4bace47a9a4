use super::*;
use crate::hang::cleat_halves;
use crate::numeric::real::sin_cos_deg;
use crate::setting::ThingKind;
use crate::statics::test_inputs::hostile;
use proptest::prelude::*;
use std::collections::VecDeque;

fn board(name: &str, (out0, up0): (f64, f64), (out1, up1): (f64, f64)) -> OutlinePart {
    let corner = |out_mm, above_floor_mm| OutlinePoint { out_mm, above_floor_mm: 1000.0 + above_floor_mm };
    OutlinePart {
        name: name.to_owned(),
        left_mm: 0.0,
        right_mm: 1500.0,
        outline: vec![corner(out0, up0), corner(out1, up0), corner(out1, up1), corner(out0, up1)],
    }
}

fn thing(left_mm: f64, right_mm: f64, bottom_up_mm: f64, projection_mm: f64) -> Obstruction {
    Obstruction {
        name: "duct".to_owned(),
        kind: ThingKind::BoxedDuct,
        left_mm,
        right_mm,
        bottom_mm: 1000.0 + bottom_up_mm,
        top_mm: 2400.0,
        projection_mm,
    }
}

/// A body 200 deep and 185 high of 20 mm boards, its strip 100 by 18 mm, close under the top.
fn body(bevel_deg: f64, blunt_mm: f64) -> LiftOnInput {
    LiftOnInput {
        parts: vec![
            board("front", (180.0, 0.0), (200.0, 185.0)),
            board("top", (0.0, 165.0), (180.0, 185.0)),
            board("bottom", (0.0, 0.0), (180.0, 20.0)),
        ],
        strip: CleatHalvesInput { strip_width_mm: 100.0, thickness_mm: 18.0, bevel_deg, kerf_mm: 3.2, blunt_mm },
        beam_half_top_above_floor_mm: 1165.0,
        beam_half_left_mm: 20.0,
        beam_half_right_mm: 1480.0,
        wall_half_left_mm: 30.0,
        wall_half_right_mm: 1470.0,
        behind_mm: 0.0,
        things: vec![],
        greatest_tilt_deg: 12.0,
        tilt_step_deg: 1.0,
        slide_from_left_mm: None,
        slide_from_right_mm: None,
    }
}

fn under(bevel_deg: f64, blunt_mm: f64, room_mm: f64, projection_mm: f64) -> LiftOnInput {
    LiftOnInput { things: vec![thing(-500.0, 2000.0, 185.0 + room_mm, projection_mm)], ..body(bevel_deg, blunt_mm) }
}

// What follows is a collision test of its own: polygons moved corner by corner, and axes that part them.

type Ring = Vec<(f64, f64)>;

/// Left and right end along the wall, and the polygon.
type Stretch = (f64, f64, Ring);

/// Moving and standing polygons with their ends along the wall.
fn polygons(input: &LiftOnInput) -> (Vec<Stretch>, Vec<Stretch>) {
    let halves = cleat_halves(&input.strip).unwrap();
    let (t, flat, top) = (input.strip.thickness_mm, halves.point_flat_mm, input.beam_half_top_above_floor_mm);
    let bottom = top - halves.blunted_face_mm;
    let edge = bottom - input.strip.blunt_mm;
    let lower = edge - halves.short_face_mm;
    let point = lower + halves.blunted_face_mm;
    let beam = vec![(t, top), (0.0, top), (0.0, bottom), (flat, bottom), (t, top - halves.short_face_mm)];
    let wall = vec![(t, lower), (0.0, lower), (0.0, edge), (t - flat, point), (t, point)];
    let mut moving = vec![(input.beam_half_left_mm, input.beam_half_right_mm, beam)];
    for part in &input.parts {
        let ring = part.outline.iter().map(|corner| (corner.out_mm, corner.above_floor_mm)).collect();
        moving.push((part.left_mm, part.right_mm, ring));
    }
    let mut standing = vec![(input.wall_half_left_mm, input.wall_half_right_mm, wall)];
    let face = -input.behind_mm;
    standing.push((-1e9, 1e9, vec![(face - 900.0, -4000.0), (face, -4000.0), (face, 6000.0), (face - 900.0, 6000.0)]));
    for one in &input.things {
        let (out, low, high) = (face + one.projection_mm, one.bottom_mm, one.top_mm);
        standing.push((one.left_mm, one.right_mm, vec![(face, low), (out, low), (out, high), (face, high)]));
    }
    (moving, standing)
}

fn pivot_of(on: &LiftOn) -> [f64; 2] {
    [on.pivot.out_mm, on.pivot.above_floor_mm]
}

fn moved(ring: &[(f64, f64)], pivot: [f64; 2], frame: &LiftFrame) -> Ring {
    let (sine, cosine) = sin_cos_deg(frame.tilt_deg);
    let place = |(x, y): &(f64, f64)| {
        let (a, b) = (x - pivot[0], y - pivot[1]);
        (pivot[0] + cosine * a - sine * b + frame.out_mm, pivot[1] + sine * a + cosine * b + frame.up_mm)
    };
    ring.iter().map(place).collect()
}

/// How deep two convex polygons overlap: the least shift that parts them; 0 or less when they are apart.
fn overlap(one: &[(f64, f64)], other: &[(f64, f64)]) -> f64 {
    let mut least = f64::INFINITY;
    for ring in [one, other] {
        for k in 0..ring.len() {
            let (a, b) = (ring[k], ring[(k + 1) % ring.len()]);
            let (x, y) = (b.0 - a.0, b.1 - a.1);
            let length = (x * x + y * y).sqrt();
            if length < 1e-9 {
                continue;
            }
            let axis = (y / length, -x / length);
            let reach = |ring: &[(f64, f64)]| {
                ring.iter()
                    .map(|p| p.0 * axis.0 + p.1 * axis.1)
                    .fold((f64::MAX, f64::MIN), |(l, h), v| (l.min(v), h.max(v)))
            };
            let ((low, high), (other_low, other_high)) = (reach(one), reach(other));
            least = least.min((high - other_low).min(other_high - low));
        }
    }
    least
}

/// The deepest overlap of anything that moves with anything that stands in line with it.
fn deepest(input: &LiftOnInput, pivot: [f64; 2], frame: &LiftFrame) -> f64 {
    let (moving, standing) = polygons(input);
    let mut worst = f64::MIN;
    for (left, right, ring) in &moving {
        let ring = moved(ring, pivot, frame);
        for (other_left, other_right, other) in &standing {
            if left < other_right && other_left < right {
                worst = worst.max(overlap(&ring, other));
            }
        }
    }
    worst
}

/// Every frame and many places between neighbouring ones.
fn assert_free(input: &LiftOnInput, on: &LiftOn) {
    for pair in on.frames.windows(2) {
        for k in 0..=20 {
            let t = f64::from(k) / 20.0;
            let between = |a: f64, b: f64| a + t * (b - a);
            let frame = LiftFrame {
                out_mm: between(pair[0].out_mm, pair[1].out_mm),
                up_mm: between(pair[0].up_mm, pair[1].up_mm),
                tilt_deg: between(pair[0].tilt_deg, pair[1].tilt_deg),
            };
            let deep = deepest(input, pivot_of(on), &frame);
            assert!(deep < 2e-4, "{deep} at {frame:?} of {:?}", on.frames);
        }
    }
    let last = on.frames.last().unwrap();
    assert_eq!((last.out_mm, last.up_mm, last.tilt_deg), (0.0, 0.0, 0.0), "it ends in its place");
    // It begins wholly in front of the wall half.
    let (moving, _) = polygons(input);
    let first = on.frames.first().unwrap();
    let back =
        moving.iter().flat_map(|(_, _, ring)| moved(ring, pivot_of(on), first)).map(|p| p.0).fold(f64::MAX, f64::min);
    assert!(back >= input.strip.thickness_mm - 1e-3, "{back}");
}

/// Whether a level way exists, by flooding a raster of shifts.
fn flooded(input: &LiftOnInput, pitch: f64) -> bool {
    let (across, up) = ((input.strip.thickness_mm / pitch).ceil() as i32, (60.0 / pitch) as i32);
    let free = |(i, j): (i32, i32)| {
        let frame = LiftFrame { out_mm: f64::from(i) * pitch, up_mm: f64::from(j) * pitch, tilt_deg: 0.0 };
        deepest(input, [0.0, 0.0], &frame) < 1e-6
    };
    let mut seen = std::collections::HashSet::from([(0, 0)]);
    let mut queue = VecDeque::from([(0, 0)]);
    while let Some((i, j)) = queue.pop_front() {
        if i == across {
            return true;
        }
        for next in [(i + 1, j), (i - 1, j), (i, j + 1), (i, j - 1), (i + 1, j + 1), (i - 1, j - 1)] {
            let inside = (0..=across).contains(&next.0) && (-up..=up).contains(&next.1);
            if inside && !seen.contains(&next) && free(next) {
                seen.insert(next);
                queue.push_back(next);
            }
        }
    }
    false
}

#[test]
fn the_headroom_of_a_level_lift_is_the_overlap_of_the_points() {
    for (bevel, blunt) in [(45.0, 0.0), (45.0, 2.0), (30.0, 1.0), (20.0, 0.0), (60.0, 3.0)] {
        let input = body(bevel, blunt);
        let lift = cleat_halves(&input.strip).unwrap().lift_mm;
        let on = lift_on(&input).unwrap();
        assert_eq!((on.manner, on.outcome), (LiftManner::Level, Outcome::Met));
        assert!((on.least_headroom_level_mm.unwrap() - lift).abs() < 1e-4, "{bevel} {blunt} {on:?}");
        assert!(on.cures.is_empty() && on.findings.is_empty());
        assert_free(&input, &on);
    }
}

#[test]
fn a_shallow_thing_is_passed_along_the_seat_and_a_deep_one_asks_for_the_whole_lift() {
    // At 45 degrees a thing that stands out 10 mm is passed after a rise of 10 mm.
    assert_eq!(lift_on(&under(45.0, 0.0, 10.1, 10.0)).unwrap().manner, LiftManner::Level);
    let mut level_only = under(45.0, 0.0, 9.9, 10.0);
    level_only.greatest_tilt_deg = 0.0;
    let stuck = lift_on(&level_only).unwrap();
    assert_eq!((stuck.manner, stuck.outcome), (LiftManner::NotAtAll, Outcome::NotMet));
    assert!((stuck.missing_mm.unwrap() - 0.1).abs() < 0.02, "{stuck:?}");
    assert_eq!(lift_on(&under(45.0, 2.0, 14.01, 300.0)).unwrap().manner, LiftManner::Level);
    level_only = under(45.0, 2.0, 13.9, 300.0);
    level_only.greatest_tilt_deg = 0.0;
    assert_eq!(lift_on(&level_only).unwrap().manner, LiftManner::NotAtAll);
}

#[test]
fn each_cure_is_the_change_that_just_makes_it() {
    let mut input = under(45.0, 0.0, 12.0, 300.0);
    input.greatest_tilt_deg = 0.0;
    input.things[0].left_mm = 1200.0;
    input.slide_from_left_mm = Some(400.0);
    let on = lift_on(&input).unwrap();
    let cure = |kind: LiftCureKind| on.cures.iter().find(|cure| cure.kind == kind).unwrap();
    // Sharp points overlap by 18 mm; 6 mm are missing.
    assert!((on.missing_mm.unwrap() - 6.0).abs() < 0.02);
    assert!((cure(LiftCureKind::MountLower).amount - 6.0).abs() < 0.02);
    assert!((cure(LiftCureKind::BluntPoints).amount - 3.0).abs() < 0.02);
    // t tan b = 12: atan(12/18) = 33.69 degrees, or a strip of 12 mm.
    assert!((cure(LiftCureKind::LowerBevel).amount - 33.69).abs() < 0.02);
    assert!((cure(LiftCureKind::ThinnerStrip).amount - 12.0).abs() < 0.02);
    assert!((cure(LiftCureKind::BluntPoints).seat_width_mm.unwrap() - 12.0).abs() < 0.05);
    assert_eq!(cure(LiftCureKind::RemoveThing).thing, "duct");
    // The duct begins 300 mm left of the body's right end.
    assert_eq!(cure(LiftCureKind::SlideFromLeft).amount, 300.0);
    assert!(!on.cures.iter().any(|cure| cure.kind == LiftCureKind::SlideFromRight));
    let finding = &on.findings[0];
    assert_eq!((finding.grade, finding.code), (Grade::Stop, FindingCode::NoHeadroom));
    assert!(finding.cure.contains("33.7 degrees") && finding.cure.contains("6.0 mm lower"), "{}", finding.cure);
    assert_eq!(on.cautions.len(), 2);
}

#[test]
fn a_bottom_board_close_below_the_wall_half_holds_the_body_down() {
    let mut input = body(45.0, 2.0);
    // The wall half ends 1165 - 100 + 3.2/cos 45 above the floor; a board 5 mm below it cannot rise 14 mm.
    let lower = 165.0 - 100.0 + 3.2 * core::f64::consts::SQRT_2;
    input.parts[2] = board("bottom", (0.0, lower - 25.0), (180.0, lower - 5.0));
    input.greatest_tilt_deg = 0.0;
    let on = lift_on(&input).unwrap();
    assert_eq!((on.manner, on.least_headroom_level_mm), (LiftManner::NotAtAll, None));
    assert_eq!(on.missing_mm, None, "no headroom helps");
    // A board that stops short of the wall half does not.
    input.parts[2] = board("bottom", (40.0, lower - 25.0), (180.0, lower - 5.0));
    assert_eq!(lift_on(&input).unwrap().manner, LiftManner::Level);
}

#[test]
fn what_is_not_in_line_is_in_nobodys_way() {
    let mut input = under(45.0, 2.0, 1.0, 300.0);
    input.things[0].left_mm = 1500.0;
    assert_eq!(lift_on(&input).unwrap().manner, LiftManner::Level);
    input.things[0].left_mm = 1499.0;
    assert_ne!(lift_on(&input).unwrap().manner, LiftManner::Level);
    // An end panel beyond the wall half goes to the wall without meeting it.
    let mut end = board("left_end", (0.0, 0.0), (200.0, 185.0));
    end.right_mm = 19.0;
    input = body(45.0, 2.0);
    input.parts.push(end);
    assert_eq!(lift_on(&input).unwrap().manner, LiftManner::Level);
    input.parts[3].right_mm = 100.0;
    assert_eq!(lift_on(&input).unwrap().manner, LiftManner::MeetsInPlace);
}

#[test]
fn under_a_thing_that_is_not_much_deeper_than_the_seat_tilting_helps() {
    // Level it takes 14 mm; the front lowered, the back of the top rises less before the point is passed.
    let mut tilted = None;
    for tenths in (90..140).rev() {
        let input = under(45.0, 2.0, 0.1 * f64::from(tenths), 16.0);
        let on = lift_on(&input).unwrap();
        if on.manner == LiftManner::Tilted {
            assert_free(&input, &on);
            tilted = Some(on);
        }
    }
    let on = tilted.expect("some room is enough only with a tilt");
    assert_eq!(on.findings[0].grade, Grade::Caution);
    assert!(on.frames.iter().any(|frame| frame.tilt_deg != 0.0));
    assert!(on.swing_mm > 0.0 && on.tilt_step_deg <= 1.0);
}

#[test]
fn a_body_that_meets_something_in_its_place_is_told_so() {
    let on = lift_on(&under(45.0, 2.0, -5.0, 30.0)).unwrap();
    assert_eq!((on.manner, on.findings[0].code), (LiftManner::MeetsInPlace, FindingCode::MeetsObstruction));
    assert!(on.cures.is_empty() && on.frames.is_empty());
}

#[test]
fn packing_leaves_room_behind() {
    let mut input = under(45.0, 2.0, 14.5, 300.0);
    input.behind_mm = 6.0;
    let on = lift_on(&input).unwrap();
    assert_eq!(on.manner, LiftManner::Level);
    assert_free(&input, &on);
}

#[test]
fn every_fault_is_named_with_its_path() {
    let mut input = under(45.0, 2.0, 14.5, 300.0);
    input.parts[1].outline[0].out_mm = f64::NAN;
    input.beam_half_right_mm = 0.0;
    input.tilt_step_deg = 0.0;
    input.things[0].right_mm = -900.0;
    let faults = lift_on(&input).expect_err("refused");
    let paths: Vec<_> = faults.details().iter().map(|detail| detail.path.as_str()).collect();
    assert_eq!(paths, ["parts[1].outline[0].out_mm", "tilt_step_deg", "beam_half_right_mm", "things[0].right_mm"]);
    let mut flat = body(45.0, 2.0);
    for corner in &mut flat.parts[2].outline {
        corner.above_floor_mm = 1000.0;
    }
    assert_eq!(lift_on(&flat).expect_err("refused").field(), "parts[2].outline");
    assert_eq!(lift_on(&body(45.0, 9.0)).expect_err("refused").field(), "strip.blunt_mm");
    flat.parts.clear();
    assert_eq!(lift_on(&flat).expect_err("refused").field(), "parts");
}

#[test]
fn a_bevel_that_does_not_rise_past_the_corner_is_stuck_by_the_rest() {
    // Along a seat of 43.8 degrees the body has risen by 7.919 mm times the tangent when it has passed the thing: 0.085 mm too much.
    let (bevel, projection) = (43.795, 7.919);
    let rise = projection * crate::numeric::real::tan_deg(bevel);
    for (room, manner) in [(rise + 0.01, LiftManner::Level), (rise - 0.01, LiftManner::NotAtAll)] {
        let mut input = under(bevel, 1.0, room, projection);
        input.parts[2] = board("bottom", (0.0, 0.0), (180.0, 12.0));
        input.greatest_tilt_deg = 0.0;
        assert_eq!(lift_on(&input).unwrap().manner, manner, "{room}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn every_way_is_free_at_every_moment(
        bevel in 20.0..60.0_f64, blunt in 0.0..3.0_f64, room in 0.0..25.0_f64, projection in 1.0..260.0_f64,
        bottom in 0.0..30.0_f64, behind in 0.0..8.0_f64,
    ) {
        let mut input = under(bevel, blunt, room, projection);
        input.parts[2] = board("bottom", (bottom, 0.0), (180.0, 20.0));
        input.behind_mm = behind;
        let on = lift_on(&input).unwrap();
        if on.outcome == Outcome::Met {
            assert_free(&input, &on);
            // Under something deeper than the body the way keeps below it.
            if projection > 240.0 {
                prop_assert!(on.rise_mm.unwrap() <= room + 0.1);
            }
        }
        if let (Some(level), Some(tilted)) = (on.least_headroom_level_mm, on.least_headroom_tilted_mm) {
            prop_assert!(tilted <= level + 1e-9, "level is among the tilts");
        }
        #[cfg(feature = "json")]
        prop_assert!(crate::json::write(&on).is_ok());
    }

    #[test]
    fn a_raster_finds_a_level_way_where_the_search_does(
        bevel in 25.0..55.0_f64, room in 0.0..24.0_f64, projection in 1.0..60.0_f64, board_up in 0.0..40.0_f64,
    ) {
        let pitch = 0.5;
        // With a little more and a little less room than a raster can tell apart.
        let at = |more: f64| {
            let mut input = under(bevel, 1.0, room + more, projection - more);
            input.parts[2] = board("bottom", (0.0, board_up - more), (180.0, board_up + 12.0 - more));
            input.greatest_tilt_deg = 0.0;
            input
        };
        // A step of the raster may jump over a corner that is thinner than its pitch.
        let (wide, exact, tight) = (at(1.5), at(0.0), at(-pitch));
        prop_assume!(room > pitch && projection > 1.5);
        let level = |input: &LiftOnInput| lift_on(input).unwrap().manner == LiftManner::Level;
        if flooded(&tight, pitch) {
            prop_assert!(level(&exact), "a raster found a way");
        }
        if level(&exact) {
            prop_assert!(flooded(&wide, pitch), "a raster finds none with room to spare");
        }
    }

    #[test]
    fn more_room_never_hinders(room in 0.0..20.0_f64, more in 0.0..10.0_f64, projection in 1.0..100.0_f64) {
        let mut input = under(45.0, 2.0, room, projection);
        input.greatest_tilt_deg = 0.0;
        let mut wider = under(45.0, 2.0, room + more, projection);
        wider.greatest_tilt_deg = 0.0;
        let met = |input: &LiftOnInput| lift_on(input).unwrap().outcome == Outcome::Met;
        prop_assert!(!met(&input) || met(&wider));
    }

    #[test]
    fn hostile_numbers_are_refused_or_give_finite_results(
        numbers in proptest::collection::vec(hostile(), 14), k in 0_usize..14,
    ) {
        let mut input = under(45.0, 2.0, 13.0, 30.0);
        let other = (k * 5 + 3) % 14;
        for at in [k, other] {
            let value = numbers[at];
            match at {
                0 => input.parts[0].outline[0].out_mm = value,
                1 => input.parts[1].outline[2].above_floor_mm = value,
                2 => input.parts[2].left_mm = value,
                3 => input.strip.strip_width_mm = value,
                4 => input.strip.thickness_mm = value,
                5 => input.strip.bevel_deg = value,
                6 => input.strip.blunt_mm = value,
                7 => input.beam_half_top_above_floor_mm = value,
                8 => input.wall_half_right_mm = value,
                9 => input.behind_mm = value,
                10 => input.things[0].bottom_mm = value,
                11 => input.things[0].projection_mm = value,
                12 => input.tilt_step_deg = value,
                _ => input.greatest_tilt_deg = value,
            }
        }
        if let Ok(on) = lift_on(&input) {
            prop_assert!(on.frames.iter().all(|frame| frame.out_mm.is_finite() && frame.up_mm.is_finite()));
            #[cfg(feature = "json")]
            prop_assert!(crate::json::write(&on).is_ok());
        }
    }
}
