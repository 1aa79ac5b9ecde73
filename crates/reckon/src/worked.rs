//! A law worked out over the ranges of what was given.

use std::collections::BTreeMap;

use measure::band::Band;
use measure::heat::Temperature;
use measure::source::Source;
use measure::text::shown::{Rounding, Shown, shown_number, shown_share, shown_temperature};
use measure::text::{System, Written};

use crate::answer::{Answer, FigureKind, Outcome};
use crate::ask::Ask;
use crate::formula::with_numbers;
use crate::given::{Given, Value};
use crate::reading::{Reading, read};
use crate::reckoner::Reckoner;
use crate::refusal::{Impossible, Refusal};

/// What came of an ask.
#[derive(Clone)]
pub struct Worked {
    /// The law that was asked for.
    pub reckoner: &'static Reckoner,
    /// What it gives, over the ranges of what was given.
    pub answers: Vec<Figure>,
    /// The formula with the likely numbers in the place of its symbols.
    pub with_numbers: String,
    /// What was given or taken, in the order in which the law asks.
    pub given: Vec<GivenBack>,
    /// What would narrow the answer looked at, the most helpful first.
    pub narrowing: Vec<Narrowing>,
    /// What makes the answer doubtful.
    pub doubts: Vec<String>,
    /// Every source, the law's own first.
    pub sources: Vec<(String, &'static Source)>,
    /// The system of units in which most was typed.
    pub system: System,
}

/// A figure or words that a law gave.
#[derive(Clone)]
pub struct Figure {
    /// Its trade name.
    pub name: &'static str,
    /// Which way it may be rounded for people.
    pub rounding: Rounding,
    /// Words, or low, likely and high.
    pub outcome: Outcome,
}

/// Something that went into the law.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct GivenBack {
    /// Its key.
    pub key: &'static str,
    /// What it is.
    pub about: &'static str,
    /// As typed, or as taken.
    pub text: String,
    /// Whether it was typed by the founder.
    pub typed: bool,
    /// Keys of its sources where it was taken.
    pub sources: Vec<String>,
}

/// How much the band would shrink if one input were known exactly.
#[derive(Clone, Debug, PartialEq)]
pub struct Narrowing {
    /// The input.
    pub key: &'static str,
    /// What it is.
    pub about: &'static str,
    /// How to know it better, where there is a way.
    pub how: &'static str,
    /// The ends of the answer looked at if it were known, in SI units.
    pub ends: [f64; 2],
    /// The part of the band that would be left, 0.4 for two fifths.
    pub left: f64,
}

/// Inputs with a range beyond this count are taken at their ends only.
const MIDDLES_UP_TO: usize = 5;

/// Inputs with a range beyond this count are taken at their likely value.
const RANGES_UP_TO: usize = 12;

/// A gain smaller than this part of the band is not worth the weighing.
const WORTH_NARROWING: f64 = 0.1;

/// Works an ask out.
///
/// # Errors
///
/// Where no law has the name, where something is missing or cannot be read, and where the law
/// refuses the likely values.
pub fn work_out(ask: &Ask) -> Result<Worked, Refusal> {
    let reading = read(ask)?;
    let reckoner = reading.reckoner;
    let over = over_ranges(&reading, None)?;
    let mut doubts = over.doubts;
    doubts.extend(reading.doubts.iter().cloned());
    Ok(Worked {
        reckoner,
        with_numbers: with_numbers(reckoner.law.formula, &reading.symbols),
        narrowing: narrowing(&reading, &over.answers, ask.answer.as_deref()),
        given: reading.given_back(),
        sources: sources(&reading),
        system: reading.system,
        answers: over.answers,
        doubts,
    })
}

/// What was typed, each at its likely value in three figures as people read it, by its key.
///
/// # Errors
///
/// Where no law has the name, and where something is missing or cannot be read.
pub fn likely_typed(ask: &Ask, first: System) -> Result<Vec<(&'static str, String)>, Refusal> {
    Ok(read(ask)?.likely_typed(first))
}

struct OverRanges {
    answers: Vec<Figure>,
    doubts: Vec<String>,
}

/// The answers over all corners of the ranges, with one input held at its likely value if told.
fn over_ranges(reading: &Reading, held: Option<&str>) -> Result<OverRanges, Refusal> {
    let mut values = reading.likely();
    let (first, mut doubts) = at_point(reading.reckoner, &values)?;
    let mut answers: Vec<Figure> = first.into_iter().map(Figure::of).collect();
    let ranges: Vec<_> = reading
        .ranges()
        .filter(|(key, _)| Some(*key) != held)
        .take(RANGES_UP_TO)
        .collect();
    let marks: &[usize] = if ranges.len() > MIDDLES_UP_TO {
        &[0, 2]
    } else {
        &[0, 1, 2]
    };
    for corner in 0..marks.len().pow(ranges.len() as u32) {
        let mut rest = corner;
        for (key, ends) in &ranges {
            values.insert(key, Value::Figure(ends[marks[rest % marks.len()]]));
            rest /= marks.len();
        }
        match at_point(reading.reckoner, &values) {
            Ok((there, more)) => {
                widen(&mut answers, &there);
                more.into_iter().for_each(|doubt| once(&mut doubts, doubt));
            }
            Err(no) => once(&mut doubts, format!("at the end of what was given: {no}")),
        }
    }
    Ok(OverRanges { answers, doubts })
}

