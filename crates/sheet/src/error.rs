//! Why a sheet could not be made, and what to do about it.

use thiserror::Error;

/// Why there is no sheet.
#[derive(Debug, Error)]
pub enum SheetError {
    /// Red lines, stops and figures alone fill more than one page.
    #[error(
        "the sheet does not fit on one side: it still fills {pages} pages in 9 pt without notes; \
         shorten the red lines, the stops or the rows"
    )]
    TooMuch {
        /// Pages needed at the tightest setting.
        pages: usize,
    },
    /// The drawing has no size that can be drawn.
    #[error(
        "the drawing cannot be drawn: {what} is {value} mm; give a length above 0 and below 10 m"
    )]
    Drawing {
        /// The length that is wrong.
        what: &'static str,
        /// Its value, mm.
        value: f64,
    },
    /// The words and figures could not be handed to the template.
    #[error("the sheet's data cannot be written down: {0}")]
    Data(#[from] serde_json::Error),
    /// The template did not accept the data.
    #[error("the sheet could not be typeset: {message}")]
    Typesetting {
        /// What the typesetter says.
        message: String,
    },
    /// The typeset page could not be written as PDF.
    #[error("the sheet could not be written as PDF: {message}")]
    Writing {
        /// What the PDF writer says.
        message: String,
    },
}
