//! What is said of a selection, of one thing or of many.

use super::*;
use crate::app::fields::{Field, Value};
use hobnail_core::plan::street::{Street, StreetRole};
use hobnail_core::plan::{Document, StreetSectionId};

fn street(app: &App, id: u32) -> Street {
    let mark = app.study().document().mark(app.study().alternative(), MarkId(id));
    mark.and_then(Mark::as_street).expect("a street").clone()
}

/// What a field has chosen, in words.
fn chosen(app: &App, field: Field) -> Option<String> {
    let details = app.forms().details;
    let shown = details.iter().find(|shown| shown.field == field)?;
    match &shown.value {
        Value::Choice(names, place) => names.get(*place).cloned(),
        other => panic!("{other:?}"),
    }
}

/// Chooses an option of a field by its words.
fn choose(app: &mut App, field: Field, words: &str) {
    let details = app.forms().details;
    let shown = details.iter().find(|shown| shown.field == field).expect("the field");
    let Value::Choice(names, _) = &shown.value else {
        panic!("{shown:?}")
    };
    let place = names.iter().position(|name| name == words).expect("the option");
    app.set_field(field, &place.to_string());
}

fn faults(document: &Document) -> usize {
    hobnail_core::plan::validate::validate(document).len()
}

#[test]
fn a_drawn_street_gets_another_street_section() {
    let mut app = with_homes();
    app.choose_tool(ToolKind::Select);
    click(&mut app, 60.0, -40.0);
    let id = app.selection().expect("a street").mark().0;
    let (before, homes) = (app.study().document().clone(), value(&app, "homes.count"));
    assert_eq!(app.forms().details[1].field, Field::StreetSection, "after its name");
    assert_eq!(
        chosen(&app, Field::StreetSection).as_deref(),
        Some("Neighborhood street")
    );
    let drawing = app.editors().editor.drawing;
    choose(&mut app, Field::StreetSection, "Boulevard");
    let boulevard = street(&app, id);
    assert_eq!(boulevard.section, StreetSectionId(1));
    assert_eq!(boulevard.role, StreetRole::NeighborhoodStreet, "as it would be drawn");
    assert_eq!(chosen(&app, Field::StreetSection).as_deref(), Some("Boulevard"));
    assert_ne!(app.editors().editor.drawing, drawing, "its drawing follows");
    assert_ne!(value(&app, "homes.count"), homes, "a wider street leaves less land");
    choose(&mut app, Field::StreetSection, "Path");
    assert_eq!(street(&app, id).role, StreetRole::Path);
    choose(&mut app, Field::StreetSection, "Alley");
    assert_eq!(street(&app, id).role, StreetRole::Alley);
    assert_eq!(faults(app.study().document()), faults(&before));
    for _ in 0..3 {
        let label = app.study().history().undo_label().map(str::to_owned);
        assert_eq!(label.as_deref(), Some("change street section"));
        app.undo();
    }
    assert_eq!(*app.study().document(), before);
}
