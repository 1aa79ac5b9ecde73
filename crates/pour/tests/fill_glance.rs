//! Air, heat, fronts and gate speeds of a glance against what is known in closed form.
//!
//! Sand that hardly resists at its face draws q = b ΔT / √(π t); metal that freezes at one
//! temperature and comes with hardly any superheat keeps its ΔT, so that after a time t a share
//! f = (2 / d) 2 b ΔT √(t / π) / L of it is solid. The stop length is v t for the f at which
//! it stops.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

mod boxes;

use std::f64::consts::PI;

use measure::matter::GRAVITY_M_PER_S2;
use mould::gating::gate_speed::limits_of;
use pour::cells::{MouldCells, Stuff};
use pour::fill::air::Pocket;
use pour::fill::cooling::{Metal, Sand};
use pour::fill::fact::{Fact, LeastWall, Meeting, Misrun};
use pour::fill::network::{Branch, Node};
use pour::fill::{FillError, Gating, Glance, glance};
use proptest::prelude::{ProptestConfig, any, prop_assert, proptest};

use crate::boxes::{arresting, gates, hollow, metal, near, sand};

fn pockets(seen: &Glance) -> Vec<&Pocket> {
    fn of(fact: &Fact) -> Option<&Pocket> {
        match fact {
            Fact::ShutIn(pocket) => Some(pocket),
            _ => None,
        }
    }
    seen.facts.iter().filter_map(of).collect()
}

fn meetings(seen: &Glance) -> Vec<&Meeting> {
    fn of(fact: &Fact) -> Option<&Meeting> {
        match fact {
            Fact::Meeting(meeting) => Some(meeting),
            _ => None,
        }
    }
    seen.facts.iter().filter_map(of).collect()
}

fn misruns(seen: &Glance) -> Vec<&Misrun> {
    fn of(fact: &Fact) -> Option<&Misrun> {
        match fact {
            Fact::Misrun(misrun) => Some(misrun),
            _ => None,
        }
    }
    seen.facts.iter().filter_map(of).collect()
}

fn least_wall(seen: &Glance) -> LeastWall {
    let of = |fact: &Fact| match fact {
        Fact::LeastWall(wall) => Some(*wall),
        _ => None,
    };
    seen.facts.iter().find_map(of).unwrap()
}

/// A block of 100 × 40 × 40 mm with two towers of 20 × 40 mm on it: 40 mm high at the left, 60 mm
/// at the right.
fn towers() -> MouldCells {
    hollow([10, 4, 10], |[x, _, z]| match x {
        0..2 => z < 8,
        8.. => true,
        _ => z < 4,
    })
}

/// Opens the cells over a tower to the air.
fn open(mut cells: MouldCells, over_x_mm: std::ops::Range<f64>) -> MouldCells {
    let layer = cells.count[0] * cells.count[1];
    for place in layer..cells.stuff.len() {
        let below = cells.stuff[place - layer] == Stuff::Metal;
        let is_over = over_x_mm.contains(&cells.middle_mm(place)[0]);
        if below && is_over && cells.stuff[place] == Stuff::Sand {
            cells.stuff[place] = Stuff::Air;
        }
    }
    cells
}

#[test]
fn air_is_shut_in_under_a_tower_without_a_way_out() {
    let cells = open(towers(), 80.0..100.0);
    let gating = gates(0.30, &[([50.0, 20.0, 0.0], 1e-4)]);
    let seen = glance(&cells, &gating, &metal(), &sand()).unwrap();
    let found = pockets(&seen);
    assert_eq!(found.len(), 1, "{found:?}");
    near(found[0].volume_mm3, 20.0 * 40.0 * 40.0, 1e-9);
    // The metal comes to the roof of the block.
    let roots = 0.30f64.sqrt() - 0.26f64.sqrt();
    let roof_s = 0.004 / 1e-4 * (2.0 / GRAVITY_M_PER_S2).sqrt() * roots;
    near(found[0].closed_at_s.unwrap(), roof_s, 1e-6);
    // A tower of 40 mm with its mouth 260 mm under the level of the basin, by Boyle:
    // (p₀ + ρ g (H − x)) (h − x) = p₀ h.
    let share = found[0].hole_mm3 / found[0].volume_mm3;
    let rise_m = 0.040 * (1.0 - share);
    let pressed = 101_325.0 + 2400.0 * GRAVITY_M_PER_S2 * (0.26 - rise_m);
    near(pressed * (0.040 - rise_m), 101_325.0 * 0.040, 1e-9);
    let high = found[0].highs[0];
    assert!((0.0..20.0).contains(&high.place_mm[0]), "{high:?}");
    near(high.place_mm[2], 75.0, 1e-9);
}

