//! What is chosen in the panel, without the page.

use hobnail_core::plan::document::UnitSystem;
use hobnail_core::plan::{StreetRole, StreetSectionId};
use hobnail_core::say;
use hobnail_readers::options::Options;

use super::opened::{FIRST_CLASSES, Field, Opened};
use super::place::{WHOLE_FEATURES, in_reach_deg};
use super::tests::{check_streets, collection, feature, handed_over, placed_app, read, streets, with_site};
use super::{Becomes, Extent, Shape};
use crate::app::App;

const NETWORK: &str = "readers/network/streets.osm.pbf";

fn taken(opened: &Opened) -> u32 {
    opened.preview.as_ref().map_or(0, super::Taken::count)
}

#[test]
fn what_is_shown_at_first_is_what_is_taken() {
    let mut app = placed_app();
    let mut opened = Opened::new(read(NETWORK, Options::default()), &app);
    assert_eq!(opened.fields, [Field::Distance], "a plan with a place keeps it");
    opened.type_in(Field::Distance, "5000".to_owned());
    opened.look(&app);
    let count = taken(&opened);
    assert!(app.take_base(&opened.base, &opened.choices), "{:?}", app.notice());
    assert_eq!(streets(&app).len(), count as usize);
    check_streets(&streets(&app), 0, true);
}

