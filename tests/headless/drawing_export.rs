//! Drawings that leave the tool: well formed, in layers, at true scale, as many of each thing as the plan has.

use std::collections::{BTreeMap, BTreeSet};

use hobnail_core::exchange::plan_file;
use hobnail_core::figures::unit::System;
use hobnail_core::plan::defaults::NEIGHBORHOOD_STREET;
use hobnail_core::plan::document::Topography;
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

/// A street on ground that rises 10 % to the east, from 100 m on, with a site of 400 by 400 m.
fn on_a_slope() -> Study {
    let mut document = one_street(&[(0, 0), (100, 0)], 0).document().clone();
    document.site.boundary = [(-200, -200), (200, -200), (200, 200), (-200, 200)]
        .map(|(x, y)| PlanPoint::new(x * 1_000, y * 1_000))
        .to_vec();
    document.topography = Some(Topography {
        south_west: PlanPoint::new(-300_000, -300_000),
        spacing_mm: 10_000,
        columns: 61,
        heights_mm: (0..61 * 61).map(|place| 100_000 + place % 61 * 1_000).collect(),
        source: "Made up & <steep>.".to_owned(),
    });
    Study::open(document).unwrap()
}

#[test]
fn contours_lie_where_the_ground_is_as_high_in_both_drawings() {
    let study = on_a_slope();
    // From 100 to 160 m, but the lowest sample's height has no line; in feet every second from 330 to 524.
    for (system, unit_m, interval, drawn) in [(System::Metric, 1.0, 1.0, 60), (System::Customary, 0.3048, 2.0, 98)] {
        let dxf = export::dxf(&study, 1000.0, system);
        let drawing = Drawing::read(&dxf);
        // Heights are whole millimeters, so that a contour lies within half a centimeter of its place.
        let east_m = |height: f64| (height * unit_m - 100.0) * 10.0 - 300.0;
        let mut count = 0;
        for (layer, is_index) in [("CONTOURS", false), ("CONTOURS-INDEX", true)] {
            for contour in drawing.of_layer(layer) {
                let height = contour.numbers(38).next().unwrap();
                let number = height / interval;
                assert!((number - number.round()).abs() < 1e-4, "{height}");
                assert_eq!(number.round() as i32 % 5 == 0, is_index, "{height}");
                for x in contour.numbers(10) {
                    assert!((x * unit_m - east_m(height)).abs() < 0.006, "{x} at {height}");
                }
                count += 1;
            }
        }
        assert_eq!(count, drawn);
        let mut said = BTreeSet::new();
        for words in drawing.of_layer("CONTOUR-HEIGHTS") {
            let text = &words.pairs.iter().find(|pair| pair.0 == 1).unwrap().1;
            let height: f64 = text.parse().unwrap();
            let at = words.numbers(11).next().unwrap() * unit_m;
            assert!((at - east_m(height)).abs() < 0.006, "{text} at {at}");
            said.insert(text.clone());
        }
        assert!(said.len() > 8, "{said:?}");
        assert!(dxf.contains("not from a survey") && dxf.contains("Made up & <steep>."));

        let svg = export::svg(&study, 1000.0, system);
        let elements = elements(&svg);
        let paths = |layer: &str| {
            let held = elements
                .iter()
                .filter(|held| held.layer == layer && held.name == "path");
            held.count()
        };
        assert_eq!(paths("contours") + paths("contours-index"), drawn);
        assert!(
            elements
                .iter()
                .any(|held| held.layer == "contour-heights" && held.name == "text")
        );
        let said: String = svg
            .split("<text")
            .filter_map(|part| part.split_once('>'))
            .map(|part| part.1)
            .collect();
        assert!(
            said.contains("not from a") && said.contains("Made up &amp; &lt;steep&gt;."),
            "{said}"
        );
    }
    // Where the plan has no heights, nothing is said of any.
    let flat = one_street(&[(0, 0), (100, 0)], 0);
    assert!(!export::svg(&flat, 1000.0, System::Metric).contains("ontour"));
}

#[test]
fn a_drawing_for_drafting_holds_contours_whole_and_the_paper_ends_around_the_site() {
    // Heights reach 100 m beyond the site on each side, the paper 80 m.
    let study = on_a_slope();
    let drawing = Drawing::read(&export::dxf(&study, 1000.0, System::Metric));
    let norths: Vec<f64> = drawing
        .of_layer("CONTOURS")
        .flat_map(|contour| contour.numbers(20))
        .collect();
    let most = |norths: &[f64]| norths.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    assert!((most(&norths) - 300.0).abs() < 1e-6, "{}", most(&norths));
    let svg = export::svg(&study, 1000.0, System::Metric);
    let elements = elements(&svg);
    let place = elements.iter().position(|held| held.name == "clipPath").unwrap();
    let frame = &elements[place + 1];
    assert_eq!((frame.name.as_str(), &*frame.attributes["height"]), ("rect", "560"));
    assert!(svg.contains("<g clip-path=\"url(#frame)\">"));
}

#[test]
fn the_contour_about_a_summit_is_closed() {
    let mut document = on_a_slope().document().clone();
    if let Some(held) = &mut document.topography {
        let away = |place: i32| (place % 61 - 30).pow(2) + (place / 61 - 30).pow(2);
        held.heights_mm = (0..61 * 61).map(|place| 40_000 - away(place) * 100).collect();
    }
    let drawing = Drawing::read(&export::dxf(&Study::open(document).unwrap(), 1000.0, System::Metric));
    let summit = drawing.of_layer("CONTOURS").chain(drawing.of_layer("CONTOURS-INDEX"));
    let closed: Vec<&Entity> = summit.filter(|held| held.numbers(70).any(|flag| flag > 0.0)).collect();
    assert!(closed.len() > 10);
    for ring in closed {
        let corners: Vec<f64> = ring.numbers(10).collect();
        assert!(ring.numbers(90).any(|count| count as usize == corners.len()) && corners.len() > 3);
    }
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
