//! The running system over time against what is known of it in closed form.
//!
//! The closed forms are those of a tank that drains through a hole (Torricelli), of a mould filled
//! through its floor, of a column of liquid sped up in a pipe, v = v₀ tanh(v₀ t / 2 L), and of a
//! stream that falls freely; the figures were worked out from them with forty digits for
//! g = 9.81 m/s², and are carried over to the standard gravity of the laws by the root of the two.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

use measure::length::{Area, Length};
use measure::matter::GRAVITY_M_PER_S2;
use mould::gating::friction::{Friction, TRIED};
use mould::gating::network as running;
use pour::fill::network::flow::{Flows, resistances, steady};
use pour::fill::network::part_full::{part_full, pressure_head_m};
use pour::fill::network::step::{Held, Rise, State, Way, step};
use pour::fill::network::{Branch, Network, NetworkError, Node, Section};

/// How much longer everything that falls takes than at 9.81 m/s².
fn slower() -> f64 {
    (9.81 / GRAVITY_M_PER_S2).sqrt()
}

fn near(found: f64, wanted: f64, share: f64) {
    let off = (found - wanted).abs() / wanted.abs();
    assert!(off <= share, "{found} for {wanted}: off by {off:e}");
}

/// A channel without losses.
fn channel(from: Node, to: Node, area_m2: f64) -> Branch {
    Branch {
        from,
        to,
        area_m2,
        length_m: 0.0,
        hydraulic_m: area_m2.sqrt(),
        loss: 0.0,
        turn: None,
        sections: Vec::new(),
    }
}

/// One channel from the basin to an outlet at height nought.
fn one(area_m2: f64, level_m: f64) -> Network {
    Network {
        level_m,
        sinking_m2: None,
        junctions_m: Vec::new(),
        outlets_m: vec![0.0],
        branches: vec![channel(Node::Basin, Node::Outlet(0), area_m2)],
        friction: Friction::Stated(0.0),
    }
}

fn at_rest(network: &Network, pools: usize) -> State {
    State {
        flows: vec![0.0; network.branches.len()],
        basin_m: network.level_m,
        pools_m3: vec![0.0; pools],
        poured_m3: 0.0,
    }
}

fn held(network: &Network, ways: Vec<Option<Way>>, rises: Vec<Rise>, inertia: bool) -> Held<'_> {
    let flows = vec![1e-4; network.branches.len()];
    Held {
        network,
        resistances: resistances(network, &flows),
        ways,
        rises,
        inertia,
    }
}

const FREE: Option<Way> = Some(Way {
    under: None,
    into: Some(0),
});

/// After so many even steps.
fn after(held: &Held<'_>, state: State, seconds: f64, steps: u32) -> State {
    (0..steps).fold(state, |state, _| {
        step(held, &state, seconds / f64::from(steps)).unwrap()
    })
}

#[test]
fn a_tank_drains_in_the_time_of_torricelli() {
    let mut network = one(1.5e-4, 0.30);
    network.sinking_m2 = Some(0.05);
    let held = held(&network, vec![FREE], vec![STILL], false);
    let ended = after(&held, at_rest(&network, 1), 34.841_790_374_0 * slower(), 20);
    near(ended.basin_m, 0.10, 1e-6);
    near(ended.poured_m3, 0.05 * 0.20, 1e-6);
    near(ended.pools_m3[0], 0.05 * 0.20, 1e-6);
}

const STILL: Rise = Rise {
    level_m: 0.0,
    per_m3: 0.0,
};

#[test]
fn a_mould_fills_through_its_floor_and_from_above() {
    let network = one(1e-4, 0.30);
    let rise = Rise {
        level_m: 0.0,
        per_m3: 1.0 / 0.01,
    };
    let drowned = Some(Way {
        under: Some(0),
        into: Some(0),
    });
    let below = held(&network, vec![drowned], vec![rise], false);
    let ended = after(&below, at_rest(&network, 1), 3.0 * slower(), 10);
    near(ended.pools_m3[0] / 0.01, 0.068_368_739_829_0, 1e-6);
    let ended = after(
        &below,
        at_rest(&network, 1),
        10.452_537_112_2 * slower(),
        20,
    );
    near(ended.pools_m3[0] / 0.01, 0.20, 1e-6);
    let above = held(&network, vec![FREE], vec![rise], false);
    let ended = after(&above, at_rest(&network, 1), 8.243_656_113_83 * slower(), 2);
    near(ended.pools_m3[0] / 0.01, 0.20, 1e-6);
}

