use super::*;
use crate::plan::document::{Alternative, Heading, Settings, Site, UnitSystem};
use crate::plan::land::{ConstraintArea, ConstraintKind, Fronting, Hand, Portion};
use crate::plan::street::{Status, StreetOwner};
use crate::plan::{
    BuildingTypeId, SideUse, Street, StreetRole, StreetSection, StreetSectionId, Strip, StripKind, Vertex,
};

const ONLY: AlternativeId = AlternativeId(0);

fn p(x_m: i32, y_m: i32) -> PlanPoint {
    PlanPoint::new(x_m * 1000, y_m * 1000)
}

fn section(width_m: u32) -> StreetSection {
    StreetSection {
        name: format!("{width_m} m"),
        strips: vec![Strip {
            kind: StripKind::Travel,
            width_mm: width_m * 1000,
        }],
        target_speed_km_h: 30,
        walkable: true,
        cyclable: true,
        drivable: true,
        fronts_left: true,
        fronts_right: true,
    }
}

fn street(points: &[(i32, i32)], section: u32) -> Mark {
    Mark::Street(Street {
        line: points.iter().map(|(x, y)| Vertex::at(p(*x, *y))).collect(),
        section: StreetSectionId(section),
        name: String::new(),
        role: StreetRole::NeighborhoodStreet,
        owner: StreetOwner::Town,
        status: Status::New,
        is_outside: false,
        level: 0,
        phase: None,
    })
}

fn document(marks: Vec<Mark>, boundary: &[(i32, i32)]) -> Document {
    let marks = (0..).map(MarkId).zip(marks).collect();
    Document {
        heading: Heading {
            name: String::new(),
            about: String::new(),
            origin_longitude_ndeg: 0,
            origin_latitude_ndeg: 0,
        },
        site: Site {
            boundary: boundary.iter().map(|(x, y)| p(*x, *y)).collect(),
        },
        program: Vec::new(),
        street_sections: [(StreetSectionId(10), section(10)), (StreetSectionId(20), section(20))].into(),
        building_types: OrderedMap::new(),
        phases: OrderedMap::new(),
        settings: Settings {
            walking_pace_mm_per_s: 1341,
            units: UnitSystem::Metric,
            chosen: OrderedMap::new(),
            overridden_factors: OrderedMap::new(),
            rule_lists: Vec::new(),
        },
        topography: None,
        base_image: None,
        alternatives: [(
            ONLY,
            Alternative {
                name: String::new(),
                table: String::new(),
                marks,
            },
        )]
        .into(),
    }
}

fn fabric(marks: Vec<Mark>) -> Fabric {
    Fabric::of(&document(marks, &[]), ONLY, &mut LandCache::default())
}

const SQUARE: [(i32, i32); 5] = [(0, 0), (100, 0), (100, 80), (0, 80), (0, 0)];

#[test]
fn land_is_the_face_less_half_right_of_ways() {
    let fabric = fabric(vec![street(&SQUARE, 20)]);
    assert_eq!(fabric.faces.len(), 1);
    assert_eq!(fabric.faces[0].land.twice_area_mm2, 2 * 80_000 * 60_000);
}

#[test]
fn a_dead_end_takes_its_width_and_a_square_head() {
    let fabric = fabric(vec![street(&SQUARE, 20), street(&[(50, 0), (50, 40)], 10)]);
    // From the edge of the street at y = 10 to the head at y = 40, and half a width beyond.
    let taken_mm2 = 10_000 * 35_000;
    assert_eq!(fabric.faces[0].land.twice_area_mm2, 2 * (80_000 * 60_000 - taken_mm2));
}

#[test]
fn an_inward_corner_is_mitered() {
    // An L: the inward corner at (50, 40) sends its two strips out to a square corner.
    let l_shape = [(0, 0), (100, 0), (100, 40), (50, 40), (50, 80), (0, 80), (0, 0)];
    let fabric = fabric(vec![street(&l_shape, 20)]);
    let expected_mm2 = 80_000 * 20_000 + 30_000 * 40_000;
    assert_eq!(fabric.faces[0].land.twice_area_mm2, 2 * expected_mm2);
}

