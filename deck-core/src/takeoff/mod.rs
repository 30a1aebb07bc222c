//! What to buy: every material once, in the units it is sold in.

mod hardware;
mod line;
mod mend;

pub use hardware::hardware;
pub use line::{Amount, Blocking, Item, PurchaseRules, Takeoff, TakeoffInput, TakeoffLine, takeoff};
pub use mend::MendPart;

#[cfg(test)]
mod tests;
