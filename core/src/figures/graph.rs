//! Declaring figures, and the graph they make.
//!
//! [`GraphBuilder`] collects declarations in any order; [`GraphBuilder::build`] checks references, axes, units and
//! cycles, and returns either the [`Graph`] or every fault found. A graph is built once per version of the program;
//! an edit only replaces leaf values.

use crate::order::OrderedMap;
use crate::say;

use super::axis::{Axis, AxisIndex, Entry};
use super::check::{self, GraphFault};
use super::expression::Expression;
use super::method::Method;
use super::unit::Unit;

/// Which node of a graph. Nodes are numbered so that what a node needs comes before it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct NodeIndex(pub(crate) u32);

impl NodeIndex {
    pub(crate) const fn at(self) -> usize {
        self.0 as usize
    }
}

/// Where a leaf's values come from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LeafKind {
    /// Counted on the drawing.
    Counted,
    /// A setting somebody chose.
    Chosen,
    /// A row of the factor tables.
    Factor,
}

impl LeafKind {
    /// The word it is told apart by.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Counted => say!("figures-kind-counted"),
            Self::Chosen => say!("figures-kind-chosen"),
            Self::Factor => say!("figures-kind-factor"),
        }
    }
}

/// How a node's values come about. `R` refers to nodes, `A` to axes: by id while declared, by place once built.
#[derive(Clone, Debug)]
pub enum Operator<R, A> {
    /// Values from outside.
    Leaf(LeafKind),
    /// Worked cell by cell.
    Formula(Expression<R>),
    /// Sum of a table over axes; zero over no entries.
    Sum {
        /// The table.
        of: R,
        /// Axes summed over.
        over: Vec<A>,
    },
    /// `Σ value × weight ÷ Σ weight` over axes; cannot be worked out when the weights sum to zero.
    WeightedMean {
        /// The table.
        of: R,
        /// Its weights.
        weight: R,
        /// Axes averaged over.
        over: Vec<A>,
    },
    /// The numbers at one entry of a fixed axis.
    Entry {
        /// The table.
        of: R,
        /// The axis.
        along: A,
        /// Id of the entry.
        entry: String,
    },
    /// A curve of straight pieces read at a value. Beyond its ends the curve keeps its end values; where it jumps (two
    /// knots at one x) the value after the jump counts.
    Lookup {
        /// The knots' x, never falling along the knots axis.
        x: R,
        /// The knots' y.
        y: R,
        /// Where the curve is read.
        at: R,
        /// The axis of knots.
        knots: A,
    },
    /// `balance = previous balance + change`, kept within `least` and `most`, along an axis from `start`.
    RunningBalance {
        /// Balance before the first entry.
        start: R,
        /// Change at each entry.
        change: R,
        /// Never below.
        least: Option<R>,
        /// Never above.
        most: Option<R>,
        /// The axis, in the order of its entries.
        along: A,
    },
    /// A named method; it sees the axes `along` whole.
    Method {
        /// The method.
        method: &'static Method,
        /// Its inputs.
        inputs: Vec<R>,
        /// Axes handed to the method whole.
        along: Vec<A>,
    },
}

impl<R, A> Operator<R, A> {
    /// Every node referred to, in order of appearance, repeats included.
    pub fn references(&self) -> Vec<&R> {
        let mut found = Vec::new();
        match self {
            Self::Leaf(_) => {}
            Self::Formula(formula) => formula.references(&mut found),
            Self::Sum { of, .. } => found.push(of),
            Self::WeightedMean { of, weight, .. } => found.extend([of, weight]),
            Self::Entry { of, .. } => found.push(of),
            Self::Lookup { x, y, at, .. } => found.extend([x, y, at]),
            Self::RunningBalance {
                start,
                change,
                least,
                most,
                ..
            } => {
                found.extend([start, change]);
                found.extend(least);
                found.extend(most);
            }
            Self::Method { inputs, .. } => found.extend(inputs),
        }
        found
    }

    /// Every axis referred to.
    pub fn axes(&self) -> Vec<&A> {
        match self {
            Self::Leaf(_) | Self::Formula(_) => Vec::new(),
            Self::Sum { over, .. } | Self::WeightedMean { over, .. } => over.iter().collect(),
            Self::Entry { along, .. } => vec![along],
            Self::Lookup { knots, .. } => vec![knots],
            Self::RunningBalance { along, .. } => vec![along],
            Self::Method { along, .. } => along.iter().collect(),
        }
    }

