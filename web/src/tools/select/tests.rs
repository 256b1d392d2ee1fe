mod many;

use super::*;
use crate::tools::fixtures::{DRAWN, Scene, at, street, tied, use_mark};
use hobnail_core::plan::street::Status;
use hobnail_core::plan::{Certainty, Place, PlaceKind};

fn run(scene: &mut Scene, inputs: &[Input]) -> (State, Vec<Step>) {
    let mut state = State::Resting;
    let mut steps = Vec::new();
    for input in inputs {
        let (after, more) = respond(state, *input, &scene.sight());
        state = after;
        for step in &more {
            if let Step::Select(selection) = step {
                scene.selection = *selection;
            }
        }
        steps.extend(more);
    }
    (state, steps)
}

fn street_of(document: &hobnail_core::plan::Document, id: u32) -> Street {
    document
        .mark(DRAWN, MarkId(id))
        .and_then(Mark::as_street)
        .expect("the street")
        .clone()
}

#[test]
fn a_click_selects_and_changes_nothing() {
    let mut scene = Scene::with(&[(1, street(&[(0, 0), (100_000, 0)]))]);
    let (_, steps) = run(&mut scene, &[Input::Down(at(40_000, 500)), Input::Up(at(40_100, 500))]);
    assert_eq!(steps, vec![Step::Select(Some(Selection::Street(MarkId(1))))]);
}

#[test]
fn dragging_a_cross_street_slides_its_held_ends() {
    let mut cross = street(&[(50_000, 0), (50_000, 80_000)]);
    tied(&mut cross, 0, 1, 0, 500_000_000);
    tied(&mut cross, 1, 2, 0, 500_000_000);
    let mut scene = Scene::with(&[
        (1, street(&[(0, 0), (100_000, 0)])),
        (2, street(&[(0, 80_000), (100_000, 80_000)])),
        (3, cross),
    ]);
    let (_, steps) = run(
        &mut scene,
        &[
            Input::Down(at(50_000, 40_000)),
            Input::Move(at(60_000, 41_000)),
            Input::Up(at(70_000, 43_000)),
        ],
    );
    let moved = street_of(&scene.after(&steps), 3);
    assert_eq!(moved.line[0].point, PlanPoint::new(70_000, 0));
    assert_eq!(moved.line[0].tie.map(|tie| tie.along_ppb), Some(700_000_000));
    assert_eq!(moved.line[1].point, PlanPoint::new(70_000, 80_000));
    assert_eq!(steps.iter().filter(|step| matches!(step, Step::Begin(_))).count(), 1);
}

#[test]
fn ends_in_one_place_move_together_and_alone_with_alt() {
    let scene = || {
        let mut scene = Scene::with(&[
            (1, street(&[(0, 0), (100_000, 0)])),
            (2, street(&[(100_000, 0), (100_000, 90_000)])),
        ]);
        scene.selection = Some(Selection::Street(MarkId(1)));
        scene
    };
    let drag = [
        Input::Down(at(100_000, 0)),
        Input::Move(at(110_000, 10_000)),
        Input::Up(at(120_000, 20_000)),
    ];
    let mut together = scene();
    let (_, steps) = run(&mut together, &drag);
    let after = together.after(&steps);
    assert_eq!(street_of(&after, 1).line[1].point, PlanPoint::new(120_000, 20_000));
    assert_eq!(street_of(&after, 2).line[0].point, PlanPoint::new(120_000, 20_000));
    let mut alone = scene();
    let mut with_alt = at(100_000, 0);
    with_alt.modifiers.alt = true;
    let (_, steps) = run(&mut alone, &[Input::Down(with_alt), drag[1], drag[2]]);
    assert_eq!(
        street_of(&alone.after(&steps), 2).line[0].point,
        PlanPoint::new(100_000, 0)
    );
}

#[test]
fn both_ends_of_a_loop_move_as_one() {
    let mut scene = Scene::with(&[(1, street(&[(0, 0), (60_000, 0), (60_000, 60_000), (0, 0)]))]);
    scene.selection = Some(Selection::Street(MarkId(1)));
    let (_, steps) = run(
        &mut scene,
        &[
            Input::Down(at(0, 0)),
            Input::Move(at(-5_000, -5_000)),
            Input::Up(at(-9_000, -9_000)),
        ],
    );
    let moved = street_of(&scene.after(&steps), 1);
    assert_eq!(moved.line[0].point, PlanPoint::new(-9_000, -9_000));
    assert_eq!(moved.line[3].point, PlanPoint::new(-9_000, -9_000));
}

