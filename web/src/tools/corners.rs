//! Drawing outlines and lines corner by corner: the site, areas, land of places, barriers.
//!
//! An outline ends on its first corner again, a line on its last; Enter ends either, Backspace or Escape takes a corner
//! back. A soft area can also be pulled open: press and drag, and a bubble fills the box. Corners of the site's boundary
//! can be dragged while it is what is drawn.

use hobnail_core::plan::document::Site;
use hobnail_core::plan::{Edit, Footprint, Mark, MarkId, PlanPoint};
use hobnail_core::say;

use super::snap::{self, Reason, Snap};
use super::{At, Hints, Input, Label, Selection, Sight, Step, near, select, shape};
use crate::input::Key;

/// What the tool is in the middle of.
#[derive(Clone, Debug, PartialEq)]
pub enum State {
    /// Nothing is begun.
    Resting {
        /// Where the first corner would land.
        hover: Option<Snap>,
        /// What it waits for, by what is drawn.
        awaits: &'static str,
    },
    /// A corner of the site's boundary is held.
    Held {
        /// The boundary when it was picked up.
        site: Site,
        /// Which corner, and whether it is a new one.
        corner: (usize, bool),
        /// Where it was pressed.
        from: PlanPoint,
        /// Where it lands, once it has moved.
        to: Option<Snap>,
    },
    /// There is at least a first corner.
    Drawing(Drawing),
}

/// An outline or line that is being drawn.
#[derive(Clone, Debug, PartialEq)]
pub struct Drawing {
    /// The mark it will be; none for the site.
    id: MarkId,
    /// The site when it was begun.
    site: Site,
    /// Corners so far; never empty.
    corners: Vec<PlanPoint>,
    /// Where the next one would land.
    hover: Option<Snap>,
    /// Whether the pointer is down.
    is_pressed: bool,
    /// Whether it is a line rather than an outline.
    is_line: bool,
    /// Whether it is a bubble pulled open from the first corner.
    is_bubble: bool,
}

impl State {
    /// Nothing begun.
    #[must_use]
    pub fn resting() -> Self {
        Self::Resting {
            hover: None,
            awaits: say!("tools-site-first"),
        }
    }

    /// Whether a gesture is open.
    #[must_use]
    pub const fn is_busy(&self) -> bool {
        matches!(self, Self::Drawing(_) | Self::Held { to: Some(_), .. })
    }

    /// Whether corners are set one by one, and no bubble is pulled open.
    #[must_use]
    pub const fn is_by_corners(&self) -> bool {
        matches!(self, Self::Drawing(drawing) if !drawing.is_bubble)
    }

    /// Whether what is previewed has a corner more than those that are set.
    #[must_use]
    pub const fn shows_hover(&self) -> bool {
        self.is_by_corners() && matches!(self, Self::Drawing(drawing) if drawing.hover.is_some())
    }
}

/// Answers one event; `draft` is the mark that is drawn, `None` for the site.
#[must_use]
pub fn respond(state: State, input: Input, sight: &Sight<'_>, draft: Option<&Mark>) -> (State, Vec<Step>) {
    match state {
        State::Resting { .. } => rest(input, sight, draft),
        State::Held { site, corner, from, to } => hold(site, corner, from, to, input, sight),
        State::Drawing(drawing) => drawing.respond(input, sight, draft),
    }
}

/// What the tool waits for, in words.
#[must_use]
pub fn awaits(state: &State) -> &'static str {
    match state {
        State::Resting { awaits, .. } => awaits,
        State::Held { .. } => say!("tools-corner-held"),
        State::Drawing(drawing) if drawing.is_bubble => say!("tools-bubble"),
        State::Drawing(drawing) if drawing.corners.len() < 2 => say!("tools-corner-next"),
        State::Drawing(drawing) if drawing.is_line => say!("tools-line-more"),
        State::Drawing(_) => say!("tools-outline-more"),
    }
}

/// Nothing begun, with words for what would be.
fn resting(hover: Option<Snap>, sight: &Sight<'_>, draft: Option<&Mark>) -> State {
    let awaits = match draft {
        None if sight.document.site.boundary.is_empty() => say!("tools-site-first"),
        None => say!("tools-site-done"),
        Some(Mark::SoftArea(_)) => say!("tools-soft-first"),
        Some(Mark::Barrier(_)) => say!("tools-line-first"),
        Some(_) => say!("tools-area-first"),
    };
    State::Resting { hover, awaits }
}

