//! The face at which cope and drag meet: flat, or along the parting line of each casting.
//!
//! Where it wanders it leaves its level only within a cell around each casting, as wide as walls,
//! runners, sprue and other castings leave it room. All of them, and the edges of the flask, keep a
//! flat joint; only a gate has to cross the cell.

use pattern::boolean::Body;
use pattern::draw::blocks::blocks as halves;
use pattern::draw::joint::heights::Heights;
use pattern::draw::joint::{Joint, STEEPEST, joint_at};
use pattern::draw::parting::{FLAT_ENOUGH, parting_line, parting_line_at};
use pattern::draw::{DrawError, DrawSettings};
use pattern::mesh::Mesh;
use pattern::vector::{Vector, add};

use crate::bars::block;
use crate::cell::{Cell, Rectangle};
use crate::error::MouldError;
use crate::given::{Given, Half, Parting};
use crate::lie::Lying;
use crate::piece::Piece;
use crate::plan_view::{Point, along, way_to};

/// A joint that leaves its level, in the mould.
#[derive(Clone, Debug, PartialEq)]
pub struct Wandering {
    /// Its heights over the whole flask.
    pub joint: Joint,
    /// Where it meets the castings and the prints of their cores: closed lines, mm.
    pub lines: Vec<Vec<Vector>>,
    /// Where it could lie flat instead, mm above the level it has along the walls.
    pub flat_at_mm: Option<f64>,
}

/// The joint of the whole flask.
pub(crate) struct Face {
    /// How it wanders, if it does.
    pub(crate) wandering: Option<Wandering>,
    /// Drag and cope before anything is taken out of them.
    pub(crate) blocks: [Body; 2],
}

/// Columns along the longer side of a casting: half as many as a look at its draw takes, and as
/// many where no joint is found so. More, and the sand has ten times as many facets as the casting
/// in it; fewer, and the joint misses ledges as narrow as a wall.
const COLUMNS: [usize; 2] = [160, 320];

/// The way in which the cope is lifted.
const UP: Vector = [0.0, 0.0, 1.0];

/// Off the level by less than this, mm, the joint is on it: rounding.
const LEVEL_MM: f64 = 1e-6;

/// The joint of a mould in which these rectangles, runners and sprue, want it flat.
///
/// # Errors
///
/// A casting along which no sand holds a joint.
pub(crate) fn face(
    given: &Given,
    castings: &[Lying],
    kept_flat: &[Rectangle],
) -> Result<Face, MouldError> {
    let wanted = match (given.parting, castings) {
        (Parting::AlongTheLine, [first, others @ ..]) => {
            wandering(given, first, others, kept_flat)?
        }
        _ => None,
    };
    let joint = wanted.as_ref().map(|wandering| &wandering.joint);
    Ok(Face {
        blocks: blocks(given, joint)?,
        wandering: wanted,
    })
}

impl Face {
    /// Height of the joint over a place, mm.
    pub(crate) fn height_mm(&self, at: Point) -> f64 {
        let wandering = self.wandering.as_ref();
        wandering.map_or(0.0, |wandering| wandering.joint.height_mm(at))
    }

    /// How far the joint goes into a half of the mould, mm above its level.
    pub(crate) fn furthest_mm(&self, half: Half) -> f64 {
        let heights = self
            .wandering
            .iter()
            .flat_map(|wandering| &wandering.joint.heights.nodes_mm);
        heights.fold(0.0, |furthest: f64, height| match half {
            Half::Cope => furthest.max(*height),
            Half::Drag => furthest.min(*height),
        })
    }

    /// The block of a half of the mould.
    pub(crate) fn block(&self, half: Half) -> &Body {
        match half {
            Half::Drag => &self.blocks[0],
            Half::Cope => &self.blocks[1],
        }
    }

    /// Where the joint lies furthest off its level under a bar, and at which height, if it does.
    pub(crate) fn off_level(&self, [from, to]: [Point; 2], width_mm: f64) -> Option<Vector> {
        self.wandering.as_ref()?;
        let (way, length) = way_to(from, to);
        let aside = [-way[1], way[0]];
        let steps = (length / STEP_MM).ceil().max(1.0) as usize;
        let rows = (width_mm / STEP_MM).ceil().max(1.0) as usize;
        let places = (0..=steps).flat_map(|step| (0..=rows).map(move |row| (step, row)));
        let heights = places.map(|(step, row)| {
            let on = along(from, way, length * step as f64 / steps as f64);
            let [x, y] = along(on, aside, width_mm * (row as f64 / rows as f64 - 0.5));
            [x, y, self.height_mm([x, y])]
        });
        let furthest = heights.max_by(|a, b| a[2].abs().total_cmp(&b[2].abs()));
        furthest.filter(|place| place[2].abs() > LEVEL_MM)
    }
}

/// Places looked at under a piece are this far apart, mm: as fine as sand is cut.
const STEP_MM: f64 = 1.0;

