use super::*;
use crate::canvas::camera::Insets;
use crate::input::{Button, Event, Key, Modifiers, Pointer, PointerKind, ScreenPoint};
use hobnail_core::plan::{Footprint, Mark, MarkId, PlanPoint};

/// An application with a site of 400 by 300 m in view, driven as a person would.
pub(super) fn app() -> App {
    let mut app = App::new().expect("the tables fit together");
    let corners = [
        (-200_000, -150_000),
        (200_000, -150_000),
        (200_000, 150_000),
        (-200_000, 150_000),
    ];
    let mut document = app.study().document().clone();
    document.site.boundary = corners.map(|(x, y)| PlanPoint::new(x, y)).to_vec();
    app.replace(document).expect("it opens");
    app.resize(1000.0, 800.0, Insets::default());
    app.fit();
    app
}

fn pointer(app: &App, x_m: f64, y_m: f64) -> Pointer {
    Pointer {
        id: 1,
        at: app.camera().screen_from_m((x_m, y_m)),
        kind: PointerKind::Mouse,
        modifiers: Modifiers::default(),
    }
}

pub(super) fn click(app: &mut App, x_m: f64, y_m: f64) {
    let pointer = pointer(app, x_m, y_m);
    app.handle(Event::Move(pointer));
    app.handle(Event::Down(pointer, Button::Primary));
    app.handle(Event::Up(pointer));
}

fn press(app: &mut App, key: Key) {
    app.handle(Event::KeyDown(key, Modifiers::default()));
}

pub(super) fn draw(app: &mut App, points: &[(f64, f64)]) {
    app.choose_tool(ToolKind::Street);
    for (x_m, y_m) in points {
        click(app, *x_m, *y_m);
    }
    press(app, Key::Enter);
}

pub(super) fn value(app: &App, id: &str) -> String {
    let rows = app.exact_rows();
    rows.iter()
        .find(|row| row.id == id)
        .map(|row| row.value.clone())
        .unwrap_or_default()
}

/// A block between four streets, two lots deep, painted with homes.
pub(super) fn with_homes() -> App {
    let mut app = app();
    draw(
        &mut app,
        &[
            (-100.0, -40.0),
            (100.0, -40.0),
            (100.0, 40.0),
            (-100.0, 40.0),
            (-100.0, -40.0),
        ],
    );
    app.choose_tool(ToolKind::Use);
    click(&mut app, 0.0, 0.0);
    app
}

#[test]
fn a_street_drawn_by_clicks_can_be_taken_back_and_done_again() {
    let mut app = app();
    let blank = app.study().document().clone();
    draw(&mut app, &[(-100.0, 0.0), (100.0, 0.0)]);
    assert_eq!(app.study().fabric().lines.streets.len(), 1);
    let drawn = app.study().document().clone();
    app.undo();
    assert_eq!(*app.study().document(), blank);
    app.redo();
    assert_eq!(*app.study().document(), drawn);
}

#[test]
fn a_street_across_a_block_leaves_the_use_on_both_halves() {
    let mut app = with_homes();
    let homes = value(&app, "homes.count");
    assert_ne!(homes, "0 homes");
    let before = app.study().document().clone();
    draw(&mut app, &[(10.0, -40.0), (10.0, 40.0)]);
    assert_eq!(app.study().fabric().face_of_mark.len(), 2, "both halves keep the use");
    assert_ne!(value(&app, "homes.count"), homes, "the street takes land");
    assert!(app.said().contains("was"), "the change is said: {}", app.said());
    app.undo();
    assert_eq!(*app.study().document(), before);
    assert_eq!(value(&app, "homes.count"), homes);
}

#[test]
fn numbers_follow_the_pointer_and_return_when_it_is_given_up() {
    let mut app = with_homes();
    let homes = value(&app, "homes.count");
    app.choose_tool(ToolKind::Street);
    click(&mut app, 10.0, -40.0);
    let across = pointer(&app, 10.0, 40.0);
    app.handle(Event::Move(across));
    assert_ne!(value(&app, "homes.count"), homes);
    press(&mut app, Key::Escape);
    assert_eq!(value(&app, "homes.count"), homes);
}

