//! Tests of the core from outside, as another crate sees it.
