//! End-to-end tests: the built page in a real browser, driven as a person would.
//!
//! `scenario` starts a server, a browser and the page for one test; `page` names the page's elements once; `access`
//! looks at it for everyone, and `touch` has fingers and a pen.
//! The tests themselves are in `scenarios/`, one file per user action.
#![allow(clippy::expect_used, clippy::panic, reason = "a harness of tests fails by panicking")]

pub mod scenario;

pub mod page;

pub mod access;

pub mod touch;

pub mod command_line;

pub mod browser;

pub mod engine;

pub mod driver;

pub mod server;

pub mod grid;
