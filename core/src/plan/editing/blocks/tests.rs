use super::*;
use crate::plan::fixtures::{document, street};
use crate::plan::{AlternativeId, Edit, Mark, tie::settle_ties};

const EAST: (f64, f64) = (1.0, 0.0);

fn p(x: i32, y: i32) -> PlanPoint {
    PlanPoint::new(x, y)
}

#[test]
fn a_free_corner_gives_whole_blocks_and_a_held_one_equal_ones() {
    let free = blocks(p(0, 0), p(310_000, -130_000), EAST, [100_000, 60_000], false).expect("blocks");
    assert_eq!((free.count, free.step_mm), ([3, 2], [100_000.0, -60_000.0]));
    assert_eq!(free.corner(3, 2), p(300_000, -120_000));
    let held = blocks(p(0, 0), p(310_000, -130_000), EAST, [100_000, 60_000], true).expect("blocks");
    assert_eq!(held.corner(3, 2), p(310_000, -130_000));
    assert_eq!(held.corner(0, 1), p(0, -65_000));
    assert_eq!(blocks(p(0, 0), p(310_000, 0), EAST, [100_000, 60_000], true), None);
    let turned = blocks(p(0, 0), p(0, 90_000), (0.6, 0.8), [36_000, 27_000], false).expect("blocks");
    // 90 m north is 72 m along and 54 m to the left of a direction of 3 in 4: two blocks each.
    assert_eq!(turned.count, [2, 2]);
    assert_eq!(turned.corner(2, 2), p(0, 90_000));
}

#[test]
fn streets_run_through_and_hold_on_to_the_edges() {
    let grid = blocks(p(0, 0), p(200_000, 120_000), EAST, [100_000, 60_000], false).expect("blocks");
    let streets = grid.streets(&[], MarkId(5));
    assert_eq!(streets.len(), 6, "three each way");
    let untied = streets
        .iter()
        .flat_map(|(_, line)| line)
        .filter(|vertex| vertex.tie.is_none())
        .count();
    assert_eq!(untied, 4, "only the two edges along hold on to nothing");
    let (_, middle) = &streets[4];
    assert_eq!((middle[0].point, middle[1].point), (p(0, 60_000), p(200_000, 60_000)));
    assert_eq!(
        middle[0].tie.map(|tie| (tie.street, tie.along_ppb)),
        Some((MarkId(7), 500_000_000))
    );
}

#[test]
fn an_edge_along_a_street_is_not_drawn_twice_and_the_rest_holds_on_to_it() {
    let main = street(&[(-50_000, 0), (450_000, 0)]);
    let grid = blocks(p(0, 0), p(200_000, 120_000), EAST, [100_000, 60_000], false).expect("blocks");
    let streets = grid.streets(&[(MarkId(1), &main.line)], MarkId(2));
    assert_eq!(streets.len(), 5);
    let on_main = streets
        .iter()
        .flat_map(|(_, line)| line)
        .filter(|vertex| vertex.tie.is_some_and(|tie| tie.street == MarkId(1)));
    assert_eq!(on_main.count(), 3);
    // Ties are true as they are written: settling moves nothing.
    let mut plan = document();
    let alternative = AlternativeId(0);
    Edit::mark(&plan, alternative, MarkId(1), Some(Mark::Street(main.clone())))
        .apply(&mut plan)
        .unwrap();
    let edits: Vec<Edit> = streets
        .into_iter()
        .map(|(id, line)| {
            let drawn = crate::plan::Street { line, ..main.clone() };
            Edit::mark(&plan, alternative, id, Some(Mark::Street(drawn)))
        })
        .collect();
    assert_eq!(settle_ties(&plan, alternative, &edits), Ok(Vec::new()));
}
