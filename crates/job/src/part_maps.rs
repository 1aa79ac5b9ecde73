//! Maps of a part for the eye, as it lies in the mould: how thick its metal is, what draught its
//! walls lack, what draws neither way, and the modulus of each place.

use measure::text::rounded;
use pattern::cells::Cells;
use pattern::depth::depths;
use pattern::made::volume_mm3;
use pattern::mesh::{Edges, Mesh};
use pattern::sections::moduli;
use pattern::vector::{Vector, add, dot, norm, scale, sub};
use pour::vti_read::Field;

use crate::draw_maps::Judged;
use crate::job::Job;
use crate::map_scale::{MapScale, Mark};
use crate::turning::Turning;
use crate::words::said::Said;

/// Which map.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PartMapKind {
    /// Metal: the largest ball behind each place of the skin, mm.
    Wall,
    /// Draught that walls lack, degrees.
    Draught,
    /// Skin that draws neither way, as a share, %.
    Undercut,
    /// Modulus of each place, mm.
    Modulus,
}

impl PartMapKind {
    /// All of them, in the order in which they are offered.
    pub const ALL: [PartMapKind; 4] = [
        PartMapKind::Wall,
        PartMapKind::Draught,
        PartMapKind::Undercut,
        PartMapKind::Modulus,
    ];

    /// What it is called.
    pub fn label(self) -> Said {
        Said::new(match self {
            PartMapKind::Wall => "map-wall",
            PartMapKind::Draught => "map-draught",
            PartMapKind::Undercut => "map-undercut",
            PartMapKind::Modulus => "map-modulus",
        })
    }

    /// Its name in addresses.
    pub fn name(self) -> &'static str {
        match self {
            PartMapKind::Wall => "wall",
            PartMapKind::Draught => "draught",
            PartMapKind::Undercut => "undercut",
            PartMapKind::Modulus => "modulus",
        }
    }
}

/// A map: values over the skin, and within the metal where it has them.
#[derive(Clone, Debug)]
pub struct PartMap {
    /// The part as it lies in the mould, its facets cut small, mm.
    pub mesh: Mesh,
    /// The value at each corner of each facet; not a number where there is none.
    pub corners: Vec<[f32; 3]>,
    /// Values within the metal.
    pub field: Option<Field>,
    /// How it is drawn.
    pub scale: MapScale,
    /// Places that are marked with their value.
    pub marks: Vec<Mark>,
    /// What it shows, in a sentence.
    pub tells: Said,
}

/// The map of a part whose skin was judged along the draw of the job; `part` is its mesh as drawn.
pub fn part_map(job: &Job, part: &Mesh, judged: &Judged, kind: PartMapKind) -> PartMap {
    let lies = Turning::of(part, job.up);
    let mesh = lies.turned(&judged.maps.mesh);
    match kind {
        PartMapKind::Wall => wall(mesh, judged),
        PartMapKind::Draught => draught(mesh, judged, &lies),
        PartMapKind::Undercut => undercut(mesh, judged),
        PartMapKind::Modulus => modulus(mesh),
    }
}

fn wall(mesh: Mesh, judged: &Judged) -> PartMap {
    let balls = judged.maps.ball_mm.iter().map(or_none);
    let most = largest_ball_mm(&cells_of(&mesh));
    let of_facet: Vec<f64> = balls
        .map(|ball| if ball <= most { ball } else { f64::NAN })
        .collect();
    let of_facet = covered(&mesh, &of_facet);
    let thickest = extreme(&mesh, &of_facet);
    let tells = Said::new("map-wall-tells").with("most", mm(thickest.map_or(0.0, |m| m.value)));
    let stepped = |corner: f32| ((f64::from(corner) * STEPS_MM).round() / STEPS_MM) as f32;
    let corners = smoothed(&mesh, &of_facet).into_iter();
    PartMap {
        corners: corners.map(|values| values.map(stepped)).collect(),
        field: None,
        scale: MapScale::from_nought(highest(&of_facet), "mm"),
        marks: thickest.into_iter().collect(),
        tells,
        mesh,
    }
}

