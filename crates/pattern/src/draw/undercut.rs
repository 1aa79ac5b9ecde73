//! Undercuts: sand that neither half of the mould can be lifted from, and the surface around it.
//!
//! Nothing is judged by the slope of a facet. The sand that is held is the room in the part's
//! columns with metal below and above; a patch of surface is undercut if it bounds such room and
//! exact lines from it, straight up and straight down, both meet metal. A ball, a fillet or an
//! upright wall has no such room, however its facets lie.

use rayon::prelude::*;

use super::columns::{Columns, Plot};
use super::frame::DrawFrame;
use super::remedy::{Advice, advise};
use super::trapped::Held;
use super::{DrawError, DrawSettings, sound};
use crate::cells::for_each_sample;
use crate::mesh::Mesh;
use crate::rays::along;
use crate::tree::Tree;
use crate::vector::{Vector, add, norm, scale};

/// What holds a pattern back along one line of draw.
#[derive(Clone, Debug, PartialEq)]
pub struct Undercuts {
    /// The way the cope is lifted, of length one, in the part's axes; the drag goes the other way.
    pub up: Vector,
    /// Surface that draws neither way, mm².
    pub area_mm2: f64,
    /// Sand that is held, mm³: the room that cores or loose pieces have to fill.
    pub trapped_mm3: f64,
    /// The places, largest first.
    pub regions: Vec<Trapped>,
    /// Surface that draws neither way on each facet, mm².
    pub facet_mm2: Vec<f64>,
    /// Distance of the columns by which the sand was measured, mm.
    pub column_mm: f64,
}

/// One connected body of sand that is held.
#[derive(Clone, Debug, PartialEq)]
pub struct Trapped {
    /// Its volume, mm³.
    pub volume_mm3: f64,
    /// Surface of the part around it, mm².
    pub area_mm2: f64,
    /// Its centre, mm, in the part's axes.
    pub centre_mm: Vector,
    /// Lowest and highest corner of the box around it, mm, in the part's axes.
    pub bounds_mm: [Vector; 2],
    /// What can be done about it.
    pub advice: Advice,
    /// The columns of its sand: lower and upper end of each, mm, in the part's axes.
    pub sand_mm: Vec<[Vector; 2]>,
}

/// Sand held in less room than a cube of 4 mm, mm³, is filled or rounded in the pattern: no hand
/// makes a loose piece or a core for it. With less, every letter and burr of a downloaded part asks
/// for a piece of its own; with more, a snug would be filled that the part needs.
const LEAST_FREED_MM3: f64 = 64.0;

impl Trapped {
    /// Whether it is worth a loose piece, a core or another way of drawing the part.
    pub fn is_worth_freeing(&self) -> bool {
        self.volume_mm3 >= LEAST_FREED_MM3
    }
}

/// Distance of the samples of the surface, in columns: closer ones cost time and hardly move the
/// area, which comes out within half a percent on a handle of a mug.
const SPACING: f64 = 1.7;

/// Most samples of the surface: enough for a tenth of a percent of the area where the part is
/// undercut at all, and less than a second.
const MOST_SAMPLES: f64 = 5e5;

/// How far off the surface the lines up and down start, as a share of the size of the part. Well
/// above the rounding of a file of single precision, so that an upright wall does not cover itself;
/// much more, and the flanks of a round bar would be left out.
const GRAZE: f64 = 1e-5;

/// Finds what holds a closed mesh, outward wound and in mm, when the cope is lifted along `up`.
///
/// # Errors
///
/// A direction of no length, or a mesh without facets.
pub fn undercuts(mesh: &Mesh, up: Vector, settings: &DrawSettings) -> Result<Undercuts, DrawError> {
    let frame = sound(mesh, up)?;
    let turned = frame.turned(mesh);
    let whole = Columns::staggered(&turned, Plot::of_part(&turned, settings.columns));
    let column_mm = whole.size_mm;
    let mut found = Undercuts {
        up: frame.up,
        area_mm2: 0.0,
        trapped_mm3: 0.0,
        regions: Vec::new(),
        facet_mm2: vec![0.0; mesh.triangles.len()],
        column_mm,
    };
    let mut held = Held::of(whole.clone());
    if held.gaps.is_empty() {
        return Ok(found);
    }
    if let Some(plot) = held.closer_plot(settings.columns) {
        found.column_mm = plot.size_mm;
        held = Held::of(Columns::staggered(&turned, plot));
    }
    let tree = Tree::over(&turned);
    held.rap(&turned, &tree, settings.play_mm);
    let surface = surface(&turned, &tree, &held, GRAZE * mesh.diagonal());
    let mut area_mm2 = vec![0.0; held.holds.len()];
    for (facet, region, area) in surface {
        found.facet_mm2[facet as usize] += area;
        area_mm2[region as usize] += area;
    }
    found.regions = regions(&held, &whole, &frame, &area_mm2);
    found.area_mm2 = found.regions.iter().map(|region| region.area_mm2).sum();
    found.trapped_mm3 = found.regions.iter().map(|region| region.volume_mm3).sum();
    Ok(found)
}

/// Facets worked through at a time.
const PORTION: usize = 1024;

