//! Marks other than streets.

use crate::plan::building::LandUse;
use crate::plan::coordinates::PlanPoint;
use crate::plan::ids::{BuildingTypeId, MarkId, PhaseId};
use crate::plan::land::{
    Barrier, Certainty, ConstraintArea, ConstraintKind, Crossing, Footprint, Fronting, Hand, Note, OutsideContext,
    OwnerGroup, Parcel, Place, PlaceKind, Portion, RemarkAnswer, SideUse, SiteAccess, SoftArea, UseMark,
};
use crate::plan::mark::{Mark, MarkKind};
use crate::plan::street::{Status, Street, StreetOwner, StreetRole};

use super::super::AddressFault;
use super::coder::{Coder, Field};
use super::ground::way;
use super::streets::phase_hint;
use super::walk::{Walk, fields};

/// The kinds of marks, by their number in addresses.
pub(super) const KINDS: [MarkKind; 11] = [
    MarkKind::Street,
    MarkKind::Use,
    MarkKind::SoftArea,
    MarkKind::Constraint,
    MarkKind::Place,
    MarkKind::SiteAccess,
    MarkKind::Parcel,
    MarkKind::Barrier,
    MarkKind::Crossing,
    MarkKind::Outside,
    MarkKind::Note,
];
pub(super) const LAND_USES: [LandUse; 6] = [
    LandUse::Residential,
    LandUse::Business,
    LandUse::Industrial,
    LandUse::Civic,
    LandUse::Leisure,
    LandUse::Natural,
];
const HANDS: [Hand; 2] = [Hand::Left, Hand::Right];
const FRONTINGS: [Fronting; 4] = [Fronting::Front, Fronting::Side, Fronting::Rear, Fronting::None];
const CONSTRAINTS: [ConstraintKind; 8] = [
    ConstraintKind::Water,
    ConstraintKind::Floodplain,
    ConstraintKind::Wetland,
    ConstraintKind::Steep,
    ConstraintKind::Easement,
    ConstraintKind::Conservation,
    ConstraintKind::Contaminated,
    ConstraintKind::Keep,
];
const PLACES: [PlaceKind; 7] = [
    PlaceKind::Center,
    PlaceKind::TransitStop,
    PlaceKind::School,
    PlaceKind::CommunityHall,
    PlaceKind::Park,
    PlaceKind::Shop,
    PlaceKind::Clinic,
];
const CERTAINTIES: [Certainty; 3] = [Certainty::HopedFor, Certainty::Committed, Certainty::Existing];
const OWNERS: [OwnerGroup; 4] = [
    OwnerGroup::Unknown,
    OwnerGroup::Public,
    OwnerGroup::Willing,
    OwnerGroup::Unwilling,
];

const WHOLE_PPM: i64 = 1_000_000;

/// The number of a kind in addresses.
pub(super) fn kind_number(kind: MarkKind) -> usize {
    KINDS.iter().position(|held| *held == kind).unwrap_or(0)
}

/// A mark of a kind with nothing said about it.
pub(super) fn blank(kind: MarkKind) -> Mark {
    let (name, at, phase) = (String::new(), PlanPoint::new(0, 0), None);
    let footprint = Footprint::Point(at);
    match kind {
        MarkKind::Street => Mark::Street(Street {
            line: Vec::new(),
            section: crate::plan::defaults::NEIGHBORHOOD_STREET,
            name,
            role: StreetRole::NeighborhoodStreet,
            owner: StreetOwner::Town,
            status: Status::New,
            is_outside: false,
            level: 0,
            phase,
        }),
        MarkKind::Use => Mark::Use(UseMark {
            anchor: at,
            program: Vec::new(),
            land_m2: 0,
            sides: Vec::new(),
            phase,
        }),
        MarkKind::SoftArea => Mark::SoftArea(SoftArea {
            outline: Vec::new(),
            program: Vec::new(),
            land_use: LandUse::Residential,
            intensity_ppm: 0,
            phase,
        }),
        MarkKind::Constraint => Mark::Constraint(ConstraintArea {
            name,
            outline: Vec::new(),
            kind: ConstraintKind::Water,
            is_buildable: false,
            counts_in_site: true,
            counts_in_buildable: false,
            is_walkable: true,
        }),
        MarkKind::Place => Mark::Place(Place {
            name,
            kind: PlaceKind::Center,
            footprint,
            minimum_size_m2: 0,
            certainty: Certainty::HopedFor,
            phase,
        }),
        MarkKind::SiteAccess => Mark::SiteAccess(SiteAccess {
            name,
            at,
            outside_trips_ppm: None,
        }),
        MarkKind::Parcel => Mark::Parcel(Parcel {
            label: name,
            outline: Vec::new(),
            owner: OwnerGroup::Unknown,
            beside: None,
        }),
        MarkKind::Barrier => Mark::Barrier(Barrier {
            name,
            line: Vec::new(),
            beside: None,
        }),
        MarkKind::Crossing => Mark::Crossing(Crossing { at, delay_tenths_s: 0 }),
        MarkKind::Outside => Mark::Outside(OutsideContext {
            name,
            footprint,
            homes: 0,
            jobs: 0,
            shop_floor_m2: 0,
        }),
        MarkKind::Note => Mark::Note(Note {
            at,
            text: name,
            author: String::new(),
            votes: 0,
            present: 0,
            answers: Vec::new(),
            figures: Vec::new(),
        }),
    }
}

