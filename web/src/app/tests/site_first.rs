//! From a blank sheet: the site, areas, places, phases, the program.

use super::*;
use crate::app::fields::{Field, Value};
use crate::tools::drafts;
use hobnail_core::plan::document::TargetKind;
use hobnail_core::plan::{MarkKind, PhaseId};

/// A blank sheet in view at one pixel per meter.
fn blank() -> App {
    let mut app = App::new().expect("the tables fit together");
    app.resize(1000.0, 800.0, Insets::default());
    app
}

fn outline(app: &mut App, corners: &[(f64, f64)]) {
    for (x_m, y_m) in corners {
        click(app, *x_m, *y_m);
    }
    press(app, Key::Enter);
}

fn draw_area(app: &mut App, place: usize, corners: &[(f64, f64)]) {
    app.choose_tool(ToolKind::Area);
    app.choose_draft(true, place);
    outline(app, corners);
}

fn put_place(app: &mut App, place: usize, x_m: f64, y_m: f64) {
    app.choose_tool(ToolKind::Place);
    app.choose_draft(false, place);
    click(app, x_m, y_m);
}

fn kinds(app: &App) -> Vec<MarkKind> {
    let held = app
        .study()
        .document()
        .alternatives
        .values()
        .next()
        .expect("one alternative");
    held.marks.values().map(Mark::kind).collect()
}

fn field(app: &App, field: Field) -> Option<Value> {
    let forms = app.forms();
    let all = forms.details.into_iter().chain(forms.plan).chain(forms.program);
    all.into_iter()
        .find(|shown| shown.field == field)
        .map(|shown| shown.value)
}

const SITE: [(f64, f64); 4] = [(-300.0, -200.0), (300.0, -200.0), (300.0, 200.0), (-300.0, 200.0)];

fn with_site() -> App {
    let mut app = blank();
    app.choose_tool(ToolKind::Area);
    outline(&mut app, &SITE);
    app
}

#[test]
fn a_blank_sheet_takes_a_site_and_says_what_comes_next() {
    let mut app = blank();
    app.choose_tool(ToolKind::Area);
    assert!(app.tool().awaits().contains("first corner of the site"));
    outline(&mut app, &SITE);
    assert_eq!(app.study().document().site.boundary.len(), 4);
    assert_eq!(app.forms().about, "59.31 acres", "600 by 400 m");
    assert!(
        app.tool().awaits().contains("Next: a center"),
        "{}",
        app.tool().awaits()
    );
    app.undo();
    assert!(app.study().document().site.boundary.is_empty(), "one step");
}

#[test]
fn a_bubble_gives_rough_homes_and_water_takes_land() {
    let mut app = with_site();
    app.choose_draft(true, drafts::SOFT);
    let (from, to) = (pointer(&app, -200.0, -100.0), pointer(&app, 100.0, 100.0));
    app.handle(Event::Move(from));
    app.handle(Event::Down(from, Button::Primary));
    app.handle(Event::Move(to));
    let while_pulled = value(&app, "homes.count");
    assert_ne!(while_pulled, "0 homes", "numbers move while it is pulled");
    app.handle(Event::Up(to));
    assert_eq!(value(&app, "homes.count"), while_pulled);
    app.set_field(Field::Intensity, "50");
    let half = value(&app, "homes.count");
    assert_ne!(half, while_pulled, "the bubble just drawn is spoken of");
    draw_area(
        &mut app,
        drafts::SOFT + 1,
        &[(-50.0, -120.0), (60.0, -120.0), (60.0, 120.0)],
    );
    assert_eq!(kinds(&app), [MarkKind::SoftArea, MarkKind::Constraint]);
    assert_ne!(value(&app, "homes.count"), half, "nothing is built in water");
}

