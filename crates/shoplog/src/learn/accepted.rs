//! A lesson accepted: the line of shop.toml that it becomes. All else in the file stays.

use job::words::Language;
use job::words::said::Said;
use measure::text::rounded;
use thiserror::Error;
use toml_edit::{ArrayOfTables, DocumentMut, Item, Table, value};

use crate::learn::apart::Apart;
use crate::learn::told::rests_on;
use crate::learn::{Lesson, Of};

/// Why a lesson is not put into the shop's file.
#[derive(Debug, Error)]
pub enum AcceptError {
    /// A file that is no TOML.
    #[error("shop.toml cannot be read ({0}): put that right first")]
    Toml(#[from] toml_edit::TomlError),
    /// A place that holds something else.
    #[error("shop.toml has {0} in another form than this can change: change it by hand")]
    Shape(&'static str),
    /// A lesson that the shop's file has no place for.
    #[error(
        "{0} has no key in shop.toml: contraction along one direction goes into a job's [pattern]"
    )]
    NoKey(String),
    /// A lesson that rests on too little.
    #[error("{0} rests on too few entries, or is no surer than the book: log more of it first")]
    TooLittle(String),
}

/// The word by which a lesson is accepted: `contraction:A356`.
pub fn name(of: &Of) -> String {
    match of {
        Of::Contraction { alloy, along: None } => format!("contraction:{alloy}"),
        Of::Contraction {
            alloy,
            along: Some(along),
        } => format!("contraction:{alloy}:{along}"),
        Of::Loss { alloy } => format!("loss:{alloy}"),
        Of::Freezing => "freezing".to_owned(),
        Of::Drying => "drying".to_owned(),
        Of::Efficiency => "efficiency".to_owned(),
        Of::Filling => "filling".to_owned(),
        Of::Strength => "strength".to_owned(),
    }
}

/// Whether the shop's file has a place for it.
pub fn has_key(of: &Of) -> bool {
    !matches!(of, Of::Contraction { along: Some(_), .. })
}

/// The text of shop.toml with a lesson in it.
///
/// # Errors
///
/// A lesson that suggests nothing or has no place, a file that cannot be changed.
pub fn accepted(text: &str, lesson: &Lesson) -> Result<String, AcceptError> {
    if !has_key(&lesson.of) {
        return Err(AcceptError::NoKey(name(&lesson.of)));
    }
    if !lesson.suggests() {
        return Err(AcceptError::TooLittle(name(&lesson.of)));
    }
    let mut file: DocumentMut = text.parse()?;
    let [_, likely, _] = lesson.now();
    let figure = rounded(likely, 3);
    match &lesson.of {
        Of::Contraction { alloy, .. } => {
            own(&mut file, alloy)?["contraction"] = value(format!("{figure} %"));
        }
        Of::Loss { alloy } => {
            own(&mut file, alloy)?["loss"] = value(format!("{figure} % of charge"));
        }
        Of::Freezing | Of::Drying | Of::Efficiency | Of::Filling => {
            write_factor(
                &mut file,
                &name(&lesson.of),
                lesson.now(),
                &rests_on(lesson),
            )?;
        }
        Of::Strength => {
            let heap = file.get_mut("heap").and_then(Item::as_table_mut);
            let heap = heap.ok_or(AcceptError::Shape("[heap]"))?;
            heap["strength"] = value(format!("{figure} kPa"));
        }
    }
    Ok(file.to_string())
}

/// The text of shop.toml with the contact of metal and sand in it.
///
/// # Errors
///
/// Castings that do not tell it apart from the sand, a file that cannot be changed.
pub fn accepted_contact(text: &str, apart: &Apart) -> Result<String, AcceptError> {
    if !apart.told {
        return Err(AcceptError::TooLittle(CONTACT.to_owned()));
    }
    let mut file: DocumentMut = text.parse()?;
    let numbers = apart.rests_on.iter().map(ToString::to_string);
    let rests = Said::new("log-learn-pours");
    let rests = rests.with("numbers", numbers.collect::<Vec<_>>().join(", "));
    write_factor(&mut file, CONTACT, apart.contact, &rests)?;
    Ok(file.to_string())
}

/// The word by which the contact is accepted.
pub const CONTACT: &str = "contact";

/// A factor with its ends and the entries it rests on, under `[learned]`.
fn write_factor(
    file: &mut DocumentMut,
    name: &str,
    [low, likely, high]: [f64; 3],
    rests: &Said,
) -> Result<(), AcceptError> {
    let all = file.entry("learned").or_insert_with(|| {
        let mut table = Table::new();
        table.set_implicit(true);
        Item::Table(table)
    });
    let all = all.as_table_mut().ok_or(AcceptError::Shape("[learned]"))?;
    let mut own = Table::new();
    for (key, number) in [("factor", likely), ("low", low), ("high", high)] {
        own[key] = value((number * 1000.0).round() / 1000.0);
    }
    own["rests_on"] = value(Language::Uk.say(rests));
    all[name] = Item::Table(own);
    Ok(())
}

/// The shop's own figures of a metal, added where there are none.
fn own<'a>(file: &'a mut DocumentMut, alloy: &str) -> Result<&'a mut Table, AcceptError> {
    let all = file
        .entry("own")
        .or_insert(Item::ArrayOfTables(ArrayOfTables::new()));
    let all = all
        .as_array_of_tables_mut()
        .ok_or(AcceptError::Shape("[[own]]"))?;
    let of_metal = |table: &Table| table.get("metal").and_then(Item::as_str) == Some(alloy);
    let there = all.iter().position(of_metal);
    let at = match there {
        Some(at) => at,
        None => {
            let mut table = Table::new();
            table["metal"] = value(alloy);
            all.push(table);
            all.len() - 1
        }
    };
    all.get_mut(at).ok_or(AcceptError::Shape("[[own]]"))
}
