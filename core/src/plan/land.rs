//! Marks that give land a meaning: uses, bubbles, constraints, places, parcels.

use super::building::LandUse;
use super::coordinates::PlanPoint;
use super::ids::{BuildingTypeId, MarkId, PhaseId};
use crate::passing::passed;

/// The use of one face of the fabric: what stands on its buildable land.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct UseMark {
    /// A point inside the face. A mark whose face has opened up sleeps here and wakes when the land is enclosed again.
    pub anchor: PlanPoint,
    /// Portions of the face's buildable land by building type; what they leave is without use.
    pub program: Vec<Portion>,
    /// Buildable land the mark covered when it was last laid, in square meters.
    pub land_m2: u32,
    /// Sides of the face that differ from the program.
    pub sides: Vec<SideUse>,
    /// The phase it is built in; `None` for the first.
    pub phase: Option<PhaseId>,
}

/// A building type and the share of land it takes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Portion {
    /// The building type.
    pub building_type: BuildingTypeId,
    /// Its share of the land, in parts per million.
    pub share_ppm: u32,
}

/// One side of a face: the run of its boundary along one hand of one street nearest to `at`.
///
/// A side is named by the street it faces, so it stays on both halves of a face that is cut across.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SideUse {
    /// The street the side faces.
    pub street: MarkId,
    /// On which hand of that street the face lies, looking along its line.
    pub hand: Hand,
    /// Where along the street the side was painted: tells runs apart when a street bounds several sides.
    pub at: PlanPoint,
    /// How lots stand to this side.
    pub fronting: Fronting,
    /// The building type along this side; `None` for the face's own program.
    pub building_type: Option<BuildingTypeId>,
    /// Whether the ground floor opens to the street as shops.
    pub shopfront: bool,
    /// Most stories along this side; `None` for the building type's own.
    pub stories: Option<u8>,
    /// Depth from the right-of-way to the building, in millimeters; `None` for the building type's own.
    pub setback_mm: Option<u32>,
}

/// Left or right of a line, looking along it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Hand {
    /// Left of the line.
    Left,
    /// Right of the line.
    Right,
}

/// How lots stand to a side of their block.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Fronting {
    /// They front on it.
    Front,
    /// Their sides lie along it.
    Side,
    /// Their rears lie along it.
    Rear,
    /// Nothing touches it.
    None,
}

/// A bubble: a use and an intensity before any street exists.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SoftArea {
    /// Its outline, closed by itself.
    pub outline: Vec<PlanPoint>,
    /// Portions of its land by building type, inherited by blocks drawn inside.
    pub program: Vec<Portion>,
    /// The use it is tinted by.
    pub land_use: LandUse,
    /// Share of the land that is built upon as the program says, in parts per million: the intensity.
    pub intensity_ppm: u32,
    /// The phase it is built in; `None` for the first.
    pub phase: Option<PhaseId>,
}

/// Land that something holds back.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ConstraintArea {
    /// Its name, empty where it has none.
    pub name: String,
    /// Its outline, closed by itself.
    pub outline: Vec<PlanPoint>,
    /// What holds the land back.
    pub kind: ConstraintKind,
    /// Whether it may be built upon.
    pub is_buildable: bool,
    /// Whether it counts as land of the whole-site density.
    pub counts_in_site: bool,
    /// Whether it counts as buildable land.
    pub counts_in_buildable: bool,
    /// Whether people may walk across it, where no street or path is drawn: from a place beyond it to a street.
    pub is_walkable: bool,
}

/// What holds land back.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum ConstraintKind {
    /// Open water.
    Water,
    /// Land that floods.
    Floodplain,
    /// Wetland.
    Wetland,
    /// Land too steep to build upon.
    Steep,
    /// An easement or utility corridor.
    Easement,
    /// Land under conservation.
    Conservation,
    /// Contaminated ground.
    Contaminated,
    /// Land kept as it is by choice.
    Keep,
}

/// A place people go to.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Place {
    /// Its name, empty where it has none.
    pub name: String,
    /// What it is.
    pub kind: PlaceKind,
    /// Where it is; reach is from all of it.
    pub footprint: Footprint,
    /// Least size that makes it count, in square meters.
    pub minimum_size_m2: u32,
    /// How sure it is.
    pub certainty: Certainty,
    /// The phase it opens in; `None` for the first.
    pub phase: Option<PhaseId>,
}

/// What a place is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum PlaceKind {
    /// The neighborhood's center: a square or a stretch of street.
    Center,
    /// A transit stop.
    TransitStop,
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

