//! How the box lies in the lists of a card, and which part of it a program sees at a time.
//!
//! Rows are a whole number of runs of 32 cells, since a card takes 32 cells at a time, and planes
//! begin where a part of a list may begin. A plane that is never solved lies before the box and one
//! behind it, so that every cell has neighbours. Where a list is longer than a program may see, the
//! box is worked at slab by slab; each slab sees a plane beyond its own on both sides.

use std::ops::Range;

use solver::elsewhere::Unable;

/// Cells of a run.
pub const RUN: usize = 32;

/// Cells of which a plane has a whole number: the beginning of each is then one at which a part of
/// any list may begin.
const PLANE: usize = 512;

/// Runs of which a plane has a whole number, for the same reason.
pub const PLANE_RUNS: usize = 8;

/// How the box lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Shape {
    /// Cells along x, y and z.
    pub counts: [usize; 3],
    /// Cells from a row to the next.
    pub pitch: usize,
    /// Cells from a plane to the next.
    pub plane: usize,
}

impl Shape {
    /// Of a box with so many cells.
    pub fn of(counts: [usize; 3]) -> Shape {
        let pitch = counts[0].next_multiple_of(RUN);
        Shape {
            counts,
            pitch,
            plane: (pitch * counts[1]).next_multiple_of(PLANE),
        }
    }

    /// Length of a list with its planes before and behind.
    pub fn len(&self) -> usize {
        self.plane * (self.counts[2] + 2)
    }

    /// Runs that would fill a row.
    pub fn runs_of_row(&self) -> usize {
        self.pitch / RUN
    }

    /// Where a cell stands.
    pub fn at(&self, [x, y, z]: [usize; 3]) -> usize {
        (z + 1) * self.plane + y * self.pitch + x
    }
}

/// How much of each list the planes before each plane take, and all of them.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Starts {
    /// Runs.
    pub runs: Vec<u32>,
    /// Rims.
    pub rims: Vec<u32>,
    /// Lanes of runs that have surroundings.
    pub arounds: Vec<u32>,
}

/// Bytes of a cell in a list of temperatures.
pub const CELL_BYTES: u64 = 4;

/// Bytes of a run in the list of runs.
pub const RUN_BYTES: u64 = 32;

/// Bytes of a lane in the longest list of lanes, that of what is written down.
pub const LANE_BYTES: u64 = 20;

/// Bytes of a rim.
pub const RIM_BYTES: u64 = 24;

/// Bytes of a lane with surroundings.
pub const AROUND_BYTES: u64 = 32;

/// Planes of each slab, so that a program sees at most so many bytes of a list.
///
/// # Errors
///
/// A plane that does not fit with those beside it.
pub fn slabs(shape: &Shape, starts: &Starts, seen_bytes: u64) -> Result<Vec<Range<usize>>, Unable> {
    let planes = shape.counts[2];
    let most = |own: &Range<usize>| {
        let seen = own.start.saturating_sub(1)..(own.end + 1).min(planes);
        let between = |starts: &[u32], of: &Range<usize>| {
            u64::from(starts[of.end]) - u64::from(starts[of.start])
        };
        let runs = between(&starts.runs, &seen);
        [
            (own.len() as u64 + 2) * shape.plane as u64 * CELL_BYTES,
            runs * (RUN as u64 * LANE_BYTES).max(RUN_BYTES),
            between(&starts.rims, own) * RIM_BYTES,
            between(&starts.arounds, own) * AROUND_BYTES,
        ]
        .into_iter()
        .fold(0, u64::max)
    };
    let mut slabs = Vec::new();
    let mut start = 0;
    while start < planes {
        let needed_bytes = most(&(start..start + 1));
        if needed_bytes > seen_bytes {
            return Err(Unable::TooLarge {
                what: "a plane of the box with those beside it",
                needed_bytes,
                had_bytes: seen_bytes,
            });
        }
        let fits = |end: &usize| most(&(start..*end)) <= seen_bytes;
        // The bytes only rise with the planes, so that the last that fits is found by halving.
        let ends: Vec<usize> = (start + 1..=planes).collect();
        let end = ends[ends.partition_point(fits).max(1) - 1];
        slabs.push(start..end);
        start = end;
    }
    Ok(slabs)
}

#[cfg(test)]
mod tests {
    use super::{Shape, Starts, slabs};
    use solver::elsewhere::Unable;

    #[test]
    fn slabs_cover_all_planes_and_see_no_more_than_they_may() {
        let shape = Shape::of([40, 30, 25]);
        assert_eq!((shape.pitch, shape.plane), (64, 2048));
        let none = vec![0; 26];
        let starts = Starts {
            runs: (0..26).map(|plane| plane * 8).collect(),
            rims: none.clone(),
            arounds: none,
        };
        let whole = slabs(&shape, &starts, 1 << 30).expect("planes fit");
        assert!(whole.len() == 1 && whole[0] == (0..25), "{whole:?}");
        let parts = slabs(&shape, &starts, 9 * 8192).expect("planes fit");
        assert_eq!(parts, [0..7, 7..14, 14..21, 21..25]);
        let error = slabs(&shape, &starts, 2 * 8192);
        assert!(
            matches!(
                error,
                Err(Unable::TooLarge {
                    needed_bytes: 24576,
                    ..
                })
            ),
            "{error:?}"
        );
    }
}
