//! What lies between two cells, or between a cell and what surrounds it.
//!
//! Two unlike materials conduct one behind the other: half a cell, the contact, half a cell. Within
//! one material the mean of both conductivities holds, which is exact where conductivity runs
//! straight with temperature.

use crate::case::{Case, Condition, ZERO_K};
use crate::early::Early;

/// The way from the middle of a cell to the middle of its neighbour.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Link {
    /// Area through which heat passes, m².
    pub area_m2: f64,
    /// From the middle of this cell to the face, m.
    pub here_m: f64,
    /// From the face to the middle of the neighbour, m.
    pub there_m: f64,
    /// Resistance of the contact, m² K/W.
    pub contact_m2kw: f64,
    /// Whether both are of one material.
    pub alike: bool,
    /// How far heat comes into either side at first, m for a root of a second.
    pub reach: [f64; 2],
}

impl Link {
    /// Heat that passes for each kelvin between both, W/K, at a root of the time since contact.
    pub fn w_k(&self, here_w_mk: f64, there_w_mk: f64, root_s: f64) -> f64 {
        if self.alike {
            let mean = 0.5 * (here_w_mk + there_w_mk);
            return self.area_m2 * mean / (self.here_m + self.there_m);
        }
        // No time times no end is no number, which `min` passes by.
        let [here_m, there_m] = [self.here_m, self.there_m];
        let here_m = here_m.min(self.reach[0] * root_s);
        let there_m = there_m.min(self.reach[1] * root_s);
        let resistance = here_m / here_w_mk + there_m / there_w_mk + self.contact_m2kw;
        self.area_m2 / resistance
    }
}

/// The way from the middle of a cell to what surrounds it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Outer {
    /// Area through which heat passes, m².
    pub area_m2: f64,
    /// From the middle of the cell to the face, m.
    pub half_m: f64,
    /// What is outside.
    pub condition: Condition,
}

/// Heat into a cell as a straight line of its temperature: `w + w_k (outside_c - T)`.
#[derive(Debug, Clone, Copy)]
pub struct Inflow {
    /// Heat that comes whatever the temperature, W.
    pub w: f64,
    /// Heat for each kelvin, W/K.
    pub w_k: f64,
    /// Temperature outside, °C.
    pub outside_c: f64,
}

/// Stefan and Boltzmann's constant, W/(m² K⁴), exact in the SI.
const RADIATION: f64 = 5.670_374_419e-8;

impl Outer {
    /// The inflow around a temperature of the cell, °C, with its conductivity, W/(m K).
    ///
    /// Radiation is straightened around the temperature of the cell, not of its skin: half a cell
    /// apart, which vanishes as the cells get finer.
    pub fn inflow(&self, celsius: f64, w_mk: f64) -> Inflow {
        let per_kelvin = |w_k, outside_c| Inflow {
            w: 0.0,
            w_k,
            outside_c,
        };
        match self.condition {
            Condition::Insulated => per_kelvin(0.0, 0.0),
            Condition::Held { celsius } => per_kelvin(self.area_m2 * w_mk / self.half_m, celsius),
            Condition::Flux { w_m2 } => Inflow {
                w: self.area_m2 * w_m2,
                w_k: 0.0,
                outside_c: 0.0,
            },
            Condition::Exchange {
                w_m2k,
                celsius: outside_c,
                emissivity,
            } => {
                let (skin, far) = (celsius - ZERO_K, outside_c - ZERO_K);
                let radiated = (skin * skin + far * far) * (skin + far);
                let surface = w_m2k + emissivity * RADIATION * radiated;
                // The half cell and the surface one behind the other, for no surface too.
                let through = surface * w_mk / (w_mk + surface * self.half_m);
                per_kelvin(self.area_m2 * through, outside_c)
            }
        }
    }
}

/// What lies at one side of a cell.
#[derive(Debug, Clone, Copy)]
pub enum Side {
    /// A neighbour that is solved, by its number, and the way to it.
    Next(usize, Link),
    /// Surroundings.
    Out(Outer),
    /// Nothing through which heat could pass.
    Closed,
}

