//! An alloy: everything the shop has to know of it before it is melted.

use measure::band::Band;
use measure::flow::Speed;
use measure::heat::{Conductivity, HeatPerMass, SpecificHeat, Temperature, TemperatureDifference};
use measure::matter::Density;
use measure::share::Contraction;
use measure::text::Typed;
use serde::Deserialize;
use thiserror::Error;

use crate::figure::{Figure, FigureError, FigureText};
use crate::solid_share::{Path, SolidShare};

/// An alloy with its figures.
#[derive(Clone, Debug, PartialEq)]
pub struct Alloy {
    /// The trade name shown: "Al-Si7-Mg".
    pub name: String,
    /// The other names it is asked for by.
    pub also: Vec<String>,
    /// The metal it is based on.
    pub family: Family,
    /// What it is made of, in words.
    pub composition: String,
    /// Density at room temperature.
    pub density_solid: Figure<Density>,
    /// Density of the liquid near the liquidus.
    pub density_liquid: Figure<Density>,
    /// Where the last metal freezes.
    pub solidus: Figure<Temperature>,
    /// Where the first metal freezes.
    pub liquidus: Figure<Temperature>,
    /// Specific heat of the solid: the mean between room temperature and the solidus where a
    /// source gives it, else the room-temperature value; the remark says which.
    pub specific_heat_solid: Figure<SpecificHeat>,
    /// Specific heat of the liquid.
    pub specific_heat_liquid: Figure<SpecificHeat>,
    /// Heat given up on freezing.
    pub latent_heat: Figure<HeatPerMass>,
    /// Conductivity of the solid.
    pub conductivity_solid: Figure<Conductivity>,
    /// Conductivity of the liquid.
    pub conductivity_liquid: Figure<Conductivity>,
    /// How much of it is solid at each temperature.
    pub solid_share: SolidShare,
    /// Share of the liquid's volume lost on freezing; below nought where the metal grows.
    pub freezing_shrinkage: Figure<f64>,
    /// Share of the liquid's volume lost for each kelvin between pouring and the liquidus.
    pub liquid_contraction: Figure<f64>,
    /// Every allowance the sources give for the contraction of the solid, so that their
    /// disagreement is seen; the first is the one taken where nothing better is known.
    pub contraction: Vec<ContractionGiven>,
    /// Pouring temperatures for light sections.
    pub pouring_light: Figure<Temperature>,
    /// Pouring temperatures for heavy sections.
    pub pouring_heavy: Figure<Temperature>,
    /// How wide the freezing range is.
    pub freezing: Freezing,
    /// Highest speed at the gate before the metal breaks up and folds in its skin.
    pub entry_speed: Figure<Speed>,
    /// Running systems that sources give, the preferred one first.
    pub running: Vec<RunningRatio>,
    /// What may hurt the founder or spoil the metal.
    pub cautions: Vec<Caution>,
    /// The composition from which the metal feeds itself while it freezes, where it can.
    pub feeds_itself: Option<SelfFeeding>,
}

impl Alloy {
    /// The contraction taken where nothing better is known, between the least and the most that
    /// the sources give: shares of a length.
    pub fn contraction_band(&self) -> Option<Band<f64>> {
        let mut given = self
            .contraction
            .iter()
            .map(|given| Band::exact(given.value.ratio));
        let first = given.next()?;
        Some(given.fold(first, |band, other| band.or(&other)))
    }

    /// Liquidus less solidus, likely values.
    pub fn freezing_range(&self) -> TemperatureDifference {
        self.liquidus.band.likely() - self.solidus.band.likely()
    }
}

/// The metal an alloy is based on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Family {
    /// Aluminium and its alloys.
    Aluminium,
    /// Bronzes, gunmetals and brasses.
    Copper,
    /// Zinc alloys.
    Zinc,
    /// Grey iron.
    Iron,
    /// Pewter.
    Tin,
}

impl Family {
    /// The word for it, as files have it.
    pub fn word(self) -> &'static str {
        match self {
            Family::Aluminium => "aluminium",
            Family::Copper => "copper",
            Family::Zinc => "zinc",
            Family::Iron => "iron",
            Family::Tin => "tin",
        }
    }
}

/// How an alloy freezes, by the width of its freezing range.
///
/// Short below about 50 K, middle to about 110 K, long above: usage of the handbooks
/// (`cda-alloy-data`, `asm-handbook-15`, from memory).
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Freezing {
    /// Freezes as a skin that thickens: pipes openly and can be fed.
    Short,
    /// Between the two.
    Middle,
    /// Freezes as a mush: fine sponge that a feeder reaches only over short distances.
    Long,
}

