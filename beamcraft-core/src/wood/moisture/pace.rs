//! How fast a board follows the air around it: drying, acclimation, and the lag behind the seasons.
//!
//! No published rate for a board of a room was found, so the rate is the user's: a diffusion coefficient from a test, or the time
//! constant of a board that was weighed twice. What follows from it is the solution of Fick's equation in a slab.

use super::season::{MonthMoisture, SeasonalMoisture, SeasonalMoistureInput, YearClimate, seasonal_moisture};
use crate::error::{Detail, Error, ErrorCode, Result};
use crate::limits::{faults_at, limited};
use crate::numeric::bracketed_root;
use crate::numeric::real::{degrees, erfc, exp, sin_cos_deg};
use core::f64::consts::{FRAC_PI_2, PI};

/// Days of a month of a mean year.
const MONTH_DAYS: f64 = 365.25 / 12.0;
/// Terms of the series; from a Fourier number of [`EARLY`] on the thirteenth is below 1e-17 of the whole.
const TERMS: usize = 12;
/// Terms for the seasons, where the fast ones have no say.
const SEASON_TERMS: usize = 60;
/// Fourier number below which a slab is still as good as endless.
const EARLY: f64 = 0.05;

/// Through which faces moisture comes and goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum OpenFaces {
    /// Both wide faces.
    Both,
    /// One wide face; the other is sealed.
    One,
}

/// Fick's equation in a board.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<BoardDiffusion>))]
pub struct BoardDiffusion {
    /// Diffusion coefficient through the thickness, from a test or a table of the user's, mm²/day; 1e-10 m²/s is 8.64 mm²/day.
    pub diffusion_mm2_per_day: f64,
    /// Thickness of the board, mm.
    pub thickness_mm: f64,
    /// Faces through which moisture comes and goes.
    pub faces: OpenFaces,
    /// How fast moisture passes the surface, mm/day: a coat of finish slows it; no resistance when left out, bare wood in moving air.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub surface_mm_per_day: Option<f64>,
}

limited!(BoardDiffusion {
    diffusion_mm2_per_day: DIFFUSION,
    thickness_mm: BOARD_THICKNESS,
    surface_mm_per_day: SURFACE_EMISSION,
});

/// A board that was observed: it makes 63 % of the way in this time.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<ObservedPace>))]
pub struct ObservedPace {
    /// Time constant, days.
    pub time_constant_days: f64,
}

limited!(ObservedPace { time_constant_days: DAYS_ABOVE_NONE });

/// How fast a board follows.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum MoisturePace {
    /// By a diffusion coefficient.
    BoardDiffusion(BoardDiffusion),
    /// By an observed time constant.
    ObservedPace(ObservedPace),
}

/// A board in air other than it is used to.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<MoistureProgressInput>))]
pub struct MoistureProgressInput {
    /// How fast the board follows.
    pub pace: MoisturePace,
    /// Mean moisture content at the beginning, alike through the thickness, %.
    pub from_moisture_pct: f64,
    /// Moisture content that the air leads to, %; see `equilibrium_moisture`.
    pub towards_moisture_pct: f64,
    /// Time that has passed, days.
    pub days: f64,
    /// Difference from the balance at which the board counts as acclimated, % moisture; 2 is what extension services advise.
    #[cfg_attr(feature = "json", serde(default = "acclimated"))]
    pub within_pct: f64,
}

limited!(MoistureProgressInput {
    from_moisture_pct: MOISTURE,
    towards_moisture_pct: MOISTURE,
    days: DAYS,
    within_pct: MOISTURE_DIFFERENCE,
});

#[cfg(feature = "json")]
fn acclimated() -> f64 {
    2.0
}

