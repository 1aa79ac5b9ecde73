//! Ways of drawing a part, found by trying directions: all of them on few columns, the best closer.

use rayon::prelude::*;

use super::candidates::{self, is_same_line};
use super::columns::{Columns, Plot};
use super::frame::DrawFrame;
use super::level::{Band, level, rough_bands};
use super::undercut::undercuts;
use super::way::{Way, Yardstick, cost, looks_down};
use super::{DrawError, DrawSettings, sound};
use crate::mesh::Mesh;
use crate::vector::{Vector, add, dot, norm, scale};

/// Columns along the longer side when all directions are tried, and when the best are weighed.
const GLANCE: usize = 48;
const WEIGH: usize = 160;

/// Points closer than this share of the part are one when all directions are tried: a third of a
/// column, and a mesh of a million facets costs no more than one of thirty thousand.
const LIGHT: f64 = 0.006;

/// Lines of draw that are followed up with small turns, and by how many degrees; a knot of the net
/// is 9° from the furthest direction that has it as its nearest.
const FOLLOWED: usize = 2;
const TURNS_DEGREES: [f64; 3] = [7.0, 3.0, 1.2];

/// Lines of draw closer than this count as one way of drawing the part.
const APART_DEGREES: f64 = 12.0;

/// The best ways of drawing a closed mesh, outward wound and in mm, the best first: each line of
/// draw with the better of its two ends up. At most `most` lines are given.
///
/// `clean` is the way a face looks that is to come out clean, and so is to lie in the drag.
///
/// # Errors
///
/// A mesh without facets or without volume.
pub fn ways(
    mesh: &Mesh,
    clean: Option<Vector>,
    settings: &DrawSettings,
    most: usize,
) -> Result<Vec<Way>, DrawError> {
    sound(mesh, [0.0, 0.0, 1.0])?;
    let of = yardstick(mesh);
    if of.volume_mm3 <= 0.0 {
        return Err(DrawError::NoPart);
    }
    let light = lightened(mesh, of.size_mm * LIGHT);
    let made = glances(&light, &of, candidates::made(mesh));
    let mut seen = glances(&light, &of, candidates::net());
    seen.extend(made.iter().cloned());
    for degrees in TURNS_DEGREES {
        seen.sort_by(|a, b| a.cost.total_cmp(&b.cost));
        let best = apart(&seen, FOLLOWED);
        let held = best.into_iter().filter(|way| is_held(way, &of));
        let more = held
            .flat_map(|way| candidates::around(way.up, degrees))
            .collect();
        seen.extend(glances(&light, &of, more));
    }
    seen.sort_by(|a, b| a.cost.total_cmp(&b.cost));
    // A tilt that looks as good on few columns must not hide the true axis beside it.
    let mut lines = apart(&made, most);
    let more = apart(&seen, most);
    lines.extend(
        more.into_iter()
            .filter(|way| made.iter().all(|made| made.up != way.up)),
    );
    let weighed: Result<Vec<Way>, DrawError> = lines
        .into_par_iter()
        .map(|way| weighed(mesh, &of, way.up, clean, settings))
        .collect();
    let mut weighed = weighed?;
    weighed.sort_by(|a, b| a.cost.total_cmp(&b.cost));
    Ok(apart(&weighed, most))
}

fn yardstick(mesh: &Mesh) -> Yardstick {
    let volume = |facet: usize| {
        let [a, b, c] = mesh.corners(facet);
        dot(a, crate::vector::cross(b, c)) / 6.0
    };
    Yardstick {
        area_mm2: mesh.area(),
        volume_mm3: (0..mesh.triangles.len()).map(volume).sum(),
        size_mm: mesh.diagonal(),
    }
}

/// A mesh of fewer facets, still closed: points in one cell are put together.
fn lightened(mesh: &Mesh, cell_mm: f64) -> Mesh {
    let cell = |point: &Vector| point.map(|x| (x / cell_mm).floor() as i64);
    let mut keyed: Vec<([i64; 3], u32)> = mesh.points.iter().map(cell).zip(0..).collect();
    keyed.par_sort_unstable();
    let mut light = Mesh::default();
    let mut stands_for = vec![0u32; mesh.points.len()];
    for group in keyed.chunk_by(|a, b| a.0 == b.0) {
        let sum = group.iter().fold([0.0; 3], |sum, (_, point)| {
            add(sum, mesh.points[*point as usize])
        });
        for (_, point) in group {
            stands_for[*point as usize] = light.points.len() as u32;
        }
        light.points.push(scale(sum, 1.0 / group.len() as f64));
    }
    let triangles = mesh
        .triangles
        .iter()
        .map(|t| t.map(|point| stands_for[point as usize]));
    light.triangles = triangles
        .filter(|[a, b, c]| a != b && b != c && c != a)
        .collect();
    light
}

