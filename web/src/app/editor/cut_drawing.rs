//! The cut through a street as it is drawn: strips, trees, cars and people, the buildings beside them, dimensions below.

use hobnail_core::plan::document::UnitSystem;
use hobnail_core::plan::{FloorUse, MarkId, StreetSection};
use hobnail_core::say;
use hobnail_core::study::Study;

use super::cut::{Cut, Standing, through};
use super::drawn::{Drawing, Ink, Paper, TREE_MM, width_of};
use super::lines::{Key, Line, Part};
use super::section::{kind_word, width};
use super::{EditorShown, edits};
use crate::app::words;
use crate::browser::words::lowercase;

/// The slider that moves the cut.
pub(super) const SLIDER: Key = Key::new(Part::Cut, 0, 0);

/// Beyond a building's front so much of it is shown; beside an open side so much land.
const DEPTH_SHOWN_MM: i32 = 6_000;
const OPEN_SHOWN_MM: i32 = 5_000;
/// So much is shown to each side at least: a path alone would fill the room with its trees.
const LEAST_REACH_MM: i32 = 13_000;
const LEAST_TOP_MM: i32 = TREE_MM + 1_500;
const SKY_MM: i32 = 1_600;
const CURB_MM: i32 = 150;
/// Words of a drawing over its width.
const LETTERS_ACROSS: i32 = 54;

/// The cut's panel; `None` where the street has gone.
pub(super) fn shown(study: &Study, street: MarkId, along_thousandths: u16) -> Option<EditorShown> {
    let document = study.document();
    let units = document.settings.units;
    let cut = through(study, street, along_thousandths)?;
    let mark = document.mark(study.alternative(), street)?.as_street()?;
    let section = document.street_sections.get(&mark.section)?;
    let mut name = mark.name.clone();
    if !name.is_empty() {
        name.push_str(": ");
    }
    name.push_str(&section.name);
    let of = say!(
        "page-cut-at",
        along = words::length(cut.along_m, units),
        length = words::length(cut.length_m, units)
    );
    let mut lines = vec![
        Line::title(0, say!("page-cut", street = name)),
        Line::command(Key::panel(edits::CLOSE_CUT), say!("page-cut-close")),
        Line::slider(SLIDER, say!("page-cut-where"), along_thousandths, of),
    ];
    for ((standing, label), index) in cut
        .sides
        .iter()
        .zip([say!("page-cut-left"), say!("page-cut-right")])
        .zip(1..)
    {
        lines.push(Line::fact(index, label, side_words(standing.as_ref(), &cut, units)));
    }
    lines.push(
        Line::fact(
            3,
            say!("page-cut-ratio"),
            ratio(&cut).unwrap_or_else(|| say!("page-cut-no-ratio").to_owned()),
        )
        .with_hint(say!("page-cut-ratio-about").to_owned()),
    );
    Some(EditorShown {
        name: "cut",
        drawing: Some(drawing(section, &cut, units)),
        lines,
        profile: None,
    })
}

fn side_words(standing: Option<&Standing>, cut: &Cut, units: UnitSystem) -> String {
    let Some(standing) = standing else {
        return say!("page-cut-open").to_owned();
    };
    let meters = |mm: i32| words::length(f64::from(mm) / 1000.0, units);
    let setback = meters((standing.front_mm - cut.half_mm).max(0));
    say!(
        "page-cut-side",
        name = standing.name,
        stories = standing.stories.len(),
        height = meters(standing.height_mm()),
        setback = setback
    )
}

/// Height to width as `1 : 2.4`; `None` where a side is open.
pub(super) fn ratio(cut: &Cut) -> Option<String> {
    let (width, height) = (cut.front_to_front_mm()?, cut.mean_height_mm()?);
    let tenths = (i64::from(width) * 20 + i64::from(height)).checked_div(i64::from(height) * 2)?;
    Some("1 : ".to_owned() + &(tenths / 10).to_string() + "." + &(tenths % 10).to_string())
}

/// The drawing, the centerline at x = 0.
fn drawing(section: &StreetSection, cut: &Cut, units: UnitSystem) -> Drawing {
    let mut paper = Paper::default();
    let total_mm: i32 = section.strips.iter().map(width_of).sum();
    let left_mm = -total_mm / 2;
    let reach = |standing: &Option<Standing>| {
        let reach_mm = standing.as_ref().map_or(cut.half_mm + OPEN_SHOWN_MM, |standing| {
            standing.rear_mm.min(standing.front_mm + DEPTH_SHOWN_MM) + SKY_MM / 2
        });
        reach_mm.max(LEAST_REACH_MM)
    };
    let [to_left, to_right] = &cut.sides;
    let (from_mm, to_mm) = (-reach(to_left), reach(to_right));
    paper.yard(from_mm, left_mm - from_mm);
    paper.yard(left_mm + total_mm, to_mm - left_mm - total_mm);
    let letter_mm = (to_mm - from_mm) / LETTERS_ACROSS;
    let mut top_mm = LEAST_TOP_MM;
    for (standing, sign) in cut.sides.iter().zip([-1, 1]) {
        if let Some(standing) = standing {
            building(&mut paper, standing, sign, letter_mm, units);
            top_mm = top_mm.max(standing.height_mm() + SKY_MM);
            let yard_mm = standing.front_mm - cut.half_mm;
            if yard_mm > 2_000 {
                paper.person(sign * (cut.half_mm + yard_mm / 2));
            }
        }
    }
    paper.strips(&section.strips, left_mm, true);
    let foot_mm = dimensions(&mut paper, section, cut, [left_mm, letter_mm], units);
    let described = words::cut(section, units);
    paper.finished(
        [from_mm, -top_mm, to_mm - from_mm, top_mm + foot_mm],
        letter_mm,
        words::sentence_case(&described),
    )
}

