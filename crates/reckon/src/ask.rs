//! What a founder asks: a law by name, with figures as typed.

/// An ask.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Ask {
    /// Name of the law.
    pub name: String,
    /// Inputs by key, as typed, in the order typed.
    pub given: Vec<(String, String)>,
    /// The answer looked at, where it is not the first: what would narrow it is weighed.
    pub answer: Option<String>,
}

impl Ask {
    /// An ask without figures.
    pub fn new(name: &str) -> Ask {
        Ask {
            name: name.to_owned(),
            given: Vec::new(),
            answer: None,
        }
    }

    /// Looking at the answer of this name.
    pub fn look_at(mut self, answer: &str) -> Ask {
        self.answer = Some(answer.to_owned());
        self
    }

    /// With one more figure.
    pub fn give(mut self, key: &str, text: &str) -> Ask {
        self.given.push((key.to_owned(), text.to_owned()));
        self
    }

    /// What was typed under a key; the last one counts.
    pub fn typed(&self, key: &str) -> Option<&str> {
        let of_key = self.given.iter().rev().find(|(name, _)| name == key);
        of_key.map(|(_, text)| text.as_str())
    }
}
