//! A mould that is the same on both sides of a middle plane, followed on one side of it only: no
//! heat passes through such a plane.
//!
//! Planes across x and across y through the middle of the cells are looked at, on cells that were
//! cut in even numbers ([`crate::meshing::Meshing::even`]). A few cells at the skin may differ,
//! since the facets of a part hardly ever lie mirrored: they take what the low side has.

use solver::case::{Case, Condition, Partial};

use crate::case::MouldCase;
use crate::cells::Stuff;
use crate::meshing::Meshed;
use crate::start::Start;

/// How the two sides of a plane differ.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sides {
    /// Across which axis the plane stands: 0 for x, 1 for y.
    pub axis: usize,
    /// Where it stands, mm.
    pub at_mm: f64,
    /// Cells that differ, as a share of those of metal.
    pub unlike: f64,
    /// The first place where they do, mm.
    pub place_mm: Option<[f64; 3]>,
    /// How much wider the sand is on one side than on the other, cells.
    pub sand_off: f64,
}

/// Most cells that may differ between two sides, as a share of those of metal. Facets that are not
/// mirrored shift single cells at the skin, a hundredth of them or so; a boss or a gate that stands
/// on one side only is more.
pub const MOST_UNLIKE: f64 = 0.02;

/// Most that the sand may be wider on one side, in cells: so far out it stays cold.
const MOST_SAND_OFF: f64 = 2.0;

impl Sides {
    /// Whether one side may stand for both.
    pub fn are_alike(&self) -> bool {
        self.unlike <= MOST_UNLIKE && self.sand_off <= MOST_SAND_OFF
    }
}

/// Compares both sides of the middle planes across x and y.
pub fn sides(meshed: &Meshed) -> [Sides; 2] {
    [0, 1].map(|axis| {
        let cells = &meshed.cells;
        let count = cells.count[axis];
        let (from, size) = (cells.origin_mm[axis], cells.size_mm);
        let at_mm = from + 0.5 * count as f64 * size;
        let [low, high] = meshed.flask_mm.map(|corner| (corner[axis] - at_mm).abs());
        let unlike: Vec<usize> = match count % 2 {
            0 => pairs(meshed, axis)
                .filter(|(low, high)| cells.stuff[*low] != cells.stuff[*high])
                .map(|(low, _)| low)
                .collect(),
            // The plane would cut through cells: nothing is alike.
            _ => (0..cells.stuff.len()).collect(),
        };
        let metal = cells.stuff.iter().filter(|stuff| **stuff == Stuff::Metal);
        Sides {
            axis,
            at_mm,
            unlike: 2.0 * unlike.len() as f64 / metal.count().max(1) as f64,
            place_mm: unlike.first().map(|&cell| cells.middle_mm(cell)),
            sand_off: (low - high).abs() / size,
        }
    })
}

/// Makes the high side like the low one across these axes, and has the mould followed on the low
/// side only. The pieces of cells stay as they are.
pub fn halve(meshed: &mut Meshed, across: [bool; 2]) {
    for axis in [0, 1].into_iter().filter(|&axis| across[axis]) {
        let both: Vec<(usize, usize)> = pairs(meshed, axis).collect();
        for (low, high) in both {
            let was = meshed.cells.stuff[high];
            meshed.cells.stuff[high] = meshed.cells.stuff[low];
            meshed.cells.metal[high] = meshed.cells.metal[low];
            meshed.surface_mm2[high] = meshed.surface_mm2[low];
            if was != Stuff::Metal {
                meshed.piece[high] = meshed.piece[low];
            }
        }
    }
    meshed.held_mm3 = (0..meshed.cells.metal.len())
        .map(|cell| meshed.cells.metal_mm3(cell))
        .sum();
    meshed.halved = across;
}

/// A start with the mean of both sides on either, and the most that a cell of metal differed from
/// the one across, K.
pub fn evened(start: &Start, meshed: &Meshed) -> (Start, f64) {
    let Start::Each(each) = start else {
        return (start.clone(), 0.0);
    };
    let (mut each, mut most_k) = (each.clone(), 0.0_f64);
    for axis in [0, 1].into_iter().filter(|&axis| meshed.halved[axis]) {
        for (low, high) in pairs(meshed, axis) {
            if meshed.cells.stuff[low] == Stuff::Metal {
                most_k = most_k.max(f64::from((each[low] - each[high]).abs()));
            }
            let mean = 0.5 * (each[low] + each[high]);
            each[low] = mean;
            each[high] = mean;
        }
    }
    (Start::Each(each), most_k)
}

/// Each cell of the low side with the one across the plane.
fn pairs(meshed: &Meshed, axis: usize) -> impl Iterator<Item = (usize, usize)> + '_ {
    let cells = &meshed.cells;
    let count = cells.count[axis];
    (0..cells.stuff.len()).filter_map(move |low| {
        let mut at = cells.cell(low);
        at[axis] = count - 1 - at[axis];
        (2 * at[axis] >= count).then(|| (low, cells.index(at)))
    })
}

/// The case of the low side only; both sides of the mould find their cells in it.
pub(crate) fn low_side(whole: MouldCase, meshed: &Meshed) -> MouldCase {
    let mut half = whole;
    for axis in [0, 1].into_iter().filter(|&axis| meshed.halved[axis]) {
        let plane = half.first[axis] + meshed.cells.count[axis] / 2;
        half.case = below(&half.case, axis, plane);
        half.folded[axis] = Some(plane);
    }
    half
}

/// What of a case lies below an edge of its cells, with a face there that no heat passes.
fn below(whole: &Case, axis: usize, edge: usize) -> Case {
    let kept: Vec<usize> = (0..whole.grid.cells())
        .filter(|&cell| whole.grid.place(cell)[axis] < edge)
        .collect();
    let mut grid = whole.grid.clone();
    grid.edges_m[axis].truncate(edge + 1);
    let mut faces = whole.faces;
    faces[2 * axis + 1] = Condition::Insulated;
    let of = |list: &[f32]| -> Vec<f32> { kept.iter().map(|&cell| list[cell]).collect() };
    Case {
        materials: whole.materials.clone(),
        voids: whole.voids.clone(),
        cells: kept.iter().map(|&cell| whole.cells[cell]).collect(),
        contacts: whole.contacts.clone(),
        faces,
        start_c: of(&whole.start_c),
        partial: whole.partial.as_ref().map(|partial| Partial {
            filled: of(&partial.filled),
            open: partial.open.each_ref().map(|open| of(open)),
        }),
        grid,
    }
}
