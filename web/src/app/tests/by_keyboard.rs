//! The keyboard alone, and what is heard of it.

use super::*;

#[test]
fn the_whole_job_goes_by_keyboard() {
    let mut app = app();
    app.choose_tool(ToolKind::Street);
    press(&mut app, Key::Left);
    press(&mut app, Key::Enter);
    for _ in 0..6 {
        press(&mut app, Key::Right);
    }
    press(&mut app, Key::Enter);
    press(&mut app, Key::Enter);
    assert_eq!(app.study().fabric().lines.streets.len(), 1);
    assert!(!app.study().is_in_gesture());
}

#[test]
fn what_keys_draw_is_said() {
    let mut app = app();
    app.choose_tool(ToolKind::Street);
    press(&mut app, Key::Left);
    let first = app.said().to_owned();
    assert!(first.contains(" ft west"), "where it is: {first}");
    press(&mut app, Key::Left);
    assert_ne!(app.said(), first, "it follows the keys");
    press(&mut app, Key::Enter);
    assert_eq!(app.said(), "Point 1 set. Click the next point. Escape gives up.");
    for _ in 0..6 {
        press(&mut app, Key::Right);
    }
    let run = app.said().to_owned();
    assert!(run.contains(" ft, bearing 90°"), "{run}");
    press(&mut app, Key::Enter);
    assert!(app.said().starts_with("Point 2 set. "), "{}", app.said());
    press(&mut app, Key::Enter);
    assert!(app.said().starts_with("Draw street. "), "{}", app.said());
    press(&mut app, Key::Down);
    press(&mut app, Key::Up);
    let snapped = app.said().to_owned();
    assert!(snapped.contains("street end"), "why a point lands there: {snapped}");
}
