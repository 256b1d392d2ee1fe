use super::*;
use crate::measures::streets::test_plans::{land, outside, plan, street};

/// Around land of 100 by 60 m: a street whose section lets lots front on it, or one that lets none.
fn noted(building_type: u32, may_front: bool) -> bool {
    let ring = street(&[(100, 100), (200, 100), (200, 160), (100, 160), (100, 100)]);
    let road = outside(&[(-200, 0), (600, 0)]);
    let uses = [land((150, 130), building_type)];
    let mut document = plan(&[road, ring], &uses, &[(0, 0), (400, 0), (400, 300), (0, 300)]);
    for section in document.street_sections.values_mut() {
        section.fronts_left &= may_front;
        section.fronts_right &= may_front;
    }
    let notes = Study::open(document).unwrap().notes();
    notes.iter().any(|note| note.words.contains("holds no lot"))
}

/// Homes, work, a hall and a park of the default palette.
#[test]
fn whatever_is_to_be_built_where_no_street_reaches_is_told() {
    for building_type in [0, 9, 12] {
        assert!(noted(building_type, false), "{building_type}");
        assert!(!noted(building_type, true), "{building_type}");
    }
    assert!(!noted(13, false), "a park needs no lot");
}
