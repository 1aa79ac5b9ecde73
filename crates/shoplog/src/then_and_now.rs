//! Then and now: what differs from the last pour that came out well.

use crate::around_pour::{AroundPour, NUMBERS, WORDS};

/// How many pours back a good one is looked for.
pub const FAR_BACK: usize = 1000;

/// A pour beside the last good one of its job.
#[derive(Clone, Debug, PartialEq)]
pub struct ThenAndNow<'a> {
    /// The last pour before in which every casting was good.
    pub then: &'a AroundPour,
    /// The pour that is asked about.
    pub now: &'a AroundPour,
    /// What differs.
    pub differs: Vec<Difference>,
    /// What was written down then or now, but not both times.
    pub unknown: Vec<&'static str>,
}

/// Something that differs.
#[derive(Clone, Debug, PartialEq)]
pub struct Difference {
    /// The word of [`WORDS`] or [`NUMBERS`].
    pub what: &'static str,
    /// As it was.
    pub then: String,
    /// As it is.
    pub now: String,
}

/// A pour beside the last good one: of the same job where there is one, else of any.
pub fn then_and_now(pours: &[AroundPour], number: i64) -> Option<ThenAndNow<'_>> {
    let now = pours.iter().find(|pour| pour.number == number)?;
    let good = |pour: &&AroundPour| pour.judged > 0 && pour.good == pour.judged;
    let before = || {
        pours
            .iter()
            .rev()
            .filter(|pour| pour.number < number)
            .filter(good)
    };
    let same_job = before().find(|pour| pour.job.is_some() && pour.job == now.job);
    let then = same_job.or_else(|| before().next())?;
    let (mut differs, mut unknown) = (Vec::new(), Vec::new());
    for (at, (what, _)) in WORDS.iter().enumerate() {
        match (&then.words[at], &now.words[at]) {
            (Some(was), Some(is)) if was != is => differs.push(Difference {
                what,
                then: was.clone(),
                now: is.clone(),
            }),
            (Some(_), None) | (None, Some(_)) => unknown.push(*what),
            _ => {}
        }
    }
    for (at, (what, _, least)) in NUMBERS.iter().enumerate() {
        let shown = |number: f64| measure::text::rounded(number, 3);
        match (then.numbers[at], now.numbers[at]) {
            (Some(was), Some(is)) if (was - is).abs() >= *least => differs.push(Difference {
                what,
                then: shown(was),
                now: shown(is),
            }),
            (Some(_), None) | (None, Some(_)) => unknown.push(*what),
            _ => {}
        }
    }
    Some(ThenAndNow {
        then,
        now,
        differs,
        unknown,
    })
}
