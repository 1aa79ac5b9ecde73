//! A Plan turned into the words of a pour sheet, in the order of the day.

use job::amount::Amount;
use job::plan::{Figure, Plan};
use job::plan_file::PlanFile;
use job::remark::Level;
use measure::band::Band;
use measure::text::shown::Rounding;

use crate::data::{Block, PaperRemark, PourSheet, RemarkLevel, Row};
use crate::drawings::Drawing;

/// The pour sheet of a plan.
pub fn page(plan: &Plan) -> PourSheet {
    let mut page = PourSheet {
        title: plan.name.clone(),
        date: plan.date.clone(),
        made_by: format!("oddside {}", env!("CARGO_PKG_VERSION")),
        job_code: code(plan),
        red_lines: RED_LINES.iter().map(|line| (*line).to_owned()).collect(),
        stops: stops(plan),
        blocks: blocks(plan),
        drawing: Some(drawing(plan)),
        drawing_caption: caption(plan),
        remarks: remarks(plan),
        blanks: BLANKS.iter().map(|label| (*label).to_owned()).collect(),
        sources: Vec::new(),
        code_text: code_text(plan),
        limits: LIMITS.to_owned(),
    };
    in_words(plan, &mut page);
    page
}

/// What must be true before metal is melted. Common practice; SAFETY.md has the whole list.
const RED_LINES: [&str; 6] = [
    "Mould, cores, tools, ingot mould dry and warm",
    "Floor of dry sand; a clear way to the mould",
    "Leather boots, face shield, no synthetics",
    "Outdoors or hooded; fume mask; never alone",
    "Onlookers at least 2 m away; a stop word",
    "Sand damp or a dust mask: quartz harms lungs",
];

/// What is written down with the gloves on.
const BLANKS: [&str; 6] = [
    "Sand reading",
    "Temperature or cue",
    "Seconds",
    "Weather",
    "What happened",
    "Photo number",
];

/// What no figure here can promise.
pub(crate) const LIMITS: &str = "Laws and sources of every figure: workings.pdf. From tables and hand sums, no \
                                 simulation; bands are not guarantees. Local codes \
                      and licensed practice come first. Lifting, brake, pressure parts: prove by test.";

fn blocks(plan: &Plan) -> Vec<Block> {
    let blocks = [
        ("Metal and charge", metal(plan)),
        ("Sand and flask", sand(plan)),
        ("Pattern", pattern(plan)),
        ("Mould and rigging", rigging(plan)),
        ("Weights on the cope", weights(plan)),
        ("Pour", pour(plan)),
    ];
    let filled = blocks.into_iter().filter(|(_, rows)| !rows.is_empty());
    filled
        .map(|(heading, rows)| Block {
            heading: heading.to_owned(),
            rows,
        })
        .collect()
}

fn metal(plan: &Plan) -> Vec<Row> {
    let casting = if plan.count == 1 {
        "One casting"
    } else {
        "Each casting"
    };
    let mut rows = vec![said("Metal", &plan.alloy, None)];
    rows.extend(figure(plan, "casting mass", casting));
    let poured = beside(plan, "poured mass", "poured in all");
    rows.extend(figure(plan, "charge", "Charge").map(noted(&poured)));
    rows.extend(choice(plan, "crucible", "Crucible"));
    rows
}

fn sand(plan: &Plan) -> Vec<Row> {
    let mut rows = Vec::new();
    rows.extend(choice(plan, "flask", "Flask").map(name_first));
    let rammed = beside(
        plan,
        "sand to fill the flask",
        "of it rammed into the flask",
    );
    rows.extend(figure(plan, "sand to have ready", "Sand ready").map(noted(&rammed)));
    rows
}

fn pattern(plan: &Plan) -> Vec<Row> {
    let mut rows = Vec::new();
    rows.extend(figure(plan, "contraction", "Larger by"));
    rows.extend(figure(plan, "pattern length", "Longest side"));
    let freezes = beside(
        plan,
        "freezing time of the heaviest section",
        "until it is frozen",
    );
    let modulus = figure(plan, "modulus of the heaviest section", "Heaviest modulus");
    rows.extend(modulus.map(noted(&freezes)));
    rows
}

fn rigging(plan: &Plan) -> Vec<Row> {
    let mut rows = Vec::new();
    rows.extend(figure(plan, "sprue foot diameter", "Sprue foot Ø"));
    rows.extend(cutter(plan));
    rows.extend(figure(plan, "sprue top diameter", "Sprue top Ø"));
    rows.extend(figure(plan, "runner area", "Runner, in all"));
    rows.extend(figure(plan, "gate area", "Gates, in all"));
    match figure(plan, "feeder diameter", "Feeder Ø") {
        Some(row) => rows.push(noted("as high as wide, on the heaviest section")(row)),
        None => rows.extend(choice(plan, "feeder", "Feeder")),
    }
    rows
}

fn weights(plan: &Plan) -> Vec<Row> {
    let Some(figure) = plan.figure("weight on the cope") else {
        return Vec::new();
    };
    let held = format!(
        "{}, {}",
        beside(plan, "cope lift", "lift"),
        beside(plan, "cope mass", "cope")
    );
    let [.., wanted] = figure.amount.values();
    if wanted <= 0.0 {
        let words = "the cope is heavy enough; a clamp if it is moved";
        return vec![large(said(
            "Lay on",
            "nothing",
            Some(format!("{words}; {held}")),
        ))];
    }
    let mut rows = vec![noted(&held)(high_end(plan, figure, "Lay on"))];
    rows.extend(choice(plan, "irons", "Take").map(large));
    rows
}