/// Undercut surface: facet, region and area of each patch, in the order of the facets.
fn surface(turned: &Mesh, tree: &Tree, held: &Held, graze_mm: f64) -> Vec<(u32, u32, f64)> {
    let near: Vec<u32> = (0..turned.triangles.len() as u32)
        .filter(|&facet| touches(turned, facet, held))
        .collect();
    let area: f64 = near
        .iter()
        .map(|&facet| norm(turned.normal(facet as usize)) / 2.0)
        .sum();
    let spacing = (SPACING * held.columns.size_mm).max((area / MOST_SAMPLES).sqrt());
    let portions: Vec<Vec<(u32, u32, f64)>> = near
        .par_chunks(PORTION)
        .map(|facets| {
            let mut found = Vec::new();
            for &facet in facets {
                for_each_sample(
                    turned.corners(facet as usize),
                    spacing,
                    |point, normal, area| {
                        let region = region_at(held, point);
                        if let Some(region) = region
                            && is_covered(turned, tree, beside(point, normal, graze_mm))
                        {
                            found.push((facet, region, area));
                        }
                    },
                );
            }
            found
        })
        .collect();
    portions.concat()
}

/// Whether a facet stands over the rectangle of the columns at all.
fn touches(turned: &Mesh, facet: u32, held: &Held) -> bool {
    let plot = held.columns.plot();
    let corners = turned.corners(facet as usize);
    (0..2).all(|axis| {
        let from = plot.origin_mm[axis];
        let to = from + plot.count[axis] as f64 * plot.size_mm;
        corners.iter().any(|corner| corner[axis] <= to)
            && corners.iter().any(|corner| corner[axis] >= from)
    })
}

/// The region that holds sand at a place or within a column of it.
fn region_at(held: &Held, point: Vector) -> Option<u32> {
    let columns = &held.columns;
    let reach = columns.size_mm;
    for shift in NEAREST_FIRST {
        let place = [0, 1].map(|axis| point[axis] + shift[axis] * reach);
        let Some(column) = columns.at(place) else {
            continue;
        };
        for gap in &held.gaps[held.gaps_of(column)] {
            let within = gap.from_mm - reach <= point[2] && point[2] <= gap.to_mm + reach;
            if within && held.holds[gap.region as usize] {
                return Some(gap.region);
            }
        }
    }
    None
}

const NEAREST_FIRST: [[f64; 2]; 9] = [
    [0.0, 0.0],
    [1.0, 0.0],
    [-1.0, 0.0],
    [0.0, 1.0],
    [0.0, -1.0],
    [1.0, 1.0],
    [1.0, -1.0],
    [-1.0, 1.0],
    [-1.0, -1.0],
];

/// A place in the sand beside a place of the surface, a hair off along its normal.
fn beside(point: Vector, normal: Vector, graze_mm: f64) -> Vector {
    add(point, scale(normal, graze_mm))
}

/// Whether a place lies in sand with metal both above and below.
fn is_covered(turned: &Mesh, tree: &Tree, point: Vector) -> bool {
    let (mut below, mut above, mut depth) = (false, false, 0);
    for met in along(turned, tree, 2, point) {
        if met.at <= point[2] {
            depth += met.step;
            below = true;
        } else {
            above = true;
        }
    }
    depth <= 0 && below && above
}

/// The regions that hold, largest first.
fn regions(held: &Held, whole: &Columns, frame: &DrawFrame, area_mm2: &[f64]) -> Vec<Trapped> {
    let mut members: Vec<Vec<usize>> = vec![Vec::new(); held.holds.len()];
    for (number, gap) in held.gaps.iter().enumerate() {
        members[gap.region as usize].push(number);
    }
    let all = members.into_iter().zip(area_mm2).zip(&held.holds);
    let mut regions: Vec<Trapped> = all
        .filter(|(_, holds)| **holds)
        .map(|((gaps, &area_mm2), _)| measured(held, whole, frame, &gaps, area_mm2))
        .collect();
    regions.sort_by(|a, b| b.volume_mm3.total_cmp(&a.volume_mm3));
    regions
}

fn measured(
    held: &Held,
    whole: &Columns,
    frame: &DrawFrame,
    gaps: &[usize],
    area_mm2: f64,
) -> Trapped {
    let square = held.columns.size_mm * held.columns.size_mm;
    let mut volume_mm3 = 0.0;
    let mut moment = [0.0; 3];
    let mut bounds = [[f64::INFINITY; 3], [f64::NEG_INFINITY; 3]];
    let mut sand_mm = Vec::with_capacity(gaps.len());
    for gap in gaps.iter().map(|&gap| &held.gaps[gap]) {
        let [x, y] = held.columns.place_mm(gap.column as usize);
        let volume = (gap.to_mm - gap.from_mm) * square;
        volume_mm3 += volume;
        moment = add(
            moment,
            scale([x, y, (gap.from_mm + gap.to_mm) / 2.0], volume),
        );
        let ends = [gap.from_mm, gap.to_mm].map(|z| frame.part_from_draw([x, y, z]));
        sand_mm.push(ends);
        for end in ends {
            bounds = [
                [0, 1, 2].map(|axis| bounds[0][axis].min(end[axis])),
                [0, 1, 2].map(|axis| bounds[1][axis].max(end[axis])),
            ];
        }
    }
    Trapped {
        volume_mm3,
        area_mm2,
        centre_mm: frame.part_from_draw(scale(moment, 1.0 / volume_mm3)),
        bounds_mm: bounds,
        advice: advise(held, whole, frame, gaps),
        sand_mm,
    }
}
