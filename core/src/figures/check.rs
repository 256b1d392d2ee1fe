//! Checks of a graph as it is built: references, axes, units, cycles. Every fault is returned, with its node.

use crate::order;
use crate::order::{OrderedMap, OrderedSet};
use crate::say;
use std::fmt;

use super::axis::AxisIndex;
use super::expression::{Binary, Expression};
use super::graph::{Declared, Graph, GraphBuilder, Node, NodeIndex, Operator};
use super::unit::Dimension;

/// A fault in a declaration.
#[derive(Clone, Debug, PartialEq)]
pub struct GraphFault {
    /// Id of the node or axis at fault.
    pub id: String,
    /// What is wrong.
    pub problem: GraphProblem,
}

/// What is wrong with a declaration.
#[derive(Clone, Debug, PartialEq)]
pub enum GraphProblem {
    /// The id is not lower-case words joined by dots and underscores.
    BadId,
    /// The id is declared more than once.
    Repeated,
    /// A figure without an operator.
    NotWorkedOut,
    /// A reference to a node that is not declared.
    UnknownNode(String),
    /// An axis that is not declared.
    UnknownAxis(String),
    /// An axis named twice in one list.
    RepeatedAxis(String),
    /// An entry id that stands twice on a fixed axis.
    RepeatedEntry(String),
    /// An entry that its axis does not have for good: the axis is open, or the entry is not on it.
    UnknownEntry {
        /// The axis.
        axis: String,
        /// The entry.
        entry: String,
    },
    /// The operator works along an axis that its table does not have.
    AxisNotThere {
        /// The axis.
        axis: String,
        /// The table without it.
        of: String,
    },
    /// A table that has the very axis the operator works along, and must not.
    AxisInTheWay {
        /// The axis.
        axis: String,
        /// The table with it.
        of: String,
    },
    /// An axis the declared table lacks, or has without reason.
    AxesDiffer {
        /// As declared.
        declared: Vec<String>,
        /// As the operator gives them, in no order.
        worked: Vec<String>,
    },
    /// The operator gives another dimension than the one declared.
    UnitDiffers {
        /// As declared.
        declared: Dimension,
        /// As worked.
        worked: Dimension,
    },
    /// Two sides that must be of one dimension are not.
    UnlikeUnits {
        /// What brings them together.
        by: &'static str,
        /// Left or first.
        left: Dimension,
        /// Right or second.
        right: Dimension,
    },
    /// A plain number is needed.
    NotPlain {
        /// What needs it.
        by: &'static str,
        /// What it got.
        given: Dimension,
    },
    /// A dimensioned base needs a constant exponent that leaves whole powers.
    NoSuchPower(Dimension),
    /// A method got another number of inputs than it declares.
    MethodInputCount {
        /// As the method declares.
        expected: usize,
        /// As given.
        given: usize,
    },
    /// The node needs itself, through these.
    Cycle(Vec<String>),
}

impl fmt::Display for GraphFault {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let id = &self.id;
        let words = match &self.problem {
            GraphProblem::BadId => say!("figures-graph-bad-id", id = id),
            GraphProblem::Repeated => say!("figures-graph-repeated", id = id),
            GraphProblem::NotWorkedOut => say!("figures-graph-not-worked-out", id = id),
            GraphProblem::UnknownNode(node) => say!("figures-graph-no-node", id = id, node = node),
            GraphProblem::UnknownAxis(axis) => say!("figures-graph-no-axis", id = id, axis = axis),
            GraphProblem::RepeatedAxis(axis) => say!("figures-graph-axis-twice", id = id, axis = axis),
            GraphProblem::RepeatedEntry(entry) => say!("figures-graph-entry-twice", id = id, entry = entry),
            GraphProblem::UnknownEntry { axis, entry } => {
                say!("figures-graph-no-entry", id = id, entry = entry, axis = axis)
            }
            GraphProblem::AxisNotThere { axis, of } => {
                say!("figures-graph-axis-not-there", id = id, axis = axis, of = of)
            }
            GraphProblem::AxisInTheWay { axis, of } => {
                say!("figures-graph-axis-in-the-way", id = id, axis = axis, of = of)
            }
            GraphProblem::AxesDiffer { declared, worked } => say!(
                "figures-graph-axes-differ",
                id = id,
                declared = declared.join(", "),
                worked = worked.join(", ")
            ),
            GraphProblem::UnitDiffers { declared, worked } => say!(
                "figures-graph-unit-differs",
                id = id,
                declared = declared.to_string(),
                worked = worked.to_string()
            ),
            GraphProblem::UnlikeUnits { by, left, right } => say!(
                "figures-graph-unlike-units",
                id = id,
                left = left.to_string(),
                right = right.to_string(),
                by = by
            ),
            GraphProblem::NotPlain { by, given } => {
                say!("figures-graph-not-plain", id = id, by = by, given = given.to_string())
            }
            GraphProblem::NoSuchPower(base) => say!("figures-graph-no-power", id = id, base = base.to_string()),
            GraphProblem::MethodInputCount { expected, given } => {
                say!(
                    "figures-graph-method-inputs",
                    id = id,
                    given = given,
                    expected = expected
                )
            }
            GraphProblem::Cycle(through) => say!("figures-graph-cycle", id = id, through = through.join(", ")),
        };
        out.write_str(&words)
    }
}

