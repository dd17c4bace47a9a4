use super::*;
use crate::wood::{IndoorMonth, IndoorYear};
use proptest::prelude::*;

fn board(surface_mm_per_day: Option<f64>) -> BoardDiffusion {
    BoardDiffusion { diffusion_mm2_per_day: 10.0, thickness_mm: 20.0, faces: OpenFaces::Both, surface_mm_per_day }
}

fn progress(pace: MoisturePace, days: f64) -> MoistureProgress {
    let input =
        MoistureProgressInput { pace, from_moisture_pct: 12.0, towards_moisture_pct: 6.0, days, within_pct: 2.0 };
    moisture_progress(&input).expect("allowed")
}

fn year(humidity: [f64; 12]) -> YearClimate {
    let month = |relative_humidity_pct| IndoorMonth { temperature_c: 21.0, relative_humidity_pct };
    YearClimate::Indoor(IndoorYear { months: humidity.map(month).to_vec() })
}

#[test]
fn the_roots_are_those_of_the_textbook_on_heat_conduction() {
    // Plane wall, first root for Biot numbers 0.1, 1, 10 (tables of transient conduction, to four decimals, recalled).
    for (biot, beta) in [(0.1, 0.3111), (1.0, 0.8603), (10.0, 1.4289)] {
        assert!((root(0, Some(biot)) - beta).abs() < 5e-5, "{biot}");
    }
    assert_eq!(root(3, None), 3.0 * PI + FRAC_PI_2);
}

#[test]
fn early_and_late_forms_meet() {
    for biot in [None, Some(0.01), Some(1.0), Some(50.0), Some(1e4)] {
        let late: f64 =
            (0..TERMS).map(|n| part(n, biot)).map(|(beta, weight)| weight * exp(-beta * beta * EARLY)).sum();
        assert!((early(EARLY, biot) - (1.0 - late)).abs() < 1e-8, "{biot:?}");
    }
}

#[test]
fn a_slab_computed_by_finite_differences_comes_as_far() {
    // The same board by small steps in space and time: an independent road, good to some parts in a thousand.
    let (cells, d, l, surface) = (100_usize, 10.0, 10.0, 2.0);
    let dx = l / cells as f64;
    let dt = 0.2 * dx * dx / d;
    let mut left = vec![1.0_f64; cells];
    let steps = (3.0 / dt) as usize;
    for _ in 0..steps {
        let old = left.clone();
        for k in 0..cells {
            let inner = if k == 0 { 0.0 } else { d * (old[k - 1] - old[k]) / dx };
            // Half a cell and the surface in series.
            let outer =
                if k + 1 == cells { -old[k] / (0.5 * dx / d + 1.0 / surface) } else { d * (old[k + 1] - old[k]) / dx };
            left[k] += dt * (inner + outer) / dx;
        }
    }
    let mean = left.iter().sum::<f64>() / cells as f64;
    let found = progress(MoisturePace::BoardDiffusion(board(Some(surface))), steps as f64 * dt);
    assert!((found.share - (1.0 - mean)).abs() < 1e-3, "{} {}", found.share, 1.0 - mean);
    assert_eq!(found.biot_number, Some(2.0));
}

#[test]
fn a_sealed_face_makes_a_board_of_twice_the_thickness() {
    let one = BoardDiffusion { faces: OpenFaces::One, ..board(None) };
    let thick = BoardDiffusion { thickness_mm: 40.0, ..board(None) };
    let (one, thick) = (MoisturePace::BoardDiffusion(one), MoisturePace::BoardDiffusion(thick));
    assert_eq!(progress(one, 5.0), progress(thick, 5.0));
}

#[test]
fn a_sine_of_the_year_is_weakened_as_the_transfer_function_says() {
    // 1 / sqrt(1 + (ω τ)²), and sin(x)/x for the mean over a month and for its holding: derived.
    let omega = 2.0 * PI / 365.25;
    let sine = |k: usize| sin_cos_deg(30.0 * k as f64).0;
    let months: Vec<MonthMoisture> = (0..12)
        .map(|k| MonthMoisture {
            month: k as u32 + 1,
            temperature_c: 20.0,
            relative_humidity_pct: 40.0,
            moisture_pct: 8.0 + 2.0 * sine(k),
            table: crate::wood::SorptionTable::Within,
        })
        .collect();
    for tau in [10.0, 60.0, 300.0] {
        let pace = MoisturePace::ObservedPace(ObservedPace { time_constant_days: tau });
        let found = followed(&months, &pace);
        // First harmonic of the twelve means.
        let (mut real, mut imaginary) = (0.0, 0.0);
        for (k, value) in found.iter().enumerate() {
            let (s, c) = sin_cos_deg(30.0 * k as f64);
            real += value * c / 6.0;
            imaginary += value * s / 6.0;
        }
        let gain = (real * real + imaginary * imaginary).sqrt() / 2.0;
        let plain = 1.0 / (1.0 + omega * tau * omega * tau).sqrt();
        assert!((gain - plain).abs() < 0.03 * plain, "{tau}: {gain} {plain}");
    }
}

#[test]
fn what_is_wrong_is_told_with_its_path() {
    let pace = MoisturePace::BoardDiffusion(BoardDiffusion { diffusion_mm2_per_day: -1.0, ..board(Some(f64::NAN)) });
    let mut climate = year([40.0; 12]);
    if let YearClimate::Indoor(indoor) = &mut climate {
        indoor.months.pop();
    }
    let error = seasonal_board(&SeasonalBoardInput { climate, pace }).expect_err("three faults");
    let paths: Vec<_> = error.details().iter().map(|detail| detail.path.as_str()).collect();
    let wanted = [
        "climate.indoor.months",
        "pace.board_diffusion.diffusion_mm2_per_day",
        "pace.board_diffusion.surface_mm_per_day",
    ];
    assert_eq!(paths, wanted);
}

