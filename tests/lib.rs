//! Nothing: the tests are in the folders beside this file, one target each.