/// What is drawn over the plan.
#[must_use]
pub fn hints(state: &State) -> Hints {
    match state {
        State::Resting { hover, .. } => Hints {
            snap: *hover,
            ..Hints::default()
        },
        State::Held { to, .. } => Hints {
            snap: *to,
            ..Hints::default()
        },
        State::Drawing(drawing) => drawing.hints(),
    }
}

/// Where a corner lands: on an intersection, a corner or end, a street, the edge of another area, else the grid. With
/// snapping off, or Alt held, that is the grid, or the first corner, which closes the outline.
#[must_use]
pub fn snapped(at: At, drawn: MarkId, own_start: Option<PlanPoint>, is_site: bool, sight: &Sight<'_>) -> Snap {
    let from = at.point;
    if sight.is_free(at) {
        let is_near = |start: &PlanPoint| (from.squared_distance_mm2(*start) as f64).sqrt() <= sight.reach_mm;
        return own_start.filter(is_near).map_or(snap::free(from), |point| Snap {
            point,
            tie: None,
            reason: Reason::OwnStart,
        });
    }
    let landed = snap::snap(from, None, own_start, sight);
    let is_free = matches!(landed.reason, Reason::Grid | Reason::SiteBoundary);
    let is_on_line = is_free || landed.reason == Reason::OnStreet;
    let Some(alternative) = sight.drawn().filter(|_| is_on_line) else {
        return landed;
    };
    let (mut corner, mut edge) = ((sight.reach_mm, None), (sight.reach_mm, None));
    for held in shape::outlines(sight.document, alternative, drawn, !is_site) {
        let points = held.points();
        for point in points {
            let away = (from.squared_distance_mm2(*point) as f64).sqrt();
            if away < corner.0 {
                corner = (away, Some(*point));
            }
        }
        if let (Footprint::Area(_), Some((foot, away))) = (&held, near::foot_on_outline(from, points))
            && away < edge.0
        {
            edge = (away, Some(foot));
        }
    }
    let at = |point: PlanPoint, reason: Reason| Snap {
        point,
        tie: None,
        reason,
    };
    match (corner.1, edge.1) {
        (Some(point), _) => at(point, Reason::Corner),
        (None, Some(point)) if landed.reason == Reason::Grid => at(point, Reason::AreaEdge),
        // The boundary that is being drawn is no reason for its own corner.
        _ if is_site && landed.reason == Reason::SiteBoundary => snap::on_grid(from),
        _ => landed,
    }
}

fn rest(input: Input, sight: &Sight<'_>, draft: Option<&Mark>) -> (State, Vec<Step>) {
    match input {
        Input::Move(at) => {
            let hover = Some(snapped(at, sight.next_id, None, draft.is_none(), sight));
            (resting(hover, sight, draft), Vec::new())
        }
        Input::Down(at) => {
            let site = &sight.document.site;
            let corner = shape::corner_at(at.point, &site.boundary, true, sight.reach_mm);
            match corner.filter(|_| draft.is_none()) {
                Some(corner) => {
                    let state = State::Held {
                        site: site.clone(),
                        corner,
                        from: at.point,
                        to: None,
                    };
                    (state, Vec::new())
                }
                None => begin(at, sight, draft),
            }
        }
        Input::Key(Key::Delete | Key::Backspace) => {
            let (_, steps) = select::respond(select::State::Resting, input, sight);
            (resting(None, sight, draft), steps)
        }
        Input::Key(Key::Escape) => (resting(None, sight, draft), vec![Step::Select(None)]),
        Input::Leave | Input::GiveUp | Input::Up(_) | Input::Key(_) => (resting(None, sight, draft), Vec::new()),
    }
}

fn begin(at: At, sight: &Sight<'_>, draft: Option<&Mark>) -> (State, Vec<Step>) {
    let first = snapped(at, sight.next_id, None, draft.is_none(), sight);
    let label = draft.map_or(Label::DrawSite, |mark| Label::Draw(mark.kind()));
    let drawing = Drawing {
        id: sight.next_id,
        site: sight.document.site.clone(),
        corners: vec![first.point],
        hover: None,
        is_pressed: true,
        is_line: matches!(draft, Some(Mark::Barrier(_))),
        is_bubble: false,
    };
    (State::Drawing(drawing), vec![Step::Select(None), Step::Begin(label)])
}