/// How far the board has come, and when it will be there.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct MoistureProgress {
    /// Mean moisture content after the time given, %.
    pub moisture_pct: f64,
    /// Share of the way to the balance.
    pub share: f64,
    /// Days until half of the way is made.
    pub half_days: f64,
    /// Days until nine tenths of the way are made.
    pub nine_tenths_days: f64,
    /// Days until the mean lies within the difference given; 0 when it does from the beginning.
    pub acclimated_days: f64,
    /// Diffusion time over the square of the half thickness (the thickness, when one face is sealed); absent for an observed pace.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub fourier_number: Option<f64>,
    /// Resistance of the inside over that of the surface; absent without a resistance of the surface.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub biot_number: Option<f64>,
}

/// How far a board has dried or taken up moisture after a time, and how long until it is acclimated.
///
/// # Equation
/// ```text
/// diffusion:  share = 1 − Σ w_n exp(−β_n² F)        w_n = 2 Bi² / (β_n² (β_n² + Bi² + Bi)),  β tan β = Bi
///             F = D t / l²,  Bi = S l / D,  l = half of the thickness (all of it when one face is sealed)
///             bare:  β_n = (n + 1/2) π,  w_n = 2 / β_n²
///             early (F < 0.05):  share = (exp(x²) erfc(x) − 1 + 2 x / √π) / Bi,  x = Bi √F;  bare: 2 √(F / π)
/// observed:   share = 1 − exp(−t / τ)
/// M = M_from + share (M_towards − M_from)
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | D | diffusion coefficient | mm²/day | `diffusion_mm2_per_day` |
/// | S | passage through the surface | mm/day | `surface_mm_per_day` |
/// | τ | time constant | day | `time_constant_days` |
/// | t | time | day | `days` |
///
/// # Limits
/// One diffusion coefficient for all moisture contents, moisture through the wide faces only (the ends, which let it through
/// faster, are not counted), air that stays. Without a rate of the user's nothing is computed: no published one for a board in a
/// room was found. The coefficient falls several times over between wet and dry wood and differs with the species: read the days as an
/// order of magnitude, and weigh the board. A standard of the trade asks for at least 72 h in the room before woodwork is installed; whether that is enough
/// for a thick board this answers.
///
/// # Errors
/// `out_of_range`, `not_finite`, each with its path.
///
/// # Source
/// J. Crank, The Mathematics of Diffusion, plane sheet and half-space with surface resistance (recalled); the same equations stand in
/// textbooks on heat conduction, whose tables check them. Difference of 2 %: extension service (seen, as trade pages quote it). Checked by
/// `verification/pace`.
///
/// # Examples
/// ```
/// use beamcraft_core::wood::{moisture_progress, BoardDiffusion, MoisturePace, MoistureProgressInput, OpenFaces};
/// let board = BoardDiffusion {
///     diffusion_mm2_per_day: 10.0, thickness_mm: 20.0, faces: OpenFaces::Both, surface_mm_per_day: None,
/// };
/// let progress = moisture_progress(&MoistureProgressInput {
///     pace: MoisturePace::BoardDiffusion(board), from_moisture_pct: 12.0, towards_moisture_pct: 7.0, days: 2.0, within_pct: 2.0,
/// })?;
/// // Half of the way after 0.197 l²/D.
/// assert!((progress.half_days - 1.967).abs() < 0.001 && progress.moisture_pct < 9.5);
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn moisture_progress(input: &MoistureProgressInput) -> Result<MoistureProgress> {
    let mut faults = faults_at("", input);
    faults.extend(input.pace.faults().into_iter().map(|fault| fault.within("pace")));
    Error::unless_empty(faults)?;
    let course = Course::of(&input.pace);
    let way_pct = input.towards_moisture_pct - input.from_moisture_pct;
    let share = course.share(input.days);
    let wanted = if way_pct.abs() <= input.within_pct { 0.0 } else { 1.0 - input.within_pct / way_pct.abs() };
    Ok(MoistureProgress {
        moisture_pct: input.from_moisture_pct + share * way_pct,
        share,
        half_days: course.days(0.5),
        nine_tenths_days: course.days(0.9),
        acclimated_days: course.days(wanted),
        fourier_number: course.fourier_per_day.map(|rate| rate * input.days),
        biot_number: course.biot,
    })
}

