//! The whole mould: everything placed, built, taken out of the sand, weighed and looked over.

use measure::length::Volume;
use measure::matter::Density;
use pattern::boolean::Body;
use pattern::mesh::Mesh;

use crate::arrangement::{Arrangement, Branch, Widths, arrange};
use crate::cavity::{Filled, fill};
use crate::cell::Rectangle;
use crate::cut::Cut;
use crate::downhill::{downhill, levels, well_across_mm};
use crate::error::MouldError;
use crate::face::{Face, Wandering, face};
use crate::fact::Fact;
use crate::feeder::{Clear, Feeder, feeders};
use crate::gate::{Around, Beside, Gate, gate_at, gates};
use crate::given::Given;
use crate::lie::{Lying, LyingCore, lay, nearest};
use crate::piece::{Piece, Solid};
use crate::placement::{FeederAt, Placement};
use crate::plan_view::{Footprint, Point, apart, nearest_on};
use crate::runner::{Section, runners};
use crate::standing::{Standing, facts};
use crate::vent::vents;

/// A mould as a set of solids.
///
/// The origin is the front left inside corner of the flask at the joint: x runs along the flask, y
/// across it, z up; the joint lies at z = 0 along walls and runners, and elsewhere unless it
/// wanders.
#[derive(Clone, Debug)]
pub struct Mould {
    /// The castings, as large as their cavities.
    pub castings: Vec<Solid>,
    /// Basin, sprue, well, runners, gates, feeders, in this order. They reach into each other and
    /// into the castings, so that their volumes are not to be added up: that is [`Mould::cavity`].
    pub rigging: Vec<Solid>,
    /// The vents together, where there are any.
    pub vents: Option<Solid>,
    /// Cores.
    pub cores: Vec<Solid>,
    /// All metal within the flask as one body.
    pub cavity: Solid,
    /// The sand above the joint.
    pub cope: Solid,
    /// The sand below it.
    pub drag: Solid,
    /// Metal in the basin above the top of the cope, which is not in the cavity.
    pub above_cope: Volume,
    /// How far cope, drag, metal, cores and vents together miss the inside of the flask, as a
    /// share of it: nought but for rounding where they fill it without gap or overlap.
    pub off_by: f64,
    /// The joint where it wanders; none where it is flat at height nought.
    pub joint: Option<Wandering>,
    /// What was noticed.
    pub facts: Vec<Fact>,
}

/// Builds the mould of castings in a flask, each piece by its rule unless it is placed otherwise.
///
/// # Errors
///
/// A flask without room for the castings and their runner, a basin without height for its sprue, a
/// place outside of the flask, a feeder at a section that is none, a parting line along which no
/// sand holds a joint, or a skin that does not close.
pub fn mould(given: &Given, placement: &Placement) -> Result<Mould, MouldError> {
    let laid = Laid::of(given, placement)?;
    let castings = lay(given, &laid.arrangement.corners)?;
    let levels = levels(given, laid.section.depth_mm)?;
    let downhill = downhill(given, &levels, laid.sprue)?;
    let face = face(given, &castings, &laid.kept_flat(given))?;
    let feeders = placed_feeders(given, placement, &laid, &castings, &face)?;
    let gates = placed_gates(given, placement, &laid, &castings, &feeders, &face);
    let runners = runners(given, &laid.arrangement, laid.sprue, &gates);
    let runners = runners.into_iter().zip(1..).map(|(runner, number)| {
        let cut = runner.cut(number)?;
        Ok((runner, cut))
    });
    let runners = runners.collect::<Result<Vec<_>, MouldError>>()?;
    let gates = gates.into_iter().zip(1..).map(|(gate, number)| {
        let cut = gate.cut(number, &laid.section, &face)?;
        Ok((gate, cut))
    });
    let gates = gates.collect::<Result<Vec<_>, MouldError>>()?;
    let standing = Standing {
        given,
        face: &face,
        castings: &castings,
        downhill: &downhill,
        runners: &runners,
        gates: &gates,
        feeders: &feeders,
    };
    let facts = facts(&standing)?;
    let of_runners = runners.iter().map(|(_, cut)| cut.clone());
    let of_gates = gates.iter().map(|(_, cut)| cut.clone());
    let of_feeders = feeders.iter().map(|feeder| feeder.cut.clone());
    let running = downhill.iter().cloned().chain(of_runners).chain(of_gates);
    let rigging: Vec<Cut> = running.chain(of_feeders).collect();
    let metal: Vec<Footprint> = rigging.iter().map(|cut| cut.covers).collect();
    let vents = vents(given, &castings, &metal)?;
    let filled = fill(given, &face, &castings, &rigging, vents.as_ref())?;
    Ok(weighed(
        given,
        &castings,
        &rigging,
        vents.as_ref(),
        &filled,
        face,
        facts,
    ))
}

