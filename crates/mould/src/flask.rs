//! The flask: which of one's own boxes takes the pattern with sand enough around it.

use std::sync::LazyLock;

use measure::length::{Length, Volume};
use measure::matter::Mass;
use serde::Deserialize;
use thiserror::Error;

/// A flask of the shop.
#[derive(Clone, Debug, PartialEq)]
pub struct Flask {
    /// What it is called in the shop.
    pub name: String,
    /// Inside length.
    pub length: Length,
    /// Inside width.
    pub width: Length,
    /// Height of the cope.
    pub cope: Length,
    /// Height of the drag.
    pub drag: Length,
    /// Mass of the empty cope frame, nought where it was not weighed.
    pub cope_frame: Mass,
    /// How many of it there are.
    pub count: usize,
}

/// Sand wanted around a pattern.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Clearance {
    /// Pattern to the wall of the flask.
    pub to_wall: Length,
    /// Over the pattern.
    pub above: Length,
    /// Under the pattern.
    pub below: Length,
    /// Between two patterns.
    pub between: Length,
    /// Pattern to runner or sprue.
    pub to_runner: Length,
}

/// What has to go into the flask: so many castings, each with its box around it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Load {
    /// Castings in the mould.
    pub count: usize,
    /// Box around one pattern on the joint, either way round.
    pub plan: [Length; 2],
    /// Pattern above the joint.
    pub above_joint: Length,
    /// Pattern below the joint.
    pub below_joint: Length,
    /// Width kept for the sprue.
    pub sprue: Length,
}

/// How the patterns lie in a flask.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Layout {
    /// Patterns along the flask and across it.
    pub rows: [usize; 2],
    /// Box of one pattern along the flask and across it.
    pub each: [Length; 2],
    /// Whether each pattern is turned a quarter.
    pub turned: bool,
    /// Distance between the patterns.
    pub between: Length,
}

/// Why a flask does not take the load.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum FlaskError {
    /// Nothing to choose from.
    #[error("the shop has no flask: list your own in shop.toml under [[flask]]")]
    NoFlasks,
    /// The name is not in the list.
    #[error("flask \"{name}\" is not in the shop's list; there is: {known}")]
    Unknown {
        /// The name asked for.
        name: String,
        /// The names there are.
        known: String,
    },
    /// None of them, or not the one asked for, is large enough.
    #[error(
        "no flask leaves {wall_mm:.0} mm of sand at the walls: \
         wanted inside {length_mm:.0} x {width_mm:.0} mm, cope {cope_mm:.0}, drag {drag_mm:.0} mm"
    )]
    TooSmall {
        /// The flask asked for by name; nothing where all of them were tried.
        asked: Option<String>,
        /// Castings in the mould.
        count: usize,
        /// Sand at the walls, mm.
        wall_mm: f64,
        /// Inside length wanted, mm.
        length_mm: f64,
        /// Inside width wanted, mm.
        width_mm: f64,
        /// Cope wanted, mm.
        cope_mm: f64,
        /// Drag wanted, mm.
        drag_mm: f64,
    },
}

impl Flask {
    /// Inside volume of cope and drag.
    pub fn volume(&self) -> Volume {
        self.length * self.width * (self.cope + self.drag)
    }

    /// Inside volume of the cope.
    pub fn cope_volume(&self) -> Volume {
        self.length * self.width * self.cope
    }
}

/// Sand wanted around a casting of this mass (hand work; `flask-clearance-memory`).
pub fn clearance(casting: Mass) -> Clearance {
    let row = CLEARANCES
        .iter()
        .find(|row| casting.as_kg() <= row.to_kg)
        .or(CLEARANCES.last());
    let mm = |pick: fn(&Row) -> f64| Length::from_mm(row.map_or(0.0, pick));
    Clearance {
        to_wall: mm(|row| row.to_wall),
        above: mm(|row| row.above),
        below: mm(|row| row.below),
        between: mm(|row| row.between),
        to_runner: mm(|row| row.to_runner),
    }
}

/// A flask with the patterns laid out in it.
#[derive(Clone, Debug, PartialEq)]
pub struct Chosen {
    /// The flask.
    pub flask: Flask,
    /// How the patterns lie in it.
    pub layout: Layout,
    /// What it lacks where it was asked for by name and has less sand than is wanted.
    pub tight: Option<FlaskError>,
}

/// The flask asked for by name, or else the smallest that takes the load. One asked for by name is
/// taken as long as the patterns go in at all, and what it lacks is said.
pub fn choose(
    own: &[Flask],
    named: Option<&str>,
    load: &Load,
    sand: &Clearance,
) -> Result<Chosen, FlaskError> {
    if own.is_empty() {
        return Err(FlaskError::NoFlasks);
    }
    if let Some(name) = named {
        return choose_named(own, name, load, sand);
    }
    own.iter()
        .filter_map(|flask| lay_out(flask, load, sand).map(|layout| (flask, layout)))
        .min_by(|(a, _), (b, _)| a.volume().as_m3().total_cmp(&b.volume().as_m3()))
        .map(|(flask, layout)| Chosen {
            flask: flask.clone(),
            layout,
            tight: None,
        })
        .ok_or_else(|| too_small(None, load, sand))
}

