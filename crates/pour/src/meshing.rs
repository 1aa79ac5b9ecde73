//! The mould cut into cells: how large a cell is, what fills it, how much metal and surface each
//! cell at the rim truly has.
//!
//! The box of equal cells lies around the metal; the sand beyond it is no part of it, since whoever
//! follows the heat goes on with wider and wider cells there. The top of the cope lies on faces of
//! cells, with one sheet of air above it.

use pattern::cells::Cells;
use pattern::mesh::Mesh;
use rigging::mould::Mould;
use rigging::piece::Piece;
use thiserror::Error;

use crate::cells::{MouldCells, Stuff};

/// How a mould is to be cut.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Meshing {
    /// The thinnest wall that matters, mm.
    pub wall_mm: f64,
    /// Cells wanted across it.
    pub across: f64,
    /// Most cells of the box.
    pub budget: f64,
    /// Whether cells at the rim are taken as full, as a staircase: to check by.
    pub staircase: bool,
    /// Whether the cells along x and y are even in number, so that a plane through their middle
    /// lies between cells.
    pub even: bool,
    /// Low and high corner of what has to lie within the cells beside the metal, mm: chills.
    pub also_mm: Option<[[f64; 3]; 2]>,
}

/// Cells across the thinnest wall. With three the front has hardly a middle and the time of a plate
/// comes out a tenth off; with six it takes six times as long as with four.
pub const ACROSS: f64 = 4.0;

/// Cells of the box where nobody says otherwise: a real part within some ten seconds of two cores.
pub const BUDGET: f64 = 700_000.0;

/// Fewest cells across a wall for its times to be worth telling without a warning.
pub const FEWEST_ACROSS: f64 = 3.0;

/// A mould in cells, with what the heat needs to know beside.
#[derive(Clone, Debug)]
pub struct Meshed {
    /// The cells.
    pub cells: MouldCells,
    /// The pieces of metal.
    pub pieces: Vec<Piece>,
    /// To which of them each cell of metal belongs; for the others it means nothing.
    pub piece: Vec<u8>,
    /// True surface that each cell of metal carries, mm².
    pub surface_mm2: Vec<f32>,
    /// Cells of chills, each with how much of it the chill fills.
    pub chilled: Vec<(usize, f32)>,
    /// Inside of the flask, mm: low and high corner.
    pub flask_mm: [[f64; 3]; 2],
    /// Metal in the mould by its solids, mm³.
    pub solid_mm3: f64,
    /// Metal in the cells, mm³.
    pub held_mm3: f64,
    /// Cells across the thinnest wall that matters.
    pub across_wall: f64,
    /// Whether both sides of the middle across x and across y are the same, so that only the low
    /// one is followed.
    pub halved: [bool; 2],
}

/// Why a mould cannot be cut into cells.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum MeshingError {
    /// No size to go by.
    #[error(
        "the thinnest wall has to be a length above 0 mm and the cells wanted across it above 0: \
         {wall_mm} mm, {across} cells"
    )]
    Wall {
        /// The wall.
        wall_mm: f64,
        /// Cells across it.
        across: f64,
    },
    /// A number of cells that cannot be worked with.
    #[error(
        "{budget:.0} cells: give a number from {LEAST_BUDGET:.0} to {MOST_BUDGET:.0}; {MOST_BUDGET:.0} \
         take about 3 GiB of memory and an hour on two cores"
    )]
    Budget {
        /// What was wanted.
        budget: f64,
    },
    /// Metal outside of the sand.
    #[error(
        "metal reaches {through_mm:.1} mm beyond the inside of the flask at ({:.0}, {:.0}, {:.0}) \
         mm, where there is no sand to freeze against: take a larger flask",
        place_mm[0], place_mm[1], place_mm[2]
    )]
    Outside {
        /// Where.
        place_mm: [f64; 3],
        /// How far.
        through_mm: f64,
    },
    /// Nothing was filled.
    #[error("no cell of {size_mm:.1} mm holds metal: every wall is thinner than the cells")]
    Empty {
        /// Size of a cell.
        size_mm: f64,
    },
}

