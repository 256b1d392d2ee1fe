//! The drawing: camera, what is drawn, in which order and weight.

pub mod camera;
