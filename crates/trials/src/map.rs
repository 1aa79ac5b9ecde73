//! A response drawn over two variables or over the triangle of three components.
//!
//! Only the places and heights are worked out here; how they are drawn is the matter of paper and
//! terminal. What lies beyond the runs is marked, so that it can be left grey.

use crate::fit::Fit;
use crate::region::Region;

/// One place of a map.
#[derive(Clone, Debug, PartialEq)]
pub struct Place {
    /// Across, 0 to 1.
    pub across: f64,
    /// Up, 0 to 1 (to √3/2 in a triangle).
    pub up: f64,
    /// The whole point.
    pub point: Vec<f64>,
    /// The response by the model.
    pub height: f64,
    /// Whether the place lies beyond what the runs teach.
    pub unknown: bool,
}

/// The triangle of three components of a region, in so many steps along each side, the others held
/// at the shares of `held`; `rest` is what follows the shares in a point (settings, days). The
/// first component is whole at the top, the second at the lower left, the third at the lower
/// right, each counted as its share of what the three have together. Places outside the region are
/// left out.
pub fn triangle(
    fit: &Fit,
    region: &Region,
    three: [usize; 3],
    held: &[f64],
    rest: &[f64],
    steps: usize,
) -> Vec<Place> {
    let together: f64 = three.iter().map(|at| held[*at]).sum();
    let steps = steps.max(1);
    let mut found = Vec::new();
    for first in 0..=steps {
        for second in 0..=steps - first {
            let part = |count: usize| count as f64 / steps as f64;
            let parts = [part(first), part(second), part(steps - first - second)];
            let mut mix = held.to_vec();
            for (at, part) in three.iter().zip(parts) {
                mix[*at] = part * together;
            }
            if region.holds(&mix) {
                let across = parts[2] + parts[0] / 2.0;
                let up = parts[0] * 3.0_f64.sqrt() / 2.0;
                let point = [mix.as_slice(), rest].concat();
                found.push(place(fit, across, up, point));
            }
        }
    }
    found
}

/// A square of two variables between their ends, the others as in `held`.
pub fn square(
    fit: &Fit,
    two: [usize; 2],
    ends: [(f64, f64); 2],
    held: &[f64],
    steps: usize,
) -> Vec<Place> {
    let steps = steps.max(1);
    let part = |count: usize| count as f64 / steps as f64;
    let cells = (0..=steps).flat_map(|up| (0..=steps).map(move |across| (across, up)));
    cells
        .map(|(across, up)| {
            let mut point = held.to_vec();
            for ((at, (low, high)), part) in two.iter().zip(ends).zip([part(across), part(up)]) {
                point[*at] = low + part * (high - low);
            }
            place(fit, part(across), part(up), point)
        })
        .collect()
}

fn place(fit: &Fit, across: f64, up: f64, point: Vec<f64>) -> Place {
    let expected = fit.at(&point);
    Place {
        across,
        up,
        point,
        height: expected.value,
        unknown: expected.unknown,
    }
}
