//! The tests of the bench: how each is done, what its readings come to, and the book they go into.

use std::fmt::Write as _;

use job::words::said::Said;
use measure::band::Band;
use measure::length::Length;
use measure::text::ranged::Ranged;
use measure::text::rounded;
use reckon::answer::{FigureKind, Outcome};
use reckon::ask::Ask;
use reckon::refusal::Refusal;
use reckon::worked::work_out;
use sand::permeability::round;
use serde::Deserialize;

use crate::given::GivenError;
use crate::tested::gauge::gauged;
use crate::told::{Figure, Told, Value};
use crate::trouble::{BenchError, Refused};

/// Name of the book of readings in the shop's folder.
pub const READINGS_FILE: &str = "readings.toml";

/// A test of the bench.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Test {
    /// The word by which it is typed.
    pub name: &'static str,
    /// The law that works it out; none where a hand feels it.
    pub law: Option<&'static str>,
    /// Unit in which it is kept: of `reckon`'s answer, "%" or none.
    pub unit: &'static str,
    /// Id of how it is done.
    pub how: &'static str,
}

/// The book of readings.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ReadingsFile {
    /// The readings, in the order entered.
    #[serde(default)]
    pub reading: Vec<Reading>,
}

/// One reading.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Reading {
    /// The day, or whatever tells batches apart.
    pub day: String,
    /// The test.
    pub test: String,
    /// What it came to, in the unit of the test.
    pub value: f64,
    /// Whether the sand of that day moulded well.
    #[serde(default)]
    pub good: bool,
    /// Who tested, where several do.
    pub who: Option<String>,
}

/// Every test, in the order in which one would do them.
pub const TESTS: [Test; 9] = [
    test("squeeze", None, "", "bench-how-squeeze"),
    test("drop", Some("drop-index"), "kPa", "bench-how-drop"),
    test("dent", Some("dent-resistance"), "kPa", "bench-how-dent"),
    test("bottle", Some("permeability"), "", "bench-how-bottle"),
    test(
        "cylinder",
        Some("pressed-cylinder"),
        "kPa",
        "bench-how-cylinder",
    ),
    test("bar", Some("bar-strength"), "kPa", "bench-how-bar"),
    test("disc", Some("split-disc"), "kPa", "bench-how-disc"),
    test(
        "compactability",
        Some("compactability"),
        "%",
        "bench-how-compactability",
    ),
    test("moisture", Some("moisture"), "%", "bench-how-moisture"),
];

/// The tests with how each is done.
pub fn list() -> Told {
    let mut told = Told::new(Said::new("bench-tests-head"));
    for test in TESTS {
        let mut figure = Figure::new("bench-test", Value::Words(Said::new(test.how)));
        figure.label = Some(Said::typed(test.name));
        told.figures.push(figure);
    }
    told.note(Said::new("bench-how-sample"));
    told.caution(Said::new("bench-silica"));
    told
}

/// The test of a name.
///
/// # Errors
///
/// [`Refused::NoSuchTest`].
pub fn named(name: &str) -> Result<&'static Test, BenchError> {
    let found = TESTS.iter().find(|test| test.name == name);
    found.ok_or_else(|| {
        let known: Vec<&str> = TESTS.iter().map(|test| test.name).collect();
        let (name, known) = (name.to_owned(), known.join(", "));
        Refused::NoSuchTest { name, known }.into()
    })
}

/// What the readings of a test come to, with the error of the instruments where they were typed
/// with it (`14 s ± 0.5 s`), beside the good days of the book.
///
/// # Errors
///
/// What the law says no to, in its own words.
pub fn worked(
    test: &Test,
    pairs: &[(String, String)],
    book: &ReadingsFile,
) -> Result<(Told, f64), BenchError> {
    let mut told = Told::new(Said::new("bench-test-head").with("test", test.name));
    told.note(Said::new(test.how));
    let (band, doubts) = match test.law {
        Some(law) => by_law(test, law, pairs)?,
        None => (felt(&mut told, pairs)?, Vec::new()),
    };
    told.figures.push(value_of(test, "bench-reading", band));
    against_good_days(&mut told, test, band.likely(), book);
    gauged(&mut told, test, book);
    for doubt in doubts {
        told.note(Said::typed(doubt));
    }
    Ok((told, band.likely()))
}

/// The book with one more reading behind its own text, which stays as it is.
pub fn entered(text: &str, reading: &Reading) -> String {
    let mut whole = text.to_owned();
    if !whole.is_empty() && !whole.ends_with('\n') {
        whole.push('\n');
    }
    let quoted = |text: &str| toml::Value::String(text.to_owned()).to_string();
    // Writing into a string does not fail.
    let _ = write!(
        whole,
        "\n[[reading]]\nday = {}\ntest = {}\nvalue = {}\ngood = {}\n",
        quoted(&reading.day),
        quoted(&reading.test),
        number(reading.value),
        reading.good
    );
    if let Some(who) = &reading.who {
        let _ = writeln!(whole, "who = {}", quoted(who));
    }
    whole
}

