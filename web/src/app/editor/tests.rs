use super::lines::Kind;
use super::quantity::{Bounded, number, signed_number};
use super::*;
use crate::app::tests::{app, click, draw, value, with_homes};
use hobnail_core::plan::defaults::NEIGHBORHOOD_STREET;
use hobnail_core::plan::document::UnitSystem;
use hobnail_core::plan::land::Portion;
use hobnail_core::plan::street::StripKind;
use hobnail_core::plan::{StreetSection, Strip, UseMark};

mod cuts;
mod settings;
mod uses;

const UNITS: [UnitSystem; 2] = [UnitSystem::Metric, UnitSystem::UsCustomary];

fn text(words: &str) -> Change {
    Change::Text(words.to_owned())
}

fn lines(app: &App) -> Vec<Line> {
    let shown = app.editors();
    shown.editor.lines.into_iter().chain(shown.cut.lines).collect()
}

/// The line with this label.
#[track_caller]
fn line(app: &App, label: &str) -> Line {
    let lines = lines(app);
    let labels: Vec<&str> = lines.iter().map(|line| line.label.as_str()).collect();
    let found = lines.iter().find(|line| line.label == label);
    found.unwrap_or_else(|| panic!("no `{label}` among {labels:?}")).clone()
}

/// Changes the line with this label.
#[track_caller]
fn change(app: &mut App, label: &str, change: Change) {
    let key = line(app, label).key;
    app.edit(key, &change);
}

/// Changes a line, expects one step of the history, and that undoing it gives the document back.
#[track_caller]
fn one_step(app: &mut App, label: &str, made: Change) {
    let before = app.study().document().clone();
    change(app, label, made);
    assert_eq!(refusals(app), Vec::<String>::new());
    let after = app.study().document().clone();
    assert_ne!(before, after, "{label} changes something");
    app.undo();
    assert_eq!(*app.study().document(), before, "{label} is one step");
    app.redo();
    assert_eq!(*app.study().document(), after);
}

/// Changes a line and expects to be refused, with nothing changed.
#[track_caller]
fn refused(app: &mut App, label: &str, made: Change) -> String {
    let before = app.study().document().clone();
    change(app, label, made);
    assert_eq!(*app.study().document(), before, "what is refused changes nothing");
    let refusals = refusals(app);
    assert_eq!(refusals.len(), 1, "{label} says why");
    assert_eq!(app.said(), refusals[0], "it is said too");
    refusals[0].clone()
}

fn refusals(app: &App) -> Vec<String> {
    lines(app)
        .into_iter()
        .map(|line| line.refused)
        .filter(|refused| !refused.is_empty())
        .collect()
}

fn open(app: &mut App, what: u8) {
    app.edit(Key::panel(what), &Change::Pick(1));
}

/// The neighborhood street open in the editor: 5, 7, 7, 9, 9, 7, 7 and 5 ft.
fn with_section() -> App {
    let mut app = with_homes();
    app.choose_tool(ToolKind::Street);
    open(&mut app, edits::EDIT_SECTION);
    app
}

#[test]
fn another_tool_with_a_palette_closes_the_editor_of_the_last() {
    let mut app = with_section();
    app.choose_tool(ToolKind::Select);
    assert_eq!(
        app.editors().editor.name,
        "section",
        "what is drawn may be picked meanwhile"
    );
    app.choose_tool(ToolKind::Use);
    assert_eq!(app.editors().editor.name, "");
}

fn section_of(app: &App) -> StreetSection {
    app.study().document().street_sections[&NEIGHBORHOOD_STREET].clone()
}

#[test]
fn every_width_that_is_shown_and_typed_again_is_the_same_to_the_millimeter() {
    let width = section::strip_width();
    for units in UNITS {
        for stored in 305_u32..=30_480 {
            let shown = width.quantity.text(f64::from(stored), units);
            let typed = number(&shown).expect("what is shown is a number") * width.quantity.shown(units).scale;
            assert_eq!(typed.round() as u32, stored, "{shown} in {units:?}");
        }
    }
}

