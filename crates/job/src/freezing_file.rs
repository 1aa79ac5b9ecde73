//! The freezing of a mould as one object, as `--json` prints it.

use measure::band::Band;
use measure::flow::Duration;
use measure::heat::Temperature;
use pour::hot_sand::HotSand;
use rigging::piece::Piece;
use serde::Serialize;

use crate::filling::Filling;
use crate::filling_file::{self, FillingFile};
use crate::freezing::JobFrozen;
use crate::freezing_asked::time_above;
use crate::freezing_hints::{HeldFile, LeversFile, held_file, levers_file};
use crate::freezing_told::told;
use crate::words::Language;

/// The one object that a door writes as JSON; times in seconds, places in mm of the mould.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FreezingFile {
    /// The job.
    pub job: String,
    /// The alloy.
    pub alloy: String,
    /// How it fills; null where that could not be seen.
    pub filling: Option<FillingFile>,
    /// Why it could not be seen.
    pub filling_unseen: Option<String>,
    /// How hot the metal is when the mould is full, over all of it, °C.
    pub start_c: f64,
    /// When all was solid.
    pub solid_s: BandFile,
    /// Where the last metal froze.
    pub last_mm: [f64; 3],
    /// When the castings are solid by the law of moduli.
    pub pencil_s: BandFile,
    /// Each piece of metal.
    pub pieces: Vec<PieceFile>,
    /// How far the time on cells twice as wide lies off, as a share.
    pub grid_error: f64,
    /// Times the time at the best and at the worst contact.
    pub contact_times: [f64; 2],
    /// Times the time with the quickest and with the slowest sand.
    pub sand_times: [f64; 2],
    /// Edge of a cell, mm.
    pub cell_mm: f64,
    /// Cells of the box around the metal.
    pub cells: usize,
    /// Metal in the cells over that of the solids, less one.
    pub mass_off: f64,
    /// Heat lost or made by the solver, as a share.
    pub heat_off: f64,
    /// What all metal lacks, and where it shows.
    pub shrinkage: ShrinkageFile,
    /// Pools that are cut off from every feeder, the one with most left to freeze first.
    pub cut_off: Vec<PoolFile>,
    /// How long castings, and all metal, stay above the temperature that was asked for, °C and s.
    pub above: Option<AboveFile>,
    /// The hottest that any sand was, °C.
    pub hottest_sand_c: Option<f64>,
    /// The hottest that any core was, °C.
    pub hottest_core_c: Option<f64>,
    /// What castings lack on the wide cells, mm³, as is likely and with pour, sand or contact
    /// turned.
    pub levers: LeversFile,
    /// Each casting as its last place is just solid; none where nobody knows when it is opened.
    pub held: Vec<HeldFile>,
    /// Chills, and what they change.
    pub chills: Vec<ChillTimes>,
    /// When all metal may be moved, s; null where the plan opens sooner.
    pub leave_s: Option<f64>,
    /// When the castings may be laid open, s; null where the plan opens sooner.
    pub open_s: Option<f64>,
    /// Sand by how hot it got until the mould is opened; null where nobody knows when that is.
    pub hot_sand: Option<HotSand>,
    /// What was noticed, in British words.
    pub noticed: Vec<String>,
}

/// How long metal stays above a temperature, from the full mould.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct AboveFile {
    /// The temperature, °C.
    pub celsius: f64,
    /// Until the hottest place of the castings is below, s; null where the plan opens sooner.
    pub castings_s: Option<f64>,
    /// Until all metal is, s; null where the plan opens sooner.
    pub all_s: Option<f64>,
}

/// How long metal stays above a temperature.
pub fn above_file(frozen: &JobFrozen, mark: Temperature) -> Option<AboveFile> {
    let [castings_s, all_s] = time_above(frozen, mark)?.map(|span| span.map(Duration::as_s));
    Some(AboveFile {
        celsius: mark.as_celsius(),
        castings_s,
        all_s,
    })
}

/// A chill and what it changes, on the wide cells.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ChillTimes {
    /// The casting that it lies on.
    pub piece: String,
    /// How much of the casting it touches, mm².
    pub touches_mm2: f64,
    /// When the metal behind it is solid: without it and with it.
    pub behind_s: [f64; 2],
    /// When the casting is: without any chill and with all of them.
    pub casting_s: [f64; 2],
}

/// Where the shrinkage shows, mm³.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ShrinkageFile {
    /// All that is lacking.
    pub demand_mm3: f64,
    /// Emptied in feeders, sprue and the rest of the rigging.
    pub pipe_mm3: f64,
    /// Emptied in castings.
    pub hollows_mm3: f64,
    /// Fine pores in castings.
    pub pores_mm3: f64,
    /// Fine pores in the rigging.
    pub pores_in_rigging_mm3: f64,
    /// Each piece.
    pub pieces: Vec<EmptiedFile>,
}

/// What was emptied of a piece.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct EmptiedFile {
    /// Its name as files have it.
    pub piece: String,
    /// How much, mm³.
    pub volume_mm3: f64,
    /// What it holds, mm³.
    pub holds_mm3: f64,
    /// From its top to the deepest place that is mostly empty, mm.
    pub depth_mm: f64,
}

