//! `hobnail export` on every sample: valid by the standards, and every number one of the figures.

use std::path::{Path, PathBuf};
use std::process::{Command, Output};

use geo::{Area, LineString, MultiPolygon, Polygon, Validation, Winding};
use hobnail_core::exchange::json::{self, Json};
use hobnail_core::exchange::plan_file;
use hobnail_core::plan::projection::Projection;
use serde_json::Value;

pub const SAMPLES: [&str; 4] = [
    "blank-site",
    "compact-village",
    "conventional-subdivision",
    "repaired-strip",
];

pub fn sample(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("../sample-sketches/{name}.geojson"))
}

pub fn hobnail(arguments: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_hobnail"))
        .args(arguments)
        .output()
        .unwrap()
}

/// What the command prints of a sample.
pub fn exported(name: &str, options: &[&str]) -> String {
    let path = sample(name);
    let run = hobnail(&[&["export", path.to_str().unwrap()], options].concat());
    let said = String::from_utf8_lossy(&run.stderr).into_owned();
    assert_eq!(run.status.code(), Some(0), "{name} {options:?}: {said}");
    String::from_utf8(run.stdout).unwrap()
}

/// The figures as `measure` prints them.
fn measured(name: &str) -> Value {
    let path = sample(name);
    let run = hobnail(&["measure", path.to_str().unwrap(), "--json"]);
    exactly(json::parse(&run.stdout).unwrap())
}

/// The same value with its numbers to the last place, which `serde_json` reads to the last but one or two.
fn exactly(json: Json) -> Value {
    match json {
        Json::Null => Value::Null,
        Json::Bool(value) => value.into(),
        Json::Integer(value) => value.into(),
        Json::Number(value) => value.into(),
        Json::Text(value) => value.into(),
        Json::List(values) => values.into_iter().map(exactly).collect(),
        Json::Members(members) => members
            .into_iter()
            .map(|(name, value)| (name, exactly(value)))
            .collect(),
    }
}

/// A figure, or its row at these entries.
fn figure(report: &Value, id: &str, at: &[&str]) -> Option<f64> {
    let figures = report["figures"].as_array().unwrap();
    let held = figures.iter().find(|held| held["id"] == id).unwrap();
    match held["rows"].as_array() {
        None => held["value"].as_f64(),
        Some(rows) => rows.iter().find(|row| row["at"] == serde_json::json!(at)).unwrap()["value"].as_f64(),
    }
}

/// The features of one kind.
fn of_kind<'a>(features: &'a [Value], kind: &'a str) -> impl Iterator<Item = &'a Value> {
    features.iter().filter(move |held| held["properties"]["kind"] == kind)
}

fn sum(features: &[Value], kind: &str, property: &str) -> f64 {
    let held = of_kind(features, kind).filter_map(|held| held["properties"][property].as_f64());
    held.sum()
}

fn ring(positions: &Value, projection: &Projection) -> LineString {
    let positions = positions.as_array().unwrap().iter();
    let points = positions.map(|position| {
        let (longitude, latitude) = (position[0].as_f64().unwrap(), position[1].as_f64().unwrap());
        let (x_m, y_m) = projection.m_from_deg(longitude, latitude).unwrap();
        // On the plan's grid, of which nine decimals give every point back.
        let on_grid = |m: f64| (m * 1e3).round() / 1e3;
        geo::Coord {
            x: on_grid(x_m),
            y: on_grid(y_m),
        }
    });
    LineString::new(points.collect())
}

/// The land of a geometry on the plan's plane, its rings closed and turned as RFC 7946 asks; `None` for points and lines.
fn land(name: &str, geometry: &Value, projection: &Projection) -> Option<MultiPolygon> {
    let one = [geometry["coordinates"].clone()];
    let polygons = match geometry["type"].as_str().unwrap() {
        "Polygon" => &one[..],
        "MultiPolygon" => geometry["coordinates"].as_array().unwrap(),
        _ => return None,
    };
    let polygons = polygons.iter().map(|rings| {
        let rings = rings.as_array().unwrap();
        let mut lines: Vec<LineString> = rings.iter().map(|held| ring(held, projection)).collect();
        for (place, (line, written)) in lines.iter().zip(rings).enumerate() {
            let written = written.as_array().unwrap();
            assert!(
                written.len() >= 4 && written.first() == written.last(),
                "{name}: not closed"
            );
            assert_eq!(line.is_ccw(), place == 0, "{name}: right-hand rule");
        }
        let shell = lines.remove(0);
        Polygon::new(shell, lines)
    });
    Some(MultiPolygon::new(polygons.collect()))
}

