//! A published network as others write it, read by the readers, handed over in pieces, and taken into a plan.

use std::fs;
use std::path::Path;

use hobnail_core::plan::land::{Footprint, OwnerGroup};
use hobnail_core::plan::projection::GeographicPoint;
use hobnail_core::plan::street::Status;
use hobnail_core::plan::validate::{Severity, validate};
use hobnail_core::plan::{Document, Mark, PlanPoint, Street, StreetRole, StreetSectionId};
use hobnail_core::say;
use hobnail_readers::base::Coordinates as ReadCoordinates;
use hobnail_readers::options::Options;
use hobnail_readers::pieces::Pieces;

use super::*;
use crate::app::App;

const SOURCE: &str = "streets/dr_helsinki/streets.geojson";

/// The plan's origin in `dr_helsinki/params.json`.
const ORIGIN_DEG: (f64, f64) = (24.9452, 60.1708);

fn origin() -> GeographicPoint {
    GeographicPoint::checked_from_deg(ORIGIN_DEG.0, ORIGIN_DEG.1).unwrap()
}

fn bytes(name: &str) -> Vec<u8> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../tests/fixtures")
        .join(name);
    fs::read(&path).unwrap_or_else(|fault| panic!("{}: {fault}", path.display()))
}

/// What positions of a file mean, as the page hears it.
pub(super) fn coordinates_of(read: &hobnail_readers::base::Base) -> Coordinates {
    match read.coordinates {
        ReadCoordinates::Degrees => Coordinates::Degrees,
        ReadCoordinates::DrawingMillimeters { unit_m, .. } => Coordinates::Drawing { unit_m },
        ReadCoordinates::PlanMillimeters => panic!("no origin was given"),
    }
}

/// What the worker hands over of bytes, put together as the page does.
pub(super) fn handed_over(name: &str, bytes: Vec<u8>, options: Options) -> Base {
    let read = hobnail_readers::read(name, bytes, options).unwrap_or_else(|faults| panic!("{name}: {faults:?}"));
    let coordinates = coordinates_of(&read);
    let mut base = Base {
        attribution: read.attribution.clone(),
        layers: read.layers.iter().map(|layer| layer.name.clone()).collect(),
        ..Base::new(name, coordinates)
    };
    for piece in Pieces::new(read) {
        base.add_piece(&piece.shapes, &piece.positions, &piece.words).unwrap();
    }
    base
}

pub(super) fn read(name: &str, options: Options) -> Base {
    handed_over(name, bytes(name), options)
}

pub(super) fn placed_app() -> App {
    App::open(Document::new("Test", origin())).unwrap()
}

pub(super) fn wide(base: &Base, app: &App) -> Choices {
    Choices {
        extent: Extent::Around { radius_m: 5_000.0 },
        ..Choices::first(base, app.study().document())
    }
}

pub(super) fn marks(app: &App) -> Vec<Mark> {
    let study = app.study();
    let held = &study.document().alternatives[&study.alternative()];
    held.marks.values().cloned().collect()
}

pub(super) fn streets(app: &App) -> Vec<Street> {
    marks(app).iter().filter_map(|mark| mark.as_street().cloned()).collect()
}

/// The network as it is written, put into the plan's plane without any reader of ours.
fn directly() -> Vec<(String, Vec<PlanPoint>)> {
    let source: serde_json::Value = serde_json::from_slice(&bytes(SOURCE)).unwrap();
    let projection = hobnail_core::plan::projection::Projection::about(origin()).unwrap();
    let street = |feature: &serde_json::Value| {
        let line = feature["geometry"]["coordinates"].as_array().unwrap();
        let point = |at: &serde_json::Value| {
            let degrees = GeographicPoint::checked_from_deg(at[0].as_f64().unwrap(), at[1].as_f64().unwrap());
            projection.plan_from_geographic(degrees.unwrap()).unwrap()
        };
        let mut line: Vec<PlanPoint> = line.iter().map(point).collect();
        line.dedup();
        let name = feature["properties"]["name"].as_str().unwrap_or_default();
        (name.to_owned(), line)
    };
    source["features"].as_array().unwrap().iter().map(street).collect()
}

