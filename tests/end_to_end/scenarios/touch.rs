//! Fingers, and a pen in a hand: drawing, moving the view, and a hand that only rests.

use hobnail_end_to_end::access::Sight;
use hobnail_end_to_end::page::Page;
use hobnail_end_to_end::scenario::scenario;
use hobnail_end_to_end::touch::{Act, Tip};

const SITE: &str = "blank-site.geojson";
const FIRST: Tip = Tip::Finger("first");
const SECOND: Tip = Tip::Finger("second");

async fn streets(page: &Page) -> u32 {
    let described = page.drawing("aria-label").await;
    let before = described.split(" streets drawn").next().unwrap_or_default();
    let count = before.rsplit(' ').next().and_then(|word| word.parse().ok());
    count.unwrap_or_else(|| panic!("the drawing does not say how many streets: {described}"))
}

async fn px_per_m(page: &Page) -> f64 {
    let view = page.drawing("data-view").await;
    let first = view.split(' ').next().and_then(|part| part.parse().ok());
    first.unwrap_or_else(|| panic!("the view is {view}"))
}

#[test]
fn a_street_is_drawn_by_taps_and_two_fingers_move_the_view_meanwhile() {
    scenario("touch-street", async |page| {
        page.begin_with(SITE).await;
        let before = streets(page).await;
        page.choose_tool("street").await;
        page.tap(page.on_screen((-100.0, 0.0)).await).await;
        page.tap(page.on_screen((0.0, 0.0)).await).await;
        assert_eq!(streets(page).await, before + 1, "the run is shown");
        let (drawn, scale) = (page.drawing("aria-label").await, px_per_m(page).await);

        let [left, right] = [page.on_screen((-60.0, 40.0)).await, page.on_screen((60.0, 40.0)).await];
        // One after the other, as fingers come; then apart, and both to one side.
        let apart = [(left.0 - 60.0, left.1), (right.0 + 60.0, right.1)];
        let aside = [(apart[0].0, left.1 + 40.0), (apart[1].0, right.1 + 40.0)];
        page.touch(&[
            (
                FIRST,
                &[
                    Act::Down(left),
                    Act::Wait,
                    Act::To(apart[0]),
                    Act::To(aside[0]),
                    Act::Up,
                ],
            ),
            (
                SECOND,
                &[
                    Act::Wait,
                    Act::Down(right),
                    Act::To(apart[1]),
                    Act::To(aside[1]),
                    Act::Up,
                ],
            ),
        ])
        .await;
        let ratio = px_per_m(page).await / scale;
        let expected = (apart[1].0 - apart[0].0) / (right.0 - left.0);
        assert!((ratio / expected - 1.0).abs() < 0.05, "{ratio} for {expected}");
        assert_eq!(page.drawing("aria-label").await, drawn, "the street is as it was");

        // On from where it was, and ended on its last point again.
        let end = (0.0, -50.0);
        page.tap(page.on_screen(end).await).await;
        page.tap(page.on_screen(end).await).await;
        assert_eq!(streets(page).await, before + 1);
        let said = page.text("[data-said]").await;
        assert!(said.starts_with("Draw street"), "{said}");
        page.take_screenshot("touch-street").await;
    });
}

#[test]
fn two_fingers_select_nothing_and_nothing_is_said_of_them() {
    scenario("touch-select", async |page| {
        page.begin_with("compact-village.geojson").await;
        page.choose_tool("select").await;
        let said = page.text("[data-said]").await;
        // A street of the village.
        let left = page.on_screen((-273.0, -86.0)).await;
        let right = (left.0 + 120.0, left.1);
        let (first, second) = ((left.0 - 40.0, left.1), (right.0 + 40.0, right.1));
        page.touch(&[
            (FIRST, &[Act::Down(left), Act::Wait, Act::To(first), Act::Up]),
            (SECOND, &[Act::Wait, Act::Down(right), Act::To(second), Act::Up]),
        ])
        .await;
        page.next_frame().await;
        assert!(page.texts("[data-palette='selection']").await.is_empty());
        assert_eq!(page.text("[data-said]").await, said);
        page.tap(page.on_screen((-273.0, -86.0)).await).await;
        page.wait_for("[data-palette='selection']").await;
    });
}

