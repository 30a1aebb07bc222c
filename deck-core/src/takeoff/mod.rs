//! What to buy: every material once, in the units it is sold in.

mod line;

pub use line::{Amount, Blocking, Item, PurchaseRules, Takeoff, TakeoffInput, TakeoffLine, takeoff};

#[cfg(test)]
mod tests;
