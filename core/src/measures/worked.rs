//! Figures that are one operation on two others, or a total of one, declared from tables: a table weighs less on the
//! page than as many calls.

use crate::figures::expression::{Binary, Expression, figure};
use crate::figures::graph::GraphBuilder;
use crate::figures::unit::Unit;
use crate::messages::Message;

/// One operation on two figures, or a total.
pub(super) struct Worked {
    id: &'static str,
    title: Message,
    unit: Unit,
    axes: &'static [&'static str],
    left: &'static str,
    operation: Binary,
    right: &'static str,
    /// The axes along which a total is taken; none for an operation on two.
    along: &'static [&'static str],
}

impl Worked {
    /// `left × right`.
    pub(super) const fn product(
        id: &'static str,
        title: Message,
        unit: Unit,
        left: &'static str,
        right: &'static str,
    ) -> Self {
        Self {
            id,
            title,
            unit,
            axes: &[],
            left,
            operation: Binary::Multiply,
            right,
            along: &[],
        }
    }

    /// `left ÷ right`.
    pub(super) const fn quotient(
        id: &'static str,
        title: Message,
        unit: Unit,
        left: &'static str,
        right: &'static str,
    ) -> Self {
        Self {
            operation: Binary::Divide,
            ..Self::product(id, title, unit, left, right)
        }
    }

    /// `left + right`.
    pub(super) const fn sum(
        id: &'static str,
        title: Message,
        unit: Unit,
        left: &'static str,
        right: &'static str,
    ) -> Self {
        Self {
            operation: Binary::Add,
            ..Self::product(id, title, unit, left, right)
        }
    }

    /// `of` summed along axes.
    pub(super) const fn total(
        id: &'static str,
        title: Message,
        unit: Unit,
        of: &'static str,
        along: &'static [&'static str],
    ) -> Self {
        Self {
            along,
            ..Self::product(id, title, unit, of, "")
        }
    }

    /// The same as a table over axes.
    pub(super) const fn over(self, axes: &'static [&'static str]) -> Self {
        Self { axes, ..self }
    }
}

/// Declares every figure of a table.
pub(super) fn declare(graph: &mut GraphBuilder, worked: &[Worked]) {
    for one in worked {
        let declared = graph.figure(one.id, one.title.words(), one.unit).over(one.axes);
        if one.along.is_empty() {
            declared.formula(Expression::Binary(
                one.operation,
                Box::new(figure(one.left)),
                Box::new(figure(one.right)),
            ));
        } else {
            declared.sum(one.left, one.along);
        }
    }
}
