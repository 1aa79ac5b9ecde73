//! The points of an experiment: from amounts and settings to the numbers of `trials`, and back.
//!
//! Per cents that change together are a mixture: they are taken as shares of what they have
//! together, above their low ends, because narrow regions are fitted in these without loss of
//! digits. Parts beside each other do not bind each other, so each is an axis of its own, as every
//! setting is: −1 at its low end, 1 at its high end.

use trials::lattice::grid;
use trials::model::{Bend, Blending, Model, added, mixture, surface};
use trials::region::{Component, Region, RegionError};
use trials::settings::{crossed, three_level};
use trials::vertices::{Landmarks, landmarks};

use crate::experiment::batches::Batch;
use crate::experiment::{Aim, Counted, Experiment, Shape};

use self::axis::axes_of;
pub use self::axis::{Axis, Of};

mod axis;

/// All points of an experiment.
#[derive(Clone, Debug, PartialEq)]
pub struct Space {
    /// Shares that change together; nothing where parts are counted or no per cent changes.
    pub mixture: Option<Mixture>,
    /// What changes for itself.
    pub axes: Vec<Axis>,
    fixed: Vec<f64>,
    still: Vec<f64>,
}

/// Shares that change together.
#[derive(Clone, Debug, PartialEq)]
pub struct Mixture {
    /// Places of the parts.
    pub parts: Vec<usize>,
    /// The region as points have it: shares above the low ends.
    pub region: Region,
    /// The region in shares of what they have together.
    pub plain: Region,
    /// Per cent that they have together.
    pub together: f64,
}

/// Most points looked at when the best is sought: a belief looks at so many within a second.
const MOST_LOOKED_AT: usize = 12_000;

/// Most points from which batches are chosen.
const MOST_CANDIDATES: usize = 3_000;

/// How far a plan that hunts for the best mix starts from the middle; see
/// [`Landmarks::drawn_in`].
const HALF_WAY: f64 = 0.5;

impl Space {
    /// The points of an experiment.
    pub fn of(experiment: &Experiment) -> Space {
        let part_axes = experiment.parts.iter().enumerate();
        let part_axes = part_axes.filter(|(_, part)| part.varies());
        let part_axes = part_axes.map(|(at, part)| Axis {
            of: Of::Part(at),
            name: part.name.clone(),
            unit: String::new(),
            low: part.low,
            high: part.high,
            is_choice: false,
            by_factors: part.by_factors,
            later: part.later,
        });
        let settings = experiment
            .settings
            .iter()
            .enumerate()
            .flat_map(|(at, one)| axes_of(at, one));
        let mixture = match experiment.counted {
            Counted::Percent => mixture_of(experiment),
            Counted::Parts => None,
        };
        let axes = match experiment.counted {
            Counted::Percent => settings.collect(),
            Counted::Parts => part_axes.chain(settings).collect(),
        };
        Space {
            mixture,
            axes,
            fixed: experiment.parts.iter().map(|part| part.low).collect(),
            still: experiment.settings.iter().map(|one| one.low).collect(),
        }
    }

    /// What the numbers of a point are called.
    pub fn names(&self) -> Vec<String> {
        let shares = self.mixture.iter().flat_map(|one| &one.region.components);
        let shares = shares.map(|one| one.name.clone());
        shares
            .chain(self.axes.iter().map(|one| one.name.clone()))
            .collect()
    }

    /// How many of the numbers of a point are shares.
    pub fn shares(&self) -> usize {
        self.mixture.as_ref().map_or(0, |one| one.parts.len())
    }

    /// The point of a batch as it was made.
    pub fn point(&self, batch: &Batch) -> Vec<f64> {
        self.at(batch, batch.made())
    }

    /// The point of a batch as it was planned: repeats stay repeats, whatever the scale said.
    pub fn planned(&self, batch: &Batch) -> Vec<f64> {
        self.at(batch, &batch.amounts)
    }

