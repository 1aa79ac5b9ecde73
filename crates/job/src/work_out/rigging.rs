//! Flask, sprue, choke, filling time.

use measure::band::Band;
use measure::length::Length;
use measure::matter::{Density, Mass};
use mould::flask::{Chosen, FlaskError, Load, choose, clearance, flask_to_make};
use mould::gating::choke::{CHOKE, EFFECTIVE_HEAD, effective_head};
use mould::gating::cutter::{nearest_drill, nearest_pipe};
use mould::gating::pour_time::{Limit, POUR_TIME, THIN_WALL_LIMIT};
use mould::gating::running_system::{BASIN, Demand, RUNNING_METAL, RunningSystem, running_system};
use mould::gating::sprue::{SPRUE_TAPER, area_of};

use crate::amount::Amount;
use crate::job::Job;
use crate::placed_part::PlacedPart;
use crate::remark::of_feeding::FeedingFact;
use crate::remark::of_mould::MouldFact;
use crate::shop::Shop;
use crate::work_out::casting::{Casting, band_text, length_text};
use crate::work_out::feeding::Feeding;
use crate::work_out::gates;
use crate::work_out::ledger::{Entry, Ledger};

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
    let demand = demand(job, part, casting, feeding, pour_height, runner_length);
    let running = running_system(&demand);
    write_fill(job, casting, &running, ledger);
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
    let wall = format!(
        "at least {:.0} mm of sand round the pattern",
        sand.to_wall.as_mm()
    );
    match choose(&shop.flasks, job.flask.as_deref(), &load, &sand) {
        Ok(chosen) => {
            let lack = chosen.tight.as_ref();
            let because = lack.map_or(wall, |_| {
                "asked for by name; less sand than is wanted".to_owned()
            });
            ledger.choose("flask", flask_words(&chosen), because);
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
                FlaskError::NoFlasks => "no flask is listed in shop.toml",
                _ => "none of your own takes the pattern",
            };
            ledger.choose("flask", flask_words(&chosen), because);
            ledger.note(MouldFact::NoFlask(error));
            chosen
        }
    }
}

fn flask_words(chosen: &Chosen) -> String {
    let flask = &chosen.flask;
    let mm = |length: Length| format!("{:.0}", length.as_mm());
    format!(
        "{}: {} x {}, cope {}, drag {} mm",
        flask.name,
        mm(flask.length),
        mm(flask.width),
        mm(flask.cope),
        mm(flask.drag)
    )
}

fn demand(
    job: &Job,
    part: &PlacedPart,
    casting: &Casting,
    feeding: &Feeding,
    pour_height: Length,
    runner: Length,
) -> Demand {
    let count = job.count as f64;
    let each = casting
        .mass
        .with(&feeding.mass, |casting, feeder| casting + feeder);
    let ratio = job.alloy.running.first();
    let above = (part.extents[2] - part.joint).max(Length::ZERO);
    Demand {
        filled: each.map(|mass| mass * count),
        liquid: job.alloy.density_liquid.band,
        wall: casting.wall,
        wall_freezes: casting.wall_freezes.low(),
        pour_height,
        head: effective_head(pour_height, above, part.extents[2]).max(pour_height * 0.25),
        ratio: ratio.map_or([1.0; 3], |r| [1.0, r.runner / r.sprue, r.gate / r.sprue]),
        runner,
    }
}

fn write_fill(job: &Job, casting: &Casting, running: &RunningSystem, ledger: &mut Ledger) {
    let fill = &running.fill;
    let law = match fill.high_because {
        Limit::ThinWall => &THIN_WALL_LIMIT,
        _ => &POUR_TIME,
    };
    ledger.write(
        Entry::new("poured mass", Amount::Mass(running.poured), &RUNNING_METAL)
            .input(
                "castings",
                format!("{} x {}", job.count, band_text(&casting.mass)),
            )
            .input("running system", band_text(&running.mass))
            .up(),
    );
    let because = format!(
        "not under the low end: {}; not over the high end: {}",
        reason(fill.low_because),
        reason(fill.high_because)
    );
    ledger.write(
        Entry::new("fill time", Amount::Duration(fill.band), law)
            .input("poured", band_text(&running.poured))
            .input("thinnest wall", length_text(casting.wall))
            .input("that wall freezes in", band_text(&casting.wall_freezes))
            .because(because),
    );
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
        Limit::QuickRule => "faster washes sand (rule for thin walls)",
        Limit::SlowRule => "slower lets the metal skin over (rule for heavy walls)",
        Limit::ThinWall => "the thinnest wall would freeze before it is full",
    }
}

fn write_sprue(
    job: &Job,
    part: &PlacedPart,
    demand: &Demand,
    running: &RunningSystem,
    ledger: &mut Ledger,
) {
    let head = Amount::Length(Band::exact(demand.head));
    ledger.write(
        Entry::new("effective head", head, &EFFECTIVE_HEAD)
            .input(
                "pour height over the joint",
                length_text(demand.pour_height),
            )
            .input(
                "casting above the joint",
                length_text(part.extents[2] - part.joint),
            ),
    );
    let ratio = job.alloy.running.first();
    let keys = ratio.map_or_else(Vec::new, |ratio| vec![ratio.source.clone()]);
    ledger.write(
        Entry::new("choke area", Amount::Area(running.choke), &CHOKE)
            .input("poured", band_text(&running.poured))
            .input("fill time", band_text(&running.fill.band))
            .input("effective head", length_text(demand.head))
            .input("liquid density", band_text::<Density>(&demand.liquid))
            .input("C", "0.8"),
    );
    let foot = running.sprue_foot;
    ledger.write(
        Entry::new("sprue foot diameter", Amount::Length(foot), &CHOKE)
            .input("choke area", band_text(&running.choke))
            .because("the foot of the sprue is the choke"),
    );
    ledger.write(
        Entry::new(
            "sprue top diameter",
            Amount::Length(running.sprue_top),
            &SPRUE_TAPER,
        )
        .input("foot", length_text(foot.likely()))
        .input("basin", length_text(BASIN.min(demand.pour_height)))
        .input("pour height", length_text(demand.pour_height)),
    );
    let [_, runner, gate] = demand.ratio;
    let names = [("runner area", runner), ("gate area", gate)];
    for ((name, share), area) in names.into_iter().zip(running.runner_and_gates) {
        ledger.write(
            Entry::new(name, Amount::Area(Band::exact(area)), &RUNNING_METAL)
                .input("ratio to the choke", measure::text::rounded(share, 3))
                .seen(&keys)
                .because("all of them together"),
        );
    }
    cutters(running, ledger);
}

fn cutters(running: &RunningSystem, ledger: &mut Ledger) {
    let foot = running.sprue_foot.likely();
    let against = |hole: Length| {
        let share = (area_of(hole) / area_of(foot) - 1.0) * 100.0;
        format!("{share:+.0} % of the area wanted")
    };
    let drill = nearest_drill(foot);
    ledger.choose("sprue drill", drill.name, against(drill.hole));
    if let Some(pipe) = nearest_pipe(foot) {
        ledger.choose("sprue pipe", pipe.name.clone(), against(pipe.hole));
    }
}

/// Everything poured, for those who do not need the rest.
pub(super) fn poured(rigging: &Rigging) -> Band<Mass> {
    rigging.running.poured
}
