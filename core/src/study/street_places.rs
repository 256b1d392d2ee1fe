//! What is counted on streets and blocks, with where it is, for the drawing.

use super::Study;
use crate::measures::streets::StreetInputs;

impl Study {
    /// What is counted on streets and blocks, each with its place: the nodes of a counting rule
    /// ([`StreetInputs::counted_points`]), dead ends, ways in and out, the place most homes hang on, the longest block.
    ///
    /// Cost: worked anew at every call, about linear in the edges of the fabric.
    #[must_use]
    pub fn street_places(&self) -> StreetInputs {
        StreetInputs::of(&self.seen(), self.alternative(), self.fabric(), self.painted())
    }
}
