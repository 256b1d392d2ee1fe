use super::test_plans::{ONLY, access, alley, counted, fabric_of, homes, land, outside, p, path, plan, street};
use super::*;
use crate::figures::Cell;
use crate::plan::land::{ConstraintArea, ConstraintKind};
use crate::plan::{Mark, Street, StreetRole};

/// What an invented village counts: two sections, three blocks, two ways in.
pub(crate) fn village() -> StreetInputs {
    let place = |title: &str, count| CountedPlace {
        title: title.to_owned(),
        at: PlanPoint::new(1_000, 2_000),
        count,
    };
    let block = |perimeter_m, longest_side_m| BlockCount {
        at: PlanPoint::new(40_000, 30_000),
        perimeter_m,
        longest_side_m,
    };
    let rules = COUNTING_RULES.iter().map(|rule| RuleCount {
        intersections: [1, 14, 6],
        heads: if counts_heads(rule) { 9 } else { 0 },
        link_halves: 85,
        land_m2: Some(412_345.0),
        points: vec![PlanPoint::new(0, 0); 30],
    });
    StreetInputs {
        sections: vec![Entry::new("section_0", "Main street"), Entry::new("section_5", "Alley")],
        length_m: [vec![4_120.25, 0.0], vec![0.0, 812.5], vec![33.0, 0.0]],
        rules: rules.collect(),
        parts: vec![place("streets at the square", 26.0), place("streets at the mill", 4.0)],
        part_links: vec![38.0, 4.0],
        dead_ends: vec![place("Mill Lane", 61.5), place("Weir Lane", 120.25)],
        ways: Ways {
            ways_in: vec![place("Marsh Road", 1.0), place("Long Lane", 2.0)],
            streets_leading_in: vec![0, 2],
            behind: vec![
                place("Marsh Road", 0.0),
                place("Long Lane", 0.0),
                place("Weir Lane", 17.0),
            ],
            homes_cut_off: 3.0,
            homes_on_paths: 2.0,
            homes_without_front: 0.0,
        },
        boundary_gaps: vec![place("from Marsh Road", 610.0), place("from Long Lane", 733.5)],
        sides: super::street_sides::StreetSides {
            enclosed_m: 1_250.5,
            lined_m: 3_000.0,
            widest_crossing_m: Some(10.4),
            by_grade_m: Some([4_000.0, 120.5, 33.0]),
        },
        standing_m2: 2_345.5,
        frontage_m: [5_000.0, 800.0, 120.0, 900.0, 1_420.5],
        blocks: vec![block(420.0, 130.0), block(512.75, 171.0), block(388.0, 121.5)],
        east_west_m: 1_733.0,
        east_west_blocks: 2,
        solar_lots: (214.0, 131.0),
    }
}

/// A site of 400 × 300 m with a road outside along its south edge.
const SITE: [(i32, i32); 4] = [(0, 0), (400, 0), (400, 300), (0, 300)];

fn road() -> Street {
    outside(&[(-200, 0), (600, 0)])
}

fn row<'a>(counted: &'a StreetInputs, rule: &str) -> &'a RuleCount {
    let place = COUNTING_RULES.iter().position(|held| held.id == rule).unwrap();
    &counted.rules[place]
}

fn nodes_of(row: &RuleCount) -> u32 {
    row.intersections.iter().sum::<u32>() + row.heads
}

#[track_caller]
fn near(value: f64, expected: f64) {
    assert!((value - expected).abs() < 1e-6, "{value} is not {expected}");
}

fn total(lengths: &[f64]) -> f64 {
    lengths.iter().sum()
}

