//! Heights of the ground: a grid opened through the page, taken, drawn, measured by, and taken away again.
//!
//! The grids are made up here, in degrees about the place of the sample sketches: 480 by 400 cells of 0.00005°, so some
//! 4.3 by 5.6 m. A degree of longitude is 85,393.86 m at latitude 40, one of latitude 111,034.63 m (WGS84, derived).

use std::fs;
use std::path::PathBuf;

use hobnail_end_to_end::access::Sight;
use hobnail_end_to_end::browser::top_level;
use hobnail_end_to_end::page::Page;
use hobnail_end_to_end::scenario::scenario;
use serde_json::Value;

const VILLAGE: &str = "compact-village.geojson";
const READ: &str = "[data-base='read']";
const TAKE: &str = "[data-command='base-take']";
const CLOSED: &str = "#base:not([open])";
const OPEN: &str = "open-file";

/// A grid of heights by meters east and north of the place.
fn grid(page: &Page, name: &str, height: impl Fn(f64, f64) -> f64) -> PathBuf {
    let mut text = "ncols 480\nnrows 400\nxllcorner -40.012\nyllcorner 39.99\ncellsize 0.00005\n".to_owned();
    for row in 0..400 {
        for column in 0..480 {
            let east = (-0.012 + 0.000_05 * (f64::from(column) + 0.5)) * 85_393.86;
            let north = (0.01 - 0.000_05 * (f64::from(row) + 0.5)) * 111_034.63;
            text.push_str(&format!("{:.3} ", height(east, north)));
        }
        text.push('\n');
    }
    // Beside what the page saves, not among it.
    let file = page.browser.downloads().with_file_name(name);
    fs::write(&file, text).expect("the folder can be written");
    file
}

/// Opens a grid, waits for its heights and takes them.
async fn take(page: &Page, file: &PathBuf) {
    page.choose_files(OPEN, &[file]).await;
    page.wait_for(READ).await;
    page.wait_for(&format!("{TAKE}[aria-disabled='false']")).await;
    page.press(TAKE).await;
    page.wait_for(CLOSED).await;
    fs::remove_file(file).expect("what was written can be removed");
}

/// How many contours are drawn, and each how many feet.
async fn contours(page: &Page) -> (usize, i32) {
    page.wait_for("#drawing[data-contours]:not([data-contours=''])").await;
    let said = page.drawing("data-contours").await;
    let (count, interval) = said.split_once(' ').expect("a count and an interval");
    (
        count.parse().expect("a count"),
        interval.parse().expect("an interval of whole feet"),
    )
}

/// Heights of the plan as it is saved, in millimeters.
fn heights_of(plan: &PathBuf) -> Vec<i64> {
    let text = fs::read_to_string(plan).expect("the plan was saved");
    let plan: Value = serde_json::from_str(&text).expect("the plan is JSON");
    let heights = plan["hobnail"]["topography"]["heights_mm"].as_array();
    let heights = heights.map(|held| held.iter().filter_map(Value::as_i64).collect());
    heights.unwrap_or_default()
}

#[test]
fn heights_of_a_plane_are_taken_drawn_measured_by_and_given_back() {
    scenario("heights-plane", async |page| {
        page.see(Sight::Window(1366, 768)).await;
        page.begin_with(VILLAGE).await;
        let level = page.settled_figures().await;
        let file = grid(page, "plane.asc", |east, _| 100.0 + 0.06 * east);
        page.choose_files(OPEN, &[&file]).await;
        page.wait_for(READ).await;
        page.wait_for(&format!("{TAKE}[aria-disabled='false']")).await;
        assert!(page.text("[data-base-about='cells']").await.contains("192,000"));
        let preview = page.text("[data-base-preview]").await;
        assert!(preview.contains("heights of the ground"), "{preview}");
        page.take_screenshot("heights-dialog").await;
        page.press(TAKE).await;
        page.wait_for(CLOSED).await;
        assert!(page.text("[data-said]").await.contains("plane.asc"));
        let rising = page.settled_figures().await;
        assert_ne!(rising, level, "walking uphill takes longer");
        // The contours of a plane are as many as multiples of the interval lie above its lowest height.
        let (count, interval) = contours(page).await;
        let heights = heights_of(&page.save().await);
        let (least, most) = (heights.iter().min(), heights.iter().max());
        let steps = |height: Option<&i64>| *height.expect("heights") as f64 / (304.8 * f64::from(interval));
        let expected = steps(most).floor() - steps(least).floor();
        assert!(
            (count as f64 - expected).abs() <= 1.0,
            "{count} contours each {interval} ft, not {expected}"
        );

        page.choose("#map", "slope").await;
        page.wait_for("[data-map='slope'] [data-legend='class-1']").await;
        // All of the site rises 6 %: it is in the class of 5 to 8 %.
        let legend = page
            .texts("[data-map='slope'] [data-legend^='class-'] .map-words")
            .await;
        assert_eq!(legend, ["5 to under 8 %"]);
        page.press("[data-command='undo']").await;
        page.wait_for("#drawing[data-contours='']").await;
        page.wait_for("[data-map='slope']:not(:has([data-legend]))").await;
        assert_eq!(page.settled_figures().await, level);
        assert!(heights_of(&page.save().await).is_empty());
        fs::remove_file(file).expect("what was written can be removed");
    });
}

