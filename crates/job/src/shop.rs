//! The shop: what the founder owns, written once in `shop.toml` and used by every job below it.

use measure::flow::Duration;
use measure::length::{Length, Volume};
use measure::matter::{Mass, Pressure};
use measure::share::{Contraction, Share};
use measure::text::{System, Typed};
use metal::crucible::Crucible;
use metal::fuel::Fuel;
use metal::furnace::Furnace;
use mould::flask::Flask;
use mould::irons::Iron;
use mould::ramming::Drop;
use sand::moisture::Bond;
use serde::Deserialize;

use crate::charge::heap_file::{MetalHeap, MetalHeapFile};
use crate::learned::{Learned, LearnedFile};
use crate::scoop::Scoop;
use crate::slab_trial::{SlabTrial, SlabTrialFile};
use crate::words::Language;

/// What the founder owns and wants.
#[derive(Clone, Debug, PartialEq)]
pub struct Shop {
    /// The system of units that stands first.
    pub units: System,
    /// The language of labels and remarks.
    pub words: Language,
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
    /// Whether there is a probe for the heat of the metal.
    pub probe: bool,
    /// The heap of sand, where it has been weighed.
    pub heap: Option<Heap>,
    /// The dent of a good day, where it has been measured.
    pub good_day: Option<GoodDay>,
    /// Heaps of metal to make a charge from.
    pub metal_heaps: Vec<MetalHeap>,
    /// What the scale for metal tells apart.
    pub scale_step: Mass,
    /// The shop's own figures of its metals.
    pub own: Vec<OwnFigures>,
    /// Factors on the plan's figures that the log has taught.
    pub learned: Learned,
}

/// Figures of a metal that this shop's log has taught, and that the founder has accepted.
#[derive(Clone, Debug, PartialEq)]
pub struct OwnFigures {
    /// The metal, as its table calls it.
    pub metal: String,
    /// How much it contracts.
    pub contraction: Option<Contraction>,
    /// What part of the charge is lost in melting it.
    pub loss: Option<Share>,
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
    /// Its green compression strength, by the shop's own test.
    pub strength: Option<Pressure>,
    /// Its permeability number, by the shop's own test.
    pub permeability: Option<f64>,
}

/// The dent that the founder's ball made on a good day.
#[derive(Clone, Debug, PartialEq)]
pub struct GoodDay {
    /// The ball and its fall.
    pub drop: Drop,
    /// Width of the dent.
    pub dent: Length,
    /// What was poured: one of the metals of the table of mould hardness.
    pub metal: String,
}

/// A shop as typed in `shop.toml`.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ShopFile {
    #[serde(default)]
    units: UnitsFile,
    #[serde(default)]
    words: Language,
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
    ramming: Option<RammingFile>,
    #[serde(default)]
    metal_heap: Vec<MetalHeapFile>,
    scale_step: Option<Typed<Mass>>,
    #[serde(default)]
    own: Vec<OwnFile>,
    #[serde(default)]
    learned: LearnedFile,
}

#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct OwnFile {
    metal: String,
    contraction: Option<Contraction>,
    loss: Option<Share>,
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
    #[serde(default = "one")]
    count: usize,
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
    probe: Option<bool>,
}

#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct HeapFile {
    mass: Typed<Mass>,
    bond: BondFile,
    temper: Option<Share>,
    moisture: Option<Share>,
    trial: Option<SlabTrialFile>,
    strength: Option<Typed<Pressure>>,
    permeability: Option<f64>,
}

#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct RammingFile {
    ball: Typed<Length>,
    mass: Typed<Mass>,
    drop: Typed<Length>,
    dent: Typed<Length>,
    metal: String,
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

/// Most heaps of metal: more of them nobody keeps apart in a small yard.
const MOST_METAL_HEAPS: usize = 60;

/// What a kitchen or parcel scale tells apart, where the shop does not say.
const SCALE_STEP: Mass = Mass::from_g(10.0);

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
            probe: self.furnace.probe.unwrap_or(true),
            heap: self.heap.map(HeapFile::meant).transpose()?,
            good_day: self.ramming.map(RammingFile::meant).transpose()?,
            metal_heaps: metal_heaps(self.metal_heap)?,
            scale_step: scale_step(self.scale_step.as_ref())?,
            own: own_figures(self.own)?,
            learned: self.learned.meant()?,
        })
    }
}

