//! Counts of traffic and zones in each format: what is said of a feature, its kind, and what is said of the file.

use std::io::Cursor;

use hobnail_readers::base::Suggestion::{self, Note, Unknown};
use hobnail_readers::base::{Base, ConstraintKind, PlaceKind};
use hobnail_readers::fault::What;
use hobnail_readers::options::Options;
use hobnail_readers::output::MOST_ZONES;
use hobnail_readers::pieces::{BEHIND, BETWEEN, Pieces};
use shapefile::dbase::{FieldName, FieldValue, Record, TableWriterBuilder};
use shapefile::{Point, ShapeWriter};

use super::small::zipped;

/// Kind, suggestion and words of each feature: those of the one as the page gets them.
fn handed_over(base: Base) -> Vec<(String, Suggestion, String)> {
    let features = base.layers.iter().flat_map(|layer| &layer.features);
    let suggested: Vec<Suggestion> = features.map(|feature| feature.suggested.clone()).collect();
    let words: String = Pieces::new(base).map(|piece| piece.words).collect();
    let said = words.split_terminator(BEHIND).map(|feature| {
        let mut said = feature.split(BETWEEN).map(str::to_owned);
        [(); 2].map(|()| said.next().unwrap_or_default())
    });
    let found = said
        .zip(suggested)
        .map(|([kind, words], suggested)| (kind, suggested, words));
    found.collect()
}

fn read(name: &str, bytes: Vec<u8>) -> (Vec<(String, Suggestion, String)>, Vec<What>) {
    let base = hobnail_readers::read(name, bytes, Options::default()).unwrap_or_else(|faults| panic!("{faults:?}"));
    let said = base.faults.iter().map(|fault| fault.what.clone()).collect();
    (handed_over(base), said)
}

#[track_caller]
fn check(name: &str, bytes: Vec<u8>, features: &[(&str, Suggestion, &str)], said: &[What]) {
    let (found, faults) = read(name, bytes);
    let own = |(kind, suggested, words): &(&str, Suggestion, &str)| {
        ((*kind).to_owned(), suggested.clone(), (*words).to_owned())
    };
    assert_eq!(found, features.iter().map(own).collect::<Vec<_>>());
    assert_eq!(faults, said);
}

fn counts(columns: &str) -> What {
    let columns = columns.to_owned();
    What::TrafficCounts { columns }
}

fn zones(columns: &str) -> What {
    let columns = columns.to_owned();
    What::Zones { columns }
}

#[test]
fn counts_at_points_and_along_lines_are_a_kind_of_their_own() {
    let of_file = super::bytes("readers/small/counts.geojson");
    let features = [
        ("AADT", Note, "Mill Road: AADT 4300 (2022)"),
        ("AADT", Note, "Weir Lane: AADT 650 (2019)"),
        ("AADT", Note, "AADT 2150 (2022)"),
        ("", Unknown, ""),
    ];
    check("a.geojson", of_file, &features, &[counts("AADT_2019, AADT_2022")]);

    let rows = "name,Type,lon,lat,AADT,year,Adtest\n\
        Mill School,School,10,0,12,2020,\nWeir Lane,counter,10.001,0,5400,2021,1\n,counter,10.002,0,,2021,1\n";
    let place = PlaceKind::School;
    let school = Suggestion::Place { place };
    let features = [
        ("Type=School", school, "Mill School: AADT 12 (2020)"),
        ("AADT", Note, "Weir Lane: AADT 5400 (2021)"),
        ("Type=counter", Unknown, ""),
    ];
    check("t.csv", rows.as_bytes().to_vec(), &features, &[counts("AADT")]);
}

#[test]
fn what_is_a_street_by_its_other_columns_stays_one_and_can_still_be_a_note() {
    let text = r#"{ "type": "Feature", "properties": { "highway": "path", "name": "Mill Walk", "adt": 40 },
        "geometry": { "type": "LineString", "coordinates": [[10, 0], [10.001, 0]] } }"#;
    let (found, said) = read("a.geojson", text.as_bytes().to_vec());
    let (kind, suggested, words) = &found[0];
    assert_eq!([kind.as_str(), words], ["highway=path", "Mill Walk: adt 40"]);
    assert!(matches!(suggested, Suggestion::Street(_)), "{suggested:?}");
    assert_eq!(said, [counts("adt")]);
}

