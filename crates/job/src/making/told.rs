//! A pattern made, in words and rows, as any door may show it.

use measure::length::Volume;
use measure::text::{System, rounded, show};
use pattern::made::filament::PrintAdvice;
use pattern::made::line::Station;
use pattern::made::taper::Tight;
use pattern::made::volume_mm3;

use crate::job_file::Serves;
use crate::making::{Making, Piece, Step, What, core_prints, loose_told};
use crate::remark::Remark;
use crate::remark::of_metal::MetalFact;
use crate::words::Language;
use crate::words::said::Said;

/// A pattern as it is told.
#[derive(Clone, Debug, PartialEq)]
pub struct Told {
    /// What it is, its size, its joint: a line each.
    pub head: Vec<Said>,
    /// Steps: what was done, volume after it, change.
    pub steps: Vec<[String; 3]>,
    /// Solids: what it is, size, volume, plastic.
    pub pieces: Vec<[String; 4]>,
    /// The height gauge: number, x, y, height over the bed, slope to the next.
    pub gauge: Vec<[String; 5]>,
    /// What else there is to know, a sentence each.
    pub lines: Vec<Said>,
    /// What the casting serves for, where a pattern alone makes no sound casting of it.
    pub remarks: Vec<Remark>,
}

/// Tells a pattern in a language, masses in the wanted system of units.
pub fn told(making: &Making, first: System, language: Language) -> Told {
    Told {
        head: head(making),
        steps: steps(making, language),
        pieces: pieces(making, first, language),
        gauge: making.stations.iter().enumerate().map(gauge).collect(),
        lines: lines(making),
        remarks: match making.serves {
            Serves::Ornament | Serves::Machine => Vec::new(),
            serves => vec![Remark::from(MetalFact::Serves(serves))],
        },
    }
}

/// What it is, its size, its joint: a line each.
pub fn head(making: &Making) -> Vec<Said> {
    let [x, y, z] = making
        .contraction
        .map(|share| format!("{:.2} %", share * 100.0));
    vec![
        Said::new("making-head").with("job", making.name.as_str()),
        Said::new("making-sizes")
            .with("part", size(making.part_mm))
            .with("pattern", size(making.pattern_mm)),
        Said::new("making-contracts")
            .with("x", x)
            .with("y", y)
            .with("z", z),
        joint(making.joint_mm),
    ]
}

fn joint([low, high]: [f64; 2]) -> Said {
    match low == high {
        true => Said::new("making-joint").with("height", mm(low)),
        false => Said::new("making-joint-wanders")
            .with("low", mm(low))
            .with("high", mm(high)),
    }
}

fn steps(making: &Making, language: Language) -> Vec<[String; 3]> {
    let mut before: Option<f64> = None;
    let rows = making.steps.iter().map(|&(step, after_mm3)| {
        let change = before
            .replace(after_mm3)
            .map_or_else(String::new, |before_mm3| {
                format!("{:+.2} cm³", (after_mm3 - before_mm3) / 1e3)
            });
        [language.word(word_of(step)), cm3(after_mm3), change]
    });
    rows.collect()
}

const fn word_of(step: Step) -> &'static str {
    match step {
        Step::Part => "making-part",
        Step::Stock => "making-stock",
        Step::Contraction => "making-contraction",
        Step::Draught => "making-draught",
        Step::Hollows => "making-hollows",
        Step::Prints => "making-prints",
    }
}

fn pieces(making: &Making, first: System, language: Language) -> Vec<[String; 4]> {
    let row = |piece: &Piece| {
        let [low, high] = piece.mesh.bounds();
        [
            language.say(&name_of(piece)),
            size([0, 1, 2].map(|axis| high[axis] - low[axis])),
            cm3(volume_mm3(&piece.mesh)),
            show(piece.filament.mass, first).unwrap_or_default(),
        ]
    };
    making.pieces.iter().map(row).collect()
}

fn name_of(piece: &Piece) -> Said {
    let what = match piece.what {
        What::Pattern => Said::new("making-pattern"),
        What::Drag => Said::new("making-drag"),
        What::Cope => Said::new("making-cope"),
        What::Loose(number) => Said::new("making-loose").with("number", number),
        What::Oddside => Said::new("making-oddside"),
        What::Board => Said::new("making-board"),
    };
    match piece.number {
        None => what,
        Some(number) => Said::new("making-numbered")
            .with("what", what)
            .with("number", number),
    }
}

