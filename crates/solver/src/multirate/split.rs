//! Which cells go in many small stages and which in one step, and how long that step is.

use std::ops::Range;

use crate::case::{Case, Condition};
use crate::early::Early;
use crate::link::{
    SIDES, Side, hottest_c, longest_step_s, longest_step_towards_s, neighbour, side,
};
use crate::multirate::wide::LANES;

/// How a cell goes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// Not solved.
    Void,
    /// In one step, all its neighbours of its own material.
    Even,
    /// In one step, with something else beside it.
    Mixed,
    /// In stages.
    Quick,
}

/// How the cells are split.
pub struct Split {
    /// Which materials go in stages wherever they are.
    pub quick_materials: Vec<bool>,
    /// Cells by which blocks of quick cells overhang a row at most.
    pub overhang: usize,
    /// How each cell goes.
    pub kinds: Vec<Kind>,
    /// Longest step of the slow cells, s.
    pub longest_s: f64,
    /// Step to begin with, s.
    pub first_s: f64,
    /// Longest explicit step of the quick cells that have slow ones beside them, s: stages are
    /// counted for no longer one, since what passes between both comes on top of what the stages
    /// carry.
    pub borders_s: f64,
    /// Shortest explicit step of a quick cell, s, without what is special at first.
    pub shortest_s: f64,
}

/// Share of the longest stable step of the slow cells that is taken.
const OF_THE_LIMIT: f64 = 0.9;

/// Most that may pass in a step over the slow borders of a quick cell, as a share of what would
/// level it with them. An even cell beside metal with five of its own kind around it comes to 0.75
/// and is calm; at 1, one of 100,000 boxes of uneven cells was not, and lower makes a second layer
/// quick.
const CALM: f64 = 0.76;

/// First step over the shortest explicit step of all: early on the contact of hot and cold is worth
/// short steps, and they grow soon enough. Stages turn a difference that would settle within a step
/// into its opposite from 0.72 on, by two fifths at most, where the zero order function of Bessel
/// that they follow first crosses nought: later such differences are gone, at first they are all
/// there is.
const FIRST: f64 = 0.7;

/// Longest step over the shortest explicit step where all cells are quick and nobody says more: 17
/// stages, about as many as a metal in sand has.
const ALL_QUICK: f64 = 150.0;

/// What a stage of a quick cell costs beside a step of a slow one.
const STAGE_COST: f64 = 2.5;

/// Splits the cells of a case.
pub fn split(case: &Case, wished_s: Option<f64>) -> Split {
    let even = even_cells(case);
    let bulk = bulk_limits(case, &even);
    let longest_s = longest(case, &bulk).min(wished_s.unwrap_or(f64::INFINITY));
    let hottest = hottest_c(case);
    // What freezes and all beside it goes in stages, whose number is found step by step.
    let early = Early::of(case, false);
    let quick_material: Vec<bool> = (case.materials.iter().zip(&bulk))
        .map(|(material, limit)| material.freezes() || limit.shortest_s < longest_s)
        .collect();
    let mut shortest = f64::INFINITY;
    let mut kinds = vec![Kind::Void; even.len()];
    for cell in 0..even.len() {
        let number = usize::from(case.cells[cell]);
        if number >= case.materials.len() {
            continue;
        }
        let quick =
            quick_material[number] || !even[cell] && touches_quick(case, cell, &quick_material);
        let limit_s = match even[cell] {
            true => bulk[number].shortest_s,
            false => longest_step_s(case, &early, cell, hottest),
        };
        kinds[cell] = match (quick || limit_s < longest_s, even[cell]) {
            (true, _) => Kind::Quick,
            (false, true) => Kind::Even,
            (false, false) => Kind::Mixed,
        };
        if kinds[cell] == Kind::Quick {
            shortest = shortest.min(limit_s);
        }
    }
    let rims: Vec<_> = (0..even.len())
        .filter(|cell| !even[*cell] && kinds[*cell] == Kind::Quick)
        .collect();
    calm_borders(case, (&early, longest_s), &rims, &mut kinds);
    let borders_s = (rims.into_iter())
        .filter(|cell| has_slow_beside(case, *cell, &kinds))
        .map(|cell| longest_step_s(case, &early, cell, hottest))
        .fold(f64::INFINITY, f64::min);
    let longest_s = match shortest.is_finite() && longest_s.is_infinite() {
        true => ALL_QUICK * shortest,
        false => longest_s,
    };
    let first_s = (FIRST * shortest).min(longest_s);
    Split {
        quick_materials: quick_material,
        overhang: overhang(&kinds, case.grid.counts()[0]),
        kinds,
        longest_s,
        first_s,
        borders_s,
        shortest_s: shortest,
    }
}

/// Runs of quick cells in a row, a whole number of blocks each: a run goes on with another block
/// where its next cell is quick, and the last block may overhang the row.
pub fn runs(row: &[Kind]) -> impl Iterator<Item = Range<usize>> {
    let mut from = 0;
    std::iter::from_fn(move || {
        let rest = row.get(from..)?;
        let start = from + rest.iter().position(|kind| *kind == Kind::Quick)?;
        let mut end = start;
        while row.get(end) == Some(&Kind::Quick) {
            end += LANES;
        }
        from = end;
        Some(start..end)
    })
}

/// By how many cells blocks of quick cells overhang a row at most.
fn overhang(kinds: &[Kind], along: usize) -> usize {
    let rows = kinds.chunks(along);
    let ends = rows.flat_map(|row| runs(row).map(|cells| cells.end));
    ends.max().unwrap_or(0).saturating_sub(along)
}

/// What the even cells of a material come to.
#[derive(Debug, Clone, Copy)]
struct Bulk {
    cells: usize,
    shortest_s: f64,
}

