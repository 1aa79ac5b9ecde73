//! How much sand to mix for a flask.

use measure::band::Band;
use measure::length::Volume;
use measure::matter::{Density, Mass};
use measure::source::{Law, Sourced};
use thiserror::Error;

/// What is mixed over what is rammed, for spill and for striking off: `common-practice`.
pub const SPILL_ALLOWANCE: f64 = 1.15;

/// Rammed sand that fills a flask round its pattern.
pub const SAND_TO_FILL: Law = Law {
    name: "sand::batch::sand_to_fill",
    formula: "m = (V_flask − V_pattern) ρ_rammed",
    range: "inside of the flask; pattern, feeders and running system all taken off",
    sources: &["common-practice"],
};

/// Sand to mix for the sand that is rammed.
pub const WITH_SPILL: Law = Law {
    name: "sand::batch::with_spill",
    formula: "m_mixed = 1.15 m_rammed",
    range: "hand moulding; what is spilt is riddled and used again",
    sources: &["common-practice"],
};

/// Sand for one flask.
#[derive(Clone, Debug, PartialEq)]
pub struct Batch {
    /// What is rammed into the flask.
    pub rammed: Band<Mass>,
    /// What to have ready.
    pub mixed: Band<Mass>,
}

/// Why a flask cannot be filled.
#[derive(Clone, Copy, Debug, PartialEq, Error)]
pub enum BatchError {
    /// The pattern is larger than the flask.
    #[error(
        "the pattern ({pattern_litre:.2} l) leaves no room for sand in the flask \
         ({flask_litre:.2} l): take a larger flask"
    )]
    NoRoom {
        /// Inside of the flask, in litres.
        flask_litre: f64,
        /// The pattern with all that stands in the mould, in litres.
        pattern_litre: f64,
    },
}

impl Batch {
    /// Sand for a flask of this inside, round all that stands in the mould.
    pub fn for_flask(
        flask: Volume,
        pattern: Volume,
        rammed: &Band<Density>,
    ) -> Result<Batch, BatchError> {
        if pattern >= flask {
            return Err(BatchError::NoRoom {
                flask_litre: flask.as_litre(),
                pattern_litre: pattern.as_litre(),
            });
        }
        let rammed = rammed.map(|density| sand_to_fill(flask, pattern, density));
        let mixed = rammed.map(with_spill);
        Ok(Batch { rammed, mixed })
    }
}

/// Density of moulding sand rammed by hand: 1.5 to 1.7 g/cm³, from memory.
pub fn rammed_density() -> Sourced<Band<Density>> {
    Sourced {
        value: Band::new(
            Density::from_g_per_cm3(1.5),
            Density::from_g_per_cm3(1.6),
            Density::from_g_per_cm3(1.7),
        ),
        source: "shop-handbook-figures".to_owned(),
    }
}

/// Rammed sand that fills the flask round the pattern. Law: [`SAND_TO_FILL`].
pub fn sand_to_fill(flask: Volume, pattern: Volume, rammed: Density) -> Mass {
    rammed * (flask - pattern)
}

/// Sand to have ready for the sand that is rammed. Law: [`WITH_SPILL`].
pub fn with_spill(rammed: Mass) -> Mass {
    rammed * SPILL_ALLOWANCE
}
