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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::figures::inputs::numbers;
    use crate::figures::leaf::SpreadKind;
    use crate::figures::samples::{evaluated, factor, table};

    #[test]
    fn replaced_leaves_never_touch_the_base() {
        let mut base = evaluated();
        let index = base.graph().index("plots.density").unwrap();
        let (value, range) = (base.cell(index, 0), base.range(index, 0));

        let mut inputs = Inputs::new();
        inputs.set_factor(
            "walk.time",
            vec![factor("walk.time", "min", [2.0, 3.0, 4.0], SpreadKind::Positive)],
        );
        inputs.set_counted("tank.floor", numbers(&[9.0]), None);
        let mut other = base.replaced(inputs.clone()).unwrap();

        assert_ne!(other.cell(index, 0), value);
        assert_ne!(other.range(index, 0), range);
        assert_eq!(table(&other, "tank.side"), [3.0]);
        assert_eq!((base.cell(index, 0), base.range(index, 0)), (value, range));
        assert_eq!(table(&base, "tank.floor"), [7.3]);

        // The same as setting the leaves on the base itself.
        base.set(inputs).unwrap();
        assert_eq!(
            (base.cell(index, 0), base.range(index, 0)),
            (other.cell(index, 0), other.range(index, 0))
        );
    }

    #[test]
    fn a_leaf_that_is_not_there_is_told() {
        let mut inputs = Inputs::new();
        inputs.set_counted("tank.lid", numbers(&[9.0]), None);
        assert_eq!(evaluated().replaced(inputs).unwrap_err().len(), 1);
    }
}
