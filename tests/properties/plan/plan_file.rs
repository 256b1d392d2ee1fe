//! Saving and opening is the identity, and no file, however broken, is more than faults.

use hobnail_core::exchange::plan_file::{self, Refusal};
use hobnail_core::plan::validate::validate;

use crate::cases;
use crate::generate;
use crate::random::Random;

#[test]
fn save_then_open_is_the_identity() {
    for seed in 0..cases(300) {
        let document = generate::document(&mut Random(seed), 25);
        let text = plan_file::write(&document).unwrap();
        let opened = plan_file::read(text.as_bytes()).unwrap();
        assert_eq!(opened.faults, [], "seed {seed}");
        assert_eq!(opened.document, document, "seed {seed}");
        assert_eq!(plan_file::write(&opened.document).unwrap(), text, "seed {seed}");
    }
}

#[test]
fn saved_files_are_geojson_with_one_feature_to_a_line() {
    for seed in 0..cases(50) {
        let document = generate::document(&mut Random(seed), 10);
        let text = plan_file::write(&document).unwrap();
        let json: serde_json::Value = serde_json::from_str(&text).unwrap();
        let features = json["features"].as_array().unwrap();
        let marks: usize = document.alternatives.values().map(|held| held.marks.len()).sum();
        assert_eq!(
            features.len(),
            marks + usize::from(!document.site.boundary.is_empty()),
            "seed {seed}"
        );
        let lines = text
            .lines()
            .filter(|line| line.starts_with("{\"type\":\"Feature\""))
            .count();
        assert_eq!(lines, features.len(), "seed {seed}");
        for feature in features {
            check_geometry(&feature["geometry"], seed);
        }
    }
}

/// RFC 7946, section 3.1: four or more positions in a closed ring, counterclockwise; two or more in a line.
fn check_geometry(geometry: &serde_json::Value, seed: u64) {
    let coordinates = &geometry["coordinates"];
    match geometry["type"].as_str() {
        Some("Polygon") => {
            let ring = coordinates[0].as_array().unwrap();
            assert!(
                ring.len() >= 4 && ring.first() == ring.last(),
                "seed {seed}: {geometry}"
            );
        }
        Some("LineString") => assert!(coordinates.as_array().unwrap().len() >= 2, "seed {seed}: {geometry}"),
        Some("Point") => assert_eq!(coordinates.as_array().unwrap().len(), 2, "seed {seed}: {geometry}"),
        _ => assert!(geometry.is_null(), "seed {seed}: {geometry}"),
    }
}

#[test]
fn broken_files_are_refused_or_opened_with_faults() {
    for seed in 0..cases(300) {
        let mut random = Random(seed);
        let document = generate::document(&mut random, 4);
        let mut bytes = plan_file::write(&document).unwrap().into_bytes();
        for _ in 0..=random.below(4) {
            let place = random.below(bytes.len() as u64) as usize;
            match random.below(4) {
                0 => bytes[place] = random.next() as u8,
                1 => drop(bytes.remove(place)),
                2 => bytes.insert(place, *random.pick(b"0123456789-.eE[]{},:\"nt")),
                _ => {
                    let end = (place + random.below(40) as usize).min(bytes.len());
                    let piece: Vec<u8> = bytes[place..end].to_vec();
                    let at = random.below(bytes.len() as u64) as usize;
                    bytes.splice(at..at, piece);
                }
            }
        }
        match plan_file::read(&bytes) {
            Err(refusal) => assert!(!refusal.to_string().is_empty()),
            Ok(opened) => {
                // Whatever was opened can be judged, saved and opened again.
                let _ = validate(&opened.document);
                let text = plan_file::write(&opened.document).unwrap();
                let again = plan_file::read(text.as_bytes()).unwrap();
                assert_eq!(again.document, opened.document, "seed {seed}");
                assert_eq!(again.faults, [], "seed {seed}");
            }
        }
    }
}

#[test]
fn a_file_of_a_newer_version_is_refused_whole() {
    let document = generate::document(&mut Random(1), 5);
    let text = plan_file::write(&document)
        .unwrap()
        .replacen("\"version\": 1", "\"version\": 9", 1);
    assert_eq!(plan_file::read(text.as_bytes()), Err(Refusal::NewerVersion(9)));
}
