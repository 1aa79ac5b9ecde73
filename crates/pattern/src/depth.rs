//! Depth: how far each cell of metal lies from the nearest cell outside.
//!
//! Exact distances between the middles of cells, found one axis after the other by the lower
//! envelope of parabolas (`felzenszwalb-2012`), less the half cell between the outer middle and
//! the wall.

use crate::cells::Cells;

/// Depth of every cell, mm; nought outside.
pub fn depths(cells: &Cells) -> Vec<f64> {
    let far = cells.count.iter().map(|n| (n * n) as f64).sum::<f64>();
    let mut squared: Vec<f64> = (0..cells.volume_mm3.len())
        .map(|cell| if cells.is_solid(cell) { far } else { 0.0 })
        .collect();
    for axis in 0..3 {
        sweep(cells, &mut squared, axis);
    }
    squared
        .iter()
        .map(|square| (square.sqrt() - 0.5).max(0.0) * cells.size_mm)
        .collect()
}

/// Takes every line of cells along one axis through the envelope.
fn sweep(cells: &Cells, squared: &mut [f64], axis: usize) {
    let (length, stride) = (cells.count[axis], cells.strides()[axis]);
    let mut line = vec![0.0; length];
    let mut envelope = Envelope::with_room(length);
    for start in starts(cells, axis) {
        for (place, value) in line.iter_mut().enumerate() {
            *value = squared[start + place * stride];
        }
        if line.iter().all(|value| *value == 0.0) {
            continue;
        }
        envelope.build(&line);
        let mut piece = 0;
        for place in 0..length {
            while envelope.from[piece + 1] < place as f64 {
                piece += 1;
            }
            let away = place as f64 - envelope.at[piece] as f64;
            squared[start + place * stride] = away * away + line[envelope.at[piece]];
        }
    }
}

/// The first cell of every line along an axis.
fn starts(cells: &Cells, axis: usize) -> impl Iterator<Item = usize> {
    let [one, other] = [(axis + 1) % 3, (axis + 2) % 3].map(|across| {
        let (count, stride) = (cells.count[across], cells.strides()[across]);
        (0..count).map(move |place| place * stride)
    });
    one.flat_map(move |near| other.clone().map(move |far| near + far))
}

/// The parabolas that are lowest somewhere, and from where on.
struct Envelope {
    at: Vec<usize>,
    from: Vec<f64>,
}

impl Envelope {
    fn with_room(length: usize) -> Envelope {
        Envelope {
            at: Vec::with_capacity(length),
            from: Vec::with_capacity(length + 1),
        }
    }

    fn build(&mut self, line: &[f64]) {
        self.at.clear();
        self.from.clear();
        self.at.push(0);
        self.from.push(f64::NEG_INFINITY);
        for place in 1..line.len() {
            let mut meet = self.meeting(line, place);
            while self.at.len() > 1 && meet <= self.from[self.at.len() - 1] {
                self.at.pop();
                self.from.pop();
                meet = self.meeting(line, place);
            }
            self.at.push(place);
            self.from.push(meet);
        }
        self.from.push(f64::INFINITY);
    }

    /// Where the parabola of `place` falls below the last one kept.
    fn meeting(&self, line: &[f64], place: usize) -> f64 {
        let last = self.at[self.at.len() - 1];
        let (p, q) = (place as f64, last as f64);
        ((line[place] + p * p) - (line[last] + q * q)) / (2.0 * (p - q))
    }
}
