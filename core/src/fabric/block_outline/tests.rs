use crate::order::OrderedMap;

use super::*;
use crate::fabric::{Fabric, LandCache};
use crate::plan::fixtures::{document, street};
use crate::plan::street::{StreetSection, Strip, StripKind};
use crate::plan::{AlternativeId, Document, Mark, MarkId, Street, StreetSectionId};

const ONLY: AlternativeId = AlternativeId(0);

/// Feet in whole millimeters.
fn feet(feet: i32) -> i32 {
    feet * 3_048 / 10
}

fn section(width_mm: u32) -> StreetSection {
    StreetSection {
        name: String::new(),
        strips: vec![Strip {
            kind: StripKind::Travel,
            width_mm,
        }],
        target_speed_km_h: 30,
        walkable: true,
        cyclable: true,
        drivable: true,
        fronts_left: true,
        fronts_right: true,
    }
}

/// A plan of these streets, each with the width of its right-of-way.
fn plan(streets: &[(Street, u32)]) -> Document {
    let mut plan = document();
    let (mut marks, mut sections) = (OrderedMap::new(), OrderedMap::new());
    for ((street, width_mm), id) in streets.iter().zip(0..) {
        sections.insert(StreetSectionId(id), section(*width_mm));
        let street = Street {
            section: StreetSectionId(id),
            ..street.clone()
        };
        marks.insert(MarkId(id), Mark::Street(street));
    }
    plan.street_sections = sections;
    plan.alternatives.get_mut(&ONLY).unwrap().marks = marks;
    plan
}

fn fabric_of(plan: &Document) -> Fabric {
    Fabric::of(plan, ONLY, &mut LandCache::default())
}

/// The outlines, whose lengths are those that are kept by face.
fn outlines(fabric: &Fabric) -> Vec<Option<BlockOutline>> {
    let outlines = block_outlines(&fabric.lines, &fabric.arrangement, &fabric.carriers, &fabric.blocks);
    let lengths: Vec<_> = outlines
        .iter()
        .map(|outline| outline.as_ref().map(|outline| outline.lengths))
        .collect();
    assert_eq!(fabric.block_lengths(), lengths);
    outlines
}

/// The outlines of the blocks among these streets.
fn around(streets: &[(Street, u32)]) -> Vec<Option<BlockOutline>> {
    outlines(&fabric_of(&plan(streets)))
}

#[track_caller]
fn check(outline: Option<&BlockOutline>, perimeter_mm: f64, longest_side_mm: f64) {
    let outline = outline.expect("a block with streets all round");
    assert!(
        (outline.lengths.perimeter_mm - perimeter_mm).abs() < 1e-3
            && (outline.lengths.longest_side_mm - longest_side_mm).abs() < 1e-3,
        "{} and {}, not {perimeter_mm} and {longest_side_mm}",
        outline.lengths.perimeter_mm,
        outline.lengths.longest_side_mm
    );
}

/// The four streets around a block that measures `width` by `height` along rights-of-way of 20 m.
fn four_streets(width: i32, height: i32) -> Vec<(Street, u32)> {
    let (low, high_x, high_y) = (-10_000, width + 10_000, height + 10_000);
    let past = 40_000;
    [
        [(low - past, low), (high_x + past, low)],
        [(low - past, high_y), (high_x + past, high_y)],
        [(low, low - past), (low, high_y + past)],
        [(high_x, low - past), (high_x, high_y + past)],
    ]
    .map(|line| (street(&line), 20_000))
    .into()
}

