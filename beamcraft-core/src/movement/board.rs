//! Change of a board's width and thickness with moisture, by how it was sawn.

use super::figures::{Direction, MovementFigures, method};
#[cfg(feature = "json")]
use crate::columns::{lane_choice, lanes};
use crate::error::{ErrorCode, Fault};
use crate::limits::{Limited, limited};
use crate::numeric::lane::sin_cos_quarter_deg;
use crate::numeric::real::degrees;

/// How a board was sawn, by its growth rings on the end.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum BoardCut {
    /// Rings along the face: ring angle 0.
    FlatSawn,
    /// Rings slanting: ring angle 45, the middle of what is sold as rift (common practice).
    RiftSawn,
    /// Rings square to the face: ring angle 90.
    QuarterSawn,
    /// A ring angle measured on the end of the board.
    RingAngle,
}

/// Which of the handbook's two equations was used.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum MovementMethod {
    /// Movement coefficients, while both moisture contents lie within 6 % to 14 %.
    Coefficient,
    /// Shrinkage from green to ovendry, elsewhere.
    Shrinkage,
}

/// A board and the change of its moisture content.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<BoardMovementInput>))]
pub struct BoardMovementInput {
    /// Width at the first moisture content, mm.
    pub width_mm: f64,
    /// Thickness at the first moisture content, mm.
    pub thickness_mm: f64,
    /// How the board was sawn.
    pub cut: BoardCut,
    /// Angle between growth rings and wide face, degrees; for `ring_angle` only.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub ring_angle_deg: Option<f64>,
    /// Radial movement between 6 and 14 % moisture, share of the size per percent of moisture.
    pub movement_radial_per_pct: f64,
    /// Tangential movement between 6 and 14 % moisture, share of the size per percent of moisture.
    pub movement_tangential_per_pct: f64,
    /// Radial shrinkage from green to ovendry, %; from the coefficient when left out.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub shrinkage_radial_pct: Option<f64>,
    /// Tangential shrinkage from green to ovendry, %; from the coefficient when left out.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub shrinkage_tangential_pct: Option<f64>,
    /// Fibre saturation point, %; 30 in general use (FPL-GTR-282, chapter 4).
    #[cfg_attr(feature = "json", serde(default = "super::figures::fibre_saturation"))]
    pub fibre_saturation_pct: f64,
    /// Moisture content at which the sizes are given, %.
    pub from_moisture_pct: f64,
    /// Moisture content that the board comes to, %.
    pub to_moisture_pct: f64,
}

limited!(BoardMovementInput {
    width_mm: LENGTH,
    thickness_mm: BOARD_THICKNESS,
    ring_angle_deg: RING_ANGLE,
    movement_radial_per_pct: MOVEMENT_COEFFICIENT,
    movement_tangential_per_pct: MOVEMENT_COEFFICIENT,
    shrinkage_radial_pct: LINEAR_SHRINKAGE,
    shrinkage_tangential_pct: LINEAR_SHRINKAGE,
    fibre_saturation_pct: FIBRE_SATURATION,
    from_moisture_pct: MOISTURE,
    to_moisture_pct: MOISTURE,
});

/// Change of a board, with its working.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct BoardMovement {
    /// Change of the width, mm; swelling positive.
    pub width_change_mm: f64,
    /// Change of the thickness, mm; swelling positive.
    pub thickness_change_mm: f64,
    /// Width at the second moisture content, mm.
    pub final_width_mm: f64,
    /// Thickness at the second moisture content, mm.
    pub final_thickness_mm: f64,
    /// Change of the width as a share of it.
    pub width_strain: f64,
    /// Change of the thickness as a share of it.
    pub thickness_strain: f64,
    /// Angle by which square edges leave square, so that the section turns into a diamond, degrees; 0 for flat and quarter sawn.
    pub diamond_deg: f64,
    /// Ring angle used, degrees.
    pub used_ring_angle_deg: f64,
    /// Coefficient across the width, share per percent of moisture.
    pub width_coefficient_per_pct: f64,
    /// Coefficient through the thickness, share per percent of moisture.
    pub thickness_coefficient_per_pct: f64,
    /// Shrinkage across the width from green to ovendry, given or from the coefficient, %.
    pub width_shrinkage_pct: f64,
    /// Shrinkage through the thickness from green to ovendry, given or from the coefficient, %.
    pub thickness_shrinkage_pct: f64,
    /// Which equation was used.
    pub method: MovementMethod,
}

