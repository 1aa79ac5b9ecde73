//! Pucks in damp air: lines, curves, and what they do not say.

use measure::heat::Temperature;
use proptest::prelude::{prop_assert, proptest};
use sand::humidity::{Puck, UptakeError};
use sand::sorption::{Curve, SALTS, SorptionError, at_rest, of_pucks, salt_jar};

fn puck(humidity: f64, gain: f64) -> Puck {
    Puck { humidity, gain }
}

/// psy-09: A. Wexler, Constant Humidity Solutions, CRC Handbook; Greenspan, NBS J. Res. 81A
/// (1977), has 11.3, 32.8, 57.6 and 75.3 % for the first four.
#[test]
fn jars_of_salt_hold_the_published_humidities() {
    let greenspan = [11.3, 32.8, 57.6, 75.3];
    for ((salt, ..), published) in SALTS.iter().zip(greenspan) {
        let found = salt_jar(salt, Temperature::from_celsius(25.0)).unwrap() * 100.0;
        assert!((found - published).abs() < 0.1, "{salt}: {found}");
    }
    assert_eq!(salt_jar("moon-salt", Temperature::from_celsius(25.0)), None);
}

/// Two pucks of scenario 4.6 give the line; further than 15 points beyond them nothing is said.
#[test]
fn two_pucks_give_a_line_and_no_more() {
    let sorption = of_pucks(&[puck(0.78, 0.019), puck(0.40, 0.004)]).unwrap();
    assert_eq!(sorption.curve, None);
    let middle = sorption.at(0.59).unwrap();
    assert!((middle - 0.0115).abs() < 1e-9);
    assert!(matches!(sorption.at(0.2), Err(UptakeError::TooFar { .. })));
    assert!(sorption.at(0.93).is_ok());
    assert!(matches!(sorption.at(0.94), Err(UptakeError::TooFar { .. })));
    let driest = sorption.driest_air_for(0.0115).unwrap();
    assert!((driest - 0.59).abs() < 1e-6);
    assert_eq!(sorption.driest_air_for(-0.1), None);
}

#[test]
fn pucks_that_say_nothing_are_told() {
    assert_eq!(of_pucks(&[puck(0.4, 0.004)]), Err(SorptionError::TooFew));
    let same = of_pucks(&[puck(0.4, 0.004), puck(0.4, 0.005)]);
    assert!(same.unwrap_err().to_string().contains("other air"));
    let falls = of_pucks(&[puck(0.4, 0.004), puck(0.8, 0.002)]);
    assert!(falls.unwrap_err().to_string().contains("dry both again"));
}

#[test]
fn a_puck_weighed_wrong_takes_the_curve_away() {
    let curve = Curve {
        layer: 0.005,
        first: 12.0,
        further: 0.8,
    };
    let mut pucks: Vec<Puck> = [0.113, 0.328, 0.576, 0.753]
        .map(|humidity| puck(humidity, at_rest(&curve, humidity)))
        .to_vec();
    assert!(of_pucks(&pucks).unwrap().curve.is_some());
    pucks[2].gain = pucks[3].gain - 1e-4;
    let broken = of_pucks(&pucks).unwrap();
    assert_eq!(broken.curve, None);
    // The line between the two nearest pucks is all that is left.
    let at = broken.at(0.6645).unwrap();
    assert!((at - (pucks[3].gain - 0.5e-4)).abs() < 1e-9);
}

proptest! {
    /// Pucks that lie on a curve give its constants back.
    #[test]
    fn a_curve_is_found_again(
        layer in 0.002..0.1,
        first in 3.0..40.0,
        further in 0.5..0.95,
    ) {
        let curve = Curve { layer, first, further };
        let pucks = [0.113, 0.328, 0.576, 0.753, 0.843]
            .map(|humidity| puck(humidity, at_rest(&curve, humidity)));
        let found = of_pucks(&pucks).unwrap().curve.unwrap();
        prop_assert!((found.layer / layer - 1.0).abs() < 1e-4, "{found:?}");
        prop_assert!((found.first / first - 1.0).abs() < 1e-3, "{found:?}");
        prop_assert!((found.further / further - 1.0).abs() < 1e-5, "{found:?}");
    }
}
