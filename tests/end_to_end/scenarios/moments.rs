//! A moment to compare with, figures enlarged for a room, and the way back through the history.

use hobnail_end_to_end::scenario::scenario;

const VILLAGE: &str = "compact-village.geojson";
const HOMES: &str = "[data-figure='homes.count']";

/// Notes each step that the plan is at from now on: a replay may be over before a driver has looked.
const NOTE_STEPS: &str = "
    window.passed = [];
    const note = () => {
        const step = document.querySelector('.steps .step[aria-current] .choice-more')?.textContent;
        if (step && step !== passed.at(-1)) passed.push(step);
    };
    const all = { attributes: true, childList: true, subtree: true };
    new MutationObserver(note).observe(document.querySelector('.steps'), all);
    arguments[0]()";

/// The first two steps that were noted, once there are two.
const STEPS_NOTED: &str = "
    const [done] = arguments;
    const look = () => passed.length < 2 ? setTimeout(look, 50) : done(passed);
    look()";

#[test]
fn changes_are_shown_against_a_marked_moment_and_every_step_can_be_gone_to() {
    scenario("moments", async |page| {
        page.begin_with(VILLAGE).await;
        page.settled_figures().await;
        let opened = page.text(&format!("{HOMES} [data-value]")).await;

        page.press(&format!("{HOMES} .figure-line")).await;
        page.press(".enlarge").await;
        assert_eq!(page.text("[data-enlarged='homes.count'] .enlarged-value").await, opened);

        page.press("[data-menu='history'] summary").await;
        page.type_into("Moment", "Before the cut").await;
        page.press("[data-command='mark']").await;
        assert!(page.text("[data-marked]").await.contains("Before the cut"));
        page.press("[data-menu='history'] summary").await;

        page.draw_street([(-125.2, 90.0), (-90.2, 62.4)]).await;
        // What was at once, then what is clear beside its doubt.
        page.wait_for(&format!("{HOMES} [data-change].is-clear")).await;
        page.settled_figures().await;
        // Its share is shown as a percent less, and is less than that; the longest block is what it was.
        page.wait_for("[data-figure='homes.of_asked'] [data-change]:not(.is-clear)")
            .await;
        page.wait_for("[data-figure='blocks.perimeter_longest']:not(:has([data-change]))")
            .await;
        let change = page.text(&format!("{HOMES} [data-change]")).await;
        assert!(change.ends_with("less") || change.starts_with("no clear"), "{change}");
        page.take_screenshot("moments").await;

        page.press("[data-menu='history'] summary").await;
        let steps = page.texts(".steps .step").await;
        assert_eq!(steps.len(), 2, "as opened, and the street: {steps:?}");
        page.press(".steps li:last-child .step").await;
        page.wait_for(".steps li:last-child .step[aria-current]").await;
        assert_eq!(page.text(&format!("{HOMES} [data-value]")).await, opened);
        page.press(".steps li:first-child .step").await;
        page.wait_for(".steps li:first-child .step[aria-current]").await;
        assert_ne!(page.text(&format!("{HOMES} [data-value]")).await, opened);
        page.run_script(NOTE_STEPS).await;
        page.press("[data-command='replay']").await;
        assert_eq!(page.run_script(STEPS_NOTED).await, serde_json::json!(["0", "1"]));
        page.press("[data-command='forget-moment']").await;
        page.wait_for(&format!("{HOMES}:not(:has([data-change]))")).await;
    });
}
