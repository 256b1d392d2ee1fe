//! The drawing tools: each a state machine. An event and what can be seen go in; the next state and steps come out.
//!
//! Tools never write: they ask for steps ([`Step`]), which the application carries out on the open plan. A gesture is
//! begun, previewed as often as the pointer moves, and then committed or given up, so it is one entry of the history.

pub mod corners;
pub mod drafts;
pub mod drawing;
pub mod guides;
pub mod near;
pub mod place;
pub mod select;
pub mod shape;
pub mod snap;
pub mod street;
pub mod uses;

#[cfg(test)]
pub(crate) mod fixtures;

use hobnail_core::plan::land::Hand;
use hobnail_core::plan::street::StreetRole;
use hobnail_core::plan::{
    Alternative, AlternativeId, BuildingTypeId, Document, Edit, Mark, MarkId, MarkKind, PlanPoint, StreetSection,
    StreetSectionId,
};
use hobnail_core::say;

use crate::input::{Key, Modifiers};
use drafts::Drafts;
use snap::Snap;

/// What a tool is told.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Input {
    /// The pointer was pressed here.
    Down(At),
    /// The pointer is here now.
    Move(At),
    /// The pointer was let go here.
    Up(At),
    /// The pointer left the drawing.
    Leave,
    /// A key went down.
    Key(Key),
    /// What was begun is to be given up whole: something else is begun, or the system took the pointer.
    GiveUp,
}

/// A place on the plan, and the keys held there.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct At {
    /// The plan point under the pointer.
    pub point: PlanPoint,
    /// Keys held meanwhile.
    pub modifiers: Modifiers,
}

/// What a tool can see while it answers.
#[derive(Clone, Copy)]
pub struct Sight<'a> {
    /// The plan as shown, preview included.
    pub document: &'a Document,
    /// The alternative that is drawn on.
    pub alternative: AlternativeId,
    /// How near counts as near, in millimeters of plan.
    pub reach_mm: f64,
    /// The enclosed land at a point.
    pub land_at: &'a dyn Fn(PlanPoint) -> Option<Land>,
    /// What the palettes hold chosen.
    pub choices: &'a Choices,
    /// What the area and place tools draw next.
    pub drafts: &'a Drafts,
    /// What is selected.
    pub selection: Option<Selection>,
    /// Marks that are selected together; empty where at most one thing is.
    pub picked: &'a [MarkId],
    /// What was typed for the next point.
    pub typed: guides::Typed,
    /// The least mark id no gesture has used.
    pub next_id: MarkId,
}

/// A piece of enclosed land, as far as a tool cares.
#[derive(Clone, Debug, PartialEq)]
pub struct Land {
    /// Its outer boundary, closed by itself.
    pub outline: Vec<PlanPoint>,
    /// The use mark that lies on it.
    pub use_mark: Option<MarkId>,
    /// Its buildable land, in square meters.
    pub land_m2: u32,
    /// Its sides along streets.
    pub sides: Vec<LandSide>,
    /// Whether all of its boundary runs along streets, and none of it along the edge of the site alone.
    pub is_among_streets: bool,
}

/// A side of enclosed land: the run of its boundary along one hand of one street.
#[derive(Clone, Debug, PartialEq)]
pub struct LandSide {
    /// The street it faces.
    pub street: MarkId,
    /// On which hand of that street the land lies.
    pub hand: Hand,
    /// Its run along the street's centerline.
    pub run: Vec<PlanPoint>,
    /// From the centerline to the edge of the right-of-way, in millimeters.
    pub half_width_mm: f64,
}

/// What the palettes hold chosen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Choices {
    /// The street section new streets are built to.
    pub section: StreetSectionId,
    /// The building type land is painted with; `None` clears the land.
    pub building_type: Option<BuildingTypeId>,
    /// How much of the land a stroke paints.
    pub brush: Brush,
    /// How streets are drawn, and how far what is selected is turned and set off.
    pub drawing: drawing::Drawing,
}

/// How much of the land a stroke paints.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Brush {
    /// A side where the pointer is near one, else all of it.
    Nearest,
    /// All of the enclosed land.
    Whole,
    /// The nearest side.
    Side,
}

