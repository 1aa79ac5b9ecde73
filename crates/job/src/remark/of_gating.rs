//! What is found in the running system.

use measure::flow::{Duration, Speed};
use measure::length::Area;
use measure::text::rounded;

use super::{Level, Remark};

/// What is found in the running system.
#[derive(Clone, Debug, PartialEq)]
pub enum GatingFact {
    /// The fastest gate runs faster than its metal bears.
    GateTooFast {
        /// The fastest gate.
        speed: Speed,
        /// The limit taken for the metal.
        limit: Speed,
        /// The highest limit that any source gives.
        highest: Speed,
        /// Gate area in all that keeps to the limit, where widening alone does.
        gates: Option<Area>,
    },
    /// The castings do not fill together.
    GatesUneven {
        /// The last behind the first.
        lag: Duration,
        /// Gate areas along one runner that even them out, from the sprue outwards.
        cut: Vec<Area>,
    },
}

impl From<GatingFact> for Remark {
    fn from(fact: GatingFact) -> Remark {
        match fact {
            GatingFact::GateTooFast {
                speed,
                limit,
                highest,
                gates,
            } => {
                let id = match gates {
                    Some(_) => "gate_too_fast-widen",
                    None => "gate_too_fast-slow",
                };
                let level = match speed > highest {
                    true => Level::Caution,
                    false => Level::Note,
                };
                let told = Remark::new(id, level, "gates")
                    .with("speed", m_per_s(speed))
                    .with("limit", m_per_s(limit));
                match gates {
                    Some(area) => told.with("area", mm2(&area)),
                    None => told,
                }
            }
            GatingFact::GatesUneven { lag, cut } => {
                let cut: Vec<String> = cut.iter().map(mm2).collect();
                Remark::note("gates_uneven", "gates")
                    .with("lag", format!("{} s", rounded(lag.as_s(), 2)))
                    .with("cut", cut.join(", "))
            }
        }
    }
}

fn m_per_s(speed: Speed) -> String {
    format!("{} m/s", rounded(speed.as_m_per_s(), 2))
}

fn mm2(area: &Area) -> String {
    format!("{} mm²", rounded(area.as_mm2(), 2))
}
