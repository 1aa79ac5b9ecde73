//! What moves in: files of the bench, plans, photos.

#![allow(clippy::expect_used, reason = "a helper that fails fails its test")]

use std::fs;
use std::io::Cursor;

use exif::{In, Reader, Tag};
use image::{ImageFormat, Rgb, RgbImage};
use shoplog::bench_files::{move_in, moved_in};
use shoplog::log::Log;
use shoplog::photo::{keep_photo, kept, place_of};
use shoplog::prefill::of_plan;
use shoplog::table::castings::CASTINGS;
use shoplog::table::melt::{HEATS, POURS};
use shoplog::table::mould::{MOULDS, PLANNED};
use shoplog::table::sand::{BATCHES, HEAPS, SAND_TESTS};
use shoplog::value::Value;
use shoplog::written_pour::write_pour;

const READINGS: &str = "# my tests\n[[reading]]\nday = \"2026-04-02\"\ntest = \"drop\"\n\
                        value = 41.5\ngood = true\nwho = \"A\"\n\n";

const HEAP: &str = r#"# the green heap
name = "green heap"
mass = "90 kg"
moisture = "4.5 % of wet mass"
clay = "sodium-bentonite"

[[pour]]
day = "2026-04-02"
clay_burnt = "2.5 %"
organic_burnt = "4 %"
dried = "10 %"
clay = "300 g"
water = "1.2 kg"
crust_out = "50 %"
"#;

#[test]
fn files_of_the_bench_move_in_and_out_to_the_last_letter() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut log = Log::open(&folder.path().join("log.sqlite")).expect("opens");
    let files = [
        ("heap.toml", HEAP),
        ("readings.toml", READINGS),
        ("trial/results.csv", "a,b\r\n"),
    ];
    for (name, text) in files {
        move_in(&mut log, name, text).expect("taken");
    }
    let heap = log.last(&HEAPS, 9).expect("listed").remove(0);
    assert_eq!(heap.values["mass_kg"], Value::Real(90.0));
    let batch = log.last(&BATCHES, 9).expect("listed").remove(0);
    assert_eq!(batch.values["heap"], Value::Text(heap.id));
    assert_eq!(batch.values["clay_kg"], Value::Real(0.3));
    assert_eq!(batch.values["crust_out_percent"], Value::Real(50.0));
    assert_eq!(batch.values["mixed"].text(), Some("2026-04-02"));
    let test = log.last(&SAND_TESTS, 9).expect("listed").remove(0);
    assert_eq!(test.values["value"], Value::Real(41.5));
    assert_eq!(test.values["unit"].text(), Some("kPa"));
    let out = moved_in(&log).expect("listed");
    let out: Vec<(&str, &str)> = out.iter().map(|(name, text)| (&**name, &**text)).collect();
    assert_eq!(out, files);
}

#[test]
fn a_file_that_has_grown_brings_what_is_new() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut log = Log::open(&folder.path().join("log.sqlite")).expect("opens");
    assert_eq!(
        move_in(&mut log, "readings.toml", READINGS)
            .expect("taken")
            .new,
        2
    );
    assert_eq!(
        move_in(&mut log, "readings.toml", READINGS)
            .expect("taken")
            .new,
        0
    );
    let grown = format!("{READINGS}[[reading]]\nday = \"3 May\"\ntest = \"dent\"\nvalue = 12.0\n");
    let moved = move_in(&mut log, "readings.toml", &grown).expect("taken");
    assert_eq!((moved.new, moved.there), (1, 2));
    assert_eq!(moved_in(&log).expect("listed")[0].1, grown);
    let error = move_in(&mut log, "readings.toml", "[[reading]]\nday = 3\n").expect_err("refused");
    assert!(error.to_string().contains("readings.toml"), "{error}");
}

