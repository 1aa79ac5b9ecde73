//! Cut templates of the running system, in full size: to lay on wood, card or tin and cut round.

use std::collections::BTreeMap;

use job::plan::Plan;
use job::words::said::Said;
use serde::Serialize;

use crate::SheetError;
use crate::data::Paper;
use crate::joint_page::joint_page;
use crate::pen::{Anchor, FIRM, Pen, THIN};
use crate::typeset::{self, Picture, TEMPLATES_PAGE};

/// Room for the pieces on a page, mm; both papers have it between margins, head and check bar.
const ROOM_MM: [f64; 2] = [184.0, 205.0];

/// Room for half a pen at the edge, mm.
const MARGIN_MM: f64 = 0.5;

/// White between two pieces, mm: a knife passes.
const APART_MM: f64 = 9.0;

/// Height of the words under a piece, mm.
const WORDS_MM: f64 = 11.0;

/// A gate is cut wide and thin, so that it freezes before the casting and breaks off: three times
/// as wide as high. Common practice, no source.
const GATE_WIDTH_TO_HEIGHT: f64 = 3.0;

/// One piece in full size.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Piece {
    /// What it is.
    pub(crate) name: Said,
    /// Its sizes in words.
    pub(crate) sizes: Said,
    /// Its outline, mm.
    pub(crate) shape: Shape,
}

/// The outline of a piece, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Shape {
    /// A peg seen from the side, lying: its ends and its length.
    Peg {
        /// Width at the thick end.
        thick: f64,
        /// Width at the thin end.
        thin: f64,
        /// Length.
        long: f64,
    },
    /// A round piece seen from above.
    Round(f64),
    /// The cross-section of a channel: width and height.
    Channel(f64, f64),
}

#[derive(Serialize)]
struct Given {
    paper: &'static str,
    lang: &'static str,
    words: BTreeMap<&'static str, String>,
    title: String,
    foot: String,
    pages: Vec<String>,
    joint: Option<String>,
    larger: Option<String>,
}

/// The template's own words.
const WORDS: [&str; 8] = [
    "check-bar-lower",
    "check-bar-upper",
    "cut-picture",
    "cut-title",
    "cut-told",
    "joint-picture",
    "joint-title",
    "joint-told",
];

/// The templates of a plan as a PDF, one page unless the pieces are many.
///
/// # Errors
///
/// Where the typesetter fails.
pub fn cut_templates(plan: &Plan, paper: Paper) -> Result<Vec<u8>, SheetError> {
    let (fits, larger): (Vec<Piece>, Vec<Piece>) = pieces(plan)
        .into_iter()
        .partition(|piece| fits_on_paper(piece.shape));
    let pages = drawn(&fits, plan);
    let joint = joint_page(plan);
    let names: Vec<&'static str> = typeset::PAGE_NAMES.into_iter().take(pages.len()).collect();
    let title = Said::new("paper-title")
        .with("paper", Said::new("cut-title"))
        .with("job", plan.name.as_str());
    let unread = plan.words.word("unread");
    let mut given = serde_json::to_value(Given {
        paper: paper.name(),
        lang: plan.words.code(),
        words: crate::words::of_template(plan.words, &WORDS),
        title: plan.words.say(&title),
        foot: format!("oddside {}. {unread}", env!("CARGO_PKG_VERSION")),
        pages: names.iter().map(|name| (*name).to_owned()).collect(),
        joint: joint.is_some().then(|| typeset::JOINT.to_owned()),
        larger: told(&larger).map(|larger| plan.words.say(&larger)),
    })?;
    crate::words::clean(&mut given);
    let pictures = names.into_iter().zip(pages);
    let pictures = pictures.chain(joint.map(|svg| (typeset::JOINT, svg)));
    let pictures = pictures.map(|(name, svg)| Picture { name, svg }).collect();
    let document = typeset::lay_out(TEMPLATES_PAGE, &given, pictures)?;
    typeset::write(&document, "cut templates")
}

/// The pieces that have to be drawn by hand.
fn told(larger: &[Piece]) -> Option<Said> {
    let each = larger.iter().map(|piece| {
        Said::new("paper-title")
            .with("paper", piece.name.clone())
            .with("job", piece.sizes.clone())
    });
    let each: Vec<Said> = each.collect();
    (!each.is_empty()).then(|| Said::new("cut-larger").with("pieces", each))
}

/// Every piece of the running system that the plan has a figure for.
pub(crate) fn pieces(plan: &Plan) -> Vec<Piece> {
    let likely = |name: &str| plan.figure(name).map(|figure| figure.amount.values()[1]);
    let mut pieces = Vec::new();
    let sprue = likely("sprue foot diameter").zip(likely("sprue top diameter"));
    if let Some((foot, top)) = sprue {
        let long = plan.drawing.cope_mm;
        pieces.push(piece(
            "cut-sprue-peg",
            Shape::Peg {
                thick: top,
                thin: foot,
                long,
            },
        ));
        pieces.push(piece("cut-sprue-foot", Shape::Round(foot)));
        pieces.push(piece("cut-sprue-top", Shape::Round(top)));
    }
    if let Some(area) = likely("runner area") {
        pieces.push(piece(
            "cut-runner",
            Shape::Channel(area.sqrt(), area.sqrt()),
        ));
    }
    if let Some(area) = likely("gate area") {
        let each = area / plan.count as f64;
        let high = (each / GATE_WIDTH_TO_HEIGHT).sqrt();
        let shape = Shape::Channel(high * GATE_WIDTH_TO_HEIGHT, high);
        pieces.push(Piece {
            name: Said::new("cut-gates").with("count", plan.count),
            sizes: sizes(shape),
            shape,
        });
    }
    if let Some(diameter) = likely("feeder diameter") {
        pieces.push(piece("cut-feeder", Shape::Round(diameter)));
    }
    pieces
}