impl MoisturePace {
    /// Every fault of the numbers.
    pub(crate) fn faults(&self) -> Vec<Detail> {
        match self {
            MoisturePace::BoardDiffusion(board) => faults_at("board_diffusion", board),
            MoisturePace::ObservedPace(observed) => faults_at("observed_pace", observed),
        }
    }
}

/// A way to the balance as a sum of decaying parts.
struct Course {
    /// Fourier number a day; absent for an observed pace.
    fourier_per_day: Option<f64>,
    biot: Option<f64>,
    /// Time constant of the slowest part, days.
    slowest_days: f64,
    time_constant_days: f64,
}

impl Course {
    fn of(pace: &MoisturePace) -> Self {
        match pace {
            MoisturePace::BoardDiffusion(board) => {
                let inside_mm = match board.faces {
                    OpenFaces::Both => 0.5 * board.thickness_mm,
                    OpenFaces::One => board.thickness_mm,
                };
                let fourier_per_day = board.diffusion_mm2_per_day / (inside_mm * inside_mm);
                let biot = board.surface_mm_per_day.map(|surface| surface * inside_mm / board.diffusion_mm2_per_day);
                let beta = root(0, biot);
                let slowest_days = 1.0 / (beta * beta * fourier_per_day);
                Self { fourier_per_day: Some(fourier_per_day), biot, slowest_days, time_constant_days: 0.0 }
            }
            MoisturePace::ObservedPace(observed) => Self {
                fourier_per_day: None,
                biot: None,
                slowest_days: observed.time_constant_days,
                time_constant_days: observed.time_constant_days,
            },
        }
    }

    /// Share of the way after some days.
    fn share(&self, days: f64) -> f64 {
        let Some(rate) = self.fourier_per_day else { return 1.0 - exp(-days / self.time_constant_days) };
        let fourier = rate * days;
        if fourier < EARLY {
            return early(fourier, self.biot);
        }
        let left: f64 =
            (0..TERMS).map(|n| part(n, self.biot)).map(|(beta, weight)| weight * exp(-beta * beta * fourier)).sum();
        (1.0 - left).clamp(0.0, 1.0)
    }

    /// Days until a share of the way is made.
    fn days(&self, share: f64) -> f64 {
        if share <= 0.0 {
            return 0.0;
        }
        // After forty time constants of the slowest part nothing is left that a number could hold.
        bracketed_root(|days| self.share(days) - share, 0.0, 40.0 * self.slowest_days)
            .unwrap_or(40.0 * self.slowest_days)
    }

    /// Time constants of the parts with their weights; what is left of 1 follows at once.
    fn parts(&self) -> Vec<(f64, f64)> {
        let Some(rate) = self.fourier_per_day else { return vec![(self.time_constant_days, 1.0)] };
        let parts = (0..SEASON_TERMS).map(|n| part(n, self.biot));
        parts.map(|(beta, weight)| (1.0 / (beta * beta * rate), weight)).collect()
    }
}

/// Root of the n-th part, and its weight.
fn part(n: usize, biot: Option<f64>) -> (f64, f64) {
    let beta = root(n, biot);
    let square = beta * beta;
    let weight = match biot {
        None => 2.0 / square,
        // Divided through by Bi², so that neither end of its range overflows.
        Some(biot) => 2.0 / (square * (square / biot / biot + 1.0 + 1.0 / biot)),
    };
    (beta, weight)
}

/// The n-th root of β tan β = Bi, from zero; of a bare face (n + 1/2) π.
fn root(n: usize, biot: Option<f64>) -> f64 {
    let (low, high) = (n as f64 * PI, n as f64 * PI + FRAC_PI_2);
    let Some(biot) = biot else { return high };
    let excess = |beta: f64| {
        let (sine, cosine) = sin_cos_deg(degrees(beta));
        beta * sine - biot * cosine
    };
    bracketed_root(excess, low, high).unwrap_or(high)
}

