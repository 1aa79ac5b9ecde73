//! How the mould of a job freezes: the solids of the mould, followed by the heat in them.

use measure::band::Band;
use measure::flow::Duration;
use measure::heat::Temperature;
use metal::alloy::Alloy;
use mould::opening::{OpeningRow, opening_row};
use pour::chill::ChillError;
use pour::criteria::{Weakest, weakest};
use pour::feeding::{Feeding, feeding};
use pour::freeze::{Freeze, Told, freeze_from, grids};
use pour::halves::evened;
pub use pour::meshing::BUDGET;
use pour::meshing::{Meshed, Meshing};
use pour::no_freeze::FreezeError;
use pour::opening::{Cooled, cooled};
use pour::pipe::{Shrinkage, shrinkage};
use pour::section::{Cut, section};
pub use pour::solved::Elsewhere;
use pour::solved::{Kept, Poured, Standing, carried_to, filling};
use pour::start::Start;
use pour::tables::SandHeat;
use pour::vti::vti;
use rigging::mould::Mould;
use rigging::piece::Piece;
use thiserror::Error;

use crate::amount::Amount;
use crate::chills::{ChillTold, chilled};
use crate::conditions::{Conditions, SandKnown};
use crate::filling::{Filling, Running, filling_of};
use crate::halves::{Halves, halves};
use crate::job::Job;
use crate::mould_solids::{NoMould, mould_of_placed};
use crate::part::Part;
use crate::placed_part::PlacedPart;
use crate::shop::Shop;
use crate::work_out::{FreezingGiven, mould_given_placed, placed, work_out_placed};

/// What is wished of it.
#[derive(Clone, Copy, Debug)]
pub struct FreezingWish<'a> {
    /// Most cells of the box around the metal.
    pub cells: f64,
    /// Whether one side is to stand for both where the mould is the same on either.
    pub halves: bool,
    /// Where the heat is followed, if not on the processor.
    pub on: Option<&'a dyn Elsewhere>,
}

impl Default for FreezingWish<'_> {
    fn default() -> Self {
        FreezingWish {
            cells: BUDGET,
            halves: false,
            on: None,
        }
    }
}

/// The freezing of the mould of a job.
#[derive(Clone, Debug)]
pub struct JobFrozen {
    /// The mould.
    pub mould: Mould,
    /// Its metal.
    pub alloy: &'static Alloy,
    /// How it fills.
    pub filling: Filling,
    /// Its freezing.
    pub freeze: Freeze,
    /// What it was followed from.
    pub from: FrozenFrom,
    /// When the castings are solid, by the law of moduli.
    pub pencil: Band<Duration>,
    /// What is cut off, and where it freezes last.
    pub feeding: Feeding,
    /// Where the shrinkage shows.
    pub shrinkage: Shrinkage,
    /// Share of the liquid's volume lost on freezing.
    pub freezing_shrinkage: f64,
    /// Where sponge is likeliest in each casting.
    pub weakest: Vec<Weakest>,
    /// The chills, and what they change.
    pub chills: Vec<ChillTold>,
    /// What came of the wish to have one side stand for both, where there was one.
    pub halves: Option<Halves>,
    /// How it cools after that.
    pub opening: Option<JobOpening>,
}

/// When a mould may be opened, by the heat in it.
#[derive(Clone, Debug)]
pub struct JobOpening {
    /// The temperatures to wait for.
    pub row: OpeningRow,
    /// How it cools.
    pub cooled: Cooled,
    /// When all metal is cold enough to be moved.
    pub leave: Option<Duration>,
    /// When the castings may be laid open.
    pub open: Option<Duration>,
    /// The late end of the plan for it.
    pub planned: Duration,
}

/// What a freezing was followed from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FrozenFrom {
    /// How hot the metal leaves the ladle.
    pub pouring: Temperature,
    /// How much colder and how much hotter it may leave it, K: below nought, above nought.
    pub start_off_k: [f64; 2],
    /// How hot it is when the mould is full, over all of it.
    pub start: Temperature,
    /// The sand.
    pub sand: SandHeat,
    /// Where the sand is known from.
    pub sand_known: SandKnown,
    /// Contact of metal and sand, W/(m² K).
    pub contact_w_m2k: Band<f64>,
}

