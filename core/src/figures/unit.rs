//! What a number measures: a dimension checked when the graph is built, and the units it is shown in.
//!
//! Numbers inside the engine are always in the coherent unit of their dimension (meters, seconds, kilograms, kelvins,
//! homes, people, jobs …). A [`Unit`] adds how people read it: one shown unit for metric, one for US customary.
//! Changing between the two changes the display and nothing else.

mod words;

use std::fmt;

use crate::say;

pub use words::{in_plain_words, in_words};

/// The bases dimensions are built of. Counted things are bases too, so that homes are never added to jobs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Base {
    /// Length.
    Meter,
    /// Time.
    Second,
    /// Mass.
    Kilogram,
    /// Temperature difference.
    Kelvin,
    /// Homes.
    Home,
    /// People.
    Person,
    /// Jobs.
    Job,
    /// Lots.
    Lot,
    /// Vehicles.
    Vehicle,
    /// Trips.
    Trip,
    /// Money.
    Dollar,
    /// School seats.
    Seat,
    /// Parking spaces.
    Space,
}

const BASES: usize = 13;

const BASE_NAMES: [&str; BASES] = [
    "m", "s", "kg", "K", "home", "person", "job", "lot", "vehicle", "trip", "dollar", "seat", "space",
];

/// A product of whole powers of the bases.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Dimension {
    exponents: [i8; BASES],
}

impl Dimension {
    /// A plain number: shares, ratios, indices.
    pub const NONE: Self = Self { exponents: [0; BASES] };

    /// This dimension times `base` to the power `exponent`.
    #[must_use]
    pub const fn with(mut self, base: Base, exponent: i8) -> Self {
        self.exponents[base as usize] = self.exponents[base as usize].saturating_add(exponent);
        self
    }

    /// The dimension of a product.
    #[must_use]
    pub const fn times(mut self, other: Self) -> Self {
        let mut at = 0;
        while at < BASES {
            self.exponents[at] = self.exponents[at].saturating_add(other.exponents[at]);
            at += 1;
        }
        self
    }

    /// The dimension of a quotient.
    #[must_use]
    pub const fn over(mut self, other: Self) -> Self {
        let mut at = 0;
        while at < BASES {
            self.exponents[at] = self.exponents[at].saturating_sub(other.exponents[at]);
            at += 1;
        }
        self
    }

    /// The dimension raised to `exponent`; `None` when a base would get a power that is not whole.
    ///
    /// ```
    /// use hobnail_core::figures::unit::{Base, Dimension};
    /// let area = Dimension::NONE.with(Base::Meter, 2);
    /// assert_eq!(area.to_power(0.5), Some(Dimension::NONE.with(Base::Meter, 1)));
    /// assert_eq!(area.to_power(0.25), None);
    /// ```
    #[must_use]
    pub fn to_power(mut self, exponent: f64) -> Option<Self> {
        for power in &mut self.exponents {
            let raised = f64::from(*power) * exponent;
            if raised.fract() != 0.0 || raised.abs() > 100.0 {
                return None;
            }
            *power = raised as i8;
        }
        Some(self)
    }
}

impl Dimension {
    /// Its bases by name, lengths in `length`: `m2/s`, `ft2/lot`; empty for no dimension.
    fn written(&self, length: &str) -> String {
        let name = |base: usize| if base == 0 { length } else { BASE_NAMES[base] };
        let powers = || self.exponents.iter().copied().enumerate();
        let above: Vec<String> = powers()
            .filter(|(_, p)| *p > 0)
            .map(|(base, p)| powered(name(base), p))
            .collect();
        let below: Vec<String> = powers()
            .filter(|(_, p)| *p < 0)
            .map(|(base, p)| format!("/{}", powered(name(base), p.saturating_neg())))
            .collect();
        match (above.is_empty(), below.is_empty()) {
            (true, false) => format!("1{}", below.concat()),
            _ => format!("{}{}", above.join(" "), below.concat()),
        }
    }
}

impl fmt::Display for Dimension {
    /// `m²/s`, `person/home`; `a plain number` for no dimension.
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.written("m").as_str() {
            "" => out.write_str(say!("figures-plain-number")),
            text => out.write_str(&in_words(text)),
        }
    }
}

