//! The page's elements, named once, and what a person does with them.
//!
//! Elements are found by what a person or a screen reader finds them by, or by an `id` that the page keeps for good.

use std::path::{Path, PathBuf};
use std::time::Duration;

use fantoccini::actions::{InputSource, KeyAction, KeyActions, MOUSE_BUTTON_LEFT, MouseActions, PointerAction};
use fantoccini::elements::Element;
use fantoccini::wd::WindowHandle;
use fantoccini::{Client, Locator};
use serde_json::Value;

use crate::browser::{Browser, screenshots};
use crate::server::Server;

/// How long the page may take to answer before a test gives up on it.
const PATIENCE: Duration = Duration::from_secs(30);

/// The whole page, once it has started.
const READY: &str = ":root[data-ready]";

/// The drawing, once it is settled whether a worker does the long work.
const SETTLED: &str = "#drawing[data-worker]";

/// The notice for faults of our own.
const NOTICE: Locator<'static> = Locator::Id("notice");

/// How long a test waits before it looks again.
const BEAT: Duration = Duration::from_millis(50);

/// A figure as it stands in the column: id, number with its words, range.
pub type Figure = (String, String, String);

/// The page, open in a browser.
pub struct Page {
    /// The browser it is open in.
    pub browser: Browser,
    /// The server of the built page's folder, which it may have been loaded from.
    pub server: Server,
    /// What it was loaded from.
    address: String,
    /// Files of the test's own that it was loaded from later.
    files: Vec<String>,
}

