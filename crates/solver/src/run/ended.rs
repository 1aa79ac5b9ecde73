//! What comes out of a run at its end.

use super::{Balance, Outcome, Reached, Work};
use crate::case::Case;
use crate::link::{beyond_k, coldest_c};
use crate::scheme::Ended;

/// The outcome of a run that has come so far.
pub fn outcome(case: &Case, ended: Ended, reached: Reached) -> Outcome {
    let Reached {
        steps,
        start_j,
        moments,
        ..
    } = reached;
    let Ended {
        last,
        freezing,
        end_j,
        through_j,
        unfrozen,
        stages,
        quick_cells,
    } = ended;
    let is_solved = |number: &&u8| usize::from(**number) < case.materials.len();
    Outcome {
        beyond_k: {
            let moments = moments.iter().chain([&last]);
            beyond_k(case, moments.map(|moment| moment.celsius.as_slice()))
        },
        balance: balance(case, start_j, end_j, through_j),
        last,
        moments,
        freezing,
        unfrozen,
        work: Work {
            steps,
            stages,
            cells: case.cells.iter().filter(is_solved).count(),
            quick_cells,
        },
        ran: None,
    }
}

/// The balance, with both contents counted from the coldest temperature given.
fn balance(case: &Case, start_j: f64, end_j: f64, through_j: f64) -> Balance {
    let coldest = coldest_c(case);
    let mut volumes_m3 = vec![0.0; case.materials.len()];
    let [_, rows, planes] = case.grid.counts();
    for place in (0..planes).flat_map(|z| (0..rows).map(move |y| [y, z])) {
        let first = case.grid.index([0, place[0], place[1]]);
        for (number, volume_m3) in case.cells[first..].iter().zip(case.volumes(place)) {
            if let Some(sum) = volumes_m3.get_mut(usize::from(*number)) {
                *sum += volume_m3;
            }
        }
    }
    let cold_j = case.materials.iter().zip(volumes_m3);
    let cold_j: f64 = cold_j.map(|(m, m3)| m.heat_at(coldest) * m3).sum();
    let (start_j, end_j) = (start_j - cold_j, end_j - cold_j);
    let most = start_j.abs().max(end_j.abs()).max(through_j.abs());
    let missing = (end_j - start_j - through_j).abs();
    let drift = if most > 0.0 { missing / most } else { 0.0 };
    Balance {
        start_j,
        end_j,
        through_j,
        drift,
    }
}
