//! What was read, piece by piece and flat, so that handing it to the page never takes long.
//!
//! A [`Piece`] holds whole features of some thousand positions in three parts: numbers that say shapes, positions, and
//! words. The page reads them in the same order (`web/src/app/bases/pieces.rs`).

use crate::base::{Base, Feature, Format, Geometry, Position, StreetOwner, Suggestion};
use crate::osm::tags;

/// A piece is handed over once it holds so many positions: some 100 kB.
pub const PIECE_POSITIONS: usize = 4_000;

/// Between two words of a feature, and behind each feature. They are taken out of the file's own words.
pub const BETWEEN: char = '\u{1f}';
/// Behind each feature.
pub const BEHIND: char = '\u{1e}';

/// Most categories of a table that are told apart; where there are more, a column names each row and no kinds.
const MOST_CATEGORIES: usize = 100;

/// The kind of a feature that is a note unless chosen otherwise, and of a parcel in a zone.
fn kind_by_words(feature: &Feature) -> Option<(&str, Option<&str>)> {
    let noted = feature.noted.as_ref()?;
    let is_kind = feature.suggested == Suggestion::Note || noted.zone.is_some();
    is_kind.then_some((noted.column.as_str(), noted.zone.as_deref()))
}

fn is_told_apart(categories: &mut Vec<String>, category: &str) -> bool {
    let is_known = categories.iter().any(|known| known == category);
    if !is_known && categories.len() < MOST_CATEGORIES {
        categories.push(category.to_owned());
        return true;
    }
    is_known
}

/// Some features.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Piece {
    /// For each feature: its layer from 0; what it may become, in three numbers ([`in_numbers`]); who owns it and its level
    /// as an unsigned number, where it is a street; its shape (0 points, 1 lines, 2 areas), how many of them, and for lines how
    /// many positions each has, for areas how many rings each has, before each area's rings how many positions those have.
    pub shapes: Vec<u32>,
    /// Positions: x and y by turns, without any mark between.
    pub positions: Vec<f64>,
    /// For each feature: the row of the table that it fits, or its category or zone, as `key=value`, or the column that
    /// counts traffic; what it says in words ([`Feature::noted`]); then names and values of its tags by turns. [`BETWEEN`] stands between, [`BEHIND`] behind each feature.
    pub words: String,
}

/// A base that is handed over piece by piece.
pub struct Pieces {
    base: Base,
    layer: usize,
    feature: usize,
    /// Categories of a table's rows that are told apart so far.
    categories: Vec<String>,
}

impl Pieces {
    /// The features of this base, from the first.
    #[must_use]
    pub fn new(base: Base) -> Self {
        Self {
            base,
            layer: 0,
            feature: 0,
            categories: Vec::new(),
        }
    }

    /// The base, whose features are handed over.
    #[must_use]
    pub fn base(&self) -> &Base {
        &self.base
    }
}

impl Iterator for Pieces {
    type Item = Piece;

    /// The next piece; `None` when all are handed over.
    fn next(&mut self) -> Option<Piece> {
        let mut piece = Piece::default();
        while let Some(layer) = self.base.layers.get(self.layer) {
            while let Some(feature) = layer.features.get(self.feature) {
                let row = tags::row_of(&feature.tags).map(|(key, value)| (key, Some(value)));
                let row = row.or_else(|| kind_by_words(feature)).or_else(|| {
                    let (key, category) =
                        tags::category_of(&feature.tags).filter(|_| self.base.format == Format::Csv)?;
                    is_told_apart(&mut self.categories, category).then_some((key, Some(category)))
                });
                piece.add(self.layer, feature, row);
                self.feature += 1;
                if piece.positions.len() >= 2 * PIECE_POSITIONS {
                    return Some(piece);
                }
            }
            self.layer += 1;
            self.feature = 0;
        }
        (!piece.shapes.is_empty()).then_some(piece)
    }
}

