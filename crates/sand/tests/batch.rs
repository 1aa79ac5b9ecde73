//! Sand for a flask.

use measure::band::Band;
use measure::length::Volume;
use measure::matter::Density;
use proptest::prelude::{prop_assert, proptest};
use sand::batch::{Batch, BatchError, rammed_density};

#[test]
fn sand_fills_what_the_pattern_leaves() {
    let flask = Volume::from_litre(11.25);
    let pattern = Volume::from_litre(0.65);
    let batch = Batch::for_flask(flask, pattern, &rammed_density().value).unwrap();
    assert!((batch.rammed.likely().as_kg() - 16.96).abs() < 1e-9);
    assert!((batch.rammed.low().as_kg() - 15.9).abs() < 1e-9);
    assert!((batch.rammed.high().as_kg() - 18.02).abs() < 1e-9);
    assert!((batch.mixed.likely().as_kg() - 19.504).abs() < 1e-9);
}

#[test]
fn a_pattern_as_large_as_the_flask_is_refused() {
    let full = Volume::from_litre(2.0);
    let refused = Batch::for_flask(full, full, &rammed_density().value);
    assert!(matches!(refused, Err(BatchError::NoRoom { .. })));
}

proptest! {
    #[test]
    fn widening_the_density_never_narrows_the_batch(
        flask in 1.0f64..50.0, share in 0.0f64..0.9, margin in 0.0f64..0.2, more in 0.0f64..0.2,
    ) {
        let of = |margin: f64| {
            let density = |g| Density::from_g_per_cm3(g);
            let rammed = Band::new(density(1.6 - margin), density(1.6), density(1.6 + margin));
            let (flask, pattern) = (Volume::from_litre(flask), Volume::from_litre(flask * share));
            Batch::for_flask(flask, pattern, &rammed).unwrap().mixed
        };
        let (narrow, wide) = (of(margin), of(margin + more));
        prop_assert!(wide.low() <= narrow.low() && narrow.high() <= wide.high());
    }
}
