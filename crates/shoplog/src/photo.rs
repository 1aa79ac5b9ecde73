//! Photos: kept beside the log under the hash of what they hold, without the place they were taken
//! at, with a small picture beside each that can be decoded. WebP and HEIC are kept as they are
//! otherwise, without a small picture.

use std::fs;
use std::io::Cursor;
use std::path::{Path, PathBuf};

use exif::{In, Reader, Tag};
use image::{DynamicImage, ImageFormat, ImageReader};
use sha2::{Digest, Sha256};

use crate::entry::{Added, Fresh};
use crate::error::LogError;
use crate::log::Log;
use crate::photo::notes::{
    sides_of_webp, without_notes_of_heic, without_notes_of_jpeg, without_notes_of_png,
    without_notes_of_webp,
};
use crate::table::Table;
use crate::table::around::PHOTOS;
use crate::value::Value;

mod notes;

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
/// A picture that is none of JPEG, PNG, WebP and HEIC, or whose notes cannot be taken out; a disk
/// or a log that says no.
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
    if let Some(bytes) = &kept.small {
        let small = folder.join(format!("{hash}-small.jpg"));
        whole(&small, bytes).map_err(disk(&small))?;
    }
    let mut photo = Fresh::of(&PHOTOS)
        .with("of_table", Value::Text(of.0.name.to_owned()))
        .with("of", Value::Text(of.1.to_owned()))
        .with("sha256", Value::Text(hash));
    if let Some([wide, high]) = kept.sides {
        photo = photo.with("wide", Value::Whole(i64::from(wide)));
        photo = photo.with("high", Value::Whole(i64::from(high)));
    }
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
    let places =
        ["jpg", "png", "webp", "heic"].map(|ending| folder.join(format!("{hash}.{ending}")));
    places.into_iter().find(|place| place.is_file())
}

/// The small picture of a hash; nothing where none could be made.
pub fn small_of(log: &Log, hash: &str) -> Option<PathBuf> {
    let folder = log.path.with_file_name(PHOTOS_FOLDER);
    let place = folder.join(format!("{hash}-small.jpg"));
    place.is_file().then_some(place)
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
    /// Pixels across and upright, the way up that is shown; nothing where the file does not say.
    pub sides: Option<[u32; 2]>,
    /// A small JPEG of it, turned the right way up; nothing of a picture that is not decoded here.
    pub small: Option<Vec<u8>>,
}

/// Takes the notes out of a picture and makes a small one.
///
/// # Errors
///
/// In words, what is wrong and what to do.
pub fn kept(bytes: &[u8]) -> Result<Kept, String> {
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
    let undecoded = |bytes: Option<Vec<u8>>, sides, ending| -> Result<Kept, String> {
        Ok(Kept {
            bytes: bytes.ok_or(DAMAGED)?,
            ending,
            taken: taken.clone(),
            sides,
            small: None,
        })
    };
    match image::guess_format(bytes) {
        Ok(ImageFormat::WebP) => {
            undecoded(without_notes_of_webp(bytes), sides_of_webp(bytes), "webp")
        }
        _ if is_heic(bytes) => undecoded(
            without_notes_of_heic(bytes, notes.as_ref().map(exif::Exif::buf)),
            None,
            "heic",
        ),
        Ok(format @ (ImageFormat::Jpeg | ImageFormat::Png)) => {
            let (stripped, ending) = match format {
                ImageFormat::Jpeg => (without_notes_of_jpeg(bytes, up), "jpg"),
                _ => (without_notes_of_png(bytes), "png"),
            };
            let stripped = stripped.ok_or(DAMAGED)?;
            let turned = turned(decoded(bytes, format)?, up);
            Ok(Kept {
                bytes: stripped,
                ending,
                taken,
                sides: Some([turned.width(), turned.height()]),
                small: Some(small(&turned)?),
            })
        }
        _ => Err("is none of JPEG, PNG, WebP and HEIC: save it as JPEG".to_owned()),
    }
}

/// What is said of a file whose blocks do not fit together.
const DAMAGED: &str = "is cut short or damaged, or its notes cannot be taken out: copy it from the \
                       camera again, or save it as JPEG";

/// Whether a file is a HEIC by its first box.
fn is_heic(bytes: &[u8]) -> bool {
    let brand = bytes.get(8..12);
    let brands: [&[u8]; 4] = [b"heic", b"heix", b"mif1", b"msf1"];
    bytes.get(4..8) == Some(b"ftyp") && brand.is_some_and(|brand| brands.contains(&brand))
}

fn decoded(bytes: &[u8], format: ImageFormat) -> Result<DynamicImage, String> {
    let mut reader = ImageReader::with_format(Cursor::new(bytes), format);
    let mut limits = image::Limits::default();
    limits.max_image_width = Some(MOST_SIDE);
    limits.max_image_height = Some(MOST_SIDE);
    reader.limits(limits);
    let decoded = reader.decode();
    decoded.map_err(|error| format!("cannot be shown ({error})"))
}

fn small(turned: &DynamicImage) -> Result<Vec<u8>, String> {
    let mut small = Cursor::new(Vec::new());
    let shrunk = DynamicImage::ImageRgb8(turned.thumbnail(SMALL, SMALL).to_rgb8());
    let drawn = shrunk.write_to(&mut small, ImageFormat::Jpeg);
    drawn.map_err(|error| format!("cannot be made small ({error})"))?;
    Ok(small.into_inner())
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
