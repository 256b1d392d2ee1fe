//! Base data: files that others made, opened by the page, looked at, and taken into the plan.
//!
//! The network is that of `tests/fixtures/streets/dr_helsinki` in the formats of `tests/fixtures/readers/network`.

use std::path::PathBuf;

use hobnail_end_to_end::access::{activate, audit_of};
