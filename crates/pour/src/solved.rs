//! One mould in cells followed by the heat until all of its metal is solid.

use measure::band::Band;
use measure::heat::Temperature;
use metal::alloy::Alloy;
pub use solver::elsewhere::{Elsewhere, Ran};
pub use solver::kept::Kept;
use solver::kept::mark_of;
use solver::material::Material;
pub use solver::run::Standing;
use solver::run::{Balance, End, Progress, Wish, Work, solve_on};

use crate::case::{Filling, MouldCase, TO_AIR_W_M2K, mould_case};
use crate::cells::Stuff;
use crate::halves::low_side;
use crate::meshing::Meshed;
use crate::no_freeze::FreezeError;
use crate::pace::pace;
use crate::start::Start;
use crate::tables::{SandHeat, feeding_stops, metal_table};

/// What is poured into what.
#[derive(Clone, Debug)]
pub struct Poured<'a> {
    /// The alloy.
    pub alloy: &'a Alloy,
    /// How hot metal and sand are when the mould is full, on the cells that it is followed on; on
    /// the narrow ones where two grids are.
    pub start: Start,
    /// How much colder and how much hotter it may be poured, K: below nought, above nought.
    pub start_off_k: [f64; 2],
    /// The sand.
    pub sand: SandHeat,
    /// The slowest and the quickest that the sand may be, as times of how hard it drinks.
    pub sand_times: [f64; 2],
    /// The sand of cores.
    pub core: SandHeat,
    /// Contact between metal and sand, W/(m² K).
    pub contact_w_m2k: Band<f64>,
    /// Contact between metal and chills, W/(m² K); runs at its ends with that of the sand.
    pub chill_w_m2k: Band<f64>,
    /// Air and sand before the pour.
    pub air: Temperature,
    /// Where the heat is followed, if not on the processor.
    pub on: Option<&'a dyn Elsewhere>,
}

/// When the cells froze; one entry for each of the equal cells, not a number where there is no
/// metal.
#[derive(Clone, Debug)]
pub struct Solved {
    /// The mould in cells.
    pub meshed: Meshed,
    /// When the first of a cell was solid, s.
    pub begins_s: Vec<f32>,
    /// When it stopped to pass metal on, s.
    pub passes_s: Vec<f32>,
    /// Solid share at which it does.
    pub passing_share: f64,
    /// When all of it was solid, s.
    pub ends_s: Vec<f32>,
    /// Temperature gradient near the end of freezing, K/m.
    pub gradient_k_m: Vec<f32>,
    /// How fast it cooled then, K/s.
    pub cooling_k_s: Vec<f32>,
    /// When the last of all was solid, s.
    pub last_s: f64,
    /// Where the heat went.
    pub balance: Balance,
    /// What the run took.
    pub work: Work,
    /// What became of the wish to follow it elsewhere than on the processor.
    pub ran: Option<Ran>,
}

/// Follows one mould in cells to the end of its freezing.
pub fn solved(
    meshed: Meshed,
    poured: &Poured<'_>,
    filling: &Filling,
    go_on: &mut dyn FnMut(&Progress) -> bool,
) -> Result<Solved, FreezeError> {
    solved_from(meshed, poured, filling, &[], &mut |told, _| go_on(told))
}

/// Follows one mould in cells, from what was kept of an earlier run where one of them is of this
/// very mould. `go_on` is told of every step and may keep the run as it stands then.
pub fn solved_from(
    meshed: Meshed,
    poured: &Poured<'_>,
    filling: &Filling,
    kept: &[Kept],
    go_on: &mut dyn FnMut(&Progress, &Standing<'_>) -> bool,
) -> Result<Solved, FreezeError> {
    check(&meshed, poured, filling)?;
    let built = low_side(case_of(&meshed, poured, filling), &meshed);
    let pace = pace(&meshed, filling, poured.start.mean_c(&meshed));
    let wish = Wish {
        longest_step_s: Some(pace.step_s),
        passing_share: feeding_stops(poured.alloy.freezing),
        ..Wish::until(End::Solid {
            latest_s: pace.latest_s,
        })
    };
    let mark = mark_of(&built.case, &wish);
    let kept = kept.iter().find(|kept| kept.of == mark);
    let outcome = solve_on(poured.on, &built.case, &wish, kept, go_on)?;
    if outcome.unfrozen > 0 {
        return Err(FreezeError::NotFrozen {
            after_s: pace.latest_s,
            unfrozen: outcome.unfrozen,
        });
    }
    let spread = |of: &[f32]| spread(&meshed, &built, &outcome.freezing.cells, of);
    let freezing = &outcome.freezing;
    Ok(Solved {
        begins_s: spread(&freezing.begins_s),
        passes_s: spread(&freezing.passes_s),
        passing_share: wish.passing_share,
        ends_s: spread(&freezing.ends_s),
        gradient_k_m: spread(&freezing.gradient_k_m),
        cooling_k_s: spread(&freezing.cooling_k_s),
        last_s: freezing.last_s().unwrap_or(0.0),
        balance: outcome.balance,
        work: outcome.work,
        ran: outcome.ran,
        meshed,
    })
}

/// What is poured, with its start carried from the narrow cells to the wide ones.
pub fn carried_to<'a>(wide: &Meshed, poured: &Poured<'a>, narrow: &Meshed) -> Poured<'a> {
    Poured {
        start: poured.start.carried(narrow, wide, poured.air.as_celsius()),
        ..poured.clone()
    }
}

