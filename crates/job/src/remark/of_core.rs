//! The words for what is found on cores.

use measure::matter::{Force, Pressure};
use measure::text::rounded;

use super::{Level, Remark};

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
}

impl From<CoreFact> for Remark {
    fn from(fact: CoreFact) -> Remark {
        let caution =
            |code, words, advice| Remark::new(code, Level::Caution, "core", words, advice);
        match fact {
            CoreFact::SeatUnknown { name } => Remark::new(
                "core_seat_unknown",
                Level::Note,
                "core",
                format!("it is not said how core \"{name}\" sits; its whole float is counted"),
                "write sits = hung, bridged, standing or chaplets; vent it through its print",
            ),
            CoreFact::FewPins { name, pins } => caution(
                "core_pins",
                format!("core \"{name}\" has no print and {pins} pins: it can turn on them"),
                "three pins at least, not all in one plane, and a vent to the open",
            ),
            CoreFact::StandsLoose { name, lift } => caution(
                "core_loose",
                format!(
                    "core \"{name}\" stands on its print and floats by {} kgf once metal creeps \
                     under it",
                    rounded(lift.as_kgf(), 2)
                ),
                "pin or chaplet it from above; vent it through the print, clear of the metal",
            ),
            CoreFact::PrintSmall {
                name,
                pressure,
                strength,
            } => caution(
                "core_print",
                format!(
                    "the print of core \"{name}\" presses with {} kPa on sand that bears {} kPa",
                    rounded(pressure.as_kpa(), 2),
                    rounded(strength.as_kpa(), 2)
                ),
                "enlarge the print until the sand is twice as strong, or ram it harder there",
            ),
        }
    }
}
