//! A job as a set of lessons for a class: groups, roles, and what happens when, within the time and
//! the things there are.
//!
//! Minutes are judgement, for pupils who ram their first mould and grown-ups who have poured
//! before: with less, a class is hurried at the fire; with more, a double lesson holds no pour.

use job::amount::Amount;
use job::heats::heats;
use job::plan::Plan;
use job::shop::Shop;
use job::words::Language;
use job::words::said::Said;
use measure::band::Band;
use measure::matter::Mass;
use thiserror::Error;

use crate::told::Told;

/// What a class has.
#[derive(Clone, Debug, PartialEq)]
pub struct Class {
    /// Pupils; each gets a casting.
    pub pupils: usize,
    /// Lessons in which they come.
    pub sessions: usize,
    /// Minutes of one.
    pub minutes: f64,
    /// Grown-ups who may stand at the fire.
    pub adults: usize,
    /// Flasks of the size of the plan; left out, those of the shop's file.
    pub flasks: Option<usize>,
}

/// What a class has where nobody says otherwise: two double lessons, and two grown-ups, since
/// one alone is refused.
pub const SESSIONS: usize = 2;
/// Minutes of a lesson, as [`SESSIONS`].
pub const MINUTES: f64 = 80.0;
/// Grown-ups at the fire, as [`SESSIONS`].
pub const ADULTS: usize = 2;

/// Why there is no set of lessons.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum NoClass {
    /// Numbers that are no class.
    #[error(
        "{0}: say pupils from 1 to 200, sessions from 1 to 20 of 20 to 480 minutes, and grown-ups \
         from 1 to 50"
    )]
    Numbers(String),
    /// One grown-up alone.
    #[error(
        "one grown-up cannot pour and mind a class: have a second one at the fire, so that a burn or \
         a fall is never met alone (common practice)"
    )]
    Alone,
    /// A plan without what is needed.
    #[error("the plan has no {0}: work out a job that is poured")]
    NoFigure(&'static str),
    /// No time for a single step.
    #[error("a lesson of {minutes} min is too short: the longest step, {step}, takes {needed} min")]
    TooShort {
        /// Minutes of one lesson.
        minutes: f64,
        /// The step.
        step: String,
        /// What it takes.
        needed: f64,
    },
}

/// Minutes of each kind of step.
const SAFETY: f64 = 10.0;
const RAM: f64 = 40.0;
const CLEAR: f64 = 10.0;
const MELT: f64 = 40.0;
const MELT_AGAIN: f64 = 20.0;
const POUR_ONE: f64 = 3.0;
const SHAKE_OUT: f64 = 20.0;
const LOOK: f64 = 15.0;

/// Pupils at one flask: two cannot lift and ram in turn, and of six two look on.
const GROUP: [usize; 2] = [3, 5];

/// What a group does by turns.
const ROLES: [&str; 5] = [
    "class-role-riddles",
    "class-role-rams",
    "class-role-joins",
    "class-role-writes",
    "class-role-clears",
];

/// What happens at the fire.
const FIRE: &str = "class-safety-fire";
const AGAIN: &str = "class-melt-again";
const POUR: &str = "class-pour";

/// What happens once the moulds have cooled.
const SHAKE_OUT_STEP: &str = "class-shake-out";
const LOOK_STEP: &str = "class-look";

/// The step for which nobody has to be there.
const COOL: &str = "class-cool";

/// A step that is not torn apart.
#[derive(Clone, Copy)]
struct Step {
    id: &'static str,
    minutes: f64,
    /// Whether it has to be followed by the one after it on the same day.
    holds: bool,
}