/// Ring angle of a cut, degrees.
pub(crate) fn ring_angle(cut: BoardCut, given_deg: Option<f64>) -> Result<f64, Fault> {
    let refuse = |code, allowed, cure| Err(Fault::plain(code, "ring_angle_deg", allowed, cure));
    match (cut, given_deg) {
        (BoardCut::RingAngle, Some(angle_deg)) => Ok(angle_deg),
        (BoardCut::RingAngle, None) => {
            refuse(ErrorCode::MissingField, "the angle between growth rings and wide face", "measure it on the end")
        }
        (_, Some(_)) => {
            refuse(ErrorCode::Inconsistent, "a ring angle only where the cut is ring_angle", "leave it out")
        }
        (BoardCut::FlatSawn, None) => Ok(0.0),
        (BoardCut::RiftSawn, None) => Ok(45.0),
        (BoardCut::QuarterSawn, None) => Ok(90.0),
    }
}

/// Movement across the width and through the thickness of a board of a ring angle within 0° to 90°.
pub(super) fn directions(figures: &MovementFigures, ring_angle_deg: f64) -> (Direction, Direction) {
    mixed(principal(figures), sin_cos_quarter_deg(ring_angle_deg))
}

/// Movement along the rings (tangential) and across them (radial).
#[inline(always)]
fn principal(figures: &MovementFigures) -> (Direction, Direction) {
    let saturation_pct = figures.fibre_saturation_pct;
    let radial = Direction::new(figures.movement_radial_per_pct, figures.shrinkage_radial_pct, saturation_pct);
    let tangential =
        Direction::new(figures.movement_tangential_per_pct, figures.shrinkage_tangential_pct, saturation_pct);
    (tangential, radial)
}

/// Movement across the width and through the thickness, of that along and across the rings.
#[inline(always)]
fn mixed((tangential, radial): (Direction, Direction), (sine, cosine): (f64, f64)) -> (Direction, Direction) {
    let (along, across) = (cosine * cosine, sine * sine);
    let mixed = |tangential_share: f64, radial_share: f64| Direction {
        coefficient: tangential_share * tangential.coefficient + radial_share * radial.coefficient,
        shrinkage_pct: tangential_share * tangential.shrinkage_pct + radial_share * radial.shrinkage_pct,
        saturation_pct: tangential.saturation_pct,
    };
    (mixed(along, across), mixed(across, along))
}

