//! What to weigh out of which heap: charge make-up by linear programme.
//!
//! Heaps of metal are known only in ranges, some of it burns off on the way, and the target is a
//! range as well. The cheapest charge that keeps the likely composition clear of the limits is a
//! linear programme: every balance of mass is linear in the masses weighed out. How sure it is to
//! come out in target is then found by drawing the heaps many times over from their ranges.
//!
//! Start with [`makeup::make_up`]; [`balance`] holds the sums that are done by hand.

pub mod balance;
pub mod chance;
mod cheapest;
pub mod composition;
pub mod element;
pub mod heap;
pub mod infeasible;
pub mod limit;
pub mod loss;
pub mod makeup;
pub mod measured;
mod mix;
pub mod next_change;
pub mod order;
mod programme;
pub mod share_text;
pub mod stock;
pub mod target;
pub mod weigh;
