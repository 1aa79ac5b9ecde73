//! How far the answer of a law is from the figure it had to give.

use measure::text::rounded;
use reckon::answer::{FigureKind, Outcome};
use reckon::given::Kind;
use reckon::worked::{Figure, Worked};
use thiserror::Error;

/// How far an answer is off.
#[derive(Clone, Debug, PartialEq)]
pub struct Deviation {
    /// The answer, in the unit of its kind.
    pub got: String,
    /// How far off it is, as the tolerance is written: in per cent or as an amount.
    pub off: String,
    /// Whether that is more than the row allows.
    pub too_far: bool,
}

/// Why an answer cannot be compared.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum DeviationError {
    /// The law gives nothing of that name.
    #[error("the law gives no \"{0}\"")]
    NoSuchFigure(String),
    /// The figure expected is not of the kind that the law gives.
    #[error("\"{0}\" is not what the law gives: write it with a unit of that quantity")]
    Expected(String),
    /// The tolerance is neither a per cent nor an amount.
    #[error("\"{0}\" is no tolerance: write a per cent or an amount with its unit")]
    Within(String),
}

/// What sums of 64-bit numbers leave over; printed as nought, and forgiven where a row says 0 %.
const ROUNDING: f64 = 1e-12;

/// How far the figure of a name is from the one expected. The name may be followed by `low` or
/// `high` for the ends of a band, and may have underscores for blanks; without either the likely
/// value is meant.
///
/// A tolerance in per cent is one of the figure expected, so that a nought is only met by a nought;
/// any other is an amount and has to carry the unit. Words have to be the same words.
///
/// # Errors
///
/// Where there is no such figure, and where figure or tolerance cannot be read.
pub fn deviation(
    worked: &Worked,
    name: &str,
    expected: &str,
    within: &str,
) -> Result<Deviation, DeviationError> {
    let (figure, end) = figure_and_end(worked, name)?;
    match &figure.outcome {
        Outcome::Words(words) => Ok(Deviation {
            got: words.clone(),
            off: String::new(),
            too_far: words != expected,
        }),
        Outcome::Figure { kind, ends } => of_figure(kind, ends[end], expected, within),
    }
}

fn figure_and_end<'a>(
    worked: &'a Worked,
    name: &str,
) -> Result<(&'a Figure, usize), DeviationError> {
    let name = name.replace('_', " ");
    let plain = |figure: &&Figure, wanted: &str| figure.name.replace('_', " ") == wanted;
    let find = |wanted: &str| worked.answers.iter().find(|figure| plain(figure, wanted));
    if let Some(figure) = find(&name) {
        return Ok((figure, 1));
    }
    for (tail, end) in [(" low", 0), (" high", 2)] {
        if let Some(figure) = name.strip_suffix(tail).and_then(find) {
            return Ok((figure, end));
        }
    }
    Err(DeviationError::NoSuchFigure(name))
}

fn of_figure(
    kind: &FigureKind,
    got: f64,
    expected: &str,
    within: &str,
) -> Result<Deviation, DeviationError> {
    let not_that = || DeviationError::Expected(expected.to_owned());
    let wanted = read(kind, expected).ok_or_else(not_that)?;
    let apart = (got - wanted).abs();
    let (allowed, off) = match per_cent(within) {
        Some(share) => (
            share * measured_from_nought(kind, wanted),
            relative(kind, apart, wanted),
        ),
        None => {
            let no_tolerance = || DeviationError::Within(within.to_owned());
            (
                step(kind, within).ok_or_else(no_tolerance)?,
                rounded(apart, 6),
            )
        }
    };
    // A NaN is never close enough.
    let close = apart <= allowed + ROUNDING * wanted.abs();
    Ok(Deviation {
        got: written(kind, got),
        off,
        too_far: !close,
    })
}

/// A per cent of kelvin would be the kinder measure: temperatures count from 0 °C.
fn measured_from_nought(kind: &FigureKind, si: f64) -> f64 {
    match kind {
        FigureKind::Temperature => (si - 273.15).abs(),
        _ => si.abs(),
    }
}

fn relative(kind: &FigureKind, apart: f64, wanted: f64) -> String {
    if apart == 0.0 {
        return "0 %".to_owned();
    }
    let share = apart / measured_from_nought(kind, wanted);
    format!("{} %", rounded(100.0 * share, 2))
}

fn read(kind: &FigureKind, text: &str) -> Option<f64> {
    match kind {
        FigureKind::Quantity(kind) => kind.read_one(text),
        FigureKind::Temperature => temperature().read_one(text),
        FigureKind::Share => per_cent(text),
        FigureKind::Number => text.parse().ok(),
    }
}

/// A tolerance as an amount; that of a temperature is a difference.
fn step(kind: &FigureKind, text: &str) -> Option<f64> {
    match kind {
        FigureKind::Temperature => {
            Kind::of::<measure::heat::TemperatureDifference>().read_one(text)
        }
        FigureKind::Share => None,
        _ => read(kind, text),
    }
}

fn written(kind: &FigureKind, si: f64) -> String {
    match kind {
        FigureKind::Quantity(kind) => kind.written(si),
        FigureKind::Temperature => temperature().written(si),
        FigureKind::Share => format!("{} %", rounded(si * 100.0, 6)),
        FigureKind::Number => rounded(si, 6),
    }
}

fn temperature() -> Kind {
    Kind::of::<measure::heat::Temperature>()
}

/// A share in per cent, or nothing.
fn per_cent(text: &str) -> Option<f64> {
    let number = text.strip_suffix('%')?.trim();
    number.parse::<f64>().ok().map(|number| number / 100.0)
}
