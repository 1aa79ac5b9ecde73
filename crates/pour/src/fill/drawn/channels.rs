//! The channels of a running system: sections by the sizes, ways as measured in the cells.

use std::f64::consts::PI;

use measure::length::Length;
use mould::gating::friction::Friction;
use mould::gating::network::{GATE_LOSS, SQUARE_TURN, WELL_LOSS};
use rigging::given::Sizes;

use super::{Found, Ways};
use crate::fill::network::{Branch, Network, Node, Section, Turn};

/// Sections down the sprue: its taper is straight, and between two of them it narrows evenly.
const SECTIONS: u32 = 8;

/// The channels, gates in the order of their outlets.
pub(super) fn network(
    gates: &[Found],
    ways: &Ways,
    sizes: &Sizes,
    [foot_mm, top_mm]: [f64; 2],
    friction: Friction,
) -> Network {
    let mut sides: Vec<(Option<usize>, bool)> = gates
        .iter()
        .map(|gate| (gate.runner.map(|(runner, _)| runner), gate.far))
        .collect();
    sides.sort_unstable();
    sides.dedup();
    let drawn = Channels {
        runner_m2: sizes.runners.as_m2() / sides.len() as f64,
        gate_m2: sizes.gates.as_m2() / gates.len() as f64,
        height_m: ways.height_mm * 1e-3,
    };
    let mut network = Network {
        level_m: sizes.pour_height.as_m(),
        sinking_m2: None,
        junctions_m: vec![drawn.height_m],
        outlets_m: gates.iter().map(|gate| gate.enters_mm[2] * 1e-3).collect(),
        branches: vec![sprue(sizes, [foot_mm, top_mm])],
        friction,
    };
    for side in sides {
        let here = |gate: &&usize| {
            let gate = &gates[**gate];
            (gate.runner.map(|(runner, _)| runner), gate.far) == side
        };
        let numbers: Vec<usize> = (0..gates.len()).collect();
        let mut on_side: Vec<usize> = numbers.iter().filter(here).copied().collect();
        on_side.sort_by(|a, b| gates[*a].along_mm.total_cmp(&gates[*b].along_mm));
        let fed = side.0.and_then(|runner| ways.fed_at(runner));
        let mut from_mm = -fed.map_or(0.0, |fed| fed.away_mm);
        let mut at = 0;
        for gate in on_side {
            let way_mm = (gates[gate].along_mm - from_mm).max(0.0);
            at = drawn.add(&mut network, at, way_mm * 1e-3, &gates[gate], gate);
            from_mm = gates[gate].along_mm;
        }
    }
    network
}

/// Sections of the channels.
struct Channels {
    runner_m2: f64,
    gate_m2: f64,
    height_m: f64,
}

impl Channels {
    /// Adds a stretch of runner from a junction, with a gate at its end; the new junction.
    fn add(
        &self,
        network: &mut Network,
        from: usize,
        way_m: f64,
        gate: &Found,
        outlet: usize,
    ) -> usize {
        let junction = network.junctions_m.len();
        network.junctions_m.push(self.height_m);
        let runner = network.branches.len();
        network.branches.push(Branch {
            from: Node::Junction(from),
            to: Node::Junction(junction),
            area_m2: self.runner_m2,
            length_m: way_m,
            hydraulic_m: self.runner_m2.sqrt(),
            loss: 0.0,
            turn: None,
            sections: Vec::new(),
        });
        let thick_m = gate.thick_mm * 1e-3;
        let width_m = self.gate_m2 / thick_m;
        network.branches.push(Branch {
            from: Node::Junction(junction),
            to: Node::Outlet(outlet),
            area_m2: self.gate_m2,
            length_m: gate.holds_mm3 * 1e-9 / self.gate_m2,
            hydraulic_m: 2.0 * self.gate_m2 / (thick_m + width_m),
            loss: GATE_LOSS,
            turn: Some(Turn {
                from: runner,
                share: SQUARE_TURN,
            }),
            sections: Vec::new(),
        });
        junction
    }
}

fn sprue(sizes: &Sizes, [foot_mm, top_mm]: [f64; 2]) -> Branch {
    let area_m2 = |diameter: Length| PI / 4.0 * diameter.as_m().powi(2);
    let section = |step: u32| {
        let down = f64::from(step) / f64::from(SECTIONS - 1);
        Section {
            height_m: (top_mm + (foot_mm - top_mm) * down) * 1e-3,
            area_m2: area_m2(sizes.sprue_top + (sizes.sprue_foot - sizes.sprue_top) * down),
        }
    };
    Branch {
        from: Node::Basin,
        to: Node::Junction(0),
        area_m2: area_m2(sizes.sprue_foot),
        length_m: (top_mm - foot_mm) * 1e-3,
        hydraulic_m: sizes.sprue_foot.as_m(),
        loss: WELL_LOSS,
        turn: None,
        sections: (0..SECTIONS).map(section).collect(),
    }
}
