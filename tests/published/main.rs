//! Figures that others have published, against ours.

mod nest;
