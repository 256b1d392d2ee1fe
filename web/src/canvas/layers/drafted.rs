//! What is drawn of marks that are neither streets, uses nor places: parcels, barriers, crossings, remarks, what lies
//! outside, bubbles before any street; and what is drafted while something is placed.

use hobnail_core::say;
use std::sync::Arc;

use hobnail_core::plan::document::UnitSystem;
use hobnail_core::plan::land::{Beside, Note};
use hobnail_core::plan::{Alternative, Document, Footprint, Mark, SoftArea};

use super::land::{label, middle, widest_place};
use crate::app::remarks::{numbered, votes};
use crate::canvas::palette;
use crate::canvas::picture::{Align, Color, Fill, Form, Item, Layer, Path, Sign, Stroke, Words};
use crate::canvas::scene::Line;
use crate::canvas::scene_of::meters;

/// Words of a note are cut before so many letters are said; all of them stand in its details.
const MOST_LETTERS: usize = 36;

/// Half the side of a note's square, in pixels.
const NOTE_PX: f64 = 10.0;

/// From this scale on what a note says stands beside it.
const NOTES_FROM_PX_PER_M: f64 = 0.4;

/// A quarter of a mile: 1,320 feet.
const QUARTER_MILE_M: f64 = 402.336;
/// The round length that stands for it where numbers are metric.
const METRIC_WALK_M: f64 = 400.0;
const METRIC_WALK: &str = "400 m";

/// Bubbles before any street: a soft edge, the tint and the texture of the use.
pub fn bubbles(layer: &mut Layer, alternative: &Alternative) {
    for mark in alternative.marks.values() {
        let Mark::SoftArea(area) = mark else { continue };
        let tint = palette::tint(area.land_use);
        let tone = palette::tone(area.land_use);
        let path = ring(&meters(&area.outline));
        // The wider a stroke the fainter: together they fade out.
        for (width_px, opacity) in [(22.0, 0.18), (14.0, 0.22), (7.0, 0.3)] {
            layer.stroke(path.clone(), Stroke::drawn(tint.at(opacity), width_px), 0.0);
        }
        layer.fill(path.clone(), Fill::Flat(tint.at(0.6)));
        if let Some(texture) = palette::texture(area.land_use) {
            layer.fill(path.clone(), Fill::Textured(texture, tone.at(0.35)));
        }
        layer.stroke(path, Stroke::drawn(tone, palette::MEDIUM_PX).dashed(&[2.0, 5.0]), 0.0);
    }
}

/// Parcels, barriers, crossings, and what lies outside.
#[must_use]
pub fn marks(alternative: &Alternative) -> Layer {
    let mut layer = Layer::default();
    for mark in alternative.marks.values() {
        match mark {
            Mark::Parcel(parcel) => {
                let (texture, dash_px) = palette::parcel(parcel.owner);
                let path = ring(&meters(&parcel.outline));
                if let Some(texture) = texture {
                    layer.fill(path.clone(), Fill::Textured(texture, palette::SOFT_INK.at(0.3)));
                }
                let line = Stroke::drawn(palette::SOFT_INK, palette::MEDIUM_PX).dashed(dash_px);
                layer.stroke(path, line, 0.0);
            }
            Mark::Barrier(barrier) => {
                // A full line with ticks across it: the ticks are a second, wider line in short dashes.
                let mut path = Path::default();
                path.line(meters(&barrier.line));
                let path = Arc::new(path);
                layer.stroke(path.clone(), Stroke::drawn(palette::PAPER.at(0.9), 6.0), 0.0);
                layer.stroke(path.clone(), Stroke::drawn(palette::INK, 2.0), 0.0);
                let mut ticks = Stroke::drawn(palette::INK, 11.0).dashed(&[1.5, 10.5]);
                ticks.has_round_ends = false;
                layer.stroke(path, ticks, 0.0);
            }
            Mark::Crossing(crossing) => {
                let at = crossing.at.to_m();
                layer.items.push(sign(at, Form::Square, 6.5, palette::PAPER));
                layer.items.push(sign(at, Form::Cross, 4.0, palette::CLEAR));
            }
            Mark::Outside(outside) => match &outside.footprint {
                Footprint::Point(point) => layer.items.push(sign(point.to_m(), Form::Square, 5.0, palette::AROUND)),
                Footprint::Line(points) | Footprint::Area(points) => {
                    let path = ring(&meters(points));
                    layer.fill(path.clone(), Fill::Flat(palette::SOFT_INK.at(0.10)));
                    let line = Stroke::drawn(palette::SOFT_INK, palette::MEDIUM_PX).dashed(&[10.0, 4.0, 2.0, 4.0]);
                    layer.stroke(path, line, 0.0);
                }
            },
            _ => {}
        }
    }
    layer
}