#[test]
fn exported_land_is_valid_and_as_large_as_its_figure() {
    for name in SAMPLES {
        let text = exported(name, &["--to", "geojson"]);
        let document = plan_file::read(&std::fs::read(sample(name)).unwrap()).unwrap().document;
        let projection = document.heading.projection().unwrap();
        let collection: Value = serde_json::from_str(&text).unwrap();
        let features = collection["features"].as_array().unwrap();
        let mut pieces = 0;
        for held in features {
            let (id, properties) = (held["id"].as_str().unwrap(), &held["properties"]);
            let Some(land) = land(id, &held["geometry"], &projection) else {
                continue;
            };
            pieces += 1;
            assert!(
                land.is_valid(),
                "{name}, {id}: {}",
                land.check_validation().unwrap_err()
            );
            let said = properties["area_m2"]
                .as_f64()
                .or(properties["footprint_m2"].as_f64())
                .unwrap();
            let area_m2 = land.unsigned_area();
            assert!(
                (area_m2 - said).abs() <= 1e-6 * said.max(1.0),
                "{name}, {id}: {area_m2} is not {said}"
            );
        }
        assert!(pieces > 4, "{name}: {pieces} pieces of land");
    }
}

#[test]
fn exported_numbers_sum_to_the_figures() {
    for name in SAMPLES {
        let collection: Value = serde_json::from_str(&exported(name, &["--to", "geojson"])).unwrap();
        let features = collection["features"].as_array().unwrap();
        let report = measured(name);
        let number = |id: &str, at: &[&str]| figure(&report, id, at).unwrap_or(0.0);
        let near = |what: &str, sum: f64, wanted: f64| {
            assert!(
                (sum - wanted).abs() <= 1e-9 * wanted.abs().max(1.0),
                "{name}, {what}: {sum} is not {wanted}"
            );
        };
        near("site", sum(features, "site", "area_m2"), number("land.site", &[]));
        near("land", sum(features, "land", "area_m2"), number("land.buildable", &[]));
        near(
            "homes on lots",
            sum(features, "lot", "homes"),
            number("homes.count", &[]),
        );
        near(
            "jobs on lots",
            sum(features, "lot", "jobs"),
            number("jobs.count", &[]) - number("jobs.soft", &[]),
        );
        near(
            "homes of blocks",
            sum(features, "block", "homes"),
            number("homes.count", &[]),
        );
        near(
            "homes at fronts",
            sum(features, "front", "homes"),
            number("homes.count", &[]),
        );
        near(
            "lots",
            sum(features, "lot", "area_m2"),
            number("lots.land_by_group", &["built"]),
        );
        let inside = |roles: &[&str]| -> f64 {
            let held = of_kind(features, "segment").map(|held| &held["properties"]);
            let held = held.filter(|held| held["in_site"] == true && roles.contains(&held["role"].as_str().unwrap()));
            held.map(|held| held["length_m"].as_f64().unwrap()).sum()
        };
        let streets = ["thoroughfare", "neighborhood_street", "lane"];
        near("streets", inside(&streets), number("streets.length", &[]));
        near("paths", inside(&["path"]), number("streets.length_by_way", &["paths"]));
        near(
            "alleys",
            inside(&["alley"]),
            number("streets.length_by_way", &["alleys"]),
        );
        for rule in ["textbook", "cary-7-10-3"] {
            let counted = of_kind(features, "intersection").filter(|held| {
                let rules = held["properties"]["counted_by"].as_array().unwrap();
                rules.iter().any(|held| held == rule)
            });
            near(rule, counted.count() as f64, number("streets.counted_nodes", &[rule]));
        }
        let perimeters = of_kind(features, "block").map(|held| &held["properties"]);
        let perimeters = perimeters.filter(|held| held["in_site"] == true);
        let longest = perimeters
            .filter_map(|held| held["perimeter_m"].as_f64())
            .fold(0.0, f64::max);
        near("longest block", longest, number("blocks.perimeter_longest", &[]));
        for shed in of_kind(features, "walk_shed").map(|held| &held["properties"]) {
            let walk = format!("{}min", shed["minutes"]);
            match shed["shown_as"].as_str().unwrap() {
                "hull" => near(
                    "hull",
                    shed["area_m2"].as_f64().unwrap(),
                    number("walk.shed_area", &["hull", &walk]),
                ),
                "streets" => {
                    let homes = number(&format!("walk.homes_within_{walk}"), &["center"]);
                    near("homes within", shed["homes"].as_f64().unwrap(), homes);
                }
                // Rounded to the millimeter, of a grid ten times finer.
                _ => {
                    let (held, wanted) = (
                        shed["area_m2"].as_f64().unwrap(),
                        number("walk.shed_area", &["buffer", &walk]),
                    );
                    assert!((held - wanted).abs() <= 1e-4 * wanted, "{name}: {held} is not {wanted}");
                }
            }
        }
    }
}

