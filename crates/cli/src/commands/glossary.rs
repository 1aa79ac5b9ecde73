//! `oddside glossary [WORD]`: words of the trade, each in a sentence.

use std::process::ExitCode;

use job::glossary::{Term, all, found};
use job::words::Language;
use serde_json::json;

use crate::commands::sand::shop;
use crate::print;
use crate::trouble::Trouble;

/// Tells one word, or all.
pub fn run(word: Option<&str>, json: bool) -> Result<ExitCode, Trouble> {
    let language = shop()?.words;
    let terms = match word {
        Some(word) => found(word, language),
        None => all(language),
    };
    if terms.is_empty() {
        return Err(Trouble::NoWord(word.unwrap_or_default().to_owned()));
    }
    match json {
        true => {
            let all: Vec<serde_json::Value> =
                terms.iter().map(|term| as_json(term, language)).collect();
            print::out(&format!("{:#}\n", serde_json::Value::Array(all)))?;
        }
        false => {
            for term in &terms {
                let [word, meaning] = [term.word(), term.meaning()].map(|said| language.say(&said));
                let title = term.rests_on();
                print::out(&format!("{word}: {meaning} [{title}]\n"))?;
            }
        }
    }
    Ok(ExitCode::SUCCESS)
}

fn as_json(term: &Term, language: Language) -> serde_json::Value {
    json!({
        "word": language.say(&term.word()),
        "meaning": language.say(&term.meaning()),
        "source": term.rests_on(),
    })
}
