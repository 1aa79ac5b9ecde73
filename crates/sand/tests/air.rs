//! Damp air against the tables of the handbook and against psychrolib.

use measure::heat::Temperature;
use measure::length::Length;
use measure::matter::Pressure;
use sand::psychrometrics::{
    Air, AirError, air, air_pressure, dew_point, from_wet_bulb, saturation_pressure, wet_bulb,
};

const SEA: Pressure = Pressure::from_pa(101_325.0);

fn celsius(degrees: f64) -> Temperature {
    Temperature::from_celsius(degrees)
}

/// States of moist air written by the PyPI library psychrolib 2.5.0
/// (`tests/psychrometrics/states.py`). It closes in on wet bulb and dew point to 0.001 K.
#[test]
fn seventy_states_agree_with_psychrolib() {
    let table = include_str!("psychrometrics/psychrolib.csv");
    let mut frozen = 0;
    let mut states = 0;
    for line in table.lines().skip(1) {
        let row: Vec<f64> = line.split(',').map(|cell| cell.parse().unwrap()).collect();
        let [t, humidity, pascal, ratio, wet, dew, heat, volume, steam] = row[..] else {
            panic!("{line}")
        };
        states += 1;
        let near = |got: f64, wanted: f64| (got / wanted - 1.0).abs() < 1e-6;
        let state = air(celsius(t), humidity, Pressure::from_pa(pascal)).unwrap();
        assert!(near(state.ratio, ratio), "{line}: {}", state.ratio);
        assert!(near(state.enthalpy(), heat), "{line}: {}", state.enthalpy());
        assert!(near(state.volume(), volume), "{line}: {}", state.volume());
        assert!(
            near(saturation_pressure(celsius(t)).unwrap().as_pa(), steam),
            "{line}"
        );
        let found = dew_point(celsius(t), humidity).unwrap().as_celsius();
        assert!((found - dew).abs() < 0.002, "{line}: dew at {found}");
        match wet_bulb(&state) {
            Ok(found) => {
                let found = found.as_celsius();
                assert!((found - wet).abs() < 0.002, "{line}: wet bulb {found}");
            }
            Err(AirError::Freezes) => {
                frozen += 1;
                assert!(wet < 0.0, "{line}");
            }
            Err(other) => panic!("{line}: {other}"),
        }
    }
    assert_eq!((states, frozen > 0 && frozen < 10), (70, true));
}

/// Standard atmosphere 500 m below the sea: ASHRAE Fundamentals 2017, ch. 1, table 1 (psy-06).
#[test]
fn air_is_denser_below_the_sea() {
    let below = air_pressure(Length::from_m(-500.0)).as_pa();
    assert!((below - 107_478.0).abs() < 1.0, "{below}");
}

#[test]
fn saturation_over_ice_meets_that_over_water() {
    let at = |degrees: f64| saturation_pressure(celsius(degrees)).unwrap().as_pa();
    assert!((at(-0.001) / at(0.001) - 1.0).abs() < 5e-4);
    // ASHRAE Fundamentals 2017, ch. 1, table 3, as quoted in the tests of psychrolib.
    assert!((at(-60.0) / 1.08 - 1.0).abs() < 0.01, "{}", at(-60.0));
    assert!((at(-20.0) / 103.24 - 1.0).abs() < 3e-4, "{}", at(-20.0));
}

#[test]
fn the_wet_bulb_leads_back_to_the_air() {
    let state = air(celsius(28.0), 0.5, SEA).unwrap();
    let wet = wet_bulb(&state).unwrap();
    let back = from_wet_bulb(celsius(28.0), wet, SEA).unwrap();
    assert!((back.ratio - state.ratio).abs() < 1e-9);
    assert!((back.relative_humidity().unwrap() - 0.5).abs() < 1e-6);
}

#[test]
fn airs_that_cannot_be_are_told() {
    let refused = |wanted: &str, fault: Result<Air, AirError>| {
        let said = fault.unwrap_err().to_string();
        assert!(said.contains(wanted), "{said}");
    };
    refused("120 %", air(celsius(20.0), 1.2, SEA));
    refused("outside", air(celsius(300.0), 0.5, SEA));
    refused("exchange", from_wet_bulb(celsius(20.0), celsius(25.0), SEA));
    refused(
        "swing it again",
        from_wet_bulb(celsius(60.0), celsius(5.0), SEA),
    );
    refused("steam", air(celsius(120.0), 1.0, SEA));
    let cold = air(celsius(3.0), 0.1, SEA).unwrap();
    assert_eq!(wet_bulb(&cold), Err(AirError::Freezes));
    assert!(dew_point(celsius(20.0), 0.0).is_err());
}
