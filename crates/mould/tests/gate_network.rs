//! The running system as a network against what is known without it.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

use measure::flow::Duration;
use measure::length::{Area, Length, Volume};
use measure::matter::{Density, Mass};
use mould::gating::balance::{BalanceFault, balanced_gates};
use mould::gating::choke::choke;
use mould::gating::filling::{Cavity, FillFault, fill_order};
use mould::gating::friction::{Friction, TRIED, friction_factor};
use mould::gating::network::{
    GATE_LOSS, Gate, Network, NetworkFault, Passage, SQUARE_TURN, Stretch, WELL_LOSS, gate_flows,
};
use mould::gating::sprue::{fill_from_bottom, fill_from_top};
use proptest::prelude::{prop_assert, proptest};

const LOSSLESS: Friction = Friction::Stated(0.0);

fn mm(amount: f64) -> Length {
    Length::from_mm(amount)
}

fn mm2(amount: f64) -> Area {
    Area::from_mm2(amount)
}

/// A runner of one width to one side with these gates along it, each into its own cavity.
fn side(gates: &[f64], runner_mm2: f64, first_cavity: usize, height: Length) -> Vec<Stretch> {
    let along = gates.iter().enumerate();
    along
        .map(|(place, gate)| Stretch {
            runner: Passage::square(mm2(runner_mm2), mm(80.0), 0.0),
            gate: Gate {
                passage: Passage::square(mm2(*gate), mm(25.0), GATE_LOSS),
                height,
                cavity: first_cavity + place,
            },
        })
        .collect()
}

/// A plain runner with four gates of 100 mm² to one side.
fn plain() -> Network {
    Network {
        level: mm(125.0),
        sprue: Passage::square(mm2(200.0), mm(100.0), WELL_LOSS),
        sides: vec![side(&[100.0; 4], 400.0, 0, Length::ZERO)],
        friction: TRIED,
        turn: SQUARE_TURN,
    }
}

/// One gate at the end of a running system so wide that nothing is lost before it.
fn one_gate(gate_mm2: f64, loss: f64, level_mm: f64, height: Length) -> Network {
    Network {
        level: mm(level_mm),
        sprue: Passage::square(Area::from_m2(100.0), mm(100.0), 0.0),
        sides: vec![vec![Stretch {
            runner: Passage::square(Area::from_m2(100.0), mm(5000.0), 0.0),
            gate: Gate {
                passage: Passage::square(mm2(gate_mm2), mm(25.0), loss),
                height,
                cavity: 0,
            },
        }]],
        friction: LOSSLESS,
        turn: 0.0,
    }
}

fn shares(network: &Network) -> Vec<f64> {
    let flows = gate_flows(network).unwrap();
    flows.gates.iter().map(|gate| gate.share).collect()
}

#[test]
fn one_gate_is_the_choke_law() {
    let discharge = 0.8f64;
    let loss = discharge.powi(-2) - 1.0;
    let flow = gate_flows(&one_gate(100.0, loss, 125.0, Length::ZERO))
        .unwrap()
        .sprue;
    let liquid = Density::from_g_per_cm3(2.4);
    let time = Duration::from_s(4.0);
    let poured: Mass = liquid * (flow * time);
    let area = choke(poured, liquid, time, discharge, mm(125.0));
    assert!((area.as_mm2() - 100.0).abs() < 1e-6, "{}", area.as_mm2());
}

#[test]
fn a_tree_alike_on_both_sides_shares_alike() {
    let mut network = plain();
    network.sides = vec![
        side(&[100.0; 2], 400.0, 0, Length::ZERO),
        side(&[100.0; 2], 400.0, 2, Length::ZERO),
    ];
    let shares = shares(&network);
    assert!((shares[0] - shares[2]).abs() < 1e-12 && (shares[1] - shares[3]).abs() < 1e-12);
    network.sides = vec![side(&[100.0], 400.0, 0, Length::ZERO); 4];
    for share in self::shares(&network) {
        assert!((share - 0.25).abs() < 1e-12, "{share}");
    }
}

#[test]
fn a_runner_without_losses_or_speed_shares_by_area_however_long() {
    let mut network = plain();
    network.friction = LOSSLESS;
    network.turn = 0.0;
    network.sides = vec![side(&[50.0, 100.0, 150.0], 1e9, 0, Length::ZERO)];
    for (share, wanted) in shares(&network).iter().zip([1.0 / 6.0, 1.0 / 3.0, 0.5]) {
        assert!((share - wanted).abs() < 1e-9, "{share} {wanted}");
    }
}

