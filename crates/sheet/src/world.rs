//! The closed world a paper is typeset in: our templates, two fonts, one set of data, its pictures.
//!
//! Every other path is refused and there is no date, so the same data give the same bytes.

use std::sync::LazyLock;

use typst::diag::{FileError, FileResult};
use typst::foundations::{Bytes, Datetime, Duration};
use typst::syntax::{FileId, RootedPath, Source, VirtualPath, VirtualRoot};
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;
use typst::{Library, LibraryExt, World};

use crate::SheetError;
use crate::typeset::{
    BATCH_CARDS, BENCH_SHEET, CARD, LESSON, Picture, SHEET, TEMPLATES_PAGE, WORKINGS,
};

/// Name under which the templates read the words and figures.
const DATA: &str = "data.json";

/// The templates by the names they call each other.
const TEMPLATES: [(&str, &str); 10] = [
    (SHEET, include_str!("../templates/pour-sheet.typ")),
    (CARD, include_str!("../templates/pour-card.typ")),
    (LESSON, include_str!("../templates/lesson.typ")),
    (
        TEMPLATES_PAGE,
        include_str!("../templates/cut-templates.typ"),
    ),
    (WORKINGS, include_str!("../templates/workings.typ")),
    (BATCH_CARDS, include_str!("../templates/batch-cards.typ")),
    (BENCH_SHEET, include_str!("../templates/bench-sheet.typ")),
    ("frames.typ", include_str!("../templates/frames.typ")),
    ("rows.typ", include_str!("../templates/rows.typ")),
    ("foot.typ", include_str!("../templates/foot.typ")),
];

/// Font files carried in the program; their licence stands beside them as `fonts/OFL.txt`.
const FONTS: [&[u8]; 2] = [
    include_bytes!("../fonts/IBMPlexSans-Regular.ttf"),
    include_bytes!("../fonts/IBMPlexSans-Bold.ttf"),
];

/// What never changes between two sheets.
struct Shelf {
    library: LazyHash<Library>,
    book: LazyHash<FontBook>,
    fonts: Vec<Font>,
}

static SHELF: LazyLock<Shelf> = LazyLock::new(|| {
    let fonts: Vec<Font> = FONTS
        .iter()
        .filter_map(|file| Font::new(Bytes::new(*file), 0))
        .collect();
    Shelf {
        library: LazyHash::new(Library::default()),
        book: LazyHash::new(FontBook::from_fonts(&fonts)),
        fonts,
    }
});

/// One page's files, as typst asks for them.
pub(crate) struct Bench {
    main: FileId,
    templates: Vec<Source>,
    /// Data and pictures.
    files: Vec<(FileId, Bytes)>,
}

impl Bench {
    /// Lays out the templates, the data of a page as JSON, and its pictures as SVG.
    pub(crate) fn new(
        main: &'static str,
        data: String,
        pictures: Vec<Picture>,
    ) -> Result<Bench, SheetError> {
        let templates = TEMPLATES
            .iter()
            .map(|(name, text)| Ok(Source::new(file_id(name)?, (*text).to_owned())))
            .collect::<Result<_, SheetError>>()?;
        let mut files = vec![(file_id(DATA)?, Bytes::from_string(data))];
        for picture in pictures {
            files.push((file_id(picture.name)?, Bytes::from_string(picture.svg)));
        }
        Ok(Bench {
            main: file_id(main)?,
            templates,
            files,
        })
    }
}

impl World for Bench {
    fn library(&self) -> &LazyHash<Library> {
        &SHELF.library
    }

    fn book(&self) -> &LazyHash<FontBook> {
        &SHELF.book
    }

    fn main(&self) -> FileId {
        self.main
    }

    fn source(&self, id: FileId) -> FileResult<Source> {
        let found = self.templates.iter().find(|template| template.id() == id);
        found.cloned().ok_or(FileError::AccessDenied)
    }

    fn file(&self, id: FileId) -> FileResult<Bytes> {
        let found = self.files.iter().find(|(name, _)| *name == id);
        found
            .map(|(_, bytes)| bytes.clone())
            .ok_or(FileError::AccessDenied)
    }

    fn font(&self, index: usize) -> Option<Font> {
        SHELF.fonts.get(index).cloned()
    }

    fn today(&self, _: Option<Duration>) -> Option<Datetime> {
        None
    }
}

/// The number of a file name; typst keeps each name for the life of the process, and the names
/// used here are few and fixed.
fn file_id(name: &str) -> Result<FileId, SheetError> {
    let path = VirtualPath::new(name).map_err(|why| SheetError::Typesetting {
        message: format!("{name}: {why}"),
    })?;
    Ok(RootedPath::new(VirtualRoot::Project, path).intern())
}
