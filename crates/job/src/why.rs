//! Why a figure of a plan is what it is: the law, the numbers in it, the sources, and what would
//! make it surer.

use measure::source::Source;
use reckon::ask::Ask;
use reckon::formula::with_numbers;
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
    let reckoner = reckon::all()
        .map(|(_, reckoner)| reckoner)
        .find(|reckoner| reckoner.law == figure.law)?;
    let about = |key: &str| {
        let input = reckoner.inputs.iter().find(|input| input.key == key);
        input.map_or_else(String::new, |input| input.about.to_owned())
    };
    let given = figure.inputs.iter();
    Some(Why {
        reckoner,
        with_numbers: with_numbers(reckoner.law.formula, &symbols(reckoner, figure)),
        given: given
            .map(|(key, text)| (key.clone(), about(key), text.clone()))
            .collect(),
        narrowing: narrowing(reckoner, figure),
        sources: figure
            .sources
            .iter()
            .filter_map(|key| measure::source::source(key))
            .collect(),
    })
}

fn symbols(reckoner: &'static Reckoner, figure: &Figure) -> Vec<(&'static str, String)> {
    let with_symbol = reckoner
        .inputs
        .iter()
        .filter(|input| !input.symbol.is_empty());
    let given = |key: &str| figure.inputs.iter().find(|(name, _)| name == key);
    with_symbol
        .filter_map(|input| given(input.key).map(|(_, text)| (input.symbol, text.clone())))
        .collect()
}

/// The law asked again with what went in: only what can be called as it stands is told.
fn narrowing(reckoner: &Reckoner, figure: &Figure) -> Vec<Narrowing> {
    let asked = |key: &&(String, String)| reckoner.inputs.iter().any(|input| input.key == key.0);
    let known = figure.inputs.iter().filter(asked);
    let ask = known.fold(Ask::new(reckoner.name), |ask, (key, text)| {
        ask.give(key, text)
    });
    work_out(&ask).map_or_else(|_| Vec::new(), |worked| worked.narrowing)
}
