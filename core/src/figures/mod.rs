//! The engine of numbers: tables over axes, units, basis, ranges, sensitivity. Knows nothing of plans.
//!
//! Figures are declared once ([`graph`]) over leaves that are counted on the drawing, chosen, or taken from the factor
//! tables ([`leaf`]); building the graph checks references, axes, units and cycles ([`check`]). An
//! [`evaluate::Evaluation`] holds the leaf values ([`inputs`]) and every table that follows ([`mod@column`]); setting
//! leaves works again only what depends on them. From there come how a number is written ([`display`]), its basis
//! ([`basis`]), its range over the doubt in the factors ([`range`]), where that doubt comes from ([`sensitivity`]), the
//! difference between two alternatives ([`difference`]), and figures as data ([`value`]).

pub mod unit;

pub mod axis;

pub mod expression;

pub mod method;

pub mod graph;

pub mod check;

pub mod leaf;

pub mod inputs;

pub mod column;

pub mod evaluate;

mod reason;

pub mod random;

pub mod range;

pub mod display;

pub mod basis;

mod basis_text;

pub mod difference;

pub mod sensitivity;

mod replaced;

#[cfg(test)]
pub(crate) mod samples;

#[cfg(test)]
mod random_graphs;

pub mod value;

#[cfg(test)]
pub(crate) mod readback;

pub use evaluate::Evaluation;
pub use graph::{Graph, GraphBuilder, NodeIndex};
pub use inputs::Inputs;
pub use leaf::Cell;
