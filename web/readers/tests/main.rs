//! Readers against files made by others, and against files made to break them.
#![allow(
    clippy::expect_used,
    clippy::panic,
    clippy::unwrap_used,
    reason = "tests fail by panicking, their helpers too"
)]
#![allow(clippy::float_cmp, reason = "what is compared exactly is written exactly")]

mod curves;

mod drawing;

mod heights;

mod network;

mod noted;

mod small;

mod systems;

mod words;

use std::fs;
use std::path::{Path, PathBuf};

use hobnail_readers::base::Base;
use hobnail_readers::fault::Fault;
use hobnail_readers::options::Options;

/// A file of the fixtures.
fn fixture(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../../tests/fixtures")
        .join(name)
}

fn bytes(name: &str) -> Vec<u8> {
    let path = fixture(name);
    fs::read(&path).unwrap_or_else(|fault| panic!("{}: {fault}", path.display()))
}

fn text(name: &str) -> String {
    String::from_utf8(bytes(name)).expect("the fixture is text")
}

/// Reads a fixture that has something to read.
#[track_caller]
fn read(name: &str, options: Options) -> Base {
    hobnail_readers::read(name, bytes(name), options).unwrap_or_else(|faults| panic!("{name}: {faults:?}"))
}

/// The faults of bytes that hold nothing to read.
#[track_caller]
fn refused(name: &str, bytes: &[u8], options: Options) -> Vec<Fault> {
    match hobnail_readers::read(name, bytes.to_vec(), options) {
        Ok(base) => panic!("{name} was read: {base:?}"),
        Err(faults) => faults,
    }
}
