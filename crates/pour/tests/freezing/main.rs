//! Moulds whose freezing is known: through the cutting into cells and the rim cells, not only
//! through the solver.

#![allow(clippy::expect_used, reason = "a helper that fails fails its test")]

mod bodies;
mod chills;
mod feeding;
mod hints;
mod kept_and_halved;

use measure::band::Band;
use measure::heat::Temperature;
use measure::length::Length;
use metal::alloys::named;
use pattern::shape::Form;
use pour::case::Filling;
use pour::freeze::{Freeze, FreezeFact, Told, freeze, grids};
use pour::meshing::{Meshing, MeshingError, cut, meshed};
use pour::no_freeze::FreezeError;
use pour::solved::{Poured, Solved, solved};
use pour::start::Start;
use pour::tables::{SandHeat, metal_table};
use rigging::mould::Mould;
use solver::material::{Freezes, Material, Phase};

use crate::bodies::{block, mould};

/// Aluminium of set S1 of the exact solutions: freezes at 660 °C, no superheat.
fn arresting() -> Material {
    let phase = |kg_m3: f64, j_kgk: f64, w_mk: f64| Phase {
        j_m3k: kg_m3 * j_kgk,
        w_mk,
    };
    Material::freezing(
        "aluminium",
        Freezes {
            solid: phase(2500.0, 1000.0, 210.0),
            liquid: phase(2500.0, 1100.0, 95.0),
            latent_j_m3: 2500.0 * 3.9e5,
            solidus_c: 660.0,
            liquidus_c: 660.0,
        },
    )
}

fn followed(
    mould: &Mould,
    size_mm: f64,
    staircase: bool,
    start_c: f64,
    filling: &Filling,
) -> Solved {
    let meshing = Meshing {
        wall_mm: size_mm,
        across: 1.0,
        budget: 1e6,
        staircase,
        even: false,
        also_mm: None,
    };
    let cells = cut(mould, &meshing, size_mm).expect("cells");
    solved(cells, &poured(start_c), filling, &mut |_| true).expect("it freezes")
}

fn poured(start_c: f64) -> Poured<'static> {
    Poured {
        alloy: named("al-pure")
            .or_else(|_| named("pure aluminium"))
            .expect("an alloy"),
        start: Start::Even(Temperature::from_celsius(start_c)),
        start_off_k: [-20.0, 20.0],
        sand: SandHeat::dry(),
        sand_times: [0.85, 1.2],
        core: SandHeat::dry(),
        contact_w_m2k: Band::new(100.0, 320.0, 1000.0),
        chill_w_m2k: Band::new(500.0, 1500.0, 5000.0),
        air: Temperature::from_celsius(25.0),
        on: None,
    }
}

/// A plate between two bodies of sand that touch it without resistance. Its two faces freeze
/// towards each other as a half space does: X = 2 λ √(α t) with λ of Schwarz's form (set S1 of the
/// closed forms: 7.994514e-4 m/√s), so that a plate of 16 mm takes 100.137 s.
#[test]
fn a_plate_between_sand_freezes_as_the_closed_form_says() {
    let exact_s = (8e-3_f64 / 7.994_514_232_54e-4).powi(2);
    let filling = Filling {
        metal: arresting(),
        sand: SandHeat {
            w_mk: 0.7,
            j_m3k: 1100.0 * 1550.0,
            kg_m3: 1550.0,
            water: 0.0,
        },
        core: SandHeat::dry(),
        contact_w_m2k: 1e6,
        chill_w_m2k: 1500.0,
        air_c: 25.0,
        to_air_w_m2k: 0.0,
    };
    // Wall to wall in a flask through which nothing passes.
    let off = |size_mm: f64| {
        let plate = mould(
            block([8.0 * size_mm, 8.0 * size_mm, 16.0]),
            [4.0 * size_mm, 4.0 * size_mm, 100.0],
            [8.0 * size_mm, 8.0 * size_mm, 200.0],
        );
        let run = followed(&plate, size_mm, false, 660.0, &filling);
        run.last_s / exact_s - 1.0
    };
    let [coarse, middle, fine] = [1.0, 0.5, 0.25].map(off);
    assert!(coarse.abs() < 0.01, "16 cells across: {coarse}");
    let closes_in = fine.abs() < middle.abs() && middle.abs() < coarse.abs();
    assert!(closes_in, "{coarse} {middle} {fine}");
}

/// Metal of P1 in sand that stays as cold as it is, behind a contact that holds nearly all of the
/// resistance: the whole body has one temperature, and V/A alone says how long it takes.
fn lumped(contact_w_m2k: f64) -> Filling {
    let cold = SandHeat {
        w_mk: 2e3,
        j_m3k: 4e9,
        kg_m3: 1550.0,
        water: 0.0,
    };
    let metal = Material::freezing(
        "metal",
        Freezes {
            solid: Phase {
                j_m3k: 2.7e6,
                w_mk: 150.0,
            },
            liquid: Phase {
                j_m3k: 2.7e6,
                w_mk: 90.0,
            },
            latent_j_m3: 9.725e8,
            solidus_c: 555.0,
            liquidus_c: 615.0,
        },
    );
    Filling {
        metal,
        sand: cold,
        core: cold,
        contact_w_m2k,
        chill_w_m2k: 1500.0,
        air_c: 25.0,
        to_air_w_m2k: 0.0,
    }
}