/// Everything known while checking, and the faults found so far.
struct Checker<'a> {
    builder: &'a GraphBuilder,
    axes: OrderedMap<&'a str, AxisIndex>,
    nodes: OrderedMap<&'a str, &'a Declared>,
    faults: Vec<GraphFault>,
}

pub(crate) fn build(builder: GraphBuilder) -> Result<Graph, Vec<GraphFault>> {
    let mut checker = Checker {
        axes: OrderedMap::new(),
        nodes: OrderedMap::new(),
        faults: Vec::new(),
        builder: &builder,
    };
    checker.check_axes();
    checker.check_nodes();
    let ordered = checker.order();
    let Checker { axes, mut faults, .. } = checker;
    if !faults.is_empty() {
        order::sort_by(&mut faults, |a, b| a.id.cmp(&b.id));
        return Err(faults);
    }

    let by_id = OrderedMap::from_iter(
        ordered
            .iter()
            .enumerate()
            .map(|(place, declared)| (builder.declared[*declared].id.clone(), NodeIndex(place as u32))),
    );
    let mut nodes = Vec::with_capacity(ordered.len());
    for declared in ordered {
        let declared = &builder.declared[declared];
        // Every reference was found above, so the maps have every key.
        if let Some(operator) = &declared.operator {
            nodes.push(Node {
                id: declared.id.clone(),
                title: declared.title.clone(),
                unit: declared.unit,
                axes: declared.axes.iter().map(|axis| axes[&axis.as_str()]).collect(),
                operator: operator.map(|id| by_id[id], |axis| axes[&axis.as_str()]),
            });
        }
    }
    let mut dependents = vec![Vec::new(); nodes.len()];
    for (place, node) in nodes.iter().enumerate() {
        let mut needs: Vec<NodeIndex> = node.operator.references().into_iter().copied().collect();
        order::sort(&mut needs);
        needs.dedup();
        for need in needs {
            dependents[need.at()].push(NodeIndex(place as u32));
        }
    }
    Ok(Graph {
        axes: builder.axes,
        nodes,
        by_id,
        dependents,
    })
}

fn is_stable_id(id: &str) -> bool {
    id.split('.').all(|part| {
        part.starts_with(|first: char| first.is_ascii_lowercase())
            && part
                .chars()
                .all(|letter| letter.is_ascii_lowercase() || letter.is_ascii_digit() || letter == '_')
    })
}

impl<'a> Checker<'a> {
    fn fault(&mut self, id: &str, problem: GraphProblem) {
        self.faults.push(GraphFault {
            id: id.to_owned(),
            problem,
        });
    }

    fn check_axes(&mut self) {
        let builder = self.builder;
        for (place, axis) in builder.axes.iter().enumerate() {
            if !is_stable_id(&axis.id) {
                self.fault(&axis.id, GraphProblem::BadId);
            }
            if self.axes.insert(&axis.id, AxisIndex(place as u32)).is_some() {
                self.fault(&axis.id, GraphProblem::Repeated);
            }
            let mut seen = OrderedSet::new();
            for entry in axis.fixed.iter().flatten() {
                if !seen.insert(&entry.id) {
                    self.fault(&axis.id, GraphProblem::RepeatedEntry(entry.id.clone()));
                }
            }
        }
    }

