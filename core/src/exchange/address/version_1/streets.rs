//! Streets: what they are, then vertex by vertex.

use crate::plan::coordinates::PlanPoint;
use crate::plan::ids::MarkId;
use crate::plan::street::{Status, Street, StreetOwner, StreetRole, Tie, Vertex};

use super::super::AddressFault;
use super::coder::Field;
use super::ground::way;
use super::walk::{Walk, fields};

const ROLES: [StreetRole; 5] = [
    StreetRole::NeighborhoodStreet,
    StreetRole::Thoroughfare,
    StreetRole::Lane,
    StreetRole::Alley,
    StreetRole::Path,
];
const OWNERS: [StreetOwner; 3] = [StreetOwner::Town, StreetOwner::State, StreetOwner::Private];
const STATUSES: [Status; 4] = [Status::New, Status::Existing, Status::Kept, Status::Removed];

/// How a vertex is told.
mod how {
    pub(super) const FREE: usize = 0;
    /// A point that stood before.
    pub(super) const NODE: usize = 1;
    /// A point that stood before, with the tie of the first there.
    pub(super) const TIED_NODE: usize = 2;
    /// Tied to a street that stands already, on its foot.
    pub(super) const TIED: usize = 3;
    /// Tied otherwise.
    pub(super) const LOOSE: usize = 4;
    /// As the vertex of the same number in the street this one is like.
    pub(super) const LIKE: usize = 5;
    /// As a line that is followed leads.
    pub(super) const FOLLOWING: usize = 6;
    pub(super) const COUNT: usize = 7;
}

impl Walk {
    /// A street. Remembers it to be held on to.
    pub(super) fn street(&mut self, id: MarkId, street: &mut Street, like: &Street) {
        let base = self.base_hint();
        let coder = &mut self.coder;
        coder.whole(fields::SECTION, &[like.section.0.into(), base], &mut street.section.0);
        let section = i64::from(street.section.0);
        coder.word(fields::ROLE, &[section], &ROLES, &mut street.role);
        coder.word(fields::OWNER, &[section], &OWNERS, &mut street.owner);
        coder.word(
            fields::STATUS,
            &[section, like.status as i64 + 8 * base],
            &STATUSES,
            &mut street.status,
        );
        street.is_outside = coder.flag(
            fields::OUTSIDE,
            &[street.status as i64, like.is_outside.into()],
            street.is_outside,
        );
        coder.whole(fields::LEVEL, &[like.level.into()], &mut street.level);
        let mut phase = street.phase.map(|phase| phase.0);
        coder.perhaps(
            fields::PHASE,
            &[phase_hint(like.phase), street.status as i64],
            &mut phase,
        );
        street.phase = phase.map(crate::plan::ids::PhaseId);
        coder.text(fields::STREET_NAME, &[section, base], &mut street.name);
        let mut line = std::mem::take(&mut street.line);
        self.line(section, &mut line, &like.line);
        self.ground
            .guide
            .remember(line.iter().map(|vertex| vertex.point).collect());
        self.ground.streets.push((id, line.clone()));
        street.line = line;
    }

    fn line(&mut self, section: i64, line: &mut Vec<Vertex>, like: &[Vertex]) {
        let base = self.base_hint();
        let like = if base == 1 { like } else { &[] };
        let count = self
            .coder
            .count(fields::VERTICES, &[section, like.len() as i64], line.len());
        line.resize(count, Vertex::at(PlanPoint::new(0, 0)));
        let mut radius = 0;
        let mut before: Option<(usize, Vertex)> = None;
        for place in 0..count {
            if self.coder.has_fault() {
                break;
            }
            let rank = if place == 0 {
                0
            } else if place + 1 == count {
                1
            } else {
                2
            };
            let from = before.map_or(self.street_start, |(_, vertex)| vertex.point);
            let ahead = self.ahead(line.get(..place).unwrap_or_default());
            let Some(vertex) = line.get_mut(place) else { break };
            let hints = [
                rank,
                section * 4 + rank,
                before.map_or(9, |(how, _)| how as i64) * 4 + rank,
            ];
            let how = self.vertex(&hints, from, ahead, vertex, like.get(place));
            if how != how::LIKE {
                let is_end = i64::from(rank < 2);
                self.coder.quantity(
                    fields::RADIUS,
                    &[is_end, is_end * 1_000_000 + radius],
                    &mut vertex.corner_radius_mm,
                );
                radius = if rank < 2 {
                    radius
                } else {
                    vertex.corner_radius_mm.into()
                };
            }
            self.ground.remember(vertex.point, vertex.tie);
            if place == 0 {
                self.street_start = vertex.point;
            }
            before = Some((how, *vertex));
        }
    }

