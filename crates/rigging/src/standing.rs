//! A mould with all its pieces in their places, looked over: sand between them, what meets, what
//! must not, what hooks.

use pattern::boolean::Body;
use pattern::vector::Vector;

use crate::cut::{Cut, Draw};
use crate::error::MouldError;
use crate::face::Face;
use crate::fact::{Fact, Side};
use crate::feeder::Feeder;
use crate::gate::Gate;
use crate::given::Given;
use crate::lie::Lying;
use crate::piece::Piece;
use crate::runner::Runner;

/// A mould with everything in its place.
pub(crate) struct Standing<'a> {
    pub(crate) given: &'a Given,
    pub(crate) face: &'a Face,
    pub(crate) castings: &'a [Lying],
    /// Basin, sprue and well.
    pub(crate) downhill: &'a [Cut],
    pub(crate) runners: &'a [(Runner, Cut)],
    pub(crate) gates: &'a [(Gate, Cut)],
    pub(crate) feeders: &'a [Feeder],
}

/// Sand between pieces of rigging that must not touch, and between rigging and walls, mm: the
/// least that can be rammed at all.
const LEAST_SAND_MM: f64 = 10.0;

/// Sand is not rammed more truly than this, mm, so that less is not told as missing.
const TOO_FINE_MM: f64 = 0.5;

/// Volume below which two pieces only touch by rounding, mm³.
const NOTHING_MM3: f64 = 1e-3;

/// Everything noticed, in the order of the pieces.
pub(crate) fn facts(standing: &Standing<'_>) -> Result<Vec<Fact>, MouldError> {
    let mut facts = Vec::new();
    walls(standing, &mut facts);
    no_gates(standing, &mut facts);
    meeting(standing, &mut facts)?;
    apart(standing, &mut facts)?;
    sand_between(standing, &mut facts);
    for cut in standing.cuts() {
        let hooks = cut.hooks_at(standing.face);
        if let Some(place_mm) = hooks.or_else(|| off_level(standing, cut)) {
            let piece = cut.piece.clone();
            facts.push(Fact::Hooks { piece, place_mm });
        }
    }
    for (runner, cut) in standing.runners {
        // A millimetre is less than a runner is cut to.
        if runner.short_mm > 1.0 {
            let missing_mm = runner.short_mm;
            facts.push(Fact::ShortRunOff {
                piece: cut.piece.clone(),
                missing_mm,
            });
        }
    }
    for feeder in standing.feeders.iter().filter(|feeder| feeder.low_mm > 1.0) {
        let missing_mm = feeder.low_mm;
        facts.push(Fact::LowFeeder {
            piece: feeder.cut.piece.clone(),
            missing_mm,
        });
    }
    Ok(facts)
}

/// Where the joint leaves its level under a piece that is cut from a level joint.
fn off_level(standing: &Standing<'_>, cut: &Cut) -> Option<Vector> {
    let is_gate = matches!(cut.piece, Piece::Gate(_));
    let is_from_joint = cut.shapes.iter().any(|(_, draw)| *draw == Draw::FromJoint);
    if is_gate || !is_from_joint {
        return None;
    }
    let (spine, width_mm) = cut.covers.spine();
    standing.face.off_level(spine, width_mm)
}

impl<'a> Standing<'a> {
    fn cuts(&self) -> impl Iterator<Item = &'a Cut> {
        let feeders = self.feeders.iter().map(|feeder| &feeder.cut);
        let runners = self.runners.iter().map(|(_, cut)| cut);
        let gates = self.gates.iter().map(|(_, cut)| cut);
        self.downhill
            .iter()
            .chain(runners)
            .chain(gates)
            .chain(feeders)
    }
}