#[test]
fn a_center_gives_the_walk() {
    let mut app = with_homes();
    assert!(app.study().walk().is_err());
    app.choose_tool(ToolKind::Place);
    click(&mut app, 0.0, -40.0);
    assert!(app.study().walk().is_ok());
    let places: Vec<_> = app
        .study()
        .document()
        .alternatives
        .values()
        .flat_map(|alternative| alternative.marks.values())
        .filter_map(Mark::as_place)
        .collect();
    assert!(matches!(places[..], [place] if matches!(place.footprint, Footprint::Point(_))));
    assert_eq!(value(&app, "walk.center_5min_homes_share"), "100%");
}

#[test]
fn choosing_another_tool_ends_a_street_with_its_set_points_and_gives_up_less() {
    let mut app = app();
    app.choose_tool(ToolKind::Street);
    click(&mut app, 0.0, 0.0);
    assert!(app.study().is_in_gesture());
    app.choose_tool(ToolKind::Select);
    assert!(!app.study().is_in_gesture());
    assert!(app.said().starts_with("Given up"), "{}", app.said());
    assert!(app.said().contains("Select tool"), "{}", app.said());
    app.choose_tool(ToolKind::Street);
    for (x_m, y_m) in [(-100.0, 0.0), (100.0, 0.0), (100.0, 80.0)] {
        click(&mut app, x_m, y_m);
    }
    let away = pointer(&app, -50.0, 120.0);
    app.handle(Event::Move(away));
    app.choose_tool(ToolKind::Use);
    assert!(!app.study().is_in_gesture());
    let drawn = app.study().fabric().lines.streets.clone();
    assert_eq!(drawn.len(), 1);
    assert_eq!(drawn[0].points.len(), 3, "what was set, and not where the pointer was");
    assert!(app.said().starts_with("Draw street"), "{}", app.said());
    app.undo();
    assert!(app.study().fabric().lines.streets.is_empty(), "one step");
    app.choose_tool(ToolKind::Street);
    assert!(
        app.said().starts_with("Street tool"),
        "nothing was begun: {}",
        app.said()
    );
}

#[test]
fn choosing_another_kind_of_area_ends_an_outline_of_three_corners_and_gives_up_less() {
    let mut app = app();
    app.choose_tool(ToolKind::Area);
    let marks = |app: &App| {
        app.study()
            .document()
            .alternatives
            .values()
            .next()
            .map(|held| held.marks.len())
    };
    for (corners, kept) in [(2, 0), (3, 1)] {
        app.choose_draft(true, crate::tools::drafts::SOFT);
        for (x_m, y_m) in [(-60.0, -60.0), (60.0, -60.0), (60.0, 60.0)].into_iter().take(corners) {
            click(&mut app, x_m, y_m);
        }
        let away = pointer(&app, -90.0, 90.0);
        app.handle(Event::Move(away));
        app.choose_draft(true, crate::tools::drafts::SOFT + 1);
        assert!(!app.study().is_in_gesture());
        assert_eq!(marks(&app), Some(kept), "{corners} corners");
        let begins = if kept == 0 { "Given up" } else { "Draw soft area" };
        assert!(app.said().starts_with(begins), "{}", app.said());
    }
    app.undo();
    assert_eq!(marks(&app), Some(0), "one step");
}

#[test]
fn undo_in_the_middle_of_a_street_takes_back_its_last_point() {
    let mut app = app();
    draw(&mut app, &[(-100.0, 0.0), (100.0, 0.0)]);
    app.choose_tool(ToolKind::Street);
    click(&mut app, 0.0, 50.0);
    click(&mut app, 50.0, 50.0);
    app.undo();
    assert!(app.study().is_in_gesture());
    app.undo();
    assert!(!app.study().is_in_gesture());
    assert_eq!(
        app.study().fabric().lines.streets.len(),
        1,
        "the street before is still there"
    );
}

#[test]
fn a_selected_street_is_deleted_and_no_longer_selected() {
    let mut app = app();
    draw(&mut app, &[(-100.0, 0.0), (100.0, 0.0)]);
    assert!(matches!(app.selection(), Some(Selection::Street(MarkId(_)))));
    app.choose_tool(ToolKind::Select);
    app.delete();
    assert_eq!(app.selection(), None);
    assert!(app.study().fabric().lines.streets.is_empty());
}

