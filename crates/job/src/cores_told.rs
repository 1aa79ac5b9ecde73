//! The cores of a job in words, for any language.

use measure::length::Length;
use measure::text::rounded;
use pattern::cores::CoreError;
use pattern::cores::box_slides::Slide;
use pattern::cores::core_box::CoreBox;
use pattern::cores::vent::Vent;
use pattern::draw::remedy::{Remedy, Why};
use pattern::draw::undercut::Trapped;
use pattern::vector::{Vector, sub};

use crate::draw_told::way_text;
use crate::made_cores::{MadeCore, MadeCores};
use crate::printed_cores::LengthsBy;
use crate::remark::Level;
use crate::words::said::Said;

/// A line about the cores and how much it weighs.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    /// How much it weighs.
    pub level: Level,
    /// What it says.
    pub words: Said,
}

/// Everything that is told of the cores of a casting, core by core.
pub fn told(made: &MadeCores) -> Vec<Line> {
    let mut lines: Vec<Line> = made.cores.iter().flat_map(of_core).collect();
    if made.cores.is_empty() {
        lines.push(note(Said::new("cores-none")));
    }
    lines.extend(of_all_left(&made.left));
    lines
}

/// Hollows smaller than this share of the largest are told together, as are those that are not
/// worth a piece of their own.
const SMALL: f64 = 0.02;

/// Sand that holds the pattern, the largest first, each with what frees it; small ones together.
pub(crate) fn of_all_left(left: &[Trapped]) -> Vec<Line> {
    let largest = left.first().map_or(0.0, |hollow| hollow.volume_mm3);
    let (told, small): (Vec<&Trapped>, Vec<&Trapped>) = left
        .iter()
        .partition(|hollow| hollow.is_worth_freeing() && hollow.volume_mm3 >= SMALL * largest);
    let mut lines: Vec<Line> = told.into_iter().map(of_left).collect();
    if !small.is_empty() {
        let volume = small.iter().map(|hollow| hollow.volume_mm3).sum();
        let words = Said::new("hollows-small")
            .with("count", small.len())
            .with("volume", cm3(volume));
        lines.push(note(words));
    }
    lines
}

pub(crate) fn note(words: Said) -> Line {
    Line {
        level: Level::Note,
        words,
    }
}

pub(crate) fn caution(words: Said) -> Line {
    Line {
        level: Level::Caution,
        words,
    }
}

fn of_core(core: &MadeCore) -> Vec<Line> {
    let name = core.name.as_str();
    let made = Said::new("core-made")
        .with("name", name)
        .with("volume", cm3(core.volume.as_mm3()))
        .with("mass", grams(core.mass.as_kg()))
        .with("place", place(core.centre_mm));
    let mut lines = vec![note(made), of_prints(core)];
    let slides = core.core_box.iter().map(|made| made.slides.as_slice());
    let slides = slides.filter(|slides| !slides.is_empty());
    lines.push(match &core.core_box {
        Ok(made) => note(of_box(name, made)),
        Err(CoreError::NoBox {
            held_mm3,
            centre_mm,
            slides_sought,
        }) => caution(
            Said::new(match slides_sought {
                true => "core-box-none",
                false => "core-box-none-sought",
            })
            .with("name", name)
            .with("place", place(*centre_mm))
            .with("held", cm3(*held_mm3)),
        ),
        Err(error) => caution(
            Said::new("core-box-fails")
                .with("name", name)
                .with("why", error.to_string()),
        ),
    });
    lines.extend(slides.map(|slides| note(of_slides(name, slides))));
    match core.vents.is_empty() {
        true => lines.push(caution(Said::new("core-vent-none").with("name", name))),
        false => lines.extend(core.vents.iter().map(|vent| note(of_vent(name, vent)))),
    }
    lines
}

fn of_prints(core: &MadeCore) -> Line {
    let lengths: Vec<String> = core
        .print_lengths
        .iter()
        .map(|length| mm(*length))
        .collect();
    match lengths.as_slice() {
        [only] => caution(
            Said::new("core-one-print")
                .with("name", core.name.as_str())
                .with("length", only.as_str()),
        ),
        _ => note(
            Said::new(match core.lengths_by {
                LengthsBy::Rule => "core-prints",
                LengthsBy::Sand => "core-prints-by-sand",
                LengthsBy::Job => "core-prints-by-job",
            })
            .with("name", core.name.as_str())
            .with("count", lengths.len())
            .with("lengths", lengths.join(", ")),
        ),
    }
}

fn of_box(name: &str, made: &CoreBox) -> Said {
    let size = |half: usize| {
        let [low, high] = made.halves[half].bounds();
        sub(high, low).map(|side| format!("{side:.0}")).join(" x ") + " mm"
    };
    let id = match made.is_stepped {
        true => "core-box-stepped",
        false => "core-box-halves",
    };
    Said::new(id)
        .with("name", name)
        .with("lower", size(0))
        .with("upper", size(1))
        .with("open", made.open_sides)
}

fn of_slides(name: &str, slides: &[Slide]) -> Said {
    let ways: Vec<String> = slides.iter().map(|slide| way_text(slide.way)).collect();
    Said::new("core-box-slides")
        .with("name", name)
        .with("count", slides.len())
        .with("ways", ways.join("; "))
}

fn of_vent(name: &str, vent: &Vent) -> Said {
    let id = match vent.is_straight {
        true => "core-vent-straight",
        false => "core-vent-bent",
    };
    Said::new(id)
        .with("name", name)
        .with("length", format!("{:.0} mm", vent.length_mm))
        .with("across", format!("{:.1} mm", thickest_mm(vent)))
}

/// Thickest vent: it takes a quarter of the width of a core, and no more than lets all gas of a
/// hand core out (both common practice, no source).
fn thickest_mm(vent: &Vent) -> f64 {
    (vent.clear_mm / 2.0).min(6.0)
}

fn of_left(hollow: &Trapped) -> Line {
    let words = Said::new("core-left")
        .with("volume", cm3(hollow.volume_mm3))
        .with("place", place(hollow.centre_mm))
        .with("remedy", Said::new(remedy(hollow.advice.remedy)))
        .with("why", Said::new(why(hollow.advice.why)));
    caution(words)
}

fn remedy(remedy: Remedy) -> &'static str {
    match remedy {
        Remedy::LoosePiece => "remedy-loose-piece",
        Remedy::Core => "remedy-core",
        Remedy::Drawback => "remedy-drawback",
        Remedy::TurnThePart => "remedy-turn",
    }
}

fn why(why: Why) -> &'static str {
    match why {
        Why::OpensSideways => "hollow-opens-sideways",
        Why::OpensSidewaysLong => "hollow-opens-long",
        Why::DeeperThanHigh => "hollow-deeper-than-high",
        Why::RunsThrough => "hollow-runs-through",
        Why::NoSingleMove => "hollow-no-single-move",
        Why::Closed => "hollow-closed",
        Why::ClearWhenTurned => "hollow-clear-when-turned",
    }
}

fn cm3(mm3: f64) -> String {
    format!("{} cm³", rounded(mm3 / 1000.0, 3))
}

fn grams(kg: f64) -> String {
    match kg < 1.0 {
        true => format!("{} g", rounded(kg * 1000.0, 3)),
        false => format!("{} kg", rounded(kg, 3)),
    }
}

fn mm(length: Length) -> String {
    format!("{:.0} mm", length.as_mm())
}

/// A place to the millimetre, nought without a sign.
pub(crate) fn place(place: Vector) -> String {
    place
        .map(|along| format!("{:.0}", along.round() + 0.0))
        .join(", ")
        + " mm"
}
