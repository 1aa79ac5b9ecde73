//! Where the casting freezes last, by the names of the solids that meet there, and what a core has
//! to do with it.

use mould::feeding::need::THIN_MODULUS;

use crate::job::Job;
use crate::part::Part;
use crate::placed_part::PlacedPart;
use crate::remark::of_core::CoreFact;
use crate::remark::of_feeding::FeedingFact;
use crate::words::said::Said;
use crate::work_out::ledger::Ledger;

/// Names the heaviest place of a part that is built from solids.
pub(super) fn hot_spot(job: &Job, given: &Part, part: &PlacedPart, ledger: &mut Ledger) {
    if part.is_uneven()
        && let Some(core) = job.cores.first()
        && let Some(contraction) = job.alloy.contraction_band()
    {
        ledger.note(CoreFact::Oversize {
            name: core.name.clone(),
            contraction: [contraction.low(), contraction.high()],
        });
    }
    if part.heaviest.modulus.high() <= THIN_MODULUS {
        return;
    }
    let meet = meeting(job, given, part);
    if !meet.is_empty() {
        let place = part.heaviest.place_mm;
        ledger.note(FeedingFact::HotSpot { meet, place });
    }
}

/// The solids whose metal the largest ball of the heaviest section touches, the nearest two, in the
/// order in which they are listed. One solid alone has no other to meet.
fn meeting(job: &Job, given: &Part, part: &PlacedPart) -> Vec<Said> {
    let Part::Solids(built) = given else {
        return Vec::new();
    };
    let heaviest = &part.heaviest;
    let known = heaviest.place_mm.zip(heaviest.inscribed).zip(part.turning);
    let Some(((place, ball), turning)) = known else {
        return Vec::new();
    };
    let place = turning.drawn(place);
    let added = built
        .shapes
        .iter()
        .enumerate()
        .filter(|(_, shape)| !shape.is_taken_away);
    if added.clone().count() < 2 {
        return Vec::new();
    }
    let mut near: Vec<(usize, f64)> = added
        .map(|(number, shape)| (number, shape.distance_mm(place)))
        .filter(|(_, away)| *away <= ball.as_mm() / 2.0)
        .collect();
    near.sort_by(|a, b| a.1.total_cmp(&b.1));
    near.truncate(2);
    near.sort_by_key(|(number, _)| *number);
    near.into_iter()
        .map(|(number, _)| called(job, number))
        .collect()
}

fn called(job: &Job, number: usize) -> Said {
    match job.solids.get(number).and_then(Option::as_ref) {
        Some(name) => Said::new("solid-named").with("name", name.as_str()),
        None => Said::new("solid-numbered").with("number", number + 1),
    }
}
