//! A mesh file looked at as a whole: read, mended, measured, and taken or turned away.

use serde::{Deserialize, Serialize};

use crate::crossings;
use crate::faults::{Fault, FaultKind, Standing};
use crate::joining::{self, WORTH_JOINING};
use crate::mended::{Mended, Repair};
use crate::mesh::{Mesh, Soup};
use crate::rays;
use crate::read::{Format, ReadError, read};
use crate::repair::mend;
use crate::solid::{self, Solid};
use crate::tree::Tree;
use crate::unit::{Choice, Unit, UnitBasis, choices, is_casting_size_mm, settle};
use crate::vector::{Vector, bounds_of, norm, scale, sub};

/// What is to become of a file.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Verdict {
    /// Taken as it is; faults worth knowing are listed.
    Accepted,
    /// Taken after repair; the repairs are listed.
    Healed,
    /// The founder must choose first: the unit, or which body is meant.
    Ask,
    /// Turned away, with reason and place.
    Refused,
}

/// A mesh file looked at.
#[derive(Clone, Debug)]
pub struct Looked {
    /// What is to become of it.
    pub verdict: Verdict,
    /// The file format; none for a part that comes from no file.
    pub format: Option<Format>,
    /// The unit it is drawn in, if known.
    pub unit: Option<Unit>,
    /// How the unit is known.
    pub basis: UnitBasis,
    /// Extents in file units.
    pub extents_in_file: Vector,
    /// The size the part would have in each unit worth considering.
    pub choices: Vec<Choice>,
    /// The mesh, mended as far as possible, in millimetres; in file units while `unit` is none.
    pub mesh: Mesh,
    /// Its measures. Volume, centre and shells stand only for a closed mesh; in file units while
    /// `unit` is none.
    pub solid: Solid,
    /// Everything found, mended or not.
    pub faults: Vec<Fault>,
    /// Everything done.
    pub repairs: Vec<Repair>,
    /// Facets in the file.
    pub triangles: usize,
    /// Named solids, objects or placed items in the file.
    pub pieces: usize,
}

/// Largest share of the volume that may be counted twice or turned inside out where facets cross:
/// a quarter of a percent of metal is less than the scale at the furnace shows.
pub const MOST_MISCOUNTED: f64 = 0.0025;

/// Mean thickness, as a share of the box diagonal, below which nothing can be poured: 0.2 mm on a
/// part of a metre, thinner than any sand casting of that size.
pub const LEAST_THICKNESS: f64 = 2e-4;

/// Looks at a mesh file; `asked` is the unit the founder gave, if any.
pub fn look(name: &str, bytes: &[u8], asked: Option<Unit>) -> Result<Looked, ReadError> {
    Ok(look_over(read(name, bytes)?, asked))
}

/// Looks at facets, wherever they come from.
pub fn look_over(mut soup: Soup, asked: Option<Unit>) -> Looked {
    let extents_in_file = extents(&soup);
    let (unit, basis) = settle(asked, soup.declared_unit, extents_in_file);
    let mm = unit.map_or(1.0, Unit::mm);
    if mm != 1.0 {
        soup.points
            .iter_mut()
            .for_each(|point| *point = scale(*point, mm));
    }
    let (format, triangles, pieces) = (soup.format, soup.triangles.len(), soup.pieces);
    let mut mended = mend(soup);
    judge_crossings(&mut mended);
    let solid = measured(&mended);
    judge_volume(&mut mended, &solid);
    judge_unit(&mut mended, basis, scale(extents_in_file, mm));
    Looked {
        verdict: verdict(&mended.faults),
        format,
        unit,
        basis,
        extents_in_file,
        choices: choices(extents_in_file),
        mesh: mended.mesh,
        solid,
        faults: mended.faults,
        repairs: mended.repairs,
        triangles,
        pieces,
    }
}

fn extents(soup: &Soup) -> Vector {
    let used = soup
        .triangles
        .iter()
        .flatten()
        .map(|&point| soup.points[point as usize]);
    bounds_of(used).map_or([0.0; 3], |[low, high]| sub(high, low))
}

fn measured(mended: &Mended) -> Solid {
    if mended.is_closed {
        return solid::measure(&mended.mesh, &mended.shell_of, mended.nested.len());
    }
    let [low, high] = mended.mesh.bounds();
    Solid {
        area_mm2: mended.mesh.area(),
        bounds_mm: [low, high],
        extents_mm: sub(high, low),
        ..Solid::default()
    }
}

/// Looks for facets that cross and bodies that share room, weighs what they make wrong, and joins
/// them where that can be done.
fn judge_crossings(mended: &mut Mended) {
    if mended.is_heap && !mended.is_closed {
        return;
    }
    let mesh = &mended.mesh;
    let tree = mended.tree.take().unwrap_or_else(|| Tree::over(mesh));
    let crossings = crossings::find(mesh, &tree);
    let is_plain = crossings.facets.is_empty() && !crossings.was_given_up;
    if is_plain && mended.nested.len() < 2 {
        return;
    }
    let can_count = mended.is_closed && !crossings.was_given_up;
    let counted = can_count.then(|| rays::count_volumes(mesh, &tree));
    let miscounted = counted.map_or(1.0, |c| {
        (c.doubled + c.inverted) / c.joined.max(f64::MIN_POSITIVE)
    });
    if is_plain && miscounted <= WORTH_JOINING {
        return;
    }
    let place = crossings
        .place
        .or(mended.nested.last().map(|shell| shell.place));
    let kind = FaultKind::SelfIntersection {
        facets: crossings.facets.len(),
        miscounted,
        place: place.unwrap_or_default(),
    };
    let worth_joining = counted.filter(|_| miscounted > WORTH_JOINING);
    let joined = worth_joining.and_then(|c| joining::join(mended, &crossings.facets, &c));
    let standing = match (&joined, miscounted <= MOST_MISCOUNTED) {
        (Some(_), _) => Standing::Repaired,
        (None, true) => Standing::Noted,
        (None, false) => Standing::Blocks,
    };
    if let Some(joined) = joined {
        *mended = joined;
    }
    mended.faults.push(Fault { kind, standing });
}

fn judge_volume(mended: &mut Mended, solid: &Solid) {
    if !mended.is_closed {
        return;
    }
    let volume = solid.volume_mm3;
    let thickness = 2.0 * volume / solid.area_mm2.max(f64::MIN_POSITIVE);
    if thickness.is_nan() || thickness <= LEAST_THICKNESS * norm(solid.extents_mm) {
        let kind = FaultKind::NoVolume { volume, thickness };
        mended.faults.push(Fault {
            kind,
            standing: Standing::Blocks,
        });
    }
}

fn judge_unit(mended: &mut Mended, basis: UnitBasis, extents: Vector) {
    let standing = match basis {
        UnitBasis::Unknown => Standing::Asks,
        UnitBasis::Declared if !is_casting_size_mm(extents) => Standing::Noted,
        _ => return,
    };
    mended.faults.push(Fault {
        kind: FaultKind::UnitSuspect { extents },
        standing,
    });
}

/// The worst standing of any fault decides.
fn verdict(faults: &[Fault]) -> Verdict {
    match faults.iter().map(|fault| fault.standing).max() {
        None | Some(Standing::Noted) => Verdict::Accepted,
        Some(Standing::Repaired) => Verdict::Healed,
        Some(Standing::Asks) => Verdict::Ask,
        Some(Standing::Blocks) => Verdict::Refused,
    }
}
