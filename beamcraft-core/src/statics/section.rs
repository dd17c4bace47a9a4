//! Cross-sections built up of rectangles and polygons of one or more materials.

use crate::error::{Detail, Error, ErrorCode, Fault, Result};
use crate::finding::{Caution, CautionText};
use crate::limits::{faults_at, limited};
use crate::numeric::compensated_sum;
use crate::numeric::real::atan2_deg;

/// A cross-section as a sum of parts.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<SectionPropertiesInput>))]
pub struct SectionPropertiesInput {
    /// Parts; they must not overlap but where one is a hole in another.
    pub parts: Vec<SectionPart>,
    /// Modulus to which the section is transformed, MPa; left out it is the first that a part gives.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub reference_modulus_mpa: Option<f64>,
}

limited!(SectionPropertiesInput { reference_modulus_mpa: ELASTIC_MODULUS });

/// One part of a cross-section.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<SectionPart>))]
pub struct SectionPart {
    /// Its outline.
    pub outline: PartOutline,
    /// Modulus of elasticity, MPa; left out it is the reference modulus.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub modulus_mpa: Option<f64>,
    /// Whether it is wood or the lack of it.
    #[cfg_attr(feature = "json", serde(default))]
    pub sense: PartSense,
}

limited!(SectionPart { modulus_mpa: ELASTIC_MODULUS });

/// Whether a part adds or takes away.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum PartSense {
    /// Material.
    #[default]
    Solid,
    /// A hole in another part, of that part's modulus.
    Hole,
}

/// Outline of a part, x to the right, y upwards.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(rename_all = "snake_case"))]
pub enum PartOutline {
    /// An upright rectangle.
    Rectangle(SectionRectangle),
    /// Any simple polygon.
    Polygon(SectionPolygon),
}

/// An upright rectangle of a section.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<SectionRectangle>))]
pub struct SectionRectangle {
    /// Left side, mm.
    pub left_mm: f64,
    /// Lower side, mm.
    pub bottom_mm: f64,
    /// Width, mm.
    pub width_mm: f64,
    /// Height, mm.
    pub height_mm: f64,
}

limited!(SectionRectangle {
    left_mm: SIGNED_LEVER,
    bottom_mm: SIGNED_LEVER,
    width_mm: SECTION_SIZE,
    height_mm: SECTION_SIZE,
});

/// A simple polygon of a section.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
pub struct SectionPolygon {
    /// Corners in order, either way round.
    pub points: Vec<SectionPoint>,
}

/// A point of a section.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<SectionPoint>))]
pub struct SectionPoint {
    /// To the right, mm.
    pub x_mm: f64,
    /// Upwards, mm.
    pub y_mm: f64,
}

limited!(SectionPoint { x_mm: SIGNED_LEVER, y_mm: SIGNED_LEVER });

/// One part's own figures.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct SectionPartProperties {
    /// Area, mm²; negative for a hole.
    pub area_mm2: f64,
    /// Its modulus over the reference modulus.
    pub modular_ratio: f64,
    /// Centroid to the right, mm.
    pub centroid_x_mm: f64,
    /// Centroid upwards, mm.
    pub centroid_y_mm: f64,
}

/// Properties of a section, transformed to the reference modulus.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct SectionProperties {
    /// Area as it is, mm².
    pub area_mm2: f64,
    /// Transformed area, mm².
    pub transformed_area_mm2: f64,
    /// Centroid of the transformed section to the right, mm.
    pub centroid_x_mm: f64,
    /// Centroid of the transformed section upwards, mm.
    pub centroid_y_mm: f64,
    /// Second moment of area about the horizontal axis through the centroid, mm⁴.
    pub ix_mm4: f64,
    /// Second moment of area about the upright axis through the centroid, mm⁴.
    pub iy_mm4: f64,
    /// Product of area about both, mm⁴; 0 with an axis of symmetry.
    pub ixy_mm4: f64,
    /// Larger principal second moment, mm⁴.
    pub i_major_mm4: f64,
    /// Smaller principal second moment, mm⁴.
    pub i_minor_mm4: f64,
    /// Direction of the axis of the larger one, from the horizontal, anticlockwise, degrees.
    pub major_axis_deg: f64,
    /// Section modulus of the upper fibre about the horizontal axis, mm³.
    pub modulus_top_mm3: f64,
    /// Section modulus of the lower fibre about the horizontal axis, mm³.
    pub modulus_bottom_mm3: f64,
    /// Section modulus of the left fibre about the upright axis, mm³.
    pub modulus_left_mm3: f64,
    /// Section modulus of the right fibre about the upright axis, mm³.
    pub modulus_right_mm3: f64,
    /// Reference modulus, MPa; absent when no part gives one.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub reference_modulus_mpa: Option<f64>,
    /// Each part by itself, in the order given.
    pub parts: Vec<SectionPartProperties>,
}

