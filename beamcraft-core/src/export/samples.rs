//! Plans that the tests of the exports are run on.

use crate::finish::{ApplicationMethod, FinishName};
use crate::frame::GluePace;
use crate::movement::{BoardCut, GlueFamily};
use crate::plan::{
    AccuracySpec, BeamSpec, BodySpec, CleatSpec, CoatedFaces, FinishSpec, FrameSpec, LegShape, LoadSpec, MoistureRange,
    Plan, ReportLengths, ReturnFixing, SeasonClimate, SeasonsSpec, SiteSpec, WoodSpec, plan,
};
use crate::saw::SawSpec;
use crate::setting::{BodyPlace, MeasuredStuds, Obstruction, StudLayout, StudWood, Wall};
use crate::shell::{EndKind, Leg, LegBoard, LegEnd, LongFace};
use crate::tolerance::{SeamHold, TiltSetting};
use crate::wood::{IndoorMonth, IndoorYear};

/// A straight body with returns at both ends, its boards front, top and bottom.
pub(super) fn leg(length_mm: f64, height_mm: f64, depth_mm: f64, boards_mm: [f64; 3]) -> Leg {
    let faces = [LongFace::Front, LongFace::Top, LongFace::Bottom];
    let boards = faces.into_iter().zip(boards_mm).filter(|(_, thickness)| *thickness > 0.0);
    let end = LegEnd { kind: EndKind::ReturnPanel, thickness_mm: Some(boards_mm[0]), corner_deg: 90.0 };
    Leg {
        leg: 1,
        length_mm,
        height_mm,
        depth_mm,
        boards: boards.map(|(face, thickness_mm)| LegBoard { face, thickness_mm }).collect(),
        left_end: end,
        right_end: end,
        butts: Vec::new(),
    }
}

pub(super) fn spec(name: &str, leg: Leg) -> BeamSpec {
    BeamSpec {
        fixing: None,
        beamcraft_spec: 1,
        name: name.to_owned(),
        lengths: ReportLengths::Metric,
        body: BodySpec { legs: vec![LegShape::Rectangular(leg)] },
        wood: WoodSpec { species: "white ash".to_owned(), figures: None, moisture_pct: 8.0 },
        seasons: None,
        accuracy: None,
        saw: SawSpec::default(),
        glue_up: GluePace::default(),
        frame: FrameSpec::default(),
        cleat: CleatSpec::default(),
        site: None,
        load: LoadSpec::default(),
        finish: None,
    }
}

pub(super) fn obstruction(name: &str, left_mm: f64, right_mm: f64, bottom_mm: f64, projection_mm: f64) -> Obstruction {
    Obstruction {
        name: name.to_owned(),
        kind: Default::default(),
        left_mm,
        right_mm,
        bottom_mm,
        top_mm: bottom_mm + 800.0,
        projection_mm,
    }
}

pub(super) fn site(obstructions: Vec<Obstruction>) -> SiteSpec {
    SiteSpec {
        services: None,
        place: BodyPlace { left_end_mm: 35.0, bottom_above_floor_mm: 1350.0 },
        wall: Some(Wall {
            studs: StudLayout::Measured(MeasuredStuds { centres_mm: vec![300.0, 900.0, 1500.0] }),
            stud_width_mm: 45.0,
            stud_depth_mm: 95.0,
            stud_wood: StudWood { combination: Some("Spruce-Pine-Fir".to_owned()), specific_gravity: None },
            lining_thickness_mm: 12.5,
        }),
        survey: None,
        obstructions,
        opening: None,
        appliance: None,
        hearth_out_mm: 0.0,
        chart_datum_above_floor_mm: None,
        clearance_rules: Vec::new(),
        own_clearance_rules: Vec::new(),
    }
}

