//! The program and the sides of land.

use super::*;

#[test]
fn the_program_of_land_is_changed_and_its_yield_follows() {
    let mut app = with_use();
    assert_eq!(line(&app, "Homes").value + " homes", value(&app, "homes.count"));
    assert_eq!(line(&app, "Together").value, "100%");
    one_step(&mut app, "Add a building type", Change::Pick(1));
    assert_eq!(
        use_of(&app)
            .program
            .iter()
            .map(|portion| portion.share_ppm)
            .collect::<Vec<_>>(),
        [500_000; 2]
    );
    one_step(&mut app, "Share of Detached house, large lot", text("30"));
    assert_eq!(line(&app, "Together").value, "80%, 20% without use");
    one_step(&mut app, "Fill up to 100%", Change::Pick(1));
    assert_eq!(
        use_of(&app)
            .program
            .iter()
            .map(|portion| portion.share_ppm)
            .collect::<Vec<_>>(),
        [625_000, 375_000]
    );
    one_step(&mut app, "Share of Detached house, small lot", Change::Step(1));
    assert_eq!(
        line(&app, "Share of Detached house, large lot").value,
        "35",
        "it gives what the other takes"
    );
    one_step(&mut app, "Building type 2", Change::Pick(0));
    assert_eq!(use_of(&app).program.len(), 1, "portions of one type are joined");
    assert_eq!(line(&app, "Together").value, "100%");
    assert_eq!(
        refused(&mut app, "Share of Detached house, small lot", text("101")),
        "Share: from 0 to 100%."
    );
    assert_eq!(line(&app, "Homes").value + " homes", value(&app, "homes.count"));
}

#[test]
fn shares_always_sum_to_the_whole_where_they_did() {
    let portion = |id, share_ppm| Portion {
        building_type: BuildingTypeId(id),
        share_ppm,
    };
    let mut state = 7_u32;
    for _ in 0..500 {
        let mut program = vec![portion(0, 333_334), portion(1, 333_333), portion(2, 333_333)];
        for _ in 0..5 {
            state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            let (place, share) = ((state >> 8) as usize % 3, (state >> 4) % 1_000_001);
            land::set_share(&mut program, place, share);
            assert_eq!(program[place].share_ppm, share);
            let sum: u32 = program.iter().map(|portion| portion.share_ppm).sum();
            assert!(sum <= 1_000_000, "{program:?}");
            land::fill(&mut program);
            let sum: u32 = program.iter().map(|portion| portion.share_ppm).sum();
            assert_eq!(sum, 1_000_000, "{program:?}");
        }
    }
}

#[test]
fn a_side_says_what_stands_along_it_and_is_shown_on_the_drawing() {
    let mut app = with_use();
    let sides = |app: &App| {
        lines(app)
            .into_iter()
            .filter(|line| line.key.part == Part::Side && line.key.field == land::OPEN)
    };
    let south = sides(&app)
        .find(|side| side.label.starts_with("South"))
        .expect("a side to the south");
    app.point_line(Some(south.key));
    let hints = app.pointed_side().expect("it is shown");
    let (run, half_m) = hints.side.expect("as a side");
    assert!(run.iter().all(|point| (point.y_mm + 40_000).abs() <= 1), "{run:?}");
    assert!((half_m - 8.535).abs() < 0.001);
    app.point_line(None);
    assert_eq!(app.pointed_side(), None);
    app.edit(south.key, &Change::Pick(1));
    let stories_before = line(&app, "Stories").value;
    assert_eq!(line(&app, "Jobs").value, "0");
    one_step(&mut app, "Ground floor opens as shops", Change::Pick(1));
    assert!(use_of(&app).sides[0].shopfront);
    assert_ne!(line(&app, "Jobs").value, "0", "shops hold jobs");
    one_step(&mut app, "Most stories", text("1"));
    assert_eq!(use_of(&app).sides[0].stories, Some(1));
    assert_ne!(line(&app, "Stories").value, stories_before);
    one_step(&mut app, "Setback", text("4"));
    assert_eq!(use_of(&app).sides[0].setback_mm, Some(1219));
    one_step(&mut app, "Setback", text(" "));
    assert_eq!(use_of(&app).sides[0].setback_mm, None, "empty says nothing");
    one_step(&mut app, "Setback", text("10"));
    assert_eq!(use_of(&app).sides[0].setback_mm, Some(3048), "the usual one, but said");
    one_step(&mut app, "Building type", Change::Pick(4));
    assert_eq!(use_of(&app).sides[0].building_type, Some(BuildingTypeId(3)));
    assert_eq!(
        refused(&mut app, "Most stories", text("0")),
        "Most stories: from 1 to 60."
    );
    one_step(&mut app, "How lots stand", Change::Pick(0));
    assert!(use_of(&app).sides.is_empty(), "as the street allows says nothing");
}
