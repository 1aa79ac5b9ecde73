//! Loose pieces: parts of the pattern that stay in the sand when it is drawn, and are then drawn
//! sideways into the hollow that it left.
//!
//! Sand that is held lies on a ledge of the pattern, which would lift it. The metal straight
//! behind that ledge is cut off along the walls of the sand: the body then draws straight, and
//! nothing of it lies in the way of the piece. The piece is moved back the way it stands out,
//! by as much as it stands out, and lifted through the hollow. Whether it can be is not taken from
//! rules: the room it passes through is built and laid against the sand.

use std::f64::consts::TAU;

use thiserror::Error;

use super::halves::{PinWish, Pins};
use super::joint::Joint;
use super::ledge::{Side, behind_ledge, level, reach};
use super::loose_pins::pinned;
use crate::boolean::{Body, BooleanError};
use crate::draw::DrawSettings;
use crate::draw::remedy::Remedy;
use crate::draw::undercut::Trapped;
use crate::mesh::Mesh;
use crate::shape::ShapeError;
use crate::sweep::swept;
use crate::tree::Tree;
use crate::vector::{Vector, scale};

/// A pattern with the pieces that are loose.
#[derive(Clone, Debug)]
pub struct Loosened {
    /// What is drawn first.
    pub body: Mesh,
    /// The same without the holes of loose pins: while it is rammed they are filled, and hold no
    /// sand.
    pub undrilled: Mesh,
    /// The pieces that stay, in the order in which they can be drawn.
    pub pieces: Vec<LoosePiece>,
    /// Hollows that a loose piece was advised for and that none frees.
    pub stuck: Vec<Stuck>,
}

/// A loose piece.
#[derive(Clone, Debug)]
pub struct LoosePiece {
    /// Its skin as it sits on the pattern, mm.
    pub mesh: Mesh,
    /// In which half of the mould it stays.
    pub side: Side,
    /// The level way, of length one, in which it is moved once the body is out.
    pub inward: Vector,
    /// How far, mm; then it is lifted out straight.
    pub move_mm: f64,
    /// Sand that it shaves off on its way, mm³.
    pub shaved_mm3: f64,
    /// The loose pins through it into the body, where they were wanted and found room.
    pub pins: Option<Pins>,
}

/// A hollow that no loose piece frees.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stuck {
    /// Its middle, mm.
    pub centre_mm: Vector,
    /// Its sand, mm³.
    pub volume_mm3: f64,
    /// Sand that the piece would lie in at some place of its way, mm³.
    pub in_the_way_mm3: f64,
}

