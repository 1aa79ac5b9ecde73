//! How shares of a composition are typed: `3.2 to 3.6 %`, `3.4 ± 0.1 %`, `below 0.15 %`.

use measure::band::Band;
use measure::text::ranged::{Spread, spread};
use thiserror::Error;

/// A text that is no share of a composition.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
#[error("\"{typed}\" is no share of a metal: write it like {example}")]
pub struct ShareFault {
    /// What was typed.
    pub typed: String,
    /// How it may be typed.
    pub example: &'static str,
}

const OF_HEAP: &str = "3.2 to 3.6 %, 3.4 ± 0.1 % or below 0.15 %";
const OF_LIMIT: &str = "1.9 to 2.3 %, at most 0.2 % or at least 83 %";

/// The words that stand before an upper end.
const MOST: [&str; 5] = ["at most", "below", "under", "max", "<"];
/// The words that stand before a lower end.
const LEAST: [&str; 5] = ["at least", "above", "over", "min", ">"];

/// What a heap holds of an element, in parts of one. Of "below 0.15 %" half is the likely value.
///
/// # Errors
///
/// Where it is no share from 0 to 100 %.
pub fn of_heap(typed: &str) -> Result<Band<f64>, ShareFault> {
    let refused = || ShareFault {
        typed: typed.trim().to_owned(),
        example: OF_HEAP,
    };
    if let Some(rest) = after(typed, &MOST) {
        let high = per_cent(rest).map_err(|()| refused())?;
        return Ok(Band::new(0.0, high / 2.0, high));
    }
    let band = range(typed).map_err(|()| refused())?;
    let low = band.low().max(0.0);
    Ok(Band::new(low, band.likely(), band.high().min(1.0)))
}

/// The least and the most that a target takes, in parts of one.
///
/// # Errors
///
/// Where it is no range from 0 to 100 %.
pub fn of_limit(typed: &str) -> Result<(Option<f64>, Option<f64>), ShareFault> {
    let refused = || ShareFault {
        typed: typed.trim().to_owned(),
        example: OF_LIMIT,
    };
    let end = |rest: &str| per_cent(rest).map_err(|()| refused());
    if let Some(rest) = after(typed, &MOST) {
        return Ok((None, Some(end(rest)?)));
    }
    if let Some(rest) = after(typed, &LEAST) {
        return Ok((Some(end(rest)?), None));
    }
    let band = range(typed).map_err(|()| refused())?;
    Ok((Some(band.low()), Some(band.high())))
}

/// What stands after one of these words.
fn after<'a>(typed: &'a str, words: &[&str]) -> Option<&'a str> {
    let typed = typed.trim();
    words.iter().find_map(|word| typed.strip_prefix(word))
}

/// A range of shares; a margin counts in points of per cent, never as a part of the likely share.
fn range(typed: &str) -> Result<Band<f64>, ()> {
    Ok(match spread(typed) {
        Spread::One(one) => Band::exact(per_cent(one)?),
        Spread::Between { low, high, likely } => {
            let (low, high) = (per_cent(low)?, per_cent(high)?);
            Band::new(low, likely.map_or(Ok((low + high) / 2.0), per_cent)?, high)
        }
        Spread::Around { likely, margin } => {
            let (likely, margin) = (per_cent(likely)?, per_cent(margin)?);
            Band::new(likely - margin, likely, likely + margin)
        }
    })
}

/// A number with or without its sign of per cent, from 0 to 100.
fn per_cent(text: &str) -> Result<f64, ()> {
    let number = text.trim().trim_end_matches('%').trim();
    let number = number.replace(',', ".").parse::<f64>().map_err(|_| ())?;
    (0.0..=100.0)
        .contains(&number)
        .then_some(number / 100.0)
        .ok_or(())
}

#[cfg(test)]
mod tests {
    use super::{of_heap, of_limit};

    #[test]
    fn shares_are_read_as_they_are_said() {
        let band = |text| of_heap(text).map(|b| [b.low(), b.likely(), b.high()].map(in_per_cent));
        assert_eq!(band("3.2 to 3.6 %"), Ok([3.2, 3.4, 3.6]));
        assert_eq!(band("3.4 ± 0.1 %"), Ok([3.3, 3.4, 3.5]));
        assert_eq!(band("below 0.15 %"), Ok([0.0, 0.075, 0.15]));
        assert_eq!(band("2 %"), Ok([2.0, 2.0, 2.0]));
        assert!(band("some").is_err() && band("120 %").is_err() && band("-1 %").is_err());
    }

    #[test]
    fn limits_may_have_one_end() {
        assert_eq!(of_limit("at most 20 %"), Ok((None, Some(0.2))));
        assert_eq!(of_limit("at least 83 %"), Ok((Some(0.83), None)));
        assert_eq!(of_limit("10 to 20 %"), Ok((Some(0.1), Some(0.2))));
    }

    fn in_per_cent(share: f64) -> f64 {
        (share * 1e6).round() / 1e4
    }
}
