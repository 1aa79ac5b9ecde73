//! When the mould may be opened: three marks, counted from the end of the pour.

use measure::band::Band;
use measure::flow::Duration;
use measure::heat::{HeatDrawing, HeatPerMass, Temperature, TemperatureDifference};
use measure::length::Length;
use measure::matter::Mass;
use measure::text::rounded;
use mould::cooling::Poured;
use mould::gating::running_system::basin_over;
use mould::opening::{HAND, MARKS, Marks, OpeningRow, cooling_in_air, marks, opening_row};

use crate::amount::Amount;
use crate::job::Job;
use crate::placed_part::PlacedPart;
use crate::remark::of_opening::OpeningFact;
use crate::shop::Shop;
use crate::words::said::Said;
use crate::work_out::casting::{Casting, error};
use crate::work_out::feeding::Feeding;
use crate::work_out::ledger::{Entry, Ledger};
use crate::work_out::rigging::{Rigging, poured};
use crate::work_out::thirst::thirst;
use crate::work_out::told::{band, exact, text, word};

/// What is in the flask.
pub(super) struct InFlask<'a> {
    pub(super) part: &'a PlacedPart,
    pub(super) casting: &'a Casting,
    pub(super) feeding: &'a Feeding,
    pub(super) rigging: &'a Rigging,
    pub(super) sand: Band<Mass>,
}

pub(super) fn opening(job: &Job, shop: &Shop, flask: &InFlask<'_>, ledger: &mut Ledger) {
    let Some(row) = opening_row(job.alloy.family.word()) else {
        return;
    };
    let oil = shop.heap.as_ref().is_some_and(|heap| heap.bond.is_none());
    let uneven = flask.part.is_uneven();
    let row = if uneven {
        row.for_uneven()
    } else {
        row.clone()
    };
    let open = Open::of(job, shop, flask);
    let Some((cases, of_basin)) = open.followed(&row, basin(flask), oil) else {
        ledger.note(OpeningFact::NeverCold);
        return;
    };
    let opened = Opened {
        row,
        open,
        cases,
        of_basin,
        bond: if oil { "oil" } else { "clay" },
        sections: if uneven { "uneven" } else { "even" },
    };
    if let Some((_, open)) = opened.latest(Mark::Open) {
        let open = open.high();
        ledger.note(OpeningFact::Hot { open, oil });
        if opened.is_kept_shut() {
            ledger.note(OpeningFact::OpenLate { open });
        }
    }
    write(job, &opened, ledger);
}

/// The pour at every corner, with its marks.
type Cases = Vec<(Poured, Marks)>;

/// The pour with both ends of what is uncertain in it, as far as either may be the late one: more
/// metal, more heat in it and sand that draws less are later throughout; more sand takes up more
/// heat, and gives it back for longer.
struct Open {
    pour: Poured,
    mass: [Mass; 2],
    latent: [HeatPerMass; 2],
    sand: [HeatDrawing; 2],
    sand_mass: [Mass; 2],
}

impl Open {
    fn of(job: &Job, shop: &Shop, flask: &InFlask<'_>) -> Open {
        let (alloy, all) = (job.alloy, poured(flask.rigging));
        let (latent, sand) = (&alloy.latent_heat.band, thirst(job, shop).band);
        let hottest = flask.casting.pouring.high() - alloy.liquidus.band.likely();
        Open {
            pour: Poured {
                modulus: heaviest(flask),
                mass: all.likely(),
                density: alloy.density_liquid.band.high(),
                latent: latent.likely(),
                liquid_heat: alloy.specific_heat_liquid.band.high(),
                solid_heat: alloy.specific_heat_solid.band.high(),
                superheat: hottest.max(TemperatureDifference::ZERO),
                solidus: alloy.solidus.band.likely(),
                sand: sand.likely(),
                sand_mass: flask.sand.likely(),
            },
            mass: [all.high(), all.likely()],
            latent: [latent.high(), latent.likely()],
            sand: [sand.low(), sand.likely()],
            sand_mass: [flask.sand.low(), flask.sand.high()],
        }
    }

    /// The pour at every corner.
    fn cases(&self) -> Vec<Poured> {
        let corner = |number: usize| {
            let end = |place: usize| number >> place & 1;
            Poured {
                mass: self.mass[end(0)],
                latent: self.latent[end(1)],
                sand: self.sand[end(2)],
                sand_mass: self.sand_mass[end(3)],
                ..self.pour
            }
        };
        (0..16).map(corner).collect()
    }

    /// The marks at every corner, of what cools last in the mould and of the basin on it, which has
    /// to be as cold before anything is moved. Where the basin alone keeps the mould shut longer
    /// than the casting, it stands for both.
    fn followed(&self, row: &OpeningRow, basin: Length, oil: bool) -> Option<(Cases, Cases)> {
        let of_pour = |poured: Poured| {
            let marks = marks(&poured, row)?;
            Some((poured, if oil { marks.in_oil_sand() } else { marks }))
        };
        let basin = self.pour.modulus.max(basin);
        let with_basin = |poured: Poured| Poured {
            modulus: basin,
            ..poured
        };
        let cases: Option<Cases> = self.cases().into_iter().map(of_pour).collect();
        let of_basin: Option<Cases> = self
            .cases()
            .into_iter()
            .map(with_basin)
            .map(of_pour)
            .collect();
        let (cases, of_basin) = (cases?, of_basin?);
        let latest = |cases: &Cases, mark: Mark| {
            cases
                .iter()
                .map(|(_, marks)| mark.of(marks))
                .fold(Duration::ZERO, Duration::max)
        };
        match latest(&of_basin, Mark::Leave) > latest(&cases, Mark::Open) {
            true => Some((of_basin.clone(), of_basin)),
            false => Some((cases, of_basin)),
        }
    }
}

