//! The words for what is found while a job is worked out.

use measure::length::Length;
use measure::matter::Mass;
use measure::text::rounded;
use metal::alloy::Caution;
use mould::flask::FlaskError;

use super::{Level, Remark};
use crate::job_file::Serves;

/// A fact of the plan that the founder has to know.
#[derive(Clone, Debug, PartialEq)]
pub enum Fact {
    /// The part has voids that no core can reach.
    SealedVoid {
        /// How many.
        count: usize,
    },
    /// No flask takes the patterns; the plan goes on with one to be made.
    NoFlask(FlaskError),
    /// The flask asked for has less sand round the patterns than is wanted.
    TightFlask(FlaskError),
    /// The heap is too small.
    HeapTooSmall {
        /// Sand wanted.
        wanted: Mass,
        /// Sand there is.
        there: Mass,
    },
    /// No heap in the shop file.
    HeapUnknown,
    /// The heap is too wet to pour on.
    TooWet {
        /// Its moisture.
        moisture: f64,
        /// The limit.
        limit: f64,
    },
    /// The moisture of the heap is not known.
    MoistureUnknown,
    /// The thinnest wall is thinner than the metal commonly runs.
    ThinWall {
        /// The wall.
        wall: Length,
        /// What the metal commonly runs into.
        least: Length,
        /// Where.
        place: [f64; 3],
    },
    /// Walls too thin to be measured with the cells used.
    WallsUnmeasured {
        /// Share of the surface.
        share: f64,
    },
    /// The sources of the contraction differ.
    ContractionDisputed {
        /// Lowest and highest, as shares.
        from_to: [f64; 2],
        /// How many sources.
        sources: usize,
    },
    /// No feeder, the casting being thin.
    NoFeederThin,
    /// No feeder, the iron swelling in a firm mould.
    NoFeederIron {
        /// The test that showed it.
        shown: String,
    },
    /// A feeder is planned for iron although it may feed itself.
    IronMightFeedItself,
    /// No plain feeder can hold enough.
    FeederImpossible,
    /// The feeder is higher than the cope.
    FeederHigherThanCope {
        /// Its height.
        height: Length,
        /// Cope.
        cope: Length,
    },
    /// More than one heavy section.
    MoreHeavySections {
        /// How many besides the one fed.
        count: usize,
        /// The next heaviest.
        place: [f64; 3],
    },
    /// No crucible holds the charge.
    NoCrucible {
        /// The charge, high end.
        charge: Mass,
    },
    /// No crucible in the shop file.
    CruciblesUnknown,
    /// The melt loss is not known for furnace and metal.
    LossUnknown,
    /// The shop's irons together are too light.
    IronsTooLight {
        /// What has to lie on the cope.
        wanted: Mass,
        /// All there is.
        there: Mass,
    },
    /// The thinnest wall freezes while the mould still fills.
    FillMustHurry,
    /// Something about the metal.
    Metal(Caution),
    /// What the casting has to serve for.
    Serves(Serves),
    /// Leaded metal for food.
    LeadInFood,
    /// What this plan does not look at.
    NotLookedAt,
}

impl Fact {
    /// The fact in words.
    pub fn remark(&self) -> Remark {
        self.of_pattern()
            .or_else(|| self.of_mould())
            .or_else(|| self.of_feeding())
            .unwrap_or_else(|| self.of_metal())
    }

    fn of_pattern(&self) -> Option<Remark> {
        Some(match self {
            Fact::SealedVoid { count } => Remark::new(
                "enclosed_void",
                Level::Stop,
                "pattern",
                format!("{count} void(s) sealed inside the part cannot be moulded"),
                "no core can be carried in them or shaken out: open them to the outside or fill them",
            ),
            Fact::ThinWall { wall, least, place } => Remark::new(
                "thin_wall",
                Level::Caution,
                "pattern",
                format!(
                    "walls of about {} mm; this metal commonly wants {} mm in sand",
                    rounded(wall.as_mm(), 2),
                    rounded(least.as_mm(), 2)
                ),
                "thicken the wall, gate close to it, or pour at the hot end",
            )
            .at(Some(*place)),
            Fact::WallsUnmeasured { share } => Remark::new(
                "walls_unmeasured",
                Level::Caution,
                "pattern",
                format!(
                    "walls on {} % of the surface are too thin for the cells used here",
                    rounded(share * 100.0, 2)
                ),
                "measure them by hand; they are left out of the sections",
            ),
            Fact::ContractionDisputed {
                from_to: [low, high],
                sources,
            } => Remark::new(
                "contraction_disputed",
                Level::Note,
                "pattern",
                format!(
                    "{sources} sources put the contraction at {} to {} %",
                    rounded(low * 100.0, 3),
                    rounded(high * 100.0, 3)
                ),
                "measure your next casting and write metal.contraction in the job",
            ),
            Fact::NotLookedAt => Remark::new(
                "not_looked_at",
                Level::Note,
                "pattern",
                "draft, undercuts, parting and core prints are not looked at here".to_owned(),
                "try the pattern in dry sand before it is rammed up",
            ),
            _ => return None,
        })
    }

