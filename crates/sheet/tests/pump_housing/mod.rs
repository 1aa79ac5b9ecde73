//! A realistic sheet: a 240 g aluminium pump housing in a bench flask, invented for the tests.

use std::f64::consts::TAU;

use job::words::Language;
use sheet::{Block, Drawing, PaperRemark, PourSheet, RemarkLevel, Row};

/// The sheet of the pump housing.
pub fn sample() -> PourSheet {
    PourSheet {
        language: Language::Uk,
        title: "Pump housing, garden well".into(),
        date: None,
        made_by: "oddside 0.1.0".into(),
        job_code: "PH-240-7C".into(),
        red_lines: lines(&[
            "Ladle, ingots, skimmer and mould are dry and warm.",
            "Dry sand under the mould and around the furnace; no bare concrete.",
            "Boots covered, face shield, leather apron; no synthetics.",
            "Door and window open; nobody behind the one who pours.",
            "A place to pig the metal that is left, dry and empty.",
        ]),
        stops: Vec::new(),
        blocks: vec![metal(), sand(), pattern(), mould(), weights(), pour()],
        drawing: Some(drawing()),
        drawing_caption: "Flask 200 by 160 mm inside, cope 60 and drag 60 mm; the housing lies \
                          flange down in the drag, sprue at the left end, feeder at the right."
            .into(),
        remarks: vec![
            remark(
                RemarkLevel::Note,
                "The pattern scale assumes free contraction.",
                "Measure the flange bore after cleaning.",
            ),
            remark(
                RemarkLevel::Caution,
                "The boss at the outlet freezes last.",
                "Keep the feeder hot: pour it full and cover it.",
            ),
            remark(
                RemarkLevel::Caution,
                "No draft on the two ears.",
                "Give them 1 in 50 or draw them as loose pieces.",
            ),
        ],
        blanks: lines(&[
            "Sand reading",
            "Temperature or cue",
            "Seconds",
            "Weather",
            "What happened",
            "Photo number",
        ]),
        sources: lines(&[
            "Foundry handbook A, ch. 4",
            "Sand tables B, p. 31",
            "shop.toml",
        ]),
        code_text: "oddside ABC-DEF\npump housing, pair".into(),
        limits:
            "Figures are worked out, not measured. Not for parts that carry people or pressure."
                .into(),
    }
}

fn metal() -> Block {
    block(
        "Metal and charge",
        vec![
            row("Alloy", "Al-Si7-Mg", None, None, None),
            row(
                "Casting",
                "240 g",
                Some("230 to 250 g"),
                Some("8.5 oz"),
                None,
            ),
            row(
                "Charge",
                "0.62 kg",
                Some("0.58 to 0.68 kg"),
                Some("1.37 lb"),
                Some("Ingot 0.40 kg, clean returns 0.22 kg."),
            ),
            row(
                "Crucible",
                "A2",
                None,
                None,
                Some("Two thirds full; one heat."),
            ),
        ],
    )
}

fn sand() -> Block {
    block(
        "Sand and flask",
        vec![
            row(
                "Flask inside",
                "200 × 160 mm",
                None,
                Some("7⅞ × 6¼ in"),
                None,
            ),
            row(
                "Sand, rammed",
                "6.1 kg",
                Some("5.8 to 6.4 kg"),
                Some("13.4 lb"),
                None,
            ),
            row(
                "Water in sand",
                "4.2 %",
                Some("3.8 to 4.6 %"),
                None,
                Some("Of the damp mass. Stop drying the 500 g sample at 479 g."),
            ),
        ],
    )
}

fn pattern() -> Block {
    block(
        "Pattern",
        vec![
            row(
                "Scale",
                "1.3 %",
                Some("1.2 to 1.4 %"),
                Some("5/32 in per ft"),
                None,
            ),
            row("Draft", "1 in 50", None, Some("1.1°"), None),
            row(
                "Machining",
                "1.5 mm",
                None,
                Some("1/16 in"),
                Some("On the flange face only."),
            ),
        ],
    )
}

