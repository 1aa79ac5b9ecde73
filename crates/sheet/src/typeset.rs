//! From words and figures to a typeset document, and from there to PDF.

use std::collections::BTreeMap;

use serde::Serialize;
use serde_json::Value;
use typst::diag::SourceDiagnostic;
use typst::foundations::Smart;
use typst::{World, WorldExt};
use typst_layout::PagedDocument;
use typst_pdf::PdfOptions;

use crate::SheetError;
use crate::world::Bench;

/// What the template reads: the sheet's words and how tightly to set them.
#[derive(Serialize)]
pub(crate) struct Given {
    /// The paper's name.
    pub(crate) paper: &'static str,
    /// Language of the paper, for the typesetter.
    pub(crate) lang: &'static str,
    /// The template's own words.
    pub(crate) words: BTreeMap<&'static str, String>,
    /// The sheet's own fields, cleaned.
    pub(crate) sheet: Value,
    /// Size of the running text, pt.
    pub(crate) text_pt: f64,
    /// Whether notes under rows are printed.
    pub(crate) notes: bool,
    /// How many remarks are left off, in words; nothing where all are printed.
    pub(crate) left_off: Option<String>,
    /// Scale and size of the drawing, when there is one.
    pub(crate) drawing: Option<GivenDrawing>,
    /// Whether the foot has a small code.
    pub(crate) code: bool,
}

/// The drawing as the template places it.
#[derive(Serialize)]
pub(crate) struct GivenDrawing {
    /// The scale in a sentence.
    pub(crate) scale: String,
    /// Width on paper, mm.
    pub(crate) width_mm: f64,
    /// Height on paper, mm.
    pub(crate) height_mm: f64,
}

/// A picture that a template places.
pub(crate) struct Picture {
    /// The name by which the template asks for it.
    pub(crate) name: &'static str,
    /// The picture.
    pub(crate) svg: String,
}

/// Names of the main templates.
pub(crate) const SHEET: &str = "pour-sheet.typ";
pub(crate) const CARD: &str = "pour-card.typ";
pub(crate) const LESSON: &str = "lesson.typ";
pub(crate) const TEMPLATES_PAGE: &str = "cut-templates.typ";
pub(crate) const WORKINGS: &str = "workings.typ";
pub(crate) const BENCH_SHEET: &str = "bench-sheet.typ";
pub(crate) const BATCH_CARDS: &str = "batch-cards.typ";

/// Names of pictures.
pub(crate) const DRAWING: &str = "drawing.svg";
pub(crate) const CODE: &str = "code.svg";
/// Name of the picture of a joint that wanders.
pub(crate) const JOINT: &str = "joint.svg";

/// Name of the section of a freezing.
pub(crate) const SECTION: &str = "section.svg";

/// Names of whole pages of drawing, as many as there may be.
pub(crate) const PAGE_NAMES: [&str; 4] = ["page-1.svg", "page-2.svg", "page-3.svg", "page-4.svg"];

/// Sets a document from the words and figures given; it has as many pages as they take.
pub(crate) fn lay_out(
    main: &'static str,
    given: &impl Serialize,
    pictures: Vec<Picture>,
) -> Result<PagedDocument, SheetError> {
    let bench = Bench::new(main, serde_json::to_string(given)?, pictures)?;
    typst::compile::<PagedDocument>(&bench)
        .output
        .map_err(|faults| SheetError::Typesetting {
            message: told(&bench, &faults),
        })
}

/// Writes the document as PDF with nothing in it but the document: no clock, no machine.
pub(crate) fn write(document: &PagedDocument, name: &str) -> Result<Vec<u8>, SheetError> {
    let options = PdfOptions {
        ident: Smart::Custom(name.to_owned()),
        creator: Smart::Custom(Some("oddside".to_owned())),
        ..PdfOptions::default()
    };
    typst_pdf::pdf(document, &options).map_err(|faults| SheetError::Writing {
        message: faults
            .iter()
            .map(|fault| fault.message.as_str())
            .collect::<Vec<_>>()
            .join("; "),
    })
}

/// The typesetter's complaints in one line.
fn told(bench: &Bench, faults: &[SourceDiagnostic]) -> String {
    faults
        .iter()
        .map(|fault| placed(bench, fault))
        .collect::<Vec<_>>()
        .join("; ")
}

/// One complaint, with the template and line it points at where it points at one.
fn placed(bench: &Bench, fault: &SourceDiagnostic) -> String {
    let place = fault.span.id().zip(bench.range(fault.span));
    let line = place.and_then(|(file, range)| {
        let source = bench.source(file).ok()?;
        let line = source.text().get(..range.start)?.lines().count();
        Some(format!(
            "{} line {line}: ",
            file.vpath().get_without_slash()
        ))
    });
    format!("{}{}", line.unwrap_or_default(), fault.message)
}
