//! A text before it is put into words: the id of a message, and what is put into it.

use std::borrow::Cow;

use measure::text::shown::Between;

/// A message with what is put into it, for any language.
#[derive(Clone, Debug, PartialEq)]
pub struct Said {
    id: Cow<'static, str>,
    given: Vec<(&'static str, Given)>,
}

/// What is put into a message.
#[derive(Clone, Debug, PartialEq)]
pub enum Given {
    /// A text that is the same in every language: a figure with its unit, a founder's own name.
    Text(String),
    /// A number of things, which may change the words beside it.
    Count(usize),
    /// Another message.
    Said(Said),
    /// Several messages, set one after the other.
    List(Vec<Said>),
}

impl Said {
    /// The message of this id, or of this id and attribute: `id.attribute`.
    pub fn new(id: impl Into<Cow<'static, str>>) -> Said {
        Said {
            id: id.into(),
            given: Vec::new(),
        }
    }

    /// Words that a founder typed, or that are the same in every language.
    pub fn typed(words: impl Into<String>) -> Said {
        Said::new("typed").with("words", words.into())
    }

    /// Several messages, set one after the other.
    pub fn list(each: Vec<Said>) -> Said {
        Said::new("list").with("each", each)
    }

    /// The same with something put into it under this name.
    #[must_use]
    pub fn with(mut self, name: &'static str, given: impl Into<Given>) -> Said {
        self.given.push((name, given.into()));
        self
    }

    /// The same things put into another message.
    #[must_use]
    pub fn under(&self, id: impl Into<Cow<'static, str>>) -> Said {
        Said {
            id: id.into(),
            given: self.given.clone(),
        }
    }

    /// Its id.
    pub fn id(&self) -> &str {
        &self.id
    }

    /// What is put into it, by name.
    pub fn given(&self) -> &[(&'static str, Given)] {
        &self.given
    }
}

/// A name as part of an id: small letters and digits, a hyphen for all between them.
pub fn slug(name: &str) -> String {
    let small = name.to_lowercase();
    let words = small.split(|letter: char| !letter.is_ascii_alphanumeric());
    words
        .filter(|word| !word.is_empty())
        .collect::<Vec<_>>()
        .join("-")
}

impl From<&Between> for Said {
    fn from(between: &Between) -> Said {
        Said::new("between")
            .with("low", between.low.as_str())
            .with("high", between.high.as_str())
    }
}

impl From<String> for Given {
    fn from(text: String) -> Given {
        Given::Text(text)
    }
}

impl From<&str> for Given {
    fn from(text: &str) -> Given {
        Given::Text(text.to_owned())
    }
}

impl From<usize> for Given {
    fn from(count: usize) -> Given {
        Given::Count(count)
    }
}

impl From<Said> for Given {
    fn from(said: Said) -> Given {
        Given::Said(said)
    }
}

impl From<Vec<Said>> for Given {
    fn from(list: Vec<Said>) -> Given {
        Given::List(list)
    }
}
