use super::*;
use crate::tools::drafts;
use crate::tools::fixtures::{DRAWN, Scene, at, street};

fn run_from(state: State, scene: &Scene, draft: Option<&Mark>, inputs: &[Input]) -> (State, Vec<Step>) {
    let (mut state, mut steps) = (state, Vec::new());
    for input in inputs {
        let (after, more) = respond(state, *input, &scene.sight(), draft);
        state = after;
        steps.extend(more);
    }
    (state, steps)
}

fn run(scene: &Scene, draft: Option<&Mark>, inputs: &[Input]) -> (State, Vec<Step>) {
    run_from(State::resting(), scene, draft, inputs)
}

fn clicks(points: &[(i32, i32)]) -> Vec<Input> {
    let click = |(x, y): &(i32, i32)| [Input::Move(at(*x, *y)), Input::Down(at(*x, *y)), Input::Up(at(*x, *y))];
    points.iter().flat_map(click).collect()
}

fn points(of: &[(i32, i32)]) -> Vec<PlanPoint> {
    of.iter().map(|(x, y)| PlanPoint::new(*x, *y)).collect()
}

fn outline(scene: &Scene, steps: &[Step]) -> Vec<PlanPoint> {
    let after = scene.after(steps);
    let mark = after.mark(DRAWN, scene.document.next_mark_id());
    mark.and_then(shape::of).map(shape::into_points).unwrap_or_default()
}

fn soft(scene: &Scene) -> Option<Mark> {
    drafts::area(drafts::SOFT, &scene.document)
}

const TRIANGLE: [(i32, i32); 3] = [(0, 0), (90_000, 0), (90_000, 70_000)];

#[test]
fn an_outline_closes_on_its_first_corner_or_by_enter() {
    let scene = Scene::with(&[]);
    let draft = drafts::area(drafts::PARCEL, &scene.document);
    let mut back: Vec<(i32, i32)> = TRIANGLE.to_vec();
    back.push((500, 300));
    let (state, steps) = run(&scene, draft.as_ref(), &clicks(&back));
    assert!(!state.is_busy());
    assert_eq!(outline(&scene, &steps), points(&TRIANGLE));
    assert_eq!(steps.last(), Some(&Step::Commit));
    let mut inputs = clicks(&TRIANGLE);
    inputs.extend([Input::Move(at(-40_000, 90_000)), Input::Key(Key::Enter)]);
    let (_, steps) = run(&scene, draft.as_ref(), &inputs);
    assert_eq!(outline(&scene, &steps), points(&TRIANGLE), "the pointer is no corner");
}

#[test]
fn the_pointer_is_the_next_corner_while_it_moves() {
    let scene = Scene::with(&[]);
    let draft = drafts::area(drafts::PARCEL, &scene.document);
    let mut inputs = clicks(&TRIANGLE[..2]);
    inputs.push(Input::Move(at(40_000, 50_000)));
    let (state, steps) = run(&scene, draft.as_ref(), &inputs);
    assert!(state.is_busy());
    assert_eq!(
        outline(&scene, &steps),
        points(&[(0, 0), (90_000, 0), (40_000, 50_000)])
    );
    assert_eq!(hints(&state).land.len(), 3);
}

#[test]
fn backspace_takes_corners_back_and_at_last_gives_up() {
    let scene = Scene::with(&[]);
    let draft = soft(&scene);
    let mut inputs = clicks(&TRIANGLE[..2]);
    inputs.push(Input::Key(Key::Backspace));
    let (state, _) = run(&scene, draft.as_ref(), &inputs);
    assert!(state.is_busy());
    inputs.push(Input::Key(Key::Backspace));
    let (state, steps) = run(&scene, draft.as_ref(), &inputs);
    assert!(!state.is_busy());
    assert_eq!(steps.last(), Some(&Step::Cancel));
}

#[test]
fn too_few_corners_draw_nothing() {
    let scene = Scene::with(&[]);
    let mut inputs = clicks(&TRIANGLE[..2]);
    inputs.push(Input::Key(Key::Enter));
    let (_, steps) = run(&scene, soft(&scene).as_ref(), &inputs);
    assert_eq!(steps.last(), Some(&Step::Cancel));
}

