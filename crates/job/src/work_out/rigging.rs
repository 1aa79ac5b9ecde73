//! Flask, sprue, choke, filling time.

use measure::band::Band;
use measure::length::Length;
use measure::matter::Mass;
use mould::flask::{Chosen, FlaskError, Load, choose, clearance, flask_to_make};
use mould::gating::choke::{CHOKE, EFFECTIVE_HEAD, discharge, effective_head};
use mould::gating::cutter::{Cutter, Kind, nearest_drill, nearest_pipe};
use mould::gating::pour_time::{Limit, POUR_TIME, constants_for};
use mould::gating::running_system::{
    AREA_BY_RATIO, BASIN, Demand, POURED_MASS, RUNNING_METAL, RunningSystem, running_system,
};
use mould::gating::sprue::{SPRUE_TAPER, area_of};

use crate::amount::Amount;
use crate::job::Job;
use crate::learned::{OWN_FACTOR, shown};
use crate::placed_part::PlacedPart;
use crate::remark::of_feeding::FeedingFact;
use crate::remark::of_mould::MouldFact;
use crate::shop::Shop;
use crate::words::said::Said;
use crate::work_out::casting::Casting;
use crate::work_out::feeding::Feeding;
use crate::work_out::gates;
use crate::work_out::ledger::{Entry, Ledger};
use crate::work_out::told::{band, band_text, exact, number, numbers, text};

/// The mould as it is rigged.
pub(super) struct Rigging {
    pub(super) chosen: Chosen,
    pub(super) pour_height: Length,
    pub(super) running: RunningSystem,
    pub(super) runner_length: Length,
}

/// Width kept for a sprue while its size is still unknown: the middle of those that small flasks
/// have.
const SPRUE_ROOM: Length = Length::from_mm(20.0);

/// Runner past the last gate, where the first cold metal stops (`pouring-basin-notes`).
const RUN_OFF: Length = Length::from_mm(25.0);

pub(super) fn rigging(
    job: &Job,
    shop: &Shop,
    part: &PlacedPart,
    casting: &Casting,
    feeding: &Feeding,
    ledger: &mut Ledger,
) -> Rigging {
    let chosen = flask(job, shop, part, casting, ledger);
    let pour_height = job.pour_height.unwrap_or(chosen.flask.cope + BASIN);
    let runner_length = chosen.flask.length * 0.5 + RUN_OFF;
    let top = part.extents[2] - part.joint;
    if pour_height <= top {
        ledger.note(MouldFact::NoHead { pour_height, top });
    }
    let to_last_gate = runner_length - RUN_OFF;
    let demand = demand(job, part, casting, feeding, pour_height, to_last_gate, shop);
    let running = running_system(&demand);
    write_poured(&demand, &running, ledger);
    write_fill(
        casting,
        &demand,
        &running,
        shop.learned.filling.as_ref(),
        ledger,
    );
    write_sprue(job, part, &demand, &running, ledger);
    gates::write_gates(job, part, &demand, &running, ledger);
    if feeding.feeder.is_some_and(|feeder| {
        feeder.diameter.likely() + part.extents[2] - part.joint > chosen.flask.cope
    }) {
        let height = feeding
            .feeder
            .map_or(Length::ZERO, |feeder| feeder.diameter.likely());
        ledger.note(FeedingFact::FeederHigherThanCope {
            height,
            cope: chosen.flask.cope,
        });
    }
    Rigging {
        chosen,
        pour_height,
        running,
        runner_length,
    }
}

fn flask(
    job: &Job,
    shop: &Shop,
    part: &PlacedPart,
    casting: &Casting,
    ledger: &mut Ledger,
) -> Chosen {
    let grown = |length: Length| length * (1.0 + casting.growth);
    let load = Load {
        count: job.count,
        plan: [grown(part.extents[0]), grown(part.extents[1])],
        above_joint: grown(part.extents[2] - part.joint).max(Length::ZERO),
        below_joint: grown(part.joint),
        sprue: SPRUE_ROOM,
    };
    let sand = clearance(casting.mass.likely());
    let wall = format!("{:.0} mm", sand.to_wall.as_mm());
    let wall = Said::new("reason-flask-wall").with("wall", wall);
    match choose(&shop.flasks, job.flask.as_deref(), &load, &sand) {
        Ok(chosen) => {
            let lack = chosen.tight.as_ref();
            let because = lack.map_or(wall, |_| Said::new("reason-flask-asked"));
            let name = Said::typed(chosen.flask.name.as_str());
            ledger.choose("flask", flask_words(&chosen, name), because);
            if let Some(error) = lack {
                ledger.note(MouldFact::TightFlask(error.clone()));
            }
            chosen
        }
        Err(error) => {
            let (flask, layout) = flask_to_make(&load, &sand);
            let chosen = Chosen {
                flask,
                layout,
                tight: None,
            };
            let because = match error {
                FlaskError::NoFlasks => "reason-flask-no-list",
                _ => "reason-flask-none",
            };
            let name = Said::new("flask-to-be-made");
            ledger.choose("flask", flask_words(&chosen, name), Said::new(because));
            ledger.note(MouldFact::NoFlask(error));
            chosen
        }
    }
}