#[test]
fn land_held_back_is_taken_away_once() {
    let outline = vec![p(40, 30), p(60, 30), p(60, 200), p(40, 200)];
    let held_back = |outline: Vec<PlanPoint>| {
        Mark::Constraint(ConstraintArea {
            name: String::new(),
            outline,
            kind: ConstraintKind::Wetland,
            is_buildable: false,
            counts_in_site: true,
            counts_in_buildable: false,
            is_walkable: false,
        })
    };
    let mut turned = outline.clone();
    turned.reverse();
    let fabric = fabric(vec![street(&SQUARE, 20), held_back(outline), held_back(turned)]);
    assert_eq!(
        fabric.faces[0].land.twice_area_mm2,
        2 * (80_000 * 60_000 - 20_000 * 40_000)
    );
}

#[test]
fn a_face_inside_a_face_is_a_hole_of_its_land() {
    let inner = [(30, 30), (70, 30), (70, 50), (30, 50), (30, 30)];
    let fabric = fabric(vec![street(&SQUARE, 20), street(&inner, 10)]);
    let mut areas: Vec<i128> = fabric.faces.iter().map(|face| face.land.twice_area_mm2).collect();
    areas.sort_unstable();
    assert_eq!(areas, [2 * 30_000 * 10_000, 2 * (80_000 * 60_000 - 50_000 * 30_000)]);
}

#[test]
fn the_wider_of_two_overlapping_streets_carries_the_edge() {
    let fabric = fabric(vec![street(&[(0, 0), (100, 0)], 10), street(&[(100, 0), (0, 0)], 20)]);
    assert_eq!(fabric.links.links.len(), 1);
    assert_eq!(
        fabric.lines.streets[fabric.links.links[0].street as usize].mark,
        MarkId(1)
    );
    assert_eq!(fabric.carriers[0].map(|carrier| carrier.is_along), Some(false));
    assert_eq!(fabric.arrangement.sources(super::super::EdgeId(0)).len(), 2);
}

#[test]
fn a_street_that_passes_over_shares_land_but_no_node() {
    let crossing = |level: i8| {
        let mut over = street(&[(50, -50), (50, 130)], 10);
        if let Mark::Street(street) = &mut over {
            street.level = level;
        }
        fabric(vec![street(&SQUARE, 20), over])
    };
    let (joined, passing) = (crossing(0), crossing(1));
    assert_eq!((joined.faces.len(), passing.faces.len()), (2, 2));
    // Four corners of the square are bends; the crossings at (50, 0) and (50, 80) make two nodes or four.
    assert_eq!(passing.links.nodes.len(), joined.links.nodes.len() + 2);
    assert_eq!(passing.links.links.len(), joined.links.links.len());
}

#[test]
fn a_raised_street_joins_where_it_ends() {
    let mut ramp = street(&[(50, 0), (50, 40)], 10);
    if let Mark::Street(street) = &mut ramp {
        street.level = 1;
    }
    let fabric = fabric(vec![street(&[(0, 0), (100, 0)], 20), ramp]);
    assert_eq!(fabric.links.nodes.len(), 4);
}

#[test]
fn sides_end_at_corners_and_name_their_street_and_hand() {
    let fabric = fabric(vec![street(&SQUARE, 20), street(&[(50, 0), (50, 80)], 10)]);
    let left = fabric.face_at(p(20, 40)).unwrap();
    assert_eq!(left.sides.len(), 4);
    let streets: Vec<_> = left.sides.iter().map(|side| sides_street(&fabric, side)).collect();
    assert_eq!(
        streets.iter().filter(|held| **held == (MarkId(0), Hand::Left)).count(),
        3
    );
    assert_eq!(
        streets.iter().filter(|held| **held == (MarkId(1), Hand::Left)).count(),
        1
    );
    let said = SideUse {
        street: MarkId(0),
        hand: Hand::Left,
        at: p(0, 41),
        fronting: Fronting::None,
        building_type: None,
        shopfront: false,
        stories: None,
        setback_mm: None,
    };
    let side = super::super::sides::side_spoken_of(&fabric.arrangement, &fabric.lines, &left.sides, &said).unwrap();
    assert_eq!(left.sides[side].length_um, 80_000_000);
    assert_eq!(
        super::super::sides::middle_of(&fabric.arrangement, &left.sides[side]),
        Some(p(0, 40))
    );
}

