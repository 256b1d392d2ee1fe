use super::*;
use crate::exchange::fault::{FileFaultKind, FileSeverity};
use crate::plan::PlanPoint;
use crate::plan::ids::AlternativeId;
use crate::plan::land::{Footprint, OwnerGroup, Parcel, Place, PlaceKind};
use crate::plan::mark::Mark;
use crate::plan::projection::GeographicPoint;
use crate::plan::street::{Status, Street, StreetOwner, StreetRole, Tie, Vertex};

const ALTERNATIVE: AlternativeId = AlternativeId(0);

fn points(points: &[(i32, i32)]) -> Vec<PlanPoint> {
    points.iter().map(|&(x, y)| PlanPoint::new(x, y)).collect()
}

fn plan(marks: Vec<Mark>) -> Document {
    let origin = GeographicPoint {
        longitude_ndeg: -71_500_000_000,
        latitude_ndeg: 42_250_000_001,
    };
    let mut document = Document::new("Test", origin);
    let held = &mut document.alternatives.get_mut(&ALTERNATIVE).unwrap().marks;
    held.extend((0..).map(MarkId).zip(marks));
    document
}

fn street(line: &[(i32, i32)]) -> Street {
    Street {
        line: points(line).into_iter().map(Vertex::at).collect(),
        section: crate::plan::defaults::NEIGHBORHOOD_STREET,
        name: "Mill \"Lane\"".to_owned(),
        role: StreetRole::Lane,
        owner: StreetOwner::Private,
        status: Status::New,
        is_outside: true,
        level: -1,
        phase: None,
    }
}

fn parcel(outline: &[(i32, i32)]) -> Mark {
    Mark::Parcel(Parcel {
        label: String::new(),
        outline: points(outline),
        owner: OwnerGroup::Willing,
        beside: None,
    })
}

#[track_caller]
fn check_round_trip(document: &Document) {
    let text = write(document).unwrap();
    let opened = read(text.as_bytes()).unwrap();
    assert_eq!(opened.faults, []);
    assert_eq!(opened.document, *document);
    assert_eq!(write(&opened.document).unwrap(), text);
}

/// The file of `document` with `from` replaced by `to`, opened.
#[track_caller]
fn open_changed(document: &Document, changes: &[(&str, &str)]) -> Opened {
    let mut text = write(document).unwrap();
    for (from, to) in changes {
        assert!(text.contains(from), "{from} is not in the file:\n{text}");
        text = text.replacen(from, to, 1);
    }
    read(text.as_bytes()).unwrap()
}

fn sentences(opened: &Opened) -> Vec<String> {
    opened.faults.iter().map(ToString::to_string).collect()
}

#[test]
fn a_feature_reads_well() {
    let mut body = street(&[(0, 0), (100_000, 0), (100_000, -50_000)]);
    body.line[1].corner_radius_mm = 12_000;
    body.line[2].tie = Some(Tie {
        street: MarkId(7),
        segment: 1,
        along_ppb: 5,
    });
    let text = write(&plan(vec![Mark::Street(body)])).unwrap();
    // Positions as pyproj 3.7.2 (PROJ 9.5.1) gives them.
    let feature = text.lines().find(|line| line.contains("\"kind\":\"street\"")).unwrap();
    assert_eq!(
        feature,
        r#"{"type":"Feature","id":0,"geometry":{"type":"LineString","coordinates":[[-71.500000000,42.250000001],[-71.498788256,42.249999995],[-71.498788265,42.249549861]]},"properties":{"kind":"street","alternative":0,"name":"Mill \"Lane\"","section":2,"role":"lane","owner":"private","status":"new","outside":true,"level":-1,"corners":[[1,12000]],"ties":[[2,7,1,5]]}}"#
    );
}

