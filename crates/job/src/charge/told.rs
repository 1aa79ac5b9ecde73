//! A charge in words and rows, as any door may show it.

use measure::matter::Mass;
use measure::money::Money;
use measure::text::{System, Written, rounded, show};
use metal::charge_makeup::chance::DRAWS;
use metal::charge_makeup::composition::Measure;
use metal::charge_makeup::limit::{Limit, Side};
use metal::charge_makeup::makeup::{Binding, Weighed};
use metal::charge_makeup::next_change::{Aim, NextChange};
use metal::charge_makeup::order::order_of_charging;

use crate::charge::{Made, target_words};
use crate::remark::of_charge::{element, remarks};
use crate::remark::{Remark, sorted};
use crate::words::Language;
use crate::words::said::Said;

/// A charge as it is told.
#[derive(Clone, Debug, PartialEq)]
pub struct Told {
    /// What it is, in a line.
    pub head: String,
    /// What to weigh out, in the order of charging: turn, heap, mass, mass in the other system,
    /// cost.
    pub weigh_out: Vec<[String; 5]>,
    /// What it comes to: element, likely, nine times in ten, at worst, target.
    pub composition: Vec<[String; 5]>,
    /// Chance, what binds, the next change, a sentence each.
    pub lines: Vec<String>,
    /// Remarks, the weightiest first.
    pub remarks: Vec<Remark>,
}

/// Tells a charge in a language, the wanted system of units first.
pub fn told(made: &Made, first: System, language: Language) -> Told {
    let said = |each: &Said| language.say(each);
    let composition = made.makeup.composition.iter().filter(|m| is_there(m));
    Told {
        head: said(&head(made, first)),
        weigh_out: weigh_out(made, first, language),
        composition: composition.map(|of| row(of, language)).collect(),
        lines: lines(made, first).iter().map(said).collect(),
        remarks: sorted(remarks(made)),
    }
}

/// The charge in one sentence: "1.2 kg of returns, 3.4 kg of radiators, 25 g of ferrosilicon".
pub fn in_a_sentence(made: &Made, first: System) -> Said {
    let order = order_of_charging(&made.makeup.weighed, &made.heaps);
    let part = |weighed: &&Weighed| {
        Said::new("charge-part")
            .with("mass", exactly(weighed.mass, step(made, weighed), first))
            .with("heap", weighed.name.as_str())
    };
    Said::list(order.iter().map(part).collect())
}

/// How sure a charge is, with the error of the draws.
pub fn chance_words(made: &Made) -> Said {
    let chance = made.makeup.chance;
    Said::new("charge-sure")
        .with("share", whole_per_cent(chance.share))
        .with("low", whole_per_cent(chance.low))
        .with("high", whole_per_cent(chance.high))
        .with("draws", DRAWS)
}

fn head(made: &Made, first: System) -> Said {
    let mass = |mass: Mass| show(mass, first).unwrap_or_default();
    let wish = &made.asked.wish;
    let name = match &made.asked.job {
        Some(job) => Said::typed(job.as_str()),
        None => Said::new("charge-alone"),
    };
    Said::new("charge-head")
        .with("name", name)
        .with("charged", mass(made.makeup.charged))
        .with("metal", mass(made.makeup.metal))
        .with("target", target_words(&wish.target, wish.narrowed))
}

fn weigh_out(made: &Made, first: System, language: Language) -> Vec<[String; 5]> {
    let order = order_of_charging(&made.makeup.weighed, &made.heaps);
    let cost = |cost: &Option<Money>| cost.as_ref().map_or_else(String::new, Money::to_string);
    let other = |mass| show(mass, first.other()).unwrap_or_default();
    let row = |(turn, weighed): (usize, &&Weighed)| {
        [
            (turn + 1).to_string(),
            weighed.name.clone(),
            language.say(&on_scale(made, weighed, first)),
            other(weighed.mass),
            cost(&weighed.cost),
        ]
    };
    let mut rows: Vec<_> = order.iter().enumerate().map(row).collect();
    let makeup = &made.makeup;
    rows.push([
        String::new(),
        language.word("charge-together"),
        exactly(makeup.charged, finest(made), first),
        other(makeup.charged),
        cost(&makeup.cost),
    ]);
    rows
}

/// The finest step of all that is weighed.
fn finest(made: &Made) -> Mass {
    let of_heap = made
        .makeup
        .weighed
        .iter()
        .map(|weighed| step(made, weighed));
    of_heap.fold(made.scale_step, Mass::min)
}

fn step(made: &Made, weighed: &Weighed) -> Mass {
    let own = made.heaps.get(weighed.heap).and_then(|heap| heap.step);
    own.unwrap_or(made.scale_step)
}

/// A mass as the scale shows it; what is off the steps is all there is.
fn on_scale(made: &Made, weighed: &Weighed, first: System) -> Said {
    let heap = made.heaps.get(weighed.heap);
    let text = exactly(weighed.mass, step(made, weighed), first);
    match heap.is_some_and(|heap| heap.mass == weighed.mass) {
        true => Said::new("charge-all-of-it").with("mass", text),
        false => Said::typed(text),
    }
}

