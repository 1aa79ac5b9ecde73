//! Making one page of it: what is made smaller or left out, and in which order.
//!
//! The steps form ladders on which every rung needs no more room than the one above. The first
//! rung that gives one page is found by halving, so a full sheet costs a handful of layouts.

use job::words::said::Said;
use serde_json::Value;
use typst_layout::PagedDocument;

use crate::data::{Paper, PaperRemark, PourSheet, RemarkLevel};
use crate::drawings;
use crate::typeset::{CODE, DRAWING, Given, GivenDrawing, Picture, SHEET, lay_out};
use crate::{SheetError, words};

/// Room for the drawing when the page is nearly empty, then ever less, mm of height.
///
/// Below 52 mm a flask of 200 × 160 mm falls from 1:5 to 1:10 and its casting to a thumbnail.
const DRAWING_HEIGHTS_MM: [f64; 4] = [96.0, 78.0, 62.0, 53.0];
/// Width both papers have between the margins, mm.
const DRAWING_WIDTH_MM: f64 = 184.0;
/// Remarks kept while there are notes to leave out.
const REMARKS_KEPT: usize = 2;

/// The template's own words.
const WORDS: [&str; 11] = [
    "check-bar-lower",
    "check-bar-upper",
    "date",
    "level-caution",
    "level-note",
    "level-stop",
    "sheet-code",
    "sheet-red-lines",
    "sheet-sources",
    "sheet-stop",
    "sheet-title",
];

/// One way to set the sheet.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Rung {
    drawing_mm: f64,
    remarks: usize,
    notes: bool,
    code: bool,
    text_pt: f64,
}

/// The sheet on one page, as roomy as it can be set.
pub(crate) fn one_page(page: &PourSheet, paper: Paper) -> Result<PagedDocument, SheetError> {
    let weighed = weighed(&page.remarks);
    let set = |rung: Rung| set_at(page, &weighed, paper, rung);
    let mut pages = 0;
    for ladder in ladders(&weighed) {
        let lowest = set(ladder[ladder.len() - 1])?;
        pages = lowest.pages().len();
        if pages <= 1 {
            return roomiest(&ladder, lowest, set);
        }
    }
    Err(SheetError::TooMuch { pages })
}

/// The first rung that gives one page; `lowest`, the last one, is known to.
fn roomiest(
    ladder: &[Rung],
    lowest: PagedDocument,
    set: impl Fn(Rung) -> Result<PagedDocument, SheetError>,
) -> Result<PagedDocument, SheetError> {
    let mut best = lowest;
    let (mut from, mut to) = (0, ladder.len() - 1);
    // Rungs before `from` are too long; the rung `to`, kept in `best`, fits.
    while from < to {
        let middle = from.midpoint(to);
        let tried = set(ladder[middle])?;
        if tried.pages().len() > 1 {
            from = middle + 1;
        } else {
            to = middle;
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

/// Every way to set the sheet: with notes, without them, then without the small code and in 9 pt;
/// each ladder has its
/// roomiest rung first.
///
/// With notes at least [`REMARKS_KEPT`] remarks stay, for a caution outweighs a note under a row.
fn ladders(weighed: &[PaperRemark]) -> [Vec<Rung>; 3] {
    let all = weighed.len();
    let stops = weighed
        .iter()
        .filter(|remark| remark.level == RemarkLevel::Stop)
        .count();
    let kept = REMARKS_KEPT.min(all).max(stops);
    let [large, middle, small, least] = DRAWING_HEIGHTS_MM;
    let rung = |drawing_mm, remarks| Rung {
        drawing_mm,
        remarks,
        notes: true,
        code: true,
        text_pt: 10.0,
    };
    let mut noted = vec![rung(large, all), rung(middle, all), rung(small, all)];
    noted.extend((kept..=all).rev().map(|remarks| rung(least, remarks)));
    let mut short = vec![rung(small, all)];
    short.extend((stops..=all).rev().map(|remarks| rung(least, remarks)));
    for rung in &mut short {
        rung.notes = false;
    }
    let tight = (stops..=all).rev();
    let tight = tight.map(|remarks| Rung {
        notes: false,
        code: false,
        text_pt: 9.0,
        ..rung(least, remarks)
    });
    [noted, short, tight.collect()]
}

/// Sets the sheet at one rung.
fn set_at(
    page: &PourSheet,
    weighed: &[PaperRemark],
    paper: Paper,
    rung: Rung,
) -> Result<PagedDocument, SheetError> {
    let language = page.language;
    let room_mm = [DRAWING_WIDTH_MM, rung.drawing_mm];
    let picture = match &page.drawing {
        Some(drawing) => Some(drawings::draw(drawing, room_mm, language)?),
        None => None,
    };
    let drawing = picture.as_ref().map(|picture| GivenDrawing {
        scale: language.say(&Said::new("drawing-scale").with("scale", picture.scale.to_string())),
        width_mm: picture.size_mm[0],
        height_mm: picture.size_mm[1],
    });
    let code = match rung.code {
        true => crate::code::squares(&page.code_text),
        false => None,
    };
    let given = Given {
        paper: paper.name(),
        lang: language.code(),
        words: words::of_template(language, &WORDS),
        sheet: said(page, &weighed[..rung.remarks])?,
        text_pt: rung.text_pt,
        notes: rung.notes,
        left_off: left_off(rung.remarks, weighed.len()).map(|said| language.say(&said)),
        drawing,
        code: code.is_some(),
    };
    let drawing = picture.map(|picture| Picture {
        name: DRAWING,
        svg: picture.svg,
    });
    let code = code.map(|svg| Picture { name: CODE, svg });
    lay_out(SHEET, &given, drawing.into_iter().chain(code).collect())
}

/// How many remarks are not printed.
fn left_off(printed: usize, all: usize) -> Option<Said> {
    let id = match printed {
        printed if printed == all => return None,
        0 => "remarks-left-off",
        _ => "remarks-more",
    };
    Some(Said::new(id).with("count", all - printed))
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
