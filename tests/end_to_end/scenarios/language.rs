//! The language of a window: chosen on the page, remembered by the window, with the plan as it was.

use hobnail_end_to_end::access::Sight;
use hobnail_end_to_end::page::Page;
use hobnail_end_to_end::scenario::scenario;

const VILLAGE: &str = "compact-village.geojson";

/// Across a block of the village.
const ACROSS: [(f64, f64); 2] = [(-125.2, 90.0), (-90.2, 62.4)];

const CONTROL: char = '\u{e009}';

/// How far below the window the last figure of the first level ends, in pixels; less than nothing where all is seen.
async fn below_the_window(page: &Page) -> f64 {
    let below = page
        .run_script(
            "const figures = [...document.querySelectorAll('.figures:not(.is-further) .figure')];
            arguments[0](Math.max(...figures.map((one) => one.getBoundingClientRect().bottom)) - innerHeight)",
        )
        .await;
    below.as_f64().expect("pixels")
}

#[test]
fn a_changed_plan_goes_on_in_another_language_with_its_steps() {
    scenario("language", async |page| {
        page.begin_with(VILLAGE).await;
        page.draw_street(ACROSS).await;
        page.wait_for("[data-kept='yes']").await;
        let figures = page.settled_figures().await;
        page.press("[data-language='es']").await;
        page.wait_for("html[lang='es'][data-ready] body:not(:has([data-welcome])) [data-kept='yes']")
            .await;
        let spanish = page.settled_figures().await;
        // Spanish takes more room than English.
        page.see(Sight::Window(1366, 768)).await;
        page.next_frame().await;
        let below = below_the_window(page).await;
        assert!(below < 0.0, "the first level ends {below} px below the window");
        page.take_screenshot("language-es").await;
        let ids = |rows: &[(String, String, String)]| rows.iter().map(|row| row.0.clone()).collect::<Vec<_>>();
        assert_eq!(ids(&spanish), ids(&figures));
        assert_ne!(spanish, figures, "the words beside the numbers are Spanish");
        page.keys(&[CONTROL, 'z']).await;
        page.wait_for("[data-command='redo'][aria-disabled='false']").await;

        // A window of its own keeps its own language.
        let left = page.open_window().await;
        page.wait_for("html[lang='es'] [data-language='en']").await;
        page.press("[data-language='en']").await;
        page.wait_for("html[lang='en'][data-ready] [data-welcome]").await;
        page.show_window(left).await;
        page.load_again("").await;
        page.wait_for("html[lang='es']").await;
    });
}

#[test]
fn a_plan_that_was_only_opened_goes_on_too() {
    scenario("language-opened", async |page| {
        page.begin_with(VILLAGE).await;
        let described = page.drawing("aria-label").await;
        page.press("[data-language='es']").await;
        page.wait_for("html[lang='es'][data-ready] body:not(:has([data-welcome]))")
            .await;
        assert_ne!(page.drawing("aria-label").await, described);
        page.press("[data-language='en']").await;
        page.wait_for("html[lang='en'][data-ready] body:not(:has([data-welcome]))")
            .await;
        assert_eq!(page.drawing("aria-label").await, described);
    });
}
