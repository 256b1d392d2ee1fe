use super::*;
use crate::tools::drawing::Quantity;
use crate::tools::select::commands::{Command, nudge};
use crate::tools::{Land, LandSide, ToolKind};
use hobnail_core::plan::land::{Fronting, Hand, SideUse};
use hobnail_core::plan::{PlanVector, Tie};

const PICKED: fn(&[Step]) -> Option<Vec<u32>> = |steps| {
    steps.iter().rev().find_map(|step| match step {
        Step::Pick(ids) => Some(ids.iter().map(|id| id.0).collect()),
        _ => None,
    })
};

/// Two streets along and one across between them, held by both.
fn ladder() -> Scene {
    let mut rung = street(&[(50_000, 0), (50_000, 80_000)]);
    tied(&mut rung, 0, 1, 0, 500_000_000);
    tied(&mut rung, 1, 2, 0, 500_000_000);
    Scene::with(&[
        (1, street(&[(0, 0), (100_000, 0)])),
        (2, street(&[(0, 80_000), (100_000, 80_000)])),
        (3, rung),
    ])
}

fn key(scene: &mut Scene, letter: char) -> (State, Vec<Step>) {
    run(scene, &[Input::Key(Key::Character(letter))])
}

fn points(street: &Street) -> Vec<(i32, i32)> {
    street
        .line
        .iter()
        .map(|vertex| (vertex.point.x_mm, vertex.point.y_mm))
        .collect()
}

fn is_one_gesture(steps: &[Step]) -> bool {
    let count = |wanted: fn(&Step) -> bool| steps.iter().filter(|step| wanted(step)).count();
    count(|step| matches!(step, Step::Begin(_))) == 1 && count(|step| *step == Step::Commit) == 1
}

#[test]
fn a_box_selects_what_lies_wholly_inside() {
    let mut scene = ladder();
    let drag = |from: (i32, i32), to: (i32, i32)| {
        [
            Input::Down(at(from.0, from.1)),
            Input::Move(at(to.0, to.1)),
            Input::Up(at(to.0, to.1)),
        ]
    };
    let (_, steps) = run(&mut scene, &drag((-5_000, -5_000), (120_000, 90_000)));
    assert_eq!(PICKED(&steps), Some(vec![1, 2, 3]));
    let (_, steps) = run(&mut scene, &drag((110_000, 85_000), (-5_000, -5_000)));
    assert_eq!(PICKED(&steps), Some(vec![1, 2, 3]), "from any corner");
    let (state, steps) = run(&mut scene, &drag((30_000, -5_000), (70_000, 90_000))[..2]);
    assert_eq!(hints(&state).outline.len(), 4);
    assert_eq!(PICKED(&steps), None);
    let (_, steps) = run(&mut scene, &drag((30_000, -5_000), (70_000, 90_000)));
    assert_eq!(PICKED(&steps), Some(vec![3]));
}

#[test]
fn shift_adds_and_takes_away() {
    let mut scene = ladder();
    scene.selection = Some(Selection::Street(MarkId(1)));
    let mut press = at(20_000, 80_000);
    press.modifiers.shift = true;
    assert_eq!(
        PICKED(&run(&mut scene, &[Input::Down(press), Input::Up(press)]).1),
        Some(vec![1, 2])
    );
    scene.selection = None;
    scene.picked = vec![MarkId(1), MarkId(2)];
    assert_eq!(
        PICKED(&run(&mut scene, &[Input::Down(press), Input::Up(press)]).1),
        Some(vec![1])
    );
}

#[test]
fn a_box_drawn_with_shift_may_begin_on_a_street() {
    let mut scene = ladder();
    scene.selection = Some(Selection::Street(MarkId(1)));
    let mut press = at(50_000, 81_000);
    press.modifiers.shift = true;
    let drag = [
        Input::Down(press),
        Input::Move(at(40_000, 40_000)),
        Input::Up(at(-1_000, 79_000)),
    ];
    assert_eq!(PICKED(&run(&mut scene, &drag).1), Some(vec![1]), "nothing lies inside");
    let rung = [Input::Down(press), Input::Up(at(49_000, -1_000))];
    assert_eq!(PICKED(&run(&mut scene, &rung).1), Some(vec![1, 3]));
}