    /// Which way a line goes on: as it went, or square to the street on which it begins.
    fn ahead(&self, line: &[Vertex]) -> (i64, i64) {
        match line {
            [.., a, b] => way(a.point, b.point),
            [Vertex { tie: Some(tie), .. }] => {
                let held = self.ground.line_of(tie.street).unwrap_or_default();
                match held.get(tie.segment as usize..).unwrap_or_default() {
                    [a, b, ..] => {
                        let (x, y) = way(a.point, b.point);
                        (-y, x)
                    }
                    _ => (0, 0),
                }
            }
            _ => (0, 0),
        }
    }

    fn vertex(
        &mut self,
        hints: &[i64],
        from: PlanPoint,
        ahead: (i64, i64),
        vertex: &mut Vertex,
        like: Option<&Vertex>,
    ) -> usize {
        let (coder, ground) = (&mut self.coder, &mut self.ground);
        let told = (!coder.is_reading()).then(|| {
            let follow = ground.guide.follows(ground.grid_mm, from, vertex.point);
            let stands_on = |tie: Tie| {
                let line = ground.line_of(tie.street)?;
                crate::plan::tie::foot(line, tie.segment, tie.along_ppb)
            };
            let how = match (vertex.tie, ground.node(vertex.point)) {
                _ if like == Some(vertex) => how::LIKE,
                (None, Some(_)) => how::NODE,
                (None, None) if follow.is_some() => how::FOLLOWING,
                (None, None) => how::FREE,
                (Some(tie), Some(Some(held))) if held == tie => how::TIED_NODE,
                (Some(tie), _) if stands_on(tie) == Some(vertex.point) => how::TIED,
                _ => how::LOOSE,
            };
            (how, follow)
        });
        let (how, follow) = told.unwrap_or((how::FREE, None));
        let how = coder.choice(fields::HOW, hints, how::COUNT, how);
        let field: Field = fields::VERTEX;
        if how != how::FOLLOWING {
            ground.guide.leave();
        }
        match how {
            how::FOLLOWING => {
                vertex.tie = None;
                let told = follow.unwrap_or_default();
                match ground.guide.follow(coder, fields::FOLLOW, ground.grid_mm, from, told) {
                    Some(point) => vertex.point = point,
                    None => coder.fault(AddressFault::Impossible),
                }
            }
            how::FREE => {
                vertex.tie = None;
                vertex.point = ground.free(coder, field, from, ahead, vertex.point);
            }
            how::NODE | how::TIED_NODE => {
                let (point, tie) = ground.node_near(coder, fields::NODE, from, vertex.point);
                vertex.point = point;
                vertex.tie = tie.filter(|_| how == how::TIED_NODE);
            }
            how::TIED => {
                let given = vertex.tie.unwrap_or(NO_TIE);
                match ground.tie(coder, fields::TIE, hints.get(..1).unwrap_or_default(), from, given) {
                    Some((tie, point)) => (vertex.tie, vertex.point) = (Some(tie), point),
                    None => coder.fault(AddressFault::Impossible),
                }
            }
            how::LOOSE => {
                let mut tie = vertex.tie.unwrap_or(NO_TIE);
                coder.whole(fields::LOOSE, &[], &mut tie.street.0);
                coder.whole(fields::LOOSE + 1, &[], &mut tie.segment);
                coder.whole(fields::LOOSE + 2, &[], &mut tie.along_ppb);
                vertex.tie = Some(tie);
                vertex.point = ground.free(coder, field, from, ahead, vertex.point);
            }
            _ => match like {
                Some(like) => *vertex = *like,
                None => coder.fault(AddressFault::Impossible),
            },
        }
        how
    }
}

const NO_TIE: Tie = Tie {
    street: MarkId(0),
    segment: 0,
    along_ppb: 0,
};

/// A phase as a hint.
pub(super) fn phase_hint(phase: Option<crate::plan::ids::PhaseId>) -> i64 {
    phase.map_or(-1, |phase| phase.0.into())
}