fn finish() -> FinishSpec {
    FinishSpec {
        class: FinishName::OilPolyurethane,
        method: ApplicationMethod::Brush,
        coats: 3,
        spread_m2_per_l: None,
        transfer_efficiency: None,
        other_loss: 0.0,
        can_sizes_l: vec![0.375, 0.75],
        coated: CoatedFaces::Show,
    }
}

/// Twelve months of a heated room.
fn seasons() -> SeasonsSpec {
    let humidity = [30.0, 30.0, 35.0, 40.0, 45.0, 50.0, 55.0, 55.0, 50.0, 45.0, 35.0, 30.0];
    let months = humidity.map(|relative_humidity_pct| IndoorMonth { temperature_c: 21.0, relative_humidity_pct });
    SeasonsSpec {
        climate: SeasonClimate::Indoor(IndoorYear { months: months.to_vec() }),
        made_moisture_pct: None,
        cut: BoardCut::FlatSawn,
        ring_angle_deg: None,
        returns: ReturnFixing::GluedFront,
        glued_front_mm: 50.0,
        slot_shank_mm: 4.0,
        tolerated_mm: 0.3,
        glue: GlueFamily::PolyvinylAcetate,
        seam_temperature_c: Some(45.0),
    }
}

fn accuracy() -> AccuracySpec {
    AccuracySpec {
        tilt_sd_deg: 0.1,
        setting: TiltSetting::OneForBoth,
        width_sd_mm: 0.1,
        length_sd_mm: 0.15,
        thickness_sd_mm: 0.1,
        cup_sd_mm: 0.1,
        bow_sd_mm: 0.0,
        corner_sd_deg: 0.05,
        hold: SeamHold::HeldByInnerFrame,
        over_tilt_deg: 0.0,
        burnish_gap_mm: 0.1,
        filler_gap_mm: 0.3,
        wanted_share: 0.95,
        samples: 2_000,
        seed: 1,
    }
}

/// The shelf beam of the guide: metric, a wall with studs, a duct above it away from mid length.
pub(super) fn shelf() -> Plan {
    let mut shelf = spec("Ash shelf beam", leg(1830.0, 185.0, 215.0, [20.0; 3]));
    shelf.site = Some(site(vec![obstruction("boxed cable duct", 1200.0, 1380.0, 1580.0, 90.0)]));
    shelf.finish = Some(finish());
    shelf.seasons = Some(seasons());
    shelf.accuracy = Some(accuracy());
    plan(&shelf).unwrap()
}

/// A beam in feet and inches between splayed walls, a moulding close above it.
pub(super) fn walnut() -> Plan {
    let mut body = leg(2209.8, 184.15, 241.3, [20.6375; 3]);
    (body.left_end.corner_deg, body.right_end.corner_deg) = (93.0, 87.0);
    let mut walnut = spec("Walnut beam", body);
    walnut.lengths = ReportLengths::Inches;
    walnut.wood.species = "black walnut".to_owned();
    walnut.cleat.strip_width_mm = 82.55;
    walnut.cleat.thickness_mm = 19.05;
    let range = MoistureRange { driest_pct: 6.0, wettest_pct: 11.0 };
    walnut.seasons = Some(SeasonsSpec {
        climate: SeasonClimate::MoistureRange(range),
        returns: ReturnFixing::GluedAll,
        ..seasons()
    });
    walnut.accuracy = Some(AccuracySpec { hold: SeamHold::DrawnTight, ..accuracy() });
    walnut.site = Some(site(vec![obstruction("moulding", -500.0, 3000.0, 1556.0, 101.6)]));
    plan(&walnut).unwrap()
}