/// A cube of 10 mm at 700 °C, h = 50 W/m²K, mould at 25 °C: 79.7075884 s to all solid (closed form,
/// ten times that for h = 500).
#[test]
fn a_small_cube_freezes_as_one_lump() {
    let cube = mould(block([10.0; 3]), [20.0; 3], [40.0; 3]);
    let run = followed(&cube, 2.0, false, 700.0, &lumped(50.0));
    let off = run.last_s / 79.707_588_405_4 - 1.0;
    assert!(off.abs() < 0.01, "{off}");
}

/// A ball has the V/A of a cube as wide as it is: the same closed form holds, R/3 for a/6. The
/// staircase has one and a half times the surface of the ball and freezes far too soon; the true
/// surface of the rim cells puts that right.
#[test]
fn a_ball_freezes_by_its_true_surface_and_not_by_that_of_its_steps() {
    let ball = Form::Ball {
        diameter: Length::from_mm(10.0),
    };
    let ball = mould(ball, [20.0; 3], [40.0; 3]);
    let off = |staircase: bool, size_mm: f64| {
        let run = followed(&ball, size_mm, staircase, 700.0, &lumped(50.0));
        run.last_s / 79.707_588_405_4 - 1.0
    };
    let (rim, steps) = (off(false, 1.0), off(true, 1.0));
    assert!(steps < -0.25, "the staircase: {steps}");
    assert!(rim.abs() < 0.03, "rim cells: {rim}");
}

#[test]
fn the_cells_hold_the_metal_of_the_solid() {
    let round = Form::Cylinder {
        diameter: Length::from_mm(37.0),
        length: Length::from_mm(23.0),
    };
    let bodies = [
        round,
        Form::Ball {
            diameter: Length::from_mm(31.0),
        },
        block([33.0, 21.0, 7.3]),
    ];
    for body in bodies {
        let mould = mould(body, [40.3, 41.1, 39.7], [80.0; 3]);
        let meshing = Meshing {
            wall_mm: 7.3,
            across: 4.0,
            budget: 1e6,
            staircase: false,
            even: false,
            also_mm: None,
        };
        let meshed = meshed(&mould, &meshing).expect("cells");
        let off = meshed.held_mm3 / meshed.solid_mm3 - 1.0;
        assert!(off.abs() < 0.005, "{off}");
    }
}

/// The same body freezes at the same time wherever it lies between the cells, nearly: the steps of
/// a staircase make more of it.
#[test]
fn rim_cells_hardly_mind_where_a_plate_lies_between_them() {
    let filling = Filling {
        metal: metal_table(named("aluminium").expect("an alloy"), 1.0),
        sand: SandHeat::dry(),
        core: SandHeat::dry(),
        contact_w_m2k: 320.0,
        chill_w_m2k: 1500.0,
        air_c: 20.0,
        to_air_w_m2k: 8.0,
    };
    let time = |thickness_mm: f64, size_mm: f64, staircase: bool| {
        let sides = [60.0, 60.0, thickness_mm];
        let plate = mould(block(sides), [60.0, 60.0, 50.0], [120.0, 120.0, 100.0]);
        followed(&plate, size_mm, staircase, 650.0, &filling).last_s
    };
    let fine = time(10.4, 1.3, false);
    let rim = time(10.4, 3.0, false) / fine - 1.0;
    let steps = time(10.4, 3.0, true) / fine - 1.0;
    assert!(rim.abs() < 0.06, "{rim}");
    assert!(rim.abs() < steps.abs(), "{rim} beside {steps}");
}

fn plain() -> (Mould, Meshing) {
    let plate = mould(
        block([60.0, 40.0, 12.0]),
        [50.0, 40.0, 40.0],
        [100.0, 80.0, 80.0],
    );
    let meshing = Meshing {
        wall_mm: 12.0,
        across: 4.0,
        budget: 1e6,
        staircase: false,
        even: false,
        also_mm: None,
    };
    (plate, meshing)
}

fn as_poured() -> Poured<'static> {
    Poured {
        alloy: named("aluminium").expect("an alloy"),
        ..poured(650.0)
    }
}

fn both(
    mould: &Mould,
    meshing: &Meshing,
    poured: &Poured<'_>,
    go_on: &mut dyn FnMut(&Told) -> bool,
) -> Result<Freeze, FreezeError> {
    freeze(grids(mould, meshing)?, meshing, poured, go_on)
}

