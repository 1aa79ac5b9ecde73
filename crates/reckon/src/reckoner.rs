//! A law with what it asks for and how it is called.

use measure::source::Law;

use crate::answer::Answer;
use crate::ask::Ask;
use crate::given::Given;
use crate::input::Input;
use crate::refusal::Impossible;

/// A law that can be called by name.
#[derive(Clone, Copy)]
pub struct Reckoner {
    /// The name it is called by: trade words joined by hyphens.
    pub name: &'static str,
    /// The question it answers, as a founder would ask it.
    pub question: &'static str,
    /// The law.
    pub law: &'static Law,
    /// What has to be given, in the order in which one would say it.
    pub inputs: &'static [Input],
    /// One way of calling it, for help and for the tests.
    pub example: &'static [(&'static str, &'static str)],
    /// What to mind where this is done, beside people's bodies; empty where nothing hurts.
    pub cautions: &'static [&'static str],
    /// The call, at one point: the frame goes over the ranges. The first answer is the one asked
    /// for. The law should rise or fall steadily in each input.
    pub work: fn(&Given<'_>) -> Result<Vec<Answer>, Impossible>,
}

impl Reckoner {
    /// The example as it is typed in a terminal.
    pub fn example_line(&self) -> String {
        let given = self.example.iter();
        let given = given.map(|(key, text)| format!(" {key}={}", quoted(text)));
        format!("oddside reckon {}{}", self.name, given.collect::<String>())
    }

    /// The example as an ask.
    pub fn example_ask(&self) -> Ask {
        let given = self.example.iter();
        given.fold(Ask::new(self.name), |ask, (key, text)| ask.give(key, text))
    }
}

/// As a shell wants it.
fn quoted(text: &str) -> String {
    match text.contains(|c: char| !(c.is_alphanumeric() || matches!(c, '.' | '-' | '/'))) {
        true => format!("'{}'", text.replace('\'', "'\\''")),
        false => text.to_owned(),
    }
}
