//! What bonded sand takes up from damp air, by the founder's own pucks.

use job::amount::Amount;
use job::words::said::Said;
use measure::band::Band;
use measure::matter::Mass;
use measure::text::rounded;
use sand::humidity::Puck;
use sand::sorption::of_pucks;

use crate::given::{Given, GivenError, percent};
use crate::tested::sand_file::SandFile;
use crate::told::Told;
use crate::trouble::{BenchError, Refused};

/// What is asked for.
pub const KEYS: [&str; 2] = ["at", "most"];

/// Humidity above which a film of sugar takes up water again: `shop-handbook-figures`.
const REWETS: f64 = 0.60;

/// Tells what the sand holds at rest in air of a humidity, and how damp the air may be for it to
/// stay below a moisture.
///
/// # Errors
///
/// Pucks that say nothing, and a humidity more than 15 points beyond them.
pub fn pucks(file: &SandFile, given: &Given) -> Result<Told, BenchError> {
    let mut weighed = Vec::new();
    for record in &file.puck {
        weighed.push(puck(&record.humidity, record.dry.value, record.rest.value)?);
    }
    let sorption = of_pucks(&weighed)?;
    let what = "relative humidity of the air, like at='65 %'";
    let at = given
        .percent("at")?
        .ok_or(GivenError::Missing { key: "at", what })?;
    let head = Said::new("bench-pucks-head").with("name", file.name.as_str());
    let mut told = Told::new(head.with("count", weighed.len()));
    told.amount(
        "bench-taken-up",
        Amount::Share(Band::exact(sorption.at(at)?)),
    );
    let by = match sorption.curve {
        Some(_) => "bench-by-curve",
        None => "bench-by-line",
    };
    told.words("bench-by", Said::new(by));
    if let Some(most) = given.percent("most")? {
        match sorption.driest_air_for(most) {
            Some(humidity) => told.share("bench-air-up-to", Band::exact(humidity)),
            None => told.caution(Said::new("bench-never-so-dry")),
        }
    }
    if at > REWETS {
        let at = format!("{} %", rounded(at * 100.0, 3));
        told.stop(Said::new("bench-do-not-pour").with("at", at));
    }
    Ok(told)
}

fn puck(humidity: &str, dry: Mass, rest: Mass) -> Result<Puck, BenchError> {
    let humidity = percent(humidity).ok_or_else(|| GivenError::NotThat {
        key: "humidity".to_owned(),
        typed: humidity.to_owned(),
        what: "relative humidity, like 40 %",
    })?;
    if dry > rest || dry <= Mass::ZERO {
        let (part, whole) = ("dry", "rest");
        return Err(Refused::PartAboveWhole { part, whole }.into());
    }
    Ok(Puck {
        humidity,
        gain: (rest - dry) / dry,
    })
}
