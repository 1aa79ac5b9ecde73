//! How the poured mould freezes: when at each place, with the error that grid, contact and sand
//! leave in it.
//!
//! The same mould is run on the wanted cells and on cells twice as wide; what lies between both is
//! told as the error of the grid. On the wide cells it is run once more with the worst and the best
//! contact and with the slowest and the quickest sand: what they change there is taken to change by
//! the same factor on the narrow ones. The three errors are added as those that know nothing of
//! each other, by their squares.

use measure::band::Band;
use measure::heat::Temperature;
use metal::alloy::Alloy;
use rigging::mould::Mould;
use rigging::piece::Piece;
use solver::material::Material;
use solver::run::{Balance, End, Progress, Wish, Work, solve};

use crate::case::{Filling, MouldCase, TO_AIR_W_M2K, mould_case};
use crate::cells::Stuff;
use crate::frozen::{Errors, PieceFrozen, latest, pieces};
use crate::meshing::{Meshed, Meshing, MeshingError, cut, size_mm};
use crate::no_freeze::FreezeError;
use crate::pace::pace;
use crate::start::Start;
use crate::tables::{SandHeat, feeding_stops, metal_table};

/// What is poured into what.
#[derive(Clone, Debug)]
pub struct Poured<'a> {
    /// The alloy.
    pub alloy: &'a Alloy,
    /// How hot metal and sand are when the mould is full, on the cells that it is followed on; on
    /// the narrow ones where two grids are.
    pub start: Start,
    /// The sand.
    pub sand: SandHeat,
    /// The slowest and the quickest that the sand may be, as times of how hard it drinks.
    pub sand_times: [f64; 2],
    /// The sand of cores.
    pub core: SandHeat,
    /// Contact between metal and sand, W/(m² K).
    pub contact_w_m2k: Band<f64>,
    /// Contact between metal and chills, W/(m² K); runs at its ends with that of the sand.
    pub chill_w_m2k: Band<f64>,
    /// Air and sand before the pour.
    pub air: Temperature,
}

/// When the cells froze; one entry for each of the equal cells, not a number where there is no
/// metal.
#[derive(Clone, Debug)]
pub struct Solved {
    /// The mould in cells.
    pub meshed: Meshed,
    /// When the first of a cell was solid, s.
    pub begins_s: Vec<f32>,
    /// When it stopped to pass metal on, s.
    pub passes_s: Vec<f32>,
    /// Solid share at which it does.
    pub passing_share: f64,
    /// When all of it was solid, s.
    pub ends_s: Vec<f32>,
    /// Temperature gradient near the end of freezing, K/m.
    pub gradient_k_m: Vec<f32>,
    /// How fast it cooled then, K/s.
    pub cooling_k_s: Vec<f32>,
    /// When the last of all was solid, s.
    pub last_s: f64,
    /// Where the heat went.
    pub balance: Balance,
    /// What the run took.
    pub work: Work,
}

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
}

/// Runs of a whole freezing: narrow, wide, contact and sand at both ends.
const RUNS: usize = 6;

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
    [narrow, wide]: [Meshed; 2],
    meshing: &Meshing,
    poured: &Poured<'_>,
    go_on: &mut dyn FnMut(&Told) -> bool,
) -> Result<Freeze, FreezeError> {
    let mut number = 0;
    let mut run = |meshed: Meshed, poured: &Poured<'_>, filling: &Filling| {
        number += 1;
        let run = number;
        let metal = metal_cells(&meshed).count().max(1) as f64;
        solved(meshed, poured, filling, &mut |progress| {
            go_on(&Told {
                run,
                runs: RUNS,
                solid: 1.0 - progress.unfrozen as f64 / metal,
                time_s: progress.time_s,
            })
        })
    };
    let likely = filling(poured, poured.contact_w_m2k.likely(), 1.0);
    let on_narrow = run(narrow, poured, &likely)?;
    let carried = carried_to(&wide, poured, &on_narrow.meshed);
    let mut coarse =
        |contact: f64, times: f64| run(wide.clone(), &carried, &filling(poured, contact, times));
    let contact = poured.contact_w_m2k;
    let on_wide = coarse(contact.likely(), 1.0)?;
    let [slow, quick] = poured.sand_times;
    let ends = [
        coarse(contact.high(), 1.0)?,
        coarse(contact.low(), 1.0)?,
        coarse(contact.likely(), quick)?,
        coarse(contact.likely(), slow)?,
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
        facts: facts(&on_narrow, meshing, &pieces),
        pieces,
        by_grid,
        by_contact,
        by_sand,
        wide,
        solved: on_narrow,
    })
}

