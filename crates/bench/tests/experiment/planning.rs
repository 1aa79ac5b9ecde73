//! Plans: what they hold, what they weigh, and that they beat one thing at a time.

use bench::experiment::batches::{BatchesFile, text};
use bench::experiment::design::{Planned, planned};
use bench::experiment::space::Space;
use bench::experiment::weighing::weighed;
use trials::optimal::efficiency;

use crate::{FROM_SCRATCH, experiment, one_session};

fn levels(plan: &Planned, part: usize, day: usize) -> Vec<f64> {
    let own = plan.batches.iter().filter(|batch| batch.day == day);
    let mut found: Vec<f64> = own.map(|batch| batch.amounts[part]).collect();
    found.sort_by(f64::total_cmp);
    found.dedup();
    found
}

/// The heap from scratch: nine batches of 1 kg, clay and water at three levels, two repeats,
/// molasses in a second block.
#[test]
fn a_heap_from_scratch_is_planned() {
    let experiment = experiment(FROM_SCRATCH);
    let plan = planned(&experiment).unwrap();
    let first: Vec<_> = plan.batches.iter().filter(|one| one.day == 1).collect();
    assert_eq!((first.len(), plan.batches.len()), (9, 15));
    assert_eq!(levels(&plan, 1, 1), [15.0, 22.5, 30.0]);
    assert_eq!(levels(&plan, 2, 1), [7.0, 9.5, 12.0]);
    assert_eq!(levels(&plan, 3, 1), [0.0]);
    assert_eq!(levels(&plan, 3, 2), [0.0, 3.0]);
    let repeats =
        first.len() - different(&first.iter().map(|one| &one.amounts).collect::<Vec<_>>());
    assert!(repeats >= 2, "{repeats} repeats");
    let molasses = plan
        .teaches
        .shows
        .iter()
        .find(|(name, _)| name == "molasses");
    assert!(
        molasses.unwrap().1 < 5.0,
        "its effect is told from that of the second day"
    );
    assert!(plan.teaches.degrees >= 3);
}

#[test]
fn the_order_is_drawn_by_the_seed_alone() {
    let of_seed = |seed: u64| {
        let text = one_session(9, "learn").replace("seed = 11", &format!("seed = {seed}"));
        planned(&experiment(&text)).unwrap().batches
    };
    assert_eq!(of_seed(11), of_seed(11));
    let orders: Vec<_> = (1..6).map(of_seed).collect();
    assert!(orders.windows(2).any(|two| two[0] != two[1]));
    let sorted = |batches: &[bench::experiment::batches::Batch]| {
        batches
            .windows(2)
            .all(|two| two[0].amounts <= two[1].amounts)
    };
    assert!(
        !orders.iter().all(|one| sorted(one)),
        "not in the order of the amounts"
    );
}

/// Seven batches beat one factor at a time from the middle, with the same number of batches.
#[test]
fn a_plan_of_seven_beats_one_thing_at_a_time() {
    let text = one_session(7, "learn").replace("repeats = 2", "repeats = 2\nshape = \"plane\"");
    let experiment = experiment(&text);
    let plan = planned(&experiment).unwrap();
    let space = Space::of(&experiment);
    let points: Vec<Vec<f64>> = plan.batches.iter().map(|one| space.point(one)).collect();
    assert!(points.len() - different(&points.iter().collect::<Vec<_>>()) >= 2);
    let one_at_a_time = [
        [0.0, 0.0],
        [0.0, 0.0],
        [0.0, 0.0],
        [-1.0, 0.0],
        [1.0, 0.0],
        [0.0, -1.0],
        [0.0, 1.0],
    ];
    let other: Vec<Vec<f64>> = one_at_a_time.iter().map(|one| one.to_vec()).collect();
    let model = space.model(plan.teaches.shape);
    let gain = efficiency(&model, &points, &other);
    assert!(gain > 1.5, "{gain}");
}

/// Water brought by damp sand and clay is taken off the water to add, so that each batch of the
/// plan holds its water: by hand for 100 parts of sand at 1 %, 30 of clay at 4 %, 12 of water.
#[test]
fn damp_parts_bring_their_water() {
    let experiment = experiment(&one_session(9, "learn"));
    let plan = planned(&experiment).unwrap();
    let batch = plan
        .batches
        .iter()
        .find(|one| one.amounts == [100.0, 30.0, 12.0])
        .unwrap();
    let rows = weighed(&experiment, batch).unwrap();
    let grams: Vec<f64> = rows.iter().map(|row| row.weigh.as_g()).collect();
    // 1000·100/142 = 704.23 dry is 711.34 damp; 1000·30/142 = 211.27 dry is 220.07 damp; both
    // bring 15.91, and 84.51 less that is 68.59.
    assert_eq!(grams.map_to_whole(), [711, 220, 69]);
    let sum: f64 = grams.iter().sum();
    assert!((sum - 1000.0).abs() <= 1.5, "{sum}");
}

#[test]
fn batches_read_back_as_they_were_written() {
    let experiment = experiment(FROM_SCRATCH);
    let plan = planned(&experiment).unwrap();
    let written = text(&experiment, &plan.batches);
    let read: BatchesFile = job::file_fault::read("batches.toml", &written).unwrap();
    assert_eq!(read.meant(&experiment).unwrap(), plan.batches);
}

#[test]
fn per_cents_stay_within_their_ranges_and_add_up() {
    let text = r#"
name = "Three in per cent"
seed = 3
batch = "2 kg"
basis = "as it lies"
batches = 12
repeats = 3
days = 2
aim = "best"
part = [
    { name = "sand", amount = "70 to 86 %" },
    { name = "clay", amount = "8 to 20 %" },
    { name = "water", amount = "4 to 9 %", is_water = true },
    { name = "coal dust", amount = "1 %" },
]
setting = [{ name = "mulled", choices = ["by foot", "by drill"] }]
response = [{ name = "strength", want = "high" }]
"#;
    let experiment = experiment(text);
    let plan = planned(&experiment).unwrap();
    assert_eq!(plan.batches.len(), 12);
    for batch in &plan.batches {
        let sum: f64 = batch.amounts.iter().sum();
        assert!((sum - 100.0).abs() < 1e-3, "{batch:?}");
        for (amount, part) in batch.amounts.iter().zip(&experiment.parts) {
            assert!(part.low - 1e-4 <= *amount && *amount <= part.high + 1e-4);
        }
        assert!([0.0, 1.0].contains(&batch.settings[0]));
    }
    let on_first = plan.batches.iter().filter(|one| one.day == 1).count();
    assert_eq!(on_first, 6);
}

fn different<T: PartialEq>(all: &[T]) -> usize {
    let mut kept: Vec<&T> = Vec::new();
    for one in all {
        if !kept.contains(&one) {
            kept.push(one);
        }
    }
    kept.len()
}

trait Whole {
    fn map_to_whole(&self) -> Vec<i64>;
}

impl Whole for Vec<f64> {
    fn map_to_whole(&self) -> Vec<i64> {
        self.iter().map(|one| one.round() as i64).collect()
    }
}
