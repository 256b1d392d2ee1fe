//! The command line: parse, call, print; no logic.

fn main() {}
