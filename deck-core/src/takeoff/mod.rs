//! What to buy: every material once, in the units it is sold in.

mod line;
mod mend;

pub use line::{Amount, Blocking, Item, PurchaseRules, Takeoff, TakeoffInput, TakeoffLine, takeoff};
pub use mend::MendPart;

#[cfg(test)]
mod tests;
