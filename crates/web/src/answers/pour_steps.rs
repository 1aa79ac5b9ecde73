//! A pour in steps, each large enough to be read with a ladle in the hands: what is done, the
//! figures for it, what to mind just there, and a clock where one is watched.

use job::dryness::DryPoint;
use job::plan::Plan;
use job::pour_card::{CardTurn, NoCard, PourCard, PourFile, pour_card};
use job::remark::Level;
use job::words::said::Said;
use serde::Serialize;
use utoipa::ToSchema;

/// One step.
#[derive(Clone, Debug, PartialEq, Serialize, ToSchema)]
pub struct StepAnswer {
    /// By which it is known.
    pub id: String,
    /// What is done.
    pub heading: String,
    /// Figures for it.
    pub figures: Vec<StepFigure>,
    /// More words.
    pub lines: Vec<String>,
    /// What to mind just there.
    pub cautions: Vec<String>,
    /// The clock of the step.
    pub clock: Option<ClockAnswer>,
}

/// A figure in large digits.
#[derive(Clone, Debug, PartialEq, Serialize, ToSchema)]
pub struct StepFigure {
    /// What it is.
    pub name: String,
    /// The value with its unit.
    pub value: String,
    /// The range.
    pub band: Option<String>,
}

/// A clock.
#[derive(Clone, Debug, PartialEq, Serialize, ToSchema)]
pub struct ClockAnswer {
    /// What is watched.
    pub watches: Watched,
    /// Not before, s.
    pub low_s: f64,
    /// Likely, s.
    pub likely_s: f64,
    /// Not after, s.
    pub high_s: f64,
}

/// What a clock watches.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, ToSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Watched {
    /// The stream, from the first drop to the full mould.
    Filling,
    /// The mould, from the full mould until it may be opened.
    Opening,
}

/// What a remark is about when it counts while metal is melted, and while it is poured.
const AT_THE_FURNACE: [&str; 2] = ["metal", "charge"];
const AT_THE_POUR: [&str; 2] = ["pour", "weights"];
const AT_THE_OPENING: [&str; 2] = ["opening", "freezing"];

/// The steps of a pour whose ten points are ticked; or why it is not to be poured.
///
/// # Errors
///
/// The first STOP of the plan, in the words of the shop.
pub fn steps(plan: &Plan, pour: &PourFile) -> Result<Vec<StepAnswer>, String> {
    let dry = DryPoint::ALL.map(|point| point.name().to_owned());
    let card = pour_card(&[(plan.clone(), pour.clone())], &dry);
    let card = card.map_err(|no| match no {
        NoCard::Stopped { why, .. } => why,
        other => other.to_string(),
    })?;
    let Some(turn) = card.turns.first() else {
        return Ok(Vec::new());
    };
    Ok(vec![
        red_lines(plan),
        aloud(plan, &card),
        melt(plan),
        cope(plan, turn),
        ready(plan, turn),
        fill(plan, turn),
        wait(plan),
        open(plan),
    ])
}

fn red_lines(plan: &Plan) -> StepAnswer {
    let mut step = step(plan, "before", "phone-step-red-lines");
    step.lines = sheet::page(plan).red_lines;
    step
}

fn aloud(plan: &Plan, card: &PourCard) -> StepAnswer {
    let mut step = step(plan, "aloud", "phone-step-aloud");
    let words = plan.words;
    let path = card
        .path
        .iter()
        .map(|path| format!("{}: {path}", words.word("card-path")));
    step.lines = card.crew.iter().cloned().chain(path).collect();
    if step.lines.is_empty() {
        step.lines.push(words.word("phone-step-aloud-who"));
    }
    let stop = words.word("card-stop-told");
    step.cautions.push(format!("{}: {stop}", card.stop_word));
    step
}

