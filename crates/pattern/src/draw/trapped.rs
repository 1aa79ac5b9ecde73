//! The room in a part's columns that lies between metal below and metal above, joined to regions.

use rayon::prelude::*;

use super::columns::{Columns, Plot};
use crate::mesh::Mesh;
use crate::rays::along;
use crate::tree::Tree;

/// Room between two stretches of metal of one column.
#[derive(Clone, Copy, Debug)]
pub struct Gap {
    /// The column.
    pub column: u32,
    /// Where the metal below ends, mm.
    pub from_mm: f64,
    /// Where the metal above begins, mm.
    pub to_mm: f64,
    /// The region it belongs to.
    pub region: u32,
}

/// All gaps of some columns, column by column.
pub struct Held {
    /// The columns.
    pub columns: Columns,
    /// Their gaps, in the order of the columns and from below.
    pub gaps: Vec<Gap>,
    /// For each region, whether it still holds once the pattern has been rapped.
    pub holds: Vec<bool>,
    starts: Vec<u32>,
}

/// A gap lower than this holds no sand, mm: the finest grain of a moulding sand is about as thick
/// (common practice, no source). With nought a seam between two bodies would count as room.
const GRAIN_MM: f64 = 0.05;

/// Gaps of one region asked whether they outlast the rapping, those furthest inside first: when so
/// many do not, none does.
const ASKED: usize = 400;

/// Lines around a gap, one rapping play away.
const AROUND: usize = 8;

impl Held {
    /// The gaps of some columns, those that touch joined to regions; none held as yet.
    pub fn of(columns: Columns) -> Held {
        let mut gaps = Vec::new();
        let mut starts = Vec::with_capacity(columns.len() + 1);
        for column in 0..columns.len() {
            starts.push(gaps.len() as u32);
            let spans = columns.spans(column);
            let between = spans
                .windows(2)
                .map(|pair| (pair[0].to_mm, pair[1].from_mm));
            let tall = between.filter(|(from_mm, to_mm)| to_mm - from_mm > GRAIN_MM);
            gaps.extend(tall.map(|(from_mm, to_mm)| Gap {
                column: column as u32,
                from_mm,
                to_mm,
                region: 0,
            }));
        }
        starts.push(gaps.len() as u32);
        let mut held = Held {
            columns,
            gaps,
            holds: Vec::new(),
            starts,
        };
        held.join();
        held
    }

    /// The gaps of one column, by their numbers.
    pub fn gaps_of(&self, column: usize) -> std::ops::Range<usize> {
        self.starts[column] as usize..self.starts[column + 1] as usize
    }

    /// The rectangle around all gaps with finer squares over it, if that is worth the while.
    pub fn closer_plot(&self, along_longer_side: usize) -> Option<Plot> {
        let mut ends = ([f64::INFINITY; 2], [f64::NEG_INFINITY; 2]);
        for gap in &self.gaps {
            let place = self.columns.place_mm(gap.column as usize);
            ends = (
                [0, 1].map(|axis| ends.0[axis].min(place[axis])),
                [0, 1].map(|axis| ends.1[axis].max(place[axis])),
            );
        }
        let spare = 2.0 * self.columns.size_mm;
        let (low, high) = (ends.0.map(|x| x - spare), ends.1.map(|x| x + spare));
        let longer_mm = (high[0] - low[0]).max(high[1] - low[1]);
        let least_mm = self.columns.size_mm / MOST_CLOSER;
        let size_mm = (longer_mm / along_longer_side.max(1) as f64).max(least_mm);
        (size_mm < WORTH * self.columns.size_mm).then(|| Plot::over(low, high, size_mm))
    }

