//! Panels around the drawing, one component to a file.

pub mod alternatives;
pub mod bar;
pub mod base_choices;
pub mod base_image;
pub mod bases;
pub mod basis;
pub mod column;
pub mod details_of;
pub mod drawing;
pub mod drawn;
pub mod editor;
pub mod enlarged;
pub mod field;
pub mod fields;
pub mod help;
pub mod history;
pub mod icons;
pub mod kept;
pub mod kinds;
pub mod land_bar;
pub mod language;
pub mod legend;
pub mod manners;
pub mod map;
pub mod measured;
pub mod mode;
pub mod notes;
pub mod palette;
pub mod plan_menu;
pub mod program;
pub mod rail;
pub mod remarks;
pub mod selection;
pub mod share;
pub mod status;
pub mod typed;
pub mod welcome;

use crate::browser::view::{Element, View, element};

/// A menu of this name, opened by its summary; the browser keeps one of them open at a time.
fn menu(name: &'static str, summary: Element) -> Element {
    element("details")
        .class("menu")
        .with("data-menu", name)
        .with("name", "menu")
        .holds(summary)
}

/// What opens a menu.
fn summary(words: impl Into<View>) -> Element {
    element("summary").class("command").holds(words)
}