#[test]
fn streets_count_inside_the_site_and_along_its_edge() {
    let streets = [
        road(),
        // Up from the road, across the site's north edge and on.
        street(&[(100, 0), (100, 350)]),
        // Along the east edge, and beyond it.
        street(&[(400, 0), (400, 300)]),
        street(&[(450, 0), (450, 200)]),
        alley(&[(100, 150), (250, 150)]),
        path(&[(250, 150), (250, 320)]),
    ];
    let counted = counted(&plan(&streets, &[], &SITE));
    let [ways, alleys, paths] = &counted.length_m;
    near(total(ways), 300.0 + 300.0);
    near(total(alleys), 150.0);
    near(total(paths), 150.0);
    // The neighborhood street is the third section of the palette, the alley the sixth, the path the seventh.
    let of_section = [ways[2], alleys[5], paths[6]].map(|length_m| length_m.round() as u32);
    assert_eq!(of_section, [600, 150, 150]);
    // Frontage lies on both sides of the first, and on the inner side of the one along the edge.
    near(total(&counted.frontage_m), 600.0 + 300.0);
}

#[test]
fn without_a_boundary_every_street_not_marked_outside_is_inside() {
    let counted = counted(&plan(&[road(), street(&[(100, 0), (100, 350)])], &[], &[]));
    near(total(&counted.length_m[0]), 350.0);
    near(total(&counted.frontage_m), 700.0);
    assert_eq!(row(&counted, "textbook").land_m2, None);
}

#[test]
fn land_of_streets_that_stand_is_their_length_by_their_width_inside_the_site() {
    let standing = |status, points: &[(i32, i32)]| Street {
        status,
        ..street(points)
    };
    let streets = [
        standing(Status::Existing, &[(100, 0), (100, 300)]),
        standing(Status::Kept, &[(0, 0), (400, 0)]),
        standing(Status::Removed, &[(200, 10), (200, 300)]),
        street(&[(300, 10), (300, 300)]),
    ];
    let document = plan(&streets, &[], &SITE);
    let width_m = f64::from(document.street_sections[&streets[0].section].right_of_way_mm()) / 1e3;
    // Of the one along the edge half lies inside.
    near(counted(&document).standing_m2, (300.0 + 400.0 / 2.0) * width_m);
}

/// Check case N-A2, drawn: 3 × 3 crossings, and every street crosses the site's edge. Derived from the rule of Orlando FL
/// code s 68.404 "Connectivity Index".
#[test]
fn n_a2_three_by_three_drawn_with_and_without_outer_links() {
    let lines = [100, 200, 300].map(|at| [street(&[(at, -50), (at, 450)]), street(&[(-50, at), (450, at)])]);
    let streets = lines.concat();
    let site = [(0, 0), (400, 0), (400, 400), (0, 400)];
    let counted = counted(&plan(&streets, &[], &site));
    let orlando = row(&counted, "orlando-68-404");
    assert_eq!((nodes_of(orlando), orlando.link_halves), (9, 48));
    let textbook = row(&counted, "textbook");
    assert_eq!((nodes_of(textbook), textbook.link_halves), (9, 24));
    assert_eq!(orlando.intersections, [0, 0, 9]);
    near(orlando.land_m2.unwrap(), 160_000.0);
    assert_eq!(counted.counted_points("textbook").len(), 9);
    assert_eq!(counted.counted_points("textbook")[0], p(100, 100));
    assert_eq!(counted.counted_points("no-such-rule"), []);
}

/// Check case N-A6, drawn: four through junctions, and one whose stem serves only a cul-de-sac. Derived from the
/// definition of intersection density in LEED 2009 for Neighborhood Development (credit SLLc1).
#[test]
fn n_a6_four_through_junctions_and_one_that_serves_a_dead_end_drawn() {
    let mut streets = Vec::new();
    for at in [100, 200] {
        streets.push(street(&[(at, -50), (at, 350)]));
        streets.push(street(&[(-50, at), (350, at)]));
    }
    streets.push(street(&[(150, 100), (150, 150)]));
    let site = [(0, 0), (300, 0), (300, 300), (0, 300)];
    let counted = counted(&plan(&streets, &[], &site));
    assert_eq!(row(&counted, "leed-nd-intersections").intersections, [0, 0, 4]);
    assert_eq!(row(&counted, "cary-7-10-3").intersections, [0, 1, 4]);
    assert_eq!(row(&counted, "cary-7-10-3").heads, 1);
}