/// The largest ball that lies over each facet, not only the one that touches its middle: near an
/// edge that one shrinks to nothing, however thick the wall. A ball lies over the skin of its face
/// as far as it reaches, half its diameter.
fn covered(mesh: &Mesh, of_facet: &[f64]) -> Vec<f64> {
    let mut beside = vec![Vec::new(); of_facet.len()];
    let edges = Edges::of(mesh);
    for group in edges.groups() {
        if let [one, other] = group {
            beside[one.facet()].push(other.facet());
            beside[other.facet()].push(one.facet());
        }
    }
    let facets = 0..of_facet.len();
    let middles: Vec<Vector> = facets.clone().map(|facet| middle(mesh, facet)).collect();
    let normals: Vec<Vector> = facets.clone().map(|facet| mesh.normal(facet)).collect();
    let mut order: Vec<usize> = facets
        .filter(|&facet| of_facet[facet].is_finite())
        .collect();
    order.sort_by(|&one, &other| of_facet[other].total_cmp(&of_facet[one]));
    let mut largest = of_facet.to_vec();
    for from in order {
        let ball = of_facet[from];
        if largest[from] > ball {
            continue;
        }
        // Middles of facets are compared: one of its own size lies under it still.
        let reach = ball / 2.0 + norm(normals[from]).sqrt();
        let mut rim = vec![from];
        while let Some(facet) = rim.pop() {
            for &next in &beside[facet] {
                let is_near = norm(sub(middles[next], middles[from])) <= reach;
                let is_like = is_one_face(normals[from], normals[next]);
                if is_near && is_like && (largest[next].is_nan() || largest[next] < ball) {
                    largest[next] = ball;
                    rim.push(next);
                }
            }
        }
    }
    largest
}

fn is_one_face(one: Vector, other: Vector) -> bool {
    dot(one, other) >= ONE_FACE * norm(one) * norm(other)
}

fn middle(mesh: &Mesh, facet: usize) -> Vector {
    let [a, b, c] = mesh.corners(facet);
    scale(add(add(a, b), c), 1.0 / 3.0)
}

/// No ball in the metal is larger than this, mm: twice the depth of the deepest cell, and a cell.
/// A ball at a sharp edge that seems larger has missed what it lies in.
fn largest_ball_mm(cells: &Cells) -> f64 {
    2.0 * depths(cells).into_iter().fold(0.0, f64::max) + cells.size_mm
}

fn cells_of(mesh: &Mesh) -> Cells {
    let [low, high] = mesh.bounds();
    let extents = [0, 1, 2].map(|axis| high[axis] - low[axis]);
    Cells::fill(
        mesh,
        Cells::suiting_size_mm(volume_mm3(mesh), mesh.area(), extents),
    )
}

/// Patches of a wall that lack more than this are marked, degrees: less is drawn alone.
const MARKED_DEGREES: f64 = 0.1;

/// Most patches that are marked: more numbers run into each other.
const MOST_MARKS: usize = 10;

fn draught(mesh: Mesh, judged: &Judged, lies: &Turning) -> PartMap {
    let lacking = |facet| judged.maps.draught_degrees(facet).map(|[_, lacks]| lacks);
    let of_facet: Vec<f64> = (0..mesh.triangles.len())
        .map(|facet| or_none(&lacking(facet)))
        .collect();
    let patches = judged.maps.draught.patches.iter();
    let mut short: Vec<_> = patches
        .filter(|patch| patch.missing_degrees() > MARKED_DEGREES)
        .collect();
    short.sort_by(|one, other| other.area_mm2.total_cmp(&one.area_mm2));
    let area: f64 = short.iter().map(|patch| patch.area_mm2).sum();
    let (most, covered) = (highest(&of_facet), most_of_skin(&mesh, &of_facet));
    let tells = match short.is_empty() {
        true => Said::new("map-draught-none"),
        false => Said::new("map-draught-tells")
            .with("area", cm2(area))
            .with("most", format!("{}°", rounded(most, 2))),
    };
    let marks = short.iter().take(MOST_MARKS).map(|patch| Mark {
        at_mm: lies.place(patch.centre_mm),
        value: patch.missing_degrees(),
    });
    PartMap {
        corners: of_facet.iter().map(|lacks| [*lacks as f32; 3]).collect(),
        field: None,
        scale: MapScale {
            beyond: most > covered,
            ..MapScale::from_nought(covered, "°")
        },
        marks: marks.collect(),
        tells,
        mesh,
    }
}

