//! The page over `hobnail_core`: application state, canvas, tools, panels.