/// What answers a remark, and the figures that changed with it.
fn answers(coder: &mut Coder, note: &mut Note) {
    let blank = RemarkAnswer {
        step: String::new(),
        marks: Vec::new(),
    };
    coder.list(
        fields::ANSWERS,
        &[],
        &mut note.answers,
        &blank,
        |coder, answers, place| {
            let Some(answer) = answers.get_mut(place) else { return };
            coder.text(fields::ANSWER, &[], &mut answer.step);
            let none = MarkId(0);
            coder.list(
                fields::ANSWER_MARKS,
                &[],
                &mut answer.marks,
                &none,
                |coder, marks, place| {
                    let before = place
                        .checked_sub(1)
                        .and_then(|before| marks.get(before))
                        .map_or(0, |before| i64::from(before.0));
                    if let Some(mark) = marks.get_mut(place) {
                        let mut step = i64::from(mark.0) - before;
                        coder.whole(fields::ANSWER_MARKS + 1, &[], &mut step);
                        coder.keep(before.saturating_add(step), &mut mark.0);
                    }
                },
            );
        },
    );
    coder.list(
        fields::NOTE_FIGURES,
        &[],
        &mut note.figures,
        &String::new(),
        |coder, figures, place| {
            if let Some(figure) = figures.get_mut(place) {
                coder.text(fields::NOTE_FIGURES + 1, &[], figure);
            }
        },
    );
}