#[test]
fn every_number_of_a_building_type_survives_being_typed_as_it_is_shown() {
    for field in building_type::bounds() {
        for units in UNITS {
            for part in 0..=500 {
                let [least, most] = field.bounds;
                let stored = (least + (most - least) * f64::from(part) / 500.0).round();
                let shown = field.quantity.text(stored, units);
                let read = field.read(stored, &text(&shown), units).expect("it lies in bounds");
                assert_eq!(read.to_bits(), stored.to_bits(), "{} shown as {shown}", field.label);
            }
        }
    }
}

#[test]
fn numbers_are_shown_as_round_as_they_are() {
    let feet = |mm: f64| quantity::WIDTH.text(mm, UnitSystem::UsCustomary);
    assert_eq!(feet(2743.0), "9", "9 ft is 2,743.2 mm");
    assert_eq!(feet(2591.0), "8.5");
    assert_eq!(quantity::WIDTH.text(2743.0, UnitSystem::Metric), "2.743");
    assert_eq!(quantity::WIDTH.text(3000.0, UnitSystem::Metric), "3");
    assert_eq!(quantity::SPEED.text(32.0, UnitSystem::UsCustomary), "20");
    assert_eq!(quantity::FLOOR.text(93.0, UnitSystem::UsCustomary), "1000");
    assert_eq!(
        quantity::PARTS_PER_MILLION.text(333_333.0, UnitSystem::Metric),
        "33.333"
    );
}

#[test]
fn numbers_are_read_strictly() {
    assert_eq!(number(" 9.5 "), Some(9.5));
    assert_eq!(number(".5"), Some(0.5));
    for wrong in ["", ".", "9,5", "-3", "1e3", "NaN", "1.2.3", "1234567890123456"] {
        assert_eq!(number(wrong), None, "{wrong:?}");
    }
    for (text, value) in [("-12.5", -12.5), ("+7", 7.0), (" 90 ", 90.0), ("-.5", -0.5)] {
        assert_eq!(signed_number(text), Some(value), "{text:?}");
    }
    for wrong in ["", "-", "--1", "+-1", "- 1e2", "inf"] {
        assert_eq!(signed_number(wrong), None, "{wrong:?}");
    }
}

#[test]
fn a_number_read_is_the_nearest_there_is() {
    for text in [
        "0.1",
        "123.456",
        "0.30000000000000",
        "999999999999999",
        "0.00000000000001",
        "8.41",
    ] {
        assert_eq!(number(text), text.parse().ok(), "{text}");
    }
}

#[test]
fn less_and_more_go_along_the_grid_of_the_units() {
    let field = section::strip_width();
    let step = |stored: f64, steps: i8, units| field.read(stored, &Change::Step(steps), units).expect("in bounds");
    let us = UnitSystem::UsCustomary;
    assert_eq!(step(2743.0, 1, us) as u32, 2896, "9 to 9.5 ft, 2,895.6 mm");
    assert_eq!(step(2743.0, -1, us) as u32, 2591, "9 to 8.5 ft, 2,590.8 mm");
    assert_eq!(step(2743.0, 1, UnitSystem::Metric) as u32, 2800);
    assert_eq!(step(2743.0, -1, UnitSystem::Metric) as u32, 2700);
    assert_eq!(
        field.read(305.0, &Change::Step(-1), us),
        Err("Width of a strip: from 1 to 100 ft.".to_owned())
    );
}

#[test]
fn a_strip_is_changed_in_one_step_and_the_numbers_follow() {
    let mut app = with_section();
    let homes_before = app
        .study()
        .painted()
        .iter()
        .map(|face| face.laid.lots.len())
        .sum::<usize>();
    let land = |app: &App| {
        app.study()
            .fabric()
            .faces
            .iter()
            .map(|face| face.land_m2())
            .sum::<f64>()
    };
    let land_before = land(&app);
    one_step(&mut app, "Width of strip 4 of 8", text("12"));
    assert_eq!(section_of(&app).strips[3].width_mm, 3658);
    assert_eq!(line(&app, "Right-of-way").value, "59 ft");
    assert!(land(&app) < land_before, "a wider street takes land");
    assert!(homes_before > 0);
    one_step(&mut app, "Width of strip 4 of 8", Change::Step(-1));
    assert_eq!(line(&app, "Width of strip 4 of 8").value, "11.5");
    one_step(&mut app, "Strip 4 of 8", Change::Pick(3));
    assert_eq!(section_of(&app).strips[3].kind, StripKind::Bicycle);
    one_step(&mut app, "Target speed", text("15"));
    assert_eq!(section_of(&app).target_speed_km_h, 24);
    one_step(&mut app, "Lots may front on its left", Change::Pick(0));
    assert!(!section_of(&app).fronts_left);
    one_step(&mut app, "Name", text(" Cedar street "));
    assert_eq!(section_of(&app).name, "Cedar street");
}

