//! What is left on the pattern, and how near to size the casting comes: tolerance, machining stock,
//! draught, and what a worn or rapped pattern makes of the contraction.

use measure::band::Band;
use measure::length::Length;
use metal::alloy::{Alloy, Family};
use pattern::cast_metal::CastMetal;
use pattern::contraction::{
    CASTING_LENGTH, RAPPED_LENGTH, SMALL_PATTERN, casting_length, growth_sideways, pattern_length,
};
use pattern::draft::{Side, Skin, WANTED, wanted};
use pattern::machining_stock::{FaceUp, REQUIRED, between_grades, usual_grades};
use pattern::original::{MASTER_LENGTH, SHIM, master_length, shim};
use pattern::tolerance::{GRADES, Moulding, either_way};

use crate::amount::Amount;
use crate::job::Job;
use crate::job_file::PatternFrom;
use crate::placed_part::PlacedPart;
use crate::remark::of_pattern::PatternFact;
use crate::words::said::Said;
use crate::work_out::ledger::{Entry, Ledger};
use crate::work_out::told::{band, exact, share, word};

/// Writes the allowances of a part whose metal contracts by this much.
pub(super) fn allowances(job: &Job, part: &PlacedPart, s: &Band<f64>, ledger: &mut Ledger) {
    let longest = longest(part);
    from_what(job, longest, s, ledger);
    if let Some(metal) = cast_metal(job.alloy) {
        tolerance(metal, longest, ledger);
        if job.pattern.machined {
            stock(metal, longest, ledger);
        }
    }
    draft(part, ledger);
}

/// The longest side of the box around the part.
pub(super) fn longest(part: &PlacedPart) -> Length {
    part.extents.into_iter().fold(Length::ZERO, Length::max)
}

/// The metal as the tables of allowances know it; pewter has no row in them.
fn cast_metal(alloy: &Alloy) -> Option<CastMetal> {
    match alloy.family {
        Family::Aluminium => Some(CastMetal::Aluminium),
        Family::Copper if alloy.name.to_lowercase().contains("brass") => Some(CastMetal::Brass),
        Family::Copper => Some(CastMetal::Bronze),
        Family::Zinc => Some(CastMetal::Zinc),
        Family::Iron => Some(CastMetal::GreyIron),
        Family::Tin => None,
    }
}

/// How far the longest size may come out either way, over the grades that hand moulding holds.
fn tolerance(metal: CastMetal, longest: Length, ledger: &mut Ledger) {
    let Ok(held) = either_way(Moulding::ClayBonded, metal, longest) else {
        return;
    };
    let grades = held.grades;
    ledger.write(
        Entry::new(
            "tolerance on the longest size",
            Amount::Length(held.band),
            &GRADES,
        )
        .answer("either way")
        .input("size", exact(longest))
        .input("metal", word(metal.word()))
        .input("moulding", word(Moulding::ClayBonded.word()))
        .seen(&[grades.source, held.source])
        .up()
        .because(
            Said::new("because-grades")
                .with("fine", usize::from(grades.fine.number()))
                .with("coarse", usize::from(grades.coarse.number())),
        ),
    );
}

/// Stock on a machined face, below and under the cope, over the grades usual for the metal.
fn stock(metal: CastMetal, longest: Length, ledger: &mut Ledger) {
    let Some(grades) = usual_grades(metal) else {
        return;
    };
    let [fine, coarse] = grades;
    let faces = [
        (
            "machining stock below or at the side",
            "drag or side face",
            FaceUp::DragOrSide,
        ),
        ("machining stock under the cope", "cope face", FaceUp::Cope),
    ];
    for (name, answer, face) in faces {
        let Ok(stock) = between_grades(longest, grades, face) else {
            continue;
        };
        ledger.write(
            Entry::new(name, Amount::Length(stock), &REQUIRED)
                .answer(answer)
                .input("largest", exact(longest))
                .input("metal", word(metal.word()))
                .up()
                .because(
                    Said::new("because-stock")
                        .with("fine", fine.to_string())
                        .with("coarse", coarse.to_string()),
                ),
        );
    }
    ledger.note(PatternFact::MachinedFaces);
}

/// The draught that the deeper of the two draws asks for.
fn draft(part: &PlacedPart, ledger: &mut Ledger) {
    let height = part.extents[2];
    let depth = part.joint.max(height - part.joint);
    // What the pattern is made of is not known: wood and printed layers want most.
    if let Ok(draft) = wanted(depth, Skin::Wood, Side::Outside) {
        ledger.write(
            Entry::new(
                "draught on the deepest wall",
                Amount::Length(Band::exact(draft)),
                &WANTED,
            )
            .input("depth", exact(depth))
            .input("skin", word("wood"))
            .input("side", word("outside"))
            .up()
            .because(Said::new("because-draught")),
        );
    }
}

/// What the pattern is made from, as far as it changes its size.
fn from_what(job: &Job, longest: Length, s: &Band<f64>, ledger: &mut Ledger) {
    let made = &job.pattern;
    if made.from == PatternFrom::WornOriginal {
        worn_original(longest, s, ledger);
    }
    if let Some(own) = &made.pattern_contraction {
        let master = s.map(|s| master_length(longest, s, own.ratio));
        ledger.write(
            Entry::new("master length", Amount::Length(master), &MASTER_LENGTH)
                .input("part", exact(longest))
                .input("contraction", share(s))
                .input("of_pattern", share(&Band::exact(own.ratio)))
                .because(Said::new("because-master")),
        );
    }
    if made.rapped && longest <= SMALL_PATTERN {
        let across = growth_sideways(longest, s).map(|growth| pattern_length(longest, growth));
        ledger.write(
            Entry::new(
                "pattern length, rapped",
                Amount::Length(across),
                &RAPPED_LENGTH,
            )
            .input("part", exact(longest))
            .input("contraction", share(s))
            .because(Said::new("because-rapped")),
        );
    } else if made.rapped {
        ledger.note(PatternFact::RappingNotCounted { longest });
    }
}

/// The mesh is the worn original: what comes of moulding it, and what makes it a pattern.
fn worn_original(longest: Length, s: &Band<f64>, ledger: &mut Ledger) {
    let comes_out = s.map(|s| casting_length(longest, s));
    ledger.write(
        Entry::new(
            "casting from the original as it is",
            Amount::Length(comes_out),
            &CASTING_LENGTH,
        )
        .input("pattern", exact(longest))
        .input("contraction", share(s)),
    );
    let wanted = s.map(|s| pattern_length(longest, s));
    let laid_on = wanted.map(|wanted| shim(wanted, longest) * 0.5);
    ledger.write(
        Entry::new(
            "laid on each end of the original",
            Amount::Length(laid_on),
            &SHIM,
        )
        .answer("on each of two faces")
        .input("pattern", band(&wanted))
        .input("original", exact(longest))
        .because(Said::new("because-shim")),
    );
    ledger.note(PatternFact::WornOriginal { longest, comes_out });
}
