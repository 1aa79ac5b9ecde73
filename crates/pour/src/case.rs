//! The cells of a mould as a case of heat: sand out to the walls of the flask, cells at the rim
//! with the metal, the sand and the cooling surface they truly have.
//!
//! A staircase of cells has up to one and a half times the surface of the body it stands for, and
//! its steps lie up to half a cell beside the true skin. Where heat goes from metal into sand:
//!
//! 1. The sand's own way counts as it is: what flows along x through all steps across x adds up to
//!    the true flow, so that conduction needs no correction for the surface.
//! 2. The contact counts over the true surface: its resistance is divided by true over stepped.
//! 3. The sand's way is as long as from the true skin to the middle of the cell: a rim cell with
//!    more metal than a cell holds has its skin nearer to the sand, one with less farther off.
//!
//! The solver takes an area for each face, not a resistance: the area is chosen so that face and
//! both half cells come to the resistance wanted.

use mould::feeding::chill::chill_metals;
use solver::case::{Case, Condition, Contact, Partial};
use solver::grid::Grid;
use solver::material::Material;

use crate::cells::{MouldCells, Stuff};
use crate::chill::chill_tables;
use crate::meshing::Meshed;
use crate::tables::SandHeat;

/// What fills the mould, as far as heat is concerned.
#[derive(Clone, Debug, PartialEq)]
pub struct Filling {
    /// The metal.
    pub metal: Material,
    /// The sand of the mould.
    pub sand: SandHeat,
    /// The sand of cores.
    pub core: SandHeat,
    /// Contact of metal with either, W/(m² K).
    pub contact_w_m2k: f64,
    /// Contact of metal with a chill, W/(m² K).
    pub chill_w_m2k: f64,
    /// Sand and air before the pour, °C.
    pub air_c: f64,
    /// From the flask and from open tops to the air, W/(m² K).
    pub to_air_w_m2k: f64,
}

/// Number of the sand of the mould among the materials of a case.
pub const SAND: u8 = 1;

/// Number of the sand of cores among the materials of a case.
pub const CORE: u8 = 2;

/// Numbers of the metal and of the first metal of chills, which all others follow; then come the
/// air over metal and that over sand.
const METAL: u8 = 0;
const CHILLS: u8 = 3;

fn over_metal() -> u8 {
    CHILLS + chill_metals().len() as u8
}

fn over_sand() -> u8 {
    over_metal() + 1
}

/// A case and where the equal cells stand in its grid.
#[derive(Clone, Debug)]
pub struct MouldCase {
    /// The case.
    pub case: Case,
    /// The cell of the grid in which the first of the equal cells stands.
    pub first: [usize; 3],
    /// Edge of the cells along x and y at which the mould is folded over, where only the low side
    /// of it is followed.
    pub folded: [Option<usize>; 2],
}

impl MouldCase {
    /// Where one of the equal cells stands among those of the case.
    pub fn of_cell(&self, cells: &MouldCells, cell: usize) -> usize {
        let at = cells.cell(cell);
        let mut place = [0, 1, 2].map(|axis| at[axis] + self.first[axis]);
        for (place, fold) in place.iter_mut().zip(self.folded) {
            if let Some(edge) = fold.filter(|edge| *place >= *edge) {
                *place = 2 * edge - 1 - *place;
            }
        }
        self.case.grid.index(place)
    }
}

/// Still air and a wall of the flask, W/(m² K): the low end (common practice, no source). Ten times
/// as much changes the freezing of a small casting by nothing that could be told.
pub const TO_AIR_W_M2K: f64 = 8.0;

/// Emissivity of an open surface of metal under its skin, and of sand (from memory).
const METAL_SHINES: f64 = 0.3;
const SAND_SHINES: f64 = 0.9;

/// The case of a mould. `start_c` gives the temperature of each cell of metal and of sand.
pub fn mould_case(meshed: &Meshed, filling: &Filling, start_c: &dyn Fn(usize) -> f32) -> MouldCase {
    let cells = &meshed.cells;
    let (grid, first) = grid(meshed);
    let mut built = MouldCase {
        case: Case {
            materials: materials(filling),
            voids: vec![open(METAL_SHINES, filling), open(SAND_SHINES, filling)],
            cells: vec![SAND; grid.cells()],
            contacts: contacts(filling),
            faces: [open(0.0, filling); 6],
            start_c: vec![filling.air_c as f32; grid.cells()],
            partial: None,
            grid,
        },
        first,
        folded: [None; 2],
    };
    for cell in 0..cells.stuff.len() {
        let at = built.of_cell(cells, cell);
        built.case.cells[at] = match cells.stuff[cell] {
            Stuff::Metal => METAL,
            Stuff::Sand => SAND,
            Stuff::Core => CORE,
            Stuff::Chill(metal) => CHILLS + metal,
            Stuff::Air => over_sand(),
        };
        if cells.stuff[cell] != Stuff::Air {
            built.case.start_c[at] = start_c(cell);
        }
    }
    open_the_top(&mut built.case);
    built.case.partial = Some(partial(meshed, filling, &built));
    built
}