#[test]
fn many_move_together_and_a_click_selects_one() {
    let mut scene = ladder();
    scene.picked = vec![MarkId(1), MarkId(2), MarkId(3)];
    let drag = [
        Input::Down(at(20_000, 0)),
        Input::Move(at(27_000, 1_000)),
        Input::Up(at(30_000, 5_000)),
    ];
    let (_, steps) = run(&mut scene, &drag);
    assert!(is_one_gesture(&steps));
    let after = scene.after(&steps);
    assert_eq!(points(&street_of(&after, 1)), [(10_000, 5_000), (110_000, 5_000)]);
    assert_eq!(points(&street_of(&after, 3)), [(60_000, 5_000), (60_000, 85_000)]);
    assert_eq!(street_of(&after, 3).line[0].tie.map(|tie| tie.street), Some(MarkId(1)));
    let (_, steps) = run(&mut scene, &[Input::Down(at(20_000, 0)), Input::Up(at(20_000, 0))]);
    assert_eq!(steps, [Step::Select(Some(Selection::Street(MarkId(1))))]);
}

#[test]
fn copies_are_carried_to_their_place_and_selected() {
    let mut scene = ladder();
    scene.picked = vec![MarkId(2), MarkId(3)];
    let (state, steps) = run(
        &mut scene,
        &[
            Input::Key(Key::Character('d')),
            Input::Move(at(0, 150_000)),
            Input::Key(Key::Enter),
        ],
    );
    assert_eq!(state, State::Resting);
    assert!(is_one_gesture(&steps));
    assert_eq!(PICKED(&steps), Some(vec![4, 5]));
    let after = scene.after(&steps);
    assert_eq!(street_of(&after, 2), street_of(&scene.document, 2));
    assert_eq!(points(&street_of(&after, 4)), [(0, 150_000), (100_000, 150_000)]);
    assert_eq!(street_of(&after, 5).line[1].tie.map(|tie| tie.street), Some(MarkId(4)));
}

#[test]
fn turning_there_and_back_and_mirroring_twice_change_nothing() {
    for keys in ["[]", "xx", "yy"] {
        let mut scene = ladder();
        scene.picked = vec![MarkId(1), MarkId(2), MarkId(3)];
        for letter in keys.chars() {
            let (_, steps) = key(&mut scene, letter);
            assert!(is_one_gesture(&steps), "{keys}");
            let turned = scene.after(&steps);
            assert_ne!(turned, scene.document);
            scene.document = turned;
        }
        for id in 1..=3 {
            let (now, before) = (street_of(&scene.document, id), street_of(&ladder().document, id));
            for (one, other) in now.line.iter().zip(&before.line) {
                let apart_mm2 = one.point.squared_distance_mm2(other.point);
                assert!(
                    apart_mm2 <= 2,
                    "{keys}: street {id} at {:?} was at {:?}",
                    one.point,
                    other.point
                );
                assert_eq!(one.tie, other.tie);
            }
        }
    }
}

#[test]
fn a_cut_street_is_two_that_hold_together_and_join_again() {
    let mut scene = ladder();
    let side = SideUse {
        street: MarkId(1),
        hand: Hand::Left,
        at: PlanPoint::new(80_000, 0),
        fronting: Fronting::Front,
        building_type: None,
        shopfront: true,
        stories: None,
        setback_mm: None,
    };
    let mut painted = use_mark(70_000, 40_000, 3);
    painted.sides = vec![side];
    scene.put(8, Mark::Use(painted));
    scene.selection = Some(Selection::Street(MarkId(1)));
    let (state, steps) = run(
        &mut scene,
        &[Input::Key(Key::Character('k')), Input::Move(at(30_000, 900))],
    );
    assert!(steps.is_empty());
    assert_eq!(
        hints(&state).snap.map(|snap| snap.point),
        Some(PlanPoint::new(30_000, 0))
    );
    let (_, steps) = run(
        &mut scene,
        &[Input::Key(Key::Character('k')), Input::Down(at(30_000, 900))],
    );
    assert!(is_one_gesture(&steps));
    assert_eq!(PICKED(&steps), Some(vec![1, 9]));
    let after = scene.after(&steps);
    assert_eq!(points(&street_of(&after, 1)), [(0, 0), (30_000, 0)]);
    assert_eq!(points(&street_of(&after, 9)), [(30_000, 0), (100_000, 0)]);
    let tie = Tie {
        street: MarkId(1),
        segment: 0,
        along_ppb: 1_000_000_000,
    };
    assert_eq!(street_of(&after, 9).line[0].tie, Some(tie));
    let side_of = |document: &hobnail_core::plan::Document| {
        let mark = document.mark(DRAWN, MarkId(8)).and_then(Mark::as_use).expect("the use");
        mark.sides[0].street
    };
    assert_eq!(side_of(&after), MarkId(9), "the painted side faces the second part");
    scene.document = after;
    scene.selection = None;
    scene.picked = vec![MarkId(1), MarkId(9)];
    let (_, steps) = key(&mut scene, 'j');
    assert!(is_one_gesture(&steps));
    let joined = scene.after(&steps);
    assert_eq!(points(&street_of(&joined, 1)), [(0, 0), (100_000, 0)]);
    assert_eq!(joined.mark(DRAWN, MarkId(9)), None);
    assert_eq!(side_of(&joined), MarkId(1));
}