/// Sand to the walls, over and under every piece.
fn walls(standing: &Standing<'_>, facts: &mut Vec<Fact>) {
    let (flask, sand) = (&standing.given.flask, &standing.given.sand);
    let inside = [flask.length.as_mm(), flask.width.as_mm()];
    let mut note = |piece: &Piece, side, sand_mm: f64, wanted_mm: f64| {
        if sand_mm < wanted_mm - TOO_FINE_MM {
            facts.push(Fact::ThinWall {
                piece: piece.clone(),
                side,
                sand_mm,
                wanted_mm,
            });
        }
    };
    // Castings are alike: of each side the one with the least sand is told.
    let least = |gap: &dyn Fn(&Lying) -> f64| {
        let gaps = standing
            .castings
            .iter()
            .map(|lying| (gap(lying), lying.number));
        gaps.min_by(|(a, _), (b, _)| a.total_cmp(b))
    };
    let beside = |lying: &Lying| {
        let [low, high] = lying.bounds;
        let gaps = [0, 1].map(|axis| low[axis].min(inside[axis] - high[axis]));
        gaps[0].min(gaps[1])
    };
    let over = |lying: &Lying| flask.cope.as_mm() - lying.bounds[1][2];
    let under = |lying: &Lying| flask.drag.as_mm() + lying.bounds[0][2];
    for (gap, side, wanted) in [
        (least(&beside), Side::Wall, sand.to_wall),
        (least(&over), Side::Top, sand.above),
        (least(&under), Side::Bottom, sand.below),
    ] {
        if let Some((gap, number)) = gap {
            note(&Piece::Casting(number), side, gap, wanted.as_mm());
        }
    }
    for cut in standing.cuts() {
        let [low, high] = cut.covers.bounds();
        let gaps = [0, 1].map(|axis| low[axis].min(inside[axis] - high[axis]));
        note(&cut.piece, Side::Wall, gaps[0].min(gaps[1]), LEAST_SAND_MM);
        let under = flask.drag.as_mm() + cut.heights_mm[0];
        note(&cut.piece, Side::Bottom, under, LEAST_SAND_MM);
    }
    // A print may go up to the wall, but not through it.
    for core in standing.castings.iter().flat_map(|lying| &lying.cores) {
        let [low, high] = core.mesh.bounds();
        let gaps = [0, 1].map(|axis| low[axis].min(inside[axis] - high[axis]));
        note(&core.piece, Side::Wall, gaps[0].min(gaps[1]), 0.0);
    }
}

fn no_gates(standing: &Standing<'_>, facts: &mut Vec<Fact>) {
    for lying in standing.castings {
        let casting = lying.number;
        if !standing
            .gates
            .iter()
            .any(|(gate, _)| gate.casting == casting)
        {
            facts.push(Fact::NoGate { casting });
        }
    }
}

/// What metal runs through has to share metal: sprue with basin and well, well with a runner, each
/// gate with its casting and a runner, each feeder with its casting.
fn meeting(standing: &Standing<'_>, facts: &mut Vec<Fact>) -> Result<(), MouldError> {
    let mut note = |cut: &Cut, others: &[(Piece, &Body)]| -> Result<(), MouldError> {
        for (_, other) in others {
            if shared(cut, other)? > NOTHING_MM3 {
                return Ok(());
            }
        }
        if let Some((other, _)) = others.first() {
            let (piece, place_mm) = (cut.piece.clone(), cut.covers.middle());
            facts.push(Fact::Apart {
                piece,
                other: other.clone(),
                place_mm,
            });
        }
        Ok(())
    };
    let runners: Vec<(Piece, &Body)> = standing
        .runners
        .iter()
        .map(|(_, cut)| (cut.piece.clone(), &cut.body))
        .collect();
    let casting = |number: usize| -> Vec<(Piece, &Body)> {
        let own = standing
            .castings
            .iter()
            .filter(|lying| lying.number == number);
        own.map(|lying| (Piece::Casting(number), &lying.body))
            .collect()
    };
    if let [basin, sprue, well] = standing.downhill {
        note(sprue, &[(basin.piece.clone(), &basin.body)])?;
        note(sprue, &[(well.piece.clone(), &well.body)])?;
        note(well, &runners)?;
    }
    for (gate, cut) in standing.gates {
        note(cut, &runners)?;
        note(cut, &casting(gate.casting))?;
    }
    for feeder in standing.feeders {
        note(&feeder.cut, &casting(feeder.casting))?;
    }
    Ok(())
}

