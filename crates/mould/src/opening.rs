//! When the mould may be opened: three marks on the clock, each on the late side.
//!
//! Opened too early, the metal is liquid inside and burns, or it is red and cracks; sand and steam
//! scald. Left longer nothing is lost but time.

use std::sync::LazyLock;

use measure::flow::Duration;
use measure::heat::{SpecificHeat, Temperature};
use measure::length::Length;
use measure::matter::Density;
use measure::source::Law;
use measure::text::Typed;
use serde::Deserialize;

use crate::cooling::{Cooling, Poured, cooling};
use crate::freezing::SAND_AT_REST;

/// When the casting has fallen below a temperature in its sand.
pub const MARKS: Law = Law {
    name: "mould::opening::marks",
    formula: "t where T falls below T_mark: ρ M (L + c ΔT + c_s (T_s − T)) = what sand with b draws",
    range: "as much sand as the flask holds round a ball of the same surface, air beyond it; every \
            time on the late side; schools wait one to two hours",
    sources: &[
        "carslaw-jaeger-1959",
        "school-cooling-page",
        "foundry-handbooks-iron",
    ],
};

/// How long a casting taken out at a temperature still burns the hand.
pub const COOLING_IN_AIR: Law = Law {
    name: "mould::opening::cooling_in_air",
    formula: "t = (ρ c M / h) ln((T − 20 °C) / (T_hand − 20 °C)), h = 10 W/m²K",
    range: "laid out singly in still air on dry sand; never in water",
    sources: &["common-practice"],
};

/// Temperatures of one family of metals.
#[derive(Clone, Debug, PartialEq)]
pub struct OpeningRow {
    /// The family: "aluminium", "iron".
    pub name: String,
    /// Below this it bears its own weight and being moved.
    pub leave: Temperature,
    /// Below this it may be laid open.
    pub open: Temperature,
    /// The same where thick and thin sections hang together and may crack each other.
    pub uneven: Option<Temperature>,
    /// Key of the source.
    pub source: String,
}

/// How many times heavier the heaviest section of an uneven casting is than its thinnest: twice the
/// freezing time (common practice, no source).
pub const UNEVEN: f64 = 1.5;

impl OpeningRow {
    /// The row for a casting whose sections differ: opened colder where that keeps it whole.
    pub fn for_uneven(&self) -> OpeningRow {
        OpeningRow {
            open: self.uneven.unwrap_or(self.open),
            ..self.clone()
        }
    }
}

/// The three marks, each reckoned from the end of the pour.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Marks {
    /// Until then neither move the mould nor lift a weight off it.
    pub leave: Duration,
    /// From then on it may be opened, with tongs and gloves.
    pub open: Duration,
    /// From then on it may be taken in the bare hand, left in its sand until then.
    pub handle: Duration,
}

/// What bare metal may have in the hand: at 51 °C skin burns within a minute (ISO 13732-1, from
/// memory).
pub const HAND: Temperature = Temperature::from_celsius(50.0);

/// Oil in the sand flares when air reaches it hot: it is not opened in the same hour (common
/// practice, no source).
pub const OIL_WAITS: Duration = Duration::from_min(60.0);

impl Marks {
    /// The marks in sand that is bonded with oil.
    pub fn in_oil_sand(self) -> Marks {
        let open = self.open.max(OIL_WAITS);
        Marks {
            open,
            handle: self.handle.max(open),
            ..self
        }
    }
}

/// Every family of the table.
pub fn opening_rows() -> &'static [OpeningRow] {
    &ROWS
}

/// The row of a family.
pub fn opening_row(family: &str) -> Option<&'static OpeningRow> {
    ROWS.iter().find(|row| row.name == family)
}

/// The three marks, or nothing where it is not cold in a fortnight. Law: [`MARKS`].
pub fn marks(poured: &Poured, row: &OpeningRow) -> Option<Marks> {
    marks_of(&cooling(poured, HAND), row)
}

/// The three marks on a cooling that has been followed.
pub fn marks_of(cooling: &Cooling, row: &OpeningRow) -> Option<Marks> {
    let leave = cooling.below(row.leave)?.max(cooling.frozen?);
    let open = cooling.below(row.open)?.max(leave);
    Some(Marks {
        leave,
        open,
        handle: cooling.below(HAND)?.max(open),
    })
}

/// How long it still burns the hand once it lies in the air. Law: [`COOLING_IN_AIR`].
pub fn cooling_in_air(
    modulus: Length,
    density: Density,
    heat: SpecificHeat,
    from: Temperature,
) -> Duration {
    let stores = density.as_kg_per_m3() * heat.as_j_per_kg_k() * modulus.as_m();
    let ratio = (from - SAND_AT_REST).as_kelvin() / (HAND - SAND_AT_REST).as_kelvin();
    Duration::from_s(stores / AIR_W_PER_M2_K * ratio.ln().max(0.0))
}

/// Still air and radiation on bare metal, W/m²K: the low end (common practice, no source).
const AIR_W_PER_M2_K: f64 = 10.0;

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Row {
    name: String,
    leave: Typed<Temperature>,
    open: Typed<Temperature>,
    uneven: Option<Typed<Temperature>>,
    source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Table {
    metal: Vec<Row>,
}

static ROWS: LazyLock<Vec<OpeningRow>> = LazyLock::new(|| {
    let table: Result<Table, _> = toml::from_str(include_str!("../data/opening.toml"));
    let rows = table.map(|table| table.metal).unwrap_or_default();
    rows.into_iter().map(Row::meant).collect()
});

impl Row {
    fn meant(self) -> OpeningRow {
        OpeningRow {
            name: self.name,
            leave: self.leave.value,
            open: self.open.value,
            uneven: self.uneven.map(|typed| typed.value),
            source: self.source,
        }
    }
}
