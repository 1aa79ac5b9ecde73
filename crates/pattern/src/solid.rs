//! Volume, surface and centre of mass of a closed mesh.

use rayon::prelude::*;

use crate::mesh::Mesh;
use crate::vector::{Vector, add, cross, dot, norm, scale, sub};

/// A measured solid.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Solid {
    /// Volume of metal: bodies less voids.
    pub volume_mm3: f64,
    /// Whole surface, that of voids included.
    pub area_mm2: f64,
    /// Centre of mass, the metal taken as even.
    pub centre_mm: Vector,
    /// Lowest and highest corner of the box around it.
    pub bounds_mm: [Vector; 2],
    /// Sides of that box.
    pub extents_mm: Vector,
    /// The shells it is made of.
    pub shells: Vec<Shell>,
    /// Shells that bound metal.
    pub bodies: usize,
    /// Shells that bound a void within metal.
    pub voids: usize,
}

/// One shell of a solid.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shell {
    /// Whether it bounds a void rather than metal.
    pub is_void: bool,
    /// Volume it encloses, never negative.
    pub volume_mm3: f64,
    /// Its surface.
    pub area_mm2: f64,
    /// Facets in it.
    pub facets: usize,
}

/// Sums over some facets.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Sums {
    /// Signed volume.
    pub volume: f64,
    /// Area.
    pub area: f64,
    /// Volume times place, against the origin used.
    pub moment: Vector,
    /// Number of facets.
    pub facets: usize,
    /// First corner of the first facet.
    pub place: Vector,
}

/// Facets summed up as one portion; fixed, so that the sum does not depend on how many processors
/// share the work.
const PORTION: usize = 8192;

/// Measures a closed mesh, outward wound; `shell_of` gives the shell of each facet.
pub fn measure(mesh: &Mesh, shell_of: &[u32], shells: usize) -> Solid {
    let [low, high] = mesh.bounds();
    let origin = scale(add(low, high), 0.5);
    let sums = sums_by_shell(mesh, shell_of, shells);
    let all = whole(mesh, origin);
    let centre = if all.volume == 0.0 {
        origin
    } else {
        add(origin, scale(all.moment, 1.0 / all.volume))
    };
    let shells: Vec<Shell> = sums
        .iter()
        .map(|sum| Shell {
            is_void: sum.volume < 0.0,
            volume_mm3: sum.volume.abs(),
            area_mm2: sum.area,
            facets: sum.facets,
        })
        .collect();
    Solid {
        volume_mm3: all.volume,
        area_mm2: all.area,
        centre_mm: centre,
        bounds_mm: [low, high],
        extents_mm: sub(high, low),
        bodies: shells.iter().filter(|shell| !shell.is_void).count(),
        voids: shells.iter().filter(|shell| shell.is_void).count(),
        shells,
    }
}

/// Volume and area of each shell, each against a corner of its own, where rounding is least.
pub fn sums_by_shell(mesh: &Mesh, shell_of: &[u32], shells: usize) -> Vec<Sums> {
    let mut sums = vec![Sums::default(); shells];
    for (facet, &shell) in shell_of.iter().enumerate() {
        let sum = &mut sums[shell as usize];
        if sum.facets == 0 {
            sum.place = mesh.corners(facet)[0];
        }
        let origin = sum.place;
        add_facet(mesh, facet, origin, sum);
    }
    sums
}

/// Volume by the divergence theorem: each facet and the origin span a tetrahedron of volume
/// a·(b×c)/6, whose centre is a quarter of the sum of its corners.
fn add_facet(mesh: &Mesh, facet: usize, origin: Vector, sum: &mut Sums) {
    let [a, b, c] = mesh.corners(facet).map(|corner| sub(corner, origin));
    let volume = dot(a, cross(b, c)) / 6.0;
    sum.volume += volume;
    sum.area += norm(cross(sub(b, a), sub(c, a))) / 2.0;
    sum.moment = add(sum.moment, scale(add(add(a, b), c), volume / 4.0));
    sum.facets += 1;
}

fn whole(mesh: &Mesh, origin: Vector) -> Sums {
    let count = mesh.triangles.len();
    let portions: Vec<Sums> = (0..count.div_ceil(PORTION))
        .into_par_iter()
        .map(|portion| {
            let mut sum = Sums::default();
            for facet in portion * PORTION..((portion + 1) * PORTION).min(count) {
                add_facet(mesh, facet, origin, &mut sum);
            }
            sum
        })
        .collect();
    portions.into_iter().fold(Sums::default(), |all, one| Sums {
        volume: all.volume + one.volume,
        area: all.area + one.area,
        moment: add(all.moment, one.moment),
        facets: all.facets + one.facets,
        place: all.place,
    })
}
