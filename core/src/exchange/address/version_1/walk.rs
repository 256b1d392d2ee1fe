//! The whole plan, in the order in which an address tells it.

use crate::order::OrderedMap;
use crate::plan::coordinates::PlanPoint;
use crate::plan::document::{Alternative, Document, FactorOverride, Heading, Phase, Target, TargetKind, UnitSystem};
use crate::plan::ids::{AlternativeId, BuildingTypeId, PhaseId, StreetSectionId};
use crate::plan::land::SideUse;
use crate::plan::mark::Mark;

use super::super::AddressFault;
use super::alternatives::points_of;
use super::coder::{Coder, Field};
use super::ground::Ground;
use super::lessons::{Palettes, Shipped};
use super::marks::KINDS;
use super::palettes::{blank_section, blank_type, building_type, entries, palette, section};

/// What is asked for. Numbers never change; new ones are added at the end.
pub(super) mod fields {
    use super::Field;

    macro_rules! fields {
        ($($name:ident),* $(,)?) => {
            fields!(@ 0, $($name),*);
        };
        (@ $number:expr, $name:ident $(, $rest:ident)*) => {
            #[allow(dead_code, reason = "a number that is no longer asked for is not given to another")]
            pub(in super::super) const $name: Field = $number;
            fields!(@ $number + 20, $($rest),*);
        };
        (@ $number:expr,) => {};
    }

    fields!(
        SECTION,
        ROLE,
        OWNER,
        STATUS,
        OUTSIDE,
        LEVEL,
        PHASE,
        STREET_NAME,
        VERTICES,
        HOW,
        VERTEX,
        NODE,
        TIE,
        LOOSE,
        RADIUS,
        LAND_USE,
        INTENSITY,
        CONSTRAINT,
        SWITCHES,
        NAME,
        PLACE,
        CERTAINTY,
        MINIMUM,
        TRIPS,
        LABEL,
        PARCEL_OWNER,
        DELAY,
        HOMES,
        JOBS,
        SHOP_FLOOR,
        NOTE,
        AUTHOR,
        VOTES,
        PRESENT,
        LAND,
        SIDES,
        SIDE,
        SIDE_AT,
        PORTIONS,
        PORTION,
        REST,
        SHARE,
        CORNERS,
        CORNER,
        ANCHOR,
        POINT,
        FOOTPRINT,
        SECTION_NAME,
        STRIPS,
        STRIP,
        SPEED,
        USERS,
        TYPE_NAME,
        TYPE_USE,
        LOT,
        STORIES,
        STORY,
        TYPE,
        ALTERNATIVE,
        TABLE,
        BASE,
        DROPPED,
        ID,
        MARKS,
        KIND,
        NEXT,
        SAME,
        HEADING,
        ABOUT,
        ORIGIN,
        GRID,
        LEFT_OUT,
        LANGUAGE,
        PROGRAM,
        TARGET,
        PALETTE,
        PHASES,
        PACE,
        UNITS,
        SETTINGS,
        REAL,
        RULES,
        SITE,
        ALTERNATIVES,
        FOLLOW,
        ANSWERS,
        ANSWER,
        ANSWER_MARKS,
        NOTE_FIGURES,
        BESIDE,
    );
}

/// What was told so far, by which what comes next is told.
#[derive(Debug)]
pub(super) struct Walk {
    pub coder: Coder,
    pub ground: Ground,
    /// The latest mark of each kind.
    pub latest: Vec<Option<Mark>>,
    /// Whether the mark being told is like one of an earlier alternative.
    pub is_base: bool,
    /// Where the latest street begins.
    pub street_start: PlanPoint,
    /// The latest point that belongs to no street.
    pub spot_before: PlanPoint,
    /// The latest side.
    pub side_before: Option<SideUse>,
}

const GRIDS_MM: [i64; 5] = [100, 1, 10, 1000, 10_000];

