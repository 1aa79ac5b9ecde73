//! Whether the casting wants a feeder, and how large.

use measure::band::Band;
use measure::heat::TemperatureDifference;
use measure::length::{Area, Length, Volume};
use measure::matter::Mass;
use metal::alloy::Family;
use metal::shrinkage::{FEED_DEMAND, feed_demand};
use mould::feeding::caine::caine_for_alloy;
use mould::feeding::feeder::{
    CoolingEnds, DIAMETER_BY_MODULUS, IRON_MARGIN, MARGIN, USABLE_SHARE, VOLUME_RULE,
};
use mould::feeding::neck::{NECK, iron_neck_margin, neck_margin, round_neck};
use mould::feeding::need::{IronKnown, Need, NoFeeder, THIN_MODULUS, need};
use mould::feeding::rules::{Fed, GOVERNING, Rule, SideBySide, side_by_side};
use pattern::sections::Section;

use crate::amount::Amount;
use crate::job::Job;
use crate::placed_part::PlacedPart;
use crate::remark::of_feeding::FeedingFact;
use crate::words::said::Said;
use crate::work_out::casting::Casting;
use crate::work_out::ledger::{Entry, Ledger};
use crate::work_out::told::{band, exact, list, number, share, text, word};

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

/// What a feeder is sized for, over everything that is uncertain in it.
struct Wants {
    /// Modulus of the heaviest section.
    section: Band<Length>,
    /// The metal that the feeder makes good, and the surface that cools it.
    volume: Band<Volume>,
    surface: Area,
    /// What it has to bring, as a share of that metal, never below nought.
    demand: Band<f64>,
    /// Modulus of the feeder over that of the section.
    margin: f64,
    /// Length, width, thickness of the box round the part.
    sides: [Length; 3],
    /// The largest ball in the section.
    inscribed: Option<Length>,
    /// Name of the alloy.
    metal: &'static str,
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
    let wants = Wants::of(job, part, &demand);
    let Some(feeder) = wants.feeder() else {
        ledger.note(FeedingFact::FeederImpossible);
        return none;
    };
    write(&wants, &feeder, ledger);
    neck(job, part, ledger);
    if job.alloy.family == Family::Iron {
        ledger.note(FeedingFact::IronMightFeedItself);
    }
    more_heavy_sections(part, wants.margin, ledger);
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

impl Wants {
    fn of(job: &Job, part: &PlacedPart, demand: &Band<f64>) -> Wants {
        let (volume, surface) = to_feed(part);
        let mut sides = part.extents;
        sides.sort_by(|a, b| b.as_m().total_cmp(&a.as_m()));
        Wants {
            section: part.heaviest.modulus,
            volume,
            surface,
            demand: demand.map(|demand| demand.max(0.0)),
            margin: match job.alloy.family {
                Family::Iron => IRON_MARGIN,
                _ => MARGIN,
            },
            sides,
            inscribed: part.heaviest.inscribed,
            metal: &job.alloy.name,
        }
    }

    /// Every rule at one end, or at the likely place.
    fn rules(&self, volume: Volume, section: Length, demand: f64) -> Option<SideBySide> {
        side_by_side(&Fed {
            section,
            volume,
            whole: volume / self.surface,
            inscribed: self.inscribed,
            sides: Some(self.sides),
            demand,
            margin: self.margin,
            height_over_diameter: 1.0,
            ends: CoolingEnds::One,
            usable: USABLE_SHARE,
            longer: 1.0,
            caine: caine_for_alloy(self.metal),
        })
    }

    fn likely(&self) -> Option<SideBySide> {
        let (volume, section) = (self.volume.likely(), self.section.likely());
        self.rules(volume, section, self.demand.likely())
    }

    /// The feeder at the small end, the likely place and the large end of the casting.
    fn feeder(&self) -> Option<FeederBand> {
        let (volume, section, demand) = (&self.volume, &self.section, &self.demand);
        let low = self.rules(volume.low(), section.low(), demand.low())?;
        let likely = self.likely()?;
        let high = self.rules(volume.high(), section.high(), demand.high())?;
        let by = |rule| {
            let ends = [&low, &likely, &high].map(|rules| rules.diameter_by(rule));
            let [Some(low), Some(likely), Some(high)] = ends else {
                return None;
            };
            Some(Band::new(low, likely, high))
        };
        Some(FeederBand {
            diameter: Band::new(low.diameter, likely.diameter, high.diameter),
            by_modulus: by(Rule::Modulus)?,
            by_volume: by(Rule::Volume)?,
        })
    }
}

/// The metal that the feeder makes good and what cools it: sections thin enough to be fed by their
/// gate are left out, as they are in a casting that is thin all over.
fn to_feed(part: &PlacedPart) -> (Band<Volume>, Area) {
    let is_heavy = |section: &&Section| section.modulus > THIN_MODULUS;
    let heavy = || part.sections.iter().filter(is_heavy);
    let of_all: Volume = part.sections.iter().map(|section| section.volume).sum();
    let cooled_all: Area = part.sections.iter().map(|section| section.cooled).sum();
    let (volume, cooled): (Volume, Area) = (
        heavy().map(|section| section.volume).sum(),
        heavy().map(|section| section.cooled).sum(),
    );
    let area = part.area.likely();
    match volume > Volume::ZERO {
        true => (
            part.volume.map(|whole| whole * (volume / of_all)),
            area * (cooled / cooled_all),
        ),
        false => (part.volume, area),
    }
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
            Said::new("reason-feeder-firm").with("shown", shown.as_str()),
        ),
        _ => (FeedingFact::NoFeederThin, Said::new("reason-feeder-thin")),
    };
    ledger.choose("feeder", Said::new("chosen-feeder-none"), because);
    ledger.note(fact);
}

