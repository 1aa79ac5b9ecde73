//! Heat through a box of cells that may freeze: who fills the cells does not matter here.
//!
//! The room knows materials by tables of heat content, conductivity and solid fraction, and nothing
//! of any trade. The equation is dH/dt = div(k grad T) with the heat content H of a cell as what is
//! carried forward, so that latent heat needs no iteration: the temperature is read off H.
//!
//! ```
//! use solver::case::{Case, Condition};
//! use solver::grid::Grid;
//! use solver::material::{Material, Phase};
//! use solver::run::{End, Mode, Wish, solve};
//!
//! // A bar of ten cells at 100 °C, one end held at 0 °C.
//! let grid = Grid::uniform([10, 1, 1], 0.01);
//! let bar = Material::plain("bar", Phase { j_m3k: 3e6, w_mk: 100.0 });
//! let mut case = Case::filled(grid, bar, 100.0);
//! case.faces[0] = Condition::Held { celsius: 0.0 };
//! let wish = Wish { mode: Mode::Reference, ..Wish::until(End::At { s: 1000.0 }) };
//! let outcome = solve(&case, &wish, &mut |_| true)?;
//! assert!(outcome.last.celsius.iter().all(|&celsius| celsius < 50.0));
//! assert!(outcome.balance.drift < 1e-12);
//! # Ok::<(), solver::run::SolveError>(())
//! ```
//!
//! - [`material`]: tables of a material; [`grid`]: the box; [`case`]: all that is given.
//! - [`run`]: the loop over time, what is wished and what comes out.
//! - [`kept`]: a run in the middle of its way, to go on later.
//! - [`budget`]: what a case would take before it is begun.
//! - `early`: the first moments of contact, when half a cell resists too much.
//! - `link`: what lies between two cells, or between a cell and what surrounds it.
//! - `reference`: the plain explicit scheme in double precision, to check by.
//! - `multirate`: the scheme for use, many small stages where heat is quick, one step elsewhere.
//! - [`elsewhere`]: a run whose steps are taken elsewhere, such as on a graphics card;
//!   [`laid`]: how a case is laid out for that, `laid_kept`: and put aside.
//! - [`freezing`]: what is written down of every cell that freezes.

// The materials of the tests name this room as from outside.
#[cfg(test)]
extern crate self as solver;

pub mod budget;
pub mod case;
mod early;
pub mod elsewhere;
pub mod freezing;
pub mod grid;
pub mod kept;
pub mod laid;
mod laid_kept;
mod link;
pub mod material;
#[cfg(test)]
#[path = "../tests/block/materials.rs"]
mod materials;
mod multirate;
mod reference;
pub mod run;
mod scheme;
