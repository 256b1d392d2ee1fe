//! The editors beside the rail: what is typed there moves the figures, can be undone and comes back.

use hobnail_end_to_end::page::Page;
use hobnail_end_to_end::scenario::scenario;

const VILLAGE: &str = "compact-village.geojson";
/// A block of the village whose land is given to two building types, half to each.
const BLOCK: (f64, f64) = (13.0, -52.0);
const UNDO: &str = "[data-command='undo']";

async fn value_of(page: &Page, figure: &str) -> String {
    let figures = page.settled_figures().await;
    let found = figures.into_iter().find(|(id, ..)| id == figure);
    found.expect("a figure of the first level").1
}

/// The id of the editor's field with this label.
async fn field(page: &Page, label: &str) -> String {
    let script = format!(
        "arguments[0]([...document.querySelectorAll('.editor label')].find(one => one.textContent === '{label}').htmlFor)"
    );
    let id = page.run_script(&script).await;
    format!("#{}", id.as_str().expect("a label names its field"))
}

/// Types over what stands in a field, as a person who goes there by the tabulator does, and leaves it.
async fn type_over(page: &Page, css: &str, text: &str) {
    const TAB: char = '\u{e004}';
    page.run_script(&format!(
        "const field = document.querySelector('{css}'); field.focus(); field.select(); arguments[0]()"
    ))
    .await;
    let keys: Vec<char> = text.chars().chain([TAB]).collect();
    page.keys(&keys).await;
}

#[test]
fn homes_typed_into_a_building_type_are_counted_undone_and_kept() {
    scenario("edit-type", async |page| {
        page.begin_with(VILLAGE).await;
        assert_eq!(value_of(page, "homes.count").await, "698 homes");
        page.choose_tool("use").await;
        page.press("#do-0-2").await;
        page.wait_for("[data-editor='building-type']").await;
        let homes = field(page, "Homes on a lot").await;
        type_over(page, &homes, "2").await;
        // 92 lots of detached houses have one home more each.
        assert_eq!(value_of(page, "homes.count").await, "790 homes");
        page.press(UNDO).await;
        assert_eq!(value_of(page, "homes.count").await, "698 homes");
        type_over(page, &homes, "many").await;
        page.wait_for("[data-editor='building-type'] [aria-invalid='true']")
            .await;
        type_over(page, &homes, "3").await;
        assert_eq!(value_of(page, "homes.count").await, "882 homes");
        page.wait_for("[data-kept='yes']").await;
        page.load_again("").await;
        page.open_recent().await;
        assert_eq!(value_of(page, "homes.count").await, "882 homes");
    });
}

#[test]
fn a_wider_strip_widens_the_street_and_takes_land() {
    scenario("edit-section", async |page| {
        page.begin_with(VILLAGE).await;
        let before = value_of(page, "density.homes_per_buildable").await;
        page.choose_tool("street").await;
        page.press("#do-0-1").await;
        page.wait_for("[data-editor='section'] #strip-1-1").await;
        let right_of_way = "[data-editor='section'] .fact strong";
        let width = page.text(right_of_way).await;
        page.press("[aria-label='More: Width of strip 1 of 8']").await;
        assert_ne!(page.text(right_of_way).await, width);
        assert_ne!(value_of(page, "density.homes_per_buildable").await, before);
    });
}

#[test]
fn each_portion_of_a_block_has_a_row_with_room_for_its_name() {
    scenario("edit-land", async |page| {
        page.begin_with(VILLAGE).await;
        let homes = value_of(page, "homes.count").await;
        page.choose_tool("select").await;
        page.next_frame().await;
        page.click_at(BLOCK).await;
        page.wait_for("[data-editor='land'] #portion-1-0").await;
        let boxes = page
            .run_script(
                "arguments[0]([...document.querySelectorAll('[data-editor=land] .is-cell select')].map(one => {
                    const { x, y, width } = one.getBoundingClientRect();
                    return [x, y, width];
                }))",
            )
            .await;
        let boxes: Vec<[f64; 3]> = serde_json::from_value(boxes).expect("places on screen");
        let [first, second] = boxes[..] else {
            panic!("two portions have {} rows", boxes.len());
        };
        assert!(
            (first[0] - second[0]).abs() < 1.0 && second[1] > first[1] + 20.0,
            "{boxes:?}"
        );
        assert!(boxes.iter().all(|one| one[2] >= 120.0), "{boxes:?}");
        page.take_screenshot("edit-land").await;

        // All of the block for the first type: of its lots each has one home, of the other's two.
        type_over(page, "#portion-0-1", "100").await;
        assert_ne!(value_of(page, "homes.count").await, homes);
        page.press(UNDO).await;
        assert_eq!(value_of(page, "homes.count").await, homes);
    });
}