impl Walk {
    /// A mark; `mark` and `like` are of one kind.
    pub(super) fn mark(&mut self, id: MarkId, mark: &mut Mark, like: &Mark) {
        let kind = kind_number(mark.kind()) as i64;
        match (mark, like) {
            (Mark::Street(held), Mark::Street(like)) => self.street(id, held, like),
            (Mark::Use(held), Mark::Use(like)) => self.use_mark(held, like),
            (Mark::SoftArea(held), Mark::SoftArea(like)) => {
                self.program(&mut held.program, &like.program);
                let first = first_type(&held.program);
                self.coder
                    .word(fields::LAND_USE, &[first], &LAND_USES, &mut held.land_use);
                self.coder
                    .quantity(fields::INTENSITY, &[like.intensity_ppm.into()], &mut held.intensity_ppm);
                self.phase(kind, &mut held.phase, like.phase);
                self.outline(kind, &mut held.outline, &like.outline);
            }
            (Mark::Constraint(held), Mark::Constraint(like)) => {
                let coder = &mut self.coder;
                coder.word(fields::CONSTRAINT, &[like.kind as i64], &CONSTRAINTS, &mut held.kind);
                let switches = [
                    &mut held.is_buildable,
                    &mut held.counts_in_site,
                    &mut held.counts_in_buildable,
                    &mut held.is_walkable,
                ];
                for (place, switch) in switches.into_iter().enumerate() {
                    *switch = coder.flag(fields::SWITCHES + place as Field, &[held.kind as i64], *switch);
                }
                coder.text(fields::NAME, &[kind], &mut held.name);
                self.outline(kind, &mut held.outline, &like.outline);
            }
            (Mark::Place(held), Mark::Place(like)) => {
                let coder = &mut self.coder;
                coder.word(fields::PLACE, &[like.kind as i64], &PLACES, &mut held.kind);
                let hints = [held.kind as i64, like.certainty as i64];
                coder.word(fields::CERTAINTY, &hints, &CERTAINTIES, &mut held.certainty);
                coder.quantity(fields::MINIMUM, &[held.kind as i64], &mut held.minimum_size_m2);
                coder.text(fields::NAME, &[kind], &mut held.name);
                self.phase(kind, &mut held.phase, like.phase);
                self.footprint(held.kind as i64, kind, &mut held.footprint, &like.footprint);
            }
            (Mark::SiteAccess(held), Mark::SiteAccess(like)) => {
                self.coder.text(fields::NAME, &[kind], &mut held.name);
                self.coder.perhaps(fields::TRIPS, &[], &mut held.outside_trips_ppm);
                held.at = self.spot(kind, held.at, Some(like.at));
            }
            (Mark::Parcel(held), Mark::Parcel(like)) => {
                self.coder.text(fields::LABEL, &[], &mut held.label);
                self.coder
                    .word(fields::PARCEL_OWNER, &[like.owner as i64], &OWNERS, &mut held.owner);
                self.outline(kind, &mut held.outline, &like.outline);
            }
            (Mark::Barrier(held), Mark::Barrier(like)) => {
                self.coder.text(fields::NAME, &[kind], &mut held.name);
                self.outline(kind, &mut held.line, &like.line);
            }
            (Mark::Crossing(held), Mark::Crossing(like)) => {
                self.coder
                    .quantity(fields::DELAY, &[like.delay_tenths_s.into()], &mut held.delay_tenths_s);
                held.at = self.spot(kind, held.at, Some(like.at));
            }
            (Mark::Outside(held), Mark::Outside(like)) => {
                let coder = &mut self.coder;
                coder.text(fields::NAME, &[kind], &mut held.name);
                coder.quantity(fields::HOMES, &[like.homes.into()], &mut held.homes);
                coder.quantity(fields::JOBS, &[like.jobs.into()], &mut held.jobs);
                coder.quantity(
                    fields::SHOP_FLOOR,
                    &[like.shop_floor_m2.into()],
                    &mut held.shop_floor_m2,
                );
                self.footprint(-1, kind, &mut held.footprint, &like.footprint);
            }
            (Mark::Note(held), Mark::Note(like)) => {
                let coder = &mut self.coder;
                coder.text(fields::NOTE, &[], &mut held.text);
                coder.text(fields::AUTHOR, &[], &mut held.author);
                coder.whole(fields::VOTES, &[like.votes.into()], &mut held.votes);
                coder.whole(fields::PRESENT, &[like.present.into()], &mut held.present);
                answers(coder, held);
                held.at = self.spot(kind, held.at, Some(like.at));
            }
            _ => self.coder.fault(AddressFault::Impossible),
        }
    }

    fn phase(&mut self, kind: i64, phase: &mut Option<PhaseId>, like: Option<PhaseId>) {
        let mut number = phase.map(|phase| phase.0);
        self.coder
            .perhaps(fields::PHASE, &[phase_hint(like), 16 + kind], &mut number);
        *phase = number.map(PhaseId);
    }

    fn use_mark(&mut self, held: &mut UseMark, like: &UseMark) {
        let base = self.base_hint();
        self.program(&mut held.program, &like.program);
        let first = first_type(&held.program);
        self.phase(1, &mut held.phase, like.phase);
        held.anchor = self.spot(1, held.anchor, (base == 1).then_some(like.anchor));
        let hints = if base == 1 { i64::from(like.land_m2) } else { -1 };
        self.coder.whole(fields::LAND, &[first, hints], &mut held.land_m2);
        let mut sides = std::mem::take(&mut held.sides);
        let count = self
            .coder
            .count(fields::SIDES, &[first, like.sides.len() as i64 * 2 + base], sides.len());
        sides.resize(count, blank_side());
        for side in &mut sides {
            if self.coder.has_fault() {
                break;
            }
            self.side(held.anchor, first, side);
        }
        held.sides = sides;
    }

