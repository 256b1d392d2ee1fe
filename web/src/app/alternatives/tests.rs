use super::*;
use crate::app::tests::{app, draw, value, with_homes};

fn names(app: &App) -> Vec<String> {
    app.alternatives().into_iter().map(|shown| shown.name).collect()
}

fn shown(app: &App) -> String {
    let all = app.alternatives();
    let mut shown = all.into_iter().filter(|shown| shown.is_shown);
    let name = shown.next().expect("one is shown").name;
    assert_eq!(shown.next(), None);
    name
}

#[test]
fn a_copy_holds_the_same_and_goes_its_own_way() {
    let mut app = with_homes();
    let homes = value(&app, "homes.count");
    app.copy_alternative();
    assert_eq!(names(&app), ["Alternative 1", "Alternative 1 (copy)"]);
    assert_eq!(shown(&app), "Alternative 1 (copy)");
    app.copy_alternative();
    assert_eq!(shown(&app), "Alternative 1 (copy 2)");
    assert_eq!(value(&app, "homes.count"), homes);
    draw(&mut app, &[(-150.0, 120.0), (150.0, 120.0)]);
    let [first, second] = [0, 2].map(|place| app.alternatives()[place].drawing.clone());
    assert_ne!(first, second);
    app.show_alternative(AlternativeId(0));
    assert_eq!(value(&app, "homes.count"), homes);
}

#[test]
fn a_copy_taken_back_leaves_the_first_in_view() {
    let mut app = with_homes();
    let homes = value(&app, "homes.count");
    app.copy_alternative();
    app.undo();
    assert_eq!(shown(&app), "Alternative 1");
    assert_eq!(value(&app, "homes.count"), homes);
    app.redo();
    assert_eq!(names(&app).len(), 2);
}

#[test]
fn one_moved_earlier_stays_in_view_and_one_deleted_gives_way_to_its_neighbor() {
    let mut app = with_homes();
    app.copy_alternative();
    app.set_field(crate::app::fields::Field::AlternativeName, "Green first");
    app.set_field(crate::app::fields::Field::AlternativeTable, "Table 4");
    app.move_alternative_earlier();
    assert_eq!(names(&app), ["Green first", "Alternative 1"]);
    assert_eq!(shown(&app), "Green first");
    assert_eq!(app.alternatives()[0].about, "Table 4, 1 street");
    app.move_alternative_earlier();
    assert_eq!(names(&app), ["Green first", "Alternative 1"]);
    app.delete_alternative();
    assert_eq!(names(&app), ["Alternative 1"]);
    assert_eq!(shown(&app), "Alternative 1");
    app.delete_alternative();
    assert_eq!(names(&app), ["Alternative 1"]);
    assert_eq!(app.notice(), Some("A plan keeps at least one alternative."));
    app.undo();
    assert_eq!(names(&app), ["Green first", "Alternative 1"]);
}

#[test]
fn an_alternative_without_a_name_is_refused() {
    let mut app = app();
    app.set_field(crate::app::fields::Field::AlternativeName, "  ");
    assert_eq!(names(&app), ["Alternative 1"]);
    assert!(app.notice().is_some());
}

#[test]
fn the_map_of_shared_streets_tells_what_two_have_in_common() {
    let mut app = app();
    draw(&mut app, &[(-100.0, 0.0), (100.0, 0.0)]);
    assert_eq!(
        shared_legend(app.study()).note.as_deref(),
        Some("The plan has a single alternative so far.")
    );
    assert!(shared_streets(app.study()).is_empty());
    app.copy_alternative();
    draw(&mut app, &[(0.0, 60.0), (0.0, 140.0)]);
    let lines: Vec<_> = shared_legend(app.study()).lines;
    let lines: Vec<_> = lines
        .iter()
        .map(|line| (line.words.as_str(), line.value.as_deref()))
        .collect();
    assert_eq!(lines, [("in 2 of 2", Some("656 ft")), ("in 1 of 2", Some("262 ft"))]);
    let classes: Vec<u8> = shared_streets(app.study()).iter().map(|(_, class)| *class).collect();
    assert_eq!(classes, [2, 2, 1]);
}

#[test]
fn many_alternatives_are_shown_in_as_many_widths_as_there_are() {
    assert_eq!([1, 2, 3].map(|shared| class(shared, 3)), [1, 2, 3]);
    assert_eq!([1, 2, 5, 6, 12].map(|shared| class(shared, 12)), [1, 1, 3, 3, 5]);
}

#[test]
fn an_empty_plan_has_a_small_plan_too() {
    let app = App::new().expect("the tables fit together");
    let all = app.alternatives();
    assert_eq!(all.len(), 1);
    assert!(all[0].drawing.paths.is_empty());
    assert!(all[0].drawing.view_mm[2] > 0 && all[0].drawing.view_mm[3] > 0);
}