/// Where castings, runners and sprue lie.
struct Laid {
    arrangement: Arrangement,
    section: Section,
    sprue: Point,
}

impl Laid {
    fn of(given: &Given, placement: &Placement) -> Result<Laid, MouldError> {
        let half = given.sizes.runner_half;
        let across = given.sizes.sprue_top.as_mm().max(well_across_mm(given));
        // The widest that a runner can come out: all the metal through one.
        let widths = Widths {
            runner_mm: Section::of(given.sizes.runners, 1, half).at_joint_mm(),
            sprue_mm: across,
        };
        let inside_mm = [given.flask.length, given.flask.width].map(|side| side.as_mm());
        let arrangement = arrange(given, &widths).ok_or(MouldError::NoRoom {
            count: given.count,
            each_mm: given.layout.each.map(|side| side.as_mm()),
            inside_mm,
        })?;
        let is_in =
            |point: &Point| (0..2).all(|axis| (0.0..=inside_mm[axis]).contains(&point[axis]));
        let check = |piece: Piece, place_mm: &Point| match is_in(place_mm) {
            true => Ok(()),
            false => Err(MouldError::Outside {
                piece,
                place_mm: *place_mm,
                inside_mm,
            }),
        };
        if let Some(point) = &placement.sprue_mm {
            check(Piece::Sprue, point)?;
        }
        for (point, number) in placement.gates_mm.iter().flatten().zip(1..) {
            check(Piece::Gate(number), point)?;
        }
        for (place, number) in placement.feeders.iter().flatten().zip(1..) {
            if let FeederAt::Point(point) = place {
                check(Piece::Feeder(number), point)?;
            }
        }
        Ok(Laid {
            section: Section::of(given.sizes.runners, arrangement.arms, half),
            sprue: placement.sprue_mm.unwrap_or(arrangement.sprue),
            arrangement,
        })
    }

    /// The sprue with its well on the joint.
    fn sprue_covers(&self, given: &Given) -> Footprint {
        let across = given.sizes.sprue_top.as_mm().max(well_across_mm(given));
        Footprint::round(self.sprue, across)
    }

    /// What keeps the joint flat: the runners, from wall to wall, and the sprue.
    fn kept_flat(&self, given: &Given) -> Vec<Rectangle> {
        let width = self.section.at_joint_mm();
        let branches = self.arrangement.branches.iter().map(|branch| {
            let [from, to] = self.line(given, branch);
            Footprint::bar(from, to, width).bounds()
        });
        let main = self.arrangement.main_mm.map(|main| {
            let axis = self
                .arrangement
                .branches
                .first()
                .map_or(0, |branch| branch.axis);
            let inside = [given.flask.length, given.flask.width][1 - axis].as_mm();
            let at = |along: f64, across: f64| match axis {
                0 => [along, across],
                _ => [across, along],
            };
            let width = Section::of(given.sizes.runners, 2, self.section.half).at_joint_mm();
            [at(main - width / 2.0, 0.0), at(main + width / 2.0, inside)]
        });
        let sprue = self.sprue_covers(given).bounds();
        branches.chain(main).chain([sprue]).collect()
    }

    /// The line of a branch from wall to wall.
    fn line(&self, given: &Given, branch: &Branch) -> [Point; 2] {
        let inside = [given.flask.length, given.flask.width][branch.axis].as_mm();
        [0.0, inside].map(|along| match branch.axis {
            0 => [along, branch.across_mm],
            _ => [branch.across_mm, along],
        })
    }
}

/// Feeders clear of runners from wall to wall, of the sprue and of each other's castings.
fn placed_feeders(
    given: &Given,
    placement: &Placement,
    laid: &Laid,
    castings: &[Lying],
    face: &Face,
) -> Result<Vec<Feeder>, MouldError> {
    let width = laid.section.at_joint_mm();
    let strip = |branch: &Branch| {
        let [from, to] = laid.line(given, branch);
        Footprint::bar(from, to, width)
    };
    let mut metal: Vec<Footprint> = laid.arrangement.branches.iter().map(strip).collect();
    metal.push(laid.sprue_covers(given));
    let clear = Clear {
        castings,
        metal: &metal,
        face,
    };
    feeders(given, placement.feeders.as_deref(), &clear)
}

