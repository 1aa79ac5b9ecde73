//! Pairing: a code stands in the terminal for ten minutes, and whoever types it has a phone of the
//! shop. It is used up by the phone that it lets in, by five wrong tries, or by time.

use std::sync::Mutex;
use std::time::{Duration, SystemTime};

use serde::{Deserialize, Serialize};

use crate::lan::LanError;
use crate::lan::place::Place;
use crate::lan::secret::{digest, eight_digits, same};

const FILE: &str = "pairing.json";

/// How long a code is good, minutes: shorter, and installing the certificate takes longer; longer,
/// and it is still there when somebody else looks at the terminal.
pub const MINUTES: u64 = 10;

/// Wrong tries that a code bears. Five of a hundred million are a chance of one in twenty million.
const TRIES: u32 = 5;

/// A code as it is told.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Offer {
    /// Eight digits.
    pub code: String,
    /// For how many minutes it is good.
    pub minutes: u64,
}

/// What became of a try.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Tried {
    /// It was the code, which is used up now.
    Right,
    /// It was not; so many tries are left.
    Wrong {
        /// How many.
        left: u32,
    },
    /// There is no code that is good: none was asked for, or it is used up or too old.
    NoCode,
}

/// A code as it is kept: not itself, but its digest.
#[derive(Debug, Serialize, Deserialize)]
struct Kept {
    code: String,
    until_s: u64,
    left: u32,
}

/// Offers a new code; the one before it is good for nothing any more.
///
/// # Errors
///
/// A disk that says no.
pub fn offer(place: &Place, now: SystemTime) -> Result<Offer, LanError> {
    let code = eight_digits()?;
    let kept = Kept {
        code: digest(code.as_bytes()),
        until_s: seconds(now + Duration::from_secs(60 * MINUTES)),
        left: TRIES,
    };
    keep(place, &kept)?;
    Ok(Offer {
        code,
        minutes: MINUTES,
    })
}

/// Tries a code as it was typed, with blanks and strokes or without. One at a time: of two that
/// come together the second meets what the first has left.
///
/// # Errors
///
/// A disk that says no: a try that cannot be written down is none.
pub fn tried(place: &Place, typed: &str, now: SystemTime) -> Result<Tried, LanError> {
    static ONE_AT_A_TIME: Mutex<()> = Mutex::new(());
    let _one = ONE_AT_A_TIME
        .lock()
        .unwrap_or_else(std::sync::PoisonError::into_inner);
    let Some(text) = place.read(FILE)? else {
        return Ok(Tried::NoCode);
    };
    // A file that cannot be read offers nothing.
    let kept = serde_json::from_str::<Kept>(&text).ok();
    let Some(mut kept) = kept.filter(|kept| is_good(kept, now)) else {
        place.forget(FILE)?;
        return Ok(Tried::NoCode);
    };
    let digits: String = typed.chars().filter(char::is_ascii_digit).collect();
    if same(&digest(digits.as_bytes()), &kept.code) {
        place.forget(FILE)?;
        return Ok(Tried::Right);
    }
    kept.left -= 1;
    match kept.left {
        0 => place.forget(FILE)?,
        _ => keep(place, &kept)?,
    }
    Ok(Tried::Wrong { left: kept.left })
}

/// A clock that was set back makes no code good for longer.
fn is_good(kept: &Kept, now: SystemTime) -> bool {
    let now = seconds(now);
    kept.left > 0 && now < kept.until_s && kept.until_s - now <= 60 * MINUTES
}

fn keep(place: &Place, kept: &Kept) -> Result<(), LanError> {
    let text = serde_json::to_string(kept).unwrap_or_default();
    place.write(FILE, text.as_bytes())
}

fn seconds(at: SystemTime) -> u64 {
    let since = at.duration_since(SystemTime::UNIX_EPOCH);
    since.unwrap_or_default().as_secs()
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

    use std::time::{Duration, SystemTime};

    use super::{FILE, Tried, offer, tried};
    use crate::lan::place::Place;

    #[test]
    fn a_code_lets_one_phone_in() {
        let shop = tempfile::tempdir().unwrap();
        let place = Place::of(shop.path()).unwrap();
        let now = SystemTime::now();
        assert_eq!(tried(&place, "12345678", now).unwrap(), Tried::NoCode);
        let offered = offer(&place, now).unwrap();
        assert!(
            !std::fs::read_to_string(place.path(FILE))
                .unwrap()
                .contains(&offered.code)
        );
        let spoken = format!(" {} {}", &offered.code[..4], &offered.code[4..]);
        assert_eq!(tried(&place, &spoken, now).unwrap(), Tried::Right);
        assert_eq!(tried(&place, &spoken, now).unwrap(), Tried::NoCode);
    }

    #[test]
    fn five_wrong_tries_or_ten_minutes_use_it_up() {
        let shop = tempfile::tempdir().unwrap();
        let place = Place::of(shop.path()).unwrap();
        let now = SystemTime::now();
        let offered = offer(&place, now).unwrap();
        let wrong = if offered.code == "00000000" {
            "00000001"
        } else {
            "00000000"
        };
        for left in (0..5).rev() {
            assert_eq!(tried(&place, wrong, now).unwrap(), Tried::Wrong { left });
        }
        assert_eq!(tried(&place, &offered.code, now).unwrap(), Tried::NoCode);
        let offered = offer(&place, now).unwrap();
        let late = now + Duration::from_secs(601);
        assert_eq!(tried(&place, &offered.code, late).unwrap(), Tried::NoCode);
        let offered = offer(&place, now).unwrap();
        let back = now - Duration::from_secs(3600);
        assert_eq!(tried(&place, &offered.code, back).unwrap(), Tried::NoCode);
    }
}
