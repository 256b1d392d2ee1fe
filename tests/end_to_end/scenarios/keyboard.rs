//! The whole main job without a pointer: two streets, a use, a figure's basis, undo, save.

use hobnail_end_to_end::page::Page;
use hobnail_end_to_end::scenario::scenario;

const CONTROL: char = '\u{e009}';
const ENTER: char = '\u{e007}';
const LEFT: char = '\u{e012}';
const UP: char = '\u{e013}';
const RIGHT: char = '\u{e014}';
const DOWN: char = '\u{e015}';

const DRAWING: &str = "#drawing";

/// Presses one key after the other.
async fn press(page: &Page, keys: &[(char, usize)]) {
    for (key, times) in keys {
        for _ in 0..*times {
            page.keys(&[*key]).await;
        }
    }
    page.next_frame().await;
}

/// The figures without their ranges, which are worked out later.
async fn numbers(page: &Page) -> Vec<(String, String)> {
    let figures = page.figures().await;
    figures.into_iter().map(|(id, number, _)| (id, number)).collect()
}

async fn expect_said(page: &Page, begins: &str, holds: &str) {
    let said = page.text("[role='status'][aria-live='polite'][data-said]").await;
    assert!(said.starts_with(begins) && said.contains(holds), "{said}");
}

#[test]
fn the_main_job_is_done_by_keyboard_alone() {
    scenario("keyboard-alone", async |page| {
        page.go_to_by_keyboard("[data-begin='blank-site.geojson']", false).await;
        page.keys(&[ENTER]).await;
        page.wait_for("body:not(:has([data-welcome]))").await;
        // The keyboard goes on at the drawing.
        page.wait_for("#drawing:focus").await;
        let described = page.drawing("aria-label").await;
        assert!(described.contains("0 blocks painted"), "{described}");

        press(page, &[('s', 1)]).await;
        expect_said(page, "Street tool.", "first point").await;
        press(page, &[(LEFT, 9), (ENTER, 1), (RIGHT, 18), (ENTER, 2)]).await;
        expect_said(page, "Draw street.", "").await;
        press(page, &[(LEFT, 9), (UP, 9), (ENTER, 1), (DOWN, 18), (ENTER, 2)]).await;
        let drawn = page.drawing("aria-label").await;
        assert!(drawn.contains("7 streets drawn"), "two more than before: {drawn}");

        press(page, &[('u', 1)]).await;
        expect_said(page, "Use tool.", "enclose").await;
        page.go_to_by_keyboard("input[name='building-type']", true).await;
        press(page, &[(DOWN, 1)]).await;
        page.go_to_by_keyboard(DRAWING, false).await;
        press(page, &[(LEFT, 3), (UP, 12), (ENTER, 1)]).await;
        expect_said(page, "Paint Detached house, large lot.", ", was 0 homes").await;
        let painted = page.drawing("aria-label").await;
        assert!(painted.contains("1 block painted"), "{painted}");
        let figures = numbers(page).await;

        let homes = "[data-figure='homes.count'] .figure-line";
        page.go_to_by_keyboard(homes, false).await;
        press(page, &[(ENTER, 1)]).await;
        page.wait_for(&format!("{homes}[aria-expanded='true']:focus")).await;
        page.wait_for("#basis-homes-count .basis-step").await;
        page.take_screenshot("keyboard-alone").await;

        page.keys(&[CONTROL, 'z']).await;
        page.next_frame().await;
        expect_said(page, "Undone: paint Detached house, large lot.", "homes 0 homes, was ").await;
        assert_eq!(page.drawing("aria-label").await, drawn);
        page.keys(&[CONTROL, '\u{e008}', 'z']).await;
        page.next_frame().await;
        expect_said(page, "Done again: paint Detached house, large lot.", ", was 0 homes").await;
        assert_eq!(numbers(page).await, figures);

        let saved = page.arrives_after(page.keys(&[CONTROL, 's'])).await;
        let text = std::fs::read_to_string(saved).expect("the saved plan can be read");
        assert!(text.contains("Tibberow"), "the plan has its name");
    });
}

#[test]
fn of_the_menus_one_is_open_at_a_time() {
    scenario("one-menu", async |page| {
        page.begin_with("compact-village.geojson").await;
        let menus = page.attributes("details[data-menu]", "data-menu").await;
        assert!(menus.len() >= 6, "{menus:?}");
        for menu in &menus {
            let script = format!("document.querySelector(\"[data-menu='{menu}'] summary\").focus(); arguments[0]()");
            page.run_script(&script).await;
            page.keys(&['\u{e007}']).await;
            page.wait_for(&format!("[data-menu='{menu}'][open]")).await;
            assert_eq!(page.attributes("[data-menu][open]", "data-menu").await, [menu.as_str()]);
        }
        // Escape closes the last from wherever in it the keyboard is.
        let last = menus.last().expect("there are some");
        page.keys(&['\u{e004}']).await;
        page.wait_for(&format!("[data-menu='{last}'] :focus:not(summary)"))
            .await;
        page.keys(&['\u{e00c}']).await;
        page.wait_for(&format!("[data-menu='{last}']:not([open]) summary:focus"))
            .await;
    });
}
