//! The part as it is known: drawn, built from solids, or weighed and measured with a rule.

use measure::band::Band;
use measure::length::Volume;
use measure::matter::{Density, Mass};
use measure::source::Law;
use measure::text::ranged::Ranged;
use pattern::displacement::{READING, VOLUME_IN_WATER, volume_in_water, water};
use pattern::look::{Looked, Verdict};
use pattern::material::{VOLUME_BY_WEIGHT, volume_by_weight};
use pattern::rough::{FiveSizes, VOLUME_OF_SIZES};
use pattern::shape::Built;

/// A part, by the way in which it is known.
#[derive(Clone, Debug)]
pub enum Part {
    /// A mesh, looked at.
    Mesh(Looked),
    /// Plain solids, built.
    Solids(Built),
    /// Five sizes, with or without a weighing.
    Rough(RoughPart),
}

/// A part of which only sizes are known, and perhaps what it weighs.
#[derive(Clone, Debug)]
pub struct RoughPart {
    /// The sizes.
    pub sizes: FiveSizes,
    /// How its metal is known.
    pub weighing: Weighing,
}

/// How the metal of a part without a drawing is known.
#[derive(Clone, Debug)]
pub enum Weighing {
    /// Not at all: it is guessed from the sizes.
    Guessed,
    /// By its weight and what it is made of.
    Weighed {
        /// On the scale.
        mass: Ranged<Mass>,
        /// The material, in words.
        of: String,
        /// Its density.
        density: Band<Density>,
        /// Keys of the sources of the density.
        sources: Vec<String>,
    },
    /// By the water it pushes out.
    Displaced {
        /// What was typed, in words.
        words: String,
        /// In air; nought where only the water was weighed.
        in_air: Band<Mass>,
        /// In water; below nought where it was pushed under.
        in_water: Band<Mass>,
    },
}

impl Part {
    /// The mesh and what was found in it, where there is one.
    pub fn looked(&self) -> Option<&Looked> {
        match self {
            Part::Mesh(looked) => Some(looked),
            Part::Solids(built) => Some(&built.looked),
            Part::Rough(_) => None,
        }
    }

    /// The mesh that has to be settled before there is a plan.
    pub fn unsettled(&self) -> Option<&Looked> {
        self.looked().filter(|looked| !is_taken(looked))
    }
}

/// Whether a mesh may go on to a plan.
pub fn is_taken(looked: &Looked) -> bool {
    matches!(looked.verdict, Verdict::Accepted | Verdict::Healed)
}

impl RoughPart {
    /// The metal where it was weighed, nothing where it has to be guessed.
    pub fn weighed(&self) -> Option<Band<Volume>> {
        match &self.weighing {
            Weighing::Guessed => None,
            Weighing::Weighed { mass, density, .. } => {
                Some(mass.band.with(density, volume_by_weight))
            }
            Weighing::Displaced {
                in_air, in_water, ..
            } => {
                let water = water().value;
                let volume = in_air.with_two(in_water, &water, volume_in_water);
                Some(Band::new(
                    volume.low() * (1.0 - READING),
                    volume.likely(),
                    volume.high() * (1.0 + READING),
                ))
            }
        }
    }

    /// How the metal is known, in a few words.
    pub fn known(&self) -> String {
        match &self.weighing {
            Weighing::Guessed => format!("five sizes and the word {}", self.sizes.shape.name),
            Weighing::Weighed { mass, of, .. } => format!("weighed: {} of {of}", mass.typed),
            Weighing::Displaced { words, .. } => format!("weighed in water: {words}"),
        }
    }

    /// The law by which the metal is known.
    pub fn law(&self) -> &'static Law {
        match &self.weighing {
            Weighing::Guessed => &VOLUME_OF_SIZES,
            Weighing::Weighed { .. } => &VOLUME_BY_WEIGHT,
            Weighing::Displaced { .. } => &VOLUME_IN_WATER,
        }
    }

    /// Keys of the sources of what went in.
    pub fn sources(&self) -> Vec<String> {
        match &self.weighing {
            Weighing::Guessed => vec![self.sizes.shape.source.clone()],
            Weighing::Weighed { sources, .. } => sources.clone(),
            Weighing::Displaced { .. } => vec![water().source],
        }
    }
}
