//! The settings: walking, the rule of a town, trees, and classes of slope.

use super::*;

#[test]
fn the_settings_of_walking_are_steps_too() {
    let mut app = with_homes();
    open(&mut app, edits::WALKING);
    let defaults = app.study().document().settings.clone();
    one_step(&mut app, "Walking pace of the plan", text("4"));
    assert_eq!(app.study().document().settings.walking_pace_mm_per_s, 1219);
    one_step(&mut app, "Fewest jobs together that count as work", Change::Step(1));
    assert_eq!(
        app.study().document().settings.chosen["walk.need_work_minimum"].to_bits(),
        21.0_f64.to_bits()
    );
    one_step(&mut app, "Fewest jobs together that count as work", text("20"));
    assert!(
        app.study().document().settings.chosen.is_empty(),
        "the default is no choice"
    );
    one_step(&mut app, "Least shop floor together that counts as shops", text("2000"));
    one_step(&mut app, "Slower walkers, typical", text("2.8"));
    let own = app.study().document().settings.overridden_factors["walking.slower_speed"].clone();
    for (value, expected) in [(own.low, 2.5), (own.typical, 2.8), (own.high, 3.5)] {
        assert!(quantity::is_same(value, expected), "{own:?}");
    }
    assert_eq!(
        refused(&mut app, "Slower walkers, low", text("3")),
        "Slower walkers: low, typical and high must rise in this order."
    );
    one_step(&mut app, "Slower walkers, typical", text("3.03"));
    assert!(app.study().document().settings.overridden_factors.is_empty());
    assert!(
        line(&app, "Mean wait to cross a wide or fast street")
            .hint
            .starts_with("Default 35 s: a signal")
    );
    assert_eq!(
        refused(&mut app, "Walking pace of the plan", text("40")),
        "Walking pace of the plan: from 1 to 9 ft/s."
    );
    assert_ne!(app.study().document().settings, defaults);
    open(&mut app, edits::WALKING);
    assert!(app.editors().editor.name.is_empty(), "the button closes what it opened");
}

#[test]
fn what_a_town_allows_and_how_trees_stand_is_chosen_in_the_same_place() {
    let mut app = with_homes();
    open(&mut app, edits::WALKING);
    let chosen = |app: &App, id: &str| app.study().document().settings.chosen.get(id).copied();
    let allowed = "Homes by land that the town's rule allows";
    one_step(&mut app, allowed, text("2.25"));
    let homes = chosen(&app, "land.allowed_homes_by_land").expect("it is chosen");
    assert!(quantity::is_same(homes, 2.25 / 4_046.856_422_4), "{homes}");
    one_step(&mut app, allowed, text("0"));
    assert_eq!(chosen(&app, "land.allowed_homes_by_land"), None);
    one_step(&mut app, "Floodplain", text("100"));
    assert!(quantity::is_same(
        chosen(&app, "land.allowance_share.floodplain").unwrap(),
        1.0
    ));
    assert_eq!(
        refused(&mut app, "Floodplain", text("101")),
        "floodplain: from 0 to 100%."
    );
    one_step(&mut app, "Floodplain", text("50"));
    assert!(
        line(&app, "Floodplain").hint.contains("section 919"),
        "a share of the rule that was read"
    );
    assert!(line(&app, "Open water").hint.contains("no source"));
    one_step(&mut app, "Distance between street trees", text("60"));
    assert!(quantity::is_same(chosen(&app, "streets.tree_spacing").unwrap(), 18.288));
}

#[test]
fn borders_of_slope_classes_are_set_in_order_taken_back_and_kept() {
    let mut app = with_homes();
    open(&mut app, edits::WALKING);
    let borders = |app: &App| hobnail_core::measures::slopes::borders(app.study().document());
    assert!(line(&app, "Class 1 ends below").hint.contains("17.52"));
    one_step(&mut app, "Class 3 ends below", text("25"));
    one_step(&mut app, "Class 2 ends below", text("15"));
    assert_eq!(borders(&app), [5_000, 15_000, 25_000, 30_000]);
    for typed in ["15", "16"] {
        assert_eq!(
            refused(&mut app, "Class 1 ends below", text(typed)),
            "Each class must end at a steeper slope than the one before it."
        );
    }
    let file = hobnail_core::exchange::plan_file::write(app.study().document()).unwrap();
    let read = hobnail_core::exchange::plan_file::read(file.as_bytes()).unwrap();
    assert_eq!(read.document.settings, app.study().document().settings);
    app.undo();
    assert_eq!(borders(&app), [5_000, 8_000, 25_000, 30_000]);
    one_step(&mut app, "Class 3 ends below", text("15"));
    assert!(
        app.study().document().settings.chosen.is_empty(),
        "the default is no choice"
    );
}
