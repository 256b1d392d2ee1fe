//! Chromium through its driver: one driver, one session and one fresh profile per test.

use std::fmt::Write as _;
use std::io::{BufRead, BufReader, Read, Write as _};
use std::net::{Ipv4Addr, TcpStream};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::sync::atomic::{AtomicU32, Ordering};
use std::time::Duration;

use fantoccini::wd::WebDriverCompatibleCommand;
use fantoccini::{Client, ClientBuilder};
use serde_json::{Value, json};

/// What every session starts Chromium with: no screen, nothing but the page, as root in a container too.
const FLAGS: [&str; 8] = [
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-dev-shm-usage",
    "--force-device-scale-factor=1",
];

/// A running browser, ended by `close`.
pub struct Browser {
    /// What the driver is asked through.
    pub client: Client,
    /// The folder that this session alone has for its profile and its downloads.
    folder: PathBuf,
    /// Held so that the driver lives as long.
    _driver: Driver,
}

impl Browser {
    /// Starts a driver on a port that nobody uses, and a browser with a fresh profile.
    pub async fn start() -> Browser {
        let folder = fresh_folder();
        std::fs::create_dir_all(folder.join("downloads")).expect("the folder for temporary files can be written");
        let driver = Driver::start(&folder);
        let mut arguments: Vec<String> = FLAGS.iter().map(|flag| (*flag).to_string()).collect();
        arguments.push("--window-size=1280,800".to_string());
        arguments.push(format!("--user-data-dir={}", folder.join("profile").display()));
        let mut options = json!({
            "args": arguments,
            "prefs": {"download.default_directory": folder.join("downloads").display().to_string()},
        });
        // Without it the driver looks for the browser where its system keeps it.
        if let Ok(browser) = std::env::var("HOBNAIL_CHROMIUM") {
            options["binary"] = Value::String(browser);
        }
        let mut capabilities = serde_json::Map::new();
        capabilities.insert("goog:chromeOptions".to_string(), options);
        capabilities.insert(
            "goog:loggingPrefs".to_string(),
            json!({"browser": "ALL", "performance": "ALL"}),
        );
        let client = ClientBuilder::new(connector())
            .capabilities(capabilities)
            .connect(&format!("http://127.0.0.1:{}", driver.port))
            .await
            .expect("the driver starts a browser");
        Browser {
            client,
            folder,
            _driver: driver,
        }
    }

    /// The lines that the page, or the browser about the page, wrote as errors to the console since this was last asked.
    pub async fn console_errors(&self) -> Vec<String> {
        let lines = self.log("browser").await;
        let is_error = |line: &&Value| line["level"] == "SEVERE";
        lines
            .iter()
            .filter(is_error)
            .map(|line| line["message"].as_str().unwrap_or_default().to_string())
            .collect()
    }

    /// The addresses that the page set out to ask for since this was last asked, whether or not it was allowed to.
    pub async fn addresses_asked_for(&self) -> Vec<String> {
        let mut addresses = Vec::new();
        for line in self.log("performance").await {
            let event = line["message"]
                .as_str()
                .and_then(|text| serde_json::from_str::<Value>(text).ok());
            let message = event.map(|event| event["message"].clone()).unwrap_or_default();
            if message["method"] == "Network.requestWillBeSent"
                && let Some(address) = message["params"]["request"]["url"].as_str()
                // What the browser's own first page, before ours, is made of.
                && !address.starts_with("chrome://")
            {
                addresses.push(address.to_string());
            }
        }
        addresses
    }

    async fn log(&self, name: &'static str) -> Vec<Value> {
        let lines = self
            .client
            .issue_cmd(ReadLog(name))
            .await
            .expect("the driver keeps logs");
        lines.as_array().cloned().unwrap_or_default()
    }

    /// The folder where the page's downloads arrive.
    pub fn downloads(&self) -> PathBuf {
        self.folder.join("downloads")
    }

    /// Ends the session in good order.
    pub async fn close(self) {
        // The test has its verdict by now, and the driver is ended in any case when this is dropped.
        let _ = self.client.clone().close().await;
    }
}

