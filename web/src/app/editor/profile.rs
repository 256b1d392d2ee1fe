//! How a selected street rises and falls: its steepest grade, how much of it is steeper than limits, and the ground along
//! it, drawn over its length.

use hobnail_core::figures::display::digits;
use hobnail_core::measures::street_grades::{
    FIRE_ACCESS, FIRE_ACCESS_PERCENT, Profile, RAMP_PERCENT, WALK_PERCENT, fire_access_percent, is_steeper,
};
use hobnail_core::measures::walk_network::ground::Ground;
use hobnail_core::plan::document::{Document, Settings, UnitSystem};
use hobnail_core::plan::flatten::flatten;
use hobnail_core::plan::{PlanPoint, Street, StreetRole};
use hobnail_core::say;

use super::Change;
use super::drawn::{Drawing, Ink, Paper};
use super::lines::{Key, Line, Part};
use super::quantity::{Bounded, GRADE, is_same};
use crate::app::alternatives::course;
use crate::app::words;
use crate::canvas::scene_of::meters;

/// The steepest fire access, as a person sets it.
const STEEPEST: Key = Key::new(Part::Grade, 0, 0);

fn steepest_field() -> Bounded {
    Bounded {
        label: say!("heights-limit-field"),
        quantity: &GRADE,
        bounds: [1.0, 30.0],
    }
}

/// Words of a drawing over its width.
const LETTERS_ACROSS: i32 = 30;
/// So much of the width the rise takes at most.
const MOST_RISE: f64 = 0.13;
/// How many times as high as it is long the rise may be drawn.
const EXAGGERATIONS: [i32; 5] = [20, 10, 5, 2, 1];

/// The lines and the drawing of a street on the ground; `None` where its heights are not known.
pub(super) fn shown(document: &Document, street: &Street) -> Option<(Vec<Line>, Drawing)> {
    let ground = Ground::of(document.topography.as_ref()?)?;
    let units = document.settings.units;
    let fire_percent = fire_access_percent(document);
    let profile = Profile::of(&ground, &meters(&flatten(&street.line)));
    // From here on there are two points or more.
    if profile.points.len() < 2 {
        return None;
    }
    let steepest = profile.steepest_percent();
    let grade = format!("{:.1}", steepest.abs());
    let steepest_words = if steepest >= 0.0 {
        say!("heights-grade-up", grade = grade)
    } else {
        say!("heights-grade-down", grade = grade)
    };
    // Nobody drives along a path.
    let is_path = street.role == StreetRole::Path;
    let limits = [
        (
            fire_percent,
            say!("heights-limit-fire", limit = digits(fire_percent)),
            "",
        ),
        (
            RAMP_PERCENT,
            say!("heights-limit-ramp").to_owned(),
            say!("heights-limit-ramp-source"),
        ),
        (
            WALK_PERCENT,
            say!("heights-limit-walk").to_owned(),
            say!("heights-limit-walk-source"),
        ),
    ];
    let mut lines = vec![
        Line::title(10, say!("heights-along")),
        Line::fact(10, say!("heights-steepest"), steepest_words),
    ];
    for ((limit, label, source), index) in limits.into_iter().zip(11..).skip(usize::from(is_path)) {
        let steeper_m = profile.steeper_m(limit);
        let said = if steeper_m > 0.0 {
            say!("heights-steeper", length = words::length(steeper_m, units))
        } else {
            say!("heights-no-steeper").to_owned()
        };
        lines.push(Line::fact(index, &label, said).with_hint(source.to_owned()));
    }
    if !is_path {
        let hint = say!(
            "page-default",
            value = GRADE.words(FIRE_ACCESS_PERCENT, units),
            source = say!("heights-limit-fire-source")
        );
        let field = Line::number(STEEPEST, &steepest_field(), fire_percent, units);
        lines.insert(2, field.with_hint(hint));
    }
    lines.push(Line::words(14, say!("heights-decides")));
    Some((
        lines,
        drawing(&profile, if is_path { RAMP_PERCENT } else { fire_percent }, units),
    ))
}

