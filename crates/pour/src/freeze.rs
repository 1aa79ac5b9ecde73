//! How the poured mould freezes: when at each place, with the error that grid, contact and sand
//! leave in it.
//!
//! The same mould is run on the wanted cells and on cells twice as wide; what lies between both is
//! told as the error of the grid. On the wide cells it is run once more with the worst and the best
//! contact and with the slowest and the quickest sand: what they change there is taken to change by
//! the same factor on the narrow ones. The three errors are added as those that know nothing of
//! each other, by their squares.

use measure::band::Band;
use rigging::mould::Mould;
use rigging::piece::Piece;
use solver::kept::Kept;
use solver::run::Standing;

use crate::case::Filling;
use crate::frozen::{Errors, PieceFrozen, latest, pieces};
use crate::levers::{Levers, Turn, TurnedTo, lacks};
use crate::meshing::{Meshed, Meshing, MeshingError, cut, size_mm};
use crate::no_freeze::FreezeError;
use crate::solved::{Poured, Solved, carried_to, filling, metal_cells, solved_from};

/// The freezing of a mould.
#[derive(Clone, Debug)]
pub struct Freeze {
    /// On the narrow cells.
    pub solved: Solved,
    /// Each piece of metal with when the last of it was solid, s.
    pub pieces: Vec<PieceFrozen>,
    /// When all was solid, s, over all errors.
    pub last_s: Band<f64>,
    /// Where the last metal froze, mm.
    pub last_mm: [f64; 3],
    /// How far the time of the whole on wide cells lies from that on narrow ones, as a share.
    pub by_grid: f64,
    /// What the contact makes of the time of the whole: times it at the best and at the worst.
    pub by_contact: [f64; 2],
    /// What the sand makes of it: times it with the quickest and with the slowest.
    pub by_sand: [f64; 2],
    /// What castings lack, and what would change it.
    pub levers: Levers,
    /// The mould in cells twice as wide, for what takes long.
    pub wide: Meshed,
    /// What was noticed.
    pub facts: Vec<FreezeFact>,
}

/// Something about a freezing that should be known.
#[derive(Clone, Debug, PartialEq)]
pub enum FreezeFact {
    /// Fewer than three cells across the thinnest wall: its times are a guess.
    FewCells {
        /// Cells across it.
        across: f64,
        /// The wall, mm.
        wall_mm: f64,
        /// Edge of a cell, mm.
        size_mm: f64,
    },
    /// The cells hold more or less metal than the solids by more than half a per cent.
    MassOff {
        /// How much, as a share; below nought where it is missing.
        off: f64,
    },
    /// The solver lost or made more heat than it may.
    HeatOff {
        /// How much, as a share.
        drift: f64,
    },
    /// The heat was to be followed elsewhere than on the processor, and was not, or not to the end.
    FellBack {
        /// Where.
        on: String,
        /// Why.
        why: String,
    },
    /// A piece of the rigging is missing in the cells, thinner than one of them.
    PieceMissing {
        /// Which.
        piece: Piece,
    },
}

/// What is told while it runs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Told {
    /// Which of the runs, from one.
    pub run: usize,
    /// How many there are.
    pub runs: usize,
    /// Metal that is solid, as a share of the cells of metal.
    pub solid: f64,
    /// Time reached since the mould was full, s.
    pub time_s: f64,
    /// Cells of the box.
    pub cells: usize,
    /// Memory of the run where it is followed, bytes, roughly.
    pub bytes: f64,
}

/// Runs of a whole freezing: narrow, wide, contact, sand and pour at both ends.
const RUNS: usize = 8;

/// How much wider the wide cells are.
const WIDER: f64 = 2.0;

/// Most that the metal in the cells may differ from that of the solids.
pub const MOST_MASS_OFF: f64 = 0.005;

/// Most heat that may be lost, as a share: what single precision leaves on boxes of this size.
const MOST_DRIFT: f64 = 5e-5;

/// A mould in narrow cells and in cells twice as wide.
pub fn grids(mould: &Mould, meshing: &Meshing) -> Result<[Meshed; 2], MeshingError> {
    let narrow_mm = size_mm(mould, meshing)?;
    let wide = cut(mould, meshing, WIDER * narrow_mm)?;
    Ok([cut(mould, meshing, narrow_mm)?, wide])
}

/// Follows the freezing of a mould in two [`grids`], with its errors. `go_on` is told of every step
/// and stops it by answering false.
pub fn freeze(
    grids: [Meshed; 2],
    meshing: &Meshing,
    poured: &Poured<'_>,
    go_on: &mut dyn FnMut(&Told) -> bool,
) -> Result<Freeze, FreezeError> {
    freeze_from(grids, meshing, poured, &[], &mut |told, _| go_on(told))
}

