//! The running system as a network of channels, while metal starts, runs and drowns its gates.
//!
//! Channels join a basin, junctions and outlets. What is lost in a channel goes with the square of
//! its flow; a stream leaves an outlet with its speed, and that head is lost as well. Everything is
//! in metres and seconds, heights above one level of the caller's choice.
//!
//! Metal never runs back through an outlet: a gate that a pool presses harder than the running
//! system does stands still. A pool that in truth sinks back into the runner is told as if it
//! waited, which errs to the side of less metal moved.

pub mod flow;
pub mod part_full;
pub mod step;

mod elimination;
mod newton;

use measure::matter::GRAVITY_M_PER_S2;
use mould::gating::friction::Friction;
use mould::gating::network as running;
use thiserror::Error;

/// An end of a channel.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Node {
    /// The metal in the basin.
    Basin,
    /// A place where channels meet, by its number from nought.
    Junction(usize),
    /// A place where metal leaves the running system, by its number from nought.
    Outlet(usize),
}

/// A channel that metal runs through.
#[derive(Clone, Debug, PartialEq)]
pub struct Branch {
    /// Where it begins.
    pub from: Node,
    /// Where it ends.
    pub to: Node,
    /// Its cross-section, m².
    pub area_m2: f64,
    /// Its length, m: what friction and inertia go by.
    pub length_m: f64,
    /// Four times the area over the wetted edge, m.
    pub hydraulic_m: f64,
    /// Heads of its own speed lost in entry, bends, widenings and filters.
    pub loss: f64,
    /// Loss where it turns off from another channel.
    pub turn: Option<Turn>,
    /// Sections down a sprue, from above; empty where the channel has the same section throughout
    /// or lies level.
    pub sections: Vec<Section>,
}

/// What a channel does not get of the speed of the stream from which it turns off.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Turn {
    /// The channel from which it turns off, by its number.
    pub from: usize,
    /// Share of the speed head in that channel that is lost.
    pub share: f64,
}

/// A section of a sprue.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Section {
    /// Where it lies, m.
    pub height_m: f64,
    /// Its area, m².
    pub area_m2: f64,
}

/// The whole running system.
#[derive(Clone, Debug, PartialEq)]
pub struct Network {
    /// Level of the metal in the basin, m.
    pub level_m: f64,
    /// Area of the basin, m², where nobody fills it up while it sinks; none where it is kept full.
    pub sinking_m2: Option<f64>,
    /// Heights of the junctions, m.
    pub junctions_m: Vec<f64>,
    /// Heights of the outlets, m.
    pub outlets_m: Vec<f64>,
    /// The channels.
    pub branches: Vec<Branch>,
    /// Friction along their walls.
    pub friction: Friction,
}

/// Why a network cannot be reckoned.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum NetworkError {
    /// A measure that no channel has.
    #[error(
        "channel {number} of the running system: area and width must be above nought, length and \
         loss not below, heights must be numbers; measure it again"
    )]
    Branch {
        /// Counted from one.
        number: usize,
    },
    /// A junction, outlet or channel that is not there.
    #[error("channel {number} of the running system leads to a place that is not listed")]
    Astray {
        /// Counted from one.
        number: usize,
    },
    /// An outlet that no channel reaches, or several do.
    #[error("outlet {number} of the running system needs one channel that ends in it")]
    Outlet {
        /// Counted from one.
        number: usize,
    },
    /// A level, height, basin or friction that cannot be.
    #[error(
        "the running system needs a level and heights that are numbers, a basin and a viscosity \
         above nought and friction not below it"
    )]
    Figures,
    /// All outlets stand above the metal.
    #[error(
        "no gate lies below the level in the basin, {level_mm:.1} mm: raise the sprue or lower \
         the gates"
    )]
    NoHead {
        /// The level, mm.
        level_mm: f64,
    },
    /// The flows could not be found.
    #[error(
        "the flows of the running system did not come to rest: look for channels with areas that \
         differ more than a thousandfold"
    )]
    Restless,
}

impl Network {
    /// The network of a running system with one sprue, sides and gates along them; outlets in the
    /// order of its gates, junctions at the height of their gates and the foot of the sprue level
    /// with the joint.
    pub fn of_running_system(system: &running::Network) -> Network {
        let mut network = Network {
            level_m: system.level.as_m(),
            sinking_m2: None,
            junctions_m: vec![0.0],
            outlets_m: Vec::new(),
            branches: vec![Branch::of(&system.sprue, Node::Basin, Node::Junction(0))],
            friction: system.friction,
        };
        for side in &system.sides {
            let mut at = Node::Junction(0);
            for stretch in side {
                at = network.add_stretch(at, stretch, system.turn);
            }
        }
        network
    }

