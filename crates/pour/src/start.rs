//! How hot metal and sand are when the mould is full and the freezing begins.
//!
//! Metal comes to each place with what the way has left it; what it lost lies in the sand beside
//! the way. That heat is laid into the cells of sand at the skin, more of it where metal has stood
//! longer, by the root of the time, so that none is lost between filling and freezing.

use measure::heat::Temperature;

use crate::case::Filling;
use crate::cells::{MouldCells, Stuff};
use crate::fill::Glance;
use crate::meshing::Meshed;
use crate::solved::metal_cells;

/// Temperatures at the start.
#[derive(Clone, Debug, PartialEq)]
pub enum Start {
    /// All metal alike, all sand as cold as the air.
    Even(Temperature),
    /// Of each cell of metal and of sand, °C, as a filling leaves it; cells of air have none that
    /// means anything.
    Each(Vec<f32>),
}

/// Most rounds in which heat that a cell of sand cannot hold is laid into the others: it would be
/// hotter than the metal. After them what is left is a thousandth or less.
const ROUNDS: usize = 8;

impl Start {
    /// What a filling leaves; metal that the glance did not see coming is taken at `unseen`.
    pub fn filled(
        meshed: &Meshed,
        glance: &Glance,
        filling: &Filling,
        poured_c: f64,
        unseen: Temperature,
    ) -> Start {
        let cells = &meshed.cells;
        let unseen = unseen.as_celsius() as f32;
        let mut celsius = vec![filling.air_c as f32; cells.stuff.len()];
        for cell in metal_cells(meshed) {
            celsius[cell] = match glance.arrival_s[cell].is_finite() {
                true => glance.arrival_c[cell],
                false => unseen,
            };
        }
        let poured_j_m3 = filling.metal.heat_at(poured_c);
        let seen = metal_cells(meshed).filter(|&cell| glance.arrival_s[cell].is_finite());
        let lost_j = seen.map(|cell| {
            let left_j_m3 = filling.metal.heat_at(f64::from(celsius[cell]));
            (poured_j_m3 - left_j_m3) * cells.metal_mm3(cell) * 1e-9
        });
        let lost_j = lost_j.sum::<f64>();
        lay_into_sand(meshed, glance, filling, lost_j, &mut celsius);
        Start::Each(celsius)
    }

    /// Temperature of a cell of metal or sand at the start, °C.
    pub fn of_cell(&self, cells: &MouldCells, cell: usize, air_c: f64) -> f32 {
        match (self, cells.stuff[cell]) {
            (Start::Each(each), _) => each[cell],
            (Start::Even(metal), Stuff::Metal) => metal.as_celsius() as f32,
            (Start::Even(_), _) => air_c as f32,
        }
    }

    /// The same with metal so much hotter, or colder: even metal stays above where it begins to
    /// freeze.
    pub fn shifted(&self, cells: &MouldCells, by_k: f64, liquidus_c: f64) -> Start {
        match self {
            Start::Even(metal) => {
                let celsius = (metal.as_celsius() + by_k).max(liquidus_c.min(metal.as_celsius()));
                Start::Even(Temperature::from_celsius(celsius))
            }
            Start::Each(each) => {
                let each = each.iter().enumerate();
                let of = |(cell, celsius): (usize, &f32)| match is_metal(cells, cell) {
                    true => celsius + by_k as f32,
                    false => *celsius,
                };
                Start::Each(each.map(of).collect())
            }
        }
    }

    /// Mean of the metal, °C, each cell counted by what it holds.
    pub fn mean_c(&self, meshed: &Meshed) -> f64 {
        match self {
            Start::Even(celsius) => celsius.as_celsius(),
            Start::Each(each) => {
                let held = |cell: usize| f64::from(meshed.cells.metal[cell]);
                let sum: f64 = metal_cells(meshed)
                    .map(|cell| held(cell) * f64::from(each[cell]))
                    .sum();
                sum / metal_cells(meshed).map(held).sum::<f64>()
            }
        }
    }

