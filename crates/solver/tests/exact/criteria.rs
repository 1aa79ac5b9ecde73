//! Gradient and cooling at the lower end of the freezing range, of the alloy whose three zones keep
//! their shape: in the mushy zone `T = T_s + b (erf(x / (2 sqrt(a t))) - erf(p / sqrt(a)))`, so
//! that both follow from where the two fronts are.

use std::f64::consts::PI;

use solver::run::{End, Mode, Wish, solve};

use crate::mushy::{LIQUIDUS_C, SOLIDUS_C, alloy_column};

/// Solidus at `2 p sqrt(t)`, liquidus at `2 q sqrt(t)`, m/s^0.5.
const P: f64 = 4.415_313_910_83e-3;
const Q: f64 = 5.355_046_844_61e-3;

/// Gradient over the root of cooling is one figure for all places, within 3 % beyond 20 cells.
/// Each by itself reads low by a tenth there: the difference reaches over the solidus, where
/// conductivity jumps.
#[test]
fn the_criterion_comes_right() {
    let case = alloy_column(50);
    for mode in [Mode::Reference, Mode::Multirate] {
        let wish = Wish {
            mode,
            longest_step_s: Some(0.05),
            ..Wish::until(End::At { s: 60.0 })
        };
        let outcome = solve(&case, &wish, &mut |_| true).expect("a sound case");
        let freezing = &outcome.freezing;
        let mut checked = 0;
        for entry in 20..freezing.cells.len() {
            let gradient = f64::from(freezing.gradient_k_m[entry]);
            let cooling = f64::from(freezing.cooling_k_s[entry]);
            if gradient.is_nan() {
                continue;
            }
            let x_m = case.grid.middle(0, freezing.cells[entry] as usize);
            let (expected_gradient, expected_cooling) = expected(x_m);
            let ratio = gradient / cooling.sqrt() / (expected_gradient / expected_cooling.sqrt());
            assert!(
                (ratio - 1.0).abs() < 0.03,
                "{mode:?}, {x_m} m: criterion {ratio}"
            );
            checked += 1;
        }
        assert!(checked >= 20, "{checked} places");
    }
}

/// Gradient, K/m, and cooling, K/s, at a place when it is a tenth above the solidus.
fn expected(x_m: f64) -> (f64, f64) {
    let diffusivity: f64 = 120.0 / (2.7e6 + 9.725e8 / 60.0);
    let (low, high) = (P / diffusivity.sqrt(), Q / diffusivity.sqrt());
    let b = (LIQUIDUS_C - SOLIDUS_C) / (erf(high) - erf(low));
    let wanted = erf(low) + 0.1 * (erf(high) - erf(low));
    let (mut under, mut over) = (low, high);
    for _ in 0..60 {
        let middle = 0.5 * (under + over);
        if erf(middle) < wanted {
            under = middle
        } else {
            over = middle
        }
    }
    let eta = under;
    let s = (x_m / (2.0 * eta)).powi(2) / diffusivity;
    let falling = b * (-eta * eta).exp();
    let gradient = falling / (PI * diffusivity * s).sqrt();
    (gradient, falling * eta / (PI.sqrt() * s))
}

/// The error function by Simpson's rule, good to twelve digits here.
fn erf(x: f64) -> f64 {
    let pieces = 2000;
    let width = x / f64::from(pieces);
    let sum: f64 = (0..=pieces)
        .map(|at| {
            let weight = match at {
                0 => 1.0,
                at if at == pieces => 1.0,
                at if at % 2 == 1 => 4.0,
                _ => 2.0,
            };
            let y = f64::from(at) * width;
            weight * (-y * y).exp()
        })
        .sum();
    2.0 / PI.sqrt() * sum * width / 3.0
}
