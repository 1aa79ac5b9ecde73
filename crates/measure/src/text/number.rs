//! Numbers as people write them (decimals with point or comma, fractions, mixed numbers), each
//! with the word that follows it.

use super::{TextError, Written};

/// A number and the unit word after it.
pub(super) struct Piece {
    pub(super) amount: f64,
    pub(super) unit: String,
}

/// Why the numbers could not be read.
pub(super) enum Fault {
    NoNumber,
    TwoReadings,
    DividedByZero,
}

impl Fault {
    pub(super) fn explain<Q: Written>(&self, typed: &str) -> TextError {
        let typed = typed.to_owned();
        match self {
            Fault::NoNumber => TextError::NoNumber {
                typed,
                what: Q::WHAT,
                example: Q::EXAMPLE,
            },
            Fault::TwoReadings => TextError::TwoReadings { typed },
            Fault::DividedByZero => TextError::Impossible {
                typed,
                what: Q::WHAT,
                bound: "not divided by nought",
            },
        }
    }
}

/// Where in the text we are.
pub(super) struct Cursor<'a> {
    rest: &'a str,
}

impl<'a> Cursor<'a> {
    pub(super) fn new(text: &'a str) -> Cursor<'a> {
        Cursor { rest: text }
    }

    /// All numbers with their units, to the end of the text.
    pub(super) fn pieces(&mut self) -> Result<Vec<Piece>, Fault> {
        let mut pieces = Vec::new();
        while !self.rest.trim_start().is_empty() {
            pieces.push(Piece {
                amount: self.number()?,
                unit: self.unit(),
            });
        }
        Ok(pieces)
    }

    /// What is left unread, trimmed.
    pub(super) fn rest(&self) -> &'a str {
        self.rest.trim()
    }

    /// One number: `12`, `1.5`, `0,8`, `3/16`, `1 1/2`, `1-1/2`, `1½`.
    pub(super) fn number(&mut self) -> Result<f64, Fault> {
        self.rest = self.rest.trim_start();
        let sign = self.sign();
        if let Some(part) = self.vulgar() {
            return Ok(sign * part);
        }
        let whole_digits = self.digits();
        if whole_digits.is_empty() {
            return Err(Fault::NoNumber);
        }
        let whole = decimal(whole_digits)?;
        if self.rest.starts_with('/') {
            return Ok(sign * self.over(whole)?);
        }
        Ok(sign * (whole + self.part_after_whole()?))
    }

    fn sign(&mut self) -> f64 {
        for (mark, sign) in [('-', -1.0), ('−', -1.0), ('+', 1.0)] {
            if let Some(rest) = self.rest.strip_prefix(mark) {
                self.rest = rest.trim_start();
                return sign;
            }
        }
        1.0
    }

