use crate::measures::form::tests::feet;
use crate::measures::form::tests::{at, check, measured, number, plan, portions_of, rectangle_ft, street, use_at};
use crate::plan::building::LandUse;
use crate::plan::land::{ConstraintArea, ConstraintKind, Footprint};
use crate::plan::{Certainty, Mark, Place, PlaceKind, PlanPoint, SoftArea};

const ACRE_M2: f64 = 4_046.856_422_4;

/// Default building types: a detached house, homes above shops, a school, a park, a square, a wood.
const HOUSE: u32 = 0;
const ABOVE_SHOPS: u32 = 7;
const SCHOOL: u32 = 11;
const PARK: u32 = 13;
const SQUARE: u32 = 14;
const WOOD: u32 = 15;

fn constraint(kind: ConstraintKind, outline: Vec<PlanPoint>) -> Mark {
    Mark::Constraint(ConstraintArea {
        name: String::new(),
        outline,
        kind,
        is_buildable: false,
        counts_in_site: kind != ConstraintKind::Water,
        counts_in_buildable: false,
        is_walkable: kind != ConstraintKind::Water,
    })
}

fn place(kind: PlaceKind, outline: Vec<PlanPoint>) -> Mark {
    Mark::Place(Place {
        name: String::new(),
        kind,
        footprint: Footprint::Area(outline),
        minimum_size_m2: 0,
        certainty: Certainty::Committed,
        phase: None,
    })
}

/// Case D-A1. An encyclopedia's text on density and build-out, read: 10 acres at 4 homes to the acre are 40 homes; a
/// street of 660 by 50 feet takes 0.7576 acres (there rounded to 0.75) and leaves 36.97, so 36 whole homes.
#[test]
fn a_street_through_ten_acres_leaves_land_for_thirty_six_homes() {
    let site = rectangle_ft(0, 0, 660, 660);
    let acres = |marks: Vec<Mark>, id: &str| number(&measured(&plan(site.clone(), marks)), id) / ACRE_M2;
    check(
        "homes without a street",
        4.0 * acres(Vec::new(), "land.buildable"),
        40.0,
        1e-9,
    );
    let through = || vec![street(&[feet(330, 0), feet(330, 660)], 50)];
    check("street", acres(through(), "land.right_of_way"), 0.757_6, 0.001);
    check("homes", 4.0 * acres(through(), "land.buildable"), 36.97, 0.005);
    check("site", acres(through(), "land.site"), 10.0, 1e-9);
}

/// Case D-A18. Derived from the definition: blocks of two rows of lots 110 feet deep, 1,200 feet long, right-of-way 50
/// feet, so that 1 − 2 · 110 · 1,200 / ((1,200 + 50)(2 · 110 + 50)) of the land is street.
#[test]
fn streets_around_a_block_take_the_share_their_geometry_says() {
    let module = rectangle_ft(0, 0, 1_250, 270);
    let around: Vec<PlanPoint> = module.iter().chain(module.first()).copied().collect();
    let evaluation = measured(&plan(module, vec![street(&around, 50)]));
    let expected = 1.0 - 2.0 * 110.0 * 1_200.0 / (1_250.0 * 270.0);
    check("share", number(&evaluation, "land.right_of_way_share"), expected, 1e-12);
    check("share", at(&evaluation, "land.bar_share", "streets"), 0.217_8, 0.000_05);
}

#[test]
fn every_use_goes_to_its_part_of_the_bar_and_its_kind_of_open_space() {
    let site = rectangle_ft(0, 0, 1_000, 1_000);
    let mix = [
        (HOUSE, 40),
        (ABOVE_SHOPS, 10),
        (SCHOOL, 10),
        (PARK, 15),
        (SQUARE, 5),
        (WOOD, 10),
    ];
    let evaluation = measured(&plan(site, vec![use_at(feet(500, 500), &mix)]));
    let square_m2 = 1e6 * 0.092_903_04;
    for (id, entry, share) in [
        ("land.bar", "homes", 0.4),
        ("land.bar", "shops_and_work", 0.1),
        ("land.bar", "civic", 0.1),
        ("land.bar", "green", 0.3),
        ("land.bar", "water", 0.0),
        ("land.bar", "streets", 0.0),
        ("land.bar", "unused", 0.1),
        ("land.open_space", "parks", 0.15),
        ("land.open_space", "squares", 0.05),
        ("land.open_space", "natural", 0.1),
        ("land.by_source", "blocks", 0.9),
        ("land.by_source", "nothing", 0.1),
    ] {
        check(
            &format!("{id} {entry}"),
            at(&evaluation, id, entry),
            share * square_m2,
            1e-6,
        );
    }
    check(
        "park land",
        number(&evaluation, "land.park_land"),
        0.2 * square_m2,
        1e-6,
    );
}

#[test]
fn what_rounding_leaves_of_a_full_program_is_no_land_without_a_use() {
    let mut thirds = use_at(feet(500, 500), &[(HOUSE, 0), (ABOVE_SHOPS, 0), (SCHOOL, 0)]);
    if let Mark::Use(held) = &mut thirds {
        held.program.iter_mut().for_each(|portion| portion.share_ppm = 333_333);
    }
    let evaluation = measured(&plan(rectangle_ft(0, 0, 1_000, 1_000), vec![thirds]));
    check("unused", at(&evaluation, "land.bar", "unused"), 0.0, 0.0);
}