#[test]
fn a_hollow_without_any_way_out_wants_a_vent_at_each_high() {
    let gating = gates(0.30, &[([50.0, 20.0, 0.0], 1e-4)]);
    let seen = glance(&towers(), &gating, &metal(), &sand()).unwrap();
    let found = pockets(&seen);
    assert_eq!(found.len(), 1);
    assert_eq!(found[0].closed_at_s, None);
    near(found[0].volume_mm3, 1e9 * seen.hollow_m3, 1e-9);
    let heights: Vec<f64> = found[0].highs.iter().map(|high| high.place_mm[2]).collect();
    assert_eq!(heights, [95.0, 75.0]);
    near(found[0].highs[1].volume_mm3, 20.0 * 40.0 * 40.0, 1e-9);
}

#[test]
fn vents_open_tops_sand_and_cores_let_air_out_as_told() {
    let gating = gates(0.30, &[([50.0, 20.0, 0.0], 1e-4)]);
    let none = |cells: &MouldCells, gating: &Gating| {
        let seen = glance(cells, gating, &metal(), &sand()).unwrap();
        assert!(pockets(&seen).is_empty(), "{:?}", pockets(&seen));
    };
    none(&open(towers(), 0.0..100.0), &gating);
    let mut vented = gating.clone();
    vented.air.vents_mm = vec![[10.0, 20.0, 80.0], [90.0, 20.0, 100.0]];
    none(&towers(), &vented);
    let mut through = gating.clone();
    through.air.through_sand = true;
    none(&towers(), &through);
    // Sand that is tight, but a core over the left tower that is not.
    let mut cored = open(towers(), 80.0..100.0);
    for place in 0..cells_of(&cored) {
        if cored.middle_mm(place) == [5.0, 5.0, 85.0] {
            cored.stuff[place] = Stuff::Core;
        }
    }
    let mut through = gating;
    through.air.through_cores = true;
    none(&cored, &through);
}

fn cells_of(cells: &MouldCells) -> usize {
    cells.stuff.len()
}

/// An upright bar of 40 × 40 mm and 600 mm, filled through its floor.
fn bar() -> (MouldCells, Gating) {
    let cells = hollow([4, 4, 60], |_| true);
    (cells, gates(0.90, &[([15.0, 15.0, 0.0], 0.5e-4)]))
}

/// When metal comes to a height of the bar, s.
fn comes_s(z_m: f64) -> f64 {
    let roots = 0.90f64.sqrt() - (0.90 - z_m).sqrt();
    0.0016 / 0.5e-4 * (2.0 / GRAVITY_M_PER_S2).sqrt() * roots
}

/// Surface of the bar over its volume, its two ends with it, 1/m.
const PER_M: f64 = 4.0 / 0.040 + 2.0 / 0.600;

/// Solid share of metal that comes without superheat after a time in the bar.
fn solid_after(age_s: f64) -> f64 {
    PER_M * 2.0 * 1000.0 * 580.0 * (age_s / PI).sqrt() / 9.7e8
}

