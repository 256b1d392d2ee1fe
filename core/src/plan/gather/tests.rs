use super::*;
use crate::plan::document::Phase;
use crate::plan::fixtures::{document, street};
use crate::plan::land::{Note, RemarkAnswer, UseMark};
use crate::plan::{MarkId, PlanPoint, defaults};

/// A plan with the palettes that every plan begins with and one street 100 m long, `y_mm` north.
fn table(y_mm: i32) -> Document {
    let mut document = document();
    document.street_sections = defaults::street_sections();
    document.building_types = defaults::building_types();
    let held = document.alternatives.get_mut(&AlternativeId(0)).unwrap();
    held.name = "Plan".to_owned();
    held.marks
        .insert(MarkId(0), Mark::Street(street(&[(0, y_mm), (100_000, y_mm)])));
    document
}

fn street_of(document: &Document, alternative: u32) -> super::super::street::Street {
    document
        .mark(AlternativeId(alternative), MarkId(0))
        .unwrap()
        .as_street()
        .unwrap()
        .clone()
}

#[test]
fn tables_stand_side_by_side_under_their_files_names() {
    let mut base = table(0);
    assert_eq!(add_alternatives(&mut base, "table 2", table(10)), Ok(Vec::new()));
    let mut third = table(20);
    let held = third.alternatives.get_mut(&AlternativeId(0)).unwrap();
    (held.table, held.name) = ("Mill Lane".to_owned(), "Mill".to_owned());
    add_alternatives(&mut base, "table 3", third).unwrap();
    let tables: Vec<&str> = base.alternatives.values().map(|held| held.table.as_str()).collect();
    assert_eq!(tables, ["", "table 2", "Mill Lane"]);
    let names: Vec<&str> = base.alternatives.values().map(|held| held.name.as_str()).collect();
    assert_eq!(names, ["Plan", "Plan, table 2", "Mill"]);
    assert_eq!(street_of(&base, 2).line[0].point.y_mm, 20);
}

#[test]
fn a_section_or_type_under_a_taken_id_is_added_and_one_that_is_there_is_found() {
    let (mut base, mut other) = (table(0), table(10));
    let own = StreetSectionId(0);
    other.street_sections.get_mut(&own).unwrap().name = "Wide lane".to_owned();
    let moved = BuildingTypeId(400);
    let kind = other.building_types.get(&BuildingTypeId(1)).unwrap().clone();
    other.building_types.insert(moved, kind);
    other.phases.insert(
        PhaseId(0),
        Phase {
            name: "First".to_owned(),
        },
    );
    base.phases.insert(
        PhaseId(0),
        Phase {
            name: "Soon".to_owned(),
        },
    );
    let marks = &mut other.alternatives.get_mut(&AlternativeId(0)).unwrap().marks;
    marks.insert(
        MarkId(1),
        Mark::Use(UseMark {
            anchor: PlanPoint::new(0, 0),
            program: vec![Portion {
                building_type: moved,
                share_ppm: 1_000_000,
            }],
            land_m2: 0,
            sides: Vec::new(),
            phase: Some(PhaseId(0)),
        }),
    );
    let (sections, types) = (base.street_sections.len(), base.building_types.len());
    add_alternatives(&mut base, "b", other).unwrap();
    assert_eq!(
        (base.street_sections.len(), base.building_types.len()),
        (sections + 1, types)
    );
    assert_eq!(base.street_sections[&street_of(&base, 1).section].name, "Wide lane");
    assert_ne!(base.street_sections[&street_of(&base, 0).section].name, "Wide lane");
    let Some(Mark::Use(used)) = base.mark(AlternativeId(1), MarkId(1)) else {
        panic!("the use is there")
    };
    assert_eq!(used.program[0].building_type, BuildingTypeId(1));
    assert_eq!(base.phases[&used.phase.unwrap()].name, "First");
}

#[test]
fn what_is_not_taken_over_is_said() {
    let (mut base, mut other) = (table(0), table(10));
    other.site.boundary = vec![PlanPoint::new(0, 0); 3];
    other.settings.walking_pace_mm_per_s += 1;
    let told = add_alternatives(&mut base, "b", other).unwrap();
    assert_eq!(
        told,
        [
            "the site's boundary of b differs and is left out",
            "the settings or factors of b differ and are left out"
        ]
    );
}

#[test]
fn a_plan_of_another_place_and_one_with_nothing_new_leave_the_base_as_it_was() {
    let mut base = table(0);
    let before = base.clone();
    let mut elsewhere = table(10);
    elsewhere.heading.origin_latitude_ndeg += 1;
    assert!(add_alternatives(&mut base, "b", elsewhere).is_err());
    assert_eq!(
        add_alternatives(&mut base, "c", table(0)),
        Err("c draws nothing that is not there already".to_owned())
    );
    assert_eq!(base, before);
}

#[test]
fn remarks_come_with_their_votes_and_with_what_answers_them() {
    let (mut base, mut other) = (table(0), table(10));
    let note = Mark::Note(Note {
        text: "A crossing by the school".to_owned(),
        author: "Table 2".to_owned(),
        votes: 14,
        present: 22,
        answers: vec![RemarkAnswer {
            step: "draw street".to_owned(),
            marks: vec![MarkId(0)],
        }],
        figures: vec!["Homes: 12 homes more".to_owned()],
        ..Note::default()
    });
    let held = other.alternatives.get_mut(&AlternativeId(0)).unwrap();
    held.marks.insert(MarkId(1), note.clone());
    add_alternatives(&mut base, "table 2", other).unwrap();
    assert_eq!(base.mark(AlternativeId(1), MarkId(1)), Some(&note));
}
