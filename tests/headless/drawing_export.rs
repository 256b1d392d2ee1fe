//! Drawings that leave the tool: well formed, in layers, at true scale, as many of each thing as the plan has.

use std::collections::{BTreeMap, BTreeSet};

use hobnail_core::exchange::plan_file;
use hobnail_core::figures::unit::System;
use hobnail_core::plan::defaults::NEIGHBORHOOD_STREET;
use hobnail_core::plan::projection::GeographicPoint;
use hobnail_core::plan::street::{Status, StreetOwner};
use hobnail_core::plan::{AlternativeId, Document, Mark, MarkId, PlanPoint, Street, StreetRole, Vertex};
use hobnail_core::report::export;
use hobnail_core::study::Study;

use crate::export_command::{SAMPLES, exported, sample};

/// A plan of one street through these points in meters, its inner corners rounded.
fn one_street(points: &[(i32, i32)], radius_m: u32) -> Study {
    let origin = GeographicPoint {
        longitude_ndeg: -40_000_000_000,
        latitude_ndeg: 40_000_000_000,
    };
    let mut document = Document::new("Tom & Ann's \"<small>\" Plan — piñón", origin);
    let line = points.iter().map(|(x, y)| Vertex {
        corner_radius_mm: radius_m * 1_000,
        ..Vertex::at(PlanPoint::new(x * 1_000, y * 1_000))
    });
    let street = Street {
        line: line.collect(),
        section: NEIGHBORHOOD_STREET,
        name: "Long Lane".to_owned(),
        role: StreetRole::NeighborhoodStreet,
        owner: StreetOwner::Town,
        status: Status::New,
        is_outside: false,
        level: 0,
        phase: None,
    };
    let alternative = document.alternatives.get_mut(&AlternativeId(0)).unwrap();
    alternative.marks.insert(MarkId(0), Mark::Street(street));
    Study::open(document).unwrap()
}

/// An element of a drawing with its attributes; text between elements is passed over.
struct Element {
    name: String,
    attributes: BTreeMap<String, String>,
    /// Id of the nearest group around it that has one.
    layer: String,
}

/// The elements of a text as XML, which it must be: each closed in its turn, attributes quoted and said once, ids unique.
fn elements(text: &str) -> Vec<Element> {
    let rest = text.strip_prefix("<?xml version=\"1.0\" encoding=\"UTF-8\"?>").unwrap();
    let (mut found, mut open, mut ids) = (Vec::new(), Vec::<(String, String)>::new(), BTreeSet::new());
    for (place, part) in rest.split('<').enumerate() {
        let Some((tag, after)) = part.split_once('>') else {
            assert!(place == 0 && part.trim().is_empty(), "text before the root: {part}");
            continue;
        };
        let mut loose = after.split('&');
        assert!(!loose.next().unwrap().contains('>'), "{part}");
        assert!(
            loose.all(|entity| ["amp;", "lt;", "gt;", "quot;"]
                .iter()
                .any(|known| entity.starts_with(known))),
            "{part}"
        );
        if let Some(name) = tag.strip_prefix('/') {
            let (last, _) = open.pop().unwrap();
            assert_eq!(last, name, "closed in turn");
            continue;
        }
        let is_empty = tag.ends_with('/');
        let (name, mut said) = tag.trim_end_matches('/').split_once(' ').unwrap_or((tag, ""));
        let mut attributes = BTreeMap::new();
        while let Some((key, value)) = said.trim_start().split_once("=\"") {
            let (value, after) = value.split_once('"').unwrap();
            assert!(
                attributes.insert(key.to_owned(), value.to_owned()).is_none(),
                "{key} twice: {tag}"
            );
            said = after;
        }
        assert!(said.trim().is_empty(), "{tag}");
        if let Some(id) = attributes.get("id") {
            assert!(ids.insert(id.clone()), "two of {id}");
        }
        let around = open.last().map_or("", |(_, layer)| layer.as_str()).to_owned();
        let layer = if name == "g" {
            attributes.get("id").cloned().unwrap_or(around)
        } else {
            around
        };
        if !is_empty {
            open.push((name.to_owned(), layer.clone()));
        }
        found.push(Element {
            name: name.to_owned(),
            attributes,
            layer,
        });
    }
    assert!(open.is_empty(), "{open:?}");
    found
}