/// The heaps of metal, no two of one name.
fn metal_heaps(typed: Vec<MetalHeapFile>) -> Result<Vec<MetalHeap>, String> {
    if typed.len() > MOST_METAL_HEAPS {
        return Err(format!("metal_heap: at most {MOST_METAL_HEAPS} are taken"));
    }
    let mut heaps: Vec<MetalHeap> = Vec::new();
    for heap in typed {
        let heap = heap.meant()?;
        if heaps.iter().any(|other| other.heap.name == heap.heap.name) {
            return Err(format!("metal_heap \"{}\" is there twice", heap.heap.name));
        }
        heaps.push(heap);
    }
    Ok(heaps)
}

/// The shop's own figures, each metal once.
fn own_figures(typed: Vec<OwnFile>) -> Result<Vec<OwnFigures>, String> {
    let mut own: Vec<OwnFigures> = Vec::new();
    for file in typed {
        let alloy = metal::alloys::named(&file.metal)
            .map_err(|error| format!("own: metal \"{}\": {error}", file.metal))?;
        if own.iter().any(|other| other.metal == alloy.name) {
            return Err(format!("own: metal \"{}\" is there twice", file.metal));
        }
        if let Some(loss) = file
            .loss
            .as_ref()
            .filter(|loss| loss.of != "charge" || loss.ratio > 0.9)
        {
            return Err(format!(
                "own: loss \"{loss}\" has to be of charge and below 90 %, like 4 % of charge"
            ));
        }
        own.push(OwnFigures {
            metal: alloy.name.clone(),
            contraction: file.contraction,
            loss: file.loss,
        });
    }
    Ok(own)
}

fn scale_step(typed: Option<&Typed<Mass>>) -> Result<Mass, String> {
    match typed {
        Some(step) if step.value <= Mass::ZERO => Err(format!(
            "scale_step: \"{}\" weighs nothing; write what your scale tells apart, like 10 g",
            step.typed
        )),
        Some(step) => Ok(step.value),
        None => Ok(SCALE_STEP),
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
        if !(1..=MOST_OF_ONE).contains(&self.count) {
            return Err(format!(
                "flask \"{}\": count may be from 1 to {MOST_OF_ONE}",
                self.name
            ));
        }
        Ok(Flask {
            name: self.name,
            length: self.length.value,
            width: self.width.value,
            cope: self.cope.value,
            drag: self.drag.value,
            cope_frame: self.cope_frame.map_or(Mass::ZERO, |mass| mass.value),
            count: self.count,
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
        if let Some(number) = self.permeability.filter(|n| !(1.0..=2000.0).contains(n)) {
            return Err(format!(
                "heap: a permeability number of {number} is none for sand; time a bottle of \
                 water through a plug"
            ));
        }
        Ok(Heap {
            mass: self.mass.value,
            bond,
            moisture: self.moisture,
            trial: self.trial.map(SlabTrialFile::meant).transpose()?,
            strength: self.strength.map(|strength| strength.value),
            permeability: self.permeability,
        })
    }
}

impl RammingFile {
    fn meant(self) -> Result<GoodDay, String> {
        if mould::ramming::hardness_for(&self.metal).is_none() {
            return Err(format!(
                "ramming: metal \"{}\" of the good day is to be aluminium, zinc, brass, bronze or \
                 iron",
                self.metal
            ));
        }
        let drop = Drop {
            mass: self.mass.value,
            ball: self.ball.value,
            height: self.drop.value,
        };
        let dent = self.dent.value;
        let none = [drop.ball, drop.height, dent].contains(&Length::ZERO);
        if none || drop.mass <= Mass::ZERO || dent >= drop.ball {
            return Err(format!(
                "ramming: a dent of {} under a ball of {} cannot be: measure across the dent, \
                 with a ball that goes in less than half",
                self.dent.typed, self.ball.typed
            ));
        }
        Ok(GoodDay {
            drop,
            dent,
            metal: self.metal,
        })
    }
}
