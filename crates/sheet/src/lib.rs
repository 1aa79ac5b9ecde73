//! A Plan on paper: one side of A4 or US Letter to hang beside the sand.
//!
//! The sheet is typeset from plain words and figures ([`PourSheet`]) without disk, network or
//! clock, so the same data give the same bytes. It is always one page: when there is too much to
//! say, the drawing is made smaller, then lighter remarks are counted instead of printed, then
//! the notes under the rows go, then the small code, with the text in 9 pt instead of 10 pt.
//! Red lines, stops
//! and figures are never left out; if they alone do not fit, [`SheetError::TooMuch`] says so.
//!
//! Latin, Greek and Cyrillic letters are carried in the program; a character outside them prints
//! as an empty box.
//!
//! ```
//! use sheet::{Block, Paper, PourSheet, Row};
//!
//! let pour = Block {
//!     id: "block-pour",
//!     heading: "Pour".into(),
//!     rows: vec![Row {
//!         name: "Fill in".into(),
//!         value: "4.0 s".into(),
//!         band: Some("3.4 to 4.6 s".into()),
//!         other: None,
//!         note: Some("One steady stream, cup kept full.".into()),
//!         read_while_holding: true,
//!         behind: Some("fill time"),
//!     }],
//! };
//! let page = PourSheet {
//!     language: job::words::Language::Uk,
//!     title: "Door knob, pair".into(),
//!     date: None,
//!     made_by: "oddside 0.1.0".into(),
//!     job_code: "K7-204".into(),
//!     red_lines: vec!["Ladle and tongs are dry and warm.".into()],
//!     stops: Vec::new(),
//!     blocks: vec![pour],
//!     drawing: None,
//!     drawing_caption: String::new(),
//!     remarks: Vec::new(),
//!     blanks: vec!["Seconds".into(), "What happened".into()],
//!     sources: Vec::new(),
//!     code_text: String::new(),
//!     limits: "A figure on paper does not replace a look into the crucible.".into(),
//! };
//! let bytes = sheet::pdf(&page, Paper::A4)?;
//! assert!(bytes.starts_with(b"%PDF-"));
//! # Ok::<(), sheet::SheetError>(())
//! ```

mod batch_cards;
mod bench_sheet;
mod card;
mod code;
mod cut_templates;
mod data;
mod drawings;
mod error;
mod fit;
mod joint_page;
mod lesson;
mod of_plan;
mod pen;
mod typeset;
mod words;
mod workings;
mod world;

pub use batch_cards::batch_cards;
pub use bench_sheet::bench_sheet;
pub use card::card;
pub use code::squares;
pub use cut_templates::cut_templates;
pub use data::{Block, Paper, PaperRemark, PourSheet, RemarkLevel, Row};
pub use drawings::{
    Drawing, Look, Piece, PlanOnPaper, Scale, Wandering, plan_on_paper, scale_for, svg,
};
pub use error::SheetError;
pub use lesson::{Reader, lesson};
pub use of_plan::page;
pub use workings::workings;

/// How many sheets back the typesetter remembers what it has set.
///
/// With none, a figure changed by the founder sets the whole page anew; with no end, a program
/// that stays open all day grows with each sheet.
const SHEETS_REMEMBERED: usize = 4;

/// The sheet as a PDF of exactly one page, fonts embedded, text selectable and tagged.
///
/// # Errors
///
/// [`SheetError::TooMuch`] when red lines, stops and figures alone fill more than one page, and
/// [`SheetError::Drawing`] when the drawing has no size that can be drawn.
pub fn pdf(page: &PourSheet, paper: Paper) -> Result<Vec<u8>, SheetError> {
    let document = fit::one_page(page, paper)?;
    let written = typeset::write(&document, &format!("pour sheet {}", page.job_code));
    typst::comemo::evict(SHEETS_REMEMBERED);
    written
}
