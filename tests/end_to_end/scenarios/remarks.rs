//! What we heard, what changed: remarks with their votes, the steps that answer them, and what is kept of both.

use hobnail_end_to_end::page::Page;
use hobnail_end_to_end::scenario::scenario;

const VILLAGE: &str = "compact-village.geojson";
const ENTER: char = '\u{e007}';
const SHIFT: char = '\u{e008}';
const ESCAPE: char = '\u{e00c}';
const LEFT: char = '\u{e012}';
const RIGHT: char = '\u{e014}';

/// A street that crosses a block of the village, and two places beside it.
const ACROSS: [(f64, f64); 2] = [(-125.2, 90.0), (-90.2, 62.4)];
const BY_THE_BLOCK: (f64, f64) = (-110.0, 78.0);
const ELSEWHERE: (f64, f64) = (120.0, -60.0);

/// Links a step of the history.
const LINK: &str = "[data-menu='history'] [aria-label^='Link: ']";

/// What somebody said in several lines.
const TREES: &str = "Keep the old trees by the creek.\nThey are the only shade on the way to school.";

/// Writes a remark: pinned here, from this table, with so many dots of so many people.
async fn write(page: &Page, at: (f64, f64), text: &str, table: &str, dots: [&str; 2]) {
    page.press("[data-command='remark']").await;
    page.next_frame().await;
    page.click_at(at).await;
    page.wait_for("[data-details-delete]").await;
    page.type_into("Remark", text).await;
    page.type_into("Table", table).await;
    page.type_into("Votes", dots[0]).await;
    page.type_into("People present", dots[1]).await;
}

#[test]
fn what_a_remark_says_is_typed_as_soon_as_it_is_pinned_down() {
    scenario("remarks-typed", async |page| {
        page.begin_with(VILLAGE).await;
        page.press("[data-command='remark']").await;
        for (at, number, end) in [(ELSEWHERE, 3, ENTER), (BY_THE_BLOCK, 4, ESCAPE)] {
            page.click_at(at).await;
            page.wait_for("[data-field='Remark'] textarea:focus").await;
            for letter in "Save us".chars() {
                page.keys(&[letter]).await;
            }
            page.keys(&[end]).await;
            page.wait_for("#drawing[data-tool='place']:focus").await;
            let words = page.text(&format!("[data-remark='{number}'] .remark-text")).await;
            assert_eq!(words, "Save us");
        }
    });
}

#[test]
fn a_remark_is_voted_on_answered_and_kept_with_what_changed() {
    scenario("remarks", async |page| {
        page.begin_with(VILLAGE).await;
        page.settled_figures().await;
        write(page, ELSEWHERE, TREES, "Table 1", ["5", "22"]).await;
        assert_eq!(
            page.text("[data-remark='3'] .remark-text").await,
            TREES,
            "line by line as it was said"
        );
        write(page, BY_THE_BLOCK, "A way through this block", "Table 2", ["14", "22"]).await;
        assert_eq!(
            page.attributes(".remark", "data-remark").await,
            ["2", "1", "4", "3"],
            "most dots first; the sample has two remarks of its own"
        );
        assert_eq!(
            page.text("[data-remark='4'] [data-about]").await,
            "Table 2 · 14 of 22 dots"
        );
        page.choose("#remarks-sort", "1").await;
        page.wait_for(".remark:first-child[data-remark='3']").await;
        // Choosing one selects it, with its fields, wherever it is listed.
        page.press("[data-remark='3'] .remark-line").await;
        page.wait_for("[data-palette='details']").await;
        page.type_into("Votes", "6").await;
        page.wait_for("[data-remark='3'] [data-about]").await;
        assert_eq!(
            page.text("[data-remark='3'] [data-about]").await,
            "Table 1 · 6 of 22 dots"
        );

        page.press("[data-command='fit']").await;
        page.next_frame().await;
        page.press("[data-remark='4'] [data-answer]").await;
        page.wait_for("[data-answering]").await;
        page.settled_figures().await;
        page.draw_street(ACROSS).await;
        assert_eq!(
            page.text("[data-remark='4'] [data-answer-step] span").await,
            "Draw street"
        );
        page.press("[data-command='undo']").await;
        page.wait_for("[data-remark='4']:not(:has([data-answer-step]))").await;
        page.press("[data-command='redo']").await;
        page.wait_for("[data-remark='4'] [data-answer-step]").await;
        page.wait_for("[data-changes] [data-changed] li").await;
        page.take_screenshot("remarks").await;
        let changed = page.text("[data-changes] [data-changed] li").await;
        page.press("[data-command='keep-changes']").await;
        page.wait_for("[data-remark='4'] > [data-changed] li").await;
        page.press("[data-command='answered']").await;
        page.wait_for("body:not(:has([data-answering]))").await;
        assert_eq!(page.text("[data-remark-count]").await, "4 remarks, 3 not answered yet.");

        let text = page.saved_text("[data-command='remarks-text']").await;
        assert!(
            text.contains("4. A way through this block\n   Table 2 · 14 of 22 dots\n   Draw street\n"),
            "{text}"
        );
        assert!(
            text.contains(&["3. ", &TREES.replace('\n', "\n   "), "\n   Table 1"].concat()),
            "{text}"
        );
        assert!(
            text.contains(&changed) && text.contains("   Not answered yet."),
            "{text}"
        );

        let file = page.save().await;
        page.load_again("").await;
        page.open_file(&file).await;
        page.wait_for("[data-remark='4'] [data-answer-step]").await;
        assert_eq!(page.text("[data-remark='4'] > [data-changed] li").await, changed);
        assert_eq!(page.text("[data-remark='3'] .remark-text").await, TREES);
    });
}

