//! Entries sent by another machine, such as the phone at the bench: each with an id of its own and
//! the time it was written down there, so that sending it twice does nothing twice.

use std::collections::BTreeMap;

use serde::Deserialize;

use crate::entry::{Added, Fresh, is_id, table_of};
use crate::error::LogError;
use crate::log::Log;

/// An entry as it is sent: everything as it was typed, with its unit.
#[derive(Clone, Debug, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Sent {
    /// The table, of one or of many: `pour`.
    pub table: String,
    /// The id that the sender has drawn, 32 hexadecimal digits.
    pub id: String,
    /// When it was written down, in universal time.
    pub written: String,
    /// What it says, by key: temperature = "720 C". A link is the id of an entry that was sent
    /// before, or what a founder calls one.
    #[serde(default)]
    pub says: BTreeMap<String, String>,
}

/// Takes entries in the order in which they were sent. Each is confirmed by itself: where one is
/// refused those before it stand, and all may be sent again.
///
/// # Errors
///
/// A table, key, value or link that is not understood, an id that is none, a log that says no.
pub fn take(log: &mut Log, sent: &[Sent]) -> Result<Vec<Added>, LogError> {
    let mut taken = Vec::new();
    for one in sent {
        if !is_id(&one.id) {
            return Err(LogError::BadId(one.id.clone()));
        }
        let mut fresh = Fresh::of(table_of(&one.table)?);
        fresh.id = Some(one.id.clone());
        fresh.written = Some(one.written.clone());
        for (key, text) in &one.says {
            fresh = fresh.typed(log, key, text)?;
        }
        taken.extend(log.add(&[fresh])?);
    }
    Ok(taken)
}