/// Corners of a part, anticlockwise.
fn corners(outline: &PartOutline) -> Vec<SectionPoint> {
    match outline {
        PartOutline::Rectangle(SectionRectangle { left_mm, bottom_mm, width_mm, height_mm }) => {
            let (right, top) = (left_mm + width_mm, bottom_mm + height_mm);
            let corner = |x_mm: f64, y_mm: f64| SectionPoint { x_mm, y_mm };
            vec![corner(*left_mm, *bottom_mm), corner(right, *bottom_mm), corner(right, top), corner(*left_mm, top)]
        }
        PartOutline::Polygon(polygon) => polygon.points.clone(),
    }
}

/// Area, centroid and second moments about the own centroid.
#[derive(Clone, Copy)]
struct Moments {
    area: f64,
    x: f64,
    y: f64,
    ix: f64,
    iy: f64,
    ixy: f64,
}

impl Moments {
    /// By Green's theorem, about the first corner, so that a part far from the origin loses nothing.
    fn of(points: &[SectionPoint]) -> Self {
        let origin = points.first().copied().unwrap_or(SectionPoint { x_mm: 0.0, y_mm: 0.0 });
        let sides = || {
            points.iter().zip(points.iter().cycle().skip(1)).map(|(p, q)| {
                let (x0, y0) = (p.x_mm - origin.x_mm, p.y_mm - origin.y_mm);
                let (x1, y1) = (q.x_mm - origin.x_mm, q.y_mm - origin.y_mm);
                (x0, y0, x1, y1, x0 * y1 - x1 * y0)
            })
        };
        let sum = |of: fn(f64, f64, f64, f64) -> f64| {
            compensated_sum(sides().map(|(x0, y0, x1, y1, cross)| cross * of(x0, y0, x1, y1)))
        };
        let twice = sum(|_, _, _, _| 1.0);
        let sign = if twice < 0.0 { -1.0 } else { 1.0 };
        let area = 0.5 * sign * twice;
        if area == 0.0 {
            return Self { area, x: origin.x_mm, y: origin.y_mm, ix: 0.0, iy: 0.0, ixy: 0.0 };
        }
        let x = sign * sum(|x0, _, x1, _| x0 + x1) / (6.0 * area);
        let y = sign * sum(|_, y0, _, y1| y0 + y1) / (6.0 * area);
        let ix = sign * sum(|_, y0, _, y1| y0 * y0 + y0 * y1 + y1 * y1) / 12.0;
        let iy = sign * sum(|x0, _, x1, _| x0 * x0 + x0 * x1 + x1 * x1) / 12.0;
        let ixy = sign * sum(|x0, y0, x1, y1| x0 * y1 + 2.0 * x0 * y0 + 2.0 * x1 * y1 + x1 * y0) / 24.0;
        Self {
            area,
            x: x + origin.x_mm,
            y: y + origin.y_mm,
            ix: ix - area * y * y,
            iy: iy - area * x * x,
            ixy: ixy - area * x * y,
        }
    }
}

