//! How much the metal contracts, and what that makes of pattern and casting.

use measure::band::Band;
use measure::length::Length;
use measure::text::rounded;
use pattern::contraction::{
    BY_SIZE, Build, CASTING_LENGTH, FROM_CASTINGS, Measured, RAPPED_LENGTH, SCATTER, SMALL_PATTERN,
    by_size, casting_length, from_castings, growth_sideways, pattern_length, rapped_length,
};
use pattern::shrink_rule::{ONE_IN, PER_FOOT, one_in, per_foot};

use super::{CONTRACTION, METALS, metal_of};
use crate::answer::Answer;
use crate::input::{Input, Wanted};
use crate::reckoner::Reckoner;

/// The casting that a pattern gives.
pub(super) const CASTING: Reckoner = Reckoner {
    name: "casting-length",
    question: "How large does the casting come out if this is used as the pattern?",
    law: &CASTING_LENGTH,
    inputs: &[
        Input::of::<Length>(
            "pattern",
            "L_pattern",
            "length of the pattern, or of an original",
        ),
        Input::metal(),
        CONTRACTION,
    ],
    example: &[("pattern", "280 mm"), ("metal", "grey iron")],
    cautions: &[],
    work: |given| {
        let pattern = given.get("pattern");
        let casting = casting_length(pattern, given.number("contraction"));
        given.doubt("rapping and soft ramming make it larger, cores hold it back");
        Ok(vec![
            Answer::of("casting", casting),
            Answer::of("smaller by", pattern - casting),
            Answer::of("scatter either way", casting * SCATTER),
        ])
    },
};

/// A small pattern that is rapped.
pub(super) const RAPPED: Reckoner = Reckoner {
    name: "pattern-rapped",
    question: "How large must a small pattern be that is rapped before it is drawn?",
    law: &RAPPED_LENGTH,
    inputs: &[
        Input::of::<Length>("part", "L_part", "length of the finished casting"),
        Input::metal(),
        CONTRACTION,
        Input::of::<Length>(
            "play",
            "p",
            "how much rapping widens the mould, both sides together",
        )
        .optional()
        .narrowed_by("rap the pattern as ever and measure the hole it leaves"),
    ],
    example: &[
        ("part", "60 mm"),
        ("metal", "Al-Si7-Mg"),
        ("play", "0.4 to 0.8 mm"),
    ],
    cautions: &[],
    work: |given| {
        let (part, s) = (given.get::<Length>("part"), given.number("contraction"));
        if part > SMALL_PATTERN {
            given.doubt("on patterns above about 75 mm rapping is not counted on");
        }
        let across = match given.find("play") {
            Some(play) => Answer::of("across the draw", rapped_length(part, s, play)),
            None => {
                let growth = growth_sideways(part, &Band::exact(s));
                let size = |growth: f64| pattern_length(part, growth);
                Answer::of("across the draw", size(growth.likely()))
                    .between(size(growth.low()), size(growth.high()))
            }
        };
        Ok(vec![
            across,
            Answer::of("along the draw", pattern_length(part, s)),
        ])
    },
};

/// The table of contraction by size.
pub(super) const BY_SIZE_AND_CORES: Reckoner = Reckoner {
    name: "contraction-by-size",
    question: "What contraction does the old table give for this metal and size?",
    law: &BY_SIZE,
    inputs: &[
        Input::choice("metal", "the metal of the casting", METALS),
        Input::of::<Length>("size", "L", "largest length of the casting"),
        Input::choice("build", "whether cores hold it back", &["open", "cored"])
            .or("open", "common-practice"),
    ],
    example: &[("metal", "grey-iron"), ("size", "320 mm")],
    cautions: &[],
    work: |given| {
        let build = match given.words("build") {
            "cored" => Build::Cored,
            _ => Build::Open,
        };
        let metal = metal_of(given)?;
        match by_size(metal, given.get("size"), build) {
            Some(row) => {
                let band = row.value;
                let (low, high) = (band.low(), band.high());
                Ok(vec![
                    Answer::share("contraction", band.likely()).from_to(low, high),
                    Answer::number("inches in each foot", per_foot(band.likely()))
                        .from_to(per_foot(low), per_foot(high)),
                ])
            }
            None => given.refuse(
                "metal",
                format!("{metal} has no row in this table"),
                "take the figures that stand with the alloy: reckon pattern-length",
            ),
        }
    },
};

