//! From facets as they stand in the file to a closed, outward-wound mesh, or to the reason why not.
//!
//! The order of the steps matters:
//! 1. Points are joined before facets are judged, for an unjoined facet has only open sides.
//! 2. Collapsed and doubled facets go before gaps are joined, for they pose as crowded edges.
//! 3. Slits are zipped before holes are closed, for a zipped slit adds no surface.
//! 4. Facets are wound alike before shells are turned: only a shell wound alike has a volume.

use crate::doubles::{drop_collapsed, drop_doubles};
use crate::faults::{Fault, FaultKind, Standing};
use crate::holes::{self, Lids};
use crate::mended::{Mended, Repair};
use crate::mesh::{Edges, Mesh, Soup};
use crate::nesting::{self, Nested, Role};
use crate::shells::{Shells, wind_alike};
use crate::slits;
use crate::tree::Tree;
use crate::vector::Vector;
use crate::weld;

/// Share of open sides from which facets are a heap: a surface with openings has far fewer, and
/// looking for slits and crossings among loose facets takes long and tells nothing.
const HEAP: f64 = 0.1;

/// Open sides up to which the search costs nothing that matters, whatever their share.
const NO_HEAP: usize = 10_000;

/// Mends the facets of a file as far as one right way to do so can be told.
pub fn mend(soup: Soup) -> Mended {
    let mesh = weld::equal_points(&soup);
    drop(soup);
    mend_mesh(mesh)
}

/// Mends a mesh whose equal points are joined already.
pub fn mend_mesh(mesh: Mesh) -> Mended {
    let mut mending = Mending::begin(mesh);
    mending.drop_collapsed_and_doubled();
    mending.join_gaps();
    mending.done.is_heap = mending.is_heap();
    if !mending.done.is_heap {
        mending.mend_needles_and_slits();
    }
    let shells = mending.wind_and_close();
    mending.settle_shells(shells)
}

/// A mesh being mended, its edges kept up to date, and the counts the faults are made of.
struct Mending {
    mesh: Mesh,
    edges: Edges,
    done: Mended,
    open_at_first: usize,
    crowded_at_first: usize,
    open_place: Option<Vector>,
    crowded_place: Option<Vector>,
    loops: usize,
}

impl Mending {
    fn begin(mesh: Mesh) -> Mending {
        let edges = Edges::of(&mesh);
        let open = edges.open();
        let place = |point: u32| mesh.points[point as usize];
        let crowded = edges.groups().find(|group| group.len() > 2);
        Mending {
            open_at_first: open.len(),
            crowded_at_first: edges.over_shared(),
            open_place: open.first().map(|side| place(side.low)),
            crowded_place: crowded.map(|group| place(group[0].low)),
            loops: 0,
            done: Mended::default(),
            mesh,
            edges,
        }
    }

    fn did(&mut self, count: usize, repair: impl Fn(usize) -> Repair) {
        if count > 0 {
            self.done.repairs.push(repair(count));
            self.edges = Edges::of(&self.mesh);
        }
    }

    fn is_heap(&self) -> bool {
        let open = self.edges.open().len();
        open > NO_HEAP && open as f64 > HEAP * 3.0 * self.mesh.triangles.len() as f64
    }

    fn found(&mut self, kind: FaultKind, standing: Standing) {
        self.done.faults.push(Fault { kind, standing });
    }

    fn drop_collapsed_and_doubled(&mut self) {
        let (collapsed, place) = drop_collapsed(&mut self.mesh);
        self.did(collapsed, |count| Repair::CollapsedDropped { count });
        if let Some(place) = place {
            let kind = FaultKind::DegenerateFacets {
                facets: collapsed,
                place,
            };
            self.found(kind, Standing::Repaired);
        }
        let doubles = drop_doubles(&mut self.mesh, &self.edges);
        let facets = doubles.repeated + doubles.opposed;
        self.did(facets, |count| Repair::DoublesDropped { count });
        if let Some(place) = doubles.place {
            self.found(
                FaultKind::DuplicateFacets { facets, place },
                Standing::Repaired,
            );
        }
    }

