//! Runners in the joint: their section, and how far they run.

use measure::length::Area;

use crate::arrangement::{Arrangement, Branch};
use crate::bars::{Bar, SLOPE};
use crate::cut::{Cut, Draw};
use crate::error::MouldError;
use crate::gate::Gate;
use crate::given::{Given, Half};
use crate::piece::Piece;
use crate::plan_view::{Footprint, Point, nearest_on};

/// The section of a runner: a trapezoid as wide half way down as it is deep.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Section {
    /// Half of the mould in which it lies.
    pub(crate) half: Half,
    /// Depth from the joint.
    pub(crate) depth_mm: f64,
    /// Width half way down.
    pub(crate) width_mm: f64,
}

/// A runner in its place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Runner {
    /// One end of its line.
    pub(crate) from: Point,
    /// The other.
    pub(crate) to: Point,
    /// Its section.
    pub(crate) section: Section,
    /// How much it runs past its last gates less than is wanted, mm.
    pub(crate) short_mm: f64,
}

/// Sand between the end of a runner and the wall of the flask, mm: as at the sprue.
const END_TO_WALL_MM: f64 = mould::flask::SPRUE_TO_WALL.as_mm();

impl Section {
    /// Of one of so many runners that share an area.
    pub(crate) fn of(all: Area, arms: usize, half: Half) -> Section {
        let side = (all.as_mm2() / arms.max(1) as f64).sqrt();
        Section {
            half,
            depth_mm: side,
            width_mm: side,
        }
    }

    /// Width at the joint.
    pub(crate) fn at_joint_mm(&self) -> f64 {
        self.width_mm + SLOPE * self.depth_mm
    }
}

/// The runners from the sprue to past the last gates: branches first, then what joins them.
pub(crate) fn runners(
    given: &Given,
    arrangement: &Arrangement,
    sprue: Point,
    gates: &[Gate],
) -> Vec<Runner> {
    let section = Section::of(
        given.sizes.runners,
        arrangement.arms,
        given.sizes.runner_half,
    );
    let branches: Vec<Runner> = arrangement
        .branches
        .iter()
        .map(|branch| {
            let own = |gate: &&Gate| branch.feeds.iter().any(|(fed, _)| fed + 1 == gate.casting);
            let gates: Vec<&Gate> = gates.iter().filter(own).collect();
            branch_runner(given, arrangement, branch, &section, sprue, &gates)
        })
        .collect();
    let joints = joining(given, arrangement, sprue, &branches);
    branches.into_iter().chain(joints).collect()
}

impl Runner {
    /// As it is cut.
    pub(crate) fn cut(&self, number: usize) -> Result<Cut, MouldError> {
        let bar = Bar {
            from: self.from,
            to: self.to,
            width_mm: self.section.width_mm,
            foot_mm: 0.0,
            tip_mm: self.section.half.way() * self.section.depth_mm,
            slope: SLOPE,
        };
        let covers = Footprint::bar(self.from, self.to, self.section.at_joint_mm());
        Cut::of(
            Piece::Runner(number),
            covers,
            vec![(Ok(bar.mesh()), Draw::FromJoint)],
        )
    }
}

/// From the sprue, or from the main runner, to past the last gate on either side of it.
fn branch_runner(
    given: &Given,
    arrangement: &Arrangement,
    branch: &Branch,
    section: &Section,
    sprue: Point,
    gates: &[&Gate],
) -> Runner {
    let axis = branch.axis;
    let inside = [given.flask.length, given.flask.width][axis].as_mm();
    let walls = [END_TO_WALL_MM, inside - END_TO_WALL_MM];
    let joined = arrangement
        .main_mm
        .unwrap_or(sprue[axis])
        .clamp(walls[0], walls[1]);
    let past = given.sizes.past_last_gate.as_mm();
    let mut ends = [
        joined - section.width_mm / 2.0,
        joined + section.width_mm / 2.0,
    ];
    let mut short_mm: f64 = 0.0;
    for gate in gates {
        let (at, half) = (gate.from[axis], gate.width_mm / 2.0);
        let low = (at - half - past).max(walls[0]);
        let high = (at + half + past).min(walls[1]);
        if at < joined && low < ends[0] {
            ends[0] = low;
            short_mm = short_mm.max(low - (at - half - past));
        } else if at >= joined && high > ends[1] {
            ends[1] = high;
            short_mm = short_mm.max(at + half + past - high);
        }
    }
    let [from, to] = ends.map(|along| match axis {
        0 => [along, branch.across_mm],
        _ => [branch.across_mm, along],
    });
    Runner {
        from,
        to,
        section: *section,
        short_mm,
    }
}

/// The main runner over several branches, and one from a sprue that stands in no runner.
fn joining(
    given: &Given,
    arrangement: &Arrangement,
    sprue: Point,
    branches: &[Runner],
) -> Vec<Runner> {
    let half = given.sizes.runner_half;
    let mut joints = Vec::new();
    let lines: Vec<f64> = arrangement
        .branches
        .iter()
        .map(|branch| branch.across_mm)
        .collect();
    if let (Some(main), Some(first), Some(last)) =
        (arrangement.main_mm, lines.first(), lines.last())
    {
        let section = Section::of(given.sizes.runners, 2, half);
        let axis = arrangement.branches.first().map_or(0, |branch| branch.axis);
        let at = |across: f64| {
            if axis == 0 {
                [main, across]
            } else {
                [across, main]
            }
        };
        let over = section.width_mm / 2.0;
        let (from, to) = (at(first - over), at(last + over));
        joints.push(Runner {
            from,
            to,
            section,
            short_mm: 0.0,
        });
    }
    let all = || joints.iter().chain(branches);
    let away = |runner: &Runner| {
        let foot = nearest_on([runner.from, runner.to], sprue);
        (crate::plan_view::apart(foot, sprue), foot)
    };
    let nearest = all().map(away).min_by(|(a, _), (b, _)| a.total_cmp(b));
    let section = Section::of(given.sizes.runners, 1, half);
    if let Some((_, foot)) = nearest.filter(|(away, _)| *away > section.width_mm / 2.0) {
        joints.push(Runner {
            from: sprue,
            to: foot,
            section,
            short_mm: 0.0,
        });
    }
    joints
}
