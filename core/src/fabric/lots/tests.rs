//! Lots on blocks worked by hand: common practice, no source, but where a line says otherwise.

use std::sync::Arc;

use super::*;
use crate::fabric::land::Land;
use crate::fabric::regions::twice_area_mm2;

const M: i32 = 1_000;

fn house(width_m: u32, depth_m: u32) -> LotType {
    LotType {
        id: BuildingTypeId(1),
        width_mm: width_m * 1_000,
        depth_mm: depth_m * 1_000,
        coverage_thousandths: 300,
        has_homes: true,
        is_built: true,
    }
}

fn points(corners_m: &[(i32, i32)]) -> Vec<PlanPoint> {
    corners_m.iter().map(|&(x, y)| PlanPoint::new(x * M, y * M)).collect()
}

/// A block inside rights-of-way of 10 m to every side: its land, and every side as a front, from the corners of the
/// centerlines, counterclockwise.
fn block(land_m: &[(i32, i32)], centerlines_m: &[(i32, i32)]) -> LotKey {
    let corners = points(centerlines_m);
    let fronts = (0..corners.len()).map(|side| Front {
        side: side as u32,
        is_head: false,
        centerline: vec![corners[side], corners[(side + 1) % corners.len()]],
        half_width_mm: 10_000,
        own: None,
        setback_mm: None,
    });
    let ring = points(land_m);
    LotKey {
        land: Arc::new(Land {
            twice_area_mm2: twice_area_mm2(&ring),
            pieces: vec![vec![ring]],
            ..Land::default()
        }),
        fronts: fronts.collect(),
        program: Vec::new(),
        beside: Vec::new(),
    }
}

fn rectangle(width_m: i32, depth_m: i32) -> LotKey {
    block(
        &[(0, 0), (width_m, 0), (width_m, depth_m), (0, depth_m)],
        &[
            (-10, -10),
            (width_m + 10, -10),
            (width_m + 10, depth_m + 10),
            (-10, depth_m + 10),
        ],
    )
}

fn all(lot_type: LotType) -> Vec<LandShare> {
    vec![LandShare {
        lot_type,
        share_ppm: 1_000_000,
    }]
}

/// Lots lie in the land, over no other lot, and with what is left they are all of it.
#[track_caller]
fn check_partition(key: &LotKey, laid: &LaidLots) {
    let lots: i128 = laid.lots.iter().map(|lot| lot.twice_area_mm2).sum();
    let off = (lots + twice_area_of_pieces(laid.left.pieces()) - key.land.twice_area_mm2).abs();
    // Rounding moves an edge by at most a millimeter, and the strip at a front by 20 mm of its own.
    let slack: i128 = laid.lots.len() as i128 * 2 * 25 * 100_000 + 2_000_000;
    assert!(
        off <= slack,
        "{lots} in lots and {} left of {}",
        twice_area_of_pieces(laid.left.pieces()),
        key.land.twice_area_mm2
    );
    for (at, lot) in laid.lots.iter().enumerate() {
        let here = region::Region::of(vec![vec![lot.outline.clone()]]);
        for other in &laid.lots[at + 1..] {
            let both = twice_area_of_pieces(&here.part_in(&other.outline, &[]));
            assert!(
                both <= 4_000_000,
                "lots {:?} and {:?} overlap by {both}",
                lot.outline,
                other.outline
            );
        }
    }
}

#[track_caller]
fn check_count(key: &LotKey, expected: usize) -> LaidLots {
    let laid = lay(key);
    check_partition(key, &laid);
    assert_eq!(
        laid.lots.len(),
        expected,
        "{:?}",
        laid.lots.iter().map(|lot| lot.side).collect::<Vec<_>>()
    );
    laid
}

#[test]
fn a_block_two_lots_deep_has_a_row_on_each_long_side() {
    let mut key = rectangle(150, 60);
    key.program = all(house(15, 30));
    let laid = check_count(&key, 20);
    assert!(laid.lots.iter().all(|lot| lot.side == 0 || lot.side == 2));
    assert_eq!(twice_area_of_pieces(laid.left.pieces()), 0);
    assert!(laid.lots.iter().all(|lot| lot.twice_area_mm2 == 2 * 15_000 * 30_000));
    // A front of 15 m, measured along the centerline from the block's corner 10 m before the land.
    let first = laid.lots.iter().find(|lot| lot.side == 0).unwrap();
    assert_eq!(first.front_um, [10_000_000, 25_000_000]);
    assert_eq!(first.faces, [0, -1_000_000]);
    assert_eq!(first.footprint.len(), 4);
}

