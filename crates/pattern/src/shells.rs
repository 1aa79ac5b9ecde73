//! Facets sorted into shells, each wound the same way throughout.

use crate::mesh::{Edges, Mesh, Side};
use crate::vector::{Vector, cross, dot, sub};

/// No facet meets this side.
pub const NONE: u32 = u32::MAX;

/// The shells of a mesh and what was turned to wind each the same way.
#[derive(Clone, Debug, Default)]
pub struct Shells {
    /// Shell of each facet.
    pub shell_of: Vec<u32>,
    /// The shells in the order of their first facet.
    pub shells: Vec<Winding>,
    /// Sides that meet no other facet, or an edge that cannot be sorted into pairs.
    pub open: Vec<u32>,
    /// Edges across which two facets were wound against each other, with a point on the first.
    pub against: (usize, Option<Vector>),
    /// A point where a shell turns into its own back, as no solid does.
    pub one_sided: Option<Vector>,
}

/// How one shell was wound.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Winding {
    /// Facets in the shell.
    pub facets: usize,
    /// Facets turned to agree with most of the shell.
    pub turned: usize,
}

/// Links facets across edges, sorts them into shells and turns the minority of each shell.
pub fn wind_alike(mesh: &mut Mesh, edges: &Edges) -> Shells {
    let (across, open) = link(mesh, edges);
    let mut found = Shells {
        shell_of: vec![NONE; mesh.triangles.len()],
        open,
        ..Shells::default()
    };
    found.against = wound_against(mesh, &across);
    let mut is_turned = vec![false; mesh.triangles.len()];
    let mut members = Vec::new();
    for facet in 0..mesh.triangles.len() {
        if found.shell_of[facet] != NONE {
            continue;
        }
        flood(
            mesh,
            &across,
            facet,
            &mut found,
            &mut is_turned,
            &mut members,
        );
        let turned = members
            .iter()
            .filter(|&&member| is_turned[member as usize])
            .count();
        let turns_minority = 2 * turned <= members.len();
        for &member in &members {
            let turns = is_turned[member as usize] == turns_minority;
            is_turned[member as usize] = turns;
            if turns {
                mesh.triangles[member as usize].swap(1, 2);
            }
        }
        let turned = turned.min(members.len() - turned);
        found.shells.push(Winding {
            facets: members.len(),
            turned,
        });
    }
    // A turned facet has its sides in the opposite order, so that an open one bears another id.
    for side in &mut found.open {
        let (facet, corner) = (*side / 3, *side % 3);
        if is_turned[facet as usize] {
            *side = 3 * facet + 2 - corner;
        }
    }
    found
}

/// The side across each side, and the sides that have none.
///
/// On an edge with two facets that is plain. On an edge with an even number of them, where bodies
/// touch, the facets are sorted around the edge and paired so that metal lies between each pair.
/// Where facets lie on one another that order is a matter of chance; if it pairs facets wound
/// against each other though as many run one way as the other, they are left unpaired but not open.
fn link(mesh: &Mesh, edges: &Edges) -> (Vec<u32>, Vec<u32>) {
    let mut across = vec![NONE; 3 * mesh.triangles.len()];
    let mut open = Vec::new();
    let mut join = |a: u32, b: u32| {
        across[a as usize] = b;
        across[b as usize] = a;
    };
    for group in edges.groups() {
        match group {
            [a, b] => join(a.id, b.id),
            _ if group.len() % 2 == 0 => {
                let sorted = around(mesh, group);
                if is_paired(mesh, &sorted) || !is_balanced(mesh, group) {
                    sorted
                        .chunks_exact(2)
                        .for_each(|pair| join(pair[0], pair[1]));
                }
            }
            _ => open.extend(group.iter().map(|side| side.id)),
        }
    }
    (across, open)
}

/// The sides of one edge in the order in which they lie around it, so that with metal between
/// first and second, third and fourth and so on, most of them are wound outward.
fn around(mesh: &Mesh, group: &[Side]) -> Vec<u32> {
    let at = |point: u32| mesh.points[point as usize];
    let (low, high) = (at(group[0].low), at(group[0].high));
    let axis = sub(high, low);
    let outward = |side: &Side| {
        let far = mesh.triangles[side.facet()][(side.id as usize % 3 + 2) % 3];
        sub(at(far), low)
    };
    let first = outward(&group[0]);
    let up = cross(axis, first);
    let flat = cross(up, axis);
    let length = dot(axis, axis).sqrt();
    let mut sorted: Vec<(f64, &Side)> = group
        .iter()
        .map(|side| {
            let direction = outward(side);
            let angle = (dot(direction, up) * length).atan2(dot(direction, flat));
            (
                if angle < 0.0 {
                    angle + std::f64::consts::TAU
                } else {
                    angle
                },
                side,
            )
        })
        .collect();
    sorted.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.id.cmp(&b.1.id)));
    let runs_up = |side: &Side| mesh.ends(side.id).0 == side.low;
    let as_expected = sorted
        .iter()
        .enumerate()
        .filter(|(i, s)| runs_up(s.1) == (i % 2 == 1));
    let shift = usize::from(2 * as_expected.count() < sorted.len());
    sorted.rotate_left(shift);
    sorted.into_iter().map(|(_, side)| side.id).collect()
}

fn runs_up(mesh: &Mesh, side: u32) -> bool {
    let (from, to) = mesh.ends(side);
    from < to
}

fn is_balanced(mesh: &Mesh, group: &[Side]) -> bool {
    2 * group.iter().filter(|side| runs_up(mesh, side.id)).count() == group.len()
}

fn is_paired(mesh: &Mesh, sorted: &[u32]) -> bool {
    sorted
        .chunks_exact(2)
        .all(|pair| runs_up(mesh, pair[0]) != runs_up(mesh, pair[1]))
}

fn wound_against(mesh: &Mesh, across: &[u32]) -> (usize, Option<Vector>) {
    let mut count = 0;
    let mut place = None;
    for (side, &other) in across.iter().enumerate() {
        if other != NONE && (side as u32) < other {
            let from = mesh.ends(side as u32).0;
            if from == mesh.ends(other).0 {
                count += 1;
                place.get_or_insert(mesh.points[from as usize]);
            }
        }
    }
    (count, place)
}

/// Walks from facet to facet and notes which must be turned to agree with the first.
fn flood(
    mesh: &Mesh,
    across: &[u32],
    start: usize,
    found: &mut Shells,
    is_turned: &mut [bool],
    members: &mut Vec<u32>,
) {
    let shell = found.shells.len() as u32;
    members.clear();
    members.push(start as u32);
    found.shell_of[start] = shell;
    let mut next = 0;
    while let Some(&facet) = members.get(next) {
        next += 1;
        for side in 3 * facet..3 * facet + 3 {
            let other = across[side as usize];
            if other == NONE {
                continue;
            }
            let (from, neighbour) = (mesh.ends(side).0, other as usize / 3);
            let agrees = from != mesh.ends(other).0;
            let must_turn = is_turned[facet as usize] == agrees;
            if found.shell_of[neighbour] == NONE {
                found.shell_of[neighbour] = shell;
                is_turned[neighbour] = must_turn;
                members.push(neighbour as u32);
            } else if is_turned[neighbour] != must_turn {
                found.one_sided.get_or_insert(mesh.points[from as usize]);
            }
        }
    }
}