    fn digits(&mut self) -> &'a str {
        let end = self
            .rest
            .char_indices()
            .find(|(at, c)| !(c.is_ascii_digit() || is_mark(*c) && digit_after(self.rest, *at)))
            .map_or(self.rest.len(), |(at, _)| at);
        let (digits, rest) = self.rest.split_at(end);
        self.rest = rest;
        digits
    }

    fn vulgar(&mut self) -> Option<f64> {
        const SIGNS: [(char, f64); 9] = [
            ('½', 0.5),
            ('¼', 0.25),
            ('¾', 0.75),
            ('⅛', 0.125),
            ('⅜', 0.375),
            ('⅝', 0.625),
            ('⅞', 0.875),
            ('⅓', 1.0 / 3.0),
            ('⅔', 2.0 / 3.0),
        ];
        let (sign, part) = SIGNS
            .iter()
            .find(|(sign, _)| self.rest.starts_with(*sign))?;
        self.rest = &self.rest[sign.len_utf8()..];
        Some(*part)
    }

    /// The fraction of a mixed number, or nought.
    fn part_after_whole(&mut self) -> Result<f64, Fault> {
        if let Some(part) = self.vulgar() {
            return Ok(part);
        }
        let before = self.rest;
        let spaced = self
            .rest
            .strip_prefix('-')
            .unwrap_or(self.rest.trim_start());
        if spaced.len() == self.rest.len() {
            return Ok(0.0);
        }
        self.rest = spaced;
        let top = self.digits();
        if !top.is_empty() && self.rest.starts_with('/') {
            let top = decimal(top)?;
            return self.over(top);
        }
        self.rest = before;
        Ok(0.0)
    }

    fn over(&mut self, top: f64) -> Result<f64, Fault> {
        let before = self.rest;
        self.rest = &self.rest[1..];
        let bottom = self.digits();
        if bottom.is_empty() {
            self.rest = before;
            return Ok(top);
        }
        match decimal(bottom)? {
            0.0 => Err(Fault::DividedByZero),
            bottom => Ok(top / bottom),
        }
    }

    /// The word after a number, up to the next number; `cm3` and `kg/m3` keep their digit, while
    /// the quote marks of feet and inches end at once.
    fn unit(&mut self) -> String {
        self.rest = self.rest.trim_start();
        let end = match self.rest.chars().next() {
            Some(quote) if is_quote(quote) => quote.len_utf8(),
            _ => self.word_end(),
        };
        let (unit, rest) = self.rest.split_at(end);
        self.rest = rest;
        let joined = unit.split_whitespace().collect::<Vec<_>>().join(" ");
        joined
            .trim_end_matches([',', ';'])
            .trim_end_matches(" and")
            .to_owned()
    }

    /// Where the word ends: before the next number or sign, and before the blanks in front of it.
    fn word_end(&self) -> usize {
        let mut end = 0;
        let mut before = ' ';
        for (at, c) in self.rest.char_indices() {
            if matches!(c, '-' | '−' | '+') || c.is_ascii_digit() && !self.is_power(at, before) {
                break;
            }
            if !c.is_whitespace() {
                end = at + c.len_utf8();
            }
            before = c;
        }
        end
    }

    /// Whether the digit at a place belongs to the unit: the 2 of `m2`, `J/m2K`, `s^0.5`, `cmH2O`,
    /// but not that of `4ft2in`.
    fn is_power(&self, at: usize, before: char) -> bool {
        let after = self.rest[at + 1..].chars().next().unwrap_or(' ');
        let in_decimal = before == '.' || before == '^';
        let below_the_line = self.rest[..at].contains('/') && !after.is_ascii_digit();
        let of_water = before == 'H' && after == 'O';
        in_decimal
            || of_water
            || before.is_alphabetic() && (below_the_line || !after.is_alphanumeric())
    }
}

fn is_quote(c: char) -> bool {
    matches!(c, '"' | '\'' | '″' | '′' | '”' | '’')
}

fn is_mark(c: char) -> bool {
    matches!(c, '.' | ',')
}

fn digit_after(text: &str, at: usize) -> bool {
    text[at + 1..].starts_with(|c: char| c.is_ascii_digit())
}

/// Digits with points and commas to a number: the last mark is the decimal one unless it stands
/// more than once; a single comma before exactly three digits could be either.
fn decimal(digits: &str) -> Result<f64, Fault> {
    let commas = digits.matches(',').count();
    let points = digits.matches('.').count();
    let plain = match (commas, points) {
        (0, 0 | 1) => digits.to_owned(),
        (1, 0) => one_comma(digits)?,
        (_, 0) => digits.replace(',', ""),
        (0, _) => digits.replace('.', ""),
        (_, 1) if digits.rfind('.') > digits.rfind(',') => digits.replace(',', ""),
        (1, _) => digits.replace('.', "").replace(',', "."),
        _ => return Err(Fault::NoNumber),
    };
    plain.parse().map_err(|_| Fault::NoNumber)
}

fn one_comma(digits: &str) -> Result<String, Fault> {
    let (before, after) = digits.split_once(',').unwrap_or((digits, ""));
    let could_be_thousands = after.len() == 3 && !before.is_empty() && !before.starts_with('0');
    match could_be_thousands {
        true => Err(Fault::TwoReadings),
        false => Ok(digits.replace(',', ".")),
    }
}