/// Modulus of the metal in the basin, as wide as it may be cut.
fn basin(flask: &InFlask<'_>) -> Length {
    let top = flask.rigging.running.sprue_top.high();
    basin_over(top, flask.rigging.pour_height).modulus()
}

/// What cools last in the mould: the heaviest section, as heavy as it may be, the feeder on it, or
/// the top of the sprue.
fn heaviest(flask: &InFlask<'_>) -> Length {
    let section = flask.part.heaviest.modulus.high() * (1.0 + error(flask.part));
    let sprue = flask.rigging.running.sprue_top.high() / 4.0;
    let feeder = flask
        .feeding
        .feeder
        .map(|feeder| feeder.diameter.high() / 5.0);
    section.max(sprue).max(feeder.unwrap_or(Length::ZERO))
}

/// The pour with its marks at every corner.
struct Opened {
    row: OpeningRow,
    open: Open,
    cases: Cases,
    of_basin: Cases,
    bond: &'static str,
    sections: &'static str,
}

/// One of the three marks.
#[derive(Clone, Copy)]
enum Mark {
    Leave,
    Open,
    Handle,
}

impl Mark {
    fn of(self, marks: &Marks) -> Duration {
        match self {
            Mark::Leave => marks.leave,
            Mark::Open => marks.open,
            Mark::Handle => marks.handle,
        }
    }

    /// The figure, and the answer of the law that it is.
    fn names(self) -> [&'static str; 2] {
        match self {
            Mark::Leave => ["leave alone until", "leave alone until"],
            Mark::Open => ["may be opened", "may be opened after"],
            Mark::Handle => ["may be handled", "may be handled after"],
        }
    }

    fn below(self, row: &OpeningRow) -> Temperature {
        match self {
            Mark::Leave => row.leave,
            Mark::Open => row.open,
            Mark::Handle => HAND,
        }
    }

    fn because(self, opened: &Opened) -> Said {
        match self {
            Mark::Leave => Said::new("because-leave"),
            Mark::Open if opened.is_kept_shut() => Said::new("because-open-uneven"),
            Mark::Open => Said::new("because-open"),
            Mark::Handle => opened.of_hand(),
        }
    }
}

fn write(job: &Job, opened: &Opened, ledger: &mut Ledger) {
    for mark in [Mark::Leave, Mark::Open, Mark::Handle] {
        let Some((late, time)) = opened.latest(mark) else {
            continue;
        };
        let [name, answer] = mark.names();
        let below = mark.below(&opened.row).as_celsius();
        let entry = Entry::new(name, Amount::Duration(time), &MARKS).answer(answer);
        ledger.write(
            opened
                .of_pour(entry, job, late)
                .beside("below", format!("{} °C", rounded(below, 3)))
                .seen(std::slice::from_ref(&opened.row.source))
                .because(mark.because(opened))
                .up(),
        );
    }
}

impl Opened {
    /// Whether it is opened colder so that thick and thin do not crack each other.
    fn is_kept_shut(&self) -> bool {
        self.row.uneven == Some(self.row.open)
    }

    /// The corner at which a mark comes latest. The figure shown is that late one; the low end is
    /// what usual sand would make of it.
    fn latest(&self, mark: Mark) -> Option<(&Poured, Band<Duration>)> {
        let of = |marks: &Marks| mark.of(marks);
        let cases = match mark {
            Mark::Leave => &self.of_basin,
            Mark::Open | Mark::Handle => &self.cases,
        };
        let (first, marks) = cases.first()?;
        let (mut late, mut latest, mut soonest) = (first, of(marks), of(marks));
        for (poured, marks) in cases {
            soonest = soonest.min(of(marks));
            if of(marks) > latest {
                (late, latest) = (poured, of(marks));
            }
        }
        Some((late, Band::new(soonest, latest, latest)))
    }

    /// How long it burns the hand in the air, opened at its mark.
    fn of_hand(&self) -> Said {
        let late = &self.open.pour;
        let air = cooling_in_air(late.modulus, late.density, late.solid_heat, self.row.open);
        Said::new("because-handle").with("time", text(air))
    }

    /// What goes into the law of the marks: what is late is taken for likely.
    fn of_pour(&self, entry: Entry, job: &Job, late: &Poured) -> Entry {
        fn late_of<T: Copy + PartialOrd>([one, other]: [T; 2], late: T) -> Band<T> {
            Band::new(one, late, other)
        }
        let open = &self.open;
        entry
            .input("section", exact(late.modulus))
            .input("poured", band(&late_of(open.mass, late.mass)))
            .input("sand_mass", band(&late_of(open.sand_mass, late.sand_mass)))
            .input("metal", word(&job.alloy.name))
            .input("density", exact(late.density))
            .input("latent", band(&late_of(open.latent, late.latent)))
            .input("liquid", exact(late.liquid_heat))
            .input("solid", exact(late.solid_heat))
            .input("superheat", exact(late.superheat))
            .input("solidus", exact(late.solidus))
            .input("sand", band(&late_of(open.sand, late.sand)))
            .input("bond", word(self.bond))
            .input("sections", word(self.sections))
    }
}
