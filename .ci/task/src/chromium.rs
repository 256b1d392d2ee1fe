//! Chromium and its driver: Debian's.

use std::path::PathBuf;

use crate::debian;
use crate::project::{Project, find_on_path};

const PACKAGES: [&str; 2] = ["chromium", "chromium-driver"];

/// The browser that the tests drive.
pub struct Chromium {
    /// The browser.
    pub browser: PathBuf,
    /// The program that drives it over the WebDriver protocol.
    pub driver: PathBuf,
}

impl Chromium {
    /// The browser and driver of this machine, if both are there.
    pub fn find() -> Option<Chromium> {
        Some(Chromium {
            browser: find_on_path("chromium")?,
            driver: find_on_path("chromedriver")?,
        })
    }

    /// The same, installed if need be and allowed; else an error with the command that would.
    pub fn find_or_install(project: &Project) -> Result<Chromium, String> {
        if let Some(chromium) = Chromium::find() {
            return Ok(chromium);
        }
        debian::install(project, "Chromium", &PACKAGES)?;
        Chromium::find().ok_or(debian::missing("Chromium", &PACKAGES))
    }
}
