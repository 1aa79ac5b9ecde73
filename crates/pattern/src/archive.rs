//! The zip archive a 3MF file is: found, checked and unpacked with a limit, never to disk; and
//! packed anew.

use std::io::{Read, Write};

use flate2::read::DeflateDecoder;
use flate2::write::DeflateEncoder;
use flate2::{Compression, Crc};

use crate::read::{Place, ReadError, Trouble, shorten};

/// Most bytes unpacked from one archive, all read parts together. The model text of the largest
/// part allowed stays below it; a bomb of a thousandth its size does not.
pub const MOST_UNPACKED: u64 = 160 << 20;

/// Most parts an archive may list.
const MOST_PARTS: u64 = 10_000;

const DIRECTORY_END: &[u8] = b"PK\x05\x06";
const DIRECTORY_ENTRY: &[u8] = b"PK\x01\x02";
const LOCAL_ENTRY: &[u8] = b"PK\x03\x04";
const LONG_END: &[u8] = b"PK\x06\x06";
const LONG_LOCATOR: &[u8] = b"PK\x06\x07";

/// An archive whose directory has been read and whose names have been checked.
pub struct Archive<'a> {
    bytes: &'a [u8],
    entries: Vec<Entry>,
    unpacked: u64,
}

/// A part to be packed.
pub struct Part {
    name: &'static str,
    text: String,
}

impl Part {
    /// A part of this name, which must lead to no other folder than its own.
    pub fn new(name: &'static str, text: String) -> Part {
        Part { name, text }
    }
}

/// Packs parts into an archive that bears no date, so that the same parts give the same bytes.
/// None for more bytes than the plain form of an archive counts, some four thousand million.
pub fn pack(parts: &[Part]) -> Option<Vec<u8>> {
    let mut bytes = Vec::new();
    let mut directory = Vec::new();
    for Part { name, text } in parts {
        let offset = u32::try_from(bytes.len()).ok()?;
        let mut packer = DeflateEncoder::new(Vec::new(), Compression::default());
        packer.write_all(text.as_bytes()).ok()?;
        let packed = packer.finish().ok()?;
        let mut checksum = Crc::new();
        checksum.update(text.as_bytes());
        let mut shared = Vec::from(HEAD_WITHOUT_DATE);
        shared.extend(checksum.sum().to_le_bytes());
        shared.extend(u32::try_from(packed.len()).ok()?.to_le_bytes());
        shared.extend(u32::try_from(text.len()).ok()?.to_le_bytes());
        shared.extend(u16::try_from(name.len()).ok()?.to_le_bytes());
        shared.extend([0, 0]);
        for part in [LOCAL_ENTRY, &shared, name.as_bytes(), &packed] {
            bytes.extend(part);
        }
        let (version, nothing_more) = ([20, 0], [0; 10]);
        let place = offset.to_le_bytes();
        let record: [&[u8]; 6] = [
            DIRECTORY_ENTRY,
            &version,
            &shared,
            &nothing_more,
            &place,
            name.as_bytes(),
        ];
        record.iter().for_each(|part| directory.extend(*part));
    }
    let count = u16::try_from(parts.len()).ok()?.to_le_bytes();
    let start = u32::try_from(bytes.len()).ok()?.to_le_bytes();
    let length = u32::try_from(directory.len()).ok()?.to_le_bytes();
    let end: [&[u8]; 8] = [
        &directory,
        DIRECTORY_END,
        &[0; 4],
        &count,
        &count,
        &length,
        &start,
        &[0; 2],
    ];
    end.iter().for_each(|part| bytes.extend(*part));
    Some(bytes)
}

/// Version 2.0, no flags, packed, and the first day that the format can name.
const HEAD_WITHOUT_DATE: [u8; 10] = [20, 0, 0, 0, 8, 0, 0, 0, 0x21, 0];

struct Entry {
    name: String,
    is_encrypted: bool,
    method: u64,
    checksum: u32,
    packed: u64,
    size: u64,
    offset: u64,
}