#[test]
fn events_without_sense_do_no_harm() {
    let mut app = with_homes();
    for kind in ToolKind::ALL {
        app.choose_tool(kind);
        let far = Pointer {
            id: 9,
            at: ScreenPoint::new(1e12, -1e12),
            kind: PointerKind::Pen,
            modifiers: Modifiers::default(),
        };
        app.handle(Event::Up(far));
        app.handle(Event::Down(far, Button::Primary));
        app.handle(Event::Move(far));
        app.handle(Event::Lost(9));
        app.handle(Event::Left);
        for key in [Key::Enter, Key::Backspace, Key::Character('m'), Key::Up, Key::Escape] {
            press(&mut app, key);
        }
    }
    app.choose_tool(ToolKind::Pan);
    assert!(!app.study().is_in_gesture());
}

#[test]
fn a_legend_repeats_the_figure() {
    use crate::app::maps::{Map, Mark};
    use hobnail_core::measures::walk::destinations::Destination;
    let mut app = with_homes();
    app.choose_tool(ToolKind::Place);
    click(&mut app, 0.0, -40.0);
    let share = value(&app, "walk.center_5min_homes_share");
    let near = app.legend().lines[0].clone();
    assert_eq!(near.mark, Mark::Near);
    assert_eq!(near.value, Some(format!("{share} of homes")));

    app.show_map(Map::Five);
    assert!(app.take_changes().map);
    let legend = app.legend();
    assert_eq!(legend.lines.len(), 6, "none to all five");
    let five = value(&app, "walk.all_five_10min_homes_share");
    assert_eq!(legend.lines[0].value, Some(format!("{five} of homes")));

    app.show_map(Map::Walk(Destination::School));
    assert_eq!(app.legend().note.as_deref(), Some("No school is drawn."));
    assert!(app.said().contains("Walk to a school"), "{}", app.said());
}

#[test]
fn a_place_that_is_spoken_of_comes_to_the_middle() {
    use crate::app::places::Place;
    let mut app = app();
    app.zoom(8.0);
    let place = Place::point((150.0, 100.0));
    app.go_to(place.clone());
    let at = app.camera().screen_from_m((150.0, 100.0));
    assert!(
        (at.x_px - 500.0).abs() < 1e-6 && (at.y_px - 400.0).abs() < 1e-6,
        "{at:?}"
    );
    assert_eq!(app.pointed(), Some(&place));
    app.point_out(None);
    assert_eq!(app.pointed(), None);
}

#[test]
fn a_value_for_a_factor_that_is_not_there_is_noted() {
    let mut document = with_homes().study().document().clone();
    let own = hobnail_core::plan::document::FactorOverride {
        low: 1.0,
        typical: 2.0,
        high: 3.0,
        source: "made up".to_owned(),
    };
    let held = |document: Document| crate::app::places::notes(&Study::open(document).unwrap());
    let before = held(document.clone());
    document.settings.overridden_factors.insert("no.such".to_owned(), own);
    let notes = held(document);
    assert_eq!(notes.len(), before.len() + 1);
    assert!(notes[0].words.contains("no.such"), "{:?}", notes[0]);
    assert!(!notes[0].is_caution && notes[0].place.is_none());
}

#[test]
fn land_no_street_reaches_is_noted_with_its_place() {
    let mut app = with_homes();
    assert!(app.study().notes().iter().all(|note| note.at.is_none()));
    app.choose_tool(ToolKind::Select);
    click(&mut app, 60.0, -40.0);
    app.delete();
    let notes = crate::app::places::notes(app.study());
    let placed: Vec<_> = notes.iter().filter(|note| note.place.is_some()).collect();
    assert_eq!(placed.len(), 1, "{notes:?}");
    assert!(placed[0].words.contains("holds no lot"), "{notes:?}");
}

#[test]
fn a_part_is_measured_and_what_is_drawn_stays() {
    use crate::app::scopes::Part;
    let mut app = with_homes();
    let document = app.study().document().clone();
    let homes = value(&app, "homes.count");
    app.measure(Part::Today, false);
    assert_eq!(value(&app, "homes.count"), "0 homes");
    assert!(app.said().contains("as it stands today"), "{}", app.said());
    assert_eq!(*app.study().document(), document);
    app.measure(Part::All, false);
    assert_eq!(value(&app, "homes.count"), homes);
}