#[test]
fn land_held_back_is_water_green_or_without_a_use() {
    // 100,000 square feet each: a pond with a marsh half over it, ground that is contaminated, the rest a park.
    let marks = vec![
        use_at(feet(900, 900), &[(PARK, 100)]),
        constraint(ConstraintKind::Wetland, rectangle_ft(0, 50, 1_000, 150)),
        constraint(ConstraintKind::Water, rectangle_ft(0, 0, 1_000, 100)),
        constraint(ConstraintKind::Contaminated, rectangle_ft(0, 500, 1_000, 600)),
    ];
    let evaluation = measured(&plan(rectangle_ft(0, 0, 1_000, 1_000), marks));
    let square_feet = |id: &str, entry: &str| at(&evaluation, id, entry) / 0.092_903_04;
    for (id, entry, expected) in [
        ("land.bar", "water", 100_000.0),
        ("land.bar", "green", 50_000.0 + 750_000.0),
        ("land.bar", "unused", 100_000.0),
        ("land.by_source", "held_back", 250_000.0),
        ("land.held_back_by_kind", "wetland", 50_000.0),
        ("land.not_in_site_by_kind", "water", 100_000.0),
        ("land.not_in_site_by_kind", "wetland", 0.0),
        ("land.not_walkable_by_kind", "water", 100_000.0),
        ("land.open_space", "held_back", 50_000.0),
    ] {
        check(&format!("{id} {entry}"), square_feet(id, entry), expected, 1e-6);
    }
    let densities = ["density.site_land", "density.buildable_land"].map(|id| number(&evaluation, id) / 0.092_903_04);
    check("site", densities[0], 900_000.0, 1e-6);
    check("buildable", densities[1], 750_000.0, 1e-6);
}

#[test]
fn places_claim_land_of_blocks_without_a_use_and_no_other() {
    let halves = |anchor: Option<PlanPoint>| {
        let mut marks = vec![
            street(&[feet(0, 500), feet(1_000, 500)], 0),
            place(PlaceKind::Park, rectangle_ft(100, 400, 200, 600)),
            place(PlaceKind::School, rectangle_ft(150, 400, 250, 600)),
            place(PlaceKind::Center, rectangle_ft(500, 0, 600, 1_000)),
        ];
        marks.extend(anchor.map(|anchor| use_at(anchor, &[(HOUSE, 100)])));
        let evaluation = measured(&plan(rectangle_ft(0, 0, 1_000, 1_000), marks));
        ["green", "civic", "homes", "unused"].map(|part| at(&evaluation, "land.bar", part) / 92.903_04)
    };
    for (part, expected) in halves(None).into_iter().zip([200.0 * 0.1, 100.0 * 0.1, 0.0, 970.0]) {
        check("no use", part, expected, 1e-6);
    }
    for (part, expected) in halves(Some(feet(500, 900))).into_iter().zip([10.0, 5.0, 500.0, 485.0]) {
        check("north painted", part, expected, 1e-6);
    }
}

#[test]
fn without_a_boundary_land_within_streets_counts() {
    let around: Vec<PlanPoint> = [(0, 0), (400, 0), (400, 300), (0, 300), (0, 0)]
        .map(|(x, y)| feet(x, y))
        .to_vec();
    let marks = vec![street(&around, 50), street(&[feet(400, 100), feet(900, 100)], 50)];
    let evaluation = measured(&plan(Vec::new(), marks));
    check("site", number(&evaluation, "land.site") / 0.092_903_04, 120_000.0, 1e-6);
    let basis = evaluation.basis(
        evaluation.graph().index("land.site").unwrap(),
        0,
        crate::figures::unit::System::Metric,
    );
    assert!(basis.to_string().contains("no site boundary is drawn"), "{basis}");
}

#[test]
fn a_soft_area_gives_its_land_to_the_parts_of_its_program() {
    let soft = |outline: Vec<PlanPoint>| {
        Mark::SoftArea(SoftArea {
            outline,
            program: portions_of(&[(HOUSE, 60), (PARK, 40)]),
            land_use: LandUse::Residential,
            intensity_ppm: 500_000,
            phase: None,
        })
    };
    let marks = vec![
        soft(rectangle_ft(0, 0, 500, 1_000)),
        soft(rectangle_ft(400, 0, 600, 1_000)),
    ];
    let evaluation = measured(&plan(rectangle_ft(0, 0, 1_000, 1_000), marks));
    // 600,000 square feet between them, half of it built as the program says.
    for (part, expected) in [("homes", 180.0), ("green", 120.0), ("unused", 700.0)] {
        check(part, at(&evaluation, "land.bar", part) / 92.903_04, expected, 1e-6);
    }
    check("soft", at(&evaluation, "land.soft", "mark_1") / 92.903_04, 100.0, 1e-6);
}
