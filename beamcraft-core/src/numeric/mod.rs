//! Numbers: transcendental functions with the same bits on every machine, sums, the normal distribution, random numbers.

pub(crate) mod lane;
pub mod normal;
pub mod random;
pub mod real;
mod root;

pub use root::bracketed_root;

/// Sum with Neumaier's compensation: the error does not grow with the number of terms.
///
/// # Source
/// A. Neumaier, ZAMM 54 (1974) 39–51 (recalled).
pub fn compensated_sum(values: impl IntoIterator<Item = f64>) -> f64 {
    let (mut sum, mut lost) = (0.0_f64, 0.0_f64);
    for value in values {
        let next = sum + value;
        lost += if sum.abs() >= value.abs() { (sum - next) + value } else { (value - next) + sum };
        sum = next;
    }
    sum + lost
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_sum_keeps_what_plain_addition_loses() {
        assert_eq!(compensated_sum([1.0, 1e100, 1.0, -1e100]), 2.0);
    }
}
