//! A grid of streets as base data: a plan as large as one likes.

use std::fmt::Write as _;
use std::path::{Path, PathBuf};

/// A GeoJSON file in this folder of straight streets, each a side of a block of 100 m about the place at no longitude and
/// no latitude; `side` intersections along a side, so 2 × `side` × (`side` − 1) streets.
#[must_use]
pub fn write_grid(folder: &Path, side: i32) -> PathBuf {
    // Degrees that are 100 m at the equator.
    let degrees = |place: i32| f64::from(place - side / 2) * 100.0 / 111_319.49;
    let mut features = String::new();
    let mut street = |from: (i32, i32), to: (i32, i32)| {
        let [a, b, c, d] = [from.0, from.1, to.0, to.1].map(degrees);
        let comma = if features.is_empty() { "" } else { "," };
        // A string can always be written to.
        let _ = write!(
            features,
            "{comma}{{\"type\":\"Feature\",\"properties\":{{\"highway\":\"residential\"}},\
             \"geometry\":{{\"type\":\"LineString\",\"coordinates\":[[{a:.9},{b:.9}],[{c:.9},{d:.9}]]}}}}"
        );
    };
    for x in 0..side {
        for y in 0..side {
            if x + 1 < side {
                street((x, y), (x + 1, y));
            }
            if y + 1 < side {
                street((x, y), (x, y + 1));
            }
        }
    }
    let path = folder.join(format!("hobnail-grid-{side}-{}.geojson", std::process::id()));
    let text = format!("{{\"type\":\"FeatureCollection\",\"features\":[{features}]}}");
    std::fs::write(&path, text).expect("the folder can be written");
    path
}