fn open(emissivity: f64, filling: &Filling) -> Condition {
    Condition::Exchange {
        w_m2k: filling.to_air_w_m2k,
        celsius: filling.air_c,
        emissivity,
    }
}

fn materials(filling: &Filling) -> Vec<Material> {
    let mut materials = vec![
        filling.metal.clone(),
        filling.sand.table("sand"),
        filling.core.table("core sand"),
    ];
    materials.extend(chill_tables());
    materials
}

/// Metal touches sand and chills, each in its own way; a chill lies in its sand as if grown there.
fn contacts(filling: &Filling) -> Vec<Contact> {
    let contact = |other: u8, w_m2k: f64| Contact {
        between: [METAL, other],
        w_m2k,
    };
    let sand = [SAND, CORE].map(|sand| contact(sand, filling.contact_w_m2k));
    let chills = (CHILLS..over_metal()).map(|chill| contact(chill, filling.chill_w_m2k));
    sand.into_iter().chain(chills).collect()
}

/// The sheet of air over the whole flask, and which of it lies over metal.
fn open_the_top(case: &mut Case) {
    let [along, rows, planes] = case.grid.counts();
    let sheet = along * rows;
    let top = (planes - 1) * sheet;
    for at in top..top + sheet {
        case.cells[at] = match case.cells[at - sheet] {
            METAL => over_metal(),
            _ => over_sand(),
        };
    }
}

/// How much wider each cell of the far sand is than the one before: with a quarter the times differ
/// by less than a thousandth from those of equal cells.
const GROWTH: f64 = 1.25;

/// Widest cell of the far sand beside those around the metal.
const WIDEST: f64 = 8.0;

/// Edges of the cells: equal around the metal, wider and wider to the walls of the flask.
fn grid(meshed: &Meshed) -> (Grid, [usize; 3]) {
    let cells = &meshed.cells;
    let mut first = [0; 3];
    let edges_m = [0, 1, 2].map(|axis: usize| {
        let (size, count) = (cells.size_mm, cells.count[axis]);
        let from = cells.origin_mm[axis];
        let to = from + count as f64 * size;
        let before = widths(from - meshed.flask_mm[0][axis], size);
        // The sheet of air is the last above; there is no sand beyond it.
        let after = match axis {
            2 => Vec::new(),
            _ => widths(meshed.flask_mm[1][axis] - to, size),
        };
        first[axis] = before.len();
        let mut edge = from - before.iter().sum::<f64>();
        let mut edges = vec![edge];
        for width in before.iter().rev() {
            edge += width;
            edges.push(edge);
        }
        edges.extend((1..=count).map(|at| from + at as f64 * size));
        edge = to;
        for width in &after {
            edge += width;
            edges.push(edge);
        }
        edges.into_iter().map(|mm| mm * 1e-3).collect()
    });
    (Grid { edges_m }, first)
}

/// Widths of the cells that fill a way, the narrow ones first; none for less than half a cell.
fn widths(way_mm: f64, size_mm: f64) -> Vec<f64> {
    if way_mm < 0.5 * size_mm {
        return Vec::new();
    }
    let (mut widths, mut filled, mut next) = (Vec::new(), 0.0, size_mm);
    while filled < way_mm - 1e-9 {
        next = (next * GROWTH).min(WIDEST * size_mm);
        widths.push(next);
        filled += next;
    }
    // All a little narrower, so that the last ends at the wall.
    let times = way_mm / filled;
    widths.iter().map(|width| width * times).collect()
}

/// Narrowest and widest way from the true skin to the middle of a cell of sand, in cells: nearer
/// than a tenth the step would be cut, and the skin cannot lie farther than a whole cell.
const SAND_WAY: [f64; 2] = [0.1, 1.0];

/// Bounds of true over stepped surface: a diagonal wall has 0.58, and the samples of the skin
/// scatter around that.
const TRUE_OVER_STEPPED: [f64; 2] = [0.3, 2.0];

/// Least and most sand of a cell beside the metal.
const SAND_HELD: [f32; 2] = [0.4, 1.6];