/// Cells that are full and have only their own material, or an insulated end, beside them.
fn even_cells(case: &Case) -> Vec<bool> {
    let mut even = Vec::with_capacity(case.cells.len());
    let [along, rows, planes] = case.grid.counts();
    let ends = [1, along, along * rows];
    let closed = case.faces.map(|face| face == Condition::Insulated);
    for z in 0..planes {
        for y in 0..rows {
            for x in 0..along {
                let cell = (z * rows + y) * along + x;
                let own = case.cells[cell];
                let at = [x, y, z];
                let alike = |axis: usize| {
                    let low = match at[axis] {
                        0 => closed[2 * axis],
                        _ => case.cells[cell - ends[axis]] == own,
                    };
                    let high = match at[axis] + 1 == case.grid.edges_m[axis].len() - 1 {
                        true => closed[2 * axis + 1],
                        false => case.cells[cell + ends[axis]] == own,
                    };
                    low && high
                };
                even.push(alike(0) && alike(1) && alike(2) && case.is_whole(cell));
            }
        }
    }
    even
}

fn bulk_limits(case: &Case, even: &[bool]) -> Vec<Bulk> {
    let rates = [0, 1, 2].map(|axis: usize| {
        let [low, high] = &super::padded::weights(case)[axis];
        let pairs = low.iter().zip(high);
        pairs
            .map(|(low, high)| 2.0 * f64::from(low + high))
            .collect::<Vec<_>>()
    });
    let start = Bulk {
        cells: 0,
        shortest_s: f64::INFINITY,
    };
    let mut most = vec![(0_usize, 0.0_f64); case.materials.len()];
    let [along, rows, planes] = case.grid.counts();
    for z in 0..planes {
        for y in 0..rows {
            let across = rates[1][y] + rates[2][z];
            let row = (z * rows + y) * along;
            for x in 0..along {
                let number = usize::from(case.cells[row + x]);
                if let Some(most) = most.get_mut(number) {
                    most.0 += 1;
                    if even[row + x] {
                        most.1 = most.1.max(across + rates[0][x]);
                    }
                }
            }
        }
    }
    let limit = |(material, most): (&crate::material::Material, &(usize, f64))| {
        let shortest_s = material.least_capacity() / (material.most_conductivity() * most.1);
        match most.1 > 0.0 {
            true => Bulk {
                cells: most.0,
                shortest_s,
            },
            false => Bulk {
                cells: most.0,
                ..start
            },
        }
    };
    case.materials.iter().zip(&most).map(limit).collect()
}

/// The longest step that costs least: the limit of one of the materials that do not freeze, while
/// those below it go in stages. Endless where there is none.
fn longest(case: &Case, bulk: &[Bulk]) -> f64 {
    let pairs = || case.materials.iter().zip(bulk);
    let finite = pairs().filter(|(_, bulk)| bulk.shortest_s.is_finite());
    let shortest = finite
        .map(|(_, bulk)| bulk.shortest_s)
        .fold(f64::INFINITY, f64::min);
    let candidates = pairs()
        .filter(|(material, bulk)| !material.freezes() && bulk.shortest_s.is_finite())
        .map(|(_, bulk)| OF_THE_LIMIT * bulk.shortest_s);
    let cost = |step_s: f64| {
        let quick = pairs()
            .filter(|(material, bulk)| material.freezes() || bulk.shortest_s < step_s)
            .map(|(_, bulk)| bulk.cells as f64);
        let quick: f64 = quick.sum();
        let all: f64 = bulk.iter().map(|bulk| bulk.cells as f64).sum();
        (all - quick + STAGE_COST * super::stages::count(step_s, shortest) as f64 * quick) / step_s
    };
    candidates
        .min_by(|one, other| cost(*one).total_cmp(&cost(*other)))
        .unwrap_or(f64::INFINITY)
}

/// Makes quick what lies beside a quick cell that what passes between both, taken once a step,
/// could carry past it: a thin cell among thick ones. What is made quick was slow enough for a
/// step, so that what passes over its own borders does it no harm.
fn calm_borders(
    case: &Case,
    (early, longest_s): (&Early, f64),
    rims: &[usize],
    kinds: &mut [Kind],
) {
    let mut beside = Vec::new();
    for &cell in rims {
        let counts = |other: usize| is_slow(kinds[other]);
        if longest_step_towards_s(case, early, cell, &counts) < longest_s / CALM {
            beside.extend(solved_beside(case, cell).filter(|other| counts(*other)));
        }
    }
    for cell in beside {
        kinds[cell] = Kind::Quick;
    }
}

fn has_slow_beside(case: &Case, cell: usize, kinds: &[Kind]) -> bool {
    solved_beside(case, cell).any(|other| is_slow(kinds[other]))
}

fn is_slow(kind: Kind) -> bool {
    matches!(kind, Kind::Even | Kind::Mixed)
}

/// Cells beside a cell that are solved.
fn solved_beside(case: &Case, cell: usize) -> impl Iterator<Item = usize> {
    let at = case.grid.place(cell);
    SIDES
        .into_iter()
        .filter_map(move |(axis, high)| match side(case, at, axis, high) {
            Side::Next(other, _) => Some(other),
            Side::Out(_) | Side::Closed => None,
        })
}

/// Whether a neighbour is of a material that goes in stages.
fn touches_quick(case: &Case, cell: usize, quick: &[bool]) -> bool {
    let at = case.grid.place(cell);
    SIDES.into_iter().any(|(axis, high)| {
        let next = neighbour(case, at, axis, high);
        let number = next.map(|next| usize::from(case.cells[case.grid.index(next)]));
        number
            .and_then(|number| quick.get(number))
            .is_some_and(|quick| *quick)
    })
}
