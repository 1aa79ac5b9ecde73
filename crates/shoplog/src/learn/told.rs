//! Lessons in words: what is believed now, what was before, on what it rests, how to accept it.

use bench::told::{Figure, Told, Value};
use job::amount::Amount;
use job::words::said::Said;
use measure::band::Band;
use measure::matter::Pressure;
use measure::text::rounded;

use crate::learn::accepted::{CONTACT, has_key, name};
use crate::learn::apart::Apart;
use crate::learn::{FEWEST, HOLDS, Lesson, Of, Scale};

/// Tells every lesson.
pub fn told(lessons: &[Lesson]) -> Told {
    let mut told = Told::new(Said::new("log-learn-head"));
    for lesson in lessons {
        told.figures.push(figure(lesson));
    }
    if lessons.is_empty() {
        told.note(Said::new("log-learn-nothing"));
        return told;
    }
    for lesson in lessons
        .iter()
        .filter(|lesson| lesson.suggests() && has_key(&lesson.of))
    {
        let words = Said::new("log-learn-accept").with("label", label(&lesson.of));
        told.step(words.with("name", name(&lesson.of)));
    }
    if lessons.iter().any(|lesson| lesson.rests_on.len() < FEWEST) {
        told.note(Said::new("log-learn-few").with("count", FEWEST.to_string()));
    }
    let share = format!("{} %", rounded(HOLDS * 100.0, 3));
    told.note(Said::new("log-learn-holds").with("share", share));
    told
}

/// Tells what timed castings teach of sand and contact.
pub fn apart_told(told: &mut Told, apart: &Apart) {
    let rests = apart.rests_on.iter().map(ToString::to_string);
    let rests = rests.collect::<Vec<_>>().join(", ");
    let beside = Said::new("log-learn-pours").with("numbers", rests);
    for (id, [low, likely, high]) in [
        ("log-apart-sand", apart.sand.ends),
        ("log-apart-contact", apart.contact),
    ] {
        let mut figure = Figure::new(id, Value::Number(Band::new(low, likely, high)));
        figure.beside = Some(beside.clone());
        told.figures.push(figure);
    }
    let mm = |mm: f64| format!("{} mm", rounded(mm, 2));
    let [thin, thick] = apart.moduli_mm.map(mm);
    let id = match apart.told {
        true => "log-apart-told",
        false => "log-apart-not-told",
    };
    let said = Said::new(id).with("thin", thin).with("thick", thick);
    let said = said.with("wanted", mm(apart.thin_mm));
    if !apart.told {
        told.caution(said);
        return;
    }
    told.note(said);
    let label = Said::new("log-apart-contact");
    told.step(
        Said::new("log-learn-accept")
            .with("label", label)
            .with("name", CONTACT),
    );
}

/// A lesson's figure, with what was believed before and the entries it rests on.
fn figure(lesson: &Lesson) -> Figure {
    let [low, likely, high] = lesson.now();
    let (value, id) = match lesson.scale {
        Scale::Percent => {
            let share = Band::new(low / 100.0, likely / 100.0, high / 100.0);
            (Value::Amount(Amount::Share(share)), "log-learn-percent")
        }
        Scale::Factor => (
            Value::Number(Band::new(low, likely, high)),
            "log-learn-factor",
        ),
        Scale::Kilopascal => {
            let band = [low, likely, high].map(Pressure::from_kpa);
            let band = Band::new(band[0], band[1], band[2]);
            (Value::Amount(Amount::Pressure(band)), "log-learn-pressure")
        }
    };
    let mut figure = Figure::new(id, value);
    figure.label = Some(label(&lesson.of));
    let [was_low, _, was_high] = lesson.was();
    let unit = match lesson.scale {
        Scale::Percent => " %",
        Scale::Factor => "",
        Scale::Kilopascal => " kPa",
    };
    let end = |end: f64| format!("{}{unit}", rounded(end, 3));
    let beside = Said::new("log-learn-before")
        .with("low", end(was_low))
        .with("high", end(was_high));
    figure.beside = Some(beside.with("rests", rests_on(lesson)));
    figure
}

/// The entries that a lesson rests on.
pub(super) fn rests_on(lesson: &Lesson) -> Said {
    let entries = lesson.rests_on.iter().map(ToString::to_string);
    let rests = match &lesson.of {
        Of::Contraction { .. } => "log-learn-castings",
        Of::Loss { .. } | Of::Efficiency => "log-learn-heats",
        Of::Freezing | Of::Filling => "log-learn-pours",
        Of::Drying => "log-learn-batches",
        Of::Strength => "log-learn-tests",
    };
    Said::new(rests).with("numbers", entries.collect::<Vec<_>>().join(", "))
}

/// What a lesson is of, in words.
pub fn label(of: &Of) -> Said {
    match of {
        Of::Contraction { alloy, along } => {
            let along = along.as_deref().map_or_else(
                || Said::new("log-learn-all-ways"),
                |along| Said::new("log-learn-along").with("along", along),
            );
            let said = Said::new("log-learn-contraction").with("alloy", alloy.as_str());
            said.with("along", along)
        }
        Of::Loss { alloy } => Said::new("log-learn-loss").with("alloy", alloy.as_str()),
        Of::Freezing => Said::new("log-learn-freezing"),
        Of::Drying => Said::new("log-learn-drying"),
        Of::Efficiency => Said::new("log-learn-efficiency"),
        Of::Filling => Said::new("log-learn-filling"),
        Of::Strength => Said::new("log-learn-strength"),
    }
}