/// What is selected: a thing of the plan, never a derived one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Selection {
    /// A street whole.
    Street(MarkId),
    /// One corner or end of a street.
    Vertex(MarkId, usize),
    /// A place, or anything else with an extent of its own: see [`shape`].
    Place(MarkId),
    /// The use of a piece of land.
    Use(MarkId),
}

/// What a gesture is called in the history.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "each label says itself what it is")]
pub enum Label {
    DrawStreet,
    DrawBlocks,
    MoveStreet,
    MoveCorner,
    AddCorner,
    MovePlace,
    DeleteStreet,
    DeleteCorner,
    DeletePlace,
    ClearUse,
    PaintUse,
    Draw(MarkKind),
    DrawSite,
    MoveSite,
    MoveMark,
    DeleteMark,
    MoveSelection,
    DeleteSelection,
    Duplicate,
    Turn,
    Mirror,
    CutStreet,
    JoinStreets,
    OffsetStreet,
    RoundCorner,
}

/// What a tool asks for, in order.
#[derive(Clone, Debug, PartialEq)]
pub enum Step {
    /// Begin a gesture.
    Begin(Label),
    /// Show the plan as at the gesture's start with these edits, instead of the previous preview.
    Change(Vec<Edit>),
    /// Keep what is shown as one entry of the history.
    Commit,
    /// Give up the gesture.
    Cancel,
    /// Select this, or nothing.
    Select(Option<Selection>),
    /// Select these marks together.
    Pick(Vec<MarkId>),
}

/// What a tool wants drawn over the plan.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Hints {
    /// Where the next point lands, and why there.
    pub snap: Option<Snap>,
    /// Land that the next press acts upon.
    pub outline: Vec<PlanPoint>,
    /// A stretch of street that the next press acts upon.
    pub stretch: Vec<PlanPoint>,
    /// A side of land that the next press acts upon: its run, and how far from it in meters the land begins.
    pub side: Option<(Vec<PlanPoint>, f64)>,
    /// Points set so far.
    pub points: Vec<PlanPoint>,
    /// Land being drawn, whose size is shown.
    pub land: Vec<PlanPoint>,
    /// A length being drawn, in millimeters, beside its middle.
    pub length: Option<(PlanPoint, f64)>,
    /// Thin lines that show why a point lands where it does.
    pub lines: Vec<[PlanPoint; 2]>,
    /// What is measured on the way, and where it is said.
    pub words: Option<(PlanPoint, drawing::Sentence)>,
}

/// The tools of the rail.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum ToolKind {
    /// Pick, move and delete.
    Select,
    /// Draw streets.
    Street,
    /// Give land a use.
    Use,
    /// Draw the site, soft areas and land that something holds back.
    Area,
    /// Place a center and whatever else people go to, cross or remark on.
    Place,
    /// Move the view.
    Pan,
}

/// The chosen tool and what it is in the middle of.
#[derive(Clone, Debug, PartialEq)]
pub enum Tool {
    /// See [`select`].
    Select(select::State),
    /// See [`street`].
    Street(street::State),
    /// See [`uses`].
    Use(uses::State),
    /// See [`corners`].
    Area(corners::State),
    /// See [`place`].
    Place(place::State),
    /// Moving the view is the camera's own work.
    Pan,
}

impl ToolKind {
    /// All tools, in the order of the rail.
    pub const ALL: [Self; 6] = [
        Self::Select,
        Self::Area,
        Self::Street,
        Self::Use,
        Self::Place,
        Self::Pan,
    ];

    /// The word on the rail.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Select => say!("tools-select"),
            Self::Street => say!("tools-street"),
            Self::Use => say!("tools-use"),
            Self::Area => say!("tools-area"),
            Self::Place => say!("tools-place"),
            Self::Pan => say!("tools-view"),
        }
    }

    /// The key that chooses it.
    #[must_use]
    pub const fn key(self) -> char {
        match self {
            Self::Select => 'v',
            Self::Street => 's',
            Self::Use => 'u',
            Self::Area => 'a',
            Self::Place => 'p',
            Self::Pan => 'h',
        }
    }

    /// The tool at rest.
    #[must_use]
    pub fn at_rest(self) -> Tool {
        match self {
            Self::Select => Tool::Select(select::State::Resting),
            Self::Street => Tool::Street(street::State::Resting { hover: None }),
            Self::Use => Tool::Use(uses::State::Resting { hover: None }),
            Self::Area => Tool::Area(corners::State::resting()),
            Self::Place => Tool::Place(place::State::resting()),
            Self::Pan => Tool::Pan,
        }
    }
}

