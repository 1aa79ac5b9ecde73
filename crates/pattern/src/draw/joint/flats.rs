//! Level faces of the part, on which the joint lies exactly where it all but does.

use crate::boolean::FILM_MM;
use crate::mesh::Mesh;

/// Corners of a level face differ by no more than this, mm: files round them by more than nothing.
const LEVEL_MM: f64 = 1e-6;

/// Heights of the level faces of a part, the lowest first.
pub(super) struct Flats(Vec<f64>);

impl Flats {
    /// Those of a part as it lies in the draw.
    pub(super) fn of(turned: &Mesh) -> Flats {
        let level = |facet: usize| {
            let [a, b, c] = turned.corners(facet).map(|corner| corner[2]);
            ((a - b).abs() <= LEVEL_MM && (a - c).abs() <= LEVEL_MM).then_some(a)
        };
        let mut heights: Vec<f64> = (0..turned.triangles.len()).filter_map(level).collect();
        heights.sort_by(f64::total_cmp);
        heights.dedup();
        Flats(heights)
    }

    /// The level face that a height all but lies on, or the height.
    pub(super) fn nearest(&self, height_mm: f64) -> f64 {
        let above = self.0.partition_point(|flat| *flat < height_mm);
        let near = self.0[above.saturating_sub(1)..].iter().take(2).copied();
        let off = |flat: &f64| (flat - height_mm).abs();
        let nearest = near.min_by(|a, b| off(a).total_cmp(&off(b)));
        nearest
            .filter(|flat| off(flat) <= FILM_MM)
            .unwrap_or(height_mm)
    }
}
