//! The pour card: who walks where with what, which mould comes when, what is done with the rest.
//!
//! It is made of the plans of one pour. Nobody gets one before the ten points of
//! [`dryness`](crate::dryness) are ticked, and no plan with a STOP is on any.

use measure::heat::{Temperature, TemperatureDifference};
use measure::text::{System, Typed};
use metal::order::{Mould, Order, order};
use serde::Deserialize;
use thiserror::Error;

use crate::amount::Amount;
use crate::dryness::{NotDry, all_dry};
use crate::plan::Plan;
use crate::words::Language;

/// `[pour]` of a job: what the card cannot reckon.
#[derive(Clone, Debug, Default, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PourFile {
    /// Who does what, one line each.
    #[serde(default)]
    pub crew: Vec<String>,
    /// The way from the furnace to the mould, walked once with an empty crucible.
    pub path: Option<String>,
    /// The word at which everybody stands still.
    pub stop_word: Option<String>,
    /// What the metal loses from one mould to the next, as measured in this shop.
    pub drop_each: Option<Typed<TemperatureDifference>>,
}

/// One side of paper for the wall.
#[derive(Clone, Debug, PartialEq)]
pub struct PourCard {
    /// The metal of the day.
    pub alloy: String,
    /// Day of the pour, as printed.
    pub date: Option<String>,
    /// Who does what; empty lines are drawn where nobody is named.
    pub crew: Vec<String>,
    /// The way to the mould.
    pub path: Option<String>,
    /// The word that stops all.
    pub stop_word: String,
    /// The moulds in the order in which they are poured.
    pub turns: Vec<CardTurn>,
    /// Moulds that wait for the next heat.
    pub next_heat: Vec<String>,
    /// What the metal is reckoned to lose from one mould to the next.
    pub drop_each: String,
    /// The language of the card.
    pub words: Language,
}

/// One mould on the card.
#[derive(Clone, Debug, PartialEq)]
pub struct CardTurn {
    /// The job.
    pub name: String,
    /// How hot the metal is by then, where the first is poured at the top of its band.
    pub at: String,
    /// Below this it goes into the ingot mould.
    pub not_below: String,
    /// Metal it takes.
    pub poured: String,
    /// Seconds to fill it.
    pub seconds: String,
    /// What lies on it.
    pub irons: String,
}

/// Why there is no card.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum NoCard {
    /// Not everything is dry.
    #[error(transparent)]
    NotDry(#[from] NotDry),
    /// A plan that forbids the pour.
    #[error("no card: {job} is not to be poured as it stands: {why}")]
    Stopped {
        /// The job.
        job: String,
        /// The first STOP of its plan.
        why: String,
    },
    /// Two metals.
    #[error("no card: {one} and {other} do not come from one pour; make a card for each metal")]
    TwoMetals {
        /// One.
        one: String,
        /// The other.
        other: String,
    },
    /// Nothing to pour.
    #[error("no card: name at least one job")]
    NoJob,
}

/// From one mould to the next a small crucible loses so much where nobody has measured it: the
/// middle of 5 to 20 K, common practice, no source.
const DROP_EACH: TemperatureDifference = TemperatureDifference::from_kelvin(12.0);

/// The card of these plans, each with the `[pour]` of its job; the first that names a crew, a path
/// or a word counts.
///
/// # Errors
///
/// Where a point is not ticked as dry, a plan holds a STOP, or two metals meet.
pub fn pour_card(plans: &[(Plan, PourFile)], dry: &[String]) -> Result<PourCard, NoCard> {
    let (first, _) = plans.first().ok_or(NoCard::NoJob)?;
    for (plan, _) in plans {
        may_be_poured(plan, first)?;
    }
    all_dry(dry)?;
    let drop_each = said(plans, |pour| {
        pour.drop_each.as_ref().map(|typed| typed.value)
    });
    let drop_each = drop_each.unwrap_or(DROP_EACH);
    let moulds: Vec<Mould> = plans.iter().map(|(plan, _)| mould(plan)).collect();
    let order = order(&moulds, hottest(plans), drop_each);
    Ok(PourCard {
        alloy: first.alloy.clone(),
        date: first.date.clone(),
        crew: plans
            .iter()
            .flat_map(|(_, pour)| pour.crew.clone())
            .collect(),
        path: said(plans, |pour| pour.path.clone()),
        stop_word: said(plans, |pour| pour.stop_word.clone())
            .unwrap_or_else(|| first.words.word("card-stop-default")),
        turns: turns(plans, &order),
        next_heat: order
            .next_heat
            .iter()
            .map(|at| plans[*at].0.name.clone())
            .collect(),
        drop_each: difference_text(drop_each, first.units),
        words: first.words,
    })
}

