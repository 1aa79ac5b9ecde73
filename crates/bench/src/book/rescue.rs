//! Bringing back a heap that is tired, rained on, or both.

use job::amount::Amount;
use job::words::said::Said;
use measure::band::Band;
use measure::matter::Mass;
use measure::text::rounded;
use sand::burning::burning_loss;
use sand::heap::{dilute_dry, fines_after};
use sand::moisture::dry_down_stop;
use sand::sieve::clay_by_wash;

use crate::given::{Given, GivenError};
use crate::tested::water::moisture_now;
use crate::told::Told;
use crate::trouble::{BenchError, Refused};

/// What is asked for.
pub const KEYS: [&str; 16] = [
    "heap", "wet", "dry", "now", "step", "wanted", "dried", "washed", "unburnt", "burnt",
    "squeeze", "silicate", "sand", "clay", "exchange", "add_clay",
];

/// Part of the heap exchanged where nothing is typed: a fifth, `common-practice`. A tenth hardly
/// moves the fines, a half is a new heap.
const EXCHANGE: f64 = 0.20;

/// New clay where nothing is typed, of the dry heap: `common-practice`.
const ADD_CLAY: f64 = 0.015;

/// Moisture wanted where nothing is typed: the middle of bentonite sand, 3 to 5 % and a little
/// over, `squeeze-question`.
const WANTED: f64 = 0.045;

/// Part of the heap above which adding dry stuff to it is no way of drying: a quarter, as
/// `oddside reckon dry-by-dilution` has it.
const SENSIBLE: f64 = 0.25;

/// Fines above which a weak squeeze speaks of dead clay, not of too little: as much as good
/// synthetic sands have of live clay, `foundry-sand-guide` 5 to 10 %.
const MANY_FINES: f64 = 0.08;

/// Burning loss above which sands get gassy: from memory, `shop-handbook-figures` 2 to 5 %.
const GASSY: f64 = 0.05;

/// Tells what to dry off, throw out and add, in which order, and what it comes to.
///
/// # Errors
///
/// What is missing or cannot be.
pub fn rescue(given: &Given) -> Result<Told, BenchError> {
    let heap = given.mass("heap", "the heap as it lies, like heap='90 kg'")?;
    let mut told = Told::new(Said::new("bench-rescue-head"));
    let now = moisture_now(given, &mut told)?;
    let dry = heap * (1.0 - now);
    to_dry(&mut told, given, heap, now)?;
    let fines = fines_now(&mut told, given)?;
    loss(&mut told, given)?;
    renewal(&mut told, given, dry, fines)?;
    order(&mut told, given, fines);
    Ok(told)
}

fn to_dry(told: &mut Told, given: &Given, heap: Mass, now: f64) -> Result<(), BenchError> {
    let wanted = given.moisture("wanted")?.unwrap_or(WANTED);
    if wanted >= now {
        return Ok(());
    }
    let stop = dry_down_stop(heap, now, wanted);
    told.amount("bench-stop-weight", kg(stop));
    told.amount("bench-water-to-lose", kg(heap - stop));
    let diluted = dilute_dry(heap, now, wanted);
    told.amount("bench-dilution", kg(diluted));
    if diluted > heap * SENSIBLE {
        told.caution(Said::new("bench-do-not-dilute"));
    }
    Ok(())
}

fn fines_now(told: &mut Told, given: &Given) -> Result<Option<f64>, BenchError> {
    let Some((before, after)) = pair(given, "dried", "washed")? else {
        return Ok(None);
    };
    let fines = clay_by_wash(before, after);
    told.share("bench-washable", Band::exact(fines));
    let weak = given.text("squeeze") == Some("crumbles");
    match weak && fines > MANY_FINES {
        true => told.caution(Said::new("bench-dead-clay")),
        false => told.note(Said::new("bench-washable-all")),
    }
    Ok(Some(fines))
}

fn loss(told: &mut Told, given: &Given) -> Result<(), BenchError> {
    if let Some((before, after)) = pair(given, "unburnt", "burnt")? {
        let loss = burning_loss(before, after);
        told.share("bench-burning-loss", Band::exact(loss));
        if loss > GASSY {
            told.caution(Said::new("bench-gassy"));
        }
    }
    Ok(())
}

fn renewal(
    told: &mut Told,
    given: &Given,
    dry: Mass,
    fines: Option<f64>,
) -> Result<(), BenchError> {
    let exchange = given.percent("exchange")?.unwrap_or(EXCHANGE);
    let add_clay = given.percent("add_clay")?.unwrap_or(ADD_CLAY);
    let (sand, clay) = (dry * exchange, dry * add_clay);
    told.amount("bench-out-and-in", kg(sand));
    told.amount("bench-clay-to-add", kg(clay));
    let short = [
        ("bench-short-sand", "sand", sand),
        ("bench-short-clay", "clay", clay),
    ];
    for (id, key, wanted) in short {
        if let Some(has) = given.find_mass(key)?
            && has < wanted
        {
            let lacking = format!("{} kg", rounded((wanted - has).as_kg(), 3));
            told.caution(Said::new(id).with("mass", lacking));
        }
    }
    if let Some(fines) = fines {
        // The crust thrown out first takes fines with it, but how much nobody knows before: the
        // mixed heap is the worse end, new sand that is itself washed the other.
        let after = fines_after(fines, 0.0, exchange, add_clay);
        told.share("bench-fines-after", Band::exact(after));
    }
    Ok(())
}

fn order(told: &mut Told, given: &Given, fines: Option<f64>) {
    let steps = [
        "bench-step-dry",
        "bench-step-sieve",
        "bench-step-crust",
        "bench-step-add",
        "bench-step-mull",
        "bench-step-test",
    ];
    for step in steps {
        told.step(Said::new(step));
    }
    if given.text("silicate") == Some("yes") {
        told.caution(Said::new("bench-silicate-out"));
    }
    if fines.is_none() {
        told.note(Said::new("bench-wash-first"));
    }
    told.caution(Said::new("bench-silica"));
    told.caution(Said::new("bench-dull-pour"));
}

/// Two weights of one sample, the second not above the first.
fn pair(
    given: &Given,
    first: &'static str,
    second: &'static str,
) -> Result<Option<(Mass, Mass)>, BenchError> {
    if !given.has(first) && !given.has(second) {
        return Ok(None);
    }
    let what = "both weights of the sample are wanted, like 50.0 g";
    let missing = |key| GivenError::Missing { key, what };
    let before = given.find_mass(first)?.ok_or(missing(first))?;
    let after = given.find_mass(second)?.ok_or(missing(second))?;
    if after > before || before <= Mass::ZERO {
        let (part, whole) = (second, first);
        return Err(Refused::PartAboveWhole { part, whole }.into());
    }
    Ok(Some((before, after)))
}

fn kg(mass: Mass) -> Amount {
    Amount::Mass(Band::exact(mass))
}
