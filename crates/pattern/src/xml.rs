//! The tags of an XML text, one after another: all that a 3MF model needs of XML.
//!
//! A document that declares its own entities is refused, so no text can grow while it is read.

use crate::read::Trouble;

/// One tag.
#[derive(Clone, Copy, Debug)]
pub struct Tag<'a> {
    /// Name without its namespace prefix.
    pub name: &'a str,
    /// Whether it closes an element.
    pub is_end: bool,
    /// Whether it opens and closes an element at once.
    pub is_empty: bool,
    attributes: &'a str,
}

/// The tags of a text.
pub struct Tags<'a> {
    text: &'a str,
    at: usize,
}

impl<'a> Tags<'a> {
    /// The tags of `bytes`, which must be UTF-8.
    pub fn of(bytes: &'a [u8]) -> Result<Tags<'a>, Trouble> {
        let text = std::str::from_utf8(bytes).map_err(|_| damaged("it is not UTF-8"))?;
        Ok(Tags { text, at: 0 })
    }

    /// Where the text has been read to, in bytes.
    pub fn at(&self) -> usize {
        self.at
    }

    /// The next tag; comments, instructions and character data are passed over.
    pub fn next_tag(&mut self) -> Result<Option<Tag<'a>>, Trouble> {
        loop {
            let rest = &self.text[self.at..];
            let Some(start) = rest.find('<') else {
                self.at = self.text.len();
                return Ok(None);
            };
            self.at += start;
            let rest = &rest[start..];
            if rest.starts_with("<!--") {
                self.pass("-->")?;
            } else if rest.starts_with("<![CDATA[") {
                self.pass("]]>")?;
            } else if rest.starts_with("<?") {
                self.pass("?>")?;
            } else if rest.starts_with("<!") {
                return Err(damaged("it declares a document type"));
            } else {
                return self.tag(rest).map(Some);
            }
        }
    }

    fn pass(&mut self, end: &str) -> Result<(), Trouble> {
        let found = self.text[self.at..]
            .find(end)
            .ok_or(damaged("it is cut off"))?;
        self.at += found + end.len();
        Ok(())
    }

    fn tag(&mut self, rest: &'a str) -> Result<Tag<'a>, Trouble> {
        let length = tag_length(rest).ok_or(damaged("it is cut off"))?;
        self.at += length;
        let inner = &rest[1..length - 1];
        let is_end = inner.starts_with('/');
        let is_empty = inner.ends_with('/');
        let inner = inner.trim_matches('/');
        let name_length = inner
            .find(|c: char| c.is_ascii_whitespace())
            .unwrap_or(inner.len());
        let (name, attributes) = inner.split_at(name_length);
        if name.is_empty() {
            return Err(damaged("a tag has no name"));
        }
        Ok(Tag {
            name: without_prefix(name),
            is_end,
            is_empty,
            attributes,
        })
    }
}

impl<'a> Tag<'a> {
    /// Value of the attribute of this name, its namespace prefix left aside.
    pub fn attribute(&self, name: &str) -> Option<&'a str> {
        let mut rest = self.attributes;
        loop {
            let (key, after) = rest.split_once('=')?;
            let after = after.trim_start();
            let quote = after.chars().next().filter(|&c| c == '"' || c == '\'')?;
            let (value, next) = after[1..].split_once(quote)?;
            if without_prefix(key.trim()) == name {
                return Some(value);
            }
            rest = next;
        }
    }
}

fn damaged(why: &'static str) -> Trouble {
    Trouble::Xml { why }
}

fn without_prefix(name: &str) -> &str {
    name.rsplit_once(':').map_or(name, |(_, local)| local)
}

/// Bytes up to and with the `>` that ends the tag; one inside quotes does not.
fn tag_length(rest: &str) -> Option<usize> {
    let mut quote = None;
    for (at, &byte) in rest.as_bytes().iter().enumerate() {
        match (quote, byte) {
            (None, b'>') => return Some(at + 1),
            (None, b'"' | b'\'') => quote = Some(byte),
            (Some(open), _) if open == byte => quote = None,
            _ => {}
        }
    }
    None
}
