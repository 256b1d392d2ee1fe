//! How the page is set: for a projector, for a touch board on a wall, for looking alone, and on a phone.

use hobnail_end_to_end::access::Sight;
use hobnail_end_to_end::page::Page;
use hobnail_end_to_end::scenario::scenario;
use serde_json::json;

const VILLAGE: &str = "compact-village.geojson";
const SITE: &str = "blank-site.geojson";
const MENU: &str = "[data-menu='page'] summary";
const UNDO: &str = "[data-command='undo']";

const PAGE_UP: char = '\u{e00e}';
const PAGE_DOWN: char = '\u{e00f}';
const F5: char = '\u{e035}';
const CONTROL: char = '\u{e009}';

/// Across a block of the village.
const ACROSS: [(f64, f64); 2] = [(-125.2, 90.0), (-90.2, 62.4)];

const SCREENS: [Sight; 2] = [Sight::Window(1366, 768), Sight::Window(1920, 1080)];
const PHONE: Sight = Sight::Window(390, 844);

/// Sets the page for a place, by its menu.
async fn set_for(page: &Page, mode: &str) {
    page.press(MENU).await;
    page.press(&format!("[name='mode'][value='{mode}']")).await;
    page.wait_for(&format!("html[data-mode='{mode}']")).await;
    page.press(MENU).await;
    page.next_frame().await;
}

async fn look_only(page: &Page) {
    page.press(MENU).await;
    page.press("#look-only").await;
    page.wait_for("html[data-looking='yes']").await;
    page.press(MENU).await;
    page.next_frame().await;
}

/// Share of the window in which the drawing is seen: no panel lies over it.
async fn share_of_drawing(page: &Page) -> f64 {
    let script = "const canvas = document.getElementById('drawing');
        const [across, down] = [64, 40];
        let seen = 0;
        for (let column = 0; column < across; column++) {
            for (let row = 0; row < down; row++) {
                const [x, y] = [(column + 0.5) / across * innerWidth, (row + 0.5) / down * innerHeight];
                seen += document.elementFromPoint(x, y) === canvas;
            }
        }
        arguments[0](seen / across / down)";
    page.run_script(script).await.as_f64().expect("a share is a number")
}

/// What a facilitator needs before a room and is not wholly in the window: enlarged figures and the files' commands.
async fn out_of_sight(page: &Page) -> serde_json::Value {
    let script = "const wanted = ['[data-command=open]', '[data-command=save]', '[data-menu=samples]'];
        const found = [...document.querySelectorAll([...wanted, '.enlarged-figure'].join())];
        const is_seen = element => {
            const box = element.getBoundingClientRect();
            return box.width && box.left >= 0 && box.right <= innerWidth && box.top >= 0 && box.bottom <= innerHeight;
        };
        const names = found.filter(element => !is_seen(element)).map(element => element.textContent);
        arguments[0](found.length < wanted.length ? ['not on the page'] : names)";
    page.run_script(script).await
}

/// The least size of any words in sight, in pixels of the screen.
async fn least_type(page: &Page) -> f64 {
    let script = "const sizes = [...document.querySelectorAll('body *')]
            .filter(element => [...element.childNodes].some(node => node.nodeType === 3 && node.data.trim()))
            .filter(element => element.checkVisibility({ visibilityProperty: true }))
            .filter(element => element.getBoundingClientRect().width > 2)
            .map(element => parseFloat(getComputedStyle(element).fontSize) * (element.currentCSSZoom ?? 1));
        arguments[0](Math.min(...sizes))";
    page.run_script(script).await.as_f64().expect("a size is a number")
}

async fn scale_of_words(page: &Page) -> f64 {
    let scale = page.drawing("data-scale").await;
    scale.parse().unwrap_or_else(|_| panic!("the scale is {scale}"))
}

#[test]
fn for_a_projector_everything_is_large_and_the_drawing_has_most_of_the_window() {
    scenario("mode-projector", async |page| {
        page.begin_with(VILLAGE).await;
        page.settled_figures().await;
        assert_eq!(page.drawing("data-scale").await, "1");
        set_for(page, "projector").await;
        let said = page.text("[data-said]").await;
        assert!(said.contains("projector"), "{said}");
        for (screen, least_px, least_share) in [(SCREENS[0], 17.0, 0.6), (SCREENS[1], 24.0, 0.65)] {
            page.see(screen).await;
            page.next_frame().await;
            let (size, scale) = (least_type(page).await, scale_of_words(page).await);
            assert!(size >= least_px, "{screen:?}: words of {size} px");
            assert!(
                scale >= 1.5,
                "{screen:?}: words on the drawing are {scale} times as large"
            );
            let share = share_of_drawing(page).await;
            assert!(share >= least_share, "{screen:?}: the drawing has {share}");
            let cut_off = out_of_sight(page).await;
            assert_eq!(cut_off, json!([]), "{screen:?}: files and figures are in sight");
            let enlarged = page.texts("#figures .enlarged-value").await;
            assert_eq!(enlarged.len(), 3);
            page.take_screenshot(&format!("mode-projector-{least_px}")).await;
        }
        // The window stays as it is set, in another language too; another window does not.
        page.press("[data-menu='page'] summary").await;
        page.load_again("").await;
        page.wait_for("html[data-mode='projector']").await;
        page.run_script("document.querySelector('[data-language=es]').click(); arguments[0]()")
            .await;
        page.wait_for("html[lang='es'][data-mode='projector'][data-ready]")
            .await;
        page.open_window().await;
        page.wait_for("html[data-mode='desk']").await;
    });
}