    fn check_nodes(&mut self) {
        let builder = self.builder;
        for declared in &builder.declared {
            if !is_stable_id(&declared.id) {
                self.fault(&declared.id, GraphProblem::BadId);
            }
            if self.nodes.insert(&declared.id, declared).is_some() {
                self.fault(&declared.id, GraphProblem::Repeated);
            }
        }
        for declared in &builder.declared {
            let names_known = self.check_names(declared);
            match &declared.operator {
                None => self.fault(&declared.id, GraphProblem::NotWorkedOut),
                Some(operator) if names_known => {
                    self.check_shape(declared, operator);
                    self.check_units(declared, operator);
                }
                Some(_) => {}
            }
        }
    }

    /// Whether every node and axis a declaration names is declared.
    fn check_names(&mut self, declared: &Declared) -> bool {
        let before = self.faults.len();
        self.check_axis_list(&declared.id, &declared.axes);
        if let Some(operator) = &declared.operator {
            let along: Vec<String> = operator.axes().into_iter().cloned().collect();
            self.check_axis_list(&declared.id, &along);
            let references = operator.references().into_iter().map(String::as_str);
            let unknown = OrderedSet::from_iter(references.filter(|id| !self.nodes.contains_key(id)));
            for id in unknown {
                self.fault(&declared.id, GraphProblem::UnknownNode(id.to_owned()));
            }
        }
        self.faults.len() == before
    }

    fn check_axis_list(&mut self, id: &str, axes: &[String]) {
        for (place, axis) in axes.iter().enumerate() {
            if !self.axes.contains_key(axis.as_str()) {
                self.fault(id, GraphProblem::UnknownAxis(axis.clone()));
            }
            if axes[..place].contains(axis) {
                self.fault(id, GraphProblem::RepeatedAxis(axis.clone()));
            }
        }
    }

