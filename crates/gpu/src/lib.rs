//! Heat through a box of cells on a graphics card, whichever it is: who fills the cells does not
//! matter here.
//!
//! The room takes the steps of a run of `solver` through a portable graphics interface. All else
//! stays there: the loop over time, the balance, what is kept. Numbers are in single precision on
//! the card, sums in double precision on the processor.
//!
//! ```
//! use gpu::card::{Wished, chosen, elsewhere};
//! use solver::case::{Case, Condition};
//! use solver::grid::Grid;
//! use solver::material::{Material, Phase};
//! use solver::run::{End, Wish, solve_on};
//!
//! let bar = Material::plain("bar", Phase { j_m3k: 3e6, w_mk: 100.0 });
//! let mut case = Case::filled(Grid::uniform([10, 1, 1], 0.01), bar, 100.0);
//! case.faces[0] = Condition::Held { celsius: 0.0 };
//! // On the processor where there is no card, or where it is slower.
//! let card = chosen(Wished::Faster, case.grid.cells())?;
//! let on = elsewhere(card.as_ref());
//! let wish = Wish::until(End::At { s: 1000.0 });
//! let outcome = solve_on(on, &case, &wish, None, &mut |_, _| true)?;
//! assert!(outcome.last.celsius.iter().all(|&celsius| celsius < 50.0));
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```
//!
//! - [`adapters`]: the cards of this machine; [`speed`]: how fast memories are.
//! - [`card`]: a card as a place for steps, and when it is chosen.
//! - [`device`]: a card that is open, and whether it is still there.
//! - `shape`, `packed`, `tables`: a case laid out in lists for a card.
//! - `lists`, `groups`, `programs`: the lists, who sees what of them, the programs in `shaders/`.
//! - `course`, `steps`: steps in batches.

pub mod adapters;
pub mod card;
mod course;
pub mod device;
mod groups;
mod lists;
mod packed;
mod programs;
mod shape;
pub mod speed;
mod steps;
mod tables;