#[test]
fn a_change_of_section_is_no_node_and_a_corner_of_two_streets_is_where_the_rule_says() {
    let wide = Street {
        section: crate::plan::StreetSectionId(0),
        ..street(&[(200, 100), (300, 110)])
    };
    let corner = [street(&[(300, 110), (300, 250)]), street(&[(100, 100), (100, 250)])];
    let mut streets = vec![street(&[(100, 100), (200, 100)]), wide];
    streets.extend(corner);
    let counted_of = |streets: &[Street]| counted(&plan(streets, &[], &SITE));
    let plain = counted_of(&streets);
    // Straight on into the other section is the same road; round the corner it is another.
    assert_eq!(row(&plain, "orlando-68-404").intersections, [2, 0, 0]);
    assert_eq!(row(&plain, "cary-7-10-3").intersections, [0; 3]);
    assert_eq!(row(&plain, "cary-7-10-3").heads, 2);
    assert_eq!(row(&plain, "cary-7-10-3").link_halves, 2);
    // One name from end to end makes one road of it.
    for street in &mut streets {
        street.name = "Mill Street".to_owned();
    }
    assert_eq!(row(&counted_of(&streets), "orlando-68-404").intersections, [0; 3]);
}

#[test]
fn ends_at_the_edge_are_told_apart() {
    let ends_at_edge = street(&[(200, 150), (200, 300)]);
    let ends_near_edge = street(&[(200, 150), (200, 295)]);
    let ends_past_edge = street(&[(200, 150), (200, 303)]);
    let ends_well_inside = street(&[(200, 150), (200, 260)]);
    let crosses = street(&[(200, 150), (200, 360)]);
    let base = [
        road(),
        street(&[(200, 0), (200, 150)]),
        street(&[(100, 150), (300, 150)]),
    ];
    let of = |last: &Street, others: &[Mark]| {
        let mut streets = base.to_vec();
        streets.push(last.clone());
        let counted = counted(&plan(&streets, others, &SITE));
        // Halves of links by a rule with stubs, heads, ways in, dead ends. The two arms of the cross street end blind.
        let row = row(&counted, "cary-7-10-3");
        (
            row.link_halves,
            row.heads,
            counted.ways.ways_in.len(),
            counted.dead_ends.len(),
        )
    };
    for stub in [&ends_at_edge, &ends_near_edge, &ends_past_edge] {
        assert_eq!(of(stub, &[]), (6, 2, 1, 2), "{:?}", stub.line);
    }
    assert_eq!(of(&ends_well_inside, &[]), (6, 3, 1, 3));
    assert_eq!(of(&crosses, &[]), (4, 2, 2, 2));
    // An access where it ends makes it a way out; one elsewhere does not.
    assert_eq!(of(&ends_at_edge, &[access((205, 306), "North")]), (4, 2, 2, 2));
    assert_eq!(of(&ends_at_edge, &[access((240, 300), "North")]), (6, 2, 1, 2));
}

#[test]
fn dead_ends_reach_to_the_first_crossing() {
    let streets = [
        road(),
        street(&[(100, 0), (100, 250)]),
        // Two pieces end to end, an alley aside, a path on from the head.
        street(&[(100, 100), (160, 100)]),
        street(&[(160, 100), (220, 180)]),
        path(&[(220, 180), (220, 299)]),
        alley(&[(300, 100), (300, 200)]),
        // Loose, blind at both ends.
        street(&[(330, 100), (330, 140)]),
    ];
    let counted = counted(&plan(&streets, &[], &SITE));
    let lengths: Vec<u32> = counted
        .dead_ends
        .iter()
        .map(|place| place.count.round() as u32)
        .collect();
    assert_eq!(lengths, [150, 160, 40]);
    let longest = counted.longest_dead_end().unwrap();
    assert_eq!(
        (longest.at, longest.title.as_str()),
        (p(220, 180), "dead end at 220 m east, 180 m north")
    );
}

