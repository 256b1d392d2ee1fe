//! What there is to draw, gathered from the open plan: positions in meters, nothing of the screen.

use hobnail_core::plan::PlaceKind;
use hobnail_core::plan::building::LandUse;
use hobnail_core::plan::land::ConstraintKind;

use super::profile::Profile;

pub use hobnail_core::report::drawing::ways::{Joint, Line, Standing, Way};

/// Everything drawn of one alternative.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Scene {
    /// The site's boundary.
    pub site: Line,
    /// Enclosed land with a use.
    pub patches: Vec<Patch>,
    /// Street sections in use.
    pub profiles: Vec<Profile>,
    /// Streets and paths, from intersection to intersection.
    pub ways: Vec<Way>,
    /// Where they meet.
    pub joints: Vec<Joint>,
    /// Where dead ends end: across the right-of-way.
    pub heads: Vec<Line>,
    /// Names of streets, once per street.
    pub names: Vec<(Line, String)>,
    /// Land that something holds back.
    pub constraints: Vec<(Line, ConstraintKind, String)>,
    /// Places.
    pub places: Vec<PlaceSign>,
    /// Connections to the existing street network.
    pub accesses: Vec<(f64, f64)>,
    /// Walk-sheds, the widest first.
    pub sheds: Vec<Shed>,
    /// Stretches of street along fronts, and how many of the five daily needs are in reach from there; or the class of
    /// the mix that is.
    pub needs: Vec<(Line, u8)>,
    /// Nodes of the streets, and what a counting rule makes of each.
    pub nodes: Vec<((f64, f64), Node)>,
    /// Segments of streets, and the class of the walks along them: 0 where nobody walks, then the more the higher.
    pub routes: Vec<(Line, u8)>,
    /// Fronts with the least direct walks, the worst first.
    pub fronts: Vec<Line>,
    /// The best single point for a center.
    pub best: Option<(f64, f64)>,
    /// Land in the color of its class.
    pub washes: Vec<Wash>,
    /// Streets in the color of their class.
    pub bands: Vec<(Line, u8)>,
    /// What is written on those.
    pub tags: Vec<((f64, f64), String)>,
    /// Whether lots, trees and words on the land are left out, for what is laid over it.
    pub is_bare: bool,
    /// Whether the buildings alone are drawn.
    pub is_ground: bool,
}

/// How classes are colored.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Scale {
    /// One hue, the deeper the more.
    Ramp,
    /// Hues that have no order.
    Kinds,
}

/// Land in the color of its class.
#[derive(Clone, Debug, PartialEq)]
pub struct Wash {
    /// Its outer boundary, then its holes.
    pub rings: Vec<Line>,
    /// How its class is colored.
    pub scale: Scale,
    /// Its class.
    pub class: u8,
}

/// What a counting rule makes of a node of the streets.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Node {
    /// It counts it as an intersection.
    Crossing,
    /// It counts it as the head of a dead end.
    Head,
    /// Other rules count it, this one does not.
    LeftOut,
}

/// Enclosed land with a use.
#[derive(Clone, Debug, PartialEq)]
pub struct Patch {
    /// Its outer boundary, then its holes.
    pub rings: Vec<Line>,
    /// The use of most of it.
    pub main: Option<LandUse>,
    /// The use of the next most.
    pub second: Option<LandUse>,
    /// Sides that differ.
    pub sides: Vec<PatchSide>,
    /// Where its label stands, what it says, and how much room it has, in meters.
    pub label: Option<((f64, f64), String, f64)>,
}

/// A side of enclosed land with a use of its own.
#[derive(Clone, Debug, PartialEq)]
pub struct PatchSide {
    /// The run of the boundary along a street, the land on its left.
    pub run: Line,
    /// How deep the use goes from there, in meters.
    pub depth_m: f64,
    /// The use.
    pub main: LandUse,
    /// The use of other floors.
    pub second: Option<LandUse>,
}

/// A place to draw.
#[derive(Clone, Debug, PartialEq)]
pub struct PlaceSign {
    /// What it is.
    pub kind: PlaceKind,
    /// Its name, or the word for what it is.
    pub name: String,
    /// Its point, line or outline.
    pub extent: Extent,
    /// Whether it is only hoped for.
    pub is_hoped_for: bool,
}

/// How much land a place takes on the drawing.
#[derive(Clone, Debug, PartialEq)]
pub enum Extent {
    /// A point.
    Point((f64, f64)),
    /// A stretch.
    Line(Line),
    /// An outline.
    Area(Line),
}

/// What is within so many minutes' walk.
#[derive(Clone, Debug, PartialEq)]
pub struct Shed {
    /// How many minutes.
    pub minutes: u32,
    /// Stretches of street reached.
    pub stretches: Vec<Line>,
    /// Where a walk ends, for its label.
    pub end: Option<(f64, f64)>,
}