#[test]
fn unfinished_and_clockwise_outlines_come_back() {
    for outline in [
        &[][..],
        &[(1, 2)],
        &[(1, 2), (3, 4)],
        &[(1, 2), (1, 2)],
        &[(0, 0), (10, 0), (10, 10)],
        &[(0, 0), (10, 10), (10, 0)],
        &[(0, 0), (10, 10), (10, 0), (0, 0)],
        &[(0, 0), (0, 0), (0, 0)],
    ] {
        check_round_trip(&plan(vec![parcel(outline)]));
        let mut sited = plan(Vec::new());
        sited.site.boundary = points(outline);
        check_round_trip(&sited);
    }
    let clockwise = write(&plan(vec![parcel(&[(0, 0), (0, 9000), (9000, 0)])])).unwrap();
    assert!(clockwise.contains("\"clockwise\":true"));
}

#[test]
fn unfinished_lines_and_footprints_come_back() {
    for line in [&[][..], &[(1, 2)], &[(1, 2), (3, 4), (3, 4)]] {
        check_round_trip(&plan(vec![Mark::Street(street(line))]));
        for footprint in [Footprint::Line(points(line)), Footprint::Area(points(line))] {
            check_round_trip(&plan(vec![Mark::Place(Place {
                name: String::new(),
                kind: PlaceKind::Center,
                footprint,
                minimum_size_m2: 0,
                certainty: crate::plan::Certainty::HopedFor,
                phase: None,
            })]));
        }
    }
}

#[test]
fn a_newer_version_is_refused_in_a_sentence() {
    let text = write(&plan(Vec::new()))
        .unwrap()
        .replacen("\"version\": 1", "\"version\": 2", 1);
    let refusal = read(text.as_bytes()).unwrap_err();
    assert_eq!(refusal, Refusal::NewerVersion(2));
    assert!(refusal.to_string().contains("version 2"));
    for version in ["0", "\"1\"", "null", "1.5"] {
        let text = text.replacen("\"version\": 2", &format!("\"version\": {version}"), 1);
        assert_eq!(read(text.as_bytes()), Err(Refusal::NoVersion), "{version}");
    }
}

