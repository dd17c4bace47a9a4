//! Conversion factors, each exact by definition or a product of exact ones: SI value = customary value × factor.
//!
//! # Source
//! NIST SP 811, appendix B (recalled): the inch is 25.4 mm and the pound 0.453 592 37 kg by the agreement of 1959, standard
//! gravity is 9.806 65 m/s² (3rd CGPM, 1901), the US gallon is 231 cubic inches.

/// Inch, mm. Exact.
pub const INCH_MM: f64 = 25.4;
/// Foot, mm. Exact.
pub const FOOT_MM: f64 = 304.8;
/// Square inch, mm². Exact.
pub const SQUARE_INCH_MM2: f64 = 645.16;
/// Square foot, m². Exact.
pub const SQUARE_FOOT_M2: f64 = 0.092_903_04;
/// Cubic inch, mm³. Exact.
pub const CUBIC_INCH_MM3: f64 = 16_387.064;
/// Cubic foot, m³. Exact.
pub const CUBIC_FOOT_M3: f64 = 0.028_316_846_592;
/// Board foot (144 cubic inches), m³. Exact.
pub const BOARD_FOOT_M3: f64 = 0.002_359_737_216;
/// Mil (a thousandth of an inch), µm. Exact.
pub const MIL_UM: f64 = 25.4;
/// Avoirdupois pound, kg. Exact.
pub const POUND_KG: f64 = 0.453_592_37;
/// Standard gravity, m/s². Exact.
pub const STANDARD_GRAVITY_M_S2: f64 = 9.806_65;
/// Pound-force, N: pound × standard gravity. Exact.
pub const POUND_FORCE_N: f64 = 4.448_221_615_260_5;
/// Pound-force inch, N·mm. Exact to the last digit held.
pub const POUND_FORCE_INCH_NMM: f64 = POUND_FORCE_N * INCH_MM;
/// Pound-force per inch, N/mm. Exact to the last digit held.
pub const POUND_FORCE_PER_INCH_N_MM: f64 = POUND_FORCE_N / INCH_MM;
/// Pound-force per foot, N/mm. Exact to the last digit held.
pub const POUND_FORCE_PER_FOOT_N_MM: f64 = POUND_FORCE_N / FOOT_MM;
/// Pound-force per square inch, MPa. Exact to the last digit held.
pub const PSI_MPA: f64 = POUND_FORCE_N / SQUARE_INCH_MM2;
/// Pound-force per square foot, kPa. Exact to the last digit held.
pub const PSF_KPA: f64 = POUND_FORCE_N / (SQUARE_FOOT_M2 * 1000.0);
/// Pound per cubic foot, kg/m³. Exact to the last digit held.
pub const POUND_PER_CUBIC_FOOT_KG_M3: f64 = POUND_KG / CUBIC_FOOT_M3;
/// US gallon (231 cubic inches), L. Exact.
pub const US_GALLON_L: f64 = 3.785_411_784;
/// US quart, L. Exact.
pub const US_QUART_L: f64 = 0.946_352_946;
/// US fluid ounce, L. Exact.
pub const US_FLUID_OUNCE_L: f64 = 0.029_573_529_562_5;
/// Square foot per US gallon, m²/L. Exact to the last digit held.
pub const SQUARE_FOOT_PER_GALLON_M2_L: f64 = SQUARE_FOOT_M2 / US_GALLON_L;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn derived_factors_follow_from_the_defining_ones() {
        let near = |a: f64, b: f64| assert!((a / b - 1.0).abs() < 4e-16, "{a} {b}");
        near(FOOT_MM, 12.0 * INCH_MM);
        near(SQUARE_INCH_MM2, INCH_MM * INCH_MM);
        near(SQUARE_FOOT_M2, FOOT_MM * FOOT_MM * 1e-6);
        near(CUBIC_INCH_MM3, INCH_MM * INCH_MM * INCH_MM);
        near(CUBIC_FOOT_M3, 1728.0 * CUBIC_INCH_MM3 * 1e-9);
        near(BOARD_FOOT_M3, CUBIC_FOOT_M3 / 12.0);
        near(POUND_FORCE_N, POUND_KG * STANDARD_GRAVITY_M_S2);
        near(US_GALLON_L, 231.0 * CUBIC_INCH_MM3 * 1e-6);
        near(US_QUART_L, US_GALLON_L / 4.0);
        near(US_FLUID_OUNCE_L, US_GALLON_L / 128.0);
    }

    #[test]
    fn the_factor_table_of_the_verification_rows_agrees() {
        let table = include_str!("../../../tests/verification/units.toml");
        let factor = |name: &str| -> f64 {
            let line = table.lines().find_map(|line| line.strip_prefix(name)?.strip_prefix(" = "));
            line.unwrap_or_else(|| panic!("{name} is missing")).parse().expect("a number")
        };
        for (name, ours) in [
            ("in", INCH_MM),
            ("ft", FOOT_MM),
            ("mil", MIL_UM),
            ("in2", SQUARE_INCH_MM2),
            ("ft2", SQUARE_FOOT_M2),
            ("in3", CUBIC_INCH_MM3),
            ("ft3", CUBIC_FOOT_M3),
            ("board_foot", BOARD_FOOT_M3),
            ("gal", US_GALLON_L),
            ("qt", US_QUART_L),
            ("fl_oz", US_FLUID_OUNCE_L),
            ("lb", POUND_KG),
            ("lb_per_ft3", POUND_PER_CUBIC_FOOT_KG_M3),
            ("lbf", POUND_FORCE_N),
            ("lbf_in", POUND_FORCE_INCH_NMM),
            ("lbf_per_in", POUND_FORCE_PER_INCH_N_MM),
            ("lbf_per_ft", POUND_FORCE_PER_FOOT_N_MM),
            ("psi", PSI_MPA),
            ("psf", PSF_KPA),
            ("ft2_per_gal", SQUARE_FOOT_PER_GALLON_M2_L),
        ] {
            assert!((factor(name) / ours - 1.0).abs() < 5e-16, "{name}: {} {ours}", factor(name));
        }
    }

    #[test]
    fn printed_factors_of_the_guide_are_met() {
        // NIST SP 811, appendix B.8, seven digits (recalled).
        for (ours, printed) in [
            (PSI_MPA, 6.894_757e-3),
            (PSF_KPA, 4.788_026e-2),
            (POUND_FORCE_PER_INCH_N_MM, 0.175_126_8),
            (POUND_FORCE_PER_FOOT_N_MM, 1.459_390e-2),
            (POUND_FORCE_INCH_NMM, 112.984_8),
            (POUND_PER_CUBIC_FOOT_KG_M3, 16.018_46),
        ] {
            assert!((ours / printed - 1.0).abs() < 5e-7, "{ours} {printed}");
        }
    }
}