impl Tool {
    /// Which tool this is.
    #[must_use]
    pub const fn kind(&self) -> ToolKind {
        match self {
            Self::Select(_) => ToolKind::Select,
            Self::Street(_) => ToolKind::Street,
            Self::Use(_) => ToolKind::Use,
            Self::Area(_) => ToolKind::Area,
            Self::Place(_) => ToolKind::Place,
            Self::Pan => ToolKind::Pan,
        }
    }

    /// Answers one event: the next state stands in `self` afterwards, and the steps are returned in order.
    pub fn respond(&mut self, input: Input, sight: &Sight<'_>) -> Vec<Step> {
        match self {
            Self::Select(state) => next(state, input, sight, select::respond),
            Self::Street(state) => next(state, input, sight, street::respond),
            Self::Use(state) => next(state, input, sight, uses::respond),
            Self::Area(state) => next(state, input, sight, |state, input, sight| {
                corners::respond(state, input, sight, sight.drafts.area.as_ref())
            }),
            Self::Place(state) => next(state, input, sight, place::respond),
            Self::Pan => Vec::new(),
        }
    }

    /// Whether a gesture is open: undo then means taking it back.
    #[must_use]
    pub const fn is_busy(&self) -> bool {
        match self {
            Self::Select(state) => state.is_busy(),
            Self::Street(state) => state.is_busy(),
            Self::Use(state) => matches!(state, uses::State::Painting { .. }),
            Self::Area(state) => state.is_busy(),
            Self::Place(state) => state.is_busy(),
            Self::Pan => false,
        }
    }

    /// Whether a street or an outline is drawn point by point, which Enter ends.
    #[must_use]
    pub const fn is_drawing(&self) -> bool {
        match self {
            Self::Street(state) => matches!(state, street::State::Drawing { .. }),
            Self::Area(state) | Self::Place(place::State::Corners(state)) => state.is_by_corners(),
            _ => false,
        }
    }

    /// Whether what is previewed has a point more than those that are set: where the pointer is.
    #[must_use]
    pub const fn shows_hover(&self) -> bool {
        match self {
            Self::Street(state) => state.shows_hover(),
            Self::Area(state) | Self::Place(place::State::Corners(state)) => state.shows_hover(),
            _ => false,
        }
    }

    /// Whether a gesture or a tape is open, of which Escape takes the last point back.
    #[must_use]
    pub const fn is_by_points(&self) -> bool {
        self.is_busy() || matches!(self, Self::Street(street::State::Taping(_)))
    }

    /// What the tool waits for, in words.
    #[must_use]
    pub fn awaits(&self) -> &'static str {
        match self {
            Self::Select(state) => select::awaits(state),
            Self::Street(state) => street::awaits(state),
            Self::Use(state) => uses::awaits(state),
            Self::Area(state) => corners::awaits(state),
            Self::Place(state) => place::awaits(state),
            Self::Pan => say!("tools-view-awaits"),
        }
    }

    /// What the tool wants drawn over the plan.
    #[must_use]
    pub fn hints(&self) -> Hints {
        match self {
            Self::Select(state) => select::hints(state),
            Self::Street(state) => street::hints(state),
            Self::Use(state) => uses::hints(state),
            Self::Area(state) => corners::hints(state),
            Self::Place(state) => place::hints(state),
            Self::Pan => Hints::default(),
        }
    }
}

impl Label {
    /// What deleting a mark is called.
    #[must_use]
    pub const fn delete(mark: &Mark) -> Self {
        match mark {
            Mark::Place(_) => Self::DeletePlace,
            _ => Self::DeleteMark,
        }
    }