fn hold(
    site: Site,
    corner: (usize, bool),
    from: PlanPoint,
    to: Option<Snap>,
    input: Input,
    sight: &Sight<'_>,
) -> (State, Vec<Step>) {
    match input {
        Input::Move(at) => {
            let away = (from.squared_distance_mm2(at.point) as f64).sqrt();
            if to.is_none() && away <= sight.reach_mm / 3.0 {
                return (State::Held { site, corner, from, to }, Vec::new());
            }
            let landed = snapped(at, sight.next_id, None, true, sight);
            let mut steps = Vec::new();
            if to.is_none() {
                steps.push(Step::Begin(Label::MoveSite));
            }
            let boundary = shape::with_corner(site.boundary.clone(), corner, landed.point, 3, sight.reach_mm);
            steps.push(Step::Change(vec![site_edit(&site, boundary)]));
            let to = Some(landed);
            (State::Held { site, corner, from, to }, steps)
        }
        Input::Up(_) if to.is_some() => (resting(None, sight, None), vec![Step::Commit]),
        // Pressed and let go: the corner is where a new boundary begins.
        Input::Up(at) => {
            let (state, steps) = begin(at, sight, None);
            let (state, more) = respond(state, input, sight, None);
            (state, steps.into_iter().chain(more).collect())
        }
        Input::Key(Key::Escape) | Input::GiveUp => {
            let steps = to.map(|_| Step::Cancel);
            (resting(None, sight, None), steps.into_iter().collect())
        }
        _ => (State::Held { site, corner, from, to }, Vec::new()),
    }
}

impl Drawing {
    fn respond(mut self, input: Input, sight: &Sight<'_>, draft: Option<&Mark>) -> (State, Vec<Step>) {
        let fewest = if self.is_line { 2 } else { 3 };
        let own_start = self.corners.first().copied();
        let own_start = own_start.filter(|_| !self.is_line && self.corners.len() >= 3);
        let place = |at: At| snapped(at, self.id, own_start, draft.is_none(), sight);
        match input {
            Input::Move(at) => {
                let from = self.corners.first().copied().unwrap_or(at.point);
                let away = (from.squared_distance_mm2(at.point) as f64).sqrt();
                let can_open = matches!(draft, Some(Mark::SoftArea(_))) && self.corners.len() == 1;
                self.is_bubble |= self.is_pressed && can_open && away > sight.reach_mm;
                self.hover = Some(if self.is_bubble {
                    snap::on_grid(at.point)
                } else {
                    place(at)
                });
                self.shown(sight, draft, fewest)
            }
            Input::Down(at) => {
                let next = place(at);
                let is_last = self.is_last(at.point, next.point, sight);
                if is_last || next.reason == Reason::OwnStart {
                    return self.end(sight, draft, fewest);
                }
                self.corners.push(next.point);
                (self.hover, self.is_pressed) = (None, true);
                self.shown(sight, draft, fewest)
            }
            Input::Up(_) if self.is_bubble => self.end(sight, draft, fewest),
            Input::Up(at) => {
                let next = place(at);
                let is_dragged = self.is_pressed && !self.is_last(at.point, next.point, sight);
                self.is_pressed = false;
                if is_dragged && next.reason == Reason::OwnStart {
                    return self.end(sight, draft, fewest);
                }
                if is_dragged {
                    self.corners.push(next.point);
                }
                self.shown(sight, draft, fewest)
            }
            Input::Key(Key::Enter) => self.end(sight, draft, fewest),
            Input::Key(Key::Escape) if self.is_bubble => (resting(None, sight, draft), vec![Step::Cancel]),
            Input::Key(Key::Escape | Key::Backspace | Key::Delete) => {
                self.corners.pop();
                if self.corners.is_empty() {
                    return (resting(None, sight, draft), vec![Step::Cancel]);
                }
                self.hover = None;
                self.shown(sight, draft, fewest)
            }
            Input::GiveUp => (resting(None, sight, draft), vec![Step::Cancel]),
            Input::Leave => {
                self.hover = None;
                self.shown(sight, draft, fewest)
            }
            Input::Key(_) => (State::Drawing(self), Vec::new()),
        }
    }

    /// Whether a press at `at`, landing at `next`, means the last corner again.
    fn is_last(&self, at: PlanPoint, next: PlanPoint, sight: &Sight<'_>) -> bool {
        let last = self.corners.last();
        last.is_some_and(|last| *last == next || (last.squared_distance_mm2(at) as f64).sqrt() <= sight.reach_mm / 2.0)
    }