#[test]
fn a_selected_corner_is_where_a_street_is_cut() {
    let mut scene = Scene::with(&[(1, street(&[(0, 0), (50_000, 9_000), (100_000, 0)]))]);
    scene.selection = Some(Selection::Vertex(MarkId(1), 1));
    let (_, steps) = key(&mut scene, 'k');
    assert_eq!(
        points(&street_of(&scene.after(&steps), 2)),
        [(50_000, 9_000), (100_000, 0)]
    );
}

#[test]
fn a_copy_set_off_runs_on_to_the_streets_that_hold_it() {
    let mut scene = ladder();
    scene.selection = Some(Selection::Street(MarkId(3)));
    scene.choices.drawing.offset_mm = 20_000;
    let (_, steps) = key(&mut scene, '.');
    let copy = street_of(&scene.after(&steps), 4);
    assert_eq!(points(&copy), [(70_000, 0), (70_000, 80_000)]);
    let held: Vec<_> = copy
        .line
        .iter()
        .map(|vertex| vertex.tie.map(|tie| (tie.street.0, tie.along_ppb)))
        .collect();
    assert_eq!(held, [Some((1, 700_000_000)), Some((2, 700_000_000))]);
    let (_, steps) = key(&mut scene, ',');
    assert_eq!(
        points(&street_of(&scene.after(&steps), 4)),
        [(30_000, 0), (30_000, 80_000)]
    );
}

#[test]
fn streets_that_cross_move_by_their_intersection() {
    let mut end = street(&[(50_000, 0), (90_000, 50_000)]);
    tied(&mut end, 0, 1, 0, 500_000_000);
    let mut scene = Scene::with(&[
        (1, street(&[(0, 0), (100_000, 0)])),
        (2, street(&[(50_000, -60_000), (50_000, 40_000)])),
        (3, end),
    ]);
    scene.selection = Some(Selection::Street(MarkId(1)));
    let drag = [
        Input::Down(at(50_300, 200)),
        Input::Move(at(54_000, -4_000)),
        Input::Up(at(60_000, -8_000)),
    ];
    let (_, steps) = run(&mut scene, &drag);
    assert!(is_one_gesture(&steps));
    let after = scene.after(&steps);
    assert_eq!(points(&street_of(&after, 1)), [(0, 0), (60_000, -8_000), (100_000, 0)]);
    assert_eq!(
        points(&street_of(&after, 2)),
        [(50_000, -60_000), (60_000, -8_000), (50_000, 40_000)]
    );
    let tie = street_of(&after, 3).line[0].tie.expect("it holds on");
    assert_eq!(
        (tie.street, tie.segment, tie.along_ppb),
        (MarkId(1), 1, 0),
        "its foot is the new corner"
    );
}

