//! What a file of base data holds, whatever its format: layers of features, grids of heights, placed pictures.

use serde::{Deserialize, Serialize};

use crate::fault::Fault;
use crate::grid::Grid;
use crate::noted::Noted;

/// A position: longitude and latitude in degrees to nine decimals, or east and north in whole millimeters, as
/// [`Base::coordinates`] says.
pub type Position = [f64; 2];

/// What was read from one file.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "snake_case")]
pub struct Base {
    /// What the file is.
    pub format: Format,
    /// What the positions mean.
    pub coordinates: Coordinates,
    /// The coordinate system that the file is in, as a PROJ string; empty where it has none.
    pub system: String,
    /// Who must be named wherever the data or a picture of it is shown; empty where the file does not say.
    pub attribution: String,
    /// The features, by layer, layers in the order of their first feature.
    pub layers: Vec<Layer>,
    /// Heights. They stay on this side of the boundary; what is asked of them crosses it.
    #[serde(skip)]
    pub grids: Vec<Grid>,
    /// Pictures whose place is known.
    pub pictures: Vec<Picture>,
    /// What was left out or is doubtful, each with its place.
    pub faults: Vec<Fault>,
}

/// A format, recognized by content.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Format {
    /// OpenStreetMap XML.
    OsmXml,
    /// OpenStreetMap PBF.
    OsmPbf,
    /// GeoJSON.
    GeoJson,
    /// Shapefiles in a zip, or one with the files beside it.
    Shapefile,
    /// A drawing as DXF, of text or in bytes.
    Dxf,
    /// Values separated by commas, semicolons or tabs.
    Csv,
    /// Esri ASCII grid.
    AsciiGrid,
    /// TIFF with or without a place.
    GeoTiff,
    /// SRTM heights.
    Hgt,
    /// World file of a picture.
    WorldFile,
}

/// What positions of a [`Base`] mean.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case", tag = "kind")]
pub enum Coordinates {
    /// WGS84 longitude and latitude in degrees.
    Degrees,
    /// Whole millimeters east and north of the plan's origin.
    PlanMillimeters,
    /// Whole millimeters east and north of a point of the drawing, whose place on Earth the file does not say.
    DrawingMillimeters {
        /// Where that point lies in the drawing, east, in the drawing's units.
        east: f64,
        /// Where that point lies in the drawing, north, in the drawing's units.
        north: f64,
        /// Meters in one of the drawing's units.
        unit_m: f64,
    },
}

/// Features that belong together.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Layer {
    /// Its name in the file, or for OpenStreetMap what its features are.
    pub name: String,
    /// Its features, in the order of the file.
    pub features: Vec<Feature>,
}

/// One thing of the file.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Feature {
    /// Where it is.
    pub geometry: Geometry,
    /// What the file says about it: names and values, in the order of the file.
    pub tags: Vec<(String, String)>,
    /// What it may become in the plan.
    pub suggested: Suggestion,
    /// What it says in words. Boxed, since most features say nothing and all would be as large.
    pub noted: Option<Box<Noted>>,
}

/// The shape of a feature.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case", tag = "kind", content = "parts")]
pub enum Geometry {
    /// Points.
    Points(Vec<Position>),
    /// Lines of two positions or more each.
    Lines(Vec<Vec<Position>>),
    /// Areas: each its outer ring, then its holes. A ring is not closed by repeating its first position.
    Areas(Vec<Vec<Vec<Position>>>),
}

/// What a feature may become in the plan, by its tags (`osm/tags.rs`) or its layer.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[serde(rename_all = "snake_case", tag = "kind")]
pub enum Suggestion {
    /// A street or path that stands today. Boxed, since most features are none and all would be as large.
    Street(Box<Street>),
    /// A place people go to.
    Place {
        /// Which, spelled as in the plan file.
        place: PlaceKind,
    },
    /// Land that something holds back.
    Constraint {
        /// What, spelled as in the plan file.
        constraint: ConstraintKind,
    },
    /// A line that can not be crossed on foot.
    Barrier,
    /// A building that stands.
    Building,
    /// A line of equal height.
    Contour,
    /// Words on the drawing: [`Feature::noted`].
    Note,
    /// Nothing is suggested; a person chooses.
    #[default]
    Unknown,
}

