use hobnail_core::order::OrderedSet;

use super::*;
use crate::app::figures::{self, Heading};
use crate::app::{App, places};
use hobnail_core::exchange::plan_file;
use hobnail_core::figures::leaf::Cell;
use hobnail_core::figures::range::Range;
use hobnail_core::figures::unit::System;
use hobnail_core::measures::details::waiting;
use hobnail_core::measures::walk::destinations::Destination;
use hobnail_core::plan::{Edit, Footprint, PlaceKind, PlanPoint};
use hobnail_core::study::protocol::Answer;

const VILLAGE: &str = include_str!("../../../../sample-sketches/compact-village.geojson");

fn opened(sketch: &str) -> App {
    let opened = plan_file::read(sketch.as_bytes()).expect("the sketch opens");
    App::open(opened.document).expect("the tables fit together")
}

/// The village at rest: its details have come.
fn rested() -> App {
    let mut app = opened(VILLAGE);
    let revision = app.study().revision();
    let details = app.study.work_details().expect("they fit the figures").clone();
    app.take_answer(revision, Answer::Details(Box::new(details)));
    app
}

/// What the column shows of a figure's rows, once its heading is open: the title of each row, and its number.
fn shown(app: &App, figure: &str) -> Vec<(String, String)> {
    let rows = figures::rows(app.study(), app.drawn(), &OrderedSet::from([Heading::Walking]));
    let row = rows.into_iter().find(|row| row.id == figure).expect("the row");
    if row.is_table {
        row.cells
    } else {
        vec![(String::new(), row.value)]
    }
}

fn line(legend: &Legend, mark: Mark) -> Line {
    let found = legend.lines.iter().find(|line| line.mark == mark);
    found.unwrap_or_else(|| panic!("{mark:?} in {legend:?}")).clone()
}

#[test]
fn the_map_of_routes_repeats_its_figures_and_draws_every_segment() {
    let mut app = rested();
    app.show_map(Map::Routes);
    let legend = app.legend();
    let [(title, most)] = &shown(&app, BUSIEST)[..] else {
        panic!("one segment is the busiest")
    };
    let busiest = line(&legend, Mark::Figure("busiest"));
    assert_eq!(busiest.words, format!("busiest: {title}"));
    assert_eq!(busiest.value, Some(format!("{most} walks")));
    let share = line(&legend, Mark::Figure("busiest-tenth"));
    assert_eq!(share.value, Some(shown(&app, BUSIEST_TENTH)[0].1.clone()));

    let routes = routes(app.study());
    let details = app.study().details().expect("they have come");
    assert_eq!(routes.len(), details.walks_by_link.len());
    assert!(
        routes.iter().all(|(line, _)| line.len() >= 2),
        "every segment has a line"
    );
    let classes: OrderedSet<u8> = routes.iter().map(|(_, class)| *class).collect();
    let listed: OrderedSet<u8> = legend
        .lines
        .iter()
        .filter_map(|line| match line.mark {
            Mark::Walks(class) => Some(class),
            _ => None,
        })
        .collect();
    assert!(
        classes.iter().all(|class| listed.contains(class)),
        "{classes:?} of {listed:?}"
    );
    assert!(
        classes.iter().filter(|class| **class > 0).count() >= 4,
        "the village has {classes:?}"
    );
    assert!(classes.contains(&MOST), "somewhere is the busiest");
}

#[test]
fn the_map_of_the_least_direct_walks_lists_each_front_with_its_figures() {
    let mut app = rested();
    app.show_map(Map::Indirect);
    let legend = app.legend();
    let (worst, homes) = (shown(&app, WORST), shown(&app, WORST_HOMES));
    assert_eq!(worst.len(), 10);
    assert_eq!(legend.lines.len(), worst.len());
    for (rank, ((title, directness), (_, homes))) in (1..).zip(worst.iter().zip(&homes)) {
        let line = line(&legend, Mark::Front(rank));
        assert_eq!(line.words, *title);
        assert_eq!(
            line.value,
            Some(format!("{directness} times the straight line, {homes}"))
        );
    }
    assert_eq!(fronts(app.study()).len(), worst.len());
    assert!(legend.note.is_some_and(|note| note.contains("straight distance")));
}

