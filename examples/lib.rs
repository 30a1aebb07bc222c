//! Nothing: the examples are the files beside this one.
