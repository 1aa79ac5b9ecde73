//! Skirts: what hangs on a crest and spreads towards the joint, down to the metal it comes to rest
//! on, or to the joint itself.

use std::collections::BTreeMap;

use rayon::prelude::*;

use super::Heights;
use super::crest::Crest;
use super::upright::{NOTHING_MM, Upright};
use super::walls::Walls;
use crate::mesh::Mesh;
use crate::tree::Tree;
use crate::vector::Vector;

/// What hangs on one crest; heights count along the way of draw.
#[derive(Clone, Debug)]
pub(super) struct Skirt {
    /// What it hangs on.
    pub(super) crest: Crest,
    /// How far out it begins at either end, mm across the wall.
    pub(super) starts_mm: [f64; 2],
    /// Height of its foot below either end.
    pub(super) foot_mm: [f64; 2],
    /// Height of either end over its foot.
    falls_mm: [f64; 2],
    /// The highest lower end of the metal that it comes to rest on.
    under_mm: f64,
}

/// Sand below metal that is no higher than this, mm, may be filled: the lip of a groove is a
/// polygon above another, and its corners hang over by as much.
const LEAK_MM: f64 = 0.3;

impl Skirt {
    /// Whether it reaches through metal into sand below, which it must not fill.
    pub(super) fn leaks(&self) -> bool {
        self.under_mm > self.foot_mm[0].min(self.foot_mm[1]) + LEAK_MM
    }

    /// How far out it goes at most, mm.
    fn widest_mm(&self) -> f64 {
        let widths = [0, 1].map(|end| {
            let [x, y] = self.crest.rates[end];
            self.starts_mm[end] + self.falls_mm[end] * x.hypot(y)
        });
        widths[0].max(widths[1])
    }
}

/// Shares of the length of a crest, and of the width of its skirt, at which the metal below is
/// looked for. What is narrower than the steps between them may be missed, and an overhang of its
/// width is left.
const ALONG: [f64; 3] = [0.02, 0.5, 0.98];
const ACROSS: [f64; 8] = [0.05, 0.15, 0.3, 0.45, 0.6, 0.75, 0.9, 1.0];

/// The skirts of all crests; `joint` gives heights along z.
pub(super) fn skirts(
    mesh: &Mesh,
    tree: &Tree,
    walls: &Walls,
    crests: &[Crest],
    joint: Heights<'_>,
) -> Vec<Skirt> {
    let falls: Vec<[f64; 2]> = crests
        .iter()
        .map(|crest| falls(mesh, walls, crest, joint))
        .collect();
    let starts = starts(mesh, walls, crests, &falls, joint);
    let hung = crests.par_iter().enumerate().map(|(number, crest)| {
        let seen = Upright {
            mesh,
            tree,
            way: crest.way,
        };
        hung(seen, crest, falls[number], starts[number])
    });
    let mut skirts: Vec<Skirt> = hung.collect::<Vec<_>>().into_iter().flatten().collect();
    bring_together(&mut skirts);
    skirts.retain(|skirt| skirt.widest_mm() >= LEAST_MM);
    skirts
}

/// Skirts that go out by less, mm, are left out: walls of a tenth of a millimetre, as at the lip of
/// a flank, draw as they are, and what would hang on them are needles.
const LEAST_MM: f64 = 2.0 * NOTHING_MM;

/// Skirts beside each other end alike: where they did not, their ends would have to be cut by each
/// other, and cracks no wider than rounding would be left between.
fn bring_together(skirts: &mut [Skirt]) {
    let mut ends: BTreeMap<(u32, bool), [f64; 2]> = BTreeMap::new();
    for skirt in skirts.iter() {
        for end in 0..2 {
            let key = (skirt.crest.ends[end], skirt.crest.way > 0.0);
            let [start, foot] = ends.entry(key).or_insert([0.0, f64::MAX]);
            *start = start.max(skirt.starts_mm[end]);
            *foot = foot.min(skirt.foot_mm[end]);
        }
    }
    for skirt in skirts {
        for end in 0..2 {
            let key = (skirt.crest.ends[end], skirt.crest.way > 0.0);
            if let Some(&[start, foot]) = ends.get(&key) {
                skirt.starts_mm[end] = start;
                skirt.falls_mm[end] += skirt.foot_mm[end] - foot;
                skirt.foot_mm[end] = foot;
            }
        }
    }
}

/// How far each end of a crest may fall, mm: to the joint, or as deep as its wall where the joint
/// lies above.
fn falls(mesh: &Mesh, walls: &Walls, crest: &Crest, joint: Heights<'_>) -> [f64; 2] {
    let to_joint = crest.ends.map(|end| {
        let [x, y, z] = mesh.points[end as usize];
        crest.way * (z - joint([x, y]))
    });
    match to_joint.iter().any(|fall| *fall > NOTHING_MM) {
        true => to_joint.map(|fall| fall.max(0.0)),
        false => [walls.patch(crest.facet).reach_mm; 2],
    }
}