#[test]
fn counts_of_a_shapefile_have_its_short_names() {
    let name = |name| FieldName::try_from(name).unwrap();
    let (mut table, mut shapes) = (Cursor::new(Vec::new()), Cursor::new(Vec::new()));
    let columns = TableWriterBuilder::new()
        .add_character_field(name("ROAD_NAME"), 20)
        .add_numeric_field(name("AADT_21"), 10, 0)
        .add_numeric_field(name("AADT_23"), 10, 0);
    let mut writer = columns.build_with_dest(&mut table);
    for (road, older, newer) in [("Mill Road", 4100.0, Some(4300.0)), ("Weir Lane", 650.0, None)] {
        let mut record = Record::default();
        record.insert("ROAD_NAME".to_owned(), FieldValue::Character(Some(road.to_owned())));
        record.insert("AADT_21".to_owned(), FieldValue::Numeric(Some(older)));
        record.insert("AADT_23".to_owned(), FieldValue::Numeric(newer));
        writer.write_record(&record).unwrap();
    }
    writer.finalize().unwrap();
    drop(writer);
    let points = [Point::new(500_000.0, 4_500_000.0), Point::new(500_100.0, 4_500_000.0)];
    ShapeWriter::new(&mut shapes).write_shapes(&points.to_vec()).unwrap();
    let system = super::bytes("readers/small/utm.prj");
    let parts = [
        ("roads.shp", shapes.get_ref().as_slice()),
        ("roads.dbf", table.get_ref()),
        ("roads.prj", &system),
    ];
    let features = [
        ("AADT", Note, "Mill Road: AADT 4300 (2023)"),
        ("AADT", Note, "Weir Lane: AADT 650 (2021)"),
    ];
    check("roads.zip", zipped(&parts), &features, &[counts("AADT_21, AADT_23")]);
}

#[test]
fn each_zone_is_a_kind_and_parcels_are_told_apart_by_theirs_without_a_note() {
    let features = [
        ("ZONE_CODE=R-1", Note, "R-1"),
        ("ZONE_CODE=MU-2", Note, "MU-2"),
        ("ZONE_CODE=P", Note, "P"),
        ("ZONE_CODE=R-1", Note, "R-1"),
    ];
    let of_file = super::bytes("readers/small/zones.geojson");
    check("a.geojson", of_file, &features, &[zones("ZONE_CODE")]);

    let area = r#""geometry": { "type": "Polygon", "coordinates": [[[0, 0], [1, 0], [1, 1], [0, 0]]] }"#;
    let lot = [
        r#"{ "type": "Feature", "properties": { "APN": "7-12", "Land_Use": "Farm" }, "#,
        area,
        "}",
    ]
    .concat();
    let of_parcel = [("Land_Use=Farm", Unknown, "Farm")];
    check("a.geojson", lot.into_bytes(), &of_parcel, &[zones("Land_Use")]);

    // Water is water, whatever it is zoned as; and a point in a zone is none.
    let point = r#""geometry": { "type": "Point", "coordinates": [0, 0] }"#;
    let pond = [
        r#"{ "type": "Feature", "properties": { "natural": "water", "zone": "OS" }, "#,
        area,
        "}",
    ]
    .concat();
    let constraint = ConstraintKind::Water;
    let of_pond = [("natural=water", Suggestion::Constraint { constraint }, "OS")];
    check("a.geojson", pond.into_bytes(), &of_pond, &[zones("zone")]);
    let pump = [r#"{ "type": "Feature", "properties": { "zone": "OS" }, "#, point, "}"].concat();
    check("a.geojson", pump.into_bytes(), &[("", Unknown, "")], &[]);
}

#[test]
fn so_many_zones_are_told_apart_and_the_rest_is_one_kind() {
    let area = |code: usize| {
        format!(
            r#"{{ "type": "Feature", "properties": {{ "zoning": "Z{code}" }}, "geometry": {{ "type": "Polygon",
            "coordinates": [[[{code}, 0], [{code}.5, 0], [{code}, 0.5], [{code}, 0]]] }} }}"#
        )
    };
    let of = |count: usize| {
        let areas: Vec<String> = (0..count).map(area).collect();
        let text = format!(
            r#"{{ "type": "FeatureCollection", "features": [{}] }}"#,
            areas.join(",")
        );
        read("a.geojson", text.into_bytes())
    };
    let (found, said) = of(MOST_ZONES);
    assert!(found.iter().all(|(kind, ..)| kind.starts_with("zoning=Z")));
    assert_eq!(said, [zones("zoning")]);
    let (found, said) = of(MOST_ZONES + 20);
    let rest: Vec<_> = found.into_iter().filter(|(kind, ..)| kind == "zoning").collect();
    assert_eq!(rest.len(), 20);
    let first = ("zoning".to_owned(), Note, "Z100".to_owned());
    assert_eq!(rest[0], first, "each has its own code still");
    let limit = MOST_ZONES as u64;
    assert_eq!(said, [zones("zoning"), What::TooManyZones { limit }]);
}

#[test]
fn openstreetmap_has_no_such_columns() {
    let text = r#"<osm><node id="1" lat="0" lon="10"/><node id="2" lat="0" lon="10.001"/>
        <way id="3"><nd ref="1"/><nd ref="2"/><tag k="highway" v="path"/><tag k="adt" v="7"/></way></osm>"#;
    let base = hobnail_readers::read("a.osm", text.as_bytes().to_vec(), Options::default()).unwrap();
    assert!(matches!(base.layers[0].features[0].suggested, Suggestion::Street(_)));
    assert_eq!(base.layers[0].features[0].noted, None);
    assert_eq!(base.faults, []);
}