/// Share of the way while the slab is as good as endless.
fn early(fourier: f64, biot: Option<f64>) -> f64 {
    let root_pi = PI.sqrt();
    let bare = 2.0 * fourier.sqrt() / root_pi;
    let Some(biot) = biot else { return bare };
    let x = biot * fourier.sqrt();
    if x < 0.01 {
        // exp(x²) erfc(x) by its series, of which the first two terms cancel.
        return x * x * (1.0 - x * (4.0 / (3.0 * root_pi) - 0.5 * x)) / biot;
    }
    let tail = if x < 20.0 { exp(x * x) * erfc(x) } else { (1.0 - 0.5 / (x * x)) / (x * root_pi) };
    (tail - 1.0 + 2.0 * x / root_pi) / biot
}

/// A board through the year.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
pub struct SeasonalBoardInput {
    /// Air of the year.
    pub climate: YearClimate,
    /// How fast the board follows.
    pub pace: MoisturePace,
}

/// The board in one month.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct BoardMonth {
    /// Month, 1 to 12.
    pub month: u32,
    /// Moisture content that the month's air leads to, %.
    pub balance_pct: f64,
    /// Mean moisture content of the board over the month, %.
    pub board_pct: f64,
}

/// A board that lags behind the seasons.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct SeasonalBoard {
    /// Twelve months, January first.
    pub months: Vec<BoardMonth>,
    /// Month in which the board is driest, 1 to 12; the first of several.
    pub driest_month: u32,
    /// Its moisture content then, %.
    pub driest_pct: f64,
    /// Month in which the board is wettest, 1 to 12; the first of several.
    pub wettest_month: u32,
    /// Its moisture content then, %.
    pub wettest_pct: f64,
    /// Swing of the board, % moisture.
    pub swing_pct: f64,
    /// Swing of the board over that of the balance; 1 in a still year.
    pub swing_share: f64,
    /// Moisture of the year's air.
    pub climate: SeasonalMoisture,
}

/// Moisture content of a board that follows the seasons at its own pace, year after year.
///
/// # Equation
/// ```text
/// each part of moisture_progress: τ_n = l² / (β_n² D), weight w_n; what is left of 1 follows at once
/// x_m = a x_(m−1) + (1 − a) M_m,  a = exp(−T/τ),  x_0 = x_12        mean over the month: M_m + (x_(m−1) − M_m) (1 − a) τ/T
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | M_m | balance of month m, from `seasonal_moisture` | % | `balance_pct` |
/// | T | length of a month, 365.25/12 | day | – |
///
/// # Limits
/// The balance of a month holds through the month. Otherwise as [`moisture_progress`] and
/// [`seasonal_moisture`](super::seasonal_moisture).
///
/// # Errors
/// Those of both, each with its path.
///
/// # Source
/// Crank, as [`moisture_progress`] (recalled); periodic state of a first-order lag: derived — checked by `verification/pace`.
///
/// # Examples
/// ```
/// use beamcraft_core::wood::*;
/// let humidity = [25.0, 25.0, 30.0, 35.0, 45.0, 55.0, 60.0, 60.0, 50.0, 40.0, 30.0, 25.0];
/// let months = humidity.map(|relative_humidity_pct| IndoorMonth { temperature_c: 21.1, relative_humidity_pct });
/// let board = seasonal_board(&SeasonalBoardInput {
///     climate: YearClimate::Indoor(IndoorYear { months: months.to_vec() }),
///     pace: MoisturePace::ObservedPace(ObservedPace { time_constant_days: 60.0 }),
/// })?;
/// assert!(board.swing_share < 0.8 && board.wettest_month == 9);
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn seasonal_board(input: &SeasonalBoardInput) -> Result<SeasonalBoard> {
    let mut faults = Vec::new();
    let climate = seasonal_moisture(&SeasonalMoistureInput { climate: input.climate.clone() });
    let climate = climate.map_err(|error| faults.extend(error.details().iter().cloned())).ok();
    faults.extend(input.pace.faults().into_iter().map(|fault| fault.within("pace")));
    Error::unless_empty(faults)?;
    let Some(climate) = climate else {
        return Err(crate::error::Fault::plain(ErrorCode::MissingField, "climate", "a year", "").into());
    };
    let board = followed(&climate.months, &input.pace);
    let months: Vec<BoardMonth> = climate
        .months
        .iter()
        .zip(board)
        .map(|(month, board_pct)| BoardMonth { month: month.month, balance_pct: month.moisture_pct, board_pct })
        .collect();
    let (mut driest, mut wettest) = ((0, f64::MAX), (0, f64::MIN));
    for month in &months {
        if month.board_pct < driest.1 {
            driest = (month.month, month.board_pct);
        }
        if month.board_pct > wettest.1 {
            wettest = (month.month, month.board_pct);
        }
    }
    let swing_pct = wettest.1 - driest.1;
    Ok(SeasonalBoard {
        months,
        driest_month: driest.0,
        driest_pct: driest.1,
        wettest_month: wettest.0,
        wettest_pct: wettest.1,
        swing_pct,
        swing_share: if climate.swing_pct > 0.0 { swing_pct / climate.swing_pct } else { 1.0 },
        climate,
    })
}

