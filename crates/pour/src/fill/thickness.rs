//! How thick the metal is around each cell, as its cooling feels it: twice its volume over the
//! surface that cools it.
//!
//! Through each cell runs a chord along each axis. The metal between its two ends cools through
//! both, each taken as far as it faces the chord, so that a plate has its thickness, a bar half and
//! a ball a third of its diameter, whichever way they lie. An end in open air does not cool, nor
//! does one at the rim of the box.

use crate::cells::{MouldCells, Stuff};

/// Twice the volume over the cooling surface around each cell of the box, mm; nought where there
/// is no metal, without end where nothing cools it.
pub(super) fn thickness_mm(cells: &MouldCells) -> Vec<f32> {
    let mut cooled = vec![0f32; cells.stuff.len()];
    let [nx, ny, nz] = cells.count;
    let axes = [(nx, 1), (ny, nx), (nz, nx * ny)];
    for (axis, (length, stride)) in axes.into_iter().enumerate() {
        let [(across, step), (along, leap)] = match axis {
            0 => [(ny, nx), (nz, nx * ny)],
            1 => [(nx, 1), (nz, nx * ny)],
            _ => [(nx, 1), (ny, nx)],
        };
        for row in 0..along {
            for column in 0..across {
                let line = Line {
                    first: column * step + row * leap,
                    stride,
                    length,
                    axis,
                };
                line.add(cells, &mut cooled);
            }
        }
    }
    // What a cell loses its neighbours feel.
    for (length, stride) in axes {
        even_out(&mut cooled, cells, length, stride);
    }
    for (place, cooled) in cooled.iter_mut().enumerate() {
        *cooled = match cells.metal[place] > 0.0 {
            true => 1.0 / *cooled,
            false => 0.0,
        };
    }
    cooled
}

/// A line of cells along an axis.
struct Line {
    first: usize,
    stride: usize,
    length: usize,
    axis: usize,
}

impl Line {
    fn add(&self, cells: &MouldCells, cooled: &mut [f32]) {
        let place = |at: usize| self.first + at * self.stride;
        let mut at = 0;
        while at < self.length {
            if cells.metal[place(at)] <= 0.0 {
                at += 1;
                continue;
            }
            let from = at;
            let mut share = 0.0;
            while at < self.length && cells.metal[place(at)] > 0.0 {
                share += cells.metal[place(at)];
                at += 1;
            }
            let low = self.faces(cells, from, from.checked_sub(1));
            let high = self.faces(cells, at - 1, Some(at).filter(|at| *at < self.length));
            let chord_mm = share.max(f32::MIN_POSITIVE) * cells.size_mm as f32;
            let each = (low + high) / (2.0 * chord_mm);
            (from..at).for_each(|at| cooled[place(at)] += each);
        }
    }

    /// How far the skin at an end faces along the line; nought towards open air.
    fn faces(&self, cells: &MouldCells, end: usize, beyond: Option<usize>) -> f32 {
        let place = |at: usize| self.first + at * self.stride;
        if beyond.is_none_or(|beyond| cells.stuff[place(beyond)] == Stuff::Air) {
            return 0.0;
        }
        let Around { leans, share } = around(cells, place(end));
        let own = cells.metal[place(end)];
        let all = leans.iter().map(|lean| lean * lean).sum::<f32>().sqrt();
        match all > 0.0 && share > EDGE * (9.0 + 9.0 * own) {
            true => leans[self.axis].abs() / all,
            false => 1.0,
        }
    }
}

/// Metal around a cell, as a part of what a flat face with as much metal in that cell would have,
/// below which the cell lies at an edge, where both faces cool. A right angle has two thirds, a
/// round bar of eight cells nine tenths.
const EDGE: f32 = 0.8;

/// The metal in a cell and the cells that touch it.
struct Around {
    /// How its share changes along each axis.
    leans: [f32; 3],
    /// The sum of the shares.
    share: f32,
}

