//! The pattern that is wanted, as it is typed under `[pattern]` and as it is meant.

use measure::length::Length;
use measure::share::Contraction;
use measure::text::{Typed, plain_number};
use pattern::draft::Skin;
use pattern::made::prints::Section;
use pattern::made::stock::{Face, StockError};
use pattern::material::{self, Material};
use serde::Deserialize;
use thiserror::Error;

use crate::place_text::{Along, Axis, Turn};

/// `[pattern]`
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PatternFile {
    /// Metal left on faces that are machined.
    #[serde(default)]
    pub stock: Vec<StockFile>,
    /// Contraction along x, y and z of the drawing.
    pub contraction: Option<[Contraction; 3]>,
    /// Draught in degrees, 0 for none; left out, by the depth of each wall.
    pub draught: Option<Turn>,
    /// What its skin is like.
    pub skin: Option<Skin>,
    /// Whether it is made in one piece, though the joint crosses it.
    #[serde(default)]
    pub one_piece: bool,
    /// Rod for the pins of two halves.
    pub pins: Option<Typed<Length>>,
    /// How much wider than the rod the holes are.
    pub clearance: Option<Typed<Length>>,
    /// Screw for the lifting hole.
    pub lifting: Option<Typed<Length>>,
    /// What the printer takes.
    pub bed: Option<[Typed<Length>; 3]>,
    /// Whether an oddside is wanted.
    #[serde(default)]
    pub oddside: bool,
    /// A board with several patterns.
    pub board: Option<BoardFile>,
    /// What it is printed of.
    pub material: Option<String>,
    /// Thickness of the printed walls.
    pub wall: Option<Typed<Length>>,
    /// Share of the room within the walls that is filled.
    pub infill: Option<String>,
    /// Core prints.
    #[serde(default)]
    pub print: Vec<PrintFile>,
}

/// One entry of `stock`.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct StockFile {
    /// The face in a word: "top", "+x", "bore D22".
    pub on: Option<String>,
    /// A place in the plane of the face.
    pub at: Option<[Along; 3]>,
    /// The way the face in that plane looks.
    pub facing: Option<Axis>,
    /// How much.
    pub by: Typed<Length>,
}

/// `[pattern.board]`
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BoardFile {
    /// Patterns on it; left out, the castings of one mould.
    pub count: Option<usize>,
    /// Its thickness.
    pub thickness: Option<Typed<Length>>,
    /// Its length and width; left out, the smallest.
    pub size: Option<[Typed<Length>; 2]>,
}

/// `[[pattern.print]]`
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PrintFile {
    /// Middle of its foot, in the drawing.
    pub at: [Along; 3],
    /// The way it stands out, in the drawing.
    pub axis: Axis,
    /// How far.
    pub length: Typed<Length>,
    /// Across, where it is round.
    pub diameter: Option<Typed<Length>>,
    /// Across at its far end, where it narrows.
    pub top: Option<Typed<Length>>,
    /// Its two sides, where it is square.
    pub size: Option<[Typed<Length>; 2]>,
}

/// The pattern as it is meant.
#[derive(Clone, Debug, PartialEq)]
pub struct PatternWish {
    /// Stock on faces, as drawn.
    pub stock: Vec<StockWish>,
    /// Contraction along x, y and z of the drawing, where the job gives it.
    pub contraction: Option<[f64; 3]>,
    /// Draught in degrees, nought for none, where the job gives it.
    pub draught_degrees: Option<f64>,
    /// What its skin is like.
    pub skin: Skin,
    /// Whether it is made in one piece.
    pub one_piece: bool,
    /// Rod for the pins, mm.
    pub pins_mm: Option<f64>,
    /// How much wider the holes are, mm.
    pub clearance_mm: f64,
    /// Screw for the lifting hole, mm.
    pub lifting_mm: Option<f64>,
    /// What the printer takes, mm.
    pub bed_mm: Option<[f64; 3]>,
    /// Whether an oddside is wanted.
    pub oddside: bool,
    /// A board with several patterns.
    pub board: Option<BoardWish>,
    /// What it is printed of.
    pub material: &'static Material,
    /// Thickness of the printed walls, mm.
    pub wall_mm: f64,
    /// Share of the room within the walls that is filled.
    pub infill: f64,
    /// Core prints, as drawn.
    pub prints: Vec<PrintWish>,
}

/// Stock on a face.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StockWish {
    /// Where.
    pub on: WishedFace,
    /// How much, mm.
    pub by_mm: f64,
}

/// A face, before it is known which way the part lies in the mould.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum WishedFace {
    /// The uppermost in the mould, or the lowest.
    Upright {
        /// Whether the uppermost.
        is_top: bool,
    },
    /// One of the drawing.
    Drawn(Face),
}

/// A board with several patterns.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BoardWish {
    /// Patterns on it, where the job says.
    pub count: Option<usize>,
    /// Its thickness, mm.
    pub thickness_mm: f64,
    /// Its length and width, mm.
    pub size_mm: Option<[f64; 2]>,
}

