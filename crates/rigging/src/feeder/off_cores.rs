//! Where a feeder on top of its casting stands so that it does not stand on a core.

use std::f64::consts::TAU;

use super::{APART_MM, Clear, Next};
use crate::bars::ROUND_SLOPE;
use crate::given::Heavy;
use crate::plan_view::{Footprint, Point, along, flat};

/// Rings and ways tried over a section for a feeder on top that would stand on a core: out to one
/// diameter of its largest ball, past which the section no longer feels it.
const RINGS: usize = 6;
const WAYS_ON_TOP: usize = 24;

impl Next<'_> {
    /// The place over a section that lies nearest to its middle with sand between the feeder and
    /// all cores; where there is none, the one with the most of it.
    pub(super) fn off_cores(&self, heavy: &Heavy, clear: &Clear<'_>) -> Point {
        let middle = flat(heavy.place_mm);
        let step_mm = heavy.inscribed.as_mm() / RINGS as f64;
        let mut best = (
            self.off_cores_mm(middle, clear).unwrap_or(f64::INFINITY),
            middle,
        );
        for ring in 1..=RINGS {
            if best.0 >= APART_MM {
                break;
            }
            for way in 0..WAYS_ON_TOP {
                let (y, x) = (TAU * way as f64 / WAYS_ON_TOP as f64).sin_cos();
                let point = along(middle, [x, y], step_mm * ring as f64);
                let Some(sand_mm) = self.off_cores_mm(point, clear) else {
                    continue;
                };
                // A hair of sand is no reason to stand further off.
                if sand_mm.min(APART_MM) > best.0 + 0.1 {
                    best = (sand_mm, point);
                }
            }
        }
        best.1
    }

    /// Sand between cores and a feeder on top of the casting; nothing where it has no metal.
    fn off_cores_mm(&self, point: Point, clear: &Clear<'_>) -> Option<f64> {
        let skin = *self.lying.heights_at(point).last()?;
        let cope = self.given.flask.cope.as_mm();
        let widest = 2.0 * self.radius_mm() + 2.0 * ROUND_SLOPE * (cope - skin).max(0.0);
        let covers = Footprint::round(point, widest);
        let cores = clear.castings.iter().flat_map(|lying| &lying.cores);
        let sand = cores.map(|core| covers.gap_to(&core.mesh, [skin, cope.max(skin)]));
        Some(sand.fold(f64::INFINITY, f64::min))
    }
}
