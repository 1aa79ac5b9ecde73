//! The running system as a whole: how much metal stands in sprue, basin, runner and gates, and what
//! follows from it for the filling time and the choke.
//!
//! The parts depend on each other in a ring: the choke on the mass poured, the mass poured on the
//! sprue and the runner, these on the choke. The ring is gone round until the mass stands still,
//! which takes a handful of turns because the running system is the smaller part of the metal.

use measure::band::Band;
use measure::flow::Duration;
use measure::length::{Area, Length, Volume};
use measure::matter::{Density, Mass};
use measure::source::Law;

use crate::gating::basin::basin_depth;
use crate::gating::choke::choke;
use crate::gating::pour_time::{FillTime, ToRun, fill_time};
use crate::gating::slag_trap::{FIRST_SHARE, first_metal, run_off};
use crate::gating::sprue::{area_of, diameter_of, sprue_top, sprue_volume};

/// Metal that fills the running system.
pub const RUNNING_METAL: Law = Law {
    name: "mould::gating::running_system::running_volume",
    formula: "V = V_sprue + V_basin + A_choke (r_runner (L_runner + L_off) + r_gate L_gates), \
              L_off = V_trap / A_runner, at least 25 mm",
    range: "one sprue; areas in the ratio 1 : runner : gates; the basin a cup two and a half sprue \
            tops deep and wide, no deeper than half the pour height",
    sources: &[
        "gating-ratio-table",
        "pouring-basin-notes",
        "common-practice",
    ],
};

/// Everything that is poured into one mould.
pub const POURED_MASS: Law = Law {
    name: "mould::gating::running_system::poured_mass",
    formula: "m = n (m_casting + m_feeder) + m_running",
    range: "castings alike, each with its feeder; one running system",
    sources: &["common-practice"],
};

/// Area of runner or gates from that of the choke.
pub const AREA_BY_RATIO: Law = Law {
    name: "mould::gating::running_system::area_by_ratio",
    formula: "A = r A_choke",
    range: "all runners, or all gates, together; r from the gating ratio of the metal",
    sources: &["gating-ratio-table"],
};

/// What has to be filled and how.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Demand {
    /// Castings in the mould.
    pub count: f64,
    /// One casting.
    pub casting: Band<Mass>,
    /// The feeder of one casting; nought where it has none.
    pub feeder: Band<Mass>,
    /// Density of the liquid metal.
    pub liquid: Band<Density>,
    /// Thinnest wall that has to run.
    pub wall: Length,
    /// Shortest time in which that wall freezes.
    pub wall_freezes: Duration,
    /// From the joint to the level in the basin.
    pub pour_height: Length,
    /// The mean head on the choke.
    pub head: Length,
    /// Areas of choke, runner and gates, the choke as 1.
    pub ratio: [f64; 3],
    /// Length of runner to its last gate.
    pub runner: Length,
    /// What the running system lets through of what an ideal one would.
    pub discharge: Band<f64>,
}

impl Demand {
    /// Castings and feeders, as they likely are.
    pub fn filled(&self) -> Mass {
        (self.casting.likely() + self.feeder.likely()) * self.count
    }
}

/// What comes out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RunningSystem {
    /// Everything poured: castings, feeders, running system.
    pub poured: Band<Mass>,
    /// Metal in the running system.
    pub mass: Band<Mass>,
    /// Time to fill.
    pub fill: FillTime,
    /// The same of the likely mass, by which the choke is cut.
    pub pace: Band<Duration>,
    /// Whether the thinnest wall is full before it freezes.
    pub in_time: bool,
    /// Area of the choke, at the foot of the sprue.
    pub choke: Band<Area>,
    /// Diameter of the sprue at its foot.
    pub sprue_foot: Band<Length>,
    /// Diameter of the sprue at its top.
    pub sprue_top: Band<Length>,
    /// Areas of runner and gates.
    pub runner_and_gates: [Area; 2],
    /// The slag trap, and the runner past the last gate that holds it.
    pub trap: Volume,
    /// Length of that runner.
    pub past_last_gate: Length,
}

/// The basin over the sprue, a round cup.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Basin {
    /// Its width.
    pub across: Length,
    /// Its depth.
    pub depth: Length,
}

/// Least depth of metal kept over the sprue, and how far the basin stands above the cope.
pub const BASIN: Length = Length::from_mm(25.0);

/// Gates are short: the runner lies this far from the casting.
pub const GATE_LENGTH: Length = Length::from_mm(25.0);

/// A basin as wide as two and a half sprue tops (common practice, no source).
const BASIN_WIDTHS: f64 = 2.5;

/// How far the running system as cut may differ from this plan (common practice, no source).
pub const AS_CUT: [f64; 2] = [0.7, 1.4];

/// Turns round the ring: each leaves less than a third of the error.
const TURNS: usize = 12;

