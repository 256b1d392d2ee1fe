//! A plan as a drawing on a sheet: layers with names, and in each what is drawn there, in meters.
//!
//! Both drawings that leave the tool are written from this: [`svg`](super::svg()) takes all of it with its looks,
//! [`dxf`](super::dxf()) takes layers and lines. Layers are in a table ([`LAYERS`]); what lies in them is gathered in the order it
//! is drawn.

mod ground;
mod land;
mod layers;
mod names;
mod streets;

pub(super) use land::look_of_constraint;
pub(super) use layers::{LAYERS, Layer, LayerId};
pub(super) use names::GLYPH_SHARE;

use crate::figures::unit::System;
use crate::plan::land::ConstraintKind;
use crate::plan::{LandUse, PlanPoint};
use crate::report::drawing::contours::Course;
use crate::report::drawing::ways::{Line, meters};
use crate::study::Study;

/// The finest line on paper, in millimeters: strips, hatching.
pub(super) const FINE_MM: f64 = 0.13;
/// The ordinary line: edges of rights-of-way, outlines.
pub(super) const MEDIUM_MM: f64 = 0.25;
/// The heaviest line: the site.
pub(super) const HEAVY_MM: f64 = 0.6;

/// Radius of the sign of a place that is a point, on paper.
pub(super) const SIGN_MM: f64 = 1.5;

/// A corner of a line, and how much of a circle the way to the next corner is: the tangent of a quarter of its turn,
/// positive to the left; 0 for a straight way.
pub(super) type Turn = (f64, f64, f64);

/// Something drawn.
pub(super) enum Item {
    /// Closed rings, those inside others holes of them.
    Rings(Vec<Line>),
    /// A line, parts of which may be arcs.
    Arcs(Vec<Turn>),
    /// A line.
    Line(Line),
    /// A line of equal height and that height, in the unit of the drawing.
    Contour(Course, f64),
    /// A strip along a line, of a width in meters.
    Band(Line, f64),
    /// Its middle and its radius in meters.
    Circle((f64, f64), f64),
    /// Words.
    Words(Words),
}

/// Words on the drawing.
pub(super) struct Words {
    /// Where their middle stands.
    pub at: (f64, f64),
    /// What they say.
    pub text: String,
    /// Height of the type on paper, in millimeters.
    pub size_mm: f64,
    /// The way they run, from east toward north.
    pub angle_rad: f64,
    /// Whether they are bold.
    pub is_bold: bool,
}

/// How something looks on paper; colors are `0xRRGGBB`.
#[derive(Clone, Copy, Default, PartialEq)]
pub(super) struct Look {
    /// Filled in a color of an opacity.
    pub fill: Option<(u32, f64)>,
    /// Hatched over the fill.
    pub hatch: Option<(Hatch, u32)>,
    /// Drawn along its edge or line in a color, of a width in millimeters on paper.
    pub stroke: Option<(u32, f64)>,
    /// Dashes and gaps in millimeters on paper.
    pub dash_mm: &'static str,
}

/// Hatchings; each says without color what the fill says with it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Hatch {
    /// Thin lines rising to the right.
    Diagonal,
    /// Thin lines both ways.
    Crossed,
    /// Thin upright lines.
    Upright,
    /// Dots.
    Dots,
    /// Short strokes, like grass.
    Grass,
    /// Broad bands rising to the right, for a second use on the same land.
    Bands,
    /// Waves, for water.
    Waves,
}

/// The hatching of a use; homes, the commonest, have none.
pub(super) const fn hatch_of_use(land_use: LandUse) -> Option<Hatch> {
    match land_use {
        LandUse::Residential => None,
        LandUse::Business => Some(Hatch::Diagonal),
        LandUse::Industrial => Some(Hatch::Crossed),
        LandUse::Civic => Some(Hatch::Upright),
        LandUse::Leisure => Some(Hatch::Dots),
        LandUse::Natural => Some(Hatch::Grass),
    }
}

/// The hatching of what holds land back.
pub(super) const fn hatch_of_constraint(kind: ConstraintKind) -> Hatch {
    match kind {
        ConstraintKind::Water | ConstraintKind::Floodplain => Hatch::Waves,
        ConstraintKind::Wetland | ConstraintKind::Conservation => Hatch::Grass,
        ConstraintKind::Steep => Hatch::Diagonal,
        ConstraintKind::Easement => Hatch::Upright,
        ConstraintKind::Keep => Hatch::Dots,
        ConstraintKind::Contaminated => Hatch::Crossed,
    }
}