#[test]
fn sharp_bends_are_where_two_chords_of_a_hundred_feet_meet_at_120_degrees_or_less() {
    let bends = |line: &[(i32, i32)], radius_m: u32| {
        let mut drawn = street(line);
        for vertex in &mut drawn.line {
            vertex.corner_radius_mm = radius_m * 1_000;
        }
        let document = plan(&[drawn], &[], &[]);
        let fabric = fabric_of(&document);
        let found = bends::sharp_bends(&fabric, &SiteStreets::of(&document, ONLY, &fabric));
        found.into_iter().map(|bend| bend.at).collect::<Vec<_>>()
    };
    let right_angle = [(0, 0), (100, 0), (100, 100)];
    assert_eq!(bends(&right_angle, 0), [p(100, 0)]);
    assert_eq!(bends(&right_angle, 12).len(), 1);
    // On a circle of radius r two chords of 100 ft meet at 180° less twice the angle whose sine is 50 ft over r: at 120°
    // for a radius of 100 ft.
    let half_circle = |radius_m: i32| {
        let line = [(0, 0), (200, 0), (200, 2 * radius_m), (0, 2 * radius_m)];
        bends(&line, radius_m as u32).len()
    };
    assert_eq!([29, 30, 31, 32].map(half_circle), [1, 1, 0, 0]);
    // 130° is not sharp; nor is a bend within a chord of the street's end seen.
    assert_eq!(bends(&[(0, 0), (100, 0), (164, 77)], 0), []);
    assert_eq!(bends(&[(0, 0), (100, 0), (100, 25)], 0), []);
    // Two bends are two, unless they are nearer than a chord.
    assert_eq!(bends(&[(0, 0), (100, 0), (100, 60), (200, 60)], 0).len(), 2);
    assert_eq!(bends(&[(0, 0), (100, 0), (100, 10), (0, 10)], 0).len(), 1);
}

#[test]
fn a_sharp_bend_splits_a_link_by_the_rule_of_durham() {
    let bent = street(&[(100, 0), (100, 100), (200, 100), (200, 220)]);
    let counted = counted(&plan(&[road(), bent, street(&[(150, 220), (250, 220)])], &[], &SITE));
    let durham = row(&counted, "durham-13-6-1");
    assert_eq!(
        (durham.intersections, durham.heads, durham.link_halves),
        ([2, 1, 0], 2, 8)
    );
    let cary = row(&counted, "cary-7-10-3");
    assert_eq!((cary.intersections, cary.heads, cary.link_halves), ([0, 1, 0], 2, 4));
}

/// A ring of streets with homes within, and a stem to the road outside.
fn ring_and_stem() -> Vec<Street> {
    vec![
        road(),
        street(&[(100, 100), (300, 100), (300, 250), (100, 250), (100, 100)]),
        Street {
            name: "Mill Street".to_owned(),
            ..street(&[(200, 0), (200, 100)])
        },
    ]
}

#[test]
fn all_homes_are_behind_the_only_way_in() {
    let document = plan(&ring_and_stem(), &[land((200, 180), 0)], &SITE);
    let found = counted(&document);
    let all = homes(&document);
    assert!(all > 20.0, "{all}");
    assert_eq!(found.ways.ways_in.len(), 1);
    assert_eq!(found.ways.ways_in[0].title, "Mill Street at 200 m east, 0 m north");
    let worst = found.worst_place().unwrap();
    near(worst.count, all);
    assert_eq!(worst.at, p(200, 0));
    let titles: Vec<&str> = found.ways.behind.iter().map(|place| place.title.as_str()).collect();
    assert_eq!(
        titles,
        [
            "Mill Street at 200 m east, 0 m north",
            "Mill Street at 200 m east, 50 m north",
            "crossing at 200 m east, 100 m north"
        ]
    );
    assert_eq!(found.ways.streets_leading_in, [1]);
    // A second stem, an alley, and nothing hangs on either.
    let mut streets = ring_and_stem();
    streets.push(alley(&[(120, 0), (120, 100)]));
    let found = counted(&plan(&streets, &[land((200, 180), 0)], &SITE));
    assert_eq!(found.ways.streets_leading_in, [0, 1]);
    near(found.worst_place().unwrap().count, 0.0);
}

