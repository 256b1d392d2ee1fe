//! Handing a plan on: in an address, as a code, with the page in one file; and a picture under the drawing.

use std::fs;

use hobnail_end_to_end::access::Sight;
use hobnail_end_to_end::page::Page;
use hobnail_end_to_end::scenario::{scenario, scenario_of_one_file};
use serde_json::{Value, json};

const VILLAGE: &str = "compact-village.geojson";
const MENU: &str = "[data-menu='share'] summary";
const LOOKING: &str = "html[data-looking='yes']";

/// Across a block of the village.
const ACROSS: [(f64, f64); 2] = [(-125.2, 90.0), (-90.2, 62.4)];

/// A picture of two pixels by one, red and blue, written out from the PNG specification (W3C, third edition).
const TWO_PIXELS: &str = "data:image/png;base64,iVBORw0KGgoAAAANSUhEUgAAAAIAAAABCAIAAAB7QOjdAAAADUlEQVR4nGM4oQEEJwAHrwIxhE/biwAAAABJRU5ErkJggg==";

/// The plan's address, from the open menu.
async fn address(page: &Page) -> String {
    page.wait_for("[data-address]").await;
    let value = page
        .run_script("arguments[0](document.querySelector('[data-address]').value)")
        .await;
    value.as_str().expect("an address is text").to_owned()
}

/// What stands behind the `#` of an address.
fn fragment(address: &str) -> &str {
    address.split_once('#').expect("a plan stands behind the sign").1
}

#[test]
fn a_plan_is_opened_from_its_address_to_be_looked_at_and_made_ones_own() {
    scenario("address", async |page| {
        page.begin_with(VILLAGE).await;
        page.draw_street(ACROSS).await;
        let figures = page.settled_figures().await;
        page.press(MENU).await;
        let address = address(page).await;
        page.take_screenshot("share").await;
        assert!(page.text("[data-left-out]").await.contains("undo"));
        page.press(MENU).await;

        page.load_again(&format!("?from=address#{}", fragment(&address))).await;
        page.wait_for(LOOKING).await;
        assert_eq!(page.settled_figures().await, figures);
        page.take_screenshot("address-opened").await;
        page.press("[data-command='make-own']").await;
        page.wait_for("html[data-looking='no']").await;
        let here = page.run_script("arguments[0](location.hash)").await;
        assert_eq!(here, json!(""), "one's own plan is not opened anew from the address");
        page.keys(&['s']).await;
        page.draw_street([(-40.0, 90.0), (-40.0, 40.0)]).await;
        page.wait_for("[data-kept='yes']").await;
        assert_ne!(page.settled_figures().await, figures);
    });
}

#[test]
fn an_address_that_is_damaged_says_so_and_changes_nothing() {
    scenario("address-damaged", async |page| {
        page.begin_with(VILLAGE).await;
        let figures = page.settled_figures().await;
        let described = page.drawing("aria-label").await;
        page.press(MENU).await;
        let whole = address(page).await;
        page.press(MENU).await;
        let cut = &whole[..whole.len() - 7];
        for damaged in [fragment(cut), "plan=", "plan=9abc", "plan=%3Cscript%3E"] {
            page.load_again(&format!("#{damaged}")).await;
            page.wait_for("[data-notice]").await;
            assert_eq!(page.drawing("aria-label").await, described, "{damaged}");
            page.press("[data-notice] button").await;
        }
        assert_eq!(page.settled_figures().await, figures);
    });
}

#[test]
fn a_short_address_is_a_code_that_fills_the_window() {
    scenario("address-code", async |page| {
        page.press("[data-begin='streets']").await;
        page.draw_street([(-60.0, 0.0), (60.0, 0.0)]).await;
        page.press(MENU).await;
        let address = address(page).await;
        assert!(address.len() < 400, "{} characters", address.len());
        page.see(Sight::Window(1366, 768)).await;
        page.press("[data-command='show-code']").await;
        page.wait_for("[data-code-large][open]").await;
        page.take_screenshot("code").await;
        let side = page
            .run_script(
                "arguments[0](document.querySelector('[data-code-large] .code').getBoundingClientRect().height)",
            )
            .await;
        assert!(side.as_f64().expect("a size") > 500.0, "{side}");
        page.press("[data-command='close-code']").await;
        page.wait_for("[data-code-large]:not([open])").await;
    });
}

#[test]
fn the_page_in_one_file_is_saved_with_the_plan_inside() {
    scenario_of_one_file("one-file-with-plan", async |page| {
        page.begin_with(VILLAGE).await;
        page.draw_street(ACROSS).await;
        let figures = page.settled_figures().await;
        page.press(MENU).await;
        page.wait_for("[data-command='save-page']").await;
        let text = page.text("[data-menu='share']").await;
        assert!(text.contains("disk"), "it says why there is no address: {text}");
        let saved = page.arrives_after(page.press("[data-command='save-page']")).await;
        page.load_file(&saved).await;
        page.wait_for(LOOKING).await;
        assert_eq!(page.settled_figures().await, figures);
        page.press("[data-command='make-own']").await;
        page.wait_for("html[data-looking='no']").await;
    });
}

