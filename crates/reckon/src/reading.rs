//! From what was typed to what a law can be called with.

use std::collections::BTreeMap;

use measure::length::Length;
use measure::share::Contraction;
use measure::text::ranged::numbers;
use measure::text::shown::Rounding;
use measure::text::{System, plain_number, rounded};
use metal::alloy::Alloy;

use crate::ask::Ask;
use crate::body;
use crate::given::{Ends, Kind, Value};
use crate::input::{Input, Otherwise, Wanted};
use crate::reckoner::Reckoner;
use crate::refusal::Refusal;
use crate::worked::GivenBack;

/// An ask, read.
pub(crate) struct Reading {
    pub(crate) reckoner: &'static Reckoner,
    pub(crate) system: System,
    pub(crate) doubts: Vec<String>,
    /// Symbols of the formula with their likely values as text.
    pub(crate) symbols: Vec<(&'static str, String)>,
    items: Vec<Item>,
}

struct Item {
    input: &'static Input,
    value: Read,
    text: String,
    typed: bool,
    sources: Vec<String>,
}

enum Read {
    Range([f64; 3]),
    Fixed(Value),
}

impl Reading {
    /// Every input at its likely value.
    pub(crate) fn likely(&self) -> BTreeMap<&'static str, Value> {
        let likely = |item: &Item| match &item.value {
            Read::Range(ends) => Value::Figure(ends[1]),
            Read::Fixed(value) => value.clone(),
        };
        let items = self.items.iter();
        items.map(|item| (item.input.key, likely(item))).collect()
    }

    /// The inputs that have a width.
    pub(crate) fn ranges(&self) -> impl Iterator<Item = (&'static str, [f64; 3])> {
        self.items.iter().filter_map(|item| match &item.value {
            Read::Range(ends) if ends[0] < ends[2] => Some((item.input.key, *ends)),
            _ => None,
        })
    }

    /// What was typed, each at its likely value, by its key.
    pub(crate) fn likely_typed(&self, first: System) -> Vec<(&'static str, String)> {
        let text = |item: &Item| match item.value {
            Read::Range([_, likely, _]) => text_of(item.input, [likely; 3], first),
            Read::Fixed(_) => item.text.clone(),
        };
        let typed = self.items.iter().filter(|item| item.typed);
        typed.map(|item| (item.input.key, text(item))).collect()
    }

    pub(crate) fn input(&self, key: &str) -> Option<&'static Input> {
        let mut inputs = self.items.iter().map(|item| item.input);
        inputs.find(|input| input.key == key)
    }

    pub(crate) fn given_back(&self) -> Vec<GivenBack> {
        let back = |item: &Item| GivenBack {
            key: item.input.key,
            about: item.input.about,
            text: item.text.clone(),
            typed: item.typed,
            sources: item.sources.clone(),
        };
        self.items.iter().map(back).collect()
    }
}

/// Reads an ask.
///
/// # Errors
///
/// Where no law has the name, and where something is missing, not asked for, or cannot be read.
pub(crate) fn read(ask: &Ask) -> Result<Reading, Refusal> {
    let reckoner = crate::named(&ask.name).ok_or_else(|| Refusal::NoSuchName {
        name: ask.name.clone(),
        near: nearest(&ask.name, crate::all().map(|(_, reckoner)| reckoner.name)),
    })?;
    refuse_strangers(reckoner, ask)?;
    let mut reading = Reading {
        reckoner,
        system: System::Metric,
        doubts: Vec::new(),
        symbols: Vec::new(),
        items: Vec::new(),
    };
    let alloy = alloy_of(reckoner, ask)?;
    let mut missing = Vec::new();
    for input in reckoner.inputs {
        match item(input, ask, alloy, &mut reading)? {
            Found::Item(item) => reading.items.push(item),
            Found::Nothing => {}
            Found::Missing => missing.push(format!("{} ({})", input.key, input.about)),
        }
    }
    if missing.is_empty() {
        reading.symbols = symbols(&reading);
        return Ok(reading);
    }
    Err(Refusal::Missing {
        name: reckoner.name,
        keys: missing,
        example: reckoner.example_line(),
    })
}

enum Found {
    Item(Item),
    Nothing,
    Missing,
}