/// Every street is the source's, to so many millimeters at each point; the order of the source is not asked of drawings.
#[track_caller]
pub(super) fn check_streets(found: &[Street], off_mm: i32, names_are_kept: bool) {
    let mut wanted = directly();
    let mut found: Vec<(String, Vec<PlanPoint>)> = found
        .iter()
        .map(|street| {
            assert_eq!((street.status, street.phase), (Status::Existing, None));
            let line = street.line.iter().map(|vertex| vertex.point).collect();
            (
                if names_are_kept {
                    street.name.clone()
                } else {
                    String::new()
                },
                line,
            )
        })
        .collect();
    assert_eq!(found.len(), wanted.len());
    if !names_are_kept {
        for (name, _) in &mut wanted {
            name.clear();
        }
        for streets in [&mut wanted, &mut found] {
            // By middle of the ends to a centimeter and by length: a millimeter does not change their order often.
            streets.sort_by_key(|(_, line)| {
                let ends = [line[0], line[line.len() - 1]];
                (
                    line.len(),
                    (ends[0].x_mm + ends[1].x_mm) / 1_000,
                    (ends[0].y_mm + ends[1].y_mm) / 1_000,
                )
            });
        }
    }
    let is_near = |a: &[PlanPoint], b: &[PlanPoint]| {
        let far = |(a, b): (&PlanPoint, &PlanPoint)| (a.x_mm - b.x_mm).abs().max((a.y_mm - b.y_mm).abs());
        a.len() == b.len() && a.iter().zip(b).all(|pair| far(pair) <= off_mm)
    };
    for (name, line) in &wanted {
        let same = found
            .iter()
            .position(|(held, points)| held == name && is_near(points, line));
        // Each is found once: two streets of the same points are two.
        drop(found.swap_remove(same.unwrap_or_else(|| panic!("{name} {line:?}"))));
    }
}

#[test]
fn openstreetmap_becomes_existing_streets_as_they_are() {
    for name in [
        "readers/network/streets.osm.gz",
        "readers/network/streets.osm.pbf",
        SOURCE,
    ] {
        let mut app = placed_app();
        let base = read(name, Options::default());
        let choices = wide(&base, &app);
        assert!(app.take_base(&base, &choices), "{:?}", app.notice());
        check_streets(&streets(&app), 0, true);
        let faults = validate(app.study().document());
        let unusable = faults
            .iter()
            .filter(|fault| fault.kind.severity() == Severity::CannotBeUsed);
        assert_eq!(unusable.count(), 0, "{faults:?}");
        assert_eq!(
            app.study()
                .document()
                .heading
                .about
                .contains("OpenStreetMap contributors"),
            name != SOURCE
        );
    }
}

#[test]
fn shapefiles_and_drawings_become_the_same_streets_to_a_millimeter() {
    let mut app = placed_app();
    let base = read("readers/network/streets.zip", Options::default());
    let choices = wide(&base, &app);
    assert!(app.take_base(&base, &choices), "{:?}", app.notice());
    check_streets(&streets(&app), 1, true);

    let mut app = placed_app();
    let options = Options {
        system: Some("EPSG:3067".to_owned()),
        ..Options::default()
    };
    let mut base = read("readers/network/streets.dxf.gz", options);
    let choices = wide(&base, &app);
    assert!(
        !app.take_base(&base, &choices),
        "a drawing's layers have no meaning by themselves"
    );
    assert_eq!(app.notice(), Some(say!("bases-nothing-chosen")));
    for class in &mut base.classes {
        class.becomes = Becomes::Street(StreetSectionId(2), StreetRole::NeighborhoodStreet);
    }
    assert!(app.take_base(&base, &choices), "{:?}", app.notice());
    check_streets(&streets(&app), 1, false);
}

#[test]
fn taking_is_one_step_and_taking_again_adds_nothing() {
    let mut app = placed_app();
    let before = app.study().document().clone();
    let base = read("readers/network/streets.osm.pbf", Options::default());
    let choices = wide(&base, &app);
    assert!(app.take_base(&base, &choices));
    let after = app.study().document().clone();
    assert_eq!(app.study().history().undo_label(), Some(say!("bases-step")));
    assert!(!app.take_base(&base, &choices));
    let count = streets(&app).len();
    assert_eq!(app.notice(), Some(say!("bases-all-known", count = count).as_str()));
    assert_eq!(*app.study().document(), after);
    app.undo();
    assert_eq!(*app.study().document(), before);
    app.redo();
    assert_eq!(*app.study().document(), after);
}

