//! Pieces of a base as the readers hand them over (`web/readers/src/pieces.rs`), put together again.

use super::meaning::Becomes;
use super::{Base, Class, Feature, Hole, Position, Shape};
use crate::app::fields::STREET_OWNERS;

const BETWEEN: char = '\u{1f}';
const BEHIND: char = '\u{1e}';

/// A piece that is not as pieces are: the page and the readers' module are of different versions.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Unfitting;

/// The numbers of a piece, from the first not yet taken.
struct Numbers<'a> {
    shapes: &'a [u32],
    positions: &'a [f64],
}

impl Numbers<'_> {
    fn next(&mut self) -> Option<u32> {
        let (first, rest) = self.shapes.split_first()?;
        self.shapes = rest;
        Some(*first)
    }

    fn positions(&mut self, count: u32) -> Option<Vec<Position>> {
        let (taken, rest) = self.positions.split_at_checked((count as usize).checked_mul(2)?)?;
        self.positions = rest;
        Some(taken.chunks_exact(2).map(|pair| [pair[0], pair[1]]).collect())
    }

    /// The geometry of the next feature: its shape, its parts, and their holes with the places of their parts.
    fn geometry(&mut self) -> Option<(Shape, Vec<Vec<Position>>, Vec<Hole>)> {
        let (shape, count) = (self.next()?, self.next()?);
        let (mut parts, mut holes) = (Vec::new(), Vec::new());
        match shape {
            0 => {
                parts.push(self.positions(count)?);
                Some((Shape::Points, parts, holes))
            }
            1 => {
                for _ in 0..count {
                    let length = self.next()?;
                    parts.push(self.positions(length)?);
                }
                Some((Shape::Lines, parts, holes))
            }
            2 => {
                for _ in 0..count {
                    let place = parts.len();
                    for ring in 0..self.next()? {
                        let length = self.next()?;
                        let positions = self.positions(length)?;
                        if ring == 0 {
                            parts.push(positions);
                        } else {
                            holes.push((place, positions));
                        }
                    }
                }
                Some((Shape::Areas, parts, holes))
            }
            _ => None,
        }
    }
}

impl Base {
    /// Adds the features of a piece. Cost: linear in it, times classes where features of unlike classes take turns.
    ///
    /// # Errors
    /// [`Unfitting`]; features before the place that does not fit stay.
    pub fn add_piece(&mut self, shapes: &[u32], positions: &[f64], words: &str) -> Result<(), Unfitting> {
        let mut numbers = Numbers { shapes, positions };
        for said in words.split_terminator(BEHIND) {
            self.add_feature(&mut numbers, said).ok_or(Unfitting)?;
        }
        let is_used_up = numbers.shapes.is_empty() && numbers.positions.is_empty();
        if is_used_up { Ok(()) } else { Err(Unfitting) }
    }

    fn add_feature(&mut self, numbers: &mut Numbers<'_>, said: &str) -> Option<()> {
        let layer = numbers.next()? as usize;
        let suggested = [numbers.next()?, numbers.next()?, numbers.next()?];
        let owner = *STREET_OWNERS.get(numbers.next()? as usize)?;
        let level = i8::try_from(numbers.next()?.cast_signed()).ok()?;
        let (shape, parts, holes) = numbers.geometry()?;
        let mut said = said.split(BETWEEN);
        let (tag, words) = (said.next()?, said.next()?);
        let (mut name, mut label, mut homes) = ("", "", 0);
        while let (Some(key), Some(value)) = (said.next(), said.next()) {
            if key.eq_ignore_ascii_case("name") {
                name = value;
            } else if LABELS.iter().any(|known| key.eq_ignore_ascii_case(known)) {
                label = value;
            } else if key == "building:flats" || key.eq_ignore_ascii_case("homes") {
                homes = value.parse().unwrap_or(0);
            }
        }
        let class = self.class_of(layer, tag, suggested, shape);
        self.features.push(Feature {
            class,
            name: if name.is_empty() { label } else { name }.to_owned(),
            words: words.to_owned(),
            level,
            owner,
            homes,
            shape,
            parts,
            holes,
        });
        Some(())
    }

    /// The class of this kind, new where there is none yet; one more is counted in it.
    fn class_of(&mut self, layer: usize, tag: &str, suggested: [u32; 3], shape: Shape) -> usize {
        let is_it = |class: &Class| class.layer == layer && class.tag == tag && class.suggested == suggested;
        let last = self.features.last().map(|feature| feature.class);
        let place = last
            .filter(|last| self.classes.get(*last).is_some_and(is_it))
            .or_else(|| self.classes.iter().position(is_it));
        if let Some(class) = place.and_then(|place| self.classes.get_mut(place)) {
            class.count = class.count.saturating_add(1);
            if !class.shapes.contains(&shape) {
                class.shapes.push(shape);
            }
        }
        place.unwrap_or_else(|| {
            self.classes.push(Class {
                layer,
                tag: tag.to_owned(),
                suggested,
                count: 1,
                shapes: vec![shape],
                becomes: Becomes::suggested(suggested),
            });
            self.classes.len() - 1
        })
    }
}

/// Columns that label a parcel. Common practice, no source; owners' names are never read.
const LABELS: [&str; 5] = ["label", "parcel", "parcel_id", "map_par_id", "lot"];
