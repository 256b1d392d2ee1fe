use super::*;

fn faults(text: &str) -> Vec<String> {
    let reading = read_lines(text.as_bytes()).expect("GeoJSON");
    reading.faults.iter().map(ReadFault::to_string).collect()
}

#[test]
fn every_root_and_both_kinds_of_line_are_read() {
    let lines = |text: &str| read_lines(text.as_bytes()).expect("GeoJSON").items.len();
    assert_eq!(lines(r#"{"type":"LineString","coordinates":[[0,0],[1,1,99]]}"#), 1);
    assert_eq!(
        lines(r#"{"type":"MultiLineString","coordinates":[[[0,0],[1,1]],[[2,2],[3,3]]]}"#),
        2
    );
    let geometry = r#"{"type":"LineString","coordinates":[[0,0],[1,1]]}"#;
    assert_eq!(lines(&format!(r#"{{"type":"Feature","geometry":{geometry}}}"#)), 1);
    let collection = format!(r#"{{"type":"GeometryCollection","geometries":[{geometry},{geometry}]}}"#);
    assert_eq!(lines(&collection), 2);
    let feature = format!(r#"{{"type":"Feature","geometry":{collection}}}"#);
    assert_eq!(
        lines(&format!(
            r#"{{"type":"FeatureCollection","features":[{feature},{feature}]}}"#
        )),
        4
    );
    assert_eq!(lines("\u{feff}{\"type\":\"FeatureCollection\",\"features\":[]}"), 0);
}

#[test]
fn every_fault_is_told_with_its_feature_and_place() {
    let told = faults(
        r#"{"type":"FeatureCollection","crs":{"type":"name","properties":{"name":"EPSG:3067"}},"features":[
            {"type":"Feature","id":"high st","geometry":{"type":"LineString","coordinates":[[0,0],["x",1],[2],null]}},
            {"type":"Feature","properties":{"name":"pond"},"geometry":{"type":"Polygon","coordinates":[]}},
            {"type":"Feature","properties":{"id":7},"geometry":null},
            {"type":"Feature","geometry":{"type":"MultiLineString","coordinates":[[[0,0]],5,[[0,0],[true,1]]]}},
            {"type":"Feature","geometry":{"type":"LineString","coordinates":{"a":1}}},
            {"type":"Feature","geometry":[1]},
            {"type":"Street"}, 12,
            {"type":"Feature","geometry":{"type":"GeometryCollection","geometries":[3]}},
            {"type":"Feature","geometry":{"coordinates":[[0,0],[1,1]]}}
        ]}"#,
    );
    let expected = [
        "names the coordinate system EPSG:3067, which is not looked at",
        "feature 0 (high st): coordinates[1] is not two numbers, its line left out",
        "feature 0 (high st): coordinates[2] is not two numbers, its line left out",
        "feature 0 (high st): coordinates[3] is not two numbers, its line left out",
        "feature 1 (pond): is a Polygon, not a LineString or MultiLineString, left out",
        "feature 2 (7): has no geometry, left out",
        "feature 3: coordinates[0] has fewer than two positions, left out",
        "feature 3: coordinates[1] is not a list of positions, left out",
        "feature 3: coordinates[2][1] is not two numbers, its line left out",
        "feature 4: coordinates is not a list of positions, left out",
        "feature 5: is a geometry without a type, not a LineString, left out",
        "feature 6: not a feature, left out",
        "feature 7: not a feature, left out",
        "feature 8: has no geometry, left out",
        "feature 9: is a geometry without a type, not a LineString or MultiLineString, left out",
    ];
    assert_eq!(told, expected);
}

#[test]
fn what_is_not_geojson_is_refused_with_its_place() {
    let refusal = |bytes: &[u8]| read_lines(bytes).expect_err("refused").to_string();
    assert_eq!(
        refusal(b"{\n  \"type\": oops}"),
        "the file is not JSON: in line 2, column 11 something can not be read: “\"type\": oops}”"
    );
    assert_eq!(
        refusal(b""),
        "the file is not JSON to its end: it breaks off in line 1, column 0"
    );
    assert!(refusal(b"[[1e999,0]]").contains("“[[1e999,0]]”"));
    assert!(refusal(b"{\"type\":\"\xff\"}").contains("not JSON"));
    for text in [
        "5",
        "[]",
        "{}",
        r#"{"type":"Topology"}"#,
        r#"{"type":"FeatureCollection","features":3}"#,
    ] {
        assert_eq!(read_lines(text.as_bytes()), Err(Unreadable::NotGeoJson), "{text}");
    }
    let deep = "[".repeat(100_000);
    assert!(refusal(deep.as_bytes()).contains("“[[[[["));
}

#[test]
fn points_come_with_their_properties() {
    let text = r#"{"type":"FeatureCollection","features":[
        {"type":"Feature","properties":{"role":"origin","id":"o0"},"geometry":{"type":"Point","coordinates":[1,2]}},
        {"type":"Feature","geometry":{"type":"Point","coordinates":[1]}},
        {"type":"Feature","geometry":{"type":"LineString","coordinates":[[1,2],[3,4]]}}]}"#;
    let reading = read_points(text.as_bytes()).expect("GeoJSON");
    assert_eq!(reading.items.len(), 1);
    assert_eq!(reading.items[0].position.map(|part| part as i64), [1, 2]);
    let role = reading.items[0].properties.member("role");
    assert_eq!(role.and_then(Json::as_text), Some("origin"));
    let told: Vec<String> = reading.faults.iter().map(ReadFault::to_string).collect();
    let expected = [
        "feature 1: coordinates is not two numbers, its place left out",
        "feature 2: is a LineString, not a Point, left out",
    ];
    assert_eq!(told, expected);
}

/// Any bytes: random ones, and good files with some bytes changed, cut or doubled.
#[test]
fn no_bytes_stop_the_reader() {
    let mut state = 5_u64;
    let mut below = |bound: usize| {
        state = state
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (state >> 33) as usize % bound
    };
    let good = br#"{"type":"FeatureCollection","features":[{"type":"Feature","id":1,"properties":{"role":"place"},
        "geometry":{"type":"MultiLineString","coordinates":[[[0.5,-1e3],[1,1]],[[2,2],[3,3]]]}}]}"#;
    for _ in 0..20_000 {
        let mut bytes = good.to_vec();
        for _ in 0..=below(4) {
            let at = below(bytes.len());
            match below(3) {
                0 => bytes[at] = below(256) as u8,
                1 => bytes.truncate(at + 1),
                _ => bytes.insert(at, bytes[below(bytes.len())]),
            }
        }
        let lines = read_lines(&bytes);
        let points = read_points(&bytes);
        assert_eq!(lines.is_ok(), points.is_ok());
        for line in lines.into_iter().flat_map(|reading| reading.items) {
            assert!(line.positions.len() >= 2);
        }
    }
}
