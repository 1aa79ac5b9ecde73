//! What the programs look up: tables of the materials, links, surroundings, spacings of the grid.

use solver::case::Condition;
use solver::laid::{Laid, Link, Outer, Ramps, Table};

use crate::packed::Packed;

/// Larger than any figure of a box, and far from the end of single precision: for what has no end.
const ENDLESS: f32 = 1e30;

/// Ramps of a temperature and of a conductivity that every table has at least: the programs ask for
/// so many all at once.
const LEAST_RAMPS: [usize; 2] = [4, 2];

/// Tables of the materials, each of as many rows.
pub struct Tables {
    /// All rows.
    pub rows: Vec<[f32; 4]>,
    /// Rows of one material.
    pub stride: usize,
}

impl Tables {
    /// Those of a case.
    pub fn of(laid: &Laid<'_>) -> Tables {
        let ramps = |table: &Table| {
            let of = [&table.celsius, &table.w_mk].map(|of: &Ramps| of.ramps.len());
            [0, 1].map(|which: usize| of[which].max(LEAST_RAMPS[which]))
        };
        let longest = laid.tables.iter().map(|table| ramps(table).iter().sum());
        let stride = 3 + longest.max().unwrap_or(0_usize);
        let mut rows = Vec::with_capacity(stride * laid.tables.len());
        for (table, levels) in laid.tables.iter().zip(&laid.levels) {
            let from = rows.len();
            let counts = ramps(table);
            rows.push([
                table.celsius.start,
                counts[0] as f32,
                table.w_mk.start,
                counts[1] as f32,
            ]);
            rows.push(levels.unwrap_or_default());
            rows.push([
                if levels.is_some() { 1.0 } else { 0.0 },
                1.0 / table.least_j_m3k,
                table.steady_w_mk.unwrap_or(-1.0),
                table.plain_j_m3k.unwrap_or(-1.0),
            ]);
            for (of, count) in [&table.celsius, &table.w_mk].into_iter().zip(counts) {
                let end = rows.len() + count;
                rows.extend(of.ramps.iter().map(|ramp| {
                    let [low, high] = [ramp.low, ramp.high].map(|end| end.clamp(-ENDLESS, ENDLESS));
                    [low, high, ramp.anchor, ramp.slope]
                }));
                rows.resize(end, [0.0; 4]);
            }
            rows.resize(from + stride, [0.0; 4]);
        }
        Tables { rows, stride }
    }
}

/// Factor of each class of swept cells if its material is plain, its material, its conductivity if
/// that never changes (else below nought).
pub fn factors(laid: &Laid<'_>, packed: &Packed) -> [[f32; 4]; 16] {
    let mut factors = [[0.0; 4]; 16];
    for (factor, material) in factors[1..].iter_mut().zip(&packed.materials) {
        let table = &laid.tables[*material];
        let plain = table.plain_j_m3k.zip(table.steady_w_mk);
        let plain = plain.map_or(0.0, |(j_m3k, w_mk)| 2.0 * w_mk / j_m3k);
        let steady = table.steady_w_mk.unwrap_or(-1.0);
        *factor = [plain, *material as f32, steady, 0.0];
    }
    factors
}

/// Whether all swept materials are plain.
pub fn are_plain(laid: &Laid<'_>, packed: &Packed) -> bool {
    let mut materials = packed.materials.iter();
    materials.all(|&material| laid.tables[material].plain_j_m3k.is_some())
}

/// Weights along a row, low then high, each as long as a row with its rest.
pub fn along(laid: &Laid<'_>, packed: &Packed) -> Vec<f32> {
    let of_row = |weights: &[f32]| {
        let mut weights = weights[..packed.shape.counts[0]].to_vec();
        weights.resize(packed.shape.pitch, 0.0);
        weights
    };
    let [low, high] = &laid.weights[0];
    [of_row(low), of_row(high)].concat()
}

/// Weights along y and z, low and high.
pub fn across(laid: &Laid<'_>, packed: &Packed) -> Vec<[f32; 2]> {
    let of_axis = |axis: usize| {
        let [low, high] = &laid.weights[axis];
        let pairs = low.iter().zip(high).map(|(low, high)| [*low, *high]);
        pairs.take(packed.shape.counts[axis])
    };
    of_axis(1).chain(of_axis(2)).collect()
}

/// Along each axis the width of each cell, one over the way to the middle of the one before, and
/// its middle, m; each list with one entry more.
pub fn axes(laid: &Laid<'_>) -> Vec<[f32; 4]> {
    let grid = &laid.case.grid;
    let of_axis = |axis: usize| {
        let count = grid.counts()[axis];
        let of_cell = move |at: usize| {
            let middle = grid.middle(axis, at);
            let before = at.checked_sub(1).map(|before| grid.middle(axis, before));
            let inverse = before.map_or(0.0, |before| 1.0 / (middle - before));
            [
                grid.width(axis, at) as f32,
                inverse as f32,
                middle as f32,
                0.0,
            ]
        };
        (0..count).map(of_cell).chain([[0.0; 4]])
    };
    (0..3).flat_map(of_axis).collect()
}

/// Links as the programs read them.
pub fn links(laid: &Laid<'_>) -> Vec<[f32; 8]> {
    let of_link = |link: &Link| {
        [
            link.area_m2 as f32,
            link.here_m as f32,
            link.there_m as f32,
            link.contact_m2kw as f32,
            (link.reach[0] as f32).min(ENDLESS),
            (link.reach[1] as f32).min(ENDLESS),
            if link.alike { 1.0 } else { 0.0 },
            0.0,
        ]
    };
    laid.links.iter().map(of_link).collect()
}

/// Surroundings as the programs read them; what is insulated is none.
pub fn outers(laid: &Laid<'_>) -> Vec<[f32; 8]> {
    let of_outer = |outer: &Outer| {
        let (kind, figure, celsius, emissivity) = match outer.condition {
            Condition::Insulated => (3.0, 0.0, 0.0, 0.0),
            Condition::Held { celsius } => (1.0, 0.0, celsius, 0.0),
            Condition::Flux { w_m2 } => (2.0, w_m2, 0.0, 0.0),
            Condition::Exchange {
                w_m2k,
                celsius,
                emissivity,
            } => (3.0, w_m2k, celsius, emissivity),
        };
        let figures = [
            kind,
            outer.area_m2,
            outer.half_m,
            figure,
            celsius,
            emissivity,
            0.0,
            0.0,
        ];
        figures.map(|figure: f64| figure as f32)
    };
    laid.outers.iter().map(of_outer).collect()
}
