//! Chromium and its driver: Debian's, installed when they are absent and this user may install.

use std::path::PathBuf;

use crate::process::{output, program, run};
use crate::project::{Project, find_on_path};

/// The one command that brings both.
const INSTALL: &str = "sudo apt-get update && sudo apt-get install chromium chromium-driver";

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
        let missing = format!("the tests drive Chromium, and it is missing; install it with: {INSTALL}");
        if find_on_path("apt-get").is_none() || !is_root(project) {
            return Err(missing);
        }
        run(&mut program("apt-get", &project.root, &["update", "-q"]))?;
        let arguments = [
            "install",
            "-q",
            "-y",
            "--no-install-recommends",
            "chromium",
            "chromium-driver",
        ];
        run(program("apt-get", &project.root, &arguments).env("DEBIAN_FRONTEND", "noninteractive"))?;
        Chromium::find().ok_or(missing)
    }
}

fn is_root(project: &Project) -> bool {
    output(&mut program("id", &project.root, &["-u"])).is_ok_and(|user| user.trim() == "0")
}