    fn at(&self, batch: &Batch, amounts: &[f64]) -> Vec<f64> {
        let mut point = Vec::new();
        if let Some(mixture) = &self.mixture {
            let own: Vec<f64> = mixture.parts.iter().map(|at| amounts[*at]).collect();
            let sum: f64 = own.iter().sum();
            let plain: Vec<f64> = own.iter().map(|one| one / sum).collect();
            point.extend(mixture.plain.above_lows(&plain));
        }
        point.extend(self.axes.iter().map(|axis| {
            axis.coded(match axis.of {
                Of::Part(at) => amounts[at],
                Of::Setting(at) => batch.settings[at],
                Of::Choice(at, which) => f64::from(u8::from(batch.settings[at] == which as f64)),
            })
        }));
        point
    }

    /// The amounts of all parts at a point.
    pub fn amounts(&self, point: &[f64]) -> Vec<f64> {
        let mut amounts = self.fixed.clone();
        if let Some(mixture) = &self.mixture {
            let plain = mixture.plain.from_above_lows(&point[..mixture.parts.len()]);
            for (at, share) in mixture.parts.iter().zip(plain) {
                amounts[*at] = share * mixture.together;
            }
        }
        for (axis, coded) in self.axes.iter().zip(&point[self.shares()..]) {
            if let Of::Part(at) = axis.of {
                amounts[at] = axis.in_unit(*coded);
            }
        }
        amounts
    }

    /// All settings at a point.
    pub fn settings(&self, point: &[f64]) -> Vec<f64> {
        let mut settings = self.still.clone();
        for (axis, coded) in self.axes.iter().zip(&point[self.shares()..]) {
            match axis.of {
                Of::Setting(at) => settings[at] = axis.in_unit(*coded),
                Of::Choice(at, which) if *coded > 0.0 => settings[at] = which as f64,
                Of::Choice(..) | Of::Part(_) => {}
            }
        }
        settings
    }

    /// The polynomial of a shape over these points. What comes in later acts for itself only: a
    /// handful of batches does not teach how it acts together with the rest.
    pub fn model(&self, shape: Shape) -> Model {
        let names: Vec<&str> = self.axes.iter().map(|axis| axis.name.as_str()).collect();
        let bend = match (shape, &self.mixture) {
            (Shape::Plane, _) | (Shape::Twisted, Some(_)) => Bend::Flat,
            (Shape::Twisted, None) => Bend::Twisted,
            (Shape::Bent, _) => Bend::Bent,
        };
        let mut axes = surface(&names, bend);
        axes.terms.retain(|term| {
            let squared = term.factors.windows(2).any(|two| two[0] == two[1]);
            let of = |pick: fn(&Axis) -> bool| term.factors.iter().any(|at| pick(&self.axes[*at]));
            let alone = term.factors.len() < 2;
            let of_one_setting = term.factors.windows(2).any(|two| {
                let [one, other] = [two[0], two[1]].map(|at| self.axes[at].of);
                one != other && one.is_beside(other)
            });
            let later = of(|axis| axis.later);
            let bent_choice = squared && of(|axis| axis.is_choice);
            alone || !(of_one_setting || later || bent_choice)
        });
        let Some(own) = &self.mixture else {
            return axes;
        };
        let components = own.region.components.iter();
        let components: Vec<&str> = components.map(|one| one.name.as_str()).collect();
        let blending = match shape {
            Shape::Plane => Blending::Linear,
            Shape::Twisted | Shape::Bent => Blending::Quadratic,
        };
        added(&mixture(&components, blending), &axes)
    }

    /// Points from which the batches of a plan are chosen; what comes in later stays at its low
    /// end unless asked for.
    ///
    /// # Errors
    /// When the shares leave no room.
    pub fn candidates(&self, aim: Aim, with_later: bool) -> Result<Vec<Vec<f64>>, RegionError> {
        let mixes = match &self.mixture {
            None => vec![Vec::new()],
            Some(own) => pattern(&landmarks(&own.region)?, aim),
        };
        let runs = self.axis_points(aim, with_later, mixes.len());
        Ok(crossed(&mixes, &runs))
    }

