//! The boards in their true shape: what the outline and the openings leave of each strip between two seams.
//!
//! A strip of the deck between two seams is cut out of the outline with its arcs as arcs; where a notch or a bay
//! splits it, each part is a panel of its own. Openings lie within one panel, as no seam may cross them.
//!
//! Labels count the boards from the bow: `1`, `2`, …; parts of a split board are told apart as `6P` (port) and `6S`
//! (starboard), or `6a`, `6b`, … from port where there are more than two.

mod cells;
mod panel;
mod taper;

pub use cells::panels_of;
pub use panel::{Axis, Edge, Panel, PanelOpening, SeamLine, panel_cut_out, panels, panels_between};
pub use taper::Taper;

#[cfg(test)]
mod tests;
