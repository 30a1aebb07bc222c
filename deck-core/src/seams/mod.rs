//! Where the deck splits into boards: on which cross members the seams lie, and where on their flanges.

mod rules;

pub use rules::Rules;
