//! The page's own work while a hand drags a corner: from the pointer's event to the painted number, in Chromium.
//!
//! Prints `page/PART/PLAN nanoseconds`, the median and the 95th percentile of each part: `work`, from the event until
//! the numbers stand in the panels; `frame`, painting the drawing; `both`, which a frame of the screen must hold.
#![allow(
    clippy::expect_used,
    clippy::print_stdout,
    reason = "a bench fails by panicking and prints what it measured"
)]

use hobnail_end_to_end::grid::write_grid;
use hobnail_end_to_end::page::Page;
use hobnail_end_to_end::scenario::scenario;

/// A street with a corner, in meters east and north of the plan's origin: into a block of either plan, and clear of the
/// cards over the drawing.
const BEND: [(f64, f64); 3] = [(40.0, 0.0), (60.0, 20.0), (70.0, 48.0)];

/// Movements of one drag.
const MOVES: usize = 80;

/// Intersections along a side of the grid.
const SIDE: i32 = 71;

/// Its streets.
const STREETS: i32 = 2 * SIDE * (SIDE - 1);

fn main() {
    // `cargo test` only sees that it compiles.
    if !std::env::args().any(|argument| argument == "--bench") {
        return;
    }
    scenario("bench-drag-village", async |page| {
        page.begin_with("compact-village.geojson").await;
        measure(page, "village").await;
    });
    let grid = write_grid(&std::env::temp_dir(), SIDE);
    scenario("bench-drag-grid", async |page| {
        page.open_file(&grid).await;
        page.wait_for("[data-base='read']").await;
        // Feet around the origin: past the corners of the grid.
        page.type_at("[data-base-field='0']", "20000").await;
        let taken = page.text("[data-base-preview]").await;
        assert!(taken.contains(&format!("{STREETS}")), "{taken}");
        page.press("[data-command='base-take']").await;
        page.wait_for("#base:not([open])").await;
        measure(page, "grid10000").await;
    });
}

async fn measure(page: &Page, plan: &str) {
    zoom_in(page).await;
    page.choose_tool("street").await;
    for place in BEND {
        page.click_at(place).await;
    }
    page.keys(&['\u{e007}']).await;
    page.choose_tool("select").await;
    page.click_at(BEND[1]).await;
    page.wait_for("[data-kept='yes']").await;
    page.run_script(
        "const drawing = document.getElementById('drawing');
        window.seen = [];
        new MutationObserver((changes) => {
            for (const { attributeName } of changes) {
                if (attributeName === 'data-work-ms') seen.push([+drawing.dataset.workMs, 0]);
                if (attributeName === 'data-frame-ms' && seen.length) seen.at(-1)[1] += +drawing.dataset.frameMs;
            }
        }).observe(drawing, { attributes: true });
        arguments[0]()",
    )
    .await;
    let steps: Vec<(f64, f64)> = (0..MOVES)
        .map(|step| (BEND[1].0 + (step % 9) as f64, BEND[1].1 - (step % 7) as f64))
        .collect();
    page.drag_along(BEND[1], &steps).await;
    let seen = page.run_script("arguments[0](window.seen)").await;
    let seen: Vec<(f64, f64)> = serde_json::from_value(seen).expect("pairs of numbers");
    assert!(seen.len() > MOVES / 2, "the drag moved nothing: {} steps", seen.len());
    let parts = [
        ("work", seen.iter().map(|pair| pair.0).collect::<Vec<_>>()),
        ("frame", seen.iter().map(|pair| pair.1).collect()),
        ("both", seen.iter().map(|pair| pair.0 + pair.1).collect()),
    ];
    for (part, mut times) in parts {
        times.sort_by(f64::total_cmp);
        let at = |share: f64| times[((times.len() - 1) as f64 * share) as usize] * 1e6;
        println!("page/{part}-median/{plan} {:.0}", at(0.5));
        println!("page/{part}-95th/{plan} {:.0}", at(0.95));
    }
}

/// Zooms in at the middle of the drawing until a block is a hand wide.
async fn zoom_in(page: &Page) {
    page.run_script(
        "const drawing = document.getElementById('drawing');
        const { left, top } = drawing.getBoundingClientRect();
        const place = () => {
            const [perMeter, x, y] = drawing.dataset.view.split(' ').map(Number);
            return [perMeter, left + x + 50 * perMeter, top + y - 50 * perMeter];
        };
        const step = () => {
            const [perMeter, clientX, clientY] = place();
            if (perMeter > 2) return arguments[0]();
            drawing.dispatchEvent(new WheelEvent('wheel', { clientX, clientY, deltaY: -240, bubbles: true, cancelable: true }));
            requestAnimationFrame(() => requestAnimationFrame(step));
        };
        step()",
    )
    .await;
}