#[test]
fn metal_in_a_bar_freezes_by_the_root_of_its_time_and_stops_at_its_stop_length() {
    let (cells, gating) = bar();
    let metal = Metal {
        stops_at_solid: 0.12,
        ..arresting(1e-3)
    };
    let seen = glance(&cells, &gating, &metal, &sand()).unwrap();
    let mut compared = 0;
    for place in 0..cells.stuff.len() {
        let [_, _, z] = cells.middle_mm(place).map(|mm| mm * 1e-3);
        if cells.stuff[place] == Stuff::Metal && z > 0.05 && z < 0.55 {
            // The gate's own layer fills from the gate outwards: ages differ by up to that layer.
            let found = f64::from(seen.arrival_solid[place]);
            let least = solid_after(comes_s(z) - comes_s(0.010));
            let most = solid_after(comes_s(z + 0.005));
            assert!(
                (0.99 * least..1.01 * most).contains(&found),
                "{found} {least} {most}"
            );
            near(f64::from(seen.arrival_c[place]), 600.0, 1e-6);
            compared += 1;
        }
    }
    assert!(compared > 700);
    // Stop length: the height at which so much is solid.
    let root = 0.12 * 9.7e8 / (PER_M * 2.0 * 1000.0 * 580.0);
    let age_s = PI * root * root;
    let stops_m = (0..600)
        .map(|mm| f64::from(mm) * 1e-3)
        .find(|z| comes_s(*z) - comes_s(0.005) > age_s)
        .unwrap();
    let found = misruns(&seen);
    assert_eq!(found.len(), 1);
    assert!(
        (found[0].place_mm[2] * 1e-3 - stops_m).abs() <= 0.010,
        "{found:?} {stops_m}"
    );
    near(found[0].volume_mm3, 1600.0 * (600.0 - stops_m * 1e3), 0.03);
}

#[test]
fn the_least_wall_is_that_of_the_law_for_the_longest_way() {
    let (cells, gating) = bar();
    let seen = glance(&cells, &gating, &arresting(1e-3), &sand()).unwrap();
    let wall = least_wall(&seen);
    let soonest_s = comes_s(0.595) - comes_s(0.010);
    assert!(
        (soonest_s..comes_s(0.600)).contains(&wall.takes_s),
        "{wall:?}"
    );
    // T = 4 b ΔT √(t / π) / (f L) where nothing but f L is to spare.
    let wanted = 4.0 * 1000.0 * 580.0 * (wall.takes_s / PI).sqrt() / (0.3 * 9.7e8);
    near(wall.wall_mm, wanted * 1e3, 1e-3);
    assert!((580.0..=640.0).contains(&wall.way_mm), "{wall:?}");
    near(wall.place_mm[2], 595.0, 1e-9);
}

#[test]
fn metal_loses_heat_in_the_running_system_and_less_once_it_is_warm() {
    // From the basin through a channel of 20 mm across and 500 mm long, at an even flow.
    let cells = hollow([10, 10, 20], |_| true);
    let mut gating = gates(0.50, &[([50.0, 50.0, 200.0], 1e-4)]);
    gating.network.junctions_m = vec![0.2];
    gating.network.branches[0].from = Node::Junction(0);
    gating.network.branches.push(Branch {
        from: Node::Basin,
        to: Node::Junction(0),
        area_m2: 4e-4,
        length_m: 0.5,
        hydraulic_m: 0.02,
        ..gating.network.branches[0].clone()
    });
    let metal = metal();
    let seen = glance(&cells, &gating, &metal, &sand()).unwrap();
    let flow = 1e-4 * (2.0 * GRAVITY_M_PER_S2 * 0.30).sqrt();
    let takes_s = 0.5 / (flow / 4e-4);
    let at_gate = |after_s: f64| {
        let drawn = 2.0 * 1000.0 / PI.sqrt() * ((after_s + takes_s).sqrt() - after_s.sqrt());
        // An even loss of 4 / D of its difference to the sand.
        let left = (-4.0 / 0.02 * drawn / 2.7e6).exp();
        20.0 + 680.0 * left
    };
    let landing = |z_mm: f64| {
        let at = (0..cells.stuff.len())
            .find(|place| cells.middle_mm(*place) == [45.0, 45.0, z_mm])
            .unwrap();
        [seen.arrival_s[at], seen.arrival_c[at]].map(f64::from)
    };
    for z_mm in [5.0, 105.0, 185.0] {
        let [at_s, celsius] = landing(z_mm);
        near(700.0 - celsius, 700.0 - at_gate(at_s), 0.02);
    }
    assert!(landing(185.0)[1] > landing(5.0)[1]);
}

