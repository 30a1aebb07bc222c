//! Does the plywood carry it?

mod beam;
mod plate;

pub use beam::{Beam, BeamLoad, BeamLoadKind, BeamProblem, BeamSpan, BeamSupport, End, Peak, Range, beam};
pub use beam::{BeamWorst, WorstPeak, WorstRange, WorstSpan, WorstSupport};
pub use plate::{Place, PlateLoad, PlateLoadKind, PlateModel, PlateProblem, PlateSupport, Rigidity, assumed_torsion};
pub use plate::{Plate, PlateError, PlatePeak, PlateRange, PlateState, PlateWorst, PlateWorstPeak, plate};
