//! What a freezing hints at, in words and for its object: what is worth turning, how often a
//! casting is short of metal, and where a cold part pulls at a hot one.

use measure::text::rounded;
use metal::alloy::Caution;
use pour::held::Held;
use pour::levers::{Lacks, Levers, Turn, TurnedTo};
use serde::Serialize;

use crate::freezing::JobFrozen;
use crate::freezing_told::{celsius, cm3, place};
use crate::mould_told::piece;
use crate::solved::LEAST_LACKING_MM3;
use crate::words::said::Said;

/// All hints.
pub(crate) fn hints(frozen: &JobFrozen) -> Vec<Said> {
    let levers = &frozen.freeze.levers;
    let held = worst_held(frozen).map(|held| pulled(frozen, held));
    let mut hints = vec![short_of_metal(levers)];
    hints.extend(lever(frozen, levers));
    hints.extend(held);
    hints
}

/// How often a hollow comes to more than is worth telling.
fn short_of_metal(levers: &Levers) -> Said {
    let tens = (10.0 * levers.short_share(LEAST_LACKING_MM3)).round();
    let said = match tens {
        0.0 => Said::new("freeze-short-never"),
        10.0 => Said::new("freeze-short-always"),
        _ => Said::new("freeze-short-tens").with("tens", format!("{tens:.0}")),
    };
    said.with("least", cm3(LEAST_LACKING_MM3))
}

/// What is worth turning, where castings lack anything worth telling.
fn lever(frozen: &JobFrozen, levers: &Levers) -> Option<Said> {
    let lacks_mm3 = levers.likely.all_mm3();
    if lacks_mm3 < LEAST_LACKING_MM3 {
        return None;
    }
    let said = match levers.best(LEAST_LACKING_MM3) {
        None => Said::new("freeze-lever-none"),
        Some(best) => {
            let said = Said::new(lever_id(&best)).with("to", cm3(best.lacks.all_mm3()));
            match best.turn {
                Turn::Pour => {
                    let off_k = frozen.from.start_off_k[usize::from(best.is_high)];
                    said.with("celsius", celsius(frozen.from.pouring.as_celsius() + off_k))
                }
                Turn::Sand | Turn::Contact => said,
            }
        }
    };
    Some(said.with("from", cm3(lacks_mm3)))
}

fn lever_id(best: &TurnedTo) -> &'static str {
    match (best.turn, best.is_high) {
        (Turn::Pour, true) => "freeze-lever-hotter",
        (Turn::Pour, false) => "freeze-lever-colder",
        (Turn::Sand, true) => "freeze-lever-thirsty",
        (Turn::Sand, false) => "freeze-lever-slack",
        (Turn::Contact, true) => "freeze-lever-bare",
        (Turn::Contact, false) => "freeze-lever-dressed",
    }
}

/// Least by which a cold part has to be colder than the last place to be told, K: less is what any
/// casting does on its way.
const LEAST_SPREAD_K: f64 = 50.0;

/// The casting with the coldest part while its last place is just solid.
fn worst_held(frozen: &JobFrozen) -> Option<&Held> {
    let held = frozen
        .opening
        .iter()
        .flat_map(|opening| &opening.cooled.held);
    let held = held.filter(|held| held.spread_k() >= LEAST_SPREAD_K);
    held.max_by(|one, other| one.spread_k().total_cmp(&other.spread_k()))
}

/// Room temperature that contraction is counted to, °C.
const COLD_C: f64 = 20.0;

fn pulled(frozen: &JobFrozen, held: &Held) -> Said {
    let alloy = frozen.alloy;
    let solidus_c = alloy.solidus.band.likely().as_celsius();
    let share = (solidus_c - held.coldest_c) / (solidus_c - COLD_C);
    let shrunk = alloy.contraction_band().map(|band| band.likely() * share);
    let tears = alloy.cautions.contains(&Caution::TearsHot);
    let id = match tears {
        true => "freeze-held-tears",
        false => "freeze-held",
    };
    Said::new(id)
        .with("piece", piece(&held.piece))
        .with("last", place(held.hottest_mm))
        .with("cold", place(held.coldest_mm))
        .with("celsius", celsius(held.coldest_c))
        .with(
            "shrunk",
            shrunk.map_or("?".to_owned(), |share| {
                format!("{} %", rounded(share * 100.0, 1))
            }),
        )
}

/// What pour temperature, sand and contact change in what castings lack.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct LeversFile {
    /// Hollows and pores as is likely; pairs everywhere.
    pub likely_mm3: [f64; 2],
    /// Poured at the low and at the high end of the band.
    pub pour_mm3: [[f64; 2]; 2],
    /// In sand that drinks heat less hard, and harder.
    pub sand_mm3: [[f64; 2]; 2],
    /// With the worse contact, and the better.
    pub contact_mm3: [[f64; 2]; 2],
    /// How often hollows come to something worth telling, as a share.
    pub short_share: f64,
}

pub(crate) fn levers_file(levers: &Levers) -> LeversFile {
    let both = |lacks: Lacks| [lacks.hollows_mm3, lacks.pores_mm3];
    let of = |turn: Turn| {
        [false, true].map(|is_high| {
            let is_it = |end: &&TurnedTo| end.turn == turn && end.is_high == is_high;
            let end = levers.turned.iter().find(is_it);
            both(end.map_or(levers.likely, |end| end.lacks))
        })
    };
    LeversFile {
        likely_mm3: both(levers.likely),
        pour_mm3: of(Turn::Pour),
        sand_mm3: of(Turn::Sand),
        contact_mm3: of(Turn::Contact),
        short_share: levers.short_share(LEAST_LACKING_MM3),
    }
}

/// A casting as its last place is just solid.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct HeldFile {
    /// Which.
    pub piece: String,
    /// When, s.
    pub time_s: f64,
    /// Its hottest place, mm.
    pub hottest_mm: [f64; 3],
    /// How hot, °C.
    pub hottest_c: f64,
    /// Its coldest place, mm.
    pub coldest_mm: [f64; 3],
    /// How hot, °C.
    pub coldest_c: f64,
}

pub(crate) fn held_file(held: &Held) -> HeldFile {
    HeldFile {
        piece: held.piece.to_string(),
        time_s: held.time_s,
        hottest_mm: held.hottest_mm,
        hottest_c: held.hottest_c,
        coldest_mm: held.coldest_mm,
        coldest_c: held.coldest_c,
    }
}