#[test]
fn in_a_plain_runner_the_farthest_gate_runs_hardest() {
    let shares = shares(&plain());
    assert!(
        shares.windows(2).all(|pair| pair[0] < pair[1]),
        "{shares:?}"
    );
    assert!(shares[3] > 1.2 * shares[0], "{shares:?}");
}

#[test]
fn with_much_friction_the_nearest_gate_runs_hardest() {
    let mut network = plain();
    network.friction = Friction::Stated(0.6);
    let shares = shares(&network);
    assert!(shares[0] > shares[3], "{shares:?}");
}

#[test]
fn friction_by_reynolds_comes_to_rest_near_the_tried_factor() {
    let mut network = plain();
    network.friction = Friction::ByReynolds {
        viscosity_m2_per_s: 5e-7,
        roughness: mm(0.3),
    };
    let tried = gate_flows(&plain()).unwrap().sprue;
    let found = gate_flows(&network).unwrap().sprue;
    assert!((found / tried - 1.0).abs() < 0.05, "{}", found / tried);
}

#[test]
fn friction_is_that_of_the_published_examples() {
    // Quiet flow 64/Re; smooth turbulent flow near 0.3164 Re^(−1/4).
    assert!((friction_factor(1000.0, 0.0) - 0.064).abs() < 1e-4);
    let smooth = 0.3164 / 1e5f64.powf(0.25);
    assert!((friction_factor(1e5, 0.0) / smooth - 1.0).abs() < 0.02);
}

#[test]
fn a_cavity_filled_from_above_or_below_takes_the_time_of_the_plain_laws() {
    let plan = mm2(10_000.0);
    let cavity = Cavity {
        volume: plan * mm(200.0),
        bottom: Length::ZERO,
        height: mm(200.0),
    };
    let below = fill_order(&one_gate(100.0, 0.0, 300.0, Length::ZERO), &[cavity]).unwrap();
    let law = fill_from_bottom(plan, mm2(100.0), mm(300.0), mm(200.0));
    assert!((law.as_s() - 10.454_322).abs() < 1e-5);
    assert!(
        (below.full_at[0] / law - 1.0).abs() < 1e-4,
        "{:?}",
        below.full_at
    );
    let above = fill_order(&one_gate(100.0, 0.0, 300.0, mm(200.0)), &[cavity]).unwrap();
    let law = fill_from_top(cavity.volume, mm2(100.0), mm(100.0));
    assert!(
        (above.full_at[0] / law - 1.0).abs() < 1e-9,
        "{:?}",
        above.full_at
    );
}

#[test]
fn when_one_cavity_is_full_the_other_gets_its_metal() {
    let mut network = plain();
    network.sides = vec![side(&[100.0, 100.0], 400.0, 0, Length::ZERO)];
    let block = |cm3: f64| Cavity {
        volume: Volume::from_cm3(cm3),
        bottom: mm(-40.0),
        height: mm(40.0),
    };
    let even = fill_order(&network, &[block(200.0), block(200.0)]).unwrap();
    assert_eq!(even.last, 0);
    let slow = gate_flows(&network).unwrap().gates[0].flow;
    let alone = Volume::from_cm3(200.0) / slow;
    assert!(
        even.full_at[0] < alone,
        "the nearest gate speeds up once it is alone"
    );
    let ordered = fill_order(&network, &[block(400.0), block(200.0)]).unwrap();
    assert!(ordered.lag > even.lag);
}

#[test]
fn gates_cut_as_advised_share_alike_and_fill_together() {
    let network = plain();
    let areas = balanced_gates(&network, &[1.0; 4]).unwrap();
    let total: Area = areas.iter().copied().sum();
    assert!((total.as_mm2() - 400.0).abs() < 1e-6, "{}", total.as_mm2());
    assert!(areas[0] > areas[3], "the nearest gate is cut wider");
    let balanced = network.with_gates(&areas);
    for share in shares(&balanced) {
        assert!((share - 0.25).abs() < 1e-6, "{share}");
    }
    let cavities = [Cavity {
        volume: Volume::from_cm3(80.0),
        bottom: mm(-20.0),
        height: mm(20.0),
    }; 4];
    let before = fill_order(&network, &cavities).unwrap();
    let after = fill_order(&balanced, &cavities).unwrap();
    assert!(
        before.lag.as_s() > 0.1 && after.lag.as_s() < 1e-3,
        "{:?} {:?}",
        before,
        after
    );
}