/// Part of the superheat that is left when the mould is full: low, likely, high. By the heat that
/// sand draws while it fills, beside that until all is frozen, thin castings lose all of it, heavy
/// ones a quarter, and one that fills in a fiftieth of its freezing time half, stream counted (a
/// judgement). With all of it feeders come out a tenth too wide; with none a heavy casting sinks.
const LEFT_WHEN_FULL: [f64; 3] = [0.0, 0.5, 0.75];

/// The superheat that is likely left when the mould is full.
pub(super) fn left_when_full(casting: &Casting) -> TemperatureDifference {
    let [_, likely, _] = LEFT_WHEN_FULL;
    casting.superheat.max(TemperatureDifference::ZERO) * likely
}

/// What the feeder has to bring for each volume of casting.
fn demand(job: &Job, casting: &Casting, ledger: &mut Ledger) -> Band<f64> {
    let alloy = job.alloy;
    let (freezing, liquid) = (&alloy.freezing_shrinkage, &alloy.liquid_contraction);
    let whole = casting.superheat.max(TemperatureDifference::ZERO);
    let [low, likely, high] = LEFT_WHEN_FULL.map(|left| whole * left);
    let superheat = Band::new(low, likely, high);
    let demand = freezing
        .band
        .with_two(&liquid.band, &superheat, feed_demand);
    ledger.write(
        Entry::new("shrinkage to be fed", Amount::Share(demand), &FEED_DEMAND)
            .input("freezing", share(&freezing.band))
            .input(
                "per_100_kelvin",
                share(&liquid.band.map(|per_kelvin| per_kelvin * 100.0)),
            )
            .input("superheat", band(&superheat))
            .because(Said::new("because-demand"))
            .seen(&freezing.sources)
            .seen(&liquid.sources),
    );
    demand
}

fn write(wants: &Wants, feeder: &FeederBand, ledger: &mut Ledger) {
    let by_modulus = Amount::Length(feeder.by_modulus);
    ledger.write(
        Entry::new(
            "feeder diameter by modulus",
            by_modulus,
            &DIAMETER_BY_MODULUS,
        )
        .input("section", band(&wants.section))
        .input("margin", number(&Band::exact(wants.margin)))
        .up(),
    );
    ledger.write(
        Entry::new(
            "feeder diameter by volume",
            Amount::Length(feeder.by_volume),
            &VOLUME_RULE,
        )
        .answer("diameter")
        .input("casting", band(&wants.volume))
        .input("demand", share(&wants.demand))
        .input("usable", share(&Band::exact(USABLE_SHARE)))
        .up(),
    );
    let because = match feeder.by_volume.likely() > feeder.by_modulus.likely() {
        true => Said::new("reason-feeder-volume"),
        false => Said::new("reason-feeder-freezing"),
    };
    ledger.write(governing(wants, feeder).because(because.clone()).up());
    ledger.choose("feeder", Said::new("chosen-feeder-each"), because);
}

/// The larger of the two rules that have to hold, with what every other rule says beside it.
fn governing(wants: &Wants, feeder: &FeederBand) -> Entry {
    let diameter = Amount::Length(feeder.diameter);
    let entry = Entry::new("feeder diameter", diameter, &GOVERNING)
        .input("section", band(&wants.section))
        .input("casting", band(&wants.volume))
        .input("surface", exact(wants.surface))
        .input("demand", share(&wants.demand))
        .input("metal", word(wants.metal))
        .input("margin", number(&Band::exact(wants.margin)))
        .input("usable", share(&Band::exact(USABLE_SHARE)))
        .input("box", list(&wants.sides));
    let entry = match wants.inscribed {
        Some(ball) => entry.input("inscribed", exact(ball)),
        None => entry,
    };
    beside(wants, entry)
}

/// What every rule says, beside each other; those far from the one that governs are named.
fn beside(wants: &Wants, entry: Entry) -> Entry {
    let Some(rules) = wants.likely() else {
        return entry;
    };
    let mut entry = entry;
    for says in &rules.says {
        entry = match (says.diameter, says.rule) {
            (Some(diameter), rule) => entry.beside(rule.name(), text(diameter)),
            (None, Rule::Caine) => entry.beside(says.rule.name(), "no constants for this metal"),
            (None, _) => entry,
        };
    }
    let apart = rules.disagreeing(FAR_APART);
    match apart.is_empty() {
        true => entry,
        false => {
            let names: Vec<_> = apart.iter().map(|says| says.rule.name()).collect();
            entry.beside("more than a fifth apart", names.join(", "))
        }
    }
}

/// Rules within a fifth of each other agree as well as any two books.
const FAR_APART: f64 = 0.2;

/// The neck, for a feeder that stands beside its section.
fn neck(job: &Job, part: &PlacedPart, ledger: &mut Ledger) {
    let iron = job.alloy.family == Family::Iron;
    let margin = margin_of_neck(job);
    let because = match iron {
        true => Said::new("because-neck-iron"),
        false => Said::new("because-neck"),
    };
    let across = neck_across(job, part);
    ledger.write(
        Entry::new("neck across", Amount::Length(across), &NECK)
            .input("section", band(&part.heaviest.modulus))
            .input("iron", word(if iron { "yes" } else { "no" }))
            .input("margin", number(&margin))
            .because(because),
    );
}

fn margin_of_neck(job: &Job) -> Band<f64> {
    match job.alloy.family {
        Family::Iron => iron_neck_margin(),
        _ => neck_margin(),
    }
}

/// Side of the neck.
pub(super) fn neck_across(job: &Job, part: &PlacedPart) -> Band<Length> {
    part.heaviest.modulus.with(&margin_of_neck(job), round_neck)
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
