//! A case packed into lists for a card: runs of staged cells, what lies at their sides, and which
//! cells are swept.

use rayon::iter::{IndexedParallelIterator, IntoParallelIterator, ParallelIterator};
use rayon::slice::ParallelSliceMut;
use solver::elsewhere::Unable;
use solver::laid::{Beside, Goes, Laid, Rim};

use crate::shape::{PLANE_RUNS, RUN, Shape, Starts};

/// The lists.
#[derive(Debug)]
pub struct Packed {
    /// How the box lies.
    pub shape: Shape,
    /// How much of the lists below the planes before each plane take.
    pub starts: Starts,
    /// Runs, as the programs read them.
    pub runs: Vec<[u32; 8]>,
    /// Material and rim of each lane.
    pub kinds: Vec<u32>,
    /// One over the volume of each lane, 1/m³.
    pub inverses: Vec<f32>,
    /// The same of a cell that is like most others.
    pub even_inverse: f32,
    /// What lies at the six sides of each rim.
    pub rims: Vec<[u32; 6]>,
    /// The class of each swept cell, eight to a word.
    pub classes: Vec<u32>,
    /// The material of each class, from one.
    pub materials: Vec<usize>,
}

/// No run, and no material.
const NONE: u32 = u32::MAX;
const NO_MATERIAL: u32 = 255;

/// A run says by these bits that all its lanes are of one material, and like most others in volume.
const ONE_MATERIAL: u32 = 1 << 8;
const EVEN: u32 = 1 << 9;

/// From this bit on a run says the number of its surroundings.
const AROUND_FROM: u32 = 10;

/// From this bit on a lane says the number of its rim.
const RIM_FROM: u32 = 8;

/// Most classes: they are four bits.
const MOST_CLASSES: usize = 15;

/// Most rims, whose numbers have the bits that a material leaves.
const MOST_RIMS: u64 = (1 << (32 - RIM_FROM)) - 2;

/// Sorts of sides, above the number of a link or of surroundings.
const CLOSED: u32 = 1 << 29;
const STAGED: u32 = 2 << 29;
const SWEPT: u32 = 3 << 29;
const AROUND: u32 = 4 << 29;

/// The runs of a plane, with their lanes.
struct OfPlane {
    runs: Vec<[u32; 8]>,
    kinds: Vec<u32>,
    inverses: Vec<f32>,
}

impl Packed {
    /// Packs a case.
    ///
    /// # Errors
    ///
    /// More than the numbers in the lists can say.
    pub fn of(laid: &Laid<'_>) -> Result<Packed, Unable> {
        let shape = Shape::of(laid.case.grid.counts());
        let materials = classes_of(laid)?;
        let places = places(laid, &shape);
        let starts = starts(laid, &places)?;
        let mut run_of = vec![NONE; shape.runs_of_row() * shape.counts[1] * shape.counts[2]];
        for (places, first) in places.iter().zip(&starts.runs) {
            for (place, run) in places.iter().zip(*first..) {
                run_of[*place as usize] = run;
            }
        }
        let even_inverse = laid.staged().next().map_or(1.0, |cell| inverse(laid, cell));
        let pack = Pack {
            laid,
            shape: &shape,
            starts: &starts,
            run_of: &run_of,
            even_inverse,
        };
        let planes = places.into_par_iter().enumerate();
        let planes: Vec<OfPlane> = planes.map(|(z, places)| pack.plane(z, &places)).collect();
        let mut packed = Packed {
            runs: Vec::new(),
            kinds: Vec::new(),
            inverses: Vec::new(),
            rims: laid.rims.iter().flatten().map(sides).collect(),
            classes: classes(laid, &shape, &materials),
            shape,
            even_inverse,
            materials,
            starts,
        };
        for plane in planes {
            packed.runs.extend(plane.runs);
            packed.kinds.extend(plane.kinds);
            packed.inverses.extend(plane.inverses);
        }
        Ok(packed)
    }

    /// Lanes that hold a staged cell, in the order of the cells.
    pub fn lanes(&self) -> impl Iterator<Item = usize> + '_ {
        let lanes = self.kinds.iter().enumerate();
        lanes
            .filter(|(_, kind)| *kind & 255 != NO_MATERIAL)
            .map(|(lane, _)| lane)
    }

    /// Lanes of cells that can freeze, in the order of the cells.
    pub fn freezing_lanes(&self, laid: &Laid<'_>) -> impl Iterator<Item = usize> + '_ {
        let freezes: Vec<bool> = laid.levels.iter().map(Option::is_some).collect();
        self.lanes()
            .filter(move |&lane| freezes[(self.kinds[lane] & 255) as usize])
    }
}

