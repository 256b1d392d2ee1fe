//! Panels around the drawing, one component to a file.

pub mod bar;
pub mod basis;
pub mod column;
pub mod drawing;
pub mod drawn;
pub mod editor;
pub mod icons;
pub mod kept;
pub mod land_bar;
pub mod legend;
pub mod map;
pub mod measured;
pub mod notes;
pub mod palette;
pub mod rail;
pub mod status;
pub mod welcome;
