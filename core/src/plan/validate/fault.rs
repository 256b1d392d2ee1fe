//! Kinds of faults, how grave they are, and their sentences.

use std::fmt;

use super::{Fault, FaultPlace, Severity};
use crate::plan::coordinates::PlanPoint;
use crate::plan::ids::{AlternativeId, BuildingTypeId, MarkId, PhaseId, StreetSectionId};
use crate::say;

/// What is wrong.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum FaultKind {
    /// The geographic origin is out of range.
    OriginOutOfRange,
    /// There is no alternative.
    NoAlternative,
    /// The mark's id is also used in this alternative.
    MarkIdTaken(AlternativeId),
    /// A coordinate lies beyond the legal range.
    BeyondLimit,
    /// A line has fewer than two distinct points.
    TooShortLine,
    /// An outline has fewer than three distinct points.
    TooFewCorners,
    /// An outline encloses no area.
    NoArea,
    /// An outline crosses or touches itself.
    CrossesItself,
    /// There is no such street section.
    NoStreetSection(StreetSectionId),
    /// There is no such building type.
    NoBuildingType(BuildingTypeId),
    /// There is no such phase.
    NoPhase(PhaseId),
    /// A vertex is tied to a street that is not there.
    TiedToNothing(MarkId),
    /// A vertex is tied beyond the end of a street.
    TiedBeyondStreet(MarkId),
    /// Streets are tied in a circle through this one.
    TiedInCircle(MarkId),
    /// A tied vertex does not stand on the foot of its tie.
    OffItsTie(MarkId),
    /// A side of a use mark faces a street that is not there.
    SideOfNoStreet(MarkId),
    /// Shares add up to more than a whole.
    OverWhole(Measure),
    /// A measure must be more than zero.
    Zero(Measure),
    /// A value is not a finite number.
    NotFinite,
    /// Low, typical and high are out of order.
    OutOfOrder,
    /// A walking pace nobody keeps up: below 0.3 or above 3 meters a second.
    UnlikelyPace,
    /// The same thing is asked for twice.
    AskedTwice,
    /// A rule list is named twice.
    NamedTwice,
    /// A street section has no strips.
    NoStrips,
    /// A street section for motor vehicles has no travel lane.
    NoTravelLane,
    /// A building type has homes without floor area for them.
    HomesWithoutFloor,
    /// A building type has floor area for homes and no homes.
    FloorWithoutHomes,
    /// A building type has floor area where people work and no jobs on it.
    FloorWithoutJobs,
    /// The heights do not fill whole rows.
    RaggedRows {
        /// Heights there are.
        heights: usize,
        /// Samples in each row.
        columns: u32,
    },
    /// The base image has no bytes, or is not an image by its media type.
    NotAnImage,
    /// More votes than people present.
    MoreVotesThanPeople,
}

/// What is measured or shared out.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[expect(missing_docs, reason = "each is named by its messages")]
pub enum Measure {
    ProgramShares,
    Intensity,
    LotShares,
    OutsideTrips,
    Opacity,
    LotWidth,
    LotDepth,
    StripWidth,
    PersonsPerHome,
    Stories,
    WalkingPace,
    Spacing,
    Columns,
}

impl FaultKind {
    /// What the fault means for what is built on the document.
    #[must_use]
    pub const fn severity(&self) -> Severity {
        match self {
            Self::OriginOutOfRange
            | Self::NoAlternative
            | Self::BeyondLimit
            | Self::TooShortLine
            | Self::TooFewCorners
            | Self::NoArea
            | Self::NoStreetSection(_)
            | Self::NoBuildingType(_)
            | Self::SideOfNoStreet(_)
            | Self::Zero(
                Measure::LotWidth | Measure::LotDepth | Measure::WalkingPace | Measure::Spacing | Measure::Columns,
            )
            | Self::NotFinite
            | Self::OutOfOrder
            | Self::NoStrips
            | Self::RaggedRows { .. }
            | Self::NotAnImage => Severity::CannotBeUsed,
            _ => Severity::ShouldBeMended,
        }
    }
}

impl Fault {
    /// What the fault means for what is built on the document.
    #[must_use]
    pub const fn severity(&self) -> Severity {
        self.kind.severity()
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(formatter, "{}: {}", self.place, self.kind)
    }
}

