//! Base data and the site: its boundary taken, and what lies within it alone.

use hobnail_core::plan::land::OwnerGroup;
use hobnail_core::plan::projection::GeographicPoint;
use hobnail_core::plan::validate::validate;
use hobnail_core::plan::{Document, Mark};
use hobnail_readers::options::Options;

use super::tests::{collection, feature, handed_over, marks, streets, wide, with_site};
use super::*;
use crate::app::App;
use crate::tools::shape::area_m2;

#[test]
fn the_largest_outline_becomes_the_site_and_the_rest_lies_in_it_or_not() {
    let square = |east: f64| format!("[[[10, 0], [{east}, 0], [{east}, 0.001], [10, 0.001]]]");
    let features = [
        feature(r#""parcel": "1""#, "Polygon", &square(10.0005)),
        feature(r#""parcel": "2""#, "Polygon", &square(10.002)),
        feature(
            r#""highway": "path""#,
            "LineString",
            "[[10.001, 0.0005], [10.001, 0.0006]]",
        ),
        feature(
            r#""highway": "path""#,
            "LineString",
            "[[10.003, 0.0005], [10.003, 0.0006]]",
        ),
    ];
    let mut base = handed_over("a.geojson", collection(&features.join(",")), Options::default());
    base.classes[0].becomes = Becomes::Site;
    let place = GeographicPoint::checked_from_deg(10.0, 0.0).unwrap();
    let mut app = App::open(Document::new("Test", place)).unwrap();
    let before = app.study().document().clone();
    let choices = wide(&base, &app);
    let (_, taken) = base.edits(&before, app.study().alternative(), &choices).unwrap();
    assert_eq!((taken.site, taken.marks[0], taken.unchosen), (true, 2, 1));
    assert!(app.take_base(&base, &choices), "{:?}", app.notice());
    let boundary = &app.study().document().site.boundary;
    assert_eq!(boundary.len(), 4);
    assert!((boundary[1].x_mm - 222_639).abs() < 2, "{boundary:?}");
    assert_eq!(
        streets(&app).iter().map(|street| street.is_outside).collect::<Vec<_>>(),
        [false, true]
    );
    assert!(!app.take_base(&base, &choices), "the plan has all of it");
    app.undo();
    assert_eq!(*app.study().document(), before);
}

#[test]
fn in_the_site_alone_lines_are_cut_at_its_outline_and_what_is_outside_is_not_taken() {
    let features = [
        feature(r#""highway": "primary""#, "LineString", "[[9.9, 0], [10.1, 0]]"),
        feature(
            r#""highway": "path""#,
            "LineString",
            "[[10.0015, -0.1], [10.0015, 0.1]]",
        ),
        feature(r#""shop": "bakery""#, "Point", "[10.0008, 0.0008]"),
        feature(r#""shop": "books""#, "Point", "[10.001, 0.0008]"),
    ];
    let base = handed_over("a.geojson", collection(&features.join(",")), Options::default());
    let mut app = with_site();
    let choices = Choices {
        extent: Extent::Within,
        ..Choices::first(&base, app.study().document())
    };
    assert!(app.take_base(&base, &choices), "{:?}", app.notice());
    let streets = streets(&app);
    assert_eq!(streets.len(), 1);
    let ends = [0, streets[0].line.len() - 1].map(|place| streets[0].line[place].point.x_mm);
    assert_eq!(ends, [-100_000, 100_000]);
    assert_eq!(marks(&app).len(), 2, "a street and the shop that lies in the site");
}

#[test]
fn in_the_site_alone_land_is_cut_at_its_outline_and_holes_are_kept_where_land_can_be_divided() {
    // A lake that reaches over the eastern side of the site, with an island on either side of it; a park within.
    let ring = |[west, south, east, north]: [f64; 4]| {
        format!("[[{west}, {south}], [{east}, {south}], [{east}, {north}], [{west}, {north}], [{west}, {south}]]")
    };
    let lake = [
        ring([10.0, -0.0005, 10.002, 0.0005]),
        ring([10.0002, -0.0002, 10.0004, 0.0002]),
        ring([10.0014, -0.0002, 10.0016, 0.0002]),
    ];
    let lake = format!("[{}]", lake.join(", "));
    let features = [
        feature(r#""natural": "water""#, "Polygon", &lake),
        feature(r#""natural": "odd""#, "Polygon", &lake),
    ];
    let mut base = handed_over("a.geojson", collection(&features.join(",")), Options::default());
    let odd = base.classes.iter().position(|class| class.becomes == Becomes::Nothing);
    base.classes[odd.unwrap()].becomes = Becomes::Parcel(OwnerGroup::Unknown);
    let mut app = with_site();
    let choices = Choices {
        extent: Extent::Within,
        ..Choices::first(&base, app.study().document())
    };
    let (_, taken) = base
        .edits(app.study().document(), app.study().alternative(), &choices)
        .unwrap();
    // The parcel's island in the site is filled; the other island is not in the site, and no hole of what is taken.
    assert_eq!((taken.features, taken.holes), (2, 1));
    assert!(app.take_base(&base, &choices), "{:?}", app.notice());
    let (mut water_m2, mut parcel_m2) = (0.0, 0.0);
    for mark in marks(&app) {
        match &mark {
            Mark::Constraint(area) => water_m2 += area_m2(&area.outline),
            Mark::Parcel(parcel) => {
                parcel_m2 += area_m2(&parcel.outline);
                assert_eq!(parcel.outline.iter().map(|point| point.x_mm).max(), Some(100_000));
            }
            _ => panic!("{mark:?}"),
        }
    }
    // A ten-thousandth of a degree at the equator: 11.132 m to the east, 11.057 m to the north (WGS84).
    let whole_m2 = 100.0 * 110.57;
    let island_m2 = 2.0 * 11.132 * 4.0 * 11.057;
    assert!((parcel_m2 - whole_m2).abs() < 5.0, "{parcel_m2} {whole_m2}");
    assert!((water_m2 - (whole_m2 - island_m2)).abs() < 5.0, "{water_m2}");
    let faults = validate(app.study().document());
    assert!(faults.is_empty(), "{faults:?}");
}

#[test]
fn homes_of_a_building_of_several_parts_are_counted_once() {
    let square = |west: f64| {
        let east = west + 0.0001;
        format!("[[[{west}, 0.001], [{east}, 0.001], [{east}, 0.0011], [{west}, 0.0011], [{west}, 0.001]]]")
    };
    let parts = format!("[{}, {}]", square(10.0011), square(10.0013));
    let building = feature(r#""building": "yes", "building:flats": "12""#, "MultiPolygon", &parts);
    let base = handed_over("a.geojson", collection(&building), Options::default());
    let mut app = with_site();
    let choices = wide(&base, &app);
    assert!(app.take_base(&base, &choices));
    let homes = marks(&app).into_iter().map(|mark| match mark {
        Mark::Outside(outside) => outside.homes,
        other => panic!("{other:?}"),
    });
    assert_eq!(homes.collect::<Vec<_>>(), [12, 0]);
}