/// Every sample with its name: the two beams, then bodies at the ends of what can be made.
pub(super) fn all() -> Vec<(&'static str, Plan)> {
    let one = |name: &'static str, leg: Leg, change: fn(&mut BeamSpec)| {
        let mut spec = spec(name, leg);
        change(&mut spec);
        (name, plan(&spec).unwrap())
    };
    vec![
        ("shelf", shelf()),
        ("walnut", walnut()),
        one("shallow", leg(1200.0, 120.0, 400.0, [18.0; 3]), |spec| {
            spec.cleat.strip_width_mm = 60.0;
            spec.cleat.screws.row_up_mm = 10.0;
        }),
        one("tall", leg(1500.0, 600.0, 120.0, [22.0; 3]), |spec| {
            spec.site = Some(site(vec![obstruction("beam", 0.0, 3000.0, 1965.0, 300.0)]));
        }),
        one("thick boards", leg(1600.0, 200.0, 180.0, [45.0; 3]), |spec| {
            spec.cleat.strip_width_mm = 70.0;
            spec.cleat.screws.row_up_mm = 10.0;
        }),
        one("unequal boards", leg(1600.0, 200.0, 250.0, [40.0, 20.0, 12.0]), |spec| {
            spec.lengths = ReportLengths::Inches;
            spec.site = Some(site(Vec::new()));
        }),
        one("open bottom", leg(1800.0, 150.0, 200.0, [20.0, 20.0, 0.0]), |spec| spec.site = Some(site(Vec::new()))),
        one("front only", leg(900.0, 90.0, 60.0, [20.0, 0.0, 0.0]), |_| ()),
        one("tiny", leg(60.0, 20.0, 20.0, [2.0; 3]), |spec| {
            spec.cleat.strip_width_mm = 12.0;
            spec.cleat.thickness_mm = 3.0;
            spec.cleat.blunt_mm = 0.2;
            spec.cleat.screws.row_up_mm = 1.0;
        }),
        one("huge", leg(20_000.0, 2_000.0, 2_000.0, [150.0; 3]), |spec| spec.site = Some(site(Vec::new()))),
        one("boxed in", leg(1000.0, 200.0, 200.0, [20.0; 3]), |spec| {
            let LegShape::Rectangular(leg) = &mut spec.body.legs[0];
            leg.boards.push(LegBoard { face: LongFace::Back, thickness_mm: 20.0 });
        }),
        one("shelf over a low duct", leg(1830.0, 185.0, 215.0, [20.0; 3]), |spec| {
            spec.site = Some(site(vec![
                obstruction("duct in the way", 500.0, 1500.0, 1500.0, 60.0),
                obstruction("lintel close above", 500.0, 1500.0, 1545.0, 500.0),
            ]));
        }),
    ]
}

/// A plan full of names that try to be markup, and of long ones.
pub(super) fn hostile() -> Plan {
    let name = "</title><script>alert(\"1\")</script>\u{202e}&amp;'".to_owned();
    let mut spec = spec(&name, leg(1830.0, 185.0, 215.0, [20.0; 3]));
    spec.site = Some(site(vec![
        obstruction(&format!("<img src=x onerror=alert(1)>{name}"), 0.0, 3000.0, 1560.0, 100.0),
        obstruction(&"very long name ".repeat(200), 0.0, 3000.0, 1570.0, 100.0),
    ]));
    spec.finish = Some(finish());
    plan(&spec).unwrap()
}

/// Stops where an element of markup is not closed, or closed in the wrong order.
pub(super) fn assert_balanced(markup: &str) {
    const VOID: [&str; 3] = ["meta", "br", "!DOCTYPE"];
    let mut open: Vec<&str> = Vec::new();
    for (at, _) in markup.match_indices('<') {
        let tag = &markup[at + 1..at + markup[at..].find('>').expect("a tag that ends")];
        let name = tag.trim_start_matches('/').split([' ', '\n', '/']).next().unwrap();
        if tag.starts_with('/') {
            assert_eq!(open.pop(), Some(name), "{}", &markup[at.saturating_sub(200)..at]);
        } else if !(tag.ends_with('/') || VOID.contains(&name)) {
            open.push(name);
        }
    }
    assert!(open.is_empty(), "{open:?}");
}
