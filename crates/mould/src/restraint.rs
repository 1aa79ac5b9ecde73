//! Whether spokes will crack: the order in which a wheel freezes, and how far it can give.
//!
//! What freezes first is cold and strong while the rest still shrinks on to it. A curved spoke
//! bends, an odd spoke finds none straight opposite, a slender one pulls less. None of these alone
//! cures a wheel whose hub freezes minutes after its spokes.

use measure::length::Length;
use measure::source::Law;

/// How hard a wheel is held while it shrinks: for comparing two drawings of the same wheel.
pub const RESTRAINT: Law = Law {
    name: "mould::restraint::restraint",
    formula: "R = (1 − (M_first / M_last)²) cos(π/n) k_s k_r / ((k_s + k_r) k_0), the cosine for \
              odd n only",
    range: "stiffnesses k of a spoke, of the rim, and k_0 of a straight spoke as thick as the \
            rim; round, elastic; an index from 0 to 1, not a stress: lower pulls less",
    sources: &["roark-memory", "common-practice"],
};

/// A wheel.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wheel {
    /// Radius of the middle line of the rim.
    pub radius: Length,
    /// Thickness of the rim, taken as round.
    pub rim: Length,
    /// Thickness of the spokes, taken as round.
    pub spoke: Length,
    /// Length of a spoke between hub and rim.
    pub spoke_length: Length,
    /// How far a spoke bows out of the straight line; nought for a straight one.
    pub bow: Length,
    /// Number of spokes, two or more.
    pub spokes: u32,
    /// Moduli of hub, rim and spokes.
    pub moduli: WheelModuli,
}

/// Moduli of the parts of a wheel.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WheelModuli {
    /// Of the hub.
    pub hub: Length,
    /// Of the rim.
    pub rim: Length,
    /// Of the spokes.
    pub spokes: Length,
}

/// A part of a wheel.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WheelPart {
    /// The hub.
    Hub,
    /// The rim.
    Rim,
    /// The spokes.
    Spokes,
}

/// A change to the drawing, and the index it leaves.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Change {
    /// What is changed.
    pub change: WheelChange,
    /// The index after it.
    pub leaves: f64,
}

/// What may be changed on a wheel.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WheelChange {
    /// Bow each spoke by one and a half times its thickness.
    CurveSpokes,
    /// One spoke fewer or more, to an odd number.
    OddSpokes,
    /// Chill or lighten what freezes last to the modulus of the part next before it.
    ChillTheLast,
}

/// The parts in the order in which they freeze.
pub fn freezing_order(moduli: &WheelModuli) -> [WheelPart; 3] {
    let mut parts = [WheelPart::Spokes, WheelPart::Rim, WheelPart::Hub];
    parts.sort_by(|a, b| moduli.of(*a).as_m().total_cmp(&moduli.of(*b).as_m()));
    parts
}

/// The index. Law: [`RESTRAINT`].
pub fn restraint(wheel: &Wheel) -> f64 {
    let [first, _, last] = freezing_order(&wheel.moduli).map(|part| wheel.moduli.of(part));
    let lag = 1.0 - (first / last).powi(2);
    let (spoke, rim) = (spoke_stiffness(wheel), rim_stiffness(wheel));
    let stoutest = spoke_stiffness(&Wheel {
        spoke: wheel.rim,
        bow: Length::ZERO,
        ..*wheel
    });
    lag * straight_across(wheel.spokes) * spoke * rim / ((spoke + rim) * stoutest)
}

/// What each change would leave, the best first.
pub fn changes(wheel: &Wheel) -> Vec<Change> {
    let bow = wheel.bow.max(wheel.spoke * 1.5);
    let odd = if wheel.spokes.is_multiple_of(2) {
        wheel.spokes.saturating_sub(1).max(3)
    } else {
        wheel.spokes
    };
    let tried = [
        (WheelChange::CurveSpokes, Wheel { bow, ..*wheel }),
        (
            WheelChange::OddSpokes,
            Wheel {
                spokes: odd,
                ..*wheel
            },
        ),
        (WheelChange::ChillTheLast, chilled(wheel)),
    ];
    let mut changes: Vec<_> = tried
        .into_iter()
        .filter(|(_, changed)| changed != wheel)
        .map(|(change, changed)| Change {
            change,
            leaves: restraint(&changed),
        })
        .collect();
    changes.sort_by(|a, b| a.leaves.total_cmp(&b.leaves));
    changes
}

impl WheelModuli {
    /// The modulus of a part.
    pub fn of(&self, part: WheelPart) -> Length {
        match part {
            WheelPart::Hub => self.hub,
            WheelPart::Rim => self.rim,
            WheelPart::Spokes => self.spokes,
        }
    }
}

fn chilled(wheel: &Wheel) -> Wheel {
    let [_, middle, last] = freezing_order(&wheel.moduli);
    let to = wheel.moduli.of(middle);
    let mut moduli = wheel.moduli;
    match last {
        WheelPart::Hub => moduli.hub = to,
        WheelPart::Rim => moduli.rim = to,
        WheelPart::Spokes => moduli.spokes = to,
    }
    Wheel { moduli, ..*wheel }
}

/// A pull meets its opposite straight across where the number is even, at an angle where it is odd.
fn straight_across(spokes: u32) -> f64 {
    match spokes.is_multiple_of(2) {
        true => 1.0,
        false => (std::f64::consts::PI / f64::from(spokes)).cos(),
    }
}

/// Stiffness of a spoke along itself over Young's modulus, m: a bowed bar held at both ends bends
/// as well, by 4/45 (bow / radius of gyration)² of what a straight one stretches (`roark-memory`).
fn spoke_stiffness(wheel: &Wheel) -> f64 {
    let (thick, long) = (wheel.spoke.as_m(), wheel.spoke_length.as_m());
    let area = std::f64::consts::PI / 4.0 * thick * thick;
    let gyration = thick / 4.0;
    let bends = 4.0 / 45.0 * (wheel.bow.as_m() / gyration).powi(2);
    area / (long * (1.0 + bends))
}

/// Stiffness of the rim against a pull of every spoke over Young's modulus, m: a ring under equal
/// forces all round bends between them and shrinks as a whole (`roark-memory`).
fn rim_stiffness(wheel: &Wheel) -> f64 {
    let (radius, thick) = (wheel.radius.as_m(), wheel.rim.as_m());
    let area = std::f64::consts::PI / 4.0 * thick * thick;
    let inertia = area * thick * thick / 16.0;
    let half = std::f64::consts::PI / f64::from(wheel.spokes);
    let (sine, cosine) = half.sin_cos();
    let shape = (half + sine * cosine) / (2.0 * sine * sine) - 1.0 / half;
    let bends = radius.powi(3) / (2.0 * inertia) * shape;
    let shrinks = radius / (2.0 * half * area);
    1.0 / (bends + shrinks)
}