    fn shown(self, sight: &Sight<'_>, draft: Option<&Mark>, fewest: usize) -> (State, Vec<Step>) {
        let with_hover = self.points(true);
        let edit = (with_hover.len() >= fewest).then(|| self.edit(with_hover, sight, draft));
        (State::Drawing(self), vec![Step::Change(edit.into_iter().collect())])
    }

    fn end(self, sight: &Sight<'_>, draft: Option<&Mark>, fewest: usize) -> (State, Vec<Step>) {
        let points = self.points(false);
        if points.len() < fewest {
            return (resting(None, sight, draft), vec![Step::Cancel]);
        }
        let mut steps = vec![Step::Change(vec![self.edit(points, sight, draft)])];
        if draft.is_some() {
            steps.push(Step::Select(Some(Selection::Place(self.id))));
        }
        steps.push(Step::Commit);
        let awaits = if draft.is_none() {
            say!("tools-site-done")
        } else {
            say!("tools-area-done")
        };
        (State::Resting { hover: None, awaits }, steps)
    }

    /// The points as they stand, with the pointer's where that is asked for; none twice in a row.
    fn points(&self, with_hover: bool) -> Vec<PlanPoint> {
        let hover = self.hover.map(|snap| snap.point);
        if self.is_bubble {
            return match (self.corners.first(), hover) {
                (Some(from), Some(to)) => bubble(*from, to),
                _ => Vec::new(),
            };
        }
        let mut points = self.corners.clone();
        points.extend(hover.filter(|_| with_hover));
        points.dedup();
        while points.len() > 1 && points.first() == points.last() {
            points.pop();
        }
        points
    }

    fn edit(&self, points: Vec<PlanPoint>, sight: &Sight<'_>, draft: Option<&Mark>) -> Edit {
        let Some(draft) = draft else {
            return site_edit(&self.site, points);
        };
        let shape = if self.is_line {
            Footprint::Line(points)
        } else {
            Footprint::Area(points)
        };
        Edit::Mark {
            alternative: sight.alternative,
            id: self.id,
            before: None,
            after: Some(Box::new(shape::laid(draft.clone(), shape))),
        }
    }

    fn hints(&self) -> Hints {
        let points = self.points(true);
        let run = match points.as_slice() {
            [.., a, b] if !self.is_bubble => {
                let middle = shape::middles(&[*a, *b], false).first().copied();
                middle.map(|middle| (middle, (a.squared_distance_mm2(*b) as f64).sqrt()))
            }
            _ => None,
        };
        Hints {
            snap: self.hover,
            points: if self.is_bubble {
                Vec::new()
            } else {
                self.corners.clone()
            },
            length: run,
            land: if points.len() >= 3 { points.clone() } else { Vec::new() },
            stretch: if points.len() == 2 { points } else { Vec::new() },
            ..Hints::default()
        }
    }
}

fn site_edit(site: &Site, boundary: Vec<PlanPoint>) -> Edit {
    Edit::Site {
        before: site.clone(),
        after: Site { boundary },
    }
}

/// A rounded outline that fills the box between two corners, between a circle and a square.
fn bubble(from: PlanPoint, to: PlanPoint) -> Vec<PlanPoint> {
    const CORNERS: u32 = 28;
    /// The exponent of the superellipse: 2 is an ellipse.
    const ROUNDNESS: f64 = 2.6;
    let half = |a: i32, b: i32| {
        (
            f64::midpoint(f64::from(a), f64::from(b)),
            (f64::from(b) - f64::from(a)) / 2.0,
        )
    };
    let ((x, half_x), (y, half_y)) = (half(from.x_mm, to.x_mm), half(from.y_mm, to.y_mm));
    let out = |share: f64| hobnail_core::number::power(share.abs(), 2.0 / ROUNDNESS).copysign(share);
    let corner = |step: u32| {
        let angle_rad = f64::from(step) / f64::from(CORNERS) * std::f64::consts::TAU;
        let right = x + half_x * out(hobnail_core::number::cos(angle_rad));
        let up = y + half_y * out(hobnail_core::number::sin(angle_rad));
        snap::on_grid(PlanPoint::new(right as i32, up as i32)).point
    };
    let mut points: Vec<PlanPoint> = (0..CORNERS).map(corner).collect();
    points.dedup();
    points
}

#[cfg(test)]
mod tests;