    /// The words of the label, as they follow "Undo:".
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::DrawStreet => say!("tools-step-draw-street"),
            Self::DrawBlocks => say!("tools-step-draw-blocks"),
            Self::MoveStreet => say!("tools-step-move-street"),
            Self::MoveCorner => say!("tools-step-move-corner"),
            Self::AddCorner => say!("tools-step-add-corner"),
            Self::MovePlace => say!("tools-step-move-place"),
            Self::DeleteStreet => say!("tools-step-delete-street"),
            Self::DeleteCorner => say!("tools-step-delete-corner"),
            Self::DeletePlace => say!("tools-step-delete-place"),
            Self::ClearUse => say!("tools-step-clear-use"),
            Self::PaintUse => say!("tools-step-paint-use"),
            Self::Draw(kind) => match kind {
                MarkKind::SoftArea => say!("tools-step-soft-area"),
                MarkKind::Constraint => say!("tools-step-constraint"),
                MarkKind::Parcel => say!("tools-step-parcel"),
                MarkKind::Outside => say!("tools-step-outside"),
                MarkKind::Barrier => say!("tools-step-barrier"),
                MarkKind::SiteAccess => say!("tools-step-site-access"),
                MarkKind::Crossing => say!("tools-step-crossing"),
                MarkKind::Note => say!("tools-step-note"),
                MarkKind::Street | MarkKind::Use | MarkKind::Place => say!("tools-step-place"),
            },
            Self::DrawSite => say!("tools-step-draw-site"),
            Self::MoveSite => say!("tools-step-move-site"),
            Self::MoveMark => say!("tools-step-move-mark"),
            Self::DeleteMark => say!("tools-step-delete-mark"),
            Self::MoveSelection => say!("tools-step-move-selection"),
            Self::DeleteSelection => say!("tools-step-delete-selection"),
            Self::Duplicate => say!("tools-step-duplicate"),
            Self::Turn => say!("tools-step-turn"),
            Self::Mirror => say!("tools-step-mirror"),
            Self::CutStreet => say!("tools-step-cut"),
            Self::JoinStreets => say!("tools-step-join"),
            Self::OffsetStreet => say!("tools-step-offset"),
            Self::RoundCorner => say!("tools-step-round"),
        }
    }
}

impl Selection {
    /// The mark that is selected, or that the selected part belongs to.
    #[must_use]
    pub const fn mark(self) -> MarkId {
        match self {
            Self::Street(id) | Self::Vertex(id, _) | Self::Place(id) | Self::Use(id) => id,
        }
    }
}

impl Sight<'_> {
    /// Whether a point lands where it is put, with snapping off or Alt held, and not on what is near.
    #[must_use]
    pub const fn is_free(&self, at: At) -> bool {
        at.modifiers.alt || !self.choices.drawing.snaps
    }

    /// The alternative drawn on; `None` only when it has gone from the document.
    #[must_use]
    pub fn drawn(&self) -> Option<&Alternative> {
        self.document.alternatives.get(&self.alternative)
    }
}

/// The role a street of this section usually has.
#[must_use]
pub fn usual_role(section: &StreetSection) -> StreetRole {
    const ALLEY_AT_MOST_MM: u32 = 8_000;
    const LANE_AT_MOST_MM: u32 = 11_000;
    const THOROUGHFARE_FROM_KM_H: u16 = 50;
    let lots_may_front = section.fronts_left || section.fronts_right;
    if !section.drivable {
        StreetRole::Path
    } else if section.target_speed_km_h >= THOROUGHFARE_FROM_KM_H {
        StreetRole::Thoroughfare
    } else if !lots_may_front && section.right_of_way_mm() <= ALLEY_AT_MOST_MM {
        StreetRole::Alley
    } else if section.right_of_way_mm() <= LANE_AT_MOST_MM {
        StreetRole::Lane
    } else {
        StreetRole::NeighborhoodStreet
    }
}

fn next<S: Clone>(
    state: &mut S,
    input: Input,
    sight: &Sight<'_>,
    respond: impl FnOnce(S, Input, &Sight<'_>) -> (S, Vec<Step>),
) -> Vec<Step> {
    let (after, steps) = respond(state.clone(), input, sight);
    *state = after;
    steps
}
