//! What is measured, as typed, checked.

use crate::experiment::file::ResponseFile;
use crate::experiment::meant::ends;
use crate::experiment::trouble::ExperimentError;
use crate::experiment::{Response, Want};

pub(super) fn response(typed: &ResponseFile) -> Result<Response, ExperimentError> {
    let name = typed.name.clone();
    let want = match typed.want.trim() {
        "high" => Want::High,
        "low" => Want::Low,
        range => match ends(range).filter(|(low, high)| low < high) {
            Some((low, high)) => Want::Within(low, high),
            None => {
                let typed = typed.want.clone();
                return Err(ExperimentError::Want { name, typed });
            }
        },
    };
    let above = |value: Option<f64>, key: &'static str, usual: f64| match value {
        None => Ok(usual),
        Some(value) if value > 0.0 && value.is_finite() => Ok(value),
        Some(_) => Err(ExperimentError::NotAboveNought {
            name: typed.name.clone(),
            key,
        }),
    };
    limits(&name, want, typed.worthless, typed.good)?;
    Ok(Response {
        unit: typed.unit.clone(),
        want,
        worthless: typed.worthless,
        good: typed.good,
        step: above(typed.step, "step", 0.0)?,
        weight: above(typed.weight, "weight", 1.0)?,
        name,
    })
}

fn limits(
    name: &str,
    want: Want,
    worthless: Option<f64>,
    good: Option<f64>,
) -> Result<(), ExperimentError> {
    let words = match (want, worthless, good) {
        (Want::Within(..), None, None) => return Ok(()),
        (Want::Within(..), _, _) => "the range says what is good, so leave worthless and good out",
        (Want::High, Some(worthless), Some(good)) if worthless >= good => {
            "high is wanted, so worthless has to lie below good"
        }
        (Want::Low, Some(worthless), Some(good)) if worthless <= good => {
            "low is wanted, so good has to lie below worthless"
        }
        _ => return Ok(()),
    };
    Err(ExperimentError::Wish {
        name: name.to_owned(),
        words: words.to_owned(),
    })
}