fn melt(plan: &Plan) -> StepAnswer {
    let mut step = step(plan, "melt", "phone-step-melt");
    step.figures.extend(figure(plan, "charge"));
    step.figures.extend(figure(plan, "pouring temperature"));
    if let Some(crucible) = plan.choice("crucible") {
        let label = plan.words.say(&crucible.label());
        let chosen = plan.words.say(&crucible.chosen);
        step.lines.push(format!("{label}: {chosen}"));
    }
    step.cautions = minded(plan, &AT_THE_FURNACE);
    step
}

fn cope(plan: &Plan, turn: &CardTurn) -> StepAnswer {
    let mut step = step(plan, "cope", "phone-step-cope");
    let weight = plan.figure("weight on the cope");
    if weight.is_some_and(|weight| weight.amount.values()[2] > 0.0) {
        step.figures.extend(figure(plan, "weight on the cope"));
    }
    if !turn.irons.is_empty() {
        step.lines.push(turn.irons.clone());
    }
    step.lines.push(plan.words.word("phone-step-cope-closed"));
    step
}

fn ready(plan: &Plan, turn: &CardTurn) -> StepAnswer {
    let mut step = step(plan, "ready", "phone-step-ready");
    let words = plan.words;
    step.figures.push(StepFigure {
        name: words.word("phone-step-at"),
        value: turn.at.clone(),
        band: None,
    });
    step.figures.push(StepFigure {
        name: words.word("phone-step-not-below"),
        value: turn.not_below.clone(),
        band: None,
    });
    step.lines.push(words.word("phone-step-ready-skim"));
    step
}

fn fill(plan: &Plan, turn: &CardTurn) -> StepAnswer {
    let mut step = step(plan, "fill", "phone-step-fill");
    step.figures.push(StepFigure {
        name: plan.words.word("phone-step-takes"),
        value: turn.poured.clone(),
        band: None,
    });
    step.lines.push(plan.words.word("phone-step-fill-full"));
    step.cautions = minded(plan, &AT_THE_POUR);
    step.clock = clock(plan, "fill time", Watched::Filling);
    step
}

fn wait(plan: &Plan) -> StepAnswer {
    let mut step = step(plan, "wait", "phone-step-wait");
    step.figures.extend(figure(plan, "may be opened"));
    step.lines.push(plan.words.word("phone-step-wait-hot"));
    step.cautions = minded(plan, &AT_THE_OPENING);
    step.clock = clock(plan, "may be opened", Watched::Opening);
    step
}

fn open(plan: &Plan) -> StepAnswer {
    let mut step = step(plan, "open", "phone-step-open");
    step.lines.push(plan.words.word("phone-step-open-how"));
    step
}

fn step(plan: &Plan, id: &str, heading: &'static str) -> StepAnswer {
    StepAnswer {
        id: id.to_owned(),
        heading: plan.words.say(&Said::new(heading)),
        figures: Vec::new(),
        lines: Vec::new(),
        cautions: Vec::new(),
        clock: None,
    }
}

fn figure(plan: &Plan, name: &str) -> Option<StepFigure> {
    let figure = plan.figure(name)?;
    let shown = figure.amount.shown(plan.units, figure.rounding);
    Some(StepFigure {
        name: plan.words.say(&figure.label()),
        band: plan.words.between(&shown),
        value: shown.likely,
    })
}

fn clock(plan: &Plan, name: &str, watches: Watched) -> Option<ClockAnswer> {
    let [low_s, likely_s, high_s] = plan.figure(name)?.amount.values();
    Some(ClockAnswer {
        watches,
        low_s,
        likely_s,
        high_s,
    })
}

/// What has to be minded of these things, with what to do about it.
fn minded(plan: &Plan, about: &[&str]) -> Vec<String> {
    let cautions = plan
        .remarks
        .iter()
        .filter(|remark| remark.level == Level::Caution && about.contains(&remark.about));
    cautions
        .map(|remark| {
            let (words, advice) = (
                plan.words.say(&remark.words),
                plan.words.say(&remark.advice),
            );
            format!("{words} {advice}")
        })
        .collect()
}