/// A creek along the south of a valley, and a hill in the northeast.
fn hills(east: f64, north: f64) -> f64 {
    let creek = north + 210.0 + 45.0 * (east / 170.0).sin();
    let hill = ((east - 260.0) / 240.0).powi(2) + ((north - 190.0) / 190.0).powi(2);
    152.0 + 11.0 * (1.0 - (-(creek / 230.0).powi(2)).exp()) + 0.012 * (east + north) + 34.0 * (-hill).exp()
        - 5.0 * (-((east + 300.0) / 130.0).powi(2) - ((north - 150.0) / 90.0).powi(2)).exp()
}

#[test]
fn slopes_are_a_map_and_streets_show_how_they_rise() {
    scenario("heights-hills", async |page| {
        page.see(Sight::Window(1366, 768)).await;
        page.begin_with(VILLAGE).await;
        let file = grid(page, "valley.asc", hills);
        take(page, &file).await;
        page.settled_figures().await;
        contours(page).await;
        page.press("[data-notice] button").await;
        page.next_frame().await;
        page.take_screenshot("heights-contours").await;
        page.choose("#map", "slope").await;
        page.wait_for("[data-map='slope'] [data-legend='class-3']").await;
        page.wait_for("[data-map='slope'] [data-legend='steep-1']").await;
        page.next_frame().await;
        page.take_screenshot("heights-slope").await;
        let steep = page.text("[data-legend='steep-1'] [data-value]").await;
        assert!(steep.ends_with("ft") && steep != "0 ft", "{steep}");
        // The first class ends where the local code says, until that is taken back.
        let first = "[data-map='slope'] [data-legend='class-0'] .map-words";
        assert_eq!(page.text(first).await, "Under 5 %");
        page.press(".measured > .command").await;
        page.wait_for("[data-editor='walking']").await;
        page.press(".number:has(#walking-0-111) button:last-of-type").await;
        page.next_frame().await;
        assert_eq!(page.text(first).await, "Under 5.5 %");
        page.take_screenshot("heights-borders").await;
        page.press("[data-command='undo']").await;
        page.next_frame().await;
        assert_eq!(page.text(first).await, "Under 5 %");
        page.press(".measured > .command").await;

        page.choose("#map", "plain").await;
        page.wait_for("[data-map='plain']").await;
        page.choose_tool("select").await;
        page.click_at((20.0, 0.0)).await;
        page.wait_for("[data-editor='street']").await;
        page.wait_for(".editor > .section-drawn .planted").await;
        let said = page.text("[data-editor='street']").await;
        assert!(
            said.contains("Steepest piece") && said.contains("licensed engineer"),
            "{said}"
        );
        page.take_screenshot("heights-street").await;
        // It is steeper than 10 %; a town that allows more has it as it is.
        page.wait_for(".editor > .section-drawn .steep").await;
        for _ in 0..6 {
            page.press(".number:has(#grade-0-0) button:last-of-type").await;
        }
        page.wait_for(".editor:not(:has(.section-drawn .steep)) .section-drawn .planted")
            .await;
        assert!(page.text("[data-editor='street']").await.contains("Over 13 %"));
        page.press("[data-command='undo']").await;
        page.wait_for(".editor > .section-drawn .steep").await;
    });
}

#[test]
fn heights_can_be_taken_away_again() {
    scenario("heights-away", async |page| {
        page.begin_with("blank-site.geojson").await;
        let file = grid(page, "plane.asc", |_, north| 20.0 + 0.03 * north);
        take(page, &file).await;
        contours(page).await;
        page.press("[data-menu='plan'] summary").await;
        page.wait_for("[data-heights]").await;
        assert!(page.text("[data-heights]").await.contains("plane.asc"));
        page.take_screenshot("heights-menu").await;
        page.press("[data-command='heights-remove']").await;
        page.wait_for("#drawing[data-contours='']").await;
        page.press("[data-command='undo']").await;
        contours(page).await;
    });
}

