//! Heights of files, as the readers give them, on their way into a plan.

use hobnail_core::plan::PlanPoint;
use hobnail_core::plan::document::{Topography, UnitSystem};
use hobnail_core::say;
use hobnail_readers::grid::laid::Laid;
use hobnail_readers::grid::resampled::{about, resampled};
use hobnail_readers::options::Options;
use hobnail_readers::system::System;

use super::Base;
use super::heights::{GridSaid, Heights};
use super::opened::{Field, Opened};
use super::tests::{coordinates_of, placed_app};
use crate::app::App;

/// What the page hears of a file, and the readers to ask on.
struct File {
    grids: Vec<hobnail_readers::grid::Grid>,
    base: Base,
}

impl File {
    /// 40 by 30 cells of 10 m about the place of the app, 5 % up to the east from 100 on, some without a height.
    fn plane(is_hole: impl Fn(usize, usize) -> bool) -> Self {
        let (longitude, latitude) = placed_app().study().document().heading.geographic_origin().to_deg();
        Self::plane_in(
            &format!("+proj=tmerc +lat_0={latitude} +lon_0={longitude} +k=1 +datum=WGS84 +units=m"),
            is_hole,
        )
    }

    /// The same in another system.
    fn plane_in(system: &str, is_hole: impl Fn(usize, usize) -> bool) -> Self {
        let cell = |index: usize| match (index % 40, index / 40) {
            (column, row) if is_hole(column, row) => "-9999".to_owned(),
            (column, _) => (100.0 + column as f64 * 0.5).to_string(),
        };
        let values: Vec<String> = (0..1200).map(cell).collect();
        let text = "ncols 40\nnrows 30\nxllcorner -200\nyllcorner -150\ncellsize 10\nnodata_value -9999\n".to_owned()
            + &values.join(" ");
        let options = Options {
            system: Some(system.to_owned()),
            ..Options::default()
        };
        let read = hobnail_readers::read("plane.asc", text.into_bytes(), options).unwrap();
        let said = about(&read.grids).unwrap();
        let base = Base {
            grid: GridSaid::told(&said.numbers()),
            ..Base::new("plane.asc", coordinates_of(&read))
        };
        Self {
            grids: read.grids,
            base,
        }
    }

    /// Opened in the panel, 100 m to each side of the origin, with the heights that are due.
    fn opened(&self, app: &App) -> Opened {
        let mut opened = Opened::new(self.base.clone(), app);
        opened.type_in(Field::Distance, "100".to_owned());
        opened.look(app);
        self.answer(&mut opened, app);
        opened
    }

    /// Answers as the worker does.
    fn answer(&self, opened: &mut Opened, app: &App) {
        let Some(request) = opened.take_due() else { return };
        let [west, south, east, north, longitude, latitude, unit_m, by_hand @ ..] = request.0;
        let [zero_east_m, zero_north_m, own_unit_m, turn_deg] = by_hand;
        let plan = System::plan([longitude, latitude]).unwrap();
        let mut grids = self.grids.clone();
        for laid in grids.iter_mut().filter_map(|grid| grid.laid.as_mut()) {
            *laid = Laid {
                zero_m: [zero_east_m, zero_north_m],
                unit_m: own_unit_m,
                turn_deg,
            };
        }
        let found = resampled(&grids, &plan, [west, south, east, north], Some(unit_m));
        let mut numbers = request.0.to_vec();
        numbers.extend(found.south_west_mm.map(f64::from));
        numbers.extend([found.spacing_mm, found.columns, found.asked, found.filled].map(f64::from));
        opened.base.heights = Some(Heights::told(&numbers, found.heights_mm).unwrap());
        opened.look(app);
    }
}

fn metric_app() -> App {
    let mut app = placed_app();
    app.show_units(UnitSystem::Metric);
    app
}

fn topography(app: &App) -> Option<&Topography> {
    app.study().document().topography.as_ref()
}

