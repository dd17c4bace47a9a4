use super::*;
use crate::finish::hostile;
use approx::assert_relative_eq;
use proptest::prelude::*;

#[test]
fn a_dry_film_cannot_be_thicker_than_the_wet_one() {
    let swapped = VolumeSolidsFromFilmsInput { wet_film_um: 50.0, dry_film_um: 50.1 };
    assert_eq!(volume_solids_from_films(&swapped).expect_err("refused").code, ErrorCode::Inconsistent);
    let all_solids = VolumeSolidsFromFilmsInput { wet_film_um: 50.0, dry_film_um: 50.0 };
    assert_eq!(volume_solids_from_films(&all_solids).unwrap().volume_solids_pct, 100.0);
}

#[test]
fn a_target_of_exactly_whole_coats_takes_no_coat_more() {
    for coats in 1..=50_u32 {
        let target_dry_um = f64::from(coats) * (127.0 * 0.21);
        let film = coats_to_film(&CoatsToFilmInput { target_dry_um, wet_um_per_coat: 127.0, volume_solids_pct: 21.0 });
        assert_eq!(film.unwrap().coats, coats);
    }
}

#[test]
fn the_ceiling_itself_is_within() {
    let film = |target_dry_um| {
        coats_to_film(&CoatsToFilmInput { target_dry_um, wet_um_per_coat: 127.0, volume_solids_pct: 20.0 }).unwrap()
    };
    assert_eq!(film(127.0).furniture_ceiling, FilmCeiling::Within);
    assert_eq!((film(127.1).coats, film(127.1).furniture_ceiling), (6, FilmCeiling::Above));
}

#[test]
fn nothing_and_not_a_number_are_refused_by_field() {
    let none = FilmBuildInput { volume_solids_pct: 0.0, dry_film_um: 25.0 };
    assert_eq!(film_build(&none).expect_err("refused").field, "volume_solids_pct");
    let nan = FilmFromSpreadInput { spread_m2_per_l: f64::NAN, volume_solids_pct: 40.0 };
    assert_eq!(film_from_spread(&nan).expect_err("refused").code, ErrorCode::NotFinite);
}

proptest! {
    #[test]
    fn the_two_ways_round_agree(volume_solids_pct in 0.1..100.0_f64, dry_film_um in 0.2..1_000.0_f64) {
        let film = film_build(&FilmBuildInput { volume_solids_pct, dry_film_um }).unwrap();
        prop_assume!(film.spread_m2_per_l >= 0.1 && film.spread_m2_per_l <= 100.0);
        let spread = FilmFromSpreadInput { spread_m2_per_l: film.spread_m2_per_l, volume_solids_pct };
        let back = film_from_spread(&spread).unwrap();
        assert_relative_eq!(back.dry_film_um, dry_film_um, max_relative = 1e-12);
        assert_relative_eq!(back.wet_film_um, film.wet_film_um, max_relative = 1e-12);
        prop_assert!(film.wet_film_um >= dry_film_um * (1.0 - 1e-12));
    }

    #[test]
    fn thinning_twice_is_thinning_once(
        volume_solids_pct in 0.0..100.0_f64, thinner in 0.0..50.0_f64, more in 0.0..50.0_f64,
    ) {
        let cut = |volume_solids_pct, coating_parts, thinner_parts| {
            thinned_volume_solids(&ThinnedVolumeSolidsInput { volume_solids_pct, coating_parts, thinner_parts })
                .unwrap()
                .volume_solids_pct
        };
        let stepwise = cut(cut(volume_solids_pct, 1.0, thinner), 1.0 + thinner, more);
        assert_relative_eq!(stepwise, cut(volume_solids_pct, 1.0, thinner + more), max_relative = 1e-12);
    }

    #[test]
    fn whole_coats_reach_the_target_and_one_less_does_not(
        target_dry_um in 0.1..5_000.0_f64, wet_um_per_coat in 0.1..5_000.0_f64, volume_solids_pct in 0.1..100.0_f64,
    ) {
        let film = coats_to_film(&CoatsToFilmInput { target_dry_um, wet_um_per_coat, volume_solids_pct }).unwrap();
        let slack = 1e-8 * film.dry_um_per_coat + 1e-12 * target_dry_um;
        prop_assert!(film.total_dry_um >= target_dry_um - slack);
        prop_assert!(film.coats >= 1);
        prop_assert!(f64::from(film.coats - 1) * film.dry_um_per_coat <= target_dry_um);
    }

    #[test]
    fn any_numbers_give_finite_films_or_a_fault(a in hostile::number(), b in hostile::number(), c in hostile::number()) {
        if let Ok(film) = film_build(&FilmBuildInput { volume_solids_pct: a, dry_film_um: b }) {
            prop_assert!(film.spread_m2_per_l.is_finite() && film.wet_film_um.is_finite());
        }
        if let Ok(film) = film_from_spread(&FilmFromSpreadInput { spread_m2_per_l: a, volume_solids_pct: b }) {
            prop_assert!(film.wet_film_um.is_finite() && film.dry_film_um.is_finite());
        }
        if let Ok(solids) = volume_solids_from_films(&VolumeSolidsFromFilmsInput { wet_film_um: a, dry_film_um: b }) {
            prop_assert!((0.0..=100.0).contains(&solids.volume_solids_pct));
        }
        let cut = ThinnedVolumeSolidsInput { volume_solids_pct: a, coating_parts: b, thinner_parts: c };
        if let Ok(thinned) = thinned_volume_solids(&cut) {
            prop_assert!(thinned.volume_solids_pct <= a && thinned.coating_share <= 1.0);
        }
        let build = CoatsToFilmInput { target_dry_um: a, wet_um_per_coat: b, volume_solids_pct: c };
        if let Ok(film) = coats_to_film(&build) {
            prop_assert!(film.coats >= 1 && film.total_dry_um.is_finite());
        }
    }
}
