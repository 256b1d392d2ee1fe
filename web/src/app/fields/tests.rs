use super::*;
use hobnail_core::plan::StreetSectionId;
use hobnail_core::plan::projection::GeographicPoint;

fn document() -> Document {
    let origin = GeographicPoint {
        longitude_ndeg: 0,
        latitude_ndeg: 0,
    };
    Document::new("Test", origin)
}

/// What a person would type or choose to say something else than is there.
fn another(value: &Value) -> String {
    match value {
        Value::Text(text) => format!("{text}else"),
        Value::Number(text, _) => if text == "7" { "8" } else { "7" }.to_owned(),
        Value::Choice(options, chosen) => ((chosen + 1) % options.len()).to_string(),
        Value::Flag(is_on) => (!is_on).to_string(),
    }
}

#[test]
fn every_field_of_every_mark_is_put_back_as_it_was_typed() {
    let mut document = document();
    document.settings.units = UnitSystem::Metric;
    for id in 0..2 {
        let name = format!("Phase {id}");
        let phase = hobnail_core::plan::document::Phase { name };
        document.phases.insert(PhaseId(id), phase);
    }
    let areas = (1..=drafts::OUTSIDE).filter_map(|place| drafts::area(place, &document));
    let marks: Vec<Mark> = areas.chain((0..=drafts::NOTE).map(drafts::place)).collect();
    for mark in marks {
        let fields = of_mark(&document, &mark);
        assert!(!fields.is_empty(), "{mark:?}");
        for shown in fields {
            let mut changed = mark.clone();
            let typed = another(&shown.value);
            put(&document, &mut changed, shown.field, &typed).expect("it can be said");
            let after = of_mark(&document, &changed);
            let held = after
                .iter()
                .find(|held| held.field == shown.field)
                .expect("the field stays");
            let says = match &held.value {
                Value::Text(text) | Value::Number(text, _) => text.clone(),
                Value::Choice(_, chosen) => chosen.to_string(),
                Value::Flag(is_on) => is_on.to_string(),
            };
            assert_eq!(says, typed, "{:?} of {mark:?}", shown.field);
            let others = |fields: &[FieldShown]| -> Vec<FieldShown> {
                fields
                    .iter()
                    .filter(|held| held.field != shown.field)
                    .cloned()
                    .collect()
            };
            assert_eq!(
                others(&after),
                others(&of_mark(&document, &mark)),
                "nothing else changes"
            );
        }
    }
}

#[test]
fn a_street_whose_section_is_lost_names_none_and_takes_another() {
    let document = document();
    let mut lost = crate::tools::fixtures::street(&[(0, 0), (90_000, 0)]);
    lost.section = StreetSectionId(99);
    let mut mark = Mark::Street(lost);
    let shown = of_mark(&document, &mark).into_iter();
    let shown = shown.map(|shown| (shown.field, shown.value)).nth(1).expect("a section");
    let (Field::StreetSection, Value::Choice(names, place)) = shown else {
        panic!("{shown:?}")
    };
    assert_eq!(names[place], "");
    let typed = place.to_string();
    assert_eq!(put(&document, &mut mark, Field::StreetSection, &typed), None);
    put(&document, &mut mark, Field::StreetSection, "0").expect("the first section");
    assert_eq!(mark.as_street().map(|street| street.section), Some(StreetSectionId(0)));
}

#[test]
fn what_is_no_number_is_refused() {
    let document = document();
    let mut crossing = drafts::place(drafts::CROSSING);
    for text in ["soon", "-3", "nan", "1e99"] {
        assert_eq!(put(&document, &mut crossing, Field::Wait, text), None, "{text}");
    }
    assert_eq!(crossing, drafts::place(drafts::CROSSING));
    assert_eq!(
        put(&document, &mut crossing, Field::Homes, "3"),
        None,
        "a crossing has no homes"
    );
}

#[test]
fn numbers_are_shown_in_the_units_of_the_plan() {
    let shown = |unit: Unit, stored: f64, units| match unit.number(stored, units) {
        Value::Number(text, word) => format!("{text} {word}"),
        other => panic!("{other:?}"),
    };
    assert_eq!(shown(Unit::Land, 40_469.0, UnitSystem::UsCustomary), "10 acres");
    assert_eq!(shown(Unit::Land, 25_000.0, UnitSystem::Metric), "2.5 ha");
    assert_eq!(Unit::Floor.read("10000", UnitSystem::UsCustomary), Some(929.0));
    assert_eq!(Unit::Share.read("100.1", UnitSystem::Metric), None, "no more than all");
}

#[test]
fn a_plan_keeps_its_name() {
    let heading = document().heading;
    assert_eq!(heading_with(&heading, Field::PlanName, "  "), None);
    assert_eq!(heading_with(&heading, Field::Latitude, "89.5"), None);
    let moved = heading_with(&heading, Field::Latitude, "44.25").expect("a latitude");
    assert_eq!(moved.origin_latitude_ndeg, 44_250_000_000);
}
