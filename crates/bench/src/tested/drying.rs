//! The weight at which to stop drying, how long it takes, and when to weigh again.

use job::amount::Amount;
use job::words::said::Said;
use measure::band::Band;
use measure::flow::{Duration, Speed};
use measure::heat::Temperature;
use measure::length::{Area, Length};
use measure::matter::{Density, Mass};
use measure::text::rounded;
use sand::drying::{CRITICAL, Load, drying_group, drying_time, moisture_after, moisture_of};
use sand::evaporation::{Exposure, Leaving, Radiator, open_air, surface_balance};
use sand::moisture::{dry_down_stop, dry_from_wet};
use sand::psychrometrics::{Air, air, air_pressure};
use sand::standing::{SKIN_MM, standing_time};

use crate::given::{Given, GivenError};
use crate::tested::clock::{Clock, clock};
use crate::told::{Told, Value};
use crate::trouble::{BenchError, Refused};

/// What is asked for when sand is dried.
pub const KEYS: [&str; 17] = [
    "tub", "now", "wanted", "air", "humidity", "wind", "sun", "oven", "altitude", "area", "layer",
    "critical", "at_rest", "weighed", "after", "started", "density",
];

/// What is asked for when a mould stands.
pub const STAND_KEYS: [&str; 10] = [
    "now", "least", "air", "humidity", "wind", "sun", "oven", "altitude", "skin", "density",
];

/// How far a rate may be off before a tray was weighed: the books differ by as much.
const UNWEIGHED: f64 = 0.3;

/// How far it may be off once one was: our own choice, for weather that turns and sand that is
/// turned. Narrower, a cloud makes a liar of it; wider, the weighing was for nothing.
const WEIGHED: f64 = 0.1;

/// Air over a tray in a room, m/s: `common-practice`.
const STILL: Speed = Speed::from_m_per_s(0.2);

/// Loose riddled sand, dry: `shop-handbook-figures`, 0.9 to 1.2 g/cm³.
const LOOSE: Density = Density::from_g_per_cm3(1.1);

/// Dry sand in a mould: `shop-handbook-figures`.
const RAMMED: Density = Density::from_g_per_cm3(1.5);

/// Tells the stop weight; with the weather the time to it; with one weighing part way both better.
///
/// # Errors
///
/// Where something is missing, and where this air never dries it so far.
pub fn dry(given: &Given) -> Result<Told, BenchError> {
    let tub = given.mass("tub", "the sand now without its tub, like tub='22 kg'")?;
    let now = needed(
        given.moisture("now")?,
        "now",
        "moisture, like now='9 % of wet mass'",
    )?;
    let wanted = needed(
        given.moisture("wanted")?,
        "wanted",
        "like wanted='6 % of wet mass'",
    )?;
    if wanted > now {
        return Err(Refused::WetterWanted.into());
    }
    let mut told = Told::new(Said::new("bench-dry-head"));
    let stop = dry_down_stop(tub, now, wanted);
    told.amount("bench-stop-weight", Amount::Mass(Band::exact(stop)));
    told.amount("bench-water-to-lose", Amount::Mass(Band::exact(tub - stop)));
    let run = Run {
        dry: tub * (1.0 - now),
        from: dry_from_wet(now),
        to: dry_from_wet(wanted),
        at_rest: given.percent("at_rest")?.unwrap_or(0.0),
        critical: given.percent("critical")?,
    };
    let started = given.text("started").map(clock).transpose()?;
    match given.find::<Duration>("after")? {
        Some(after) => run.weighed(&mut told, given, after, started)?,
        None if given.has("air") => run.foretold(&mut told, given, started)?,
        None => told.note(Said::new("bench-give-weather")),
    }
    told.caution(Said::new("bench-silica"));
    Ok(told)
}

