//! How much metal to put in the crucible.

use measure::band::Band;
use measure::matter::Mass;
use measure::source::Law;
use thiserror::Error;

/// Metal over and above what is poured, left for the ingot mould.
pub const PIG: Law = Law {
    name: "metal::charge::pig",
    formula: "m_pig = p m_poured",
    range: "p of some 5 to 15 %: enough that the last mould does not run short",
    sources: &["common-practice"],
};

/// Metal to charge for what is wanted at the spout.
pub const CHARGE: Law = Law {
    name: "metal::charge::charge",
    formula: "m_charge = (m_poured + m_pig) / (1 − l)",
    range: "melt loss l below 1",
    sources: &["doe-melting-2005"],
};

/// A charge for a pour, with its margins.
#[derive(Clone, Debug, PartialEq)]
pub struct Charge {
    /// What goes into the moulds.
    pub poured: Band<Mass>,
    /// What is left for the ingot mould.
    pub pig: Band<Mass>,
    /// What goes into the crucible.
    pub charged: Band<Mass>,
    /// What is skimmed off and burnt.
    pub lost: Band<Mass>,
}

/// Why a charge cannot be worked out.
#[derive(Clone, Copy, Debug, PartialEq, Error)]
pub enum ChargeError {
    /// More is lost than charged.
    #[error("a melt loss of {per_cent} % leaves nothing to pour: give a loss from 0 to 90 %")]
    Loss {
        /// The loss that was given.
        per_cent: f64,
    },
    /// A pig that is no share of the pour.
    #[error("a pig of {per_cent} % is not possible: give a share of the pour from 0 to 100 %")]
    Pig {
        /// The share that was given.
        per_cent: f64,
    },
}

impl Charge {
    /// The charge for a pour: `pig` is a share of the metal poured, `loss` one of the charge.
    pub fn for_pour(
        poured: Band<Mass>,
        pig_share: f64,
        loss: Band<f64>,
    ) -> Result<Charge, ChargeError> {
        if !(0.0..=1.0).contains(&pig_share) {
            let per_cent = pig_share * 100.0;
            return Err(ChargeError::Pig { per_cent });
        }
        for share in [loss.low(), loss.high()] {
            if !(0.0..=0.9).contains(&share) {
                let per_cent = share * 100.0;
                return Err(ChargeError::Loss { per_cent });
            }
        }
        Ok(Charge {
            poured,
            pig: poured.map(|poured| pig(poured, pig_share)),
            charged: poured.with(&loss, |poured, loss| charge(poured, pig_share, loss)),
            lost: poured.with(&loss, |poured, loss| charge(poured, pig_share, loss) * loss),
        })
    }
}

/// Metal left for the ingot mould, as a share of what is poured. Law: [`PIG`].
pub fn pig(poured: Mass, share: f64) -> Mass {
    poured * share
}

/// Metal to charge; `loss` is the share of the charge that is lost. Law: [`CHARGE`].
pub fn charge(poured: Mass, pig_share: f64, loss: f64) -> Mass {
    (poured + pig(poured, pig_share)) / (1.0 - loss)
}
