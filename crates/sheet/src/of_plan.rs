//! A Plan turned into the words of a pour sheet, in the order of the day.

use job::amount::Amount;
use job::fingerprint::mixed;
use job::plan::{DrawnPiece, Figure, PieceKind, Plan};
use job::plan_file::PlanFile;
use job::remark::Level;
use job::solved::with_opening;
use job::words::Language;
use job::words::said::Said;
use measure::band::Band;
use measure::text::shown::Rounding;

use crate::data::{Block, PaperRemark, PourSheet, RemarkLevel, Row};
use crate::drawings::{Drawing, Look, Piece, Wandering};

/// The pour sheet of a plan, in its language.
pub fn page(plan: &Plan) -> PourSheet {
    let words = plan.words;
    PourSheet {
        language: words,
        title: plan.name.clone(),
        date: plan.date.clone(),
        made_by: format!("oddside {}", env!("CARGO_PKG_VERSION")),
        job_code: code(plan),
        red_lines: words.each(RED_LINES).to_vec(),
        stops: stops(plan),
        blocks: blocks(plan),
        drawing: Some(drawing(plan)),
        drawing_caption: caption(plan),
        remarks: remarks(plan),
        blanks: words.each(BLANKS).to_vec(),
        sources: Vec::new(),
        code_text: code_text(plan),
        limits: limits(words),
    }
}

/// What must be true before metal is melted. Common practice; SAFETY.md has the whole list.
const RED_LINES: [&str; 6] = [
    "red-line-dry",
    "red-line-floor",
    "red-line-clothes",
    "red-line-fume",
    "red-line-onlookers",
    "red-line-quartz",
];

/// What is written down with the gloves on.
const BLANKS: [&str; 6] = [
    "blank-sand",
    "blank-heat",
    "blank-seconds",
    "blank-weather",
    "blank-happened",
    "blank-photo",
];

/// What no figure here can promise, and whether a founder has read the language.
pub(crate) fn limits(language: Language) -> String {
    let [unread, limits] = language.each(["unread", "limits"]);
    format!("{unread} {limits}").trim().to_owned()
}

fn blocks(plan: &Plan) -> Vec<Block> {
    let blocks = [
        ("block-metal", metal(plan)),
        ("block-sand", sand(plan)),
        ("block-pattern", pattern(plan)),
        ("block-mould", rigging(plan)),
        ("block-weights", weights(plan)),
        ("block-pour", pour(plan)),
    ];
    let filled = blocks.into_iter().filter(|(_, rows)| !rows.is_empty());
    filled
        .map(|(id, rows)| Block {
            id,
            heading: plan.words.word(id),
            rows,
        })
        .collect()
}

fn metal(plan: &Plan) -> Vec<Row> {
    let casting = match plan.count {
        1 => "row-one-casting",
        _ => "row-each-casting",
    };
    let alloy = plan.words.say(&plan.alloy_label());
    let mut rows = vec![said(plan, "row-metal", &alloy, None)];
    rows.extend(figure(plan, "casting mass", casting));
    let poured = with_likely(plan, Said::new("note-poured"), "poured", "poured mass");
    rows.extend(figure(plan, "charge", "row-charge").map(noted(plan, &poured)));
    rows.extend(choice(plan, "crucible", "row-crucible"));
    rows
}

fn sand(plan: &Plan) -> Vec<Row> {
    let mut rows = Vec::new();
    rows.extend(choice(plan, "flask", "row-flask").map(name_first));
    let rammed = with_likely(
        plan,
        Said::new("note-rammed"),
        "sand",
        "sand to fill the flask",
    );
    rows.extend(figure(plan, "sand to have ready", "row-sand").map(noted(plan, &rammed)));
    rows
}

fn pattern(plan: &Plan) -> Vec<Row> {
    let mut rows = Vec::new();
    rows.extend(figure(plan, "contraction", "row-larger"));
    rows.extend(figure(plan, "pattern length", "row-longest"));
    let freezes = with_likely(
        plan,
        Said::new("note-frozen"),
        "time",
        "freezing time of the heaviest section",
    );
    let modulus = figure(plan, "modulus of the heaviest section", "row-modulus");
    rows.extend(modulus.map(noted(plan, &freezes)));
    rows.extend(solved(plan));
    rows
}

/// When it is solid by the heat in the mould.
fn solved(plan: &Plan) -> Option<Row> {
    let times = plan.solved.as_ref()?;
    let shown = Amount::Duration(times.castings).shown(plan.units, Rounding::Nearest);
    let note = with_opening(Said::new("note-solved"), times);
    Some(Row {
        name: plan.words.word("row-solved"),
        band: plan.words.between(&shown),
        value: shown.likely,
        other: shown.other,
        note: Some(plan.words.say(&note)),
        read_while_holding: false,
        behind: None,
    })
}