/// Counts and areas as other programs read them: see the fixture's README.
#[test]
fn other_readers_find_as_much_land() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../tests/fixtures/exports/areas.csv");
    let lines = table(&std::fs::read_to_string(path).unwrap());
    assert_eq!(lines[0].join(","), "sample,kind,features,area_m2");
    assert_eq!(lines.len(), 1 + 4 * SAMPLES.len());
    for name in SAMPLES {
        let collection: Value = serde_json::from_str(&exported(name, &["--to", "geojson"])).unwrap();
        let features = collection["features"].as_array().unwrap();
        for line in lines.iter().filter(|line| line[0] == name) {
            assert_eq!(of_kind(features, &line[1]).count().to_string(), line[2], "{line:?}");
            let (held, read) = (sum(features, &line[1], "area_m2"), line[3].parse::<f64>().unwrap());
            assert!((held - read).abs() <= 1e-6 * read, "{line:?}: {held}");
        }
    }
}

/// Fields of one line of comma-separated values by RFC 4180, and what follows it; obvious and slow.
fn fields(text: &str) -> (Vec<String>, &str) {
    let (mut fields, mut field, mut is_quoted) = (Vec::new(), String::new(), false);
    let mut rest = text.char_indices().peekable();
    while let Some((at, character)) = rest.next() {
        match character {
            '"' if is_quoted && rest.peek().is_some_and(|(_, next)| *next == '"') => {
                rest.next();
                field.push('"');
            }
            '"' => is_quoted = !is_quoted,
            ',' if !is_quoted => fields.push(std::mem::take(&mut field)),
            '\n' if !is_quoted => {
                fields.push(field.trim_end_matches('\r').to_owned());
                return (fields, &text[at + 1..]);
            }
            other => field.push(other),
        }
    }
    (fields, "")
}

pub fn table(text: &str) -> Vec<Vec<String>> {
    let mut lines = Vec::new();
    let mut rest = text;
    while !rest.is_empty() {
        let (line, after) = fields(rest);
        lines.push(line);
        rest = after;
    }
    lines
}

#[test]
fn the_table_of_figures_holds_every_number_of_every_figure() {
    let graph = hobnail_core::measures::graph().unwrap();
    for name in SAMPLES {
        let report = measured(name);
        let lines = table(&exported(name, &["--to", "csv", "--units", "metric"]));
        assert_eq!(
            lines[0].join(","),
            "id,at,title,row,value,unit,low,high,basis,sources,changed_factors,why_none"
        );
        assert!(lines.iter().all(|line| line.len() == lines[0].len()), "{name}");
        let mut compared = 0;
        for held in report["figures"].as_array().unwrap() {
            let id = held["id"].as_str().unwrap();
            let one = [held.clone()];
            let rows = held["rows"].as_array().map_or(&one[..], Vec::as_slice);
            let of_figure: Vec<&Vec<String>> = lines.iter().filter(|line| line[0] == id).collect();
            assert_eq!(of_figure.len(), rows.len(), "{name}, {id}");
            let scale = graph.node(graph.index(id).unwrap()).unit.metric.scale;
            for (row, line) in rows.iter().zip(of_figure) {
                assert!(
                    ["worked", "method"].contains(&line[8].as_str()),
                    "{name}, {id}: {}",
                    line[8]
                );
                assert_eq!(line[11], row["reason"].as_str().unwrap_or_default(), "{name}, {id}");
                for (column, member) in [(4, "value"), (6, "low"), (7, "high")] {
                    let wanted = row[member].as_f64();
                    let shown = wanted.map_or_else(String::new, |wanted| (wanted / scale).to_string());
                    assert_eq!(line[column], shown, "{name}, {id}, {member} in {}", line[5]);
                    compared += 1;
                }
            }
        }
        assert!(compared > 1_000, "{name}: {compared}");
        let factors: Vec<&Vec<String>> = lines.iter().filter(|line| line[8] == "factor").collect();
        assert!(
            !factors.is_empty() && factors.iter().all(|line| !line[9].is_empty()),
            "{name}"
        );
    }
}

