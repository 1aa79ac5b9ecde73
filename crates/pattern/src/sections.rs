//! Heavy sections: where a casting freezes last, and the modulus of each place.
//!
//! The modulus V/A of a whole casting says little about its boss; half the wall says too much of a
//! cube, which has four times the surface of a plate of its thickness. What counts is the metal and
//! the cooled surface of the *neighbourhood*. Two ideas make that precise.
//!
//! **Sections.** The solid is divided into regions of like depth ([`crate::regions`]): a plate is
//! one and the boss on it another, divided where the boss meets the plate, and no heat is counted
//! through that cut: the joint does not cool.
//!
//! **Neighbourhood.** Within a section surface is shared out over a reach ℓ by the equation of heat
//! that spreads while it is being lost, a − ℓ² ∇²a = s, with s the surface in each volume. The
//! solution a is surface over volume as that place feels it, and the modulus is 1/a. The reach is a
//! little more than the inscribed diameter: with half of it the middle of a cube does not yet feel
//! the far edges, with twice of it the middle of a plate feels its distant rim.
//!
//! Over a plate this gives half the thickness, over a cube a sixth of the side, over a ball a sixth
//! of the diameter, each within three per cent, however it is turned.

use measure::length::{Area, Length, Volume};
use measure::source::Law;

use rayon::prelude::*;

use crate::cells::Cells;
use crate::depth::depths;
use crate::regions::{OUTSIDE, for_ball, regions};

/// Modulus of a section: what it holds over what cools it.
pub const MODULUS: Law = Law {
    name: "pattern::sections::modulus",
    formula: "M = V / A",
    range: "V and A those of the neighbourhood that freezes together; of a thin wall half its \
            thickness, of a cube a sixth, of a ball a sixth",
    sources: &["chvorinov-1940", "wlodawer-1966"],
};

/// Modulus of a section: M = V/A. Law: [`MODULUS`].
pub fn modulus(volume: Volume, cooled: Area) -> Length {
    volume / cooled
}

/// A place that freezes later than what surrounds it.
#[derive(Clone, Debug, PartialEq)]
pub struct Section {
    /// Modulus at its heaviest place.
    pub modulus: Length,
    /// The heaviest place, mm, in the coordinates of the mesh.
    pub place_mm: [f64; 3],
    /// Diameter of the largest ball inside it.
    pub inscribed: Length,
    /// Metal of the section.
    pub volume: Volume,
    /// Surface through which the section cools.
    pub cooled: Area,
}

/// Sections smaller than this share of the metal are the crumbs of corners and lettering.
const LEAST_SHARE: f64 = 0.005;

/// The ball over which a modulus is taken has at least this radius, in cells: in a smaller one it
/// is chance whether a cell has its share of the surface.
const LEAST_BALL: f64 = 2.0;

/// The sections of a solid, the heaviest first.
pub fn sections(cells: &Cells) -> Vec<Section> {
    let depth = depths(cells);
    let label = regions(cells, &depth);
    let reach = reaches(&label, &depth);
    let felt = felt_surface(cells, &label, &reach);
    let clear = clear_of_joints(cells, &label, &reach);
    let mut members = vec![Vec::new(); reach.len()];
    for (cell, section) in label
        .iter()
        .enumerate()
        .filter(|(_, section)| **section != OUTSIDE)
    {
        members[*section as usize].push(cell);
    }
    let field = Field {
        cells,
        depth: &depth,
        label: &label,
        felt: &felt,
        clear: &clear,
    };
    let mut found: Vec<Section> = members.iter().map(|own| field.measure(own)).collect();
    let whole: Volume = found.iter().map(|section| section.volume).sum();
    found.retain(|section| section.volume >= whole * LEAST_SHARE);
    found.sort_by(|a, b| b.modulus.as_mm().total_cmp(&a.modulus.as_mm()));
    found
}

