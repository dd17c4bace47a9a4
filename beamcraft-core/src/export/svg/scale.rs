//! The scale of a chart.

/// Steps of a scale between which an eye can halve.
const STEPS: [f64; 19] = [
    0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1000.0,
];

/// A scale with round steps.
#[derive(Clone, Copy)]
pub(in super::super) struct Scale {
    pub(in super::super) low: f64,
    pub(in super::super) step: f64,
    pub(in super::super) count: u32,
}

impl Scale {
    /// The scale that holds all finite values.
    pub(in super::super) fn of(values: &[f64]) -> Self {
        let finite = || values.iter().copied().filter(|value| value.is_finite());
        let (low, high) = (finite().fold(f64::MAX, f64::min), finite().fold(f64::MIN, f64::max));
        if low > high {
            return Self { low: 0.0, step: 1.0, count: 1 };
        }
        let wanted = (high - low) / 6.0;
        let step = STEPS.iter().copied().find(|step| *step >= wanted).unwrap_or(wanted);
        let low = (low / step).floor() * step;
        let count = ((high - low) / step).ceil().clamp(1.0, 12.0) as u32;
        Self { low, step, count }
    }

    pub(in super::super) fn high(self) -> f64 {
        self.low + f64::from(self.count) * self.step
    }
}
