//! What every input has to give: a value or an error that can be printed, never a panic, a hang or
//! a heap full of memory.

use job::file_fault::{FileFault, read};
use measure::text::{Typed, UnitWord, Written, show_in};
use pattern::look::{Verdict, look};
use serde::de::DeserializeOwned;

/// Largest mesh file tried, in bytes. Larger ones reach no other branch and only slow the search.
pub const MOST_BYTES: usize = 256 << 10;

/// Largest amount, in any unit, that has to read again. Near the end of the floating-point range
/// a number has no twelfth figure to keep, and nobody casts there.
const MOST_AMOUNT: f64 = 1e15;

/// Looks at the bytes as a mesh file of that name: what is taken has to be a body of metal.
pub fn mesh(name: &str, bytes: &[u8]) {
    if bytes.len() > MOST_BYTES {
        return;
    }
    match look(name, bytes, None) {
        Err(error) => assert!(!error.to_string().is_empty()),
        Ok(looked) => {
            if matches!(looked.verdict, Verdict::Accepted | Verdict::Healed) {
                let volume = looked.solid.volume_mm3;
                assert!(
                    volume > 0.0 && volume.is_finite(),
                    "taken with {volume} mm3"
                );
            }
        }
    }
}

/// Reads a file of the founder's: a fault has to point into the text.
pub fn typed_file<T: DeserializeOwned>(name: &str, text: &str) -> Option<T> {
    match read::<T>(name, text) {
        Ok(file) => Some(file),
        Err(fault) => {
            points_into(&fault, text);
            None
        }
    }
}

/// Reads a quantity: what reads has to read again from its twelve figures, in every unit.
pub fn quantity<Q: Written>(text: &str) {
    match text.parse::<Typed<Q>>() {
        Err(error) => assert!(!error.to_string().is_empty()),
        Ok(typed) => {
            assert!(!typed.given_back().is_empty());
            Q::UNITS
                .iter()
                .for_each(|unit| reads_again(typed.value, unit));
        }
    }
}

fn points_into(fault: &FileFault, text: &str) {
    assert!(fault.line >= 1 && fault.column >= 1);
    assert!(
        text.get(fault.span.clone()).is_some(),
        "{:?} cuts a letter",
        fault.span
    );
    assert!(!fault.message.is_empty());
}

fn reads_again<Q: Written>(value: Q, unit: &UnitWord) {
    if ((value.si() - unit.offset) / unit.si).abs() > MOST_AMOUNT {
        return;
    }
    let shown = show_in(value, unit, 12);
    let again = match shown.parse::<Typed<Q>>() {
        Ok(again) => again.value.si(),
        Err(error) => panic!("{shown} does not read again: {error}"),
    };
    let slack = 1e-11 * (value.si().abs() + unit.offset.abs());
    assert!(
        (again - value.si()).abs() <= slack,
        "{} came back as {again}",
        value.si()
    );
}