impl Page {
    /// Opens the page at an address and waits until it has started.
    pub async fn open(browser: Browser, server: Server, address: String) -> Page {
        let page = Page {
            browser,
            server,
            address,
            files: Vec::new(),
        };
        page.load_again("").await;
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
        let is_own = |address: &String| {
            let own = [self.address.as_str(), "data:", "blob:"];
            own.iter().any(|own| address.starts_with(own)) || self.files.contains(address)
        };
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

    /// Opens a sample sketch from the card of beginnings, which then goes away.
    pub async fn begin_with(&self, file: &str) {
        self.press(&format!("[data-begin='{file}']")).await;
        self.wait_for("body:not(:has([data-welcome]))").await;
    }

    /// Opens a plan file from this machine.
    pub async fn open_file(&self, path: &Path) {
        self.open_files(&[path]).await;
    }

    /// Opens files from this machine together.
    pub async fn open_files(&self, paths: &[impl AsRef<Path>]) {
        self.choose_files("open-file", paths).await;
    }

    /// Hands files from this machine to the file input with this id.
    pub async fn choose_files(&self, input: &str, paths: &[impl AsRef<Path>]) {
        let input = self
            .client()
            .find(Locator::Id(input))
            .await
            .expect("the page opens files");
        let paths = paths
            .iter()
            .map(|path| path.as_ref().to_str().expect("the path is text"));
        let paths: Vec<&str> = paths.collect();
        input
            .send_keys(&paths.join("\n"))
            .await
            .expect("the driver hands the files over");
    }

    /// Saves the plan and gives back what arrived, once it has.
    pub async fn save(&self) -> PathBuf {
        self.arrives_after(self.press("[data-command='save']")).await
    }

    /// Does what saves the plan and gives back what arrived, once it has.
    pub async fn arrives_after(&self, saving: impl Future<Output = ()>) -> PathBuf {
        let before = self.arrived();
        saving.await;
        for _ in 0..PATIENCE.as_millis() / BEAT.as_millis() {
            let new = self.arrived().into_iter().find(|path| !before.contains(path));
            if let Some(new) = new {
                return new;
            }
            tokio::time::sleep(BEAT).await;
        }
        panic!("nothing arrived in {}", self.browser.downloads().display());
    }

    /// The plans that arrived whole: none is as long as something else, or something empty, is there.
    fn arrived(&self) -> Vec<PathBuf> {
        let folder = self.browser.downloads();
        let entries = std::fs::read_dir(&folder).expect("the folder for downloads is there");
        let paths: Vec<PathBuf> = entries
            .map(|entry| entry.expect("its entries can be read").path())
            .collect();
        let is_whole = |path: &PathBuf| {
            path.extension()
                .is_some_and(|ending| ending == "geojson" || ending == "html")
                && path.metadata().is_ok_and(|about| about.len() > 0)
        };
        if paths.iter().all(is_whole) { paths } else { Vec::new() }
    }

    /// Chooses a tool by its word.
    pub async fn choose_tool(&self, word: &str) {
        self.press(&format!("[data-tools] [data-tool='{word}']")).await;
    }

    /// Chooses an option of a list by its value.
    pub async fn choose(&self, list: &str, value: &str) {
        let found = self.find(list).await.select_by_value(value).await;
        found.unwrap_or_else(|fault| panic!("{list} has no {value}: {fault}"));
    }

    /// The texts of all elements that are found.
    pub async fn texts(&self, css: &str) -> Vec<String> {
        let found = self.client().find_all(Locator::Css(css)).await;
        let mut texts = Vec::new();
        for element in found.expect("the driver looks for elements") {
            texts.push(element.text().await.expect("the driver reads text"));
        }
        texts
    }

    /// An attribute of all elements that are found.
    pub async fn attributes(&self, css: &str, attribute: &str) -> Vec<String> {
        let found = self.client().find_all(Locator::Css(css)).await;
        let mut values = Vec::new();
        for element in found.expect("the driver looks for elements") {
            let value = element.attr(attribute).await.expect("the driver reads attributes");
            values.push(value.unwrap_or_default());
        }
        values
    }

    /// Presses a button.
    pub async fn press(&self, css: &str) {
        let button = self.find(css).await;
        button
            .click()
            .await
            .unwrap_or_else(|fault| panic!("{css} can not be pressed: {fault}"));
    }

    /// The text that arrives when a button is pressed that saves one.
    pub async fn saved_text(&self, css: &str) -> String {
        self.press(css).await;
        let folder = self.browser.downloads();
        let is_text = |path: &PathBuf| path.extension().is_some_and(|ending| ending == "txt");
        for _ in 0..600 {
            let entries = std::fs::read_dir(&folder).expect("the folder for downloads is there");
            let found = entries.map(|entry| entry.expect("its entries can be read").path());
            if let Some(path) = found.into_iter().find(is_text) {
                let text = std::fs::read_to_string(&path).expect("the text can be read");
                if !text.is_empty() {
                    std::fs::remove_file(&path).expect("what arrived can be removed");
                    return text;
                }
            }
            tokio::time::sleep(BEAT).await;
        }
        panic!("no text arrived in {}", folder.display());
    }

    /// The text of an element.
    pub async fn text(&self, css: &str) -> String {
        self.find(css).await.text().await.expect("the driver reads text")
    }

    /// Waits until an element is there.
    pub async fn wait_for(&self, css: &str) {
        let waiting = self.client().wait().at_most(PATIENCE);
        if let Err(fault) = waiting.for_element(Locator::Css(css)).await {
            let page = self.seen().await;
            panic!("{css} does not appear: {fault}; in sight is {page}");
        }
    }

    /// What the browser shows, for a test that fails: where it is and the first words there.
    async fn seen(&self) -> String {
        let script = "return [location.href, document.readyState, navigator.serviceWorker?.controller?.state,
            document.getElementById('notice-details')?.textContent, document.body?.innerText.slice(0, 300)]";
        match self.client().execute(script, Vec::new()).await {
            Ok(told) => told.to_string(),
            Err(fault) => format!("nothing that the driver can tell: {fault}"),
        }
    }

    async fn find(&self, css: &str) -> Element {
        let found = self.client().find(Locator::Css(css)).await;
        found.unwrap_or_else(|fault| panic!("{css} is not on the page: {fault}"))
    }

    /// An attribute of the drawing, such as its description.
    pub async fn drawing(&self, attribute: &str) -> String {
        let value = self
            .find("#drawing")
            .await
            .attr(attribute)
            .await
            .expect("the driver reads attributes");
        value.unwrap_or_default()
    }