fn around(cells: &MouldCells, place: usize) -> Around {
    let [x, y, z] = cells.cell(place);
    let [nx, ny, nz] = cells.count;
    let mut around = Around {
        leans: [0.0; 3],
        share: 0.0,
    };
    for k in z.saturating_sub(1)..(z + 2).min(nz) {
        for j in y.saturating_sub(1)..(y + 2).min(ny) {
            for i in x.saturating_sub(1)..(x + 2).min(nx) {
                let share = cells.metal[i + nx * (j + ny * k)];
                around.leans[0] += share * (i as f32 - x as f32);
                around.leans[1] += share * (j as f32 - y as f32);
                around.leans[2] += share * (k as f32 - z as f32);
                around.share += share;
            }
        }
    }
    around
}

/// Gives each cell of metal the mean of itself and its neighbours along an axis.
fn even_out(cooled: &mut [f32], cells: &MouldCells, length: usize, stride: usize) {
    let mut before = vec![0f32; stride];
    for place in 0..cooled.len() {
        let at = place / stride % length;
        let own = cooled[place];
        if cells.metal[place] > 0.0 {
            let (mut sum, mut share) = (own * cells.metal[place], cells.metal[place]);
            if at + 1 < length {
                sum += cooled[place + stride] * cells.metal[place + stride];
                share += cells.metal[place + stride];
            }
            if at > 0 {
                sum += before[place % stride] * cells.metal[place - stride];
                share += cells.metal[place - stride];
            }
            cooled[place] = sum / share;
        }
        before[place % stride] = own;
    }
}

#[cfg(test)]
mod tests {
    use super::thickness_mm;
    use crate::cells::{MouldCells, Stuff};

    /// A body by how far a place lies outside of it, in cells, in a box of 48 cells.
    fn body(outside: impl Fn([f64; 3]) -> f64) -> MouldCells {
        let count = [48; 3];
        let mut cells = MouldCells {
            size_mm: 2.0,
            count,
            origin_mm: [0.0; 3],
            stuff: vec![Stuff::Sand; 48 * 48 * 48],
            metal: vec![0.0; 48 * 48 * 48],
        };
        for place in 0..cells.stuff.len() {
            let at = cells.cell(place).map(|i| i as f64 + 0.5 - 24.0);
            let share = (0.5 - outside(at)).clamp(0.0, 1.0);
            if share > 0.0 {
                cells.stuff[place] = Stuff::Metal;
                cells.metal[place] = share as f32;
            }
        }
        cells
    }

    fn middle_of(cells: &MouldCells) -> f64 {
        f64::from(thickness_mm(cells)[cells.index([24, 24, 24])])
    }

    #[test]
    fn plates_bars_and_balls_have_twice_their_volume_over_their_surface() {
        // A plate of 8 cells, flat and leaning; a square and a round bar; a ball.
        for lean in [0.0f64, 15.0, 30.0, 45.0] {
            let (sin, cos) = lean.to_radians().sin_cos();
            let plate = body(|[x, _, z]| (x * sin + z * cos).abs() - 4.0);
            let found = middle_of(&plate);
            assert!((found - 16.0).abs() < 1.0, "{found} at {lean}");
        }
        let square = body(|[x, _, z]| x.abs().max(z.abs()) - 5.0);
        assert!(
            (middle_of(&square) - 10.0).abs() < 0.3,
            "{}",
            middle_of(&square)
        );
        let round = body(|[x, _, z]| x.hypot(z) - 8.0);
        assert!(
            (middle_of(&round) - 16.0).abs() < 0.8,
            "{}",
            middle_of(&round)
        );
        let ball = body(|[x, y, z]| x.hypot(y).hypot(z) - 12.0);
        assert!(
            (middle_of(&ball) - 16.0).abs() < 0.8,
            "{}",
            middle_of(&ball)
        );
    }

    #[test]
    fn an_open_top_does_not_cool() {
        let mut plate = body(|[_, _, z]| z.abs() - 4.0);
        for place in 0..plate.stuff.len() {
            if plate.stuff[place] == Stuff::Sand && plate.cell(place)[2] > 24 {
                plate.stuff[place] = Stuff::Air;
            }
        }
        assert!(
            (middle_of(&plate) - 32.0).abs() < 1e-3,
            "{}",
            middle_of(&plate)
        );
    }
}
