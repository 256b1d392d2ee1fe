//! Saving a plan, loading the page anew and opening it again: the same numbers, equal to the command line's.

use hobnail_end_to_end::command_line::hobnail;
use hobnail_end_to_end::scenario::scenario;
use serde_json::Value;

/// The texts of a figure as the command line shows it: one, or one for each row of a table that holds anything.
fn shown(figure: &Value) -> Vec<String> {
    let text = |cell: &Value| cell["shown"].as_str().expect("a figure is shown as text").to_owned();
    let holds = |row: &&Value| row["value"].as_f64().is_some_and(|value| value > 0.0);
    match figure["rows"].as_array() {
        Some(rows) => rows.iter().filter(holds).map(text).collect(),
        None => vec![text(figure)],
    }
}

#[test]
fn a_plan_that_is_saved_and_opened_has_the_numbers_of_the_command_line() {
    scenario("save-and-open", async |page| {
        page.begin_with("compact-village.geojson").await;
        page.choose_tool("street").await;
        page.click_at((-125.2, 90.0)).await;
        page.click_at((-90.2, 62.4)).await;
        page.keys(&['\u{e007}']).await;
        let figures = page.settled_figures().await;
        let saved = page.save().await;

        page.load_again("").await;
        page.open_file(&saved).await;
        assert_eq!(page.settled_figures().await, figures);

        let measured = hobnail(&["measure", saved.to_str().expect("the path is text"), "--json"]);
        let measured: Value = serde_json::from_str(&measured).expect("hobnail prints JSON");
        let held = measured["figures"].as_array().expect("hobnail prints figures");
        for (id, number, range) in figures {
            let figure = held.iter().find(|figure| figure["id"] == id.as_str());
            let texts = shown(figure.unwrap_or_else(|| panic!("hobnail has no figure {id}")));
            if figure.is_some_and(|figure| figure["rows"].is_array()) {
                assert_eq!(number, format!("{} kinds", texts.len()), "{id}");
            } else {
                let page_text = if range.is_empty() {
                    number
                } else {
                    format!("{number}, {range}")
                };
                assert_eq!([page_text], texts[..], "{id}");
            }
        }
    });
}

#[test]
fn without_a_worker_the_same_ranges_come() {
    scenario("no-worker", async |page| {
        page.begin_with("compact-village.geojson").await;
        assert_eq!(page.drawing("data-worker").await, "started");
        let figures = page.settled_figures().await;
        page.load_again("?worker=none").await;
        page.begin_with("compact-village.geojson").await;
        assert_eq!(page.drawing("data-worker").await, "none");
        assert_eq!(page.settled_figures().await, figures);
    });
}

#[test]
fn what_is_no_plan_is_refused_in_words_and_the_open_plan_stays() {
    scenario("refused", async |page| {
        page.begin_with("compact-village.geojson").await;
        let described = page.drawing("aria-label").await;
        let note = page.browser.downloads().join("note.geojson");
        std::fs::write(&note, "not a plan").expect("the folder can be written");
        page.open_file(&note).await;
        page.wait_for("[data-notice]").await;
        assert!(page.text("[data-notice]").await.starts_with("note.geojson"));
        assert_eq!(page.drawing("aria-label").await, described);
    });
}

/// A press fails where something else lies over what is pressed.
#[test]
fn the_samples_lie_over_the_panels_on_the_drawing() {
    scenario("samples", async |page| {
        for file in ["compact-village.geojson", "blank-site.geojson"] {
            page.press("details[data-menu='samples'] summary").await;
            page.press(&format!("[data-sample='{file}']")).await;
            page.wait_for("body:not(:has([data-welcome]))").await;
        }
    });
}
