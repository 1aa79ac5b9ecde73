//! Entries filled from the plan of a job, so that only what was done is left to say.

use indexmap::IndexMap;
use job::learned::OWN_FACTOR;
use measure::text::plain_number;
use serde::Deserialize;

use crate::column::Column;
use crate::entry::Fresh;
use crate::table::Table;
use crate::table::castings::CASTINGS;
use crate::table::melt::{HEATS, POURS};
use crate::table::mould::{MOULDS, PLANNED};
use crate::value::Value;

/// What a plan says beforehand; links between the entries are not set yet.
#[derive(Clone, Debug, PartialEq)]
pub struct Prefilled {
    /// The mould.
    pub mould: Fresh,
    /// Every figure of the plan.
    pub planned: Vec<Fresh>,
    /// The heat.
    pub heat: Fresh,
    /// The pour.
    pub pour: Fresh,
    /// One casting.
    pub casting: Fresh,
    /// How many castings there are in the mould.
    pub castings: usize,
}

/// What is read of plan.json.
#[derive(Deserialize)]
struct PlanRead {
    job: String,
    alloy: String,
    count: usize,
    figures: IndexMap<String, FigureRead>,
    #[serde(default)]
    choices: IndexMap<String, ChoiceRead>,
    #[serde(default)]
    remarks: Vec<RemarkRead>,
}

#[derive(Deserialize)]
struct FigureRead {
    low: f64,
    likely: f64,
    high: f64,
    unit: String,
    #[serde(default)]
    beside: IndexMap<String, String>,
}

#[derive(Deserialize)]
struct ChoiceRead {
    chosen: String,
}

#[derive(Deserialize)]
struct RemarkRead {
    code: String,
}

/// The figures that the entries keep, by the names that the plan has for them.
const OF_POUR: [(&str, &str); 6] = [
    ("planned_temperature", "pouring temperature"),
    ("planned_time", "fill time"),
    ("planned_mass", "poured mass"),
    ("planned_freezing", "freezing time of the heaviest section"),
    ("planned_opening", "may be opened"),
    ("planned_gate_speed", "gate speed"),
];
const OF_HEAT: [(&str, &str); 3] = [
    ("planned_charge", "charge"),
    ("planned_loss", "melt loss"),
    ("planned_fuel", "fuel"),
];
const OF_CASTING: [(&str, &str); 1] = [("planned_mass", "casting mass")];
const OF_MOULD: [(&str, &str); 3] = [
    ("allowance_x", "contraction"),
    ("allowance_y", "contraction"),
    ("allowance_z", "contraction"),
];

/// Reads what plan.json says.
///
/// # Errors
///
/// A file that is no plan.
pub fn of_plan(text: &str) -> Result<Prefilled, serde_json::Error> {
    let plan: PlanRead = serde_json::from_str(text)?;
    let words = |text: &str| Value::Text(text.to_owned());
    let mut mould = Fresh::of(&MOULDS)
        .with("job", words(&plan.job))
        .with("alloy", words(&plan.alloy))
        .with(
            "castings",
            Value::Whole(i64::try_from(plan.count).unwrap_or(i64::MAX)),
        );
    if let Some(flask) = plan.choices.get("flask") {
        mould = mould.with("flask", words(&flask.chosen));
    }
    let found: Vec<&str> = plan
        .remarks
        .iter()
        .map(|remark| remark.code.as_str())
        .collect();
    if !found.is_empty() {
        mould = mould.with("found", words(&found.join(" ")));
    }
    let row = |name: &str, [low, likely, high]: [f64; 3], unit: &str| {
        Fresh::of(&PLANNED)
            .with("figure", words(name))
            .with("low", Value::Real(low))
            .with("likely", Value::Real(likely))
            .with("high", Value::Real(high))
            .with("unit", words(unit))
    };
    let mut planned = Vec::new();
    for (name, figure) in &plan.figures {
        planned.push(row(
            name,
            [figure.low, figure.likely, figure.high],
            &figure.unit,
        ));
        let own = figure.beside.get(OWN_FACTOR);
        if let Some(factor) = own.and_then(|text| plain_number(text)) {
            let name = format!("{OWN_FACTOR} of {name}");
            planned.push(row(&name, [factor; 3], "1"));
        }
    }
    Ok(Prefilled {
        mould: filled(mould, &OF_MOULD, &plan),
        planned,
        heat: filled(
            Fresh::of(&HEATS).with("alloy", words(&plan.alloy)),
            &OF_HEAT,
            &plan,
        ),
        pour: filled(Fresh::of(&POURS), &OF_POUR, &plan),
        casting: filled(Fresh::of(&CASTINGS), &OF_CASTING, &plan),
        castings: plan.count,
    })
}

fn filled(mut fresh: Fresh, figures: &[(&str, &str)], plan: &PlanRead) -> Fresh {
    for (key, name) in figures {
        let table: &'static Table = fresh.table;
        let value = plan.figures.get(*name).zip(table.column(key));
        let value = value.and_then(|(figure, column): (_, &Column)| {
            column
                .read(&format!("{} {}", figure.likely, figure.unit))
                .ok()
        });
        if let Some(value) = value {
            fresh = fresh.with(key, value);
        }
    }
    fresh
}
