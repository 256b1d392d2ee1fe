//! Base data on its way into the plan: what a file holds, as it was read, and what each kind of its features becomes.
//!
//! Files are read by the readers' module in a worker (`browser/reading.rs`), which hands a [`Base`] over piece by piece.
//! Features are gathered into [`Class`]es by layer and tag: `highway=residential` is one line of a table, whose meaning a
//! person can change; `opening` leads one file after the other through the panel, [`opened`] holds what is chosen there.
//! Only `App::take_base` changes the plan, in one step; whatever is wrong with a file or a choice is
//! said and leaves the plan as it was.
//!
//! The readers' table of tags (`web/readers/src/osm/tags.rs`) says what a class becomes at first; `meaning` turns its
//! words into marks of the plan.

mod clip;
pub mod heights;
mod held;
pub mod kind;
mod meaning;
pub mod opened;
mod opening;
mod pieces;
mod place;
mod sketch;
mod take;

#[cfg(test)]
mod clip_tests;
#[cfg(test)]
mod heights_tests;
#[cfg(test)]
mod noted_tests;
#[cfg(test)]
mod opened_tests;
#[cfg(test)]
mod tests;
#[cfg(test)]
mod within_tests;

pub use meaning::Becomes;
pub use opening::{ACCEPTED, BASE, Bases, Opening, Stage};
pub use pieces::Unfitting;
pub use place::{Choices, Extent, LARGEST_RADIUS_M, is_placed};
pub use take::Taken;

use hobnail_core::plan::street::StreetOwner;

/// A position as the file gives it: degrees, or millimeters of a drawing.
pub type Position = [f64; 2];

/// A hole of an area: the place of its outline among the parts, and the hole's own.
pub type Hole = (usize, Vec<Position>);

/// What was read of one file.
#[derive(Clone, Debug, PartialEq)]
pub struct Base {
    /// The file's name.
    pub name: String,
    /// Who must be named wherever the data is shown; empty where the file does not say.
    pub attribution: String,
    /// The coordinate system of the file, as the readers understood it; empty where it has none.
    pub system: String,
    /// What its positions mean.
    pub coordinates: Coordinates,
    /// The names of its layers.
    pub layers: Vec<String>,
    /// Corners of the picture that it places, in the order of a base image, x and y by turns; empty where there is none.
    pub corners: Vec<f64>,
    /// What its grids of heights are, where it holds any.
    pub grid: Option<heights::GridSaid>,
    /// Its heights for the plan, once they were asked for.
    pub heights: Option<heights::Heights>,
    /// What its features are, in the order of their first.
    pub classes: Vec<Class>,
    /// The features, in the order of the file.
    pub features: Vec<Feature>,
    /// What could not be read, or is doubtful.
    pub faults: Vec<FaultSaid>,
}

/// What positions of a [`Base`] mean.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Coordinates {
    /// Longitude and latitude in degrees, WGS84.
    Degrees,
    /// Millimeters about a point of a drawing, whose place on Earth is not known.
    Drawing {
        /// Meters in one unit of the drawing, as they were taken.
        unit_m: f64,
    },
}

/// A fault of a file in words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FaultSaid {
    /// Where in the file.
    pub place: String,
    /// What is wrong.
    pub words: String,
}

/// Features of one layer and tag: a line of the table of meanings.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Class {
    /// Its layer, from 0.
    pub layer: usize,
    /// The tag they share, as `key=value`; empty where none is known.
    pub tag: String,
    /// What the readers suggest, in their numbers.
    suggested: [u32; 3],
    /// How many there are.
    pub count: u32,
    /// The shapes they have, each once.
    pub shapes: Vec<Shape>,
    /// What they become; a person may change it.
    pub becomes: Becomes,
}

/// A feature.
#[derive(Clone, Debug, PartialEq)]
pub struct Feature {
    /// Its class, by its place among them.
    pub class: usize,
    /// Its name, or for a parcel its label; empty where it has none.
    pub name: String,
    /// What it says as a note, where that is more than its name.
    pub words: String,
    /// 0 on the ground, above 0 on a bridge, below 0 in a tunnel.
    pub level: i8,
    /// Who owns it, where it is a street.
    pub owner: StreetOwner,
    /// Homes in it, where the file counts them.
    pub homes: u32,
    /// Its geometry.
    pub shape: Shape,
    /// Lines, outlines, or points in one list.
    pub parts: Vec<Vec<Position>>,
    /// Holes of its outlines.
    pub holes: Vec<Hole>,
}

/// What a feature's parts are.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shape {
    /// Points.
    Points,
    /// Lines.
    Lines,
    /// Outlines, each closed by itself.
    Areas,
}

impl Base {
    /// A base whose features are still to come.
    #[must_use]
    pub fn new(name: &str, coordinates: Coordinates) -> Self {
        Self {
            name: name.to_owned(),
            attribution: String::new(),
            system: String::new(),
            coordinates,
            layers: Vec::new(),
            corners: Vec::new(),
            grid: None,
            heights: None,
            classes: Vec::new(),
            features: Vec::new(),
            faults: Vec::new(),
        }
    }

    /// West, south, east and north of all features of the chosen layers and of its heights, as the file gives positions;
    /// `None` of none.
    /// Cost: linear in the positions.
    #[must_use]
    pub fn bounds(&self, layers: &[bool]) -> Option<[f64; 4]> {
        let mut found = self.grid.map(|grid| grid.bounds_deg);
        let is_chosen = |feature: &&Feature| {
            let class = self.classes.get(feature.class);
            class.is_some_and(|class| layers.get(class.layer).copied().unwrap_or(true))
        };
        let chosen = self.features.iter().filter(is_chosen);
        for [x, y] in chosen.flat_map(|feature| &feature.parts).flatten().copied() {
            let [west, south, east, north] = found.unwrap_or([x, y, x, y]);
            found = Some([west.min(x), south.min(y), east.max(x), north.max(y)]);
        }
        found
    }
}
