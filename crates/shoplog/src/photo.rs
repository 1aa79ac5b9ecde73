//! Photos: kept beside the log under the hash of what they hold, without the place they were taken
//! at, with a small picture beside each.

use std::fs;
use std::io::Cursor;
use std::path::{Path, PathBuf};

use exif::{In, Reader, Tag};
use image::{DynamicImage, ImageFormat, ImageReader};
use sha2::{Digest, Sha256};

use crate::entry::{Added, Fresh};
use crate::error::LogError;
use crate::log::Log;
use crate::table::Table;
use crate::table::around::PHOTOS;
use crate::value::Value;

/// The folder beside the log in which pictures lie.
pub const PHOTOS_FOLDER: &str = "log-photos";

/// Longer side of the small pictures, pixels: enough to tell a blow from a sink on a phone.
const SMALL: u32 = 320;

/// Most pixels that are decoded for a small picture: a larger file asks for more memory than a
/// phone or an old laptop has.
const MOST_SIDE: u32 = 20_000;

/// Keeps a picture for an entry: the picture as it is, but without its EXIF block and other notes,
/// of which the time and the way up are kept.
///
/// # Errors
///
/// A picture that is neither JPEG nor PNG, a disk or a log that says no.
pub fn keep_photo(
    log: &mut Log,
    of: (&'static Table, &str),
    picture: &Path,
    note: Option<&str>,
) -> Result<Added, LogError> {
    let disk = |path: &Path| {
        let path = path.to_owned();
        move |error| LogError::Disk { path, error }
    };
    log.entry(of.0, of.1)?;
    let bytes = fs::read(picture).map_err(disk(picture))?;
    let refused = |words: String| LogError::Photo {
        path: picture.to_owned(),
        words,
    };
    let kept = kept(&bytes).map_err(refused)?;
    let hash: String = Sha256::digest(&kept.bytes)
        .iter()
        .map(|byte| format!("{byte:02x}"))
        .collect();
    let folder = log.path.with_file_name(PHOTOS_FOLDER);
    fs::create_dir_all(&folder).map_err(disk(&folder))?;
    let place = folder.join(format!("{hash}.{}", kept.ending));
    whole(&place, &kept.bytes).map_err(disk(&place))?;
    let small = folder.join(format!("{hash}-small.jpg"));
    whole(&small, &kept.small).map_err(disk(&small))?;
    let mut photo = Fresh::of(&PHOTOS)
        .with("of_table", Value::Text(of.0.name.to_owned()))
        .with("of", Value::Text(of.1.to_owned()))
        .with("sha256", Value::Text(hash))
        .with("wide", Value::Whole(i64::from(kept.wide)))
        .with("high", Value::Whole(i64::from(kept.high)));
    if let Some(taken) = kept.taken {
        photo = photo.with("taken", Value::Text(taken));
    }
    if let Some(note) = note {
        photo = photo.with("note", Value::Text(note.to_owned()));
    }
    Ok(log.add(&[photo])?.remove(0))
}

/// Where a picture lies by its hash, whatever its kind.
pub fn place_of(log: &Log, hash: &str) -> Option<PathBuf> {
    let folder = log.path.with_file_name(PHOTOS_FOLDER);
    let places = ["jpg", "png"].map(|ending| folder.join(format!("{hash}.{ending}")));
    places.into_iter().find(|place| place.is_file())
}

/// A picture as it is kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Kept {
    /// The picture, without notes.
    pub bytes: Vec<u8>,
    /// Ending of its name.
    pub ending: &'static str,
    /// When it was taken, by the camera.
    pub taken: Option<String>,
    /// Pixels across, the way up that is shown.
    pub wide: u32,
    /// Pixels upright.
    pub high: u32,
    /// A small JPEG of it, turned the right way up.
    pub small: Vec<u8>,
}

