use super::*;
use crate::measures::walk::test_plans::{Drawing, FIRST, Worked, at};
use crate::plan::building::FloorUse;

fn ends_of(drawing: &Drawing) -> (Worked, AllEnds) {
    let worked = drawing.worked();
    let fronts = fronts(&worked.painted);
    let ends = ends(
        &drawing.document,
        FIRST,
        &worked.fabric,
        &worked.painted,
        &fronts,
        worked.walks.network(),
    );
    (worked, ends)
}

fn length_m(sources: &[Source]) -> u64 {
    let lengths = sources.iter().map(|source| match source.place {
        SourcePlace::Stretch(stretch) => stretch.length_um(),
        SourcePlace::Node(_) => 0,
    });
    lengths.sum::<u64>() / 1_000_000
}

/// A block 100 m by 60 m of lots that each hold so much: its land by a lot of 300 m², times that, is what it holds.
#[track_caller]
fn check_minimum(destination: Destination, setting: &str, homes: u32, floors: &[(FloorUse, u32, u32)], each: f64) {
    let mut drawing = Drawing::blocks(2, 1, 100, 60);
    let kind = drawing.building_type(homes, floors);
    drawing.paint(at(50, 30), kind);
    let (worked, _) = ends_of(&drawing);
    let lots: f64 = worked
        .painted
        .iter()
        .flat_map(|held| &held.lots)
        .map(|(_, lots)| lots)
        .sum();
    let held = lots * each;
    assert!(held > 0.0);
    for (minimum, is_met) in [(held * 0.999, true), (held * 1.001, false)] {
        drawing.choose(setting, minimum);
        let (_, ends) = ends_of(&drawing);
        let ends = &ends[destination as usize];
        assert_eq!(
            !ends.all.is_empty(),
            is_met,
            "{destination:?} with at least {minimum}, holding {held}"
        );
        assert_eq!(ends.all, ends.sure, "lots are sure");
    }
}

#[test]
fn lots_meet_a_need_from_its_minimum_on() {
    check_minimum(
        Destination::Homes,
        "walk.need_homes_minimum",
        2,
        &[(FloorUse::Home, 90, 0)],
        2.0,
    );
    check_minimum(
        Destination::Work,
        "walk.need_work_minimum",
        0,
        &[(FloorUse::Work, 100, 400)],
        4.0,
    );
    // Jobs in shops are work too.
    check_minimum(
        Destination::Work,
        "walk.need_work_minimum",
        1,
        &[(FloorUse::Shop, 50, 200)],
        1.0,
    );
    check_minimum(
        Destination::Shops,
        "walk.need_shops_minimum",
        1,
        &[(FloorUse::Shop, 50, 200)],
        50.0,
    );
    check_minimum(
        Destination::Learning,
        "walk.need_learning_minimum",
        0,
        &[(FloorUse::Learning, 70, 80)],
        70.0,
    );
    check_minimum(
        Destination::School,
        "walk.school_minimum",
        0,
        &[(FloorUse::Learning, 70, 80)],
        70.0,
    );
    check_minimum(
        Destination::Gathering,
        "walk.need_gathering_minimum",
        0,
        &[(FloorUse::Gathering, 40, 50)],
        40.0,
    );
}

/// Fronts by hand on one street: the two sides together, and gaps.
#[test]
fn lots_along_one_street_count_together_across_it_and_over_short_gaps() {
    let drawing = Drawing::blocks(1, 1, 500, 60);
    let worked = drawing.worked();
    let link = LinkId(0);
    let front = |from_m: u64, to_m: u64, face, floor_m2| Front {
        stretch: Stretch {
            link,
            from_um: from_m * 1_000_000,
            to_um: to_m * 1_000_000,
        },
        face,
        amounts: [0.0, 0.0, floor_m2, 0.0, 0.0],
    };
    let found = |fronts: &[Front]| {
        let mut finder = Finder {
            document: &drawing.document,
            alternative: FIRST,
            network: worked.walks.network(),
            doorsteps: None,
            ends: AllEnds::default(),
        };
        finder.add_fronts(Destination::Shops, fronts, 2, 100.0);
        length_m(&finder.ends[Destination::Shops as usize].sure)
    };
    // 60 m² on either side of the street, one face each.
    assert_eq!(found(&[front(0, 20, 0, 60.0), front(10, 20, 1, 60.0)]), 30);
    // The same 30 m apart, and a little more.
    assert_eq!(found(&[front(0, 20, 0, 60.0), front(50, 60, 1, 60.0)]), 30);
    assert_eq!(found(&[front(0, 20, 0, 60.0), front(51, 61, 1, 60.0)]), 0);
    // Far apart on one face they count together.
    assert_eq!(found(&[front(0, 20, 0, 60.0), front(400, 410, 0, 60.0)]), 30);
    // A short front within a long one does not end the run.
    assert_eq!(
        found(&[front(0, 90, 0, 60.0), front(5, 10, 1, 30.0), front(100, 120, 2, 20.0)]),
        115
    );
}

