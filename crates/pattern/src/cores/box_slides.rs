//! Slides of a core box: pieces that are drawn out level before its halves are lifted.
//!
//! What of a half lies between the core and the way it is lifted would be caught. Each such piece
//! is drawn out through the wall of the box instead, together with all of the wall that lies on
//! its way; a ring around the core is cut in two for that. Whether a piece comes out is not taken
//! from rules: along the ways on which the core is not seen before it, the room that it passes
//! through is built and laid against the core.

use std::f64::consts::PI;

use super::CoreError;
use crate::boolean::{Body, BooleanError};
use crate::made::joint::Joint;
use crate::mesh::Mesh;
use crate::rays::first_met;
use crate::sweep::{crossing, skin, solid, swept};
use crate::tree::Tree;
use crate::vector::{Vector, add, bounds_of, dot, norm, scale};

/// A slide of a box.
#[derive(Clone, Debug)]
pub struct Slide {
    /// Its skin, closed and wound outward, mm.
    pub mesh: Mesh,
    /// The way in which it is drawn out, of length one.
    pub way: Vector,
    /// What it holds, mm³.
    pub volume_mm3: f64,
}

/// A box about to be cut into halves and slides, standing in the draw.
pub(super) struct Uncut<'a> {
    /// The core.
    pub(super) core: &'a Mesh,
    /// The block without the room of the core, and without holes.
    pub(super) block: &'a Body,
    /// The rods through both halves, which no slide may cross.
    pub(super) rods: &'a [Body],
    /// Where the halves part.
    pub(super) joint: &'a Joint,
    /// Room that may stay caught, mm³.
    pub(super) most_mm3: f64,
}

/// Level ways tried for a slide: every 22.5°, the sides of the box first.
const WAYS: usize = 16;

/// Share of a slide that may pass through the core: the rounding of curved walls by their facets.
const GRAZED: f64 = 0.005;

/// How far within its skin the places of a piece lie that are looked from along a way, mm, and the
/// share of the skin that may have the core before it: where the two touch, rounding shows some.
/// The room that a piece passes through takes a thousand times as long to build.
const WITHIN_MM: f64 = 0.1;
const BEFORE: f64 = 0.02;

/// Most slides of a box: a founder holds no more together while ramming (judgement; each pair of
/// sides of the box has room for two).
const MOST: usize = 6;

/// Most facets of the room through which the box leaves the core that may pass through others of
/// it. A ball with knobs on three arms has two hundred; the core of a truss with six thousand takes
/// twenty seconds for each half.
const MOST_CROSSING: usize = 1_000;

/// What came of looking for slides.
pub(super) enum Sought {
    /// They free the halves.
    Found(Box<Freed>),
    /// There are none.
    None,
    /// The core is too finely cut for its slides to be looked for.
    TooFine,
}

/// A box whose halves are free once its slides are out.
pub(super) struct Freed {
    /// Lower and upper half.
    pub(super) halves: [Body; 2],
    /// The slides, in the order in which they are drawn.
    pub(super) slides: Vec<Slide>,
}

