//! What it costs to cross a street, and which streets are walked.
//!
//! By default the street section decides: a wide or fast street costs one wait, a street between another, all others
//! none. A crossing that is drawn says its own wait for the street beside it.

use crate::measures::walk::settings::{CROSSING_WAIT_MIDDLE, CROSSING_WAIT_WIDE, SHARED_STREET_TOP_SPEED};
use crate::plan::street::{StreetSection, StripKind};
use crate::plan::{Document, StreetSectionId};

const KM_H_M_PER_S: f64 = 1.0 / 3.6;

/// Travel lanes from which a street is wide, and those of a street between.
const WIDE_LANES: usize = 4;
const MIDDLE_LANES: usize = 3;

/// A street is fast above this target speed: 40 miles an hour, above which no marked crosswalk stands alone (FHWA,
/// *Safety Effects of Marked Versus Unmarked Crosswalks at Uncontrolled Locations*, 2005, table 11).
const FAST_M_PER_S: f64 = 40.0 * 0.447_04;

/// Target speed from which a street lies between: 35 miles an hour, held to the whole kilometers per hour sections are
/// given in. Common practice, no source.
const MIDDLE_M_PER_S: f64 = 55.5 * KM_H_M_PER_S;

/// How people walk along and across the streets of one section.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SectionWalk {
    /// Whether people walk along it.
    pub is_walked: bool,
    /// Mean wait to cross it, in seconds.
    pub wait_s: f64,
}

/// How people walk on a street of this section, by the document's settings.
#[must_use]
pub fn section_walk(document: &Document, section: StreetSectionId) -> SectionWalk {
    document.street_sections.get(&section).map_or(
        SectionWalk {
            is_walked: false,
            wait_s: 0.0,
        },
        |held| SectionWalk {
            is_walked: is_walked(document, held),
            wait_s: wait_s(document, held),
        },
    )
}

/// A street is walked where its section says so and has a walk, or where motor traffic is slow enough to share it.
fn is_walked(document: &Document, section: &StreetSection) -> bool {
    let has_walk = section.strips.iter().any(|strip| strip.kind == StripKind::Walk);
    let is_slow = speed_m_per_s(section) <= SHARED_STREET_TOP_SPEED.of(document);
    section.walkable && (has_walk || !section.drivable || is_slow)
}

fn wait_s(document: &Document, section: &StreetSection) -> f64 {
    let lanes = section
        .strips
        .iter()
        .filter(|strip| strip.kind == StripKind::Travel)
        .count();
    let speed = speed_m_per_s(section);
    if !section.drivable {
        0.0
    } else if lanes >= WIDE_LANES || speed > FAST_M_PER_S {
        CROSSING_WAIT_WIDE.of(document)
    } else if lanes >= MIDDLE_LANES || speed >= MIDDLE_M_PER_S {
        CROSSING_WAIT_MIDDLE.of(document)
    } else {
        0.0
    }
}