fn partial(meshed: &Meshed, filling: &Filling, built: &MouldCase) -> Partial {
    let cells = &meshed.cells;
    let all = built.case.grid.cells();
    let mut partial = Partial {
        filled: vec![1.0; all],
        open: [vec![1.0; all], vec![1.0; all], vec![1.0; all]],
    };
    for (cell, held) in &meshed.chilled {
        partial.filled[built.of_cell(cells, *cell)] = *held;
    }
    let is_full = (0..cells.metal.len())
        .filter(|&cell| cells.stuff[cell] == Stuff::Metal)
        .all(|cell| cells.metal[cell] == 1.0);
    if is_full {
        // The staircase is taken as it stands.
        return partial;
    }
    let surface = true_over_stepped(meshed);
    let mut sand_lost = vec![0.0_f32; cells.metal.len()];
    let [nx, ny, _] = cells.count;
    let away = [1, nx, nx * ny];
    for cell in (0..cells.metal.len()).filter(|&cell| cells.stuff[cell] == Stuff::Metal) {
        let share = f64::from(cells.metal[cell]);
        let at = cells.cell(cell);
        partial.filled[built.of_cell(cells, cell)] = share as f32;
        let rim = Rim::of(meshed, cell, surface[cell]);
        for axis in 0..3 {
            for high in [0, 1] {
                let next = match high {
                    0 if at[axis] > 0 => cell - away[axis],
                    1 if at[axis] + 1 < cells.count[axis] => cell + away[axis],
                    _ => continue,
                };
                let lower = if high == 1 { next } else { cell };
                let open = &mut partial.open[axis][built.of_cell(cells, lower)];
                match cells.stuff[next] {
                    Stuff::Metal => *open = share.min(f64::from(cells.metal[next])).min(1.0) as f32,
                    Stuff::Air => *open = share.min(1.0) as f32,
                    // The contact holds nearly all of the resistance: it counts over the true skin.
                    Stuff::Chill(_) => *open = rim.surface as f32,
                    Stuff::Sand => {
                        *open = rim.open(filling, &filling.sand, cells.size_mm);
                        sand_lost[next] += rim.beyond as f32;
                    }
                    Stuff::Core => {
                        *open = rim.open(filling, &filling.core, cells.size_mm);
                        sand_lost[next] += rim.beyond as f32;
                    }
                }
            }
        }
    }
    let [least, most] = SAND_HELD;
    for cell in (0..sand_lost.len()).filter(|&cell| sand_lost[cell] != 0.0) {
        let held = (1.0 - sand_lost[cell]).clamp(least, most);
        partial.filled[built.of_cell(cells, cell)] = held;
    }
    partial
}

/// A cell of metal with sand beside it.
struct Rim {
    /// How far the true skin lies beyond each face to sand, in cells.
    beyond: f64,
    /// True over stepped surface.
    surface: f64,
}

impl Rim {
    fn of(meshed: &Meshed, cell: usize, surface: f32) -> Rim {
        let faces = faces_to_sand(&meshed.cells, cell);
        let beyond = match faces > 0.0 {
            true => (f64::from(meshed.cells.metal[cell]) - 1.0) / faces,
            false => 0.0,
        };
        Rim {
            beyond,
            surface: f64::from(surface),
        }
    }

    /// Area of a face to sand, as a share of the whole face, for the resistance wanted.
    fn open(&self, filling: &Filling, sand: &SandHeat, size_mm: f64) -> f32 {
        let size_m = size_mm * 1e-3;
        let [nearest, farthest] = SAND_WAY;
        let way = (0.5 - self.beyond).clamp(nearest, farthest);
        let contact = 1.0 / filling.contact_w_m2k;
        let stepped = 0.5 * size_m / sand.w_mk + contact;
        let wanted = way * size_m / sand.w_mk + contact / self.surface;
        (stepped / wanted) as f32
    }
}

fn faces_to_sand(cells: &MouldCells, cell: usize) -> f64 {
    let is_sand = |next: &usize| !matches!(cells.stuff[*next], Stuff::Metal | Stuff::Air);
    cells.neighbours(cell).filter(is_sand).count() as f64
}

/// True over stepped surface of each cell of metal that touches sand, over the cells around it: one
/// cell alone has too few samples of the skin.
fn true_over_stepped(meshed: &Meshed) -> Vec<f32> {
    let cells = &meshed.cells;
    let stepped = |cell: usize| match cells.stuff[cell] {
        Stuff::Metal => faces_to_sand(cells, cell) as f32,
        _ => 0.0,
    };
    let stepped: Vec<f32> = (0..cells.stuff.len()).map(stepped).collect();
    let face_mm2 = (cells.size_mm * cells.size_mm) as f32;
    let [least, most] = TRUE_OVER_STEPPED.map(|bound| bound as f32);
    let around = |cell: usize| {
        let at = cells.cell(cell);
        let (mut skin, mut steps) = (0.0, 0.0);
        for place in 0..27 {
            let step = [place % 3, place / 3 % 3, place / 9];
            let next = [0, 1, 2].map(|axis: usize| (at[axis] + step[axis]).wrapping_sub(1));
            if (0..3).all(|axis| next[axis] < cells.count[axis]) {
                let next = cells.index(next);
                skin += meshed.surface_mm2[next] / face_mm2;
                steps += stepped[next];
            }
        }
        (skin / steps).clamp(least, most)
    };
    let mut surface: Vec<f32> = (0..stepped.len())
        .map(|cell| {
            if stepped[cell] > 0.0 {
                around(cell)
            } else {
                1.0
            }
        })
        .collect();
    // What averaging has shifted is put right over the whole.
    let sum = |of: &dyn Fn(usize) -> f64| (0..stepped.len()).map(of).sum::<f64>();
    let laid = sum(&|cell| f64::from(surface[cell] * stepped[cell]));
    let skin = sum(&|cell| match stepped[cell] > 0.0 {
        true => f64::from(meshed.surface_mm2[cell] / face_mm2),
        false => 0.0,
    });
    if laid > 0.0 && skin > 0.0 {
        let times = (skin / laid) as f32;
        surface
            .iter_mut()
            .for_each(|surface| *surface = (*surface * times).clamp(least, most));
    }
    surface
}