    fn add_stretch(&mut self, from: Node, stretch: &running::Stretch, turn: f64) -> Node {
        let (runner, junction) = (self.branches.len(), Node::Junction(self.junctions_m.len()));
        let outlet = Node::Outlet(self.outlets_m.len());
        self.junctions_m.push(stretch.gate.height.as_m());
        self.outlets_m.push(stretch.gate.height.as_m());
        let mut gate = Branch::of(&stretch.gate.passage, junction, outlet);
        gate.turn = Some(Turn {
            from: runner,
            share: turn,
        });
        self.branches
            .push(Branch::of(&stretch.runner, from, junction));
        self.branches.push(gate);
        junction
    }

    /// The channel that ends in each outlet.
    pub(crate) fn gates(&self) -> Vec<usize> {
        let gate = |outlet| {
            let ends = |branch: &Branch| branch.to == Node::Outlet(outlet);
            self.branches.iter().position(ends).unwrap_or_default()
        };
        (0..self.outlets_m.len()).map(gate).collect()
    }

    /// Time in which metal comes up to these flows from rest, s: the head of its inertia over the
    /// head that drives it.
    pub(crate) fn speeding_s(&self, flows: &[f64]) -> f64 {
        let lowest = self.outlets_m.iter().fold(f64::INFINITY, |a, b| a.min(*b));
        let channels = self.branches.iter().zip(flows);
        let inertia: f64 = channels
            .map(|(branch, flow)| branch.length_m * flow / (GRAVITY_M_PER_S2 * branch.area_m2))
            .sum();
        inertia / (self.level_m - lowest).max(f64::MIN_POSITIVE)
    }

    /// Looks the network over.
    ///
    /// # Errors
    ///
    /// What is wrong with it, the first found.
    pub fn check(&self) -> Result<(), NetworkError> {
        for (branch, number) in self.branches.iter().zip(1..) {
            if !branch.is_sound() {
                return Err(NetworkError::Branch { number });
            }
            if !self.is_placed(branch) {
                return Err(NetworkError::Astray { number });
            }
        }
        for outlet in 0..self.outlets_m.len() {
            let ends = |branch: &&Branch| branch.to == Node::Outlet(outlet);
            if self.branches.iter().filter(ends).count() != 1 {
                return Err(NetworkError::Outlet { number: outlet + 1 });
            }
        }
        let heights = self.junctions_m.iter().chain(&self.outlets_m);
        let friction = match self.friction {
            Friction::Stated(factor) => factor >= 0.0,
            Friction::ByReynolds {
                viscosity_m2_per_s,
                roughness,
            } => viscosity_m2_per_s > 0.0 && roughness.as_m() >= 0.0,
        };
        let sound = self.level_m.is_finite()
            && self.sinking_m2.is_none_or(|area| area > 0.0)
            && heights.clone().all(|height| height.is_finite());
        if !sound || !friction {
            return Err(NetworkError::Figures);
        }
        match self.outlets_m.iter().any(|height| *height < self.level_m) {
            true => Ok(()),
            false => Err(NetworkError::NoHead {
                level_mm: self.level_m * 1e3,
            }),
        }
    }

    fn is_placed(&self, branch: &Branch) -> bool {
        let is_there = |node: Node| match node {
            Node::Basin => true,
            Node::Junction(number) => number < self.junctions_m.len(),
            Node::Outlet(number) => number < self.outlets_m.len(),
        };
        let turns = branch
            .turn
            .is_none_or(|turn| turn.from < self.branches.len());
        let runs = !matches!(branch.from, Node::Outlet(_)) && branch.to != Node::Basin;
        turns && runs && is_there(branch.from) && is_there(branch.to)
    }
}

impl Branch {
    fn of(passage: &running::Passage, from: Node, to: Node) -> Branch {
        Branch {
            from,
            to,
            area_m2: passage.area.as_m2(),
            length_m: passage.length.as_m(),
            hydraulic_m: passage.hydraulic.as_m(),
            loss: passage.loss,
            turn: None,
            sections: Vec::new(),
        }
    }

    fn is_sound(&self) -> bool {
        let sections = self.sections.iter();
        let mut above = sections
            .map(|section| section.area_m2)
            .chain([self.area_m2, self.hydraulic_m]);
        let turn = self.turn.map_or(0.0, |turn| turn.share);
        let mut heights = self.sections.iter().map(|section| section.height_m);
        above.all(|x| x.is_finite() && x > 0.0)
            && heights.all(f64::is_finite)
            && [self.length_m, self.loss, turn]
                .iter()
                .all(|x| x.is_finite() && *x >= 0.0)
    }
}
