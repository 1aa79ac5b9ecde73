//! What the melt loses, by the founder's own weighing or by the table.

use measure::band::Band;
use metal::alloy::Family;
use metal::furnace::{Furnace, Stock, practice};

use crate::job::Job;
use crate::shop::Shop;

/// Loss taken where no table knows the furnace and the metal: the high end of clean metal, so that
/// the mould does not run short.
const LOSS_UNKNOWN: f64 = 0.1;

/// A melt loss.
#[derive(Clone, Debug, PartialEq)]
pub struct MeltLoss {
    /// Share of the charge that is lost.
    pub share: Band<f64>,
    /// Keys of the sources; none for the founder's own weighing.
    pub sources: Vec<String>,
    /// Whether it is a guess, because no table knows the furnace and the metal.
    pub guessed: bool,
}

/// The melt loss of a job in a shop.
pub fn melt_loss(job: &Job, shop: &Shop) -> MeltLoss {
    if let Some(own) = &job.loss {
        return MeltLoss {
            share: Band::exact(own.ratio),
            sources: Vec::new(),
            guessed: false,
        };
    }
    by_the_table(shop.furnace, job.alloy.family, job.stock)
}

/// The melt loss of a metal in a furnace, or a guess where no table knows the pair.
pub fn by_the_table(furnace: Furnace, family: Family, stock: Stock) -> MeltLoss {
    match practice(furnace, family, stock) {
        Some(practice) => MeltLoss {
            share: practice.loss.band,
            sources: practice.loss.sources.clone(),
            guessed: false,
        },
        None => MeltLoss {
            share: Band::new(0.0, LOSS_UNKNOWN / 2.0, LOSS_UNKNOWN),
            sources: vec!["common-practice".to_owned()],
            guessed: true,
        },
    }
}
