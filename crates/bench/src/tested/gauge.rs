//! How well a test repeats, by one hand and by several, from the repeats in the book.

use std::collections::BTreeMap;

use job::amount::Amount;
use job::words::said::Said;
use measure::band::Band;
use measure::text::rounded;
use trials::gauge::{Repeatability, Study, repeatability, study};

use crate::tested::readings::{ReadingsFile, Test, value_of};
use crate::told::Told;

/// The test as a share of all that varies beyond which single tests are no use: the usual limit of
/// gauge studies, as in [`trials::gauge`].
const COARSE: f64 = 0.3;

/// Most repeats, people and days that the tables of a study reach to.
const MOST: usize = 10;

/// Tells how far one test alone may be off, and what hands do to it where several tested.
pub fn gauged(told: &mut Told, test: &Test, book: &ReadingsFile) {
    match repeatability(&by_day(test, book)) {
        Ok(found) => by_repeats(told, test, &found),
        Err(_) => told.note(Said::new("bench-repeat-once")),
    }
    by_people(told, test, book);
}

/// How far one test alone is off, from batches of the book that were tested twice on one day.
pub fn deviation(test: &Test, book: &ReadingsFile) -> Option<f64> {
    repeatability(&by_day(test, book))
        .ok()
        .map(|found| found.test.deviation)
}

fn by_repeats(told: &mut Told, test: &Test, found: &Repeatability) {
    let number = |value: f64| Band::exact(value);
    told.figures.push(value_of(
        test,
        "bench-test-noise",
        number(found.test.deviation),
    ));
    told.figures.push(value_of(
        test,
        "bench-test-difference",
        number(found.smallest_difference),
    ));
    let share = Amount::Share(number(found.share));
    told.amount("bench-test-share", share);
    if found.share > COARSE {
        told.caution(Said::new("bench-test-coarse"));
    }
}

fn by_people(told: &mut Told, test: &Test, book: &ReadingsFile) {
    let people = people(test, book);
    if people.len() < 2 {
        return;
    }
    match studied(&people) {
        Some(found) => {
            let hands = value_of(test, "bench-test-people", Band::exact(found.people));
            told.figures.push(hands);
            told.number("bench-test-kinds", Band::exact(found.kinds.floor()));
            let said = Said::new("bench-people-studied").with("people", people.len());
            told.note(said.with("share", rounded(found.share * 100.0, 3)));
        }
        None => told.note(Said::new("bench-people-uneven")),
    }
}

/// Readings of each person by day.
type People<'a> = BTreeMap<&'a str, BTreeMap<&'a str, Vec<f64>>>;

fn people<'a>(test: &Test, book: &'a ReadingsFile) -> People<'a> {
    let mut people = People::new();
    for one in book.reading.iter().filter(|one| one.test == test.name) {
        if let Some(who) = &one.who {
            let days = people.entry(who).or_default();
            days.entry(&one.day).or_default().push(one.value);
        }
    }
    people
}

/// The study of those days that everybody tested at least twice, as often as all of them did.
fn studied(people: &People) -> Option<Study> {
    let first = people.values().next()?;
    let times = |days: &BTreeMap<&str, Vec<f64>>, day: &str| days.get(day).map_or(0, Vec::len);
    let least = |day: &str| people.values().map(|days| times(days, day)).min();
    let shared = first.keys().copied();
    let shared: Vec<&str> = shared.filter(|day| least(day) >= Some(2)).collect();
    let repeats = shared.iter().filter_map(|day| least(day)).min()?.min(MOST);
    let readings = people.values().map(|days| {
        let repeat = |at: usize| {
            let days = shared
                .iter()
                .take(MOST)
                .filter_map(|day| days.get(day)?.get(at));
            days.copied().collect()
        };
        (0..repeats).map(repeat).collect()
    });
    study(&readings.collect::<Vec<Vec<Vec<f64>>>>()).ok()
}

/// Readings of a test, a list for each day.
fn by_day(test: &Test, book: &ReadingsFile) -> Vec<Vec<f64>> {
    let mut days: BTreeMap<&str, Vec<f64>> = BTreeMap::new();
    for one in book.reading.iter().filter(|one| one.test == test.name) {
        days.entry(&one.day).or_default().push(one.value);
    }
    days.into_values().collect()
}
