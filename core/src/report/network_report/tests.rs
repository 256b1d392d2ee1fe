use super::*;

fn request(streets: &str) -> NetworkRequest<'_> {
    NetworkRequest {
        streets: streets.as_bytes(),
        points: None,
        coordinates: Coordinates::Meters,
        tolerance_m: 0.0,
        within_m: &[],
    }
}

fn texts(notes: &[Note]) -> Vec<&str> {
    notes.iter().map(|note| note.text.as_str()).collect()
}

#[test]
fn requests_that_can_not_be_met_are_refused_in_words() {
    let street = r#"{"type":"LineString","coordinates":[[0,0],[1,1]]}"#;
    let refusal = |request: &NetworkRequest<'_>| network_report(request).expect_err("refused").to_string();
    let mut asked = request(street);
    for tolerance_m in [-1.0, 11.0, f64::NAN] {
        asked.tolerance_m = tolerance_m;
        assert!(refusal(&asked).contains("is not between 0 and 10 m"), "{tolerance_m}");
    }
    for within_m in [0.0, -5.0, f64::INFINITY, f64::NAN] {
        let list = [400.0, within_m];
        let asked = NetworkRequest {
            within_m: &list,
            ..request(street)
        };
        assert!(refusal(&asked).starts_with("a walk of "), "{within_m}");
    }
    for about in [[0.0, 90.0], [181.0, 0.0], [f64::NAN, 0.0]] {
        let asked = NetworkRequest {
            coordinates: Coordinates::Degrees { about: Some(about) },
            ..request(street)
        };
        assert!(refusal(&asked).contains("is not a longitude and latitude"), "{about:?}");
    }
    assert_eq!(
        refusal(&request("{}")),
        "not GeoJSON: no FeatureCollection with a list of features, Feature or geometry"
    );
    let asked = NetworkRequest {
        points: Some(b"["),
        ..request(street)
    };
    assert!(matches!(
        network_report(&asked),
        Err(Refusal::Unreadable {
            file: InputFile::Points,
            ..
        })
    ));
}

#[test]
fn a_file_without_a_street_says_why_for_every_feature() {
    let text = r#"{"type":"FeatureCollection","features":[
        {"type":"Feature","id":"pond","geometry":{"type":"Point","coordinates":[1,2]}},
        {"type":"Feature","geometry":{"type":"LineString","coordinates":[[5,5],[5,5]]}},
        {"type":"Feature","geometry":{"type":"LineString","coordinates":[[0,0],[1e300,1]]}}]}"#;
    let Err(Refusal::NoStreets { notes }) = network_report(&request(text)) else {
        panic!("there is no street");
    };
    assert_eq!(notes.len(), 3, "{notes:?}");
    assert!(notes[0].text.starts_with("feature 0 (pond): is a Point"));
}

#[test]
fn a_national_grid_is_measured_where_it_lies() {
    let text = r#"{"type":"LineString","coordinates":[[500000.5,6700000],[500030.5,6700040]]}"#;
    let report = network_report(&request(text)).expect("a street");
    assert!((report.answer.arrangement.total_length - 50.0).abs() < 1e-9);
    let link = &report.answer.betweenness.expect("small").top[0];
    assert!((link.mid[0] - 500_015.5).abs() < 1e-6 && (link.mid[1] - 6_700_020.0).abs() < 1e-6);
}

#[test]
fn degrees_are_measured_on_the_ground() {
    // A degree of latitude about the equator is 110,574 m on WGS84 (handbook value; NIMA TR8350.2).
    let text = r#"{"type":"LineString","coordinates":[[10,-0.005],[10,0.005]]}"#;
    let asked = NetworkRequest {
        coordinates: Coordinates::Degrees { about: None },
        ..request(text)
    };
    let report = network_report(&asked).expect("a street");
    assert!((report.answer.arrangement.total_length - 1_105.74).abs() < 0.01);
    assert_eq!(
        report.center_deg.map(|center| center.map(|part| part.round() as i32)),
        Some([10, 0])
    );
}

#[test]
fn streets_across_the_180th_meridian_lie_together() {
    let text = r#"{"type":"LineString","coordinates":[[179.999,-17],[-179.999,-17]]}"#;
    let asked = NetworkRequest {
        coordinates: Coordinates::Degrees { about: None },
        ..request(text)
    };
    let report = network_report(&asked).expect("a street");
    let length = report.answer.arrangement.total_length;
    assert!((length - 213.0).abs() < 1.0, "{length}");
}

#[test]
fn points_that_lack_something_are_told_and_left_out() {
    let street = r#"{"type":"LineString","coordinates":[[0,0],[100,0]]}"#;
    let points = r#"{"type":"FeatureCollection","features":[
        {"type":"Feature","properties":{"id":"a"},"geometry":{"type":"Point","coordinates":[10,3]}},
        {"type":"Feature","properties":{"role":"dwelling","dwellings":2.5},"geometry":{"type":"Point","coordinates":[1,1]}},
        {"type":"Feature","properties":{"role":"dwelling","dwellings":4},"geometry":{"type":"Point","coordinates":[90,1]}},
        {"type":"Feature","properties":{"role":"place","use":"shop"},"geometry":{"type":"Point","coordinates":[1,1]}},
        {"type":"Feature","properties":{"role":"pond"},"geometry":{"type":"Point","coordinates":[1,1]}},
        {"type":"Feature","properties":{"role":"sample"},"geometry":{"type":"Point","coordinates":[1,9e9]}}]}"#;
    let asked = NetworkRequest {
        points: Some(points.as_bytes()),
        within_m: &[50.0, 80.5],
        ..request(street)
    };
    let report = network_report(&asked).expect("a street");
    let expected = [
        "feature 1: a dwelling without a whole number of dwellings, left out",
        "feature 3: a place without an area_m2 of zero or more, left out",
        "feature 4: its role pond is not origin, sample, dwelling or place, left out",
        "feature 5: 1, 9000000000 is more than 100 km away from the others, left out",
    ];
    assert_eq!(texts(&report.notes), expected);
    let walk = report.answer.walk.as_ref().expect("points were given");
    assert_eq!(walk.origins.len(), 1);
    assert_eq!(walk.origins[0].sheds["50"].dwellings_reached, Some(0));
    assert_eq!(walk.origins[0].sheds["80.5"].dwellings_reached, Some(4));
    let words = report.to_words();
    assert!(
        words.contains("From a (3.0 m beside the street): 2 nodes within reach, the farthest 90 m away."),
        "{words}"
    );
    assert!(
        words.contains("within   50 m  60 m of street, 0 dwellings (0 %)"),
        "{words}"
    );
}

#[test]
fn json_reads_back_as_the_same_numbers() {
    let text = r#"{"type":"LineString","coordinates":[[0,0],[0.1,0.7],[3,4]]}"#;
    let report = network_report(&request(text)).expect("a street");
    let json: serde_json::Value = serde_json::from_str(&report.to_json()).expect("JSON");
    let told = json["arrangement"]["total_length"].as_f64().map(f64::to_bits);
    assert_eq!(told, Some(report.answer.arrangement.total_length.to_bits()));
    assert!(json["walk"].is_null() && json["arrangement"]["link_node_ratio"].as_f64() == Some(0.5));
}