/// Things of one layer that look alike.
pub(super) struct Group {
    /// The layer.
    pub layer: LayerId,
    /// How they look.
    pub look: Look,
    /// The things.
    pub items: Vec<Item>,
}

/// All that is drawn, in order; groups of one layer follow one another.
#[derive(Default)]
pub(super) struct Sheet {
    /// What is drawn.
    pub groups: Vec<Group>,
    /// Uses of land that are drawn, for the legend.
    pub uses: Vec<LandUse>,
    /// Constraints that are drawn, for the legend.
    pub constraints: Vec<ConstraintKind>,
    /// Whether a second use is hatched over a first anywhere.
    pub is_mixed: bool,
    /// What is to be said of contours; empty where there are none.
    pub contours: String,
}

impl Sheet {
    /// The drawing of an open plan, with words sized for a scale of one to `scale`, and contours in a system of units.
    ///
    /// Cost: a boolean operation for the rights-of-way and one for the carriageways.
    pub fn of(study: &Study, scale: f64, system: System) -> Self {
        let mut sheet = Self::default();
        land::add_ground(study, &mut sheet);
        land::add_soft_areas(study, &mut sheet);
        land::add_constraints(study, &mut sheet);
        ground::add_contours(study, scale, system, &mut sheet);
        streets::add_streets(study, &mut sheet);
        land::add_lots(study, &mut sheet);
        streets::add_trees(study, &mut sheet);
        land::add_parcels_and_barriers(study, &mut sheet);
        land::add_site_and_places(study, scale, &mut sheet);
        names::add_names(study, scale, &mut sheet);
        sheet
    }

    /// Adds things to a layer; nothing where there are none.
    fn add(&mut self, layer: LayerId, look: Look, items: Vec<Item>) {
        if !items.is_empty() {
            self.groups.push(Group { layer, look, items });
        }
    }

    /// The least box around all that is drawn, south-west and north-east; `None` where nothing is.
    pub fn bounds(&self) -> Option<[(f64, f64); 2]> {
        let mut bounds: Option<[(f64, f64); 2]> = None;
        let mut take = |(x, y): (f64, f64), by: f64| {
            let [low, high] = bounds.unwrap_or([(x, y); 2]);
            bounds = Some([
                (low.0.min(x - by), low.1.min(y - by)),
                (high.0.max(x + by), high.1.max(y + by)),
            ]);
        };
        for item in self.groups.iter().flat_map(|group| &group.items) {
            match item {
                Item::Rings(rings) => rings.iter().flatten().for_each(|at| take(*at, 0.0)),
                Item::Arcs(turns) => turns.iter().for_each(|(x, y, _)| take((*x, *y), 0.0)),
                Item::Line(line) | Item::Contour((line, _), _) => line.iter().for_each(|at| take(*at, 0.0)),
                Item::Band(line, width_m) => line.iter().for_each(|at| take(*at, width_m / 2.0)),
                Item::Circle(at, radius_m) => take(*at, *radius_m),
                Item::Words(words) => take(words.at, 0.0),
            }
        }
        bounds
    }
}

/// The part of a drawing that goes on paper, south-west and north-east corner: the site with some of what lies around it,
/// or all where no site is drawn.
pub(super) fn frame_of(study: &Study, sheet: &Sheet) -> [(f64, f64); 2] {
    /// How much around the site, in meters, as far as anything is drawn.
    const AROUND_M: f64 = 80.0;
    let drawn = sheet.bounds().unwrap_or([(0.0, 0.0), (100.0, 100.0)]);
    let mut site = Sheet::default();
    let boundary = meters(&study.document().site.boundary);
    site.add(LayerId::Site, Look::default(), vec![Item::Line(boundary)]);
    let Some([low, high]) = site.bounds() else { return drawn };
    [
        (drawn[0].0.max(low.0 - AROUND_M), drawn[0].1.max(low.1 - AROUND_M)),
        (drawn[1].0.min(high.0 + AROUND_M), drawn[1].1.min(high.1 + AROUND_M)),
    ]
}

/// Filled, without a line.
fn filled(color: u32) -> Look {
    Look {
        fill: Some((color, 1.0)),
        ..Look::default()
    }
}

/// A line alone.
fn lined(color: u32, width_mm: f64, dash_mm: &'static str) -> Look {
    Look {
        stroke: Some((color, width_mm)),
        dash_mm,
        ..Look::default()
    }
}

/// Rings of pieces of land, in meters.
fn rings(pieces: &[Vec<Vec<PlanPoint>>]) -> Vec<Line> {
    pieces.iter().flatten().map(|ring| meters(ring)).collect()
}
