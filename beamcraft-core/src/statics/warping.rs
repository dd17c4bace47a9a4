//! Warping torsion of open thin-walled sections: shear centre, warping constant, stresses of restrained warping.

use super::section::SectionPoint;
use crate::error::{Detail, Error, ErrorCode, Fault, Result};
use crate::finding::{Caution, CautionText};
use crate::limits::{self, faults_at, limited, list_faults};
use crate::numeric::compensated_sum;

/// An open thin-walled section as a chain of walls, with what twists it.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, serde::Deserialize, schemars::JsonSchema))]
#[cfg_attr(feature = "json", serde(deny_unknown_fields))]
#[cfg_attr(feature = "json", schemars(transform = crate::json::ranges::<OpenWallWarpingInput>))]
pub struct OpenWallWarpingInput {
    /// Corners of the midline, from one free edge to the other.
    pub corners: Vec<SectionPoint>,
    /// Thickness of each wall from corner to corner, mm; one less than there are corners.
    pub thicknesses_mm: Vec<f64>,
    /// Torque that restrained warping carries at this section, N·mm; 0, the default, asks for no shear stress.
    #[cfg_attr(feature = "json", serde(default))]
    pub torque_nmm: f64,
    /// Bimoment at this section, N·mm²; 0, the default, asks for no stress along the body.
    #[cfg_attr(feature = "json", serde(default))]
    pub bimoment_nmm2: f64,
}

limited!(OpenWallWarpingInput { torque_nmm: MOMENT, bimoment_nmm2: BIMOMENT });

/// Warping of one corner.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct CornerWarping {
    /// The corner.
    pub corner: SectionPoint,
    /// Twice the area that the radius from the shear centre sweeps up to here, mm², with a mean of zero over the section.
    pub swept_mm2: f64,
}

/// Warping figures of an open section.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "json", derive(serde::Serialize, schemars::JsonSchema))]
pub struct OpenWallWarping {
    /// Area, mm².
    pub area_mm2: f64,
    /// Centroid.
    pub centroid: SectionPoint,
    /// Shear centre: a load through it bends and does not twist.
    pub shear_centre: SectionPoint,
    /// Torsion constant of free twisting, Σ b t³/3, mm⁴.
    pub torsion_constant_mm4: f64,
    /// Warping constant about the shear centre, mm⁶; 0 for walls that meet in one corner.
    pub warping_constant_mm6: f64,
    /// Warping of the corners, in the order given.
    pub corners: Vec<CornerWarping>,
    /// Torsion constant of the shear of restrained warping, C_w² / ∫ S²/t ds, mm⁴: by it, twist per length is T/(G J_s);
    /// absent without a warping constant.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub warping_shear_constant_mm4: Option<f64>,
    /// Largest stress along the body by the bimoment, MPa; absent without a warping constant.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub greatest_stress_mpa: Option<f64>,
    /// Largest shear stress by the torque, MPa; absent without a warping constant.
    #[cfg_attr(feature = "json", serde(skip_serializing_if = "Option::is_none"))]
    pub greatest_shear_mpa: Option<f64>,
    /// Cautions that belong to these numbers.
    pub cautions: Vec<CautionText>,
}