/// What the runs of a plane are packed from.
struct Pack<'all> {
    laid: &'all Laid<'all>,
    shape: &'all Shape,
    starts: &'all Starts,
    run_of: &'all [u32],
    even_inverse: f32,
}

impl Pack<'_> {
    fn plane(&self, z: usize, places: &[u32]) -> OfPlane {
        let wanted = (self.starts.runs[z + 1] - self.starts.runs[z]) as usize;
        let mut plane = OfPlane {
            runs: Vec::with_capacity(wanted),
            kinds: vec![NO_MATERIAL; wanted * RUN],
            inverses: vec![0.0; wanted * RUN],
        };
        let mut rims = self.laid.rims[z]
            .iter()
            .zip(self.starts.rims[z] + 1..)
            .peekable();
        let mut around = self.starts.arounds[z] / RUN as u32;
        let [along, rows, _] = self.shape.counts;
        let of_row = self.shape.runs_of_row();
        for (run, place) in places.iter().map(|place| *place as usize).enumerate() {
            let (first, y) = (place % of_row * RUN, place / of_row % rows);
            let lanes = run * RUN..(run + 1) * RUN;
            let (mut has_around, mut staged) = (false, 0);
            for (x, lane) in (first..along).zip(lanes.clone()) {
                let cell = self.laid.case.grid.index([x, y, z]);
                if self.laid.goes(cell) != Goes::Staged {
                    continue;
                }
                plane.kinds[lane] = u32::from(self.laid.case.cells[cell]);
                plane.inverses[lane] = inverse(self.laid, cell);
                staged |= 1 << (x - first);
                if let Some((rim, number)) = rims.next_if(|(rim, _)| rim.cell as usize == cell) {
                    plane.kinds[lane] |= number << RIM_FROM;
                    has_around |= rim.has_around();
                }
            }
            let mut what = self.what(&plane.kinds[lanes.clone()], &plane.inverses[lanes]);
            if has_around {
                around += 1;
                what |= around << AROUND_FROM;
            }
            let [x_sides, y_sides, z_sides] = self.beside(place, [first, y, z]);
            plane.runs.push([
                self.shape.at([first, y, z]) as u32,
                what,
                staged,
                // What lies beside a run along x lies beside it in the list too.
                u32::from(x_sides[0] != NONE) | u32::from(x_sides[1] != NONE) << 1,
                y_sides[0],
                y_sides[1],
                z_sides[0],
                z_sides[1],
            ]);
        }
        // Runs without a lane, so that the next plane begins where it may.
        let empty = [
            self.shape.at([0, 0, z]) as u32,
            NO_MATERIAL,
            0,
            0,
            NONE,
            NONE,
            NONE,
            NONE,
        ];
        plane.runs.resize(wanted, empty);
        plane
    }

    /// What the lanes of a run have in common.
    fn what(&self, kinds: &[u32], inverses: &[f32]) -> u32 {
        let material = kinds[0] & 255;
        let one = material != NO_MATERIAL && kinds.iter().all(|kind| kind & 255 == material);
        let mut staged = kinds
            .iter()
            .zip(inverses)
            .filter(|(kind, _)| **kind & 255 != NO_MATERIAL);
        let even = staged.all(|(_, inverse)| *inverse == self.even_inverse);
        let flag = |is: bool, bit: u32| if is { bit } else { 0 };
        material | flag(one, ONE_MATERIAL) | flag(even, EVEN)
    }

    /// First lanes of the runs around one, low and high along each axis.
    fn beside(&self, place: usize, [x, y, z]: [usize; 3]) -> [[u32; 2]; 3] {
        let of_row = self.shape.runs_of_row();
        let at = [x / RUN, y, z];
        let ends = [of_row, self.shape.counts[1], self.shape.counts[2]];
        let away = [1, of_row, of_row * self.shape.counts[1]];
        let lane = |place: usize| match self.run_of[place] {
            NONE => NONE,
            run => run * RUN as u32,
        };
        [0, 1, 2].map(|axis: usize| {
            let low = if at[axis] > 0 {
                lane(place - away[axis])
            } else {
                NONE
            };
            let high = if at[axis] + 1 < ends[axis] {
                lane(place + away[axis])
            } else {
                NONE
            };
            [low, high]
        })
    }
}