#[test]
fn what_cannot_run_is_refused() {
    let none = Network {
        sides: vec![],
        ..plain()
    };
    assert_eq!(gate_flows(&none), Err(NetworkFault::NoGate));
    let dry = one_gate(100.0, 0.0, 100.0, mm(100.0));
    assert_eq!(gate_flows(&dry), Err(NetworkFault::NoHead));
    let closed = one_gate(0.0, 0.0, 100.0, Length::ZERO);
    assert!(matches!(
        gate_flows(&closed),
        Err(NetworkFault::Passage { .. })
    ));
    let high = Cavity {
        volume: Volume::from_cm3(1.0),
        bottom: Length::ZERO,
        height: mm(100.0),
    };
    let fault = fill_order(&one_gate(1.0, 0.0, 100.0, Length::ZERO), &[high]);
    assert_eq!(fault, Err(FillFault::TooHigh { number: 1 }));
    assert_eq!(balanced_gates(&plain(), &[1.0]), Err(BalanceFault::Shares));
}

proptest! {
    #[test]
    fn metal_is_neither_made_nor_lost_and_more_head_gives_more(
        gates in proptest::collection::vec(5.0f64..500.0, 1..7),
        other in proptest::collection::vec(5.0f64..500.0, 0..7),
        runner in 20.0f64..2000.0,
        sprue in 20.0f64..1000.0,
        level in 20.0f64..600.0,
        height in -100.0f64..19.0,
        turn in 0.0f64..1.5,
        roughness in 0.0f64..1.0,
    ) {
        let network = |level_mm: f64| Network {
            level: mm(level_mm),
            sprue: Passage::square(mm2(sprue), mm(100.0), WELL_LOSS),
            sides: vec![
                side(&gates, runner, 0, mm(height)),
                side(&other, runner, gates.len(), Length::ZERO),
            ],
            friction: Friction::ByReynolds { viscosity_m2_per_s: 5e-7, roughness: mm(roughness) },
            turn,
        };
        let flows = gate_flows(&network(level)).unwrap();
        let all: f64 = flows.gates.iter().map(|gate| gate.flow.as_litre_per_s()).sum();
        prop_assert!((all / flows.sprue.as_litre_per_s() - 1.0).abs() < 1e-9);
        prop_assert!(flows.gates.iter().all(|gate| gate.flow.as_m3_per_s() >= 0.0));
        prop_assert!(flows.sprue.as_m3_per_s() > 0.0);
        let fall = 2.0 * 9.806_65 * (level - height.min(0.0)) / 1000.0;
        for gate in &flows.gates {
            prop_assert!(gate.speed.as_m_per_s() <= fall.sqrt() * (1.0 + 1e-9));
        }
        let more = gate_flows(&network(level * 1.2)).unwrap();
        prop_assert!(more.sprue > flows.sprue);
    }

    #[test]
    fn balanced_gates_share_within_a_twentieth(
        gates in proptest::collection::vec(20.0f64..200.0, 2..6),
        runner in 100.0f64..2000.0,
        level in 40.0f64..400.0,
    ) {
        let sides = vec![side(&gates, runner, 0, Length::ZERO)];
        let network = Network { level: mm(level), sides, ..plain() };
        let areas = balanced_gates(&network, &vec![1.0; gates.len()]).unwrap();
        let even = 1.0 / gates.len() as f64;
        for share in shares(&network.with_gates(&areas)) {
            prop_assert!((share / even - 1.0).abs() < 0.05, "{share} {even}");
        }
    }

    #[test]
    fn every_mould_comes_to_an_end(
        volumes in proptest::collection::vec(1.0f64..5000.0, 1..6),
        bottom in -200.0f64..10.0,
        height in 1.0f64..100.0,
        gate in -50.0f64..20.0,
    ) {
        let gates = vec![60.0; volumes.len()];
        let network = Network { sides: vec![side(&gates, 200.0, 0, mm(gate))], ..plain() };
        let cavities: Vec<Cavity> = volumes.iter().map(|cm3| Cavity {
            volume: Volume::from_cm3(*cm3),
            bottom: mm(bottom),
            height: mm(height),
        }).collect();
        let order = fill_order(&network, &cavities).unwrap();
        prop_assert!(order.full_at.iter().all(|at| at.as_s() > 0.0));
        let all = Volume::from_cm3(volumes.iter().sum());
        let least = (all / gate_flows(&network).unwrap().sprue).as_s();
        let last = order.full_at[order.last].as_s();
        prop_assert!(last >= least * 0.999, "{last} {least}");
    }
}