    /// Gaps no wider than the rounding of the file are not held against it.
    fn join_gaps(&mut self) {
        let open = self.edges.open();
        if open.is_empty() {
            return;
        }
        let Some(joined) = weld::near_points(&self.mesh, &open) else {
            return;
        };
        self.mesh = joined.mesh;
        self.did(joined.count, |count| Repair::PointsJoined { count });
        if joined.is_rounding {
            self.open_at_first = self.edges.open().len();
        }
        let (collapsed, _) = drop_collapsed(&mut self.mesh);
        self.did(collapsed, |count| Repair::CollapsedDropped { count });
        let doubles = drop_doubles(&mut self.mesh, &self.edges);
        self.did(doubles.repeated + doubles.opposed, |count| {
            Repair::DoublesDropped { count }
        });
    }

    fn mend_needles_and_slits(&mut self) {
        let needles = slits::needles(&self.mesh);
        if let Some(&first) = needles.first() {
            let place = self.mesh.corners(first as usize)[0];
            let mended = slits::mend_needles(&mut self.mesh);
            self.did(mended, |count| Repair::NeedlesMended { count });
            let left = slits::needles(&self.mesh).len();
            let standing = if left == 0 {
                Standing::Repaired
            } else {
                Standing::Noted
            };
            let kind = FaultKind::DegenerateFacets {
                facets: needles.len(),
                place,
            };
            self.found(kind, standing);
        }
        if !self.edges.open().is_empty() {
            let zipped = slits::zip(&mut self.mesh);
            self.did(zipped, |count| Repair::SlitsZipped { count });
        }
    }

    fn wind_and_close(&mut self) -> Shells {
        let mut shells = wind_alike(&mut self.mesh, &self.edges);
        if let (edges, Some(place)) = shells.against {
            self.found(FaultKind::Winding { edges, place }, Standing::Repaired);
            let turned = shells.shells.iter().map(|shell| shell.turned).sum();
            self.did(turned, |count| Repair::FacetsTurned { count });
        }
        if !shells.open.is_empty() && !self.done.is_heap {
            let (openings, astray) = holes::openings(&self.mesh, &shells.open);
            self.loops = openings.len();
            let largest = openings.iter().max_by(|a, b| a.area.total_cmp(&b.area));
            self.open_place = largest.map(|opening| opening.place).or(self.open_place);
            self.open_at_first = self.open_at_first.max(shells.open.len());
            let closed = (astray == 0)
                .then(|| holes::close(&mut self.mesh, &openings))
                .flatten();
            if let Some(lids) = closed {
                self.note_lids(lids, openings.len());
                shells = wind_alike(&mut self.mesh, &self.edges);
            }
        }
        self.note_edges(&shells);
        if let Some(place) = shells.one_sided {
            let kind = FaultKind::Winding {
                edges: shells.against.0,
                place,
            };
            self.found(kind, Standing::Blocks);
        }
        shells
    }

    fn note_lids(&mut self, lids: Lids, count: usize) {
        if !lids.is_large {
            return self.did(count, |count| Repair::HolesClosed { count });
        }
        self.did(count, |count| Repair::FacesClosed { count });
        let kind = FaultKind::MissingFace {
            area: lids.area,
            least: lids.volume.min(lids.other_volume),
            most: lids.volume.max(lids.other_volume),
            place: self.open_place.unwrap_or_default(),
        };
        self.found(kind, Standing::Repaired);
    }

