//! Why the bench says no.

use measure::money::MoneyError;
use sand::drying::DryingError;
use sand::evaporation::EvaporationError;
use sand::heap::balance::BalanceError;
use sand::humidity::UptakeError;
use sand::mixing::MixingError;
use sand::psychrometrics::AirError;
use sand::sieve::SievingError;
use sand::sorption::SorptionError;
use thiserror::Error;
use trials::chart::ChartError;

use crate::given::GivenError;

/// Why an ask of the bench comes to nothing.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum BenchError {
    /// What was typed is not understood.
    #[error(transparent)]
    Given(#[from] GivenError),
    /// It is understood and cannot be.
    #[error("{0}")]
    Refused(Box<Refused>),
}

/// What cannot be, and what to do about it.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum Refused {
    /// A handful that gained by drying.
    #[error(
        "dry ({dry:.1} g) and wet ({wet:.1} g) cannot be: sand weighs more wet than dry, and both \
         more than nought; exchange them, or take the bowl off both"
    )]
    DryAboveWet {
        /// Wet, g.
        wet: f64,
        /// Dry, g.
        dry: f64,
    },
    /// A wish to dry to something wetter.
    #[error("what is wanted is wetter than what there is: use oddside sand water")]
    WetterWanted,
    /// A tray without a surface.
    #[error("the surface it dries from is nought: measure the tray or the layer")]
    NoArea,
    /// No sun is so strong.
    #[error("{0} W/m² is no sun: give 0 in shade up to some 1000 at noon")]
    Sun(
        /// What was given.
        f64,
    ),
    /// Nothing dried between two weighings.
    #[error(
        "nothing has dried between the two weighings ({from:.2} and {to:.2} kg): weigh again later, \
         or take the tub off both"
    )]
    NothingDried {
        /// First, kg.
        from: f64,
        /// Then, kg.
        to: f64,
    },
    /// Sieves and sample that do not tally.
    #[error(
        "sieves and pan hold {sum:.2} g of a sample of {sample:.2} g: {percent:.1} % off, more than \
         2 %. Weigh each sieve again and brush its mesh; nothing that was entered is lost"
    )]
    SievesOff {
        /// On sieves and in the pan, g.
        sum: f64,
        /// The sample, g.
        sample: f64,
        /// How far off, in per cent.
        percent: f64,
    },
    /// A sieve's number that is none.
    #[error("sieve \"{0}\" is no number of a sieve: write kept = {{ 40 = \"6 g\" }}")]
    SieveNumber(
        /// What was typed.
        String,
    ),
    /// A part heavier than the whole.
    #[error("{part} is more than {whole}: exchange them, or weigh again")]
    PartAboveWhole {
        /// The part.
        part: &'static str,
        /// The whole.
        whole: &'static str,
    },
    /// Nothing known of a sand.
    #[error("this file says nothing of the sand yet: fill one of its tables in")]
    NothingKnown,
    /// A figure of sizes without sieves.
    #[error("there is nothing to draw: fill in the table [sieving] of this file")]
    NothingSieved,
    /// A mix that is not there.
    #[error("\"{name}\" is no mix here; there is: {known}")]
    NoSuchMix {
        /// What was typed.
        name: String,
        /// What there is.
        known: String,
    },
    /// A flask that is not there.
    #[error("\"{name}\" is no flask of shop.toml; there is: {known}")]
    NoSuchFlask {
        /// What was typed.
        name: String,
        /// What there is.
        known: String,
    },
    /// A test that is not there.
    #[error("\"{name}\" is no test here; there is: {known}")]
    NoSuchTest {
        /// What was typed.
        name: String,
        /// What there is.
        known: String,
    },
    /// Per cents of a heap that are more than the whole.
    #[error(
        "what the heap holds adds up to {percent:.1} % of the dry heap: the parts beside sand have \
         to stay below 100 %"
    )]
    TooMuchOfTheHeap {
        /// Their sum, in per cent.
        percent: f64,
    },
    /// A freezing that says nothing of the sand.
    #[error(
        "the freezing of {job} says nothing of the heat in the sand until the mould is opened: \
         leave freeze= out and give metal= section= poured= sand_mass= faces="
    )]
    NotFollowedToTheEnd {
        /// The job.
        job: String,
    },
    /// Readings without a name in the file.
    #[error("no reading of \"{test}\" is in this file; there is: {known}")]
    NoReadings {
        /// What was asked for.
        test: String,
        /// What there is.
        known: String,
    },
    /// A size that is nought.
    #[error("{0} is nought or less: measure it again")]
    NoSize(
        /// What was typed.
        &'static str,
    ),
    /// A face of coarser grains than the heap.
    #[error("the face is coarser than the heap: exchange heap_grain and facing_grain")]
    FaceCoarser,
    /// A noise that is none.
    #[error("noise is nought or less: test one batch twice, and give how far the two are apart")]
    NoNoise,
    /// A test without repeats.
    #[error(
        "no batch was tested twice with \"{0}\" in this book: test one again under the same day, or \
         give noise="
    )]
    NothingRepeated(
        /// The test.
        String,
    ),
    /// A figure that a law refuses.
    #[error("{0}")]
    Law(
        /// In its own words.
        String,
    ),
    /// Air.
    #[error(transparent)]
    Air(AirError),
    /// Evaporation.
    #[error(transparent)]
    Evaporation(EvaporationError),
    /// Drying.
    #[error(transparent)]
    Drying(DryingError),
    /// Sieves.
    #[error(transparent)]
    Sieving(SievingError),
    /// Pucks.
    #[error(transparent)]
    Sorption(SorptionError),
    /// A humidity beyond the pucks.
    #[error(transparent)]
    Uptake(UptakeError),
    /// A batch.
    #[error(transparent)]
    Mixing(MixingError),
    /// The book of a heap.
    #[error(transparent)]
    Balance(BalanceError),
    /// A chart.
    #[error(transparent)]
    Chart(ChartError),
    /// Money.
    #[error(transparent)]
    Money(MoneyError),
}

impl From<Refused> for BenchError {
    fn from(refused: Refused) -> BenchError {
        BenchError::Refused(Box::new(refused))
    }
}

macro_rules! refusals {
    ($( $from:ident => $to:ident, )+) => { $(
        impl From<$from> for BenchError {
            fn from(fault: $from) -> BenchError {
                Refused::$to(fault).into()
            }
        }
    )+ };
}

refusals! {
    AirError => Air,
    EvaporationError => Evaporation,
    DryingError => Drying,
    SievingError => Sieving,
    SorptionError => Sorption,
    UptakeError => Uptake,
    MixingError => Mixing,
    BalanceError => Balance,
    ChartError => Chart,
    MoneyError => Money,
}