/// A figure of a test under some id.
pub fn value_of(test: &Test, id: &'static str, band: Band<f64>) -> Figure {
    let mut figure = Figure::new(id, Value::Number(band));
    figure.beside = (!test.unit.is_empty()).then(|| Said::typed(test.unit));
    figure
}

const fn test(
    name: &'static str,
    law: Option<&'static str>,
    unit: &'static str,
    how: &'static str,
) -> Test {
    Test {
        name,
        law,
        unit,
        how,
    }
}

/// A number that a TOML reader takes for one with a fraction.
fn number(value: f64) -> String {
    let text = rounded(value, 6);
    match text.contains(['.', 'e']) {
        true => text,
        false => format!("{text}.0"),
    }
}

fn by_law(
    test: &Test,
    law: &str,
    pairs: &[(String, String)],
) -> Result<(Band<f64>, Vec<String>), BenchError> {
    let pairs = with_area(law, pairs)?;
    let ask = pairs
        .iter()
        .fold(Ask::new(law), |ask, (key, text)| ask.give(key, text));
    let worked = work_out(&ask).map_err(|fault| refused(&fault))?;
    let first = worked.answers.first().map(|figure| &figure.outcome);
    let band = match first {
        Some(Outcome::Figure { kind, ends }) => {
            let [low, likely, high] = ends.map(|end| in_unit(test, *kind, end));
            Band::new(low, likely, high)
        }
        _ => return Err(Refused::Law(format!("{law} gives no figure")).into()),
    };
    Ok((band, worked.doubts))
}

/// The area of a round specimen whose diameter was typed, where the law asks for an area alone.
fn with_area(law: &str, pairs: &[(String, String)]) -> Result<Vec<(String, String)>, BenchError> {
    let mut pairs = pairs.to_vec();
    let inputs = reckon::named(law).map_or(&[][..], |reckoner| reckoner.inputs);
    let asks = |key: &str| inputs.iter().any(|input| input.key == key);
    if !asks("area") || asks("diameter") {
        return Ok(pairs);
    }
    if let Some((key, text)) = pairs.iter_mut().find(|(key, _)| key == "diameter") {
        let across: Ranged<Length> = text.parse().map_err(|error| GivenError::Text {
            key: key.clone(),
            error,
        })?;
        let [low, likely, high] = [across.band.low(), across.band.likely(), across.band.high()]
            .map(|across| round(across).as_mm2());
        *key = "area".to_owned();
        *text = match low < high {
            true => format!("{low} to {high} mm2, likely {likely} mm2"),
            false => format!("{likely} mm2"),
        };
    }
    Ok(pairs)
}

fn refused(fault: &Refusal) -> BenchError {
    Refused::Law(fault.to_string()).into()
}

/// Pressures come in pascals, shares as parts of one.
fn in_unit(test: &Test, kind: FigureKind, amount: f64) -> f64 {
    match (kind, test.unit) {
        (FigureKind::Share, _) => amount * 100.0,
        (_, "kPa") => amount / 1000.0,
        _ => amount,
    }
}

/// The squeeze on a scale of −1 (crumbles) over 0 (sharp) to 1 (smears).
fn felt(told: &mut Told, pairs: &[(String, String)]) -> Result<Band<f64>, BenchError> {
    let typed = pairs.iter().find(|(key, _)| key == "felt");
    let (value, verdict) = match typed.map(|(_, text)| text.as_str()) {
        Some("crumbles") => (-1.0, "bench-squeeze-dry"),
        Some("sharp") => (0.0, "bench-squeeze-right"),
        Some("smears") => (1.0, "bench-squeeze-wet"),
        _ => {
            let words = "say how it felt: felt=crumbles, felt=sharp or felt=smears".to_owned();
            return Err(Refused::Law(words).into());
        }
    };
    told.words("bench-verdict", Said::new(verdict));
    Ok(Band::exact(value))
}

fn against_good_days(told: &mut Told, test: &Test, value: f64, book: &ReadingsFile) {
    let good = book
        .reading
        .iter()
        .filter(|one| one.good && one.test == test.name);
    let good: Vec<f64> = good.map(|one| one.value).collect();
    if good.is_empty() {
        told.note(Said::new("bench-no-good-days"));
        return;
    }
    let mean = good.iter().sum::<f64>() / good.len() as f64;
    let low = good.iter().copied().fold(f64::INFINITY, f64::min);
    let high = good.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    told.figures.push(value_of(
        test,
        "bench-good-days",
        Band::new(low, mean, high),
    ));
    // The book keeps six figures: a hair more is not another day.
    let hair = value.abs() * 1e-5;
    let id = match value {
        below if below + hair < low => "bench-below-good-days",
        above if above - hair > high => "bench-above-good-days",
        _ => "bench-like-good-days",
    };
    told.note(Said::new(id).with("count", good.len()));
}