/// Tells how long a rammed mould may stand open.
///
/// # Errors
///
/// As [`dry`].
pub fn stand(given: &Given) -> Result<Told, BenchError> {
    let now = needed(
        given.moisture("now")?,
        "now",
        "like now='4.5 % of wet mass'",
    )?;
    let what = "moisture at which an edge crumbles, like least='3 % of wet mass'";
    let least = needed(given.moisture("least")?, "least", what)?;
    if least > now {
        return Err(Refused::WetterWanted.into());
    }
    let leaving = leaving(given)?;
    let skin = given
        .find::<Length>("skin")?
        .unwrap_or(Length::from_mm(SKIN_MM));
    let dry = given.find::<Density>("density")?.unwrap_or(RAMMED);
    let (from, to) = (dry_from_wet(now), dry_from_wet(least));
    let time = |rate| standing_time(dry, skin, from, to, rate);
    let mut told = Told::new(Said::new("bench-stand-head"));
    let rates = around(leaving.rate, UNWEIGHED);
    told.amount("bench-stands", Amount::Duration(rates.map(time)));
    told.note(Said::new("bench-stand-least"));
    told.caution(Said::new("bench-cover-damp"));
    Ok(told)
}

/// Adds how long it takes by what the shop's own log has taught, where it has: the book's time
/// stays above it, and is the one to write into the log as planned.
pub fn by_own_log(told: &mut Told, factor: Option<&Band<f64>>) {
    let book = told
        .figures
        .iter()
        .find(|figure| figure.id == "bench-drying-time");
    let time = book.and_then(|figure| match &figure.value {
        Value::Amount(Amount::Duration(time)) => Some(*time),
        _ => None,
    });
    if let Some((time, factor)) = time.zip(factor) {
        let own = factor.map(|times| time.likely() * times);
        told.amount("bench-drying-own", Amount::Duration(own));
        told.note(Said::new("bench-drying-book"));
    }
}

/// One drying: dry sand and moistures of it.
struct Run {
    dry: Mass,
    from: f64,
    to: f64,
    at_rest: f64,
    critical: Option<f64>,
}

impl Run {
    fn loads(&self) -> [Load; 3] {
        let critical = self.critical.map_or(CRITICAL, |one| [one; 3]);
        critical.map(|critical| Load {
            critical,
            at_rest: self.at_rest,
        })
    }

    fn mass_at(&self, moisture: f64) -> Mass {
        self.dry * (1.0 + moisture)
    }

    /// Before anything was weighed.
    fn foretold(
        &self,
        told: &mut Told,
        given: &Given,
        started: Option<Clock>,
    ) -> Result<(), BenchError> {
        let leaving = leaving(given)?;
        let area = self.area(given)?;
        told.number("bench-drying-rate", around(leaving.rate, UNWEIGHED));
        let celsius = format!("{} °C", rounded(leaving.surface.as_celsius(), 2));
        told.words("bench-surface", Said::typed(celsius));
        let group = |rate: f64| Duration::from_s(self.dry.as_kg() / area.as_m2() / rate * 3600.0);
        let rates = around(leaving.rate, UNWEIGHED);
        let groups = [
            group(rates.high()),
            group(rates.likely()),
            group(rates.low()),
        ];
        let whole = self.time_band(groups, self.from)?;
        told.amount("bench-drying-time", Amount::Duration(whole));
        let halfway = whole.low() / 2.0;
        self.weigh_again(told, groups[1], self.from, halfway, started)?;
        told.note(Said::new("bench-weigh-to-narrow"));
        Ok(())
    }

    /// After one weighing part way.
    fn weighed(
        &self,
        told: &mut Told,
        given: &Given,
        after: Duration,
        started: Option<Clock>,
    ) -> Result<(), BenchError> {
        let weighed = given.mass("weighed", "the tub after that time, like weighed='21.9 kg'")?;
        let then = moisture_of(weighed, self.dry)?;
        if then >= self.from {
            return Err(Refused::NothingDried {
                from: self.mass_at(self.from).as_kg(),
                to: weighed.as_kg(),
            }
            .into());
        }
        if then <= self.to {
            told.stop(Said::new("bench-dry-enough"));
            return Ok(());
        }
        let mut groups = [Duration::ZERO; 3];
        for (group, load) in groups.iter_mut().zip(self.loads()) {
            *group = drying_group(&load, after, self.from, then)?;
        }
        let likely = groups[1];
        let low = groups.iter().fold(likely, |low, one| low.min(*one)) * (1.0 - WEIGHED);
        let high = groups.iter().fold(likely, |high, one| high.max(*one)) * (1.0 + WEIGHED);
        let left = self.time_band([low, likely, high], then)?;
        told.amount("bench-time-left", Amount::Duration(left));
        let weighed_at = started.map(|clock| clock.later(after));
        self.weigh_again(told, likely, then, left.low() * 0.8, weighed_at)?;
        if let Some(clock) = weighed_at {
            let time = clock.later(left.likely()).to_string();
            told.words("bench-done-at", Said::typed(time));
        }
        Ok(())
    }

