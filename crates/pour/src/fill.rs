//! Filling at a glance: what the metal does while it runs in, found in a blink.
//!
//! The running system is a network of channels; the metal rises through the hollow from its lowest
//! places, level in every pool. Where metal moves fast beside its depth this is not so, and it is
//! told.
//!
//! ```
//! use mould::gating::friction::Friction;
//! use pour::cells::{MouldCells, Stuff};
//! use pour::fill::air::WaysOut;
//! use pour::fill::cooling::{Metal, Sand};
//! use pour::fill::network::{Branch, Network, Node};
//! use pour::fill::{Gating, glance};
//! use solver::material::{Freezes, Material, Phase};
//!
//! // A block of 100 × 100 × 200 mm in sand, filled through its floor under a head of 300 mm.
//! let count = [12, 12, 22];
//! let mut cells = MouldCells {
//!     size_mm: 10.0,
//!     count,
//!     origin_mm: [-10.0; 3],
//!     stuff: vec![Stuff::Sand; 12 * 12 * 22],
//!     metal: vec![0.0; 12 * 12 * 22],
//! };
//! for place in 0..cells.stuff.len() {
//!     let at = cells.cell(place);
//!     if (0..3).all(|axis| at[axis] > 0 && at[axis] + 1 < count[axis]) {
//!         cells.stuff[place] = Stuff::Metal;
//!         cells.metal[place] = 1.0;
//!     }
//! }
//! let gate = Branch {
//!     from: Node::Basin,
//!     to: Node::Outlet(0),
//!     area_m2: 1e-4,
//!     length_m: 0.0,
//!     hydraulic_m: 0.01,
//!     loss: 0.0,
//!     turn: None,
//!     sections: Vec::new(),
//! };
//! let gating = Gating {
//!     network: Network {
//!         level_m: 0.30,
//!         sinking_m2: None,
//!         junctions_m: Vec::new(),
//!         outlets_m: vec![0.0],
//!         branches: vec![gate],
//!         friction: Friction::Stated(0.0),
//!     },
//!     gates_mm: vec![[50.0, 50.0, 0.0]],
//!     running: Vec::new(),
//!     from_rest: false,
//!     air: WaysOut { through_sand: true, ..WaysOut::default() },
//! };
//! let [solid, liquid] = [150.0, 90.0].map(|w_mk| Phase { j_m3k: 2.7e6, w_mk });
//! let freezes =
//!     Freezes { solid, liquid, latent_j_m3: 9.7e8, solidus_c: 555.0, liquidus_c: 615.0 };
//! let metal = Metal {
//!     kind: "aluminium".to_owned(),
//!     table: Material::freezing("aluminium", freezes),
//!     kg_m3: 2400.0,
//!     poured_c: 720.0,
//!     stops_at_solid: 0.3,
//! };
//! let sand = Sand { celsius: 20.0, draws_w_rts_m2_k: 1080.0, film_w_m2_k: 1000.0 };
//! let seen = glance(&cells, &gating, &metal, &sand)?;
//! // By Torricelli: (A / a) √(2 / g) (√H − √(H − h)).
//! assert!((seen.ends_s - 10.4543).abs() < 1e-3);
//! # Ok::<(), pour::fill::FillError>(())
//! ```

pub mod air;
pub mod cooling;
pub mod drawn;
pub mod error;
pub mod fact;
mod falling;
pub mod gates;
mod heat;
mod hollow;
pub mod levels;
mod meetings;
mod misruns;
pub mod network;
mod pools;
mod priming;
mod thickness;
mod told;

use mould::gating::gate_speed::METALS;

use self::air::WaysOut;
use self::cooling::{Cooling, Metal, Sand};
pub use self::error::FillError;
use self::fact::Fact;
use self::falling::Spread;
use self::gates::GateSpeed;
use self::heat::{Following, channels};
use self::hollow::{Hollow, NONE};
use self::levels::{Entry, Ground, Reading, rise};
use self::network::Network;
use self::pools::Pools;
use self::thickness::thickness_mm;
use self::told::{Seen, told};
use crate::cells::MouldCells;