/// The numbers of a path.
fn numbers(path: &str) -> Vec<f64> {
    let parts = path.split(|character: char| character.is_ascii_alphabetic() || character == ' ');
    parts
        .filter(|part| !part.is_empty())
        .map(|part| part.parse().unwrap())
        .collect()
}

/// The path of the one center line of a drawing.
fn center_line(text: &str) -> String {
    let elements = elements(text);
    let mut lines = elements
        .iter()
        .filter(|held| held.layer == "center-lines" && held.name == "path");
    let line = lines.next().unwrap().attributes["d"].clone();
    assert!(lines.next().is_none());
    line
}

#[test]
fn a_hundred_meters_are_a_hundred_millimeters_at_1_to_1000() {
    let study = one_street(&[(0, 0), (100, 0)], 0);
    for (scale, length_mm) in [(1000.0, 100.0), (500.0, 200.0), (1200.0, 83.333)] {
        let text = export::svg(&study, scale, System::Metric);
        let line = numbers(&center_line(&text));
        assert!((line[2] - line[0] - length_mm).abs() < 2e-3, "{line:?}");
        let root = &elements(&text)[0];
        let size = numbers(root.attributes["viewBox"].as_str());
        for (name, size) in ["width", "height"].iter().zip(&size[2..]) {
            assert_eq!(root.attributes[*name], format!("{size}mm"), "a unit is a millimeter");
        }
    }
}

#[test]
fn rounded_corners_are_arcs() {
    let study = one_street(&[(0, 0), (100, 0), (100, 100)], 30);
    let line = center_line(&export::svg(&study, 1000.0, System::Metric));
    assert!(line.contains("A 30 30 0 0 0 "), "{line}");
    let drawing = Drawing::read(&export::dxf(&study, 1000.0, System::Metric));
    let center = drawing.of_layer("CENTER-LINES").next().unwrap();
    let bulges: Vec<f64> = center.numbers(42).collect();
    let quarter = 2.0_f64.sqrt() - 1.0;
    assert!(bulges.len() == 1 && (bulges[0] - quarter).abs() < 1e-4, "{bulges:?}");
    let east: Vec<f64> = center.numbers(10).collect();
    assert_eq!(east, [0.0, 70.0, 100.0, 100.0]);
}

#[test]
fn samples_are_drawn_in_layers_with_every_lot_and_building() {
    for name in SAMPLES {
        let text = exported(name, &["--to", "svg", "--scale", "1:2000"]);
        let elements = elements(&text);
        assert_eq!(elements[0].name, "svg");
        let held = plan_file::read(&std::fs::read(sample(name)).unwrap()).unwrap().document;
        let study = Study::open(held).unwrap();
        let lots = || study.painted().iter().flat_map(|face| &face.laid.lots);
        let drawn = |layer: &str| {
            let held = elements
                .iter()
                .filter(|held| held.layer == layer && held.name == "path");
            held.count()
        };
        let buildings = lots().filter(|lot| !lot.footprint.is_empty()).count();
        assert_eq!(
            (drawn("lots"), drawn("buildings")),
            (lots().count(), buildings),
            "{name}"
        );
        for layer in [
            "right-of-way",
            "curbs",
            "center-lines",
            "site-boundary",
            "sheet",
            "water",
        ] {
            assert!(drawn(layer) > 0, "{name}: nothing in {layer}");
        }
        let mut titles = text.matches("<title>");
        assert!(
            titles.next().is_some() && text.contains("not for construction"),
            "{name}"
        );

        let drawing = Drawing::read(&exported(name, &["--to", "dxf", "--units", "us"]));
        assert_eq!(drawing.insert_units, "2", "feet");
        let outlines = |layer: &str| {
            let held = drawing.of_layer(layer).filter(|held| held.kind == "LWPOLYLINE");
            held.count()
        };
        assert_eq!(
            (outlines("LOTS"), outlines("BUILDINGS")),
            (lots().count(), buildings),
            "{name}"
        );
    }
}

#[test]
fn a_drawing_exchange_file_is_in_the_units_it_states() {
    let study = one_street(&[(0, 0), (100, 0)], 0);
    for (system, units, length) in [(System::Metric, "6", 100.0), (System::Customary, "2", 328.084)] {
        let drawing = Drawing::read(&export::dxf(&study, 1000.0, system));
        assert_eq!(drawing.insert_units, units);
        let center = drawing.of_layer("CENTER-LINES").next().unwrap();
        let east: Vec<f64> = center.numbers(10).collect();
        assert!((east[1] - east[0] - length).abs() < 1e-3, "{east:?}");
    }
}

