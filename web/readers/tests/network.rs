//! The network of `tests/fixtures/streets/dr_helsinki` as others write it (`tests/fixtures/readers/README.md`) comes
//! back as it is: to the last digit from formats that keep degrees, to a millimeter from those that are projected.

use hobnail_readers::base::{Base, Coordinates, Format, Geometry, Position, Suggestion};
use hobnail_readers::options::Options;
use hobnail_readers::{Progress, Reader};
use serde_json::Value;

use super::{bytes, read, text};

const SOURCE: &str = "streets/dr_helsinki/streets.geojson";

/// The plan's origin in `dr_helsinki/params.json`.
const ORIGIN_DEG: Position = [24.9452, 60.1708];

/// Name, class and line of each street, read without any reader of ours.
fn streets() -> Vec<(String, String, Vec<Position>)> {
    let source: Value = serde_json::from_str(&text(SOURCE)).unwrap();
    let features = source["features"].as_array().unwrap();
    let street = |feature: &Value| {
        let tag = |name: &str| feature["properties"][name].as_str().unwrap_or_default().to_owned();
        let line = feature["geometry"]["coordinates"].as_array().unwrap();
        let position = |point: &Value| [point[0].as_f64().unwrap(), point[1].as_f64().unwrap()];
        (tag("name"), tag("highway"), line.iter().map(position).collect())
    };
    features.iter().map(street).collect()
}

fn tag<'a>(tags: &'a [(String, String)], name: &str) -> &'a str {
    tags.iter().find(|(key, _)| key == name).map_or("", |(_, value)| value)
}

fn the_line(geometry: &Geometry) -> &[Position] {
    match geometry {
        Geometry::Lines(lines) if lines.len() == 1 => &lines[0],
        other => panic!("not one line: {other:?}"),
    }
}

/// Every street of a layer is that of the source, in its order.
#[track_caller]
fn check_degrees(base: &Base, format: Format, layer: &str) {
    assert_eq!(base.faults, []);
    assert_eq!((base.format, base.coordinates), (format, Coordinates::Degrees));
    let found = &base.layers[0];
    assert_eq!((base.layers.len(), found.name.as_str()), (1, layer));
    let expected = streets();
    assert_eq!(found.features.len(), expected.len());
    for (feature, (name, class, line)) in found.features.iter().zip(&expected) {
        assert_eq!(
            (tag(&feature.tags, "name"), tag(&feature.tags, "highway")),
            (name.as_str(), class.as_str())
        );
        let Suggestion::Street(street) = &feature.suggested else {
            panic!("{name} is no street");
        };
        assert_eq!((street.name.as_str(), street.status), (name.as_str(), "existing"));
        for (point, wanted) in the_line(&feature.geometry).iter().zip(line) {
            // What both have is a number of seven decimals.
            let is_same = (0..2).all(|axis| (point[axis] - wanted[axis]).abs() < 1e-10);
            assert!(is_same, "{name}: {point:?} is not {wanted:?}");
        }
        assert_eq!(the_line(&feature.geometry).len(), line.len(), "{name}");
    }
}

/// A line is the other to a millimeter at each point.
#[track_caller]
fn check_mm(found: &Geometry, expected: &Geometry, what: &str) {
    let (found, expected) = (the_line(found), the_line(expected));
    assert_eq!(found.len(), expected.len(), "{what}");
    for (point, wanted) in found.iter().zip(expected) {
        let is_near = (0..2).all(|axis| (point[axis] - wanted[axis]).abs() <= 1.0);
        assert!(is_near, "{what}: {point:?} is not {wanted:?}");
    }
}

fn on_plan() -> Options {
    Options {
        origin_deg: Some(ORIGIN_DEG),
        ..Options::default()
    }
}

#[test]
fn geojson_comes_back_to_the_last_digit() {
    check_degrees(&read(SOURCE, Options::default()), Format::GeoJson, "features");
}

#[test]
fn openstreetmap_xml_comes_back_to_the_last_digit() {
    let base = read("readers/network/streets.osm.gz", Options::default());
    assert!(base.attribution.contains("OpenStreetMap"));
    check_degrees(&base, Format::OsmXml, "streets");
}

#[test]
fn openstreetmap_pbf_comes_back_to_the_last_digit() {
    let base = read("readers/network/streets.osm.pbf", Options::default());
    assert!(base.attribution.contains("OpenStreetMap"));
    check_degrees(&base, Format::OsmPbf, "streets");
    let plain = read("readers/network/plain.osm.pbf", Options::default());
    assert_eq!(plain.layers[0].features, base.layers[0].features[..12]);
}