fn faults(input: &SectionPropertiesInput) -> Vec<Detail> {
    let mut faults = faults_at("", input);
    for (k, part) in input.parts.iter().enumerate() {
        let path = format!("parts[{k}]");
        match &part.outline {
            PartOutline::Rectangle(rectangle) => {
                faults.extend(faults_at(&format!("{path}.outline.rectangle"), rectangle));
            }
            PartOutline::Polygon(polygon) => {
                for (corner, point) in polygon.points.iter().enumerate() {
                    faults.extend(faults_at(&format!("{path}.outline.polygon.points[{corner}]"), point));
                }
                if polygon.points.len() < 3 {
                    let fault = Fault::plain(ErrorCode::MissingField, "points", "at least three corners", "");
                    faults.push(Detail::from(fault).within(&format!("{path}.outline.polygon")));
                }
            }
        }
        faults.extend(faults_at(&path, part));
    }
    faults
}

/// Area, centroid, second moments, principal axes and section moduli of a section built up of parts.
///
/// # Equation
/// ```text
/// n_i = E_i / E_ref       A = Σ n_i A_i       ȳ = Σ n_i A_i y_i / A
/// I_x = Σ n_i (I_x,i + A_i (y_i − ȳ)²)        I_xy = Σ n_i (I_xy,i + A_i (x_i − x̄)(y_i − ȳ))
/// I_major, I_minor = (I_x + I_y)/2 ± √(((I_x − I_y)/2)² + I_xy²)
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | E_i, E_ref | modulus of a part, reference | MPa | `parts[].modulus_mpa`, `reference_modulus_mpa` |
/// | A_i, x_i, y_i | area and centroid of a part | mm², mm | `parts[]` |
///
/// A stress in the real part is n times that of the transformed section; [`section_stress`] does it.
///
/// # Limits
/// Parts bonded together without slip; polygons must not cross themselves. Holes carry the modulus of what they are cut
/// from.
///
/// # Errors
/// `out_of_range`, `not_finite`, `missing_field`, each with its path; `no_section` when the parts leave no area.
///
/// # Source
/// Plane geometry (Green's theorem), derived in the theory pages; checked by `verification/sections`.
///
/// # Examples
/// ```
/// use beamcraft_core::statics::{section_properties, PartOutline, PartSense, SectionPart, SectionPropertiesInput, SectionRectangle};
/// let part = |side: f64, at: f64, sense| SectionPart {
///     outline: PartOutline::Rectangle(SectionRectangle { left_mm: at, bottom_mm: at, width_mm: side, height_mm: side }),
///     modulus_mpa: None, sense,
/// };
/// let tube = section_properties(&SectionPropertiesInput {
///     parts: vec![part(60.0, 0.0, PartSense::Solid), part(40.0, 10.0, PartSense::Hole)], reference_modulus_mpa: None,
/// })?;
/// assert!((tube.ix_mm4 - (60.0_f64.powi(4) - 40.0_f64.powi(4)) / 12.0).abs() < 1e-6);
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn section_properties(input: &SectionPropertiesInput) -> Result<SectionProperties> {
    Error::unless_empty(faults(input))?;
    Ok(whole(input)?.0)
}

