//! A case laid out for whoever takes its steps elsewhere: which cells go in one step and which in
//! stages, and what lies around the latter.
//!
//! A cell that goes in one step here has only its own material beside it: it is *swept*. What else
//! goes in one step by the scheme for use is *staged* with the quick ones, so that there are two
//! ways of going and no third. Whatever is slow is stable in stages too.

use rayon::iter::{
    IndexedParallelIterator, IntoParallelIterator, IntoParallelRefIterator, ParallelIterator,
};
use rayon::slice::ParallelSliceMut;

use crate::case::Case;
use crate::early::Early;
use crate::elsewhere::State;
use crate::freezing::{Freezing, Levels};
use crate::link::{SIDES, Side, side};
use crate::multirate::padded::weights;
use crate::multirate::quick::face::number_of;
use crate::multirate::quick::lay::is_deep;
use crate::multirate::split::{Kind, split};
use crate::run::{Moment, Wish};

pub use crate::link::{Link, Outer};
pub use crate::multirate::ramps::{Ramp, Ramps, Table};

/// A case laid out.
#[derive(Debug)]
pub struct Laid<'case> {
    /// The case.
    pub case: &'case Case,
    /// How each cell goes by the scheme for use.
    pub(crate) kinds: Vec<Kind>,
    /// Staged cells in the planes before each plane, and in all.
    staged_before: Vec<usize>,
    /// Weights of the faces of swept cells, per axis low and high.
    pub weights: [[Vec<f32>; 2]; 3],
    /// Tables of the materials.
    pub tables: Vec<Table>,
    /// Heat contents of each material that are watched, J/m³ above its base: first solid, passing
    /// share, gradient, all solid. None for what does not freeze.
    pub levels: Vec<Option<[f32; 4]>>,
    /// Staged cells with something else than staged cells of their own material around them, or
    /// that are not whole, plane by plane in order.
    pub rims: Vec<Vec<Rim>>,
    /// What lies between such cells and their neighbours.
    pub links: Vec<Link>,
    /// What surrounds them.
    pub outers: Vec<Outer>,
    /// Longest step of the swept cells, s.
    pub longest_s: f64,
    /// Step to begin with, s.
    pub first_s: f64,
    /// Longest explicit step of any staged cell as the case begins, s, roughly.
    pub quickest_s: f64,
    /// Longest explicit step of staged cells beside swept ones, s: stages are counted for no longer
    /// one, since what passes between both comes on top of what the stages carry.
    pub borders_s: f64,
}

/// How a cell goes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Goes {
    /// Not at all: it is not solved.
    Not,
    /// In one step.
    Swept,
    /// In stages.
    Staged,
}

/// A staged cell with what lies at its sides, in the order of `SIDES`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rim {
    /// The cell.
    pub cell: u32,
    /// Its sides: x low, x high, y low, y high, z low, z high.
    pub sides: [Beside; 6],
}

/// What lies at a side of a staged cell.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Beside {
    /// A staged cell of its own material with all of the face open.
    Alike,
    /// Nothing through which heat passes.
    Closed,
    /// A staged cell, by this link.
    Staged(u32),
    /// A swept cell, by this link: what passes is taken once a step.
    Swept(u32),
    /// Surroundings, by their number.
    Around(u32),
}

impl Rim {
    /// Whether one of its sides is open to surroundings.
    pub fn has_around(&self) -> bool {
        let sides = self.sides.iter();
        sides.copied().any(|side| matches!(side, Beside::Around(_)))
    }
}

/// What a plane adds, with links and surroundings numbered by themselves.
#[derive(Default)]
struct OfPlane {
    rims: Vec<Rim>,
    links: Vec<Link>,
    outers: Vec<Outer>,
}