fn rigging(plan: &Plan) -> Vec<Row> {
    let mut rows = Vec::new();
    rows.extend(figure(plan, "sprue foot diameter", "row-sprue-foot"));
    rows.extend(cutter(plan));
    rows.extend(figure(plan, "sprue top diameter", "row-sprue-top"));
    rows.extend(figure(plan, "runner area", "row-runner"));
    rows.extend(figure(plan, "gate area", "row-gates"));
    let on_the_heaviest = Some(Said::new("note-feeder"));
    match figure(plan, "feeder diameter", "row-feeder-diameter") {
        Some(row) => rows.push(noted(plan, &on_the_heaviest)(row)),
        None => rows.extend(choice(plan, "feeder", "row-feeder")),
    }
    rows
}

fn weights(plan: &Plan) -> Vec<Row> {
    let Some(figure) = plan.figure("weight on the cope") else {
        return Vec::new();
    };
    let held = |id| {
        let lift = with_likely(plan, Said::new(id), "lift", "cope lift")?;
        with_likely(plan, lift, "cope", "cope mass")
    };
    let [.., wanted] = figure.amount.values();
    if wanted <= 0.0 {
        let nothing = said(
            plan,
            "row-lay-on",
            &plan.words.word("nothing"),
            held("note-nothing-to-lay"),
        );
        return vec![large(nothing)];
    }
    let lay_on = high_end(plan, figure, "row-lay-on");
    let mut rows = vec![noted(plan, &held("note-lift"))(lay_on)];
    rows.extend(choice(plan, "irons", "row-irons").map(large));
    rows
}

fn pour(plan: &Plan) -> Vec<Row> {
    let mut rows = Vec::new();
    rows.extend(figure(plan, "pouring temperature", "row-pour-at").map(large));
    let because = plan
        .figure("fill time")
        .and_then(|fill| fill.because.clone());
    rows.extend(figure(plan, "fill time", "row-fill-in").map(|row| {
        large(Row {
            note: because.map(|because| plan.words.say(&because)),
            ..row
        })
    }));
    rows.extend(opening(plan).map(large));
    rows
}

/// When the mould may be opened: only the late end is safe to act on.
fn opening(plan: &Plan) -> Option<Row> {
    let row = figure(plan, "may be opened", "row-open-after")?;
    let alone = with_likely(
        plan,
        Said::new("note-opening"),
        "alone",
        "leave alone until",
    )?;
    let note = with_likely(plan, alone, "handled", "may be handled");
    Some(noted(plan, &note)(Row { band: None, ..row }))
}

/// The nearest drill, and the nearest pipe beside it.
fn cutter(plan: &Plan) -> Option<Row> {
    let drill = plan.choice("sprue drill")?;
    let pipe = plan.choice("sprue pipe").map(|pipe| {
        let pipe = plan.words.say(&pipe.chosen);
        plan.words.say(&Said::new("note-or").with("pipe", pipe))
    });
    Some(Row {
        band: pipe,
        behind: Some(drill.name),
        ..said(plan, "row-cut-with", &plan.words.say(&drill.chosen), None)
    })
}

/// "B: 300 x 250 mm inside" as a bold B with the sizes beside it.
fn name_first(row: Row) -> Row {
    match row.value.clone().split_once(": ") {
        Some((name, sizes)) => Row {
            value: name.to_owned(),
            band: Some(sizes.to_owned()),
            ..row
        },
        None => row,
    }
}

/// A message with the likely value of a figure put into it; nothing where there is no such figure.
fn with_likely(plan: &Plan, note: Said, as_what: &'static str, name: &str) -> Option<Said> {
    let figure = plan.figure(name)?;
    let shown = figure.amount.shown(plan.units, figure.rounding);
    Some(note.with(as_what, shown.likely))
}

/// The row of a figure, if the plan has it.
fn figure(plan: &Plan, name: &str, label: &'static str) -> Option<Row> {
    let figure = plan.figure(name)?;
    let shown = figure.amount.shown(plan.units, figure.rounding);
    Some(Row {
        name: plan.words.word(label),
        band: plan.words.between(&shown),
        value: shown.likely,
        other: shown.other,
        note: None,
        read_while_holding: false,
        behind: Some(figure.name),
    })
}

/// A figure of which only the high end is safe to act on.
fn high_end(plan: &Plan, figure: &Figure, label: &'static str) -> Row {
    let amount = match figure.amount {
        Amount::Mass(band) => Amount::Mass(Band::exact(band.high())),
        other => other,
    };
    let shown = amount.shown(plan.units, Rounding::Up);
    Row {
        name: plan.words.word(label),
        value: shown.likely,
        band: None,
        other: shown.other,
        note: None,
        read_while_holding: true,
        behind: Some(figure.name),
    }
}

fn choice(plan: &Plan, name: &str, label: &'static str) -> Option<Row> {
    let choice = plan.choice(name)?;
    let chosen = plan.words.say(&choice.chosen);
    Some(Row {
        behind: Some(choice.name),
        ..said(plan, label, &chosen, Some(choice.because.clone()))
    })
}