/// Check case N-A7: a block of 660 × 300 feet has a perimeter of 1,920 feet. Block of two to each 660 feet between
/// through streets: "Design Your Town", basic street network. It passes the largest perimeters of SmartCode v9.2,
/// Table 14c, for T3, T4 and T5 (from memory) and of San Marcos TX Development Code, Table 3.1, CD-5 (2,000 feet); of
/// Maine's model place code, "Blocks", it passes T3 (2,640 feet) and fails T4 (1,760) and T5 (1,320); it fails 1,600 feet
/// (restreets.org, Mobility and Access 01). Passing is arithmetic derived from those tables.
#[test]
fn n_a7_a_block_of_660_by_300_feet() {
    let found = around(&four_streets(feet(660), feet(300)));
    assert_eq!(found.len(), 1);
    check(found[0].as_ref(), f64::from(feet(1_920)), f64::from(feet(660)));
    let perimeter_mm = found[0].as_ref().unwrap().lengths.perimeter_mm;
    let passes = |most_feet: i32| perimeter_mm <= f64::from(feet(most_feet)) + 1e-3;
    assert_eq!([3_000, 2_400, 2_000].map(passes), [true; 3]);
    assert_eq!([2_640, 1_760, 1_320].map(passes), [true, false, false]);
    assert_eq!([2_000, 1_600].map(passes), [true, false]);
}

/// Check case N-A15: a block of 300 × 300 feet. Corry PA, s 154.098, asks for at least 400 feet; Madison MN, s 150.078,
/// for 300 to 900 feet. Derived from both.
#[test]
fn n_a15_a_block_of_300_by_300_feet() {
    let found = around(&four_streets(feet(300), feet(300)));
    check(found[0].as_ref(), f64::from(feet(1_200)), f64::from(feet(300)));
    let length_mm = found[0].as_ref().unwrap().lengths.longest_side_mm.round() as i32;
    assert!(length_mm < feet(400), "fails the first");
    assert!((feet(300)..=feet(900)).contains(&length_mm), "passes the second");
}

#[test]
fn alleys_and_paths_within_do_not_split_a_block() {
    let mut streets = four_streets(200_000, 100_000);
    let alone = around(&streets);
    let mut way = |role, x: i32, width| {
        let line = [(x, -10_000), (x, 110_000)];
        streets.push((Street { role, ..street(&line) }, width));
    };
    way(StreetRole::Alley, 60_000, 6_000);
    way(StreetRole::Path, 120_000, 3_000);
    let split = around(&streets);
    assert_eq!(split.len(), 1);
    check(split[0].as_ref(), 600_000.0, 200_000.0);
    check(alone[0].as_ref(), 600_000.0, 200_000.0);
    // A street does.
    streets.push((street(&[(160_000, -10_000), (160_000, 110_000)]), 20_000));
    let parted = around(&streets);
    check(parted[0].as_ref(), 500_000.0, 150_000.0);
    check(parted[1].as_ref(), 260_000.0, 100_000.0);
}

#[test]
fn dead_ends_and_loose_streets_inside_leave_the_outline() {
    let mut streets = four_streets(200_000, 100_000);
    streets.push((street(&[(100_000, -10_000), (100_000, 50_000)]), 12_000));
    streets.push((
        street(&[(20_000, 60_000), (60_000, 60_000), (40_000, 80_000), (20_000, 60_000)]),
        4_000,
    ));
    let found = around(&streets);
    // The ring inside has a block of its own.
    assert_eq!(found.len(), 2);
    check(found[0].as_ref(), 600_000.0, 200_000.0);
}

#[test]
fn what_no_street_closes_is_no_block() {
    let mut streets = four_streets(200_000, 100_000);
    streets[3].0.role = StreetRole::Path;
    assert_eq!(around(&streets), [None]);
    let mut plan = plan(&four_streets(200_000, 100_000)[..3]);
    let corners = [
        (-10_000, -10_000),
        (210_000, -10_000),
        (210_000, 110_000),
        (-10_000, 110_000),
    ];
    plan.site.boundary = corners.map(|(x, y)| PlanPoint::new(x, y)).into();
    assert_eq!(outlines(&fabric_of(&plan)), [None]);
}

#[test]
fn a_block_narrower_than_its_streets_has_no_outline() {
    assert_eq!(around(&four_streets(200_000, -6_000)), [None]);
}

