//! What a file is that was chosen or dropped: a plan, a picture or base data. The one place where that is decided.
//!
//! The first bytes decide, the name's ending only where they have no mark: pictures by their marks; text in braces is
//! JSON, which is a plan where it names this program's own member, and base data where it holds coordinates without it;
//! any other JSON, and whatever is named `.json` or `.geojson`, is left to the reader of plans, which says what is wrong.
//! All else is base data: its readers know formats by content, and say so where they know none.

/// How many of a file's first bytes are looked at.
pub const START_BYTES: usize = 64;

/// What of a text of JSON is looked for: the member that plan files have, and the one that all of GeoJSON has where it
/// says where something is (RFC 7946, section 3.1).
pub const LOOKED_FOR: [&str; 2] = ["\"hobnail\"", "\"coordinates\""];

/// What a file is by its name and first bytes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// A plan.
    Plan,
    /// A picture to lie under the drawing.
    Picture,
    /// Base data.
    Base,
    /// A plan or base data, as its whole text says ([`Kind::of_json`]).
    Json,
}

/// First bytes of pictures that browsers show: Portable Network Graphics (ISO/IEC 15948:2004, section 5.2), JPEG
/// (ITU-T T.81, section B.1.1.3); and of pages (ISO 32000-1:2008, section 7.5.2), of which it is said there how they become
/// pictures.
const PICTURES: [&[u8]; 3] = [b"\x89PNG\r\n\x1a\n", b"\xff\xd8\xff", b"%PDF-"];

/// Endings of world files, by which alone they are known beside their pictures. Common practice, no source.
pub const WORLDS: [&str; 7] = [".wld", ".jgw", ".pgw", ".wpw", ".jpgw", ".pngw", ".jpegw"];

/// The ending of a coordinate system beside a picture or a shapefile.
pub const SYSTEM: [&str; 1] = [".prj"];

impl Kind {
    /// By the name and the first [`START_BYTES`].
    #[must_use]
    pub fn of(name: &str, start: &[u8]) -> Self {
        // WebP: a RIFF container (WebP Container Specification, "File Header").
        let is_webp = start.starts_with(b"RIFF") && start.get(8..12) == Some(b"WEBP");
        if is_webp || PICTURES.iter().any(|mark| start.starts_with(mark)) {
            return Self::Picture;
        }
        let text = start.strip_prefix(b"\xef\xbb\xbf").unwrap_or(start);
        if text.trim_ascii_start().starts_with(b"{") {
            return Self::Json;
        }
        if ends_with(name, ".json") || ends_with(name, ".geojson") {
            Self::Plan
        } else {
            Self::Base
        }
    }

    /// By which of [`LOOKED_FOR`] occur in the text of JSON.
    #[must_use]
    pub const fn of_json([names_plan, has_coordinates]: [bool; 2]) -> Self {
        if has_coordinates && !names_plan {
            Self::Base
        } else {
            Self::Plan
        }
    }
}

fn ends_with(name: &str, ending: &str) -> bool {
    let from = name.len().saturating_sub(ending.len());
    name.get(from..).is_some_and(|end| end.eq_ignore_ascii_case(ending))
}

/// The part of a name before its ending, with the dot.
fn stem(name: &str) -> &str {
    name.get(..=name.rfind('.').unwrap_or_default()).unwrap_or_default()
}

/// Which of these files has the name of a picture before one of some endings ([`WORLDS`], [`SYSTEM`]).
#[must_use]
pub fn beside(picture: &str, names: &[String], endings: &[&str]) -> Option<usize> {
    let is_it = |name: &String| {
        stem(name).eq_ignore_ascii_case(stem(picture)) && endings.iter().any(|ending| ends_with(name, ending))
    };
    names.iter().position(is_it)
}

