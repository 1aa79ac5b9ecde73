//! What is found where the heat in the mould is followed beside the laws of a plan.

use measure::band::Band;
use measure::flow::Duration;
use measure::text::System;
use measure::text::shown::{Rounding, shown};

use super::Remark;
use crate::freezing_told::cm3;

/// What is found beside the laws.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SolvedFact {
    /// Castings freeze longer than the law of moduli says, by more than the bands of both.
    FreezesLonger {
        /// By their heat.
        solved: Band<Duration>,
        /// By the law.
        pencil: Band<Duration>,
    },
    /// They freeze sooner than it says.
    FreezesSooner {
        /// By their heat.
        solved: Band<Duration>,
        /// By the law.
        pencil: Band<Duration>,
    },
    /// They are cold later than the late end of the plan.
    OpensLater {
        /// By their heat.
        solved: Duration,
        /// The late end of the plan.
        plan: Duration,
    },
    /// Places in castings are cut off from every feeder.
    CutOff {
        /// How many.
        pools: usize,
        /// What they lack, mm³.
        lacking_mm3: f64,
    },
    /// What was kept belongs to another plan or mesh.
    Stale,
}

impl From<SolvedFact> for Remark {
    fn from(fact: SolvedFact) -> Remark {
        match fact {
            SolvedFact::FreezesLonger { solved, pencil } => {
                Remark::caution("solved_longer", "freezing")
                    .with("solved", between(&solved))
                    .with("pencil", between(&pencil))
            }
            SolvedFact::FreezesSooner { solved, pencil } => {
                Remark::note("solved_sooner", "freezing")
                    .with("solved", between(&solved))
                    .with("pencil", between(&pencil))
            }
            SolvedFact::OpensLater { solved, plan } => Remark::caution("solved_open", "opening")
                .with("solved", likely(solved))
                .with("plan", likely(plan)),
            SolvedFact::CutOff { pools, lacking_mm3 } => {
                Remark::caution("solved_cut_off", "feeding")
                    .with("count", pools)
                    .with("lacks", cm3(lacking_mm3))
            }
            SolvedFact::Stale => Remark::note("solved_stale", "freezing"),
        }
    }
}

fn likely(time: Duration) -> String {
    between(&Band::exact(time))
}

fn between(band: &Band<Duration>) -> String {
    let shown = shown(band, System::Metric, Rounding::Nearest);
    shown
        .band
        .map_or(shown.likely, |band| format!("{} – {}", band.low, band.high))
}
