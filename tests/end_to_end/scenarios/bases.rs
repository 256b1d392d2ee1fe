//! Base data: files that others made, opened by the page, looked at, and taken into the plan.
//!
//! The network is that of `tests/fixtures/streets/dr_helsinki` in the formats of `tests/fixtures/readers/network`; what
//! the page takes is saved, and compared with the source point by point and by what the command line measures of both.

use std::fs;
use std::path::{Path, PathBuf};

use hobnail_end_to_end::access::{Audit, Sight};
use hobnail_end_to_end::browser::top_level;
use hobnail_end_to_end::command_line::hobnail;
use hobnail_end_to_end::page::Page;
use hobnail_end_to_end::scenario::scenario;
use serde_json::Value;

const READ: &str = "[data-base='read']";
const REFUSED: &str = "[data-base='refused']";
const TAKE: &str = "[data-command='base-take']";
const CLOSE: &str = "[data-command='base-close']";
const CLOSED: &str = "#base:not([open])";
const OPEN: &str = "open-file";
const ENTER: char = '\u{e007}';
const ESCAPE: char = '\u{e00c}';

fn fixture(name: &str) -> PathBuf {
    top_level().join("tests/fixtures").join(name)
}

fn source() -> PathBuf {
    fixture("streets/dr_helsinki/streets.geojson")
}

/// The lines of a file of GeoJSON, in degrees, without positions that repeat the one before.
fn lines(path: &Path) -> Vec<Vec<[f64; 2]>> {
    let text = fs::read_to_string(path).expect("the file can be read");
    let file: Value = serde_json::from_str(&text).expect("the file is JSON");
    let features = file["features"].as_array().expect("the file is a collection");
    let of_lines = features
        .iter()
        .filter(|feature| feature["geometry"]["type"] == "LineString");
    let line = |feature: &Value| {
        let points = feature["geometry"]["coordinates"]
            .as_array()
            .expect("a line has points");
        let degrees = |point: &Value, at: usize| point[at].as_f64().expect("a position is numbers");
        let mut line: Vec<[f64; 2]> = points
            .iter()
            .map(|point| [degrees(point, 0), degrees(point, 1)])
            .collect();
        line.dedup();
        line
    };
    of_lines.map(line).collect()
}

/// Numbers of the network of a file as the command line measures it: what does not depend on millimeters, and the length.
fn network(path: &Path) -> (Vec<Value>, f64) {
    let path = path.to_str().expect("the path is text");
    let about = ["--about", "24.9452,60.1708"];
    let measured = hobnail(&["network", path, about[0], about[1], "--json"]);
    let measured: Value = serde_json::from_str(&measured).expect("hobnail prints JSON");
    let numbers = [
        "input_segments",
        "nodes",
        "edges",
        "components",
        "dead_ends",
        "junctions_deg3plus",
        "faces",
    ];
    let whole = numbers.map(|name| measured["arrangement"][name].clone()).to_vec();
    let length_m = measured["arrangement"]["total_length"].as_f64();
    (whole, length_m.expect("hobnail measures a length"))
}

/// What was taken is the source: every street to so many millimeters, and the network that they make.
#[track_caller]
fn check_taken(saved: &Path, off_mm: f64) {
    // A degree of latitude is 111.4 km here, one of longitude half of that (latitude 60).
    let off_deg = [off_mm / 55_400_000.0, off_mm / 111_400_000.0];
    let is_near = |a: &[[f64; 2]], b: &[[f64; 2]]| {
        let is_same = |(a, b): (&[f64; 2], &[f64; 2])| (0..2).all(|at| (a[at] - b[at]).abs() <= off_deg[at]);
        a.len() == b.len() && a.iter().zip(b).all(is_same)
    };
    let mut taken = lines(saved);
    let wanted = lines(&source());
    assert_eq!(taken.len(), wanted.len());
    for line in &wanted {
        let same = taken.iter().position(|held| is_near(held, line));
        drop(taken.swap_remove(same.unwrap_or_else(|| panic!("this street was not taken: {line:?}"))));
    }
    let ((whole, length_m), (direct, direct_m)) = (network(saved), network(&source()));
    assert_eq!(whole, direct);
    assert!((length_m - direct_m).abs() < 0.1, "{length_m} m, not {direct_m} m");
}

