//! The pattern of a job made: stock, contraction, draught and core prints on the mesh of the part,
//! parted, pinned, cut for the printer, with its oddside or its board.
//!
//! The steps up to the contraction are done on the drawing, so that faces are named as they were
//! drawn; what follows is done on the part as it lies in the mould, z up, its lowest point at
//! nought before stock is left on.

pub mod core_prints;
mod draught;
pub mod files;
mod joint;
mod loose_told;
mod parting;
pub mod told;
pub mod wish;

use measure::band::Band;
use measure::length::Length;
use pattern::boolean::BooleanError;
use pattern::contraction::growth_sideways;
use pattern::draw::joint::JointError;
use pattern::draw::undercut::{Trapped, Undercuts, undercuts};
use pattern::draw::{DrawError, DrawSettings};
use pattern::made::bed::BedError;
use pattern::made::board::{BoardError, Fill};
use pattern::made::filament::{Filament, FilamentError, PrintAdvice, Printing, advice};
use pattern::made::grow::{GrowError, grown};
use pattern::made::halves::{HalvesError, PinWish, Pins};
use pattern::made::joint::Joint;
use pattern::made::lifting::LiftError;
use pattern::made::line::{LineError, Station};
use pattern::made::loose::{LooseError, LoosePiece, Stuck, loosened};
use pattern::made::plate::PlateError;
use pattern::made::prints::{Print, PrintError, with_prints};
use pattern::made::stock::{Face, LeftOn, Stock, StockError, with_stock};
use pattern::made::taper::{TaperError, Tight};
use pattern::made::volume_mm3;
use pattern::mesh::Mesh;
use thiserror::Error;

use crate::job::Job;
use crate::job_file::Serves;
use crate::making::core_prints::{CorePrints, CoresFound};
use crate::making::draught::{Drafted, drafted, drawn_place};
use crate::making::joint::{flask, heights_of, joint, parting_lines};
use crate::making::wish::{PatternWish, WishedFace};
use crate::shop::Shop;
use crate::turning::Turning;

/// A pattern made.
#[derive(Clone, Debug)]
pub struct Making {
    /// What the job is called.
    pub name: String,
    /// What the casting has to serve for.
    pub serves: Serves,
    /// Sides of the part as it lies in the mould, mm.
    pub part_mm: [f64; 3],
    /// Sides of the pattern, its prints counted in, mm.
    pub pattern_mm: [f64; 3],
    /// Contraction along x, y and z of the drawing.
    pub contraction: [f64; 3],
    /// The steps with the volume after each, mm³.
    pub steps: Vec<(Step, f64)>,
    /// Stock that was left on.
    pub left_on: Vec<LeftOn>,
    /// Walls that got draught, and the area of those that draw neither way, mm².
    pub walls: (usize, f64),
    /// Why no wall got any, where the job did not insist on it.
    pub no_draught: Option<TaperError>,
    /// Walls without room for all of their draught, the tightest place of each, in the drawing; the
    /// worst first.
    pub tight: Vec<Tight>,
    /// Lowest and highest place of the joint on the pattern, over its lowest point, mm.
    pub joint_mm: [f64; 2],
    /// Sand that the pattern holds when it is drawn along z, mm³.
    pub held_mm3: f64,
    /// What is made on it for the cores.
    pub cores: CorePrints,
    /// Pieces that stay in the sand when the pattern is drawn, as they sit on it.
    pub loose: Vec<LoosePiece>,
    /// Sand for which a loose piece was advised and that none frees.
    pub stuck: Vec<Stuck>,
    /// What is written, each a solid of its own.
    pub pieces: Vec<Piece>,
    /// Pins of two halves.
    pub pins: Option<Pins>,
    /// Whether two halves found no room for pins.
    pub is_without_pins: bool,
    /// Dowels between pieces, and cuts that found no room for one.
    pub dowels: (usize, usize),
    /// How the oddside fills its box with pattern and drag.
    pub fill: Option<Fill>,
    /// Heights of the joint line over the bed.
    pub stations: Vec<Station>,
    /// What would make the print stand the rammer better.
    pub advice: Vec<PrintAdvice>,
}

/// One step of the making.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Step {
    /// The part as it was drawn.
    Part,
    /// Stock on faces.
    Stock,
    /// Made larger by the contraction.
    Contraction,
    /// Draught on the walls.
    Draught,
    /// Hollows filled that cores will make again.
    Hollows,
    /// Core prints.
    Prints,
}

/// A solid that is written.
#[derive(Clone, Debug)]
pub struct Piece {
    /// What it is.
    pub what: What,
    /// Its number where what it is was cut for the printer, from one.
    pub number: Option<usize>,
    /// Its skin as it lies on the bed, mm.
    pub mesh: Mesh,
    /// What goes into its print.
    pub filament: Filament,
}