    fn axes_of(&self, id: &str) -> &'a [String] {
        self.nodes.get(id).map_or(&[], |node| &node.axes)
    }

    fn dimension_of(&self, id: &str) -> Dimension {
        self.nodes.get(id).map_or(Dimension::NONE, |node| node.unit.dimension)
    }

    /// The declared axes must be those the operator gives, in any order.
    fn check_shape(&mut self, declared: &Declared, operator: &Operator<String, String>) {
        let mut worked: OrderedSet<&str> = OrderedSet::new();
        for id in operator.references() {
            worked.extend(self.axes_of(id).iter().map(String::as_str));
        }
        let own = OrderedSet::from_iter(declared.axes.iter().map(String::as_str));
        match operator {
            Operator::Leaf(_) => return,
            Operator::Formula(_) => {}
            Operator::Sum { of, over } | Operator::WeightedMean { of, over, .. } => {
                for axis in over {
                    self.check_has_axis(declared, of, axis);
                    worked.remove(axis.as_str());
                }
            }
            Operator::Entry { of, along, entry } => {
                self.check_has_axis(declared, of, along);
                self.check_entry(declared, along, entry);
                worked.remove(along.as_str());
            }
            Operator::Lookup { x, y, at, knots } => {
                self.check_has_axis(declared, x, knots);
                self.check_has_axis(declared, y, knots);
                self.check_lacks_axis(declared, at, knots);
                worked = self.axes_without(&[x, y], knots);
                worked.extend(self.axes_of(at).iter().map(String::as_str));
            }
            Operator::RunningBalance {
                start, change, along, ..
            } => {
                self.check_has_axis(declared, change, along);
                self.check_lacks_axis(declared, start, along);
            }
            Operator::Method { along, .. } => {
                // A method may use up an axis it sees whole, keep it, or make one.
                for axis in along {
                    if own.contains(axis.as_str()) {
                        worked.insert(axis);
                    } else {
                        worked.remove(axis.as_str());
                    }
                }
            }
        }
        if worked != own {
            self.fault(
                &declared.id,
                GraphProblem::AxesDiffer {
                    declared: declared.axes.clone(),
                    worked: worked.into_iter().map(str::to_owned).collect(),
                },
            );
        }
    }

    fn axes_without(&self, of: &[&str], axis: &str) -> OrderedSet<&'a str> {
        let axes = of.iter().flat_map(|id| self.axes_of(id)).map(String::as_str);
        OrderedSet::from_iter(axes.filter(|name| *name != axis))
    }

    fn check_has_axis(&mut self, declared: &Declared, of: &str, axis: &str) {
        if !self.axes_of(of).iter().any(|own| own == axis) {
            self.fault(
                &declared.id,
                GraphProblem::AxisNotThere {
                    axis: axis.to_owned(),
                    of: of.to_owned(),
                },
            );
        }
    }

    fn check_entry(&mut self, declared: &Declared, axis: &str, entry: &str) {
        let held = self.axes.get(axis).and_then(|index| self.builder.axes.get(index.at()));
        if held.and_then(|held| held.place_of(entry)).is_none() {
            self.fault(
                &declared.id,
                GraphProblem::UnknownEntry {
                    axis: axis.to_owned(),
                    entry: entry.to_owned(),
                },
            );
        }
    }

    fn check_lacks_axis(&mut self, declared: &Declared, of: &str, axis: &str) {
        if self.axes_of(of).iter().any(|own| own == axis) {
            self.fault(
                &declared.id,
                GraphProblem::AxisInTheWay {
                    axis: axis.to_owned(),
                    of: of.to_owned(),
                },
            );
        }
    }

    fn check_units(&mut self, declared: &Declared, operator: &Operator<String, String>) {
        let id = &declared.id;
        let worked = match operator {
            Operator::Leaf(_) => return,
            Operator::Formula(formula) => self.formula_dimension(id, formula),
            Operator::Sum { of, .. } | Operator::Entry { of, .. } => Some(self.dimension_of(of)),
            Operator::WeightedMean { of, .. } => Some(self.dimension_of(of)),
            Operator::Lookup { x, y, at, .. } => {
                self.check_alike(
                    id,
                    say!("figures-in-curve"),
                    self.dimension_of(x),
                    self.dimension_of(at),
                );
                Some(self.dimension_of(y))
            }
            Operator::RunningBalance {
                start,
                change,
                least,
                most,
                ..
            } => {
                let balance = self.dimension_of(start);
                for part in [Some(change), least.as_ref(), most.as_ref()].into_iter().flatten() {
                    self.check_alike(id, say!("figures-in-balance"), balance, self.dimension_of(part));
                }
                Some(balance)
            }
            Operator::Method { method, inputs, .. } => {
                if inputs.len() != method.inputs.len() {
                    self.fault(
                        id,
                        GraphProblem::MethodInputCount {
                            expected: method.inputs.len(),
                            given: inputs.len(),
                        },
                    );
                }
                for (expected, input) in method.inputs.iter().zip(inputs) {
                    self.check_alike(id, say!("figures-in-method"), *expected, self.dimension_of(input));
                }
                Some(method.gives)
            }
        };
        if let Some(worked) = worked
            && worked != declared.unit.dimension
        {
            self.fault(
                id,
                GraphProblem::UnitDiffers {
                    declared: declared.unit.dimension,
                    worked,
                },
            );
        }
    }

    fn check_alike(&mut self, id: &str, by: &'static str, left: Dimension, right: Dimension) {
        if left != right {
            self.fault(id, GraphProblem::UnlikeUnits { by, left, right });
        }
    }

    fn check_plain(&mut self, id: &str, by: &'static str, given: Option<Dimension>) {
        if let Some(given) = given
            && given != Dimension::NONE
        {
            self.fault(id, GraphProblem::NotPlain { by, given });
        }
    }

    /// The dimension a formula gives; `None` once a fault inside it makes that unknowable.
    fn formula_dimension(&mut self, id: &str, formula: &Expression<String>) -> Option<Dimension> {
        match formula {
            Expression::Figure(node) => Some(self.dimension_of(node)),
            Expression::Constant(_, unit) => Some(unit.dimension),
            Expression::Binary(Binary::Power, base, exponent) => {
                let base = self.formula_dimension(id, base);
                let given = self.formula_dimension(id, exponent);
                self.check_plain(id, say!("figures-in-exponent"), given);
                let base = base?;
                if base == Dimension::NONE {
                    return Some(base);
                }
                let raised = match &**exponent {
                    Expression::Constant(exponent, _) => base.to_power(*exponent),
                    _ => None,
                };
                if raised.is_none() {
                    self.fault(id, GraphProblem::NoSuchPower(base));
                }
                raised
            }
            Expression::Binary(operation, left, right) => {
                let left = self.formula_dimension(id, left);
                let right = self.formula_dimension(id, right);
                let (left, right) = (left?, right?);
                let by = match operation {
                    Binary::Multiply => return Some(left.times(right)),
                    Binary::Divide => return Some(left.over(right)),
                    Binary::Add | Binary::Power => say!("figures-in-sum"),
                    Binary::Subtract => say!("figures-in-difference"),
                    Binary::Minimum => say!("figures-in-smaller"),
                    Binary::Maximum => say!("figures-in-larger"),
                };
                self.check_alike(id, by, left, right);
                (left == right).then_some(left)
            }
            Expression::Function(_, of) => {
                let given = self.formula_dimension(id, of);
                self.check_plain(id, say!("figures-in-exponential"), given);
                Some(Dimension::NONE)
            }
            Expression::Choose(choice) => {
                let left = self.formula_dimension(id, &choice.left);
                let right = self.formula_dimension(id, &choice.right);
                if let (Some(left), Some(right)) = (left, right) {
                    self.check_alike(id, say!("figures-in-comparison"), left, right);
                }
                let then = self.formula_dimension(id, &choice.then);
                let otherwise = self.formula_dimension(id, &choice.otherwise);
                let (then, otherwise) = (then?, otherwise?);
                self.check_alike(id, say!("figures-in-choice"), then, otherwise);
                (then == otherwise).then_some(then)
            }
        }
    }

    /// Declared places in working order, ties by order of declaration; each cycle becomes a fault.
    fn order(&mut self) -> Vec<usize> {
        let builder = self.builder;
        let declared = builder.declared.iter().enumerate();
        let place = OrderedMap::from_iter(declared.map(|(place, declared)| (declared.id.as_str(), place)));
        let needs: Vec<OrderedSet<usize>> = builder
            .declared
            .iter()
            .map(|declared| {
                let references = declared.operator.iter().flat_map(Operator::references);
                OrderedSet::from_iter(references.filter_map(|id| place.get(id.as_str()).copied()))
            })
            .collect();

        let mut order = Vec::with_capacity(needs.len());
        let mut waiting = OrderedSet::from_iter(0..needs.len());
        while !waiting.is_empty() {
            let ready: Vec<usize> = waiting
                .iter()
                .copied()
                .filter(|node| !needs[*node].iter().any(|need| waiting.contains(need)))
                .collect();
            if ready.is_empty() {
                let cycle = find_cycle(&needs, &waiting);
                for node in &cycle {
                    waiting.remove(node);
                }
                let ids: Vec<String> = cycle.iter().map(|node| builder.declared[*node].id.clone()).collect();
                if let Some(first) = ids.first().cloned() {
                    self.fault(&first, GraphProblem::Cycle(ids));
                }
            }
            for node in ready {
                waiting.remove(&node);
                order.push(node);
            }
        }
        order
    }
}

/// A cycle among `waiting`, each of which needs another of them.
fn find_cycle(needs: &[OrderedSet<usize>], waiting: &OrderedSet<usize>) -> Vec<usize> {
    let mut path: Vec<usize> = waiting.first().copied().into_iter().collect();
    while let Some(last) = path.last() {
        let Some(next) = needs[*last].iter().find(|need| waiting.contains(*need)).copied() else {
            break;
        };
        if let Some(start) = path.iter().position(|node| *node == next) {
            path.drain(..start);
            break;
        }
        path.push(next);
    }
    path
}

#[cfg(test)]
mod tests;
