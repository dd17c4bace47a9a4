//! Film thickness, volume solids and spread rate of a coating that stays on the surface.

use crate::error::{Allowed, ErrorCode, Fault};
use crate::limits::{Limited, limited};

/// A dry film to be reached with a coating of known volume solids.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<FilmBuildInput>))]
pub struct FilmBuildInput {
    /// Volume solids of the coating, %; by volume, which is always less than by weight.
    pub volume_solids_pct: f64,
    /// Dry film, µm.
    pub dry_film_um: f64,
}

limited!(FilmBuildInput { volume_solids_pct: POSITIVE_PERCENT, dry_film_um: POSITIVE_FILM });

/// What a dry film takes.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct FilmBuild {
    /// Theoretical spread rate, m² per litre; without any loss.
    pub spread_m2_per_l: f64,
    /// Wet film that dries to the dry film, µm.
    pub wet_film_um: f64,
}

/// Theoretical spread rate and wet film for a dry film.
///
/// # Equation
/// ```text
/// spread = 10 VS / DFT        WFT = 100 DFT / VS
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | VS | volume solids | % | `volume_solids_pct` |
/// | DFT | dry film | µm | `dry_film_um` |
/// | WFT | wet film | µm | `wet_film_um` |
///
/// # Limits
/// For a coating that forms a film. It says nothing about stains, dyes and oils, which go into the wood.
///
/// # Errors
/// `out_of_range`, `not_finite`.
///
/// # Source
/// Film arithmetic (coatings technical note, public copy); checked by `verification/film`.
///
/// # Examples
/// ```
/// use beamcraft_core::finish::{film_build, FilmBuildInput};
/// let film = film_build(&FilmBuildInput { volume_solids_pct: 71.0, dry_film_um: 125.0 })?;
/// assert!((film.spread_m2_per_l - 5.68).abs() < 1e-9);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn film_build(input: &FilmBuildInput) -> Result<FilmBuild, Fault> {
    input.check_ranges()?;
    let FilmBuildInput { volume_solids_pct, dry_film_um } = *input;
    Ok(FilmBuild {
        spread_m2_per_l: 10.0 * volume_solids_pct / dry_film_um,
        wet_film_um: 100.0 * dry_film_um / volume_solids_pct,
    })
}

/// A coating spread at a known rate.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<FilmFromSpreadInput>))]
pub struct FilmFromSpreadInput {
    /// Spread rate, m² per litre.
    pub spread_m2_per_l: f64,
    /// Volume solids of the coating, %.
    pub volume_solids_pct: f64,
}

limited!(FilmFromSpreadInput { spread_m2_per_l: SPREAD_RATE, volume_solids_pct: POSITIVE_PERCENT });

/// The film that a spread rate leaves.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct FilmFromSpread {
    /// Wet film, µm.
    pub wet_film_um: f64,
    /// Dry film, µm.
    pub dry_film_um: f64,
}

/// Wet and dry film of a coating spread at a known rate.
///
/// # Equation
/// ```text
/// WFT = 1000 / spread        DFT = WFT VS / 100
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | spread | spread rate | m²/L | `spread_m2_per_l` |
/// | VS | volume solids | % | `volume_solids_pct` |
///
/// # Limits
/// For a coating that forms a film; what soaks into the wood is not in the film.
///
/// # Errors
/// `out_of_range`, `not_finite`.
///
/// # Source
/// Film arithmetic: one litre over one square metre stands one millimetre deep; checked by `verification/film`.
///
/// # Examples
/// ```
/// use beamcraft_core::finish::{film_from_spread, FilmFromSpreadInput};
/// let film = film_from_spread(&FilmFromSpreadInput { spread_m2_per_l: 10.0, volume_solids_pct: 43.0 })?;
/// assert!((film.wet_film_um - 100.0).abs() < 1e-9 && (film.dry_film_um - 43.0).abs() < 1e-9);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn film_from_spread(input: &FilmFromSpreadInput) -> Result<FilmFromSpread, Fault> {
    input.check_ranges()?;
    let wet_film_um = 1000.0 / input.spread_m2_per_l;
    Ok(FilmFromSpread { wet_film_um, dry_film_um: wet_film_um * input.volume_solids_pct / 100.0 })
}

/// A film measured wet and again dry.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<VolumeSolidsFromFilmsInput>))]
pub struct VolumeSolidsFromFilmsInput {
    /// Wet film, µm.
    pub wet_film_um: f64,
    /// Dry film, µm; not above the wet film.
    pub dry_film_um: f64,
}

