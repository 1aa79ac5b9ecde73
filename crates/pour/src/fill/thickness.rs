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
    for (axis, (length, stride)) in [(nx, 1), (ny, nx), (nz, nx * ny)].into_iter().enumerate() {
        let lines = Lines {
            axis,
            length,
            stride,
        };
        lines.add(cells, &mut cooled);
    }
    even_slivers(cells, &mut cooled);
    for cooled in cooled.iter_mut().filter(|cooled| **cooled > 0.0) {
        *cooled = 1.0 / *cooled;
    }
    for (cooled, metal) in cooled.iter_mut().zip(&cells.metal) {
        if *metal > 0.0 && *cooled == 0.0 {
            *cooled = f32::INFINITY;
        }
    }
    cooled
}

/// Share of metal below which a cell feels what its neighbours lose, along with its own: it hangs
/// on them, and short chords at a corner would make a foil of it. Nought would leave the foils; one
/// would thicken the corners of every bar.
const SLIVER: f32 = 0.5;

/// Gives slivers the mean of themselves and their neighbours, by their metal.
fn even_slivers(cells: &MouldCells, cooled: &mut [f32]) {
    let is_sliver = |metal: f32| metal > 0.0 && metal < SLIVER;
    let slivers = (0..cells.metal.len()).filter(|place| is_sliver(cells.metal[*place]));
    let even = |place: usize| {
        let (mut sum, mut share) = (cooled[place] * cells.metal[place], cells.metal[place]);
        for next in cells.neighbours(place) {
            sum += cooled[next] * cells.metal[next];
            share += cells.metal[next];
        }
        (place, sum / share)
    };
    let evened: Vec<(usize, f32)> = slivers.map(even).collect();
    for (place, even) in evened {
        cooled[place] = even;
    }
}

/// The lines of cells along an axis.
struct Lines {
    axis: usize,
    length: usize,
    stride: usize,
}

/// A chord that has begun: its first cell along the line, and the metal on it so far.
#[derive(Clone, Copy)]
struct Chord {
    from: usize,
    share: f32,
}

impl Lines {
    /// Adds what cools each chord, side by side with its neighbours so that the cells are read in
    /// the order in which they lie.
    fn add(&self, cells: &MouldCells, cooled: &mut [f32]) {
        let mut open: Vec<Option<Chord>> = vec![None; self.stride];
        for block in 0..cells.stuff.len() / (self.length * self.stride).max(1) {
            for at in 0..self.length {
                let first = (block * self.length + at) * self.stride;
                let row = &cells.metal[first..first + self.stride];
                for (line, (chord, share)) in open.iter_mut().zip(row).enumerate() {
                    if *share > 0.0 {
                        let chord = chord.get_or_insert(Chord {
                            from: at,
                            share: 0.0,
                        });
                        chord.share += share;
                    } else if let Some(chord) = chord.take() {
                        self.close(cells, cooled, first + line, (chord, at));
                    }
                }
            }
            let beyond = (block + 1) * self.length * self.stride;
            for (line, chord) in open.iter_mut().enumerate() {
                if let Some(chord) = chord.take() {
                    self.close(cells, cooled, beyond + line, (chord, self.length));
                }
            }
        }
    }

    /// Spreads what cools a chord over its cells; `beyond` is the place after its last.
    fn close(
        &self,
        cells: &MouldCells,
        cooled: &mut [f32],
        beyond: usize,
        (chord, at): (Chord, usize),
    ) {
        let first = beyond - (at - chord.from) * self.stride;
        let before = (chord.from > 0).then(|| first - self.stride);
        let after = (at < self.length).then_some(beyond);
        let low = self.faces(cells, first, before);
        let high = self.faces(cells, beyond - self.stride, after);
        let chord_mm = chord.share.max(f32::MIN_POSITIVE) * cells.size_mm as f32;
        let each = (low + high) / (2.0 * chord_mm);
        for place in (first..beyond).step_by(self.stride) {
            cooled[place] += each;
        }
    }

    /// How far the skin at an end faces along the line; nought towards open air.
    fn faces(&self, cells: &MouldCells, end: usize, beyond: Option<usize>) -> f32 {
        if beyond.is_none_or(|beyond| cells.stuff[beyond] == Stuff::Air) {
            return 0.0;
        }
        let Around { leans, share } = around(cells, end);
        let own = cells.metal[end];
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
    let at = cells.cell(place);
    let [nx, ny, _] = cells.count;
    let mut around = Around {
        leans: [0.0; 3],
        share: 0.0,
    };
    let near = |axis: usize| at[axis].saturating_sub(1)..(at[axis] + 2).min(cells.count[axis]);
    let along = near(0);
    for k in near(2) {
        for j in near(1) {
            let row = nx * (j + ny * k);
            let shares = &cells.metal[row + along.start..row + along.end];
            let sum: f32 = shares.iter().sum();
            around.share += sum;
            around.leans[1] += sum * (j as f32 - at[1] as f32);
            around.leans[2] += sum * (k as f32 - at[2] as f32);
            if let [west, _, east] = shares {
                around.leans[0] += east - west;
            }
        }
    }
    around
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