/// The section with the corners of every part.
fn whole(input: &SectionPropertiesInput) -> Result<(SectionProperties, Vec<Vec<SectionPoint>>)> {
    let reference = input.reference_modulus_mpa.or(input.parts.iter().find_map(|part| part.modulus_mpa));
    let outlines: Vec<Vec<SectionPoint>> = input.parts.iter().map(|part| corners(&part.outline)).collect();
    let parts: Vec<(f64, Moments)> = input
        .parts
        .iter()
        .zip(&outlines)
        .map(|(part, outline)| {
            let ratio = part.modulus_mpa.zip(reference).map_or(1.0, |(own, reference)| own / reference);
            let sign = if part.sense == PartSense::Hole { -1.0 } else { 1.0 };
            let own = Moments::of(outline);
            let signed = |value: f64| sign * value;
            (
                ratio,
                Moments { area: signed(own.area), ix: signed(own.ix), iy: signed(own.iy), ixy: signed(own.ixy), ..own },
            )
        })
        .collect();
    let sum = |of: &dyn Fn(&Moments) -> f64| compensated_sum(parts.iter().map(|(n, part)| n * of(part)));
    let area_mm2 = compensated_sum(parts.iter().map(|(_, part)| part.area));
    let transformed = sum(&|part| part.area);
    let none = || Error::from(Fault::plain(ErrorCode::NoSection, "parts", "parts that leave an area", ""));
    // Below this a section is no section, and squares of it would vanish.
    const LEAST_MM2: f64 = 1.0e-6;
    if !(area_mm2 > LEAST_MM2 && transformed > LEAST_MM2) {
        return Err(none());
    }
    let x = sum(&|part| part.area * part.x) / transformed;
    let y = sum(&|part| part.area * part.y) / transformed;
    let ix = sum(&|part| part.ix + part.area * (part.y - y) * (part.y - y));
    let iy = sum(&|part| part.iy + part.area * (part.x - x) * (part.x - x));
    let ixy = sum(&|part| part.ixy + part.area * (part.x - x) * (part.y - y));
    let (mean, half) = (0.5 * (ix + iy), 0.5 * (ix - iy));
    let radius = (half * half + ixy * ixy).sqrt();
    // Product and difference must leave both principal moments above nothing.
    if !(ix > 0.0 && iy > 0.0 && mean - radius > 0.0) {
        return Err(none());
    }
    let solid = || {
        let with = input.parts.iter().zip(&outlines).filter(|(part, _)| part.sense == PartSense::Solid);
        with.flat_map(|(_, outline)| outline)
    };
    let ends = |of: fn(&SectionPoint) -> f64| {
        solid().map(of).fold((f64::MAX, f64::MIN), |(low, high), value| (low.min(value), high.max(value)))
    };
    let ((left, right), (bottom, top)) = (ends(|p| p.x_mm), ends(|p| p.y_mm));
    // Holes beyond the solid parts can push the centroid outside them: then no fibre is left on that side.
    if !(left < x && x < right && bottom < y && y < top) {
        return Err(none());
    }
    let properties = SectionProperties {
        area_mm2,
        transformed_area_mm2: transformed,
        centroid_x_mm: x,
        centroid_y_mm: y,
        ix_mm4: ix,
        iy_mm4: iy,
        ixy_mm4: ixy,
        i_major_mm4: mean + radius,
        i_minor_mm4: mean - radius,
        major_axis_deg: if radius == 0.0 { 0.0 } else { 0.5 * atan2_deg(-ixy, half) },
        modulus_top_mm3: ix / (top - y),
        modulus_bottom_mm3: ix / (y - bottom),
        modulus_left_mm3: iy / (x - left),
        modulus_right_mm3: iy / (right - x),
        reference_modulus_mpa: reference,
        parts: parts
            .iter()
            .map(|(ratio, part)| SectionPartProperties {
                area_mm2: part.area,
                modular_ratio: *ratio,
                centroid_x_mm: part.x,
                centroid_y_mm: part.y,
            })
            .collect(),
    };
    Ok((properties, outlines))
}

/// A section, what acts on it, and a group of its parts whose seams are asked about.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<SectionStressInput>))]
pub struct SectionStressInput {
    /// The section.
    pub section: SectionPropertiesInput,
    /// Moment about the horizontal axis, positive when the lower fibre is pulled, N·mm.
    #[cfg_attr(feature = "json", serde(default))]
    pub moment_x_nmm: f64,
    /// Moment about the upright axis, positive when the right fibre is pulled, N·mm.
    #[cfg_attr(feature = "json", serde(default))]
    pub moment_y_nmm: f64,
    /// Upright shear force, N.
    #[cfg_attr(feature = "json", serde(default))]
    pub shear_n: f64,
    /// Parts on the far side of the seams, by their place in the list from 0; empty asks about no seam.
    #[cfg_attr(feature = "json", serde(default))]
    pub attached: Vec<u32>,
    /// Number of seams that hold them.
    #[cfg_attr(feature = "json", serde(default = "one_seam"))]
    pub seam_count: u32,
    /// Width of one seam across the section, such as the length of a glued mitre, mm; left out no stress is given.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub seam_width_mm: Option<f64>,
    /// What one nail or screw of a seam carries along it, N; left out no spacing is given.
    #[cfg_attr(feature = "json", serde(default, skip_serializing_if = "Option::is_none"))]
    pub fastener_n: Option<f64>,
}