#[test]
fn fronts_meet_over_a_core() {
    // A plate of 200 × 20 × 120 mm on edge with a core of 80 × 40 mm through it.
    let cells = hollow([20, 2, 12], |[x, _, z]| {
        !((6..14).contains(&x) && (4..8).contains(&z))
    });
    let gating = gates(0.40, &[([100.0, 10.0, 0.0], 1e-4)]);
    let seen = glance(&cells, &gating, &metal(), &sand()).unwrap();
    let found = meetings(&seen);
    assert_eq!(found.len(), 1, "{found:?}");
    near(found[0].place_mm[2], 85.0, 1e-9);
    assert!((found[0].place_mm[0] - 100.0).abs() <= 10.0, "{found:?}");
    let over = cells.index([10, 1, 9]);
    near(found[0].at_s, f64::from(seen.arrival_s[over]), 1e-6);
    assert!(found[0].coldest_c <= f64::from(seen.arrival_c[over]) + 1e-3);
    assert_eq!(found[0].solid, 0.0);
    // Without the core nothing meets.
    let whole = hollow([20, 2, 12], |_| true);
    let seen = glance(&whole, &gating, &metal(), &sand()).unwrap();
    assert!(meetings(&seen).is_empty());
}

#[test]
fn streams_from_both_ends_meet_in_the_middle() {
    let cells = hollow([21, 4, 6], |_| true);
    let both = [([5.0, 20.0, 60.0], 1e-4), ([205.0, 20.0, 60.0], 1e-4)];
    let seen = glance(&cells, &gates(0.30, &both), &arresting(5.0), &sand()).unwrap();
    let found = meetings(&seen);
    assert_eq!(found.len(), 1, "{found:?}");
    assert!((found[0].place_mm[0] - 105.0).abs() <= 10.0, "{found:?}");
    near(found[0].place_mm[2], 5.0, 1e-9);
    // Cold, since it came a long way over bare floor: the metal there is the coldest of its layer.
    assert!(found[0].solid > 0.0 && found[0].deficit > 0.0, "{found:?}");
}

#[test]
fn gate_speeds_are_held_to_the_limits_in_print_and_to_the_speed_of_waves() {
    let cells = hollow([10, 10, 20], |_| true);
    let seen = glance(
        &cells,
        &gates(0.24, &[([50.0, 50.0, 0.0], 1e-4)]),
        &metal(),
        &sand(),
    )
    .unwrap();
    let gate = &seen.gates[0];
    near(gate.metal_m3, 0.01 * 0.20, 1e-4);
    near(
        gate.fastest_m_s,
        (2.0 * GRAVITY_M_PER_S2 * 0.24).sqrt(),
        1e-9,
    );
    assert_eq!(gate.fastest_at_s, 0.0);
    let limits = limits_of("aluminium");
    assert_eq!(gate.over.len(), limits.len());
    for (over, limit) in gate.over.iter().zip(&limits) {
        assert_eq!(over.limit_m_s, limit.m_per_s);
        // v = √(2 g (H − z)) falls below the limit at this height.
        let z = 0.24 - limit.m_per_s.powi(2) / (2.0 * GRAVITY_M_PER_S2);
        near(over.share, (z / 0.20).min(1.0), 0.03);
    }
    // v² = g z where 2 (H − z) = z: rough up to two thirds of the head.
    near(gate.rough_share, 0.16 / 0.20, 0.04);
    assert!(gate.largest_froude > 5.0);
}

#[test]
fn the_running_system_fills_before_its_gates_run() {
    // A sprue of 20 × 20 × 100 mm down to a block, marked as running system.
    let cells = hollow([10, 4, 10], |[x, y, z]| {
        (x < 7 && z < 4) || (x >= 8 && (1..3).contains(&y)) || (x == 7 && y == 1 && z == 1)
    });
    let mut gating = gates(0.12, &[([65.0, 15.0, 15.0], 1e-4)]);
    gating.running = (0..cells.stuff.len())
        .map(|place| cells.middle_mm(place)[0] > 70.0)
        .collect();
    let seen = glance(&cells, &gating, &metal(), &sand()).unwrap();
    let flow = 1e-4 * (2.0 * GRAVITY_M_PER_S2 * 0.105).sqrt();
    near(seen.starts_s, 41e-6 / flow, 1e-6);
    near(seen.readings[0].at_s, seen.starts_s, 1e-12);
    for place in 0..cells.stuff.len() {
        if cells.stuff[place] == Stuff::Metal {
            let at_s = f64::from(seen.arrival_s[place]);
            let is_running = gating.running[place];
            assert_eq!(at_s <= seen.starts_s * 1.000_001, is_running, "{at_s}");
        }
    }
    near(seen.hollow_m3, 70e-3 * 40e-3 * 40e-3, 1e-9);
}