impl Laid<'_> {
    /// Lays a case out.
    pub fn of<'case>(case: &'case Case, wish: &Wish) -> Laid<'case> {
        let split = split(case, wish.longest_step_s);
        let kinds = split.kinds;
        let early = Early::of(case, wish.early_contact);
        let planes = case.grid.counts()[2];
        let of_plane = |z| OfPlane::of(case, &kinds, &early, z);
        let of_planes: Vec<OfPlane> = (0..planes).into_par_iter().map(of_plane).collect();
        let tables: Vec<Table> = case.materials.iter().map(Table::of).collect();
        let levels = case.materials.iter().zip(&tables).map(|(material, table)| {
            let levels = Levels::of(material, wish.passing_share)?;
            Some(levels.above(table.base_j_m3))
        });
        let mut laid = Laid {
            case,
            levels: levels.collect(),
            tables,
            rims: Vec::with_capacity(planes),
            links: Vec::new(),
            outers: Vec::new(),
            longest_s: split.longest_s,
            first_s: split.first_s,
            quickest_s: split.shortest_s,
            borders_s: split.borders_s,
            weights: weights(case),
            staged_before: staged_before(case, &kinds),
            kinds,
        };
        of_planes.into_iter().for_each(|plane| laid.add(plane));
        laid
    }

    /// The state in which the case begins.
    pub fn start(&self) -> State {
        let staged_j_m3: Vec<f32> = self.staged().map(|cell| self.start_j_m3(cell)).collect();
        let lost_j_m3 = vec![0.0; staged_j_m3.len()];
        let swept_j_m3 = match self.has_heat_of_swept() {
            true => (0..self.case.cells.len())
                .map(|cell| self.start_j_m3(cell))
                .collect(),
            false => Vec::new(),
        };
        let cells: Vec<u32> = self.freezing_cells().collect();
        let unknown = vec![f32::NAN; cells.len()];
        State {
            celsius: self.case.start_c.clone(),
            swept_j_m3,
            staged_j_m3,
            lost_j_m3,
            freezing: Freezing {
                cells,
                begins_s: unknown.clone(),
                passes_s: unknown.clone(),
                ends_s: unknown.clone(),
                gradient_k_m: unknown.clone(),
                cooling_k_s: unknown,
            },
            through_j: 0.0,
        }
    }

    /// How a cell goes.
    pub fn goes(&self, cell: usize) -> Goes {
        self.kinds[cell].goes()
    }

    /// Staged cells in their order.
    pub fn staged(&self) -> impl Iterator<Item = usize> + '_ {
        (0..self.kinds.len()).filter(|&cell| self.goes(cell) == Goes::Staged)
    }

    /// Cells that can freeze, in their order; all of them are staged.
    pub fn freezing_cells(&self) -> impl Iterator<Item = u32> + '_ {
        let staged = self.staged();
        staged
            .filter(|&cell| self.levels_of(cell).is_some())
            .map(|cell| cell as u32)
    }

    /// Whether some swept material is not plain, so that its heat content is carried too.
    pub fn has_heat_of_swept(&self) -> bool {
        let swept = self.swept_materials();
        let mut tables = self.tables.iter().zip(&swept);
        tables.any(|(table, swept)| *swept && table.plain_j_m3k.is_none())
    }

    /// Which materials fill swept cells.
    pub fn swept_materials(&self) -> Vec<bool> {
        let mut swept = vec![false; self.tables.len()];
        for (number, kind) in self.case.cells.iter().zip(&self.kinds) {
            if kind.goes() == Goes::Swept {
                swept[usize::from(*number)] = true;
            }
        }
        swept
    }

    /// Cells of a state that can freeze and are not solid.
    pub fn unfrozen(&self, state: &State) -> usize {
        let staged = self.staged().zip(&state.staged_j_m3);
        let liquid = |(cell, heat): &(usize, &f32)| {
            self.levels_of(*cell)
                .is_some_and(|[.., ends]| **heat > ends)
        };
        staged.filter(liquid).count()
    }

    /// Heat in all cells, J.
    pub fn joules(&self, state: &State) -> f64 {
        let [along, rows, planes] = self.case.grid.counts();
        let of_plane = |z: usize| {
            let heats = self.heats(state, z);
            let of_row = |y: usize| {
                let cells = heats[y * along..].iter().zip(self.case.volumes([y, z]));
                cells.map(|(heat, volume)| heat * volume).sum::<f64>()
            };
            (0..rows).map(of_row).sum::<f64>()
        };
        let joules: Vec<f64> = (0..planes).into_par_iter().map(of_plane).collect();
        joules.iter().sum()
    }

    /// Temperatures and heat contents of a state.
    pub fn moment(&self, state: &State, time_s: f64) -> Moment {
        let cells = state
            .celsius
            .par_iter()
            .zip(&self.kinds)
            .zip(&self.case.start_c);
        let celsius = cells.map(|((celsius, kind), start_c)| match kind.goes() {
            Goes::Not => *start_c,
            Goes::Swept | Goes::Staged => *celsius,
        });
        let mut j_m3 = vec![0.0; state.celsius.len()];
        let plane = state.celsius.len() / self.case.grid.counts()[2];
        j_m3.par_chunks_mut(plane)
            .enumerate()
            .for_each(|(z, j_m3)| {
                for (j_m3, heat) in j_m3.iter_mut().zip(self.heats(state, z)) {
                    *j_m3 = heat as f32;
                }
            });
        Moment {
            time_s,
            celsius: celsius.collect(),
            j_m3,
        }
    }

    /// Heat contents of the cells of a plane, J/m³, counted as in the tables; nothing in voids.
    fn heats(&self, state: &State, z: usize) -> Vec<f64> {
        let [along, rows, _] = self.case.grid.counts();
        let plane = z * along * rows..(z + 1) * along * rows;
        let mut staged = state.staged_j_m3[self.staged_before[z]..].iter();
        let heat = |cell: usize| {
            let number = usize::from(self.case.cells[cell]);
            match self.goes(cell) {
                Goes::Not => 0.0,
                Goes::Staged => {
                    let heat = staged.next().copied().unwrap_or_default();
                    f64::from(heat) + self.tables[number].base_j_m3
                }
                Goes::Swept if self.tables[number].plain_j_m3k.is_some() => {
                    self.case.materials[number].heat_at(f64::from(state.celsius[cell]))
                }
                Goes::Swept => f64::from(state.swept_j_m3[cell]) + self.tables[number].base_j_m3,
            }
        };
        plane.map(heat).collect()
    }

    fn start_j_m3(&self, cell: usize) -> f32 {
        let number = usize::from(self.case.cells[cell]);
        let material = self.case.materials.get(number);
        let table = self.tables.get(number);
        let celsius = f64::from(self.case.start_c[cell]);
        let heat = material
            .zip(table)
            .map(|(m, table)| m.heat_at(celsius) - table.base_j_m3);
        heat.unwrap_or(0.0) as f32
    }

    fn levels_of(&self, cell: usize) -> Option<[f32; 4]> {
        let number = usize::from(self.case.cells[cell]);
        self.levels.get(number).copied().flatten()
    }

    /// Adds what a plane has, with the numbers of all.
    fn add(&mut self, plane: OfPlane) {
        let links: Vec<u32> = (plane.links.into_iter())
            .map(|link| number_of(&mut self.links, link))
            .collect();
        let outers: Vec<u32> = (plane.outers.into_iter())
            .map(|outer| number_of(&mut self.outers, outer))
            .collect();
        let mut rims = plane.rims;
        for side in rims.iter_mut().flat_map(|rim| &mut rim.sides) {
            *side = match *side {
                Beside::Staged(link) => Beside::Staged(links[link as usize]),
                Beside::Swept(link) => Beside::Swept(links[link as usize]),
                Beside::Around(outer) => Beside::Around(outers[outer as usize]),
                Beside::Alike | Beside::Closed => continue,
            };
        }
        self.rims.push(rims);
    }
}

