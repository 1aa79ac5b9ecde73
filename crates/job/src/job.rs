//! A job as it is meant: complete and checked, with nothing left to guess.

use measure::flow::Duration;
use measure::length::{Area, Length, Volume};
use measure::matter::Mass;
use measure::share::{Contraction, Share};
use measure::text::Typed;
use metal::alloy::Alloy;
use metal::alloys::{UnknownAlloy, named};
use metal::scrap::{Origin, origin, origins};
use pattern::unit::Unit;
use pour::chill::Chill;
use rigging::placement::Placement;
use thiserror::Error;

use crate::charge::wish::{ChargeWish, WishError};
use crate::chills::{UnknownChill, chill};
use crate::job_file::{CoreFile, JobFile, Serves, Sits, StockForm};
use crate::making::wish::{PatternFile, PatternWish, WishError as PatternError};
use crate::pattern_made::PatternMade;
use crate::pour_card::PourFile;
use crate::shop::Shop;

/// What is to be cast, in what, and how.
#[derive(Clone, Debug)]
pub struct Job {
    /// What the job is called.
    pub name: String,
    /// Day of the pour, as it is to be printed.
    pub date: Option<String>,
    /// Castings in one mould.
    pub count: usize,
    /// The way up in the mould.
    pub up: Up,
    /// What the casting has to serve for.
    pub serves: Serves,
    /// How the pattern is made and used.
    pub pattern: PatternMade,
    /// The alloy.
    pub alloy: &'static Alloy,
    /// The shop's own contraction.
    pub contraction: Option<Contraction>,
    /// Carbon equivalent of grey iron.
    pub carbon_equivalent: Option<Share>,
    /// One of the shop's flasks, by name.
    pub flask: Option<String>,
    /// From the joint to the level in the basin.
    pub pour_height: Option<Length>,
    /// Height of the joint above the lowest point.
    pub joint: Option<Length>,
    /// The test that showed the mould to be firm.
    pub firm: Option<String>,
    /// How long it stands before it is poured.
    pub stands: Option<Duration>,
    /// What of the rigging is wanted elsewhere than the rules place it.
    pub place: Placement,
    /// Melt loss weighed in this shop.
    pub loss: Option<Share>,
    /// Metal kept for the ingot mould, as a share of what is poured.
    pub pig: f64,
    /// How the stock of the charge comes.
    pub form: StockForm,
    /// What the scrap of it was.
    pub scrap: Vec<&'static Origin>,
    /// Names of the solids of the part, in their order; none where the founder gave none.
    pub solids: Vec<Option<String>>,
    /// What is made up from the shop's own heaps.
    pub charge: Option<ChargeWish>,
    /// Cores.
    pub cores: Vec<Core>,
    /// Chills.
    pub chills: Vec<Chill>,
    /// What the pour card says beside the figures.
    pub pour: PourFile,
    /// The pattern that is made.
    pub making: PatternWish,
}

/// A core.
#[derive(Clone, Debug, PartialEq)]
pub struct Core {
    /// What it is called.
    pub name: String,
    /// Core sand that the metal surrounds.
    pub volume: Volume,
    /// How it sits, where the job says.
    pub sits: Option<Sits>,
    /// The whole core on the scale.
    pub mass: Option<Mass>,
    /// Mouth and depth of the print, where the job says.
    pub print: Option<CorePrint>,
    /// Pins or chaplets that hold it.
    pub pins: u32,
}

/// The print of a core.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CorePrint {
    /// Area of its mouth.
    pub mouth: Area,
    /// Depth, nought where the job does not say.
    pub depth: Length,
}

/// Which way of the mesh is up in the mould.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Up {
    /// The shortest side stands upright.
    Flattest,
    /// An axis of the mesh (0 to 2), and whether it points up or down.
    Axis(usize, bool),
}

