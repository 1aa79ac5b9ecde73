//! Boxes of cells, plain gates, a metal and a sand for the tests of filling.

#![allow(dead_code, reason = "each test takes what it needs")]

use mould::gating::friction::Friction;
use pour::cells::{MouldCells, Stuff};
use pour::fill::Gating;
use pour::fill::air::WaysOut;
use pour::fill::cooling::{Metal, Sand};
use pour::fill::network::{Branch, Network, Node};
use solver::material::{Freezes, Material, Phase};

/// Edge of a cell, mm.
pub const CELL_MM: f64 = 10.0;

/// A box of cells with metal where it says so; a cell of sand around.
pub fn hollow(count: [usize; 3], is_hollow: impl Fn([usize; 3]) -> bool) -> MouldCells {
    const RIM: usize = 1;
    let outer = count.map(|n| n + 2 * RIM);
    let mut cells = MouldCells {
        size_mm: CELL_MM,
        count: outer,
        origin_mm: [-CELL_MM * RIM as f64; 3],
        stuff: vec![Stuff::Sand; outer.iter().product()],
        metal: vec![0.0; outer.iter().product()],
    };
    for place in 0..cells.stuff.len() {
        let at = cells.cell(place);
        let within = (0..3).all(|axis| (RIM..count[axis] + RIM).contains(&at[axis]));
        if within && is_hollow(at.map(|i| i - RIM)) {
            cells.stuff[place] = Stuff::Metal;
            cells.metal[place] = 1.0;
        }
    }
    cells
}

/// Gates without losses straight from the basin.
pub fn gates(level_m: f64, gates: &[([f64; 3], f64)]) -> Gating {
    let branch = |(outlet, (_, area_m2)): (usize, &([f64; 3], f64))| Branch {
        from: Node::Basin,
        to: Node::Outlet(outlet),
        area_m2: *area_m2,
        length_m: 0.0,
        hydraulic_m: area_m2.sqrt(),
        loss: 0.0,
        turn: None,
        sections: Vec::new(),
    };
    Gating {
        network: Network {
            level_m,
            sinking_m2: None,
            junctions_m: Vec::new(),
            outlets_m: vec![0.0; gates.len()],
            branches: gates.iter().enumerate().map(branch).collect(),
            friction: Friction::Stated(0.0),
        },
        gates_mm: gates.iter().map(|(place, _)| *place).collect(),
        running: Vec::new(),
        from_rest: false,
        air: WaysOut::default(),
    }
}

/// Holds a figure to another within a share of it.
pub fn near(found: f64, wanted: f64, share: f64) {
    let off = (found - wanted).abs() / wanted.abs();
    assert!(off <= share, "{found} for {wanted}: off by {off:e}");
}

/// A metal that freezes at 600 °C all at once, with this much superheat.
pub fn arresting(superheat_k: f64) -> Metal {
    let phase = Phase {
        j_m3k: 2.7e6,
        w_mk: 100.0,
    };
    let freezes = Freezes {
        solid: phase,
        liquid: phase,
        latent_j_m3: 9.7e8,
        solidus_c: 600.0,
        liquidus_c: 600.0,
    };
    Metal {
        kind: "aluminium".to_owned(),
        table: Material::freezing("a metal with an arrest", freezes),
        kg_m3: 2400.0,
        poured_c: 600.0 + superheat_k,
        stops_at_solid: 0.3,
    }
}

/// The same with 100 K of superheat.
pub fn metal() -> Metal {
    arresting(100.0)
}

/// Sand at 20 °C that hardly resists at its face.
pub fn sand() -> Sand {
    Sand {
        celsius: 20.0,
        draws_w_rts_m2_k: 1000.0,
        film_w_m2_k: 1e9,
    }
}
