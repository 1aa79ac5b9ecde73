//! Bodies that overlap and skin that crosses itself, made one solid.
//!
//! The exact way: facets are cut where they cross, and those kept that part the places gone round
//! at least once from those gone round never. The volume is then held against that of the lines
//! drawn through the mesh before, which share no step with it.

use crate::boolean::Body;
use crate::faults::{Fault, FaultKind};
use crate::mended::{Mended, Repair};
use crate::nesting::Role;
use crate::rays::Counted;
use crate::repair::mend_mesh;
use crate::solid::sums_by_shell;

/// Share of the volume counted twice from which joining is worth the change of the skin: lines
/// tell no smaller share from their own error.
pub const WORTH_JOINING: f64 = 1e-4;

/// Largest share of the volume that may be turned inside out. It is dropped in joining; where it is
/// more, what is metal and what is not was drawn too badly to tell.
const MOST_INVERTED: f64 = 0.0025;

/// Most bodies taken for one part drawn of overlapping solids. More are an assembly, whose parts
/// are cast apart.
const MOST_BODIES: usize = 40;

/// Most facets that are joined: a second for every five thousand that cross, and no end in sight
/// for a million.
const MOST_FACETS: usize = 100_000;

/// Largest difference to the volume by lines. They come within a hundredth on any part met; a body
/// lost in joining shows as more.
const MOST_OFF: f64 = 0.02;

/// The mesh with everything joined that crosses, and what was done; none where it cannot be told
/// what was meant, or the result does not stand up.
///
/// `crossing` are the facets that pass through others, `counted` the volumes by lines.
pub fn join(mended: &Mended, crossing: &[u32], counted: &Counted) -> Option<Mended> {
    let is_meant = is_one_part(mended, crossing)
        && mended.mesh.triangles.len() <= MOST_FACETS
        && counted.inverted <= MOST_INVERTED * counted.joined;
    if !is_meant {
        return None;
    }
    let body = Body::rebuilt(&mended.mesh).ok()?;
    let mut joined = mend_mesh(body.mesh());
    let after = volume(&joined);
    if !joined.is_closed || (after - counted.joined).abs() > MOST_OFF * counted.joined {
        return None;
    }
    let mut faults = mended.faults.clone();
    faults.retain(|fault| !is_told_anew(fault));
    faults.append(&mut joined.faults);
    let mut repairs = mended.repairs.clone();
    let before = volume(mended);
    repairs.push(Repair::CrossingsJoined { before, after });
    repairs.append(&mut joined.repairs);
    Some(Mended {
        faults,
        repairs,
        ..joined
    })
}

/// Whether the bodies are few, and none lies within another without crossing it: that one may be
/// meant as a void.
fn is_one_part(mended: &Mended, crossing: &[u32]) -> bool {
    let mut crosses = vec![false; mended.nested.len()];
    for &facet in crossing {
        crosses[mended.shell_of[facet as usize] as usize] = true;
    }
    let is_metal = |role: Role| matches!(role, Role::Body | Role::BodyInBody);
    let bodies = mended.nested.iter().filter(|shell| is_metal(shell.role));
    let mut shells = mended.nested.iter().zip(crosses);
    bodies.count() <= MOST_BODIES
        && shells.all(|(shell, crosses)| shell.role != Role::BodyInBody || crosses)
}

fn is_told_anew(fault: &Fault) -> bool {
    matches!(
        fault.kind,
        FaultKind::MultiBody { .. } | FaultKind::EnclosedVoid { .. }
    )
}

fn volume(mended: &Mended) -> f64 {
    let sums = sums_by_shell(&mended.mesh, &mended.shell_of, mended.nested.len());
    sums.iter().map(|sum| sum.volume).sum()
}
