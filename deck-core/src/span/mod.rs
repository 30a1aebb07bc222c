//! What load does a panel take on its supports, and what do its fasteners hold?
//!
//! Knows lay-ups, loads and supports, and no boat. A panel is a published row, its user's own figures, its sections or
//! its plies ([`StructuralPanel`]). [`span_limits`] gives the uniform load by deflection, bending and shear on equal spans;
//! [`largest_spacing`] and [`panels_that_carry`] turn that round. What screws hold is in [`hold`].
//!
//! ```text
//!      w w w w w w w w w w w w w w w w        l1: spacing, centre to centre: bending, and the limit of deflection
//!     ===================================     l2: clear span: shear
//!       [ ]      l2      [ ]         [ ]      l3: clear span + 1/4 in (5/8 in on wide supports): deflection
//!        |------ l1 ------|
//! ```
//!
//! Every figure carries its clause, what was assumed, and a caution. Outside a table there is no figure, in so many words.

mod axis;
mod beam;
mod capacity;
pub mod hold;
mod json;
mod layup;
mod limits;
mod load;
mod method;
mod options;
mod panel;
mod plate;
mod section;
mod service;
mod solvable;
mod spacing;
mod strength;
#[cfg(test)]
mod tests;
mod words;

pub use axis::{Axis, Criterion, Each};
pub use beam::{Beam, BeamLoad, BeamLoadKind, BeamProblem, BeamSpan, BeamSupport, End, Peak, Range, beam};
pub use beam::{BeamWorst, WorstPeak, WorstRange, WorstSpan, WorstSupport};
pub use capacity::capacity;
pub use layup::{BENDING_FACTOR, BENDING_FACTOR_THREE_PLY, CROSS_STIFFNESS, Layup, Ply, PlyGrain};
pub use limits::{CAUTION, NO_FIGURE, NoFigure, SpanAnswer, SpanLimits, span_limits};
pub use load::{Load, Utilisation};
pub use options::SpanOptions;
pub use panel::{OwnPanel, PublishedPanel, StructuralPanel};
pub use plate::{Place, PlateLoad, PlateLoadKind, PlateModel, PlateProblem, PlateSupport, Rigidity, assumed_torsion};
pub use plate::{
    Plate, PlateError, PlatePeak, PlateRange, PlateSearch, PlateState, PlateWorst, PlateWorstPeak, PlateZones, plate,
};
pub use section::{Section, SectionPanel, Stresses};
pub use service::UsedFactor;
pub use spacing::{Carrier, SpacingLimit, largest_spacing, panels_that_carry};
