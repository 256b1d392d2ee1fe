//! Street networks measured as a whole, against answers worked out outside this project with general-purpose libraries:
//! which library gave which number is in `tests/fixtures/streets/README.md`.

use std::fs;

use hobnail_core::report::network_report::{Coordinates, NetworkReport, NetworkRequest, network_report};
use serde_json::{Map, Value};

use super::street_cases::number;

fn folder(case: &str) -> String {
    format!("{}/../tests/fixtures/streets/{case}", env!("CARGO_MANIFEST_DIR"))
}

fn read(case: &str, file: &str) -> Vec<u8> {
    let path = format!("{}/{file}", folder(case));
    fs::read(&path).expect(&path)
}

fn json(case: &str, file: &str) -> Value {
    serde_json::from_slice(&read(case, file)).expect(file)
}

/// Measures a case as its parameters say.
fn measured(case: &str) -> NetworkReport {
    let params = json(case, "params.json");
    let within_m: Vec<f64> = params["radii"].as_array().expect("radii").iter().map(number).collect();
    let coordinates = match params["local_origin"].as_array() {
        Some(origin) => Coordinates::Degrees {
            about: Some([number(&origin[0]), number(&origin[1])]),
        },
        None => Coordinates::Meters,
    };
    let (streets, points) = (read(case, "streets.geojson"), read(case, "points.geojson"));
    let request = NetworkRequest {
        streets: &streets,
        points: Some(&points),
        coordinates,
        tolerance_m: number(&params["tolerance_m"]),
        within_m: &within_m,
    };
    network_report(&request).expect("a network")
}

/// How near answers must come.
struct Near {
    /// Any length, in meters.
    length_m: f64,
    /// Any number, of its size.
    relative: f64,
}

/// What counts in plain arrangements: distances within 5 mm; sums within 1e-6 and the millimeter the drawing is rounded
/// to, along the perimeter for areas.
const NEAR: Near = Near {
    length_m: 0.005,
    relative: 1e-6,
};

/// Where ends are joined the drawing itself moves by up to the gap (README of the cases: 2e-3).
const JOINED: Near = Near {
    length_m: 0.6,
    relative: 2e-3,
};

/// Compares what the answer has with what is expected, and lists every difference.
struct Comparison {
    near: Near,
    /// A length no perimeter in the case exceeds, in meters.
    longest_perimeter_m: f64,
    compared: usize,
    differences: Vec<String>,
}

impl Comparison {
    fn value(&mut self, expected: &Value, answer: &Value, path: &str) {
        match (expected, answer) {
            (Value::Object(expected), Value::Object(answer)) => self.object(expected, answer, path),
            (Value::Array(expected), Value::Array(answer)) => self.list(expected, answer, path),
            (Value::Number(a), Value::Number(b)) => {
                self.compared += 1;
                let (a_whole, b_whole) = (a.as_u64(), b.as_u64());
                if a_whole.is_some() && b_whole.is_some() {
                    self.check(a_whole == b_whole, expected, answer, path);
                } else {
                    let allowed = self.allowed(number(expected), path);
                    self.check(
                        (number(expected) - number(answer)).abs() <= allowed,
                        expected,
                        answer,
                        path,
                    );
                }
            }
            _ => {
                self.compared += 1;
                self.check(expected == answer, expected, answer, path);
            }
        }
    }

    fn check(&mut self, agrees: bool, expected: &Value, answer: &Value, path: &str) {
        if !agrees {
            self.differences
                .push(format!("{path}: expected {expected}, got {answer}"));
        }
    }

