//! Firefox and WebKit, in which a shorter set of scenarios runs: Debian's, and Firefox's driver built from its source.

use std::path::{Path, PathBuf};
use std::process::Command;

use crate::debian;
use crate::process::program;
use crate::project::{Project, find_on_path};
use crate::tools;

/// A browser engine beside Chromium's.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Engine {
    /// Firefox's.
    Firefox,
    /// WebKit's, in the small browser that comes with its GTK port.
    WebKit,
}

/// Where Debian keeps libraries, WebKit's small browser among them.
const LIBRARIES: &str = "/usr/lib";

impl Engine {
    /// What people call it.
    pub fn name(self) -> &'static str {
        match self {
            Engine::Firefox => "Firefox",
            Engine::WebKit => "WebKit",
        }
    }

    /// Whether the engine is known to stop modules that are not at fault, so that what failed in it is tried once more.
    ///
    /// WebKit 2.50.6 did in 7 of 680 loads of the page on a machine with more to do than cores: memory read out of
    /// bounds, or a number that nobody wrote, at another place each time, before and after changes of the code there; a
    /// module that never grows its memory fares no better, nor does one that the worker does not share, and Chromium and
    /// Firefox never did. Its baseline compiler is taken for the cause: without the optimizing one (`JSC_useOMGJIT=0`) 3 of 60
    /// loads stopped, without either (`JSC_useBBQJIT=0` too) none of more than 120.
    pub fn stops_by_itself(self) -> bool {
        self == Engine::WebKit
    }

    fn packages(self) -> &'static [&'static str] {
        match self {
            Engine::Firefox => &["firefox-esr"],
            // It opens windows only on a screen: a made-up one.
            Engine::WebKit => &["webkit2gtk-driver", "xvfb", "xauth"],
        }
    }

    /// The engine, installed if need be and allowed, as a beginning of commands whose tests drive it.
    pub fn find_or_install(self, project: &Project) -> Result<Installed, String> {
        if !self.is_there() {
            debian::install(project, self.name(), self.packages())?;
        }
        let missing = || debian::missing(self.name(), self.packages());
        match self {
            Engine::Firefox => Ok(Installed {
                engine: self,
                browser: find_on_path("firefox-esr").ok_or_else(missing)?,
                driver: tools::geckodriver(project)?.join("geckodriver"),
            }),
            Engine::WebKit => Ok(Installed {
                engine: self,
                browser: small_browser(Path::new(LIBRARIES)).ok_or_else(missing)?,
                driver: find_on_path("WebKitWebDriver").ok_or_else(missing)?,
            }),
        }
    }

    fn is_there(self) -> bool {
        let has = |name: &str| find_on_path(name).is_some();
        match self {
            Engine::Firefox => has("firefox-esr"),
            Engine::WebKit => {
                has("WebKitWebDriver")
                    && has("xvfb-run")
                    && has("xauth")
                    && small_browser(Path::new(LIBRARIES)).is_some()
            }
        }
    }
}

/// An engine that is there.
pub struct Installed {
    engine: Engine,
    browser: PathBuf,
    driver: PathBuf,
}

impl Installed {
    /// `cargo` with these arguments, for tests that drive this engine.
    pub fn cargo(&self, project: &Project, arguments: &[&str]) -> Command {
        let mut command = match self.engine {
            Engine::Firefox => program("cargo", &project.root, arguments),
            Engine::WebKit => {
                let mut command = program("xvfb-run", &project.root, &["--auto-servernum", "cargo"]);
                command.args(arguments);
                command
            }
        };
        let names = match self.engine {
            Engine::Firefox => ["firefox", "HOBNAIL_FIREFOX", "HOBNAIL_GECKODRIVER"],
            Engine::WebKit => ["webkit", "HOBNAIL_WEBKIT", "HOBNAIL_WEBKITDRIVER"],
        };
        command
            .env("HOBNAIL_ENGINE", names[0])
            .env(names[1], &self.browser)
            .env(names[2], &self.driver);
        command
    }
}

/// WebKit's small browser, in the folder of the machine's kind below that of libraries.
fn small_browser(libraries: &Path) -> Option<PathBuf> {
    let kinds = std::fs::read_dir(libraries).ok()?;
    let mut found: Vec<PathBuf> = kinds
        .filter_map(|kind| Some(kind.ok()?.path().join("webkit2gtk-4.1/MiniBrowser")))
        .filter(|file| file.is_file())
        .collect();
    found.sort();
    found.pop()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_small_browser_is_found_whatever_the_machine() {
        let folder = std::env::temp_dir().join(format!("hobnail-task-engines-{}", std::process::id()));
        let inside = folder.join("some-kind/webkit2gtk-4.1");
        std::fs::create_dir_all(&inside).unwrap();
        assert_eq!(small_browser(&folder), None);
        std::fs::write(inside.join("MiniBrowser"), "").unwrap();
        assert_eq!(small_browser(&folder), Some(inside.join("MiniBrowser")));
        std::fs::remove_dir_all(&folder).unwrap();
        assert_eq!(small_browser(&folder), None);
    }
}
