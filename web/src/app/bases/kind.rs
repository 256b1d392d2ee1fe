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
const WORLDS: [&str; 7] = [".wld", ".jgw", ".pgw", ".wpw", ".jpgw", ".pngw", ".jpegw"];

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

/// Whether a file says by its ending where the picture of its name lies, or in which coordinate system.
#[must_use]
pub fn is_of_picture(name: &str) -> bool {
    is_world(name) || ends_with(name, ".prj")
}

fn is_world(name: &str) -> bool {
    WORLDS.iter().any(|ending| ends_with(name, ending))
}

fn ends_with(name: &str, ending: &str) -> bool {
    let from = name.len().saturating_sub(ending.len());
    name.get(from..).is_some_and(|end| end.eq_ignore_ascii_case(ending))
}

/// Which of these pictures a file of base data is the world file of: that of its name before the ending.
#[must_use]
pub fn placed_by(world: &str, pictures: &[String]) -> Option<usize> {
    let stem = |name: &str| name.rfind('.').map_or(name.len(), |dot| dot);
    let own = world.get(..stem(world)).filter(|_| is_world(world))?;
    let is_it = |picture: &String| {
        picture
            .get(..stem(picture))
            .is_some_and(|stem| stem.eq_ignore_ascii_case(own))
    };
    pictures.iter().position(is_it)
}

/// Which files of base data are read together, by their names: a `.shp` with all that has its name before another
/// ending, a world file with the coordinate system of its name, each other file by itself. Gives the place of each that leads, and the places of what lies beside it.
#[must_use]
pub fn together(names: &[String]) -> Vec<(usize, Vec<usize>)> {
    let lower: Vec<String> = names.iter().map(|name| name.to_ascii_lowercase()).collect();
    // What has another name before its ending, and whether all of them belong to it.
    let stem = |name: &str| {
        let is_all = name.ends_with(".shp");
        let stem = name.get(..=name.rfind('.')?)?;
        (is_all || is_world(name)).then(|| (stem.to_owned(), is_all))
    };
    let belongs = |name: &str, (stem, is_all): &(String, bool)| {
        let is_other = if *is_all {
            !name.ends_with(".shp")
        } else {
            name.ends_with(".prj")
        };
        is_other && name.starts_with(stem.as_str())
    };
    let stems: Vec<(String, bool)> = lower.iter().filter_map(|name| stem(name)).collect();
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
    fn a_world_file_has_the_picture_and_the_system_of_its_name() {
        let names = ["b.prj", "Map.JGW", "map.prj", "map.csv", "map2.wld", "map.shp"].map(str::to_owned);
        let found = together(&names);
        assert_eq!(
            found,
            [(0, Vec::new()), (1, vec![2]), (4, Vec::new()), (5, vec![1, 2, 3])]
        );
        let pictures = ["map2.old.png", "MAP.jpg", "map2.webp"].map(str::to_owned);
        assert_eq!(placed_by("Map.JGW", &pictures), Some(1));
        assert_eq!(placed_by("map2.wld", &pictures), Some(2));
        for other in ["map.csv", "b.jgw", "jgw", "map.old.jgw"] {
            assert_eq!(placed_by(other, &pictures), None, "{other}");
        }
        assert!(is_of_picture("é.PRJ") && is_of_picture("a.wld") && !is_of_picture("plan.pdf"));
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
