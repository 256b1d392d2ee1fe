//! Kinds of faults, how grave they are, and their sentences.

use std::fmt;

use super::{Fault, FaultPlace, Severity};
use crate::plan::ids::{AlternativeId, BuildingTypeId, MarkId, PhaseId, StreetSectionId};

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
#[expect(missing_docs, reason = "each is named by its words below")]
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
        let point = match self {
            Self::Document => return write!(formatter, "plan"),
            Self::ProgramLine(line) => return write!(formatter, "program line {}", line + 1),
            Self::StreetSection(id) => return write!(formatter, "street section {id}"),
            Self::BuildingType(id) => return write!(formatter, "building type {id}"),
            Self::Setting(id) => return write!(formatter, "setting {id}"),
            Self::Topography => return write!(formatter, "topography"),
            Self::BaseImage => return write!(formatter, "base image"),
            Self::Alternative(id) => return write!(formatter, "alternative {id}"),
            Self::Site(point) => {
                write!(formatter, "site boundary")?;
                point
            }
            Self::Mark(alternative, id, point) => {
                write!(formatter, "mark {id} of alternative {alternative}")?;
                point
            }
        };
        if let Some(point) = point {
            let (x_m, y_m) = point.to_m();
            write!(formatter, " at {x_m} m east, {y_m} m north")?;
        }
        Ok(())
    }
}

impl fmt::Display for FaultKind {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::OriginOutOfRange => {
                write!(
                    formatter,
                    "the origin must lie within 180 degrees of longitude and 89 of latitude"
                )
            }
            Self::NoAlternative => write!(formatter, "there is no alternative"),
            Self::MarkIdTaken(first) => write!(formatter, "its id is also used in alternative {first}"),
            Self::BeyondLimit => write!(formatter, "lies more than 100 km from the plan's origin"),
            Self::TooShortLine => write!(formatter, "a line needs two points apart from each other"),
            Self::TooFewCorners => write!(formatter, "an outline needs three points apart from each other"),
            Self::NoArea => write!(formatter, "the outline encloses no area"),
            Self::CrossesItself => write!(formatter, "the outline crosses or touches itself"),
            Self::NoStreetSection(id) => write!(formatter, "there is no street section {id}"),
            Self::NoBuildingType(id) => write!(formatter, "there is no building type {id}"),
            Self::NoPhase(id) => write!(formatter, "there is no phase {id}"),
            Self::TiedToNothing(id) => write!(formatter, "tied to street {id}, which is not there"),
            Self::TiedBeyondStreet(id) => write!(formatter, "tied beyond the end of street {id}"),
            Self::TiedInCircle(id) => write!(formatter, "tied in a circle through street {id}"),
            Self::OffItsTie(id) => write!(formatter, "does not stand where it is tied to street {id}"),
            Self::SideOfNoStreet(id) => write!(formatter, "a side faces street {id}, which is not there"),
            Self::OverWhole(measure) => write!(formatter, "{} must not exceed a whole", words(*measure)),
            Self::Zero(Measure::WalkingPace) => write!(formatter, "must be more than 0"),
            Self::Zero(measure) => write!(formatter, "{} must be more than 0", words(*measure)),
            Self::NotFinite => write!(formatter, "must be a finite number"),
            Self::OutOfOrder => write!(formatter, "low, typical and high must rise in this order"),
            Self::UnlikelyPace => write!(formatter, "people walk at 0.3 to 3 meters a second"),
            Self::AskedTwice => write!(formatter, "an earlier line asks for the same"),
            Self::NamedTwice => write!(formatter, "is named twice"),
            Self::NoStrips => write!(formatter, "has no strips"),
            Self::NoTravelLane => write!(formatter, "is for motor vehicles and has no travel lane"),
            Self::HomesWithoutFloor => write!(formatter, "has homes and no floor area for them"),
            Self::FloorWithoutHomes => write!(formatter, "has floor area for homes and no homes"),
            Self::RaggedRows { heights, columns } => {
                write!(formatter, "{heights} heights do not fill whole rows of {columns}")
            }
            Self::NotAnImage => write!(formatter, "holds no image"),
            Self::MoreVotesThanPeople => write!(formatter, "has more votes than people present"),
        }
    }
}

const fn words(measure: Measure) -> &'static str {
    match measure {
        Measure::ProgramShares => "shares of the program",
        Measure::Intensity => "intensity",
        Measure::LotShares => "covered, paved and planted shares of the lot",
        Measure::OutsideTrips => "shares of outside trips",
        Measure::Opacity => "opacity",
        Measure::LotWidth => "lot width",
        Measure::LotDepth => "lot depth",
        Measure::StripWidth => "width of a strip",
        Measure::PersonsPerHome => "people per home",
        Measure::Stories => "stories of a side",
        Measure::WalkingPace => "walking pace",
        Measure::Spacing => "spacing of heights",
        Measure::Columns => "number of columns",
    }
}