/// What the driver has to say in one of its logs; a command of Chromium's driver beyond the standard.
#[derive(Debug)]
struct ReadLog(&'static str);

impl WebDriverCompatibleCommand for ReadLog {
    fn endpoint(&self, base: &url::Url, session: Option<&str>) -> Result<url::Url, url::ParseError> {
        base.join(&format!("session/{}/se/log", session.unwrap_or_default()))
    }

    fn method_and_body(&self, _: &url::Url) -> (http::Method, Option<String>) {
        (http::Method::POST, Some(json!({"type": self.0}).to_string()))
    }
}

fn connector() -> hyper_util::client::legacy::connect::HttpConnector {
    hyper_util::client::legacy::connect::HttpConnector::new()
}

/// The driver's process; ended, and its folder removed, when this is dropped, whatever became of the test.
struct Driver {
    process: Child,
    port: u16,
    folder: PathBuf,
}

impl Driver {
    /// Starts the driver on a port that nobody uses, which it names in one of its first lines.
    fn start(folder: &Path) -> Driver {
        let name = std::env::var("HOBNAIL_CHROMEDRIVER").unwrap_or_else(|_| "chromedriver".to_string());
        let process = Command::new(&name)
            .arg("--port=0")
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .unwrap_or_else(|fault| panic!("{name} could not start: {fault}; `cargo task test` installs it"));
        let mut driver = Driver {
            process,
            port: 0,
            folder: folder.to_path_buf(),
        };
        let mut lines = BufReader::new(driver.process.stdout.take().expect("its output was asked for")).lines();
        let mut said = String::new();
        while driver.port == 0 {
            let Some(Ok(line)) = lines.next() else {
                panic!("{name} named no port; it said:\n{said}")
            };
            // An earlier line says, by a zero, that any port was asked for.
            let number = line.rsplit_once("on port ").map(|(_, rest)| rest.trim_end_matches('.'));
            driver.port = number.and_then(|number| number.parse().ok()).unwrap_or(0);
            writeln!(said, "{line}").expect("a string can be written");
        }
        // What it says later must be read too, else it would wait for a reader.
        std::thread::spawn(move || lines.for_each(drop));
        driver
    }
}

impl Driver {
    /// Asks the driver to end its browser and itself, and waits until it answered that it does.
    fn ask_to_go(&self) -> std::io::Result<()> {
        let mut stream = TcpStream::connect((Ipv4Addr::LOCALHOST, self.port))?;
        stream.set_read_timeout(Some(Duration::from_secs(10)))?;
        write!(
            stream,
            "GET /shutdown HTTP/1.1\r\nHost: 127.0.0.1:{}\r\nConnection: close\r\n\r\n",
            self.port
        )?;
        stream.read_to_end(&mut Vec::new())?;
        Ok(())
    }
}

impl Drop for Driver {
    fn drop(&mut self) {
        // None of this may be a reason for a test to fail: the driver may have ended by itself. It is asked to go first,
        // since it then ends the browser too, which a killed driver leaves behind.
        if self.port != 0 {
            let _ = self.ask_to_go();
        }
        let _ = self.process.kill();
        let _ = self.process.wait();
        let _ = std::fs::remove_dir_all(&self.folder);
    }
}

/// A folder that no other session has.
fn fresh_folder() -> PathBuf {
    static SESSIONS: AtomicU32 = AtomicU32::new(0);
    let session = SESSIONS.fetch_add(1, Ordering::Relaxed);
    std::env::temp_dir().join(format!("hobnail-end-to-end-{}-{session}", std::process::id()))
}

/// The folder where pictures of the page are kept for a person to look at.
pub fn screenshots() -> PathBuf {
    let target = std::env::var_os("CARGO_TARGET_DIR").map_or_else(|| top_level().join("target"), PathBuf::from);
    target.join("screenshots")
}

/// The top level of the project.
pub fn top_level() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .ancestors()
        .nth(2)
        .expect("this package is two below the top level")
}
