//! Longer work: runs that follow the freezing of a mould or look for its smallest feeder, one after
//! the other, whoever looks on.
//!
//! A run goes on when the page is closed and ends when the program does. What a freezing finds is
//! written whole at its end, its findings last: a program that is killed in the middle leaves what
//! was there before, and begins it again from where it was kept (`followed.rs`).

use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::time::Instant;

use serde::Serialize;
use tokio::sync::watch;
use utoipa::ToSchema;

/// A run as it stands.
#[derive(Clone, Debug, PartialEq, Serialize, ToSchema)]
pub struct Run {
    /// Its number.
    pub id: u64,
    /// The way to its job.
    pub job: String,
    /// What it does.
    pub of: RunOf,
    /// How it stands.
    pub state: RunState,
    /// How much of it is done, 0 to 1.
    pub share: f64,
    /// How long it will likely take still, s; none before that can be told.
    pub left_s: Option<f64>,
    /// Why it came to nothing, where it did.
    pub trouble: Option<String>,
    /// What it tells, a sentence each: where it goes on, what it found.
    pub told: Vec<String>,
}

/// What a run does.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, ToSchema)]
#[serde(rename_all = "kebab-case")]
pub enum RunOf {
    /// It follows the freezing of a mould.
    Freezing,
    /// It looks for the smallest feeder that feeds.
    Feeder,
}

/// How a run stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, ToSchema)]
#[serde(rename_all = "kebab-case")]
pub enum RunState {
    /// Waits for the one before it.
    Waits,
    /// Under way.
    UnderWay,
    /// Done, and kept.
    Done,
    /// Stopped by hand.
    Stopped,
    /// Came to nothing.
    Failed,
}

/// All runs since the program was started.
#[derive(Debug)]
pub struct Runs {
    all: Mutex<Vec<Known>>,
    /// Held by the run that is under way: two at once would only take twice as long.
    turn: Mutex<()>,
    changed: watch::Sender<u64>,
}

#[derive(Debug)]
struct Known {
    run: Run,
    began: Instant,
    stop: Arc<AtomicBool>,
}

/// By which a run tells how it stands.
#[derive(Clone, Copy, Debug)]
pub struct Report<'a> {
    runs: &'a Runs,
    id: u64,
    stop: &'a AtomicBool,
}

impl Report<'_> {
    /// So much of it is done; whether it is to go on.
    pub fn reached(&self, share: f64) -> bool {
        self.runs.reached(self.id, share);
        !self.stop.load(Ordering::Relaxed)
    }

    /// A sentence that is read while it goes on.
    pub fn tells(&self, words: String) {
        self.runs
            .change(self.id, |known| known.run.told.push(words));
    }
}

/// Most runs that are remembered: older ones that have ended are forgotten.
const MOST_KNOWN: usize = 20;

/// A share that has grown by less is not told: a page draws no finer.
const TOLD_SHARE: f64 = 0.004;

/// Before so much is done nobody knows how long the rest takes.
const KNOWN_SHARE: f64 = 0.03;

impl Default for Runs {
    fn default() -> Runs {
        Runs {
            all: Mutex::default(),
            turn: Mutex::default(),
            changed: watch::Sender::new(0),
        }
    }
}

impl Runs {
    /// All runs, the oldest first.
    pub fn list(&self) -> Vec<Run> {
        let all = locked(&self.all);
        all.iter().map(|known| known.run.clone()).collect()
    }

    /// Told whenever a run changes; its value is the number of the change.
    pub fn changes(&self) -> watch::Receiver<u64> {
        self.changed.subscribe()
    }

