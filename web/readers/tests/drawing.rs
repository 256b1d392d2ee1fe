//! Bends and blocks within blocks, against `ezdxf` (`tests/fixtures/readers/README.md`).

use hobnail_readers::base::{Base, Coordinates, Feature, Geometry, Position, Suggestion};
use hobnail_readers::options::Options;

use super::{read, text};

const FOOT_M: f64 = 0.3048;

fn drawing() -> Base {
    read("readers/drawing/bends_and_blocks.dxf", Options::default())
}

/// The features of a layer, with positions in the drawing's units.
fn layer(base: &Base, name: &str) -> Vec<Feature> {
    let Coordinates::DrawingMillimeters { east, north, unit_m } = base.coordinates else {
        panic!("{:?}", base.coordinates);
    };
    assert_eq!(unit_m, FOOT_M);
    let back = |point: &mut Position| {
        *point = [point[0] / 1000.0 / unit_m + east, point[1] / 1000.0 / unit_m + north];
    };
    let found = base.layers.iter().find(|layer| layer.name == name);
    let mut features = found.unwrap_or_else(|| panic!("no layer {name}")).features.clone();
    for feature in &mut features {
        match &mut feature.geometry {
            Geometry::Points(points) => points.iter_mut().for_each(back),
            Geometry::Lines(lines) => lines.iter_mut().flatten().for_each(back),
            Geometry::Areas(areas) => areas.iter_mut().flatten().flatten().for_each(back),
        }
    }
    features
}

fn points(feature: &Feature) -> Vec<Position> {
    match &feature.geometry {
        Geometry::Points(points) => points.clone(),
        Geometry::Lines(lines) => lines[0].clone(),
        Geometry::Areas(areas) => areas[0][0].clone(),
    }
}

/// Every point lies on the circle, and no chord is farther from it than 10 mm and what is rounded.
#[track_caller]
fn check_circle(points: &[Position], center: Position, radius: f64) {
    let away = |[x, y]: Position| (x - center[0]).hypot(y - center[1]);
    for point in points {
        assert!((away(*point) - radius).abs() < 0.005, "{point:?}");
    }
    for pair in points.windows(2) {
        let middle = [(pair[0][0] + pair[1][0]) / 2.0, (pair[0][1] + pair[1][1]) / 2.0];
        assert!((radius - away(middle)) * FOOT_M < 0.012, "{middle:?}");
    }
}

#[test]
fn bends_are_flattened_to_ten_millimeters() {
    let curb = layer(&drawing(), "curb");
    let of = |kind: &str| -> Vec<&Feature> {
        curb.iter()
            .filter(|feature| feature.tags.iter().any(|tag| tag.1 == kind))
            .collect()
    };
    check_circle(&points(of("CIRCLE")[0]), [300.0, 50.0], 25.0);
    assert!(matches!(of("CIRCLE")[0].geometry, Geometry::Areas(_)));
    let arc = points(of("ARC")[0]);
    check_circle(&arc, [200.0, 50.0], 30.0);
    let end = |degrees: f64| {
        [
            200.0 + 30.0 * degrees.to_radians().cos(),
            50.0 + 30.0 * degrees.to_radians().sin(),
        ]
    };
    for (found, wanted) in [(arc[0], end(20.0)), (arc[arc.len() - 1], end(200.0))] {
        assert!(
            (found[0] - wanted[0]).hypot(found[1] - wanted[1]) < 0.005,
            "{found:?} {wanted:?}"
        );
    }
    // A closed polyline with bulges 0.5 from (100, 0) to (100, 80): radius 80 (1 + 0.25) / (4 · 0.5) = 50, the center on
    // the left of the way, 30 from the chord.
    let closed = points(of("LWPOLYLINE")[0]);
    assert!(matches!(of("LWPOLYLINE")[0].geometry, Geometry::Areas(_)));
    let bent: Vec<Position> = closed.iter().copied().filter(|[x, _]| *x > 100.1).collect();
    check_circle(&bent, [70.0, 40.0], 50.0);
    assert!(
        bent.iter().any(|[x, _]| *x > 119.8),
        "the bend bulges to the right of the way"
    );
    // An ellipse: (x/a)² + (y/b)² is 1 about its center and axes.
    let (sine, cosine) = 10_f64.atan2(40.0).sin_cos();
    let long = 40_f64.hypot(10.0);
    for [x, y] in points(of("ELLIPSE")[0]) {
        let [x, y] = [x - 400.0, y - 50.0];
        let [along, across] = [(x * cosine + y * sine) / long, (y * cosine - x * sine) / (long * 0.5)];
        assert!((along.hypot(across) - 1.0).abs() < 1e-3);
    }
    assert_eq!(points(of("POLYLINE")[0]).len(), 3);
}

#[test]
fn blocks_are_put_where_ezdxf_puts_them() {
    let base = drawing();
    let mut found: Vec<[f64; 4]> = Vec::new();
    for name in ["furniture", "plan north"] {
        for feature in layer(&base, name) {
            let [from, to] = points(&feature)[..] else {
                panic!("a block's lines have two ends")
            };
            found.push([from[0], from[1], to[0], to[1]]);
        }
    }
    let expected: Vec<[f64; 4]> = serde_json::from_str(&text("readers/drawing/block_lines.json")).unwrap();
    assert_eq!(found.len(), expected.len());
    for wanted in &expected {
        let is_it = |one: &[f64; 4]| (0..4).all(|index| (one[index] - wanted[index]).abs() < 0.002);
        let place = found
            .iter()
            .position(is_it)
            .unwrap_or_else(|| panic!("{wanted:?} is not among {found:?}"));
        found.swap_remove(place);
    }
}

#[test]
fn heights_of_lines_are_kept_and_a_text_is_a_point_with_its_words() {
    let base = drawing();
    assert!(base.faults.is_empty(), "{:?}", base.faults);
    let words = &layer(&base, "text")[0];
    assert!(matches!(&words.geometry, Geometry::Points(points) if points.len() == 1));
    assert!(words.tags.contains(&("name".to_owned(), "a name".to_owned())));
    let contour = &layer(&base, "contours")[0];
    assert_eq!(contour.suggested, Suggestion::Contour);
    assert!(contour.tags.contains(&("elevation".to_owned(), "215.5".to_owned())));
}

#[test]
fn a_person_chooses_layers() {
    let options = Options {
        layers: Some(vec!["contours".to_owned()]),
        ..Options::default()
    };
    let base = read("readers/drawing/bends_and_blocks.dxf", options);
    let count = |name: &str| {
        base.layers
            .iter()
            .find(|layer| layer.name == name)
            .map(|layer| layer.features.len())
    };
    assert_eq!((count("contours"), count("curb")), (Some(1), Some(0)));
}
