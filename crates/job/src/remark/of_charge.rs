//! What is found in a charge and in the heaps it is made from.

use metal::charge_makeup::element::Element;
use metal::charge_makeup::heap::{Heap, Mark, Origin};
use metal::charge_makeup::makeup::MakeUpError;
use metal::charge_makeup::measured::Measured;

use super::Remark;
use super::of_metal::MetalFact;
use crate::charge::Made;
use crate::charge::not_made::not_made;
use crate::job_file::Serves;
use crate::words::said::Said;

/// What is found in a charge.
#[derive(Clone, Debug, PartialEq)]
pub enum ChargeFact {
    /// What clings to a heap that is charged.
    Marked(String, Mark),
    /// A heap does not state elements that the target limits.
    Unstated(String, Vec<Element>),
    /// Some heaps have prices and these have none.
    NoPrice(Vec<String>),
    /// The scale is too coarse to keep these in target.
    OffByScale(Vec<Measured>),
    /// The charge is not sure to come out in target.
    Unsure,
    /// The melt has to be tried before it is poured.
    TryIt,
    /// The heaps do not make the charge.
    NotMade(Said),
}

/// A charge less sure than this is one to try before it is poured.
const SURE: f64 = 0.9;

/// What is to be said of a charge.
pub fn remarks(made: &Made) -> Vec<Remark> {
    let makeup = &made.makeup;
    let used = || {
        makeup
            .weighed
            .iter()
            .filter_map(|weighed| made.heaps.get(weighed.heap))
    };
    let mut remarks: Vec<Remark> = Vec::new();
    if made.asked.serves == Serves::Food && used().any(may_poison) {
        remarks.push(MetalFact::LeadInFood.into());
    }
    if made.asked.loss.guessed {
        remarks.push(MetalFact::LossUnknown.into());
    }
    for heap in used() {
        let marks = heap.marks.iter();
        remarks.extend(marks.map(|mark| ChargeFact::Marked(heap.name.clone(), *mark).into()));
    }
    if makeup.chance.share < SURE {
        remarks.push(ChargeFact::Unsure.into());
    }
    if !makeup.off_by_scale.is_empty() {
        remarks.push(ChargeFact::OffByScale(makeup.off_by_scale.clone()).into());
    }
    let unstated = makeup.unstated.iter().cloned();
    remarks.extend(unstated.map(|(heap, elements)| ChargeFact::Unstated(heap, elements).into()));
    let unpriced: Vec<_> = used()
        .filter(|heap| heap.price.is_none())
        .map(|heap| heap.name.clone())
        .collect();
    if makeup.cost.is_some() && !unpriced.is_empty() {
        remarks.push(ChargeFact::NoPrice(unpriced).into());
    }
    remarks.push(ChargeFact::TryIt.into());
    remarks
}

/// What no cookware is cast from: scrap whose past nobody knows, lead, zinc and plating.
fn may_poison(heap: &Heap) -> bool {
    let bad = |mark: &Mark| !matches!(mark, Mark::Damp);
    heap.origin == Origin::Scrap || heap.marks.iter().any(bad)
}

impl From<ChargeFact> for Remark {
    fn from(fact: ChargeFact) -> Remark {
        match fact {
            ChargeFact::Marked(heap, mark) => marked(mark).with("heap", heap),
            ChargeFact::Unstated(heap, elements) => {
                let names = elements.into_iter().map(Measured::Of).map(element);
                Remark::note("charge_unstated", "charge")
                    .with("heap", heap)
                    .with("elements", names.collect::<Vec<_>>())
            }
            ChargeFact::NoPrice(heaps) => {
                Remark::note("charge_no_price", "charge").with("heaps", heaps.join(", "))
            }
            ChargeFact::OffByScale(off) => {
                let names: Vec<Said> = off.into_iter().map(element).collect();
                Remark::caution("charge_scale", "charge").with("elements", names)
            }
            ChargeFact::Unsure => Remark::caution("charge_unsure", "charge"),
            ChargeFact::TryIt => Remark::note("charge_try", "charge"),
            ChargeFact::NotMade(words) => {
                Remark::caution("charge_not_made", "charge").with("why", words)
            }
        }
    }
}

impl From<MakeUpError> for ChargeFact {
    fn from(error: MakeUpError) -> ChargeFact {
        ChargeFact::NotMade(not_made(&error))
    }
}

/// What clings to a heap: damp throws the melt out, the rest poisons or spoils.
fn marked(mark: Mark) -> Remark {
    match mark {
        Mark::Galvanised => Remark::caution("charge_galvanised", "charge"),
        Mark::Leaded => Remark::caution("charge_leaded", "charge"),
        Mark::Painted => Remark::caution("charge_painted", "charge"),
        Mark::Oily => Remark::caution("charge_oily", "charge"),
        Mark::Plated => Remark::caution("charge_plated", "charge"),
        Mark::Damp => Remark::stop("charge_damp", "charge"),
    }
}

/// The name of an element, or of the carbon equivalent.
pub(crate) fn element(of: Measured) -> Said {
    Said::new(format!("element-{}", of.symbol()))
}