fn at_point(
    reckoner: &Reckoner,
    values: &BTreeMap<&'static str, Value>,
) -> Result<(Vec<Answer>, Vec<String>), Impossible> {
    let given = Given::at(values);
    let answers = (reckoner.work)(&given)?;
    let no_number = answers.iter().find(|answer| match &answer.outcome {
        Outcome::Figure { ends, .. } => ends.iter().any(|end| !end.is_finite()),
        Outcome::Words(_) => false,
    });
    match no_number {
        Some(answer) => Err(Impossible {
            what: answer.name,
            why: "comes out endless or as no number".to_owned(),
            advice: "look for a nought among the figures given".to_owned(),
        }),
        None => Ok((answers, given.doubts())),
    }
}

/// The likely answer stays; the ends go as far as this corner's.
fn widen(answers: &mut [Figure], there: &[Answer]) {
    for figure in answers.iter_mut() {
        let same = there.iter().find(|answer| answer.name == figure.name);
        let Some(Outcome::Figure { ends: far, .. }) = same.map(|answer| &answer.outcome) else {
            continue;
        };
        if let Outcome::Figure { ends, .. } = &mut figure.outcome {
            *ends = [ends[0].min(far[0]), ends[1], ends[2].max(far[2])];
        }
    }
}

fn once(doubts: &mut Vec<String>, doubt: String) {
    if !doubts.contains(&doubt) {
        doubts.push(doubt);
    }
}

fn narrowing(reading: &Reading, answers: &[Figure], looked_at: Option<&str>) -> Vec<Narrowing> {
    let Some(now) = ends_of(answers, looked_at) else {
        return Vec::new();
    };
    let width = now[1] - now[0];
    let mut found: Vec<Narrowing> = reading
        .ranges()
        .filter_map(|(key, _)| {
            let held = over_ranges(reading, Some(key)).ok()?;
            let ends = ends_of(&held.answers, looked_at)?;
            let input = reading.input(key)?;
            Some(Narrowing {
                key,
                about: input.about,
                how: input.narrowed_by,
                ends,
                left: (ends[1] - ends[0]) / width,
            })
        })
        .filter(|narrowing| narrowing.left < 1.0 - WORTH_NARROWING)
        .collect();
    found.sort_by(|a, b| a.left.total_cmp(&b.left));
    found
}

/// The ends of the answer of a name, or of the first that has a width.
fn ends_of(answers: &[Figure], name: Option<&str>) -> Option<[f64; 2]> {
    let named = |figure: &&Figure| name.is_none_or(|name| figure.name == name);
    let mut answers = answers.iter().filter(named);
    answers.find_map(|figure| match &figure.outcome {
        Outcome::Figure { ends, .. } if ends[0] < ends[2] => Some([ends[0], ends[2]]),
        _ => None,
    })
}

fn sources(reading: &Reading) -> Vec<(String, &'static Source)> {
    let of_law = reading
        .reckoner
        .law
        .sources
        .iter()
        .map(|key| (*key).to_owned());
    let of_taken = reading
        .given_back()
        .into_iter()
        .flat_map(|back| back.sources);
    let mut found: Vec<(String, &'static Source)> = Vec::new();
    for key in of_law.chain(of_taken) {
        let known = found.iter().any(|(there, _)| *there == key);
        if let (false, Some(source)) = (known, measure::source::source(&key)) {
            found.push((key, source));
        }
    }
    found
}

impl Worked {
    /// The answer of a name, or the first.
    pub fn answer(&self, name: Option<&str>) -> Option<&Figure> {
        let named = |figure: &&Figure| name.is_none_or(|name| figure.name == name);
        self.answers.iter().find(named)
    }
}

impl Figure {
    fn of(answer: Answer) -> Figure {
        Figure {
            name: answer.name,
            rounding: answer.rounding,
            outcome: answer.outcome,
        }
    }

    /// For people: words, or the likely value with its band and the other system beside it.
    pub fn shown(&self, first: System) -> Shown {
        let band = |ends: &[f64; 3]| Band::new(ends[0], ends[1], ends[2]);
        match &self.outcome {
            Outcome::Words(words) => Shown {
                likely: words.clone(),
                band: None,
                other: None,
            },
            Outcome::Figure { kind, ends } => match kind {
                FigureKind::Quantity(kind) => (kind.show)(*ends, first, self.rounding),
                FigureKind::Temperature => {
                    shown_temperature(&band(ends).map(Temperature::from_si), first)
                }
                FigureKind::Share => shown_share(&band(ends)),
                FigureKind::Number => shown_number(&band(ends)),
            },
        }
    }

    /// Low, likely and high in the unit in which files carry it, and that unit.
    pub fn filed(&self) -> Option<([f64; 3], &'static str)> {
        let Outcome::Figure { kind, ends } = &self.outcome else {
            return None;
        };
        Some(match kind {
            FigureKind::Quantity(kind) => {
                let unit = (kind.filed)(ends[1]).1;
                (ends.map(|end| (kind.filed)(end).0), unit)
            }
            FigureKind::Temperature => (ends.map(|end| end - 273.15), "C"),
            FigureKind::Share => (ends.map(|end| end * 100.0), "%"),
            FigureKind::Number => (*ends, ""),
        })
    }
}
