//! The small code of the sheet: what matters most at the mould, to be read by a phone without a
//! network.

use fast_qr::convert::svg::SvgBuilder;
use fast_qr::convert::{Builder, Shape};
use fast_qr::{ECL, QRBuilder};

/// More text than this makes squares too small for a dusty print.
const MOST_LETTERS: usize = 420;

/// The code of a text as SVG; nothing where there is no text.
pub fn squares(text: &str) -> Option<String> {
    if text.is_empty() {
        return None;
    }
    let short: String = text.chars().take(MOST_LETTERS).collect();
    let code = QRBuilder::new(short).ecl(ECL::L).build().ok()?;
    let squares = SvgBuilder::default()
        .shape(Shape::Square)
        .margin(2)
        .to_str(&code);
    Some(squares)
}
