//! The layers, by name.

use crate::message;
use crate::messages::Message;
use crate::plan::LandUse;

/// A layer of the drawing.
pub(in crate::report::export) struct Layer {
    /// Its name: the id of its group, and in capitals its layer.
    pub id: &'static str,
    /// What lies in it, for people.
    pub title: Message,
    /// Its color in drawing exchange files, an index of the format's color table; 7 is ink.
    pub color: u8,
    /// The weight of its lines there, in hundredths of a millimeter, one of those that may be named.
    pub weight: u8,
    /// Whether its lines are dashed there.
    pub is_dashed: bool,
    /// The color its land is filled with there; 0 where it is not.
    pub fill: u8,
}

/// Names of [`LAYERS`], in the order they are drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in crate::report::export) enum LayerId {
    Ground,
    Homes,
    Business,
    Making,
    Civic,
    Parks,
    Natural,
    SecondUse,
    SoftAreas,
    Constraints,
    Water,
    Contours,
    IndexContours,
    RightOfWay,
    Planting,
    Carriageway,
    Lanes,
    CenterLines,
    Removed,
    Lots,
    Buildings,
    Trees,
    Parcels,
    Barriers,
    Site,
    Accesses,
    Places,
    ContourHeights,
    Names,
}

impl LayerId {
    /// The layer of land with a use.
    pub const fn of(land_use: LandUse) -> Self {
        match land_use {
            LandUse::Residential => Self::Homes,
            LandUse::Business => Self::Business,
            LandUse::Industrial => Self::Making,
            LandUse::Civic => Self::Civic,
            LandUse::Leisure => Self::Parks,
            LandUse::Natural => Self::Natural,
        }
    }

    /// Its row of the table.
    pub const fn layer(self) -> &'static Layer {
        &LAYERS[self as usize]
    }
}

const fn layer(id: &'static str, title: Message, color: u8, weight: u8) -> Layer {
    Layer {
        id,
        title,
        color,
        weight,
        is_dashed: false,
        fill: 0,
    }
}

const fn filled(id: &'static str, title: Message, color: u8, fill: u8) -> Layer {
    Layer {
        fill,
        ..layer(id, title, color, 13)
    }
}

const fn dashed(id: &'static str, title: Message, color: u8, weight: u8) -> Layer {
    Layer {
        is_dashed: true,
        ..layer(id, title, color, weight)
    }
}

/// The layers, in the order of [`LayerId`]. Pale colors of the table, 10 to 249, end in 1.
pub(in crate::report::export) const LAYERS: [Layer; 29] = [
    layer("ground", message!("export-layer-ground"), 9, 13),
    filled("land-homes", message!("drawing-use-homes"), 51, 51),
    filled("land-business", message!("drawing-use-business"), 11, 11),
    filled("land-making", message!("drawing-use-making"), 201, 201),
    filled("land-civic", message!("drawing-use-civic"), 171, 171),
    filled("land-parks", message!("drawing-use-park"), 91, 91),
    filled("land-natural", message!("drawing-use-natural"), 81, 81),
    layer("land-second-use", message!("export-layer-second-use"), 31, 13),
    dashed("soft-areas", message!("export-layer-soft-areas"), 41, 25),
    dashed("constraints", message!("export-layer-constraints"), 32, 18),
    layer("water", message!("drawing-water"), 150, 18),
    layer("contours", message!("export-layer-contours"), 33, 13),
    layer("contours-index", message!("export-layer-index-contours"), 33, 25),
    layer("right-of-way", message!("export-layer-right-of-way"), 7, 25),
    layer("planting", message!("export-layer-planting"), 92, 13),
    layer("curbs", message!("export-layer-curbs"), 8, 18),
    layer("lanes", message!("export-layer-lanes"), 9, 13),
    dashed("center-lines", message!("export-layer-center-lines"), 1, 13),
    dashed("streets-removed", message!("export-layer-removed"), 12, 25),
    layer("lots", message!("export-layer-lots"), 8, 13),
    filled("buildings", message!("export-layer-buildings"), 7, 33),
    layer("trees", message!("export-layer-trees"), 94, 13),
    dashed("parcels", message!("export-layer-parcels"), 8, 18),
    layer("barriers", message!("export-layer-barriers"), 7, 50),
    layer("site-boundary", message!("export-layer-site"), 7, 60),
    layer("site-accesses", message!("export-layer-accesses"), 7, 40),
    layer("places", message!("export-layer-places"), 7, 40),
    layer("contour-heights", message!("export-layer-contour-heights"), 33, 18),
    layer("names", message!("export-layer-names"), 7, 18),
];
