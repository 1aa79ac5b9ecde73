//! Plan and section of the mould, side by side at one stated scale, black on white.
//!
//! Sand is stippled, metal is left white inside a firm outline, flask walls are hatched and the
//! joint is a chain line, so that nothing needs colour. Where the joint wanders the sand of the
//! drag is hatched, and thin contour lines tell its heights in the plan.

mod dimensions;
mod from_above;
mod section;

use std::fmt::{self, Display, Formatter};

use job::words::Language;
use job::words::said::Said;
use serde::Serialize;

use self::from_above::plan;
use self::section::section;
use crate::SheetError;
use crate::pen::{Pen, Spot};

/// The mould as seen from above and cut through, all lengths in mm of the real thing.
///
/// The origin is one inside corner of the flask, at the joint: x runs along the flask, y across
/// it, z up from the joint.
#[derive(Clone, Debug, Serialize)]
pub struct Drawing {
    /// Inside length and width of the flask.
    pub flask_inside_mm: [f64; 2],
    /// Height of the cope above the joint.
    pub cope_mm: f64,
    /// Depth of the drag below the joint.
    pub drag_mm: f64,
    /// Outlines of patterns and rigging from above, x and y; even-odd, so an inner ring is a hole.
    pub outline: Vec<Vec<[f64; 2]>>,
    /// The cut through the metal, x and z; even-odd.
    pub section: Vec<Vec<[f64; 2]>>,
    /// Height above the joint at which metal is poured; 0 draws no arrow.
    pub pour_height_mm: f64,
    /// Rigging and cores.
    pub pieces: Vec<Piece>,
    /// The joint, where it leaves its level.
    pub joint: Option<Wandering>,
}

/// A joint that leaves its level.
#[derive(Clone, Debug, Serialize)]
pub struct Wandering {
    /// Where the section cuts it, x and z, from wall to wall.
    pub section: Vec<[f64; 2]>,
    /// Its contour lines from above, closed, x and y.
    pub contours: Vec<Vec<[f64; 2]>>,
}

/// A piece of rigging or a core.
#[derive(Clone, Debug, Serialize)]
pub struct Piece {
    /// The letter that stands on it in the plan, as the caption tells; empty for none.
    pub letter: String,
    /// How it is drawn.
    pub look: Look,
    /// From above, x and y; even-odd.
    pub plan: Vec<Vec<[f64; 2]>>,
    /// Where the section cuts it, x and z; even-odd.
    pub cut: Vec<Vec<[f64; 2]>>,
    /// Its outline before or behind the section, x and z.
    pub beside: Vec<Vec<[f64; 2]>>,
}

/// How a piece is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub enum Look {
    /// White inside a line, under the castings: what runs in the joint.
    InTheJoint,
    /// A line over the castings: what stands on them.
    Above,
    /// A broken line: a core.
    Core,
}

/// How much smaller than life a drawing is: one of 1:1, 1:2, 1:2.5, 1:4, 1:5, 1:10, 1:20.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scale {
    smaller: f64,
}

impl Scale {
    /// Length on paper of a real length, both mm.
    pub fn on_paper(self, real_mm: f64) -> f64 {
        real_mm / self.smaller
    }
}

impl Display for Scale {
    fn fmt(&self, formatter: &mut Formatter) -> fmt::Result {
        write!(formatter, "1:{}", self.smaller)
    }
}

/// Scales a bench rule can be read at, largest first; 1:20 takes flasks of 1.5 m.
const SCALES: [f64; 7] = [1.0, 2.0, 2.5, 4.0, 5.0, 10.0, 20.0];

/// Longest length that is believed; beyond it a unit has been mistaken.
const LONGEST_MM: f64 = 10_000.0;

/// Thickness the flask walls are drawn with; the true one is not known here.
const WALL_MM: f64 = 2.5;
/// Room left of the plan for its width, and of the section for the pouring height.
const LEFT_MM: f64 = 13.0;
/// Room left of the section, and more where the words are long.
const BETWEEN_MM: f64 = 25.0;
/// Room right of the section for cope and drag, and more where the words are long.
const RIGHT_MM: f64 = 20.0;
/// A letter of 10 pt, taken wide.
const LETTER_MM: f64 = 1.9;
/// Room above for the two titles, and below for the length of the flask.
const ABOVE_MM: f64 = 6.5;
/// Room below.
const BELOW_MM: f64 = 8.5;
/// From a wall to its dimension line.
const OFF_MM: f64 = 4.0;
/// From a dimension line to its words.
const GAP_MM: f64 = 1.3;
/// How far the joint line runs past the walls.
const PAST_MM: f64 = 2.5;
/// From the middle of a figure of 10 pt down to its base line.
const HALF_FIGURE_MM: f64 = 1.25;

