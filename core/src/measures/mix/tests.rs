use crate::figures::Evaluation;
use crate::measures::form::tests::{
    at, check, feet, measured, number, plan, portions_of, rectangle_ft, street, use_at,
};
use crate::plan::building::{FloorUse, LandUse};
use crate::plan::{BuildingTypeId, Document, Mark, SoftArea};

/// A building with workrooms below offices, a shop with a home above it: ids of the default palette.
const WORKSHOP: u32 = 9;
const CORNER_STORE: u32 = 8;

/// A block of one building type within its streets.
fn block_of(building_type: u32) -> Document {
    let ring = [(100, 100), (500, 100), (500, 400), (100, 400), (100, 100)].map(|(x, y)| feet(x, y));
    let marks = vec![street(&ring, 50), use_at(feet(300, 250), &[(building_type, 100)])];
    plan(rectangle_ft(0, 0, 600, 500), marks)
}

fn soft_area_of(building_type: u32) -> Document {
    let outline = rectangle_ft(0, 0, 600, 500);
    let soft = Mark::SoftArea(SoftArea {
        outline: outline.clone(),
        program: portions_of(&[(building_type, 100)]),
        land_use: LandUse::Business,
        intensity_ppm: 1_000_000,
        phase: None,
    });
    plan(outline, vec![soft])
}

/// The jobs of a plan, by the lots it has of a building type.
fn jobs_per_lot(evaluation: &Evaluation, lots: &str, building_type: u32) -> f64 {
    let lots = at(evaluation, lots, &format!("type_{building_type}"));
    assert!(lots > 0.0, "there are lots");
    number(evaluation, "jobs.count") / lots
}

#[test]
fn jobs_are_those_the_building_types_say_in_drawn_blocks_and_soft_areas_alike() {
    // 400 m² at 50 m² a job below 400 m² of 431 jobs to a hectare; 120 m² of shop at 196 to a hectare.
    for (building_type, by_hand) in [(WORKSHOP, 8.0 + 17.24), (CORNER_STORE, 2.352)] {
        let drawn = measured(&block_of(building_type));
        check(
            "drawn",
            jobs_per_lot(&drawn, "lots.by_building_type", building_type),
            by_hand,
            1e-9,
        );
        let rough = measured(&soft_area_of(building_type));
        let per_lot = jobs_per_lot(&rough, "lots.soft_by_building_type", building_type);
        check("rough", per_lot, by_hand, 1e-9);
        check(
            "jobs.soft",
            number(&rough, "jobs.soft"),
            number(&rough, "jobs.count"),
            1e-9,
        );
    }
}

#[test]
fn what_is_said_of_a_building_types_jobs_moves_the_figure() {
    for plan_of in [block_of, soft_area_of] {
        let document = plan_of(CORNER_STORE);
        let before = number(&measured(&document), "jobs.count");
        let with_jobs = |jobs: [u32; 2]| {
            let mut changed = document.clone();
            let held = changed.building_types.get_mut(&BuildingTypeId(CORNER_STORE)).unwrap();
            for (story, jobs) in held.stories.iter_mut().zip(jobs) {
                story.jobs_per_floor_hectare = jobs;
            }
            number(&measured(&changed), "jobs.count")
        };
        check("twice the jobs", with_jobs([392, 0]), 2.0 * before, 1e-9);
        check("work at home is not counted", with_jobs([196, 500]), before, 1e-12);
        check("no jobs", with_jobs([0, 0]), 0.0, 0.0);
    }
}

#[test]
fn uses_and_workplaces_stand_in_the_order_of_floor_uses() {
    use crate::measures::count::WORKPLACES;
    let document = block_of(CORNER_STORE);
    let evaluation = measured(&document);
    let shops = at(&evaluation, "jobs.by_workplace", "shops");
    assert!(shops > 0.0 && (shops - number(&evaluation, "jobs.count")).abs() < 1e-12);
    assert!(WORKPLACES.iter().all(|floor_use| floor_use.holds_jobs()));
    assert_eq!(WORKPLACES[1], FloorUse::Shop);
}