fn flask_words(chosen: &Chosen, name: Said) -> Said {
    let flask = &chosen.flask;
    let mm = |length: Length| format!("{:.0}", length.as_mm());
    Said::new("chosen-flask")
        .with("flask", name)
        .with(
            "inside",
            format!("{} x {}", mm(flask.length), mm(flask.width)),
        )
        .with("cope", mm(flask.cope))
        .with("drag", format!("{} mm", mm(flask.drag)))
}

fn demand(
    job: &Job,
    part: &PlacedPart,
    casting: &Casting,
    feeding: &Feeding,
    pour_height: Length,
    runner: Length,
    shop: &Shop,
) -> Demand {
    let ratio = job.alloy.running.first();
    let above = above_joint(part);
    Demand {
        count: job.count as f64,
        casting: casting.mass,
        feeder: feeding.mass,
        liquid: job.alloy.density_liquid.band,
        wall: casting.wall,
        wall_freezes: casting.wall_freezes.low(),
        pour_height,
        head: effective_head(pour_height, above, part.extents[2]).max(pour_height * 0.25),
        ratio: ratio.map_or([1.0; 3], |r| [1.0, r.runner / r.sprue, r.gate / r.sprue]),
        runner,
        discharge: own_discharge(shop),
    }
}

/// What the running system lets through, by the books or as the shop's log has taught; never more
/// than an ideal one.
fn own_discharge(shop: &Shop) -> Band<f64> {
    let (book, own) = (discharge(), shop.learned.filling);
    own.map_or(book, |factor| {
        factor.map(|times| (book.likely() * times).min(1.0))
    })
}

fn write_poured(demand: &Demand, running: &RunningSystem, ledger: &mut Ledger) {
    let mass = Amount::Mass(running.mass);
    ledger.write(
        Entry::new("metal in the running system", mass, &RUNNING_METAL)
            .answer("mass")
            .input("choke", exact(running.choke.likely()))
            .input("ratio", numbers(&demand.ratio))
            .input("pour_height", exact(demand.pour_height))
            .input("runner", exact(demand.runner))
            .input("trap", exact(running.trap))
            .input("liquid_density", exact(demand.liquid.likely()))
            .because(Said::new("because-running")),
    );
    ledger.write(
        Entry::new("poured mass", Amount::Mass(running.poured), &POURED_MASS)
            .input("castings", number(&Band::exact(demand.count)))
            .input("casting", band(&demand.casting))
            .input("feeder", band(&demand.feeder))
            .input("running", band(&running.mass))
            .because(Said::new("because-poured"))
            .up(),
    );
}

fn write_fill(
    casting: &Casting,
    demand: &Demand,
    running: &RunningSystem,
    own: Option<&Band<f64>>,
    ledger: &mut Ledger,
) {
    let fill = &running.fill;
    let because = Said::new("fill-because")
        .with("low", Said::new(reason(fill.low_because)))
        .with("high", Said::new(reason(fill.high_because)));
    let entry = Entry::new("fill time", Amount::Duration(fill.band), &POUR_TIME)
        .input("poured", band(&running.poured))
        .input("constant", number(&constants_for(casting.wall)))
        .input("liquid_density", exact(demand.liquid.likely()))
        .beside("thinnest wall", text(casting.wall))
        .beside("that wall freezes in", band_text(&casting.wall_freezes))
        .because(because);
    let entry = match own {
        Some(factor) => entry.beside(OWN_FACTOR, shown(factor)),
        None => entry,
    };
    // A wall that no running system fills in time does not hurry the pour.
    ledger.write(match running.in_time {
        true => entry
            .input("freezing", exact(casting.wall_freezes.low()))
            .input("filled", exact(demand.filled())),
        false => entry,
    });
    if !running.in_time {
        let freezes = casting.wall_freezes.low();
        ledger.note(FeedingFact::FillsTooLate {
            wall: casting.wall,
            freezes,
        });
    } else if fill.high_because == Limit::ThinWall {
        ledger.note(FeedingFact::FillMustHurry);
    }
}