/// Fewest cells that make sense of any mould.
pub const LEAST_BUDGET: f64 = 2_000.0;
/// Most cells that fit a small machine.
pub const MOST_BUDGET: f64 = 60_000_000.0;

/// Sand around the metal in cells of the same size: enough for the steepest part of its warming.
const MARGIN: usize = 3;

/// Cuts a mould into cells.
pub fn meshed(mould: &Mould, meshing: &Meshing) -> Result<Meshed, MeshingError> {
    let size_mm = size_mm(mould, meshing)?;
    cut(mould, meshing, size_mm)
}

/// Edge of a cell, mm: by the thinnest wall, wider where the budget wants it.
pub fn size_mm(mould: &Mould, meshing: &Meshing) -> Result<f64, MeshingError> {
    let Meshing {
        wall_mm, across, ..
    } = *meshing;
    let sound = |figure: f64| figure.is_finite() && figure > 0.0;
    if !sound(wall_mm) || !sound(across) {
        return Err(MeshingError::Wall { wall_mm, across });
    }
    if !(LEAST_BUDGET..=MOST_BUDGET).contains(&meshing.budget) {
        let budget = meshing.budget;
        return Err(MeshingError::Budget { budget });
    }
    let [low, high] = within(mould, meshing);
    let mut size_mm = wall_mm / across;
    // The margin grows with the cells, so that the size is closed in upon.
    for _ in 0..40 {
        let sides = [0, 1, 2].map(|axis| high[axis] - low[axis] + 2.0 * MARGIN as f64 * size_mm);
        let cells = sides.iter().product::<f64>() / size_mm.powi(3);
        if cells <= meshing.budget {
            break;
        }
        size_mm *= (cells / meshing.budget).cbrt().max(1.001);
    }
    Ok(size_mm)
}

/// Cuts a mould into cells of this size.
pub fn cut(mould: &Mould, meshing: &Meshing, size_mm: f64) -> Result<Meshed, MeshingError> {
    let flask_mm = flask(mould);
    let solid = &mould.cavity.mesh;
    stays_inside(solid, flask_mm)?;
    let (origin_mm, count) = lattice(within(mould, meshing), flask_mm, size_mm, meshing.even);
    let filled = Cells::fill_box(solid, size_mm, origin_mm, count);
    let whole = size_mm.powi(3);
    let all: usize = count.iter().product();
    let mut cells = MouldCells {
        size_mm,
        count,
        origin_mm,
        stuff: vec![Stuff::Sand; all],
        metal: vec![0.0; all],
    };
    let mut surface_mm2 = vec![0.0; all];
    for cell in (0..all).filter(|&cell| filled.is_solid(cell)) {
        cells.stuff[cell] = Stuff::Metal;
        cells.metal[cell] = match meshing.staircase {
            true => 1.0,
            false => (filled.volume_mm3[cell] / whole) as f32,
        };
        surface_mm2[cell] = filled.area_mm2[cell] as f32;
    }
    if !meshing.staircase {
        merge_slivers(&mut cells, &mut surface_mm2);
        even_out(&mut cells, &surface_mm2, mould.cavity.volume.as_mm3());
    }
    for core in &mould.cores {
        for cell in inside(&core.mesh, &cells) {
            if cells.stuff[cell] == Stuff::Sand {
                cells.stuff[cell] = Stuff::Core;
            }
        }
    }
    let sheet = count[0] * count[1];
    cells.stuff[all - sheet..].fill(Stuff::Air);
    cells.metal[all - sheet..].fill(0.0);
    let held_mm3 = (0..all).map(|cell| cells.metal_mm3(cell)).sum();
    if held_mm3 <= 0.0 {
        return Err(MeshingError::Empty { size_mm });
    }
    let (pieces, piece) = pieces(mould, &cells);
    Ok(Meshed {
        pieces,
        piece,
        surface_mm2,
        chilled: Vec::new(),
        flask_mm,
        solid_mm3: mould.cavity.volume.as_mm3(),
        held_mm3,
        across_wall: meshing.wall_mm / size_mm,
        halved: [false; 2],
        cells,
    })
}

