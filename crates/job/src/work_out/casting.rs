//! The casting itself: its mass, its sections and how they freeze, how hot to pour, how large to
//! make the pattern.

use measure::band::Band;
use measure::flow::{Duration, FreezingConstant};
use measure::heat::{HeatDrawing, HeatPerMass, Temperature, TemperatureDifference};
use measure::length::{Area, Length, Volume};
use measure::matter::{Density, Mass};
use metal::casting_mass::{CASTING_MASS, casting_mass};
use metal::least_wall::least_wall;
use metal::pouring_temperature::{POURING_BAND, pouring_band, superheat};
use mould::freezing::{FREEZING_TIME, FreezingHeat, freezing_time, mould_constant};
use pattern::contraction::{PATTERN_LENGTH, pattern_length};
use pattern::sections::{MODULUS, modulus};

use crate::amount::Amount;
use crate::job::Job;
use crate::learned::{OWN_FACTOR, shown};
use crate::placed_part::PlacedPart;
use crate::remark::of_pattern::PatternFact;
use crate::shop::Shop;
use crate::words::said::Said;
use crate::work_out::allowances::{allowances, longest};
use crate::work_out::ledger::{Entry, Ledger};
use crate::work_out::thirst::{Thirst, thirst};
use crate::work_out::told::{self, band, band_text, exact, text, word};

/// What the rest of the plan needs to know of one casting.
pub(super) struct Casting {
    pub(super) mass: Band<Mass>,
    pub(super) wall: Length,
    pub(super) wall_freezes: Band<Duration>,
    pub(super) heaviest_freezes: Band<Duration>,
    pub(super) pouring: Band<Temperature>,
    pub(super) superheat: TemperatureDifference,
    pub(super) growth: f64,
}

pub(super) fn casting(job: &Job, shop: &Shop, part: &PlacedPart, ledger: &mut Ledger) -> Casting {
    let mass = mass(job, part, ledger);
    let thinnest = part.thinnest.modulus;
    let pouring = pouring(job, &thinnest, ledger);
    let superheat = superheat(pouring.likely(), job.alloy.liquidus.band.likely());
    let sand = thirst(job, shop);
    let constant = constant(job, superheat, &sand);
    let wall_freezes = constant.with(&thinnest, freezing_time);
    moduli(part, ledger);
    freezing(&part.heaviest.modulus, &constant, &sand, ledger);
    walls(job, part, ledger);
    let contraction = contraction(job, part, ledger);
    allowances(job, part, &contraction, ledger);
    Casting {
        mass,
        // A wall may be thinner than it was measured by as much as the measure is off.
        wall: thinnest.likely() * (2.0 * (1.0 - error(part))),
        wall_freezes,
        heaviest_freezes: constant.with(&part.heaviest.modulus, freezing_time),
        pouring,
        superheat,
        growth: contraction.likely(),
    }
}

fn mass(job: &Job, part: &PlacedPart, ledger: &mut Ledger) -> Band<Mass> {
    let density = &job.alloy.density_solid;
    let mass = density.band.with(&part.volume, |density, volume| {
        casting_mass(volume, density)
    });
    ledger.write(
        Entry::new("casting mass", Amount::Mass(mass), &CASTING_MASS)
            .input("volume", band(&part.volume))
            .beside("volume known", part.known.clone())
            .input("density", band(&density.band))
            .seen(&density.sources),
    );
    mass
}

fn pouring(job: &Job, thinnest: &Band<Length>, ledger: &mut Ledger) -> Band<Temperature> {
    let alloy = job.alloy;
    let pouring = pouring_band(alloy, thinnest.likely());
    ledger.write(
        Entry::new(
            "pouring temperature",
            Amount::Temperature(pouring),
            &POURING_BAND,
        )
        .input("metal", word(&alloy.name))
        .input("section", exact(thinnest.likely()))
        .beside("liquidus", band_text(&alloy.liquidus.band))
        .seen(&alloy.pouring_light.sources)
        .seen(&alloy.pouring_heavy.sources)
        .because(Said::new("because-pouring")),
    );
    pouring
}

/// The freezing constant over what is uncertain in it: the latent heat, and the sand. A trial in
/// the same metal holds what is uncertain in the metal already.
fn constant(
    job: &Job,
    superheat: TemperatureDifference,
    sand: &Thirst<'_>,
) -> Band<FreezingConstant> {
    let alloy = job.alloy;
    let of = |latent: HeatPerMass, sand: HeatDrawing, density: Density| {
        mould_constant(&FreezingHeat {
            density,
            latent,
            liquid_heat: alloy.specific_heat_liquid.band.likely(),
            superheat: superheat.max(TemperatureDifference::ZERO),
            solidus: alloy.solidus.band.likely(),
            sand,
        })
    };
    let (latent, density) = match sand.same_metal {
        true => (
            Band::exact(alloy.latent_heat.band.likely()),
            Band::exact(alloy.density_liquid.band.likely()),
        ),
        false => (alloy.latent_heat.band, alloy.density_liquid.band),
    };
    latent.with_two(&sand.band, &density, of)
}

/// A measured modulus is good to three per cent on plates, cubes, balls and bosses.
const MODULUS_ERROR: f64 = 0.03;

/// How far a modulus may be off; what was not measured carries its own, far wider band.
pub(super) fn error(part: &PlacedPart) -> f64 {
    if part.is_measured { MODULUS_ERROR } else { 0.0 }
}