#[test]
fn without_a_center_the_note_says_why_nothing_is_drawn() {
    let mut app = App::new().expect("the tables fit together");
    app.study.work_details().expect("they fit the figures");
    app.show_map(Map::Indirect);
    let legend = app.legend();
    assert!(legend.lines.is_empty() && fronts(app.study()).is_empty());
    assert_eq!(legend.note.as_deref(), Some("No neighborhood center is drawn."));
    app.show_map(Map::Routes);
    let legend = app.legend();
    assert!(legend.lines.is_empty() && routes(app.study()).is_empty(), "{legend:?}");
    assert_eq!(legend.note.as_deref(), Some("Nobody walks to a daily need."));
}

#[test]
fn the_best_point_is_shown_where_more_homes_reach_it_than_the_drawn_center() {
    let mut app = rested();
    assert_eq!(app.map(), Map::Walk(Destination::Center));
    // The village's center is a whole square, which no single point is as good as.
    let homes_of = |app: &App, figure: &str| {
        let cell = app.study().evaluation().value(figure);
        match cell {
            Some(Cell::Number(homes)) => homes,
            other => panic!("{figure}: {other:?}"),
        }
    };
    assert!(homes_of(&app, BEST) < homes_of(&app, DRAWN_CENTER));
    assert_eq!(best(app.study()), None);
    assert_eq!(line(&app.legend(), Mark::Figure("best")).words, "drawn center");
    app.show_map(Map::Walk(Destination::Shops));
    let legend = app.legend();
    assert!(
        legend
            .lines
            .iter()
            .all(|line| matches!(line.mark, Mark::Near | Mark::Far))
    );

    // As a point at the end of a street it is worse.
    app.show_map(Map::Walk(Destination::Center));
    let (document, alternative) = (app.study().document(), app.study().alternative());
    let marks = document
        .alternatives
        .get(&alternative)
        .expect("it is drawn")
        .marks
        .iter();
    let centers = marks.filter_map(|(id, mark)| Some((*id, mark.as_place()?.clone())));
    let edits = centers
        .filter(|(_, place)| place.kind == PlaceKind::Center)
        .map(|(id, mut place)| {
            place.footprint = Footprint::Point(PlanPoint::new(430_000, 250_000));
            Edit::mark(document, alternative, id, Some(hobnail_core::plan::Mark::Place(place)))
        });
    let edits: Vec<Edit> = edits.collect();
    assert!(!edits.is_empty());
    app.study.apply("move the center", edits).expect("it is there");
    let revision = app.study().revision();
    let details = app.study.work_details().expect("they fit the figures").clone();
    app.take_answer(revision, Answer::Details(Box::new(details)));
    let [(_, homes)] = &shown(&app, BEST)[..] else {
        panic!("one number")
    };
    assert!(homes_of(&app, BEST) > homes_of(&app, DRAWN_CENTER));
    let best_line = line(&app.legend(), Mark::Best);
    let value = best_line.value.expect("homes");
    assert!(
        value.starts_with(&format!("{homes} within 5 minutes; drawn center: ")),
        "{value}"
    );
    let details = app.study().details().expect("they have come");
    assert_eq!(best(app.study()), details.best_center.map(|at| at.to_m()));
}

#[test]
fn nothing_of_the_old_drawing_is_kept_while_details_are_to_come() {
    let mut app = rested();
    for map in [Map::Routes, Map::Indirect, Map::Walk(Destination::Center)] {
        app.show_map(map);
        assert!(map.shows_details());
        assert!(
            !app.legend()
                .note
                .is_some_and(|note| note.to_ascii_lowercase().contains(waiting()))
        );
    }
    app.study.begin("draw").expect("no gesture is open");
    app.study.change(Vec::new()).expect("nothing to apply");
    for map in [Map::Routes, Map::Indirect, Map::Walk(Destination::Center)] {
        app.show_map(map);
        let legend = app.legend();
        let note = legend.note.unwrap_or_default();
        assert!(note.to_ascii_lowercase().contains(waiting()), "{map:?}: {note}");
        let is_of_details = |line: &Line| !matches!(line.mark, Mark::Near | Mark::Far);
        assert!(!legend.lines.iter().any(is_of_details), "{:?}", legend.lines);
    }
    let study = app.study();
    assert!(routes(study).is_empty() && fronts(study).is_empty() && best(study).is_none());
    app.study.cancel().expect("a gesture is open");
}