/// Opens a file of base data and waits until it is read.
async fn read(page: &Page, path: &Path) {
    page.choose_files(OPEN, &[path]).await;
    page.wait_for(READ).await;
}

#[test]
fn a_network_comes_from_openstreetmap_and_shapefiles_as_it_is() {
    scenario("bases-network", async |page| {
        for (name, off_mm, credit) in [
            ("streets.osm.gz", 1.0, "© OpenStreetMap contributors, ODbL 1.0"),
            ("streets.osm.pbf", 1.0, "© OpenStreetMap contributors, ODbL 1.0"),
            ("streets.zip", 2.0, ""),
        ] {
            page.load_again("").await;
            read(page, &fixture("readers/network").join(name)).await;
            let words = page.text("[data-base-words]").await;
            assert!(words.contains(name) && words.contains("699"), "{words}");
            let preview = page.text("[data-base-preview]").await;
            assert!(preview.contains("699"), "{preview}");
            assert_eq!(page.texts("[data-base-about='credit']").await.concat(), credit);
            page.press(TAKE).await;
            page.wait_for(CLOSED).await;
            page.next_frame().await;
            let said = page.text("[data-said]").await;
            assert!(said.contains(name) && said.contains("699"), "{said}");
            let saved = page.save().await;
            check_taken(&saved, off_mm);
            let plan = fs::read_to_string(&saved).expect("the plan was saved");
            assert_eq!(plan.contains("OpenStreetMap contributors"), !credit.is_empty());
        }
    });
}

#[test]
fn a_drawing_is_read_again_in_the_coordinate_system_that_is_typed() {
    scenario("bases-drawing", async |page| {
        read(page, &fixture("readers/network/streets.dxf.gz")).await;
        // Nothing is known of a drawing's layers, so nothing is taken before somebody says what they are.
        assert_eq!(page.attributes(TAKE, "aria-disabled").await, ["true"]);
        page.press(TAKE).await;
        page.wait_for(READ).await;
        assert_eq!(
            page.attributes("[data-base-field]", "data-base-field").await,
            ["0", "3", "4", "5", "6"]
        );
        page.type_at("[data-base-again='0']", "EPSG:3067").await;
        page.press("[data-command='base-again']").await;
        page.wait_for("[data-base='read']:not(:has([data-base-field='3']))")
            .await;
        // 3 is the neighborhood street: what is left out comes before the street sections.
        page.choose("[data-base-all]", "3").await;
        page.wait_for(&format!("{TAKE}[aria-disabled='false']")).await;
        page.press(TAKE).await;
        page.wait_for(CLOSED).await;
        check_taken(&page.save().await, 2.0);
    });
}

/// Words of the marks of a kind in a saved plan, and how many there are.
fn marks_of(plan: &Path, kind: &str) -> (usize, Vec<String>) {
    let plan = fs::read_to_string(plan).expect("the plan was saved");
    let plan: Value = serde_json::from_str(&plan).expect("the plan is JSON");
    let features = plan["features"].as_array().expect("the plan is a collection");
    let of_kind = features.iter().filter(|feature| feature["properties"]["kind"] == kind);
    let words = of_kind
        .clone()
        .filter_map(|feature| feature["properties"]["text"].as_str());
    (of_kind.count(), words.map(str::to_owned).collect())
}