/// Follows one mould in cells to the end of its freezing.
pub fn solved(
    meshed: Meshed,
    poured: &Poured<'_>,
    filling: &Filling,
    go_on: &mut dyn FnMut(&Progress) -> bool,
) -> Result<Solved, FreezeError> {
    check(&meshed, poured, filling)?;
    let built = case_of(&meshed, poured, filling);
    let pace = pace(&meshed, filling, poured.start.mean_c(&meshed));
    let wish = Wish {
        longest_step_s: Some(pace.step_s),
        passing_share: feeding_stops(poured.alloy.freezing),
        ..Wish::until(End::Solid {
            latest_s: pace.latest_s,
        })
    };
    let outcome = solve(&built.case, &wish, go_on)?;
    if outcome.unfrozen > 0 {
        return Err(FreezeError::NotFrozen {
            after_s: pace.latest_s,
            unfrozen: outcome.unfrozen,
        });
    }
    let spread = |of: &[f32]| spread(&meshed, &built, &outcome.freezing.cells, of);
    let freezing = &outcome.freezing;
    Ok(Solved {
        begins_s: spread(&freezing.begins_s),
        passes_s: spread(&freezing.passes_s),
        passing_share: wish.passing_share,
        ends_s: spread(&freezing.ends_s),
        gradient_k_m: spread(&freezing.gradient_k_m),
        cooling_k_s: spread(&freezing.cooling_k_s),
        last_s: freezing.last_s().unwrap_or(0.0),
        balance: outcome.balance,
        work: outcome.work,
        meshed,
    })
}

/// What is poured, with its start carried from the narrow cells to the wide ones.
pub fn carried_to<'a>(wide: &Meshed, poured: &Poured<'a>, narrow: &Meshed) -> Poured<'a> {
    Poured {
        start: poured.start.carried(narrow, wide, poured.air.as_celsius()),
        ..poured.clone()
    }
}

/// The filling of a mould with this contact and sand that drinks so many times as hard.
pub fn filling(poured: &Poured<'_>, contact_w_m2k: f64, sand_times: f64) -> Filling {
    Filling {
        metal: metal_table(poured.alloy, 1.0),
        sand: poured.sand.drinking_times(sand_times),
        core: poured.core.drinking_times(sand_times),
        contact_w_m2k,
        chill_w_m2k: chill_contact(poured, contact_w_m2k),
        air_c: poured.air.as_celsius(),
        to_air_w_m2k: TO_AIR_W_M2K,
    }
}

/// The contact of chills that goes with a contact of the sand.
fn chill_contact(poured: &Poured<'_>, contact_w_m2k: f64) -> f64 {
    let (sand, chill) = (&poured.contact_w_m2k, &poured.chill_w_m2k);
    match () {
        () if contact_w_m2k > sand.likely() => chill.high(),
        () if contact_w_m2k < sand.likely() => chill.low(),
        () => chill.likely(),
    }
}

/// The case of a mould in cells with its start.
pub fn case_of(meshed: &Meshed, poured: &Poured<'_>, filling: &Filling) -> MouldCase {
    mould_case(meshed, filling, &|cell| {
        poured.start.of_cell(&meshed.cells, cell, filling.air_c)
    })
}

/// The cells of metal.
pub fn metal_cells(meshed: &Meshed) -> impl Iterator<Item = usize> + '_ {
    (0..meshed.cells.stuff.len()).filter(|&cell| meshed.cells.stuff[cell] == Stuff::Metal)
}

fn check(meshed: &Meshed, poured: &Poured<'_>, filling: &Filling) -> Result<(), FreezeError> {
    if let Start::Each(each) = &poured.start {
        let (given, cells) = (each.len(), meshed.cells.stuff.len());
        if given != cells {
            return Err(FreezeError::Starts { given, cells });
        }
    }
    let start_c = poured.start.mean_c(meshed);
    let liquidus_c = liquidus_c(&filling.metal);
    // After a filling some of it may have begun to freeze on the way, which is told of the filling.
    let has_begun = matches!(poured.start, Start::Even(_)) && start_c < liquidus_c;
    if start_c.is_nan() || has_begun {
        return Err(FreezeError::TooCold {
            alloy: poured.alloy.name.clone(),
            start_c,
            liquidus_c,
        });
    }
    let contact_w_m2k = filling.contact_w_m2k;
    for sand in [&filling.sand, &filling.core] {
        let SandHeat { w_mk, j_m3k, .. } = *sand;
        let figures = [w_mk, j_m3k, contact_w_m2k];
        if figures
            .iter()
            .any(|figure| !(figure.is_finite() && *figure > 0.0))
        {
            return Err(FreezeError::Figures {
                w_mk,
                j_m3k,
                contact_w_m2k,
            });
        }
    }
    Ok(())
}

fn liquidus_c(metal: &Material) -> f64 {
    let liquid = metal.knots.iter().find(|knot| knot.solid <= 0.0);
    liquid.map_or(f64::NAN, |knot| knot.celsius)
}

/// What was written down of the cells that freeze, for each of the equal cells.
fn spread(meshed: &Meshed, built: &MouldCase, frozen: &[u32], of: &[f32]) -> Vec<f32> {
    let mut in_case = vec![f32::NAN; built.case.grid.cells()];
    for (cell, value) in frozen.iter().zip(of) {
        in_case[*cell as usize] = *value;
    }
    (0..meshed.cells.stuff.len())
        .map(|cell| in_case[built.of_cell(&meshed.cells, cell)])
        .collect()
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
