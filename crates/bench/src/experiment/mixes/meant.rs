//! Named mixes as typed, checked.

use measure::text::plain_number;

use crate::experiment::file::{Amount, ExperimentFile, MixFile, PartFile, SettingFile};
use crate::experiment::meant::{own_names, parts};
use crate::experiment::mixes::trouble::MixError;
use crate::experiment::mixes::{Mix, Mixes};
use crate::experiment::trouble::ExperimentError;
use crate::experiment::{Basis, Counted, Part, Setting};

/// How often each mix is made where nothing is said: with two, a mix has to be better by many
/// noises to be named; from four on, a morning is too short for five mixes.
const TIMES: usize = 3;

/// What named mixes make of an experiment.
pub(in crate::experiment) struct Named {
    /// The mixes.
    pub(in crate::experiment) mixes: Mixes,
    /// The parts, each from its least to its largest amount of any mix.
    pub(in crate::experiment) parts: Vec<Part>,
    /// What amounts count.
    pub(in crate::experiment) counted: Counted,
    /// The settings, each from its least to its largest value of any mix.
    pub(in crate::experiment) settings: Vec<Setting>,
}

/// The mixes of an experiment with its parts, which reach from the least to the largest amount of
/// any mix; nothing where no mix is named.
///
/// # Errors
///
/// The first thing that is wrong, with what to write instead.
pub(in crate::experiment) fn mixes_meant(
    typed: &ExperimentFile,
    basis: Basis,
) -> Result<Option<Named>, ExperimentError> {
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
    let settings = settings_meant(typed)?;
    let names = typed.mix.iter().map(|mix| mix.name.clone()).enumerate();
    let each = names.zip(&made).map(|((at, name), (parts, _))| Mix {
        name,
        amounts: parts.iter().map(|part| part.low).collect(),
        settings: settings.iter().map(|(_, values)| values[at]).collect(),
    });
    let each: Vec<Mix> = each.collect();
    Ok(Some(Named {
        parts: reaching(&made[0].0, &each),
        mixes: Mixes { each, times },
        counted,
        settings: settings.into_iter().map(|(setting, _)| setting).collect(),
    }))
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

/// Every setting with its value in each mix: numbers, or ways in the order in which they come up.
fn settings_meant(typed: &ExperimentFile) -> Result<Vec<(Setting, Vec<f64>)>, ExperimentError> {
    let in_mix = |mix: &MixFile, error: MixError| MixError::InMix {
        mix: mix.name.clone(),
        error: Box::new(error.into()),
    };
    for mix in &typed.mix {
        let known = |name: &&String| typed.setting.iter().any(|one| one.name == **name);
        if let Some(name) = mix.settings.keys().find(|name| !known(name)) {
            return Err(in_mix(mix, MixError::NoSuchSetting(name.clone())).into());
        }
    }
    let one = |setting: &SettingFile| {
        let name = || setting.name.clone();
        if setting.range.is_some() || setting.choices.is_some() || setting.steps.is_some() {
            return Err(MixError::SettingOfMixes(name()).into());
        }
        let mut typed_values = Vec::new();
        for mix in &typed.mix {
            let value = mix.settings.get(&setting.name);
            typed_values.push(value.ok_or_else(|| in_mix(mix, MixError::NoSetting(name())))?);
        }
        Ok(valued(setting, &typed_values))
    };
    typed.setting.iter().map(one).collect()
}

fn valued(setting: &SettingFile, typed: &[&Amount]) -> (Setting, Vec<f64>) {
    let number = |amount: &&Amount| match amount {
        Amount::Number(number) => Some(*number),
        Amount::Text(text) => plain_number(text),
    };
    let numbers: Option<Vec<f64>> = typed.iter().map(number).collect();
    let mut ways: Vec<String> = Vec::new();
    let values = numbers.unwrap_or_else(|| {
        let place = |amount: &&Amount| {
            let way = match amount {
                Amount::Number(number) => number.to_string(),
                Amount::Text(text) => text.trim().to_owned(),
            };
            let known = ways.iter().position(|known| *known == way);
            known.unwrap_or_else(|| {
                ways.push(way);
                ways.len() - 1
            }) as f64
        };
        typed.iter().map(place).collect()
    });
    let own = Setting {
        name: setting.name.clone(),
        low: values.iter().copied().fold(f64::INFINITY, f64::min),
        high: values.iter().copied().fold(f64::NEG_INFINITY, f64::max),
        unit: setting.unit.clone(),
        choices: (!ways.is_empty()).then_some(ways),
        by_factors: false,
    };
    (own, values)
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
