//! The words for what is found in the metal, and in what the casting has to serve for.

use measure::band::Band;
use measure::length::Length;
use measure::matter::Mass;
use measure::text::rounded;
use metal::alloy::Caution;
use metal::fume::hazard;

use super::{Level, Remark};
use crate::job_file::Serves;

/// What is found in the metal, and in what the casting has to serve for.
#[derive(Clone, Debug, PartialEq)]
pub enum MetalFact {
    /// No crucible holds the charge.
    NoCrucible {
        /// The charge, high end.
        charge: Mass,
    },
    /// No crucible in the shop file.
    CruciblesUnknown,
    /// The melt loss is not known for furnace and metal.
    LossUnknown,
    /// Something about the metal.
    Metal(Caution),
    /// What the casting has to serve for.
    Serves(Serves),
    /// Leaded metal for food.
    LeadInFood,
    /// The carbon equivalent that the thinnest wall wants.
    WantedEquivalent {
        /// The wall.
        wall: Length,
        /// The carbon equivalent, as a part of one.
        wanted: Band<f64>,
    },
    /// Zinc is put back for what goes up in smoke.
    ZincBack,
    /// What degassing would take.
    Degas {
        /// Of tablets.
        grams: Band<Mass>,
    },
}

impl From<MetalFact> for Remark {
    fn from(fact: MetalFact) -> Remark {
        let (code, level, words, advice) = match fact {
            MetalFact::NoCrucible { charge } => {
                let charge = rounded(charge.as_kg(), 3);
                let words = format!("none of your crucibles holds {charge} kg at working fill");
                let advice = "a mould has to be poured in one go: cast fewer, or borrow a crucible";
                return Remark::new("crucible_none", Level::Stop, "metal", words, advice);
            }
            MetalFact::CruciblesUnknown => (
                "crucible_unknown",
                Level::Note,
                "no crucible in shop.toml, so the charge is not compared with one",
                "write [[crucible]] with its mark or its volume to the brim",
            ),
            MetalFact::LossUnknown => (
                "loss_unknown",
                Level::Caution,
                "no figure for the melt loss of this metal in this furnace; 10 % is taken",
                "weigh what goes in and what comes out once, and write melt.loss",
            ),
            MetalFact::LeadInFood => (
                "lead_food",
                Level::Stop,
                "this metal holds lead, or may: nothing that touches food is cast of it",
                "clean ingot of known make-up only; sorting scrap lowers the risk and does not remove \
                 it; ask your food authority",
            ),
            MetalFact::ZincBack => (
                "zinc_back",
                Level::Caution,
                "zinc goes up in smoke and is put back last: it may flare",
                "warm, dry, pushed under with tongs, at the lowest heat that runs; outdoors, upwind, \
                 with a fume respirator",
            ),
            MetalFact::WantedEquivalent { wall, wanted } => return wanted_remark(wall, &wanted),
            MetalFact::Degas { grams } => return degas_remark(&grams),
            MetalFact::Serves(serves) => return serves_remark(serves),
            MetalFact::Metal(caution) => return caution_remark(caution),
        };
        Remark::new(code, level, "metal", words.to_owned(), advice)
    }
}

fn serves_remark(serves: Serves) -> Remark {
    let words = match serves {
        Serves::Pressure => "holds pressure",
        Serves::Lifting => "lifts or holds people",
        Serves::Brake => "is part of a brake",
        Serves::Food => "touches food",
        Serves::Ornament | Serves::Machine => "carries a load",
    };
    Remark::new(
        "prove_it",
        Level::Caution,
        "part",
        format!("the part {words}: no figure here says that it is safe"),
        "have it designed and proved by test under licensed practice and your local code",
    )
}

fn caution_remark(caution: Caution) -> Remark {
    let spoils = |code, words: &str, advice| {
        Remark::new(code, Level::Note, "metal", words.to_owned(), advice)
    };
    match caution {
        Caution::ZincFume => hurts("zinc-fume"),
        Caution::Lead => hurts("lead"),
        Caution::MagnesiumScrap => hurts("magnesium-scrap"),
        Caution::UnknownScrap => hurts("unknown-scrap"),
        Caution::TakesUpGas => spoils(
            "takes_up_gas",
            "takes up hydrogen when held long, hot or damp: pinholes",
            "melt fast, dry everything, pour as soon as it is ready",
        ),
        Caution::OxideFolds => spoils(
            "oxide_folds",
            "a tough skin folds in wherever the stream breaks",
            "keep the basin full, fill from below, no splashing",
        ),
        Caution::SpoiledByLead => spoils(
            "spoiled_by_lead",
            "traces of lead, tin or cadmium rot these castings over the years",
            "known ingot only, its own crucible and tools",
        ),
        Caution::SpoiledByAluminium => spoils(
            "spoiled_by_aluminium",
            "a little aluminium or silicon from other scrap spoils it",
            "keep its returns and tools apart",
        ),
        Caution::SpoiledByBrassReturns => spoils(
            "spoiled_by_brass_returns",
            "leaded returns make it crack",
            "no brass or gunmetal returns in this charge",
        ),
        Caution::ChillsWhite => spoils(
            "chills_white",
            "thin sections may come out white and hard",
            "pour a chill wedge first; inoculate and pour within minutes",
        ),
        Caution::TearsHot => spoils(
            "tears_hot",
            "tears in the mould where it is held back",
            "round the corners, ram cores soft, open early enough",
        ),
        Caution::FineSponge => spoils(
            "fine_sponge",
            "fine sponge in heavy sections whatever the feeder",
            "put faces to be machined down, and chill them",
        ),
    }
}

/// What hurts people: its words stand in the table of fume and poison.
fn hurts(mark: &str) -> Remark {
    let (words, advice) = hazard(mark).map_or((mark, "keep it out of the pot"), |hazard| {
        (hazard.words.as_str(), hazard.advice.as_str())
    });
    let code = mark.replace('-', "_");
    Remark::new(&code, Level::Caution, "metal", words.to_owned(), advice)
}

fn wanted_remark(wall: Length, wanted: &Band<f64>) -> Remark {
    let per_cent = |share: f64| rounded(share * 100.0, 2);
    let words = format!(
        "a wall of {} mm wants a carbon equivalent of {} to {} %, so that it can be filed",
        rounded(wall.as_mm(), 2),
        per_cent(wanted.low()),
        per_cent(wanted.high())
    );
    Remark::new(
        "wanted_equivalent",
        Level::Note,
        "metal",
        words,
        "state the mix of the scrap as a range; stove plate and radiators are rich in phosphorus",
    )
}

fn degas_remark(grams: &Band<Mass>) -> Remark {
    let words = format!(
        "degassing takes {} to {} g of tablets at 730 to 760 °C, if it is done at all",
        rounded(grams.low().as_g(), 2),
        rounded(grams.high().as_g(), 2)
    );
    Remark::new(
        "degas",
        Level::Note,
        "metal",
        words,
        "outdoors and upwind, plunged dry and warm, then 2 to 3 min of rest; two cups tell if it did",
    )
}