#[test]
fn a_plan_without_a_place_gets_the_middle_of_the_base_and_one_with_a_place_stays() {
    let base = read("readers/network/streets.osm.pbf", Options::default());
    let mut app = App::new().unwrap();
    let choices = Choices::first(&base, app.study().document());
    assert!(app.take_base(&base, &choices), "{:?}", app.notice());
    let origin = app.study().document().heading.geographic_origin();
    assert_eq!(origin, choices.origin);
    let (longitude, latitude) = origin.to_deg();
    assert!((longitude - ORIGIN_DEG.0).abs() < 0.02 && (latitude - ORIGIN_DEG.1).abs() < 0.02);

    let before = app.study().document().clone();
    let moved = Choices {
        origin: GeographicPoint::checked_from_deg(25.0, 60.0).unwrap(),
        ..choices
    };
    assert!(!app.take_base(&base, &moved));
    assert_eq!(app.notice(), Some(say!("bases-placed")));
    assert_eq!(*app.study().document(), before);
}

#[test]
fn a_base_of_another_place_is_refused_and_nothing_is_lost() {
    let elsewhere = GeographicPoint::checked_from_deg(-71.5, 42.25).unwrap();
    let mut app = App::open(Document::new("Test", elsewhere)).unwrap();
    let before = app.study().document().clone();
    let base = read("readers/network/streets.osm.pbf", Options::default());
    let choices = wide(&base, &app);
    assert!(!app.take_base(&base, &choices));
    let count = base.features.len();
    assert_eq!(app.notice(), Some(say!("bases-nothing-within", count = count).as_str()));
    for extent in [
        Extent::Around { radius_m: f64::NAN },
        Extent::Around { radius_m: -1.0 },
        Extent::Site { margin_m: 100.0 },
    ] {
        assert!(!app.take_base(
            &base,
            &Choices {
                extent,
                ..choices.clone()
            }
        ));
    }
    assert_eq!(app.notice(), Some(say!("bases-no-site")));
    assert_eq!(*app.study().document(), before);
}

/// A square site of 200 m about the origin, which lies at longitude 10, latitude 0: a thousandth of a degree is some 111 m.
pub(super) fn with_site() -> App {
    let mut document = Document::new("Test", GeographicPoint::checked_from_deg(10.0, 0.0).unwrap());
    let corner = |x: i32, y: i32| PlanPoint::new(x * 100_000, y * 100_000);
    document.site.boundary = vec![corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)];
    App::open(document).unwrap()
}

