//! The corners of a region of mixes, the middles between them, and what lies inside.
//!
//! At a corner as many bounds and limits are met exactly as leave no freedom. With no limits one
//! component is free and takes what the others leave (McLean and Anderson, Technometrics 8 (1966)
//! 447); with each limit that is met exactly, one more component is free and a small system of
//! equations says how much of each.

use nalgebra::{DMatrix, DVector};

use crate::region::{ROUNDING, Region, RegionError, checked};

/// Points of a region from which batches are chosen, corners first.
#[derive(Clone, Debug, PartialEq)]
pub struct Landmarks {
    /// The corners.
    pub vertices: Vec<Vec<f64>>,
    /// The middles of the edges between corners.
    pub edges: Vec<Vec<f64>>,
    /// The middles of the faces.
    pub faces: Vec<Vec<f64>>,
    /// The middle of all corners.
    pub centre: Vec<f64>,
    /// Half way from the middle to each corner: boundary points alone foretell the inside badly.
    pub inside: Vec<Vec<f64>>,
}

/// The corners of a region, in rising order.
///
/// # Errors
/// When the bounds are none, or no mix meets bounds and limits.
pub fn vertices(region: &Region) -> Result<Vec<Vec<f64>>, RegionError> {
    checked(region)?;
    let mut found = Vec::new();
    for held in sides_held(region) {
        let free = held.len() + 1;
        for free in choices(region.components.len(), free) {
            corners(region, &held, &free, &mut found);
        }
    }
    distinct(&mut found);
    if found.is_empty() {
        let names = region.limits.iter().map(|limit| limit.name.clone());
        return Err(RegionError::NoMixMeets(names.collect()));
    }
    Ok(found)
}

/// The corners of a region and the points that belong to them.
///
/// # Errors
/// When the bounds are none, or no mix meets bounds and limits.
pub fn landmarks(region: &Region) -> Result<Landmarks, RegionError> {
    let vertices = vertices(region)?;
    let met: Vec<Vec<usize>> = vertices.iter().map(|one| met(region, one)).collect();
    let centre = middle(vertices.iter());
    let mut edges = edges(region, &vertices, &met);
    distinct(&mut edges);
    let mut faces = faces(&vertices, &met);
    distinct(&mut faces);
    let known = |point: &Vec<f64>| edges.iter().chain([&centre]).any(|one| same(one, point));
    faces.retain(|face| !known(face));
    let inside = vertices.iter().map(|one| middle([one, &centre]));
    Ok(Landmarks {
        inside: inside.filter(|one| !same(one, &centre)).collect(),
        vertices,
        edges,
        faces,
        centre,
    })
}

impl Landmarks {
    /// All of them drawn in towards the centre to this share of their distance. For a first plan
    /// that hunts for the best mix one half serves: on the edge of the region most mixes are poor,
    /// and what they teach is how poor. In the simulated campaigns of the tests a start on the edge
    /// finds the best mix in two of three, one at half way in nine of ten.
    pub fn drawn_in(&self, share: f64) -> Vec<Vec<f64>> {
        let outer = self.vertices.iter().chain(&self.edges).chain(&self.faces);
        let towards = |point: &Vec<f64>| {
            let each = point.iter().zip(&self.centre);
            each.map(|(value, centre)| centre + share * (value - centre))
                .collect()
        };
        outer.map(towards).chain([self.centre.clone()]).collect()
    }

    /// All of them, corners first.
    pub fn all(&self) -> Vec<Vec<f64>> {
        let outer = self.vertices.iter().chain(&self.edges).chain(&self.faces);
        let mut all: Vec<Vec<f64>> = outer
            .chain([&self.centre])
            .chain(&self.inside)
            .cloned()
            .collect();
        let mut kept: Vec<Vec<f64>> = Vec::new();
        for point in all.drain(..) {
            if !kept.iter().any(|one| same(one, &point)) {
                kept.push(point);
            }
        }
        kept
    }
}

/// Every way to hold some of the limits at one of their ends: the limit and the value held.
fn sides_held(region: &Region) -> Vec<Vec<(usize, f64)>> {
    let mut ways: Vec<Vec<(usize, f64)>> = vec![Vec::new()];
    for (at, limit) in region.limits.iter().enumerate() {
        let ends = [limit.low, limit.high];
        let ends = ends.into_iter().filter(|end| end.is_finite());
        let longer: Vec<_> = ends
            .flat_map(|end| {
                let with = |way: &Vec<(usize, f64)>| [way.as_slice(), &[(at, end)]].concat();
                ways.iter().map(with).collect::<Vec<_>>()
            })
            .collect();
        ways.extend(longer);
    }
    ways.retain(|way| way.len() < region.components.len());
    ways
}

/// Every choice of so many out of so many.
fn choices(of: usize, take: usize) -> Vec<Vec<usize>> {
    let mut found = vec![Vec::new()];
    for _ in 0..take {
        let longer = found.into_iter().flat_map(|one: Vec<usize>| {
            let next = one.last().map_or(0, |last| last + 1);
            (next..of).map(move |at| [one.as_slice(), &[at]].concat())
        });
        found = longer.collect();
    }
    found
}

