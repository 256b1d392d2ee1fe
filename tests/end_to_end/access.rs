//! Whether everyone can use the page as it stands: the rules of axe-core, the size of targets, and what is out of reach.

use std::path::PathBuf;

use serde_json::{Value, json};

use crate::page::Page;

/// Gives back one line for each finding; says itself what it looks at.
const LOOK: &str = include_str!("access.js");

/// How the window is made, or what a person has asked of the browser.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sight {
    /// A window of this width and height in CSS pixels.
    Window(u32, u32),
    /// Text this large by the browser's own setting, in pixels, where 16 is usual.
    Text(u32),
    /// The system's own few colors in place of the page's.
    ForcedColors,
    /// Without motion, so that no color is read while it turns into another.
    Still,
}

/// What was found in the states that were looked at.
#[derive(Debug, Default)]
pub struct Audit {
    asks_rules: bool,
    findings: Vec<String>,
}

impl Audit {
    /// Looks with the rules of axe-core too.
    #[must_use]
    pub fn by_all_rules() -> Audit {
        Audit {
            asks_rules: true,
            findings: Vec::new(),
        }
    }

    /// Looks for what is too small to press, and what can not be reached in the window.
    #[must_use]
    pub fn of_targets() -> Audit {
        Audit::default()
    }

    /// Looks at the page as it stands, which is called `state` in the findings.
    pub async fn look(&mut self, page: &Page, state: &str) {
        let client = &page.browser.client;
        if self.asks_rules {
            let known = client.execute("return 'axe' in window", Vec::new()).await;
            if known.expect("the script runs") == json!(false) {
                let rules = client.execute(&rules(), Vec::new()).await;
                rules.expect("the rules can be read into the page");
            }
        }
        let arguments = vec![Value::Bool(self.asks_rules)];
        let found = client.execute_async(LOOK, arguments).await.expect("the script runs");
        let lines: Vec<String> = serde_json::from_value(found).expect("findings are texts");
        self.findings
            .extend(lines.into_iter().map(|line| format!("{state}: {line}")));
    }

    /// Fails with all that was found.
    pub fn expect_nothing(self) {
        assert!(self.findings.is_empty(), "\n{}\n", self.findings.join("\n"));
    }
}

/// The text of axe-core, which the driver runs in the page: the page's policy lets in no script but its own.
fn rules() -> String {
    let Some(file) = std::env::var_os("HOBNAIL_AXE").map(PathBuf::from) else {
        panic!("HOBNAIL_AXE does not name the file axe.min.js of axe-core; `cargo task test` installs it and names it")
    };
    let text = std::fs::read_to_string(&file);
    text.unwrap_or_else(|fault| panic!("{}: {fault}; `cargo task test` installs it", file.display()))
}

/// A person's wish, as style sheets ask for it.
fn asked_for(name: &str, value: &str) -> (&'static str, Value) {
    let wish = json!({"name": name, "value": value});
    ("Emulation.setEmulatedMedia", json!({"features": [wish]}))
}

impl Page {
    /// Gives the window, or what is asked of the browser, this shape from now on; in Chromium only.
    pub async fn see(&self, sight: Sight) {
        let (method, parameters) = match sight {
            Sight::Window(width, height) => (
                "Emulation.setDeviceMetricsOverride",
                json!({"width": width, "height": height, "deviceScaleFactor": 1, "mobile": false}),
            ),
            Sight::Text(size_px) => ("Page.setFontSizes", json!({"fontSizes": {"standard": size_px}})),
            Sight::ForcedColors => asked_for("forced-colors", "active"),
            Sight::Still => asked_for("prefers-reduced-motion", "reduce"),
        };
        self.browser.tell_chromium(method, parameters).await;
    }
}