#[test]
fn strips_are_added_moved_and_removed_and_the_keyboard_goes_with_them() {
    let mut app = with_section();
    let kinds = |app: &App| {
        section_of(app)
            .strips
            .iter()
            .map(|strip| strip.kind)
            .collect::<Vec<_>>()
    };
    let before = kinds(&app);
    one_step(&mut app, "Move to the right: strip 1 of 8", Change::Pick(1));
    assert_eq!(kinds(&app)[..2], [before[1], before[0]]);
    change(&mut app, "Move to the right: strip 2 of 8", Change::Pick(1));
    let focus = app.take_focus().expect("the keyboard goes with it");
    assert_eq!((focus.part, focus.index), (Part::Strip, 2));
    one_step(&mut app, "Remove strip 3 of 8", Change::Pick(1));
    one_step(&mut app, "Add a strip", Change::Pick(1));
    assert_eq!(kinds(&app).len(), 8);
    assert_eq!(kinds(&app)[7], StripKind::Planting);
    let said = refused(&mut app, "Move to the left: strip 1 of 8", Change::Pick(1));
    assert_eq!(said, "There is no strip on that side.");
}

#[test]
fn what_can_not_be_is_refused_in_a_sentence() {
    let mut app = with_section();
    let name = "Width of strip 1 of 8";
    assert_eq!(
        refused(&mut app, name, text("wide")),
        "Width of a strip: type a number such as 9.5."
    );
    assert_eq!(
        refused(&mut app, name, text("0")),
        "Width of a strip: from 1 to 100 ft."
    );
    assert_eq!(refused(&mut app, "Name", text("  ")), "A name can not be empty.");
    for _ in 0..7 {
        let last = lines(&app)
            .into_iter()
            .rev()
            .find(|line| line.key.part == Part::Strip)
            .expect("a strip");
        app.edit(
            Key {
                field: section::REMOVE,
                ..last.key
            },
            &Change::Pick(1),
        );
    }
    assert_eq!(section_of(&app).strips.len(), 1);
    let said = refused(&mut app, "Remove strip 1 of 1", Change::Pick(1));
    assert_eq!(said, "A street section needs a strip.");
    let warns = lines(&app)
        .iter()
        .any(|line| line.kind == Kind::Warning && line.label == "Is for motor vehicles and has no travel lane.");
    assert!(warns, "what should be mended is said");
}

#[test]
fn a_variant_is_made_and_deleted_only_where_nothing_uses_it() {
    let mut app = with_section();
    let said = refused(&mut app, "Delete", Change::Pick(1));
    assert_eq!(
        said,
        "Can be deleted where nothing uses it; here it is used by 1 street."
    );
    let count = app.study().document().street_sections.len();
    change(&mut app, "Duplicate", Change::Pick(1));
    assert_eq!(app.study().document().street_sections.len(), count + 1);
    assert_eq!(line(&app, "Name").value, "Neighborhood street, variant");
    let variant = app.choices().section;
    assert_ne!(variant, NEIGHBORHOOD_STREET, "the variant is drawn with from now on");
    one_step(&mut app, "Width of strip 1 of 8", text("6"));
    assert_eq!(
        section_of(&app).strips[0].width_mm,
        1524,
        "the section it came from stays"
    );
    let before = app.study().document().clone();
    change(&mut app, "Delete", Change::Pick(1));
    assert_eq!(app.study().document().street_sections.len(), count);
    assert_eq!(app.choices().section, NEIGHBORHOOD_STREET, "another is chosen");
    assert!(app.editors().editor.name.is_empty(), "the editor closes");
    app.undo();
    assert_eq!(*app.study().document(), before);
}

