//! Whether the casting wants a feeder, and how large.

use measure::band::Band;
use measure::heat::TemperatureDifference;
use measure::length::{Length, Volume};
use measure::matter::Mass;
use metal::alloy::Family;
use metal::shrinkage::{FEED_DEMAND, feed_demand};
use mould::feeding::caine::caine_for_alloy;
use mould::feeding::feeder::{
    CoolingEnds, DIAMETER_BY_MODULUS, Feeder, IRON_MARGIN, MARGIN, USABLE_SHARE, VOLUME_RULE,
    feeder,
};
use mould::feeding::neck::{NECK, iron_neck_margin, neck_margin, round_neck};
use mould::feeding::need::{IronKnown, Need, NoFeeder, THIN_MODULUS, need};
use mould::feeding::rules::{Fed, GOVERNING, Rule, side_by_side};
use pattern::sections::Section;

use crate::amount::Amount;
use crate::job::Job;
use crate::placed_part::PlacedPart;
use crate::remark::of_feeding::FeedingFact;
use crate::work_out::casting::{Casting, band_text, length_text};
use crate::work_out::ledger::{Entry, Ledger};

/// The feeder of one casting, and its metal.
pub(super) struct Feeding {
    pub(super) feeder: Option<FeederBand>,
    pub(super) mass: Band<Mass>,
}

/// A feeder over everything that is uncertain in the casting it feeds.
#[derive(Clone, Copy)]
pub(super) struct FeederBand {
    /// Diameter, the height being the same.
    pub(super) diameter: Band<Length>,
    by_modulus: Band<Length>,
    by_volume: Band<Length>,
}

pub(super) fn feeding(
    job: &Job,
    part: &PlacedPart,
    casting: &Casting,
    ledger: &mut Ledger,
) -> Feeding {
    let none = Feeding {
        feeder: None,
        mass: Band::exact(Mass::ZERO),
    };
    if let Need::None(reason) = wanted(job, part.heaviest.modulus.high()) {
        say_none(job, reason, ledger);
        return none;
    }
    let demand = demand(job, casting, ledger);
    let margin = if job.alloy.family == Family::Iron {
        IRON_MARGIN
    } else {
        MARGIN
    };
    let Some(feeder) = feeder_over(part, margin, &demand) else {
        ledger.note(FeedingFact::FeederImpossible);
        return none;
    };
    write(job, part, &feeder, margin, &demand, ledger);
    neck(job, part, ledger);
    if job.alloy.family == Family::Iron {
        ledger.note(FeedingFact::IronMightFeedItself);
    }
    more_heavy_sections(part, margin, ledger);
    let cylinder = feeder
        .diameter
        .map(|d| d * (d * d) * (std::f64::consts::PI / 4.0));
    let mass = cylinder.with(&job.alloy.density_liquid.band, |volume, density| {
        density * volume
    });
    Feeding {
        feeder: Some(feeder),
        mass,
    }
}

/// The feeder at the small end, the likely place and the large end of the casting.
fn feeder_over(part: &PlacedPart, margin: f64, demand: &Band<f64>) -> Option<FeederBand> {
    let (modulus, volume) = (&part.heaviest.modulus, to_feed(part));
    let low = feeder(modulus.low(), margin, volume.low(), demand)?;
    let likely = feeder(modulus.likely(), margin, volume.likely(), demand)?;
    let high = feeder(modulus.high(), margin, volume.high(), demand)?;
    let over = |of: fn(&Feeder) -> Band<Length>| {
        Band::new(of(&low).low(), of(&likely).likely(), of(&high).high())
    };
    Some(FeederBand {
        diameter: over(|feeder| feeder.diameter),
        by_modulus: over(|feeder| Band::exact(feeder.by_modulus)),
        by_volume: over(|feeder| feeder.by_volume),
    })
}

/// The metal that the feeder makes good: sections thin enough to be fed by their gate are left out,
/// as they are in a casting that is thin all over.
fn to_feed(part: &PlacedPart) -> Band<Volume> {
    let is_thin = |section: &&Section| section.modulus <= THIN_MODULUS;
    let thin: Volume = part
        .sections
        .iter()
        .filter(is_thin)
        .map(|section| section.volume)
        .sum();
    part.volume.map(|volume| (volume - thin).max(Volume::ZERO))
}

fn wanted(job: &Job, heaviest: Length) -> Need {
    let iron = (job.alloy.family == Family::Iron).then(|| IronKnown {
        carbon_equivalent: job
            .carbon_equivalent
            .as_ref()
            .map(|share| share.ratio * 100.0),
        firm: job.firm.is_some(),
    });
    need(heaviest, iron)
}

fn say_none(job: &Job, reason: NoFeeder, ledger: &mut Ledger) {
    let (fact, because) = match (reason, &job.firm) {
        (NoFeeder::FirmIron, Some(shown)) => (
            FeedingFact::NoFeederIron {
                shown: shown.clone(),
            },
            format!("iron of this carbon swells; mould shown firm by: {shown}"),
        ),
        _ => (
            FeedingFact::NoFeederThin,
            "every section is thin enough to be fed by its gate".to_owned(),
        ),
    };
    ledger.choose("feeder", "none needed", because);
    ledger.note(fact);
}

