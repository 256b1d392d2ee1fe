//! Maps over the drawing, and measuring a part of the plan: what they say is what the column says.

use hobnail_end_to_end::command_line::rows;
use hobnail_end_to_end::page::Page;
use hobnail_end_to_end::scenario::scenario;

const VILLAGE: &str = "compact-village.geojson";

async fn number(page: &Page, id: &str) -> String {
    page.text(&format!("#figures [data-figure='{id}'] [data-value]")).await
}

#[test]
fn the_map_of_the_five_says_what_the_figure_says() {
    scenario("map-of-five", async |page| {
        page.begin_with(VILLAGE).await;
        let figures = page.settled_figures().await;
        page.choose("#map", "five").await;
        page.wait_for("[data-map='five'] [data-legend='5']").await;
        assert_eq!(
            page.texts("[data-legend] .map-words").await.len(),
            6,
            "none to all five"
        );
        page.settled_figures().await;
        let share = number(page, "walk.all_five_10min_homes_share").await;
        let legend = page.text("[data-legend='5'] [data-value]").await;
        assert_eq!(legend, format!("{share} of homes"));
        page.take_screenshot("map-of-five").await;

        page.choose("#map", "walk-school").await;
        page.wait_for("[data-map='walk-school'] [data-legend='near']").await;
        assert!(!page.text("[data-legend='near'] [data-value]").await.is_empty());
        page.choose("#map", "walk-center").await;
        page.wait_for("[data-map='walk-center']").await;
        assert_eq!(page.settled_figures().await, figures, "a map changes no figure");
    });
}

#[test]
fn the_map_of_walking_routes_says_what_the_command_line_measures() {
    scenario("map-of-routes", async |page| {
        page.begin_with(VILLAGE).await;
        let figures = page.settled_figures().await;
        page.choose("#map", "routes").await;
        page.wait_for("[data-map='routes'] [data-legend='busiest']").await;
        let most = rows(VILLAGE, "walk.busiest_segment_walks");
        let [(_, _, most)] = &most[..] else {
            panic!("one segment is the busiest: {most:?}")
        };
        let legend = page.text("[data-legend='busiest'] [data-value]").await;
        assert_eq!(legend, format!("{most} walks"));
        let classes = page.texts("[data-legend^='walks-'] .map-words").await;
        assert!(classes.len() >= 4, "{classes:?}");
        page.take_screenshot("map-of-routes").await;
        assert_eq!(page.settled_figures().await, figures, "a map changes no figure");
    });
}

#[test]
fn the_map_of_mix_counts_the_homes_of_the_figure_by_class() {
    scenario("map-of-mix", async |page| {
        page.begin_with(VILLAGE).await;
        let figures = page.settled_figures().await;
        page.choose("#map", "mix").await;
        page.wait_for("[data-map='mix'] [data-legend='5']").await;
        let held = page.texts("[data-map='mix'] [data-legend] [data-value]").await;
        let homes = held.iter().map(|words| words.split(' ').next().unwrap_or_default());
        let homes: Vec<i64> = homes.map(|count| count.parse().expect("homes")).collect();
        let all = number(page, "homes.count").await;
        let all: i64 = all.split(' ').next().unwrap_or_default().parse().expect("homes");
        // Each class is rounded by itself.
        assert!((homes.iter().sum::<i64>() - all).abs() <= 3, "{held:?} of {all}");
        assert!(homes.iter().filter(|homes| **homes > 0).count() > 1, "{held:?}");
        page.next_frame().await;
        page.take_screenshot("map-of-mix").await;
        assert_eq!(page.settled_figures().await, figures, "a map changes no figure");
    });
}

#[test]
fn the_map_of_the_least_direct_walks_says_what_the_command_line_measures() {
    scenario("map-of-indirect", async |page| {
        page.begin_with(VILLAGE).await;
        page.settled_figures().await;
        page.choose("#map", "indirect").await;
        page.wait_for("[data-map='indirect'] [data-legend='front-1']").await;
        let directness = rows(VILLAGE, "walk.worst_directness");
        let homes = rows(VILLAGE, "walk.worst_directness_homes");
        let expected: Vec<String> = directness
            .iter()
            .zip(&homes)
            .map(|((_, _, directness), (_, _, homes))| format!("{directness} times the straight line, {homes}"))
            .collect();
        assert_eq!(expected.len(), 10, "the village has that many");
        assert_eq!(page.texts("[data-legend^='front-'] [data-value]").await, expected);
        page.take_screenshot("map-of-indirect").await;
    });
}

#[test]
fn a_phase_is_measured_and_the_whole_comes_back() {
    scenario("phase", async |page| {
        page.begin_with(VILLAGE).await;
        let figures = page.settled_figures().await;
        let homes = number(page, "homes.count").await;
        page.choose("#measured", "today").await;
        page.wait_for("[data-part-measured]").await;
        assert_eq!(number(page, "homes.count").await, "0 homes");
        page.choose("#measured", "all").await;
        page.wait_for("[data-measured='all']").await;
        assert_eq!(number(page, "homes.count").await, homes);
        assert_eq!(page.settled_figures().await, figures);
    });
}

#[test]
fn maps_of_classes_add_up_to_the_column() {
    scenario("map-of-classes", async |page| {
        page.begin_with(VILLAGE).await;
        let figures = page.settled_figures().await;
        let homes = number(page, "homes.count").await;
        for map in ["density", "phases"] {
            page.choose("#map", map).await;
            page.wait_for(&format!("[data-map='{map}'] [data-legend^='class-']"))
                .await;
            let held = page.texts("[data-legend^='class-'] [data-value]").await;
            let added: u32 = held
                .iter()
                .map(|words| {
                    words
                        .split(' ')
                        .next()
                        .unwrap_or_default()
                        .parse::<u32>()
                        .expect("homes")
                })
                .sum();
            assert_eq!(format!("{added} homes"), homes, "{held:?}");
            page.next_frame().await;
            page.take_screenshot(&format!("map-of-{map}")).await;
        }
        for map in ["sections", "owners", "ground"] {
            page.choose("#map", map).await;
            page.wait_for(&format!("[data-map='{map}']")).await;
            page.next_frame().await;
            page.take_screenshot(&format!("map-of-{map}")).await;
        }
        assert_eq!(page.settled_figures().await, figures, "a map changes no figure");
    });
}