fn said(plan: &Plan, label: &'static str, words: &str, note: Option<Said>) -> Row {
    Row {
        name: plan.words.word(label),
        value: words.to_owned(),
        band: None,
        other: None,
        note: note.map(|note| plan.words.say(&note)),
        read_while_holding: false,
        behind: None,
    }
}

fn noted(plan: &Plan, note: &Option<Said>) -> impl Fn(Row) -> Row {
    let note = note.as_ref().map(|note| plan.words.say(note));
    move |row| Row {
        note: note.clone(),
        ..row
    }
}

fn large(row: Row) -> Row {
    Row {
        read_while_holding: true,
        ..row
    }
}

fn stops(plan: &Plan) -> Vec<String> {
    let stops = plan
        .remarks
        .iter()
        .filter(|remark| remark.level == Level::Stop);
    stops
        .map(|remark| {
            let [words, advice] = [&remark.words, &remark.advice].map(|said| plan.words.say(said));
            format!("{}: {advice}", sentence(&words))
        })
        .collect()
}

fn remarks(plan: &Plan) -> Vec<PaperRemark> {
    let others = plan
        .remarks
        .iter()
        .filter(|remark| remark.level != Level::Stop);
    others
        .map(|remark| PaperRemark {
            level: match remark.level {
                Level::Stop => RemarkLevel::Stop,
                Level::Caution => RemarkLevel::Caution,
                Level::Note => RemarkLevel::Note,
            },
            words: sentence(&plan.words.say(&remark.words)),
            advice: plan.words.say(&remark.advice),
        })
        .collect()
}

fn sentence(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(letters).collect()
    })
}

/// What the drawing shows, and what its letters stand for.
fn caption(plan: &Plan) -> String {
    let id = match plan.drawing.pieces.is_empty() {
        true => "drawing-caption",
        false => "drawing-rigged",
    };
    let caption = plan.words.say(&Said::new(id).with("count", plan.count));
    match &plan.drawing.joint {
        None => caption,
        Some(joint) => {
            let every =
                Said::new("drawing-wanders").with("every", format!("{} mm", joint.every_mm));
            format!("{caption} {}", plan.words.say(&every))
        }
    }
}

fn drawing(plan: &Plan) -> Drawing {
    let mould = &plan.drawing;
    Drawing {
        flask_inside_mm: mould.flask_inside_mm,
        cope_mm: mould.cope_mm,
        drag_mm: mould.drag_mm,
        outline: mould.outline.clone(),
        section: mould.section.clone(),
        pour_height_mm: mould.pour_height_mm,
        pieces: mould
            .pieces
            .iter()
            .map(|piece| drawn(piece, plan.words))
            .collect(),
        joint: mould.joint.as_ref().map(|joint| Wandering {
            section: joint.section.clone(),
            contours: joint
                .contours
                .iter()
                .flat_map(|contour| contour.lines.clone())
                .collect(),
        }),
    }
}

fn drawn(piece: &DrawnPiece, words: Language) -> Piece {
    let (letter, look) = match piece.kind {
        PieceKind::Sprue => ("letter-sprue", Look::InTheJoint),
        PieceKind::Runner => ("letter-runner", Look::InTheJoint),
        PieceKind::Gate => ("letter-gate", Look::InTheJoint),
        PieceKind::Feeder => ("letter-feeder", Look::Above),
        PieceKind::Core => ("letter-core", Look::Core),
    };
    Piece {
        letter: words.word(letter),
        look,
        plan: piece.plan.clone(),
        cut: piece.cut.clone(),
        beside: piece.beside.clone(),
    }
}

/// Six letters and digits by which this very plan is known again: any change in it changes them.
pub(crate) fn code(plan: &Plan) -> String {
    const SIGNS: &[u8] = b"23456789ABCDEFGHJKMNPQRSTVWXYZ";
    let mut mixed = mixed(PlanFile::of(plan).text().bytes());
    let mut signs = String::new();
    for place in 0..6 {
        if place == 3 {
            signs.push('-');
        }
        signs.push(char::from(SIGNS[(mixed % SIGNS.len() as u64) as usize]));
        mixed /= SIGNS.len() as u64;
    }
    signs
}

/// What a phone reads off the sheet at the mould: the job, its code, and what is done there.
fn code_text(plan: &Plan) -> String {
    const AT_THE_MOULD: [&str; 5] = [
        "charge",
        "pouring temperature",
        "fill time",
        "weight on the cope",
        "may be opened",
    ];
    let line = |name: &&str| {
        let figure = plan.figure(name)?;
        let shown = figure.amount.shown(plan.units, figure.rounding);
        let label = plan.words.say(&figure.label());
        Some(format!("{label}: {}", plan.words.ends(&shown)))
    };
    let head = [
        format!("oddside {}", code(plan)),
        plan.name.clone(),
        plan.words.say(&plan.alloy_label()),
    ];
    let lines: Vec<String> = head
        .into_iter()
        .chain(AT_THE_MOULD.iter().filter_map(line))
        .collect();
    lines.join("\n")
}