limited!(SectionStressInput {
    moment_x_nmm: SIGNED_MOMENT,
    moment_y_nmm: SIGNED_MOMENT,
    shear_n: SIGNED_FORCE,
    seam_count: COUNT,
    seam_width_mm: LEVER,
    fastener_n: CONNECTION_CAPACITY,
});

#[cfg(feature = "json")]
fn one_seam() -> u32 {
    1
}

/// Stresses of one part.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct SectionPartStress {
    /// Stress at the corner that is pulled most, tension positive, MPa.
    pub greatest_mpa: f64,
    /// Stress at the corner that is pressed most, tension positive, MPa.
    pub least_mpa: f64,
}

/// Stresses of a section.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct SectionStress {
    /// Properties of the section.
    pub properties: SectionProperties,
    /// Bending stresses of each part, in the order given.
    pub parts: Vec<SectionPartStress>,
    /// First moment of the attached parts about the horizontal axis, transformed, mm³.
    pub first_moment_mm3: f64,
    /// Shear flow of all their seams together, N/mm.
    pub shear_flow_n_per_mm: f64,
    /// Shear flow of one seam, N/mm.
    pub seam_flow_n_per_mm: f64,
    /// Shear stress along one seam, MPa.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub seam_stress_mpa: Option<f64>,
    /// Greatest spacing of the fasteners of one seam, mm; absent without shear flow or fastener.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub fastener_spacing_mm: Option<f64>,
    /// Cautions that belong to these numbers.
    pub cautions: Vec<CautionText>,
}