/// A building: its walls and floors, the use of each floor, its height above.
fn building(paper: &mut Paper, standing: &Standing, sign: i32, letter_mm: i32, units: UnitSystem) {
    let depth_mm = (standing.rear_mm - standing.front_mm).min(DEPTH_SHOWN_MM);
    let left_mm = if sign > 0 {
        standing.front_mm
    } else {
        -standing.front_mm - depth_mm
    };
    let middle_mm = left_mm + depth_mm / 2;
    let height_mm = standing.height_mm();
    paper.rectangle(Ink::Building, [left_mm, -CURB_MM - height_mm], [depth_mm, height_mm]);
    let mut floor_mm = -CURB_MM;
    for (floor_use, story_mm) in &standing.stories {
        paper.label(middle_mm, floor_mm - story_mm / 2 + letter_mm / 3, use_word(*floor_use));
        floor_mm -= story_mm;
        paper.line(Ink::Floor, [left_mm, floor_mm], [left_mm + depth_mm, floor_mm]);
    }
    let height = width(height_mm.cast_unsigned(), units);
    paper.label(middle_mm, floor_mm - letter_mm / 2, height);
}

/// Widths of the strips, their kinds, and the whole right-of-way, below the ground; where they end.
fn dimensions(
    paper: &mut Paper,
    section: &StreetSection,
    cut: &Cut,
    [left_mm, letter_mm]: [i32; 2],
    units: UnitSystem,
) -> i32 {
    let row = |row: i32| 500 + letter_mm * row * 13 / 10;
    let tick = |paper: &mut Paper, x_mm: i32, y_mm: i32| {
        paper.line(
            Ink::Dimension,
            [x_mm, y_mm - letter_mm / 3],
            [x_mm, y_mm + letter_mm / 3],
        );
    };
    let mut x_mm = left_mm;
    let line_mm = row(1) - letter_mm / 2;
    tick(paper, x_mm, line_mm);
    for (place, strip) in (0..).zip(&section.strips) {
        let width_mm = width_of(strip);
        let middle_mm = x_mm + width_mm / 2;
        paper.line(Ink::Dimension, [x_mm, line_mm], [x_mm + width_mm, line_mm]);
        x_mm += width_mm;
        tick(paper, x_mm, line_mm);
        let shown = width(strip.width_mm, units);
        let number = shown.split(' ').next().unwrap_or_default();
        paper.label(middle_mm, row(2), number);
        // Names in two rows in turn, so that those of narrow strips stay apart.
        paper.label(middle_mm, row(3 + place % 2), lowercase(kind_word(strip.kind)));
    }
    let line_mm = row(5) - letter_mm / 2;
    paper.line(Ink::Dimension, [left_mm, line_mm], [x_mm, line_mm]);
    tick(paper, left_mm, line_mm);
    tick(paper, x_mm, line_mm);
    let whole = say!("page-cut-right-of-way", width = width(section.right_of_way_mm(), units));
    paper.label(left_mm + (x_mm - left_mm) / 2, row(6), whole);
    for (standing, sign) in cut.sides.iter().zip([-1, 1]) {
        let Some(standing) = standing else { continue };
        let edge_mm = if sign < 0 { left_mm } else { x_mm };
        let front_mm = sign * standing.front_mm;
        if (front_mm - edge_mm) * sign > letter_mm * 2 {
            let line_mm = row(1) - letter_mm / 2;
            paper.line(Ink::Dimension, [edge_mm, line_mm], [front_mm, line_mm]);
            tick(paper, front_mm, line_mm);
            let setback_mm = ((front_mm - edge_mm) * sign).cast_unsigned();
            paper.label(
                edge_mm + (front_mm - edge_mm) / 2,
                row(2),
                words::length(f64::from(setback_mm) / 1000.0, units),
            );
        }
        paper.line(Ink::Edge, [edge_mm, row(1)], [edge_mm, -LEAST_TOP_MM]);
    }
    row(6) + letter_mm / 2
}

fn use_word(floor_use: FloorUse) -> &'static str {
    match floor_use {
        FloorUse::Home => say!("page-cut-homes"),
        FloorUse::Work => say!("page-cut-work"),
        FloorUse::Shop => say!("page-cut-shops"),
        FloorUse::Learning => say!("page-cut-learning"),
        FloorUse::Gathering => say!("page-cut-gathering"),
        FloorUse::Parking => say!("page-cut-parking"),
    }
}
