//! Reads a PDF back as far as the tests need: its pages, its strokes, its words.

use std::collections::BTreeMap;

use miniz_oxide::inflate::decompress_to_vec_zlib;

/// What a PDF file holds.
pub struct Printed {
    /// Number of pages.
    pub pages: usize,
    /// Number of fonts with their outlines inside the file.
    pub fonts: usize,
    /// Width and height of the page, pt.
    pub size_pt: [f64; 2],
    /// Operators of the page.
    pub content: String,
    /// All strings shown on the page, in order, once for each font they may be set in.
    readings: Vec<String>,
}

impl Printed {
    /// Whether the page shows the words on one line and in one weight.
    pub fn says(&self, words: &str) -> bool {
        let squeezed: String = words.split(' ').collect();
        self.readings
            .iter()
            .any(|reading| reading.contains(&squeezed))
    }

    /// Size of the letters each time a font is chosen.
    pub fn letter_sizes(&self) -> Vec<f64> {
        let parts: Vec<&str> = self.content.split_whitespace().collect();
        let chosen = parts.windows(2).filter(|part| part[1] == "Tf");
        chosen.filter_map(|part| part[0].parse().ok()).collect()
    }

    /// Lengths of all horizontal strokes that start at their own origin, pt.
    pub fn level_strokes_pt(&self) -> Vec<f64> {
        let parts: Vec<&str> = self.content.split_whitespace().collect();
        let strokes = parts
            .windows(6)
            .filter(|part| part[..3] == ["0", "0", "m"] && part[4] == "0" && part[5] == "l");
        strokes.filter_map(|part| part[3].parse().ok()).collect()
    }
}

/// Reads the bytes of a PDF.
pub fn read_back(pdf: &[u8]) -> Printed {
    let text = String::from_utf8_lossy(pdf);
    let streams = streams(pdf);
    let content = streams
        .iter()
        .find(|stream| stream.contains("BT ") || stream.contains("BT\n"));
    let content = content.cloned().unwrap_or_default();
    let maps = streams
        .iter()
        .filter(|stream| stream.contains("beginbfchar"));
    let readings = maps.map(|map| reading(&content, &letters(map))).collect();
    let boxed = text
        .split("/MediaBox[")
        .nth(1)
        .unwrap()
        .split(']')
        .next()
        .unwrap();
    let corners: Vec<f64> = boxed.split(' ').map(|part| part.parse().unwrap()).collect();
    Printed {
        pages: text.matches("/Type/Page/").count(),
        fonts: text.matches("/FontFile").count(),
        size_pt: [corners[2], corners[3]],
        content,
        readings,
    }
}

/// Whether any page or drawing of the file shows the words on one line and in one weight.
pub fn says_somewhere(pdf: &[u8], words: &str) -> bool {
    let squeezed: String = words.split(' ').collect();
    let streams = streams(pdf);
    let is_map = |stream: &&String| stream.contains("beginbfchar");
    let maps: Vec<_> = streams
        .iter()
        .filter(is_map)
        .map(|map| letters(map))
        .collect();
    let shown = streams.iter().filter(|stream| stream.contains("Tf"));
    shown.into_iter().any(|content| {
        maps.iter()
            .any(|map| reading(content, map).contains(&squeezed))
    })
}

/// Every deflated stream of the file, as text of one letter a byte.
fn streams(pdf: &[u8]) -> Vec<String> {
    let starts = pdf
        .windows(8)
        .enumerate()
        .filter(|(_, part)| *part == b">>stream");
    let loose = pdf
        .windows(9)
        .enumerate()
        .filter(|(_, part)| *part == b">>\nstream");
    let bodies = starts
        .map(|(at, _)| at + 9)
        .chain(loose.map(|(at, _)| at + 10));
    bodies
        .filter_map(|at| decompress_to_vec_zlib(&pdf[at..]).ok())
        .map(|bytes| bytes.into_iter().map(char::from).collect())
        .collect()
}

/// The letters behind a font's glyph numbers.
fn letters(map: &str) -> BTreeMap<u32, String> {
    let lines = map
        .lines()
        .filter_map(|line| line.strip_prefix('<')?.split_once("> <"));
    lines
        .filter_map(|(glyph, letters)| {
            let units: Vec<u16> = letters
                .trim_end_matches('>')
                .as_bytes()
                .chunks(4)
                .filter_map(|hex| u16::from_str_radix(std::str::from_utf8(hex).ok()?, 16).ok())
                .collect();
            Some((
                u32::from_str_radix(glyph, 16).ok()?,
                String::from_utf16(&units).ok()?,
            ))
        })
        .collect()
}

/// The page's strings, spaces left out, as read with one font's letters.
fn reading(content: &str, letters: &BTreeMap<u32, String>) -> String {
    let mut read = String::new();
    let mut bytes = Vec::new();
    let mut rest = content.chars();
    while let Some(letter) = rest.next() {
        if letter != '(' {
            continue;
        }
        while let Some(inside) = rest.next() {
            match inside {
                ')' => break,
                '\\' => bytes.push(escaped(&mut rest)),
                plain => bytes.push(u32::from(plain)),
            }
        }
        for pair in bytes.chunks(2) {
            let glyph = pair.iter().fold(0, |number, byte| number * 256 + byte);
            let known = letters
                .get(&glyph)
                .map(String::as_str)
                .unwrap_or("\u{FFFD}");
            read.extend(known.chars().filter(|letter| *letter != ' '));
        }
        bytes.clear();
    }
    read
}

/// The byte behind a backslash in a PDF string.
fn escaped(rest: &mut std::str::Chars) -> u32 {
    let first = rest.next().unwrap();
    let named = [('n', 10), ('r', 13), ('t', 9), ('b', 8), ('f', 12)];
    if let Some((_, byte)) = named.iter().find(|(name, _)| *name == first) {
        return *byte;
    }
    let Some(high) = first.to_digit(8) else {
        return u32::from(first);
    };
    let mut digit = || rest.next().and_then(|letter| letter.to_digit(8)).unwrap();
    let (middle, low) = (digit(), digit());
    high * 64 + middle * 8 + low
}
