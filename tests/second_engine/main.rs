//! The same questions put to other libraries.
//!
//! Panels are strips of the outline that deck-core cuts exactly, arcs as arcs. Here the same strips are cut out of the
//! outline's polygon by `geo` (`i_overlay`) and by `geo-booleanop` 0.3.2 (Martínez, Rueda and Feito), and openings taken
//! out of them; areas, the number of parts and the area of what differs are compared.
//!
//! Beams and plates are solved by `PyNite`, a general-purpose finite element library (`pynite.csv`, made by `pynite.py`), and
//! plates by the double and single series of the textbook.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, reason = "a test that cannot go on has failed")]

mod grid;
mod series;
mod shapes;
mod span;
