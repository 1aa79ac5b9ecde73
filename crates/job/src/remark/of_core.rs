//! What is found on cores.

use measure::matter::{Force, Pressure};
use measure::text::rounded;

use super::Remark;

/// What is found on cores.
#[derive(Clone, Debug, PartialEq)]
pub enum CoreFact {
    /// The job does not say how it sits.
    SeatUnknown {
        /// The core.
        name: String,
    },
    /// No print, and too few pins.
    FewPins {
        /// The core.
        name: String,
        /// Pins there are.
        pins: u32,
    },
    /// It stands on a base print, floats, and nothing holds it down.
    StandsLoose {
        /// The core.
        name: String,
        /// How hard it floats with metal under its print.
        lift: Force,
    },
    /// The sand is not twice as strong as its print presses.
    PrintSmall {
        /// The core.
        name: String,
        /// Pressure of the print.
        pressure: Pressure,
        /// What the sand bears.
        strength: Pressure,
    },
    /// A larger core would take metal out of the section that freezes last.
    Oversize {
        /// The core.
        name: String,
        /// Contraction, low and high.
        contraction: [f64; 2],
    },
}

impl From<CoreFact> for Remark {
    fn from(fact: CoreFact) -> Remark {
        match fact {
            CoreFact::SeatUnknown { name } => {
                Remark::note("core_seat_unknown", "core").with("core", name)
            }
            CoreFact::FewPins { name, pins } => Remark::caution("core_pins", "core")
                .with("core", name)
                .with("pins", pins as usize),
            CoreFact::StandsLoose { name, lift } => Remark::caution("core_loose", "core")
                .with("core", name)
                .with("lift", format!("{} kgf", rounded(lift.as_kgf(), 2))),
            CoreFact::Oversize {
                name,
                contraction: [low, high],
            } => Remark::note("core_oversize", "core")
                .with("core", name)
                .with("low", rounded(low * 100.0, 3))
                .with("high", format!("{} %", rounded(high * 100.0, 3))),
            CoreFact::PrintSmall {
                name,
                pressure,
                strength,
            } => Remark::caution("core_print", "core")
                .with("core", name)
                .with("pressure", kpa(pressure))
                .with("strength", kpa(strength)),
        }
    }
}

fn kpa(pressure: Pressure) -> String {
    format!("{} kPa", rounded(pressure.as_kpa(), 2))
}