/// The running system of a mould, and where it enters the hollow.
#[derive(Clone, Debug)]
pub struct Gating {
    /// The channels; heights in metres above height nought of the mould. The heights of its outlets
    /// are taken from the gates.
    pub network: Network,
    /// Where each gate enters the hollow, mm in the mould's coordinates, in the order of the
    /// outlets of the network.
    pub gates_mm: Vec<[f64; 3]>,
    /// Which cells belong to the running system, for every cell of the box; empty where none do.
    /// They fill from the sprue and take no part in the rising of the metal.
    pub running: Vec<bool>,
    /// Whether the metal starts from rest, as behind a stopper that is lifted.
    pub from_rest: bool,
    /// Ways out for air.
    pub air: WaysOut,
}

/// What was seen at a glance. Times count from the first metal in the running system, or from the
/// first metal in the gates where no cells are marked as running system.
#[derive(Clone, Debug)]
pub struct Glance {
    /// When metal comes to the middle of each cell of the box, s; without end where it never comes.
    pub arrival_s: Vec<f32>,
    /// Temperature with which it comes, °C; that of the sand where none comes. The start of the
    /// freezing.
    pub arrival_c: Vec<f32>,
    /// Solid share with which it comes; nought where none comes.
    pub arrival_solid: Vec<f32>,
    /// Flows and levels over time, from the moment the gates begin to run.
    pub readings: Vec<Reading>,
    /// The speed of each gate, in their order.
    pub gates: Vec<GateSpeed>,
    /// What was noticed: what stays empty, what runs part full, air shut in, meetings of fronts,
    /// misruns, the thinnest wall that runs; the worst of each first.
    pub facts: Vec<Fact>,
    /// When the gates begin to run, s.
    pub starts_s: f64,
    /// When nothing runs any more, s.
    pub ends_s: f64,
    /// Metal that has left the basin since the gates began to run, m³.
    pub poured_m3: f64,
    /// Metal that lies in the hollow, m³.
    pub lies_m3: f64,
    /// What the hollow takes, m³.
    pub hollow_m3: f64,
}

/// How far the middle of a gate may lie off the middle of the nearest cell of the hollow, in
/// cells: a gate bites less than that into a casting, and one placed on its skin lies half a cell
/// outside. Larger, and a gate that ends in sand finds a casting beyond it.
const GATE_REACH: f64 = 2.5;

/// What the metal does.
///
/// # Errors
///
/// A running system that cannot be reckoned, a box that does not hold together, gates that do not
/// end in a hollow, or metal that is not liquid.
pub fn glance(
    cells: &MouldCells,
    gating: &Gating,
    metal: &Metal,
    sand: &Sand,
) -> Result<Glance, FillError> {
    check(cells, gating)?;
    check_heat(metal, sand)?;
    let hollow = Hollow::of(cells, &gating.running);
    if hollow.cells.is_empty() {
        return Err(FillError::NoHollow);
    }
    let pools = Pools::of(&hollow);
    let mut network = gating.network.clone();
    network.outlets_m = gating
        .gates_mm
        .iter()
        .map(|place| place[2] * 1e-3)
        .collect();
    network.check()?;
    let mut spread = Spread::of(&hollow);
    let entries = entries(cells, gating, &hollow, &pools, &mut spread)?;
    let ground = Ground {
        hollow: &hollow,
        pools: &pools,
        floor_m: cells.origin_mm[2] * 1e-3,
        layer_m: cells.size_mm * 1e-3,
        network: &network,
        entries: &entries,
        from_rest: gating.from_rest,
    };
    let levels = rise(&ground, &mut spread)?;
    let (channels, flows) = channels(&ground)?;
    let thick_mm = thickness_mm(cells);
    let following = Following {
        ground: &ground,
        levels: &levels,
        cooling: Cooling::of(metal, sand),
        channels: &channels,
        thick_mm: &thick_mm,
    };
    let arrived = following.arrived();
    Ok(told(&Seen {
        cells,
        gating,
        metal,
        sand,
        following: &following,
        arrived: &arrived,
        flows: &flows,
    }))
}