    /// The same operator over other references.
    pub fn map<S, B>(&self, mut node: impl FnMut(&R) -> S, axis: impl Fn(&A) -> B) -> Operator<S, B> {
        let axes = |over: &[A]| over.iter().map(&axis).collect();
        match self {
            Self::Leaf(kind) => Operator::Leaf(*kind),
            Self::Formula(formula) => Operator::Formula(formula.map(&mut node)),
            Self::Sum { of, over } => Operator::Sum {
                of: node(of),
                over: axes(over),
            },
            Self::WeightedMean { of, weight, over } => Operator::WeightedMean {
                of: node(of),
                weight: node(weight),
                over: axes(over),
            },
            Self::Entry { of, along, entry } => Operator::Entry {
                of: node(of),
                along: axis(along),
                entry: entry.clone(),
            },
            Self::Lookup { x, y, at, knots } => Operator::Lookup {
                x: node(x),
                y: node(y),
                at: node(at),
                knots: axis(knots),
            },
            Self::RunningBalance {
                start,
                change,
                least,
                most,
                along,
            } => Operator::RunningBalance {
                start: node(start),
                change: node(change),
                least: least.as_ref().map(&mut node),
                most: most.as_ref().map(&mut node),
                along: axis(along),
            },
            Self::Method { method, inputs, along } => Operator::Method {
                method,
                inputs: inputs.iter().map(&mut node).collect(),
                along: axes(along),
            },
        }
    }
}

/// A figure or a leaf of the graph.
#[derive(Clone, Debug)]
pub struct Node {
    /// Stable dotted id: `walk.center_5min_homes_share`.
    pub id: String,
    /// Words for the page: `homes within 5 minutes of a center`.
    pub title: String,
    /// What it measures.
    pub unit: Unit,
    /// Axes of its table, in order; none for a single number.
    pub axes: Vec<AxisIndex>,
    /// How its values come about.
    pub operator: Operator<NodeIndex, AxisIndex>,
}

/// A checked graph of figures.
#[derive(Debug)]
pub struct Graph {
    pub(crate) axes: Vec<Axis>,
    pub(crate) nodes: Vec<Node>,
    pub(crate) by_id: OrderedMap<String, NodeIndex>,
    /// For each node, the nodes that refer to it.
    pub(crate) dependents: Vec<Vec<NodeIndex>>,
}

impl Graph {
    /// The nodes, what a node needs before it.
    #[must_use]
    pub fn nodes(&self) -> &[Node] {
        &self.nodes
    }

    /// Every node index, in the order of [`Graph::nodes`].
    pub fn indices(&self) -> impl Iterator<Item = NodeIndex> + use<> {
        (0..self.nodes.len() as u32).map(NodeIndex)
    }

    /// The node at `index`, which must come from this graph.
    #[must_use]
    pub fn node(&self, index: NodeIndex) -> &Node {
        &self.nodes[index.at()]
    }

    /// The node named `id`.
    #[must_use]
    pub fn index(&self, id: &str) -> Option<NodeIndex> {
        self.by_id.get(id).copied()
    }

    /// The axis at `index`, which must come from this graph.
    #[must_use]
    pub fn axis(&self, index: AxisIndex) -> &Axis {
        &self.axes[index.at()]
    }

    /// The axis named `id`.
    #[must_use]
    pub fn axis_index(&self, id: &str) -> Option<AxisIndex> {
        let place = self.axes.iter().position(|axis| axis.id == id)?;
        Some(AxisIndex(place as u32))
    }

    /// The kind of the leaf at `index`; `None` for a figure that is worked out.
    #[must_use]
    pub fn leaf_kind(&self, index: NodeIndex) -> Option<LeafKind> {
        match self.node(index).operator {
            Operator::Leaf(kind) => Some(kind),
            _ => None,
        }
    }
}

/// A node as declared, before checking.
pub(crate) struct Declared {
    pub id: String,
    pub title: String,
    pub unit: Unit,
    pub axes: Vec<String>,
    pub operator: Option<Operator<String, String>>,
}

/// Collects declarations.
#[derive(Default)]
pub struct GraphBuilder {
    pub(crate) axes: Vec<Axis>,
    pub(crate) declared: Vec<Declared>,
}

impl GraphBuilder {
    /// An empty builder.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// Declares an axis whose entries arrive with the leaf values.
    pub fn open_axis(&mut self, id: &str, title: &str) {
        self.axes.push(Axis {
            id: id.to_owned(),
            title: title.to_owned(),
            fixed: None,
            sources: Vec::new(),
        });
    }

    /// Declares an axis whose entries (id, title) never change.
    pub fn fixed_axis(&mut self, id: &str, title: &str, entries: &[(&str, &str)]) {
        self.axes.push(Axis {
            id: id.to_owned(),
            title: title.to_owned(),
            fixed: Some(entries.iter().map(|(id, title)| Entry::new(*id, *title)).collect()),
            sources: Vec::new(),
        });
    }

