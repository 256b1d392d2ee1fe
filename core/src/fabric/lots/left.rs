//! Land in no lot, cut out when it is first asked for.

use std::sync::OnceLock;

use super::handed::mirror;
use super::region::{Pieces, without};
use crate::plan::PlanPoint;

/// The land that lots leave of a face.
///
/// The last cut is made when somebody looks: figures need none of it, and on the drawing it is seen from near alone.
#[derive(Clone, Debug, Default)]
pub struct Left {
    /// Free land before the last front was laid.
    before: Pieces,
    /// What is taken of it.
    taken: Vec<Vec<PlanPoint>>,
    cut: OnceLock<Pieces>,
}

impl Left {
    pub(super) const fn of(before: Pieces, taken: Vec<Vec<PlanPoint>>) -> Self {
        Self {
            before,
            taken,
            cut: OnceLock::new(),
        }
    }

    /// Its pieces, each an outer ring and its holes. Cost: at the first call one boolean operation.
    #[must_use]
    pub fn pieces(&self) -> &Pieces {
        if self.taken.is_empty() {
            return &self.before;
        }
        self.cut.get_or_init(|| without(&self.before, &self.taken))
    }

    /// Mirrors it, before anybody has looked.
    pub(super) fn mirror(&mut self) {
        let before = self.before.iter_mut().flatten();
        before.chain(&mut self.taken).for_each(|ring| mirror(ring));
    }

    /// Pieces of land that hold all of it, at no cost.
    #[must_use]
    pub const fn within(&self) -> &Pieces {
        &self.before
    }
}

/// Equal where what it is cut from and what is taken are equal.
impl PartialEq for Left {
    fn eq(&self, other: &Self) -> bool {
        self.before == other.before && self.taken == other.taken
    }
}
