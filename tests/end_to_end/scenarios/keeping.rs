//! Plans kept in the browser: a window that is gone loses nothing, and two windows do not write over each other.

use hobnail_end_to_end::scenario::scenario;

const VILLAGE: &str = "compact-village.geojson";
const SITE: &str = "blank-site.geojson";

#[test]
fn a_street_that_was_not_finished_is_opened_again_too() {
    scenario("kept-unfinished", async |page| {
        page.begin_with(SITE).await;
        page.choose_tool("street").await;
        page.click_at((-100.0, 0.0)).await;
        page.click_at((100.0, 0.0)).await;
        let described = page.drawing("aria-label").await;
        // Where the pointer rests no corner was set: the street on the page is longer than what is kept.
        page.point_at((100.0, 80.0)).await;
        page.next_frame().await;

        // What the browser has taken is there in another window, whether or not the first still stands.
        page.open_window().await;
        page.open_recent().await;
        assert_eq!(page.drawing("aria-label").await, described);
        assert!(page.text("[data-said]").await.contains("not finished"));
    });
}

#[test]
fn the_second_window_on_a_plan_says_so_and_goes_on_as_a_copy() {
    scenario("kept-twice", async |page| {
        page.begin_with(SITE).await;
        page.draw_street([(-100.0, 0.0), (100.0, 0.0)]).await;
        page.wait_for("[data-kept='yes']").await;

        let first = page.open_window().await;
        page.open_recent().await;
        page.draw_street([(-100.0, 60.0), (100.0, 60.0)]).await;
        page.wait_for("[data-kept='yes']").await;

        page.show_window(first).await;
        page.draw_street([(-100.0, -60.0), (100.0, -60.0)]).await;
        page.wait_for("[data-kept='no']").await;
        assert!(page.text("[data-kept]").await.contains("another window"));
        page.press("[data-command='keep-as-copy']").await;
        page.wait_for("[data-kept='yes']").await;

        page.load_again("").await;
        page.wait_for("[data-recent]").await;
        assert_eq!(page.texts("[data-recent]").await.len(), 2);
        page.press("[data-forget]").await;
        page.wait_for("[data-keep]").await;
        page.press(".recent:has([data-keep]) [data-forget]").await;
        page.wait_for("ul:has(> .recent:only-child)").await;
    });
}

#[test]
fn a_plan_that_was_only_looked_at_is_not_kept() {
    scenario("not-kept", async |page| {
        page.begin_with(SITE).await;
        page.load_again("").await;
        page.begin_with(VILLAGE).await;
        page.draw_street([(-125.2, 90.0), (-90.2, 62.4)]).await;
        page.wait_for("[data-kept='yes']").await;
        page.load_again("").await;
        page.wait_for("[data-recent]").await;
        assert_eq!(page.texts("[data-recent]").await.len(), 1);
    });
}

/// A browser without a person decides by itself: it may promise or not, and the page says which.
#[test]
fn the_browser_is_asked_to_hold_on_to_kept_plans() {
    scenario("kept-lasting", async |page| {
        page.begin_with(SITE).await;
        page.draw_street([(-100.0, 0.0), (100.0, 0.0)]).await;
        page.wait_for("[data-kept='yes']").await;
        page.load_again("").await;
        page.wait_for("[data-lasting='false']").await;
        page.press("[data-ask-to-last]").await;
        page.wait_for("[data-lasting='true'], .notice").await;
        let is_lasting = page.texts("[data-lasting='true']").await.len() == 1;
        assert_eq!(page.texts("[data-ask-to-last]").await.is_empty(), is_lasting);
        assert_eq!(
            page.texts(".notice-place .notice").await.is_empty(),
            is_lasting,
            "what may be lost is said"
        );
    });
}

#[test]
fn the_keyboard_goes_on_once_the_browser_holds_on_to_plans() {
    scenario("kept-lasting", async |page| {
        page.begin_with(SITE).await;
        page.draw_street([(-100.0, 0.0), (100.0, 0.0)]).await;
        page.wait_for("[data-kept='yes']").await;
        page.load_again("").await;
        page.wait_for("[data-lasting='false'] [data-ask-to-last]").await;
        page.run_script(
            "navigator.storage.persist = () => Promise.resolve(true);
            document.querySelector('[data-ask-to-last]').focus();
            arguments[0]()",
        )
        .await;
        page.keys(&['\u{e007}']).await;
        page.wait_for("[data-lasting='true']").await;
        page.wait_for("#welcome-title:focus").await;
    });
}
