//! Walking and mix in detail, which are never worked out while somebody draws.

use super::{Study, StudyFault, fault};
use crate::figures::inputs::Inputs;
use crate::measures::details::{self, WalkDetails};

impl Study {
    /// Works the details out for the drawing as it stands, and takes them; as they are where they were taken already.
    ///
    /// Cost: see [`WalkDetails::of`]; well under a second for a village.
    ///
    /// # Errors
    /// [`StudyFault`] when the details do not fit the program's own figures; a test holds that they do.
    pub fn work_details(&mut self) -> Result<&WalkDetails, StudyFault> {
        let worked = match self.derived.details.take() {
            Some(held) => held,
            None => {
                let seen = self.scope.seen(&self.document, self.alternative);
                let derived = &self.derived;
                WalkDetails::of(
                    &seen.document,
                    self.alternative,
                    &derived.fabric,
                    &derived.painted,
                    &derived.walks,
                )
            }
        };
        self.set_details(worked)
    }

    /// Takes details that another study worked out; `false` where they are of another revision, and nothing is then
    /// changed.
    ///
    /// # Errors
    /// [`StudyFault`] when the details do not fit the program's own figures.
    pub fn take_details(&mut self, revision: u64, details: WalkDetails) -> Result<bool, StudyFault> {
        let is_of_now = revision == self.revision;
        if is_of_now {
            self.set_details(details)?;
        }
        Ok(is_of_now)
    }

    /// The details of the drawing as it stands, once they are worked out or taken.
    #[must_use]
    pub const fn details(&self) -> Option<&WalkDetails> {
        self.derived.details.as_ref()
    }

    fn set_details(&mut self, held: WalkDetails) -> Result<&WalkDetails, StudyFault> {
        let mut inputs = Inputs::new();
        details::set(&mut inputs, Some(&held), self.document.settings.units);
        self.derived.figures.set_details(inputs).map_err(fault)?;
        Ok(self.derived.details.insert(held))
    }
}

#[cfg(test)]
mod tests;