const PLAN: &str = r#"{"job": "Vise jaws", "alloy": "Gunmetal 85-5-5-5", "count": 2,
"figures": {
  "pouring temperature": {"low": 1109, "likely": 1171.83, "high": 1234, "unit": "C", "law": {}},
  "fill time": {"low": 3, "likely": 4.5, "high": 5, "unit": "s"},
  "poured mass": {"low": 4, "likely": 4.9, "high": 6, "unit": "kg"},
  "may be opened": {"low": 2494, "likely": 3900, "high": 3925, "unit": "s"},
  "contraction": {"low": 1.3, "likely": 1.5, "high": 1.56, "unit": "%"},
  "charge": {"low": 4.5, "likely": 5.7, "high": 7.6, "unit": "kg"},
  "casting mass": {"low": 1.1, "likely": 1.139, "high": 1.2, "unit": "kg"}},
"choices": {"flask": {"chosen": "A: 250 x 200", "because": "x"}},
"remarks": [{"code": "lead"}, {"code": "zinc_fume"}]}"#;

#[test]
fn one_command_writes_a_whole_pour_from_the_plan() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut log = Log::open(&folder.path().join("log.sqlite")).expect("opens");
    let prefilled = of_plan(PLAN).expect("a plan");
    let typed = [
        ("temperature", "1160 C"),
        ("poured", "2026-05-03T14:20"),
        ("mould.moisture", "4.5 %"),
        ("heat.charge", "5.5 kg"),
        ("good", "1"),
    ];
    let typed: Vec<(String, String)> = typed
        .iter()
        .map(|(key, text)| ((*key).to_owned(), (*text).to_owned()))
        .collect();
    write_pour(&mut log, &prefilled, &typed).expect("written");
    let pour = log.last(&POURS, 9).expect("listed").remove(0);
    assert_eq!(pour.values["planned_temperature_c"], Value::Real(1171.83));
    assert_eq!(pour.values["planned_opening_min"], Value::Real(65.0));
    assert_eq!(pour.values["temperature_c"], Value::Real(1160.0));
    let castings = log.last(&CASTINGS, 9).expect("listed");
    let good: Vec<_> = castings
        .iter()
        .map(|one| one.values["good"].number())
        .collect();
    assert_eq!(good, [Some(0.0), Some(1.0)], "the newest first");
    let mould = log.last(&MOULDS, 9).expect("listed").remove(0);
    assert_eq!(mould.values["allowance_x_percent"], Value::Real(1.5));
    assert_eq!(mould.values["found"].text(), Some("lead zinc_fume"));
    let planned = log.pointing(&PLANNED, "mould", &mould.id).expect("listed");
    assert_eq!(planned.len(), 7);
    // A second mould from the same crucible.
    let again = [("heat".to_owned(), "last".to_owned())];
    write_pour(&mut log, &prefilled, &again).expect("written");
    assert_eq!(log.last(&HEATS, 9).expect("listed").len(), 1);
    assert_eq!(log.last(&MOULDS, 9).expect("listed").len(), 2);
}

/// A JPEG with an EXIF block: the time, upside down, and the place it was taken at.
fn with_place() -> Vec<u8> {
    let picture = RgbImage::from_fn(400, 100, |x, _| Rgb([(x / 2) as u8, 90, 20]));
    let mut jpeg = Cursor::new(Vec::new());
    picture
        .write_to(&mut jpeg, ImageFormat::Jpeg)
        .expect("written");
    let jpeg = jpeg.into_inner();
    let mut tiff: Vec<u8> = b"MM\0\x2A\0\0\0\x08\0\x03".to_vec();
    tiff.extend(b"\x01\x12\0\x03\0\0\0\x01\0\x03\0\0");
    tiff.extend(b"\x01\x32\0\x02\0\0\0\x14\0\0\0\x32");
    tiff.extend(b"\x88\x25\0\x04\0\0\0\x01\0\0\0\x46\0\0\0\0");
    assert_eq!(tiff.len(), 0x32);
    tiff.extend(b"2026:05:03 14:20:31\0");
    assert_eq!(tiff.len(), 0x46);
    tiff.extend(b"\0\x01\0\x01\0\x02\0\0\0\x02N\0\0\0\0\0\0\0");
    let mut whole = jpeg[..2].to_vec();
    let length = u16::try_from(tiff.len() + 8).expect("short");
    whole.extend([0xFF, 0xE1]);
    whole.extend(length.to_be_bytes());
    whole.extend(b"Exif\0\0");
    whole.extend(&tiff);
    whole.extend(&jpeg[2..]);
    whole
}