/// Bending stresses of every part of a built-up section, and the shear flow of the seams that hold some of them.
///
/// # Equation
/// ```text
/// sigma = −n (M_x (I_y y − I_xy x) − M_y (I_x x − I_xy y)) / (I_x I_y − I_xy²)
/// q = V (I_y Q_x − I_xy Q_y) / (I_x I_y − I_xy²)      q = V Q / I for a section with an axis of symmetry
/// tau = q / (seams · width)        spacing = seams · F / q
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | M_x, M_y | moments | N·mm | `moment_x_nmm`, `moment_y_nmm` |
/// | V | shear force | N | `shear_n` |
/// | Q | first moment of the attached parts | mm³ | `first_moment_mm3` |
/// | F | what one fastener carries | N | `fastener_n` |
///
/// # Limits
/// Linear elasticity, plane sections, seams without slip: nails and screws slip, and a nailed section is less stiff
/// than this says. Shear is that of the upright force through the shear centre; add torsion by
/// [`wall_torsion`](super::wall_torsion).
///
/// # Errors
/// Those of [`section_properties`]; `inconsistent` for a part number that is not in the list, `duplicate_field` for one given
/// twice.
///
/// # Source
/// Beam theory, derived in the theory pages; checked by `verification/sections` against textbook examples.
///
/// # Examples
/// ```
/// use beamcraft_core::statics::*;
/// let board = |left_mm, bottom_mm, width_mm, height_mm| SectionPart {
///     outline: PartOutline::Rectangle(SectionRectangle { left_mm, bottom_mm, width_mm, height_mm }),
///     modulus_mpa: None, sense: PartSense::Solid,
/// };
/// // A nailed T: flange 200 × 50 on a web 50 × 200, 3 kN of shear, nails of 700 N.
/// let tee = section_stress(&SectionStressInput {
///     section: SectionPropertiesInput {
///         parts: vec![board(75.0, 0.0, 50.0, 200.0), board(0.0, 200.0, 200.0, 50.0)], reference_modulus_mpa: None,
///     },
///     moment_x_nmm: 0.0, moment_y_nmm: 0.0, shear_n: 3000.0, attached: vec![1], seam_count: 1, seam_width_mm: None,
///     fastener_n: Some(700.0),
/// })?;
/// assert!((tee.fastener_spacing_mm.unwrap() - 42.389).abs() < 1e-3);
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn section_stress(input: &SectionStressInput) -> Result<SectionStress> {
    let mut found: Vec<Detail> = faults(&input.section).into_iter().map(|fault| fault.within("section")).collect();
    found.extend(faults_at("", input));
    for (k, part) in input.attached.iter().enumerate() {
        if *part as usize >= input.section.parts.len() {
            let fault = Fault::plain(ErrorCode::Inconsistent, "", "the place of a part in the list, from 0", "");
            found.push(Detail { path: format!("attached[{k}]"), given: part.to_string(), ..fault.into() });
        }
        if input.attached.iter().take(k).any(|other| other == part) {
            let fault = Fault::plain(ErrorCode::DuplicateField, "", "each part once", "");
            found.push(Detail { path: format!("attached[{k}]"), given: part.to_string(), ..fault.into() });
        }
    }
    Error::unless_empty(found)?;
    let (properties, outlines) = whole(&input.section).map_err(|error| error.within("section"))?;
    let (ix, iy, ixy) = (properties.ix_mm4, properties.iy_mm4, properties.ixy_mm4);
    // The product of the principal moments: never below nothing.
    let determinant = properties.i_major_mm4 * properties.i_minor_mm4;
    let (x0, y0) = (properties.centroid_x_mm, properties.centroid_y_mm);
    let per_y = (input.moment_x_nmm * iy + input.moment_y_nmm * ixy) / determinant;
    let per_x = (input.moment_x_nmm * ixy + input.moment_y_nmm * ix) / determinant;
    let parts = properties
        .parts
        .iter()
        .zip(&outlines)
        .map(|(part, outline)| {
            let stress = |p: &SectionPoint| part.modular_ratio * (per_x * (p.x_mm - x0) - per_y * (p.y_mm - y0));
            let (least_mpa, greatest_mpa) = outline
                .iter()
                .map(stress)
                .fold((f64::MAX, f64::MIN), |(low, high), value| (low.min(value), high.max(value)));
            SectionPartStress { greatest_mpa, least_mpa }
        })
        .collect();
    let attached = || input.attached.iter().filter_map(|k| properties.parts.get(*k as usize));
    let first = compensated_sum(attached().map(|p| p.modular_ratio * p.area_mm2 * (p.centroid_y_mm - y0)));
    let across = compensated_sum(attached().map(|p| p.modular_ratio * p.area_mm2 * (p.centroid_x_mm - x0)));
    let flow = (input.shear_n * (iy * first - ixy * across) / determinant).abs();
    let seams = f64::from(input.seam_count);
    // A flow of nothing but rounding asks for no fastener.
    let smallest = 1.0e-12 * input.shear_n.abs();
    Ok(SectionStress {
        parts,
        first_moment_mm3: first,
        shear_flow_n_per_mm: flow,
        seam_flow_n_per_mm: flow / seams,
        seam_stress_mpa: input.seam_width_mm.map(|width| flow / (seams * width)),
        fastener_spacing_mm: input.fastener_n.filter(|_| flow > smallest).map(|fastener| seams * fastener / flow),
        properties,
        cautions: vec![Caution::Structure.into()],
    })
}

/// Registry rows.
#[cfg(feature = "json")]
pub(super) const SECTION_PROPERTIES: crate::json::Calculation = crate::json::calculation!(
    section_properties: SectionPropertiesInput => SectionProperties, Document,
    "Area, centroid, second moments and principal axes of a section of one or more materials"
);

/// Registry row.
#[cfg(feature = "json")]
pub(super) const SECTION_STRESS: crate::json::Calculation = crate::json::calculation!(
    section_stress: SectionStressInput => SectionStress, Document,
    "Bending stresses of a built-up section, shear flow, glue-line stress and fastener spacing of its seams"
);

#[cfg(test)]
#[path = "section_tests.rs"]
mod tests;