    /// All first-level figures as they stand: id, number, range or reason.
    pub async fn figures(&self) -> Vec<Figure> {
        let script = "return [...document.querySelectorAll('#figures [data-figure]')].map(figure => [
            figure.dataset.figure,
            figure.querySelector('[data-value]').textContent,
            figure.querySelector('[data-range]').textContent,
        ])";
        let read = self
            .client()
            .execute(script, Vec::new())
            .await
            .expect("the script runs");
        serde_json::from_value(read).expect("the column of figures is texts")
    }

    /// All first-level figures, once their ranges are worked out for the plan as it stands.
    pub async fn settled_figures(&self) -> Vec<Figure> {
        self.wait_for("#figures [data-figure='jobs.per_home'] [data-range]:not(:empty)")
            .await;
        self.figures().await
    }

    /// Moves the pointer to a place of the plan, in meters east and north of its origin.
    pub async fn point_at(&self, place: (f64, f64)) {
        self.pointer(place, false).await;
    }

    /// Clicks at a place of the plan.
    pub async fn click_at(&self, place: (f64, f64)) {
        self.pointer(place, true).await;
    }

    /// Drags from one place of the plan to another.
    pub async fn drag(&self, from: (f64, f64), to: (f64, f64)) {
        let button = MOUSE_BUTTON_LEFT;
        let actions = MouseActions::new("mouse".to_string())
            .then(self.move_to(from).await)
            .then(PointerAction::Down { button })
            .then(self.move_to(to).await)
            .then(PointerAction::Up { button });
        self.perform(actions).await;
    }

    /// Presses at a place of the plan and drags along others, slowly enough that the page sees each.
    pub async fn drag_along(&self, from: (f64, f64), places: &[(f64, f64)]) {
        const STEP: Duration = Duration::from_millis(60);
        let button = MOUSE_BUTTON_LEFT;
        let mut actions = MouseActions::new("mouse".to_string())
            .then(self.move_to(from).await)
            .then(PointerAction::Down { button });
        for place in places {
            actions = actions
                .then(self.move_to(*place).await)
                .then(PointerAction::Pause { duration: STEP });
        }
        self.perform(actions.then(PointerAction::Up { button })).await;
    }

    /// Draws a street from one place of the plan to another.
    pub async fn draw_street(&self, ends: [(f64, f64); 2]) {
        const ENTER: char = '\u{e007}';
        self.choose_tool("street").await;
        for end in ends {
            self.click_at(end).await;
        }
        self.keys(&[ENTER]).await;
    }

    /// Opens the plan that was changed last.
    pub async fn open_recent(&self) {
        self.wait_for("[data-recent]").await;
        self.press("[data-recent]").await;
        self.wait_for("body:not(:has([data-welcome]))").await;
    }

    /// Types into the field of these words, in place of what stands there, and leaves it.
    pub async fn type_into(&self, words: &str, text: &str) {
        self.type_at(&format!("[data-field='{words}'] :is(input, textarea)"), text)
            .await;
    }

    /// Types into a field in place of what stands there, and leaves it. Shift is held for a new line.
    pub async fn type_at(&self, css: &str, text: &str) {
        const TAB: char = '\u{e004}';
        const NEXT_LINE: &str = "\u{e008}\n\u{e008}";
        let field = self.find(css).await;
        field.clear().await.expect("the driver clears a field");
        let keys = format!("{}{TAB}", text.replace('\n', NEXT_LINE));
        field.send_keys(&keys).await.expect("the driver types into a field");
    }

    async fn pointer(&self, place: (f64, f64), presses: bool) {
        let mut actions = MouseActions::new("mouse".to_string()).then(self.move_to(place).await);
        if presses {
            let button = MOUSE_BUTTON_LEFT;
            actions = actions
                .then(PointerAction::Down { button })
                .then(PointerAction::Up { button });
        }
        self.perform(actions).await;
    }

    async fn perform(&self, actions: MouseActions) {
        self.client()
            .perform_actions(actions)
            .await
            .expect("the driver moves the pointer");
    }

    /// The movement of the pointer to a place of the plan.
    async fn move_to(&self, place: (f64, f64)) -> PointerAction {
        let (x, y) = self.on_screen(place).await;
        PointerAction::MoveTo { duration: None, x, y }
    }

    /// Where in the window a place of the plan is, once the drawing is scrolled into sight.
    pub async fn on_screen(&self, (x_m, y_m): (f64, f64)) -> (f64, f64) {
        let view = self.drawing("data-view").await;
        let view: Vec<f64> = view
            .split(' ')
            .map(|part| part.parse().expect("the view is numbers"))
            .collect();
        let [px_per_m, origin_x, origin_y] = view[..] else {
            panic!("the view is {view:?}")
        };
        let script = "const drawing = document.getElementById('drawing');
            drawing.scrollIntoView({ block: 'nearest' });
            const { left, top } = drawing.getBoundingClientRect();
            return [left, top]";
        let corner = self
            .client()
            .execute(script, Vec::new())
            .await
            .expect("the script runs");
        let (left, top): (f64, f64) = serde_json::from_value(corner).expect("a corner is two numbers");
        let x = (left + origin_x + x_m * px_per_m).round();
        let y = (top + origin_y - y_m * px_per_m).round();
        (x, y)
    }

    /// Waits for the next two frames, in which the page shows what it was told.
    pub async fn next_frame(&self) {
        self.run_script("requestAnimationFrame(() => requestAnimationFrame(arguments[0]))")
            .await;
    }

    /// Types keys, some of them held while the last is pressed.
    pub async fn keys(&self, keys: &[char]) {
        let mut actions = KeyActions::new("keys".to_string());
        for value in keys {
            actions = actions.then(KeyAction::Down { value: *value });
        }
        for value in keys.iter().rev() {
            actions = actions.then(KeyAction::Up { value: *value });
        }
        self.client()
            .perform_actions(actions)
            .await
            .expect("the driver presses keys");
    }

    /// Goes from control to control with the Tab key, forward or back, until it is at this one.
    pub async fn go_to_by_keyboard(&self, css: &str, is_back: bool) {
        const TAB: char = '\u{e004}';
        const SHIFT: char = '\u{e008}';
        const MOST: usize = 150;
        let script = format!(
            "return document.activeElement.matches({})",
            Value::String(css.to_string())
        );
        for _ in 0..MOST {
            let is_there = self.client().execute(&script, Vec::new()).await;
            if is_there.expect("the script runs") == Value::Bool(true) {
                return;
            }
            let keys: &[char] = if is_back { &[SHIFT, TAB] } else { &[TAB] };
            self.keys(keys).await;
        }
        panic!("{css} is not reached by the Tab key");
    }

    /// Loads the page again, with a query such as `?worker=none`.
    pub async fn load_again(&self, query: &str) {
        let address = format!("{}{query}", self.address);
        self.client()
            .goto(&address)
            .await
            .expect("the browser opens the address");
        self.wait_for(READY).await;
        self.wait_for(SETTLED).await;
    }

    /// Goes on with the page in another file.
    pub async fn load_file(&mut self, path: &Path) {
        let address = format!("file://{}", path.display());
        self.files.push(address.clone());
        self.client()
            .goto(&address)
            .await
            .expect("the browser opens the address");
        self.wait_for(READY).await;
        self.wait_for(SETTLED).await;
    }

    /// Opens the page anew once its server is gone.
    ///
    /// WebKit's service worker gave no answer once in about forty loads; like a person the test then loads once more.
    pub async fn load_without_network(&self) {
        let opened = self.client().goto(&self.address).await;
        let ready = self.client().wait().at_most(Duration::from_secs(15));
        if opened.is_err() || ready.for_element(Locator::Css(READY)).await.is_err() {
            self.load_again("").await;
        }
        self.wait_for(SETTLED).await;
    }

    /// Opens the page in another window of the same browser and goes on there; gives back the window left.
    pub async fn open_window(&self) -> WindowHandle {
        let left = self.client().window().await.expect("the driver knows its window");
        let opened = self
            .client()
            .new_window(false)
            .await
            .expect("the browser opens a window");
        self.show_window(opened.handle).await;
        self.browser.size_window().await;
        self.load_again("").await;
        left
    }

    /// Goes on in a window that stands open.
    pub async fn show_window(&self, window: WindowHandle) {
        let shown = self.client().switch_to_window(window).await;
        shown.expect("the window stands open");
    }

    /// Closes another window and stays in this one.
    pub async fn close_window(&self, window: WindowHandle) {
        let here = self.client().window().await.expect("the driver knows its window");
        self.show_window(window).await;
        self.client().close_window().await.expect("the browser closes a window");
        self.show_window(here).await;
    }

    /// Runs a script in the page and waits until it calls its last argument, with what is given back.
    pub async fn run_script(&self, script: &str) -> Value {
        self.client()
            .execute_async(script, Vec::new())
            .await
            .expect("the script runs")
    }

    /// Waits until the service worker keeps the page's files and answers for this page.
    pub async fn wait_until_offline_is_ready(&self) {
        self.run_script(
            "const done = arguments[0];
            const worker = navigator.serviceWorker;
            if (worker.controller) done();
            else worker.addEventListener('controllerchange', () => done(), { once: true });",
        )
        .await;
    }

    /// Keeps a picture of the page as `target/screenshots/NAME.png`.
    pub async fn take_screenshot(&self, name: &str) {
        let picture = self.client().screenshot().await.expect("the driver takes a picture");
        let folder = screenshots();
        std::fs::create_dir_all(&folder).expect("the target folder can be written");
        std::fs::write(folder.join(format!("{name}.png")), picture).expect("the target folder can be written");
    }
}
