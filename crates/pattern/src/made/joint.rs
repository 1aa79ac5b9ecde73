//! The joint of the mould as the pattern meets it: a level, or two blocks of sand that fit each
//! other wherever the joint wanders.

use std::f64::consts::TAU;

use crate::boolean::{Body, BooleanError};
use crate::draw::DrawSettings;
use crate::draw::blocks::blocks;
use crate::draw::joint::heights::Heights;
use crate::draw::joint::{FlaskBox, JointError, STEEPEST, joint};
use crate::mesh::Mesh;

/// The joint.
#[derive(Clone, Debug)]
pub enum Joint {
    /// Flat, at a level along z, mm.
    Flat(f64),
    /// Two closed blocks that fill the flask and meet along the joint.
    Blocks {
        /// Its height over the flask.
        heights: Heights,
        /// The drag, below.
        below: Mesh,
        /// The cope, above.
        above: Mesh,
    },
}

impl Joint {
    /// The joint that follows the parting line of a pattern out to the walls of a flask, wherever
    /// that leads.
    ///
    /// # Errors
    ///
    /// No joint within the slope that sand holds, or a pattern that reaches out of the flask.
    pub fn along_the_line(pattern: &Mesh, flask: FlaskBox) -> Result<Joint, JointError> {
        let settings = DrawSettings::suiting(pattern);
        let found = joint(pattern, [0.0, 0.0, 1.0], flask, STEEPEST, &settings)?;
        let [below, above] = blocks(&found);
        let heights = found.heights;
        Ok(Joint::Blocks {
            heights,
            below,
            above,
        })
    }

    /// Height of the joint over a place of the plan, mm; beyond its blocks the highest.
    pub fn heights(&self) -> impl Fn([f64; 2]) -> f64 + Sync + '_ {
        let surface = self.surface();
        let beyond = match self {
            Joint::Flat(level_mm) => *level_mm,
            Joint::Blocks { below, .. } => below.bounds()[1][2],
        };
        move |at| surface.height_mm(at).unwrap_or(beyond)
    }

    /// What of a body lies below the joint, and what above.
    ///
    /// # Errors
    ///
    /// What the library that cuts says.
    pub fn parted(&self, body: &Body) -> Result<[Body; 2], BooleanError> {
        match self {
            Joint::Flat(level_mm) => {
                let [above, below] = body.cut_by_plane([0.0, 0.0, 1.0], *level_mm)?;
                Ok([below, above])
            }
            Joint::Blocks { below, above, .. } => Ok([
                body.common_with(&Body::of(below)?)?,
                body.common_with(&Body::of(above)?)?,
            ]),
        }
    }

    /// The joint as heights over the plan.
    pub(super) fn surface(&self) -> Surface<'_> {
        match self {
            Joint::Flat(level_mm) => Surface::Flat(*level_mm),
            Joint::Blocks { heights, .. } => Surface::Over(heights),
        }
    }
}

/// Heights of the joint.
pub(super) enum Surface<'a> {
    /// The same everywhere.
    Flat(f64),
    /// Where it wanders.
    Over(&'a Heights),
}

impl Surface<'_> {
    /// Height of the joint over a place of the plan, if it reaches there.
    pub(super) fn height_mm(&self, at: [f64; 2]) -> Option<f64> {
        match self {
            Surface::Flat(level_mm) => Some(*level_mm),
            Surface::Over(heights) => heights.reach_over(at).then(|| heights.at_mm(at)),
        }
    }

    /// The same, if the joint stays about level as far as a hole there reaches sideways: beside a
    /// step the hole would open into it.
    pub(super) fn level_around(&self, [x, y]: [f64; 2], reach_mm: f64) -> Option<f64> {
        let own = self.height_mm([x, y])?;
        let is_near = |step: usize| {
            let (sin, cos) = (TAU * step as f64 / AROUND as f64).sin_cos();
            let height = self.height_mm([x + reach_mm * cos, y + reach_mm * sin]);
            height.is_some_and(|height| (height - own).abs() <= reach_mm / 2.0)
        };
        (matches!(self, Surface::Flat(_)) || (0..AROUND).all(is_near)).then_some(own)
    }
}

/// Places looked at around a hole.
const AROUND: usize = 8;
