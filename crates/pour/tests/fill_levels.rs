//! Arrival times in hollows for which they are known in closed form, and what holds in any hollow.
//!
//! A mould with upright walls fills through its floor by Torricelli's law, t = (A / a) √(2 / g)
//! (√H − √(H − z)), and from above at an even flow; a stepped one by pieces of it. The figures in
//! seconds stand for g = 9.81 m/s² and are carried over to the standard gravity of the laws.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

use measure::length::{Area, Length};
use measure::matter::GRAVITY_M_PER_S2;
use mould::gating::friction::Friction;
use mould::gating::network as running;
use pour::cells::{MouldCells, Stuff};
use pour::fill::network::Network;
use pour::fill::{FillError, Gating, Glance};
use proptest::prelude::{ProptestConfig, any, prop, prop_assert, proptest};

use crate::boxes::{gates, hollow, metal, near, sand};

mod boxes;

/// A glance with some metal and some sand, which say nothing about levels.
fn glance(cells: &MouldCells, gating: &Gating) -> Result<Glance, FillError> {
    pour::fill::glance(cells, gating, &metal(), &sand())
}

/// Seconds to rise through upright walls from one height to another, by Torricelli.
fn torricelli(area_m2: f64, gate_m2: f64, head_m: f64, [from_m, to_m]: [f64; 2]) -> f64 {
    let roots = (head_m - from_m).sqrt() - (head_m - to_m).sqrt();
    area_m2 / gate_m2 * (2.0 / GRAVITY_M_PER_S2).sqrt() * roots
}

/// Compares every cell of metal with what is wanted at its middle, m.
fn compare(cells: &MouldCells, seen: &Glance, wanted: impl Fn([f64; 3]) -> f64) {
    let mut compared = 0;
    for place in 0..cells.stuff.len() {
        if cells.stuff[place] == Stuff::Metal {
            let middle = cells.middle_mm(place).map(|mm| mm * 1e-3);
            near(f64::from(seen.arrival_s[place]), wanted(middle), 1e-6);
            compared += 1;
        }
    }
    assert!(compared > 0);
}

fn mass_is_kept(seen: &Glance) {
    near(seen.lies_m3, seen.hollow_m3, 1e-9);
    near(seen.poured_m3, seen.lies_m3, 1e-7);
}

#[test]
fn a_mould_filled_through_its_floor_rises_by_torricelli() {
    let cells = hollow([10, 10, 20], |_| true);
    let seen = glance(&cells, &gates(0.30, &[([50.0, 50.0, 0.0], 1e-4)])).unwrap();
    compare(&cells, &seen, |[_, _, z]| {
        torricelli(0.01, 1e-4, 0.30, [0.0, z])
    });
    let slower = (9.81 / GRAVITY_M_PER_S2).sqrt();
    near(seen.ends_s, 10.452_537_112_2 * slower, 1e-6);
    mass_is_kept(&seen);
}

#[test]
fn a_mould_filled_from_above_rises_evenly() {
    let cells = hollow([10, 10, 20], |_| true);
    let seen = glance(&cells, &gates(0.50, &[([50.0, 50.0, 200.0], 1e-4)])).unwrap();
    let flow = 1e-4 * (2.0 * GRAVITY_M_PER_S2 * 0.30).sqrt();
    compare(&cells, &seen, |[_, _, z]| 0.01 * z / flow);
    let slower = (9.81 / GRAVITY_M_PER_S2).sqrt();
    near(seen.ends_s, 8.243_656_113_83 * slower, 1e-6);
    mass_is_kept(&seen);
}

#[test]
fn a_gate_half_way_up_runs_free_until_it_drowns() {
    let cells = hollow([10, 10, 20], |_| true);
    let seen = glance(&cells, &gates(0.30, &[([95.0, 50.0, 80.0], 1e-4)])).unwrap();
    let flow = 1e-4 * (2.0 * GRAVITY_M_PER_S2 * 0.22).sqrt();
    compare(&cells, &seen, |[_, _, z]| match z < 0.08 {
        true => 0.01 * z / flow,
        false => 0.01 * 0.08 / flow + torricelli(0.01, 1e-4, 0.30, [0.08, z]),
    });
    mass_is_kept(&seen);
}

