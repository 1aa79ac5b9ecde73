//! A value as it is kept.

use std::fmt;

use rusqlite::ToSql;
use rusqlite::types::{FromSql, FromSqlResult, ToSqlOutput, ValueRef};

/// A value of a column that is filled.
#[derive(Clone, Debug, PartialEq)]
pub enum Value {
    /// A whole number; 1 and 0 for yes and no.
    Whole(i64),
    /// A number.
    Real(f64),
    /// Words.
    Text(String),
}

impl Value {
    /// The number, whole or not.
    pub fn number(&self) -> Option<f64> {
        match self {
            Value::Whole(whole) => Some(*whole as f64),
            Value::Real(real) => Some(*real),
            Value::Text(_) => None,
        }
    }

    /// The words.
    pub fn text(&self) -> Option<&str> {
        match self {
            Value::Text(text) => Some(text),
            _ => None,
        }
    }
}

/// As an export has it: reals so that they are read back to the last digit.
impl fmt::Display for Value {
    fn fmt(&self, to: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Value::Whole(whole) => write!(to, "{whole}"),
            Value::Real(real) => write!(to, "{real:?}"),
            Value::Text(text) => write!(to, "{text}"),
        }
    }
}

impl ToSql for Value {
    fn to_sql(&self) -> rusqlite::Result<ToSqlOutput<'_>> {
        match self {
            Value::Whole(whole) => whole.to_sql(),
            Value::Real(real) => real.to_sql(),
            Value::Text(text) => text.to_sql(),
        }
    }
}

impl FromSql for Value {
    fn column_result(value: ValueRef<'_>) -> FromSqlResult<Value> {
        Ok(match value {
            ValueRef::Integer(whole) => Value::Whole(whole),
            ValueRef::Real(real) => Value::Real(real),
            // An empty place is asked for as an option, and a table of this log holds no blobs.
            ValueRef::Null => Value::Text(String::new()),
            ValueRef::Text(bytes) | ValueRef::Blob(bytes) => {
                Value::Text(String::from_utf8_lossy(bytes).into_owned())
            }
        })
    }
}