/// The words of these marks, and of bubbles: those of points first, since areas are known by more than their words.
#[must_use]
pub fn words(document: &Document, alternative: &Alternative) -> Layer {
    let mut layer = Layer::default();
    let is_area = |mark: &Mark| matches!(mark, Mark::SoftArea(_) | Mark::Parcel(_) | Mark::Outside(_));
    let marks = || alternative.marks.values();
    let points_first = marks()
        .filter(|mark| !is_area(mark))
        .chain(marks().filter(|mark| is_area(mark)));
    for mark in points_first {
        match mark {
            Mark::SoftArea(area) => {
                let text = bubble_words(document, area);
                layer.items.extend(inside(&meters(&area.outline), text, 0.25));
            }
            Mark::Parcel(parcel) => {
                let owner = palette::owner_word(parcel.owner);
                let text = joined(&[&parcel.label, owner, &asked(parcel.beside)]);
                layer.items.extend(inside(&meters(&parcel.outline), text, 0.35));
            }
            Mark::Outside(outside) => {
                let name = if outside.name.is_empty() {
                    say!("drawing-outside")
                } else {
                    &outside.name
                };
                let homes = match outside.homes {
                    0 => String::new(),
                    homes => say!("drawing-outside-homes", count = homes),
                };
                let jobs = match outside.jobs {
                    0 => String::new(),
                    jobs => say!("drawing-outside-jobs", count = jobs),
                };
                let text = joined(&[name, &homes, &jobs]);
                let line = meters(outside.footprint.points());
                let at = middle(&line);
                layer.items.extend(at.map(|at| label(at, text, palette::INK, 0.2)));
            }
            Mark::SiteAccess(access) if !access.name.is_empty() => {
                layer.items.push(beside(access.at.to_m(), access.name.clone(), 0.6));
            }
            Mark::Barrier(barrier) => {
                let text = joined(&[&barrier.name, &asked(barrier.beside)]);
                let line = meters(&barrier.line);
                let at = super::marks::place_of_sign(&crate::canvas::scene::Extent::Line(line));
                let at = at.filter(|_| !text.is_empty());
                layer.items.extend(at.map(|at| beside(at, text, 0.4)));
            }
            _ => {}
        }
    }
    layer
}

/// Remarks: a numbered square each, above whatever is laid over the plan.
#[must_use]
pub fn notes(alternative: &Alternative) -> Layer {
    let mut layer = Layer::default();
    for (number, _, note) in numbered(alternative) {
        layer
            .items
            .push(sign(note.at.to_m(), Form::Square, NOTE_PX, palette::NOTE));
        layer.items.push(Item::Words(Words {
            at: note.at.to_m(),
            shift_px: (0.0, 0.0),
            text: number.to_string(),
            size_px: 13.0,
            is_bold: true,
            color: palette::INK,
            halo: palette::NOTE,
            angle_rad: 0.0,
            align: Align::Middle,
            from_px_per_m: 0.0,
        }));
    }
    layer
}

/// What remarks say, beside their squares: their words, their dots, and whether anything answers them.
#[must_use]
pub fn note_words(alternative: &Alternative) -> Layer {
    let beside_square = |(_, _, note): (usize, _, &Note)| {
        let said = if note.text.is_empty() {
            say!("drawing-note")
        } else {
            &note.text
        };
        let mut text: String = said.chars().take(MOST_LETTERS).collect();
        if said.chars().count() > MOST_LETTERS {
            // Where a word ends, unless the first is longer.
            text.truncate(text.rfind(' ').unwrap_or(text.len()));
            text.push('…');
        }
        let answered = if note.answers.is_empty() {
            ""
        } else {
            say!("remarks-answered")
        };
        let mut words = beside(
            note.at.to_m(),
            // A count stays in one line.
            joined(&[&text, &votes(note).replace(' ', "\u{a0}"), answered]),
            NOTES_FROM_PX_PER_M,
        );
        if let Item::Words(words) = &mut words {
            words.shift_px.0 = NOTE_PX + 5.0;
        }
        words
    };
    Layer {
        items: numbered(alternative).map(beside_square).collect(),
    }
}

/// The circle of a five-minute walk in a straight line about a center that is being placed, with its word.
#[must_use]
pub fn circle(at: (f64, f64), units: UnitSystem) -> Layer {
    let (radius_m, word) = match units {
        UnitSystem::Metric => (METRIC_WALK_M, METRIC_WALK),
        UnitSystem::UsCustomary => (QUARTER_MILE_M, say!("drawing-quarter-mile")),
    };
    let mut path = Path::default();
    path.circle(at, radius_m);
    let path = Arc::new(path);
    let mut layer = Layer::default();
    layer.stroke(path.clone(), Stroke::drawn(palette::PAPER.at(0.8), 3.0), 0.0);
    let line = Stroke::drawn(palette::CHOSEN, palette::MEDIUM_PX).dashed(&[12.0, 4.0, 3.0, 4.0]);
    layer.stroke(path, line, 0.0);
    // On the circle to the south-east, where neither the panels nor the pointer hide it.
    let at = (at.0 + radius_m * 0.8, at.1 - radius_m * 0.6);
    layer.items.push(label(at, word.to_owned(), palette::CHOSEN, 0.0));
    layer
}