#[test]
fn a_photo_keeps_its_time_and_loses_its_place() {
    let bytes = with_place();
    let before = Reader::new()
        .read_from_container(&mut Cursor::new(&bytes))
        .expect("read");
    assert!(
        before.get_field(Tag::GPSLatitudeRef, In::PRIMARY).is_some(),
        "the test bites"
    );
    let photo = kept(&bytes).expect("taken");
    assert_eq!(photo.taken.as_deref(), Some("2026-05-03T14:20:31"));
    assert_eq!(photo.sides, Some([400, 100]));
    let after = Reader::new()
        .read_from_container(&mut Cursor::new(&photo.bytes))
        .expect("read");
    assert_eq!(after.fields().count(), 1, "the way up and nothing else");
    let up = after
        .get_field(Tag::Orientation, In::PRIMARY)
        .expect("kept");
    assert_eq!(up.value.get_uint(0), Some(3));
    let pixels = |bytes: &[u8]| image::load_from_memory(bytes).expect("a picture").to_rgb8();
    assert_eq!(pixels(&bytes), pixels(&photo.bytes), "no pixel is touched");
    let small = pixels(&photo.small.expect("made"));
    assert_eq!(small.dimensions(), (320, 80));
    assert!(
        small.get_pixel(5, 40)[0] > small.get_pixel(315, 40)[0] + 100,
        "turned"
    );
}

#[test]
fn a_photo_lies_beside_the_log_under_its_hash() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut log = Log::open(&folder.path().join("log.sqlite")).expect("opens");
    let heat = log
        .add(&[shoplog::entry::Fresh::of(&HEATS)])
        .expect("written")
        .remove(0);
    let picture = folder.path().join("picture.jpg");
    fs::write(&picture, with_place()).expect("written");
    let added = keep_photo(&mut log, (&HEATS, &heat.id), &picture, Some("dross")).expect("kept");
    let photo = log
        .entry(&shoplog::table::around::PHOTOS, &added.id)
        .expect("there");
    let hash = photo.values["sha256"].text().expect("a hash");
    assert!(place_of(&log, hash).is_some_and(|place| place.is_file()));
    for (name, bytes) in [
        ("odd.jpg", &b"GIF89a"[..]),
        ("cut.jpg", &with_place()[..90]),
    ] {
        let path = folder.path().join(name);
        fs::write(&path, bytes).expect("written");
        let error = keep_photo(&mut log, (&HEATS, &heat.id), &path, None).expect_err("refused");
        assert!(error.to_string().contains(name), "{error}");
    }
}

/// Neither is decoded here. The place stands in both files twice, and in what is kept nowhere.
#[test]
fn photos_of_phones_are_kept_without_their_place_and_without_a_small_picture() {
    let pictures: [(&str, &[u8]); 2] = [
        ("heic", include_bytes!("pictures/placed.heic")),
        ("webp", include_bytes!("pictures/placed.webp")),
    ];
    for (ending, bytes) in pictures {
        let has =
            |bytes: &[u8], wanted: &[u8]| bytes.windows(wanted.len()).any(|one| one == wanted);
        assert!(has(bytes, b"GPSLatitude"), "{ending}");
        let photo = kept(bytes).expect("kept");
        assert_eq!((photo.ending, photo.small), (ending, None));
        assert_eq!(photo.taken.as_deref(), Some("2026-05-03T14:20:31"));
        let sides = (ending == "webp").then_some([64, 48]);
        assert_eq!(photo.sides, sides, "a HEIC may be cropped as it is shown");
        assert!(!has(&photo.bytes, b"GPSLatitude"), "{ending}");
        let read = exif::Reader::new().read_from_container(&mut Cursor::new(&photo.bytes));
        let place = read.ok().is_some_and(|notes| {
            notes
                .fields()
                .any(|field| field.tag.context() == exif::Context::Gps)
        });
        assert!(!place, "{ending}");
        assert!(kept(&bytes[..bytes.len() / 2]).is_err() || ending == "heic");
    }
    assert!(
        kept(b"GIF89a")
            .expect_err("refused")
            .contains("save it as JPEG")
    );
}