    /// How far a number may be off, by the last part of its path.
    fn allowed(&self, expected: f64, path: &str) -> f64 {
        let relative = self.near.relative * expected.abs();
        let name = path.rsplit(['/', ']']).find(|part| !part.is_empty()).unwrap_or(path);
        if name.starts_with("buffer") {
            return expected * 1e-4_f64.max(self.near.relative);
        }
        if name.contains("area") && !path.contains("place_area_by_use") {
            return relative + 0.001 * self.longest_perimeter_m;
        }
        if path.starts_with("/betweenness") && (name == "sum" || name == "max" || name == "value") {
            return 1e-9 * expected.abs();
        }
        match name {
            // Both distances may be off by the length; samples are 40 m away at least.
            "prd" | "prd_mean" => 2.0 * self.near.length_m / 40.0 * expected.max(1.0),
            "dwellings_share" => 1e-9,
            "total_length" | "reached_length" | "outer_perimeter_sum" | "hole_perimeter_sum" => {
                relative + 4.0 * self.near.length_m
            }
            _ if path.contains("place_area_by_use") => 1e-6 * expected.abs(),
            _ if path.contains("density") || path.contains("ratio") => (relative * 20.0).max(1e-9),
            _ => relative + self.near.length_m,
        }
    }

    fn object(&mut self, expected: &Map<String, Value>, answer: &Map<String, Value>, path: &str) {
        for (key, value) in answer {
            match expected.get(key) {
                Some(expected) => self.value(expected, value, &format!("{path}/{key}")),
                None => self.differences.push(format!("{path}/{key}: not expected")),
            }
        }
    }

    fn list(&mut self, expected: &[Value], answer: &[Value], path: &str) {
        if path == "/betweenness/top" {
            self.links(expected, answer, path);
        } else if expected.first().is_some_and(|first| first["id"].is_string()) {
            let ids = |list: &[Value]| -> Vec<String> { list.iter().map(|item| item["id"].to_string()).collect() };
            let (mut a, mut b) = (ids(expected), ids(answer));
            a.sort();
            b.sort();
            self.check(a == b, &a.into(), &b.into(), path);
            for item in answer {
                let same = expected.iter().find(|other| other["id"] == item["id"]);
                self.value(same.unwrap_or(&Value::Null), item, &format!("{path}[{}]", item["id"]));
            }
        } else {
            self.check(
                expected.len() == answer.len(),
                &expected.len().into(),
                &answer.len().into(),
                path,
            );
            for (index, (expected, answer)) in expected.iter().zip(answer).enumerate() {
                self.value(expected, answer, &format!("{path}[{index}]"));
            }
        }
    }

    /// The links with most betweenness: the same values in order; each link told found by its middle and length.
    fn links(&mut self, expected: &[Value], answer: &[Value], path: &str) {
        self.check(
            expected.len() == answer.len(),
            &expected.len().into(),
            &answer.len().into(),
            path,
        );
        for (expected, answer) in expected.iter().zip(answer) {
            self.value(&expected["value"], &answer["value"], &format!("{path}/value"));
        }
        let lowest = expected.last().map_or(0.0, |last| number(&last["value"]));
        for link in answer {
            let near = |other: &&Value| {
                let apart = |axis: usize| (number(&other["mid"][axis]) - number(&link["mid"][axis])).abs();
                let size = (number(&other["length"]) - number(&link["length"])).abs();
                apart(0).max(apart(1)) <= 0.5 && size <= self.near.length_m.max(self.near.relative * 1e3)
            };
            match expected.iter().find(near) {
                Some(same) => self.value(&same["value"], &link["value"], &format!("{path}{}/value", link["mid"])),
                // Of several links with the lowest value listed, either list may show another.
                None if number(&link["value"]) <= lowest => {}
                None => self
                    .differences
                    .push(format!("{path}: {} is not expected", link["mid"])),
            }
        }
    }
}

#[track_caller]
fn check(case: &str, near: Near, at_least: usize) {
    let report = measured(case);
    let expected = json(case, "expected.json");
    let answer = serde_json::from_str(&report.to_json()).expect("JSON");
    let mut comparison = Comparison {
        near,
        longest_perimeter_m: number(&expected["arrangement"]["outer_perimeter_sum"]),
        compared: 0,
        differences: Vec::new(),
    };
    comparison.value(&expected, &answer, "");
    let Comparison {
        compared, differences, ..
    } = comparison;
    assert!(differences.is_empty(), "{case}:\n{}", differences.join("\n"));
    assert!(compared >= at_least, "{case}: only {compared} numbers were compared");
}

