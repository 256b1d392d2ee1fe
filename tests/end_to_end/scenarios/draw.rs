//! Drawing a street across a block: the use stays on both halves, shed and numbers follow, undo restores them exactly.

use hobnail_end_to_end::access::Sight;
use hobnail_end_to_end::page::{Figure, Page};
use hobnail_end_to_end::scenario::scenario;
use serde_json::json;

const VILLAGE: &str = "compact-village.geojson";

/// On Cress Street of the village and on the alley behind it: the block of two-family houses lies between.
const ACROSS: [(f64, f64); 2] = [(-125.2, 90.0), (-90.2, 62.4)];

/// On a street in the west of the village.
const WEST: (f64, f64) = (-273.0, -86.0);

const CONTROL: char = '\u{e009}';
const SHIFT: char = '\u{e008}';
const ENTER: char = '\u{e007}';
const ESCAPE: char = '\u{e00c}';

fn number(figures: &[Figure], id: &str) -> String {
    let found = figures.iter().find(|figure| figure.0 == id);
    found.unwrap_or_else(|| panic!("there is no figure {id}")).1.clone()
}

/// How many streets are drawn and blocks painted, as the drawing describes itself.
async fn drawn_and_painted(page: &Page) -> (u32, u32) {
    let described = page.drawing("aria-label").await;
    let count = |thing: &str| {
        let before = described.split(thing).next().expect("there is a first part");
        let last = before.trim().rsplit(' ').next().and_then(|word| word.parse().ok());
        last.unwrap_or_else(|| panic!("the drawing does not say how many {thing}: {described}"))
    };
    (count("streets drawn"), count("blocks painted"))
}

#[test]
fn a_street_across_a_block_keeps_the_use_on_both_halves_and_is_undone_exactly() {
    scenario("draw", async |page| {
        page.begin_with(VILLAGE).await;
        let figures = page.settled_figures().await;
        let described = page.drawing("aria-label").await;
        let (streets, blocks) = drawn_and_painted(page).await;
        let saved = std::fs::read(page.save().await).expect("the saved plan can be read");

        page.draw_street(ACROSS).await;
        let after = page.settled_figures().await;
        assert_eq!(
            drawn_and_painted(page).await,
            (streets + 1, blocks + 1),
            "both halves keep the use"
        );
        let homes = "homes.count";
        assert_ne!(number(&after, homes), number(&figures, homes), "the street takes land");
        let walk_of = |described: &str| described.split("painted.").nth(1).map(str::to_owned);
        let described_after = page.drawing("aria-label").await;
        assert_ne!(
            walk_of(&described_after),
            walk_of(&described),
            "the walk-shed has grown"
        );
        let said = page.text("[data-said]").await;
        assert!(said.contains("Draw street") && said.contains(", was "), "{said}");
        page.take_screenshot("drawn").await;

        page.keys(&[CONTROL, 'z']).await;
        assert_eq!(page.settled_figures().await, figures);
        assert_eq!(page.drawing("aria-label").await, described);
        let again = std::fs::read(page.save().await).expect("the saved plan can be read");
        assert!(
            saved == again,
            "the plan that is saved after undo is the same, byte for byte"
        );

        page.keys(&[CONTROL, SHIFT, 'z']).await;
        assert_eq!(page.settled_figures().await, after);
    });
}

#[test]
fn numbers_move_with_the_pointer_and_come_back_when_the_street_is_given_up() {
    scenario("preview", async |page| {
        page.begin_with(VILLAGE).await;
        let figures = page.settled_figures().await;
        page.choose_tool("street").await;
        page.click_at(ACROSS[0]).await;
        page.point_at(ACROSS[1]).await;
        let during = page.figures().await;
        assert_ne!(number(&during, "homes.count"), number(&figures, "homes.count"));
        assert!(
            during.iter().all(|figure| figure.2.is_empty()),
            "no range is shown that was not drawn for this"
        );
        page.keys(&[ESCAPE]).await;
        assert_eq!(page.settled_figures().await, figures);
    });
}

#[test]
fn another_tool_ends_a_street_and_gives_up_less() {
    scenario("another-tool", async |page| {
        page.begin_with("blank-site.geojson").await;
        let (streets, _) = drawn_and_painted(page).await;
        page.choose_tool("street").await;
        page.click_at((-100.0, 0.0)).await;
        page.keys(&['u']).await;
        let said = page.text("[data-said]").await;
        assert!(said.starts_with("Given up") && said.contains("Use tool"), "{said}");
        page.keys(&['s']).await;
        page.click_at((-100.0, 0.0)).await;
        page.click_at((100.0, 0.0)).await;
        page.point_at((60.0, 80.0)).await;
        page.keys(&['u']).await;
        let said = page.text("[data-said]").await;
        assert!(said.starts_with("Draw street") && said.contains("Use tool"), "{said}");
        assert_eq!(drawn_and_painted(page).await.0, streets + 1);
        page.keys(&[CONTROL, 'z']).await;
        assert_eq!(drawn_and_painted(page).await.0, streets, "one step");
    });
}