/// Why the mould of a job was not followed.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum NoFreeze {
    /// No mould.
    #[error(transparent)]
    NoMould(#[from] NoMould),
    /// No contact of this metal in the table.
    #[error("no contact between this metal and sand is in the table")]
    NoContact,
    /// A chill that cannot be laid.
    #[error(transparent)]
    Chill(#[from] ChillError),
    /// No section to feed.
    #[error("the part has no section of which a heaviest place is known: a feeder has no place")]
    NoSection,
    /// It could not be followed.
    #[error(transparent)]
    Freeze(#[from] FreezeError),
}

/// Follows the freezing of the mould of a job, for a part with nothing left to be settled.
///
/// # Errors
///
/// A job without a mould of solids, or one that cannot be followed.
pub fn freezing_of(
    job: &Job,
    shop: &Shop,
    part: &Part,
    wish: &FreezingWish<'_>,
    go_on: &mut dyn FnMut(&Told) -> bool,
) -> Result<JobFrozen, NoFreeze> {
    freezing_from(job, shop, part, wish, &[], &mut |told, _| go_on(told))
}

/// A job worked out as far as its mould stands in solids.
#[derive(Clone, Copy, Debug)]
pub struct InMould<'a> {
    /// The job.
    pub job: &'a Job,
    /// Its shop.
    pub shop: &'a Shop,
    /// Its part, with nothing left to be settled.
    pub part: &'a Part,
    /// The part as it lies in the mould.
    pub placed: &'a PlacedPart,
    /// The mould.
    pub mould: &'a Mould,
}

/// Follows it from what was kept of an earlier following, where some of that is of this very mould.
/// `go_on` is told of every step, may keep the run as it stands then where that is worth it, and
/// stops it by answering false.
///
/// # Errors
///
/// A job without a mould of solids, or one that cannot be followed.
pub fn freezing_from(
    job: &Job,
    shop: &Shop,
    part: &Part,
    wish: &FreezingWish<'_>,
    kept: &[Kept],
    go_on: &mut dyn FnMut(&Told, Option<&Standing<'_>>) -> bool,
) -> Result<JobFrozen, NoFreeze> {
    let placed = &placed(job, part);
    let mould = &mould_of_placed(job, shop, part, placed)?;
    let in_mould = InMould {
        job,
        shop,
        part,
        placed,
        mould,
    };
    freezing_in(&in_mould, wish, kept, go_on)
}

/// As [`freezing_from`], in a mould that was built before.
///
/// # Errors
///
/// A mould that cannot be followed.
pub fn freezing_in(
    in_mould: &InMould<'_>,
    wish: &FreezingWish<'_>,
    kept: &[Kept],
    go_on: &mut dyn FnMut(&Told, Option<&Standing<'_>>) -> bool,
) -> Result<JobFrozen, NoFreeze> {
    let InMould {
        job, shop, mould, ..
    } = *in_mould;
    let conditions = Conditions::of(job, shop, in_mould.placed)?;
    let given = &conditions.given;
    let sizes = mould_given_placed(job, shop, in_mould.part, in_mould.placed);
    let sizes = sizes.map(|given| given.sizes).ok_or(NoMould::NoShape)?;
    let mut poured = Poured {
        on: wish.on,
        ..conditions.poured(conditions.even())
    };
    let meshing = Meshing {
        even: wish.halves,
        ..conditions.meshing(wish.cells)
    };
    let grids = grids(mould, &meshing).map_err(FreezeError::from)?;
    let mut chilled = chilled(grids, &job.chills)?;
    let mut halves = wish.halves.then(|| halves(&mut chilled.grids));
    let narrow = &chilled.grids[0];
    let running = Running {
        alloy: job.alloy,
        pouring: given.pouring,
        thirst: conditions.thirst,
        contact_w_m2k: conditions.contact_w_m2k,
    };
    let filled = filling_of(mould, narrow, &sizes, &running);
    poured.start = start(&filled, narrow, given, &poured);
    if let Some(halves) = &mut halves {
        (poured.start, halves.start_off_k) = evened(&poured.start, narrow);
    }
    // What runs before and behind the freezing itself is small beside it.
    let beside = |solid: f64, time_s: f64| Told {
        run: 1,
        runs: 1,
        solid,
        time_s,
        cells: 0,
        bytes: 0.0,
    };
    let chills = chilled.told(&job.chills, &poured, &mut |time_s| {
        go_on(&beside(0.0, time_s), None)
    })?;
    let freeze = freeze_from(chilled.grids, &meshing, &poured, kept, &mut |told, run| {
        go_on(told, Some(run))
    })?;
    let opening = opening(in_mould, given, &freeze, &poured, &mut |time_s| {
        go_on(&beside(1.0, time_s), None)
    })?;
    let from = from(given, &poured, &freeze, conditions.sand_known);
    let superheat = from.start - job.alloy.liquidus.band.likely();
    Ok(JobFrozen {
        from,
        alloy: job.alloy,
        filling: filled,
        pencil: given.heaviest,
        feeding: feeding(&freeze.solved),
        shrinkage: shrinkage(&freeze.solved, job.alloy, superheat.as_kelvin().max(0.0)),
        freezing_shrinkage: job.alloy.freezing_shrinkage.band.likely(),
        weakest: weakest(&freeze.solved),
        chills,
        halves,
        opening,
        mould: mould.clone(),
        freeze,
    })
}

/// What the freezing starts from: the filling where it was seen and is to be trusted.
fn start(filled: &Filling, narrow: &Meshed, given: &FreezingGiven, poured: &Poured<'_>) -> Start {
    let (Filling::Seen(filled), Start::Even(even)) = (filled, &poured.start) else {
        return poured.start.clone();
    };
    let likely = filling(poured, poured.contact_w_m2k.likely(), 1.0);
    let pouring_c = given.pouring.likely().as_celsius();
    Start::filled(narrow, &filled.glance, &likely, pouring_c, *even)
}

/// Follows the cooling as long as the plan keeps the mould shut.
fn opening(
    in_mould: &InMould<'_>,
    given: &FreezingGiven,
    freeze: &Freeze,
    poured: &Poured<'_>,
    go_on: &mut dyn FnMut(f64) -> bool,
) -> Result<Option<JobOpening>, NoFreeze> {
    let InMould {
        job,
        shop,
        part,
        placed,
        ..
    } = *in_mould;
    let Some(row) = opening_row(job.alloy.family.word()) else {
        return Ok(None);
    };
    let plan = work_out_placed(job, shop, part, placed);
    let figure = plan.figure("may be opened").map(|figure| figure.amount);
    let Some(Amount::Duration(planned)) = figure else {
        return Ok(None);
    };
    let row = if given.uneven {
        row.for_uneven()
    } else {
        row.clone()
    };
    let wide = carried_to(&freeze.wide, poured, &freeze.solved.meshed);
    let likely = filling(&wide, poured.contact_w_m2k.likely(), 1.0);
    let for_s = planned.high().as_s().max(2.0 * freeze.last_s.likely());
    let cooled = cooled(&freeze.wide, &wide, &likely, for_s, go_on)?;
    let below = |mark: Temperature, all| cooled.below_s(mark.as_celsius(), all);
    let leave = below(row.leave, true).map(|s| s.max(freeze.last_s.likely()));
    let open = below(row.open, false)
        .zip(leave)
        .map(|(open, leave)| open.max(leave));
    Ok(Some(JobOpening {
        leave: leave.map(Duration::from_s),
        open: open.map(Duration::from_s),
        planned: planned.high(),
        cooled,
        row,
    }))
}

/// Folder, in that of the job, into which the files go.
pub const FREEZE_FOLDER: &str = "freeze";

/// Name of the upright section through the last place of the castings.
pub const SECTION_FILE: &str = "freeze-section.svg";

/// Name of the file with the fields over all cells.
pub const FIELDS_FILE: &str = "freeze.vti";

/// Drawings and fields as files, by name: an upright and a level section through the last place of
/// the castings, and the fields over all cells.
pub fn freezing_files(frozen: &JobFrozen) -> Vec<(String, Vec<u8>)> {
    let pieces = frozen.freeze.pieces.iter();
    let castings = pieces.filter(|frozen| matches!(frozen.piece, Piece::Casting(_)));
    let last = castings.max_by(|one, other| {
        let [one, other] = [one, other].map(|frozen| frozen.last_s.likely());
        one.total_cmp(&other)
    });
    let place = last.map_or(frozen.freeze.last_mm, |frozen| frozen.last_mm);
    let solved = &frozen.freeze.solved;
    let drawn = |axis: usize| {
        let cut = Cut {
            axis,
            at_mm: place[axis],
        };
        section(&frozen.mould, solved, &frozen.shrinkage, cut).into_bytes()
    };
    let seen = frozen.filling.seen().map(|filled| &filled.glance);
    let fields = vti(solved, &frozen.shrinkage, seen);
    vec![
        (SECTION_FILE.to_owned(), drawn(1)),
        ("freeze-across.svg".to_owned(), drawn(0)),
        ("freeze-plan.svg".to_owned(), drawn(2)),
        (FIELDS_FILE.to_owned(), fields),
    ]
}

fn from(
    given: &FreezingGiven,
    poured: &Poured<'_>,
    freeze: &Freeze,
    sand_known: SandKnown,
) -> FrozenFrom {
    FrozenFrom {
        pouring: given.pouring.likely(),
        start_off_k: poured.start_off_k,
        start: Temperature::from_celsius(poured.start.mean_c(&freeze.solved.meshed)),
        sand: poured.sand,
        sand_known,
        contact_w_m2k: poured.contact_w_m2k,
    }
}
