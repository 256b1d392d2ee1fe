//! The land bar, and the map of a counting rule: what they say is what the command line says.

use hobnail_end_to_end::command_line::rows;
use hobnail_end_to_end::scenario::scenario;

const VILLAGE: &str = "compact-village.geojson";

#[test]
fn the_parts_of_the_land_bar_are_the_whole_and_those_of_the_command_line() {
    scenario("land-bar", async |page| {
        page.begin_with(VILLAGE).await;
        page.settled_figures().await;
        let ids = page.attributes("[data-bar] [data-part]", "data-part").await;
        let shares = page.attributes("[data-bar] [data-part]", "data-share").await;
        let texts = page.texts("[data-bar] [data-part] [data-value]").await;
        let shares: Vec<f64> = shares
            .iter()
            .map(|share| share.parse().expect("a share is a number"))
            .collect();
        let whole: f64 = shares.iter().sum();
        assert!((whole - 1.0).abs() < 1e-9, "the parts sum to {whole}");
        let parts: Vec<_> = ids.into_iter().zip(shares).zip(texts).collect();
        let of_page: Vec<_> = parts.into_iter().map(|((id, share), text)| (id, share, text)).collect();
        assert_eq!(of_page, rows(VILLAGE, "land.bar_share"));

        let row = page.attributes("[data-figure='land.bar_share']", "class").await;
        assert!(row.is_empty(), "the bar stands for its row");
        page.press("[data-part='streets'] button").await;
        page.wait_for("#basis-of-land-bar .basis-step").await;
        page.take_screenshot("land-bar").await;
    });
}

#[test]
fn the_map_of_a_counting_rule_says_what_the_command_line_counts() {
    scenario("map-of-counted", async |page| {
        page.begin_with(VILLAGE).await;
        let figures = page.settled_figures().await;
        let counted = rows(VILLAGE, "streets.intersections");
        assert_eq!(counted.len(), 6, "every rule counts some");
        for (number, (rule, _, text)) in (1..).zip(counted) {
            page.choose("#map", &format!("counted-{number}")).await;
            page.wait_for(&format!("[data-map='counted-{number}'] [data-legend='counted']"))
                .await;
            assert_eq!(page.text("[data-legend='counted'] [data-value]").await, text, "{rule}");
        }
        page.take_screenshot("map-of-counted").await;
        assert_eq!(page.settled_figures().await, figures, "a map changes no figure");
    });
}

#[test]
fn a_row_brings_what_it_counted_into_view_by_keyboard() {
    scenario("show-row", async |page| {
        page.begin_with(VILLAGE).await;
        page.settled_figures().await;
        // From so near that the block is out of sight.
        for _ in 0..5 {
            page.keys(&['+']).await;
        }
        page.next_frame().await;
        let view = page.drawing("data-view").await;
        page.run_script(
            "document.querySelector(\"[data-figure='blocks.perimeter_longest'] .show\").focus(); arguments[0]()",
        )
        .await;
        page.keys(&['\u{e007}']).await;
        page.run_script("requestAnimationFrame(() => requestAnimationFrame(arguments[0]))")
            .await;
        assert_ne!(page.drawing("data-view").await, view, "the view moves there");
        assert_eq!(page.text("[data-said]").await, "1 place shown on the drawing.");
    });
}