#[test]
fn homes_that_vehicles_do_not_reach_are_told_apart() {
    let at = |streets: &[Street]| {
        let document = plan(streets, &[land((200, 180), 0)], &SITE);
        let ways = counted(&document).ways;
        let told = ways.homes_cut_off + ways.homes_on_paths + ways.homes_without_front;
        (ways, homes(&document), told)
    };
    let streets = ring_and_stem();
    // Without the stem no street leads in; without any homes' street the homes front on a path.
    let (ways, all, _) = at(&streets[..2]);
    near(ways.homes_cut_off, all);
    assert!(ways.ways_in.is_empty() && ways.behind.is_empty());
    let ring = Street {
        section: path(&[]).section,
        role: StreetRole::Path,
        ..streets[1].clone()
    };
    let (ways, all, told) = at(&[road(), ring]);
    near(told, all);
    near(ways.homes_cut_off, 0.0);
}

#[test]
fn an_access_is_a_way_in_where_no_street_outside_is_drawn() {
    let mut streets = ring_and_stem();
    streets.remove(0);
    let marks = |name: &str| [land((200, 180), 0), access((203, 4), name)];
    let document = plan(&streets, &marks("South gate"), &SITE);
    let found = counted(&document);
    assert_eq!(found.ways.ways_in.len(), 1);
    assert_eq!(found.ways.ways_in[0].title, "South gate");
    near(found.worst_place().unwrap().count, homes(&document));
    // Where both are drawn they are one way in, under the access's name.
    let found = counted(&plan(&ring_and_stem(), &marks("South gate"), &SITE));
    assert_eq!(found.ways.ways_in.len(), 1);
    assert_eq!(found.ways.ways_in[0].title, "South gate");
}

#[test]
fn frontage_is_told_by_the_ground_floor() {
    // The ring's inner sides front homes; its outer sides and the stem front nothing.
    let whole_m = 2.0 * (700.0 + 100.0);
    let found = counted(&plan(&ring_and_stem(), &[land((200, 180), 0)], &SITE));
    near(total(&found.frontage_m), whole_m);
    assert!(
        found.frontage_m[0] > 0.0 && found.frontage_m[0] <= 700.0,
        "{:?}",
        found.frontage_m
    );
    near(found.frontage_m[0] + found.frontage_m[4], whole_m);
    // A park takes all sides of its block.
    let park = crate::plan::defaults::building_type_named(&plan(&[], &[], &[]).building_types, "Park").unwrap();
    let found = counted(&plan(&ring_and_stem(), &[land((200, 180), park.0)], &SITE));
    assert_eq!(
        found.frontage_m.map(|length_m| length_m.round() as u32),
        [0, 0, 0, 700, 900]
    );
}

#[test]
fn a_block_in_the_site_is_counted_and_one_outside_is_not() {
    let found = counted(&plan(&ring_and_stem(), &[], &SITE));
    assert_eq!(found.blocks.len(), 1);
    let width_m =
        f64::from(plan(&[], &[], &[]).street_sections[&crate::plan::StreetSectionId(2)].right_of_way_mm()) / 1e3;
    near(found.blocks[0].perimeter_m, 700.0 - 4.0 * width_m);
    near(found.blocks[0].longest_side_m, 200.0 - width_m);
    assert_eq!(found.east_west_blocks, 1);
    assert_eq!(found.longest_block(), Some(&found.blocks[0]));
    let beyond = [(0, 0), (400, 0), (400, 80), (0, 80)];
    assert_eq!(counted(&plan(&ring_and_stem(), &[], &beyond)).blocks, []);
}

