//! What stands around a pour: weather, photos, and what was changed in the log.

use crate::column::Holds;
use crate::table::{Table, may, wanted};

/// The weather.
pub const WEATHER: Table = Table {
    name: "weather",
    one: "weather",
    says: "the weather at a time",
    columns: &[
        wanted("at", Holds::Time, "when"),
        may("air", Holds::Temperature, "of the air"),
        wanted("humidity", Holds::Percent, "relative, of the air"),
        may("rain", Holds::Flag, "rain on heap or mould"),
        may(
            "wind",
            Holds::Word(&["still", "breeze", "wind"]),
            "how it blew",
        ),
        may("note", Holds::Text, "anything else"),
    ],
};

/// Photos; the pictures lie beside the log, named by what they hold.
pub const PHOTOS: Table = Table {
    name: "photos",
    one: "photo",
    says: "a photo, whose picture lies in log-photos under its hash",
    columns: &[
        wanted("of_table", Holds::Text, "the table of what it shows"),
        wanted("of", Holds::Text, "the id of what it shows"),
        wanted("sha256", Holds::Text, "hash of the picture as it is kept"),
        may("taken", Holds::Time, "when it was taken, by the camera"),
        may("wide", Holds::Whole, "pixels across"),
        may("high", Holds::Whole, "pixels upright"),
        may("note", Holds::Text, "what it shows"),
    ],
};

/// Plain files of the sand bench that moved in, whole.
pub const FILES: Table = Table {
    name: "files",
    one: "file",
    says: "a plain file of the sand bench as it stood when it moved in, whole",
    columns: &[
        wanted(
            "name",
            Holds::Text,
            "its name, with the folder it lay in if it was one below",
        ),
        wanted("text", Holds::Text, "all that stands in it"),
    ],
};

/// What was changed in the log after it was written.
pub const CHANGES: Table = Table {
    name: "changes",
    one: "change",
    says: "a value that was changed after it was written",
    columns: &[
        wanted("of_table", Holds::Text, "the table"),
        wanted("of", Holds::Text, "the id of the entry"),
        wanted("what", Holds::Text, "the column"),
        may(
            "was",
            Holds::Text,
            "what stood there; nothing where it was empty",
        ),
        may("became", Holds::Text, "what stands there since"),
    ],
};
