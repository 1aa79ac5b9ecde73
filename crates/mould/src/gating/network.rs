//! The running system as one hydraulic network: which gate runs how fast.
//!
//! Metal stands in the basin, falls through the sprue, and is shared out by runners to one side or
//! several, each with gates along it. Between basin and gate every millimetre of fall is spent: on
//! friction and bends, and at last on the speed with which the metal leaves the gate.
//!
//! A gate is fed by the pressure in the runner, not by the speed of the metal rushing past it. In
//! the far end of a plain runner the metal has slowed down and its pressure is the greater, which
//! is why the farthest gate runs hardest.

use measure::flow::{Flow, Speed};
use measure::length::{Area, Length};
use measure::matter::GRAVITY_M_PER_S2;
use measure::source::Law;
use thiserror::Error;

use crate::gating::friction::Friction;
use crate::gating::running_system::GATE_LENGTH;
use crate::gating::solver::Solver;

/// Flow of every gate of a running system.
pub const GATE_FLOWS: Law = Law {
    name: "mould::gating::network::gate_flows",
    formula: "H − z = (K_s + f L/D) v_s²/2g + Σ (K_r + f L/D) v_r²/2g + k v_r²/2g \
              + (1 + K_g + f L/D) v_g²/2g for each gate, Σ Q_g = Q_s",
    range: "every channel full; metal quasi-steady; no loss past a gate that is passed by",
    sources: &["ingate-trial-imono", "idelchik-handbook"],
};

/// A channel that metal runs through.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Passage {
    /// Its cross-section.
    pub area: Area,
    /// Its length.
    pub length: Length,
    /// Four times the area over the wetted edge.
    pub hydraulic: Length,
    /// Heads of its own speed lost in bends, entries and widenings.
    pub loss: f64,
}

/// A gate.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Gate {
    /// The channel from the runner to the cavity.
    pub passage: Passage,
    /// Where it enters the cavity, above the joint; below nought in the drag.
    pub height: Length,
    /// Which cavity it feeds, counted from nought; cavities may have several gates.
    pub cavity: usize,
}

/// A stretch of runner with the gate at its end.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stretch {
    /// The stretch.
    pub runner: Passage,
    /// The gate.
    pub gate: Gate,
}

/// A running system with one sprue.
#[derive(Clone, Debug, PartialEq)]
pub struct Network {
    /// Level of metal in the basin, above the joint.
    pub level: Length,
    /// The sprue at its foot, with what is lost where it turns into the runner.
    pub sprue: Passage,
    /// The runners that leave the sprue, each from the sprue outwards.
    pub sides: Vec<Vec<Stretch>>,
    /// Friction of the channels.
    pub friction: Friction,
    /// Share of the speed head in the runner that a gate does not get.
    pub turn: f64,
}

/// What runs through one gate.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GateFlow {
    /// Which runner, counted from nought.
    pub side: usize,
    /// Which gate of it, counted from nought at the sprue.
    pub place: usize,
    /// Metal through it.
    pub flow: Flow,
    /// Speed at which it leaves.
    pub speed: Speed,
    /// Part of all the metal.
    pub share: f64,
}

/// What runs where.
#[derive(Clone, Debug, PartialEq)]
pub struct Flows {
    /// Metal through the sprue.
    pub sprue: Flow,
    /// The gates, runner by runner from the sprue outwards.
    pub gates: Vec<GateFlow>,
}

/// Why nothing runs.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum NetworkFault {
    /// No gate at all.
    #[error("the running system has no gate; give at least one")]
    NoGate,
    /// A measure that no channel has.
    #[error(
        "{part}: area and width must be above nought, length and loss not below; measure again"
    )]
    Passage {
        /// Which channel.
        part: String,
    },
    /// All gates stand above the metal.
    #[error("no gate lies below the level in the basin: raise the sprue or lower the gates")]
    NoHead,
    /// Friction, turn or viscosity not numbers that can be.
    #[error("friction, roughness and turn loss must not be below nought, viscosity above it")]
    Friction,
}

/// Loss where the sprue turns into the runner: the whole speed head of the fall is spent in the
/// well (`idelchik-handbook`, from memory: a stream that ends in a pool).
pub const WELL_LOSS: f64 = 1.0;

/// Loss of the bend into a gate, in heads of the gate's own speed, with which the shares of
/// multiple ingates in iron agreed with trial (`ingate-trial-imono`).
pub const GATE_LOSS: f64 = 0.7;

/// A gate at right angles to the runner gets nothing of the speed of the stream that passes it.
pub const SQUARE_TURN: f64 = 1.0;

/// A running system as it is cut by hand: one sprue, plain runners, gates at even distances.
#[derive(Clone, Debug, PartialEq)]
pub struct PlainRunners {
    /// Level of metal in the basin, above the joint.
    pub level: Length,
    /// Area of the sprue at its foot.
    pub foot: Area,
    /// Length of the sprue.
    pub sprue: Length,
    /// Area of the runner to one side.
    pub runner: Area,
    /// Runner from the sprue to the first gate, and from gate to gate.
    pub spacing: Length,
    /// Areas of the gates of each runner that leaves the sprue, the nearest first; each gate feeds
    /// a cavity of its own, counted through.
    pub sides: Vec<Vec<Area>>,
    /// Heads of its speed lost at the foot of the sprue.
    pub sprue_loss: f64,
    /// Heads of its speed lost in the bend into a gate.
    pub gate_loss: f64,
    /// Friction of the channels.
    pub friction: Friction,
    /// Share of the speed head in the runner that a gate does not get.
    pub turn: f64,
}

