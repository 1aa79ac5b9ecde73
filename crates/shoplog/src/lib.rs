//! What was poured, how it came out, what that teaches.
//!
//! ```
//! use shoplog::diagnosis::cause::causes;
//!
//! let causes = causes()?;
//! assert!(causes.iter().any(|cause| cause.id == "wet-sand"));
//! # Ok::<(), toml::de::Error>(())
//! ```

pub mod diagnosis;