/// Land under one published intersection density: without water and unbuildable land, parks of more than half an acre and
/// school grounds. LEED 2009 for Neighborhood Development, definition with SLLc1.
#[test]
fn water_large_parks_and_schools_are_left_out_of_the_land_of_one_rule() {
    let types = plan(&[], &[], &[]).building_types;
    let named = |name: &str| crate::plan::defaults::building_type_named(&types, name).unwrap().0;
    let land_of = |others: &[Mark]| {
        let counted = counted(&plan(&ring_and_stem(), others, &SITE));
        let [leed, cary] = ["leed-nd-intersections", "cary-7-10-3"].map(|rule| row(&counted, rule).land_m2.unwrap());
        near(cary, 120_000.0);
        120_000.0 - leed
    };
    near(land_of(&[]), 0.0);
    let pond = |is_buildable| {
        Mark::Constraint(ConstraintArea {
            name: "Pond".to_owned(),
            outline: [(320, 20), (380, 20), (380, 80), (320, 80)]
                .map(|(x, y)| p(x, y))
                .into(),
            kind: ConstraintKind::Water,
            is_buildable,
            counts_in_site: true,
            counts_in_buildable: false,
            is_walkable: false,
        })
    };
    near(land_of(&[pond(false)]), 3_600.0);
    near(land_of(&[pond(true)]), 0.0);
    // The block within the ring is 200 × 150 m less half its streets: a park of it is large.
    let park_m2 = land_of(&[land((200, 180), named("Park"))]);
    assert!(park_m2 > 20_000.0 && park_m2 < 30_000.0, "{park_m2}");
    near(land_of(&[land((200, 180), named("School"))]), park_m2);
    near(land_of(&[land((200, 180), 0)]), 0.0);
}

/// Check case N-A14: blocks of 1,200, 1,300 and 1,500 feet under a rule of 1,350 feet on average, and of 1,200, 1,300 and
/// 1,600 feet. Derived from traditional neighborhood standards, Ord. 99-23 (ecode360 42690283): an average is no maximum.
#[test]
fn n_a14_an_average_block_perimeter_is_no_largest_one() {
    let perimeters = |feet: [f64; 3]| {
        let mut measured = crate::measures::tests::village();
        for (block, feet) in measured.streets.blocks.iter_mut().zip(feet) {
            block.perimeter_m = feet * 0.3048;
        }
        let evaluation = crate::measures::tests::evaluated(&measured);
        ["blocks.perimeter_mean", "blocks.perimeter_longest"]
            .map(|id| evaluation.value(id).unwrap().number().unwrap() / 0.3048)
    };
    let [mean, longest] = perimeters([1_200.0, 1_300.0, 1_500.0]);
    assert!((mean - 1_333.3).abs() < 0.1 && mean <= 1_350.0 && longest > 1_350.0);
    let [mean, _] = perimeters([1_200.0, 1_300.0, 1_600.0]);
    assert!((mean - 1_366.7).abs() < 0.1 && mean > 1_350.0);
}

#[test]
fn figures_say_why_they_have_no_number() {
    let mut measured = crate::measures::tests::village();
    measured.streets = counted(&plan(&[], &[], &[]));
    let evaluation = crate::measures::tests::evaluated(&measured);
    let reason = |id: &str| match evaluation.value(id) {
        Some(Cell::Unknown(reason)) => reason,
        other => panic!("{id} is {other:?}"),
    };
    assert_eq!(reason("streets.most_homes_behind_one"), filled::no_way_in());
    assert_eq!(reason("blocks.perimeter_median"), "there is none");
    assert_eq!(reason("streets.longest_dead_end"), "there is none");
    assert_eq!(reason("streets.alpha"), "there are fewer than three nodes");
    let density = evaluation.graph().index("streets.intersection_density").unwrap();
    assert_eq!(evaluation.cell(density, 0), Cell::Unknown(no_boundary().to_owned()));
    for id in [
        "streets.ways_in_and_out",
        "streets.dead_ends",
        "blocks.count",
        "streets.parts",
    ] {
        assert_eq!(evaluation.value(id), Some(Cell::Number(0.0)), "{id}");
    }
}

#[test]
fn nothing_drawn_is_nothing_counted() {
    let found = counted(&plan(&[], &[], &[]));
    assert_eq!(found.dead_ends.len() + found.blocks.len() + found.parts.len(), 0);
    assert_eq!(found.worst_place(), None);
    near(total(&found.frontage_m), 0.0);
}