impl PlainRunners {
    /// The network of channels as wide as deep.
    pub fn network(&self) -> Network {
        let runner = Passage::square(self.runner, self.spacing, 0.0);
        let mut cavities = 0..;
        let mut stretch = |area: &Area| Stretch {
            runner,
            gate: Gate {
                passage: Passage::square(*area, GATE_LENGTH, self.gate_loss),
                height: Length::ZERO,
                cavity: cavities.next().unwrap_or_default(),
            },
        };
        let sides = self.sides.iter();
        Network {
            level: self.level,
            sprue: Passage::square(self.foot, self.sprue, self.sprue_loss),
            sides: sides
                .map(|gates| gates.iter().map(&mut stretch).collect())
                .collect(),
            friction: self.friction,
            turn: self.turn,
        }
    }
}

impl Passage {
    /// A channel about as wide as deep.
    pub fn square(area: Area, length: Length, loss: f64) -> Passage {
        Passage {
            area,
            length,
            hydraulic: Length::from_m(area.as_m2().max(0.0).sqrt()),
            loss,
        }
    }

    /// The same channel cut to another area, its section of the same shape.
    pub fn cut_to(self, area: Area) -> Passage {
        Passage {
            area,
            hydraulic: self.hydraulic * (area / self.area).sqrt(),
            ..self
        }
    }

    /// Head lost for a squared flow of one, at a friction factor.
    pub(super) fn resistance(&self, friction: f64) -> f64 {
        let heads = self.loss + friction * (self.length / self.hydraulic);
        heads * speed_head_of(self.area)
    }

    pub(super) fn factor(&self, friction: Friction, flow: f64) -> f64 {
        friction.factor(self.hydraulic.as_m(), flow / self.area.as_m2())
    }

    /// Head lost along the channel at a flow in m³/s, m.
    pub(super) fn head_lost(&self, friction: Friction, flow: f64) -> f64 {
        self.resistance(self.factor(friction, flow)) * flow * flow
    }

    /// Head of the speed in the channel at a flow in m³/s, m.
    pub(super) fn speed_head(&self, flow: f64) -> f64 {
        speed_head_of(self.area) * flow * flow
    }

    fn sound(&self) -> bool {
        let above = [self.area.as_m2(), self.hydraulic.as_m()];
        let not_below = [self.length.as_m(), self.loss];
        above.iter().all(|x| x.is_finite() && *x > 0.0)
            && not_below.iter().all(|x| x.is_finite() && *x >= 0.0)
    }
}

/// Head of speed in an area for a squared flow of one, s²/m⁵.
pub(super) fn speed_head_of(area: Area) -> f64 {
    0.5 / (GRAVITY_M_PER_S2 * area.as_m2() * area.as_m2())
}

impl Flows {
    /// The speed of the fastest gate.
    pub fn fastest(&self) -> Speed {
        let speeds = self.gates.iter().map(|gate| gate.speed);
        speeds.fold(Speed::ZERO, Speed::max)
    }
}

/// What runs through every gate while the cavities are still empty. Law: [`GATE_FLOWS`].
pub fn gate_flows(network: &Network) -> Result<Flows, NetworkFault> {
    network.check()?;
    let outlets = network
        .gates()
        .map(|gate| Some(gate.height.as_m()))
        .collect::<Vec<_>>();
    let mut solver = Solver::new(network);
    let flows = solver.solve(&outlets);
    Ok(network.told(&flows))
}

impl Network {
    /// Every gate, runner by runner from the sprue outwards.
    pub fn gates(&self) -> impl Iterator<Item = &Gate> {
        self.sides.iter().flatten().map(|stretch| &stretch.gate)
    }

    /// The same running system with other gate areas, in the order of [`Network::gates`].
    pub fn with_gates(&self, areas: &[Area]) -> Network {
        let mut changed = self.clone();
        let stretches = changed.sides.iter_mut().flatten();
        for (stretch, area) in stretches.zip(areas) {
            stretch.gate.passage = stretch.gate.passage.cut_to(*area);
        }
        changed
    }

    pub(super) fn check(&self) -> Result<(), NetworkFault> {
        let unsound = |part: &str, number: usize| NetworkFault::Passage {
            part: format!("{part} {number}"),
        };
        if self.gates().next().is_none() {
            return Err(NetworkFault::NoGate);
        }
        if !self.sprue.sound() {
            return Err(unsound("sprue", 1));
        }
        for (number, stretch) in self.sides.iter().flatten().enumerate() {
            if !stretch.runner.sound() {
                return Err(unsound("runner", number + 1));
            }
            if !stretch.gate.passage.sound() {
                return Err(unsound("gate", number + 1));
            }
        }
        let friction = match self.friction {
            Friction::Stated(factor) => factor >= 0.0,
            Friction::ByReynolds {
                viscosity_m2_per_s,
                roughness,
            } => viscosity_m2_per_s > 0.0 && roughness >= Length::ZERO,
        };
        if !friction || self.turn.is_nan() || self.turn < 0.0 {
            return Err(NetworkFault::Friction);
        }
        match self.gates().any(|gate| gate.height < self.level) {
            true => Ok(()),
            false => Err(NetworkFault::NoHead),
        }
    }

    fn told(&self, flows: &[f64]) -> Flows {
        let all: f64 = flows.iter().sum();
        let places = self.sides.iter().enumerate().flat_map(|(side, stretches)| {
            let gates = stretches.iter().enumerate();
            gates.map(move |(place, stretch)| (side, place, stretch.gate.passage.area))
        });
        let gates = places
            .zip(flows)
            .map(|((side, place, area), flow)| GateFlow {
                side,
                place,
                flow: Flow::from_m3_per_s(*flow),
                speed: Speed::from_m_per_s(flow / area.as_m2()),
                share: if all > 0.0 { flow / all } else { 0.0 },
            });
        Flows {
            sprue: Flow::from_m3_per_s(all),
            gates: gates.collect(),
        }
    }
}
