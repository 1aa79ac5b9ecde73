//! What may be asked of a freezing beside what is told of any: how long the metal stays above a
//! temperature, and what many cells take.

use measure::band::Band;
use measure::flow::Duration;
use measure::heat::Temperature;
use pour::meshing::MOST_BUDGET;

use crate::freezing::JobFrozen;
use crate::freezing_told::{all_of, celsius, time};
use crate::words::said::Said;

/// How long castings, and all metal, stay above a temperature, from the full mould: none where
/// they still are when the plan opens. Nothing at all where the cooling was not followed.
pub fn time_above(frozen: &JobFrozen, mark: Temperature) -> Option<[Option<Duration>; 2]> {
    let opening = frozen.opening.as_ref()?;
    let below = |all| opening.cooled.below_s(mark.as_celsius(), all);
    Some([false, true].map(|all| below(all).map(Duration::from_s)))
}

/// The same in words.
pub fn time_above_told(frozen: &JobFrozen, mark: Temperature) -> Option<Said> {
    let planned = frozen.opening.as_ref()?.planned;
    let shown = |span: Option<Duration>| match span {
        Some(span) => time(span.as_s()),
        None => format!("> {}", all_of(&Band::exact(planned))),
    };
    let [castings, all] = time_above(frozen, mark)?.map(shown);
    let said = Said::new("freeze-above")
        .with("mark", celsius(mark.as_celsius()))
        .with("castings", castings)
        .with("all", all);
    Some(said)
}

/// Cells from which on memory and time are told before anything starts: below, it is a minute or
/// two.
const TOLD_FROM: f64 = 3_000_000.0;

/// What so many cells take, where that is much: as the limit of cells tells it, in proportion.
pub fn takes(cells: f64) -> Option<Said> {
    if !(TOLD_FROM..=MOST_BUDGET).contains(&cells) {
        return None;
    }
    let share = cells / MOST_BUDGET;
    let said = Said::new("freeze-takes")
        .with("memory", format!("{:.1} GiB", 3.0 * share))
        .with("time", format!("{:.0} min", (60.0 * share).ceil()));
    Some(said)
}