    /// Says where each entry of the axis declared last is laid down; bases of what is counted by it repeat that.
    pub fn laid_down(&mut self, sources: &[&str]) {
        if let Some(axis) = self.axes.last_mut() {
            axis.sources = sources.iter().map(|source| (*source).to_owned()).collect();
        }
    }

    /// Declares a leaf counted on the drawing.
    pub fn counted(&mut self, id: &str, title: &str, unit: Unit) -> Declaration<'_> {
        self.leaf(LeafKind::Counted, id, title, unit)
    }

    /// Declares a leaf that is a setting.
    pub fn chosen(&mut self, id: &str, title: &str, unit: Unit) -> Declaration<'_> {
        self.leaf(LeafKind::Chosen, id, title, unit)
    }

    /// Declares a leaf from the factor tables.
    pub fn factor(&mut self, id: &str, title: &str, unit: Unit) -> Declaration<'_> {
        self.leaf(LeafKind::Factor, id, title, unit)
    }

    /// Declares a figure; the returned declaration says how it is worked out.
    pub fn figure(&mut self, id: &str, title: &str, unit: Unit) -> Declaration<'_> {
        self.declare(id, title, unit, None)
    }

    /// Checks everything and makes the graph, or returns every fault.
    ///
    /// # Errors
    /// Every unknown reference or axis, every clash of units or axes, every cycle, with the node it is in.
    pub fn build(self) -> Result<Graph, Vec<GraphFault>> {
        check::build(self)
    }

    fn leaf(&mut self, kind: LeafKind, id: &str, title: &str, unit: Unit) -> Declaration<'_> {
        self.declare(id, title, unit, Some(Operator::Leaf(kind)))
    }

    fn declare(
        &mut self,
        id: &str,
        title: &str,
        unit: Unit,
        operator: Option<Operator<String, String>>,
    ) -> Declaration<'_> {
        let place = self.declared.len();
        self.declared.push(Declared {
            id: id.to_owned(),
            title: title.to_owned(),
            unit,
            axes: Vec::new(),
            operator,
        });
        Declaration {
            declared: &mut self.declared[place],
        }
    }
}

/// A node being declared: its axes, and for a figure how it is worked out.
pub struct Declaration<'a> {
    declared: &'a mut Declared,
}

impl Declaration<'_> {
    /// The axes of the table, in order.
    pub fn over(self, axes: &[&str]) -> Self {
        self.declared.axes = owned(axes);
        self
    }

    /// Worked cell by cell.
    // Written out once: the page declares a hundred figures in a row.
    #[inline(never)]
    pub fn formula(self, formula: Expression<String>) {
        self.declared.operator = Some(Operator::Formula(formula));
    }

    /// The sum of `of` over axes.
    pub fn sum(self, of: &str, over: &[&str]) {
        self.declared.operator = Some(Operator::Sum {
            of: of.to_owned(),
            over: owned(over),
        });
    }

    /// The mean of `of` over axes, weighted by `weight`.
    pub fn weighted_mean(self, of: &str, weight: &str, over: &[&str]) {
        self.declared.operator = Some(Operator::WeightedMean {
            of: of.to_owned(),
            weight: weight.to_owned(),
            over: owned(over),
        });
    }

    /// What stands in `of` at the entry `entry` of the fixed axis `along`.
    pub fn entry(self, of: &str, along: &str, entry: &str) {
        self.declared.operator = Some(Operator::Entry {
            of: of.to_owned(),
            along: along.to_owned(),
            entry: entry.to_owned(),
        });
    }

    /// The curve with knots (`x`, `y`) along the axis `knots`, read at `at`.
    pub fn lookup(self, x: &str, y: &str, knots: &str, at: &str) {
        self.declared.operator = Some(Operator::Lookup {
            x: x.to_owned(),
            y: y.to_owned(),
            at: at.to_owned(),
            knots: knots.to_owned(),
        });
    }

    /// A balance along an axis from `start`, changed by `change` at each entry, kept within `least` and `most`.
    pub fn running_balance(self, start: &str, change: &str, along: &str, least: Option<&str>, most: Option<&str>) {
        self.declared.operator = Some(Operator::RunningBalance {
            start: start.to_owned(),
            change: change.to_owned(),
            least: least.map(str::to_owned),
            most: most.map(str::to_owned),
            along: along.to_owned(),
        });
    }

    /// A named method over `inputs`, seeing the axes `along` whole.
    pub fn method(self, method: &'static Method, inputs: &[&str], along: &[&str]) {
        self.declared.operator = Some(Operator::Method {
            method,
            inputs: owned(inputs),
            along: owned(along),
        });
    }
}

fn owned(ids: &[&str]) -> Vec<String> {
    ids.iter().map(|id| (*id).to_owned()).collect()
}
