//! Everything that gives metal to the casting while it freezes, and what helps it to freeze in
//! the right order.

pub mod caine;
pub mod chill;
pub mod feeder;
pub mod lining;
pub mod neck;
pub mod need;
pub mod padding;
pub mod reach;
pub mod rules;
pub mod shape_factor;
pub mod shop_rules;