/// What lies at the low (0) or high (1) side of a cell across an axis.
pub fn side(case: &Case, at: [usize; 3], axis: usize, high: usize) -> Side {
    let grid = &case.grid;
    let cell = grid.index(at);
    let half_m = 0.5 * grid.width(axis, at[axis]);
    let next = neighbour(case, at, axis, high);
    let lower_cell = match (high, next) {
        (1, Some(next)) => Some(grid.index(next)),
        (1, None) => None,
        _ => Some(cell),
    };
    let open = match (&case.partial, lower_cell) {
        (Some(partial), Some(lower)) => f64::from(partial.open[axis][lower]),
        _ => 1.0,
    };
    let area_m2 = grid.area(axis, at) * open;
    let Some(next) = next else {
        let condition = case.faces[2 * axis + high];
        return out(Outer {
            area_m2,
            half_m,
            condition,
        });
    };
    let other = grid.index(next);
    let (here, there) = (case.cells[cell], case.cells[other]);
    match usize::from(there).checked_sub(case.materials.len()) {
        Some(void) => out(Outer {
            area_m2,
            half_m,
            condition: case.voids[void],
        }),
        None if area_m2 == 0.0 => Side::Closed,
        None => {
            let there_m = 0.5 * grid.width(axis, next[axis]);
            let contact_m2kw = resistance(case, [here, there]);
            let alike = here == there;
            Side::Next(
                other,
                Link {
                    area_m2,
                    here_m: half_m,
                    there_m,
                    contact_m2kw,
                    alike,
                    reach: [f64::INFINITY; 2],
                },
            )
        }
    }
}

/// The neighbour of a cell at the low (0) or high (1) side across an axis, if the box goes on.
pub fn neighbour(case: &Case, at: [usize; 3], axis: usize, high: usize) -> Option<[usize; 3]> {
    let mut next = at;
    next[axis] = match high {
        0 => at[axis].checked_sub(1)?,
        _ => at[axis] + 1,
    };
    (next[axis] < case.grid.counts()[axis]).then_some(next)
}

/// Longest explicit step of a cell, s: its least capacity over all that can pass to and from it,
/// at the first moment of contact too, with `hottest_c` the hottest that anything may be at a face
/// that radiates.
pub fn longest_step_s(case: &Case, early: &Early, cell: usize, hottest_c: f64) -> f64 {
    let at = case.grid.place(cell);
    let w_mk = most_w_mk(case, cell);
    let outer = SIDES
        .into_iter()
        .map(|(axis, high)| match side(case, at, axis, high) {
            Side::Out(outer) => outer.inflow(hottest_c, w_mk).w_k,
            Side::Next(..) | Side::Closed => 0.0,
        });
    step_for_s(
        case,
        cell,
        outer.sum::<f64>() + towards_w_k(case, early, cell, &|_| true),
    )
}

/// The same counting only what passes to and from some of the cells beside it; endless where there
/// is none of them.
pub fn longest_step_towards_s(
    case: &Case,
    early: &Early,
    cell: usize,
    counts: &impl Fn(usize) -> bool,
) -> f64 {
    step_for_s(case, cell, towards_w_k(case, early, cell, counts))
}

/// Most that passes for each kelvin between a cell and some of those beside it, W/K.
fn towards_w_k(case: &Case, early: &Early, cell: usize, counts: &impl Fn(usize) -> bool) -> f64 {
    let at = case.grid.place(cell);
    let sides = SIDES
        .into_iter()
        .map(|(axis, high)| match side(case, at, axis, high) {
            Side::Next(other, mut link) if counts(other) => {
                link.reach = early.reach([case.cells[cell], case.cells[other]]);
                link.w_k(most_w_mk(case, cell), most_w_mk(case, other), 0.0)
            }
            Side::Next(..) | Side::Out(_) | Side::Closed => 0.0,
        });
    sides.sum()
}

fn step_for_s(case: &Case, cell: usize, w_k: f64) -> f64 {
    case.material(cell).map_or(f64::INFINITY, |material| {
        material.least_capacity() * case.volume(cell) / w_k
    })
}

fn most_w_mk(case: &Case, cell: usize) -> f64 {
    case.material(cell)
        .map_or(0.0, |material| material.most_conductivity())
}

/// The six sides as axis and low or high.
pub const SIDES: [(usize, usize); 6] = [(0, 0), (0, 1), (1, 0), (1, 1), (2, 0), (2, 1)];

fn out(outer: Outer) -> Side {
    match outer.condition {
        Condition::Insulated => Side::Closed,
        _ if outer.area_m2 == 0.0 => Side::Closed,
        _ => Side::Out(outer),
    }
}

