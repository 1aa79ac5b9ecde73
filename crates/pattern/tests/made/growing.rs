//! Contraction per axis.

use pattern::made::grow::{GrowError, grown};

use crate::solids::{block, close, example, mesh, volume};

#[test]
fn volume_grows_by_the_product_of_the_three_shares() {
    let shares = [0.013, 0.009, 0.0];
    for part in [
        mesh(&[block([0.0; 3], [40.0, 30.0, 20.0])]),
        example("pump_housing.stl"),
    ] {
        let larger = grown(&part, shares).unwrap();
        let wanted = volume(&part) * 1.013 * 1.009;
        close(volume(&larger), wanted, 1e-9);
        let ([low, high], [low_after, high_after]) = (part.bounds(), larger.bounds());
        for axis in 0..3 {
            let before = high[axis] - low[axis];
            close(
                high_after[axis] - low_after[axis],
                before * (1.0 + shares[axis]),
                1e-9,
            );
        }
    }
}

#[test]
fn a_contraction_that_no_metal_has_is_refused() {
    let part = mesh(&[block([0.0; 3], [40.0, 30.0, 20.0])]);
    let error = grown(&part, [0.01, 0.13, 0.01]).unwrap_err();
    assert_eq!(
        error,
        GrowError::NoContraction {
            axis: 'y',
            share: 0.13
        }
    );
    assert!(grown(&part, [f64::NAN, 0.0, 0.0]).is_err());
}