impl Walk {
    pub(super) fn new(coder: Coder) -> Self {
        Self {
            coder,
            ground: Ground::new(),
            latest: vec![None; KINDS.len()],
            is_base: false,
            street_start: PlanPoint::new(0, 0),
            spot_before: PlanPoint::new(0, 0),
            side_before: None,
        }
    }

    pub(super) fn base_hint(&self) -> i64 {
        self.is_base.into()
    }

    /// A document without topography and base image; `left_out` says which of the two there were.
    pub(super) fn document(&mut self, document: &mut Document, left_out: &mut [bool; 2], shipped: &Shipped) {
        let coder = &mut self.coder;
        for (place, left_out) in left_out.iter_mut().enumerate() {
            *left_out = coder.flag(fields::LEFT_OUT + place as Field, &[], *left_out);
        }
        coder.text(fields::HEADING, &[], &mut document.heading.name);
        coder.text(fields::ABOUT, &[], &mut document.heading.about);
        let language = shipped.likest(document);
        let number = coder.choice(fields::LANGUAGE, &[], 3, language);
        let sample = Some(&shipped.sample).filter(|_| shipped.is_sample(number));
        let heading = &mut document.heading;
        let origin = sample.map(|sample| &sample.heading);
        let is_there = |heading: &Heading, there: &Heading| {
            (heading.origin_longitude_ndeg, heading.origin_latitude_ndeg)
                == (there.origin_longitude_ndeg, there.origin_latitude_ndeg)
        };
        let same = origin.filter(|there| coder.flag(fields::ORIGIN + 4, &[], is_there(heading, there)));
        if let Some(there) = same {
            heading.origin_longitude_ndeg = there.origin_longitude_ndeg;
            heading.origin_latitude_ndeg = there.origin_latitude_ndeg;
        } else {
            heading.origin_longitude_ndeg = coder.round(fields::ORIGIN, &[], heading.origin_longitude_ndeg);
            heading.origin_latitude_ndeg = coder.round(fields::ORIGIN + 1, &[], heading.origin_latitude_ndeg);
        }
        self.palettes(document, &shipped.palettes, number);
        let given = (&document.program, &document.phases);
        let same = sample.filter(|sample| {
            self.coder
                .flag(fields::PROGRAM + 1, &[], given == (&sample.program, &sample.phases))
        });
        if let Some(sample) = same {
            document.program.clone_from(&sample.program);
            document.phases.clone_from(&sample.phases);
        } else {
            program(&mut self.coder, &mut document.program);
            self.phases(document);
        }
        self.settings(document);
        let mut grid_mm = if self.coder.is_reading() {
            100
        } else {
            grid_of(document)
        };
        self.coder.word(fields::GRID, &[], &GRIDS_MM, &mut grid_mm);
        self.ground.grid_mm = grid_mm;
        let mut boundary = std::mem::take(&mut document.site.boundary);
        self.is_base = sample.is_some();
        self.outline(-1, &mut boundary, sample.map_or(&[], |sample| &sample.site.boundary));
        self.is_base = false;
        document.site.boundary = boundary;
        let known = sample.map_or_else(Vec::new, |sample| sample.alternatives.values().cloned().collect());
        self.alternatives(document, known);
    }

    fn palettes(&mut self, document: &mut Document, shipped: &[Palettes], number: usize) {
        let coder = &mut self.coder;
        let Some(shipped) = shipped.get(number) else {
            return coder.fault(AddressFault::Impossible);
        };
        let mut held = entries(&mut document.street_sections, |id: StreetSectionId| id.0);
        palette(
            coder,
            fields::PALETTE,
            &mut held,
            &shipped.sections,
            &blank_section(),
            section,
        );
        document.street_sections = held.into_iter().map(|(id, held)| (StreetSectionId(id), held)).collect();
        let mut held = entries(&mut document.building_types, |id: BuildingTypeId| id.0);
        palette(
            coder,
            fields::PALETTE + 5,
            &mut held,
            &shipped.types,
            &blank_type(),
            building_type,
        );
        document.building_types = held.into_iter().map(|(id, held)| (BuildingTypeId(id), held)).collect();
    }