#[test]
fn heights_are_taken_as_one_step_and_undo_gives_all_back() {
    let mut app = metric_app();
    let before = app.study().document().clone();
    let opened = File::plane(|_, _| false).opened(&app);
    let taken = opened.preview.clone().unwrap();
    assert_eq!(
        taken.by_kind(),
        [["441".to_owned(), "heights of the ground".to_owned()]]
    );
    assert_eq!(
        taken.left_out(),
        ["A point every 10.0 m, from 104.8 m to 114.8 m high."
            .replace("104.8 m", "105 m")
            .replace("114.8 m", "115 m")]
    );
    assert!(opened.sketch.is_some_and(|sketch| !sketch.paths.is_empty()));
    assert!(app.take_base(&opened.base, &opened.choices), "{:?}", app.notice());
    let held = topography(&app).unwrap();
    assert_eq!(
        (held.south_west, held.spacing_mm, held.columns),
        (PlanPoint::new(-100_000, -100_000), 10_000, 21)
    );
    for (place, height) in held.heights_mm.iter().enumerate() {
        let x_mm = -100_000 + (place as i32 % 21) * 10_000;
        // Centers of cells are 5 m off the corner.
        let expected = 100_000 + (x_mm + 195_000) / 20;
        assert!((height - expected).abs() <= 1, "{place}: {height}, not {expected}");
    }
    assert_eq!(held.source, "From plane.asc.");
    assert_eq!(app.study().history().undo_label(), Some(say!("heights-step")));
    assert!(app.heights_words().contains("plane.asc"));
    app.undo();
    assert_eq!(*app.study().document(), before);
    app.redo();
    app.remove_heights();
    assert_eq!((topography(&app), app.heights_words()), (None, String::new()));
    app.undo();
    assert!(topography(&app).is_some());
}

#[test]
fn until_the_readers_answer_nothing_can_be_taken() {
    let mut app = metric_app();
    let file = File::plane(|_, _| false);
    let mut opened = Opened::new(file.base.clone(), &app);
    assert_eq!(opened.preview, Err(say!("heights-asked").to_owned()));
    assert!(!app.take_base(&opened.base, &opened.choices));
    file.answer(&mut opened, &app);
    assert!(opened.preview.is_ok() && opened.take_due().is_none());
    // An answer for another area is none for this one.
    opened.type_in(Field::Distance, "60".to_owned());
    opened.look(&app);
    assert_eq!(opened.preview, Err(say!("heights-asked").to_owned()));
    file.answer(&mut opened, &app);
    assert_eq!(opened.preview.map(|taken| taken.heights), Ok(169));
}

#[test]
fn what_has_no_height_is_said_or_refused() {
    let mut app = metric_app();
    let file = File::plane(|column, row| (20..23).contains(&column) && (10..14).contains(&row));
    let opened = file.opened(&app);
    let said = opened.preview.clone().unwrap().left_out();
    assert!(
        said.iter()
            .any(|said| said.contains("lie where the file has no height")),
        "{said:?}"
    );
    assert!(
        opened.grid_words()[1].contains("12 of them without"),
        "{:?}",
        opened.grid_words()
    );
    assert!(app.take_base(&opened.base, &opened.choices));
    let held = topography(&app).unwrap();
    assert!(held.heights_mm.iter().all(|height| *height > 100_000));
    assert!(held.source.contains("of the nearest point"), "{}", held.source);
    // A file that covers a part of the area leaves the rest without heights.
    let mut wide = file.opened(&app);
    wide.type_in(Field::Distance, "400".to_owned());
    wide.look(&app);
    file.answer(&mut wide, &app);
    let said = wide.preview.unwrap().left_out();
    assert!(said.iter().any(|said| said.contains("beyond the file")), "{said:?}");
    assert!(said.iter().any(|said| said == say!("heights-instead")), "{said:?}");
    // Mostly holes is no ground.
    let full_of_holes = File::plane(|column, _| column % 4 > 1).opened(&app);
    assert!(full_of_holes.preview.unwrap_err().contains("has no height"));
}

