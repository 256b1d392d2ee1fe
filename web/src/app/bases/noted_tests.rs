//! Counts of traffic and zones taken into a plan, as words and as soft areas.

use hobnail_core::plan::inside::goes_around;
use hobnail_core::plan::projection::GeographicPoint;
use hobnail_core::plan::validate::validate;
use hobnail_core::plan::{BuildingTypeId, Document, Mark, PlanPoint, SoftArea};
use hobnail_core::say;
use hobnail_readers::options::Options;

use super::opened::Opened;
use super::tests::{collection, feature, handed_over, marks, read, wide, with_site};
use super::*;
use crate::app::App;
use crate::tools::drafts;
use crate::tools::shape::area_m2;

const COUNTS: &str = "readers/small/counts.geojson";
const ZONES: &str = "readers/small/zones.geojson";

/// A plan whose origin is the southwestern corner of the samples: a thousandth of a degree is 78.8 m to the east.
fn app() -> App {
    let place = GeographicPoint::checked_from_deg(10.0, 45.0).unwrap();
    App::open(Document::new("Test", place)).unwrap()
}

fn notes(app: &App) -> Vec<(String, PlanPoint)> {
    let all = marks(app);
    let notes = all.iter().filter_map(Mark::as_note);
    notes.map(|note| (note.text.clone(), note.at)).collect()
}

fn soft_areas(app: &App) -> Vec<SoftArea> {
    let soft = |mark| match mark {
        Mark::SoftArea(area) => Some(area),
        _ => None,
    };
    marks(app).into_iter().filter_map(soft).collect()
}

/// All classes of zones become soft areas of a building type.
fn soft(base: &mut Base, building_type: u32) {
    for class in &mut base.classes {
        class.becomes = Becomes::Soft(BuildingTypeId(building_type));
    }
}

#[test]
fn counts_become_notes_in_the_middle_of_their_lines() {
    let mut app = app();
    let base = read(COUNTS, Options::default());
    let kinds: Vec<(&str, Becomes)> = base
        .classes
        .iter()
        .map(|class| (class.tag.as_str(), class.becomes))
        .collect();
    assert_eq!(kinds, [("AADT", Becomes::Note), ("", Becomes::Nothing)]);
    let choices = wide(&base, &app);
    let (_, taken) = base
        .edits(app.study().document(), app.study().alternative(), &choices)
        .unwrap();
    assert_eq!(
        (taken.marks, taken.features, taken.unchosen),
        ([0, 0, 0, 0, 0, 0, 3, 0], 3, 1)
    );
    assert!(app.take_base(&base, &choices), "{:?}", app.notice());
    let found = notes(&app);
    let words: Vec<&str> = found.iter().map(|(words, _)| words.as_str()).collect();
    assert_eq!(
        words,
        [
            "Mill Road: AADT 4300 (2022)",
            "Weir Lane: AADT 650 (2019)",
            "AADT 2150 (2022)"
        ]
    );
    // In degrees: half-way from 10 to 10.008, from 10 to 10.004 on the first of two lines, and the point itself.
    for ((_, at), east) in found.iter().zip([4.0, 2.0, 3.0]) {
        assert!((f64::from(at.x_mm) - east * 78_847.0).abs() < 100.0, "{at:?} {east}");
    }
    assert_eq!(validate(app.study().document()), []);
    assert!(!app.take_base(&base, &choices));
    assert_eq!(app.notice(), Some(say!("bases-all-known", count = 3).as_str()));
}

#[test]
fn a_street_with_a_count_is_named_as_a_street_and_says_its_count_as_a_note() {
    let tags = r#""highway": "residential", "name": "Mill Road", "ADT": 900"#;
    let road = feature(tags, "LineString", "[[9.99, 0], [10.0004, 0]]");
    let mut base = handed_over("a.geojson", collection(&road), Options::default());
    let mut app = with_site();
    let choices = Choices {
        extent: Extent::Within,
        ..Choices::first(&base, app.study().document())
    };
    assert!(app.take_base(&base, &choices), "{:?}", app.notice());
    assert!(matches!(&marks(&app)[0], Mark::Street(street) if street.name == "Mill Road"));
    base.classes[0].becomes = Becomes::Note;
    assert!(app.take_base(&base, &choices), "{:?}", app.notice());
    let found = notes(&app);
    assert_eq!(found[0].0, "Mill Road: ADT 900");
    // In the middle of what lies in the site: from 100 m west of the origin to 44.5 m east of it.
    assert!((found[0].1.x_mm + 27_737).abs() < 20, "{found:?}");
}

