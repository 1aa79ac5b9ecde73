//! Facets that are there twice, and facets that have collapsed.

use crate::mesh::{Edges, Mesh};
use crate::vector::Vector;

/// What was found and dropped.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Doubles {
    /// Facets dropped because the same facet is there already.
    pub repeated: usize,
    /// Facets dropped because a facet wound the other way lies on them.
    pub opposed: usize,
    /// A point on the first of them.
    pub place: Option<Vector>,
}

/// Share of facets with a double wound the other way from which the file is taken for a drawing
/// with two-sided surfaces, of which one side is kept. Below it such a pair is a wall of no
/// thickness inside the part and both are dropped.
const TWO_SIDED: f64 = 0.5;

/// Drops facets with two equal corners; gives their number and a point on the first.
pub fn drop_collapsed(mesh: &mut Mesh) -> (usize, Option<Vector>) {
    let is_collapsed = |&[a, b, c]: &[u32; 3]| a == b || b == c || c == a;
    let first = mesh
        .triangles
        .iter()
        .find(|triangle| is_collapsed(triangle));
    let place = first.map(|triangle| mesh.points[triangle[0] as usize]);
    let before = mesh.triangles.len();
    mesh.triangles.retain(|triangle| !is_collapsed(triangle));
    (before - mesh.triangles.len(), place)
}

/// Drops facets that are there more than once.
pub fn drop_doubles(mesh: &mut Mesh, edges: &Edges) -> Doubles {
    let suspects = suspects(mesh, edges);
    let mut groups = same_corners(mesh, &suspects);
    groups.retain(|group| group.len() > 1);
    let in_pairs: usize = groups.iter().map(|group| 2 * pairs(mesh, group)).sum();
    let is_two_sided = in_pairs as f64 >= TWO_SIDED * mesh.triangles.len() as f64;
    let mut is_dropped = vec![false; mesh.triangles.len()];
    let mut found = Doubles::default();
    for group in &groups {
        let kept = keep_in(mesh, group, is_two_sided);
        let dropped = group.len() - kept.len();
        if pairs(mesh, group) > 0 {
            found.opposed += dropped;
        } else {
            found.repeated += dropped;
        }
        for &facet in group {
            is_dropped[facet as usize] = !kept.contains(&facet);
        }
        found
            .place
            .get_or_insert(mesh.corners(group[0] as usize)[0]);
    }
    let mut facet = 0;
    mesh.triangles.retain(|_| {
        facet += 1;
        !is_dropped[facet - 1]
    });
    found
}

/// Facets that can have a double: on an edge with more than two facets, or closed up against a
/// single neighbour with the same third corner.
fn suspects(mesh: &Mesh, edges: &Edges) -> Vec<u32> {
    let third = |id: u32| {
        let corner = id as usize % 3;
        mesh.triangles[id as usize / 3][(corner + 2) % 3]
    };
    let mut suspects: Vec<u32> = edges
        .groups()
        .filter(|group| {
            group.len() > 2 || group.len() == 2 && third(group[0].id) == third(group[1].id)
        })
        .flatten()
        .map(|side| side.id / 3)
        .collect();
    suspects.sort_unstable();
    suspects.dedup();
    suspects
}

fn same_corners(mesh: &Mesh, suspects: &[u32]) -> Vec<Vec<u32>> {
    let mut keyed: Vec<([u32; 3], u32)> = suspects
        .iter()
        .map(|&facet| {
            let mut corners = mesh.triangles[facet as usize];
            corners.sort_unstable();
            (corners, facet)
        })
        .collect();
    keyed.sort_unstable();
    let groups = keyed.chunk_by(|a, b| a.0 == b.0);
    groups
        .map(|group| group.iter().map(|&(_, facet)| facet).collect())
        .collect()
}

/// Whether the corners, turned so that the lowest comes first, go up from the second to the third.
fn is_rising(mesh: &Mesh, facet: u32) -> bool {
    let [a, b, c] = mesh.triangles[facet as usize];
    let descents = usize::from(a > b) + usize::from(b > c) + usize::from(c > a);
    descents == 1
}

fn pairs(mesh: &Mesh, group: &[u32]) -> usize {
    let rising = group
        .iter()
        .filter(|&&facet| is_rising(mesh, facet))
        .count();
    rising.min(group.len() - rising)
}

/// The facets of a group that stay: one for a repeated facet; of opposed ones, the first if the
/// whole drawing is two-sided, else what is left when each is set against its opposite.
fn keep_in(mesh: &Mesh, group: &[u32], is_two_sided: bool) -> Vec<u32> {
    let rising: Vec<u32> = group
        .iter()
        .copied()
        .filter(|&f| is_rising(mesh, f))
        .collect();
    let falling: Vec<u32> = group
        .iter()
        .copied()
        .filter(|&f| !is_rising(mesh, f))
        .collect();
    if is_two_sided || rising.is_empty() || falling.is_empty() {
        return group[..1].to_vec();
    }
    match rising.len().cmp(&falling.len()) {
        std::cmp::Ordering::Equal => Vec::new(),
        std::cmp::Ordering::Greater => rising[..1].to_vec(),
        std::cmp::Ordering::Less => falling[..1].to_vec(),
    }
}