    /// The same on other cells of the same mould: each takes the mean of what lies in it of its
    /// own stuff. Metal without any takes the mean of all metal, sand without any is cold.
    pub fn carried(&self, from: &Meshed, to: &Meshed, air_c: f64) -> Start {
        let Start::Each(each) = self else {
            return self.clone();
        };
        let all = to.cells.stuff.len();
        let (mut sum, mut held) = (vec![0.0_f64; all], vec![0.0_f64; all]);
        for (cell, celsius) in each.iter().enumerate() {
            let Some(into) = holding(&to.cells, from.cells.middle_mm(cell)) else {
                continue;
            };
            let stuff = from.cells.stuff[cell];
            if stuff != to.cells.stuff[into] || stuff == Stuff::Air {
                continue;
            }
            let weight = match from.cells.stuff[cell] {
                Stuff::Metal => f64::from(from.cells.metal[cell]),
                _ => 1.0,
            };
            sum[into] += weight * f64::from(*celsius);
            held[into] += weight;
        }
        let mean_c = self.mean_c(from);
        let of = |cell: usize| match held[cell] > 0.0 {
            true => sum[cell] / held[cell],
            false if is_metal(&to.cells, cell) => mean_c,
            false => air_c,
        };
        Start::Each((0..all).map(|cell| of(cell) as f32).collect())
    }
}

fn is_metal(cells: &MouldCells, cell: usize) -> bool {
    cells.stuff[cell] == Stuff::Metal
}

/// The cell that holds a place.
fn holding(cells: &MouldCells, place_mm: [f64; 3]) -> Option<usize> {
    let at = [0, 1, 2].map(|axis| (place_mm[axis] - cells.origin_mm[axis]) / cells.size_mm);
    let inside = (0..3).all(|axis| at[axis] >= 0.0 && at[axis] < cells.count[axis] as f64);
    inside.then(|| cells.index(at.map(|at| at as usize)))
}

/// Sand at the skin: which cell, how much of the heat it takes beside the others, the temperature
/// that it may not pass.
struct Skin {
    cell: usize,
    part: f64,
    most_c: f64,
}

fn lay_into_sand(
    meshed: &Meshed,
    glance: &Glance,
    filling: &Filling,
    lost_j: f64,
    celsius: &mut [f32],
) {
    let cells = &meshed.cells;
    let cell_m3 = (cells.size_mm * 1e-3).powi(3);
    let (sand, core) = (filling.sand.table("sand"), filling.core.table("core sand"));
    let table = |cell: usize| match cells.stuff[cell] {
        Stuff::Core => &core,
        _ => &sand,
    };
    let mut skin = skin(meshed, glance, celsius);
    let mut left_j = lost_j.max(0.0);
    for _ in 0..ROUNDS {
        let parts: f64 = skin.iter().map(|skin| skin.part).sum();
        if left_j <= 0.0 || parts <= 0.0 {
            break;
        }
        let mut laid_j = 0.0;
        for Skin { cell, part, most_c } in &skin {
            let table = table(*cell);
            let before = table.heat_at(f64::from(celsius[*cell]));
            let wanted = before + left_j * part / parts / cell_m3;
            let after = wanted.min(table.heat_at(*most_c).max(before));
            celsius[*cell] = table.at(after).celsius as f32;
            laid_j += (after - before) * cell_m3;
        }
        left_j -= laid_j;
        skin.retain(|skin| f64::from(celsius[skin.cell]) < skin.most_c - 1.0);
    }
}

fn skin(meshed: &Meshed, glance: &Glance, celsius: &[f32]) -> Vec<Skin> {
    let cells = &meshed.cells;
    let is_sand = |cell: &usize| matches!(cells.stuff[*cell], Stuff::Sand | Stuff::Core);
    let of = |cell: usize| {
        let (mut part, mut most_c) = (0.0, f64::NEG_INFINITY);
        for metal in cells.neighbours(cell).filter(|&next| is_metal(cells, next)) {
            let stood_s = glance.ends_s - f64::from(glance.arrival_s[metal]);
            part += stood_s.max(0.0).sqrt();
            most_c = most_c.max(f64::from(celsius[metal]));
        }
        (part > 0.0).then_some(Skin { cell, part, most_c })
    };
    (0..cells.stuff.len())
        .filter(is_sand)
        .filter_map(of)
        .collect()
}
