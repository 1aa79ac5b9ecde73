//! What of the files of the sand bench, `sand.toml` and `heap.toml`, can be changed on a sheet.
//!
//! The keys of a block belong together: a handful weighed wet is nothing before it is weighed dry.

use crate::typed_key::{KeyKind, TypedKey, key};

/// Keys of a sand as it was tested, by test.
pub const SAND_KEYS: [TypedKey; 14] = [
    key("name", "bench-given-name", SAND).like("river sand"),
    key("shape", "bench-given-shape", SAND).typed(KeyKind::OneOf(&[
        "rounded",
        "sub-angular",
        "angular",
        "compound",
    ])),
    key("moisture.wet", "bench-given-wet", MOISTURE).like("200.0 g"),
    key("moisture.dry", "bench-given-dry", MOISTURE).like("189.6 g"),
    key("moisture.step", "bench-given-step", MOISTURE).like("0.1 g"),
    key("jar.fine", "bench-given-fine", JAR).like("18 mm"),
    key("jar.all", "bench-given-all", JAR).like("120 mm"),
    key("wash.dried", "bench-given-dried", WASH).like("50.0 g"),
    key("wash.washed", "bench-given-washed", WASH).like("44.6 g"),
    key("burning.dry", "bench-given-dried", BURNING).like("50.0 g"),
    key("burning.burnt", "bench-given-burnt", BURNING).like("48.55 g"),
    key("tin.volume", "bench-given-volume", TIN).like("400 ml"),
    key("tin.holds", "bench-given-holds", TIN).like("640 g"),
    key("tin.moisture", "bench-given-moisture", TIN).like("4.5 % of wet mass"),
];

/// Keys of a heap as its book begins.
pub const HEAP_KEYS: [TypedKey; 8] = [
    key("name", "bench-given-name", HEAP).like("green heap"),
    key("mass", "key-heap-mass", HEAP).like("90 kg"),
    key("moisture", "key-heap-moisture", HEAP).like("4.5 % of wet mass"),
    key("clay", "bench-given-clay", HEAP).typed(KeyKind::OneOf(&[
        "sodium-bentonite",
        "calcium-bentonite",
        "other",
    ])),
    key("holds.live_clay", "bench-holds-live-clay", HEAP).like("6 %"),
    key("holds.dead_clay", "bench-holds-dead-clay", HEAP).like("1 %"),
    key("holds.organic", "bench-holds-organic", HEAP).like("2 %"),
    key("holds.fines", "bench-holds-fines", HEAP).like("0.5 %"),
];

const SAND: Option<&str> = Some("bench-test-sand");
const MOISTURE: Option<&str> = Some("bench-test-moisture");
const JAR: Option<&str> = Some("bench-test-jar");
const WASH: Option<&str> = Some("bench-test-wash");
const BURNING: Option<&str> = Some("bench-test-burning");
const TIN: Option<&str> = Some("bench-test-tin");
const HEAP: Option<&str> = Some("bench-test-heap");