    /// Asks each region whether any of it lies further than the play from metal: what is nearer
    /// has been knocked away when the pattern was rapped.
    pub fn rap(&mut self, turned: &Mesh, tree: &Tree, play_mm: f64) {
        let regions = self.holds.len();
        let mut members: Vec<Vec<usize>> = vec![Vec::new(); regions];
        for (number, gap) in self.gaps.iter().enumerate() {
            members[gap.region as usize].push(number);
        }
        let holds = members.into_par_iter().map(|mut gaps| {
            gaps.sort_by_cached_key(|&gap| std::cmp::Reverse(self.neighbours(gap)));
            let mut asked = gaps.into_iter().take(ASKED);
            asked.any(|gap| self.outlasts(gap, turned, tree, play_mm))
        });
        self.holds = holds.collect();
    }

    /// Number of columns beside a gap in which its region goes on.
    pub fn neighbours(&self, gap: usize) -> usize {
        let beside = self.columns.beside(self.gaps[gap].column as usize);
        beside
            .filter(|&column| self.touching(gap, column).next().is_some())
            .count()
    }

    /// Gaps of a column that overlap with a gap in height.
    fn touching(&self, gap: usize, column: usize) -> impl Iterator<Item = usize> {
        let Gap { from_mm, to_mm, .. } = self.gaps[gap];
        let gaps = self.gaps_of(column);
        gaps.filter(move |&other| {
            self.gaps[other].from_mm < to_mm && self.gaps[other].to_mm > from_mm
        })
    }

    fn join(&mut self) {
        let mut parent: Vec<u32> = (0..self.gaps.len() as u32).collect();
        for gap in 0..self.gaps.len() {
            let column = self.gaps[gap].column as usize;
            for other in self.columns.beside(column).filter(|&other| other > column) {
                for touching in self.touching(gap, other) {
                    let (a, b) = (
                        root(&mut parent, gap as u32),
                        root(&mut parent, touching as u32),
                    );
                    parent[a.max(b) as usize] = a.min(b);
                }
            }
        }
        let mut regions = 0;
        let mut number = vec![u32::MAX; self.gaps.len()];
        for gap in 0..self.gaps.len() {
            let first = root(&mut parent, gap as u32) as usize;
            if number[first] == u32::MAX {
                number[first] = regions;
                regions += 1;
            }
            self.gaps[gap].region = number[first];
        }
        self.holds = vec![false; regions as usize];
    }

    /// Whether some of a gap is clear of metal one play away all around.
    fn outlasts(&self, gap: usize, turned: &Mesh, tree: &Tree, play_mm: f64) -> bool {
        let Gap {
            column,
            from_mm,
            to_mm,
            ..
        } = self.gaps[gap];
        let [x, y] = self.columns.place_mm(column as usize);
        let mut clear = vec![(from_mm, to_mm)];
        for turn in 0..AROUND {
            let angle = std::f64::consts::TAU * turn as f64 / AROUND as f64;
            let beside = [x + play_mm * angle.cos(), y + play_mm * angle.sin(), 0.0];
            take_metal(&mut clear, turned, tree, beside);
        }
        clear
            .iter()
            .any(|(from_mm, to_mm)| to_mm - from_mm > GRAIN_MM)
    }
}

/// Closer squares are cast only when they are smaller by this, and at most so much smaller.
const WORTH: f64 = 0.6;
const MOST_CLOSER: f64 = 4.0;

/// Takes the metal along a line out of some stretches.
fn take_metal(clear: &mut Vec<(f64, f64)>, turned: &Mesh, tree: &Tree, through: [f64; 3]) {
    let mut depth = 0;
    let mut entered = 0.0;
    for met in along(turned, tree, 2, through) {
        let before = depth;
        depth += met.step;
        if before <= 0 && depth > 0 {
            entered = met.at;
        }
        if before > 0 && depth <= 0 {
            let cut = |&(from, to): &(f64, f64)| [(from, to.min(entered)), (from.max(met.at), to)];
            let left = clear.iter().flat_map(cut).filter(|(from, to)| to > from);
            *clear = left.collect();
        }
    }
}

fn root(parent: &mut [u32], mut of: u32) -> u32 {
    while parent[of as usize] != of {
        let above = parent[parent[of as usize] as usize];
        parent[of as usize] = above;
        of = above;
    }
    of
}