fn piece(name: &'static str, shape: Shape) -> Piece {
    Piece {
        name: Said::new(name),
        sizes: sizes(shape),
        shape,
    }
}

/// Millimetres first, inches beside them.
fn sizes(shape: Shape) -> Said {
    let both = |mm: f64| format!("{:.1} mm ({:.2} in)", mm, mm / 25.4);
    match shape {
        Shape::Peg { thick, thin, long } => Said::new("cut-peg-sizes")
            .with("thick", both(thick))
            .with("thin", both(thin))
            .with("long", both(long)),
        Shape::Round(diameter) => Said::new("cut-round-sizes").with("across", both(diameter)),
        Shape::Channel(wide, high) => Said::new("cut-channel-sizes")
            .with("wide", both(wide))
            .with("high", both(high)),
    }
}

fn extent(shape: Shape) -> [f64; 2] {
    match shape {
        Shape::Peg { thick, thin, long } => [long, thick.max(thin)],
        Shape::Round(diameter) => [diameter, diameter],
        Shape::Channel(wide, high) => [wide, high],
    }
}

fn fits_on_paper(shape: Shape) -> bool {
    let [wide, high] = extent(shape);
    wide + 2.0 * MARGIN_MM <= ROOM_MM[0] && high + WORDS_MM + APART_MM <= ROOM_MM[1]
}

/// The pieces on as many pages as they take, two beside each other where both are narrow.
fn drawn(pieces: &[Piece], plan: &Plan) -> Vec<String> {
    let mut pages = Vec::new();
    let mut pen = Pen::new();
    let mut down = MARGIN_MM;
    for row in rows(pieces) {
        let tallest = row.iter().map(|piece| extent(piece.shape)[1]);
        let high = tallest.fold(0.0, f64::max) + WORDS_MM + APART_MM;
        if down > MARGIN_MM && down + high > ROOM_MM[1] {
            pages.push(std::mem::replace(&mut pen, Pen::new()).finish(ROOM_MM));
            down = MARGIN_MM;
        }
        for (column, piece) in row.iter().enumerate() {
            let right = MARGIN_MM + column as f64 * ROOM_MM[0] / 2.0;
            draw(&mut pen, piece, [right, down], plan);
        }
        down += high;
    }
    pages.push(pen.finish(ROOM_MM));
    pages.truncate(typeset::PAGE_NAMES.len());
    pages
}

/// Two narrow pieces that follow each other share a row.
fn rows(pieces: &[Piece]) -> Vec<Vec<&Piece>> {
    let narrow = |piece: &Piece| {
        extent(piece.shape)[0] < ROOM_MM[0] / 2.0 - APART_MM
            && !matches!(piece.shape, Shape::Peg { .. })
    };
    let mut rows: Vec<Vec<&Piece>> = Vec::new();
    for piece in pieces {
        match rows.last_mut() {
            Some(row) if row.len() == 1 && narrow(row[0]) && narrow(piece) => row.push(piece),
            _ => rows.push(vec![piece]),
        }
    }
    rows
}

fn draw(pen: &mut Pen, piece: &Piece, [right, down]: [f64; 2], plan: &Plan) {
    let [wide, high] = extent(piece.shape);
    match piece.shape {
        Shape::Peg { thick, thin, long } => {
            let middle = down + high / 2.0;
            let outline = vec![
                [right, middle - thick / 2.0],
                [right + long, middle - thin / 2.0],
                [right + long, middle + thin / 2.0],
                [right, middle + thick / 2.0],
            ];
            pen.metal(&[outline]);
            pen.chain(&[[right, middle], [right + long, middle]]);
        }
        Shape::Round(diameter) => {
            let middle = [right + diameter / 2.0, down + diameter / 2.0];
            pen.circle(middle, diameter / 2.0);
            cross(pen, middle);
        }
        Shape::Channel(..) => pen.rectangle([right, down], [right + wide, down + high], FIRM),
    }
    let below = down + high + 5.0;
    pen.word(
        [right, below],
        Anchor::Start,
        &plan.words.say(&piece.name),
        true,
    );
    let sizes = plan.words.say(&piece.sizes);
    pen.word([right, below + 4.6], Anchor::Start, &sizes, false);
}

/// The centre, for the leg of a compass.
fn cross(pen: &mut Pen, [x, y]: [f64; 2]) {
    pen.line([x - 3.0, y], [x + 3.0, y], THIN);
    pen.line([x, y - 3.0], [x, y + 3.0], THIN);
}
