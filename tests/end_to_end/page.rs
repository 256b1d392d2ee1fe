//! The page's elements, named once, and what a person does with them.
//!
//! Elements are found by what a person or a screen reader finds them by, or by an `id` that the page keeps for good.

use std::time::Duration;

use fantoccini::{Client, Locator};

use crate::browser::{Browser, screenshots};
use crate::server::Server;

/// How long the page may take to answer before a test gives up on it.
const PATIENCE: Duration = Duration::from_secs(30);

/// The whole page, once it has started.
const READY: Locator<'static> = Locator::Css(":root[data-ready]");

/// The drawing, once it is settled whether a worker does the long work.
const SETTLED: Locator<'static> = Locator::Css("#drawing[data-worker]");

/// The notice for faults of our own.
const NOTICE: Locator<'static> = Locator::Id("notice");

/// The page, open in a browser.
pub struct Page {
    /// The browser it is open in.
    pub browser: Browser,
    /// What it was loaded from.
    pub server: Server,
}

impl Page {
    /// Opens the page and waits until it has started.
    pub async fn open(browser: Browser, server: Server) -> Page {
        browser
            .client
            .goto(&server.address())
            .await
            .expect("the browser opens the address");
        let page = Page { browser, server };
        page.client()
            .wait()
            .at_most(PATIENCE)
            .for_element(READY)
            .await
            .expect("the page starts");
        page.client()
            .wait()
            .at_most(PATIENCE)
            .for_element(SETTLED)
            .await
            .expect("the page settles who does the long work");
        page
    }

    fn client(&self) -> &Client {
        &self.browser.client
    }

    /// The title in the browser's tab.
    pub async fn title(&self) -> String {
        self.client().title().await.expect("the page has a title")
    }

    /// Whether the notice for faults of our own is in sight.
    pub async fn shows_notice(&self) -> bool {
        let notice = self.client().find(NOTICE).await.expect("the notice is in the page");
        notice.is_displayed().await.expect("the driver tells what is in sight")
    }

    /// What went wrong since this was last asked: errors in the console and requests to another origin.
    pub async fn faults(&self) -> Vec<String> {
        let origin = self.server.address();
        let is_own = |address: &String| [&origin, "data:", "blob:"].iter().any(|own| address.starts_with(*own));
        let mut faults = self.browser.console_errors().await;
        let addresses = self.browser.addresses_asked_for().await;
        faults.extend(
            addresses
                .iter()
                .filter(|address| !is_own(address))
                .map(|address| format!("asked for {address}")),
        );
        faults
    }

    /// Runs a script in the page and waits until it calls its last argument.
    pub async fn run_script(&self, script: &str) {
        self.client()
            .execute_async(script, Vec::new())
            .await
            .expect("the script runs");
    }

    /// Keeps a picture of the page as `target/screenshots/NAME.png`.
    pub async fn take_screenshot(&self, name: &str) {
        let picture = self.client().screenshot().await.expect("the driver takes a picture");
        let folder = screenshots();
        std::fs::create_dir_all(&folder).expect("the target folder can be written");
        std::fs::write(folder.join(format!("{name}.png")), picture).expect("the target folder can be written");
    }
}
