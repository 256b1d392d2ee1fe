//! The cut through a street.

use super::*;

/// Homes on both sides of the street that runs along y = 40 m: a building front 8.535 m, half of 56 ft, and 10 ft from
/// its centerline.
pub(super) fn with_homes_on_both_sides() -> App {
    let mut app = with_homes();
    draw(
        &mut app,
        &[(-100.0, 40.0), (-100.0, 120.0), (100.0, 120.0), (100.0, 40.0)],
    );
    app.choose_tool(ToolKind::Use);
    click(&mut app, 0.0, 80.0);
    app.choose_tool(ToolKind::Select);
    click(&mut app, 3.0, 40.0);
    assert!(
        matches!(app.selection(), Some(Selection::Street(_))),
        "{:?}",
        app.selection()
    );
    app
}

#[test]
fn a_cut_finds_the_buildings_on_both_sides_and_their_ratio() {
    let mut app = with_homes_on_both_sides();
    change(&mut app, "Show the cut", Change::Pick(1));
    let at = app.editor.cut.expect("the cut is open");
    let cut = cut::through(app.study(), at.street, at.along_thousandths).expect("it runs");
    assert_eq!(cut.half_mm, 8535);
    for side in &cut.sides {
        let standing = side.as_ref().expect("both sides are built on");
        // Lots are laid on the grid of millimeters along a right-of-way that is rounded to it.
        assert!((standing.front_mm - (8535 + 3048)).abs() <= 2, "{standing:?}");
        assert_eq!(standing.height_mm(), 2 * 3048, "two stories of 10 ft");
    }
    let width_mm = cut.front_to_front_mm().expect("both are built on");
    assert!((width_mm - 2 * 11_583).abs() <= 4);
    // 23.166 m to 6.096 m is 3.80 to 1.
    assert_eq!(cut_drawing::ratio(&cut).as_deref(), Some("1 : 3.8"));
    assert_eq!(line(&app, "Height to width").value, "1 : 3.8");
    assert!(
        line(&app, "Left")
            .value
            .contains("2 stories, 20 ft high, 10 ft from the right-of-way")
    );
    let shown = app.editors().cut.drawing.expect("it is drawn");
    assert!(shown.labels.iter().any(|label| label.text == "right-of-way 56 ft"));
    assert!(shown.paths.iter().any(|(ink, _)| *ink == "building"));
}

#[test]
fn the_cut_moves_along_the_street_and_is_shown_on_the_drawing() {
    let mut app = with_homes_on_both_sides();
    change(&mut app, "Show the cut", Change::Pick(1));
    change(&mut app, "Where it runs", text("250"));
    // The street is a loop of 560 m that begins at (−100, −40): 140 m along it has gone round by 40 m to the north.
    let place = app.cut_line().expect("it is shown");
    let [left, right] = place.lines[0][..] else {
        panic!("one line, {place:?}");
    };
    assert!((left.1 - 0.0).abs() < 0.01 || (left.0 - 40.0).abs() < 0.01, "{left:?}");
    let middle = ((left.0 + right.0) / 2.0, (left.1 + right.1) / 2.0);
    assert!(
        (middle.0 - 40.0).abs() < 0.01 && (middle.1 + 40.0).abs() < 0.01,
        "{middle:?}"
    );
    assert_eq!(line(&app, "Where it runs").more, "459 ft of 1,837 ft");
    change(&mut app, "Close the cut", Change::Pick(1));
    assert_eq!(app.cut_line(), None);
}

#[test]
fn the_cut_goes_with_another_tool_and_the_keyboard_is_told_where_to_go() {
    let mut app = with_homes_on_both_sides();
    change(&mut app, "Show the cut", Change::Pick(1));
    app.take_focus();
    change(&mut app, "Close the cut", Change::Pick(1));
    assert_eq!(app.take_focus(), Some(Key::panel(edits::SHOW_CUT)));
    for kind in ToolKind::ALL.into_iter().filter(|kind| *kind != ToolKind::Select) {
        change(&mut app, "Show the cut", Change::Pick(1));
        assert!(app.cut_street().is_some());
        app.choose_tool(kind);
        assert_eq!(app.cut_street(), None, "{kind:?}");
        app.choose_tool(ToolKind::Select);
        click(&mut app, 3.0, 40.0);
    }
}

#[test]
fn an_open_side_has_no_ratio() {
    let mut app = with_homes();
    app.choose_tool(ToolKind::Select);
    click(&mut app, 3.0, -40.0);
    change(&mut app, "Show the cut", Change::Pick(1));
    assert_eq!(line(&app, "Height to width").value, "none: a side is open");
    app.delete();
    assert!(app.editors().cut.name.is_empty(), "a street that has gone has no cut");
}
