//! The page as people use it, one file per thing they do.

#![allow(clippy::expect_used, clippy::panic, reason = "a test fails by panicking")]

mod accessibility;
mod alternatives;
mod bases;
mod draw;
mod editors;
mod everywhere;
mod files;
mod heights;
mod keeping;
mod keyboard;
mod land;
mod language;
mod load;
mod maps;
mod modes;
mod moments;
mod moving;
mod offline;
mod remarks;
mod selection;
mod sharing;
mod site;
mod touch;