/// The plan as it is saved: where its place is, and its heights with where the first stands, how far apart, how many in
/// a row.
async fn saved(page: &Page) -> ([f64; 2], [f64; 4], Vec<i64>) {
    let file = page.save().await;
    let text = fs::read_to_string(&file).expect("the plan was saved");
    let plan: Value = serde_json::from_str(&text).expect("the plan is JSON");
    let number = |value: &Value| value.as_f64().expect("a number");
    let origin = &plan["hobnail"]["heading"]["origin"];
    let held = &plan["hobnail"]["topography"];
    let from = &held["south_west_mm"];
    let grid = [&from[0], &from[1], &held["spacing_mm"], &held["columns"]].map(number);
    ([number(&origin[0]), number(&origin[1])], grid, heights_of(&file))
}

/// A GeoTIFF that GDAL wrote (`tests/fixtures/readers/heights`): tiles, compressed, in the coordinates of a state.
#[test]
fn a_geotiff_is_taken_where_its_coordinates_say() {
    scenario("heights-geotiff", async |page| {
        let file = top_level().join("tests/fixtures/readers/heights/tiles_deflate.tif");
        page.choose_files(OPEN, &[&file]).await;
        page.wait_for(READ).await;
        page.wait_for(&format!("{TAKE}[aria-disabled='false']")).await;
        assert!(page.text("[data-base-about='cells']").await.contains("1,200"));
        page.press(TAKE).await;
        page.wait_for(CLOSED).await;
        contours(page).await;
        let (origin, _, heights) = saved(page).await;
        // 230,200 east and 899,850 north of EPSG:26986, by pyproj 3.7.2.
        assert!(
            (origin[0] + 71.133_469).abs() < 0.01 && (origin[1] - 42.348_562).abs() < 0.01,
            "{origin:?}"
        );
        // The hill of `make.py`: 102.4 m at its top, 34.4 m in its lowest corner, between samples a little less.
        let (least, most) = (heights.iter().min(), heights.iter().max());
        assert!(most.is_some_and(|most| (101_500..=102_400).contains(most)), "{most:?}");
        assert!(
            least.is_some_and(|least| (34_300..=36_000).contains(least)),
            "{least:?}"
        );
        page.take_screenshot("heights-geotiff").await;
    });
}

/// A square degree as the radar mission's files have it, made up here: a meter higher with each sample to the east, and
/// two with each to the north.
#[test]
fn a_square_degree_of_heights_is_taken_for_the_area_of_the_plan() {
    scenario("heights-hgt", async |page| {
        const SIDE: i32 = 1_201;
        let mut bytes = Vec::new();
        for row in 0..SIDE {
            for column in 0..SIDE {
                let height = (column + 2 * (SIDE - 1 - row)) as i16;
                bytes.extend(height.to_be_bytes());
            }
        }
        let file = page.browser.downloads().with_file_name("N39W041.hgt");
        fs::write(&file, bytes).expect("the folder can be written");
        page.choose_files(OPEN, &[&file]).await;
        page.wait_for(READ).await;
        page.wait_for(&format!("{TAKE}[aria-disabled='false']")).await;
        assert!(page.text("[data-base-about='cells']").await.contains("1,442,401"));
        page.press(TAKE).await;
        page.wait_for(CLOSED).await;
        contours(page).await;
        let (origin, [west_mm, south_mm, spacing_mm, columns], heights) = saved(page).await;
        assert!(heights.len() > 300, "{} heights", heights.len());
        for (place, height_mm) in heights.iter().enumerate() {
            let (column, row) = ((place % columns as usize) as f64, (place / columns as usize) as f64);
            let [east, north] = [west_mm + column * spacing_mm, south_mm + row * spacing_mm].map(|mm| mm / 1_000.0);
            // Lengths of a degree at latitude 39.5 (WGS84, derived), good to some centimeters a kilometer.
            let samples = [
                (origin[0] + 41.0 + east / 86_013.0) * 1_200.0,
                (origin[1] - 39.0 + north / 111_025.0) * 1_200.0,
            ];
            let expected = samples[0] + 2.0 * samples[1];
            assert!(
                (*height_mm as f64 / 1_000.0 - expected).abs() < 0.2,
                "{east} {north}: {height_mm}, not {expected}"
            );
        }
        fs::remove_file(file).expect("what was written can be removed");
    });
}