#[test]
fn a_stepped_mould_rises_piece_by_piece() {
    // A block of 0.005 m² on a foot of 0.01 m², under a head of 0.02 m².
    let plan = |z: f64| match z {
        z if z < 0.06 => 0.01,
        z if z < 0.12 => 0.005,
        _ => 0.02,
    };
    let cells = hollow([20, 10, 20], |[x, _, z]| {
        x as f64 * 0.001 < plan((z as f64 + 0.5) * 0.01)
    });
    let seen = glance(&cells, &gates(0.30, &[([10.0, 50.0, 0.0], 1e-4)])).unwrap();
    compare(&cells, &seen, |[_, _, z]| {
        let piece = |area_m2: f64, from: f64, to: f64| match z > from {
            true => torricelli(area_m2, 1e-4, 0.30, [from, z.min(to)]),
            false => 0.0,
        };
        piece(0.01, 0.0, 0.06) + piece(0.005, 0.06, 0.12) + piece(0.02, 0.12, 0.20)
    });
    mass_is_kept(&seen);
}

/// Two cups of 0.005 m², the first 60 mm deep and the second 80, with a wall of 10 mm between
/// them, under a room of 40 mm over both.
fn cups() -> MouldCells {
    hollow([11, 10, 12], |[x, _, z]| match x {
        0..5 => z >= 2,
        5 => z >= 8,
        _ => true,
    })
}

#[test]
fn a_cup_runs_over_its_saddle_and_both_rise_as_one() {
    let cells = cups();
    // From above, at an even flow.
    let seen = glance(&cells, &gates(0.32, &[([25.0, 50.0, 120.0], 1e-4)])).unwrap();
    let flow = 1e-4 * (2.0 * GRAVITY_M_PER_S2 * 0.20).sqrt();
    compare(&cells, &seen, |[x, _, z]| {
        let lies = match (z < 0.08, x < 0.05) {
            (true, true) => 0.005 * (z - 0.02),
            (true, false) => 0.005 * 0.06 + 0.005 * z,
            (false, _) => 0.005 * 0.14 + 0.011 * (z - 0.08),
        };
        lies / flow
    });
    mass_is_kept(&seen);
}

#[test]
fn a_drowned_gate_runs_against_the_saddle_while_metal_runs_over() {
    let cells = cups();
    let seen = glance(&cells, &gates(0.32, &[([25.0, 50.0, 20.0], 1e-4)])).unwrap();
    let first = torricelli(0.005, 1e-4, 0.32, [0.02, 0.08]);
    let over = 1e-4 * (2.0 * GRAVITY_M_PER_S2 * 0.24).sqrt();
    compare(&cells, &seen, |[x, _, z]| match (z < 0.08, x < 0.05) {
        (true, true) => torricelli(0.005, 1e-4, 0.32, [0.02, z]),
        (true, false) => first + 0.005 * z / over,
        (false, _) => first + 0.005 * 0.08 / over + torricelli(0.011, 1e-4, 0.32, [0.08, z]),
    });
    mass_is_kept(&seen);
}

#[test]
fn two_gates_fill_two_cups_side_by_side() {
    let cells = cups();
    let both = [([25.0, 50.0, 20.0], 1e-4), ([85.0, 50.0, 0.0], 1e-4)];
    let seen = glance(&cells, &gates(0.32, &both)).unwrap();
    let first = |z: f64| torricelli(0.005, 1e-4, 0.32, [0.02, z]);
    let second = |z: f64| torricelli(0.005, 1e-4, 0.32, [0.0, z]);
    assert!(first(0.08) < second(0.08));
    // Once the first is full, its metal runs over at the head of the saddle into the second, whose
    // own gate goes on against its level: no closed form any more, but before that there is.
    for place in 0..cells.stuff.len() {
        let [x, _, z] = cells.middle_mm(place).map(|mm| mm * 1e-3);
        if cells.stuff[place] != Stuff::Metal || z > 0.08 {
            continue;
        }
        let wanted = if x < 0.05 { first(z) } else { second(z) };
        if wanted < first(0.08) {
            near(f64::from(seen.arrival_s[place]), wanted, 1e-6);
        }
    }
    mass_is_kept(&seen);
}

#[test]
fn metal_from_rest_comes_later_as_in_closed_form() {
    let cells = hollow([4, 4, 20], |_| true);
    let mut gating = gates(0.50, &[([20.0, 20.0, 200.0], 1e-4)]);
    gating.network.branches[0].length_m = 0.5;
    gating.from_rest = true;
    let seen = glance(&cells, &gating).unwrap();
    // v = v₀ tanh(v₀ t / 2 L): so much has run after t as 2 a L ln cosh(v₀ t / 2 L).
    let v0 = (2.0 * GRAVITY_M_PER_S2 * 0.30).sqrt();
    compare(&cells, &seen, |[_, _, z]| {
        let run = (0.0016 * z / (2.0 * 1e-4 * 0.5)).exp();
        (run + (run * run - 1.0).sqrt()).ln() * 2.0 * 0.5 / v0
    });
}

