//! The view of a large plan: while it moves, what was painted is moved; at rest all is painted anew.

use hobnail_end_to_end::grid::write_grid;
use hobnail_end_to_end::page::Page;
use hobnail_end_to_end::scenario::scenario;

/// Intersections along a side of the grid: a little more than a thousand streets.
const SIDE: i32 = 24;

/// Begins to drag the view 200 pixels to the right with the middle button.
const DRAG: &str = "const drawing = document.getElementById('drawing');
    const { left, top } = drawing.getBoundingClientRect();
    const tell = (type, x, button) => drawing.dispatchEvent(new PointerEvent(type, { clientX: left + x, clientY: top + 350,
        button, buttons: 4, pointerId: 1, pointerType: 'mouse', isPrimary: true, bubbles: true, cancelable: true }));
    tell('pointerdown', 500, 1);
    tell('pointermove', 700, -1);
    requestAnimationFrame(() => requestAnimationFrame(() => { arguments[0](); }))";

/// How many colors stand in a column of pixels that the drag uncovers, and in one that lay in sight before.
async fn colors(page: &Page) -> (u64, u64) {
    let seen = page
        .run_script(
            "const drawing = document.getElementById('drawing');
            const context = drawing.getContext('2d');
            const colors = (x) => new Set(new Uint32Array(context.getImageData(x, 0, 1, 400).data.buffer)).size;
            arguments[0]([colors(150), colors(600)])",
        )
        .await;
    serde_json::from_value(seen).expect("two numbers")
}

#[test]
fn a_large_plan_is_moved_as_it_was_painted_and_painted_anew_at_rest() {
    scenario("moving", async |page| {
        let grid = write_grid(&std::env::temp_dir(), SIDE);
        page.open_file(&grid).await;
        page.wait_for("[data-base='read']").await;
        page.type_at("[data-base-field='0']", "20000").await;
        page.press("[data-command='base-take']").await;
        page.wait_for("#base:not([open])").await;
        page.wait_for("[data-kept='yes']").await;
        // From near, so that the plan goes on beyond the window.
        for _ in 0..4 {
            page.keys(&['+']).await;
        }
        page.run_script("setTimeout(arguments[0], 500)").await;
        let (uncovered, seen) = colors(page).await;
        assert!(uncovered > 1 && seen > 1, "streets before: {uncovered} {seen}");
        page.run_script(DRAG).await;
        let (uncovered, seen) = colors(page).await;
        assert_eq!(uncovered, 1, "what is uncovered waits");
        assert!(seen > 1, "what was in sight goes along");
        page.run_script("setTimeout(arguments[0], 500)").await;
        let (uncovered, seen) = colors(page).await;
        assert!(uncovered > 1 && seen > 1, "all of it at rest: {uncovered} {seen}");
        std::fs::remove_file(grid).expect("the file was written");
    });
}
