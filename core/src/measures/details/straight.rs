//! The straight distance to the nearest of many stretches.

use crate::network::{Network, Source, SourcePlace};
use crate::number;
use crate::order;

/// A straight piece of street, in meters.
#[derive(Clone, Copy)]
struct Piece {
    west: f64,
    start: (f64, f64),
    step: (f64, f64),
}

/// Straight pieces of street, to be asked which is nearest.
pub(super) struct Straight {
    /// By their western ends.
    pieces: Vec<Piece>,
    widest: f64,
}

impl Straight {
    /// The stretches of sources, corners to the millimeter. O(n log n).
    pub(super) fn of(network: &Network, sources: &[Source]) -> Self {
        let mut pieces = Vec::new();
        for source in sources {
            let SourcePlace::Stretch(stretch) = source.place else {
                continue;
            };
            let points = network.stretch_points(stretch);
            for pair in points.windows(2) {
                let (start, end) = (pair[0].to_m(), pair[1].to_m());
                pieces.push(Piece {
                    west: start.0.min(end.0),
                    start,
                    step: (end.0 - start.0, end.1 - start.1),
                });
            }
        }
        order::sort_by(&mut pieces, |a: &Piece, b| a.west.total_cmp(&b.west));
        let widest = pieces.iter().map(|piece| piece.step.0.abs()).fold(0.0, f64::max);
        Self { pieces, widest }
    }

    /// The distance from a place to the nearest, looked for within `most` meters; `None` where there is none.
    ///
    /// O(pieces whose western end is within `most` and the widest piece's width).
    pub(super) fn distance_m(&self, (x, y): (f64, f64), most: f64) -> Option<f64> {
        let first = self.pieces.partition_point(|piece| piece.west < x - most - self.widest);
        let near = self
            .pieces
            .iter()
            .skip(first)
            .take_while(|piece| piece.west <= x + most);
        let mut least = f64::INFINITY;
        for piece in near {
            let (dx, dy) = (x - piece.start.0, y - piece.start.1);
            let length = piece.step.0 * piece.step.0 + piece.step.1 * piece.step.1;
            let share = if length > 0.0 {
                ((dx * piece.step.0 + dy * piece.step.1) / length).clamp(0.0, 1.0)
            } else {
                0.0
            };
            least = least.min(number::length(dx - share * piece.step.0, dy - share * piece.step.1));
        }
        (least <= most).then_some(least)
    }
}