/// How far east of the plan's origin red meets blue on the drawing, in meters, to a pixel.
async fn border_m(page: &Page) -> f64 {
    page.next_frame().await;
    let (zero, y) = page.on_screen((0.0, 5.0)).await;
    let (hundred, _) = page.on_screen((100.0, 5.0)).await;
    let script = format!(
        "const canvas = document.getElementById('drawing');
        const box = canvas.getBoundingClientRect();
        const ratio = canvas.width / box.width;
        const row = canvas.getContext('2d').getImageData(0, ({y} - box.top) * ratio, canvas.width, 1).data;
        const isBlue = (_, at) => row[4 * at + 2] - row[4 * at] > 60;
        arguments[0](Array.from({{ length: canvas.width }}).findIndex(isBlue) / ratio + box.left)"
    );
    let found = page.run_script(&script).await;
    (found.as_f64().expect("a place on the screen") - zero) / (hundred - zero) * 100.0
}

#[test]
fn a_picture_is_laid_under_the_drawing_by_two_points() {
    scenario("picture", async |page| {
        let folder = std::env::temp_dir().join(format!("hobnail-picture-{}", std::process::id()));
        fs::create_dir_all(&folder).expect("the folder for temporary files can be written");
        // The browser makes the picture larger, so that it can be seen.
        let made = page
            .run_script(&format!(
                "const image = new Image();
                image.onload = () => {{
                    const canvas = document.createElement('canvas');
                    [canvas.width, canvas.height] = [200, 100];
                    const context = canvas.getContext('2d');
                    context.imageSmoothingEnabled = false;
                    context.drawImage(image, 0, 0, 200, 100);
                    arguments[0](canvas.toDataURL('image/png').split(',')[1]);
                }};
                image.src = '{TWO_PIXELS}'"
            ))
            .await;
        let bytes = base64(made.as_str().expect("a picture in base64"));
        let path = folder.join("mill-survey.png");
        fs::write(&path, bytes).expect("the picture can be written");

        page.press("[data-begin='streets']").await;
        page.choose_files("open-picture", &[&path]).await;
        page.press("[data-menu='plan'] summary").await;
        page.wait_for("[data-picture-name]").await;
        assert_eq!(page.text("[data-picture-name]").await, "mill-survey.png");
        page.take_screenshot("picture-menu").await;
        let before_m = border_m(page).await;
        page.press("[data-command='picture-points']").await;
        page.press("[data-menu='plan'] summary").await;
        page.wait_for("[data-laying]").await;
        // The first pair shifts the picture by 40 m, so the second place is one that lay at 60 m before; it stays there.
        for place in [(-20.0, 0.0), (-60.0, 0.0), (20.0, 0.0), (60.0, 0.0)] {
            page.click_at(place).await;
        }
        page.take_screenshot("picture-laying").await;
        page.press("[data-command='picture-done']").await;
        page.wait_for("body:not(:has([data-laying]))").await;
        let after_m = border_m(page).await;
        assert!(before_m.abs() > 6.0, "{before_m}");
        let expected_m = -60.0 + (before_m + 20.0) * 120.0 / 80.0;
        assert!(
            (after_m - expected_m).abs() < 5.0,
            "{before_m} m, then {after_m} m, not {expected_m} m"
        );
        page.wait_for("[data-kept='yes']").await;
        let saved = page.save().await;
        assert!(
            fs::read_to_string(saved)
                .expect("a plan file")
                .contains("mill-survey.png")
        );
        // A folder for temporary files may be left.
        let _ = fs::remove_dir_all(&folder);
    });
}

/// Corners of the picture in the plan as it is saved, in meters.
async fn corners_m(page: &Page) -> Vec<f64> {
    page.wait_for("[data-kept='yes']").await;
    let saved = fs::read_to_string(page.save().await).expect("the plan was saved");
    let saved: Value = serde_json::from_str(&saved).expect("the plan is JSON");
    let corners = saved["hobnail"]["base_image"]["corners_mm"]
        .as_array()
        .expect("there are corners");
    let numbers = corners.iter().flat_map(|corner| [&corner[0], &corner[1]]);
    numbers.map(|mm| mm.as_f64().expect("a number") / 1000.0).collect()
}