    fn side(&mut self, anchor: PlanPoint, first: i64, side: &mut SideUse) {
        let (coder, ground) = (&mut self.coder, &mut self.ground);
        let is_there = coder.flag(fields::SIDE, &[], ground.line_of(side.street).is_some());
        let mut facing = None;
        if is_there {
            if let Some((street, segment, line)) = ground.street_near(coder, fields::SIDE + 1, &[], anchor, side.street)
            {
                side.street = street;
                if let Some([a, b, ..]) = line.get(segment..) {
                    facing = Some((a.point, b.point));
                }
            }
        } else {
            coder.whole(fields::SIDE + 2, &[], &mut side.street.0);
        }
        let seen = facing.map_or(-1, |(a, b)| i64::from(a.cross(b, anchor) > 0));
        coder.word(fields::SIDE + 3, &[seen], &HANDS, &mut side.hand);
        let (from, ahead) = facing.map_or((anchor, (0, 0)), |(a, b)| {
            let share = crate::plan::tie::nearest_share(a, b, anchor);
            (between(a, b, share), way(a, b))
        });
        side.at = ground.free(coder, fields::SIDE_AT, from, ahead, side.at);
        let like = self.side_before.clone().unwrap_or_else(blank_side);
        let type_hint = like.building_type.map_or(-1, |held| held.0.into());
        let front_hint = i64::from(like.shopfront);
        coder.word(
            fields::SIDE + 4,
            &[like.fronting as i64],
            &FRONTINGS,
            &mut side.fronting,
        );
        let mut building_type = side.building_type.map(|held| held.0);
        coder.perhaps(fields::SIDE + 5, &[type_hint, first], &mut building_type);
        let type_here = building_type.map_or(-1, i64::from);
        side.shopfront = coder.flag(fields::SIDE + 7, &[type_here, front_hint], side.shopfront);
        let stories = like.stories.map_or(-1, i64::from);
        coder.perhaps(fields::SIDE + 8, &[type_here, stories], &mut side.stories);
        let setback = like.setback_mm.map_or(-1, i64::from);
        let shown = type_here * 2 + i64::from(side.shopfront);
        coder.perhaps(fields::SIDE + 10, &[shown, setback], &mut side.setback_mm);
        side.building_type = building_type.map(BuildingTypeId);
        self.side_before = Some(side.clone());
    }

    fn program(&mut self, program: &mut Vec<Portion>, like: &[Portion]) {
        let blank = Portion {
            building_type: BuildingTypeId(0),
            share_ppm: 0,
        };
        let first = first_type(like);
        let mut rest = WHOLE_PPM;
        self.coder.list(
            fields::PORTIONS,
            &[like.len() as i64, first],
            program,
            &blank,
            |coder, program, place| {
                let before = place.checked_sub(1).and_then(|place| program.get(place));
                let before = before.map_or(-1, |portion| portion.building_type.0.into());
                let there = like.get(place).map_or(-1, |portion| portion.building_type.0.into());
                let is_last = i64::from(place + 1 == program.len());
                let Some(portion) = program.get_mut(place) else { return };
                coder.whole(fields::PORTION, &[there, before], &mut portion.building_type.0);
                if coder.flag(fields::REST, &[is_last], i64::from(portion.share_ppm) == rest) {
                    portion.share_ppm = u32::try_from(rest).unwrap_or(0);
                } else {
                    coder.quantity(fields::SHARE, &[before], &mut portion.share_ppm);
                }
                rest -= i64::from(portion.share_ppm);
            },
        );
    }

    /// A point that belongs to no line.
    pub(super) fn spot(&mut self, kind: i64, point: PlanPoint, like: Option<PlanPoint>) -> PlanPoint {
        let from = self.spot_before;
        let like = like.filter(|_| self.base_hint() == 1);
        let point = self.corner(kind, &[kind], from, (0, 0), point, like);
        self.spot_before = point;
        point
    }

