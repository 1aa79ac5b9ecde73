//! `heap.toml`: what a heap was when its book began, and every pour since.

use measure::matter::Mass;
use measure::text::{Typed, rounded};
use sand::heap::balance::{Pour, Renewal};
use sand::heap::holds::{Bounds, Heap};
use serde::Deserialize;

use crate::given::{GivenError, moisture, percent};
use crate::trouble::{BenchError, Refused};

/// Name of the file in the shop's folder.
pub const HEAP_FILE: &str = "heap.toml";

/// The commented file that a new heap starts with.
pub const STARTER: &str = include_str!("../../data/heap.toml");

/// A heap's book as typed.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct HeapFile {
    /// What it is called.
    pub name: String,
    /// As it lay when the book began.
    pub mass: Typed<Mass>,
    /// Its moisture then, "4.5 % of wet mass".
    pub moisture: String,
    /// The clay that binds it.
    pub clay: ClayKind,
    /// What it held beside sand, per cent of the dry heap.
    #[serde(default)]
    pub holds: HoldsRecord,
    /// What it is not to pass, per cent of the dry heap.
    #[serde(default)]
    pub bounds: BoundsRecord,
    /// The pours, in order.
    #[serde(default)]
    pub pour: Vec<PourRecord>,
}

/// A clay, by when it dies.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum ClayKind {
    /// Dead above some 600 °C.
    SodiumBentonite,
    /// Begins to die at 320 to 450 °C.
    CalciumBentonite,
    /// Fireclay and clay as it was dug, taken as dead above some 500 to 600 °C.
    Other,
}

/// What a heap holds beside sand.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct HoldsRecord {
    /// Clay that binds.
    pub live_clay: Option<String>,
    /// Clay that was burnt.
    pub dead_clay: Option<String>,
    /// Sugar, flour, oil, without water.
    pub organic: Option<String>,
    /// What burnt binder leaves.
    pub ash: Option<String>,
    /// Grains of cores.
    pub core_sand: Option<String>,
    /// Parting dust.
    pub parting: Option<String>,
    /// Silt and broken grains.
    pub fines: Option<String>,
}

/// What a heap is not to pass.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BoundsRecord {
    /// Least live clay.
    pub live_clay: Option<String>,
    /// Most of what neither binds nor is grain.
    pub dead: Option<String>,
    /// Most unburnt binder.
    pub organic: Option<String>,
}

/// One pour and what was done after it.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PourRecord {
    /// The day.
    pub day: String,
    /// Part of the heap hotter than its clay bears.
    pub clay_burnt: String,
    /// Part of the heap hotter than its binder bears.
    pub organic_burnt: String,
    /// Part of the heap dried out.
    pub dried: String,
    /// Grains of cores that fell in.
    pub core_sand: Option<Typed<Mass>>,
    /// Unburnt binder on them.
    pub core_binder: Option<Typed<Mass>>,
    /// Parting dust used.
    pub parting: Option<Typed<Mass>>,
    /// Part of the burnt crust thrown out.
    pub crust_out: Option<String>,
    /// Part of the mixed heap thrown out.
    pub heap_out: Option<String>,
    /// New sand.
    pub sand: Option<Typed<Mass>>,
    /// New clay.
    pub clay: Option<Typed<Mass>>,
    /// New binder, without its water.
    pub organic: Option<Typed<Mass>>,
    /// Water, that of syrups with it.
    pub water: Option<Typed<Mass>>,
}

/// Bounds where the founder set none: live clay a quarter below the start; dead matter no more
/// than the fines of natural sands that still mould (`ado-natural-sands`, 13 %); unburnt binder no
/// more than the burning loss at which sands get gassy, 5 % from memory
/// (`shop-handbook-figures`).
const BOUNDS: (f64, f64, f64) = (0.75, 0.13, 0.05);

/// Part of burnt binder that stays as ash: that of sugar, the most of any
/// (`sand::heap::balance::ASH_OF_SUGAR`).
const ASH: f64 = sand::heap::balance::ASH_OF_SUGAR;