/// The set of lessons of a plan.
///
/// # Errors
///
/// Numbers that are no class, one grown-up alone, a plan that is not poured, lessons too short for
/// one step.
pub fn class(plan: &Plan, shop: &Shop, class: &Class) -> Result<Told, NoClass> {
    check(class)?;
    let moulds = class.pupils.div_ceil(plan.count.max(1));
    let flasks = class.flasks.unwrap_or_else(|| flasks(plan, shop)).max(1);
    let rounds = moulds.div_ceil(flasks);
    let poured = likely(plan, "poured mass")?;
    let heats = heats(plan, shop, moulds);
    let steps = steps(rounds, moulds, heats[1], opened(plan));
    let (placed, opened_after) = within(placed(&steps, class)?, class);
    let mut told = Told::new(
        Said::new("class-head")
            .with("job", plan.name.as_str())
            .with("pupils", class.pupils.to_string()),
    );
    let count = |number: usize| Band::exact(number as f64);
    told.number("class-moulds", count(moulds));
    told.number("class-flasks", count(flasks));
    told.number("class-groups", count(moulds.min(flasks)));
    let [few, likely, many] = heats.map(|heats| heats as f64);
    told.number("class-heats", Band::new(few, likely, many));
    let metal = Band::exact(Mass::from_kg(poured * moulds as f64));
    told.amount("class-metal", Amount::Mass(metal));
    told.number("class-sessions", count(placed.len()));
    for (at, session) in placed.iter().enumerate() {
        let mut from = 0.0;
        for step in session {
            let words = Said::new("class-step")
                .with("session", (at + 1).to_string())
                .with("from", minutes(from))
                .with("to", minutes(from + step.minutes));
            told.step(words.with("what", Said::new(step.id)));
            from += step.minutes;
        }
    }
    if opened_after {
        let said = Said::new("class-after").with("session", placed.len().to_string());
        let said = said.with("wait", minutes(opened(plan)));
        told.step(said.with("look", minutes(LOOK)));
    }
    if heats[2] > heats[1] {
        let said = Said::new("class-heats-more").with("heats", heats[2].to_string());
        told.note(said.with("minutes", minutes(MELT_AGAIN)));
    }
    roles(&mut told, class, moulds.min(flasks));
    limits(&mut told, plan, shop, class, (moulds, placed.len()));
    Ok(told)
}

fn check(class: &Class) -> Result<(), NoClass> {
    let sound = (1..=200).contains(&class.pupils)
        && (1..=20).contains(&class.sessions)
        && (20.0..=480.0).contains(&class.minutes)
        && (1..=50).contains(&class.adults)
        && class
            .flasks
            .is_none_or(|flasks| (1..=200).contains(&flasks));
    if !sound {
        return Err(NoClass::Numbers(format!(
            "{} pupils in {} sessions of {} min with {} grown-ups",
            class.pupils, class.sessions, class.minutes, class.adults
        )));
    }
    match class.adults {
        1 => Err(NoClass::Alone),
        _ => Ok(()),
    }
}

fn likely(plan: &Plan, name: &'static str) -> Result<f64, NoClass> {
    let figure = plan.figure(name).ok_or(NoClass::NoFigure(name))?;
    Ok(figure.amount.values()[1])
}

/// Flasks of the shop that are as large as the one of the plan.
fn flasks(plan: &Plan, shop: &Shop) -> usize {
    let chosen = plan.choices.iter().find(|choice| choice.name == "flask");
    let chosen = chosen.map(|choice| plan.words.say(&choice.chosen));
    let sizes = |at: usize| {
        let flask = &shop.flasks[at];
        [flask.length, flask.width, flask.cope, flask.drag]
    };
    let all = 0..shop.flasks.len();
    // The plan tells a flask by its name and its sizes behind it.
    let is_chosen = |at: &usize| {
        let of = format!("{}: ", shop.flasks[*at].name);
        chosen
            .as_ref()
            .is_some_and(|chosen| chosen.starts_with(&of))
    };
    let of_plan = all.clone().find(is_chosen);
    let alike = all.filter(|at| of_plan.is_none_or(|of_plan| sizes(*at) == sizes(of_plan)));
    alike.map(|at| shop.flasks[at].count).sum()
}

/// Minutes from the pour to the open mould, on the late side; an hour where the plan says nothing.
fn opened(plan: &Plan) -> f64 {
    let figure = plan.figure("may be opened");
    figure.map_or(60.0, |figure| figure.amount.values()[2] / 60.0)
}

/// The steps in order.
fn steps(rounds: usize, moulds: usize, heats: usize, opened: f64) -> Vec<Step> {
    let step = |id, minutes, holds| Step { id, minutes, holds };
    let mut steps = Vec::new();
    for _ in 0..rounds {
        steps.push(step("class-safety", SAFETY, true));
        steps.push(step("class-ram", RAM, true));
        steps.push(step("class-clear", CLEAR, false));
    }
    // The first heat is melted before the lesson, by the grown-ups; each has its moulds.
    let heats = heats.clamp(1, moulds.max(1));
    for heat in 0..heats {
        match heat {
            0 => steps.push(step(FIRE, SAFETY, true)),
            _ => steps.push(step(AGAIN, MELT_AGAIN, true)),
        }
        let of_heat = moulds * (heat + 1) / heats - moulds * heat / heats;
        steps.push(step(POUR, POUR_ONE * of_heat as f64, false));
    }
    steps.push(step(COOL, opened, false));
    steps.push(step(SHAKE_OUT_STEP, SHAKE_OUT, false));
    steps.push(step(LOOK_STEP, LOOK, false));
    steps
}

