//! The plan for other programs, saved as a file: a drawing at true scale, a picture, all that is derived, every figure.

use hobnail_core::message;
use hobnail_core::plan::document::UnitSystem;
use hobnail_core::report::export;
use hobnail_core::say;
use hobnail_core::study::first_level::system;
use hobnail_core::text::exchanged;

use super::App;
use super::files::file_name;
use super::store::Store;
use super::words::Words;
use crate::browser::{files, pictures};

/// A kind of file.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Kind {
    /// Scalable Vector Graphics.
    Svg,
    /// A drawing exchange file.
    Dxf,
    /// A picture, of so many dots per inch of paper.
    Png(f64),
    /// All that is derived, as GeoJSON.
    GeoJson,
    /// Every figure, as a table.
    Csv,
}

/// Kinds in the order they are offered: the kind, its name in the page, and words.
pub const KINDS: [(Kind, &str, Words); 6] = [
    (Kind::Svg, "svg", message!("share-svg")),
    (Kind::Dxf, "dxf", message!("share-dxf")),
    (Kind::Png(150.0), "png-150", message!("share-png-150")),
    (Kind::Png(300.0), "png-300", message!("share-png-300")),
    (Kind::GeoJson, "geojson", message!("share-geojson")),
    (Kind::Csv, "csv", message!("share-csv")),
];

/// Scales of drawings: one to so many. In feet those of 50, 100, 200 and 400 to the inch.
#[must_use]
pub const fn scales(units: UnitSystem) -> [f64; 4] {
    match units {
        UnitSystem::Metric => [500.0, 1_000.0, 2_000.0, 5_000.0],
        UnitSystem::UsCustomary => [600.0, 1_200.0, 2_400.0, 4_800.0],
    }
}

impl Kind {
    const fn ending(self) -> &'static str {
        match self {
            Self::Svg => ".svg",
            Self::Dxf => ".dxf",
            Self::Png(_) => ".png",
            Self::GeoJson => "-derived.geojson",
            Self::Csv => ".csv",
        }
    }

    const fn media_type(self) -> &'static str {
        match self {
            Self::Svg | Self::Png(_) => "image/svg+xml",
            Self::Dxf => "image/vnd.dxf",
            Self::GeoJson => "application/geo+json",
            Self::Csv => "text/csv",
        }
    }
}

impl App {
    /// The text of a file of this kind; of a picture that of the drawing it is made from.
    fn exported(&mut self, kind: Kind, scale: f64) -> Result<String, String> {
        let system = system(self.study.document());
        Ok(match kind {
            Kind::Svg | Kind::Png(_) => export::svg(&self.study, scale, system),
            Kind::Dxf => export::dxf(&self.study, scale, system),
            Kind::GeoJson => export::geojson(&self.study).map_err(|fault| fault.to_string())?,
            Kind::Csv => export::csv(&mut self.study, system),
        })
    }
}

impl Store {
    /// Saves the plan as a file of this kind.
    pub fn export(self, kind: Kind, scale: f64) {
        let text = self.update(|app| app.exported(kind, scale));
        let name = self.with(|app| file_name(&app.study().document().heading.name));
        let name = exchanged(&name, ".geojson", kind.ending());
        let said = move |saved: Result<(), String>, name: &str| {
            self.act(|app| match saved {
                Ok(()) => app.say(say!("page-saved", name = name)),
                Err(fault) => app.warn(fault),
            });
        };
        match (kind, text) {
            (Kind::Png(dots_per_inch), Ok(drawing)) => {
                pictures::png_of(drawing, dots_per_inch, move |picture| {
                    let picture = picture.ok_or_else(|| say!("share-png-too-large").to_owned());
                    said(picture.and_then(|picture| files::save_blob(&name, &picture)), &name);
                });
            }
            (kind, text) => said(
                text.and_then(|text| files::save(&name, kind.media_type(), &text)),
                &name,
            ),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_empty_plan_can_be_handed_on_in_every_kind() {
        let mut app = App::new().unwrap();
        let begins = |text: &str, with: &str| assert!(text.starts_with(with), "{}", &text[..text.len().min(80)]);
        for (kind, ..) in KINDS {
            let text = app.exported(kind, scales(app.units())[1]).unwrap();
            match kind {
                Kind::Svg | Kind::Png(_) => begins(&text, "<"),
                Kind::Dxf => begins(&text, "0\nSECTION"),
                Kind::GeoJson => begins(&text, "{"),
                Kind::Csv => begins(&text, "id,"),
            }
        }
    }
}