fn any_pace() -> impl Strategy<Value = MoisturePace> {
    let diffusion = (0.01..1000.0_f64, 1.0..150.0_f64, any::<bool>(), proptest::option::of(1e-4..1e4_f64));
    let diffusion = diffusion.prop_map(|(diffusion_mm2_per_day, thickness_mm, both, surface_mm_per_day)| {
        let faces = if both { OpenFaces::Both } else { OpenFaces::One };
        MoisturePace::BoardDiffusion(BoardDiffusion { diffusion_mm2_per_day, thickness_mm, faces, surface_mm_per_day })
    });
    let observed =
        (0.01..1e4_f64).prop_map(|days| MoisturePace::ObservedPace(ObservedPace { time_constant_days: days }));
    prop_oneof![diffusion, observed]
}

/// Numbers of a range, its ends, and any bits: often enough all of them are admitted.
fn hostile(low: f64, high: f64) -> impl Strategy<Value = f64> {
    prop_oneof![12 => low..high, 3 => Just(low), 3 => Just(high), 1 => any::<u64>().prop_map(f64::from_bits)]
}

fn hostile_pace() -> impl Strategy<Value = MoisturePace> {
    let surface = proptest::option::of(hostile(1e-4, 1e4));
    let diffusion = (hostile(0.01, 1000.0), hostile(1.0, 150.0), any::<bool>(), surface);
    let diffusion = diffusion.prop_map(|(diffusion_mm2_per_day, thickness_mm, both, surface_mm_per_day)| {
        let faces = if both { OpenFaces::Both } else { OpenFaces::One };
        MoisturePace::BoardDiffusion(BoardDiffusion { diffusion_mm2_per_day, thickness_mm, faces, surface_mm_per_day })
    });
    let observed =
        hostile(0.01, 1e4).prop_map(|days| MoisturePace::ObservedPace(ObservedPace { time_constant_days: days }));
    prop_oneof![3 => diffusion, 1 => observed]
}

proptest! {
    #[test]
    fn time_brings_the_board_nearer_and_never_past_the_balance(pace in any_pace(), t in 0.0..1e4_f64, more in 0.0..1e3_f64) {
        let (one, later) = (progress(pace, t), progress(pace, t + more));
        prop_assert!((0.0..=1.0).contains(&one.share) && later.share >= one.share - 1e-9);
        prop_assert!(one.half_days <= one.nine_tenths_days);
    }

    #[test]
    fn the_days_are_the_inverse_of_the_share(pace in any_pace()) {
        let first = progress(pace, 1.0);
        prop_assert!((progress(pace, first.half_days.min(1e5)).share - 0.5).abs() < 1e-6 || first.half_days > 1e5);
    }

    #[test]
    fn a_board_stays_within_the_year_and_keeps_its_mean(pace in any_pace(), humidity in prop::array::uniform12(5.0..90.0_f64)) {
        let found = seasonal_board(&SeasonalBoardInput { climate: year(humidity), pace }).expect("allowed");
        prop_assert!(found.driest_pct >= found.climate.driest_pct - 1e-9);
        prop_assert!(found.wettest_pct <= found.climate.wettest_pct + 1e-9);
        let mean = found.months.iter().map(|month| month.board_pct).sum::<f64>() / 12.0;
        prop_assert!((mean - found.climate.mean_pct).abs() < 1e-6, "{} {}", mean, found.climate.mean_pct);
    }

    #[test]
    fn any_numbers_give_finite_answers_or_a_fault(pace in hostile_pace(), from in hostile(0.0, 30.0), towards in hostile(0.0, 30.0), days in hostile(0.0, 1e5), within_pct in hostile(0.1, 10.0)) {
        let input = MoistureProgressInput { pace, from_moisture_pct: from, towards_moisture_pct: towards, days, within_pct };
        if let Ok(found) = moisture_progress(&input) {
            let times = [found.half_days, found.nine_tenths_days, found.acclimated_days];
            prop_assert!(times.iter().all(|time| time.is_finite() && *time >= 0.0), "{:?}", found);
            prop_assert!((0.0..=1.0).contains(&found.share), "{:?}", found);
            let (low, high) = (from.min(towards), from.max(towards));
            prop_assert!(found.moisture_pct >= low - 1e-9 && found.moisture_pct <= high + 1e-9, "{:?}", found);
            prop_assert!([found.fourier_number, found.biot_number].into_iter().flatten().all(f64::is_finite), "{:?}", found);
        }
    }

    #[test]
    fn any_numbers_give_a_finite_year_or_a_fault(pace in hostile_pace(), humidity in prop::array::uniform12(hostile(1.0, 95.0))) {
        if let Ok(found) = seasonal_board(&SeasonalBoardInput { climate: year(humidity), pace }) {
            prop_assert!(found.months.iter().all(|month| month.board_pct.is_finite() && month.board_pct >= 0.0), "{:?}", found);
            prop_assert!(found.swing_pct >= 0.0 && found.swing_share.is_finite(), "{:?}", found);
        }
    }

    #[test]
    fn a_still_year_is_still_to_the_last_digit(pace in any_pace(), humidity in 5.0..90.0_f64) {
        let found = seasonal_board(&SeasonalBoardInput { climate: year([humidity; 12]), pace }).expect("allowed");
        prop_assert_eq!((found.swing_pct, found.swing_share), (0.0, 1.0));
        prop_assert_eq!((found.driest_month, found.wettest_month), (1, 1));
    }
}