/// A street along the site, and one across it that leaves the site in the south: one way in and three dead ends.
fn with_dead_ends() -> App {
    let mut app = app();
    draw(&mut app, &[(-100.0, 0.0), (100.0, 0.0)]);
    draw(&mut app, &[(0.0, -180.0), (0.0, 40.0)]);
    app
}

fn pointed(app: &App) -> Vec<(f64, f64)> {
    app.pointed().map(|place| place.points.clone()).unwrap_or_default()
}

fn point_out(app: &mut App, figure: &str) {
    app.point_out_figure(Some(figure.to_owned()));
}

#[test]
fn a_row_shows_what_it_counted_and_the_open_basis_keeps_it() {
    let mut app = with_dead_ends();
    assert_eq!(value(&app, "streets.ways_in_and_out"), "1");
    point_out(&mut app, "streets.ways_in_and_out");
    assert!(app.take_changes().view);
    assert_eq!(pointed(&app), [(0.0, -150.0)]);
    point_out(&mut app, "streets.dead_ends");
    assert_eq!(pointed(&app).len(), 3);
    point_out(&mut app, "streets.longest_dead_end");
    assert_eq!(pointed(&app).len(), 1);
    app.point_out_figure(None);
    assert_eq!(app.pointed(), None);

    app.toggle_basis("streets.ways_in_and_out");
    point_out(&mut app, "streets.dead_ends");
    assert_eq!(pointed(&app).len(), 3, "the row that is spoken of comes first");
    app.point_out_figure(None);
    assert_eq!(pointed(&app), [(0.0, -150.0)]);
    app.undo();
    app.take_changes();
    assert_eq!(app.pointed(), None, "it follows the plan");
    app.redo();
    app.take_changes();
    assert_eq!(pointed(&app), [(0.0, -150.0)]);
    app.toggle_basis("streets.ways_in_and_out");
    assert_eq!(app.pointed(), None);
}

#[test]
fn rows_have_a_place_where_they_counted_something_in_few_places() {
    use crate::app::figures::Heading;
    let has_place = |app: &App, id: &str| app.rows().iter().any(|row| row.id == id && row.has_place);
    let mut app = with_homes();
    app.toggle_heading(Heading::Streets);
    assert!(has_place(&app, "blocks.perimeter_longest"));
    assert!(!has_place(&app, "blocks.perimeter_median"), "a median is in no place");
    assert!(!has_place(&app, "streets.ways_in_and_out"), "there is none");
    assert!(!has_place(&app, "streets.dead_ends"), "there is none");
    for row in app.rows() {
        let is_few = crate::app::places::few_of_figure(app.study(), &row.id).is_some();
        assert_eq!(is_few, row.has_place, "{}", row.id);
    }
    let mut app = with_dead_ends();
    app.toggle_heading(Heading::Streets);
    assert!(has_place(&app, "streets.ways_in_and_out"));
    assert!(has_place(&app, "streets.dead_ends"));
    for row in app.rows() {
        let is_few = crate::app::places::few_of_figure(app.study(), &row.id).is_some();
        assert_eq!(is_few, row.has_place, "{}", row.id);
    }
}

#[test]
fn the_longest_block_is_brought_into_view_with_its_outline() {
    let mut app = with_homes();
    app.zoom(30.0);
    app.go_to_figure("blocks.perimeter_longest");
    let outline = app.pointed().map(|place| place.lines.concat()).unwrap_or_default();
    assert_eq!(outline.first(), outline.last(), "it goes all the way around");
    assert!(outline.len() > 4, "{outline:?}");
    for at in outline {
        let at = app.camera().screen_from_m(at);
        assert!(
            (0.0..=1000.0).contains(&at.x_px) && (0.0..=800.0).contains(&at.y_px),
            "{at:?}"
        );
    }
    assert_eq!(app.said(), "1 place shown on the drawing.");
}