#[test]
fn a_tap_pins_a_remark_and_its_words_are_typed() {
    scenario("touch-remark", async |page| {
        page.begin_with(SITE).await;
        page.choose_tool("place").await;
        page.press("[data-palette] input[name='kind'][value='Note']").await;
        page.tap(page.on_screen((40.0, 20.0)).await).await;
        page.wait_for("[data-field='Remark'] textarea:focus").await;
        page.next_frame().await;
        page.wait_for("[data-field='Remark'] textarea:focus").await;
    });
}

#[test]
fn one_finger_pulls_a_soft_area_open_and_moves_what_is_selected() {
    scenario("touch-drag", async |page| {
        page.begin_with(SITE).await;
        page.choose_tool("area").await;
        page.press("[data-palette] input[name='kind'][value='Soft area']").await;
        let [from, to] = [page.on_screen((-80.0, -60.0)).await, page.on_screen((80.0, 60.0)).await];
        page.touch(&[(FIRST, &[Act::Down(from), Act::To(to), Act::Up])]).await;
        page.wait_for("[data-details-delete]").await;
        let about = page.text("[data-details-about]").await;
        let view = page.drawing("data-view").await;

        page.choose_tool("select").await;
        let [from, to] = [page.on_screen((0.0, 0.0)).await, page.on_screen((40.0, 20.0)).await];
        page.tap(from).await;
        page.touch(&[(FIRST, &[Act::Down(from), Act::To(to), Act::Up])]).await;
        let said = page.text("[data-said]").await;
        assert!(said.starts_with("Move"), "{said}");
        assert_eq!(
            page.text("[data-details-about]").await,
            about,
            "it is as large as it was"
        );
        assert_eq!(page.drawing("data-view").await, view, "the view stays");
    });
}

#[test]
fn a_hand_that_rests_beside_its_pen_draws_nothing() {
    scenario("touch-pen", async |page| {
        page.begin_with(SITE).await;
        page.choose_tool("area").await;
        page.press("[data-palette] input[name='kind'][value='Soft area']").await;
        let view = page.drawing("data-view").await;
        let hand = page.on_screen((120.0, -100.0)).await;
        let slid = (hand.0 + 8.0, hand.1 + 5.0);
        let [from, to] = [page.on_screen((-80.0, -60.0)).await, page.on_screen((80.0, 60.0)).await];
        // The hand comes first, and again in the middle of the stroke.
        page.touch(&[
            (
                Tip::Pen,
                &[
                    Act::Wait,
                    Act::Down(from),
                    Act::Wait,
                    Act::Wait,
                    Act::To(to),
                    Act::Up,
                    Act::Wait,
                ],
            ),
            (
                FIRST,
                &[
                    Act::Down(hand),
                    Act::Wait,
                    Act::To(slid),
                    Act::Up,
                    Act::Wait,
                    Act::Wait,
                    Act::Wait,
                ],
            ),
            (
                SECOND,
                &[
                    Act::Wait,
                    Act::Wait,
                    Act::Wait,
                    Act::Down(slid),
                    Act::To(hand),
                    Act::Wait,
                    Act::Up,
                ],
            ),
        ])
        .await;
        page.wait_for("[data-details-delete]").await;
        assert_eq!(page.drawing("data-view").await, view, "the view stays");
        let said = page.text("[data-said]").await;
        assert!(said.starts_with("Draw soft area"), "{said}");
        page.press("[data-command='undo']").await;
        page.wait_for("[data-command='undo'][aria-disabled='true']").await;
    });
}

