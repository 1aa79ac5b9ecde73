//! How much sand got how hot, beside the closed form of a face held hot.

#![allow(clippy::expect_used, reason = "a helper that fails fails its test")]

use measure::flow::Duration;
use measure::heat::{HeatDrawing, Temperature};
use mould::cooling::HEAT_OF_SAND_J_PER_M3_K;
use mould::heat_soak::soak_depth;
use pour::case::SAND;
use pour::hot_sand::{HotSand, hot_sand};
use solver::case::{Case, Condition};
use solver::grid::Grid;
use solver::material::{Material, Phase};
use solver::run::{End, Wish, solve};

const FACE_C: f64 = 1000.0;
const AT_REST_C: f64 = 20.0;
const THIRST: f64 = 1000.0;
const FOR_S: f64 = 240.0;

/// A column of sand of 300 mm, its foot held hot so long.
fn soaked(cell_mm: f64) -> HotSand {
    let cells = (300.0 / cell_mm) as usize;
    let grid = Grid::uniform([1, 1, cells], cell_mm * 1e-3);
    let sand = Phase {
        j_m3k: HEAT_OF_SAND_J_PER_M3_K,
        w_mk: THIRST * THIRST / HEAT_OF_SAND_J_PER_M3_K,
    };
    let sand = Material::plain("sand", sand);
    let mut faces = [Condition::Insulated; 6];
    faces[4] = Condition::Held { celsius: FACE_C };
    let case = Case {
        // The numbers of a mould: metal, sand, core.
        materials: vec![sand.clone(), sand.clone(), sand],
        voids: Vec::new(),
        cells: vec![SAND; cells],
        contacts: Vec::new(),
        faces,
        start_c: vec![AT_REST_C as f32; cells],
        partial: None,
        grid,
    };
    let wish = Wish::until(End::At { s: FOR_S });
    let outcome = solve(&case, &wish, &mut |_| true).expect("it heats up");
    // The column only gets hotter: its last temperatures are its highest.
    hot_sand(&case, &outcome.last.celsius, cell_mm * cell_mm)
}

/// x = 2 √(a t) erfc⁻¹ of the share of the temperature (Carslaw and Jaeger, 1959).
#[test]
fn the_depth_above_a_mark_is_that_of_the_closed_form_and_finer_than_a_cell() {
    for (cell_mm, within_mm) in [(2.0, 0.1), (4.0, 0.3)] {
        let sand = soaked(cell_mm);
        for mark_c in [
            105.0, 150.0, 200.0, 300.0, 450.0, 500.0, 600.0, 650.0, 700.0,
        ] {
            let exact = soak_depth(
                Temperature::from_celsius(FACE_C),
                Temperature::from_celsius(mark_c),
                HeatDrawing::from_w_rts_per_m2_k(THIRST),
                Duration::from_s(FOR_S),
            );
            let off = sand.depth_mm(mark_c) - exact.as_mm();
            assert!(off.abs() < within_mm, "{cell_mm} mm, {mark_c} °C: {off}");
        }
    }
}

#[test]
fn between_two_temperatures_it_lies_between_their_figures() {
    let sand = soaked(4.0);
    let [low, middle, high] = [300.0, 320.0, 350.0].map(|mark| sand.of_mould_mm3(mark));
    assert!(high < middle && middle < low);
    let evenly = low + 0.4 * (high - low);
    assert!((middle - evenly).abs() < 1e-9 * low, "{middle} {evenly}");
    assert!(sand.is_whole());
    assert_eq!(sand.of_mould_mm3(20.0), sand.of_mould_mm3(105.0));
    assert_eq!(sand.of_mould_mm3(2000.0), sand.of_mould_mm3(700.0));
}