impl fmt::Display for FaultPlace {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        let at = |point: &PlanPoint| {
            let (x_m, y_m) = point.to_m();
            (x_m.to_string(), y_m.to_string())
        };
        formatter.write_str(&match self {
            Self::Document => say!("plan-place-document").to_owned(),
            Self::ProgramLine(line) => say!("plan-place-program-line", number = line + 1),
            Self::StreetSection(id) => say!("plan-place-section", id = id.0),
            Self::BuildingType(id) => say!("plan-place-type", id = id.0),
            Self::Setting(id) => say!("plan-place-setting", id = id),
            Self::Topography => say!("plan-place-topography").to_owned(),
            Self::BaseImage => say!("plan-place-base-image").to_owned(),
            Self::Alternative(id) => say!("plan-place-alternative", id = id.0),
            Self::Site(None) => say!("plan-place-site").to_owned(),
            Self::Site(Some(point)) => {
                let (x_m, y_m) = at(point);
                say!("plan-place-site-at", east_m = x_m, north_m = y_m)
            }
            Self::Mark(alternative, id, None) => {
                say!("plan-place-mark", id = id.0, alternative = alternative.0)
            }
            Self::Mark(alternative, id, Some(point)) => {
                let (x_m, y_m) = at(point);
                say!(
                    "plan-place-mark-at",
                    id = id.0,
                    alternative = alternative.0,
                    east_m = x_m,
                    north_m = y_m
                )
            }
        })
    }
}

impl fmt::Display for FaultKind {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        let words = match self {
            Self::MarkIdTaken(first) => say!("plan-fault-mark-id-taken", alternative = first.0),
            Self::NoStreetSection(id) => say!("plan-fault-no-section", id = id.0),
            Self::NoBuildingType(id) => say!("plan-fault-no-type", id = id.0),
            Self::NoPhase(id) => say!("plan-fault-no-phase", id = id.0),
            Self::TiedToNothing(id) => say!("plan-fault-tied-to-nothing", street = id.0),
            Self::TiedBeyondStreet(id) => say!("plan-fault-tied-beyond", street = id.0),
            Self::TiedInCircle(id) => say!("plan-fault-tied-in-circle", street = id.0),
            Self::OffItsTie(id) => say!("plan-fault-off-its-tie", street = id.0),
            Self::SideOfNoStreet(id) => say!("plan-fault-side-of-no-street", street = id.0),
            Self::OverWhole(measure) => say!("plan-fault-over-whole", measure = measure.key()),
            Self::Zero(measure) => say!("plan-fault-zero", measure = measure.key()),
            Self::RaggedRows { heights, columns } => {
                say!("plan-fault-ragged-rows", heights = heights, columns = columns)
            }
            Self::OriginOutOfRange => say!("plan-fault-origin").to_owned(),
            Self::NoAlternative => say!("plan-fault-no-alternative").to_owned(),
            Self::BeyondLimit => say!("plan-fault-beyond-limit").to_owned(),
            Self::TooShortLine => say!("plan-fault-too-short").to_owned(),
            Self::TooFewCorners => say!("plan-fault-too-few-corners").to_owned(),
            Self::NoArea => say!("plan-fault-no-area").to_owned(),
            Self::CrossesItself => say!("plan-fault-crosses-itself").to_owned(),
            Self::NotFinite => say!("plan-fault-not-finite").to_owned(),
            Self::OutOfOrder => say!("plan-fault-out-of-order").to_owned(),
            Self::UnlikelyPace => say!("plan-fault-unlikely-pace").to_owned(),
            Self::AskedTwice => say!("plan-fault-asked-twice").to_owned(),
            Self::NamedTwice => say!("plan-fault-named-twice").to_owned(),
            Self::NoStrips => say!("plan-fault-no-strips").to_owned(),
            Self::NoTravelLane => say!("plan-fault-no-travel-lane").to_owned(),
            Self::HomesWithoutFloor => say!("plan-fault-homes-without-floor").to_owned(),
            Self::FloorWithoutHomes => say!("plan-fault-floor-without-homes").to_owned(),
            Self::FloorWithoutJobs => say!("plan-fault-floor-without-jobs").to_owned(),
            Self::NotAnImage => say!("plan-fault-not-an-image").to_owned(),
            Self::MoreVotesThanPeople => say!("plan-fault-more-votes").to_owned(),
        };
        formatter.write_str(&words)
    }
}

impl Measure {
    /// What the messages choose their sentence by.
    const fn key(self) -> &'static str {
        match self {
            Self::ProgramShares => "program-shares",
            Self::Intensity => "intensity",
            Self::LotShares => "lot-shares",
            Self::OutsideTrips => "outside-trips",
            Self::Opacity => "opacity",
            Self::LotWidth => "lot-width",
            Self::LotDepth => "lot-depth",
            Self::StripWidth => "strip-width",
            Self::PersonsPerHome => "people-per-home",
            Self::Stories => "stories",
            Self::WalkingPace => "walking-pace",
            Self::Spacing => "spacing",
            Self::Columns => "columns",
        }
    }
}