#[test]
fn hollow_that_no_gate_reaches_or_that_lies_too_high_is_told() {
    let cells = hollow([12, 4, 20], |[x, _, _]| !(5..7).contains(&x));
    let seen = glance(
        &cells,
        &gates(0.15, &[([25.0, 20.0, 0.0], 1e-4)]),
        &metal(),
        &sand(),
    )
    .unwrap();
    let mut above = 0.0;
    for fact in &seen.facts {
        if let Fact::Unfilled {
            volume_mm3,
            place_mm,
            above_basin,
        } = fact
        {
            match above_basin {
                true => above = *volume_mm3,
                false => {
                    near(place_mm[2], 5.0, 1e-9);
                    assert!(place_mm[0] > 70.0);
                    near(*volume_mm3, 50.0 * 40.0 * 140.0, 1e-9);
                }
            }
        }
    }
    near(above, 2.0 * 50.0 * 40.0 * 50.0 + 50.0 * 40.0 * 10.0, 0.11);
}

#[test]
fn metal_that_is_not_liquid_and_sand_that_is_none_are_refused() {
    let (cells, gating) = bar();
    let cold = Metal {
        poured_c: 590.0,
        ..metal()
    };
    let said = glance(&cells, &gating, &cold, &sand()).unwrap_err();
    assert!(said.to_string().contains("590 °C"), "{said}");
    assert!(said.to_string().contains("600 °C"), "{said}");
    let dead = Sand {
        draws_w_rts_m2_k: 0.0,
        ..sand()
    };
    let said = glance(&cells, &gating, &metal(), &dead);
    assert_eq!(said.unwrap_err(), FillError::Figures);
    let strange = Metal {
        kind: "lead".to_owned(),
        ..metal()
    };
    let said = glance(&cells, &gating, &strange, &sand()).unwrap_err();
    assert!(said.to_string().contains("not for \"lead\""), "{said}");
    let pointlike = MouldCells {
        size_mm: 0.0,
        ..cells
    };
    let said = glance(&pointlike, &gating, &metal(), &sand());
    assert_eq!(said.unwrap_err(), FillError::Size { size_mm: 0.0 });
}

proptest! {
    #![proptest_config(ProptestConfig {
        cases: 32,
        failure_persistence: None,
        ..ProptestConfig::default()
    })]

    #[test]
    fn metal_comes_no_hotter_than_poured_and_no_colder_than_the_sand(
        chance in any::<u64>(), superheat_k in 5.0..200.0f64, draws in 300.0..2500.0f64
    ) {
        let cells = hollow([12, 12, 10], |[x, y, z]| {
            let block = 4 * (x / 3) as u32 + (y / 3) as u32;
            z < 3 || (chance >> block) & 1 == 1 && z < 4 + (chance >> (block + 16)) as usize % 6
        });
        let gating = gates(0.30, &[([15.0, 15.0, 0.0], 1e-4), ([105.0, 75.0, 25.0], 1e-4)]);
        let sand = Sand { draws_w_rts_m2_k: draws, ..sand() };
        let hot = glance(&cells, &gating, &arresting(superheat_k), &sand).unwrap();
        let cold = glance(&cells, &gating, &arresting(superheat_k - 4.0), &sand).unwrap();
        for (hot_c, cold_c) in hot.arrival_c.iter().zip(&cold.arrival_c) {
            let most = (600.0 + superheat_k) as f32 * 1.000_001;
            prop_assert!((19.999..=most).contains(hot_c), "{hot_c}");
            prop_assert!(*hot_c >= cold_c - 1e-2, "{hot_c} {cold_c}");
        }
    }
}
