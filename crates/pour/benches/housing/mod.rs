//! A housing with a lid, ribs, round bosses and a leaning wall, half a million cells of metal.

use measure::length::{Area, Length};
use mould::gating::friction::TRIED;
use mould::gating::network as running;
use pour::cells::{MouldCells, Stuff};
use pour::fill::Gating;
use pour::fill::air::WaysOut;
use pour::fill::cooling::{Metal, Sand};
use pour::fill::network::Network;
use solver::material::{Freezes, Material, Phase};

/// Cells along x, y, z, sand around the housing with them.
const COUNT: [usize; 3] = [196, 154, 103];

/// Edge of a cell, mm.
const CELL_MM: f64 = 1.76;

/// The measure in which the housing is drawn, mm.
const UNIT_MM: f64 = 1.5;

/// The housing in its sand.
pub fn housing() -> MouldCells {
    let all = COUNT.iter().product();
    let mut cells = MouldCells {
        size_mm: CELL_MM,
        count: COUNT,
        origin_mm: [0.0; 3],
        stuff: vec![Stuff::Sand; all],
        metal: vec![0.0; all],
    };
    for place in 0..all {
        let at = cells.middle_mm(place).map(|mm| mm / UNIT_MM);
        let share = (0.5 - outside(at) * UNIT_MM / CELL_MM).clamp(0.0, 1.0);
        if share > 0.0 {
            cells.stuff[place] = Stuff::Metal;
            cells.metal[place] = share as f32;
        }
    }
    cells
}

/// Two gates into the flange of each long side.
pub fn gating() -> Gating {
    let stretch = |cavity| running::Stretch {
        runner: running::Passage::square(Area::from_mm2(400.0), Length::from_mm(80.0), 0.0),
        gate: running::Gate {
            passage: running::Passage::square(Area::from_mm2(150.0), Length::from_mm(20.0), 0.7),
            height: Length::ZERO,
            cavity,
        },
    };
    let system = running::Network {
        level: Length::from_mm(220.0),
        sprue: running::Passage::square(Area::from_mm2(300.0), Length::from_mm(150.0), 1.0),
        sides: vec![vec![stretch(0), stretch(0)], vec![stretch(0), stretch(0)]],
        friction: TRIED,
        turn: 1.0,
    };
    let at = |x: f64, y: f64| [x * UNIT_MM, y * UNIT_MM, 27.0 * UNIT_MM];
    Gating {
        network: Network::of_running_system(&system),
        gates_mm: vec![
            at(70.0, 9.0),
            at(160.0, 9.0),
            at(70.0, 171.0),
            at(160.0, 171.0),
        ],
        running: Vec::new(),
        from_rest: false,
        air: WaysOut::default(),
    }
}

/// An aluminium casting alloy, roughly.
pub fn metal() -> Metal {
    let phase = |w_mk| Phase { j_m3k: 2.7e6, w_mk };
    let freezes = Freezes {
        solid: phase(150.0),
        liquid: phase(90.0),
        latent_j_m3: 9.7e8,
        solidus_c: 555.0,
        liquidus_c: 615.0,
    };
    Metal {
        kind: "aluminium".to_owned(),
        table: Material::freezing("aluminium", freezes),
        kg_m3: 2400.0,
        poured_c: 720.0,
        stops_at_solid: 0.3,
    }
}

/// Green sand, roughly.
pub fn sand() -> Sand {
    Sand {
        celsius: 20.0,
        draws_w_rts_m2_k: 1080.0,
        film_w_m2_k: 1000.0,
    }
}

/// How far a place lies outside of the metal, in units.
fn outside([x, y, z]: [f64; 3]) -> f64 {
    let (x, y) = (x - 115.0, y - 90.0);
    let block = |half: [f64; 3], at: [f64; 3]| {
        let of = [x - at[0], y - at[1], z - at[2]];
        let off = [0, 1, 2].map(|axis| of[axis].abs() - half[axis]);
        off.into_iter().fold(f64::NEG_INFINITY, f64::max)
    };
    let lean = 0.12 * (z - 10.0);
    let body = block([90.0 - lean, 66.0 - lean, 48.0], [0.0, 0.0, 60.0]);
    let room = block([84.0 - lean, 60.0 - lean, 47.0], [0.0, 0.0, 54.0]);
    let flange = block([106.0, 82.0, 4.0], [0.0, 0.0, 27.0]).max(-room);
    let ribs = [-36.0, 0.0, 36.0].map(|at| block([3.0, 54.0, 42.0], [at, 0.0, 60.0]));
    let rib = ribs.into_iter().fold(f64::INFINITY, f64::min);
    let bosses = [[-94.0, -70.0], [94.0, -70.0], [-94.0, 70.0], [94.0, 70.0]];
    let boss = bosses.map(|[u, v]| {
        let round = (x - u).hypot(y - v);
        (round - 11.0).max((z - 35.0).abs() - 16.0).max(4.0 - round)
    });
    let boss = boss.into_iter().fold(f64::INFINITY, f64::min);
    let port = y.hypot(z - 64.0);
    let spigot = (port - 28.0).max((x - 92.0).abs() - 18.0);
    let metal = body.max(-room).min(rib).min(flange).min(boss).min(spigot);
    let bore = (port - 17.0).max(60.0 - x);
    metal.max(-bore)
}