#[test]
fn details_that_come_bring_the_map_and_the_places_of_rows() {
    let mut app = opened(VILLAGE);
    app.show_map(Map::Routes);
    app.toggle_basis(BUSIEST);
    app.take_changes();
    assert_eq!(app.pointed(), None, "nobody knows yet");
    let revision = app.study().revision();
    let details = opened(VILLAGE).study.work_details().expect("they fit").clone();
    app.take_answer(revision, Answer::Details(Box::new(details.clone())));
    let changes = app.take_changes();
    assert!(changes.map && changes.figures, "{changes:?}");
    assert_eq!(app.pointed().map(|place| place.lines.len()), Some(1));

    app.toggle_heading(Heading::Walking);
    for figure in [BUSIEST, WORST, WORST_HOMES, BEST, "walk.best_center_5min_homes_share"] {
        let rows = app.rows();
        let row = rows.iter().find(|row| row.id == figure).expect("the row");
        assert!(row.has_place, "{figure}");
    }
    for row in app.rows() {
        let is_few = places::few_of_figure(app.study(), &row.id).is_some();
        assert_eq!(is_few, row.has_place, "{}", row.id);
    }
    let worst = places::of_figure(app.study(), WORST).expect("the village has some");
    assert_eq!(worst.count(), details.indirect_fronts.len());
}

/// Legends ask for no range of these: were they uncertain, the column would say another number.
#[test]
fn the_figures_of_these_maps_have_no_range() {
    let mut app = rested();
    for figure in [BUSIEST, BUSIEST_TENTH, WORST, WORST_HOMES, BEST, DRAWN_CENTER] {
        let evaluation = app.study.evaluation_mut();
        let index = evaluation.graph().index(figure).expect("the figure");
        let exact = evaluation.figure_value(index, System::Customary).content.shown();
        for cell in 0..evaluation.cell_count(index) {
            assert_eq!(evaluation.range(index, cell), Range::Certain, "{figure}");
        }
        let ranged = evaluation.figure_value_with_range(index, System::Customary);
        assert_eq!(ranged.content.shown(), exact, "{figure}");
    }
}

#[test]
fn limits_are_round_and_worked_from_the_most() {
    assert_eq!(limits(912.0), [50.0, 100.0, 200.0, 500.0]);
    assert_eq!(limits(1000.0), [50.0, 100.0, 200.0, 500.0]);
    assert_eq!(limits(1000.5), [100.0, 200.0, 500.0, 1000.0]);
    assert_eq!(limits(12.0), [1.0, 2.0, 5.0, 10.0]);
    assert_eq!(limits(3.0), [1.0, 2.0]);
    assert_eq!(limits(0.4), [1.0]);
    assert_eq!(limits(f64::NAN), [1.0]);
    for most in [0.4, 1.0, 3.0, 12.0, 913.0, 25_400.0] {
        let limits = limits(most);
        assert!(limits.len() < usize::from(MOST), "as many classes as widths at most");
        let highest = class(most, &limits);
        assert!((1..=MOST).contains(&highest));
        if let Some(below) = usize::from(highest).checked_sub(2) {
            assert!(limits[below] < most && most <= limits[below] * 2.5, "{most}");
        }
    }
}

#[test]
fn classes_and_their_words_meet_without_gaps() {
    let limits = limits(1840.0);
    assert_eq!(limits, [100.0, 200.0, 500.0, 1000.0]);
    assert_eq!(
        [0.0, 0.2, 100.0, 100.2, 500.0, 1840.0].map(|walks| class(walks, &limits)),
        [0, 1, 1, 2, 3, 5]
    );
    let words: Vec<String> = (0..=5).map(|of| class_words(of, &limits, of == 5)).collect();
    assert_eq!(
        words,
        [
            "no walks",
            "up to 100 walks",
            "over 100 to 200 walks",
            "over 200 to 500 walks",
            "over 500 to 1,000 walks",
            "over 1,000 walks"
        ]
    );
    assert_eq!(class_words(1, &[1.0], true), "up to 1 walk");
}