#[test]
fn classes_that_become_something_come_first_and_the_larger_before_the_smaller() {
    let road = feature(r#""highway": "residential""#, "LineString", "[[10, 0], [10.001, 0]]");
    let path = feature(r#""highway": "path""#, "LineString", "[[10, 0], [10.001, 0.001]]");
    let odd = feature(r#""landuse": "odd""#, "LineString", "[[10, 0], [10.001, 0]]");
    let features = [odd.clone(), odd.clone(), odd, road, path.clone(), path];
    let base = handed_over("a.geojson", collection(&features.join(",")), Options::default());
    let mut opened = Opened::new(base, &with_site());
    let tags = |opened: &Opened| -> Vec<String> {
        let (shown, _) = opened.classes();
        shown
            .iter()
            .map(|place| opened.base.classes[*place].tag.clone())
            .collect()
    };
    assert_eq!(tags(&opened), ["highway=path", "highway=residential", ""]);
    opened.choices.layers[0] = false;
    assert_eq!(opened.classes(), (Vec::new(), 0));
}

#[test]
fn a_long_table_is_short_until_all_is_asked_for() {
    let kinds = [
        "residential",
        "path",
        "primary",
        "secondary",
        "tertiary",
        "service",
        "steps",
        "track",
    ];
    let shops = ["bakery", "books", "toys", "shoes", "tea", "wine", "art"];
    let line = |kind: &&str| {
        let tags = [r#""highway": ""#, kind, r#"""#].concat();
        feature(&tags, "LineString", "[[10, 0], [10.001, 0]]")
    };
    let point = |kind: &&str| feature(&[r#""shop": ""#, kind, r#"""#].concat(), "Point", "[10, 0]");
    let all: Vec<String> = kinds.iter().map(line).chain(shops.iter().map(point)).collect();
    let base = handed_over("a.geojson", collection(&all.join(",")), Options::default());
    let mut opened = Opened::new(base, &with_site());
    let lengths = |opened: &Opened| (opened.classes().0.len(), opened.classes().1);
    assert_eq!(lengths(&opened), (FIRST_CLASSES, 15));
    opened.shows_all = true;
    assert_eq!(lengths(&opened), (15, 15));
}

#[test]
fn a_class_is_offered_what_its_shape_can_be_and_keeps_the_role_of_its_tag() {
    let app = placed_app();
    let mut opened = Opened::new(read(NETWORK, Options::default()), &app);
    let tertiary = opened
        .base
        .classes
        .iter()
        .position(|class| class.tag == "highway=tertiary")
        .unwrap();
    let (meanings, chosen) = opened.meanings(tertiary, &app);
    assert!(meanings.iter().all(|(becomes, _)| becomes.can_be(Shape::Lines)));
    let collector = Becomes::Street(StreetSectionId(9), StreetRole::NeighborhoodStreet);
    assert_eq!(meanings[chosen].0, collector);
    let before = taken(&opened);
    opened.choose_meaning(tertiary, 0, &app);
    opened.look(&app);
    let count = opened.base.classes[tertiary].count;
    assert_eq!(taken(&opened), before - count);
    assert_eq!(opened.preview.as_ref().unwrap().unchosen, count);
    opened.choose_meaning(tertiary, chosen, &app);
    assert_eq!(opened.base.classes[tertiary].becomes, collector);
    opened.choose_meaning(tertiary, 99, &app);
    assert_eq!(
        opened.base.classes[tertiary].becomes, collector,
        "there is no such meaning"
    );
}

#[test]
fn all_layers_of_a_drawing_become_one_thing_together() {
    let app = placed_app();
    let mut drawing = Opened::new(read("readers/network/streets.dxf.gz", Options::default()), &app);
    assert!(drawing.preview.is_err() && drawing.sketch.is_none());
    let all = drawing.meanings_of_all(&app);
    let place = |wanted: fn(Becomes) -> bool| all.iter().position(|(becomes, _)| wanted(*becomes)).unwrap();
    drawing.choose_meaning_of_all(place(|becomes| matches!(becomes, Becomes::Parcel(_))), &app);
    drawing.look(&app);
    assert!(drawing.preview.is_err(), "lines are no parcels");
    drawing.choose_meaning_of_all(place(|becomes| becomes == Becomes::Barrier), &app);
    drawing.type_in(Field::Distance, "9999".to_owned());
    drawing.look(&app);
    assert_eq!(
        taken(&drawing),
        drawing.base.classes.iter().map(|class| class.count).sum::<u32>()
    );
    assert!(drawing.sketch.is_some());
}

#[test]
fn what_is_typed_wrong_is_said_and_nothing_would_be_taken() {
    let app = placed_app();
    let mut opened = Opened::new(read(NETWORK, Options::default()), &app);
    for wrong in ["", "far", "1-2", "NaN"] {
        opened.type_in(Field::Distance, wrong.to_owned());
        opened.look(&app);
        assert_eq!(opened.typed(Field::Distance), (wrong, false));
        assert_eq!(opened.preview, Err(say!("bases-field-wrong").to_owned()));
    }
    opened.type_in(Field::Distance, "1,000".to_owned());
    opened.look(&app);
    assert!(opened.preview.is_ok());
    assert_eq!(
        (app.units(), opened.choices.extent),
        (UnitSystem::UsCustomary, Extent::Around { radius_m: 304.8 })
    );
}

#[test]
fn only_where_there_is_a_site_is_asked_how_much_around_it() {
    let line = feature(r#""highway": "path""#, "LineString", "[[10, 0], [10.001, 0]]");
    let base = handed_over("a.geojson", collection(&line), Options::default());
    assert_eq!(Opened::new(base.clone(), &placed_app()).extents(), []);
    let mut opened = Opened::new(base, &with_site());
    let chosen = |opened: &Opened| opened.extents().iter().position(|(_, is_chosen)| *is_chosen);
    assert_eq!((chosen(&opened), opened.typed(Field::Distance).0), (Some(0), "660"));
    opened.choose_extent(1);
    assert_eq!((chosen(&opened), opened.choices.extent), (Some(1), Extent::Within));
    assert_eq!(opened.fields, []);
    opened.choose_extent(2);
    assert_eq!((chosen(&opened), opened.typed(Field::Distance).0), (Some(2), "2640"));
    assert_eq!(opened.fields, [Field::Distance]);
}

#[test]
fn a_plan_without_a_place_asks_for_one_and_a_drawing_how_it_lies() {
    let app = App::new().unwrap();
    let mut opened = Opened::new(read(NETWORK, Options::default()), &app);
    assert_eq!(opened.fields, [Field::Distance, Field::Longitude, Field::Latitude]);
    let first = opened.choices.origin;
    opened.type_in(Field::Longitude, "−24.5".to_owned());
    let (longitude, latitude) = opened.choices.origin.to_deg();
    assert_eq!((longitude, latitude), (-24.5, first.to_deg().1));
    opened.type_in(Field::Latitude, "95".to_owned());
    assert_eq!(opened.typed(Field::Latitude), ("95", false));

    let mut drawing = Opened::new(read("readers/network/streets.dxf.gz", Options::default()), &app);
    let fields = [Field::Distance, Field::Unit, Field::East, Field::North, Field::Turn];
    assert_eq!(drawing.fields, fields);
    let meters = drawing.extent();
    drawing.type_in(Field::Unit, "0.3048".to_owned());
    assert_ne!(drawing.extent(), meters);
    drawing.type_in(Field::Unit, "0".to_owned());
    assert_eq!(drawing.typed(Field::Unit), ("0", false));
    assert!(drawing.can_be_read_again() && !opened.can_be_read_again());
}

#[test]
fn the_coordinates_of_a_file_are_said_with_their_datum_and_can_be_corrected_unless_they_are_the_plans() {
    let app = App::new().unwrap();
    let said = |system: &str| {
        let mut base = read(NETWORK, Options::default());
        base.system = system.to_owned();
        let opened = Opened::new(base, &app);
        (opened.system(), opened.can_be_read_again())
    };
    let (degrees, wgs84) = (say!("bases-unit-degrees"), say!("bases-system-degrees").to_owned());
    assert_eq!(
        said("+proj=longlat +datum=WGS84 +no_defs"),
        ((wgs84.clone(), degrees), false)
    );
    assert_eq!(said(""), ((wgs84, degrees), false));
    let clarke = "+proj=longlat +datum=NAD27 +no_defs";
    assert_eq!(said(clarke), ((clarke.to_owned(), degrees), true));
    let utm = "+proj=utm +zone=18 +datum=WGS84 +units=m";
    assert_eq!(said(utm), ((utm.to_owned(), say!("bases-unit-meters")), true));
}

#[test]
fn a_file_without_a_place_on_earth_is_placed_by_hand() {
    let app = App::new().unwrap();
    let rows = "x,y,amenity\n5000,9000,school\n5100,9000,school\n";
    let local = Options {
        system: Some("local".to_owned()),
        ..Options::default()
    };
    let mut opened = Opened::new(handed_over("a.csv", rows.as_bytes().to_vec(), local), &app);
    let fields = [Field::Distance, Field::Unit, Field::East, Field::North, Field::Turn];
    assert_eq!(opened.fields, fields);
    opened.type_in(Field::Distance, "1000".to_owned());
    opened.type_in(Field::Turn, "90".to_owned());
    opened.look(&app);
    assert_eq!(taken(&opened), 2, "{:?}", opened.preview);
}

#[test]
fn a_blank_plan_takes_a_small_file_whole_and_of_a_large_one_what_lies_about_its_middle() {
    let across = |half_deg: f64, count: usize| {
        let line = |place: usize| {
            let north = half_deg * (place as f64 / count as f64);
            feature(
                r#""highway": "path""#,
                "LineString",
                &format!("[[{}, {north}], [{}, {north}]]", 10.0 - half_deg, 10.0 + half_deg),
            )
        };
        let all: Vec<String> = (0..count).map(line).collect();
        handed_over("a.geojson", collection(&all.join(",")), Options::default())
    };
    let app = App::new().unwrap();
    // 0.02° at the equator are 2,226.4 m (WGS84), which is taken in a step of ten meters.
    let small = Opened::new(across(0.02, 10), &app);
    assert_eq!(small.choices.extent, Extent::Around { radius_m: 2_230.0 });
    let whole = small.preview.as_ref().unwrap();
    assert_eq!((whole.features, whole.beyond), (10, 0));
    assert_eq!(
        whole.share(10),
        say!("bases-share", taken = 10, count = 10, percent = 100)
    );

    let half_a_mile = Extent::Around {
        radius_m: 2_640.0 * 0.3048,
    };
    let mut wide = across(0.03, 1);
    wide.features.extend(across(0.003, 1).features);
    let wide = Opened::new(wide, &app);
    assert_eq!(wide.choices.extent, half_a_mile, "more than two miles to a side");
    let many = Opened::new(across(0.02, WHOLE_FEATURES + 1), &app);
    assert_eq!(many.choices.extent, half_a_mile, "more than can be drawn with at ease");
    let part = many.preview.as_ref().unwrap();
    assert!(part.beyond > 0 && part.features > 0);
    assert_eq!((part.beyond + part.features) as usize, WHOLE_FEATURES + 1);
    let said = part.share(many.base.features.len());
    let percent = part.features * 100 / (WHOLE_FEATURES as u32 + 1);
    assert!(said.contains(&percent.to_string()), "{said}");

    // Where there is a site or a street, that says what is wanted.
    let site = Opened::new(across(0.002, 3), &with_site());
    assert!(matches!(site.choices.extent, Extent::Site { .. }));
    let mut app = placed_app();
    let network = Opened::new(read(NETWORK, Options::default()), &app);
    assert_ne!(network.choices.extent, half_a_mile);
    assert_eq!(taken(&network), network.base.features.len() as u32);
    assert!(app.take_base(&network.base, &network.choices));
    let again = Opened::new(read(NETWORK, Options::default()), &app);
    assert_eq!(again.choices.extent, half_a_mile);
}

#[test]
fn what_can_be_taken_is_read_and_what_is_too_far_away_need_not_be() {
    assert_eq!(in_reach_deg(App::new().unwrap().study().document()), None);
    let app = placed_app();
    let box_deg = in_reach_deg(app.study().document()).unwrap();
    let [west, south, east, north] = box_deg;
    let projection = app.study().document().heading.projection().unwrap();
    for (longitude, latitude) in [(west, south), (west, north), (east, south), (east, north)] {
        let (x_m, y_m) = projection.m_from_deg(longitude, latitude).unwrap();
        assert!(x_m.abs() >= 20_000.0 && y_m.abs() >= 20_000.0, "{x_m} {y_m}");
    }
    let options = Options {
        box_deg: Some(box_deg),
        ..Options::default()
    };
    assert_eq!(
        read(NETWORK, options).features,
        read(NETWORK, Options::default()).features
    );
}