/// What is wrong with a job that can be read.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum JobError {
    /// The alloy.
    #[error("metal.alloy: {0}")]
    Alloy(#[from] UnknownAlloy),
    /// The charge.
    #[error("{0}")]
    Charge(String),
    /// The pattern that is made.
    #[error("{0}")]
    Pattern(#[from] PatternError),
    /// The unit of the mesh.
    #[error("part.unit: \"{0}\" is not a unit of a mesh; write mm, cm, m, in or um")]
    Unit(String),
    /// The way up.
    #[error("part.up: \"{0}\" is not a way up; write +x, -x, +y, -y, +z or -z")]
    Up(String),
    /// No casting, or a number nobody moulds.
    #[error("part.count: {0} castings in one mould; write a number from 1 to {MOST_CASTINGS}")]
    Count(usize),
    /// A share of something else.
    #[error("{key}: \"{typed}\" has to be a per cent of {wanted}, like \"{example}\"")]
    ShareOf {
        /// The key.
        key: &'static str,
        /// What was typed.
        typed: String,
        /// What it has to be a share of.
        wanted: &'static str,
        /// How to write it.
        example: &'static str,
    },
    /// Scrap of a kind that the table does not know.
    #[error("melt.scrap: \"{typed}\" is not in the table of scrap; write one of: {known}")]
    Scrap {
        /// What was typed.
        typed: String,
        /// The words it knows.
        known: String,
    },
    /// A core that bears on one print, whose size is not given.
    #[error("core \"{0}\": how large is its print? write print = \"60 mm\" across, or print_area")]
    NoPrint(String),
    /// A chill.
    #[error("{0}")]
    Chill(#[from] UnknownChill),
    /// A figure outside what is possible.
    #[error("{key}: \"{typed}\" is outside {range}")]
    Outside {
        /// The key.
        key: &'static str,
        /// What was typed.
        typed: String,
        /// What is possible.
        range: &'static str,
    },
}

/// More castings in one hand-rammed mould are a mistyped number.
pub const MOST_CASTINGS: usize = 200;

/// Metal kept for the ingot mould where the job does not say: a tenth of what is poured, so that
/// the last mould does not run short (common practice, no source).
pub(crate) const PIG: f64 = 0.1;

impl Job {
    /// With the shop's own figures of its metal, where the job gives none.
    #[must_use]
    pub fn with_own(mut self, shop: &Shop) -> Job {
        if let Some(own) = shop.own.iter().find(|own| own.metal == self.alloy.name) {
            self.contraction = self.contraction.or_else(|| own.contraction.clone());
            self.loss = self.loss.or_else(|| own.loss.clone());
        }
        self
    }

    /// A job from its file.
    pub fn meant(file: &JobFile) -> Result<Job, JobError> {
        let part = file.part.get_ref();
        let count = part.count.unwrap_or(1);
        if !(1..=MOST_CASTINGS).contains(&count) {
            return Err(JobError::Count(count));
        }
        let (metal, mould, melt) = (&file.metal, &file.mould, &file.melt);
        share_of("melt.loss", &melt.loss, "charge", "5 % of charge")?;
        share_of("melt.pig", &melt.pig, "poured", "10 % of poured")?;
        share_of(
            "metal.carbon_equivalent",
            &metal.carbon_equivalent,
            "iron",
            "4.2 % of iron",
        )?;
        if let Some(loss) = melt.loss.as_ref().filter(|loss| loss.ratio > 0.9) {
            let typed = loss.typed.clone();
            return Err(JobError::Outside {
                key: "melt.loss",
                typed,
                range: "0 to 90 %",
            });
        }
        height("mould.pour_height", &mould.pour_height, 30.0)?;
        height("mould.joint", &mould.joint, 0.0)?;
        let alloy = named(&metal.alloy)?;
        let charge = file.charge.as_ref();
        let charge = charge.map(|typed| typed.meant(&alloy.name, alloy.family));
        Ok(Job {
            name: file.name.clone(),
            date: file.date.clone(),
            count,
            up: part.up.as_deref().map_or(Ok(Up::Flattest), way_up)?,
            serves: part.serves.unwrap_or(Serves::Machine),
            pattern: PatternMade::of(part),
            alloy,
            charge: charge.transpose()?,
            contraction: metal.contraction.clone(),
            carbon_equivalent: metal.carbon_equivalent.clone(),
            flask: mould.flask.clone(),
            pour_height: mould.pour_height.as_ref().map(|height| height.value),
            joint: mould.joint.as_ref().map(|height| height.value),
            firm: mould.firm.clone().filter(|shown| !shown.trim().is_empty()),
            stands: mould.stands.as_ref().map(|stands| stands.value),
            place: mould.place.meant(),
            loss: melt.loss.clone(),
            pig: melt.pig.as_ref().map_or(PIG, |pig| pig.ratio),
            form: melt.form,
            scrap: melt
                .scrap
                .iter()
                .map(|word| scrap(word))
                .collect::<Result<_, _>>()?,
            solids: file
                .solid
                .iter()
                .map(|solid| solid.get_ref().name.clone())
                .collect(),
            cores: file.core.iter().map(core).collect::<Result<_, _>>()?,
            chills: file.chill.iter().map(chill).collect::<Result<_, _>>()?,
            pour: file.pour.clone(),
            making: file.pattern.meant()?,
        })
    }

    /// The quick look: one casting of a metal, everything else as it comes.
    pub fn quick(name: &str, metal: &str) -> Result<Job, JobError> {
        Ok(Job {
            name: name.to_owned(),
            date: None,
            count: 1,
            up: Up::Flattest,
            serves: Serves::Machine,
            pattern: PatternMade::default(),
            alloy: named(metal)?,
            contraction: None,
            carbon_equivalent: None,
            flask: None,
            pour_height: None,
            joint: None,
            firm: None,
            stands: None,
            place: Placement::default(),
            loss: None,
            pig: PIG,
            form: StockForm::default(),
            scrap: Vec::new(),
            solids: Vec::new(),
            charge: None,
            cores: Vec::new(),
            chills: Vec::new(),
            pour: PourFile::default(),
            making: PatternFile::default().meant()?,
        })
    }
}

impl From<WishError> for JobError {
    fn from(error: WishError) -> JobError {
        JobError::Charge(error.to_string())
    }
}

/// A height in the mould: no flask is deeper than two metres.
fn height(key: &'static str, typed: &Option<Typed<Length>>, least: f64) -> Result<(), JobError> {
    let outside = |height: &&Typed<Length>| !(least..=2000.0).contains(&height.value.as_mm());
    match typed.as_ref().filter(outside) {
        Some(height) => {
            let range = "30 mm to 2 m for a pour, 0 to 2 m for a joint";
            Err(JobError::Outside {
                key,
                typed: height.typed.clone(),
                range,
            })
        }
        None => Ok(()),
    }
}

fn scrap(word: &str) -> Result<&'static Origin, JobError> {
    let first = |origin: &Origin| origin.names.first().cloned().unwrap_or_default();
    origin(word).ok_or_else(|| JobError::Scrap {
        typed: word.to_owned(),
        known: origins().iter().map(first).collect::<Vec<_>>().join(", "),
    })
}

/// The unit of a mesh as it is asked for.
pub fn mesh_unit(typed: &str) -> Result<Unit, JobError> {
    Unit::parse(typed).ok_or_else(|| JobError::Unit(typed.to_owned()))
}

/// A core larger than this is a slip between cm³ and m³.
const LARGEST_CORE: Volume = Volume::from_litre(1000.0);

fn core(file: &CoreFile) -> Result<Core, JobError> {
    if file.volume.value > LARGEST_CORE {
        let typed = file.volume.typed.clone();
        return Err(JobError::Outside {
            key: "core.volume",
            typed,
            range: "0 to 1000 l",
        });
    }
    let print = print(file)?;
    if matches!(file.sits, Some(Sits::Hung | Sits::Standing)) && print.is_none() {
        return Err(JobError::NoPrint(file.name.clone()));
    }
    Ok(Core {
        name: file.name.clone(),
        volume: file.volume.value,
        sits: file.sits,
        mass: file.mass.as_ref().map(|mass| mass.value),
        print,
        pins: file.pins.unwrap_or(0),
    })
}

/// A print wider than this is a slip between mm and m.
const WIDEST_PRINT: Length = Length::from_mm(2000.0);

fn print(file: &CoreFile) -> Result<Option<CorePrint>, JobError> {
    let depth = file.print_depth.as_ref();
    let possible = |length: Length| length > Length::ZERO && length <= WIDEST_PRINT;
    for (key, typed) in [
        ("core.print", file.print.as_ref()),
        ("core.print_depth", depth),
    ] {
        if let Some(typed) = typed.filter(|typed| !possible(typed.value)) {
            let (typed, range) = (typed.typed.clone(), "0 to 2 m");
            return Err(JobError::Outside { key, typed, range });
        }
    }
    let widest = WIDEST_PRINT * WIDEST_PRINT;
    let outside = |area: &&Typed<Area>| area.value <= Area::ZERO || area.value > widest;
    if let Some(area) = file.print_area.as_ref().filter(outside) {
        return Err(JobError::Outside {
            key: "core.print_area",
            typed: area.typed.clone(),
            range: "0 to 4 m2",
        });
    }
    let round = |across: &Typed<Length>| across.value * across.value * std::f64::consts::FRAC_PI_4;
    let mouth = match (&file.print_area, &file.print) {
        (Some(area), _) => Some(area.value),
        (None, across) => across.as_ref().map(round),
    };
    let depth = depth.map_or(Length::ZERO, |depth| depth.value);
    Ok(mouth.map(|mouth| CorePrint { mouth, depth }))
}

fn way_up(typed: &str) -> Result<Up, JobError> {
    let wrong = || JobError::Up(typed.to_owned());
    let (sign, axis) = match typed.trim().as_bytes() {
        [sign @ (b'+' | b'-'), axis] => (*sign, *axis),
        [axis] => (b'+', *axis),
        _ => return Err(wrong()),
    };
    let axis = b"xyz"
        .iter()
        .position(|name| *name == axis.to_ascii_lowercase())
        .ok_or_else(wrong)?;
    Ok(Up::Axis(axis, sign == b'+'))
}

fn share_of(
    key: &'static str,
    share: &Option<Share>,
    wanted: &'static str,
    example: &'static str,
) -> Result<(), JobError> {
    match share.as_ref().filter(|share| !share.of.contains(wanted)) {
        Some(share) => Err(JobError::ShareOf {
            key,
            typed: share.typed.clone(),
            wanted,
            example,
        }),
        None => Ok(()),
    }
}