/// Mean moisture content of a board in each month, at its pace.
fn followed(months: &[MonthMoisture], pace: &MoisturePace) -> Vec<f64> {
    // Differences from the first month, so that a still year is still to the last digit.
    let base_pct = months.first().map_or(0.0, |month| month.moisture_pct);
    let balance: Vec<f64> = months.iter().map(|month| month.moisture_pct - base_pct).collect();
    let mut board = vec![0.0; balance.len()];
    let mut left = 1.0;
    for (time_constant_days, weight) in Course::of(pace).parts() {
        left -= weight;
        for (sum, value) in board.iter_mut().zip(lagged(&balance, time_constant_days)) {
            *sum += weight * value;
        }
    }
    // A rounding below nothing is nothing.
    let left = left.max(0.0);
    board.iter_mut().zip(&balance).for_each(|(sum, value)| *sum += left * value + base_pct);
    board
}

/// A first-order lag in its periodic state: means over the months.
fn lagged(balance: &[f64], time_constant_days: f64) -> Vec<f64> {
    let x = MONTH_DAYS / time_constant_days;
    let a = exp(-x);
    // (1 − a) / x, without the cancellation of a slow lag.
    let mean = if x < 1e-4 { 1.0 - x * (0.5 - x / 6.0) } else { (1.0 - a) / x };
    // The state at the end of the year: the months weighted by how long ago they were.
    let (mut weights, mut sum, mut power) = (0.0, 0.0, 1.0);
    for value in balance.iter().rev() {
        weights += power;
        sum += power * value;
        power *= a;
    }
    let mut state = sum / weights;
    let mut means = Vec::with_capacity(balance.len());
    for value in balance {
        means.push(value + (state - value) * mean);
        state = a * state + (1.0 - a) * value;
    }
    means
}

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::wood) const MOISTURE_PROGRESS: crate::json::Calculation = crate::json::calculation!(
    moisture_progress: MoistureProgressInput => MoistureProgress, Document,
    "How far a board has dried or taken up moisture after a time, and when it is acclimated"
);

/// Registry row.
#[cfg(feature = "json")]
pub(in crate::wood) const SEASONAL_BOARD: crate::json::Calculation = crate::json::calculation!(
    seasonal_board: SeasonalBoardInput => SeasonalBoard, Document,
    "Moisture content of a board that follows the seasons at its own pace"
);

#[cfg(test)]
#[path = "pace_tests.rs"]
mod tests;
