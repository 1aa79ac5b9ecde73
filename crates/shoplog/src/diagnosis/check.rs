//! The cheapest check that parts the two likeliest causes.

use serde::Deserialize;

use crate::diagnosis::ranked::likelihoods;

/// A check.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Check {
    /// Its id.
    pub id: String,
    /// The cause that it speaks for when it finds something.
    pub finds: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Table {
    check: Vec<Row>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Row {
    id: String,
    minutes: u32,
    yes: Vec<String>,
    no: Vec<String>,
}

/// The cheapest check that parts two causes; where no check is made for the pair, the one of the
/// likelier cause, which shows it or does not.
///
/// # Errors
///
/// Tables that are not sound.
pub fn parting(likelier: &str, other: &str) -> Result<Option<Check>, toml::de::Error> {
    let table: Table = toml::from_str(include_str!("../../data/checks.toml"))?;
    let has = |causes: &[String], cause: &str| causes.iter().any(|one| one == cause);
    let parts = table.check.iter().filter_map(|row| {
        let finds = match () {
            () if has(&row.yes, likelier) && has(&row.no, other) => likelier,
            () if has(&row.yes, other) && has(&row.no, likelier) => other,
            () => return None,
        };
        Some((row.minutes, &row.id, finds))
    });
    // Of those that take as long, the first of the table.
    let cheapest = parts.min_by_key(|(minutes, ..)| *minutes);
    if let Some((_, id, finds)) = cheapest {
        let (id, finds) = (id.clone(), finds.to_owned());
        return Ok(Some(Check { id, finds }));
    }
    let own = likelihoods()?.into_iter().find(|row| row.id == likelier);
    Ok(own.map(|row| Check {
        id: row.check,
        finds: likelier.to_owned(),
    }))
}