#[test]
fn a_soft_area_is_pulled_open_and_depends_on_the_end_alone() {
    let scene = Scene::with(&[]);
    let draft = soft(&scene);
    let pulled = |over: (i32, i32)| {
        let inputs = [
            Input::Down(at(0, 0)),
            Input::Move(at(over.0, over.1)),
            Input::Move(at(100_000, 60_000)),
            Input::Up(at(100_000, 60_000)),
        ];
        outline(&scene, &run(&scene, draft.as_ref(), &inputs).1)
    };
    let bubble = pulled((30_000, -80_000));
    assert_eq!(bubble, pulled((200_000, 10_000)));
    assert!(bubble.len() > 20);
    let inside = |point: &PlanPoint| (0..=100_000).contains(&point.x_mm) && (0..=60_000).contains(&point.y_mm);
    assert!(bubble.iter().all(inside), "it fills the box between the two");
    let area_m2 = shape::area_m2(&bubble);
    assert!(
        (4_712.0..6_000.0).contains(&area_m2),
        "between an ellipse and the box: {area_m2}"
    );
}

#[test]
fn only_soft_areas_are_pulled_open() {
    let scene = Scene::with(&[]);
    let draft = drafts::area(drafts::PARCEL, &scene.document);
    let inputs = [
        Input::Down(at(0, 0)),
        Input::Move(at(90_000, 0)),
        Input::Up(at(90_000, 0)),
        Input::Move(at(90_000, 70_000)),
    ];
    let (_, steps) = run(&scene, draft.as_ref(), &inputs);
    assert_eq!(outline(&scene, &steps), points(&TRIANGLE), "a drag lays an edge");
}

#[test]
fn the_site_is_replaced_and_its_corners_can_be_dragged() {
    let mut scene = Scene::with(&[]);
    let mut inputs = clicks(&TRIANGLE);
    inputs.push(Input::Key(Key::Enter));
    let (_, steps) = run(&scene, None, &inputs);
    scene.document = scene.after(&steps);
    assert_eq!(scene.document.site.boundary, points(&TRIANGLE));
    let drag = [
        Input::Down(at(90_300, 70_200)),
        Input::Move(at(60_000, 80_000)),
        Input::Move(at(50_000, 90_000)),
        Input::Up(at(50_000, 90_000)),
    ];
    let (_, steps) = run(&scene, None, &drag);
    let moved = scene.after(&steps).site.boundary;
    assert_eq!(moved, points(&[(0, 0), (90_000, 0), (50_000, 90_000)]));
    let begun = steps.iter().filter(|step| matches!(step, Step::Begin(_)));
    assert_eq!(begun.count(), 1, "one step");
    let (state, _) = run(&scene, None, &clicks(&[(90_000, 70_000)]));
    assert!(state.is_busy(), "a click on a corner begins a new boundary there");
}

#[test]
fn corners_snap_to_streets_corners_and_edges_and_say_so() {
    let mut scene = Scene::with(&[(1, street(&[(0, 0), (200_000, 0)]))]);
    let mark = drafts::area(drafts::PARCEL, &scene.document).expect("a parcel");
    let outline = points(&[(0, 50_000), (100_000, 50_000), (100_000, 150_000)]);
    scene.put(7, shape::laid(mark, Footprint::Area(outline)));
    let sight = scene.sight();
    let snap = |x, y| snapped(at(x, y), MarkId(99), None, false, &sight);
    assert_eq!(snap(40_000, 900).reason, Reason::OnStreet);
    assert_eq!(snap(99_000, 50_900).point, PlanPoint::new(100_000, 50_000));
    assert_eq!(snap(99_000, 50_900).reason, Reason::Corner);
    assert_eq!(snap(40_000, 50_900).point, PlanPoint::new(40_000, 50_000));
    assert_eq!(snap(40_000, 50_900).reason, Reason::AreaEdge);
    assert_eq!(snap(40_000, 30_000).reason, Reason::Grid);
    let own = snapped(at(40_000, 50_900), MarkId(7), None, false, &sight);
    assert_eq!(own.reason, Reason::Grid, "a mark does not snap to itself");
}

#[test]
fn with_snapping_off_corners_stay_where_they_are_put_and_the_first_still_closes() {
    let mut scene = Scene::with(&[(1, street(&[(0, 0), (200_000, 0)]))]);
    scene.choices.drawing.snaps = false;
    let sight = scene.sight();
    let free = snapped(at(40_000, 900), MarkId(99), None, false, &sight);
    assert_eq!((free.point, free.reason), (PlanPoint::new(40_000, 900), Reason::Free));
    let first = Some(PlanPoint::new(41_000, 1_000));
    let closing = snapped(at(40_000, 900), MarkId(99), first, false, &sight);
    assert_eq!((Some(closing.point), closing.reason), (first, Reason::OwnStart));
    scene.choices.drawing.snaps = true;
    let mut held = at(40_000, 900);
    held.modifiers.alt = true;
    assert_eq!(
        snapped(held, MarkId(99), None, false, &scene.sight()).reason,
        Reason::Free
    );
}
