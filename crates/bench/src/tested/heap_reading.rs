//! What is typed for a test at the heap, one number after the other: by a thumb in a glove nobody
//! types `load='14.5 kg'`.

use crate::tested::readings::{ReadingsFile, Test, worked};
use crate::trouble::BenchError;

/// One thing that is typed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Typed {
    /// The key under which the test asks for it.
    pub key: &'static str,
    /// Id of what it is called.
    pub label: &'static str,
    /// Units in which it may be typed, the metric ones first.
    pub units: &'static [&'static str],
}

/// Words among which one is chosen where a hand feels it.
pub const FELT: [(&str, &str); 3] = [
    ("crumbles", "bench-felt-crumbles"),
    ("sharp", "bench-felt-sharp"),
    ("smears", "bench-felt-smears"),
];

/// Lengths of a specimen.
const SHORT: &[&str] = &["mm", "cm", "in"];

/// Heights that a thing falls.
const HIGH: &[&str] = &["cm", "mm", "in"];

/// What a kitchen scale shows.
const LIGHT: &[&str] = &["g", "oz"];

/// What a bathroom scale shows.
const HEAVY: &[&str] = &["kg", "g", "lb"];

const DIAMETER: Typed = typed("diameter", "bench-key-diameter", SHORT);
const LOAD: Typed = typed("load", "bench-key-load", HEAVY);

const DROP: [Typed; 1] = [typed("height", "bench-key-fall", HIGH)];

const BALL_DENT: [Typed; 4] = [
    typed("mass", "bench-key-ball-mass", LIGHT),
    typed("ball", "bench-key-ball", SHORT),
    typed("drop", "bench-key-fall", HIGH),
    typed("dent", "bench-key-dent", SHORT),
];

const BOTTLE: [Typed; 5] = [
    typed("air", "bench-key-air", &["ml", "fl oz"]),
    typed("height", "bench-key-plug", SHORT),
    typed("pressure", "bench-key-pressure", &["cmH2O"]),
    DIAMETER,
    typed("time", "bench-key-time", &["s", "min"]),
];

const CYLINDER: [Typed; 2] = [LOAD, DIAMETER];

const BAR: [Typed; 4] = [
    typed("load", "bench-key-load", &["kgf", "N"]),
    typed("span", "bench-key-span", SHORT),
    typed("breadth", "bench-key-breadth", SHORT),
    typed("height", "bench-key-upright", SHORT),
];

const DISC: [Typed; 3] = [LOAD, DIAMETER, typed("height", "bench-key-upright", SHORT)];

const COMPACTABILITY: [Typed; 1] = [typed("rammed", "bench-key-rammed", SHORT)];

const MOISTURE: [Typed; 2] = [
    typed("wet", "bench-key-wet", LIGHT),
    typed("dry", "bench-key-dry", LIGHT),
];

/// What is typed for a test, in the order in which it is read off; nothing where a hand feels it.
pub fn asked(test: &Test) -> &'static [Typed] {
    match test.name {
        "drop" => &DROP,
        "dent" => &BALL_DENT,
        "bottle" => &BOTTLE,
        "cylinder" => &CYLINDER,
        "bar" => &BAR,
        "disc" => &DISC,
        "compactability" => &COMPACTABILITY,
        "moisture" => &MOISTURE,
        _ => &[],
    }
}

/// The value of a test in its unit, by what was typed.
///
/// # Errors
///
/// What the law says no to, in its own words.
pub fn value(test: &Test, given: &[(String, String)]) -> Result<f64, BenchError> {
    worked(test, given, &ReadingsFile::default()).map(|(_, value)| value)
}

const fn typed(key: &'static str, label: &'static str, units: &'static [&'static str]) -> Typed {
    Typed { key, label, units }
}

#[cfg(test)]
mod tests {
    use super::{FELT, asked, value};
    use crate::tested::readings::TESTS;

    /// Everything that is asked for is enough for the law, in each unit that is offered.
    #[test]
    fn what_is_typed_at_the_heap_is_all_that_a_test_asks_for() {
        for test in TESTS {
            let keys = asked(&test);
            if keys.is_empty() {
                for (felt, _) in FELT {
                    let given = [("felt".to_owned(), felt.to_owned())];
                    assert!(value(&test, &given).is_ok(), "{felt}");
                }
                continue;
            }
            let most = keys.iter().map(|key| key.units.len()).max().unwrap_or(1);
            for at in 0..most {
                let given = keys.iter().map(|key| {
                    let unit = key.units[at.min(key.units.len() - 1)];
                    // A dry handful is lighter than a wet one; a dent is smaller than its ball.
                    let number = match key.key {
                        "dry" => 19,
                        "dent" => 11,
                        "rammed" if unit == "cm" => 7,
                        "rammed" if unit == "in" => 3,
                        "rammed" => 70,
                        _ => 20,
                    };
                    (key.key.to_owned(), format!("{number} {unit}"))
                });
                let given: Vec<(String, String)> = given.collect();
                let found = value(&test, &given);
                assert!(found.is_ok(), "{}: {given:?}: {found:?}", test.name);
            }
        }
    }

    /// 200 g wet and 190 g dry are 10 g of water: 5 % of the wet mass.
    #[test]
    fn a_handful_dried_is_its_moisture() {
        let moisture = TESTS.iter().find(|test| test.name == "moisture");
        let given =
            [("wet", "200 g"), ("dry", "190 g")].map(|(key, text)| (key.into(), text.into()));
        let found = moisture.map(|test| value(test, &given));
        assert!(
            matches!(found, Some(Ok(value)) if (value - 5.0).abs() < 1e-9),
            "{found:?}"
        );
    }
}
