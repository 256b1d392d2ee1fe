//! Usable by everyone: every state that has a screen of its own is held to WCAG 2.2 AA as far as a program can tell.
//!
//! What no program can tell (whether words make sense, whether the order is sensible) is for a person; `keyboard.rs`
//! does the main job without a pointer, and `touch.rs` with fingers.

use hobnail_end_to_end::access::{Audit, Sight};
use hobnail_end_to_end::page::Page;
use hobnail_end_to_end::scenario::scenario;

const VILLAGE: &str = "compact-village.geojson";
const SITE: &str = "blank-site.geojson";
const TOOLS: [&str; 6] = ["select", "area", "street", "use", "place", "view"];
const DONE: &str = "#do-0-0";
const HOMES: &str = "[data-figure='homes.count']";

/// In the middle of a block of the village, and a street that would cross it.
const IN_A_BLOCK: (f64, f64) = (-110.0, 78.0);
const ACROSS: [(f64, f64); 2] = [(-125.2, 90.0), (-90.2, 62.4)];

/// What a screen of 1280 pixels has left at 400 %.
const AT_400_PERCENT: Sight = Sight::Window(320, 640);
const PHONE: Sight = Sight::Window(390, 844);

/// Presses what may be out of sight or below something else, as a screen reader does.
async fn activate(page: &Page, css: &str) {
    let script =
        format!("const found = document.querySelector({css:?}); found?.focus(); found?.click(); arguments[0](!!found)");
    assert_eq!(page.run_script(&script).await, true, "{css} is not on the page");
    page.next_frame().await;
}

/// Before anything is drawn.
async fn look_at_beginnings(page: &Page, audit: &mut Audit) {
    audit.look(page, "welcome").await;
    page.begin_with(SITE).await;
    activate(page, "[data-command='help']").await;
    for tool in TOOLS {
        page.choose_tool(tool).await;
        page.next_frame().await;
        audit.look(page, &format!("blank site, {tool} tool")).await;
    }
    activate(page, "[data-command='help-close']").await;
    page.draw_street([(-60.0, 0.0), (60.0, 0.0)]).await;
    page.wait_for("[data-cautions='false'] [data-note]").await;
    audit.look(page, "notes of what is left open").await;
}

/// The column of figures, and maps over the drawing.
async fn look_at_figures_and_maps(page: &Page, audit: &mut Audit) {
    page.load_again("").await;
    page.begin_with(VILLAGE).await;
    page.settled_figures().await;
    audit.look(page, "village").await;
    let opens = "document.querySelectorAll('.heading-line').forEach(line => line.click()); arguments[0]()";
    page.run_script(opens).await;
    activate(page, &format!("{HOMES} .figure-line")).await;
    activate(page, ".enlarge").await;
    // Steps of the basis below its first, down to lists of terms.
    for _ in 0..2 {
        activate(page, ".basis-opens[aria-expanded='false']").await;
    }
    page.settled_figures().await;
    audit.look(page, "all headings open, a basis, an enlarged figure").await;
    page.run_script(opens).await;
    for map in [
        "density",
        "phases",
        "sections",
        "five",
        "routes",
        "indirect",
        "mix",
        "counted-1",
        "walk-center",
    ] {
        page.choose("#map", map).await;
        page.wait_for(&format!("[data-map='{map}'] [data-legend]")).await;
        audit.look(page, &format!("map {map}")).await;
    }
    page.choose("#map", "plain").await;
}

/// Cards of the bar, and what is said when a file can not be opened.
async fn look_at_menus(page: &Page, audit: &mut Audit) {
    for menu in ["plan", "alternatives", "samples", "history"] {
        let summary = format!("[data-menu='{menu}'] summary");
        activate(page, &summary).await;
        audit.look(page, &format!("menu {menu}")).await;
        if menu == "history" {
            activate(page, "[data-command='mark']").await;
            page.wait_for("[data-marked]").await;
            audit.look(page, "a marked moment").await;
            activate(page, "[data-command='replay']").await;
            audit.look(page, "replay").await;
            page.wait_for(".steps li:first-child .step[aria-current]").await;
        }
        activate(page, &summary).await;
    }
    let file = page.browser.downloads().join("broken.geojson");
    std::fs::write(&file, "{").expect("the folder for temporary files can be written");
    page.open_file(&file).await;
    page.wait_for("[data-notice]").await;
    audit.look(page, "a notice").await;
    activate(page, "[data-notice] button").await;
    std::fs::remove_file(&file).expect("what was written can be removed");
}

/// Everything that is edited beside the rail, and the cut.
async fn look_at_editors(page: &Page, audit: &mut Audit) {
    page.draw_street(ACROSS).await;
    page.choose_tool("select").await;
    page.wait_for("[data-palette='selection']").await;
    audit.look(page, "a selected street").await;
    activate(page, "#do-0-6").await;
    page.wait_for(".cut-panel .section-drawn").await;
    audit.look(page, "the cut through a street").await;
    page.choose_tool("street").await;
    activate(page, "#do-0-1").await;
    page.wait_for("[data-editor] #section-0-3").await;
    audit.look(page, "street section editor").await;
    activate(page, DONE).await;
    page.choose_tool("use").await;
    activate(page, "#do-0-2").await;
    audit.look(page, "building type editor").await;
    activate(page, DONE).await;
    page.choose_tool("select").await;
    activate(page, "#do-0-3").await;
    page.wait_for("[id^='walking-']").await;
    audit.look(page, "walking settings").await;
    activate(page, "#do-0-3").await;
    activate(page, "[data-program-open]").await;
    page.wait_for("[data-program]").await;
    audit.look(page, "land program").await;
    activate(page, "[data-program-done]").await;
}

