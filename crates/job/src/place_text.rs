//! Places, directions and turns of solids, as they are typed.

use std::fmt;

use measure::length::Length;
use measure::text::Typed;
use rigging::placement::{FeederAt, Placement};
use serde::de::{Error, SeqAccess, Visitor};
use serde::{Deserialize, Deserializer};

use crate::job_file::PlaceFile;

/// How far along an axis, to either side: `"-20 mm"`, `"3/4 in"`, `0`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Along(pub Length);

/// Which way a solid grows: `"x"`, `"-z"`, or three numbers of any length.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Axis(pub [f64; 3]);

/// A turn in degrees: `30`, `"30 deg"`, `"30°"`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Turn(pub f64);

/// A place on the joint: along the flask, then across it, like `"120, 45"` in mm or
/// `"4 3/4 in, 45 mm"`.
#[derive(Clone, Copy, Debug, PartialEq, Deserialize)]
#[serde(try_from = "String")]
pub struct OnJoint(pub [Length; 2]);

/// Where a feeder is wanted: a place on the joint, `"heaviest"`, or `"section 2"`.
#[derive(Clone, Copy, Debug, PartialEq, Deserialize)]
#[serde(try_from = "String")]
pub struct FeederPlace(pub FeederAt);

impl PlaceFile {
    /// What is meant by it.
    pub fn meant(&self) -> Placement {
        let mm = |place: &OnJoint| place.0.map(|along| along.as_mm());
        let gates = self
            .gates
            .as_ref()
            .map(|gates| gates.iter().map(mm).collect());
        let feeders = self.feeders.as_ref();
        Placement {
            sprue_mm: self.sprue.as_ref().map(mm),
            gates_mm: gates,
            feeders: feeders.map(|feeders| feeders.iter().map(|place| place.0).collect()),
        }
    }
}

impl TryFrom<String> for OnJoint {
    type Error = String;

    fn try_from(text: String) -> Result<OnJoint, String> {
        on_joint(&text).ok_or_else(|| {
            format!("\"{text}\" is no place on the joint; write along, across: \"120, 45\" in mm")
        })
    }
}

impl TryFrom<String> for FeederPlace {
    type Error = String;

    fn try_from(text: String) -> Result<FeederPlace, String> {
        let small = text.trim().to_lowercase();
        let number = small
            .strip_prefix("section")
            .map(|rest| rest.trim().parse::<usize>());
        let at = match number {
            _ if small == "heaviest" => Some(FeederAt::Section(1)),
            Some(Ok(number)) if number > 0 => Some(FeederAt::Section(number)),
            Some(_) => None,
            None => on_joint(&small)
                .map(|OnJoint(place)| FeederAt::Point(place.map(|along| along.as_mm()))),
        };
        at.map(FeederPlace).ok_or_else(|| {
            format!(
                "\"{text}\" is no place for a feeder; write \"heaviest\", \"section 2\", \
                 or along, across: \"120, 45\" in mm"
            )
        })
    }
}

/// Two lengths with a comma and a space, or a semicolon, between them; without a unit in mm.
fn on_joint(text: &str) -> Option<OnJoint> {
    let (x, y) = text.split_once(';').or_else(|| text.split_once(", "))?;
    let length = |text: &str| {
        let (sign, rest) = signed(text);
        match measure::text::plain_number(rest) {
            Some(mm) => Some(Length::from_mm(mm * sign)),
            None => along(text).ok().map(|Along(length)| length),
        }
    };
    Some(OnJoint([length(x)?, length(y)?]))
}

impl<'de> Deserialize<'de> for Along {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Along, D::Error> {
        struct Text;

        impl Visitor<'_> for Text {
            type Value = Along;

            fn expecting(&self, to: &mut fmt::Formatter<'_>) -> fmt::Result {
                to.write_str("a length in quotes, like \"-20 mm\", or 0")
            }

            fn visit_str<E: Error>(self, text: &str) -> Result<Along, E> {
                along(text).map_err(E::custom)
            }