#[test]
fn the_band_holds_the_likely_time_and_finer_cells() {
    let (plate, meshing) = plain();
    let frozen = both(&plate, &meshing, &as_poured(), &mut |_| true).expect("it freezes");
    let band = frozen.last_s;
    assert!(band.low() < band.likely() && band.likely() < band.high());
    assert!(frozen.by_contact[0] < 1.0 && frozen.by_contact[1] > 1.0);
    assert!(frozen.by_sand[0] < 1.0 && frozen.by_sand[1] > 1.0);
    assert_eq!(frozen.facts, []);
    assert!(
        frozen.solved.balance.drift < 1e-5,
        "{:?}",
        frozen.solved.balance
    );
    let finer = Meshing {
        across: 8.0,
        ..meshing
    };
    let finer = meshed(&plate, &finer).expect("cells");
    let poured = as_poured();
    let likely = pour::solved::filling(&poured, 320.0, 1.0);
    let finer = solved(finer, &poured, &likely, &mut |_| true).expect("it freezes");
    let off = (finer.last_s / band.likely() - 1.0).abs();
    assert!(
        off <= frozen.by_grid.abs(),
        "{off}, grid {}",
        frozen.by_grid
    );
}

/// The rim cells of a mirrored plate differ a little, since facets are cut along one diagonal and
/// their samples lie askew; those of a staircase do not.
#[test]
fn a_mirrored_plate_freezes_alike_on_both_sides() {
    let (plate, meshing) = plain();
    let poured = as_poured();
    let likely = pour::solved::filling(&poured, 320.0, 1.0);
    for (staircase, within) in [(true, 5e-4), (false, 5e-3)] {
        let meshing = Meshing {
            staircase,
            even: false,
            ..meshing
        };
        let cells = meshed(&plate, &meshing).expect("cells");
        let run = solved(cells, &poured, &likely, &mut |_| true).expect("it freezes");
        let cells = &run.meshed.cells;
        let [nx, ny, _] = cells.count;
        for cell in 0..run.ends_s.len() {
            let [i, j, k] = cells.cell(cell);
            let twin = cells.index([nx - 1 - i, ny - 1 - j, k]);
            let (one, other) = (run.ends_s[cell], run.ends_s[twin]);
            assert_eq!(one.is_nan(), other.is_nan());
            let off = (one - other).abs() / one;
            assert!(one.is_nan() || off < within, "{one} {other}");
        }
    }
}

#[test]
fn bad_input_is_told_and_nothing_runs() {
    let (plate, meshing) = plain();
    let run = |mould: &Mould, meshing: Meshing, poured: Poured<'_>| {
        both(mould, &meshing, &poured, &mut |_| true).expect_err("it is wrong")
    };
    let cold = Poured {
        start: Start::Even(Temperature::from_celsius(600.0)),
        ..as_poured()
    };
    assert!(matches!(
        run(&plate, meshing, cold),
        FreezeError::TooCold { .. }
    ));
    for budget in [1.0, 1e12, f64::NAN] {
        let error = run(&plate, Meshing { budget, ..meshing }, as_poured());
        let wanted = matches!(error, FreezeError::Meshing(MeshingError::Budget { .. }));
        assert!(wanted, "{error}");
    }
    for wall_mm in [0.0, -3.0, f64::NAN] {
        let error = run(&plate, Meshing { wall_mm, ..meshing }, as_poured());
        let wanted = matches!(error, FreezeError::Meshing(MeshingError::Wall { .. }));
        assert!(wanted, "{error}");
    }
    let sandless = Poured {
        sand: SandHeat {
            w_mk: 0.0,
            ..SandHeat::dry()
        },
        ..as_poured()
    };
    assert!(matches!(
        run(&plate, meshing, sandless),
        FreezeError::Figures { .. }
    ));
    let starts = Poured {
        start: Start::Each(vec![700.0; 3]),
        ..as_poured()
    };
    assert!(matches!(
        run(&plate, meshing, starts),
        FreezeError::Starts { .. }
    ));
    let through = mould(
        block([120.0, 40.0, 12.0]),
        [50.0, 40.0, 40.0],
        [100.0, 80.0, 80.0],
    );
    let error = run(&through, meshing, as_poured());
    let wanted = matches!(error, FreezeError::Meshing(MeshingError::Outside { .. }));
    assert!(wanted, "{error}");
}

#[test]
fn a_thin_wall_is_told_and_a_stop_is_heeded() {
    let (plate, meshing) = plain();
    let thin = Meshing {
        across: 2.0,
        ..meshing
    };
    let frozen = both(&plate, &thin, &as_poured(), &mut |_| true).expect("it freezes");
    let told = frozen
        .facts
        .iter()
        .any(|fact| matches!(fact, FreezeFact::FewCells { .. }));
    assert!(told, "{:?}", frozen.facts);
    let mut steps = 0;
    let stopped = both(&plate, &meshing, &as_poured(), &mut |_| {
        steps += 1;
        steps < 5
    });
    assert!(stopped.is_err());
    assert_eq!(steps, 5);
}