fn may_be_poured(plan: &Plan, first: &Plan) -> Result<(), NoCard> {
    let stop = plan
        .remarks
        .iter()
        .find(|remark| remark.level == crate::remark::Level::Stop);
    if let Some(stop) = stop {
        return Err(NoCard::Stopped {
            job: plan.name.clone(),
            why: first.words.say(&stop.words),
        });
    }
    match plan.alloy == first.alloy {
        true => Ok(()),
        false => Err(NoCard::TwoMetals {
            one: first.alloy.clone(),
            other: plan.alloy.clone(),
        }),
    }
}

fn said<T>(plans: &[(Plan, PourFile)], of: impl Fn(&PourFile) -> Option<T>) -> Option<T> {
    plans.iter().find_map(|(_, pour)| of(pour))
}

/// What a mould needs is the low end of its pouring band.
fn mould(plan: &Plan) -> Mould {
    let band = pouring(plan);
    let wall = plan.figure("modulus of the thinnest section");
    let wall_mm = wall.map_or(f64::INFINITY, |figure| 2.0 * figure.amount.values()[1]);
    Mould {
        name: plan.name.clone(),
        needs: Temperature::from_celsius(band[0]),
        wall: measure::length::Length::from_mm(wall_mm),
    }
}

/// One mould is poured as its plan says; several are begun at the top of the band of the one that
/// wants most heat, since the metal cools on the way.
fn hottest(plans: &[(Plan, PourFile)]) -> Temperature {
    let celsius = match plans {
        [(only, _)] => pouring(only)[1],
        _ => {
            let tops = plans.iter().map(|(plan, _)| pouring(plan)[2]);
            tops.fold(f64::NEG_INFINITY, f64::max)
        }
    };
    Temperature::from_celsius(celsius)
}

fn pouring(plan: &Plan) -> [f64; 3] {
    plan.figure("pouring temperature")
        .map_or([0.0; 3], |figure| figure.amount.values())
}

fn turns(plans: &[(Plan, PourFile)], order: &Order) -> Vec<CardTurn> {
    let shown = |plan: &Plan, name: &str| {
        let figure = plan.figure(name)?;
        Some(figure.amount.shown(plan.units, figure.rounding))
    };
    let turn = |turn: &metal::order::Turn| {
        let plan = &plans[turn.mould].0;
        let temperature = |at: Temperature| {
            let band = measure::band::Band::exact(at);
            Amount::Temperature(band).shown(plan.units, measure::text::shown::Rounding::Nearest)
        };
        let poured = shown(plan, "poured mass").map(|poured| poured.likely);
        let seconds = shown(plan, "fill time");
        let irons = plan.choice("irons");
        let irons = irons.map(|irons| plan.words.say(&irons.chosen));
        CardTurn {
            name: plan.name.clone(),
            at: temperature(turn.at).likely,
            not_below: temperature(Temperature::from_celsius(pouring(plan)[0])).likely,
            poured: poured.unwrap_or_default(),
            seconds: seconds.map_or_else(String::new, |s| plan.words.ends(&s)),
            irons: irons.unwrap_or_default(),
        }
    };
    order.turns.iter().map(turn).collect()
}

fn difference_text(difference: TemperatureDifference, units: System) -> String {
    measure::text::show(difference, units).unwrap_or_default()
}
