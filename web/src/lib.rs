//! The page over `hobnail_core`: application state, canvas, tools, panels.
//!
//! Only `browser` names browser types; the rest compiles and is tested natively.

pub mod input;

pub mod live;

pub mod canvas;

pub mod app;

pub mod panels;

pub mod tools;

pub mod browser;

pub mod page;

/// Starts the page: first the visible notice for faults of our own and the words, then the panels. Loaded as a worker, it answers
/// the page's questions instead.
///
/// Called once, by the binary that the page loads.
pub fn start() {
    browser::notice::show_on_panic();
    browser::words::speak_by_script();
    if browser::document::is_worker() {
        return browser::worker::serve();
    }
    page::show();
    browser::document::mark_ready();
}
