//! The solids of a mould and what was noticed about them, for any language.

use measure::text::rounded;
use rigging::fact::{Fact, Side};
use rigging::mould::Mould;
use rigging::piece::{Piece, Solid};

use crate::remark::Level;
use crate::words::said::Said;

/// A fact with how much it weighs.
#[derive(Clone, Debug, PartialEq)]
pub struct Noticed {
    /// How much it weighs.
    pub level: Level,
    /// What it is, where, and what to do.
    pub words: Said,
}

/// The name of a piece.
pub fn piece(piece: &Piece) -> Said {
    let numbered =
        |id: &'static str, number: &usize| Said::new(id).with("number", number.to_string());
    match piece {
        Piece::Casting(number) => numbered("piece-casting", number),
        Piece::Basin => Said::new("piece-basin"),
        Piece::Sprue => Said::new("piece-sprue"),
        Piece::Well => Said::new("piece-well"),
        Piece::Runner(number) => numbered("piece-runner", number),
        Piece::Gate(number) => numbered("piece-gate", number),
        Piece::Feeder(number) => numbered("piece-feeder", number),
        Piece::Vents => Said::new("piece-vents"),
        Piece::Core(name) => Said::new("piece-core").with("name", name.as_str()),
        Piece::Cavity => Said::new("piece-cavity"),
        Piece::Cope => Said::new("piece-cope"),
        Piece::Drag => Said::new("piece-drag"),
    }
}

/// Volume and mass of a solid as they are shown; a vent weighs nothing.
pub fn held(solid: &Solid) -> [String; 2] {
    let volume = format!("{} cm³", rounded(solid.volume.as_cm3(), 4));
    let kg = solid.mass.as_kg();
    let mass = match kg {
        kg if kg <= 0.0 => String::new(),
        kg if kg < 1.0 => format!("{} g", rounded(kg * 1000.0, 3)),
        kg => format!("{} kg", rounded(kg, 4)),
    };
    [volume, mass]
}

/// How well the parts fill the flask.
pub fn fills(mould: &Mould) -> Said {
    let off = format!("{:.4} %", mould.off_by.abs() * 100.0);
    Said::new("mould-fills").with("off", off)
}

/// Whether the joint is flat, or how far it wanders and how steeply.
pub fn joint(mould: &Mould) -> Said {
    let Some(wandering) = &mould.joint else {
        return Said::new("mould-joint-flat");
    };
    let joint = &wandering.joint;
    let mm = |length: f64| format!("{length:.1} mm");
    let [low, high] = joint.shown_mm;
    let [x, y, z] = joint.steepest_at_mm;
    let degrees = joint.steepest.atan().to_degrees();
    Said::new("mould-joint-wanders")
        .with("below", mm(-low))
        .with("above", mm(high))
        .with("slope", format!("{degrees:.0}°"))
        .with("place", format!("{x:.0}, {y:.0}, {z:.0} mm"))
}

/// What was noticed, in its order, the weightier first.
pub fn noticed(mould: &Mould) -> Vec<Noticed> {
    let mut all: Vec<Noticed> = mould.facts.iter().map(of_fact).collect();
    if mould.off_by.abs() > MOST_OFF {
        let words = Said::new("mould-off").with("off", format!("{:.2} %", mould.off_by * 100.0));
        let level = Level::Caution;
        all.push(Noticed { level, words });
    }
    all.sort_by_key(|noticed| noticed.level);
    all
}

/// Gap or overlap between the parts of a mould, as a share of the flask, above which something is
/// wrong with the blocks of sand or with a skin: rounding stays far below.
const MOST_OFF: f64 = 0.001;

/// The table of the job file in which places are wanted otherwise; the same in every language.
const PLACE_KEY: &str = "[mould.place]";

/// A fact in words.
pub fn of_fact(fact: &Fact) -> Noticed {
    let level = match fact {
        Fact::ShortRunOff { .. }
        | Fact::LowFeeder { .. }
        | Fact::FlatElsewhere { .. }
        | Fact::CoreNotDrawn { .. } => Level::Note,
        _ => Level::Caution,
    };
    Noticed {
        level,
        words: words(fact),
    }
}

fn words(fact: &Fact) -> Said {
    let mm = |length: f64| format!("{length:.0} mm");
    let on_joint = |[x, y]: &[f64; 2]| format!("{x:.0}, {y:.0} mm");
    match fact {
        Fact::ThinWall {
            piece: of,
            side,
            sand_mm,
            wanted_mm,
        } => Said::new("mould-thin-wall")
            .with("piece", piece(of))
            .with("side", side_of(*side))
            .with("sand", mm(*sand_mm))
            .with("wanted", mm(*wanted_mm)),
        Fact::LongPrint {
            piece: of,
            through_mm,
            longest_mm,
        } => match longest_mm {
            Some(longest_mm) => {
                Said::new("mould-long-print").with("write", format!("{longest_mm:.0} mm"))
            }
            None => Said::new("mould-no-print"),
        }
        .with("piece", piece(of))
        .with("through", mm(*through_mm)),
        Fact::ThinSand {
            piece: of,
            other,
            place_mm,
            sand_mm,
            wanted_mm,
        } => Said::new("mould-thin-sand")
            .with("piece", piece(of))
            .with("other", piece(other))
            .with("place", on_joint(place_mm))
            .with("sand", mm(*sand_mm))
            .with("wanted", mm(*wanted_mm)),
        Fact::Touch {
            piece: of,
            other,
            shared_mm3,
        } => Said::new("mould-touch")
            .with("piece", piece(of))
            .with("other", piece(other))
            .with("shared", format!("{} cm³", rounded(shared_mm3 / 1000.0, 2)))
            .with("key", PLACE_KEY),
        Fact::Apart {
            piece: of,
            other,
            place_mm,
        } => Said::new("mould-apart")
            .with("piece", piece(of))
            .with("other", piece(other))
            .with("place", on_joint(place_mm))
            .with("key", PLACE_KEY),
        Fact::Hooks {
            piece: of,
            place_mm: [x, y, z],
        } => Said::new("mould-hooks")
            .with("piece", piece(of))
            .with("place", format!("{x:.0}, {y:.0}, {z:.0} mm")),
        Fact::NoGate { casting } => Said::new("mould-no-gate")
            .with("piece", piece(&Piece::Casting(*casting)))
            .with("key", PLACE_KEY),
        Fact::ShortRunOff {
            piece: of,
            missing_mm,
        } => Said::new("mould-short-run-off")
            .with("piece", piece(of))
            .with("missing", mm(*missing_mm)),
        Fact::LowFeeder {
            piece: of,
            missing_mm,
        } => Said::new("mould-low-feeder")
            .with("piece", piece(of))
            .with("missing", mm(*missing_mm)),
        Fact::FlatElsewhere { joint_mm } => {
            Said::new("mould-flat-elsewhere").with("joint", format!("joint = \"{joint_mm:.1} mm\""))
        }
        Fact::CoreNotDrawn { name } => {
            Said::new("mould-core-not-drawn").with("name", name.as_str())
        }
    }
}

fn side_of(side: Side) -> Said {
    Said::new(match side {
        Side::Wall => "side-wall",
        Side::Top => "side-top",
        Side::Bottom => "side-bottom",
    })
}
