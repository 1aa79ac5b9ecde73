//! How fast the metal leaves each gate over time: against the limits in print, and against what a
//! quiet rise can be.

use measure::matter::GRAVITY_M_PER_S2;
use mould::gating::gate_speed::limits_of;

use super::levels::Reading;

/// A limit in print that a gate oversteps.
#[derive(Clone, Debug, PartialEq)]
pub struct OverLimit {
    /// Who says so.
    pub school: String,
    /// The limit, m/s.
    pub limit_m_s: f64,
    /// Key of the bibliography.
    pub source: String,
    /// From when, s.
    pub from_s: f64,
    /// Until when, s.
    pub to_s: f64,
    /// Part of the metal of this gate that comes faster than that.
    pub share: f64,
}

/// The speed of one gate.
#[derive(Clone, Debug, PartialEq)]
pub struct GateSpeed {
    /// Its number, from nought.
    pub gate: usize,
    /// Metal that comes through it, m³.
    pub metal_m3: f64,
    /// The fastest, m/s.
    pub fastest_m_s: f64,
    /// When, s.
    pub fastest_at_s: f64,
    /// The limits that it oversteps, the slowest first.
    pub over: Vec<OverLimit>,
    /// Part of its metal that comes faster than a wave runs in the pool where it lands: there the
    /// metal does not lie level, and what is said of its rising is not to be trusted.
    pub rough_share: f64,
    /// The largest Froude number, v / √(g d), at the speed with which it lands and the depth of the
    /// pool there.
    pub largest_froude: f64,
}

/// What a gate is measured against.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Landing {
    /// Area of the gate, m².
    pub(super) area_m2: f64,
    /// Its height, m.
    pub(super) height_m: f64,
    /// Height of the floor on which its stream ends, m.
    pub(super) floor_m: f64,
    /// Depth below which none is told from another, m: half a cell.
    pub(super) least_m: f64,
}

/// The speeds of all gates.
pub(super) fn speeds(readings: &[Reading], landings: &[Landing], kind: &str) -> Vec<GateSpeed> {
    let gates = landings.iter().enumerate();
    gates
        .map(|(gate, landing)| speed(readings, gate, landing, kind))
        .collect()
}

/// Between two readings: from when, how long, the mean speed and the metal.
struct Stretch {
    from_s: f64,
    to_s: f64,
    m_s: f64,
    metal_m3: f64,
    froude: f64,
}

fn speed(readings: &[Reading], gate: usize, landing: &Landing, kind: &str) -> GateSpeed {
    let stretches: Vec<Stretch> = readings
        .windows(2)
        .map(|pair| stretch(&pair[0], &pair[1], gate, landing))
        .collect();
    let metal_m3: f64 = stretches.iter().map(|stretch| stretch.metal_m3).sum();
    let share = |of: &dyn Fn(&&Stretch) -> bool| {
        let part: f64 = stretches.iter().filter(of).map(|s| s.metal_m3).sum();
        if part > 0.0 { part / metal_m3 } else { 0.0 }
    };
    let at = |reading: &Reading| reading.gates_m3_s[gate] / landing.area_m2;
    let fastest = readings.iter().max_by(|a, b| at(a).total_cmp(&at(b)));
    let over = limits_of(kind).into_iter().filter_map(|limit| {
        let fast = |stretch: &&Stretch| stretch.m_s > limit.m_per_s;
        let first = stretches.iter().find(fast)?;
        let last = stretches.iter().rfind(fast)?;
        Some(OverLimit {
            school: limit.school.clone(),
            limit_m_s: limit.m_per_s,
            source: limit.source.clone(),
            from_s: first.from_s,
            to_s: last.to_s,
            share: share(&fast),
        })
    });
    GateSpeed {
        gate,
        metal_m3,
        fastest_m_s: fastest.map_or(0.0, at),
        fastest_at_s: fastest.map_or(0.0, |reading| reading.at_s),
        over: over.collect(),
        rough_share: share(&|stretch| stretch.froude > 1.0),
        largest_froude: stretches.iter().map(|s| s.froude).fold(0.0, f64::max),
    }
}

fn stretch(from: &Reading, to: &Reading, gate: usize, landing: &Landing) -> Stretch {
    let flow = 0.5 * (from.gates_m3_s[gate] + to.gates_m3_s[gate]);
    let m_s = flow / landing.area_m2;
    let pool_m = to.pool_m[gate].unwrap_or(landing.height_m);
    let fall_m = match to.over_m[gate] {
        Some(_) => 0.0,
        None => (landing.height_m - pool_m).max(0.0),
    };
    let depth_m = (pool_m - landing.floor_m).max(landing.least_m);
    let lands = (m_s * m_s + 2.0 * GRAVITY_M_PER_S2 * fall_m).sqrt();
    let froude = lands / (GRAVITY_M_PER_S2 * depth_m).sqrt();
    Stretch {
        from_s: from.at_s,
        to_s: to.at_s,
        m_s,
        metal_m3: flow * (to.at_s - from.at_s),
        froude: if flow > 0.0 { froude } else { 0.0 },
    }
}
