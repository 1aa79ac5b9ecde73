//! A plan of named mixes and what its results say, as messages for any language.

use job::words::said::Said;
use measure::text::rounded;
use trials::verdict::{Verdict, VerdictError};

use crate::experiment::batches::Batch;
use crate::experiment::design::days;
use crate::experiment::mixes::reading::{Compared, Joined, Next, ResponseCompared};
use crate::experiment::mixes::{Mixes, shows};
use crate::experiment::results_told::{response_head, whole};
use crate::experiment::told::{Told, basis, coarse_told, kilograms};
use crate::experiment::{Experiment, Response};

/// What a plan of named mixes is and what it can show.
pub fn plan_told(experiment: &Experiment, mixes: &Mixes, batches: &[Batch]) -> Told {
    let head = Said::new("experiment-plan-head")
        .with("name", experiment.name.as_str())
        .with("batches", batches.len())
        .with("mass", kilograms(experiment))
        .with("different", mixes.each.len());
    let mut lines = vec![
        Said::new(basis(experiment)),
        Said::new("experiment-order").with("seed", experiment.seed.to_string()),
        Said::new("experiment-mixes-made")
            .with("times", mixes.times)
            .with("names", names(mixes, 0..mixes.each.len())),
    ];
    if days(batches) > 1 {
        lines.push(Said::new("experiment-mixes-days"));
    }
    lines.extend(
        shows(batches, mixes)
            .map(|times| Said::new("experiment-mixes-shows").with("times", rounded(times, 2))),
    );
    let mut cautions = coarse_told(experiment, batches);
    cautions.push(Said::new("experiment-dust"));
    Told {
        head,
        lines,
        cautions,
    }
}

/// What results say: the whole, each response, what to make next.
pub fn read_told(
    experiment: &Experiment,
    mixes: &Mixes,
    batches: &[Batch],
    found: &Compared,
) -> Vec<Told> {
    let mut told = vec![whole(experiment, batches, &found.open)];
    let each = experiment.responses.iter().zip(&found.responses);
    told.extend(each.map(|(response, one)| response_told(response, mixes, one)));
    told.extend(found.joined.iter().map(|one| joined_told(mixes, one)));
    let wishes = experiment.responses.iter();
    if wishes.clone().any(|one| one.good_end().is_some()) {
        told.push(next_told(mixes, found));
    }
    told
}

fn response_told(response: &Response, mixes: &Mixes, read: &ResponseCompared) -> Told {
    let lines = match &read.judged {
        _ if read.results.is_empty() => vec![Said::new("experiment-unread-none")],
        Ok(found) => judged_told(response, mixes, read, found),
        Err(error) => vec![unjudged(mixes, error)],
    };
    Told {
        head: response_head(response, &read.results),
        lines,
        cautions: Vec::new(),
    }
}

fn judged_told(
    response: &Response,
    mixes: &Mixes,
    read: &ResponseCompared,
    found: &Verdict,
) -> Vec<Said> {
    let name = |mix: usize| mixes.each[mix].name.as_str();
    let noise = Said::new("experiment-mix-noise")
        .with("noise", response.shown(found.noise))
        .with("spare", found.degrees);
    let mut lines = vec![noise];
    lines.extend((0..mixes.each.len()).map(|mix| {
        Said::new("experiment-mix-mean")
            .with("mix", name(mix))
            .with("value", response.shown(found.means[mix]))
            .with("within", response.shown(found.around[mix]))
            .with("count", read.counts[mix])
    }));
    if response.good_end().is_none() {
        lines.push(Said::new("experiment-unnamed-range"));
        return lines;
    }
    lines.extend(found.leads.iter().map(|lead| {
        Said::new("experiment-mix-lead")
            .with("leading", name(found.leading))
            .with("other", name(lead.over))
            .with("by", response.shown(lead.by))
            .with("within", response.shown(lead.within))
    }));
    lines.push(match read.winner {
        Some(mix) => Said::new("experiment-mix-winner")
            .with("mix", name(mix))
            .with("value", response.shown(found.means[mix]))
            .with("within", response.shown(found.around[mix])),
        None => Said::new("experiment-mix-unnamed")
            .with("mix", name(found.leading))
            .with("others", names(mixes, found.not_told_apart.iter().copied()))
            .with("chance", rounded((found.chance * 100.0).ceil(), 3)),
    });
    lines
}

fn unjudged(mixes: &Mixes, error: &VerdictError) -> Said {
    match error {
        VerdictError::NoResult(mix) => {
            let mix = mixes.each[mix - 1].name.as_str();
            Said::new("experiment-mix-unmeasured").with("mix", mix)
        }
        VerdictError::NothingRepeated => Said::new("experiment-mix-unrepeated"),
        VerdictError::RepeatsAlike => Said::new("experiment-mix-alike"),
        VerdictError::DaysHideMixes => Said::new("experiment-mix-days-hide"),
        other => Said::typed(other.to_string()),
    }
}

fn joined_told(mixes: &Mixes, joined: &Joined) -> Told {
    let mut order: Vec<usize> = (0..joined.mixes.len()).collect();
    order.sort_by(|one, other| joined.mixes[*other].0.total_cmp(&joined.mixes[*one].0));
    let line = |mix: usize| {
        let share = (joined.mixes[mix].0 * 100.0).round();
        Said::new("experiment-mix-met")
            .with("mix", mixes.each[mix].name.as_str())
            .with("share", rounded(share, 3))
    };
    let limits = joined.taken_from_results.join(", ");
    let limits =
        (!limits.is_empty()).then(|| Said::new("experiment-joined-results").with("names", limits));
    let unsure = Said::new("experiment-mix-met-unsure");
    Told {
        head: Said::new("experiment-joined"),
        lines: order.into_iter().map(line).collect(),
        cautions: [unsure].into_iter().chain(limits).collect(),
    }
}

fn next_told(mixes: &Mixes, found: &Compared) -> Told {
    let lines = match &found.next {
        Next::Measure => vec![Said::new("experiment-mix-next-measure")],
        Next::Nothing => vec![Said::new("experiment-mix-next-nothing")],
        Next::Again {
            mixes: again,
            in_all,
        } => {
            let list = names(mixes, again.iter().copied());
            let mut lines = vec![Said::new("experiment-mix-next-again").with("mixes", list)];
            lines.extend(match in_all {
                Some(times) => Some(Said::new("experiment-mix-next-in-all").with("times", *times)),
                None => all_judged(found).then(|| Said::new("experiment-mix-next-small")),
            });
            let how = Said::new("experiment-mix-next-how").with("count", again.len());
            lines.push(how);
            lines
        }
    };
    Told {
        head: Said::new("experiment-next"),
        lines,
        cautions: Vec::new(),
    }
}

fn all_judged(found: &Compared) -> bool {
    found.responses.iter().all(|one| one.judged.is_ok())
}

fn names(mixes: &Mixes, places: impl Iterator<Item = usize>) -> String {
    let names: Vec<&str> = places.map(|mix| mixes.each[mix].name.as_str()).collect();
    names.join(", ")
}
