//! The Plan: everything worked out for a job, as plain data, and the one boundary to every door.

use measure::source::Law;
use measure::text::System;
use measure::text::shown::Rounding;

use crate::amount::Amount;
use crate::remark::Remark;
use crate::solved::SolvedTimes;
use crate::words::Language;
use crate::words::said::{Said, slug};

/// What a founder needs for one mould.
#[derive(Clone, Debug)]
pub struct Plan {
    /// What the job is called.
    pub name: String,
    /// Day of the pour, as it is to be printed.
    pub date: Option<String>,
    /// The alloy, by its trade name.
    pub alloy: String,
    /// Castings in the mould.
    pub count: usize,
    /// The figures, in the order of the day.
    pub figures: Vec<Figure>,
    /// What was chosen from the founder's own things, in the order of the day.
    pub choices: Vec<Choice>,
    /// Times by the heat in the mould, where it was followed.
    pub solved: Option<SolvedTimes>,
    /// Remarks, the weightiest first.
    pub remarks: Vec<Remark>,
    /// Keys of every source a figure rests on, in the order of first use.
    pub sources: Vec<String>,
    /// The mould, for the bench drawing.
    pub drawing: MouldDrawing,
    /// The system of units that stands first.
    pub units: System,
    /// The language of labels and remarks.
    pub words: Language,
}

/// A figure with everything that stands behind it.
#[derive(Clone, Debug)]
pub struct Figure {
    /// Its trade name.
    pub name: &'static str,
    /// Its band.
    pub amount: Amount,
    /// Which way it may be rounded for people.
    pub rounding: Rounding,
    /// The law it follows from.
    pub law: &'static Law,
    /// Which answer of the law's reckoner it is, where not the first.
    pub answer: Option<&'static str>,
    /// What went into the law, under the keys of its reckoner, as the law can be asked with it
    /// again.
    pub asked: Vec<(&'static str, String)>,
    /// Whether the law gives a part of it only: the rest stands beside the inputs.
    pub in_part: bool,
    /// The same rounded for people, with what else is worth knowing beside it, by name.
    pub inputs: Vec<(String, String)>,
    /// Keys of the sources of the law and of the inputs.
    pub sources: Vec<String>,
    /// A sentence on what sets it, where there is one.
    pub because: Option<Said>,
}

/// Something chosen from what the founder owns.
#[derive(Clone, Debug, PartialEq)]
pub struct Choice {
    /// What was to be chosen: "flask", "crucible".
    pub name: &'static str,
    /// What was chosen.
    pub chosen: Said,
    /// Why, or with what left over.
    pub because: Said,
}

/// Plan and section of the mould in mm; x along the flask, y across it, z up from the joint.
#[derive(Clone, Debug, PartialEq)]
pub struct MouldDrawing {
    /// Inside length and width.
    pub flask_inside_mm: [f64; 2],
    /// Cope and drag.
    pub cope_mm: f64,
    /// Drag.
    pub drag_mm: f64,
    /// Shadows of the patterns.
    pub outline: Vec<Vec<[f64; 2]>>,
    /// The cut through the first row of patterns.
    pub section: Vec<Vec<[f64; 2]>>,
    /// From the joint to the level in the basin.
    pub pour_height_mm: f64,
    /// Sprue, runners, gates, feeders and cores, once the mould is built of solids.
    pub pieces: Vec<DrawnPiece>,
    /// The joint where it leaves its level, once the mould is built of solids.
    pub joint: Option<JointDrawing>,
}

/// A joint that wanders, heights in mm above its level.
#[derive(Clone, Debug, PartialEq)]
pub struct JointDrawing {
    /// Where it meets the first casting: closed lines, those that leave the level first, of these
    /// the longest.
    pub lines: Vec<Vec<[f64; 3]>>,
    /// Heights along the first of them.
    pub stations: Vec<JointStation>,
    /// Height between two contour lines.
    pub every_mm: f64,
    /// Contour lines, the lowest first.
    pub contours: Vec<Contour>,
    /// Where the section cuts it, x and z from wall to wall.
    pub section: Vec<[f64; 2]>,
}

/// A place on the line where the joint meets a casting.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct JointStation {
    /// On which of the lines, from nought.
    pub line: usize,
    /// Way along the line from its first place, mm.
    pub along_mm: f64,
    /// From above.
    pub place_mm: [f64; 2],
    /// Over the level.
    pub height_mm: f64,
}

/// Where the joint lies at one height, seen from above.
#[derive(Clone, Debug, PartialEq)]
pub struct Contour {
    /// The height.
    pub height_mm: f64,
    /// Closed lines, x and y.
    pub lines: Vec<Vec<[f64; 2]>>,
}

/// A piece of rigging or a core in plan and section.
#[derive(Clone, Debug, PartialEq)]
pub struct DrawnPiece {
    /// What it is.
    pub kind: PieceKind,
    /// From above, x and y.
    pub plan: Vec<Vec<[f64; 2]>>,
    /// Where the section cuts it, x and z; empty where it lies before or behind.
    pub cut: Vec<Vec<[f64; 2]>>,
    /// Its outline from the front, x and z, where the section does not cut it.
    pub beside: Vec<Vec<[f64; 2]>>,
}

/// What a drawn piece is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PieceKind {
    /// Basin, sprue and well.
    Sprue,
    /// A runner.
    Runner,
    /// A gate.
    Gate,
    /// A feeder.
    Feeder,
    /// A core.
    Core,
}

impl Figure {
    /// Its name as it is shown; `name` itself is the key, the same in every language.
    pub fn label(&self) -> Said {
        Said::new(format!("figure-{}", slug(self.name)))
    }
}

impl Choice {
    /// Its name as it is shown.
    pub fn label(&self) -> Said {
        Said::new(format!("choice-{}", slug(self.name)))
    }
}

impl Plan {
    /// The alloy as it is shown.
    pub fn alloy_label(&self) -> Said {
        alloy_label(&self.alloy)
    }

    /// The figure of a name.
    pub fn figure(&self, name: &str) -> Option<&Figure> {
        self.figures.iter().find(|figure| figure.name == name)
    }

    /// The choice of a name.
    pub fn choice(&self, name: &str) -> Option<&Choice> {
        self.choices.iter().find(|choice| choice.name == name)
    }

    /// Whether anything forbids the pour as it stands.
    pub fn has_stop(&self) -> bool {
        self.remarks
            .iter()
            .any(|remark| remark.level == crate::remark::Level::Stop)
    }
}

/// An alloy of the table as it is shown.
pub fn alloy_label(name: &str) -> Said {
    Said::new(format!("alloy-{}", slug(name)))
}