fn refuse_strangers(reckoner: &'static Reckoner, ask: &Ask) -> Result<(), Refusal> {
    let keys = || reckoner.inputs.iter().map(|input| input.key);
    let stranger = ask
        .given
        .iter()
        .find(|(key, _)| !keys().any(|known| known == key));
    match stranger {
        Some((key, _)) => Err(Refusal::NotAsked {
            name: reckoner.name,
            key: key.clone(),
            near: nearest(key, keys()),
            asks: keys().collect::<Vec<_>>().join(", "),
        }),
        None => Ok(()),
    }
}

fn alloy_of(reckoner: &Reckoner, ask: &Ask) -> Result<Option<&'static Alloy>, Refusal> {
    let asks = reckoner
        .inputs
        .iter()
        .find(|input| matches!(input.wanted, Wanted::Metal));
    let (Some(input), Some(typed)) = (asks, ask.typed("metal")) else {
        return Ok(None);
    };
    let alloy = metal::alloys::named(typed).map_err(|fault| Refusal::Not {
        key: input.key,
        typed: typed.to_owned(),
        wanted: format!("an alloy known here: {fault}"),
    })?;
    Ok(Some(alloy))
}

fn item(
    input: &'static Input,
    ask: &Ask,
    alloy: Option<&'static Alloy>,
    reading: &mut Reading,
) -> Result<Found, Refusal> {
    if let Some(typed) = ask.typed(input.key) {
        let (value, system) = value_of(input, typed)?;
        if reading.items.iter().all(|item| !item.typed) {
            reading.system = system.unwrap_or(reading.system);
        }
        return Ok(Found::Item(Item {
            input,
            value,
            text: typed.trim().to_owned(),
            typed: true,
            sources: Vec::new(),
        }));
    }
    match input.otherwise {
        Otherwise::Needed => Ok(Found::Missing),
        Otherwise::Nothing => Ok(Found::Nothing),
        Otherwise::Text(text, source) => {
            let (value, _) = value_of(input, text)?;
            Ok(Found::Item(Item {
                input,
                value,
                text: text.to_owned(),
                typed: false,
                sources: vec![source.to_owned()],
            }))
        }
        Otherwise::OfMetal(property) => {
            let Some((ends, sources)) = alloy.and_then(|alloy| property.of(alloy)) else {
                return Ok(Found::Missing);
            };
            Ok(Found::Item(Item {
                input,
                text: text_of(input, ends, reading.system),
                value: Read::Range(ends),
                typed: false,
                sources,
            }))
        }
    }
}

fn value_of(input: &'static Input, typed: &str) -> Result<(Read, Option<System>), Refusal> {
    let not = |wanted: &str| Refusal::Not {
        key: input.key,
        typed: typed.to_owned(),
        wanted: wanted.to_owned(),
    };
    let fixed = |value: Value| Ok((Read::Fixed(value), None));
    let range = |band: measure::band::Band<f64>| {
        let ends = [band.low(), band.likely(), band.high()];
        Ok((Read::Range(ends), None))
    };
    match input.wanted {
        Wanted::Quantity(kind) => {
            let (ends, system) = quantity(input, &kind, typed)?;
            Ok((Read::Range(ends), Some(system)))
        }
        Wanted::Quantities(kind) => {
            let each = |text: &str| quantity(input, &kind, text).map(|(ends, _)| ends[1]);
            let all: Result<Vec<f64>, Refusal> = list(typed).map(each).collect();
            fixed(Value::Figures(all?))
        }
        Wanted::Share => range(
            numbers(typed, |text| share(text, typed))
                .map_err(|()| not("a per cent, like \"4.1 %\""))?,
        ),
        Wanted::Shares => {
            let all: Option<Vec<f64>> = list(typed).map(|text| share(text, text).ok()).collect();
            fixed(Value::Figures(all.ok_or_else(|| {
                not("per cents with commas between them, like \"3.2 %, 2.1 %\"")
            })?))
        }
        Wanted::Contraction => {
            let one = |text: &str| contraction(text, typed);
            range(
                numbers(typed, one)
                    .map_err(|()| not("a contraction: 1.3 %, 5/32 per ft or 1 in 75"))?,
            )
        }
        Wanted::Number => range(
            numbers(typed, |text| plain_number(text).ok_or(()))
                .map_err(|()| not("a number without a unit"))?,
        ),
        Wanted::Numbers => {
            let all: Option<Vec<f64>> = list(typed).map(plain_number).collect();
            let wanted = "numbers with commas between them, like \"1, 2, 2\"";
            fixed(Value::Figures(all.ok_or_else(|| not(wanted))?))
        }
        Wanted::Choice(words) => {
            let same = |word: &&&str| word.eq_ignore_ascii_case(typed.trim());
            let word = words.iter().find(same);
            let word = word.ok_or_else(|| not(&format!("one of {}", words.join(", "))))?;
            fixed(Value::Words((*word).to_owned()))
        }
        Wanted::Metal => {
            let alloy = metal::alloys::named(typed);
            let alloy = alloy.map_err(|fault| not(&format!("an alloy known here: {fault}")))?;
            fixed(Value::Metal(alloy))
        }
        Wanted::Body => {
            if let Ok((ends, system)) = (Kind::of::<Length>().read)(typed) {
                return Ok((Read::Range(ends), Some(system)));
            }
            let modulus = body::read(typed).ok_or_else(|| not(body::WANTED))?;
            Ok((Read::Range([modulus.as_m(); 3]), None))
        }
        Wanted::Text => fixed(Value::Words(typed.trim().to_owned())),
    }
}

