//! A whole pour written at once: mould, plan, heat, pour and castings, linked to each other.

use crate::entry::{Added, Fresh};
use crate::error::LogError;
use crate::log::Log;
use crate::prefill::Prefilled;
use crate::table::castings::CASTINGS;
use crate::value::Value;

/// What was typed beside the plan: `temperature`, `mould.moisture`, `heat.charge`, `heat`, `good`.
pub type Typed = [(String, String)];

/// Writes a pour with everything that belongs to it, all or nothing. A heat or a mould that is
/// named is taken as it is; what is not named is made. `good` says how many castings are.
///
/// # Errors
///
/// A key that nothing has, a value that is not understood, a log that says no.
pub fn write_pour(
    log: &mut Log,
    prefilled: &Prefilled,
    typed: &Typed,
) -> Result<Vec<(&'static str, Added)>, LogError> {
    let lot = lot(log, prefilled, typed)?;
    let added = log.add(&lot)?;
    Ok(lot.iter().map(|one| one.table.one).zip(added).collect())
}

fn lot(log: &Log, prefilled: &Prefilled, typed: &Typed) -> Result<Vec<Fresh>, LogError> {
    let (mut mould, mut heat) = (prefilled.mould.clone(), prefilled.heat.clone());
    let mut pour = prefilled.pour.clone();
    let mut good = None;
    for (key, text) in typed {
        match key.split_once('.') {
            Some(("mould", key)) => mould = mould.typed(log, key, text)?,
            Some(("heat", key)) => heat = heat.typed(log, key, text)?,
            _ if key == "good" => {
                let column = CASTINGS.column("good");
                let count = text.trim().parse::<usize>().ok();
                good = Some(match (count, column) {
                    (Some(count), _) if count <= prefilled.castings => count,
                    (_, Some(column)) => match column.read(text)? {
                        Value::Whole(1) => prefilled.castings,
                        _ => 0,
                    },
                    (_, None) => 0,
                });
            }
            _ => pour = pour.typed(log, key, text)?,
        }
    }
    let mut lot = Vec::new();
    let mould_id = linked(log, &mut pour, "mould", mould, &mut lot)?;
    for mut figure in prefilled.planned.iter().cloned() {
        figure.id = Some(new_id(log)?);
        lot.push(figure.with("mould", Value::Text(mould_id.clone())));
    }
    linked(log, &mut pour, "heat", heat, &mut lot)?;
    let pour_id = new_id(log)?;
    pour.id = Some(pour_id.clone());
    lot.push(pour);
    for at in 0..prefilled.castings {
        let mut casting = prefilled
            .casting
            .clone()
            .with("pour", Value::Text(pour_id.clone()));
        if let Some(good) = good {
            casting = casting.with("good", Value::Whole(i64::from(at < good)));
        }
        lot.push(casting);
    }
    Ok(lot)
}

/// Links a pour to what it stands on, and puts that into the lot where it was not named.
fn linked(
    log: &Log,
    pour: &mut Fresh,
    key: &str,
    mut other: Fresh,
    lot: &mut Vec<Fresh>,
) -> Result<String, LogError> {
    if let Some(Value::Text(id)) = pour.values.get(key) {
        return Ok(id.clone());
    }
    let id = new_id(log)?;
    other.id = Some(id.clone());
    lot.push(other);
    pour.values.insert(key.to_owned(), Value::Text(id.clone()));
    Ok(id)
}

/// A new id, drawn by the database library.
///
/// # Errors
///
/// What the file says.
pub fn new_id(log: &Log) -> Result<String, LogError> {
    let sql = "SELECT lower(hex(randomblob(16)))";
    Ok(log.connection.query_row(sql, [], |row| row.get(0))?)
}
