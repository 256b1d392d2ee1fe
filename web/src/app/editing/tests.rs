use super::*;
use crate::canvas::camera::Insets;
use crate::input::{Button, Event, Pointer};
use crate::tools::drawing::Manner;
use hobnail_core::plan::PlanPoint;
use hobnail_core::plan::street::Street;

/// An application with a site of 400 by 300 m in view.
fn app() -> App {
    let mut app = App::new().expect("the tables fit together");
    let mut document = app.study().document().clone();
    let corners = [(-200, -150), (200, -150), (200, 150), (-200, 150)];
    document.site.boundary = corners.map(|(x, y)| PlanPoint::new(x * 1_000, y * 1_000)).to_vec();
    document.settings.units = UnitSystem::Metric;
    app.replace(document).expect("it opens");
    app.resize(1000.0, 800.0, Insets::default());
    app.fit();
    app
}

fn pointer(app: &App, (x_m, y_m): (f64, f64)) -> Pointer {
    Pointer {
        id: 1,
        at: app.camera().screen_from_m((x_m, y_m)),
        kind: PointerKind::Mouse,
        modifiers: Modifiers::default(),
    }
}

fn click(app: &mut App, at: (f64, f64)) {
    let pointer = pointer(app, at);
    app.handle(Event::Move(pointer));
    app.handle(Event::Down(pointer, Button::Primary));
    app.handle(Event::Up(pointer));
}

fn drag(app: &mut App, from: (f64, f64), to: (f64, f64)) {
    let (from, to) = (pointer(app, from), pointer(app, to));
    app.handle(Event::Down(from, Button::Primary));
    app.handle(Event::Move(to));
    app.handle(Event::Up(to));
}

fn press(app: &mut App, key: Key) {
    app.handle(Event::KeyDown(key, Modifiers::default()));
}

fn streets(app: &App) -> Vec<Street> {
    let study = app.study();
    let marks = &study.document().alternatives[&study.alternative()].marks;
    marks.values().filter_map(Mark::as_street).cloned().collect()
}

fn set_manner(app: &mut App, manner: Manner) {
    let mut choices = *app.choices();
    choices.drawing.manner = manner;
    app.choose(choices);
}

#[test]
fn a_street_is_drawn_by_numbers_alone() {
    let mut app = app();
    app.choose_tool(ToolKind::Street);
    press(&mut app, Key::Left);
    press(&mut app, Key::Enter);
    assert!(app.takes_length());
    let start = app.crosshair().expect("the crosshair");
    app.type_next(0, "60".to_owned());
    app.type_next(1, "90".to_owned());
    app.end_typing(true);
    app.type_next(0, "40".to_owned());
    app.type_next(1, "-90".to_owned());
    app.end_typing(true);
    assert_eq!(app.typed_words(), &[String::new(), String::new()]);
    press(&mut app, Key::Enter);
    let drawn = streets(&app);
    let points: Vec<(i32, i32)> = drawn[0]
        .line
        .iter()
        .map(|vertex| {
            (
                vertex.point.x_mm - drawn[0].line[0].point.x_mm,
                vertex.point.y_mm - drawn[0].line[0].point.y_mm,
            )
        })
        .collect();
    assert_eq!(points, [(0, 0), (60_000, 0), (60_000, 40_000)], "from {start:?}");
    assert_eq!(app.study().history().undo_label(), Some("draw street"));
}

#[test]
fn feet_are_feet_and_nonsense_is_said() {
    let mut app = app();
    app.show_units(UnitSystem::UsCustomary);
    app.choose_tool(ToolKind::Street);
    click(&mut app, (-100.0, 37.0));
    app.type_next(0, "long".to_owned());
    app.end_typing(true);
    assert!(app.said().starts_with("Not understood"), "{}", app.said());
    assert!(app.tool().is_busy());
    app.type_next(0, "100".to_owned());
    app.type_next(1, "180".to_owned());
    app.end_typing(true);
    press(&mut app, Key::Enter);
    let line = &streets(&app)[0].line;
    assert_eq!(line[0].point.y_mm - line[1].point.y_mm, 30_480);
}

