//! The body of a core: what fills a hollow, flush with the part around it.

use std::collections::BTreeMap;

use crate::boolean::Body;
use crate::cores::CoreError;
use crate::draw::DrawError;
use crate::draw::columns::{Columns, Plot};
use crate::draw::frame::DrawFrame;
use crate::draw::undercut::Trapped;
use crate::mesh::{Edges, Mesh};
use crate::rays::along;
use crate::tree::Tree;
use crate::vector::{Vector, add, bounds_of, dot, norm, scale};

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

/// Bodies of the cores that fill `hollows` of a closed part, outward wound and in mm, whose cope is
/// lifted along `up`. `reach_mm` is how closely the hollows were measured: the skin around their
/// sand is drawn so much wider, so that no shaving of sand stays between core and metal.
///
/// # Errors
///
/// A hollow that opens nowhere, or solids that cannot be cut.
pub fn bodies(
    part: &Mesh,
    up: Vector,
    hollows: &[Trapped],
    reach_mm: f64,
) -> Result<Vec<CoreBody>, CoreError> {
    let mut groups = Vec::new();
    let rooms = Rooms::around(part, up)?;
    for (number, hollow) in hollows.iter().enumerate() {
        groups.push(rooms.group(number, hollow, reach_mm)?);
    }
    let tree = Tree::over(part);
    let mut bodies = Vec::new();
    for group in rooms.joined(groups)? {
        let mesh = group.body.mesh();
        let openings = openings(&mesh, part, &tree);
        if openings.is_empty() {
            return Err(CoreError::NoPrint {
                centre_mm: group.centre_mm,
            });
        }
        bodies.push(CoreBody {
            volume_mm3: group.body.volume_mm3(),
            mesh,
            openings,
            fills: group.fills,
        });
    }
    Ok(bodies)
}

/// Hollows that are filled by one body.
struct Group {
    room: usize,
    fills: Vec<usize>,
    /// Corners of the skin drawn tight around its sand.
    around: Vec<Vector>,
    centre_mm: Vector,
    body: Body,
}

/// Two hollows of one room are filled by one body if that takes no more sand than this many times
/// both: the wings of a slot then share a core, the bore of a bend and the hollow of its knee do
/// not.
const ONE_BODY: f64 = 1.8;

/// Rooms smaller than this share of the whole are the grain of facets, not hollows: a bore of 2 mm
/// through a part as large as a hand is ten times as large.
const SLIVER: f64 = 1e-6;

/// Share of a piece that has to be held for it to be part of the core; the rest of a hollow's box
/// is green sand that draws.
const HELD: f64 = 0.2;

/// The rooms between a part and the skin drawn tight around it, and the part in its draw.
struct Rooms {
    rooms: Vec<Body>,
    frame: DrawFrame,
    turned: Mesh,
    tree: Tree,
}

impl Rooms {
    fn around(part: &Mesh, up: Vector) -> Result<Rooms, CoreError> {
        let solid = Body::of(part)?;
        let frame = DrawFrame::drawing_along(up).ok_or(DrawError::NoDirection { up })?;
        let turned = frame.turned(part);
        let hull = solid.hull()?;
        let mut rooms = hull.without(&solid)?.parts()?;
        // Over a round skin thousands of slivers lie between its facets and the skin drawn tight.
        rooms.retain(|room| room.volume_mm3() > SLIVER * hull.volume_mm3());
        Ok(Rooms {
            rooms,
            tree: Tree::over(&turned),
            frame,
            turned,
        })
    }

    /// A hollow by itself. It goes to the room in which most of its sand lies: the skin around the
    /// sand of a bend takes in more of the room beside the bend than of its bore.
    fn group(&self, number: usize, hollow: &Trapped, reach_mm: f64) -> Result<Group, CoreError> {
        let around = skin_around(&hollow.sand_mm, reach_mm)?;
        let bounds = Body::around(&around)?;
        let mut most = (0, None);
        for (at, room) in self.rooms.iter().enumerate() {
            let count = sand_in(&room.mesh(), &hollow.sand_mm);
            if count > most.0 {
                most = (count, Some((at, room)));
            }
        }
        // Shut in by metal, it is no room of the skin drawn around the part.
        let (room, filled) = match most.1 {
            Some((at, room)) => (at, room.common_with(&bounds)?),
            None => {
                return Err(CoreError::NoPrint {
                    centre_mm: hollow.centre_mm,
                });
            }
        };
        Ok(Group {
            room,
            fills: vec![number],
            around,
            centre_mm: hollow.centre_mm,
            body: self.held(&filled)?,
        })
    }

    /// Groups joined as long as two of one room are better filled together.
    fn joined(&self, mut groups: Vec<Group>) -> Result<Vec<Group>, CoreError> {
        let mut at = 0;
        while at < groups.len() {
            let mut other = at + 1;
            while other < groups.len() {
                match self.together(&groups[at], &groups[other])? {
                    Some(both) => {
                        groups.remove(other);
                        groups[at] = both;
                        // What did not go with the one may go with both.
                        other = at + 1;
                    }
                    None => other += 1,
                }
            }
            at += 1;
        }
        Ok(groups)
    }

    fn together(&self, a: &Group, b: &Group) -> Result<Option<Group>, CoreError> {
        let around: Vec<Vector> = a.around.iter().chain(&b.around).copied().collect();
        let most = ONE_BODY * (a.body.volume_mm3() + b.body.volume_mm3());
        if a.room != b.room || !may_be_near(a, b) {
            return Ok(None);
        }
        let filled = self.rooms[a.room].common_with(&Body::around(&around)?)?;
        let body = self.held(&filled)?;
        Ok((body.volume_mm3() <= most).then(|| Group {
            room: a.room,
            fills: a.fills.iter().chain(&b.fills).copied().collect(),
            around,
            centre_mm: a.centre_mm,
            body,
        }))
    }

