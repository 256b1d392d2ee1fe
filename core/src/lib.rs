//! A plan of a walkable neighborhood and what it means: the drawing, the fabric it makes, the network people walk,
//! and the figures that follow.
//!
//! Modules in reading order; imports go one way, downward to upward never:
//! `plan` → `exchange` → `fabric` → `network` → `measures` → `outcomes` → `rules` → `study` → `report`.
//! `figures` and `factors` may be used by `measures` and everything after it, and import none of them. `messages`,
//! `number`, `order` and `passing` may be used by all.
//!
//! Conventions: x east, y north; drawn coordinates in integer millimeters; measures in SI `f64`; angles in radians.
//! There is no clock, no file access and no randomness in this library: time and seeds are arguments.
#![forbid(unsafe_code)]

pub mod messages;

pub mod number;
pub mod order;
pub mod passing;
pub mod text;

pub mod plan;

pub mod exchange;

pub mod fabric;

pub mod network;

pub mod figures;

pub mod factors;

pub mod measures;

pub mod study;

pub mod report;