#[test]
fn a_hollow_above_the_basin_stays_empty() {
    let cells = hollow([10, 10, 20], |_| true);
    let seen = glance(&cells, &gates(0.15, &[([50.0, 50.0, 0.0], 1e-4)])).unwrap();
    for place in 0..cells.stuff.len() {
        if cells.stuff[place] == Stuff::Metal {
            let is_below = cells.middle_mm(place)[2] < 149.0;
            assert_eq!(seen.arrival_s[place].is_finite(), is_below);
        }
    }
    near(seen.lies_m3, 0.01 * 0.15, 1e-3);
    near(seen.poured_m3, seen.lies_m3, 1e-4);
}

#[test]
fn what_does_not_go_together_is_refused() {
    let cells = hollow([4, 4, 4], |_| true);
    let off = gates(0.30, &[([200.0, 20.0, 20.0], 1e-4)]);
    let said = glance(&cells, &off).unwrap_err();
    assert!(matches!(said, FillError::GateInSand { number: 1, .. }));
    assert!(
        said.to_string().contains("(200.0, 20.0, 20.0) mm"),
        "{said}"
    );
    let mut short = cells.clone();
    short.metal.pop();
    let sound = gates(0.30, &[([20.0, 20.0, 20.0], 1e-4)]);
    assert!(matches!(glance(&short, &sound), Err(FillError::Box { .. })));
    let sand = hollow([4, 4, 4], |_| false);
    assert_eq!(glance(&sand, &sound).unwrap_err(), FillError::NoHollow);
    let mut one_more = sound;
    one_more.gates_mm.push([20.0; 3]);
    assert!(matches!(
        glance(&cells, &one_more),
        Err(FillError::Gates {
            outlets: 1,
            gates: 2
        })
    ));
}

/// Three gates on two sides of a sprue, with friction by the speed of the metal.
fn running_system(heights_mm: [f64; 3], gates_mm2: [f64; 3]) -> Network {
    let stretch = |gate: usize| running::Stretch {
        runner: running::Passage::square(Area::from_mm2(250.0), Length::from_mm(80.0), 0.1),
        gate: running::Gate {
            passage: running::Passage::square(
                Area::from_mm2(gates_mm2[gate]),
                Length::from_mm(20.0),
                0.7,
            ),
            height: Length::from_mm(heights_mm[gate]),
            cavity: gate,
        },
    };
    Network::of_running_system(&running::Network {
        level: Length::from_mm(250.0),
        sprue: running::Passage::square(Area::from_mm2(200.0), Length::from_mm(200.0), 1.0),
        sides: vec![vec![stretch(0), stretch(1)], vec![stretch(2)]],
        friction: Friction::ByReynolds {
            viscosity_m2_per_s: 5e-7,
            roughness: Length::from_mm(0.3),
        },
        turn: 1.0,
    })
}

/// A hollow of blocks that stand or lie as chance will have it, over one floor.
fn blocks(chance: u64) -> MouldCells {
    let heights: Vec<[usize; 2]> = (0..16u64)
        .map(|block| {
            let drawn = chance.rotate_left(4 * block as u32) ^ (chance >> (block + 3));
            [(drawn % 5) as usize, 6 + (drawn / 7 % 7) as usize]
        })
        .collect();
    hollow([12, 12, 13], move |[x, y, z]| {
        let [floor, top] = heights[x / 3 + 4 * (y / 3)];
        (floor..top).contains(&z)
    })
}

/// A sponge: six cells of ten are hollow, as chance will have it, so that there are thousands of
/// pools, most of them a cell or two.
#[test]
fn a_sponge_of_thousands_of_pools_fills_as_far_as_it_hangs_together() {
    let drawn = |[x, y, z]: [usize; 3]| {
        let mixed = (x * 73_856_093) ^ (y * 19_349_663) ^ (z * 83_492_791);
        let mixed = (mixed as u64).wrapping_mul(0x9E37_79B9_7F4A_7C15);
        (mixed >> 40) % 10 < 6
    };
    let cells = hollow([40, 40, 40], |at| at[2] == 39 || drawn(at));
    let both = [([105.0, 105.0, 395.0], 2e-4), ([305.0, 305.0, 395.0], 1e-4)];
    let seen = glance(&cells, &gates(0.60, &both)).unwrap();
    near(seen.poured_m3, seen.lies_m3, 1e-6);
    // What hangs together with the open top, found by spreading from it.
    let layer = cells.count[0] * cells.count[1];
    let steps = [1, cells.count[0], layer];
    let mut reached = vec![false; cells.stuff.len()];
    let mut spread: Vec<usize> = (40 * layer..41 * layer)
        .filter(|place| cells.stuff[*place] == Stuff::Metal)
        .collect();
    spread.iter().for_each(|place| reached[*place] = true);
    while let Some(place) = spread.pop() {
        for next in steps.iter().flat_map(|step| [place - step, place + step]) {
            if cells.stuff[next] == Stuff::Metal && !reached[next] {
                reached[next] = true;
                spread.push(next);
            }
        }
    }
    // All of that and nothing else.
    for (place, reached) in reached.iter().enumerate() {
        assert!(*reached || seen.arrival_s[place].is_infinite());
    }
    let wanted = reached.iter().filter(|reached| **reached).count() as f64;
    near(seen.lies_m3, 1e-6 * wanted, 1e-9);
}