    fn phases(&mut self, document: &mut Document) {
        let coder = &mut self.coder;
        let mut held = entries(&mut document.phases, |id: PhaseId| id.0);
        let blank = Phase { name: String::new() };
        palette(
            coder,
            fields::PALETTE + 10,
            &mut held,
            &[],
            &blank,
            |coder, phase, _| {
                coder.text(fields::PHASES, &[], &mut phase.name);
            },
        );
        document.phases = held.into_iter().map(|(id, held)| (PhaseId(id), held)).collect();
    }

    fn settings(&mut self, document: &mut Document) {
        let coder = &mut self.coder;
        let settings = &mut document.settings;
        coder.whole(fields::PACE, &[], &mut settings.walking_pace_mm_per_s);
        let units = [UnitSystem::UsCustomary, UnitSystem::Metric];
        coder.word(fields::UNITS, &[], &units, &mut settings.units);
        let mut chosen: Vec<(String, f64)> = std::mem::take(&mut settings.chosen).into_iter().collect();
        let blank = (String::new(), 0.0);
        coder.list(fields::SETTINGS, &[], &mut chosen, &blank, |coder, chosen, place| {
            let Some((name, value)) = chosen.get_mut(place) else {
                return;
            };
            coder.text(fields::SETTINGS + 1, &[], name);
            real(coder, value);
        });
        settings.chosen = chosen.into_iter().collect();
        let mut factors: Vec<(String, FactorOverride)> =
            std::mem::take(&mut settings.overridden_factors).into_iter().collect();
        let blank = FactorOverride {
            low: 0.0,
            typical: 0.0,
            high: 0.0,
            source: String::new(),
        };
        let blank = (String::new(), blank);
        coder.list(
            fields::SETTINGS + 4,
            &[],
            &mut factors,
            &blank,
            |coder, factors, place| {
                let Some((name, factor)) = factors.get_mut(place) else {
                    return;
                };
                coder.text(fields::SETTINGS + 5, &[], name);
                for value in [&mut factor.low, &mut factor.typical, &mut factor.high] {
                    real(coder, value);
                }
                coder.text(fields::SETTINGS + 8, &[], &mut factor.source);
            },
        );
        settings.overridden_factors = factors.into_iter().collect();
        coder.list(
            fields::RULES,
            &[],
            &mut settings.rule_lists,
            &String::new(),
            |coder, rules, place| {
                if let Some(rule) = rules.get_mut(place) {
                    coder.text(fields::RULES + 1, &[], rule);
                }
            },
        );
    }

    fn alternatives(&mut self, document: &mut Document, known: Vec<Alternative>) {
        let given: Vec<(AlternativeId, Alternative)> = std::mem::take(&mut document.alternatives).into_iter().collect();
        let count = self.coder.count(fields::ALTERNATIVES, &[], given.len());
        let mut next = 0;
        let known_count = known.len();
        let mut earlier: Vec<Alternative> = known;
        let mut ids: Vec<AlternativeId> = Vec::new();
        for place in 0..count {
            if self.coder.has_fault() {
                return;
            }
            let mut held = given
                .get(place)
                .map_or_else(Alternative::default, |(_, held)| held.clone());
            let id = given.get(place).map_or(0, |(id, _)| i64::from(id.0) - next);
            let id = self
                .coder
                .number(fields::ALTERNATIVES + 1, &[], id)
                .saturating_add(next);
            self.alternative(&mut held, &earlier);
            earlier.push(held);
            match u32::try_from(id) {
                Ok(number) if id >= next => ids.push(AlternativeId(number)),
                _ => self.coder.fault(AddressFault::Impossible),
            }
            next = id.saturating_add(1);
        }
        if count == 0 {
            self.coder.fault(AddressFault::Impossible);
        }
        document.alternatives = ids
            .into_iter()
            .zip(earlier.into_iter().skip(known_count))
            .collect::<OrderedMap<_, _>>();
    }
}