/// What is selected where a block is pressed: its use, or where the plan is drawn small the street beside it.
async fn look_at_land(page: &Page, audit: &mut Audit) {
    page.choose_tool("select").await;
    page.next_frame().await;
    page.click_at(IN_A_BLOCK).await;
    page.wait_for(".palettes .editor-lines > *").await;
    audit.look(page, "what is selected at a block").await;
}

/// The page set for a projector, for a board, and for looking alone.
async fn look_at_modes(page: &Page, audit: &mut Audit) {
    page.load_again("").await;
    page.begin_with(VILLAGE).await;
    page.settled_figures().await;
    activate(page, "[data-menu='page'] summary").await;
    for mode in ["projector", "board-left", "board-right", "desk"] {
        activate(page, &format!("[name='mode'][value='{mode}']")).await;
        page.wait_for(&format!("html[data-mode='{mode}']")).await;
        audit.look(page, &format!("page menu, {mode}")).await;
        activate(page, "[data-menu='page'] summary").await;
        page.choose_tool("street").await;
        page.next_frame().await;
        audit.look(page, &format!("{mode}, street tool")).await;
        activate(page, "[data-menu='page'] summary").await;
    }
    activate(page, "#look-only").await;
    page.wait_for("[data-looking-line]").await;
    audit.look(page, "page menu, looked at").await;
    activate(page, "[data-menu='page'] summary").await;
    activate(page, "[data-menu='alternatives'] summary").await;
    activate(page, &format!("{HOMES} .figure-line")).await;
    audit.look(page, "looked at, alternatives and a basis").await;
    page.load_again("").await;
    audit.look(page, "beginnings of a page for looking").await;
    activate(page, "[data-command='make-own']").await;
}

/// A remark of an invented table, and while it is answered.
async fn look_at_remarks(page: &Page, audit: &mut Audit) {
    activate(page, "[data-command='remark']").await;
    page.click_at(IN_A_BLOCK).await;
    page.wait_for("[data-remark='3']").await;
    page.type_into("Remark", "A way through this block").await;
    page.type_into("Table", "Table 2").await;
    audit.look(page, "a remark").await;
    activate(page, "[data-remark='3'] [data-answer]").await;
    page.draw_street(ACROSS).await;
    page.wait_for("[data-answer-step]").await;
    page.settled_figures().await;
    audit.look(page, "a remark that is being answered").await;
    activate(page, "[data-command='answered']").await;
}

async fn look_at_all(page: &Page, mut audit: Audit) {
    look_at_beginnings(page, &mut audit).await;
    look_at_figures_and_maps(page, &mut audit).await;
    look_at_land(page, &mut audit).await;
    look_at_editors(page, &mut audit).await;
    look_at_menus(page, &mut audit).await;
    look_at_remarks(page, &mut audit).await;
    look_at_modes(page, &mut audit).await;
    audit.expect_nothing();
}

#[test]
fn every_state_is_usable_by_everyone() {
    scenario("access", async |page| {
        page.see(Sight::Still).await;
        look_at_all(page, Audit::by_all_rules()).await;
    });
}

#[test]
fn every_state_is_usable_by_everyone_on_a_phone() {
    scenario("access-phone", async |page| {
        page.see(Sight::Still).await;
        page.see(PHONE).await;
        look_at_all(page, Audit::by_all_rules()).await;
    });
}

/// WCAG 2.2, success criteria 1.4.10 and 2.5.8.
#[test]
fn at_400_percent_nothing_scrolls_sideways_or_is_out_of_reach() {
    scenario("access-400-percent", async |page| {
        page.see(AT_400_PERCENT).await;
        look_at_all(page, Audit::of_targets()).await;
    });
}

/// WCAG 2.2, success criterion 1.4.4.
#[test]
fn with_text_twice_as_large_nothing_is_out_of_reach() {
    scenario("access-large-text", async |page| {
        page.see(Sight::Text(32)).await;
        page.load_again("").await;
        look_at_all(page, Audit::of_targets()).await;
    });
}

/// What tells the chosen tool and the pressed command from the others must not be color alone.
#[test]
fn in_forced_colors_what_is_chosen_can_be_told() {
    scenario("access-forced-colors", async |page| {
        page.see(Sight::ForcedColors).await;
        page.begin_with(VILLAGE).await;
        page.choose_tool("street").await;
        page.settled_figures().await;
        activate(page, "[data-menu='page'] summary").await;
        let script = "const look = element => {
                const { borderTopStyle, borderTopWidth, outlineStyle, backgroundColor } = getComputedStyle(element);
                return [borderTopStyle, borderTopWidth, outlineStyle, backgroundColor].join(' ');
            };
            const pair = [[\"[data-tool='street']\", \"[data-tool='area']\"], [\"[data-units='us']\", \"[data-units='metric']\"]];
            arguments[0](pair.map(([chosen, other]) => look(document.querySelector(chosen)) !== look(document.querySelector(other))))";
        assert_eq!(page.run_script(script).await, serde_json::json!([true, true]));
        page.take_screenshot("forced-colors").await;
    });
}
