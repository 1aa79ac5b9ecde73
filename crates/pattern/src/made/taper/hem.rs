//! The solids of skirts.

use std::collections::BTreeMap;

use super::skirt::Skirt;
use crate::mesh::Mesh;
use crate::vector::Vector;

/// How far a skirt reaches back into the wall that it hangs on, mm, so that no gap is left behind
/// it where the wall is a little hollow; a wall thinner than this would be reached through.
const BACK_MM: f64 = 0.05;

/// How far below its crest a skirt begins to reach back, and how far over its foot it ends to do
/// so, mm: the metal may fall off behind an edge, and faces that lie in one another leave needles.
const UNDER_MM: f64 = 0.1;

/// How much further back it reaches at its foot, as a share of its height: as much as a wall may
/// hang over.
const LEAN: f64 = 0.009;

/// Corners of the cut across a skirt.
const CORNERS: usize = 7;

/// The skirts of a part as closed shells. Those beside each other that end alike share the corners
/// there, and no wall stands between them.
#[derive(Default)]
pub(super) struct Hems {
    mesh: Mesh,
    corners: BTreeMap<(u32, bool, [u64; 2], usize), u32>,
    /// Ends not yet met by that of a neighbour: how many look one way less those that look back.
    ends: BTreeMap<([u32; CORNERS], bool), i32>,
}

impl Hems {
    /// The shells of skirts that hang on a mesh.
    pub(super) fn of<'a>(mesh: &Mesh, skirts: impl Iterator<Item = &'a Skirt>) -> Mesh {
        let mut hems = Hems::default();
        skirts.for_each(|skirt| hems.add(mesh, skirt));
        for ((end, is_up), count) in std::mem::take(&mut hems.ends) {
            for _ in 0..count.unsigned_abs() {
                hems.close(end, is_up == (count > 0));
            }
        }
        hems.mesh
    }

    fn add(&mut self, mesh: &Mesh, skirt: &Skirt) {
        let is_up = skirt.crest.way > 0.0;
        // Ends in the order of the facet as it is seen with the way of draw up.
        let order = if is_up { [0, 1] } else { [1, 0] };
        let [mut near, mut far] = order.map(|end| outline(mesh, skirt, end));
        let is_own = close_apex(&mut near, &mut far);
        let near = self.placed(skirt, order[0], near, is_own);
        let far = self.placed(skirt, order[1], far, is_own);
        for i in 0..CORNERS {
            let next = (i + 1) % CORNERS;
            self.facet([near[i], far[next], near[next]], is_up);
            self.facet([near[i], far[i], far[next]], is_up);
        }
        *self.ends.entry((near, is_up)).or_default() += 1;
        *self.ends.entry((far, is_up)).or_default() -= 1;
    }

    /// Numbers of the corners of one end. Those of a skirt that closes to a point are its own.
    fn placed(
        &mut self,
        skirt: &Skirt,
        end: usize,
        outline: [Vector; CORNERS],
        is_own: bool,
    ) -> [u32; CORNERS] {
        let way = skirt.crest.way;
        let alike = [skirt.foot_mm[end].to_bits(), skirt.starts_mm[end].to_bits()];
        let mut numbers = [0; CORNERS];
        for (corner, &[x, y, height]) in outline.iter().enumerate() {
            let next = self.mesh.points.len() as u32;
            let key = (skirt.crest.ends[end], way > 0.0, alike, corner);
            let number = match is_own {
                true => next,
                false => *self.corners.entry(key).or_insert(next),
            };
            if number == next {
                self.mesh.points.push([x, y, height * way]);
            }
            numbers[corner] = number;
        }
        numbers
    }

    fn close(&mut self, end: [u32; CORNERS], is_near: bool) {
        for i in 1..CORNERS - 1 {
            self.facet([end[0], end[i], end[i + 1]], is_near);
        }
    }

    fn facet(&mut self, [a, b, c]: [u32; 3], is_upright: bool) {
        self.mesh.triangles.push(match is_upright {
            true => [a, c, b],
            false => [a, b, c],
        });
    }
}

/// Corners of the cut across one end: the crest, back and down behind the wall, out along the
/// foot, up to where it begins. Heights count along the way of draw.
fn outline(mesh: &Mesh, skirt: &Skirt, end: usize) -> [Vector; CORNERS] {
    let crest = &skirt.crest;
    let [x, y, z] = mesh.points[crest.ends[end] as usize];
    let (top, foot) = (z * crest.way, skirt.foot_mm[end]);
    let (mitre, rate) = (crest.mitres[end], crest.rates[end]);
    let fall = top - foot;
    let at = |start: f64, fall: f64, height: f64| {
        let out = |axis: usize| start * mitre[axis] + fall * rate[axis];
        [x + out(0), y + out(1), height]
    };
    let under = UNDER_MM.min(fall / 4.0);
    let start = skirt.starts_mm[end];
    [
        [x, y, top],
        at(-BACK_MM, 0.0, top - under),
        at(-BACK_MM - LEAN * fall, 0.0, foot + under),
        [x, y, foot],
        at(start, fall, foot),
        at(start, fall, foot),
        at(start, 0.0, top),
    ]
}

/// In a hollow too narrow for it the outer face closes to a point above the foot; below that point
/// all is filled. Whether that is so.
fn close_apex(near: &mut [Vector; CORNERS], far: &mut [Vector; CORNERS]) -> bool {
    let span = |i: usize| [0, 1].map(|axis| far[i][axis] - near[i][axis]);
    let [x, y] = span(0);
    let length = |i: usize| span(i)[0] * x + span(i)[1] * y;
    let (top, foot) = (length(6), length(4));
    if foot > 0.0 || top <= 0.0 {
        return false;
    }
    let share = top / (top - foot);
    let meets = |side: &[Vector; CORNERS]| {
        [0, 1, 2].map(|axis| side[6][axis] + share * (side[4][axis] - side[6][axis]))
    };
    let (a, b) = (meets(near), meets(far));
    let apex: Vector = [0, 1, 2].map(|axis| (a[axis] + b[axis]) / 2.0);
    for side in [near, far] {
        side[4] = [apex[0], apex[1], side[4][2]];
        side[5] = apex;
    }
    true
}
