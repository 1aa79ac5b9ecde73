//! What changed, in words.

use bench::told::{Figure, Told, Value};
use job::amount::Amount;
use job::words::said::Said;
use measure::band::Band;
use measure::text::rounded;
use trials::exact::{each_by_curve, each_for_power};

use crate::guard::{Changed, LEVEL, level_for};
use crate::then_and_now::ThenAndNow;

/// Things shown that do not stand out.
const SHOWN: usize = 6;

/// Tells what changed in the pours of the log and what goes with bad castings.
pub fn changes_told(changed: &[Changed]) -> Told {
    let mut told = Told::new(Said::new("log-guard-head"));
    let level = level_for(changed);
    let mut stands_out = false;
    for one in changed.iter().take(SHOWN) {
        let share = |way: &crate::guard::Way| {
            let of = format!("{} of {}", way.bad.hits, way.bad.of);
            Said::new("log-guard-way")
                .with("is", way.is.as_str())
                .with("bad", of)
        };
        let mut figure = Figure::new("log-guard-thing", Value::Words(share(&one.one)));
        figure.label = Some(what(one.what));
        figure.beside = Some(share(&one.other));
        told.figures.push(figure);
        let chance = rounded(one.chance, 2);
        if one.chance <= level {
            stands_out = true;
            let said = Said::new("log-guard-goes").with("what", what(one.what));
            told.caution(said.with("chance", chance));
            for hidden in &one.hidden_by {
                let said = Said::new("log-guard-hidden").with("what", what(one.what));
                told.caution(said.with("other", what(hidden.what)));
                let said = Said::new("log-guard-would-tell")
                    .with("what", what(one.what))
                    .with("way", one.other.is.as_str())
                    .with("other", what(hidden.what));
                told.step(said.with("other_way", hidden.with_one.as_str()));
            }
        }
    }
    if !stands_out {
        told.note(Said::new("log-guard-nothing").with("count", changed.len()));
    }
    told.note(Said::new("log-guard-never-proved"));
    told
}

/// Tells what differs from the last good pour.
pub fn then_and_now_told(both: &ThenAndNow<'_>) -> Told {
    let head = Said::new("log-then-head").with("then", both.then.number.to_string());
    let mut told = Told::new(head.with("now", both.now.number.to_string()));
    for one in &both.differs {
        let said = Said::new("log-then-differs").with("then", one.then.as_str());
        let mut figure = Figure::new(
            "log-then-thing",
            Value::Words(said.with("now", one.now.as_str())),
        );
        figure.label = Some(what(one.what));
        told.figures.push(figure);
    }
    match both.differs.len() {
        0 => told.note(Said::new("log-then-same")),
        1 => told.note(Said::new("log-then-one")),
        _ => told.caution(Said::new("log-then-many")),
    }
    for unknown in &both.unknown {
        told.note(Said::new("log-then-unknown").with("what", what(unknown)));
    }
    told
}

/// Tells how many castings a comparison takes before anybody starts.
pub fn power_told(from: f64, to: f64, wanted: f64) -> Told {
    let percent = |share: f64| format!("{} %", rounded(share * 100.0, 3));
    let head = Said::new("log-power-head")
        .with("from", percent(from))
        .with("to", percent(to));
    let mut told = Told::new(head.with("wanted", percent(wanted)));
    match each_for_power(from, to, LEVEL, wanted) {
        Some(each) => told.number("log-power-exact", Band::exact(each as f64)),
        None => told.note(Said::new("log-power-too-many")),
    }
    if let Some(each) = each_by_curve(from, to, LEVEL, wanted) {
        told.number("log-power-curve", Band::exact(each as f64));
    }
    let level = Band::exact(LEVEL);
    told.amount("log-power-level", Amount::Share(level));
    told.note(Said::new("log-power-lot"));
    told
}

fn what(word: &str) -> Said {
    Said::new(format!("log-thing-{word}"))
}