/// The steps laid into lessons, those that hold together into one. Moulds cool between lessons
/// where they do not within one.
fn placed(steps: &[Step], class: &Class) -> Result<Vec<Vec<Step>>, NoClass> {
    let mut sessions: Vec<Vec<Step>> = vec![Vec::new()];
    let mut left = class.minutes;
    let is_fire = |step: &&Step| [FIRE, AGAIN, POUR].contains(&step.id);
    let fire: f64 = steps.iter().filter(is_fire).map(|step| step.minutes).sum();
    for block in steps.split_inclusive(|step| !step.holds) {
        let needed: f64 = block.iter().map(|step| step.minutes).sum();
        let cools = block.iter().any(|step| step.id == COOL);
        if needed > class.minutes && !cools {
            return Err(NoClass::TooShort {
                minutes: class.minutes,
                step: Language::Uk.word(block[0].id),
                needed: needed.ceil(),
            });
        }
        // Nobody lights a furnace for the last minutes of a lesson.
        let begins_fire = block[0].id == FIRE && fire > left && left < class.minutes;
        if needed > left || begins_fire {
            sessions.push(Vec::new());
            left = class.minutes;
            if cools {
                continue;
            }
        }
        left -= needed;
        let steps = block.iter().copied();
        if let Some(session) = sessions.last_mut() {
            session.extend(steps);
        }
    }
    Ok(sessions)
}

/// The lessons that there are, where all but the opening fits into them: the grown-ups open the
/// moulds after the last one then, and the class looks at its castings when it meets again.
fn within(mut placed: Vec<Vec<Step>>, class: &Class) -> (Vec<Vec<Step>>, bool) {
    let is_after = |step: &Step| [SHAKE_OUT_STEP, LOOK_STEP].contains(&step.id);
    let last = placed.last();
    let only_opened = last.is_some_and(|session| session.iter().all(is_after));
    let after = only_opened && placed.len() == class.sessions + 1;
    if after {
        placed.pop();
    }
    (placed, after)
}

fn roles(told: &mut Told, class: &Class, groups: usize) {
    for role in ROLES {
        told.note(Said::new(role));
    }
    told.note(Said::new("class-role-turns"));
    told.caution(Said::new("class-role-fire").with("adults", class.adults.to_string()));
    let each = class.pupils.div_ceil(groups.max(1));
    if each > GROUP[1] {
        let said = Said::new("class-group-large").with("pupils", each.to_string());
        told.caution(said.with("most", GROUP[1].to_string()));
    }
    if each < GROUP[0] {
        told.note(Said::new("class-group-small").with("least", GROUP[0].to_string()));
    }
}

/// What does not suffice, and what has to be minded.
fn limits(told: &mut Told, plan: &Plan, shop: &Shop, class: &Class, set: (usize, usize)) {
    let (moulds, needed) = set;
    if needed > class.sessions {
        let said = Said::new("class-too-few").with("needed", needed.to_string());
        told.stop(said.with("sessions", class.sessions.to_string()));
    }
    let sand = plan.figure("sand to have ready");
    let heap = shop.heap.as_ref().map(|heap| heap.mass.as_kg());
    if let Some((sand, heap)) = sand.zip(heap) {
        let wanted = sand.amount.values()[1] * moulds as f64;
        if wanted > heap {
            let kg = |kg: f64| format!("{} kg", measure::text::rounded(kg, 2));
            let said = Said::new("class-sand-short").with("wanted", kg(wanted));
            told.stop(said.with("heap", kg(heap)));
        }
    }
    told.note(Said::new("class-melt").with("minutes", minutes(MELT)));
    if needed > 1 {
        told.caution(Said::new("class-overnight"));
    }
    for mind in [
        "class-distance",
        "class-ingot",
        "class-water",
        "class-feet",
        "class-bearing",
    ] {
        told.caution(Said::new(mind));
    }
    told.note(Said::new("class-minutes"));
}

fn minutes(from_start: f64) -> String {
    measure::text::rounded(from_start.round(), 3)
}
