//! The formula of one cell: every operator but leaves and methods, written out over the very cells it uses.

use super::Writer;
use crate::figures::column::Curve;
use crate::figures::expression::{Binary, Expression};
use crate::figures::graph::{NodeIndex, Operator};
use crate::figures::unit::Unit;

impl Writer<'_> {
    /// The formula of one cell, over the very cells it uses.
    pub(super) fn cell_formula(&self, index: NodeIndex, cell: usize) -> Expression<(NodeIndex, usize)> {
        let node = self.values.graph.node(index);
        let read = |need: NodeIndex| Expression::Figure((need, self.values.cell_read(index, cell, need)));
        match &node.operator {
            Operator::Formula(formula) => formula.map(&mut |need| (*need, self.values.cell_read(index, cell, *need))),
            Operator::Sum { of, over } => {
                let members = self.values.members(index, cell, *of, *of, over);
                sum_of(
                    members.into_iter().map(|(member, _)| Expression::Figure((*of, member))),
                    &node.unit,
                )
            }
            Operator::WeightedMean { of, weight, over } => {
                let members = self.values.members(index, cell, *of, *weight, over);
                let weights = members
                    .iter()
                    .map(|(_, weighing)| Expression::Figure((*weight, *weighing)));
                let unit = self.values.graph.node(*weight).unit;
                let total_weight = sum_of(weights.clone(), &unit);
                let terms = members
                    .iter()
                    .zip(weights)
                    .map(|((member, _), weight)| of_two(Binary::Multiply, Expression::Figure((*of, *member)), weight));
                of_two(Binary::Divide, sum_of(terms, &node.unit), total_weight)
            }
            Operator::Entry { of, along, entry } => {
                Expression::Figure((*of, self.values.cell_at_entry(index, cell, *of, (*along, entry))))
            }
            Operator::Lookup { x, y, at, knots } => {
                let [xs, ys] = [x, y].map(|part| self.values.knot_cells(index, cell, *part, *knots));
                let number = |node: NodeIndex, cell: &usize| self.values.columns[node.at()].at(*cell, 0);
                let curve = Curve::new(
                    xs.iter().map(|cell| number(*x, cell)).collect(),
                    ys.iter().map(|cell| number(*y, cell)).collect(),
                );
                let place = read(*at);
                let Expression::Figure((_, at_cell)) = place else {
                    return place;
                };
                let (from, to) = curve.piece(number(*at, &at_cell));
                let knot = |node: NodeIndex, cells: &[usize], knot: usize| {
                    Expression::Figure((node, cells.get(knot).copied().unwrap_or(0)))
                };
                if from == to {
                    return knot(*y, &ys, from);
                }
                let between = |left, right| of_two(Binary::Subtract, left, right);
                let rise = of_two(
                    Binary::Multiply,
                    between(knot(*y, &ys, to), knot(*y, &ys, from)),
                    between(place, knot(*x, &xs, from)),
                );
                let run = between(knot(*x, &xs, to), knot(*x, &xs, from));
                of_two(Binary::Add, knot(*y, &ys, from), of_two(Binary::Divide, rise, run))
            }
            Operator::RunningBalance {
                start,
                change,
                least,
                most,
                along,
            } => {
                let previous = match self.values.entry_before(index, cell, *along) {
                    Some(previous) => Expression::Figure((index, previous)),
                    None => read(*start),
                };
                let free = of_two(Binary::Add, previous, read(*change));
                let above = match least {
                    Some(least) => of_two(Binary::Maximum, free, read(*least)),
                    None => free,
                };
                match most {
                    Some(most) => of_two(Binary::Minimum, above, read(*most)),
                    None => above,
                }
            }
            Operator::Leaf(_) | Operator::Method { .. } => Expression::Figure((index, cell)),
        }
    }
}

fn of_two<R>(operation: Binary, left: Expression<R>, right: Expression<R>) -> Expression<R> {
    Expression::Binary(operation, Box::new(left), Box::new(right))
}

fn sum_of<R>(terms: impl Iterator<Item = Expression<R>>, unit: &Unit) -> Expression<R> {
    terms
        .reduce(|sum, term| of_two(Binary::Add, sum, term))
        .unwrap_or(Expression::Constant(0.0, *unit))
}
