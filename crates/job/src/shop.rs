//! The shop: what the founder owns, written once in `shop.toml` and used by every job below it.

use measure::flow::Duration;
use measure::length::{Length, Volume};
use measure::matter::Mass;
use measure::share::Share;
use measure::text::{System, Typed};
use metal::crucible::Crucible;
use metal::fuel::Fuel;
use metal::furnace::Furnace;
use mould::flask::Flask;
use mould::irons::Iron;
use sand::moisture::Bond;
use serde::Deserialize;

use crate::scoop::Scoop;
use crate::slab_trial::{SlabTrial, SlabTrialFile};
use crate::words::English;

/// What the founder owns and wants.
#[derive(Clone, Debug, PartialEq)]
pub struct Shop {
    /// The system of units that stands first.
    pub units: System,
    /// The English of labels and remarks.
    pub words: English,
    /// Flasks.
    pub flasks: Vec<Flask>,
    /// Crucibles.
    pub crucibles: Vec<Crucible>,
    /// Irons and bricks for the cope.
    pub irons: Vec<Iron>,
    /// Scoops, weighed once.
    pub scoops: Vec<Scoop>,
    /// The furnace.
    pub furnace: Furnace,
    /// What it burns, where that is written.
    pub fuel: Option<Fuel>,
    /// Time from lift-out to the mould, where it has been walked.
    pub carry: Option<Duration>,
    /// The heap of sand, where it has been weighed.
    pub heap: Option<Heap>,
}

/// The heap of moulding sand.
#[derive(Clone, Debug, PartialEq)]
pub struct Heap {
    /// How much there is, as it lies.
    pub mass: Mass,
    /// What binds it, or nothing where it is oil and holds no water.
    pub bond: Option<Bond>,
    /// Its last moisture, on the wet basis.
    pub moisture: Option<Share>,
    /// A slab that was timed in it.
    pub trial: Option<SlabTrial>,
}

/// A shop as typed in `shop.toml`.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ShopFile {
    #[serde(default)]
    units: UnitsFile,
    #[serde(default)]
    words: English,
    #[serde(default)]
    flask: Vec<FlaskFile>,
    #[serde(default)]
    crucible: Vec<CrucibleFile>,
    #[serde(default)]
    iron: Vec<IronFile>,
    #[serde(default)]
    scoop: Vec<ScoopFile>,
    #[serde(default)]
    furnace: FurnaceFile,
    heap: Option<HeapFile>,
}

#[derive(Clone, Copy, Debug, Default, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum UnitsFile {
    #[default]
    Metric,
    Inch,
}

#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct FlaskFile {
    name: String,
    length: Typed<Length>,
    width: Typed<Length>,
    cope: Typed<Length>,
    drag: Typed<Length>,
    cope_frame: Option<Typed<Mass>>,
}

#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct CrucibleFile {
    name: String,
    mark: Option<f64>,
    brim: Option<Typed<Volume>>,
}

#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct IronFile {
    name: String,
    mass: Typed<Mass>,
    #[serde(default = "one")]
    count: usize,
}

#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct ScoopFile {
    name: String,
    of: String,
    holds: Typed<Mass>,
}

#[derive(Clone, Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct FurnaceFile {
    kind: Option<Furnace>,
    fuel: Option<Fuel>,
    carry: Option<Typed<Duration>>,
}

#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct HeapFile {
    mass: Typed<Mass>,
    bond: BondFile,
    temper: Option<Share>,
    moisture: Option<Share>,
    trial: Option<SlabTrialFile>,
}

#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum BondFile {
    Bentonite,
    Natural,
    Oil,
}

fn one() -> usize {
    1
}

/// Most pieces of one iron: a pile of bricks, not a mistyped number.
const MOST_OF_ONE: usize = 200;

impl ShopFile {
    /// What is meant, or what is wrong, in a sentence.
    pub fn meant(self) -> Result<Shop, String> {
        let crucibles = self
            .crucible
            .into_iter()
            .map(CrucibleFile::meant)
            .collect::<Result<_, _>>()?;
        let flasks = self
            .flask
            .into_iter()
            .map(FlaskFile::meant)
            .collect::<Result<_, _>>()?;
        let mut irons = Vec::new();
        for iron in self.iron {
            if iron.count > MOST_OF_ONE {
                return Err(format!(
                    "iron \"{}\": count may be at most {MOST_OF_ONE}",
                    iron.name
                ));
            }
            let piece = Iron {
                name: iron.name,
                mass: iron.mass.value,
            };
            irons.extend(std::iter::repeat_n(piece, iron.count));
        }
        Ok(Shop {
            units: match self.units {
                UnitsFile::Metric => System::Metric,
                UnitsFile::Inch => System::Inch,
            },
            words: self.words,
            flasks,
            crucibles,
            irons,
            scoops: self.scoop.into_iter().map(ScoopFile::meant).collect(),
            furnace: self.furnace.kind.unwrap_or(Furnace::FuelCrucible),
            fuel: self.furnace.fuel,
            carry: self.furnace.carry.map(|carry| carry.value),
            heap: self.heap.map(HeapFile::meant).transpose()?,
        })
    }
}

impl FlaskFile {
    fn meant(self) -> Result<Flask, String> {
        let sides = [&self.length, &self.width, &self.cope, &self.drag];
        if let Some(side) = sides.iter().find(|side| side.value <= Length::ZERO) {
            return Err(format!(
                "flask \"{}\": {} is no size for a flask",
                self.name, side.typed
            ));
        }
        Ok(Flask {
            name: self.name,
            length: self.length.value,
            width: self.width.value,
            cope: self.cope.value,
            drag: self.drag.value,
            cope_frame: self.cope_frame.map_or(Mass::ZERO, |mass| mass.value),
        })
    }
}

impl ScoopFile {
    fn meant(self) -> Scoop {
        Scoop {
            name: self.name,
            of: self.of,
            holds: self.holds.value,
        }
    }
}

impl CrucibleFile {
    fn meant(self) -> Result<Crucible, String> {
        match (self.mark, self.brim) {
            (Some(mark), None) if (0.1..=1000.0).contains(&mark) => {
                Ok(Crucible::marked(&self.name, mark))
            }
            (None, Some(brim)) if brim.value > Volume::ZERO => Ok(Crucible {
                name: self.name,
                brim: brim.value,
            }),
            _ => Err(format!(
                "crucible \"{}\": give either its mark (pounds of aluminium, mark = 6) or its \
                 volume to the brim (brim = \"1.1 l\")",
                self.name
            )),
        }
    }
}

impl HeapFile {
    fn meant(self) -> Result<Heap, String> {
        let shares = [("moisture", &self.moisture), ("temper", &self.temper)];
        for (key, share) in shares {
            if let Some(share) = share.as_ref().filter(|share| !share.of.starts_with("wet")) {
                return Err(format!(
                    "heap: {key} \"{share}\" has to be of wet mass: loss on drying divided by \
                     the wet mass, like \"4.1 % of wet mass\""
                ));
            }
        }
        let temper = self.temper.map(|temper| temper.ratio);
        if temper.is_some() && !matches!(self.bond, BondFile::Natural) {
            return Err("heap: temper belongs to bond = \"natural\" only".to_owned());
        }
        let bond = match self.bond {
            BondFile::Bentonite => Some(Bond::Bentonite),
            BondFile::Natural => Some(Bond::Natural { temper }),
            BondFile::Oil => None,
        };
        Ok(Heap {
            mass: self.mass.value,
            bond,
            moisture: self.moisture,
            trial: self.trial.map(SlabTrialFile::meant).transpose()?,
        })
    }
}
