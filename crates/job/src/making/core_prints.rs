//! What is made on the pattern for the cores of its casting: hollows filled, prints put on.
//!
//! The cores are found on the part made larger by the contraction, so that places and widths have
//! it; how long the prints are, and their play in the sand, is measured after it, as the sand does
//! not contract.

use measure::length::Length;
use pattern::boolean::BooleanError;
use pattern::cores::CoreError;
use pattern::made::core_prints::{CoreOnPattern, Filled, filled};
use pattern::mesh::Mesh;

use super::told::mm;
use crate::job::Job;
use crate::printed_cores::{CoreWithPrints, PLAY_MM, printed_cores};
use crate::shop::Shop;
use crate::words::said::Said;

/// What is made on a pattern for cores.
#[derive(Clone, Debug, PartialEq)]
pub enum CorePrints {
    /// Hollow filled and prints put on for each of these cores; none where the part needs none.
    Made(Vec<PrintsOfCore>),
    /// The job gives prints by hand, and so many cores that the part needs got none.
    ByHand(usize),
    /// Why there are no cores.
    Failed(CoreError),
}

/// The prints that a core has on the pattern.
#[derive(Clone, Debug, PartialEq)]
pub struct PrintsOfCore {
    /// What the core is called.
    pub name: String,
    /// Length of each print of the core.
    pub lengths: Vec<Length>,
    /// How much wider and longer those of the pattern are, on each side.
    pub play: Length,
}

/// The cores of a part as it lies in the mould, made larger by the contraction.
pub(super) struct CoresFound {
    found: Result<Vec<CoreWithPrints>, CoreError>,
    by_hand: bool,
}

impl CoresFound {
    pub(super) fn of(job: &Job, shop: &Shop, turned: &Mesh) -> CoresFound {
        CoresFound {
            found: printed_cores(job, shop, turned).map(|found| found.cores),
            by_hand: !job.making.prints.is_empty(),
        }
    }

    /// Whether the pattern gets anything for them.
    pub(super) fn is_on_pattern(&self) -> bool {
        !self.on_pattern().is_empty()
    }

    /// The pattern with their hollows filled and their prints on.
    pub(super) fn filled(&self, pattern: &Mesh) -> Result<Filled, BooleanError> {
        let cores = self.on_pattern().iter().map(|core| CoreOnPattern {
            body: &core.body,
            prints: &core.printed.prints,
        });
        filled(pattern, &cores.collect::<Vec<_>>())
    }

    pub(super) fn told(self) -> CorePrints {
        match self.found {
            Err(error) => CorePrints::Failed(error),
            Ok(cores) if self.by_hand && !cores.is_empty() => CorePrints::ByHand(cores.len()),
            Ok(cores) => CorePrints::Made(cores.into_iter().map(of_core).collect()),
        }
    }

    fn on_pattern(&self) -> &[CoreWithPrints] {
        match &self.found {
            Ok(cores) if !self.by_hand => cores,
            _ => &[],
        }
    }
}

fn of_core(core: CoreWithPrints) -> PrintsOfCore {
    PrintsOfCore {
        name: core.name,
        lengths: core.print_lengths,
        play: Length::from_mm(PLAY_MM),
    }
}

/// What there is to know of the prints of the cores, a sentence each.
pub(super) fn lines(cores: &CorePrints) -> Vec<Said> {
    match cores {
        CorePrints::Made(cores) => cores.iter().map(made).collect(),
        CorePrints::ByHand(count) => {
            vec![Said::new("making-cores-by-hand").with("count", *count)]
        }
        CorePrints::Failed(error) => {
            vec![Said::new("making-cores-none").with("why", error.to_string())]
        }
    }
}

fn made(core: &PrintsOfCore) -> Said {
    let lengths: Vec<String> = core.lengths.iter().map(|l| mm(l.as_mm())).collect();
    let said = match lengths.len() {
        1 => Said::new("making-core-print"),
        count => Said::new("making-core-prints").with("count", count),
    };
    said.with("name", core.name.as_str())
        .with("lengths", lengths.join(", "))
        .with("play", mm(core.play.as_mm()))
}