proptest! {
    #![proptest_config(ProptestConfig {
        cases: 64,
        failure_persistence: None,
        ..ProptestConfig::default()
    })]

    #[test]
    fn in_any_hollow_metal_is_kept_and_runs_no_faster_than_its_gates(
        chance in any::<u64>(), from_rest in any::<bool>()
    ) {
        let cells = blocks(chance);
        let both = [([15.0, 15.0, 55.0], 2e-4), ([105.0, 95.0, 55.0], 1e-4)];
        let mut gating = gates(0.25, &both);
        gating.network.branches[0].length_m = 0.2;
        gating.from_rest = from_rest;
        let seen = glance(&cells, &gating).unwrap();
        prop_assert!((seen.poured_m3 / seen.lies_m3 - 1.0).abs() < 1e-6);
        prop_assert!((seen.lies_m3 / seen.hollow_m3 - 1.0).abs() < 1e-9);
        let most = 3e-4 * (2.0 * GRAVITY_M_PER_S2 * (0.25 - 0.055)).sqrt();
        // Full at a time is every cell that has metal at the middle of the cell above it.
        let layer = cells.count[0] * cells.count[1];
        let mut arrivals: Vec<f64> = (0..cells.stuff.len() - layer)
            .filter(|place| cells.stuff[*place] == Stuff::Metal)
            .map(|place| f64::from(seen.arrival_s[place + layer]))
            .filter(|arrival| arrival.is_finite())
            .collect();
        arrivals.sort_by(f64::total_cmp);
        for (full, arrival) in arrivals.iter().enumerate() {
            let lies = (full + 1) as f64 * 1e-6;
            prop_assert!(lies <= most * arrival * (1.0 + 1e-5), "{lies} {}", most * arrival);
        }
    }

    #[test]
    fn any_running_system_brings_what_leaves_its_basin(
        chance in any::<u64>(), from_rest in any::<bool>(), sinks in any::<bool>(),
        heights_mm in prop::array::uniform3(1.0..100.0f64),
        gates_mm2 in prop::array::uniform3(20.0..400.0f64)
    ) {
        let cells = blocks(chance);
        let mut gating = gates(0.25, &[([15.0, 15.0, 55.0], 1e-4)]);
        gating.network = running_system(heights_mm, gates_mm2);
        gating.gates_mm = [[15.0, 15.0], [105.0, 95.0], [45.0, 105.0]]
            .into_iter()
            .map(|[x, y]| [x, y, 55.0])
            .collect();
        gating.from_rest = from_rest;
        gating.network.sinking_m2 = sinks.then_some(0.02);
        let seen = glance(&cells, &gating).unwrap();
        prop_assert!((seen.poured_m3 / seen.lies_m3 - 1.0).abs() < 1e-5);
        prop_assert!(seen.lies_m3 <= seen.hollow_m3 * (1.0 + 1e-9));
        let gates_m3: f64 = seen.gates.iter().map(|gate| gate.metal_m3).sum();
        prop_assert!((gates_m3 / seen.poured_m3 - 1.0).abs() < 0.02, "{gates_m3}");
        for pair in seen.readings.windows(2) {
            prop_assert!(pair[1].at_s >= pair[0].at_s);
            prop_assert!(pair[1].basin_m <= pair[0].basin_m);
            prop_assert!(pair[1].gates_m3_s.iter().all(|flow| *flow >= 0.0));
        }
    }

    #[test]
    fn the_order_of_the_gates_does_not_matter(chance in any::<u64>()) {
        let cells = blocks(chance);
        let both = [([15.0, 15.0, 55.0], 2e-4), ([105.0, 95.0, 45.0], 1e-4)];
        let one = glance(&cells, &gates(0.25, &both)).unwrap();
        let other = glance(&cells, &gates(0.25, &[both[1], both[0]])).unwrap();
        for (a, b) in one.arrival_s.iter().zip(&other.arrival_s) {
            prop_assert!(a == b || (a - b).abs() <= 1e-5 * a.abs(), "{a} {b}");
        }
    }
}
