//! Streets and paths, and the street sections they are built to.

use super::coordinates::PlanPoint;
use super::ids::{MarkId, PhaseId, StreetSectionId};

/// A street, lane, alley or path: a line with a street section.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Street {
    /// The centerline, at least two vertices.
    pub line: Vec<Vertex>,
    /// The street section it is built to.
    pub section: StreetSectionId,
    /// Its name, empty where it has none.
    pub name: String,
    /// What it does in the network.
    pub role: StreetRole,
    /// Who owns it.
    pub owner: StreetOwner,
    /// Whether it stands, stays, goes or comes.
    pub status: Status,
    /// Whether it lies outside the site: it carries walking and traffic, and is not counted in the site's figures.
    pub is_outside: bool,
    /// Level: 0 on the ground, 1 above, −1 below. Streets of unlike level share land but no intersection.
    pub level: i8,
    /// The phase it is built in; `None` for the first.
    pub phase: Option<PhaseId>,
}

/// A vertex of a centerline.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Vertex {
    /// Where it is. For a tied vertex, the foot of the tie rounded to 1 mm, recomputed when that street moves.
    pub point: PlanPoint,
    /// Radius of the rounded corner at this vertex, 0 for a sharp one, in millimeters.
    pub corner_radius_mm: u32,
    /// The street this vertex holds on to.
    pub tie: Option<Tie>,
}

/// A hold on another street: the vertex stays at this place along it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Tie {
    /// The street held on to.
    pub street: MarkId,
    /// Which segment of its centerline, from 0.
    pub segment: u32,
    /// Share of that segment's length from its start, in parts per billion (0 to 1,000,000,000).
    pub along_ppb: u32,
}

/// What a street does in the network.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum StreetRole {
    /// A wide street that carries through traffic.
    Thoroughfare,
    /// The ordinary street of a neighborhood.
    NeighborhoodStreet,
    /// A narrow, slow street.
    Lane,
    /// A service way behind lots.
    Alley,
    /// A way for walking, and perhaps for bicycles.
    Path,
}

/// Who owns a street.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum StreetOwner {
    /// The state or its transportation agency.
    State,
    /// The town or county.
    Town,
    /// A private owner or association.
    Private,
}

/// Whether a thing stands, stays, goes or comes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Status {
    /// Stands today, nothing decided.
    Existing,
    /// Stands today and stays.
    Kept,
    /// Stands today and goes.
    Removed,
    /// Is proposed.
    New,
}

/// How a street is divided across its width, and what may happen along it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StreetSection {
    /// Its name in the palette.
    pub name: String,
    /// Strips from the left edge of the right-of-way to the right, looking along the line.
    pub strips: Vec<Strip>,
    /// Target speed of motor traffic, in kilometers per hour; 0 where there is none.
    pub target_speed_km_h: u16,
    /// Whether people may walk along it.
    pub walkable: bool,
    /// Whether bicycles may use it.
    pub cyclable: bool,
    /// Whether motor vehicles may use it.
    pub drivable: bool,
    /// Whether lots may front on its left side.
    pub fronts_left: bool,
    /// Whether lots may front on its right side.
    pub fronts_right: bool,
}

/// One strip of a street section.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Strip {
    /// What it is for.
    pub kind: StripKind,
    /// Its width in millimeters.
    pub width_mm: u32,
}

/// What a strip of a street section is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum StripKind {
    /// Walking.
    Walk,
    /// Trees and planting.
    Planting,
    /// Parked cars.
    Parking,
    /// Bicycles.
    Bicycle,
    /// Moving motor traffic, one lane.
    Travel,
    /// A median.
    Median,
    /// A swale that takes stormwater.
    Swale,
}

impl StreetSection {
    /// Width of the right-of-way: the sum of its strips, in millimeters.
    #[must_use]
    pub fn right_of_way_mm(&self) -> u32 {
        self.strips
            .iter()
            .fold(0, |sum, strip| sum.saturating_add(strip.width_mm))
    }
}

impl Vertex {
    /// A sharp, free vertex.
    #[must_use]
    pub const fn at(point: PlanPoint) -> Self {
        Self {
            point,
            corner_radius_mm: 0,
            tie: None,
        }
    }
}
