//! A response over two things at once, as an SVG picture with contour lines.
//!
//! One hue from light to dark, lines with their numbers, and hatching where the runs teach nothing,
//! so that it is read in black and white and by everybody.

use job::words::Language;
use job::words::said::Said;

use crate::experiment::Experiment;
use crate::experiment::batches::Batch;
use crate::experiment::picture::drawn::{Drawing, drawn};
use crate::experiment::picture::view::{View, held, spread, views};
use crate::experiment::reading::{Fitted, Read};
use crate::experiment::space::Space;
use crate::experiment::told::mix;

mod contour;
mod drawn;
pub(super) mod view;

/// A picture as a file.
#[derive(Clone, Debug, PartialEq)]
pub struct Picture {
    /// Its name, as a file.
    pub file: String,
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
        for view in views(&space) {
            let made = one.measured.iter().map(|at| space.point(&batches[*at]));
            let names: Vec<String> = view
                .variables()
                .iter()
                .map(|at| space.names()[*at].clone())
                .collect();
            let unit = match response.unit.as_str() {
                "" => String::new(),
                unit => format!(", {unit}"),
            };
            let caption = Said::new("experiment-picture").with("name", response.name.as_str());
            let drawing = Drawing {
                title: format!("{}{unit}", response.name),
                caption: language.say(&caption),
                held: held_words(experiment, &space, fitted, &view, language),
                made: made.collect(),
            };
            let file = [vec![response.name.clone()], names].concat().join("-");
            found.push(Picture {
                file: format!("{}.svg", file_name(&file)),
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

fn file_name(name: &str) -> String {
    let letter = |one: char| if one.is_alphanumeric() { one } else { '-' };
    name.to_lowercase().chars().map(letter).collect()
}