fn mould() -> Block {
    block(
        "Mould and rigging",
        vec![
            row(
                "Sprue, top",
                "16 mm",
                Some("15 to 18 mm"),
                Some("5/8 in"),
                None,
            ),
            row(
                "Choke",
                "9.5 mm",
                Some("9 to 10 mm"),
                Some("3/8 in drill"),
                None,
            ),
            row(
                "Gates",
                "2 of 20 × 5 mm",
                None,
                Some("25/32 × 3/16 in"),
                None,
            ),
            row(
                "Feeder",
                "30 mm",
                Some("28 to 34 mm"),
                Some("1 3/16 in"),
                Some("On the outlet boss, 45 mm tall."),
            ),
            row("Vents", "6 of 2 mm", None, Some("5/64 in"), None),
        ],
    )
}

fn weights() -> Block {
    block(
        "Weights on the cope",
        vec![
            held(
                "Put on",
                "4.5 kg",
                Some("at least"),
                Some("9.9 lb"),
                Some("Your irons: the long bar and one sash weight."),
            ),
            held("Lift", "2.1 kg", None, Some("4.6 lb"), None),
        ],
    )
}

fn pour() -> Block {
    block(
        "Pour",
        vec![
            held(
                "Pour at",
                "720 °C",
                Some("700 to 740 °C"),
                Some("1330 °F"),
                None,
            ),
            held(
                "Fill in",
                "4.0 s",
                Some("3.4 to 4.6 s"),
                None,
                Some("One steady stream, cup kept full."),
            ),
            held("Open after", "25 min", Some("20 to 40 min"), None, None),
        ],
    )
}

fn drawing() -> Drawing {
    Drawing {
        flask_inside_mm: [200.0, 160.0],
        cope_mm: 60.0,
        drag_mm: 60.0,
        outline: vec![
            ring([110.0, 80.0], 42.0),
            ring([110.0, 80.0], 18.0),
            bar([34.0, 74.0], [68.4, 86.0]),
            ring([26.0, 80.0], 8.0),
            bar([151.6, 76.0], [157.4, 84.0]),
            ring([172.0, 80.0], 15.0),
        ],
        section: vec![vec![
            [18.0, 60.0],
            [34.0, 60.0],
            [31.0, 0.0],
            [68.0, 0.0],
            [68.0, -22.0],
            [98.0, -22.0],
            [98.0, 18.0],
            [122.0, 18.0],
            [122.0, -22.0],
            [152.0, -22.0],
            [152.0, 0.0],
            [157.0, 0.0],
            [157.0, 45.0],
            [187.0, 45.0],
            [187.0, -12.0],
            [152.0, -12.0],
            [152.0, 0.0],
            [134.0, 0.0],
            [134.0, 28.0],
            [86.0, 28.0],
            [86.0, 0.0],
            [68.0, 0.0],
            [68.0, -8.0],
            [21.0, -8.0],
        ]],
        pour_height_mm: 75.0,
        pieces: Vec::new(),
        joint: None,
    }
}

fn ring([x, y]: [f64; 2], radius: f64) -> Vec<[f64; 2]> {
    let turn = |step: u32| f64::from(step) * TAU / 64.0;
    (0..64)
        .map(|step| [x + radius * turn(step).cos(), y + radius * turn(step).sin()])
        .collect()
}

fn bar(from: [f64; 2], to: [f64; 2]) -> Vec<[f64; 2]> {
    vec![from, [to[0], from[1]], to, [from[0], to[1]]]
}

fn lines(words: &[&str]) -> Vec<String> {
    words.iter().map(|&word| word.to_owned()).collect()
}

fn remark(level: RemarkLevel, words: &str, advice: &str) -> PaperRemark {
    PaperRemark {
        level,
        words: words.into(),
        advice: advice.into(),
    }
}

fn block(heading: &str, rows: Vec<Row>) -> Block {
    Block {
        id: "",
        heading: heading.into(),
        rows,
    }
}

fn row(
    name: &str,
    value: &str,
    band: Option<&str>,
    other: Option<&str>,
    note: Option<&str>,
) -> Row {
    let some = |words: Option<&str>| words.map(str::to_owned);
    Row {
        name: name.into(),
        value: value.into(),
        band: some(band),
        other: some(other),
        note: some(note),
        read_while_holding: false,
        behind: None,
    }
}

fn held(
    name: &str,
    value: &str,
    band: Option<&str>,
    other: Option<&str>,
    note: Option<&str>,
) -> Row {
    Row {
        read_while_holding: true,
        ..row(name, value, band, other, note)
    }
}