/// The settings after the steepest fire access was changed.
pub(super) fn changed(document: &Document, change: &Change) -> Result<Settings, String> {
    let mut after = document.settings.clone();
    let percent = steepest_field().read(fire_access_percent(document), change, after.units)?;
    after.chosen.remove(FIRE_ACCESS);
    if !is_same(percent, FIRE_ACCESS_PERCENT) {
        after.chosen.insert(FIRE_ACCESS.to_owned(), percent);
    }
    Ok(after)
}

/// The ground over the length of the street, from its start on the left: steep pieces heavier, low points marked.
fn drawing(profile: &Profile, steep_percent: f64, units: UnitSystem) -> Drawing {
    let mut paper = Paper::default();
    let (mut least_m, mut most_m, mut length_m) = (f64::INFINITY, f64::NEG_INFINITY, 0.0);
    for (along_m, height_m) in &profile.points {
        (least_m, most_m, length_m) = (height_m.min(least_m), height_m.max(most_m), *along_m);
    }
    let rise_m = most_m - least_m;
    // A file may hold heights and streets that no place on Earth has.
    const FARTHEST_MM: f64 = 1e9;
    let drawn_mm = |length_m: f64| (length_m * 1000.0).min(FARTHEST_MM) as i32;
    let fits = |times: &&i32| rise_m * f64::from(**times) <= length_m * MOST_RISE;
    let times = *EXAGGERATIONS.iter().find(fits).unwrap_or(&1);
    let right_mm = drawn_mm(length_m);
    let letter_mm = right_mm / LETTERS_ACROSS;
    let points = profile.points.iter().map(|(along_m, height_m)| {
        let up_m = (height_m - least_m) * f64::from(times);
        PlanPoint::new(drawn_mm(*along_m), drawn_mm(up_m))
    });
    let mut points: Vec<PlanPoint> = points.collect();
    let above = |at: PlanPoint, letters: i32| PlanPoint::new(at.x_mm, at.y_mm + letter_mm * letters / 4);
    for (ends, grade) in points.windows(2).zip(profile.grades_percent()) {
        if is_steeper(grade, steep_percent) {
            course(&mut paper, Ink::Steep, ends);
        }
    }
    let mut label = |at: PlanPoint, text: &str| {
        let within_mm = at.x_mm.clamp(letter_mm * 3, right_mm - letter_mm * 3);
        paper.label(within_mm, -at.y_mm, text);
    };
    let [from, to] = [0, points.len() - 1].map(|end| {
        let words = words::length(profile.points[end].1, units);
        label(above(points[end], 4), &words);
        words
    });
    let sags = profile.sags();
    for sag in &sags {
        label(above(points[*sag], 6), say!("heights-low"));
    }
    for sag in &sags {
        course(&mut paper, Ink::Edge, &[points[*sag], above(points[*sag], 5)]);
    }
    course(&mut paper, Ink::Ground, &points);
    for x_mm in [right_mm, 0] {
        points.push(PlanPoint::new(x_mm, -letter_mm));
    }
    course(&mut paper, Ink::Planted, &points);
    let scale = if times == 1 {
        say!("heights-true").to_owned()
    } else {
        say!("heights-exaggerated", times = times.to_string())
    };
    let along = words::length(length_m, units) + "; " + &scale;
    paper.label(right_mm / 2, letter_mm * 5 / 2, along.clone());
    let described = say!("heights-profile", along = along, from = from, to = to, low = sags.len());
    let top_mm = drawn_mm(rise_m * f64::from(times)) + letter_mm * 5 / 2;
    paper.finished([0, -top_mm, right_mm, top_mm + letter_mm * 3], letter_mm, described)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tools::fixtures::street;
    use hobnail_core::plan::document::Topography;
    use hobnail_core::plan::projection::GeographicPoint;

    /// Rows of 10 m that rise as told from the west.
    fn ground(heights_mm: &[i32]) -> Topography {
        Topography {
            south_west: PlanPoint::new(0, 0),
            spacing_mm: 10_000,
            columns: heights_mm.len() as u32,
            heights_mm: [heights_mm, heights_mm].concat(),
            source: String::new(),
        }
    }

    fn document(held: Option<Topography>) -> Document {
        let at = GeographicPoint::checked_from_deg(10.0, 50.0).unwrap();
        let mut document = Document::new("Test", at);
        document.settings.units = UnitSystem::Metric;
        document.topography = held;
        document
    }

    fn shown_on(heights_mm: &[i32]) -> (Vec<Line>, Drawing) {
        shown(&document(Some(ground(heights_mm))), &street(&[(0, 0), (100_000, 0)])).unwrap()
    }

    #[test]
    fn steep_pieces_and_low_points_are_told_and_drawn() {
        // 20 m down by 12 %, level, then up by 6 %.
        let heights = [
            9_000, 7_800, 6_600, 6_600, 6_600, 7_200, 7_800, 8_400, 9_000, 9_600, 10_200,
        ];
        let (lines, drawing) = shown_on(&heights);
        let said: Vec<&str> = lines.iter().map(|line| line.value.as_str()).collect();
        assert_eq!(said[1], "12.0 % down along the street");
        assert_eq!(said[3..6], ["20.0 m steeper", "20.0 m steeper", "80.0 m steeper"]);
        let inks: Vec<&str> = drawing.paths.iter().map(|(ink, _)| *ink).collect();
        assert!(inks.contains(&"steep") && inks.contains(&"edge"), "{inks:?}");
        let labels: Vec<&str> = drawing.labels.iter().map(|label| label.text.as_str()).collect();
        assert!(labels.contains(&"9.0 m") && labels.contains(&"10.2 m"), "{labels:?}");
        assert!(labels.contains(&"100 m; heights drawn 2 times"), "{labels:?}");
        assert!(labels.contains(&"low point"));
        // All of it is in view.
        let [left, top, wide, high] = drawing.view_mm;
        for label in &drawing.labels {
            assert!((left..left + wide).contains(&label.x_mm) && (top..top + high).contains(&label.y_mm));
        }
    }

    #[test]
    fn the_limit_of_fire_access_can_be_set_and_given_back() {
        let mut held = document(Some(ground(&[0, 1_100, 2_200, 3_300, 4_400, 5_500])));
        let steep = |held: &Document| shown(held, &street(&[(0, 0), (50_000, 0)])).unwrap().0[3].clone();
        assert_eq!(
            (steep(&held).label.as_str(), steep(&held).value.as_str()),
            ("Over 10 %, fire access", "50.0 m steeper")
        );
        held.settings = changed(&held, &Change::Text("12".to_owned())).unwrap();
        assert_eq!(
            (steep(&held).label.as_str(), steep(&held).value.as_str()),
            ("Over 12 %, fire access", "nothing steeper")
        );
        assert!(changed(&held, &Change::Text("0".to_owned())).is_err());
        held.settings = changed(&held, &Change::Text("10".to_owned())).unwrap();
        assert!(held.settings.chosen.is_empty());
    }

    #[test]
    fn a_path_is_no_fire_access() {
        let mut path = street(&[(0, 0), (50_000, 0)]);
        path.role = StreetRole::Path;
        let held = document(Some(ground(&[0, 900, 1_800, 2_700, 3_600, 4_500])));
        let (lines, drawing) = shown(&held, &path).unwrap();
        assert!(lines.iter().all(|line| !line.label.contains("fire")), "{lines:?}");
        // 9 % is more than a ramp.
        assert!(drawing.paths.iter().any(|(ink, _)| *ink == "steep"));
    }

    #[test]
    fn a_level_street_says_so_and_without_heights_nothing_is_said() {
        let (lines, drawing) = shown_on(&[5_000; 11]);
        assert_eq!(lines[1].value, "0.0 % up along the street");
        assert!(lines[3..6].iter().all(|line| line.value == "nothing steeper"));
        assert!(drawing.paths.iter().all(|(ink, _)| *ink != "steep" && *ink != "edge"));
        assert!(shown(&document(None), &street(&[(0, 0), (100_000, 0)])).is_none());
        assert!(shown(&document(Some(ground(&[0; 11]))), &street(&[])).is_none());
    }
}
