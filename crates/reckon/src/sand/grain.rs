//! Sizes of grains, and the air between them.

use measure::length::Length;
use measure::matter::Density;
use sand::grain::{
    GRAIN_SIZE, OPENNESS, UNIFORMITY, VOIDS, grain_size, openness, spread, uniformity, voids,
};

use super::air::told;
use super::{SILICA, STACK, sieving};
use crate::answer::Answer;
use crate::input::Input;
use crate::reckoner::Reckoner;

/// The size that a share of the grains passes.
pub(super) const SIZE: Reckoner = Reckoner {
    name: "grain-size",
    question: "Below which size does a share of the grains lie?",
    law: &GRAIN_SIZE,
    inputs: &[
        Input::of::<Length>("finer", "d_1", "opening of the finer sieve"),
        Input::share("passed_finer", "q_1", "share that passed it"),
        Input::of::<Length>("coarser", "d_2", "opening of the coarser sieve"),
        Input::share("passed_coarser", "q_2", "share that passed it"),
        Input::share("share", "q", "share asked for").or("50 %", "common-practice"),
    ],
    example: &[
        ("finer", "0.15 mm"),
        ("passed_finer", "30 %"),
        ("coarser", "0.212 mm"),
        ("passed_coarser", "60 %"),
    ],
    cautions: &[],
    work: |given| {
        let (low, high) = (given.number("passed_finer"), given.number("passed_coarser"));
        let share = given.number("share");
        let (finer, coarser): (Length, Length) = (given.get("finer"), given.get("coarser"));
        if finer >= coarser || finer <= Length::ZERO || low >= high {
            return given.refuse("finer", "is not the finer sieve", "exchange the two");
        }
        if !(low..=high).contains(&share) {
            return given.refuse("share", "does not lie between the two", "take other sieves");
        }
        let size = grain_size((finer, low), (coarser, high), share);
        Ok(vec![Answer::of("size", size).between(finer, coarser)])
    },
};

/// Evenness, and the sizes of a sieving.
pub(super) const EVEN: Reckoner = Reckoner {
    name: "grain-evenness",
    question: "How even are the grains, from what stays on the sieves?",
    law: &UNIFORMITY,
    inputs: STACK,
    example: &[
        ("sieves", "30, 40, 50, 70, 100, 140"),
        ("kept", "2 g, 6 g, 12 g, 13.5 g, 9 g, 4 g"),
        ("pan", "1 g"),
    ],
    cautions: &[SILICA],
    work: |given| {
        let spread = told(given, "kept", spread(&sieving(given)?))?;
        let size = |share: f64| spread.size(share).map(|band| band.likely());
        match (size(0.1), size(0.5), size(0.6)) {
            (Some(ten), Some(half), Some(sixty)) => Ok(vec![
                Answer::number("uniformity", uniformity(sixty, ten)),
                Answer::of("d10", ten),
                Answer::of("d50", half),
                Answer::of("d60", sixty),
            ]),
            _ => given.refuse(
                "sieves",
                "leave a tenth or more outside",
                "add a finer sieve",
            ),
        }
    },
};

/// Air in a bed.
pub(super) const AIR: Reckoner = Reckoner {
    name: "voids",
    question: "How much of the rammed sand is air?",
    law: &VOIDS,
    inputs: &[Input::of::<Density>(
        "sand_density",
        "ρ_dry",
        "dry sand as it lies",
    )],
    example: &[("sand_density", "1.6 g/cm3")],
    cautions: &[],
    work: |given| {
        let air = voids(given.get("sand_density"));
        match air > 0.0 {
            true => Ok(vec![Answer::share("voids", air)]),
            false => given.refuse("sand_density", "is denser than quartz", "weigh it again"),
        }
    },
};

/// How open a clean sand is.
pub(super) const OPEN: Reckoner = Reckoner {
    name: "openness",
    question: "How open would a clean sand of this grain stand?",
    law: &OPENNESS,
    inputs: &[
        Input::of::<Length>("grain", "d", "mean grain: reckon grain-evenness"),
        Input::share("voids", "e", "air between the grains").or("38 %", "common-practice"),
    ],
    example: &[("grain", "0.22 mm")],
    cautions: &[],
    work: |given| {
        let air = given.number("voids");
        if !(0.0..1.0).contains(&air) {
            return given.refuse("voids", "is no share of a bed", "give some 35 to 45 %");
        }
        given.doubt("clay and water close it: measure it with the bottle");
        Ok(vec![Answer::number(
            "permeability",
            openness(given.get("grain"), air),
        )])
    },
};
