//! Why a figure of a plan is what it is: the law, the numbers in it, the sources, and what would
//! make it surer.

use measure::source::Source;
use reckon::ask::Ask;
use reckon::reckoner::Reckoner;
use reckon::worked::{Narrowing, work_out};

use crate::plan::Figure;

/// Everything that stands behind a figure.
#[derive(Clone)]
pub struct Why {
    /// The name by which its law is called, and the question that answers.
    pub reckoner: &'static Reckoner,
    /// The formula with the numbers in the place of its symbols.
    pub with_numbers: String,
    /// What went in: its key or name, what it is, the figure.
    pub given: Vec<(String, String, String)>,
    /// What would narrow it, the most helpful first; empty where nothing that went in has a band.
    pub narrowing: Vec<Narrowing>,
    /// Its sources.
    pub sources: Vec<&'static Source>,
}

/// What stands behind a figure; nothing where its law cannot be called by name.
pub fn why(figure: &Figure) -> Option<Why> {
    let reckoner = reckoner_of(figure)?;
    let about = |key: &str| {
        let input = reckoner.inputs.iter().find(|input| input.key == key);
        input.map_or_else(String::new, |input| input.about.to_owned())
    };
    let given = figure.inputs.iter();
    let again = work_out(&ask(reckoner, figure)).ok();
    let with_numbers = again.as_ref().map(|worked| worked.with_numbers.clone());
    Some(Why {
        reckoner,
        with_numbers: with_numbers.unwrap_or_else(|| reckoner.law.formula.to_owned()),
        given: given
            .map(|(key, text)| (key.clone(), about(key), text.clone()))
            .collect(),
        narrowing: again
            .filter(|_| !figure.in_part)
            .map_or_else(Vec::new, |worked| worked.narrowing),
        sources: figure
            .sources
            .iter()
            .filter_map(|key| measure::source::source(key))
            .collect(),
    })
}

/// The law asked again with what went in.
pub fn ask(reckoner: &Reckoner, figure: &Figure) -> Ask {
    let given = figure.asked.iter();
    let ask = given.fold(Ask::new(reckoner.name), |ask, (key, text)| {
        ask.give(key, text)
    });
    figure
        .answer
        .map_or(ask.clone(), |answer| ask.look_at(answer))
}

/// The reckoner of a figure's law.
pub fn reckoner_of(figure: &Figure) -> Option<&'static Reckoner> {
    reckon::all()
        .map(|(_, reckoner)| reckoner)
        .find(|reckoner| reckoner.law == figure.law)
}
