//! The gates one by one: how fast they run, how evenly, how fast to pour, where the first metal
//! goes.

use measure::band::Band;
use measure::flow::{Duration, Flow, Speed};
use measure::length::{Area, Length, Volume};
use mould::gating::balance::balanced_gates;
use mould::gating::basin::{LIP_RATE, lip_flow, lip_metal};
use mould::gating::filling::{Cavity, FILL_ORDER, FillOrder, fill_order};
use mould::gating::friction::{TRIED, TRIED_FACTOR};
use mould::gating::network::{
    GATE_FLOWS, GATE_LOSS, Network, PlainRunners, SQUARE_TURN, WELL_LOSS, gate_flows,
};
use mould::gating::running_system::{BASIN, Demand, RunningSystem, area_by_ratio};
use mould::gating::slag_trap::{FIRST_METAL, FIRST_SHARE, RUN_OFF, first_metal, run_off};

use crate::amount::Amount;
use crate::job::Job;
use crate::placed_part::PlacedPart;
use crate::remark::of_gating::GatingFact;
use crate::words::said::Said;
use crate::work_out::ledger::{Entry, Ledger};
use crate::work_out::told::{band, band_text, exact, list, number, share};

/// Lag, as a part of the whole time, up to which castings are said to fill together: gates are not
/// cut more truly.
const TOGETHER: f64 = 0.05;

/// Writes what concerns single gates, for a running system of one gate to each casting and runners
/// to either side of the sprue.
pub(super) fn write_gates(
    job: &Job,
    part: &PlacedPart,
    demand: &Demand,
    running: &RunningSystem,
    ledger: &mut Ledger,
) {
    write_speed(job, demand, running, ledger);
    write_order(job, part, demand, running, ledger);
    write_lip(demand, running, ledger);
    write_trap(demand, running, ledger);
}

fn write_speed(job: &Job, demand: &Demand, running: &RunningSystem, ledger: &mut Ledger) {
    let runners = runners(job.count, demand, running.choke.likely(), 1.0);
    let Some(speed) = fastest(&runners) else {
        return;
    };
    let limit = &job.alloy.entry_speed;
    let entry = Entry::new("gate speed", Amount::Speed(Band::exact(speed)), &GATE_FLOWS);
    ledger.write(
        of_runners(entry, &runners)
            .answer("fastest gate")
            .beside("limit of the metal", band_text(&limit.band))
            .seen(&limit.sources)
            .because(Said::new("because-fastest-gate"))
            .up(),
    );
    if speed > limit.band.likely() {
        let choke = running.choke.likely();
        ledger.note(GatingFact::GateTooFast {
            speed,
            limit: limit.band.likely(),
            highest: limit.band.high(),
            gates: gates_for(job.count, demand, choke, limit.band.likely()),
        });
    }
}

fn write_order(
    job: &Job,
    part: &PlacedPart,
    demand: &Demand,
    running: &RunningSystem,
    ledger: &mut Ledger,
) {
    let runners = runners(job.count, demand, running.choke.likely(), 1.0);
    let network = runners.network();
    let one = demand.casting.likely() + demand.feeder.likely();
    let each = Volume::filled_by(one, demand.liquid.likely());
    let cavity = Cavity {
        volume: each,
        bottom: Length::ZERO - part.joint,
        height: part.extents[2],
    };
    let cavities = vec![cavity; job.count];
    let order = match fill_order(&network, &cavities) {
        Ok(order) if job.count > 1 => order,
        // A single casting has no order, and a cavity that never fills is told elsewhere.
        _ => return,
    };
    let lag = Amount::Duration(Band::exact(order.lag));
    let entry = Entry::new("last casting full after the first", lag, &FILL_ORDER);
    let of_one_side = vec![each; runners.sides[0].len()];
    ledger.write(
        of_runners(entry, &runners)
            .input("cavities", list(&of_one_side))
            .input("above", exact(part.extents[2] - part.joint))
            .input("below", exact(part.joint))
            .because(Said::new("because-gates-even"))
            .up(),
    );
    note_uneven(&network, &order, ledger);
}