fn moduli(part: &PlacedPart, ledger: &mut Ledger) {
    let unplaced = match part.is_measured {
        true => "the whole part",
        false => "from the sizes given",
    };
    let spots = [
        ("modulus of the heaviest section", &part.heaviest),
        ("modulus of the thinnest section", &part.thinnest),
    ];
    for (name, spot) in spots {
        let place = spot.place_mm.map_or(unplaced.to_owned(), place_text);
        let inscribed = spot.inscribed.map_or_else(String::new, text);
        let entry = match spot.over {
            Some((volume, cooled)) => over_surface(name, volume, cooled),
            None => as_measured(name, part, &spot.modulus),
        };
        ledger.write(entry.beside("place", place).beside("inscribed", inscribed));
    }
    if part.unresolved > 0.01 {
        ledger.note(PatternFact::WallsUnmeasured {
            share: part.unresolved,
        });
    }
}

/// A modulus that is metal over cooled surface.
fn over_surface(name: &'static str, volume: Volume, cooled: Area) -> Entry {
    let cooled = Band::new(
        cooled * (1.0 - MODULUS_ERROR),
        cooled,
        cooled * (1.0 + MODULUS_ERROR),
    );
    let of_surface = cooled.map(|cooled| modulus(volume, cooled));
    Entry::new(name, Amount::Length(of_surface), &MODULUS)
        .input("volume", exact(volume))
        .input("cooled", band(&cooled))
}

/// A modulus as its place feels metal and surface, or as sizes leave it open: no one division.
fn as_measured(name: &'static str, part: &PlacedPart, modulus: &Band<Length>) -> Entry {
    let error = error(part);
    let band = Band::new(
        modulus.low() * (1.0 - error),
        modulus.likely(),
        modulus.high() * (1.0 + error),
    );
    Entry::new(name, Amount::Length(band), &MODULUS).in_part()
}

fn freezing(
    heaviest: &Band<Length>,
    constant: &Band<FreezingConstant>,
    sand: &Thirst<'_>,
    ledger: &mut Ledger,
) {
    let time = constant.with(heaviest, freezing_time);
    let entry = Entry::new(
        "freezing time of the heaviest section",
        Amount::Duration(time),
        &FREEZING_TIME,
    )
    .input("section", band(heaviest))
    .input("constant", band(constant))
    .beside(
        "counted in it",
        "the superheat, lost in the mould before the metal freezes",
    );
    let entry = match &sand.learned {
        Some(factor) => entry.beside(OWN_FACTOR, shown(factor)),
        None => entry,
    };
    if sand.learned.is_some() {
        ledger.write(entry.because(Said::new("because-own-log")));
        return;
    }
    ledger.write(match sand.own {
        Some(trial) => entry
            .beside("own slab froze in", band_text(&trial.time))
            .because(Said::new(match sand.same_metal {
                true => "because-slab-same",
                false => "because-slab-carried",
            })),
        None => entry
            .seen(&["feeder-lecture".to_owned()])
            .because(Said::new("because-books")),
    });
}

fn walls(job: &Job, part: &PlacedPart, ledger: &mut Ledger) {
    let least = least_wall(job.alloy.family).value.low();
    let wall = part.thinnest.modulus.likely() * 2.0;
    if wall < least {
        let place = part.thinnest.place_mm;
        ledger.note(PatternFact::ThinWall { wall, least, place });
    }
}

/// Writes the contraction and the growth of the pattern; gives the contraction.
fn contraction(job: &Job, part: &PlacedPart, ledger: &mut Ledger) -> Band<f64> {
    let longest = longest(part);
    let (share, said, keys) = match &job.contraction {
        Some(own) => {
            let said = vec![("own castings".to_owned(), own.given_back())];
            (Band::exact(own.ratio), said, Vec::new())
        }
        None => sourced_contraction(job, ledger),
    };
    let entry = Entry::new("contraction", Amount::Share(share), &PATTERN_LENGTH).in_part();
    let entry = said
        .into_iter()
        .fold(entry, |entry, (words, text)| entry.beside(&words, text));
    ledger.write(entry.seen(&keys).because(Said::new("because-contraction")));
    let length = share.map(|share| pattern_length(longest, share));
    ledger.write(
        Entry::new("pattern length", Amount::Length(length), &PATTERN_LENGTH)
            .input("part", exact(longest))
            .input("contraction", told::share(&share))
            .because(Said::new("because-gives"))
            .seen(&keys),
    );
    share
}

type SourcedContraction = (Band<f64>, Vec<(String, String)>, Vec<String>);

fn sourced_contraction(job: &Job, ledger: &mut Ledger) -> SourcedContraction {
    let given = &job.alloy.contraction;
    let likely = given.first().map_or(0.0, |first| first.value.ratio);
    let ratios = || given.iter().map(|source| source.value.ratio);
    let (low, high) = (
        ratios().fold(likely, f64::min),
        ratios().fold(likely, f64::max),
    );
    if low < high {
        ledger.note(PatternFact::ContractionDisputed {
            from_to: [low, high],
            sources: given.len(),
        });
    }
    let said = given.iter().enumerate().map(|(place, source)| {
        let note = match source.note.is_empty() {
            true => String::new(),
            false => format!(", {}", source.note),
        };
        let text = format!("{}: {}{note}", source.source, source.value.given_back());
        (format!("source {}", place + 1), text)
    });
    let keys = given.iter().map(|source| source.source.clone()).collect();
    (Band::new(low, likely, high), said.collect(), keys)
}

fn place_text(place_mm: [f64; 3]) -> String {
    let [x, y, z] = place_mm.map(|mm| format!("{mm:.0}"));
    format!("{x}, {y}, {z} mm from the corner of the part as it lies in the mould")
}
