//! From a blank sheet: the site's boundary, a bubble, water, a center, a way in, and what is asked; then the numbers. And
//! on a plan that stands, a fence that asks something of the lots beside it.

use hobnail_end_to_end::access::Audit;
use hobnail_end_to_end::command_line::shown;
use hobnail_end_to_end::page::{Figure, Page};
use hobnail_end_to_end::scenario::scenario;

const ENTER: char = '\u{e007}';
const CONTROL: char = '\u{e009}';
const UNDO: &str = "[data-command='undo']";

fn number(figures: &[Figure], id: &str) -> String {
    let found = figures.iter().find(|figure| figure.0 == id);
    found.unwrap_or_else(|| panic!("there is no figure {id}")).1.clone()
}

/// Chooses what the area tool or the place tool draws next.
async fn choose_kind(page: &Page, tool: &str, kind: &str) {
    page.choose_tool(tool).await;
    page.press(&format!("[data-palette] input[name='kind'][value='{kind}']"))
        .await;
}

async fn outline(page: &Page, corners: &[(f64, f64)]) {
    for corner in corners {
        page.click_at(*corner).await;
    }
    page.keys(&[ENTER]).await;
}

#[test]
fn a_neighborhood_begins_with_its_site_and_what_is_asked() {
    scenario("site", async |page| {
        page.press("[data-begin='site']").await;
        page.wait_for("[data-palette='areas']").await;
        let awaits = page.text("[data-awaits]").await;
        assert!(awaits.contains("first corner of the site"), "{awaits}");
        page.wait_for("[data-help]").await;
        outline(
            page,
            &[(-190.0, -190.0), (200.0, -190.0), (200.0, 70.0), (-190.0, 70.0)],
        )
        .await;
        assert!(page.texts("[data-help]").await.is_empty(), "the first steps make room");
        let about = page.text("[data-details-about]").await;
        assert!(about.ends_with("acres"), "{about}");
        let awaits = page.text("[data-awaits]").await;
        assert!(awaits.contains("Next"), "the next step is said: {awaits}");

        choose_kind(page, "area", "Soft area").await;
        page.drag((-150.0, -120.0), (120.0, 60.0)).await;
        page.wait_for("[data-details-delete]").await;
        let rough = number(&page.figures().await, "homes.count");
        assert_ne!(rough, "0 homes", "a bubble gives rough homes");

        choose_kind(page, "area", "Water").await;
        outline(page, &[(60.0, -150.0), (150.0, -150.0), (150.0, 0.0), (60.0, 0.0)]).await;
        let with_water = number(&page.figures().await, "homes.count");
        assert_ne!(with_water, rough, "nothing is built in water");
        page.type_into("Name", "Mill pond").await;

        page.choose_tool("street").await;
        page.click_at((-190.0, 40.0)).await;
        page.click_at((190.0, 40.0)).await;
        page.keys(&[ENTER]).await;
        choose_kind(page, "place", "Center").await;
        page.click_at((0.0, 40.0)).await;
        choose_kind(page, "place", "Site access").await;
        page.click_at((-190.0, 40.0)).await;
        page.type_into("Share of outside trips", "70").await;
        let said = page.text("[data-said]").await;
        assert!(said.starts_with("Change share of outside trips"), "{said}");

        page.press("[data-figure='homes.of_asked'] [data-program-open]").await;
        page.wait_for("[data-program]").await;
        page.type_into("Homes in all", "200").await;
        page.wait_for("#figures [data-figure='homes.of_asked'] [data-range]:not(:empty)")
            .await;
        let figures = page.figures().await;
        let of_asked = number(&figures, "homes.of_asked");
        assert!(of_asked.contains('%'), "{of_asked}");
        let drawn = page.texts("[data-program] .form-drawn").await;
        assert!(drawn[0].contains("homes"), "{drawn:?}");
        assert_ne!(number(&figures, "streets.ways_in_and_out"), "0");
        page.take_screenshot("site").await;

        page.press("[data-program-done]").await;
        page.keys(&[CONTROL, 'z']).await;
        assert_eq!(number(&page.figures().await, "homes.of_asked"), "—");
    });
}

#[test]
fn bubbles_and_a_center_come_before_any_street() {
    scenario("bubbles-first", async |page| {
        page.begin_with("blank-site.geojson").await;
        choose_kind(page, "place", "Center").await;
        page.point_at((60.0, 40.0)).await;
        let awaits = page.text("[data-awaits]").await;
        assert!(!awaits.contains("its square"), "the site is no square: {awaits}");
        page.click_at((60.0, 40.0)).await;
        page.wait_for("[data-details-delete]").await;
        assert_eq!(page.text("[data-details-about]").await, "", "a point has no size");
        page.take_screenshot("center-on-a-bare-site").await;
    });
}

#[test]
fn a_fence_limits_the_stories_of_the_lots_beside_it() {
    scenario("fence", async |page| {
        page.begin_with("compact-village.geojson").await;
        let homes = |figures: &[Figure]| number(figures, "homes.count");
        let before = homes(&page.settled_figures().await);
        choose_kind(page, "place", "Barrier or fence").await;
        // Along the rears of two blocks, of which one holds apartment houses.
        outline(page, &[(-152.9, -286.6), (19.8, -287.7)]).await;
        page.wait_for("[data-details-delete]").await;
        assert_eq!(
            homes(&page.settled_figures().await),
            before,
            "a fence asks nothing unless told"
        );

        page.type_into("Most stories beside it", "2").await;
        let low = homes(&page.settled_figures().await);
        assert_ne!(low, before, "apartments have lost their upper stories");
        let about = page.text("[data-details-about]").await;
        assert!(about.contains("lots beside it"), "{about}");
        assert!(!about.contains("No room"), "{about}");
        page.take_screenshot("fence").await;
        page.type_into("Buildings keep away", "90").await;
        let about = page.text("[data-details-about]").await;
        assert!(about.contains("No room for the buildings of"), "{about}");
        let mut audit = Audit::by_all_rules();
        audit.look(page, "a fence").await;
        page.press(UNDO).await;

        page.type_into("Name", "Mill fence").await;
        page.choose_tool("select").await;
        page.click_at((-107.8, -306.7)).await;
        page.wait_for("[data-editor='land']").await;
        let editor = page.text("[data-editor='land']").await;
        assert!(editor.contains("Mill fence: at most 2 stories, 2 lots"), "{editor}");
        audit.look(page, "a block beside a fence").await;
        audit.expect_nothing();

        page.press(UNDO).await;
        page.press(UNDO).await;
        assert_eq!(homes(&page.settled_figures().await), before, "undone to the figure");
        page.press("[data-command='redo']").await;
        assert_eq!(homes(&page.settled_figures().await), low);
        let saved = page.save().await;
        assert_eq!(shown(&saved, "homes.count"), low);

        page.press("[data-menu='share'] summary").await;
        page.wait_for("[data-address]").await;
        let script = "arguments[0](document.querySelector('[data-address]').value.split('#')[1])";
        let address = page.run_script(script).await;
        let address = address.as_str().expect("an address is text").to_owned();
        assert!(
            address.starts_with("plan=2"),
            "only the newer letter tells of fences that ask: {address}"
        );
        page.load_again(&format!("?from=address#{address}")).await;
        page.wait_for("html[data-looking='yes']").await;
        assert_eq!(homes(&page.settled_figures().await), low, "the address tells it too");
    });
}