/// The running system as the laws of the gates ask for it.
fn of_runners(entry: Entry, runners: &PlainRunners) -> Entry {
    let number = |one: f64| number(&Band::exact(one));
    let entry = entry
        .input("head", exact(runners.level))
        .input("sprue_foot", exact(runners.foot))
        .input("sprue", exact(runners.sprue))
        .input("runner", exact(runners.runner))
        .input("spacing", exact(runners.spacing))
        .input("gates", list(&runners.sides[0]))
        .input("friction", number(TRIED_FACTOR))
        .input("sprue_loss", number(runners.sprue_loss))
        .input("gate_loss", number(runners.gate_loss))
        .input("turn", number(runners.turn));
    match runners.sides.get(1) {
        Some(other) => entry.input("other_gates", list(other)),
        None => entry,
    }
}

fn note_uneven(network: &Network, order: &FillOrder, ledger: &mut Ledger) {
    if order.lag <= order.full_at[order.last] * TOGETHER {
        return;
    }
    let Ok(areas) = balanced_gates(network, &vec![1.0; order.full_at.len()]) else {
        return;
    };
    let side = network.sides[0].len();
    ledger.note(GatingFact::GatesUneven {
        lag: order.lag,
        cut: areas.into_iter().take(side).collect(),
    });
}

fn write_lip(demand: &Demand, running: &RunningSystem, ledger: &mut Ledger) {
    let (liquid, discharge) = (demand.liquid.likely(), demand.discharge.likely());
    let second = Duration::from_s(1.0);
    let rate = running.choke.map(|choke| {
        let flow: Flow = lip_flow(choke, discharge, demand.pour_height);
        lip_metal(flow, liquid, second)
    });
    ledger.write(
        Entry::new("poured each second", Amount::Mass(rate), &LIP_RATE)
            .input("choke", band(&running.choke))
            .input("head", exact(demand.pour_height))
            .input("liquid_density", exact(liquid))
            .input("discharge", number(&Band::exact(discharge)))
            .because(Said::new("because-lip")),
    );
}

fn write_trap(demand: &Demand, running: &RunningSystem, ledger: &mut Ledger) {
    let liquid = demand.liquid.likely();
    let room = running
        .poured
        .map(|poured| first_metal(poured, liquid, FIRST_SHARE));
    ledger.write(
        Entry::new("slag trap volume", Amount::Volume(room), &FIRST_METAL)
            .input("poured", band(&running.poured))
            .input("liquid_density", exact(liquid))
            .input("share", share(&Band::exact(FIRST_SHARE)))
            .because(Said::new("because-first-metal"))
            .up(),
    );
    let [runners, _] = running.runner_and_gates;
    ledger.write(
        Entry::new(
            "run-off past the last gate",
            Amount::Length(room.map(|room| run_off(room, runners))),
            &RUN_OFF,
        )
        .input("first_metal", band(&room))
        .input("runner", exact(runners))
        .because(Said::new("because-run-off"))
        .up(),
    );
}

/// One gate to each casting, on runners to either side where there are two castings or more; gate
/// areas times `wider`.
fn runners(count: usize, demand: &Demand, choke: Area, wider: f64) -> PlainRunners {
    let sides = count.min(2);
    let [_, runner, gate] = demand.ratio;
    let longest = count.div_ceil(sides);
    let gate = area_by_ratio(choke, gate) / count as f64 * wider;
    let gates_of_sides = [longest, count - longest];
    PlainRunners {
        level: demand.pour_height,
        foot: choke,
        sprue: (demand.pour_height - BASIN).max(Length::ZERO),
        runner: area_by_ratio(choke, runner) / sides as f64,
        spacing: demand.runner / longest as f64,
        sides: gates_of_sides
            .into_iter()
            .take(sides)
            .map(|gates| vec![gate; gates])
            .collect(),
        sprue_loss: WELL_LOSS,
        gate_loss: GATE_LOSS,
        friction: TRIED,
        turn: SQUARE_TURN,
    }
}

fn fastest(runners: &PlainRunners) -> Option<Speed> {
    gate_flows(&runners.network())
        .ok()
        .map(|flows| flows.fastest())
}

/// Gate area in all, a twentieth at a time, at which the fastest gate keeps to a speed.
fn gates_for(count: usize, demand: &Demand, choke: Area, limit: Speed) -> Option<Area> {
    let keeps = |wider: &f64| {
        fastest(&runners(count, demand, choke, *wider)).is_some_and(|speed| speed <= limit)
    };
    let wider = (21..=WIDEST)
        .map(|twentieths| f64::from(twentieths) / 20.0)
        .find(keeps)?;
    Some(area_by_ratio(choke, demand.ratio[2]) * wider)
}

/// Gates are not widened further, in twentieths: eight times the gates planned are no gates but an
/// open side.
const WIDEST: u32 = 160;
