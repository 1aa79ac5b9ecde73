//! Progress on whatever takes longer than a moment, and a clean stop.

use std::borrow::Cow;
use std::sync::atomic::{AtomicBool, Ordering};
use std::time::Duration;

use indicatif::{ProgressBar, ProgressStyle};

/// Says on standard error what is being done, from half a second on, until it is dropped.
pub struct Working {
    bar: ProgressBar,
}

impl Working {
    /// Begins.
    pub fn on(what: impl Into<Cow<'static, str>>) -> Working {
        let bar = ProgressBar::new_spinner().with_message(what);
        let style = ProgressStyle::with_template("{msg} {elapsed}");
        bar.set_style(style.unwrap_or_else(|_| ProgressStyle::default_spinner()));
        bar.enable_steady_tick(Duration::from_millis(500));
        Working { bar }
    }
}

/// Something that is being done in so many cells, with the memory that it takes.
pub fn in_cells(what: &str, cells: usize, bytes: f64) -> String {
    let mib = bytes / f64::from(1 << 20);
    let memory = match mib < 1024.0 {
        true => format!("{:.0} MiB", mib.ceil()),
        false => format!("{:.1} GiB", mib / 1024.0),
    };
    format!("{what} in {cells} cells with {memory} of memory,")
}

/// Says on standard error how much of something is done, until it is dropped.
pub struct Share {
    bar: ProgressBar,
}

impl Share {
    /// Begins with nothing done.
    pub fn of(what: &'static str) -> Share {
        let bar = ProgressBar::new(100).with_message(what);
        let style = ProgressStyle::with_template("{msg} {pos} %, {elapsed} gone, {eta} left");
        bar.set_style(style.unwrap_or_else(|_| ProgressStyle::default_bar()));
        Share { bar }
    }

    /// Says from now on that something else is being done.
    pub fn is_now(&self, what: String) {
        self.bar.set_message(what);
    }

    /// So much is done, from 0 to 1.
    pub fn reached(&self, share: f64) {
        self.bar
            .set_position((share * 100.0).clamp(0.0, 100.0) as u64);
    }
}

impl Drop for Share {
    fn drop(&mut self) {
        self.bar.finish_and_clear();
    }
}

impl Drop for Working {
    fn drop(&mut self) {
        self.bar.finish_and_clear();
    }
}

/// Whether some work ends by itself at its next step when it is asked to.
static STEPS: AtomicBool = AtomicBool::new(false);

/// Whether Ctrl-C was pressed on such work.
static IS_ASKED: AtomicBool = AtomicBool::new(false);

/// While this lives, a first Ctrl-C only asks for a stop at the next step; a second one ends the
/// program at once.
pub struct StopsAtStep(());

impl StopsAtStep {
    /// Begins.
    pub fn begin() -> StopsAtStep {
        STEPS.store(true, Ordering::Relaxed);
        StopsAtStep(())
    }

    /// Whether a stop is asked for.
    pub fn is_asked(&self) -> bool {
        IS_ASKED.load(Ordering::Relaxed)
    }
}

impl Drop for StopsAtStep {
    fn drop(&mut self) {
        STEPS.store(false, Ordering::Relaxed);
    }
}

/// On Ctrl-C the program ends with 130. Files are written beside their place and moved there whole,
/// so that nothing half-written is left under their names.
pub fn stop_cleanly_on_ctrl_c() {
    // Without a handler the system's own way of ending is just as clean, only less polite.
    let _ = ctrlc::set_handler(|| {
        if STEPS.load(Ordering::Relaxed) && !IS_ASKED.swap(true, Ordering::Relaxed) {
            return;
        }
        crate::print::talk("stopped");
        std::process::exit(130);
    });
}
