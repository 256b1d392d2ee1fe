//! Named methods: calculations too long for a formula, each a pure function with declared units and its own basis.

use super::expression::Expression;
use super::unit::{Dimension, Unit};

/// Fills a method's results from its inputs, or says why it cannot.
pub type Work = fn(inputs: &[&[f64]], results: &mut [f64]) -> Result<(), String>;

/// A calculation with a name of its own.
///
/// Each input arrives as its cells along the method's axes (a single number for an input without them); results are
/// written along those axes the figure itself has. A method is pure: same inputs, same results.
#[derive(Debug)]
pub struct Method {
    /// Says what it is called: `evenness of floor area over uses`.
    pub name: fn() -> &'static str,
    /// Says how it works, and what it does not count.
    pub words: fn() -> &'static str,
    /// Dimension of each input, in order.
    pub inputs: &'static [Dimension],
    /// Dimension of the result.
    pub gives: Dimension,
    /// Fills the results from the inputs, or says why it cannot.
    pub evaluate: Work,
    /// The steps that lead from these inputs to the result at `cell`; the last step is that result.
    pub steps: fn(inputs: &[MethodInput], cell: usize) -> Vec<MethodStep>,
}

/// An input as a method's basis sees it.
#[derive(Clone, Debug)]
pub struct MethodInput {
    /// Its cells.
    pub values: Vec<f64>,
    /// What each cell is called, the entry titles joined.
    pub labels: Vec<String>,
}

/// One line of a method's basis.
#[derive(Clone, Debug)]
pub struct MethodStep {
    /// What the line works out.
    pub title: String,
    /// Unit of the line's result.
    pub unit: Unit,
    /// How, from inputs and earlier lines.
    pub formula: Expression<MethodTerm>,
}

/// What a method's line refers to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MethodTerm {
    /// A cell of an input.
    Input {
        /// Which input.
        input: usize,
        /// Which of its cells.
        cell: usize,
    },
    /// The result of an earlier line.
    Step(usize),
}
