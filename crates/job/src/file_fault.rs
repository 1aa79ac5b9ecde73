//! What is wrong in a file the founder wrote, with the place and the nearest right key.

use serde::de::DeserializeOwned;
use thiserror::Error;

/// A fault at a place in a file.
#[derive(Clone, Debug, PartialEq, Error)]
#[error("{file}, line {line}, column {column}: {message}")]
pub struct FileFault {
    /// The file.
    pub file: String,
    /// Its text.
    pub text: String,
    /// The bytes that are wrong.
    pub span: std::ops::Range<usize>,
    /// Line, counted from one.
    pub line: usize,
    /// Column, counted from one.
    pub column: usize,
    /// What is wrong.
    pub message: String,
    /// What to do about it.
    pub hint: Option<String>,
}

/// Reads a file of the founder's.
pub fn read<T: DeserializeOwned>(file: &str, text: &str) -> Result<T, Box<FileFault>> {
    toml::from_str(text).map_err(|error| Box::new(fault(file, text, &error)))
}

impl FileFault {
    /// A fault at some bytes of a text.
    pub fn at(
        file: &str,
        text: &str,
        span: std::ops::Range<usize>,
        message: String,
        hint: Option<String>,
    ) -> FileFault {
        let before = &text[..span.start.min(text.len())];
        let line_start = before.rfind('\n').map_or(0, |newline| newline + 1);
        FileFault {
            file: file.to_owned(),
            text: text.to_owned(),
            line: before.matches('\n').count() + 1,
            column: before[line_start..].chars().count() + 1,
            span,
            message,
            hint,
        }
    }
}

fn fault(file: &str, text: &str, error: &toml::de::Error) -> FileFault {
    let span = error.span().unwrap_or(0..0);
    let message = error.message().trim().to_owned();
    FileFault::at(file, text, span, message, hint(error.message()))
}

/// The nearest of the names that would have been right.
fn hint(message: &str) -> Option<String> {
    let mut quoted = message.split('`').skip(1).step_by(2);
    let typed = message.starts_with("unknown").then(|| quoted.next())??;
    let nearest = quoted.min_by_key(|name| strsim::damerau_levenshtein(typed, name))?;
    Some(format!("did you mean `{nearest}`?"))
}