/// The gates wanted, and by the rules those of castings for which none is wanted.
fn placed_gates(
    given: &Given,
    placement: &Placement,
    laid: &Laid,
    castings: &[Lying],
    feeders: &[Feeder],
    face: &Face,
) -> Vec<Gate> {
    let section = &laid.section;
    let mut placed: Vec<Gate> = Vec::new();
    for point in placement.gates_mm.iter().flatten() {
        let Some(lying) = nearest(castings, *point) else {
            continue;
        };
        let lines = laid
            .arrangement
            .branches
            .iter()
            .map(|branch| laid.line(given, branch));
        let feet = lines.map(|line| nearest_on(line, *point));
        let foot = feet.min_by(|a, b| apart(*a, *point).total_cmp(&apart(*b, *point)));
        placed.extend(foot.and_then(|foot| gate_at(given, lying, foot, *point, section, face)));
    }
    let cuts: Vec<Cut> = feeders.iter().map(|feeder| feeder.cut.clone()).collect();
    let height = given.sizes.runner_half.other().way() * section.depth_mm / 4.0;
    let cores: Vec<&LyingCore> = castings.iter().flat_map(|lying| &lying.cores).collect();
    let core_cuts: Vec<Vec<Point>> = cores
        .iter()
        .flat_map(|core| pattern::slice::outlines(&core.mesh, 2, height))
        .collect();
    let around = Around {
        feeders: &cuts,
        sprue: laid.sprue_covers(given),
        cores: &cores,
        core_cuts: &core_cuts,
        face,
    };
    for branch in &laid.arrangement.branches {
        for (casting, side) in &branch.feeds {
            let Some(lying) = castings.get(*casting) else {
                continue;
            };
            if placed.iter().any(|gate| gate.casting == lying.number) {
                continue;
            }
            let beside = Beside {
                axis: branch.axis,
                across_mm: branch.across_mm,
                side: *side,
            };
            placed.extend(gates(given, lying, &beside, section, &around));
        }
    }
    placed
}

fn weighed(
    given: &Given,
    castings: &[Lying],
    rigging: &[Cut],
    vents: Option<&Cut>,
    filled: &Filled,
    face: Face,
    facts: Vec<Fact>,
) -> Mould {
    let densities = &given.densities;
    let of_cut = |cut: &Cut, density| solid(cut.piece.clone(), &cut.body, density);
    let casting = |lying: &Lying| Solid {
        // The skin as it was given, not as the library hands it back.
        mesh: lying.mesh.clone(),
        ..solid(Piece::Casting(lying.number), &lying.body, densities.metal)
    };
    let cores = castings.iter().flat_map(|lying| &lying.cores);
    Mould {
        castings: castings.iter().map(casting).collect(),
        rigging: rigging
            .iter()
            .map(|cut| of_cut(cut, densities.metal))
            .collect(),
        vents: vents.map(|cut| of_cut(cut, Density::ZERO)),
        cores: cores
            .map(|core| solid(core.piece.clone(), &core.body, densities.core))
            .collect(),
        cavity: solid(Piece::Cavity, &filled.metal, densities.metal),
        cope: solid(Piece::Cope, &filled.cope, densities.sand),
        drag: solid(Piece::Drag, &filled.drag, densities.sand),
        above_cope: filled.above_cope,
        off_by: filled.off_by,
        joint: face.wandering,
        facts,
    }
}

fn solid(piece: Piece, body: &Body, density: Density) -> Solid {
    let volume = Volume::from_mm3(body.volume_mm3());
    let mesh: Mesh = body.mesh();
    Solid {
        piece,
        mesh,
        volume,
        mass: density * volume,
    }
}

impl Mould {
    /// Every solid once, in the order in which a founder meets them.
    pub fn solids(&self) -> impl Iterator<Item = &Solid> {
        let metal = self.castings.iter().chain(&self.rigging);
        let rest = self.vents.iter().chain(&self.cores);
        let whole = [&self.cavity, &self.cope, &self.drag];
        metal.chain(rest).chain(whole)
    }
}
