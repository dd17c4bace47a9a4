//! Which cans to buy for a number of litres.

use crate::error::{Allowed, Detail, Error, ErrorCode, Fault};
use crate::limits::{CAN_SIZE, Limited, limited};

/// Litres needed and the cans on the shelf.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<CansToBuyInput>))]
pub struct CansToBuyInput {
    /// Litres needed, L.
    pub needed_l: f64,
    /// Contents of the cans that can be had, L each; any number of each, counted in whole millilitres.
    pub can_sizes_l: Vec<f64>,
    /// Totals that differ by no more than this count as the same volume, L; 0.01 unless given, because labels round to
    /// millilitres and one gallon should not lose to four quarts over one of them.
    #[cfg_attr(feature = "json", serde(default = "label_rounding"))]
    pub same_volume_l: f64,
}

limited!(CansToBuyInput { needed_l: VOLUME, same_volume_l: SAME_VOLUME });

#[cfg(feature = "json")]
fn label_rounding() -> f64 {
    0.01
}

/// How many cans of one size.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct CansOfSize {
    /// Content of one can as counted, L: whole millilitres, rounded down.
    pub size_l: f64,
    /// Number of cans.
    pub count: u32,
}

/// The cans to buy.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct CansToBuy {
    /// Cans of each size, the largest size first; a size of which none is bought counts 0.
    pub cans: Vec<CansOfSize>,
    /// Number of cans in all.
    pub can_count: u32,
    /// Volume bought, L.
    pub bought_l: f64,
    /// Volume left over, L.
    pub leftover_l: f64,
    /// Least volume that any cans of these sizes could give, L.
    pub least_possible_l: f64,
}

/// Most can sizes in one list.
const MOST_SIZES: usize = 64;

/// Most volume steps the search walks through, and most looks at a size while walking: some tenths of a second.
const MOST_STEPS: u64 = 4_000_000;
const MOST_LOOKS: u64 = 20_000_000;

/// Binary fractions of a litre a hair beside a whole millilitre are that millilitre.
const HAIR_ML: f64 = 1e-6;

/// The cans that give the volume needed with the least volume bought, then the fewest cans, then again the least volume.
///
/// # Equation
/// ```text
/// T = Σ n_i s_i ≥ V        T ≤ T_least + same        Σ n_i least
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | V | volume needed | L | `needed_l` |
/// | s_i, n_i | content and number of the cans of one size | L, – | `can_sizes_l`, `cans` |
/// | same | difference that does not matter | L | `same_volume_l` |
///
/// The answer is exact. Among `M` cans smaller than the largest, with `M` the largest content over the common measure of
/// all contents, some always add up to a whole number of largest cans and could be swapped for fewer of them. So the best
/// choice has fewer than `M` smaller cans, all the rest are largest cans, and the search ends.
///
/// # Limits
/// Volume, not price. Contents are rounded down and the need is rounded up to whole millilitres. At most 64 sizes. A list
/// whose contents share only a very small measure, for a need of thousands of litres, is refused rather than guessed at.
///
/// # Errors
/// `out_of_range`, `not_finite`, with the place in the list; `out_of_range` for an empty or too long list;
/// `not_supported` when the search would take too long.
///
/// # Source
/// Pigeonhole argument above (derived); checked by `verification/finish` and against all combinations in the tests.
///
/// # Examples
/// ```
/// use beamcraft_core::finish::{cans_to_buy, CansToBuyInput};
/// let input = CansToBuyInput { needed_l: 1.6, can_sizes_l: vec![0.75, 2.5, 1.0], same_volume_l: 0.01 };
/// let buy = cans_to_buy(&input)?;
/// assert_eq!((buy.bought_l, buy.can_count), (1.75, 2));
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn cans_to_buy(input: &CansToBuyInput) -> Result<CansToBuy, Error> {
    let sizes_ml = checked_sizes(input)?;
    let needed_ml = (input.needed_l * 1000.0 - HAIR_ML).ceil().max(0.0) as u64;
    let same_ml = (input.same_volume_l * 1000.0 + HAIR_ML).floor() as u64;
    let measure = sizes_ml.iter().copied().fold(0, common_measure).max(1);
    let sizes: Vec<u64> = sizes_ml.iter().map(|size| size / measure).collect();
    let found = search(&sizes, needed_ml.div_ceil(measure), same_ml / measure)?;

    let litres = |steps: u64| (steps * measure) as f64 / 1000.0;
    let cans = sizes_ml.iter().zip(&found.counts);
    let cans = cans.map(|(size_ml, count)| CansOfSize { size_l: *size_ml as f64 / 1000.0, count: *count });
    let bought_l = litres(found.total);
    Ok(CansToBuy {
        cans: cans.collect(),
        can_count: found.counts.iter().sum(),
        bought_l,
        // The hair taken off the need must not come back as a negative rest.
        leftover_l: (bought_l - input.needed_l).max(0.0),
        least_possible_l: litres(found.least),
    })
}

