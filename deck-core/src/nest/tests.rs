//! Small cases that can be verified by hand.