/// What one shown unit is worth in plain ones: `1 acre = 43,560 ft²`, `1 ha = 10,000 m²`. `None` when it is plain.
#[must_use]
pub fn conversion(unit: &Unit, system: System) -> Option<String> {
    let shown = unit.shown(system);
    let (length, length_m) = match system {
        System::Metric => ("m", 1.0),
        System::Customary => ("ft", FOOT_M),
    };
    let lengths = unit.dimension.exponents[Base::Meter as usize];
    let plain = shown.scale / crate::number::power(length_m, f64::from(lengths));
    let is_plain = (plain - 1.0).abs() < 1e-9;
    (!is_plain && shown.one != "%").then(|| {
        let worth = super::display::digits(plain);
        let plain_unit = unit.dimension.written(length);
        ["1 ", &in_words(shown.one), " = ", &worth, " ", &in_words(&plain_unit)].concat()
    })
}

fn powered(name: &str, power: i8) -> String {
    if power == 1 {
        name.to_owned()
    } else {
        format!("{name}{power}")
    }
}

/// A unit as people read it. `one` of it is `scale` coherent units.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ShownUnit {
    /// Word or symbol after the number 1.
    pub one: &'static str,
    /// Word or symbol after any other number.
    pub many: &'static str,
    /// Coherent units in one shown unit.
    pub scale: f64,
}

/// Which system numbers are shown in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum System {
    /// Meters, hectares.
    Metric,
    /// Feet, acres: US customary.
    #[default]
    Customary,
}

/// A dimension with the units it is shown in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Unit {
    /// The coherent unit as written in files and on the command line: `m2`, `home`, `share`.
    pub code: &'static str,
    /// What is checked when the graph is built.
    pub dimension: Dimension,
    /// Shown in metric.
    pub metric: ShownUnit,
    /// Shown in US customary.
    pub customary: ShownUnit,
    /// The finest step worth showing, in coherent units; 0 when significant digits decide. Homes are shown whole.
    pub finest: f64,
}

impl Unit {
    /// How this unit is shown in `system`.
    #[must_use]
    pub const fn shown(&self, system: System) -> ShownUnit {
        match system {
            System::Metric => self.metric,
            System::Customary => self.customary,
        }
    }

    const fn counted(code: &'static str, dimension: Dimension, many: &'static str) -> Self {
        let shown = ShownUnit {
            one: code,
            many,
            scale: 1.0,
        };
        Self {
            code,
            dimension,
            metric: shown,
            customary: shown,
            finest: 1.0,
        }
    }

    const fn each(code: &'static str, dimension: Dimension, many: &'static str) -> Self {
        Self {
            finest: 0.0,
            ..Self::counted(code, dimension, many)
        }
    }

