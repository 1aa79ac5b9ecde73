//! The body of a core: what fills a hollow, flush with the part around it.

use std::collections::BTreeMap;

use crate::boolean::Body;
use crate::cores::CoreError;
use crate::draw::undercut::Trapped;
use crate::mesh::{Edges, Mesh};
use crate::rays::along;
use crate::tree::Tree;
use crate::vector::{Vector, add, dot, norm, scale};

/// A body that fills one hollow or several that are one room.
#[derive(Clone, Debug)]
pub struct CoreBody {
    /// Its skin, mm in the part's axes, closed and wound outward.
    pub mesh: Mesh,
    /// What it holds, mm³.
    pub volume_mm3: f64,
    /// Where it is not shut in by metal, the largest first.
    pub openings: Vec<Opening>,
    /// Which of the hollows given it fills, by number.
    pub fills: Vec<usize>,
}

/// A patch of a core's skin with no metal against it.
#[derive(Clone, Debug, PartialEq)]
pub struct Opening {
    /// Its facets, by number in the mesh of the body.
    pub facets: Vec<u32>,
    /// Its area, mm².
    pub area_mm2: f64,
    /// Its middle, mm.
    pub centre_mm: Vector,
    /// The way out, of length one; of no length where the opening runs around the part.
    pub out: Vector,
}

/// Bodies smaller than this share of the hollow are shavings of the cut, not part of the core.
const SHAVING: f64 = 1e-3;

/// How far off the skin it is asked whether metal lies there, as a share of the size of the body:
/// well above the rounding of the cut, and thinner than any wall.
const BESIDE: f64 = 1e-5;

/// Openings smaller than this share of the largest one are seams between facets.
const SEAM: f64 = 0.02;

/// Bodies of the cores that fill `hollows` of a closed part, outward wound and in mm; hollows of
/// one room are filled by one body. `reach_mm` is how closely the hollows were measured: their
/// boxes are taken so much larger, so that no shaving of sand stays between core and metal.
///
/// # Errors
///
/// A hollow that opens nowhere, or solids that cannot be cut.
pub fn bodies(part: &Mesh, hollows: &[Trapped], reach_mm: f64) -> Result<Vec<CoreBody>, CoreError> {
    let solid = Body::of(part)?;
    let rooms = solid.hull()?.without(&solid)?.parts()?;
    let tree = Tree::over(part);
    let mut bodies = Vec::new();
    for (room, fills) in shared_out(&rooms, hollows, reach_mm)? {
        let boxes = fills.iter().map(|&hollow| hollows[hollow].bounds_mm);
        let around = grown(joined(boxes), reach_mm);
        let first = &hollows[fills[0]];
        let cut = room.common_with(&block(around)?)?;
        let body = without_shavings(&cut)?;
        let mesh = body.mesh();
        let openings = openings(&mesh, part, &tree);
        if openings.is_empty() {
            return Err(CoreError::NoPrint {
                centre_mm: first.centre_mm,
            });
        }
        bodies.push(CoreBody {
            volume_mm3: body.volume_mm3(),
            mesh,
            openings,
            fills,
        });
    }
    Ok(bodies)
}

/// Each room that holds hollows, with the numbers of its hollows. A hollow goes to the room that
/// fills most of its box.
fn shared_out<'a>(
    rooms: &'a [Body],
    hollows: &[Trapped],
    reach_mm: f64,
) -> Result<Vec<(&'a Body, Vec<usize>)>, CoreError> {
    let mut held: Vec<Vec<usize>> = vec![Vec::new(); rooms.len()];
    for (number, hollow) in hollows.iter().enumerate() {
        let around = block(grown(hollow.bounds_mm, reach_mm))?;
        let mut most = (0.0, None);
        for (at, room) in rooms.iter().enumerate() {
            let filled = room.common_with(&around)?.volume_mm3();
            if filled > most.0 {
                most = (filled, Some(at));
            }
        }
        match most.1 {
            Some(at) => held[at].push(number),
            // Shut in by metal: the hull less the part has no such room.
            None => {
                return Err(CoreError::NoPrint {
                    centre_mm: hollow.centre_mm,
                });
            }
        }
    }
    let held = rooms.iter().zip(held);
    Ok(held.filter(|(_, fills)| !fills.is_empty()).collect())
}

fn without_shavings(cut: &Body) -> Result<Body, CoreError> {
    let worth = cut.volume_mm3() * SHAVING;
    let mut kept: Option<Body> = None;
    for piece in cut.parts()? {
        if piece.volume_mm3() > worth {
            kept = Some(match kept {
                Some(kept) => kept.with(&piece)?,
                None => piece,
            });
        }
    }
    Ok(kept.unwrap_or_else(|| cut.clone()))
}

/// The patches of a body against which no metal lies.
fn openings(body: &Mesh, part: &Mesh, tree: &Tree) -> Vec<Opening> {
    let beside = body.diagonal() * BESIDE;
    let is_open: Vec<bool> = (0..body.triangles.len())
        .map(|facet| !is_in_metal(part, tree, just_outside(body, facet, beside)))
        .collect();
    let mut openings: Vec<Opening> = patches(body, &is_open)
        .into_iter()
        .map(|facets| opening(body, facets))
        .collect();
    openings.sort_by(|a, b| b.area_mm2.total_cmp(&a.area_mm2));
    let least = openings
        .first()
        .map_or(0.0, |largest| largest.area_mm2 * SEAM);
    openings.retain(|opening| opening.area_mm2 > least);
    openings
}

