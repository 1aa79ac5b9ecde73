//! The prints of a core: where it goes on into the sand of the mould, which carries it and holds it
//! down.

use crate::boolean::Body;
use crate::cores::CoreError;
use crate::cores::body::{CoreBody, Opening};
use crate::mesh::Mesh;
use crate::sweep::between;
use crate::vector::{Vector, add, norm, scale, sub};

/// A print by its sizes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PrintSize {
    /// How far it goes into the sand, mm.
    pub length_mm: f64,
    /// How much wider the room in the sand is than the core, mm on each side, so that the core can
    /// be laid in without scraping.
    pub play_mm: f64,
}

/// A core with its prints.
#[derive(Clone, Debug)]
pub struct PrintedCore {
    /// The core as it is made: body and prints in one.
    pub core: Mesh,
    /// What it holds, mm³.
    pub volume_mm3: f64,
    /// What is put on the pattern at each opening: the prints with their play.
    pub prints: Vec<Mesh>,
}

/// The openings that get a print when the mould is drawn along `up`: those that look sideways,
/// because their prints lie in the joint and bear on both halves; the others where there are none.
pub fn bearing(body: &CoreBody, up: Vector) -> Vec<&Opening> {
    let sideways: Vec<&Opening> = body
        .openings
        .iter()
        .filter(|opening| opening.is_sideways(up))
        .collect();
    match sideways.is_empty() {
        true => body.openings.iter().collect(),
        false => sideways,
    }
}

/// The core of a body with a print at each of `openings`.
///
/// # Errors
///
/// A print without length, or solids that cannot be joined.
pub fn with_prints(
    body: &CoreBody,
    openings: &[(&Opening, PrintSize)],
) -> Result<PrintedCore, CoreError> {
    let mut core = Body::of(&body.mesh)?;
    let mut prints = Vec::new();
    for (opening, size) in openings {
        if !(size.length_mm > 0.0 && size.length_mm.is_finite()) {
            return Err(CoreError::NoLength {
                length_mm: size.length_mm,
            });
        }
        core = core.with(&Body::of(&pushed_out(
            &body.mesh,
            opening,
            size.length_mm,
            0.0,
        ))?)?;
        let length_mm = size.length_mm + size.play_mm;
        prints.push(pushed_out(&body.mesh, opening, length_mm, size.play_mm));
    }
    Ok(PrintedCore {
        volume_mm3: core.volume_mm3(),
        core: core.mesh(),
        prints,
    })
}

/// How far a print overlaps the body that it grows from, as a share of its length, so that the two
/// are joined and not only touch.
const OVERLAP: f64 = 0.02;

/// The solid between a patch of skin and the same patch pushed out along the normals of its points,
/// and widened around its middle by `wider_mm`.
fn pushed_out(skin: &Mesh, opening: &Opening, length_mm: f64, wider_mm: f64) -> Mesh {
    let mut patch = Mesh {
        points: skin.points.clone(),
        triangles: opening
            .facets
            .iter()
            .map(|&facet| skin.triangles[facet as usize])
            .collect(),
    };
    patch.drop_unused_points();
    let out = out_of_points(&patch);
    let widening = 1.0 + 2.0 * wider_mm / opening.across_mm().max(f64::MIN_POSITIVE);
    let widened = |place: Vector, out: Vector| {
        let from_middle = sub(place, opening.centre_mm);
        let along = scale(out, from_middle.iter().zip(out).map(|(a, b)| a * b).sum());
        let across = sub(from_middle, along);
        add(add(opening.centre_mm, along), scale(across, widening))
    };
    let layers = [-OVERLAP * length_mm, length_mm].map(|away| {
        let places = patch.points.iter().zip(&out);
        let moved = places.map(|(place, out)| add(widened(*place, *out), scale(*out, away)));
        moved.collect::<Vec<Vector>>()
    });
    let [near, far] = layers;
    between(&patch, &near, &far)
}

/// The way out at each point of a patch: the mean of the facets around it, by their area.
fn out_of_points(patch: &Mesh) -> Vec<Vector> {
    let mut out = vec![[0.0; 3]; patch.points.len()];
    for (facet, triangle) in patch.triangles.iter().enumerate() {
        let normal = patch.normal(facet);
        for &point in triangle {
            out[point as usize] = add(out[point as usize], normal);
        }
    }
    let unit = |way: Vector| scale(way, 1.0 / norm(way).max(f64::MIN_POSITIVE));
    out.into_iter().map(unit).collect()
}
