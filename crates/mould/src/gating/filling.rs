//! Which cavity of a mould is full first, which last, and how much later.

use measure::flow::Duration;
use measure::length::{Length, Volume};
use measure::source::Law;
use thiserror::Error;

use crate::gating::network::{Gate, Network, NetworkFault};
use crate::gating::solver::Solver;

/// Times at which the cavities of one mould are full.
pub const FILL_ORDER: Law = Law {
    name: "mould::gating::filling::fill_order",
    formula: "dV/dt = Q_g for each cavity, Q_g by the heads of the network; \
              a drowned gate runs against the level above it; a full cavity takes no more",
    range: "upright walls; the basin kept full; running system full from the start",
    sources: &["ingate-trial-imono", "bottom-gate-exam"],
};

/// A cavity, upright-walled, as far as its filling is concerned.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cavity {
    /// Metal it takes.
    pub volume: Volume,
    /// Its lowest place, above the joint; below nought in the drag.
    pub bottom: Length,
    /// From its lowest place to its highest.
    pub height: Length,
}

/// When the cavities are full.
#[derive(Clone, Debug, PartialEq)]
pub struct FillOrder {
    /// Time at which each is full, from the moment the gates begin to run.
    pub full_at: Vec<Duration>,
    /// The one that is full last, counted from nought.
    pub last: usize,
    /// How long after the first it is.
    pub lag: Duration,
}

/// Why a mould does not fill.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum FillFault {
    /// The running system.
    #[error(transparent)]
    Network(#[from] NetworkFault),
    /// A cavity without metal or height.
    #[error("cavity {number}: volume and height must be above nought; measure it again")]
    Cavity {
        /// Counted from one.
        number: usize,
    },
    /// A cavity that no gate feeds.
    #[error("cavity {number} has no gate that runs into it; cut one")]
    NoGate {
        /// Counted from one.
        number: usize,
    },
    /// A gate into a cavity that is not there.
    #[error("gate {number} feeds a cavity that is not listed; list it or stop the gate up")]
    NoCavity {
        /// Counted from one.
        number: usize,
    },
    /// A cavity higher than the metal.
    #[error(
        "cavity {number} reaches up to the level in the basin: it never fills; raise the sprue"
    )]
    TooHigh {
        /// Counted from one.
        number: usize,
    },
    /// Metal stands still before a cavity is full.
    #[error("cavity {number} takes no more metal before it is full: its gates stand too high")]
    Standstill {
        /// Counted from one.
        number: usize,
    },
}

/// More steps than any mould of a hundred cavities takes.
const MOST_STEPS: usize = 20_000;

/// Steps in which a cavity behind a drowned gate rises.
const STEPS: f64 = 40.0;

/// Times at which the cavities are full. Law: [`FILL_ORDER`].
pub fn fill_order(network: &Network, cavities: &[Cavity]) -> Result<FillOrder, FillFault> {
    check(network, cavities)?;
    let mut filling = Filling::new(network, cavities);
    for _ in 0..MOST_STEPS {
        if let Some(number) = filling.not_full() {
            filling.step(number)?;
        }
    }
    if let Some(number) = filling.not_full() {
        return Err(FillFault::Standstill { number });
    }
    let full_at: Vec<f64> = filling.full_at.iter().flatten().copied().collect();
    let first = full_at.iter().copied().fold(f64::INFINITY, f64::min);
    let mut last = 0;
    for (cavity, time) in full_at.iter().enumerate() {
        if *time > full_at[last] {
            last = cavity;
        }
    }
    Ok(FillOrder {
        lag: Duration::from_s(full_at[last] - first),
        last,
        full_at: full_at.into_iter().map(Duration::from_s).collect(),
    })
}

fn check(network: &Network, cavities: &[Cavity]) -> Result<(), FillFault> {
    network.check()?;
    for (cavity, number) in cavities.iter().zip(1..) {
        if !(cavity.volume > Volume::ZERO && cavity.height > Length::ZERO) {
            return Err(FillFault::Cavity { number });
        }
        if cavity.bottom + cavity.height >= network.level {
            return Err(FillFault::TooHigh { number });
        }
        let feeds = |gate: &Gate| gate.cavity + 1 == number && gate.height < network.level;
        if !network.gates().any(feeds) {
            return Err(FillFault::NoGate { number });
        }
    }
    let astray = network
        .gates()
        .position(|gate| gate.cavity >= cavities.len());
    astray.map_or(Ok(()), |gate| Err(FillFault::NoCavity { number: gate + 1 }))
}