/// Change of a board's width and thickness from one moisture content to another, by how it was sawn.
///
/// # Equation
/// ```text
/// both within 6 % to 14 %:  ε = C (M_to − M_from)                                             Eq. 13-2
/// elsewhere:                ε = (M_to − M_from) / (100 M_fs / S − M_fs + M_from)              Eq. 13-3, M_fs = 30
/// across the width:         C = C_t cos² p + C_r sin² p,   S likewise
/// through the thickness:    C = C_r cos² p + C_t sin² p,   S likewise
/// shrinkage not given:      S = 100 C M_fs / (1 + C (M_fs − 10))
/// diamond:                  γ = (ε_tangential − ε_radial) sin 2p
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | ε | change as a share of the size, swelling positive | – | `width_strain`, `thickness_strain` |
/// | M_from, M_to | moisture contents, counted up to M_fs | % | `from_moisture_pct`, `to_moisture_pct` |
/// | M_fs | fibre saturation point | % | `fibre_saturation_pct` |
/// | C_r, C_t | movement coefficients | 1/% | `movement_radial_per_pct`, `movement_tangential_per_pct` |
/// | S_r, S_t | shrinkage from green to ovendry | % | `shrinkage_radial_pct`, `shrinkage_tangential_pct` |
/// | p | ring angle | degree | `ring_angle_deg` |
/// | γ | angle by which square edges leave square | degree | `diamond_deg` |
///
/// # Limits
/// Averages of a species and a board of one ring angle. Boards from near the middle of a log have rings at several angles: flat
/// sawn overstates the width change and understates the thickness change. The two methods meet at 10 % and differ by less than 2 % of the
/// change at the ends of the range.
///
/// # Errors
/// `out_of_range`, `not_finite`; `missing_field` for a ring angle that the cut asks for, `inconsistent` for one it does not.
///
/// # Source
/// FPL-GTR-190, Eq. 13-2 (seen) and 13-3 (recalled form, range seen); mix by ring angle: rotation of small strains, derived in the
/// theory pages; shrinkage from the coefficient: derived, reproduces Table 13-5 — checked by `verification/movement`.
///
/// # Examples
/// ```
/// use beamcraft_core::movement::{board_movement, BoardCut, BoardMovementInput};
/// // The handbook's board of white fir, 8 % to 11 %.
/// let board = board_movement(&BoardMovementInput {
///     width_mm: 232.0,
///     thickness_mm: 19.0,
///     cut: BoardCut::FlatSawn,
///     ring_angle_deg: None,
///     movement_radial_per_pct: 0.00112,
///     movement_tangential_per_pct: 0.00245,
///     shrinkage_radial_pct: None,
///     shrinkage_tangential_pct: None,
///     fibre_saturation_pct: 30.0,
///     from_moisture_pct: 8.0,
///     to_moisture_pct: 11.0,
/// })?;
/// assert!((board.width_change_mm - 1.7).abs() < 0.05);
/// # Ok::<(), beamcraft_core::error::Fault>(())
/// ```
#[inline]
pub fn board_movement(input: &BoardMovementInput) -> Result<BoardMovement, Fault> {
    input.check_ranges()?;
    ring_angle(input.cut, input.ring_angle_deg)?;
    Ok(moved(input))
}

/// Whether [`board_movement`] takes the input; without a branch.
#[cfg(feature = "json")]
#[inline(always)]
fn is_taken(input: &BoardMovementInput) -> bool {
    input.is_within_ranges() & ((input.cut == BoardCut::RingAngle) == input.ring_angle_deg.is_some())
}

/// [`board_movement`] of an input that is taken; without a branch.
#[inline(always)]
fn moved(input: &BoardMovementInput) -> BoardMovement {
    let figures = MovementFigures {
        movement_radial_per_pct: input.movement_radial_per_pct,
        movement_tangential_per_pct: input.movement_tangential_per_pct,
        shrinkage_radial_pct: input.shrinkage_radial_pct,
        shrinkage_tangential_pct: input.shrinkage_tangential_pct,
        fibre_saturation_pct: input.fibre_saturation_pct,
    };
    let rift_deg = if input.cut == BoardCut::RiftSawn { 45.0 } else { 0.0 };
    let named_deg = if input.cut == BoardCut::QuarterSawn { 90.0 } else { rift_deg };
    let ring_angle_deg = input.ring_angle_deg.unwrap_or(named_deg);
    let (from_pct, to_pct) = (input.from_moisture_pct, input.to_moisture_pct);
    let (sine, cosine) = sin_cos_quarter_deg(ring_angle_deg);
    let (tangential, radial) = principal(&figures);
    let (width, thickness) = mixed((tangential, radial), (sine, cosine));
    let (width_strain, thickness_strain) = (width.strain(from_pct, to_pct), thickness.strain(from_pct, to_pct));
    // sin 2p = 2 sin p cos p
    let shear = (tangential.strain(from_pct, to_pct) - radial.strain(from_pct, to_pct)) * (2.0 * sine * cosine);
    let (width_change_mm, thickness_change_mm) = (input.width_mm * width_strain, input.thickness_mm * thickness_strain);
    BoardMovement {
        width_change_mm,
        thickness_change_mm,
        final_width_mm: input.width_mm + width_change_mm,
        final_thickness_mm: input.thickness_mm + thickness_change_mm,
        width_strain,
        thickness_strain,
        diamond_deg: degrees(shear.abs()),
        used_ring_angle_deg: ring_angle_deg,
        width_coefficient_per_pct: width.coefficient,
        thickness_coefficient_per_pct: thickness.coefficient,
        width_shrinkage_pct: width.shrinkage_pct,
        thickness_shrinkage_pct: thickness.shrinkage_pct,
        method: method(from_pct, to_pct),
    }
}

