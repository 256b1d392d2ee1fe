//! What the hand is doing: selection and its grips, the next point and why it lands there, what a press acts upon.

use std::sync::Arc;

use hobnail_core::plan::flatten::flatten;
use hobnail_core::plan::street::Street;
use hobnail_core::plan::{Footprint, PlanPoint, UseMark};

use crate::app::places::Place;
use crate::canvas::offset::beside;
use crate::canvas::palette;
use crate::canvas::picture::{Align, Color, Fill, Form, Item, Layer, Path, Sign, Stroke, Words};
use crate::tools::drawing::{Quantity, Sentence, sentence};
use crate::tools::select::{middles, radius_handle};
use crate::tools::snap::Reason;
use crate::tools::{Hints, shape};

/// How deep a side is shown that the next press acts upon, in meters.
const SIDE_SHOWN_M: f64 = 12.0;

/// Shapes with more corners than these are round.
const MOST_MARKED: usize = 16;

/// What is selected, as far as it is drawn.
#[derive(Clone, Debug, PartialEq)]
pub enum Selected<'a> {
    /// A street, and which of its corners.
    Street(&'a Street, Option<usize>),
    /// An outline, line or point, with corners to take hold of.
    Shape(Footprint),
    /// One of many: its line, and whether that closes.
    Line(Vec<PlanPoint>, bool),
    /// A use, and the outline of its land where that is enclosed.
    Use(&'a UseMark, Vec<PlanPoint>),
}

/// The selection and its grips.
#[must_use]
pub fn selection(selected: &Selected<'_>) -> Layer {
    let mut layer = Layer::default();
    match selected {
        Selected::Street(street, corner) => {
            if street.line.iter().any(|vertex| vertex.corner_radius_mm > 0) {
                let mut corners = Path::default();
                corners.line(street.line.iter().map(|vertex| vertex.point.to_m()));
                layer.stroke(corners, THIN, 0.0);
            }
            line_of(&mut layer, &flatten(&street.line));
            if let Some((index, handle)) = corner.and_then(|index| Some((index, radius_handle(street, index)?))) {
                let mut stem = Path::default();
                let at = street.line.get(index).map(|vertex| vertex.point.to_m());
                stem.line(at.into_iter().chain([handle.to_m()]));
                layer.stroke(stem, THIN, 0.0);
                layer.items.push(sign(handle.to_m(), Form::Round, 6.5, palette::PAPER));
            }
            for middle in middles(street) {
                layer.items.push(sign(middle.to_m(), Form::Round, 4.0, palette::PAPER));
            }
            for (index, vertex) in street.line.iter().enumerate() {
                let is_picked = *corner == Some(index);
                let inside = if is_picked { palette::CHOSEN } else { palette::PAPER };
                let form = if vertex.tie.is_some() {
                    Form::Diamond
                } else {
                    Form::Square
                };
                let radius_px = if is_picked { 7.0 } else { 5.5 };
                layer.items.push(sign(vertex.point.to_m(), form, radius_px, inside));
            }
        }
        Selected::Shape(Footprint::Point(point)) => {
            layer.items.push(Item::Sign(Sign {
                at: point.to_m(),
                shift_px: (0.0, 0.0),
                form: Form::Square,
                radius_px: 15.0,
                fill: palette::CLEAR,
                line: palette::CHOSEN,
                line_px: palette::HEAVY_PX,
            }));
        }
        Selected::Shape(shape) => {
            let points = shape.points();
            let is_closed = matches!(shape, Footprint::Area(_));
            if is_closed {
                outline(&mut layer, points, 0.0);
            } else {
                let mut line = Path::default();
                line.line(points.iter().map(|point| point.to_m()));
                let line = Arc::new(line);
                layer.stroke(line.clone(), Stroke::drawn(palette::PAPER, 5.0), 0.0);
                layer.stroke(line, Stroke::drawn(palette::CHOSEN, palette::HEAVY_PX), 0.0);
            }
            // A round outline has many corners: they are marked more lightly, and the middles between them not at all.
            let is_round = points.len() > MOST_MARKED;
            let middles = shape::middles(points, is_closed);
            for middle in middles.iter().filter(|_| !is_round) {
                layer.items.push(sign(middle.to_m(), Form::Round, 3.5, palette::PAPER));
            }
            for point in points {
                let radius_px = if is_round { 2.5 } else { 5.0 };
                layer
                    .items
                    .push(sign(point.to_m(), Form::Square, radius_px, palette::PAPER));
            }
        }
        Selected::Line(points, true) => outline(&mut layer, points, 0.0),
        Selected::Line(points, false) => line_of(&mut layer, points),
        Selected::Use(mark, land) if land.is_empty() => {
            layer
                .items
                .push(sign(mark.anchor.to_m(), Form::Diamond, 7.0, palette::PAPER));
        }
        Selected::Use(_, land) => outline(&mut layer, land, 0.0),
    }
    layer
}

/// Intersections along a selected street, to be taken hold of; each with how far along the street it is.
#[must_use]
pub fn junctions(met: &[(f64, PlanPoint)]) -> Layer {
    let signs = met
        .iter()
        .map(|(_, at)| sign(at.to_m(), Form::Diamond, 6.0, palette::PAPER));
    Layer { items: signs.collect() }
}

/// What a panel speaks of: its land washed and outlined, its lines drawn over, its points ringed twice, so that they
/// are found at any scale.
#[must_use]
pub fn pointed(place: &Place) -> Layer {
    let mut layer = Layer::default();
    let mut lands = Path::default();
    for ring in &place.lands {
        lands.ring(ring.iter().copied());
    }
    let lands = Arc::new(lands);
    layer.fill(lands.clone(), Fill::Flat(palette::CHOSEN.at(0.3)));
    layer.stroke(lands, Stroke::drawn(palette::CHOSEN, 1.5), 0.0);
    let mut lines = Path::default();
    for line in &place.lines {
        lines.line(line.iter().copied());
    }
    let lines = Arc::new(lines);
    layer.stroke(lines.clone(), Stroke::drawn(palette::PAPER, 9.0), 0.0);
    layer.stroke(lines, Stroke::drawn(palette::CHOSEN, 5.0), 0.0);
    for at in &place.points {
        for radius_px in [11.0, 18.0] {
            layer.items.push(Item::Sign(Sign {
                at: *at,
                shift_px: (0.0, 0.0),
                form: Form::Round,
                radius_px,
                fill: palette::CLEAR,
                line: palette::CHOSEN,
                line_px: palette::HEAVY_PX,
            }));
        }
    }
    layer
}

/// A thin line that shows how things stand to each other.
const THIN: Stroke = Stroke::drawn(palette::CHOSEN, 1.25).dashed(&[7.0, 4.0]);

/// A selected line.
fn line_of(layer: &mut Layer, points: &[PlanPoint]) {
    let mut line = Path::default();
    line.line(points.iter().map(|point| point.to_m()));
    let line = Arc::new(line);
    layer.stroke(line.clone(), Stroke::drawn(palette::PAPER, 6.0), 0.0);
    layer.stroke(line, Stroke::drawn(palette::CHOSEN, 3.0), 0.0);
}

/// What the tool is about to do.
#[must_use]
pub fn hints(hints: &Hints, in_words: &dyn Fn(&Sentence) -> String) -> Layer {
    let mut layer = Layer::default();
    let mut lines = Path::default();
    for line in &hints.lines {
        lines.line(line.map(PlanPoint::to_m));
    }
    let lines = Arc::new(lines);
    layer.stroke(lines.clone(), Stroke::drawn(palette::PAPER.at(0.8), 3.5), 0.0);
    layer.stroke(lines, THIN, 0.0);
    outline(&mut layer, &hints.outline, 0.10);
    if let Some((run, from_m)) = &hints.side {
        // The land lies to the left of its run.
        let run: Vec<_> = run.iter().map(|point| point.to_m()).collect();
        let back = beside(&run, from_m + SIDE_SHOWN_M);
        let mut band = Path::default();
        band.ring(beside(&run, *from_m).into_iter().chain(back.into_iter().rev()));
        let band = Arc::new(band);
        layer.fill(band.clone(), Fill::Flat(palette::CHOSEN.at(0.25)));
        layer.stroke(band.clone(), Stroke::drawn(palette::PAPER, 4.5), 0.0);
        layer.stroke(band, Stroke::drawn(palette::CHOSEN, palette::HEAVY_PX), 0.0);
    }
    let mut stretch = Path::default();
    stretch.line(hints.stretch.iter().map(|point| point.to_m()));
    let stretch = Arc::new(stretch);
    layer.stroke(stretch.clone(), Stroke::drawn(palette::PAPER, 9.0), 0.0);
    layer.stroke(stretch, Stroke::drawn(palette::CHOSEN, 5.0), 0.0);
    for point in &hints.points {
        layer.items.push(sign(point.to_m(), Form::Square, 4.5, palette::PAPER));
    }
    if let Some((middle, length_mm)) = hints.length {
        layer.items.push(words(
            middle,
            in_words(&sentence!("tools-length", length = Quantity::Length(length_mm))),
            (0.0, -14.0),
            Align::Middle,
        ));
    }
    if let Some(snap) = hints.snap {
        let form = match snap.reason {
            Reason::Intersection => Form::Square,
            Reason::StreetEnd | Reason::Corner | Reason::OwnStart => Form::Diamond,
            Reason::OnStreet | Reason::SiteBoundary | Reason::AreaEdge | Reason::EqualBlock => Form::Round,
            Reason::Grid
            | Reason::Free
            | Reason::Extension
            | Reason::StraightOn
            | Reason::Square
            | Reason::Parallel
            | Reason::Guides
            | Reason::Typed => Form::Cross,
        };
        let is_free = matches!(snap.reason, Reason::Grid | Reason::Free);
        let radius_px = if is_free { 6.0 } else { 8.0 };
        layer.items.push(Item::Sign(Sign {
            at: snap.point.to_m(),
            shift_px: (0.0, 0.0),
            form,
            radius_px,
            fill: palette::CLEAR,
            line: palette::CHOSEN,
            line_px: 2.0,
        }));
        let why = snap.reason.words();
        if !why.is_empty() {
            layer
                .items
                .push(words(snap.point, why.to_owned(), (15.0, 15.0), Align::Right));
        }
    }
    if let Some((at, said)) = &hints.words {
        // Below the reason where they are said at the point, and over the middle of what they speak of elsewhere.
        let (shift_px, align) = match hints.snap {
            Some(snap) if snap.point != *at => ((0.0, 0.0), Align::Middle),
            Some(_) => ((15.0, 33.0), Align::Right),
            None => ((15.0, 15.0), Align::Right),
        };
        layer.items.push(words(*at, in_words(said), shift_px, align));
    }
    layer
}

/// The crosshair that the arrow keys move.
#[must_use]
pub fn crosshair(at: PlanPoint) -> Layer {
    Layer {
        items: vec![Item::Sign(Sign {
            at: at.to_m(),
            shift_px: (0.0, 0.0),
            form: Form::Cross,
            radius_px: 18.0,
            fill: palette::CLEAR,
            line: palette::INK,
            line_px: 2.0,
        })],
    }
}

fn outline(layer: &mut Layer, points: &[PlanPoint], opacity: f32) {
    let mut ring = Path::default();
    ring.ring(points.iter().map(|point| point.to_m()));
    let ring = Arc::new(ring);
    layer.fill(ring.clone(), Fill::Flat(palette::CHOSEN.at(opacity)));
    layer.stroke(ring.clone(), Stroke::drawn(palette::PAPER, 5.0), 0.0);
    layer.stroke(ring, Stroke::drawn(palette::CHOSEN, palette::HEAVY_PX), 0.0);
}

fn sign(at: (f64, f64), form: Form, radius_px: f64, fill: Color) -> Item {
    Item::Sign(Sign {
        at,
        shift_px: (0.0, 0.0),
        form,
        radius_px,
        fill,
        line: palette::CHOSEN,
        line_px: 1.75,
    })
}

fn words(at: PlanPoint, text: String, shift_px: (f64, f64), align: Align) -> Item {
    Item::Words(Words {
        at: at.to_m(),
        shift_px,
        text,
        size_px: 13.0,
        is_bold: true,
        color: palette::CHOSEN,
        halo: palette::PAPER,
        angle_rad: 0.0,
        align,
        from_px_per_m: 0.0,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tools::snap::Snap;

    #[test]
    fn every_snap_shows_its_reason_in_words() {
        for reason in [
            Reason::Intersection,
            Reason::StreetEnd,
            Reason::Corner,
            Reason::OwnStart,
            Reason::OnStreet,
            Reason::SiteBoundary,
            Reason::AreaEdge,
            Reason::Extension,
            Reason::StraightOn,
            Reason::Square,
            Reason::Parallel,
            Reason::Guides,
            Reason::EqualBlock,
            Reason::Typed,
            Reason::Free,
            Reason::Grid,
        ] {
            let shown = hints(
                &Hints {
                    snap: Some(Snap {
                        point: PlanPoint::new(0, 0),
                        tie: None,
                        reason,
                    }),
                    ..Hints::default()
                },
                &|_| String::new(),
            );
            let said = shown.items.iter().filter_map(|item| match item {
                Item::Words(words) => Some(words.text.as_str()),
                _ => None,
            });
            let said: Vec<&str> = said.collect();
            if reason == Reason::Grid {
                assert!(said.is_empty(), "a place that is no place needs no words");
            } else {
                assert!(!reason.words().is_empty());
                assert_eq!(said, [reason.words()], "{reason:?}");
            }
        }
    }
}