/// Takes the notes out of a picture and makes a small one.
///
/// # Errors
///
/// In words, what is wrong and what to do.
pub fn kept(bytes: &[u8]) -> Result<Kept, String> {
    let format = image::guess_format(bytes);
    let (format, ending) = match format {
        Ok(ImageFormat::Jpeg) => (ImageFormat::Jpeg, "jpg"),
        Ok(ImageFormat::Png) => (ImageFormat::Png, "png"),
        _ => return Err("is neither JPEG nor PNG: save it as JPEG".to_owned()),
    };
    let notes = Reader::new()
        .read_from_container(&mut Cursor::new(bytes))
        .ok();
    let up = notes.as_ref().and_then(|notes| {
        notes
            .get_field(Tag::Orientation, In::PRIMARY)?
            .value
            .get_uint(0)
    });
    let up = u8::try_from(up.unwrap_or(1))
        .ok()
        .filter(|up| (1..=8).contains(up))
        .unwrap_or(1);
    let taken = notes.as_ref().and_then(taken);
    let stripped = match format {
        ImageFormat::Jpeg => without_notes_of_jpeg(bytes, up),
        _ => without_notes_of_png(bytes),
    };
    let stripped = stripped.ok_or("is cut short or damaged: copy it from the camera again")?;
    let mut reader = ImageReader::with_format(Cursor::new(bytes), format);
    let mut limits = image::Limits::default();
    limits.max_image_width = Some(MOST_SIDE);
    limits.max_image_height = Some(MOST_SIDE);
    reader.limits(limits);
    let decoded = reader
        .decode()
        .map_err(|error| format!("cannot be shown ({error})"))?;
    let turned = turned(decoded, up);
    let mut small = Cursor::new(Vec::new());
    let shrunk = DynamicImage::ImageRgb8(turned.thumbnail(SMALL, SMALL).to_rgb8());
    let drawn = shrunk.write_to(&mut small, ImageFormat::Jpeg);
    drawn.map_err(|error| format!("cannot be made small ({error})"))?;
    Ok(Kept {
        bytes: stripped,
        ending,
        taken,
        wide: turned.width(),
        high: turned.height(),
        small: small.into_inner(),
    })
}

/// The time of the camera, "2026:05:03 14:20:31", as the log writes times.
fn taken(notes: &exif::Exif) -> Option<String> {
    let tags = [Tag::DateTimeOriginal, Tag::DateTime];
    let field = tags
        .iter()
        .find_map(|tag| notes.get_field(*tag, In::PRIMARY))?;
    let shown = field.display_value().to_string();
    let time = shown.replacen(' ', "T", 1);
    crate::column::is_time(&time).then_some(time)
}

/// A JPEG without its blocks of notes (APP1 to APP15 but for APP2 and APP14, which colours need,
/// and comments), and with one block that says which way is up.
fn without_notes_of_jpeg(bytes: &[u8], up: u8) -> Option<Vec<u8>> {
    let mut kept = bytes.get(..2)?.to_vec();
    if up != 1 {
        kept.extend(way_up(up));
    }
    let mut at = 2;
    loop {
        let marker = *bytes.get(at + 1)?;
        if bytes.get(at) != Some(&0xFF) {
            return None;
        }
        if marker == 0xDA {
            kept.extend(bytes.get(at..)?);
            return Some(kept);
        }
        let length = usize::from(u16::from_be_bytes([
            *bytes.get(at + 2)?,
            *bytes.get(at + 3)?,
        ]));
        let block = bytes.get(at..at + 2 + length)?;
        let is_note = matches!(marker, 0xE1 | 0xE3..=0xED | 0xEF | 0xFE);
        if !is_note {
            kept.extend(block);
        }
        at += 2 + length;
    }
}

/// An EXIF block with the way up and nothing else.
fn way_up(up: u8) -> Vec<u8> {
    let mut block = vec![0xFF, 0xE1, 0, 34];
    block.extend(b"Exif\0\0MM\0\x2A\0\0\0\x08\0\x01\x01\x12\0\x03\0\0\0\x01\0");
    block.extend([up, 0, 0, 0, 0, 0, 0]);
    block
}

/// A PNG without its blocks of notes.
fn without_notes_of_png(bytes: &[u8]) -> Option<Vec<u8>> {
    let mut kept = bytes.get(..8)?.to_vec();
    let mut at = 8;
    while at < bytes.len() {
        let length = bytes.get(at..at + 4)?;
        let length = u32::from_be_bytes(length.try_into().ok()?) as usize;
        let block = bytes.get(at..at.checked_add(length)?.checked_add(12)?)?;
        let name = &block[4..8];
        if ![b"eXIf", b"tEXt", b"zTXt", b"iTXt"]
            .iter()
            .any(|note| *note == name)
        {
            kept.extend(block);
        }
        at += block.len();
    }
    Some(kept)
}

/// Turned by the eight ways of EXIF.
fn turned(picture: DynamicImage, up: u8) -> DynamicImage {
    match up {
        2 => picture.fliph(),
        3 => picture.rotate180(),
        4 => picture.flipv(),
        5 => picture.rotate90().fliph(),
        6 => picture.rotate90(),
        7 => picture.rotate270().fliph(),
        8 => picture.rotate270(),
        _ => picture,
    }
}

/// Written beside its place first, then moved there.
fn whole(place: &Path, bytes: &[u8]) -> std::io::Result<()> {
    let beside = place.with_extension("part");
    fs::write(&beside, bytes)?;
    fs::File::open(&beside)?.sync_all()?;
    fs::rename(&beside, place)
}