/// The button that shows the cut, and the slider that moves it.
const SHOW_CUT: &str = "#do-0-6";
const SLIDER: &str = ".cut-panel input[type='range']";

#[test]
fn the_cut_closes_by_escape_and_with_another_tool() {
    scenario("cut", async |page| {
        page.begin_with(VILLAGE).await;
        page.choose_tool("select").await;
        page.click_at(ACROSS[0]).await;
        page.press(SHOW_CUT).await;
        page.wait_for(&format!("{SLIDER}:focus")).await;
        page.keys(&[ESCAPE]).await;
        page.wait_for(&format!("body:not(:has(.cut-panel .section-drawn)) {SHOW_CUT}:focus"))
            .await;
        page.press(SHOW_CUT).await;
        page.wait_for(&format!("{SLIDER}:focus")).await;
        page.run_script("document.getElementById('drawing').focus(); arguments[0]()")
            .await;
        page.keys(&[ESCAPE]).await;
        page.wait_for("body:not(:has(.cut-panel .section-drawn)) #drawing:focus")
            .await;
        page.press(SHOW_CUT).await;
        page.wait_for(SLIDER).await;
        page.choose_tool("street").await;
        page.wait_for("body:not(:has(.cut-panel .section-drawn)) #drawing:focus")
            .await;
    });
}

#[test]
fn a_street_is_drawn_by_keyboard_alone() {
    scenario("keyboard", async |page| {
        page.begin_with("blank-site.geojson").await;
        let (streets, _) = drawn_and_painted(page).await;
        page.run_script("document.getElementById('drawing').focus(); arguments[0]()")
            .await;
        page.keys(&['s']).await;
        const RIGHT: char = '\u{e014}';
        const UP: char = '\u{e013}';
        for key in [UP, ENTER, RIGHT, RIGHT, RIGHT, RIGHT, ENTER, ENTER] {
            page.keys(&[key]).await;
        }
        assert_eq!(drawn_and_painted(page).await.0, streets + 1);
    });
}

#[test]
fn what_is_said_of_a_selected_street_scrolls_as_one() {
    scenario("selected-street", async |page| {
        page.see(Sight::Window(1366, 768)).await;
        page.begin_with(VILLAGE).await;
        page.choose_tool("select").await;
        page.click_at(ACROSS[0]).await;
        page.wait_for("[data-palette='details']").await;
        page.next_frame().await;
        let script = "const scrolls = element => element.scrollHeight > element.clientHeight + 1
                && ['auto', 'scroll'].includes(getComputedStyle(element).overflowY);
            const found = [...document.querySelectorAll('.palettes, .palettes *')].filter(scrolls);
            const last = [...document.querySelectorAll('.palettes select')].at(-1);
            last.scrollIntoView();
            const { top, bottom } = last.getBoundingClientRect();
            const room = document.getElementById('status').getBoundingClientRect();
            arguments[0]([found.map(element => element.className), top > 0 && bottom < room.top])";
        assert_eq!(page.run_script(script).await, json!([["palettes"], true]));
        page.take_screenshot("selected-street").await;
    });
}

/// The card of what is selected lies over the west of the drawing.
#[test]
fn a_selected_street_is_moved_clear_of_its_card() {
    scenario("uncovered", async |page| {
        page.see(Sight::Window(1366, 768)).await;
        page.begin_with(VILLAGE).await;
        page.choose_tool("select").await;
        for sight in [Sight::Window(1366, 768), Sight::Still] {
            page.see(sight).await;
            page.press("[data-command='fit']").await;
            page.next_frame().await;
            let before = page.on_screen(WEST).await;
            page.click_at(WEST).await;
            page.wait_for("[data-palette='selection']").await;
            let script = "const card = document.getElementById('palettes').getBoundingClientRect();
                const rest = () => {
                    const view = document.getElementById('drawing').dataset.view;
                    setTimeout(() => {
                        const same = document.getElementById('drawing').dataset.view === view;
                        same ? arguments[0](card.right) : rest();
                    }, 800);
                };
                rest()";
            let right = page.run_script(script).await.as_f64().expect("the card has an edge");
            assert!(before.0 < right, "it was covered: {before:?} and {right}");
            let after = page.on_screen(WEST).await;
            assert!(after.0 > right, "{after:?} and {right}");
            assert!((after.1 - before.1).abs() < 1.0, "only to the side");
            page.keys(&[ESCAPE]).await;
            page.keys(&[ESCAPE]).await;
        }
    });
}
