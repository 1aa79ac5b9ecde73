//! A worn original as the pattern, and a pattern that was itself cast.

use measure::length::Length;
use pattern::contraction::casting_length;
use pattern::original::{
    BUILT_UP_LENGTH, MASTER_LENGTH, SHIM, built_up_length, master_length, shim,
};

use super::CONTRACTION;
use crate::answer::Answer;
use crate::input::{Input, Wanted};
use crate::reckoner::Reckoner;

/// The master for a working pattern cast in metal.
pub(super) const MASTER: Reckoner = Reckoner {
    name: "master-length",
    question: "How large must the master be if the working pattern is itself cast?",
    law: &MASTER_LENGTH,
    inputs: &[
        Input::of::<Length>("part", "L_part", "length of the finished casting"),
        Input::metal(),
        Input {
            symbol: "s_part",
            ..CONTRACTION
        },
        Input::new(
            "of_pattern",
            "s_pattern",
            "contraction of the metal of the working pattern",
            Wanted::Contraction,
        ),
    ],
    example: &[
        ("part", "125 mm"),
        ("metal", "gunmetal"),
        ("of_pattern", "1.3 %"),
    ],
    cautions: &[],
    work: |given| {
        let (part, of_part): (Length, f64) = (given.get("part"), given.number("contraction"));
        let master = master_length(part, of_part, given.number("of_pattern"));
        let working = casting_length(master, given.number("of_pattern"));
        Ok(vec![
            Answer::of("master", master),
            Answer::of("working pattern", working),
            Answer::of("growth of the master", master - part),
        ])
    },
};

/// A worn original built up to serve as the pattern.
pub(super) const BUILT_UP: Reckoner = Reckoner {
    name: "original-built-up",
    question: "To what size must a worn original be built up to serve as the pattern?",
    law: &BUILT_UP_LENGTH,
    inputs: &[
        Input::of::<Length>("original", "L_original", "the length as it is now"),
        Input::of::<Length>("wear", "w", "worn off over the whole length")
            .or("0 mm", "common-practice")
            .narrowed_by("measure where nothing rubbed: under a bolt head, in a corner"),
        Input::of::<Length>("machining", "z", "to be machined off over the whole length")
            .or("0 mm", "common-practice"),
        Input::metal(),
        CONTRACTION,
    ],
    example: &[
        ("original", "100 mm"),
        ("wear", "0.2 to 0.5 mm"),
        ("machining", "3 mm"),
        ("metal", "grey iron"),
    ],
    cautions: &["Old paint on the original may hold lead: do not sand it dry."],
    work: |given| {
        let (original, s): (Length, f64) = (given.get("original"), given.number("contraction"));
        let pattern = built_up_length(original, given.get("wear"), given.get("machining"), s);
        let laid_on = shim(pattern, original);
        given.doubt(
            "a casting used as the pattern has contracted once already: used as it is, the new one \
             is smaller by the contraction and the wear",
        );
        Ok(vec![
            Answer::of("pattern", pattern),
            Answer::of("laid on in all", laid_on),
            Answer::of("on each of two faces", laid_on * 0.5),
            Answer::of("casting if used as it is", casting_length(original, s)),
        ])
    },
};

/// What is laid on the faces.
pub(super) const SHIMS: Reckoner = Reckoner {
    name: "shim",
    question: "How much must be laid on the faces of an original?",
    law: &SHIM,
    inputs: &[
        Input::of::<Length>("pattern", "L_pattern", "length that the pattern needs"),
        Input::of::<Length>("original", "L_original", "the length as it is now"),
    ],
    example: &[("pattern", "104.6 mm"), ("original", "100 mm")],
    cautions: &[],
    work: |given| {
        let (pattern, original): (Length, Length) = (given.get("pattern"), given.get("original"));
        if pattern < original {
            return given.refuse("pattern", "is smaller than the original", "file it down");
        }
        let laid_on = shim(pattern, original);
        Ok(vec![
            Answer::of("in all", laid_on),
            Answer::of("on each of two faces", laid_on * 0.5),
        ])
    },
};