/// The corners at which these limits are held, these components are free and the rest at bounds.
fn corners(region: &Region, held: &[(usize, f64)], free: &[usize], found: &mut Vec<Vec<f64>>) {
    let count = region.components.len();
    let bound: Vec<usize> = (0..count).filter(|at| !free.contains(at)).collect();
    let weight = |row: usize, at: usize| match row {
        0 => 1.0,
        row => region.limits[held[row - 1].0].weights[at],
    };
    let system = DMatrix::from_fn(free.len(), free.len(), |row, column| {
        weight(row, free[column])
    });
    let solver = system.lu();
    for ends in 0..1_usize << bound.len() {
        let mut mix = vec![0.0; count];
        for (bit, at) in bound.iter().enumerate() {
            let one = &region.components[*at];
            mix[*at] = if ends >> bit & 1 == 0 {
                one.low
            } else {
                one.high
            };
        }
        let wanted = DVector::from_fn(free.len(), |row, _| {
            let whole = if row == 0 { 1.0 } else { held[row - 1].1 };
            whole
                - bound
                    .iter()
                    .map(|at| weight(row, *at) * mix[*at])
                    .sum::<f64>()
        });
        let Some(solved) = solver.solve(&wanted) else {
            return;
        };
        for (at, share) in free.iter().zip(solved.iter()) {
            mix[*at] = *share;
        }
        if region.holds(&mix) {
            found.push(mix.iter().map(|share| clean(*share)).collect());
        }
    }
}

/// A share without the last digits that solving left, so that like corners sort together.
fn clean(share: f64) -> f64 {
    (share * 1e12).round() / 1e12 + 0.0
}

/// Sorts points and leaves out the repeated ones.
fn distinct(points: &mut Vec<Vec<f64>>) {
    points.sort_by(|one, other| {
        let unlike = one
            .iter()
            .zip(other)
            .find(|(a, b)| (*a - *b).abs() > ROUNDING);
        unlike.map_or(std::cmp::Ordering::Equal, |(a, b)| a.total_cmp(b))
    });
    points.dedup_by(|one, other| same(one, other));
}

fn same(one: &[f64], other: &[f64]) -> bool {
    one.iter()
        .zip(other)
        .all(|(a, b)| (a - b).abs() <= ROUNDING)
}

fn middle<'a>(points: impl IntoIterator<Item = &'a Vec<f64>>) -> Vec<f64> {
    let points: Vec<&Vec<f64>> = points.into_iter().collect();
    let components = points.first().map_or(0, |one| one.len());
    let mean = |at: usize| points.iter().map(|one| one[at]).sum::<f64>() / points.len() as f64;
    (0..components).map(mean).collect()
}

/// Which bounds and limits a corner meets exactly: two numbers a component, then two a limit.
fn met(region: &Region, mix: &[f64]) -> Vec<usize> {
    let bounds = region.components.iter().zip(mix);
    let bounds = bounds.flat_map(|(one, share)| [share - one.low, share - one.high]);
    let limits = region.limits.iter();
    let limits = limits.flat_map(|one| [one.of(mix) - one.low, one.of(mix) - one.high]);
    let gaps = bounds.chain(limits).enumerate();
    gaps.filter(|(_, gap)| gap.abs() <= 10.0 * ROUNDING)
        .map(|(at, _)| at)
        .collect()
}

/// Two corners share an edge when what both meet leaves one freedom.
fn edges(region: &Region, vertices: &[Vec<f64>], met: &[Vec<usize>]) -> Vec<Vec<f64>> {
    let count = region.components.len();
    let mut found = Vec::new();
    for one in 0..vertices.len() {
        for other in one + 1..vertices.len() {
            let both: Vec<usize> = met[one]
                .iter()
                .copied()
                .filter(|at| met[other].contains(at))
                .collect();
            if both.len() + 2 >= count && freedoms(region, &both) == 1 {
                found.push(middle([&vertices[one], &vertices[other]]));
            }
        }
    }
    found
}

fn freedoms(region: &Region, met: &[usize]) -> usize {
    let count = region.components.len();
    let row = |at: usize| match at.checked_sub(2 * count) {
        None => (0..count)
            .map(|one| f64::from(u8::from(one == at / 2)))
            .collect(),
        Some(limit) => region.limits[limit / 2].weights.clone(),
    };
    let rows: Vec<f64> = met
        .iter()
        .flat_map(|at| row(*at))
        .chain(vec![1.0; count])
        .collect();
    let whole = DMatrix::from_row_slice(met.len() + 1, count, &rows);
    count - whole.rank(ROUNDING)
}

/// The middle of the corners on each bound and limit that not all corners meet.
fn faces(vertices: &[Vec<f64>], met: &[Vec<usize>]) -> Vec<Vec<f64>> {
    let most = met.iter().flatten().max().map_or(0, |most| most + 1);
    let mut found = Vec::new();
    for at in 0..most {
        let corners: Vec<&Vec<f64>> = vertices
            .iter()
            .zip(met)
            .filter(|(_, met)| met.contains(&at))
            .map(|(corner, _)| corner)
            .collect();
        if corners.len() > 2 && corners.len() < vertices.len() {
            found.push(middle(corners));
        }
    }
    found
}
