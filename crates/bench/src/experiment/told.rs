//! A plan as messages for any language, and a mix in words.

use job::words::said::Said;
use measure::text::rounded;
use trials::alias::Alias;

use crate::experiment::batches::{Batch, From};
use crate::experiment::design::{Planned, Teaches};
use crate::experiment::space::Space;
use crate::experiment::weighing::coarse;
use crate::experiment::{Basis, Counted, Experiment, Shape};

/// Something told: a head, what stands under it, and what has to be minded.
#[derive(Clone, Debug, PartialEq)]
pub struct Told {
    /// Its head.
    pub head: Said,
    /// What is told.
    pub lines: Vec<Said>,
    /// What has to be minded.
    pub cautions: Vec<Said>,
}

/// Most terms for which another is said to pass: the first few are what matters.
const MOST_TERMS: usize = 3;

/// What a plan is and what it can teach.
pub fn plan_told(experiment: &Experiment, plan: &Planned) -> Told {
    let teaches = &plan.teaches;
    let head = Said::new("experiment-plan-head")
        .with("name", experiment.name.as_str())
        .with("batches", teaches.batches)
        .with("mass", kilograms(experiment))
        .with("different", teaches.different);
    let order = Said::new("experiment-order").with("seed", experiment.seed.to_string());
    let mut lines = vec![Said::new(basis(experiment)), order];
    lines.extend(second_session(experiment, &plan.batches));
    lines.push(repeats(&plan.batches));
    lines.extend(teaches_told(&Space::of(experiment), teaches));
    let mut cautions: Vec<Said> = teaches.hidden.iter().map(hidden).collect();
    cautions.extend(teaches.unattainable.iter().map(|(name, bound, reachable)| {
        Said::new("experiment-unattainable")
            .with("name", name.as_str())
            .with("bound", rounded(*bound, 3))
            .with("reachable", rounded(*reachable, 3))
    }));
    cautions.extend(coarse_told(experiment, &plan.batches));
    cautions.push(Said::new("experiment-dust"));
    Told {
        head,
        lines,
        cautions,
    }
}

/// A mix in words: what changes, with its amounts and settings.
pub fn mix(experiment: &Experiment, point: &[f64]) -> String {
    let space = Space::of(experiment);
    let amounts = space.amounts(point);
    let unit = match experiment.counted {
        Counted::Parts => "",
        Counted::Percent => " %",
    };
    let parts = experiment
        .parts
        .iter()
        .zip(&amounts)
        .filter(|(part, _)| part.varies());
    let parts = parts.map(|(part, amount)| format!("{} {}{unit}", part.name, rounded(*amount, 3)));
    let settings = space.settings(point);
    let settings = experiment.settings.iter().zip(&settings);
    let settings = settings.map(|(one, value)| format!("{} {}", one.name, one.shown(*value)));
    parts.chain(settings).collect::<Vec<_>>().join(", ")
}

/// The message that says how parts are counted.
pub(super) fn basis(experiment: &Experiment) -> &'static str {
    match experiment.basis {
        Basis::Dry => "experiment-basis-dry",
        Basis::AsItLies => "experiment-basis-lies",
    }
}

/// Parts that the scale tells badly.
pub(super) fn coarse_told(experiment: &Experiment, batches: &[Batch]) -> Vec<Said> {
    let told = coarse(experiment, batches).into_iter().map(|one| {
        Said::new("experiment-coarse")
            .with("name", one.name)
            .with("mass", format!("{} g", rounded(one.least_g, 2)))
            .with("share", rounded(one.missed * 100.0, 2))
    });
    told.collect()
}

/// The mass of a batch.
pub(super) fn kilograms(experiment: &Experiment) -> String {
    format!("{} kg", rounded(experiment.batch.as_kg(), 3))
}

fn second_session(experiment: &Experiment, batches: &[Batch]) -> Option<Said> {
    let first = batches.iter().find(|one| one.from == From::Later)?;
    let names = experiment.parts.iter().filter(|part| part.later);
    let names: Vec<&str> = names.map(|part| part.name.as_str()).collect();
    let said = Said::new("experiment-second-session").with("batch", first.number);
    Some(said.with("names", names.join(", ")))
}

fn repeats(batches: &[Batch]) -> Said {
    let mut list = Vec::new();
    for (at, one) in batches.iter().enumerate() {
        let alike = |other: &&Batch| other.amounts == one.amounts && other.settings == one.settings;
        if let Some(first) = batches[..at].iter().find(alike) {
            let repeat = Said::new("experiment-repeats-one").with("batch", one.number);
            list.push(repeat.with("of", first.number));
        }
    }
    match list.is_empty() {
        true => Said::new("experiment-repeats-none"),
        false => Said::new("experiment-repeats").with("list", list),
    }
}

fn teaches_told(space: &Space, teaches: &Teaches) -> Vec<Said> {
    let shape = match teaches.shape {
        Shape::Plane => "experiment-teaches-plane",
        Shape::Twisted => "experiment-teaches-twisted",
        Shape::Bent => "experiment-teaches-bent",
    };
    let spare = match teaches.degrees {
        0 => Said::new("experiment-spare-none"),
        spare => Said::new("experiment-spare")
            .with("terms", teaches.terms)
            .with("spare", spare),
    };
    let share = (teaches.efficiency * 100.0).floor();
    let efficiency = Said::new("experiment-efficiency").with("share", rounded(share, 3));
    let mut lines = vec![
        Said::new(shape).with("names", space.names().join(", ")),
        spare,
        efficiency,
    ];
    lines.extend(teaches.shows.iter().map(|(name, times)| {
        Said::new("experiment-shows")
            .with("name", name.as_str())
            .with("times", rounded(*times, 2))
    }));
    lines
}

pub(super) fn hidden(alias: &Alias) -> Said {
    let terms = alias.falsifies.iter().map(|(name, _)| name.as_str());
    let terms: Vec<&str> = terms
        .filter(|name| *name != "constant")
        .take(MOST_TERMS)
        .collect();
    Said::new("experiment-hidden")
        .with("term", alias.left_out.as_str())
        .with("terms", terms.join(", "))
}