fn speed_m_per_s(section: &StreetSection) -> f64 {
    f64::from(section.target_speed_km_h) * KM_H_M_PER_S
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::projection::GeographicPoint;
    use crate::plan::street::Strip;

    fn document() -> Document {
        let origin = GeographicPoint {
            longitude_ndeg: 0,
            latitude_ndeg: 0,
        };
        Document::new("Sections", origin)
    }

    #[test]
    fn default_sections_cost_what_their_lanes_and_speeds_say() {
        let document = document();
        for (name, is_walked, wait_s) in [
            ("Main street", true, 0.0),
            ("Boulevard", true, 0.0),
            ("Neighborhood street", true, 0.0),
            ("Lane", true, 0.0),
            ("Alley", true, 0.0),
            ("Path", true, 0.0),
            ("Subdivision street", true, 0.0),
            ("Collector", true, 10.0),
            ("Arterial", true, 35.0),
            ("State highway", false, 35.0),
        ] {
            let (id, _) = document
                .street_sections
                .iter()
                .find(|(_, held)| held.name == name)
                .expect("a default");
            assert_eq!(
                section_walk(&document, *id),
                SectionWalk { is_walked, wait_s },
                "{name}"
            );
        }
    }

    /// Highway Capacity Manual 2000, equation 18-5: half the square of the time without a walk over the cycle.
    fn signal_wait_s(cycle_s: f64, green_s: f64) -> f64 {
        0.5 * (cycle_s - green_s) * (cycle_s - green_s) / cycle_s
    }

    /// Mean wait for a gap in traffic that nobody yields in: `(e^(v t) − v t − 1) ÷ v` with the critical headway
    /// `t = length ÷ 3.5 ft/s + 3 s` (Highway Capacity Manual 2010, from memory).
    fn gap_wait_s(length_ft: f64, vehicles_per_h: f64) -> f64 {
        let (headway_s, flow) = (length_ft / 3.5 + 3.0, vehicles_per_h / 3_600.0);
        (crate::number::exp(flow * headway_s) - flow * headway_s - 1.0) / flow
    }

    /// Check cases W-A12 (derived from equation 18-5 as a transportation blog and lecture notes print it) and W-A14 (derived;
    /// the formula from memory): what the default waits are worked with gives the cases' seconds, and the defaults are those
    /// of a signal of 90 s with 11 s to start in, and of three lanes of 11 feet with 300 vehicles an hour.
    #[test]
    fn the_default_waits_are_those_of_a_signal_and_of_a_gap() {
        for (cycle_s, green_s, wait_s) in [(80.0, 20.0, 22.5), (120.0, 11.0, 49.50), (60.0, 30.0, 7.5)] {
            assert!((signal_wait_s(cycle_s, green_s) - wait_s).abs() < 0.01, "{cycle_s} s");
        }
        for (length_ft, vehicles_per_h, wait_s) in [(36.0, 600.0, 35.64), (24.0, 300.0, 5.43)] {
            assert!(
                (gap_wait_s(length_ft, vehicles_per_h) - wait_s).abs() < 0.01,
                "{length_ft} ft"
            );
        }
        assert!((CROSSING_WAIT_WIDE.default - signal_wait_s(90.0, 7.0 + 4.0)).abs() < 0.5);
        assert!((CROSSING_WAIT_MIDDLE.default - gap_wait_s(33.0, 300.0)).abs() < 0.7);
    }

    #[test]
    fn a_street_without_a_walk_is_walked_only_where_traffic_is_slow() {
        let mut document = document();
        let id = StreetSectionId(2);
        let section = document.street_sections.get_mut(&id).expect("a default");
        section.strips.retain(|strip| strip.kind != StripKind::Walk);
        for (target_speed_km_h, is_walked) in [(16, true), (32, true), (40, false), (56, false)] {
            document.street_sections.get_mut(&id).expect("it").target_speed_km_h = target_speed_km_h;
            assert_eq!(
                section_walk(&document, id).is_walked,
                is_walked,
                "{target_speed_km_h} km/h"
            );
        }
        document
            .settings
            .chosen
            .insert(SHARED_STREET_TOP_SPEED.id.to_owned(), 20.0);
        assert!(section_walk(&document, id).is_walked, "the setting may say otherwise");
        document.street_sections.get_mut(&id).expect("it").walkable = false;
        assert!(!section_walk(&document, id).is_walked);
    }

    #[test]
    fn three_lanes_lie_between_and_four_are_wide() {
        let mut document = document();
        let id = StreetSectionId(2);
        for (lanes, wait_s) in [(2, 0.0), (3, 10.0), (4, 35.0)] {
            let lane = Strip {
                kind: StripKind::Travel,
                width_mm: 3_000,
            };
            document.street_sections.get_mut(&id).expect("a default").strips = vec![lane; lanes];
            assert!(
                (section_walk(&document, id).wait_s - wait_s).abs() < 1e-12,
                "{lanes} lanes"
            );
        }
    }
}