/// Places of the runs of each plane, by their number among all that would fill the box.
fn places(laid: &Laid<'_>, shape: &Shape) -> Vec<Vec<u32>> {
    let [along, rows, planes] = shape.counts;
    let of_row = shape.runs_of_row();
    let of_plane = |z: usize| {
        let places = (0..rows).flat_map(|y| (0..of_row).map(move |run| (y, run)));
        let has_staged = |(y, run): &(usize, usize)| {
            let first = laid.case.grid.index([0, *y, z]);
            let mut cells = first + run * RUN..first + ((run + 1) * RUN).min(along);
            cells.any(|cell| laid.goes(cell) == Goes::Staged)
        };
        let number = |(y, run): (usize, usize)| ((z * rows + y) * of_row + run) as u32;
        places.filter(has_staged).map(number).collect()
    };
    (0..planes).into_par_iter().map(of_plane).collect()
}

fn starts(laid: &Laid<'_>, places: &[Vec<u32>]) -> Result<Starts, Unable> {
    let mut starts = Starts {
        runs: vec![0],
        rims: vec![0],
        arounds: vec![0],
    };
    let (mut runs, mut rims, mut arounds) = (0, 0, 0);
    for (places, of_plane) in places.iter().zip(&laid.rims) {
        runs += places.len().next_multiple_of(PLANE_RUNS) as u64;
        rims += of_plane.len() as u64;
        // Rims of one run follow one another.
        let of_row = laid.case.grid.counts()[0];
        let around = of_plane.iter().filter(|rim| rim.has_around());
        let mut around: Vec<u32> = around
            .map(|rim| {
                rim.cell / of_row as u32 * of_row.div_ceil(RUN) as u32
                    + rim.cell % of_row as u32 / RUN as u32
            })
            .collect();
        around.dedup();
        arounds += around.len() as u64 * RUN as u64;
        // Cells are numbered in 31 bits, so that runs of them fit; rims may not.
        starts.runs.push(runs as u32);
        starts.rims.push(rims as u32);
        starts.arounds.push(arounds as u32);
    }
    let most_runs = u64::from(u32::MAX) / RUN as u64;
    for (what, count, most) in [
        ("rims of what goes in stages", rims, MOST_RIMS),
        ("cells that go in stages", runs, most_runs),
        (
            "cells with surroundings",
            arounds / RUN as u64,
            (1 << (32 - AROUND_FROM)) - 2,
        ),
    ] {
        if count > most {
            return Err(Unable::TooLarge {
                what,
                needed_bytes: count * 32,
                had_bytes: most * 32,
            });
        }
    }
    Ok(starts)
}

fn inverse(laid: &Laid<'_>, cell: usize) -> f32 {
    (1.0 / laid.case.volume(cell)) as f32
}

fn sides(rim: &Rim) -> [u32; 6] {
    rim.sides.map(|side| match side {
        Beside::Alike => 0,
        Beside::Closed => CLOSED,
        Beside::Staged(link) => STAGED | link,
        Beside::Swept(link) => SWEPT | link,
        Beside::Around(outer) => AROUND | outer,
    })
}

/// Materials that fill swept cells.
fn classes_of(laid: &Laid<'_>) -> Result<Vec<usize>, Unable> {
    let swept = laid.swept_materials();
    let numbers: Vec<usize> = (0..swept.len()).filter(|&number| swept[number]).collect();
    match numbers.len() <= MOST_CLASSES {
        true => Ok(numbers),
        false => Err(Unable::Materials {
            count: numbers.len(),
            most: MOST_CLASSES,
        }),
    }
}

fn classes(laid: &Laid<'_>, shape: &Shape, materials: &[usize]) -> Vec<u32> {
    let mut class_of = vec![0; laid.case.materials.len()];
    for (class, material) in (1..).zip(materials) {
        class_of[*material] = class;
    }
    let [along, rows, planes] = shape.counts;
    let mut classes = vec![0_u32; shape.plane * planes / 8];
    classes
        .par_chunks_mut(shape.plane / 8)
        .enumerate()
        .for_each(|(z, words)| {
            for y in 0..rows {
                let first = laid.case.grid.index([0, y, z]);
                for x in 0..along {
                    if laid.goes(first + x) == Goes::Swept {
                        let class: u32 = class_of[usize::from(laid.case.cells[first + x])];
                        let at = y * shape.pitch + x;
                        words[at / 8] |= class << (at % 8 * 4);
                    }
                }
            }
        });
    classes
}