limited!(VolumeSolidsFromFilmsInput { wet_film_um: POSITIVE_FILM, dry_film_um: FILM });

/// Volume solids found from a trial film.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct VolumeSolidsFromFilms {
    /// Volume solids of the coating, %.
    pub volume_solids_pct: f64,
}

/// Volume solids of a coating from a film drawn down on glass and measured wet and dry.
///
/// # Equation
/// ```text
/// VS = 100 DFT / WFT
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | DFT, WFT | dry and wet film | µm | `dry_film_um`, `wet_film_um` |
///
/// # Limits
/// On a ground that takes nothing up; on wood the answer comes out too low.
///
/// # Errors
/// `out_of_range`, `not_finite`; `inconsistent` when the dry film is thicker than the wet one.
///
/// # Source
/// Film arithmetic (coatings technical note, public copy); checked by `verification/film`.
///
/// # Examples
/// ```
/// use beamcraft_core::finish::{volume_solids_from_films, VolumeSolidsFromFilmsInput};
/// let trial = VolumeSolidsFromFilmsInput { wet_film_um: 100.0, dry_film_um: 50.0 };
/// assert_eq!(volume_solids_from_films(&trial)?.volume_solids_pct, 50.0);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn volume_solids_from_films(input: &VolumeSolidsFromFilmsInput) -> Result<VolumeSolidsFromFilms, Fault> {
    input.check_ranges()?;
    let VolumeSolidsFromFilmsInput { wet_film_um, dry_film_um } = *input;
    if dry_film_um > wet_film_um {
        let allowed = Allowed::Text("a dry film no thicker than the wet film");
        return Err(Fault::number(ErrorCode::Inconsistent, "dry_film_um", dry_film_um, allowed, "swap the two"));
    }
    Ok(VolumeSolidsFromFilms { volume_solids_pct: 100.0 * (dry_film_um / wet_film_um) })
}

/// A coating cut with thinner.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<ThinnedVolumeSolidsInput>))]
pub struct ThinnedVolumeSolidsInput {
    /// Volume solids of the coating as bought, %.
    pub volume_solids_pct: f64,
    /// Coating, parts by volume.
    pub coating_parts: f64,
    /// Thinner, parts by volume.
    pub thinner_parts: f64,
}

limited!(ThinnedVolumeSolidsInput { volume_solids_pct: PERCENT, coating_parts: POSITIVE_PARTS, thinner_parts: PARTS });

/// The coating after thinning.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct ThinnedVolumeSolids {
    /// Volume solids of the mixture, %.
    pub volume_solids_pct: f64,
    /// Share of the mixture that is coating.
    pub coating_share: f64,
}

/// Volume solids of a coating cut with thinner.
///
/// # Equation
/// ```text
/// VS' = VS c / (c + t)
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | VS | volume solids as bought | % | `volume_solids_pct` |
/// | c, t | coating and thinner | parts by volume | `coating_parts`, `thinner_parts` |
///
/// # Limits
/// Volumes are taken to add up. How far a coating may be thinned is for its maker to say.
///
/// # Errors
/// `out_of_range`, `not_finite`.
///
/// # Source
/// Film arithmetic; checked by `verification/film`.
///
/// # Examples
/// ```
/// use beamcraft_core::finish::{thinned_volume_solids, ThinnedVolumeSolidsInput};
/// let cut = ThinnedVolumeSolidsInput { volume_solids_pct: 25.0, coating_parts: 1.0, thinner_parts: 1.0 };
/// assert_eq!(thinned_volume_solids(&cut)?.volume_solids_pct, 12.5);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn thinned_volume_solids(input: &ThinnedVolumeSolidsInput) -> Result<ThinnedVolumeSolids, Fault> {
    input.check_ranges()?;
    let coating_share = input.coating_parts / (input.coating_parts + input.thinner_parts);
    Ok(ThinnedVolumeSolids { volume_solids_pct: input.volume_solids_pct * coating_share, coating_share })
}

/// Total dry film above which a sprayed furniture finish risks going brittle and wrinkling, µm (5 mil).
///
/// Source: finishing consultant's page on dry film thickness.
pub const FURNITURE_FILM_CEILING_UM: f64 = 127.0;

/// How a total dry film stands to the usual ceiling of 127 µm for sprayed furniture finishes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum FilmCeiling {
    /// Not above the ceiling.
    Within,
    /// Above the ceiling: the film risks going brittle and wrinkling.
    Above,
}