/// What must not share metal: castings with the rigging that is not theirs, feeders with all
/// rigging, sprue and basin with gates, and nothing of the rigging with a core.
fn apart(standing: &Standing<'_>, facts: &mut Vec<Fact>) -> Result<(), MouldError> {
    let mut note = |cut: &Cut, other: &Body, piece: Piece| -> Result<(), MouldError> {
        let shared_mm3 = shared(cut, other)?;
        if shared_mm3 > NOTHING_MM3 {
            facts.push(Fact::Touch {
                piece: cut.piece.clone(),
                other: piece,
                shared_mm3,
            });
        }
        Ok(())
    };
    for lying in standing.castings {
        let casting = Piece::Casting(lying.number);
        let gates = standing
            .gates
            .iter()
            .filter(|(gate, _)| gate.casting != lying.number);
        let feeders = standing
            .feeders
            .iter()
            .filter(|feeder| feeder.casting != lying.number);
        let strange = gates
            .map(|(_, cut)| cut)
            .chain(feeders.map(|feeder| &feeder.cut));
        let running = standing
            .downhill
            .iter()
            .chain(standing.runners.iter().map(|(_, cut)| cut));
        for cut in running.chain(strange) {
            note(cut, &lying.body, casting.clone())?;
        }
    }
    for (place, feeder) in standing.feeders.iter().enumerate() {
        let later = standing.feeders[place + 1..]
            .iter()
            .map(|feeder| &feeder.cut);
        let running = standing.downhill.iter();
        let runners = standing.runners.iter().map(|(_, cut)| cut);
        let gates = standing.gates.iter().map(|(_, cut)| cut);
        for other in running.chain(runners).chain(gates).chain(later) {
            note(&feeder.cut, &other.body, other.piece.clone())?;
        }
    }
    for core in standing.castings.iter().flat_map(|lying| &lying.cores) {
        for cut in standing.cuts() {
            note(cut, &core.body, core.piece.clone())?;
        }
    }
    Ok(())
}

/// Volume that a piece shares with another body, mm³.
fn shared(cut: &Cut, other: &Body) -> Result<f64, MouldError> {
    let wrong = |error| MouldError::Join {
        piece: cut.piece.clone(),
        error,
    };
    Ok(cut.body.common_with(other).map_err(wrong)?.volume_mm3())
}

/// Sand between castings and the rigging that runs past them, and between feeders and rigging.
fn sand_between(standing: &Standing<'_>, facts: &mut Vec<Fact>) {
    let to_runner = standing.given.sand.to_runner.as_mm();
    let mut note = |cut: &Cut, other: Piece, sand_mm: f64, wanted_mm: f64| {
        if sand_mm < wanted_mm - TOO_FINE_MM {
            let (piece, place_mm) = (cut.piece.clone(), cut.covers.middle());
            facts.push(Fact::ThinSand {
                piece,
                other,
                place_mm,
                sand_mm,
                wanted_mm,
            });
        }
    };
    let runners = standing.runners.iter().map(|(_, cut)| cut);
    let running = || standing.downhill.iter().chain(runners.clone());
    // Of several castings the nearest is told.
    let nearest = |cut: &Cut, but: Option<usize>| {
        let others = standing
            .castings
            .iter()
            .filter(|lying| Some(lying.number) != but);
        let gaps = others.map(|lying| {
            let gap = cut.covers.gap_to(&lying.mesh, cut.heights_mm);
            (gap, Piece::Casting(lying.number))
        });
        gaps.min_by(|(a, _), (b, _)| a.total_cmp(b))
    };
    for cut in running() {
        if let Some((gap, casting)) = nearest(cut, None) {
            note(cut, casting, gap, to_runner);
        }
    }
    for feeder in standing.feeders {
        if let Some((gap, casting)) = nearest(&feeder.cut, Some(feeder.casting)) {
            note(&feeder.cut, casting, gap, LEAST_SAND_MM);
        }
    }
    for feeder in standing.feeders {
        let gates = standing.gates.iter().map(|(_, cut)| cut);
        for cut in running().chain(gates) {
            let sand_mm = feeder.cut.gap(&cut.covers, cut.heights_mm);
            note(&feeder.cut, cut.piece.clone(), sand_mm, LEAST_SAND_MM);
        }
    }
}