/// Where the wall goes farther out on the other side of the joint, the skirt begins that much
/// farther out, so that both halves meet. What the other side does counts less by as much as it
/// lies aside.
fn starts(
    mesh: &Mesh,
    walls: &Walls,
    crests: &[Crest],
    falls: &[[f64; 2]],
    joint: Heights<'_>,
) -> Vec<[f64; 2]> {
    let crosses = |crest: &Crest| {
        crest.ends.iter().any(|&end| {
            let [x, y, z] = mesh.points[end as usize];
            crest.way * (z - joint([x, y])) > NOTHING_MM
        })
    };
    let mut of_patch: BTreeMap<(u32, bool), Vec<usize>> = BTreeMap::new();
    for (number, crest) in crests
        .iter()
        .enumerate()
        .filter(|(_, crest)| crosses(crest))
    {
        let key = (walls.patch_of[crest.facet], crest.way > 0.0);
        of_patch.entry(key).or_default().push(number);
    }
    let plan = |end: u32| {
        let [x, y, _] = mesh.points[end as usize];
        [x, y]
    };
    let one = |number: usize| {
        let crest = &crests[number];
        let wanted = walls.patch(crest.facet).wanted;
        let key = (walls.patch_of[crest.facet], crest.way <= 0.0);
        let others = of_patch.get(&key).filter(|_| crosses(crest));
        [0, 1].map(|end| {
            let place = plan(crest.ends[end]);
            let own = wanted * falls[number][end];
            let others = others.into_iter().flatten().map(|&other| {
                let ends = crests[other].ends.map(plan);
                let (share, aside) = aside(place, ends);
                let fall = falls[other];
                wanted * (fall[0] + share * (fall[1] - fall[0])) - aside
            });
            (others.fold(own, f64::max) - own).max(0.0)
        })
    };
    (0..crests.len()).into_par_iter().map(one).collect()
}

/// How far along a line between two places another lies, as a share, and how far aside, mm.
fn aside(place: [f64; 2], [a, b]: [[f64; 2]; 2]) -> (f64, f64) {
    let (along, to) = (
        [b[0] - a[0], b[1] - a[1]],
        [place[0] - a[0], place[1] - a[1]],
    );
    let squared = along[0] * along[0] + along[1] * along[1];
    let share = (to[0] * along[0] + to[1] * along[1]) / squared.max(f64::MIN_POSITIVE);
    let share = share.clamp(0.0, 1.0);
    let off = [to[0] - share * along[0], to[1] - share * along[1]];
    (share, off[0].hypot(off[1]))
}

fn hung(seen: Upright<'_>, crest: &Crest, falls: [f64; 2], starts: [f64; 2]) -> Option<Skirt> {
    let at = |end: usize| seen.mesh.points[crest.ends[end] as usize];
    let (a, b) = (at(0), at(1));
    let between = |a: f64, b: f64, share: f64| a + share * (b - a);
    // Heights of the floors that the skirt has to reach, and of the metal under them.
    let mut floors: Vec<Option<[f64; 2]>> = Vec::new();
    for along in ALONG {
        for across in ACROSS {
            let plan = [0, 1].map(|axis| {
                let out = [0, 1].map(|end| {
                    starts[end] * crest.mitres[end][axis]
                        + falls[end] * across * crest.rates[end][axis]
                });
                between(a[axis] + out[0], b[axis] + out[1], along)
            });
            let fall = between(falls[0], falls[1], along);
            let height = between(a[2], b[2], along) * seen.way - across * fall;
            if let Ok(floor) = seen.floor(plan, height) {
                floors.push(floor);
            }
        }
    }
    let lip = lip(seen, [a, b]);
    let starts_out = starts.iter().any(|start| *start > NOTHING_MM);
    if floors.is_empty() && !starts_out {
        return None;
    }
    let lowest = floors
        .iter()
        .map(|floor| floor.map_or(f64::MIN, |[_, high]| high));
    let lowest = lowest.fold(f64::MAX, f64::min);
    let foot_mm = [0, 1].map(|end| {
        let (top, foot) = (at(end)[2] * seen.way, at(end)[2] * seen.way - falls[end]);
        match starts_out {
            true => foot.max(lip),
            false => foot.max(lip).max(lowest - NOTHING_MM).min(top),
        }
    });
    let under = floors.iter().flatten().map(|[low, _]| *low);
    Some(Skirt {
        crest: *crest,
        starts_mm: starts,
        foot_mm,
        falls_mm: [0, 1].map(|end| at(end)[2] * seen.way - foot_mm[end]),
        under_mm: under.fold(f64::MIN, f64::max),
    })
}

/// Height at which the metal behind a crest ends over sand, as at the lip of a groove: the skirt
/// ends there, or it would hang before the groove like a curtain. Where the metal goes on behind a
/// part of the crest, the lowest.
fn lip(seen: Upright<'_>, [a, b]: [Vector; 2]) -> f64 {
    let length = (b[0] - a[0]).hypot(b[1] - a[1]).max(f64::MIN_POSITIVE);
    let [x, y] = [b[0] - a[0], b[1] - a[1]].map(|along| along / length * BEHIND_MM);
    // The metal lies on the right of a crest seen from above where it draws up.
    let back = [y * seen.way, -x * seen.way];
    let ends = ALONG.map(|share| {
        let at = [0, 1, 2].map(|axis| a[axis] + share * (b[axis] - a[axis]));
        let spans = seen.metal([at[0] + back[0], at[1] + back[1]]);
        let under = at[2] * seen.way - 2.0 * BEHIND_MM;
        let behind = spans
            .into_iter()
            .find(|[low, high]| *low < under && *high > under);
        behind.map_or(f64::MIN, |[low, _]| low)
    });
    ends.into_iter().fold(f64::MAX, f64::min)
}

/// How far behind a crest the metal is looked for, mm.
const BEHIND_MM: f64 = 0.05;
