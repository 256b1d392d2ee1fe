//! Panels around the drawing, one component to a file.

pub mod bar;
pub mod basis;
pub mod column;
pub mod drawing;
pub mod icons;
pub mod legend;
pub mod palette;
pub mod rail;
pub mod status;
pub mod welcome;