#[test]
fn a_shallow_block_shares_its_depth() {
    let mut key = rectangle(150, 50);
    key.program = all(house(15, 30));
    let laid = check_count(&key, 20);
    assert!(laid.lots.iter().all(|lot| lot.twice_area_mm2 == 2 * 15_000 * 25_000));
}

#[test]
fn a_block_one_lot_deep_is_laid_from_one_side() {
    let mut key = rectangle(150, 36);
    key.program = all(house(15, 30));
    let laid = check_count(&key, 10);
    assert!(laid.lots.iter().all(|lot| lot.side == laid.lots[0].side));
}

#[test]
fn a_deep_block_lays_its_short_sides_from_what_the_long_ones_leave() {
    let mut key = rectangle(150, 90);
    key.program = all(house(15, 30));
    // Rows of ten on the long sides; between them 30 m of each short side hold two.
    let laid = check_count(&key, 24);
    assert_eq!(laid.lots.iter().filter(|lot| lot.side == 1).count(), 2);
    // What no street reaches: 150 m less two lots' depths, by 30 m.
    assert_eq!(twice_area_of_pieces(laid.left.pieces()), 2 * 90_000 * 30_000);
}

#[test]
fn what_is_over_widens_the_lots_and_a_hair_too_little_narrows_them() {
    let mut key = rectangle(155, 60);
    key.program = all(house(15, 30));
    check_count(&key, 20);
    let mut key = rectangle(150, 60);
    // 149.9 m of land along the long sides, drawn for ten lots.
    let ring = vec![
        PlanPoint::new(50, 0),
        PlanPoint::new(149_950, 0),
        PlanPoint::new(149_950, 60_000),
        PlanPoint::new(50, 60_000),
    ];
    key.land = Arc::new(Land {
        twice_area_mm2: twice_area_mm2(&ring),
        pieces: vec![vec![ring]],
        ..Land::default()
    });
    key.program = all(house(15, 30));
    check_count(&key, 20);
}

#[test]
fn an_l_shaped_block_is_laid_around_its_corner() {
    let land = [(0, 0), (120, 0), (120, 60), (60, 60), (60, 120), (0, 120)];
    let centerlines = [(-10, -10), (130, -10), (130, 70), (70, 70), (70, 130), (-10, 130)];
    let mut key = block(&land, &centerlines);
    key.program = all(house(15, 30));
    let laid = lay(&key);
    check_partition(&key, &laid);
    // Of 10,800 m² 24 lots of 450 m² are all; corners cost a few.
    assert!((18..=24).contains(&laid.lots.len()), "{}", laid.lots.len());
}

/// The block leans by 6 m over 30: the lot at the slanting end loses a triangle and is still whole.
#[test]
fn a_row_reaches_the_slanting_end_of_its_block() {
    let mut key = block(
        &[(0, 0), (156, 0), (162, 30), (6, 30)],
        &[(-10, -10), (166, -10), (172, 40), (-4, 40)],
    );
    key.fronts.truncate(1);
    key.program = all(house(15, 30));
    let laid = check_count(&key, 10);
    let areas: Vec<i128> = laid.lots.iter().map(|lot| lot.twice_area_mm2 / 2_000_000).collect();
    assert!(areas[0] >= 337 && areas[0] < areas[1], "{areas:?}");
}

#[test]
fn an_acute_corner_is_no_lot() {
    let land = [(0, 0), (160, 0), (0, 80)];
    let mut key = block(&land, &[(-10, -10), (202, -10), (-10, 96)]);
    key.program = all(house(15, 30));
    let laid = lay(&key);
    check_partition(&key, &laid);
    assert!((6..=12).contains(&laid.lots.len()), "{}", laid.lots.len());
    let least = LEAST_LOT_SHARE * 2.0 * 15_000.0 * 30_000.0;
    assert!(laid.lots.iter().all(|lot| lot.twice_area_mm2 as f64 >= least));
}

