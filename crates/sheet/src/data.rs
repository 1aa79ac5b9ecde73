//! What a pour sheet says: plain strings, already worked out and already in the founder's units.
//!
//! Nothing here is calculated or converted. A figure that is not known is left out (`None`, an
//! empty list): its row does not appear, and nothing stands in its place.

use job::words::Language;
use serde::Serialize;

use crate::drawings::Drawing;

/// Everything on one pour sheet, in the order in which it is read.
#[derive(Clone, Debug, Serialize)]
pub struct PourSheet {
    /// The language of the sheet's own words.
    #[serde(skip)]
    pub language: Language,
    /// Name of the job; the largest words on the page.
    pub title: String,
    /// Day of the pour as it shall be printed; `None` prints a line to fill by hand.
    pub date: Option<String>,
    /// Program and version that worked the sheet out, as "oddside 0.1.0".
    pub made_by: String,
    /// Short code that finds the job again.
    pub job_code: String,
    /// What must be true before metal is melted; each gets an empty square to tick.
    pub red_lines: Vec<String>,
    /// Reasons why the job must not be poured as it stands, printed directly under the title.
    pub stops: Vec<String>,
    /// Tables of figures in the order of the day.
    pub blocks: Vec<Block>,
    /// Plan and section of the mould.
    pub drawing: Option<Drawing>,
    /// A sentence that says what the drawing shows; the sheet adds the scale it has chosen.
    pub drawing_caption: String,
    /// Remarks in any order; the weightiest that fit are printed and the rest are counted.
    pub remarks: Vec<PaperRemark>,
    /// Labels of the boxes to fill by hand, usually six.
    pub blanks: Vec<String>,
    /// Short names of the works the figures rest on.
    pub sources: Vec<String>,
    /// What the small code in the foot says to a phone; empty prints none.
    #[serde(skip)]
    pub code_text: String,
    /// One line on what the sheet cannot promise; empty prints nothing.
    pub limits: String,
}

/// One table: a heading and the figures under it.
///
/// A block with any row read while holding something is set large, across the lower half of the
/// sheet; all other blocks share two columns above the drawing.
#[derive(Clone, Debug, Serialize)]
pub struct Block {
    /// Message of its heading, by which other doors know the block.
    #[serde(skip)]
    pub id: &'static str,
    /// Heading, as "Sand and flask".
    pub heading: String,
    /// Rows from top to bottom.
    pub rows: Vec<Row>,
}

/// One figure: what it is, how much, between which bounds, in the other units.
#[derive(Clone, Debug, Serialize)]
pub struct Row {
    /// What the figure is.
    pub name: String,
    /// The likely value with its unit, set bold.
    pub value: String,
    /// The range it may lie in, with its unit.
    pub band: Option<String>,
    /// The value in the other system of units.
    pub other: Option<String>,
    /// A sentence under the row; the first thing left out when the page is short of room.
    pub note: Option<String>,
    /// Whether the row is read with something in the hands: 14 pt instead of 10 pt.
    pub read_while_holding: bool,
    /// The figure or the choice of the plan that it shows, where it shows one.
    #[serde(skip)]
    pub behind: Option<&'static str>,
}

/// One remark about the job, with what to do about it.
#[derive(Clone, Debug, Serialize)]
pub struct PaperRemark {
    /// How much it weighs.
    pub level: RemarkLevel,
    /// What was found.
    pub words: String,
    /// What to do about it; empty prints nothing.
    pub advice: String,
}

/// How much a remark weighs, heaviest first.
#[derive(Clone, Copy, Debug, Eq, Ord, PartialEq, PartialOrd, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum RemarkLevel {
    /// The job must not be poured before this is answered; never left off the sheet.
    Stop,
    /// The casting is likely to suffer.
    Caution,
    /// Worth knowing.
    Note,
}

/// The paper the sheet is printed on, one side.
#[derive(Clone, Copy, Debug, Eq, PartialEq)]
pub enum Paper {
    /// 210 × 297 mm.
    A4,
    /// 8½ × 11 in, 215.9 × 279.4 mm.
    Letter,
}

impl Paper {
    /// The paper's name as the template knows it.
    pub(crate) fn name(self) -> &'static str {
        match self {
            Paper::A4 => "a4",
            Paper::Letter => "us-letter",
        }
    }
}