/// The distinct contents in millilitres, largest first.
fn checked_sizes(input: &CansToBuyInput) -> Result<Vec<u64>, Error> {
    let mut faults: Vec<Detail> = input.range_faults().into_iter().map(Detail::from).collect();
    let count = input.can_sizes_l.len();
    if count == 0 || count > MOST_SIZES {
        let allowed = Allowed::Text("1 to 64 sizes");
        let cure = "list the sizes that can be had";
        faults.push(Fault::number(ErrorCode::OutOfRange, "can_sizes_l", count as f64, allowed, cure).into());
    } else {
        faults.extend(input.can_sizes_l.iter().enumerate().filter_map(|(k, size_l)| {
            let fault = CAN_SIZE.check("", *size_l).err()?;
            Some(Detail { path: format!("can_sizes_l[{k}]"), ..Detail::from(fault) })
        }));
    }
    Error::unless_empty(faults)?;
    let mut sizes: Vec<u64> = input.can_sizes_l.iter().map(|size_l| (size_l * 1000.0 + HAIR_ML) as u64).collect();
    sizes.sort_unstable_by(|a, b| b.cmp(a));
    sizes.dedup();
    Ok(sizes)
}

/// Greatest common divisor.
fn common_measure(a: u64, b: u64) -> u64 {
    let (mut a, mut b) = (a, b);
    while b != 0 {
        (a, b) = (b, a % b);
    }
    a
}

/// A choice of cans, in steps of the common measure.
struct Choice {
    counts: Vec<u32>,
    total: u64,
    least: u64,
}

/// No cans add up to this volume.
const UNREACHABLE: u32 = u32::MAX;

/// The best choice; `sizes` fall and have no common measure.
fn search(sizes: &[u64], needed: u64, same: u64) -> Result<Choice, Error> {
    let largest = sizes.first().copied().unwrap_or(1);
    let smallest = sizes.last().copied().unwrap_or(1);
    // Fewer than `largest` cans are smaller ones; what they cannot give, largest cans must.
    let by_smaller = sizes.get(1).map_or(0, |second| (largest - 1) * second);
    let sure = needed.saturating_sub(by_smaller).div_ceil(largest);
    let rest = needed.saturating_sub(sure * largest);
    // The least total is less than one smallest can above the need.
    let steps = rest + smallest + same;
    if steps > MOST_STEPS || steps * sizes.len() as u64 > MOST_LOOKS {
        return Err(too_long(sizes.len()));
    }

    // fewest[t]: fewest cans that hold exactly t.
    let mut fewest: Vec<u32> = Vec::with_capacity(steps as usize + 1);
    fewest.push(0);
    let before = |fewest: &[u32], total: u64, size: u64| -> u32 {
        let place = total.checked_sub(size).map(|place| place as usize);
        place.and_then(|place| fewest.get(place)).copied().unwrap_or(UNREACHABLE)
    };
    for total in 1..=steps {
        let best = sizes.iter().map(|size| before(&fewest, total, *size)).min();
        fewest.push(best.unwrap_or(UNREACHABLE).saturating_add(1));
    }
    let reachable = || (rest..=steps).zip(fewest.iter().skip(rest as usize)).filter(|(_, count)| **count < UNREACHABLE);
    let least = reachable().next().map_or(rest, |(total, _)| total);
    // The first of equals is the least volume.
    let best = reachable().take_while(|(total, _)| *total <= least + same).min_by_key(|(_, count)| **count);
    let chosen = best.map_or(least, |(total, _)| total);

    let mut counts = vec![0_u32; sizes.len()];
    let (mut left, mut cans) = (chosen, best.map_or(0, |(_, count)| *count));
    while cans > 0 {
        // Of equally few cans, larger ones first.
        let Some(place) = sizes.iter().position(|size| before(&fewest, left, *size) == cans - 1) else { break };
        left -= sizes.get(place).copied().unwrap_or(0);
        cans -= 1;
        if let Some(count) = counts.get_mut(place) {
            *count += 1;
        }
    }
    if let Some(count) = counts.first_mut() {
        // At most a million litres in cans of ten millilitres.
        *count += sure as u32;
    }
    Ok(Choice { counts, total: chosen + sure * largest, least: least + sure * largest })
}

#[cold]
fn too_long(count: usize) -> Error {
    Error::one(Detail {
        code: ErrorCode::NotSupported,
        path: "can_sizes_l".to_owned(),
        given: format!("{count} sizes for this need"),
        allowed: "sizes and a need that can be searched in full".to_owned(),
        cure: "round the sizes to a common measure such as 0.25 L, list fewer, or split the need".to_owned(),
    })
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const CANS_TO_BUY: crate::json::Calculation = crate::json::calculation!(
    cans_to_buy: CansToBuyInput => CansToBuy, Document,
    "The cans that give the litres needed with the least volume bought, then the fewest cans"
);

#[cfg(test)]
#[path = "cans_tests.rs"]
mod tests;
