//! A log of a lifetime: 100,000 castings, and every listing within a tenth of a second. What goes
//! through all of it (chart, lessons) takes longer and has its own limit.

#![allow(clippy::expect_used, reason = "a helper that fails fails its test")]

use std::path::Path;
use std::time::{Duration, Instant};

use shoplog::around_pour::pours;
use shoplog::chart::chart;
use shoplog::entry::Fresh;
use shoplog::learn::lessons;
use shoplog::log::Log;
use shoplog::question::questions_about;
use shoplog::table::TABLES;
use shoplog::table::castings::{CASTINGS, SIZES};
use shoplog::table::melt::{HEATS, POURS};
use shoplog::table::mould::MOULDS;
use shoplog::value::Value;

/// The limit of a listing: what a founder takes for at once.
const AT_ONCE: Duration = Duration::from_millis(100);

/// The limit of what goes through the whole log.
const WHOLE: Duration = Duration::from_secs(1);

/// 25,000 pours of four castings over twenty years, one in ten measured.
fn lifetime(path: &Path) -> Log {
    let mut log = Log::open(path).expect("opens");
    let words = |text: &str| Value::Text(text.to_owned());
    for lot in 0..50 {
        let mut fresh = Vec::new();
        for at in 0..500 {
            let id = |kind: u32, more: usize| format!("{kind:08x}{lot:08x}{at:08x}{more:08x}");
            let day = format!("{}-{:02}-{:02}", 2000 + lot / 2, 1 + at % 12, 1 + at % 28);
            let [heat, mould, pour] = [1, 2, 3].map(|kind| id(kind, 0));
            let named = |mut fresh: Fresh, id: &str| {
                fresh.id = Some(id.to_owned());
                fresh
            };
            let melted = Fresh::of(&HEATS).with("alloy", words("A356"));
            let melted = melted
                .with("fuel", Value::Real(2.5))
                .with("charge", Value::Real(3.2));
            fresh.push(named(melted, &heat));
            fresh.push(named(
                Fresh::of(&MOULDS).with("job", words("bracket")),
                &mould,
            ));
            let one = Fresh::of(&POURS)
                .with("poured", words(&day))
                .with("heat", words(&heat));
            let one = one
                .with("mould", words(&mould))
                .with("mass", Value::Real(3.0));
            fresh.push(named(one, &pour));
            for more in 0..4 {
                let casting = Fresh::of(&CASTINGS)
                    .with("pour", words(&pour))
                    .with("mass", Value::Real(0.4))
                    .with("good", Value::Whole(i64::from((at + more) % 7 != 0)));
                fresh.push(named(casting, &id(4, more)));
            }
            if at % 10 == 0 {
                let size = Fresh::of(&SIZES).with("casting", words(&id(4, 0)));
                let size = size
                    .with("along", words("x"))
                    .with("pattern", Value::Real(100.0));
                fresh.push(size.with("measured", Value::Real(98.8)));
            }
        }
        log.add(&fresh).expect("written");
    }
    log
}

#[test]
#[ignore = "writes 175,000 entries and times them: run at night, on a quiet machine"]
fn every_listing_comes_at_once() {
    let folder = tempfile::tempdir().expect("a folder");
    let log = lifetime(&folder.path().join("log.sqlite"));
    let castings = log.counts().expect("counted")[8];
    assert_eq!((castings.0.name, castings.1), ("castings", 100_000));
    let mut slow = Vec::new();
    let mut timed = |what: &str, limit: Duration, work: &dyn Fn()| {
        let runs = [(); 3].map(|()| {
            let start = Instant::now();
            work();
            start.elapsed()
        });
        let best = runs.into_iter().min().expect("three");
        println!("{what}: {:.1} ms", best.as_secs_f64() * 1e3);
        if best > limit {
            slow.push(what.to_owned());
        }
    };
    for table in &TABLES {
        timed(table.name, AT_ONCE, &|| {
            drop(log.last(table, 20).expect("listed"))
        });
    }
    timed("counts", AT_ONCE, &|| drop(log.counts().expect("counted")));
    let id = log.find(&CASTINGS, "last").expect("there");
    timed("one casting", AT_ONCE, &|| {
        drop(questions_about(&log, &CASTINGS, &id).expect("asked"));
    });
    let pour = log.find(&POURS, "77").expect("there");
    timed("castings of a pour", AT_ONCE, &|| {
        drop(log.pointing(&CASTINGS, "pour", &pour).expect("listed"));
    });
    timed("chart", WHOLE, &|| drop(chart(&log).expect("drawn")));
    timed("lessons", WHOLE, &|| drop(lessons(&log).expect("taught")));
    timed("last pours with all around them", AT_ONCE, &|| {
        drop(pours(&log, 200).expect("listed"))
    });
    assert!(slow.is_empty(), "too slow: {slow:?}");
}
