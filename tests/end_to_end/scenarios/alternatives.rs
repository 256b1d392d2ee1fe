//! Alternatives as small plans, and the streets that they share.

use hobnail_end_to_end::browser::top_level;
use hobnail_end_to_end::scenario::scenario;

const VILLAGE: &str = "compact-village.geojson";
const SMALL: &str = ".small-plan";
const SHOWN: &str = ".small-plan[aria-pressed='true'] .choice-name";

#[test]
fn a_copy_is_named_drawn_on_and_compared_with_what_it_was_made_of() {
    scenario("alternatives", async |page| {
        page.begin_with(VILLAGE).await;
        let before = page.settled_figures().await;
        page.press("[data-menu='alternatives'] summary").await;
        let first = page.text(SHOWN).await;
        page.press("[data-command='alternative-copy']").await;
        page.wait_for("[data-alternative='1'][aria-pressed='true']").await;
        page.type_into("Its name", ", greener").await;
        page.type_into("Drawn by table", "Table 4").await;
        page.wait_for("[data-alternative='1'] .choice-more").await;
        assert_eq!(page.text(SHOWN).await, [&first, " (copy), greener"].concat());
        assert!(
            page.text("[data-alternative='1'] .choice-more")
                .await
                .starts_with("Table 4, ")
        );
        page.take_screenshot("alternatives").await;
        page.press("[data-menu='alternatives'] summary").await;

        page.draw_street([(-125.2, 90.0), (-90.2, 62.4)]).await;
        let drawn = page.settled_figures().await;
        assert_ne!(drawn, before);
        page.choose("#map", "shared").await;
        page.wait_for("[data-legend='walks-1']").await;
        let values = page.texts(".map-legend [data-value]").await;
        let words = page.texts(".map-legend .map-words").await;
        assert_eq!(words, ["In 2 of 2", "In 1 of 2"]);
        // The street drawn last, as its own words say how long it is.
        let selected = page.text("#status").await;
        assert!(selected.contains(&values[1]), "{values:?} {selected}");
        page.take_screenshot("alternatives-shared").await;

        page.press("[data-menu='alternatives'] summary").await;
        page.press("[data-alternative='0']").await;
        // It keeps the keyboard.
        page.wait_for("[data-alternative='0'][aria-pressed='true']:focus").await;
        assert_eq!(page.text(SHOWN).await, first);
        assert_eq!(page.settled_figures().await, before);
        page.press("[data-alternative='1']").await;
        page.press("[data-command='alternative-delete']").await;
        page.wait_for(&format!("{SMALL}:only-child[data-alternative='0']"))
            .await;
    });
}

#[test]
fn files_of_several_tables_stand_side_by_side() {
    scenario("tables", async |page| {
        let samples = top_level().join("sample-sketches");
        let files = ["blank-site.geojson", VILLAGE].map(|name| samples.join(name));
        page.open_files(&files).await;
        page.wait_for("body:not(:has([data-welcome]))").await;
        page.press("[data-menu='alternatives'] summary").await;
        let tables = page.texts(".small-plan .choice-more").await;
        assert_eq!(tables.len(), 2, "{tables:?}");
        assert!(tables[0].starts_with("blank-site, "), "{tables:?}");
        assert!(tables[1].starts_with("compact-village, "), "{tables:?}");
        page.press("[data-alternative='1']").await;
        page.wait_for("[data-alternative='1'][aria-pressed='true']").await;
        page.press("[data-menu='alternatives'] summary").await;
        let homes = page
            .settled_figures()
            .await
            .into_iter()
            .find(|(id, ..)| id == "homes.count");
        assert!(homes.is_some_and(|(_, number, _)| number.starts_with("69")));
        page.take_screenshot("tables").await;
        assert_eq!(
            page.attributes("[data-notice]", "class").await.len(),
            0,
            "nothing differs"
        );
    });
}