/// Whether small turns may help: a direction without any undercut needs none.
fn is_held(way: &Way, of: &Yardstick) -> bool {
    way.undercut_mm2 > 1e-4 * of.area_mm2
}

/// The first ways of a sorted list that lie apart from each other.
fn apart(sorted: &[Way], most: usize) -> Vec<Way> {
    let mut taken: Vec<Way> = Vec::new();
    for way in sorted {
        let is_new = taken
            .iter()
            .all(|other| !is_same_line(other.up, way.up, APART_DEGREES));
        if is_new && taken.len() < most {
            taken.push(way.clone());
        }
    }
    taken
}

/// A quick look along each direction, the best first.
fn glances(mesh: &Mesh, of: &Yardstick, directions: Vec<Vector>) -> Vec<Way> {
    let looked = directions.into_par_iter().map_init(
        || mesh.clone(),
        |copy, up| {
            let frame = DrawFrame::drawing_along(up)?;
            frame.turn(mesh, copy);
            let columns = Columns::staggered(copy, Plot::of_part(copy, GLANCE));
            let held = held(copy, &columns);
            Some(way_of(frame.up, &Seen::of(copy, &columns), held, of, None))
        },
    );
    let mut ways: Vec<Way> = looked.collect::<Vec<_>>().into_iter().flatten().collect();
    ways.sort_by(|a, b| a.cost.total_cmp(&b.cost));
    ways
}

/// A closer look along one line, the better end up.
fn weighed(
    mesh: &Mesh,
    of: &Yardstick,
    up: Vector,
    clean: Option<Vector>,
    settings: &DrawSettings,
) -> Result<Way, DrawError> {
    let rougher = DrawSettings {
        columns: settings.columns.min(WEIGH),
        ..*settings
    };
    let found = undercuts(mesh, up, &rougher)?;
    let held = [found.area_mm2, found.trapped_mm3];
    let frame = sound(mesh, up)?;
    let turned = frame.turned(mesh);
    let seen = Seen::of(
        &turned,
        &Columns::staggered(&turned, Plot::of_part(&turned, WEIGH)),
    );
    let upright = way_of(frame.up, &seen, held, of, clean);
    let upside_down = way_of(scale(frame.up, -1.0), &seen.upside_down(), held, of, clean);
    Ok(if upside_down.cost < upright.cost {
        upside_down
    } else {
        upright
    })
}

/// Undercut surface and held sand by the columns alone, mm² and mm³.
fn held(turned: &Mesh, columns: &Columns) -> [f64; 2] {
    let square = columns.size_mm * columns.size_mm;
    let area = |facet: u32| {
        let normal = turned.normal(facet as usize);
        // Steeper facets than this stand for more surface than a column can vouch for.
        square / (normal[2].abs() / norm(normal)).max(0.15)
    };
    let mut sum = [0.0; 2];
    for column in 0..columns.len() {
        for pair in columns.spans(column).windows(2) {
            sum[0] += area(pair[0].over) + area(pair[1].under);
            sum[1] += square * (pair[1].from_mm - pair[0].to_mm).max(0.0);
        }
    }
    sum
}

/// What the columns show of a part besides its undercuts.
struct Seen {
    bands: Vec<Band>,
    ends_mm: [f64; 2],
    shadow_mm2: f64,
}

impl Seen {
    fn of(turned: &Mesh, columns: &Columns) -> Seen {
        let [low, high] = turned.bounds();
        let dark = (0..columns.len())
            .filter(|&column| !columns.spans(column).is_empty())
            .count();
        Seen {
            bands: rough_bands(columns),
            ends_mm: [low[2], high[2]],
            shadow_mm2: dark as f64 * columns.size_mm * columns.size_mm,
        }
    }

    fn upside_down(&self) -> Seen {
        let turn = |[low, high]: [f64; 2]| [-high, -low];
        let bands = self.bands.iter().map(|band| Band {
            tight_mm: turn(band.tight_mm),
            loose_mm: turn(band.loose_mm),
        });
        Seen {
            bands: bands.collect(),
            ends_mm: turn(self.ends_mm),
            shadow_mm2: self.shadow_mm2,
        }
    }
}

fn way_of(
    up: Vector,
    seen: &Seen,
    [undercut_mm2, trapped_mm3]: [f64; 2],
    of: &Yardstick,
    clean: Option<Vector>,
) -> Way {
    let joint = level(&seen.bands, seen.ends_mm);
    let mut way = Way {
        up,
        undercut_mm2,
        trapped_mm3,
        cope_mm: (seen.ends_mm[1] - joint.at_mm).max(0.0),
        drag_mm: (joint.at_mm - seen.ends_mm[0]).max(0.0),
        level_mm: joint.at_mm,
        wanders_mm: joint.wanders_mm[0] + joint.wanders_mm[1],
        shadow_mm2: seen.shadow_mm2,
        clean_down: clean.and_then(|face| looks_down(face, up)),
        cost: 0.0,
    };
    way.cost = cost(&way, of);
    way
}
