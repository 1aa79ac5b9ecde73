//! How wet the sand is, what to add, or where to stop drying.

use job::amount::Amount;
use job::words::said::Said;
use measure::band::Band;
use measure::matter::Mass;
use measure::text::shown::Rounding;
use sand::moisture::{dry_down_stop, dry_from_wet, water_to_add, weighing_error, wet_basis};

use crate::given::Given;
use crate::told::{Figure, Told, Value};
use crate::trouble::{BenchError, Refused};

/// What is asked for.
pub const KEYS: [&str; 6] = ["sand", "wet", "dry", "now", "wanted", "step"];

/// Error of a moisture above which a larger handful is asked for, a share of the wet mass: a
/// third of the water of a good sand.
const COARSE: f64 = 0.01;

/// Moisture below which a note about natural sands is of use: they mould at 8 to 9 %
/// (`ilorin-natural-sands`).
const BELOW_NATURAL: f64 = 0.08;

/// Tells moisture on both bases, and where the heap is named the water it lacks or has too much.
///
/// # Errors
///
/// Where something is missing or not understood, or dry sand weighs more than wet.
pub fn water(given: &Given) -> Result<Told, BenchError> {
    let mut told = Told::new(Said::new("bench-water-head"));
    let now = moisture_now(given, &mut told)?;
    if let Some(wanted) = given.moisture("wanted")? {
        let sand = given.mass("sand", "the sand as it is, like sand='18 kg'")?;
        match wanted >= now {
            true => to_add(&mut told, sand, now, wanted),
            false => to_lose(&mut told, sand, now, wanted),
        }
        if wanted < BELOW_NATURAL {
            told.note(Said::new("bench-natural-temper"));
        }
    }
    Ok(told)
}

/// Moisture of the wet mass, from two weighings or as typed, told on both bases.
///
/// # Errors
///
/// As [`water`].
pub fn moisture_now(given: &Given, told: &mut Told) -> Result<f64, BenchError> {
    let now = match given.moisture("now")? {
        Some(now) => now,
        None => weighed(given, told)?,
    };
    told.share("bench-moisture-of-wet", Band::exact(now));
    told.share("bench-moisture-of-dry", Band::exact(dry_from_wet(now)));
    Ok(now)
}

fn weighed(given: &Given, told: &mut Told) -> Result<f64, BenchError> {
    let wet = given.mass(
        "wet",
        "a handful as taken, like wet='200 g'; or now='5 % of wet mass'",
    )?;
    let dry = given.mass("dry", "the same handful dried, like dry='189.6 g'")?;
    if dry > wet || wet <= Mass::ZERO || dry <= Mass::ZERO {
        return Err(Refused::DryAboveWet {
            wet: wet.as_g(),
            dry: dry.as_g(),
        }
        .into());
    }
    if let Some(step) = given.find_mass("step")? {
        let off = weighing_error(step, wet);
        told.share("bench-moisture-off-by", Band::exact(off));
        if off > COARSE {
            let enough = step * (std::f64::consts::SQRT_2 / COARSE);
            let grams = format!("{:.0} g", enough.as_g().ceil());
            told.caution(Said::new("bench-larger-handful").with("mass", grams));
        }
    }
    Ok(wet_basis(wet, dry))
}

fn to_add(told: &mut Told, sand: Mass, now: f64, wanted: f64) {
    let water = water_to_add(sand, now, wanted);
    let mass = |mass| Value::Amount(Amount::Mass(Band::exact(mass)));
    told.figures
        .push(Figure::new("bench-water-to-add", mass(water)));
    told.figures.push(Figure {
        rounding: Rounding::Down,
        ..Figure::new("bench-water-each-spray", mass(water / 3.0))
    });
    told.note(Said::new("bench-three-sprays"));
}

fn to_lose(told: &mut Told, sand: Mass, now: f64, wanted: f64) {
    let stop = dry_down_stop(sand, now, wanted);
    told.amount("bench-stop-weight", Amount::Mass(Band::exact(stop)));
    told.amount(
        "bench-water-to-lose",
        Amount::Mass(Band::exact(sand - stop)),
    );
    told.caution(Said::new("bench-silica"));
}
