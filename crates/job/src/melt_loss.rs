//! What the melt loses, by the founder's own weighing or by the law.

use measure::band::Band;
use metal::alloy::Family;
use metal::furnace::{Furnace, practice};
use metal::loss::{form, loss_of_stock, usual_standing};

use crate::job::Job;
use crate::job_file::StockForm;
use crate::shop::Shop;

/// Loss taken where no table knows the metal in any furnace: the high end of clean metal, so that
/// the mould does not run short.
const LOSS_UNKNOWN: f64 = 0.1;

/// A melt loss.
#[derive(Clone, Debug, PartialEq)]
pub struct MeltLoss {
    /// Share of the charge that is lost.
    pub share: Band<f64>,
    /// Keys of the sources; none for the founder's own weighing.
    pub sources: Vec<String>,
    /// Whether it follows from the law of the melt loss.
    pub by_law: bool,
    /// Whether no table knows the metal in this furnace, so that it spans what others lose.
    pub guessed: bool,
}

/// The melt loss of a job in a shop.
pub fn melt_loss(job: &Job, shop: &Shop) -> MeltLoss {
    if let Some(own) = &job.loss {
        return MeltLoss {
            share: Band::exact(own.ratio),
            sources: Vec::new(),
            by_law: false,
            guessed: false,
        };
    }
    by_the_law(shop.furnace, job.alloy.family, job.form)
}

/// The melt loss of a metal in a furnace; where no table knows the pair, from the best to the worst
/// of the metal in any furnace.
/// Law: [`metal::loss::MELT_LOSS`].
pub fn by_the_law(furnace: Furnace, family: Family, stock: StockForm) -> MeltLoss {
    let law =
        form(stock.word()).and_then(|form| loss_of_stock(furnace, family, form, &usual_standing()));
    match law {
        Some((share, sources)) => MeltLoss {
            share,
            sources,
            by_law: true,
            guessed: practice(furnace, family).is_none(),
        },
        None => MeltLoss {
            share: Band::new(0.0, LOSS_UNKNOWN / 2.0, LOSS_UNKNOWN),
            sources: vec!["common-practice".to_owned()],
            by_law: false,
            guessed: true,
        },
    }
}
