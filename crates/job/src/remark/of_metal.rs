//! What is found in the metal, and in what the casting has to serve for.

use measure::band::Band;
use measure::heat::Temperature;
use measure::length::Length;
use measure::matter::Mass;
use measure::text::rounded;
use metal::alloy::Caution;
use metal::scrap::Origin;

use super::Remark;
use crate::job_file::Serves;
use crate::words::said::Said;

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
    /// Thin iron is poured hot.
    PourHot {
        /// The wall.
        wall: Length,
        /// How hot.
        pouring: Band<Temperature>,
    },
    /// There is no probe for the heat.
    NoProbe,
    /// What to mind with scrap that was something.
    Scrap(&'static Origin),
    /// What degassing would take.
    Degas {
        /// Of tablets.
        grams: Band<Mass>,
    },
}

impl From<MetalFact> for Remark {
    fn from(fact: MetalFact) -> Remark {
        match fact {
            MetalFact::NoCrucible { charge } => Remark::stop("crucible_none", "metal")
                .with("charge", format!("{} kg", rounded(charge.as_kg(), 3))),
            MetalFact::CruciblesUnknown => Remark::note("crucible_unknown", "metal"),
            MetalFact::LossUnknown => Remark::caution("loss_unknown", "metal"),
            MetalFact::LeadInFood => Remark::stop("lead_food", "metal"),
            MetalFact::ZincBack => Remark::caution("zinc_back", "metal"),
            MetalFact::WantedEquivalent { wall, wanted } => {
                let per_cent = |share: f64| rounded(share * 100.0, 2);
                Remark::note("wanted_equivalent", "metal")
                    .with("wall", format!("{} mm", rounded(wall.as_mm(), 2)))
                    .with("low", per_cent(wanted.low()))
                    .with("high", format!("{} %", per_cent(wanted.high())))
            }
            MetalFact::PourHot { wall, pouring } => {
                let degrees = |heat: Temperature| rounded(heat.as_celsius(), 4);
                Remark::caution("pour_hot", "pour")
                    .with("wall", format!("{} mm", rounded(wall.as_mm(), 2)))
                    .with("low", degrees(pouring.low()))
                    .with("high", format!("{} °C", degrees(pouring.high())))
            }
            MetalFact::NoProbe => Remark::caution("no_probe", "pour"),
            MetalFact::Scrap(origin) => scrap(origin),
            MetalFact::Degas { grams } => Remark::note("degas", "metal")
                .with("low", rounded(grams.low().as_g(), 2))
                .with("high", format!("{} g", rounded(grams.high().as_g(), 2))),
            MetalFact::Serves(serves) => Remark::caution(proving(serves), "part"),
            MetalFact::Metal(caution) => minding(caution),
        }
    }
}

/// The words of the table of scrap, whose first name makes the id of their message.
fn scrap(origin: &Origin) -> Remark {
    let name = origin.names.first().map_or("", String::as_str);
    let id = format!("scrap-{}", name.replace(' ', "-"));
    Remark::caution("scrap_was", "metal")
        .with("was", Said::new(format!("{id}.name")))
        .with("mind", Said::new(id))
}

/// What the casting has to serve for, as it has to be proved.
fn proving(serves: Serves) -> &'static str {
    match serves {
        Serves::Pressure => "prove_it-pressure",
        Serves::Lifting => "prove_it-lifting",
        Serves::Brake => "prove_it-brake",
        Serves::Food => "prove_it-food",
        Serves::Ornament | Serves::Machine => "prove_it-load",
    }
}

/// What hurts people is a caution, what spoils castings a note.
fn minding(caution: Caution) -> Remark {
    let hurts = |id| Remark::caution(id, "metal");
    let spoils = |id| Remark::note(id, "metal");
    match caution {
        Caution::ZincFume => hurts("zinc_fume"),
        Caution::Lead => hurts("lead"),
        Caution::MagnesiumScrap => hurts("magnesium_scrap"),
        Caution::UnknownScrap => hurts("unknown_scrap"),
        Caution::TakesUpGas => spoils("takes_up_gas"),
        Caution::OxideFolds => spoils("oxide_folds"),
        Caution::SpoiledByLead => spoils("spoiled_by_lead"),
        Caution::SpoiledByAluminium => spoils("spoiled_by_aluminium"),
        Caution::SpoiledByBrassReturns => spoils("spoiled_by_brass_returns"),
        Caution::ChillsWhite => spoils("chills_white"),
        Caution::TearsHot => spoils("tears_hot"),
        Caution::FineSponge => spoils("fine_sponge"),
    }
}