/// Which files of base data are read together, by their names: a `.shp` with all that has its name before another
/// ending, each other file by itself. Gives the place of each that leads, and the places of what lies beside it.
#[must_use]
pub fn together(names: &[String]) -> Vec<(usize, Vec<usize>)> {
    let lower: Vec<String> = names.iter().map(|name| name.to_ascii_lowercase()).collect();
    let stem = |name: &str| name.strip_suffix("shp").map(str::to_owned);
    let belongs = |name: &str, stem: &str| name.starts_with(stem) && !name.ends_with(".shp");
    let stems: Vec<String> = lower.iter().filter_map(|name| stem(name)).collect();
    let mut found = Vec::new();
    for (place, name) in lower.iter().enumerate() {
        if let Some(stem) = stem(name) {
            let others = lower.iter().enumerate();
            let beside = others
                .filter(|(_, other)| belongs(other, &stem))
                .map(|(other, _)| other);
            found.push((place, beside.collect()));
        } else if !stems.iter().any(|stem| belongs(name, stem)) {
            found.push((place, Vec::new()));
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    fn of(name: &str, text: &str) -> Kind {
        match Kind::of(name, text.as_bytes().get(..START_BYTES).unwrap_or(text.as_bytes())) {
            Kind::Json => Kind::of_json(LOOKED_FOR.map(|word| text.contains(word))),
            kind => kind,
        }
    }

    #[test]
    fn plans_are_told_from_base_data_by_their_own_member() {
        let village = include_str!("../../../../sample-sketches/compact-village.geojson");
        for name in ["village.geojson", "village.txt", "village"] {
            assert_eq!(of(name, village), Kind::Plan);
        }
        let lots = r#"{"type":"FeatureCollection","features":[{"type":"Feature","properties":{},"geometry":{"type":"Point","coordinates":[10,0]}}]}"#;
        assert_eq!(of("lots.geojson", lots), Kind::Base);
        assert_eq!(of("lots.json", &format!("\u{feff} \n{lots}")), Kind::Base);
    }

    #[test]
    fn what_is_no_plan_though_it_is_named_so_is_left_to_the_reader_of_plans() {
        for (name, text) in [
            ("note.geojson", "not a plan"),
            ("a.JSON", ""),
            ("a.json", "{"),
            ("a", "{}"),
        ] {
            assert_eq!(of(name, text), Kind::Plan, "{name}");
        }
    }

    #[test]
    fn pictures_are_known_by_their_marks_whatever_their_names() {
        for start in [
            &b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR"[..],
            b"\xff\xd8\xff\xe0",
            b"%PDF-1.7\n",
            b"RIFF\x10\0\0\0WEBPVP8 ",
        ] {
            assert_eq!(Kind::of("survey.dat", start), Kind::Picture);
        }
        assert_eq!(Kind::of("survey.png", b"no picture"), Kind::Base);
        assert_eq!(Kind::of("heights.tif", b"II*\0\x08\0\0\0"), Kind::Base);
        assert_eq!(Kind::of("sound", b"RIFF\x10\0\0\0WAVE"), Kind::Base);
    }

    #[test]
    fn parts_of_a_shapefile_are_read_together() {
        let names = [
            "roads.DBF",
            "a.osm",
            "Roads.shp",
            "roads.prj",
            "lots.shp",
            "lots.shp.xml",
            "roads2.dbf",
        ];
        let found = together(&names.map(str::to_owned));
        let alone = |place| (place, Vec::new());
        assert_eq!(found, [alone(1), (2, vec![0, 3]), (4, vec![5]), alone(6)]);
    }

    #[test]
    fn what_lies_beside_a_picture_can_be_chosen_with_it() {
        for ending in WORLDS.iter().chain(&SYSTEM) {
            let mut accepted = crate::browser::pictures::ACCEPTED.split(',');
            assert!(accepted.any(|held| held == *ending), "{ending}");
        }
    }

    #[test]
    fn a_world_file_and_a_system_have_the_name_of_their_picture() {
        let names = ["b.prj", "map.csv", "map.prj", "Map.JGW", "map2.wld", "jgw"].map(str::to_owned);
        assert_eq!(beside("MAP.jpg", &names, &WORLDS), Some(3));
        assert_eq!(beside("MAP.jpg", &names, &SYSTEM), Some(2));
        assert_eq!(beside("map2.webp", &names, &WORLDS), Some(4));
        assert_eq!(beside("map2.webp", &names, &SYSTEM), None);
        for other in ["map2.old.png", "b.png", "map", "é"] {
            assert_eq!(beside(other, &names, &WORLDS), None, "{other}");
        }
    }

    #[test]
    fn all_else_is_base_data() {
        for (name, text) in [
            ("a.osm", "<?xml version='1.0'?><osm>"),
            ("a.csv", "x,y\n1,2\n"),
            ("a.zip", "PK\x03\x04"),
            ("é", ""),
        ] {
            assert_eq!(of(name, text), Kind::Base, "{name}");
        }
    }
}
