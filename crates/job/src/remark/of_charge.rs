//! The words for what is found in a charge and in the heaps it is made from.

use metal::charge_makeup::element::Element;
use metal::charge_makeup::heap::{Heap, Mark, Origin};
use metal::charge_makeup::makeup::MakeUpError;

use super::of_metal::MetalFact;
use super::{Level, Remark};
use crate::charge::Made;
use crate::job_file::Serves;

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
    OffByScale(Vec<&'static str>),
    /// The charge is not sure to come out in target.
    Unsure,
    /// The melt has to be tried before it is poured.
    TryIt,
    /// The heaps do not make the charge.
    NotMade(String),
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
        let off = makeup.off_by_scale.iter().map(|of| of.name()).collect();
        remarks.push(ChargeFact::OffByScale(off).into());
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
        let (code, level, words, advice) = match fact {
            ChargeFact::Marked(heap, mark) => return marked(&heap, mark),
            ChargeFact::Unstated(heap, elements) => (
                "charge_unstated",
                Level::Note,
                format!(
                    "{heap}: nothing said of {}; taken as none",
                    named(&elements)
                ),
                "write a range, such as \"below 0.15 %\": the chance counts what is written",
            ),
            ChargeFact::NoPrice(heaps) => (
                "charge_no_price",
                Level::Note,
                format!(
                    "no price for {}: counted as costing nothing",
                    heaps.join(", ")
                ),
                "write what it would fetch or what its like costs, else it goes in first",
            ),
            ChargeFact::OffByScale(off) => (
                "charge_scale",
                Level::Caution,
                format!("rounded to the scale, {} leaves the target", off.join(", ")),
                "weigh on a finer scale (scale_step), or make up a larger charge",
            ),
            ChargeFact::Unsure => (
                "charge_unsure",
                Level::Caution,
                "the heaps are not known well enough for this target".to_owned(),
                "sort them, have one piece of each analysed, or take more of the purer metal",
            ),
            ChargeFact::TryIt => (
                "charge_try",
                Level::Note,
                "a make-up is a sum over guesses until the melt is tried".to_owned(),
                "pour a wedge or a test bar and look at the break before the mould is poured",
            ),
            ChargeFact::NotMade(words) => (
                "charge_not_made",
                Level::Caution,
                format!("no charge from your heaps: {words}"),
                "add what is named, or widen the limits under [charge]",
            ),
        };
        Remark::new(code, level, "charge", words, advice)
    }
}

impl From<MakeUpError> for ChargeFact {
    fn from(error: MakeUpError) -> ChargeFact {
        ChargeFact::NotMade(error.to_string())
    }
}

fn marked(heap: &str, mark: Mark) -> Remark {
    let (code, words, advice) = match mark {
        Mark::Galvanised => (
            "charge_galvanised",
            "coated with zinc: white fume as it melts, and fever after it",
            "leave it out; if it has to go in, outdoors, upwind, with a fume respirator",
        ),
        Mark::Leaded => (
            "charge_leaded",
            "holds lead: its fume, dust and skimmings poison",
            "respirator, no eating or smoking near, wash before going home; never for food",
        ),
        Mark::Painted => (
            "charge_painted",
            "paint and coatings burn to poisonous smoke; old paint holds lead",
            "strip it first, not by fire; outdoors, upwind, with a fume respirator",
        ),
        Mark::Oily => (
            "charge_oily",
            "oil flares up, smokes and gases the melt",
            "wash and dry it; never drop oily metal into a melt",
        ),
        Mark::Plated => (
            "charge_plated",
            "plating may be chromium, nickel or cadmium: poisonous fume",
            "leave it out unless you know what the plating is",
        ),
        Mark::Damp => (
            "charge_damp",
            "damp or hollow pieces blow the melt out of the crucible",
            "open every hollow, dry it hot, and charge it only into a cold crucible",
        ),
    };
    let level = match mark {
        Mark::Damp => Level::Stop,
        _ => Level::Caution,
    };
    Remark::new(code, level, "charge", format!("{heap}: {words}"), advice)
}

fn named(elements: &[Element]) -> String {
    let names: Vec<_> = elements.iter().map(|element| element.name()).collect();
    names.join(", ")
}