/// The heap as its book began.
///
/// # Errors
///
/// A per cent that is none, and parts that are more than the whole.
pub fn begun(file: &HeapFile) -> Result<Heap, BenchError> {
    let wet = moisture("moisture", &file.moisture)?;
    let water = file.mass.value * wet;
    let dry = file.mass.value - water;
    let holds = &file.holds;
    let part = |key: &str, text: &Option<String>| Ok::<_, GivenError>(dry * share(key, text)?);
    let mut heap = Heap {
        sand: Mass::ZERO,
        live_clay: part("live_clay", &holds.live_clay)?,
        dead_clay: part("dead_clay", &holds.dead_clay)?,
        organic: part("organic", &holds.organic)?,
        ash: part("ash", &holds.ash)?,
        core_sand: part("core_sand", &holds.core_sand)?,
        parting: part("parting", &holds.parting)?,
        fines: part("fines", &holds.fines)?,
        water,
    };
    let beside = heap.dry();
    if beside >= dry {
        let percent = beside / dry * 100.0;
        return Err(Refused::TooMuchOfTheHeap { percent }.into());
    }
    heap.sand = dry - beside;
    Ok(heap)
}

/// What the heap is not to pass.
///
/// # Errors
///
/// A per cent that is none.
pub fn bounds(file: &HeapFile) -> Result<Bounds, BenchError> {
    let start = begun(file)?;
    let own = |key: &str, text: &Option<String>, otherwise: f64| match text {
        Some(_) => share(key, text),
        None => Ok(otherwise),
    };
    let (kept, dead, organic) = BOUNDS;
    let live = start.live_clay / start.dry() * kept;
    Ok(Bounds {
        live_clay: own("bounds.live_clay", &file.bounds.live_clay, live)?,
        dead: own("bounds.dead", &file.bounds.dead, dead)?,
        organic: own("bounds.organic", &file.bounds.organic, organic)?,
    })
}

/// A pour and what was done after it.
///
/// # Errors
///
/// A per cent that is none.
pub fn meant(record: &PourRecord) -> Result<(Pour, Renewal), BenchError> {
    let mass = |typed: &Option<Typed<Mass>>| typed.as_ref().map_or(Mass::ZERO, |typed| typed.value);
    let some = |text: &str| Some(text.to_owned());
    let pour = Pour {
        clay_burnt: share("clay_burnt", &some(&record.clay_burnt))?,
        organic_burnt: share("organic_burnt", &some(&record.organic_burnt))?,
        dried: share("dried", &some(&record.dried))?,
        ash: ASH,
        broken: 0.0,
        core_sand: mass(&record.core_sand),
        core_binder: mass(&record.core_binder),
        parting: mass(&record.parting),
    };
    let renewal = Renewal {
        crust_out: share("crust_out", &record.crust_out)?,
        heap_out: share("heap_out", &record.heap_out)?,
        sand: mass(&record.sand),
        fines_of_sand: 0.0,
        clay: mass(&record.clay),
        organic: mass(&record.organic),
        water: mass(&record.water),
    };
    Ok((pour, renewal))
}

/// The book with one more pour behind its own text, which stays as it is.
pub fn entered(text: &str, day: &str, pour: &Pour, renewal: &Renewal) -> String {
    let mut lines = vec![
        String::new(),
        "[[pour]]".to_owned(),
        format!("day = {}", toml::Value::String(day.to_owned())),
        percent_line("clay_burnt", pour.clay_burnt),
        percent_line("organic_burnt", pour.organic_burnt),
        percent_line("dried", pour.dried),
    ];
    let masses = [
        ("core_sand", pour.core_sand),
        ("core_binder", pour.core_binder),
        ("parting", pour.parting),
        ("sand", renewal.sand),
        ("clay", renewal.clay),
        ("organic", renewal.organic),
        ("water", renewal.water),
    ];
    let given = masses.iter().filter(|(_, mass)| *mass > Mass::ZERO);
    lines.extend(given.map(|(key, mass)| format!("{key} = \"{} g\"", rounded(mass.as_g(), 6))));
    let parts = [
        ("crust_out", renewal.crust_out),
        ("heap_out", renewal.heap_out),
    ];
    let given = parts.iter().filter(|(_, share)| *share > 0.0);
    lines.extend(given.map(|(key, share)| percent_line(key, *share)));
    let gap = if text.ends_with('\n') { "" } else { "\n" };
    format!("{text}{gap}{}\n", lines.join("\n"))
}

fn percent_line(key: &str, share: f64) -> String {
    format!("{key} = \"{} %\"", rounded(share * 100.0, 6))
}

fn share(key: &str, text: &Option<String>) -> Result<f64, GivenError> {
    let Some(text) = text else {
        return Ok(0.0);
    };
    percent(text).ok_or_else(|| GivenError::NotThat {
        key: key.to_owned(),
        typed: text.clone(),
        what: "per cent between 0 and 100, like 6 %",
    })
}
