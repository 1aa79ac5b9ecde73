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
use crate::remark::of_charge::remarks;
use crate::remark::{Remark, sorted};

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

/// Tells a charge, the wanted system of units first.
pub fn told(made: &Made, first: System) -> Told {
    Told {
        head: head(made, first),
        weigh_out: weigh_out(made, first),
        composition: made
            .makeup
            .composition
            .iter()
            .filter(|m| is_there(m))
            .map(row)
            .collect(),
        lines: lines(made, first),
        remarks: sorted(remarks(made)),
    }
}

/// The charge in one sentence: "1.2 kg of returns, 3.4 kg of radiators, 25 g of ferrosilicon".
pub fn in_a_sentence(made: &Made, first: System) -> String {
    let order = order_of_charging(&made.makeup.weighed, &made.heaps);
    let part = |weighed: &&Weighed| {
        let mass = exactly(weighed.mass, step(made, weighed), first);
        format!("{mass} of {}", weighed.name)
    };
    order.iter().map(part).collect::<Vec<_>>().join(", ")
}

/// How sure a charge is, with the error of the draws.
pub fn chance_words(made: &Made) -> String {
    let chance = made.makeup.chance;
    let [share, low, high] = [chance.share, chance.low, chance.high].map(whole_per_cent);
    format!("{share} % sure to come out in target ({low} to {high} % by {DRAWS} draws)")
}

fn head(made: &Made, first: System) -> String {
    let mass = |mass: Mass| show(mass, first).unwrap_or_default();
    let wish = &made.asked.wish;
    format!(
        "{}: {} into the crucible for {} at the spout, to {}",
        made.asked.name,
        mass(made.makeup.charged),
        mass(made.makeup.metal),
        target_words(&wish.target, wish.narrowed),
    )
}

fn weigh_out(made: &Made, first: System) -> Vec<[String; 5]> {
    let order = order_of_charging(&made.makeup.weighed, &made.heaps);
    let row = |(turn, weighed): (usize, &&Weighed)| {
        let cost = weighed
            .cost
            .as_ref()
            .map_or_else(String::new, Money::to_string);
        let other = show(weighed.mass, first.other()).unwrap_or_default();
        let mass = on_scale(made, weighed, first);
        [
            (turn + 1).to_string(),
            weighed.name.clone(),
            mass,
            other,
            cost,
        ]
    };
    let mut rows: Vec<_> = order.iter().enumerate().map(row).collect();
    let makeup = &made.makeup;
    rows.push([
        String::new(),
        "together".to_owned(),
        exactly(makeup.charged, finest(made), first),
        show(makeup.charged, first.other()).unwrap_or_default(),
        makeup
            .cost
            .as_ref()
            .map_or_else(String::new, Money::to_string),
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
fn on_scale(made: &Made, weighed: &Weighed, first: System) -> String {
    let step = step(made, weighed);
    let all = made
        .heaps
        .get(weighed.heap)
        .is_some_and(|heap| heap.mass == weighed.mass);
    let text = exactly(weighed.mass, step, first);
    if all {
        format!("{text}, all of it")
    } else {
        text
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

fn row(measure: &Measure) -> [String; 5] {
    let (low, high) = measure.usual;
    let ends = |low: f64, high: f64| match (per_cent(low), per_cent(high)) {
        (low, high) if low == high => format!("{low} %"),
        (low, high) => format!("{low} to {high} %"),
    };
    [
        measure.of.symbol().to_owned(),
        format!("{} %", per_cent(measure.share.likely())),
        ends(low, high),
        ends(measure.share.low(), measure.share.high()),
        measure.limit.as_ref().map_or_else(String::new, limit_words),
    ]
}

/// Whether there is any of it, or a limit to it.
fn is_there(measure: &Measure) -> bool {
    measure.limit.is_some() || measure.share.high() > 0.0
}

/// A limit as it is said: "1.9 to 2.3 %", "at most 0.2 %".
fn limit_words(limit: &Limit) -> String {
    match (limit.low, limit.high) {
        (Some(low), Some(high)) => format!("{} to {} %", per_cent(low), per_cent(high)),
        (Some(low), None) => format!("at least {} %", per_cent(low)),
        (None, Some(high)) => format!("at most {} %", per_cent(high)),
        (None, None) => String::new(),
    }
}

fn lines(made: &Made, first: System) -> Vec<String> {
    let makeup = &made.makeup;
    let mut lines = vec![chance_words(made)];
    if !makeup.binding.is_empty() {
        let bound: Vec<_> = makeup
            .binding
            .iter()
            .map(|of| binding_words(of, made))
            .collect();
        lines.push(format!("held by {}", bound.join(", ")));
    }
    lines.extend(makeup.next.as_ref().map(|next| next_words(next, first)));
    lines
}

/// What binds a charge, in words.
pub fn binding_words(binding: &Binding, made: &Made) -> String {
    match binding {
        Binding::Limit(of, side) => {
            let kept = made.makeup.clearance > 0.0;
            let end = if *side == Side::Low { "least" } else { "most" };
            let with = if kept {
                ", with room for the heaps"
            } else {
                ""
            };
            format!("the {end} {}{with}", of.name())
        }
        Binding::AllOf(heap) => format!("the end of {heap}"),
        Binding::UseUp(heap) => format!("{heap} to be used up"),
    }
}

/// The cheapest change that helps, in words.
pub fn next_words(next: &NextChange, first: System) -> String {
    let mass = |kg: f64| show(Mass::from_kg(kg), first).unwrap_or_default();
    let step = |(heap, kg): &(String, f64)| {
        let which = if *kg > 0.0 { "more" } else { "less" };
        format!("{} {which} of {heap}", mass(kg.abs()))
    };
    let steps: Vec<_> = next.steps.iter().map(step).collect();
    let beyond = next.beyond.iter();
    let beyond: Vec<_> = beyond
        .map(|(heap, more)| format!("{} more of {heap} than you have", mass(more.as_kg())))
        .collect();
    let wants = match beyond.is_empty() {
        true => String::new(),
        false => format!(" (that takes {})", beyond.join(" and ")),
    };
    let money = next.dearer.as_ref().map(money_words).unwrap_or_default();
    let sure = whole_per_cent(next.chance.share);
    let lead = match next.aim {
        Aim::Surer => "surer",
        Aim::Cheaper => "cheaper",
    };
    format!(
        "{lead}: {}{wants}; {sure} % sure then{money}",
        steps.join(", ")
    )
}

fn money_words(dearer: &Money) -> String {
    let by = Money {
        amount: dearer.amount.abs(),
        currency: dearer.currency.clone(),
    };
    match dearer.amount {
        more if more > 0.005 => format!(", for {by} more"),
        less if less < -0.005 => format!(", for {by} less"),
        _ => ", for the same money".to_owned(),
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
