//! What the box holds at a moment, read off the lists of a run row by row.

use rayon::iter::{IndexedParallelIterator, IntoParallelIterator, ParallelIterator};
use rayon::slice::ParallelSliceMut;

use super::Multirate;
use crate::material::Material;
use crate::multirate::quick::{Quick, Span};
use crate::run::Moment;

/// A straight line of heat content along temperature.
struct Line {
    celsius: f64,
    j_m3: f64,
    j_m3k: f64,
}

impl Multirate<'_> {
    /// Heat in all cells, J.
    pub fn joules(&self) -> f64 {
        let [along, rows, planes] = self.case.grid.counts();
        let lines = self.lines();
        let of_plane = |z: usize| {
            let mut heats = vec![0.0; along];
            let mut joules = 0.0;
            for y in 0..rows {
                self.heats(&lines, [y, z], &mut heats);
                let volumes = self.case.volumes([y, z]);
                let parts = heats.iter().zip(volumes);
                joules += parts.map(|(heat, volume)| heat * volume).sum::<f64>();
            }
            joules
        };
        let joules: Vec<f64> = (0..planes).into_par_iter().map(of_plane).collect();
        joules.iter().sum()
    }

    /// Temperatures and heat contents as they stand.
    pub fn moment(&self, now_s: f64) -> Moment {
        let mut celsius = self.without_rim(&self.celsius);
        self.reset_voids(&mut celsius);
        Moment {
            time_s: now_s,
            celsius,
            j_m3: self.all_heats(),
        }
    }

    /// The same at the end, in the list that the run leaves.
    pub fn into_moment(mut self, now_s: f64) -> Moment {
        let along = self.padded.counts[0];
        let j_m3 = self.all_heats();
        let mut celsius = std::mem::take(&mut self.celsius);
        for place in self.padded.rows() {
            let (cell, at) = (self.case.grid.index(place), self.padded.at(place));
            celsius.copy_within(at..at + along, cell);
        }
        celsius.truncate(self.case.grid.cells());
        celsius.shrink_to_fit();
        self.reset_voids(&mut celsius);
        Moment {
            time_s: now_s,
            celsius,
            j_m3,
        }
    }

    /// Gives cells that are not solved the temperature of their start.
    fn reset_voids(&self, celsius: &mut [f32]) {
        let cells = celsius.iter_mut().zip(&self.case.cells);
        for ((celsius, number), start_c) in cells.zip(&self.case.start_c) {
            if usize::from(*number) >= self.tables.len() {
                *celsius = *start_c;
            }
        }
    }

    fn all_heats(&self) -> Vec<f32> {
        let [along, rows, _] = self.case.grid.counts();
        let lines = self.lines();
        let mut j_m3 = vec![0.0; self.case.grid.cells()];
        let planes = j_m3.par_chunks_mut((along * rows).max(1));
        planes.enumerate().for_each(|(z, j_m3)| {
            let mut heats = vec![0.0; along];
            for (y, row) in j_m3.chunks_mut(along).enumerate() {
                self.heats(&lines, [y, z], &mut heats);
                for (j_m3, heat) in row.iter_mut().zip(&heats) {
                    *j_m3 = *heat as f32;
                }
            }
        });
        j_m3
    }

    /// Heat contents of a row, J/m³, counted as in the tables; nothing in voids.
    fn heats(&self, lines: &[Option<Line>], [y, z]: [usize; 2], heats: &mut [f64]) {
        let first = self.case.grid.index([0, y, z]);
        let at = self.padded.at([0, y, z]);
        for (x, heat) in heats.iter_mut().enumerate() {
            let number = usize::from(self.case.cells[first + x]);
            *heat = match lines.get(number) {
                Some(Some(line)) => {
                    let above_k = f64::from(self.celsius[at + x]) - line.celsius;
                    line.j_m3 + line.j_m3k * above_k
                }
                Some(None) if !self.heat.is_empty() => {
                    f64::from(self.heat[at + x]) + self.tables[number].base_j_m3
                }
                _ => 0.0,
            };
        }
        let piece = self.quick_cuts.partition_point(|first| *first <= z);
        self.add_quick(&self.quick[piece - 1], at, heats);
    }

    /// Puts the heat contents of quick cells of a row in, which begins at `at` with a rim.
    fn add_quick(&self, quick: &Quick, at: usize, heats: &mut [f64]) {
        let first = quick.spans.partition_point(|span| (span.at as usize) < at);
        let within = |span: &&Span| (span.at as usize) < at + heats.len();
        let spans: Vec<_> = quick.spans[first..].iter().take_while(within).collect();
        for span in spans {
            let base = self.tables[usize::from(span.material)].base_j_m3;
            let x = span.at as usize - at;
            let row = &mut heats[x..x + span.len as usize];
            for (heat, from) in row.iter_mut().zip(span.packed()) {
                *heat = f64::from(quick.heat_of(from).0) + base;
            }
        }
    }

    fn lines(&self) -> Vec<Option<Line>> {
        let line = |material: &Material| {
            let (low, high) = material.knots.first().zip(material.knots.last())?;
            material.is_plain().then(|| Line {
                celsius: low.celsius,
                j_m3: low.j_m3,
                j_m3k: (high.j_m3 - low.j_m3) / (high.celsius - low.celsius),
            })
        };
        self.case.materials.iter().map(line).collect()
    }
}
