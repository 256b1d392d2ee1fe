//! The drawing: camera, what is drawn, in which order and weight.

pub mod camera;

pub mod scene;

pub mod scene_of;

pub mod profile;

pub mod offset;

pub mod contour;

pub mod palette;

pub mod picture;

pub mod room;

pub mod layers;
