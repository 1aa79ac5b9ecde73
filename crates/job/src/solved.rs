//! The times of a plan by the heat in the mould, beside those of the laws.

use measure::band::Band;
use measure::flow::Duration;
use rigging::piece::Piece;

use crate::amount::Amount;
use crate::freezing::{FreezingWish, InMould, JobFrozen, NoFreeze, freezing_in};
use crate::freezing_told::{time, times};
use crate::plan::Plan;
use crate::remark::of_solved::SolvedFact;
use crate::remark::{Remark, sorted};
use crate::words::said::Said;

/// What following the heat says of the times of a plan.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SolvedTimes {
    /// How it was followed.
    pub by: SolvedBy,
    /// Cells of the box around the metal.
    pub cells: usize,
    /// When the last of the castings is solid, from the full mould.
    pub castings: Band<Duration>,
    /// When all metal may be moved; none where the plan opens sooner.
    pub leave: Option<Duration>,
    /// When the castings may be laid open; none where the plan opens sooner.
    pub open: Option<Duration>,
    /// Pools in castings that are cut off from every feeder with something lacking.
    pub cut_off: usize,
    /// What they lack, mm³.
    pub lacking_mm3: f64,
}

/// How the heat was followed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SolvedBy {
    /// At a quick look on wide cells.
    QuickLook,
    /// By `oddside freeze`, whose findings were kept.
    Freezing,
}

/// Cells of a quick look: about a second of the solver on one core. With a third of them the thin
/// walls of a large casting are missing on the wide cells, and its band reaches down to nought.
const QUICK_CELLS: f64 = 80_000.0;

/// A quick look at the freezing of a job.
///
/// # Errors
///
/// A mould that cannot be followed.
pub fn quick_look(in_mould: &InMould<'_>) -> Result<SolvedTimes, NoFreeze> {
    let wish = FreezingWish {
        cells: QUICK_CELLS,
        ..FreezingWish::default()
    };
    let frozen = freezing_in(in_mould, &wish, &[], &mut |_, _| true)?;
    Ok(solved_times(&frozen, SolvedBy::QuickLook))
}

/// The times of a freezing.
pub fn solved_times(frozen: &JobFrozen, by: SolvedBy) -> SolvedTimes {
    let castings_s = frozen.castings_s().unwrap_or(frozen.freeze.last_s);
    let opening = frozen.opening.as_ref();
    let pools = frozen.feeding.cut_off.iter();
    let in_castings = pools.filter(|pool| matches!(pool.piece, Piece::Casting(_)));
    let lacks = in_castings
        .map(|pool| frozen.lacking_mm3(pool.to_freeze_mm3))
        .filter(|lacks| *lacks > LEAST_LACKING_MM3);
    let lacks: Vec<f64> = lacks.collect();
    SolvedTimes {
        by,
        cells: frozen.freeze.solved.meshed.cells.stuff.len(),
        castings: castings_s.map(Duration::from_s),
        leave: opening.and_then(|opening| opening.leave),
        open: opening.and_then(|opening| opening.open),
        cut_off: lacks.len(),
        lacking_mm3: lacks.iter().sum(),
    }
}

/// Solved times in words.
pub fn told(solved: &SolvedTimes) -> Said {
    let id = match solved.by {
        SolvedBy::QuickLook => "plan-solved",
        SolvedBy::Freezing => "plan-solved-kept",
    };
    let castings = solved.castings.map(Duration::as_s);
    let said = Said::new(id)
        .with("cells", solved.cells)
        .with("likely", time(castings.likely()))
        .with("between", times(&castings));
    with_opening(said, solved)
}

/// A message with the time of opening put into it.
pub fn with_opening(said: Said, solved: &SolvedTimes) -> Said {
    match solved.open {
        Some(open) => said.with("open", time(open.as_s())),
        None => said.with("open", Said::new("plan-solved-late")),
    }
}

/// Pools in a casting that lack less than this are lost among the pores, mm³.
pub(crate) const LEAST_LACKING_MM3: f64 = 50.0;

/// The figures of a plan beside which solved times stand.
const PENCIL_FREEZING: &str = "freezing time of the heaviest section";
const PENCIL_OPENING: &str = "may be opened";

/// Puts solved times beside those of a plan, with what is to be told where they differ.
pub fn beside(plan: &mut Plan, solved: SolvedTimes) {
    let mut remarks = std::mem::take(&mut plan.remarks);
    remarks.extend(facts(plan, &solved).into_iter().map(Remark::from));
    plan.remarks = sorted(remarks);
    plan.solved = Some(solved);
}

/// Tells on a plan that findings were kept of another one.
pub fn told_stale(plan: &mut Plan) {
    let mut remarks = std::mem::take(&mut plan.remarks);
    remarks.push(SolvedFact::Stale.into());
    plan.remarks = sorted(remarks);
}

fn facts(plan: &Plan, solved: &SolvedTimes) -> Vec<SolvedFact> {
    let mut facts = Vec::new();
    if let Some(pencil) = duration(plan, PENCIL_FREEZING) {
        let (solved, apart) = (solved.castings, apart(&solved.castings, &pencil));
        match apart {
            Some(Apart::Longer) => facts.push(SolvedFact::FreezesLonger { solved, pencil }),
            Some(Apart::Shorter) => facts.push(SolvedFact::FreezesSooner { solved, pencil }),
            None => {}
        }
    }
    if let (Some(open), Some(pencil)) = (solved.open, duration(plan, PENCIL_OPENING))
        && open > pencil.high()
    {
        let plan = pencil.high();
        facts.push(SolvedFact::OpensLater { solved: open, plan });
    }
    // Wide cells lose thin ways of feeding: only the full look is taken at its word.
    if solved.by == SolvedBy::Freezing && solved.cut_off > 0 {
        facts.push(SolvedFact::CutOff {
            pools: solved.cut_off,
            lacking_mm3: solved.lacking_mm3,
        });
    }
    facts
}

enum Apart {
    Longer,
    Shorter,
}

/// Whether two bands lie apart, and how the first does.
fn apart(solved: &Band<Duration>, pencil: &Band<Duration>) -> Option<Apart> {
    match () {
        () if solved.low() > pencil.high() => Some(Apart::Longer),
        () if solved.high() < pencil.low() => Some(Apart::Shorter),
        () => None,
    }
}

fn duration(plan: &Plan, name: &str) -> Option<Band<Duration>> {
    match plan.figure(name)?.amount {
        Amount::Duration(band) => Some(band),
        _ => None,
    }
}