#[test]
fn zones_become_soft_areas_or_say_their_codes_and_counts_of_traffic_are_said() {
    scenario("bases-zones", async |page| {
        read(page, &fixture("readers/small/zones.geojson")).await;
        let kinds = page.attributes("[data-base-class]", "data-base-class").await;
        assert_eq!(kinds, ["ZONE_CODE=R-1", "ZONE_CODE=MU-2", "ZONE_CODE=P"]);
        let told = page.text("[data-base-faults]").await;
        assert!(told.contains("ZONE_CODE") && told.contains("local code"), "{told}");
        assert!(page.text("[data-base-preview]").await.contains("5 notes"));
        let offered = page.texts("[data-base-class='ZONE_CODE=R-1'] option").await;
        let soft = offered.iter().position(|words| words.starts_with("Soft area, roughly"));
        let soft = soft.expect("areas can be soft areas").to_string();
        page.choose("[data-base-class='ZONE_CODE=R-1']", &soft).await;
        page.next_frame().await;
        let preview = page.text("[data-base-preview]").await;
        assert!(
            preview.contains("rough soft areas") && preview.contains("3 notes"),
            "{preview}"
        );
        page.take_screenshot("bases-zones").await;
        page.press(TAKE).await;
        page.wait_for(CLOSED).await;

        read(page, &fixture("readers/small/counts.geojson")).await;
        let told = page.text("[data-base-faults]").await;
        assert!(told.contains("AADT_2022") && told.contains("traffic studies"), "{told}");
        page.press(TAKE).await;
        page.wait_for(CLOSED).await;
        page.next_frame().await;
        page.take_screenshot("bases-counts").await;
        let saved = page.save().await;
        let (notes, words) = marks_of(&saved, "note");
        assert_eq!(notes, 6);
        for wanted in ["MU-2", "P", "Mill Road: AADT 4300 (2022)", "Weir Lane: AADT 650 (2019)"] {
            assert!(words.iter().any(|held| held == wanted), "{wanted}: {words:?}");
        }
        // Of the first zone, which lies about another, several pieces; and the one beside it.
        assert!(marks_of(&saved, "soft_area").0 > 2);
        page.wait_for("#figures [data-figure='homes.count'] [data-range]:not(:empty)")
            .await;
        let homes = page.text("#figures [data-figure='homes.count'] [data-value]").await;
        assert_ne!(homes, "0 homes");
    });
}

#[test]
fn a_grid_of_no_system_is_placed_by_hand() {
    scenario("bases-grid", async |page| {
        let file = page.browser.downloads().join("site.asc");
        let header = "ncols 4\nnrows 4\nxllcorner 5000\nyllcorner 5000\ncellsize 20\n";
        let heights = "104 104 104 104 103 103 103 103 102 102 102 102 101 101 101 101";
        fs::write(&file, [header, heights].concat()).expect("the folder can be written");
        page.choose_files(OPEN, &[&file]).await;
        page.wait_for(REFUSED).await;
        assert!(page.text("[data-base-faults]").await.contains("local"));
        page.type_at("[data-base-again='0']", "local").await;
        page.press("[data-command='base-again']").await;
        page.wait_for(&format!("{READ}:has([data-base-field='6'])")).await;
        page.wait_for(&format!("{TAKE}[aria-disabled='false']")).await;
        page.take_screenshot("bases-grid").await;
        // A quarter turn about its corner, which is put 40 m south of the origin: it rises to the west, 1 m on 20 m.
        page.type_at("[data-base-field='4']", "0").await;
        page.type_at("[data-base-field='6']", "90").await;
        page.wait_for(&format!("{TAKE}[aria-disabled='false']")).await;
        page.press(TAKE).await;
        page.wait_for(CLOSED).await;
        fs::remove_file(file).expect("what was written can be removed");
        let plan = fs::read_to_string(page.save().await).expect("the plan was saved");
        let plan: Value = serde_json::from_str(&plan).expect("the plan is JSON");
        let taken = &plan["hobnail"]["topography"];
        assert_eq!(taken["columns"], 2, "{taken}");
        assert_eq!(
            taken["heights_mm"],
            serde_json::json!([102_500, 101_500, 102_500, 101_500, 102_500, 101_500])
        );
    });
}

