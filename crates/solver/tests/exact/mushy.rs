//! An alloy whose latent heat comes evenly over a range: three zones that keep their shape.

use solver::case::Case;
use solver::material::{Knot, Material};
use solver::run::{Mode, Moment};

use crate::column::{assert_near, column, even, moments, order};

/// Lower end of the range, °C.
pub const SOLIDUS_C: f64 = 555.0;
/// Upper end of the range, °C.
pub const LIQUIDUS_C: f64 = 615.0;
const SOLIDUS_MM: f64 = 68.401_748_979_8;
const LIQUIDUS_MM: f64 = 82.960_028_989_4;
const WALL_W_M2: f64 = 1_299_502.718_73;

#[test]
fn both_fronts_come_right() {
    for mode in [Mode::Reference, Mode::Multirate] {
        let case = alloy_column(50);
        let (moments, outcome) = moments(&case, mode, &[10.0, 60.0], 0.1);
        let fronts = [
            (0, SOLIDUS_C, 27.924_897_085_7),
            (0, LIQUIDUS_C, 33.868_290_011_7),
            (1, SOLIDUS_C, SOLIDUS_MM),
            (1, LIQUIDUS_C, LIQUIDUS_MM),
        ];
        for (moment, celsius, mm) in fronts {
            let got = front_mm(&case, &moments[moment], celsius);
            assert_near(&format!("{mode:?}, {celsius} °C"), got, mm, 0.01 * mm);
        }
        let left_j = 2.0 * WALL_W_M2 * 60.0 * 1e-4;
        assert_near("heat", -outcome.balance.through_j, left_j, 0.01 * left_j);
    }
}

#[test]
fn errors_fall_with_the_cells() {
    let errors = [50, 100, 200].map(|cells| {
        let case = alloy_column(cells);
        let (moments, _) = moments(&case, Mode::Reference, &[60.0], 1.0);
        front_mm(&case, &moments[0], SOLIDUS_C) - SOLIDUS_MM
    });
    let order = order(&errors[1..]);
    assert!(order >= 1.3, "order {order} from {errors:?}");
}

/// Where a temperature is first reached, mm, straight between the middles of cells.
fn front_mm(case: &Case, moment: &Moment, celsius: f64) -> f64 {
    let above = |&cell: &usize| f64::from(moment.celsius[cell]) >= celsius;
    let high = (0..case.cells.len())
        .find(above)
        .expect("it is hot further on");
    let (low_c, high_c) = (
        f64::from(moment.celsius[high - 1]),
        f64::from(moment.celsius[high]),
    );
    let (low, high) = (case.grid.middle(0, high - 1), case.grid.middle(0, high));
    1e3 * (low + (celsius - low_c) / (high_c - low_c) * (high - low))
}

/// Conductivity jumps at both ends of the range.
pub fn alloy_column(cells_to_front: usize) -> Case {
    let full = (2.7e6 + 9.725e8 / 60.0) * 60.0;
    let knot = |celsius, j_m3, w_mk, solid| Knot {
        celsius,
        j_m3,
        w_mk,
        solid,
    };
    let alloy = Material {
        name: "alloy".to_owned(),
        knots: vec![
            knot(-445.0, -2.7e9, 150.0, 1.0),
            knot(SOLIDUS_C, 0.0, 150.0, 1.0),
            knot(SOLIDUS_C, 0.0, 120.0, 1.0),
            knot(LIQUIDUS_C, full, 120.0, 0.0),
            knot(LIQUIDUS_C, full, 90.0, 0.0),
            knot(1615.0, full + 2.7e9, 90.0, 0.0),
        ],
    };
    let cell_m = 1e-3 * LIQUIDUS_MM / cells_to_front as f64;
    column(even(5 * cells_to_front, cell_m), alloy, 700.0, 25.0)
}