/// A core print, as drawn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PrintWish {
    /// Middle of its foot, mm.
    pub at_mm: [f64; 3],
    /// The way it stands out.
    pub axis: [f64; 3],
    /// How far, mm.
    pub length_mm: f64,
    /// What it looks like along its axis.
    pub section: Section,
}

/// What is wrong under `[pattern]`.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum WishError {
    /// A face that has no name.
    #[error("pattern.stock: {0}")]
    Face(#[from] StockError),
    /// Neither a word nor a plane, or both.
    #[error(
        "pattern.stock: say where by one way: on = \"top\", or at = [\"0 mm\", \"0 mm\", \"12 mm\"] \
         with facing = \"z\""
    )]
    Where,
    /// A material nobody prints.
    #[error(
        "pattern.material: \"{0}\" is not in the table of materials; write PLA, PETG, ABS, ..."
    )]
    Material(String),
    /// A share that is none.
    #[error("pattern.infill: \"{0}\" is no share; write it like \"20 %\"")]
    Infill(String),
    /// A print with two sections or none.
    #[error("pattern.print {0}: give it a diameter or a size, one of them")]
    Section(usize),
}

/// Walls where the job does not say, mm: three lines of a nozzle of 0.4 mm.
const WALL_MM: f64 = 1.2;

/// Infill where the job does not say, what slicing programs begin with.
const INFILL: f64 = 0.15;

/// What is printed of where the job does not say.
const MATERIAL: &str = "PLA";

/// Thickness of a board where the job does not say, mm: half an inch of plywood.
const BOARD_MM: f64 = 12.7;

impl PatternFile {
    /// What is meant.
    ///
    /// # Errors
    ///
    /// A word nobody knows, or a place said twice.
    pub fn meant(&self) -> Result<PatternWish, WishError> {
        let mm = |typed: &Option<Typed<Length>>| typed.as_ref().map(|typed| typed.value.as_mm());
        let sides = |typed: &Typed<Length>| typed.value.as_mm();
        let named = self.material.as_deref().unwrap_or(MATERIAL);
        let material = material::named(named).ok_or_else(|| WishError::Material(named.to_owned()));
        let prints = self.print.iter().zip(1..);
        Ok(PatternWish {
            stock: self.stock.iter().map(stock).collect::<Result<_, _>>()?,
            contraction: self
                .contraction
                .as_ref()
                .map(|own| own.each_ref().map(|c| c.ratio)),
            draught_degrees: self.draught.map(|turn| turn.0),
            skin: self.skin.unwrap_or(Skin::Printed),
            one_piece: self.one_piece,
            pins_mm: mm(&self.pins),
            clearance_mm: mm(&self.clearance).unwrap_or(pattern::made::halves::USUAL_CLEARANCE_MM),
            lifting_mm: mm(&self.lifting),
            bed_mm: self.bed.as_ref().map(|bed| bed.each_ref().map(sides)),
            oddside: self.oddside,
            board: self.board.as_ref().map(|board| BoardWish {
                count: board.count,
                thickness_mm: mm(&board.thickness).unwrap_or(BOARD_MM),
                size_mm: board.size.as_ref().map(|size| size.each_ref().map(sides)),
            }),
            material: material?,
            wall_mm: mm(&self.wall).unwrap_or(WALL_MM),
            infill: self.infill.as_deref().map_or(Ok(INFILL), infill)?,
            prints: prints
                .map(|(print, number)| meant(print, number))
                .collect::<Result<_, _>>()?,
        })
    }
}

fn stock(typed: &StockFile) -> Result<StockWish, WishError> {
    let on = match (typed.on.as_deref(), typed.at, typed.facing) {
        (Some(word), None, None) => match word.trim().to_lowercase().as_str() {
            "top" => WishedFace::Upright { is_top: true },
            "bottom" => WishedFace::Upright { is_top: false },
            _ => WishedFace::Drawn(word.parse()?),
        },
        (None, Some(at), Some(Axis(normal))) => WishedFace::Drawn(Face::Plane {
            point: at.map(|along| along.0.as_mm()),
            normal,
        }),
        _ => return Err(WishError::Where),
    };
    Ok(StockWish {
        on,
        by_mm: typed.by.value.as_mm(),
    })
}

fn infill(typed: &str) -> Result<f64, WishError> {
    let number = typed.trim().strip_suffix('%').and_then(plain_number);
    number
        .map(|per_cent| per_cent / 100.0)
        .ok_or_else(|| WishError::Infill(typed.to_owned()))
}

fn meant(typed: &PrintFile, number: usize) -> Result<PrintWish, WishError> {
    let section = match (&typed.diameter, &typed.top, &typed.size) {
        (Some(diameter), None, None) => Section::Round(diameter.value.as_mm()),
        (Some(diameter), Some(top), None) => {
            Section::Tapered([diameter.value.as_mm(), top.value.as_mm()])
        }
        (None, None, Some(size)) => Section::Square(size.each_ref().map(|s| s.value.as_mm())),
        _ => return Err(WishError::Section(number)),
    };
    Ok(PrintWish {
        at_mm: typed.at.map(|along| along.0.as_mm()),
        axis: typed.axis.0,
        length_mm: typed.length.value.as_mm(),
        section,
    })
}