#[test]
fn metal_in_a_pipe_is_sped_up_as_in_closed_form() {
    let mut network = one(1e-4, 0.30);
    network.branches[0].length_m = 0.5;
    let held = held(&network, vec![FREE], vec![STILL], true);
    let (v0, seconds) = (2.426_107_994_30 / slower(), 0.755_028_559_062 * slower());
    for (share, steps) in [(1.0, 40), (0.5, 20)] {
        let ended = after(&held, at_rest(&network, 1), share * seconds, steps);
        let wanted = v0 * (v0 * share * seconds / (2.0 * 0.5)).tanh();
        near(ended.flows[0] / 1e-4, wanted, 1e-6);
    }
    let ended = after(&held, at_rest(&network, 1), seconds, 40);
    near(ended.flows[0] / 1e-4, 0.95 * v0, 1e-6);
}

#[test]
fn the_steps_are_of_the_fourth_order() {
    let mut network = one(1e-4, 0.30);
    network.branches[0].length_m = 0.5;
    let held = held(&network, vec![FREE], vec![STILL], true);
    let v0 = (2.0 * GRAVITY_M_PER_S2 * 0.30).sqrt();
    let wanted = v0 * (v0 * 0.6).tanh();
    let off = |steps| {
        let ended = after(&held, at_rest(&network, 1), 0.6, steps);
        (ended.flows[0] / 1e-4 - wanted).abs()
    };
    let order = (off(4) / off(8)).log2();
    assert!((3.5..5.0).contains(&order), "{order}");
}

#[test]
fn metal_in_a_bent_tube_swings_in_the_period_of_its_length() {
    // A column of 0.5 m, as wide in both limbs as between them, let go 0.2 µm off its rest: so
    // little that the speed lost at the outlet does not tell. Half a swing, since metal does not
    // run back through an outlet.
    let mut network = one(1e-4, 1e-7);
    network.outlets_m = vec![-1.0];
    network.branches[0].length_m = 0.5;
    network.sinking_m2 = Some(1e-4);
    let rise = Rise {
        level_m: -1e-7,
        per_m3: 1e4,
    };
    let drowned = Some(Way {
        under: Some(0),
        into: Some(0),
    });
    let held = held(&network, vec![drowned], vec![rise], true);
    let period_s = 1.003_033_340_36 * slower();
    for share in [0.125, 0.25, 0.375, 0.5] {
        let ended = after(&held, at_rest(&network, 1), share * period_s, 80);
        let swung = 1.0 - (2.0 * std::f64::consts::PI * share).cos();
        near(ended.pools_m3[0] / 1e-4, 1e-7 * swung, 1e-6);
        near(1e-7 - ended.basin_m, 1e-7 * swung, 1e-6);
    }
}

#[test]
fn a_straight_sprue_passes_what_its_mouth_does_and_runs_thin() {
    // Metal over the mouth, fall below it, area of the stream at the foot, speed there.
    let cases = [
        (0.050, 0.250, 0.408_248_290_464, 2.426_107_994_30),
        (0.100, 0.400, 0.447_213_595_500, 3.132_091_952_67),
    ];
    for (above_m, below_m, share, speed) in cases {
        let mut network = one(1e-4, above_m + below_m);
        let section = |height_m| Section {
            height_m,
            area_m2: 1e-4,
        };
        network.branches[0].sections = vec![section(below_m), section(0.0)];
        let flows = steady(&network, &[Some(0.0)]).unwrap();
        let thin = part_full(&network, network.level_m, &flows);
        assert_eq!(thin.len(), 1, "{thin:?}");
        near(thin[0].stream_m2 / thin[0].built_m2, share, 1e-6);
        near(
            flows.branches[0] / thin[0].stream_m2,
            speed / slower(),
            1e-6,
        );
    }
}