impl<'a> Archive<'a> {
    /// Reads the directory at the end of the archive.
    pub fn open(bytes: &'a [u8]) -> Result<Archive<'a>, ReadError> {
        let (count, mut at) = directory(bytes)?;
        if count > MOST_PARTS {
            return Err(damaged("it lists more than ten thousand parts"));
        }
        let mut entries = Vec::new();
        for _ in 0..count {
            let (entry, next) = entry(bytes, at).ok_or(damaged("its directory is cut off"))?;
            check_name(&entry.name)?;
            entries.push(entry);
            at = next;
        }
        Ok(Archive {
            bytes,
            entries,
            unpacked: 0,
        })
    }

    /// Unpacks the part of this name; upper and lower case are the same, as 3MF has it.
    pub fn part(&mut self, name: &str) -> Result<Vec<u8>, ReadError> {
        let place = || Place::Part(shorten(name.as_bytes()));
        let wanted = name.trim_start_matches('/');
        let found = self
            .entries
            .iter()
            .find(|entry| entry.name.eq_ignore_ascii_case(wanted));
        let entry = found.ok_or_else(|| Trouble::PartMissing.at(place()))?;
        self.unpacked = self.unpacked.saturating_add(entry.size);
        if self.unpacked > MOST_UNPACKED {
            return Err(Trouble::TooLarge {
                bytes: self.unpacked,
            }
            .at(place()));
        }
        unpack(self.bytes, entry).map_err(|trouble| trouble.at(place()))
    }

    /// Name of the first part that ends in `ending`.
    pub fn first_ending(&self, ending: &str) -> Option<&str> {
        let names = self.entries.iter().map(|entry| entry.name.as_str());
        names
            .into_iter()
            .find(|name| name.to_ascii_lowercase().ends_with(ending))
    }
}

fn damaged(why: &'static str) -> ReadError {
    Trouble::Archive { why }.at(Place::File)
}

/// Little-endian number of `length` bytes at `at`.
fn number(bytes: &[u8], at: u64, length: u64) -> Option<u64> {
    let at = usize::try_from(at).ok()?;
    let slice = bytes.get(at..at.checked_add(length as usize)?)?;
    Some(
        slice
            .iter()
            .rev()
            .fold(0, |sum, &byte| sum << 8 | u64::from(byte)),
    )
}

fn has(bytes: &[u8], at: u64, signature: &[u8]) -> bool {
    usize::try_from(at)
        .ok()
        .and_then(|at| bytes.get(at..))
        .is_some_and(|b| b.starts_with(signature))
}

/// Number of entries and where the directory begins, from the record at the end of the archive or
/// from its long form, which some writers always use.
fn directory(bytes: &[u8]) -> Result<(u64, u64), ReadError> {
    let earliest = bytes.len().saturating_sub(22 + 65_535);
    let end = (earliest..bytes.len().saturating_sub(21))
        .rev()
        .find(|&at| bytes[at..].starts_with(DIRECTORY_END))
        .ok_or(damaged("it has no directory, so it was cut off"))? as u64;
    let short = || Some((number(bytes, end + 10, 2)?, number(bytes, end + 16, 4)?));
    let long = || {
        let locator = end
            .checked_sub(20)
            .filter(|&at| has(bytes, at, LONG_LOCATOR))?;
        let record = number(bytes, locator + 8, 8).filter(|&at| has(bytes, at, LONG_END))?;
        Some((
            number(bytes, record.checked_add(32)?, 8)?,
            number(bytes, record + 48, 8)?,
        ))
    };
    long()
        .or_else(short)
        .ok_or(damaged("its directory is cut off"))
}

fn entry(bytes: &[u8], at: u64) -> Option<(Entry, u64)> {
    if !has(bytes, at, DIRECTORY_ENTRY) {
        return None;
    }
    let field = |offset, length| number(bytes, at + offset, length);
    let (name_length, extra_length) = (field(28, 2)?, field(30, 2)?);
    let name_at = usize::try_from(at + 46).ok()?;
    let name = bytes.get(name_at..name_at + name_length as usize)?;
    let mut entry = Entry {
        name: String::from_utf8_lossy(name).into_owned(),
        is_encrypted: field(8, 2)? & 1 == 1,
        method: field(10, 2)?,
        checksum: field(16, 4)? as u32,
        packed: field(20, 4)?,
        size: field(24, 4)?,
        offset: field(42, 4)?,
    };
    let extra_at = at + 46 + name_length;
    read_long_sizes(bytes, extra_at, extra_at + extra_length, &mut entry)?;
    Some((entry, extra_at + extra_length + field(32, 2)?))
}

/// Sizes that did not fit four bytes stand in extra field 1, in a fixed order.
fn read_long_sizes(bytes: &[u8], from: u64, to: u64, entry: &mut Entry) -> Option<()> {
    let mut at = from;
    while at + 4 <= to {
        let (kind, length) = (number(bytes, at, 2)?, number(bytes, at + 2, 2)?);
        if kind == 1 {
            let mut value_at = at + 4;
            for field in [&mut entry.size, &mut entry.packed, &mut entry.offset] {
                if *field == u64::from(u32::MAX) {
                    *field = number(bytes, value_at, 8)?;
                    value_at += 8;
                }
            }
        }
        at += 4 + length;
    }
    Some(())
}

fn check_name(name: &str) -> Result<(), ReadError> {
    let leads_out = name.starts_with('/')
        || name.contains(['\\', ':', '\0'])
        || name.split('/').any(|step| step == "..");
    if leads_out {
        return Err(Trouble::PathLeadsOut.at(Place::Part(shorten(name.as_bytes()))));
    }
    Ok(())
}

/// Unpacks at most what the directory claims and one byte more, which shows a lie.
fn unpack(bytes: &[u8], entry: &Entry) -> Result<Vec<u8>, Trouble> {
    if entry.is_encrypted || !(entry.method == 0 || entry.method == 8) {
        return Err(Trouble::PackedOddly);
    }
    let packed = packed_bytes(bytes, entry).ok_or(Trouble::PartLies)?;
    let mut data = Vec::new();
    let read = if entry.method == 0 {
        packed.take(entry.size + 1).read_to_end(&mut data)
    } else {
        DeflateDecoder::new(packed)
            .take(entry.size + 1)
            .read_to_end(&mut data)
    };
    let mut checksum = Crc::new();
    checksum.update(&data);
    match read {
        Ok(size) if size as u64 == entry.size && checksum.sum() == entry.checksum => Ok(data),
        _ => Err(Trouble::PartLies),
    }
}

fn packed_bytes<'a>(bytes: &'a [u8], entry: &Entry) -> Option<&'a [u8]> {
    if !has(bytes, entry.offset, LOCAL_ENTRY) {
        return None;
    }
    let names = number(bytes, entry.offset + 26, 2)? + number(bytes, entry.offset + 28, 2)?;
    let start = entry.offset + 30 + names;
    let end = start.checked_add(entry.packed)?;
    bytes.get(usize::try_from(start).ok()?..usize::try_from(end).ok()?)
}