fn resistance(case: &Case, pair: [u8; 2]) -> f64 {
    let swapped = [pair[1], pair[0]];
    let touching = case
        .contacts
        .iter()
        .find(|contact| contact.between == pair || contact.between == swapped);
    touching.map_or(0.0, |contact| 1.0 / contact.w_m2k)
}

/// The hottest temperature that a case starts from or is surrounded by, °C.
pub fn hottest_c(case: &Case) -> f64 {
    given_c(case).fold(ZERO_K, f64::max)
}

/// The coldest temperature that a case starts from or is surrounded by, °C.
pub fn coldest_c(case: &Case) -> f64 {
    given_c(case).fold(f64::INFINITY, f64::min)
}

/// How far temperatures, one list of all cells after the other, lie beyond all that a case starts
/// from or is surrounded by, K; nought where heat is put in, since then there is no bound.
pub fn beyond_k<'list>(case: &Case, lists: impl Iterator<Item = &'list [f32]>) -> f64 {
    let is_driven = |condition: &Condition| matches!(condition, Condition::Flux { .. });
    if case.faces.iter().chain(&case.voids).any(is_driven) {
        return 0.0;
    }
    let low = coldest_c(case);
    let high = given_c(case).fold(f64::NEG_INFINITY, f64::max);
    let mut most = 0.0_f64;
    for celsius in lists {
        let cells = celsius.iter().zip(&case.cells);
        let solved = cells.filter(|(_, number)| usize::from(**number) < case.materials.len());
        for celsius in solved.map(|(celsius, _)| f64::from(*celsius)) {
            most = most.max(celsius - high).max(low - celsius);
        }
    }
    most
}

fn given_c(case: &Case) -> impl Iterator<Item = f64> {
    let starts = case.start_c.iter().zip(&case.cells);
    let solved = starts.filter(|(_, number)| usize::from(**number) < case.materials.len());
    let start = solved.map(|(celsius, _)| f64::from(*celsius));
    start.chain(case.faces.iter().chain(&case.voids).filter_map(outside_c))
}

fn outside_c(condition: &Condition) -> Option<f64> {
    match *condition {
        Condition::Held { celsius } | Condition::Exchange { celsius, .. } => Some(celsius),
        Condition::Insulated | Condition::Flux { .. } => None,
    }
}

/// Temperature gradient at a cell, K/m: across both neighbours of the same material, towards one
/// where there is only one.
pub fn gradient_k_m(case: &Case, cell: usize, celsius: &impl Fn(usize) -> f64) -> f64 {
    let at = case.grid.place(cell);
    let of_axis = |axis: usize| {
        let alike = |high| {
            let next = neighbour(case, at, axis, high)?;
            let other = case.grid.index(next);
            let same = case.cells[other] == case.cells[cell];
            same.then(|| (case.grid.middle(axis, next[axis]), celsius(other)))
        };
        let here = (case.grid.middle(axis, at[axis]), celsius(cell));
        let (low, high) = (alike(0).unwrap_or(here), alike(1).unwrap_or(here));
        match high.0 > low.0 {
            true => (high.1 - low.1) / (high.0 - low.0),
            false => 0.0,
        }
    };
    (0..3).map(|axis| of_axis(axis).powi(2)).sum::<f64>().sqrt()
}

#[cfg(test)]
mod tests {
    use super::beyond_k;
    use crate::case::{Case, Condition};
    use crate::grid::Grid;
    use crate::material::{Material, Phase};

    #[test]
    fn what_lies_beyond_all_given_is_told_where_no_heat_is_put_in() {
        let bar = Material::plain(
            "bar",
            Phase {
                j_m3k: 1.7e6,
                w_mk: 0.6,
            },
        );
        let mut case = Case::filled(Grid::uniform([3, 1, 1], 1e-3), bar, 20.0);
        case.start_c[2] = 700.0;
        let told =
            |case: &Case, celsius: [f32; 3]| beyond_k(case, [celsius.as_slice()].into_iter());
        assert_eq!(told(&case, [20.0, 300.0, 700.0]), 0.0);
        assert_eq!(told(&case, [12.0, 300.0, 703.0]), 8.0);
        case.faces[0] = Condition::Held { celsius: 5.0 };
        assert_eq!(told(&case, [12.0, 300.0, 703.0]), 3.0);
        case.faces[1] = Condition::Flux { w_m2: 1e4 };
        assert_eq!(told(&case, [12.0, 300.0, 703.0]), 0.0);
    }
}