#[test]
fn what_can_not_be_exported_is_said_with_code_2() {
    let village = sample("compact-village");
    let village = village.to_str().unwrap();
    for (arguments, words) in [
        (&["export"][..], "to what? --to and one of"),
        (&["export", village, "--to", "paper"], "there is no paper"),
        (
            &["export", village, "--to", "csv", "--alternative", "None"],
            "no alternative called `None`",
        ),
        (&["export", "no-such-plan.geojson", "--to", "csv"], "can not be read"),
    ] {
        let run = hobnail(arguments);
        let said = String::from_utf8_lossy(&run.stderr).into_owned();
        assert_eq!(run.status.code(), Some(2), "{arguments:?}: {said}");
        assert!(said.contains(words) && run.stdout.is_empty(), "{arguments:?}: {said}");
    }
}

#[test]
fn a_class_of_files_makes_one_table_by_name() {
    let folder = std::env::temp_dir().join(format!("hobnail-class-{}", std::process::id()));
    std::fs::create_dir_all(&folder).unwrap();
    for (file, name) in [("b.geojson", "repaired-strip"), ("a.json", "compact-village")] {
        std::fs::copy(sample(name), folder.join(file)).unwrap();
    }
    std::fs::write(folder.join("c.geojson"), b"{\"type\": ").unwrap();
    std::fs::write(folder.join("remarks.txt"), b"not a plan").unwrap();
    let out = folder.join("out.csv");
    let folder_name = folder.to_str().unwrap();
    let run = hobnail(&[
        "measure",
        folder_name,
        "--table",
        out.to_str().unwrap(),
        "--units",
        "us",
    ]);
    assert_eq!(run.status.code(), Some(1), "{}", String::from_utf8_lossy(&run.stderr));
    let lines = table(&std::fs::read_to_string(&out).unwrap());
    let again = hobnail(&["measure", folder_name, "--table", "-", "--units", "us"]);
    assert_eq!(
        std::fs::read(&out).unwrap(),
        again.stdout,
        "the same on standard output"
    );
    std::fs::remove_dir_all(&folder).unwrap();

    let files: Vec<&str> = lines.iter().map(|line| line[0].as_str()).collect();
    assert_eq!(files, ["file", "a.json", "b.geojson", "b.geojson", "c.geojson"]);
    assert!(lines.iter().all(|line| line.len() == lines[0].len()));
    let column = |title: &str| lines[0].iter().position(|held| held == title).unwrap();
    let report = measured("compact-village");
    let value = |title: &str| lines[1][column(title)].parse::<f64>().unwrap();
    assert_eq!(Some(value("homes (homes)")), figure(&report, "homes.count", &[]));
    let longest_ft = value("block perimeter, longest (ft)");
    let longest_m = figure(&report, "blocks.perimeter_longest", &[]).unwrap();
    assert!((longest_ft * 0.3048 - longest_m).abs() < 1e-9, "{longest_ft} ft");
    let bar: Vec<usize> = (0..lines[0].len())
        .filter(|at| lines[0][*at].starts_with("share of the site by use: "))
        .collect();
    let whole: f64 = bar.iter().map(|at| lines[1][*at].parse::<f64>().unwrap()).sum();
    assert!(bar.len() == 7 && (whole - 100.0).abs() < 1e-9, "{whole}");
    assert!(
        lines[1].last().unwrap().is_empty() && lines[4].last().unwrap().contains("JSON"),
        "{:?}",
        lines[4]
    );

    let none = hobnail(&["measure", "no-such-folder", "--table", "-"]);
    assert_eq!(none.status.code(), Some(2));
}
