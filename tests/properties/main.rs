//! Laws that hold for every input, tried on random ones.

mod nest;
mod saw_replay;