    const fn measured(
        code: &'static str,
        dimension: Dimension,
        metric: (&'static str, f64),
        customary: (&'static str, f64),
    ) -> Self {
        Self {
            code,
            dimension,
            metric: ShownUnit {
                one: metric.0,
                many: metric.0,
                scale: metric.1,
            },
            customary: ShownUnit {
                one: customary.0,
                many: customary.0,
                scale: customary.1,
            },
            finest: 0.0,
        }
    }
}

const METER: Dimension = Dimension::NONE.with(Base::Meter, 1);
const AREA_DIMENSION: Dimension = Dimension::NONE.with(Base::Meter, 2);
const SECOND: Dimension = Dimension::NONE.with(Base::Second, 1);
const HOME: Dimension = Dimension::NONE.with(Base::Home, 1);
const PERSON: Dimension = Dimension::NONE.with(Base::Person, 1);
const JOB: Dimension = Dimension::NONE.with(Base::Job, 1);
const LOT: Dimension = Dimension::NONE.with(Base::Lot, 1);
const SEAT: Dimension = Dimension::NONE.with(Base::Seat, 1);
const SPACE: Dimension = Dimension::NONE.with(Base::Space, 1);

const FOOT_M: f64 = 0.3048;
/// A square foot, in square meters: exact.
pub const SQUARE_FOOT_M2: f64 = 0.092_903_04;
/// An acre of 43,560 square feet, in square meters: exact.
pub const ACRE_M2: f64 = 4_046.856_422_4;
const HECTARE_M2: f64 = 10_000.0;
const MILE_M: f64 = 1_609.344;

/// A plain number with no reading of its own: an index, a ratio.
pub const NUMBER: Unit = Unit::measured("1", Dimension::NONE, ("", 1.0), ("", 1.0));
/// Things counted that need no word of their own.
pub const COUNT: Unit = Unit { finest: 1.0, ..NUMBER };
/// Intersections, a plain number.
pub const INTERSECTIONS: Unit = Unit::counted("intersection", Dimension::NONE, "intersections");
/// A part of a whole, shown in percent.
pub const SHARE: Unit = Unit {
    code: "share",
    dimension: Dimension::NONE,
    metric: PERCENT,
    customary: PERCENT,
    finest: 0.01,
};
const PERCENT: ShownUnit = ShownUnit {
    one: "%",
    many: "%",
    scale: 0.01,
};
/// Homes.
pub const HOMES: Unit = Unit::counted("home", HOME, "homes");
/// People.
pub const PEOPLE: Unit = Unit::counted("person", PERSON, "people");
/// Jobs.
pub const JOBS: Unit = Unit::counted("job", JOB, "jobs");
/// Lots.
pub const LOTS: Unit = Unit::counted("lot", LOT, "lots");
/// Homes on a lot.
pub const HOMES_PER_LOT: Unit = Unit::each("home/lot", HOME.over(LOT), "homes/lot");
/// Jobs on a lot.
pub const JOBS_PER_LOT: Unit = Unit::each("job/lot", JOB.over(LOT), "jobs/lot");
/// People in a home.
pub const PEOPLE_PER_HOME: Unit = Unit::each("person/home", PERSON.over(HOME), "people/home");
/// Jobs for each home.
pub const JOBS_PER_HOME: Unit = Unit::each("job/home", JOB.over(HOME), "jobs/home");
/// Jobs for each person who works.
pub const JOBS_PER_PERSON: Unit = Unit::each("job/person", JOB.over(PERSON), "jobs/person");
/// Land: hectares and acres.
pub const LAND: Unit = Unit {
    code: "m2",
    dimension: AREA_DIMENSION,
    metric: ShownUnit {
        one: "ha",
        many: "ha",
        scale: HECTARE_M2,
    },
    customary: ShownUnit {
        one: "acre",
        many: "acres",
        scale: ACRE_M2,
    },
    finest: 0.0,
};
/// Area of buildings and lots: square meters and square feet.
pub const AREA: Unit = Unit::measured("m2", AREA_DIMENSION, ("m2", 1.0), ("ft2", SQUARE_FOOT_M2));
/// Area of one lot.
pub const AREA_PER_LOT: Unit = Unit::measured(
    "m2/lot",
    AREA_DIMENSION.over(LOT),
    ("m2/lot", 1.0),
    ("ft2/lot", SQUARE_FOOT_M2),
);
/// Jobs on floor area: on a hectare or on 1,000 square feet of it.
pub const JOBS_PER_AREA: Unit = Unit::measured(
    "job/m2",
    JOB.over(AREA_DIMENSION),
    ("jobs/ha", 1.0 / HECTARE_M2),
    ("jobs/1000ft2", 1.0 / (1_000.0 * SQUARE_FOOT_M2)),
);
/// School seats.
pub const SEATS: Unit = Unit::counted("seat", SEAT, "seats");
/// Floor area for each school seat.
pub const AREA_PER_SEAT: Unit = Unit::measured(
    "m2/seat",
    AREA_DIMENSION.over(SEAT),
    ("m2/seat", 1.0),
    ("ft2/seat", SQUARE_FOOT_M2),
);
/// Floor area or land for each person.
pub const AREA_PER_PERSON: Unit = Unit::measured(
    "m2/person",
    AREA_DIMENSION.over(PERSON),
    ("m2/person", 1.0),
    ("ft2/person", SQUARE_FOOT_M2),
);
/// Floor area or land for each parking space.
pub const AREA_PER_SPACE: Unit = Unit::measured(
    "m2/space",
    AREA_DIMENSION.over(SPACE),
    ("m2/space", 1.0),
    ("ft2/space", SQUARE_FOOT_M2),
);
/// Parking spaces.
pub const PARKING_SPACES: Unit = Unit::counted("space", SPACE, "spaces");
/// Parking spaces on a lot.
pub const PARKING_SPACES_PER_LOT: Unit = Unit::each("space/lot", SPACE.over(LOT), "spaces/lot");
/// How many lots land makes.
pub const LOTS_PER_LAND: Unit = Unit::measured(
    "lot/m2",
    LOT.over(AREA_DIMENSION),
    ("lots/ha", 1.0 / HECTARE_M2),
    ("lots/acre", 1.0 / ACRE_M2),
);
/// Density of homes on land.
pub const HOMES_PER_LAND: Unit = Unit::measured(
    "home/m2",
    HOME.over(AREA_DIMENSION),
    ("homes/ha", 1.0 / HECTARE_M2),
    ("homes/acre", 1.0 / ACRE_M2),
);
/// Density of intersections on land.
pub const INTERSECTIONS_PER_LAND: Unit = Unit::measured(
    "intersection/m2",
    Dimension::NONE.over(AREA_DIMENSION),
    ("intersections/km2", 1e-6),
    ("intersections/mi2", 1.0 / (MILE_M * MILE_M)),
);
/// Length for each home.
pub const LENGTH_PER_HOME: Unit = Unit::measured("m/home", METER.over(HOME), ("m/home", 1.0), ("ft/home", FOOT_M));
/// Lengths of streets and blocks.
pub const LENGTH: Unit = Unit::measured("m", METER, ("m", 1.0), ("ft", FOOT_M));
/// Long ways.
pub const DISTANCE: Unit = Unit::measured("m", METER, ("km", 1_000.0), ("mi", MILE_M));
/// Times of seconds.
pub const SECONDS: Unit = Unit::measured("s", SECOND, ("s", 1.0), ("s", 1.0));
/// Times of minutes.
pub const MINUTES: Unit = Unit::measured("s", SECOND, ("min", 60.0), ("min", 60.0));
/// Walking speed.
pub const WALKING_SPEED: Unit = Unit::measured("m/s", METER.over(SECOND), ("m/s", 1.0), ("ft/s", FOOT_M));
/// Speed of traffic.
pub const SPEED: Unit = Unit::measured(
    "m/s",
    METER.over(SECOND),
    ("km/h", 1.0 / 3.6),
    ("mph", MILE_M / 3_600.0),
);

/// Every unit above, for the tests that read them back.
pub const ALL: [Unit; 33] = [
    COUNT,
    INTERSECTIONS,
    INTERSECTIONS_PER_LAND,
    LENGTH_PER_HOME,
    NUMBER,
    SHARE,
    HOMES,
    PEOPLE,
    JOBS,
    LOTS,
    HOMES_PER_LOT,
    PEOPLE_PER_HOME,
    JOBS_PER_LOT,
    JOBS_PER_HOME,
    JOBS_PER_PERSON,
    LAND,
    AREA,
    AREA_PER_LOT,
    JOBS_PER_AREA,
    HOMES_PER_LAND,
    LENGTH,
    DISTANCE,
    SECONDS,
    MINUTES,
    WALKING_SPEED,
    SPEED,
    SEATS,
    AREA_PER_SEAT,
    PARKING_SPACES,
    PARKING_SPACES_PER_LOT,
    LOTS_PER_LAND,
    AREA_PER_PERSON,
    AREA_PER_SPACE,
];

/// Names a unit may be written with, its dimension and its coherent units.
const WRITTEN: &[(&[&str], Dimension, f64)] = &[
    (&["1", "share", "intersection", "intersections"], Dimension::NONE, 1.0),
    (&["%"], Dimension::NONE, 0.01),
    (&["mm"], METER, 0.001),
    (&["m"], METER, 1.0),
    (&["km"], METER, 1_000.0),
    (&["ft"], METER, FOOT_M),
    (&["mi"], METER, MILE_M),
    (&["ha"], AREA_DIMENSION, HECTARE_M2),
    (&["acre", "acres"], AREA_DIMENSION, ACRE_M2),
    (&["1000ft2", "1000ft²"], AREA_DIMENSION, 1_000.0 * SQUARE_FOOT_M2),
    (&["s"], SECOND, 1.0),
    (&["min"], SECOND, 60.0),
    (&["h"], SECOND, 3_600.0),
    (&["mph"], METER.over(SECOND), MILE_M / 3_600.0),
    (&["kg"], Dimension::NONE.with(Base::Kilogram, 1), 1.0),
    (&["K"], Dimension::NONE.with(Base::Kelvin, 1), 1.0),
    (&["home", "homes"], HOME, 1.0),
    (&["person", "people"], PERSON, 1.0),
    (&["job", "jobs"], JOB, 1.0),
    (&["lot", "lots"], LOT, 1.0),
    (&["vehicle", "vehicles"], Dimension::NONE.with(Base::Vehicle, 1), 1.0),
    (&["trip", "trips"], Dimension::NONE.with(Base::Trip, 1), 1.0),
    (&["dollar", "dollars"], Dimension::NONE.with(Base::Dollar, 1), 1.0),
    (&["seat", "seats"], SEAT, 1.0),
    (&["space", "spaces"], SPACE, 1.0),
];

/// Reads a written unit such as `ft2/lot` or `person/home`: its dimension and the coherent units in one of it.
///
/// A name may carry a power (`m2`); names are joined by `/`, and everything after a `/` divides.
/// An empty text is a plain number. `None` for a name that is not known.
///
/// ```
/// use hobnail_core::figures::unit::{read_unit, AREA_PER_LOT};
/// let (dimension, scale) = read_unit("ft2/lot").unwrap();
/// assert_eq!(dimension, AREA_PER_LOT.dimension);
/// assert!((250.0 * scale - 23.2).abs() < 0.1); // 250 ft² is 23.2 m²
/// ```
#[must_use]
pub fn read_unit(text: &str) -> Option<(Dimension, f64)> {
    let mut dimension = Dimension::NONE;
    let mut scale = 1.0;
    if text.is_empty() {
        return Some((dimension, scale));
    }
    for (place, name) in text.split('/').enumerate() {
        let (one_dimension, one_scale) = read_powered_name(name)?;
        if place == 0 {
            dimension = one_dimension;
            scale = one_scale;
        } else {
            dimension = dimension.over(one_dimension);
            scale /= one_scale;
        }
    }
    Some((dimension, scale))
}

fn read_powered_name(text: &str) -> Option<(Dimension, f64)> {
    let named = |name: &str| WRITTEN.iter().find(|(names, _, _)| names.contains(&name));
    if let Some((_, dimension, scale)) = named(text) {
        return Some((*dimension, *scale));
    }
    let name = text.strip_suffix(['2', '3', '²'])?;
    let (_, dimension, scale) = named(name)?;
    if !text.ends_with('3') {
        Some((dimension.times(*dimension), scale * scale))
    } else {
        Some((dimension.times(*dimension).times(*dimension), scale * scale * scale))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_unit_reads_back_with_its_dimension_and_scale() {
        for unit in ALL {
            let (dimension, scale) = read_unit(unit.code).expect(unit.code);
            assert_eq!(dimension, unit.dimension, "{}", unit.code);
            assert!((scale - 1.0).abs() < 1e-15, "{}", unit.code);
            for shown in [unit.metric, unit.customary] {
                for name in [shown.one, shown.many] {
                    let (dimension, scale) = read_unit(name).expect(name);
                    assert_eq!(dimension, unit.dimension, "{name}");
                    assert!((scale / shown.scale - 1.0).abs() < 1e-12, "{name}");
                }
            }
        }
    }

    #[test]
    fn conversions_agree_with_the_defined_values() {
        // International foot (0.3048 m) and statute mile (5,280 ft), from memory; acre 43,560 ft².
        let scale = |text| read_unit(text).unwrap().1;
        assert!((scale("acre") / scale("ft2") - 43_560.0).abs() < 1e-9);
        assert!((scale("mi") / scale("ft") - 5_280.0).abs() < 1e-9);
        assert!((scale("mph") - 0.447_04).abs() < 1e-15);
    }

    #[test]
    fn a_unit_that_is_not_plain_says_what_it_is_worth() {
        let (metric, customary) = (System::Metric, System::Customary);
        assert_eq!(conversion(&LAND, metric).as_deref(), Some("1 ha = 10,000 m²"));
        assert_eq!(conversion(&LAND, customary).as_deref(), Some("1 acre = 43,560 ft²"));
        assert_eq!(conversion(&MINUTES, customary).as_deref(), Some("1 min = 60 s"));
        assert_eq!(
            conversion(&HOMES_PER_LAND, metric).as_deref(),
            Some("1 homes/ha = 0.0001 home/m²")
        );
        for plain in [AREA_PER_LOT, HOMES, SHARE, WALKING_SPEED] {
            assert_eq!(conversion(&plain, customary), None);
        }
    }

    #[test]
    fn unknown_names_are_not_read() {
        for text in ["furlong", "m2/", "/m", "m/furlong", "m4", "2"] {
            assert_eq!(read_unit(text), None, "{text}");
        }
    }

    #[test]
    fn dimensions_print_as_written() {
        assert_eq!(PEOPLE_PER_HOME.dimension.to_string(), "person/home");
        assert_eq!(HOMES_PER_LAND.dimension.to_string(), "home/m²");
        assert_eq!(Dimension::NONE.over(SECONDS.dimension).to_string(), "1/s");
        assert_eq!(Dimension::NONE.to_string(), "a plain number");
    }

    #[test]
    fn powers_that_are_not_whole_have_no_dimension() {
        assert_eq!(LENGTH.dimension.to_power(1.5), None);
        assert_eq!(AREA.dimension.to_power(1.5), Some(METER.times(METER).times(METER)));
        assert_eq!(LENGTH.dimension.to_power(1e9), None);
    }
}