/// Contraction from castings of one's own.
pub(super) const OWN: Reckoner = Reckoner {
    name: "own-contraction",
    question: "What is my own contraction, from castings measured against their patterns?",
    law: &FROM_CASTINGS,
    inputs: &[
        Input::list::<Length>("pattern", "L_pattern", "a length on each pattern"),
        Input::list::<Length>("casting", "L_casting", "the same length on each casting"),
    ],
    example: &[
        ("pattern", "100 mm, 100 mm, 100 mm"),
        ("casting", "98.82 mm, 98.75 mm, 98.69 mm"),
    ],
    cautions: &[],
    work: |given| {
        let patterns = given.list::<Length>("pattern");
        let castings = given.list::<Length>("casting");
        if patterns.len() != castings.len() {
            let why = format!(
                "has {} lengths for {} patterns",
                castings.len(),
                patterns.len()
            );
            return given.refuse("casting", why, "give one casting for each pattern");
        }
        let pairs = patterns.into_iter().zip(castings);
        let measured: Vec<_> = pairs
            .map(|(pattern, casting)| Measured { pattern, casting })
            .collect();
        match from_castings(&measured) {
            Ok(band) => {
                if band.low() == band.high() {
                    given.doubt("all castings measure alike: read them finer to see the scatter");
                }
                Ok(vec![
                    Answer::share("contraction", band.likely()).from_to(band.low(), band.high()),
                    Answer::number("inches in each foot", per_foot(band.likely()))
                        .from_to(per_foot(band.low()), per_foot(band.high())),
                ])
            }
            Err(fault) => given.refuse("casting", fault.to_string(), "measure more of them"),
        }
    },
};

/// A contraction as inches in each foot.
pub(super) const IN_FOOT: Reckoner = Reckoner {
    name: "contraction-per-foot",
    question: "How many inches in each foot is a contraction?",
    law: &PER_FOOT,
    inputs: &[Input::new(
        "contraction",
        "s",
        "per cent, inches per foot, or one in so many",
        Wanted::Contraction,
    )],
    example: &[("contraction", "1.3 %")],
    cautions: &[],
    work: |given| {
        let contraction = given.number("contraction");
        Ok(vec![
            Answer::number("inches in each foot", per_foot(contraction)),
            Answer::words("nearest rule", nearest_rule(contraction)),
            Answer::share("contraction", contraction),
        ])
    },
};

/// A contraction as one in so many.
pub(super) const ONE_IN_SO_MANY: Reckoner = Reckoner {
    name: "contraction-one-in",
    question: "One in how many is a contraction?",
    law: &ONE_IN,
    inputs: &[Input::new(
        "contraction",
        "s",
        "per cent, inches per foot, or one in so many",
        Wanted::Contraction,
    )],
    example: &[("contraction", "1/8 in per ft")],
    cautions: &[],
    work: |given| {
        let contraction = given.number("contraction");
        if contraction <= 0.0 {
            return given.refuse("contraction", "is nought", "a plain rule serves");
        }
        Ok(vec![
            Answer::number("one in", one_in(contraction)),
            Answer::share("contraction", contraction),
        ])
    },
};

/// The nearest contraction in 64ths of an inch to the foot, and how far off it is.
fn nearest_rule(contraction: f64) -> String {
    let parts = (per_foot(contraction) * 64.0).round();
    let mut lower = (parts as u32, 64u32);
    while lower.0 > 0 && lower.0.is_multiple_of(2) && lower.1 > 1 {
        lower = (lower.0 / 2, lower.1 / 2);
    }
    let off = 100.0 * (contraction - parts / 64.0 / 12.0).abs();
    format!(
        "{}/{} in per ft, {} % off",
        lower.0,
        lower.1,
        rounded(off, 2)
    )
}