fn sides_street(fabric: &Fabric, side: &super::super::sides::Side) -> (MarkId, Hand) {
    super::super::sides::street_mark(&fabric.lines, side).unwrap()
}

#[test]
fn blocks_join_across_alleys_only() {
    let mut alley = street(&[(50, 0), (50, 80)], 10);
    if let Mark::Street(street) = &mut alley {
        street.role = StreetRole::Alley;
    }
    let fabric = fabric(vec![street(&SQUARE, 20), alley, street(&[(0, 60), (100, 60)], 10)]);
    let sizes: Vec<usize> = fabric.blocks.iter().map(Vec::len).collect();
    assert_eq!((fabric.faces.len(), sizes), (4, vec![2, 2]));
}

#[test]
fn faces_beyond_the_boundary_are_not_in_the_site() {
    let marks = vec![
        street(&SQUARE, 20),
        street(&[(150, 0), (250, 0), (250, 80), (150, 80), (150, 0)], 20),
    ];
    let document = document(marks, &[(-20, -20), (120, -20), (120, 100), (-20, 100)]);
    let fabric = Fabric::of(&document, ONLY, &mut LandCache::default());
    let is_in = |x, y| fabric.face_at(p(x, y)).map(|face| face.is_in_site);
    assert_eq!(
        (is_in(50, 40), is_in(-10, 40), is_in(200, 40)),
        (Some(true), Some(true), Some(false))
    );
}

#[test]
fn land_from_the_cache_is_the_land_worked_out_anew() {
    let mut cache = LandCache::default();
    let before = document(vec![street(&SQUARE, 20), street(&[(50, 0), (50, 80)], 10)], &[]);
    let after = document(
        vec![
            street(&SQUARE, 20),
            street(&[(50, 0), (60, 80)], 10),
            street(&[(100, 40), (150, 40)], 10),
        ],
        &[],
    );
    let lands = |fabric: &Fabric| {
        fabric
            .faces
            .iter()
            .map(|face| face.land.as_ref().clone())
            .collect::<Vec<_>>()
    };
    for document in [&before, &after, &before, &before] {
        let cached = Fabric::of(document, ONLY, &mut cache);
        assert_eq!(
            lands(&cached),
            lands(&Fabric::of(document, ONLY, &mut LandCache::default()))
        );
    }
}

#[test]
fn the_least_mark_speaks_for_a_face_and_marks_outside_sleep() {
    let use_at = |x: i32, y: i32| {
        Mark::Use(UseMark {
            anchor: p(x, y),
            program: vec![Portion {
                building_type: BuildingTypeId(1),
                share_ppm: 1_000_000,
            }],
            land_m2: 0,
            sides: Vec::new(),
            phase: None,
        })
    };
    let fabric = fabric(vec![
        street(&SQUARE, 20),
        use_at(20, 20),
        use_at(30, 30),
        use_at(500, 500),
    ]);
    assert_eq!(fabric.faces[0].use_mark, Some(MarkId(1)));
    assert_eq!(
        fabric.face_of_mark.keys().copied().collect::<Vec<_>>(),
        [MarkId(1), MarkId(2)]
    );
}

#[test]
fn a_removed_street_divides_nothing() {
    let mut across = street(&[(50, 0), (50, 80)], 10);
    if let Mark::Street(street) = &mut across {
        street.status = Status::Removed;
    }
    let fabric = fabric(vec![street(&SQUARE, 20), across]);
    assert_eq!((fabric.faces.len(), fabric.links.links.len()), (1, 1));
}

#[test]
fn a_dead_end_has_a_side_on_either_hand() {
    let fabric = fabric(vec![street(&SQUARE, 20), street(&[(50, 0), (50, 40)], 10)]);
    let along: Vec<_> = fabric.faces[0]
        .sides
        .iter()
        .filter(|side| sides_street(&fabric, side).0 == MarkId(1))
        .map(|side| (sides_street(&fabric, side).1, side.length_um))
        .collect();
    assert_eq!(along, [(Hand::Left, 40_000_000), (Hand::Right, 40_000_000)]);
    assert!(
        fabric.faces[0]
            .sides
            .iter()
            .all(|side| super::super::sides::section_lets_front(&fabric.lines, side))
    );
}