/// The filling of a mould with this contact and sand that drinks so many times as hard.
pub fn filling(poured: &Poured<'_>, contact_w_m2k: f64, sand_times: f64) -> Filling {
    Filling {
        metal: metal_table(poured.alloy, 1.0),
        sand: poured.sand.drinking_times(sand_times),
        core: poured.core.drinking_times(sand_times),
        contact_w_m2k,
        chill_w_m2k: chill_contact(poured, contact_w_m2k),
        air_c: poured.air.as_celsius(),
        to_air_w_m2k: TO_AIR_W_M2K,
    }
}

/// The contact of chills that goes with a contact of the sand.
fn chill_contact(poured: &Poured<'_>, contact_w_m2k: f64) -> f64 {
    let (sand, chill) = (&poured.contact_w_m2k, &poured.chill_w_m2k);
    match () {
        () if contact_w_m2k > sand.likely() => chill.high(),
        () if contact_w_m2k < sand.likely() => chill.low(),
        () => chill.likely(),
    }
}

/// The case of a mould in cells with its start.
pub fn case_of(meshed: &Meshed, poured: &Poured<'_>, filling: &Filling) -> MouldCase {
    mould_case(meshed, filling, &|cell| {
        poured.start.of_cell(&meshed.cells, cell, filling.air_c)
    })
}

/// The cells of metal.
pub fn metal_cells(meshed: &Meshed) -> impl Iterator<Item = usize> + '_ {
    (0..meshed.cells.stuff.len()).filter(|&cell| meshed.cells.stuff[cell] == Stuff::Metal)
}

fn check(meshed: &Meshed, poured: &Poured<'_>, filling: &Filling) -> Result<(), FreezeError> {
    if let Start::Each(each) = &poured.start {
        let (given, cells) = (each.len(), meshed.cells.stuff.len());
        if given != cells {
            return Err(FreezeError::Starts { given, cells });
        }
    }
    let start_c = poured.start.mean_c(meshed);
    let liquidus_c = liquidus_c(&filling.metal);
    // After a filling some of it may have begun to freeze on the way, which is told of the filling.
    let has_begun = matches!(poured.start, Start::Even(_)) && start_c < liquidus_c;
    if start_c.is_nan() || has_begun {
        return Err(FreezeError::TooCold {
            alloy: poured.alloy.name.clone(),
            start_c,
            liquidus_c,
        });
    }
    let contact_w_m2k = filling.contact_w_m2k;
    for sand in [&filling.sand, &filling.core] {
        let SandHeat { w_mk, j_m3k, .. } = *sand;
        let figures = [w_mk, j_m3k, contact_w_m2k];
        if figures
            .iter()
            .any(|figure| !(figure.is_finite() && *figure > 0.0))
        {
            return Err(FreezeError::Figures {
                w_mk,
                j_m3k,
                contact_w_m2k,
            });
        }
    }
    Ok(())
}

fn liquidus_c(metal: &Material) -> f64 {
    let liquid = metal.knots.iter().find(|knot| knot.solid <= 0.0);
    liquid.map_or(f64::NAN, |knot| knot.celsius)
}

/// What was written down of the cells that freeze, for each of the equal cells.
fn spread(meshed: &Meshed, built: &MouldCase, frozen: &[u32], of: &[f32]) -> Vec<f32> {
    let mut in_case = vec![f32::NAN; built.case.grid.cells()];
    for (cell, value) in frozen.iter().zip(of) {
        in_case[*cell as usize] = *value;
    }
    (0..meshed.cells.stuff.len())
        .map(|cell| in_case[built.of_cell(&meshed.cells, cell)])
        .collect()
}