#[test]
fn a_pond_in_a_block_takes_the_lots_it_lies_in() {
    let mut key = rectangle(150, 60);
    let mut pieces = key.land.pieces.clone();
    // Clockwise, as a hole: 20 m of the first row, 30 m deep.
    pieces[0].push(points(&[(60, 5), (60, 28), (80, 28), (80, 5)]));
    key.land = Arc::new(Land {
        twice_area_mm2: twice_area_of_pieces(&pieces),
        pieces,
        ..Land::default()
    });
    key.program = all(house(15, 30));
    let laid = lay(&key);
    check_partition(&key, &laid);
    assert_eq!(laid.lots.iter().filter(|lot| lot.side == 2).count(), 10);
    assert!((6..=8).contains(&laid.lots.iter().filter(|lot| lot.side == 0).count()));
}

#[test]
fn a_curved_front_holds_as_many_lots_as_its_length_half_way_back() {
    // An arc of 90° about the origin, lots outside of it: right-of-way's edge at 100 m, lots 30 m deep.
    let arc = |radius_m: f64| -> Vec<PlanPoint> {
        (0..=36)
            .map(|step| {
                let angle = f64::from(step) * 2.5_f64.to_radians();
                let (sin, cos) = (crate::number::sin(angle), crate::number::cos(angle));
                PlanPoint::new((radius_m * 1e3 * cos) as i32, (radius_m * 1e3 * sin) as i32)
            })
            .collect()
    };
    let mut ring = arc(130.0);
    let mut inner = arc(100.0);
    inner.reverse();
    ring.extend(inner);
    // The face is on the left of the centerline when the street runs clockwise.
    let mut centerline = arc(90.0);
    centerline.reverse();
    let key = LotKey {
        land: Arc::new(Land {
            twice_area_mm2: twice_area_mm2(&ring),
            pieces: vec![vec![ring]],
            ..Land::default()
        }),
        fronts: vec![Front {
            side: 0,
            is_head: false,
            centerline,
            half_width_mm: 10_000,
            own: None,
            setback_mm: None,
        }],
        program: all(house(14, 30)),
        beside: Vec::new(),
    };
    let laid = lay(&key);
    check_partition(&key, &laid);
    // A quarter of a circle of 115 m is 180.6 m: twelve lots of 14 m, which stand a little wider.
    assert_eq!(laid.lots.len(), 12);
}

#[test]
fn two_types_share_the_front_by_land_and_depth() {
    let mut key = rectangle(150, 60);
    let (row, mut large) = (house(6, 30), house(15, 30));
    large.id = BuildingTypeId(2);
    key.program = vec![
        LandShare {
            lot_type: row,
            share_ppm: 400_000,
        },
        LandShare {
            lot_type: large,
            share_ppm: 600_000,
        },
    ];
    let laid = lay(&key);
    check_partition(&key, &laid);
    let count = |id| {
        laid.lots
            .iter()
            .filter(|lot| lot.building_type == BuildingTypeId(id))
            .count()
    };
    // 300 m of front: 120 m in lots of 6 m and 180 m in lots of 15 m.
    assert_eq!((count(1), count(2)), (20, 12));
}

#[test]
fn a_side_of_its_own_comes_first_and_takes_its_corners() {
    let mut key = rectangle(150, 60);
    let mut shop = house(10, 20);
    shop.id = BuildingTypeId(7);
    key.fronts[1].own = Some(shop);
    key.program = all(house(15, 30));
    let laid = lay(&key);
    check_partition(&key, &laid);
    assert_eq!(laid.lots.iter().filter(|lot| lot.side == 1).count(), 6);
    // 130 m are left of each long side: eight lots of 15 m.
    assert_eq!(laid.lots.len(), 6 + 16);
}

#[test]
fn a_school_too_large_for_its_block_is_a_smaller_one() {
    let mut key = rectangle(150, 60);
    let mut school = house(120, 160);
    school.has_homes = false;
    key.program = all(school);
    let laid = lay(&key);
    check_partition(&key, &laid);
    assert_eq!(laid.lots.len(), 1);
    // 9,000 of 19,200 m².
    assert_eq!(laid.lots[0].counts_ppm, 468_750);
}

