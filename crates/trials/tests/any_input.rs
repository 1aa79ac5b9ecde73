//! Whatever is handed in comes back as an answer or as an error, never as a panic.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

use proptest::{collection::vec, prop_assert, proptest};
use trials::belief::{Likeness, belief, spans};
use trials::best::best;
use trials::chart::{counts, individuals, shares, signals, weighted};
use trials::fit::fit;
use trials::gauge::{repeatability, study};
use trials::lattice::grid;
use trials::model::{Bend, Blending, mixture, surface};
use trials::optimal::chosen;
use trials::plan::{Extent, plan};
use trials::rank::indistinct;
use trials::region::{Component, Limit, Region};
use trials::repeats::{lack_of_fit, noise};
use trials::summit::summit;
use trials::verdict::{Good, Measured, verdict};
use trials::vertices::landmarks;

/// Numbers as they go wrong: whole ones that repeat, huge ones, none at all.
fn number(drawn: u8) -> f64 {
    match drawn {
        0..=40 => f64::from(drawn % 4),
        41..=60 => f64::from(drawn) / 10.0,
        61 => f64::NAN,
        62 => f64::INFINITY,
        63 => -1e300,
        64 => 1e-300,
        other => f64::from(other % 16) / 8.0 - 1.0,
    }
}

fn points(drawn: &[Vec<u8>]) -> Vec<Vec<f64>> {
    drawn
        .iter()
        .map(|row| row.iter().map(|one| number(*one)).collect())
        .collect()
}

proptest! {
    #[test]
    fn fits_answer_or_refuse(
        drawn in vec(vec(0u8..=255, 2..3), 0..12),
        bend in 0..3,
        short in 0..9,
    ) {
        let bend = [Bend::Flat, Bend::Twisted, Bend::Bent][bend as usize];
        let model = surface(&["x", "y"], bend);
        let mut points = points(&drawn);
        if let (0, Some(last)) = (short, points.last_mut()) {
            last.pop();
        }
        let responses: Vec<f64> = points.iter().map(|point| point[0]).collect();
        indistinct(&model, &points);
        noise(&points, &responses);
        if let Ok(found) = fit(&model, &points, &responses) {
            lack_of_fit(&found, &points, &responses).ok();
            summit(&found, 2, &points).ok();
            best(&found, &points, Good::High);
            found.at(&[]);
        }
        belief(&Likeness::Smooth, &points, &responses, &spans(&points)).ok();
        belief(&Likeness::Terms(model.clone()), &points, &responses, &spans(&points)).ok();
        chosen(&model, &points, 7, 1).ok();
        let extent = Extent { runs: 8, repeats: 1, days: 2, seed: 1 };
        plan(&model, &points, extent).ok();
    }

    /// Every landmark of a region that there is lies in it.
    #[test]
    fn regions_answer_or_refuse(
        bounds in vec((0u8..=255, 0u8..=255), 0..6),
        weights in vec(0u8..=255, 0..6),
        end in 0u8..=255,
    ) {
        let component = |(low, high): &(u8, u8)| Component {
            name: String::new(),
            low: f64::from(low % 16) / 40.0,
            high: if *high == 61 { f64::NAN } else { f64::from(*high) / 255.0 },
        };
        let limit = Limit {
            name: "limit".to_owned(),
            weights: weights.iter().map(|one| number(*one)).collect(),
            low: f64::NEG_INFINITY,
            high: number(end),
        };
        let components: Vec<_> = bounds.iter().map(component).collect();
        for limits in [vec![], vec![limit]] {
            let region = Region { components: components.clone(), limits };
            if let Ok(found) = landmarks(&region) {
                for mix in found.all() {
                    prop_assert!(region.holds(&mix), "{mix:?}");
                }
                let names = vec!["x"; region.components.len()];
                let model = mixture(&names, Blending::Linear);
                chosen(&model, &found.all(), names.len(), 1).ok();
            }
            grid(&region, 3).ok();
        }
    }

    #[test]
    fn readings_answer_or_refuse(drawn in vec(0u8..=255, 0..14), days in 1usize..4) {
        let readings: Vec<f64> = drawn.iter().map(|one| number(*one)).collect();
        individuals(&readings).ok();
        counts(&readings).ok();
        shares(&readings, 20).ok();
        weighted(&readings, 1.0, 0.5, 0.2, 3.0).ok();
        signals(&readings, 0.5, 0.5);
        let batches: Vec<_> = readings.chunks(3).map(<[f64]>::to_vec).collect();
        repeatability(&batches).ok();
        study(&[batches.clone(), batches]).ok();
        let measured = readings.iter().enumerate().map(|(at, response)| Measured {
            mix: at % 4,
            day: at % days,
            response: *response,
        });
        verdict(&measured.collect::<Vec<_>>(), Good::Low, 0.1).ok();
    }
}
