//! Names, where there is room for them on paper: places first, then streets, then land. A name that would lie over an
//! earlier one is left out.

use super::{Item, LayerId, Look, SIGN_MM, Sheet, Words};
use crate::number;
use crate::order;
use crate::plan::flatten::flatten;
use crate::plan::{Footprint, Mark, PlaceKind, PlanPoint};
use crate::report::drawing::offset::{length, spaced};
use crate::report::drawing::tones;
use crate::report::drawing::ways::meters;
use crate::report::drawing::widest_place;
use crate::report::drawing::words::{constraint_word, place_word};
use crate::say;
use crate::study::Study;

/// Width of a letter as a share of the type's height, on average.
pub(in crate::report::export) const GLYPH_SHARE: f64 = 0.54;

/// Heights of type on paper, in millimeters: places, streets, land, contours.
const SIZES_MM: [f64; 4] = [3.0, 2.3, 2.1, 1.9];

/// How far apart the heights of a contour stand on paper, in millimeters.
const HEIGHTS_MM: f64 = 120.0;

/// Words with the room they may take along their line, in meters.
struct Wanted {
    words: Words,
    room_m: f64,
}

/// All names that have room, and last the heights of contours.
pub(super) fn add_names(study: &Study, scale: f64, sheet: &mut Sheet) {
    let document = study.seen();
    let m_per_mm = scale / 1e3;
    // Above the sign of a place.
    let above_m = (SIGN_MM + SIZES_MM[0] * 0.7) * m_per_mm;
    let (mut places, mut streets, mut areas) = (Vec::new(), Vec::new(), Vec::new());
    super::land::for_each(study, &document, |mark| match mark {
        Mark::Place(place) => {
            let name = if place.name.is_empty() {
                place_word(place.kind)
            } else {
                &place.name
            };
            let at = match &place.footprint {
                Footprint::Point(point) => Some((point.to_m().0, point.to_m().1 + above_m)),
                Footprint::Line(line) => line.get(line.len() / 2).copied().map(PlanPoint::to_m),
                Footprint::Area(outline) => widest_place(&meters(outline)).map(|(at, _)| at),
            };
            let wanted = at.map(|at| wanted(at, name, SIZES_MM[0], f64::INFINITY));
            places.extend(wanted.map(|wanted| (place.kind != PlaceKind::Center, wanted)));
        }
        Mark::Street(street) if !street.name.is_empty() => {
            streets.extend(along(&meters(&flatten(&street.line)), &street.name));
        }
        Mark::Constraint(area) => {
            let is_named = !area.name.is_empty();
            let name = if is_named {
                &area.name
            } else {
                constraint_word(area.kind)
            };
            let place = widest_place(&meters(&area.outline));
            areas.extend(
                place.map(|(at, room_m)| wanted(at, name, SIZES_MM[2], if is_named { f64::INFINITY } else { room_m })),
            );
        }
        _ => {}
    });
    order::sort_by_key(&mut places, |(is_later, _)| *is_later);
    let mut all: Vec<Wanted> = places
        .into_iter()
        .map(|(_, mut wanted)| {
            wanted.words.is_bold = true;
            wanted
        })
        .collect();
    all.append(&mut streets);
    all.append(&mut areas);
    all.extend(land(study));
    let name_count = all.len();
    let index = sheet
        .groups
        .iter()
        .filter(|group| group.layer == LayerId::IndexContours);
    for item in index.flat_map(|group| &group.items) {
        add_heights(item, m_per_mm, &mut all);
    }
    let mut taken: Vec<(f64, f64, f64)> = Vec::new();
    let (mut items, mut heights) = (Vec::new(), Vec::new());
    for (place, Wanted { words, room_m }) in all.into_iter().enumerate() {
        let width_m = words.text.chars().count() as f64 * words.size_mm * GLYPH_SHARE * m_per_mm;
        let disks = disks(&words, width_m, words.size_mm * 0.6 * m_per_mm);
        let is_free = |one: &(f64, f64, f64)| {
            let mut held = taken.iter();
            held.all(|other| number::length(one.0 - other.0, one.1 - other.1) >= one.2 + other.2)
        };
        if width_m <= room_m && disks.iter().all(is_free) {
            taken.extend(disks);
            let items = if place < name_count { &mut items } else { &mut heights };
            items.push(Item::Words(words));
        }
    }
    let look = Look {
        fill: Some((tones::INK, 1.0)),
        stroke: Some((tones::PAPER, 0.5)),
        ..Look::default()
    };
    let brown = Look {
        fill: Some((tones::CONTOUR_WORDS, 1.0)),
        ..look
    };
    sheet.add(LayerId::ContourHeights, brown, heights);
    sheet.add(LayerId::Names, look, items);
}

