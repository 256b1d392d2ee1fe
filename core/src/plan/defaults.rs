//! What a new plan begins with: palettes of street sections and building types, and settings.
//!
//! Palettes belong to the document and are meant to be edited. Ids in a default palette never change meaning; new
//! entries take new ids.

use crate::order::OrderedMap;

use super::building::FloorUse;
use super::document::{Alternative, Document, Heading, Settings, Site, UnitSystem};
use super::ids::{AlternativeId, BuildingTypeId, StreetSectionId};
use super::projection::GeographicPoint;
use crate::say;

mod buildings;
mod sections;

pub use buildings::building_types;
pub use sections::street_sections;

/// The default neighborhood street: what a line of unknown section is taken for.
pub const NEIGHBORHOOD_STREET: StreetSectionId = StreetSectionId(2);

/// Walking pace of a new plan, in millimeters per second: 3 miles an hour, a quarter mile in five minutes (R. Ewing,
/// *Pedestrian- and Transit-Friendly Design*, as used by the transit industry).
pub const WALKING_PACE_MM_PER_S: u32 = 1341;

/// Jobs on a hectare of floor of this use, where nothing else is known: what a story begins with when it is given the use.
///
/// From gross floor area per employee: offices 250, shops 550, schools from kindergarten to twelfth grade 1,300 square feet
/// (LEED v4 BD+C, Appendix 2, table 1); a job to 200 m² of hall is common practice, no source. Homes and parking have none.
#[must_use]
pub const fn usual_jobs_per_floor_hectare(floor_use: FloorUse) -> u32 {
    match floor_use {
        FloorUse::Work => 431,
        FloorUse::Shop => 196,
        FloorUse::Learning => 83,
        FloorUse::Gathering => 50,
        FloorUse::Home | FloorUse::Parking => 0,
    }
}

impl Document {
    /// A new plan about `origin`: nothing drawn, one alternative, default palettes and settings.
    #[must_use]
    pub fn new(name: impl Into<String>, origin: GeographicPoint) -> Self {
        let first = Alternative {
            name: say!("plan-alternative-numbered", number = 1),
            ..Alternative::default()
        };
        Self {
            heading: Heading {
                name: name.into(),
                about: String::new(),
                origin_longitude_ndeg: origin.longitude_ndeg,
                origin_latitude_ndeg: origin.latitude_ndeg,
            },
            site: Site::default(),
            program: Vec::new(),
            street_sections: street_sections(),
            building_types: building_types(),
            phases: OrderedMap::new(),
            settings: default_settings(),
            topography: None,
            base_image: None,
            alternatives: [(AlternativeId(0), first)].into(),
        }
    }
}

/// Settings of a new plan.
#[must_use]
pub fn default_settings() -> Settings {
    Settings {
        walking_pace_mm_per_s: WALKING_PACE_MM_PER_S,
        units: UnitSystem::UsCustomary,
        chosen: OrderedMap::new(),
        overridden_factors: OrderedMap::new(),
        rule_lists: Vec::new(),
    }
}

/// Millimeters in whole feet, rounded.
const fn feet(feet: u32) -> u32 {
    (feet * 3048 + 5) / 10
}

/// Numbers a palette's entries from 0.
fn numbered<I: Ord, T>(id: impl Fn(u32) -> I, entries: Vec<T>) -> OrderedMap<I, T> {
    OrderedMap::from_iter((0..).map(id).zip(entries))
}