#[test]
fn what_people_write_breaks_no_drawing() {
    let study = one_street(&[(0, 0), (300, 0)], 0);
    let svg = export::svg(&study, 1000.0, System::Metric);
    assert!(elements(&svg).len() > 10 && svg.contains("Tom &amp; Ann's \"&lt;small&gt;\" Plan — piñón"));
    let dxf = export::dxf(&study, 1000.0, System::Metric);
    assert!(dxf.is_ascii() && dxf.contains("pi\\U+00F1\\U+00F3n"));
    assert!(Drawing::read(&dxf).of_layer("NAMES").count() == 1);
}

/// An entity as its pairs of code and value.
struct Entity {
    kind: String,
    pairs: Vec<(u32, String)>,
}

impl Entity {
    fn numbers(&self, code: u32) -> impl Iterator<Item = f64> {
        let held = self.pairs.iter().filter(move |pair| pair.0 == code);
        held.map(|(_, value)| value.parse().unwrap())
    }
}

struct Drawing {
    insert_units: String,
    entities: Vec<Entity>,
}

impl Drawing {
    /// Reads a file and holds it to what every such file keeps: pairs, sections in order, handles once, known layers.
    fn read(text: &str) -> Self {
        let lines: Vec<&str> = text.lines().collect();
        assert!(lines.len().is_multiple_of(2) && text.ends_with("0\nEOF\n"));
        let pairs: Vec<(u32, &str)> = lines
            .chunks(2)
            .map(|pair| (pair[0].parse().unwrap(), pair[1]))
            .collect();
        let sections: Vec<&str> = pairs
            .windows(2)
            .filter(|pair| pair[0] == (0, "SECTION"))
            .map(|pair| pair[1].1)
            .collect();
        assert_eq!(
            sections,
            ["HEADER", "CLASSES", "TABLES", "BLOCKS", "ENTITIES", "OBJECTS"]
        );
        let after_header = pairs.iter().position(|pair| pair.1 == "CLASSES").unwrap();
        let mut handles = BTreeSet::new();
        for (code, value) in &pairs[after_header..] {
            if [5, 105].contains(code) {
                let handle = u32::from_str_radix(value, 16).unwrap();
                assert!(handle > 0 && handles.insert(handle), "handle {value} twice");
            }
        }
        let seed = pairs.iter().position(|pair| pair.1 == "$HANDSEED").unwrap() + 1;
        assert!(u32::from_str_radix(pairs[seed].1, 16).unwrap() > *handles.last().unwrap());
        let mut entities: Vec<Entity> = Vec::new();
        let mut layers = BTreeSet::new();
        let mut section = "";
        for (place, (code, value)) in pairs.iter().enumerate() {
            if place > 0 && pairs[place - 1] == (0, "SECTION") {
                section = value;
            }
            if *code == 0 {
                entities.push(Entity {
                    kind: (*value).to_owned(),
                    pairs: vec![(0, section.to_owned())],
                });
            } else if let Some(last) = entities.last_mut() {
                last.pairs.push((*code, (*value).to_owned()));
                if last.kind == "LAYER" && *code == 2 {
                    layers.insert((*value).to_owned());
                }
            }
        }
        entities.retain(|held| held.pairs[0].1 == "ENTITIES" && !["SECTION", "ENDSEC"].contains(&held.kind.as_str()));
        for held in &entities {
            let layer = held.pairs.iter().find(|pair| pair.0 == 8).unwrap();
            assert!(layers.contains(&layer.1), "{} is no layer", layer.1);
        }
        let units = pairs.iter().position(|pair| pair.1 == "$INSUNITS").unwrap() + 1;
        Self {
            insert_units: pairs[units].1.to_owned(),
            entities,
        }
    }

    fn of_layer<'a>(&'a self, layer: &'a str) -> impl Iterator<Item = &'a Entity> {
        let is_in = move |held: &&Entity| held.pairs.iter().any(|pair| pair.0 == 8 && pair.1 == layer);
        self.entities.iter().filter(is_in)
    }
}
