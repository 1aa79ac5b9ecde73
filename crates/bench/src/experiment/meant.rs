//! From an experiment as typed to one as meant.

use std::collections::BTreeSet;

use measure::matter::Mass;
use measure::share::Share;
use measure::text::plain_number;
use measure::text::ranged::{Spread, spread};
use trials::region::{Component, Region, checked};
use trials::settings::SettingError;

use crate::experiment::file::{Amount, ExperimentFile, PartFile, SettingFile};
use crate::experiment::meant::response::response;
use crate::experiment::mixes::meant::mixes_meant;
use crate::experiment::trouble::ExperimentError;
use crate::experiment::{Aim, Basis, Counted, Experiment, Later, Part, Response, Setting, Shape};

mod response;

/// How far fixed per cents may miss the whole: rounding of a few parts to a tenth.
const MISSED_PERCENT: f64 = 0.5;

/// Most ways of which a setting may be one: each takes a batch of its own, and more leave none to
/// spare.
const MOST_WAYS: usize = 6;

/// What a kitchen scale tells apart, where nothing is said.
const KITCHEN_STEP_G: f64 = 1.0;

impl ExperimentFile {
    /// Checks an experiment and fills in what was left out.
    ///
    /// # Errors
    ///
    /// The first thing that is wrong, with what to write instead.
    pub fn meant(&self) -> Result<Experiment, ExperimentError> {
        let basis = basis(self.basis.as_deref())?;
        let named = mixes_meant(self, basis)?;
        let (parts, counted) = match &named {
            Some(named) => (named.parts.clone(), named.counted),
            None => parts(&self.part, basis)?,
        };
        let settings: Vec<Setting> = match named {
            Some(ref named) => named.settings.clone(),
            None => self.setting.iter().map(setting).collect::<Result<_, _>>()?,
        };
        let mixes = named.map(|named| named.mixes);
        let responses: Vec<Response> = self
            .response
            .iter()
            .map(response)
            .collect::<Result<_, _>>()?;
        names(&parts, &settings, &responses)?;
        if responses.is_empty() {
            return Err(ExperimentError::NoResponse);
        }
        if mixes.is_none() && !parts.iter().any(Part::varies) && settings.is_empty() {
            return Err(ExperimentError::NothingVaries);
        }
        if self.batch.value <= Mass::from_g(0.0) {
            let (name, key) = (self.name.clone(), "batch");
            return Err(ExperimentError::NotAboveNought { name, key });
        }
        let later = self.later.as_ref().map(|one| Later {
            batches: one.batches,
            repeats: one.repeats,
        });
        let comes_later = parts.iter().any(|part| part.later && part.varies());
        let has_later = later.is_some();
        if comes_later != has_later
            || (has_later && (counted == Counted::Percent || self.days != 1))
        {
            return Err(ExperimentError::Later);
        }
        let step = self.scale_step.as_ref().map(|step| step.value);
        Ok(Experiment {
            name: self.name.clone(),
            seed: self.seed,
            batch: self.batch.value,
            basis,
            scale_step: step.unwrap_or(Mass::from_g(KITCHEN_STEP_G)),
            batches: match &mixes {
                Some(mixes) => mixes.each.len() * mixes.times,
                None => self.batches.ok_or(ExperimentError::NoBatches)?,
            },
            repeats: match &mixes {
                Some(mixes) => mixes.each.len() * (mixes.times - 1),
                None => self.repeats,
            },
            days: self.days,
            later,
            aim: aim(self.aim.as_deref())?,
            shape: self.shape.as_deref().map(shape).transpose()?,
            counted,
            mixes,
            parts,
            settings,
            responses,
        })
    }
}

fn basis(typed: Option<&str>) -> Result<Basis, ExperimentError> {
    match typed {
        None => Err(ExperimentError::NoBasis),
        Some("dry") => Ok(Basis::Dry),
        Some("as it lies") => Ok(Basis::AsItLies),
        Some(other) => Err(ExperimentError::Basis(other.to_owned())),
    }
}

fn aim(typed: Option<&str>) -> Result<Aim, ExperimentError> {
    match typed {
        None | Some("best") => Ok(Aim::Best),
        Some("learn") => Ok(Aim::Learn),
        Some(other) => Err(unknown("aim", other, "best or learn")),
    }
}

