//! Where on the drawing something is that a panel speaks of: a note, or what a figure counted in a few places.

use hobnail_core::measures::streets::methods::place_of_largest;
use hobnail_core::measures::streets::ways::CountedPlace;
use hobnail_core::plan::PlanPoint;
use hobnail_core::say;
use hobnail_core::study::Study;
use hobnail_core::study::notes::Note;

use super::counted_land;
use super::words::sentence_case;
use crate::canvas::camera::PlanBox;
use crate::canvas::scene::Line;
use crate::canvas::scene_of::meters;

/// Figures that count something in a few places. A median has none, and a sum over all streets has too many.
const PLACED: [&str; 14] = [
    "streets.ways_in_and_out",
    "streets.ways_over_streets",
    "streets.most_homes_behind_one",
    "streets.most_homes_behind_one_share",
    "streets.dead_ends",
    "streets.dead_end_length",
    "streets.longest_dead_end",
    "blocks.perimeter_longest",
    "blocks.length_longest",
    "walk.worst_directness",
    "walk.worst_directness_homes",
    "walk.busiest_segment_walks",
    "walk.best_center_5min_homes",
    "walk.best_center_5min_homes_share",
];

/// Places shown on the drawing while a panel speaks of them.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Place {
    /// Points, in meters.
    pub points: Vec<(f64, f64)>,
    /// Lines, in meters.
    pub lines: Vec<Line>,
    /// Land: outer rings, and holes the other way around, in meters.
    pub lands: Vec<Line>,
}

impl Place {
    /// One point.
    #[must_use]
    pub fn point(at: (f64, f64)) -> Self {
        Self {
            points: vec![at],
            ..Self::default()
        }
    }

    /// Adds a line; where it has no length a point, where it has no points nothing.
    pub(super) fn show(&mut self, line: &[PlanPoint]) {
        match line {
            [first, rest @ ..] if rest.iter().all(|point| point == first) => self.points.push(first.to_m()),
            [] => {}
            line => self.lines.push(meters(line)),
        }
    }

    /// The part of the plan it takes; `None` where there is nothing.
    #[must_use]
    pub fn extent(&self) -> Option<PlanBox> {
        let all = self.points.iter().chain(self.lines.iter().chain(&self.lands).flatten());
        PlanBox::about(all.filter_map(|(x_m, y_m)| PlanPoint::checked_from_m(*x_m, *y_m)))
    }

    /// How many things are shown.
    #[must_use]
    pub const fn count(&self) -> usize {
        self.points.len() + self.lines.len() + self.lands.len()
    }
}

/// Whether a figure counts something in a few places, which can be shown where there are any.
#[must_use]
pub fn is_placed(figure: &str) -> bool {
    PLACED.contains(&figure)
}

/// Where on the drawing is what a figure or a row of it ([`row_id`](counted_land::row_id)) counted, few places or land; `None` where it counted nothing, or nothing that has a
/// place, or where that is not worked out yet.
///
/// Cost: that of [`few_of_figure`]; for land, linear in the lots or the faces.
#[must_use]
pub fn of_figure(study: &Study, figure: &str) -> Option<Place> {
    let (whole, row) = counted_land::parted_row(figure);
    if is_placed(whole) {
        let mut place = few_of_figure(study, whole)?;
        // Where each row is a line of its own, that one.
        if let Some(line) = row.and_then(|row| place.lines.get(row).cloned()) {
            place.lines = vec![line];
        }
        return Some(place);
    }
    let mut place = Place::default();
    counted_land::show(study, figure, &mut place);
    (place.count() > 0).then_some(place)
}

/// The same for a figure that counts few places, and nothing for the others.
///
/// Cost: that of [`Study::street_places`], for a figure of streets or blocks that [`is_placed`].
#[must_use]
pub fn few_of_figure(study: &Study, figure: &str) -> Option<Place> {
    if !is_placed(figure) {
        return None;
    }
    let mut place = Place::default();
    if figure.starts_with("walk.") {
        let details = study.details()?;
        match figure {
            "walk.busiest_segment_walks" => place.show(&details.busiest_line),
            "walk.worst_directness" | "walk.worst_directness_homes" => {
                details.indirect_fronts.iter().for_each(|front| place.show(&front.line));
            }
            _ => place.show(details.best_center.as_slice()),
        }
        return (place.count() > 0).then_some(place);
    }
    let places = study.street_places();
    let mut point = |counted: &CountedPlace| place.points.push(counted.at.to_m());
    match figure {
        "streets.ways_in_and_out" => places.ways.ways_in.iter().for_each(point),
        "streets.ways_over_streets" => {
            let ways = places.ways.ways_in.iter().zip(&places.ways.streets_leading_in);
            ways.filter(|(_, streets)| **streets > 0)
                .for_each(|(way, _)| point(way));
        }
        "streets.most_homes_behind_one" | "streets.most_homes_behind_one_share" => {
            let worst = places.worst_place().filter(|worst| worst.count > 0.0);
            worst.into_iter().for_each(point);
        }
        "streets.longest_dead_end" => places.longest_dead_end().into_iter().for_each(point),
        "blocks.perimeter_longest" | "blocks.length_longest" => {
            let block = if figure == "blocks.perimeter_longest" {
                places.longest_block()
            } else {
                let sides: Vec<f64> = places.blocks.iter().map(|block| block.longest_side_m).collect();
                place_of_largest(&sides).and_then(|block| places.blocks.get(block))
            };
            let outlines = study.block_outlines_m(&mut block.into_iter().map(|block| block.at));
            place.lines.extend(outlines.into_iter().map(closed));
        }
        _ => places.dead_ends.iter().for_each(point),
    }
    (place.count() > 0).then_some(place)
}

/// A ring as a line that comes back to where it began.
pub(super) fn closed(mut ring: Line) -> Line {
    ring.extend(ring.first().copied());
    ring
}

/// A note of the study, as the page lists it.
#[derive(Clone, Debug, PartialEq)]
pub struct NoteShown {
    /// What it says.
    pub words: String,
    /// Where it is, where it has a place.
    pub place: Option<Place>,
    /// Whether it is for local codes and licensed practice to decide.
    pub is_caution: bool,
}

/// Values of the plan's own that can not be used, what the drawing leaves open, and the cautions it calls for.
#[must_use]
pub fn notes(study: &Study) -> Vec<NoteShown> {
    let shown = |note: Note| NoteShown {
        words: format!("{}.", sentence_case(&note.words)),
        place: note.at.map(|at| Place::point(at.to_m())),
        is_caution: note.is_caution,
    };
    let not_used = study.override_faults().iter().map(|fault| NoteShown {
        words: say!("page-override-not-used", fault = fault),
        place: None,
        is_caution: false,
    });
    not_used.chain(study.notes().into_iter().map(shown)).collect()
}