/// Why no pattern with loose pieces was made.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum LooseError {
    /// A pin hole could not be made.
    #[error("pin hole of a loose piece: {0}")]
    Shape(#[from] ShapeError),
    /// The solids could not be cut.
    #[error("loose pieces cannot be cut off: {0}")]
    Join(#[from] BooleanError),
}

/// The pattern, closed, outward wound and in mm, with loose pieces for those `hollows` for which
/// they are advised; the hollows are those of the same mesh drawn along z. Where the sand stands
/// in the way of a piece the pattern is left whole there, and that is told.
///
/// # Errors
///
/// What the library that cuts says.
pub fn loosened(
    pattern: &Mesh,
    joint: &Joint,
    hollows: &[Trapped],
    pins: Option<&PinWish>,
) -> Result<Loosened, LooseError> {
    let tree = Tree::over(pattern);
    let mut made = Loosened {
        body: pattern.clone(),
        undrilled: pattern.clone(),
        pieces: Vec::new(),
        stuck: Vec::new(),
    };
    let mould = Mould::of(pattern, joint)?;
    let mut body = Body::of(pattern)?;
    for hollow in in_order(hollows) {
        let Some(outward) = hollow.advice.opening.and_then(level) else {
            continue;
        };
        let mut left = body.clone();
        let mut found = Ok(Vec::new());
        for side in [Side::Drag, Side::Cope] {
            let behind = behind_ledge(pattern, &tree, joint, hollow, outward, side)?;
            let (Some(behind), Ok(pieces)) = (behind, &mut found) else {
                continue;
            };
            let (rest, ledges) = cut_off(&left, &behind)?;
            match mould.drawn(ledges, outward, side)? {
                Ok(drawn) => pieces.extend(drawn),
                Err(in_the_way_mm3) => found = Err(in_the_way_mm3),
            }
            left = rest;
        }
        match found {
            Ok(pieces) => {
                made.pieces.extend(pieces);
                body = left;
            }
            Err(in_the_way_mm3) => made.stuck.push(Stuck {
                centre_mm: hollow.centre_mm,
                volume_mm3: hollow.volume_mm3,
                in_the_way_mm3,
            }),
        }
    }
    made.undrilled = body.mesh();
    if let Some(wish) = pins {
        for piece in &mut made.pieces {
            body = pinned(piece, &body, wish)?;
        }
    }
    made.body = body.mesh();
    Ok(made)
}

/// Hollows smaller than this share of the largest are not worth a piece of their own: a scraper
/// mends what they tear.
const WORTH_A_PIECE: f64 = 0.01;

/// The hollows for which a piece is advised, the lowest first: the metal under a higher one may
/// then be the piece of a lower one already.
fn in_order(hollows: &[Trapped]) -> Vec<&Trapped> {
    let advised = |hollow: &&Trapped| hollow.advice.remedy == Remedy::LoosePiece;
    let volumes = hollows.iter().map(|hollow| hollow.volume_mm3);
    let worth = WORTH_A_PIECE * volumes.fold(0.0, f64::max);
    let mut hollows: Vec<&Trapped> = hollows.iter().filter(advised).collect();
    hollows.retain(|hollow| hollow.volume_mm3 >= worth);
    hollows.sort_by(|a, b| a.centre_mm[2].total_cmp(&b.centre_mm[2]));
    hollows
}

/// Pieces smaller than this share of what is cut off are shavings of the cut.
const SHAVING: f64 = 1e-4;

/// What is left of a body, in one piece where it was one, and what was cut off.
fn cut_off(body: &Body, behind: &Body) -> Result<(Body, Vec<Body>), BooleanError> {
    let off = body.common_with(behind)?;
    let rest = body.without(behind)?;
    let worth = SHAVING * off.volume_mm3();
    let mut ledges: Vec<Body> = off.parts()?;
    ledges.retain(|ledge| ledge.volume_mm3() > worth);
    // What hung on the ledge alone goes with it.
    let mut parts = rest.parts()?;
    parts.sort_by(|a, b| b.volume_mm3().total_cmp(&a.volume_mm3()));
    let held = body.parts()?.len();
    if parts.len() <= held {
        return Ok((rest, ledges));
    }
    let (kept, hanging) = parts.split_at(held);
    for part in hanging {
        for ledge in &mut ledges {
            let both = ledge.with(part)?;
            if both.parts()?.len() == 1 {
                *ledge = both;
                break;
            }
        }
    }
    Ok((Body::of_parts(kept)?, ledges))
}

/// The sand on both sides of the joint, and the room of the pattern in it.
struct Mould {
    /// The pattern knocked aside by the play of its rapping, each way: no sand stays there.
    rapped: Vec<Body>,
    /// The sand below the joint and that above, as far as a piece may get.
    sand: [Body; 2],
    /// More than a piece has to be lifted, mm.
    height_mm: f64,
}

/// Sand that a piece meets on its way.
struct Met {
    /// All of it, mm³.
    shaved_mm3: f64,
    /// What stands there still once the pattern has been rapped, mm³; where that is little
    /// enough, no more than this.
    left_mm3: f64,
    /// Whether too much stands in its way before it is lifted: moved farther, it meets more.
    is_sideways: bool,
}

/// Ways that are tried for a piece, as multiples of how far it stands out: once is enough where the
/// wall behind it is straight, more where it bulges.
const MOVES: [f64; 3] = [1.0, 1.25, 1.6];

/// Share of a piece that it may shave off the sand on its way beyond what rapping knocks away: the
/// rounding of curved walls by their facets.
const SHAVED: f64 = 0.005;

/// Places of its way, as shares, at which a piece is laid against the sand first.
const STAGES: [f64; 4] = [0.25, 0.5, 0.75, 1.0];

/// Share of a piece that lies in sand at one of these places where the way is not looked at more
/// closely: the whole of it then cuts yet more.
const PLAINLY_STUCK: f64 = 0.1;

/// Directions in which the pattern is rapped.
const RAPPED: usize = 8;

impl Mould {
    fn of(pattern: &Mesh, joint: &Joint) -> Result<Mould, BooleanError> {
        let [low, high] = pattern.bounds();
        let wide = pattern.diagonal();
        let [low, high] = [low.map(|at| at - wide), high.map(|at| at + wide)];
        let corner = |i: u8| [0, 1, 2].map(|axis| [low, high][usize::from(i >> axis & 1)][axis]);
        let corners: Vec<Vector> = (0..8).map(corner).collect();
        let play_mm = DrawSettings::suiting(pattern).play_mm;
        let rapped = (0..RAPPED).map(|turn| {
            let (sine, cosine) = (TAU * turn as f64 / RAPPED as f64).sin_cos();
            Body::of(&pattern.moved([play_mm * cosine, play_mm * sine, 0.0]))
        });
        let body = Body::of(pattern)?;
        let [below, above] = joint.parted(&Body::around(&corners)?)?;
        Ok(Mould {
            rapped: rapped.collect::<Result<_, _>>()?,
            sand: [below.without(&body)?, above.without(&body)?],
            height_mm: high[2] - low[2],
        })
    }

    /// The ledges as loose pieces; or the sand that one of them would lie in, mm³.
    fn drawn(
        &self,
        ledges: Vec<Body>,
        outward: Vector,
        side: Side,
    ) -> Result<Result<Vec<LoosePiece>, f64>, BooleanError> {
        let inward = scale(outward, -1.0);
        let mut pieces = Vec::with_capacity(ledges.len());
        for ledge in ledges {
            let mesh = ledge.mesh();
            let [from, to] = reach(&mesh, outward);
            let volume_mm3 = ledge.volume_mm3();
            let mut in_the_way_mm3 = None;
            let mut found = None;
            for move_mm in MOVES.map(|times| times * (to - from)) {
                let met = self.met(&mesh, volume_mm3, scale(inward, move_mm), side)?;
                if met.left_mm3 <= SHAVED * volume_mm3 {
                    found = Some((move_mm, met.shaved_mm3));
                    break;
                }
                in_the_way_mm3.get_or_insert(met.left_mm3);
                if met.is_sideways {
                    break;
                }
            }
            let Some((move_mm, shaved_mm3)) = found else {
                return Ok(Err(in_the_way_mm3.unwrap_or_default()));
            };
            pieces.push(LoosePiece {
                mesh,
                side,
                inward,
                move_mm,
                shaved_mm3,
                pins: None,
            });
        }
        Ok(Ok(pieces))
    }

    /// Sand in the way of a piece that is moved sideways and then lifted out of its half.
    fn met(
        &self,
        piece: &Mesh,
        volume_mm3: f64,
        by: Vector,
        side: Side,
    ) -> Result<Met, BooleanError> {
        let out = [0.0, 0.0, side.up() * self.height_mm];
        let sand = &self.sand[usize::from(side == Side::Cope)];
        let mut most_mm3 = 0.0_f64;
        for stage in STAGES {
            let there = Body::of(&piece.moved(scale(by, stage)))?;
            most_mm3 = most_mm3.max(there.common_with(sand)?.volume_mm3());
        }
        if most_mm3 > PLAINLY_STUCK * volume_mm3 {
            return Ok(Met {
                shaved_mm3: most_mm3,
                left_mm3: most_mm3,
                is_sideways: false,
            });
        }
        let spared_mm3 = SHAVED * volume_mm3;
        let sideways = swept(piece, by)?.common_with(sand)?;
        let mut met = Met {
            shaved_mm3: sideways.volume_mm3(),
            left_mm3: self.left_by_rapping(sideways, spared_mm3)?,
            is_sideways: false,
        };
        met.is_sideways = met.left_mm3 > spared_mm3;
        if met.is_sideways {
            return Ok(met);
        }
        let lifted = swept(&piece.moved(by), out)?.common_with(sand)?;
        met.shaved_mm3 += lifted.volume_mm3();
        met.left_mm3 += self.left_by_rapping(lifted, spared_mm3 - met.left_mm3)?;
        Ok(met)
    }

    /// What of some sand stands still once the pattern has been rapped, mm³; how much less than
    /// `spared_mm3` it is, is not asked.
    fn left_by_rapping(&self, mut sand: Body, spared_mm3: f64) -> Result<f64, BooleanError> {
        for rapped in &self.rapped {
            if sand.volume_mm3() <= spared_mm3 {
                break;
            }
            sand = sand.without(rapped)?;
        }
        Ok(sand.volume_mm3())
    }
}