#[test]
fn places_of_every_kind_are_placed_and_named() {
    let mut app = with_site();
    draw(&mut app, &[(-250.0, 0.0), (250.0, 0.0)]);
    draw(&mut app, &[(0.0, 250.0), (0.0, -150.0)]);
    put_place(&mut app, 0, 0.0, 0.0);
    put_place(&mut app, drafts::ACCESS, 3.0, 197.0);
    app.set_field(Field::OutsideTrips, "60");
    let document = app.study().document();
    let access = document
        .alternatives
        .values()
        .flat_map(|held| held.marks.values())
        .find_map(|mark| match mark {
            Mark::SiteAccess(access) => Some(access.clone()),
            _ => None,
        });
    let access = access.expect("an access");
    assert_eq!(
        (access.at, access.outside_trips_ppm),
        (PlanPoint::new(0, 200_000), Some(600_000))
    );
    app.choose_draft(false, drafts::BARRIER);
    outline(&mut app, &[(100.0, -100.0), (100.0, 100.0)]);
    put_place(&mut app, drafts::CROSSING, 101.0, 1.0);
    assert!(!app.take_awaits_words());
    put_place(&mut app, drafts::NOTE, -200.0, 100.0);
    assert!(app.take_awaits_words(), "what it says is typed next");
    assert!(!app.take_awaits_words(), "once");
    app.set_field(Field::Text, "Keep the old oak");
    assert_eq!(
        field(&app, Field::Text),
        Some(Value::Text("Keep the old oak".to_owned()))
    );
    app.choose_draft(false, 4);
    app.set_field(Field::HasLand, "true");
    outline(&mut app, &[(-200.0, -100.0), (-120.0, -100.0), (-120.0, -50.0)]);
    use MarkKind::{Barrier, Crossing, Note, Place, SiteAccess, Street};
    assert_eq!(
        kinds(&app),
        [Street, Street, Place, SiteAccess, Barrier, Crossing, Note, Place]
    );
    assert!(!app.study().is_in_gesture());
    assert!(app.circles_at().is_empty(), "only a center has its circle");
    app.choose_draft(false, 0);
    app.handle(Event::Move(pointer(&app, 50.0, 50.0)));
    assert_eq!(app.circles_at().len(), 1);
}

#[test]
fn the_first_center_on_a_bare_site_stands_where_it_is_placed() {
    let mut app = with_site();
    app.choose_tool(ToolKind::Place);
    app.handle(Event::Move(pointer(&app, 100.0, 50.0)));
    assert!(app.tool().hints().outline.is_empty(), "the site is no square");
    assert_eq!(app.circles_at(), [(100.0, 50.0)], "about the pointer");
    click(&mut app, 100.0, 50.0);
    let document = app.study().document();
    let placed = document.mark(app.study().alternative(), MarkId(0)).cloned();
    let shape = placed.as_ref().and_then(crate::tools::shape::of);
    let at = hobnail_core::plan::Footprint::Point(PlanPoint::new(100_000, 50_000));
    assert_eq!(shape, Some(at));
    app.choose_tool(ToolKind::Street);
    assert_eq!(app.circles_at(), [(100.0, 50.0)], "it stays");
    // A road beside the site leads nowhere in it, and what stands there today is no plan yet.
    draw(&mut app, &[(-300.0, -250.0), (300.0, -250.0)]);
    assert_eq!(app.circles_at(), [(100.0, 50.0)]);
    draw(&mut app, &[(-100.0, -150.0), (-100.0, 150.0)]);
    app.choose_tool(ToolKind::Select);
    click(&mut app, -100.0, 60.0);
    app.set_field(Field::Status, "0");
    assert_eq!(app.circles_at(), [(100.0, 50.0)]);
    draw(&mut app, &[(0.0, -200.0), (0.0, 120.0)]);
    assert!(app.circles_at().is_empty(), "the walk-shed takes over");
    app.undo();
    assert_eq!(app.circles_at().len(), 1);
}

#[test]
fn areas_are_picked_by_edge_moved_reshaped_and_deleted() {
    let mut app = with_site();
    let corners = [(-100.0, -100.0), (100.0, -100.0), (100.0, 100.0), (-100.0, 100.0)];
    draw_area(&mut app, drafts::SOFT + 3, &corners);
    let drawn = app.study().document().clone();
    app.choose_tool(ToolKind::Select);
    press(&mut app, Key::Escape);
    click(&mut app, 60.0, -100.0);
    assert!(matches!(app.selection(), Some(Selection::Place(_))));
    assert_eq!(app.forms().title, "Wetland");
    let drag = |app: &mut App, from: (f64, f64), to: (f64, f64)| {
        let (from, to) = (pointer(app, from.0, from.1), pointer(app, to.0, to.1));
        app.handle(Event::Move(from));
        app.handle(Event::Down(from, Button::Primary));
        app.handle(Event::Move(to));
        app.handle(Event::Up(to));
    };
    let corners_of = |app: &App| {
        let mark = app
            .study()
            .document()
            .mark(app.study().alternative(), MarkId(0))
            .cloned();
        let shape = crate::tools::shape::of(&mark.expect("the wetland")).expect("an outline");
        crate::tools::shape::into_points(shape)
    };
    drag(&mut app, (100.0, 100.0), (150.0, 120.0));
    assert_eq!(corners_of(&app)[2], PlanPoint::new(150_000, 120_000));
    drag(&mut app, (0.0, -100.0), (0.0, -150.0));
    assert_eq!(corners_of(&app).len(), 5, "a corner is pulled out of an edge");
    drag(&mut app, (-100.0, 60.0), (-90.0, 70.0));
    assert_eq!(
        corners_of(&app)[0],
        PlanPoint::new(-90_000, -90_000),
        "the whole is moved"
    );
    for _ in 0..3 {
        app.undo();
    }
    assert_eq!(*app.study().document(), drawn, "one step each");
    app.delete();
    assert!(kinds(&app).is_empty());
    assert_eq!(app.selection(), None);
}