#[test]
fn a_picture_is_laid_where_its_world_file_says() {
    scenario("world-file", async |page| {
        page.begin_with("blank-site.geojson").await;
        let folder = std::env::temp_dir().join(format!("hobnail-world-file-{}", std::process::id()));
        fs::create_dir_all(&folder).expect("the folder for temporary files can be written");
        let write = |name: &str, bytes: &[u8]| {
            let path = folder.join(name);
            fs::write(&path, bytes).expect("the folder can be written");
            path
        };
        // A picture of two pixels by one, 100 m each, about the site, whose origin lies at 40 west, 40 north.
        let bytes = base64(TWO_PIXELS.split_once(',').expect("an address of data").1);
        let picture = write("map.png", &bytes);
        let meters = write("map.pgw", b"100\n0\n0\n-100\n414650\n4428150\n");

        // A world file alone says what is missing.
        page.choose_files("open-file", &[&meters]).await;
        page.wait_for("[data-base='refused']").await;
        assert!(
            page.text("[data-base-faults]")
                .await
                .contains("together with the picture")
        );
        page.press("[data-command='base-close']").await;
        page.wait_for("#base:not([open])").await;

        // Meters of a system that no file names: it is asked for.
        page.choose_files("open-picture", &[&meters, &picture]).await;
        page.wait_for("[data-base='refused']").await;
        page.take_screenshot("world-file-system").await;
        assert!(page.text("[data-base-faults]").await.contains("coordinate system"));
        page.type_at("[data-base-again='0']", "EPSG:32624").await;
        page.press("[data-command='base-again']").await;
        page.wait_for("#base:not([open])").await;
        page.wait_for("[data-notice].is-calm").await;
        assert!(
            page.text("[data-notice]")
                .await
                .contains("map.png lies where map.pgw says")
        );
        page.take_screenshot("world-file-laid").await;
        // By pyproj 3.7.2, from EPSG:32624 to the plan's plane: +proj=tmerc +lat_0=40 +lon_0=-40 +k=1 +datum=WGS84.
        let expected = [-39.143, -36.517, 160.906, -34.273, 162.029, -134.298, -38.021, -136.542];
        let found = corners_m(page).await;
        assert!(
            found
                .iter()
                .zip(expected)
                .all(|(found, expected)| (found - expected).abs() < 0.01),
            "{found:?}"
        );

        page.press("[data-notice] button").await;
        page.wait_for("body:not(:has([data-notice]))").await;

        // Dropped, in degrees, the picture first, a quarter turned; what lies in another place is refused.
        let drop = |corner: &str| {
            format!(
                "const given = new DataTransfer();
                const bytes = Uint8Array.from(atob('{}'), (letter) => letter.charCodeAt(0));
                given.items.add(new File([bytes], 'turned.png'));
                given.items.add(new File(['0\\n0.001\\n0.001\\n0\\n{corner}\\n'], 'TURNED.wld'));
                const options = {{ dataTransfer: given, bubbles: true }};
                document.querySelector('.desk').dispatchEvent(new DragEvent('drop', options));
                arguments[0]();",
                TWO_PIXELS.split_once(',').expect("an address of data").1
            )
        };
        page.run_script(&drop("-30\\n40")).await;
        page.wait_for("[data-base='refused']").await;
        assert!(page.text("[data-base-faults]").await.contains("20 km"));
        page.press("[data-command='base-close']").await;
        page.wait_for("#base:not([open])").await;
        assert_eq!(corners_m(page).await, found, "what is refused changes nothing");
        page.run_script(&drop("-40\\n40")).await;
        page.wait_for("[data-notice].is-calm").await;
        page.take_screenshot("world-file-turned").await;
        // A thousandth of a degree is 85.39 m of longitude and 111.04 m of latitude there (WGS84, from memory).
        let [west, east] = [-42.7, 42.7];
        let [south, north] = [-55.5, 166.6];
        let expected = [west, south, west, north, east, north, east, south];
        let found = corners_m(page).await;
        assert!(
            found
                .iter()
                .zip(expected)
                .all(|(found, expected)| (found - expected).abs() < 0.2),
            "{found:?}"
        );
        // A folder for temporary files may be left.
        let _ = fs::remove_dir_all(&folder);
    });
}

/// The bytes that a text in base64 stands for (RFC 4648).
fn base64(text: &str) -> Vec<u8> {
    let value = |letter: u8| match letter {
        b'A'..=b'Z' => letter - b'A',
        b'a'..=b'z' => letter - b'a' + 26,
        b'0'..=b'9' => letter - b'0' + 52,
        b'+' => 62,
        _ => 63,
    };
    let letters: Vec<u8> = text.bytes().filter(|letter| *letter != b'=').collect();
    let four = |letters: &[u8]| {
        let bits = letters.iter().enumerate().fold(0_u32, |bits, (place, letter)| {
            bits | u32::from(value(*letter)) << (18 - 6 * place)
        });
        bits.to_be_bytes()[1..letters.len()].to_vec()
    };
    letters.chunks(4).flat_map(four).collect()
}