/// Every target in sight that is smaller than a finger at a wall needs.
async fn small_targets(page: &Page) -> serde_json::Value {
    let script = "const least = 44;
        const targets = [...document.querySelectorAll('button, select, summary, input, label.choice')]
            .filter(element => element.checkVisibility({ visibilityProperty: true }))
            .filter(element => !element.closest('[aria-hidden=true], label.choice input, .visually-hidden'));
        const pressed = element => element.matches('[type=checkbox], [type=radio]') && element.closest('label') || element;
        arguments[0](targets.map(element => [element, pressed(element).getBoundingClientRect()])
            .filter(([, box]) => box.width && (box.width < least - 0.5 || box.height < least - 0.5))
            .map(([element, box]) => `${element.outerHTML.slice(0, 90)} ${box.width} by ${box.height}`))";
    page.run_script(script).await
}

#[test]
fn at_a_board_targets_are_large_and_the_tools_stand_on_either_side() {
    scenario("mode-board", async |page| {
        page.see(Sight::Window(1920, 1080)).await;
        page.begin_with(VILLAGE).await;
        page.settled_figures().await;
        for (mode, is_right) in [("board-left", false), ("board-right", true)] {
            set_for(page, mode).await;
            page.choose_tool("view").await;
            for (screen, least_share) in SCREENS.into_iter().zip([0.6, 0.65]) {
                page.see(screen).await;
                page.next_frame().await;
                let share = share_of_drawing(page).await;
                assert!(share >= least_share, "{mode}, {screen:?}: the drawing has {share}");
                assert_eq!(out_of_sight(page).await, json!([]), "{mode}, {screen:?}");
            }
            for tool in ["select", "area", "street", "use", "place", "view"] {
                page.choose_tool(tool).await;
                page.next_frame().await;
                assert_eq!(small_targets(page).await, json!([]), "{mode}, {tool}");
            }
            let sides = page
                .run_script(
                    "const middle = id => { const box = document.getElementById(id).getBoundingClientRect();
                        return (box.left + box.right) / 2 > innerWidth / 2 };
                    arguments[0]([middle('rail'), middle('figures')])",
                )
                .await;
            assert_eq!(sides, json!([is_right, !is_right]), "{mode}");
            page.choose_tool("select").await;
            page.click_at(ACROSS[0]).await;
            page.wait_for("[data-palette='selection']").await;
            assert_eq!(small_targets(page).await, json!([]), "{mode}, a selected street");
            page.take_screenshot(&format!("mode-{mode}")).await;
        }
    });
}

#[test]
fn at_a_board_a_street_is_finished_by_a_tap_and_by_the_keys_of_a_clicker() {
    scenario("mode-board-keys", async |page| {
        page.begin_with(SITE).await;
        set_for(page, "board-left").await;
        let nothing = format!("{UNDO}[aria-disabled='true']");
        let something = format!("{UNDO}[aria-disabled='false']");
        for by_key in [false, true] {
            page.choose_tool("street").await;
            for place in [(-60.0, 0.0), (60.0, 0.0)] {
                page.tap(page.on_screen(place).await).await;
            }
            page.wait_for("[data-command='finish'][aria-disabled='false']").await;
            if by_key {
                page.keys(&[PAGE_DOWN]).await;
            } else {
                page.press("[data-command='finish']").await;
            }
            page.wait_for("[data-command='finish'][aria-disabled='true']").await;
            page.wait_for(&something).await;
            page.keys(&[PAGE_UP]).await;
            page.wait_for(&nothing).await;
            page.keys(&['b']).await;
            page.wait_for(&something).await;
            page.keys(&[PAGE_UP]).await;
            page.wait_for(&nothing).await;
        }
        // The key that begins a show gives up, and does not load the page again.
        page.tap(page.on_screen((0.0, 40.0)).await).await;
        page.tap(page.on_screen((50.0, 40.0)).await).await;
        page.wait_for("[data-command='give-up'][aria-disabled='false']").await;
        page.keys(&[F5]).await;
        page.keys(&[F5]).await;
        page.wait_for("[data-command='give-up'][aria-disabled='true']").await;
        page.wait_for(&nothing).await;
        assert!(page.texts("[data-welcome]").await.is_empty(), "the plan is still open");
    });
}

