//! What is typed in a job's file, as lines that are changed where they stand.

use job::changed::{Typed, typed};
use job::folder::Opened;
use job::plan::alloy_label;
use job::shop::Shop;
use job::typed_key::{KeyKind, TYPED_KEYS, TypedKey};
use job::words::said::{Said, slug};
use serde::Serialize;
use utoipa::ToSchema;

use crate::answers::sheets::BlockAnswer;
use crate::errors::WebError;

/// What stands in the job's file.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct TypedLine {
    /// The key.
    pub key: String,
    /// What it is called.
    pub label: String,
    /// What stands there; none where it is left to the program.
    #[schema(value_type = Option<TypedValue>)]
    pub value: Option<Typed>,
    /// What is typed.
    pub kind: LineKind,
    /// What it may be, where it is one of a few.
    pub choices: Vec<OneChoice>,
    /// How it is typed.
    pub example: Option<String>,
    /// What is taken where nothing stands there; none where it is worked out or does not count.
    pub otherwise: Option<String>,
}

/// One of a few words.
#[derive(Clone, Debug, PartialEq, Serialize, ToSchema)]
pub struct OneChoice {
    /// As the file has it.
    pub value: String,
    /// As it is shown.
    pub shown: String,
}

/// What is typed for a key.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, ToSchema)]
#[serde(rename_all = "kebab-case")]
pub enum LineKind {
    /// Words, or a figure with its unit.
    Text,
    /// A whole number.
    Count,
    /// Yes or no.
    Yes,
    /// One of a few words.
    OneOf,
    /// A place on the joint.
    Place,
    /// Several of them.
    Places,
}

/// What may stand behind a key, as it is described: [`Typed`] itself knows no page.
#[derive(Clone, Debug, Serialize, ToSchema)]
#[serde(untagged)]
pub enum TypedValue {
    /// Yes or no.
    Yes(bool),
    /// A whole number.
    Count(i64),
    /// Words, or a figure with its unit.
    Text(String),
    /// Several of them.
    List(Vec<String>),
}

/// What is typed in a job's file.
pub struct Lines<'a> {
    /// The job.
    pub opened: &'a Opened,
    /// The text of its file.
    pub text: &'a str,
}

impl Lines<'_> {
    /// Those of a block that are wanted.
    ///
    /// # Errors
    ///
    /// A file that cannot be read.
    pub fn of_block(
        &self,
        block: Option<&str>,
        wanted: impl Fn(&TypedKey) -> bool,
    ) -> Result<Vec<TypedLine>, WebError> {
        let has_mesh = self
            .opened
            .part
            .looked()
            .is_some_and(|looked| looked.format.is_some());
        let keys = TYPED_KEYS
            .iter()
            .filter(|key| key.block == block && wanted(key));
        keys.filter(|key| has_mesh || key.path != "part.unit")
            .map(|key| line(self.text, key, &self.opened.shop))
            .collect()
    }

    /// The line that sets a figure or a choice by itself.
    ///
    /// # Errors
    ///
    /// A file that cannot be read.
    pub fn setting(&self, behind: Option<&str>) -> Result<Option<TypedLine>, WebError> {
        let key = TYPED_KEYS
            .iter()
            .find(|key| key.sets.is_some() && key.sets == behind);
        key.map(|key| line(self.text, key, &self.opened.shop))
            .transpose()
    }
}

/// What stands behind a key in the text of a file.
///
/// # Errors
///
/// A file that cannot be read.
pub fn line(text: &str, key: &TypedKey, shop: &Shop) -> Result<TypedLine, WebError> {
    let (kind, choices) = kind(key, shop);
    Ok(TypedLine {
        key: key.path.to_owned(),
        label: shop.words.word(key.label),
        value: typed(text, key)?,
        kind,
        choices,
        example: key.example.map(str::to_owned),
        otherwise: key.otherwise.map(str::to_owned),
    })
}

/// Lines of a file below the headings of their keys, which stand in the order of the sheet.
///
/// # Errors
///
/// Those of [`line()`].
pub fn typed_blocks(
    text: &str,
    keys: &[TypedKey],
    shop: &Shop,
) -> Result<Vec<BlockAnswer>, WebError> {
    let mut blocks: Vec<BlockAnswer> = Vec::new();
    for key in keys {
        let id = key.block.unwrap_or_default();
        if blocks.last().is_none_or(|block| block.id != id) {
            blocks.push(BlockAnswer {
                id: id.to_owned(),
                heading: shop.words.word(id),
                rows: Vec::new(),
                typed: Vec::new(),
            });
        }
        if let Some(block) = blocks.last_mut() {
            block.typed.push(line(text, key, shop)?);
        }
    }
    Ok(blocks)
}

/// What is typed for a key, and what it may be where it is one of a few.
fn kind(key: &TypedKey, shop: &Shop) -> (LineKind, Vec<OneChoice>) {
    let itself = |value: &str| OneChoice {
        value: value.to_owned(),
        shown: value.to_owned(),
    };
    let said = |value: &str, said: Said| OneChoice {
        value: value.to_owned(),
        shown: shop.words.say(&said),
    };
    match key.kind {
        KeyKind::Text => (LineKind::Text, Vec::new()),
        KeyKind::Count => (LineKind::Count, Vec::new()),
        KeyKind::Yes => (LineKind::Yes, Vec::new()),
        KeyKind::Place => (LineKind::Place, Vec::new()),
        KeyKind::Places => (LineKind::Places, Vec::new()),
        KeyKind::Signs(signs) => (
            LineKind::OneOf,
            signs.iter().map(|sign| itself(sign)).collect(),
        ),
        KeyKind::OneOf(words) => {
            let words = words.iter();
            let each = words.map(|word| said(word, Said::new(format!("said-{}", slug(word)))));
            (LineKind::OneOf, each.collect())
        }
        KeyKind::Alloy => {
            let all = metal::alloys::all().iter();
            let each = all.map(|alloy| said(&alloy.name, alloy_label(&alloy.name)));
            (LineKind::OneOf, each.collect())
        }
        KeyKind::Flask => {
            let flasks = shop.flasks.iter();
            (
                LineKind::OneOf,
                flasks.map(|flask| itself(&flask.name)).collect(),
            )
        }
    }
}