#[test]
fn between_the_strokes_of_a_pen_a_finger_only_moves_the_view() {
    scenario("touch-palm", async |page| {
        page.begin_with(SITE).await;
        page.choose_tool("street").await;
        let [start, end] = [page.on_screen((-80.0, 0.0)).await, page.on_screen((80.0, 0.0)).await];
        for spot in [start, end, end] {
            page.touch(&[(Tip::Pen, &[Act::Down(spot), Act::Up])]).await;
        }
        page.wait_for("[data-command='undo'][aria-disabled='false']").await;
        let (drawn, view) = (page.drawing("aria-label").await, page.drawing("data-view").await);
        let [palm, slid] = [page.on_screen((0.0, -80.0)).await, page.on_screen((40.0, -80.0)).await];
        page.tap(palm).await;
        assert_eq!(
            page.drawing("data-view").await,
            view,
            "a hand that is put down moves nothing"
        );
        page.touch(&[(FIRST, &[Act::Down(palm), Act::To(slid), Act::Up])]).await;
        assert_ne!(
            page.drawing("data-view").await,
            view,
            "a finger that slides moves the view"
        );
        assert_eq!(page.drawing("aria-label").await, drawn);
    });
}

#[test]
fn a_tap_on_a_phone_selects_and_the_drawing_stays_below_the_finger() {
    scenario("touch-phone", async |page| {
        page.see(Sight::Window(390, 844)).await;
        page.begin_with("compact-village.geojson").await;
        page.choose_tool("select").await;
        let street = (-125.2, 90.0);
        let spot = page.on_screen(street).await;
        page.tap(spot).await;
        page.wait_for("[data-palette='selection']").await;
        assert_eq!(page.on_screen(street).await, spot, "what was pressed is where it was");
        let undo = page.attributes("[data-command='undo']", "aria-disabled").await;
        assert_eq!(undo, ["true"], "nothing was moved");
        page.take_screenshot("touch-phone").await;
    });
}

#[test]
fn a_remark_is_pinned_by_a_tap_and_answered_by_a_street_of_taps() {
    scenario("touch-remark", async |page| {
        // A tablet's window.
        page.see(Sight::Window(1180, 820)).await;
        page.begin_with(SITE).await;
        // Commands are tapped as the drawing is.
        tap_at(page, "[data-command='remark']").await;
        page.tap(page.on_screen((140.0, 60.0)).await).await;
        page.wait_for("[data-details-delete]").await;
        tap_at(page, "[data-field='Remark'] textarea").await;
        page.wait_for("[data-field='Remark'] textarea:focus").await;
        page.type_into("Remark", "A way across.\nFor wheelchairs too.").await;
        assert_eq!(
            page.text(".remark .remark-text").await,
            "A way across.\nFor wheelchairs too."
        );

        tap_at(page, ".remark [data-answer]").await;
        page.wait_for("[data-answering]").await;
        tap_at(page, "[data-tool='street']").await;
        let end = (180.0, -60.0);
        for place in [(60.0, -60.0), end, end] {
            page.tap(page.on_screen(place).await).await;
        }
        page.wait_for(".remark [data-answer-step]").await;
        assert_eq!(page.text(".remark [data-answer-step] span").await, "Draw street");
        tap_at(page, "[data-unlink]").await;
        page.wait_for(".remark:not(:has([data-answer-step]))").await;
        tap_at(page, "[data-menu='history'] summary").await;
        tap_at(page, "[data-menu='history'] [aria-label^='Link: ']").await;
        page.wait_for(".remark [data-answer-step]").await;
        page.take_screenshot("touch-remark").await;
        tap_at(page, "[data-command='answered']").await;
        page.wait_for("body:not(:has([data-answering]))").await;
    });
}

/// Taps the middle of an element, once it is scrolled into sight.
async fn tap_at(page: &Page, css: &str) {
    let script = format!(
        "const element = document.querySelector({});
        element.scrollIntoView({{ block: 'center' }});
        const box = element.getBoundingClientRect();
        arguments[0]([(box.left + box.right) / 2, (box.top + box.bottom) / 2])",
        serde_json::json!(css)
    );
    let spot = page.run_script(&script).await;
    let (x, y): (f64, f64) = serde_json::from_value(spot).expect("a place is two numbers");
    page.tap((x.round(), y.round())).await;
}
