//! Random marks and palette entries.

use hobnail_core::order::OrderedMap;

use hobnail_core::plan::building::{EnvelopeClass, PriceBand};
use hobnail_core::plan::land::{
    Barrier, Beside, ConstraintKind, Crossing, Fronting, Hand, Note, OutsideContext, OwnerGroup, Parcel, Portion,
    RemarkAnswer, SiteAccess,
};
use hobnail_core::plan::street::{Status, StreetOwner};
use hobnail_core::plan::tie::foot;
use hobnail_core::plan::{
    BuildingType, BuildingTypeId, Certainty, ConstraintArea, FloorUse, Footprint, LandUse, Mark, MarkId, PhaseId,
    Place, PlaceKind, SideUse, SoftArea, Story, Street, StreetRole, StreetSection, StreetSectionId, Strip, StripKind,
    Tie, UseMark, Vertex,
};

use crate::random::Random;

/// A mark that may stand beside these; a street's ties are to streets among them, and stand on their feet.
pub fn mark(random: &mut Random, others: &OrderedMap<MarkId, Mark>) -> Mark {
    match random.below(16) {
        0 => Mark::Use(use_mark(random, others)),
        1 => Mark::SoftArea(SoftArea {
            outline: random.points(6),
            program: program(random),
            land_use: land_use(random),
            intensity_ppm: random.share_ppm(),
            phase: phase(random),
        }),
        2 => Mark::Constraint(constraint(random)),
        3 | 4 => Mark::Place(place(random)),
        5 => Mark::SiteAccess(SiteAccess {
            name: random.text(),
            at: random.point(),
            outside_trips_ppm: random.perhaps(Random::share_ppm),
        }),
        6 => Mark::Parcel(Parcel {
            label: random.text(),
            outline: random.points(6),
            owner: *random.pick(&[
                OwnerGroup::Public,
                OwnerGroup::Willing,
                OwnerGroup::Unknown,
                OwnerGroup::Unwilling,
            ]),
            beside: beside(random),
        }),
        7 => Mark::Barrier(Barrier {
            name: random.text(),
            line: random.points(5),
            beside: beside(random),
        }),
        8 => Mark::Crossing(Crossing {
            at: random.point(),
            delay_tenths_s: random.quantity(),
        }),
        9 => Mark::Outside(OutsideContext {
            name: random.text(),
            footprint: footprint(random),
            homes: random.quantity(),
            jobs: random.quantity(),
            shop_floor_m2: random.quantity(),
        }),
        10 => Mark::Note(Note {
            at: random.point(),
            text: random.text(),
            author: random.text(),
            votes: random.quantity(),
            present: random.quantity(),
            answers: answers(random, others),
            figures: (0..random.below(3)).map(|_| random.text()).collect(),
        }),
        _ => Mark::Street(street(random, others)),
    }
}

/// What answers a remark, by some of these marks.
fn answers(random: &mut Random, others: &OrderedMap<MarkId, Mark>) -> Vec<RemarkAnswer> {
    let answer = |random: &mut Random| RemarkAnswer {
        step: random.text(),
        marks: others.keys().copied().filter(|_| random.below(3) == 0).collect(),
    };
    (0..random.below(3)).map(|_| answer(random)).collect()
}

/// A street that may stand beside these.
pub fn street(random: &mut Random, others: &OrderedMap<MarkId, Mark>) -> Street {
    let mut line: Vec<Vertex> = random.points(6).into_iter().map(Vertex::at).collect();
    for vertex in &mut line {
        if random.one_in(4) {
            vertex.corner_radius_mm = random.quantity();
        }
        if random.one_in(4) {
            tie(random, others, vertex);
        }
    }
    Street {
        line,
        section: StreetSectionId(random.below(22) as u32),
        name: random.text(),
        role: *random.pick(&[
            StreetRole::Thoroughfare,
            StreetRole::NeighborhoodStreet,
            StreetRole::Lane,
            StreetRole::Alley,
            StreetRole::Path,
        ]),
        owner: *random.pick(&[StreetOwner::State, StreetOwner::Town, StreetOwner::Private]),
        status: *random.pick(&[Status::Existing, Status::Kept, Status::Removed, Status::New]),
        is_outside: random.one_in(3),
        level: random.next() as i8,
        phase: phase(random),
    }
}

/// Ties a vertex to one of the streets among `others`, where there is one to tie it to.
pub fn tie(random: &mut Random, others: &OrderedMap<MarkId, Mark>, vertex: &mut Vertex) {
    let streets: Vec<(MarkId, &Street)> = others
        .iter()
        .filter_map(|(&id, mark)| Some((id, mark.as_street()?)))
        .collect();
    let Some(&(street, body)) = streets.get(random.below(streets.len() as u64) as usize) else {
        return;
    };
    let segment = random.below(body.line.len() as u64) as u32;
    let along_ppb = if random.one_in(5) {
        *random.pick(&[0, 1_000_000_000])
    } else {
        random.below(1_000_000_001) as u32
    };
    if let Some(point) = foot(&body.line, segment, along_ppb) {
        vertex.point = point;
        vertex.tie = Some(Tie {
            street,
            segment,
            along_ppb,
        });
    }
}

fn phase(random: &mut Random) -> Option<PhaseId> {
    random.perhaps(|random| PhaseId(random.quantity()))
}

