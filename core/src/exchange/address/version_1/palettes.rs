//! Street sections, building types and phases: only where they differ from the shipped ones.

use crate::order::OrderedMap;
use crate::plan::building::{BuildingType, EnvelopeClass, FloorUse, LandUse, PriceBand, Story};
use crate::plan::street::{StreetSection, Strip, StripKind};

use super::super::AddressFault;
use super::coder::{Coder, Field};
use super::marks::LAND_USES;
use super::walk::fields;

const STRIPS: [StripKind; 7] = [
    StripKind::Walk,
    StripKind::Planting,
    StripKind::Parking,
    StripKind::Bicycle,
    StripKind::Travel,
    StripKind::Median,
    StripKind::Swale,
];
const FLOOR_USES: [FloorUse; 6] = [
    FloorUse::Home,
    FloorUse::Work,
    FloorUse::Shop,
    FloorUse::Learning,
    FloorUse::Gathering,
    FloorUse::Parking,
];
const ENVELOPES: [EnvelopeClass; 3] = [EnvelopeClass::Code, EnvelopeClass::Older, EnvelopeClass::Better];
const PRICES: [PriceBand; 3] = [PriceBand::Middle, PriceBand::Lower, PriceBand::Upper];

/// The entries of a palette by number.
pub(super) type Entries<T> = Vec<(u32, T)>;

/// A palette: which shipped entries stand as they are, which are changed or gone, then those beyond.
pub(super) fn palette<T: Clone + PartialEq>(
    coder: &mut Coder,
    field: Field,
    held: &mut Entries<T>,
    shipped: &[(u32, T)],
    blank: &T,
    mut entry: impl FnMut(&mut Coder, &mut T, &T),
) {
    let given = std::mem::take(held);
    let mut before = blank.clone();
    for (id, shipped) in shipped {
        let found = given.iter().find(|(held, _)| held == id).map(|(_, held)| held);
        let how = found.map_or(1, |found| if found == shipped { 0 } else { 2 });
        match coder.choice(field, &[], 3, how) {
            0 => held.push((*id, shipped.clone())),
            2 => {
                let mut changed = found.unwrap_or(shipped).clone();
                entry(coder, &mut changed, shipped);
                held.push((*id, changed));
            }
            _ => {}
        }
    }
    let first = shipped.last().map_or(0, |(id, _)| i64::from(*id) + 1);
    let beyond: Vec<&(u32, T)> = given.iter().filter(|(id, _)| i64::from(*id) >= first).collect();
    let count = coder.count(field + 1, &[], beyond.len());
    let mut next = first;
    for place in 0..count {
        if coder.has_fault() {
            break;
        }
        let given = beyond.get(place);
        let step = coder.round(
            field + 2,
            &[i64::from(place == 0)],
            given.map_or(0, |(id, _)| i64::from(*id) - next),
        );
        let id = next.saturating_add(step);
        let mut added = given.map_or(blank, |(_, held)| held).clone();
        entry(coder, &mut added, &before);
        before = added.clone();
        match u32::try_from(id) {
            Ok(id) if step >= 0 => held.push((id, added)),
            _ => coder.fault(AddressFault::Impossible),
        }
        next = id.saturating_add(1);
    }
}

/// Takes the entries of a map out, and puts them back.
pub(super) fn entries<I: Ord + Copy, T>(map: &mut OrderedMap<I, T>, number: impl Fn(I) -> u32) -> Entries<T> {
    std::mem::take(map)
        .into_iter()
        .map(|(id, held)| (number(id), held))
        .collect()
}

pub(super) fn blank_section() -> StreetSection {
    StreetSection {
        name: String::new(),
        strips: Vec::new(),
        target_speed_km_h: 0,
        walkable: true,
        cyclable: true,
        drivable: true,
        fronts_left: true,
        fronts_right: true,
    }
}

/// A street section.
pub(super) fn section(coder: &mut Coder, held: &mut StreetSection, _: &StreetSection) {
    coder.text(fields::SECTION_NAME, &[], &mut held.name);
    let blank = Strip {
        kind: StripKind::Walk,
        width_mm: 0,
    };
    coder.list(fields::STRIPS, &[], &mut held.strips, &blank, |coder, strips, place| {
        let before = place.checked_sub(1).and_then(|place| strips.get(place)).copied();
        // A street is mostly the same from both edges.
        let mirrored = strips.len() - 1 - place;
        let mirrored = strips.get(mirrored).copied().filter(|_| mirrored < place);
        let kind_of = |strip: Option<Strip>| strip.map_or(-1, |strip| strip.kind as i64);
        let hints = [
            kind_of(before),
            kind_of(mirrored),
            strips.len() as i64 * 16 + place as i64,
        ];
        let Some(strip) = strips.get_mut(place) else { return };
        coder.word(fields::STRIP, &hints, &STRIPS, &mut strip.kind);
        let of_kind = strip.kind;
        let width_of = |other: Option<Strip>| {
            let same = other.filter(|other| other.kind == of_kind);
            same.map_or(-1, |other| i64::from(other.width_mm))
        };
        let kind = of_kind as i64;
        let hints = [kind, width_of(mirrored) * 8 + kind, width_of(before) * 8 + kind];
        coder.quantity(fields::STRIP + 1, &hints, &mut strip.width_mm);
    });
    coder.quantity(fields::SPEED, &[], &mut held.target_speed_km_h);
    let can_drive = i64::from(held.target_speed_km_h > 0);
    let switches = [
        &mut held.drivable,
        &mut held.walkable,
        &mut held.cyclable,
        &mut held.fronts_left,
        &mut held.fronts_right,
    ];
    let mut before = can_drive;
    for (place, switch) in switches.into_iter().enumerate() {
        *switch = coder.flag(fields::USERS + place as Field, &[can_drive, before], *switch);
        before = i64::from(*switch);
    }
}

