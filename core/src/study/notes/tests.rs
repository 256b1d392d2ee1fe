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

#[test]
fn rough_homes_are_told_to_have_no_walk() {
    use crate::plan::building::LandUse;
    use crate::plan::land::Portion;
    use crate::plan::{AlternativeId, BuildingTypeId, Mark, MarkId, PlanPoint, SoftArea};
    let corner = |x_m: i32, y_m: i32| PlanPoint::new(x_m * 1_000, y_m * 1_000);
    let road = outside(&[(-200, 0), (600, 0)]);
    let mut document = plan(&[road], &[], &[(0, 0), (400, 0), (400, 300), (0, 300)]);
    let says = |document: &crate::plan::Document| {
        let notes = Study::open(document.clone()).unwrap().notes();
        notes.iter().any(|note| note.words.starts_with("rough homes"))
    };
    assert!(!says(&document));
    let area = SoftArea {
        outline: vec![corner(50, 50), corner(350, 50), corner(350, 250), corner(50, 250)],
        program: vec![Portion {
            building_type: BuildingTypeId(0),
            share_ppm: 1_000_000,
        }],
        land_use: LandUse::Residential,
        intensity_ppm: 1_000_000,
        phase: None,
    };
    let shown = document.alternatives.keys().next().copied().unwrap_or(AlternativeId(0));
    let marks = &mut document.alternatives.get_mut(&shown).unwrap().marks;
    marks.insert(MarkId(900), Mark::SoftArea(area));
    assert!(says(&document));
}

#[test]
fn a_use_outside_the_site_is_told_to_count_nothing() {
    let ring = street(&[(100, 100), (200, 100), (200, 160), (100, 160), (100, 100)]);
    let road = outside(&[(-200, 0), (600, 0)]);
    let uses = [land((150, 130), 0)];
    let says = |site: &[(i32, i32)]| {
        let document = plan(&[road.clone(), ring.clone()], &uses, site);
        let notes = Study::open(document).unwrap().notes();
        notes.iter().any(|note| note.words.starts_with("a use lies outside"))
    };
    assert!(!says(&[(0, 0), (400, 0), (400, 300), (0, 300)]));
    assert!(says(&[(0, 200), (400, 200), (400, 300), (0, 300)]));
    assert!(!says(&[]), "without a site all that streets enclose is the site");
}

#[test]
fn a_place_that_is_closed_in_is_told_where_it_is() {
    use crate::plan::land::Barrier;
    use crate::plan::{AlternativeId, Certainty, Footprint, Mark, MarkId, Place, PlaceKind, PlanPoint};
    let at = |x_m: i32, y_m: i32| PlanPoint::new(x_m * 1_000, y_m * 1_000);
    let road = outside(&[(-200, 0), (600, 0)]);
    let mut document = plan(&[road], &[], &[(0, 0), (400, 0), (400, 300), (0, 300)]);
    let shown = document.alternatives.keys().next().copied().unwrap_or(AlternativeId(0));
    let marks = &mut document.alternatives.get_mut(&shown).unwrap().marks;
    let school = Place {
        name: String::new(),
        kind: PlaceKind::School,
        footprint: Footprint::Point(at(200, 100)),
        minimum_size_m2: 0,
        certainty: Certainty::Existing,
        phase: None,
    };
    marks.insert(MarkId(900), Mark::Place(school));
    let fence = |ends_m: [i32; 2]| Barrier {
        name: String::new(),
        line: [
            (150, 50),
            (250, 50),
            (250, 150),
            (150, 150),
            (150, ends_m[0]),
            (150, ends_m[1]),
        ]
        .map(|(x_m, y_m)| at(x_m, y_m))
        .to_vec(),
        beside: None,
    };
    for (ends_m, is_closed_in) in [([60, 60], false), ([60, 50], true)] {
        let marks = &mut document.alternatives.get_mut(&shown).unwrap().marks;
        marks.insert(MarkId(901), Mark::Barrier(fence(ends_m)));
        let notes = Study::open(document.clone()).unwrap().notes();
        let told = notes.iter().find(|note| note.words.starts_with("nobody can walk here"));
        assert_eq!(
            told.map(|note| (note.mark, note.at)),
            is_closed_in.then_some((Some(MarkId(900)), Some(at(200, 100)))),
            "{ends_m:?}"
        );
    }
}
