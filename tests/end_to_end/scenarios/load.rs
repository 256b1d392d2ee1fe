//! Opening the page.

use hobnail_end_to_end::scenario::scenario;

/// Once the page has loaded and its service worker keeps the files, nothing is asked for by whatever is done, nor by
/// loading the page again; only the browser itself looks whether the service worker is still the newest.
#[test]
fn the_page_loads_from_its_own_origin_and_then_asks_for_nothing() {
    scenario("load", async |page| {
        assert_eq!(page.title().await, "Hobnail");
        page.run_script("const done = arguments[0]; document.fonts.ready.then(() => requestAnimationFrame(done))")
            .await;
        page.take_screenshot("load").await;
        page.wait_until_offline_is_ready().await;
        let asked = page.server.asked();
        for part in [".wasm", ".js", ".css", ".woff2"] {
            assert!(
                asked.iter().any(|path| path.ends_with(part)),
                "no {part} among {asked:?}"
            );
        }
        page.begin_with("compact-village.geojson").await;
        page.settled_figures().await;
        page.load_again("").await;
        page.begin_with("blank-site.geojson").await;
        page.run_script("const done = arguments[0]; requestIdleCallback(() => requestAnimationFrame(done))")
            .await;
        let since: Vec<String> = page.server.asked().split_off(asked.len());
        let is_check = |path: &String| path == "/service_worker.js";
        assert_eq!(since.iter().find(|path| !is_check(path)), None, "{since:?}");
    });
}

/// What every scenario checks at its end can fail: a request to elsewhere is refused by the page itself, and noticed.
#[test]
fn a_request_to_elsewhere_is_refused_and_noticed() {
    scenario("elsewhere", async |page| {
        page.run_script("const done = arguments[0]; fetch('http://127.0.0.1:9/elsewhere').then(done, done)")
            .await;
        let faults = page.faults().await;
        assert!(
            faults.iter().any(|fault| fault.contains("Content Security Policy")),
            "{faults:?}"
        );
        assert!(
            !faults.iter().any(|fault| fault.contains("ERR_CONNECTION")),
            "{faults:?}"
        );
    });
}