/// The words on a drawing.
struct Labels {
    plan: String,
    section: String,
    cope: String,
    drag: String,
    pour: String,
}

impl Labels {
    fn of(drawing: &Drawing, language: Language) -> Labels {
        let sized = |id, mm| language.say(&Said::new(id).with("mm", figure(mm)));
        Labels {
            plan: language.word("drawing-plan"),
            section: language.word("drawing-section"),
            cope: sized("drawing-cope", drawing.cope_mm),
            drag: sized("drawing-drag", drawing.drag_mm),
            pour: sized("drawing-pour", drawing.pour_height_mm),
        }
    }

    /// From the plan to the section, with the height of the pour before it.
    fn between_mm(&self) -> f64 {
        BETWEEN_MM.max(2.0 * OFF_MM + GAP_MM + wide_mm(&self.pour))
    }

    /// Right of the section, where cope and drag are told.
    fn right_mm(&self) -> f64 {
        RIGHT_MM.max(OFF_MM + GAP_MM + wide_mm(&self.cope).max(wide_mm(&self.drag)))
    }
}

fn wide_mm(words: &str) -> f64 {
    words.chars().count() as f64 * LETTER_MM
}

/// A finished drawing.
pub(crate) struct Picture {
    /// The SVG.
    pub(crate) svg: String,
    /// The scale it is drawn at.
    pub(crate) scale: Scale,
    /// Width and height on paper, mm.
    pub(crate) size_mm: [f64; 2],
}

/// The largest scale at which plan and section, with their dimensions, fit the room (width and
/// height on paper, mm); the smallest scale there is when none does.
pub fn scale_for(drawing: &Drawing, room_mm: [f64; 2], language: Language) -> Scale {
    let labels = Labels::of(drawing, language);
    let fits = |smaller: &f64| {
        let size = size_on_paper(drawing, &labels, Scale { smaller: *smaller });
        size[0] <= room_mm[0] && size[1] <= room_mm[1]
    };
    let smallest = SCALES[SCALES.len() - 1];
    Scale {
        smaller: SCALES.into_iter().find(fits).unwrap_or(smallest),
    }
}

/// The largest scale at which something of this size, mm, fits the room; the smallest there is
/// when none does.
pub(crate) fn scale_within(size_mm: [f64; 2], room_mm: [f64; 2]) -> Scale {
    let fits = |smaller: &f64| (0..2).all(|axis| size_mm[axis] / smaller <= room_mm[axis]);
    Scale {
        smaller: SCALES
            .into_iter()
            .find(fits)
            .unwrap_or(SCALES[SCALES.len() - 1]),
    }
}

/// Plan and section in the room given, as SVG in mm of paper, and their scale.
///
/// # Errors
///
/// [`SheetError::Drawing`] when the drawing has no size that can be drawn.
pub fn svg(
    drawing: &Drawing,
    room_mm: [f64; 2],
    language: Language,
) -> Result<(String, Scale), SheetError> {
    draw(drawing, room_mm, language).map(|picture| (picture.svg, picture.scale))
}

/// Where the plan of a drawing lies on paper, so that a place on the joint is found there.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlanOnPaper {
    /// The front left inside corner of the flask, from the left and from the top, mm of paper.
    pub corner_mm: [f64; 2],
    /// Width and height of the whole drawing, mm of paper.
    pub size_mm: [f64; 2],
    /// How much smaller than life it is.
    pub scale: Scale,
}

/// Where the plan lies in the drawing that [`svg`] makes of the same.
pub fn plan_on_paper(drawing: &Drawing, room_mm: [f64; 2], language: Language) -> PlanOnPaper {
    let scale = scale_for(drawing, room_mm, language);
    let size_mm = size_on_paper(drawing, &Labels::of(drawing, language), scale);
    PlanOnPaper {
        corner_mm: [LEFT_MM + WALL_MM, size_mm[1] - BELOW_MM - WALL_MM],
        size_mm,
        scale,
    }
}

/// Draws plan and section in the room given.
pub(crate) fn draw(
    drawing: &Drawing,
    room_mm: [f64; 2],
    language: Language,
) -> Result<Picture, SheetError> {
    check(drawing)?;
    let scale = scale_for(drawing, room_mm, language);
    let labels = Labels::of(drawing, language);
    let size_mm = size_on_paper(drawing, &labels, scale);
    let mut pen = Pen::new();
    plan(&mut pen, drawing, &labels, scale, size_mm[1] - BELOW_MM);
    section(&mut pen, drawing, &labels, scale, size_mm[1] - BELOW_MM);
    Ok(Picture {
        svg: pen.finish(size_mm),
        scale,
        size_mm,
    })
}

