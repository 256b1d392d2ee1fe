//! The page without a network, and a new version of it under a drawing; run in every engine too.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use hobnail_end_to_end::browser::top_level;
use hobnail_end_to_end::scenario::{scenario, scenario_served_from};

const VILLAGE: &str = "compact-village.geojson";

/// Across a block of the village.
const ACROSS: [(f64, f64); 2] = [(-125.2, 90.0), (-90.2, 62.4)];

const CONTROL: char = '\u{e009}';

#[test]
fn the_page_opens_without_a_network_once_it_was_opened_with_one() {
    scenario("offline", async |page| {
        page.wait_until_offline_is_ready().await;
        page.server.go_away();
        page.load_without_network().await;
        assert_eq!(page.drawing("data-worker").await, "started");
        page.begin_with(VILLAGE).await;
        page.settled_figures().await;
    });
}

/// Systems that show no SVG find pictures of the size that is said, one of which may be cut to any form.
#[test]
fn the_installed_page_has_icons_of_the_sizes_it_says() {
    scenario("icons", async |page| {
        let script = "const load = async ({ src, sizes, type, purpose }) => {
                const image = new Image();
                image.src = src;
                await image.decode();
                return [type, sizes, `${image.naturalWidth}x${image.naturalHeight}`, purpose];
            };
            const done = arguments[0];
            fetch('hobnail.webmanifest').then((file) => file.json())
                .then(({ icons }) => Promise.all(icons.map(load))).then(done)";
        let icons = page.run_script(script).await;
        let icons = icons.as_array().expect("a list");
        let pixels: Vec<_> = icons.iter().filter(|icon| icon[0] == "image/png").collect();
        assert!(pixels.iter().all(|icon| icon[1] == icon[2]), "{pixels:?}");
        for (size, purpose) in [("192x192", "any"), ("512x512", "any"), ("512x512", "maskable")] {
            assert!(
                pixels.iter().any(|icon| icon[1] == size && icon[3] == purpose),
                "{size} {purpose}: {pixels:?}"
            );
        }
    });
}

/// The new version waits beside the old one, whose window goes on as it was, until a person presses; then the plan is
/// there with its steps.
#[test]
fn a_new_version_waits_until_it_is_asked_for_and_loses_nothing() {
    let published = Published::new();
    scenario_served_from(&published.0, "new-version", async |page| {
        page.wait_until_offline_is_ready().await;
        page.begin_with(VILLAGE).await;
        let village = page.drawing("aria-label").await;
        page.run_script("window.isTheSame = true; arguments[0]()").await;

        published.publish("<html lang=\"en\">", "<html lang=\"en\" data-second>");
        page.run_script("navigator.serviceWorker.ready.then((worker) => worker.update()).then(arguments[0])")
            .await;
        page.wait_for("#new-version:not([hidden])").await;
        page.draw_street(ACROSS).await;
        page.wait_for("[data-kept='yes']").await;
        page.take_screenshot("new-version").await;
        assert_eq!(page.run_script("arguments[0](window.isTheSame)").await, true);
        let figures = page.settled_figures().await;
        let described = page.drawing("aria-label").await;
        assert_ne!(described, village);

        page.press("#new-version button").await;
        page.wait_for(":root[data-second][data-ready]").await;
        page.wait_for("body:not(:has([data-welcome])) [data-kept='yes']").await;
        assert_eq!(page.drawing("aria-label").await, described);
        assert_eq!(page.settled_figures().await, figures);
        page.keys(&[CONTROL, 'z']).await;
        assert_eq!(page.drawing("aria-label").await, village);
        page.wait_for("#new-version[hidden]").await;
    });
}

/// A copy of the built page, to publish changes in; gone when the test ends.
struct Published(PathBuf);

impl Published {
    fn new() -> Published {
        let folder = std::env::temp_dir().join(format!("hobnail-published-{}", std::process::id()));
        copy(&top_level().join("dist"), &folder);
        Published(folder)
    }

    /// Changes the page and what the service worker knows of it, as a build of another version would.
    fn publish(&self, old: &str, new: &str) {
        let page = self.0.join("index.html");
        let text = fs::read_to_string(&page).expect("the page is text");
        assert!(text.contains(old), "{text}");
        fs::write(&page, text.replacen(old, new, 1)).expect("the copy can be written");
        let written = Command::new("node")
            .arg(top_level().join("web/write_service_worker.mjs"))
            .env("TRUNK_STAGING_DIR", &self.0)
            .status()
            .expect("node starts");
        assert!(written.success(), "{written}");
    }
}

impl Drop for Published {
    fn drop(&mut self) {
        // A folder for temporary files may be left.
        let _ = fs::remove_dir_all(&self.0);
    }
}

fn copy(from: &Path, to: &Path) {
    fs::create_dir_all(to).expect("the folder for temporary files can be written");
    for entry in fs::read_dir(from).expect("the built page can be listed") {
        let path = entry.expect("the built page can be listed").path();
        let target = to.join(path.file_name().expect("an entry has a name"));
        if path.is_dir() {
            copy(&path, &target);
        } else {
            fs::copy(&path, &target).expect("the folder for temporary files can be written");
        }
    }
}