pub(super) fn collection(features: &str) -> Vec<u8> {
    format!(r#"{{ "type": "FeatureCollection", "features": [{features}] }}"#).into_bytes()
}

pub(super) fn feature(tags: &str, kind: &str, coordinates: &str) -> String {
    format!(
        r#"{{ "type": "Feature", "properties": {{ {tags} }}, "geometry": {{ "type": "{kind}", "coordinates": {coordinates} }} }}"#
    )
}

#[test]
fn each_kind_becomes_its_mark_clipped_to_the_site_and_its_margin() {
    let square = |west: f64| {
        let east = west + 0.0002;
        format!("[[[{west}, 0], [{east}, 0], [{east}, 0.0002], [{west}, 0.0002], [{west}, 0]]]")
    };
    let features = [
        feature(
            r#""highway": "primary", "bridge": "yes", "name": "Mill Road""#,
            "LineString",
            "[[9.9, 0], [10.1, 0]]",
        ),
        feature(
            r#""highway": "footway""#,
            "LineString",
            "[[10.0015, -0.1], [10.0015, 0.1]]",
        ),
        feature(r#""shop": "bakery""#, "Point", "[10.0001, 0.0001]"),
        feature(r#""natural": "water""#, "Polygon", &square(10.0)),
        feature(
            r#""building": "yes", "building:flats": "12""#,
            "Polygon",
            &square(10.001),
        ),
        feature(r#""building": "yes""#, "Polygon", &square(10.0003)),
        feature(r#""building": "yes""#, "Polygon", &square(10.01)),
        feature(r#""railway": "rail""#, "LineString", "[[10, -0.0005], [10, 0.0005]]"),
    ];
    let base = handed_over("a.geojson", collection(&features.join(",")), Options::default());
    let mut app = with_site();
    let choices = Choices::first(&base, app.study().document());
    let edits = base.edits(app.study().document(), app.study().alternative(), &choices);
    let (_, taken) = edits.unwrap();
    assert_eq!((taken.marks, taken.beyond), ([2, 1, 1, 1, 2, 0, 0, 0], 1));
    assert!(app.take_base(&base, &choices));
    let marks = marks(&app);
    let [mill, foot] = [&marks[0], &marks[1]].map(|mark| mark.as_street().unwrap());
    let ends = |street: &Street| [street.line[0].point, street.line[street.line.len() - 1].point];
    assert_eq!(ends(mill).map(|point| point.x_mm), [-300_000, 300_000]);
    assert_eq!(
        (mill.level, mill.is_outside, mill.name.as_str()),
        (1, false, "Mill Road")
    );
    assert_eq!(
        (mill.section, mill.role),
        (StreetSectionId(10), StreetRole::Thoroughfare)
    );
    assert!(foot.is_outside && foot.role == StreetRole::Path);
    assert!(matches!(&marks[2], Mark::Place(place) if matches!(place.footprint, Footprint::Point(_))));
    assert!(matches!(&marks[3], Mark::Constraint(water) if !water.is_walkable && !water.is_buildable));
    assert!(
        matches!(&marks[4], Mark::Outside(outside) if outside.homes == 12),
        "{:?}",
        marks[4]
    );
    assert!(matches!(&marks[5], Mark::Constraint(kept) if kept.is_walkable));
    assert!(matches!(&marks[6], Mark::Barrier(_)));
}

#[test]
fn a_class_can_be_given_another_meaning_and_a_layer_left_out() {
    let lot = feature(
        r#""lot": "14""#,
        "Polygon",
        "[[[10, 0], [10.0004, 0], [10.0004, 0.0004], [10, 0]], [[10.0002, 0.0001], [10.0003, 0.0001], [10.0003, 0.0002], [10.0002, 0.0001]]]",
    );
    let mut base = handed_over("lots.geojson", collection(&lot), Options::default());
    assert_eq!((base.classes.len(), base.classes[0].becomes), (1, Becomes::Nothing));
    base.classes[0].becomes = Becomes::Parcel(OwnerGroup::Unknown);
    let mut app = with_site();
    let mut choices = Choices::first(&base, app.study().document());
    choices.layers[0] = false;
    assert!(!app.take_base(&base, &choices));
    choices.layers[0] = true;
    assert!(app.take_base(&base, &choices));
    let marks = marks(&app);
    assert!(matches!(&marks[0], Mark::Parcel(lot) if lot.label == "14" && lot.outline.len() == 3));
    assert!(
        app.notice()
            .is_some_and(|words| words.contains(&say!("bases-left-holes", count = 1))),
        "{:?}",
        app.notice()
    );
    base.classes[0].becomes = Becomes::Barrier;
    assert!(!app.take_base(&base, &choices), "an outline is no barrier");
}

#[test]
fn texts_of_a_drawing_become_notes_and_rows_of_a_table_places() {
    let mut app = App::new().unwrap();
    let mut base = read("readers/drawing/splines_and_texts.dxf", Options::default());
    for class in base.classes.iter_mut().filter(|class| class.tag == "kind=TEXT") {
        assert_eq!(class.becomes, Becomes::Nothing, "texts are left out unless chosen");
        class.becomes = Becomes::Note;
    }
    let choices = Choices::first(&base, app.study().document());
    let (_, taken) = base
        .edits(app.study().document(), app.study().alternative(), &choices)
        .unwrap();
    assert_eq!(taken.marks, [0, 0, 0, 0, 0, 0, 5, 0]);
    assert_eq!(
        taken.by_kind(),
        [["5".to_owned(), say!("bases-kind", kind = "notes", count = 5)]]
    );
    assert!(app.take_base(&base, &choices), "{:?}", app.notice());
    let texts: Vec<String> = marks(&app)
        .iter()
        .filter_map(|mark| mark.as_note().map(|note| note.text.clone()))
        .collect();
    assert!(texts.contains(&"Mill Road 45°".to_owned()), "{texts:?}");
    assert!(!app.take_base(&base, &choices), "the plan has them");

    let rows = "name,category,lon,lat\nMill School,school,10,0\nPond,pond,10.001,0\n,pond,10.002,0\n";
    let mut base = handed_over("a.csv", rows.as_bytes().to_vec(), Options::default());
    assert_eq!(base.classes.len(), 2);
    assert!(matches!(base.classes[0].becomes, Becomes::Place(_)));
    base.classes[1].becomes = Becomes::Note;
    let app = App::new().unwrap();
    let choices = wide(&base, &app);
    let (_, taken) = base
        .edits(app.study().document(), app.study().alternative(), &choices)
        .unwrap();
    assert_eq!(
        (taken.marks[1], taken.marks[6], taken.unfitting),
        (1, 1, 1),
        "a note has words"
    );
}

#[test]
fn a_drawing_without_a_place_is_laid_scaled_and_turned() {
    let mut base = read("readers/network/streets.dxf.gz", Options::default());
    for class in &mut base.classes {
        class.becomes = Becomes::Street(StreetSectionId(2), StreetRole::NeighborhoodStreet);
    }
    let lengths_m = |choices: &Choices| {
        let mut app = App::new().unwrap();
        assert!(app.take_base(&base, choices), "{:?}", app.notice());
        let origin = app.study().document().heading.geographic_origin();
        assert_eq!(
            (origin.longitude_ndeg, origin.latitude_ndeg),
            (0, 0),
            "a drawing places no plan"
        );
        let length = |street: &Street| {
            let pairs = street.line.windows(2);
            pairs
                .map(|pair| pair[0].point.distance_um(pair[1].point) as f64 / 1e6)
                .sum::<f64>()
        };
        streets(&app).iter().map(length).sum::<f64>()
    };
    let app = App::new().unwrap();
    let choices = wide(&base, &app);
    let whole = lengths_m(&choices);
    let turned = lengths_m(&Choices {
        turn_deg: 30.0,
        ..choices.clone()
    });
    assert!((turned / whole - 1.0).abs() < 1e-4, "{turned} {whole}");
    let in_feet = lengths_m(&Choices {
        unit_m: 0.3048,
        zero: PlanPoint::new(0, 0),
        ..choices.clone()
    });
    assert!((in_feet / whole - 0.3048).abs() < 1e-4, "{in_feet} {whole}");
    let mut app = App::new().unwrap();
    for unit_m in [0.0, -1.0, f64::NAN] {
        assert!(!app.take_base(
            &base,
            &Choices {
                unit_m,
                ..choices.clone()
            }
        ));
        assert_eq!(app.notice(), Some(say!("bases-no-unit")));
    }
}

#[test]
fn a_piece_that_does_not_fit_is_refused() {
    let mut base = Base::new("a", Coordinates::Degrees);
    let one = "building=yes\u{1f}\u{1e}";
    for (shapes, positions, words) in [
        (&[0_u32, 5, 0, 0, 1, 0, 2, 1, 1][..], &[0.0; 6][..], one),
        (&[0, 5, 0, 0, 1, 0, 1, 1, 9], &[0.0; 4], one),
        (&[0, 5, 0, 0, 1, 0, 7, 1, 1], &[0.0; 2], one),
        (&[0, 5, 0, 0, 1, 0, 0, 1], &[0.0; 4], one),
        (&[0, 5, 0, 0, 1, 0, 0, 1, 0], &[0.0; 2], one),
        (&[0, 5, 0, 0, 9, 0, 0, 1], &[0.0; 2], one),
        (&[0, 5, 0, 0, 1, 200, 0, 1], &[0.0; 2], one),
        (&[0, 0, 1], &[0.0; 2], one),
        (&[0, 5, 0, 0, 1, 0, 0, 1], &[0.0; 2], "building=yes\u{1e}"),
        (&[0, 5, 0, 0, 1, 0, 0, u32::MAX], &[0.0; 2], one),
    ] {
        assert_eq!(base.add_piece(shapes, positions, words), Err(Unfitting), "{shapes:?}");
    }
    assert_eq!(base.add_piece(&[0, 5, 0, 0, 1, 0, 0, 1], &[1.0, 2.0], one), Ok(()));
}