    /// The time from a moisture to the end, over groups and critical moistures.
    fn time_band(&self, groups: [Duration; 3], from: f64) -> Result<Band<Duration>, BenchError> {
        let loads = self.loads();
        let likely = drying_time(&loads[1], groups[1], from, self.to)?;
        let (mut low, mut high) = (likely, likely);
        for load in loads {
            low = low.min(drying_time(&load, groups[0], from, self.to)?);
            high = high.max(drying_time(&load, groups[2], from, self.to)?);
        }
        Ok(Band::new(low, likely, high))
    }

    fn weigh_again(
        &self,
        told: &mut Told,
        group: Duration,
        from: f64,
        wait: Duration,
        clock: Option<Clock>,
    ) -> Result<(), BenchError> {
        // People weigh on the five minutes.
        let minutes = ((wait.as_min() / 5.0).round() * 5.0).max(5.0);
        let wait = Duration::from_min(minutes);
        let moisture = moisture_after(&self.loads()[1], group, from, wait)?;
        let mass = format!("{} kg", rounded(self.mass_at(moisture).as_kg(), 3));
        told.line_weigh_again(clock.map(|clock| clock.later(wait)), minutes, mass);
        Ok(())
    }

    fn area(&self, given: &Given) -> Result<Area, BenchError> {
        if let Some(area) = given.find::<Area>("area")? {
            return match area > Area::ZERO {
                true => Ok(area),
                false => Err(Refused::NoArea.into()),
            };
        }
        let what = "surface it dries from, like area='6 m2', or its depth, like layer='30 mm'";
        let layer: Length = given.get("layer", what).map_err(|error| match error {
            GivenError::Missing { .. } => GivenError::Missing { key: "area", what },
            other => other,
        })?;
        let loose = given.find::<Density>("density")?.unwrap_or(LOOSE);
        match layer > Length::ZERO {
            true => Ok(Area::from_m2(
                self.dry.as_kg() / loose.as_kg_per_m3() / layer.as_m(),
            )),
            false => Err(Refused::NoArea.into()),
        }
    }
}

impl Told {
    fn line_weigh_again(&mut self, clock: Option<Clock>, minutes: f64, mass: String) {
        let said = match clock {
            Some(clock) => Said::new("bench-weigh-at").with("time", clock.to_string()),
            None => Said::new("bench-weigh-in").with("minutes", rounded(minutes, 4)),
        };
        self.note(said.with("mass", mass));
    }
}

/// How the wet surface dries in the weather that was typed.
fn leaving(given: &Given) -> Result<Leaving, BenchError> {
    let oven = given.find::<Temperature>("oven")?;
    let outside: Temperature = given.get("air", "of the air, like air='28 C'")?;
    let humidity = needed(
        given.percent("humidity")?,
        "humidity",
        "of the air, like humidity='60 %'",
    )?;
    let altitude = given.find::<Length>("altitude")?.unwrap_or(Length::ZERO);
    let pressure = air_pressure(altitude);
    let air = warmed(air(outside, humidity, pressure)?, oven);
    let wind = given.find::<Speed>("wind")?.unwrap_or(STILL);
    let exposure = Exposure {
        air,
        transfer: open_air(&air, wind),
        below: 0.0,
        sun: given.number("sun")?.unwrap_or(0.0),
        radiator: oven.map(|temperature| Radiator {
            temperature,
            emissivity: 0.94,
        }),
    };
    if !(0.0..=1400.0).contains(&exposure.sun) {
        return Err(Refused::Sun(exposure.sun).into());
    }
    Ok(surface_balance(&exposure)?)
}

/// The air of an oven holds the water of the air outside.
fn warmed(air: Air, oven: Option<Temperature>) -> Air {
    Air {
        dry_bulb: oven.unwrap_or(air.dry_bulb),
        ..air
    }
}

fn around(rate: f64, off: f64) -> Band<f64> {
    Band::new(rate * (1.0 - off), rate, rate * (1.0 + off))
}

fn needed<T>(found: Option<T>, key: &'static str, what: &'static str) -> Result<T, GivenError> {
    found.ok_or(GivenError::Missing { key, what })
}