    /// The pieces of a cut that hold enough sand that does not draw; all of it where none does.
    fn held(&self, cut: &Body) -> Result<Body, CoreError> {
        let worth = cut.volume_mm3() * SHAVING;
        let mut kept: Option<Body> = None;
        for piece in cut.parts()? {
            if piece.volume_mm3() > worth && self.held_share(&piece.mesh()) >= HELD {
                kept = Some(match kept {
                    Some(kept) => kept.with(&piece)?,
                    None => piece,
                });
            }
        }
        Ok(kept.unwrap_or_else(|| cut.clone()))
    }

    /// Share of a piece with metal above and below it along the draw.
    fn held_share(&self, piece: &Mesh) -> f64 {
        let piece = self.frame.turned(piece);
        let columns = Columns::staggered(&piece, Plot::of_part(&piece, HELD_COLUMNS));
        let (mut held, mut all) = (0.0, 0.0);
        for column in 0..columns.len() {
            let [x, y] = columns.place_mm(column);
            let hits = match columns.spans(column) {
                [] => continue,
                _ => along(&self.turned, &self.tree, 2, [x, y, 0.0]),
            };
            for span in columns.spans(column) {
                let middle = (span.from_mm + span.to_mm) / 2.0;
                let length = span.to_mm - span.from_mm;
                let below = hits.iter().any(|hit| hit.at < middle);
                let above = hits.iter().any(|hit| hit.at > middle);
                all += length;
                held += if below && above { length } else { 0.0 };
            }
        }
        held / all.max(f64::MIN_POSITIVE)
    }
}

/// Columns of sand that are asked in which room they lie.
const ASKED: usize = 300;

/// How many columns of sand, of those asked, have their middle within a room.
fn sand_in(room: &Mesh, sand_mm: &[[Vector; 2]]) -> usize {
    let tree = Tree::over(room);
    let every = sand_mm.len().div_ceil(ASKED).max(1);
    let asked = sand_mm.iter().step_by(every);
    asked
        .filter(|[low, high]| is_within(room, &tree, scale(add(*low, *high), 0.5)))
        .count()
}

/// Columns along the longer side of a piece when it is asked how much of it is held.
const HELD_COLUMNS: usize = 40;

/// Whether two boxes lie so near that one around both is not mostly something else.
fn may_be_near(a: &Group, b: &Group) -> bool {
    let room = |[low, high]: [Vector; 2]| (0..3).map(|i| high[i] - low[i]).product::<f64>();
    let bounds = |places: &[&[Vector]]| room(bounds_of(places.concat()).unwrap_or([[0.0; 3]; 2]));
    bounds(&[&a.around, &b.around]) <= NEAR * (bounds(&[&a.around]) + bounds(&[&b.around]))
}

/// With more, far hollows are cut out together for nothing; with less, the two wings of a wide slot
/// are never tried.
const NEAR: f64 = 4.0;

/// The patches of a body against which no metal lies.
fn openings(body: &Mesh, part: &Mesh, tree: &Tree) -> Vec<Opening> {
    let beside = body.diagonal() * BESIDE;
    let is_open: Vec<bool> = (0..body.triangles.len())
        .map(|facet| !is_within(part, tree, just_outside(body, facet, beside)))
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

/// Whether a place lies within a solid, by how often the line to it enters that.
fn is_within(solid: &Mesh, tree: &Tree, place: Vector) -> bool {
    let hits = along(solid, tree, 2, place);
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

/// An opening faces one way if its mean normal is at least this long: the mouth of a bore in a
/// curved wall does, a band around a neck does not.
const FACING: f64 = 0.7;

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
        out: match length > FACING * area {
            true => scale(way, 1.0 / length),
            false => [0.0; 3],
        },
        area_mm2: area,
        facets,
    }
}

impl Opening {
    /// Whether it looks sideways when the mould is drawn along `up`: its print lies in the joint.
    pub fn is_sideways(&self, up: Vector) -> bool {
        norm(self.out) > 0.0 && dot(self.out, up).abs() < 0.5 * norm(up)
    }

    /// Width of a round opening of this area, mm.
    pub fn across_mm(&self) -> f64 {
        (4.0 * self.area_mm2 / std::f64::consts::PI).sqrt()
    }
}

/// Columns of sand around which the skin is drawn; more than that only take time.
const MOST_COLUMNS: usize = 60_000;

/// Corners of the skin drawn tight around columns of sand, so much wider on each side.
fn skin_around(sand_mm: &[[Vector; 2]], wider_mm: f64) -> Result<Vec<Vector>, CoreError> {
    let every = sand_mm.len().div_ceil(MOST_COLUMNS).max(1);
    let ends: Vec<Vector> = sand_mm.iter().step_by(every).flatten().copied().collect();
    let wider_mm = wider_mm * every as f64;
    let corner = |place: Vector, i: u8| {
        [0, 1, 2].map(|axis| place[axis] + wider_mm * [-1.0, 1.0][usize::from(i >> axis & 1)])
    };
    let wider = |ends: &[Vector]| -> Vec<Vector> {
        let corners = ends
            .iter()
            .flat_map(|&end| (0..8).map(move |i| corner(end, i)));
        corners.collect()
    };
    // A single column, or a flat sheet of them, has no skin before it is made wider.
    let tight = match Body::around(&ends) {
        Ok(body) if !body.is_empty() => body.mesh().points,
        _ => ends,
    };
    Ok(Body::around(&wider(&tight))?.mesh().points)
}