/// The modulus of each place, mm: what a cell holds over the surface that it feels, and never more
/// than the radius of the largest ball in its section. Not a number outside of the solid.
pub fn moduli(cells: &Cells) -> Vec<f64> {
    let depth = depths(cells);
    let label = regions(cells, &depth);
    let felt = felt_surface(cells, &label, &reaches(&label, &depth));
    let mut deepest = vec![0.0_f64; label.len()];
    let solid = || (0..label.len()).filter(|&cell| label[cell] != OUTSIDE);
    for cell in solid() {
        let most = &mut deepest[label[cell] as usize];
        *most = most.max(depth[cell] + cells.size_mm / 2.0);
    }
    let mut moduli = vec![f64::NAN; label.len()];
    for cell in solid() {
        let most = deepest[label[cell] as usize];
        moduli[cell] = (1.0 / felt[cell].max(f64::MIN_POSITIVE)).min(most);
    }
    moduli
}

/// What is known of every cell.
struct Field<'a> {
    cells: &'a Cells,
    depth: &'a [f64],
    label: &'a [u32],
    felt: &'a [f64],
    clear: &'a [bool],
}

impl Field<'_> {
    fn measure(&self, own: &[usize]) -> Section {
        let cells = self.cells;
        let deepest = own.iter().map(|&cell| self.depth[cell]).fold(0.0, f64::max);
        let middle = self.heaviest(own, 0.8 * deepest);
        let (mut held, mut cooled) = (0.0, 0.0);
        let around = self.depth[middle].max(LEAST_BALL * cells.size_mm);
        for_ball(cells, middle, around, |cell| {
            if self.label[cell] == self.label[middle] {
                held += cells.volume_mm3[cell];
                cooled += cells.volume_mm3[cell] * self.felt[cell];
            }
        });
        // No body has more volume to its surface than its largest ball has radius. A section cut
        // off between deeper ones may have next to no surface of its own, and still no more. The
        // deepest cell lies within half a cell of the middle of that ball.
        let most = Length::from_mm(deepest + cells.size_mm / 2.0);
        let cooled = Area::from_mm2(cooled.max(0.0));
        Section {
            modulus: modulus(Volume::from_mm3(held), cooled).min(most),
            place_mm: cells.middle_mm(middle),
            inscribed: Length::from_mm(2.0 * deepest),
            volume: own
                .iter()
                .map(|&cell| Volume::from_mm3(cells.volume_mm3[cell]))
                .sum(),
            cooled: own
                .iter()
                .map(|&cell| Area::from_mm2(cells.area_mm2[cell]))
                .sum(),
        }
    }

    /// The deep place that feels the least surface, away from joints where there is such a place.
    fn heaviest(&self, own: &[usize], least_depth: f64) -> usize {
        let deep = || {
            own.iter()
                .copied()
                .filter(|&cell| self.depth[cell] >= least_depth)
        };
        let by_surface = |a: &usize, b: &usize| self.felt[*a].total_cmp(&self.felt[*b]);
        let away = deep().filter(|&cell| self.clear[cell]).min_by(by_surface);
        away.or_else(|| deep().min_by(by_surface)).unwrap_or(0)
    }
}

/// Cells that lie further than their section's reach from the cut towards a deeper section: beside
/// the cut a plate would be credited with the boss that stands on it.
fn clear_of_joints(cells: &Cells, label: &[u32], reach: &[f64]) -> Vec<bool> {
    let strides = cells.strides();
    let around = |cell: usize| strides.into_iter().flat_map(move |s| [cell - s, cell + s]);
    let solid = || (0..label.len()).filter(|&cell| label[cell] != OUTSIDE);
    let deeper = |cell: usize, next: usize| {
        label[next] != OUTSIDE && reach[label[next] as usize] > reach[label[cell] as usize]
    };
    let mut clear = vec![true; label.len()];
    let mut edge: Vec<(usize, usize)> = solid()
        .filter(|&cell| around(cell).any(|next| deeper(cell, next)))
        .map(|cell| (cell, (reach[label[cell] as usize] / cells.size_mm) as usize))
        .collect();
    edge.iter().for_each(|(cell, _)| clear[*cell] = false);
    while !edge.is_empty() {
        let mut next_edge = Vec::new();
        for (cell, left) in edge.into_iter().filter(|(_, left)| *left > 0) {
            for next in around(cell).filter(|&next| label[next] == label[cell]) {
                if std::mem::replace(&mut clear[next], false) {
                    next_edge.push((next, left - 1));
                }
            }
        }
        edge = next_edge;
    }
    clear
}