    /// Begins a run for a job, or gives the one that is not over yet. The work is handed a report,
    /// and gives back what it found.
    pub fn begin<W>(self: &Arc<Runs>, job: &str, of: RunOf, work: W) -> Run
    where
        W: FnOnce(&Report<'_>) -> Result<Vec<String>, String> + Send + 'static,
    {
        let mut all = locked(&self.all);
        if let Some(known) = all
            .iter()
            .find(|known| known.run.is_of(job, of) && !known.run.is_over())
        {
            return known.run.clone();
        }
        let run = Run {
            id: all.iter().map(|known| known.run.id).max().unwrap_or(0) + 1,
            job: job.to_owned(),
            of,
            state: RunState::Waits,
            share: 0.0,
            left_s: None,
            trouble: None,
            told: Vec::new(),
        };
        let stop = Arc::new(AtomicBool::new(false));
        all.retain(|known| !known.run.is_of(job, of));
        while all.len() >= MOST_KNOWN && all.iter().any(|known| known.run.is_over()) {
            let over = all
                .iter()
                .position(|known| known.run.is_over())
                .unwrap_or(0);
            all.remove(over);
        }
        all.push(Known {
            run: run.clone(),
            began: Instant::now(),
            stop: Arc::clone(&stop),
        });
        drop(all);
        self.tell();
        let (runs, id) = (Arc::clone(self), run.id);
        std::thread::spawn(move || runs.follow(id, &stop, work));
        run
    }

    /// Asks a run to stop; nothing where there is none of this number.
    pub fn stop(&self, id: u64) -> Option<()> {
        let all = locked(&self.all);
        let known = all.iter().find(|known| known.run.id == id)?;
        known.stop.store(true, Ordering::Relaxed);
        Some(())
    }

    fn follow<W>(&self, id: u64, stop: &AtomicBool, work: W)
    where
        W: FnOnce(&Report<'_>) -> Result<Vec<String>, String>,
    {
        let _turn = locked(&self.turn);
        let goes_on = || !stop.load(Ordering::Relaxed);
        if goes_on() {
            self.change(id, |known| {
                known.run.state = RunState::UnderWay;
                known.began = Instant::now();
            });
            let report = Report {
                runs: self,
                id,
                stop,
            };
            // A fault of the program ends the run and not the server.
            let work = std::panic::AssertUnwindSafe(|| work(&report));
            let done = std::panic::catch_unwind(work).unwrap_or_else(|_| Err(FAULT.to_owned()));
            if let Ok(told) = done {
                return self.change(id, |known| {
                    known.run.told.extend(told);
                    known.run.state = RunState::Done;
                    known.run.share = 1.0;
                    known.run.left_s = None;
                });
            }
            if goes_on() {
                return self.change(id, |known| {
                    known.run.state = RunState::Failed;
                    known.run.left_s = None;
                    known.run.trouble = done.err();
                });
            }
        }
        self.change(id, |known| {
            known.run.state = RunState::Stopped;
            known.run.left_s = None;
        });
    }

    fn reached(&self, id: u64, share: f64) {
        let grown = |run: &Run| share - run.share >= TOLD_SHARE;
        let is_worth_telling = locked(&self.all)
            .iter()
            .any(|known| known.run.id == id && grown(&known.run));
        if is_worth_telling {
            self.change(id, |known| {
                let share = share.clamp(0.0, 1.0);
                known.run.share = share;
                let gone_s = known.began.elapsed().as_secs_f64();
                known.run.left_s = (share >= KNOWN_SHARE).then(|| gone_s * (1.0 - share) / share);
            });
        }
    }

    fn change(&self, id: u64, change: impl FnOnce(&mut Known)) {
        let mut all = locked(&self.all);
        if let Some(known) = all.iter_mut().find(|known| known.run.id == id) {
            change(known);
        }
        drop(all);
        self.tell();
    }

    fn tell(&self) {
        self.changed.send_modify(|number| *number += 1);
    }
}

/// What is said of a fault of ours.
const FAULT: &str = "this could not be worked out, which is a fault of the program";

impl Run {
    fn is_of(&self, job: &str, of: RunOf) -> bool {
        self.job == job && self.of == of
    }

    fn is_over(&self) -> bool {
        !matches!(self.state, RunState::Waits | RunState::UnderWay)
    }
}

fn locked<T>(mutex: &Mutex<T>) -> MutexGuard<'_, T> {
    mutex.lock().unwrap_or_else(PoisonError::into_inner)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

    use std::sync::{Arc, mpsc};

    use super::{Run, RunOf, RunState, Runs};

    /// Waits until the only run of a job is over.
    fn ended(runs: &Runs, job: &str) -> Run {
        loop {
            let all = runs.list();
            let run = all.iter().find(|run| run.job == job).unwrap();
            if run.is_over() {
                return run.clone();
            }
            std::thread::yield_now();
        }
    }

    #[test]
    fn one_run_a_job_reports_and_is_done() {
        let runs = Arc::new(Runs::default());
        let (go, wait) = mpsc::channel::<()>();
        let first = runs.begin("a", RunOf::Freezing, move |report| {
            assert!(report.reached(0.5));
            report.tells("on the processor".to_owned());
            wait.recv().unwrap();
            Ok(vec!["found".to_owned()])
        });
        let again = runs.begin("a", RunOf::Freezing, |_| Err("never begun".to_owned()));
        assert_eq!(first.id, again.id);
        go.send(()).unwrap();
        let done = ended(&runs, "a");
        assert_eq!((done.state, done.share), (RunState::Done, 1.0));
        assert_eq!(done.told, ["on the processor", "found"]);
        let next = runs.begin("a", RunOf::Freezing, |_| Err("too cold".to_owned()));
        assert!(next.id > first.id);
        let failed = ended(&runs, "a");
        assert_eq!(failed.state, RunState::Failed);
        assert_eq!(failed.trouble.as_deref(), Some("too cold"));
    }

    #[test]
    fn a_run_that_waits_or_is_under_way_is_stopped() {
        let runs = Arc::new(Runs::default());
        let under_way = runs.begin("a", RunOf::Freezing, |report| {
            while report.reached(0.1) {
                std::thread::yield_now();
            }
            Err("stopped".to_owned())
        });
        let waits = runs.begin("b", RunOf::Freezing, |_| Ok(Vec::new()));
        runs.stop(waits.id).unwrap();
        runs.stop(under_way.id).unwrap();
        assert_eq!(ended(&runs, "a").state, RunState::Stopped);
        assert_eq!(ended(&runs, "b").state, RunState::Stopped);
        assert!(runs.stop(99).is_none());
    }

    #[test]
    fn a_fault_ends_the_run_alone() {
        let runs = Arc::new(Runs::default());
        runs.begin("a", RunOf::Freezing, |_| -> Result<Vec<String>, String> {
            unreachable!("a fault")
        });
        assert_eq!(ended(&runs, "a").state, RunState::Failed);
        runs.begin("b", RunOf::Freezing, |_| Ok(Vec::new()));
        assert_eq!(ended(&runs, "b").state, RunState::Done);
    }
}