pub(super) fn blank_type() -> BuildingType {
    BuildingType {
        name: String::new(),
        land_use: LandUse::Residential,
        lot_width_mm: 0,
        lot_depth_mm: 0,
        stories: Vec::new(),
        homes_per_lot: 0,
        persons_per_home_thousandths: 0,
        coverage_thousandths: 0,
        paved_thousandths: 0,
        planted_thousandths: 0,
        parking_per_lot_hundredths: 0,
        envelope: EnvelopeClass::Code,
        price_band: PriceBand::Middle,
    }
}

/// A building type.
pub(super) fn building_type(coder: &mut Coder, held: &mut BuildingType, like: &BuildingType) {
    coder.text(fields::TYPE_NAME, &[], &mut held.name);
    coder.word(
        fields::TYPE_USE,
        &[like.land_use as i64],
        &LAND_USES,
        &mut held.land_use,
    );
    let land_use = held.land_use as i64;
    coder.quantity(
        fields::LOT,
        &[land_use, like.lot_width_mm.into()],
        &mut held.lot_width_mm,
    );
    coder.quantity(
        fields::LOT + 1,
        &[land_use, like.lot_depth_mm.into()],
        &mut held.lot_depth_mm,
    );
    let blank = Story {
        floor_use: FloorUse::Home,
        floor_area_m2: 0,
        height_mm: 0,
        jobs_per_floor_hectare: 0,
    };
    coder.list(
        fields::STORIES,
        &[land_use, like.stories.len() as i64],
        &mut held.stories,
        &blank,
        |coder, stories, place| {
            let before = place.checked_sub(1).and_then(|place| stories.get(place)).copied();
            let Some(story) = stories.get_mut(place) else { return };
            let use_before = before.map_or(-1, |story| story.floor_use as i64);
            coder.word(
                fields::STORY,
                &[use_before, land_use * 8 + use_before],
                &FLOOR_USES,
                &mut story.floor_use,
            );
            let floor_use = story.floor_use as i64;
            let before = before.unwrap_or(blank);
            coder.quantity(
                fields::STORY + 1,
                &[before.floor_area_m2.into(), floor_use],
                &mut story.floor_area_m2,
            );
            coder.quantity(
                fields::STORY + 2,
                &[floor_use, before.height_mm.into()],
                &mut story.height_mm,
            );
            let jobs = i64::from(before.jobs_per_floor_hectare);
            coder.quantity(
                fields::STORY + 3,
                &[floor_use, jobs * 8 + floor_use],
                &mut story.jobs_per_floor_hectare,
            );
        },
    );
    let homes = held
        .stories
        .iter()
        .filter(|story| story.floor_use == FloorUse::Home)
        .count() as i64;
    let has_homes = i64::from(homes > 0);
    coder.quantity(fields::TYPE, &[has_homes, homes], &mut held.homes_per_lot);
    let hints = [has_homes, i64::from(like.persons_per_home_thousandths) * 2 + has_homes];
    coder.quantity(fields::TYPE + 1, &hints, &mut held.persons_per_home_thousandths);
    coder.quantity(
        fields::TYPE + 2,
        &[like.coverage_thousandths.into(), land_use],
        &mut held.coverage_thousandths,
    );
    coder.quantity(
        fields::TYPE + 3,
        &[like.paved_thousandths.into(), land_use],
        &mut held.paved_thousandths,
    );
    let rest = 1000 - i64::from(held.coverage_thousandths) - i64::from(held.paved_thousandths);
    let planted = coder.number(fields::TYPE + 4, &[], i64::from(held.planted_thousandths) - rest);
    let planted = planted.saturating_add(rest);
    match u16::try_from(planted) {
        Ok(planted) => held.planted_thousandths = planted,
        Err(_) => coder.fault(AddressFault::Impossible),
    }
    let hints = [like.parking_per_lot_hundredths.into(), homes];
    coder.quantity(fields::TYPE + 5, &hints, &mut held.parking_per_lot_hundredths);
    coder.word(
        fields::TYPE + 6,
        &[like.envelope as i64],
        &ENVELOPES,
        &mut held.envelope,
    );
    coder.word(
        fields::TYPE + 7,
        &[like.price_band as i64],
        &PRICES,
        &mut held.price_band,
    );
}
