//! The three browser engines: how each is started, and what its driver is told.

use std::net::{Ipv4Addr, TcpListener};
use std::path::Path;
use std::process::Command;

use serde_json::{Map, Value, json};

/// What every session starts Chromium with: no screen, nothing but the page, as root in a container too.
const CHROMIUM_FLAGS: [&str; 8] = [
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-dev-shm-usage",
    "--force-device-scale-factor=1",
];

/// Width and height of the window in pixels: that of a plain laptop.
pub const SIZE: (u32, u32) = (1280, 800);

/// The engine that a browser is made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Engine {
    /// Chromium's, where all scenarios run.
    Chromium,
    /// Firefox's.
    Firefox,
    /// WebKit's, in the small browser that comes with its GTK port; it needs a screen, if only a made-up one.
    WebKit,
}

impl Engine {
    /// The one that `HOBNAIL_ENGINE` names, Chromium where it names none.
    pub fn chosen() -> Engine {
        match std::env::var("HOBNAIL_ENGINE").as_deref() {
            Err(_) | Ok("chromium") => Engine::Chromium,
            Ok("firefox") => Engine::Firefox,
            Ok("webkit") => Engine::WebKit,
            Ok(other) => panic!("there is no engine `{other}`: chromium, firefox or webkit"),
        }
    }

    /// The driver, to be started on a port that nobody uses, and the port where it does not say that itself.
    pub fn driver(self, folder: &Path) -> (Command, Option<u16>) {
        let named = |variable: &str, usual: &str| {
            Command::new(std::env::var_os(variable).unwrap_or_else(|| usual.to_owned().into()))
        };
        match self {
            Engine::Chromium => {
                let mut command = named("HOBNAIL_CHROMEDRIVER", "chromedriver");
                command.arg("--port=0");
                (command, None)
            }
            Engine::Firefox => {
                let mut command = named("HOBNAIL_GECKODRIVER", "geckodriver");
                command.args(["--port", "0", "--profile-root"]).arg(folder);
                (command, None)
            }
            Engine::WebKit => {
                let port = free_port();
                let mut command = named("HOBNAIL_WEBKITDRIVER", "WebKitWebDriver");
                command.arg(format!("--port={port}"));
                // It asks the desktop where downloads go, and keeps nothing of ours in the user's own folders.
                let settings = folder.join("settings");
                std::fs::create_dir_all(&settings).expect("the folder for temporary files can be written");
                let downloads = format!("XDG_DOWNLOAD_DIR=\"{}\"\n", folder.join("downloads").display());
                std::fs::write(settings.join("user-dirs.dirs"), downloads)
                    .expect("the folder for temporary files can be written");
                command.env("XDG_CONFIG_HOME", settings).env("HOME", folder);
                (command, Some(port))
            }
        }
    }

    /// What a session is asked for.
    pub fn capabilities(self, folder: &Path) -> Map<String, Value> {
        let browser = |variable: &str| std::env::var(variable).ok();
        let downloads = folder.join("downloads").display().to_string();
        let mut options = Map::new();
        let (key, binary) = match self {
            Engine::Chromium => {
                let mut arguments: Vec<String> = CHROMIUM_FLAGS.iter().map(|flag| (*flag).to_string()).collect();
                arguments.push(format!("--window-size={},{}", SIZE.0, SIZE.1));
                arguments.push(format!("--user-data-dir={}", folder.join("profile").display()));
                options.insert("args".to_string(), json!(arguments));
                options.insert("prefs".to_string(), json!({"download.default_directory": downloads}));
                ("goog:chromeOptions", browser("HOBNAIL_CHROMIUM"))
            }
            Engine::Firefox => {
                options.insert("args".to_string(), json!(["-headless"]));
                options.insert(
                    "prefs".to_string(),
                    json!({
                        "browser.download.folderList": 2,
                        "browser.download.dir": downloads,
                        "browser.download.alwaysOpenPanel": false,
                        "browser.download.always_ask_before_handling_new_types": false,
                    }),
                );
                ("moz:firefoxOptions", browser("HOBNAIL_FIREFOX"))
            }
            Engine::WebKit => {
                options.insert("args".to_string(), json!(["--automation"]));
                ("webkitgtk:browserOptions", browser("HOBNAIL_WEBKIT"))
            }
        };
        // Without it the driver looks for the browser where its system keeps it.
        if let Some(binary) = binary {
            options.insert("binary".to_string(), Value::String(binary));
        }
        let mut capabilities = Map::new();
        capabilities.insert(key.to_string(), Value::Object(options));
        if self.keeps_logs() {
            capabilities.insert(
                "goog:loggingPrefs".to_string(),
                json!({"browser": "ALL", "performance": "ALL"}),
            );
        }
        capabilities
    }

    /// Whether its driver tells what stood in the console and what was asked for; a command beyond the standard.
    pub fn keeps_logs(self) -> bool {
        self == Engine::Chromium
    }
}

fn free_port() -> u16 {
    let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, 0)).expect("some port is free");
    listener.local_addr().expect("the listener has an address").port()
}