/// A mould while it fills.
struct Filling<'a> {
    network: &'a Network,
    cavities: &'a [Cavity],
    solver: Solver<'a>,
    time: f64,
    /// Metal in each cavity, as a part of what it takes.
    filled: Vec<f64>,
    full_at: Vec<Option<f64>>,
}

impl<'a> Filling<'a> {
    fn new(network: &'a Network, cavities: &'a [Cavity]) -> Filling<'a> {
        Filling {
            network,
            cavities,
            solver: Solver::new(network),
            time: 0.0,
            filled: vec![0.0; cavities.len()],
            full_at: vec![None; cavities.len()],
        }
    }

    /// The first cavity that is not full, counted from one.
    fn not_full(&self) -> Option<usize> {
        self.full_at
            .iter()
            .zip(1..)
            .find(|(at, _)| at.is_none())
            .map(|(_, number)| number)
    }

    /// On to the next change: a gate drowned, a cavity full, or a fortieth of a cavity risen. The
    /// rate is taken in the middle of the step.
    fn step(&mut self, number: usize) -> Result<(), FillFault> {
        let rates = self.rates(&self.filled.clone());
        let length = self.length(&rates);
        if !length.is_finite() {
            return Err(FillFault::Standstill { number });
        }
        let halfway: Vec<f64> = self
            .filled
            .iter()
            .zip(&rates)
            .map(|(filled, rate)| filled + 0.5 * length * rate)
            .collect();
        let rates = self.rates(&halfway);
        // The middle rate may bring a cavity to the brim a little sooner.
        let length = self.brimful(&rates).min(length);
        self.time += length;
        for (cavity, rate) in rates.iter().enumerate() {
            self.filled[cavity] += length * rate;
            if self.full_at[cavity].is_none() && self.filled[cavity] >= BRIM {
                self.full_at[cavity] = Some(self.time);
            }
        }
        Ok(())
    }

    /// Parts of each cavity that run in a second.
    fn rates(&mut self, filled: &[f64]) -> Vec<f64> {
        let outlets: Vec<Option<f64>> = self
            .network
            .gates()
            .map(|gate| {
                let cavity = &self.cavities[gate.cavity];
                let surface = cavity.bottom + cavity.height * filled[gate.cavity];
                let open = self.full_at[gate.cavity].is_none();
                open.then_some(gate.height.max(surface).as_m())
            })
            .collect();
        let flows = self.solver.solve(&outlets);
        let mut rates = vec![0.0; self.cavities.len()];
        for (gate, flow) in self.network.gates().zip(flows) {
            rates[gate.cavity] += flow / self.cavities[gate.cavity].volume.as_m3();
        }
        rates
    }

    /// Seconds to the next change.
    fn length(&self, rates: &[f64]) -> f64 {
        let mut shortest = f64::INFINITY;
        for (cavity, rate) in rates.iter().enumerate() {
            if self.full_at[cavity].is_some() || *rate <= 0.0 {
                continue;
            }
            shortest = shortest.min(self.to_go(cavity) / rate);
        }
        shortest
    }

    /// Part of a cavity to the next change in it.
    fn to_go(&self, cavity: usize) -> f64 {
        let (filled, space) = (self.filled[cavity], &self.cavities[cavity]);
        let gates = self.network.gates().filter(|gate| gate.cavity == cavity);
        let part = |height: Length| (height - space.bottom) / space.height;
        let mut next = 1.0;
        let mut drowned = false;
        for at in gates.map(|gate| part(gate.height)) {
            match at <= filled + 1e-9 {
                true => drowned |= at < 1.0,
                false => next = f64::min(next, at),
            }
        }
        let whole = next - filled;
        match drowned {
            true => whole.min(1.0 / STEPS),
            false => whole,
        }
    }

    /// Seconds until the first cavity is full at these rates.
    fn brimful(&self, rates: &[f64]) -> f64 {
        let open = |cavity: &usize| self.full_at[*cavity].is_none() && rates[*cavity] > 0.0;
        (0..rates.len())
            .filter(open)
            .map(|cavity| (1.0 - self.filled[cavity]) / rates[cavity])
            .fold(f64::INFINITY, f64::min)
    }
}

/// Full, but for the last digits.
const BRIM: f64 = 1.0 - 1e-9;
