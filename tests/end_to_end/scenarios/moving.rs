//! The view of a large plan: while it moves, what was painted is moved; at rest all is painted anew.

use hobnail_end_to_end::grid::write_grid;
use hobnail_end_to_end::page::Page;
use hobnail_end_to_end::scenario::scenario;

/// Intersections along a side of the grid: a little more than a thousand streets.
const SIDE: i32 = 24;

/// Begins to drag the view 420 pixels to the right, more than the margin that is painted beside the screen, with the
/// middle button.
const DRAG: &str = "const drawing = document.getElementById('drawing');
    const { left, top } = drawing.getBoundingClientRect();
    const tell = (type, x, button) => drawing.dispatchEvent(new PointerEvent(type, { clientX: left + x, clientY: top + 350,
        button, buttons: 4, pointerId: 1, pointerType: 'mouse', isPrimary: true, bubbles: true, cancelable: true }));
    tell('pointerdown', 500, 1);
    tell('pointermove', 920, -1);
    requestAnimationFrame(() => requestAnimationFrame(() => { arguments[0](); }))";

/// How many colors stand in three columns of pixels: one from beyond the margin, one from the margin, and one that lay in
/// sight before the drag.
async fn colors(page: &Page) -> [u64; 3] {
    let seen = page
        .run_script(
            "const drawing = document.getElementById('drawing');
            const context = drawing.getContext('2d');
            const colors = (x) => new Set(new Uint32Array(context.getImageData(x, 0, 1, 400).data.buffer)).size;
            arguments[0]([30, 200, 700].map(colors))",
        )
        .await;
    serde_json::from_value(seen).expect("three numbers")
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
        let before = colors(page).await;
        assert!(before.iter().all(|colors| *colors > 1), "streets before: {before:?}");
        page.run_script(DRAG).await;
        let [beyond, margin, seen] = colors(page).await;
        assert_eq!(beyond, 1, "what was not painted waits");
        assert!(margin > 1 && seen > 1, "the rest goes along: {margin} {seen}");
        page.run_script("setTimeout(arguments[0], 500)").await;
        let rested = colors(page).await;
        assert!(rested.iter().all(|colors| *colors > 1), "all of it at rest: {rested:?}");
        std::fs::remove_file(grid).expect("the file was written");
    });
}