#[test]
fn an_earlier_step_and_what_is_selected_are_linked_to_a_remark() {
    scenario("remarks-links", async |page| {
        page.begin_with(VILLAGE).await;
        page.draw_street(ACROSS).await;
        write(page, ELSEWHERE, "A way through this block", "Table 2", ["14", "22"]).await;
        page.press("[data-remark='3'] [data-answer]").await;
        page.press("[data-command='link-step']").await;
        page.wait_for("[data-answer-step]").await;
        assert_eq!(page.text("[data-answer-step] span").await, "Draw street");
        page.press("[data-unlink]").await;
        page.wait_for("[data-remark='3']:not(:has([data-answer-step]))").await;
        // The keyboard goes on at the remark.
        page.wait_for(".remark-line:focus").await;
        // From the history as well, where it is said which remark is answered; steps of remarks alone answer nothing.
        page.press("[data-menu='history'] summary").await;
        assert_eq!(
            page.text("[data-menu='history'] .palette-title").await,
            "Answering remark 3"
        );
        assert_eq!(page.attributes(LINK, "aria-label").await, ["Link: Draw street"]);
        page.press(LINK).await;
        page.wait_for("[data-answer-step]").await;
        page.wait_for("[data-menu='history'][open] summary:focus").await;
        assert!(page.texts(LINK).await.is_empty(), "it is linked");
        page.take_screenshot("remarks-history").await;
        page.press("[data-menu='history'] summary").await;
        page.press("[data-unlink]").await;
        page.wait_for("[data-remark='3']:not(:has([data-answer-step]))").await;
        page.choose_tool("select").await;
        page.click_at((
            (ACROSS[0].0 + ACROSS[1].0) / 2.0,
            f64::midpoint(ACROSS[0].1, ACROSS[1].1),
        ))
        .await;
        page.wait_for("[data-palette='selection']").await;
        page.press("[data-command='link-selected']").await;
        page.wait_for("[data-answer-step]").await;
        assert!(!page.text("[data-answer-step] span").await.is_empty());
    });
}

#[test]
fn a_remark_is_written_and_found_again_by_keyboard_alone() {
    scenario("remarks-keyboard", async |page| {
        page.begin_with(VILLAGE).await;
        page.go_to_by_keyboard("[data-command='remark']", false).await;
        page.keys(&[ENTER]).await;
        page.wait_for("[data-palette='places']").await;
        page.go_to_by_keyboard("#drawing", true).await;
        for key in [LEFT, RIGHT, RIGHT, ENTER] {
            page.keys(&[key]).await;
        }
        page.wait_for("[data-remark='3']").await;
        page.wait_for("[data-field='Remark'] textarea:focus").await;
        // Letters of tools and the keys of the drawing are what is written; Enter with Shift begins a line.
        for letter in ['S', 'h', 'a', 'd', 'e'] {
            page.keys(&[letter]).await;
        }
        page.keys(&[SHIFT, ENTER]).await;
        page.keys(&['v']).await;
        page.go_to_by_keyboard("[data-remark='3'] .remark-line", false).await;
        assert_eq!(page.text("[data-remark='3'] .remark-text").await, "Shade\nv");
        page.keys(&[ENTER]).await;
        page.wait_for("[data-palette='details']").await;
        page.go_to_by_keyboard("[data-remark='3'] [data-answer]", false).await;
        page.keys(&[ENTER]).await;
        page.wait_for("[data-answering]").await;
        page.wait_for("[data-remark='3'] [data-answer][aria-pressed='true']:focus")
            .await;
    });
}
