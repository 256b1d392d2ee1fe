use super::*;
use crate::measures::streets::test_plans::{land, outside, p, path, plan, street};
use crate::plan::land::{ConstraintArea, ConstraintKind};
use crate::plan::{Mark, Street};

/// A site of 400 × 300 m with a road outside along its south edge.
const SITE: [(i32, i32); 4] = [(0, 0), (400, 0), (400, 300), (0, 300)];

fn road() -> Street {
    outside(&[(-200, 0), (600, 0)])
}

/// A loop of 300 by 160 m.
fn ring() -> Street {
    street(&[(50, 100), (350, 100), (350, 260), (50, 260), (50, 100)])
}

fn cautions_of(streets: &[Street], others: &[Mark]) -> Vec<Note> {
    let study = Study::open(plan(streets, others, &SITE)).unwrap();
    let held = study.notes();
    assert!(
        held.iter().all(|note| !note.is_caution || note.at.is_some()),
        "{held:?}"
    );
    held.into_iter().filter(|note| note.is_caution).collect()
}

fn area(kind: ConstraintKind, is_buildable: bool, corners: [(i32, i32); 4]) -> Mark {
    Mark::Constraint(ConstraintArea {
        name: String::new(),
        outline: corners.map(|(x, y)| p(x, y)).into(),
        kind,
        is_buildable,
        counts_in_site: true,
        counts_in_buildable: is_buildable,
        is_walkable: true,
    })
}

/// A building type of the default palette that has no floors.
fn park() -> u32 {
    let palette = plan(&[], &[], &SITE).building_types;
    let found = palette.iter().find(|(_, held)| held.stories.is_empty());
    found.map(|(id, _)| id.0).unwrap()
}

#[track_caller]
fn only(notes: &[Note]) -> &Note {
    assert_eq!(notes.len(), 1, "{notes:?}");
    &notes[0]
}

/// International Fire Code, appendix D, D103.4, from memory: more than 150 ft, which is 45.72 m.
#[test]
fn a_dead_end_longer_than_150_feet_is_told_at_its_head() {
    let short = street(&[(100, 0), (100, 45)]);
    assert_eq!(cautions_of(&[road(), short.clone()], &[]), []);
    let standing = Street {
        status: Status::Existing,
        ..street(&[(300, 0), (300, 90)])
    };
    assert_eq!(cautions_of(&[road(), standing], &[]), []);
    let long = street(&[(200, 0), (200, 46)]);
    let found = cautions_of(&[road(), short.clone(), long.clone()], &[]);
    let note = only(&found);
    assert!(note.words.starts_with("a dead end is longer than 150 ft"), "{note}");
    assert!(note.words.contains("fire marshal"), "{note}");
    assert_eq!(note.at, Some(p(200, 46)));

    let longest = street(&[(300, 0), (300, 90)]);
    let found = cautions_of(&[road(), short, long, longest], &[]);
    let note = only(&found);
    assert!(note.words.starts_with("2 dead ends"), "{note}");
    assert_eq!(note.at, Some(p(300, 90)));
}

/// International Fire Code, appendix D, D107.1, from memory: more than 30 homes.
#[test]
fn more_than_30_homes_on_one_way_in_are_told_and_a_second_way_in_ends_it() {
    let stem = street(&[(200, 0), (200, 100)]);
    let homes = |streets: &[Street]| {
        let study = Study::open(plan(streets, &[land((200, 180), 0)], &SITE)).unwrap();
        let most = study.evaluation().value("streets.most_homes_behind_one");
        most.and_then(|cell| cell.number()).unwrap()
    };
    let one = [road(), ring(), stem];
    let most = homes(&one);
    assert!(most > HOMES_ON_ONE_WAY, "{most}");
    let found = cautions_of(&one, &[land((200, 180), 0)]);
    let note = only(&found);
    assert!(
        note.words
            .starts_with(&format!("one way alone leads to {most:.0} homes")),
        "{note}"
    );
    assert_eq!(note.at, Some(p(200, 0)), "at the way in");

    let second = street(&[(100, 0), (100, 100)]);
    let third = street(&[(50, 260), (50, 300)]);
    let two = [&one[..], &[second, third]].concat();
    assert!(homes(&two) <= HOMES_ON_ONE_WAY);
    assert_eq!(cautions_of(&two, &[land((200, 180), 0)]), []);
    assert_eq!(cautions_of(&one, &[]), [], "without homes there is nothing to ask");
}

