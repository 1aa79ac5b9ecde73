//! Named mixes as typed, checked.

use crate::experiment::file::{Amount, ExperimentFile, MixFile, PartFile};
use crate::experiment::meant::{own_names, parts};
use crate::experiment::mixes::trouble::MixError;
use crate::experiment::mixes::{Mix, Mixes};
use crate::experiment::trouble::ExperimentError;
use crate::experiment::{Basis, Counted, Part};

/// How often each mix is made where nothing is said: with two, a mix has to be better by many
/// noises to be named; from four on, a morning is too short for five mixes.
const TIMES: usize = 3;

/// The mixes of an experiment with its parts, which reach from the least to the largest amount of
/// any mix; nothing where no mix is named.
///
/// # Errors
///
/// The first thing that is wrong, with what to write instead.
pub(in crate::experiment) fn mixes_meant(
    typed: &ExperimentFile,
    basis: Basis,
) -> Result<Option<(Mixes, Vec<Part>, Counted)>, ExperimentError> {
    if typed.mix.is_empty() {
        return match typed.times {
            Some(_) => Err(MixError::TimesWithoutMixes.into()),
            None => Ok(None),
        };
    }
    if !(2..=8).contains(&typed.mix.len()) {
        return Err(MixError::Count(typed.mix.len()).into());
    }
    if let Some(key) = beside(typed) {
        return Err(MixError::BesideMixes(key).into());
    }
    let times = times(typed)?;
    own_names(typed.mix.iter().map(|mix| &mix.name))?;
    let mut made: Vec<(Vec<Part>, Counted)> = Vec::new();
    for mix in &typed.mix {
        let one = mix_meant(typed, mix, basis).map_err(|error| MixError::InMix {
            mix: mix.name.clone(),
            error: Box::new(error),
        })?;
        made.push(one);
    }
    let counted = one_count(typed, &made)?;
    let names = typed.mix.iter().map(|mix| mix.name.clone());
    let each = names.zip(&made).map(|(name, (parts, _))| Mix {
        name,
        amounts: parts.iter().map(|part| part.low).collect(),
    });
    let each: Vec<Mix> = each.collect();
    let parts = reaching(&made[0].0, &each);
    Ok(Some((Mixes { each, times }, parts, counted)))
}

/// The first key that means nothing beside mixes.
fn beside(typed: &ExperimentFile) -> Option<&'static str> {
    let later = typed.later.is_some() || typed.part.iter().any(|part| part.later);
    let keys = [
        ("batches", typed.batches.is_some()),
        ("repeats", typed.repeats > 0),
        ("aim", typed.aim.is_some()),
        ("shape", typed.shape.is_some()),
        ("later", later),
        ("[[setting]]", !typed.setting.is_empty()),
    ];
    keys.into_iter()
        .find_map(|(key, is_there)| is_there.then_some(key))
}

fn times(typed: &ExperimentFile) -> Result<usize, ExperimentError> {
    let times = typed.times.unwrap_or(TIMES);
    if !(2..=20).contains(&times) {
        return Err(MixError::Times(times).into());
    }
    let days = typed.days;
    match (1..=times).contains(&days) {
        true => Ok(times),
        false => Err(MixError::Days { days, times }.into()),
    }
}

/// A mix by itself: its own amounts, those of the parts where it gives none, and nought elsewhere.
fn mix_meant(
    typed: &ExperimentFile,
    mix: &MixFile,
    basis: Basis,
) -> Result<(Vec<Part>, Counted), ExperimentError> {
    let known = |name: &&String| typed.part.iter().any(|part| part.name == **name);
    if let Some(name) = mix.amounts.keys().find(|name| !known(name)) {
        return Err(MixError::NoSuchPart(name.clone()).into());
    }
    let given = |part: &PartFile| {
        mix.amounts
            .get(&part.name)
            .or(part.amount.as_ref())
            .cloned()
    };
    let in_percent = |amount: &Amount| matches!(amount, Amount::Text(text) if text.contains('%'));
    let is_percent = typed
        .part
        .iter()
        .filter_map(given)
        .any(|one| in_percent(&one));
    let none = match is_percent {
        true => Amount::Text("0 %".to_owned()),
        false => Amount::Number(0.0),
    };
    let own = typed.part.iter().map(|part| PartFile {
        amount: given(part).or_else(|| Some(none.clone())),
        ..part.clone()
    });
    let (parts, counted) = parts(&own.collect::<Vec<_>>(), basis)?;
    match parts.iter().find(|part| part.varies()) {
        Some(part) => Err(MixError::RangeInMix(part.name.clone()).into()),
        None => Ok((parts, counted)),
    }
}

/// All mixes count alike.
fn one_count(
    typed: &ExperimentFile,
    made: &[(Vec<Part>, Counted)],
) -> Result<Counted, ExperimentError> {
    let of = |wanted: Counted| {
        let place = made.iter().position(|(_, counted)| *counted == wanted)?;
        Some(typed.mix[place].name.clone())
    };
    match (of(Counted::Percent), of(Counted::Parts)) {
        (Some(percent), Some(parts)) => Err(ExperimentError::PartsAndPercent { percent, parts }),
        (Some(_), None) => Ok(Counted::Percent),
        _ => Ok(Counted::Parts),
    }
}

fn reaching(parts: &[Part], each: &[Mix]) -> Vec<Part> {
    let reach = |(at, part): (usize, &Part)| {
        let amounts = || each.iter().map(|mix| mix.amounts[at]);
        Part {
            low: amounts().fold(f64::INFINITY, f64::min),
            high: amounts().fold(f64::NEG_INFINITY, f64::max),
            ..part.clone()
        }
    };
    parts.iter().enumerate().map(reach).collect()
}