/// Follows it from what was kept of the runs of an earlier following, where some of that is of this
/// very mould. `go_on` is told of every step, may keep the run as it stands then, and stops it by
/// answering false.
pub fn freeze_from(
    [narrow, wide]: [Meshed; 2],
    meshing: &Meshing,
    poured: &Poured<'_>,
    kept: &[Kept],
    go_on: &mut dyn FnMut(&Told, &Standing<'_>) -> bool,
) -> Result<Freeze, FreezeError> {
    let mut number = 0;
    let mut run = |meshed: Meshed, poured: &Poured<'_>, filling: &Filling| {
        number += 1;
        let run = number;
        let metal = metal_cells(&meshed).count().max(1) as f64;
        solved_from(meshed, poured, filling, kept, &mut |progress, standing| {
            let told = Told {
                run,
                runs: RUNS,
                solid: 1.0 - progress.unfrozen as f64 / metal,
                time_s: progress.time_s,
                cells: progress.cells,
                bytes: progress.bytes,
            };
            go_on(&told, standing)
        })
    };
    let likely = filling(poured, poured.contact_w_m2k.likely(), 1.0);
    let on_narrow = run(narrow, poured, &likely)?;
    let carried = carried_to(&wide, poured, &on_narrow.meshed);
    let mut coarse = |poured: &Poured<'_>, contact: f64, times: f64| {
        run(wide.clone(), poured, &filling(poured, contact, times))
    };
    let contact = poured.contact_w_m2k;
    let on_wide = coarse(&carried, contact.likely(), 1.0)?;
    let [slow, quick] = poured.sand_times;
    let ends = [
        coarse(&carried, contact.high(), 1.0)?,
        coarse(&carried, contact.low(), 1.0)?,
        coarse(&carried, contact.likely(), quick)?,
        coarse(&carried, contact.likely(), slow)?,
    ];
    let [colder, hotter] = poured
        .start_off_k
        .map(|by_k| poured_otherwise(&carried, &wide, by_k));
    let pours = [
        coarse(&colder, contact.likely(), 1.0)?,
        coarse(&hotter, contact.likely(), 1.0)?,
    ];
    let times = |end: &Solved| end.last_s / on_wide.last_s;
    let by_contact = [times(&ends[0]), times(&ends[1])];
    let by_sand = [times(&ends[2]), times(&ends[3])];
    let by_grid = on_wide.last_s / on_narrow.last_s - 1.0;
    let errors = Errors {
        by_grid: by_grid.abs(),
        by_contact,
        by_sand,
    };
    let pieces = pieces(&on_narrow, &on_wide, &errors);
    let (last, last_mm) = latest(&on_narrow, metal_cells(&on_narrow.meshed));
    Ok(Freeze {
        last_s: errors.around(last),
        last_mm,
        facts: facts(&on_narrow, meshing, &pieces)
            .into_iter()
            .chain(fell_back(&[&on_narrow, &on_wide]))
            .collect(),
        pieces,
        by_grid,
        by_contact,
        by_sand,
        levers: levers(&carried, &on_wide, [&pours[0], &pours[1]], &ends),
        wide,
        solved: on_narrow,
    })
}

/// The same poured so much hotter or colder.
fn poured_otherwise<'a>(poured: &Poured<'a>, wide: &Meshed, by_k: f64) -> Poured<'a> {
    let liquidus_c = poured.alloy.liquidus.band.likely().as_celsius();
    Poured {
        start: poured.start.shifted(&wide.cells, by_k, liquidus_c),
        ..poured.clone()
    }
}

/// What castings lack with everything as is likely, and with one thing turned to either end; `ends`
/// are the better and the worse contact, the quicker and the slower sand.
fn levers(poured: &Poured<'_>, likely: &Solved, pours: [&Solved; 2], ends: &[Solved; 4]) -> Levers {
    let liquidus_c = poured.alloy.liquidus.band.likely().as_celsius();
    let superheat_k = poured.start.mean_c(&likely.meshed) - liquidus_c;
    let of = |solved: &Solved, by_k: f64| lacks(solved, poured.alloy, superheat_k + by_k);
    let turned = |turn: Turn, [low, high]: [&Solved; 2], by_k: [f64; 2]| {
        [(low, by_k[0], false), (high, by_k[1], true)].map(|(solved, by_k, is_high)| TurnedTo {
            turn,
            is_high,
            lacks: of(solved, by_k),
        })
    };
    let [better, worse, quicker, slower] = ends;
    let turned = [
        turned(Turn::Pour, pours, poured.start_off_k),
        turned(Turn::Sand, [slower, quicker], [0.0; 2]),
        turned(Turn::Contact, [worse, better], [0.0; 2]),
    ];
    Levers {
        likely: of(likely, 0.0),
        turned: turned.into_iter().flatten().collect(),
    }
}

/// The first of some runs that was not followed to its end where it was to be.
fn fell_back(runs: &[&Solved]) -> Option<FreezeFact> {
    let mut ran = runs.iter().filter_map(|solved| solved.ran.as_ref());
    ran.find_map(|ran| {
        let (unable, _) = ran.fell_back.as_ref()?;
        Some(FreezeFact::FellBack {
            on: ran.on.clone(),
            why: unable.to_string(),
        })
    })
}

fn facts(solved: &Solved, meshing: &Meshing, pieces: &[PieceFrozen]) -> Vec<FreezeFact> {
    let meshed = &solved.meshed;
    let mut facts = Vec::new();
    if meshed.across_wall < crate::meshing::FEWEST_ACROSS {
        facts.push(FreezeFact::FewCells {
            across: meshed.across_wall,
            wall_mm: meshing.wall_mm,
            size_mm: meshed.cells.size_mm,
        });
    }
    let off = meshed.held_mm3 / meshed.solid_mm3 - 1.0;
    if off.abs() > MOST_MASS_OFF {
        facts.push(FreezeFact::MassOff { off });
    }
    let drift = solved.balance.drift;
    if drift > MOST_DRIFT {
        facts.push(FreezeFact::HeatOff { drift });
    }
    let is_there = |piece: &&Piece| pieces.iter().all(|frozen| frozen.piece != **piece);
    let missing = meshed.pieces.iter().filter(is_there);
    facts.extend(missing.map(|piece| FreezeFact::PieceMissing {
        piece: piece.clone(),
    }));
    facts
}
