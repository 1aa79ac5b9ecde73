//! A plan as it is written to `plan.json`: the counterpart of the Plan at the door.

use indexmap::IndexMap;
use measure::flow::Duration;
use schemars::JsonSchema;
use serde::Serialize;

use crate::plan::{Figure, Plan};
use crate::remark::{Remark, RemarkFile};
use crate::solved::{SolvedBy, SolvedTimes};
use crate::words::Language;

/// The whole of `plan.json`.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct PlanFile {
    /// Version of the program that worked it out.
    pub oddside: String,
    /// What the job is called.
    pub job: String,
    /// Day of the pour, as typed in the job.
    pub date: Option<String>,
    /// The alloy.
    pub alloy: String,
    /// Castings in the mould.
    pub count: usize,
    /// Figures by their trade names, in the order of the day.
    pub figures: IndexMap<String, FigureFile>,
    /// What was chosen from the founder's own things.
    pub choices: IndexMap<String, ChoiceFile>,
    /// Times by the heat in the mould, where it was followed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub solved: Option<SolvedFile>,
    /// Remarks, the weightiest first.
    pub remarks: Vec<RemarkFile>,
    /// Every source a figure rests on, by its key.
    pub sources: IndexMap<String, SourceFile>,
}

/// One figure.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct FigureFile {
    /// The lowest value.
    pub low: f64,
    /// The likely value.
    pub likely: f64,
    /// The highest value.
    pub high: f64,
    /// The unit of the three.
    pub unit: String,
    /// The law it follows from.
    pub law: LawFile,
    /// What went into the law, under the keys of its reckoner: the law can be asked with it again.
    pub inputs: IndexMap<String, String>,
    /// What is worth knowing beside it, by name.
    #[serde(skip_serializing_if = "IndexMap::is_empty")]
    pub beside: IndexMap<String, String>,
    /// Keys of the sources of the law and of the inputs.
    pub sources: Vec<String>,
    /// What sets the figure, where there is a choice.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub because: Option<String>,
}

/// A law.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct LawFile {
    /// Its name in the program.
    pub name: String,
    /// The formula.
    pub formula: String,
    /// Where it holds.
    pub range: String,
}

/// A choice.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct ChoiceFile {
    /// What was chosen.
    pub chosen: String,
    /// Why.
    pub because: String,
}

/// Times by the heat in the mould, in seconds from the full mould.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct SolvedFile {
    /// Whether by a quick look on wide cells; else by the findings of a freezing.
    pub quick_look: bool,
    /// Cells of the box around the metal.
    pub cells: usize,
    /// When the last of the castings is solid: low, likely, high.
    pub castings_s: [f64; 3],
    /// When all metal may be moved; null where the plan opens sooner.
    pub leave_s: Option<f64>,
    /// When the castings may be laid open; null where the plan opens sooner.
    pub open_s: Option<f64>,
}

/// A source.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct SourceFile {
    /// What it is.
    pub title: String,
    /// Where it was seen, or "from memory".
    pub seen: String,
}

impl PlanFile {
    /// The file of a plan.
    pub fn of(plan: &Plan) -> PlanFile {
        let source = |key: &String| {
            let known = measure::source::source(key)?;
            let file = SourceFile {
                title: known.title.clone(),
                seen: known.seen.clone(),
            };
            Some((key.clone(), file))
        };
        let choice = |choice: &crate::plan::Choice| {
            let file = ChoiceFile {
                chosen: Language::Uk.say(&choice.chosen),
                because: Language::Uk.say(&choice.because),
            };
            (choice.name.to_owned(), file)
        };
        PlanFile {
            oddside: env!("CARGO_PKG_VERSION").to_owned(),
            job: plan.name.clone(),
            date: plan.date.clone(),
            alloy: plan.alloy.clone(),
            count: plan.count,
            figures: plan.figures.iter().map(figure).collect(),
            choices: plan.choices.iter().map(choice).collect(),
            solved: plan.solved.as_ref().map(solved),
            remarks: plan.remarks.iter().map(Remark::file).collect(),
            sources: plan.sources.iter().filter_map(source).collect(),
        }
    }

    /// The file as text, the same bytes for the same plan.
    pub fn text(&self) -> String {
        serde_json::to_string_pretty(self).unwrap_or_default() + "\n"
    }
}

/// The schema of `plan.json`.
pub fn schema() -> String {
    let schema = schemars::schema_for!(PlanFile);
    serde_json::to_string_pretty(&schema).unwrap_or_default() + "\n"
}

fn figure(figure: &Figure) -> (String, FigureFile) {
    let [low, likely, high] = figure.amount.values().map(six_figures);
    let law = LawFile {
        name: figure.law.name.to_owned(),
        formula: figure.law.formula.to_owned(),
        range: figure.law.range.to_owned(),
    };
    let asked = figure.asked.iter();
    let is_input = |name: &str| figure.asked.iter().any(|(key, _)| *key == name);
    let told = figure.inputs.iter();
    let beside = told.filter(|(name, text)| !is_input(name) && !text.is_empty());
    let file = FigureFile {
        low,
        likely,
        high,
        unit: figure.amount.unit().to_owned(),
        law,
        inputs: asked
            .map(|(key, text)| ((*key).to_owned(), text.clone()))
            .collect(),
        beside: beside.cloned().collect(),
        sources: figure.sources.clone(),
        because: figure
            .because
            .as_ref()
            .map(|because| Language::Uk.say(because)),
    };
    (figure.name.to_owned(), file)
}

fn solved(times: &SolvedTimes) -> SolvedFile {
    let castings = &times.castings;
    let seconds = |time: Duration| six_figures(time.as_s());
    SolvedFile {
        quick_look: times.by == SolvedBy::QuickLook,
        cells: times.cells,
        castings_s: [castings.low(), castings.likely(), castings.high()].map(seconds),
        leave_s: times.leave.map(seconds),
        open_s: times.open.map(seconds),
    }
}

/// Six figures are more than anything here is known to, and keep the file free of last bits.
fn six_figures(value: f64) -> f64 {
    measure::text::rounded(value, 6).parse().unwrap_or(value)
}
