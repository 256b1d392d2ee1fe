//! What is said of a selection, of one thing or of many.

use super::*;
use crate::app::fields::{Field, Value};
use hobnail_core::plan::land::{Fronting, SideUse, UseMark};
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

/// Drags from one corner to another with the select tool.
fn draw_box(app: &mut App, from: (f64, f64), to: (f64, f64)) {
    app.choose_tool(ToolKind::Select);
    let (from, to) = (pointer(app, from.0, from.1), pointer(app, to.0, to.1));
    app.handle(Event::Move(from));
    app.handle(Event::Down(from, Button::Primary));
    app.handle(Event::Move(to));
    app.handle(Event::Up(to));
}

fn shift_click(app: &mut App, x_m: f64, y_m: f64) {
    let mut pointer = pointer(app, x_m, y_m);
    pointer.modifiers.shift = true;
    app.handle(Event::Down(pointer, Button::Primary));
    app.handle(Event::Up(pointer));
}

fn fields_shown(app: &App) -> Vec<Field> {
    app.forms().details.iter().map(|shown| shown.field).collect()
}

/// Two streets and three across between them, with homes on both blocks.
fn with_ladder() -> App {
    let mut app = app();
    draw(&mut app, &[(-150.0, -50.0), (150.0, -50.0)]);
    draw(&mut app, &[(-150.0, 50.0), (150.0, 50.0)]);
    draw(&mut app, &[(-100.0, -50.0), (-100.0, 50.0)]);
    draw(&mut app, &[(0.0, -50.0), (0.0, 50.0)]);
    draw(&mut app, &[(100.0, -50.0), (100.0, 50.0)]);
    app.choose_tool(ToolKind::Use);
    click(&mut app, -50.0, 0.0);
    click(&mut app, 50.0, 0.0);
    app
}

#[test]
fn streets_selected_together_get_a_street_section_in_one_step() {
    let mut app = with_ladder();
    app.choose_tool(ToolKind::Select);
    click(&mut app, 50.0, -50.0);
    choose(&mut app, Field::StreetSection, "Boulevard");
    shift_click(&mut app, 50.0, 50.0);
    assert_eq!(app.picked().len(), 2);
    let shared = [Field::StreetSection, Field::Status, Field::StreetOwner, Field::Outside];
    assert_eq!(
        fields_shown(&app),
        shared,
        "no name for two, no phase where there is one"
    );
    assert!(app.forms().is_selected);
    assert_eq!(chosen(&app, Field::StreetSection).as_deref(), Some("Different"));
    assert_eq!(chosen(&app, Field::Status).as_deref(), Some("New"));
    let before = app.study().document().clone();
    let Value::Choice(names, place) = &app.forms().details[0].value else {
        panic!("it is chosen")
    };
    app.set_field(Field::StreetSection, &place.to_string());
    assert_eq!(names.len(), place + 1);
    assert_eq!(*app.study().document(), before, "to differ can not be chosen");
    choose(&mut app, Field::StreetSection, "Lane");
    for id in app.picked() {
        assert_eq!(
            (street(&app, id.0).section, street(&app, id.0).role),
            (StreetSectionId(4), StreetRole::Lane)
        );
    }
    assert_eq!(chosen(&app, Field::StreetSection).as_deref(), Some("Lane"));
    choose(&mut app, Field::StreetOwner, "Private");
    app.undo();
    app.undo();
    assert_eq!(*app.study().document(), before, "each is one step");
}

#[test]
fn a_box_takes_the_blocks_in_it_and_phases_are_set_for_all() {
    let mut app = with_ladder();
    app.add_phase();
    app.add_phase();
    draw_box(&mut app, (-120.0, -70.0), (20.0, 70.0));
    let count = |app: &App, is_wanted: fn(&Mark) -> bool| {
        let mark = |id: &MarkId| app.study().document().mark(app.study().alternative(), *id);
        app.picked()
            .iter()
            .filter_map(mark)
            .filter(|mark| is_wanted(mark))
            .count()
    };
    assert_eq!(
        count(&app, |mark| mark.as_street().is_some()),
        2,
        "the two across in it"
    );
    assert_eq!(
        count(&app, |mark| mark.as_use().is_some()),
        1,
        "and the block between them"
    );
    let all = [
        Field::StreetSection,
        Field::Status,
        Field::StreetOwner,
        Field::Outside,
        Field::Phase,
    ];
    assert_eq!(fields_shown(&app), all, "the block leaves what streets share");
    assert_eq!(chosen(&app, Field::Phase).as_deref(), Some("Phase 1"));
    choose(&mut app, Field::Phase, "Phase 2");
    assert_eq!(chosen(&app, Field::Phase).as_deref(), Some("Phase 2"));
    shift_click(&mut app, 50.0, 0.0);
    assert_eq!(
        count(&app, |mark| mark.as_use().is_some()),
        2,
        "a block is added by Shift"
    );
    assert_eq!(chosen(&app, Field::Phase).as_deref(), Some("Different"));
    choose(&mut app, Field::Phase, "Phase 1");
    assert_eq!(chosen(&app, Field::Phase).as_deref(), Some("Phase 1"));
    let uses = |app: &App| -> Vec<Mark> {
        let marks = &app.study().document().alternatives[&app.study().alternative()].marks;
        marks.values().filter(|mark| mark.as_use().is_some()).cloned().collect()
    };
    let painted = uses(&app);
    choose(&mut app, Field::Status, "Existing");
    assert_eq!(chosen(&app, Field::Status).as_deref(), Some("Existing"));
    assert_eq!(uses(&app), painted);
    let before = app.study().document().clone();
    click(&mut app, -50.0, 0.0);
    shift_click(&mut app, 50.0, -50.0);
    assert_eq!(fields_shown(&app), all, "whichever was selected first");
    shift_click(&mut app, 50.0, -50.0);
    assert_eq!(app.forms().title, "Block", "one is left, and selected as if pressed");
    shift_click(&mut app, 50.0, 0.0);
    assert_eq!(app.selected_words().as_deref(), Some("2 things selected"));
    assert_eq!(app.selection_shown(), None, "blocks alone are not moved");
    assert!(app.forms().is_selected);
    assert_eq!(app.forms().about, "2 things selected");
    press(&mut app, Key::Character('d'));
    press(&mut app, Key::Character('m'));
    press(&mut app, Key::Character(']'));
    assert_eq!(*app.study().document(), before);
    press(&mut app, Key::Delete);
    assert_eq!(value(&app, "homes.count"), "0 homes");
    app.undo();
    assert_eq!(*app.study().document(), before);
}

