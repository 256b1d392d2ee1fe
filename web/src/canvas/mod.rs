//! The drawing: camera, what is drawn, in which order and weight.

pub mod camera;

pub mod scene;

pub mod scene_of;

pub use hobnail_core::report::drawing::{offset, profile};

pub mod contour;

pub mod palette;

pub mod picture;

pub mod room;

pub mod layers;