fn undercut(mesh: Mesh, judged: &Judged) -> PartMap {
    let share = |facet| 100.0 * judged.maps.held_share(facet);
    let of_facet: Vec<f64> = (0..mesh.triangles.len()).map(share).collect();
    let found = &judged.maps.undercuts;
    let tells = match found.trapped_mm3 > 0.0 {
        false => Said::new("map-undercut-none"),
        true => Said::new("map-undercut-tells")
            .with(
                "held",
                format!("{} cm³", rounded(found.trapped_mm3 / 1000.0, 2)),
            )
            .with("area", cm2(found.area_mm2)),
    };
    PartMap {
        corners: of_facet.iter().map(|share| [*share as f32; 3]).collect(),
        field: None,
        scale: MapScale {
            low: 0.0,
            high: 100.0,
            lines: vec![50.0],
            unit: "%",
            beyond: false,
        },
        marks: Vec::new(),
        tells,
        mesh,
    }
}

fn modulus(mesh: Mesh) -> PartMap {
    let cells = cells_of(&mesh);
    let moduli = moduli(&cells);
    let heaviest = (0..moduli.len())
        .filter(|&cell| moduli[cell].is_finite())
        .max_by(|&one, &other| moduli[one].total_cmp(&moduli[other]))
        .map(|cell| Mark {
            at_mm: cells.middle_mm(cell),
            value: moduli[cell],
        });
    let most = heaviest.map_or(0.0, |mark| mark.value);
    let points = mesh.points.iter();
    let of_point: Vec<f32> = points
        .map(|point| nearest(&cells, &moduli, *point) as f32)
        .collect();
    let facets = mesh.triangles.iter();
    let corners = facets.map(|facet| facet.map(|point| of_point[point as usize]));
    PartMap {
        corners: corners.collect(),
        scale: MapScale::from_nought(most, "mm"),
        marks: heaviest.into_iter().collect(),
        tells: Said::new("map-modulus-tells").with("most", mm(most)),
        field: Some(Field {
            count: cells.count,
            origin_mm: cells.origin_mm,
            size_mm: cells.size_mm,
            values: moduli.iter().map(|mm| *mm as f32).collect(),
        }),
        mesh,
    }
}

/// Facets that turn by more than this are two faces, and no value is carried from one to the
/// other: cosine of 30°. With less a round bar of flats is striped; with more a plate's edge has
/// the thickness of its face.
const ONE_FACE: f64 = 0.866;

/// Steps a millimetre in which a wall is told: to a twentieth. Finer, and a wall drawn as thick as
/// a line of the map says is speckled by what its balls are off; coarser, and a caliper sees it.
const STEPS_MM: f64 = 20.0;

/// How often values are evened out between facets and corners. A ball is measured facet by facet,
/// and steps at a fillet by what a facet is wide; with fewer turns its lines are saws, with many
/// more a step between two walls is drawn as a slope.
const TURNS: usize = 4;

/// The values of facets carried to their corners, by their surface: over all facets of a corner
/// that belong to one face there, so that a line of equal value goes on from facet to facet.
fn smoothed(mesh: &Mesh, of_facet: &[f64]) -> Vec<[f32; 3]> {
    let fans = fans(mesh);
    let sizes: Vec<f64> = (0..of_facet.len())
        .map(|facet| norm(mesh.normal(facet)))
        .collect();
    let mut evened = of_facet.to_vec();
    let mut corners = Vec::new();
    for turn in 0..TURNS {
        corners = at_corners(&fans, &sizes, &evened);
        // What has no value takes none from its neighbours, but where it is drawn.
        let facets = (0..evened.len()).filter(|_| turn + 1 < TURNS);
        for facet in facets.filter(|&facet| of_facet[facet].is_finite()) {
            evened[facet] = corners[facet].iter().sum::<f64>() / 3.0;
        }
    }
    let corners = corners.into_iter();
    corners
        .map(|values| values.map(|value| value as f32))
        .collect()
}

/// The mean over each fan, by the surface of its facets; that of the facet where a fan has none.
fn at_corners(fans: &[[usize; 3]], sizes: &[f64], of_facet: &[f64]) -> Vec<[f64; 3]> {
    let mut means = vec![(0.0, 0.0); 3 * fans.len()];
    for (facet, own) in fans.iter().enumerate() {
        for &fan in own.iter().filter(|_| of_facet[facet].is_finite()) {
            means[fan].0 += sizes[facet] * of_facet[facet];
            means[fan].1 += sizes[facet];
        }
    }
    let facets = fans.iter().enumerate();
    let mean = |facet: usize, fan: usize| match means[fan] {
        (sum, weight) if weight > 0.0 => sum / weight,
        _ => of_facet[facet],
    };
    facets
        .map(|(facet, own)| own.map(|fan| mean(facet, fan)))
        .collect()
}

