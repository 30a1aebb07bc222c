//! Nothing: the benchmarks are the files beside this one.
