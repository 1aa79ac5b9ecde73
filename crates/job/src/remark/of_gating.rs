//! The words for what is found in the running system.

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
        let square = |area: &Area| rounded(area.as_mm2(), 2);
        match fact {
            GatingFact::GateTooFast {
                speed,
                limit,
                highest,
                gates,
            } => {
                let [speed_m_per_s, limit_m_per_s] =
                    [speed, limit].map(|speed| rounded(speed.as_m_per_s(), 2));
                let advice = match gates {
                    Some(area) => format!(
                        "cut the gates to {} mm2 in all, wide and shallow, and feed from below",
                        square(&area)
                    ),
                    None => {
                        "lower the pour or slow the metal in a wider runner or a filter; gates \
                             alone do not tame it"
                            .to_owned()
                    }
                };
                Remark::new(
                    "gate_too_fast",
                    if speed > highest {
                        Level::Caution
                    } else {
                        Level::Note
                    },
                    "gates",
                    format!(
                        "the fastest gate runs at {speed_m_per_s} m/s; above {limit_m_per_s} m/s \
                         the front breaks, folds its skin in and washes sand"
                    ),
                    &advice,
                )
            }
            GatingFact::GatesUneven { lag, cut } => Remark::new(
                "gates_uneven",
                Level::Note,
                "gates",
                format!(
                    "with gates of one size the last casting is full {} s after the first",
                    rounded(lag.as_s(), 2)
                ),
                &format!(
                    "cut the gates {} mm2 from the sprue outwards, or step the runner down",
                    cut.iter().map(square).collect::<Vec<_>>().join(", ")
                ),
            ),
        }
    }
}
