//! Small line drawings for tools and commands. The word beside each says what it is; the drawing is for the eye alone.

use crate::browser::view::{View, element};

use crate::tools::ToolKind;

/// The drawing of a tool.
pub fn tool_icon(kind: ToolKind) -> View {
    let outline = match kind {
        ToolKind::Select => "M7 4 L7 19 L11 15.5 L13.5 21 L16 20 L13.5 14.5 L18.5 14 Z",
        ToolKind::Street => "M6 21 L10 3 M18 21 L14 3 M12 20 L12 17 M12 14 L12 11 M12 8 L12 5",
        ToolKind::Use => "M4 6 H20 V18 H4 Z M4 12 L10 6 M4 18 L16 6 M10 18 L20 8 M16 18 L20 14",
        ToolKind::Area => "M4 7 L14 3 L21 10 L16 20 L5 18 Z M2.5 7 h3 M12.5 3 h3 M19.5 10 h3 M14.5 20 h3 M3.5 18 h3",
        ToolKind::Place => "M12 3 A9 9 0 1 0 12 21 A9 9 0 1 0 12 3 M12 9 A3 3 0 1 0 12 15 A3 3 0 1 0 12 9",
        ToolKind::Pan => {
            "M12 3 V21 M3 12 H21 M12 3 L9 6 M12 3 L15 6 M12 21 L9 18 M12 21 L15 18 M3 12 L6 9 M3 12 L6 15 M21 12 L18 9 M21 12 L18 15"
        }
    };
    icon(outline)
}

/// An arrow back, for undo; mirrored by the style sheet for redo.
pub fn back_icon() -> View {
    icon("M9 7 L4 12 L9 17 M4 12 H15 A5 5 0 0 1 15 22")
}

fn icon(outline: &'static str) -> View {
    element("svg")
        .class("icon")
        .with("viewBox", "0 0 24 24")
        .with("aria-hidden", "true")
        .with("focusable", "false")
        .holds(element("path").with("d", outline))
        .into()
}
