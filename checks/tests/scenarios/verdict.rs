//! Whether a scenario is met: each figure in its range or explained, each warning told.

use checks::repository::root;

use crate::product::{Product, Told, answer, of_remark, said_with};
use crate::range::{Lies, Range};
use crate::scenario::{Never, Quantity, Scenario, Warning};

/// A line of the table of deviations.
pub struct Line {
    /// The scenario.
    pub scenario: String,
    /// What was asked.
    pub what: String,
    /// What had to come out, with its mark.
    pub expected: String,
    /// What came out.
    pub got: String,
    /// In range, explained, or what is wrong.
    pub verdict: Result<&'static str, String>,
}

/// Judges everything that a scenario asks.
pub fn judge(scenario: &Scenario) -> Vec<Line> {
    let product = match Product::of(scenario) {
        Ok(product) => product,
        Err(fault) => {
            return vec![line(
                scenario,
                "the job",
                "a plan",
                fault.clone(),
                Err(fault),
            )];
        }
    };
    let quantities = scenario.quantity.iter().map(|quantity| {
        let expected = quantity.expected.as_ref().or(quantity.words.as_ref());
        let expected = format!(
            "{} ({})",
            expected.map_or("", String::as_str),
            quantity.mark
        );
        let (got, verdict) = match told(&product, quantity) {
            Ok(told) => (shown(&told), judged(quantity, &told)),
            Err(fault) => (String::new(), Err(fault)),
        };
        line(scenario, &quantity.what, &expected, got, verdict)
    });
    let warnings = scenario.warn.iter().map(|warning| {
        let verdict = warned(&product, warning);
        line(scenario, &warning.about, "told", String::new(), verdict)
    });
    let never = scenario.never.iter().map(|never| {
        let verdict = kept_back(&product, never);
        line(scenario, &never.about, "not told", String::new(), verdict)
    });
    quantities.chain(warnings).chain(never).collect()
}

fn line(
    scenario: &Scenario,
    what: &str,
    expected: &str,
    got: String,
    verdict: Result<&'static str, String>,
) -> Line {
    Line {
        scenario: scenario.name.clone(),
        what: what.to_owned(),
        expected: expected.to_owned(),
        got,
        verdict,
    }
}

fn told(product: &Product, quantity: &Quantity) -> Result<Told, String> {
    match (&quantity.ask, &quantity.choice) {
        (Some(name), _) => {
            let worked = product.ask(name, quantity.given.iter())?;
            let mut told = answer(&worked, &quantity.figure)?;
            told.said.push_str(&product.said());
            Ok(told)
        }
        (None, Some(choice)) => product.choice(choice),
        (None, None) => product.figure(&quantity.figure),
    }
}

/// Whether the answer is the one wanted.
pub fn judged(quantity: &Quantity, told: &Told) -> Result<&'static str, String> {
    let unsaid = missing(&quantity.says, &told.said);
    if let Some(unsaid) = unsaid {
        return Err(format!("nothing says \"{unsaid}\""));
    }
    if let Some(words) = &quantity.words {
        let right = told.words.to_lowercase().contains(&words.to_lowercase());
        return right
            .then_some("as wanted")
            .ok_or_else(|| "other words".to_owned());
    }
    let (ends, unit) = told
        .figure
        .as_ref()
        .ok_or("words in the place of a figure")?;
    let typed = quantity.expected.as_deref().unwrap_or_default();
    let range = Range::read(typed).and_then(|range| range.within_unit(unit));
    let range = range.ok_or_else(|| format!("\"{typed}\" is no range in {unit}"))?;
    let lies = range.holds(*ends);
    if lies == Lies::Inside {
        return Ok("in range");
    }
    let far = lies == Lies::Outside;
    match (&quantity.explained, quantity.says.is_empty()) {
        (None, _) if far => Err("outside".to_owned()),
        (None, _) => Err("overlaps, unexplained".to_owned()),
        (Some(_), true) => Err("explained here, but the product does not say so".to_owned()),
        (Some(_), false) if far && !quantity.beyond => Err("outside, however explained".to_owned()),
        (Some(_), false) if far => Ok("outside, explained"),
        (Some(_), false) => Ok("overlaps, explained"),
    }
}

/// Lines that stand on every pour sheet.
const SHEET: &str = "crates/job/data/words/en-GB/paper.ftl";

fn warned(product: &Product, warning: &Warning) -> Result<&'static str, String> {
    let said = match (&warning.ask, &warning.code) {
        (Some(name), _) => said_with(&product.ask(name, warning.given.iter())?),
        (None, Some(code)) => {
            let of_code = product.remarks().filter(|remark| remark.code == *code);
            let texts: Vec<String> = of_code.map(of_remark).collect();
            if texts.is_empty() {
                return Err(format!("no remark \"{code}\""));
            }
            texts.join("\n").to_lowercase()
        }
        (None, None) if warning.on_every_sheet => {
            std::fs::read_to_string(root().join(SHEET)).map_err(|fault| fault.to_string())?
        }
        (None, None) => product.said(),
    };
    let needs_words = warning.code.is_none() && warning.says.is_empty();
    match missing(&warning.says, &said.to_lowercase()) {
        _ if needs_words => Err("no words to look for".to_owned()),
        Some(unsaid) => Err(format!("nothing says \"{unsaid}\"")),
        None => Ok("told"),
    }
}

fn kept_back(product: &Product, never: &Never) -> Result<&'static str, String> {
    match product.said().contains(&never.says.to_lowercase()) {
        true => Err(format!("it says \"{}\"", never.says)),
        false => Ok("kept back"),
    }
}

fn missing<'a>(words: &'a [String], said: &str) -> Option<&'a String> {
    words
        .iter()
        .find(|words| !said.contains(&words.to_lowercase()))
}

fn shown(told: &Told) -> String {
    let rounded = |value: f64| measure::text::rounded(value, 4);
    match &told.figure {
        Some(([low, likely, high], unit)) => {
            let [low, likely, high] = [*low, *likely, *high].map(rounded);
            format!("{likely} {unit} ({low} to {high})")
        }
        None => told.words.clone(),
    }
}