#[cfg(feature = "json")]
lane_choice!(BoardCut { FlatSawn, RiftSawn, QuarterSawn, RingAngle });
#[cfg(feature = "json")]
lane_choice!(MovementMethod { Coefficient, Shrinkage });

#[cfg(feature = "json")]
lanes! {
    /// Works rows of [`board_movement`] off.
    fn movement_lanes for board_movement: BoardMovementInput {
        width_mm: f64,
        thickness_mm: f64,
        cut: BoardCut,
        ring_angle_deg: Option<f64>,
        movement_radial_per_pct: f64,
        movement_tangential_per_pct: f64,
        shrinkage_radial_pct: Option<f64>,
        shrinkage_tangential_pct: Option<f64>,
        fibre_saturation_pct: f64,
        from_moisture_pct: f64,
        to_moisture_pct: f64,
    } => BoardMovement {
        width_change_mm: f64,
        thickness_change_mm: f64,
        final_width_mm: f64,
        final_thickness_mm: f64,
        width_strain: f64,
        thickness_strain: f64,
        diamond_deg: f64,
        used_ring_angle_deg: f64,
        width_coefficient_per_pct: f64,
        thickness_coefficient_per_pct: f64,
        width_shrinkage_pct: f64,
        thickness_shrinkage_pct: f64,
        method: MovementMethod,
    },
    admits = is_taken, lane = moved
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const BOARD_MOVEMENT: crate::json::Calculation = crate::json::calculation!(
    board_movement: BoardMovementInput => BoardMovement, Typed,
    "Change of a board's width and thickness with moisture, by how it was sawn", lanes = movement_lanes
);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::wood::Species;
    use proptest::prelude::*;

    const RED_OAK: BoardMovementInput = BoardMovementInput {
        width_mm: 250.0,
        thickness_mm: 20.0,
        cut: BoardCut::FlatSawn,
        ring_angle_deg: None,
        movement_radial_per_pct: 0.00158,
        movement_tangential_per_pct: 0.00369,
        shrinkage_radial_pct: None,
        shrinkage_tangential_pct: None,
        fibre_saturation_pct: 30.0,
        from_moisture_pct: 8.0,
        to_moisture_pct: 6.0,
    };

    fn ring(input: BoardMovementInput, angle_deg: f64) -> BoardMovement {
        let input = BoardMovementInput { cut: BoardCut::RingAngle, ring_angle_deg: Some(angle_deg), ..input };
        board_movement(&input).expect("allowed")
    }

    #[test]
    fn named_cuts_are_ring_angles() {
        for (cut, angle_deg) in [(BoardCut::FlatSawn, 0.0), (BoardCut::RiftSawn, 45.0), (BoardCut::QuarterSawn, 90.0)] {
            let named = board_movement(&BoardMovementInput { cut, ..RED_OAK }).expect("allowed");
            assert_eq!(named, ring(RED_OAK, angle_deg));
        }
        assert_eq!((ring(RED_OAK, 0.0).diamond_deg, ring(RED_OAK, 90.0).diamond_deg), (0.0, 0.0));
    }

    #[test]
    fn a_ring_angle_is_asked_for_and_refused_where_it_belongs() {
        let measured = BoardMovementInput { cut: BoardCut::RingAngle, ..RED_OAK };
        assert_eq!(board_movement(&measured).expect_err("missing").code, ErrorCode::MissingField);
        let doubled = BoardMovementInput { ring_angle_deg: Some(10.0), ..RED_OAK };
        assert_eq!(board_movement(&doubled).expect_err("two answers").code, ErrorCode::Inconsistent);
    }

    #[test]
    fn the_printed_coefficients_follow_from_the_printed_shrinkage() {
        // C = (S/M) / (100 − S (M − 10)/M) to the last printed digit for most species of the handbook: the link that is used
        // backwards. Rows that several species share cannot follow from the shrinkage of each.
        let (mut near, mut all) = (0, 0);
        for species in Species::all().filter(|row| row.provenance.movement_row.contains(row.name)) {
            let Some(shrinkage) = species.shrinkage_tangential_pct else { continue };
            let m = species.fibre_saturation_pct;
            let expected = (shrinkage / m) / (100.0 - shrinkage * (m - 10.0) / m);
            all += 1;
            near += usize::from((species.movement_tangential_per_pct - expected).abs() <= 0.000_015);
        }
        assert!(all > 15 && 10 * near >= 8 * all, "{near} of {all}");
    }

    proptest! {
        #[test]
        fn equal_moisture_moves_nothing(m in 0.0_f64..=30.0, p in 0.0_f64..=90.0) {
            let still = ring(BoardMovementInput { from_moisture_pct: m, to_moisture_pct: m, ..RED_OAK }, p);
            prop_assert_eq!((still.width_change_mm, still.thickness_change_mm, still.diamond_deg), (0.0, 0.0, 0.0));
        }

        #[test]
        fn a_quarter_turn_swaps_width_and_thickness(p in 0.0_f64..=90.0, from in 0.0_f64..=30.0, to in 0.0_f64..=30.0) {
            let input = BoardMovementInput { from_moisture_pct: from, to_moisture_pct: to, ..RED_OAK };
            let (one, other) = (ring(input, p), ring(input, 90.0 - p));
            prop_assert!((one.width_strain - other.thickness_strain).abs() < 1e-15);
            prop_assert!((one.thickness_strain - other.width_strain).abs() < 1e-15);
        }

        #[test]
        fn wetter_is_wider_and_the_way_back_comes_back(from in 0.0_f64..=30.0, to in 0.0_f64..=30.0, p in 0.0_f64..=90.0) {
            let there = ring(BoardMovementInput { from_moisture_pct: from, to_moisture_pct: to, ..RED_OAK }, p);
            prop_assert!((to - from) * there.width_change_mm >= 0.0);
            let back = ring(BoardMovementInput { width_mm: there.final_width_mm, from_moisture_pct: to, to_moisture_pct: from, ..RED_OAK }, p);
            if there.method == MovementMethod::Shrinkage {
                // The shrinkage law states one size at each moisture content.
                prop_assert!((back.final_width_mm - 250.0).abs() < 1e-10);
            } else {
                // The coefficient is antisymmetric instead, and comes back but for its square.
                prop_assert_eq!(back.width_strain, -there.width_strain);
                prop_assert!((back.final_width_mm - 250.0).abs() <= 250.0 * there.width_strain * there.width_strain + 1e-10);
            }
        }

        #[test]
        fn any_numbers_give_finite_answers_or_a_fault(n in proptest::array::uniform10(any::<f64>()), cut in 0..4_usize, sane in any::<bool>()) {
            let cut = [BoardCut::FlatSawn, BoardCut::RiftSawn, BoardCut::QuarterSawn, BoardCut::RingAngle][cut];
            let pick = |value: f64, high: f64| if sane { (value.abs() / f64::MAX).sqrt() * high } else { value };
            let input = BoardMovementInput {
                width_mm: n[0],
                thickness_mm: n[1],
                cut,
                ring_angle_deg: (cut == BoardCut::RingAngle).then_some(pick(n[2], 90.0)),
                movement_radial_per_pct: pick(n[3], 0.01),
                movement_tangential_per_pct: pick(n[4], 0.01),
                shrinkage_radial_pct: Some(pick(n[5], 20.0)),
                shrinkage_tangential_pct: None,
                fibre_saturation_pct: if sane { 20.0 } else { n[6] },
                from_moisture_pct: pick(n[7], 30.0),
                to_moisture_pct: pick(n[8], 30.0),
            };
            for input in [input, BoardMovementInput { width_mm: 100.0, thickness_mm: 20.0, ..input }] {
                if let Ok(found) = board_movement(&input) {
                    prop_assert!(found.final_width_mm.is_finite() && found.final_thickness_mm.is_finite() && found.diamond_deg.is_finite());
                }
            }
        }
    }
}
