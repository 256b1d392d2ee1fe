//! The default street sections.
//!
//! Widths are common practice in the United States, no source, unless a line says otherwise: travel lanes of 9 to 12 ft,
//! parking of 7 to 8 ft, walks of 5 ft along homes and 8 ft or more along shops, planting wide enough for trees.

use crate::order::OrderedMap;

use super::{feet, numbered};
use crate::plan::ids::StreetSectionId;
use crate::plan::street::{StreetSection, Strip, StripKind};
use crate::say;
use StripKind::{Bicycle, Median, Parking, Planting, Swale, Travel, Walk};

/// Who a default section is for.
#[derive(Clone, Copy)]
enum Users {
    /// Everybody; lots may front on both sides.
    AllWithLots,
    /// Everybody; no lots front on it.
    All,
    /// Motor vehicles and bicycles.
    Wheels,
    /// People walking and on bicycles; lots may front on both sides.
    FeetWithLots,
    /// People walking and on bicycles.
    Feet,
}

/// Target speeds in miles per hour as whole kilometers per hour.
const MPH_10: u16 = 16;
const MPH_20: u16 = 32;
const MPH_25: u16 = 40;
const MPH_35: u16 = 56;
const MPH_45: u16 = 72;
const MPH_50: u16 = 80;

/// The default street sections, by id.
#[must_use]
pub fn street_sections() -> OrderedMap<StreetSectionId, StreetSection> {
    let sections = vec![
        section(
            say!("plan-section-main-street"),
            MPH_20,
            Users::AllWithLots,
            &[
                (Walk, 9),
                (Planting, 5),
                (Parking, 8),
                (Travel, 11),
                (Travel, 11),
                (Parking, 8),
                (Planting, 5),
                (Walk, 9),
            ],
        ),
        section(
            say!("plan-section-boulevard"),
            MPH_25,
            Users::AllWithLots,
            &[
                (Walk, 8),
                (Planting, 7),
                (Parking, 8),
                (Bicycle, 6),
                (Travel, 11),
                (Median, 16),
                (Travel, 11),
                (Bicycle, 6),
                (Parking, 8),
                (Planting, 7),
                (Walk, 8),
            ],
        ),
        section(
            say!("plan-section-neighborhood-street"),
            MPH_20,
            Users::AllWithLots,
            &[
                (Walk, 5),
                (Planting, 7),
                (Parking, 7),
                (Travel, 9),
                (Travel, 9),
                (Parking, 7),
                (Planting, 7),
                (Walk, 5),
            ],
        ),
        // 26 ft between curbs with parking on one side in a 50 ft right-of-way (SmartCode version 9.2, 2009, table 4,
        // from memory).
        section(
            say!("plan-section-narrow-street"),
            MPH_20,
            Users::AllWithLots,
            &[
                (Walk, 5),
                (Planting, 7),
                (Parking, 7),
                (Travel, 10),
                (Travel, 9),
                (Planting, 7),
                (Walk, 5),
            ],
        ),
        section(
            say!("plan-section-lane"),
            MPH_10,
            Users::AllWithLots,
            &[(Walk, 5), (Planting, 5), (Travel, 9), (Travel, 9), (Planting, 5)],
        ),
        // A rear lane of 24 ft with 12 ft paved (SmartCode version 9.2, 2009, table 4, from memory).
        section(
            say!("plan-section-alley"),
            MPH_10,
            Users::All,
            &[(Planting, 6), (Travel, 12), (Planting, 6)],
        ),
        section(
            say!("plan-section-path"),
            0,
            Users::Feet,
            &[(Planting, 3), (Walk, 8), (Planting, 3)],
        ),
        section(
            say!("plan-section-path-homes"),
            0,
            Users::FeetWithLots,
            &[(Planting, 7), (Walk, 6), (Planting, 7)],
        ),
        section(
            say!("plan-section-subdivision-street"),
            MPH_25,
            Users::AllWithLots,
            &[
                (Walk, 5),
                (Planting, 7),
                (Parking, 8),
                (Travel, 10),
                (Travel, 10),
                (Parking, 8),
                (Planting, 7),
                (Walk, 5),
            ],
        ),
        section(
            say!("plan-section-collector"),
            MPH_35,
            Users::All,
            &[
                (Walk, 5),
                (Planting, 8),
                (Bicycle, 5),
                (Travel, 12),
                (Median, 12),
                (Travel, 12),
                (Bicycle, 5),
                (Planting, 8),
                (Walk, 5),
            ],
        ),
        section(
            say!("plan-section-arterial"),
            MPH_45,
            Users::All,
            &[
                (Walk, 6),
                (Planting, 8),
                (Travel, 12),
                (Travel, 12),
                (Median, 16),
                (Travel, 12),
                (Travel, 12),
                (Planting, 8),
                (Walk, 6),
            ],
        ),
        section(
            say!("plan-section-state-highway"),
            MPH_50,
            Users::Wheels,
            &[(Swale, 20), (Travel, 12), (Travel, 12), (Swale, 20)],
        ),
    ];
    numbered(StreetSectionId, sections)
}

fn section(name: &str, target_speed_km_h: u16, users: Users, strips_ft: &[(StripKind, u32)]) -> StreetSection {
    let fronts = matches!(users, Users::AllWithLots | Users::FeetWithLots);
    StreetSection {
        name: name.to_owned(),
        strips: strips_ft
            .iter()
            .map(|&(kind, width_ft)| Strip {
                kind,
                width_mm: feet(width_ft),
            })
            .collect(),
        target_speed_km_h,
        walkable: !matches!(users, Users::Wheels),
        cyclable: true,
        drivable: !matches!(users, Users::Feet | Users::FeetWithLots),
        fronts_left: fronts,
        fronts_right: fronts,
    }
}