/// A pool that is cut off.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct PoolFile {
    /// The piece in which its last metal freezes.
    pub piece: String,
    /// From which feeder, sprue or basin; null where it never had one.
    pub from: Option<String>,
    /// When, s.
    pub at_s: f64,
    /// Where it freezes last.
    pub last_mm: [f64; 3],
    /// Metal in it that is still to freeze, mm³.
    pub to_freeze_mm3: f64,
}

impl FreezingFile {
    /// As text, with a line's end.
    pub fn text(&self) -> String {
        serde_json::to_string_pretty(self).unwrap_or_default() + "\n"
    }
}

fn shrinkage_file(frozen: &JobFrozen) -> ShrinkageFile {
    let shrinkage = &frozen.shrinkage;
    let pieces = shrinkage.emptied.iter().map(|emptied| EmptiedFile {
        piece: emptied.piece.to_string(),
        volume_mm3: emptied.volume_mm3,
        holds_mm3: emptied.holds_mm3,
        depth_mm: emptied.depth_mm,
    });
    ShrinkageFile {
        demand_mm3: shrinkage.demand_mm3,
        pipe_mm3: shrinkage.pipe_mm3(),
        hollows_mm3: shrinkage.hollows_mm3(),
        pores_mm3: shrinkage.pores_mm3,
        pores_in_rigging_mm3: shrinkage.pores_in_rigging_mm3,
        pieces: pieces.collect(),
    }
}

/// A band.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct BandFile {
    /// The lowest.
    pub low: f64,
    /// The likely one.
    pub likely: f64,
    /// The highest.
    pub high: f64,
}

/// A piece of metal.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct PieceFile {
    /// Its name as files have it.
    pub piece: String,
    /// When its first metal was solid through.
    pub first_s: f64,
    /// When its last metal was solid.
    pub solid_s: BandFile,
    /// Where that was.
    pub last_mm: [f64; 3],
}

impl From<&Band<f64>> for BandFile {
    fn from(band: &Band<f64>) -> BandFile {
        BandFile {
            low: band.low(),
            likely: band.likely(),
            high: band.high(),
        }
    }
}

/// A freezing as one object.
pub fn file(job: &str, alloy: &str, frozen: &JobFrozen) -> FreezingFile {
    let freeze = &frozen.freeze;
    let meshed = &freeze.solved.meshed;
    let opening = frozen.opening.as_ref();
    let english = Language::Uk;
    let held = opening.iter().flat_map(|opening| &opening.cooled.held);
    FreezingFile {
        job: job.to_owned(),
        alloy: alloy.to_owned(),
        filling: filling_file::file(&frozen.filling),
        filling_unseen: match &frozen.filling {
            Filling::Unseen(why) => Some(why.to_string()),
            _ => None,
        },
        start_c: frozen.from.start.as_celsius(),
        solid_s: (&freeze.last_s).into(),
        last_mm: freeze.last_mm,
        pencil_s: (&frozen.pencil.map(Duration::as_s)).into(),
        pieces: freeze
            .pieces
            .iter()
            .map(|piece| PieceFile {
                piece: piece.piece.to_string(),
                first_s: piece.first_s,
                solid_s: (&piece.last_s).into(),
                last_mm: piece.last_mm,
            })
            .collect(),
        grid_error: freeze.by_grid,
        contact_times: freeze.by_contact,
        sand_times: freeze.by_sand,
        cell_mm: meshed.cells.size_mm,
        cells: meshed.cells.stuff.len(),
        mass_off: meshed.held_mm3 / meshed.solid_mm3 - 1.0,
        heat_off: freeze.solved.balance.drift,
        shrinkage: shrinkage_file(frozen),
        cut_off: frozen
            .feeding
            .cut_off
            .iter()
            .map(|pool| PoolFile {
                piece: pool.piece.to_string(),
                from: pool.from.as_ref().map(Piece::to_string),
                at_s: pool.at_s,
                last_mm: pool.last_mm,
                to_freeze_mm3: pool.to_freeze_mm3,
            })
            .collect(),
        above: None,
        hottest_sand_c: opening.map(|opening| opening.cooled.sand_c),
        hottest_core_c: opening.and_then(|opening| opening.cooled.core_c),
        levers: levers_file(&freeze.levers),
        held: held.map(held_file).collect(),
        chills: frozen
            .chills
            .iter()
            .map(|told| ChillTimes {
                piece: told.piece.to_string(),
                touches_mm2: told.touches_mm2,
                behind_s: told.behind_s,
                casting_s: told.casting_s,
            })
            .collect(),
        leave_s: opening
            .and_then(|opening| opening.leave)
            .map(Duration::as_s),
        open_s: opening.and_then(|opening| opening.open).map(Duration::as_s),
        hot_sand: opening.map(|opening| opening.cooled.hot_sand.clone()),
        noticed: told(frozen)
            .lines
            .iter()
            .map(|line| english.say(&line.words))
            .collect(),
    }
}
