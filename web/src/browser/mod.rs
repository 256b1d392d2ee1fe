//! The only place that names browser types: everything else speaks in our own.

pub mod address;

pub mod document;

pub mod events;

pub mod files;

pub mod keeping;

pub mod lasting;

pub mod loader;

pub mod notice;

pub mod painter;

pub mod reading;

pub mod remembered;

pub mod still;

pub mod pictures;

pub mod view;

pub mod words;

pub mod worker;

mod paths;

mod textures;