fn shape(typed: &str) -> Result<Shape, ExperimentError> {
    match typed {
        "plane" => Ok(Shape::Plane),
        "twisted" => Ok(Shape::Twisted),
        "bent" => Ok(Shape::Bent),
        other => Err(unknown("shape", other, "plane, twisted or bent")),
    }
}

fn unknown(key: &'static str, typed: &str, taken: &'static str) -> ExperimentError {
    ExperimentError::Word {
        key,
        typed: typed.to_owned(),
        taken,
    }
}

/// The parts of a mix, checked together.
pub(super) fn parts(
    typed: &[PartFile],
    basis: Basis,
) -> Result<(Vec<Part>, Counted), ExperimentError> {
    if typed.len() < 2 {
        return Err(ExperimentError::TooFewParts);
    }
    let mut parts = Vec::new();
    let mut kinds: Vec<(String, bool)> = Vec::new();
    for one in typed {
        let given = one.amount.as_ref();
        let given = given.ok_or_else(|| ExperimentError::NoAmount(one.name.clone()))?;
        let (low, high, is_percent) = amount(&one.name, given)?;
        kinds.push((one.name.clone(), is_percent));
        let moisture = match &one.moisture {
            Some(share) => moisture(&one.name, share)?,
            None => 0.0,
        };
        parts.push(Part {
            name: one.name.clone(),
            low,
            high,
            is_water: one.is_water,
            moisture,
            later: one.later,
            by_factors: by_factors(&one.name, one.steps.as_deref(), low)?,
        });
    }
    let percent = kinds.iter().find(|(_, is_percent)| *is_percent);
    let plain = kinds.iter().find(|(_, is_percent)| !*is_percent);
    let counted = match (percent, plain) {
        (Some((percent, _)), Some((parts, _))) => {
            let (percent, parts) = (percent.clone(), parts.clone());
            return Err(ExperimentError::PartsAndPercent { percent, parts });
        }
        (Some(_), None) => Counted::Percent,
        _ => Counted::Parts,
    };
    water(&parts, basis)?;
    match counted {
        Counted::Percent => {
            if let Some(part) = parts.iter().find(|part| part.by_factors) {
                return Err(ExperimentError::FactorsInPercent(part.name.clone()));
            }
            whole(&parts)?;
        }
        Counted::Parts if parts.iter().all(|part| part.low <= 0.0) => {
            return Err(ExperimentError::NothingFixed);
        }
        Counted::Parts => {}
    }
    Ok((parts, counted))
}

/// Low and high end, and whether they are in per cent.
fn amount(name: &str, typed: &Amount) -> Result<(f64, f64, bool), ExperimentError> {
    let (text, is_percent) = match typed {
        Amount::Number(number) => (number.to_string(), false),
        Amount::Text(text) => (text.replace('%', " "), text.contains('%')),
    };
    let refused = || ExperimentError::Amount {
        name: name.to_owned(),
        typed: match typed {
            Amount::Number(number) => number.to_string(),
            Amount::Text(text) => text.clone(),
        },
    };
    let (low, high) = ends(&text).ok_or_else(refused)?;
    let most = if is_percent { 100.0 } else { f64::MAX };
    if low > high && low <= most && high >= 0.0 {
        let (name, typed) = (name.to_owned(), text.trim().to_owned());
        return Err(ExperimentError::Falling { name, typed });
    }
    match 0.0 <= low && low <= high && high <= most {
        true => Ok((low, high, is_percent)),
        false => Err(refused()),
    }
}

/// The two ends of a range, or twice the same number.
fn ends(text: &str) -> Option<(f64, f64)> {
    match spread(text.trim()) {
        Spread::One(one) => plain_number(one).map(|one| (one, one)),
        Spread::Between { low, high, .. } => Some((plain_number(low)?, plain_number(high)?)),
        Spread::Around { likely, margin } => {
            let (likely, margin) = (plain_number(likely)?, plain_number(margin)?);
            Some((likely - margin, likely + margin))
        }
    }
}

fn moisture(name: &str, share: &Share) -> Result<f64, ExperimentError> {
    let wet = match share.of.split_whitespace().next() {
        Some("wet") => share.ratio,
        Some("dry") => sand::moisture::wet_from_dry(share.ratio),
        _ => return Err(ExperimentError::Moisture(name.to_owned())),
    };
    match wet < 1.0 {
        true => Ok(wet),
        false => Err(ExperimentError::Moisture(name.to_owned())),
    }
}