fn pour(plan: &Plan) -> Vec<Row> {
    let mut rows = Vec::new();
    rows.extend(figure(plan, "pouring temperature", "Pour at").map(large));
    let fill = plan
        .figure("fill time")
        .and_then(|figure| figure.because.clone());
    let because = fill.unwrap_or_default();
    rows.extend(
        figure(plan, "fill time", "Fill in")
            .map(noted(&because))
            .map(large),
    );
    rows.extend(opening(plan).map(large));
    rows
}

/// When the mould may be opened: only the late end is safe to act on.
fn opening(plan: &Plan) -> Option<Row> {
    let row = figure(plan, "may be opened", "Open after")?;
    let alone = beside(plan, "leave alone until", "left alone");
    let handled = beside(plan, "may be handled", "until it is handled");
    Some(noted(&format!("{alone}, {handled}"))(Row {
        band: None,
        ..row
    }))
}

/// The nearest drill, and the nearest pipe beside it.
fn cutter(plan: &Plan) -> Option<Row> {
    let drill = plan.choice("sprue drill")?;
    let pipe = plan
        .choice("sprue pipe")
        .map(|pipe| format!("or {}", pipe.chosen));
    Some(Row {
        band: pipe,
        ..said("cut with", &drill.chosen, None)
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

/// A figure in words, to stand under another.
fn beside(plan: &Plan, name: &str, words: &str) -> String {
    let likely = |figure: &Figure| figure.amount.shown(plan.units, figure.rounding).likely;
    plan.figure(name)
        .map_or_else(String::new, |figure| format!("{} {words}", likely(figure)))
}

/// The row of a figure, if the plan has it.
fn figure(plan: &Plan, name: &str, label: &str) -> Option<Row> {
    let figure = plan.figure(name)?;
    let shown = figure.amount.shown(plan.units, figure.rounding);
    Some(Row {
        name: label.to_owned(),
        value: shown.likely,
        band: shown.band,
        other: shown.other,
        note: None,
        read_while_holding: false,
    })
}

/// A figure of which only the high end is safe to act on.
fn high_end(plan: &Plan, figure: &Figure, label: &str) -> Row {
    let amount = match figure.amount {
        Amount::Mass(band) => Amount::Mass(Band::exact(band.high())),
        other => other,
    };
    let shown = amount.shown(plan.units, Rounding::Up);
    Row {
        name: label.to_owned(),
        value: shown.likely,
        band: None,
        other: shown.other,
        note: None,
        read_while_holding: true,
    }
}

fn choice(plan: &Plan, name: &str, label: &str) -> Option<Row> {
    let choice = plan.choice(name)?;
    Some(said(label, &choice.chosen, Some(choice.because.clone())))
}

fn said(label: &str, words: &str, note: Option<String>) -> Row {
    Row {
        name: label.to_owned(),
        value: words.to_owned(),
        band: None,
        other: None,
        note: note.filter(|note| !note.is_empty()),
        read_while_holding: false,
    }
}

fn noted(note: &str) -> impl Fn(Row) -> Row {
    let note = Some(note.to_owned()).filter(|note| !note.is_empty());
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

fn drawing(plan: &Plan) -> Drawing {
    let mould = &plan.drawing;
    Drawing {
        flask_inside_mm: mould.flask_inside_mm,
        cope_mm: mould.cope_mm,
        drag_mm: mould.drag_mm,
        outline: mould.outline.clone(),
        section: mould.section.clone(),
        pour_height_mm: mould.pour_height_mm,
    }
}

fn caption(plan: &Plan) -> String {
    let patterns = match plan.count {
        1 => "The pattern lies".to_owned(),
        count => format!("{count} patterns lie"),
    };
    format!("{patterns} in the flask as drawn; sprue, runner and feeder are yours to place.")
}

/// Six letters and digits by which this very plan is known again: any change in it changes them.
pub(crate) fn code(plan: &Plan) -> String {
    const SIGNS: &[u8] = b"23456789ABCDEFGHJKMNPQRSTVWXYZ";
    // FNV-1a, 64 bits.
    let mut mixed: u64 = 0xcbf2_9ce4_8422_2325;
    for byte in PlanFile::of(plan).text().bytes() {
        mixed = (mixed ^ u64::from(byte)).wrapping_mul(0x0000_0100_0000_01b3);
    }
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
        Some(format!("{name}: {}", shown.band.unwrap_or(shown.likely)))
    };
    let head = [
        format!("oddside {}", code(plan)),
        plan.name.clone(),
        plan.alloy.clone(),
    ];
    let lines: Vec<String> = head
        .into_iter()
        .chain(AT_THE_MOULD.iter().filter_map(line))
        .collect();
    plan.words.of(&lines.join("\n"))
}

/// Every word in the English that the shop wants; what the founder typed is left alone.
fn in_words(plan: &Plan, page: &mut PourSheet) {
    let exchange = |text: &mut String| *text = plan.words.of(text);
    page.red_lines.iter_mut().for_each(exchange);
    page.blanks.iter_mut().for_each(exchange);
    for block in &mut page.blocks {
        exchange(&mut block.heading);
        for row in &mut block.rows {
            exchange(&mut row.name);
            row.note.iter_mut().for_each(exchange);
            exchange(&mut row.value);
        }
    }
    exchange(&mut page.drawing_caption);
    exchange(&mut page.limits);
}