#[test]
fn a_radius_is_dragged_by_its_handle() {
    let mut scene = Scene::with(&[(1, street(&[(0, 0), (70_000, 0), (70_000, 70_000)]))]);
    scene.selection = Some(Selection::Vertex(MarkId(1), 1));
    let handle = radius_handle(&street_of(&scene.document, 1), 1).expect("a handle");
    // √2 − 1 of the radius nearer to the middle of the curve: 20 m give 8.284 m, 5.858 m each way.
    let to = at(handle.x_mm - 5_858, handle.y_mm + 5_858);
    let press = Input::Down(at(handle.x_mm, handle.y_mm));
    let (state, _) = run(&mut scene, &[press, Input::Move(to)]);
    let said = hints(&state).words.expect("the radius is said").1;
    assert!(
        matches!(said.given[0], Quantity::Length(radius_mm) if (radius_mm - 20_000.0).abs() <= 100.0),
        "{said:?}"
    );
    let (_, steps) = run(&mut scene, &[press, Input::Move(to), Input::Up(to)]);
    let radius_mm = street_of(&scene.after(&steps), 1).line[1].corner_radius_mm;
    assert!(radius_mm.abs_diff(20_000) <= 100, "{radius_mm}");
}

#[test]
fn many_are_deleted_at_once() {
    let mut scene = ladder();
    scene.picked = vec![MarkId(1), MarkId(3)];
    let (_, steps) = run(&mut scene, &[Input::Key(Key::Delete)]);
    assert!(is_one_gesture(&steps));
    let left: Vec<u32> = scene.after(&steps).alternatives[&DRAWN]
        .marks
        .keys()
        .map(|id| id.0)
        .collect();
    assert_eq!(left, [2]);
}

#[test]
fn a_nudge_shifts_marks_and_slides_held_corners() {
    let mut scene = ladder();
    scene.picked = vec![MarkId(1), MarkId(2)];
    let steps = nudge(PlanVector::new(100, 0), &scene.sight()).expect("steps");
    assert!(is_one_gesture(&steps));
    assert_eq!(points(&street_of(&scene.after(&steps), 1)), [(100, 0), (100_100, 0)]);
    scene.picked.clear();
    scene.selection = Some(Selection::Vertex(MarkId(3), 0));
    let steps = nudge(PlanVector::new(305, 305), &scene.sight()).expect("steps");
    assert_eq!(points(&street_of(&scene.after(&steps), 3))[0], (50_305, 0));
}

#[test]
fn every_command_has_a_key_of_its_own_that_chooses_no_tool() {
    for (index, command) in Command::ALL.iter().enumerate() {
        let is_taken = |other: &Command| other.key() == command.key();
        assert!(!Command::ALL[..index].iter().any(is_taken), "{command:?}");
        assert!(
            !ToolKind::ALL.iter().any(|tool| tool.key() == command.key()),
            "{command:?}"
        );
        assert_ne!(command.key(), 'm', "that picks up");
    }
}

#[test]
fn a_drag_with_snapping_off_lands_on_the_grid_alone() {
    let mut scene = ladder();
    scene.selection = Some(Selection::Street(MarkId(3)));
    let drag = [
        Input::Down(at(50_000, 80_000)),
        Input::Move(at(60_000, 79_000)),
        Input::Up(at(60_033, 79_071)),
    ];
    let (_, steps) = run(&mut scene, &drag);
    assert_eq!(points(&street_of(&scene.after(&steps), 3))[1], (60_033, 80_000));
    scene.selection = Some(Selection::Street(MarkId(3)));
    scene.choices.drawing.snaps = false;
    let (_, steps) = run(&mut scene, &drag);
    let end = street_of(&scene.after(&steps), 3).line[1];
    assert_eq!((end.point, end.tie), (PlanPoint::new(60_000, 79_100), None));
}

/// A block of 50 by 80 m between four streets of which two run on, and the use painted on it.
fn block() -> Scene {
    let p = PlanPoint::new;
    let corners = [p(0, 0), p(50_000, 0), p(50_000, 80_000), p(0, 80_000)];
    let land = Land {
        outline: corners.to_vec(),
        use_mark: Some(MarkId(8)),
        land_m2: 4_000,
        sides: [1, 3, 2, 4]
            .map(|street| LandSide {
                street: MarkId(street),
                hand: Hand::Left,
                run: Vec::new(),
                half_width_mm: 8_000.0,
            })
            .to_vec(),
        is_among_streets: true,
    };
    let mut scene = ladder().with_lands(vec![land]);
    scene.put(4, Mark::Street(street(&[(0, 0), (0, 80_000)])));
    scene.put(8, Mark::Use(use_mark(25_000, 40_000, 3)));
    scene
}