fn water(parts: &[Part], basis: Basis) -> Result<(), ExperimentError> {
    let mut waters = parts.iter().filter(|part| part.is_water);
    let (first, second) = (waters.next(), waters.next());
    if let (Some(one), Some(other)) = (first, second) {
        let (one, other) = (one.name.clone(), other.name.clone());
        return Err(ExperimentError::TwoWaters(one, other));
    }
    let damp = parts.iter().find(|part| part.moisture > 0.0);
    match (damp, basis, first) {
        (Some(damp), Basis::AsItLies, _) => {
            Err(ExperimentError::MoistureAsItLies(damp.name.clone()))
        }
        (Some(damp), _, _) if damp.is_water => Err(ExperimentError::Moisture(damp.name.clone())),
        (Some(damp), _, None) => Err(ExperimentError::NoWater(damp.name.clone())),
        _ => Ok(()),
    }
}

/// Checks that per cents leave room for a whole.
fn whole(parts: &[Part]) -> Result<(), ExperimentError> {
    let varying: Vec<&Part> = parts.iter().filter(|part| part.varies()).collect();
    if let [one] = varying.as_slice() {
        return Err(ExperimentError::OneVaries(one.name.clone()));
    }
    if varying.is_empty() {
        let sum: f64 = parts.iter().map(|part| part.low).sum();
        let missed = (sum - 100.0).abs();
        return match missed <= MISSED_PERCENT {
            true => Ok(()),
            false => Err(ExperimentError::DoNotAddUp(measure::text::rounded(sum, 4))),
        };
    }
    let component = |part: &Part| Component {
        name: part.name.clone(),
        low: part.low / 100.0,
        high: part.high / 100.0,
    };
    let region = Region {
        components: parts.iter().map(component).collect(),
        limits: Vec::new(),
    };
    checked(&region).map_err(ExperimentError::Percent)
}

fn setting(typed: &SettingFile) -> Result<Setting, ExperimentError> {
    let name = typed.name.clone();
    let how = || ExperimentError::SettingHow(name.clone());
    let (low, high, choices) = match (&typed.range, &typed.choices) {
        (Some(range), None) => {
            let (low, high) = ends(range).ok_or_else(how)?;
            (low, high, None)
        }
        (None, Some(choices)) => {
            let ways: BTreeSet<&str> = choices.iter().map(|way| way.trim()).collect();
            let told_apart = ways.len() == choices.len() && !ways.contains("");
            if !(2..=MOST_WAYS).contains(&choices.len()) || !told_apart {
                return Err(how());
            }
            (0.0, (choices.len() - 1) as f64, Some(choices.clone()))
        }
        _ => return Err(how()),
    };
    if low >= high {
        return Err(SettingError::DoesNotVary { name, low, high }.into());
    }
    Ok(Setting {
        by_factors: by_factors(&name, typed.steps.as_deref(), low)?,
        name,
        low,
        high,
        unit: typed.unit.clone(),
        choices,
    })
}

/// Whether a range is tried in even factors.
fn by_factors(name: &str, steps: Option<&str>, low: f64) -> Result<bool, ExperimentError> {
    match steps {
        None | Some("even") => Ok(false),
        Some("factors") if low > 0.0 => Ok(true),
        Some("factors") => Err(ExperimentError::FactorsFromNought(name.to_owned())),
        Some(other) => Err(unknown("steps", other, "even or factors")),
    }
}

/// Names stand in tables, so they hold no mark that parts cells, and each stands once.
fn names(
    parts: &[Part],
    settings: &[Setting],
    responses: &[Response],
) -> Result<(), ExperimentError> {
    let parts = parts.iter().map(|one| &one.name);
    let settings = settings.iter().map(|one| &one.name);
    let responses = responses.iter().map(|one| &one.name);
    own_names(parts.chain(settings).chain(responses))
}

/// Names that can stand in a table, each once.
pub(super) fn own_names<'a>(
    names: impl Iterator<Item = &'a String>,
) -> Result<(), ExperimentError> {
    let mut known = BTreeSet::from(["batch".to_owned(), "day".to_owned()]);
    for name in names {
        let marks = [',', ';', '"', '=', '\n', '\t', '\r'];
        if name.trim().is_empty() || name.trim() != name || name.contains(marks) {
            return Err(ExperimentError::Name(name.clone()));
        }
        if !known.insert(name.to_lowercase()) {
            return Err(ExperimentError::Twice(name.clone()));
        }
    }
    Ok(())
}
