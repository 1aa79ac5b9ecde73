//! The phones of a shop: each with a name, and with a secret that only the phone itself knows.

use std::time::SystemTime;

use serde::{Deserialize, Serialize};

use crate::lan::LanError;
use crate::lan::place::Place;
use crate::lan::secret::{digest, drawn, same};

/// The folder in which each has a file: one that is taken away lets nobody in from then on.
const FOLDER: &str = "phones";

const ENDING: &str = ".json";

/// Longest name of a phone, letters.
const LONGEST_NAME: usize = 40;

/// A phone.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Phone {
    /// What the founder calls it.
    pub name: String,
    /// When it was paired, seconds since 1970 in universal time.
    pub paired_s: u64,
    /// The digest of its secret.
    secret: String,
}

/// Takes a phone in; gives what it has to show from now on, which is kept nowhere else. Without a
/// name it is called "phone 1"; a name that is taken gets a number.
///
/// # Errors
///
/// A disk that says no.
pub fn take_in(place: &Place, name: &str, now: SystemTime) -> Result<String, LanError> {
    let (id, secret) = (drawn::<8>()?, drawn::<32>()?);
    let since = now.duration_since(SystemTime::UNIX_EPOCH);
    let phone = Phone {
        name: free_name(&all(place)?, name),
        paired_s: since.unwrap_or_default().as_secs(),
        secret: digest(secret.as_bytes()),
    };
    let text = serde_json::to_string(&phone).unwrap_or_default();
    place.write(&file_of(&id), text.as_bytes())?;
    Ok(format!("{id}.{secret}"))
}

/// The phone that shows this; none where it was never given, or was taken away.
pub fn known(place: &Place, shown: &str) -> Option<Phone> {
    let (id, secret) = shown.split_once('.')?;
    let is_hex = |text: &str| text.bytes().all(|byte| byte.is_ascii_hexdigit());
    if id.len() != 16 || secret.len() != 64 || !is_hex(id) || !is_hex(secret) {
        return None;
    }
    let phone = read(place, &file_of(id))?;
    same(&digest(secret.as_bytes()), &phone.secret).then_some(phone)
}

/// All phones, in the order of their names.
///
/// # Errors
///
/// A disk that says no.
pub fn all(place: &Place) -> Result<Vec<Phone>, LanError> {
    let files = place.files(FOLDER)?;
    let phones = files
        .iter()
        .filter_map(|file| read(place, &format!("{FOLDER}/{file}")));
    let mut phones: Vec<Phone> = phones.collect();
    phones.sort_by(|one, other| one.name.cmp(&other.name));
    Ok(phones)
}

/// The day on which a phone was paired, in universal time.
pub fn paired_on(phone: &Phone) -> String {
    day_of(phone.paired_s)
}

/// Takes a phone away by its name: it is let in no more from this moment on.
///
/// # Errors
///
/// No phone of this name, a disk that says no.
pub fn remove(place: &Place, name: &str) -> Result<(), LanError> {
    let mut removed = false;
    for file in place.files(FOLDER)? {
        let file = format!("{FOLDER}/{file}");
        if read(place, &file).is_some_and(|phone| phone.name == name) {
            place.forget(&file)?;
            removed = true;
        }
    }
    if removed {
        return Ok(());
    }
    let names: Vec<String> = all(place)?.into_iter().map(|phone| phone.name).collect();
    Err(LanError::NoPhone {
        name: name.to_owned(),
        known: match names.is_empty() {
            true => "none is paired".to_owned(),
            false => format!("there are {}", names.join(", ")),
        },
    })
}

/// The day of a second since 1970, in the calendar that everybody uses: years begin in March here,
/// so that the odd day of a leap year comes last.
fn day_of(second: u64) -> String {
    const DAYS_TO_1970: u64 = 719_468;
    const DAYS_OF_400_YEARS: u64 = 146_097;
    let days = second / (24 * 3600) + DAYS_TO_1970;
    let (era, day) = (days / DAYS_OF_400_YEARS, days % DAYS_OF_400_YEARS);
    let year = (day - day / 1460 + day / 36_524 - day / 146_096) / 365;
    let of_year = day - (365 * year + year / 4 - year / 100);
    let from_march = (5 * of_year + 2) / 153;
    let of_month = of_year - (153 * from_march + 2) / 5 + 1;
    let month = if from_march < 10 {
        from_march + 3
    } else {
        from_march - 9
    };
    let year = era * 400 + year + u64::from(month <= 2);
    format!("{year:04}-{month:02}-{of_month:02}")
}