fn gauge((number, station): (usize, &Station)) -> [String; 5] {
    let [x, y] = station.place_mm;
    [
        (number + 1).to_string(),
        format!("{x:.1}"),
        format!("{y:.1}"),
        format!("{:.1}", station.height_mm),
        format!("{:.0}°", station.slope_degrees + 0.0),
    ]
}

/// What else there is to know of a pattern, a sentence each.
pub fn lines(making: &Making) -> Vec<Said> {
    let mut lines: Vec<Said> = making
        .left_on
        .iter()
        .map(|left| {
            Said::new("making-left-on")
                .with("depth", mm(left.stock.depth_mm))
                .with("places", left.places)
                .with("area", cm2(left.area_mm2))
                .with("volume", cm3(left.added_mm3))
        })
        .collect();
    lines.extend(core_prints::lines(&making.cores));
    let (walls, held_mm2) = making.walls;
    if walls > 0 {
        lines.push(Said::new("making-walls").with("walls", walls));
    }
    lines.extend(making.tight.iter().take(MOST_TIGHT).map(tight));
    if making.tight.len() > MOST_TIGHT {
        let more = making.tight.len() - MOST_TIGHT;
        lines.push(Said::new("making-tight-more").with("walls", more));
    }
    if let Some(why) = &making.no_draught {
        lines.push(Said::new("making-no-draught").with("why", why.to_string()));
    }
    if held_mm2 > 0.0 {
        lines.push(Said::new("making-walls-held").with("area", cm2(held_mm2)));
    }
    if making.held_mm3 > 0.0 {
        lines.push(Said::new("making-holds-sand").with("volume", cm3(making.held_mm3)));
    }
    lines.extend(loose_told::lines(making));
    if let Some(pins) = &making.pins {
        lines.push(
            Said::new("making-pins")
                .with("rod", mm(pins.diameter_mm))
                .with("hole", mm(pins.hole_mm))
                .with("depth", mm(pins.depth_mm))
                .with("wide", mm(pins.wide_mm)),
        );
    }
    if making.is_without_pins {
        lines.push(Said::new("making-no-pins"));
    }
    let (dowels, glued) = making.dowels;
    if dowels > 0 {
        lines.push(Said::new("making-dowels").with("dowels", dowels));
    }
    if glued > 0 {
        lines.push(Said::new("making-glued").with("cuts", glued));
    }
    if let Some(fill) = making.fill {
        lines.push(
            Said::new("making-fill")
                .with("gap", format!("{:.3} %", fill.gap * 100.0))
                .with("overlap", format!("{:.3} %", fill.overlap * 100.0)),
        );
    }
    lines.extend(making.advice.iter().map(advised));
    lines
}

/// Places without room for draught that are told one by one: more are a list that nobody reads.
const MOST_TIGHT: usize = 4;

fn tight(tight: &Tight) -> Said {
    let [x, y, z] = tight.place_mm;
    let degrees = |angle: f64| format!("{angle:.2}°");
    Said::new("making-tight")
        .with("place", format!("({x:.1}, {y:.1}, {z:.1}) mm"))
        .with("gap", mm(tight.gap_mm))
        .with("has", degrees(tight.has_degrees))
        .with("wanted", degrees(tight.wanted_degrees))
}

fn advised(advice: &PrintAdvice) -> Said {
    let per_cent = |share: f64| format!("{:.0} %", share * 100.0);
    match *advice {
        PrintAdvice::ThinWalls { has_mm, wanted_mm } => Said::new("making-thin-walls")
            .with("has", mm(has_mm))
            .with("wanted", mm(wanted_mm)),
        PrintAdvice::LightInfill { has, wanted } => Said::new("making-light-infill")
            .with("has", per_cent(has))
            .with("wanted", per_cent(wanted)),
        PrintAdvice::CoarseLayers { has_mm, wanted_mm } => Said::new("making-coarse-layers")
            .with("has", mm(has_mm))
            .with("wanted", mm(wanted_mm)),
        PrintAdvice::RubAlongDraw => Said::new("making-rub-along"),
    }
}

pub(super) fn mm(length_mm: f64) -> String {
    format!("{} mm", rounded(length_mm, 4))
}

fn size([x, y, z]: [f64; 3]) -> String {
    format!("{x:.1} x {y:.1} x {z:.1} mm")
}

fn cm2(area_mm2: f64) -> String {
    format!("{} cm²", rounded(area_mm2 / 1e2, 4))
}

pub(super) fn cm3(volume_mm3: f64) -> String {
    format!("{} cm³", rounded(Volume::from_mm3(volume_mm3).as_cm3(), 4))
}
