//! Reads base data in the browser's worker: bytes in, neutral layers out.
//!
//! - [`read()`] reads a whole file, [`Reader`] step by step, so that a worker can report and stop. A file's format is
//!   recognized by its content.
//! - [`base`] is what comes out: layers of features with their tags and what each may become in a plan, positions in
//!   degrees or in the plan's millimeters; [`grid`] is heights, and what they are between its points.
//! - [`fault`] is what could not be read, with its place; a file with faults gives what could be read of it.
//! - [`noted`] is what of it a plan holds as words.
//! - [`osm`] and [`formats`] are the readers; [`system`] the coordinate systems.
//! - [`Reading`] is what JavaScript calls; how the worker does is at the top of `boundary.rs`.
//!
//! It is a crate and a module of its own so that the page does not carry it, and knows nothing of plans. Whatever a file
//! holds, nothing here panics, and memory is bounded: by the file's size, and by limits on what is expanded and kept.

#![allow(
    clippy::float_cmp,
    reason = "positions are compared for being the same one, and values for being a mark"
)]

pub mod base;
pub mod fault;
pub mod options;

mod read;
pub use read::{Progress, Reader, Work, read, recognized};

pub mod formats;
pub mod osm;

pub mod system;

pub mod noted;

pub mod grid;

pub mod pieces;

mod boundary;
pub use boundary::Reading;

mod bytes;
pub use bytes::Bytes;

pub mod clip;
pub mod output;
mod rings;