fn file_of(id: &str) -> String {
    format!("{FOLDER}/{id}{ENDING}")
}

/// A file that is not what it was lets nobody in.
fn read(place: &Place, file: &str) -> Option<Phone> {
    if !file.ends_with(ENDING) {
        return None;
    }
    let text = place.read(file).ok().flatten()?;
    serde_json::from_str(&text).ok()
}

/// What is wished, cut to a line, or a number.
fn free_name(there: &[Phone], wished: &str) -> String {
    let plain = wished.split(char::is_control).collect::<Vec<_>>().join(" ");
    let plain: String = plain.trim().chars().take(LONGEST_NAME).collect();
    let is_free = |name: &str| there.iter().all(|phone| phone.name != name);
    if !plain.is_empty() && is_free(&plain) {
        return plain;
    }
    let stem = if plain.is_empty() { "phone" } else { &plain };
    let first = if plain.is_empty() { 1 } else { 2 };
    let mut numbers = first..;
    let name = numbers.find_map(|number: usize| {
        let name = format!("{stem} {number}");
        is_free(&name).then_some(name)
    });
    name.unwrap_or(plain)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

    use std::time::SystemTime;

    use super::{all, day_of, known, remove, take_in};
    use crate::lan::place::Place;

    #[test]
    fn a_phone_is_known_until_it_is_taken_away() {
        let shop = tempfile::tempdir().unwrap();
        let place = Place::of(shop.path()).unwrap();
        let now = SystemTime::now();
        let nameless = take_in(&place, "  ", now).unwrap();
        let named = take_in(&place, "the old one", now).unwrap();
        take_in(&place, "the old one", now).unwrap();
        let names =
            || -> Vec<String> { all(&place).unwrap().into_iter().map(|p| p.name).collect() };
        assert_eq!(names(), ["phone 1", "the old one", "the old one 2"]);
        assert_eq!(known(&place, &named).unwrap().name, "the old one");
        let kept = std::fs::read_dir(place.path("phones")).unwrap().flatten();
        for file in kept {
            let text = std::fs::read_to_string(file.path()).unwrap();
            assert!(!text.contains(named.split_once('.').unwrap().1));
        }
        remove(&place, "the old one").unwrap();
        assert_eq!(known(&place, &named), None);
        assert!(known(&place, &nameless).is_some());
        assert!(
            remove(&place, "the old one")
                .unwrap_err()
                .to_string()
                .contains("phone 1")
        );
    }

    /// Days as `date -u -d @SECOND` of the GNU tools has them.
    #[test]
    fn a_second_is_of_its_day() {
        for (second, day) in [
            (0, "1970-01-01"),
            (951_782_400, "2000-02-29"),
            (951_868_800, "2000-03-01"),
            (1_709_164_800, "2024-02-29"),
            (1_767_225_599, "2025-12-31"),
            (4_107_542_400, "2100-03-01"),
        ] {
            assert_eq!(day_of(second), day);
        }
    }

    #[test]
    fn what_was_never_given_lets_nobody_in() {
        let shop = tempfile::tempdir().unwrap();
        let place = Place::of(shop.path()).unwrap();
        let given = take_in(&place, "", SystemTime::now()).unwrap();
        let (id, secret) = given.split_once('.').unwrap();
        let other = take_in(&place, "", SystemTime::now()).unwrap();
        let crossed = format!("{id}.{}", other.split_once('.').unwrap().1);
        let cut = &given[..given.len() - 1];
        for shown in [&crossed, cut, id, "", ".", &format!("../{id}.{secret}")] {
            assert_eq!(known(&place, shown), None, "{shown}");
        }
    }
}