/// The id of the entry of this name, for tests and samples that speak of the default palettes.
#[must_use]
pub fn building_type_named(
    types: &OrderedMap<BuildingTypeId, super::BuildingType>,
    name: &str,
) -> Option<BuildingTypeId> {
    types.iter().find(|(_, held)| held.name == name).map(|(&id, _)| id)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::building::LandUse;
    use crate::plan::street::StripKind;

    #[test]
    fn sections_are_as_wide_as_practice_expects() {
        let sections = street_sections();
        let width_ft = |id: u32| sections[&StreetSectionId(id)].right_of_way_mm() as f64 / 304.8;
        for (id, expected_ft) in [
            (0, 66.0),
            (1, 96.0),
            (2, 56.0),
            (3, 50.0),
            (4, 33.0),
            (5, 24.0),
            (6, 14.0),
        ] {
            assert!(
                (width_ft(id) - expected_ft).abs() < 0.02,
                "section {id} is {} ft wide",
                width_ft(id)
            );
        }
        assert_eq!(sections[&NEIGHBORHOOD_STREET].name, "Neighborhood street");
        for (id, section) in &sections {
            let travels = section.strips.iter().any(|strip| strip.kind == StripKind::Travel);
            assert_eq!(travels, section.drivable, "section {id}");
            assert_eq!(section.target_speed_km_h > 0, section.drivable, "section {id}");
        }
    }

    /// Case D-A10 and its neighbors in LEED v4 BD+C, Appendix 2, table 1: gross floor area per employee as printed in square
    /// feet and, rounded, in square meters (read); 25,000 square feet of office are 100 employees and 11,000 of shops 20
    /// (derived). Jobs on a hectare are whole.
    #[test]
    fn usual_jobs_on_floor_are_those_published() {
        const SQUARE_FOOT_M2: f64 = 0.092_903_04;
        for (floor_use, square_feet, square_meters) in [
            (FloorUse::Work, 250.0, 23.0),
            (FloorUse::Shop, 550.0, 51.0),
            (FloorUse::Learning, 1_300.0, 121.0),
        ] {
            let jobs = f64::from(usual_jobs_per_floor_hectare(floor_use));
            assert!(
                (jobs - 1e4 / (square_feet * SQUARE_FOOT_M2)).abs() <= 0.5,
                "{floor_use:?}"
            );
            assert!((jobs - 1e4 / square_meters).abs() <= 0.02 * jobs, "{floor_use:?}");
        }
        let jobs = |floor_use, square_feet: f64| {
            f64::from(usual_jobs_per_floor_hectare(floor_use)) * square_feet * SQUARE_FOOT_M2 / 1e4
        };
        assert!((jobs(FloorUse::Work, 25_000.0) - 100.0).abs() < 0.5);
        assert!((jobs(FloorUse::Shop, 11_000.0) - 20.0).abs() < 0.5);
    }

    #[test]
    fn buildings_fit_their_lots() {
        for (id, held) in building_types() {
            let shares = held.coverage_thousandths + held.paved_thousandths + held.planted_thousandths;
            assert_eq!(shares, 1000, "{id} {}", held.name);
            let covered_m2 = held.lot_area_mm2() as f64 / 1e6 * f64::from(held.coverage_thousandths) / 1000.0;
            for story in &held.stories {
                assert!(
                    f64::from(story.floor_area_m2) <= covered_m2 * 1.01,
                    "{id} {}: {covered_m2} m²",
                    held.name
                );
                let holds_jobs = story.floor_use.holds_jobs();
                assert_eq!(story.jobs_per_floor_hectare > 0, holds_jobs, "{id} {}", held.name);
            }
            assert_eq!(
                held.homes_per_lot > 0,
                held.floor_area_m2(FloorUse::Home) > 0,
                "{id} {}",
                held.name
            );
            assert_eq!(
                held.homes_per_lot > 0,
                held.persons_per_home_thousandths > 0,
                "{id} {}",
                held.name
            );
        }
    }

    #[test]
    fn densities_of_homes_lie_where_handbooks_put_them() {
        // Dwellings per acre of lot: detached 4 to 10, townhouse 20 to 40, apartments 50 to 100 (Los Angeles Housing
        // Department figure); garden apartments 19 to 25 and cluster houses 10 to 12 are common practice, no source.
        let types = building_types();
        for (name, low, high) in [
            ("Detached house, small lot", 8.0, 12.0),
            ("Detached house, large lot", 4.0, 10.0),
            ("Attached house", 20.0, 40.0),
            ("Apartment house", 40.0, 100.0),
            ("Garden apartments", 15.0, 25.0),
        ] {
            let held = &types[&building_type_named(&types, name).unwrap()];
            let acres = held.lot_area_mm2() as f64 / 1e6 / 4046.856;
            let density = f64::from(held.homes_per_lot) / acres;
            assert!((low..=high).contains(&density), "{name}: {density} per acre");
        }
        assert!(types.values().any(|held| held.land_use == LandUse::Natural));
    }
}