/// What may hurt the founder or spoil the metal. The words for it are written elsewhere.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Caution {
    /// Zinc boils off, from brass when it is poured, from zinc alloys when they are overheated:
    /// white fume, metal fume fever.
    ZincFume,
    /// Holds lead: poisonous fume, dust and skimmings; nothing that touches food.
    Lead,
    /// Scrap of this look may be magnesium, which burns and must not be quenched.
    MagnesiumScrap,
    /// Scrap may be of any composition: cadmium, lead, paint.
    UnknownScrap,
    /// Takes up hydrogen when melted slowly, wet or too hot: pinholes.
    TakesUpGas,
    /// A tough oxide skin folds in wherever the stream breaks.
    OxideFolds,
    /// A few thousandths of lead, tin or cadmium rot the casting over the years.
    SpoiledByLead,
    /// A little aluminium or silicon from other scrap ruins its soundness.
    SpoiledByAluminium,
    /// A little lead from other scrap makes it crack: no returns of leaded metal.
    SpoiledByBrassReturns,
    /// Thin sections may come out white and hard.
    ChillsWhite,
    /// Tears in the mould where it is held back.
    TearsHot,
    /// Fine sponge in heavy sections, whatever the feeder.
    FineSponge,
}

/// One source's allowance for the contraction of the solid.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ContractionGiven {
    /// The allowance, as the source writes it.
    pub value: Contraction,
    /// Key of the bibliography.
    pub source: String,
    /// What the source says it holds for; empty where it says nothing.
    #[serde(default)]
    pub note: String,
}

/// Areas of a running system in proportion to one another, as one source gives them.
#[derive(Clone, Debug, PartialEq)]
pub struct RunningRatio {
    /// Area of the sprue at its foot, the unit of the other two.
    pub sprue: f64,
    /// Area of all runners leaving the sprue.
    pub runner: f64,
    /// Area of all gates.
    pub gate: f64,
    /// Key of the bibliography.
    pub source: String,
    /// What the source says it was used for; empty where it says nothing.
    pub note: String,
}

impl RunningRatio {
    /// Whether the gates choke the stream, so that the system runs full under pressure.
    pub fn pressurised(&self) -> bool {
        self.gate < self.sprue.min(self.runner)
    }
}

/// When a metal feeds itself by growing as it freezes.
#[derive(Clone, Debug, PartialEq)]
pub struct SelfFeeding {
    /// Carbon equivalent from which it does, as a share: 0.042 for 4.2 %.
    pub carbon_equivalent: Figure<f64>,
}

/// Why the file of an alloy could not be read.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum AlloyFault {
    /// Not a table of an alloy.
    #[error("{file}: {fault}")]
    Table {
        /// The file.
        file: String,
        /// What the reader of the table says, with line and column.
        fault: String,
    },
    /// One of the figures is wrong.
    #[error("{file}: {fault}")]
    Figure {
        /// The file.
        file: String,
        /// What is wrong with it.
        fault: Box<FigureError>,
    },
    /// A running system that is not three areas.
    #[error("{file}: running system \"{typed}\" is not three areas: write it like 1:2:2")]
    Running {
        /// The file.
        file: String,
        /// What was typed.
        typed: String,
    },
    /// A list that may not be empty.
    #[error("{file}: at least one [[{list}]] is needed")]
    EmptyList {
        /// The file.
        file: String,
        /// Which list.
        list: &'static str,
    },
}