fn wanted(at: (f64, f64), name: &str, size_mm: f64, room_m: f64) -> Wanted {
    Wanted {
        words: Words {
            at,
            text: name.to_owned(),
            size_mm,
            angle_rad: 0.0,
            is_bold: false,
        },
        room_m,
    }
}

/// The height of a contour, again and again, where it runs straightest.
fn add_heights(contour: &Item, m_per_mm: f64, all: &mut Vec<Wanted>) {
    let Item::Contour((line, _), height) = contour else {
        return;
    };
    let text = height.to_string();
    let step_m = text.len() as f64 * SIZES_MM[3] * GLYPH_SHARE * 1.3 * m_per_mm;
    for piece in spaced(line, step_m).chunks(((HEIGHTS_MM * m_per_mm / step_m) as usize).max(2)) {
        if let Some(mut found) = along(piece, &text) {
            found.words.size_mm = SIZES_MM[3];
            all.push(found);
        }
    }
}

/// A street's name along its longest straight run, read from the left.
fn along(line: &[(f64, f64)], name: &str) -> Option<Wanted> {
    let runs = line.windows(2).filter_map(|ends| match ends {
        [a, b] => Some((*a, *b, length(ends))),
        _ => None,
    });
    let (a, b, run_m) = runs.reduce(|longest, next| if next.2 > longest.2 { next } else { longest })?;
    let (a, b) = if a <= b { (a, b) } else { (b, a) };
    let mut wanted = wanted(
        (f64::midpoint(a.0, b.0), f64::midpoint(a.1, b.1)),
        name,
        SIZES_MM[1],
        run_m,
    );
    wanted.words.angle_rad = number::atan2(b.1 - a.1, b.0 - a.0);
    Some(wanted)
}

/// The building types of land with a use.
fn land(study: &Study) -> Vec<Wanted> {
    let document = study.seen();
    let labels = study
        .fabric()
        .used_faces(&document, study.alternative())
        .filter_map(|(face, _, mark)| {
            let mut portions = mark.program.clone();
            order::sort_by_key(&mut portions, |portion| std::cmp::Reverse(portion.share_ppm));
            let name = &document.building_types.get(&portions.first()?.building_type)?.name;
            let text = match portions.len() {
                1 => name.clone(),
                more => say!("drawing-land-more", name = name, count = more - 1),
            };
            let (at, room_m) = widest_place(&meters(face.land.pieces.first()?.first()?))?;
            Some(wanted(at, &text, SIZES_MM[2], room_m))
        });
    labels.collect()
}

/// Disks along the line of words that cover them.
fn disks(words: &Words, width_m: f64, radius_m: f64) -> Vec<(f64, f64, f64)> {
    let count = (width_m / radius_m / 1.5).ceil().max(1.0) as u32;
    let (x, y) = (number::cos(words.angle_rad), number::sin(words.angle_rad));
    let disk = |place: u32| {
        let along_m = width_m * ((f64::from(place) + 0.5) / f64::from(count) - 0.5);
        (words.at.0 + x * along_m, words.at.1 + y * along_m, radius_m)
    };
    (0..count).map(disk).collect()
}
