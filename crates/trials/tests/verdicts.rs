//! Winners are named when there are winners, and seldom when there are none.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

use proptest::{prop_assert_eq, proptest};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use trials::verdict::{Good, Measured, Verdict, VerdictError, verdict};

/// Batches of mixes, each repeated, with normal noise of deviation one.
fn drawn(lifts: &[f64], repeats: usize, seed: u64) -> Vec<Measured> {
    let mut die = ChaCha8Rng::seed_from_u64(seed);
    let mut batches = Vec::new();
    for (mix, lift) in lifts.iter().enumerate() {
        for _ in 0..repeats {
            let response = 100.0 + lift + normal(&mut die);
            batches.push(Measured {
                mix,
                day: 0,
                response,
            });
        }
    }
    batches
}

/// A normal number by the method of Box and Muller.
fn normal(die: &mut ChaCha8Rng) -> f64 {
    let (one, other): (f64, f64) = (die.random(), die.random());
    (-2.0 * (1.0 - one).ln()).sqrt() * (std::f64::consts::TAU * other).cos()
}

fn named(lifts: &[f64], repeats: usize) -> Vec<Option<usize>> {
    let judge = |seed| verdict(&drawn(lifts, repeats, seed), Good::High, 0.0).unwrap();
    (0..1000).map(|seed| judge(seed).winner).collect()
}

fn wrongly(lifts: &[f64], repeats: usize) -> usize {
    named(lifts, repeats).iter().flatten().count()
}

/// The promise: at most 70 of 1,000 sets of pure noise have a winner. With two mixes the test is as
/// loose as it gets, so that is where the promise is tight.
#[test]
fn pure_noise_has_hardly_a_winner() {
    for (mixes, repeats) in [(2, 2), (2, 3), (3, 3), (5, 2), (5, 3), (9, 3)] {
        let found = wrongly(&vec![0.0; mixes], repeats);
        assert!(found <= 70, "{mixes} mixes, {repeats} repeats: {found}");
    }
}

/// Two mixes that share the lead, far above the rest, are the hardest case to keep quiet about.
#[test]
fn a_shared_lead_has_hardly_a_winner() {
    let found = wrongly(&[8.0, 8.0, 0.0, 0.0, 0.0], 3);
    assert!((20..=70).contains(&found), "{found}");
}

/// The promise: one of five mixes, better by five deviations, three repeats: named in 80 % at
/// least.
#[test]
fn a_true_winner_is_named() {
    let named = named(&[0.0, 0.0, 5.0, 0.0, 0.0], 3);
    let rightly = named.iter().filter(|one| **one == Some(2)).count();
    assert!(rightly >= 800, "{rightly}");
    assert!(named.iter().flatten().all(|one| *one == 2));
}

/// Two mixes of three batches each, made on one day.
const TWO_MIXES: [(usize, usize, f64); 6] = [
    (0, 0, 2.0),
    (0, 0, 3.0),
    (0, 0, 4.0),
    (1, 0, 5.0),
    (1, 0, 6.0),
    (1, 0, 7.0),
];

/// Two mixes with their pooled variance are the textbook test of Student: means 3 and 6, variance
/// 1 each, three repeats, t = 3/√(2/3) = 3.674 with 4 degrees, p = 0.0213 by scipy's ttest_ind.
#[test]
fn two_mixes_are_the_test_of_student() {
    let found = judged(&TWO_MIXES);
    assert!((found.chance - 0.0213).abs() < 5e-5, "{}", found.chance);
    assert!((found.chance_of_alike - found.chance).abs() < 1e-9);
    assert!((found.noise - 1.0).abs() < 1e-12);
    assert_eq!((found.winner, found.leading), (Some(1), 1));
}

/// The same data: 3 ± 2.7764·√(2/3) and each mean ± 2.7764/√3, with Student's two-sided 5 % value
/// at 4 degrees, 2.776 in any table of it.
#[test]
fn intervals_are_those_of_student() {
    let found = judged(&TWO_MIXES);
    let lead = found.leads[0];
    assert_eq!((found.leads.len(), lead.over), (1, 0));
    assert!((lead.by - 3.0).abs() < 1e-12);
    assert!((lead.within - 2.776 * (2.0_f64 / 3.0).sqrt()).abs() < 1e-3);
    assert!((found.means[0] - 3.0).abs() < 1e-12 && (found.means[1] - 6.0).abs() < 1e-12);
    for around in &found.around {
        assert!((around - 2.776 / 3.0_f64.sqrt()).abs() < 1e-3, "{around}");
    }
}