/// Shear centre, warping constant and the stresses of restrained warping of an open chain of thin walls.
///
/// # Equation
/// ```text
/// w(s) = ∫ r ds about the shear centre, mean over the area 0        C_w = ∫ w² t ds      S(s) = ∫ w t ds
/// sigma = B w / C_w      tau = T S / (C_w t)      shear twist per length = T/(G J_s),  J_s = C_w² / ∫ S²/t ds
/// bar:  E C_w θ'''' − G J θ'' = m      B = −E C_w θ''      T = −E C_w θ'''
/// ```
/// | symbol | meaning | unit | here |
/// |---|---|---|---|
/// | w | swept area, twice | mm² | `corners[].swept_mm2` |
/// | S | its first moment up to a point | mm⁴ | – |
/// | B, T | bimoment, torque of restrained warping | N·mm², N·mm | `bimoment_nmm2`, `torque_nmm` |
/// | r | distance of the wall's line from the shear centre | mm | – |
///
/// Without the part G J of free twisting, which only helps, the bar is a beam: θ is its deflection, C_w its second moment, m its
/// load, B its bending moment. So `beam_on_supports` solves it over any studs.
///
/// # Limits
/// Thin walls that keep the shape of the section; no branches. Three walls in a chain keep their shape by themselves, as each moves
/// in its own plane; more need bulkheads. With walls of a tenth of the section, C_w lies within some parts in a hundred of finite
/// elements.
///
/// # Errors
/// `out_of_range`, `not_finite`, each with its path; `no_section` with fewer than two corners or a wall without length;
/// `inconsistent` when there is not one thickness a wall.
///
/// # Source
/// `Vlasov`, theory of thin-walled open bars, derived in the theory pages (recalled); checked by `verification/warping`.
///
/// # Examples
/// ```
/// use beamcraft_core::statics::{open_wall_warping, OpenWallWarpingInput, SectionPoint};
/// let corner = |x_mm, y_mm| SectionPoint { x_mm, y_mm };
/// // A channel 6 high and 4 wide: its shear centre lies 1.6 behind the web.
/// let channel = open_wall_warping(&OpenWallWarpingInput {
///     corners: vec![corner(40.0, -30.0), corner(0.0, -30.0), corner(0.0, 30.0), corner(40.0, 30.0)],
///     thicknesses_mm: vec![1.5; 3], torque_nmm: 0.0, bimoment_nmm2: 0.0,
/// })?;
/// assert!((channel.shear_centre.x_mm + 16.0).abs() < 1e-9);
/// # Ok::<(), beamcraft_core::error::Error>(())
/// ```
pub fn open_wall_warping(input: &OpenWallWarpingInput) -> Result<OpenWallWarping> {
    let (walls, pole) = walls(input)?;
    let area_mm2 = compensated_sum(walls.iter().map(|wall| wall.area));
    let mean = |of: fn(&Wall) -> Along| compensated_sum(walls.iter().map(|wall| wall.first(of(wall)))) / area_mm2;
    let (mean_x, mean_y, mean_w) = (mean(|wall| wall.x), mean(|wall| wall.y), mean(|wall| wall.swept));
    let shifted: Vec<_> = walls.iter().map(|wall| wall.less(mean_x, mean_y, mean_w)).collect();
    let both = |f: fn(&Wall) -> Along, g: fn(&Wall) -> Along| {
        compensated_sum(shifted.iter().map(|wall| wall.second(f(wall), g(wall))))
    };
    let (ix, iy, ixy) = (both(|w| w.y, |w| w.y), both(|w| w.x, |w| w.x), both(|w| w.x, |w| w.y));
    let (with_y, with_x) = (both(|w| w.swept, |w| w.y), both(|w| w.swept, |w| w.x));
    let spread = ix * iy - ixy * ixy;
    // A straight strip twists about its middle and does not warp in this sense.
    let straight = spread <= FLAT * (ix + iy) * (ix + iy);
    let (dx, dy) = if straight {
        (mean_x - pole.x_mm, mean_y - pole.y_mm)
    } else {
        ((with_y * iy - with_x * ixy) / spread, (with_y * ixy - with_x * ix) / spread)
    };
    let about: Vec<_> = shifted.iter().map(|wall| wall.about(dx, dy)).collect();
    let constant = compensated_sum(about.iter().map(|wall| wall.second(wall.swept, wall.swept)));
    let length = compensated_sum(walls.iter().map(|wall| wall.length));
    // Where only rounding is left, there is no warping.
    let warps = !straight && constant > FLAT * area_mm2 * length * length * length * length;
    let first = about.first().map(Wall::start);
    let warping = first.into_iter().chain(about.iter().map(Wall::end));
    let corners = input.corners.iter().zip(warping);
    let corners =
        corners.map(|(corner, swept)| CornerWarping { corner: *corner, swept_mm2: if warps { swept } else { 0.0 } });
    let corners: Vec<_> = corners.collect();
    let flow = flow(&about);
    let greatest = corners.iter().map(|corner| corner.swept_mm2.abs()).fold(0.0, f64::max);
    Ok(OpenWallWarping {
        area_mm2,
        centroid: SectionPoint { x_mm: mean_x, y_mm: mean_y },
        shear_centre: SectionPoint { x_mm: pole.x_mm + dx, y_mm: pole.y_mm + dy },
        torsion_constant_mm4: compensated_sum(
            walls.iter().map(|wall| wall.area * wall.thickness * wall.thickness / 3.0),
        ),
        warping_constant_mm6: if warps { constant } else { 0.0 },
        corners,
        warping_shear_constant_mm4: warps.then(|| constant / (flow.energy / constant)),
        greatest_stress_mpa: warps.then(|| input.bimoment_nmm2 * (greatest / constant)),
        greatest_shear_mpa: warps.then(|| input.torque_nmm * (flow.greatest / constant)),
        cautions: vec![Caution::Structure.into()],
    })
}

/// Share of a natural size below which only rounding is left.
const FLAT: f64 = 1.0e-12;

/// A quantity that runs straight along a wall, by its two ends.
type Along = (f64, f64);

/// One wall with what runs along it.
#[derive(Clone, Copy)]
struct Wall {
    length: f64,
    thickness: f64,
    area: f64,
    x: Along,
    y: Along,
    swept: Along,
}

impl Wall {
    /// ∫ f dA
    fn first(&self, f: Along) -> f64 {
        0.5 * self.area * (f.0 + f.1)
    }

    /// ∫ f g dA
    fn second(&self, f: Along, g: Along) -> f64 {
        self.area / 6.0 * (2.0 * f.0 * g.0 + f.0 * g.1 + f.1 * g.0 + 2.0 * f.1 * g.1)
    }

