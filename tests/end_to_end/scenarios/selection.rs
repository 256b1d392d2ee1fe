//! What is selected, one thing or many: its street section and phase are chosen, and blocks are copied and moved with
//! their uses.

use hobnail_end_to_end::access::Sight;
use hobnail_end_to_end::page::Page;
use hobnail_end_to_end::scenario::scenario;

const VILLAGE: &str = "compact-village.geojson";
/// On Cress Street of the village.
const STREET: (f64, f64) = (-125.2, 90.0);
const SECTION: &str = "[data-field='Street section'] select";

async fn homes(page: &Page) -> String {
    page.next_frame().await;
    let figures = page.figures().await;
    let found = figures.into_iter().find(|(id, ..)| id == "homes.count");
    found.expect("homes are counted").1
}

/// What a list has chosen, in words.
async fn chosen(page: &Page, list: &str) -> String {
    let script = format!("arguments[0](document.querySelector(\"{list}\").selectedOptions[0].textContent)");
    page.run_script(&script).await.as_str().unwrap_or_default().to_owned()
}

/// Chooses an option of a list by its words.
async fn choose(page: &Page, list: &str, words: &str) {
    let script = format!(
        "arguments[0]([...document.querySelector(\"{list}\").options].find(one => one.textContent === '{words}').value)"
    );
    let value = page.run_script(&script).await;
    page.choose(list, value.as_str().expect("the list has it")).await;
}

#[test]
fn a_selected_street_gets_another_street_section() {
    scenario("street-section", async |page| {
        page.begin_with(VILLAGE).await;
        let before = homes(page).await;
        page.choose_tool("select").await;
        page.click_at(STREET).await;
        page.wait_for(SECTION).await;
        let title = page.text("[data-editor='street']").await;
        choose(page, SECTION, "Boulevard").await;
        page.next_frame().await;
        assert_eq!(chosen(page, SECTION).await, "Boulevard");
        assert_ne!(page.text("[data-editor='street']").await, title, "the card follows");
        assert_ne!(homes(page).await, before, "a wider street leaves less land");
        page.take_screenshot("street-section").await;
        page.press("[data-command='undo']").await;
        assert_eq!(homes(page).await, before, "one step");
        assert_ne!(chosen(page, SECTION).await, "Boulevard");
    });
}

#[test]
fn a_neighborhood_is_changed_and_copied_as_one() {
    scenario("copied-blocks", async |page| {
        page.see(Sight::Window(1366, 768)).await;
        page.begin_with("blank-site.geojson").await;
        for y in [0.0, -70.0, -140.0] {
            page.draw_street([(-110.0, y), (90.0, y)]).await;
        }
        for x in [-110.0, -10.0, 90.0] {
            page.draw_street([(x, 0.0), (x, -140.0)]).await;
        }
        let select_all = async || {
            page.choose_tool("select").await;
            // Clear of the card, and where nothing is selected.
            page.click_at((100.0, -230.0)).await;
            page.drag((-140.0, 30.0), (110.0, -165.0)).await;
        };
        select_all().await;
        page.wait_for(SECTION).await;
        choose(page, SECTION, "Narrow street").await;
        page.next_frame().await;
        page.click_at((40.0, 0.0)).await;
        page.wait_for("[data-editor='street']").await;
        assert_eq!(chosen(page, SECTION).await, "Narrow street");
        choose(page, SECTION, "Boulevard").await;
        select_all().await;
        page.next_frame().await;
        assert_eq!(chosen(page, SECTION).await, "Different");
        page.take_screenshot("selected-together").await;
        page.choose_tool("use").await;
        for place in [(-60.0, -35.0), (40.0, -35.0), (-60.0, -105.0), (40.0, -105.0)] {
            page.click_at(place).await;
        }
        let once: f64 = homes(page)
            .await
            .split(' ')
            .next()
            .and_then(|count| count.parse().ok())
            .expect("a number");
        assert!(once > 0.0);
        select_all().await;
        page.keys(&['d']).await;
        page.click_at((-110.0, -180.0)).await;
        assert_eq!(homes(page).await, format!("{} homes", 2.0 * once));
        page.take_screenshot("copied-blocks").await;
        page.press("[data-command='undo']").await;
        assert_eq!(homes(page).await, format!("{once} homes"), "one step");

        // Moved to where nothing of it was, its uses go along.
        select_all().await;
        page.keys(&['m']).await;
        page.click_at((-110.0, -180.0)).await;
        assert_eq!(homes(page).await, format!("{once} homes"), "uses go with their blocks");
        page.take_screenshot("moved-blocks").await;
        page.press("[data-command='undo']").await;
        assert_eq!(homes(page).await, format!("{once} homes"));
    });
}
