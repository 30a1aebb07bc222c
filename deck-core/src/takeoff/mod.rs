//! What to buy: every material once, in the units it is sold in.

mod hardware;
mod line;

pub use hardware::hardware;
pub use line::{Amount, Item, PurchaseRules, Takeoff, TakeoffInput, TakeoffLine, takeoff};

#[cfg(test)]
mod tests;
