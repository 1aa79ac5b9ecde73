//! Where metal has frozen too far to run on, and the thinnest wall that would still run.

use measure::flow::Speed;
use measure::heat::{HeatPerMass, SpecificHeat, TemperatureDifference};
use measure::length::Length;
use measure::matter::Density;
use mould::gating::reach::{RunningMetal, least_wall};

use super::cooling::{Metal, Sand};
use super::fact::{LeastWall, Misrun};
use super::heat::{Arrived, Following, came};
use super::hollow::NONE;
use crate::cells::MouldCells;

/// Places with less hollow than this, in cells, are rims and not walls.
const LEAST_CELLS: usize = 8;

/// Misruns, the largest first.
pub(super) fn misruns(
    cells: &MouldCells,
    following: &Following<'_>,
    arrived: &Arrived,
    metal: &Metal,
) -> Vec<Misrun> {
    let hollow = following.ground.hollow;
    let Some(stops_j_m3) = metal.table.heat_at_solid(metal.stops_at_solid) else {
        return Vec::new();
    };
    let mut is_stopped = vec![false; hollow.cells.len()];
    for (cell, _) in came(hollow, arrived) {
        is_stopped[cell] = f64::from(arrived.j_m3[cell]) < stops_j_m3;
    }
    let mut found = Vec::new();
    for first in 0..hollow.cells.len() {
        if !is_stopped[first] {
            continue;
        }
        is_stopped[first] = false;
        let (mut touching, mut next) = (vec![first as u32], 0);
        while next < touching.len() {
            let cell = touching[next];
            let upright = [hollow.below(cell), hollow.above(cell)];
            for beside in hollow.beside(cell).into_iter().chain(upright) {
                if beside != NONE && is_stopped[beside as usize] {
                    is_stopped[beside as usize] = false;
                    touching.push(beside);
                }
            }
            next += 1;
        }
        if touching.len() >= LEAST_CELLS {
            found.push(misrun(cells, following, arrived, metal, &touching));
        }
    }
    found.sort_by(|a, b| b.volume_mm3.total_cmp(&a.volume_mm3));
    found
}

fn misrun(
    cells: &MouldCells,
    following: &Following<'_>,
    arrived: &Arrived,
    metal: &Metal,
    touching: &[u32],
) -> Misrun {
    let hollow = following.ground.hollow;
    let came_s = |cell: &u32| {
        let times = following.times_s(hollow.flat[*cell as usize]);
        times.map_or(f64::INFINITY, |[_, middle_s, _]| middle_s)
    };
    // Of those reached at one time, the one nearest to the gate.
    let first = touching.iter().min_by(|a, b| {
        let ways = [a, b].map(|cell| arrived.way[**cell as usize]);
        came_s(a)
            .total_cmp(&came_s(b))
            .then(ways[0].total_cmp(&ways[1]))
    });
    let first = first.copied().unwrap_or_default();
    let place = |cell: u32| hollow.cells[cell as usize] as usize;
    let shares = touching
        .iter()
        .map(|cell| f64::from(cells.metal[place(*cell)]));
    let solids = touching.iter().map(|cell| {
        metal
            .table
            .at(f64::from(arrived.j_m3[*cell as usize]))
            .solid
    });
    Misrun {
        place_mm: cells.middle_mm(place(first)),
        at_s: came_s(&first),
        volume_mm3: shares.sum::<f64>() * cells.size_mm.powi(3),
        solid: solids.fold(0.0, f64::max),
    }
}

/// The thinnest wall that metal would still run through on the way that takes it longest, by the
/// law of the reach of a wall; none where it comes too cold to run at all or is there at once.
pub(super) fn thinnest(
    cells: &MouldCells,
    following: &Following<'_>,
    arrived: &Arrived,
    metal: &Metal,
    sand: &Sand,
) -> Option<LeastWall> {
    let hollow = following.ground.hollow;
    let longest = came(hollow, arrived).max_by(|(a, _), (b, _)| {
        let ages = [a, b].map(|cell| arrived.age_s[*cell]);
        ages[0].total_cmp(&ages[1]).then(b.cmp(a))
    });
    let (cell, place) = longest?;
    let takes_s = f64::from(arrived.age_s[cell]);
    let way_mm = f64::from(arrived.way[cell]) * cells.size_mm;
    let stops_j_m3 = metal.table.heat_at_solid(metal.stops_at_solid)?;
    let to_spare = following.cooling.poured_j_m3 - stops_j_m3;
    if takes_s <= 0.0 || way_mm <= 0.0 || to_spare <= 0.0 {
        return None;
    }
    let liquidus_c = metal.table.at(metal.table.heat_at_solid(0.0)?).celsius;
    // By volume throughout: the density cancels.
    let running = RunningMetal {
        liquid: Density::from_kg_per_m3(1.0),
        latent: HeatPerMass::from_j_per_kg(to_spare),
        liquid_heat: SpecificHeat::from_j_per_kg_k(0.0),
        superheat: TemperatureDifference::from_kelvin(0.0),
        above_sand: TemperatureDifference::from_kelvin(liquidus_c - sand.celsius),
        speed: Speed::from_m_per_s(way_mm * 1e-3 / takes_s),
        frozen_at_stop: 1.0,
        film_w_per_m2_k: mean_film(sand, takes_s),
    };
    Some(LeastWall {
        wall_mm: least_wall(Length::from_mm(way_mm), &running).as_mm(),
        way_mm,
        takes_s,
        place_mm: cells.middle_mm(place),
    })
}

/// What passes to sand on the mean over a time, W/(m² K): 2 b / √(π t), and no more than the touch
/// lets through.
fn mean_film(sand: &Sand, takes_s: f64) -> f64 {
    let by_sand = 2.0 * sand.draws_w_rts_m2_k / (std::f64::consts::PI * takes_s).sqrt();
    by_sand.min(sand.film_w_m2_k)
}
