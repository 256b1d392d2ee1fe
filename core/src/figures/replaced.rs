//! The same graph with some leaves replaced: upgrades, comparisons, "what if". The base stays as it is.

use super::evaluate::Evaluation;
use super::inputs::{InputFault, Inputs};

impl Evaluation {
    /// A second evaluation in which `inputs` stand instead of what stands here. Tables the replaced leaves do not reach
    /// are shared with this one, draws included.
    ///
    /// # Errors
    /// As [`Evaluation::set`].
    pub fn replaced(&self, inputs: Inputs) -> Result<Self, Vec<InputFault>> {
        let mut other = self.clone();
        other.set(inputs)?;
        Ok(other)
    }
}