#[test]
fn narrow_strips_are_named_with_their_source_and_the_sections_that_come_with_a_plan_are_not() {
    for section in hobnail_core::plan::defaults::street_sections().values() {
        assert_eq!(section::narrow(section, UnitSystem::UsCustomary), Vec::<String>::new());
    }
    let strip = |kind, width_mm| Strip { kind, width_mm };
    let mut held = section_of(&app());
    held.strips = vec![strip(StripKind::Walk, 1219), strip(StripKind::Travel, 2438)];
    held.target_speed_km_h = 56;
    assert_eq!(
        section::narrow(&held, UnitSystem::UsCustomary),
        [
            "Walk: 4 ft is narrow; 5 ft is common (Urban Street Design Guide, NACTO, 2013, from memory).",
            "Travel: 8 ft is narrow; 10 ft is common (SmartCode version 9.2, 2009, tables 3 and 4, from memory)."
        ]
    );
    held.target_speed_km_h = 16;
    assert_eq!(
        section::narrow(&held, UnitSystem::Metric).len(),
        1,
        "8 ft is common below 20 mph"
    );
}

#[test]
fn a_drawing_of_strips_is_as_wide_as_they_are() {
    let section = section_of(&app());
    let drawing = small_drawing(&section.strips);
    assert_eq!(
        drawing.view_mm[2],
        17_070 + 120,
        "56 ft and a margin for the outer lines"
    );
    let cars = drawing
        .paths
        .iter()
        .find(|(ink, _)| *ink == "car")
        .expect("cars are parked");
    assert_eq!(cars.1.matches('M').count(), 2, "one in each parking strip");
    let mut paper = drawn::Paper::default();
    paper.strips(&section.strips, -1000, true);
    let shown = paper.finished([0; 4], 0, String::new());
    assert!(
        shown.paths.iter().any(|(ink, _)| *ink == "passing"),
        "a car in each lane"
    );
}

/// The block's use selected.
fn with_use() -> App {
    let mut app = with_homes();
    app.choose_tool(ToolKind::Select);
    click(&mut app, 0.0, 0.0);
    assert!(
        matches!(app.selection(), Some(Selection::Use(_))),
        "{:?}",
        app.selection()
    );
    app
}

fn use_of(app: &App) -> UseMark {
    let Some(Selection::Use(id)) = app.selection() else {
        panic!("a use is selected");
    };
    let mark = app.study().document().mark(app.study().alternative(), id);
    mark.and_then(Mark::as_use).expect("it is there").clone()
}

/// The first building type open in the editor: a detached house.
fn with_type() -> App {
    let mut app = with_homes();
    open(&mut app, edits::EDIT_BUILDING_TYPE);
    app
}

#[test]
fn a_building_type_is_changed_field_by_field_and_the_homes_follow() {
    let mut app = with_type();
    let homes = value(&app, "homes.count");
    one_step(&mut app, "Homes on a lot", text("2"));
    assert_ne!(value(&app, "homes.count"), homes);
    for (label, made) in [
        ("Width along the street", "41"),
        ("Depth", "98"),
        ("People per home", "2.5"),
        ("Parking on a lot", "1.5"),
        ("Under buildings", "27"),
        ("Floor area on a lot", "900"),
        ("Height, floor to floor", "11"),
        ("Name", "Cedar house"),
    ] {
        one_step(&mut app, label, text(made));
    }
    one_step(&mut app, "Land is tinted as", Change::Pick(3));
    one_step(&mut app, "Use of story 1", Change::Pick(2));
    one_step(&mut app, "Envelope", Change::Pick(2));
    one_step(&mut app, "Price or rent", Change::Pick(0));
    one_step(&mut app, "Add a story", Change::Pick(1));
    one_step(&mut app, "Remove story 1", Change::Pick(1));
    let held = &app.study().document().building_types[&BuildingTypeId(0)];
    assert_eq!(held.lot_width_mm, 12_497);
    assert_eq!(held.persons_per_home_thousandths, 2500);
    assert_eq!(held.parking_per_lot_hundredths, 150);
}

