//! The words for what is found in the metal, and in what the casting has to serve for.

use measure::matter::Mass;
use measure::text::rounded;
use metal::alloy::Caution;

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
                "use clean ingot of known make-up without lead, and ask your food authority",
            ),
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
    let (code, words, advice) = match caution {
        Caution::ZincFume => (
            "zinc_fume",
            "zinc boils off as white fume and gives metal fume fever",
            "outdoors or under a hood, upwind, with a fume respirator; do not overheat",
        ),
        Caution::Lead => (
            "lead",
            "holds lead: fume, dust and skimmings poison",
            "respirator, no eating or smoking near, wash before going home; never for food",
        ),
        Caution::MagnesiumScrap => (
            "magnesium_scrap",
            "magnesium looks like aluminium; it burns, and water makes it worse",
            "test each piece of scrap; keep dry sand or a class D extinguisher at hand",
        ),
        Caution::UnknownScrap => (
            "unknown_scrap",
            "scrap of unknown make-up may hold lead, cadmium or paint",
            "take only scrap that was cast before and whose source you know; never for food",
        ),
        Caution::TakesUpGas => (
            "takes_up_gas",
            "takes up hydrogen when held long, hot or damp: pinholes",
            "melt fast, dry everything, pour as soon as it is ready",
        ),
        Caution::OxideFolds => (
            "oxide_folds",
            "a tough skin folds in wherever the stream breaks",
            "keep the basin full, fill from below, no splashing",
        ),
        Caution::SpoiledByLead => (
            "spoiled_by_lead",
            "traces of lead, tin or cadmium rot these castings over the years",
            "known ingot only, its own crucible and tools",
        ),
        Caution::SpoiledByAluminium => (
            "spoiled_by_aluminium",
            "a little aluminium or silicon from other scrap spoils it",
            "keep its returns and tools apart",
        ),
        Caution::SpoiledByBrassReturns => (
            "spoiled_by_brass_returns",
            "leaded returns make it crack",
            "no brass or gunmetal returns in this charge",
        ),
        Caution::ChillsWhite => (
            "chills_white",
            "thin sections may come out white and hard",
            "pour a chill wedge first; inoculate and pour within minutes",
        ),
        Caution::TearsHot => (
            "tears_hot",
            "tears in the mould where it is held back",
            "round the corners, ram cores soft, open early enough",
        ),
        Caution::FineSponge => (
            "fine_sponge",
            "fine sponge in heavy sections whatever the feeder",
            "put faces to be machined down, and chill them",
        ),
    };
    let hurts_people = matches!(
        caution,
        Caution::ZincFume | Caution::Lead | Caution::MagnesiumScrap | Caution::UnknownScrap
    );
    let level = if hurts_people {
        Level::Caution
    } else {
        Level::Note
    };
    Remark::new(code, level, "metal", words.to_owned(), advice)
}
