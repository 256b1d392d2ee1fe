//! Splines and texts of a drawing, as text and in bytes, against `ezdxf` (`tests/fixtures/readers/README.md`).

use hobnail_readers::base::{Base, Coordinates, Format, Geometry, Position};
use hobnail_readers::fault::What;
use hobnail_readers::options::Options;
use serde::Deserialize;

use super::{bytes, read, refused, text};

const AS_TEXT: &str = "readers/drawing/splines_and_texts.dxf";
const IN_BYTES: &str = "readers/drawing/splines_and_texts_in_bytes.dxf";

/// What ezdxf gives: curves to 2 mm, words with their places.
#[derive(Deserialize)]
struct Answers {
    splines: Vec<Vec<Position>>,
    texts: Vec<(String, f64, f64)>,
}

fn answers() -> Answers {
    serde_json::from_str(&text("readers/drawing/splines_and_texts.json")).unwrap()
}

/// What features of a kind are, in the drawing's units, with their names.
fn of_kind(base: &Base, kind: &str) -> Vec<(String, Vec<Position>, bool)> {
    let Coordinates::DrawingMillimeters { east, north, unit_m } = base.coordinates else {
        panic!("{:?}", base.coordinates);
    };
    let back = |point: &Position| [point[0] / 1000.0 / unit_m + east, point[1] / 1000.0 / unit_m + north];
    let features = base.layers.iter().flat_map(|layer| &layer.features);
    let is_it = |tags: &[(String, String)]| tags.iter().any(|(name, value)| name == "kind" && value == kind);
    features
        .filter(|feature| is_it(&feature.tags))
        .map(|feature| {
            let name = feature.tags.iter().find(|(name, _)| name == "name");
            let (points, is_area) = match &feature.geometry {
                Geometry::Points(points) => (points, false),
                Geometry::Lines(lines) => (&lines[0], false),
                Geometry::Areas(areas) => (&areas[0][0], true),
            };
            let name = name.map_or(String::new(), |(_, name)| name.clone());
            (name, points.iter().map(back).collect(), is_area)
        })
        .collect()
}

/// How far a point is from a line.
fn away(point: Position, line: &[Position]) -> f64 {
    let from_chord = |pair: &[Position]| {
        let [right, up] = [pair[1][0] - pair[0][0], pair[1][1] - pair[0][1]];
        let [x, y] = [point[0] - pair[0][0], point[1] - pair[0][1]];
        let share = ((x * right + y * up) / (right * right + up * up)).clamp(0.0, 1.0);
        (x - share * right).hypot(y - share * up)
    };
    line.windows(2).map(from_chord).fold(f64::INFINITY, f64::min)
}

#[test]
fn splines_are_where_ezdxf_draws_them_to_ten_millimeters() {
    let base = read(AS_TEXT, Options::default());
    let found = of_kind(&base, "SPLINE");
    let expected = answers().splines;
    assert_eq!(found.len(), expected.len());
    assert_eq!(found.iter().filter(|(_, _, is_area)| *is_area).count(), 2);
    let faults: Vec<&What> = base.faults.iter().map(|fault| &fault.what).collect();
    assert!(faults.contains(&&What::FittedSplines { count: 3 }), "{faults:?}");
    for ((_, points, is_area), wanted) in found.iter().zip(&expected) {
        let mut line = points.clone();
        line.extend(is_area.then(|| points[0]));
        // Ten millimeters, two of the answer's own, one of rounding.
        for point in wanted {
            assert!(
                away(*point, &line) < 0.013,
                "{point:?} is {} m away",
                away(*point, &line)
            );
        }
        for point in &line {
            assert!(
                away(*point, wanted) < 0.003,
                "{point:?} is {} m away",
                away(*point, wanted)
            );
        }
        // As few points as ten millimeters need: those of the answer are five times as near.
        assert!(line.len() < wanted.len(), "{} {}", line.len(), wanted.len());
    }
}

#[test]
fn texts_are_points_with_the_words_that_ezdxf_reads() {
    let base = read(AS_TEXT, Options::default());
    let found = of_kind(&base, "TEXT");
    let mut expected = answers().texts;
    assert_eq!(found.len(), expected.len(), "{found:?}");
    for (words, points, _) in &found {
        let is_it = |(wanted, x, y): &(String, f64, f64)| {
            let is_cut = words.strip_suffix('…').is_some_and(|start| wanted.starts_with(start));
            let is_near = (points[0][0] - x).hypot(points[0][1] - y) < 0.001;
            is_near && (words == wanted || is_cut && wanted.len() > 256)
        };
        let place = expected.iter().position(is_it);
        expected.swap_remove(place.unwrap_or_else(|| panic!("{words} at {points:?} is not among {expected:?}")));
    }
}

#[test]
fn what_is_not_drawn_is_counted_by_its_kind() {
    let base = read(AS_TEXT, Options::default());
    let count = |wanted: &str| {
        let counts = base.faults.iter().filter_map(|fault| match &fault.what {
            What::NotRead { kind, count } if kind == wanted => Some(*count),
            _ => None,
        });
        counts.sum::<u64>()
    };
    // A solid, and what a block asks to be filled in; all splines are drawn.
    assert_eq!(["SPLINE", "SOLID", "ATTDEF"].map(count), [0, 1, 1], "{:?}", base.faults);
}

#[test]
fn a_drawing_in_bytes_is_the_same_drawing() {
    let (as_text, in_bytes) = (read(AS_TEXT, Options::default()), read(IN_BYTES, Options::default()));
    assert_eq!(in_bytes.format, Format::Dxf);
    assert_eq!(in_bytes.layers, as_text.layers);
    assert_eq!(in_bytes.coordinates, as_text.coordinates);
    let said = |base: &Base| -> Vec<What> { base.faults.iter().map(|fault| fault.what.clone()).collect() };
    assert_eq!(said(&in_bytes), said(&as_text));

    let whole = bytes(IN_BYTES);
    let faults = refused("cut.dxf", &whole[..40], Options::default());
    assert!(matches!(faults[0].what, What::Broken { .. }), "{faults:?}");
    for length in (22..whole.len()).step_by(97) {
        let _ = hobnail_readers::read("cut.dxf", whole[..length].to_vec(), Options::default());
    }
}