fn entries(
    cells: &MouldCells,
    gating: &Gating,
    hollow: &Hollow,
    pools: &Pools,
    spread: &mut Spread,
) -> Result<Vec<Entry>, FillError> {
    let mut entries = Vec::with_capacity(gating.gates_mm.len());
    for (place_mm, number) in gating.gates_mm.iter().zip(1..) {
        let cell = nearest(cells, hollow, *place_mm).map_err(|away_mm| FillError::GateInSand {
            number,
            place_mm: *place_mm,
            away_mm,
        })?;
        let fall = spread.fall(hollow, pools, cell);
        entries.push(Entry { cell, fall });
    }
    Ok(entries)
}

fn check_heat(metal: &Metal, sand: &Sand) -> Result<(), FillError> {
    if !METALS.contains(&metal.kind.as_str()) {
        return Err(FillError::Kind {
            kind: metal.kind.clone(),
        });
    }
    let above = [sand.draws_w_rts_m2_k, sand.film_w_m2_k, metal.kg_m3];
    let sound = metal.table.check().is_ok()
        && sand.celsius.is_finite()
        && metal.poured_c.is_finite()
        && above.iter().all(|x| x.is_finite() && *x > 0.0)
        && (0.0..1.0).contains(&metal.stops_at_solid);
    let liquid = metal.table.heat_at_solid(0.0).filter(|_| sound);
    let liquidus_c = liquid.ok_or(FillError::Figures)?;
    let liquidus_c = metal.table.at(liquidus_c).celsius;
    match metal.poured_c > liquidus_c {
        true => Ok(()),
        false => Err(FillError::Cold {
            poured_c: metal.poured_c,
            liquidus_c,
        }),
    }
}

fn check(cells: &MouldCells, gating: &Gating) -> Result<(), FillError> {
    let size_mm = cells.size_mm;
    if !(size_mm.is_finite() && size_mm > 0.0) {
        return Err(FillError::Size { size_mm });
    }
    let wanted = cells.count.iter().product();
    let marks = gating.running.len();
    let is_whole = cells.stuff.len() == wanted
        && cells.metal.len() == wanted
        && (marks == 0 || marks == wanted)
        && wanted < NONE as usize;
    if !is_whole {
        return Err(FillError::Box {
            cells: wanted,
            stuff: cells.stuff.len(),
            metal: cells.metal.len(),
            running: marks,
        });
    }
    let outlets = gating.network.outlets_m.len();
    let gates = gating.gates_mm.len();
    match outlets == gates {
        true => Ok(()),
        false => Err(FillError::Gates { outlets, gates }),
    }
}

/// The hollow cell nearest to a place, or how far off it is, mm.
fn nearest(cells: &MouldCells, hollow: &Hollow, place_mm: [f64; 3]) -> Result<u32, f64> {
    let away = |place: usize| {
        let middle = cells.middle_mm(place);
        let squared = |axis: usize| (middle[axis] - place_mm[axis]).powi(2);
        squared(0) + squared(1) + squared(2)
    };
    let near = |axis: usize| {
        let at = (place_mm[axis] - cells.origin_mm[axis]) / cells.size_mm - 0.5;
        let last = cells.count[axis] as f64;
        let [from, to] = [at - GATE_REACH, at + GATE_REACH + 1.0].map(|at| at.clamp(0.0, last));
        from.ceil() as usize..to.floor() as usize
    };
    let mut best = (f64::INFINITY, NONE);
    for k in near(2) {
        for j in near(1) {
            for i in near(0) {
                let cell = hollow.at_cell([i, j, k]);
                if cell != NONE && away(cells.index([i, j, k])) < best.0 {
                    best = (away(cells.index([i, j, k])), cell);
                }
            }
        }
    }
    if best.0.sqrt() <= GATE_REACH * cells.size_mm {
        return Ok(best.1);
    }
    let all = hollow.cells.iter().map(|place| away(*place as usize));
    Err(all.fold(f64::INFINITY, f64::min).sqrt())
}