/// Drops a plan on the page, as a person does with a file.
async fn drop_a_plan(page: &Page) {
    let script = "const done = arguments[0];
        const held = new DataTransfer();
        held.items.add(new File(['{\"type\": \"FeatureCollection\", \"features\": []}'], 'other.geojson'));
        const options = { dataTransfer: held, bubbles: true, cancelable: true };
        document.querySelector('.desk').dispatchEvent(new DragEvent('drop', options));
        setTimeout(done, 300)";
    page.run_script(script).await;
}

#[test]
fn a_plan_that_is_looked_at_stays_as_it_is_until_it_is_made_ones_own() {
    scenario("mode-looking", async |page| {
        page.begin_with(VILLAGE).await;
        page.draw_street(ACROSS).await;
        page.wait_for("[data-kept='yes']").await;
        look_only(page).await;
        page.wait_for("[data-looking-line]").await;
        let described = page.drawing("aria-label").await;
        for keys in [&[CONTROL, 'z'][..], &['s'], &['\u{e017}'], &[CONTROL, 'y']] {
            page.run_script("document.getElementById('drawing').focus(); arguments[0]()")
                .await;
            page.keys(keys).await;
        }
        page.drag(ACROSS[0], (0.0, 0.0)).await;
        page.click_at(ACROSS[1]).await;
        drop_a_plan(page).await;
        page.wait_for("[data-notice]").await;
        page.press("[data-notice] button").await;
        assert_eq!(page.drawing("aria-label").await, described);

        // What is there for looking works: maps, bases, the view.
        let view = page.drawing("data-view").await;
        page.choose("#map", "density").await;
        page.wait_for("[data-map='density'] [data-legend]").await;
        page.press("[data-command='zoom-in']").await;
        page.next_frame().await;
        assert_ne!(page.drawing("data-view").await, view);
        page.press("[data-figure='homes.count'] .figure-line").await;
        page.wait_for("[data-figure='homes.count'] .basis-step").await;

        // In another language too; then it is handed back.
        page.press("[data-language='es']").await;
        page.wait_for(
            "html[lang='es'][data-looking='yes'][data-ready] body:not(:has([data-welcome])) [data-looking-line]",
        )
        .await;
        page.keys(&[CONTROL, 'z']).await;
        page.press("[data-command='make-own']").await;
        page.wait_for("html[data-looking='no'] [data-command='undo'][aria-disabled='false']")
            .await;
        page.run_script(
            "document.querySelectorAll('[data-notice] button').forEach(button => button.click()); arguments[0]()",
        )
        .await;
        page.press("[data-command='undo']").await;
        page.wait_for("[data-command='redo'][aria-disabled='false']").await;
    });
}

#[test]
fn on_a_phone_a_plan_that_is_looked_at_is_drawing_and_figures() {
    scenario("mode-phone", async |page| {
        page.see(PHONE).await;
        page.begin_with(VILLAGE).await;
        page.settled_figures().await;
        look_only(page).await;
        let script = "scrollTo(0, 0);
            const box = css => document.querySelector(css).getBoundingClientRect();
            const [drawing, figure] = [box('#drawing'), box(\"[data-figure='homes.count']\")];
            const sideways = document.scrollingElement.scrollWidth - document.scrollingElement.clientWidth;
            arguments[0]([drawing.top, drawing.height / innerHeight, figure.top / innerHeight, sideways])";
        let told = page.run_script(script).await;
        let [top, height, figure, sideways] = serde_json::from_value(told).expect("four numbers");
        let told: [f64; 4] = [top, height, figure, sideways];
        assert!(told[0] < 140.0, "little stands before the drawing: {told:?}");
        assert!(told[1] > 0.4, "the drawing is seen: {told:?}");
        assert!(told[2] < 1.0, "figures are seen without scrolling: {told:?}");
        assert!(told[3] < 0.5, "nothing scrolls sideways: {told:?}");
        page.take_screenshot("mode-phone").await;
    });
}

#[test]
fn the_first_steps_can_be_opened_again() {
    scenario("first-steps", async |page| {
        page.begin_with(SITE).await;
        page.press("[data-command='help']").await;
        let tool = page.text("[data-help]").await;
        page.press("[data-command='help-other']").await;
        page.next_frame().await;
        let steps = page.texts("[data-help] p").await;
        assert_eq!(steps.len(), 3);
        page.press("[data-command='help-other']").await;
        page.next_frame().await;
        assert_eq!(page.text("[data-help]").await, tool);
    });
}

/// What is passed on with the page goes with its licenses.
#[test]
fn the_licenses_of_what_is_inside_are_saved_from_help() {
    scenario("licenses", async |page| {
        page.begin_with(SITE).await;
        page.press("[data-command='help']").await;
        let text = page.saved_text("[data-command='licenses']").await;
        for part in [
            "i_overlay",
            "wasm-bindgen",
            "@fluent/bundle",
            "Permission is hereby granted",
            "SIL OPEN FONT LICENSE",
        ] {
            assert!(text.contains(part), "{part} is not in {} letters", text.len());
        }
        assert!(!text.contains("fantoccini"), "what only tests use is not passed on");
    });
}