#[test]
fn files_that_are_none_are_refused() {
    let refusal = |text: &str| read(text.as_bytes()).unwrap_err();
    assert!(matches!(refusal(""), Refusal::Json(_)));
    assert!(matches!(refusal("{\"type\":"), Refusal::Json(_)));
    assert_eq!(refusal("[]"), Refusal::NotGeoJson);
    assert_eq!(refusal("{}"), Refusal::NotGeoJson);
    assert_eq!(
        refusal(r#"{"type":"FeatureCollection","features":7}"#),
        Refusal::NotGeoJson
    );
    assert_eq!(
        refusal(r#"{"type":"FeatureCollection","features":[]}"#),
        Refusal::NoPositions
    );
    assert_eq!(
        refusal(r#"{"type":"LineString","coordinates":[[500000,4500000],[500100,4500000]]}"#),
        Refusal::NotDegrees
    );
    assert!(matches!(
        refusal(r#"{"type":"Point","coordinates":[0,89.5]}"#),
        Refusal::Origin(_)
    ));
    assert_eq!(
        refusal(r#"{"type":"FeatureCollection","features":[],"hobnail":{"version":1}}"#),
        Refusal::NoPositions
    );
}

#[test]
fn every_fault_is_told_with_its_place() {
    let document = plan(vec![
        Mark::Street(street(&[(0, 0), (9_000, 0)])),
        parcel(&[(0, 0), (9, 0), (9, 9)]),
    ]);
    let opened = open_changed(
        &document,
        &[
            ("\"role\":\"lane\"", "\"role\":\"canal\",\"color\":3,\"section\":-4"),
            ("\"owner\":\"private\"", "\"owner\":null"),
            ("\"kind\":\"parcel\"", "\"kind\":\"orchard\""),
            ("\"target_speed_km_h\":32", "\"target_speed_km_h\":99999999999"),
        ],
    );
    assert_eq!(
        sentences(&opened),
        [
            "/hobnail/street_sections/0/target_speed_km_h: expected a whole number from 0 to 65535, found 99999999999",
            "feature 0 (id 0), /features/0/properties: section stands here twice; the first was used",
            "feature 0 (id 0), /features/0/properties/role: expected one of thoroughfare neighborhood_street lane \
             alley path, found text \"canal\"",
            "feature 0 (id 0), /features/0/properties/owner: expected one of state town private, found null",
            "feature 0 (id 0), /features/0/properties: color is not known and was left out",
            "feature 1 (id 1), /features/1/properties: features of kind orchard are not known; this one was left out",
        ]
    );
    assert!(
        opened
            .faults
            .iter()
            .all(|fault| fault.severity() == FileSeverity::LeftOut)
    );
    assert!(opened.document.alternatives[&ALTERNATIVE].marks.is_empty());
    assert_eq!(
        opened.document.street_sections.len(),
        document.street_sections.len() - 1
    );
}

#[test]
fn geometry_that_does_not_suit_is_told() {
    let document = plan(vec![Mark::Street(street(&[(0, 0), (9_000, 0)]))]);
    let line = write(&document).unwrap();
    let start = line.find("{\"type\":\"LineString\"").unwrap();
    let end = start + line[start..].find('}').unwrap() + 1;
    let geometry = &line[start..end];
    let kinds = |replacement: &str| -> Vec<FileFaultKind> {
        let opened = open_changed(&document, &[(geometry, replacement)]);
        assert_eq!(opened.document.alternatives[&ALTERNATIVE].marks.len(), 0);
        opened.faults.into_iter().map(|fault| fault.kind).collect()
    };
    let polygon = r#"{"type":"Polygon","coordinates":[[[-71.5,42.2],[-71.5,42.3],[-71.4,42.2],[-71.5,42.2]]]}"#;
    assert_eq!(
        kinds(polygon),
        [FileFaultKind::UnsuitableGeometry {
            expected: "a line",
            found: "a polygon"
        }]
    );
    assert_eq!(
        kinds(r#"{"type":"LineString","coordinates":[[0,0],[1,1]]}"#),
        [FileFaultKind::BeyondPlan]
    );
    assert_eq!(
        kinds(r#"{"type":"LineString","coordinates":[[1e300,0],[1,1]]}"#),
        [FileFaultKind::NotAPosition]
    );
    assert_eq!(kinds(r#"{"type":"LineString","coordinates":[[0,"a"],7]}"#).len(), 2);
    assert_eq!(kinds(r#"{"type":"Spline"}"#).len(), 1);
    // One part in a geometry of several is that part.
    let wrapped = geometry
        .replace("LineString", "MultiLineString")
        .replace("[[", "[[[")
        .replace("]]", "]]]");
    let opened = open_changed(&document, &[(geometry, &wrapped)]);
    assert_eq!((opened.faults.len(), opened.document), (0, document));
}

#[test]
fn missing_and_repeated_ids_are_replaced_and_told() {
    let one = || Mark::Street(street(&[(0, 0), (9_000, 0)]));
    let document = plan(vec![one(), one(), one()]);
    let opened = open_changed(
        &document,
        &[
            ("\"id\":1,\"geometry\"", "\"id\":0,\"geometry\""),
            ("\"id\":2,\"geometry\"", "\"id\":\"x\",\"geometry\""),
        ],
    );
    let kinds: Vec<_> = opened.faults.iter().map(|fault| fault.kind.clone()).collect();
    assert_eq!(
        kinds,
        [FileFaultKind::IdReplaced(MarkId(1)), FileFaultKind::IdGiven(MarkId(2))]
    );
    assert_eq!(opened.document, document);
}

#[test]
fn alternatives_and_origin_are_mended_and_told() {
    let document = plan(vec![Mark::Street(street(&[(-9_000, 0), (9_000, 0)]))]);
    let opened = open_changed(
        &document,
        &[("\"alternative\":0", "\"alternative\":5"), ("42.250000001]", "95]")],
    );
    assert_eq!(
        sentences(&opened),
        [
            "/hobnail/heading/origin: not a longitude and latitude in degrees; the feature was left out",
            "/hobnail/heading: the plan's origin is not usable; the middle of the drawing was taken",
            "feature 0 (id 0), /features/0: alternative 5 was not listed; it was added",
        ]
    );
    assert_eq!(opened.document.heading.origin_latitude_ndeg, 42_250_000_000);
    assert_eq!(opened.document.alternatives[&AlternativeId(5)].name, "Alternative 6");
}

#[test]
fn ties_that_can_not_be_kept_are_let_go_and_told() {
    let mut first = street(&[(0, 0), (9_000, 0)]);
    let mut second = first.clone();
    first.line[0].tie = Some(Tie {
        street: MarkId(1),
        segment: 0,
        along_ppb: 0,
    });
    second.line[0].tie = Some(Tie {
        street: MarkId(0),
        segment: 0,
        along_ppb: 0,
    });
    let document = plan(vec![Mark::Street(first), Mark::Street(second)]);
    let opened = read(write(&document).unwrap().as_bytes()).unwrap();
    assert_eq!(
        sentences(&opened),
        ["feature 1 (id 1), /features/1: vertex 0 was let go of street 0: it closed a circle of ties"]
    );
    assert_eq!(opened.faults[0].severity(), FileSeverity::Mended);
}

#[test]
fn any_geojson_opens() {
    let text = r#"{"type": "FeatureCollection", "name": "Brook End", "features": [
        {"type": "Feature", "properties": {"name": "Brook Road"},
         "geometry": {"type": "LineString", "coordinates": [[10.0, 50.0, 7], [10.002, 50.0, 7]]}},
        {"type": "Feature", "properties": {"name": "Site of the mill"}, "id": "s",
         "geometry": {"type": "Polygon", "coordinates": [[[10,50],[10.001,50],[10.001,50.001],[10,50]], [[10,50]]]}},
        {"type": "Feature", "properties": {"name": "Lot 4"},
         "geometry": {"type": "MultiPolygon", "coordinates": [
            [[[10,50],[10.001,50],[10.001,50.001],[10,50]]], [[[10,50],[10.002,50],[10.001,50.001],[10,50]]]]}},
        {"type": "Feature", "properties": null, "geometry": {"type": "Point", "coordinates": [10, 50.002]}},
        {"type": "Feature", "properties": null, "geometry": {"type": "Point", "coordinates": [10]}},
        {"type": "Feature", "properties": null, "geometry": null}
    ]}"#;
    let opened = read(text.as_bytes()).unwrap();
    assert_eq!(opened.document.heading.name, "Brook End");
    assert_eq!(opened.document.heading.origin_longitude_ndeg, 10_001_000_000);
    assert_eq!(opened.document.site.boundary.len(), 3);
    let became: Vec<Became> = opened.done.iter().map(|done| done.became).collect();
    let ids: Vec<MarkId> = (0..4).map(MarkId).collect();
    assert_eq!(
        became,
        [
            Became::Street(ids[0]),
            Became::Site,
            Became::Parcel(ids[1]),
            Became::Parcel(ids[2]),
            Became::Note(ids[3])
        ]
    );
    assert_eq!(
        plain::summary(&opened.done),
        [
            "1 line became an existing street",
            "1 polygon became the site's boundary",
            "2 polygons became parcels",
            "1 point became a note"
        ]
    );
    let kinds: Vec<_> = sentences(&opened);
    assert_eq!(
        kinds,
        [
            "feature 4, /features/4/geometry/coordinates: expected a position of two numbers, found a list",
            "top of the file: heights of positions were left out",
            "feature 1 (id s), /features/1: holes of polygons were left out",
        ]
    );
    let first = opened
        .document
        .mark(ALTERNATIVE, MarkId(0))
        .unwrap()
        .as_street()
        .unwrap();
    assert_eq!((first.name.as_str(), first.status), ("Brook Road", Status::Existing));
    check_round_trip(&opened.document);
}

#[test]
fn the_only_polygon_is_the_site_and_the_date_line_does_not_tear_data_apart() {
    let text = r#"{"type":"Polygon","coordinates":[[[179.999,0],[-179.999,0],[-179.999,0.001],[179.999,0]]]}"#;
    let opened = read(text.as_bytes()).unwrap();
    assert_eq!(
        opened.done,
        [Done {
            feature: 0,
            became: Became::Site
        }]
    );
    assert_eq!(opened.document.heading.origin_longitude_ndeg, 180_000_000_000);
    assert!(
        opened
            .document
            .site
            .boundary
            .iter()
            .all(|point| point.x_mm.abs() < 200_000)
    );
    check_round_trip(&opened.document);
}
