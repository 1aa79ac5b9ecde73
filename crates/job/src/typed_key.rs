//! What of a job's file, and of the shop's, can be changed on a sheet, and where it stands there.

use serde::Serialize;

/// A key of `job.toml` that is changed one at a time.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct TypedKey {
    /// Its path in the file: "metal.alloy".
    pub path: &'static str,
    /// Message with what it is called.
    #[serde(skip)]
    pub label: &'static str,
    /// The block of the sheet in which it stands, by the message of its heading; none for the head
    /// of the sheet.
    pub block: Option<&'static str>,
    /// The figure or choice of the plan that it sets by itself, where there is one.
    pub sets: Option<&'static str>,
    /// What is typed.
    pub kind: KeyKind,
    /// How it is typed, where that needs saying.
    pub example: Option<&'static str>,
    /// What is taken where nothing stands there, as it would be typed; none where it is worked out.
    pub otherwise: Option<&'static str>,
}

/// What is typed for a key.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case", tag = "is", content = "of")]
pub enum KeyKind {
    /// Words, or a figure with its unit.
    Text,
    /// A whole number.
    Count,
    /// Yes or no.
    Yes,
    /// One of these words of the file; messages name them: "said-" and the word.
    OneOf(&'static [&'static str]),
    /// One of these signs, the same in every language.
    Signs(&'static [&'static str]),
    /// An alloy of the table.
    Alloy,
    /// A flask of the shop, by name.
    Flask,
    /// A place on the joint: along the flask and across it.
    Place,
    /// Several such places, or sections by name.
    Places,
}

/// A key under which words or a figure are typed.
pub const fn key(path: &'static str, label: &'static str, block: Option<&'static str>) -> TypedKey {
    TypedKey {
        path,
        label,
        block,
        sets: None,
        kind: KeyKind::Text,
        example: None,
        otherwise: None,
    }
}

impl TypedKey {
    /// The same, of another kind.
    pub const fn typed(self, kind: KeyKind) -> TypedKey {
        TypedKey { kind, ..self }
    }

    /// The same, with how it is typed.
    pub const fn like(self, example: &'static str) -> TypedKey {
        TypedKey {
            example: Some(example),
            ..self
        }
    }

    /// The same, with what is taken where nothing stands there.
    pub const fn otherwise(self, otherwise: &'static str) -> TypedKey {
        TypedKey {
            otherwise: Some(otherwise),
            ..self
        }
    }

    /// The same, with the figure or choice that it sets by itself.
    pub const fn sets(self, figure: &'static str) -> TypedKey {
        TypedKey {
            sets: Some(figure),
            ..self
        }
    }
}

/// Every key that is changed on the sheet, in the order of the day.
pub const TYPED_KEYS: [TypedKey; 21] = [
    key("name", "key-name", None),
    key("date", "key-date", None).like("12 May 2026"),
    key("metal.alloy", "key-alloy", METAL).typed(KeyKind::Alloy),
    key("part.count", "key-count", METAL)
        .typed(KeyKind::Count)
        .otherwise("1"),
    key("part.serves", "key-serves", METAL).typed(KeyKind::OneOf(&[
        "ornament", "machine", "food", "pressure", "lifting", "brake",
    ])),
    key("melt.form", "key-form", METAL)
        .typed(KeyKind::OneOf(&["ingot", "heavy", "thin", "swarf", "cans"])),
    key("melt.loss", "key-loss", METAL).like("5 % of charge"),
    key("melt.pig", "key-pig", METAL).like("10 % of poured"),
    key("mould.flask", "key-flask", SAND)
        .typed(KeyKind::Flask)
        .sets("flask"),
    key("part.unit", "key-unit", PATTERN).typed(KeyKind::Signs(&["mm", "cm", "m", "in", "um"])),
    key("part.up", "key-up", PATTERN).typed(KeyKind::Signs(&["+x", "-x", "+y", "-y", "+z", "-z"])),
    key("part.from", "key-from", PATTERN).typed(KeyKind::OneOf(&["part", "worn original"])),
    key("metal.contraction", "key-contraction", PATTERN)
        .like("1.3 %")
        .sets("contraction"),
    key("part.machined", "key-machined", PATTERN)
        .typed(KeyKind::Yes)
        .otherwise("no"),
    key("part.rapped", "key-rapped", PATTERN)
        .typed(KeyKind::Yes)
        .otherwise("no"),
    key("part.printed", "key-printed", PATTERN).like("0.2 mm"),
    key("mould.joint", "key-joint", MOULD).like("18 mm"),
    key("mould.place.sprue", "key-sprue", MOULD)
        .typed(KeyKind::Place)
        .like("250, 100"),
    key("mould.place.gates", "key-gates", MOULD)
        .typed(KeyKind::Places)
        .like("180, 100"),
    key("mould.place.feeders", "key-feeders", MOULD)
        .typed(KeyKind::Places)
        .like("heaviest"),
    key("mould.pour_height", "key-pour-height", WEIGHTS).like("105 mm"),
];

/// Every key of the shop's file that is changed on a sheet.
pub const SHOP_KEYS: [TypedKey; 6] = [
    key("units", "key-units", SETTINGS)
        .typed(KeyKind::OneOf(&["metric", "inch"]))
        .otherwise("metric"),
    key("words", "key-words", SETTINGS)
        .typed(KeyKind::OneOf(&["uk", "us", "fr", "es"]))
        .otherwise("uk"),
    key("furnace.kind", "key-furnace", FURNACE).typed(KeyKind::OneOf(&[
        "fuel-crucible",
        "electric-crucible",
        "induction",
        "cupola",
    ])),
    key("heap.mass", "key-heap-mass", HEAP).like("90 kg"),
    key("heap.bond", "key-heap-bond", HEAP).typed(KeyKind::OneOf(&["bentonite", "natural", "oil"])),
    key("heap.moisture", "key-heap-moisture", HEAP).like("4.1 % of wet mass"),
];

const SETTINGS: Option<&str> = Some("page-settings");
const FURNACE: Option<&str> = Some("page-furnace");
const HEAP: Option<&str> = Some("page-heap");
const METAL: Option<&str> = Some("block-metal");
const SAND: Option<&str> = Some("block-sand");
const PATTERN: Option<&str> = Some("block-pattern");
const MOULD: Option<&str> = Some("block-mould");
const WEIGHTS: Option<&str> = Some("block-weights");

/// The key of a path in the shop's file.
pub fn shop_key(path: &str) -> Option<&'static TypedKey> {
    SHOP_KEYS.iter().find(|key| key.path == path)
}

/// The key of a path.
pub fn typed_key(path: &str) -> Option<&'static TypedKey> {
    TYPED_KEYS.iter().find(|key| key.path == path)
}