/// Metal in the running system for a choke and a slag trap. Law: [`RUNNING_METAL`].
pub fn running_volume(choke: Area, trap: Volume, demand: &Demand) -> Volume {
    let foot = diameter_of(choke);
    let top = sprue_top(foot, BASIN.min(demand.pour_height), demand.pour_height);
    let basin = basin_over(top, demand.pour_height);
    let sprue_height = (demand.pour_height - basin.depth).max(Length::ZERO);
    let [runner, gates] = [demand.ratio[1], demand.ratio[2]].map(|r| area_by_ratio(choke, r));
    let flat = runner * (demand.runner + run_off(trap, runner)) + gates * GATE_LENGTH;
    sprue_volume(top, foot, sprue_height) + area_of(basin.across) * basin.depth + flat
}

/// The basin over a sprue: as deep as its law says, but no deeper than half of the pour height, and
/// no shallower than what is kept over the sprue.
pub fn basin_over(sprue_top: Length, pour_height: Length) -> Basin {
    let at_most = (pour_height * 0.5).max(BASIN.min(pour_height));
    Basin {
        across: sprue_top * BASIN_WIDTHS,
        depth: basin_depth(sprue_top).max(BASIN).min(at_most),
    }
}

impl Basin {
    /// Modulus of the metal that stands in it; nothing is counted as lost to the air above, so that
    /// it freezes no later than this says.
    pub fn modulus(&self) -> Length {
        let cooled = self.across + self.depth * 4.0;
        self.depth * (self.across / cooled)
    }
}

/// Everything poured, from one casting, its feeder and the running system. Law: [`POURED_MASS`].
pub fn poured_mass(count: f64, casting: Mass, feeder: Mass, running: Mass) -> Mass {
    (casting + feeder) * count + running
}

/// Area of all runners or all gates, from their share in the ratio with the choke as 1. Law:
/// [`AREA_BY_RATIO`].
pub fn area_by_ratio(choke: Area, ratio: f64) -> Area {
    choke * ratio
}

/// Goes round the ring of mass, time and choke.
///
/// A very thin wall asks for so short a time that the running system it takes outgrows the casting,
/// and the ring finds no rest. Then no running system fills it in time: the usual pour is
/// planned instead, and the thin wall is told not to be [`RunningSystem::in_time`].
pub fn running_system(demand: &Demand) -> RunningSystem {
    let unhurried = Demand {
        wall_freezes: Duration::from_s(f64::INFINITY),
        ..*demand
    };
    let hurried_mass = settled_mass(demand);
    let in_time = hurried_mass <= settled_mass(&unhurried) * MOST_HURRY;
    let demand = if in_time { demand } else { &unhurried };
    let mass = settled_mass(demand);
    let mass = Band::new(mass * AS_CUT[0], mass, mass * AS_CUT[1]);
    let poured = demand
        .casting
        .with_two(&demand.feeder, &mass, |casting, feeder, running| {
            poured_mass(demand.count, casting, feeder, running)
        });
    let fill = fill_time(&poured, demand.wall, &to_run(demand));
    let pace = pace(poured.likely(), demand);
    let choke_area = choke_band(poured.likely(), &pace, demand);
    let sprue_foot = choke_area.map(diameter_of);
    let top = |foot| sprue_top(foot, BASIN.min(demand.pour_height), demand.pour_height);
    let [_, runner, gate] = demand.ratio;
    let likely = choke_area.likely();
    let runner_and_gates = [runner, gate].map(|ratio| area_by_ratio(likely, ratio));
    let trap = first_metal(poured.likely(), demand.liquid.likely(), FIRST_SHARE);
    RunningSystem {
        poured,
        mass,
        fill,
        pace,
        in_time,
        choke: choke_area,
        sprue_foot,
        sprue_top: sprue_foot.map(top),
        runner_and_gates,
        trap,
        past_last_gate: run_off(trap, runner_and_gates[0]),
    }
}

/// How much heavier the running system may become for the sake of a thin wall. Raised, a rib of a
/// millimetre plans a sprue like a bucket; lowered, walls that a brisk pour fills are given up.
const MOST_HURRY: f64 = 3.0;

fn settled_mass(demand: &Demand) -> Mass {
    let liquid = demand.liquid.likely();
    let mut running = Mass::ZERO;
    for _ in 0..TURNS {
        let (casting, feeder) = (demand.casting.likely(), demand.feeder.likely());
        let poured = poured_mass(demand.count, casting, feeder, running);
        let time = pace(poured, demand).likely();
        let share = demand.discharge.likely();
        let area = choke(poured, liquid, time, share, demand.head);
        let trap = first_metal(poured, liquid, FIRST_SHARE);
        running = liquid * running_volume(area, trap, demand);
    }
    running
}

/// Time to fill of one mass.
fn pace(poured: Mass, demand: &Demand) -> Band<Duration> {
    fill_time(&Band::exact(poured), demand.wall, &to_run(demand)).band
}

fn to_run(demand: &Demand) -> ToRun {
    ToRun {
        liquid: demand.liquid.likely(),
        filled: demand.filled(),
        freezing: Some(demand.wall_freezes),
    }
}

/// The choke of the pour as planned: its band is that of the time for the likely mass, and of the
/// losses. A heavier pour takes more time as well; the two add nothing to the ratio between them
/// worth a second margin.
fn choke_band(poured: Mass, pace: &Band<Duration>, demand: &Demand) -> Band<Area> {
    let liquid = demand.liquid.likely();
    pace.with(&demand.discharge, |time, share| {
        choke(poured, liquid, time, share, demand.head)
    })
}
