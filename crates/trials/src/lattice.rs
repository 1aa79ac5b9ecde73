//! Even patterns of mixes over the whole range, and even grids over any region.

use crate::region::{Region, RegionError};
use crate::vertices::vertices;

/// Most points of a grid, before those outside the region are left out: a belief looks at so many
/// in about a second.
pub const MOST_POINTS: usize = 200_000;

/// All mixes of so many components whose shares are parts of `steps`: the simplex lattice
/// (NIST/SEMATECH e-Handbook 5.5.4.2). Two steps teach a quadratic, three a special cubic.
pub fn lattice(components: usize, steps: usize) -> Vec<Vec<f64>> {
    let whole = steps.max(1);
    let share = |parts: Vec<usize>| {
        parts
            .iter()
            .map(|part| *part as f64 / whole as f64)
            .collect()
    };
    splits(components, whole).into_iter().map(share).collect()
}

/// Every component alone, every two in halves, every three in thirds, and so on to all of them: the
/// simplex centroid.
pub fn centroid(components: usize) -> Vec<Vec<f64>> {
    let mut masks: Vec<usize> = (1..1_usize << components.min(16)).collect();
    masks.sort_by_key(|mask| mask.count_ones());
    let mix = |mask: usize| {
        let share = 1.0 / f64::from(mask.count_ones());
        (0..components)
            .map(|at| if mask >> at & 1 == 1 { share } else { 0.0 })
            .collect()
    };
    masks.into_iter().map(mix).collect()
}

/// Mixes of a region on an even grid of so many steps over the range of each component but the
/// last, which takes the rest; and the corners, which a grid seldom hits.
///
/// # Errors
/// When the region is none, or the grid would have more than [`MOST_POINTS`] points.
pub fn grid(region: &Region, steps: usize) -> Result<Vec<Vec<f64>>, RegionError> {
    let mut found = vertices(region)?;
    let corners = found.clone();
    let reach = |at: usize| {
        let shares = || corners.iter().map(|corner| corner[at]);
        (
            shares().fold(f64::INFINITY, f64::min),
            shares().fold(f64::NEG_INFINITY, f64::max),
        )
    };
    let last = region.components.len() - 1;
    let vary = (0..last).filter(|at| reach(*at).1 > reach(*at).0).count();
    let points = (0..vary).fold(1_usize, |all, _| all.saturating_mul(steps.max(1) + 1));
    if points > MOST_POINTS {
        return Err(RegionError::TooFine(points));
    }
    let mut starts: Vec<Vec<f64>> = vec![Vec::new()];
    for at in 0..last {
        let (low, high) = reach(at);
        let taken = if high > low { steps.max(1) } else { 0 };
        let share = |step: usize| low + (high - low) * step as f64 / taken.max(1) as f64;
        let longer = starts
            .iter()
            .flat_map(|start| (0..=taken).map(|step| [start.as_slice(), &[share(step)]].concat()));
        starts = longer.collect();
    }
    let whole = starts.into_iter().map(|mut start| {
        start.push(1.0 - start.iter().sum::<f64>());
        start
    });
    let new = |mix: &Vec<f64>| {
        let on_corner =
            |corner: &Vec<f64>| corner.iter().zip(mix).all(|(a, b)| (a - b).abs() < 1e-9);
        region.holds(mix) && !corners.iter().any(on_corner)
    };
    found.extend(whole.filter(new));
    Ok(found)
}

/// Every way to part a whole number among components, the first components full first.
fn splits(components: usize, whole: usize) -> Vec<Vec<usize>> {
    match components {
        0 => Vec::new(),
        1 => vec![vec![whole]],
        _ => (0..=whole)
            .rev()
            .flat_map(|first| {
                let rest = splits(components - 1, whole - first).into_iter();
                rest.map(move |rest| [&[first], rest.as_slice()].concat())
            })
            .collect(),
    }
}
