//! Transcendental functions with the same bits on every machine.
//!
//! All of them go through the `libm` crate; the standard library's call the platform's, which differ in the last place
//! on 3 % to 17 % of arguments. The functions in degrees are exact where the exact value is a machine number
//! (`tan_deg(45.0) == 1.0`), so that a fence for a 45° bevel comes out as the whole fraction a workshop expects.

use core::f64::consts::PI;

/// Radians of an angle in degrees.
#[inline]
pub fn radians(degrees: f64) -> f64 {
    degrees * (PI / 180.0)
}

/// Degrees of an angle in radians.
#[inline]
pub fn degrees(radians: f64) -> f64 {
    radians * (180.0 / PI)
}

/// Sine and cosine of an angle in degrees; exact at multiples of 30° (sine) and 90°.
#[inline]
pub fn sin_cos_deg(angle_deg: f64) -> (f64, f64) {
    // The remainder is exact, so a huge angle loses nothing but its own last digits.
    let turns = libm::fmod(angle_deg, 360.0);
    let turns = if turns < 0.0 { turns + 360.0 } else { turns };
    let quarter = libm::floor((turns + 45.0) / 90.0);
    let (sine, cosine) = octant(turns - 90.0 * quarter);
    match quarter as u8 {
        1 => (cosine, -sine),
        2 => (-sine, -cosine),
        3 => (-cosine, sine),
        _ => (sine, cosine),
    }
}

/// Sine and cosine of an angle within ±45°.
#[inline]
fn octant(angle_deg: f64) -> (f64, f64) {
    let angle_rad = radians(angle_deg);
    let sine = if angle_deg.abs() == 30.0 { 0.5 * angle_deg.signum() } else { libm::sin(angle_rad) };
    if angle_deg.abs() == 45.0 {
        return (core::f64::consts::FRAC_1_SQRT_2 * angle_deg.signum(), core::f64::consts::FRAC_1_SQRT_2);
    }
    (sine, libm::cos(angle_rad))
}

/// Sine of an angle in degrees.
#[inline]
pub fn sin_deg(angle_deg: f64) -> f64 {
    // cos 60° reduces to sin 30° and the other way round, so both are exactly one half.
    sin_cos_deg(angle_deg).0
}

/// Cosine of an angle in degrees.
#[inline]
pub fn cos_deg(angle_deg: f64) -> f64 {
    sin_cos_deg(angle_deg).1
}

/// Tangent of an angle in degrees; exact at multiples of 45°, ±infinity at odd multiples of 90°.
#[inline]
pub fn tan_deg(angle_deg: f64) -> f64 {
    let (sine, cosine) = sin_cos_deg(angle_deg);
    sine / cosine
}

/// Angle of the point (x, y) in degrees, −180 to 180; exact at multiples of 45°.
#[inline]
pub fn atan2_deg(y: f64, x: f64) -> f64 {
    if y.abs() == x.abs() && y != 0.0 {
        let acute = if x > 0.0 { 45.0 } else { 135.0 };
        return acute * y.signum();
    }
    degrees(libm::atan2(y, x))
}

/// Arc tangent in degrees.
#[inline]
pub fn atan_deg(tangent: f64) -> f64 {
    atan2_deg(tangent, 1.0)
}

/// Arc sine in degrees, of a value within ±1.
#[inline]
pub fn asin_deg(sine: f64) -> f64 {
    degrees(libm::asin(sine))
}

/// Arc cosine in degrees, of a value within ±1.
#[inline]
pub fn acos_deg(cosine: f64) -> f64 {
    degrees(libm::acos(cosine))
}

/// `base` to the power `exponent`.
#[inline]
pub fn pow(base: f64, exponent: f64) -> f64 {
    libm::pow(base, exponent)
}

/// Natural exponential.
#[inline]
pub fn exp(exponent: f64) -> f64 {
    libm::exp(exponent)
}

/// Natural logarithm.
#[inline]
pub fn ln(value: f64) -> f64 {
    libm::log(value)
}

/// Complementary error function.
#[inline]
pub fn erfc(value: f64) -> f64 {
    libm::erfc(value)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_common_angles_are_exact() {
        assert_eq!(tan_deg(45.0), 1.0);
        assert_eq!(tan_deg(-45.0), -1.0);
        assert_eq!(tan_deg(135.0), -1.0);
        assert_eq!(sin_deg(30.0), 0.5);
        assert_eq!(cos_deg(60.0), 0.5);
        assert_eq!(sin_deg(180.0), 0.0);
        assert_eq!(cos_deg(90.0), 0.0);
        assert_eq!(cos_deg(-270.0), 0.0);
        assert_eq!(atan2_deg(3.0, 3.0), 45.0);
        assert_eq!(atan2_deg(-3.0, -3.0), -135.0);
    }

    #[test]
    #[allow(clippy::disallowed_methods, reason = "the platform's functions are the outside check")]
    fn degrees_agree_with_the_platform() {
        for tenth in -7200..7200 {
            let angle = f64::from(tenth) / 10.0;
            let (sine, cosine) = sin_cos_deg(angle);
            assert!((sine - angle.to_radians().sin()).abs() < 4e-15, "{angle}");
            assert!((cosine - angle.to_radians().cos()).abs() < 4e-15, "{angle}");
        }
    }
}