/// Four blocks of homes west of the middle, one with shops along a side.
fn with_four_blocks() -> App {
    let mut app = app();
    for y in [-60.0, 0.0, 60.0] {
        draw(&mut app, &[(-180.0, y), (-20.0, y)]);
    }
    for x in [-180.0, -100.0, -20.0] {
        draw(&mut app, &[(x, -60.0), (x, 60.0)]);
    }
    app.choose_tool(ToolKind::Use);
    for (x, y) in [(-140.0, -30.0), (-60.0, -30.0), (-140.0, 30.0), (-60.0, 30.0)] {
        click(&mut app, x, y);
    }
    let mut document = app.study().document().clone();
    let alternative = app.study().alternative();
    let marks = &mut document.alternatives.get_mut(&alternative).expect("it is there").marks;
    let fabric = app.study().fabric();
    let face = fabric.face_at(PlanPoint::new(-60_000, 30_000)).expect("a block");
    let (street, hand) = face.sides.iter().find_map(|side| side.street).expect("a side");
    let side = SideUse {
        street: fabric.lines.streets[street as usize].mark,
        hand,
        at: PlanPoint::new(-60_000, 60_000),
        fronting: Fronting::Front,
        building_type: None,
        shopfront: true,
        stories: Some(2),
        setback_mm: None,
    };
    let Some(Mark::Use(held)) = face.use_mark.and_then(|id| marks.get_mut(&id)) else {
        panic!("it is painted")
    };
    held.sides.push(side);
    app.replace(document).expect("it opens");
    app
}

#[test]
fn a_copied_neighborhood_has_as_many_homes_as_the_first() {
    let mut app = with_four_blocks();
    let before = app.study().document().clone();
    let homes = |app: &App| {
        let words = value(app, "homes.count");
        words
            .split(' ')
            .next()
            .and_then(|count| count.parse::<u32>().ok())
            .expect("a number")
    };
    let once = homes(&app);
    assert!(once >= 12, "{once}");
    draw_box(&mut app, (-195.0, -75.0), (-5.0, 75.0));
    assert_eq!(app.picked().len(), 10, "six streets and four blocks");
    press(&mut app, Key::Character('d'));
    let at = pointer(&app, 20.0, -60.0);
    app.handle(Event::Move(at));
    assert_eq!(homes(&app), 2 * once, "numbers move with it");
    app.handle(Event::Down(at, Button::Primary));
    app.handle(Event::Up(at));
    assert_eq!(homes(&app), 2 * once);
    assert_eq!(app.picked().len(), 10, "the copies are selected");
    let uses = |app: &App| -> Vec<UseMark> {
        let marks = &app.study().document().alternatives[&app.study().alternative()].marks;
        marks.values().filter_map(Mark::as_use).cloned().collect()
    };
    let (shops, copied): (Vec<UseMark>, Vec<UseMark>) = uses(&app)
        .into_iter()
        .filter(|held| !held.sides.is_empty())
        .partition(|held| held.anchor.x_mm < 0);
    assert_eq!((shops.len(), copied.len()), (1, 1));
    let (first, copy) = (&shops[0].sides[0], &copied[0].sides[0]);
    assert_eq!((copy.hand, copy.shopfront, copy.stories), (first.hand, true, Some(2)));
    assert_ne!(copy.street, first.street);
    assert!(app.picked().contains(&copy.street));
    assert_eq!(faults(app.study().document()), faults(&before));
    app.undo();
    assert_eq!(*app.study().document(), before, "one step");
    app.redo();
    assert_eq!(homes(&app), 2 * once);
}
