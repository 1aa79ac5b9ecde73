//! What results say, as messages for any language.

use job::words::said::Said;
use measure::text::rounded;
use trials::fit::FitError;

use crate::experiment::batches::Batch;
use crate::experiment::reading::joined::Joined;
use crate::experiment::reading::{Effect, Fitted, Read, ResponseRead, Unnamed, Unread};
use crate::experiment::told::{Told, hidden, mix};
use crate::experiment::{Experiment, Response};

/// What results say: the whole, each response, all together, what to make next.
pub fn read_told(experiment: &Experiment, batches: &[Batch], read: &Read) -> Vec<Told> {
    // All responses of a batch have the same terms behind theirs, so one tells them for all.
    let fitted = read
        .responses
        .iter()
        .find_map(|one| one.fitted.as_ref().ok());
    let mut told = vec![Told {
        cautions: fitted.map_or_else(Vec::new, |one| one.hidden.iter().map(hidden).collect()),
        ..whole(experiment, batches, &read.open)
    }];
    let each = experiment.responses.iter().zip(&read.responses);
    told.extend(each.map(|(response, one)| response_told(experiment, response, one)));
    told.extend(read.joined.iter().map(|one| joined_told(experiment, one)));
    told.push(next_told(experiment, read));
    told
}

/// How many batches are measured, and which are not.
pub(super) fn whole(experiment: &Experiment, batches: &[Batch], open: &[usize]) -> Told {
    let head = Said::new("experiment-read-head")
        .with("name", experiment.name.as_str())
        .with("measured", batches.len() - open.len())
        .with("batches", batches.len());
    let open: Vec<String> = open.iter().map(usize::to_string).collect();
    let open =
        (!open.is_empty()).then(|| Said::new("experiment-open").with("list", open.join(", ")));
    let weighed = batches.iter().filter(|one| one.weighed.is_some()).count();
    let weighed = (weighed > 0).then(|| {
        let counts = match experiment.mixes {
            Some(_) => "experiment-weighed-mixes",
            None => "experiment-weighed",
        };
        Said::new(counts).with("count", weighed)
    });
    Told {
        head,
        lines: open.into_iter().chain(weighed).collect(),
        cautions: Vec::new(),
    }
}

/// From where to where the results of a response go.
pub(super) fn response_head(response: &Response, results: &[f64]) -> Said {
    let least = results.iter().copied().fold(f64::INFINITY, f64::min);
    let most = results.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    match results.is_empty() {
        true => Said::new("experiment-response-none").with("name", response.name.as_str()),
        false => Said::new("experiment-response")
            .with("name", response.name.as_str())
            .with("count", results.len())
            .with("low", response.shown(least))
            .with("high", response.shown(most)),
    }
}

fn response_told(experiment: &Experiment, response: &Response, read: &ResponseRead) -> Told {
    let mut told = Told {
        head: response_head(response, &read.results),
        lines: Vec::new(),
        cautions: Vec::new(),
    };
    told.lines.extend(match &read.repeats {
        Some(noise) => Some(
            Said::new("experiment-noise-repeats")
                .with("noise", response.shown(noise.deviation))
                .with("low", response.shown(noise.low))
                .with("high", response.shown(noise.high)),
        ),
        None if read.results.is_empty() => Some(Said::new("experiment-unread-none")),
        None => read
            .fitted
            .is_ok()
            .then(|| Said::new("experiment-noise-unrepeated")),
    });
    match &read.fitted {
        Ok(fitted) => fitted_told(experiment, response, fitted, &mut told),
        Err(Unread::NoResults) => {}
        Err(error) => told.cautions.push(unread(error)),
    }
    told
}

fn unread(error: &Unread) -> Said {
    match error {
        Unread::NoResults => Said::new("experiment-unread-none"),
        Unread::AllAlike => Said::new("experiment-unread-alike"),
        Unread::NeverVaried { name, value } => Said::new("experiment-unread-never")
            .with("name", name.as_str())
            .with("value", value.as_str()),
        Unread::Fit(error) => unfitted(error),
    }
}

fn unfitted(error: &FitError) -> Said {
    let few = |batches: usize, different: usize, terms: usize| {
        Said::new("experiment-unread-few")
            .with("batches", batches)
            .with("different", different)
            .with("terms", terms)
    };
    match error {
        FitError::FewerRunsThanTerms { runs, terms } => few(*runs, *runs, *terms),
        FitError::FewerDifferentThanTerms {
            runs,
            different,
            terms,
        } => few(*runs, *different, *terms),
        FitError::NotToldApart(made) => {
            Said::new("experiment-unread-together").with("term", made.term.as_str())
        }
        other => Said::typed(other.to_string()),
    }
}

fn fitted_told(experiment: &Experiment, response: &Response, fitted: &Fitted, told: &mut Told) {
    let (lines, cautions) = (&mut told.lines, &mut told.cautions);
    if let Some(noise) = fitted.fit.noise {
        let left = Said::new("experiment-noise-left").with("noise", response.shown(noise));
        lines.push(left.with("spare", fitted.fit.degrees));
    }
    lines.extend(taken_up(fitted));
    match &fitted.lack {
        Ok(lack) => {
            let chance = rounded(lack.chance * 100.0, 2);
            match fitted.unnamed {
                Some(Unnamed::WrongShape(_)) => {
                    cautions.push(Said::new("experiment-lack").with("chance", chance));
                }
                _ => lines.push(Said::new("experiment-lack-none").with("chance", chance)),
            }
        }
        Err(_) => lines.push(Said::new("experiment-lack-unjudged")),
    }
    lines.extend(fitted.effects.iter().map(|one| effect(response, one)));
    lines.extend(fitted.days_apart.iter().filter_map(|one| {
        let said = Said::new("experiment-day-apart").with("day", one.name.as_str());
        let said = said.with("change", response.shown(one.change));
        Some(said.with("within", response.shown(one.within?)))
    }));
    cautions.extend(fitted.odd.map(|odd| {
        Said::new("experiment-odd")
            .with("batch", odd.batch)
            .with("measured", response.shown(odd.measured))
            .with("foretold", response.shown(odd.foretold))
    }));
    lines.extend(winner(experiment, response, fitted));
}

