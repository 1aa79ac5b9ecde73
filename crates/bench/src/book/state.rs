//! What a heap holds after every pour of its book, and how long it will do.

use job::amount::Amount;
use job::words::said::Said;
use measure::band::Band;
use measure::text::rounded;
use sand::heap::balance::{after_pour, clay_wanted, pours_left, renewed};
use sand::heap::holds::{Heap, Passed};

use crate::book::file::{HeapFile, begun, bounds, meant};
use crate::told::{Figure, Told, Value};
use crate::trouble::BenchError;

/// Most pours looked ahead.
const AHEAD: u32 = 200;

/// Tells what the heap holds, the bound it passed or will pass first, and the clay it wants.
///
/// # Errors
///
/// A book that cannot be read or does not add up.
pub fn state(file: &HeapFile) -> Result<Told, BenchError> {
    let heap = now_after(file)?;
    let head = Said::new("bench-state-head").with("name", file.name.as_str());
    let mut told = Told::new(head.with("count", file.pour.len()));
    for (id, (_, mass)) in PARTS.into_iter().zip(heap.parts()) {
        let mut figure = Figure::new(id, Value::Amount(Amount::Mass(Band::exact(mass))));
        let share = rounded(mass / heap.dry() * 100.0, 3);
        figure.beside = Some(Said::new("bench-of-dry").with("share", share));
        told.figures.push(figure);
    }
    told.share("bench-washable", Band::exact(heap.washable() / heap.dry()));
    told.share("bench-dead-share", Band::exact(heap.dead() / heap.dry()));
    let start = begun(file)?;
    let wanted = start.live_clay / start.dry();
    let clay = clay_wanted(heap.dry(), heap.live_clay, wanted);
    told.amount("bench-top-up", Amount::Mass(Band::exact(clay)));
    let bounds = bounds(file)?;
    if let Some(passed) = heap.passed(&bounds) {
        told.stop(Said::new(passed_id(passed)));
    } else if let Some(last) = file.pour.last() {
        let (pour, renewal) = meant(last)?;
        let left = pours_left(&heap, &pour, &renewal, &bounds, AHEAD)?;
        left_after(&mut told, left, AHEAD);
    }
    Ok(told)
}

/// The heap after every pour of its book.
///
/// # Errors
///
/// A book that cannot be read or does not add up.
pub fn now_after(file: &HeapFile) -> Result<Heap, BenchError> {
    let mut heap = begun(file)?;
    for record in &file.pour {
        let (pour, renewal) = meant(record)?;
        let poured = after_pour(&heap, &pour)?.heap;
        heap = renewed(&poured, &pour, &renewal)?.heap;
    }
    Ok(heap)
}

/// Tells how many pours of the same kind are left.
pub fn left_after(told: &mut Told, left: Option<(u32, Passed)>, ahead: u32) {
    match left {
        Some((0, passed)) => told.stop(Said::new(passed_id(passed))),
        Some((pours, passed)) => {
            told.number("bench-pours-left", Band::exact(f64::from(pours)));
            told.caution(Said::new(soon_id(passed)).with("count", pours as usize));
        }
        None => told.note(Said::new("bench-lasts").with("count", ahead as usize)),
    }
}

/// Labels of the parts, in the order of `Heap::parts`.
const PARTS: [&str; 9] = [
    "bench-holds-sand",
    "bench-holds-live-clay",
    "bench-holds-dead-clay",
    "bench-holds-organic",
    "bench-holds-ash",
    "bench-holds-core-sand",
    "bench-holds-parting",
    "bench-holds-fines",
    "bench-holds-water",
];

fn passed_id(passed: Passed) -> &'static str {
    match passed {
        Passed::LiveClay => "bench-passed-live-clay",
        Passed::Dead => "bench-passed-dead",
        Passed::Organic => "bench-passed-organic",
    }
}

fn soon_id(passed: Passed) -> &'static str {
    match passed {
        Passed::LiveClay => "bench-soon-live-clay",
        Passed::Dead => "bench-soon-dead",
        Passed::Organic => "bench-soon-organic",
    }
}