fn just_outside(body: &Mesh, facet: usize, beside: f64) -> Vector {
    let [a, b, c] = body.corners(facet);
    let normal = body.normal(facet);
    let middle = scale(add(add(a, b), c), 1.0 / 3.0);
    match norm(normal) {
        0.0 => middle,
        length => add(middle, scale(normal, beside / length)),
    }
}

/// Whether a place lies in metal, by how often the line to it enters the part.
fn is_in_metal(part: &Mesh, tree: &Tree, place: Vector) -> bool {
    let hits = along(part, tree, 2, place);
    let below = hits.iter().filter(|hit| hit.at < place[2]);
    below.map(|hit| hit.step).sum::<i32>() > 0
}

/// Facets that meet at a sharper corner than this (cosine) are two openings: of a quarter turn each
/// face gets its own print, while a round one of eight sides stays whole.
const CORNER: f64 = 0.6;

fn is_smooth(body: &Mesh, one: usize, other: usize) -> bool {
    let (a, b) = (body.normal(one), body.normal(other));
    dot(a, b) > CORNER * norm(a) * norm(b)
}

/// Facets that are open, gathered into patches that hang together by their edges.
fn patches(body: &Mesh, is_open: &[bool]) -> Vec<Vec<u32>> {
    let mut stands_for: Vec<u32> = (0..body.triangles.len() as u32).collect();
    for sides in Edges::of(body).groups() {
        let [one, other] = sides else { continue };
        let [one, other] = [one.facet(), other.facet()];
        if is_open[one] && is_open[other] && is_smooth(body, one, other) {
            let (a, b) = (root(&mut stands_for, one), root(&mut stands_for, other));
            stands_for[a.max(b) as usize] = a.min(b);
        }
    }
    let mut patches: BTreeMap<u32, Vec<u32>> = BTreeMap::new();
    for facet in (0..body.triangles.len()).filter(|&facet| is_open[facet]) {
        let patch = root(&mut stands_for, facet);
        patches.entry(patch).or_default().push(facet as u32);
    }
    patches.into_values().collect()
}

fn root(stands_for: &mut [u32], facet: usize) -> u32 {
    let mut at = facet as u32;
    while stands_for[at as usize] != at {
        stands_for[at as usize] = stands_for[stands_for[at as usize] as usize];
        at = stands_for[at as usize];
    }
    at
}

/// An opening whose way out is the mean of its facets; one that runs around the part has none.
fn opening(body: &Mesh, facets: Vec<u32>) -> Opening {
    let mut area = 0.0;
    let mut way = [0.0; 3];
    let mut centre = [0.0; 3];
    for &facet in &facets {
        let normal = body.normal(facet as usize);
        let of_facet = norm(normal) / 2.0;
        let [a, b, c] = body.corners(facet as usize);
        area += of_facet;
        way = add(way, scale(normal, 0.5));
        centre = add(centre, scale(add(add(a, b), c), of_facet / 3.0));
    }
    let length = norm(way);
    Opening {
        centre_mm: scale(centre, 1.0 / area.max(f64::MIN_POSITIVE)),
        out: match length > 0.2 * area {
            true => scale(way, 1.0 / length),
            false => [0.0; 3],
        },
        area_mm2: area,
        facets,
    }
}

impl Opening {
    /// Whether it looks sideways when the mould is drawn along `up`: such a print lies in the joint.
    pub fn is_sideways(&self, up: Vector) -> bool {
        norm(self.out) > 0.0 && dot(self.out, up).abs() < 0.5 * norm(up)
    }

    /// Width of a round opening of this area, mm.
    pub fn across_mm(&self) -> f64 {
        (4.0 * self.area_mm2 / std::f64::consts::PI).sqrt()
    }
}

fn joined(boxes: impl Iterator<Item = [Vector; 2]>) -> [Vector; 2] {
    let nowhere = [[f64::INFINITY; 3], [f64::NEG_INFINITY; 3]];
    boxes.fold(nowhere, |[low, high], [a, b]| {
        [
            [0, 1, 2].map(|i| low[i].min(a[i])),
            [0, 1, 2].map(|i| high[i].max(b[i])),
        ]
    })
}

fn grown([low, high]: [Vector; 2], by_mm: f64) -> [Vector; 2] {
    [low.map(|at| at - by_mm), high.map(|at| at + by_mm)]
}

/// An upright block.
pub(super) fn block([low, high]: [Vector; 2]) -> Result<Body, CoreError> {
    let corner = |i: u8| [0, 1, 2].map(|axis| [low, high][usize::from(i >> axis & 1)][axis]);
    let sides = [
        [0, 2, 3, 1],
        [4, 5, 7, 6],
        [0, 1, 5, 4],
        [2, 6, 7, 3],
        [0, 4, 6, 2],
        [1, 3, 7, 5],
    ];
    let mesh = Mesh {
        points: (0..8).map(corner).collect(),
        triangles: sides
            .iter()
            .flat_map(|&[a, b, c, d]| [[a, b, c], [a, c, d]])
            .collect(),
    };
    Ok(Body::of(&mesh)?)
}
