//! Killed, starved and shared: nothing that was confirmed is lost.

#![allow(clippy::expect_used, reason = "a helper that fails fails its test")]

use std::collections::BTreeSet;
use std::io::{BufRead, BufReader, Write};
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::thread::sleep;
use std::time::Duration;

use shoplog::entry::Fresh;
use shoplog::log::Log;
use shoplog::table::castings::CASTINGS;
use shoplog::table::melt::{HEATS, POURS};
use shoplog::value::Value;

/// Where the child writes, and how many lots.
const PATH: &str = "ODDSIDE_TORTURE_LOG";
const LOTS: &str = "ODDSIDE_TORTURE_LOTS";

/// The child: writes a heat with its pour and two castings at a time, and says so once they are
/// confirmed. Run by itself it has nothing to do.
#[test]
fn child_that_writes() {
    let (Ok(path), Ok(lots)) = (std::env::var(PATH), std::env::var(LOTS)) else {
        return;
    };
    let mut log = Log::open(Path::new(&path)).expect("opens");
    for _ in 0..lots.parse::<usize>().expect("a number") {
        let lot = lot();
        log.add(&lot).expect("written");
        let ids: Vec<&str> = lot.iter().filter_map(|one| one.id.as_deref()).collect();
        let mut out = std::io::stdout().lock();
        writeln!(out, "confirmed {}", ids.join(" ")).expect("told");
        out.flush().expect("told");
    }
}

/// A heat, its pour and two castings that point to each other.
fn lot() -> Vec<Fresh> {
    let id = |salt: u32| {
        let now = std::time::SystemTime::now().duration_since(std::time::UNIX_EPOCH);
        let now = now.expect("after 1970").as_nanos() as u64;
        format!("{now:016x}{:08x}{salt:08x}", std::process::id())
    };
    let (heat, pour) = (id(1), id(2));
    let link = |id: &str| Value::Text(id.to_owned());
    let mut lot = vec![
        Fresh::of(&HEATS),
        Fresh::of(&POURS).with("heat", link(&heat)),
        Fresh::of(&CASTINGS).with("pour", link(&pour)),
        Fresh::of(&CASTINGS).with("pour", link(&pour)),
    ];
    for (one, id) in lot.iter_mut().zip([heat, pour, id(3), id(4)]) {
        one.id = Some(id);
    }
    lot
}

fn child(path: &Path, lots: usize) -> Child {
    Command::new(std::env::current_exe().expect("this test"))
        .args([
            "--exact",
            "child_that_writes",
            "--nocapture",
            "--test-threads=1",
        ])
        .env(PATH, path)
        .env(LOTS, lots.to_string())
        .stdout(Stdio::piped())
        .stderr(Stdio::null())
        .spawn()
        .expect("a child")
}

/// The ids that a child has confirmed.
fn confirmed(child: &mut Child) -> Vec<String> {
    let out = child.stdout.take().expect("piped");
    let lines = BufReader::new(out).lines().map_while(Result::ok);
    let ids = lines.filter_map(|line| {
        let told = line
            .split_once("confirmed ")
            .map(|(_, ids)| ids.to_owned())?;
        // The last line may be cut by the kill.
        let whole = told.len() == 4 * 32 + 3;
        whole.then(|| told.split(' ').map(str::to_owned).collect::<Vec<_>>())
    });
    ids.flatten().collect()
}

fn ids(log: &Log) -> BTreeSet<String> {
    let tables = [&HEATS, &POURS, &CASTINGS].into_iter();
    let entries = tables.flat_map(|table| log.last(table, 10_000_000).expect("listed"));
    entries.map(|entry| entry.id).collect()
}

fn killed(times: usize) {
    let folder = tempfile::tempdir().expect("a folder");
    let (mut kept, mut sum) = (BTreeSet::new(), 0);
    for round in 0..times {
        // A fresh log now and then, so that the start of a file is met by kills too.
        let path = folder.path().join(format!("log-{}.sqlite", round / 100));
        if round % 100 == 0 {
            kept.clear();
        }
        let mut writing = child(&path, 1_000_000);
        // From before the file is there to some dozen lots.
        sleep(Duration::from_millis((round as u64 * 7919) % 37));
        writing.kill().expect("killed");
        let told = confirmed(&mut writing);
        writing.wait().expect("gone");
        sum += told.len();
        kept.extend(told);
        let log = Log::open(&path).expect("opens after a kill");
        if round % 100 == 99 || round + 1 == times {
            log.check().expect("sound");
            let found = ids(&log);
            let lost: Vec<&String> = kept.difference(&found).collect();
            assert!(lost.is_empty(), "lost after {round} kills: {lost:?}");
            let counts = log.counts().expect("counted");
            let of = |name: &str| counts.iter().find(|(table, _)| table.name == name);
            let [heats, castings] = ["heats", "castings"].map(|name| of(name).expect("told").1);
            assert_eq!(castings, 2 * heats, "a lot is written whole or not at all");
        }
    }
    assert!(
        sum > times,
        "{sum} confirmed in {times} runs: too few to mean anything"
    );
}

#[test]
fn killed_a_hundred_times_nothing_confirmed_is_lost() {
    killed(100);
}

#[test]
#[ignore = "takes a minute or two: run at night"]
fn killed_a_thousand_times_nothing_confirmed_is_lost() {
    killed(1000);
}

#[test]
fn two_that_write_at_once_lose_nothing() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("log.sqlite");
    let mut both = [child(&path, 100), child(&path, 100)];
    let told: Vec<String> = both.iter_mut().flat_map(confirmed).collect();
    for one in &mut both {
        assert!(one.wait().expect("gone").success());
    }
    let log = Log::open(&path).expect("opens");
    log.check().expect("sound");
    assert_eq!(told.len(), 800);
    assert!(told.iter().all(|id| ids(&log).contains(id)));
}