#[test]
fn half_of_the_land_takes_half_of_the_front() {
    let mut key = rectangle(150, 60);
    key.program = all(house(15, 30));
    key.program[0].share_ppm = 500_000;
    let laid = lay(&key);
    check_partition(&key, &laid);
    assert_eq!(laid.lots.len(), 10);
}

#[test]
fn a_face_without_a_front_has_no_lots() {
    let mut key = rectangle(150, 60);
    key.fronts.clear();
    key.program = all(house(15, 30));
    let laid = check_count(&key, 0);
    assert_eq!(twice_area_of_pieces(laid.left.pieces()), key.land.twice_area_mm2);
}

/// A street of 20 m ends 40 m before the block's far side: its head is a front as wide as the street, and holds one lot of
/// 15 m, deepened to the land behind it.
#[test]
fn the_head_of_a_dead_end_holds_a_lot() {
    let ring = points(&[
        (0, 0),
        (60, 0),
        (60, 60),
        (80, 60),
        (80, 0),
        (140, 0),
        (140, 96),
        (0, 96),
    ]);
    let front = |side, is_head, centerline: &[(i32, i32)]| Front {
        side,
        is_head,
        centerline: points(centerline),
        half_width_mm: 10_000,
        own: None,
        setback_mm: None,
    };
    let key = LotKey {
        land: Arc::new(Land {
            twice_area_mm2: twice_area_mm2(&ring),
            pieces: vec![vec![ring]],
            ..Land::default()
        }),
        // The land on the left of each: up the western side, across the end, down the eastern side.
        fronts: vec![
            front(0, false, &[(70, 0), (70, 50)]),
            front(0, true, &[(60, 50), (80, 50)]),
            front(1, false, &[(70, 50), (70, 0)]),
        ],
        program: all(house(15, 30)),
        beside: Vec::new(),
    };
    let laid = lay(&key);
    check_partition(&key, &laid);
    let at_head: Vec<&Lot> = laid.lots.iter().filter(|lot| lot.is_at_head).collect();
    assert_eq!(at_head.len(), 1, "{:?}", laid.lots);
    assert_eq!(at_head[0].faces, [0, -1_000_000]);
    assert_eq!(laid.lots.iter().filter(|lot| !lot.is_at_head).count(), 6);
}

/// A block that leans, with rows of two types: on its mirror image every type has the lots it has here, on mirrored land,
/// each along its front from the street's other end.
#[test]
fn a_face_and_its_mirror_image_have_the_same_lots() {
    let mut key = block(
        &[(0, 0), (173, 0), (140, 61), (31, 61)],
        &[(-24, -10), (189, -10), (145, 71), (26, 71)],
    );
    let share = |id: u32, width_m: u32, share_ppm: u32| LandShare {
        lot_type: LotType {
            id: BuildingTypeId(id),
            ..house(width_m, 30)
        },
        share_ppm,
    };
    key.program = vec![share(1, 13, 450_000), share(2, 8, 550_000)];
    let image = handed::mirrored(&key);
    assert_ne!(handed::is_laid_mirrored(&key), handed::is_laid_mirrored(&image));
    let (here, there) = (lay(&key), lay(&image));
    check_partition(&key, &here);
    check_partition(&image, &there);
    assert!([1, 2].iter().all(|id| {
        let types = here.lots.iter().filter(|lot| lot.building_type == BuildingTypeId(*id));
        types.count() > 2
    }));
    let back = handed::mirrored_back(there.clone(), &key);
    for (lot, other) in here.lots.iter().zip(&back.lots) {
        assert_eq!(
            (lot.building_type, lot.side, lot.faces),
            (other.building_type, other.side, other.faces)
        );
        assert_eq!(lot.front_um, other.front_um);
        assert_eq!(lot.twice_area_mm2, twice_area_mm2(&other.outline));
    }
    assert_eq!(here.lots.len(), there.lots.len());
    assert_eq!(here.left.pieces(), back.left.pieces());
    // Along each front lots follow one another from its start.
    for pair in here.lots.windows(2).filter(|pair| pair[0].side == pair[1].side) {
        assert!(pair[0].front_um[1] <= pair[1].front_um[0]);
    }
}