impl Uncut<'_> {
    /// The halves and the slides that free them.
    ///
    /// # Errors
    ///
    /// Solids that cannot be cut.
    pub(super) fn freed(&self) -> Result<Sought, CoreError> {
        let [low, high] = self.core.bounds();
        let far = high[2] - low[2];
        let skins = [far, -far].map(|by| skin(self.core, [0.0, 0.0, by]));
        if skins.iter().any(|skin| crossing(skin) > MOST_CROSSING) {
            return Ok(Sought::TooFine);
        }
        let mut halves = self.joint.parted(self.block)?;
        let core = Body::of(self.core)?;
        let tree = Tree::over(self.core);
        let mut slides = Vec::new();
        for held in self.held(&halves, skins)? {
            let Some(found) = self.drawn(&held, &core, &tree, &halves)? else {
                return Ok(Sought::None);
            };
            for (way, piece) in found {
                // What an earlier slide has taken along is no longer there.
                let piece = piece.common_with(&halves[0].with(&halves[1])?)?;
                halves = [halves[0].without(&piece)?, halves[1].without(&piece)?];
                slides.push(Slide {
                    mesh: piece.mesh(),
                    way,
                    volume_mm3: piece.volume_mm3(),
                });
            }
            if slides.len() > MOST {
                return Ok(Sought::None);
            }
        }
        Ok(Sought::Found(Box::new(Freed { halves, slides })))
    }

    /// The pieces of the halves that would be caught, the largest first, from the skins of the room
    /// over the core and of that under it.
    fn held(
        &self,
        halves: &[Body; 2],
        [over, under]: [Mesh; 2],
    ) -> Result<Vec<Body>, BooleanError> {
        let lower = halves[0].common_with(&solid(over)?)?;
        let upper = halves[1].common_with(&solid(under)?)?;
        let mut parts = lower.with(&upper)?.parts()?;
        parts.sort_by(|a, b| b.volume_mm3().total_cmp(&a.volume_mm3()));
        let mut spare_mm3 = self.most_mm3;
        while let Some(last) = parts.last().filter(|part| part.volume_mm3() <= spare_mm3) {
            spare_mm3 -= last.volume_mm3();
            parts.pop();
        }
        Ok(parts)
    }

    /// A piece drawn out whole, or cut upright into two that are.
    fn drawn(
        &self,
        piece: &Body,
        core: &Body,
        tree: &Tree,
        halves: &[Body; 2],
    ) -> Result<Option<Vec<(Vector, Body)>>, BooleanError> {
        let is_clear = |piece: &Body, way: Vector| is_clear(&piece.mesh(), way, self.core, tree);
        for way in ways().filter(|&way| is_clear(piece, way)) {
            if let Some(slide) = self.out(piece, way, core, halves)? {
                return Ok(Some(vec![(way, slide)]));
            }
        }
        let [low, high] = piece.mesh().bounds();
        let middle = [0, 1].map(|axis| (low[axis] + high[axis]) / 2.0);
        for way in ways().take(WAYS / 2) {
            let at_mm = way[0] * middle[0] + way[1] * middle[1];
            let [over, under] = piece.cut_by_plane(way, at_mm)?;
            let back = scale(way, -1.0);
            if !is_clear(&over, way) || !is_clear(&under, back) {
                continue;
            }
            let Some(first) = self.out(&over, way, core, halves)? else {
                continue;
            };
            if let Some(second) = self.out(&under, back, core, halves)? {
                return Ok(Some(vec![(way, first), (back, second)]));
            }
        }
        Ok(None)
    }

    /// The slide that takes a piece out along a way, if nothing stands in it and each half stays in
    /// one piece.
    fn out(
        &self,
        piece: &Body,
        way: Vector,
        core: &Body,
        halves: &[Body; 2],
    ) -> Result<Option<Body>, BooleanError> {
        let mesh = piece.mesh();
        let grazed = GRAZED * piece.volume_mm3();
        let room = swept(&mesh, scale(way, self.across_mm()))?;
        if room.common_with(core)?.volume_mm3() > grazed {
            return Ok(None);
        }
        for rod in self.rods {
            if room.common_with(rod)?.volume_mm3() > 0.0 {
                return Ok(None);
            }
        }
        let slide = self.block.common_with(&room)?;
        for half in halves {
            let parts = half.without(&slide)?.parts()?;
            let whole = parts.iter().filter(|part| part.volume_mm3() > grazed);
            if whole.count() != 1 {
                return Ok(None);
            }
        }
        Ok(Some(slide))
    }

    /// Farther than any slide has to go to be out of the box.
    fn across_mm(&self) -> f64 {
        self.block.mesh().diagonal()
    }
}

/// A small room of a box that would be caught.
pub(super) struct Room {
    /// Its middle.
    pub(super) place_mm: Vector,
    /// What it holds, mm³.
    pub(super) volume_mm3: f64,
}

/// Whether rooms that hang together could be slides: all of them but a few see one level way past
/// the core, or those on either side of an upright cut see opposite ones.
pub(super) fn could_leave(rooms: &[Room], core: &Mesh, tree: &Tree) -> bool {
    let is_clear = |way: Vector, is_in: &dyn Fn(&Room) -> bool| {
        let all = || rooms.iter().filter(|room| is_in(room));
        let mut spare = BEFORE * all().map(|room| room.volume_mm3).sum::<f64>();
        all().all(|room| {
            if first_met(core, tree, room.place_mm, way).is_some() {
                spare -= room.volume_mm3;
            }
            spare >= 0.0
        })
    };
    if ways().any(|way| is_clear(way, &|_| true)) {
        return true;
    }
    let Some([low, high]) = bounds_of(rooms.iter().map(|room| room.place_mm)) else {
        return true;
    };
    let middle = [0, 1, 2].map(|axis| (low[axis] + high[axis]) / 2.0);
    ways().take(WAYS / 2).any(|way| {
        let over = |room: &Room| dot(room.place_mm, way) > dot(middle, way);
        is_clear(way, &over) && is_clear(scale(way, -1.0), &|room| !over(room))
    })
}

/// Level ways, the sides of the box first; the second half of them backwards.
fn ways() -> impl Iterator<Item = Vector> {
    let square = WAYS / 4;
    let turn = move |step: usize| {
        let (sine, cosine) = (2.0 * PI * step as f64 / WAYS as f64).sin_cos();
        [cosine, sine, 0.0]
    };
    let half = (0..WAYS / 2).filter(move |step| step % square == 0);
    let half = half.chain((0..WAYS / 2).filter(move |step| step % square != 0));
    let half: Vec<usize> = half.collect();
    let back: Vec<usize> = half.iter().map(|step| step + WAYS / 2).collect();
    half.into_iter().chain(back).map(turn)
}

/// Whether hardly anything of a piece has the core before it along a way.
fn is_clear(piece: &Mesh, way: Vector, core: &Mesh, tree: &Tree) -> bool {
    let (mut all, mut before) = (0.0, 0.0);
    for facet in 0..piece.triangles.len() {
        let normal = piece.normal(facet);
        let twice = norm(normal);
        if twice == 0.0 {
            continue;
        }
        let [a, b, c] = piece.corners(facet);
        let middle = scale(add(add(a, b), c), 1.0 / 3.0);
        let within = add(middle, scale(normal, -WITHIN_MM / twice));
        all += twice;
        if first_met(core, tree, within, way).is_some() {
            before += twice;
        }
    }
    before <= BEFORE * all
}
