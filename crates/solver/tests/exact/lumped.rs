//! A body so conductive that it has one temperature, cooled over its skin.

use solver::case::{Case, Condition};
use solver::grid::Grid;
use solver::material::{Freezes, Material, Phase};
use solver::run::{End, Mode, Wish, solve};

use crate::column::assert_near;

/// A cube of 10 mm at 700 °C against 25 °C over 500 W/(m² K): superheat and freezing range are
/// passed in times that follow from the logarithm of the temperatures.
#[test]
fn a_cube_freezes_when_it_should() {
    let phase = Phase {
        j_m3k: 2.7e6,
        w_mk: 1e7,
    };
    let (solidus_c, liquidus_c) = (555.0, 615.0);
    let freezes = Freezes {
        solid: phase,
        liquid: phase,
        latent_j_m3: 9.725e8,
        solidus_c,
        liquidus_c,
    };
    let metal = Material::freezing("metal", freezes);
    let mut case = Case::filled(Grid::uniform([1; 3], 0.01), metal, 700.0);
    case.faces = [Condition::Exchange {
        w_m2k: 500.0,
        celsius: 25.0,
        emissivity: 0.0,
    }; 6];
    for mode in [Mode::Reference, Mode::Multirate] {
        let wish = Wish {
            mode,
            longest_step_s: Some(0.001),
            ..Wish::until(End::Solid { latest_s: 20.0 })
        };
        let outcome = solve(&case, &wish, &mut |_| true).expect("a sound case");
        let begins = f64::from(outcome.freezing.begins_s[0]);
        let ends = f64::from(outcome.freezing.ends_s[0]);
        assert_near("superheat", begins, 1.211_311_385_76, 1e-3);
        assert_near("freezing", ends - begins, 6.759_447_454_79, 4e-3);
        assert_near("both", ends, 7.970_758_840_54, 4e-3);
        assert!(
            outcome.balance.drift < 1e-6,
            "{mode:?} {:?}",
            outcome.balance
        );
    }
}

/// The same cube radiates: `C V dT/dt = -e s A (T^4 - T0^4)`. From 1000 K to 800 K against 0 K it
/// takes `C V / (3 e s A) (1/800^3 - 1/1000^3)`.
#[test]
fn a_cube_radiates_as_it_should() {
    let body = Material::plain(
        "body",
        Phase {
            j_m3k: 2.7e6,
            w_mk: 1e7,
        },
    );
    let mut case = Case::filled(Grid::uniform([1; 3], 0.01), body, 1000.0 - 273.15);
    case.faces = [Condition::Exchange {
        w_m2k: 0.0,
        celsius: -273.15,
        emissivity: 0.3,
    }; 6];
    let volume_to_area = 0.01 / 6.0;
    let s = 2.7e6 * volume_to_area / (3.0 * 0.3 * 5.670_374_419e-8)
        * (1.0 / 800.0_f64.powi(3) - 1.0 / 1000.0_f64.powi(3));
    for mode in [Mode::Reference, Mode::Multirate] {
        let wish = Wish {
            mode,
            longest_step_s: Some(s / 2e4),
            ..Wish::until(End::At { s })
        };
        let outcome = solve(&case, &wish, &mut |_| true).expect("a sound case");
        let celsius = f64::from(outcome.last.celsius[0]);
        assert_near(
            &format!("{mode:?} after {s} s"),
            celsius,
            800.0 - 273.15,
            0.05,
        );
    }
}
