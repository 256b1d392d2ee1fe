//! Random documents and edits for tests, from a seed: everything a document can hold, finished and unfinished.

use hobnail_core::order::OrderedMap;

use hobnail_core::plan::coordinates::LIMIT_MM;
use hobnail_core::plan::document::{
    BaseImage, FactorOverride, Heading, Phase, Settings, Site, Target, TargetKind, Topography, UnitSystem,
};
use hobnail_core::plan::projection::GeographicPoint;
use hobnail_core::plan::{
    Alternative, AlternativeId, BuildingTypeId, Document, MarkId, PhaseId, PlanPoint, StreetSectionId,
};

use crate::random::Random;

pub mod edits;
pub mod marks;

impl Random {
    /// A number from 0 to `limit` − 1.
    pub fn below(&mut self, limit: u64) -> u64 {
        self.next() % limit.max(1)
    }

    /// True once in `times`.
    pub fn one_in(&mut self, times: u64) -> bool {
        self.below(times) == 0
    }

    /// A number of any size: often small, sometimes the largest.
    pub fn quantity(&mut self) -> u32 {
        match self.below(8) {
            0 => 0,
            1 => u32::MAX,
            2 => self.next() as u32,
            _ => self.below(5000) as u32,
        }
    }

    /// A share in parts per million, not always legal.
    pub fn share_ppm(&mut self) -> u32 {
        if self.one_in(20) {
            self.next() as u32
        } else {
            self.below(1_000_001) as u32
        }
    }

    /// A finite number of any size.
    pub fn real(&mut self) -> f64 {
        match self.below(4) {
            0 => self.below(1000) as f64 / 8.0,
            1 => -(self.below(1000) as f64) / 10.0,
            _ => {
                let real = f64::from_bits(self.next());
                if real.is_finite() { real } else { 0.5 }
            }
        }
    }

    /// A text, with characters that files have to escape.
    pub fn text(&mut self) -> String {
        const PIECES: [&str; 12] = [
            "Mill", " ", "Hollow", "\"", "\\", "\n", "\u{1}", "é", "/", "🌳", "~", "\u{2028}",
        ];
        (0..self.below(5)).map(|_| *self.pick(&PIECES)).collect()
    }

    /// A point near the origin, sometimes anywhere legal, sometimes at the limit.
    pub fn point(&mut self) -> PlanPoint {
        let span = match self.below(20) {
            0 => return PlanPoint::new(LIMIT_MM, -LIMIT_MM),
            1 => u64::from(LIMIT_MM.unsigned_abs()) * 2 + 1,
            2 | 3 => 5,
            _ => 800_001,
        };
        let mut coordinate = || self.below(span) as i32 - (span / 2) as i32;
        PlanPoint::new(coordinate(), coordinate())
    }

    /// So many points at most.
    pub fn points(&mut self, most: u64) -> Vec<PlanPoint> {
        let mut points: Vec<PlanPoint> = (0..self.below(most + 1)).map(|_| self.point()).collect();
        if self.one_in(8) {
            let again = points.first().copied();
            points.extend(again);
        }
        points
    }

    /// A value or none.
    pub fn perhaps<T>(&mut self, value: impl FnOnce(&mut Self) -> T) -> Option<T> {
        (!self.one_in(3)).then(|| value(self))
    }
}

/// A document with about so many marks. Ids in use are not all consecutive; ties are settled; much else is wrong.
pub fn document(random: &mut Random, marks: u64) -> Document {
    let longitude_ndeg = random.below(360_000_000_001) as i64 - 180_000_000_000;
    let latitude_ndeg = random.below(178_000_000_001) as i64 - 89_000_000_000;
    let mut document = Document::new(
        random.text(),
        GeographicPoint {
            longitude_ndeg,
            latitude_ndeg,
        },
    );
    document.heading.about = random.text();
    if random.one_in(3) {
        document.site = Site {
            boundary: random.points(9),
        };
    }
    document.program = (0..random.below(4)).map(|_| target(random)).collect();
    for _ in 0..random.below(4) {
        let id = StreetSectionId(random.below(20) as u32);
        document.street_sections.insert(id, marks::section(random));
        let id = BuildingTypeId(random.below(20) as u32);
        document.building_types.insert(id, marks::building_type(random));
        document
            .phases
            .insert(PhaseId(random.quantity()), Phase { name: random.text() });
    }
    document.settings = settings(random);
    document.topography = random.perhaps(topography);
    document.base_image = random.perhaps(image);
    let mut next = 0;
    for id in 0..=random.below(3) as u32 {
        let mut alternative = Alternative {
            name: random.text(),
            table: random.text(),
            marks: OrderedMap::new(),
        };
        for _ in 0..random.below(marks + 1) {
            let mark = marks::mark(random, &alternative.marks);
            alternative.marks.insert(MarkId(next), mark);
            next += 1 + random.below(3) as u32;
        }
        document.alternatives.insert(AlternativeId(id * 3), alternative);
    }
    document
}

/// A heading on the same place on Earth.
pub fn heading(random: &mut Random, heading: &Heading) -> Heading {
    Heading {
        name: random.text(),
        about: random.text(),
        ..heading.clone()
    }
}

pub fn target(random: &mut Random) -> Target {
    let what = match random.below(7) {
        0 => TargetKind::Homes,
        1 => TargetKind::HomesOf(BuildingTypeId(random.quantity())),
        2 => TargetKind::ShopFloorM2,
        3 => TargetKind::WorkFloorM2,
        4 => TargetKind::SchoolSeats,
        5 => TargetKind::ParkLandM2,
        _ => TargetKind::ParkingSpaces,
    };
    Target {
        what,
        asked: random.quantity(),
    }
}

pub fn settings(random: &mut Random) -> Settings {
    let mut settings = Settings {
        walking_pace_mm_per_s: random.quantity(),
        units: *random.pick(&[UnitSystem::Metric, UnitSystem::UsCustomary]),
        chosen: OrderedMap::new(),
        overridden_factors: OrderedMap::new(),
        rule_lists: (0..random.below(3)).map(|_| random.text()).collect(),
    };
    for _ in 0..random.below(4) {
        settings.chosen.insert(random.text(), random.real());
        let [low, typical, high] = [0; 3].map(|_| random.real());
        let source = random.text();
        settings.overridden_factors.insert(
            random.text(),
            FactorOverride {
                low,
                typical,
                high,
                source,
            },
        );
    }
    settings
}

fn topography(random: &mut Random) -> Topography {
    Topography {
        south_west: random.point(),
        spacing_mm: random.quantity(),
        columns: random.quantity(),
        heights_mm: (0..random.below(9)).map(|_| random.next() as i32).collect(),
        source: random.text(),
    }
}

fn image(random: &mut Random) -> BaseImage {
    BaseImage {
        name: random.text(),
        media_type: "image/png".to_owned(),
        corners: [0; 4].map(|_| random.point()),
        opacity_thousandths: random.next() as u16,
        bytes: (0..random.below(20)).map(|_| random.next() as u8).collect(),
    }
}
