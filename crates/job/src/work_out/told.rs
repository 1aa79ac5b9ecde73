//! What goes into a law, in two texts: as the law is asked with it again, and as people read it.

use measure::band::Band;
use measure::matter::Force;
use measure::text::{System, Written, rounded, show, show_in, unit_named};

/// What goes into a law.
pub(super) struct Told {
    /// To eight figures, as the law can be asked with it.
    pub(super) asked: String,
    /// Rounded for people.
    pub(super) shown: String,
}

/// Figures of what a law is asked with: enough that nothing is lost by asking again.
const ASKED_FIGURES: u32 = 8;

/// A quantity with its band.
pub(super) fn band<Q: Written>(band: &Band<Q>) -> Told {
    Told {
        asked: asked(band),
        shown: band_text(band),
    }
}

/// A quantity without a band.
pub(super) fn exact<Q: Written>(quantity: Q) -> Told {
    band(&Band::exact(quantity))
}

/// Quantities of one kind.
pub(super) fn list<Q: Written>(quantities: &[Q]) -> Told {
    let each = |text: fn(Q) -> String| {
        let texts: Vec<_> = quantities.iter().map(|quantity| text(*quantity)).collect();
        texts.join(", ")
    };
    Told {
        asked: each(|quantity| asked(&Band::exact(quantity))),
        shown: each(text),
    }
}

/// A share of something, 0.01 for a per cent.
pub(super) fn share(band: &Band<f64>) -> Told {
    let per_cent = band.map(|share| share * 100.0);
    let shown = number(&per_cent).shown;
    Told {
        asked: joined(in_figures(&per_cent, ASKED_FIGURES), "%"),
        shown: format!("{shown} %"),
    }
}

/// A number without a unit.
pub(super) fn number(band: &Band<f64>) -> Told {
    let [low, likely, high] = in_figures(band, 3);
    Told {
        asked: joined(in_figures(band, ASKED_FIGURES), ""),
        shown: match low == high {
            true => likely,
            false => format!("{likely} ({low} to {high})"),
        },
    }
}

/// Numbers without a unit.
pub(super) fn numbers(all: &[f64]) -> Told {
    let each = |figures| {
        let texts: Vec<_> = all.iter().map(|one| rounded(*one, figures)).collect();
        texts.join(", ")
    };
    Told {
        asked: each(ASKED_FIGURES),
        shown: each(3),
    }
}

/// A force with its band, which people read as what would hold it.
pub(super) fn force(lift: &Band<Force>) -> Told {
    Told {
        asked: asked(lift),
        shown: band_text(&lift.map(Force::held_by))
            .replace(" kg", " kgf")
            .replace(" g", " gf"),
    }
}

/// A word: a metal, a choice.
pub(super) fn word(word: &str) -> Told {
    Told {
        asked: word.to_owned(),
        shown: word.to_owned(),
    }
}

/// A quantity rounded for people.
pub(super) fn text<Q: Written>(quantity: Q) -> String {
    show(quantity, System::Metric).unwrap_or_default()
}

/// A band rounded for people, the likely value first.
pub(super) fn band_text<Q: Written>(band: &Band<Q>) -> String {
    let [low, likely, high] = [band.low(), band.likely(), band.high()].map(text);
    if low == high {
        return likely;
    }
    let unit = |text: &str| text.rsplit_once(' ').map(|(_, unit)| unit.to_owned());
    match low.rsplit_once(' ') {
        Some((number, own)) if unit(&high).as_deref() == Some(own) => {
            format!("{likely} ({number} to {high})")
        }
        _ => format!("{likely} ({low} to {high})"),
    }
}

/// A band in the unit that suits its likely value, as a range is typed.
fn asked<Q: Written>(band: &Band<Q>) -> String {
    let suits = text(band.likely());
    let unit = suits.rsplit_once(' ').map_or("", |(_, unit)| unit);
    let Some(unit) = unit_named::<Q>(unit) else {
        return suits;
    };
    let ends = [band.low(), band.likely(), band.high()];
    let numbers = ends.map(|end| {
        let text = show_in(end, unit, ASKED_FIGURES);
        text.strip_suffix(unit.words[0])
            .map_or(text.clone(), |number| number.trim_end().to_owned())
    });
    joined(numbers, unit.words[0])
}

fn in_figures(band: &Band<f64>, figures: u32) -> [String; 3] {
    [band.low(), band.likely(), band.high()].map(|end| rounded(end, figures))
}

/// `4 kg`, or `4 to 6 kg, likely 4.5 kg`.
fn joined([low, likely, high]: [String; 3], unit: &str) -> String {
    let with_unit = |number: &str| format!("{number} {unit}").trim_end().to_owned();
    match low == high {
        true => with_unit(&likely),
        false => format!(
            "{low} to {}, likely {}",
            with_unit(&high),
            with_unit(&likely)
        ),
    }
}
