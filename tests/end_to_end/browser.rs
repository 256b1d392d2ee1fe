//! A browser through its driver: one driver, one session and one fresh profile per test.

use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicU32, Ordering};

use fantoccini::wd::WebDriverCompatibleCommand;
use fantoccini::{Client, ClientBuilder};
use serde_json::{Value, json};

use crate::driver::Driver;
use crate::engine::{Engine, SIZE};

/// A running browser, ended by `close`.
pub struct Browser {
    /// What the driver is asked through.
    pub client: Client,
    /// What it is made of.
    engine: Engine,
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
        let engine = Engine::chosen();
        let mut driver = Driver::start(engine, &folder);
        let client = ClientBuilder::new(connector())
            .capabilities(engine.capabilities(&folder))
            .connect(&format!("http://127.0.0.1:{}", driver.port))
            .await
            .expect("the driver starts a browser");
        let session = client.session_id().await.expect("the driver answers");
        driver.took_session(engine, &session.expect("a session that began has an id"));
        let browser = Browser {
            client,
            engine,
            folder,
            _driver: driver,
        };
        browser.size_window().await;
        browser
    }

    /// Gives the window the size that all have; Chromium does by itself.
    pub async fn size_window(&self) {
        if self.engine != Engine::Chromium {
            let sized = self.client.set_window_size(SIZE.0, SIZE.1).await;
            sized.expect("the driver gives the window a size");
        }
    }

    /// The lines that the page, or the browser about the page, wrote as errors to the console since this was last asked;
    /// none where the driver does not tell.
    pub async fn console_errors(&self) -> Vec<String> {
        let lines = self.log("browser").await;
        let is_error = |line: &&Value| line["level"] == "SEVERE";
        lines
            .iter()
            .filter(is_error)
            .map(|line| line["message"].as_str().unwrap_or_default().to_string())
            .collect()
    }

    /// The addresses that the page set out to ask for since this was last asked, whether or not it was allowed to. Where
    /// the driver does not tell, those that the page itself knows of since it was loaded.
    pub async fn addresses_asked_for(&self) -> Vec<String> {
        if !self.engine.keeps_logs() {
            let script = "return performance.getEntriesByType('resource').map(entry => entry.name)";
            let known = self.client.execute(script, Vec::new()).await.expect("the script runs");
            return serde_json::from_value(known).expect("addresses are texts");
        }
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
        if !self.engine.keeps_logs() {
            return Vec::new();
        }
        let lines = self
            .client
            .issue_cmd(ReadLog(name))
            .await
            .expect("the driver keeps logs");
        lines.as_array().cloned().unwrap_or_default()
    }

    /// Tells Chromium something in its own protocol, beyond what its driver has words for.
    pub async fn tell_chromium(&self, method: &'static str, parameters: Value) {
        let told = self.client.issue_cmd(TellChromium(method, parameters)).await;
        told.unwrap_or_else(|fault| panic!("{method}: {fault}"));
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

/// Something in Chromium's own protocol; a command of its driver beyond the standard.
#[derive(Debug)]
struct TellChromium(&'static str, Value);

impl WebDriverCompatibleCommand for TellChromium {
    fn endpoint(&self, base: &url::Url, session: Option<&str>) -> Result<url::Url, url::ParseError> {
        base.join(&format!("session/{}/goog/cdp/execute", session.unwrap_or_default()))
    }

    fn method_and_body(&self, _: &url::Url) -> (http::Method, Option<String>) {
        let body = json!({"cmd": self.0, "params": self.1});
        (http::Method::POST, Some(body.to_string()))
    }
}

fn connector() -> hyper_util::client::legacy::connect::HttpConnector {
    hyper_util::client::legacy::connect::HttpConnector::new()
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