#[test]
fn what_was_just_drawn_is_deleted_with_its_tool_still_chosen() {
    let mut app = with_site();
    put_place(&mut app, drafts::NOTE, 0.0, 0.0);
    app.delete();
    assert!(kinds(&app).is_empty());
    assert_eq!(app.tool().kind(), ToolKind::Place);
}

#[test]
fn the_program_is_typed_and_followed() {
    let mut app = with_homes();
    assert_eq!(value(&app, "homes.of_asked"), "—");
    app.show_program(true);
    app.set_field(Field::Asked(TargetKind::Homes), "40");
    assert_ne!(value(&app, "homes.of_asked"), "—");
    let lines = app.forms().program;
    let homes = lines.first().expect("homes in all");
    assert_eq!(homes.value, Value::Number("40".to_owned(), ""));
    assert!(!homes.beside[0].is_empty() && !homes.beside[1].is_empty(), "{homes:?}");
    app.set_field(Field::Asked(TargetKind::ParkLandM2), "2");
    assert_eq!(app.study().document().program.len(), 2);
    assert_eq!(
        app.study().document().program[1].asked,
        8_094,
        "two acres in square meters"
    );
    app.set_field(Field::Asked(TargetKind::ParkLandM2), "much");
    assert!(app.notice().is_some(), "what is no number is refused");
    app.set_field(Field::Asked(TargetKind::Homes), "");
    assert_eq!(app.study().document().program.len(), 1);
    app.undo();
    assert_ne!(value(&app, "homes.of_asked"), "—");
    app.show_program(false);
    assert!(app.forms().program.is_empty());
}

#[test]
fn phases_are_added_renamed_reordered_and_deleted_where_unused() {
    let mut app = with_homes();
    let before = app.study().document().clone();
    app.add_phase();
    app.add_phase();
    app.set_field(Field::PhaseName(PhaseId(1)), "North");
    app.choose_tool(ToolKind::Select);
    click(&mut app, 60.0, -40.0);
    assert_eq!(app.forms().title, "Street");
    app.set_field(Field::Phase, "1");
    app.delete_phase(PhaseId(1));
    assert_eq!(app.study().document().phases.len(), 2, "something is drawn in it");
    assert!(app.notice().is_some());
    app.move_phase_earlier(PhaseId(1));
    let names = |app: &App| -> Vec<String> {
        let phases = app.study().document().phases.values();
        phases.map(|phase| phase.name.clone()).collect()
    };
    assert_eq!(names(&app), ["North", "Phase 1"]);
    let chosen = |app: &App| match field(app, Field::Phase) {
        Some(Value::Choice(names, chosen)) => names[chosen].clone(),
        other => panic!("{other:?}"),
    };
    assert_eq!(chosen(&app), "North", "the street stays in its phase");
    press(&mut app, Key::Escape);
    click(&mut app, 0.0, 0.0);
    assert_eq!(app.forms().title, "Block");
    assert_eq!(chosen(&app), "Phase 1", "and so does what named none");
    app.set_field(Field::Phase, "0");
    for _ in 0..6 {
        app.undo();
    }
    assert_eq!(*app.study().document(), before, "each is one step");
}

#[test]
fn the_plan_is_renamed_and_streets_are_given_owner_and_status() {
    let mut app = with_dead_ends();
    app.set_field(Field::PlanName, "Alder Flats");
    assert_eq!(app.study().document().heading.name, "Alder Flats");
    app.set_field(Field::PlanName, " ");
    assert_eq!(app.study().document().heading.name, "Alder Flats", "a plan has a name");
    app.choose_tool(ToolKind::Select);
    click(&mut app, 60.0, 0.0);
    app.set_field(Field::Status, "0");
    app.set_field(Field::StreetOwner, "0");
    app.set_field(Field::Outside, "1");
    let id = app.selection().expect("a street").mark();
    let held = app.study().document().mark(app.study().alternative(), id);
    let street = held.and_then(Mark::as_street).expect("a street");
    use hobnail_core::plan::street::{Status, StreetOwner};
    assert_eq!(
        (street.status, street.owner, street.is_outside),
        (Status::Existing, StreetOwner::State, true)
    );
}