/// A total dry film to be reached coat by coat.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<CoatsToFilmInput>))]
pub struct CoatsToFilmInput {
    /// Total dry film wanted, µm.
    pub target_dry_um: f64,
    /// Wet film of one coat, µm.
    pub wet_um_per_coat: f64,
    /// Volume solids of the coating as applied, %.
    pub volume_solids_pct: f64,
}

limited!(CoatsToFilmInput {
    target_dry_um: POSITIVE_FILM,
    wet_um_per_coat: POSITIVE_FILM,
    volume_solids_pct: POSITIVE_PERCENT,
});

/// The coats that reach a film.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct CoatsToFilm {
    /// Number of whole coats.
    pub coats: u32,
    /// Dry film of one coat, µm.
    pub dry_um_per_coat: f64,
    /// Total dry film of the whole coats, µm.
    pub total_dry_um: f64,
    /// The total against the usual ceiling for sprayed furniture finishes.
    pub furniture_ceiling: FilmCeiling,
}

/// A target missed by less than this share of a coat needs no further coat: it is rounding, not film.
const WHOLE_COAT: f64 = 1e-9;

/// Whole coats that reach a dry film.
///
/// # Equation
/// ```text
/// d = WFT VS / 100        coats = ceil(target / d)        total = coats d
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | target | total dry film wanted | µm | `target_dry_um` |
/// | WFT | wet film of one coat | µm | `wet_um_per_coat` |
/// | VS | volume solids | % | `volume_solids_pct` |
///
/// # Limits
/// Nothing is taken off for sanding between coats. The ceiling of 127 µm is one consultant's figure for sprayed
/// furniture finishes; it says nothing about outdoor paint.
///
/// # Errors
/// `out_of_range`, `not_finite`.
///
/// # Source
/// Film arithmetic; ceiling: finishing consultant's page on dry film thickness. Checked by `verification/film`.
///
/// # Examples
/// ```
/// use beamcraft_core::finish::{coats_to_film, CoatsToFilmInput, FilmCeiling};
/// let input = CoatsToFilmInput { target_dry_um: 88.9, wet_um_per_coat: 127.0, volume_solids_pct: 20.0 };
/// let film = coats_to_film(&input)?;
/// assert_eq!((film.coats, film.furniture_ceiling), (4, FilmCeiling::Within));
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
pub fn coats_to_film(input: &CoatsToFilmInput) -> Result<CoatsToFilm, Fault> {
    input.check_ranges()?;
    let dry_um_per_coat = input.wet_um_per_coat * input.volume_solids_pct / 100.0;
    let whole = (input.target_dry_um / dry_um_per_coat - WHOLE_COAT).ceil().max(1.0);
    let total_dry_um = whole * dry_um_per_coat;
    let within = total_dry_um <= FURNITURE_FILM_CEILING_UM * (1.0 + WHOLE_COAT);
    Ok(CoatsToFilm {
        // The ranges keep it below 5e7.
        coats: whole as u32,
        dry_um_per_coat,
        total_dry_um,
        furniture_ceiling: if within { FilmCeiling::Within } else { FilmCeiling::Above },
    })
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const FILM_BUILD: crate::json::Calculation = crate::json::calculation!(
    film_build: FilmBuildInput => FilmBuild, Typed,
    "Theoretical spread rate and wet film for a dry film of a coating of known volume solids"
);

/// Registry row.
#[cfg(feature = "json")]
pub(super) const FILM_FROM_SPREAD: crate::json::Calculation = crate::json::calculation!(
    film_from_spread: FilmFromSpreadInput => FilmFromSpread, Typed,
    "Wet and dry film of a coating spread at a known rate"
);

/// Registry row.
#[cfg(feature = "json")]
pub(super) const VOLUME_SOLIDS_FROM_FILMS: crate::json::Calculation = crate::json::calculation!(
    volume_solids_from_films: VolumeSolidsFromFilmsInput => VolumeSolidsFromFilms, Typed,
    "Volume solids of a coating from a trial film measured wet and dry"
);

/// Registry row.
#[cfg(feature = "json")]
pub(super) const THINNED_VOLUME_SOLIDS: crate::json::Calculation = crate::json::calculation!(
    thinned_volume_solids: ThinnedVolumeSolidsInput => ThinnedVolumeSolids, Typed,
    "Volume solids of a coating cut with thinner"
);

/// Registry row.
#[cfg(feature = "json")]
pub(super) const COATS_TO_FILM: crate::json::Calculation = crate::json::calculation!(
    coats_to_film: CoatsToFilmInput => CoatsToFilm, Typed,
    "Whole coats that reach a dry film, and the film against the usual ceiling"
);

#[cfg(test)]
#[path = "film_tests.rs"]
mod tests;
