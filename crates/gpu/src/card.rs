//! A graphics card as a place where the steps of a run are taken, and when it is chosen.

use std::sync::Arc;

use solver::elsewhere::{Course, State};
use solver::laid::Laid;

pub use solver::elsewhere::{Elsewhere, Unable};

use crate::adapters::{Adapter, Kind, adapters};
use crate::course::OnCard;
use crate::device::Device;
use crate::programs::Programs;
use crate::speed::{card_copy, processor_copy};

/// Where heat is wished to be followed.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub enum Wished {
    /// On whichever is faster.
    #[default]
    Faster,
    /// On the processor.
    Processor,
    /// On a card, be it only software in the place of one.
    Card,
}

/// A card that is open and knows its programs.
#[derive(Debug)]
pub struct Card {
    /// The card itself.
    pub device: Arc<Device>,
    name: String,
    programs: Arc<Programs>,
    least_cells: usize,
}

/// Fewest cells of a box that is worth a card: below, waiting for it takes longer than the work.
pub const LEAST_CELLS: usize = 60_000;

/// How many times faster its memory has to be than the processor's: following heat is more than
/// copying, and a card that shares the processor's memory gains nothing.
const FASTER: f64 = 1.5;

impl Card {
    /// Opens a card for boxes of any size.
    ///
    /// # Errors
    ///
    /// A driver that refuses, or a card that takes fewer lists than the programs have in sight.
    pub fn open(adapter: &Adapter) -> Result<Card, Unable> {
        let (had, most) = (adapter.bounds.lists, crate::programs::MOST_LISTS);
        if had < most {
            return Err(Unable::Refused {
                words: format!("{had} lists at once, and following heat takes {most}"),
            });
        }
        let device = Device::open(adapter)?;
        let programs = Programs::of(&device);
        device.is_well()?;
        Ok(Card {
            name: format!("{} ({})", adapter.name, adapter.interface),
            device: Arc::new(device),
            programs: Arc::new(programs),
            least_cells: 0,
        })
    }
}

/// The card on which heat in a box of so many cells is followed as wished; none where the processor
/// is wished for or faster. Software in the place of a card is taken only where a card is asked for
/// by name.
///
/// # Errors
///
/// A card was asked for by name and there is none, or it cannot be opened.
pub fn chosen(wished: Wished, cells: usize) -> Result<Option<Card>, Unable> {
    match wished {
        Wished::Processor => Ok(None),
        Wished::Card => {
            let best = adapters().into_iter().next().ok_or(Unable::Absent)?;
            Card::open(&best).map(Some)
        }
        // Looking for cards takes time too.
        Wished::Faster if cells < LEAST_CELLS => Ok(None),
        Wished::Faster => {
            // What cannot be opened unasked is passed over: the processor is always there.
            let faster = adapters().into_iter().find(is_faster);
            let card = faster.and_then(|adapter| Card::open(&adapter).ok());
            Ok(card.map(|card| Card {
                least_cells: LEAST_CELLS,
                ..card
            }))
        }
    }
}

/// A card as a place for steps; the processor is meant where there is none.
pub fn elsewhere(card: Option<&Card>) -> Option<&dyn Elsewhere> {
    card.map(|card| card as &dyn Elsewhere)
}

/// Whether heat is followed faster on a card than on the processor, by the speed of both memories.
pub fn is_faster(adapter: &Adapter) -> bool {
    match adapter.kind {
        Kind::Software => false,
        // Nothing that shares a machine's one memory with it comes near.
        Kind::Discrete => true,
        Kind::Integrated | Kind::Virtual | Kind::Unknown => {
            card_copy(adapter).is_ok_and(|copied| copied > FASTER * processor_copy())
        }
    }
}

impl Elsewhere for Card {
    fn name(&self) -> &str {
        &self.name
    }

    fn is_worth(&self, cells: usize) -> bool {
        cells >= self.least_cells
    }

    fn begin<'case>(
        &self,
        laid: &'case Laid<'case>,
        state: &State,
    ) -> Result<Box<dyn Course + 'case>, Unable> {
        let course = OnCard::begin(&self.device, &self.programs, laid, state)?;
        Ok(Box::new(course))
    }
}