/// What is suggested for a street.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Street {
    /// Its name, empty where the file has none.
    pub name: String,
    /// What it does in the network, spelled as in the plan file.
    pub role: StreetRole,
    /// A street section of the default palette, by the end of its message's name (`plan-section-…`).
    pub section: &'static str,
    /// Who owns it, spelled as in the plan file.
    pub owner: StreetOwner,
    /// Always `existing`: base data tells what stands.
    pub status: &'static str,
    /// 0 on the ground, above 0 on a bridge, below 0 in a tunnel.
    pub level: i8,
    /// Width between curbs in meters, where the file says it.
    pub width_m: Option<f64>,
    /// Signed speed in kilometers per hour, where the file says it.
    pub speed_km_h: Option<f64>,
    /// Lanes of motor traffic, where the file says it.
    pub lanes: Option<u8>,
}

/// What a street does in the network; numbered as the plan's roles are.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum StreetRole {
    /// A wide street that carries through traffic.
    Thoroughfare,
    /// The ordinary street of a neighborhood.
    NeighborhoodStreet,
    /// A narrow, slow street.
    Lane,
    /// A service way behind lots.
    Alley,
    /// A way for walking.
    Path,
}

/// Who owns a street; numbered as the plan's owners are.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum StreetOwner {
    /// The state or its transportation agency.
    State,
    /// The town or county.
    Town,
    /// A private owner or association.
    Private,
}

/// What a place is; numbered as the plan's kinds are, whose first is a center.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum PlaceKind {
    /// A transit stop.
    TransitStop = 1,
    /// A school.
    School,
    /// A community hall.
    CommunityHall,
    /// A park or square.
    Park,
    /// A shop.
    Shop,
    /// A clinic.
    Clinic,
}

/// What holds land back; numbered as the plan's kinds are, of which there are more.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum ConstraintKind {
    /// Open water.
    Water = 0,
    /// Wetland.
    Wetland = 2,
    /// Land under conservation.
    Conservation = 5,
}

/// A picture with its place.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Picture {
    /// The picture's name, or that of its world file.
    pub name: String,
    /// Where it lies in its coordinate system.
    pub world: World,
    /// Columns and rows of pixels, where known.
    pub size: Option<[u32; 2]>,
    /// Its corners as positions, from the first pixel's outer corner along the first row; where the size is known.
    pub corners: Option<[Position; 4]>,
}

/// Six numbers that place pixels: x = a·column + b·row + c, y = d·column + e·row + f, at the centers of pixels.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct World {
    /// Step of x from column to column.
    pub a: f64,
    /// Step of x from row to row.
    pub b: f64,
    /// x of the first pixel's center.
    pub c: f64,
    /// Step of y from column to column.
    pub d: f64,
    /// Step of y from row to row, usually below 0.
    pub e: f64,
    /// y of the first pixel's center.
    pub f: f64,
}

impl World {
    /// Where a pixel lies; its center at whole numbers.
    #[must_use]
    pub fn at(&self, column: f64, row: f64) -> Position {
        [
            self.a * column + self.b * row + self.c,
            self.d * column + self.e * row + self.f,
        ]
    }

    /// The outer corners of a picture: first row's first and last, last row's last and first.
    #[must_use]
    pub fn corners(&self, size: [u32; 2]) -> [Position; 4] {
        let [columns, rows] = size.map(|count| f64::from(count) - 0.5);
        [
            self.at(-0.5, -0.5),
            self.at(columns, -0.5),
            self.at(columns, rows),
            self.at(-0.5, rows),
        ]
    }
}