#[test]
fn the_map_of_a_counting_rule_shows_as_many_signs_as_the_figures_say() {
    use crate::app::maps::{self, Map, Mark};
    use crate::canvas::scene::Node;
    let mut app = with_dead_ends();
    let counted: Vec<Map> = Map::all().into_iter().filter(|map| map.rule().is_some()).collect();
    assert_eq!(counted.len(), 6);
    for map in counted {
        app.show_map(map);
        let legend = app.legend();
        let nodes = maps::nodes(app.study(), map);
        let signs = |kind: Node| nodes.iter().filter(|(_, node)| *node == kind).count();
        for line in &legend.lines {
            let Mark::Node(kind) = line.mark else {
                panic!("{legend:?}")
            };
            let number = line
                .value
                .as_deref()
                .map(|value| value.split(' ').next().unwrap_or_default().to_owned());
            assert_eq!(
                number,
                (kind != Node::LeftOut).then(|| signs(kind).to_string()),
                "{legend:?}"
            );
        }
        assert!(
            signs(Node::Crossing) + signs(Node::Head) + signs(Node::LeftOut) >= 4,
            "{nodes:?}"
        );
        assert_eq!(
            legend.note.is_some(),
            legend.lines.len() == 2,
            "why no heads are counted: {legend:?}"
        );
    }
    app.show_map(Map::Counted(2));
    assert_eq!(app.legend().lines[0].value.as_deref(), Some("1 intersection"));
    assert!(
        app.said()
            .starts_with("Map: Three or more legs, or a dead end. counted: 1"),
        "{}",
        app.said()
    );
}

#[test]
fn the_land_bar_stands_for_its_row_and_is_still_asked_for() {
    use crate::app::land_bar::{FIGURE, land_bar};
    use hobnail_core::study::protocol::Question;
    let mut app = with_homes();
    let bar = land_bar(app.study(), app.drawn());
    assert!(bar.is_shown());
    let whole: f64 = bar.parts.iter().map(|part| part.share).sum();
    assert!((whole - 1.0).abs() < 1e-9, "{whole}");
    assert!(app.rows().iter().all(|row| row.id != FIGURE));
    assert!(app.questions().contains(&Question::Range(FIGURE.to_owned())));
    app.toggle_basis(FIGURE);
    assert_eq!(app.bases_shown().len(), 1);
}

#[test]
fn cautions_stand_apart_from_what_is_left_open() {
    let notes = crate::app::places::notes(with_homes().study());
    assert!(
        !notes.is_empty() && notes.iter().all(|note| !note.is_caution),
        "{notes:?}"
    );
    let notes = crate::app::places::notes(with_dead_ends().study());
    let cautions: Vec<_> = notes.iter().filter(|note| note.is_caution).collect();
    assert_eq!(cautions.len(), 1, "{notes:?}");
    assert!(cautions[0].words.starts_with("2 dead ends"), "{notes:?}");
    assert!(cautions[0].place.is_some());
}

mod by_keyboard;
mod selected;
mod site_first;
mod two_fingers;

#[test]
fn what_was_still_worked_out_for_the_plan_before_is_not_shown_with_the_next() {
    let mut app = app();
    let asked_at = app.study().revision();
    let before = figures::rows(app.study(), &figures::Drawn::default(), &OrderedSet::new());
    let another = app.study().document().clone();
    app.replace(another).expect("the tables fit together");
    app.take_answer(
        asked_at,
        Answer::Range {
            figure: "homes.count".to_owned(),
            shown: vec!["about 40 homes, likely 32 to 47".to_owned()],
            bounds: vec![None],
        },
    );
    let shown = figures::rows(app.study(), app.drawn(), &OrderedSet::new());
    assert_eq!(shown, before);
}

#[test]
fn what_shows_all_shows_all_in_a_smaller_window_and_a_moved_view_stays() {
    let mut app = app();
    app.resize(300.0, 500.0, Insets::default());
    for corner in [(-200.0, -150.0), (200.0, 150.0)] {
        let at = app.camera().screen_from_m(corner);
        assert!(
            (0.0..=300.0).contains(&at.x_px) && (0.0..=500.0).contains(&at.y_px),
            "{at:?}"
        );
    }
    app.zoom(4.0);
    let (scale, middle) = (
        app.camera().px_per_m(),
        app.camera().plan_from_screen(ScreenPoint::new(150.0, 250.0)),
    );
    app.resize(1000.0, 800.0, Insets::default());
    assert_eq!(app.camera().px_per_m().to_bits(), scale.to_bits());
    assert_eq!(app.camera().plan_from_screen(ScreenPoint::new(500.0, 400.0)), middle);
}