            fn visit_i64<E: Error>(self, number: i64) -> Result<Along, E> {
                along(&number.to_string()).map_err(E::custom)
            }

            fn visit_f64<E: Error>(self, number: f64) -> Result<Along, E> {
                along(&number.to_string()).map_err(E::custom)
            }
        }

        from.deserialize_any(Text)
    }
}

impl<'de> Deserialize<'de> for Axis {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Axis, D::Error> {
        struct Text;

        impl<'de> Visitor<'de> for Text {
            type Value = Axis;

            fn expecting(&self, to: &mut fmt::Formatter<'_>) -> fmt::Result {
                to.write_str("an axis: x, -x, y, -y, z or -z, or three numbers like [1, 0, 0.5]")
            }

            fn visit_str<E: Error>(self, text: &str) -> Result<Axis, E> {
                axis(text).ok_or_else(|| E::invalid_value(serde::de::Unexpected::Str(text), &self))
            }

            fn visit_seq<A: SeqAccess<'de>>(self, mut seq: A) -> Result<Axis, A::Error> {
                let mut numbers = [0.0; 3];
                for (place, number) in numbers.iter_mut().enumerate() {
                    let next: Option<f64> = seq.next_element()?;
                    *number = next.ok_or_else(|| A::Error::invalid_length(place, &self))?;
                }
                match seq.next_element::<f64>()? {
                    Some(_) => Err(A::Error::invalid_length(4, &self)),
                    None => Ok(Axis(numbers)),
                }
            }
        }

        from.deserialize_any(Text)
    }
}

impl<'de> Deserialize<'de> for Turn {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Turn, D::Error> {
        struct Text;

        impl Visitor<'_> for Text {
            type Value = Turn;

            fn expecting(&self, to: &mut fmt::Formatter<'_>) -> fmt::Result {
                to.write_str("a turn in degrees, like 30 or \"30 deg\"")
            }

            fn visit_str<E: Error>(self, text: &str) -> Result<Turn, E> {
                turn(text).ok_or_else(|| E::invalid_value(serde::de::Unexpected::Str(text), &self))
            }

            fn visit_i64<E: Error>(self, degrees: i64) -> Result<Turn, E> {
                Ok(Turn(degrees as f64))
            }

            fn visit_f64<E: Error>(self, degrees: f64) -> Result<Turn, E> {
                Ok(Turn(degrees))
            }
        }

        from.deserialize_any(Text)
    }
}

/// A length with its sign before it; nought needs no unit.
fn along(text: &str) -> Result<Along, measure::text::TextError> {
    let (sign, rest) = signed(text);
    if measure::text::plain_number(rest) == Some(0.0) {
        return Ok(Along(Length::ZERO));
    }
    let length: Typed<Length> = rest.parse()?;
    Ok(Along(length.value * sign))
}

/// The axis of a letter with its sign.
fn axis(text: &str) -> Option<Axis> {
    let (sign, letter) = signed(text);
    let place = ["x", "y", "z"]
        .iter()
        .position(|name| letter.eq_ignore_ascii_case(name))?;
    let mut numbers = [0.0; 3];
    numbers[place] = sign;
    Some(Axis(numbers))
}

fn turn(text: &str) -> Option<Turn> {
    let (sign, rest) = signed(text);
    let units = ["degrees", "degree", "deg", "°"];
    let number = units
        .iter()
        .find_map(|unit| rest.strip_suffix(unit))
        .unwrap_or(rest);
    measure::text::plain_number(number).map(|degrees| Turn(degrees * sign))
}

/// The sign before a text, plus where there is none, and what follows it.
fn signed(text: &str) -> (f64, &str) {
    let text = text.trim();
    let minus = ["-", "−"].iter().find_map(|sign| text.strip_prefix(sign));
    match minus {
        Some(rest) => (-1.0, rest.trim_start()),
        None => (1.0, text.strip_prefix('+').unwrap_or(text).trim_start()),
    }
}