/// What the cells are laid around: the metal, and what else has to lie within, as far as the flask.
fn within(mould: &Mould, meshing: &Meshing) -> [[f64; 3]; 2] {
    let [mut low, mut high] = mould.cavity.mesh.bounds();
    let [floor, roof] = flask(mould);
    if let Some([from, to]) = meshing.also_mm {
        for axis in 0..3 {
            low[axis] = low[axis].min(from[axis].max(floor[axis]));
            high[axis] = high[axis].max(to[axis].min(roof[axis]));
        }
    }
    [low, high]
}

/// Inside of the flask as its two blocks of sand show it.
fn flask(mould: &Mould) -> [[f64; 3]; 2] {
    let ([low, top], [bottom, high]) = (mould.cope.mesh.bounds(), mould.drag.mesh.bounds());
    let least = |axis: usize| low[axis].min(bottom[axis]);
    let most = |axis: usize| top[axis].max(high[axis]);
    [[0, 1, 2].map(least), [0, 1, 2].map(most)]
}

/// A hair that rounding may put a skin beyond the flask, mm.
const HAIR_MM: f64 = 0.01;

fn stays_inside(solid: &Mesh, [floor, roof]: [[f64; 3]; 2]) -> Result<(), MeshingError> {
    for &place_mm in &solid.points {
        let beyond = |axis: usize| {
            let under = floor[axis] - place_mm[axis];
            under.max(place_mm[axis] - roof[axis])
        };
        let through_mm = (0..3).map(beyond).fold(f64::NEG_INFINITY, f64::max);
        if through_mm > HAIR_MM {
            return Err(MeshingError::Outside {
                place_mm,
                through_mm,
            });
        }
    }
    Ok(())
}

/// Low corner and counts of the box: around the metal, within the flask, its top but one sheet at
/// the top of the cope.
fn lattice(
    [low, high]: [[f64; 3]; 2],
    [floor, roof]: [[f64; 3]; 2],
    size_mm: f64,
    even: bool,
) -> ([f64; 3], [usize; 3]) {
    let (mut origin_mm, mut count) = ([0.0; 3], [0; 3]);
    for axis in 0..2 {
        let span = high[axis] - low[axis];
        let across = match even {
            true => 2.0 * (0.5 * span / size_mm).ceil().max(1.0),
            false => (span / size_mm).ceil().max(1.0),
        };
        // Centred, so that a symmetric part meets symmetric cells.
        let from = (low[axis] + high[axis] - across * size_mm) / 2.0;
        let room = |way: f64| ((way / size_mm).floor().max(0.0) as usize).min(MARGIN);
        let before = room(from - floor[axis]);
        let after = room(roof[axis] - from - across * size_mm);
        let (before, after) = match even {
            true => (before.min(after), before.min(after)),
            false => (before, after),
        };
        origin_mm[axis] = from - before as f64 * size_mm;
        count[axis] = across as usize + before + after;
    }
    let depth = ((roof[2] - low[2]) / size_mm).ceil();
    let room = ((roof[2] - floor[2]) / size_mm).floor().max(depth);
    let layers = (depth + MARGIN as f64).min(room);
    origin_mm[2] = roof[2] - layers * size_mm;
    count[2] = layers as usize + 1;
    (origin_mm, count)
}

/// Share of metal below which a cell is given to a neighbour: a cell of a tenth would cut the step
/// of the solver to a tenth, and half a cell is what the staircase rounds to.
const SLIVER: f32 = 0.3;

/// Gives cells with hardly any metal to the fullest neighbour, where there is one.
fn merge_slivers(cells: &mut MouldCells, surface_mm2: &mut [f32]) {
    let slivers: Vec<usize> = (0..cells.metal.len())
        .filter(|&cell| cells.stuff[cell] == Stuff::Metal && cells.metal[cell] < SLIVER)
        .collect();
    for cell in slivers {
        let fullest = cells
            .neighbours(cell)
            .filter(|&next| cells.stuff[next] == Stuff::Metal && cells.metal[next] >= SLIVER)
            .max_by(|&one, &other| cells.metal[one].total_cmp(&cells.metal[other]));
        if let Some(fullest) = fullest {
            cells.metal[fullest] += cells.metal[cell];
            surface_mm2[fullest] += surface_mm2[cell];
            cells.metal[cell] = 0.0;
            surface_mm2[cell] = 0.0;
            cells.stuff[cell] = Stuff::Sand;
        }
    }
}