#[test]
fn the_unit_of_height_can_be_corrected() {
    let app = metric_app();
    let file = File::plane(|_, _| false);
    let mut opened = file.opened(&app);
    assert!(opened.height_units()[0].1 && !opened.height_units()[1].1);
    opened.choose_height_unit(1);
    opened.look(&app);
    file.answer(&mut opened, &app);
    let said = opened.preview.unwrap().left_out();
    assert_eq!(said, ["A point every 10.0 m, from 31.9 m to 35.0 m high."]);
}

#[test]
fn heights_of_another_place_and_those_the_plan_has_are_refused() {
    let mut app = metric_app();
    let file = File::plane(|_, _| false);
    let opened = file.opened(&app);
    assert!(app.take_base(&opened.base, &opened.choices));
    let again = file.opened(&app);
    assert_eq!(again.preview, Err(say!("heights-known").to_owned()));
    let mut elsewhere = file;
    elsewhere.grids[0].first[0] += 50_000.0;
    let opened = elsewhere.opened(&app);
    assert_eq!(opened.preview, Err(say!("heights-elsewhere").to_owned()));
    assert!(Heights::told(&[0.0; 12], Vec::new()).is_none());
}

#[test]
fn a_grid_of_no_system_is_placed_scaled_and_turned_by_hand() {
    let mut app = metric_app();
    let file = File::plane_in("local", |_, _| false);
    let mut opened = file.opened(&app);
    let by_hand = [Field::Distance, Field::Unit, Field::East, Field::North, Field::Turn];
    assert_eq!(opened.fields, by_hand);
    assert_eq!(opened.place_words(), say!("heights-place"));
    let before = app.study().document().heading.clone();
    // Its middle lies in the plan's origin at first, as that of the same grid in a system does.
    assert!(app.take_base(&opened.base, &opened.choices), "{:?}", app.notice());
    let held = topography(&app).cloned();
    assert_eq!(app.study().document().heading, before, "it places no plan");
    let mut placed = metric_app();
    let in_system = File::plane(|_, _| false).opened(&placed);
    assert!(placed.take_base(&in_system.base, &in_system.choices));
    assert_eq!(held.as_ref(), topography(&placed));

    // A quarter turn about its corner, which lies 200 m east: up to the north from there, 5 % on each 10 of its units.
    let origin_mm = |opened: &mut Opened, app: &mut App| {
        opened.look(app);
        file.answer(opened, app);
        assert!(app.take_base(&opened.base, &opened.choices), "{:?}", app.notice());
        let held = topography(app).unwrap();
        let (column, row) = (
            -held.south_west.x_mm / held.spacing_mm as i32,
            -held.south_west.y_mm / held.spacing_mm as i32,
        );
        held.heights_mm[(row * held.columns as i32 + column) as usize]
    };
    for (field, text) in [(Field::East, "200"), (Field::North, "-150"), (Field::Turn, "90")] {
        opened.type_in(field, text.to_owned());
    }
    assert_eq!(origin_mm(&mut opened, &mut app), 100_000 + (150_000 - 5_000) / 20);
    opened.type_in(Field::Unit, "2".to_owned());
    assert_eq!(origin_mm(&mut opened, &mut app), 100_000 + (150_000 / 2 - 5_000) / 20);
    assert!(opened.grid_words()[1].contains("20.0 m"), "{:?}", opened.grid_words());
}

#[test]
fn a_plan_that_lies_nowhere_comes_to_lie_where_the_heights_are() {
    let mut app = App::new().unwrap();
    let file = File::plane(|_, _| false);
    let opened = file.opened(&app);
    assert_eq!(opened.fields, [Field::Distance, Field::Longitude, Field::Latitude]);
    assert!(app.take_base(&opened.base, &opened.choices), "{:?}", app.notice());
    let there = placed_app().study().document().heading.geographic_origin().to_deg();
    let here = app.study().document().heading.geographic_origin().to_deg();
    // The middle of the cells is the place.
    assert!(
        (here.0 - there.0).abs() < 1e-6 && (here.1 - there.1).abs() < 1e-6,
        "{here:?}"
    );
    assert!(topography(&app).is_some());
    app.undo();
    assert_eq!(app.study().document().heading.geographic_origin().to_deg(), (0.0, 0.0));
}
