//! When the mould may be opened: three marks, counted from the end of the pour.

use measure::band::Band;
use measure::flow::Duration;
use measure::heat::{HeatDrawing, HeatPerMass};
use measure::length::Length;
use measure::matter::Mass;
use measure::text::{System, rounded, show};
use mould::cooling::Poured;
use mould::opening::{HAND, MARKS, Marks, OpeningRow, cooling_in_air, marks, opening_row};

use crate::amount::Amount;
use crate::job::Job;
use crate::placed_part::PlacedPart;
use crate::remark::of_opening::OpeningFact;
use crate::shop::Shop;
use crate::work_out::casting::{Casting, band_text, length_text};
use crate::work_out::feeding::Feeding;
use crate::work_out::ledger::{Entry, Ledger};
use crate::work_out::rigging::{Rigging, poured};
use crate::work_out::thirst::thirst;

/// Oil in the sand flares when air reaches it hot: not in the same hour (common practice).
const OIL_WAITS: Duration = Duration::from_min(60.0);

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
    let (likely, late) = (case(job, shop, flask, false), case(job, shop, flask, true));
    let both = marks(&likely, row).zip(marks(&late, row));
    let Some((likely_marks, late_marks)) = both else {
        ledger.note(OpeningFact::NeverCold);
        return;
    };
    let oil = shop.heap.as_ref().is_some_and(|heap| heap.bond.is_none());
    let [usual, safe] = [likely_marks, late_marks].map(|marks| waited(marks, oil));
    ledger.note(OpeningFact::Hot {
        open: safe.open,
        oil,
    });
    write(flask, row, &late, [usual, safe], ledger);
}

/// The pour as it is likely, or on the late side in everything that is uncertain.
fn case(job: &Job, shop: &Shop, flask: &InFlask<'_>, late: bool) -> Poured {
    let alloy = job.alloy;
    let sand: Band<HeatDrawing> = thirst(job, shop).band;
    let latent: Band<HeatPerMass> = alloy.latent_heat.band;
    let all = poured(flask.rigging);
    Poured {
        modulus: heaviest(flask),
        mass: if late { all.high() } else { all.likely() },
        density: alloy.density_liquid.band.likely(),
        latent: if late { latent.high() } else { latent.likely() },
        liquid_heat: alloy.specific_heat_liquid.band.likely(),
        solid_heat: alloy.specific_heat_solid.band.likely(),
        superheat: flask.casting.superheat,
        solidus: alloy.solidus.band.likely(),
        sand: if late { sand.low() } else { sand.likely() },
        sand_mass: if late {
            flask.sand.low()
        } else {
            flask.sand.likely()
        },
    }
}

/// What cools last: the heaviest section, the feeder on it, or the top of the sprue.
fn heaviest(flask: &InFlask<'_>) -> Length {
    let section = flask.part.heaviest.modulus.high();
    let sprue = flask.rigging.running.sprue_top.high() / 4.0;
    let feeder = flask
        .feeding
        .feeder
        .map(|feeder| feeder.diameter.high() / 5.0);
    section.max(sprue).max(feeder.unwrap_or(Length::ZERO))
}

fn waited(marks: Marks, oil: bool) -> Marks {
    if !oil {
        return marks;
    }
    let open = marks.open.max(OIL_WAITS);
    Marks {
        open,
        handle: marks.handle.max(open),
        ..marks
    }
}

fn write(
    flask: &InFlask<'_>,
    row: &OpeningRow,
    late: &Poured,
    [usual, safe]: [Marks; 2],
    ledger: &mut Ledger,
) {
    let celsius = |of: measure::heat::Temperature| format!("{} °C", rounded(of.as_celsius(), 3));
    let air = cooling_in_air(late.modulus, late.density, late.solid_heat, row.open);
    let air = show(air, System::Metric).unwrap_or_default();
    // The figure shown is the late one; the low end is what usual sand would make of it.
    let band = |usual: Duration, safe: Duration| Amount::Duration(Band::new(usual, safe, safe));
    let entry = |name, amount, below: String, because: String| {
        Entry::new(name, amount, &MARKS)
            .input("modulus of what cools last", length_text(late.modulus))
            .input("poured", band_text(&poured(flask.rigging)))
            .input("sand", band_text(&flask.sand))
            .input("below", below)
            .seen(std::slice::from_ref(&row.source))
            .because(because)
            .up()
    };
    ledger.write(entry(
        "leave alone until",
        band(usual.leave, safe.leave),
        celsius(row.leave),
        "from the end of the pour: move nothing, lift no weight off".to_owned(),
    ));
    ledger.write(entry(
        "may be opened",
        band(usual.open, safe.open),
        celsius(row.open),
        "from the end of the pour, on the late side; iron that may crack is left longer".to_owned(),
    ));
    ledger.write(entry(
        "may be handled",
        band(usual.handle, safe.handle),
        celsius(HAND),
        format!("if it stays in its sand; opened at its mark it burns the hand for {air} more"),
    ));
}