/// The fan to which each corner of each facet belongs: facets around a point that hang together
/// over edges across which they are one face. A fan goes by one of its corners.
fn fans(mesh: &Mesh) -> Vec<[usize; 3]> {
    let mut fans: Vec<usize> = (0..3 * mesh.triangles.len()).collect();
    for group in Edges::of(mesh).groups() {
        let [one, other] = group else {
            continue;
        };
        let (one, other) = (one.facet(), other.facet());
        if !is_one_face(mesh.normal(one), mesh.normal(other)) {
            continue;
        }
        for (at, point) in mesh.triangles[one].iter().enumerate() {
            let there = mesh.triangles[other].iter().position(|of| of == point);
            if let Some(there) = there {
                let first = head_of(&mut fans, 3 * one + at);
                let second = head_of(&mut fans, 3 * other + there);
                fans[first.max(second)] = first.min(second);
            }
        }
    }
    (0..mesh.triangles.len())
        .map(|facet| [0, 1, 2].map(|at| head_of(&mut fans, 3 * facet + at)))
        .collect()
}

/// The corner by which a fan goes; the way to it is made shorter for whoever asks next.
fn head_of(fans: &mut [usize], mut corner: usize) -> usize {
    while fans[corner] != corner {
        fans[corner] = fans[fans[corner]];
        corner = fans[corner];
    }
    corner
}

/// Cells round a place of the skin in which its value is looked for: the skin lies beside them.
const REACH: isize = 2;

/// The value of the nearest cell with metal; not a number where there is none near.
fn nearest(cells: &Cells, values: &[f64], place: Vector) -> f64 {
    let at = [0, 1, 2].map(|axis| (place[axis] - cells.origin_mm[axis]) / cells.size_mm - 0.5);
    let middle = at.map(|along| along.round() as isize);
    let (mut best, mut found) = (f64::INFINITY, f64::NAN);
    let around = -REACH..=REACH;
    for dz in around.clone() {
        for dy in around.clone() {
            for dx in around.clone() {
                let cell = [middle[0] + dx, middle[1] + dy, middle[2] + dz];
                let is_within =
                    (0..3).all(|axis| (0..cells.count[axis] as isize).contains(&cell[axis]));
                if !is_within {
                    continue;
                }
                let value = values[cells.index(cell.map(|along| along as usize))];
                let off = norm([0, 1, 2].map(|axis| cell[axis] as f64 - at[axis]));
                if value.is_finite() && off < best {
                    (best, found) = (off, value);
                }
            }
        }
    }
    found
}

fn extreme(mesh: &Mesh, of_facet: &[f64]) -> Option<Mark> {
    let facets = (0..of_facet.len()).filter(|&facet| of_facet[facet].is_finite());
    let facet = facets.max_by(|&one, &other| of_facet[one].total_cmp(&of_facet[other]))?;
    Some(Mark {
        at_mm: middle(mesh, facet),
        value: of_facet[facet],
    })
}

/// Share of the walls that a scale of draught covers: the rest are crumbs that lean back, and a
/// scale up to them would leave the walls in one tone.
const COVERED: f64 = 0.97;

/// The value that so much of the skin with values stays below.
fn most_of_skin(mesh: &Mesh, of_facet: &[f64]) -> f64 {
    let facets = (0..of_facet.len()).filter(|&facet| of_facet[facet].is_finite());
    let mut all: Vec<(f64, f64)> = facets
        .map(|facet| (of_facet[facet], norm(mesh.normal(facet))))
        .collect();
    all.sort_by(|one, other| one.0.total_cmp(&other.0));
    let whole: f64 = all.iter().map(|(_, area)| area).sum();
    let mut below = 0.0;
    for (value, area) in all {
        below += area;
        if below >= COVERED * whole {
            return value;
        }
    }
    0.0
}

fn highest(values: &[f64]) -> f64 {
    let finite = values.iter().copied().filter(|value| value.is_finite());
    finite.fold(0.0, f64::max)
}

fn or_none(value: &Option<f64>) -> f64 {
    value.unwrap_or(f64::NAN)
}

fn mm(length: f64) -> String {
    format!("{} mm", rounded(length, 2))
}

fn cm2(mm2: f64) -> String {
    format!("{} cm²", rounded(mm2 / 100.0, 2))
}