/// How much land a place takes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Footprint {
    /// A point.
    Point(PlanPoint),
    /// A stretch, usually along a street.
    Line(Vec<PlanPoint>),
    /// An outline, closed by itself.
    Area(Vec<PlanPoint>),
}

impl Footprint {
    /// Its points, in the order in which they are drawn.
    #[must_use]
    pub const fn points(&self) -> &[PlanPoint] {
        match self {
            Self::Point(point) => std::slice::from_ref(point),
            Self::Line(points) | Self::Area(points) => points.as_slice(),
        }
    }
}

/// How sure a place is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Certainty {
    /// It is there.
    Existing,
    /// Somebody has committed to it.
    Committed,
    /// It is hoped for.
    HopedFor,
}

/// A connection of the site to the existing street network.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SiteAccess {
    /// Its name, empty where it has none.
    pub name: String,
    /// Where it is.
    pub at: PlanPoint,
    /// Share of outside trips that use it, in parts per million; `None` where it is to be worked out.
    pub outside_trips_ppm: Option<u32>,
}

/// A parcel and the group its owner belongs to; never a name.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Parcel {
    /// Its label, such as a lot number.
    pub label: String,
    /// Its outline, closed by itself.
    pub outline: Vec<PlanPoint>,
    /// The owner's group.
    pub owner: OwnerGroup,
    /// What is asked of the lots beside it; `None` for nothing.
    pub beside: Option<Beside>,
}

/// Groups of owners.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum OwnerGroup {
    /// Public land.
    Public,
    /// An owner who is willing.
    Willing,
    /// An owner not yet asked.
    Unknown,
    /// An owner who is unwilling.
    Unwilling,
}

passed!(enum OwnerGroup { 0 = Public, 1 = Willing, 2 = Unknown, 3 = Unwilling });

/// A line people can not cross on foot except at a crossing.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Barrier {
    /// Its name, such as a railway, a creek or a fence.
    pub name: String,
    /// Its line.
    pub line: Vec<PlanPoint>,
    /// What is asked of the lots beside it; `None` for nothing.
    pub beside: Option<Beside>,
}

/// What a fence or a property line asks of the lots beside it, as a neighbor does.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Beside {
    /// A lot that comes as near as this stands beside the line, in millimeters.
    pub reach_mm: u32,
    /// Most stories on lots beside it; `None` for as many as the building type has.
    pub stories: Option<u8>,
    /// No building stands nearer than this to it, in millimeters; `None` for as the lot allows.
    pub clear_mm: Option<u32>,
}

impl Beside {
    /// How near a lot lies that stands beside a line, as long as nobody says otherwise: 20 feet, the width of a service
    /// lane or two yards between. Common practice, no source.
    pub const USUAL_REACH_MM: u32 = 6_096;
}

impl Default for Beside {
    /// Nothing asked, of lots within the usual reach.
    fn default() -> Self {
        Self {
            reach_mm: Self::USUAL_REACH_MM,
            stories: None,
            clear_mm: None,
        }
    }
}

/// A place to cross a street or a barrier.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Crossing {
    /// Where it is.
    pub at: PlanPoint,
    /// Mean wait before crossing, in tenths of a second.
    pub delay_tenths_s: u32,
}

/// What lies outside the site and counts for walking and traffic, never for the site's own density or counts.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OutsideContext {
    /// Its name, empty where it has none.
    pub name: String,
    /// Where it is.
    pub footprint: Footprint,
    /// Homes there.
    pub homes: u32,
    /// Jobs there.
    pub jobs: u32,
    /// Shop floor area there, in square meters.
    pub shop_floor_m2: u32,
}

/// A remark pinned to the drawing, and what was done about it.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Note {
    /// Where it is pinned.
    pub at: PlanPoint,
    /// What it says.
    pub text: String,
    /// The table or person that wrote it.
    pub author: String,
    /// Votes it received.
    pub votes: u32,
    /// People present when the votes were counted.
    pub present: u32,
    /// What answers it, in the order it was done; empty while nothing does.
    pub answers: Vec<RemarkAnswer>,
    /// Figures that changed with the answer, one sentence each, as they were said when somebody kept them.
    pub figures: Vec<String>,
}

/// One thing that answers a remark.
///
/// Steps are in the history, which is not in the file: so the step is told in words, and by the marks it changed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RemarkAnswer {
    /// What was done, as the history named it; empty where marks alone answer it.
    pub step: String,
    /// Marks of the remark's own alternative that it drew, changed or deleted. Some may be gone; no other mark takes
    /// their ids while they are named here ([`super::document::Document::next_mark_id`]).
    pub marks: Vec<MarkId>,
}