#[test]
fn paint_on_land_that_floods_is_wet_or_steep_is_told_where_it_lies() {
    let within = [(60, 110), (100, 110), (100, 150), (60, 150)];
    let beyond = [(360, 10), (390, 10), (390, 60), (360, 60)];
    let use_of_land = land((200, 180), 0);
    // A ring of streets that meets the road at two corners hangs on no single way.
    let streets = [
        road(),
        ring(),
        street(&[(50, 0), (50, 100)]),
        street(&[(350, 0), (350, 100)]),
    ];
    for (kind, word, ask) in [
        (ConstraintKind::Floodplain, "floodplain", "floodplain administrator"),
        (ConstraintKind::Wetland, "wetland", "wetland agency"),
        (ConstraintKind::Steep, "steep land", "geotechnical engineer"),
    ] {
        let found = cautions_of(&streets, &[use_of_land.clone(), area(kind, false, within)]);
        let note = only(&found);
        assert!(
            note.words.starts_with(&format!("a painted block reaches onto {word}")),
            "{note}"
        );
        assert!(note.words.contains(ask), "{note}");
        assert_eq!(note.at, Some(p(80, 130)));
        assert!(note.mark.is_some());
        let quiet = [
            vec![use_of_land.clone(), area(kind, true, within)],
            vec![use_of_land.clone(), area(kind, false, beyond)],
            vec![area(kind, false, within)],
            vec![land((200, 180), park()), area(kind, false, within)],
        ];
        for marks in quiet {
            assert_eq!(cautions_of(&streets, &marks), [], "{marks:?}");
        }
    }
    let kept = [use_of_land, area(ConstraintKind::Keep, false, within)];
    assert_eq!(cautions_of(&streets, &kept), []);
}

#[test]
fn a_new_street_across_held_back_land_is_told_where_it_crosses() {
    let creek = [(90, 20), (390, 20), (390, 30), (90, 30)];
    let across = || street(&[(200, 0), (200, 40)]);
    for (kind, words) in [
        (
            ConstraintKind::Floodplain,
            "a street crosses floodplain: ask the floodplain administrator",
        ),
        (
            ConstraintKind::Wetland,
            "a street crosses wetland: ask the wetland agency",
        ),
        (
            ConstraintKind::Steep,
            "a street crosses steep land: ask a civil engineer",
        ),
        (
            ConstraintKind::Water,
            "a street crosses water: ask a structural engineer",
        ),
    ] {
        let land = area(kind, false, creek);
        let found = cautions_of(&[road(), across()], std::slice::from_ref(&land));
        let note = only(&found);
        assert!(note.words.starts_with(words), "{note}");
        assert_eq!(note.at, Some(p(200, 25)));
        let two = [road(), across(), street(&[(300, 0), (300, 40)])];
        let found = cautions_of(&two, std::slice::from_ref(&land));
        assert!(only(&found).words.starts_with("2 streets"), "{found:?}");

        let standing = Street {
            status: Status::Kept,
            ..across()
        };
        let quiet = [
            standing,
            path(&[(200, 0), (200, 40)]),
            street(&[(200, 0), (200, 20)]),
            street(&[(80, 0), (80, 40)]),
        ];
        for street in quiet {
            let found = cautions_of(&[road(), street], std::slice::from_ref(&land));
            assert_eq!(found, []);
        }
        assert_eq!(cautions_of(&[road(), across()], &[area(kind, true, creek)]), []);
    }
}

#[test]
fn an_empty_sheet_and_a_site_alone_are_told_nothing() {
    assert_eq!(cautions_of(&[], &[]), []);
    assert_eq!(
        cautions_of(
            &[road()],
            &[area(
                ConstraintKind::Steep,
                false,
                [(0, 10), (400, 10), (400, 90), (0, 90)]
            )]
        ),
        []
    );
}