#[test]
fn d1_grid_jittered() {
    check("d1_grid", NEAR, 300);
}

#[test]
fn d2_crossers_split_at_their_crossings() {
    check("d2_crossers", NEAR, 300);
}

#[test]
fn d3_gaps_joined_within_half_a_meter() {
    check("d3_gaps", JOINED, 300);
    let report = measured("d3_gaps");
    assert!(!report.notes.is_empty(), "every join is told");
    assert!(
        report.notes.iter().all(|note| note.text.contains("joined")),
        "{:?}",
        report.notes
    );
}

#[test]
fn d4_holes_and_loops() {
    check("d4_holes_loops", NEAR, 300);
}

#[test]
fn dr_helsinki_real_streets() {
    check("dr_helsinki", NEAR, 500);
    assert!(measured("dr_helsinki").notes.is_empty());
}

/// The length reached from a place within a distance, on lines in meters.
fn reached_m(lines: &[Vec<[f64; 2]>], from: [f64; 2], within_m: f64) -> f64 {
    let streets = serde_json::json!({ "type": "MultiLineString", "coordinates": lines }).to_string();
    let points = serde_json::json!({ "type": "Point", "coordinates": from }).to_string();
    let request = NetworkRequest {
        streets: streets.as_bytes(),
        points: Some(points.as_bytes()),
        coordinates: Coordinates::Meters,
        tolerance_m: 0.0,
        within_m: &[within_m],
    };
    let report = network_report(&request).expect("a network");
    let walk = report.answer.walk.expect("a point was given");
    walk.origins[0].sheds.values().next().expect("a shed").reached_length
}

/// The walking cases of `analytic.json` (closed forms; handed out with the street cases, CC0-1.0).
#[test]
fn closed_forms_of_reached_length() {
    let expected: Value = serde_json::from_str(include_str!("../fixtures/streets/analytic.json")).expect("JSON");
    let expected = |name: &str| {
        let cases = expected["cases"].as_array().expect("cases");
        let case = cases
            .iter()
            .find(|case| case["name"].as_str().is_some_and(|found| found.starts_with(name)));
        number(&case.expect(name)["expected"])
    };
    let check = |name: &str, lines: &[Vec<[f64; 2]>], from: [f64; 2], within_m: f64| {
        let reached = reached_m(lines, from, within_m);
        assert!((reached - expected(name)).abs() <= 1e-6, "{name}: {reached}");
    };
    let lattice: Vec<Vec<[f64; 2]>> = (0..21)
        .map(|line| f64::from(line) * 50.0)
        .flat_map(|at| [vec![[at, 0.0], [at, 1_000.0]], vec![[0.0, at], [1_000.0, at]]])
        .collect();
    check("lattice 21x21", &lattice, [500.0, 500.0], 200.0);
    check(
        "lattice spacing 50 m, origin mid-block",
        &lattice,
        [525.0, 500.0],
        200.0,
    );
    check(
        "straight street 1000 m",
        &[vec![[0.0, 0.0], [1_000.0, 0.0]]],
        [300.0, 0.0],
        400.0,
    );
    let star: Vec<Vec<[f64; 2]>> = [(250.0, 0.0), (150.0, 200.0), (-150.0, 200.0), (-250.0, 0.0)]
        .into_iter()
        .chain([(-150.0, -200.0), (150.0, -200.0), (0.0, 250.0)])
        .map(|(x, y)| vec![[0.0, 0.0], [x, y]])
        .collect();
    check("star of 7 arms of 250 m", &star, [50.0, 0.0], 200.0);
    let ring = [vec![[0.0, 0.0], [100.0, 0.0], [100.0, 100.0], [0.0, 100.0], [0.0, 0.0]]];
    check(
        "square ring 4 x 100 m, origin mid-side, D=150",
        &ring,
        [50.0, 0.0],
        150.0,
    );
    check(
        "square ring 4 x 100 m, origin mid-side, D=250",
        &ring,
        [50.0, 0.0],
        250.0,
    );
}