/// What the feeder has to bring for each volume of casting.
fn demand(job: &Job, casting: &Casting, ledger: &mut Ledger) -> Band<f64> {
    let alloy = job.alloy;
    let (freezing, liquid) = (&alloy.freezing_shrinkage, &alloy.liquid_contraction);
    // At the low end the superheat is gone by the time that the mould is full.
    let none = TemperatureDifference::ZERO;
    let superheat = Band::new(
        none,
        casting.superheat.max(none),
        casting.superheat.max(none),
    );
    let demand = freezing.band.with_two(
        &liquid.band,
        &superheat,
        |freezing, per_kelvin, superheat| feed_demand(freezing, per_kelvin, superheat).max(0.0),
    );
    let kelvin = format!("{:.0} K", casting.superheat.as_kelvin());
    ledger.write(
        Entry::new("shrinkage to be fed", Amount::Share(demand), &FEED_DEMAND)
            .input("superheat", kelvin)
            .because(
                "freezing and the whole superheat; at the low end the superheat is lost in filling",
            )
            .seen(&freezing.sources)
            .seen(&liquid.sources),
    );
    demand
}

fn write(
    job: &Job,
    part: &PlacedPart,
    feeder: &FeederBand,
    margin: f64,
    demand: &Band<f64>,
    ledger: &mut Ledger,
) {
    let by_modulus = Amount::Length(feeder.by_modulus);
    ledger.write(
        Entry::new(
            "feeder diameter by modulus",
            by_modulus,
            &DIAMETER_BY_MODULUS,
        )
        .input(
            "modulus of the heaviest section",
            band_text(&part.heaviest.modulus),
        )
        .input("k", format!("{margin}"))
        .up(),
    );
    let share = measure::text::rounded(demand.likely() * 100.0, 2);
    ledger.write(
        Entry::new(
            "feeder diameter by volume",
            Amount::Length(feeder.by_volume),
            &VOLUME_RULE,
        )
        .input("metal to be fed", band_text(&to_feed(part)))
        .input("β", format!("{share} %"))
        .input("ε", "14 %")
        .up(),
    );
    let because = match feeder.by_volume.likely() > feeder.by_modulus.likely() {
        true => "set by the volume: it must not run empty; as high as wide",
        false => "set by the freezing: it must freeze last; as high as wide",
    };
    let entry = Entry::new(
        "feeder diameter",
        Amount::Length(feeder.diameter),
        &GOVERNING,
    );
    let entry = beside(job, part, margin, demand.likely(), entry);
    ledger.write(entry.because(because).up());
    ledger.choose(
        "feeder",
        "one on each casting, on its heaviest section",
        because,
    );
}

/// What every rule says, beside each other; those far from the one that governs are named.
fn beside(job: &Job, part: &PlacedPart, margin: f64, demand: f64, entry: Entry) -> Entry {
    let mut sides = part.extents;
    sides.sort_by(|a, b| b.as_m().total_cmp(&a.as_m()));
    let caine = caine_for_alloy(&job.alloy.name);
    let rules = side_by_side(&Fed {
        section: part.heaviest.modulus.likely(),
        volume: to_feed(part).likely(),
        whole: part.volume.likely() / part.area.likely(),
        inscribed: part.heaviest.inscribed,
        sides: Some(sides),
        demand,
        margin,
        height_over_diameter: 1.0,
        ends: CoolingEnds::One,
        usable: USABLE_SHARE,
        longer: 1.0,
        caine,
    });
    let Some(rules) = rules else { return entry };
    let mut entry = entry;
    for says in &rules.says {
        entry = match (says.diameter, says.rule) {
            (Some(diameter), rule) => entry.input(rule.name(), length_text(diameter)),
            (None, Rule::Caine) => entry.input(says.rule.name(), "no constants for this metal"),
            (None, _) => entry,
        };
    }
    let apart = rules.disagreeing(FAR_APART);
    match apart.is_empty() {
        true => entry,
        false => {
            let names: Vec<_> = apart.iter().map(|says| says.rule.name()).collect();
            entry.input("more than a fifth apart", names.join(", "))
        }
    }
}

/// Rules within a fifth of each other agree as well as any two books.
const FAR_APART: f64 = 0.2;

/// The neck, for a feeder that stands beside its section.
fn neck(job: &Job, part: &PlacedPart, ledger: &mut Ledger) {
    let iron = job.alloy.family == Family::Iron;
    let (margin, because) = match iron {
        true => (
            iron_neck_margin(),
            "of a feeder beside its section; it shuts early, so that the swelling stays inside",
        ),
        false => (
            neck_margin(),
            "of a feeder beside its section; one that stands on it wants no neck",
        ),
    };
    let across = part.heaviest.modulus.with(&margin, round_neck);
    ledger.write(
        Entry::new("neck across", Amount::Length(across), &NECK)
            .input(
                "modulus of the heaviest section",
                band_text(&part.heaviest.modulus),
            )
            .input("k", share_text(&margin))
            .because(because),
    );
}

fn share_text(band: &Band<f64>) -> String {
    let [low, high] = [band.low(), band.high()].map(|end| measure::text::rounded(end, 2));
    match low == high {
        true => low,
        false => format!("{low} to {high}"),
    }
}

fn more_heavy_sections(part: &PlacedPart, margin: f64, ledger: &mut Ledger) {
    let heaviest = part.heaviest.modulus.likely();
    let nearly = |modulus: Length| modulus * margin >= heaviest;
    let others: Vec<_> = part
        .sections
        .iter()
        .skip(1)
        .filter(|section| nearly(section.modulus))
        .collect();
    if let Some(next) = others.first() {
        ledger.note(FeedingFact::MoreHeavySections {
            count: others.len(),
            place: next.place_mm,
        });
    }
}