#[test]
fn a_face_too_thin_for_a_point_is_anchored_at_a_corner() {
    let mut thin = street(&[(0, 0), (100, 0)], 10);
    if let Mark::Street(street) = &mut thin {
        street.line = [(0, 0), (1_000, 1), (2_001, 1), (0, 0)]
            .map(|(x, y)| Vertex::at(PlanPoint::new(x, y)))
            .to_vec();
    }
    let fabric = fabric(vec![thin]);
    assert_eq!(fabric.faces.len(), 1);
    assert_eq!(crate::fabric::anchor_of(&fabric.arrangement, fabric.faces[0].id), None);
    assert!(fabric.arrangement.vertices().contains(&fabric.faces[0].anchor));
}

#[test]
fn lines_brought_up_to_a_document_are_the_lines_drawn_anew() {
    let rounded = |radius_m: u32| {
        let Mark::Street(mut held) = street(&[(0, 0), (100, 0), (100, 80)], 20) else {
            unreachable!("a street was made");
        };
        held.line[1].corner_radius_mm = radius_m * 1000;
        Mark::Street(held)
    };
    let other = |change: fn(&mut Street)| {
        let Mark::Street(mut held) = street(&SQUARE, 20) else {
            unreachable!("a street was made");
        };
        change(&mut held);
        Mark::Street(held)
    };
    let across = || street(&[(50, 0), (50, 80)], 10);
    // Of each plan: its marks, and whether it is drawn otherwise than the one before.
    let plans = [
        (vec![street(&SQUARE, 20), across(), rounded(0)], true),
        (vec![street(&SQUARE, 20), across(), rounded(0)], false),
        (vec![street(&SQUARE, 20), across(), rounded(30)], true),
        (vec![street(&SQUARE, 20), across(), rounded(30)], false),
        (vec![street(&SQUARE, 20), across(), rounded(20)], true),
        (vec![street(&SQUARE, 20), across(), rounded(0)], true),
        (vec![other(|street| street.level = 1), across(), rounded(0)], true),
        (
            vec![other(|street| street.name = "Elm".to_owned()), across(), rounded(0)],
            true,
        ),
        (vec![street(&SQUARE, 20), across(), rounded(0)], false),
        (vec![street(&SQUARE, 10), across(), rounded(0)], true),
        (
            vec![other(|street| street.status = Status::Removed), across(), rounded(0)],
            true,
        ),
        (vec![street(&SQUARE, 30), across(), rounded(0)], false),
        (vec![across(), rounded(0)], true),
        (vec![across()], true),
        (vec![across(), across()], true),
        (vec![street(&[(50, 0), (50, 0), (50, 80)], 10), across()], false),
        (Vec::new(), true),
    ];
    let mut lines = DrawnLines::default();
    for (place, (marks, is_other)) in plans.into_iter().enumerate() {
        let document = document(marks, &[]);
        let streets = || {
            let marks = &document.alternatives[&ONLY].marks;
            marks.iter().filter_map(|(id, mark)| Some((*id, mark.as_street()?)))
        };
        assert_eq!(lines.renew(&document, &mut streets(), &[]), is_other, "plan {place}");
        assert_eq!(lines, DrawnLines::of(&document, streets(), &[]), "plan {place}");
    }
    let mut moved = document(vec![across()], &[(0, 0), (100, 0), (100, 80)]);
    let street = across();
    let streets = || street.as_street().map(|street| (MarkId(0), street)).into_iter();
    for is_other in [true, false] {
        assert_eq!(lines.renew(&moved, &mut streets(), &[]), is_other, "a boundary");
    }
    moved.site.boundary[1].x_mm += 1;
    assert!(lines.renew(&moved, &mut streets(), &[]), "a boundary moved");
    assert_eq!(lines, DrawnLines::of(&moved, streets(), &[]));
}
