use super::*;
use crate::app::editor::Change;
use crate::app::editor::edits::{DELETE, DUPLICATE, EDIT_SECTION};
use crate::app::editor::lines::Key as LineKey;
use crate::app::fields::Field;
use crate::app::files::open_text;
use crate::app::scopes::Part;
use crate::app::tests::{click, draw, with_homes};
use crate::browser::keeping::Found;
use crate::input::{Event, Key, Modifiers, RemoteKey};
use crate::tools::Selection;
use crate::tools::select::commands::Command;
use hobnail_core::plan::document::UnitSystem;
use hobnail_core::plan::{Document, MarkId};

const VILLAGE: &str = include_str!("../../../../sample-sketches/compact-village.geojson");

/// Something that would change a plan, and what it is.
type Attempt = (&'static str, fn(&mut App));

/// A plan with steps to undo and to do again, which is only looked at.
fn looked_at() -> App {
    let mut app = with_homes();
    draw(&mut app, &[(-150.0, 120.0), (150.0, 120.0)]);
    app.undo();
    app.look_only();
    let _ = app.study.take_entries();
    app
}

fn press(app: &mut App, key: Key, control: bool) {
    let modifiers = Modifiers {
        control,
        ..Modifiers::default()
    };
    app.handle(Event::KeyDown(key, modifiers));
}

/// What a hand does at the drawing with a tool: presses, drags, keys.
fn work_with(app: &mut App, kind: ToolKind) {
    for (x_m, y_m) in [(0.0, 0.0), (60.0, 0.0), (60.0, 40.0), (-40.0, 40.0), (0.0, 0.0)] {
        click(app, x_m, y_m);
        // Whatever a panel or a fault of ours might leave in the hand.
        app.tool = kind.at_rest();
        click(app, x_m, y_m);
    }
    for key in [Key::Enter, Key::Left, Key::Enter, Key::Backspace, Key::Delete] {
        press(app, key, false);
        press(app, key, true);
    }
}

#[test]
fn nothing_changes_a_plan_that_is_only_looked_at() {
    let attempts: [Attempt; 15] = [
        ("undo", App::undo),
        ("redo", App::redo),
        ("an earlier step", |app| app.go_to_step(0)),
        ("a marked moment", |app| app.mark_moment("now")),
        ("tools", |app| {
            for kind in ToolKind::ALL {
                app.choose_tool(kind);
                work_with(app, kind);
            }
        }),
        ("commands on what was selected", |app| {
            app.selection = Some(Selection::Street(MarkId(1)));
            for command in Command::ALL {
                app.command(command);
            }
            app.pick_up();
            click(app, 20.0, 20.0);
            app.selection = Some(Selection::Street(MarkId(1)));
            press(app, Key::Up, false);
            app.delete();
        }),
        ("keys of a clicker", |app| {
            for key in [RemoteKey::Undo, RemoteKey::Redo, RemoteKey::Confirm, RemoteKey::GiveUp] {
                app.remote(key);
            }
        }),
        ("fields", |app| app.set_field(Field::Name, "Another")),
        ("the program", |app| app.set_field(Field::Homes, "12")),
        ("units", |app| {
            app.show_units(UnitSystem::Metric);
            app.show_units(UnitSystem::UsCustomary);
        }),
        ("phases", App::add_phase),
        ("alternatives", |app| {
            app.copy_alternative();
            app.move_alternative_earlier();
            app.delete_alternative();
        }),
        ("editors", |app| {
            for field in [EDIT_SECTION, DUPLICATE, EDIT_SECTION, DELETE] {
                app.edit(LineKey::panel(field), &Change::Pick(0));
            }
        }),
        ("a file", |app| {
            assert!(open_text(app, "village.geojson", VILLAGE).is_err());
        }),
        ("a kept plan", |app| {
            assert!(app.resume("id", &Found::default()).is_err())
        }),
    ];
    let mut app = looked_at();
    let stands = |app: &App| -> (Document, usize, usize) {
        let history = app.study.history();
        (app.study.document().clone(), history.undo_count(), history.redo_count())
    };
    let before = stands(&app);
    assert!(before.1 > 0 && before.2 > 0);
    for (what, attempt) in attempts {
        attempt(&mut app);
        assert!(stands(&app) == before, "{what} changed the plan");
        assert!(!app.study.is_in_gesture(), "{what} began something");
        assert_eq!(app.study.take_entries(), Vec::new(), "{what} is told to the journal");
        assert!(app.is_looking(), "{what} opened the plan");
    }
}

#[test]
fn the_same_attempts_change_a_plan_that_is_ones_own() {
    let mut app = looked_at();
    let before = app.study.document().clone();
    app.make_own();
    app.redo();
    assert!(*app.study.document() != before);
    app.undo();
    app.add_phase();
    assert!(*app.study.document() != before);
}

#[test]
fn what_is_looked_at_is_measured_and_moved_like_any_plan() {
    let mut app = looked_at();
    let before = app.camera().px_per_m();
    app.zoom(2.0);
    assert!(app.camera().px_per_m() > before);
    app.measure(Part::Today, false);
    assert!(!app.study.scope().is_everything());
    app.show_map(crate::app::maps::Map::Density);
    assert!(!app.rows().is_empty());
}

#[test]
fn a_text_opened_to_be_looked_at_is_kept_once_it_is_made_ones_own() {
    const NAME: fn() -> String = || "mine".to_owned();
    let mut app = with_homes();
    app.keeping.take_place(true);
    while app.next_writing(|| 1e12, NAME).is_some() {}
    let before = app.study.document().clone();
    assert!(app.look_at("broken.geojson", "{").is_err());
    assert!(!app.is_looking() && *app.study.document() == before);

    app.look_at("village.geojson", VILLAGE).expect("it opens");
    assert!(app.is_looking() && *app.study.document() != before);
    assert!(app.said().contains("looking"), "{}", app.said());
    app.undo();
    assert_eq!(app.next_writing(|| 1e12, NAME), None, "a plan looked at leaves nothing");
    let village = app.study.document().clone();

    app.make_own();
    let writing = app.next_writing(|| 1e12, NAME).expect("it is kept");
    assert!(!writing.lines.is_empty());
    assert!(*app.study.document() == village);
    draw(&mut app, &[(-20.0, 0.0), (20.0, 10.0)]);
    assert!(*app.study.document() != village);
}

#[test]
fn what_is_opened_next_is_locked_where_that_was_asked_for() {
    let mut app = App::new().expect("the tables fit together");
    app.look_at_next();
    let blank = app.study.document().clone();
    app.tool = ToolKind::Street.at_rest();
    draw(&mut app, &[(0.0, 0.0), (50.0, 0.0)]);
    assert!(*app.study.document() == blank, "nothing is drawn on the empty sheet");
    open_text(&mut app, "village.geojson", VILLAGE).expect("it opens");
    assert!(open_text(&mut app, "village.geojson", VILLAGE).is_err());
    assert!(app.study.history().is_locked());
}
