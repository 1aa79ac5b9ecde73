//! Planes about which a part is its own mirror image.
//!
//! The normal of such a plane is a main axis of inertia. Two of them that weigh alike leave open
//! which lines across the third are meant, as on a wheel of five spokes: there the planes run
//! through the places at which the skin reaches out most, and how often it does so round the axis
//! is read off its waves. Every plane is then put to the test with places all over the skin.

use super::inertia::{MainAxes, main_axes};
use crate::distance::nearest;
use crate::mesh::Mesh;
use crate::tree::Tree;
use crate::vector::{Vector, add, dot, norm, scale, sub};

/// A plane about which a part is its own mirror image.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SymmetryPlane {
    /// A place on it: the middle of the metal, mm.
    pub through_mm: Vector,
    /// Its normal, of length one.
    pub normal: Vector,
    /// How far the mirror image of a place of the skin lies from the skin at most, mm.
    pub off_mm: f64,
}

/// How far the mirror image may lie off the skin, as a share of the part's size. A round of two
/// dozen flats misses its own mirror image by 0.3 % of itself where they do not answer each other;
/// with less such a wheel has no plane. With more a boss, a lug or letters that a core or a loose
/// piece would have to make go unseen.
const OFF: f64 = 0.005;

/// Places of the skin that are mirrored. A lug with less than its share of the surface may be
/// missed, and the plane is then still a direction worth trying.
const PLACES: usize = 600;

/// Two moments that differ by less than this share say nothing about which lines are meant: parts
/// of files that turn into themselves have them equal to a few thousandths.
const ALIKE: f64 = 0.02;

/// Waves round an axis that are looked for: wheels have up to a dozen spokes.
const WAVES: usize = 12;

/// A wave counts from this share of what the skin spreads round the axis: places of the skin that
/// are strewn over a round make waves of a few hundredths by chance, five spokes one of a tenth.
const HEARD: f64 = 0.05;

/// The planes of symmetry that the main axes and the waves round them show, at most as many as
/// there are spokes; a part of turning has many more, and three of them are given.
pub fn symmetry_planes(mesh: &Mesh) -> Vec<SymmetryPlane> {
    let Some(axes) = main_axes(mesh) else {
        return Vec::new();
    };
    let places = spread_over(mesh);
    let tree = Tree::over(mesh);
    let mut normals: Vec<Vector> = axes.along.to_vec();
    normals.extend(of_waves(&places, &axes));
    let plane = |normal| mirrored(mesh, &tree, &places, axes.middle_mm, normal);
    normals.into_iter().filter_map(plane).collect()
}

/// The plane, if the mirror image of every place lies on the skin.
fn mirrored(
    mesh: &Mesh,
    tree: &Tree,
    places: &[Vector],
    through_mm: Vector,
    normal: Vector,
) -> Option<SymmetryPlane> {
    let most_mm = OFF * mesh.diagonal();
    let mut off_mm = 0.0_f64;
    for &place in places {
        let over = dot(sub(place, through_mm), normal);
        let image = sub(place, scale(normal, 2.0 * over));
        off_mm = off_mm.max(nearest(mesh, tree, image, most_mm)?.distance);
    }
    Some(SymmetryPlane {
        through_mm,
        normal,
        off_mm,
    })
}

/// Places spread evenly over the skin, the same for the same mesh.
fn spread_over(mesh: &Mesh) -> Vec<Vector> {
    let step = mesh.area() / PLACES as f64;
    let (mut places, mut passed) = (Vec::with_capacity(PLACES), 0.0);
    for facet in 0..mesh.triangles.len() {
        passed += norm(mesh.normal(facet)) / 2.0;
        while (places.len() as f64 + 0.5) * step < passed {
            let number = places.len() as f64 + 1.0;
            let [mut u, mut v] = [0.754_877_666, 0.569_840_291].map(|x: f64| (number * x).fract());
            if u + v > 1.0 {
                (u, v) = (1.0 - u, 1.0 - v);
            }
            let [a, b, c] = mesh.corners(facet);
            places.push(add(a, add(scale(sub(b, a), u), scale(sub(c, a), v))));
        }
    }
    places
}

/// Normals of the planes through an axis whose two others weigh alike.
fn of_waves(places: &[Vector], axes: &MainAxes) -> Vec<Vector> {
    let alone = (0..3).find(|&axis| {
        let [a, b] = [1, 2].map(|by| axes.moments[(axis + by) % 3]);
        let c = axes.moments[axis];
        (a - b).abs() <= ALIKE * a.max(b) && (c - a).abs() > ALIKE * c.max(a)
    });
    let Some(axis) = alone else {
        return Vec::new();
    };
    let [x, y] = [1, 2].map(|by| axes.along[(axis + by) % 3]);
    let flat: Vec<[f64; 2]> = places
        .iter()
        .map(|place| {
            let off = sub(*place, axes.middle_mm);
            [dot(off, x), dot(off, y)]
        })
        .collect();
    let all: f64 = flat.iter().map(|[a, b]| a * a + b * b).sum();
    let wave = |count: usize| {
        let parts = flat.iter().map(|[a, b]| {
            let (squared, turn) = (a * a + b * b, count as f64 * b.atan2(*a));
            [squared * turn.cos(), squared * turn.sin()]
        });
        parts.fold([0.0; 2], |sum, part| [sum[0] + part[0], sum[1] + part[1]])
    };
    let heard = (1..=WAVES).map(|count| (count, wave(count)));
    let Some((count, [a, b])) = heard
        .into_iter()
        .find(|(_, [a, b])| a.hypot(*b) > HEARD * all)
    else {
        return Vec::new();
    };
    let half_turn = std::f64::consts::PI / count as f64;
    let first = b.atan2(a) / count as f64;
    (0..count)
        .map(|number| {
            let (sin, cos) = (first + number as f64 * half_turn).sin_cos();
            add(scale(x, -sin), scale(y, cos))
        })
        .collect()
}