impl Kind {
    /// The way it goes where steps are taken elsewhere.
    pub fn goes(self) -> Goes {
        match self {
            Kind::Void => Goes::Not,
            Kind::Even => Goes::Swept,
            Kind::Mixed | Kind::Quick => Goes::Staged,
        }
    }
}

impl OfPlane {
    fn of(case: &Case, kinds: &[Kind], early: &Early, z: usize) -> OfPlane {
        let [along, rows, _] = case.grid.counts();
        let is_staged = |cell: usize| kinds[cell].goes() == Goes::Staged;
        let mut plane = OfPlane::default();
        for [x, y, z] in (0..rows).flat_map(|y| (0..along).map(move |x| [x, y, z])) {
            let cell = case.grid.index([x, y, z]);
            let deep = || case.is_whole(cell) && is_deep(case, &is_staged, [x, y, z]);
            if is_staged(cell) && !deep() {
                let sides = SIDES.map(|of| plane.beside(case, &is_staged, early, [x, y, z], of));
                plane.rims.push(Rim {
                    cell: cell as u32,
                    sides,
                });
            }
        }
        plane
    }

    fn beside(
        &mut self,
        case: &Case,
        is_staged: &impl Fn(usize) -> bool,
        early: &Early,
        place: [usize; 3],
        (axis, high): (usize, usize),
    ) -> Beside {
        let cell = case.grid.index(place);
        let (other, mut link) = match side(case, place, axis, high) {
            Side::Closed => return Beside::Closed,
            Side::Out(outer) => return Beside::Around(number_of(&mut self.outers, outer)),
            Side::Next(other, link) => (other, link),
        };
        if is_staged(other) && link.alike && case.is_whole(cell) {
            return Beside::Alike;
        }
        link.reach = early.reach([case.cells[cell], case.cells[other]]);
        let number = number_of(&mut self.links, link);
        match is_staged(other) {
            true => Beside::Staged(number),
            false => Beside::Swept(number),
        }
    }
}

fn staged_before(case: &Case, kinds: &[Kind]) -> Vec<usize> {
    let [along, rows, _] = case.grid.counts();
    let is_staged = |kind: &&Kind| kind.goes() == Goes::Staged;
    let mut before = vec![0];
    for plane in kinds.chunks(along * rows) {
        let so_far = before.last().copied().unwrap_or_default();
        before.push(so_far + plane.iter().filter(is_staged).count());
    }
    before
}
