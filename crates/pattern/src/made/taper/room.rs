//! Room for skirts: where two of them, or one and what stands across, would leave no sand between,
//! both spread less.

use std::collections::BTreeMap;

use rayon::prelude::*;

use super::Tight;
use super::skirt::Skirt;
use super::upright::Upright;
use super::walls::Walls;
use crate::mesh::Mesh;
use crate::rays::first_met;
use crate::tree::Tree;

/// Share of a gap that skirts may fill. With more of it the sand left between is too thin to stand,
/// with less a hole of common size gets no draught.
const FILLED: f64 = 2.0 / 3.0;

/// Shares of the height of a skirt at which the room is looked at.
const DOWN: [f64; 3] = [0.3, 0.65, 0.97];

/// Off the wall by this much, mm, the look across begins.
const OFF_MM: f64 = 0.01;

/// Makes skirts spread less where there is no room for them; gives the tightest place of each wall.
pub(super) fn fit(mesh: &Mesh, tree: &Tree, walls: &Walls, skirts: &mut [Skirt]) -> Vec<Tight> {
    let looks: Vec<Option<Look>> = skirts
        .par_iter()
        .map(|skirt| look(mesh, tree, walls, skirt))
        .collect();
    let mut shares: BTreeMap<(u32, bool), f64> = BTreeMap::new();
    let mut tight: BTreeMap<u32, (f64, Tight)> = BTreeMap::new();
    for (skirt, look) in skirts.iter().zip(&looks) {
        let Some(look) = look else { continue };
        for end in skirt.crest.ends {
            let share = shares.entry((end, skirt.crest.way > 0.0)).or_insert(1.0);
            *share = share.min(look.share);
        }
        let patch = walls.patch_of[skirt.crest.facet];
        let wanted = walls.patch(skirt.crest.facet).wanted;
        let told = Tight {
            place_mm: look.place_mm,
            gap_mm: look.gap_mm,
            wanted_degrees: wanted.atan().to_degrees(),
            has_degrees: (wanted * look.share).atan().to_degrees(),
        };
        let narrowest = tight.entry(patch).or_insert((look.share, told));
        if look.share < narrowest.0 {
            *narrowest = (look.share, told);
        }
    }
    for skirt in skirts {
        for end in 0..2 {
            let key = (skirt.crest.ends[end], skirt.crest.way > 0.0);
            if let Some(&share) = shares.get(&key) {
                skirt.starts_mm[end] *= share;
                skirt.crest.rates[end] = skirt.crest.rates[end].map(|rate| rate * share);
            }
        }
    }
    tight.into_values().map(|(_, told)| told).collect()
}

/// A look across from a skirt without room.
struct Look {
    place_mm: [f64; 3],
    gap_mm: f64,
    /// What of the draught there is room for.
    share: f64,
}

/// The look across with the least room, if there is not enough.
fn look(mesh: &Mesh, tree: &Tree, walls: &Walls, skirt: &Skirt) -> Option<Look> {
    let crest = &skirt.crest;
    let [x, y, _] = walls.units[crest.facet];
    let out = [x / x.hypot(y), y / x.hypot(y), 0.0];
    let [a, b] = crest.ends.map(|end| mesh.points[end as usize]);
    let middle = [0, 1, 2].map(|axis| (a[axis] + b[axis]) / 2.0);
    let start = (skirt.starts_mm[0] + skirt.starts_mm[1]) / 2.0;
    let seen = Upright {
        mesh,
        tree,
        way: crest.way,
    };
    let top = middle[2] * crest.way;
    let beside = [0, 1].map(|axis| middle[axis] + OFF_MM * out[axis]);
    // The floor beside the wall, where there is one, else the foot of the skirt.
    let foot = (skirt.foot_mm[0] + skirt.foot_mm[1]) / 2.0;
    let floor = seen.floor(beside, top).ok().flatten();
    let fall = top - floor.map_or(foot, |[_, high]| high.max(foot));
    let wanted = walls.patch(crest.facet).wanted;
    let looks = DOWN.into_iter().filter_map(|down| {
        let height = top - down * fall;
        let from = [beside[0], beside[1], height * crest.way];
        seen.floor(beside, height).ok()?;
        let (facet, across) = first_met(mesh, tree, from, out)?;
        let gap_mm = across + OFF_MM;
        let own = start + wanted * down * fall;
        let other = match walls.wants(facet as usize) {
            Some(way) if way == crest.way => {
                let behind = gap_mm + OFF_MM;
                let place = [middle[0] + behind * out[0], middle[1] + behind * out[1]];
                let above = seen.metal(place).into_iter();
                let top = above.map(|[_, high]| high).fold(height, f64::max);
                walls.patch(facet as usize).wanted * (top - height) + start
            }
            _ => 0.0,
        };
        let share = FILLED * gap_mm / (own + other);
        (share < 1.0).then_some(Look {
            place_mm: from,
            gap_mm,
            share,
        })
    });
    looks.min_by(|a, b| a.share.total_cmp(&b.share))
}
