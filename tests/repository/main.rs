//! Rules about the repository that no compiler knows.
#![allow(
    clippy::expect_used,
    clippy::panic,
    reason = "tests fail by panicking, their helpers too"
)]

mod documents;

mod layout;

mod licenses;

mod messages;