    /// A line or an outline.
    pub(super) fn outline(&mut self, kind: i64, points: &mut Vec<PlanPoint>, like: &[PlanPoint]) {
        let like = if self.base_hint() == 1 { like } else { &[] };
        let count = self
            .coder
            .count(fields::CORNERS, &[kind, like.len() as i64], points.len());
        points.resize(count, PlanPoint::new(0, 0));
        for place in 0..count {
            if self.coder.has_fault() {
                break;
            }
            let (from, ahead) = match points.get(..place) {
                Some([.., a, b]) => (*b, way(*a, *b)),
                Some([a]) => (*a, (0, 0)),
                _ => (self.spot_before, (0, 0)),
            };
            let given = points.get(place).copied().unwrap_or_default();
            let point = self.corner(
                kind,
                &[kind, i64::from(place == 0)],
                from,
                ahead,
                given,
                like.get(place).copied(),
            );
            if let Some(held) = points.get_mut(place) {
                *held = point;
            }
            if place == 0 {
                self.spot_before = point;
            }
        }
        for point in points.iter() {
            self.ground.remember(*point, None);
        }
        self.ground.guide.remember(points.clone());
    }

    /// A point: free, one that stood before, the foot of one beside a street, or as what this mark is like has it.
    fn corner(
        &mut self,
        kind: i64,
        hints: &[i64],
        from: PlanPoint,
        ahead: (i64, i64),
        point: PlanPoint,
        like: Option<PlanPoint>,
    ) -> PlanPoint {
        let (coder, ground) = (&mut self.coder, &mut self.ground);
        let follow = if coder.is_reading() || hints.len() < 2 {
            None
        } else {
            ground.guide.follows(ground.grid_mm, from, point)
        };
        let how = match () {
            () if like == Some(point) => 2,
            () if ground.node(point).is_some() => 1,
            () if follow.is_some() => 3,
            () => 0,
        };
        let how = coder.choice(fields::CORNER, hints, 4, how);
        if how != 3 {
            ground.guide.leave();
        }
        match (how, like) {
            (3, _) => {
                let told = follow.unwrap_or_default();
                let point = ground
                    .guide
                    .follow(coder, fields::FOLLOW + 5, ground.grid_mm, from, told);
                point.unwrap_or_else(|| {
                    coder.fault(AddressFault::Impossible);
                    from
                })
            }
            (0, _) => {
                let field = if kind == 1 { fields::ANCHOR } else { fields::POINT };
                ground.free(coder, field, from, ahead, point)
            }
            (1, _) => ground.node_near(coder, fields::NODE + 1, from, point).0,
            (_, Some(like)) => like,
            _ => {
                coder.fault(AddressFault::Impossible);
                point
            }
        }
    }

    fn footprint(&mut self, what: i64, kind: i64, footprint: &mut Footprint, like: &Footprint) {
        let number = |footprint: &Footprint| match footprint {
            Footprint::Point(_) => 0,
            Footprint::Line(_) => 1,
            Footprint::Area(_) => 2,
        };
        let shape = self
            .coder
            .choice(fields::FOOTPRINT, &[what, kind], 3, number(footprint));
        let mut points = footprint.points().to_vec();
        let like = like.points();
        *footprint = match shape {
            0 => {
                let given = points.first().copied().unwrap_or_default();
                Footprint::Point(self.spot(kind, given, like.first().copied()))
            }
            _ => {
                self.outline(kind, &mut points, like);
                if shape == 1 {
                    Footprint::Line(points)
                } else {
                    Footprint::Area(points)
                }
            }
        };
    }
}

fn blank_side() -> SideUse {
    SideUse {
        street: MarkId(0),
        hand: Hand::Left,
        at: PlanPoint::new(0, 0),
        fronting: Fronting::Front,
        building_type: None,
        shopfront: false,
        stories: None,
        setback_mm: None,
    }
}

fn first_type(program: &[Portion]) -> i64 {
    program.first().map_or(-1, |portion| portion.building_type.0.into())
}

fn between(a: PlanPoint, b: PlanPoint, share_ppb: u32) -> PlanPoint {
    let part = |from: i32, to: i32| {
        let (from, to) = (i64::from(from), i64::from(to));
        (from + (to - from) * i64::from(share_ppb) / 1_000_000_000) as i32
    };
    PlanPoint::new(part(a.x_mm, b.x_mm), part(a.y_mm, b.y_mm))
}
