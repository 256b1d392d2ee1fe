//! Panels around the drawing, one component to a file.

pub mod bar;
pub mod basis;
pub mod column;
pub mod details_of;
pub mod drawing;
pub mod enlarged;
pub mod field;
pub mod fields;
pub mod history;
pub mod icons;
pub mod kept;
pub mod kinds;
pub mod land_bar;
pub mod legend;
pub mod manners;
pub mod map;
pub mod measured;
pub mod notes;
pub mod palette;
pub mod plan_menu;
pub mod program;
pub mod rail;
pub mod selection;
pub mod status;
pub mod typed;
pub mod welcome;
