use super::*;
use crate::tools::Selection;
use crate::tools::drawing::{Quantity, sentence};
use crate::tools::fixtures::{DRAWN, Scene, at, street};

fn drawn(scene: &Scene, inputs: &[Input]) -> (State, Vec<Step>) {
    let mut state = State::Resting { hover: None };
    let mut steps = Vec::new();
    for input in inputs {
        let (after, more) = respond(state, *input, &scene.sight());
        state = after;
        steps.extend(more);
    }
    (state, steps)
}

#[test]
fn two_clicks_and_enter_draw_a_tied_street() {
    let scene = Scene::with(&[(4, street(&[(0, 0), (200_000, 0)]))]);
    let (state, steps) = drawn(
        &scene,
        &[
            Input::Down(at(50_020, 900)),
            Input::Up(at(50_020, 900)),
            Input::Move(at(50_000, 70_000)),
            Input::Down(at(50_040, 80_010)),
            Input::Key(Key::Enter),
        ],
    );
    assert_eq!(state, State::Resting { hover: None });
    assert_eq!(steps.iter().filter(|step| **step == Step::Commit).count(), 1);
    assert!(steps.contains(&Step::Select(Some(Selection::Street(MarkId(5))))));
    let after = scene.after(&steps);
    let drawn = after
        .mark(DRAWN, MarkId(5))
        .and_then(Mark::as_street)
        .expect("the new street");
    assert_eq!(drawn.line[0].point, PlanPoint::new(50_020, 0));
    assert_eq!(
        drawn.line[0].tie.map(|tie| (tie.street, tie.along_ppb)),
        Some((MarkId(4), 250_100_000))
    );
    assert_eq!(
        drawn.line[1].point,
        PlanPoint::new(50_000, 80_000),
        "a free point lands on 0.1 m"
    );
}

#[test]
fn the_pointer_is_part_of_the_preview_but_not_of_the_street() {
    let scene = Scene::with(&[]);
    let begun = [
        Input::Down(at(0, 0)),
        Input::Down(at(50_000, 0)),
        Input::Move(at(50_000, 30_000)),
    ];
    let (_, steps) = drawn(&scene, &begun);
    let shown = scene.after(&steps);
    assert_eq!(
        shown
            .mark(DRAWN, MarkId(0))
            .and_then(Mark::as_street)
            .map(|street| street.line.len()),
        Some(3)
    );
    let ended: Vec<_> = begun.into_iter().chain([Input::Key(Key::Enter)]).collect();
    let (_, steps) = drawn(&scene, &ended);
    let kept = scene.after(&steps);
    assert_eq!(
        kept.mark(DRAWN, MarkId(0))
            .and_then(Mark::as_street)
            .map(|street| street.line.len()),
        Some(2)
    );
}

#[test]
fn pressing_the_last_point_again_ends() {
    let scene = Scene::with(&[]);
    let (state, steps) = drawn(
        &scene,
        &[
            Input::Down(at(0, 0)),
            Input::Down(at(50_000, 0)),
            Input::Down(at(50_300, 200)),
        ],
    );
    assert_eq!(state, State::Resting { hover: None });
    assert!(steps.contains(&Step::Commit));
}

#[test]
fn escape_takes_back_point_by_point_and_then_gives_up() {
    let scene = Scene::with(&[]);
    let (state, steps) = drawn(
        &scene,
        &[
            Input::Down(at(0, 0)),
            Input::Down(at(50_000, 0)),
            Input::Key(Key::Escape),
            Input::Key(Key::Backspace),
        ],
    );
    assert_eq!(state, State::Resting { hover: None });
    assert_eq!(steps.last(), Some(&Step::Cancel));
    assert!(!steps.contains(&Step::Commit));
}