/// Most of the metal that is evened out: more means that walls are missing, which is to be told.
const EVENED: f64 = 0.02;

/// Spreads the metal that rounding at the rim has made or lost over the skin. A cell from which
/// more would be cut off than it holds keeps a little: on a ball that adds up to half a per cent.
fn even_out(cells: &mut MouldCells, surface_mm2: &[f32], solid_mm3: f64) {
    let held_mm3: f64 = (0..cells.metal.len())
        .map(|cell| cells.metal_mm3(cell))
        .sum();
    let skin_mm2: f64 = surface_mm2.iter().map(|&area| f64::from(area)).sum();
    let missing_mm3 = solid_mm3 - held_mm3;
    if skin_mm2 <= 0.0 || missing_mm3.abs() > EVENED * solid_mm3 {
        return;
    }
    let whole = cells.size_mm.powi(3);
    for (metal, &area) in cells.metal.iter_mut().zip(surface_mm2) {
        if *metal > 0.0 {
            let more = missing_mm3 / whole * f64::from(area) / skin_mm2;
            *metal = (*metal + more as f32).max(0.5 * SLIVER.min(*metal));
        }
    }
}

/// Cells whose middle lies inside a mesh.
fn inside(mesh: &Mesh, cells: &MouldCells) -> Vec<usize> {
    let [low, high] = mesh.bounds();
    let at = |mm: f64, axis: usize| (mm - cells.origin_mm[axis]) / cells.size_mm;
    let from = [0, 1, 2].map(|axis: usize| at(low[axis], axis).floor().max(0.0) as usize);
    let to = [0, 1, 2].map(|axis: usize| {
        let end = at(high[axis], axis).ceil().max(0.0) as usize;
        end.min(cells.count[axis])
    });
    if (0..3).any(|axis| from[axis] >= to[axis]) {
        return Vec::new();
    }
    let count = [0, 1, 2].map(|axis| to[axis] - from[axis]);
    let origin_mm = [0, 1, 2].map(|axis| cells.origin_mm[axis] + from[axis] as f64 * cells.size_mm);
    let filled = Cells::fill_box(mesh, cells.size_mm, origin_mm, count);
    let holds = |index: &usize| filled.is_solid(*index);
    (0..count.iter().product())
        .filter(holds)
        .map(|index| {
            let [i, j, k] = filled.cell(index);
            cells.index([i + from[0], j + from[1], k + from[2]])
        })
        .collect()
}

/// Which piece each cell of metal belongs to: castings first, since feeders and gates reach into
/// them, then the rigging in its order backwards, feeders before gates before runners.
fn pieces(mould: &Mould, cells: &MouldCells) -> (Vec<Piece>, Vec<u8>) {
    const NONE: u8 = u8::MAX;
    let solids = mould.castings.iter().chain(mould.rigging.iter().rev());
    let mut piece = vec![NONE; cells.stuff.len()];
    let mut names = Vec::new();
    for solid in solids.take(usize::from(NONE)) {
        let number = names.len() as u8;
        names.push(solid.piece.clone());
        for cell in inside(&solid.mesh, cells) {
            if cells.stuff[cell] == Stuff::Metal && piece[cell] == NONE {
                piece[cell] = number;
            }
        }
    }
    // What no piece holds by its middle takes the piece of a neighbour.
    let is_left =
        |piece: &[u8], cell: &usize| cells.stuff[*cell] == Stuff::Metal && piece[*cell] == NONE;
    let mut left: Vec<usize> = (0..piece.len())
        .filter(|cell| is_left(&piece, cell))
        .collect();
    while !left.is_empty() {
        let before = left.len();
        for &cell in &left {
            let beside = cells.neighbours(cell).map(|next| piece[next]);
            piece[cell] = beside.min().unwrap_or(NONE);
        }
        left.retain(|cell| is_left(&piece, cell));
        if left.len() == before {
            // An island that belongs to nothing: what was poured last.
            let last = names.len().saturating_sub(1) as u8;
            left.drain(..).for_each(|cell| piece[cell] = last);
        }
    }
    (names, piece)
}