fn reason(limit: Limit) -> &'static str {
    match limit {
        Limit::QuickRule => "fill-quick-rule",
        Limit::SlowRule => "fill-slow-rule",
        Limit::ThinWall => "fill-thin-wall",
    }
}

fn write_sprue(
    job: &Job,
    part: &PlacedPart,
    demand: &Demand,
    running: &RunningSystem,
    ledger: &mut Ledger,
) {
    write_head(part, demand, ledger);
    let choke = Entry::new("choke area", Amount::Area(running.choke), &CHOKE);
    ledger.write(of_choke(choke, demand, running));
    let foot = Amount::Length(running.sprue_foot);
    ledger.write(
        of_choke(
            Entry::new("sprue foot diameter", foot, &CHOKE),
            demand,
            running,
        )
        .answer("diameter")
        .because(Said::new("because-choke")),
    );
    ledger.write(
        Entry::new(
            "sprue top diameter",
            Amount::Length(running.sprue_top),
            &SPRUE_TAPER,
        )
        .input("foot", band(&running.sprue_foot))
        .input("basin", exact(BASIN.min(demand.pour_height)))
        .input("total", exact(demand.pour_height)),
    );
    let ratio = job.alloy.running.first();
    let keys = ratio.map_or_else(Vec::new, |ratio| vec![ratio.source.clone()]);
    let [_, runner, gate] = demand.ratio;
    let names = [("runner area", runner), ("gate area", gate)];
    for ((name, share), area) in names.into_iter().zip(running.runner_and_gates) {
        ledger.write(
            Entry::new(name, Amount::Area(Band::exact(area)), &AREA_BY_RATIO)
                .input("choke", exact(running.choke.likely()))
                .input("ratio", number(&Band::exact(share)))
                .seen(&keys)
                .because(Said::new("because-all-together")),
        );
    }
    cutters(running, ledger);
}

/// The head where there is one: a casting that stands higher than the metal is told elsewhere.
fn write_head(part: &PlacedPart, demand: &Demand, ledger: &mut Ledger) {
    let above = above_joint(part);
    if above > demand.pour_height {
        return;
    }
    let head = Amount::Length(Band::exact(demand.head));
    ledger.write(
        Entry::new("effective head", head, &EFFECTIVE_HEAD)
            .input("pour_above_gate", exact(demand.pour_height))
            .input("above_gate", exact(above))
            .input("casting", exact(part.extents[2])),
    );
}

fn of_choke(entry: Entry, demand: &Demand, running: &RunningSystem) -> Entry {
    entry
        .input("poured", exact(running.poured.likely()))
        .input("time", band(&running.pace))
        .input("liquid_density", exact(demand.liquid.likely()))
        .input("discharge", number(&demand.discharge))
        .input("head", exact(demand.head))
}

fn above_joint(part: &PlacedPart) -> Length {
    (part.extents[2] - part.joint).max(Length::ZERO)
}

fn cutters(running: &RunningSystem, ledger: &mut Ledger) {
    let foot = running.sprue_foot.likely();
    let against = |hole: Length| {
        let share = (area_of(hole) / area_of(foot) - 1.0) * 100.0;
        Said::new("reason-cutter").with("off", format!("{share:+.0} %"))
    };
    let drill = nearest_drill(foot);
    ledger.choose("sprue drill", cutter(&drill), against(drill.hole));
    if let Some(pipe) = nearest_pipe(foot) {
        ledger.choose("sprue pipe", cutter(pipe), against(pipe.hole));
    }
}

fn cutter(cutter: &Cutter) -> Said {
    let id = match cutter.kind {
        Kind::Drill => "cutter-drill",
        Kind::CopperTube => "cutter-copper-tube",
        Kind::SteelPipe => {
            let outside = format!("{} mm", cutter.hole.as_mm());
            return Said::new("cutter-steel-pipe")
                .with("size", cutter.size.as_str())
                .with("outside", outside);
        }
    };
    Said::new(id).with("size", cutter.size.as_str())
}

/// Everything poured, for those who do not need the rest.
pub(super) fn poured(rigging: &Rigging) -> Band<Mass> {
    rigging.running.poured
}
