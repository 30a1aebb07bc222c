//! Does the plywood carry it?

mod beam;

pub use beam::{Beam, BeamLoad, BeamLoadKind, BeamProblem, BeamSpan, BeamSupport, End, Peak, Range, beam};
pub use beam::{BeamWorst, WorstPeak, WorstRange, WorstSpan, WorstSupport};