fn program(random: &mut Random) -> Vec<Portion> {
    let portion = |random: &mut Random| Portion {
        building_type: BuildingTypeId(random.below(22) as u32),
        share_ppm: random.share_ppm(),
    };
    (0..random.below(4)).map(|_| portion(random)).collect()
}

fn use_mark(random: &mut Random, others: &OrderedMap<MarkId, Mark>) -> UseMark {
    let ids: Vec<MarkId> = others.keys().copied().chain([MarkId(u32::MAX)]).collect();
    let side = |random: &mut Random| SideUse {
        street: *random.pick(&ids),
        hand: *random.pick(&[Hand::Left, Hand::Right]),
        at: random.point(),
        fronting: *random.pick(&[Fronting::Front, Fronting::Side, Fronting::Rear, Fronting::None]),
        building_type: random.perhaps(|random| BuildingTypeId(random.below(22) as u32)),
        shopfront: random.one_in(2),
        stories: random.perhaps(|random| random.next() as u8),
        setback_mm: random.perhaps(Random::quantity),
    };
    UseMark {
        anchor: random.point(),
        program: program(random),
        land_m2: random.quantity(),
        sides: (0..random.below(3)).map(|_| side(random)).collect(),
        phase: phase(random),
    }
}

fn constraint(random: &mut Random) -> ConstraintArea {
    ConstraintArea {
        name: random.text(),
        outline: random.points(6),
        kind: *random.pick(&[
            ConstraintKind::Water,
            ConstraintKind::Floodplain,
            ConstraintKind::Wetland,
            ConstraintKind::Steep,
            ConstraintKind::Easement,
            ConstraintKind::Conservation,
            ConstraintKind::Contaminated,
            ConstraintKind::Keep,
        ]),
        is_buildable: random.one_in(2),
        counts_in_site: random.one_in(2),
        counts_in_buildable: random.one_in(2),
        is_walkable: random.one_in(2),
    }
}

fn place(random: &mut Random) -> Place {
    Place {
        name: random.text(),
        kind: *random.pick(&[
            PlaceKind::Center,
            PlaceKind::TransitStop,
            PlaceKind::School,
            PlaceKind::CommunityHall,
            PlaceKind::Park,
            PlaceKind::Shop,
            PlaceKind::Clinic,
        ]),
        footprint: footprint(random),
        minimum_size_m2: random.quantity(),
        certainty: *random.pick(&[Certainty::Existing, Certainty::Committed, Certainty::HopedFor]),
        phase: phase(random),
    }
}

fn beside(random: &mut Random) -> Option<Beside> {
    random.perhaps(|random| Beside {
        reach_mm: random.quantity(),
        stories: random.perhaps(|random| random.next() as u8),
        clear_mm: random.perhaps(Random::quantity),
    })
}

fn footprint(random: &mut Random) -> Footprint {
    match random.below(3) {
        0 => Footprint::Point(random.point()),
        1 => Footprint::Line(random.points(4)),
        _ => Footprint::Area(random.points(6)),
    }
}

fn land_use(random: &mut Random) -> LandUse {
    *random.pick(&[
        LandUse::Residential,
        LandUse::Business,
        LandUse::Industrial,
        LandUse::Civic,
        LandUse::Leisure,
        LandUse::Natural,
    ])
}

/// A street section.
pub fn section(random: &mut Random) -> StreetSection {
    const KINDS: [StripKind; 7] = [
        StripKind::Walk,
        StripKind::Planting,
        StripKind::Parking,
        StripKind::Bicycle,
        StripKind::Travel,
        StripKind::Median,
        StripKind::Swale,
    ];
    StreetSection {
        name: random.text(),
        strips: (0..random.below(6))
            .map(|_| Strip {
                kind: *random.pick(&KINDS),
                width_mm: random.quantity(),
            })
            .collect(),
        target_speed_km_h: random.next() as u16,
        walkable: random.one_in(2),
        cyclable: random.one_in(2),
        drivable: random.one_in(2),
        fronts_left: random.one_in(2),
        fronts_right: random.one_in(2),
    }
}

/// A building type.
pub fn building_type(random: &mut Random) -> BuildingType {
    const USES: [FloorUse; 6] = [
        FloorUse::Home,
        FloorUse::Work,
        FloorUse::Shop,
        FloorUse::Learning,
        FloorUse::Gathering,
        FloorUse::Parking,
    ];
    let story = |random: &mut Random| Story {
        floor_use: *random.pick(&USES),
        floor_area_m2: random.quantity(),
        height_mm: random.quantity(),
        jobs_per_floor_hectare: random.quantity(),
    };
    BuildingType {
        name: random.text(),
        land_use: land_use(random),
        lot_width_mm: random.quantity(),
        lot_depth_mm: random.quantity(),
        stories: (0..random.below(4)).map(|_| story(random)).collect(),
        homes_per_lot: random.quantity(),
        persons_per_home_thousandths: random.quantity(),
        coverage_thousandths: random.next() as u16,
        paved_thousandths: random.next() as u16,
        planted_thousandths: random.next() as u16,
        parking_per_lot_hundredths: random.quantity(),
        envelope: *random.pick(&[EnvelopeClass::Older, EnvelopeClass::Code, EnvelopeClass::Better]),
        price_band: *random.pick(&[PriceBand::Lower, PriceBand::Middle, PriceBand::Upper]),
    }
}
