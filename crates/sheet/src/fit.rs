//! Making one page of it: what is made smaller or left out, and in which order.
//!
//! The steps form a ladder on which every rung needs no more room than the one above. The first
//! rung that gives one page is found by halving, so a full sheet costs a handful of layouts.

use serde_json::Value;
use typst_layout::PagedDocument;

use crate::data::{Paper, PaperRemark, PourSheet, RemarkLevel};
use crate::drawings;
use crate::typeset::{Given, GivenDrawing, lay_out};
use crate::{SheetError, words};

/// Room for the drawing when the page is nearly empty, then ever less, mm of height.
///
/// Below 40 mm a flask of common size falls to 1:10 and its casting to a thumbnail.
const DRAWING_HEIGHTS_MM: [f64; 4] = [96.0, 78.0, 62.0, 53.0];
/// Width both papers have between the margins, mm.
const DRAWING_WIDTH_MM: f64 = 184.0;
/// Remarks kept while the drawing still has a choice of size.
const REMARKS_KEPT: usize = 3;

/// One way to set the sheet.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Rung {
    drawing_mm: f64,
    remarks: usize,
    notes: bool,
    text_pt: f64,
}

/// The sheet on one page, as roomy as it can be set.
pub(crate) fn one_page(page: &PourSheet, paper: Paper) -> Result<PagedDocument, SheetError> {
    let weighed = weighed(&page.remarks);
    let rungs = ladder(&weighed);
    let set = |rung: &Rung| set_at(page, &weighed, paper, *rung);
    let (mut low, mut high) = (0, rungs.len() - 1);
    let mut best = set(&rungs[0])?;
    if best.pages().len() <= 1 {
        return Ok(best);
    }
    best = set(&rungs[high])?;
    if best.pages().len() > 1 {
        return Err(SheetError::TooMuch {
            pages: best.pages().len(),
        });
    }
    // From here on the rung `low` is too long and the rung `high`, kept in `best`, fits.
    while high - low > 1 {
        let middle = low.midpoint(high);
        let tried = set(&rungs[middle])?;
        if tried.pages().len() > 1 {
            low = middle;
        } else {
            high = middle;
            best = tried;
        }
    }
    Ok(best)
}

/// Remarks with the heaviest first; equals stay in the order given.
fn weighed(remarks: &[PaperRemark]) -> Vec<PaperRemark> {
    let mut weighed = remarks.to_vec();
    weighed.sort_by_key(|remark| remark.level);
    weighed
}

/// Every way to set the sheet, roomiest first.
fn ladder(weighed: &[PaperRemark]) -> Vec<Rung> {
    let stops = weighed
        .iter()
        .filter(|remark| remark.level == RemarkLevel::Stop)
        .count();
    let kept = REMARKS_KEPT.clamp(stops, weighed.len().max(stops));
    let [large, middle, small, least] = DRAWING_HEIGHTS_MM;
    let rung = |drawing_mm, remarks| Rung {
        drawing_mm,
        remarks,
        notes: true,
        text_pt: 10.0,
    };
    let mut rungs = vec![rung(large, weighed.len()), rung(middle, weighed.len())];
    rungs.extend(
        (kept..=weighed.len())
            .rev()
            .map(|remarks| rung(small, remarks)),
    );
    rungs.extend((stops..=kept).rev().map(|remarks| rung(least, remarks)));
    let short = Rung {
        notes: false,
        ..rung(least, stops)
    };
    rungs.extend([
        short,
        Rung {
            text_pt: 9.0,
            ..short
        },
    ]);
    rungs
}

/// Sets the sheet at one rung.
fn set_at(
    page: &PourSheet,
    weighed: &[PaperRemark],
    paper: Paper,
    rung: Rung,
) -> Result<PagedDocument, SheetError> {
    let room_mm = [DRAWING_WIDTH_MM, rung.drawing_mm];
    let picture = match &page.drawing {
        Some(drawing) => Some(drawings::draw(drawing, room_mm)?),
        None => None,
    };
    let drawing = picture.as_ref().map(|picture| GivenDrawing {
        scale: picture.scale.to_string(),
        width_mm: picture.size_mm[0],
        height_mm: picture.size_mm[1],
    });
    let given = Given {
        paper: paper.name(),
        sheet: said(page, &weighed[..rung.remarks])?,
        text_pt: rung.text_pt,
        notes: rung.notes,
        remarks_left_off: weighed.len() - rung.remarks,
        drawing,
    };
    lay_out(&given, picture.map(|picture| picture.svg))
}

/// The sheet's own words, cleaned, with the remarks that are printed.
fn said(page: &PourSheet, remarks: &[PaperRemark]) -> Result<Value, SheetError> {
    let shown = PourSheet {
        drawing: None,
        remarks: remarks.to_vec(),
        ..page.clone()
    };
    let mut value = serde_json::to_value(&shown)?;
    words::clean(&mut value);
    Ok(value)
}