/// The reach, in diameters of the largest ball inside a section. With less the middle of a cube
/// does not feel its far edges and comes out too heavy, with more the middle of a plate feels its
/// rim.
const REACH: f64 = 1.15;

/// The reach of each section, mm.
fn reaches(label: &[u32], depth: &[f64]) -> Vec<f64> {
    let count = label
        .iter()
        .filter(|l| **l != OUTSIDE)
        .max()
        .map_or(0, |most| *most as usize + 1);
    let mut reach = vec![0.0; count];
    for (cell, section) in label
        .iter()
        .enumerate()
        .filter(|(_, section)| **section != OUTSIDE)
    {
        let widest: &mut f64 = &mut reach[*section as usize];
        *widest = widest.max(REACH * 2.0 * depth[cell]);
    }
    reach
}

/// Surface over volume as each cell feels it, 1/mm: solves a − ℓ² ∇²a = s within each section by
/// conjugate gradients.
fn felt_surface(cells: &Cells, label: &[u32], reach: &[f64]) -> Vec<f64> {
    let solid: Vec<usize> = (0..label.len())
        .filter(|&cell| label[cell] != OUTSIDE)
        .collect();
    let mut row = vec![OUTSIDE; label.len()];
    for (place, &cell) in solid.iter().enumerate() {
        row[cell] = place as u32;
    }
    let links: Vec<[u32; 6]> = solid
        .iter()
        .map(|&cell| links_of(cells, label, &row, cell))
        .collect();
    let weight: Vec<f64> = solid
        .iter()
        .map(|&cell| cells.size_mm * reach[label[cell] as usize].powi(2))
        .collect();
    let volume: Vec<f64> = solid.iter().map(|&cell| cells.volume_mm3[cell]).collect();
    let given: Vec<f64> = solid.iter().map(|&cell| cells.area_mm2[cell]).collect();
    let felt = solve(&links, &weight, &volume, &given);
    let mut spread = vec![0.0; label.len()];
    for (place, &cell) in solid.iter().enumerate() {
        spread[cell] = felt[place];
    }
    spread
}

fn links_of(cells: &Cells, label: &[u32], row: &[u32], cell: usize) -> [u32; 6] {
    let [sx, sy, sz] = cells.strides();
    [
        cell - sx,
        cell + sx,
        cell - sy,
        cell + sy,
        cell - sz,
        cell + sz,
    ]
    .map(|next| {
        if label[next] == label[cell] {
            row[next]
        } else {
            OUTSIDE
        }
    })
}

/// Stops when what is left of the surface is a thousandth of what was given.
const LEFT_OVER: f64 = 1e-3;
const MOST_ROUNDS: usize = 400;

fn solve(links: &[[u32; 6]], weight: &[f64], volume: &[f64], given: &[f64]) -> Vec<f64> {
    let apply = |x: &[f64]| -> Vec<f64> {
        let row = |at: usize| {
            let flows = links[at].iter().filter(|next| **next != OUTSIDE);
            let leaving: f64 = flows.map(|next| x[at] - x[*next as usize]).sum();
            volume[at] * x[at] + weight[at] * leaving
        };
        (0..x.len())
            .into_par_iter()
            .with_min_len(4096)
            .map(row)
            .collect()
    };
    let dot = |a: &[f64], b: &[f64]| a.iter().zip(b).map(|(a, b)| a * b).sum::<f64>();
    let total: f64 = volume.iter().sum();
    let mut x = vec![given.iter().sum::<f64>() / total; given.len()];
    let mut left: Vec<f64> = apply(&x)
        .iter()
        .zip(given)
        .map(|(have, want)| want - have)
        .collect();
    let mut direction = left.clone();
    let mut size = dot(&left, &left);
    let enough = LEFT_OVER * LEFT_OVER * dot(given, given);
    for _ in 0..MOST_ROUNDS {
        if size <= enough {
            break;
        }
        let pushed = apply(&direction);
        let step = size / dot(&direction, &pushed);
        for at in 0..x.len() {
            x[at] += step * direction[at];
            left[at] -= step * pushed[at];
        }
        let next = dot(&left, &left);
        let keep = next / size;
        size = next;
        for at in 0..x.len() {
            direction[at] = left[at] + keep * direction[at];
        }
    }
    x
}