/// In whole blocks the mean of a mix is the plain mean of its batches, whatever the days were.
#[test]
fn means_stand_on_the_mean_day() {
    let found = judged(&[
        (0, 0, 10.0),
        (1, 0, 12.1),
        (0, 1, 30.1),
        (1, 1, 32.0),
        (0, 2, 19.9),
        (1, 2, 22.1),
    ]);
    assert!((found.means[0] - 20.0).abs() < 1e-9, "{}", found.means[0]);
    assert!((found.means[1] - 66.2 / 3.0).abs() < 1e-9);
}

#[test]
fn less_can_be_better() {
    let batches = drawn(&[0.0, -9.0, 0.0], 3, 1);
    assert_eq!(verdict(&batches, Good::Low, 0.0).unwrap().winner, Some(1));
    assert_eq!(verdict(&batches, Good::High, 0.0).unwrap().winner, None);
}

/// Without the days the differences of the mixes would drown in those of the days.
#[test]
fn days_are_taken_out() {
    let with_days = [
        (0, 0, 10.0),
        (1, 0, 12.1),
        (0, 1, 30.1),
        (1, 1, 32.0),
        (0, 2, 19.9),
        (1, 2, 22.1),
    ];
    let apart = judged(&with_days);
    assert_eq!(apart.winner, Some(1));
    assert!((apart.means[1] - apart.means[0] - 2.0667).abs() < 1e-3);
    let together: Vec<_> = with_days
        .iter()
        .map(|(mix, _, value)| (*mix, 0, *value))
        .collect();
    assert_eq!(judged(&together).winner, None);
}

#[test]
fn repeats_are_told_that_would_show_the_lead() {
    let found = judged(&[(0, 0, 9.0), (0, 0, 11.0), (1, 0, 10.0), (1, 0, 12.0)]);
    assert_eq!(found.winner, None);
    assert_eq!(found.not_told_apart, [0]);
    let repeats = found.repeats_to_show.unwrap();
    // One deviation is √2 here: n with 0.7071·√(n/2) above Student's value lies near 17.
    assert!((16..=18).contains(&repeats), "{repeats}");
}

#[test]
fn repeats_that_read_alike_are_not_without_noise() {
    let alike = [(0, 0, 5.0), (0, 0, 5.0), (1, 0, 5.5), (1, 0, 5.5)].map(measured);
    let refused = verdict(&alike, Good::High, 0.0).unwrap_err();
    assert_eq!(refused, VerdictError::RepeatsAlike);
    assert_eq!(verdict(&alike, Good::High, 0.5).unwrap().winner, None);
}

#[test]
fn what_cannot_be_judged_is_said() {
    let refused = |batches: &[(usize, usize, f64)]| {
        let batches: Vec<_> = batches.iter().copied().map(measured).collect();
        verdict(&batches, Good::High, 0.0).unwrap_err().to_string()
    };
    assert!(refused(&[(0, 0, 1.0), (0, 0, 2.0)]).contains("one mix only"));
    assert!(refused(&[(0, 0, 1.0), (1, 0, 2.0)]).contains("no mix was repeated"));
    assert!(refused(&[(0, 0, 1.0), (2, 0, 2.0)]).contains("mix 2 has no result"));
    assert!(refused(&[]).contains("one mix only"));
    let broken = refused(&[(0, 0, 1.0), (0, 0, f64::NAN), (1, 0, 2.0)]);
    assert!(broken.contains("run 2"), "{broken}");
    let mixed_up = refused(&[(0, 0, 1.0), (0, 0, 2.0), (1, 1, 2.0), (1, 1, 3.0)]);
    assert!(mixed_up.contains("cannot be told apart"), "{mixed_up}");
}

proptest! {
    /// Neither the order of the batches nor the unit of the response decides.
    #[test]
    fn order_and_unit_do_not_matter(seed in 0u64..500, scale in 0.01f64..100.0) {
        let batches = drawn(&[0.0, 1.0, 4.0], 3, seed);
        let found = verdict(&batches, Good::High, 0.0).unwrap();
        let turned: Vec<_> = batches.iter().rev().copied().collect();
        prop_assert_eq!(verdict(&turned, Good::High, 0.0).unwrap().winner, found.winner);
        let scaled: Vec<_> = batches
            .iter()
            .map(|one| Measured { response: one.response * scale, ..*one })
            .collect();
        prop_assert_eq!(verdict(&scaled, Good::High, 0.0).unwrap().winner, found.winner);
    }
}

fn judged(batches: &[(usize, usize, f64)]) -> Verdict {
    let batches: Vec<_> = batches.iter().copied().map(measured).collect();
    verdict(&batches, Good::High, 0.0).unwrap()
}

fn measured((mix, day, response): (usize, usize, f64)) -> Measured {
    Measured { mix, day, response }
}