#[test]
fn a_street_that_becomes_wider_makes_a_step() {
    // The south street is 20 m wide to the west of x = 80 m and 30 m to the east.
    let mut streets = four_streets(200_000, 100_000);
    streets[0].0 = street(&[(-50_000, -10_000), (80_000, -10_000)]);
    streets.push((street(&[(80_000, -10_000), (250_000, -10_000)]), 30_000));
    // The step of 5 m is one side more and one less.
    check(around(&streets)[0].as_ref(), 600_000.0, 205_000.0);
}

#[test]
fn a_bend_rounded_closer_than_the_right_of_way_is_sharp_inside() {
    let mut ring = street(&[(0, 0), (220_000, 0), (220_000, 120_000), (0, 120_000), (0, 0)]);
    for vertex in &mut ring.line[1..4] {
        vertex.corner_radius_mm = 6_000;
    }
    check(around(&[(ring, 20_000)])[0].as_ref(), 600_000.0, 200_000.0);
}

/// A ring of streets around a random star, some bends rounded, with rights-of-way of random widths.
fn random_ring(random: &mut u64) -> Vec<(Street, u32)> {
    let mut within = |low: i32, high: i32| {
        *random = random
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        low + ((*random >> 33) % (high - low + 1) as u64) as i32
    };
    let corners: i32 = within(4, 12);
    let points: Vec<(i32, i32)> = (0..corners)
        .map(|corner| {
            let angle =
                std::f64::consts::TAU * (f64::from(corner) + f64::from(within(-20, 20)) / 100.0) / f64::from(corners);
            let reach = f64::from(within(70_000, 160_000));
            let along = |unit: f64| (reach * unit).round() as i32;
            (along(number::cos(angle)), along(number::sin(angle)))
        })
        .collect();
    let at = |corner: usize| points[corner % points.len()];
    let mut streets = Vec::new();
    let mut corner = 0;
    while corner < points.len() {
        let last = (corner + within(1, 3) as usize).min(points.len());
        let line: Vec<(i32, i32)> = (corner..=last).map(at).collect();
        let mut drawn = street(&line);
        let count = drawn.line.len();
        for vertex in &mut drawn.line[1..count - 1] {
            vertex.corner_radius_mm = [0, 4_000, 15_000, 40_000][within(0, 3) as usize];
        }
        streets.push((drawn, within(4, 24) as u32 * 1_000));
        corner = last;
    }
    streets
}

/// Beside the outline worked corner by corner stands the boolean operation on integer polygons that gives a face its
/// land: for a block of one face without dead ends both are the same boundary.
#[test]
fn outlines_agree_with_the_boolean_operation() {
    let mut random = 7;
    let (mut compared, mut with_steps) = (0, 0);
    for case in 0..400 {
        let streets = random_ring(&mut random);
        let fabric = fabric_of(&plan(&streets));
        let found = outlines(&fabric);
        let ([Some(outline)], [face]) = (found.as_slice(), fabric.faces.as_slice()) else {
            continue;
        };
        // Land in two pieces is the neck that the outline does not see.
        let [piece] = face.land.pieces.as_slice() else { continue };
        let ring = &piece[0];
        let length_mm: f64 = ring
            .iter()
            .zip(ring.iter().cycle().skip(1))
            .map(|(a, b)| a.distance_um(*b) as f64 / 1e3)
            .sum();
        // Every vertex of the operation is rounded to a millimeter.
        let tolerance_mm = 2.0 * ring.len() as f64 + 2.0;
        assert!(
            (outline.lengths.perimeter_mm - length_mm).abs() <= tolerance_mm,
            "case {case}: {} instead of {length_mm}: {streets:?}",
            outline.lengths.perimeter_mm
        );
        compared += 1;
        with_steps += i32::from(streets.iter().any(|(_, width_mm)| *width_mm != streets[0].1));
    }
    assert!(
        compared > 300 && with_steps > 200,
        "{compared} compared, {with_steps} of them of unlike widths"
    );
}