/// Refuses lengths that have no place on paper.
fn check(drawing: &Drawing) -> Result<(), SheetError> {
    let lengths = [
        ("the inside length of the flask", drawing.flask_inside_mm[0]),
        ("the inside width of the flask", drawing.flask_inside_mm[1]),
        ("the height of the cope", drawing.cope_mm),
        ("the depth of the drag", drawing.drag_mm),
    ];
    for (what, value) in lengths {
        if !(value > 0.0 && value < LONGEST_MM) {
            return Err(SheetError::Drawing { what, value });
        }
    }
    let pieces = drawing.pieces.iter();
    let pieces = pieces.flat_map(|piece| piece.plan.iter().chain(&piece.cut).chain(&piece.beside));
    let castings = drawing.outline.iter().chain(&drawing.section);
    let points = castings.chain(pieces).flatten().flatten();
    let joint = drawing.joint.iter().flat_map(|joint| &joint.section);
    let points = points.chain(joint.flatten());
    let mut places = points.chain([&drawing.pour_height_mm]);
    match places.find(|place| !(-LONGEST_MM..LONGEST_MM).contains(*place)) {
        Some(&value) => Err(SheetError::Drawing {
            what: "a place in plan or section",
            value,
        }),
        None => Ok(()),
    }
}

/// Width and height of the whole drawing on paper.
fn size_on_paper(drawing: &Drawing, labels: &Labels, scale: Scale) -> [f64; 2] {
    let [length, width] = drawing.flask_inside_mm.map(|side| scale.on_paper(side));
    let above_joint = scale.on_paper(drawing.cope_mm.max(drawing.pour_height_mm));
    let section = above_joint + scale.on_paper(drawing.drag_mm);
    let plan = width + 2.0 * WALL_MM;
    [
        LEFT_MM + 2.0 * (length + 2.0 * WALL_MM) + labels.between_mm() + labels.right_mm(),
        ABOVE_MM + plan.max(section) + BELOW_MM,
    ]
}

/// Shapes moved from flask to paper.
fn placed(shapes: &[Vec<[f64; 2]>], on_paper: impl Fn([f64; 2]) -> Spot) -> Vec<Vec<Spot>> {
    shapes
        .iter()
        .map(|shape| shape.iter().map(|&point| on_paper(point)).collect())
        .collect()
}

/// A length in mm as a drawing shows it: whole where it is whole, else to the tenth.
fn figure(length_mm: f64) -> String {
    let tenths = (length_mm * 10.0).round() / 10.0;
    format!("{tenths}")
}

#[cfg(test)]
mod tests {
    use job::words::Language;

    use super::{Drawing, draw, scale_for};

    fn flask(length: f64, width: f64) -> Drawing {
        Drawing {
            flask_inside_mm: [length, width],
            cope_mm: 70.0,
            drag_mm: 70.0,
            outline: vec![vec![[10.0, 10.0], [50.0, 10.0], [50.0, 40.0]]],
            section: vec![vec![[10.0, -5.0], [50.0, -5.0], [50.0, 20.0]]],
            pour_height_mm: 90.0,
            pieces: Vec::new(),
            joint: None,
        }
    }

    #[test]
    fn the_scale_is_the_largest_that_fits() {
        let wide = |length, room| scale_for(&flask(length, length), room, Language::Uk).to_string();
        assert_eq!(wide(40.0, [400.0, 300.0]), "1:1");
        assert_eq!(wide(260.0, [184.0, 92.0]), "1:5");
        // Two views of 140 / 2.5 + 5 mm and 58 mm around them make 180 mm; at 1:2 they make 208.
        assert_eq!(wide(140.0, [184.0, 92.0]), "1:2.5");
        assert_eq!(wide(140.0, [179.0, 92.0]), "1:4");
        assert_eq!(wide(3000.0, [184.0, 92.0]), "1:20");
    }

    #[test]
    fn a_picture_stays_in_its_room() {
        for length in [60.0, 200.0, 333.0, 800.0] {
            let picture = draw(&flask(length, 0.8 * length), [184.0, 62.0], Language::Uk).unwrap();
            assert!(
                picture.size_mm[0] <= 184.0 && picture.size_mm[1] <= 62.0,
                "{length}"
            );
        }
    }

    #[test]
    fn a_flask_without_size_is_refused() {
        for length in [0.0, -1.0, f64::NAN, f64::INFINITY] {
            let fault = draw(&flask(length, 100.0), [184.0, 62.0], Language::Uk)
                .err()
                .unwrap();
            assert!(fault.to_string().contains("inside length"), "{fault}");
        }
    }
}
