//! What must work in every engine, not only in Chromium; `cargo task test` runs this file in each.

use hobnail_end_to_end::browser::top_level;
use hobnail_end_to_end::page::Page;
use hobnail_end_to_end::scenario::{scenario, scenario_of_one_file};

const VILLAGE: &str = "compact-village.geojson";

/// On Cress Street of the village and on the alley behind it: the block of two-family houses lies between.
const ACROSS: [(f64, f64); 2] = [(-125.2, 90.0), (-90.2, 62.4)];

const CONTROL: char = '\u{e009}';
const SHIFT: char = '\u{e008}';

#[test]
fn a_street_is_drawn_taken_back_saved_and_opened_again() {
    scenario("everywhere", async |page| {
        page.begin_with(VILLAGE).await;
        assert_eq!(page.drawing("data-worker").await, "started");
        let before = (page.drawing("aria-label").await, page.settled_figures().await);
        page.draw_street(ACROSS).await;
        let drawn = (page.drawing("aria-label").await, page.settled_figures().await);
        assert_ne!(drawn.0, before.0);
        page.keys(&[CONTROL, 'z']).await;
        assert_eq!((page.drawing("aria-label").await, page.settled_figures().await), before);
        page.keys(&[CONTROL, SHIFT, 'z']).await;
        assert_eq!((page.drawing("aria-label").await, page.settled_figures().await), drawn);
        let saved = page.save().await;

        page.load_again("").await;
        page.open_file(&saved).await;
        page.wait_for("body:not(:has([data-welcome]))").await;
        assert_eq!((page.drawing("aria-label").await, page.settled_figures().await), drawn);
    });
}

#[test]
fn a_plan_whose_window_is_gone_is_opened_again_with_its_numbers_and_steps() {
    scenario("kept", async |page| {
        page.begin_with(VILLAGE).await;
        keep_close_and_open_again(page).await;
    });
}

/// From a `file:` address there is no server to ask, and nothing else is asked for either.
#[test]
fn the_page_in_one_file_works_from_disk_and_asks_for_nothing() {
    scenario_of_one_file("one-file", async |page| {
        assert_eq!(page.title().await, "Hobnail");
        page.begin_with(VILLAGE).await;
        assert_eq!(page.drawing("data-worker").await, "started");
        keep_close_and_open_again(page).await;
        let saved = page.save().await;
        page.open_file(&saved).await;
        page.settled_figures().await;
        page.take_screenshot("one-file").await;
        page.press("[data-command='help']").await;
        let licenses = page.saved_text("[data-command='licenses']").await;
        assert!(licenses.contains("i_overlay"), "{} letters", licenses.len());
        assert_eq!(page.server.asked(), Vec::<String>::new());
    });
}

/// The readers' module, in a worker of its own, and the dialog that shows what it read.
#[test]
fn a_small_extract_of_base_data_is_opened_taken_and_given_back() {
    scenario("everywhere-base", async |page| {
        let extract = top_level().join("tests/fixtures/readers/small/streets.osm");
        page.open_file(&extract).await;
        page.wait_for("[data-base='read']").await;
        let words = page.text("[data-base-words]").await;
        assert!(words.contains("streets.osm"), "{words}");
        page.press("[data-command='base-take']").await;
        page.wait_for("#base:not([open])").await;
        let taken = std::fs::read_to_string(page.save().await).expect("the saved plan can be read");
        assert!(taken.contains("Mill & Main"), "{taken}");
        page.keys(&[CONTROL, 'z']).await;
        page.wait_for("[data-command='undo'][aria-disabled='true']").await;
    });
}

/// Draws, closes the window, and finds the plan again in another with its numbers and its steps.
async fn keep_close_and_open_again(page: &Page) {
    let before = page.settled_figures().await;
    let described_before = page.drawing("aria-label").await;
    page.draw_street(ACROSS).await;
    page.wait_for("[data-kept='yes']").await;
    let figures = page.settled_figures().await;
    let described = page.drawing("aria-label").await;
    assert_ne!(described, described_before);

    let first = page.open_window().await;
    page.close_window(first).await;
    page.open_recent().await;
    assert_eq!(page.drawing("aria-label").await, described);
    assert_eq!(page.settled_figures().await, figures);
    page.keys(&[CONTROL, 'z']).await;
    assert_eq!(page.drawing("aria-label").await, described_before);
    assert_eq!(page.settled_figures().await, before);
}