#[test]
fn shapefiles_of_a_projected_system_come_back_to_a_millimeter() {
    let wanted = read(SOURCE, on_plan());
    let found = read("readers/network/streets.zip", on_plan());
    assert_eq!(found.faults, []);
    assert_eq!(found.coordinates, Coordinates::PlanMillimeters);
    let [layer] = found.layers.as_slice() else {
        panic!("{:?}", found.layers.len())
    };
    assert_eq!(
        (layer.name.as_str(), layer.features.len()),
        ("streets", wanted.layers[0].features.len())
    );
    for (feature, wanted) in layer.features.iter().zip(&wanted.layers[0].features) {
        let name = tag(&wanted.tags, "name");
        assert_eq!(tag(&feature.tags, "name"), name);
        assert_eq!(feature.suggested, wanted.suggested);
        check_mm(&feature.geometry, &wanted.geometry, name);
    }
}

#[test]
fn a_drawing_of_a_chosen_system_comes_back_to_a_millimeter() {
    let wanted = read(SOURCE, on_plan());
    let options = Options {
        system: Some("EPSG:3067".to_owned()),
        ..on_plan()
    };
    let found = read("readers/network/streets.dxf.gz", options);
    assert_eq!((found.format, found.faults.as_slice()), (Format::Dxf, [].as_slice()));
    let mut count = 0;
    for layer in &found.layers {
        let of_layer = wanted.layers[0].features.iter();
        let of_layer = of_layer.filter(|feature| tag(&feature.tags, "highway") == layer.name);
        for (feature, wanted) in layer.features.iter().zip(of_layer) {
            check_mm(&feature.geometry, &wanted.geometry, &layer.name);
            count += 1;
        }
    }
    assert_eq!(count, wanted.layers[0].features.len());
}

#[test]
fn a_drawing_without_a_place_keeps_its_lengths() {
    let wanted = read(SOURCE, on_plan());
    let found = read("readers/network/streets.dxf.gz", Options::default());
    let Coordinates::DrawingMillimeters { east, unit_m, .. } = found.coordinates else {
        panic!("{:?}", found.coordinates);
    };
    assert!((380_000.0..390_000.0).contains(&east) && unit_m == 1.0);
    let length_mm = |base: &Base| -> f64 {
        let features = base.layers.iter().flat_map(|layer| &layer.features);
        let length = |line: &[Position]| -> f64 {
            line.windows(2)
                .map(|pair| (pair[1][0] - pair[0][0]).hypot(pair[1][1] - pair[0][1]))
                .sum()
        };
        features.map(|feature| length(the_line(&feature.geometry))).sum()
    };
    let (found, wanted) = (length_mm(&found), length_mm(&wanted));
    // The scale of ETRS-TM35FIN is 0.9996 on its meridian, 0.99976 here.
    assert!((found / wanted - 0.99976).abs() < 5e-5, "{found} {wanted}");
}

#[test]
fn a_box_cuts_the_same_of_every_format() {
    let options = || Options {
        box_deg: Some([24.940, 60.168, 24.946, 60.171]),
        margin_m: 20.0,
        origin_deg: Some(ORIGIN_DEG),
        ..Options::default()
    };
    let whole = read(SOURCE, on_plan()).layers[0].features.len();
    let cut = read(SOURCE, options());
    let count = cut.layers[0].features.len();
    assert!((20..whole / 2).contains(&count), "{count} of {whole}");
    for name in ["streets.osm.gz", "streets.osm.pbf", "streets.zip"] {
        let found = read(&format!("readers/network/{name}"), options());
        for feature in &found.layers[0].features {
            // The box is some 330 m by 330 m, its middle 120 m from the origin.
            let Geometry::Lines(lines) = &feature.geometry else {
                panic!("a street is a line")
            };
            assert!(
                lines
                    .iter()
                    .flatten()
                    .all(|point| point[0].abs() < 340_000.0 && point[1].abs() < 340_000.0)
            );
        }
        let found = found.layers[0].features.len();
        if name.ends_with("zip") {
            assert_eq!(found, count);
        } else {
            // A way is seen by its nodes: one that only crosses the box is not.
            assert!(found <= count && found + 12 >= count, "{name}: {found} of {count}");
        }
    }
}

#[test]
fn steps_give_what_one_reading_gives_and_only_go_forward() {
    let name = "readers/network/streets.osm.pbf";
    let mut reader = Reader::new(name, bytes(name), Options::default()).unwrap_or_else(|faults| panic!("{faults:?}"));
    let (mut last, mut steps) = (0.0, 0);
    while let Progress::Working(share) = reader.step() {
        assert!((last..=1.0).contains(&share), "{share} after {last}");
        last = share;
        steps += 1;
    }
    assert!(steps > 5, "{steps}");
    let base = reader.finish().unwrap_or_else(|faults| panic!("{faults:?}"));
    assert_eq!(base.layers, read(name, Options::default()).layers);
}