#[test]
fn each_zone_is_a_kind_and_each_area_says_its_code_on_its_own_land() {
    let mut app = app();
    let base = read(ZONES, Options::default());
    let kinds: Vec<(&str, u32)> = base
        .classes
        .iter()
        .map(|class| (class.tag.as_str(), class.count))
        .collect();
    assert_eq!(kinds, [("ZONE_CODE=R-1", 2), ("ZONE_CODE=MU-2", 1), ("ZONE_CODE=P", 1)]);
    assert!(base.classes.iter().all(|class| class.becomes == Becomes::Note));
    let choices = wide(&base, &app);
    let (_, taken) = base
        .edits(app.study().document(), app.study().alternative(), &choices)
        .unwrap();
    assert_eq!(
        (taken.marks[6], taken.holes),
        (5, 0),
        "two areas are of one zone, and no hole is filled"
    );
    assert!(app.take_base(&base, &choices), "{:?}", app.notice());
    let found = notes(&app);
    let codes: Vec<&str> = found.iter().map(|(words, _)| words.as_str()).collect();
    assert_eq!(codes, ["R-1", "MU-2", "MU-2", "P", "R-1"]);
    // The first zone lies about the park, which is a hole in it, so its code does not stand there.
    let mut soft_app = self::app();
    let mut areas = read(ZONES, Options::default());
    soft(&mut areas, 0);
    assert!(soft_app.take_base(&areas, &choices), "{:?}", soft_app.notice());
    let outlines: Vec<Vec<PlanPoint>> = soft_areas(&soft_app).into_iter().map(|area| area.outline).collect();
    let on = |at: PlanPoint| outlines.iter().filter(|outline| goes_around(outline, at)).count();
    for (code, at) in &found {
        assert_eq!(on(*at), 1, "{code} {at:?}");
    }
    let park = outlines
        .iter()
        .find(|outline| goes_around(outline, found[3].1))
        .unwrap();
    assert!(!goes_around(park, found[0].1));
}

#[test]
fn zones_become_soft_areas_as_the_tool_draws_them_and_land_is_counted_once() {
    let mut app = app();
    let mut base = read(ZONES, Options::default());
    soft(&mut base, 1);
    let choices = wide(&base, &app);
    assert!(app.take_base(&base, &choices), "{:?}", app.notice());
    let document = app.study().document();
    let found = soft_areas(&app);
    for area in &found {
        let drawn = drafts::soft(area.outline.clone(), Some(BuildingTypeId(1)), document);
        assert_eq!(Mark::SoftArea(area.clone()), drawn);
        assert_eq!((area.program.len(), area.intensity_ppm), (1, 1_000_000));
    }
    // In thousandths of a degree: 6 by 4, of which the park fills the hole, 3 by 2, 2 by 1, and half of 3 by 3.
    let land_m2: f64 = found.iter().map(|area| area_m2(&area.outline)).sum();
    let degree_m2 = 78.847 * 111.132;
    assert!((land_m2 / degree_m2 - 36.5).abs() < 0.05, "{}", land_m2 / degree_m2);
    let count = found.len() as u32;
    assert!(count > 5, "the land about the park is in pieces");
    let words = say!("bases-kind", kind = "soft", count = count);
    assert!(
        app.notice().is_some_and(|said| said.contains(&words)),
        "{:?}",
        app.notice()
    );
    assert!(!app.take_base(&base, &choices));
    assert_eq!(app.notice(), Some(say!("bases-all-known", count = count).as_str()));
    assert_eq!(validate(app.study().document()), []);
}

#[test]
fn in_the_site_alone_zones_are_cut_at_its_outline_and_their_words_stand_in_it() {
    // From far west of the site to its middle.
    let area = "[[[9.9, -0.1], [10, -0.1], [10, 0.1], [9.9, 0.1], [9.9, -0.1]]]";
    let zone = feature(r#""zoning": "R-2""#, "Polygon", area);
    let mut base = handed_over("a.geojson", collection(&zone), Options::default());
    let mut app = with_site();
    let choices = Choices {
        extent: Extent::Within,
        ..Choices::first(&base, app.study().document())
    };
    assert!(app.take_base(&base, &choices), "{:?}", app.notice());
    let (words, at) = &notes(&app)[0];
    assert_eq!((words.as_str(), at.x_mm), ("R-2", -50_000));
    soft(&mut base, 0);
    assert!(app.take_base(&base, &choices), "{:?}", app.notice());
    let land_m2 = area_m2(&soft_areas(&app)[0].outline);
    assert!((land_m2 - 100.0 * 200.0).abs() < 1.0, "{land_m2}");
}

#[test]
fn an_area_is_offered_every_use_of_the_soft_area_tool_and_a_line_is_not() {
    let app = app();
    let types: Vec<Becomes> = app
        .study()
        .document()
        .building_types
        .keys()
        .map(|id| Becomes::Soft(*id))
        .collect();
    let offered = |name: &str| {
        let opened = Opened::new(read(name, Options::default()), &app);
        let (meanings, chosen) = opened.meanings(0, &app);
        assert_eq!(meanings[chosen].0, Becomes::Note);
        let soft = meanings
            .into_iter()
            .filter(|(becomes, _)| matches!(becomes, Becomes::Soft(_)));
        soft.collect::<Vec<_>>()
    };
    let of_areas = offered(ZONES);
    assert_eq!(of_areas.iter().map(|(becomes, _)| *becomes).collect::<Vec<_>>(), types);
    let first = app.study().document().building_types.values().next().unwrap();
    assert_eq!(of_areas[0].1, say!("bases-becomes-soft", use = first.name));
    assert_eq!(offered(COUNTS), []);
}