#[test]
fn what_is_taken_is_one_step_and_comes_into_view() {
    scenario("bases-undo", async |page| {
        page.begin_with("blank-site.geojson").await;
        let described = page.drawing("aria-label").await;
        // A drop, as the browser tells the page of it.
        let dropped = "const done = arguments[0];
            const line = (east) => [[-0.001 + east, 0], [0.001 + east, 0.0005]];
            const center = SITE;
            const features = [0, 0.0003].map((east) => ({ type: 'Feature', properties: { highway: 'residential' },
                geometry: { type: 'LineString',
                    coordinates: line(east).map(([x, y]) => [center[0] + x, center[1] + y]) } }));
            const text = JSON.stringify({ type: 'FeatureCollection', features });
            const given = new DataTransfer();
            given.items.add(new File([text], 'around.geojson'));
            document.querySelector('.desk').dispatchEvent(new DragEvent('drop', { dataTransfer: given, bubbles: true }));
            done();";
        let site = top_level().join("sample-sketches/blank-site.geojson");
        let site: Value =
            serde_json::from_str(&fs::read_to_string(site).expect("the sample is there")).expect("the sample is JSON");
        let origin = site["hobnail"]["heading"]["origin"].to_string();
        page.run_script(&dropped.replace("SITE", &origin)).await;
        page.wait_for(READ).await;
        assert!(page.text("[data-base-preview]").await.contains('2'));
        page.choose("[data-base-extent]", "1").await;
        page.wait_for("#base:not(:has([data-base-field='0']))").await;
        page.press(TAKE).await;
        page.wait_for(CLOSED).await;
        page.wait_for("[data-notice].is-calm").await;
        let taken = page.drawing("aria-label").await;
        assert_ne!(taken, described);
        page.press("[data-command='undo']").await;
        page.wait_for(&format!("#drawing[aria-label={described:?}]")).await;
        page.press("[data-command='redo']").await;
        page.wait_for(&format!("#drawing[aria-label={taken:?}]")).await;
    });
}

#[test]
fn a_broken_file_is_refused_in_words_and_the_plan_stays() {
    scenario("bases-broken", async |page| {
        page.begin_with("compact-village.geojson").await;
        let described = page.drawing("aria-label").await;
        let folder = page.browser.downloads();
        for (name, bytes, words) in [
            ("broken.zip", &b"PK\x03\x04 this is no archive"[..], "damaged"),
            (
                "broken.osm",
                b"<?xml version='1.0'?>\n<osm><node id='1' lat='x'",
                "damaged",
            ),
            ("letter.doc", b"\xd0\xcf\x11\xe0 a letter", "none of the formats"),
            ("empty.pbf", b"", "empty"),
            ("table.csv", b"a,b\n1,2\n", "columns"),
        ] {
            let file = folder.join(name);
            fs::write(&file, bytes).expect("the folder can be written");
            page.choose_files(OPEN, &[&file]).await;
            page.wait_for(REFUSED).await;
            let told = page.text("[data-base-faults]").await;
            assert!(told.contains(words), "{name}: {told}");
            assert!(page.text("[data-base-words]").await.contains(name));
            page.press(CLOSE).await;
            page.wait_for(CLOSED).await;
            fs::remove_file(file).expect("what was written can be removed");
        }
        assert_eq!(page.drawing("aria-label").await, described);
        assert_eq!(
            page.attributes("[data-command='undo']", "aria-disabled").await,
            ["true"]
        );
    });
}

#[test]
fn reading_can_be_given_up_and_the_next_file_is_read() {
    scenario("bases-cancel", async |page| {
        page.begin_with("compact-village.geojson").await;
        let described = page.drawing("aria-label").await;
        let mut large = String::from("<?xml version='1.0'?>\n<osm version='0.6'>\n");
        for id in 1..600_000 {
            large.push_str(&format!("<node id='{id}' lat='60.1{id}' lon='24.9{id}'/>\n"));
        }
        large.push_str("</osm>\n");
        let file = page.browser.downloads().join("large.osm");
        fs::write(&file, large).expect("the folder can be written");
        page.choose_files(OPEN, &[&file]).await;
        page.wait_for("[data-base='reading']").await;
        page.press(CLOSE).await;
        page.wait_for(CLOSED).await;
        fs::remove_file(file).expect("what was written can be removed");
        assert_eq!(page.drawing("aria-label").await, described);

        page.choose_files(OPEN, &[fixture("readers/small/places.csv")]).await;
        page.wait_for("[data-base]:not([data-base='reading'])").await;
        assert!(page.text("[data-base-words]").await.contains("places.csv"));
    });
}

