//! What a person chose before a file is read.

use serde::Deserialize;

/// How far beyond the box features are kept, unless chosen otherwise: streets that lead in are seen to lead somewhere.
pub const USUAL_MARGIN_M: f64 = 200.0;

/// What is typed for a coordinate system of the site's own, whose place on Earth is not known.
pub const LOCAL: &str = "local";

/// Choices; all have defaults.
#[derive(Clone, Debug, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Options {
    /// West, south, east and north in degrees: what lies outside is left out. Everything is kept without it.
    pub box_deg: Option<[f64; 4]>,
    /// How far beyond the box features are kept, in meters.
    pub margin_m: f64,
    /// Longitude and latitude of the plan's origin: positions are then given in the plan's millimeters.
    pub origin_deg: Option<[f64; 2]>,
    /// The coordinate system of a file that names none, or instead of the one it names: `EPSG:number`, a PROJ string or WKT;
    /// [`LOCAL`] for none, so that lines and points are placed by hand as those of a drawing.
    pub system: Option<String>,
    /// Names of layers to read; all of them without it. Nothing of the others is given but their names.
    pub layers: Option<Vec<String>>,
    /// Meters in one unit of a drawing whose unit is not said or wrong.
    pub unit_m: Option<f64>,
    /// Names of the columns of x (or longitude) and y (or latitude), where they are not recognized.
    pub columns: Option<[String; 2]>,
    /// Columns and rows of pixels of the picture that a world file places.
    pub picture_px: Option<[u32; 2]>,
}

impl Default for Options {
    fn default() -> Self {
        Self {
            box_deg: None,
            margin_m: USUAL_MARGIN_M,
            origin_deg: None,
            system: None,
            layers: None,
            unit_m: None,
            columns: None,
            picture_px: None,
        }
    }
}

impl Options {
    /// The box with its margin in degrees, a little too wide rather than too narrow; `None` where there is none or it
    /// is no box.
    #[must_use]
    pub fn wide_box_deg(&self) -> Option<[f64; 4]> {
        let [west, south, east, north] = self.box_deg?;
        let margin_deg = self.margin_m.max(0.0) / 110_000.0;
        let steepest = south.abs().max(north.abs()).min(89.0);
        let wide_deg = margin_deg / steepest.to_radians().cos();
        let wide = [west - wide_deg, south - margin_deg, east + wide_deg, north + margin_deg];
        (wide.iter().all(|side| side.is_finite()) && west <= east && south <= north).then_some(wide)
    }

    /// Whether a layer is to be read.
    #[must_use]
    pub fn wants(&self, layer: &str) -> bool {
        self.layers
            .as_ref()
            .is_none_or(|wanted| wanted.iter().any(|name| name == layer))
    }
}