#[test]
fn places_meet_the_need_of_their_kind_and_hoped_for_ones_are_not_sure() {
    let kinds = [
        (PlaceKind::Center, Destination::Center),
        (PlaceKind::TransitStop, Destination::TransitStop),
        (PlaceKind::School, Destination::School),
        (PlaceKind::School, Destination::Learning),
        (PlaceKind::CommunityHall, Destination::Gathering),
        (PlaceKind::Clinic, Destination::Gathering),
        (PlaceKind::Park, Destination::Park),
        (PlaceKind::Shop, Destination::Shops),
    ];
    for (kind, destination) in kinds {
        for certainty in [Certainty::Existing, Certainty::Committed, Certainty::HopedFor] {
            let mut drawing = Drawing::blocks(1, 1, 100, 60);
            drawing.place(kind, Footprint::Point(at(40, 3)), certainty);
            let (_, ends) = ends_of(&drawing);
            let ends = &ends[destination as usize];
            assert_eq!(ends.all.len(), 1, "{kind:?}");
            // 3 m off the street.
            assert_eq!(ends.all[0].cost, 3_000_000);
            assert_eq!(ends.sure.is_empty(), certainty == Certainty::HopedFor, "{kind:?}");
        }
    }
}

#[test]
fn an_area_below_its_own_least_size_does_not_count() {
    let mut drawing = Drawing::blocks(1, 1, 100, 60);
    let corners = vec![at(0, 0), at(20, 0), at(20, 10), at(0, 10)];
    let id = drawing.place(PlaceKind::Park, Footprint::Area(corners), Certainty::Existing);
    for (least_m2, counts) in [(200, true), (201, false)] {
        if let Some(Mark::Place(place)) = drawing.marks().get_mut(&id) {
            place.minimum_size_m2 = least_m2;
        }
        let (_, ends) = ends_of(&drawing);
        assert_eq!(!ends[Destination::Park as usize].all.is_empty(), counts);
    }
}

#[test]
fn open_land_is_entered_from_every_street_around_it() {
    let mut drawing = Drawing::blocks(2, 1, 100, 60);
    let square = crate::plan::defaults::building_type_named(&drawing.document.building_types, "Square");
    drawing.paint(at(50, 30), square.expect("a default"));
    let (worked, ends) = ends_of(&drawing);
    assert_eq!(length_m(&ends[Destination::Park as usize].all), 320);
    let open_m2: f64 = worked.painted[0].land_m2.iter().map(|(_, land_m2)| land_m2).sum();
    drawing.choose("walk.park_minimum", open_m2 + 1.0);
    let (_, ends) = ends_of(&drawing);
    assert!(ends[Destination::Park as usize].all.is_empty());
}

#[test]
fn what_lies_outside_counts_from_the_minimum_on() {
    for (amounts, destination) in [
        ((10, 0, 0), Destination::Homes),
        ((0, 20, 0), Destination::Work),
        ((0, 0, 140), Destination::Shops),
    ] {
        let (homes, jobs, floor_m2) = amounts;
        let mut drawing = Drawing::blocks(1, 1, 100, 60);
        drawing.outside(at(-50, 0), homes, jobs, floor_m2);
        let (_, ends) = ends_of(&drawing);
        for held in Destination::ALL {
            let found = &ends[held as usize].sure;
            assert_eq!(found.len(), usize::from(held == destination), "{amounts:?} {held:?}");
        }
        assert_eq!(ends[destination as usize].sure[0].cost, 50_000_000);
        let mut drawing = Drawing::blocks(1, 1, 100, 60);
        drawing.outside(
            at(-50, 0),
            homes.saturating_sub(1),
            jobs.saturating_sub(1),
            floor_m2.saturating_sub(1),
        );
        let (_, ends) = ends_of(&drawing);
        assert!(ends.iter().all(|held| held.all.is_empty()), "one less is too few");
    }
}

#[test]
fn stretches_that_touch_are_one_source() {
    let stretch = |link, from_um, to_um| {
        Source::stretch(Stretch {
            link: LinkId(link),
            from_um,
            to_um,
        })
    };
    let mut sources = vec![
        stretch(1, 50, 60),
        stretch(0, 20, 30),
        stretch(0, 0, 20),
        stretch(1, 0, 100),
        stretch(0, 31, 40),
        stretch(0, 20, 30).starting_at(5),
    ];
    settle(&mut sources);
    assert_eq!(
        sources,
        [
            stretch(0, 0, 30),
            stretch(0, 31, 40),
            stretch(1, 0, 100),
            stretch(0, 20, 30).starting_at(5)
        ]
    );
}