#[test]
fn a_tapered_sprue_runs_full_and_a_straight_one_would_draw_air() {
    let mut network = one(1e-4, 0.30);
    let top = Section {
        height_m: 0.25,
        area_m2: 1e-4 * 6f64.sqrt() * 1.000_01,
    };
    let foot = Section {
        height_m: 0.0,
        area_m2: 1e-4,
    };
    network.branches[0].sections = vec![top, foot];
    let flows = steady(&network, &[Some(0.0)]).unwrap();
    assert!(part_full(&network, 0.30, &flows).is_empty());
    near(flows.branches[0], 1e-4 * 2.426_107_994_30 / slower(), 1e-6);
    let straight = Section {
        area_m2: 1e-4,
        ..top
    };
    // Held full it would draw: five of the six parts of its height are missing there.
    near(
        pressure_head_m(0.30, &straight, flows.branches[0]),
        -0.25,
        1e-6,
    );
}

fn two_sided() -> running::Network {
    let mm2 = Area::from_mm2;
    let stretch = |gate_mm2: f64, height_mm: f64, cavity| running::Stretch {
        runner: running::Passage::square(mm2(300.0), Length::from_mm(70.0), 0.2),
        gate: running::Gate {
            passage: running::Passage::square(mm2(gate_mm2), Length::from_mm(15.0), 0.7),
            height: Length::from_mm(height_mm),
            cavity,
        },
    };
    running::Network {
        level: Length::from_mm(130.0),
        sprue: running::Passage::square(mm2(180.0), Length::from_mm(120.0), 1.0),
        sides: vec![
            vec![stretch(90.0, 0.0, 0), stretch(60.0, 8.0, 1)],
            vec![stretch(120.0, -5.0, 2)],
        ],
        friction: TRIED,
        turn: 1.0,
    }
}

#[test]
fn newton_and_the_nested_search_of_the_laws_find_the_same_flows() {
    let by_reynolds = Friction::ByReynolds {
        viscosity_m2_per_s: 5e-7,
        roughness: Length::from_mm(0.3),
    };
    for friction in [TRIED, Friction::Stated(0.0), by_reynolds] {
        let system = running::Network {
            friction,
            ..two_sided()
        };
        let by_search = running::gate_flows(&system).unwrap();
        let network = Network::of_running_system(&system);
        let heads: Vec<_> = network.outlets_m.iter().copied().map(Some).collect();
        let flows = steady(&network, &heads).unwrap();
        for (gate, branch) in by_search.gates.iter().zip(outlets(&network)) {
            near(flows.branches[branch], gate.flow.as_m3_per_s(), 1e-8);
        }
        near(flows.branches[0], by_search.sprue.as_m3_per_s(), 1e-8);
    }
}

fn outlets(network: &Network) -> Vec<usize> {
    let all = network.branches.iter().enumerate();
    let outlets = all.filter(|(_, branch)| matches!(branch.to, Node::Outlet(_)));
    outlets.map(|(number, _)| number).collect()
}

#[test]
fn a_gate_that_is_pressed_back_stands_still_and_the_rest_runs_on() {
    let network = Network::of_running_system(&two_sided());
    let flows = |heads: [Option<f64>; 3]| -> Flows { steady(&network, &heads).unwrap() };
    let [first, second, third] = [0, 1, 2].map(|gate| outlets(&network)[gate]);
    let pressed = flows([Some(0.0), Some(0.129), Some(-0.005)]);
    let shut = flows([Some(0.0), None, Some(-0.005)]);
    assert_eq!(pressed.branches[second], 0.0);
    near(pressed.branches[first], shut.branches[first], 1e-9);
    near(pressed.branches[third], shut.branches[third], 1e-9);
    // All of them pressed back: nothing runs.
    let still = flows([Some(0.2), Some(0.2), Some(0.2)]);
    assert!(
        still.branches.iter().all(|flow| flow.abs() < 1e-9),
        "{still:?}"
    );
}

#[test]
fn what_cannot_be_is_refused_with_its_number() {
    let sound = Network::of_running_system(&two_sided());
    assert_eq!(sound.check(), Ok(()));
    let mut flat = sound.clone();
    flat.branches[2].area_m2 = 0.0;
    assert_eq!(flat.check(), Err(NetworkError::Branch { number: 3 }));
    let mut astray = sound.clone();
    astray.branches[1].to = Node::Junction(9);
    assert_eq!(astray.check(), Err(NetworkError::Astray { number: 2 }));
    let mut double = sound.clone();
    double.branches[2].to = Node::Outlet(1);
    assert_eq!(double.check(), Err(NetworkError::Outlet { number: 1 }));
    let low = Network {
        level_m: -0.1,
        ..sound
    };
    let said = low.check().unwrap_err().to_string();
    assert!(said.contains("-100.0 mm"), "{said}");
}
