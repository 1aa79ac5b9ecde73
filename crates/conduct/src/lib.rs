//! A bare heat-conduction case as a file, run and answered: for whoever wants to check the solver.
//!
//! The file is described in `docs/conduction.md`, with examples in `examples/conduction/`.
//!
//! ```
//! let text = r#"
//! title = "a bar, one end in ice water"
//! [box]
//! x = [{ to_mm = 100, cells = 10 }]
//! y = [{ to_mm = 10, cells = 1 }]
//! z = [{ to_mm = 10, cells = 1 }]
//! [materials.bar]
//! plain = { j_m3k = 3e6, w_mk = 100 }
//! [[fill]]
//! with = "bar"
//! start_c = 100
//! [faces]
//! x_low = { held_c = 0 }
//! [run]
//! until_s = 60
//! [[probe]]
//! name = "far end"
//! at_mm = [100, 5, 5]
//! "#;
//! let bare = conduct::reading::read(text)?;
//! let answer = conduct::answer::run(&bare, &mut |_| true)?;
//! let probe = &answer.moments[0].probes[0];
//! assert!(probe.celsius > 60.0 && probe.celsius < 100.0);
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```
//!
//! - [`case_file`]: what a file may say, as typed.
//! - [`reading`]: from the text to a case that is complete and checked.
//! - `filling`, `shape`: which cells a filling takes; `sides`: what the sides of the box meet.
//! - [`answer`]: what comes out, and how it stands to what the file expects.

pub mod answer;
pub mod case_file;
mod filling;
pub mod reading;
mod shape;
mod sides;
