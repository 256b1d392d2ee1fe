//! Heights of files, as the readers give them, on their way into a plan.

use hobnail_core::plan::PlanPoint;
use hobnail_core::plan::document::{Topography, UnitSystem};
use hobnail_core::say;
use hobnail_readers::grid::resampled::{about, resampled};
use hobnail_readers::options::Options;
use hobnail_readers::system::System;

use super::heights::{GridSaid, Heights};
use super::opened::{Field, Opened};
use super::tests::placed_app;
use super::{Base, Coordinates};
use crate::app::App;

/// What the page hears of a file, and the readers to ask on.
struct File {
    grids: Vec<hobnail_readers::grid::Grid>,
    base: Base,
}

impl File {
    /// 40 by 30 cells of 10 m about the place of the app, 5 % up to the east from 100 on, some without a height.
    fn plane(is_hole: impl Fn(usize, usize) -> bool) -> Self {
        let cell = |index: usize| match (index % 40, index / 40) {
            (column, row) if is_hole(column, row) => "-9999".to_owned(),
            (column, _) => (100.0 + column as f64 * 0.5).to_string(),
        };
        let values: Vec<String> = (0..1200).map(cell).collect();
        let text = "ncols 40\nnrows 30\nxllcorner -200\nyllcorner -150\ncellsize 10\nnodata_value -9999\n".to_owned()
            + &values.join(" ");
        let (longitude, latitude) = placed_app().study().document().heading.geographic_origin().to_deg();
        let system = format!("+proj=tmerc +lat_0={latitude} +lon_0={longitude} +k=1 +datum=WGS84 +units=m");
        let options = Options {
            system: Some(system),
            ..Options::default()
        };
        let read = hobnail_readers::read("plane.asc", text.into_bytes(), options).unwrap();
        let said = about(&read.grids).unwrap();
        let base = Base {
            grid: GridSaid::told(&said.numbers()),
            ..Base::new("plane.asc", Coordinates::Degrees)
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
        let [west, south, east, north, longitude, latitude, unit_m] = request.0;
        let plan = System::plan([longitude, latitude]).unwrap();
        let found = resampled(&self.grids, &plan, [west, south, east, north], Some(unit_m));
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