/// The size of land that is being drawn, in its middle.
#[must_use]
pub fn size(outline: &Line, words: String) -> Layer {
    let at = widest_place(outline).map(|(at, _)| at);
    Layer {
        items: at
            .map(|at| label(at, words, palette::CHOSEN, 0.0))
            .into_iter()
            .collect(),
    }
}

/// The most stories that a line asks for beside it, in words; empty where it asks for none.
fn asked(beside: Option<Beside>) -> String {
    let stories = beside.and_then(|beside| beside.stories);
    stories.map_or_else(String::new, |stories| say!("drawing-stories-beside", count = stories))
}

fn bubble_words(document: &Document, area: &SoftArea) -> String {
    let first = area.program.first();
    let held = first.and_then(|portion| document.building_types.get(&portion.building_type));
    let name = held.map_or(palette::use_word(area.land_use), |held| held.name.as_str());
    let percent = f64::from(area.intensity_ppm) / 10_000.0;
    if percent >= 100.0 {
        name.to_owned()
    } else {
        [name, ", ", &percent.round().to_string(), "%"].concat()
    }
}

/// Those that say something, one after another.
fn joined(parts: &[&str]) -> String {
    let held: Vec<&str> = parts.iter().copied().filter(|part| !part.is_empty()).collect();
    held.join(", ")
}

fn inside(outline: &Line, text: String, from_px_per_m: f64) -> Option<Item> {
    const GLYPH_PX: f64 = 6.0;
    let (at, room_m) = widest_place(outline)?;
    let needed_px = text.chars().count() as f64 * GLYPH_PX;
    Some(label(
        at,
        text,
        palette::INK,
        (needed_px / room_m.max(1.0)).max(from_px_per_m),
    ))
}

fn ring(outline: &Line) -> Arc<Path> {
    let mut path = Path::default();
    path.ring(outline.iter().copied());
    Arc::new(path)
}

fn beside(at: (f64, f64), text: String, from_px_per_m: f64) -> Item {
    Item::Words(Words {
        at,
        shift_px: (13.0, 0.0),
        text,
        size_px: 12.5,
        is_bold: false,
        color: palette::INK,
        halo: palette::PAPER,
        angle_rad: 0.0,
        align: Align::Right,
        from_px_per_m,
    })
}

fn sign(at: (f64, f64), form: Form, radius_px: f64, fill: Color) -> Item {
    Item::Sign(Sign {
        at,
        shift_px: (0.0, 0.0),
        form,
        radius_px,
        fill,
        line: palette::INK,
        line_px: 1.5,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use hobnail_core::plan::MarkId;
    use hobnail_core::plan::land::{OwnerGroup, Parcel};
    use hobnail_core::plan::{PlanPoint, projection::GeographicPoint};

    fn drawn(marks_held: Vec<Mark>) -> (Document, Alternative) {
        let origin = GeographicPoint {
            longitude_ndeg: 0,
            latitude_ndeg: 0,
        };
        let alternative = Alternative {
            marks: (0..).map(MarkId).zip(marks_held).collect(),
            ..Alternative::default()
        };
        (Document::new("Test", origin), alternative)
    }

    fn texts(layer: &Layer) -> Vec<String> {
        let words = layer.items.iter().filter_map(|item| match item {
            Item::Words(words) => Some(words.text.clone()),
            _ => None,
        });
        words.collect()
    }

    #[test]
    fn owners_are_told_apart_by_line_texture_and_word() {
        let outline = [(0, 0), (90_000, 0), (90_000, 90_000)].map(|(x, y)| PlanPoint::new(x, y));
        let owners = [
            OwnerGroup::Public,
            OwnerGroup::Willing,
            OwnerGroup::Unknown,
            OwnerGroup::Unwilling,
        ];
        let parcel = |owner| {
            Mark::Parcel(Parcel {
                label: String::new(),
                outline: outline.to_vec(),
                owner,
                beside: None,
            })
        };
        let (document, alternative) = drawn(owners.map(parcel).to_vec());
        assert_eq!(
            texts(&words(&document, &alternative)),
            ["Public", "Willing", "Not asked", "Unwilling"]
        );
        for (index, owner) in owners.into_iter().enumerate() {
            let others = owners.into_iter().skip(index + 1);
            assert!(
                others
                    .into_iter()
                    .all(|other| palette::parcel(other) != palette::parcel(owner))
            );
        }
    }

    #[test]
    fn a_long_remark_is_cut_and_says_its_number_and_its_dots() {
        let note = Mark::Note(Note {
            at: PlanPoint::new(0, 0),
            text: "long ".repeat(20),
            author: "Table 3".to_owned(),
            votes: 14,
            present: 22,
            ..Note::default()
        });
        let (_, alternative) = drawn(vec![note]);
        let said = texts(&note_words(&alternative));
        assert!(
            said[0].starts_with("long long") && said[0].ends_with("long…, 14\u{a0}of\u{a0}22\u{a0}dots"),
            "after a whole word, the dots in one line: {said:?}"
        );
        assert_eq!(texts(&notes(&alternative)), ["1"]);
    }
}