fn taken_up(fitted: &Fitted) -> Option<Said> {
    let percent = |share: f64| rounded(share * 100.0, 3);
    let taken = percent(fitted.fit.taken_up?);
    Some(match fitted.fit.foretold? {
        foretold if foretold > 0.0 => Said::new("experiment-foretold")
            .with("share", taken)
            .with("foretold", percent(foretold)),
        _ => Said::new("experiment-foretold-badly").with("share", taken),
    })
}

fn effect(response: &Response, one: &Effect) -> Said {
    match one.within {
        Some(within) => Said::new("experiment-effect")
            .with("name", one.name.as_str())
            .with("change", response.shown(one.change))
            .with("within", response.shown(within)),
        None => Said::new("experiment-effect-unsure")
            .with("name", one.name.as_str())
            .with("change", response.shown(one.change)),
    }
}

fn winner(experiment: &Experiment, response: &Response, fitted: &Fitted) -> Vec<Said> {
    let mut lines = Vec::new();
    if let Some(best) = &fitted.best {
        let mix = mix(experiment, &best.point);
        let value = response.shown(best.expected.value);
        match (fitted.unnamed, best.expected.mean) {
            (None, Some((low, high))) => {
                let low = response.shown(low);
                let said = Said::new("experiment-winner").with("mix", mix);
                let said = said.with("value", value).with("low", low);
                lines.push(said.with("high", response.shown(high)));
                let share = rounded((best.as_good * 100.0).round().max(1.0), 3);
                lines.push(Said::new("experiment-as-good").with("share", share));
            }
            _ => {
                let said = Said::new("experiment-leading").with("mix", mix);
                lines.push(said.with("value", value));
            }
        }
    }
    lines.extend(fitted.unnamed.map(unnamed));
    lines
}

fn unnamed(why: Unnamed) -> Said {
    match why {
        Unnamed::Chance(chance) => {
            let chance = rounded((chance * 100.0).ceil(), 3);
            Said::new("experiment-unnamed-chance").with("chance", chance)
        }
        Unnamed::NoneToSpare => Said::new("experiment-unnamed-spare"),
        Unnamed::WrongShape(_) => Said::new("experiment-unnamed-shape"),
        Unnamed::StepTooCoarse => Said::new("experiment-unnamed-step"),
        Unnamed::RangeWanted => Said::new("experiment-unnamed-range"),
        Unnamed::NothingKnown => Said::new("experiment-unnamed-unknown"),
    }
}

fn joined_told(experiment: &Experiment, joined: &Joined) -> Told {
    let line = match &joined.best {
        Some(best) => Said::new("experiment-joined-mix")
            .with("mix", mix(experiment, &best.point))
            .with("share", rounded((best.together * 100.0).round(), 3)),
        None => Said::new("experiment-joined-none"),
    };
    let from_results = joined.taken_from_results.join(", ");
    let from_results = (!from_results.is_empty())
        .then(|| Said::new("experiment-joined-results").with("names", from_results));
    Told {
        head: Said::new("experiment-joined"),
        lines: vec![line],
        cautions: from_results.into_iter().collect(),
    }
}

fn next_told(experiment: &Experiment, read: &Read) -> Told {
    let mut lines: Vec<Said> = read
        .next
        .better
        .iter()
        .map(|one| {
            let each = experiment.responses.iter().zip(&one.expected);
            let expected = each.map(|(response, (mean, deviation))| {
                Said::new("experiment-next-expected")
                    .with("name", response.name.as_str())
                    .with("value", response.shown(*mean))
                    .with("deviation", response.shown(*deviation))
            });
            let gain = match experiment.responses.as_slice() {
                [only] if only.good_end().is_some() => only.shown(one.improvement),
                _ => format!("{} %", rounded(one.improvement * 100.0, 2)),
            };
            Said::new("experiment-next-better")
                .with("mix", mix(experiment, &one.point))
                .with("expected", expected.collect::<Vec<_>>())
                .with("gain", gain)
        })
        .collect();
    if let (Some(one), [only]) = (&read.next.believed, experiment.responses.as_slice())
        && let Some((mean, deviation)) = one.expected.first()
    {
        let believed =
            Said::new("experiment-next-believed").with("mix", mix(experiment, &one.point));
        let believed = believed.with("value", only.shown(*mean));
        lines.insert(0, believed.with("deviation", only.shown(*deviation)));
    }
    if lines.is_empty() {
        lines.push(Said::new("experiment-next-few"));
    }
    lines.extend(
        read.next
            .teaches
            .as_ref()
            .map(|point| Said::new("experiment-next-teaches").with("mix", mix(experiment, point))),
    );
    lines.push(Said::new("experiment-next-how"));
    Told {
        head: Said::new("experiment-next"),
        lines,
        cautions: Vec::new(),
    }
}