    fn less(&self, x: f64, y: f64, swept: f64) -> Self {
        let from = |along: Along, by: f64| (along.0 - by, along.1 - by);
        Self { x: from(self.x, x), y: from(self.y, y), swept: from(self.swept, swept), ..*self }
    }

    /// Swept area about a pole moved by (dx, dy) from where it was.
    fn about(&self, dx: f64, dy: f64) -> Self {
        let moved = |swept: f64, x: f64, y: f64| swept - dx * y + dy * x;
        let swept = (moved(self.swept.0, self.x.0, self.y.0), moved(self.swept.1, self.x.1, self.y.1));
        Self { swept, ..*self }
    }

    const fn start(&self) -> f64 {
        self.swept.0
    }

    const fn end(&self) -> f64 {
        self.swept.1
    }
}

/// The walls with the area swept from the middle of the corners, where digits are lost least, and that middle.
fn walls(input: &OpenWallWarpingInput) -> Result<(Vec<Wall>, SectionPoint)> {
    let mut faults: Vec<Detail> = faults_at("", input);
    for (k, corner) in input.corners.iter().enumerate() {
        faults.extend(faults_at(&format!("corners[{k}]"), corner));
    }
    faults.extend(list_faults("thicknesses_mm", &input.thicknesses_mm, &limits::BOARD_THICKNESS));
    Error::unless_empty(faults)?;
    let count = input.corners.len();
    if count < 2 {
        return Err(Fault::plain(ErrorCode::NoSection, "corners", "at least two corners", "").into());
    }
    if input.thicknesses_mm.len() + 1 != count {
        let allowed = "one thickness a wall, one less than corners";
        return Err(Fault::plain(ErrorCode::Inconsistent, "thicknesses_mm", allowed, "").into());
    }
    let middle = |of: fn(&SectionPoint) -> f64| compensated_sum(input.corners.iter().map(of)) / count as f64;
    let (x0, y0) = (middle(|corner| corner.x_mm), middle(|corner| corner.y_mm));
    let mut swept = 0.0;
    let mut walls = Vec::new();
    let pairs = input.corners.iter().zip(input.corners.iter().skip(1));
    for (k, ((a, b), thickness)) in pairs.zip(&input.thicknesses_mm).enumerate() {
        let (dx, dy) = (b.x_mm - a.x_mm, b.y_mm - a.y_mm);
        let length = (dx * dx + dy * dy).sqrt();
        if length < LEAST_WALL_MM {
            let fault =
                Fault::plain(ErrorCode::NoSection, "corners", "corners at least 0.01 mm apart", "leave one out");
            return Err(Error::one(Detail { path: format!("corners[{}]", k + 1), ..fault.into() }));
        }
        let next = swept + (a.x_mm - x0) * dy - (a.y_mm - y0) * dx;
        walls.push(Wall {
            length,
            thickness: *thickness,
            area: length * thickness,
            x: (a.x_mm, b.x_mm),
            y: (a.y_mm, b.y_mm),
            swept: (swept, next),
        });
        swept = next;
    }
    Ok((walls, SectionPoint { x_mm: x0, y_mm: y0 }))
}

/// Least length of a wall, mm.
const LEAST_WALL_MM: f64 = 0.01;

/// What the shear of restrained warping asks of the walls, per torque over the warping constant.
struct WarpingFlow {
    /// ∫ S²/t ds
    energy: f64,
    /// Largest S/t.
    greatest: f64,
}

fn flow(walls: &[Wall]) -> WarpingFlow {
    let mut before = 0.0;
    let mut found = WarpingFlow { energy: 0.0, greatest: 0.0 };
    for wall in walls {
        let (a, b) = wall.swept;
        // S along the wall, at a share of its length.
        let at = |share: f64| before + wall.area * (a * share + 0.5 * (b - a) * share * share);
        // Three points of Gauss are exact for a polynomial of the fourth degree.
        let off = 0.5 * (0.6_f64).sqrt();
        let square = |share: f64| at(share) * at(share);
        let mean = (5.0 * square(0.5 - off) + 8.0 * square(0.5) + 5.0 * square(0.5 + off)) / 18.0;
        found.energy += mean * wall.length / wall.thickness;
        let turn = if a == b { 1.0 } else { (a / (a - b)).clamp(0.0, 1.0) };
        let most = at(turn).abs().max(at(1.0).abs());
        found.greatest = found.greatest.max(most / wall.thickness);
        before = at(1.0);
    }
    found
}

/// Registry row.
#[cfg(feature = "json")]
pub(super) const OPEN_WALL_WARPING: crate::json::Calculation = crate::json::calculation!(
    open_wall_warping: OpenWallWarpingInput => OpenWallWarping, Document,
    "Shear centre, warping constant and stresses of restrained warping of an open thin-walled section"
);

#[cfg(test)]
#[path = "warping_tests.rs"]
mod tests;
