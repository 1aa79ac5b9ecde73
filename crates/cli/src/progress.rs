//! Progress on whatever takes longer than a moment, and a clean stop.

use std::time::Duration;

use indicatif::{ProgressBar, ProgressStyle};

/// Says on standard error what is being done, from half a second on, until it is dropped.
pub struct Working {
    bar: ProgressBar,
}

impl Working {
    /// Begins.
    pub fn on(what: &'static str) -> Working {
        let bar = ProgressBar::new_spinner().with_message(what);
        let style = ProgressStyle::with_template("{msg} {elapsed}");
        bar.set_style(style.unwrap_or_else(|_| ProgressStyle::default_spinner()));
        bar.enable_steady_tick(Duration::from_millis(500));
        Working { bar }
    }
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

/// On Ctrl-C the program ends with 130. Files are written beside their place and moved there whole,
/// so that nothing half-written is left under their names.
pub fn stop_cleanly_on_ctrl_c() {
    // Without a handler the system's own way of ending is just as clean, only less polite.
    let _ = ctrlc::set_handler(|| {
        crate::print::talk("stopped");
        std::process::exit(130);
    });
}