/// The one point of a `.shp` ("ESRI Shapefile Technical Description", 1998), in the meters of its coordinate system.
fn shapefile_of_a_point(x: f64, y: f64) -> Vec<u8> {
    let mut bytes = Vec::new();
    let (file_words, record_words, point) = (64_u32, 10_u32, 1_u32);
    bytes.extend(9994_u32.to_be_bytes());
    bytes.extend([0; 20]);
    bytes.extend(file_words.to_be_bytes());
    bytes.extend([1000_u32, point].iter().flat_map(|number| number.to_le_bytes()));
    bytes.extend(
        [x, y, x, y, 0.0, 0.0, 0.0, 0.0]
            .iter()
            .flat_map(|number| number.to_le_bytes()),
    );
    bytes.extend([1, record_words].iter().flat_map(|number| number.to_be_bytes()));
    bytes.extend(point.to_le_bytes());
    bytes.extend([x, y].iter().flat_map(|number| number.to_le_bytes()));
    bytes
}

#[test]
fn parts_of_a_shapefile_are_opened_together() {
    scenario("bases-parts", async |page| {
        let folder = page.browser.downloads();
        let (shapes, system) = (folder.join("stop.shp"), folder.join("STOP.prj"));
        fs::write(&shapes, shapefile_of_a_point(500_000.0, 4_500_000.0)).expect("the folder can be written");
        fs::copy(fixture("readers/small/utm.prj"), &system).expect("the folder can be written");
        page.choose_files(OPEN, &[&system, &shapes]).await;
        page.wait_for(READ).await;
        assert!(page.text("[data-base-words]").await.contains("stop.shp"));
        let told = page.text("[data-base-faults]").await;
        assert!(told.contains("stop.dbf"), "{told}");
        assert!(page.text("[data-base-about='system']").await.contains("+proj="));
        page.press(CLOSE).await;
        page.wait_for(CLOSED).await;
        for file in [shapes, system] {
            fs::remove_file(file).expect("what was written can be removed");
        }
    });
}

#[test]
fn the_panel_is_worked_by_keys_alone() {
    scenario("bases-keys", async |page| {
        let network = fixture("readers/network/plain.osm.pbf");
        read(page, &network).await;
        page.keys(&[ESCAPE]).await;
        page.wait_for(CLOSED).await;
        read(page, &network).await;
        page.go_to_by_keyboard("[data-base-field='0']", false).await;
        page.go_to_by_keyboard("[data-base-class]", false).await;
        page.go_to_by_keyboard(TAKE, false).await;
        page.keys(&[ENTER]).await;
        page.wait_for(CLOSED).await;
        page.wait_for("#drawing:focus").await;
        assert!(page.text("[data-said]").await.contains("plain.osm.pbf"));
    });
}

/// In Chromium only, as all that is held to these rules.
#[test]
fn everyone_can_use_the_panel() {
    scenario("bases-access", async |page| {
        page.see(Sight::Still).await;
        let mut rules = Audit::by_all_rules();
        let mut targets = Audit::of_targets();
        for sight in [Sight::Window(1366, 768), Sight::Window(390, 844)] {
            page.see(sight).await;
            for (name, stage) in [
                ("network/streets.osm.pbf", READ),
                ("network/streets.dxf.gz", READ),
                ("small/lots.zip", READ),
                ("heights/strips.asc", "[data-base]:not([data-base='reading'])"),
            ] {
                page.choose_files(OPEN, &[fixture("readers").join(name)]).await;
                page.wait_for(stage).await;
                let state = format!("{name} at {sight:?}");
                rules.look(page, &state).await;
                targets.look(page, &state).await;
                page.press(CLOSE).await;
                page.wait_for(CLOSED).await;
            }
        }
        rules.expect_nothing();
        targets.expect_nothing();
    });
}
