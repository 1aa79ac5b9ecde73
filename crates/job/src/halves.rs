//! One side of a mould that stands for both, in the freezing of a job.

use measure::text::rounded;
use pour::halves::{MOST_UNLIKE, Sides, halve, sides};
use pour::meshing::Meshed;

use crate::freezing_told::{per_cent, place};
use crate::words::said::Said;

/// What came of the wish to have one side stand for both.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Halves {
    /// The middle planes across x and y.
    pub sides: [Sides; 2],
    /// Across which of them one side stands for both.
    pub across: [bool; 2],
    /// The most by which metal came hotter to one side than to the other, K; both take the mean.
    pub start_off_k: f64,
}

/// Has the low side stand for both in either grid, across the planes where both grids find them
/// alike.
pub(crate) fn halves(grids: &mut [Meshed; 2]) -> Halves {
    let [narrow, wide] = grids.each_ref().map(sides);
    let across = [0, 1].map(|axis: usize| narrow[axis].are_alike() && wide[axis].are_alike());
    grids.iter_mut().for_each(|grid| halve(grid, across));
    Halves {
        sides: narrow,
        across,
        start_off_k: 0.0,
    }
}

/// Least by which two sides differ at the start that is worth telling, K: the books differ by more
/// about the heat of any metal.
const LEAST_OFF_K: f64 = 5.0;

impl Halves {
    /// What came of it, in words.
    pub fn told(&self) -> Vec<Said> {
        let folded = self.sides.iter().filter(|side| self.across[side.axis]);
        let planes: Vec<String> = folded.map(plane).collect();
        let mut told = Vec::new();
        if !planes.is_empty() {
            told.push(Said::new("freeze-halved").with("planes", planes.join(", ")));
        }
        if self.start_off_k >= LEAST_OFF_K {
            let off = format!("{:.0} K", self.start_off_k);
            told.push(Said::new("freeze-start-off").with("off", off));
        }
        let whole = self.sides.iter().filter(|side| !self.across[side.axis]);
        told.extend(whole.map(unlike));
        told
    }
}

fn unlike(side: &Sides) -> Said {
    let said = match side.place_mm {
        Some(place_mm) if side.unlike > MOST_UNLIKE => Said::new("freeze-unlike")
            .with("share", per_cent(side.unlike.min(1.0)))
            .with("place", place(place_mm)),
        _ => Said::new("freeze-sand-unlike"),
    };
    said.with("plane", plane(side))
}

fn plane(side: &Sides) -> String {
    let axis = ["x", "y"][side.axis];
    format!("{axis} = {} mm", rounded(side.at_mm, 3))
}