    /// An even grid over all points.
    ///
    /// # Errors
    /// When the shares leave no room.
    pub fn everywhere(&self) -> Result<Vec<Vec<f64>>, RegionError> {
        let mut steps = 24;
        loop {
            let mixes = match &self.mixture {
                None => vec![Vec::new()],
                Some(own) => grid(&own.region, steps)?,
            };
            let each: Vec<usize> = self
                .axes
                .iter()
                .map(|axis| if axis.is_choice { 1 } else { steps })
                .collect();
            let runs: usize = each.iter().map(|steps| steps + 1).product();
            if runs.saturating_mul(mixes.len()) <= MOST_LOOKED_AT || steps <= 2 {
                let mut runs = levels(&each);
                runs.retain(|run| self.is_one_way(run));
                return Ok(crossed(&mixes, &runs));
            }
            steps -= 2;
        }
    }

    /// Whether a run takes one choice of each setting at most beside the first.
    fn is_one_way(&self, run: &[f64]) -> bool {
        let taken = run
            .iter()
            .zip(&self.axes)
            .filter(|(level, _)| **level > 0.0);
        let taken: Vec<Of> = taken.map(|(_, axis)| axis.of).collect();
        let mut pairs = taken.iter().enumerate();
        !pairs.any(|(at, one)| taken[at + 1..].iter().any(|other| one.is_beside(*other)))
    }

    fn axis_points(&self, aim: Aim, with_later: bool, mixes: usize) -> Vec<Vec<f64>> {
        let three = three_level(self.axes.len());
        let two_only = three.len() * mixes > MOST_CANDIDATES;
        let kept = three.into_iter().filter(|run| {
            run.iter().zip(&self.axes).all(|(level, axis)| {
                let middle = *level == 0.0 && (axis.is_choice || axis.later || two_only);
                !middle && (!axis.later || with_later || *level < 0.0)
            }) && self.is_one_way(run)
        });
        let drawn = kept.map(|run| {
            let each = run.iter().zip(&self.axes);
            each.map(|(level, axis)| match aim {
                Aim::Best if !axis.is_choice && !axis.later => level * HALF_WAY,
                _ => *level,
            })
            .collect()
        });
        drawn.collect()
    }
}

fn mixture_of(experiment: &Experiment) -> Option<Mixture> {
    let varying = experiment.parts.iter().enumerate();
    let parts: Vec<usize> = varying
        .filter(|(_, part)| part.varies())
        .map(|(at, _)| at)
        .collect();
    if parts.is_empty() {
        return None;
    }
    let still = experiment.parts.iter().filter(|part| !part.varies());
    let together = 100.0 - still.map(|part| part.low).sum::<f64>();
    let share = |at: &usize| {
        let part = &experiment.parts[*at];
        Component {
            name: part.name.clone(),
            low: part.low / together,
            high: (part.high / together).min(1.0),
        }
    };
    let plain: Vec<Component> = parts.iter().map(share).collect();
    let room = 1.0 - plain.iter().map(|one| one.low).sum::<f64>();
    let above = |one: &Component| Component {
        name: one.name.clone(),
        low: 0.0,
        high: ((one.high - one.low) / room).min(1.0),
    };
    let region = Region {
        components: plain.iter().map(above).collect(),
        limits: Vec::new(),
    };
    let plain = Region {
        components: plain,
        limits: Vec::new(),
    };
    Some(Mixture {
        parts,
        region,
        plain,
        together,
    })
}

fn pattern(landmarks: &Landmarks, aim: Aim) -> Vec<Vec<f64>> {
    let found = match aim {
        Aim::Best => landmarks.drawn_in(HALF_WAY),
        Aim::Learn => landmarks.all(),
    };
    found.into_iter().take(MOST_CANDIDATES).collect()
}

/// Every axis at each of so many even steps.
fn levels(each: &[usize]) -> Vec<Vec<f64>> {
    let mut runs: Vec<Vec<f64>> = vec![Vec::new()];
    for steps in each {
        let level = |step: usize| 2.0 * step as f64 / *steps as f64 - 1.0;
        let longer = runs
            .iter()
            .flat_map(|run| (0..=*steps).map(|step| [run.as_slice(), &[level(step)]].concat()));
        runs = longer.collect();
    }
    runs
}