fn program(coder: &mut Coder, program: &mut Vec<Target>) {
    let blank = Target {
        what: TargetKind::Homes,
        asked: 0,
    };
    coder.list(fields::PROGRAM, &[], program, &blank, |coder, program, place| {
        let before = place.checked_sub(1).and_then(|place| program.get(place));
        let before = before.map_or(-1, |target| number_of(target.what) as i64);
        let Some(target) = program.get_mut(place) else { return };
        let number = coder.choice(fields::TARGET, &[before], 7, number_of(target.what));
        let mut homes_of = match target.what {
            TargetKind::HomesOf(held) => held.0,
            _ => 0,
        };
        target.what = match number {
            0 => TargetKind::Homes,
            1 => TargetKind::ShopFloorM2,
            2 => TargetKind::WorkFloorM2,
            3 => TargetKind::SchoolSeats,
            4 => TargetKind::ParkLandM2,
            5 => TargetKind::ParkingSpaces,
            _ => {
                coder.whole(fields::TARGET + 1, &[], &mut homes_of);
                TargetKind::HomesOf(BuildingTypeId(homes_of))
            }
        };
        coder.quantity(fields::TARGET + 2, &[number as i64], &mut target.asked);
    });
}

fn number_of(what: TargetKind) -> usize {
    match what {
        TargetKind::Homes => 0,
        TargetKind::ShopFloorM2 => 1,
        TargetKind::WorkFloorM2 => 2,
        TargetKind::SchoolSeats => 3,
        TargetKind::ParkLandM2 => 4,
        TargetKind::ParkingSpaces => 5,
        TargetKind::HomesOf(_) => 6,
    }
}

/// Powers of ten for numbers with up to so many decimals.
const POWERS: [f64; 7] = [1.0, 10.0, 100.0, 1000.0, 10_000.0, 100_000.0, 1_000_000.0];

/// A number as people write it, or by its bits.
fn real(coder: &mut Coder, value: &mut f64) {
    let as_written = POWERS.iter().enumerate().find_map(|(decimals, power)| {
        let scaled = (*value * power).round();
        let whole = (scaled.abs() < 1e15).then_some(scaled as i64)?;
        // By the bits, since nought has two.
        ((whole as f64 / power).to_bits() == value.to_bits()).then_some((decimals, whole))
    });
    let how = coder.choice(fields::REAL, &[], 8, as_written.map_or(7, |(decimals, _)| decimals));
    if let Some(power) = POWERS.get(how) {
        let scaled = coder.round(
            fields::REAL + 1,
            &[how as i64],
            as_written.map_or(0, |(_, scaled)| scaled),
        );
        *value = scaled as f64 / power;
    } else {
        let bits = value.to_bits();
        let upper = coder.number(fields::REAL + 2, &[], (bits >> 32) as i64);
        let lower = coder.number(fields::REAL + 3, &[], i64::from(bits as u32));
        *value = f64::from_bits((upper as u64) << 32 | u64::from(lower as u32));
        if !value.is_finite() {
            coder.fault(AddressFault::Impossible);
        }
    }
}

/// The widest grid most points lie on.
fn grid_of(document: &Document) -> i64 {
    let marks = document.alternatives.values().flat_map(|held| held.marks.values());
    let mut points: Vec<PlanPoint> = document.site.boundary.clone();
    for mark in marks {
        match mark {
            Mark::Street(street) => {
                points.extend(
                    street
                        .line
                        .iter()
                        .filter(|vertex| vertex.tie.is_none())
                        .map(|vertex| vertex.point),
                );
            }
            other => points.extend(points_of(other)),
        }
    }
    let is_on =
        |point: &&PlanPoint, grid_mm: i64| i64::from(point.x_mm) % grid_mm == 0 && i64::from(point.y_mm) % grid_mm == 0;
    let is_grid_of_most = |grid_mm: &i64| {
        let on = points.iter().filter(|point| is_on(point, *grid_mm)).count();
        10 * on >= 9 * points.len()
    };
    [10_000, 1000, 100, 10].into_iter().find(is_grid_of_most).unwrap_or(1)
}
