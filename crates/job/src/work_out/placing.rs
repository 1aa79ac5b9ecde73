//! The part laid in the mould, and how well it is known.

use pattern::look::Looked;
use pattern::shape::ShapeFact;

use crate::amount::Amount;
use crate::job::Job;
use crate::part::{Part, RoughPart, Weighing};
use crate::placed_part::PlacedPart;
use crate::remark::of_part::PartFact;
use crate::remark::of_pattern::PatternFact;
use crate::words::said::Said;
use crate::work_out::ledger::{Entry, Ledger};
use crate::work_out::told::{band, exact, number, text};

/// The part laid in the mould.
pub(super) fn placed(job: &Job, part: &Part) -> PlacedPart {
    match part {
        Part::Mesh(looked) => PlacedPart::of(&looked.mesh, job.up, job.joint),
        Part::Solids(built) => PlacedPart {
            known: format!("built from {} solid(s)", built.shapes.len()),
            ..PlacedPart::of(&built.looked.mesh, job.up, job.joint)
        },
        Part::Rough(rough) => PlacedPart::of_sizes(rough, job.joint),
    }
}

/// What is worth telling of it.
pub(super) fn told(job: &Job, part: &Part, placed: &PlacedPart, ledger: &mut Ledger) {
    draws(job, ledger);
    match part {
        Part::Mesh(looked) => voids(looked, ledger),
        Part::Solids(built) => {
            for fact in &built.facts {
                ledger.note(fact_of(*fact));
            }
            voids(&built.looked, ledger);
        }
        Part::Rough(rough) => {
            metal(rough, placed, ledger);
            doubts(job, rough, placed, ledger);
        }
    }
}

fn voids(looked: &Looked, ledger: &mut Ledger) {
    if looked.solid.voids > 0 {
        ledger.note(PatternFact::SealedVoid {
            count: looked.solid.voids,
        });
    }
}

/// What the founder says of the pattern's way out of the sand.
fn draws(job: &Job, ledger: &mut Ledger) {
    if let Some(layer) = job.pattern.printed {
        ledger.note(PatternFact::Printed { layer });
    }
    for what in &job.pattern.cannot_draw {
        let what = what.clone();
        ledger.note(PatternFact::CannotDraw { what });
    }
}

fn fact_of(fact: ShapeFact) -> PartFact {
    match fact {
        ShapeFact::Apart { bodies } => PartFact::SolidsApart { bodies },
        ShapeFact::AddsNothing { number } => PartFact::SolidAddsNothing { number },
        ShapeFact::TakesNothing { number } => PartFact::SolidTakesNothing { number },
    }
}

/// The metal of a part that was not drawn, with the law by which it is known.
fn metal(rough: &RoughPart, placed: &PlacedPart, ledger: &mut Ledger) {
    let [length, width, height] = rough.sizes.extents.map(text);
    let mut entry = Entry::new("part volume", Amount::Volume(placed.volume), rough.law())
        .seen(&rough.sources())
        .because(Said::typed(placed.known.as_str()));
    match &rough.weighing {
        Weighing::Guessed => {
            let (spanned, thickness) = rough.sizes.spanned();
            entry = entry
                .input("spanned", exact(spanned))
                .input("thickness", band(&thickness))
                .input("covered", number(&rough.sizes.shape.covers))
                .input("room", exact(rough.sizes.box_volume()));
        }
        Weighing::Weighed { mass, density, .. } => {
            entry = entry
                .input("mass", band(&mass.band))
                .input("density", band(density))
                .beside("as weighed", mass.typed.clone());
        }
        Weighing::Displaced {
            in_air, in_water, ..
        } => {
            entry = entry
                .input("in_air", band(in_air))
                .input("in_water", band(in_water))
                .input("water", band(&pattern::displacement::water().value));
        }
    }
    ledger.write(entry.beside("sizes", format!("{length} x {width} x {height}")));
}

/// A volume known to this share or better is as good as any drawing.
const WELL_KNOWN: f64 = 0.04;

fn doubts(job: &Job, rough: &RoughPart, placed: &PlacedPart, ledger: &mut Ledger) {
    let volume = &placed.volume;
    let off = (volume.high() / volume.likely() - 1.0).max(1.0 - volume.low() / volume.likely());
    match &rough.weighing {
        Weighing::Guessed => ledger.note(PartFact::VolumeGuessed {
            from_to: [volume.low(), volume.high()],
        }),
        Weighing::Weighed { .. } if off > WELL_KNOWN => {
            ledger.note(PartFact::VolumeByWeight { off });
        }
        Weighing::Weighed { .. } | Weighing::Displaced { .. } => {}
    }
    ledger.note(PartFact::SizesOnly {
        joint_asked: job.joint.is_some(),
    });
}
