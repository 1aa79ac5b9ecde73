//! A way of drawing a part, and what speaks against it.

use crate::vector::{Vector, dot};

/// One way of drawing a part.
#[derive(Clone, Debug, PartialEq)]
pub struct Way {
    /// The way the cope is lifted, of length one, in the part's axes.
    pub up: Vector,
    /// Surface that draws neither way, mm².
    pub undercut_mm2: f64,
    /// Sand that is held, mm³.
    pub trapped_mm3: f64,
    /// How far the part reaches above and below the level of the joint, mm.
    pub cope_mm: f64,
    /// The same below.
    pub drag_mm: f64,
    /// Height of the level of the joint along `up`, mm from the part's origin.
    pub level_mm: f64,
    /// How far the joint must wander from its level, lowest to highest, mm.
    pub wanders_mm: f64,
    /// Shadow on the joint, mm²: what the metal lifts on, and what the flask has to hold.
    pub shadow_mm2: f64,
    /// How squarely the face that is to be clean looks down into the drag: 1 straight down, −1
    /// straight up. None if no face was named.
    pub clean_down: Option<f64>,
    /// What speaks against it, in sum: the lower the better.
    pub cost: f64,
}

/// Sizes of the part against which a way is weighed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Yardstick {
    /// Its surface, mm².
    pub area_mm2: f64,
    /// Its volume, mm³.
    pub volume_mm3: f64,
    /// The diagonal of its box, mm.
    pub size_mm: f64,
}

/// What each thing weighs, each as a share of the part. Judgement, no source.
///
/// An undercut weighs most: each costs a core box or a loose piece, and a way without any is to be
/// found before one that is only shallow; at 2 a deep easy draw would lose against a flat one with
/// a core. A joint that wanders costs an oddside or a false cope, less than a core but more than
/// depth. Depth costs draught and lifts in rapping. The flask's height costs sand and head, and is
/// the same for both ends up, so that it only parts lines. The side that is up is settled by the
/// clean face, and without one by metal lying in the drag, where it lifts less.
const UNDERCUT_AREA: f64 = 10.0;
const UNDERCUT_VOLUME: f64 = 5.0;
const WANDERING: f64 = 3.0;
const DEPTH: f64 = 1.0;
const FLASK: f64 = 0.5;
const SHADOW: f64 = 0.2;
const CLEAN: f64 = 0.6;
const COPE: f64 = 0.1;

/// An undercut at all costs this much besides its size: something has to be made for it.
const ANY_UNDERCUT: f64 = 0.3;

/// What speaks against a way, in sum.
pub fn cost(way: &Way, of: &Yardstick) -> f64 {
    let undercut = match way.undercut_mm2 > 0.0 || way.trapped_mm3 > 0.0 {
        true => {
            ANY_UNDERCUT
                + UNDERCUT_AREA * way.undercut_mm2 / of.area_mm2
                + UNDERCUT_VOLUME * way.trapped_mm3 / of.volume_mm3
        }
        false => 0.0,
    };
    let depth_mm = way.cope_mm.max(way.drag_mm);
    let flask_mm = way.cope_mm + way.drag_mm;
    let clean = way.clean_down.map_or(0.0, |down| (1.0 - down) / 2.0);
    undercut
        + WANDERING * way.wanders_mm / of.size_mm
        + DEPTH * depth_mm / of.size_mm
        + FLASK * flask_mm / of.size_mm
        + SHADOW * way.shadow_mm2 / (of.size_mm * of.size_mm)
        + CLEAN * clean
        + COPE * way.cope_mm / of.size_mm
}

/// How squarely a face that looks along `face` looks down when the cope is lifted along `up`.
pub fn looks_down(face: Vector, up: Vector) -> Option<f64> {
    let length = dot(face, face).sqrt();
    (length > 0.0 && length.is_finite()).then(|| -dot(face, up) / length)
}