#[test]
fn a_grid_is_one_step_and_is_moved_as_one() {
    let mut app = app();
    app.choose_tool(ToolKind::Street);
    set_manner(&mut app, Manner::Blocks);
    app.type_into(Field::BlockLength, "80");
    app.type_into(Field::BlockDepth, "50");
    click(&mut app, (-100.0, -60.0));
    click(&mut app, (62.0, 42.0));
    assert_eq!(streets(&app).len(), 6);
    assert_eq!(app.study().history().undo_label(), Some("draw grid of blocks"));
    app.choose_tool(ToolKind::Select);
    drag(&mut app, (-150.0, -100.0), (120.0, 100.0));
    assert_eq!(app.picked().len(), 6);
    assert_eq!(app.selected_words().as_deref(), Some("6 streets selected"));
    let before = streets(&app);
    press(&mut app, Key::Right);
    let after = streets(&app);
    for (one, other) in before.iter().zip(&after) {
        for (was, is) in one.line.iter().zip(&other.line) {
            assert_eq!((is.point.x_mm - was.point.x_mm, is.point.y_mm), (100, was.point.y_mm));
            assert_eq!(is.tie, was.tie);
        }
    }
    app.undo();
    assert_eq!(streets(&app), before);
    app.command(Command::TurnLeft);
    assert_eq!(app.study().history().undo_label(), Some("turn"));
    press(&mut app, Key::Delete);
    assert!(streets(&app).is_empty() && app.picked().is_empty());
    app.undo();
    assert_eq!(streets(&app).len(), 6);
}

#[test]
fn a_corner_takes_a_radius_that_fits() {
    let mut app = app();
    app.choose_tool(ToolKind::Street);
    for at in [(-100.0, 0.0), (0.0, 0.0), (0.0, 60.0)] {
        click(&mut app, at);
    }
    press(&mut app, Key::Enter);
    app.choose_tool(ToolKind::Select);
    click(&mut app, (0.0, 0.0));
    let shown = app.selection_shown().expect("a selection");
    assert_eq!(shown.radius, Some(("0".to_owned(), "60.0 m".to_owned())));
    app.type_into(Field::Radius, "25");
    assert_eq!(streets(&app)[0].line[1].corner_radius_mm, 25_000);
    app.type_into(Field::Radius, "500");
    assert_eq!(streets(&app)[0].line[1].corner_radius_mm, 60_000);
    assert_eq!(app.study().history().undo_label(), Some("round corner"));
}

#[test]
fn the_panel_offers_what_fits_the_selection() {
    let mut app = app();
    app.choose_tool(ToolKind::Street);
    for at in [(-100.0, 0.0), (100.0, 0.0)] {
        click(&mut app, at);
    }
    press(&mut app, Key::Enter);
    assert_eq!(app.selection_shown(), None, "the street tool has its own palette");
    app.choose_tool(ToolKind::Select);
    let offered = app.selection_shown().expect("a selection").commands;
    assert!(offered.contains(&Command::Cut) && !offered.contains(&Command::Join));
    press(&mut app, Key::Escape);
    assert_eq!(app.selection_shown(), None);
}

#[test]
fn a_tape_is_read_and_changes_nothing() {
    let mut app = app();
    let before = app.study().document().clone();
    app.choose_tool(ToolKind::Street);
    set_manner(&mut app, Manner::Tape);
    for at in [(-50.0, 0.0), (50.0, 0.0), (50.0, 40.0)] {
        click(&mut app, at);
    }
    press(&mut app, Key::Enter);
    assert_eq!(app.measured_words().as_deref(), Some("Total 140 m, area 0.20 ha"));
    assert_eq!(*app.study().document(), before);
    assert_eq!(app.study().history().undo_label(), None);
}
