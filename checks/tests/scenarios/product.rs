//! The product asked, and everything it says in answer.

use checks::repository::root;
use job::plan::Plan;
use job::remark::{Remark, of_mesh};
use job::why::why;
use job::words::Language;
use reckon::answer::Outcome;
use reckon::ask::Ask;
use reckon::worked::Worked;

use crate::scenario::Scenario;

/// What a scenario has to hand: a plan, the remarks on a mesh.
pub struct Product {
    plan: Option<Plan>,
    of_mesh: Vec<Remark>,
}

/// What came of one ask of the product.
pub struct Told {
    /// Low, likely and high with their unit, where it is a figure.
    pub figure: Option<([f64; 3], String)>,
    /// The words of a choice or of an answer.
    pub words: String,
    /// Everything said with it, in small letters.
    pub said: String,
}

impl Product {
    /// Plans the job and looks at the mesh of a scenario.
    pub fn of(scenario: &Scenario) -> Result<Product, String> {
        let plan = scenario.job.as_deref().map(planned).transpose()?;
        let of_mesh = scenario.mesh.as_deref().map(looked).transpose()?;
        Ok(Product {
            plan,
            of_mesh: of_mesh.unwrap_or_default(),
        })
    }

    /// Every remark, on the plan and on the mesh.
    pub fn remarks(&self) -> impl Iterator<Item = &Remark> {
        let of_plan = self.plan.iter().flat_map(|plan| &plan.remarks);
        of_plan.chain(&self.of_mesh)
    }

    /// Everything that plan and mesh say, in small letters.
    pub fn said(&self) -> String {
        let mut said: Vec<String> = self.remarks().map(of_remark).collect();
        if let Some(plan) = &self.plan {
            for figure in &plan.figures {
                said.push(figure.name.to_owned());
                said.extend(
                    figure
                        .because
                        .as_ref()
                        .map(|because| Language::Uk.say(because)),
                );
                // As `oddside why` tells it.
                let given = why(figure).map_or_else(Vec::new, |why| why.given);
                said.extend(
                    given
                        .iter()
                        .map(|(key, about, text)| format!("{key} {text}: {about}")),
                );
            }
            let choices = plan.choices.iter();
            said.extend(choices.map(|choice| {
                let chosen = Language::Uk.say(&choice.chosen);
                format!(
                    "{} {chosen} {}",
                    choice.name,
                    Language::Uk.say(&choice.because)
                )
            }));
        }
        said.join("\n").to_lowercase()
    }

    /// A figure of the plan.
    pub fn figure(&self, name: &str) -> Result<Told, String> {
        let plan = self.plan.as_ref().ok_or("nothing is planned")?;
        let figure = plan.figure(name).ok_or_else(|| {
            let names: Vec<_> = plan.figures.iter().map(|figure| figure.name).collect();
            format!("the plan has no \"{name}\", only {}", names.join(", "))
        })?;
        Ok(Told {
            figure: Some((figure.amount.values(), figure.amount.unit().to_owned())),
            words: String::new(),
            said: self.said(),
        })
    }

    /// A choice of the plan.
    pub fn choice(&self, name: &str) -> Result<Told, String> {
        let plan = self.plan.as_ref().ok_or("nothing is planned")?;
        let choice = plan
            .choice(name)
            .ok_or_else(|| format!("the plan does not choose \"{name}\""))?;
        Ok(Told {
            figure: None,
            words: Language::Uk.say(&choice.chosen),
            said: self.said(),
        })
    }

    /// A law asked; figures of the plan may be carried over into what it is given.
    pub fn ask<'a>(
        &self,
        name: &str,
        given: impl Iterator<Item = (&'a String, &'a String)>,
    ) -> Result<Worked, String> {
        let mut ask = Ask::new(name);
        for (key, text) in given {
            ask = ask.give(key, &self.filled_in(text)?);
        }
        reckon::worked::work_out(&ask).map_err(|refusal| format!("{name}: {refusal}"))
    }

    /// `{figure}` with its range, `{figure | likely}` with its likely value.
    fn filled_in(&self, text: &str) -> Result<String, String> {
        let inside = |text: &str| Some(text.strip_prefix('{')?.strip_suffix('}')?.to_owned());
        let Some(wanted) = inside(text) else {
            return Ok(text.to_owned());
        };
        let (name, likely) = match wanted.split_once(" | ") {
            Some((name, "likely")) => (name.to_owned(), true),
            _ => (wanted, false),
        };
        let (values, unit) = self.figure(&name)?.figure.ok_or("no figure")?;
        let [low, middle, high] = values;
        Ok(match likely || low == high {
            true => format!("{middle} {unit}"),
            false => format!("{low} to {high} {unit}, likely {middle} {unit}"),
        })
    }
}

/// One answer of an ask, with everything said around it.
pub fn answer(worked: &Worked, name: &str) -> Result<Told, String> {
    let figure = worked
        .answers
        .iter()
        .find(|figure| figure.name == name)
        .ok_or_else(|| {
            let names: Vec<_> = worked.answers.iter().map(|figure| figure.name).collect();
            format!("no answer \"{name}\", only {}", names.join(", "))
        })?;
    Ok(Told {
        figure: figure.filed().map(|(ends, unit)| (ends, unit.to_owned())),
        words: match &figure.outcome {
            Outcome::Words(words) => words.clone(),
            Outcome::Figure { .. } => String::new(),
        },
        said: said_with(worked),
    })
}

/// Doubts, cautions, range, what was taken, and the words among the answers, in small letters.
pub fn said_with(worked: &Worked) -> String {
    let mut said = worked.doubts.clone();
    said.extend(
        worked
            .reckoner
            .cautions
            .iter()
            .map(|line| (*line).to_owned()),
    );
    said.push(worked.reckoner.law.range.to_owned());
    said.extend(
        worked
            .given
            .iter()
            .map(|back| format!("{} {}", back.about, back.text)),
    );
    said.extend(
        worked
            .answers
            .iter()
            .filter_map(|figure| match &figure.outcome {
                Outcome::Words(words) => Some(words.clone()),
                Outcome::Figure { .. } => None,
            }),
    );
    said.join("\n").to_lowercase()
}

/// A remark as one text.
pub fn of_remark(remark: &Remark) -> String {
    let file = remark.file();
    format!("{}: {}; {}", file.code, file.words, file.advice)
}

fn planned(folder: &str) -> Result<Plan, String> {
    let opened = job::folder::open(&root().join(folder)).map_err(|fault| fault.to_string())?;
    Ok(job::work_out::work_out(
        &opened.job,
        &opened.shop,
        &opened.part,
    ))
}

fn looked(mesh: &str) -> Result<Vec<Remark>, String> {
    let looked = job::folder::look_at(&root().join(mesh), None);
    let looked = looked.map_err(|fault| fault.to_string())?;
    Ok(of_mesh::remarks(&looked))
}