#[test]
fn a_block_is_copied_with_its_use_where_all_its_streets_are() {
    for (streets, is_enclosed) in [(vec![1, 2, 3, 4], true), (vec![1, 2, 3], false), (vec![4], false)] {
        for is_use_picked in [false, true] {
            let mut scene = block();
            scene.picked = streets.iter().copied().map(MarkId).collect();
            if is_use_picked {
                scene.picked.push(MarkId(8));
            }
            let (_, steps) = run(
                &mut scene,
                &[
                    Input::Key(Key::Character('d')),
                    Input::Move(at(300_000, 200_000)),
                    Input::Key(Key::Enter),
                ],
            );
            assert!(is_one_gesture(&steps));
            let marks = &scene.after(&steps).alternatives[&DRAWN].marks;
            let uses: Vec<u32> = marks
                .iter()
                .filter(|(_, mark)| mark.as_use().is_some())
                .map(|(id, _)| id.0)
                .collect();
            let copy = 9 + streets.len() as u32;
            assert_eq!(uses, if is_enclosed { vec![8, copy] } else { vec![8] }, "{streets:?}");
        }
    }
}

#[test]
fn a_block_is_moved_turned_and_mirrored_with_its_use_where_all_its_streets_are() {
    let anchor_after = |streets: &[u32], inputs: &[Input]| {
        let mut scene = block();
        scene.picked = streets.iter().copied().map(MarkId).collect();
        let (_, steps) = run(&mut scene, inputs);
        assert!(is_one_gesture(&steps));
        let after = scene.after(&steps);
        let mark = after.mark(DRAWN, MarkId(8)).and_then(Mark::as_use);
        mark.expect("the use is there").anchor
    };
    let moved = [
        Input::Key(Key::Character('m')),
        Input::Move(at(300_000, 200_000)),
        Input::Key(Key::Enter),
    ];
    let stays = PlanPoint::new(25_000, 40_000);
    // Picked up at its first corner, which lies at the origin.
    assert_eq!(anchor_after(&[1, 2, 3, 4], &moved), PlanPoint::new(325_000, 240_000));
    assert_eq!(
        anchor_after(&[1, 2, 3], &moved),
        stays,
        "its land is laid over what comes there"
    );
    for key in ['[', 'x'] {
        let turned = [Input::Key(Key::Character(key))];
        assert_ne!(anchor_after(&[1, 2, 3, 4], &turned), stays, "{key}");
        assert_eq!(anchor_after(&[4], &turned), stays, "{key}");
    }
}

#[test]
fn a_block_that_ends_at_the_site_is_not_copied() {
    let mut scene = block();
    let mut land = scene.lands.clone();
    land[0].is_among_streets = false;
    scene = scene.with_lands(land);
    scene.picked = (1..=4).map(MarkId).collect();
    let (_, steps) = run(
        &mut scene,
        &[Input::Key(Key::Character('d')), Input::Move(at(300_000, 0))],
    );
    assert_eq!(scene.after(&steps).alternatives[&DRAWN].marks.len(), 9);
}

#[test]
fn the_use_of_land_is_selected_with_its_land_and_moved_with_its_block() {
    let mut scene = block();
    let drag = |to: i32| {
        [
            Input::Down(at(-5_000, -5_000)),
            Input::Move(at(to, 90_000)),
            Input::Up(at(to, 90_000)),
        ]
    };
    assert_eq!(PICKED(&run(&mut scene, &drag(55_000)).1), Some(vec![3, 4, 8]));
    assert_eq!(
        PICKED(&run(&mut scene, &drag(45_000)).1),
        Some(vec![4]),
        "its land is not in it"
    );
    scene.picked = vec![MarkId(4)];
    let mut press = at(25_000, 40_000);
    press.modifiers.shift = true;
    let click = [Input::Down(press), Input::Up(press)];
    assert_eq!(PICKED(&run(&mut scene, &click).1), Some(vec![4, 8]));
    scene.picked = vec![MarkId(8)];
    for letter in ['d', 'm', '[', 'x'] {
        assert_eq!(key(&mut scene, letter), (State::Resting, Vec::new()), "{letter}");
    }
    let (state, steps) = run(&mut scene, &[Input::Down(at(25_000, 40_000))]);
    assert!(matches!(state, State::Boxing { .. }), "a box may begin on it");
    assert_eq!(steps, [Step::Select(Some(Selection::Use(MarkId(8))))]);
}