/// Reads an alloy from the text of its file; the file's name is for messages.
pub fn read(file: &str, text: &str) -> Result<Alloy, AlloyFault> {
    let typed: AlloyText = toml::from_str(text).map_err(|fault| AlloyFault::Table {
        file: file.to_owned(),
        fault: fault.to_string(),
    })?;
    let running = running(file, &typed.running)?;
    let empty = |list| AlloyFault::EmptyList {
        file: file.to_owned(),
        list,
    };
    if running.is_empty() {
        return Err(empty("running"));
    }
    if typed.contraction.is_empty() {
        return Err(empty("contraction"));
    }
    typed.meant(running).map_err(|fault| AlloyFault::Figure {
        file: file.to_owned(),
        fault: Box::new(fault),
    })
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct AlloyText {
    name: String,
    also: Vec<String>,
    family: Family,
    composition: String,
    freezing: Freezing,
    cautions: Vec<Caution>,
    density_solid: FigureText,
    density_liquid: FigureText,
    solidus: FigureText,
    liquidus: FigureText,
    specific_heat_solid: FigureText,
    specific_heat_liquid: FigureText,
    latent_heat: FigureText,
    conductivity_solid: FigureText,
    conductivity_liquid: FigureText,
    solid_share: SolidShareText,
    freezing_shrinkage: FigureText,
    liquid_contraction: FigureText,
    pouring_light: FigureText,
    pouring_heavy: FigureText,
    entry_speed: FigureText,
    carbon_equivalent_to_feed_itself: Option<FigureText>,
    contraction: Vec<ContractionGiven>,
    running: Vec<RunningText>,
}

/// The way an alloy freezes as its file has it.
#[derive(Deserialize)]
#[serde(tag = "rule", rename_all = "kebab-case", deny_unknown_fields)]
enum SolidShareText {
    Arrest(Seen),
    Scheil {
        base: Typed<Temperature>,
        partition: f64,
        eutectic: Typed<Temperature>,
        after: f64,
        source: Vec<String>,
        #[serde(default)]
        remark: String,
    },
    Lever {
        base: Typed<Temperature>,
        source: Vec<String>,
        #[serde(default)]
        remark: String,
    },
    Eutectic {
        eutectic: Typed<Temperature>,
        share: f64,
        after: f64,
        source: Vec<String>,
        #[serde(default)]
        remark: String,
    },
    Straight(Seen),
}

#[derive(Deserialize)]
struct Seen {
    source: Vec<String>,
    #[serde(default)]
    remark: String,
}

impl SolidShareText {
    fn meant(self) -> SolidShare {
        let (path, sources, remark) = match self {
            SolidShareText::Arrest(seen) => (Path::Arrest, seen.source, seen.remark),
            SolidShareText::Straight(seen) => (Path::Straight, seen.source, seen.remark),
            SolidShareText::Scheil {
                base,
                partition,
                eutectic,
                after,
                source,
                remark,
            } => {
                let path = Path::Segregated {
                    base: base.value,
                    partition,
                    eutectic: eutectic.value,
                    after,
                };
                (path, source, remark)
            }
            SolidShareText::Lever {
                base,
                source,
                remark,
            } => (Path::Even { base: base.value }, source, remark),
            SolidShareText::Eutectic {
                eutectic,
                share,
                after,
                source,
                remark,
            } => {
                let path = Path::Eutectic {
                    eutectic: eutectic.value,
                    share,
                    after,
                };
                (path, source, remark)
            }
        };
        SolidShare {
            path,
            sources,
            remark,
        }
    }
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct RunningText {
    value: String,
    source: String,
    #[serde(default)]
    note: String,
}

impl AlloyText {
    fn meant(self, running: Vec<RunningRatio>) -> Result<Alloy, FigureError> {
        let feeds_itself = self.carbon_equivalent_to_feed_itself.map(|figure| {
            let carbon_equivalent = figure.share("carbon_equivalent_to_feed_itself")?;
            Ok(SelfFeeding { carbon_equivalent })
        });
        Ok(Alloy {
            name: self.name,
            also: self.also,
            family: self.family,
            composition: self.composition,
            density_solid: self.density_solid.quantity("density_solid")?,
            density_liquid: self.density_liquid.quantity("density_liquid")?,
            solidus: self.solidus.quantity("solidus")?,
            liquidus: self.liquidus.quantity("liquidus")?,
            specific_heat_solid: self.specific_heat_solid.quantity("specific_heat_solid")?,
            specific_heat_liquid: self.specific_heat_liquid.quantity("specific_heat_liquid")?,
            latent_heat: self.latent_heat.quantity("latent_heat")?,
            conductivity_solid: self.conductivity_solid.quantity("conductivity_solid")?,
            conductivity_liquid: self.conductivity_liquid.quantity("conductivity_liquid")?,
            solid_share: self.solid_share.meant(),
            freezing_shrinkage: self.freezing_shrinkage.share("freezing_shrinkage")?,
            liquid_contraction: self
                .liquid_contraction
                .share_per_kelvin("liquid_contraction")?,
            contraction: self.contraction,
            pouring_light: self.pouring_light.quantity_range("pouring_light")?,
            pouring_heavy: self.pouring_heavy.quantity_range("pouring_heavy")?,
            freezing: self.freezing,
            entry_speed: self.entry_speed.quantity("entry_speed")?,
            running,
            cautions: self.cautions,
            feeds_itself: feeds_itself.transpose()?,
        })
    }
}

fn running(file: &str, typed: &[RunningText]) -> Result<Vec<RunningRatio>, AlloyFault> {
    typed
        .iter()
        .map(|ratio| {
            let areas: Vec<f64> = ratio
                .value
                .split(':')
                .filter_map(|area| area.trim().parse().ok())
                .filter(|area| (0.01..=100.0).contains(area))
                .collect();
            match areas[..] {
                [sprue, runner, gate] => Ok(RunningRatio {
                    sprue,
                    runner,
                    gate,
                    source: ratio.source.clone(),
                    note: ratio.note.clone(),
                }),
                _ => Err(AlloyFault::Running {
                    file: file.to_owned(),
                    typed: ratio.value.clone(),
                }),
            }
        })
        .collect()
}