#[test]
fn a_street_that_stands_today_moves_once_it_is_selected() {
    let mut existing = street(&[(0, 0), (100_000, 0)]);
    existing.status = Status::Existing;
    let mut scene = Scene::with(&[(1, existing)]);
    let slip = [
        Input::Down(at(30_000, 0)),
        Input::Move(at(30_000, 20_000)),
        Input::Up(at(30_000, 20_000)),
    ];
    let (_, steps) = run(&mut scene, &slip);
    let changes = |steps: &[Step]| steps.iter().any(|step| matches!(step, Step::Change(_)));
    assert!(!changes(&steps), "{steps:?}");
    assert_eq!(scene.selection, Some(Selection::Street(MarkId(1))), "it is selected");
    let (_, steps) = run(&mut scene, &slip);
    assert!(changes(&steps), "now it is meant");
    assert_eq!(
        street_of(&scene.after(&steps), 1).line[0].point,
        PlanPoint::new(0, 20_000)
    );
}

#[test]
fn a_corner_is_pulled_out_of_the_middle_of_a_run() {
    let mut scene = Scene::with(&[(1, street(&[(0, 0), (100_000, 0)]))]);
    scene.selection = Some(Selection::Street(MarkId(1)));
    let (_, steps) = run(
        &mut scene,
        &[
            Input::Down(at(50_000, 0)),
            Input::Move(at(50_000, 9_000)),
            Input::Up(at(50_000, 20_000)),
        ],
    );
    let moved = street_of(&scene.after(&steps), 1);
    assert_eq!(moved.line.len(), 3);
    assert_eq!(moved.line[1].point, PlanPoint::new(50_000, 20_000));
    assert_eq!(scene.selection, Some(Selection::Vertex(MarkId(1), 1)));
}

#[test]
fn delete_takes_the_corner_while_a_street_is_left() {
    let mut scene = Scene::with(&[(1, street(&[(0, 0), (50_000, 9_000), (100_000, 0)]))]);
    scene.selection = Some(Selection::Vertex(MarkId(1), 1));
    let (_, steps) = run(&mut scene, &[Input::Key(Key::Delete)]);
    assert_eq!(street_of(&scene.after(&steps), 1).line.len(), 2);
    let mut scene = Scene::with(&[(1, street(&[(0, 0), (100_000, 0)]))]);
    scene.selection = Some(Selection::Vertex(MarkId(1), 1));
    let (_, steps) = run(&mut scene, &[Input::Key(Key::Delete)]);
    assert_eq!(scene.after(&steps).mark(DRAWN, MarkId(1)), None);
    assert_eq!(scene.selection, None);
}

#[test]
fn escape_puts_a_moved_thing_back() {
    let mut scene = Scene::with(&[(1, street(&[(0, 0), (100_000, 0)]))]);
    let (state, steps) = run(
        &mut scene,
        &[
            Input::Down(at(30_000, 0)),
            Input::Move(at(30_000, 20_000)),
            Input::Key(Key::Escape),
        ],
    );
    assert_eq!(state, State::Resting);
    assert_eq!(steps.last(), Some(&Step::Cancel));
}

#[test]
fn a_place_is_carried_by_keyboard() {
    let mut scene = Scene::with(&[]);
    scene.put(
        7,
        Mark::Place(Place {
            name: String::new(),
            kind: PlaceKind::Center,
            footprint: Footprint::Point(PlanPoint::new(10_000, 10_000)),
            minimum_size_m2: 0,
            certainty: Certainty::Committed,
            phase: None,
        }),
    );
    scene.put(8, Mark::Use(use_mark(0, 0, 0)));
    scene.selection = Some(Selection::Place(MarkId(7)));
    let (_, steps) = run(
        &mut scene,
        &[
            Input::Key(Key::Character('m')),
            Input::Move(at(33_333, 44_444)),
            Input::Key(Key::Enter),
        ],
    );
    let after = scene.after(&steps);
    let place = after
        .mark(DRAWN, MarkId(7))
        .and_then(Mark::as_place)
        .expect("the place");
    assert_eq!(place.footprint, Footprint::Point(PlanPoint::new(33_300, 44_400)));
    assert_eq!(steps.last(), Some(&Step::Commit));
}