/// What a piece is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum What {
    /// The pattern in one piece.
    Pattern,
    /// Its half in the drag.
    Drag,
    /// Its half in the cope.
    Cope,
    /// A loose piece, by its number from one.
    Loose(usize),
    /// The oddside.
    Oddside,
    /// The board with several patterns.
    Board,
}

/// Why no pattern was made.
#[derive(Debug, Error)]
pub enum MakingError {
    /// Nothing drawn to make it from.
    #[error("a pattern is made from a drawing: give part.mesh or [[solid]] in job.toml")]
    NoMesh,
    /// A contraction that the table does not have.
    #[error("{0} has no contraction: write metal.contraction in job.toml")]
    NoContraction(String),
    /// Stock.
    #[error("pattern.stock: {0}")]
    Stock(#[from] StockError),
    /// Contraction.
    #[error("pattern.contraction: {0}")]
    Grow(#[from] GrowError),
    /// Draught.
    #[error("pattern.draught: {0}")]
    Taper(#[from] TaperError),
    /// Core prints.
    #[error("pattern.print: {0}")]
    Print(#[from] PrintError),
    /// Prints of the cores that are found.
    #[error("the pattern with the prints of its cores: {0}")]
    Cores(#[from] BooleanError),
    /// Two halves.
    #[error("{0}")]
    Halves(#[from] HalvesError),
    /// Loose pieces.
    #[error("{0}")]
    Loose(#[from] LooseError),
    /// The lifting hole.
    #[error("pattern.lifting: {0}")]
    Lift(#[from] LiftError),
    /// The line of the joint.
    #[error("{0}")]
    Line(#[from] LineError),
    /// Pieces for the printer.
    #[error("pattern.bed: {0}")]
    Bed(#[from] BedError),
    /// The oddside.
    #[error("pattern.oddside: {0}")]
    Board(#[from] BoardError),
    /// The board.
    #[error("pattern.board: {0}")]
    Plate(#[from] PlateError),
    /// Plastic.
    #[error("pattern: {0}")]
    Filament(#[from] FilamentError),
    /// The draw.
    #[error("pattern: {0}")]
    Draw(#[from] DrawError),
    /// No joint along the parting line.
    #[error("{0}; or write mould.joint in job.toml for a flat one")]
    Joint(#[from] JointError),
    /// A board for a joint that is not flat.
    #[error(
        "pattern.board: the joint wanders from {:.1} to {:.1} mm, and a board is flat: write \
         mould.joint in job.toml, or ask for an oddside", heights_mm[0], heights_mm[1]
    )]
    NotFlat {
        /// Lowest and highest place of the joint over the lowest point of the pattern.
        heights_mm: [f64; 2],
    },
}

/// Makes the pattern of a job from the mesh of its part, mm. What cores the part needs, and how
/// long their prints are, goes by the sand of the shop; where the job gives prints by hand, those
/// stand and nothing is filled.
///
/// # Errors
///
/// Whatever step has no answer, with its place.
pub fn make(job: &Job, shop: &Shop, part: &Mesh) -> Result<Making, MakingError> {
    let wish = &job.making;
    let contraction = contraction(job, part)?;
    let lies = Turning::of(part, job.up);
    let mut steps = vec![(Step::Part, volume_mm3(part))];
    let stocked = with_stock(part, &stock(wish, &lies))?;
    if !wish.stock.is_empty() {
        steps.push((Step::Stock, volume_mm3(&stocked.mesh)));
    }
    let large = grown(&stocked.mesh, contraction)?;
    steps.push((Step::Contraction, volume_mm3(&large)));
    let turning = Turning::of(&large, job.up);
    let turned = turning.turned(&large);
    let found = CoresFound::of(job, shop, &turned);
    let to_part = found.filled(&turned)?.mesh;
    let joint = joint(job, &to_part, &lies, &turning, contraction)?;
    let drawn = |place: [f64; 3]| drawn_place(&turning, contraction, place);
    let Drafted {
        mesh: drafted,
        walls,
        tight,
        failed: no_draught,
    } = drafted(&turned, &joint, wish, &drawn)?;
    if wish.draught_degrees != Some(0.0) && no_draught.is_none() {
        steps.push((Step::Draught, volume_mm3(&drafted)));
    }
    let filled = found.filled(&drafted)?;
    if found.is_on_pattern() {
        steps.push((Step::Hollows, filled.without_prints_mm3));
        steps.push((Step::Prints, volume_mm3(&filled.mesh)));
    }
    let prints = prints(wish, &turning, contraction);
    let whole = with_prints(&filled.mesh, &prints)?.mesh;
    if !prints.is_empty() {
        steps.push((Step::Prints, volume_mm3(&whole)));
    }
    let held = held(&whole)?;
    // The draught has moved the skin: a joint that wanders follows the line where it is now.
    let joint = match joint {
        Joint::Flat(_) => joint,
        Joint::Blocks { .. } => Joint::along_the_line(&whole, flask(job, &whole))?,
    };
    let lines = parting_lines(&whole, &joint)?;
    let worth = held
        .regions
        .iter()
        .filter(|hollow| hollow.is_worth_freeing());
    let worth: Vec<Trapped> = worth.cloned().collect();
    let loosened = loosened(&whole, &joint, &worth, Some(&pins(wish)))?;
    let held_mm3 = match loosened.pieces.is_empty() {
        true => held.trapped_mm3,
        false => self::held(&loosened.undrilled)?.trapped_mm3,
    };
    let mut making = Making {
        name: job.name.clone(),
        serves: job.serves,
        part_mm: sides(&lies.turned(part)),
        pattern_mm: sides(&whole),
        contraction,
        steps,
        left_on: stocked.left_on,
        walls,
        no_draught,
        tight,
        joint_mm: heights_of(&joint, &lines).map(|height| height - whole.bounds()[0][2]),
        held_mm3,
        cores: found.told(),
        loose: loosened.pieces,
        stuck: loosened.stuck,
        pieces: Vec::new(),
        pins: None,
        is_without_pins: false,
        dowels: (0, 0),
        fill: None,
        stations: Vec::new(),
        advice: advice(&printing(job)),
    };
    making.part_it(job, &loosened.body, &joint, &lines)?;
    making.add_loose(job)?;
    making.put_on_boards(job, [&whole, &loosened.body], &joint)?;
    Ok(making)
}

/// The sand that a pattern holds when it is drawn along z.
fn held(pattern: &Mesh) -> Result<Undercuts, DrawError> {
    undercuts(pattern, [0.0, 0.0, 1.0], &DrawSettings::suiting(pattern))
}

/// Pins for halves and loose pieces.
fn pins(wish: &PatternWish) -> PinWish {
    PinWish {
        diameter_mm: wish.pins_mm,
        clearance_mm: wish.clearance_mm,
    }
}

fn sides(mesh: &Mesh) -> [f64; 3] {
    let [low, high] = mesh.bounds();
    [0, 1, 2].map(|axis| high[axis] - low[axis])
}

fn printing(job: &Job) -> Printing {
    Printing {
        density: job.making.material.density.likely(),
        wall_mm: job.making.wall_mm,
        infill: job.making.infill,
        layer_mm: job.pattern.printed.map_or(LAYER_MM, Length::as_mm),
    }
}

/// Height of a layer where the job does not say, mm.
const LAYER_MM: f64 = 0.2;

/// Contraction along x, y and z of the drawing: as typed, else that of the metal; sideways a small
/// pattern that is rapped well takes none.
fn contraction(job: &Job, part: &Mesh) -> Result<[f64; 3], MakingError> {
    if let Some(own) = job.making.contraction {
        return Ok(own);
    }
    let of_table = || job.alloy.contraction_band().map(|band| band.likely());
    let own = job.contraction.as_ref().map(|own| own.ratio);
    let share = own.or_else(of_table);
    let share = share.ok_or_else(|| MakingError::NoContraction(job.alloy.name.clone()))?;
    if !job.pattern.rapped {
        return Ok([share; 3]);
    }
    let upright = Turning::of(part, job.up).upright();
    let size = sides(part);
    let sideways = |axis: usize| {
        let size = Length::from_mm(size[axis]);
        growth_sideways(size, &Band::exact(share)).likely()
    };
    Ok([0, 1, 2].map(|axis| {
        if axis == upright {
            share
        } else {
            sideways(axis)
        }
    }))
}

fn stock(wish: &PatternWish, lies: &Turning) -> Vec<Stock> {
    let stock = wish.stock.iter().map(|stock| Stock {
        on: match stock.on {
            WishedFace::Drawn(face) => face,
            WishedFace::Upright { is_top } => {
                Face::Outermost(lies.drawn_way(if is_top { 1.0 } else { -1.0 }))
            }
        },
        depth_mm: stock.by_mm,
    });
    stock.collect()
}

/// Prints where they are drawn, in the frame of the mould.
fn prints(wish: &PatternWish, turning: &Turning, contraction: [f64; 3]) -> Vec<Print> {
    let large = |point: [f64; 3]| [0, 1, 2].map(|axis| point[axis] * (1.0 + contraction[axis]));
    let prints = wish.prints.iter().map(|print| {
        let at_mm = turning.place(large(print.at_mm));
        let end = [0, 1, 2].map(|axis| large(print.at_mm)[axis] + print.axis[axis]);
        let end = turning.place(end);
        Print {
            at_mm,
            axis: [0, 1, 2].map(|axis| end[axis] - at_mm[axis]),
            length_mm: print.length_mm,
            section: print.section,
        }
    });
    prints.collect()
}