#[test]
fn a_single_point_leaves_nothing_behind() {
    let scene = Scene::with(&[]);
    let (_, steps) = drawn(&scene, &[Input::Down(at(0, 0)), Input::Key(Key::Enter)]);
    assert_eq!(steps.last(), Some(&Step::Cancel));
}

#[test]
fn coming_back_to_the_start_closes_a_loop() {
    let scene = Scene::with(&[]);
    let (state, steps) = drawn(
        &scene,
        &[
            Input::Down(at(0, 0)),
            Input::Down(at(60_000, 0)),
            Input::Down(at(60_000, 60_000)),
            Input::Down(at(500, 400)),
        ],
    );
    assert_eq!(state, State::Resting { hover: None });
    let after = scene.after(&steps);
    let ring = after
        .mark(DRAWN, MarkId(0))
        .and_then(Mark::as_street)
        .expect("the loop");
    assert_eq!(
        ring.line.first().map(|vertex| vertex.point),
        ring.line.last().map(|vertex| vertex.point)
    );
    assert_eq!(ring.line.len(), 4);
}

fn with(manner: Manner, streets: &[(u32, Street)]) -> Scene {
    let mut scene = Scene::with(streets);
    scene.choices.drawing.manner = manner;
    scene
}

fn lines(scene: &Scene, steps: &[Step]) -> Vec<(u32, Vec<Vertex>)> {
    let document = scene.after(steps);
    let marks = &document.alternatives[&DRAWN].marks;
    let streets = marks
        .iter()
        .filter_map(|(id, mark)| Some((id.0, mark.as_street()?.line.clone())));
    streets.collect()
}

#[test]
fn a_curve_is_kept_as_radii_and_previewed_as_one() {
    let scene = with(Manner::Curve, &[]);
    let points = [at(0, 0), at(80_000, 0), at(80_000, 80_000)];
    let mut inputs: Vec<Input> = points[..2].iter().map(|at| Input::Down(*at)).collect();
    inputs.push(Input::Move(points[2]));
    let (_, steps) = drawn(&scene, &inputs);
    assert_eq!(
        lines(&scene, &steps)[0].1[1].corner_radius_mm,
        80_000,
        "shown before it is drawn"
    );
    inputs.extend([Input::Down(points[2]), Input::Key(Key::Enter)]);
    let (_, steps) = drawn(&scene, &inputs);
    assert_eq!(steps.last(), Some(&Step::Commit));
    let line = &lines(&scene, &steps)[0].1;
    assert_eq!(
        line.iter().map(|vertex| vertex.corner_radius_mm).collect::<Vec<_>>(),
        [0, 80_000, 0]
    );
}

#[test]
fn a_grid_of_blocks_is_one_gesture_from_a_street() {
    let mut scene = with(Manner::Blocks, &[(1, street(&[(-100_000, 0), (300_000, 0)]))]);
    scene.choices.drawing.block_mm = [100_000, 60_000];
    let inputs = [
        Input::Down(at(10, 300)),
        Input::Move(at(190_000, 130_000)),
        Input::Down(at(190_000, 130_000)),
    ];
    let (state, steps) = drawn(&scene, &inputs[..2]);
    let words = hints(&state).words.expect("the size is said").1;
    assert!(
        words.given.contains(&Quantity::Count(2)) && words.given.contains(&Quantity::Length(60_000.0)),
        "{words:?}"
    );
    assert_eq!(words.message, hobnail_core::message!("tools-grid-by-street"));
    assert!(state.is_busy() && !steps.contains(&Step::Commit));
    let (state, steps) = drawn(&scene, &inputs);
    assert_eq!(state, State::Resting { hover: None });
    assert_eq!(steps.iter().filter(|step| matches!(step, Step::Begin(_))).count(), 1);
    assert_eq!(steps.iter().filter(|step| **step == Step::Commit).count(), 1);
    let held = lines(&scene, &steps);
    assert_eq!(held.len(), 1 + 5, "the edge along the street is the street itself");
    let on_street = held
        .iter()
        .flat_map(|(_, line)| line)
        .filter(|vertex| vertex.tie.is_some_and(|tie| tie.street == MarkId(1)) && vertex.point.y_mm == 0);
    assert_eq!(on_street.count(), 3);
    let given_up = [inputs[0], inputs[1], Input::Key(Key::Escape)];
    assert_eq!(drawn(&scene, &given_up).1.last(), Some(&Step::Cancel));
}