    fn of_mould(&self) -> Option<Remark> {
        let kg = |mass: &Mass| rounded(mass.as_kg(), 3);
        Some(match self {
            Fact::NoFlask(error) => Remark::new(
                "flask_none",
                Level::Caution,
                "flask",
                error.to_string(),
                "the plan goes on with a flask of that size, to be made",
            ),
            Fact::TightFlask(error) => Remark::new(
                "flask_tight",
                Level::Caution,
                "flask",
                error.to_string(),
                "ram the narrow places with care, or take a larger flask",
            ),
            Fact::HeapTooSmall { wanted, there } => Remark::new(
                "sand_short",
                Level::Caution,
                "sand",
                format!(
                    "the mould wants {} kg of sand, the heap has {} kg",
                    kg(wanted),
                    kg(there)
                ),
                "mix more, or back the facing with dry old sand",
            ),
            Fact::HeapUnknown => Remark::new(
                "heap_unknown",
                Level::Note,
                "sand",
                "the heap is not in shop.toml, so sand is not compared with it".to_owned(),
                "weigh it once by the bucket and write [heap]",
            ),
            Fact::TooWet { moisture, limit } => Remark::new(
                "too_wet",
                Level::Stop,
                "sand",
                format!(
                    "the heap is at {} % of wet mass, above the {} % at which a mould turns to steam",
                    rounded(moisture * 100.0, 2),
                    rounded(limit * 100.0, 2)
                ),
                "dry it back and weigh a handful again before ramming",
            ),
            Fact::MoistureUnknown => Remark::new(
                "moisture_unknown",
                Level::Caution,
                "sand",
                "the moisture of the heap is not known".to_owned(),
                "weigh a handful wet and dry; wet sand under metal throws it back at you",
            ),
            Fact::IronsTooLight { wanted, there } => Remark::new(
                "irons_short",
                Level::Stop,
                "weights",
                format!(
                    "{} kg have to lie on the cope; your irons come to {} kg",
                    rounded(wanted.as_kg(), 3),
                    kg(there)
                ),
                "clamp cope and drag together for the same force, or borrow weights",
            ),
            _ => return None,
        })
    }

    fn of_feeding(&self) -> Option<Remark> {
        let note = |code, words: &str, advice| {
            Remark::new(code, Level::Note, "feeder", words.to_owned(), advice)
        };
        Some(match self {
            Fact::NoFeederThin => note(
                "feeder_none",
                "no feeder: every section is thin enough to be fed by its gate",
                "if a boss sinks after all, feed that boss next time",
            ),
            Fact::NoFeederIron { shown } => note(
                "feeder_none",
                &format!("no feeder: iron of this carbon swells in a mould shown firm by: {shown}"),
                "holds only while every mould is rammed as firm",
            ),
            Fact::IronMightFeedItself => note(
                "feeder_iron",
                "a feeder is planned because no test shows the mould firm, or the carbon is unknown",
                "write mould.firm and metal.carbon_equivalent once you know them",
            ),
            Fact::FeederImpossible => Remark::new(
                "feeder_impossible",
                Level::Caution,
                "feeder",
                "shrinkage is more than a plain feeder of any size can give".to_owned(),
                "use an insulating sleeve, several feeders, or chills; ask an experienced founder",
            ),
            Fact::FeederHigherThanCope { height, cope } => Remark::new(
                "feeder_high",
                Level::Caution,
                "feeder",
                format!(
                    "the feeder is {} mm high and the cope {} mm",
                    rounded(height.as_mm(), 2),
                    rounded(cope.as_mm(), 3)
                ),
                "set a ring of sand on the cope, or take a deeper cope",
            ),
            Fact::MoreHeavySections { count, place } => Remark::new(
                "more_heavy_sections",
                Level::Caution,
                "feeder",
                format!("{count} more section(s) nearly as heavy as the one fed, this the next"),
                "each freezes on its own: feed or chill it, or join them by a heavier wall",
            )
            .at(Some(*place)),
            Fact::FillMustHurry => Remark::new(
                "fill_must_hurry",
                Level::Caution,
                "pour",
                "the thinnest wall freezes sooner than the usual filling time".to_owned(),
                "the choke is sized for the shorter time: pour without a pause, at the hot end",
            ),
            _ => return None,
        })
    }

    fn of_metal(&self) -> Remark {
        let (code, level, words, advice) = match self {
            Fact::NoCrucible { charge } => {
                let charge = rounded(charge.as_kg(), 3);
                let words = format!("none of your crucibles holds {charge} kg at working fill");
                let advice = "a mould has to be poured in one go: cast fewer, or borrow a crucible";
                return Remark::new("crucible_none", Level::Stop, "metal", words, advice);
            }
            Fact::CruciblesUnknown => (
                "crucible_unknown",
                Level::Note,
                "no crucible in shop.toml, so the charge is not compared with one",
                "write [[crucible]] with its mark or its volume to the brim",
            ),
            Fact::LossUnknown => (
                "loss_unknown",
                Level::Caution,
                "no figure for the melt loss of this metal in this furnace; 10 % is taken",
                "weigh what goes in and what comes out once, and write melt.loss",
            ),
            Fact::LeadInFood => (
                "lead_food",
                Level::Stop,
                "this metal holds lead, or may: nothing that touches food is cast of it",
                "use clean ingot of known make-up without lead, and ask your food authority",
            ),
            Fact::Serves(serves) => return serves_remark(*serves),
            Fact::Metal(caution) => return caution_remark(*caution),
            _ => ("unknown", Level::Note, "", ""),
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
        Serves::Ornament | Serves::Machine => "carries load",
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
