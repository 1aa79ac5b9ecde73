//! The gates one by one: how fast they run, how evenly, how fast to pour, where the first metal
//! goes.

use measure::band::Band;
use measure::flow::{Duration, Flow, Speed};
use measure::length::{Area, Length, Volume};
use mould::gating::balance::balanced_gates;
use mould::gating::basin::{LIP_RATE, lip_flow, lip_metal};
use mould::gating::choke::discharge;
use mould::gating::filling::{Cavity, FILL_ORDER, FillOrder, fill_order};
use mould::gating::friction::TRIED;
use mould::gating::network::{
    GATE_FLOWS, GATE_LOSS, Gate, Network, Passage, SQUARE_TURN, Stretch, WELL_LOSS, gate_flows,
};
use mould::gating::running_system::{BASIN, Demand, GATE_LENGTH, RunningSystem};
use mould::gating::slag_trap::{FIRST_METAL, FIRST_SHARE, RUN_OFF, first_metal, run_off};

use crate::amount::Amount;
use crate::job::Job;
use crate::placed_part::PlacedPart;
use crate::remark::of_gating::GatingFact;
use crate::work_out::casting::{band_text, length_text};
use crate::work_out::ledger::{Entry, Ledger};

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
    let likely = running.choke.likely();
    let Some(speed) = fastest(job.count, demand, likely) else {
        return;
    };
    let ends = [running.choke.low(), running.choke.high()];
    let [low, high] = ends.map(|choke| fastest(job.count, demand, choke).unwrap_or(speed));
    let limit = &job.alloy.entry_speed;
    ledger.write(
        Entry::new(
            "gate speed",
            Amount::Speed(Band::new(low, speed, high)),
            &GATE_FLOWS,
        )
        .input("choke area", band_text(&running.choke))
        .input("gates", job.count.to_string())
        .input(
            "gate area in all",
            band_text(&Band::exact(running.runner_and_gates[1])),
        )
        .input("pour height", length_text(demand.pour_height))
        .input("limit of the metal", band_text(&limit.band))
        .seen(&limit.sources)
        .because("the fastest gate, at the start, with the basin full")
        .up(),
    );
    if speed > limit.band.likely() {
        ledger.note(GatingFact::GateTooFast {
            speed,
            limit: limit.band.likely(),
            highest: limit.band.high(),
            gates: gates_for(job.count, demand, likely, limit.band.likely()),
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
    let network = network(job.count, demand, running.choke.likely(), 1.0);
    let each = Volume::filled_by(demand.filled.likely(), demand.liquid.likely()) / job.count as f64;
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
    ledger.write(
        Entry::new(
            "last casting full after the first",
            Amount::Duration(Band::exact(order.lag)),
            &FILL_ORDER,
        )
        .input("castings", job.count.to_string())
        .input("each with its feeder", band_text(&Band::exact(each)))
        .because("gates of one size on plain runners to either side of the sprue")
        .up(),
    );
    note_uneven(&network, &order, ledger);
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
    let liquid = demand.liquid.likely();
    let second = Duration::from_s(1.0);
    let rate = running.choke.map(|choke| {
        let flow: Flow = lip_flow(choke, discharge().likely(), demand.pour_height);
        lip_metal(flow, liquid, second)
    });
    ledger.write(
        Entry::new("poured each second", Amount::Mass(rate), &LIP_RATE)
            .input("choke area", band_text(&running.choke))
            .input("pour height", length_text(demand.pour_height))
            .input("C", "0.8")
            .because("the lip has to give as much as the choke takes, or the sprue draws air"),
    );
}

fn write_trap(demand: &Demand, running: &RunningSystem, ledger: &mut Ledger) {
    let room = running
        .poured
        .map(|poured| first_metal(poured, demand.liquid.likely(), FIRST_SHARE));
    ledger.write(
        Entry::new("slag trap volume", Amount::Volume(room), &FIRST_METAL)
            .input("poured", band_text(&running.poured))
            .input("share", "5 %")
            .because("the first metal is the coldest and carries the loose sand")
            .up(),
    );
    let [runners, _] = running.runner_and_gates;
    ledger.write(
        Entry::new(
            "run-off past the last gate",
            Amount::Length(room.map(|room| run_off(room, runners))),
            &RUN_OFF,
        )
        .input("slag trap volume", band_text(&room))
        .input("runner area in all", band_text(&Band::exact(runners)))
        .because("of each runner; or a pocket of the volume at its end")
        .up(),
    );
}

/// One gate to each casting, on runners to either side where there are two castings or more; gate
/// areas times `wider`.
fn network(count: usize, demand: &Demand, choke: Area, wider: f64) -> Network {
    let sides = count.min(2);
    let [_, runner, gate] = demand.ratio;
    let gate_area = choke * gate / count as f64 * wider;
    let longest = count.div_ceil(sides);
    let stretch = |cavity: usize| Stretch {
        runner: Passage::square(
            choke * runner / sides as f64,
            demand.runner / longest as f64,
            0.0,
        ),
        gate: Gate {
            passage: Passage::square(gate_area, GATE_LENGTH, GATE_LOSS),
            height: Length::ZERO,
            cavity,
        },
    };
    let split = [0..longest, longest..count];
    Network {
        level: demand.pour_height,
        sprue: Passage::square(
            choke,
            (demand.pour_height - BASIN).max(Length::ZERO),
            WELL_LOSS,
        ),
        sides: split
            .into_iter()
            .take(sides)
            .map(|side| side.map(stretch).collect())
            .collect(),
        friction: TRIED,
        turn: SQUARE_TURN,
    }
}

fn fastest(count: usize, demand: &Demand, choke: Area) -> Option<Speed> {
    fastest_of(&network(count, demand, choke, 1.0))
}

fn fastest_of(network: &Network) -> Option<Speed> {
    let flows = gate_flows(network).ok()?;
    Some(
        flows
            .gates
            .iter()
            .map(|gate| gate.speed)
            .fold(Speed::ZERO, Speed::max),
    )
}

/// Gate area in all, a twentieth at a time, at which the fastest gate keeps to a speed.
fn gates_for(count: usize, demand: &Demand, choke: Area, limit: Speed) -> Option<Area> {
    let keeps = |wider: &f64| {
        fastest_of(&network(count, demand, choke, *wider)).is_some_and(|speed| speed <= limit)
    };
    let wider = (21..=WIDEST)
        .map(|twentieths| f64::from(twentieths) / 20.0)
        .find(keeps)?;
    Some(choke * demand.ratio[2] * wider)
}

/// Gates are not widened further, in twentieths: eight times the gates planned are no gates but an
/// open side.
const WIDEST: u32 = 160;
