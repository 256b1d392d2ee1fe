//! Fingers that move the view.

use super::*;

#[test]
fn two_fingers_move_the_view_and_leave_the_plan() {
    let mut app = app();
    app.choose_tool(ToolKind::Street);
    let before = app.study().document().clone();
    let finger = |id, x_px, y_px| Pointer {
        id,
        at: ScreenPoint::new(x_px, y_px),
        kind: PointerKind::Touch,
        modifiers: Modifiers::default(),
    };
    let camera = *app.camera();
    app.handle(Event::Down(finger(1, 300.0, 300.0), Button::Primary));
    app.handle(Event::Down(finger(2, 500.0, 300.0), Button::Primary));
    app.handle(Event::Move(finger(2, 600.0, 320.0)));
    app.handle(Event::Up(finger(2, 600.0, 320.0)));
    app.handle(Event::Up(finger(1, 300.0, 300.0)));
    assert_ne!(*app.camera(), camera);
    assert_eq!(*app.study().document(), before);
    assert!(!app.study().is_in_gesture());
}

#[test]
fn two_fingers_select_nothing_and_say_nothing_whenever_the_second_comes() {
    let finger = |app: &App, id, x_m, y_m| Pointer {
        id,
        kind: PointerKind::Touch,
        ..pointer(app, x_m, y_m)
    };
    let mut app = with_homes();
    for kind in ToolKind::ALL {
        app.choose_tool(kind);
        app.selection = None;
        // The first finger rests, or has moved a little, on a street.
        for moved_m in [0.0, 3.0, 12.0] {
            let drawn = app.study().document().clone();
            let said = app.said().to_owned();
            let first = finger(&app, 1, 0.0, -40.0);
            app.handle(Event::Down(first, Button::Primary));
            let later = finger(&app, 1, 0.0, -40.0 + moved_m);
            app.handle(Event::Move(later));
            let second = finger(&app, 2, 50.0, 20.0);
            app.handle(Event::Down(second, Button::Primary));
            app.handle(Event::Up(later));
            app.handle(Event::Up(second));
            assert_eq!(*app.study().document(), drawn, "{kind:?}");
            assert!(!app.tool().is_busy(), "{kind:?}");
            assert_eq!(app.selection(), None, "{kind:?}");
            if moved_m < 12.0 {
                assert_eq!(app.said(), said, "{kind:?} after {moved_m} m");
            }
        }
    }
    app.choose_tool(ToolKind::Select);
    let only = finger(&app, 1, 0.0, -40.0);
    app.handle(Event::Down(only, Button::Primary));
    assert_eq!(app.selection(), None, "not before it is lifted");
    app.handle(Event::Up(only));
    assert!(matches!(app.selection(), Some(Selection::Street(_))));
}

#[test]
fn two_fingers_in_the_middle_of_a_street_leave_its_points() {
    let mut app = app();
    app.choose_tool(ToolKind::Street);
    let finger = |id, x_px, y_px| Pointer {
        id,
        at: ScreenPoint::new(x_px, y_px),
        kind: PointerKind::Touch,
        modifiers: Modifiers::default(),
    };
    for x_px in [200.0, 500.0] {
        app.handle(Event::Down(finger(1, x_px, 300.0), Button::Primary));
        app.handle(Event::Up(finger(1, x_px, 300.0)));
    }
    let before = app.study().document().clone();
    let camera = *app.camera();
    app.handle(Event::Down(finger(1, 300.0, 400.0), Button::Primary));
    app.handle(Event::Move(finger(1, 310.0, 400.0)));
    app.handle(Event::Down(finger(2, 500.0, 400.0), Button::Primary));
    app.handle(Event::Move(finger(2, 560.0, 420.0)));
    app.handle(Event::Up(finger(2, 560.0, 420.0)));
    app.handle(Event::Up(finger(1, 310.0, 400.0)));
    assert_ne!(*app.camera(), camera);
    assert_eq!(*app.study().document(), before);
    press(&mut app, Key::Enter);
    assert_eq!(app.study().fabric().lines.streets.len(), 1);
    assert!(!app.study().is_in_gesture());
}
