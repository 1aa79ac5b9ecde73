//! A diagnosis in words: ranked causes with why, the cheapest check, one change for the next pour.

use bench::told::{Figure, Told, Value};
use job::amount::Amount;
use job::words::said::Said;
use measure::band::Band;
use measure::text::rounded;

use crate::diagnosis::check::parting;
use crate::diagnosis::ranked::{Mark, Ranked, named};

/// Causes shown, those that are named among them.
const SHOWN: usize = 5;

/// Causes less likely than this are not shown: one in thirty.
const HARDLY: f64 = 0.03;

/// Tells what is likely, what would tell, and what to change.
///
/// # Errors
///
/// Tables that are not sound.
pub fn told(ranked: &[Ranked]) -> Result<Told, toml::de::Error> {
    let mut told = Told::new(Said::new("log-diagnosis-head"));
    let top: Vec<&Ranked> = named(ranked).collect();
    let [first, rest @ ..] = &top[..] else {
        told.note(Said::new("log-diagnosis-none"));
        told.step(Said::new("log-diagnosis-write"));
        return Ok(told);
    };
    for one in ranked.iter().take(SHOWN).filter(|one| one.share >= HARDLY) {
        told.figures.push(figure(one));
    }
    let causes: f64 = ranked.iter().map(|one| one.share).sum();
    told.share(
        "log-diagnosis-nothing-tells",
        Band::exact(whole(1.0 - causes)),
    );
    let second = rest
        .first()
        .copied()
        .or_else(|| ranked.iter().find(|one| one.cause != first.cause));
    if let Some(second) = second
        && let Some(check) = parting(&first.cause.id, &second.cause.id)?
    {
        let said = Said::new(format!("log-check-{}", check.id));
        let words = Said::new("log-diagnosis-check").with("check", said);
        let words = words.with("finds", Said::new(format!("log-cause-{}", check.finds)));
        told.step(words);
    }
    let change = Said::new(format!("log-change-{}", first.cause.id));
    let words = Said::new("log-diagnosis-change").with("change", change);
    told.step(words.with("share", percent(first.share)));
    told.note(Said::new("log-diagnosis-one"));
    told.note(Said::new("log-diagnosis-ratios"));
    told.caution(Said::new("log-diagnosis-bearing"));
    Ok(told)
}

fn figure(one: &Ranked) -> Figure {
    let share = Band::exact(whole(one.share));
    let mut figure = Figure::new("log-diagnosis-cause", Value::Amount(Amount::Share(share)));
    figure.label = Some(Said::new(format!("log-cause-{}", one.cause.id)));
    let reasons = one
        .reasons
        .iter()
        .filter(|reason| reason.times > 1.0)
        .take(4);
    let reasons = reasons.map(|reason| {
        let mark = match reason.mark {
            Mark::Published => "p",
            Mark::Practice => "c",
            Mark::Judgement => "j",
        };
        format!("{} ×{} {mark}", reason.fact, rounded(reason.times, 2))
    });
    let reasons: Vec<String> = reasons.collect();
    figure.beside = Some(Said::typed(reasons.join(", ")));
    figure
}

fn percent(share: f64) -> String {
    format!("{:.0} %", share * 100.0)
}

/// A share in whole per cent: more is not known.
fn whole(share: f64) -> f64 {
    (share * 100.0).round() / 100.0
}