fn choose_named(
    own: &[Flask],
    name: &str,
    load: &Load,
    sand: &Clearance,
) -> Result<Chosen, FlaskError> {
    let flask = own.iter().find(|flask| flask.name == name).ok_or_else(|| {
        let known = own
            .iter()
            .map(|flask| flask.name.as_str())
            .collect::<Vec<_>>()
            .join(", ");
        FlaskError::Unknown {
            name: name.to_owned(),
            known,
        }
    })?;
    if let Some(layout) = lay_out(flask, load, sand) {
        return Ok(Chosen {
            flask: flask.clone(),
            layout,
            tight: None,
        });
    }
    let lack = too_small(Some(name), load, sand);
    match lay_out(flask, load, &BARE) {
        Some(layout) => Ok(Chosen {
            flask: flask.clone(),
            layout,
            tight: Some(lack),
        }),
        None => Err(lack),
    }
}

/// The least that can be rammed at all: below it sand falls out of the corner between pattern and
/// wall, above it a founder who knows the flask may say yes where the table says no.
const BARE: Clearance = Clearance {
    to_wall: Length::from_mm(10.0),
    above: Length::from_mm(15.0),
    below: Length::from_mm(15.0),
    between: Length::from_mm(10.0),
    to_runner: Length::ZERO,
};

/// A flask to make or buy for a load: its inside rounded up to the centimetre.
pub fn flask_to_make(load: &Load, sand: &Clearance) -> (Flask, Layout) {
    let layout = best_layout(load, sand);
    let [length, width] = size_wanted(&layout, load, sand).map(up_to_centimetre);
    let flask = Flask {
        name: "to be made".to_owned(),
        length,
        width,
        cope: up_to_centimetre(load.above_joint + sand.above),
        drag: up_to_centimetre(load.below_joint + sand.below),
        cope_frame: Mass::ZERO,
        count: 1,
    };
    (flask, layout)
}

fn too_small(asked: Option<&str>, load: &Load, sand: &Clearance) -> FlaskError {
    let (wanted, _) = flask_to_make(load, sand);
    FlaskError::TooSmall {
        asked: asked.map(str::to_owned),
        count: load.count,
        wall_mm: sand.to_wall.as_mm(),
        length_mm: wanted.length.as_mm(),
        width_mm: wanted.width.as_mm(),
        cope_mm: wanted.cope.as_mm(),
        drag_mm: wanted.drag.as_mm(),
    }
}

fn lay_out(flask: &Flask, load: &Load, sand: &Clearance) -> Option<Layout> {
    let deep_enough =
        load.above_joint + sand.above <= flask.cope && load.below_joint + sand.below <= flask.drag;
    let fits = |layout: &Layout| {
        let [length, width] = size_wanted(layout, load, sand);
        length <= flask.length && width <= flask.width
    };
    layouts(load, sand)
        .into_iter()
        .find(|layout| deep_enough && fits(layout))
}

fn best_layout(load: &Load, sand: &Clearance) -> Layout {
    let by_area = |a: &Layout, b: &Layout| {
        let area = |layout: &Layout| {
            let [length, width] = size_wanted(layout, load, sand);
            (length * width).as_m2()
        };
        area(a).total_cmp(&area(b))
    };
    let one = Layout {
        rows: [1, 1],
        each: load.plan,
        turned: false,
        between: sand.between,
    };
    layouts(load, sand)
        .into_iter()
        .min_by(by_area)
        .unwrap_or(one)
}

/// Every way of laying the patterns in rows, both ways round.
fn layouts(load: &Load, sand: &Clearance) -> Vec<Layout> {
    let mut all = Vec::new();
    for along in 1..=load.count.max(1) {
        let rows = [along, load.count.max(1).div_ceil(along)];
        for turned in [false, true] {
            let [a, b] = load.plan;
            let each = if turned { [b, a] } else { [a, b] };
            all.push(Layout {
                rows,
                each,
                turned,
                between: sand.between,
            });
        }
    }
    all
}

/// Sand between the sprue and the wall: the sprue freezes soon and heats little.
pub const SPRUE_TO_WALL: Length = Length::from_mm(15.0);

/// Inside of the flask that a layout wants, the sprue standing beside the patterns along the flask
/// in the sand that the wall wants anyway, as far as that reaches.
fn size_wanted(layout: &Layout, load: &Load, sand: &Clearance) -> [Length; 2] {
    let row = |axis: usize| {
        layout.each[axis] * layout.rows[axis] as f64
            + layout.between * (layout.rows[axis] - 1) as f64
            + sand.to_wall * 2.0
    };
    let beside = sand.to_runner + load.sprue + SPRUE_TO_WALL - sand.to_wall;
    [row(0) + beside.max(Length::ZERO), row(1)]
}

fn up_to_centimetre(length: Length) -> Length {
    Length::from_mm((length.as_mm() / 10.0).ceil() * 10.0)
}

#[derive(Clone, Copy, Deserialize)]
#[serde(deny_unknown_fields)]
struct Row {
    to_kg: f64,
    to_wall: f64,
    above: f64,
    below: f64,
    between: f64,
    to_runner: f64,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Table {
    clearance: Vec<Row>,
}

static CLEARANCES: LazyLock<Vec<Row>> = LazyLock::new(|| {
    let table: Result<Table, _> = toml::from_str(include_str!("../data/clearances.toml"));
    table.map(|table| table.clearance).unwrap_or_default()
});
