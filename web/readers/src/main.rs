//! The module that a worker loads: what it offers is in the library's `boundary`, so that tests can import it.

use hobnail_readers as _;

fn main() {}