/// The joint where it has to wander.
fn wandering(
    given: &Given,
    first: &Lying,
    others: &[Lying],
    kept_flat: &[Rectangle],
) -> Result<Option<Wandering>, MouldError> {
    let cell = Cell::around(given, first, others, kept_flat);
    let whole = with_cores(first, &cell)?;
    let settings = DrawSettings::suiting(&whole);
    let looked = |error: DrawError| MouldError::Parting {
        error: error.into(),
        flat_at_mm: None,
    };
    let line = parting_line_at(&whole, UP, 0.0, &settings).map_err(looked)?;
    if line.level.flat_share >= FLAT_ENOUGH {
        return Ok(None);
    }
    let best = parting_line(&whole, UP, &settings).map_err(looked)?;
    let is_flat = best.level.flat_share >= FLAT_ENOUGH;
    let flat_at_mm = is_flat.then_some(best.level.at_mm);
    let flask = [
        [cell.low[0], cell.low[1], -given.flask.drag.as_mm()],
        [cell.high[0], cell.high[1], given.flask.cope.as_mm()],
    ];
    let led_out = |columns: usize| {
        let settings = DrawSettings {
            columns,
            ..settings
        };
        joint_at(&whole, UP, flask, 0.0, STEEPEST, &settings)
    };
    let own = led_out(COLUMNS[0]).or_else(|_| led_out(COLUMNS[1]));
    let own = own.map_err(|error| MouldError::Parting { error, flat_at_mm })?;
    let steps: Vec<Point> = std::iter::once(first)
        .chain(others)
        .map(|lying| [0, 1].map(|axis| lying.bounds[0][axis] - first.bounds[0][axis]))
        .collect();
    let moved = |[across, along]: &Point| {
        let step = [*across, *along, 0.0];
        let moved = move |line: &Vec<Vector>| line.iter().map(|at| add(*at, step)).collect();
        line.loops.iter().map(moved).collect::<Vec<_>>()
    };
    Ok(Some(Wandering {
        joint: spread(given, &own, &steps),
        lines: steps.iter().flat_map(moved).collect(),
        flat_at_mm,
    }))
}

/// The casting as its pattern is: hollows filled, prints put on, as far as they lie in its cell.
fn with_cores(lying: &Lying, cell: &Cell) -> Result<Mesh, MouldError> {
    if lying.cores.is_empty() {
        return Ok(lying.mesh.clone());
    }
    let wrong = |error| MouldError::Join {
        piece: Piece::Casting(lying.number),
        error,
    };
    let mut whole = lying.body.clone();
    for core in &lying.cores {
        whole = whole.with(&core.body).map_err(wrong)?;
    }
    let [low, high] = whole.mesh().bounds();
    let [from, to] = cell.within(&lying.bounds);
    let room = block(
        [from[0], from[1], low[2] - 1.0],
        [to[0], to[1], high[2] + 1.0],
    );
    let room = Body::of(&room).map_err(wrong)?;
    Ok(whole.common_with(&room).map_err(wrong)?.mesh())
}

/// The joint of one casting laid around each of them; `steps` are their ways from the first.
fn spread(given: &Given, own: &Joint, steps: &[Point]) -> Joint {
    let flask = &given.flask;
    let inside = [flask.length, flask.width].map(|side| side.as_mm());
    let lines = [&own.heights.xs_mm, &own.heights.ys_mm];
    let laid = [0, 1].map(|axis| laid_lines(lines[axis], steps, axis));
    let with_walls = |axis: usize| -> Vec<f64> {
        let inner = laid[axis].iter().map(|line| line.at_mm);
        [vec![0.0], inner.collect(), vec![inside[axis]]].concat()
    };
    let (xs_mm, ys_mm) = (with_walls(0), with_walls(1));
    let nx = own.heights.xs_mm.len();
    let height = |across: &Line, along: &Line| {
        let is_there = steps
            .iter()
            .any(|step| step[0] == across.step_mm && step[1] == along.step_mm);
        match is_there {
            true => own.heights.nodes_mm[across.number + nx * along.number],
            false => 0.0,
        }
    };
    let mut nodes_mm = vec![0.0; xs_mm.len() * ys_mm.len()];
    for (row, along) in laid[1].iter().enumerate() {
        for (file, across) in laid[0].iter().enumerate() {
            nodes_mm[file + 1 + xs_mm.len() * (row + 1)] = height(across, along);
        }
    }
    let [low, high] = [-flask.drag.as_mm(), flask.cope.as_mm()];
    Joint {
        flask: [[0.0, 0.0, low], [inside[0], inside[1], high]],
        heights: Heights {
            xs_mm,
            ys_mm,
            nodes_mm,
        },
        ..own.clone()
    }
}

/// A line of the joint of one casting as it is laid in the flask.
struct Line {
    at_mm: f64,
    /// Which line of the casting's own joint.
    number: usize,
    /// How far the casting lies from the first one.
    step_mm: f64,
}

fn laid_lines(own: &[f64], steps: &[Point], axis: usize) -> Vec<Line> {
    let mut apart: Vec<f64> = steps.iter().map(|step| step[axis]).collect();
    apart.sort_by(f64::total_cmp);
    apart.dedup();
    let of_step = |step_mm: f64| {
        own.iter().enumerate().map(move |(number, at)| Line {
            at_mm: at + step_mm,
            number,
            step_mm,
        })
    };
    apart.into_iter().flat_map(of_step).collect()
}

/// Drag and cope before anything is taken out.
fn blocks(given: &Given, joint: Option<&Joint>) -> Result<[Body; 2], MouldError> {
    let flask = &given.flask;
    let (x, y) = (flask.length.as_mm(), flask.width.as_mm());
    let [drag, cope] = match joint {
        Some(joint) => halves(joint),
        None => [
            block([0.0, 0.0, -flask.drag.as_mm()], [x, y, 0.0]),
            block([0.0; 3], [x, y, flask.cope.as_mm()]),
        ],
    };
    let body = |mesh: &Mesh, piece: Piece| {
        Body::of(mesh).map_err(|error| MouldError::Join { piece, error })
    };
    Ok([body(&drag, Piece::Drag)?, body(&cope, Piece::Cope)?])
}
