//! What lies in the rack and what can be bought: sheets, offcuts, and the saw that cuts them.

mod saw;
mod sheet;

pub use saw::{Saw, SawLine};
pub(crate) use sheet::check_prices;
pub use sheet::{Measured, Sheet, SheetGrain, Treatment};