/// A mass with the digits that a step of the scale needs: 4.13 kg, 25 g, 2.75 lb.
fn exactly(mass: Mass, step: Mass, system: System) -> String {
    let (small, large) = match system {
        System::Metric => ((1e-3, "g"), (1.0, "kg")),
        System::Inch => (
            (Mass::from_lb(1.0 / 16.0).si(), "oz"),
            (Mass::from_lb(1.0).si(), "lb"),
        ),
    };
    let (unit, word) = if mass.si() < large.0 { small } else { large };
    let decimals = (-(step.si() / unit).log10() - 1e-9).ceil().clamp(0.0, 4.0) as usize;
    format!("{:.*} {word}", decimals, mass.si() / unit)
}

fn row(measure: &Measure, language: Language) -> [String; 5] {
    let (low, high) = measure.usual;
    let ends = |low: f64, high: f64| match (per_cent(low), per_cent(high)) {
        (low, high) if low == high => Said::typed(format!("{low} %")),
        (low, high) => between(low, high),
    };
    let limit = measure.limit.as_ref().and_then(limit_words);
    [
        measure.of.symbol().to_owned(),
        format!("{} %", per_cent(measure.share.likely())),
        language.say(&ends(low, high)),
        language.say(&ends(measure.share.low(), measure.share.high())),
        limit.map_or_else(String::new, |limit| language.say(&limit)),
    ]
}

fn between(low: String, high: String) -> Said {
    Said::new("between")
        .with("low", low)
        .with("high", format!("{high} %"))
}

/// Whether there is any of it, or a limit to it.
fn is_there(measure: &Measure) -> bool {
    measure.limit.is_some() || measure.share.high() > 0.0
}

/// A limit as it is said: "1.9 to 2.3 %", "at most 0.2 %".
fn limit_words(limit: &Limit) -> Option<Said> {
    match (limit.low.map(per_cent), limit.high.map(per_cent)) {
        (Some(low), Some(high)) => Some(between(low, high)),
        (Some(low), None) => Some(Said::new("limit-least").with("low", format!("{low} %"))),
        (None, Some(high)) => Some(Said::new("limit-most").with("high", format!("{high} %"))),
        (None, None) => None,
    }
}

fn lines(made: &Made, first: System) -> Vec<Said> {
    let makeup = &made.makeup;
    let mut lines = vec![chance_words(made)];
    if !makeup.binding.is_empty() {
        let bound = makeup.binding.iter().map(|of| binding_words(of, made));
        lines.push(Said::new("charge-held-by").with("bound", bound.collect::<Vec<_>>()));
    }
    lines.extend(makeup.next.as_ref().map(|next| next_words(next, first)));
    lines
}

/// What binds a charge.
pub fn binding_words(binding: &Binding, made: &Made) -> Said {
    match binding {
        Binding::Limit(of, side) => {
            let room = made.makeup.clearance > 0.0;
            let id = match (side, room) {
                (Side::Low, false) => "binding-least",
                (Side::Low, true) => "binding-least-room",
                (Side::High, false) => "binding-most",
                (Side::High, true) => "binding-most-room",
            };
            Said::new(id).with("of", element(*of))
        }
        Binding::AllOf(heap) => Said::new("binding-end").with("heap", heap.as_str()),
        Binding::UseUp(heap) => Said::new("binding-use-up").with("heap", heap.as_str()),
    }
}

/// The cheapest change that helps.
pub fn next_words(next: &NextChange, first: System) -> Said {
    let mass = |kg: f64| show(Mass::from_kg(kg), first).unwrap_or_default();
    let step = |(heap, kg): &(String, f64)| {
        Said::new(if *kg > 0.0 { "next-more" } else { "next-less" })
            .with("mass", mass(kg.abs()))
            .with("heap", heap.as_str())
    };
    let beyond = next.beyond.iter().map(|(heap, more)| {
        Said::new("next-beyond-heap")
            .with("mass", mass(more.as_kg()))
            .with("heap", heap.as_str())
    });
    let beyond: Vec<Said> = beyond.collect();
    let wants = match beyond.is_empty() {
        true => Said::typed(""),
        false => Said::new("next-beyond").with("all", beyond),
    };
    let id = match next.aim {
        Aim::Surer => "next-surer",
        Aim::Cheaper => "next-cheaper",
    };
    let money = next.dearer.as_ref().map(money_words);
    Said::new(id)
        .with("steps", next.steps.iter().map(step).collect::<Vec<_>>())
        .with("beyond", wants)
        .with("sure", whole_per_cent(next.chance.share))
        .with("money", money.unwrap_or_else(|| Said::typed("")))
}

fn money_words(dearer: &Money) -> Said {
    let by = Money {
        amount: dearer.amount.abs(),
        currency: dearer.currency.clone(),
    };
    match dearer.amount {
        more if more > 0.005 => Said::new("next-dearer").with("by", by.to_string()),
        less if less < -0.005 => Said::new("next-less-money").with("by", by.to_string()),
        _ => Said::new("next-same-money"),
    }
}

fn per_cent(share: f64) -> String {
    rounded(share * 100.0, 3)
}

/// A chance in whole per cent, which is never told as certain while a draw went astray.
fn whole_per_cent(share: f64) -> String {
    let per_cent = share * 100.0;
    let whole = match share {
        share if share < 1.0 && per_cent > 99.0 => 99.0,
        share if share > 0.0 && per_cent < 1.0 => 1.0,
        _ => per_cent.round(),
    };
    format!("{whole:.0}")
}