impl Piece {
    fn add(&mut self, layer: usize, feature: &Feature, row: Option<(&str, Option<&str>)>) {
        self.shapes.push(layer as u32);
        self.shapes.extend(in_numbers(&feature.suggested));
        self.shapes.extend(match &feature.suggested {
            Suggestion::Street(street) => [street.owner as u32, i32::from(street.level).cast_unsigned()],
            _ => [StreetOwner::Town as u32, 0],
        });
        match &feature.geometry {
            Geometry::Points(points) => {
                self.shapes.extend([0, points.len() as u32]);
                self.add_positions(points);
            }
            Geometry::Lines(lines) => {
                self.shapes.extend([1, lines.len() as u32]);
                for line in lines {
                    self.shapes.push(line.len() as u32);
                    self.add_positions(line);
                }
            }
            Geometry::Areas(areas) => {
                self.shapes.extend([2, areas.len() as u32]);
                for rings in areas {
                    self.shapes.push(rings.len() as u32);
                    for ring in rings {
                        self.shapes.push(ring.len() as u32);
                        self.add_positions(ring);
                    }
                }
            }
        }
        if let Some((key, value)) = row {
            self.add_word(key);
            if let Some(value) = value {
                self.words.push('=');
                self.add_word(value);
            }
        }
        self.words.push(BETWEEN);
        self.add_word(feature.noted.as_ref().map_or("", |noted| &noted.words));
        for (name, value) in &feature.tags {
            self.words.push(BETWEEN);
            self.add_word(name);
            self.words.push(BETWEEN);
            self.add_word(value);
        }
        self.words.push(BEHIND);
    }

    fn add_positions(&mut self, positions: &[Position]) {
        self.positions.extend(positions.iter().flatten());
    }

    fn add_word(&mut self, word: &str) {
        self.words.extend(word.chars().map(|letter| {
            if letter == BETWEEN || letter == BEHIND {
                ' '
            } else {
                letter
            }
        }));
    }
}

/// Street sections of the default palette by the ends of their messages' names, at the places of their ids, which never
/// change meaning.
pub const SECTIONS: [&str; 12] = [
    "main-street",
    "boulevard",
    "neighborhood-street",
    "narrow-street",
    "lane",
    "alley",
    "path",
    "path-homes",
    "subdivision-street",
    "collector",
    "arterial",
    "state-highway",
];

/// A suggestion in numbers, of which the page needs no words: 0 nothing that a plan has marks for, 1 a street with its role
/// and street section, 2 a place and 3 land held back with what they are, 4 a barrier, 5 a building, 6 a note.
#[must_use]
pub fn in_numbers(suggested: &Suggestion) -> [u32; 3] {
    match suggested {
        Suggestion::Street(street) => {
            let section = SECTIONS.iter().position(|known| *known == street.section);
            section.map_or([0; 3], |section| [1, street.role as u32, section as u32])
        }
        Suggestion::Place { place } => [2, *place as u32, 0],
        Suggestion::Constraint { constraint } => [3, *constraint as u32, 0],
        Suggestion::Barrier => [4, 0, 0],
        Suggestion::Building => [5, 0, 0],
        Suggestion::Note => [6, 0, 0],
        Suggestion::Contour | Suggestion::Unknown => [0; 3],
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::options::Options;

    #[test]
    fn pieces_hold_shapes_positions_and_words_in_order() {
        let text = r#"{ "type": "FeatureCollection", "features": [
            { "type": "Feature", "properties": { "highway": "residential", "name": "Elm\u001fStreet" },
              "geometry": { "type": "LineString", "coordinates": [[1, 2], [3, 4]] } },
            { "type": "Feature", "properties": { "landuse": "odd" },
              "geometry": { "type": "Polygon", "coordinates": [[[0, 0], [4, 0], [4, 4], [0, 0]]] } } ] }"#;
        let base = crate::read("a.geojson", text.as_bytes().to_vec(), Options::default()).unwrap();
        let pieces: Vec<Piece> = Pieces::new(base).collect();
        let [piece] = pieces.as_slice() else {
            panic!("{pieces:?}")
        };
        assert_eq!(piece.shapes, [0, 1, 1, 2, 1, 0, 1, 1, 2, 0, 6, 0, 0, 1, 0, 2, 1, 1, 3]);
        assert_eq!(piece.positions, [1.0, 2.0, 3.0, 4.0, 0.0, 0.0, 4.0, 0.0, 4.0, 4.0]);
        assert_eq!(
            piece.words.replace(BETWEEN, "|").replace(BEHIND, "/"),
            "highway=residential||highway|residential|name|Elm Street/landuse=odd|odd|landuse|odd/"
        );
    }
}