fn quantity(input: &'static Input, kind: &Kind, typed: &str) -> Result<Ends, Refusal> {
    (kind.read)(typed).map_err(|fault| Refusal::Unreadable {
        key: input.key,
        fault,
    })
}

/// A comma with a blank, or a semicolon, stands between two; a decimal comma has no blank.
fn list(typed: &str) -> impl Iterator<Item = &str> {
    typed
        .split([';'])
        .flat_map(|part| part.split(", "))
        .map(str::trim)
}

/// The per cent sign may stand once, behind the high end.
fn share(text: &str, whole: &str) -> Result<f64, ()> {
    let number = text.split('%').next().unwrap_or(text);
    let told = text.contains('%') || whole.contains('%');
    let number = plain_number(number).filter(|_| told).ok_or(())?;
    Ok(number / 100.0)
}

fn contraction(text: &str, whole: &str) -> Result<f64, ()> {
    let read = |text: &str| text.parse::<Contraction>().ok().map(|read| read.ratio);
    let borrowed = whole.contains('%').then(|| format!("{text} %"));
    let borrowed = borrowed.or_else(|| whole.contains("per ft").then(|| format!("{text} per ft")));
    let ratio = read(text).or_else(|| borrowed.and_then(|text| read(&text)));
    ratio.ok_or(())
}

/// Likely values for the formula; a body shows the modulus it has.
fn symbols(reading: &Reading) -> Vec<(&'static str, String)> {
    let with_symbol = reading
        .items
        .iter()
        .filter(|item| !item.input.symbol.is_empty());
    let text = |item: &Item| match &item.value {
        Read::Range(ends) => text_of(item.input, [ends[1]; 3], reading.system),
        Read::Fixed(_) => item.text.clone(),
    };
    with_symbol
        .map(|item| (item.input.symbol, text(item)))
        .collect()
}

fn text_of(input: &Input, ends: [f64; 3], system: System) -> String {
    let number = |scale: f64| {
        let [low, likely, high] = ends.map(|end| rounded(end * scale, 3));
        match low == high {
            true => likely,
            false => format!("{low} to {high}"),
        }
    };
    match input.wanted {
        Wanted::Quantity(kind) => {
            let shown = (kind.show)(ends, system, Rounding::Nearest);
            shown.band.map_or(shown.likely, |band| band.to_string())
        }
        Wanted::Share | Wanted::Contraction => format!("{} %", number(100.0)),
        Wanted::Body => format!("{} mm", number(1e3)),
        _ => number(1.0),
    }
}

fn nearest(typed: &str, among: impl Iterator<Item = &'static str>) -> Option<&'static str> {
    let away = |name: &&str| strsim::damerau_levenshtein(name, typed);
    among
        .min_by_key(away)
        .filter(|name| away(name) <= 2.max(name.len() / 3))
}