    fn note_edges(&mut self, shells: &Shells) {
        let first_open = shells
            .open
            .first()
            .map(|&side| self.mesh.corners(side as usize / 3)[0]);
        let edges = self.open_at_first.max(shells.open.len());
        if let Some(place) = self.open_place.or(first_open).filter(|_| edges > 0) {
            let standing = if shells.open.is_empty() {
                Standing::Repaired
            } else {
                Standing::Blocks
            };
            self.found(
                FaultKind::OpenBoundary {
                    edges,
                    loops: self.loops,
                    place,
                },
                standing,
            );
        }
        if let Some(place) = self.crowded_place {
            let is_odd = self
                .edges
                .groups()
                .any(|group| group.len() > 2 && group.len() % 2 == 1);
            let standing = match (is_odd, self.edges.over_shared()) {
                (true, _) => Standing::Blocks,
                (false, 0) => Standing::Repaired,
                (false, _) => Standing::Noted,
            };
            let kind = FaultKind::NonManifold {
                edges: self.crowded_at_first,
                place,
            };
            self.found(kind, standing);
        }
    }

    fn settle_shells(mut self, shells: Shells) -> Mended {
        self.done.is_closed = shells.open.is_empty() && shells.one_sided.is_none();
        self.done.shell_of = shells.shell_of.clone();
        if self.done.is_closed {
            let several = shells.shells.len() > 1;
            let tree = several.then(|| Tree::over(&self.mesh));
            let nested = nesting::settle(&mut self.mesh, &shells, tree.as_ref());
            self.note_shells(&nested);
            self.done.tree = tree;
            self.drop_flakes(nested);
        }
        self.mesh.drop_unused_points();
        self.done.mesh = self.mesh;
        self.done
    }

    fn note_shells(&mut self, nested: &[Nested]) {
        let mut inverted = nested.iter().filter(|shell| shell.was_inverted);
        let shells = inverted.clone().count();
        if let Some(first) = inverted.next() {
            self.done
                .repairs
                .push(Repair::ShellsTurned { count: shells });
            self.found(
                FaultKind::Inverted {
                    shells,
                    place: first.place,
                },
                Standing::Repaired,
            );
        }
        let is_metal = |shell: &&Nested| matches!(shell.role, Role::Body | Role::BodyInBody);
        let bodies = nested.iter().filter(is_metal);
        let within = nested.iter().filter(|shell| shell.role == Role::BodyInBody);
        if let Some(last) = within.clone().chain(bodies.clone()).next_back() {
            let (count, within) = (bodies.count(), within.count());
            let standing = if within > 0 {
                Standing::Asks
            } else {
                Standing::Noted
            };
            if count > 1 {
                let place = last.place;
                self.found(
                    FaultKind::MultiBody {
                        count,
                        within,
                        place,
                    },
                    standing,
                );
            }
        }
        let mut voids = nested.iter().filter(|shell| shell.role == Role::Void);
        let volume = voids.clone().map(|shell| shell.volume).sum();
        let count = voids.clone().count();
        if let Some(first) = voids.next() {
            let kind = FaultKind::EnclosedVoid {
                count,
                volume,
                place: first.place,
            };
            self.found(kind, Standing::Noted);
        }
    }

    fn drop_flakes(&mut self, nested: Vec<Nested>) {
        let count = nested
            .iter()
            .filter(|shell| shell.role == Role::Flake)
            .count();
        if count == 0 {
            self.done.nested = nested;
            return;
        }
        let mut new_shell = vec![u32::MAX; nested.len()];
        let kept = nested
            .iter()
            .enumerate()
            .filter(|(_, shell)| shell.role != Role::Flake);
        for (new, (old, _)) in kept.enumerate() {
            new_shell[old] = new as u32;
        }
        let old_shells = std::mem::take(&mut self.done.shell_of);
        let mut shells = old_shells.iter().map(|&shell| new_shell[shell as usize]);
        self.mesh
            .triangles
            .retain(|_| shells.next().is_some_and(|shell| shell != u32::MAX));
        let renumbered = old_shells.iter().map(|&shell| new_shell[shell as usize]);
        self.done.shell_of = renumbered.filter(|&shell| shell != u32::MAX).collect();
        let is_kept = |shell: &Nested| shell.role != Role::Flake;
        self.done.nested = nested.into_iter().filter(is_kept).collect();
        self.done.tree = None;
        self.did(count, |count| Repair::FlakesDropped { count });
    }
}
