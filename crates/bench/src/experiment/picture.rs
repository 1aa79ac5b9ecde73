//! A response over two things at once, as an SVG picture with contour lines.
//!
//! One hue from light to dark, lines with their numbers, and hatching where the runs teach nothing,
//! so that it is read in black and white and by everybody.

use job::words::Language;
use job::words::said::Said;

use crate::experiment::batches::Batch;
use crate::experiment::picture::along::along;
use crate::experiment::picture::drawn::{Drawing, drawn};
use crate::experiment::picture::view::{View, held, spread, views};
use crate::experiment::reading::{Fitted, Read};
use crate::experiment::space::Space;
use crate::experiment::told::mix;
use crate::experiment::{Experiment, Response};

mod along;
mod contour;
mod drawn;
pub(super) mod view;

/// A picture as a file.
#[derive(Clone, Debug, PartialEq)]
pub struct Picture {
    /// Its name, as a file.
    pub file: String,
    /// What it shows, in a few words.
    pub title: String,
    /// Its SVG.
    pub svg: String,
}

/// Pictures of every response that can be read, over each two things or three shares.
pub fn pictures(
    experiment: &Experiment,
    batches: &[Batch],
    read: &Read,
    language: Language,
) -> Vec<Picture> {
    let space = Space::of(experiment);
    let mut found = Vec::new();
    for (response, one) in experiment.responses.iter().zip(&read.responses) {
        let Ok(fitted) = &one.fitted else {
            continue;
        };
        let titled = titled(response);
        if let Some(along) = along(&space) {
            let made = one.measured.iter().map(|at| space.point(&batches[*at]));
            let still = axes_held(experiment, &space, fitted, language);
            let drawing = Drawing {
                title: titled.clone(),
                caption: language.word("experiment-picture-along"),
                held: still,
                made: made.collect(),
            };
            found.push(Picture {
                file: format!(
                    "{}.svg",
                    file_name(&format!("{}-{}", response.name, along.name))
                ),
                title: titled.clone(),
                svg: along::drawn(&space, &along, fitted, one, &drawing),
            });
        }
        for view in views(&space) {
            let made = one.measured.iter().map(|at| space.point(&batches[*at]));
            let names: Vec<String> = view
                .variables()
                .iter()
                .map(|at| space.names()[*at].clone())
                .collect();
            let caption = Said::new("experiment-picture").with("name", response.name.as_str());
            let drawing = Drawing {
                title: titled.clone(),
                caption: language.say(&caption),
                held: held_words(experiment, &space, fitted, &view, language),
                made: made.collect(),
            };
            let file = [vec![response.name.clone()], names].concat().join("-");
            found.push(Picture {
                file: format!("{}.svg", file_name(&file)),
                title: titled.clone(),
                svg: drawn(
                    &space,
                    fitted,
                    &view,
                    &spread(&space, fitted, &view),
                    &drawing,
                ),
            });
        }
    }
    found
}

/// A response with its unit, as the title of its pictures.
pub(super) fn titled(response: &Response) -> String {
    match response.unit.as_str() {
        "" => response.name.clone(),
        unit => format!("{}, {unit}", response.name),
    }
}

/// The choices held still beside the one thing that changes, in words.
fn axes_held(
    experiment: &Experiment,
    space: &Space,
    fitted: &Fitted,
    language: Language,
) -> Option<String> {
    let settings = space.settings(&held(space, fitted));
    let choices = experiment.settings.iter().zip(&settings);
    let choices = choices.filter(|(one, _)| one.choices.is_some());
    let choices = choices.map(|(one, value)| format!("{} {}", one.name, one.shown(*value)));
    let held = choices.collect::<Vec<_>>().join(", ");
    (!held.is_empty())
        .then(|| language.say(&Said::new("experiment-picture-held").with("held", held)))
}

/// What is held still, in words; nothing where the view shows all that changes.
fn held_words(
    experiment: &Experiment,
    space: &Space,
    fitted: &Fitted,
    view: &View,
    language: Language,
) -> Option<String> {
    let shown = view.variables();
    (shown.len() < space.names().len()).then(|| {
        let names: Vec<String> = shown.iter().map(|at| space.names()[*at].clone()).collect();
        let all = mix(experiment, &held(space, fitted));
        let still = all.split(", ").filter(|one| {
            !names
                .iter()
                .any(|name| one.starts_with(&format!("{name} ")))
        });
        let still = still.collect::<Vec<_>>().join(", ");
        language.say(&Said::new("experiment-picture-held").with("held", still))
    })
}

pub(super) fn file_name(name: &str) -> String {
    let letter = |one: char| if one.is_alphanumeric() { one } else { '-' };
    name.to_lowercase().chars().map(letter).collect()
}
