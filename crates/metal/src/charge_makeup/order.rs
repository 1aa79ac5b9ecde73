//! In what order a charge goes into the crucible.

use crate::charge_makeup::heap::{Heap, Origin};
use crate::charge_makeup::makeup::Weighed;

/// What is taken of the heaps in the order of charging: returns as a cushion on the bottom, then
/// clean metal, the heaviest first, then what is coated or dirty, additions last.
///
/// The cushion keeps ingot from knocking a cold crucible: `crucible-care-page`,
/// `cushion-thread`. Ingot goes in loose and upright, since it grows more than the crucible.
pub fn order_of_charging<'a>(weighed: &'a [Weighed], heaps: &[Heap]) -> Vec<&'a Weighed> {
    let mut order: Vec<&Weighed> = weighed.iter().collect();
    order.sort_by(|a, b| {
        let turn = |of: &Weighed| heaps.get(of.heap).map(turn);
        let heaviest_first = b.mass.as_kg().total_cmp(&a.mass.as_kg());
        turn(a).cmp(&turn(b)).then(heaviest_first)
    });
    order
}

fn turn(heap: &Heap) -> usize {
    match heap.origin {
        Origin::Addition => 3,
        _ if !heap.marks.is_empty() => 2,
        Origin::Returns => 0,
        Origin::Ingot | Origin::Scrap => 1,
    }
}