#[test]
fn jobs_are_said_where_people_work_and_move_the_figure() {
    let mut app = with_type();
    let has_line = |app: &App| lines(app).iter().any(|line| line.label == "Jobs on the floor");
    assert!(!has_line(&app), "a floor of homes has no jobs to say");
    assert_eq!(value(&app, "jobs.count"), "0 jobs");
    one_step(&mut app, "Use of story 1", Change::Pick(2));
    // A hectare of shop floor has 196 jobs, 1.82 to 1,000 square feet.
    assert_eq!(line(&app, "Jobs on the floor").value, "1.82");
    let usual = value(&app, "jobs.count");
    assert_ne!(usual, "0 jobs");
    one_step(&mut app, "Jobs on the floor", text("3.6"));
    assert_ne!(value(&app, "jobs.count"), usual);
    one_step(&mut app, "Jobs on the floor", text("0"));
    assert_eq!(value(&app, "jobs.count"), "0 jobs");
    let warning = "Has floor area where people work and no jobs on it, so none are counted there.";
    assert!(lines(&app).iter().any(|line| line.label == warning), "it is said");
    one_step(&mut app, "Use of story 1", Change::Pick(0));
    assert!(!has_line(&app));
}

#[test]
fn a_lot_can_not_be_covered_more_than_once() {
    let mut app = with_type();
    assert_eq!(
        refused(&mut app, "Paved", text("40")),
        "Covered, paved and planted shares of the lot must not exceed a whole."
    );
    assert_eq!(refused(&mut app, "Depth", text("0")), "Depth: from 10 to 2000 ft.");
    let said = refused(&mut app, "Delete", Change::Pick(1));
    assert_eq!(
        said,
        "Can be deleted where nothing uses it; here it is used by 1 block."
    );
}

#[test]
fn what_does_not_fit_together_is_warned_of_and_not_in_the_way() {
    let mut app = with_type();
    one_step(&mut app, "Homes on a lot", text("0"));
    let warns = |app: &App| lines(app).into_iter().any(|line| line.kind == Kind::Warning);
    assert!(warns(&app), "floor for homes and no homes");
    one_step(&mut app, "Homes on a lot", text("1"));
    assert!(!warns(&app));
}

#[test]
fn every_line_of_every_editor_has_words_and_an_id_of_its_own() {
    let mut walking = with_homes();
    open(&mut walking, edits::WALKING);
    let mut land = with_use();
    let side = lines(&land)
        .into_iter()
        .find(|line| line.key.part == Part::Side)
        .expect("a side");
    land.edit(side.key, &Change::Pick(1));
    let mut cut = cuts::with_homes_on_both_sides();
    change(&mut cut, "Show the cut", Change::Pick(1));
    for app in [with_section(), with_type(), walking, land, cut] {
        let mut ids = hobnail_core::order::OrderedSet::new();
        let shown = app.editors();
        for panel in [shown.editor, shown.cut] {
            for line in &panel.lines {
                assert!(!line.label.is_empty(), "{line:?}");
                assert!(!line.label.contains("  "), "{line:?}");
                let is_said = line.key.part == Part::Said;
                assert!(is_said || ids.insert(line.key.id()), "{line:?} has the id of another");
            }
        }
    }
}

#[test]
fn other_units_show_the_same_widths_and_change_none() {
    let mut app = with_section();
    let before = section_of(&app);
    app.show_units(UnitSystem::Metric);
    assert_eq!(line(&app, "Width of strip 4 of 8").value, "2.743");
    for label in ["Width of strip 4 of 8", "Target speed"] {
        let shown = line(&app, label).value;
        change(&mut app, label, Change::Text(shown));
    }
    assert_eq!(section_of(&app), before);
    one_step(&mut app, "Width of strip 4 of 8", text("3"));
    assert_eq!(section_of(&app).strips[3].width_mm, 3000);
}

#[test]
fn bounds_are_said_in_the_units_of_the_page() {
    let field = Bounded {
        label: "Setback",
        quantity: &quantity::WIDTH,
        bounds: [0.0, 3048.0],
    };
    let too_wide = |units| field.read(0.0, &text("30"), units);
    assert_eq!(
        too_wide(UnitSystem::Metric),
        Err("Setback: from 0 to 3.048 m.".to_owned())
    );
    assert_eq!(
        too_wide(UnitSystem::UsCustomary),
        Err("Setback: from 0 to 10 ft.".to_owned())
    );
}