/// Where a grid begins that is pressed here, beside a street of 16 m along y = 0 and another along x = −100 m.
fn grid_begins(first: At) -> (PlanPoint, usize) {
    let there = [
        (1, street(&[(-100_000, 0), (300_000, 0)])),
        (2, street(&[(-100_000, -50_000), (-100_000, 300_000)])),
    ];
    let mut scene = with(Manner::Blocks, &there);
    scene.choices.drawing.block_mm = [100_000, 60_000];
    let hover = drawn(&scene, &[Input::Move(first)]).0;
    let inputs = [Input::Down(first), Input::Down(at(first.point.x_mm + 195_000, 125_000))];
    let begun = hints(&drawn(&scene, &inputs[..1]).0).points;
    let lands = hints(&hover).snap.map(|snap| snap.point);
    assert_eq!(lands, begun.first().copied(), "it is shown where it will begin");
    let (_, steps) = drawn(&scene, &inputs);
    (begun[0], lines(&scene, &steps).len())
}

#[test]
fn a_grid_begins_on_the_street_beside_which_it_is_pressed() {
    let p = PlanPoint::new;
    let begins = |x, y| grid_begins(at(x, y));
    assert_eq!(begins(10, 9_000), (p(10, 0), 2 + 5), "no side beside the street");
    assert_eq!(begins(10, 11_000), (p(0, 11_000), 2 + 6), "farther from it");
    assert_eq!(begins(-99_600, 9_000), (p(-100_000, 0), 2 + 4), "where two meet");
    let mut free = at(10, 9_000);
    free.modifiers.alt = true;
    assert_eq!(grid_begins(free), (p(0, 9_000), 2 + 6), "as it is put");
}

#[test]
fn a_tape_measures_and_leaves_nothing() {
    let scene = with(Manner::Tape, &[]);
    let inputs = [
        Input::Down(at(0, 0)),
        Input::Down(at(60_000, 0)),
        Input::Down(at(60_000, 40_000)),
        Input::Key(Key::Enter),
    ];
    let (state, steps) = drawn(&scene, &inputs);
    assert!(steps == [Step::Select(None)] && !state.is_busy());
    let words = hints(&state).words.expect("it is said").1;
    // Half of 60 by 40 m.
    assert_eq!(
        words,
        sentence!(
            "tools-tape-area",
            length = Quantity::Length(100_000.0),
            area = Quantity::Area(1_200.0)
        )
    );
    let (state, _) = respond(state, Input::Down(at(0, 90_000)), &scene.sight());
    assert_eq!(
        hints(&state).points,
        [PlanPoint::new(0, 90_000)],
        "the next press begins anew"
    );
}

#[test]
fn a_typed_length_is_set_by_enter() {
    let scene = Scene::with(&[]);
    let (state, _) = drawn(&scene, &[Input::Down(at(0, 0))]);
    let mut sight = scene.sight();
    sight.typed.length_mm = Some(36_500.0);
    let (state, _) = respond(state, Input::Move(at(50_000, 0)), &sight);
    let (state, steps) = respond(state, Input::Key(Key::Enter), &sight);
    assert!(state.is_busy() && !steps.contains(&Step::Commit));
    assert_eq!(hints(&state).points, [PlanPoint::new(0, 0), PlanPoint::new(36_500, 0)]);
    let (_, steps) = respond(state, Input::Key(Key::Enter), &scene.sight());
    assert_eq!(steps.last(), Some(&Step::Commit));
}
